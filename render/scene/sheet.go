package scene

import (
	"strconv"
	"strings"
	"unicode"
)

// Sheet is one drawing on one piece of paper.
type Sheet struct {
	Width, Height float64 // mm
	Title         string  // read aloud, and the document's title
	Desc          string  // a sentence or two on what is to be seen
	Styles        Styles
	Items         []Item
}

// Item is something on the sheet: *Group, *Path, *Polyline, *Polygon, *Circle,
// *Rect or *Text.
type Item interface{ item() }

// Group holds items that belong together. A group with an ID can be found,
// styled and read aloud; its title says what it is ("path of Mara, 0:12 to
// 0:31"), its description more. Shapes inside are painted in order.
type Group struct {
	ID    string // stable and unique on the sheet; see ID
	Class string // class names with spaces between
	Title string
	Desc  string
	Clip  [][]Point // rings; only what is inside shows (even-odd), nil for no clip
	Items []Item
}

func (*Group) item() {}

// Add appends items and returns the group, for chaining.
func (g *Group) Add(items ...Item) *Group {
	g.Items = append(g.Items, items...)
	return g
}

// Add appends items to the sheet.
func (s *Sheet) Add(items ...Item) { s.Items = append(s.Items, items...) }

// Box is the sheet's own outline.
func (s *Sheet) Box() Box { return BoxAt(0, 0, s.Width, s.Height) }

// ID makes a stable id of words: ID("path", "Mara Lind") is "path-mara-lind".
// Letters of every script stay. Words that differ only in case or signs give
// the same id; add a number of your own where that can happen.
func ID(words ...string) string {
	var b strings.Builder
	gap := false
	for _, w := range words {
		gap = b.Len() > 0
		for _, r := range w {
			if !unicode.IsLetter(r) && !unicode.IsDigit(r) || r == unicode.ReplacementChar {
				gap = b.Len() > 0
				continue
			}
			if gap {
				b.WriteByte('-')
				gap = false
			} else if b.Len() == 0 && unicode.IsDigit(r) {
				b.WriteString("n") // an id may not start with a digit in CSS
			}
			b.WriteRune(unicode.ToLower(r))
		}
	}
	if b.Len() == 0 {
		return "x"
	}
	return b.String()
}

// UniqueIDs gives the id to print for each group that has one, in the order
// they are painted: an id that was used before gets a number, so that no output
// holds an id twice.
func (s *Sheet) UniqueIDs() map[*Group]string {
	ids, taken := map[*Group]string{}, map[string]bool{}
	var visit func([]Item)
	visit = func(items []Item) {
		for _, it := range items {
			g, ok := it.(*Group)
			if !ok {
				continue
			}
			if g.ID != "" {
				id := g.ID
				for n := 2; taken[id]; n++ {
					id = g.ID + "-" + strconv.Itoa(n)
				}
				taken[id] = true
				ids[g] = id
			}
			visit(g.Items)
		}
	}
	visit(s.Items)
	return ids
}
