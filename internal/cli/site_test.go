package cli

import (
	"regexp"
	"testing"

	"github.com/stretchr/testify/assert"
)

// What the site lacks stands among the findings of check, shoulds before notes, and breaks no must.
func TestCheckJudgesTheSite(t *testing.T) {
	_, before, _ := typed("", "check", savedRoom(t, "good.toml", wallRoom))
	assert.NotContains(t, before, "site-")
	status, out, _ := typed("", "check", savedRoom(t, "damp.toml", wallRoom+"\n[site]\ntemperature = 70\nhumidity = 61\nshop = { temperature = 70, humidity = 35 }\n"))
	assert.Equal(t, fine, status)
	assert.Regexp(t, regexp.MustCompile(`(?m)^should +site-damp +site +the site has 61 % relative humidity; hold 30 % to 55 %`), out)
	assert.Regexp(t, regexp.MustCompile(`(?ms)^should +site-damp.*^note +acclimatise +site +from shop to site wood goes from 6\.9 % to 11\.2 % moisture`), out)
}
