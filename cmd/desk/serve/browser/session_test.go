package browser

import (
	"bytes"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"testing"
	"time"

	"github.com/chromedp/cdproto/browser"
	"github.com/chromedp/chromedp"
)

// answers are what a person reads off their calipers, in the order the guide asks for it.
var answers = [][2]string{
	{"#guide-name", "Three leaves"},
	{"#guide-height", "3 3/4"},
	{"#guide-foot", "2 3/4"},
	{"#guide-rim", "3 1/8"},
	{"", ""}, // its side runs straight
	{"#guide-wallFoot", "5/16"},
	{"#guide-floor", "1/2"},
	{"#guide-wheel", "4"},
	{"#guide-repeats", "3"},
}

// guided answers the questions of the guide, and has a leaf stand in each part.
func (p *tab) guided() {
	p.t.Helper()
	p.click("dialog input[value=in]")
	p.next()
	for _, a := range answers {
		if a[0] != "" {
			p.fill(a[0], a[1])
		}
		switch a[0] {
		case "#guide-wallFoot":
			p.fill("#guide-wallRim", "3/32")
		case "#guide-wheel":
			p.fill("#guide-angle", "90")
		}
		p.next()
	}
	p.click("dialog input[value=leaf]")
	p.click("#guide-next")
	p.until(`!document.querySelector("dialog")`)
	p.settled()
}

// next goes on to the next question.
func (p *tab) next() {
	p.t.Helper()
	before := eval[string](p, `document.querySelector("#guide-count").innerText`)
	p.click("#guide-next")
	p.until(`document.querySelector("#guide-count").innerText !== ` + quoted(before))
}

// A person's session from empty to printed.
func TestSession(t *testing.T) {
	p := open(t, "", 1440, 1000)
	p.click("#own")
	p.guided()
	if text := p.text(); !strings.Contains(text, `"3 1/8"`) || !strings.Contains(text, "leaf") {
		t.Fatalf("the guide made\n%s", text)
	}

	p.click("#tab-design")
	p.press("#panel-design", "1 leaf, mitre")
	fronds := `[data-path="motif[1].fronds"]`
	p.fill(fronds+" input.figure", "30")
	p.until(`/crowded/.test(document.querySelector("#findings").textContent)`)
	p.click("#tab-check")
	p.quiet()
	before := p.text()
	p.click("#findings .findings .way")
	p.quiet()
	if cured := p.text(); cured == before {
		t.Error("the cure changes nothing")
	}
	if found := eval[string](p, `document.querySelector("#findings .findings").innerText`); strings.Contains(found, "crowded") {
		t.Errorf("after the cure there is %q", found)
	}

	cured := p.text()
	p.drag(p.middle("#wrap [data-handle=middle]"), 40, -12, 10)
	if dragged := p.text(); dragged == cured {
		t.Error("the drag changes nothing")
	}
	dragged := p.text()
	p.click("#undo")
	if back := p.text(); back != cured {
		t.Errorf("undone it is\n%s\nwant\n%s", back, cured)
	}
	p.click("#redo")
	if again := p.text(); again != dragged {
		t.Errorf("done again it is\n%s\nwant\n%s", again, dragged)
	}
	p.click("#undo")

	p.click("#save")
	p.fill("#asked", "three-leaves")
	p.press("dialog", "Save")
	p.until(`/three-leaves\.toml, saved/.test(document.querySelector("#saved").innerText)`)
	if saved := p.read("three-leaves.toml"); saved != cured {
		t.Errorf("saved is\n%s\nwant\n%s", saved, cured)
	}

	p.click("#tab-paper")
	p.quiet()
	name, pdf := p.download(func() { p.click(`[data-what="wrap"][data-ending="pdf"]`) })
	if want := p.command("wrap", "three-leaves.toml", "--out", "command.pdf"); !bytes.Equal(pdf, want) {
		t.Errorf("%s of %d bytes is not that of the command, of %d", name, len(pdf), len(want))
	}
	if name != "three-leaves-wrap.pdf" {
		t.Errorf("the file is called %s", name)
	}
}

// download returns the file that the page hands over when something is done.
func (p *tab) download(do func()) (name string, data []byte) {
	p.t.Helper()
	folder := p.t.(*testing.T).TempDir()
	params := browser.SetDownloadBehaviorParams{Behavior: browser.SetDownloadBehaviorBehaviorAllow, DownloadPath: folder}
	if _, err := chromedp.CallBrowser(p.ctx, browser.SetDownloadBehavior, params); err != nil {
		p.t.Fatal(err)
	}
	do()
	for deadline := time.Now().Add(patience); time.Now().Before(deadline); time.Sleep(20 * time.Millisecond) {
		found, err := filepath.Glob(filepath.Join(folder, "*"))
		if err != nil {
			p.t.Fatal(err)
		}
		if len(found) != 1 || strings.HasSuffix(found[0], ".crdownload") || strings.HasPrefix(filepath.Base(found[0]), ".") {
			continue
		}
		data, err := os.ReadFile(found[0])
		if err == nil && len(data) > 0 {
			return filepath.Base(found[0]), data
		}
	}
	p.t.Fatalf("nothing is handed over; the page says %q", eval[string](p, `document.querySelector("#paper").innerText`))
	return "", nil
}

// command runs the program in the tab's folder, with a file to write as the last of what it
// is given, and returns that file.
func (p *tab) command(args ...string) []byte {
	p.t.Helper()
	program := filepath.Join(p.t.(*testing.T).TempDir(), "roundlay")
	if said, err := exec.Command("go", "build", "-o", program, "roundlay/cmd/roundlay").CombinedOutput(); err != nil {
		p.t.Fatalf("%v\n%s", err, said)
	}
	run := exec.Command(program, args...)
	run.Dir = p.folder
	if said, err := run.CombinedOutput(); err != nil && run.ProcessState.ExitCode() > 1 {
		p.t.Fatalf("%v: %v\n%s", args, err, said)
	}
	return []byte(p.read(args[len(args)-1]))
}
