package syntax

import "longhand/lang/units"

// own puts a phrase's part in a field of its statement; false if the phrase
// says nothing of it.
func own[T any](f *folder, field **T, said *T, p *Phrase) bool {
	if said == nil {
		return false
	}
	once(f, field, said, p, p.Word())
	return true
}

// ownPlace takes a goal that is a place.
func ownPlace(f *folder, field **Place, g *Goal, p *Phrase) bool {
	return g != nil && own(f, field, g.Place, p)
}

// ownLength takes a goal that is a length.
func ownLength(f *folder, field **Quantity, g *Goal, p *Phrase) bool {
	return g.Is(units.Length) && own(f, field, g.Amount, p)
}

// ownMeasure takes an amount with or without its direction.
func ownMeasure(f *folder, field **Measure, p *Phrase) bool {
	if *field != nil && (p.isBare(units.Duration) || p.isBare(units.Speed)) {
		return false
	}
	if p.Measure != nil && p.Measure.Before != "" && p.Measure.After != "" {
		f.complain(p, "a direction is said twice: `"+p.Measure.Before+"` and `"+p.Measure.After+"`")
	}
	return own(f, field, p.Measure, p)
}

// ownAmount takes an amount without a direction.
func ownAmount(f *folder, field **Quantity, p *Phrase) bool {
	if p.Measure == nil || p.Measure.Dir() != "" || *field != nil && (p.isBare(units.Duration) || p.isBare(units.Speed)) {
		return false
	}
	return own(f, field, p.Measure.Amount, p)
}

func (s *BeatHead) fold(f *folder) {
	for _, p := range s.Said {
		switch {
		case own(f, &s.When, p.When, p), own(f, &s.For, p.For, p), own(f, &s.Start, p.Starting, p):
		default:
			f.foreign(p, p.Word())
		}
	}
	if s.Start != nil && s.When != nil {
		f.complain(s.When, "a beat starts at a time or `when` something happens, not both")
	}
}

func (s *Move) fold(f *folder) {
	s.Timed.fold(f, func(p *Phrase) bool { return s.Path.fold(f, p) })
	switch {
	case f.at != nil:
	case s.Path.To == nil && s.Path.Round == nil && s.Path.Eight == nil:
		f.complain(s, "`"+s.Verb+"` needs to say where: `to` a place, `round` one, or `eight round` two")
	}
}

func (t *Path) fold(f *folder, p *Phrase) bool {
	switch {
	case p.Via != nil:
		t.Via = append(t.Via, p.Via...)
	case p.Shape != "":
		if t.Shape != "" {
			f.twice(p, p.Shape)
		}
		t.Shape = p.Shape
	case p.Backwards:
		turnOn(f, &t.Backwards, true, p, "backwards")
	default:
		return own(f, &t.From, p.From, p) || ownPlace(f, &t.To, p.To, p) || own(f, &t.Round, p.Round, p) ||
			own(f, &t.Eight, p.Eight, p) || own(f, &t.Facing, p.Facing, p) || ownLength(f, &t.Radius, p.At, p)
	}
	return true
}

func (s *Stand) fold(f *folder) {
	s.Timed.fold(f, func(p *Phrase) bool { return ownPlace(f, &s.At, p.At, p) || own(f, &s.Facing, p.Facing, p) })
}

func (s *Turn) fold(f *folder) {
	s.Timed.fold(f, func(p *Phrase) bool { return own(f, &s.To, p.To, p) })
	if s.To == nil {
		f.complain(s, "`turns` needs to say to what: `to` a name, a point or an angle")
	}
}

func (s *Spin) fold(f *folder) {
	s.Timed.fold(f, func(p *Phrase) bool { return ownMeasure(f, &s.Turn, p) })
	needs(f, s, "spins", s.Turn, "left", "right")
}

func (s *Ride) fold(f *folder) {
	s.Timed.fold(f, func(p *Phrase) bool { return ownPlace(f, &s.At, p.At, p) })
}

func (s *Leave) fold(f *folder) {
	s.Timed.fold(f, func(p *Phrase) bool { return ownPlace(f, &s.To, p.To, p) })
}

func (s *Board) fold(f *folder) {
	s.Timed.fold(f, func(p *Phrase) bool { return ownPlace(f, &s.At, p.At, p) })
}

func (s *Spot) fold(f *folder) { s.Timed.fold(f, nil) }

func (s *Pose) fold(f *folder) {
	s.Timed.fold(f, func(p *Phrase) bool {
		if p.To != nil && p.To.Amount != nil {
			return own(f, &s.To, p.To.Amount, p)
		}
		return ownPlace(f, &s.At, p.At, p)
	})
}

func (s *Operate) fold(f *folder) { s.Timed.fold(f, nil) }
func (s *Say) fold(f *folder)     { s.Timed.fold(f, nil) }

func (s *Mount) fold(f *folder) {
	s.Timed.fold(f, func(p *Phrase) bool {
		switch {
		case p.With != nil && p.With.Crew != nil:
			return own(f, &s.Crew, p.With.Crew, p)
		case p.Measure != nil && p.Measure.Dir() == "up":
			return own(f, &s.Up, p.Measure.Amount, p)
		}
		return ownPlace(f, &s.At, p.At, p)
	})
}

func (s *TakeLens) fold(f *folder) {
	s.Timed.fold(f, func(p *Phrase) bool { return own(f, &s.Stop, p.Stop, p) || ownAmount(f, &s.Focal, p) })
}

