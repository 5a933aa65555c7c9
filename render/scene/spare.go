package scene

import "strings"

// Spare leaves out the style rules that nothing on the sheet uses, for drawings
// that have to be small files.
func (s *Sheet) Spare() *Sheet {
	used := map[string]bool{}
	var visit func([]Item)
	note := func(classes string) {
		for _, c := range strings.Fields(classes) {
			used[c] = true
		}
	}
	visit = func(items []Item) {
		for _, it := range items {
			switch v := it.(type) {
			case *Group:
				note(v.Class)
				visit(v.Items)
			case *Path:
				note(v.Class)
			case *Polyline:
				note(v.Class)
			case *Polygon:
				note(v.Class)
			case *Circle:
				note(v.Class)
			case *Rect:
				note(v.Class)
			case *Text:
				note(v.Class)
			}
		}
	}
	visit(s.Items)
	var kept Styles
	for _, r := range s.Styles {
		if used[r.Class] {
			kept = append(kept, r)
		}
	}
	s.Styles = kept
	return s
}
