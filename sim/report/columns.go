package report

import (
	"math"

	"ullage/sim"
	"ullage/sim/gates"
	"ullage/sim/report/machine"
	"ullage/sim/report/page"
	"ullage/sim/report/words"
	"ullage/sim/results"
)

// mostHead is how wide the head of a result's column is before it goes on below.
const mostHead = 8

// columnOf is the head of a column of a result, at least so wide.
func columnOf(p words.Printer, r *results.Row, width int) page.Heading {
	return page.Heading{Lines: page.Wrap(r.Heading(), mostHead), Unit: p.RowUnit(r), Width: width, Left: r.IsWord()}
}

// shortColumn is columnOf where it is plain which group the result is of.
func shortColumn(p words.Printer, r *results.Row, width int) page.Heading {
	h := columnOf(p, r, width)
	h.Lines = page.Wrap(r.Short, mostHead)
	return h
}

// verdictColumn has the words of the verdict on the figure to its left.
var verdictColumn = page.Heading{Left: true, Width: 5}

// cell is a result without its unit, "-" when it has no value.
func cell(p words.Printer, r *results.Row, fl *sim.Flight) string {
	if word := r.Word(fl); word != "" {
		return page.Printable(word)
	}
	if v := r.Of(fl); !math.IsNaN(v) {
		return p.BareRow(r, v)
	}
	return "-"
}

// judgedCells are a result and the verdict on it; never for what did not happen.
func judgedCells(p words.Printer, r *results.Row, fl *sim.Flight) []string {
	return []string{cell(p, r, fl), verdict(r, fl)}
}

// verdict is the word on a result; never for what did not happen.
func verdict(r *results.Row, fl *sim.Flight) string {
	v := r.Of(fl)
	if math.IsNaN(v) {
		return gates.WordNever
	}
	word, _ := gates.JudgeResult(fl.Rocket, r.Name, v)
	return word
}

// appendResult appends a result as a cell of CSV, empty when it has no value.
func appendResult(b []byte, r *results.Row, fl *sim.Flight) []byte {
	if word := r.Word(fl); word != "" {
		return append(b, machine.Cell(word)...)
	}
	return machine.AppendNumber(b, results.Machine(r.Dimension, r.Of(fl)))
}
