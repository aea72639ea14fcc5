package job

import "flitchlay/internal/source"

// Again is the text of a room whose file says something else, with the sheets that it may take as they were found. It is for who
// tries something: what the rooms after it may take then is not looked for.
//
// Errors: the text cannot be read.
func (j *Job) Again(i int, text []byte) (*source.Text, error) {
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
	return j.text(&r), nil
}
