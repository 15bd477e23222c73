package serve

import (
	"fmt"
	"path/filepath"
	"strings"
	"unicode"
)

// tomlEnding is that of job files.
const tomlEnding = ".toml"

// maxName is the longest that a new file's name may be, in bytes. File systems take 255.
const maxName = 200

// plainName returns the name of a new job file beside another, with its ending. Any
// name that could lead elsewhere, on any system, is refused.
func plainName(asked string) (string, error) {
	name := strings.TrimSpace(asked)
	if !strings.EqualFold(filepath.Ext(name), tomlEnding) {
		name += tomlEnding
	}
	stem := name[:len(name)-len(tomlEnding)]
	switch {
	case stem == "":
		return "", badf("read %q; accepted: a name for the file", asked)
	case len(name) > maxName:
		return "", badf("that name is too long; accepted: at most %d letters", maxName-len(tomlEnding))
	case strings.ContainsAny(name, `/\:*?"<>|`) || strings.ContainsFunc(name, func(r rune) bool { return !unicode.IsPrint(r) }):
		return "", badf("read %q; accepted: a plain name, without / \\ : * ? \" < > or |", asked)
	case name[0] == '.' || name[0] == '-' || strings.HasSuffix(stem, ".") || strings.HasSuffix(stem, " ") || !filepath.IsLocal(name):
		return "", badf("read %q; accepted: a plain name that begins and ends in a letter or a number", asked)
	}
	return name, nil
}

// badName is the error of a name that can't be a new file's.
type badName struct{ words string }

func (b *badName) Error() string { return b.words }

func badf(format string, given ...any) error { return &badName{fmt.Sprintf(format, given...)} }
