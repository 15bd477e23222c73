package job

import (
	"fmt"
	"math"
	"regexp"
	"slices"
	"strconv"
	"strings"
	"sync"
	"unicode"

	"github.com/pelletier/go-toml/v2/unstable"
)

// plainNumber is a number as both a person and TOML write it.
var plainNumber = sync.OnceValue(func() *regexp.Regexp { return regexp.MustCompile(`^-?(0|[1-9][0-9]*)(\.[0-9]+)?$`) })

// number is a number as TOML has it in digits.
var number = sync.OnceValue(func() *regexp.Regexp {
	return regexp.MustCompile(`^[-+]?(0|[1-9][0-9]*)(\.[0-9]+)?([eE][-+]?[0-9]+)?$`)
})

// item returns the key for one item of the list that a key takes.
func (k Key) item() Key {
	switch k.Sort {
	case OfPlace:
		k.Sort = OfMeasure
	case OfHeights, OfLengths, OfWear:
		k.Sort = OfLength
	case OfWheels:
		k.Sort = OfWheel
	case OfTexts:
		k.Sort = OfText
	case OfRepeats:
		k.Sort, k.Words = OfWhole, nil
	case OfShares:
		k.Sort = OfShare
	case OfRock:
		k.Sort = OfDegrees
	}
	return k
}

// listed reports whether a key takes a list, and may whether it can do without.
func (k Key) listed() (takes, may bool) {
	switch k.Sort {
	case OfPlace, OfHeights, OfWheels, OfTexts, OfWear, OfShares, OfRock:
		return true, false
	case OfLengths:
		return true, true
	case OfRepeats:
		return true, len(k.Words) > 0
	}
	return false, false
}

// toml writes as TOML what a person typed for a key: a text, or a JSON number, switch
// or list of these. What the key doesn't take is written as it was typed, for the
// reader to say what is wrong with it.
func (k Key) toml(value any) (string, error) {
	switch v := value.(type) {
	case string:
		takes, may := k.listed()
		items := itemsOf(v)
		switch k.Sort {
		case OfTexts:
			items = textsOf(v)
		case OfShares, OfRock:
			items = numbersOf(v)
		case OfRepeats:
			items = numbersOf(v)
			may = may && !plainNumber().MatchString(strings.Join(items, ""))
		}
		if takes && (!may || len(items) > 1) {
			return k.list(items)
		}
		return k.scalar(v), nil
	case bool:
		return k.scalar(strconv.FormatBool(v)), nil
	case int:
		return k.scalar(strconv.Itoa(v)), nil
	case float64:
		if math.IsNaN(v) || math.IsInf(v, 0) {
			return "", fmt.Errorf("%g is no value for %s", v, k.Name)
		}
		return k.scalar(strconv.FormatFloat(v, 'f', -1, 64)), nil
	case fmt.Stringer: // json.Number
		return k.scalar(v.String()), nil
	case []string:
		return k.list(v)
	case []any:
		return k.list(v)
	}
	return "", fmt.Errorf("%T is no value for %s", value, k.Name)
}

// eitherWay reports whether a number means the same to the key in quotes and without.
func (k Key) eitherWay() bool {
	return slices.Contains([]Sort{OfLength, OfLengths, OfHeights, OfTime}, k.Sort)
}

// list writes a list.
func (k Key) list(value any) (string, error) {
	var values []any
	switch v := value.(type) {
	case []any:
		values = v
	case []string:
		for _, text := range v {
			values = append(values, text)
		}
	}
	items := make([]string, len(values))
	for i, v := range values {
		switch v.(type) {
		case []any, []string:
			return "", fmt.Errorf("a list in a list is no value for %s", k.Name)
		}
		written, err := k.item().toml(v)
		if err != nil {
			return "", err
		}
		items[i] = written
	}
	return "[" + strings.Join(items, ", ") + "]", nil
}

