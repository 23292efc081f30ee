package throats

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
	"ullage/sim/rocketfile"
	"ullage/tui/view"
	"ullage/tui/view/viewtest"
)

type frame = viewtest.Frame[*View]

// start shows a rocket in the view.
func start(t testing.TB, f *rocketfile.File, size [2]int) *frame {
	t.Helper()
	return viewtest.New(t, New(view.DefaultKeys()), f, size)
}

// list is the throats in the list, mm, the chosen one marked.
func list(f *frame) string {
	rows := f.V.listed()
	var out []string
	for i, r := range rows {
		text := fmt.Sprintf("%.4g", r.throat*1e3)
		if i == f.V.list.at(rows) {
			text = ">" + text
		}
		out = append(out, text)
	}
	return strings.Join(out, " ")
}

// What each key of the view does.
var trials = map[string]func(t *testing.T, f *frame){
	"Prev":    func(t *testing.T, f *frame) { f.Press("[", "["); require.Equal(t, ">11 13 15", list(f)) },
	"Next":    func(t *testing.T, f *frame) { f.Press("]", "]"); require.Equal(t, "11 13 >15", list(f)) },
	"Smaller": func(t *testing.T, f *frame) { f.Press("]", "{", "{"); require.Equal(t, "11 13 >14.8", list(f)) },
	"Larger": func(t *testing.T, f *frame) {
		f.Press("}")
		require.Equal(t, "11 >13.1 15", list(f))
		require.InDelta(t, 0.0131, f.Value(throatInput), 1e-12, "today's is the rocket's own")
		f.Press("u")
		require.Equal(t, "11 >13 15", list(f))
	},
	"Type": func(t *testing.T, f *frame) {
		f.Press("]", "e")
		f.Type("0.4in")
		require.Equal(t, ">10.16 11 13", list(f))
		require.InDelta(t, 0.013, f.Value(throatInput), 1e-12)
	},
	"Add": func(t *testing.T, f *frame) {
		f.Press("a")
		f.Type("12")
		require.Equal(t, "11 >12 13 15", list(f))
		require.Len(t, f.V.flights.Result, 4)
	},
	"Remove": func(t *testing.T, f *frame) {
		f.Press("]", "r")
		require.Equal(t, "11 >13", list(f))
		f.Press("r")
		require.Equal(t, "11 >13", list(f), "today's stays")
		require.Contains(t, f.Said, "rocket's own")
	},
	"Take": func(t *testing.T, f *frame) {
		f.Press("]", "k")
		require.InDelta(t, 0.015, f.Scene.Now.Flight.Rocket.Water.Throat, 1e-12)
		require.Equal(t, "11 13 >15", list(f), "what it was before stays to compare with")
		f.Press("u")
		require.InDelta(t, 0.013, f.Scene.Now.Flight.Rocket.Water.Throat, 1e-12)
		require.Equal(t, "11 >13", list(f))
		f.Press("k")
		require.Contains(t, f.Said, "own throat already")
	},
	"Fills": func(t *testing.T, f *frame) {
		f.Press("b")
		require.Len(t, f.V.fills.Result, 3)
		require.Contains(t, f.Shown(), "each at its best fill")
		f.Press("b")
		require.NotContains(t, f.Shown(), "each at its best fill")
	},
	"Wish": func(t *testing.T, f *frame) {
		f.Press("y")
		require.Contains(t, f.Asked.Names, "landing.drift")
		f.Type("least max.thrust")
		require.Nil(t, f.Asked, f.Wrong)
		require.Equal(t, 0, f.V.best(f.V.listed()), "the narrowest pushes least")
		require.Contains(t, f.Shown(), "* 11 mm has the least greatest thrust")
		f.Press("b")
		require.Contains(t, f.Shown(), "each at its best fill")
		f.Press("y")
		f.Type("apogee.height = 5 km")
		require.NotNil(t, f.Asked)
		f.Type("apogee.height = 5000 m")
		require.Contains(t, f.Shown(), "none of these comes to apogee of 5000 m: the nearest is 5")
		f.Press("y")
		f.Type("")
		require.Contains(t, f.Shown(), "is today's throat")
	},
	"Plot": func(t *testing.T, f *frame) {
		require.Contains(t, f.Shown(), "height m")
		f.Press("z")
		require.Contains(t, f.Shown(), "thrust N")
		f.Press("z")
		require.Contains(t, f.Shown(), "height m")
	},
}

