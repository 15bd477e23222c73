package alphabet

import (
	"fmt"
	"strings"
	"unicode"
	"unicode/utf8"

	"golang.org/x/text/unicode/norm"
)

// MaxLetters is the greatest number of letters a text may have, spaces and signs counted.
const MaxLetters = 24

// Accepted says in words what a text may hold.
const Accepted = "A to Z, 0 to 9, & . - ' and spaces, the accents of Latin languages, Æ Œ ẞ Ø Ð Þ Ł Đ Ħ Ŧ Ŋ; small letters are set as capitals"

// spelled is one letter of a text: its base as a capital, and the accents on it as
// combining marks, 0 where there is none.
type spelled struct{ base, above, below rune }

// read splits a text into letters. However its accents are spelled, as one character
// or as several, the letters are the same.
func read(text string) ([]spelled, error) {
	if !utf8.ValidString(text) {
		return nil, fmt.Errorf("read %s, which is no text in UTF-8; accepted: %s", short(text), Accepted)
	}
	if utf8.RuneCountInString(text) > 3*MaxLetters {
		return nil, tooLong(text)
	}
	var letters []spelled
	for _, r := range strings.Trim(norm.NFD.String(text), " \u00a0") {
		if unicode.Is(unicode.Mn, r) {
			if err := accent(letters, r, text); err != nil {
				return nil, err
			}
			continue
		}
		bases := capitals(r)
		for _, base := range bases {
			letters = append(letters, spelled{base: base})
		}
		if len(bases) == 0 {
			return nil, refused(r, text)
		}
	}
	switch {
	case len(letters) > MaxLetters:
		return nil, tooLong(text)
	case len(letters) == 0:
		return nil, fmt.Errorf("read %s, which has no letters; accepted: %s", short(text), Accepted)
	}
	return letters, nil
}

// capitals returns what a character is set as: mostly one capital, none for a
// character that is not accepted.
func capitals(r rune) []rune {
	switch r {
	case 'ß':
		return []rune{'ẞ'}
	case 'Ĳ', 'ĳ':
		return []rune{'I', 'J'}
	case 'ŉ':
		return []rune{'\'', 'N'}
	case '’', 'ʼ':
		return []rune{'\''}
	case '\u00a0', ' ':
		return []rune{' '}
	}
	if up := unicode.ToUpper(r); len(letterStrokes(up)) > 0 {
		return []rune{up}
	}
	return nil
}

// accent puts a combining mark on the last letter.
func accent(letters []spelled, mark rune, text string) error {
	if len(letters) == 0 || !unicode.IsLetter(letters[len(letters)-1].base) {
		return fmt.Errorf("read an accent (U+%04X) with no letter under it in %s; accepted: %s", mark, short(text), Accepted)
	}
	last := &letters[len(letters)-1]
	switch {
	case len(above(mark)) > 0 && last.above == 0:
		last.above = mark
	case len(below(mark)) > 0 && last.below == 0:
		last.below = mark
	case len(above(mark)) > 0, len(below(mark)) > 0:
		return fmt.Errorf("read two accents on one side of %q in %s; accepted: one above a letter and one below it", last.base, short(text))
	default:
		return fmt.Errorf("read %q with an accent (U+%04X) in %s; accepted: grave, acute, circumflex, tilde, diaeresis, ring, caron, breve, macron, "+
			"double acute and dot above a letter, cedilla, ogonek and comma below it", last.base, mark, short(text))
	}
	return nil
}

func refused(r rune, text string) error {
	return fmt.Errorf("read %q in %s; accepted: %s", r, short(text), Accepted)
}

func tooLong(text string) error {
	return fmt.Errorf("read %s, which has more than %d letters; accepted: up to %d, spaces and signs counted", short(text), MaxLetters, MaxLetters)
}

// short quotes a text, cut off where it is long.
func short(text string) string {
	const most = 2 * MaxLetters
	if runes := []rune(text[:min(len(text), 4*(most+1))]); len(runes) > most {
		return fmt.Sprintf("%q…", string(runes[:most]))
	}
	return fmt.Sprintf("%q", text)
}
