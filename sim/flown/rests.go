package flown

import (
	"fmt"
	"math"

	"ullage/sim/fault"
	"ullage/sim/flown/logfile"
	"ullage/sim/quantity"
	"ullage/sim/rocket"
)

// gravity is what an accelerometer that rests at 0 lost: it feels g cos(tilt) on the pad. One that
// rests elsewhere by more than what gravity can explain, or was not seen at rest, tells nothing
// that can be relied on.
func (rd *Reading) gravity(c logfile.Column, level float64, seen bool, r *rocket.Rocket, a *air) (added float64, known bool) {
	g := a.column.Gravity(0)
	felt := g * math.Cos(r.Rail.Tilt)
	switch {
	case !seen:
		rd.Notes = append(rd.Notes, fault.Fault{Key: c.Name(), Problem: "begins at lift-off or after it, so that it is not known whether gravity is in it",
			Remedy: "left out; let the recorder run a few seconds before"})
		return 0, false
	case math.Abs(level-felt) < 0.15*felt:
		return 0, true
	case math.Abs(level) < 0.15*felt:
		rd.Notes = append(rd.Notes, fault.Fault{Key: c.Name(), Problem: "rests at 0, so that gravity was taken off",
			Remedy: fmt.Sprintf("put back: %.2f m/s²", felt)})
		return felt, true
	case math.Abs(level-felt) > g:
		rd.Notes = append(rd.Notes, fault.Fault{Key: c.Name(), Problem: fmt.Sprintf("rests at %.2f m/s², where an accelerometer along the axis feels %.2f", level, felt),
			Remedy: "left out; look at its unit, and whether it lies along the axis, as in --column 'acceleration=3 g'"})
		return 0, false
	}
	rd.Notes = append(rd.Notes, fault.Fault{Key: c.Name(), Problem: fmt.Sprintf("rests at %.2f m/s², where an accelerometer along the axis feels %.2f", level, felt),
		Remedy: "taken as off by the difference; look at its unit, and whether it lies along the axis"})
	return felt - level, true
}

// gauge tells whether a chamber's pressure counts from that of the air: by its head, else by
// what it rests at before lift-off.
func (rd *Reading) gauge(c logfile.Column, level float64, r *rocket.Rocket, a *air) bool {
	switch {
	case c.Absolute:
		return false
	case c.Gauge || r.Water == nil:
		return true
	}
	over := math.Abs(level - r.Water.Pressure)
	absolute := math.Abs(level - a.pad - r.Water.Pressure)
	if absolute < over {
		rd.Notes = append(rd.Notes, fault.Fault{Key: c.Name(), Problem: "rests at " + quantity.Format(level, c.Unit, 4) + ", nearer to the absolute pressure at release than to the gauge pressure",
			Remedy: "taken as absolute; write gauge or absolute into its head if that is wrong"})
		return false
	}
	return true
}

// released notes a pressure before release, gauge, that is not the one the flight is predicted with. Of a
// stand its report tells.
func (rd *Reading) released(c logfile.Column, over float64, r *rocket.Rocket) {
	const alike = 0.02 // of the pressure: as well as gauges go (a choice of this program's, no source)
	if stood := rd.Log.Find(logfile.Thrust) >= 0; stood || r.Water == nil || math.Abs(over-r.Water.Pressure) <= alike*r.Water.Pressure {
		return
	}
	bar := quantity.Usual(quantity.Pressure)
	rd.Notes = append(rd.Notes, fault.Fault{Key: c.Name(), Problem: "rests at " + quantity.Format(over, bar, 3) + " before release, where the flight is predicted with " + quantity.Format(r.Water.Pressure, bar, 3),
		Remedy: "if the column is right, tell it: --set 'water.pressure=" + quantity.Format(over, bar, 3) + "'"})
}
