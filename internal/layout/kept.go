package layout

// KeptFormat is the name and the edition of the form that a layout is kept in.
const KeptFormat = "flitchlay-layout/1"

// Kept is a layout as JSON keeps it, field by field in the order of the file.
type Kept struct {
	Format    string         `json:"format"`
	Unit      string         `json:"unit"`
	Aim       string         `json:"aim"`
	Title     string         `json:"title"`
	Runs      []KeptRun      `json:"runs"`
	Registers []KeptRegister `json:"registers"`
	Findings  []KeptFinding  `json:"findings"`
	Totals    KeptTotals     `json:"totals"`
	Readings  []KeptReading  `json:"readings,omitempty"` // only where walls were read
}

// KeptReading is what comes of a wall that was read on arrival, as kept.
type KeptReading struct {
	Wall   string       `json:"wall"`
	Read   bool         `json:"read"`
	Word   string       `json:"word"`
	Lines  []KeptStruck `json:"lines"`
	CutOff MM           `json:"cut_further_right"`
	Short  []KeptLack   `json:"short"`
	Broken []string     `json:"broken"`
}

// KeptStruck is a line that is struck from another figure than planned, as kept.
type KeptStruck struct {
	Sheet   string `json:"sheet"`
	Askew   bool   `json:"askew"`
	Planned MM     `json:"planned"`
	Now     MM     `json:"now"`
}

// KeptLack is a sheet that does not reach, as kept.
type KeptLack struct {
	Sheet string `json:"sheet"`
	Side  string `json:"side"`
	By    MM     `json:"by"`
}

// KeptRegister is a register as kept: how far from which raw end the level mark is on every sheet, or where the level line comes to
// none of them, how high over it the raw end hangs.
type KeptRegister struct {
	Flitch  *string `json:"flitch"`
	Course  int     `json:"course"`
	Turned  bool    `json:"turned"`
	From    string  `json:"from_raw"`
	Mark    *MM     `json:"mark"`
	Over    *MM     `json:"over_level"`
	Need    MM      `json:"need"`
	Highest *int    `json:"highest"`
	Lowest  *int    `json:"lowest"`
}

// KeptRun is a run as kept.
type KeptRun struct {
	Name     string        `json:"name"`
	Axis     string        `json:"axis"`
	Length   MM            `json:"length"`
	Closed   bool          `json:"closed"`
	Walls    []KeptWall    `json:"walls"`
	Corners  []KeptCorner  `json:"corners"`
	Openings []KeptOpening `json:"openings"`
	Spans    []KeptSpan    `json:"spans"`
	Seams    []KeptSeam    `json:"seams"`
	Sheets   []KeptSheet   `json:"sheets"`
}

// KeptWall is a wall's place in a run as kept.
type KeptWall struct {
	Name  string `json:"name"`
	Left  MM     `json:"left"`
	Right MM     `json:"right"`
}

// KeptCorner is a wrapped corner as kept.
type KeptCorner struct {
	Name        string `json:"name"`
	Kind        string `json:"kind"`
	Angle       Plain  `json:"angle"`
	At          MM     `json:"at"`
	Lean        MM     `json:"lean"`
	LeftReturn  MM     `json:"left_return"`
	RightReturn MM     `json:"right_return"`
}

// KeptOpening is an opening as kept.
type KeptOpening struct {
	Name  string `json:"name"`
	Wall  string `json:"wall"`
	Kind  string `json:"kind"`
	Left  MM     `json:"left"`
	Right MM     `json:"right"`
	Sill  MM     `json:"sill"`
	Head  MM     `json:"head"`
}

// KeptSpan is a span as kept.
type KeptSpan struct {
	Left  MM        `json:"left"`
	Right MM        `json:"right"`
	Score KeptScore `json:"score"`
}

