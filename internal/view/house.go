package view

import (
	"crypto/sha256"
	"encoding/hex"

	"flitchlay/internal/layout"
	"flitchlay/internal/room"
	"flitchlay/internal/scene"
)

// Room is a room as its file has it.
type Room struct {
	Name string // as it is chosen by
	File string // its path
	Text []byte // of the file
	Plan *layout.Plan
	Err  error // in place of the plan
	// Again reads the room as its file would have it; where a job gives it its sheets with more also what others would have after it.
	Again func(text []byte, more bool) (*room.Room, error)
	// Judge adds what is said of a plan beside its layout.
	Judge func(*layout.Plan)
}

// House is all rooms that are seen, and the files that were read for them.
type House struct {
	Title string
	Rooms []*Room
	Err   error    // in place of the rooms
	Files []string // what to follow
	Sum   string   // of all that was read
	Whole bool     // with what takes longer to find
}

// Source reads the rooms and draws their sets.
type Source struct {
	Read func(whole bool) *House // whole: with what takes longer to find
	Sets []string
	Draw func(r *Room, p *layout.Plan, set string) (*Drawn, error)
	// Write puts a text in the place of a file, whole or not at all, if the file still holds what it held.
	Write func(path string, was, text []byte) error
}

// Drawn is a set of pages as it prints.
type Drawn struct {
	Document *scene.Document
	PDF      []byte
}

// sum is a short name for a text.
func sum(text []byte) string {
	s := sha256.Sum256(text)
	return hex.EncodeToString(s[:8])
}
