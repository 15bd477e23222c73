package lettering

import "strings"

// Lines breaks words into lines no wider than a width in millimetres, at a size
// in points. A word that is wider on its own is broken too. The fonts have no
// kerning, so a line is as wide as its words and the spaces between.
func (l *Letters) Lines(words string, size float64, bold bool, width float64) []string {
	space := l.Width(" ", size, bold)
	var lines []string
	line, long := "", 0.0
	for _, word := range strings.Fields(words) {
		own := l.Width(word, size, bold)
		if line != "" && long+space+own <= width {
			line, long = line+" "+word, long+space+own
			continue
		}
		if line != "" {
			lines = append(lines, line)
		}
		for line, long = word, own; long > width && len([]rune(line)) > 1; long = l.Width(line, size, bold) {
			letters := []rune(line)
			n := len(letters) - 1
			for n > 1 && l.Width(string(letters[:n]), size, bold) > width {
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

// Shortened returns words cut off at the end to be no wider than a width.
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
