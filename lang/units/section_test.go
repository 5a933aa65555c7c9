package units

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// TestWireGauge: rows of ASTM B258 in mm², from memory.
func TestWireGauge(t *testing.T) {
	for text, want := range map[string]float64{
		"0 AWG": 53.48, "1 AWG": 42.41, "2 AWG": 33.63, "4 AWG": 21.15, "6 AWG": 13.30, "8 AWG": 8.366, "10 AWG": 5.261, "12 AWG": 3.309, "14 AWG": 2.081, "16 AWG": 1.309,
		"6 mm2": 6, "2.5mm²": 2.5,
	} {
		got, err := Parse(text, Section)
		require.NoError(t, err, text)
		assert.InEpsilon(t, want, got, 5e-4, text)
	}
	for _, text := range []string{"10.5 AWG", "-1 AWG", "40 AWG"} {
		_, err := Parse(text, Section)
		assert.ErrorContains(t, err, "gauges go from 0 AWG to 20 AWG", text)
	}
	_, err := Parse("6 mm", Section)
	assert.ErrorContains(t, err, "is a length, and a wire's cross-section is meant here: 6 mm2 or 10 AWG")
}
