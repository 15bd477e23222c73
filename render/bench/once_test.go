package bench

import (
	"strings"
	"testing"

	"roundlay/pattern/job"
)

// A design that goes round once has no settings: a sentence says so.
func TestOneRepeatHasNoSettings(t *testing.T) {
	_, demo := job.Demo()
	once := strings.Replace(string(demo), "repeats = 5", "repeats = 1", 1)
	if once == string(demo) {
		t.Fatal("the demo does not have the line this test changes")
	}
	said := allWords(sheetOf(t, plansOf(t, once), ""))
	for _, want := range []string{"One repeat: there is nothing to divide", "One mark at the foot."} {
		if !strings.Contains(said, want) {
			t.Errorf("the sheet does not say %q", want)
		}
	}
	for _, none := range []string{"Set the dividers", "the last step", "exactly 0", "Number them"} {
		if strings.Contains(said, none) {
			t.Errorf("the sheet says %q", none)
		}
	}
}
