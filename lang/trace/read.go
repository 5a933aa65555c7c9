package trace

import (
	"encoding/json"
	"fmt"
	"io"
)

// Own is a body left out of its own camera's view for a while. In JSON it is a
// list of three: name, from, to.
type Own struct {
	Body     string
	From, To int
}

// UnmarshalJSON reads [body, from, to].
func (o *Own) UnmarshalJSON(data []byte) error {
	three := []any{&o.Body, &o.From, &o.To}
	if err := json.Unmarshal(data, &three); err != nil {
		return fmt.Errorf("an own body is not [name, from, to]: %w", err)
	}
	if len(three) != 3 {
		return fmt.Errorf("an own body has %d members, not name, from and to", len(three))
	}
	return nil
}

// MarshalJSON writes [body, from, to].
func (o Own) MarshalJSON() ([]byte, error) { return json.Marshal([]any{o.Body, o.From, o.To}) }

// Read reads a trace back and checks that its parts fit together.
func Read(r io.Reader) (*Trace, error) {
	var t Trace
	d := json.NewDecoder(r)
	d.DisallowUnknownFields()
	if err := d.Decode(&t); err != nil {
		return nil, fmt.Errorf("not a trace: %w", err)
	}
	return &t, t.check()
}

func (t *Trace) check() error {
	if !(t.Rate > 0) || t.Frames < 0 {
		return fmt.Errorf("%d frames at %g a second are no take", t.Frames, t.Rate)
	}
	for _, b := range t.Bodies {
		if len(b.Track) != t.Frames {
			return fmt.Errorf("body %s: %d frames of track in a take of %d", b.Name, len(b.Track), t.Frames)
		}
		if (b.Radius > 0) == (len(b.Polygon) > 0) {
			return fmt.Errorf("body %s: needs a radius or a polygon", b.Name)
		}
	}
	for _, c := range t.Cameras {
		if len(c.Track) != t.Frames || c.Roll != nil && len(c.Roll) != t.Frames {
			return fmt.Errorf("camera %s: %d frames of track in a take of %d", c.Name, len(c.Track), t.Frames)
		}
	}
	for _, s := range t.Sight {
		for _, r := range s.Runs {
			n := r.To - r.From + 1
			if r.From < 0 || r.To >= t.Frames || len(r.Visible) != n || len(r.Share) != n {
				return fmt.Errorf("%s in %s: run %d to %d with %d and %d numbers", s.Body, s.Camera, r.From, r.To, len(r.Visible), len(r.Share))
			}
		}
	}
	return nil
}
