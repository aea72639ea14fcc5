package main

import (
	"fmt"
	"maps"
	"slices"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"flitchlay/internal/crew"
	"flitchlay/internal/effort"
	"flitchlay/internal/layout"
	"flitchlay/internal/paper"
	"flitchlay/internal/pole"
	"flitchlay/internal/room"
	"flitchlay/internal/scene"
	"flitchlay/internal/submittal"
)

// Nothing on any page of rooms that nobody thought of is in the way of anything else, in inches and in millimetres, each of
// them on every paper.
//
// Four rooms, by turns on one paper after the other; 40 on every paper with FLITCHLAY_CHECK=1; or as many as FLITCHLAY_DRAWN
// says: 500 take ten minutes on two cores.
func TestNothingOverlapsInRandomRooms(t *testing.T) {
	wanted := effort.Of(4, 40)
	if n := effort.Drawn(); n > 0 {
		wanted = n
	}
	require.GreaterOrEqual(t, len(paper.Names()), 8)
	var papers []*paper.Template
	for _, name := range paper.Names() {
		p, err := paper.Named(name)
		require.NoError(t, err)
		papers = append(papers, p)
	}
	count, turn := 0, 0
	for seed := uint64(1); count < wanted && seed < 4*uint64(wanted)+40; seed++ {
		plans := map[string]*layout.Plan{}
		for _, metric := range []bool{false, true} {
			r, err := room.Decode("room.toml", []byte(madeUp(seed, metric)))
			if err != nil {
				continue // openings or boxes stand where no room may have them
			}
			if p, err := layout.Lay(r); err == nil {
				plans[fmt.Sprintf("seed %d, metric %v", seed, metric)] = p
			}
		}
		if len(plans) < 2 {
			continue
		}
		count++
		for _, name := range slices.Sorted(maps.Keys(plans)) {
			on := papers
			if effort.Drawn() == 0 {
				on = effort.Turns(turn, papers)
			}
			turn++
			t.Run(name, func(t *testing.T) {
				t.Parallel()
				for _, p := range on {
					clean(t, plans[name], p)
				}
			})
		}
	}
	require.Equal(t, wanted, count, "so many rooms have to be readable")
}

// clean draws all sets of a room on a paper and looks for what is in the way.
func clean(t *testing.T, plan *layout.Plan, p *paper.Template) {
	submittal, err := submittal.Photographed(plan, p, nil, nil)
	require.NoError(t, err)
	install, err := crew.Install(plan, p)
	require.NoError(t, err)
	pole, err := pole.Draw(plan, p)
	require.NoError(t, err)
	for _, d := range []*scene.Document{submittal, install, pole} {
		require.NotEmpty(t, d.Pages)
		for _, page := range d.Pages {
			for _, o := range scene.Overlaps(page, 0.5) {
				assert.Fail(t, "crowded", "%s on %s: %s", page.Name, p.Name, o)
			}
		}
	}
}
