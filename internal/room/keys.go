package room

import "flitchlay/internal/source"

// Words that keys take, in the order in which messages name them.
var (
	unitWords    = []string{"in", "mm"}
	cutWords     = []string{"plain", "quarter", "rift"}
	matchWords   = []string{"slip", "book", "random"}
	grainWords   = []string{"vertical", "horizontal"}
	aimWords     = []string{"steady", "fewest", "even"}
	upperWords   = []string{"auto", "turned", "upright"}
	behindWords  = []string{"none", "base", "crown", "both"}
	cornerWords  = []string{"inside", "outside", "straight", "none"}
	endWords     = []string{"inside corner", "outside edge", "casing", "frame", "trim", "free"}
	throughWords = []string{"skip", "through"}
	putWords     = []string{"seam", "middle", "either"}
	fromWords    = []string{FromFirst, FromLast}
)

// need, may, some and rule make the rows of Schema.
func need(name, kind, doc string) source.Key {
	return source.Key{Name: name, Required: true, Kind: kind, Doc: doc}
}

func may(name, kind, other, doc string) source.Key {
	return source.Key{Name: name, Kind: kind, Default: other, Doc: doc}
}

func some(name, other, doc string, words []string) source.Key {
	return source.Key{Name: name, Kind: "word", Words: words, Default: other, Doc: doc}
}

