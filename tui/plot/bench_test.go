package plot

import (
	"fmt"
	"testing"
)

// BenchmarkChart draws one chart of 200×40 cells.
func BenchmarkChart(b *testing.B) {
	for _, points := range []int{2000, 10000} {
		for _, charset := range charsets {
			b.Run(fmt.Sprintf("%s/%d", charset, points), func(b *testing.B) {
				t, h, _, _ := ballistic(points)
				s := Stack{Charset: charset, X: Axis{Unit: "s"}, Charts: []Chart{{
					Y:      Axis{Title: "height", Unit: "m", Zero: true},
					Series: []Series{{X: t, Y: h, Ink: TraceA}},
				}}}
				draw(b, &s, 200, 40)
			})
		}
	}
}

// BenchmarkStack draws three charts of two series each, with marks and a
// cursor, on 200×40 cells.
func BenchmarkStack(b *testing.B) {
	for _, points := range []int{2000, 10000} {
		b.Run(fmt.Sprint(points), func(b *testing.B) {
			s := flightStack(Braille, points)
			draw(b, &s, 200, 40)
		})
	}
}

// BenchmarkNoise is the worst a series of that length can do: every column full.
func BenchmarkNoise(b *testing.B) {
	y := make([]float64, 10000)
	for i := range y {
		y[i] = float64(i * 7919 % 1009)
	}
	s := Stack{Charts: []Chart{{Series: []Series{{Y: y, Ink: TraceA}}}}}
	draw(b, &s, 200, 40)
}

// BenchmarkRuns reads a drawn grid, which showing it again costs.
func BenchmarkRuns(b *testing.B) {
	s := flightStack(Braille, 2000)
	g := s.Draw(200, 40)
	b.ReportAllocs()
	for b.Loop() {
		for row := range g.Height() {
			for range g.Runs(row) {
			}
		}
	}
}

func draw(b *testing.B, s *Stack, width, height int) {
	g := s.Draw(width, height)
	b.ReportAllocs()
	for b.Loop() {
		s.DrawTo(g)
	}
}
