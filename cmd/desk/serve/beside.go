package serve

import (
	"bytes"
	"context"
	"errors"
	"fmt"
	"io/fs"
	"net/http"
	"os"
	"path/filepath"
	"strings"

	"roundlay/cmd/disk"
	"roundlay/pattern/job"
)

// answerSaveBeside is POST /file-beside: a drawing in a new file beside the job.
func (f *jobFiles) answerSaveBeside(w http.ResponseWriter, r *http.Request) {
	var given struct{ Name, Text string }
	if !readJSON(w, r, f.bounds.Body, &given) {
		return
	}
	name, err := f.saveBeside(context.WithoutCancel(r.Context()), given.Name, []byte(given.Text))
	if err != nil {
		refuseFile(w, r, err)
		return
	}
	writeJSON(w, http.StatusOK, struct {
		Name string `json:"name"`
	}{name})
}

// saveBeside puts a text in a new file beside the job. One that holds the same already is as
// good; one that holds anything else is left alone.
func (f *jobFiles) saveBeside(ctx context.Context, asked string, text []byte) (string, error) {
	f.saving.Lock()
	defer f.saving.Unlock()
	name, err := besideName(asked)
	if err != nil {
		return "", err
	}
	at, err := disk.Locate(filepath.Join(f.folder, name))
	switch {
	case err != nil:
		return "", fmt.Errorf("%s %w", name, err)
	case at.Old != nil || at.Linked:
		there, err := disk.Beside(f.folder, int64(len(text))+1)(name)
		if err != nil || !bytes.Equal(there, text) {
			return "", &taken{name}
		}
		return name, nil
	}
	err = disk.Write(ctx, f.disk, disk.Output{Path: name, Place: at, Data: text, New: true})
	if errors.Is(err, fs.ErrExist) {
		return "", &taken{name}
	}
	return name, err
}

// neighbours are files beside the job that are watched with it.
type neighbours struct {
	folder string
	names  []string
	stamp  string // of what they held when they were last told of
	untold bool   // they never were
	looks  []fs.FileInfo
	weight int // the bytes they held when they were last read
	passed int // looks since
}

// mostNeighbours is how many files beside it a job may be watched with.
const mostNeighbours = 100

// readEach is how many bytes of the files beside a job are read in each look, on the average. A
// date that stays the same is no sign that a file did (see jobFiles.changed), but a hundred large
// drawings can't all be read twice a second.
const readEach = 4 << 20

// neighbours returns the files of some names, as a page knows them. A name that no file beside
// a job has is left out.
func (f *jobFiles) neighbours(names []string, stamp string) *neighbours {
	n := &neighbours{folder: f.folder, stamp: stamp}
	for _, name := range names[:min(len(names), mostNeighbours)] {
		if plain, err := besideName(name); err == nil {
			n.names = append(n.names, plain)
		}
	}
	n.looks = n.look()
	if n.stamp == "" {
		n.stamp, n.untold = n.now(), len(n.names) > 0
	}
	return n
}

// look returns how the files look, nil for one that isn't there.
func (n *neighbours) look() []fs.FileInfo {
	all := make([]fs.FileInfo, len(n.names))
	for i, name := range n.names {
		all[i], _ = os.Stat(filepath.Join(n.folder, name))
	}
	return all
}

// now reads the files and returns the stamp of what they hold.
func (n *neighbours) now() string {
	n.weight, n.passed = 0, 0
	if len(n.names) == 0 {
		return ""
	}
	var all strings.Builder
	for _, name := range n.names {
		data, err := disk.Beside(n.folder, job.MaxBeside)(name)
		n.weight += len(data)
		fmt.Fprintf(&all, "%s %v %s\n", name, err != nil, stampOf(data))
	}
	return stampOf([]byte(all.String()))
}

// changed reports whether the files hold anything else than when they were last told of. With
// first, they are read even if they look the same as before and are many.
func (n *neighbours) changed(ctx context.Context, first bool) bool {
	n.passed++
	looks := n.look()
	same := true
	for i := range looks {
		same = same && (looks[i] == nil && n.looks[i] == nil || alike(looks[i], n.looks[i]))
	}
	if same && !first && n.weight > readEach*n.passed {
		return false
	}
	if !same {
		sleep(ctx, settling)
		looks = n.look()
	}
	n.looks = looks
	was := n.stamp
	if n.stamp = n.now(); n.stamp != was && same && sleep(ctx, settling) { // it may be half written
		n.stamp = n.now()
	}
	return n.stamp != was
}
