package serve

import (
	"bufio"
	"bytes"
	"context"
	"encoding/json"
	"fmt"
	"math/rand/v2"
	"net/http"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"testing"
	"testing/fstest"
	"time"

	"roundlay/cmd/disk"
)

// servedJob is the variable that makes the test binary a server of a job file.
const servedJob = "ROUNDLAY_TEST_SERVED_JOB"

func TestMain(m *testing.M) {
	if job := os.Getenv(servedJob); job != "" {
		s, err := Open(Config{Listen: "127.0.0.1:0", Page: fstest.MapFS{}, Disk: disk.Real{}, Job: job})
		if err != nil {
			panic(err)
		}
		fmt.Println(s.Address())
		if err := s.Run(context.Background()); err != nil {
			panic(err)
		}
		return
	}
	os.Exit(m.Run())
}

// text is version n of a job that takes a while to write.
func text(n int) string {
	return fmt.Sprintf("# version %d\n", n) + strings.Repeat(fmt.Sprintf("# %07d\n", n), 12_000)
}

// saveUntilKilled starts a server and saves one version after the other, until the server is
// killed after a while. It returns the last version that was said to be saved.
func saveUntilKilled(t *testing.T, job string, saved int, after time.Duration) int {
	t.Helper()
	program := exec.Command(os.Args[0])
	program.Env = append(os.Environ(), servedJob+"="+job)
	out, err := program.StdoutPipe()
	if err != nil {
		t.Fatal(err)
	}
	if err := program.Start(); err != nil {
		t.Fatal(err)
	}
	defer program.Wait()
	defer program.Process.Kill()
	address, err := bufio.NewReader(out).ReadString('\n')
	if err != nil {
		t.Fatal(err)
	}
	client := http.Client{Timeout: patience, Transport: &http.Transport{}}
	defer client.CloseIdleConnections()
	time.AfterFunc(after, func() { program.Process.Kill() })
	for {
		body, err := json.Marshal(object{"text": text(saved + 1), "stamp": stampOf([]byte(text(saved)))})
		if err != nil {
			t.Fatal(err)
		}
		got, err := client.Post(strings.TrimSpace(address)+"file", "application/json", bytes.NewReader(body))
		if err != nil {
			return saved // killed
		}
		got.Body.Close()
		if got.StatusCode != http.StatusOK {
			t.Fatalf("version %d: %s", saved+1, got.Status)
		}
		saved++
	}
}

// Whenever a server is killed, the job file is a whole version: the last one that was
// said to be saved, or the one that was being saved.
func TestKilledWhileSaving(t *testing.T) {
	job := filepath.Join(t.TempDir(), "job.toml")
	write(t, job, text(0))
	const kills = 25
	saved, midway, killed := 0, 0, 0
	// On a slow machine a server may be killed before its first version: there are more kills then.
	for killed < kills || saved < kills {
		if killed++; killed > 20*kills {
			t.Fatalf("%d kills, and only %d versions were saved", killed, saved)
		}
		saved = saveUntilKilled(t, job, saved, time.Duration(rand.IntN(250_000))*time.Microsecond)
		found, err := os.ReadFile(job)
		switch {
		case err != nil:
			t.Fatal(err)
		case string(found) == text(saved+1): // put in its place, but not said
			saved++
		case string(found) != text(saved):
			t.Fatalf("after version %d was saved, the file is %d bytes that begin %.20q", saved, len(found), found)
		}
		hidden, err := filepath.Glob(filepath.Join(filepath.Dir(job), ".roundlay-*"))
		if err != nil {
			t.Fatal(err)
		}
		for _, name := range hidden { // of a save that the kill came into
			midway++
			os.Remove(name)
		}
	}
	t.Logf("%d versions saved; %d of %d kills came while one was written", saved, midway, killed)
}