func TestKeys(t *testing.T) {
	viewtest.TryKeys(t, newKeys(view.DefaultKeys()), func(t *testing.T) *frame { return start(t, viewtest.Plover(t), viewtest.Small) }, trials)
}

// It begins with a throat below today's and one above, today's chosen in list and inputs.
func TestEnter(t *testing.T) {
	f := start(t, viewtest.Plover(t), viewtest.Small)
	require.Equal(t, "11 >13 15", list(f))
	require.Equal(t, throatInput, f.Chosen())
}

// The figures are those of the engine's flights, and the best is the highest.
func TestFigures(t *testing.T) {
	f := start(t, viewtest.Plover(t), viewtest.Large)
	v := f.V
	high := 0.0
	for _, row := range v.listed() {
		r := f.File().Rocket()
		r.Water.Throat = row.throat
		fl, err := sim.Fly(context.Background(), r, sim.Options{})
		require.NoError(t, err)
		require.Equal(t, fl.Results, v.flight(row.throat).flight.Results)
		high = max(high, fl.Results.Apogee.Height)
	}
	rows := v.listed()
	require.Equal(t, high, v.flight(rows[v.best(rows)].throat).flight.Results.Apogee.Height)
	require.Equal(t, 1, strings.Count(f.Shown(), "*best"))
	require.Equal(t, 1, strings.Count(f.Shown(), " low "), "the narrowest leaves the rail too slowly")
	f.Press("[")
	require.Contains(t, f.Shown(), "rail exit low: 16 m/s asked for")
}

// Best are only flights that leave the rail and end empty.
func TestBestIsAFlightToHave(t *testing.T) {
	full := sim.Moment{Happened: true}
	good := &sim.Flight{Rocket: viewtest.Plover(t).Rocket(), Results: sim.Results{RailExit: sim.GuideEnd{Moment: full}, Apogee: full}}
	left := &sim.Flight{Rocket: good.Rocket, Results: good.Results}
	left.Results.LiquidLeft = 0.1
	aim := view.Wish{}.For(good.Rocket).Aim(false)
	may := func(f *throatFlight) bool { _, may := f.worth(&aim); return may }
	require.True(t, may(&throatFlight{flight: good}))
	require.False(t, may(&throatFlight{flight: left}))
	require.False(t, may(&throatFlight{flight: &sim.Flight{}}))
	require.False(t, may(&throatFlight{}))
}

// No throat is the best at a pressure that the chamber is not proved for, as no fill is.
func TestBeyondTheProof(t *testing.T) {
	f := start(t, viewtest.Heron(t), viewtest.Large)
	require.Contains(t, f.Shown(), "*best")
	f.Set("water.pressure", "14 bar")
	require.NotContains(t, f.Shown(), "*best")
	require.Contains(t, f.Shown(), "no best throat: more pressure than the chamber is proved for")
}

// A bad throat stays open with what is wrong, and nothing else changes.
func TestBadThroats(t *testing.T) {
	f := start(t, viewtest.Plover(t), viewtest.Small)
	f.Press("]")
	before, flights, text := list(f), f.V.flights.Result, f.Source()
	for _, key := range []string{"a", "e"} {
		for _, bad := range []string{"", "5 kg", "-3", "0", "90 mm", "NaN", "1e400", "x", "3 bar"} {
			f.Press(key)
			f.Type(bad)
			require.NotNil(t, f.Asked, "%q stays open", bad)
			require.NotEmpty(t, f.Wrong, bad)
			require.Equal(t, before, list(f), bad)
			require.Equal(t, text, f.Source(), bad)
			require.Equal(t, flights, f.V.flights.Result, bad)
			f.Press("esc")
			require.Nil(t, f.Asked)
		}
	}
}

