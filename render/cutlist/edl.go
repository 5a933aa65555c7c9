package cutlist

import (
	"fmt"
	"strings"

	"longhand/lang/motion"
	"longhand/lang/plan"
)

// mostEvents is how many edits the numbers of a list can tell apart.
const mostEvents = 999

// EDL is the edit as a list in CMX 3600's form, which SMPTE ST 258 describes:
// video only, cuts only, drop-frame timecode for 29.97.
func EDL(p *plan.Plan, t *motion.Tracks) ([]byte, error) {
	events, err := Events(t)
	if err != nil {
		return nil, err
	}
	if len(events) > mostEvents {
		return nil, fmt.Errorf("the take has %d edits, and a list of this form holds %d", len(events), mostEvents)
	}
	rate := t.Rate
	if perSecond := rate.PerSecond(); perSecond > 30 {
		return nil, fmt.Errorf("an edit decision list counts at most 30 frames a second, and the take runs at %s; take --as otio", rate)
	}
	tc, start, err := code(rate)
	if err != nil {
		return nil, fmt.Errorf("an edit decision list cannot count %s frames a second: %w", rate, err)
	}
	var b strings.Builder
	title := p.Take.Title
	if p.Take.Scene != "" {
		title += " " + p.Take.Scene
	}
	fmt.Fprintf(&b, "TITLE: %s\r\n", plainText(title, 70))
	if tc.DropFrame() {
		b.WriteString("FCM: DROP FRAME\r\n")
	} else {
		b.WriteString("FCM: NON-DROP FRAME\r\n")
	}
	names := reels(p.Kit.Cameras)
	for i, e := range events {
		reel := "BL"
		if e.Camera != nil {
			reel = names[e.Camera]
		}
		in, out := tc.Label(start+e.From), tc.Label(start+e.To)
		source, end := in, out
		if e.Camera == nil { // black has no times of its own
			source, end = tc.Label(0), tc.Label(e.To-e.From)
		}
		fmt.Fprintf(&b, "%03d  %-8s V     C        %s %s %s %s\r\n", i+1, reel, source, end, in, out)
		if e.Camera != nil {
			fmt.Fprintf(&b, "* FROM CLIP NAME: %s\r\n", plainText(e.Camera.Name, 60))
		}
		if e.Cut != nil {
			fmt.Fprintf(&b, "* COMMENT: %s\r\n", plainText(why(e.Cut), 60))
		}
	}
	return []byte(b.String()), nil
}

// why is what a cut waits for, or the line itself.
func why(a *plan.Action) string {
	return strings.Join(strings.Fields(a.Span.Text()), " ")
}

// plainText keeps what every reader of lists takes: ASCII, one line.
func plainText(text string, most int) string {
	return strings.TrimSpace(ascii(text, nil, most))
}

// ascii turns a text into ASCII, upper case where only some characters may stand;
// letters with marks lose them.
func ascii(text string, may func(rune) bool, most int) string {
	var b strings.Builder
	for _, r := range text {
		if may != nil {
			r = []rune(strings.ToUpper(string(r)))[0]
		}
		if r > 126 {
			if i := strings.IndexRune(marked, r); i >= 0 {
				r = rune(unmarked[len([]rune(marked[:i]))])
			} else {
				r = '?'
			}
		}
		if r < 32 {
			r = ' '
		}
		if may == nil || may(r) {
			b.WriteRune(r)
		}
		if b.Len() == most {
			break
		}
	}
	return b.String()
}

const (
	marked   = "ÀÁÂÃÄÅÇÈÉÊËÌÍÎÏÑÒÓÔÕÖØÙÚÛÜÝàáâãäåçèéêëìíîïñòóôõöøùúûüýÿ“”‘’–—×"
	unmarked = `AAAAAACEEEEIIIINOOOOOOUUUUYaaaaaaceeeeiiiinoooooouuuuyy""''--x`
)
