package gates

import (
	"math"
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"ullage/sim/chamber"
	"ullage/sim/rocket"
	"ullage/sim/rocketfile"
)

// unstated is what a rocket says nothing of, of all that holds its chamber and its canopies.
func unstated(r *rocket.Rocket) []string {
	return slices.Concat(r.Chamber.Unstated(r.Vessel().Temperature), r.Recovery.Unstated(), r.Recovery.UnstatedSnatch())
}

// builtIn names the parts of a rocket's chamber and mount that hold by a built-in figure.
func builtIn(r *rocket.Rocket) []string {
	var names []string
	for _, p := range r.ChamberAt().Parts {
		if p.Typical {
			names = append(names, p.Name)
		}
	}
	for _, h := range r.Recovery.Uses(1) {
		if h.Typical {
			names = append(names, h.Name)
		}
	}
	if _, typical := r.Recovery.Snatch(1); typical {
		names = append(names, "snatch")
	}
	return names
}

// allStated is heron with a wall so warm and so many cycles that both ask for a measurement, and with all that a file
// can say of its chamber and its mount, what is in force where it says nothing.
func allStated(t *testing.T, material chamber.Material) (*rocket.Rocket, map[string]*rocket.Number) {
	r := open(t, "heron")
	c := r.Chamber
	c.Temperature, c.Cycles = 273.15+40, 20
	if c.Material = material; material != chamber.GlassEpoxy {
		c.Plies, c.FibreFraction, c.Wall, c.Density, c.Modulus = nil, 0, 1e-3, 1800, 20e9
	}
	numbers := map[string]*rocket.Number{}
	for _, in := range rocketfile.Inputs(r) {
		group, _, _ := strings.Cut(in.Name, ".")
		n := rocket.NumberNamed(in.Name)
		if group != "chamber" && group != "recovery" || n == nil || !n.Optional || in.Name == "chamber.burst" { // a word stands for it
			continue
		}
		if in.Name == "chamber.fibre_fraction" && len(c.Plies) == 0 {
			continue
		}
		v, given := in.Get(r)
		if why := saysNothing[in.Name]; why != "" && !given {
			continue
		}
		if numbers[in.Name] = n; given {
			continue
		}
		if v == 0 || math.IsNaN(v) {
			v = (in.Min + in.Max) / 2
		}
		*n.At(r, 0) = v
	}
	return r, numbers
}

// Every number of chamber and mount that a file may leave out is asked for where it is left out, unless it is told why
// nothing hangs on it; and whatever lets a part hold by a built-in figure is asked for whatever is told.
func TestUnstatedNamesAll(t *testing.T) {
	// What counts of what elsewhere says nothing: of a wall of which nothing is known.
	counts := map[string]bool{}
	for _, material := range []chamber.Material{chamber.GlassEpoxy, chamber.Own} {
		counts["chamber.modulus"] = material == chamber.Own
		r, numbers := allStated(t, material)
		require.Empty(t, unstated(r), material)
		before := builtIn(r)
		tried := 0
		for name, n := range numbers {
			without := r.Clone()
			*n.At(without, 0) = n.Absent
			keys := unstated(without)
			if saysNothing[name] == "" && name != "chamber.proof" || counts[name] {
				assert.Equal(t, []string{name}, keys, "%s without %s", material, name)
				tried++
			}
			for _, part := range builtIn(without) {
				if !slices.Contains(before, part) {
					assert.Contains(t, keys, name, "%s: %s is a built-in figure without %s", material, part, name)
				}
			}
		}
		assert.GreaterOrEqual(t, tried, 26, material)
	}
}

// With every strength stated, a warm wall's estimate passes by no share of them that is built in.
func TestWarmEstimateForWantOfAFactor(t *testing.T) {
	r, _ := allStated(t, chamber.GlassEpoxy)
	r.Chamber.Proof, r.Chamber.ProofDate, r.Water.Pressure = 0, "", 4e5
	v := judge(t, r, Options{})
	require.True(t, find(t, &v, checkBurst).Pass)
	r.Chamber.HeatFactor = 0
	v = judge(t, r, Options{})
	c := find(t, &v, checkBurst)
	assert.False(t, c.Judged || c.Pass)
	assert.Equal(t, []string{"chamber.heat_factor"}, c.Remedies[0].Keys)
}

// A wall of which no modulus is known: what the ends of its laps carry is not known either.
func TestUnknownModulusIsNoPass(t *testing.T) {
	r, _ := allStated(t, chamber.Own)
	r.Chamber.Liner = chamber.Lined
	r.Water.Pressure = 4e5
	v := judge(t, r, Options{})
	require.True(t, find(t, &v, checkBurst).Pass)
	r.Chamber.Modulus = 0
	v = judge(t, r, Options{})
	c := find(t, &v, checkBurst)
	assert.False(t, c.Judged || c.Pass)
	assert.Equal(t, []string{"chamber.modulus"}, c.Remedies[0].Keys)
}
