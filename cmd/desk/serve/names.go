package serve

import (
	"fmt"
	"path/filepath"
	"strings"
	"unicode"

	"roundlay/cmd/desk"
)

// The endings of job files and of drawings.
const (
	tomlEnding = ".toml"
	svgEnding  = ".svg"
)

// maxName is the longest that a new file's name may be, in bytes. File systems take 255.
const maxName = 200

// plainName returns the name of a new job file beside another, with its ending.
func plainName(asked string) (string, error) {
	name := strings.TrimSpace(asked)
	if !strings.EqualFold(filepath.Ext(name), tomlEnding) {
		name += tomlEnding
	}
	return plain(asked, name)
}

// besideName returns the name of a new file that a job reads beside itself.
func besideName(asked string) (string, error) {
	name := strings.TrimSpace(asked)
	if ending := strings.ToLower(filepath.Ext(name)); ending != svgEnding && ending != tomlEnding {
		return "", badf("read %s; accepted: a name that ends in %s or %s", desk.Shown(asked), svgEnding, tomlEnding)
	}
	return plain(asked, name)
}

// plain returns the name of a file in a folder. Any that could lead elsewhere, on any
// system, is refused.
func plain(asked, name string) (string, error) {
	ending := filepath.Ext(name)
	stem := name[:len(name)-len(ending)]
	switch {
	case stem == "":
		return "", badf("read %s; accepted: a name for the file", desk.Shown(asked))
	case len(name) > maxName:
		return "", badf("that name is too long; accepted: at most %d letters", maxName-len(ending))
	case strings.ContainsAny(name, `/\:*?"<>|`) || strings.ContainsFunc(name, func(r rune) bool { return !unicode.IsPrint(r) }):
		return "", badf("read %s; accepted: a plain name, without / \\ : * ? \" < > or |", desk.Shown(asked))
	case name[0] == '.' || name[0] == '-' || strings.HasSuffix(stem, ".") || strings.HasSuffix(stem, " ") || !filepath.IsLocal(name):
		return "", badf("read %s; accepted: a plain name that begins and ends in a letter or a number", desk.Shown(asked))
	}
	return name, nil
}

// badName is the error of a name that can't be a new file's.
type badName struct{ words string }

func (b *badName) Error() string { return b.words }

func badf(format string, given ...any) error { return &badName{fmt.Sprintf(format, given...)} }
