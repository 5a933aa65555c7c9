package cutlist

import (
	"encoding/json"

	"longhand/lang/motion"
	"longhand/lang/plan"
	"longhand/lang/units"
)

type object = map[string]any

// OTIO is the edit as a timeline in OpenTimelineIO's schema (Timeline.1, Track.1,
// Clip.2, Gap.1, Marker.2), with the beats as markers. Media is referred to as
// missing: nothing has been shot yet.
func OTIO(p *plan.Plan, t *motion.Tracks) ([]byte, error) {
	events, err := Events(t)
	if err != nil {
		return nil, err
	}
	rate := t.Rate.PerSecond()
	_, start, err := code(t.Rate)
	if err != nil { // a rate that no timecode counts: an hour of its frames
		start = t.Rate.From(startHour * 3600)
	}
	at := func(f units.Frame) object {
		return object{"OTIO_SCHEMA": "RationalTime.1", "rate": rate, "value": float64(f)}
	}
	between := func(from, to units.Frame) object {
		return object{"OTIO_SCHEMA": "TimeRange.1", "start_time": at(from), "duration": at(to - from)}
	}
	items := []object{}
	for _, e := range events {
		if e.Camera == nil {
			items = append(items, object{
				"OTIO_SCHEMA": "Gap.1", "name": "", "metadata": object{}, "source_range": between(0, e.To-e.From),
				"effects": []object{}, "markers": []object{}, "enabled": true,
			})
			continue
		}
		told := object{"camera": e.Camera.Name}
		if e.Cut != nil {
			told["cut"] = why(e.Cut)
		}
		items = append(items, object{
			"OTIO_SCHEMA": "Clip.2", "name": e.Camera.Name, "metadata": object{"longhand": told},
			"source_range": between(start+e.From, start+e.To),
			"effects":      []object{}, "markers": []object{}, "enabled": true,
			"active_media_reference_key": "DEFAULT_MEDIA",
			"media_references": object{"DEFAULT_MEDIA": object{
				"OTIO_SCHEMA": "MissingReference.1", "name": e.Camera.Name, "metadata": object{},
				"available_range": between(start, start+t.Rate.From(t.Clock.Length)), "available_image_bounds": nil,
			}},
		})
	}
	track := object{
		"OTIO_SCHEMA": "Track.1", "name": "cut", "kind": "Video", "metadata": object{}, "source_range": nil,
		"effects": []object{}, "markers": []object{}, "enabled": true, "children": items,
	}
	doc := object{
		"OTIO_SCHEMA": "Timeline.1", "name": p.Take.Title, "metadata": object{"longhand": object{"scene": p.Take.Scene}},
		"global_start_time": at(start),
		"tracks": object{
			"OTIO_SCHEMA": "Stack.1", "name": "tracks", "metadata": object{}, "source_range": nil,
			"effects": []object{}, "markers": beats(p, t, between), "enabled": true, "children": []object{track},
		},
	}
	out, err := json.MarshalIndent(doc, "", "  ")
	if err != nil {
		return nil, err
	}
	return append(out, '\n'), nil
}

func beats(p *plan.Plan, t *motion.Tracks, between func(from, to units.Frame) object) []object {
	out := []object{}
	for _, s := range t.Clock.Spans() {
		if s.Beat == nil {
			continue
		}
		from := max(0, t.Rate.From(s.From))
		to := max(from, min(t.Rate.From(s.To), t.Rate.From(t.Clock.Length)))
		out = append(out, object{
			"OTIO_SCHEMA": "Marker.2", "name": s.Beat.Title, "metadata": object{}, "color": "GREEN",
			"comment": "", "marked_range": between(from, to),
		})
	}
	return out
}
