package climate

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"flitchlay/internal/finding"
	"flitchlay/internal/room"
)

func siteRoom(t *testing.T, units, site string) *room.Room {
	t.Helper()
	r, err := room.Decode("r.toml", []byte("[project]\ntitle = 't'\nunits = '"+units+"'\n[veneer]\nspecies = 'walnut'\ncut = 'plain'\ngross_width = '24 in'\noverlap = '1 in'\nlength = \"10'\"\n[[wall]]\nlength = \"12'\"\nheight = \"8'\"\n"+site))
	require.NoError(t, err)
	return r
}

// Every code of the site, with all that is said of a site that earns it. Figures worked by hand or from published ones:
// AWI 200 asks for 60 to 90 F and 30 to 55 %, Wood Handbook chapter 13 for 62 F in winter. The dew point of 70 F and 50 %
// is 50.5 F (psychrometric charts for sea level). At 70 F wood comes to 6.2 % at 30 % and to 9.2 % at 50 % (Wood Handbook,
// Table 4-2); plain walnut has 0.00274 for each per cent (Table 13-5), so 24 in x 0.00274 x 3.0746 = 0.2022 in, and from
// 30 to 55 % 24 x 0.00274 x 3.9023 = 0.2566 in. From 20 %, 4.4926 %, equation 13-3 holds, with a shrinkage of 7.8 (Table 4-3):
// 24 x (10.0740 - 4.4926) / (3000 / 7.8 - 30 + 4.4926) = 0.3730 in.
var provokedSites = []struct {
	code  finding.Code
	units string
	site  string
	says  []string
}{
	{finding.SiteCold, "in", "[site]\ntemperature = 59\nhumidity = 40", []string{
		"should site-cold the site is at 59 F; hold at least 60 F from before the sheets come until after they hang (AWI 200, 3.2.6)"}},
	{finding.SiteCold, "in", "[site]\ntemperature = 61\nhumidity = 40", []string{
		"should site-cold the site is at 61 F; hold at least 62 F from before the sheets come until after they hang (Wood Handbook, FPL-GTR-190, chapter 13)"}},
	{finding.SiteHot, "mm", "[site]\ntemperature = '34 C'\nhumidity = 40", []string{
		"should site-hot the site is at 34 C; hold at most 32,2 C from before the sheets come until after they hang (AWI 200, 3.2.6)"}},
	{finding.SiteDry, "in", "[site]\ntemperature = 68\nhumidity = 29.95", []string{
		"should site-dry the site has 29.95 % relative humidity; hold 30 % to 55 %, never longer than 24 h out of that (AWI 200, 3.2.4 and 3.2.6)"}},
	{finding.SiteDamp, "mm", "[site]\ntemperature = '20 C'\nhumidity = 60.5", []string{
		"should site-damp the site has 60,5 % relative humidity; hold 30 % to 55 %, never longer than 24 h out of that (AWI 200, 3.2.4 and 3.2.6)"}},
	{finding.WallCold, "in", "[site]\ntemperature = 70\nhumidity = 50\nwall = 54", []string{
		"should wall-cold the wall itself is at 54 F, 3.4 F over the dew point of 50.5 F; it has to be at least 5 F over it (common practice, no source)"}},
	{finding.WallCold, "in", "[site]\ntemperature = 70\nhumidity = 50\nwall = 48.5", []string{
		"should wall-cold the wall itself is at 48.5 F, 2 F under the dew point of 50.5 F; it has to be at least 5 F over it (common practice, no source)"}},
	{finding.BoardDamp, "in", "[site]\nboard = { meter = 'gypsum scale', reading = 1.2, limit = 1 }", []string{
		"should board-damp the wall reads 1.2 on the gypsum scale, over its limit of 1: let it dry"}},
	{finding.Acclimatise, "in", "[site]\ntemperature = 70\nhumidity = 50\nshop = { temperature = 70, humidity = 30 }", []string{
		"note acclimatise from shop to site wood goes from 6.2 % to 9.2 % moisture: one sheet of 24 in wants to grow 0.202 in wider, free, an upper bound; let the sheets lie in the room at least 72 h before they hang (AWI 200, 3.2.5)"}},
	{finding.YearSwing, "in", "[site]\ntemperature = 70\nhumidity = 42\nyear = { low = 30, high = 55 }", []string{
		"note year-swing over the year wood in the room goes from 6.2 % to 10.1 % moisture: one sheet of 24 in moves by up to 0.257 in, free, an upper bound"}},
	{finding.YearWide, "in", "[site]\nyear = { low = 20, high = 55 }", []string{
		"should year-wide over the year the room goes from 20 % to 55 % relative humidity; wood wants 30 % to 55 % (AWI 200, 3.2.4)",
		"note year-swing over the year wood in the room goes from 4.5 % to 10.1 % moisture: one sheet of 24 in moves by up to 0.373 in, free, an upper bound"}},
	// the middle of 6.17 and 10.07 is 8.12; a quarter of the range 0.98; 30 % is at 6.17
	{finding.OffTheMiddle, "in", "[site]\ntemperature = 70\nhumidity = 30\nyear = { low = 30, high = 55 }", []string{
		"note year-swing over the year wood in the room goes from 6.2 % to 10.1 % moisture: one sheet of 24 in moves by up to 0.257 in, free, an upper bound",
		"note off-the-middle the site's 6.2 % moisture is far from the middle of the room's year, 8.1 %: start near it (FPL report 1655)"}},
	{finding.SpeciesUnknown, "in", "[site]\ntemperature = 70\nhumidity = 50\nshop = { temperature = 70, humidity = 30 }", []string{
		"note acclimatise from shop to site wood goes from 6.2 % to 9.2 % moisture; let the sheets lie in the room at least 72 h before they hang (AWI 200, 3.2.5)",
		"note species-unknown the movement of walnet is not known: it is not in the table; the nearest are walnut"}},
}

