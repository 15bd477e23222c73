package main

import "testing"

func TestPrintable(t *testing.T) {
	for text, want := range map[string]string{
		"Grüße 杯.pdf": "Grüße 杯.pdf",
		"a\x1b[2Jb":   `a\x1b[2Jb`,
		"a\nb\x7f":    `a\x0ab\x7f`,
		"a\xffb":      `a\xffb`,
		"a\u202egnp":  `a\u202egnp`, // turns the writing round
		"�":           "�",
	} {
		if got := printable(text); got != want {
			t.Errorf("%q is shown as %q; want %q", text, got, want)
		}
	}
}
