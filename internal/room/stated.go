package room

import "flitchlay/internal/source"

// Stated is a line that a specification asks a submittal to state, and that is printed only where the room file gives it.
type Stated struct {
	Table, Key, Doc string
	Says            string // the word before it on the cover; empty: it is printed as a part of another line
	Of              func(*Room) *string
}

// stated lists them in the order of the cover.
var stated = []Stated{
	{"project", "submittal", "number of the submittal", "", func(r *Room) *string { return &r.Project.Submittal }},
	{"project", "resubmittal", "suffix of a submittal that is handed in again: R1", "", func(r *Room) *string { return &r.Project.Resubmittal }},
	{"project", "document", "type of the document", "Document", func(r *Room) *string { return &r.Project.Document }},
	{"project", "contractor", "who builds the building", "Contractor", func(r *Room) *string { return &r.Project.Contractor }},
	{"project", "contract_drawings", "drawings and details of the contract that this work is shown on", "Contract drawings", func(r *Room) *string { return &r.Project.ContractDrawings }},
	{"project", "sample", "approved control sample or mock-up", "Control sample", func(r *Room) *string { return &r.Project.Sample }},
	{"project", "drawn_by", "who drew", "Drawn by", func(r *Room) *string { return &r.Project.DrawnBy }},
	{"project", "checked_by", "who checked", "Checked by", func(r *Room) *string { return &r.Project.CheckedBy }},
	{"project", "approved_by", "who approved for issue", "Approved by", func(r *Room) *string { return &r.Project.ApprovedBy }},
	{"veneer", "face_grade", "grade of the face, with the standard that grades it", "Face grade", func(r *Room) *string { return &r.Veneer.FaceGrade }},
	{"veneer", "backing", "what the veneer is glued to", "Backing", func(r *Room) *string { return &r.Veneer.Backing }},
	{"veneer", "finish", "the finish, and where it is put on", "Finish", func(r *Room) *string { return &r.Veneer.Finish }},
	{"veneer", "sheen", "sheen of the finish, with the angle it is measured at", "Sheen", func(r *Room) *string { return &r.Veneer.Sheen }},
	{"veneer", "fire_report", "number and date of the fire test report", "Fire report", func(r *Room) *string { return &r.Veneer.FireReport }},
	{"paste", "name", "the adhesive by its name", "Adhesive", func(r *Room) *string { return &r.PasteName }},
	{"primer", "name", "the primer by its name", "Primer", func(r *Room) *string { return &r.PrimerName }},
}

// StatedOf lists what the tables named state of a room.
func (r *Room) StatedOf(tables ...string) (lines [][2]string) {
	for _, s := range stated {
		for _, t := range tables {
			if text := *s.Of(r); s.Table == t && s.Says != "" && text != "" {
				lines = append(lines, [2]string{s.Says, text})
			}
		}
	}
	return lines
}

// statedKeys are the keys of one table.
func statedKeys(table string, others ...source.Key) []source.Key {
	for _, s := range stated {
		if s.Table == table {
			others = append(others, may(s.Key, "text", "", s.Doc))
		}
	}
	return others
}

// states reads what is stated.
func (d *decoder) states() {
	for _, s := range stated {
		*s.Of(d.room) = d.root.Get(s.Table).Section().Get(s.Key).Text("")
	}
}

// SubmittalNumber is the number of the submittal, with the suffix of one that is handed in again.
func (p *Project) SubmittalNumber() string {
	if p.Submittal == "" || p.Resubmittal == "" {
		return p.Submittal + p.Resubmittal
	}
	return p.Submittal + "-" + p.Resubmittal
}
