package job

import (
	"math"
	"testing"
)

func TestParseMinutes(t *testing.T) {
	for text, want := range map[string]float64{
		"95": 95, "95 min": 95, " 95min ": 95, "12.5": 12.5, "1 h 35 min": 95, "1h35": 95, "2 h": 120, "2H": 120,
		"1:35": 95, "0:07": 7, "90 minutes": 90, "0.5 h": 30, "1 hr 35": 95, "1 hr": 60, "2 hours": 120, "0": 0, "0:00": 0,
		"1 hour 35 minutes": 95, "80m": 80, "1½ h": 90, "1 1/2 h": 90, "1,5 h": 90, "1 h 20": 80, "1h35min": 95, "7 1/2": 7.5,
	} {
		if got, err := ParseMinutes(text); err != nil || math.Abs(got-want) > 1e-9 {
			t.Errorf("%q is read as %v, %v; want %v", text, got, err, want)
		}
	}
	for _, text := range []string{"", "-5", "1:5", "1:355", "h", "five", "1 h 2 h", "NaN", "Inf", "1e9", "5 s", ":30", "1:75", "1 h 95 min", "1:-5", "2 in", "3 mm", "1 h 2 in", "h 5", "1//2 h"} {
		if got, err := ParseMinutes(text); err == nil {
			t.Errorf("%q is read as %v", text, got)
		}
	}
}
