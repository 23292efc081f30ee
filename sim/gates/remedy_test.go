package gates

import (
	"context"
	"math"
	"path/filepath"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"ullage/sim"
	"ullage/sim/long"
	"ullage/sim/results"
	"ullage/sim/rocket"
	"ullage/sim/rocketfile"
	"ullage/sim/study"
)

// Whatever mend is named makes its check pass, in every case, and a step less of it does
// not.
func TestMendsMend(t *testing.T) {
	long.Unraced(t)
	for _, test := range []struct {
		name, file, key string
		set             func(r *rocket.Rocket)
		mends           []string // inputs
	}{
		{"short rail", "heron", "rail-exit", func(r *rocket.Rocket) { r.Rail.Length = 0.5 }, []string{"rail.length"}},
		{"too much wind for the exit", "heron", "rail-exit-wind", func(r *rocket.Rocket) { r.Wind.Speed = 5.5 }, []string{"rail.length", "wind.speed"}},
		{"heavy with water", "heron", "thrust-to-weight", func(r *rocket.Rocket) { r.Limits.ThrustToWeight = 16 }, []string{"water.fill", "water.throat"}},
		{"tilted", "heron", "tilt", func(r *rocket.Rocket) { r.Rail.Tilt = 0.4 }, []string{"rail.tilt"}},
		{"windy", "heron", "wind", func(r *rocket.Rocket) { r.Limits.Wind = 3 }, []string{"wind.speed"}},
		{"steep air", "heron", "attack", func(r *rocket.Rocket) { r.Limits.Attack = 0.12 }, []string{"rail.length", "wind.speed"}},
		{"little margin", "heron", "margin.rail-exit", func(r *rocket.Rocket) { r.Limits.MarginLeast = 1.5 }, []string{"water.fill"}},
		{"too much margin", "heron", "margin.liquid-out", func(r *rocket.Rocket) { r.Limits.MarginMost = 2.5 }, nil},
		{"opens late", "heron", "opening.main", func(r *rocket.Rocket) { r.Canopies[0].Water.Value = 3 }, []string{"canopy.main.deploy.water"}},
		{"a delay that is not listed", "heron", "opening.main", func(r *rocket.Rocket) { r.Power, r.Motor.Delay = rocket.MotorPower, 5 }, []string{"motor.delay"}},
		{"a hard landing", "heron", "landing", func(r *rocket.Rocket) { r.Canopies[0].Diameter = 0.6 }, []string{"canopy.main.diameter"}},
		{"much energy", "heron", "landing-energy", func(r *rocket.Rocket) { r.Limits.Energy = 8 }, nil},
		{"a low ceiling", "heron", "ceiling", func(r *rocket.Rocket) { r.Field.Ceiling = 100 }, []string{"water.pressure", "water.fill", "body.mass"}},
		{"a small field", "heron", "radius", func(r *rocket.Rocket) { r.Field.Radius = 90 }, []string{"wind.speed"}},
		{"a high load", "heron", "opening-load.main", func(r *rocket.Rocket) {
			r.Canopies[0].Water.Value, r.Recovery.Line = 6, 100
		}, []string{"canopy.main.deploy.water"}},
		{"proved to too little", "heron", "proof", func(r *rocket.Rocket) { r.Chamber.Proof = 12e5 }, []string{"water.pressure"}},
		{"bonds too short", "heron", "burst", func(r *rocket.Rocket) { r.Chamber.Forward.Overlap = 0.008 }, []string{"chamber.forward.overlap"}},
		{"too few layers", "heron", "burst", func(r *rocket.Rocket) {
			r.Chamber.Plies = r.Chamber.Plies[:1]
			r.Chamber.Plies[0].Count = 2
		}, []string{"chamber.ply.cloth.count"}},
		{"too much water", "bottle", "liquid-left", func(r *rocket.Rocket) { r.Water.Fill = 0.75 }, []string{"water.fill"}},
	} {
		t.Run(test.name, func(t *testing.T) {
			r := open(t, test.file)
			test.set(r)
			o := all(r)
			v := judge(t, r, o)
			c := find(t, &v, test.key)
			require.False(t, c.Pass)
			var found []string
			for _, m := range c.Remedies {
				if m.Kind > AddNoseWeight {
					continue
				}
				found = append(found, m.Input.Name)
				mended := pulled(t, r, test.key, m, 0)
				if m.And != nil {
					mended = made(t, mended, *m.And)
				}
				again := judge(t, mended, Options{Spreads: o.Spreads})
				assert.True(t, find(t, &again, test.key).Pass, "%s %g: %g", m.Input.Name, m.To, find(t, &again, test.key).Value)
				assert.Empty(t, v.setBack(&again, m.costs), "%s %g fails what passed", m.Input.Name, m.To)
				if m.Input.Name == "motor.delay" {
					assert.Contains(t, r.Motor.Delays, m.To, "one that can be had")
					continue
				}
				less := pulled(t, r, test.key, m, -beyondNearest)
				if less == nil {
					continue
				}
				short := judge(t, less, Options{Spreads: o.Spreads})
				if x := find(t, &short, test.key); x.Values[results.Corner].Flown && x.SD == 0 {
					continue // nothing by itself makes a difference there, so slopes show no corner
				}
				assert.False(t, find(t, &short, test.key).Pass, "less of %s than %g passes too", m.Input.Name, m.To)
			}
			for _, want := range test.mends {
				assert.Contains(t, found, want)
			}
		})
	}
}

