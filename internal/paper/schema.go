package paper

import "flitchlay/internal/source"

// Schema is all tables and keys of a page template.
var Schema = source.Schema{
	{Path: "", Doc: "A page template. Bare numbers are millimetres on paper."},
	{Path: "paper", Doc: "The paper.", Keys: []source.Key{
		{Name: "name", Required: true, Kind: "text", Doc: "What the paper is called"},
		{Name: "width", Required: true, Kind: "length", Doc: "Width of the paper"},
		{Name: "height", Required: true, Kind: "length", Doc: "Height of the paper"},
	}},
	{Path: "frame", Doc: "The frame, by its distance from the paper's edges.", Keys: []source.Key{
		{Name: "left", Kind: "length", Default: "20", Doc: "From the left edge"},
		{Name: "right", Kind: "length", Default: "10", Doc: "From the right edge"},
		{Name: "top", Kind: "length", Default: "10", Doc: "From the upper edge"},
		{Name: "bottom", Kind: "length", Default: "10", Doc: "From the lower edge"},
		{Name: "line", Kind: "length", Default: "0.7", Doc: "Width of its line"},
		{Name: "centring", Kind: "true or false", Default: "false", Doc: "Marks at the middles of the paper's edges (ISO 5457)"},
	}},
	{Path: "text", Doc: "Heights of capitals.", Keys: []source.Key{
		{Name: "small", Kind: "length", Default: "2.5", Doc: "Notes and figures; all distances on the page grow with it"},
		{Name: "medium", Kind: "length", Default: "3.5", Doc: "Sheet numbers, names"},
		{Name: "large", Kind: "length", Default: "5", Doc: "Titles"},
		{Name: "huge", Kind: "length", Default: "7", Doc: "Page numbers"},
	}},
	{Path: "lines", Doc: "Widths of lines.", Keys: []source.Key{
		{Name: "wide", Kind: "length", Default: "0.7", Doc: "Floor, match line, closing seam"},
		{Name: "outline", Kind: "length", Default: "0.5", Doc: "Walls, covering, openings"},
		{Name: "seam", Kind: "length", Default: "0.35", Doc: "Seams"},
		{Name: "thin", Kind: "length", Default: "0.25", Doc: "Trim, marks"},
		{Name: "dimension", Kind: "length", Default: "0.18", Doc: "Dimension lines"},
		{Name: "extension", Kind: "length", Default: "0.13", Doc: "Extension lines"},
		{Name: "grain", Kind: "length", Default: "0.13", Doc: "Grain"},
	}},
	{Path: "wood", Doc: "How the wood is shown on elevations.", Keys: []source.Key{
		{Name: "grain", Kind: "true or false", Default: "true", Doc: "Faint grain under the lines"},
		{Name: "colour", Kind: "true or false", Default: "true", Doc: "In the colour of wood; false: grey, for a set without colours"},
	}},
	{Path: "number", Doc: "Page numbers.", Keys: []source.Key{
		{Name: "discipline", Kind: "text", Default: "Z", Doc: "One letter, or two: Z-201, ZD201"},
		{Name: "style", Kind: "text", Doc: "An office's own form of {discipline}, {kind} and {count}, such as \"{discipline}{kind}.{count}\"; where it is not given that of the standard; {room} is the room in the set of a job, and nothing else"},
	}},
	{Path: "elevation", Doc: "How large the view of a wall may be.", Keys: []source.Key{
		{Name: "width", Kind: "length", Doc: "Of the wall, at the most; what the field leaves where it is not given"},
		{Name: "height", Kind: "length", Doc: "Of the wall, at the most; what the field leaves where it is not given"},
		{Name: "middle", Kind: "length", Doc: "Where its middle stands; the field's where it is not given"},
		{Name: "top", Kind: "length", Doc: "Its top stands no higher than this"},
		{Name: "inch", Kind: "list of whole numbers", Default: "[16, 24, 32, 48]", Doc: "Scales of an inch room, the largest drawing first"},
		{Name: "metric", Kind: "list of whole numbers", Default: "[10, 20, 50]", Doc: "Scales of a metric room, the largest drawing first"},
	}},
	{Path: "pole", Doc: "Story poles, at full size.", Keys: []source.Key{
		{Name: "roll", Kind: "length", Doc: "Width of the roll that they are drawn on, each in one piece; strips on the page's paper where it is not given"},
		{Name: "longest", Kind: "length", Default: "4800", Doc: "Longest piece of a roll"},
		{Name: "other", Kind: "true or false", Default: "false", Doc: "Also the poles that carry no lines: up walls whose sheets hang upright, from the level line; along those whose grain is level"},
		{Name: "openings", Kind: "true or false", Default: "false", Doc: "Also the edges of openings, and what is set in the walls"},
	}},
	{Path: "notes", Doc: "Notes.", Keys: []source.Key{
		{Name: "standing", Kind: "list of texts", Doc: "On every page with seams"},
	}},
	{Path: "install", Doc: "The set for the crew.", Keys: []source.Key{
		{Name: "cards", Kind: "word", Words: cards(), Default: string(CardsFace), Doc: "A card for every sheet, to lay on it while it is cut: seen from its face, mirrored for cutting from the back, both, or none"},
	}},
	{Path: "strip", Doc: "The strip with the title block.", Keys: []source.Key{
		{Name: "box", Required: true, Kind: "box", Doc: "Where it stands: [x, y, width, height]"},
		{Name: "line", Kind: "length", Default: "0.7", Doc: "Width of its outline"},
		{Name: "divider", Kind: "length", Default: "0.5", Doc: "Width of the lines between its blocks"},
		{Name: "field", Kind: "box", Doc: "Where drawings stand; what the strip leaves of the frame where it is not given"},
	}},
	{Path: "strip.block", Many: true, Doc: "One block of the strip.", Keys: []source.Key{
		{Name: "kind", Required: true, Kind: "word", Words: kinds(), Doc: "What it is for"},
		{Name: "box", Required: true, Kind: "box", Doc: "Where it stands: [x, y, width, height]"},
		{Name: "heading", Kind: "text", Doc: "Stands in its upper left corner"},
		{Name: "row_height", Kind: "length", Default: "7.5", Doc: "Of revisions: height of a row"},
		{Name: "columns", Kind: "list of lengths", Doc: "Of revisions: widths of mark, what, date"},
	}},
	{Path: "strip.block.row", Many: true, Doc: "One row of a title block.", Keys: []source.Key{
		{Name: "height", Required: true, Kind: "length", Doc: "Height of the row"},
		{Name: "logo", Kind: "length", Default: "0", Doc: "Width kept at the right for a logo"},
		{Name: "number", Kind: "length", Default: "0", Doc: "Width of the box with the page number at the right"},
	}},
	{Path: "strip.block.row.line", Many: true, Doc: "One line of text.", Keys: []source.Key{
		{Name: "text", Required: true, Kind: "text", Doc: "With {fields}; parts between | are left out where nothing is given for them"},
		{Name: "height", Kind: "length", Default: "2.5", Doc: "Height of capitals"},
		{Name: "bold", Kind: "true or false", Default: "false", Doc: "Bold"},
	}},
}

func kinds() []string {
	return []string{string(Key), string(Stamp), string(Revisions), string(Title), string(Words)}
}

func cards() []string {
	return []string{string(CardsFace), string(CardsBack), string(CardsBoth), string(CardsNone)}
}