// Schema is every table and key of a room file: the one list from which unknown keys are found and the keys are
// documented.
var Schema = source.Schema{
	{Path: "project", Doc: "who, what and when", Keys: statedKeys("project",
		need("title", "text", "what the drawings are of"),
		may("number", "text", "", "the job's number"),
		may("room", "text", "", "the room's number"),
		may("place", "text", "", "where in the building"),
		may("for", "text", "", "who reviews the drawings"),
		may("by", "text", "", "who hangs the work"),
		may("section", "text", "", "specification section"),
		may("tag", "text", "", "finish tag on the architect's drawings"),
		may("drawn", "date", "", "day of the drawing"),
		may("issued", "date", "as drawn, while no revision is older", "day of the first issue, which stays in the revision block whatever drawn says later"),
		may("measured", "date", "", "day on which the room was measured"),
		some("units", "in", "unit of bare numbers and of the drawings", unitWords),
	)},
	{Path: "project.revision", Many: true, Doc: "a row of the revision block", Keys: []source.Key{
		may("mark", "text", "A, B, ...", "the revision's mark, once in the file"),
		may("date", "date", "", "its day"),
		may("note", "text", "", "what was changed"),
		may("wall", "text", "", "wall on which the change is: its elevation shows the mark"),
		may("at", "length", "the wall's middle", "place of the change from the wall's left end"),
	}},
	{Path: "veneer", Doc: "the material", Keys: statedKeys("veneer",
		may("species", "text", "", "the wood"),
		some("cut", "", "how the leaves were cut", cutWords),
		some("match", "", "how leaves are matched inside a sheet", matchWords),
		may("leaf_width", "length", "", "width of a leaf, drawn as faint joints"),
		some("grain", "vertical", "way of the grain on the wall", grainWords),
		need("gross_width", "length", "a sheet as delivered, with factory edges"),
		need("overlap", "length", "how much two sheets overlap at a double cut"),
		need("length", "length", "of a sheet"),
		may("thickness", "length", "", "of a sheet with its backing"),
		may("face", "text", "", "photographs of the sheets: a file name with # for the number"),
	)},
	{Path: "flitch", Many: true, Doc: "sheets of one log section, numbered in order", Keys: []source.Key{
		need("number", "text", "the flitch's number"),
		need("sheets", "sheet numbers", "numbers delivered: \"1-24\", \"1-6, 8-24\" or a list"),
		some("from", FromFirst, "the end from which its sheets are laid: the lowest number first, or the highest", fromWords),
		may("damaged", "sheet numbers", "none", "sheets that cannot be hung"),
		may("spare", "whole number or sheet numbers", "0", "sheets kept back: the last ones to be laid, or a list"),
		may("widths", "list of [sheet number, length]", "all gross_width", "sheets measured when they came; under gross_width less overlap, plus least_overlap, a sheet counts as damaged"),
		may("use_up", "true or false", "false", "true: the next flitch begins only where this one is used up, not at the place before it where the change shows least"),
	}},
	{Path: "rules", Doc: "distances and widths that a layout keeps", Keys: ruleKeys()},
	{Path: "room", Doc: "what holds for the whole room", Keys: []source.Key{
		may("name", "text", "", "what the plan calls the room"),
		may("closed", "true or false", "false", "the walls close"),
		may("close_at", "\"auto\", or a table", "auto", "where the last sheet meets the first"),
		may("level_line", "length", "4' 0 (1200 mm)", "height of the level line that the crew strikes"),
		may("base", "length", "0", "height of the trim at the floor"),
		may("crown", "length", "0", "height of the trim at the ceiling"),
		some("behind", "none", "what the covering runs behind", behindWords),
		may("across", "length or list of lengths", "walls go straight on", "open room: from wall to wall across its open ends, where a wall with corner = \"none\" is faced by the next; one for all, or one for each in the order of the walls, 0 where the next goes straight on"),
		may("north", "number", "", "where north is: by how many degrees to the right of the way one looks who faces the first wall"),
		may("casing", "length", "", "width of the casings of windows and doors; 0 where they have none"),
		may("answered", "list of texts", "none", "what check asks and may stand as it is: [\"wall-odd North\", \"climate-unread\"]"),
		may("choose", "whole number", "1", "which layout of those that compare lists is laid out, 1 the best; another one may have that number once the room changes"),
	}},
	{Path: "room.close_at", Doc: "a wished place of the closing seam", Keys: []source.Key{
		may("wall", "name of a wall", "", "the wall of the closing seam"),
		may("at", "length", "", "its distance from the wall's left end"),
		may("corner", "name of a wall", "", "the wall whose right corner is cut instead"),
	}},
	{Path: "wall", Many: true, Doc: "a wall as seen from inside the room, from left to right", Keys: []source.Key{
		may("name", "text", "Wall 1, Wall 2, ...", "the wall's name, once in the file"),
		may("ref", "text", "", "the architect's own elevation mark"),
		need("length", "length", "of the wall"),
		need("height", "length, [left, right] or [[x, z], ...]", "of the ceiling"),
		may("floor", "length, [left, right] or [[x, z], ...]", "0", "where the floor leaves the level"),
		some("corner", "inside", "at its right end; none for the last wall of an open room", cornerWords),
		may("angle", "number", "90", "by how many degrees the corner turns"),
		may("radius", "length", "0", "of an eased corner"),
		may("wrap", "true or false", "true", "false: the corner is cut"),
		may("lean", "length or [left, right]", "0", "how far an end moves to the right from floor to ceiling"),
		some("left_end", "", "what a run ends against", endWords),
		some("right_end", "", "what a run ends against", endWords),
		may("main", "true or false", "false", "a wall that everyone looks at"),
		may("hidden_below", "length", "0", "what a desk or a bench hides"),
		may("cover", "true or false", "true", "false: a bare wall"),
		may("base", "length", "as in [room]", "height of the trim at the floor"),
		may("crown", "length", "as in [room]", "height of the trim at the ceiling"),
		some("behind", "as in [room]", "what the covering runs behind", behindWords),
	}},
	{Path: "wall.opening", Many: true, Doc: "a hole in the covering", Keys: []source.Key{
		may("name", "text", firstNames(), "the opening's name, once in the file"),
		some("kind", string(withSill)+" with a sill, else "+string(withoutSill), "what it is", kindWords(false)),
		need("from_left", "length", "from the wall's left end to the outer edge of the casing, or the rough edge"),
		need("width", "length", "to the other outer edge"),
		may("sill", "length", "the floor", "height of its lower edge"),
		need("height", "length", "from the sill, or from the floor at its left edge, to the head"),
		may("casing", "length", "as in [room]", "width of the casing round a window or a door; 0 where it has none"),
		may("reveal", "length", "0", "depth of its sides"),
		may("clearance", "length", "", "of a fireplace: to what burns, by the local code or the listing of the appliance; while it is not stated check and the cover ask for it"),
		may("wrap_reveal", "true or false", "false", "true: the jambs become bends"),
		some("grain", "skip", "only of full-height gaps: whether the grain counts on behind it", throughWords),
	}},
	{Path: "wall.box", Many: true, Doc: "something set in the wall", Keys: []source.Key{
		some("kind", string(anyBox), "what it is", kindWords(true)),
		need("x", "length", "of its centre, from the wall's left end"),
		need("z", "length", "height of its centre"),
		may("gang", "whole number", "1", "how many devices stand side by side"),
		may("plate", "[width, height]", "by kind and gang", "of the plate"),
		may("hole", "[width, height]", "2 x 3 in by gang", "of the hole behind the plate"),
	}},
	{Path: "wall.pin", Many: true, Doc: "the designer's wish", Keys: []source.Key{
		need("at", "length", "from the wall's left end"),
		some("put", "seam", "what stands there", putWords),
	}},
	{Path: "wall.keep_clear", Many: true, Doc: "a stretch without seams", Keys: []source.Key{
		need("from", "length", "from the wall's left end"),
		need("to", "length", "from the wall's left end"),
		may("why", "text", "", "the reason"),
	}},
	{Path: "wall.bare", Many: true, Doc: "a strip without covering, from floor to ceiling", Keys: []source.Key{
		need("from", "length", "from the wall's left end"),
		need("to", "length", "from the wall's left end"),
		may("why", "text", "", "the reason"),
	}},
	{Path: "hung", Many: true, Doc: "a sheet already on the wall, from the run's first", Keys: []source.Key{
		need("wall", "name of a wall", "the wall of its right seam"),
		may("sheet", "whole number", "", "its number in the flitch"),
		may("sheets", "sheet numbers", "", "in place of sheet: the numbers of a list of seams or edges"),
		may("left_edge", "length", "", "raw left edge of the first hung sheet, as it hangs; a closed run needs it, or left_seam"),
		may("left_seam", "length", "", "finished seam there, half an overlap right of left_edge"),
		may("edge", "length or [bottom, top]", "", "its raw right edge as it hangs, from where the wall's left corner crosses the level line: the figure of its line"),
		may("seam", "length or [bottom, top]", "", "in place of edge: the finished seam at its right, half an overlap left of the edge"),
		may("edges", "list of lengths or [bottom, top]", "", "in place of edge: those of several sheets of one wall, from left to right"),
		may("seams", "list of lengths or [bottom, top]", "", "in place of seam: those of several sheets of one wall, from left to right"),
	}, Gone: map[string]string{"from": "write left_edge where the raw left edge was measured, left_seam where the finished seam was"}},
	{Path: "reading", Many: true, Doc: "what a wall measures when the crew comes to it; check answers hang, re-strike or plan again", Keys: []source.Key{
		need("wall", "name of a wall", "the wall that was read"),
		may("length", "length", "as planned", "of the wall, along the floor"),
		may("lean", "length or [left, right]", "as planned", "how far an end moves to the right from floor to ceiling"),
		may("floor_down", "length, [left, right] or [[x, length], ...]", "as planned", "from the level line down to the floor, at x from the wall's left end; a floor over the line takes a minus"),
		may("ceiling_up", "length, [left, right] or [[x, length], ...]", "as planned", "from the level line up to the ceiling; a ceiling under the line takes a minus"),
	}},
	{Path: "site", Doc: "the climate where the sheets hang", Keys: []source.Key{
		may("temperature", "degrees F, or \"20 C\"", "", "of the air"),
		may("humidity", "number", "", "relative, in per cent"),
		may("wall", "degrees F, or \"20 C\"", "", "temperature of the coldest wall itself, on its face"),
	}},
	{Path: "site.year", Doc: "how the humidity of the finished room goes through the year", Keys: []source.Key{
		need("low", "number", "the least relative humidity, in per cent"),
		need("high", "number", "the greatest relative humidity, in per cent"),
	}},
	{Path: "site.board", Doc: "what a moisture meter says of the wall", Keys: []source.Key{
		need("meter", "text", "the meter's scale: a figure of one scale says nothing on another"),
		may("reading", "number", "", "the highest reading"),
		may("limit", "number", "", "the most that is allowed, by who answers for the paste"),
	}},
	{Path: "site.shop", Doc: "the climate where the sheets came from", Keys: []source.Key{
		need("temperature", "degrees F, or \"20 C\"", "of the air"),
		need("humidity", "number", "relative, in per cent"),
	}},
	{Path: "day", Doc: "how long the crew takes; all defaults are common practice, no source", Keys: dayKeys()},
	{Path: "paste", Doc: "the paste", Keys: statedKeys("paste",
		may("coverage", "text", "", "from the pail's label: \"150 sq ft/gal\" or \"3.7 m2/L\"; without it no paste is counted"),
	)},
	{Path: "primer", Doc: "the primer", Keys: statedKeys("primer",
		may("coverage", "text", "", "from the pail's label: \"300 sq ft/gal\" or \"7.4 m2/L\"; without it no primer is counted"),
	)},
	{Path: "page", Doc: "paper", Keys: []source.Key{
		may("submittal", "text", "", "a page template's name, or the path of your own"),
		may("install", "text", "", "a page template's name, or the path of your own"),
		may("logo", "text", "", "a picture for the title block, PNG or JPEG"),
		may("language", "text", "en", "of the crew's pages: en, es, en+es for both where a page has room, or the path of a table of your own"),
	}},
}
