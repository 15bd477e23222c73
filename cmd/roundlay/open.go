package main

import (
	"context"
	"errors"
	"fmt"
	"path/filepath"

	"roundlay/cmd/desk"
	"roundlay/cmd/desk/page"
	"roundlay/cmd/desk/serve"
	"roundlay/pattern/job"
)

// openPage shows a job, or the demo, on a page in the browser until the person stops it.
func openPage(s *session, args []string) error {
	listen := s.flags.String("listen", "127.0.0.1:0", "the address to serve the page on, `HOST:PORT`; port 0 is any that is free")
	noBrowser := s.flags.Bool("no-browser", false, "print the address only, and open no browser")
	token := s.flags.Bool("token", false, "put a secret into the address, without which nothing is answered; then any address\nof this machine may be listened on, and no browser is opened")
	file, err := s.parse(args)
	if err != nil {
		return err
	}
	if file == "-" {
		return errors.New(`open: read "-" for JOB; accepted: a job file, for the page saves to it`)
	}
	err = s.heed(func() error { // for the words of the other commands; a pipe may keep it waiting
		_, _, err := s.readData(file)
		return err
	})
	if err != nil {
		return err
	}
	_, demo := job.Demo()
	engine := desk.New()
	engine.Version = thisVersion()
	folder := "."
	if file != "" {
		folder = filepath.Dir(file)
	}
	engine.Beside = inFolder(folder)
	server, err := serve.Open(serve.Config{
		Listen: *listen, Token: *token,
		Page: page.Files, Engine: engine, Disk: s.disk,
		Job: file, Demo: demo, Folder: folder,
		UntilLeft: s.clicked,
	})
	if err != nil {
		return err
	}
	if s.demo {
		s.demo = false // said here, before the page is looked at
		fmt.Fprintln(s.stderr, "No job file was given: this is the built-in demo job.")
	}
	fmt.Fprintf(s.stdout, "The page is at %s (Ctrl-C ends it)\n", server.Address())
	ctx, end := context.WithCancelCause(s.ctx)
	defer end(nil)
	if !*noBrowser && !*token {
		go func() {
			if err := browse(server.Address(), s.stderr); err != nil && s.unseen {
				end(err) // nobody would ever come to the address
			}
		}()
	}
	err = server.Run(ctx)
	if failed := context.Cause(ctx); err == nil && s.ctx.Err() == nil && failed != nil {
		return failed
	}
	return err
}
