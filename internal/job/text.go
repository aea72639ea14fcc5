package job

import (
	"cmp"
	"fmt"
	"slices"
	"strconv"
	"strings"

	"flitchlay/internal/layout"
	"flitchlay/internal/room"
	"flitchlay/internal/source"
)

// edit puts pieces in place of a stretch of a room's file; an empty stretch stays, and they stand before it.
type edit struct {
	source.Span
	pieces []source.Piece
}

// merger makes the text of one room of a job out of its file and of what the job says.
type merger struct {
	job    *Job
	room   *Room
	text   *source.Text
	edits  []edit
	end    []source.Piece // behind the file
	number bool           // the room's number in the job is still to be written into [project]
}

// text is the room file of a room of the job: that of its own, in which what the job shares stands below what the room says itself,
// with its number in the job and the flitches that it takes its sheets from.
func (j *Job) text(r *Room) *source.Text {
	if j.plain {
		return r.file.root.Mistakes().Text
	}
	m := &merger{job: j, room: r, text: r.file.root.Mistakes().Text}
	m.renumber()
	for _, f := range j.root.Fields() {
		if slices.Contains(sharedTables, f.Name()) {
			m.share(r.file.root, f, f.Name())
		}
	}
	if m.number {
		m.put(m.room.file.root.Get("project"), "project", func(string, string) []source.Piece { return nil }, 1, r.as)
	}
	if !r.Own && len(j.Flitches) > 0 {
		m.dropFlitches()
		for i := range r.Takes {
			m.flitch(&r.Takes[i])
		}
	}
	return source.Compose(m.text.Name, m.pieces())
}

// pieces are the room's file with all edits in it.
func (m *merger) pieces() []source.Piece {
	slices.SortStableFunc(m.edits, func(a, b edit) int { return cmp.Compare(a.Start, b.Start) })
	body := m.text.Body()
	at := 0
	var list []source.Piece
	keep := func(to int) {
		if to > at {
			list = append(list, source.Piece{From: m.text, Span: source.Span{Start: at, End: to}})
			at = to
		}
	}
	for _, e := range m.edits {
		keep(e.Start)
		list = append(list, e.pieces...)
		at = max(at, e.End)
	}
	keep(len(body))
	if !strings.HasSuffix(body, "\n") {
		list = append(list, m.words("\n", source.Span{Start: len(body), End: len(body)}))
	}
	return append(list, m.end...)
}

// words are words of ours for a stretch of the room's file, said those for one of the job's.
func (m *merger) words(text string, s source.Span) source.Piece {
	return source.Piece{Words: text, From: m.text, Span: s}
}

func (m *merger) said(text string, v source.Value) source.Piece {
	return source.Piece{Words: text, From: m.job.Text(), Span: v.Span()}
}

// pair writes a key of the job file: its name and its value as they stand there.
func (m *merger) pair(before string, v source.Value, after string) []source.Piece {
	var list []source.Piece
	word := func(text string) {
		if text != "" {
			list = append(list, m.said(text, v))
		}
	}
	word(before)
	list = append(list, source.Piece{From: m.job.Text(), Span: v.KeySpan()})
	word(" = ")
	list = append(list, source.Piece{From: m.job.Text(), Span: v.Span()})
	word(after)
	return list
}

// share puts a table of the job below the room's.
func (m *merger) share(parent source.Value, shared source.Value, path string) {
	mine := parent.Get(shared.Name())
	if shared.Kind() != source.Table || mine.Given() && mine.Kind() != source.Table {
		return
	}
	var plain, inner []source.Value
	for _, f := range shared.Fields() {
		_, isTable := Schema.Table(path + "." + f.Name())
		switch {
		case isTable:
			inner = append(inner, f)
		case !mine.Get(f.Name()).Given() && !(path == "project" && f.Name() == "room" && m.room.As != ""):
			plain = append(plain, f)
		}
	}
	m.put(mine, path, func(before, after string) (list []source.Piece) {
		for _, f := range plain {
			list = append(list, m.pair(before, f, after)...)
		}
		return list
	}, len(plain), shared)
	for _, f := range inner {
		m.share(mine, f, path+"."+f.Name())
	}
}

