package main

import (
	"encoding/json"
	"errors"
	"fmt"
	"slices"
	"strings"

	"github.com/spf13/pflag"

	"roundlay/geometry"
	"roundlay/pattern/groove"
	"roundlay/pattern/job"
)

// wheelFlags are the flags that say what a wheel is, in the words of a job. That wheel is
// read as a job's wheel is.
type wheelFlags struct{ set *pflag.FlagSet }

// wheelKeys are a wheel's keys in a job, but for its name.
var wheelKeys = []string{"edge", "across", "thick", "angle", "tip", "tip_radius", "radius", "mitres", "spacing"}

// wheelFlag returns the flag for a key. The glass is across too, so the wheel's own says
// whose it is.
func wheelFlag(key string) string {
	if key == "across" {
		return "wheel-across"
	}
	return strings.ReplaceAll(key, "_", "-")
}

func addWheelFlags(f *pflag.FlagSet) wheelFlags {
	f.String("edge", "", "the wheel's edge: mitre, round, flat or gang; its other flags are those of a job's wheel")
	f.String("wheel-across", "", "how far the wheel is across, a `LENGTH`")
	f.String("thick", "", "how thick it is, a `LENGTH`; of a flat edge, its width")
	f.Float64("angle", 0, "mitre and gang: the included angle of the V, in `DEGREES`")
	f.String("tip", "", "mitre and gang: the width of a flat that the point is dressed to, a `LENGTH`")
	f.String("tip-radius", "", "mitre and gang: the radius that the point is dressed to, a `LENGTH`")
	f.String("radius", "", "round: the radius of the edge, a `LENGTH`")
	f.Int("mitres", 0, "gang: how many mitres")
	f.String("spacing", "", "gang: from one mitre's line to the next, a `LENGTH`")
	return wheelFlags{f}
}

// given reports whether any of the flags was given.
func (w wheelFlags) given() bool {
	return slices.ContainsFunc(wheelKeys, w.has)
}

func (w wheelFlags) has(key string) bool { return w.set.Changed(wheelFlag(key)) }

// edge returns the edge as it was given, "" if it wasn't.
func (w wheelFlags) edge() string { return w.set.Lookup("edge").Value.String() }

// sizeless reports whether the wheel is given without its size.
func (w wheelFlags) sizeless() bool { return w.given() && !w.has("across") }

// read returns the wheel. One without a size has one as large as is accepted; if its
// thickness isn't given either, its edge goes on as far as a mark may be wide.
func (w wheelFlags) read(unit geometry.Unit) (groove.Wheel, error) {
	text := "title = \"mark\"\nlength = \"" + unit.String() + "\"\n" +
		"blank.station = [{height = 0, across = \"80 mm\", wall = \"4 mm\"}, {height = \"100 mm\", across = \"80 mm\", wall = \"4 mm\"}]\n" +
		"layout.repeats = 1\n" +
		"motif = [{kind = \"fan\", wheel = \"wheel\", depth = \"0.1 mm\"}]\n[[wheel]]\nname = \"wheel\"\n"
	for _, key := range wheelKeys {
		switch {
		case w.has(key):
			text += key + " = " + w.value(key) + "\n"
		case key == "across" && w.sizeless():
			text += "across = \"1000 mm\"\n"
		case key == "thick" && w.sizeless() && slices.Contains([]string{"mitre", "round"}, w.edge()):
			text += "thick = \"150 mm\"\n"
		}
	}
	j, err := job.Read("", []byte(text))
	var wrong *job.Error
	switch {
	case errors.As(err, &wrong):
		return groove.Wheel{}, w.ofFlag(wrong)
	case err != nil:
		return groove.Wheel{}, err
	}
	wheel := j.Rack[0]
	wheel.Name = ""
	return wheel, nil
}

// value returns a flag's value as a job has it.
func (w wheelFlags) value(key string) string {
	value := w.set.Lookup(wheelFlag(key)).Value
	if value.Type() != "string" {
		return strings.ToLower(value.String()) // NaN is nan there
	}
	quoted, err := json.Marshal(value.String()) // TOML takes JSON's texts
	if err != nil {
		return `""`
	}
	return string(quoted)
}

// ofFlag rewords what is wrong with a wheel's key as what is wrong with its flag.
func (w wheelFlags) ofFlag(wrong *job.Error) error {
	key := wrong.Key[strings.LastIndexByte(wrong.Key, '.')+1:]
	read, more := "read "+wrong.Read, ""
	if !w.has(key) {
		read, more = "missing", w.missingToo(key)
	}
	line := fmt.Sprintf("--%s: %s; accepted: %s", wheelFlag(key), read, strings.Replace(wrong.Accepted, "this key", "this flag", 1))
	if wrong.Hint != "" {
		line += "; " + wrong.Hint
	}
	return errors.New(line + more)
}

// missingToo names what else is missing of the wheel, beside the flag for a key, so that all of
// it can be given at once; "" where that is nothing.
func (w wheelFlags) missingToo(but string) string {
	needed := []string{"edge", "across", "thick"}
	switch w.edge() {
	case groove.Mitre.String():
		needed = append(needed, "angle")
	case groove.Round.String():
		needed = append(needed, "radius")
	case groove.Gang.String():
		needed = append(needed, "angle", "mitres", "spacing")
	}
	var flags []string
	for _, key := range needed {
		if key != but && !w.has(key) {
			flags = append(flags, "--"+wheelFlag(key))
		}
	}
	if len(flags) == 0 {
		return ""
	}
	return "; missing too: " + strings.Join(flags, ", ")
}
