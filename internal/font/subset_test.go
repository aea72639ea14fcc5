package font

import (
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"testing"
	"unicode/utf16"

	"flitchlay/internal/effort"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	xfont "golang.org/x/image/font"
	"golang.org/x/image/font/sfnt"
	"golang.org/x/image/math/fixed"
)

const sample = "NORTH WALL 12'-6 3/8\" éÅñß ½ ⅜ ′ ″ ⌀ \uFFFD ▲"

// golang.org/x/image/font/sfnt reads the subset: every glyph has the outline and advance it has in the whole font.
func TestSubsetDrawsTheSameGlyphs(t *testing.T) {
	for _, f := range []*Face{Regular, Bold} {
		sub, err := sfnt.Parse(f.Subset(Runes(sample)))
		require.NoError(t, err)
		var a, b sfnt.Buffer
		em := fixed.I(f.UnitsPerEm())
		for _, r := range Runes(sample) {
			g, err := sub.GlyphIndex(&a, r)
			require.NoError(t, err)
			require.NotZero(t, g, "%q is in the subset", r)
			adv, err := sub.GlyphAdvance(&a, g, em, xfont.HintingNone)
			require.NoError(t, err)
			assert.Equal(t, fixed.I(f.Advance(r)), adv, "advance of %q", r)
			got, err := sub.LoadGlyph(&a, g, em, nil)
			require.NoError(t, err)
			want, err := f.outline.LoadGlyph(&b, sfnt.GlyphIndex(f.index(r)), em, nil)
			require.NoError(t, err)
			assert.Equal(t, want, got, "outline of %q", r)
		}
		g, err := sub.GlyphIndex(&a, 'Q')
		require.NoError(t, err)
		assert.Zero(t, g, "Q was not asked for")
		name, err := sub.Name(&a, sfnt.NameIDFull)
		require.NoError(t, err)
		assert.Equal(t, f.name, name)
	}
}

func TestSubsetIsSmallAndNeutral(t *testing.T) {
	data := Regular.Subset(Runes(sample))
	assert.Less(t, len(data), 12_000)
	for _, id := range []string{"Bitstream Vera", "DejaVu Sans"} {
		var u []byte
		for _, c := range utf16.Encode([]rune(id)) {
			u = be16(u, int(c))
		}
		assert.NotContains(t, string(data), string(u), "the licence keeps the name %q for unchanged fonts", id)
	}
	assert.Equal(t, data, Regular.Subset(Runes(sample)), "same runes, same bytes")
}

func TestSubsetSumsAreRight(t *testing.T) {
	// OpenType specification, head table: the sum of the whole file's words is this constant, with checkSumAdjustment in place.
	assert.Equal(t, uint32(0xB1B0AFBA), sum(Bold.Subset(Runes(sample))))
}

// FreeType, asked through fc-query where that is installed, reads the file: family and number of characters.
func TestSubsetIsReadByFreeType(t *testing.T) {
	fcQuery := effort.Tool(t, "fc-query")
	path := filepath.Join(t.TempDir(), "s.ttf")
	require.NoError(t, os.WriteFile(path, Regular.Subset([]rune("AB3é")), 0o644))
	out, err := exec.Command(fcQuery, "--format", "%{family}|%{charset}", path).CombinedOutput()
	require.NoError(t, err, string(out))
	assert.Equal(t, "Flitchlay Sans|33 41-42 e9", strings.TrimSpace(string(out)))
}

func TestRunes(t *testing.T) {
	assert.Equal(t, []rune(" 13ab\u00E9"), Runes("b a", "a13é", "\U0001F600"))
	assert.Empty(t, Runes())
}

func TestOutline(t *testing.T) {
	assert.Equal(t, "", Regular.Outline(' '))
	// A full stop is one box: four corners on the grid of the font.
	assert.Regexp(t, `^M(-?\d+[ -]\d*)(L-?\d+[ -]\d*)+Z$`, Regular.Outline('.'))
	assert.Equal(t, Regular.Outline(Replacement), Regular.Outline('\U0001F600'), "no glyph, so the mark")
}

func BenchmarkSubset(b *testing.B) {
	runes := Runes(sample)
	b.ReportAllocs()
	for b.Loop() {
		Regular.Subset(runes)
	}
}
