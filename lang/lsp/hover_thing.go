package lsp

import (
	"fmt"
	"math"
	"sort"
	"strings"

	"longhand/lang/motion"
	"longhand/lang/optics"
	"longhand/lang/plan"
	"longhand/lang/syntax"
	"longhand/lang/units"
)

// aboutMention is about a name where it stands in a line.
func (s *Snapshot) aboutMention(m *mention, line *syntax.Line) string {
	d := s.names().decls[key{m.space, m.name}]
	if d == nil {
		return ""
	}
	parts := []string{code(strings.TrimSpace(d.line.Span(d.at.File).Text()))}
	switch m.space {
	case ofTitles:
		parts = append(parts, s.aboutTitle(d))
	case ofCues:
		if p, ok := s.playedAt(d.at.Start); ok && d.at.File == s.File.Source {
			parts = append(parts, s.aboutLine(p))
		}
	case ofThings:
		parts = append(parts, s.aboutThing(m.name, line)...)
	}
	return strings.Join(notEmpty(parts...), "\n\n")
}

func (s *Snapshot) aboutTitle(d *mention) string {
	if d.at.File != s.File.Source {
		return ""
	}
	return s.aboutBeat(d.line.Span(d.at.File))
}

func (s *Snapshot) aboutThing(name string, line *syntax.Line) []string {
	system := s.system()
	switch t := s.thing(s.Plan, name).(type) {
	case *plan.Mark:
		return []string{s.aboutMark(t, line)}
	case *plan.Person:
		what := "performer"
		if t.Crew {
			what = "crew"
		}
		text := fmt.Sprintf("%s, %s tall", what, t.Height.Text(system))
		if !t.HeightGiven {
			text += " (taken for granted)"
		}
		return []string{text, s.whereabouts(name, line), defaultsOf("person", system)}
	case *plan.Rig:
		return []string{t.Class, s.whereabouts(name, line), defaultsOf("rig "+t.Class, system)}
	case *plan.Vehicle:
		return []string{fmt.Sprintf("%s by %s", t.Length.Text(system), t.Width.Text(system)), s.whereabouts(name, line), defaultsOf("vehicle", system)}
	case *plan.Camera:
		return []string{s.aboutCamera(t, line)}
	case *plan.Lens:
		return []string{s.aboutLens(t)}
	}
	return nil
}

// subjectOf is whose line a line of a beat is.
func subjectOf(line *syntax.Line) string {
	words := line.Words()
	if line.Section == nil || len(words) < 2 || line.Section.Word != "beat" && line.Section.Word != "pickup" || !syntax.IsNameToken(words[0]) {
		return ""
	}
	if line.Kind != nil && !line.Kind.Verb {
		if line.Kind.Words[0] == "handoff" {
			return words[1].Value
		}
		return ""
	}
	return words[0].Value
}

// aboutMark is a mark's place and, in a line of a beat, how far it is for who has
// the line.
func (s *Snapshot) aboutMark(mark *plan.Mark, line *syntax.Line) string {
	system := s.system()
	text := fmt.Sprintf("at %s, %s", units.Metres(mark.Point.X).Text(system), units.Metres(mark.Point.Y).Text(system))
	if mark.Z != nil {
		text += ", " + mark.Z.Text(system) + " high"
	}
	who := subjectOf(line)
	if who == "" || s.Whole == nil {
		return text
	}
	tracks, at, ok := s.begins(line, who)
	if !ok {
		return text
	}
	thing := s.thing(s.Whole.Plan, who)
	body := tracks.Body(thing)
	if body == nil {
		return text
	}
	far := units.Metres(body.At(at).Point().Dist(mark.Point))
	text += fmt.Sprintf("\n\n%s from where %s is at %s, straight", far.Text(system), who, at.Clock())
	running := line.Kind != nil && len(line.Words()) > 1 && line.Words()[1].Value == "runs"
	if pace := motion.LimitsOf(s.Whole.Plan, thing, running).Forward; pace.Typical > 0 {
		text += fmt.Sprintf(": %s at %s; at most %s, so not under %s", units.Seconds(float64(far)/float64(pace.Typical)), pace.Typical.Text(system),
			pace.Hard.Text(system), units.Seconds(float64(far)/float64(pace.Hard)))
	}
	if p, ok := s.playedAt(line.Span(s.File.Source).Start); ok {
		if w := wayOf(p, system); w != "" {
			text += "\n\nas written: " + w
		}
	}
	return text
}

// wayOf is the length of the way a line takes its subject, its time and its pace;
// "" if it takes it nowhere.
func wayOf(p played, system units.System) string {
	long, took, ok := moved(p)
	if !ok {
		return ""
	}
	return fmt.Sprintf("%s in %s, %s on the way", long.Text(system), took, (units.MetresPerSecond(float64(long) / float64(took))).Text(system))
}

func moved(p played) (units.Metres, units.Seconds, bool) {
	if _, ok := p.action.Deed.(*plan.Move); !ok {
		return 0, 0, false
	}
	body := p.tracks.Body(p.action.Subject)
	if body == nil {
		return 0, 0, false
	}
	long := 0.0
	for i := range body.Segments {
		if g := &body.Segments[i]; g.Action == p.action && g.Path != nil {
			long += g.Path.Length()
		}
	}
	took := p.tracks.Clock.Of(p.action).Length()
	return units.Metres(long), took, long > 0 && took > 0
}

