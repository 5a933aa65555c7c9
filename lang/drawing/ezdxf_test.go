package drawing

import (
	"os/exec"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"longhand/lang/geom"
)

// written makes the same floor with Debian's python3-ezdxf, in a release of the
// format.
const written = `
import sys, io
try:
    import ezdxf
except ImportError:
    print("absent"); sys.exit()
d = ezdxf.new(sys.argv[1])
if sys.argv[1] != "R12":
    d.header["$INSUNITS"] = 6
for n in ["WALL_STREET_3M", "BLOCK", "PILLAR", "CHAIRS"]:
    d.layers.new(n)
m = d.modelspace()
if sys.argv[1] == "R12":
    m.add_polyline2d([(0, 0), (8, 0), (8, 6)], dxfattribs={"layer": "WALL_STREET_3M"})
else:
    m.add_lwpolyline([(0, 0), (8, 0), (8, 6)], dxfattribs={"layer": "WALL_STREET_3M"})
b = d.blocks.new("TABLE", base_point=(1, 1))
b.add_polyline2d([(1, 1), (3, 1), (3, 2), (1, 2)], dxfattribs={"layer": "0"}).close(True)
m.add_blockref("TABLE", (5, 3), dxfattribs={"layer": "BLOCK", "rotation": 90})
m.add_circle((2, 4), 0.25, dxfattribs={"layer": "PILLAR"})
m.add_circle((2, 2), 0.25, dxfattribs={"layer": "CHAIRS"})
m.add_text("Hall", dxfattribs={"layer": "WALL_STREET_3M"})
d.write(sys.stdout)
`

func TestWhatEzdxfWrites(t *testing.T) {
	python := "/usr/bin/python3"
	if _, err := exec.LookPath(python); err != nil {
		t.Skip("no python3")
	}
	for _, release := range []string{"R12", "R2000", "R2010", "R2018"} {
		said, err := exec.Command(python, "-c", written, release).Output()
		require.NoError(t, err)
		if strings.TrimSpace(string(said)) == "absent" {
			t.Skip("python3-ezdxf is not installed")
		}
		scale := 1
		if release == "R12" { // which has no unit: millimetres are taken
			scale = 1000
		}
		d := read(t, "a.dxf", string(said), scale)
		assert.Equal(t, release == "R12", d.Unitless, release)
		w := shape(t, d, "STREET")
		near(t, []geom.Vec{{}, {X: 8}, {X: 8, Y: 6}}, w.Points)
		assert.InDelta(t, 3, float64(w.High.High), 1e-9)
		near(t, []geom.Vec{{X: 5, Y: 3}, {X: 5, Y: 5}, {X: 4, Y: 5}, {X: 4, Y: 3}}, shape(t, d, "block-1").Points)
		assert.InDelta(t, 0.5, float64(shape(t, d, "pillar-1").Round), 1e-9)
		assert.Len(t, d.Shapes, 3)
		assert.Len(t, d.LeftOut, 1)
	}
}
