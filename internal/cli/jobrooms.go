package cli

import (
	"bytes"
	"encoding/json"
	"fmt"
	"io"
	"path/filepath"

	"flitchlay/internal/job"
	"flitchlay/internal/layout"
)

// folderOf is where the paths inside a room's file start from.
func (c *call) folderOf(j *job.Job, r *job.Room) string {
	if j.Plain() || filepath.IsAbs(r.File) {
		return folder(r.File)
	}
	return filepath.Join(folder(j.Text().Name), filepath.Dir(r.File))
}

// layoutJob prints the layouts of all rooms in the format flitchlay-job/1, or nothing.
func (c *call) layoutJob(j *job.Job, err error) error {
	if err != nil {
		return err
	}
	b := job.NewBook(j)
	return c.spool(func(w io.Writer) error {
		head, _ := json.Marshal(j.Title)
		fmt.Fprintf(w, "{\n\"format\": \"flitchlay-job/1\",\n\"title\": %s,\n\"rooms\": [", head)
		first := true
		err := c.through(j, nil, func(l *job.Laid) error {
			must := judged(l.Plan)
			c.must = c.must || must
			b.Add(l)
			name, _ := json.Marshal(struct {
				File string `json:"file"`
				As   string `json:"as,omitempty"`
			}{l.Room.File, l.Room.As})
			if !first {
				fmt.Fprint(w, ",")
			}
			first = false
			_, err := fmt.Fprintf(w, "\n%s,\n\"layout\": %s}", bytes.TrimSuffix(name, []byte("}")), bytes.TrimSpace(l.Plan.JSON()))
			return err
		})
		if err != nil {
			return err
		}
		c.jobMust(b)
		_, err = fmt.Fprint(w, "\n]\n}\n")
		return err
	})
}

// jobMust says on the side what a job breaks that has no place in what is printed.
func (c *call) jobMust(b *job.Book) {
	for _, f := range b.Findings {
		if f.Breaks() {
			c.say("%s: %s", f.Place, f.Message)
			c.must = true
		}
	}
}

// compareJob compares the aims of one room after the other.
func (c *call) compareJob(j *job.Job, err error) error {
	if err != nil {
		return err
	}
	return c.through(j, nil, func(l *job.Laid) error {
		must := judged(l.Plan)
		c.must = c.must || must
		both, err := layout.Compare(l.Plan.Room)
		if err != nil {
			return err
		}
		var out bytes.Buffer
		if l.Index > 0 {
			fmt.Fprintln(&out)
		}
		fmt.Fprintf(&out, "%s\n\n", headed(l))
		comparison(c.screen().onto(&out), both)
		c.out.Write(out.Bytes())
		return nil
	})
}
