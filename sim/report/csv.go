package report

import (
	"bufio"
	"errors"
	"io"
	"math"
	"slices"

	"ullage/sim"
	"ullage/sim/report/machine"
	"ullage/sim/results"
)

// DefaultEvery is the spacing of samples when none is asked for, s: fine enough
// for a thrust of a few tenths of a second, some thousand rows for a flight.
const DefaultEvery = 0.010

// ErrSpacing is returned for a spacing that is not a positive number of seconds.
var ErrSpacing = errors.New("the spacing of samples must be more than 0 s")

// WriteCSV writes a header and samples of a flight, `every` seconds apart from
// release, the landing last: a column a series that has a name for it. SI units, named in
// the header; a value there is none of is empty, such as the chamber's pressure on a
// motor. Rows are written as they come, so that any number of them fits in memory. The
// flight must have been flown with its dense record kept.
func WriteCSV(w io.Writer, fl *sim.Flight, series []results.Series, every float64) error {
	if !(every > 0) || math.IsInf(every, 0) {
		return ErrSpacing
	}
	series = slices.DeleteFunc(slices.Clone(series), func(x results.Series) bool { return x.Column == "" })
	b := bufio.NewWriter(w)
	for i := range series {
		if i > 0 {
			b.WriteByte(',')
		}
		b.WriteString(series[i].Column)
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
		row = appendRow(row[:0], series, &s)
		if _, err := b.Write(row); err != nil {
			return err
		}
		if last {
			return b.Flush()
		}
	}
}

func appendRow(row []byte, series []results.Series, s *sim.Sample) []byte {
	for i := range series {
		if i > 0 {
			row = append(row, ',')
		}
		row = machine.AppendNumber(row, results.Machine(series[i].Dimension, series[i].Of(s)))
	}
	return append(row, '\n')
}
