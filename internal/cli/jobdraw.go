package cli

import (
	"errors"
	"fmt"
	"path/filepath"
	"slices"
	"strings"

	"flitchlay/internal/job"
)

// jobDrawing is what the command line says of drawing a job.
type jobDrawing struct {
	part string
	svg  bool
}

// parted reads --part: which part of how many.
func (d *jobDrawing) parted() (part, of int, err error) {
	if d.part == "" {
		return 1, 1, nil
	}
	if n, err := fmt.Sscanf(d.part+" ", "%d/%d ", &part, &of); n != 2 || err != nil || part < 1 || of < part {
		return 0, 0, fmt.Errorf("--part %q is no part: write 3/16 for the third of sixteen", d.part)
	}
	return part, of, nil
}

// drawnRoom is what was made of a room beside the others.
type drawnRoom struct {
	must   bool
	said   []string
	whole  []byte // the architect's set, to be joined with those of other rooms
	names  []string
	titles []string
	mark   string
	err    error
}

// drawJob draws a job into a folder, room by room, and says in the end what became of it.
func (c *call) drawJob(to string, j *job.Job, sets []drawnSet, how *jobDrawing) error {
	part, of, err := how.parted()
	if err != nil {
		return err
	}
	d := &jobDraw{call: c, job: j, to: to, sets: sets, svg: how.svg, marks: marksOf(j)}
	if !j.Plain() && slices.ContainsFunc(sets, func(s drawnSet) bool { return s.word == "submittal" }) {
		if d.whole, err = c.newWhole(j, to, part, of); err != nil {
			return err
		}
		defer d.whole.drop()
	}
	book := job.NewBook(j)
	bar := c.progress(len(j.Part(part, of)))
	err = c.throughPart(j, part, of, func(l *job.Laid) {
		l.Made = d.room(l)
	}, func(l *job.Laid) error {
		book.Add(l)
		d.done(l, bar)
		return nil
	})
	bar.done()
	c.jobMust(book)
	if d.whole != nil && d.drawn > 0 && (err == nil || errors.Is(err, errBadRooms)) {
		if e := d.whole.close(); e != nil && d.lost == nil {
			d.lost = e
		}
	}
	if part == 1 && of == 1 && !j.Plain() {
		d.clearRooms()
	}
	d.summary(len(j.Part(part, of)))
	if d.lost != nil {
		return &toldError{d.lost}
	}
	return err
}

// done says what became of a room, in the order of the rooms.
func (d *jobDraw) done(l *job.Laid, b bar) {
	defer b.step()
	made := l.Made.(*drawnRoom)
	d.must = d.must || made.must
	if made.err == nil && d.whole != nil {
		made.err = d.whole.add(l, made)
	}
	if len(made.said) > 0 || made.err != nil {
		b.pause()
	}
	for _, line := range made.said {
		d.say("%s", line)
	}
	if made.err != nil {
		d.say("%s: %v", l.Room.Name(), made.err)
		if d.lost == nil || errors.As(made.err, new(*lostError)) {
			d.lost = made.err
		}
		return
	}
	d.drawn++
	if made.must {
		d.unfit = append(d.unfit, l.Room.Name())
	}
}

// jobDraw is a job while it is drawn.
type jobDraw struct {
	*call
	job   *job.Job
	to    string
	sets  []drawnSet
	svg   bool
	marks []string // of rooms, before the numbers of their pages
	whole *wholeSet
	drawn int
	lost  error // the worst that kept a room from being drawn
	unfit []string
}

// marksOf are what the numbers of pages say of each room: its number where it is short and no other has it, else its place.
func marksOf(j *job.Job) []string {
	marks := make([]string, len(j.Rooms))
	seen := map[string]int{}
	for _, r := range j.Rooms {
		seen[j.RoomNumber(r)]++
	}
	for i, r := range j.Rooms {
		marks[i] = j.RoomNumber(r)
		if marks[i] == "" || len(marks[i]) > 8 || seen[marks[i]] > 1 || strings.ContainsFunc(marks[i], func(c rune) bool {
			return !strings.ContainsRune("ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz0123456789-._", c)
		}) {
			marks[i] = fmt.Sprintf("R%02d", i+1)
		}
	}
	return marks
}

// room draws one room, beside others.
func (d *jobDraw) room(l *job.Laid) *drawnRoom {
	out := &drawnRoom{must: judged(l.Plan), mark: d.marks[l.Index]}
	from := d.folderOf(d.job, l.Room)
	to := filepath.Join(d.to, l.Room.Folder)
	if d.job.Plain() && d.to == "" {
		to = beside(l.Room.File)
	}
	with, err := d.pictures(l.Plan, d.sets, from)
	if err != nil {
		out.err = err
		return out
	}
	var files []file
	drawing := map[string]bool{}
	for _, set := range d.sets {
		list, err := d.set(set, l, with, from, out)
		if err != nil {
			out.err = err
			return out
		}
		files = append(files, list...)
		drawing[set.word] = true
	}
	out.said, out.err = d.renewed(to, files, drawing)
	return out
}

// set draws one set of a room: its files, and its pages. What is joined with other rooms is kept in the room.
func (d *jobDraw) set(s drawnSet, l *job.Laid, with pictures, from string, out *drawnRoom) (files []file, err error) {
	t, err := s.template(d.call, l.Plan.Room, from)
	if err != nil {
		return nil, err
	}
	joins, name := d.whole != nil && s.word == "submittal", carriedName
	if joins {
		t, name = t.OfRoom(out.mark), l.Room.Folder+".toml"
	}
	doc, err := s.pages(l.Plan, t, with)
	if err != nil {
		return nil, &lostError{s.word + ".pdf", err}
	}
	carried := attached(l.Text)
	carried.Name = name
	doc.Attachments = append(doc.Attachments, carried)
	for _, b := range backends {
		if b.set == nil && !d.svg {
			continue
		}
		list, err := b.files(doc, s.word, func(i int) string { return doc.Pages[i].Name })
		if err != nil {
			return nil, &lostError{s.word + b.end, err}
		}
		for _, f := range list {
			if f.set, f.page = s.word, b.set == nil; joins && !f.page {
				out.whole = f.data
				continue
			}
			files = append(files, f)
		}
	}
	for _, p := range doc.Pages {
		if joins {
			out.names, out.titles = append(out.names, p.Name), append(out.titles, p.Title)
		}
	}
	return files, nil
}

// summary says what became of all rooms.
func (d *jobDraw) summary(all int) {
	where := d.to
	if where == "" {
		where = "folders beside the rooms"
	}
	d.say("drew %d of %d rooms into %s", d.drawn, all, where)
	if len(d.unfit) > 0 {
		d.say("a rule that must be met is broken, and every page says NOT FOR HANGING, in %s; see flitchlay check", strings.Join(d.unfit, ", "))
	}
}

// toldError is an error that was told where it came up.
type toldError struct{ error }

func (e *toldError) Unwrap() error { return e.error }
