package compile

import (
	"flag"
	"fmt"
	"math/rand/v2"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"longhand/lang/check"
)

var update = flag.Bool("update", false, "write the reference load anew")

// loadPlan is the size of a made-up take to measure with. Most of its people and
// vehicles go up and down lanes of their own between blocks; the cameras and
// those they follow go through the doors from room to room.
type loadPlan struct {
	walled           bool // walls and doors; else pillars and blocks only
	parts            int  // beats of 30 s
	cameras, movers  int  // movers: rigs, operators and all others
	b                strings.Builder
	r                *rand.Rand
	lanes, followees []*loadMover
}

// The reference load is ten minutes at 24 frames a second with four rolling
// cameras, sixty moving bodies and 200 upright faces in 30 by 20 m. The cut of it
// is three minutes with two cameras.
func referencePlans() map[string]*loadPlan {
	return map[string]*loadPlan{
		"walled":     {walled: true, parts: 20, cameras: 4, movers: 60},
		"open":       {parts: 20, cameras: 4, movers: 60},
		"walled-cut": {walled: true, parts: 6, cameras: 2, movers: 60},
		"open-cut":   {parts: 6, cameras: 2, movers: 60},
	}
}

// loadMover is somebody or something that moves.
type loadMover struct {
	name, verb string
	pace       float64
	x, y       float64 // where it is
	x0, x1     float64 // the ends of its lane
	room       int
}

const loadPart = 30.0 // seconds of a beat

func (l *loadPlan) line(format string, args ...any) { fmt.Fprintf(&l.b, format+"\n", args...) }

// text is the plan; the same size gives the same text.
func (l *loadPlan) text() string {
	l.b.Reset()
	l.lanes, l.followees = nil, nil
	l.r = rand.New(rand.NewPCG(1931, uint64(l.parts)))
	l.line("# Made by a test to measure with: sixty who move, and nobody who would shoot it.\n")
	l.line("take \"The Whole Night Shift\"\n  rate 24 fps\n  aspect 1.85\n")
	l.set()
	l.kit()
	l.people()
	for i := range l.parts {
		l.beat(i)
	}
	return l.b.String()
}

// rooms are three by two, ten metres square, each with a cross of free floor
// between four groups of blocks.
func (l *loadPlan) corner(room int) (x, y float64) {
	return float64(room%3) * 10, float64(room/3) * 10
}

type loadDoor struct {
	x, y float64
	a, b int // the rooms it joins
}

func loadDoors() []loadDoor {
	return []loadDoor{{10, 5, 0, 1}, {10, 15, 3, 4}, {20, 5, 1, 2}, {20, 15, 4, 5}, {5, 10, 0, 3}, {15, 10, 1, 4}, {25, 10, 2, 5}}
}

func (l *loadPlan) set() {
	l.line("set \"Six rooms of a sorting hall\"")
	solids := 0
	if l.walled {
		for i := range 2 {
			l.line("  wall cross-%d (%d, 0) (%[2]d, 20) high 3 m thick 0.2 m", i+1, 10*i+10)
		}
		for i := range 3 {
			l.line("  wall long-%d (%d, 10) (%d, 10) high 3 m thick 0.2 m", i+1, 10*i, 10*i+10)
		}
		for i, d := range loadDoors() {
			wall, at := fmt.Sprintf("cross-%.0f", d.x/10), d.y
			if i >= 4 {
				wall, at = fmt.Sprintf("long-%d", i-3), 5
			}
			l.line("  door d%d on %s %.1f m to %.1f m high 2.1 m open", i+1, wall, at-0.6, at+0.6)
		}
		solids = 19 // a wall with a door in it is two; and the doors
	}
	for i := 0; solids < 50; i++ {
		room, group, side := i%6, i/6%4, i/24
		x, y := l.corner(room)
		x += 1.5 + 5.5*float64(group%2) + 1.7*float64(side%2)
		y += 2.2 + 5.6*float64(group/2)
		if side >= 2 {
			x, y = float64(room%3)*10+5, float64(room/3)*10+9.5 // pillars by the wall, clear of the ways
		}
		if i%7 == 3 || side >= 2 {
			x0, x1, y0, y1 := x-0.2, x+0.2, y-0.2, y+0.2
			l.line("  block pillar-%d (%.2f, %.2f) (%.2f, %.2f) (%.2f, %.2f) (%.2f, %.2f) high 4 m", i+1, x0, y0, x1, y0, x1, y1, x0, y1)
		} else {
			w, h := 0.25+l.r.Float64()*0.5, 0.15+l.r.Float64()*0.3
			l.line("  block block-%d (%.2f, %.2f) (%.2f, %.2f) (%.2f, %.2f) (%.2f, %.2f) high %.2f m",
				i+1, x-w, y-h, x+w, y-h, x+w, y+h, x-w, y+h, 0.4+l.r.Float64()*1.8)
		}
		solids++
	}
}

