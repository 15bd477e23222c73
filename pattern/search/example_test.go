package search_test

import (
	"context"
	"fmt"
	"strings"

	"roundlay/pattern/job"
	"roundlay/pattern/search"
)

// The demo with 18 fronds: they crowd, and the lowest are too short for their depth.
func Example() {
	ctx := context.Background()
	name, text := job.Demo()
	crowded := strings.Replace(string(text), "fronds = 7", "fronds = 18", 1)
	j, err := job.Read(name, []byte(crowded))
	if err != nil {
		fmt.Println(err)
		return
	}
	plans, err := search.Lay(ctx, j)
	if err != nil {
		fmt.Println(err)
		return
	}
	if err := search.Cures(ctx, plans...); err != nil {
		fmt.Println(err)
		return
	}
	for _, g := range plans[0].Groups() {
		cure := g.Worst().Cure
		fmt.Print(g.Letter, " ", g.Kind)
		for _, c := range cure.Changes {
			fmt.Printf(": %s, %s = %s", c.Name(j), c.Key, c.Says(j.With(cure.Changes...)))
		}
		fmt.Println()
	}
	// Output:
	// A crowded: motif 1 (leaf), fronds = 16
	// B shallow: motif 1 (leaf), width = 0.734: motif 1 (leaf), height = 1
}
