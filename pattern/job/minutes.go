package job

import (
	"errors"
	"fmt"
	"regexp"
	"strconv"
	"strings"
	"sync"

	"github.com/pelletier/go-toml/v2/unstable"

	"roundlay/geometry"
)

// TimeForms shows how a time may be written, for messages.
const TimeForms = `minutes, such as 95 or "95 min", or hours too, such as 1:35, "1 h 35 min" or "1 1/2 h"`

// ParseMinutes reads a time in minutes, from 0 up to 1e5: 95, "95 min", "1 h 35 min",
// "1 1/2 h" or 1:35.
func ParseMinutes(text string) (float64, error) {
	wrong := errors.New("not a time")
	if hours, minutes, clock := strings.Cut(strings.TrimSpace(text), ":"); clock {
		h, err1 := strconv.ParseUint(hours, 10, 8)
		m, err2 := strconv.ParseUint(minutes, 10, 8)
		if err1 != nil || err2 != nil || len(minutes) != 2 || m > 59 {
			return 0, wrong
		}
		return float64(60*h + m), nil
	}
	parts := timeForm().FindStringSubmatch(strings.ToLower(strings.TrimSpace(text)))
	if parts == nil || parts[1]+parts[2] == "" {
		return 0, wrong
	}
	// Numbers are read as lengths are: they may be mixed with a fraction.
	total := 0.0
	for i, minutes := range []float64{60, 1} {
		if parts[i+1] == "" {
			continue
		}
		n, err := geometry.Millimetre.Parse(strings.Replace(parts[i+1], ",", ".", 1))
		if err != nil || n < 0 || i == 1 && n >= 60 && parts[1] != "" {
			return 0, wrong
		}
		total += n * minutes
	}
	if !(total < 1e5) {
		return 0, wrong
	}
	return total, nil
}

// timeForm is hours, minutes, or both, each with a word for its unit. Minutes alone
// need none.
var timeForm = sync.OnceValue(func() *regexp.Regexp {
	return regexp.MustCompile(`^(?:([0-9][0-9 ./,¼½¾-]*?)\s*(?:hours?|hrs?|h)\b?)?\s*(?:([0-9][0-9 ./,¼½¾-]*?)\s*(?:minutes?|mins?|m)?)?$`)
})

// minutes reads a time from nothing up to so many minutes.
func (f field) minutes(most float64) (float64, bool) {
	accepted := fmt.Sprintf("a time from 0 to %g h: %s", most/60, TimeForms)
	if f.absent(accepted) {
		return 0, false
	}
	var minutes float64
	var err error
	switch v := f.value; {
	case v.isNumber():
		minutes, err = v.number()
	case v.kind == unstable.String && len(v.text) <= 60:
		minutes, err = ParseMinutes(v.text)
	default:
		f.refuse(accepted, "")
		return 0, false
	}
	if err != nil || !(minutes >= 0 && minutes <= most) {
		f.refuse(accepted, "")
		return 0, false
	}
	return minutes, true
}
