package job

import (
	"flitchlay/internal/room"
	"flitchlay/internal/source"
)

// Words that keys take, in the order in which messages name them.
var (
	wholeWords  = []string{"room", "wall", "none"}
	assignWords = []string{"given", "auto"}
)

// sharedTables are the tables whose keys the rooms of a job share. Those inside them are shared with them.
var sharedTables = []string{"project", "veneer", "rules", "page", "paste", "primer", "site", "site.year", "site.board", "site.shop", "day"}

// own are the tables that only a job file has.
var own = source.Schema{
	{Path: "job", Doc: "how the flitches go through the rooms", Keys: []source.Key{
		{Name: "whole", Kind: "word", Words: wholeWords, Default: "room", Doc: "what may not be hung from two flitches, unless it is longer than any"},
		{Name: "assign", Kind: "word", Words: assignWords, Default: "given", Doc: "which flitch serves which room: as the rooms are given, or found for the fewest changes of a flitch inside a room, then the fewest left-over ends too short for any room"},
	}},
	{Path: "room", Many: true, Doc: "a room of the job, in the order of hanging", Keys: []source.Key{
		{Name: "file", Required: true, Kind: "text", Doc: "its room file, from the job file's folder", Like: `"1.10-reception.toml"`},
		{Name: "as", Kind: "room numbers", Default: "one room, as its file has it", Doc: "the same room again, once for each of these numbers"},
		{Name: "hung", Kind: "true, or room numbers", Default: "false", Doc: "it hangs already, or those of its numbers do: its sheets stay as they are"},
		{Name: "laid", Kind: "sheets by flitch", Default: "the sheets that come to it in the order of the rooms", Doc: "the sheets of a room that hangs, as check prints them; one text for each room that hangs"},
		{Name: "flitch", Kind: "text", Default: "it goes on where the room before stopped", Doc: "number of the flitch with which it begins", Like: `"SR-F2"`},
	}},
	{Path: "price", Doc: "what things cost: count prices the job by it", Keys: priceKeys()},
}

// Schema is every table and key of a job file. The keys that rooms share are those of a room file; none is needed here, since a room
// may have it.
var Schema = schema()

func schema() source.Schema {
	var all source.Schema
	for _, path := range sharedTables {
		t, ok := room.Schema.Table(path)
		if !ok {
			panic("job: a room file has no table " + path)
		}
		keys := make([]source.Key, len(t.Keys))
		for i, k := range t.Keys {
			k.Required = false
			keys[i] = k
		}
		t.Keys = keys
		all = append(all, t)
	}
	flitch, _ := room.Schema.Table("flitch")
	return append(append(all, flitch), own...)
}

// Own are the tables of a job file that a room file does not have, or has otherwise.
func Own() source.Schema { return own }

// Is reports whether a file is a job file and no room file.
func Is(root source.Value) bool {
	return !root.Get("wall").Given() && (root.Get("job").Given() || root.Get("room").Kind() == source.Array)
}