// beyondNearest is how many steps beyond the nearest a mend may be: where all is flown again
// the corner may lie elsewhere, and the search goes on by growing steps.
const beyondNearest = 1 << (further + 1)

// made is a rocket with one remedy made.
func made(t require.TestingT, r *rocket.Rocket, m Remedy) *rocket.Rocket {
	if m.Kind == AddNoseWeight {
		out := noseWeight(r).change(r, m.To)
		if m.And != nil {
			return made(t, out, *m.And)
		}
		return out
	}
	out := r.Clone()
	in, err := rocketfile.Find(out, m.Input.Name)
	require.NoError(t, err)
	require.NoError(t, in.Set(out, m.To))
	switch m.Kind {
	case TiltIntoWind:
		out.Rail.Heading = out.Wind.From
	case Rebuild:
		rebuild(m.Input.Name).with(out)
	}
	if m.And != nil {
		return made(t, out, *m.And)
	}
	return out
}

// What is offered holds: it makes its check pass and loses none that passed, on either drive,
// in any case; no two undo each other, by pulling one input two ways or by making what the
// other mends worse; and pressure never rises.
func assertMendsHold(t require.TestingT, v *Verdict, o Options) {
	ways := map[string]float64{}
	other := otherDrive(v.Rocket)
	var wasOther Verdict
	if other != nil {
		spreads := o
		spreads.Spreads, spreads.Remedies = study.DefaultSpread(other), false
		var err error
		wasOther, err = Judge(context.Background(), other, spreads)
		require.NoError(t, err)
	}
	for i := range v.Checks {
		c := &v.Checks[i]
		for _, m := range c.Remedies {
			if m.Kind > AddNoseWeight {
				continue
			}
			for one := &m; one != nil; one = one.And {
				if one.Input.Name == "" {
					continue
				}
				way := math.Copysign(1, one.To-one.From)
				require.False(t, ways[one.Input.Name] == -way, "%s is pulled both ways", one.Input.Name)
				if m.And == nil && m.Kind != OtherDelay && one.Input.Name != "motor.delay" {
					ways[one.Input.Name] = way
				}
				require.False(t, one.Input.Name == "water.pressure" && way > 0, "more pressure")
			}
			mended := made(t, v.Rocket, m)
			again, err := Judge(context.Background(), mended, Options{Today: o.Today, Spreads: study.DefaultSpread(mended)})
			require.NoError(t, err)
			for k := range again.Checks {
				if b := &again.Checks[k]; b.Key == c.Key {
					require.True(t, b.Pass, "%s %g does not mend %s: %g", m.Input.Name, m.To, c.Key, b.Value)
				}
			}
			require.Empty(t, v.setBack(&again, m.costs), "%s %g for %s", m.Input.Name, m.To, c.Key)
			if other != nil {
				mended.Power = other.Power
				again, err = Judge(context.Background(), mended, Options{Today: o.Today, Spreads: study.DefaultSpread(mended)})
				require.NoError(t, err)
				require.Empty(t, wasOther.setBack(&again, m.costs), "%s %g for %s", m.Input.Name, m.To, c.Key)
			}
		}
	}
}