func (s *See) fold(f *folder) {
	s.Timed.fold(f, func(p *Phrase) bool {
		switch {
		case p.Size != "":
			if s.Size != "" {
				f.twice(p, "how tight the frame is")
			}
			s.Size = p.Size
		case p.Fifty:
			turnOn(f, &s.Fifty, true, p, "fifty-fifty")
		case p.Glass != nil:
			f.complain(p, "a mirror stands right after whom it shows: mina in "+p.Glass.Text)
		default:
			return false
		}
		return true
	})
}

// lacks complains of an amount that stands without the word before it.
func lacks(f *folder, p *Phrase, d units.Dimension, word string) bool {
	if !p.isBare(d) {
		return false
	}
	f.complain(p, "`"+word+"` is missing before `"+p.Measure.Amount.Text+"`")
	return true
}

func (s *Lead) fold(f *folder) {
	s.Timed.fold(f, func(p *Phrase) bool {
		if lacks(f, p, units.Length, "by") {
			return true
		}
		if p.At.Is(units.Length) {
			f.complain(p, "a distance to keep is said with `by`: by "+p.At.Amount.Text)
			return true
		}
		return p.By != nil && p.By.Amount.Dimension() == units.Length && own(f, &s.Distance, p.By.Amount, p)
	})
	if s.Distance == nil {
		f.complain(s, "`"+s.Verb+"` needs its distance: by 2.1 m")
	}
}

func (s *Beside) fold(f *folder) {
	s.Timed.fold(f, func(p *Phrase) bool { return ownMeasure(f, &s.Side, p) })
	needs(f, s, "beside", s.Side, "left", "right")
}

func (s *Circle) fold(f *folder) {
	s.Timed.fold(f, func(p *Phrase) bool {
		return lacks(f, p, units.Length, "at") || ownMeasure(f, &s.Turn, p) || ownLength(f, &s.Radius, p.At, p)
	})
	needs(f, s, "circles", s.Turn, "left", "right")
}

func (s *Counter) fold(f *folder) {
	s.Timed.fold(f, func(p *Phrase) bool { return lacks(f, p, units.Length, "at") || ownLength(f, &s.Radius, p.At, p) })
}

func (s *Push) fold(f *folder) {
	s.Timed.fold(f, func(p *Phrase) bool { return ownAmount(f, &s.Distance, p) })
	if s.Distance == nil {
		f.complain(s, "`"+s.Verb+"` needs how far: "+s.Verb+" 1.2 m")
	}
}

func (s *Pan) fold(f *folder) {
	s.Timed.fold(f, func(p *Phrase) bool { return ownMeasure(f, &s.Turn, p) })
	if s.Verb == "tilts" {
		needs(f, s, "tilts", s.Turn, "up", "down")
	} else {
		needs(f, s, "pans", s.Turn, "left", "right")
	}
}

// needs complains of an amount without one of its two directions.
func needs(f *folder, at Spanned, verb string, m *Measure, one, other string) {
	if m == nil || m.Dir() != one && m.Dir() != other {
		f.complain(at, "`"+verb+"` needs an amount and a direction, `"+one+"` or `"+other+"`")
	}
}

func (s *Rack) fold(f *folder) {
	s.Timed.fold(f, func(p *Phrase) bool { return own(f, &s.To, p.To, p) || own(f, &s.Glass, p.Glass, p) })
	if s.To == nil {
		f.complain(s, "`racks` needs to say to what: `to` a name, a point or a distance")
	}
}

func (s *Hide) fold(f *folder) {
	s.Timed.fold(f, func(p *Phrase) bool { return own(f, &s.Card, p.Card, p) })
}

func (s *RollCamera) fold(f *folder) { s.Timed.fold(f, nil) }

func (s *Handoff) fold(f *folder) {
	s.Timed.fold(f, func(p *Phrase) bool {
		if p.With != nil && p.With.Crew != nil {
			return own(f, &s.Crew, p.With.Crew, p)
		}
		return ownPlace(f, &s.At, p.At, p) || own(f, &s.Weight, p.Weight, p)
	})
}

func (s *Cut) fold(f *folder) { s.Timed.fold(f, nil) }

func (s *Cue) fold(f *folder) {
	s.Timed.fold(f, func(p *Phrase) bool { return own(f, &s.Over, p.Over, p) })
}

func (s *DoorMoves) fold(f *folder) { s.Timed.fold(f, nil) }

func (s *PaintOut) fold(f *folder) {
	excuse(f, s.Excuses, &s.Camera, &s.During, &s.Because, "from")
	if s.Camera == nil {
		f.complain(s, "`paint out` needs the camera it is painted out of: from A")
	}
	if s.Because == nil {
		f.complain(s, "`paint out` needs a reason: because \"...\"")
	}
}

func (s *Allow) fold(f *folder) {
	excuse(f, s.Excuses, &s.Camera, &s.During, &s.Because, "in")
	if s.Because == nil {
		f.complain(s, "`allow` needs a reason: because \"...\"")
	}
}

// excuse puts the parts of a paint-out or an allowance in their fields; the
// camera follows the word the statement has for it.
func excuse(f *folder, list []*Excuse, camera **Name, during *[]*String, because **String, word string) {
	for _, e := range list {
		switch {
		case e.During != nil:
			*during = append(*during, e.During...)
		case e.Because != nil:
			once(f, because, e.Because, e, "because")
		case e.From != nil && word == "from":
			once(f, camera, e.From, e, "from")
		case e.In != nil && word == "in":
			once(f, camera, e.In, e, "in")
		case e.From != nil:
			f.foreign(e, "from")
		default:
			f.foreign(e, "in")
		}
	}
}
