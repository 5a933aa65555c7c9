package compare

import (
	"fmt"
	"math"
	"reflect"
	"strconv"
	"strings"

	"longhand/lang/clock"
	"longhand/lang/geom"
	"longhand/lang/plan"
	"longhand/lang/source"
	"longhand/lang/units"
)

// property is one thing a statement says: its key is the same for two that mean
// the same, whatever they are written like; show is for people.
type property struct{ name, key, show string }

// teller puts the statements of a plan into properties. Names of the older plan
// are told as the newer one has them, so that what only speaks of something
// renamed is no change.
type teller struct {
	names map[plan.Thing]string
	beats map[*plan.Beat]string
	sys   units.System
}

func (t *teller) name(x plan.Thing) string {
	if x == nil || reflect.ValueOf(x).IsNil() {
		return ""
	}
	if n, ok := t.names[x]; ok {
		return n
	}
	return x.ID().Name
}

func (t *teller) beat(b *plan.Beat) string {
	if b == nil {
		return ""
	}
	if n, ok := t.beats[b]; ok {
		return n
	}
	return b.Title
}

var (
	identType = reflect.TypeFor[plan.Ident]()
	spanType  = reflect.TypeFor[source.Span]()
)

// properties are what a struct of the plan says, in the order of its fields.
// Fields without a word in the table below say nothing of their own.
func (t *teller) properties(v any) []property {
	r := reflect.ValueOf(v)
	for r.Kind() == reflect.Pointer || r.Kind() == reflect.Interface {
		if r.IsNil() {
			return nil
		}
		r = r.Elem()
	}
	var out []property
	for i := range r.NumField() {
		f := r.Type().Field(i)
		if f.Type == identType || f.Type == spanType {
			continue
		}
		word, ok := words[r.Type().Name()+"."+f.Name]
		switch {
		case ok && word == silent:
		case f.Anonymous || ok && word == inner:
			out = append(out, t.properties(r.Field(i).Interface())...)
		default:
			if !ok {
				word = strings.ToLower(f.Name)
			}
			p := t.value(r.Field(i))
			p.name = word
			if word == "words" && p.show != "" {
				p.show = `"` + p.show + `"`
			}
			out = append(out, p)
		}
	}
	return out
}

