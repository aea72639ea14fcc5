package cli

import (
	"bytes"
	"fmt"
	"slices"
	"strings"

	"flitchlay/internal/diff"
	"flitchlay/internal/job"
	"flitchlay/internal/layout"
	"flitchlay/internal/length"
	"flitchlay/internal/svg"
)

// diffJobs tells what changed from one job to another. It reports whether both are jobs.
//
// Errors: of a job beside something else.
func (c *call) diffJobs(old, is string, mark bool) (bool, error) {
	a, err := c.jobOf(old)
	if err != nil {
		return true, err
	}
	b, err := c.jobOf(is)
	switch {
	case err != nil:
		return true, err
	case a == nil && b == nil:
		return false, nil
	case a == nil || b == nil:
		return true, fmt.Errorf("a job is compared with a job: %s and %s are not both job files", old, is)
	case mark:
		return true, fmt.Errorf("--mark marks one room: name its files, old and new")
	}
	d := &jobDiff{call: c, old: a, is: b, was: map[string]int{}}
	for i, r := range a.Rooms {
		d.was[r.Name()] = i
	}
	book := job.NewBook(b)
	err = c.through(b, nil, func(l *job.Laid) error {
		must := judged(l.Plan)
		c.must = c.must || must
		book.Add(l)
		return d.room(l)
	})
	if err != nil {
		return true, err
	}
	for _, r := range a.Rooms {
		if !slices.ContainsFunc(b.Rooms, func(x *job.Room) bool { return x.Name() == r.Name() }) {
			d.void = append(d.void, r.Name()+": all pages, the room is no longer in the job")
		}
	}
	d.end()
	c.jobMust(book)
	return true, nil
}

// jobDiff is two jobs while they are compared.
type jobDiff struct {
	*call
	old, is *job.Job
	was     map[string]int // rooms of the old job by their names
	same    []string
	void    []string
}

// room tells what changed in one room.
func (d *jobDiff) room(l *job.Laid) error {
	i, ok := d.was[l.Room.Name()]
	if !ok {
		fmt.Fprintf(d.out, "%s\n\nnew in the job: %s\n\n", headed(l), orNone(job.RowWords(job.LaidRows(l.Plan))))
		return nil
	}
	before := d.old.Lay(i, nil)
	if before.Err != nil {
		return &roomError{before.Err}
	}
	judged(before.Plan)
	if bytes.Equal(before.Text, l.Text) {
		d.same = append(d.same, l.Room.Name())
		return nil
	}
	changes := diff.Compare(diff.ViewOf(before.Plan), diff.ViewOf(l.Plan), length.StyleOf(l.Plan.Room.Project.Units))
	void, err := d.pages(i, l, before.Plan)
	if err != nil {
		return err
	}
	if changes.Same() && len(void) == 0 {
		d.same = append(d.same, l.Room.Name())
		return nil
	}
	var out bytes.Buffer
	fmt.Fprintf(&out, "%s\n\n", headed(l))
	if a, b := job.RowWords(job.LaidRows(before.Plan)), job.RowWords(job.LaidRows(l.Plan)); a != b {
		fmt.Fprintf(&out, "sheets laid: were %s; are %s\n\n", orNone(a), orNone(b))
	}
	if err := changes.Write(&out); err != nil {
		return err
	}
	d.out.Write(append(out.Bytes(), '\n'))
	for _, set := range void {
		d.void = append(d.void, l.Room.Name()+": "+set)
	}
	return nil
}

func orNone(s string) string {
	if s == "" {
		return "none"
	}
	return s
}

// pages draws the sets of a room as it was and as it is, and says which pages of the old ones are no longer as drawn.
func (d *jobDiff) pages(was int, l *job.Laid, before *layout.Plan) (void []string, err error) {
	for _, s := range drawnSets {
		old, err := d.drawn(s, before, d.folderOf(d.old, d.old.Rooms[was]))
		if err != nil {
			return nil, err
		}
		is, err := d.drawn(s, l.Plan, d.folderOf(d.is, l.Room))
		if err != nil {
			return nil, err
		}
		var names []string
		for _, p := range old {
			if i := slices.IndexFunc(is, func(q file) bool { return q.name == p.name }); i < 0 || !bytes.Equal(is[i].data, p.data) {
				names = append(names, p.name)
			}
		}
		switch {
		case len(names) == 0:
		case len(names) == len(old):
			void = append(void, s.word+": all pages")
		default:
			void = append(void, s.word+": "+strings.Join(ranges(names), ", "))
		}
	}
	return void, nil
}

// drawn is a set of a room, each page by its number.
func (d *jobDiff) drawn(s drawnSet, p *layout.Plan, from string) ([]file, error) {
	with, err := d.pictures(p, []drawnSet{s}, from)
	if err != nil {
		return nil, err
	}
	t, err := s.template(d.call, p.Room, from)
	if err != nil {
		return nil, err
	}
	doc, err := s.pages(p, t, with)
	if err != nil {
		return nil, err
	}
	var list []file
	for _, page := range doc.Pages {
		data, err := svg.Page(page, svg.Options{Set: doc.Title})
		if err != nil {
			return nil, err
		}
		list = append(list, file{name: page.Name, data: data})
	}
	return list, nil
}

// end tells what stayed and which pages are void.
func (d *jobDiff) end() {
	if len(d.same) > 0 {
		fmt.Fprintf(d.out, "unchanged: %s\n", strings.Join(d.same, ", "))
	}
	if len(d.void) == 0 {
		return
	}
	fmt.Fprintf(d.out, "\nVoid pages of the sets drawn from %s\n", d.old.Text().Name)
	for _, v := range d.void {
		fmt.Fprintln(d.out, v)
	}
}
