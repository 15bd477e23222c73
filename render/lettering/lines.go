package lettering

import "strings"

// Lines breaks words into lines no wider than a width in millimetres, at a size
// in points. A word that is wider on its own is broken too.
func (l *Letters) Lines(words string, size float64, bold bool, width float64) []string {
	fits := func(words string) bool { return l.Width(words, size, bold) <= width }
	var lines []string
	line := ""
	for _, word := range strings.Fields(words) {
		if line != "" && fits(line+" "+word) {
			line += " " + word
			continue
		}
		if line != "" {
			lines = append(lines, line)
		}
		for line = word; !fits(line) && len([]rune(line)) > 1; {
			letters := []rune(line)
			n := len(letters) - 1
			for n > 1 && !fits(string(letters[:n])) {
				n--
			}
			lines, line = append(lines, string(letters[:n])), string(letters[n:])
		}
	}
	if line != "" {
		lines = append(lines, line)
	}
	return lines
}

// Shortened returns words that are no wider than a width, cut off at the end
// where they are.
func (l *Letters) Shortened(words string, size float64, bold bool, width float64) string {
	if l.Width(words, size, bold) <= width {
		return words
	}
	runes := []rune(words)
	for len(runes) > 0 && l.Width(string(runes)+"…", size, bold) > width {
		runes = runes[:len(runes)-1]
	}
	return string(runes) + "…"
}
