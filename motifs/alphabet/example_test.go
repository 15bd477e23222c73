package alphabet_test

import (
	"fmt"

	"roundlay/motifs/alphabet"
)

// A text becomes strokes in cap heights. By hand: the I stands a bearing of half the
// white, 0.21, from where the line begins, and its accent has its middle over it.
func Example() {
	line, err := alphabet.Write("í")
	if err != nil {
		fmt.Println(err)
		return
	}
	for _, s := range line.Strokes {
		fmt.Printf("%s from %.2f, %.2f to %.2f, %.2f\n", s.Part, s.Path[0].X, s.Path[0].Y, s.Path[3].X, s.Path[3].Y)
	}
	_, err = alphabet.Write("π")
	fmt.Println(err)
	// Output:
	// letter from 0.21, 1.00 to 0.21, 0.00
	// accent from 0.31, 1.30 to 0.13, 1.12
	// read 'π' in "π"; accepted: A to Z, 0 to 9, & . - ' and spaces, the accents of Latin languages, Æ Œ ẞ Ø Ð Þ Ł Đ Ħ Ŧ Ŋ; small letters are set as capitals
}
