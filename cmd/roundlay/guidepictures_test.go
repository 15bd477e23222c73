package main

import (
	"bytes"
	"os"
	"path/filepath"
	"regexp"
)

// pictured is a picture that lies beside the page.
var pictured = regexp.MustCompile(`!\[[^\]]*\]\(([^/)]+)\)|<img src="([^/"]+)"`)

// maxPicture is how many bytes a picture of the guide may have.
const maxPicture = 200 << 10

// pictures compares the page's pictures with those that its commands made, and notes
// which there are.
func (r *reader) pictures(made map[string]bool) {
	for _, line := range r.page.prose() {
		for _, m := range pictured.FindAllStringSubmatch(line, -1) {
			name := m[1] + m[2]
			drawn, err := os.ReadFile(filepath.Join(r.folder, name))
			if err != nil {
				r.Errorf("%s: no command on the page makes %s", r.page.name, name)
				continue
			}
			made[name] = true
			r.keep(filepath.Join("guide", name), drawn)
		}
	}
}

// keep compares a picture with the one that is kept.
func (r *reader) keep(path string, drawn []byte) {
	if os.Getenv("ROUNDLAY_UPDATE") != "" {
		r.write(path, string(drawn))
	}
	kept, err := os.ReadFile(path)
	if err != nil {
		r.Fatal(err)
	}
	if !bytes.Equal(kept, drawn) {
		r.Errorf("%s is not what is drawn now; look, and remake it with ROUNDLAY_UPDATE=1", path)
	}
	if len(kept) > maxPicture {
		r.Errorf("%s: %d bytes are many for a picture on a page", path, len(kept))
	}
}
