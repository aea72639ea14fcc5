package tally

import (
	"bytes"
	"encoding/json"
	"testing"

	"github.com/santhosh-tekuri/jsonschema/v6"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"flitchlay/internal/count"
)

// The JSON of a job tells of flitches, rooms, hours and money what its tables tell, and keeps the schema that is printed with it.
func TestJSONOfAJob(t *testing.T) {
	j := added(t, priced, rooms)
	var b bytes.Buffer
	require.NoError(t, count.JSON(&b).Job(j.Sums()))
	text, err := jsonschema.UnmarshalJSON(bytes.NewReader(count.Schema))
	require.NoError(t, err)
	c := jsonschema.NewCompiler()
	require.NoError(t, c.AddResource("count.json", text))
	schema, err := c.Compile("count.json")
	require.NoError(t, err)
	value, err := jsonschema.UnmarshalJSON(bytes.NewReader(b.Bytes()))
	require.NoError(t, err)
	require.NoError(t, schema.Validate(value))

	var got struct{ Job jsonRead }
	require.NoError(t, json.Unmarshal(b.Bytes(), &got))
	require.Len(t, got.Job.Flitches, 3)
	f := got.Job.Flitches[0]
	assert.Equal(t, "F1", f.Flitch)
	assert.Equal(t, []int{5}, f.Damaged)
	assert.Equal(t, []int{9, 10, 11, 12}, f.Laid[2].Sheets)
	assert.Equal(t, "b.toml as 12", f.Laid[2].Room)
	assert.Equal(t, 1, got.Job.Flitches[2].Order)
	assert.Len(t, got.Job.Rooms, 4)
	assert.Equal(t, j.minutes, got.Job.Minutes)
	sum := 0.0
	for _, l := range got.Job.Price.Lines {
		assert.InDelta(t, l.Quantity*l.Price, l.Amount, 0.005)
		sum += l.Amount
	}
	assert.InDelta(t, sum, got.Job.Price.Sum, 1e-6)
	assert.Equal(t, "EUR", got.Job.Price.Currency)
	assert.Equal(t, []string{"end bead", "cutting strip", "blades"}, got.Job.Price.Without)
}

// jsonRead is what the test reads of it.
type jsonRead struct {
	Flitches []struct {
		Flitch  string
		Damaged []int
		Order   int `json:"to_order"`
		Laid    []struct {
			Room   string
			Sheets []int
		}
	}
	Rooms   []any
	Minutes int
	Price   struct {
		Currency string
		Sum      float64
		Lines    []struct{ Quantity, Price, Amount float64 }
		Without  []string `json:"without_price"`
	}
}
