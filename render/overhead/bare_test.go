package overhead

import (
	"testing"

	"github.com/stretchr/testify/assert"

	"longhand/lang/compile"
	"longhand/render/scene"
)

// Whatever compiles can be drawn, however little there is of it or how far apart.
func TestBarePlans(t *testing.T) {
	for name, text := range map[string]string{
		"a beat and nothing else": "take \"t\"\nbeat \"b\"\n",
		"an empty pickup":         "take \"t\"\nbeat \"b\"\npickup \"p\" after \"b\"\n",
		"one person":              "take \"t\"\npeople\n  performer ann\nbeat \"b\"\n  ann stands at (0, 0)\n",
		"far apart":               "take \"t\"\npeople\n  performer ann\nbeat \"b\"\n  ann walks from (0, 0) to (9000, 4000) at 2 m/s\n",
		"far off":                 "take \"t\"\npeople\n  performer ann\nbeat \"b\"\n  ann walks from (9990, 9990) to (9992, 9990)\n",
		"names as long as can be": "take \"" + long(300) + "\"\n  scene \"" + long(80) + "\"\n  revision \"" + long(90) + "\"\nset \"" + long(200) + "\"\n  mark " + long(60) + " (1, 1)\npeople\n  performer " + long(70) + "\nbeat \"" + long(200) + "\"\n  " + long(70) + " stands at " + long(60) + "\n  " + long(70) + " says \"" + long(400) + "\"\n",
	} {
		r := fromText(t, text)
		for _, b := range r.Plan.Beats {
			assertReads(t, Small(r, b, Options{}), name+", small")
		}
		for how, o := range map[string]Options{"": {NeverSeen: true}, "1:20": {Scale: 20}, "Letter upright": {Paper: scene.Letter, Turn: Portrait}} {
			for what, sheets := range drawings(r, o) {
				assert.NotEmpty(t, sheets)
				for _, s := range sheets {
					assertReads(t, s, name+", "+what+", "+how)
				}
			}
		}
	}
	assert.Nil(t, Small(nil, nil, Options{}))
	assert.Nil(t, Take(nil, Options{}))
	assert.Nil(t, Take(&compile.Result{Stopped: true}, Options{}))
	assert.Nil(t, Beat(&compile.Result{}, nil, Options{}))
	assert.Nil(t, Pickup(nil, nil, Options{}))
	assert.Nil(t, Pickup(&compile.Result{}, &compile.Shot{}, Options{}))
}

func long(n int) string {
	b := make([]byte, n)
	for i := range b {
		b[i] = "abcdefghij"[i%10]
	}
	return string(b)
}
