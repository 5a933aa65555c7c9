package units

// String prints lux with as many figures as a meter shows: "240 lx", "3.4 lx",
// "0.008 lx".
func (e Lux) String() string {
	switch {
	case e >= 100:
		return decimal(float64(e), 0) + " lx"
	case e >= 1:
		return decimal(float64(e), 1) + " lx"
	}
	return decimal(float64(e), 3) + " lx"
}

// Footcandles prints the light as crews in feet say it: "22 fc". A footcandle is
// a lumen a square foot.
func (e Lux) Footcandles() string {
	fc := float64(e) * float64(Foot) * float64(Foot)
	if fc >= 10 {
		return decimal(fc, 0) + " fc"
	}
	return decimal(fc, 1) + " fc"
}

func (i Candela) String() string { return decimal(float64(i), 0) + " cd" }
func (l Nits) String() string    { return decimal(float64(l), 0) + " cd/m²" }

// Text prints an acceleration in the plan's system: "1.5 m/s²" or "4.9 ft/s²".
func (a MetresPerSecond2) Text(s System) string {
	if s == Feet {
		return decimal(float64(a)/float64(Foot), 1) + " ft/s²"
	}
	return decimal(float64(a), 2) + " m/s²"
}
