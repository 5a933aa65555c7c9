package bind

import (
	"strconv"
	"strings"
	"time"

	"longhand/lang/diag"
	"longhand/lang/plan"
	"longhand/lang/source"
	"longhand/lang/syntax"
	"longhand/lang/units"
)

// CodeSaidTwice says that something is said again of which one is enough.
const CodeSaidTwice diag.Code = "said-twice"

// take binds the take's own settings, which other lines are converted by.
func (b *binder) take(f *syntax.File) {
	t := &b.plan.Take
	t.Rate, t.Shutter, t.Pace = defaultRate, defaultShutter, defaultPace
	t.Units = systemOf(f, units.Metric)
	var lines []*syntax.Line
	for _, s := range f.Sections {
		if s.Word != "take" {
			continue
		}
		l := b.newLine(f.Source, s.Head, t.Units)
		if !l.once("take", "a plan has one take") {
			continue // and all it says with it
		}
		if h, ok := s.Head.Stmt.(*syntax.TakeHead); ok {
			t.Title, t.Span = h.Title.Value(), l.span
		}
		lines = s.Lines
	}
	// The rate and the tempo come first: others are counted in them.
	for _, early := range []bool{true, false} {
		for _, ln := range lines {
			if ln.Stmt == nil {
				continue
			}
			l := b.newLine(f.Source, ln, t.Units)
			if early {
				l.timebase(ln.Stmt, t)
			} else {
				l.setting(ln.Stmt, t)
			}
		}
	}
}

// once reports a statement that is given again.
func (l *line) once(what, why string) bool {
	first, again := l.said[what]
	if again {
		l.errorf(CodeSaidTwice, l.span, "`%s` is given a second time; %s", what, why).Relate(first, "first given here")
		return false
	}
	l.said[what] = l.span
	return true
}

func (l *line) single(what string) bool { return l.once(what, "a take has one") }

func (l *line) timebase(s syntax.Stmt, t *plan.Take) {
	switch s := s.(type) {
	case *syntax.FrameRate:
		v, ok := l.quantity(s.Amount, units.FrameRate, "rate", limits{1, 1000, false})
		if rate, fits := units.ParseRate(v); l.single("rate") && ok && fits {
			t.Rate = rate
		}
	case *syntax.Tempo:
		v, ok := l.quantity(s.Amount, units.BeatRate, "tempo", limits{10, 400, false})
		in := countsABar
		if s.Beats != nil {
			in = l.whole(s.Beats, "in", 1, 32)
		}
		if l.single("tempo") && ok && !l.bad {
			t.Tempo = &plan.Tempo{BPM: v, In: in, Span: l.span}
		} else {
			l.lostSetting("tempo")
		}
	}
}

func (l *line) setting(s syntax.Stmt, t *plan.Take) {
	switch s := s.(type) {
	case *syntax.Scene:
		if l.single("scene") {
			t.Scene = sceneText(l.span)
		}
	case *syntax.Aspect:
		if v, ok := l.ratio(s.Ratio); l.single("aspect") && ok {
			t.Aspect = v
		}
	case *syntax.Shutter:
		if v, ok := l.angle(s.Angle, "shutter", fullTurn); l.single("shutter") && ok {
			t.Shutter = v
		}
	case *syntax.Sensitivity:
		if v := l.whole(s.Index, "sensitivity", 1, 1000000); l.single("sensitivity") {
			t.Sensitivity = v
		}
	case *syntax.Pace:
		if v, ok := l.quantity(s.Amount, units.WordRate, "pace", limits{20, 600, false}); l.single("pace") && ok {
			t.Pace = v
		}
	case *syntax.Units:
		l.knownWord(s.System, s.System.Text, "system of units", systems)
		l.single("units")
	case *syntax.Location:
		lat, ok := l.bearing(s.Lat, "N", "S", 90)
		lon, ok2 := units.Degrees(0), false
		if ok {
			lon, ok2 = l.bearing(s.Lon, "E", "W", 180)
		}
		if l.single("place") && ok && ok2 {
			t.Place = &plan.LatLon{Lat: lat, Lon: lon, Span: l.span}
		} else {
			l.lostSetting("place")
		}
	case *syntax.Day:
		d, ok := l.date(s.Date)
		zone, ok2 := l.zone(s.Zone)
		if l.single("date") && ok && ok2 {
			d.Zone, d.Span = zone, l.span
			t.Date = d
			l.noZone = s.Zone == nil
		} else {
			l.lostSetting("date")
		}
	case *syntax.Roll:
		if w := l.rollWindow(s.Window); l.single("roll") && w != nil {
			t.Roll = w
		}
	case *syntax.Reset:
		if v, ok := l.seconds(s.Amount, "reset", day); l.single("reset") && ok {
			t.Reset = v
		}
	case *syntax.Record:
		if s.Film != nil {
			l.film(s.Film, t)
		} else if v, ok := l.seconds(s.Amount, "record", day); l.single("record") && ok {
			t.Record = &plan.Record{Duration: v, Span: l.span}
		}
	case *syntax.Film:
		l.film(s, t)
	case *syntax.Revision:
		if l.single("revision") {
			t.Revision = s.Name.Value()
			if s.Date != nil {
				if _, ok := l.date(s.Date); ok {
					t.RevisionDate = s.Date.Text
				}
			}
		}
	}
}

