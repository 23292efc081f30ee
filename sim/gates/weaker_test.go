package gates

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"ullage/sim/long"
	"ullage/sim/rocket"
	"ullage/sim/rocketfile"
)

// saysNothing are statements without which nothing is known less, or of which a file cannot show that they are gone.
var saysNothing = map[string]string{
	"chamber.diameter":     "that of the bore, which it has to agree with",
	"chamber.length":       "follows from the volume; no strength hangs on it",
	"chamber.density":      "a mass",
	"chamber.modulus":      "worked out from the plies, as is the strain; far less is refused",
	"chamber.wall":         "of plies whose fraction is stated it follows from them; less is refused",
	"chamber.heating.rise": "what a vent is to allow",
	"recovery.planes":      "one, the least, where nothing is said",
}

// What is not stated is not a pass: heron, which is go, is no go without any of its measurements and statements
// of strength, and no row passes that had them.
func TestNothingPassesForWantOfAStatement(t *testing.T) {
	long.Unraced(t)
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
		if _, given := in.Get(r); !given || n == nil || !n.Optional || saysNothing[in.Name] != "" {
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
	assert.GreaterOrEqual(t, tried, 22)
	for name, remove := range map[string]func(r *rocket.Rocket){
		"the chamber":             func(r *rocket.Rocket) { r.Chamber = nil },
		"its forward closure":     func(r *rocket.Rocket) { r.Chamber.Forward = nil },
		"its aft closure":         func(r *rocket.Rocket) { r.Chamber.Aft = nil },
		"its adhesive":            func(r *rocket.Rocket) { r.Chamber.Adhesive = nil },
		"its boss":                func(r *rocket.Rocket) { r.Chamber.Boss = nil },
		"its thread":              func(r *rocket.Rocket) { r.Chamber.Thread = nil },
		"its burst":               func(r *rocket.Rocket) { r.Chamber.BurstWord = "" },
		"its cycles":              func(r *rocket.Rocket) { r.Chamber.Cycles, r.Chamber.Counted = 0, false },
		"what warm coupons held":  func(r *rocket.Rocket) { r.Chamber.Temperature = 308.15 },
		"what tired coupons held": func(r *rocket.Rocket) { r.Chamber.Cycles = 11 },
		"the day of its proof":    func(r *rocket.Rocket) { r.Chamber.ProofDate = "" },
		"the recovery mount":      func(r *rocket.Rocket) { r.Recovery = nil },
		"the shape":               func(r *rocket.Rocket) { r.Shape = nil; r.Body.Drag = []rocket.MachDrag{{Drag: 0.5}} },
		"the balance":             func(r *rocket.Rocket) { r.Body.Balance = 0 },
		"the canopies":            func(r *rocket.Rocket) { r.Canopies = nil },
	} {
		without := r.Clone()
		remove(without)
		w := judge(t, without, Options{})
		assert.False(t, w.Pass(), "go without %s", name)
	}
}

// A motor beside a chamber warms it: without a word on what the chamber holds it is no go.
func TestSealedForWantOfAStatement(t *testing.T) {
	for name, remove := range map[string]func(r *rocket.Rocket){
		"the burst":            func(r *rocket.Rocket) { r.Chamber.BurstWord = "" },
		"the strength of laps": func(r *rocket.Rocket) { r.Chamber.Aft.BondStrength = 0 },
		"the cycles":           func(r *rocket.Rocket) { r.Chamber.Cycles, r.Chamber.Counted = 0, false },
	} {
		r := open(t, "heron")
		r.Power = rocket.MotorPower
		remove(r)
		v := judge(t, r, Options{})
		assert.False(t, find(t, &v, checkSealed).Judged, name)
		assert.Equal(t, WordOpen, v.Word(), name)
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
