package pace

import (
	"math"
	"testing"

	"longhand/lang/units"
)

// Any numbers at all: no panic, and every profile ends where it says.
func FuzzMove(f *testing.F) {
	f.Add(10.0, 1.3, 1.5, 0.0, 0.0, 0.0, 12.0, false)
	f.Add(10.0, 0.0, 1.5, 2.0, 1.0, 3.0, 2.0, true)
	f.Add(1e300, 1e-300, 1e-300, 1e300, 1e10, 0.0, 1e-9, true)
	f.Add(math.NaN(), math.Inf(1), -1.0, math.NaN(), math.Inf(-1), 1.0, math.NaN(), true)
	f.Fuzz(func(t *testing.T, length, speed, accel, brake, entry, exit, time float64, capped bool) {
		m := Move{
			Length: units.Metres(length),
			Pace: Pace{
				Speed: units.MetresPerSecond(speed),
				Accel: units.MetresPerSecond2(accel), Brake: units.MetresPerSecond2(brake),
			},
			Entry: units.MetresPerSecond(entry), Exit: units.MetresPerSecond(exit),
		}
		if capped {
			m.Cap = func(s units.Metres) units.MetresPerSecond { return units.MetresPerSecond(speed - float64(s)) }
		}
		natural, _ := m.Natural()
		in, _ := m.In(units.Seconds(time))
		for _, p := range []*Profile{natural, in} {
			if p.At(p.Duration()) != p.Length() {
				t.Fatalf("ends at %v of %v", p.At(p.Duration()), p.Length())
			}
			for _, k := range []float64{-1, 0, 0.3, 1, 2, math.NaN()} {
				at := p.Duration() * units.Seconds(k)
				p.At(at)
				p.Speed(at)
				p.Accel(at)
				p.TimeAt(p.Length() * units.Metres(k))
			}
			p.Peak()
			p.Strain()
		}
	})
}
