package plan

import (
	"testing"

	"github.com/stretchr/testify/assert"
)

func TestThingsAreOfEveryKind(t *testing.T) {
	p := &Plan{
		Set: Set{
			Walls: []*Wall{{}}, Doors: []*Door{{}}, Windows: []*Pane{{}}, Holes: []*Hole{{}}, Pillars: []*Pillar{{}}, Blocks: []*Block{{}},
			Platforms: []*Platform{{}}, Stairs: []*Stairs{{}}, Mirrors: []*Mirror{{}}, Glows: []*Glow{{}}, Marks: []*Mark{{}}, Grids: []*Grid{{}},
			Supplies: []*Supply{{}}, Placed: []*PlacedLamp{{}}, Drawings: []*Drawing{{}},
		},
		Kit:    Kit{Cameras: []*Camera{{}, {}}, Lenses: []*Lens{{}}, Rigs: []*Rig{{}}, Vehicles: []*Vehicle{{}}, Lamps: []*Lamp{{}}, Washes: []*Wash{{}}, Cards: []*Card{{}}},
		People: []*Person{{}, {Crew: true}},
	}
	var kinds []Kind
	for _, x := range p.Things() {
		kinds = append(kinds, x.Kind())
	}
	assert.Equal(t, []Kind{
		KindWall, KindDoor, KindWindow, KindHole, KindPillar, KindBlock, KindPlatform, KindStairs, KindMirror, KindGlow, KindMark, KindGrid, KindSupply,
		KindCamera, KindCamera, KindLens, KindRig, KindVehicle, KindLamp, KindWash, KindCard, KindPerformer, KindCrew,
	}, kinds, "what is placed, drawn or put up has no name of its own")
	assert.Empty(t, (&Plan{}).Things())
}
