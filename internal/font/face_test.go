package font

import (
	"testing"
	"unicode/utf8"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	xfont "golang.org/x/image/font"
	"golang.org/x/image/font/sfnt"
	"golang.org/x/image/math/fixed"
)

// The tables are read here by hand; golang.org/x/image/font/sfnt reads them independently.
func TestEveryGlyphIndexAndAdvanceAgreesWithSfnt(t *testing.T) {
	for _, f := range []*Face{Regular, Bold} {
		ref, err := sfnt.Parse(f.Data())
		require.NoError(t, err)
		require.Equal(t, int(ref.UnitsPerEm()), f.UnitsPerEm())
		var buf sfnt.Buffer
		em := fixed.I(f.UnitsPerEm())
		covered := 0
		for r := rune(0); r <= 0xFFFF; r++ {
			want, err := ref.GlyphIndex(&buf, r)
			require.NoError(t, err)
			got := f.index(r)
			require.Equal(t, int(want), got, "%s: glyph of %U", f.name, r)
			if want == 0 {
				continue
			}
			covered++
			adv, err := ref.GlyphAdvance(&buf, want, em, xfont.HintingNone)
			require.NoError(t, err)
			require.Equal(t, adv, fixed.I(f.Advance(r)), "%s: advance of %U", f.name, r)
		}
		assert.Greater(t, covered, 4000, "%s covers far more than Latin", f.name)
	}
}

func TestCapHeightIsWhatTheFontStates(t *testing.T) {
	for _, f := range []*Face{Regular, Bold} {
		ref, err := sfnt.Parse(f.Data())
		require.NoError(t, err)
		m, err := ref.Metrics(&sfnt.Buffer{}, fixed.I(f.UnitsPerEm()), xfont.HintingNone)
		require.NoError(t, err)
		// sfnt counts down the page, so its cap height is negative.
		assert.Equal(t, -m.CapHeight.Round(), f.CapHeight())
		_, _, _, top := f.ink(f.index('H'))
		assert.Equal(t, f.CapHeight(), top, "the H of %s is as high as the stated capitals", f.name)
		assert.InDelta(t, 2.5, f.Extent("H", 2.5).Up, 1e-12)
	}
}

func TestSizeIsEmForCapitals(t *testing.T) {
	// 2048 units an em, capitals 1493: 2.5 mm capitals take 3.4294 mm of em.
	assert.InDelta(t, 2.5*2048/1493, Regular.Size(2.5), 1e-12)
}

func TestMissingNamesWhatCannotBeLettered(t *testing.T) {
	cases := []struct{ why, in, clean, missing string }{
		{"plain text stays", `North wall 12'-6 3/8"`, `North wall 12'-6 3/8"`, ""},
		{"fractions, primes and trade signs have glyphs", "½ ⅜ ′ ″ ⌀ ° ± × Ø é ß ñ", "½ ⅜ ′ ″ ⌀ ° ± × Ø é ß ñ", ""},
		{"a rune above U+FFFF is replaced, also where a face might have it", "W\U0001F6AA1", "W\uFFFD1", "\U0001F6AA"},
		{"ideographs have none", "墙 A", "\uFFFD A", "墙"},
		{"each once, ascending", "墙壁墙", "\uFFFD\uFFFD\uFFFD", "墙壁"},
		{"line ends and tabs become spaces", "a\nb\tc\x00d", "a b c d", ""},
		{"direction marks and joiners vanish", "a\u202Eb\u200Dc\uFE0Fd", "abcd", ""},
		{"bytes that are no UTF-8 are replaced", "a\xffb", "a\uFFFDb", ""},
	}
	for _, c := range cases {
		t.Run(c.why, func(t *testing.T) {
			assert.Equal(t, c.clean, Clean(c.in))
			assert.ElementsMatch(t, []rune(c.missing), Missing(c.in))
		})
	}
}

func TestReplacementMarkIsVisible(t *testing.T) {
	for _, f := range []*Face{Regular, Bold} {
		require.NotZero(t, f.index(Replacement))
		e := f.Extent(string(Replacement), 2.5)
		assert.Greater(t, e.Right-e.Left, 1.0)
	}
}

func FuzzClean(f *testing.F) {
	for _, s := range []string{"", "A", "\U0010FFFF", "\xf0\x9f", "墙\u202e", "\u0000\u0085"} {
		f.Add(s)
	}
	f.Fuzz(func(t *testing.T, s string) {
		c := Clean(s)
		if !utf8.ValidString(c) {
			t.Fatalf("%q is no UTF-8", c)
		}
		if m := Missing(c); len(m) != 0 {
			t.Fatalf("%q still lacks %q", c, m)
		}
		if Clean(c) != c {
			t.Fatalf("%q is cleaned again to %q", c, Clean(c))
		}
		if w := Bold.Width(s, 2.5); !(w >= 0) {
			t.Fatalf("width %v", w)
		}
	})
}

func BenchmarkWidth(b *testing.B) {
	b.ReportAllocs()
	for b.Loop() {
		Regular.Width(`12'-6 3/8"`, 2.5)
	}
}
