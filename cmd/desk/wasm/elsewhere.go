//go:build !js

package main

func main() { panic("this runs in a browser only: build it with GOOS=js GOARCH=wasm") }
