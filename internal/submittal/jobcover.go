package submittal

import (
	"fmt"

	"flitchlay/internal/draft"
	"flitchlay/internal/finding"
	"flitchlay/internal/folio"
	"flitchlay/internal/layout"
	"flitchlay/internal/length"
	"flitchlay/internal/paper"
	"flitchlay/internal/room"
	"flitchlay/internal/scene"
)

// JobCover is what the cover of a job says of its rooms.
type JobCover struct {
	Project  room.Project
	Rooms    []JobRoom
	Flitches [][2]string // number, and what becomes of it
}

// JobRoom is a room on the cover of a job.
type JobRoom struct {
	Mark   string // before the numbers of its pages
	Title  string
	Sheets int
	Laid   string
	Unfit  bool
	Pages  [][2]string // number and title
}

// Draw draws the one cover of a job, with the list of all pages: as many pages as that takes.
//
// Errors: a fault of the program: a page that no backend could draw.
func (c *JobCover) Draw(t *paper.Template, logo *scene.Picture) (*scene.Document, error) {
	r := &room.Room{Project: c.Project}
	p := &layout.Plan{Room: r, Style: length.StyleOf(c.Project.Units)}
	for _, x := range c.Rooms {
		if x.Unfit { // what the first page says holds for no room that is fit, but nobody hangs by a set that is not
			p.Findings = []finding.Finding{{Level: finding.Must, Wall: -1}}
		}
	}
	s := folio.NewSet(p, t, logo, "Submittal")
	for _, x := range c.Rooms {
		for _, page := range x.Pages {
			s.Others = append(s.Others, page[0])
		}
	}
	return s.Document([]folio.Section{{Kind: folio.General, Pages: c.pages}})
}

// pages are the lists of the cover, flowing.
func (c *JobCover) pages(s *folio.Set) []*folio.Leaf {
	list := s.Flowed("LIST OF PAGES", "", s.NoteColumns(), func() []folio.Block { return c.blocks(s) }, nil)
	list[0].Title, list[0].About = folio.Cover, "cover"
	return list
}

func (c *JobCover) blocks(s *folio.Set) []folio.Block {
	rooms := &draft.Table{Title: "ROOMS IN THE ORDER OF HANGING", Columns: []draft.Column{{Head: "PAGES", Bold: true}, {Head: "ROOM", Wrap: true}, {Head: "SHEETS", Align: scene.End}, {Head: "NUMBERS", Wrap: true}}}
	pages := &draft.Table{Title: "PAGES", Columns: []draft.Column{{Head: "PAGE", Bold: true}, {Head: "SHOWS", Wrap: true}}}
	for _, r := range c.Rooms {
		title := r.Title
		if r.Unfit {
			title += ": NOT FOR HANGING"
		}
		row := draft.Row{Cells: []string{r.Mark, title, fmt.Sprint(r.Sheets), r.Laid}}
		if len(r.Pages) > 0 {
			row.Link = r.Pages[0][0]
		}
		rooms.Rows = append(rooms.Rows, row)
		for i, x := range r.Pages {
			pages.Rows = append(pages.Rows, draft.Row{Cells: []string{x[0], x[1]}, Rule: i == len(r.Pages)-1, Link: x[0]})
		}
	}
	issue := s.Issue()
	blocks := []folio.Block{{Table: Pairs("SUBMITTAL", projectLines(c.Project, issue)...)}, {Table: rooms}}
	if len(c.Flitches) > 0 {
		blocks = append(blocks, folio.Block{Table: Pairs("FLITCHES", c.Flitches...)})
	}
	return append(blocks, folio.Block{Table: pages})
}
