package main

import (
	"bytes"
	"errors"
	"fmt"
	"image"
	"image/color"
	"image/jpeg"
	"image/png"
	"io/fs"
	"os"
	"os/exec"
	"path/filepath"
	"strconv"
	"strings"
	"testing"

	"github.com/rogpeppe/go-internal/testscript"

	"flitchlay/internal/cli"
	"flitchlay/internal/effort"
)

func TestMain(m *testing.M) {
	testscript.Main(cleared{m}, map[string]func(){"flitchlay": func() { os.Exit(cli.Main()) }})
}

// cleared runs the tests, and removes the drawings that they have shared.
type cleared struct{ *testing.M }

func (c cleared) Run() int {
	defer func() {
		if kept.dir != "" {
			os.RemoveAll(kept.dir)
		}
	}()
	return c.M.Run()
}

// The scripts run the program as a person does, with the rooms, the commands and what they must say in one text.
func TestScripts(t *testing.T) {
	testscript.Run(t, testscript.Params{
		Dir:                 "testdata/script",
		RequireExplicitExec: true,
		UpdateScripts:       effort.Updating(),
		Setup: func(e *testscript.Env) error {
			dir, err := filepath.Abs(top)
			e.Setenv("TOP", dir)
			e.Setenv("GOGC", os.Getenv("GOGC")) // the programs that a script runs collect as little as the tests themselves
			return err
		},
		Condition: func(name string) (bool, error) {
			if name != "full" {
				return false, fmt.Errorf("unknown condition %q", name)
			}
			return effort.Full(), nil
		},
		Cmds: map[string]func(*testscript.TestScript, bool, []string){
			"status": status, "closed": closed, "same": same, "pages": pages, "change": change, "picture": picture, "under": under,
		},
	})
}

// status runs a command and holds its exit status: status 1 flitchlay check room.toml.
func status(ts *testscript.TestScript, neg bool, args []string) {
	if neg || len(args) < 2 {
		ts.Fatalf("usage: status NUMBER COMMAND...")
	}
	want, err := strconv.Atoi(args[0])
	ts.Check(err)
	got := 0
	if err := ts.Exec(args[1], args[2:]...); err != nil {
		var exit *exec.ExitError
		if !errors.As(err, &exit) {
			ts.Fatalf("%v", err)
		}
		got = exit.ExitCode()
	}
	if got != want {
		ts.Fatalf("exit status %d, not %d", got, want)
	}
}

// closed runs a command whose standard output is a pipe that nobody reads, and holds its exit status.
func closed(ts *testscript.TestScript, neg bool, args []string) {
	if neg || len(args) < 2 {
		ts.Fatalf("usage: closed NUMBER COMMAND...")
	}
	want, err := strconv.Atoi(args[0])
	ts.Check(err)
	var path string
	for _, dir := range filepath.SplitList(ts.Getenv("PATH")) {
		if p := filepath.Join(dir, args[1]); path == "" && exists(p) {
			path = p
		}
	}
	cmd := exec.Command(path, args[2:]...)
	cmd.Dir = ts.MkAbs(".")
	// the program sees what the script has set, such as where its binary counts what was covered
	cmd.Env = append(os.Environ(), "PATH="+ts.Getenv("PATH"))
	read, write, err := os.Pipe()
	ts.Check(err)
	ts.Check(read.Close())
	var messages bytes.Buffer
	cmd.Stdout, cmd.Stderr = write, &messages
	err = cmd.Run()
	write.Close()
	got := 0
	var exit *exec.ExitError
	switch {
	case errors.As(err, &exit):
		got = exit.ExitCode()
	case err != nil:
		ts.Fatalf("%v", err)
	}
	ts.Logf("%s", messages.String())
	if got != want {
		ts.Fatalf("exit status %d (%v), not %d", got, err, want)
	}
	if !strings.Contains(messages.String(), "standard output: broken pipe") {
		ts.Fatalf("the closed pipe is not named")
	}
}

func exists(path string) bool {
	_, err := os.Stat(path)
	return err == nil
}