func TestMendsHoldOnEveryExample(t *testing.T) {
	files, err := filepath.Glob("../../testdata/*.toml")
	require.NoError(t, err)
	tried := 0
	for _, path := range files {
		f, err := rocketfile.Open(path)
		if err != nil || f.Rocket().Validate() != nil {
			continue // a motor's own file
		}
		for _, power := range []rocket.Power{rocket.WaterPower, rocket.MotorPower} {
			r := f.Rocket().Clone()
			if r.Power = power; r.Validate() != nil {
				continue
			}
			tried++
			t.Run(filepath.Base(path)+" "+string(power), func(t *testing.T) {
				o := all(r)
				v := judge(t, r, o)
				o.Today = today
				assertMendsHold(t, &v, o)
				assertWarningsJudged(t, &v)
			})
		}
	}
	require.Greater(t, tried, 5)
}

// Rockets near the heron and its kin, each number off at random.
func TestMendsHoldOnAnyRocket(t *testing.T) {
	long.Unraced(t)
	long.Check(t, 4, func(t *rapid.T) {
		r := anyRocket(t)
		o := Options{Today: today, Spreads: study.DefaultSpread(r), Respread: study.DefaultSpread, Remedies: true}
		v, err := Judge(context.Background(), r, o)
		require.NoError(t, err)
		assertMendsHold(t, &v, o)
		assertWarningsJudged(t, &v)
	})
}

// anyRocket is an example with its greater numbers off by much.
func anyRocket(t *rapid.T) *rocket.Rocket {
	name := rapid.SampledFrom([]string{"heron", "drogue-main", "tube", "mass-list"}).Draw(t, "file")
	f, err := rocketfile.Open("../../testdata/" + name + ".toml")
	require.NoError(t, err)
	r := f.Rocket().Clone()
	off := func(what string, v *float64) { *v *= rapid.Float64Range(0.6, 1.6).Draw(t, what) }
	off("mass", &r.Body.Mass)
	off("wind", &r.Wind.Speed)
	off("rail", &r.Rail.Length)
	off("canopy", &r.Canopies[0].Diameter)
	if r.Water != nil {
		off("fill", &r.Water.Fill)
		off("pressure", &r.Water.Pressure)
		if r.Motor != nil && rapid.Bool().Draw(t, "motor") {
			r.Power = rocket.MotorPower
		}
	}
	if r.Validate() != nil {
		t.Skip("no rocket")
	}
	return r
}

// check with its corners and mends, of a rocket that fails.
func BenchmarkCheckWithMends(b *testing.B) {
	f, err := rocketfile.Open("../../testdata/heron.toml")
	require.NoError(b, err)
	for name, set := range map[string]func(r *rocket.Rocket){
		"go": func(*rocket.Rocket) {}, "short rail": func(r *rocket.Rocket) { r.Rail.Length = 0.5 },
		"small field": func(r *rocket.Rocket) { r.Field.Radius = 90 }, "too much margin": func(r *rocket.Rocket) { r.Limits.MarginMost = 2.5 },
		"six fail":   func(r *rocket.Rocket) { r.Rail.Length, r.Wind.Speed = 0.5, 6 },
		"eight fail": func(r *rocket.Rocket) { r.Rail.Length, r.Wind.Speed, r.Body.Mass = 0.5, 6, 1.9 },
		"eight fail on a motor": func(r *rocket.Rocket) {
			r.Power = rocket.MotorPower
			r.Rail.Length, r.Wind.Speed, r.Body.Mass, r.Motor.Delay = 0.8, 8, 1.2, 7
		},
	} {
		b.Run(name, func(b *testing.B) {
			r := f.Rocket().Clone()
			set(r)
			o := Options{Today: today, Spreads: study.DefaultSpread(r), Respread: study.Respread(f), Remedies: true}
			for b.Loop() {
				if _, err := Judge(context.Background(), r, o); err != nil {
					b.Fatal(err)
				}
			}
		})
	}
}

