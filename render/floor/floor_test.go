package floor

import (
	"bytes"
	"context"
	"encoding/csv"
	"math"
	"os"
	"os/exec"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"longhand/lang/check"
	"longhand/lang/compile"
	"longhand/lang/drawing"
	"longhand/lang/geom"
	"longhand/lang/plan"
)

func bound(t *testing.T, text string) *plan.Plan {
	t.Helper()
	named := check.Bound
	r, err := compile.Text(context.Background(), "plan.take", text, compile.Options{UpTo: &named})
	require.NoError(t, err)
	require.False(t, r.Stopped, "%v", r.Findings)
	return r.Plan
}

func example(t *testing.T, name string) *plan.Plan {
	t.Helper()
	data, err := os.ReadFile("../../examples/" + name + ".take")
	require.NoError(t, err)
	return bound(t, string(data))
}

const room = `take "T"
set "Room"
  wall street (0, 0) (8, 0) (8, 6)
  block bench (1, 4) (3, 4) (3, 5) (1, 5)
  pillar post (6, 5) round 0.4 m
  platform rostrum (4, 1) (6, 1) (6, 3) (4, 3) high 0.6 m
  door arch on street 2 m to 3 m
  mark M1 (3, 1)
  mark M2 (5, 2)
  mark far (900, 900)
people
  performer mina
  performer jörg
beat "One"
  mina walks from M1 to M2
  jörg stands at M1
`

// From the corner (0, 0), 3 along and 1 up is the root of 10; from the bench's
// (3, 4) it is 3.
func TestCSV(t *testing.T) {
	out, err := CSV(bound(t, room))
	require.NoError(t, err)
	rows, err := csv.NewReader(bytes.NewReader(out)).ReadAll()
	require.NoError(t, err)
	require.Len(t, rows, 4)
	assert.Equal(t, []string{"M1", "3", "1", "0", "mina, jörg", "bench 2", "3", "4", "3", "street 1", "0", "0", "3.162"}, rows[1])
	assert.Equal(t, "0.6", rows[2][3], "on the rostrum")
	assert.Equal(t, "", rows[2][5], "no corner stands on the rostrum's level")
	assert.Equal(t, "", rows[3][5], "no tape reaches that far")
}

func TestTapesMeetAtTheirMark(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		v := func() geom.Vec {
			return geom.Vec{X: rapid.Float64Range(-20, 20).Draw(t, "x"), Y: rapid.Float64Range(-20, 20).Draw(t, "y")}
		}
		var all []corner
		for range rapid.IntRange(0, 8).Draw(t, "corners") {
			all = append(all, corner{"w", v(), 0})
		}
		p := v()
		got := tape(p, 0, all)
		if len(got) == 0 {
			return
		}
		require.Len(t, got, 2)
		// Where two circles meet, worked out from the tapes alone, lies the mark:
		// on one side of the line between the corners or the other.
		a, b := got[0], got[1]
		d := b.From.Sub(a.From)
		x := (a.Length*a.Length - b.Length*b.Length + d.Dot(d)) / (2 * d.Len())
		y := math.Sqrt(math.Max(0, a.Length*a.Length-x*x))
		on := a.From.Add(d.Unit().Mul(x))
		left, right := on.Add(d.Unit().Left().Mul(y)), on.Sub(d.Unit().Left().Mul(y))
		require.InDelta(t, 0, math.Min(left.Dist(p), right.Dist(p)), 1e-6)
	})
}

// Our own reader of floor plans takes the set back from the drawing, point by
// point.
func TestTheDrawingIsReadBack(t *testing.T) {
	for _, p := range []*plan.Plan{bound(t, room), example(t, "last-collection")} {
		out, err := DXF(p)
		require.NoError(t, err)
		d, err := drawing.Read("marks.dxf", string(out), 1)
		require.NoError(t, err)
		assert.False(t, d.Unitless)
		byKind := map[plan.Kind][]drawing.Shape{}
		for _, s := range d.Shapes {
			byKind[s.Kind] = append(byKind[s.Kind], s)
		}
		same := func(want, got []geom.Vec) {
			t.Helper()
			require.Len(t, got, len(want))
			for i := range want {
				require.Less(t, want[i].Dist(got[i]), 2e-5)
			}
		}
		require.Len(t, byKind[plan.KindBlock], len(p.Set.Blocks))
		for i, b := range p.Set.Blocks {
			same(b.Polygon, byKind[plan.KindBlock][i].Points)
		}
		require.Len(t, byKind[plan.KindPlatform], len(p.Set.Platforms))
		for i, b := range p.Set.Platforms {
			same(b.Polygon, byKind[plan.KindPlatform][i].Points)
		}
		require.Len(t, byKind[plan.KindPillar], len(p.Set.Pillars))
		for i, b := range p.Set.Pillars {
			assert.InDelta(t, float64(b.Round), float64(byKind[plan.KindPillar][i].Round), 2e-5)
		}
		if len(p.Set.Walls) == 1 { // others are joined where they meet
			same(p.Set.Walls[0].Line, byKind[plan.KindWall][0].Points)
		}
		assert.NotEmpty(t, byKind[plan.KindWall])
	}
}

