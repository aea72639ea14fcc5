package layout

import (
	"fmt"
	"os"
	"path/filepath"
	"strconv"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"flitchlay/internal/length"
)

// Eleven hard ordinary jobs. Each room says at its top, step by step, why its layout is what it is; the .want file beside it
// holds what follows from that. No command writes it: whoever changes a rule works the room again.
func TestJobs(t *testing.T) {
	files, err := filepath.Glob("testdata/jobs/*.toml")
	require.NoError(t, err)
	require.Len(t, files, 11)
	for _, file := range files {
		t.Run(strings.TrimSuffix(filepath.Base(file), ".toml"), func(t *testing.T) {
			text, err := os.ReadFile(file)
			require.NoError(t, err)
			want, err := os.ReadFile(strings.TrimSuffix(file, ".toml") + ".want")
			require.NoError(t, err)
			p := lay(t, string(text))
			assert.Equal(t, string(want), told(p))
			tiles(t, p, file)
		})
	}
}

// told writes what of a plan is worked by hand: seams, sheets with number, net width, rip and cut length, returns, findings.
// Lengths are inches, to the ten-thousandth.
func told(p *Plan) string {
	var b strings.Builder
	for i := range p.Runs {
		r := &p.Runs[i]
		for _, s := range r.Seams {
			fmt.Fprintf(&b, "seam %d: %s %s", s.Number, p.Room.Walls[s.Wall].Name, tenths(s.X))
			if s.Closing {
				b.WriteString(", closing")
			}
			if s.FlitchChange {
				b.WriteString(", flitch change")
			}
			b.WriteString("\n")
		}
		for _, s := range r.Sheets {
			fmt.Fprintf(&b, "sheet %d: %s %s wide", s.Place, strings.TrimSpace(s.Flitch+" "+strconv.Itoa(s.Number)), tenths(s.Width))
			if s.Ripped != "" {
				fmt.Fprintf(&b, ", ripped %s to %s", s.Ripped, tenths(s.RipTo))
			}
			fmt.Fprintf(&b, ", cut %s\n", tenths(s.CutLength))
		}
		for _, c := range r.Corners {
			fmt.Fprintf(&b, "corner %s: sheet %d returns %s and %s\n", c.Name, c.Sheet, tenths(c.LeftReturn), tenths(c.RightReturn))
		}
		for _, z := range r.Joints {
			fmt.Fprintf(&b, "joint: %s\n", tenths(z))
		}
	}
	for _, f := range p.Findings {
		fmt.Fprintf(&b, "%s %s: %s\n", f.Level, f.Code, f.Place)
	}
	return b.String()
}

// tenths prints inches to the ten-thousandth.
func tenths(l L) string {
	text := strconv.FormatFloat(float64(l)/float64(length.Inch), 'f', 4, 64)
	return strings.TrimSuffix(strings.TrimRight(text, "0"), ".")
}
