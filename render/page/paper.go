package page

import (
	"fmt"
	"regexp"
	"strings"
	"sync"
	"unicode"
	"unicode/utf8"

	"roundlay/geometry"
)

// Paper is a sheet as it goes into the printer, in millimetres.
type Paper struct {
	Name          string // what it was asked for by
	Width, Height float64
}

// Title is the paper's name as it stands on a page: A4, letter.
func (p Paper) Title() string {
	if len(p.Name) == 2 {
		return strings.ToUpper(p.Name)
	}
	return p.Name
}

// Papers returns the sheets known by name: ISO 216, ASME Y14.1 and, for legal,
// trade custom.
func Papers() []Paper {
	return []Paper{
		{"a4", 210, 297},
		{"letter", 8.5 * geometry.MillimetresPerInch, 11 * geometry.MillimetresPerInch},
		{"legal", 8.5 * geometry.MillimetresPerInch, 14 * geometry.MillimetresPerInch},
		{"a3", 297, 420},
		{"tabloid", 11 * geometry.MillimetresPerInch, 17 * geometry.MillimetresPerInch},
	}
}

// PaperForms shows how a paper may be asked for, in messages.
const PaperForms = "a4, letter, legal, a3, tabloid, or a size such as 210x297mm or 8.5x11in"

// A side is at least what a check bar of four inches needs with a little air at
// both ends. No number is within these limits both as inches and as millimetres,
// so a size without a unit can be read in one way only.
const (
	minSide = 115
	maxSide = 60 * geometry.MillimetresPerInch
)

// by stands between a sheet's width and its height.
var by = sync.OnceValue(func() *regexp.Regexp { return regexp.MustCompile(`(?i)\s*(?:[x×*]|\bby\b)\s*`) })

// ParsePaper reads a sheet's name or its width and height. A unit behind one
// side alone holds for both; without any, the size is in whichever of
// millimetres and inches makes a sheet of it.
func ParsePaper(text string) (Paper, error) {
	text = strings.TrimSpace(text)
	for _, p := range Papers() {
		if strings.EqualFold(p.Name, text) {
			return p, nil
		}
	}
	unread := fmt.Errorf("read %q; accepted: %s", text, PaperForms)
	sides := by().Split(text, -1)
	if len(sides) != 2 {
		return Paper{}, unread
	}
	width, height := sides[0]+missing(sides[0], sides[1]), sides[1]+missing(sides[1], sides[0])
	var across, up float64
	for _, unit := range []geometry.Unit{geometry.Inch, geometry.Millimetre} {
		var err error
		if across, err = unit.Parse(width); err != nil {
			return Paper{}, fmt.Errorf("%w; %w", unread, err)
		}
		if up, err = unit.Parse(height); err != nil {
			return Paper{}, fmt.Errorf("%w; %w", unread, err)
		}
		if min(across, up) >= minSide && max(across, up) <= maxSide {
			return Paper{text, across, up}, nil
		}
	}
	return Paper{}, fmt.Errorf("read %q, which is %.4g by %.4g mm; accepted: a sheet of %d to %.0f mm a side", text, across, up, minSide, maxSide)
}

// missing returns the unit behind the other side, where this one has none.
func missing(side, other string) string {
	if unitOf(side) != "" {
		return ""
	}
	return unitOf(other)
}

// unitOf returns what follows the last digit of a length.
func unitOf(side string) string {
	i := strings.LastIndexFunc(side, unicode.IsNumber)
	if i < 0 {
		return ""
	}
	_, size := utf8.DecodeRuneInString(side[i:])
	return side[i+size:]
}
