package motion

import (
	"fmt"
	"math"

	"longhand/lang/geom"
	"longhand/lang/plan"
)

// route is the way a move takes over the floor.
type route struct {
	path  *geom.Path
	stops []float64 // length at each of the plan path's Stops()
	bends bends
	memo  *memo
}

// newRoute is a path ready to be gone along.
func newRoute(path *geom.Path, stops []float64) route {
	return route{path: path, stops: stops, bends: newBends(path), memo: &memo{}}
}

// routeFor is the way from where the subject is. heading is the way a wheeled
// thing points, and radius the least it turns in: its way sets out in its
// heading. A radius of 0 turns on the spot.
func routeFor(start geom.Vec, heading, radius float64, p *plan.Path) (route, error) {
	switch p.Shape {
	case plan.Round:
		return roundRoute(start, p)
	case plan.Eight:
		return eightRoute(start, p)
	}
	build := geom.NewCurved
	if p.Shape == plan.Straight {
		build = geom.NewStraight
	}
	points := told(start, p.Stops(), build)
	var path *geom.Path
	var lead *geom.Path
	if p.Shape == plan.Straight {
		path = geom.NewStraight(points...)
	} else if arc, ok := turnIn(start, heading, radius, points); ok {
		lead = arc
		points[0] = arc.End()
		path = arc.Append(geom.NewCurvedFrom(arc.Heading(arc.Length()), points...))
	} else {
		path = geom.NewCurved(points...)
	}
	lengths := path.Stops()
	if lead != nil { // its two ends are no stops of the move
		lengths = append([]float64{0}, lengths[len(lengths)-len(points)+1:]...)
	}
	return finished(path, lengths[1:], p), nil
}

// told are the start and the points of a path's stops. Those on the way that are
// told from it, `via 1.5 m before M1`, lie that far short of it on the way that
// leads there from the stops before; the last is for finished.
func told(start geom.Vec, stops []plan.Place, build func(...geom.Vec) *geom.Path) []geom.Vec {
	points := []geom.Vec{start}
	for i, s := range stops {
		p := s.Point
		if s.Before != 0 && i < len(stops)-1 && p.Dist(points[i]) > 1e-6 {
			way := build(append(points[:i+1:i+1], p)...)
			p = way.AtExtended(max(way.Length()-float64(s.Before), way.Stops()[i]))
		}
		points = append(points, p)
	}
	return points
}

// finished cuts or lengthens the path to an end that is told from its last stop:
// `1.5 m before M1` is that far short of it along the way.
func finished(path *geom.Path, stops []float64, p *plan.Path) route {
	places := p.Stops()
	if n := len(places); n > 0 && len(stops) > 0 && places[n-1].Before != 0 {
		end := clamp(stops[len(stops)-1]-float64(places[n-1].Before), 0, math.Inf(1))
		stops[len(stops)-1] = end
		if end > path.Length() {
			path = path.Append(geom.NewStraight(path.End(), path.AtExtended(end)))
		} else {
			path = path.Sub(0, end)
		}
	}
	for i := range stops {
		stops[i] = min(stops[i], path.Length())
	}
	return newRoute(path, stops)
}

// roundRoute goes straight to the nearest point of the circle where the subject
// isn't on it, round it, and on to its end where it has one.
func roundRoute(start geom.Vec, p *plan.Path) (route, error) {
	centre := p.Centre.Point
	radius := float64(p.Radius)
	off := start.Sub(centre)
	if radius <= 0 {
		radius = off.Len()
	}
	if radius < 1e-6 {
		return route{}, fmt.Errorf("it stands on %s itself and no radius is given", p.Centre.Text)
	}
	from := off.Angle() // +x where it stands on the centre
	sweep := p.Angle.Radians()
	if p.Turn == plan.Right {
		sweep = -sweep
	}
	arc := geom.NewArc(centre, radius, from, sweep)
	path := arc
	if start.Dist(arc.Start()) > 1e-9 {
		path = geom.NewStraight(start, arc.Start()).Append(arc)
	}
	return onward(path, p), nil
}

func eightRoute(start geom.Vec, p *plan.Path) (route, error) {
	path, err := geom.NewEight(start, p.Centre.Point, p.Other.Point, float64(p.Radius))
	if err != nil {
		return route{}, err
	}
	return onward(path, p), nil
}

// onward goes on from a figure to the path's stops, without a corner.
func onward(path *geom.Path, p *plan.Path) route {
	places := p.Stops()
	if len(places) == 0 {
		return newRoute(path, nil)
	}
	figure := path.Length()
	points := told(path.End(), places, func(through ...geom.Vec) *geom.Path {
		return geom.NewCurvedFrom(path.Heading(figure), through...)
	})
	rest := geom.NewCurvedFrom(path.Heading(figure), points...)
	stops := rest.Stops()[1:]
	for i := range stops {
		stops[i] += figure
	}
	return finished(path.Append(rest), stops, p)
}

// turnIn is the arc on which something that points one way turns until it
// points at the first place it goes to. It is false where there is nothing to
// turn, or where the place lies inside the turning circle.
func turnIn(start geom.Vec, heading, radius float64, points []geom.Vec) (*geom.Path, bool) {
	const least = 5 * math.Pi / 180
	if radius <= 0 || len(points) < 2 || points[1].Dist(start) < 1e-6 {
		return nil, false
	}
	off := geom.AngleDiff(heading, points[1].Sub(start).Angle())
	if math.Abs(off) < least {
		return nil, false
	}
	side := math.Copysign(1, off)
	centre := start.Add(geom.Polar(radius, heading+side*math.Pi/2))
	to := points[1].Sub(centre)
	if to.Len() <= radius*1.05 {
		return nil, false
	}
	// The tangent from the place touches the circle where the radius makes an
	// angle of acos(r/d) with the way to it.
	touch := to.Angle() - side*math.Acos(radius/to.Len())
	from := heading - side*math.Pi/2
	sweep := math.Mod((touch-from)*side, 2*math.Pi)
	if sweep < 0 {
		sweep += 2 * math.Pi
	}
	return geom.NewArc(centre, radius, from, side*sweep), sweep > 1e-9
}
