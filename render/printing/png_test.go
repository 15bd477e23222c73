package printing

import (
	"bytes"
	"encoding/binary"
	"fmt"
	"hash/crc32"
	"image/png"
	"math"
	"strings"
	"testing"

	"roundlay/render/printtest"
)

// A picture's chunk pHYs gives its dots to the metre, before the picture itself
// and with its sum right. 600 to the inch is 600/0.0254 = 23622.05 to the metre.
func TestPNGSaysItsSize(t *testing.T) {
	file := samplePNG(t, load(t), 600)
	at := bytes.Index(file, []byte("pHYs"))
	if at < 0 || at > bytes.Index(file, []byte("IDAT")) {
		t.Fatalf("the chunk lies at %d", at)
	}
	chunk, rest := file[at:at+13], file[at+13:]
	if length := binary.BigEndian.Uint32(file[at-4:]); length != 9 {
		t.Errorf("the chunk is %d bytes long", length)
	}
	across, up := binary.BigEndian.Uint32(chunk[4:]), binary.BigEndian.Uint32(chunk[8:])
	if across != 23622 || up != 23622 || chunk[12] != 1 {
		t.Errorf("%d by %d dots to unit %d", across, up, chunk[12])
	}
	if sum := binary.BigEndian.Uint32(rest); sum != crc32.ChecksumIEEE(chunk) {
		t.Errorf("the sum is %x", sum)
	}
	config, err := png.DecodeConfig(bytes.NewReader(file))
	if err != nil {
		t.Fatal(err)
	}
	if mm := float64(config.Width) / float64(across) * 1000; math.Abs(mm-sampleWidth) > 0.03 {
		t.Errorf("the picture is %.3f mm wide by what it says, %g are drawn", mm, sampleWidth)
	}
}

// MuPDF makes a page as large as the sample of it: 148 by 170 mm are 419.5 by
// 481.9 points.
func TestPNGIsShownAtItsSize(t *testing.T) {
	mutool := printtest.Program(t, "mutool")
	for _, dpi := range []float64{150, 300} {
		file := printtest.File(t, "sample.png", samplePNG(t, load(t), dpi))
		out, _ := printtest.Run(t, mutool, "draw", "-F", "trace", file)
		var left, top, wide, tall float64
		_, box, _ := strings.Cut(string(out), `mediabox="`)
		if _, err := fmt.Sscan(strings.ReplaceAll(box, `"`, " "), &left, &top, &wide, &tall); err != nil {
			t.Fatalf("%v in %.200s", err, out)
		}
		if math.Abs(wide-419.5) > 0.5 || math.Abs(tall-481.9) > 0.5 {
			t.Errorf("at %g dots to the inch the page is %g by %g points", dpi, wide, tall)
		}
	}
}

// Most is such that a page of 128 million dots is the largest. Letter by hand, at
// 1170 to the inch: 8.5 × 1170 = 9945 by 11 × 1170 = 12870 is 127,992,150; at 1171
// 9954 by 12881 is 128,217,474.
func TestMostDPI(t *testing.T) {
	if got := MaxDPI(215.9, 279.4); got != 1170 {
		t.Errorf("letter: %g", got)
	}
	for width := 115.0; width < 1530; width += 7.3 {
		for height := width; height < 1530; height += 91.7 {
			most := MaxDPI(width, height)
			across, up := dots(width, height, most)
			if more, higher := dots(width, height, most+1); across*up > maxDots || more*higher <= maxDots {
				t.Errorf("%g by %g mm: %g", width, height, most)
			}
		}
	}
}
