package syntax

import "longhand/lang/units"

// details calls own for every detail of a statement, and complains of those it
// does not take.
func details(f *folder, list []*Detail, own func(d *Detail) bool) {
	for _, d := range list {
		if !own(d) {
			f.foreign(d, d.Word())
		}
	}
}

// slot puts what a detail says in a field; false if it says nothing of it.
func slot[T any](f *folder, field **T, said *T, d *Detail) bool {
	if said == nil {
		return false
	}
	once(f, field, said, d, d.Word())
	return true
}

// set turns a switch on if the detail is its word.
func set(f *folder, field *bool, word string, d *Detail) bool {
	if d.Flag != word {
		return false
	}
	turnOn(f, field, true, d, word)
	return true
}

func (*TakeHead) fold(*folder)      {}
func (*Use) fold(*folder)           {}
func (*Scene) fold(*folder)         {}
func (*FrameRate) fold(*folder)     {}
func (*Aspect) fold(*folder)        {}
func (*Shutter) fold(*folder)       {}
func (*Sensitivity) fold(*folder)   {}
func (*Pace) fold(*folder)          {}
func (*Units) fold(*folder)         {}
func (*Tempo) fold(*folder)         {}
func (*Location) fold(*folder)      {}
func (*Day) fold(*folder)           {}
func (*Roll) fold(*folder)          {}
func (*Reset) fold(*folder)         {}
func (*Record) fold(*folder)        {}
func (*Film) fold(*folder)          {}
func (*Revision) fold(*folder)      {}
func (*SetHead) fold(*folder)       {}
func (*Mark) fold(*folder)          {}
func (*KitHead) fold(*folder)       {}
func (*Wash) fold(*folder)          {}
func (*PeopleHead) fold(*folder)    {}
func (*LookHead) fold(*folder)      {}
func (*Never) fold(*folder)         {}
func (*Only) fold(*folder)          {}
func (*BlurLimit) fold(*folder)     {}
func (*PanLimit) fold(*folder)      {}
func (*ExposureLimit) fold(*folder) {}
func (*UnderLimit) fold(*folder)    {}
func (*SpeedLimit) fold(*folder)    {}
func (*PickupHead) fold(*folder)    {}
func (*DeptNote) fold(*folder)      {}

func (s *Plan) fold(f *folder) {
	details(f, s.Details, func(d *Detail) bool { return slot(f, &s.Scale, d.Scale, d) })
}

// atLeast complains of too few points.
func (c *Corners) atLeast(f *folder, at Spanned, n int, why string) {
	if len(c.Points) < n {
		f.complain(at, why)
	}
}

func (s *Wall) fold(f *folder) {
	s.atLeast(f, s, 2, "a wall needs at least two points, its ends")
	details(f, s.Details, func(d *Detail) bool {
		return slot(f, &s.High, d.High, d) || slot(f, &s.Thick, d.Thick, d) ||
			set(f, &s.Wild, "wild", d) || set(f, &s.Glass, "glass", d)
	})
}

func (s *SetDoor) fold(f *folder) {
	details(f, s.Details, func(d *Detail) bool {
		return slot(f, &s.High, d.High, d) || set(f, &s.Open, "open", d) || set(f, &s.Shut, "shut", d)
	})
	if s.Open && s.Shut {
		f.complain(s, "a door is `open` or `shut`, not both")
	}
}

func (s *SetWindow) fold(f *folder) {
	details(f, s.Details, func(d *Detail) bool { return slot(f, &s.High, d.High, d) })
}

func (s *Hole) fold(f *folder) {
	details(f, s.Details, func(d *Detail) bool {
		if d.At != nil && d.At.Amount != nil {
			return slot(f, &s.At, d.At.Amount, d)
		}
		return slot(f, &s.Up, d.Up, d) || slot(f, &s.Wide, d.Wide, d)
	})
}

func (s *Pillar) fold(f *folder) {
	details(f, s.Details, func(d *Detail) bool {
		return slot(f, &s.Round, d.Round, d) || slot(f, &s.High, d.High, d)
	})
}

func (s *Block) fold(f *folder) {
	s.atLeast(f, s, 3, "a block needs at least three points, its corners")
	details(f, s.Details, func(d *Detail) bool { return slot(f, &s.High, d.High, d) })
}

func (s *Platform) fold(f *folder) {
	s.atLeast(f, s, 3, "a platform needs at least three points, its corners")
	details(f, s.Details, func(d *Detail) bool { return slot(f, &s.High, d.High, d) })
}

func (s *Stairs) fold(f *folder) {
	if len(s.Points) != 2 {
		f.complain(s, "stairs need two points, their foot and their head")
	}
	details(f, s.Details, func(d *Detail) bool {
		return slot(f, &s.Width, d.Width, d) || slot(f, &s.Rise, d.Rise, d)
	})
}

func (s *Mirror) fold(f *folder) {
	details(f, s.Details, func(d *Detail) bool { return slot(f, &s.High, d.High, d) })
}

