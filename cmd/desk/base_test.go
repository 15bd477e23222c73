package desk

import (
	"context"
	"encoding/json"
	"math"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"roundlay/render/report"
	"roundlay/render/screen"
)

// footed is a job with a star under its foot.
func footed(t testing.TB) string {
	t.Helper()
	data, err := os.ReadFile(filepath.Join("..", "..", "testdata", "gallery", "star-footed-tumbler.toml"))
	if err != nil {
		t.Fatal(err)
	}
	return string(data)
}

// seen is what a test reads of an answer to lay.
type seen struct {
	Job      string
	Mistake  *mistake
	Face     string
	Faces    []string
	Findings []finding
	Numbers  []report.Table
	Wrap     screen.Wrap
	Hands    []screen.Hand
}

func laidAs(t testing.TB, body map[string]any) seen {
	t.Helper()
	data, err := json.Marshal(body)
	if err != nil {
		t.Fatal(err)
	}
	reply, err := New().Answer(context.Background(), "lay", data)
	if err != nil {
		t.Fatal(err)
	}
	var out seen
	if err := json.Unmarshal(reply.Data, &out); err != nil {
		t.Fatal(err)
	}
	return out
}

// The wrap of either face has the motifs that stand on it alone, and the base lies round its middle.
func TestFaces(t *testing.T) {
	text := footed(t)
	side, base := laidAs(t, map[string]any{"job": text}), laidAs(t, map[string]any{"job": text, "side": "base"})
	numbers := func(a seen) (n []int) {
		for _, m := range a.Wrap.Motifs {
			n = append(n, m.Number)
		}
		return n
	}
	if got := numbers(side); len(got) != 1 || got[0] != 1 || side.Face != "side" || strings.Join(side.Faces, " ") != "side base" {
		t.Errorf("the side is %q of %q with motifs %v", side.Face, side.Faces, got)
	}
	if got := numbers(base); len(got) != 3 || got[0] != 2 || base.Face != "base" || base.Wrap.Flat != "disc" || base.Wrap.Repeats != 16 {
		t.Errorf("the base is %q, %q with %d sectors and motifs %v", base.Face, base.Wrap.Flat, base.Wrap.Repeats, got)
	}
	for _, x := range base.Wrap.Box {
		if math.Abs(math.Abs(float64(x))-31) > 0.05 { // the base is 62 mm across
			t.Errorf("the box of a base of 62 mm is %v", base.Wrap.Box)
		}
	}
	// The long ray of sector 1 stands upright, 0.55 of the band from 6.5 to 27.5 mm out.
	if m := base.Wrap.Motifs[0].Middle; m[0] != 0 || math.Abs(float64(m[1])-(6.5+0.55*21)) > 1e-3 {
		t.Errorf("the ray's middle is %v", m)
	}
	if base.Wrap.Seam != "" || len(base.Findings) != 0 {
		t.Errorf("the base has the seam %q and findings %v", base.Wrap.Seam, base.Findings)
	}
	var dividers string
	for _, table := range base.Numbers {
		for _, r := range table.Rows {
			dividers += r.Name + "\n"
		}
	}
	for _, want := range []string{"ase edge", "base band outside"} {
		if !strings.Contains(dividers, want) {
			t.Errorf("the numbers don't have %q:\n%s", want, dividers)
		}
	}
	if plain := laidAs(t, map[string]any{"job": demo(), "side": "base"}); plain.Face != "side" || len(plain.Faces) != 1 {
		t.Errorf("a job without a base shows the %s", plain.Face)
	}
}

// A motif of the base comes to where it is dragged: out along the upright, and round by a sector.
func TestDragOnBase(t *testing.T) {
	text := footed(t)
	at := func(a seen) [2]float64 {
		m := a.Wrap.Motifs[0].Middle
		return [2]float64{float64(m[0]), float64(m[1])}
	}
	from := at(laidAs(t, map[string]any{"job": text, "side": "base"}))
	for _, to := range [][2]float64{{0, 15}, {1.5, 18}, {-2, 20.5}} {
		edit := map[string]any{"op": "drag", "path": "motif[2]", "value": map[string]any{"grab": "middle", "from": from, "to": to}}
		got := at(laidAs(t, map[string]any{"job": text, "side": "base", "edits": []any{edit}}))
		if d := math.Hypot(got[0]-to[0], got[1]-to[1]); d > 0.1 {
			t.Errorf("dragged to %v it comes to %v, %.3f mm off", to, got, d)
		}
	}
	corner := map[string]any{"op": "drag", "path": "motif[2]", "value": map[string]any{"grab": "turn", "from": [2]float64{0, 25}, "to": [2]float64{3, 25}}}
	if a := laidAs(t, map[string]any{"job": text, "side": "base", "edits": []any{corner}}); !strings.Contains(a.Job, "turn = -") {
		t.Errorf("turned clockwise, the job is\n%s", a.Job)
	}
	middle := map[string]any{"op": "drag", "path": "motif[4]", "value": map[string]any{"grab": "middle", "from": [2]float64{}, "to": [2]float64{3, 3}}}
	if a := laidAs(t, map[string]any{"job": text, "side": "base", "edits": []any{middle}}); a.Job != text || a.Mistake != nil {
		t.Error("what stands over the middle was moved")
	}
}

// A motif added to the base stands on it; what is found there says its face and its place.
func TestFoundOnBase(t *testing.T) {
	add := map[string]any{"op": "add", "path": "motif", "value": map[string]any{"kind": "fan", "face": "base"}}
	a := laidAs(t, map[string]any{"job": footed(t), "side": "base", "edits": []any{add}})
	if a.Mistake != nil || len(a.Wrap.Motifs) != 4 {
		t.Fatalf("added: %+v", a.Mistake)
	}
	n := 0
	for _, f := range a.Findings {
		if f.Face != "base" || f.X == nil {
			continue
		}
		n++
		if r := math.Hypot(float64(*f.X), float64(*f.Y)); r > 31.1 || f.Theta != nil {
			t.Errorf("%s is %.1f mm from the middle", f.Letter, r)
		}
	}
	if n == 0 || len(a.Wrap.Rings) == 0 {
		t.Errorf("of a fan over a star %d findings and %d rings are on the base", n, len(a.Wrap.Rings))
	}
}
