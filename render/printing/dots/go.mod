module github.com/srwiley/scanx

go 1.26.0

require (
	github.com/golang/freetype v0.0.0-20170609003504-e2365dfdc4a0
	golang.org/x/image v0.47.0
)
