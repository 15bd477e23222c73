package groove_test

import "testing"

// known are the random turnings that the package still tells wrongly, or the search
// does, by what differs and, in millimetres, by how much at the most: faults, none
// of which may grow. One that is mended is to be taken out.
var known = map[string]map[string]float64{
	// A mitre beside the line bites beyond its start: less is left than told.
	"gang 247": {"glass left": 0.0888},
	// Light touches on a bulge or a hollow: the mark is told aside of where it is searched.
	"flat 823":  {"left": 0.1524, "right": 0.1054},
	"flat 649":  {"left": 0.0287},
	"round 768": {"left": 0.0212},
	"round 692": {"left": 0.0418},
	// It rests on a corner too, and that second mark's width is not told.
	"flat 370": {"right": 1.8612},
	// A dressed tip that only grazes.
	"mitre 355": {"mark": 0.1051, "left": 0.0449},
	// One touch where the glass twists strongly.
	"mitre 120": {"left": 0.0472, "right": 0.0707, "depth": 0.0818},
}

// knownFault names a known fault in the log.
func knownFault(which, what string) string { return "known fault: " + which + ": " + what }

// checkKnown reports known faults that are no more.
func checkKnown(t *testing.T, w *worst) {
	if testing.Short() { // it does not come to all of them
		return
	}
	for which, faults := range known {
		for what := range faults {
			if w.n[knownFault(which, what)] == 0 {
				t.Errorf("%s: %s differs no more: take it out of the known faults", which, what)
			}
		}
	}
}
