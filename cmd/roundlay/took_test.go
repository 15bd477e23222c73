package main

import "testing"

func TestReadMinutes(t *testing.T) {
	if got, err := readMinutes("1 h 35 min"); err != nil || got != 95 {
		t.Errorf("read as %v, %v", got, err)
	}
	for _, text := range []string{"", "0", "0:00", "five"} {
		if got, err := readMinutes(text); err == nil {
			t.Errorf("%q is read as %v", text, got)
		}
	}
}
