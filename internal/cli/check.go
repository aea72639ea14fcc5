package cli

import (
	"bytes"
	"encoding/json"
	"fmt"
	"io"
	"strconv"
	"strings"

	"github.com/spf13/cobra"

	"flitchlay/internal/climate"
	"flitchlay/internal/finding"
	"flitchlay/internal/layout"
)

// check prints what there is to say about a layout.
func (c *call) check() *cobra.Command {
	var asJSON bool
	cmd := &cobra.Command{
		Use:                   "check ROOM... [--json]",
		DisableFlagsInUseLine: true,
		Short:                 "Print the findings, the seams round every opening and the corner returns",
		Long: `check prints one finding a line: level, code, place, message. A must finding is a rule that the layout
breaks, a should finding a preference that it misses, an ask what a careful colleague would ask of the room
file before it is laid out, a note something to know: among others the smallest change that would save a
course, a sheet or a broken rule. What is asked is answered in the file, by the key that is named or under
[room] by answered = ["CODE NAME"]; it changes no exit status. --json prints the findings alone. Then it prints where the seams stand round every
opening and what wraps past every corner; while sheets hang already, also what stands elsewhere because of
them. Where [[reading]] gives what a wall measures on arrival, it answers with one of three words: hang
(the lines stand as printed), re-strike (sheets and cut lengths stand, the lines named are struck from new
figures), plan again (a must breaks, or a sheet as cut no longer reaches).

Of a job file, of several rooms or of a folder it checks one room after the other, then what rooms are to each
other: no two may lay one sheet. What hangs and is not yet written down is printed as lines for the job file.

` + roomIs,
		Example: `  flitchlay check dining.toml`,
		RunE: func(_ *cobra.Command, args []string) error {
			if j, err := c.several(args); j != nil || err != nil {
				return c.checkJob(j, err, asJSON)
			}
			p, err := c.plan(args[0])
			if err != nil {
				return err
			}
			if err := c.pageSound(p.Room, folder(args[0])); err != nil {
				return err
			}
			ofSite(p)
			if asJSON {
				return c.findingsJSON(p)
			}
			var out bytes.Buffer
			checked(c.screen().onto(&out), p)
			c.out.Write(out.Bytes())
			return nil
		},
	}
	roomArguments(cmd)
	cmd.Flags().BoolVar(&asJSON, "json", false, "print the findings as JSON")
	return cmd
}

// ofSite adds to the findings of a layout what the site earns.
func ofSite(p *layout.Plan) {
	p.Findings = append(p.Findings, climate.Findings(p.Room)...)
	finding.Sort(p.Findings)
}

// checked prints all that check says of a room.
func checked(to screen, p *layout.Plan) {
	findings(to, p)
	openings(to, p)
	returns(to, p)
	moves(to, p)
	arrivals(to, p)
}

// printedFinding is a finding as JSON. Lengths are in millimetres.
type printedFinding struct {
	Code     string     `json:"code"`
	Level    string     `json:"level"`
	Place    string     `json:"place"`
	Line     int        `json:"line,omitempty"` // of the room file, of what is asked
	File     string     `json:"file,omitempty"` // in place of the room file: the job file that it shares
	Measured *layout.MM `json:"measured"`
	Required *layout.MM `json:"required"`
	Message  string     `json:"message"`
	Mend     string     `json:"mend,omitempty"`   // the key that answers what is asked
	Answer   string     `json:"answer,omitempty"` // what [room] answered takes
}

// findingsJSON prints the findings of a layout and of its site in the format flitchlay-check/1.
func (c *call) findingsJSON(p *layout.Plan) error {
	e := json.NewEncoder(c.out)
	e.SetEscapeHTML(false)
	e.SetIndent("", "  ")
	return e.Encode(struct {
		Format   string           `json:"format"`
		Findings []printedFinding `json:"findings"`
	}{"flitchlay-check/1", printed(p)})
}

// printed are the findings of a layout for JSON.
func printed(p *layout.Plan) []printedFinding {
	list := []printedFinding{}
	for _, f := range p.Findings {
		list = append(list, printedFinding{string(f.Code), f.Level.String(), f.Place, f.Line, f.File, (*layout.MM)(f.Measured), (*layout.MM)(f.Required), f.Message, f.Mend, f.Answer})
	}
	return list
}

