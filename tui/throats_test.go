package tui

import (
	"context"
	"fmt"
	"slices"
	"strings"
	"testing"

	tea "github.com/charmbracelet/bubbletea"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"ullage/sim"
	"ullage/tui/draw"
	"ullage/tui/plot"
	"ullage/tui/view"
)

// throats is the throats view, in sight.
func (s *screen) throats() *throatsView {
	s.t.Helper()
	v, ok := s.m.view().(*throatsView)
	require.True(s.t, ok, "the throats view is not in sight")
	return v
}

// list is the throats in the list, mm, the chosen one marked.
func (s *screen) list() string {
	v := s.throats()
	rows := v.listed()
	var out []string
	for i, r := range rows {
		text := fmt.Sprintf("%.4g", r.throat*1e3)
		if i == v.list.at(rows) {
			text = ">" + text
		}
		out = append(out, text)
	}
	return strings.Join(out, " ")
}

func (s *screen) throat() float64 { return s.m.file().Rocket().Water.Throat }

func TestThroatsGoldens(t *testing.T) {
	for _, c := range []struct {
		name    string
		w, h    int
		charset plot.Charset
		keys    []string
	}{
		{"throats-80x24", 80, 24, plot.Braille, []string{"n"}},
		{"throats-120x40", 120, 40, plot.Braille, []string{"n"}},
		{"throats-200x60", 200, 60, plot.Braille, []string{"n"}},
		{"throats-block-120x40", 120, 40, plot.Block, []string{"n", "]"}},
		{"throats-ascii-80x24", 80, 24, plot.ASCII, []string{"n", "]"}},
		{"throats-filled-80x24", 80, 24, plot.Braille, []string{"n", "b"}},
		{"throats-filled-200x60", 200, 60, plot.Braille, []string{"n", "b"}},
		{"throats-thrust-120x40", 120, 40, plot.Braille, []string{"n", "z"}},
		{"throats-us-120x40", 120, 40, plot.Braille, []string{"n", "x", "b"}},
		{"throats-tube-80x24", 80, 24, plot.Braille, []string{"t", "n", "["}},
		{"throats-add-80x24", 80, 24, plot.Braille, []string{"n", "a", "9"}},
		{"throats-bad-80x24", 80, 24, plot.Braille, []string{"n", "a", "9", "k", "g", "enter"}},
		{"throats-motor-80x24", 80, 24, plot.Braille, []string{"n", "d"}},
	} {
		t.Run(c.name, func(t *testing.T) {
			s := newScreenIn(t, plover(t), c.charset, c.w, c.h)
			s.press(c.keys...)
			require.True(t, c.charset != plot.ASCII || draw.IsASCII(s.view()), "not 7-bit: %q", s.view())
			s.golden(c.name)
		})
	}
}

// What each key of the view does. A key without a row fails TestThroatKeys.
var throatTrials = map[string]func(t *testing.T, s *screen){
	"Open": func(t *testing.T, s *screen) {
		require.Equal(t, "11 >13 15", s.list())
		require.Equal(t, throatInput, s.m.inputs.chosen().Name)
	},
	"Prev":    func(t *testing.T, s *screen) { s.press("[", "["); require.Equal(t, ">11 13 15", s.list()) },
	"Next":    func(t *testing.T, s *screen) { s.press("]", "]"); require.Equal(t, "11 13 >15", s.list()) },
	"Smaller": func(t *testing.T, s *screen) { s.press("]", "{", "{"); require.Equal(t, "11 13 >14.8", s.list()) },
	"Larger": func(t *testing.T, s *screen) {
		s.press("}")
		require.Equal(t, "11 >13.1 15", s.list())
		require.InDelta(t, 0.0131, s.throat(), 1e-12, "today's is the rocket's own")
		s.press("u")
		require.Equal(t, "11 >13 15", s.list())
	},
	"Type": func(t *testing.T, s *screen) {
		s.press("]", "e", "ctrl+u")
		s.write("0.4in")
		s.press("enter")
		require.Equal(t, ">10.16 11 13", s.list())
		require.InDelta(t, 0.013, s.throat(), 1e-12)
	},
	"Add": func(t *testing.T, s *screen) {
		s.press("a")
		s.write("12")
		s.press("enter")
		require.Equal(t, "11 >12 13 15", s.list())
		require.Len(t, s.throats().flights.Result, 4)
	},
	"Remove": func(t *testing.T, s *screen) {
		s.press("]", "r")
		require.Equal(t, "11 >13", s.list())
		s.press("r")
		require.Equal(t, "11 >13", s.list(), "today's stays")
		require.Contains(t, s.view(), "rocket's own")
	},
	"Take": func(t *testing.T, s *screen) {
		s.press("]", "k")
		require.InDelta(t, 0.015, s.m.now.Flight.Rocket.Water.Throat, 1e-12)
		require.Equal(t, "11 13 >15", s.list(), "what it was before stays to compare with")
		s.press("u")
		require.InDelta(t, 0.013, s.m.now.Flight.Rocket.Water.Throat, 1e-12)
		require.Equal(t, "11 >13", s.list())
		s.press("U", "k")
		require.Contains(t, s.view(), "own throat already")
	},
	"Fills": func(t *testing.T, s *screen) {
		s.press("b")
		require.Len(t, s.throats().fills.Result, 3)
		require.Contains(t, s.said(), "each at its best fill")
		s.press("b")
		require.NotContains(t, s.said(), "each at its best fill")
	},
	"Plot": func(t *testing.T, s *screen) {
		require.Contains(t, s.said(), "height m")
		s.press("z")
		require.Contains(t, s.said(), "thrust N")
		s.press("z")
		require.Contains(t, s.said(), "height m")
	},
}

