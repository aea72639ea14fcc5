package cli

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"

	"flitchlay/internal/paper"
)

// Who asks for a page template that there is not is told all that there are; TestPapersAreExact of package paper holds the
// list to the standards.
func TestNewNamesEveryPaper(t *testing.T) {
	status, _, messages := typed("", "new", "--page", "letterhead-of-ours")
	assert.Equal(t, unusable, status)
	assert.Equal(t, "flitchlay: there is no page template \"letterhead-of-ours\"; there are "+strings.Join(paper.Names(), ", ")+"\n", messages)
}
