// Package page holds the files of the page: they are served as they are.
package page

import "embed"

// Files are the page's files, index.html among them.
//
//go:embed *.html
var Files embed.FS
