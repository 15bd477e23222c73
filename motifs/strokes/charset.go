package strokes

import (
	"bytes"
	"fmt"
	"io"

	"golang.org/x/text/encoding"
	"golang.org/x/text/encoding/htmlindex"
	"golang.org/x/text/encoding/unicode"
	"golang.org/x/text/transform"
)

// decoded returns the text of a file that begins with a byte order mark as UTF-8,
// and any other as it is.
func decoded(data []byte) []byte {
	for _, mark := range []string{"\xff\xfe", "\xfe\xff", "\xef\xbb\xbf"} {
		if bytes.HasPrefix(data, []byte(mark)) {
			text, _, err := transform.Bytes(unicode.BOMOverride(encoding.Nop.NewDecoder()), data)
			if err == nil {
				return text
			}
		}
	}
	return data
}

// charset reads a text in the named encoding, as encoding/xml asks for it.
func charset(name string, input io.Reader) (io.Reader, error) {
	e, err := htmlindex.Get(name)
	if err != nil {
		return nil, fmt.Errorf("encoding %s", quoted(name))
	}
	if canonical, _ := htmlindex.Name(e); canonical == "utf-16le" || canonical == "utf-16be" {
		return input, nil // its byte order mark has turned it into UTF-8
	}
	return e.NewDecoder().Reader(input), nil
}