// value tells one field.
func (t *teller) value(v reflect.Value) property {
	if v.Kind() == reflect.Pointer || v.Kind() == reflect.Interface {
		if v.IsNil() {
			return property{}
		}
		if x, ok := v.Interface().(plan.Thing); ok {
			return same(t.name(x))
		}
		p := t.value(v.Elem())
		if p.key == "" { // given, and nothing
			p = same("0")
		}
		return p
	}
	switch x := v.Interface().(type) {
	case source.Span:
		return same("yes")
	case plan.Date:
		minutes := int(x.Zone) / 60
		sign := "+"
		if minutes < 0 {
			sign, minutes = "-", -minutes
		}
		return same(fmt.Sprintf("%04d-%02d-%02d zone %s%02d:%02d", x.Year, x.Month, x.Day, sign, minutes/60, minutes%60))
	case plan.LatLon:
		return property{
			key:  number(float64(x.Lat)) + "," + number(float64(x.Lon)),
			show: units.Number(float64(x.Lat), 4) + " N " + units.Number(float64(x.Lon), 4) + " E",
		}
	case plan.Window:
		if x.Name != "" {
			return same(x.Name)
		}
		return property{key: number(float64(x.From)) + "-" + number(float64(x.To)), show: dayTime(x.From) + " to " + dayTime(x.To)}
	case plan.Place:
		return t.place(&x)
	case plan.Target:
		return t.target(x)
	case plan.Moment:
		return t.moment(&x)
	case plan.Beat:
		return same(t.beat(v.Addr().Interface().(*plan.Beat)))
	case plan.Range:
		lo, hi := t.length(x.Low), t.length(x.High)
		if x.Low == 0 {
			return property{key: lo.key + " " + hi.key, show: hi.show}
		}
		return property{key: lo.key + " " + hi.key, show: lo.show + " to " + hi.show}
	case plan.Level:
		what := t.name(x.Wash)
		if x.Wash == nil {
			what = t.name(x.Lamp)
		}
		return property{key: what + " " + number(float64(x.Per)), show: what + " " + x.Per.String()}
	case geom.Vec:
		return point(x, t.sys)
	case units.Metres:
		return t.length(x)
	case units.Rate:
		return property{key: fmt.Sprintf("%d/%d", x.Num, x.Den), show: x.String() + " fps"}
	case units.Seconds:
		return t.number(float64(x), lasting(x))
	case units.Percent:
		if x < 0 { // not given
			return property{}
		}
		return property{key: number(float64(x)), show: x.String()}
	case plan.Side, plan.Shape:
		return same(shown(x))
	case fmt.Stringer:
		switch v.Kind() {
		case reflect.Float64:
			return t.number(v.Float(), x.String())
		}
	}
	switch v.Kind() {
	case reflect.Slice:
		var keys, shows []string
		for i := range v.Len() {
			p := t.value(v.Index(i))
			keys, shows = append(keys, p.key), append(shows, p.show)
		}
		return property{key: strings.Join(keys, "; "), show: strings.Join(shows, ", ")}
	case reflect.Struct:
		var keys, shows []string
		for _, p := range t.properties(v.Interface()) {
			keys = append(keys, p.key)
			if p.show != "" {
				shows = append(shows, p.show)
			}
		}
		return property{key: strings.Join(keys, "; "), show: strings.Join(shows, ", ")}
	case reflect.Bool:
		if v.Bool() {
			return same("yes")
		}
		return property{}
	case reflect.Float64:
		return t.number(v.Float(), units.Number(v.Float(), 3))
	case reflect.Int, reflect.Int64:
		return t.number(float64(v.Int()), strconv.FormatInt(v.Int(), 10))
	case reflect.String:
		return same(v.String())
	}
	return same(fmt.Sprint(v.Interface()))
}

// lasting is a duration as one would write it in a plan: full minutes as minutes.
func lasting(s units.Seconds) string {
	if min := float64(s / 60); min >= 1 && min == math.Trunc(min) {
		return units.Number(min, 0) + " min"
	}
	return units.Number(float64(s), 2) + " s"
}

func dayTime(s units.Seconds) string {
	minutes := int(math.Round(float64(s) / 60))
	return fmt.Sprintf("%02d:%02d", minutes/60, minutes%60)
}

func shown(x any) string {
	switch x := x.(type) {
	case plan.Side:
		return x.String()
	case plan.Shape:
		return [...]string{"curved", "straight", "round", "eight"}[x]
	}
	return ""
}

func same(s string) property { return property{key: s, show: s} }

// number is the key of a quantity: to a millionth, so that two ways of writing
// one length are one.
func number(v float64) string {
	v = math.Round(v*1e6) / 1e6
	if v == 0 {
		v = 0 // never "-0"
	}
	return strconv.FormatFloat(v, 'f', -1, 64)
}

// number tells a quantity; 0 is what is not given.
func (t *teller) number(v float64, show string) property {
	if v == 0 {
		return property{}
	}
	return property{key: number(v), show: show}
}

func (t *teller) length(m units.Metres) property { return t.number(float64(m), m.Text(t.sys)) }

// point is a place as the plan writes it: in metres or in feet.
func point(p geom.Vec, sys units.System) property {
	k := 1.0
	if sys == units.Feet {
		k = float64(units.Foot)
	}
	return property{
		key:  number(p.X) + "," + number(p.Y),
		show: "(" + units.Number(p.X/k, 2) + ", " + units.Number(p.Y/k, 2) + ")",
	}
}

