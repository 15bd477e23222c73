package report

import (
	"fmt"
	"io"
	"math"
	"strconv"
	"strings"

	"roundlay/pattern"
	"roundlay/pattern/job"
)

// Quote says what the pieces of some plans of a job take and cost: nothing for a job that
// gives nothing for it.
func Quote(plans []*pattern.Plan) []string {
	p := plans[0]
	if !p.Job.Shop.Quotes() {
		return nil
	}
	q, ok := pattern.NewQuote(plans)
	if !ok {
		for _, p := range plans {
			if words := NoRate(p); words != "" {
				return []string{words}
			}
		}
	}
	said := []string{timesOf(q), changesOf(q), spoilOf(q), fmt.Sprintf("In all %s: arithmetic, not a promise. %s", lasting(q), spreadOf(q.Shop))}
	if q.Shop.Hour > 0 {
		said = append(said, fmt.Sprintf("Price %s, %s", priceOf(q), priceNote(q)))
	}
	return said
}

// QuoteHeading names what a quote is for.
func QuoteHeading(plans []*pattern.Plan) string {
	each := plans[0].Job.Shop.Each()
	words := "Time and price of " + count(each*len(plans), "piece")
	if each > 1 && len(plans) > 1 {
		words += fmt.Sprintf(", %d of each blank", each)
	}
	return words
}

// timesOf says how long cutting and finishing take.
func timesOf(q pattern.Quote) string {
	words := "Cutting " + Minutes(q.Cutting)
	if q.Each > 1 && q.Each == q.Pieces { // all are one blank's
		words = "Cutting " + timesEach(q.Pieces, q.Cutting/float64(q.Pieces))
	}
	if q.Shop.Finishing == nil {
		return words + "; finishing not counted (finishing under [shop])."
	}
	return words + fmt.Sprintf("; finishing %s.", timesEach(q.Pieces, *q.Shop.Finishing))
}

// timesEach writes a time that is taken so often.
func timesEach(n int, minutes float64) string {
	if n == 1 {
		return spent(minutes)
	}
	return fmt.Sprintf("%s (%d times %s)", spent(minutes*float64(n)), n, spent(minutes))
}

// changesOf says how often wheels are put on.
func changesOf(q pattern.Quote) string {
	if q.Shop.Change == nil {
		return "Changes of wheel not counted (change under [shop])."
	}
	words := fmt.Sprintf("Wheels put on: %s, if each piece is cut by itself", timesEach(q.Changes, *q.Shop.Change))
	if q.Wheels < q.Changes {
		words = fmt.Sprintf("Wheels put on: %s, if all pieces are cut with one before the next; %s, if each is cut by itself",
			timesEach(q.Wheels, *q.Shop.Change), timesEach(q.Changes, *q.Shop.Change))
	} else if q.Pieces == 1 {
		words = "Wheels put on: " + timesEach(q.Changes, *q.Shop.Change)
	}
	return words + "."
}

// spoilOf says how many blanks it takes.
func spoilOf(q pattern.Quote) string {
	if q.Shop.Spoil == 0 {
		return "No piece is counted as spoiled (spoil under [shop])."
	}
	words := fmt.Sprintf("With %.3g %% spoiled, %.1f pieces are begun on average for %d good: have %s. ",
		100*q.Shop.Spoil, q.Begun, q.Pieces, count(q.Blanks, "blank"))
	if q.Safe > q.Blanks {
		return words + fmt.Sprintf("Nine times in ten, %d are enough. The spoiled ones are paid for too.", q.Safe)
	}
	return words + "That is enough nine times in ten. The spoiled ones are paid for too."
}

// spreadOf says what the width of a quote comes from.
func spreadOf(s job.Shop) string {
	words := fmt.Sprintf("All times may be %.3g %% shorter or longer", 100*s.Spread)
	if s.Spread == job.DefaultSpread {
		words += ": common practice, no source; say yours with spread under [shop]"
	}
	return words + "."
}

// lasting writes the time of a quote, rounded outwards to minutes.
func lasting(q pattern.Quote) string {
	return spent(math.Floor(q.Minutes.Least)) + " to " + spent(math.Ceil(q.Minutes.Most))
}

// spent writes a time that may be nothing.
func spent(minutes float64) string {
	if minutes == 0 {
		return "no time"
	}
	return Minutes(minutes)
}

// priceOf writes the price of a quote, rounded outwards: to a whole number where it comes
// to a hundred or more.
func priceOf(q pattern.Quote) string {
	const large = 100
	digits, grain := 2, 0.01
	if q.Price.Most >= large {
		digits, grain = 0, 1
	}
	const slack = 1e-9 // of a grain
	least, most := math.Floor(q.Price.Least/grain+slack), math.Ceil(q.Price.Most/grain-slack)
	return fmt.Sprintf("%.*f to %.*f", digits, least*grain, digits, most*grain)
}

// priceNote says what a price is of.
func priceNote(q pattern.Quote) string {
	return fmt.Sprintf("at %s an hour in your own money, for the time alone: glass and wheels are not in it.",
		strconv.FormatFloat(q.Shop.Hour, 'f', -1, 64))
}

// quoteTable gives the quote of one blank's pieces; ok is false where its job wants none.
func quoteTable(p *pattern.Plan) (t Table, ok bool) {
	if !p.Job.Shop.Quotes() {
		return t, false
	}
	one := []*pattern.Plan{p}
	t.Title = QuoteHeading(one)
	q, known := pattern.NewQuote(one)
	if !known {
		t.Rows = []Row{{"time", "not known", NoRate(p)}}
		return t, true
	}
	t.Rows = []Row{
		{"time", lasting(q), timesOf(q) + " " + changesOf(q) + " " + spreadOf(q.Shop)},
		{"begun", fmt.Sprintf("%.1f", q.Begun), spoilOf(q)},
	}
	if q.Shop.Hour > 0 {
		t.Rows = append(t.Rows, Row{"price", priceOf(q), priceNote(q)})
	}
	return t, true
}

// Quotes writes the quote of some plans, if their job gives anything for one.
func Quotes(w io.Writer, plans []*pattern.Plan) error {
	said := Quote(plans)
	if len(said) == 0 {
		return nil
	}
	var b strings.Builder
	fmt.Fprintf(&b, "\n%s:\n", QuoteHeading(plans))
	for _, words := range said {
		fmt.Fprintf(&b, "  %s\n", wrap(words, 77, "  "))
	}
	_, err := io.WriteString(w, b.String())
	return err
}
