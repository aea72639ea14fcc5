package climate

import (
	"strconv"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"flitchlay/internal/finding"
	"flitchlay/internal/room"
)

// The limits that are printed are those by which findings judge: at each nothing is said, just past each something is.
func TestLimitsAreWhatFindingsJudgeBy(t *testing.T) {
	parse := func(s string) float64 {
		f, err := strconv.ParseFloat(s, 64)
		require.NoError(t, err)
		return f
	}
	at := func(temperature, humidity float64, wall *float64) *room.Room {
		r := &room.Room{}
		r.Site.Given, r.Site.Temperature, r.Site.Humidity, r.Site.Wall = true, temperature, humidity, wall
		limit := 1.25
		r.Site.Board = &room.Board{Meter: "gypsum scale", Limit: &limit}
		return r
	}
	says := func(r *room.Room, code finding.Code) bool {
		for _, f := range Findings(r) {
			if f.Code == code {
				return true
			}
		}
		return false
	}
	l := Limits(at(70, 40, nil))
	require.Len(t, l, 4)
	assert.Equal(t, Limit{What: Air, Low: "60", High: "90", Unit: "F", Source: "AWI 200, 3.2.6"}, l[Air])
	assert.Equal(t, Limit{What: Humidity, Low: "30", High: "55", Unit: "%", Source: "AWI 200, 3.2.4"}, l[Humidity])
	assert.Equal(t, Limit{What: Board, High: "1.25", Unit: "gypsum scale"}, l[Board])

	assert.False(t, says(at(parse(l[Air].High), 40, nil), finding.SiteHot))
	assert.True(t, says(at(parse(l[Air].High)+0.1, 40, nil), finding.SiteHot))
	assert.True(t, says(at(parse(l[Air].Low)-0.1, 40, nil), finding.SiteCold))
	for _, humidity := range []string{l[Humidity].Low, l[Humidity].High} {
		assert.False(t, says(at(70, parse(humidity), nil), finding.SiteDry) || says(at(70, parse(humidity), nil), finding.SiteDamp))
	}
	assert.True(t, says(at(70, parse(l[Humidity].Low)-0.1, nil), finding.SiteDry))
	assert.True(t, says(at(70, parse(l[Humidity].High)+0.1, nil), finding.SiteDamp))
	wall := parse(l[WallFace].Low)
	assert.False(t, says(at(70, 40, &wall), finding.WallCold), "%v", wall)
	wall -= 0.1
	assert.True(t, says(at(70, 40, &wall), finding.WallCold), "%v", wall)
}

// Without a site the wall's limit is how far it has to be over the dew point, and the board has none; a metric room has its own.
func TestLimitsWithoutASite(t *testing.T) {
	l := Limits(&room.Room{})
	assert.Equal(t, Limit{What: WallFace, Low: "5", Unit: "F", Over: true}, l[WallFace])
	assert.Equal(t, Limit{What: Board}, l[Board])
	metric, err := room.Decode("room.toml", []byte("[project]\ntitle='t'\nunits='mm'\n[veneer]\ngross_width=620\noverlap=25\nlength=3000\n[[wall]]\nlength=3000\nheight=2500\n"))
	require.NoError(t, err)
	l = Limits(metric)
	assert.Equal(t, "15,6 32,2 C 30 55 % 2,8 C", strings.Join([]string{l[Air].Low, l[Air].High, l[Air].Unit, l[Humidity].Low, l[Humidity].High, l[Humidity].Unit, l[WallFace].Low, l[WallFace].Unit}, " "))
}
