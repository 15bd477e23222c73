package main

import (
	"bytes"
	"errors"
	"fmt"
	"io"
	"math"
	"path/filepath"
	"strconv"
	"strings"

	"roundlay/pattern"
	"roundlay/render/picture"
)

// view writes a picture of each cut glass as it looks from the side.
func view(s *session, args []string) error {
	out := s.flags.String("out", "", "where to write: a file ending in .svg, .png or .pdf, or a folder for an SVG (this folder if not given)")
	turn := s.flags.String("turn", "0", "the angle on the glass that faces you, in `DEGREES` to the right from the middle of repeat 1")
	tilt := s.flags.String("tilt", "7", "how far down you look at it, in `DEGREES`; 0 is straight from the side")
	round := s.flags.Bool("round", false, "four views side by side, each turned on by a quarter")
	findings := s.flags.Bool("findings", false, "ring what check finds")
	blank := s.flags.String("blank", "", "only the blank of this name")
	force := s.flags.Bool("force", false, "overwrite files that are there")
	file, err := s.parse(args)
	if err != nil {
		return err
	}
	o := picture.Options{Round: *round, Findings: *findings}
	if o.Turn, err = readDegrees("--turn", *turn, -360, 360); err != nil {
		return err
	}
	if o.Tilt, err = readDegrees("--tilt", *tilt, 0, picture.MostTilt*180/math.Pi); err != nil {
		return err
	}
	plans, err := s.plans(file, *blank)
	if err != nil {
		return err
	}
	folder, ending, err := pictureTarget(*out, len(plans) > 1)
	if err != nil {
		return err
	}
	var docs []document
	for _, p := range plans {
		data, err := pictureFile(p, o, ending)
		if err != nil {
			return err
		}
		path := *out
		if folder {
			path = filepath.Join(*out, planName(p)+"-view"+ending)
		}
		docs = append(docs, document{path, data})
	}
	if err := s.write(*force, docs...); err != nil {
		return err
	}
	for _, p := range plans {
		if n := len(p.Groups()); n > 0 && !*findings {
			fmt.Fprintf(s.stderr, "Blank %q has findings (%d): --findings rings them; roundlay check tells them.\n", p.Blank.Name, n)
		}
	}
	return nil
}

// readDegrees reads an angle in degrees, and returns it in radians.
func readDegrees(flag, text string, least, most float64) (float64, error) {
	degrees, err := strconv.ParseFloat(strings.TrimSuffix(strings.TrimSpace(text), "°"), 64)
	if err != nil || !(degrees >= least && degrees <= most) {
		return 0, fmt.Errorf("%s: read %q; accepted: degrees from %.0f to %.0f, such as 12.5", flag, text, least, most)
	}
	return degrees * math.Pi / 180, nil
}

// pictureTarget reads --out: whether it names a folder, and the ending of the
// files to write.
func pictureTarget(out string, several bool) (folder bool, ending string, err error) {
	folder, ending, err = outTarget(out, svgEnding, pngEnding, pdfEnding)
	if err == nil && !folder && several {
		err = errors.New("--out names one file, and the job has several blanks: name a folder, or one blank with --blank")
	}
	return folder, ending, err
}

// pictureFile makes the picture of one blank, in the format of an ending.
func pictureFile(p *pattern.Plan, o picture.Options, ending string) ([]byte, error) {
	drawn, err := picture.New(p, o)
	if err != nil {
		return nil, err
	}
	write := map[string]func(io.Writer) error{".svg": drawn.SVG, ".png": drawn.PNG, ".pdf": drawn.PDF}[ending]
	var data bytes.Buffer
	if err := write(&data); err != nil {
		return nil, err
	}
	return data.Bytes(), nil
}
