package cli

import (
	"bytes"
	"encoding/json"
	"errors"
	"fmt"
	"slices"
	"strings"

	"flitchlay/internal/job"
	"flitchlay/internal/layout"
	"flitchlay/internal/source"
)

// through goes through the rooms of a job: with is done beside other rooms, then in their order. A room that cannot be laid out is
// told, each thing once, and does not stop the rest.
//
// Errors: errBadRooms where there was such a room; else that of then.
func (c *call) through(j *job.Job, with func(*job.Laid), then func(*job.Laid) error) error {
	return c.throughPart(j, 1, 1, with, then)
}

// throughPart is through of every so manieth room.
func (c *call) throughPart(j *job.Job, part, of int, with func(*job.Laid), then func(*job.Laid) error) error {
	var wrong job.Problems
	err := j.EachOf(j.Part(part, of), workers(), func(l *job.Laid) {
		if l.Err == nil && with != nil {
			with(l)
		}
	}, func(l *job.Laid) error {
		if l.Err == nil {
			return then(l)
		}
		for _, text := range wrong.Add(l.Err) {
			if _, placed := errors.AsType[*source.Mistakes](l.Err); !placed {
				text = "flitchlay: " + text
			}
			fmt.Fprintln(c.messages, text)
		}
		return nil
	})
	if err == nil && wrong.Err() != nil {
		err = errBadRooms
	}
	return err
}

// errBadRooms is what is left to say once each mistake was told.
var errBadRooms = errors.New("not all rooms can be laid out")

// checkJob checks the rooms of a job, then the job.
func (c *call) checkJob(j *job.Job, err error, asJSON bool) error {
	if err != nil {
		return err
	}
	b := job.NewBook(j)
	var list []printedRoom
	sound := map[string]bool{}
	err = c.through(j, nil, func(l *job.Laid) error {
		must := judged(l.Plan)
		c.must = c.must || must
		if err := c.soundOnce(j, l, sound); err != nil {
			return err
		}
		ofSite(l.Plan)
		b.Add(l)
		if asJSON {
			list = append(list, printedRoom{l.Room.File, l.Room.As, titled(l.Plan), printed(l.Plan)})
			return nil
		}
		var out bytes.Buffer
		if l.Index > 0 {
			fmt.Fprintln(&out)
		}
		fmt.Fprintf(&out, "%s\n\n", headed(l))
		checked(c.screen().onto(&out), l.Plan)
		c.out.Write(out.Bytes())
		return nil
	})
	if err == nil {
		b.End()
	}
	for _, f := range b.Findings {
		c.must = c.must || f.Breaks()
	}
	if asJSON && err == nil {
		return c.checkedJSON(list, b)
	}
	jobFindings(c.screen(), b)
	if j.Choice != nil {
		fmt.Fprintf(c.out, "\nFlitches assigned, %s. To paste in place of the [[room]]s, with assign = \"given\":\n\n%s", j.ChoiceWords(), j.Lines())
	}
	return err
}

// soundOnce is pageSound, once for rooms that name the same.
func (c *call) soundOnce(j *job.Job, l *job.Laid, sound map[string]bool) error {
	from := c.folderOf(j, l.Room)
	key := fmt.Sprint(l.Plan.Room.Page, l.Plan.Room.Project.Units, from)
	if sound[key] {
		return nil
	}
	sound[key] = true
	return c.pageSound(l.Plan.Room, from)
}

// headed names a room of a job over what is said of it.
func headed(l *job.Laid) string { return l.Room.Name() + ": " + titled(l.Plan) }

// titled is the title of a room, with its number where the title does not have it.
func titled(p *layout.Plan) string {
	title := p.Room.Project.Title
	if n := p.Room.Project.Room; n != "" && !slices.Contains(strings.Fields(title), n) {
		title += ", room " + n
	}
	return title
}

// printedRoom is a room of a job with its findings.
type printedRoom struct {
	File     string           `json:"file"`
	As       string           `json:"as,omitempty"`
	Title    string           `json:"title"`
	Findings []printedFinding `json:"findings"`
}

// printedJob is a finding of the job, and a line to paste.
type printedJob struct {
	Code    string `json:"code"`
	Level   string `json:"level"`
	Place   string `json:"place"`
	Message string `json:"message"`
	Mend    string `json:"mend"`
}

// checkedJSON prints the findings of rooms and of their job in the format flitchlay-check-job/1.
func (c *call) checkedJSON(rooms []printedRoom, b *job.Book) error {
	list := []printedJob{}
	for _, f := range b.Findings {
		list = append(list, printedJob{f.Code, f.Level.String(), f.Place, f.Message, f.Mend})
	}
	e := json.NewEncoder(c.out)
	e.SetEscapeHTML(false)
	e.SetIndent("", "  ")
	return e.Encode(struct {
		Format string        `json:"format"`
		Rooms  []printedRoom `json:"rooms"`
		Job    []printedJob  `json:"job"`
	}{"flitchlay-check-job/1", rooms, list})
}

// jobFindings prints what there is to say of a job, and the lines to paste.
func jobFindings(to screen, b *job.Book) {
	if len(b.Findings) == 0 {
		return
	}
	fmt.Fprintf(to, "\nThe job\n")
	var list []said
	for _, f := range b.Findings {
		list = append(list, said{f.Level, f.Code, f.Place, fmt.Sprintf("%s (mend: %s)", f.Message, f.Mend)})
	}
	to.said(list)
	for i, u := range b.Unsaid {
		if i == 0 {
			fmt.Fprintf(to, "\nWhat hangs, to paste into the [[room]] of each, one text for each room that hangs:\n")
		}
		fmt.Fprintf(to, "laid = %q  # %s\n", u.Laid, u.Room.Name())
	}
}
