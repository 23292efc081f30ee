package report

import (
	"io"

	"ullage/sim/quantity"
	"ullage/sim/report/machine"
	"ullage/sim/results"
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
	// Show is what else to tell of each flight, in columns of its own.
	Show []results.Row
	// Table is what the flights come to; that of the rocket when nil.
	Table results.Table
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

// sweepResults are the columns of `sweep --csv` behind the inputs, which other programs
// read; what Show names comes behind them.
var sweepResults = []string{"apogee.height", "apogee.time", "rail_exit.speed", "max.speed", "max.acceleration",
	"liquid_out.left", "burnout.time", "landing.speed", "landing.time"}

// table is the one given, or that of the rocket.
func (s *Sweep) table() results.Table {
	if s.Table != nil {
		return s.Table
	}
	return results.For(s.Rocket)
}

// sweepCSV writes a sweep as CSV.
type sweepCSV struct {
	w      io.Writer
	axes   []study.Axis
	rows   []*results.Row
	headed bool
	row    []byte
}

// SweepCSV writes a header, the names of the inputs in it, and a row a flight, SI with
// angles in degrees. A thing that did not happen leaves its cell empty, and a point that
// makes no valid rocket has its inputs alone.
func SweepCSV(w io.Writer, s Sweep) RowWriter {
	c := &sweepCSV{w: w, axes: s.Axes}
	table := s.table()
	for _, name := range sweepResults {
		c.rows = append(c.rows, table.Must(name))
	}
	for i := range s.Show {
		c.rows = append(c.rows, &s.Show[i])
	}
	return c
}

func (c *sweepCSV) head() error {
	if c.headed {
		return nil
	}
	c.headed = true
	line := ""
	for _, a := range c.axes {
		line += machine.Cell(a.Input.Name) + ","
	}
	for i, r := range c.rows {
		if i > 0 {
			line += ","
		}
		line += machine.Cell(r.Column())
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
	for i, result := range c.rows {
		if i > 0 {
			b = append(b, ',')
		}
		if r.Flight != nil {
			b = appendResult(b, result, r.Flight)
		}
	}
	c.row = append(b, '\n')
	_, err := c.w.Write(c.row)
	return err
}

func (c *sweepCSV) End() error { return c.head() }

// sweepJSON writes a sweep as one object a line.
type sweepJSON struct {
	w     io.Writer
	axes  []study.Axis
	table results.Table
}

// SweepJSON writes one object a line: the inputs, the reason if they make no valid
// rocket, and the keys of `fly --json`, null then.
func SweepJSON(w io.Writer, s Sweep) RowWriter { return &sweepJSON{w, s.Axes, s.table()} }

func (j *sweepJSON) Row(r study.Row) error {
	var inputs, line machine.Object
	for i, v := range r.Values {
		inputs.Add(j.axes[i].Input.Name, inputValue(j.axes[i].Input, v))
	}
	line.Add("inputs", &inputs)
	return machine.WriteLine(j.w, addFlight(&line, r.Flight, j.table, r.Invalid))
}

func (j *sweepJSON) End() error { return nil }

// inputValue is a value of an input as JSON has it: a number, or a word.
func inputValue(in rocketfile.Input, v study.Value) any {
	if v.Word != "" {
		return v.Word
	}
	return number(programValue(in, v.Number))
}
