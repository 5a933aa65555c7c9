package book

import (
	"context"
	"fmt"
	"math/rand"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"longhand/lang/compile"
)

// generated is a plan made up at random: some beats, some people with something to
// do and long things to say, a camera that circles and follows, lamps.
func generated(rng *rand.Rand) string {
	var b strings.Builder
	b.WriteString("take \"A generated take with a title that is rather long for a cover of any size\"\n  scene 12B\n  rate 25 fps\n  aspect 2.39\n  revision \"pink\" 2031-02-03\n\nset \"A floor\"\n")
	b.WriteString("  wall north (0, 14) (16, 14) high 4 m\n  door gate on north 3 m to 5 m high 2.2 m\n  grid above (0, 0) (16, 0) (16, 14) (0, 14) high 5 m to 5.2 m points 20\n")
	for k := range 4 + rng.Intn(5) {
		fmt.Fprintf(&b, "  mark M%d (%.1f, %.1f)\n", k+1, 1+rng.Float64()*13, 1+rng.Float64()*11)
	}
	b.WriteString("\nkit\n  camera A sensor 24.9 mm x 14 mm\n  lens w28 28 mm\n  rig hand handheld\n  lamp cell 650 W colour amber\n  wash warm cell x 6 on above\n\npeople\n  crew ida \"Operator of the first camera\"\n")
	n := 1 + rng.Intn(6)
	for k := range n {
		fmt.Fprintf(&b, "  performer person-%c \"Somebody with a long description\"\n", 'a'+k)
	}
	for beat := range 1 + rng.Intn(4) {
		fmt.Fprintf(&b, "\nbeat \"Beat number %d of a plan nobody wrote\"\n", beat+1)
		if beat == 0 {
			b.WriteString("  A on hand with ida\n  A takes w28 T4\n  A sees person-a\n  A follows person-a by 2 m\n  person-a opens gate\n")
		}
		for k := range n {
			from := rng.Intn(4)
			fmt.Fprintf(&b, "  person-%c walks from M%d to M%d\n", 'a'+k, 1+from, 1+(from+1+rng.Intn(3))%4)
			if rng.Intn(2) == 0 {
				fmt.Fprintf(&b, "  person-%c says \"%s.\" starting +%d s\n", 'a'+k, strings.TrimSpace(strings.Repeat("many words ", 1+rng.Intn(9))), rng.Intn(5))
			}
		}
		fmt.Fprintf(&b, "  cue number-%d warm %d %% over %d s\n", beat+1, rng.Intn(101), 1+rng.Intn(4))
	}
	return b.String()
}

func TestBooksOfGeneratedPlansAreClean(t *testing.T) {
	rng := rand.New(rand.NewSource(7))
	for i := range 4 {
		r := compiledAnew(t, generated(rng))
		d, err := Make(context.Background(), r, Options{})
		require.NoError(t, err)
		assert.NotEmpty(t, d.Pages)
		clean(t, d, fmt.Sprintf("plan %d", i))
		c, err := Cards(context.Background(), r, Options{})
		require.NoError(t, err)
		clean(t, c, fmt.Sprintf("cards of plan %d", i))
	}
}

// The plans that explain findings are small and odd; every twelfth has a book here.
func TestBooksOfExplainedPlansAreClean(t *testing.T) {
	books := 0
	for i, e := range compile.Catalog() {
		if i%12 != 0 {
			continue
		}
		for _, text := range []string{e.Bad, e.Good} {
			r, err := compile.Text(context.Background(), "plan.take", text, compile.Options{})
			require.NoError(t, err)
			if r.Stopped || r.Sight == nil {
				continue
			}
			d, err := Make(context.Background(), r, Options{})
			require.NoError(t, err, e.Code)
			clean(t, d, string(e.Code))
			books++
		}
	}
	assert.Greater(t, books, 5)
}
