package main

import (
	"errors"
	"fmt"
	"path/filepath"

	"roundlay/geometry"
	"roundlay/pattern/job"
)

// newJob writes a starter job to a file, or to standard output. It may begin from what was
// measured on a piece.
func newJob(s *session, args []string) error {
	unit := s.flags.String("unit", "in", "the unit the job is written in: in or mm")
	out := s.flags.String("out", "", "the file to write; the same as naming it after the command")
	force := s.flags.Bool("force", false, "overwrite the file if it is there")
	shop := s.flags.Bool("shop", false, "write the limits, the rack and the shop alone, as a file for jobs to include")
	piece := addPieceFlags(s.flags)
	file, err := s.parse(args)
	if err != nil {
		return err
	}
	u, err := geometry.ParseUnit(*unit)
	if err != nil {
		return fmt.Errorf("--unit: %w", err)
	}
	if file != "" && *out != "" {
		return fmt.Errorf("new was given two files to write: %q and %q", file, *out)
	}
	if file == "" {
		file = *out
	}
	text := job.Starter(u)
	if *shop && *piece.like {
		return errors.New("new takes --shop or --like, not both")
	}
	if err := piece.agree(); err != nil {
		return err
	}
	if *shop {
		text = job.ShopFile(nameOr(file, "shop.toml"), u)
	}
	if *piece.like {
		if text, err = piece.starter(u); err != nil {
			return err
		}
	}
	if file == "" || file == "-" {
		_, err = s.stdout.Write(text)
	} else {
		err = s.write(*force, document{path: file, data: text})
	}
	if err == nil && *piece.like {
		err = s.tryStarter(text, file)
	}
	return err
}

// nameOr returns the name of a file that is written, or another where it is standard output.
func nameOr(file, otherwise string) string {
	if file == "" || file == "-" {
		return otherwise
	}
	return filepath.Base(file)
}
