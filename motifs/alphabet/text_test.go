package alphabet_test

import (
	"reflect"
	"strings"
	"testing"
	"unicode"

	"golang.org/x/text/unicode/norm"

	"roundlay/motifs/alphabet"
)

// TestLatin sets every letter of Latin-1 and Latin Extended-A, composed, decomposed and
// small: each gives the strokes of its capital.
func TestLatin(t *testing.T) {
	count := 0
	for r := rune(0xc0); r <= 0x17f; r++ {
		if r == '×' || r == '÷' || r == 'ĸ' {
			if l, err := alphabet.Write(string(r)); err == nil {
				t.Errorf("%c is set in %d strokes", r, len(l.Strokes))
			}
			continue
		}
		count++
		composed := write(t, string(r))
		if decomposed := write(t, norm.NFD.String(string(r))); !reflect.DeepEqual(composed, decomposed) {
			t.Errorf("%c differs when it is decomposed", r)
		}
		if capital := write(t, strings.ToUpper(strings.ReplaceAll(string(r), "ß", "ẞ"))); !reflect.DeepEqual(composed, capital) {
			t.Errorf("%c differs from its capital", r)
		}
		base, _ := []rune(norm.NFD.String(string(r)))[0], 0
		if plain, err := alphabet.Write(string(base)); base != r && (err != nil || len(plain.Strokes) >= len(composed.Strokes)) {
			t.Errorf("%c has no more strokes than %c", r, base)
		}
	}
	if count != 192-3 {
		t.Errorf("%d letters", count)
	}
}

// TestAccentsDiffer finds no two accents that look alike on a letter.
func TestAccentsDiffer(t *testing.T) {
	all := []rune(marksAbove + marksBelow)
	for i, a := range all {
		for _, b := range all[:i] {
			if reflect.DeepEqual(write(t, "O"+string(a)), write(t, "O"+string(b))) {
				t.Errorf("U+%04X and U+%04X look alike", a, b)
			}
		}
	}
}

// TestPlainText sets text as people type it.
func TestPlainText(t *testing.T) {
	for text, same := range map[string]string{
		"anna": "ANNA", " A B ": "A B", "O’Hara": "O'HARA", "Straße": "STRAẞE", "ŉ": "'N", "ĳs": "IJS", "A\u00a0B": "A B",
		strings.Repeat("ő", alphabet.MaxLetters): strings.Repeat("Ő", alphabet.MaxLetters),
	} {
		if !reflect.DeepEqual(write(t, text), write(t, same)) {
			t.Errorf("%q is not set as %q", text, same)
		}
	}
}

// TestRefused reads what can't be set: the error quotes it and says what could.
func TestRefused(t *testing.T) {
	long := strings.Repeat("A", alphabet.MaxLetters+1)
	for text, want := range map[string]string{
		"":                                   `read "", which has no letters; accepted: A to Z`,
		"   ":                                `which has no letters`,
		"A+B":                                `read '+' in "A+B"; accepted: A to Z, 0 to 9, & . - '`,
		"Жан":                                `read 'Ж' in "Жан"`,
		"a\nb":                               `read '\n' in "a\nb"`,
		"\u0301A":                            `an accent (U+0301) with no letter under it`,
		"5\u0301":                            `an accent (U+0301) with no letter under it`,
		"A \u0301":                           `an accent (U+0301) with no letter under it`,
		"Ấ":                                  `read two accents on one side of 'A' in "Ấ"; accepted: one above a letter and one below it`,
		"Ả":                                  `read 'A' with an accent (U+0309)`,
		"A\xff":                              `which is no text in UTF-8`,
		long:                                 `which has more than 24 letters; accepted: up to 24`,
		strings.Repeat("A", 10_000):          `which has more than 24 letters`,
		"A" + strings.Repeat("\u0301", 1000): `which has more than 24 letters`,
	} {
		l, err := alphabet.Write(text)
		if err == nil {
			t.Errorf("%.60q is set in %d strokes", text, len(l.Strokes))
			continue
		}
		if !strings.Contains(err.Error(), want) {
			t.Errorf("%.60q: %q, want %q", text, err, want)
		}
		if len(err.Error()) > 400 || strings.ContainsFunc(err.Error(), unicode.IsControl) {
			t.Errorf("%.60q: message %q", text, err)
		}
	}
}
