package pattern

import (
	"cmp"
	"slices"

	"roundlay/pattern/glass"
	"roundlay/pattern/job"
)

// New lays a job out on one of its blanks and checks it. The error says why
// nothing can be laid out at all.
func New(j *job.Job, blank *glass.Blank) (*Plan, error) {
	p, err := lay(j, blank)
	if err != nil {
		return nil, err
	}
	p.Chords = p.chords()
	p.Findings = p.check()
	p.cureAll()
	return p, nil
}

// checks lists what finds each kind of finding.
func (p *Plan) checks() []func() []Finding {
	return []func() []Finding{p.crowd, p.thin, p.margins, p.shallow}
}

// check returns all findings, kind by kind and each in the order of its cuts.
func (p *Plan) check() []Finding {
	var found []Finding
	for _, find := range p.checks() {
		found = append(found, find()...)
	}
	slices.SortStableFunc(found, func(a, b Finding) int {
		return cmp.Or(cmp.Compare(a.Kind, b.Kind), slices.Compare(a.Cuts, b.Cuts))
	})
	return found
}
