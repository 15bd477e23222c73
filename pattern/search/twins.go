package search

import (
	"cmp"
	"fmt"
	"math"
	"slices"

	"roundlay/pattern/job"
)

// withoutTwins returns offers without those that change the same values the same way as
// one before them does, only by more or less: a person would take the first. The band
// is what the job is given where it doesn't say.
func withoutTwins(j *job.Job, band job.Band, offers []Offer) []Offer {
	told := map[string]bool{}
	return slices.DeleteFunc(offers, func(o Offer) bool {
		sort := sortOf(j, band, o.Changes)
		if told[sort] {
			return true
		}
		told[sort] = true
		return false
	})
}

// sortOf names which values of a job are changed, and which way.
func sortOf(j *job.Job, band job.Band, changes []job.Change) string {
	words := make([]string, len(changes))
	for i, c := range changes {
		words[i] = fmt.Sprintf("%d %s %s %v", c.Motif, c.Part, c.Key, wayOf(j, band, c))
	}
	slices.Sort(words)
	return fmt.Sprint(words)
}

// wayOf says which way a change takes its value: -1 for less, 1 for more. A word or a
// wheel has no ways, and is one by itself; a place and a band have two, where a band that
// is brought on a caliper's step stays where it is.
func wayOf(j *job.Job, band job.Band, c job.Change) [2]float64 {
	has, given := c.Has(j)
	way := func(was, is float64) float64 { return float64(cmp.Compare(is, was)) }
	switch c.Price(j) {
	case job.ByWheel, job.ByWord:
		return [2]float64{c.Value}
	case job.ByHeight:
		if given {
			band = has.Band
		}
		end := func(was, is float64) float64 {
			if math.Abs(is-was) <= j.Length.Step()+1e-9 {
				return 0
			}
			return way(was, is)
		}
		return [2]float64{end(band.Foot, c.Band.Foot), end(band.Top, c.Band.Top)}
	case job.ByMove:
		return [2]float64{way(has.At[0].Value, c.At[0].Value), way(has.At[1].Value, c.At[1].Value)}
	}
	return [2]float64{way(has.Value, c.Value)}
}
