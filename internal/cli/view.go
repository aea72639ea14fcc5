package cli

import (
	"context"
	"fmt"
	"os"
	"os/exec"
	"os/signal"
	"path/filepath"
	"runtime"
	"syscall"

	"github.com/spf13/cobra"

	"flitchlay/internal/pdf"
	"flitchlay/internal/view"
)

// viewing shows a room in a browser while its file is typed.
func (c *call) viewing() *cobra.Command {
	var port int
	var quiet bool
	cmd := &cobra.Command{
		Use:                   "view ROOM|JOB [--port N] [--no-open]",
		DisableFlagsInUseLine: true,
		Short:                 "Show a room in the browser while its file is typed, and try its layout by hand",
		Long: `view opens a page on this machine that shows the room while its file is typed: all walls unrolled, one wall large,
the findings and the counts. Every time the file is saved the page shows the new layout; a mistake leaves the last
good one, greyed, and shows the message with its line. The page template, the logo, the photographs, a job and its
rooms are followed too.

A seam is dragged, or moved with Shift and the arrow keys: it is pinned there, and the rest is solved anew while
the hand moves. Nothing is written before "Keep", which puts the pin into the room file by the smallest edit, and only
if the file is still the one that it was tried on.

The page is served on the loopback address alone, under a secret that the address holds; nothing it shows leaves the
machine. It ends with the program: Ctrl+C.`,
		Example: `  flitchlay view dining.toml`,
		Args: func(cmd *cobra.Command, args []string) error {
			if len(args) != 1 {
				return fmt.Errorf("view takes one room file or one job file; see flitchlay view --help")
			}
			return nil
		},
		ValidArgsFunction: func(*cobra.Command, []string, string) ([]string, cobra.ShellCompDirective) {
			return []string{"toml"}, cobra.ShellCompDirectiveFilterFileExt
		},
		RunE: func(_ *cobra.Command, args []string) error {
			if err := followable(args[0]); err != nil {
				return err
			}
			if port < 0 || port > 65535 {
				return fmt.Errorf("--port takes a number from 0 to 65535; 0 is a free one")
			}
			ctx, stop := signal.NotifyContext(context.Background(), os.Interrupt, syscall.SIGTERM, syscall.SIGHUP)
			defer stop()
			s, err := view.New(ctx, c.viewed(args[0]), port)
			if err != nil {
				return fmt.Errorf("port %d cannot be used: %w", port, err)
			}
			fmt.Fprintf(c.out, "%s\n", s.Address())
			if !quiet {
				if err := browse(s.Address()); err != nil {
					c.say("no browser was found to open it: open the address above")
				}
			}
			return s.Serve()
		},
	}
	cmd.Flags().IntVar(&port, "port", 0, "the port to listen on; a free one where none is given")
	cmd.Flags().BoolVar(&quiet, "no-open", false, "print the address and open no browser")
	return cmd
}

// followable holds that a path is a file that a person types.
//
// Errors: one sentence that says what to give.
func followable(path string) error {
	if path == stdin {
		return fmt.Errorf("view follows a file: give its name, not -")
	}
	data, err := os.ReadFile(path)
	switch {
	case err != nil:
		return fmt.Errorf("%s cannot be read: %w", path, plain(err))
	case pdf.IsPDF(data):
		return fmt.Errorf("%s is a PDF set: view follows the room file itself", path)
	}
	return nil
}

// browse opens an address in the browser that the machine is set to.
//
// Errors: there is none.
func browse(address string) error {
	program, args := "xdg-open", []string{address}
	switch runtime.GOOS {
	case "darwin":
		program = "open"
	case "windows":
		program, args = "rundll32", []string{"url.dll,FileProtocolHandler", address}
	}
	cmd := exec.Command(program, args...)
	if err := cmd.Start(); err != nil {
		return err
	}
	go cmd.Wait()
	return nil
}

// exchange puts a text in the place of a file's, whole or not at all, if the file still holds what it held. A link stays one: the
// file that it leads to is written.
//
// Errors: view.ErrChanged; or the file cannot be written.
func exchange(path string, was, text []byte) error {
	real, err := filepath.EvalSymlinks(path)
	if err != nil {
		return err
	}
	now, err := os.ReadFile(real)
	if err != nil {
		return err
	}
	if string(now) != string(was) {
		return view.ErrChanged
	}
	info, err := os.Stat(real)
	if err != nil {
		return err
	}
	f, err := os.CreateTemp(filepath.Dir(real), "."+filepath.Base(real)+".*")
	if err != nil {
		return err
	}
	defer os.Remove(f.Name()) // nothing is there once it is renamed
	_, err = f.Write(text)
	if err == nil {
		err = f.Sync()
	}
	if closed := f.Close(); err == nil {
		err = closed
	}
	if err == nil {
		err = os.Chmod(f.Name(), info.Mode().Perm())
	}
	if err == nil {
		if now, err = os.ReadFile(real); err == nil && string(now) != string(was) {
			return view.ErrChanged
		}
	}
	if err != nil {
		return err
	}
	return os.Rename(f.Name(), real)
}
