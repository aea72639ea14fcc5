package paper

import (
	"slices"
	"strconv"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// Sizes of the papers and ISO frames, in mm.
//
// Source: ISO 216; ASME Y14.1 (A 11 x 8.5 in, B 17 x 11, D 34 x 22); ARCH series (C 24 x 18, D 36 x 24); drawing spaces
// of ISO 5457:1999 (A1 811 x 574, A3 390 x 277, A4 180 x 277).
func TestPapersAreExact(t *testing.T) {
	cases := []struct {
		name          string
		width, height float64
		frame         string // of ISO sizes: width x height of the drawing space
	}{
		{"ansi-a", 8.5 * 25.4, 11 * 25.4, ""},
		{"ansi-b", 17 * 25.4, 11 * 25.4, ""},
		{"ansi-d", 34 * 25.4, 22 * 25.4, ""},
		{"arch-c", 24 * 25.4, 18 * 25.4, ""},
		{"arch-d", 36 * 25.4, 24 * 25.4, ""},
		{"a1", 841, 594, "811 x 574"},
		{"a3", 420, 297, "390 x 277"},
		{"a4", 210, 297, "180 x 277"},
	}
	var names []string
	for _, c := range cases {
		names = append(names, c.name)
		t.Run(c.name, func(t *testing.T) {
			p, err := Named(c.name)
			require.NoError(t, err)
			assert.InDelta(t, c.width, p.Width, 1e-9)
			assert.InDelta(t, c.height, p.Height, 1e-9)
			if c.frame != "" {
				assert.Equal(t, c.frame, figure(p.Frame.W)+" x "+figure(p.Frame.H))
				assert.Equal(t, 20.0, p.Frame.X, "20 mm to file by")
			}
			stamps := 0
			for _, b := range p.Blocks {
				if b.Kind == Stamp {
					stamps++
				}
			}
			assert.Equal(t, 2, stamps, "one for the hanger, one for the reviewer")
			assert.Equal(t, "Z", p.Discipline, "contractor's drawings in the National CAD Standard")
		})
	}
	assert.ElementsMatch(t, names, Names())
}

func TestTheOfficePageIsAsDrawn(t *testing.T) {
	p, err := Named("ansi-b")
	require.NoError(t, err)
	assert.Equal(t, Box{20, 10, 401.8, 259.4}, rounded(p.Frame))
	assert.Equal(t, Box{20, 10, 401.8, 215.4}, rounded(p.Field))
	assert.Equal(t, 1.0, p.Unit())
	i := slices.IndexFunc(p.Blocks, func(b Block) bool { return b.Kind == Title })
	require.NotEqual(t, -1, i)
	title := p.Blocks[i]
	assert.Len(t, title.Rows, 4)
	assert.Equal(t, []Line{{"{by}", 3.5, true}}, title.Rows[0].Lines)
}

// A set that is halved has to read: text and lines of the page that halves to ANSI B are larger.
func TestThePageThatIsHalvedIsLetteredLarger(t *testing.T) {
	b, err := Named("ansi-b")
	require.NoError(t, err)
	d, err := Named("ansi-d")
	require.NoError(t, err)
	assert.InDelta(t, 2*b.Width, d.Width, 1e-9, "ANSI D halves to ANSI B")
	assert.Equal(t, 3.5, d.Text.Small, "3.5 where it will be reduced (EN ISO practice)")
}

func rounded(b Box) Box {
	r := func(v float64) float64 { return float64(int64(v*1000+0.5)) / 1000 }
	return Box{r(b.X), r(b.Y), r(b.W), r(b.H)}
}

const small = `[paper]
name = "ours"
width = "17 in"
height = "11 in"
[strip]
box = [20, 225.4, 401.8, 44]
[[strip.block]]
kind = "title"
box = [306, 225.4, 115.8, 44]
[[strip.block.row]]
height = 9
line = [{ text = "{by}" }]
`

func TestASmallTemplateTakesTheRestFromDefaults(t *testing.T) {
	p, err := Decode("ours.toml", []byte(small))
	require.NoError(t, err)
	b, err := Named("ansi-b")
	require.NoError(t, err)
	assert.Equal(t, b.Frame, p.Frame)
	assert.Equal(t, b.Lines, p.Lines)
	assert.InDelta(t, b.Elevation.Width, p.Elevation.Width, 0.1)
	assert.InDelta(t, b.Elevation.Height, p.Elevation.Height, 0.1)
	assert.InDelta(t, b.Elevation.Top, p.Elevation.Top, 0.1)
}

// What a key usually is stands in Schema alone: each text there says a value, and a file that spells all of them out is the
// template without them.
func TestWhatAKeyUsuallyIsStandsInSchema(t *testing.T) {
	text, in := small, map[string]string{"": "", "paper": "", "strip": "", "strip.block": "", "strip.block.row": ""}
	for _, table := range Schema {
		given, known := in[table.Path]
		if table.Path == "strip.block.row.line" {
			continue // an inline table here
		}
		for _, k := range table.Keys {
			value := k.Default
			if value == "" {
				continue
			}
			if k.Kind == "text" || k.Kind == "word" {
				value = strconv.Quote(value)
			}
			given += k.Name + " = " + value + "\n"
		}
		head := "[" + table.Path + "]\n"
		if table.Many {
			head = "[" + head[:len(head)-1] + "]\n"
		}
		if known {
			text = strings.Replace(text, head, head+given, 1)
		} else {
			text += head + given
		}
	}
	text = strings.Replace(text, `"{by}"`, `"{by}", height = 2.5, bold = false`, 1)
	spelled, err := Decode("spelled.toml", []byte(text))
	require.NoError(t, err, text)
	without, err := Decode("small.toml", []byte(small))
	require.NoError(t, err)
	assert.Equal(t, without, spelled, text)
}

func TestMistakesStandWhereTheyAreMade(t *testing.T) {
	cases := []struct{ why, old, new, message string }{
		{"a key typed wrong", "width =", "widht =", `ours.toml:3:1: unknown key widht in [paper]`},
		{"a length that is none", `"17 in"`, `"wide"`, `ours.toml:3:9: "wide" is no length`},
		{"a strip out of the frame", "401.8, 44]\n[[", "420, 44]\n[[", `ours.toml:6:7: the strip reaches past the frame`},
		{"a block out of the strip", "115.8, 44]", "115.8, 60]", `ours.toml:9:7: the block reaches past the strip`},
		{"a field that is not known", "{by}", "{buy}", `ours.toml:12:18: unknown field {buy}`},
		{"a brace left open", "{by}", "{by", `ours.toml:12:18: a brace without its partner`},
		{"a kind that is not known", `"title"`, `"titel"`, `ours.toml:8:8: kind "titel" is not known`},
		{"text too small to read", "[strip]", "[text]\nsmall = 2\n[strip]", `ours.toml:6:9: 2 mm is out of bounds here`},
		{"a stamp too small", `kind = "title"`, "kind = \"stamp\"\nbox = [20, 225.4, 60, 44]\nheading = \"OURS\"\n[[strip.block]]\nkind = \"title\"",
			`ours.toml:9:7: a stamp needs 70 x 30 mm clear, here are 58 x 35.75`},
		{"rows higher than their block", "height = 9", "height = 50", `ours.toml:9:7: the rows are 50 mm high together, the block is 44`},
		{"a discipline that is none", "[strip]", "[number]\ndiscipline = \"Z2\"\n[strip]", `ours.toml:6:14: "Z2" is no discipline`},
		{"a page number without its count", "[strip]", "[number]\nstyle = \"{discipline}{kind}\"\n[strip]", `ours.toml:6:9: without {count} two pages would have one number`},
		{"a page number that is no file name", "[strip]", "[number]\nstyle = \"{kind}/{count}\"\n[strip]", `ours.toml:6:9: "/" cannot stand in a page number`},
		{"a page number with a kind too many", "[strip]", "[number]\nstyle = \"{kind}{kind}{count}\"\n[strip]", `ours.toml:6:9: {kind} stands twice`},
		{"scales out of order", "[strip]", "[elevation]\ninch = [24, 16]\n[strip]", `ours.toml:6:13: scales go from the largest`},
	}
	for _, c := range cases {
		t.Run(c.why, func(t *testing.T) {
			text := strings.Replace(small, c.old, c.new, 1)
			require.NotEqual(t, small, text, "the case changes the file")
			_, err := Decode("ours.toml", []byte(text))
			require.Error(t, err)
			assert.Contains(t, err.Error(), c.message)
		})
	}
}

func TestNamedNamesTheNearest(t *testing.T) {
	_, err := Named("ansi-bb")
	assert.EqualError(t, err, `no page template "ansi-bb"; the nearest is ansi-b`)
}

func TestFillLeavesOutWhatIsNotGiven(t *testing.T) {
	cases := []struct {
		why, text string
		values    map[string]string
		want      string
	}{
		{"all given", "{number} | for {for} | {tag}", map[string]string{"number": "HL-207", "for": "Osprey & Vane", "tag": "WD-1"}, "HL-207   for Osprey & Vane   WD-1"},
		{"a word of a part goes with its field", "{number} | for {for}", map[string]string{"number": "HL-207"}, "HL-207"},
		{"a part without fields stays", "scale as noted | {tag}", nil, "scale as noted"},
		{"nothing given", "{number} | {tag}", nil, ""},
		{"braces in a value are no fields", "{title}", map[string]string{"title": "{by}"}, "{by}"},
	}
	for _, c := range cases {
		t.Run(c.why, func(t *testing.T) {
			assert.Equal(t, c.want, Fill(c.text, c.values))
		})
	}
}

// An office numbers its pages as it likes; without a style of its own the numbers are those of the standard.
//
// Source: sheet numbers of the US National CAD Standard: A-201, AD201.
func TestPageNumbersTakeTheOfficesStyle(t *testing.T) {
	for _, c := range []struct{ discipline, style, want string }{
		{"A", "", "A-201"}, {"AD", "", "AD201"}, {"Z", "{discipline}{kind}.{count}", "Z2.01"}, {"Z", "WV_{kind}-{count}", "WV_2-01"},
	} {
		p := Template{Discipline: c.discipline, NumberStyle: c.style}
		assert.Equal(t, c.want, p.PageNumber(2, 1))
	}
	text := strings.Replace(small, "[strip]", "[number]\nstyle = \"{discipline}{kind}.{count}\"\n[strip]", 1)
	p, err := Decode("ours.toml", []byte(text))
	require.NoError(t, err)
	assert.Equal(t, "Z6.12", p.PageNumber(6, 12))
}
