package results

import (
	"math"
	"strings"

	"ullage/sim/quantity"
)

// suffixes name the SI unit of a dimension at the end of a key, for programs.
var suffixes = map[quantity.Dimension]string{
	quantity.Length:       "_m",
	quantity.Time:         "_s",
	quantity.Speed:        "_mps",
	quantity.Wind:         "_mps",
	quantity.Acceleration: "_mps2",
	quantity.Mass:         "_kg",
	quantity.Force:        "_n",
	quantity.Pressure:     "_pa",
	quantity.Energy:       "_j",
	quantity.Impulse:      "_ns",
	quantity.Angle:        "_deg",
	quantity.Temperature:  "_k",
}

// Path is the keys that lead to the row in the JSON of a flight. Of a canopy's row it
// begins at the canopy's element of the list "canopies".
func (r *Row) Path() []string {
	if r.path != nil {
		return r.path
	}
	group, last := "", r.Name
	if dot := strings.LastIndexByte(r.Name, '.'); dot >= 0 {
		group, last = r.Name[:dot], r.Name[dot+1:]
	}
	last += suffixes[r.Dimension]
	if r.canopy > 0 {
		return []string{last}
	}
	return []string{group, last}
}

// Column is the row's name in the head of a CSV table.
func (r *Row) Column() string {
	if r.column != "" {
		return r.column
	}
	return strings.ReplaceAll(strings.ReplaceAll(r.Name, ".", "_"), "-", "_") + suffixes[r.Dimension]
}

// Machine is a value as programs read it: SI, but angles in degrees.
func Machine(d quantity.Dimension, v float64) float64 {
	if d == quantity.Angle || d == quantity.AngularRate {
		return v * 180 / math.Pi
	}
	return v
}
