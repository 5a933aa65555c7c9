package gltf

import (
	"fmt"
	"math"

	"longhand/lang/geom"
	"longhand/lang/sight"
	"longhand/lang/units"
)

// What is nearer than a lens's front or farther than any location is not drawn,
// metres.
const (
	zNear = 0.05
	zFar  = 2000
)

// mostLenses bounds how many focal lengths of a zoom get a camera of their own.
const mostLenses = 12

// cameras are nodes that move as the lens's pupil does. glTF cannot animate an
// angle of view: a node has a camera below it for each focal length it has, and
// says in its extras from which frame on it has which.
func (w *writer) cameras() []int {
	var out []int
	for i := range w.scene.Cameras {
		c := &w.scene.Cameras[i]
		if len(c.Track) == 0 {
			continue
		}
		n := w.node(node{Name: c.Name})
		keys := make([]key, w.scene.Frames)
		for f := range keys {
			v := c.At(units.Frame(f))
			// glTF's cameras look along -z, which is the plan's +y.
			keys[f] = key{at: geom.Vec3{X: v.X, Y: v.Z, Z: -v.Y}, turn: turned(v.Pan-math.Pi/2, v.Tilt, v.Roll)}
		}
		w.move(n, keys)
		w.lenses(n, c)
		out = append(out, n)
	}
	return out
}

// lenses puts a camera for each focal length below a node, or on it where there
// is but one.
func (w *writer) lenses(n int, c *sight.Camera) {
	if !(c.Width > 0 && c.Height > 0) {
		return
	}
	frames := chosen(w.scene.Frames, func(a, i, b int) float64 {
		// half a per cent of the focal length is past what a witness mark shows
		fa, fi, fb := focal(c, a), focal(c, i), focal(c, b)
		t := float64(i-a) / float64(b-a)
		return math.Abs(fa+(fb-fa)*t-fi) / (0.005*fi + 1e-9)
	})
	var lengths []float64
	have := map[string]bool{}
	var changes [][2]float64
	for _, f := range frames {
		v := focal(c, f)
		if len(changes) == 0 || changes[len(changes)-1][1] != v {
			changes = append(changes, [2]float64{float64(f), v})
		}
		if k := fmt.Sprintf("%.1f", v); v > 0 && !have[k] && len(lengths) < mostLenses {
			have[k] = true
			lengths = append(lengths, v)
		}
	}
	if len(lengths) == 0 {
		return
	}
	if len(lengths) == 1 {
		w.doc.Nodes[n].Camera = w.lens(c.Name, c, lengths[0])
		w.doc.Nodes[n].Extras = map[string]any{"focalLength": lengths[0]}
		return
	}
	var kids []int
	for _, f := range lengths {
		name := fmt.Sprintf("%s %s mm", c.Name, units.Number(f, 1))
		kids = append(kids, w.node(node{Name: name, Camera: w.lens(name, c, f), Extras: map[string]any{"focalLength": f}}))
	}
	w.doc.Nodes[n].Children = kids
	w.doc.Nodes[n].Extras = map[string]any{"focalLengthFromFrame": changes}
}

func focal(c *sight.Camera, f int) float64 { return c.At(units.Frame(f)).Focal }

func (w *writer) lens(name string, c *sight.Camera, focal float64) *int {
	w.doc.Cameras = append(w.doc.Cameras, camera{Name: name, Type: "perspective", Perspective: perspective{
		AspectRatio: c.Width / c.Height,
		YFov:        2 * math.Atan(c.Height/2/focal),
		ZNear:       zNear, ZFar: zFar,
	}})
	i := len(w.doc.Cameras) - 1
	return &i
}
