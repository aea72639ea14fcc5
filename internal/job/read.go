package job

import (
	"path/filepath"
	"regexp"
	"slices"
	"strings"

	"flitchlay/internal/room"
	"flitchlay/internal/source"
)

// Open reads a file that a job names, and says how messages call it.
type Open func(file string) (name string, text []byte, err error)

// Read reads a job file and the files that it names.
//
// Errors: *source.Mistakes with everything that is to be mended in the job file. What is wrong with a room stands in its Err.
func Read(name string, text []byte, open Open) (*Job, error) {
	root, err := source.Parse(name, text)
	if err != nil {
		return nil, err
	}
	Schema.Unknown(root)
	j := &Job{root: root}
	project := root.Get("project").Section()
	j.Title, j.Number = project.Get("title").Text(""), project.Get("number").Text("")
	if j.Title == "" {
		j.Title = strings.TrimSuffix(filepath.Base(name), filepath.Ext(name))
	}
	for _, path := range sharedTables {
		table(root, path).Section()
	}
	how := root.Get("job").Section()
	j.Whole = how.Get("whole").Word("room", wholeWords...)
	j.Auto = how.Get("assign").Word("given", assignWords...) == "auto"
	if j.Auto && j.Whole == "wall" {
		how.Get("assign").Mistake("write whole = \"room\" or \"none\", or name the flitches of the rooms", "flitches are not assigned to walls")
	}
	j.Currency, j.Prices = prices(root.Get("price").Section())
	j.Flitches = room.Flitches(root)
	r := reader{job: j, open: open, files: map[string]*roomFile{}, seen: map[string]bool{}}
	list := root.Get("room").Tables()
	if len(list) == 0 {
		root.Get("room").Mistake("name the rooms in the order of hanging: [[room]] with file = \"...\" for each", "the job has no room")
	}
	for _, v := range list {
		r.room(v)
	}
	if err := root.Mistakes().Err(); err != nil {
		return nil, err
	}
	return j, nil
}

// table is a table by its path.
func table(v source.Value, path string) source.Value {
	for _, step := range strings.Split(path, ".") {
		v = v.Get(step)
	}
	return v
}

// reader is a job while it is read.
type reader struct {
	job   *Job
	open  Open
	files map[string]*roomFile
	seen  map[string]bool // rooms and folders
}

// room reads one [[room]]: the one room, or all that its file stands for.
func (r *reader) room(v source.Value) {
	name := v.Get("file")
	file := strings.TrimSpace(name.Text(""))
	if file == "" {
		if !name.Given() || name.Kind() == source.String {
			name.Mistake(`add file = "reception.toml": its room file, from the job file's folder`, "a room of the job has no file")
		}
		return
	}
	f := r.file(file, name)
	numbers := roomNumbers(v.Get("as"))
	hung := r.hung(v.Get("hung"), numbers)
	sheets, at := laid(v.Get("laid"))
	flitch := r.flitch(v.Get("flitch"))
	if !v.Get("as").Given() {
		numbers = []string{""}
	}
	hang := 0
	for _, n := range numbers {
		one := &Room{File: file, As: n, Flitch: flitch, Hung: hung[n], Err: f.err, file: f, at: v, as: v.Get("as")}
		if one.Hung {
			if hang < len(sheets) {
				one.Laid = sheets[hang]
				r.delivered(one, at[hang])
			}
			hang++
		}
		r.once(one, name)
		one.Folder = r.folder(one)
		r.job.Rooms = append(r.job.Rooms, one)
	}
	if hung != nil && len(sheets) > 0 && len(sheets) != hang {
		v.Get("laid").Mistake("give one text for each room that hangs, in their order", "laid has the sheets of %d, and of these rooms %d hang", len(sheets), hang)
	}
	if len(r.job.Rooms) > mostRooms {
		v.Get("file").Mistake("part the job", "a job of more than %d rooms is not read", mostRooms)
	}
}

