package page

import (
	"math"
	"strings"

	"longhand/lang/units"
	"longhand/render/sheets"
)

// rehearsal is what came of playing the take many times, in the words of its
// sheet; where it happens is in frames of the take.
type rehearsal struct {
	Title   string   `json:"title"`
	Says    []string `json:"says"`
	Caution string   `json:"caution"`
	Breaks  breaks   `json:"breaks"`
	Cues    cues     `json:"cues"`
	Changes changes  `json:"changes"`
}

type breaks struct {
	Title string `json:"title"`
	Empty string `json:"empty,omitempty"` // what to say where there are none
	// Most is the share of the playings to which the highest bar belongs.
	Most float64 `json:"most,omitempty"`
	List []weak  `json:"list"`
}

// weak is something that breaks, and where in the take.
type weak struct {
	What  string  `json:"what"`
	Often string  `json:"often"`
	Clock string  `json:"clock"`
	At    int     `json:"f"`
	From  int     `json:"a"`
	To    int     `json:"z"`
	First float64 `json:"first"` // per cent of the playings
	All   float64 `json:"all"`
}

type cues struct {
	Title string    `json:"title"`
	Empty string    `json:"empty,omitempty"`
	Rest  string    `json:"rest,omitempty"` // of those not listed
	Scale []float64 `json:"scale"`          // from, to, step; seconds
	List  []spare   `json:"list"`           // in order of time
	Tight []int     `json:"tight"`          // places in List, what has least to spare first
}

// spare is what a cue has to spare.
type spare struct {
	What  string      `json:"what"`
	Cue   string      `json:"cue"`
	Spare string      `json:"spare"`
	Clock string      `json:"clock"`
	At    int         `json:"f"`
	Bar   [3]*float64 `json:"bar"` // at 5, 50 and 95 %; null: without end
}

type changes struct {
	Title string   `json:"title"`
	List  []change `json:"list"`
}

type change struct {
	What   string `json:"what"`
	Gain   string `json:"gain"`
	Chance string `json:"chance"`
}

// rehearsalOf takes from a rehearsal's sheet what the page shows.
func rehearsalOf(b *sheets.Book, rate units.Rate, frames int) *rehearsal {
	s := &b.Sheets[0]
	out := &rehearsal{Title: s.Title, Says: s.Says, Caution: sheets.People}
	frame := func(seconds float64) int {
		return max(0, min(int(rate.At(units.Seconds(seconds)+1e-9)), frames-1))
	}
	at := func(t *sheets.Table, row int) int {
		v, _ := t.Value(row, "frame")
		return max(0, min(int(v), frames-1))
	}
	t, _ := s.Table(sheets.BreaksTable)
	out.Breaks = breaks{Title: t.Title, List: []weak{}}
	if len(t.Rows) == 0 {
		out.Breaks.Empty = t.Empty
	}
	for i := range t.Rows {
		w := weak{What: sheets.Breaking(&t, i), Often: t.Text(i, "first") + " first, " + t.Text(i, "all") + " at all", Clock: t.Text(i, "clock"), At: at(&t, i)}
		w.First, _ = t.Value(i, "first")
		w.All, _ = t.Value(i, "all")
		from, _ := t.Value(i, "from")
		to, _ := t.Value(i, "until")
		w.From, w.To = min(frame(from), w.At), max(frame(to), w.At)
		out.Breaks.Most = math.Max(out.Breaks.Most, w.All)
		out.Breaks.List = append(out.Breaks.List, w)
	}
	all, _ := s.Table(sheets.CuesTable)
	near, rest := all.Near()
	out.Cues = cues{Title: near.Title, Rest: rest, Scale: []float64{}, List: []spare{}, Tight: near.Least("spare_5")}
	if len(near.Rows) == 0 {
		out.Cues.Empty = near.Empty
	} else {
		out.Cues.Scale = []float64{near.Spread.From, near.Spread.To, near.Spread.Step}
	}
	for i := range near.Rows {
		c := spare{What: sheets.Going(near, i), Cue: near.Text(i, "cue"), Spare: spares(near, i), Clock: near.Text(i, "clock"), At: at(near, i)}
		for k, key := range []string{"spare_5", "spare_50", "spare_95"} {
			if v, ok := near.Value(i, key); ok {
				c.Bar[k] = &v
			}
		}
		out.Cues.List = append(out.Cues.List, c)
	}
	help, _ := s.Table(sheets.ChangesTable)
	out.Changes = changes{Title: help.Title, List: []change{}}
	for i := range help.Rows {
		out.Changes.List = append(out.Changes.List, change{help.Text(i, "change"), help.Text(i, "gain"), help.Text(i, "chance")})
	}
	return out
}

// spares says what a cue has to spare: "-0.1 s at 5 %, 1.1 s at 50 %, 2 s at 95 %;
// 1.6 s as planned; short in 6 %".
func spares(t *sheets.Table, row int) string {
	var parts []string
	for _, k := range [][2]string{{"spare_5", "5 %"}, {"spare_50", "50 %"}, {"spare_95", "95 %"}} {
		if v := t.Text(row, k[0]); v != "" {
			parts = append(parts, v+" s at "+k[1])
		}
	}
	out := strings.Join(parts, ", ")
	if v := t.Text(row, "planned"); v != "" {
		out += "; " + v + " s as planned"
	}
	if v := t.Text(row, "short"); v != "" {
		out += "; short in " + v
	}
	return out
}
