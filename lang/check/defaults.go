package check

import (
	"fmt"

	"longhand/lang/optics"
	"longhand/lang/units"
)

// Defaults lists what the rules of lens, light and day take for granted where the
// plan says nothing, beyond what the packages they rest on list themselves.
func Defaults(s units.System) []units.Default {
	var out []units.Default
	add := func(name, format string, args ...any) {
		out = append(out, units.Default{Name: name, Value: fmt.Sprintf(format, args...), Source: units.Practice})
	}
	quarter := func(t units.Seconds) string { return units.Number(float64(t), 2) + " s" }
	per := func(part float64) units.Percent { return units.Percent(100 * part) }
	add("too tight, for longer than", "%s", moment)
	add("shot of somebody, shown at least", "%s", per(shownEnough))
	add("off size, for longer than", "%s, more than one size; a note below %s of the line", sizeOffFor, per(sizeOffMost))
	add("even pair", "within %s times in size, %s of the frame's width off the middle, for longer than %s", units.Number(pairRatio, 2), per(pairMiddle), pairFor)
	add("soft, first one named", "outside the depth of field for longer than %s", softFor)
	add("soft, others named", "%s circles for longer than %s", units.Number(softTwice, 1), softOtherFor)
	add("face, ahead of the body's middle", "%s", units.Metres(faceAhead).Text(s))
	add("focus nearer than the lens goes", "for longer than %s", closeFor)
	add("background too soft", "more than %s of it for longer than %s", per(blurPart), blurFor)
	add("pan that strobes", "for longer than %s; from one subject to another %s a frame's width, for longer than %s", quarter(strobeFor), strobeHard, strobeAcross)
	add("pan that holds somebody", "they go by at less than %s of the pan's speed", per(heldPart))
	add("cut at a joint", "for longer than %s", cutFor)
	add("cut head", "for longer than %s", headCutFor)
	add("lamps on a grid in frame", "for longer than %s, spread evenly", quarter(hungFor))
	add("a face under the stop of the lens", "by %s where the look says nothing, for longer than %s", stopsText(optics.FaceUnder), faceDarkFor)
	add("light on a face, warned of from", "%s where the look says nothing", stopsText(optics.SwingStopsHard))
	add("pickup's light", "within %s, and %s while the sun is up", stopsText(pickupStops), pickupTurn)
	add("sun in frame", "for longer than %s while its middle is up", quarter(sunFor))
	add("room", "walls of %s or more on %s of all sides", units.Metres(roomHigh).Text(s), per(roofWalls))
	add("lamps no cue moves", "burn in full; others are out until their first cue")
	return out
}
