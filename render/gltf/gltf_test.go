package gltf

import (
	"bytes"
	"context"
	"encoding/base64"
	"encoding/binary"
	"encoding/json"
	"math"
	"os"
	"os/exec"
	"path/filepath"
	"sort"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"longhand/lang/check"
	"longhand/lang/compile"
	"longhand/lang/geom"
	"longhand/lang/optics"
	"longhand/lang/plan"
	"longhand/lang/sight"
	"longhand/lang/staging"
	"longhand/lang/units"
)

var examples = []string{"last-collection", "eight-bars", "night-ferry"}

func exported(t *testing.T, name string) (*compile.Result, []byte) {
	t.Helper()
	read := func(n string) (string, error) {
		data, err := os.ReadFile(filepath.FromSlash(n))
		return string(data), err
	}
	r, err := compile.Compile(context.Background(), read, "../../examples/"+name+".take", compile.Options{UpTo: new(check.Seen)})
	require.NoError(t, err)
	require.False(t, r.Stopped)
	out, err := File(r.Plan, r.Stage)
	require.NoError(t, err)
	return r, out
}

// The Khronos Group's own validator, from the package gltf-validator.
func TestTheKhronosValidatorFindsNothing(t *testing.T) {
	node, err := exec.LookPath("node")
	if err != nil {
		t.Skip("no node")
	}
	const script = `
const fs = require('fs');
let v; try { v = require('gltf-validator') } catch { console.log('absent'); process.exit(0) }
v.validateBytes(new Uint8Array(fs.readFileSync(0))).then(r => {
  console.log(r.issues.numErrors, r.issues.numWarnings);
  for (const m of r.issues.messages) if (m.severity < 2) console.log(m.code, m.pointer, m.message);
})`
	for _, name := range examples {
		_, out := exported(t, name)
		cmd := exec.Command(node, "-e", script)
		cmd.Stdin = bytes.NewReader(out)
		said, err := cmd.CombinedOutput()
		require.NoError(t, err, "%s", said)
		if strings.TrimSpace(string(said)) == "absent" {
			t.Skip("gltf-validator is not installed")
		}
		assert.Equal(t, "0 0", strings.TrimSpace(string(said)), name)
	}
}

// player plays a document as the standard says, from its bytes alone.
type player struct {
	document
	data []byte
}

func newPlayer(t *testing.T, out []byte) *player {
	p := &player{}
	require.NoError(t, json.Unmarshal(out, &p.document))
	_, b64, ok := strings.Cut(p.Buffers[0].URI, ";base64,")
	require.True(t, ok)
	data, err := base64.StdEncoding.DecodeString(b64)
	require.NoError(t, err)
	require.Len(t, data, p.Buffers[0].ByteLength)
	p.data = data
	return p
}

func (p *player) floats(accessor int) []float64 {
	a := p.Accessors[accessor]
	v := p.BufferViews[a.BufferView]
	n := map[string]int{"SCALAR": 1, "VEC3": 3, "VEC4": 4}[a.Type]
	out := make([]float64, a.Count*n)
	for i := range out {
		out[i] = float64(math.Float32frombits(binary.LittleEndian.Uint32(p.data[v.ByteOffset+4*i:])))
	}
	return out
}

// at is an animated property of a node (glTF 2.0, appendix C).
func (p *player) at(n int, path string, time float64) []float64 {
	for _, c := range p.Animations[0].Channels {
		if c.Target.Node != n || c.Target.Path != path {
			continue
		}
		s := p.Animations[0].Samplers[c.Sampler]
		in, out := p.floats(s.Input), p.floats(s.Output)
		k := len(out) / len(in)
		i := sort.SearchFloat64s(in, time)
		if i == 0 || time > in[len(in)-1] {
			i = min(i, len(in)-1)
			return out[i*k : i*k+k]
		}
		a, b := out[(i-1)*k:i*k], out[i*k:i*k+k]
		if s.Interpolation == "STEP" {
			if in[i] == time {
				return b
			}
			return a
		}
		u := (time - in[i-1]) / (in[i] - in[i-1])
		wa, wb := 1-u, u
		if path == "rotation" {
			dot := 0.0
			for j := range a {
				dot += a[j] * b[j]
			}
			if angle := math.Acos(math.Min(1, math.Abs(dot))); angle > 1e-5 {
				wa, wb = math.Sin(wa*angle)/math.Sin(angle), math.Sin(wb*angle)/math.Sin(angle)
			}
			if dot < 0 {
				wb = -wb
			}
		}
		mid := make([]float64, k)
		for j := range mid {
			mid[j] = wa*a[j] + wb*b[j]
		}
		return mid
	}
	node := p.Nodes[n]
	switch {
	case path == "translation" && node.Translation != nil:
		return []float64{float64(node.Translation[0]), float64(node.Translation[1]), float64(node.Translation[2])}
	case path == "rotation" && node.Rotation != nil:
		return []float64{float64(node.Rotation[0]), float64(node.Rotation[1]), float64(node.Rotation[2]), float64(node.Rotation[3])}
	}
	return map[string][]float64{"translation": {0, 0, 0}, "rotation": {0, 0, 0, 1}, "scale": {1, 1, 1}}[path]
}