// findings prints one finding a line; on a terminal on as many as it takes.
func findings(to screen, p *layout.Plan) {
	if len(p.Findings) == 0 {
		fmt.Fprintln(to, "no findings")
		return
	}
	var list []said
	var open []string
	for _, f := range p.Findings {
		place, message := f.Place, f.Message
		if f.Level == finding.Ask {
			if f.Line > 0 {
				place += ", line " + strconv.Itoa(f.Line)
				if f.File != "" {
					place += " of " + f.File
				}
			}
			message += " (answer: " + f.Mend + ")"
			open = append(open, strconv.Quote(f.Answer))
		}
		list = append(list, said{f.Level, string(f.Code), place, message})
	}
	to.said(list)
	if len(open) > 0 {
		to.prose("\nWhat is asked is answered in the room file: by the key that is named, or under [room] by\nanswered = [%s]\n", strings.Join(open, ", "))
	}
}

// openings prints the seams over and under every opening and the nearest one at each side, with the distance to both
// edges.
func openings(to io.Writer, p *layout.Plan) {
	t := table(to)
	head := false
	for i := range p.Runs {
		r := &p.Runs[i]
		edges := [2]string{"LEFT EDGE", "RIGHT EDGE"}
		if r.Up {
			edges = [2]string{"SILL", "HEAD"}
		}
		for k := range r.Openings {
			o := &r.Openings[k]
			for _, n := range around(r, o) {
				if !head {
					fmt.Fprintf(to, "\nSeams round openings\n")
					fmt.Fprintf(t, "OPENING\tWALL\tSEAM\tFROM %s\tFROM %s\n", edges[0], edges[1])
					head = true
				}
				fmt.Fprintf(t, "%s %s\t%s\t%s\t%s\t%s\n", o.Kind, o.Name, p.Room.Walls[o.Wall].Name, p.SeamNumbers(r, n.seam),
					p.Style.Words(n.left.Abs())+side(n.left < 0), p.Style.Words(n.right.Abs())+side(n.right > 0))
			}
		}
	}
	t.Flush()
}

// side says on which side of an edge a seam stands.
func side(outside bool) string {
	if outside {
		return " outside"
	}
	return " inside"
}

// neighbour is a seam near an opening, and how far right of each edge it stands.
type neighbour struct {
	seam        *layout.Seam
	left, right layout.L
}

// around finds the last seam before an opening, those in its width, and the first one after it.
func around(r *layout.Run, o *layout.Opening) []neighbour {
	var out []neighbour
	var before, after *neighbour
	for i := range r.Seams {
		for turn := -r.Length; turn <= r.Length; turn += r.Length {
			if turn != 0 && !r.Closed {
				continue
			}
			at := r.Seams[i].At + turn
			n := neighbour{&r.Seams[i], at - o.Left, at - o.Right}
			switch {
			case n.left < 0 && (before == nil || n.left > before.left):
				before = &n
			case n.right > 0 && (after == nil || n.right < after.right):
				after = &n
			case n.left >= 0 && n.right <= 0:
				out = append(out, n)
			}
		}
	}
	if before != nil {
		out = append([]neighbour{*before}, out...)
	}
	if after != nil {
		out = append(out, *after)
	}
	return out
}

// returns prints what wraps past every corner. Where it differs over the height both ends are given.
func returns(to io.Writer, p *layout.Plan) {
	t := table(to)
	head := false
	for i := range p.Runs {
		r := &p.Runs[i]
		for k := range r.Corners {
			c := &r.Corners[k]
			if !head {
				fmt.Fprintf(to, "\nCorner returns\n")
				fmt.Fprintf(t, "CORNER\tFROM\tTO\tBEND\tSHEET\tLEFT RETURN\tRIGHT RETURN\n")
				head = true
			}
			fmt.Fprintf(t, "%s\t%s\t%s\t%s %s\t%s\t%s\t%s\n", c.Name, p.Room.Walls[c.LeftWall].Name, p.Room.Walls[c.RightWall].Name,
				c.Kind, layout.Degrees(c.Angle), wrapping(r, c.Sheet), overHeight(p, c.LeftReturnBottom, c.LeftReturnTop),
				overHeight(p, c.RightReturnBottom, c.RightReturnTop))
		}
	}
	t.Flush()
}

// wrapping names the sheet of a place, a dash where none goes round.
func wrapping(r *layout.Run, place int) string {
	for k := range r.Sheets {
		if r.Sheets[k].Place == place {
			return layout.SheetWords(&r.Sheets[k])
		}
	}
	return "-"
}

// overHeight prints a return at the floor, and at the ceiling where it differs.
func overHeight(p *layout.Plan, floor, ceiling layout.L) string {
	if floor == ceiling {
		return p.Style.Words(floor)
	}
	return p.Style.Words(floor) + " at the floor, " + p.Style.Words(ceiling) + " at the ceiling"
}
