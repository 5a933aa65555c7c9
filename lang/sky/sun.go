package sky

import (
	"math"
	"time"

	"longhand/lang/units"
)

// Place is a place on earth; north and east are positive.
type Place struct{ Lat, Lon units.Degrees }

// Sun is where the sun stands, seen from a place.
type Sun struct {
	Elevation units.Degrees // of the disc's middle, without refraction
	Azimuth   units.Degrees // clockwise from north, 0 to 360

	Refraction     units.Degrees // by which the air lifts it
	RightAscension units.Degrees // 0 to 360
	Declination    units.Degrees
	HourAngle      units.Degrees // -180 to 180, 0 at noon
	EquationOfTime units.Seconds // by which a sundial is ahead of the clock
}

// Apparent is the elevation at which the sun is seen.
func (s Sun) Apparent() units.Degrees { return s.Elevation + s.Refraction }

// Bearing is the azimuth as on paper with north up: counter-clockwise from +x,
// in (-180, 180].
func (s Sun) Bearing() units.Degrees { return (90 - s.Azimuth).Normalised() }

// JulianDate is the astronomers' day number of an instant.
func JulianDate(t time.Time) float64 {
	const unixEpoch = 2440587.5
	return unixEpoch + float64(t.Unix())/86400 + float64(t.Nanosecond())/86400e9
}

// At is the sun at an instant, by the NOAA method.
func At(p Place, t time.Time) Sun {
	e := ephemerisOf(JulianDate(t))
	u := t.UTC()
	minutes := float64(u.Hour())*60 + float64(u.Minute()) + (float64(u.Second())+float64(u.Nanosecond())/1e9)/60
	solar := minutes + e.equation + 4*float64(p.Lon)
	hour := wrap(solar/4-180, -180)

	sLat, cLat := math.Sincos(p.Lat.Radians())
	sDec, cDec := math.Sincos(rad(e.declination))
	sHour, cHour := math.Sincos(rad(hour))
	elevation := math.Asin(clamp(sLat*sDec + cLat*cDec*cHour))
	azimuth := math.Atan2(sHour*cDec, cHour*cDec*sLat-sDec*cLat) + math.Pi

	s := Sun{
		Elevation:      units.FromRadians(elevation),
		Azimuth:        units.Degrees(wrap(deg(azimuth), 0)),
		RightAscension: units.Degrees(e.ascension),
		Declination:    units.Degrees(e.declination),
		HourAngle:      units.Degrees(hour),
		EquationOfTime: units.Seconds(e.equation * 60),
	}
	s.Refraction = Refraction(s.Elevation)
	return s
}

type ephemeris struct{ ascension, declination, equation float64 } // degrees, degrees, minutes

// ephemerisOf is the sun's apparent place and the equation of time. The names
// of the quantities and all constants are those of the NOAA spreadsheet.
func ephemerisOf(julianDate float64) ephemeris {
	c := (julianDate - 2451545) / 36525 // centuries since J2000
	meanLongitude := wrap(280.46646+c*(36000.76983+c*0.0003032), 0)
	anomaly := rad(357.52911 + c*(35999.05029-0.0001537*c))
	eccentricity := 0.016708634 - c*(0.000042037+0.0000001267*c)
	center := math.Sin(anomaly)*(1.914602-c*(0.004817+0.000014*c)) +
		math.Sin(2*anomaly)*(0.019993-0.000101*c) + math.Sin(3*anomaly)*0.000289
	node := rad(125.04 - 1934.136*c)
	longitude := rad(meanLongitude + center - 0.00569 - 0.00478*math.Sin(node))
	meanObliquity := 23 + (26+(21.448-c*(46.815+c*(0.00059-c*0.001813)))/60)/60
	obliquity := rad(meanObliquity + 0.00256*math.Cos(node))

	y := math.Tan(obliquity/2) * math.Tan(obliquity/2)
	l := rad(meanLongitude)
	equation := y*math.Sin(2*l) - 2*eccentricity*math.Sin(anomaly) +
		4*eccentricity*y*math.Sin(anomaly)*math.Cos(2*l) -
		0.5*y*y*math.Sin(4*l) - 1.25*eccentricity*eccentricity*math.Sin(2*anomaly)
	return ephemeris{
		ascension:   wrap(deg(math.Atan2(math.Cos(obliquity)*math.Sin(longitude), math.Cos(longitude))), 0),
		declination: deg(math.Asin(clamp(math.Sin(obliquity) * math.Sin(longitude)))),
		equation:    4 * deg(equation),
	}
}

// Refraction is by how much a usual atmosphere lifts what stands at an elevation
// (the NOAA spreadsheet's four pieces).
func Refraction(elevation units.Degrees) units.Degrees {
	e := float64(elevation)
	t := math.Tan(elevation.Radians())
	var seconds float64 // of arc
	switch {
	case e > 85:
	case e > 5:
		seconds = 58.1/t - 0.07/(t*t*t) + 0.000086/(t*t*t*t*t)
	case e > -0.575:
		seconds = 1735 + e*(-518.2+e*(103.4+e*(-12.79+e*0.711)))
	case e > -90:
		seconds = -20.772 / t
	}
	return units.Degrees(seconds / 3600)
}

// Shadow is the length on level ground of the shadow of something of a height;
// infinite when the sun is down.
func Shadow(height units.Metres, elevation units.Degrees) units.Metres {
	if elevation <= 0 {
		return units.Metres(math.Inf(1))
	}
	return height / units.Metres(math.Tan(elevation.Radians()))
}

// wrap brings degrees into [from, from+360).
func wrap(degrees, from float64) float64 {
	w := math.Mod(degrees-from, 360)
	if w < 0 {
		w += 360
	}
	return w + from
}

func rad(degrees float64) float64 { return degrees * math.Pi / 180 }
func deg(radians float64) float64 { return radians * 180 / math.Pi }

// clamp keeps rounding from pushing a sine past one.
func clamp(v float64) float64 { return math.Max(-1, math.Min(1, v)) }
