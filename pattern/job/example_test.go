package job_test

import (
	"errors"
	"fmt"
	"strings"

	"roundlay/pattern/job"
)

const text = `length = "in"

[blank]
station = [
  {height = 0,       across = "3 1/8", wall = "3/8"},
  {height = "3 1/2", across = "3 1/4", wall = "3/32"},
]

[[wheel]]
name = "mitre"
edge = "mitre"
across = 4
thick = "1/4"
angle = 90

[layout]
repeats = 3

[[motif]]
kind = "leaf"
wheel = "mitre"
depth = "1/16"
`

// A job is read whole, in millimetres, or refused with the line and the key that
// are wrong. By hand: 3 1/2 in are 88.9 mm, half of 3 1/8 in is 39.69 mm.
func Example() {
	j, err := job.Read("tumbler.toml", []byte(text))
	if err != nil {
		fmt.Println(err)
		return
	}
	blank := j.Blanks[0]
	fmt.Printf("%d repeats on a glass %.1f mm high, of radius %.2f mm at the foot\n",
		j.Layout.Repeats, blank.Height(), blank.Stations[0].Radius)

	_, err = job.Read("tumbler.toml", []byte(strings.Replace(text, "angle = 90", "angle = 9", 1)))
	var wrong *job.Error
	if errors.As(err, &wrong) {
		fmt.Printf("line %d, %s: read %s\n", wrong.Line, wrong.Key, wrong.Read)
	}
	// Output:
	// 3 repeats on a glass 88.9 mm high, of radius 39.69 mm at the foot
	// line 14, wheel[1].angle: read 9
}

// A change by path, as from a form: the engine writes the TOML, and what follows from the
// change is changed too.
func ExampleRevise() {
	text := `[[wheel]]
name = "fine"   # the thin one
edge = "mitre"
angle = 90

[[motif]]
wheel = "fine"
`
	out, err := job.Revise([]byte(text),
		job.Revision{Op: "set", Path: "wheel[1].name", Value: "sharp"},
		job.Revision{Op: "set", Path: "motif[1].depth", Value: "1/32"})
	fmt.Print(string(out), err)
	// Output:
	// [[wheel]]
	// name = "sharp"   # the thin one
	// edge = "mitre"
	// angle = 90
	//
	// [[motif]]
	// wheel = "sharp"
	// depth = "1/32"
	// <nil>
}
