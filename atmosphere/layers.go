package atmosphere

// Sea level in the standard atmosphere.
const (
	seaLevelTemperature = 288.15 // K

	SeaLevelPressure = 101325 // Pa
)

const (
	troposphericLapse = -6.5e-3 // K/m of geopotential
	tropopause        = 11000.0 // m of geopotential
)

// layers are those of the U.S. Standard Atmosphere, 1976, table 4; to 32 km they
// are ISO 2533's too. The last one is ours: there the standard turns from
// thermodynamics to a model of the single gases, and the air that is left, a few
// millionths of what the ground has, does nothing to a rocket.
var layers = [...]struct {
	foot  float64 // m of geopotential above sea level
	lapse float64 // K/m of geopotential
}{
	{0, troposphericLapse},
	{tropopause, 0},
	{20000, 1.0e-3},
	{32000, 2.8e-3},
	{47000, 0},
	{51000, -2.8e-3},
	{71000, -2.0e-3},
	{84852, 0},
}

// In the troposphere density goes with (1+u)^n, n = densityPower, u = L·ΔH/T_s. Near the site its
// binomial series is as exact as a logarithm and an exponential, and takes a
// third of their time.
const (
	densityPower = -StandardGravity/(GasConstant*troposphericLapse) - 1

	b1 = densityPower
	b2 = b1 * (densityPower - 1) / 2
	b3 = b2 * (densityPower - 2) / 3
	b4 = b3 * (densityPower - 3) / 4
	b5 = b4 * (densityPower - 4) / 5
	b6 = b5 * (densityPower - 5) / 6
	b7 = b6 * (densityPower - 6) / 7
	b8 = b7 * (densityPower - 7) / 8
	b9 = b8 * (densityPower - 8) / 9

	// seriesRange is the |u| at which the first term left out, 1.7e-4 u^10, is
	// less than half a unit in the last place: 2.8 km at 288 K.
	seriesRange = 1.0 / 16
)

// series is (1+u)^densityPower for |u| up to seriesRange, summed in pairs (Estrin's scheme)
// so that the processor can do several at a time.
func series(u float64) float64 {
	u2 := u * u
	u4 := u2 * u2
	low := (1 + b1*u) + u2*(b2+b3*u)
	mid := (b4 + b5*u) + u2*(b6+b7*u)
	return low + u4*(mid+u4*(b8+b9*u))
}
