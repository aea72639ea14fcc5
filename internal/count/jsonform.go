package count

import "flitchlay/internal/report"

// The objects of the JSON format, as schema.json has them.

type jsonRoom struct {
	Title     string         `json:"title"`
	Room      *string        `json:"room"`
	Units     string         `json:"units"`
	Aim       string         `json:"aim"`
	Broken    bool           `json:"must_broken"`
	Sheets    int            `json:"sheets"`
	Spares    int            `json:"spares"`
	All       jsonFlitch     `json:"all"`
	Flitches  []jsonFlitch   `json:"flitches"`
	Walls     []jsonWall     `json:"walls"`
	Lengths   []jsonStock    `json:"lengths"`
	Margins   jsonMargins    `json:"margins"`
	Nearly    []jsonSaving   `json:"nearly"`
	Registers []jsonRegister `json:"registers"`
	Areas     jsonAreas      `json:"areas"`
	Material  jsonMaterial   `json:"material"`
	Order     []jsonLine     `json:"order"`
	Kept      []jsonKept     `json:"kept"`
	Cuts      []jsonCut      `json:"cuts"`
}

type jsonFlitch struct {
	Flitch    *string `json:"flitch"`
	Delivered []int   `json:"delivered"`
	Damaged   []int   `json:"damaged"`
	Spare     []int   `json:"spare"`
	Laid      []int   `json:"laid"`
	Gaps      []int   `json:"in_gaps"`
	Left      []int   `json:"left"`
	Short     int     `json:"short"`
	Headers   int     `json:"headers"`
	Want      int     `json:"spares_wanted"`
}

type jsonWall struct {
	Wall    string              `json:"wall"`
	Begin   int                 `json:"begin"`
	Show    int                 `json:"show"`
	Seams   int                 `json:"seams"`
	Area    report.SquareMetres `json:"area"`
	Numbers []int               `json:"numbers"`
}

type jsonStock struct {
	Length  report.MM `json:"length"`
	Sheets  int       `json:"sheets"`
	Numbers []int     `json:"numbers"`
}

type jsonMargins struct {
	Narrower *jsonNarrower `json:"narrower"`
	Shorter  jsonShorter   `json:"shorter"`
	Lost     *jsonLost     `json:"lost"`
}

type jsonNarrower struct {
	Holds  report.MM `json:"holds_down_to"`
	Margin report.MM `json:"margin"`
	Next   string    `json:"next"`
}

type jsonShorter struct {
	Longest report.MM `json:"longest_cut"`
	Sheet   *int      `json:"sheet"`
	Margin  report.MM `json:"margin"`
	Figure  report.MM `json:"figure_margin"`
}

type jsonLost struct {
	Left   int `json:"spares_kept"`
	Spares int `json:"spares_laid"`
}

type jsonSaving struct {
	By      report.MM `json:"by"`
	Change  string    `json:"change"`
	Sheets  int       `json:"sheets"`
	Courses int       `json:"walls_in_fewer_courses"`
	Narrow  int       `json:"narrow_on_main"`
	Musts   int       `json:"musts"`
	Saves   string    `json:"saves"`
}

type jsonRegister struct {
	Flitch  *string    `json:"flitch"`
	Course  int        `json:"course"`
	Turned  bool       `json:"turned"`
	From    string     `json:"from_raw"`
	Mark    *report.MM `json:"mark"`
	Over    *report.MM `json:"over_level"`
	Need    report.MM  `json:"need"`
	Highest *int       `json:"highest"`
	Lowest  *int       `json:"lowest"`
}

type jsonAreas struct {
	Gross     report.SquareMetres `json:"gross"`
	Parts     []jsonPart          `json:"parts"`
	Delivered report.SquareMetres `json:"delivered"`
	StockEnds report.SquareMetres `json:"stock_ends"`
}

type jsonPart struct {
	Part string              `json:"part"`
	Area report.SquareMetres `json:"area"`
}

type jsonAmount struct {
	Amount float64 `json:"amount"`
	Unit   string  `json:"unit"`
	Pails  []Pail  `json:"pails"`
}

type jsonMaterial struct {
	Paste     *jsonAmount         `json:"paste"`
	PasteOn   report.SquareMetres `json:"paste_area"`
	Primer    *jsonAmount         `json:"primer"`
	PrimerOn  report.SquareMetres `json:"primer_area"`
	Ends      []jsonEnd           `json:"ends"`
	Extenders []jsonExtender      `json:"extenders"`
	Strip     jsonStrip           `json:"cutting_strip"`
	Blades    jsonBlades          `json:"blades"`
	Alarms    int                 `json:"alarms"`
}

