package printing

// mark is a letter or a run of letters, by its number, at a place along its line
// or in the run that it is part of.
type mark struct {
	is int
	x  int // in the font's own units, so that equal runs are found equal
}

// run is two marks that recur side by side, the first at its beginning.
type run [2]mark

// after returns the run of the ith mark of a line and the one after it, if there
// is one.
func after(line []mark, i int) run {
	if i+1 >= len(line) {
		return run{}
	}
	return run{{is: line[i].is}, {line[i+1].is, line[i+1].x - line[i].x}}
}

// runs is the runs that lines are set from besides letters. Marks are numbered
// letters first, then runs in their order.
type runs struct {
	letters int
	all     []run
	worth   []bool // whether a run, defined once, makes the file shorter
}

// findRuns replaces letters by runs that recur. Each round joins pairs of marks where
// a mark occurs with its successor at least as often as that with the next. So words
// grow, and then phrases.
func findRuns(lines [][]mark, letters int) runs {
	const often = 3
	r := runs{letters: letters}
	known := map[run]int{}
	for more := true; more; {
		more = false
		times := map[run]int{}
		for _, line := range lines {
			for i := range len(line) - 1 {
				times[after(line, i)]++
			}
		}
		for l, line := range lines {
			kept := line[:0]
			for i := 0; i < len(line); i++ {
				m, two := line[i], after(line, i)
				if n := times[two]; n >= often && n >= times[after(line, i+1)] {
					if _, ok := known[two]; !ok {
						known[two] = letters + len(r.all)
						r.all = append(r.all, two)
					}
					m.is = known[two]
					more = true
					i++
				}
				kept = append(kept, m)
			}
			lines[l] = kept
		}
	}
	r.weigh(lines)
	return r
}

// weigh finds the runs worth their definition: those that save more uses than they
// consist of. A run that is not worth it is replaced by its parts, which are older
// and so are weighed after it.
func (r *runs) weigh(lines [][]mark) {
	r.worth = make([]bool, len(r.all))
	uses := make([]int, r.letters+len(r.all))
	for _, line := range lines {
		for _, m := range line {
			uses[m.is]++
		}
	}
	for i := len(r.all) - 1; i >= 0; i-- {
		n, long := uses[r.letters+i], len(r.spelled(r.letters+i))
		r.worth[i] = n*(long-1) > long
		if !r.worth[i] {
			uses[r.all[i][0].is] += n
			uses[r.all[i][1].is] += n
		}
	}
}

// spelled returns the letters of a run.
func (r *runs) spelled(is int) []mark {
	return r.parts(nil, mark{is: is}, func(int) bool { return false })
}

// set returns what a line is written as: letters, and runs worth defining.
func (r *runs) set(line []mark) []mark {
	var out []mark
	for _, m := range line {
		out = r.parts(out, m, func(i int) bool { return r.worth[i] })
	}
	return out
}

// parts appends a mark, or its parts if it is a run that is not to be kept whole.
func (r *runs) parts(out []mark, m mark, whole func(i int) bool) []mark {
	i := m.is - r.letters
	if i < 0 || whole(i) {
		return append(out, m)
	}
	for _, part := range r.all[i] {
		out = r.parts(out, mark{part.is, m.x + part.x}, whole)
	}
	return out
}
