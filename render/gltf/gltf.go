// Package gltf hands a take on to 3D programs: the set, what moves in it and its
// cameras as one glTF 2.0 file (Khronos Group, ISO/IEC 12113) with its buffer
// inside.
//
// It draws what package staging says is there, frame by frame, and computes
// nothing of its own but keys: a pose is keyed where straight ways between the
// keys beside it would be off by more than a millimetre or a twentieth of a
// degree. It knows nothing of findings.
package gltf

import (
	"encoding/base64"
	"encoding/json"
	"fmt"

	"longhand/lang/geom"
	"longhand/lang/plan"
	"longhand/lang/sight"
	"longhand/lang/solid"
	"longhand/lang/staging"
	"longhand/lang/units"
)

// File is a take as a .gltf file. glTF's y is up: a plan's (x, y, z) is (x, z, -y)
// there, in metres. The animation's time 0 is the take's first frame.
func File(p *plan.Plan, s *staging.Stage) ([]byte, error) {
	if s == nil || s.Scene == nil || s.Scene.Frames == 0 {
		return nil, fmt.Errorf("nothing happens in the take, so there is nothing to hand on")
	}
	w := &writer{plan: p, stage: s, scene: s.Scene, materials: map[string]int{}}
	w.doc.Asset = asset{Version: "2.0", Generator: "longhand"}
	title := p.Take.Title
	if title == "" {
		title = "take"
	}
	w.anim = animation{Name: title}
	var groups []int
	for _, g := range []struct {
		name string
		fill func() []int
	}{
		{"set", w.set}, {"marks", w.marks}, {"bodies", w.bodies}, {"cameras", w.cameras},
	} {
		if kids := g.fill(); len(kids) > 0 {
			groups = append(groups, w.node(node{Name: g.name, Children: kids}))
		}
	}
	w.doc.Scenes = []scene{{Name: title, Nodes: groups, Extras: map[string]any{
		"framesPerSecond": w.scene.Rate.PerSecond(), "frames": w.scene.Frames, "unit": "metre",
	}}}
	if len(w.anim.Channels) > 0 {
		w.doc.Animations = []animation{w.anim}
	}
	w.doc.Buffers = []buffer{{
		ByteLength: len(w.bytes),
		URI:        "data:application/octet-stream;base64," + base64.StdEncoding.EncodeToString(w.bytes),
	}}
	out, err := json.MarshalIndent(w.doc, "", " ")
	if err != nil {
		return nil, err
	}
	return append(out, '\n'), nil
}

type writer struct {
	plan      *plan.Plan
	stage     *staging.Stage
	scene     *sight.Scene
	doc       document
	anim      animation
	bytes     []byte
	materials map[string]int
}

func (w *writer) node(n node) int {
	w.doc.Nodes = append(w.doc.Nodes, n)
	return len(w.doc.Nodes) - 1
}

// marks are empty nodes where somebody is to stand.
func (w *writer) marks() []int {
	var out []int
	floors := solid.NewFloors(&w.plan.Set)
	for _, m := range w.plan.Set.Marks {
		if m.Bad {
			continue
		}
		z := floors.Stand(m.Point)
		if m.Z != nil {
			z = float64(*m.Z)
		}
		at := up(m.Point, z)
		out = append(out, w.node(node{Name: m.Name, Translation: &at}))
	}
	return out
}

func (w *writer) seconds(f units.Frame) float32 { return float32(w.scene.Rate.Time(f)) }

// up is a place of the plan in glTF's axes.
func up(p geom.Vec, z float64) vec3 { return vec3{single(p.X), single(z), single(-p.Y)} }

// single rounds for the file, and has one zero.
func single(v float64) float32 {
	if f := float32(v); f != 0 {
		return f
	}
	return 0
}