func (l *loadPlan) kit() {
	l.line("\nkit\n  lens zoom 24 mm to 70 mm stops T2.8 to T22")
	for i := range l.cameras {
		l.line("  camera %c sensor 24.9 mm x 14 mm weighs 2.6 kg\n  rig vest-%d body-rig carries 2 kg to 14 kg", 'A'+i, i+1)
	}
	for i := range l.movers {
		if l.vehicle(i) {
			l.line("  vehicle trolley-%d 1.2 m x 0.6 m high %.2f m", i+1, 0.8+l.r.Float64()*0.8)
		}
	}
}

// vehicle is whether a mover on a lane is one.
func (l *loadPlan) vehicle(i int) bool { return i >= 3*l.cameras && i%5 == 4 }

func (l *loadPlan) people() {
	l.line("\npeople")
	for i := range l.cameras {
		l.line("  crew op-%d height %.2f m", i+1, 1.6+l.r.Float64()*0.3)
		l.line("  performer lead-%d height %.2f m", i+1, 1.6+l.r.Float64()*0.3)
		x, y := l.corner(i)
		l.followees = append(l.followees, &loadMover{name: fmt.Sprintf("lead-%d", i+1), verb: "walks", pace: 1.1, x: x + 5, y: y + 5, room: i})
	}
	for i := 3 * l.cameras; i < l.movers; i++ {
		k := i - 3*l.cameras
		x, y := l.corner(k % 6)
		m := &loadMover{verb: "walks", pace: 0.8 + l.r.Float64()*0.5}
		m.y = y + 1.1 + 2.2*float64(k/6%2) + 5.6*float64(k/12%2)
		m.x0, m.x1 = x+0.9, x+3.7
		if k/24%2 == 1 {
			m.x0, m.x1 = x+6.3, x+9.1
		}
		if k >= 48 {
			m.y = y + 5.9
		}
		m.x = m.x0
		if l.vehicle(i) {
			m.name, m.verb, m.pace = fmt.Sprintf("trolley-%d", i+1), "drives", m.pace/2
		} else {
			m.name = fmt.Sprintf("sorter-%d", i+1)
			l.line("  performer %s height %.2f m", m.name, 1.5+l.r.Float64()*0.4)
		}
		l.lanes = append(l.lanes, m)
	}
}

func (l *loadPlan) beat(i int) {
	l.line("\nbeat \"Part %d\" %s for %.0f s", i+1, clockOf(float64(i)*loadPart), loadPart)
	if l.walled {
		for d := range loadDoors() {
			if (i+d)%3 == 0 { // nobody goes through it in this part
				l.line("  door d%d shuts starting +0.5 s\n  door d%[1]d opens starting +%.1f s", d+1, 20+l.r.Float64()*6)
			}
		}
	}
	for _, m := range l.lanes {
		l.upAndDown(m, i == 0)
	}
	for k, m := range l.followees {
		l.roam(m, i)
		l.camera(k, m, i)
	}
}

func clockOf(s float64) string { return fmt.Sprintf("%d:%02.0f", int(s)/60, s-60*float64(int(s)/60)) }

