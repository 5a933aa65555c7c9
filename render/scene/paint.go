package scene

// Painter receives a sheet piece by piece, in painting order, with every style
// resolved. It is for outputs that know no classes.
type Painter interface {
	Begin(*Group) // before a group's items; a clip is in force until its End
	End(*Group)
	Path(*Path, Style) // every shape, as a path
	Text(*Text, Style) // the fill is its colour
}

// Paint hands the sheet to a painter.
func (s *Sheet) Paint(p Painter) { s.paint(p, s.Items, Root()) }

func (s *Sheet) paint(p Painter, items []Item, around Style) {
	for _, it := range items {
		switch v := it.(type) {
		case *Group:
			p.Begin(v)
			s.paint(p, v.Items, s.Styles.On(around, v.Class))
			p.End(v)
		case *Text:
			p.Text(v, s.Styles.OnText(around, v.Class))
		default:
			if path := Outline(it); path != nil && len(path.Cmds) > 0 {
				p.Path(path, s.Styles.On(around, path.Class))
			}
		}
	}
}
