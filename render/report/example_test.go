package report_test

import (
	"fmt"
	"os"

	"roundlay/pattern"
	"roundlay/pattern/job"
	"roundlay/render/report"
)

// Two upright bars 4 mm apart, a millimetre deep under a wheel of a right angle.
const tooNear = `length = "mm"
blank.station = [ {height = 0, across = 80, wall = 5}, {height = 100, across = 80, wall = 5} ]
wheel = [ {name = "mitre", edge = "mitre", across = 100, thick = 12, angle = 90} ]
layout = {repeats = 1, band = [20, 80]}
`

func Example() {
	_ = tooNear
	_ = fmt.Sprint
	_ = os.Stdout
	_ = pattern.New
	_ = job.Read
	_ = report.Check
}
