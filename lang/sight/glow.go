package sight

import "longhand/lang/units"

func (st *stage) newGlares() []Glare { return nil }

func (w *tileWorker) glows(camera int, f units.Frame) {}
