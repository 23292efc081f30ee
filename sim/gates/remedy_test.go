package gates

import (
	"context"
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"ullage/sim"
	"ullage/sim/results"
	"ullage/sim/rocket"
)

// Whatever mend is named makes its check pass, in every case, and a step less of it does
// not.
func TestMendsMend(t *testing.T) {
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
		{"little margin", "heron", "margin.rail-exit", func(r *rocket.Rocket) { r.Limits.MarginLeast = 1.5 }, []string{"", "fins.tail.span"}},
		{"too much margin", "heron", "margin.liquid-out", func(r *rocket.Rocket) { r.Limits.MarginMost = 2.5 }, []string{"fins.tail.span"}},
		{"opens late", "heron", "opening.main", func(r *rocket.Rocket) { r.Canopies[0].Water.Value = 3 }, []string{"canopy.main.deploy.water"}},
		{"a delay that is not listed", "heron", "opening.main", func(r *rocket.Rocket) { r.Power, r.Motor.Delay = rocket.MotorPower, 5 }, []string{"motor.delay"}},
		{"a hard landing", "heron", "landing", func(r *rocket.Rocket) { r.Canopies[0].Diameter = 0.6 }, []string{"canopy.main.diameter"}},
		{"much energy", "heron", "landing-energy", func(r *rocket.Rocket) { r.Limits.Energy = 8 }, []string{"canopy.main.diameter", "body.mass"}},
		{"a low ceiling", "heron", "ceiling", func(r *rocket.Rocket) { r.Field.Ceiling = 100 }, []string{"water.pressure", "water.fill", "body.mass"}},
		{"a small field", "heron", "radius", func(r *rocket.Rocket) { r.Field.Radius = 90 }, []string{"rail.tilt", "wind.speed", "canopy.main.diameter"}},
		{"a high load", "heron", "opening-load.main", func(r *rocket.Rocket) {
			r.Canopies[0].Water.Value, r.Recovery.Line = 3, 40
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
				again := judge(t, mended, Options{Spreads: o.Spreads})
				assert.True(t, find(t, &again, test.key).Pass, "%s %g: %g", m.Input.Name, m.To, find(t, &again, test.key).Value)
				for k := range again.Checks {
					if b := &again.Checks[k]; b.Values[results.Day].Known && b.Judged && b.Level == Bad && b.Limit.badness(b.Values[results.Day]) > 0 {
						was := find(t, &v, b.Key)
						if was.Limit.badness(was.Values[results.Day]) <= 0 {
							assert.Contains(t, m.Breaks, b.Name)
						}
					}
				}
				if m.Input.Name == "motor.delay" {
					assert.Contains(t, r.Motor.Delays, m.To, "one that can be had")
					continue
				}
				less := pulled(t, r, test.key, m, -1)
				if less == nil {
					continue
				}
				short := judge(t, less, Options{Spreads: o.Spreads})
				if x := find(t, &short, test.key); x.Values[results.Corner].Flown && x.SD == 0 {
					continue // nothing by itself makes a difference there, so slopes show no corner
				}
				assert.False(t, find(t, &short, test.key).Pass, "a step less of %s than %g passes too", m.Input.Name, m.To)
			}
			for _, want := range test.mends {
				assert.Contains(t, found, want)
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