func (p *player) named(name string) int {
	for i, n := range p.Nodes {
		if n.Name == name {
			return i
		}
	}
	return -1
}

// rotate turns a vector by a quaternion: v + 2w(q x v) + 2 q x (q x v).
func rotate(q, v []float64) []float64 {
	cross := func(a, b []float64) []float64 {
		return []float64{a[1]*b[2] - a[2]*b[1], a[2]*b[0] - a[0]*b[2], a[0]*b[1] - a[1]*b[0]}
	}
	c := cross(q[:3], v)
	cc := cross(q[:3], c)
	return []float64{v[0] + 2*(q[3]*c[0]+cc[0]), v[1] + 2*(q[3]*c[1]+cc[1]), v[2] + 2*(q[3]*c[2]+cc[2])}
}

// seen is where in the frame a camera of the file shows a point, from -1 to 1, by
// the standard's own perspective projection (glTF 2.0, section 3.10.3.3).
func (p *player) seen(cam int, lens perspective, time float64, world []float64) (x, y float64, ahead bool) {
	at, q := p.at(cam, "translation", time), p.at(cam, "rotation", time)
	d := []float64{world[0] - at[0], world[1] - at[1], world[2] - at[2]}
	v := rotate([]float64{-q[0], -q[1], -q[2], q[3]}, d)
	tan := math.Tan(lens.YFov / 2)
	return v[0] / (-v[2] * tan * lens.AspectRatio), v[1] / (-v[2] * tan), v[2] < 0
}

func (p *player) lens(n int, focal float64) perspective {
	node := p.Nodes[n]
	if node.Camera != nil {
		return p.Cameras[*node.Camera].Perspective
	}
	for _, k := range node.Children {
		if math.Abs(p.Nodes[k].Extras["focalLength"].(float64)-focal) < 1e-6 {
			return p.Cameras[*p.Nodes[k].Camera].Perspective
		}
	}
	return perspective{}
}

// A 3D program that plays the file sees every body where the plan's own lens
// sees it.
func TestTheFilePlayedShowsWhatTheLensSees(t *testing.T) {
	for _, name := range examples {
		r, out := exported(t, name)
		p := newPlayer(t, out)
		scene, looked := r.Stage.Scene, 0
		for f := 0; f < scene.Frames; f += 29 {
			time := float64(float32(scene.Rate.Time(units.Frame(f))))
			for ci := range scene.Cameras {
				c := &scene.Cameras[ci]
				view := c.At(units.Frame(f))
				node := p.named(c.Name)
				require.GreaterOrEqual(t, node, 0)
				lens := p.lens(node, view.Focal)
				if lens.YFov == 0 {
					continue
				}
				assert.InDelta(t, c.Height/view.Focal/2, math.Tan(lens.YFov/2), 1e-6)
				o := optics.View{At: geom.Vec3{X: view.X, Y: view.Y, Z: view.Z},
					Pan: units.Degrees(view.Pan * 180 / math.Pi), Tilt: units.Degrees(view.Tilt * 180 / math.Pi),
					Roll: units.Degrees(view.Roll * 180 / math.Pi), Focal: units.Millimetres(view.Focal)}
				for bi := range scene.Bodies {
					b := &scene.Bodies[bi]
					pose := b.At(units.Frame(f))
					if b.Kind != "performer" && b.Kind != "vehicle" || pose.Height == 0 {
						continue
					}
					body := p.named(b.Name)
					require.GreaterOrEqual(t, body, 0, b.Name)
					world := p.at(body, "translation", time)
					img, ok := o.Project(geom.Vec3{X: pose.X, Y: pose.Y, Z: pose.Z})
					x, y, ahead := p.seen(node, lens, time, world)
					if !ok || img.Depth < 0.5 {
						continue
					}
					require.True(t, ahead)
					wantX, wantY := 2*float64(img.X)/c.Width, 2*float64(img.Y)/c.Height
					if math.Abs(wantX) > 1.5 || math.Abs(wantY) > 3 {
						continue
					}
					looked++
					require.InDelta(t, wantX, x, 0.02, "%s: %s in %s at frame %d", name, b.Name, c.Name, f)
					require.InDelta(t, wantY, y, 0.02, "%s: %s in %s at frame %d", name, b.Name, c.Name, f)
				}
			}
		}
		assert.Greater(t, looked, 20, name)
	}
}

