package job

import (
	"bytes"
	"fmt"
	"regexp"
	"strings"
	"sync"
)

// truth is true or false as they are written in running text.
var truth = sync.OnceValue(func() *regexp.Regexp { return regexp.MustCompile(`^(?i:true|false)\b`) })

// another is how one more of a list begins: a text, a list, a table or a key.
var another = sync.OnceValue(func() *regexp.Regexp { return regexp.MustCompile(`^(["'\[{]|[A-Za-z0-9_.-]+\s*=)`) })

// noComma reports whether the parser, which stopped at a place of a line, found one more of a
// list where it looked for a comma. all is the text up to there.
func noComma(all []byte, before, after, saying string) bool {
	if !strings.Contains(saying, "','") && !strings.Contains(saying, "comma") || !another().MatchString(after) {
		return false
	}
	if all = bytes.TrimRight(all, " \t\r\n"); len(all) == 0 || bytes.IndexByte([]byte(",[{"), all[len(all)-1]) >= 0 {
		return false
	}
	// Two quotes side by side are an inch mark in a text, a digit before one is a length.
	apart := before == "" || strings.TrimRight(before, " \t") != before || strings.ContainsAny(before[len(before)-1:], "}]")
	last := all[len(all)-1]
	return apart && (last < '0' || last > '9' || strings.Contains(firstOf(after), "=") || after[0] == '{')
}

// firstOf returns the beginning of some text that stands for it in a message: a word, or one
// of a list.
func firstOf(text string) string {
	const most = 24
	text = strings.TrimSpace(text)
	if end := strings.IndexAny(text, ",}]#"); end > 0 {
		text = strings.TrimSpace(text[:end])
	}
	return oneLine(text, most)
}

// slip guesses what went wrong from the text before and after the place where the
// parser stopped.
func slip(before, after string) string {
	before = strings.TrimRight(before, " \t")
	if before == "" || after == "" {
		return ""
	}
	last, here := before[len(before)-1], after[:1]
	digit := last >= '0' && last <= '9'
	letter := here >= "A" && here <= "Z" || here >= "a" && here <= "z" || here >= "\x80"
	switch {
	case digit && here == ",":
		return "write the decimal point as a point"
	case digit && strings.Contains(before, "=") && (letter || strings.Contains("0123456789/-\"'", here)):
		return `a length with a fraction or a unit goes in quotes: "3 1/8 in"`
	case last == '"' && here == `"`:
		return `a length with an inch mark goes in single quotes: '3 1/8"'`
	case last == '=' && here == ".":
		return "a number begins with a digit"
	case last == '=' && truth().MatchString(after):
		return "write true and false in small letters"
	case last == '=' && letter:
		return fmt.Sprintf(`text goes in quotes: "%s"`, firstOf(after))
	}
	return ""
}
