package atmosphere

import "math"

// tropospheric is the power of the standard troposphere's pressure with its temperature, R·L/g0.
const tropospheric = -GasConstant * troposphericLapse / StandardGravity

// StandardHeight is what an altimeter makes of a pressure over that at its zero by the standard's lowest layer (ISO
// 2533), m of geopotential above that zero:
//
//	(T0/L)·[1 − (p/p0)^(R·L/g0)]
//
// Altimeters use it at any height: from the tropopause up it is no more than a scale of pressures.
func StandardHeight(ratio float64) float64 {
	return seaLevelTemperature / -troposphericLapse * (1 - math.Pow(ratio, tropospheric))
}

// StandardRatio is the pressure over that at zero that makes a StandardHeight, m. Where the layer would run out of
// temperature, at 44 km, it stays.
func StandardRatio(height float64) float64 {
	return math.Pow(math.Max(1+height*troposphericLapse/seaLevelTemperature, 1e-3), 1/tropospheric)
}
