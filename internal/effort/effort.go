// Package effort is for tests only: how much they try, as the environment asks, and what other programs a machine has.
//
// FLITCHLAY_CHECK=1 asks for all of it. Without it tests try few cases, so that a person can wait for them, and a program
// that is not installed is left out. What is long is thinned in two ways: random cases are fewer, and of cases that go over
// every paper or every other list each takes one by turns, so that all of the list still comes up. FLITCHLAY_CHECK=long is for
// a night: those comparisons whole, too, of which FLITCHLAY_CHECK=1 takes the first part.
//
// Coordinates and units: none.
//
// Order: turns go round the list in its own order.
//
// Not here: anything that the program needs, and what a room is.
package effort

import (
	"os"
	"os/exec"
	"strconv"
	"testing"
)

// Full reports whether all is to be tried.
func Full() bool { return os.Getenv("FLITCHLAY_CHECK") == "1" || Long() }

// Long reports whether also the comparisons that take many minutes are to be whole.
func Long() bool { return os.Getenv("FLITCHLAY_CHECK") == "long" }

// Waited is how much of the slowest comparisons FLITCHLAY_CHECK=1 tries, and all of it where they are to be whole.
func Waited(some, all int) int {
	if Long() {
		return all
	}
	return some
}

// Of is how many cases to try: few, or all of them where all is to be tried.
func Of(few, all int) int {
	if Full() {
		return all
	}
	return few
}

// Turns is what a case tries of a list: one of it, the next for the next turn, or the whole list where all is to be tried.
func Turns[T any](turn int, list []T) []T {
	if Full() || len(list) == 0 {
		return list
	}
	i := turn % len(list)
	return list[i : i+1]
}

// Seeds are the first seed and how many to go through: few or all, and what FLITCHLAY_SEED and the variable counted say
// where they are set.
//
// Errors: a variable that is no number ends the test.
func Seeds(t testing.TB, counted string, few, all int) (first, count int) {
	t.Helper()
	first, count = 1, Of(few, all)
	for name, set := range map[string]*int{"FLITCHLAY_SEED": &first, counted: &count} {
		text := os.Getenv(name)
		if text == "" {
			continue
		}
		n, err := strconv.Atoi(text)
		if err != nil {
			t.Fatalf("%s: %v", name, err)
		}
		*set = n
	}
	return first, count
}

// Drawn is how many random rooms FLITCHLAY_DRAWN asks to be drawn, 0 where it does not say.
func Drawn() int {
	n, err := strconv.Atoi(os.Getenv("FLITCHLAY_DRAWN"))
	if err != nil || n < 0 {
		return 0
	}
	return n
}

// Updating reports whether expected files are to be written anew: FLITCHLAY_UPDATE=1.
func Updating() bool { return os.Getenv("FLITCHLAY_UPDATE") == "1" }

// Tool is the path of another program. Where it is not installed the test is skipped, or fails where all is to be tried.
func Tool(t testing.TB, name string) string {
	t.Helper()
	path, err := exec.LookPath(name)
	if err != nil {
		if Full() {
			t.Fatalf("%s is not installed", name)
		}
		t.Skipf("%s is not installed", name)
	}
	return path
}
