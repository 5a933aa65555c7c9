package syntax

import "strings"

// Notation is what the capitals of a usage stand for.
var Notation = map[string]string{
	"NAME":     "a name: mail-van, M1",
	"STRING":   "a text: \"...\"",
	"NUMBER":   "a number: 1.85",
	"INT":      "a whole number: 12",
	"POINT":    "(x, y) | (x, y, z) | the name of a mark",
	"LENGTH":   "a length: 2.4 m, 8'6\"",
	"MASS":     "a weight: 2.6 kg, 5.7 lb",
	"SPEED":    "a speed: 1.2 m/s, 12 km/h, 4 ft/s",
	"ANGLE":    "an angle: 45 deg",
	"DURATION": "a time: 12 s, 1:04.5, 90 f, 16 counts, 2 bars",
	"TARGET":   "PLACE | the name of a person or a thing",
	"MIRROR":   "the name of a mirror",
	"CARRIER":  "the name of a vehicle or a rig",
	"SECTION":  "a wire's cross-section: 6 mm2, 10 AWG",
	"T":        "a stop: T2.8",
	"GAUGE":    "the film: 35mm-4perf, 35mm-3perf, 16mm",
	"OFFSET":   "the clocks' lead on universal time: +02:00",
	"CODE":     "the code of a finding: two-moves",
	"HIGH":     "high LENGTH [to LENGTH]",
	"PATH":     "[from PLACE] [via PLACE, ...] to PLACE [straight|curved] | round PLACE ANGLE left|right [at LENGTH] | eight round PLACE, PLACE [at LENGTH]; each [facing TARGET] [backwards]",
	"TIMING":   "[starting TIME | when EVENT [plus|minus DURATION] | with] [in DURATION | for DURATION | at SPEED] [by TIME] [until TIME|EVENT]",
	"TIME":     "+DURATION | 1:04 | bar 12.3",
	"EVENT":    "NAME reaches|leaves PLACE | NAME says STRING | cue NAME | beat STRING starts|ends",
	"PLACE":    "POINT | POINT + (x, y) | LENGTH left|right of POINT | LENGTH before|after POINT",
	"SIZE":     strings.Join(Sizes, "|"),
	"CLASS":    strings.Join(Classes, "|"),
	"WINDOW":   strings.Join(Windows, "|") + " | 19:40 to 20:25",
}
