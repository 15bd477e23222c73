package main

import (
	"context"

	"roundlay/cmd/desk/serve"
)

// engine answers what the page asks.
func engine() serve.Engine {
	return func(context.Context, string, []byte) (serve.Answer, error) { return serve.Answer{}, serve.ErrUnknown }
}
