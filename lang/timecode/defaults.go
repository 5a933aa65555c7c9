package timecode

import (
	"strings"

	"longhand/lang/units"
)

// SpeechPause is the time between one speaker's line and the next's: common
// practice, no source, from memory.
const SpeechPause units.Seconds = 0.5

// SpokenPaceHard is the fastest one speaks on stage, in words a minute; same
// source.
const SpokenPaceHard = 220

// MediaReserve is the part of a card to leave empty: common practice, no source,
// from memory.
const MediaReserve = 0.15

// Defaults lists what the package takes for granted, lengths in the system
// given.
func Defaults(s units.System) []units.Default {
	out := []units.Default{
		{Name: "speaking pace", Value: units.Number(SpokenPace, 0) + " words a minute, limit " + units.Number(SpokenPaceHard, 0),
			Source: "conversational US English, attributed to the National Center for Voice and Speech; limit: " + units.Practice},
		{Name: "pause between speakers", Value: SpeechPause.String(), Source: units.Practice},
		{Name: "film roll, usable", Value: units.Percent(100 * UsableFilm).String(), Source: units.Practice},
		{Name: "card, left empty", Value: units.Percent(100 * MediaReserve).String(), Source: units.Practice},
	}
	for _, g := range gauges {
		loads := make([]string, len(g.Loads))
		for i, l := range g.Loads {
			if s == units.Feet {
				loads[i] = units.Number(float64(l/units.Foot), 0) + " ft"
			} else {
				loads[i] = units.Number(float64(l), 0) + " m"
			}
		}
		out = append(out, units.Default{
			Name:   "film " + g.Name,
			Value:  units.Number(g.FramesPerFoot(), 2) + " frames a foot; rolls of " + strings.Join(loads, ", "),
			Source: "SMPTE pitch, nominal: 64 perforations a foot, 40 for 16 mm",
		})
	}
	return out
}
