package crewday

// The words of receiving.

const (
	receiveTitle   = "Receiving"
	receiveAbout   = "every sheet measured before any is cut"
	receiveHead    = "WIDTH OF EACH SHEET"
	receiveSide    = "WHAT IS TAKEN"
	receiveDamaged = "damaged"
	receiveNarrow  = "too narrow"
)

// receiveHeads are the heads over each column of numbers.
func receiveHeads() []string { return []string{"NO.", "WIDTH", "DAMAGE"} }

// receiveFlitch heads the sheets of a flitch.
func receiveFlitch(number string) string { return receiveHead + ", flitch " + number }

// receiveFigures are the figures that widths are held to, each with what it is.
func receiveFigures(gross, overlap, limit string) [][2]string {
	return [][2]string{{"gross width", gross}, {"overlap", overlap}, {"refuse under", limit}}
}

// receiveTexts say how sheets are measured, and what becomes of them.
func receiveTexts(gross, limit string) []string {
	return []string{
		"Measure across the middle, factory edge to factory edge; write it beside the number on the back.",
		"Under " + limit + ": refused. The overlap left would be too little; it counts as damaged.",
		"From " + limit + " to under " + gross + ": it hangs by a line of its own. Type number and width under widths of its [[flitch]], and draw this set again before the first cut.",
		"Torn, stained, creased: say so under DAMAGE, and type the number under damaged.",
	}
}
