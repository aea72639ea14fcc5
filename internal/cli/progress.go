package cli

// bar shows how far a job is.
type bar struct{}

// progress begins a bar for so many rooms.
func (c *call) progress(int) bar { return bar{} }

func (bar) step() {}
func (bar) done() {}
