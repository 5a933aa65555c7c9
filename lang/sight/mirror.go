package sight

import "longhand/lang/units"

func (l *looker) mirrors(camera int, f units.Frame, put func(row int, s seen)) {}
