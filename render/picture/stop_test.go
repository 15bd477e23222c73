package picture

import (
	"context"
	"errors"
	"testing"
)

func TestPictureStops(t *testing.T) {
	ctx, stop := context.WithCancel(t.Context())
	stop()
	if _, err := New(ctx, planFor(t, crowdedJob), Options{Tilt: DefaultTilt}); !errors.Is(err, context.Canceled) {
		t.Error(err)
	}
}
