package optics

import (
	"math"

	"longhand/lang/geom"
	"longhand/lang/units"
)

// View is a lens in a place, pointed somewhere.
type View struct {
	At    geom.Vec3         // entrance pupil, metres
	Pan   units.Degrees     // counter-clockwise from +x on the floor
	Tilt  units.Degrees     // up from the horizon
	Roll  units.Degrees     // the top of the frame leaning to its right
	Focal units.Millimetres // or the image distance of the focus, where that matters
}

// Image is where a point falls.
type Image struct {
	X, Y  units.Millimetres // on the gate, after squeeze, from its middle: right and up
	Depth units.Metres      // along the optical axis; not positive for what is behind the lens
}

// Axes are the unit directions of a view: along the optical axis, to the
// frame's right and to its top.
func (v View) Axes() (ahead, right, up geom.Vec3) {
	sp, cp := math.Sincos(v.Pan.Radians())
	st, ct := math.Sincos(v.Tilt.Radians())
	ahead = geom.Vec3{X: cp * ct, Y: sp * ct, Z: st}
	flatRight := geom.Vec3{X: sp, Y: -cp}
	flatUp := geom.Vec3{X: -cp * st, Y: -sp * st, Z: ct}
	sr, cr := math.Sincos(v.Roll.Radians())
	return ahead, flatRight.Mul(cr).Sub(flatUp.Mul(sr)), flatUp.Mul(cr).Add(flatRight.Mul(sr))
}

// Project is where a point falls (pinhole: x = f·X/Z). The second result is
// false for a point beside or behind the lens; then only Depth is filled in.
func (v View) Project(p geom.Vec3) (Image, bool) {
	ahead, right, up := v.Axes()
	d := p.Sub(v.At)
	depth := d.Dot(ahead)
	if !(depth > 0) {
		return Image{Depth: units.Metres(depth)}, false
	}
	k := float64(v.Focal) / depth
	return Image{
		X:     units.Millimetres(d.Dot(right) * k),
		Y:     units.Millimetres(d.Dot(up) * k),
		Depth: units.Metres(depth),
	}, true
}

// Ray is the direction from the lens of the point that falls at a place on the
// gate, of length 1.
func (v View) Ray(x, y units.Millimetres) geom.Vec3 {
	ahead, right, up := v.Axes()
	d := ahead.Mul(float64(v.Focal)).Add(right.Mul(float64(x))).Add(up.Mul(float64(y)))
	return d.Mul(1 / d.Len())
}

// LookAt turns the view towards a point, level; straight up or down keeps the
// pan.
func (v View) LookAt(p geom.Vec3) View {
	d := p.Sub(v.At)
	if floor := d.Floor(); floor.Len() > 0 {
		v.Pan = units.FromRadians(floor.Angle())
	}
	v.Tilt = units.FromRadians(math.Atan2(d.Z, d.Floor().Len()))
	v.Roll = 0
	return v
}

// Fraction is a place on the gate as parts of the frame: 0 to 1 from its left
// edge and from its lower edge.
func (f Frame) Fraction(i Image) (x, y float64) {
	return float64(i.X/f.Width) + 0.5, float64(i.Y/f.Height) + 0.5
}

// Holds says whether a place on the gate lies in the frame.
func (f Frame) Holds(i Image) bool {
	x, y := f.Fraction(i)
	return i.Depth > 0 && x >= 0 && x <= 1 && y >= 0 && y <= 1
}