// pulled is the rocket with a mend made, or steps more of it than needed.
func pulled(t *testing.T, r *rocket.Rocket, key string, m Remedy, steps float64) *rocket.Rocket {
	t.Helper()
	for _, g := range criteriaOf(r, today) {
		if g.key != key {
			continue
		}
		for _, l := range g.levers {
			if l.input != m.Input.Name || l.kind != m.Kind {
				continue
			}
			p, ok := l.ready(r)
			require.True(t, ok)
			x := m.To + steps*math.Copysign(p.step, m.To-m.From)
			if (x-m.From)*(m.To-m.From) <= 0 { // today's value or beyond: that fails as it is
				return nil
			}
			return p.set(r, x)
		}
	}
	require.Fail(t, "no such lever: "+m.Input.Name)
	return nil
}

// A rail that is long enough, by the flight itself: the speed along a longer guide.
func TestRailMendAgainstTheFlight(t *testing.T) {
	long.Unraced(t)
	r := open(t, "heron")
	r.Rail.Length = 0.5
	v := judge(t, r, Options{Remedies: true})
	m := find(t, &v, "rail-exit").Remedies[0]
	require.Equal(t, "rail.length", m.Input.Name)
	long := r.Clone()
	long.Rail.Length = 3
	fl, err := sim.Fly(context.Background(), long, sim.Options{Keep: true})
	require.NoError(t, err)
	at := 0.0
	for ti := 0.0; ti < fl.RailExit.Time; ti += 1e-5 {
		if s := fl.At(ti); s.Speed >= 15 {
			at = s.Height / math.Cos(r.Rail.Tilt)
			break
		}
	}
	assert.InDelta(t, at, m.To, 0.1, "the next decimetre")
	assert.GreaterOrEqual(t, m.To, at)
}

// The proof to make is 1.5 times the pressure where the chamber stands it, and not named
// where it does not.
func TestProofMend(t *testing.T) {
	r := open(t, "heron")
	r.Chamber.Proof, r.Chamber.ProofDate = 0, ""
	v := judge(t, r, Options{Remedies: true})
	mends := find(t, &v, "proof").Remedies
	require.Len(t, mends, 1)
	assert.Equal(t, ProveTo, mends[0].Kind)
	assert.InDelta(t, 15e5, mends[0].To, 1)
	r.Chamber.Forward.Overlap = 0.005
	v = judge(t, r, Options{Remedies: true})
	mends = find(t, &v, "proof").Remedies
	require.Len(t, mends, 1)
	assert.Equal(t, ProveFor, mends[0].Kind)
	assert.InDelta(t, r.ChamberAt().MostWorking, mends[0].To, 1)
	assert.False(t, find(t, &v, "burst").Pass)
}

// A mount that would hold is named with its strength, the limit's factor in it.
func TestStrongerMount(t *testing.T) {
	r := open(t, "heron")
	r.Recovery.Line = 20
	v := judge(t, r, Options{Remedies: true})
	c := find(t, &v, "opening-load.main")
	require.False(t, c.Pass)
	last := c.Remedies[len(c.Remedies)-1]
	assert.Equal(t, StrongerMount, last.Kind)
	assert.InDelta(t, 2*c.Value, last.To, 1e-9)
}
