package report

import (
	"fmt"
	"io"
	"strings"
	"text/tabwriter"

	"roundlay/motifs"
)

type kindJSON struct {
	Name     string      `json:"name"`
	About    string      `json:"about"`
	Mirrored bool        `json:"mirrored"`
	Parts    []string    `json:"parts"`
	Params   []paramJSON `json:"parameters"`
}

type paramJSON struct {
	Name    string `json:"name"`
	About   string `json:"about"`
	Sort    string `json:"sort"`
	Default number `json:"default"`
	Min     number `json:"least"`
	Max     number `json:"most"`
}

// MotifsJSON writes kinds of motif and their parameters.
func MotifsJSON(w io.Writer, kinds []motifs.Kind) error {
	out := make([]kindJSON, len(kinds))
	for i, k := range kinds {
		out[i] = kindJSON{Name: k.Name, About: k.About, Mirrored: k.Mirrored, Parts: append([]string{}, k.Parts...), Params: []paramJSON{}}
		for _, p := range k.Params {
			sort := [...]string{"number", "count", "switch"}[p.Sort]
			out[i].Params = append(out[i].Params, paramJSON{p.Name, p.About, sort, number(p.Default), number(p.Min), number(p.Max)})
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
		t.Flush()
		fmt.Fprintf(&b, "  parts: %s\n", strings.Join(k.Parts, ", "))
	}
	_, err := io.WriteString(w, b.String())
	return err
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