// same holds two folders alike to the last byte.
func same(ts *testscript.TestScript, neg bool, args []string) {
	if len(args) != 2 {
		ts.Fatalf("usage: [!] same FOLDER FOLDER")
	}
	a, b := content(ts, args[0]), content(ts, args[1])
	if len(a) == 0 {
		ts.Fatalf("%s is empty", args[0])
	}
	var differ []string
	for name := range a {
		if a[name] != b[name] {
			differ = append(differ, name)
		}
	}
	alike := len(differ) == 0 && len(a) == len(b)
	if alike == neg {
		ts.Fatalf("%d and %d files, different: %v", len(a), len(b), differ)
	}
}

// under holds a file to a line and what another file says, which stand in it one under the other: under stdout LINE FILE.
func under(ts *testscript.TestScript, neg bool, args []string) {
	if neg || len(args) != 3 {
		ts.Fatalf("usage: under FILE LINE FILE")
	}
	if got, want := ts.ReadFile(args[0]), args[1]+"\n"+ts.ReadFile(args[2]); got != want {
		ts.Fatalf("%s is not %q over %s", args[0], args[1], args[2])
	}
}

// content is what is in the files of a folder, by name.
func content(ts *testscript.TestScript, dir string) map[string]string {
	out := map[string]string{}
	root := ts.MkAbs(dir)
	ts.Check(filepath.WalkDir(root, func(path string, d fs.DirEntry, err error) error {
		if err != nil || d.IsDir() {
			return err
		}
		data, err := os.ReadFile(path)
		out[strings.TrimPrefix(path, root)] = string(data)
		return err
	}))
	return out
}

// pages holds every SVG page of a folder to a text: pages drawings 'NOT FOR HANGING'; with ! none may hold it.
func pages(ts *testscript.TestScript, neg bool, args []string) {
	if len(args) != 2 {
		ts.Fatalf("usage: [!] pages FOLDER TEXT")
	}
	count := 0
	for name, text := range content(ts, args[0]) {
		if filepath.Ext(name) != ".svg" {
			continue
		}
		count++
		if strings.Contains(text, args[1]) == neg {
			ts.Fatalf("%s: %q is there: %v", name, args[1], neg)
		}
	}
	if count == 0 {
		ts.Fatalf("no page in %s", args[0])
	}
}

// change adds a line to every page that is in the first folder and not in the second, as it stands in the third.
func change(ts *testscript.TestScript, neg bool, args []string) {
	if neg || len(args) != 3 {
		ts.Fatalf("usage: change ALL LESS FOLDER")
	}
	less := content(ts, args[1])
	count := 0
	for name, text := range content(ts, args[0]) {
		if _, ok := less[name]; !ok {
			ts.Check(os.WriteFile(filepath.Join(ts.MkAbs(args[2]), name), []byte(text+"<!-- seen -->\n"), 0o666))
			count++
		}
	}
	if count == 0 {
		ts.Fatalf("%s has nothing that %s lacks", args[0], args[1])
	}
}

// picture makes a PNG or JPEG file so many pixels wide and high, dark at its head and light at its foot: picture FILE WIDTH HEIGHT.
func picture(ts *testscript.TestScript, neg bool, args []string) {
	if neg || len(args) != 3 {
		ts.Fatalf("usage: picture FILE WIDTH HEIGHT")
	}
	w, err := strconv.Atoi(args[1])
	ts.Check(err)
	h, err := strconv.Atoi(args[2])
	ts.Check(err)
	m := image.NewNRGBA(image.Rect(0, 0, w, h))
	for y := range h {
		for x := range w {
			m.Set(x, y, color.NRGBA{R: uint8(80 + 150*y/h), G: uint8(60 + 100*x/w), B: 60, A: 255})
		}
	}
	var out bytes.Buffer
	if filepath.Ext(args[0]) == ".png" {
		ts.Check(png.Encode(&out, m))
	} else {
		ts.Check(jpeg.Encode(&out, m, nil))
	}
	ts.Check(os.MkdirAll(filepath.Dir(ts.MkAbs(args[0])), 0o777))
	ts.Check(os.WriteFile(ts.MkAbs(args[0]), out.Bytes(), 0o666))
}
