package atmosphere

import (
	"math"

	"ullage/sim/fault"
)

// Range is what one value of a Site or a Wind may be, both ends included.
type Range struct {
	Key         string  // of the value in a rocket file, dotted: "site.elevation"
	Least, Most float64 // in SI; latitude and longitude in degrees
	Optional    bool    // 0 means not given, and is in order too

	leastText, mostText string // with units, for people
}

// The elevations are those of dry land, from below the Dead Sea's shore to above
// the highest summit; temperatures and pressures are a little more than ever
// measured there. The rest is common sense; none has another source.
var (
	elevationRange   = Range{"site.elevation", -500, 9000, false, "-500 m", "9000 m"}
	temperatureRange = Range{"site.temperature", 183.15, 333.15, true, "-90 degC", "60 degC"}
	pressureRange    = Range{"site.pressure", 25000, 120000, true, "250 hPa", "1200 hPa"}
	seaLevelRange    = Range{"site.sea_level_pressure", 85000, 110000, true, "850 hPa", "1100 hPa"}
	humidityRange    = Range{"site.humidity", 0, 1, false, "0", "1 (100 %)"}
	latitudeRange    = Range{"site.latitude", -90, 90, false, "-90", "90 degrees"}
	longitudeRange   = Range{"site.longitude", -180, 180, false, "-180", "180 degrees"}

	speedRange    = Range{"wind.speed", 0, 100, false, "0 m/s", "100 m/s"}
	heightRange   = Range{"wind.height", 0.1, 1000, true, "0.1 m", "1000 m"}
	exponentRange = Range{"wind.exponent", 0, 1, false, "0", "1"}
	fromRange     = Range{"wind.from", -2 * math.Pi, 2 * math.Pi, false, "-360 deg", "360 deg"}
)

// SiteRanges lists what the values of a Site may be.
func SiteRanges() []Range {
	return []Range{elevationRange, temperatureRange, pressureRange, seaLevelRange,
		humidityRange, latitudeRange, longitudeRange}
}

// WindRanges lists what the values of a Wind may be.
func WindRanges() []Range {
	return []Range{speedRange, heightRange, exponentRange, fromRange}
}

// slack forgives what conversion from the user's unit adds to a value at one of
// the ends.
const slack = 1e-12

// check adds a fault to the list if the value is out of range.
func (r *Range) check(faults *fault.List, v float64) {
	within := slack * max(math.Abs(r.Least), math.Abs(r.Most))
	problem := ""
	switch {
	case v == 0 && r.Optional:
	case math.IsNaN(v):
		problem = "is not a number"
	case v < r.Least-within:
		problem = "is below " + r.leastText
	case v > r.Most+within:
		problem = "is above " + r.mostText
	}
	if problem != "" {
		faults.Add(r.Key, problem, "give "+r.leastText+" to "+r.mostText)
	}
}

// held is the value itself, or the end of the range beyond which it lies. What is
// not given or not a number is 0, or the end nearest to that.
func (r *Range) held(v float64) float64 {
	if math.IsNaN(v) {
		v = 0
	}
	if v == 0 && r.Optional {
		return 0
	}
	return hold(v, r.Least, r.Most)
}