func TestThroatKeys(t *testing.T) {
	tryViewKeys(t, newThroatKeys(view.DefaultKeys()), newThroatsView(view.DefaultKeys()), "n", throatTrials)
}

// The figures are those of the engine's flights, and the best is the highest.
func TestThroatFigures(t *testing.T) {
	s := newScreen(t, plover(t), 200, 60)
	s.press("n")
	v := s.throats()
	high := 0.0
	for _, row := range v.listed() {
		r := s.m.file().Rocket()
		r.Water.Throat = row.throat
		fl, err := sim.Fly(context.Background(), r, sim.Options{Point: true})
		require.NoError(t, err)
		f := v.flight(row.throat)
		require.Equal(t, fl.Results, f.flight.Results)
		high = max(high, fl.Results.Apogee.Height)
	}
	rows := v.listed()
	require.Equal(t, high, v.flight(rows[v.best(rows)].throat).flight.Results.Apogee.Height)
	require.Equal(t, 1, strings.Count(s.said(), "*best"))
	require.Equal(t, 1, strings.Count(s.said(), " low "), "the narrowest leaves the rail too slowly")
	s.press("[")
	require.Contains(t, s.said(), "rail exit low: 16 m/s asked for")
}

// Best are only flights that leave the rail and end empty.
func TestBestThroatIsAFlightToHave(t *testing.T) {
	good := &sim.Flight{Results: sim.Results{RailExit: sim.GuideEnd{Moment: sim.Moment{Happened: true}}}}
	left := &sim.Flight{Results: good.Results}
	left.Results.LiquidLeft = 0.1
	require.True(t, (&throatFlight{flight: good}).mayBeBest())
	require.False(t, (&throatFlight{flight: left}).mayBeBest())
	require.False(t, (&throatFlight{flight: &sim.Flight{}}).mayBeBest())
	require.False(t, (&throatFlight{}).mayBeBest())
}

// A bad throat stays open with what is wrong, and nothing else changes.
func TestBadThroats(t *testing.T) {
	s := newScreen(t, plover(t), 80, 24)
	s.press("n", "]")
	list, flights, text := s.list(), s.throats().flights.Result, s.text()
	for _, key := range []string{"a", "e"} {
		for _, bad := range []string{"", "5 kg", "-3", "0", "90 mm", "NaN", "1e400", "x", "3 bar"} {
			s.press(key, "ctrl+u")
			s.write(bad)
			s.press("enter")
			require.NotNil(t, s.m.asking, "%q stays open", bad)
			require.NotEmpty(t, s.m.asking.wrong, bad)
			require.Equal(t, list, s.list(), bad)
			require.Equal(t, text, s.text(), bad)
			require.Equal(t, flights, s.throats().flights.Result, bad)
			s.checkSize()
			s.press("esc")
			require.Nil(t, s.m.asking)
		}
	}
}

func TestThroatsHaveRoomForSix(t *testing.T) {
	s := newScreen(t, plover(t), 80, 24)
	s.press("n")
	for _, mm := range []string{"9", "10", "12"} {
		s.press("a")
		s.write(mm)
		s.press("enter")
	}
	require.Len(t, s.throats().listed(), mostThroats)
	s.press("a")
	require.Nil(t, s.m.asking)
	require.Contains(t, s.view(), "room for 6 throats")
	s.press("b")
	s.checkSize()
	require.Contains(t, s.said(), "height m", "the plot keeps its room")
}

