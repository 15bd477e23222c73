package files

import (
	"math"
	"strconv"
	"strings"

	"roundlay/render/picture"
)

// View is how a glass is looked at, in words; empty ones leave what is usual.
type View struct {
	Turn, Tilt      string // degrees
	Round, Findings bool
	Base            bool // the underside, which has no tilt
}

// UsualTilt is how far down one looks at a glass unless asked otherwise.
const UsualTilt = "7"

// Options reads the words.
func (v View) Options() (picture.Options, error) {
	o := picture.Options{Round: v.Round, Findings: v.Findings, Base: v.Base}
	var err error
	if v.Turn != "" {
		if o.Turn, err = readDegrees("turn", v.Turn, -360, 360); err != nil {
			return o, err
		}
	}
	if v.Tilt == "" {
		v.Tilt = UsualTilt
	}
	o.Tilt, err = readDegrees("tilt", v.Tilt, 0, picture.MaxTilt*180/math.Pi)
	return o, err
}

// readDegrees reads an angle in degrees, and returns it in radians.
func readDegrees(option, text string, least, most float64) (float64, error) {
	degrees, err := strconv.ParseFloat(strings.TrimSuffix(strings.TrimSpace(text), "°"), 64)
	if err != nil || !(degrees >= least && degrees <= most) {
		return 0, wrongf(option, "read %q; accepted: degrees from %.0f to %.0f, such as 12.5", text, least, most)
	}
	return degrees * math.Pi / 180, nil
}
