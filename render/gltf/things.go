package gltf

import (
	"longhand/lang/geom"
	"longhand/lang/sight"
	"longhand/lang/solid"
	"longhand/lang/units"
)

// aroundSet is how far the floor goes on past everything, metres.
const aroundSet = 2

// set is one node a thing, and the floor. Lens holes are left open.
func (w *writer) set() []int {
	type key struct {
		name  string
		glass bool
	}
	meshes := map[key]*solidMesh{}
	kinds := map[key]string{}
	var order []key
	var out, doors []int
	var all []geom.Vec
	next := 0 // the scene's solids are the pieces but glass and plugs, in order
	for _, p := range w.stage.Pieces {
		if p.Hole != nil {
			continue
		}
		all = append(all, p.Polygon...)
		if p.Door != nil && !p.Glass {
			doors = append(doors, w.door(p, w.scene.Solids[next].Shut))
			next++
			continue
		}
		k := key{p.Name, p.Glass}
		if meshes[k] == nil {
			meshes[k] = &solidMesh{}
			kinds[k] = string(p.Thing.Kind())
			if p.Glass {
				kinds[k] = "glass"
			}
			order = append(order, k)
		}
		meshes[k].prism(p.Polygon, p.Z[0], p.Z[1])
		if !p.Glass {
			next++
		}
	}
	for i := range w.scene.Bodies {
		for f := range w.scene.Bodies[i].Track {
			all = append(all, geom.Vec{X: w.scene.Bodies[i].Track[f].X, Y: w.scene.Bodies[i].Track[f].Y})
		}
	}
	if len(all) > 0 {
		low, high := geom.Bounds(all)
		edge := geom.Vec{X: aroundSet, Y: aroundSet}
		var m solidMesh
		var corners []vec3
		for _, c := range geom.Rectangle(low.Sub(edge), high.Add(edge)).CCW() {
			corners = append(corners, up(c, 0))
		}
		m.face(corners, vec3{0, 1, 0})
		out = append(out, w.node(node{Name: "floor", Mesh: w.mesh("floor", &m, w.material("floor"))}))
	}
	for _, k := range order {
		name := k.name
		if k.glass && meshes[key{k.name, false}] != nil {
			name += " glass"
		}
		out = append(out, w.node(node{Name: name, Mesh: w.mesh(name, meshes[k], w.material(kinds[k]))}))
	}
	return append(out, doors...)
}

// door is there while it is shut; open, it has no size.
func (w *writer) door(p solid.Piece, shut []sight.Frames) int {
	var m solidMesh
	m.prism(p.Polygon, p.Z[0], p.Z[1])
	n := w.node(node{Name: p.Name, Mesh: w.mesh(p.Name, &m, w.material("door"))})
	if shut == nil {
		return n
	}
	there := make([]bool, w.scene.Frames)
	for _, s := range shut {
		for f := s.From; f <= s.To; f++ {
			there[f] = true
		}
	}
	w.presence(n, there)
	return n
}

// bodies are one node each. The plugs of lens holes are not drawn: in a 3D
// program nothing would take them away for their own camera.
func (w *writer) bodies() []int {
	var out []int
	for i := range w.scene.Bodies {
		b := &w.scene.Bodies[i]
		if b.Kind == "hole" || len(b.Track) == 0 {
			continue
		}
		high := 0.0
		for _, p := range b.Track {
			high = max(high, p.Height)
		}
		if high == 0 {
			continue // never there
		}
		outline := geom.Polygon(b.Polygon)
		if b.Radius > 0 {
			outline = roundOutline(b.Radius)
		}
		name := b.Name
		if b.Kind == "camera" {
			name += " body" // the camera itself has the name
		}
		var m solidMesh
		m.prism(outline, 0, high)
		n := w.node(node{Name: name, Mesh: w.mesh(name, &m, w.material(b.Kind))})
		w.moveBody(n, b, high)
		out = append(out, n)
	}
	return out
}

func (w *writer) moveBody(n int, b *sight.Body, high float64) {
	keys := make([]key, w.scene.Frames)
	there := make([]bool, w.scene.Frames)
	for f := range keys {
		p := b.At(units.Frame(f))
		keys[f] = key{
			at:    geom.Vec3{X: p.X, Y: p.Z, Z: -p.Y},
			turn:  turned(p.Heading, 0, 0),
			scale: p.Height / high,
		}
		there[f] = p.Height > 0
		if !there[f] { // where it isn't, it stays where it was
			keys[f].scale = 1
			if f > 0 {
				keys[f] = keys[f-1]
			}
		}
	}
	w.move(n, keys)
	w.sizes(n, keys, there)
}
