package files_test

import (
	"fmt"

	"roundlay/cmd/desk/files"
	"roundlay/pattern/job"
	"roundlay/render/wrap"
)

// What somebody chose for the paper comes as words, and is read for one job: a bare number
// has the job's unit.
func Example() {
	name, demo := job.Demo()
	j, err := job.Read(name, demo)
	if err != nil {
		fmt.Println(err)
		return
	}
	options, err := files.Print{Paper: files.Paper{Paper: "letter"}, Side: "inside", Thickness: "0.004"}.Options(j)
	fmt.Printf("%v %.3f mm %v\n", options.Side == wrap.Inside, options.Thickness, err)
	_, err = files.Print{Side: "within"}.Options(j)
	fmt.Println(err)
	fmt.Println(files.WrapFile(j, j.Blanks[0], options.Side) + files.PDF)
	// Output:
	// true 0.102 mm <nil>
	// side: read "within"; accepted: outside, inside, patches, base
	// hedgerow-tumblers-inside-wrap.pdf
}
