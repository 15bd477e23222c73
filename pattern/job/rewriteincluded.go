package job

import (
	"bytes"
	"fmt"
)

// File is a file beside a job.
type File struct {
	Name string
	Data []byte
}

// RewriteIncluded is Job.Rewrite that changes a value in the file in which it stands: it
// returns the job's text, and those of the included files that are another then. What stands
// nowhere yet is written where its table is.
func (j *Job) RewriteIncluded(data []byte, edits []Edit) (text []byte, files []File, err error) {
	var own []Edit
	theirs := map[*included][]Edit{}
	for _, e := range edits {
		file := j.source.home(e)
		if file == nil {
			own = append(own, e)
			continue
		}
		if e.Motif >= 0 {
			e.Motif = file.doc.root.index("motif", e.Motif+1)
		}
		theirs[file] = append(theirs[file], e)
	}
	if text, err = j.Rewrite(data, own); err != nil {
		return nil, nil, err
	}
	for _, file := range j.source.files {
		changed, err := rewritten(file.text, nil, theirs[file])
		if err != nil {
			return nil, nil, fmt.Errorf("%s: %w", file.path, err)
		}
		if !bytes.Equal(changed, file.text) {
			files = append(files, File{file.name, changed})
		}
	}
	return text, files, nil
}

// home returns the included file in which the value of an edit stands or would stand, nil
// where that is the job's own.
func (s source) home(e Edit) *included {
	if v := s.find(joined(e.path(), e.Key)); v != nil {
		return includedAt(s.files, v.at)
	}
	if e.Motif < 0 {
		if v := s.find(e.path()); v != nil {
			return includedAt(s.files, v.at)
		}
		return nil
	}
	for _, file := range s.files {
		if file.doc.root.index("motif", e.Motif+1) >= 0 {
			return file
		}
	}
	return nil
}
