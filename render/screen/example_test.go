package screen_test

import (
	"context"
	"fmt"

	"roundlay/pattern"
	"roundlay/pattern/job"
	"roundlay/render/screen"
)

func Example() {
	j, err := job.Read(job.Demo())
	if err != nil {
		fmt.Println(err)
		return
	}
	plan, err := pattern.New(context.Background(), j, j.Blanks[0])
	if err != nil {
		fmt.Println(err)
		return
	}
	flat, err := screen.NewFlat(plan, false)
	if err != nil {
		fmt.Println(err)
		return
	}
	w := screen.NewWrap(flat)
	fmt.Printf("a %s, drawn %d times; motif 1 is a %s\n", w.Flat, len(w.Copies), w.Motifs[0].Called)
	// Output: a cone, drawn 5 times; motif 1 is a leaf
}
