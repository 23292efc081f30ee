package logfile

import (
	"ullage/sim/fault"
	"ullage/sim/quantity"
)

// Log is a table as it was understood. Times rise; a value that is not there is NaN.
type Log struct {
	Name         string
	Digest       string // of the bytes of the file: SHA-256, hexadecimal
	Encoding     string
	Separator    string
	DecimalComma bool    // some number has one
	HeaderLine   int     // from 1; 0 for none
	Rate         float64 // told, Hz; 0 when time is a column
	Rows         int     // with numbers, of the file
	Columns      []Column
	Others       []string // heads of columns that tell nothing of a flight, or were not understood

	Time   []float64   // s, as the recorder counts it
	Values [][]float64 // of Columns, SI; that of the time is nil
	Starts []int       // where the recorder's clock began anew, and 0: places in Time

	// Notes are what was left out or guessed, each with what settles it.
	Notes fault.List
}

// Column is what a column is.
type Column struct {
	Quantity Quantity
	At       int    // from 1
	Head     string // as written; empty without a header
	Unit     quantity.Unit
	Told     bool   // by the user
	Guessed  string // why the unit is taken that the header does not tell; empty when it tells one
	Measured bool   // a height that no pressure is behind
	Absolute bool   // a pressure that is told to be absolute
	Gauge    bool   // or gauge
}

// Find gives the place of the first column of a quantity; -1 when there is none.
func (l *Log) Find(q Quantity) int {
	for i := range l.Columns {
		if l.Columns[i].Quantity == q {
			return i
		}
	}
	return -1
}
