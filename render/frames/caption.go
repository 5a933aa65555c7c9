package frames

import (
	"math"
	"strconv"
	"strings"

	"longhand/lang/body"
	"longhand/lang/geom"
	"longhand/lang/motion"
	"longhand/lang/optics"
	"longhand/lang/plan"
	"longhand/lang/units"
	"longhand/render/fonts"
)

const labelFace = fonts.Bold

// Caption is what stands beneath a frame, a line each: camera, when; what it sees
// and how much of them; lens, stop and distances. Nothing is said of what the
// plan does not know.
func (d *Drawer) Caption(camera *plan.Camera, f units.Frame, moment string) []string {
	ct := d.r.Tracks.Camera(camera)
	if ct == nil {
		return nil
	}
	at := d.r.Tracks.Rate.Time(f)
	head := camera.Name + ", " + moment + "  " + at.Clock() + "  frame " + strconv.Itoa(int(f))
	v := ct.At(at)
	targets := ct.Targets(at)
	names := make([]string, len(targets))
	var who *plan.Person
	var in *plan.Mirror
	for i, t := range targets {
		names[i] = t.Name()
		if p, ok := t.Thing.(*plan.Person); ok && who == nil {
			who, in = p, t.Glass
		}
	}
	system := d.r.Plan.Take.Units
	sees := "no subject"
	if len(names) > 0 {
		sees = "on " + strings.Join(names, " and ")
	}
	if who != nil {
		if size, off, ok := d.size(camera, who, in, f); ok {
			sees += ": " + size
			if off != "" {
				sees += " (" + off + ")"
			}
		}
	}
	for _, t := range targets {
		if p, ok := t.Thing.(*plan.Person); ok && t.Glass == nil {
			if how := d.missing(camera, p, f); how != "" {
				sees += "; " + p.Name + " " + how
			}
		}
	}
	var glass []string
	if v.Focal > 0 {
		glass = append(glass, units.Millimetres(v.Focal).String())
	}
	stop := ct.Stop(at)
	if stop > 0 {
		glass = append(glass, stop.String())
	}
	if v.Focus > 0 {
		if math.IsInf(v.Focus, 1) {
			glass = append(glass, "focus at infinity")
		} else {
			glass = append(glass, "focus "+units.Metres(v.Focus).Text(system))
		}
		if stop > 0 && v.Focal > 0 {
			lens := optics.Focus{Focal: units.Millimetres(v.Focal), Stop: stop, Circle: ct.Frame.Circle()}
			near, far := lens.Limits(units.Metres(v.Focus))
			if math.IsInf(float64(far), 1) {
				glass = append(glass, "sharp from "+near.Text(system))
			} else {
				glass = append(glass, "sharp "+near.Text(system)+" to "+far.Text(system))
			}
		}
	}
	place := "lens up " + units.Metres(v.Z).Text(system)
	if h := ct.Hold(at); h != nil {
		switch {
		case h.Hide != nil && h.Hide.Hole != nil:
			place += ", behind " + h.Hide.Hole.Name
		case h.Rig != nil:
			place += ", on " + h.Rig.Name
		}
		if h.Operator != nil {
			place += " with " + h.Operator.Name
		}
	}
	return []string{head, sees, strings.Join(glass, ", "), place}
}

// missing says why somebody cannot be found in a picture; "" where they can.
func (d *Drawer) missing(camera *plan.Camera, who *plan.Person, f units.Frame) string {
	if d.r.Sight == nil {
		return ""
	}
	how := "out of frame"
	for i := range d.r.Sight.Sight {
		r := &d.r.Sight.Sight[i]
		if f < r.From || f > r.To || d.r.Stage.Cameras[r.Camera] != camera || d.r.Stage.Things[r.Body] != plan.Thing(who) {
			continue
		}
		if r.At(f).Visible > 0 {
			return ""
		}
		how = "hidden"
	}
	return how
}

// size is how a person, or their reflection in a mirror, is framed, and what was asked
// for where it differs.
func (d *Drawer) size(camera *plan.Camera, who *plan.Person, in *plan.Mirror, f units.Frame) (size, off string, ok bool) {
	ct, tr := d.r.Tracks.Camera(camera), d.r.Tracks.Body(who)
	if tr == nil || ct.Frame.Height <= 0 {
		return "", "", false
	}
	at := d.r.Tracks.Rate.Time(f)
	v, pose := ct.At(at), motion.Image(in, tr.At(at))
	if !(v.Focal > 0) {
		return "", "", false
	}
	ahead := geom.Polar(1, v.Pan)
	to := pose.Point().Sub(geom.Vec{X: v.X, Y: v.Y})
	depth := to.Dot(ahead)*math.Cos(v.Tilt) + (float64(pose.Z+pose.Height/2)-v.Z)*math.Sin(v.Tilt)
	if depth <= 0 {
		return who.Name + " is behind the lens", "", true
	}
	high := optics.Field(ct.Frame.Height, units.Millimetres(v.Focal), units.Metres(depth))
	is := body.SizeOf(high, tr.Stature)
	name := is.String()
	if is == body.NoSize {
		name = "smaller than wide"
	}
	size = name + " of " + who.Name + " at " + units.Metres(depth).Text(d.r.Plan.Take.Units)
	if in != nil {
		size += " by way of " + in.Name
	}
	if asked := ct.Size(at); asked != body.NoSize && asked != is {
		off = "asked " + asked.String()
	}
	return size, off, true
}
