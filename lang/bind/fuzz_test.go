package bind

import (
	"path/filepath"
	"testing"

	"github.com/stretchr/testify/require"
	"golang.org/x/tools/txtar"

	"longhand/lang/plan"
	"longhand/lang/syntax"
)

// FuzzBind binds any text: it never panics, finds the same twice, underlines
// places of the text only, and leaves the plan fit for the stages after it.
func FuzzBind(f *testing.F) {
	for _, name := range []string{"whole.take", "forty.take"} {
		f.Add(readTestdata(f, name))
	}
	paths, err := filepath.Glob(filepath.Join(testdata, "*.txtar"))
	require.NoError(f, err)
	for _, path := range paths {
		ar, err := txtar.ParseFile(path)
		require.NoError(f, err)
		for _, file := range ar.Files {
			f.Add(string(file.Data))
		}
	}
	for _, k := range syntax.Statements {
		f.Add("beat \"x\"\n" + k.Example + "\n")
	}
	f.Fuzz(func(t *testing.T, text string) {
		p, first := bindText("fuzz.take", text)
		_, second := bindText("fuzz.take", text)
		require.Len(t, second, len(first))
		for i := range first {
			require.Equal(t, first[i].Code, second[i].Code)
			require.Equal(t, first[i].Message, second[i].Message)
			require.Equal(t, first[i].Notes, second[i].Notes)
			require.Equal(t, first[i].Span.Start, second[i].Span.Start)
			s := first[i].Span
			require.True(t, s.Valid() && 0 <= s.Start && s.Start <= s.End && s.End <= len(text), "%s at %d..%d", first[i].Code, s.Start, s.End)
		}
		fit(t, p)
	})
}

// fit holds what the stages after Bind rely on.
func fit(t testing.TB, p *plan.Plan) {
	require.Greater(t, p.Take.Rate.PerSecond(), 0.0)
	for i, a := range p.Actions {
		require.Equal(t, i, a.Index)
		require.NotNil(t, a.Beat)
		require.NotNil(t, a.Deed)
		for _, m := range []*plan.Moment{a.Timing.Start, a.Timing.By, a.Timing.Until} {
			if m != nil && m.Kind == plan.OnEvent {
				require.NotNil(t, m.Event)
			}
		}
	}
	for _, pick := range p.Pickups {
		for i, a := range pick.Actions {
			require.Equal(t, i, a.Index)
			require.Same(t, pick, a.Pickup)
		}
	}
	for _, d := range p.Set.Doors {
		require.True(t, d.Bad || d.Wall != nil && d.To > d.From, d.Name)
	}
	for _, w := range p.Kit.Washes {
		require.True(t, w.Bad || w.Lamp != nil && w.Grid != nil && w.Count > 0, w.Name)
	}
	for _, c := range p.Kit.Cameras {
		require.True(t, c.Bad || c.Width > 0 && c.Height > 0, c.Name)
	}
}
