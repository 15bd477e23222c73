package report

import (
	"fmt"
	"io"
	"strings"
	"text/tabwriter"

	"roundlay/motifs"
	"roundlay/pattern/groove"
	"roundlay/pattern/job"
)

// kindJSON is a kind of motif.
type kindJSON struct {
	Name     string      `json:"name" word:"motifs"` // as a job has it
	About    string      `json:"about"`              // what it is
	Mirrored bool        `json:"mirrored"`           // whether its left and right are alike
	Parts    []string    `json:"parts"`              // the names of its parts
	Params   []paramJSON `json:"parameters"`         // the numbers that shape it

	Hand     map[string]gestureJSON `json:"hand,omitempty"` // for each part by name, what hand = 1 does; left out where the kind has no hand
	Contents []contentJSON          `json:"contents"`       // the keys for what a motif is made of, as a drawing is
}

// gestureJSON is what the hand does along a cut.
type gestureJSON struct {
	Swell []number  `json:"swell" unit:"share"` // the depth from root to tip, as shares of the depth asked
	Rock  [2]number `json:"rock" unit:"°"`      // how far the glass is rolled to the left and right
}

// contentJSON is a key by which a job says what a motif is made of.
type contentJSON struct {
	Name    string `json:"name"`                 // the key
	About   string `json:"about"`                // what it is
	Sort    string `json:"sort" word:"contents"` // what it takes
	Example string `json:"example"`              // a value, as a job has it
}

// paramJSON is a number that shapes a motif.
type paramJSON struct {
	Name    string `json:"name"`                   // the key
	About   string `json:"about"`                  // what it is
	Sort    string `json:"sort" word:"parameters"` // what it takes; a switch is 0 or 1 here
	Default number `json:"default" unit:"number"`  // what holds where a job doesn't give it
	Min     number `json:"least" unit:"number"`    // the least it takes
	Max     number `json:"most" unit:"number"`     // the most it takes
}

// MotifsJSON writes kinds of motif and their parameters.
func MotifsJSON(w io.Writer, kinds []motifs.Kind) error {
	out := make([]kindJSON, len(kinds))
	for i, k := range kinds {
		out[i] = kindJSON{Name: k.Name, About: k.About, Mirrored: k.Mirrored, Parts: append([]string{}, k.Parts...), Params: []paramJSON{}, Contents: []contentJSON{}}
		for _, p := range k.Params {
			sort := [...]string{"number", "count", "switch"}[p.Sort]
			out[i].Params = append(out[i].Params, paramJSON{p.Name, p.About, sort, number(p.Default), number(p.Min), number(p.Max)})
		}
		for part, g := range k.Hand {
			if out[i].Hand == nil {
				out[i].Hand = map[string]gestureJSON{}
			}
			h := groove.Hand{Swell: g.Swell}
			out[i].Hand[part] = gestureJSON{swellJSON(h), [2]number{number(g.Rock[0].Degrees()), number(g.Rock[1].Degrees())}}
		}
		for _, c := range k.Keys {
			sort := [...]string{motifs.Text: "text", motifs.Texts: "texts", motifs.Choice: "switch"}[c.Sort]
			out[i].Contents = append(out[i].Contents, contentJSON{c.Name, c.About, sort, c.Example})
		}
	}
	return write(w, out)
}

// Motifs writes kinds of motif and their parameters for reading.
func Motifs(w io.Writer, kinds []motifs.Kind) error {
	var b strings.Builder
	for i, k := range kinds {
		if i > 0 {
			b.WriteByte('\n')
		}
		fmt.Fprintf(&b, "%s: %s\n", k.Name, k.About)
		t := tabwriter.NewWriter(&b, 0, 0, 2, ' ', 0)
		for _, p := range k.Params {
			fmt.Fprintf(t, "  %s\t%s\t%s\t%s\n", p.Name, given(p), p.Range(), p.About)
		}
		for _, c := range k.Keys {
			takes := [...]string{motifs.Text: "text in quotes", motifs.Texts: "a list of texts", motifs.Choice: "true or false"}[c.Sort]
			fmt.Fprintf(t, "  %s\t\t%s\t%s\n", c.Name, takes, c.About)
		}
		t.Flush()
		fmt.Fprintf(&b, "  parts: %s\n", strings.Join(k.Parts, ", "))
		if k.Hand != nil {
			fullHand(&b, k)
		}
	}
	_, err := io.WriteString(w, b.String())
	return err
}

// fullHand writes what a kind's hand does to its parts at 1, in the words of a job.
func fullHand(b *strings.Builder, k motifs.Kind) {
	fmt.Fprintf(b, "  hand = 1 is, right of the middle and mirrored to its left:\n")
	t := tabwriter.NewWriter(b, 0, 0, 2, ' ', 0)
	for _, part := range k.Parts {
		g := k.Hand[part]
		shares := make([]string, len(g.Swell))
		for i, share := range g.Swell {
			shares[i] = fmt.Sprintf("%g", share)
		}
		fmt.Fprintf(t, "    %s\tswell = [%s]\trock = [%s, %s]\n", part, strings.Join(shares, ", "), job.InDegrees(g.Rock[0]), job.InDegrees(g.Rock[1]))
	}
	t.Flush()
}

// given is a parameter's default as it is written in a job.
func given(p motifs.Param) string {
	if p.Sort == motifs.Switch {
		return fmt.Sprint(p.Default != 0)
	}
	return fmt.Sprintf("%g", p.Default)
}

// Names lists the names of kinds in one line.
func Names(kinds []motifs.Kind) string {
	names := make([]string, len(kinds))
	for i, k := range kinds {
		names[i] = k.Name
	}
	return strings.Join(names, ", ")
}
