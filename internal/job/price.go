package job

import (
	"math/big"

	"flitchlay/internal/source"
)

// Price is what one of a thing costs.
type Price struct {
	Key, Doc string
	Given    bool
	Of       *big.Rat
}

// priced are the keys of [price] that take what one of a thing costs, in the order of the count.
var priced = []Price{
	{Key: "sheet", Doc: "a sheet of veneer, of those delivered and those to order"},
	{Key: "pail", Doc: "a pail of paste, of 5 gal or 10 L"},
	{Key: "primer_pail", Doc: "a pail of primer, of 5 gal or 10 L"},
	{Key: "hour", Doc: "an hour of the crew, as [day] reckons it"},
	{Key: "bead", Doc: "a foot of end bead, or a metre in a metric job"},
	{Key: "trim", Doc: "a foot of edge trim, or a metre in a metric job"},
	{Key: "strip", Doc: "a foot of cutting strip, or a metre in a metric job"},
	{Key: "blade", Doc: "a blade"},
}

func priceKeys() []source.Key {
	list := []source.Key{{Name: "currency", Kind: "text", Doc: "of all prices", Like: `"USD"`}}
	for _, p := range priced {
		list = append(list, source.Key{Name: p.Key, Kind: "number", Default: "it has no price", Doc: p.Doc, Like: "3.50"})
	}
	return list
}

// prices reads [price].
func prices(v source.Value) (currency string, list []Price) {
	for _, p := range priced {
		at := v.Get(p.Key)
		at.Number(0)
		if p.Of, p.Given = at.Exact(); p.Given && p.Of.Sign() < 0 {
			at.Mistake("write 0 for what costs nothing", "a price is less than 0")
		}
		list = append(list, p)
	}
	return v.Get("currency").Text(""), list
}
