package page

import (
	"errors"
	"strings"
	"testing"

	"roundlay/geometry"
)

// The bars of a job in inches reach 111.7 mm into a page by hand: 4.2 for the
// label left of the bar up and 1 of air, 4.7 up past the bar across, 101.6 of bar
// and 0.2 of pen. With twice 6 mm of margin that is 123.7 mm.
func TestRoomForBars(t *testing.T) {
	for text, fits := range map[string]bool{"124x200mm": true, "123x200mm": false, "200x123mm": false} {
		o := DefaultOptions(geometry.Inch)
		var err error
		if o.Paper, err = ParsePaper(text); err != nil {
			t.Fatal(err)
		}
		err = o.RoomForBars(o.Portrait(), geometry.Inch)
		var refused *PaperError
		if fits != (err == nil) || !fits && (!errors.As(err, &refused) || !strings.Contains(err.Error(), `read "`+text+`"`)) {
			t.Errorf("%s: %v", text, err)
		}
		if err != nil && strings.Contains(err.Error(), "--") {
			t.Errorf("%v: flags are the command's", err)
		}
	}
}
