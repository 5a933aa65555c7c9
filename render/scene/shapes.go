package scene

// Polyline is an open line through points.
type Polyline struct {
	Class  string
	Points []Point
}

// Polygon is a closed area.
type Polygon struct {
	Class  string
	Points []Point
}

// Circle is a circle; the radius is in millimetres.
type Circle struct {
	Class  string
	Center Point
	Radius float64
}

// Rect is an upright rectangle, with corners rounded by Corner millimetres.
type Rect struct {
	Class  string
	Box    Box
	Corner float64
}

func (*Polyline) item() {}
func (*Polygon) item()  {}
func (*Circle) item()   {}
func (*Rect) item()     {}

// Line is the straight line between two points.
func Line(class string, a, b Point) *Polyline {
	return &Polyline{Class: class, Points: []Point{a, b}}
}

// Outline gives any shape as a path, nil for groups and text. Writers that know
// only paths use it.
func Outline(it Item) *Path {
	switch s := it.(type) {
	case *Path:
		return s
	case *Polyline:
		return NewPath(s.Class).Through(s.Points...)
	case *Polygon:
		p := NewPath(s.Class).Through(s.Points...)
		if len(p.Cmds) > 0 {
			p.Close()
		}
		return p
	case *Circle:
		return NewPath(s.Class).Arc(s.Center, s.Radius, 0, 360).Close()
	case *Rect:
		return roundRect(s)
	}
	return nil
}

func roundRect(s *Rect) *Path {
	b, r := s.Box, s.Corner
	r = min(r, b.Width()/2, b.Height()/2)
	if r <= 0 {
		return NewPath(s.Class).Through(b.Corners()...).Close()
	}
	return NewPath(s.Class).
		Arc(Pt(b.Max.X-r, b.Min.Y+r), r, 90, -90).
		Arc(Pt(b.Max.X-r, b.Max.Y-r), r, 0, -90).
		Arc(Pt(b.Min.X+r, b.Max.Y-r), r, -90, -90).
		Arc(Pt(b.Min.X+r, b.Min.Y+r), r, 180, -90).
		Close()
}