// file reads a room's file, once.
func (r *reader) file(file string, at source.Value) *roomFile {
	if f := r.files[file]; f != nil {
		return f
	}
	f := &roomFile{name: file, kind: len(r.files)}
	r.files[file] = f
	name, text, err := r.open(file)
	if err != nil {
		at.Mistake("name a room file, from the job file's folder", "%s", err)
		return f
	}
	f.name = name
	if f.root, f.err = source.Parse(name, text); f.err == nil && Is(f.root) {
		at.Mistake("name a room file: its walls stand in [[wall]]", "%s is a job file itself", file)
	}
	return f
}

// hung says which of some room numbers hang; "" stands for the one room of a file. It is nil where that cannot be read.
func (r *reader) hung(v source.Value, numbers []string) map[string]bool {
	out := map[string]bool{}
	if v.Kind() == source.Absent || v.Kind() == source.Boolean {
		yes := v.Bool(false)
		for _, n := range append(numbers, "") {
			out[n] = yes
		}
		return out
	}
	for _, n := range roomNumbers(v) {
		if !slices.Contains(numbers, n) {
			out = nil
			v.Mistake("name rooms that stand in as; hung = true says that all hang", "hung names room %s, which is none of these", n)
		} else if out != nil {
			out[n] = true
		}
	}
	return out
}

// flitch reads with which flitch a room begins.
func (r *reader) flitch(v source.Value) string {
	number := v.Text("")
	if number == "" || r.knows(number) {
		return number
	}
	v.Mistake("name a flitch of the job, as its [[flitch]] has it in number"+r.nearest(number), "the job has no flitch %q", number)
	return ""
}

func (r *reader) knows(number string) bool {
	return slices.ContainsFunc(r.job.Flitches, func(f room.Flitch) bool { return f.Number == number })
}

func (r *reader) nearest(number string) string {
	var all []string
	for _, f := range r.job.Flitches {
		all = append(all, f.Number)
	}
	if near := source.Nearest(number, all); near != "" {
		return "; the nearest is " + near
	}
	return ""
}

// delivered holds that the sheets that hang in a room came.
func (r *reader) delivered(one *Room, at source.Value) {
	for _, row := range one.Laid {
		if !r.knows(row.Flitch) {
			at.Mistake("name a flitch of the job"+r.nearest(row.Flitch), "the job has no flitch %q", row.Flitch)
			continue
		}
		for _, f := range r.job.Flitches {
			for _, n := range row.Numbers {
				if _, ok := slices.BinarySearch(f.Sheets, n); f.Number == row.Flitch && !ok {
					at.Mistake("look at the numbers on the sheets' backs", "sheet %d is not one of the sheets of flitch %s", n, row.Flitch)
					break
				}
			}
		}
	}
}

// once holds that no room stands in the job twice.
func (r *reader) once(one *Room, at source.Value) {
	name := "room " + one.Name()
	if one.As != "" {
		name, at = "as "+one.As, one.as
	}
	if r.seen[name] {
		if one.As != "" {
			at.Mistake("give every room of the job a number of its own", "room %s stands twice in the job", one.As)
		} else {
			at.Mistake(`say which rooms it stands for: as = "301-302"`, "%s stands twice in the job", one.File)
		}
	}
	r.seen[name] = true
}

// unfit is what the name of a folder does not hold.
var unfit = regexp.MustCompile(`[^\pL\pN._ -]+`)

// folder is where a room's drawings go: its number, or the name of its file; once in the job.
func (r *reader) folder(one *Room) string {
	base := filepath.Base(one.File)
	base = strings.TrimSuffix(base, filepath.Ext(base))
	for _, name := range []string{one.As, base, base + "-" + one.As} {
		name = strings.Trim(unfit.ReplaceAllString(name, "-"), " .-")
		if name != "" && !r.seen["in "+strings.ToLower(name)] {
			r.seen["in "+strings.ToLower(name)] = true
			return name
		}
	}
	name := base
	for r.seen["in "+strings.ToLower(name)] {
		name += "+"
	}
	r.seen["in "+strings.ToLower(name)] = true
	return name
}
