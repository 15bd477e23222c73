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
}

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

// shop reads how the shop works.
func (s section) shop(wheels rack) Shop {
	s.only(keysOf("shop"))
	var shop Shop
	shop.Rate, _ = s.optional("rate").length(span{MinRate, MaxRate, 40})
	shop.Order = s.order(wheels)
	if i, ok := s.optional("finish").word(Finishes()); ok {
		shop.Finish = Finish(i)
	}
	return shop
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
