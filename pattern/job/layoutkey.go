package job

import "fmt"

// repeatsKey and bandKey are the keys of the layout of a face, in one of a job's tables.
func repeatsKey(table int, face Face, of func(j *Job) *Layout) key {
	return key{
		name: "repeats", table: table,
		get:    func(j *Job, c *Change) bool { c.Value = float64(of(j).Repeats); return true },
		set:    func(j *Job, c Change) { of(j).Repeats = int(c.Value) },
		format: func(_ *Job, c Change) string { return fmt.Sprint(int(c.Value)) },
		may:    func(j *Job, c Change) bool { return c.Value >= 1 && c.Value <= maxRepeats && !j.ByNumber(face) },
	}
}

func bandKey(table int, of func(j *Job) *Layout) key {
	return key{
		name: "band", table: table, price: ByHeight,
		get: func(j *Job, c *Change) bool {
			if of(j).Band == nil {
				return false
			}
			c.Band = *of(j).Band
			return true
		},
		set:    func(j *Job, c Change) { of(j).Band = &c.Band },
		format: func(j *Job, c Change) string { return pair(quote(j, c.Band.Foot), quote(j, c.Band.Top)) },
		may:    func(_ *Job, c Change) bool { return c.Band.Foot >= 0 && c.Band.Top > c.Band.Foot },
	}
}
