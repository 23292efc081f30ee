package atmosphere

import (
	"testing"

	"github.com/stretchr/testify/assert"
)

// Pressures over that of sea level are those of the U.S. Standard Atmosphere, 1976, table I, at geopotential heights.
func TestStandardHeight(t *testing.T) {
	for height, pressure := range map[float64]float64{0: 101325, 1000: 89874.6, 3000: 70108.5, 11000: 22632.1, -1000: 113929} {
		assert.InDelta(t, height, StandardHeight(pressure/SeaLevelPressure), 0.05)
		assert.InEpsilon(t, pressure/SeaLevelPressure, StandardRatio(height), 1e-5)
	}
	for _, height := range []float64{-400, 0.1, 250, 20000} {
		assert.InDelta(t, height, StandardHeight(StandardRatio(height)), 1e-8)
	}
	assert.Positive(t, StandardRatio(1e6), "beyond the layer it stays")
}
