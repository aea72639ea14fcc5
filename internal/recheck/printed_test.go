package recheck

import (
	"bytes"
	"encoding/json"
	"math/big"
	"testing"

	"github.com/stretchr/testify/require"

	"flitchlay/internal/cli"
)

// num is a number as it is printed.
type num = json.Number

// printed is a layout as the command prints it.
type printed struct {
	Format, Unit, Aim, Title string
	Runs                     []printedRun
	Registers                []printedRegister
	Findings                 []printedFinding
	Totals                   struct {
		Sheets, Spares int
		NetArea        num `json:"net_area"`
		GrossArea      num `json:"gross_area"`
		Paste, Primer  *amount
	}
}

type printedRegister struct {
	Flitch          *string
	Course          int
	Turned          bool
	From            string `json:"from_raw"`
	Mark            *num
	Over            *num `json:"over_level"`
	Need            num
	Highest, Lowest *int
}

type amount struct {
	Amount float64
	Unit   string
}

type printedRun struct {
	Name, Axis string
	Length     num
	Closed     bool
	Walls      []struct {
		Name        string
		Left, Right num
	}
	Corners []struct {
		Name, Kind  string
		Angle       float64
		At, Lean    num
		LeftReturn  num `json:"left_return"`
		RightReturn num `json:"right_return"`
	}
	Openings []struct {
		Name, Wall, Kind        string
		Left, Right, Sill, Head num
	}
	Spans []struct {
		Left, Right num
		Score       printedScore
	}
	Seams  []printedSeam
	Sheets []printedSheet
}

type printedScore struct {
	Bends, Edges         num
	Closing              int64
	NarrowMain           int64 `json:"narrow_main"`
	Narrow, Sheets, Jump int64
	NarrowJump           int64 `json:"narrow_jump"`
	Sliver, Should       num
	Seen                 int64
	Difference           num
	Unevenness           num
}

type printedSeam struct {
	At             num
	PlumbLine      num `json:"plumb_line"`
	Wall           string
	FromWallLeft   num `json:"from_wall_left"`
	LeftSheet      int `json:"left_sheet"`
	RightSheet     int `json:"right_sheet"`
	Closing        bool
	Seen           num
	NearestOpening *printedNear                         `json:"nearest_opening"`
	NearestCorner  *printedNear                         `json:"nearest_corner"`
	MayBeOff       *struct{ Left, Right *printedLimit } `json:"may_be_off"`
}

type printedLimit struct {
	By    num
	Must  string
	At    *string
	Place *int
}

type printedNear struct {
	Name     string
	Distance num
}

type printedSheet struct {
	Place        int
	Flitch       *string
	Number       *int
	Course       int
	Turned       bool
	Left, Right  num
	Width        num
	Gross        num `json:"gross_width"`
	Narrow       bool
	Ripped       *string
	CutLength    num `json:"cut_length"`
	Above, Below num
	Bends        []num
	Area         num
	Pieces       []printedPiece
}

type printedPiece struct {
	Wall    string
	Outline [][2]num
	Holes   [][][2]num
	Area    num
}

type printedFinding struct {
	Code, Level, Place string
	Measured, Required *num
	Message            string
	Line               int    // of the room file, of what is asked
	Answer             string // what [room] answered takes
}

// lay has the command print the layout of a room; the second answer is the exit status; over 1 there is
// no layout.
func lay(t testing.TB, text string) (*printed, int) {
	var out, messages bytes.Buffer
	status := cli.Run([]string{"layout", "-"}, bytes.NewBufferString(text), &out, &messages)
	if status > 1 {
		return nil, status
	}
	d := json.NewDecoder(&out)
	d.UseNumber()
	d.DisallowUnknownFields()
	var p printed
	require.NoError(t, d.Decode(&p))
	return &p, status
}

// units reads a printed length: millimetres that are a whole number of 1/8 micrometres, without a figure too many.
func units(t testing.TB, n num) int64 {
	r, ok := new(big.Rat).SetString(n.String())
	require.True(t, ok, "a number: %q", n)
	r.Mul(r, big.NewRat(8000, 1))
	require.True(t, r.IsInt(), "%s mm is no whole number of 1/8 micrometres", n)
	return r.Num().Int64()
}