// Debian's python3-ezdxf, an independent reader, audits the drawing and counts
// the marks' names.
func TestEzdxfReadsIt(t *testing.T) {
	p := example(t, "last-collection")
	out, err := DXF(p)
	require.NoError(t, err)
	const script = `
import sys, io
try:
    import ezdxf
except ImportError:
    print("absent"); sys.exit()
d = ezdxf.read(io.TextIOWrapper(sys.stdin.buffer, encoding="ascii"))
m = d.modelspace()
names = m.query('TEXT[layer=="MARK_NAMES"]')
print(d.dxfversion, len(d.audit().errors), len(names), len(m.query('POLYLINE[layer=="WALL"]')), d.header.get("$INSUNITS"))
n = [e for e in names if e.dxf.text.split()[0] == "M4"][0]
print(n.dxf.insert.x - 150, n.dxf.insert.y - 75)
`
	python := ""
	for _, name := range []string{"/usr/bin/python3", "python3"} {
		if found, err := exec.LookPath(name); err == nil {
			python = found
			break
		}
	}
	if python == "" {
		t.Skip("no python3")
	}
	cmd := exec.Command(python, "-c", script)
	cmd.Stdin = bytes.NewReader(out)
	said, err := cmd.CombinedOutput()
	require.NoError(t, err, "%s", said)
	if strings.TrimSpace(string(said)) == "absent" {
		t.Skip("python3-ezdxf is not installed")
	}
	lines := strings.Fields(string(said))
	require.Len(t, lines, 7, "%s", said)
	assert.Equal(t, []string{"AC1009", "0", number(len(p.Set.Marks)), number(len(p.Set.Walls)), "4", "18400.0", "6400.0"}, lines)
}

// The package dxf-parser is another one.
func TestDxfParserReadsIt(t *testing.T) {
	node, err := exec.LookPath("node")
	if err != nil {
		t.Skip("no node")
	}
	p := example(t, "last-collection")
	out, err := DXF(p)
	require.NoError(t, err)
	cmd := exec.Command(node, "-e", `
let P; try { P = require('dxf-parser') } catch { console.log('absent'); process.exit(0) }
const d = new (P.default || P)().parseSync(require('fs').readFileSync(0, 'latin1'));
const n = (t, l) => d.entities.filter(e => e.type === t && e.layer === l).length;
console.log(n('TEXT', 'MARK_NAMES'), n('LINE', 'MARKS'), n('POLYLINE', 'BLOCK'), n('CIRCLE', 'PILLAR'), d.header.$INSUNITS)`)
	cmd.Stdin = bytes.NewReader(out)
	said, err := cmd.CombinedOutput()
	require.NoError(t, err, "%s", said)
	if strings.TrimSpace(string(said)) == "absent" {
		t.Skip("dxf-parser is not installed")
	}
	marks := len(p.Set.Marks)
	assert.Equal(t, []string{number(marks), number(2 * marks), number(len(p.Set.Blocks)), number(len(p.Set.Pillars)), "4"}, strings.Fields(string(said)))
}

func TestNamesAreASCII(t *testing.T) {
	out, err := DXF(bound(t, room))
	require.NoError(t, err)
	assert.Contains(t, string(out), `M1  mina, j\U+00F6rg`)
	for _, b := range out {
		require.Less(t, b, byte(127))
	}
}

func TestNoMarks(t *testing.T) {
	p := bound(t, "take \"T\"\nset \"S\"\n  wall w (0, 0) (1, 0)\n")
	_, err := DXF(p)
	assert.ErrorContains(t, err, "no marks")
	_, err = CSV(p)
	assert.ErrorContains(t, err, "no marks")
}
