// Package fribidi says of every letter that it is read from left to right.
//
// It stands in for a module of this name, which canvas asks for and which is under the
// LGPL; go.mod has the line that puts this in its place. It has what canvas calls, and
// nothing else. Words are set in the Go fonts, which have no letter that is read from right
// to left, and Letters.Printable puts a box for what they lack.
package fribidi

// CharType is the direction of words as a whole.
type CharType int

// ON leaves the direction to the words.
const ON CharType = 0

// Options is how words are ordered.
type Options int

// DefaultFlags is the one way there is.
const DefaultFlags Options = 0

// Visual is letters in the order in which they are read.
type Visual struct {
	EmbeddingLevels []int8 // of each letter: 0, from left to right
}

// LogicalToVisual returns letters in the order they came in.
func LogicalToVisual(_ Options, letters []rune, _ *CharType) (Visual, error) {
	return Visual{EmbeddingLevels: make([]int8, len(letters))}, nil
}
