package browser

import (
	"os"
	"path/filepath"
	"testing"

	"github.com/chromedp/chromedp"
)

// A job begun anew while a file is open has no file: Save asks for a name, and the file that
// was open stays as it is. Undo goes back to that file, redo to the new one.
func TestNewJobLeavesTheFile(t *testing.T) {
	old := gallery(t, "quilted-highball")
	p := open(t, old, 1440, 1000)
	p.click(".menu summary")
	p.click("#new-job")
	p.click("#new-guide")
	p.guided()
	started := p.text()
	p.click("#save")
	if name := eval[string](p, `document.querySelector("#asked").value`); name != "three-leaves.toml" {
		t.Errorf("the name proposed is %q", name)
	}
	p.press("dialog", "Save")
	p.until(`/three-leaves\.toml, saved/.test(document.querySelector("#saved").innerText)`)
	if now := p.read(jobFile); now != old {
		t.Errorf("%s was written over with\n%s", jobFile, now)
	}
	if saved := p.read("three-leaves.toml"); saved != started {
		t.Errorf("saved is\n%s", saved)
	}

	p.click("#undo")
	p.until(`/^job\.toml, saved/.test(document.querySelector("#saved").innerText)`)
	if back := p.text(); back != old {
		t.Errorf("undone it is\n%s", back)
	}
	p.click("#redo")
	p.until(`/^three-leaves\.toml, saved/.test(document.querySelector("#saved").innerText)`)
	p.load()
	if again := p.text(); again != started && again != old {
		t.Errorf("loaded again it is\n%s", again)
	}
}

// A file that is chosen is shown as a new job, which proposes that file's name.
func TestOpenAnother(t *testing.T) {
	old, other := gallery(t, "quilted-highball"), gallery(t, "fern-and-beam")
	p := open(t, old, 1440, 1000)
	elsewhere := filepath.Join(t.TempDir(), "goblet.toml")
	if err := os.WriteFile(elsewhere, []byte(other), 0o600); err != nil {
		t.Fatal(err)
	}
	p.click(".menu summary")
	p.click("#open-job")
	p.do(chromedp.SetUploadFiles("#chosen-file", []string{elsewhere}, chromedp.NodeReady))
	p.until(`/^Not in a file yet/.test(document.querySelector("#saved").innerText)`)
	if got := p.text(); got != other {
		t.Errorf("opened is\n%s", got)
	}
	p.click("#save")
	if name := eval[string](p, `document.querySelector("#asked").value`); name != "goblet.toml" {
		t.Errorf("the name proposed is %q", name)
	}
	p.press("dialog", "Save")
	p.until(`/^goblet\.toml, saved/.test(document.querySelector("#saved").innerText)`)
	if p.read(jobFile) != old || p.read("goblet.toml") != other {
		t.Error("the two files are not as they were")
	}
}
