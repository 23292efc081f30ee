// Package atmosphere gives the air, the gravity and the wind that a rocket
// meets above its launch site: ISO 2533 and the U.S. Standard Atmosphere, 1976
// (NOAA-S/T 76-1562), carried to the site's own temperature and pressure.
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

// Viscosity is the dynamic viscosity, Pa·s, by Sutherland's formula with the
// constants of the U.S. Standard Atmosphere, 1976, eq. 51:
//
//	μ = β T^(3/2) / (T + S),  β = 1.458e-6 kg/(s·m·√K),  S = 110.4 K
func (a Air) Viscosity() float64 {
	const beta, sutherland = 1.458e-6, 110.4
	return beta * a.Temperature * math.Sqrt(a.Temperature) / (a.Temperature + sutherland)
}

// Standard is the dry standard atmosphere at a geometric altitude, m. Like a
// Column it goes on beyond the standard's layers: see Column.Air.
func Standard(z float64) Air { return standard.Air(z) }

// standard is the column that stands on the standard's sea level.
var standard = newColumn(0, seaLevelTemperature, SeaLevelPressure, 0)

// Altitudes are held between these. The first is where the tables of the U.S.
// Standard Atmosphere, 1976, begin; so far down nothing flies. The other keeps
// an infinite altitude out of the arithmetic.
const (
	lowest  = -5000.0 // m
	highest = 1e12    // m
)

func hold(x, least, most float64) float64 { return min(max(x, least), most) }

// Gravity is the acceleration of gravity at a geometric altitude, m/s², by the
// inverse square: g0 (r0/(r0+z))² (U.S. Standard Atmosphere, 1976, eq. 17).
// Below -5 km it stays what it is there.
func Gravity(z float64) float64 {
	r := EarthRadius / (EarthRadius + hold(z, lowest, highest))
	return StandardGravity * r * r
}

// Geopotential is the geopotential height of a geometric altitude, m:
// r0 z/(r0+z) (U.S. Standard Atmosphere, 1976, eq. 18). Below -5 km it stays
// what it is there.
func Geopotential(z float64) float64 {
	z = hold(z, lowest, highest)
	return EarthRadius * z / (EarthRadius + z)
}
