package body

import "longhand/lang/units"

// Vehicle is what is taken for granted about anything that drives.
type Vehicle struct {
	Speed Limit[units.MetresPerSecond] // with people on foot nearby
	Back  Limit[units.MetresPerSecond]
	Accel Limit[units.MetresPerSecond2]
	// Lateral is v²/r in a curve with people aboard.
	Lateral Limit[units.MetresPerSecond2]
	Radius  units.Metres // least radius of a curve
}

// AnyVehicle is the vehicle assumed where a plan gives no more than its size.
func AnyVehicle() Vehicle {
	return Vehicle{
		Speed:   speedLimit(2.2, 4.5),
		Back:    speedLimit(1, 1.5),
		Accel:   accelLimit(1, 2),
		Lateral: accelLimit(1.5, 3),
		Radius:  4,
	}
}

// Mount is what a camera mount on a vehicle's side or bonnet carries.
var Mount = Payload{Typical: 10, Max: 20, Plate: true}

func (l *list) vehicles() {
	v := AnyVehicle()
	l.add(Practice, "vehicle, speed with people on foot nearby", "%s", l.pace(v.Speed))
	l.add(Practice, "vehicle, speed backwards", "%s", l.pace(v.Back))
	l.add(Practice, "vehicle, speeding up and braking", "%s, limit %s", l.accel(v.Accel.Typical), l.accel(v.Accel.Hard))
	l.add(Practice, "vehicle, sideways in a curve", "%s, limit %s", l.accel(v.Lateral.Typical), l.accel(v.Lateral.Hard))
	l.add(Practice, "vehicle, curve", "radius at least %s", l.length(v.Radius))
	l.add(Practice, "vehicle, camera mount on side or bonnet", "%s, limit %s with safety lines", Mount.Typical, Mount.Max)
}