// itemsOf returns the items of a list that was typed as one text. A comma alone can be
// someone's decimal point.
func itemsOf(text string) []string {
	var items []string
	for _, item := range strings.Split(strings.ReplaceAll(text, ";", ", "), ", ") {
		if item = strings.TrimSpace(item); item != "" {
			items = append(items, item)
		}
	}
	return items
}

// textsOf returns the items of a list of texts that was typed as one text. A text may hold
// commas.
func textsOf(text string) []string {
	items := []string{}
	for _, item := range strings.FieldsFunc(text, func(r rune) bool { return r == ';' || r == '\n' }) {
		if item = strings.TrimSpace(item); item != "" {
			items = append(items, item)
		}
	}
	return items
}

// numbersOf returns the items of a list of plain numbers that was typed as one text, with or
// without brackets.
func numbersOf(text string) []string {
	return strings.FieldsFunc(text, func(r rune) bool { return strings.ContainsRune("[],; \t", r) })
}

// scalar writes one text, number or switch.
func (k Key) scalar(typed string) string {
	text := strings.TrimSpace(typed)
	switch k.Sort {
	case OfNumber, OfWhole, OfShare, OfDegrees, OfMotif:
		if number().MatchString(text) {
			return text
		}
		if digits, ok := inFullDigits(text); ok {
			return digits
		}
	case OfMeasure, OfPlace:
		if digits, ok := inFullDigits(text); ok {
			return digits
		}
	case OfLength, OfLengths, OfHeights, OfTime:
		if plainNumber().MatchString(text) {
			return text
		}
	case OfSwitch:
		if lower := strings.ToLower(text); lower == "true" || lower == "false" {
			return lower
		}
	default:
		text = typed
	}
	return inTOML(text)
}

// inFullDigits writes a number with the digits that TOML asks for: .5 as 0.5.
func inFullDigits(text string) (string, bool) {
	if plainNumber().MatchString(text) {
		return text, true
	}
	x, err := strconv.ParseFloat(text, 64)
	if err != nil || math.IsInf(x, 0) || strings.Trim(text, "-+.0123456789") != "" {
		return "", false
	}
	return strconv.FormatFloat(x, 'f', -1, 64), true
}

// inTOML writes a text as TOML does. One with an inch mark is easier to read in single
// quotes.
func inTOML(text string) string {
	if strings.Contains(text, `"`) && !strings.ContainsFunc(text, func(r rune) bool { return r == '\'' || unicode.IsControl(r) }) {
		return "'" + text + "'"
	}
	var b strings.Builder
	b.WriteByte('"')
	for _, r := range text {
		switch {
		case r == '"' || r == '\\':
			b.WriteByte('\\')
			b.WriteRune(r)
		case unicode.IsControl(r):
			fmt.Fprintf(&b, `\u%04X`, r)
		default:
			b.WriteRune(r)
		}
	}
	b.WriteByte('"')
	return b.String()
}

// joinedItems is how the items of a list are typed in one line.
func joinedItems(items []string) string { return strings.Join(items, ", ") }

// typed returns what a person would type for the value that stands at a place: no
// quotes, a list as its items. Where that would be written as another value, it is made
// plain what this one is.
func (r *revising) typed(k Key, v *value, from, to int) (text string, items []string) {
	if v.kind == unstable.Array && !v.open {
		items = []string{}
		for i, p := range parts(r.text, from) {
			one, _ := r.typed(k.item(), v.items[i], p.from, p.to)
			items = append(items, one)
		}
		if k.Sort == OfTexts {
			return strings.Join(items, "; "), items
		}
		return joinedItems(items), items
	}
	if v.kind != unstable.String {
		return r.text[from:to], nil
	}
	if manner(k.scalar(v.text)) != '"' && !k.eitherWay() {
		// It is a text in the file, and would be a number or a switch.
		if k.Sort == OfMeasure {
			return v.text + " " + r.unit().String(), nil
		}
		return strconv.Quote(v.text), nil
	}
	return v.text, nil
}
