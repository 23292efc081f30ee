package results

import (
	"math"

	"ullage/sim"
	"ullage/sim/quantity"
)

// canopy is the group of the canopy with an index and a name.
func canopy(i int, name string) Group {
	g := Group{Name: "canopy." + name, Label: name, Event: true, Canopy: name, Rows: make([]Row, 0, 11)}
	add := func(r Row, of func(c *sim.CanopyResult) float64) {
		r.Name, r.canopy, r.opened = g.Name+"."+r.Name, i+1, of
		if r.Undefined == "" {
			r.Undefined = neverOpens
		}
		g.Rows = append(g.Rows, r)
	}
	add(Row{Name: "time", Label: "time at which " + name + " opens", Short: "time", Dimension: quantity.Time},
		func(c *sim.CanopyResult) float64 { return c.Time })
	add(Row{Name: "height", Label: "height at which " + name + " opens", Short: "height", Dimension: quantity.Length, Unit: "m"},
		func(c *sim.CanopyResult) float64 { return c.Height })
	add(Row{Name: "airspeed", Label: "airspeed as " + name + " opens", Short: "airspeed", Dimension: quantity.Speed},
		func(c *sim.CanopyResult) float64 { return c.Airspeed })
	add(Row{Name: "load", Label: "opening load of " + name, Short: "load", Dimension: quantity.Force},
		func(c *sim.CanopyResult) float64 { return c.Load })
	add(Row{Name: "filling", Label: "load of " + name + " as it fills", Short: "filling", Dimension: quantity.Force},
		func(c *sim.CanopyResult) float64 { return c.Filling })
	add(Row{Name: "hanging", Label: "weight that hangs on " + name, Short: "weight", Dimension: quantity.Force},
		func(c *sim.CanopyResult) float64 { return c.Hanging })
	add(Row{Name: "snatch", Label: "snatch of " + name + " by its line", Short: "snatch", Dimension: quantity.Force, Undefined: neverOpens + ", and where its line is not described"},
		func(c *sim.CanopyResult) float64 { return when(c.Snatch > 0, c.Snatch) })
	add(Row{Name: "load_bound", Label: "most that the opening load of " + name + " may be", Short: "at most", Dimension: quantity.Force},
		func(c *sim.CanopyResult) float64 { return c.LoadBound })
	add(Row{Name: "descent", Label: "settled descent rate under " + name, Short: "then down", Dimension: quantity.Speed},
		func(c *sim.CanopyResult) float64 { return c.Descent })
	add(Row{Name: "full_time", Label: "time at which " + name + " has filled", Short: "full at", Dimension: quantity.Time, Undefined: neverFills},
		func(c *sim.CanopyResult) float64 { return when(c.Full, c.FullTime) })
	since := Row{Name: g.Name + ".since_apogee", Label: "time from apogee to the opening of " + name, Short: "after apogee", Dimension: quantity.Time, Undefined: opensOrNoTop, canopy: i + 1,
		of: func(fl *sim.Flight) float64 {
			if i >= len(fl.Canopies) || !fl.Canopies[i].Opened || !fl.Apogee.Happened {
				return math.NaN()
			}
			return fl.Canopies[i].Time - fl.Apogee.Time
		}}
	g.Rows = append(g.Rows, since)
	return g
}