// put writes some keys into a table of the room's file, in the way in which it is written there, or into one behind all others.
func (m *merger) put(mine source.Value, path string, keys func(before, after string) []source.Piece, n int, shared source.Value) {
	if path == "project" && m.number {
		m.number = false
		m.put(mine, path, func(before, after string) []source.Piece {
			return append(keys(before, after), m.said(before+"room = "+strconv.Quote(m.room.As)+after, m.room.as))
		}, n+1, shared)
		return
	}
	if n == 0 {
		return
	}
	body := m.text.Body()
	if mine.Given() && strings.HasPrefix(mine.Raw(), "{") {
		at := mine.Span().Start + 1
		after := ", "
		if strings.TrimSpace(strings.Trim(mine.Raw(), "{}")) == "" && n == 1 {
			after = ""
		}
		m.edits = append(m.edits, edit{source.Span{Start: at, End: at}, keys(" ", after)})
		return
	}
	if mine.Given() {
		from, to := lineOf(body, mine.KeySpan().Start)
		head := strings.TrimSpace(body[from:to])
		switch {
		case strings.HasPrefix(head, "[") && headerPath(head) == path:
			m.edits = append(m.edits, edit{source.Span{Start: to, End: to}, keys("\n", "")})
			return
		case !strings.HasPrefix(head, "["):
			m.edits = append(m.edits, edit{source.Span{Start: from, End: from}, keys(body[from:mine.KeySpan().End]+".", "\n")})
			return
		}
	}
	m.end = append(m.end, m.said("\n["+path+"]\n", shared))
	m.end = append(m.end, keys("", "\n")...)
}

// lineOf is the line in which a byte stands, without its end.
func lineOf(body string, at int) (from, to int) {
	from = strings.LastIndexByte(body[:at], '\n') + 1
	if n := strings.IndexByte(body[at:], '\n'); n >= 0 {
		return from, at + n
	}
	return from, len(body)
}

// headerPath is the path of a header [a.b], in plain letters.
func headerPath(line string) string {
	name, _, _ := strings.Cut(strings.TrimLeft(line, "["), "]")
	return strings.NewReplacer(" ", "", "\t", "", `"`, "", "'", "").Replace(name)
}

// renumber gives a room that stands for several its own number: in place of the one of its file, or later beside what [project] has.
func (m *merger) renumber() {
	if m.room.As == "" {
		return
	}
	if v := table(m.room.file.root, "project.room"); v.Given() {
		m.edits = append(m.edits, edit{v.Span(), []source.Piece{m.said(strconv.Quote(m.room.As), m.room.as)}})
		return
	}
	m.number = true
}

// dropFlitches takes the room's own flitches out: those of the job hold.
func (m *merger) dropFlitches() {
	v := m.room.file.root.Get("flitch")
	body := m.text.Body()
	if raw := v.Raw(); strings.HasPrefix(raw, "[") {
		m.edits = append(m.edits, edit{source.Span{Start: v.KeySpan().Start, End: v.Span().End}, nil})
		return
	}
	for _, item := range v.Items() {
		from, to := lineOf(body, item.KeySpan().Start)
		for _, f := range item.Fields() {
			_, end := lineOf(body, f.Span().End)
			to = max(to, end)
		}
		m.edits = append(m.edits, edit{source.Span{Start: from, End: to}, nil})
	}
}

// flitch writes what a room may take of one flitch of the job.
func (m *merger) flitch(f *room.Flitch) {
	tables := m.job.root.Get("flitch").Tables()
	at := tables[slices.IndexFunc(m.job.Flitches, func(x room.Flitch) bool { return x.Number == f.Number })]
	m.end = append(m.end, m.said("\n[[flitch]]\n", at))
	m.end = append(m.end, m.pair("", at.Get("number"), "\n")...)
	for _, x := range []struct {
		key     string
		numbers []int
	}{{"sheets", f.Sheets}, {"damaged", f.Damaged}, {"spare", f.Spare}} {
		switch {
		case x.key == "spare" && len(x.numbers) == 1: // one number alone would be a count
			m.end = append(m.end, m.said(fmt.Sprintf("%s = [%d]\n", x.key, x.numbers[0]), at.Get(x.key)))
		case len(x.numbers) > 0:
			m.end = append(m.end, m.said(fmt.Sprintf("%s = %q\n", x.key, layout.Numbers(x.numbers)), at.Get(x.key)))
		}
	}
	if f.UseUp {
		m.end = append(m.end, m.said("use_up = true\n", at))
	}
	var measured []source.Piece
	for _, item := range at.Get("widths").Items() {
		two := item.Items()
		if len(two) == 2 && two[0].Kind() == source.Integer && !slices.Contains(f.Sheets, int(two[0].Whole(0))) && slices.Contains(m.job.of(f.Number).Sheets, int(two[0].Whole(0))) {
			continue // a sheet of another room
		}
		measured = append(measured, source.Piece{From: m.job.Text(), Span: item.Span()}, m.said(", ", item))
	}
	if len(measured) > 0 || at.Get("widths").Given() && at.Get("widths").Kind() != source.Array {
		if len(measured) == 0 {
			measured = []source.Piece{{From: m.job.Text(), Span: at.Get("widths").Span()}}
			m.end = append(append(append(m.end, m.said("widths = ", at)), measured...), m.said("\n", at))
			return
		}
		m.end = append(append(append(m.end, m.said("widths = [", at)), measured...), m.said("]\n", at))
	}
}

// of is a flitch of the job by its number.
func (j *Job) of(number string) *room.Flitch {
	for i := range j.Flitches {
		if j.Flitches[i].Number == number {
			return &j.Flitches[i]
		}
	}
	return nil
}
