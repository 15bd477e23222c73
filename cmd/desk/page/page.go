// Package page holds the page that a browser shows: its frame, its look and
// its script. There is no build step: what is here is what is served.
//
// The script is plain modules. ask.js alone talks to the engine, store.js
// alone holds state, and every other module exports mount(root, store, about),
// which fills root and follows the store. The page has no geometry and formats
// no length: it sends what a person typed or dragged, and shows what the
// engine answers.
package page

import "embed"

// Files are the page's files, index.html first among them.
//
//go:embed index.html *.css *.js
var Files embed.FS
