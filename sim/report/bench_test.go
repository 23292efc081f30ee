package report

import (
	"io"
	"testing"

	"ullage/sim/quantity"
	"ullage/sim/results"
)

// The screen asks for the findings of every flight it draws.
func BenchmarkFindings(b *testing.B) {
	fl := waterFlight()
	table := results.For(fl.Rocket)
	b.ReportAllocs()
	for b.Loop() {
		Findings(fl, table, quantity.Metric)
	}
}

func BenchmarkText(b *testing.B) {
	fl := waterFlight()
	table := results.For(fl.Rocket)
	for b.Loop() {
		_ = WriteText(io.Discard, fl, table, quantity.Metric)
	}
}

func BenchmarkJSON(b *testing.B) {
	fl := waterFlight()
	table := results.For(fl.Rocket)
	for b.Loop() {
		_ = WriteJSON(io.Discard, fl, table)
	}
}
