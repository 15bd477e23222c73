package desk

import (
	"errors"
	"fmt"

	"roundlay/pattern/job"
)

// jobText is the job of a request.
type jobText struct {
	Job string `json:"job"`
	// Files are the texts of files beside the job, by their names: such as were dropped on the
	// page, and are not on disk yet. They go before files of the same name that are.
	Files map[string]string `json:"files"`

	disk job.Beside
}

// withJob is a request that has a job's text.
type withJob interface{ lies(beside job.Beside) }

// lies says what reads the other files beside the job.
func (t *jobText) lies(beside job.Beside) { t.disk = beside }

// take reads the body of a request about a job.
func (d *Desk) take(body []byte, into withJob) error {
	if err := read(body, into); err != nil {
		return err
	}
	into.lies(d.Beside)
	return nil
}

// jobName is how messages name the job: its own file may have another name, or none.
const jobName = "job"

// read reads the job.
func (t jobText) read() (*job.Job, error) { return t.readAs(t.Job) }

// readAs reads what the job's text has become.
func (t jobText) readAs(text string) (*job.Job, error) {
	return job.ReadWith(jobName, []byte(text), t.beside)
}

// beside reads a file beside the job.
func (t jobText) beside(name string) ([]byte, error) {
	if text, ok := t.Files[name]; ok {
		return []byte(text), nil
	}
	err := errors.New("there is no such file")
	if t.disk != nil {
		var data []byte
		if data, err = t.disk(name); err == nil {
			return data, nil
		}
	}
	return nil, fmt.Errorf("%w; drop the file on the page to bring it", err)
}