// upAndDown goes along a mover's lane, with halts, for most of a beat.
func (l *loadPlan) upAndDown(m *loadMover, first bool) {
	left := loadPart - 1.5 // of what starting and stopping take
	if first {
		l.line("  %s waits at (%.2f, %.2f) for 0.5 s", m.name, m.x, m.y)
		left--
	}
	for {
		x := m.x1
		if m.x > (m.x0+m.x1)/2 {
			x = m.x0
		}
		x += (l.r.Float64() - 0.5) * 0.6
		if m.verb == "walks" {
			x = max(m.x0, min(m.x1, x))
		}
		need := max(x-m.x, m.x-x)/m.pace + 2
		if need > left {
			return
		}
		l.line("  %s %s to (%.2f, %.2f) at %.2f m/s%s", m.name, m.verb, x, m.y, m.pace, backs(m, x))
		m.x = x
		left -= need
		if halt := l.r.Float64() * 3; halt < left-1 && l.r.IntN(3) > 0 {
			l.line("  %s waits for %.1f s", m.name, halt+0.2)
			left -= halt + 0.7
		}
	}
}

// backs is how a vehicle goes back along its lane.
func backs(m *loadMover, x float64) string {
	if m.verb == "drives" && x < m.x {
		return " backwards"
	}
	return ""
}

// roam goes to the middle of a room next door, through a door that stays open.
func (l *loadPlan) roam(m *loadMover, beat int) {
	if beat == 0 {
		l.line("  %s stands at (%.2f, %.2f) for 1 s", m.name, m.x, m.y)
	}
	for _, k := range l.r.Perm(len(loadDoors())) {
		d := loadDoors()[k]
		if d.a != m.room && d.b != m.room || (beat+k)%3 == 0 {
			continue
		}
		m.room = d.a + d.b - m.room
		x, y := l.corner(m.room)
		m.x, m.y = x+4.6+l.r.Float64()*0.8, y+4.6+l.r.Float64()*0.8
		l.line("  %s walks via (%.2f, %.2f) to (%.2f, %.2f) at %.2f m/s", m.name, d.x, d.y, m.x, m.y, m.pace)
		break
	}
	l.line("  %s says \"Nothing came in for this room, and nothing goes out.\"", m.name)
}

func (l *loadPlan) camera(k int, m *loadMover, beat int) {
	name := string(rune('A' + k))
	if beat == 0 {
		l.line("  %s on vest-%d with op-%[2]d up 1.5 m", name, k+1)
		l.line("  %s takes zoom 35 mm T4", name)
		l.line("  %s follows %s by 2.4 m", name, m.name)
		l.line("  %s sees %s", name, m.name)
		return
	}
	switch l.r.IntN(4) {
	case 0:
		l.line("  %s takes zoom %d mm starting +%.1f s", name, 28+l.r.IntN(30), 16+l.r.Float64()*4)
	case 1:
		l.line("  %s sees %s starting +18 s", name, l.lanes[l.r.IntN(len(l.lanes))].name)
		l.line("  %s sees %s starting +26 s", name, m.name)
	case 2:
		l.line("  %s circles %s %d deg left at 2.2 m in 7 s starting +19 s", name, m.name, 40+l.r.IntN(60))
		l.line("  %s follows %s by 2.4 m", name, m.name)
	}
}

func loadFile(name string) string { return filepath.Join("../../testdata/load", name+".take") }

func loadText(tb testing.TB, name string) string {
	tb.Helper()
	text, err := os.ReadFile(loadFile(name))
	require.NoError(tb, err)
	return string(text)
}

// TestReferenceLoad: the files are what the generator writes, and plans without a
// mistake in their text.
func TestReferenceLoad(t *testing.T) {
	for name, l := range referencePlans() {
		text := l.text()
		if *update {
			require.NoError(t, os.MkdirAll(filepath.Dir(loadFile(name)), 0o777))
			require.NoError(t, os.WriteFile(loadFile(name), []byte(text), 0o666))
		}
		assert.True(t, loadText(t, name) == text, "%s is not what the generator writes; run with -update", loadFile(name))
		if !strings.HasSuffix(name, "cut") {
			continue // as the cut, but longer
		}
		upTo := check.Timed
		r, err := Text(t.Context(), name, text, Options{UpTo: &upTo})
		require.NoError(t, err)
		assert.False(t, r.Stopped, "%s", r.Findings)
		assert.InDelta(t, float64(l.parts)*loadPart*24, float64(r.Tracks.Frames), 1)
	}
}
