package desk

import "roundlay/pattern/job"

// Edit is a change to a job's text.
type Edit struct {
	Op string `json:"op"`
}

// revise makes the edits, and reads the job that comes of them: nil with a mistake noted on
// the answer.
func (out *layAnswer) revise(ask layRequest, form bool) (*job.Job, error) {
	if len(ask.Edits) > 0 {
		return nil, badRequest("edits can't be made yet")
	}
	j, err := readJob(out.Job)
	if wrong, ok := mistaken(err); ok {
		out.Mistake = wrong
		return nil, nil
	}
	return j, err
}
