package gates

import (
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"ullage/sim/rocket"
	"ullage/sim/rocketfile"
)

// saysNothing are numbers whose place another figure of the same rocket takes: nothing is known less without them.
var saysNothing = []string{
	"chamber.heat_factor", "chamber.cycle_factor", // estimated from the temperature and the cycles
	"chamber.diameter", "chamber.length", "chamber.density", "chamber.modulus", "chamber.fibre_fraction", "chamber.thread.hole",
	"chamber.forward.wall", "chamber.aft.wall", // the tube's plies
	"chamber.heating.rise", "recovery.pin", "recovery.bond_area", "recovery.line_length", "recovery.line_stretch", "recovery.canopy_mass",
	"recovery.pin_strength", "recovery.bond_strength",
	"chamber.burst",
}

// What is not stated is not a pass: heron, which is go, is no go without any of its measurements and statements
// of strength, and no row passes that had them.
func TestNothingPassesForWantOfAStatement(t *testing.T) {
	r := open(t, "heron")
	v := judge(t, r, Options{})
	require.True(t, v.Pass())
	tried := 0
	for _, in := range rocketfile.Inputs(r) {
		group, _, _ := strings.Cut(in.Name, ".")
		if group != "chamber" && group != "recovery" && group != "fins" && group != "field" {
			continue
		}
		n := rocket.NumberNamed(strings.Replace(in.Name, ".tail.", ".*.", 1))
		if _, given := in.Get(r); !given || n == nil || !n.Optional || slices.Contains(saysNothing, in.Name) {
			continue
		}
		without := r.Clone()
		*n.At(without, 0) = n.Absent
		if in.Name == "chamber.proof" {
			without.Chamber.ProofDate = ""
		}
		w := judge(t, without, Options{})
		assert.False(t, w.Pass(), "go without %s", in.Name)
		tried++
	}
	assert.GreaterOrEqual(t, tried, 15)
	for name, remove := range map[string]func(r *rocket.Rocket){
		"the chamber":          func(r *rocket.Rocket) { r.Chamber = nil },
		"its forward closure":  func(r *rocket.Rocket) { r.Chamber.Forward = nil },
		"its aft closure":      func(r *rocket.Rocket) { r.Chamber.Aft = nil },
		"its adhesive":         func(r *rocket.Rocket) { r.Chamber.Adhesive = nil },
		"its boss":             func(r *rocket.Rocket) { r.Chamber.Boss = nil },
		"its thread":           func(r *rocket.Rocket) { r.Chamber.Thread = nil },
		"the day of its proof": func(r *rocket.Rocket) { r.Chamber.ProofDate = "" },
		"the recovery mount":   func(r *rocket.Rocket) { r.Recovery = nil },
		"the shape":            func(r *rocket.Rocket) { r.Shape = nil; r.Body.Drag = []rocket.MachDrag{{Drag: 0.5}} },
		"the balance":          func(r *rocket.Rocket) { r.Body.Balance = 0 },
		"the canopies":         func(r *rocket.Rocket) { r.Canopies = nil },
	} {
		without := r.Clone()
		remove(without)
		w := judge(t, without, Options{})
		assert.False(t, w.Pass(), "go without %s", name)
	}
}

// A charge that no motor fires opens nothing: it is judged, and nothing panics.
func TestEjectionWithoutAMotor(t *testing.T) {
	r := open(t, "bottle")
	r.Canopies[0].Water = rocket.Rule{Trigger: rocket.Ejection}
	require.Nil(t, r.Motor)
	v := judge(t, r, all(r))
	c := find(t, &v, LimitOpening+".main")
	assert.True(t, c.Fails())
	assert.Equal(t, WordNever, c.Word)
}