// KeptScore is a span's score as kept, the weightiest first.
type KeptScore struct {
	Bends      MM      `json:"bends"`
	Edges      MM      `json:"edges"`
	Closing    int64   `json:"closing"`
	NarrowMain int64   `json:"narrow_main"`
	Narrow     int64   `json:"narrow"`
	Sheets     int64   `json:"sheets"`
	NarrowJump int64   `json:"narrow_jump"`
	Sliver     MM      `json:"sliver"`
	Jump       int64   `json:"jump"`
	Should     MM      `json:"should"`
	Seen       int64   `json:"seen"`
	Difference MM      `json:"difference"`
	Unevenness Squares `json:"unevenness"`
}

// KeptSeam is a seam as kept.
type KeptSeam struct {
	At             MM        `json:"at"`
	PlumbLine      MM        `json:"plumb_line"`
	Wall           string    `json:"wall"`
	X              MM        `json:"from_wall_left"`
	LeftSheet      int       `json:"left_sheet"`
	RightSheet     int       `json:"right_sheet"`
	Closing        bool      `json:"closing"`
	Seen           MM        `json:"seen"`
	NearestOpening *KeptNear `json:"nearest_opening"`
	NearestCorner  *KeptNear `json:"nearest_corner"`
	MayBeOff       *KeptPlay `json:"may_be_off"`
}

// KeptPlay is how far the line of a seam may be off to either side, as kept; null where no must is near, and of a seam that hangs.
type KeptPlay struct {
	Left  *KeptLimit `json:"left"`
	Right *KeptLimit `json:"right"`
}

// KeptLimit is how far a line may be off to one side as kept, and what it breaks beyond: which must, what asks for it, or the place
// of the sheet of which it is asked.
type KeptLimit struct {
	By    MM      `json:"by"`
	Must  string  `json:"must"`
	At    *string `json:"at"`
	Place *int    `json:"place"`
}

// KeptNear is an object and its distance as kept.
type KeptNear struct {
	Name     string `json:"name"`
	Distance MM     `json:"distance"`
}

// KeptSheet is a sheet as kept.
type KeptSheet struct {
	Place     int          `json:"place"`
	Flitch    *string      `json:"flitch"`
	Number    *int         `json:"number"`
	Course    int          `json:"course"`
	Turned    bool         `json:"turned"`
	Left      MM           `json:"left"`
	Right     MM           `json:"right"`
	Width     MM           `json:"width"`
	Gross     MM           `json:"gross_width"`
	Narrow    bool         `json:"narrow"`
	Ripped    *string      `json:"ripped"`
	CutLength MM           `json:"cut_length"`
	Above     MM           `json:"above"`
	Below     MM           `json:"below"`
	Bends     []MM         `json:"bends"`
	Area      SquareMetres `json:"area"`
	Pieces    []KeptPiece  `json:"pieces"`
}

// KeptPiece is the part of a sheet on one wall as kept.
type KeptPiece struct {
	Wall    string        `json:"wall"`
	Outline []KeptPoint   `json:"outline"`
	Holes   [][]KeptPoint `json:"holes"`
	Area    SquareMetres  `json:"area"`
}

// KeptFinding is a finding as kept.
type KeptFinding struct {
	Code     string `json:"code"`
	Level    string `json:"level"`
	Place    string `json:"place"`
	Measured *MM    `json:"measured"`
	Required *MM    `json:"required"`
	Message  string `json:"message"`
	Line     int    `json:"line,omitempty"`   // of the room file, of what is asked
	Answer   string `json:"answer,omitempty"` // what [room] answered takes
}

// KeptTotals are the counts of the room as kept.
type KeptTotals struct {
	Sheets    int          `json:"sheets"`
	Spares    int          `json:"spares"`
	NetArea   SquareMetres `json:"net_area"`
	GrossArea SquareMetres `json:"gross_area"`
	Paste     *KeptAmount  `json:"paste"`
	Primer    *KeptAmount  `json:"primer"`
}

// KeptAmount is a volume as kept.
type KeptAmount struct {
	Amount Plain  `json:"amount"`
	Unit   string `json:"unit"`
}
