package words

import (
	"math"
	"slices"
	"strconv"

	"ullage/sim/quantity"
	"ullage/sim/rocket"
)

// Vented is the word in place of a pressure that a closed chamber is vented before.
const Vented = "vent"

// ClosedRow is what a gauge shows on a closed chamber whose gas and wall have come to a temperature.
type ClosedRow struct {
	Temperature string // without its unit, to the degree
	Gauge       string // by a gauge open to the air, without its unit; Vented where that is beyond what the proof is for
	Vent        bool
	Filled      bool // it is the temperature at which it was filled
}

// Closed is that over the temperatures of a day, by rocket.ClosedAt, and a note that goes with it: it is nothing to fill to.
func (p Printer) Closed(r *rocket.Rocket) (rows []ClosedRow, note string) {
	unit := p.shown("degC")
	first, last, by := -10.0, 50.0, 10.0
	if p.System == quantity.US {
		first, last, by = 20, 120, 20
	}
	own := unit.FromSI(r.GasTemperature())
	shown := []float64{own}
	for t := first; t <= last; t += by {
		if math.Abs(unit.ToSI(t)-r.GasTemperature()) >= 0.5 { // else its own is as good
			shown = append(shown, t)
		}
	}
	slices.Sort(shown)
	note = "Closed, as it warms or cools. Nobody fills past " + p.FillTo(r.Water.Pressure) + "."
	vents := false
	for _, t := range shown {
		at := r.ClosedAt(unit.ToSI(t))
		row := ClosedRow{strconv.FormatFloat(t, 'f', 0, 64), p.Bare(at.Gauge, "bar"), at.Vent(), t == own}
		if row.Vent {
			row.Gauge, vents = Vented, true
		}
		rows = append(rows, row)
	}
	if vents {
		note += " " + Vented + ": past its proof."
	}
	return rows, note
}