// sceneText is what follows `scene`, without quotes.
func sceneText(span source.Span) string {
	text := tidy(strings.TrimPrefix(span.Text(), "scene"))
	if s := (&syntax.String{Raw: text}); strings.HasPrefix(text, `"`) {
		return s.Value()
	}
	return text
}

// ratio is the shape of a frame: 1.85, 16:9.
func (l *line) ratio(r *syntax.Ratio) (float64, bool) {
	wide, high, two := strings.Cut(r.Text, ":")
	v, err := strconv.ParseFloat(wide, 64)
	if two && err == nil {
		var h float64
		if h, err = strconv.ParseFloat(high, 64); err == nil && h > 0 {
			v /= h
		} else {
			v = 0
		}
	}
	if err != nil || !(v >= 0.25 && v <= 10) {
		l.errorf(CodeOutOfRange, l.at(r), "`%s` is no shape of a frame; width over height is from 0.25 to 10, such as 1.85 or 16:9", r.Text)
		return 0, false
	}
	return v, true
}

// bearing is a latitude or a longitude in degrees; north and east are positive.
func (l *line) bearing(s *syntax.Bearing, plus, minus string, most float64) (units.Degrees, bool) {
	text, side := strings.TrimSpace(s.Amount), s.Side
	if side == "" && strings.HasSuffix(text, "W") {
		text, side = strings.TrimSpace(strings.TrimSuffix(text, "W")), "W"
	}
	v, err := strconv.ParseFloat(text, 64)
	if err != nil || side != plus && side != minus {
		l.errorf(CodeWrongUnit, l.at(s), "`%s` is no bearing; `place` takes degrees north or south, then east or west: 56.05 N 12.69 E", tidy(l.at(s).Text()))
		return 0, false
	}
	if v < 0 || v > most {
		l.errorf(CodeOutOfRange, l.at(s), "`%s` is not on earth; degrees %s or %s go from 0 to %s", tidy(l.at(s).Text()), plus, minus, units.Number(most, 0))
		return 0, false
	}
	if side == minus {
		v = -v
	}
	return units.Degrees(v), true
}

// date is a day that exists.
func (l *line) date(d *syntax.Date) (*plan.Date, bool) {
	t, err := time.Parse("2006-01-02", d.Text)
	if err != nil || t.Year() < 1800 || t.Year() > 2400 {
		l.errorf(CodeOutOfRange, l.at(d), "`%s` is no day; a day is written year, month, day: 2026-08-20", d.Text)
		return &plan.Date{}, false
	}
	return &plan.Date{Year: t.Year(), Month: int(t.Month()), Day: t.Day()}, true
}

// zone is a clock's distance from universal time; none is 0.
func (l *line) zone(z *syntax.Zone) (units.Seconds, bool) {
	if z == nil {
		return 0, true
	}
	text := strings.TrimLeft(z.Text, "+-")
	hours, minutes, _ := strings.Cut(text, ":")
	h, err := strconv.Atoi(hours)
	m, err2 := strconv.Atoi(minutes)
	if err != nil || err2 != nil || m > 59 || h*60+m > 14*60 {
		l.errorf(CodeOutOfRange, l.at(z), "`%s` is no zone; it is written +02:00, at most 14 hours from universal time", z.Text)
		return 0, false
	}
	v := units.Seconds(h*3600 + m*60)
	if strings.HasPrefix(z.Text, "-") {
		v = -v
	}
	return v, true
}
