package gltf

import (
	"math"

	"longhand/lang/geom"
)

// solidMesh gathers flat faces, each with corners of its own so that edges stay
// sharp.
type solidMesh struct {
	points, normals []float32
	indices         []uint32
}

// face adds a convex face, counter-clockwise from where it is seen.
func (m *solidMesh) face(corners []vec3, normal vec3) {
	first := uint32(len(m.points) / 3)
	for _, c := range corners {
		m.points = append(m.points, c[:]...)
		m.normals = append(m.normals, normal[:]...)
	}
	for i := 2; i < len(corners); i++ {
		m.indices = append(m.indices, first, first+uint32(i-1), first+uint32(i))
	}
}

// prism adds an upright prism on a polygon, counter-clockwise.
func (m *solidMesh) prism(p geom.Polygon, low, high float64) {
	p = p.CCW()
	parts, ok := p.ConvexParts()
	if !ok {
		parts = []geom.Polygon{geom.Hull(p)}
	}
	for _, c := range parts {
		c = c.CCW()
		var top, bottom []vec3
		for i := range c {
			top = append(top, up(c[i], high))
			bottom = append(bottom, up(c[len(c)-1-i], low))
		}
		m.face(top, vec3{0, 1, 0})
		m.face(bottom, vec3{0, -1, 0})
	}
	for i, a := range p {
		b := p[(i+1)%len(p)]
		d := b.Sub(a)
		l := d.Len()
		if l < 1e-9 {
			continue
		}
		out := up(geom.Vec{X: d.Y / l, Y: -d.X / l}, 0)
		m.face([]vec3{up(a, low), up(b, low), up(b, high), up(a, high)}, out)
	}
}

// mesh stores what was gathered.
func (w *writer) mesh(name string, m *solidMesh, material int) *int {
	if len(m.indices) == 0 {
		return nil
	}
	w.doc.Meshes = append(w.doc.Meshes, mesh{Name: name, Primitives: []primitive{{
		Attributes: map[string]int{
			"POSITION": w.store(m.points, "VEC3", vertices, true),
			"NORMAL":   w.store(m.normals, "VEC3", vertices, false),
		},
		Indices:  w.storeIndices(m.indices),
		Material: material,
	}}})
	i := len(w.doc.Meshes) - 1
	return &i
}

// colours are greys and tints that tell kinds apart, red, green, blue and how
// opaque.
var colours = map[string][4]float64{
	"floor":     {0.42, 0.42, 0.4, 1},
	"wall":      {0.76, 0.74, 0.7, 1},
	"glass":     {0.7, 0.8, 0.85, 0.25},
	"door":      {0.52, 0.4, 0.28, 1},
	"performer": {0.75, 0.3, 0.2, 1},
	"crew":      {0.25, 0.35, 0.6, 1},
	"camera":    {0.1, 0.1, 0.1, 1},
	"rig":       {0.3, 0.3, 0.32, 1},
	"vehicle":   {0.4, 0.45, 0.35, 1},
	"lamp":      {0.9, 0.75, 0.3, 1},
}

var otherColour = [4]float64{0.6, 0.57, 0.52, 1}

func (w *writer) material(kind string) int {
	if i, ok := w.materials[kind]; ok {
		return i
	}
	c, ok := colours[kind]
	if !ok {
		c = otherColour
	}
	m := material{Name: kind, PBR: pbr{Colour: c, Roughness: 0.9}}
	if c[3] < 1 {
		m.AlphaMode = "BLEND"
	}
	w.doc.Materials = append(w.doc.Materials, m)
	w.materials[kind] = len(w.doc.Materials) - 1
	return w.materials[kind]
}

// roundSides keeps the outline of somebody within 1 % of their radius.
const roundSides = 24

func roundOutline(r float64) geom.Polygon {
	out := make(geom.Polygon, roundSides)
	for i := range out {
		out[i] = geom.Polar(r, 2*math.Pi*float64(i)/roundSides)
	}
	return out
}
