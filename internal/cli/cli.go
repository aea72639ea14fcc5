// Package cli is the command line: commands, messages, files, exit status.
//
// Coordinates and units: lengths are printed in the units of the room, as on its drawings.
//
// Order: findings, seams, files are named in the order of the plan and of its pages.
//
// Not here: anything that is computed or drawn.
package cli

import (
	"errors"
	"fmt"
	"io"
	"os"
	"os/signal"
	"strings"
	"sync"
	"syscall"
)

// What a command ends with.
const (
	fine      = 0 // no must finding
	broken    = 1 // a rule that must be met is not
	unusable  = 2 // the room file or the command line cannot be used
	unwritten = 3 // output was not written, a closed pipe included
)

// Main runs the program on its own arguments and streams and gives the exit status.
func Main() int {
	// A closed pipe is told like any other output that cannot be written, not by the signal that would end the program.
	signal.Ignore(syscall.SIGPIPE)
	return Run(os.Args[1:], os.Stdin, os.Stdout, os.Stderr)
}

// Run runs one command line and gives the exit status.
func Run(args []string, in io.Reader, out, messages io.Writer) int {
	c := &call{in: in, out: &sink{to: out}, messages: &sink{to: messages}}
	root := c.root()
	root.SetArgs(args)
	status := c.status(root.Execute())
	if c.out.failed != nil {
		c.say("standard output: %v", plain(c.out.failed))
		return unwritten
	}
	return status
}

// call is one run of a command: its streams, the room file, and whether a must finding came up.
type call struct {
	in       io.Reader
	out      *sink
	messages *sink
	must     bool
	text     []byte // of the room file that was read
	set      []byte // the PDF set that it came in, nil where it came by itself
	setName  string
	force    bool // write over files that the program did not write
	inputs   []string
	reading  sync.Mutex // several rooms are read at a time
	saying   sync.Mutex // and drawn
}

// say prints a message for a person.
func (c *call) say(format string, args ...any) {
	c.saying.Lock()
	defer c.saying.Unlock()
	fmt.Fprintf(c.messages, "flitchlay: "+format+"\n", args...)
}

// status tells what has gone wrong, and gives the exit status that belongs to it.
func (c *call) status(err error) int {
	var lost *lostError
	var hint *roomError
	if told, ok := errors.AsType[*toldError](err); ok {
		if errors.As(told, &lost) {
			return unwritten
		}
		return unusable
	}
	switch {
	case err == nil && c.must:
		return broken
	case err == nil:
		return fine
	case errors.As(err, &lost):
		c.say("%v", lost)
		return unwritten
	case errors.As(err, &hint):
		fmt.Fprintln(c.messages, strings.TrimRight(hint.Error(), "\n"))
		return unusable
	}
	c.say("%s", strings.TrimSpace(err.Error()))
	return unusable
}

// lostError is output that was not written.
type lostError struct {
	path string
	err  error
}

func (e *lostError) Error() string { return e.path + " is not written: " + plain(e.err).Error() }
func (e *lostError) Unwrap() error { return e.err }

// roomError is what is wrong in a room file; it has the places with it and is printed as it is.
type roomError struct{ error }

func (e *roomError) Unwrap() error { return e.error }

// plain takes the name of a call and of a file off an error: the message names the file itself.
func plain(err error) error {
	var path *os.PathError
	var link *os.LinkError
	switch {
	case errors.As(err, &path):
		return path.Err
	case errors.As(err, &link):
		return link.Err
	}
	return err
}

// sink keeps the first error of a stream, since those who print help or completions pass over it.
type sink struct {
	to     io.Writer
	failed error
}

// Write writes until the stream fails once.
func (s *sink) Write(p []byte) (int, error) {
	if s.failed != nil {
		return 0, s.failed
	}
	n, err := s.to.Write(p)
	s.failed = err
	return n, err
}
