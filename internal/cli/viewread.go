package cli

import (
	"crypto/sha256"
	"encoding/hex"
	"fmt"
	"os"
	"path/filepath"
	"slices"
	"sync"

	"flitchlay/internal/job"
	"flitchlay/internal/layout"
	"flitchlay/internal/pdf"
	"flitchlay/internal/room"
	"flitchlay/internal/scene"
	"flitchlay/internal/view"
)

// viewed is how view reads and draws what a path stands for. Each reading is a run of its own, so that what it reads is known; what
// it says on the side is not said.
func (c *call) viewed(path string) view.Source {
	layers := map[string]*layout.Layer{}
	sound := map[string]companionsRead{}
	return view.Source{
		Read: func(whole bool) *view.House {
			one := c.aside()
			h := one.house(path, layers, whole)
			for _, r := range h.Rooms {
				if r.Plan != nil && r.Err == nil {
					r.Err = one.companionsOf(r, sound)
				}
			}
			h.Files = append(one.inputs, path)
			slices.Sort(h.Files)
			h.Files = slices.Compact(h.Files)
			h.Sum = stamp(h.Files)
			return h
		},
		Sets:  setWords(),
		Write: exchange,
		Draw: func(r *view.Room, p *layout.Plan, word string) (*view.Drawn, error) {
			one := c.aside()
			one.text = r.Text
			sets, err := chosen([]string{word})
			if err != nil {
				return nil, err
			}
			return one.drawn(sets[0], p, filepath.Dir(r.File))
		},
	}
}

// aside is a run beside this one, which says nothing.
func (c *call) aside() *call {
	return &call{in: c.in, out: &sink{to: quiet{}}, messages: &sink{to: quiet{}}}
}

// quiet is where nothing is said.
type quiet struct{}

// Write takes all and keeps nothing.
func (quiet) Write(p []byte) (int, error) { return len(p), nil }

// stamp is what all files together are told by from what they were: their names, sizes and times.
func stamp(files []string) string {
	all := sha256.New()
	for _, name := range files {
		info, err := os.Stat(name)
		if err != nil {
			fmt.Fprintln(all, name, "-")
			continue
		}
		fmt.Fprintln(all, name, info.Size(), info.ModTime().UnixNano())
	}
	return hex.EncodeToString(all.Sum(nil))
}

// house reads a room, or all rooms of a job.
func (c *call) house(path string, layers map[string]*layout.Layer, whole bool) *view.House {
	j, err := c.jobOf(path)
	if err != nil {
		return &view.House{Title: filepath.Base(path), Err: err}
	}
	if j == nil {
		return &view.House{Title: filepath.Base(path), Rooms: []*view.Room{c.viewedRoom(path, layers, whole)}}
	}
	h := &view.House{Title: j.Title}
	one := new(sync.Mutex) // a job notes mistakes while it is read
	for i := range j.Rooms {
		h.Rooms = append(h.Rooms, c.viewedIn(j, i, one, layers, whole))
	}
	return h
}

// viewedRoom reads a room by itself.
func (c *call) viewedRoom(path string, layers map[string]*layout.Layer, whole bool) *view.Room {
	out := &view.Room{Name: path, File: path, Judge: func(p *layout.Plan) { judged(p); ofSite(p) }}
	out.Again = func(text []byte, _ bool) (*room.Room, error) { return room.Decode(path, text) }
	_, text, err := c.bytes(path)
	if err != nil {
		out.Err = err
		return out
	}
	out.Text = text
	layViewed(out, layers, whole)
	return out
}

// viewedIn reads a room of a job.
func (c *call) viewedIn(j *job.Job, i int, one *sync.Mutex, layers map[string]*layout.Layer, whole bool) *view.Room {
	r := j.Rooms[i]
	file := r.File
	if !filepath.IsAbs(file) {
		file = filepath.Join(folder(j.Text().Name), file)
	}
	out := &view.Room{Name: r.Name(), File: file, Judge: func(p *layout.Plan) { judged(p); ofSite(p) }}
	out.Again = func(text []byte, more bool) (*room.Room, error) {
		one.Lock()
		composed, err := j.Again(i, text, more)
		one.Unlock()
		if err != nil {
			return nil, err
		}
		return room.DecodeText(composed)
	}
	_, text, err := c.bytes(file)
	if err != nil {
		out.Err = err
		return out
	}
	out.Text = text
	if r.Err != nil {
		out.Err = r.Err
		return out
	}
	layViewed(out, layers, whole)
	return out
}

// layViewed lays a room out by what is known of it from the time before; where all is wanted also with what a small change would save.
func layViewed(r *view.Room, layers map[string]*layout.Layer, whole bool) {
	decoded, err := r.Again(r.Text, false)
	if err != nil {
		r.Err = err
		return
	}
	y := layers[r.Name]
	if y == nil {
		y = layout.NewLayer()
		layers[r.Name] = y
	}
	lay := y.LayOwn
	if whole {
		lay = y.Lay
	}
	p, err := lay(decoded)
	if err != nil {
		r.Err = err
		return
	}
	r.Judge(p)
	r.Plan = p
}

// companionsRead is what was wrong with the files beside a room's, as they were then.
type companionsRead struct {
	stamp string
	err   error
}

// companionsOf names the files that a room's file names beside it, so that they are followed, and says what of them cannot be used. They
// are read where one has changed.
func (c *call) companionsOf(r *view.Room, known map[string]companionsRead) error {
	from := filepath.Dir(r.File)
	var files []string
	for _, x := range companions(r.Plan.Room.Page) {
		files = append(files, inFolder(from, x.path))
	}
	c.inputs = append(c.inputs, files...)
	for _, name := range laid(r.Plan) {
		if pattern := r.Plan.Room.Veneer.Face; pattern != "" {
			c.inputs = append(c.inputs, inFolder(from, photoPath(pattern, name)))
		}
	}
	now := stamp(files) + fmt.Sprint(r.Plan.Room.Page)
	before, ok := known[r.Name]
	if !ok || before.stamp != now {
		before = companionsRead{now, c.pageSound(r.Plan.Room, from)}
		known[r.Name] = before
	}
	return before.err
}

// drawn draws a set as draw does.
func (c *call) drawn(s drawnSet, p *layout.Plan, from string) (*view.Drawn, error) {
	with, err := c.pictures(p, []drawnSet{s}, from)
	if err != nil {
		return nil, err
	}
	t, err := s.template(c, p.Room, from)
	if err != nil {
		return nil, err
	}
	d, err := s.pages(p, t, with)
	if err != nil {
		return nil, err
	}
	data, err := pdf.Write(&scene.Document{Title: d.Title, Author: d.Author, Subject: d.Subject, Date: d.Date, Pages: d.Pages, Outline: d.Outline,
		Attachments: append(d.Attachments, c.attachments(p.Room, from)...)})
	if err != nil {
		return nil, err
	}
	return &view.Drawn{Document: d, PDF: data}, nil
}

// inFolder is a path as it stands in a file of a folder.
func inFolder(folder, path string) string {
	if filepath.IsAbs(path) {
		return path
	}
	return filepath.Join(folder, path)
}
