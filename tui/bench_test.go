package tui

import (
	"strings"
	"testing"

	tea "github.com/charmbracelet/bubbletea"
	"github.com/muesli/termenv"

	"ullage/sim/gates"
	"ullage/tui/draw"
	"ullage/tui/plot"
)

// inColour paints as a terminal of many colours has it.
func inColour(m *Model) {
	m.profile, m.colour = termenv.TrueColor, true
	m.repaint(draw.DarkBackground)
}

// From a key to the new flight drawn: the key, the flight it asks for, the
// flight's drawing, and the screen as text.
func BenchmarkKeyToFlight(b *testing.B) {
	for _, c := range []struct {
		name    string
		w, h    int
		charset plot.Charset
	}{
		{"80x24", 80, 24, plot.Braille}, {"200x60", 200, 60, plot.Braille}, {"200x60-ascii", 200, 60, plot.ASCII},
	} {
		b.Run(c.name, func(b *testing.B) {
			s := newScreenIn(b, plover(b), c.charset, c.w, c.h, noCorners)
			inColour(&s.m)
			s.press("p")
			bytes := 0
			for i := 0; b.Loop(); i++ {
				s.press([]string{"right", "left"}[i%2])
				bytes = len(s.view())
				if i%64 == 63 { // a history of a sensible length
					b.StopTimer()
					s.m.hist = newHistory(s.m.file())
					b.StartTimer()
				}
			}
			b.ReportMetric(float64(bytes), "bytes/screen")
		})
	}
}

// The same in the views of a rocket with everything described, and till its corners and
// mends are drawn as well.
func BenchmarkKeyToView(b *testing.B) {
	for _, c := range []struct {
		name, key string
		judges    judge
	}{
		{"chamber", "h", noCorners}, {"check", "j", noCorners}, {"check-corners", "j", gates.Judge},
	} {
		b.Run(c.name, func(b *testing.B) {
			s := newScreen(b, windy(b), 200, 60)
			inColour(&s.m)
			s.m.judges = c.judges
			s.press(c.key)
			for i := 0; b.Loop(); i++ {
				s.press([]string{"right", "left"}[i%2])
				_ = s.view()
				if i%64 == 63 {
					b.StopTimer()
					s.m.hist = newHistory(s.m.file())
					b.StartTimer()
				}
			}
		})
	}
}

// The parts of it.
func BenchmarkEdit(b *testing.B) {
	s := newScreen(b, plover(b), 200, 60)
	s.hold = true
	for i := 0; b.Loop(); i++ {
		s.press([]string{"right", "left"}[i%2])
		s.m.hist, s.held = newHistory(s.m.file()), nil
	}
}

func BenchmarkFlightCommand(b *testing.B) {
	s := newScreen(b, plover(b), 200, 60)
	for b.Loop() {
		if msg := s.m.fly()(); msg.(flownMsg).now == nil {
			b.Fatal("no flight")
		}
	}
}

func BenchmarkTimeCursor(b *testing.B) {
	s := newScreen(b, plover(b), 200, 60)
	inColour(&s.m)
	for i := 0; b.Loop(); i++ {
		s.press([]string{"[", "]"}[i%2])
	}
}

func BenchmarkView(b *testing.B) {
	s := newScreen(b, plover(b), 200, 60)
	inColour(&s.m)
	s.send(tea.WindowSizeMsg{Width: 200, Height: 60})
	b.ReportAllocs()
	for b.Loop() {
		_ = s.m.View()
	}
}

// From a key to the new curves drawn: the key, the flight, the curves, the screen.
func BenchmarkKeyToFillCurves(b *testing.B) {
	for _, keys := range [][]string{{"w"}, {"w", "z"}, {"w", "z", "z"}} {
		b.Run(strings.Join(keys, ""), func(b *testing.B) {
			s := newScreen(b, plover(b), 200, 60)
			inColour(&s.m)
			s.press(keys...)
			s.choose("body.mass")
			for i := 0; b.Loop(); i++ {
				s.press([]string{"right", "left"}[i%2])
				_ = s.view()
				s.m.hist = newHistory(s.m.file())
			}
		})
	}
}
