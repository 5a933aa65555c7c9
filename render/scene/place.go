package scene

// Placed is a copy of items moved and scaled: what was at the origin comes to
// lie at a point, and a millimetre becomes k. Text sizes and halos scale along;
// stroke widths and dashes, which belong to classes, stay. It sets a drawing
// into a page, beside others.
func Placed(items []Item, at Point, k float64) []Item {
	m := mover{at, k}
	out := make([]Item, len(items))
	for i, it := range items {
		out[i] = m.item(it)
	}
	return out
}

type mover struct {
	at Point
	k  float64
}

func (m mover) point(p Point) Point { return Point{m.at.X + p.X*m.k, m.at.Y + p.Y*m.k} }

func (m mover) points(ps []Point) []Point {
	out := make([]Point, len(ps))
	for i, p := range ps {
		out[i] = m.point(p)
	}
	return out
}

func (m mover) item(it Item) Item {
	switch s := it.(type) {
	case *Group:
		g := *s
		g.Items = Placed(s.Items, m.at, m.k)
		if s.Clip != nil {
			g.Clip = make([][]Point, len(s.Clip))
			for i, r := range s.Clip {
				g.Clip[i] = m.points(r)
			}
		}
		return &g
	case *Path:
		p := *s
		p.Cmds = make([]Cmd, len(s.Cmds))
		for i, c := range s.Cmds {
			c.At, c.C1, c.C2, c.Radius = m.point(c.At), m.point(c.C1), m.point(c.C2), c.Radius*m.k
			p.Cmds[i] = c
		}
		return &p
	case *Polyline:
		return &Polyline{s.Class, m.points(s.Points)}
	case *Polygon:
		return &Polygon{s.Class, m.points(s.Points)}
	case *Circle:
		return &Circle{s.Class, m.point(s.Center), s.Radius * m.k}
	case *Rect:
		return &Rect{s.Class, Box{m.point(s.Box.Min), m.point(s.Box.Max)}, s.Corner * m.k}
	case *Text:
		t := *s
		t.At, t.Size, t.Halo = m.point(s.At), s.Size*m.k, s.Halo*m.k
		return &t
	}
	return it
}