// The list follows every other input, and keeps the old figures, marked, till the
// new ones are there; of several asked for only the last counts.
func TestStaleThroats(t *testing.T) {
	s := newScreen(t, plover(t), 120, 40)
	s.press("n", "b")
	v := s.throats()
	old := v.flights.Result
	var late []tea.Cmd
	for _, bar := range []float64{5, 6, 7} {
		f, err := s.m.file().SetValue("water.pressure", bar*1e5)
		require.NoError(t, err)
		s.m.take(f, nil, view.Edit{})
		late = append(late, v.Show(view.Scene{Ctx: context.Background(), File: f, Now: s.m.now, Theme: s.m.theme}))
	}
	require.Equal(t, old, v.flights.Result)
	require.Contains(t, strings.Join(v.Lines(), " "), "computing")
	for _, i := range []int{1, 2, 0} {
		s.run(late[i])
	}
	require.False(t, v.flights.Busy || v.fills.Busy)
	for i := range v.flights.Result {
		require.InDelta(t, 7e5, v.flights.Result[i].flight.Rocket.Water.Pressure, 1e-6)
		require.InDelta(t, 7e5, v.fills.Result[i].best.Flight.Rocket.Water.Pressure, 1e-6)
	}
	require.NotContains(t, strings.Join(v.Lines(), " "), "computing")
}

// A throat that the rocket cannot have is told of in its row; the others fly.
func TestImpossibleThroat(t *testing.T) {
	s := newScreen(t, plover(t), 120, 40)
	s.press("t", "n", "[")
	require.Contains(t, s.said(), "fatter than")
	text := s.text()
	s.press("k")
	require.NotEmpty(t, s.m.fault.says, "it cannot be taken")
	require.Equal(t, text, s.text())
	require.Equal(t, ">11 13 15", s.list())
}

func TestThroatsAreForWater(t *testing.T) {
	s := newScreen(t, plover(t), 80, 24)
	s.press("n", "d")
	require.Contains(t, s.said(), "A throat is what water flies on")
	require.Contains(t, s.said(), "Press d to fly on water")
	before := s.text()
	s.press("]", "}", "k", "r", "b", "a", "esc", "n")
	require.Equal(t, before, s.text())
	s.press("d")
	require.Contains(t, s.said(), "height m")

	s = newScreen(t, waterless(t), 80, 24)
	s.press("n")
	require.Contains(t, s.said(), "has no [water]")
	s.checkSize()
}

// The list holds the rocket's own throat once, in rising order, whatever is done
// to it, and one is always chosen.
func TestThroatList(t *testing.T) {
	rapid.Check(t, func(rt *rapid.T) {
		l := throatList{chosen: ownThroat}
		size := rapid.SampledFrom([]float64{0.009, 0.011, 0.013, 0.013 + 1e-15, 0.015})
		own := size.Draw(rt, "own")
		for range rapid.IntRange(0, 20).Draw(rt, "edits") {
			before := l
			held := slices.Clone(l.others)
			switch rapid.IntRange(0, 4).Draw(rt, "edit") {
			case 0:
				l.add(size.Draw(rt, "add"))
			case 1:
				l.remove()
			case 2:
				l.set(size.Draw(rt, "set"))
			case 3:
				l.move(l.rows(own), rapid.IntRange(-9, 9).Draw(rt, "by"))
			case 4:
				own = size.Draw(rt, "own")
			}
			require.True(t, slices.Equal(held, before.others), "an older list stays what it was")
			rows, owns := l.rows(own), 0
			for i, r := range rows {
				require.True(t, i == 0 || r.throat > rows[i-1].throat)
				if r.own {
					owns++
					require.InDelta(t, own, r.throat, 1e-12)
				}
			}
			require.Equal(t, 1, owns)
			at := rows[l.at(rows)]
			require.True(t, l.chosen == ownThroat && at.own || l.chosen != ownThroat && sameThroat(at.throat, l.others[l.chosen]))
		}
	})
}

func BenchmarkThroats(b *testing.B) {
	r := plover(b).Rocket()
	throats := []float64{0.009, 0.011, 0.013, 0.015, 0.017, 0.019}
	b.Run("flights", func(b *testing.B) {
		for b.Loop() {
			if _, err := throatFlights(context.Background(), r, throats); err != nil {
				b.Fatal(err)
			}
		}
	})
	b.Run("fills", func(b *testing.B) {
		for b.Loop() {
			if _, err := throatFills(context.Background(), r, throats); err != nil {
				b.Fatal(err)
			}
		}
	})
}
