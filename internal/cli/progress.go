package cli

import (
	"io"
	"os"

	"github.com/schollz/progressbar/v3"
	"golang.org/x/term"
)

// bar shows how far a job is, and how long it still takes: on a terminal, and nothing anywhere else.
type bar struct{ shown *progressbar.ProgressBar }

// progress begins a bar for so many rooms.
func (c *call) progress(rooms int) bar {
	if rooms < 2 || !terminal(c.messages.to) {
		return bar{}
	}
	return bar{progressBar(c.messages.to, rooms)}
}

// terminal reports whether what is written is seen by a person as it comes.
func terminal(w io.Writer) bool {
	f, ok := w.(*os.File)
	return ok && term.IsTerminal(int(f.Fd()))
}

func progressBar(to io.Writer, rooms int) *progressbar.ProgressBar {
	return progressbar.NewOptions(rooms, progressbar.OptionSetWriter(to), progressbar.OptionSetDescription("drawing rooms"), progressbar.OptionSetWidth(40),
		progressbar.OptionShowCount(), progressbar.OptionSetPredictTime(true), progressbar.OptionSetRenderBlankState(true), progressbar.OptionClearOnFinish())
}

// step counts one room. What the bar cannot write nobody misses.
func (b bar) step() {
	if b.shown != nil {
		_ = b.shown.Add(1)
	}
}

// pause takes the bar off, so that a message stands alone on its line; the next step shows it again.
func (b bar) pause() {
	if b.shown != nil {
		_ = b.shown.Clear()
	}
}

// done takes the bar off.
func (b bar) done() {
	if b.shown != nil {
		_ = b.shown.Finish()
	}
}
