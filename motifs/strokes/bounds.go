package strokes

import "fmt"

// A drawing is read whole or refused within these bounds, which keep any file to a
// few seconds and some hundred megabytes. A drawing that can be cut is far below
// them: a job takes 5,000 cuts.
const (
	maxBytes    = 16 << 20  // of a file; a picture to trace over may be inside
	maxDepth    = 256       // of elements in one another, uses followed
	maxElements = 100_000   // in the file, and again with uses followed
	maxCurves   = 200_000   // pieces of strokes
	maxMatches  = 3_000_000 // of style rules with elements
	maxEntities = 1 << 20   // bytes that entities stand for, all together
	maxPoints   = 500_000   // looked at on rough lines
	maxOutlines = 2000      // looked at for slivers
	maxJoins    = 100_000
)

// bounded says that a drawing is larger than is read.
func bounded(line int, what string, most int) *Error {
	return &Error{Line: line, Read: "a drawing with more than that", Accepted: fmt.Sprintf("up to %d %s", most, what)}
}
