package length

import (
	"fmt"
	"math/big"
	"strings"
	"unicode/utf8"
)

// glyphs are fractions that stand as one character.
var glyphs = map[rune][2]int64{
	'½': {1, 2}, '⅓': {1, 3}, '⅔': {2, 3}, '¼': {1, 4}, '¾': {3, 4}, '⅛': {1, 8}, '⅜': {3, 8}, '⅝': {5, 8}, '⅞': {7, 8},
}

// superscripts are digits that stand in the top or foot of a typed fraction such as ¹⁵⁄₁₆.
var superscripts = strings.NewReplacer(
	"⁰", "0", "¹", "1", "²", "2", "³", "3", "⁴", "4", "⁵", "5", "⁶", "6", "⁷", "7", "⁸", "8", "⁹", "9",
	"₀", "0", "₁", "1", "₂", "2", "₃", "3", "₄", "4", "₅", "5", "₆", "6", "₇", "7", "₈", "8", "₉", "9", "⁄", "/")

// Parse reads a length as people write it: 12' 6 3/8, 12'-6 3/8", 12ft 6-3/8in, 6 3/8 in, 3810 mm, 3.81 m, 24 1/2,
// with prime marks, with glyphs for fractions, with a sign before. A figure without a unit is in unit, but after feet
// it is inches.
//
// Errors: one sentence for the person who typed it, without the text itself.
func Parse(text string, unit Unit) (Length, error) {
	p := reader{rest: normal(text)}
	if p.rest == "" {
		return 0, fmt.Errorf("an empty text is no length")
	}
	neg := p.sign()
	total, err := p.sum(unit)
	if err != nil {
		return 0, err
	}
	if neg {
		total.Neg(total)
	}
	l, ok := FromRat(total, 1)
	if !ok {
		return 0, fmt.Errorf("longer than 370 m")
	}
	return l, nil
}

// marks are the many ways of typing one mark, two primes before one.
var marks = strings.NewReplacer("′′", "\"", "''", "\"", "’’", "\"", "″", "\"", "”", "\"", "′", "'", "’", "'",
	"–", "-", "−", "-", "\u00a0", " ", "\u2009", " ", "\u202f", " ", "\t", " ")

// normal brings the many ways of typing one mark to one.
func normal(text string) string {
	text = marks.Replace(strings.ToLower(strings.TrimSpace(text)))
	if strings.ContainsAny(text, "⁄/") {
		text = typedFraction(text)
	}
	return text
}

// typedFraction puts a space before a raised numerator (6¹⁵⁄₁₆), then lowers all digits.
func typedFraction(text string) string {
	var b strings.Builder
	last := ' '
	for _, r := range text {
		if strings.ContainsRune("⁰¹²³⁴⁵⁶⁷⁸⁹", r) && last >= '0' && last <= '9' {
			b.WriteByte(' ')
		}
		b.WriteRune(r)
		last = r
	}
	return superscripts.Replace(b.String())
}

// reader takes a length apart from left to right.
type reader struct{ rest string }

func (p *reader) spaces() { p.rest = strings.TrimLeft(p.rest, " ") }

func (p *reader) sign() bool {
	switch {
	case strings.HasPrefix(p.rest, "-"):
		p.rest = p.rest[1:]
	case strings.HasPrefix(p.rest, "+"):
		p.rest = p.rest[1:]
		p.spaces()
		return false
	default:
		return false
	}
	p.spaces()
	return true
}

// sum reads feet, then inches; or one figure in another unit. The answer is in 1/8 micrometre.
func (p *reader) sum(unit Unit) (*big.Rat, error) {
	first, err := p.number()
	if err != nil {
		return nil, err
	}
	of, named := p.unit()
	if !named {
		of = unit.Of()
	}
	total := new(big.Rat).Mul(first, rat(of))
	p.spaces()
	if p.rest == "" {
		return total, nil
	}
	if of != Foot {
		return nil, fmt.Errorf("%q is left over after the length", p.rest)
	}
	if strings.HasPrefix(p.rest, "-") {
		p.rest = p.rest[1:]
		p.spaces()
	}
	inches, err := p.number()
	if err != nil {
		return nil, err
	}
	if of, named = p.unit(); named && of != Inch {
		return nil, fmt.Errorf("after feet only inches can follow")
	}
	if inches.Cmp(new(big.Rat).SetInt64(12)) >= 0 {
		return nil, fmt.Errorf("12 or more inches after feet")
	}
	p.spaces()
	if p.rest != "" {
		return nil, fmt.Errorf("%q is left over after the length", p.rest)
	}
	return total.Add(total, new(big.Rat).Mul(inches, rat(Inch))), nil
}

func rat(l Length) *big.Rat { return new(big.Rat).SetInt64(int64(l)) }

