package job

import (
	"fmt"
	"testing"
)

// What TakesWheel says of a wheel is what reading it says.
func TestTakesWheel(t *testing.T) {
	for _, across := range []float64{4.9, 5, 6.3, 6.4, 30, 999, 1001} {
		for _, edge := range []string{`edge="mitre", angle=90`, `edge="mitre", angle=25`, `edge="flat"`, `edge="gang", angle=60, mitres=3, spacing=2`} {
			text := fmt.Sprintf(`
length = "mm"
blank = {station=[{height=0, across=80, wall=8}, {height=100, across=80, wall=3}]}
wheel = [{name="w", thick=6.35, across=%%g, %s}]
layout.repeats = 1
motif = [{kind="diamond", wheel="w", depth=1}]
`, edge)
			j, err := Read("wheel.toml", fmt.Appendf(nil, text, 100.0))
			if err != nil {
				t.Fatal(err)
			}
			w := j.Rack[0]
			w.Radius = across / 2
			_, err = Read("wheel.toml", fmt.Appendf(nil, text, across))
			if takes := TakesWheel(w); takes != (err == nil) {
				t.Errorf("%s, %g mm across: takes it %v, read: %v", edge, across, takes, err)
			}
		}
	}
}