type jsonEnd struct {
	Kind    string    `json:"kind"`
	Takes   *string   `json:"takes"`
	Count   int       `json:"count"`
	Length  report.MM `json:"length"`
	Longest report.MM `json:"longest"`
}

type jsonExtender struct {
	Gang  int `json:"gang"`
	Count int `json:"count"`
}

type jsonStrip struct {
	Count  int       `json:"count"`
	Length report.MM `json:"length"`
}

type jsonBlades struct {
	Seams   int `json:"seams"`
	Matches int `json:"end_matches"`
	Edges   int `json:"opening_edges"`
	Total   int `json:"total"`
}

type jsonLine struct {
	Item     string  `json:"item"`
	Quantity *string `json:"quantity"`
	From     *string `json:"from"`
	Sheets   int     `json:"sheets"`
	Why      string  `json:"why"`
}

type jsonKept struct {
	Part   string    `json:"part"`
	Flitch *string   `json:"flitch"`
	Number *int      `json:"number"`
	Width  report.MM `json:"width"`
	Length report.MM `json:"length"`
}

type jsonCut struct {
	Flitch     *string    `json:"flitch"`
	Number     *int       `json:"number"`
	Place      int        `json:"place"`
	Course     int        `json:"course"`
	Run        string     `json:"run"`
	Walls      []string   `json:"walls"`
	CutLength  report.MM  `json:"cut_length"`
	Above      report.MM  `json:"above"`
	Below      report.MM  `json:"below"`
	TopTrim    report.MM  `json:"top_trim"`
	BottomTrim report.MM  `json:"bottom_trim"`
	Net        report.MM  `json:"net_width"`
	Width      report.MM  `json:"width"`
	Ripped     *string    `json:"ripped"`
	LeftTrim   report.MM  `json:"left_trim"`
	RightTrim  report.MM  `json:"right_trim"`
	Edge       string     `json:"across_from"`
	Bends      []jsonBend `json:"bends"`
	Holes      []jsonHole `json:"cut_outs"`
	Askew      report.MM  `json:"askew"`
	Turned     bool       `json:"turned"`
	Hung       bool       `json:"hung"`
	Narrow     bool       `json:"narrow"`
	Level      bool       `json:"grain_level"`
	Line       report.MM  `json:"marked_over_level"`
	Over       *string    `json:"over"`
	HeaderOnly bool       `json:"header_only"`
}

type jsonBend struct {
	Name string    `json:"name"`
	At   report.MM `json:"at"` // at the level line
	Foot report.MM `json:"at_foot"`
	Head report.MM `json:"at_head"`
}

type jsonHole struct {
	Kind string    `json:"kind"`
	Name string    `json:"name"`
	Cut  string    `json:"edges_of"`
	From report.MM `json:"from"`
	To   report.MM `json:"to"`
	Low  report.MM `json:"low"`
	High report.MM `json:"high"`
}

type jsonJob struct {
	Rooms     int                 `json:"rooms"`
	Broken    int                 `json:"must_broken"`
	Delivered int                 `json:"delivered"`
	Damaged   int                 `json:"damaged"`
	Spare     int                 `json:"spare"`
	Laid      int                 `json:"laid"`
	Headers   int                 `json:"headers"`
	Gaps      int                 `json:"in_gaps"`
	Left      int                 `json:"left"`
	Short     int                 `json:"short"`
	Want      int                 `json:"spares_wanted"`
	Order     int                 `json:"to_order"`
	Lengths   []jsonStock         `json:"lengths"`
	Gross     report.SquareMetres `json:"gross"`
	Parts     []jsonPart          `json:"parts"`
	PasteOn   report.SquareMetres `json:"paste_area"`
	PrimerOn  report.SquareMetres `json:"primer_area"`
	Paste     []jsonAmount        `json:"paste"`
	Primer    []jsonAmount        `json:"primer"`
	Ends      []jsonEnd           `json:"ends"`
	Extenders []jsonExtender      `json:"extenders"`
	Strip     jsonStrip           `json:"cutting_strip"`
	Blades    jsonBlades          `json:"blades"`
	Alarms    int                 `json:"alarms"`
	Twice     []string            `json:"laid_twice"`
}
