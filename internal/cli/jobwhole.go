package cli

import (
	"fmt"
	"os"
	"path/filepath"

	"flitchlay/internal/job"
	"flitchlay/internal/layout"
	"flitchlay/internal/paper"
	"flitchlay/internal/pdf"
	"flitchlay/internal/room"
	"flitchlay/internal/scene"
	"flitchlay/internal/submittal"
)

// wholeSet is the architect's set of a job while it is written: into a file beside its place, so that it is never half there.
type wholeSet struct {
	call   *call
	job    *job.Job
	folder string
	beside string
	file   *os.File
	join   *pdf.Joiner
	cover  coverOf
	pages  int
	any    bool
}

// newWhole begins it, where nothing that is not ours stands in its place.
func (c *call) newWhole(j *job.Job, to string, part, of int) (*wholeSet, error) {
	if of > 1 {
		to = filepath.Join(to, fmt.Sprintf("part-%02d-of-%d", part, of))
	}
	earlier, err := readRecord(to)
	if err != nil {
		return nil, &lostError{to, err}
	}
	if err := c.mayWrite(to, earlier, []file{{name: "submittal.pdf"}}); err != nil {
		return nil, err
	}
	if err := os.MkdirAll(to, 0o777); err != nil {
		return nil, &lostError{to, err}
	}
	w := &wholeSet{call: c, job: j, folder: to, beside: filepath.Join(to, fmt.Sprintf(".submittal.pdf.%d", os.Getpid()))}
	if w.file, err = os.Create(w.beside); err != nil {
		return nil, &lostError{w.beside, err}
	}
	w.join = pdf.NewJoiner(w.file)
	return w, nil
}

// add adds a room.
func (w *wholeSet) add(l *job.Laid, made *drawnRoom) error {
	w.any = true
	w.pages += len(made.names)
	w.cover.add(l, made)
	title := made.mark + "  " + titled(l.Plan)
	if err := w.join.Add(made.whole, made.names, title, false); err != nil {
		return &lostError{filepath.Join(w.folder, "submittal.pdf"), err}
	}
	made.whole = nil
	return nil
}

// close writes the cover and brings the file to its place.
func (w *wholeSet) close() error {
	path := filepath.Join(w.folder, "submittal.pdf")
	if !w.any {
		return nil
	}
	doc, err := w.call.jobCover(w.job, &w.cover)
	if err != nil {
		return err
	}
	data, err := pdf.Write(doc)
	if err != nil {
		return &lostError{path, err}
	}
	var names []string
	for _, p := range doc.Pages {
		names = append(names, p.Name)
	}
	if err := w.join.Add(data, names, "Cover", true); err != nil {
		return &lostError{path, err}
	}
	carried := scene.Attachment{Name: "job.toml", About: "the job file that this set was drawn from", Type: "application/toml", Data: []byte(w.job.Text().Body())}
	if err := w.join.Close(&scene.Document{Title: doc.Title, Author: doc.Author, Subject: doc.Subject, Date: doc.Date, Attachments: []scene.Attachment{carried}}); err != nil {
		return &lostError{path, err}
	}
	if err := w.file.Close(); err != nil {
		return &lostError{path, err}
	}
	text, err := os.ReadFile(w.beside)
	if err != nil {
		return &lostError{path, err}
	}
	said, err := w.call.replace(w.folder, []file{{name: "submittal.pdf", set: "submittal", data: text}}, map[string]bool{"submittal": true})
	if err != nil {
		return err
	}
	for _, line := range said {
		w.call.say("%s", line)
	}
	w.call.say("wrote %s (%d pages)", path, w.pages+len(names))
	return nil
}

// drop takes away what stands beside the place.
func (w *wholeSet) drop() {
	w.file.Close()
	os.Remove(w.beside)
}

// coverOf is what the cover says, while rooms come, and the first room's paper.
type coverOf struct {
	submittal.JobCover
	first *room.Room
}

// add takes a room down.
func (c *coverOf) add(l *job.Laid, made *drawnRoom) {
	r := submittal.JobRoom{Mark: made.mark, Title: titled(l.Plan), Laid: job.RowWords(job.LaidRows(l.Plan)), Unfit: made.must, Sheets: l.Plan.Totals.Sheets}
	for i, name := range made.names {
		r.Pages = append(r.Pages, [2]string{name, made.titles[i]})
	}
	c.Rooms = append(c.Rooms, r)
	if c.first == nil {
		c.first = l.Plan.Room
	}
}

// jobCover draws the cover of a job, on the paper of its first room.
func (c *call) jobCover(j *job.Job, cover *coverOf) (*scene.Document, error) {
	p := cover.first.Project
	cover.Project = room.Project{Title: j.Title, Number: j.Number, Place: "", For: p.For, By: p.By, Section: p.Section, Units: p.Units,
		Drawn: p.Drawn, Submittal: p.Submittal, Resubmittal: p.Resubmittal, Contractor: p.Contractor, Document: p.Document}
	for _, f := range j.Flitches {
		text := fmt.Sprintf("%d sheets delivered", len(f.Sheets))
		if len(f.Damaged) > 0 {
			text += ", damaged " + layout.Ranges(f.Damaged, " to ")
		}
		if len(f.Spare) > 0 {
			text += ", kept back " + layout.Ranges(f.Spare, " to ")
		}
		cover.Flitches = append(cover.Flitches, [2]string{f.Number, text})
	}
	from := folder(j.Text().Name)
	var t *paper.Template
	t, err := drawnSets[0].template(c, cover.first, from)
	if err != nil {
		return nil, err
	}
	mark, err := c.logo(cover.first, from)
	if err != nil {
		return nil, err
	}
	return cover.Draw(t, mark)
}
