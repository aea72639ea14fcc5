package crew

import "flitchlay/internal/face"

// at is where something stands on the wall: along the level line from the wall's datum; where the grain is level, how far over
// or under the level line, with an arrow up or down from it.
func (d *wallBoard) at(x L) string {
	if !d.w.Run.Up {
		return d.Along(d.w.Face, x)
	}
	if x < d.Level {
		return d.Say(d.Level-x) + " ↓"
	}
	return d.Say(x-d.Level) + " ↑"
}

// checked is the figure of a line that is only to check by: where it is not plumb, that at the level line.
func (d *wallBoard) checked(h *face.Hang) string {
	if s, ok := d.w.Slanted(h); ok {
		return d.Say(s.Level)
	}
	return d.at(h.Line)
}

// tapeTitle says from where the figures of the list run.
func (d *wallBoard) tapeTitle() string {
	switch {
	case d.w.Run.Up:
		return d.Words.Say("tape.up_down")
	case d.unrolled():
		return d.Words.Say("tape.unrolled")
	case d.w.AtLevel():
		return d.Words.Say("tape.level")
	}
	return d.Words.Say("tape.floor")
}

// slantWords say how the sheets stand that come askew round the left corner: nothing is gained by pulling them plumb.
func (d *wallBoard) slantWords() []string {
	var lines []string
	for _, h := range d.p.Hangs {
		if s, ok := d.w.Slanted(h); ok && d.p.Here(h) && !h.Hung() {
			lines = append(lines, d.Words.Say("tape.slants", d.SheetNumbers(h), d.Inches(s.Foot), d.Inches(s.Level), d.Inches(s.Head)))
		}
	}
	return lines
}

// witness is the line that is struck from floor to ceiling for a start that cannot be, on the page that has both; nil where there
// is none.
func (d *wallBoard) witness(h *face.Hang) *face.Witness {
	w := d.w.Witness(h)
	if w == nil || h.Hung() || w.X < d.p.From || w.X > d.p.To || !d.p.StartsHere(h) {
		return nil
	}
	return w
}

// witnessWords say how a start is found from its witness line.
func (d *wallBoard) witnessWords() []string {
	var lines []string
	for _, h := range d.p.Hangs {
		if w := d.witness(h); w != nil {
			side := "witness right"
			if w.By < 0 {
				side = "witness left"
			}
			lines = append(lines, d.Words.Of("tape", side, d.SheetNumbers(h), w.Over.Name, d.Say(w.By.Abs())))
		}
	}
	return lines
}
