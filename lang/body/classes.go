package body

import "longhand/lang/units"

// RigOf is what is taken for granted about a class; the zero Rig for NoClass.
// All of it is common practice, from memory, and meant to be overridden by what
// the crew really brings.
func RigOf(c Class) Rig {
	r := rigs(c)
	r.Class = c
	if c.String() == "" {
		return Rig{}
	}
	return r
}

func accelLimit(typical, hard units.MetresPerSecond2) Limit[units.MetresPerSecond2] {
	return Limit[units.MetresPerSecond2]{Typical: typical, Hard: hard}
}

func turnLimit(typical, hard units.DegreesPerSecond) Limit[units.DegreesPerSecond] {
	return Limit[units.DegreesPerSecond]{Typical: typical, Hard: hard}
}

// The mechanical limit of a head on a tripod or dolly is that of a hand on the
// pan bar; of a remote head, its motor's.
var (
	handPan   = turnLimit(60, 360)
	remotePan = turnLimit(60, 90)
)

func rigs(c Class) Rig {
	switch c {
	case BodyRig:
		return Rig{
			Crewing: Worn,
			Forward: speedLimit(1.1, 1.6), Back: speedLimit(0.7, 1.2), Rise: speedLimit(0.3, 0.6),
			Accel: accelLimit(0.8, 1.5), Pan: turnLimit(45, 120), Radius: Limit[units.Metres]{Typical: 0.8, Hard: 0.4},
			Length: 0.6, Width: 0.5, Height: 1.6, Clear: 1.2, ClearHard: 0.8, Doorway: 0.9, Reach: 0.6,
			Lens: 1.45, LensLow: 0.5, LensUp: 1.8,
			Payload: Payload{Min: 5, Typical: 20, Max: 30},
		}
	case Gimbal:
		return Rig{
			Crewing: Worn,
			Forward: speedLimit(1.3, 2.5), Back: speedLimit(0.8, 1.3), Rise: speedLimit(0.5, 1),
			Accel: accelLimit(1.2, 2), Pan: turnLimit(90, 180),
			Length: 0.45, Width: 0.45, Height: 1.5, Clear: 1.2, ClearHard: 0.8, Doorway: 0.8, Reach: 0.5,
			Lens: 1.3, LensLow: 0.2, LensUp: 2.1,
			Payload: Payload{Min: 1, Typical: 8, Max: 14},
		}
	case Handheld:
		return Rig{
			Crewing: Worn,
			Forward: speedLimit(1.2, 2.5), Back: speedLimit(0.7, 1.3), Rise: speedLimit(0.4, 1),
			Accel: accelLimit(1.2, 2), Pan: turnLimit(90, 180),
			Length: 0.45, Width: 0.35, Height: 1.7, Clear: 1, ClearHard: 0.7, Doorway: 0.75, Reach: 0.3,
			Lens: 1.55, LensLow: 0.3, LensUp: 1.9,
			Payload: Payload{Min: 0.5, Typical: 10, Max: 14},
		}
	case Sticks:
		return Rig{
			Crewing: Beside, Pan: handPan, Rise: speedLimit(0, 0),
			Length: 1, Width: 1, Height: 1.6,
			Lens: 1.5, LensLow: 0.5, LensUp: 1.9,
			Payload: Payload{Min: 0.5, Typical: 15, Max: 30},
		}
	case Dolly:
		return Rig{
			Crewing: Ridden,
			Forward: speedLimit(0.75, 2), Back: speedLimit(0.75, 2), Rise: speedLimit(0.2, 0.4),
			Accel: accelLimit(0.5, 1), Pan: handPan, Radius: Limit[units.Metres]{Typical: 3, Hard: 1.2},
			Length: 1.4, Width: 0.7, Height: 1.2, Clear: TrackGauge + 1, ClearHard: TrackGauge + 0.6, Doorway: 0.9, Reach: 0.5, Seats: 2,
			Lens: 1.3, LensLow: 0.4, LensUp: 1.9,
			Payload: Payload{Typical: 40, Max: 250},
		}
	case Slider:
		return Rig{
			Crewing: Beside,
			Forward: speedLimit(0.3, 1), Back: speedLimit(0.3, 1),
			Accel: accelLimit(0.5, 1), Pan: handPan,
			Length: 1.2, Width: 0.5, Height: 1, Clear: 1, ClearHard: 0.7, Doorway: 0.8, Reach: 0.9,
			Lens: 1, LensLow: 0.15, LensUp: 1.6,
			Payload: Payload{Min: 0.5, Typical: 10, Max: 20},
		}
	case Jib:
		return Rig{
			Crewing: Beside,
			Forward: speedLimit(0.5, 1.5), Back: speedLimit(0.5, 1.5), Rise: speedLimit(0.5, 1.5),
			Accel: accelLimit(0.4, 0.8), Pan: remotePan, Radius: Limit[units.Metres]{Typical: 3, Hard: 1.2},
			Length: 1.2, Width: 1.2, Height: 1.4, Clear: 2.2, ClearHard: 1.6, Doorway: 1.3, Reach: 2.5,
			Lens: 1.5, LensLow: 0.1, LensUp: 3.5,
			Payload: Payload{Min: 1, Typical: 15, Max: 25},
		}
	case Crane:
		return Rig{
			Crewing: Beside,
			Forward: speedLimit(0.75, 2), Back: speedLimit(0.75, 2), Rise: speedLimit(0.75, 2),
			Accel: accelLimit(0.4, 0.8), Pan: remotePan, Radius: Limit[units.Metres]{Typical: 6, Hard: 3},
			Length: 2, Width: 1.4, Height: 1.6, Clear: 2.4, ClearHard: 2, Doorway: 1.6, Reach: 6,
			Lens: 2, LensLow: 0.2, LensUp: 7,
			Payload: Payload{Min: 2, Typical: 45, Max: 45, Plate: true},
		}
	case Cart:
		return Rig{
			Crewing: Ridden,
			Forward: speedLimit(2.2, 4.5), Back: speedLimit(1, 2),
			Accel: accelLimit(0.8, 1.5), Pan: handPan, Radius: Limit[units.Metres]{Typical: 4, Hard: 2.5},
			Length: 2.4, Width: 1.2, Height: 0.5, Clear: 2.2, ClearHard: 1.8, Doorway: 1.5, Reach: 0.6, Seats: 2,
			Lens: 1.5, LensLow: 0.3, LensUp: 2.2,
			Payload: Payload{Typical: 40, Max: 250, Plate: true},
		}
	case Cable:
		return Rig{
			Crewing: Unattended,
			Forward: speedLimit(2, 5), Back: speedLimit(2, 5), Rise: speedLimit(1, 2),
			Accel: accelLimit(0.8, 1.5), Pan: remotePan,
			Length: 0.6, Width: 0.6, Height: 3.4, Clear: 2, ClearHard: 1.5, Doorway: 1.5,
			Lens: 3, LensLow: 2.4, LensUp: 10,
			Payload: Payload{Min: 1, Typical: 15, Max: 15, Plate: true},
		}
	case Hide:
		return Rig{
			Crewing: Unattended, Pan: turnLimit(20, 60),
			Length: 0.3, Width: 0.3, Height: 1.6,
			Lens: 1.45, LensLow: 0.1, LensUp: 3,
		}
	}
	return Rig{}
}
