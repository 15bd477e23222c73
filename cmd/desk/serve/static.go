package serve

import (
	"io/fs"
	"net/http"
	"path"
	"strings"
	"sync"
)

// pageFiles serves the page's files, and index.html as "/".
type pageFiles struct{ files fs.FS }

// contentTypes are those of the page's files. Those of the system would do, but on some
// systems a script is not a script.
var contentTypes = sync.OnceValue(func() map[string]string {
	return map[string]string{
		".html": "text/html; charset=utf-8",
		".css":  "text/css; charset=utf-8",
		".js":   "text/javascript; charset=utf-8",
		".json": "application/json",
		".svg":  "image/svg+xml",
		".png":  "image/png",
		".txt":  "text/plain; charset=utf-8",
	}
})

func (p pageFiles) ServeHTTP(w http.ResponseWriter, r *http.Request) {
	name := strings.TrimPrefix(r.URL.Path, "/")
	if name == "" {
		name = "index.html"
	}
	kind, served := contentTypes()[path.Ext(name)]
	data, err := fs.ReadFile(p.files, name)
	if err != nil || !served {
		refuse(w, r, http.StatusNotFound, "there is nothing here; the page is at /")
		return
	}
	w.Header().Set("Content-Type", kind)
	w.Write(data)
}
