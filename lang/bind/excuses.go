package bind

import (
	"sort"
	"strings"

	"longhand/lang/plan"
	"longhand/lang/syntax"
)

func sorted(list []string) []string {
	sort.Strings(list)
	return list
}

// paintOut accepts that a thing is in frame.
func (l *line) paintOut(s *syntax.PaintOut) {
	out := &plan.PaintOut{Beat: l.beat, Pickup: l.pickup, Span: l.span, Because: l.reason(s.Because, "paint out")}
	out.Thing = l.find(s.What, "only what stands in frame is painted out", inFrame...)
	out.Camera = is[*plan.Camera](l, s.Camera, "`from` takes the camera it is painted out of", plan.KindCamera)
	if out.Camera != nil && out.Thing == plan.Thing(out.Camera) {
		l.errorf(CodeWrongKind, l.at(s.Camera), "`%s` does not see itself; name the camera that sees it", out.Camera.Name)
	}
	out.During = l.during(s.During)
	if !l.bad {
		l.plan.PaintOuts = append(l.plan.PaintOuts, out)
	}
}

// inFrame is what a lens can see that may have to be painted out.
var inFrame = append(append([]plan.Kind(nil), visible...), plan.KindCard, plan.KindLamp, plan.KindWash, plan.KindGrid)

func (l *line) allow(s *syntax.Allow) {
	out := &plan.Allow{Code: s.Code.Text, Beat: l.beat, Pickup: l.pickup, Span: l.span, Because: l.reason(s.Because, "allow")}
	if l.codes != nil {
		l.knownCode(s.Code)
	}
	if s.What != nil {
		out.Thing = l.find(s.What, "", nil...)
	}
	out.Camera = is[*plan.Camera](l, s.Camera, "`in` takes a camera", plan.KindCamera)
	out.During = l.during(s.During)
	if !l.bad {
		l.plan.Allows = append(l.plan.Allows, out)
	}
}

func (l *line) knownCode(n *syntax.Name) {
	for _, c := range l.codes {
		if c == n.Text {
			return
		}
	}
	d := l.errorf(CodeUnknownWord, l.at(n), "no finding has the code `%s`", n.Text)
	if !suggest(d, l.at(n), n.Text, l.codes) {
		d.Note("the code stands in front of each finding")
	}
}

func (l *line) reason(because *syntax.String, what string) string {
	text := because.Value()
	if because != nil {
		l.need(strings.TrimSpace(text) != "", because, "the reason is empty; `%s` needs one that others understand", what)
	}
	return text
}
