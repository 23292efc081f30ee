package report

import (
	"bufio"
	"errors"
	"io"
	"math"

	"ullage/sim"
	"ullage/sim/report/machine"
)

// DefaultEvery is the spacing of samples when none is asked for, s: fine enough
// for a thrust of a few tenths of a second, some thousand rows for a flight.
const DefaultEvery = 0.010

// column is one column of the table of samples.
type column struct {
	name string
	of   func(s *sim.Sample) float64
}

// columns are those of `fly --csv`, in order.
var columns = []column{
	{"time_s", func(s *sim.Sample) float64 { return s.Time }},
	{"east_m", func(s *sim.Sample) float64 { return s.East }},
	{"north_m", func(s *sim.Sample) float64 { return s.North }},
	{"height_m", func(s *sim.Sample) float64 { return s.Height }},
	{"speed_mps", func(s *sim.Sample) float64 { return s.Speed }},
	{"vertical_mps", func(s *sim.Sample) float64 { return s.Vertical }},
	{"acceleration_mps2", func(s *sim.Sample) float64 { return s.Acceleration }},
	{"mach", func(s *sim.Sample) float64 { return s.Mach }},
	{"thrust_n", func(s *sim.Sample) float64 { return s.Thrust }},
	{"drag_n", func(s *sim.Sample) float64 { return s.Drag }},
	{"mass_kg", func(s *sim.Sample) float64 { return s.Mass }},
	{"chamber_pa", func(s *sim.Sample) float64 { return s.Chamber }},
	{"air_pa", func(s *sim.Sample) float64 { return s.Air }},
}

// ErrSpacing is returned for a spacing that is not a positive number of seconds.
var ErrSpacing = errors.New("the spacing of samples must be more than 0 s")

// WriteCSV writes a header and samples of a flight, `every` seconds apart from
// release, the landing last. SI units, named in the header; a value there is
// none of is empty, such as the chamber's pressure on a motor. Rows are written
// as they come, so that any number of them fits in memory. The flight must have
// been flown with its dense record kept.
func WriteCSV(w io.Writer, fl *sim.Flight, every float64) error {
	if !(every > 0) || math.IsInf(every, 0) {
		return ErrSpacing
	}
	b := bufio.NewWriter(w)
	for i, c := range columns {
		if i > 0 {
			b.WriteByte(',')
		}
		b.WriteString(c.name)
	}
	b.WriteByte('\n')

	var row []byte
	end := fl.Duration()
	for i := 0; ; i++ {
		t := float64(i) * every
		last := t >= end
		if last {
			t = end
		}
		s := fl.At(t)
		row = appendRow(row[:0], &s)
		if _, err := b.Write(row); err != nil {
			return err
		}
		if last {
			return b.Flush()
		}
	}
}

func appendRow(row []byte, s *sim.Sample) []byte {
	for i, c := range columns {
		if i > 0 {
			row = append(row, ',')
		}
		row = machine.AppendNumber(row, c.of(s))
	}
	return append(row, '\n')
}