// place is told by its mark and the way from there, so that a mark that moves is
// a change of the mark and not of every line that names it.
func (t *teller) place(p *plan.Place) property {
	out := point(p.Point, t.sys)
	if p.Z != nil {
		out.key += "," + number(float64(*p.Z))
	}
	if p.Mark != nil {
		name := t.name(p.Mark)
		out = property{key: name, show: name}
		if d := p.Point.Sub(p.Mark.Point); !p.Exact() && d.Len() > 1e-9 {
			out.key += "+" + point(d, t.sys).key
			out.show = told(d, t.sys) + " of " + name
		}
	}
	if p.Before != 0 {
		out.key += " before " + number(float64(p.Before))
		way := " short of "
		if p.Before < 0 {
			way = " past "
		}
		out.show = units.Metres(math.Abs(float64(p.Before))).Text(t.sys) + way + out.show
	}
	return out
}

// told is a way over the floor in words, as on paper.
func told(d geom.Vec, sys units.System) string {
	var parts []string
	add := func(v float64, plus, minus string) {
		word := plus
		if v < 0 {
			word, v = minus, -v
		}
		if v >= 0.005 {
			parts = append(parts, units.Metres(v).Text(sys)+" "+word)
		}
	}
	add(d.X, "right", "left")
	add(d.Y, "up", "down")
	if len(parts) == 0 {
		return units.Metres(d.Len()).Text(sys) + " off"
	}
	return strings.Join(parts, " and ")
}

func (t *teller) target(x plan.Target) property {
	p := t.itself(x)
	if x.Glass != nil {
		in := " in " + t.name(x.Glass)
		p.key, p.show = p.key+in, p.show+in
	}
	return p
}

func (t *teller) itself(x plan.Target) property {
	if x.Thing != nil {
		return same(t.name(x.Thing))
	}
	if x.Place != nil {
		return t.place(x.Place)
	}
	return property{}
}

// moment is told by what it counts from and how long after.
func (t *teller) moment(m *plan.Moment) property {
	off := number(float64(m.Offset))
	switch m.Kind {
	case plan.SinceBeat:
		return property{key: "+" + off, show: after(m.Offset) + " into the beat"}
	case plan.OnClock:
		return property{key: "@" + off, show: "at " + m.Offset.Clock()}
	}
	e := t.event(m.Event)
	show := e.show
	if m.Offset != 0 {
		show += ", " + after(m.Offset)
	}
	return property{key: e.key + " " + off, show: show}
}

func after(s units.Seconds) string {
	sign := "+"
	if s < 0 {
		sign, s = "-", -s
	}
	return sign + units.Number(float64(s), 2) + " s"
}

func (t *teller) event(e *plan.Event) property {
	if e == nil {
		return property{}
	}
	place := property{}
	if e.Place != nil {
		place = t.place(e.Place)
	}
	key := strings.Join([]string{strconv.Itoa(int(e.Kind)), t.name(e.Subject), place.key, t.name(e.Carrier), e.Text, e.Cue, t.beat(e.Beat)}, "|")
	// In words it is said as the plan's own names have it.
	say := *e
	if e.Place != nil {
		p := *e.Place
		p.Text = place.show
		say.Place = &p
	}
	return property{key: key, show: clock.EventWords(&say)}
}

// differing pairs the properties of two things of one kind.
func differing(old, new []property) []Field {
	var out []Field
	for i := range min(len(old), len(new)) {
		a, b := old[i], new[i]
		if a.key == b.key {
			continue
		}
		if a.show == b.show { // too near to tell apart when rounded
			a.show, b.show = a.key, b.key
		}
		name := a.name
		if name == "" {
			name = b.name
		}
		out = append(out, Field{Name: name, Old: a.show, New: b.show})
	}
	return out
}

func keyOf(list []property) string {
	keys := make([]string, len(list))
	for i, p := range list {
		keys[i] = p.key
	}
	return strings.Join(keys, "\x00")
}
