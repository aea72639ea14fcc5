package words

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// own is a table with two texts of every kind, as the English one of a small program.
const own = `[page]
number = "page {1}"
of     = "page {1} of {2}"
sheets = { one = "a sheet", many = "{1} sheets" }
`

// held reads a table and holds it against the small one.
func held(t *testing.T, body string) error {
	like, _, err := read("en.toml", []byte(own))
	require.NoError(t, err)
	got, root, err := read("ours.toml", []byte(body))
	if err != nil {
		return err
	}
	got.hold(root, like)
	return root.Mistakes().Err()
}

// Every language that comes with the program has every text of the English one, with its places.
func TestLanguagesAreWhole(t *testing.T) {
	require.Subset(t, Names(), []string{"en", "es"})
	for _, name := range Names() {
		text, err := Text(name)
		require.NoError(t, err)
		got, err := Decode(name+".toml", text)
		require.NoError(t, err)
		assert.Equal(t, English().Keys(), got.Keys(), name)
	}
	assert.Greater(t, len(English().Keys()), 10)
}

// A text says what is given in its places, in the order in which it has them.
func TestSay(t *testing.T) {
	table, _, err := read("en.toml", []byte(own))
	require.NoError(t, err)
	assert.Equal(t, "page 3 of 12", table.Say("page.of", 3, "12"))
	assert.Equal(t, "a sheet", table.Say("page.sheets", 1))
	assert.Equal(t, "0 sheets", table.Say("page.sheets", 0))
	turned, _, err := read("other.toml", []byte("[page]\nof = \"of {2} the {1}\"\nnumber = \"page {1}\""))
	require.NoError(t, err)
	assert.Equal(t, "of 12 the 3", turned.Say("page.of", 3, 12))
	assert.Equal(t, "page {1}", turned.Say("page.number", "{1}"), "a brace in a name is no place")
	assert.Panics(t, func() { table.Say("page.none") })
	assert.Panics(t, func() { table.Say("page.of", 3) })
	assert.Equal(t, "page 3 of 12", table.Both("page.of", 3, 12), "one language has nothing beside it")
	two := Paired(table, turned)
	assert.Equal(t, "page 3 of 12", two.Say("page.of", 3, 12))
	assert.Equal(t, "page 3 of 12 / of 12 the 3", two.Both("page.of", 3, 12))
	assert.Equal(t, "page 3", two.Both("page.number", 3), "what reads the same stands once")
}

// The table that is none is the English one, and a word that a section does not have stays as it is.
func TestTheTableThatIsNoneIsEnglish(t *testing.T) {
	var none *Table
	assert.Equal(t, "page 3 of 12", none.Say("page.number_of", 3, 12))
	assert.Equal(t, "Story pole", none.Of("set", "Story pole"))
	assert.Equal(t, "Comparison", none.Of("set", "Comparison"))
}

// What a table lacks, what it has too much, and what it says otherwise is a mistake with its name and its place.
func TestMistakes(t *testing.T) {
	good := strings.NewReplacer(`"page`, `"hoja`).Replace(own)
	require.NoError(t, held(t, good))
	for _, c := range []struct{ why, old, new, message string }{
		{"a text that is not there", "number = \"hoja {1}\"\n", "", `ours.toml:1:2: page.number is missing`},
		{"a key typed wrong", "number =", "numbr =", `ours.toml:2:1: no page says page.numbr`},
		{"a section that is not there", "[page]", "[pages]", `page.number is missing`},
		{"a place left out", "hoja {1} of {2}", "hoja {1}", `ours.toml:3:10: page.of has the places {1}, not {1} {2}`},
		{"a place too many", `"hoja {1}"`, `"hoja {1} {2}"`, `page.number has the places {1} {2}, not {1}`},
		{"the form of many without its number", `many = "{1} sheets"`, `many = "sheets"`, `page.sheets has the places none, not {1}`},
		{"a brace that is no place", `"hoja {1}"`, `"hoja {edge}"`, `ours.toml:2:10: a brace that is no place in "hoja {edge}"`},
		{"a text that says nothing", `"hoja {1}"`, `""`, `ours.toml:2:10: page.number says nothing`},
		{"one form of two", `one = "a sheet", `, "", `page.sheets takes a text, or the two forms one and many`},
		{"a text outside every section", "[page]", "title = \"x\"\n[page]", `ours.toml:1:9: a text outside every section`},
		{"a number", `"hoja {1}"`, `7`, `number takes a text, not`},
	} {
		t.Run(c.why, func(t *testing.T) {
			text := strings.Replace(good, c.old, c.new, 1)
			require.NotEqual(t, good, text, "the case changes the table")
			err := held(t, text)
			require.Error(t, err)
			assert.Contains(t, err.Error(), c.message)
		})
	}
	_, err := Text("en-US")
	assert.ErrorContains(t, err, `no language "en-US"`)
}