func TestKeysKeepToTheirTolerance(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		n := rapid.IntRange(1, 60).Draw(t, "frames")
		v := make([]float64, n)
		for i := range v {
			v[i] = rapid.Float64Range(-3, 3).Draw(t, "value")
		}
		off := func(a, i, b int) float64 {
			return math.Abs(v[a]+(v[b]-v[a])*float64(i-a)/float64(b-a)-v[i]) / 0.5
		}
		keys := chosen(n, off)
		require.Equal(t, 0, keys[0])
		require.Equal(t, n-1, keys[len(keys)-1])
		for k := 1; k < len(keys); k++ {
			for i := keys[k-1] + 1; i < keys[k]; i++ {
				require.LessOrEqual(t, off(keys[k-1], i, keys[k]), 1.0)
			}
		}
	})
}

// The three turns, each alone, by the right hand: pan left, tilt up, lean right.
func TestTurns(t *testing.T) {
	ahead, top := []float64{0, 0, -1}, []float64{0, 1, 0}
	q := func(r rotation) []float64 { return r[:] }
	near := func(want, got []float64) {
		t.Helper()
		assert.InDeltaSlice(t, want, got, 1e-12)
	}
	near([]float64{-1, 0, 0}, rotate(q(turned(math.Pi/2, 0, 0)), ahead))
	near([]float64{0, 1, 0}, rotate(q(turned(0, math.Pi/2, 0)), ahead))
	near([]float64{1, 0, 0}, rotate(q(turned(0, 0, math.Pi/2)), top))
	assert.InDelta(t, 0.3, turned(0.4, 0, 0).apart(turned(0.1, 0, 0)), 1e-12)
	assert.InDelta(t, 1e-7, turned(1e-7, 0, 0).apart(turned(0, 0, 0)), 1e-15)
}

func TestDoorsAndWhoIsNotThere(t *testing.T) {
	scene := &sight.Scene{Rate: units.Rate{Num: 24, Den: 1}, Frames: 10}
	scene.Bodies = []sight.Body{{Name: "mina", Kind: "performer", Radius: 0.3, Track: make([]sight.Pose, 10)}}
	for i := range scene.Bodies[0].Track {
		scene.Bodies[0].Track[i].X = float64(i)
		if i >= 4 {
			scene.Bodies[0].Track[i].Height = 1.7
		}
	}
	out, err := File(&plan.Plan{}, &staging.Stage{Scene: scene})
	require.NoError(t, err)
	p := newPlayer(t, out)
	n := p.named("mina")
	assert.Equal(t, []float64{0, 0, 0}, p.at(n, "scale", 3/24.0))
	assert.Equal(t, []float64{1, 1, 1}, p.at(n, "scale", float64(float32(4/24.0))))
	_, err = File(&plan.Plan{}, &staging.Stage{Scene: &sight.Scene{}})
	assert.ErrorContains(t, err, "nothing happens")
}

func TestTheSameTextGivesTheSameBytes(t *testing.T) {
	_, a := exported(t, "eight-bars")
	_, b := exported(t, "eight-bars")
	assert.True(t, bytes.Equal(a, b))
}
