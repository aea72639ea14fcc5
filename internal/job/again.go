package job

import (
	"slices"

	"flitchlay/internal/room"
	"flitchlay/internal/source"
)

// Again is the text of a room whose file says something else, with the sheets that it may take as they were found. It is for who
// tries something: what the rooms after it may take then is not looked for. With more it may also take, of the flitch that it ends with,
// what rooms after it would have: a room that comes to take a sheet more is then not short of it.
//
// Errors: the text cannot be read.
func (j *Job) Again(i int, text []byte, more bool) (*source.Text, error) {
	r := *j.Rooms[i]
	if r.Err != nil {
		return nil, r.Err
	}
	file := *r.file
	var err error
	if file.root, err = source.Parse(file.name, text); err != nil {
		return nil, err
	}
	r.file = &file
	if more && len(r.Takes) > 0 && len(r.Laid) == 0 {
		r.Takes = slices.Clone(r.Takes)
		last := &r.Takes[len(r.Takes)-1]
		*last = j.more(*last)
	}
	return j.text(&r), nil
}

// more is a flitch with all that follows the last sheet of it that is not kept back.
func (j *Job) more(f room.Flitch) room.Flitch {
	last := 0
	for _, n := range f.Sheets {
		if !within(f.Spare, n) {
			last = max(last, n)
		}
	}
	has := f.Sheets
	out := *j.of(f.Number)
	out.UseUp = f.UseUp
	out.Sheets = kept(out.Sheets, func(n int) bool { return n > last || within(has, n) })
	return share(out)
}