func TestEveryCodeOfTheSiteIsProvoked(t *testing.T) {
	have := map[finding.Code]bool{}
	for _, c := range provokedSites {
		have[c.code] = true
		t.Run(string(c.code), func(t *testing.T) {
			r := siteRoom(t, c.units, c.site)
			if c.code == finding.SpeciesUnknown {
				r.Veneer.Species = "walnet"
			}
			var got []string
			for _, f := range Findings(r) {
				assert.Equal(t, "site", f.Place)
				assert.Equal(t, -1, f.Wall)
				got = append(got, f.Level.String()+" "+string(f.Code)+" "+f.Message)
			}
			if c.code == finding.SpeciesUnknown {
				require.Len(t, got, 2)
				assert.True(t, strings.HasPrefix(got[1], c.says[1]), got[1])
				got = got[:1]
				c.says = c.says[:1]
			}
			assert.Equal(t, c.says, got)
		})
	}
	for _, code := range finding.OfSite() {
		assert.True(t, have[code], "no site provokes %s", code)
	}
}

// What stands right on a bound is inside it.
func TestAGoodSiteEarnsNothing(t *testing.T) {
	for _, site := range []string{"", "[site]\ntemperature = 62\nhumidity = 30", "[site]\ntemperature = 90\nhumidity = 55",
		"[site]\ntemperature = 70\nhumidity = 50\nwall = 55.6", "[site]\nboard = { meter = 'm', reading = 1, limit = 1 }", "[site]\nboard = { meter = 'm', reading = 1 }",
		"[site]\nshop = { temperature = 70, humidity = 20 }"} {
		assert.Empty(t, Findings(siteRoom(t, "in", site)), site)
	}
}

// In a metric room temperatures are in degrees C, small lengths in millimetres: 0.2022 in is 5,14 mm.
func TestSiteInMetric(t *testing.T) {
	list := Findings(siteRoom(t, "mm", "[site]\ntemperature = 70\nhumidity = 50\nwall = 54\nshop = { temperature = 70, humidity = 30 }"))
	require.Len(t, list, 2)
	assert.Contains(t, list[0].Message, "the wall itself is at 12,2 C, 1,9 C over the dew point of 10,3 C; it has to be at least 2,8 C over it")
	assert.Contains(t, list[1].Message, "from 6,2 % to 9,2 % moisture: one sheet of 609,5 mm wants to grow 5,14 mm wider")
}
