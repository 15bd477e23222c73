package bench

import (
	"fmt"

	"roundlay/pattern"
	"roundlay/pattern/job"
)

// advice is words under a heading.
type advice struct {
	heading string
	items   []string
}

// general is what holds for every blank of a job. It is common practice without a
// source, except where a comment names one.
func general(p *pattern.Plan) []advice {
	j, order := p.Job, "Deep before shallow, long before short, and all that one wheel cuts before the next is put on."
	if p.Overruled() {
		order = "The order is the one the job asks for. All that one wheel cuts comes before the next is put on."
	}
	all := []advice{
		{"Carry the pattern over", []string{
			"Seen through: tape the inside wrap into the dry glass, its print to the wall. You look through the glass at the line while you cut, and nothing wears it off.",
			"Traced: stand the outside wrap, or a patch, on its marks, and go over each line's ends and its course. Take the paper off before the water.",
			"Scribed: scratch the line lightly with a small diamond burr and ink it. Only where a groove will take the scratch away.",
		}},
		{"Marks that stay", []string{
			"A silver paint marker stays under the water once it is dry. So does a scribed line that is inked.",
			"Plain black oil marker washes off.",
			"The mark is ground away as the groove comes. Look through the glass to see where the wheel stands, and mark the ends of a line a little beyond it.",
		}},
		{"At the wheel", []string{
			"A method that is new to you goes on the worst blank of the set, never on the best.",
			order,
			"A touch is pressed in once and lifted. A drawn cut is carried along its line at depth.",
		}},
		{"The finish: " + finishName(j.Shop.Finish), finishes(j)},
	}
	if j.ByHand() {
		all[2].items = append(all[2].items, handed()...)
	}
	return append(all, cautions())
}

// handed says how what the list says of the hand is meant.
func handed() []string {
	return []string{
		"Root and tip, left and right of a cut are as you look at it from outside, from its root to its tip.",
		"Rock is how far the glass is rolled to that side, in step with the depth: the flank there comes out broader. Practise it on scrap, and hold a protractor to the first one.",
		"Of a cut that swells, the list has the greatest depth. A touch is pressed in once and keeps its own shape.",
	}
}

func finishName(f job.Finish) string {
	return [...]string{"not decided yet", "left as cut", "felt and compound", "acid", "reheating"}[f]
}

// finishes says what a finish asks of the lands, the rim and the annealing. For a
// finish that is not decided it says what each one does.
func finishes(j *job.Job) []string {
	u, l := j.Length, j.Limits
	switch j.Shop.Finish {
	case job.AsCut:
		return []string{
			"The grooves stay grey. Wash every trace of grit out of them.",
			"Lands and rim are left as they are: feel for a sharp edge with a cloth, not with a finger, and take it down wet with a fine stone.",
			"No heat comes after, so the glass needs no annealing beyond the one it had before it was cut.",
		}
	case job.Felt:
		return []string{
			fmt.Sprintf("Lands: felt rounds their edges and widens every groove a little. This job allows %s a side for it (polish under [limits]).", u.FormatChosen(l.Polish)),
			"Rim: work away from it, with the glass held close to where you press. A thin rim breaks by leverage.",
			"Heat: keep felt and compound wet. A felt that runs dry heats one spot of a cold glass, and it cracks. No annealing follows.",
			"Wash the compound off before it dries in the grooves.",
		}
	case job.Acid:
		return []string{
			"Only at a shop that is licensed for it. Never at this bench: these acids kill.",
			fmt.Sprintf("Lands: acid takes glass off everywhere and blunts sharp edges. Ask the shop how much it takes: this job allows %s a side (polish under [limits]) and leaves %s under a groove.", u.FormatChosen(l.Polish), u.FormatChosen(l.Leave)),
			"Rim and inside: ask for them to be stopped out, if they are to stay as they are. A thin rim gets thinner.",
			"Say what glass it is: the bath depends on it. No annealing follows; every trace of acid must be off before the glass comes back.",
		}
	case job.Reheat:
		return []string{
			"Lands: heat rounds every edge and softens the grooves. Fine lands run together first; try it on the worst blank.",
			"Rim: the thin rim softens long before the foot, and may go out of round.",
			"Annealing: bring the whole glass up slowly, and anneal it again in full afterwards, by its thickest place. Cut nothing more before that.",
			"Only clean and dry: grit and compound burn in.",
		}
	}
	return []string{
		"As cut: grey. Nothing more is asked of the glass.",
		"Felt and compound: widens every groove a little; keep it wet and off the thin rim.",
		"Acid: at a licensed shop only; takes glass off lands and rim too.",
		"Reheating: rounds every edge, may move the rim, and asks for annealing afterwards.",
		"Say which with finish under [shop] in the job, and this sheet says what to watch for.",
	}
}

// cautions is what goes with every sheet (silica: OSHA 29 CFR 1910.1053; lead:
// 1910.1025; both from memory; the rest common practice).
func cautions() advice {
	return advice{"Cutting glass can hurt", []string{
		"Wet, always: wheel and glass. Dry glass dust harms the lungs, and the sludge is dust again once it dries. Lead glass poisons: wash, and keep food away.",
		"Eye protection on before the wheel turns. Hair, sleeves and strings tied back.",
		"Electricity away from the water: behind a residual-current switch, hands dry at the switch.",
		"Annealed glass only. A glass with a stone, a cord or a crack in it may fly apart.",
		"The depths are geometry, not a promise of strength. Local rules and qualified advice come before this paper.",
	}}
}

// general sets the advice that holds for every blank.
func (f format) general(p *pattern.Plan) []block {
	var blocks []block
	for _, a := range general(p) {
		blocks = append(blocks, f.heading(a.heading, f.column())...)
		for _, words := range a.items {
			blocks = append(blocks, f.item("–", words, f.column())...)
		}
	}
	return blocks
}