// unit reads the name or mark of a unit, if one stands there.
func (p *reader) unit() (Length, bool) {
	p.spaces()
	for _, u := range []struct {
		name string
		of   Length
	}{
		{"'", Foot}, {"\"", Inch}, {"feet", Foot}, {"foot", Foot}, {"ft", Foot}, {"inches", Inch}, {"inch", Inch},
		{"in", Inch}, {"mm", Millimetre}, {"cm", 10 * Millimetre}, {"m", Metre},
	} {
		tail, ok := strings.CutPrefix(p.rest, u.name)
		if !ok {
			continue
		}
		if next, _ := utf8.DecodeRuneInString(tail); isLetter(u.name) && isLetter(string(next)) {
			continue
		}
		if isLetter(u.name) {
			tail = strings.TrimPrefix(tail, ".")
		}
		p.rest = tail
		return u.of, true
	}
	return 0, false
}

func isLetter(s string) bool {
	r, _ := utf8.DecodeRuneInString(s)
	return r >= 'a' && r <= 'z' || r >= 'A' && r <= 'Z' || r > 127 && r != utf8.RuneError
}

// number reads 12, 12.5, 3/8, 6 3/8, 6-3/8, 6⅜, ⅜.
func (p *reader) number() (*big.Rat, error) {
	if r, ok := p.glyph(); ok {
		return r, nil
	}
	whole, err := p.decimal()
	if err != nil {
		return nil, err
	}
	if r, ok := p.glyph(); ok {
		return p.add(whole, r)
	}
	if strings.HasPrefix(p.rest, "/") {
		return p.fraction(whole)
	}
	// a fraction behind a blank or a hyphen, if one stands there: 6 3/8, 6-3/8
	ahead := reader{rest: p.rest}
	ahead.spaces()
	ahead.rest = strings.TrimPrefix(ahead.rest, "-")
	ahead.spaces()
	if r, ok := ahead.glyph(); ok {
		p.rest = ahead.rest
		return p.add(whole, r)
	}
	top, err := ahead.decimal()
	if err != nil || !strings.HasPrefix(ahead.rest, "/") {
		return whole, nil
	}
	part, err := ahead.fraction(top)
	if err != nil {
		return nil, err
	}
	p.rest = ahead.rest
	return p.add(whole, part)
}

func (p *reader) add(whole, part *big.Rat) (*big.Rat, error) {
	if !whole.IsInt() {
		return nil, fmt.Errorf("a decimal and a fraction in one figure")
	}
	if part.Cmp(big.NewRat(1, 1)) >= 0 {
		return nil, fmt.Errorf("the fraction %s behind a whole number is not less than one", part.RatString())
	}
	return new(big.Rat).Add(whole, part), nil
}

func (p *reader) fraction(top *big.Rat) (*big.Rat, error) {
	p.rest = p.rest[1:]
	foot, err := p.decimal()
	if err != nil {
		return nil, fmt.Errorf("a fraction without its lower figure")
	}
	if !top.IsInt() || !foot.IsInt() {
		return nil, fmt.Errorf("a fraction is made of whole numbers")
	}
	if foot.Sign() == 0 {
		return nil, fmt.Errorf("a fraction over 0")
	}
	return new(big.Rat).Quo(top, foot), nil
}

func (p *reader) glyph() (*big.Rat, bool) {
	r, n := utf8.DecodeRuneInString(p.rest)
	f, ok := glyphs[r]
	if !ok {
		return nil, false
	}
	p.rest = p.rest[n:]
	return big.NewRat(f[0], f[1]), true
}

// decimal reads digits with at most one point. A comma is a decimal mark too (ISO 129-1), except where it could as
// well part thousands.
func (p *reader) decimal() (*big.Rat, error) {
	end, mark := 0, -1
	for end < len(p.rest) {
		c := p.rest[end]
		if (c == '.' || c == ',') && mark < 0 {
			mark = end
		} else if c < '0' || c > '9' {
			break
		}
		end++
	}
	text := p.rest[:end]
	if mark == end-1 && end > 0 { // "12." ends a sentence, not a figure
		text, mark = text[:end-1], -1
		end--
	}
	if end == 0 || text == "" {
		if p.rest == "" {
			return nil, fmt.Errorf("a figure is missing at the end")
		}
		return nil, fmt.Errorf("no figure at %q", p.rest)
	}
	if len(text) > 40 {
		return nil, fmt.Errorf("a figure of more than 40 digits")
	}
	if mark > 0 && text[mark] == ',' && len(text)-mark-1 == 3 {
		return nil, fmt.Errorf("%q can be read in two ways: write %s or %s", text,
			strings.Replace(text, ",", "", 1), strings.Replace(text, ",", ".", 1))
	}
	r, ok := new(big.Rat).SetString(strings.Replace(text, ",", ".", 1))
	if !ok {
		return nil, fmt.Errorf("no figure at %q", p.rest)
	}
	p.rest = p.rest[end:]
	return r, nil
}
