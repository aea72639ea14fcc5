package folio

import (
	"flitchlay/internal/room"
	"flitchlay/internal/run"
)

// EndWords names what a raw end meets, inside a sentence: an end of the room file, a corner, an opening, a bare strip.
func (s *Set) EndWords(e run.End) string { return s.end("end", e) }

// EndLabel is EndWords as it stands alone beside a drawing.
func (s *Set) EndLabel(e run.End) string { return s.end("end_label", e) }

// end names an end by the words of a section.
func (s *Set) end(section string, e run.End) string {
	kind := room.Kind(e.Kind)
	switch {
	case e.Kind == "":
		return s.Words.Of(section, "run")
	case e.Kind == "bare" && e.Name != "":
		return s.Words.Of(section, "bare why", e.Name)
	case e.Kind == "free" || e.Name == "":
		return s.Words.Of(section, e.Kind)
	case s.Words.Has("kind." + e.Kind):
		return s.KindWord(kind) + " " + e.Name
	}
	return s.Words.Of("end_named", e.Kind, e.Name)
}

// KindWord is the word for a kind of opening or box.
func (s *Set) KindWord(kind room.Kind) string { return s.Words.Of("kind", string(kind)) }

// CornerWord is the name of a corner with which way it bends.
func (s *Set) CornerWord(kind room.Bend, name string) string {
	if kind == room.Outside {
		return s.Words.Say("corner.out", name)
	}
	return s.Words.Say("corner.in", name)
}
