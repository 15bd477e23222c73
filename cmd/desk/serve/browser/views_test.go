package browser

import (
	"fmt"
	"strings"

	"roundlay/pattern/job"
)

// view is one of the things a person sees of the page.
type view struct {
	name string
	show func(p *tab)
}

// walk is views of one job, in an order in which each can be come to from the one before.
type walk struct {
	name  string
	job   string // the demo where it is empty
	views []view
}

// walks are all views there are.
func walks() []walk {
	first := walk{name: "first", views: []view{{"visit", func(*tab) {}}}}
	for i := range 11 {
		first.views = append(first.views, view{fmt.Sprintf("guide-%d", i+1), func(p *tab) { p.question(i) }})
	}
	headings := walk{name: "found", job: crowded()}
	for _, name := range []string{"glass", "wheels", "design", "check", "paper"} {
		headings.views = append(headings.views, view{name, func(p *tab) { p.click("#tab-" + name); p.quiet() }})
	}
	headings.views = append(headings.views,
		view{"chosen", func(p *tab) { p.choose1(1) }},
		view{"part", func(p *tab) { p.click(`details.motif[open] [data-part="frond"] > summary`) }},
		view{"drawing", func(p *tab) { p.click("#draw-cuts") }},
		view{"menu", func(p *tab) { p.click("#draw-cuts"); p.click("#head summary") }},
		view{"text", func(p *tab) { p.click("#job-text"); p.until(`document.querySelector("#job-lines")`) }},
		view{"mistake", func(p *tab) {
			p.press("dialog", "Done")
			p.click("#tab-design")
			p.fill(`[data-path="motif[1].depth"] input`, "3/23")
			p.until(`document.documentElement.dataset.job === "mistaken"`)
		}},
	)
	set := walk{name: "set", job: twelve(), views: []view{
		{"row", func(p *tab) { p.quiet() }},
		{"beside", func(p *tab) { p.choose("#beside-what", "blank:no. 2"); p.quiet(); p.middle("#compare .two-designs") }},
	}}
	return []walk{first, headings, set}
}

// question shows one question of the guide.
func (p *tab) question(i int) {
	p.t.Helper()
	switch {
	case i == 0:
		p.click("#own")
	case i == 1:
		p.click("dialog input[value=in]")
		p.next()
	default:
		a := answers[i-2]
		if a[0] != "" {
			p.fill(a[0], a[1])
		}
		switch a[0] {
		case "#guide-wallFoot":
			p.fill("#guide-wallRim", "3/32")
		case "#guide-wheel":
			p.fill("#guide-angle", "90")
		}
		p.next()
	}
}

// choose1 has a motif chosen on the drawing.
func (p *tab) choose1(number int) {
	p.t.Helper()
	if !eval[bool](p, fmt.Sprintf(`document.querySelector('#wrap [data-motif="%d"]').getAttribute("aria-pressed") === "true"`, number)) {
		p.click(fmt.Sprintf(`#wrap [data-motif="%d"]`, number))
	}
	p.until(fmt.Sprintf(`document.querySelector('#wrap [data-motif="%d"]').getAttribute("aria-pressed") === "true"`, number))
}

// crowded is the demo with fronds that crowd.
func crowded() string {
	_, demo := job.Demo()
	text := string(demo)
	changed := strings.Replace(text, "fronds = 7", "fronds = 22", 1)
	if changed == text {
		panic("the demo's leaf has no 7 fronds any more")
	}
	return changed
}

// twelve is a set of twelve blanks with thirty cuts to a repeat.
func twelve() string {
	var b strings.Builder
	b.WriteString("title = \"Twelve for a long table\"\nlength = \"in\"\n")
	for i := range 12 {
		fmt.Fprintf(&b, "[[blank]]\nname = \"no. %d\"\nfloor = \"1/2\"\nstation = [{height=0, across=%.2f, wall=\"3/8\"}, {height=%.2f, across=%.2f, wall=\"5/64\"}]\n",
			i+1, 2.5+0.01*float64(i%5), 3.8+0.02*float64(i%7), 3+0.01*float64(i%4))
	}
	b.WriteString("[[wheel]]\nname = \"small mitre\"\nedge = \"mitre\"\nacross = 3\nthick = \"1/4\"\nangle = 90\n[layout]\nrepeats = 5\n" +
		"[[motif]]\nkind = \"leaf\"\nwheel = \"small mitre\"\ndepth = 0.03125\nat = [0, 0.62]\nwidth = 0.68\nheight = 0.7\nfronds = 10\n" +
		"[[motif]]\nkind = \"fan\"\nwheel = \"small mitre\"\ndepth = \"1/64\"\nat = [0, 0.12]\nwidth = 0.9\nheight = 0.2\nrays = 9\n")
	return b.String()
}
