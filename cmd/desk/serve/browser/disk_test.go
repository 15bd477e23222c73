package browser

import (
	"testing"

	"roundlay/pattern/job"
)

// A file that another program changes is noticed, and neither version is lost: whichever is
// kept, undo brings back the other.
func TestChangedOnDisk(t *testing.T) {
	_, demo := job.Demo()
	text := string(demo)
	theirs := "# written by another program\n" + text
	edit := func(p *tab) string {
		p.click("#tab-design")
		p.click(`[aria-label="Repeats: one fewer"]`)
		mine := p.text()
		if mine == text {
			t.Fatal("nothing is edited")
		}
		return mine
	}
	same := func(p *tab, what, want string) {
		t.Helper()
		if got := p.text(); got != want {
			t.Errorf("%s: got\n%.300s\nwant\n%.300s", what, got, want)
		}
	}

	p := open(t, text, 1440, 1000)
	p.write(jobFile, theirs)
	p.until(`/is shown as it is now/.test(document.querySelector("#notice").innerText)`)
	same(p, "without a change of one's own the disk's is shown", theirs)
	p.click("#undo")
	same(p, "undone", text)
	p.click("#redo")
	p.press("#notice", "Understood")

	p.write(jobFile, text)
	p.until(`/is shown as it is now/.test(document.querySelector("#notice").innerText)`)
	mine := edit(p)
	p.write(jobFile, theirs)
	p.until(`/Neither is lost/.test(document.querySelector("#notice").innerText)`)
	same(p, "before one is chosen", mine)
	p.press("#notice", "Keep mine")
	same(p, "mine is kept", mine)
	p.click("#undo")
	same(p, "the disk's is one step away", theirs)
	p.click("#redo")
	same(p, "and back", mine)
	p.control("s")
	p.until(`/saved/.test(document.querySelector("#saved").innerText) && !/not saved/.test(document.querySelector("#saved").innerText)`)
	if saved := p.read(jobFile); saved != mine {
		t.Errorf("saved is\n%.300s", saved)
	}

	p.click(`[aria-label="Repeats: one fewer"]`)
	other := p.text()
	p.write(jobFile, theirs)
	p.until(`/Neither is lost/.test(document.querySelector("#notice").innerText)`)
	p.press("#notice", "Take the disk's")
	same(p, "the disk's is taken", theirs)
	p.click("#undo")
	same(p, "mine is one step away", other)
}

// A save that comes before the page has noticed another's change is refused, and then both
// are there to choose from.
func TestSaveMeetsAnother(t *testing.T) {
	_, demo := job.Demo()
	p := open(t, string(demo), 1440, 1000)
	p.watched.pardon("409")
	p.click("#tab-design")
	p.click(`[aria-label="Repeats: one fewer"]`)
	mine := p.text()
	theirs := "# another\n" + string(demo)
	// At the same moment, as near as can be.
	p.write(jobFile, theirs)
	p.control("s")
	p.until(`/Neither is lost/.test(document.querySelector("#notice").innerText)`)
	if p.read(jobFile) != theirs {
		t.Error("the other's version is overwritten")
	}
	// Saved over without a look at the notice: the other's is still in the page.
	p.control("s")
	p.until(`/, saved/.test(document.querySelector("#saved").innerText)`)
	if saved := p.read(jobFile); saved != mine {
		t.Errorf("saved is\n%.300s", saved)
	}
	p.click("#undo")
	if p.text() != theirs {
		t.Errorf("the other's version is lost: undone it is\n%.300s", p.text())
	}
}
