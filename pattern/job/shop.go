package job

import (
	"slices"

	"github.com/pelletier/go-toml/v2/unstable"
)

// Shop is how this shop works.
type Shop struct {
	Rate  float64 // groove cut in a minute, in mm; 0 where it isn't known
	Order []int   // numbers of the rack's wheels that are used first, in this order
	// Finish is what is done to the grooves after they are cut.
	Finish Finish

	// What a quote needs besides.
	Change    *float64 // minutes to change the wheel; nil where that isn't known
	Finishing *float64 // minutes to finish a piece after it is cut; nil where that isn't known
	Spoil     float64  // the share of pieces that break or are spoiled, below 1
	Spread    float64  // how far times may be off either way, as a share
	Hour      float64  // what an hour costs, in the shop's money; 0 where the job doesn't say
	Pieces    int      // how many of each blank are wanted; 0 where the job doesn't say: see Each
}

// Quotes reports whether the job gives anything that only a quote needs.
func (s Shop) Quotes() bool {
	return s.Change != nil || s.Finishing != nil || s.Spoil > 0 || s.Hour > 0 || s.Pieces > 0
}

// Each returns how many pieces of each blank are wanted.
func (s Shop) Each() int { return max(1, s.Pieces) }

// DefaultSpread is how far times may be off where the job doesn't say: common practice, no
// source.
const DefaultSpread = 0.25

// Finish is what is done with the grey of a fresh groove.
type Finish int

// The finishes. It is undecided where the job names none.
const (
	Undecided Finish = iota
	AsCut            // left grey
	Felt             // polished on felt, with a compound
	Acid             // dipped, at a licensed shop
	Reheat           // fire polished
)

// Finishes returns the words for the finishes, in their order.
func Finishes() []string { return []string{"undecided", "as cut", "felt", "acid", "reheat"} }

// String returns the word for a finish.
func (f Finish) String() string { return Finishes()[f] }

// The lowest and the highest rate that is read, in mm of groove a minute.
const MinRate, MaxRate = 1.0, 10000.0

// What is read of a quote: minutes, shares, and an hour's price. The bounds keep out slips.
const (
	maxChange        = 600.0
	maxFinishing     = 6000.0
	maxSpoil         = 0.9
	maxSpread        = 0.9
	minHour, maxHour = 0.01, 1e5
	maxPieces        = 10000
)

// shop reads how the shop works.
func (s section) shop(wheels rack) Shop {
	s.only(keysOf("shop"))
	var shop Shop
	shop.Rate, _ = s.optional("rate").length(span{MinRate, MaxRate, 40})
	shop.Order = s.order(wheels)
	if i, ok := s.optional("finish").word(Finishes()); ok {
		shop.Finish = Finish(i)
	}
	s.quotes(&shop)
	return shop
}

// quotes reads what a quote needs.
func (s section) quotes(shop *Shop) {
	if minutes, ok := s.optional("change").minutes(maxChange); ok {
		shop.Change = &minutes
	}
	if minutes, ok := s.optional("finishing").minutes(maxFinishing); ok {
		shop.Finishing = &minutes
	}
	shop.Spoil, _ = s.optional("spoil").within(span{0, maxSpoil, 0.1})
	shop.Spread = DefaultSpread
	if spread, ok := s.optional("spread").within(span{0, maxSpread, 0.25}); ok {
		shop.Spread = spread
	}
	shop.Hour, _ = s.optional("hour").within(span{minHour, maxHour, 38})
	shop.Pieces, _ = s.optional("pieces").whole(1, maxPieces)
}

// order reads the wheels in the order in which they are to be used.
func (s section) order(wheels rack) []int {
	field := s.optional("order")
	accepted := "a list of wheels of the rack, each once"
	if len(wheels.names) > 0 {
		accepted += ", from " + list(wheels.names)
	}
	if field.absent(accepted) {
		return nil
	}
	if len(field.value.items) == 0 {
		field.refuse(accepted, "")
		return nil
	}
	var order []int
	for i, item := range field.value.items {
		wheel := -1
		if item.kind == unstable.String {
			wheel = slices.Index(wheels.names, item.text)
		}
		switch {
		case wheel < 0 && (wheels.whole || item.kind != unstable.String):
			field.item(i).refuse(accepted, meant(item.text, wheels.names))
			return nil
		case wheel >= 0 && slices.Contains(order, wheel):
			field.item(i).refuse(accepted, "this one is in the list already")
			return nil
		}
		order = append(order, wheel)
	}
	return order
}
