package printing

import (
	"strings"

	"roundlay/render/drawing"
)

// leadingNumbers returns the numbers at the beginning of marks that are alike except
// for their places, such as those of the cuts.
func leadingNumbers(marks []drawing.Mark) []drawing.Text {
	var numbers []drawing.Text
	for _, m := range marks {
		t, ok := m.(drawing.Text)
		if !ok || strings.Trim(t.Words, "0123456789") != "" {
			break
		}
		if len(numbers) > 0 && (t.Size != numbers[0].Size || t.Bold != numbers[0].Bold || t.Ink != numbers[0].Ink) {
			break
		}
		numbers = append(numbers, t)
	}
	return numbers
}

// writeNumbers writes numbers that are alike as one group, so that the file holds
// their look once.
func (o *outlines) writeNumbers(numbers []drawing.Text) {
	o.begin(numbers[0])
	o.file.WriteString("\">\n")
	for _, t := range numbers {
		o.file.WriteString(`<g transform="`)
		o.place(t)
		o.file.WriteString(`">`)
		o.find(t)
		o.use(o.lines[line{t.Words, t.Bold}])
		o.file.WriteString("</g>\n")
	}
	o.file.WriteString("</g>\n")
}
