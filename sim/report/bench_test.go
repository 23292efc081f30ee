package report

import (
	"io"
	"testing"

	"ullage/sim/quantity"
)

// The screen asks for the findings of every flight it draws.
func BenchmarkFindings(b *testing.B) {
	fl := waterFlight()
	b.ReportAllocs()
	for b.Loop() {
		Findings(fl, quantity.Metric)
	}
}

func BenchmarkText(b *testing.B) {
	fl := waterFlight()
	for b.Loop() {
		_ = WriteText(io.Discard, fl, quantity.Metric)
	}
}

func BenchmarkJSON(b *testing.B) {
	fl := waterFlight()
	for b.Loop() {
		_ = WriteJSON(io.Discard, fl)
	}
}
