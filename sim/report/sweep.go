package report

import (
	"io"

	"ullage/sim"
	"ullage/sim/quantity"
	"ullage/sim/report/machine"
	"ullage/sim/rocket"
	"ullage/sim/rocketfile"
	"ullage/sim/study"
)

// Sweep is what a sweep goes over, for those who write its rows.
type Sweep struct {
	Rocket *rocket.Rocket // the one everything starts from
	Axes   []study.Axis
	Units  []quantity.Unit // that the file uses for each axis; the text shows them
	System quantity.System
	Rigid  bool // flights are not those of a point mass
}

// RowWriter writes the flights of a sweep one by one as they come, so that any number
// of them fits in memory. Every row is written whole, with one call of Write.
type RowWriter interface {
	// Row writes one flight.
	Row(study.Row) error
	// End writes what follows the last of the rows. It is called once, for a sweep
	// that was cut short too.
	End() error
}

// column is the axis i with its unit.
func (s *Sweep) column(i int) Column {
	c := Column{Input: s.Axes[i].Input, Unit: s.Axes[i].Input.Unit}
	if i < len(s.Units) {
		c.Unit = s.Units[i]
	}
	return c
}

// sweepColumn is one column of `sweep --csv` after the inputs.
type sweepColumn struct {
	name string
	of   func(r *sim.Results) (v float64, happened bool)
}

// sweepColumns are those columns in order. A thing that did not happen leaves its
// cell empty.
var sweepColumns = []sweepColumn{
	{"apogee_m", func(r *sim.Results) (float64, bool) { return r.Apogee.Height, r.Apogee.Happened }},
	{"apogee_s", func(r *sim.Results) (float64, bool) { return r.Apogee.Time, r.Apogee.Happened }},
	{"rail_exit_mps", func(r *sim.Results) (float64, bool) { return r.RailExit.Speed, r.RailExit.Happened }},
	{"max_speed_mps", func(r *sim.Results) (float64, bool) { return r.Max.Speed, true }},
	{"max_acceleration_mps2", func(r *sim.Results) (float64, bool) { return r.Max.Acceleration, true }},
	{"liquid_left_kg", func(r *sim.Results) (float64, bool) { return r.LiquidLeft, r.WaterFlew }},
	{"burnout_s", func(r *sim.Results) (float64, bool) { return r.Burnout.Time, r.Burnout.Happened }},
	{"landing_mps", func(r *sim.Results) (float64, bool) { return r.Landing.Speed, r.Landing.Happened }},
	{"landing_s", func(r *sim.Results) (float64, bool) { return r.Landing.Time, r.Landing.Happened }},
}

// sweepCSV writes a sweep as CSV.
type sweepCSV struct {
	w      io.Writer
	axes   []study.Axis
	headed bool
	row    []byte
}

// SweepCSV writes a header, the names of the inputs in it, and a row a flight, SI with
// angles in degrees. A point that makes no valid rocket has its inputs alone.
func SweepCSV(w io.Writer, s Sweep) RowWriter { return &sweepCSV{w: w, axes: s.Axes} }

func (c *sweepCSV) head() error {
	if c.headed {
		return nil
	}
	c.headed = true
	line := ""
	for _, a := range c.axes {
		line += machine.Cell(a.Input.Name) + ","
	}
	for i, k := range sweepColumns {
		if i > 0 {
			line += ","
		}
		line += k.name
	}
	_, err := io.WriteString(c.w, line+"\n")
	return err
}

func (c *sweepCSV) Row(r study.Row) error {
	if err := c.head(); err != nil {
		return err
	}
	b := c.row[:0]
	for i, v := range r.Values {
		if v.Word != "" {
			b = append(b, machine.Cell(v.Word)...)
		} else {
			b = machine.AppendNumber(b, programValue(c.axes[i].Input, v.Number))
		}
		b = append(b, ',')
	}
	for i, k := range sweepColumns {
		if i > 0 {
			b = append(b, ',')
		}
		if r.Flight == nil {
			continue
		}
		if v, happened := k.of(&r.Flight.Results); happened {
			b = machine.AppendNumber(b, v)
		}
	}
	c.row = append(b, '\n')
	_, err := c.w.Write(c.row)
	return err
}

func (c *sweepCSV) End() error { return c.head() }

// sweepJSON writes a sweep as one object a line.
type sweepJSON struct {
	w    io.Writer
	axes []study.Axis
}

// SweepJSON writes one object a line: the inputs, the reason if they make no valid
// rocket, and the keys of `fly --json`, null then.
func SweepJSON(w io.Writer, s Sweep) RowWriter { return &sweepJSON{w, s.Axes} }

func (j *sweepJSON) Row(r study.Row) error {
	var inputs, line machine.Object
	for i, v := range r.Values {
		inputs.Add(j.axes[i].Input.Name, inputValue(j.axes[i].Input, v))
	}
	line.Add("inputs", &inputs)
	return machine.WriteLine(j.w, addFlight(&line, r.Flight, r.Invalid))
}

func (j *sweepJSON) End() error { return nil }

// inputValue is a value of an input as JSON has it: a number, or a word.
func inputValue(in rocketfile.Input, v study.Value) any {
	if v.Word != "" {
		return v.Word
	}
	return number(programValue(in, v.Number))
}