// whereabouts is where somebody is as a line begins.
func (s *Snapshot) whereabouts(name string, line *syntax.Line) string {
	if s.Whole == nil || subjectOf(line) == "" {
		return ""
	}
	tracks, at, ok := s.begins(line, subjectOf(line))
	if !ok {
		return ""
	}
	body := tracks.Body(s.thing(s.Whole.Plan, name))
	if body == nil {
		return ""
	}
	p := body.At(at)
	system := s.system()
	text := fmt.Sprintf("at %s: at %s, %s", at.Clock(), p.X.Text(system), p.Y.Text(system))
	if c := body.Carrier(at); c != nil {
		text += ", aboard " + c.ID().Name
	}
	return text
}

// aboutCamera is a camera's angle of view and what it sees as a line begins; of
// the declaration, at the take's start.
func (s *Snapshot) aboutCamera(c *plan.Camera, line *syntax.Line) string {
	if s.Whole == nil {
		return ""
	}
	tracks, at := s.Whole.Tracks, units.Seconds(0)
	if who := subjectOf(line); who != "" {
		if t, begins, ok := s.begins(line, who); ok {
			tracks, at = t, begins
		}
	}
	thing, _ := s.thing(s.Whole.Plan, c.Name).(*plan.Camera)
	ct := tracks.Camera(thing)
	if thing == nil || ct == nil {
		return ""
	}
	system := s.system()
	v := ct.At(at)
	var b strings.Builder
	fmt.Fprintf(&b, "at %s: the lens is %s high", at.Clock(), units.Metres(v.Z).Text(system))
	if rig := ct.Rig(at); rig != nil {
		b.WriteString(", on " + rig.Name)
	}
	if v.Focal > 0 && ct.Frame.Width > 0 {
		across, up, _ := ct.Frame.Angles(units.Millimetres(v.Focal))
		fmt.Fprintf(&b, "\n\n%s: angle of view %s across, %s up", units.Millimetres(v.Focal), across, up)
	}
	if aim := ct.Aim(at); aim != nil && aim.See != nil && len(aim.See.Targets) > 0 {
		var names []string
		for _, t := range aim.See.Targets {
			names = append(names, t.Name())
		}
		b.WriteString("\n\nsees " + strings.Join(names, ", "))
		if size := ct.Size(at).String(); size != "" {
			b.WriteString(" " + size)
		}
		if !math.IsInf(v.Focus, 0) {
			fmt.Fprintf(&b, ", focused at %s", units.Metres(v.Focus).Text(system))
		}
	}
	if tracks == s.Whole.Tracks {
		if inFrame := s.inFrame(thing, tracks.Rate.At(at)); inFrame != "" {
			b.WriteString("\n\nin frame: " + inFrame)
		}
	}
	return b.String()
}

// inFrame lists what a camera sees at a frame and how much of it, most of the
// frame first.
func (s *Snapshot) inFrame(c *plan.Camera, f units.Frame) string {
	r := s.Whole
	if r.Sight == nil || r.Stage == nil {
		return ""
	}
	type piece struct {
		name           string
		share, visible float64
	}
	var list []piece
	for i := range r.Sight.Sight {
		run := &r.Sight.Sight[i]
		k := int(f - run.From)
		if run.Camera >= len(r.Stage.Cameras) || r.Stage.Cameras[run.Camera] != c || k < 0 || k >= run.Len() || run.Visible[k] < 0.005 {
			continue
		}
		list = append(list, piece{r.Stage.Scene.Bodies[run.Body].Name, float64(run.Share[k]), float64(run.Visible[k])})
	}
	sort.SliceStable(list, func(i, j int) bool { return list[i].share > list[j].share })
	var out []string
	for _, p := range list {
		text := fmt.Sprintf("%s (%s %% of the frame", p.name, units.Number(p.share, 1))
		if p.visible < 0.995 {
			text += fmt.Sprintf(", %s %% of it hidden", units.Number(100*(1-p.visible), 0))
		}
		out = append(out, text+")")
	}
	return strings.Join(out, ", ")
}

// aboutLens is a lens's angle of view and depth of field, on every camera that
// takes it, at the stop used and the focus it has then.
func (s *Snapshot) aboutLens(l *plan.Lens) string {
	if s.Whole == nil {
		return ""
	}
	system := s.system()
	var out []string
	for _, ct := range s.Whole.Tracks.Cameras {
		for _, fit := range ct.Fits {
			if fit.Lens == nil || fit.Lens.Name != l.Name || fit.Focal <= 0 || ct.Frame.Width <= 0 {
				continue
			}
			across, up, _ := ct.Frame.Angles(fit.Focal)
			text := fmt.Sprintf("on %s from %s: %s, angle of view %s across, %s up", ct.Camera.Name, fit.At.Clock(), fit.Focal, across, up)
			focus := units.Metres(ct.At(fit.At).Focus)
			if fit.Stop > 0 {
				lens := optics.Focus{Focal: fit.Focal, Stop: fit.Stop, Circle: ct.Frame.Circle()}
				text += fmt.Sprintf("; at %s sharp ", fit.Stop)
				if math.IsInf(float64(focus), 0) {
					text += "from " + lens.Hyperfocal().Text(system) + " on, focused there"
				} else {
					near, far := lens.Limits(focus)
					text += fmt.Sprintf("from %s to %s, focused at %s", near.Text(system), orInfinity(far, system), focus.Text(system))
				}
			}
			out = append(out, text)
		}
	}
	return strings.Join(out, "\n\n")
}

func orInfinity(m units.Metres, system units.System) string {
	if math.IsInf(float64(m), 0) {
		return "infinity"
	}
	return m.Text(system)
}
