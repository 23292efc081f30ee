// Package atmosphere gives the air, the gravity and the wind that a rocket
// meets above its launch site.
package atmosphere

import "math"

// Constants of ISO 2533 and the U.S. Standard Atmosphere, 1976.
const (
	StandardGravity = 9.80665   // m/s²
	GasConstant     = 287.05287 // of dry air, J/(kg·K)
	Gamma           = 1.4       // ratio of specific heats of air
	EarthRadius     = 6356766   // of the standard's geopotential, m
)

// Air is the state of the air at one place.
type Air struct {
	Temperature float64 // K
	Pressure    float64 // Pa
	Density     float64 // kg/m³
	SoundSpeed  float64 // m/s
}

// Viscosity is the dynamic viscosity after Sutherland, Pa·s.
func (a Air) Viscosity() float64 {
	return 1.458e-6 * a.Temperature * math.Sqrt(a.Temperature) / (a.Temperature + 110.4)
}

// Standard is the standard atmosphere at a geometric altitude, m.
func Standard(z float64) Air {
	c := Site{}.Column()
	return c.Air(z)
}

// Gravity at a geometric altitude, m/s².
func Gravity(z float64) float64 {
	r := EarthRadius / (EarthRadius + z)
	return StandardGravity * r * r
}

// Geopotential height of a geometric altitude, m.
func Geopotential(z float64) float64 { return EarthRadius * z / (EarthRadius + z) }
