// Package report turns a flight into what people and programs read: findings
// with their verdicts, sentences for warnings, the text report, JSON and CSV.
// The screen and the commands share it, so both say the same in the same words.
package report

import (
	"io"

	"ullage/sim"
	"ullage/sim/quantity"
)

// Level grades a finding. It chooses a colour or a mark where there is one; the
// word beside it always says the same.
type Level int

// The levels. Plain findings are numbers without a verdict.
const (
	Plain Level = iota
	Good
	Caution
	Bad
)

// Finding is one line of what a flight came to: a number and a word.
type Finding struct {
	Key    string // stable: rail-exit, apogee, canopy.main, landing, drift, warning.liquid-left, …
	Label  string // "rail exit"
	Value  string // with its unit, in the system asked for; empty where a sentence says it all
	Word   string // a verdict of words.go; empty when Level is Plain
	Level  Level
	Detail string // one sentence: limit, source, what to do
}

// Findings lists what a flight came to, in the order to read it.
func Findings(fl *sim.Flight, sys quantity.System) []Finding { return nil }

// WarningText is a warning as a sentence, with what to do about it.
func WarningText(w sim.Warning, sys quantity.System) string { return string(w.Code) }

// WriteText writes the short report of one flight, at most 80 columns wide.
func WriteText(w io.Writer, fl *sim.Flight, sys quantity.System) error { return nil }

// WriteJSON writes the flight's results as one indented JSON object.
func WriteJSON(w io.Writer, fl *sim.Flight) error { return nil }

// WriteCSV writes samples of the flight at the spacing given, in s, the landing last.
func WriteCSV(w io.Writer, fl *sim.Flight, every float64) error { return nil }

// Cautions are the cautions that go with results of a drive.
func Cautions(p sim.Power) []string { return nil }
