package tally

import (
	"math/big"
	"strings"

	"flitchlay/internal/report"
)

// jsonJob is what only the job as a whole knows, as JSON has it.
type jsonJob struct {
	Title    *string      `json:"title"`
	Number   *string      `json:"number"`
	Flitches []jsonFlitch `json:"flitches"`
	Rooms    []jsonRoom   `json:"rooms"`
	Minutes  int          `json:"minutes"`
	Price    *jsonPrice   `json:"price"`
}

type jsonFlitch struct {
	Number    *string    `json:"flitch"`
	Delivered []int      `json:"delivered"`
	Laid      []jsonLaid `json:"laid"`
	Gaps      []int      `json:"in_gaps"`
	Damaged   []int      `json:"damaged"`
	Spare     []int      `json:"spare"`
	Left      []int      `json:"left"`
	Short     int        `json:"short"`
	Want      int        `json:"spares_wanted"`
	Order     int        `json:"to_order"`
}

type jsonLaid struct {
	Room   string `json:"room"`
	Sheets []int  `json:"sheets"`
}

type jsonRoom struct {
	Room    string              `json:"room"`
	Title   string              `json:"title"`
	Sheets  int                 `json:"sheets"`
	Short   int                 `json:"short"`
	Net     report.SquareMetres `json:"covering"`
	Minutes int                 `json:"minutes"`
	Days    int                 `json:"days"`
	Broken  bool                `json:"must_broken"`
}

type jsonPrice struct {
	Currency *string      `json:"currency"`
	Lines    []jsonPriced `json:"lines"`
	Sum      money        `json:"sum"`
	Without  []string     `json:"without_price"`
}

type jsonPriced struct {
	Item     string `json:"item"`
	Quantity money  `json:"quantity"`
	Of       string `json:"of"`
	Price    money  `json:"price"`
	Amount   money  `json:"amount"`
}

// money is a number to two decimals, as it is printed.
type money struct{ *big.Rat }

// MarshalJSON writes the number.
func (m money) MarshalJSON() ([]byte, error) { return []byte(m.FloatString(2)), nil }

// object is what the job knows beside the sums.
func (t *Job) object() *jsonJob {
	out := &jsonJob{Title: report.Null(t.job.Title), Number: report.Null(t.job.Number), Minutes: t.minutes, Price: t.priceObject()}
	stocks := t.stocks()
	out.Flitches = report.Each(stocks, func(s *stock) jsonFlitch {
		laid := report.Each(s.rooms, func(r *roomSheets) jsonLaid { return jsonLaid{r.room, r.numbers} })
		return jsonFlitch{report.Null(s.number), report.List(s.delivered), laid, report.List(s.gaps), report.List(s.damaged), report.List(s.spare),
			report.List(s.left), s.short, s.want, s.order}
	})
	out.Rooms = report.Each(t.rooms, func(r *roomLine) jsonRoom {
		return jsonRoom{r.name, r.title, r.sheets, r.short, report.Metres(r.net), r.minutes, r.days, r.broken}
	})
	return out
}

func (t *Job) priceObject() *jsonPrice {
	lines, missing := t.priced()
	if len(lines) == 0 {
		return nil
	}
	out := &jsonPrice{Currency: report.Null(strings.TrimSpace(t.job.Currency)), Sum: money{new(big.Rat)}, Without: report.List(missing)}
	for _, l := range lines {
		out.Lines = append(out.Lines, jsonPriced{l.item, money{l.quantity}, l.unit, money{l.price}, money{l.amount}})
		out.Sum.Add(out.Sum.Rat, l.amount)
	}
	return out
}