func TestRoomForSix(t *testing.T) {
	f := start(t, viewtest.Plover(t), viewtest.Small)
	for _, mm := range []string{"9", "10", "12"} {
		f.Press("a")
		f.Type(mm)
	}
	require.Len(t, f.V.listed(), mostThroats)
	f.Press("a")
	require.Nil(t, f.Asked)
	require.Contains(t, f.Said, "room for 6 throats")
	f.Press("b")
	require.Contains(t, f.Shown(), "height m", "the plot keeps its room")
}

// The list follows every other input, and keeps the old figures, marked, till the
// new ones are there; of several asked for only the last counts.
func TestStale(t *testing.T) {
	f := start(t, viewtest.Plover(t), viewtest.Medium)
	f.Press("b")
	v, s := f.V, f.Scene
	old := v.flights.Result
	var late []tea.Cmd
	for _, bar := range []float64{5, 6, 7} {
		file, err := f.File().SetValue("water.pressure", bar*1e5)
		require.NoError(t, err)
		s.File = file
		late = append(late, v.Show(s))
	}
	require.Equal(t, old, v.flights.Result)
	require.Contains(t, f.Shown(), "computing")
	for _, i := range []int{1, 2, 0} {
		f.Run(late[i])
	}
	require.False(t, v.flights.Busy || v.fills.Busy)
	for i := range v.flights.Result {
		require.InDelta(t, 7e5, v.flights.Result[i].flight.Rocket.Water.Pressure, 1e-6)
		require.InDelta(t, 7e5, v.fills.Result[i].best.Flight.Rocket.Water.Pressure, 1e-6)
	}
	require.NotContains(t, f.Shown(), "computing")
}

// A throat that the rocket cannot have is told of in its row; the others fly.
func TestImpossibleThroat(t *testing.T) {
	f := start(t, viewtest.Plover(t), viewtest.Medium)
	f.Edit(f.File().AddTube())
	f.Press("[")
	require.Contains(t, f.Shown(), "fatter than")
	text := f.Source()
	f.Press("k")
	require.NotEmpty(t, f.Wrong, "it cannot be taken")
	require.Equal(t, text, f.Source())
	require.Equal(t, ">11 13 15", list(f))
}

func TestIsForWater(t *testing.T) {
	f := start(t, viewtest.Plover(t), viewtest.Small)
	f.Drive()
	require.Contains(t, f.Shown(), "A throat is what water flies on")
	require.Contains(t, f.Shown(), "Press d to fly on water")
	before := f.Source()
	f.Press("]", "}", "k", "r", "b", "a")
	require.Nil(t, f.Asked)
	require.Equal(t, before, f.Source())
	f.Drive()
	require.Contains(t, f.Shown(), "height m")

	require.Contains(t, start(t, viewtest.Waterless(t), viewtest.Small).Shown(), "has no [water]")
}

// Flights are of the rocket's own model: one that flies as a point mass though its shape is
// known says so.
func TestOfARigidRocket(t *testing.T) {
	f := start(t, viewtest.Shaped(t), viewtest.Medium)
	require.NotContains(t, f.Shown(), "point mass")
	own := f.V.flight(f.File().Rocket().Water.Throat).flight
	require.Equal(t, f.Scene.Now.Flight.Results, own.Results)
	f = start(t, viewtest.Pointed(t), viewtest.Medium)
	require.Contains(t, f.Shown(), "flown as a point mass, though its shape is known")
}

// The list holds the rocket's own throat once, in rising order, whatever is done
// to it, and one is always chosen.
func TestList(t *testing.T) {
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
	r := viewtest.Plover(b).Rocket()
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
			if _, err := throatFills(context.Background(), r, throats, view.Wish{}.For(r)); err != nil {
				b.Fatal(err)
			}
		}
	})
}
