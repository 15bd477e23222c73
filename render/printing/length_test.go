package printing

import (
	"bytes"
	"compress/zlib"
	"io"
	"regexp"
	"strconv"
	"testing"
)

// A font in a PDF file says how long it is when it is unpacked (ISO 32000-1, 9.9),
// and every stream how long it is packed.
func TestFontsSayTheirLength(t *testing.T) {
	file := samplePDF(t, load(t))
	fonts := 0
	for _, m := range regexp.MustCompile(`<<([^\n]*)/Filter/FlateDecode/Length (\d+)>>stream\n`).FindAllSubmatchIndex(file, -1) {
		entries, data := file[m[2]:m[3]], file[m[1]:]
		long, err := strconv.Atoi(string(file[m[4]:m[5]]))
		if err != nil || !bytes.HasPrefix(data[long:], []byte("\nendstream")) {
			t.Fatalf("the stream at %d is not %d bytes long: %v", m[1], long, err)
		}
		r, err := zlib.NewReader(bytes.NewReader(data[:long]))
		if err != nil {
			t.Fatal(err)
		}
		plain, err := io.ReadAll(r)
		if err != nil {
			t.Fatal(err)
		}
		said := regexp.MustCompile(`/Length1 (\d+)`).FindSubmatch(entries)
		isFont := bytes.HasPrefix(plain, []byte("\x00\x01\x00\x00")) // TrueType
		if isFont != (said != nil) {
			t.Errorf("the stream at %d is a font: %v; it has a Length1: %v", m[1], isFont, said != nil)
		}
		if said != nil {
			fonts++
			if string(said[1]) != strconv.Itoa(len(plain)) {
				t.Errorf("the font at %d says it is %s bytes long, and is %d", m[1], said[1], len(plain))
			}
		}
	}
	if fonts == 0 {
		t.Error("no font was found")
	}
}
