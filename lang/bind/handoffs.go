package bind

import (
	"longhand/lang/plan"
	"longhand/lang/syntax"
)

func (l *line) handoff(s *syntax.Handoff) {
	c := is[*plan.Camera](l, s.Camera, "a camera is handed from rig to rig", plan.KindCamera)
	const reason = "a camera is handed from rig to rig"
	deed := &plan.Handoff{Camera: c, From: l.rigCalled(s.From, reason), To: l.rigCalled(s.To, reason), At: l.stand(s.At)}
	if s.From.Text == s.To.Text {
		l.errorf(CodeOutOfRange, l.at(s.To), "`%s` is handed from `%s` to itself; name two rigs", s.Camera.Text, s.From.Text)
	}
	deed.Weight = is[*plan.Person](l, s.Weight, "`weight` names who takes the operator's place", people...)
	deed.With = is[*plan.Person](l, s.Crew, "a camera is worked by a person", people...)
	if deed.With != nil && deed.With == deed.Weight {
		l.errorf(CodeWrongKind, l.at(s.Weight), "`%s` takes the camera and cannot be the weight on the rig it leaves", deed.With.Name)
	}
	l.mountedOn(c)
	if c != nil && deed.From != nil && s.From.Text != s.To.Text {
		l.fits.handed = append(l.fits.handed, onRigAt{onRig{l.shot(c), deed.From}, l.part(), l.at(s.From)})
	}
	l.puts(c, deed.To, deed.With, l.at(s.To))
	l.add(action{nil, "handoff", deed, &s.Timed, phrases{}})
}