func (s *Glow) fold(f *folder) {
	details(f, s.Details, func(d *Detail) bool {
		return slot(f, &s.High, d.High, d) || slot(f, &s.Luminance, d.Amount, d)
	})
}

func (s *Grid) fold(f *folder) {
	s.atLeast(f, s, 3, "a grid needs at least three points, its corners")
	details(f, s.Details, func(d *Detail) bool {
		return slot(f, &s.High, d.High, d) || slot(f, &s.Hang, d.Points, d)
	})
}

func (s *Supply) fold(f *folder) {
	details(f, s.Details, func(d *Detail) bool {
		return slot(f, &s.Times, d.Times, d) || slot(f, &s.Cable, d.Cable, d) || set(f, &s.Three, "three-phase", d)
	})
}

func (s *PlaceLamp) fold(f *folder) {
	details(f, s.Details, func(d *Detail) bool {
		if d.At != nil && d.At.Place != nil {
			return slot(f, &s.At, d.At.Place, d)
		}
		return slot(f, &s.Up, d.Up, d) || slot(f, &s.Aims, d.Aims, d)
	})
}

func (s *Camera) fold(f *folder) {
	details(f, s.Details, func(d *Detail) bool {
		return slot(f, &s.Squeeze, d.Squeeze, d) || slot(f, &s.Weighs, d.Weighs, d)
	})
}

func (s *Lens) fold(f *folder) {
	details(f, s.Details, func(d *Detail) bool {
		return slot(f, &s.Stops, d.Stops, d) || slot(f, &s.Weighs, d.Weighs, d) || slot(f, &s.Close, d.Close, d)
	})
}

func (s *Rig) fold(f *folder) {
	details(f, s.Details, func(d *Detail) bool {
		return slot(f, &s.Carries, d.Carries, d) || slot(f, &s.Size, d.Size, d) ||
			slot(f, &s.High, d.High, d) || slot(f, &s.Reach, d.Reach, d) ||
			slot(f, &s.Seats, d.Seats, d) || slot(f, &s.Speed, d.Speed, d) ||
			slot(f, &s.Back, d.Back, d) || slot(f, &s.Pan, d.Pan, d)
	})
}

func (s *Vehicle) fold(f *folder) {
	details(f, s.Details, func(d *Detail) bool {
		return slot(f, &s.High, d.High, d) || set(f, &s.Gear, "gear", d)
	})
}

func (s *Lamp) fold(f *folder) {
	details(f, s.Details, func(d *Detail) bool {
		if d.Amount != nil && d.Amount.Dimension() == units.Intensity {
			return slot(f, &s.Intensity, d.Amount, d)
		}
		return slot(f, &s.Power, d.Amount, d) || slot(f, &s.Colour, d.Colour, d) ||
			set(f, &s.Changes, "changes", d) || set(f, &s.Modern, "modern", d) || set(f, &s.Seen, "seen", d)
	})
}

func (s *Card) fold(f *folder) {
	details(f, s.Details, func(d *Detail) bool { return slot(f, &s.Colour, d.Colour, d) })
}

func (s *Performer) fold(f *folder) {
	details(f, s.Details, func(d *Detail) bool {
		return slot(f, &s.Height, d.Height, d) || slot(f, &s.Spread, d.Spread, d)
	})
}

func (s *Crew) fold(f *folder) {
	details(f, s.Details, func(d *Detail) bool {
		return slot(f, &s.Height, d.Height, d) || slot(f, &s.Weighs, d.Weighs, d) || slot(f, &s.Spread, d.Spread, d)
	})
}

// Word is the word a detail begins with.
func (d *Detail) Word() string {
	for _, w := range []struct {
		said bool
		word string
	}{
		{d.High != nil, "high"}, {d.Thick != nil, "thick"}, {d.At != nil, "at"}, {d.Up != nil, "up"},
		{d.Wide != nil, "wide"}, {d.Round != nil, "round"}, {d.Width != nil, "width"},
		{d.Rise != nil, "rise"}, {d.Points != nil, "points"}, {d.Times != nil, "x"},
		{d.Aims != nil, "aims"}, {d.Squeeze != nil, "squeeze"}, {d.Weighs != nil, "weighs"},
		{d.Stops != nil, "stops"}, {d.Close != nil, "close"}, {d.Carries != nil, "carries"},
		{d.Size != nil, "size"}, {d.Reach != nil, "reach"}, {d.Seats != nil, "seats"},
		{d.Speed != nil, "speed"}, {d.Back != nil, "back"}, {d.Pan != nil, "pan"},
		{d.Colour != nil, "colour"}, {d.Height != nil, "height"}, {d.Spread != nil, "spread"},
		{d.Scale != nil, "scale"}, {d.Zone != nil, "zone"}, {d.Cable != nil, "cable"}, {d.Flag != "", d.Flag},
	} {
		if w.said {
			return w.word
		}
	}
	if d.Amount != nil {
		return d.Amount.Text
	}
	return ""
}
