package desk

import (
	"context"
	"errors"
	"testing"
	"time"
)

// What is due ends by the clock, with no timer to end it, and says so; what it is part of
// comes first.
func TestDue(t *testing.T) {
	ended, end := context.WithCancel(context.Background())
	end()
	hour := time.Hour
	for what, c := range map[string]struct {
		of   context.Context
		in   time.Duration
		want error
	}{
		"later":       {context.Background(), hour, nil},
		"past":        {context.Background(), -hour, context.DeadlineExceeded},
		"ended":       {ended, hour, context.Canceled},
		"ended, past": {ended, -hour, context.Canceled},
	} {
		if got := (due{c.of, time.Now().Add(c.in)}).Err(); !errors.Is(got, c.want) {
			t.Errorf("%s: %v, want %v", what, got, c.want)
		}
	}
}
