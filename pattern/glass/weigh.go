package glass

import (
	"fmt"
	"math"
	"strconv"
)

// A wall is measured in a few places, and a blown wall is uneven between them. The
// weight of the blank says how thick its walls are on average.

// minFactor and maxFactor bound how much weighing may change the walls. Beyond
// them something was misread.
const (
	minFactor = 0.7
	maxFactor = 1.4
)

// FactorError is returned where no factor in these bounds makes a blank weigh what
// the scale reads. Its text says what would be accepted.
type FactorError struct {
	ScaleWeight, Computed float64 // g: by the scale, and with the walls as measured
	Min, Max              float64 // g: with the least and the greatest factor
}

func (e *FactorError) Error() string { return e.In("g", 1) }

// In returns the text in another unit, which has the given number of grams. Weights
// have three figures and are rounded inwards, so that every weight it names is
// accepted.
func (e *FactorError) In(unit string, grams float64) string {
	grain := math.Pow(10, math.Floor(math.Log10(e.Max/grams))-2)
	text := func(weight float64, round func(float64) float64) string {
		return strconv.FormatFloat(round(weight/grams/grain)*grain, 'f', max(0, -int(math.Round(math.Log10(grain)))), 64) + " " + unit
	}
	return fmt.Sprintf("from %s to %s, which is the weight with walls %g to %g times as thick as measured; as measured it is %s",
		text(e.Min, math.Ceil), text(e.Max, math.Floor), minFactor, maxFactor, text(e.Computed, math.Round))
}

// CalibrateWalls returns the blank with all its walls multiplied by the one factor that
// makes it weigh the given grams. The error is a *FactorError, or ErrWall where
// walls of that thickness would meet.
func (b *Blank) CalibrateWalls(grams float64) (*Blank, error) {
	least, err := b.thicker(minFactor)
	if err != nil {
		return nil, err
	}
	most, err := b.thicker(maxFactor)
	if err != nil {
		return nil, err
	}
	if low, high := least.Weight(), most.Weight(); !(low <= grams && grams <= high) {
		return nil, &FactorError{grams, b.Weight(), low, high}
	}
	// The weight grows nearly in proportion to the walls, so false position needs
	// only a few rounds.
	lo, hi, found := least, most, b
	for range 60 {
		low, high := lo.Weight(), hi.Weight()
		if high-low < 1e-9 {
			break
		}
		factor := lo.Factor + (hi.Factor-lo.Factor)*(grams-low)/(high-low)
		if found, err = b.thicker(factor); err != nil {
			return nil, err
		}
		off := found.Weight() - grams
		if off > -1e-7 && off < 1e-7 {
			break
		}
		if off < 0 {
			lo = found
		} else {
			hi = found
		}
	}
	found.ScaleWeight = grams
	return found, nil
}

// thicker returns the blank with its measured walls multiplied by a factor. The
// walls for glass left follow only a factor below 1.
func (b *Blank) thicker(factor float64) (*Blank, error) {
	for _, s := range b.Stations {
		if !(s.Wall*factor < s.Radius) {
			return nil, ErrWall
		}
	}
	thick := *b
	thick.Factor, thick.inner = factor, b.innerTimes(factor)
	switch {
	case factor <= 1:
		thick.thin = thick.inner
	case b.Factor < 1:
		thick.thin = b.innerTimes(1)
	}
	return &thick, nil
}
