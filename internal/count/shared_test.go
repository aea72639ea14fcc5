package count

import (
	"fmt"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"flitchlay/internal/layout"
	"flitchlay/internal/room"
)

// Three rooms that say they hang from one delivery of 90 have 90 sheets, not 270; what two of them lay is laid twice.
func TestFlitchSharedByRoomsIsDeliveredOnce(t *testing.T) {
	var job Job
	for i, sheets := range []string{"1-90", "1-90", "80-99"} {
		r, err := room.Decode("r", []byte(fmt.Sprintf("[project]\ntitle = \"R%d\"\n[veneer]\ngross_width = \"24 1/2\"\noverlap = 1\nlength = \"10'\"\n"+
			"[[flitch]]\nnumber = \"F\"\nsheets = \"%s\"\ndamaged = [85]\n[[wall]]\nlength = \"6'\"\nheight = \"8'\"\n", i, sheets)))
		require.NoError(t, err)
		p, err := layout.Lay(r)
		require.NoError(t, err)
		job.Add(Of(p))
	}
	assert.Equal(t, 99, job.Delivered)
	assert.Equal(t, 1, job.Damaged)
	require.Len(t, job.Twice, 1, "the second room lays what the first lays")
	text := ""
	for _, row := range job.Table().Rows {
		text += row[0].Text + "|" + row[1].Text + "|" + row[3].Text + "\n"
	}
	assert.Contains(t, text, "sheets delivered|99|")
	assert.Contains(t, text, "of flitch F delivered|99|1-99, which 3 rooms share and lay 12 of\n")
}
