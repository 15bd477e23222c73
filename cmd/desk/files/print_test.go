package files

import (
	"errors"
	"strings"
	"testing"

	"roundlay/pattern/job"
)

// What is wrong with an option is said with its name, without a command's dashes.
func TestWrongOptions(t *testing.T) {
	j, err := job.Read(job.Demo())
	if err != nil {
		t.Fatal(err)
	}
	none := 0
	for want, of := range map[string]Print{
		"paper":          {Paper: Paper{Paper: "a9"}},
		"margin":         {Paper: Paper{Margin: "900 mm"}},
		"side":           {Side: "above"},
		"seam":           {Seam: "glue"},
		"seam-at":        {SeamAt: &none},
		"thickness":      {Thickness: "thick"},
		"printed-across": {PrintedAcross: "4 in"},
		"printed-up":     {PrintedUp: "50 mm"},
	} {
		_, err := of.Options(j)
		var wrong *OptionError
		if !errors.As(err, &wrong) || wrong.Option != want || strings.Contains(err.Error(), "--") {
			t.Errorf("%s: %v", want, err)
		}
	}
	for want, of := range map[string]View{"turn": {Turn: "round"}, "tilt": {Tilt: "80"}} {
		var wrong *OptionError
		if _, err := of.Options(); !errors.As(err, &wrong) || wrong.Option != want {
			t.Errorf("%s: %v", want, err)
		}
	}
	if o, err := (Print{}).Options(j); err != nil || o.SeamAt != 1 {
		t.Errorf("nothing asked: %+v, %v", o, err)
	}
}
