package layout

import (
	"reflect"
	"testing"

	"github.com/stretchr/testify/assert"

	"flitchlay/internal/room"
	"flitchlay/internal/seam"
)

// The solver is charged each of its rules, and each from the room's rule of the same name.
func TestTheSolverIsToldEveryRuleItKnows(t *testing.T) {
	var r room.Rules
	for i, d := range room.Distances() {
		*d.Of(&r) = L(i + 1)
	}
	rules := rulesOf(&r)
	got, from := reflect.ValueOf(rules), reflect.ValueOf(r)
	assert.Equal(t, got.NumField(), len(charged))
	for i := range got.NumField() {
		name := got.Type().Field(i).Name
		assert.Positive(t, got.Field(i).Int(), name)
		assert.Equal(t, from.FieldByName(name).Int(), got.Field(i).Int(), name)
	}
}

// The solver knows no room, so that it works out for itself what a sheet covers: as the room does.
func TestTheSolverCoversWhatTheRoomSays(t *testing.T) {
	for _, gross := range []L{7_700_000, 4_978_400, 203_200} {
		for _, snap := range []L{8_000, 12_700, 50_800} {
			r := room.Room{Veneer: room.Veneer{GrossWidth: gross, Overlap: 203_199}, Rules: room.Rules{Snap: snap}}
			s := seam.Span{Gross: int64(gross), Overlap: 203_199, Snap: int64(snap)}
			assert.EqualValues(t, r.NetWidth(), s.NetWidth())
		}
	}
}
