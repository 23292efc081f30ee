package gates

import (
	"math"
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"ullage/sim"
	"ullage/sim/chamber"
	"ullage/sim/ground"
	"ullage/sim/long"
	"ullage/sim/rocket"
)

// side is how a row is brought onto its limit and beyond.
type side struct {
	bound func(r *rocket.Rocket) *float64 // the number of the file that bounds it: the row's own value there passes, a thousandth less does not
	spoil func(r *rocket.Rocket)          // else what makes it fail, worked out by hand
	of    string                          // example, or kin, that passes it; heron if not given
	motor bool
}

// sides are the two of every row, by its key without a canopy's name.
var sides = map[string]side{
	LimitRailExit:               {bound: func(r *rocket.Rocket) *float64 { return &r.Limits.RailExit }},
	LimitRailExitWind:           {bound: func(r *rocket.Rocket) *float64 { return &r.Limits.RailExitWind }},
	LimitThrustToWeight:         {bound: func(r *rocket.Rocket) *float64 { return &r.Limits.ThrustToWeight }},
	checkMargin + ".rail-exit":  {spoil: func(r *rocket.Rocket) { r.Body.Balance += 0.0694 }}, // a calibre aft of 1.1
	checkMargin + ".liquid-out": {bound: func(r *rocket.Rocket) *float64 { return &r.Limits.MarginMost }},
	checkMargin + ".burnout":    {spoil: func(r *rocket.Rocket) { r.Body.Balance -= 0.0694 }}, // a calibre forward of 2.9
	checkLeastMargin:            {bound: func(r *rocket.Rocket) *float64 { return &r.Limits.MarginLeast }},
	LimitMarginAngle:            {bound: func(r *rocket.Rocket) *float64 { return &r.Limits.MarginAtAngle }},
	LimitAttackMost:             {bound: func(r *rocket.Rocket) *float64 { return &r.Limits.AttackMost }},
	LimitAttack:                 {bound: func(r *rocket.Rocket) *float64 { return &r.Limits.Attack }},
	LimitTilt:                   {bound: func(r *rocket.Rocket) *float64 { return &r.Limits.Tilt }},
	LimitWind:                   {bound: func(r *rocket.Rocket) *float64 { return &r.Limits.Wind }},
	LimitFlutter:                {bound: func(r *rocket.Rocket) *float64 { return &r.Limits.Flutter }},
	LimitImpulse:                {bound: func(r *rocket.Rocket) *float64 { return &r.Limits.Impulse }, motor: true},
	LimitOpening:                {bound: func(r *rocket.Rocket) *float64 { return &r.Limits.Opening }},
	LimitLanding:                {bound: func(r *rocket.Rocket) *float64 { return &r.Limits.Landing }},
	LimitEnergy:                 {bound: func(r *rocket.Rocket) *float64 { return &r.Limits.Energy }},
	LimitProof:                  {bound: func(r *rocket.Rocket) *float64 { return &r.Limits.ProofFactor }},
	LimitProofAge:               {bound: func(r *rocket.Rocket) *float64 { return &r.Limits.ProofDays }},
	checkCeiling:                {bound: func(r *rocket.Rocket) *float64 { return &r.Field.Ceiling }},
	checkRadius:                 {bound: func(r *rocket.Rocket) *float64 { return &r.Field.Radius }},
	checkMotorFits:              {bound: func(r *rocket.Rocket) *float64 { return &r.MotorMount.Liner }, motor: true},
	checkMotorLength:            {bound: func(r *rocket.Rocket) *float64 { return &r.MotorMount.Length }, motor: true},
	checkMotorHeld:              {spoil: mischief[sim.MotorSlides].set, motor: true},
	checkUnstated:               {spoil: mischief[sim.NoCanopy].set},
	checkNose:                   {spoil: mischief[sim.SteepNose].set, of: "mass-list", motor: true},
	checkTaper:                  {spoil: func(r *rocket.Rocket) { r.Shape.Sections[len(r.Shape.Sections)-1].Length /= 10 }, of: "mass-list", motor: true},
	checkTubeTip:                {spoil: mischief[sim.TubeTipWet].set, of: "tube"},
	checkTubeGap:                {spoil: mischief[sim.TubeLeaks].set, of: "tube"},
	checkDragReach:              {spoil: mischief[sim.DragBeyondTable].set},
	checkLeft:                   {spoil: func(r *rocket.Rocket) { r.Water.Fill = 0.8 }, of: "bottle"},
	checkFree:                   {spoil: mischief[sim.CanopyThrusting].set},
	checkFull:                   {spoil: mischief[sim.CanopyNotFull].set},
	checkTurn:                   {spoil: mischief[sim.CanopyOrder].set, of: "drogue-main", motor: true},
	checkPlace:                  {spoil: func(r *rocket.Rocket) { r.Canopies[1].Motor.Value = 3000 }, of: "drogue-main", motor: true},
	checkThrusting:              {spoil: mischief[sim.LandedThrusting].set},
	LimitMount:                  {spoil: func(r *rocket.Rocket) { r.Recovery.Line = 10 }},
	checkMost:                   {spoil: func(r *rocket.Rocket) { r.Recovery.Line = 10 }},
	checkBurst:                  {spoil: func(r *rocket.Rocket) { r.Chamber.Proof = 40e5 }}, // of an estimate of some 55 bar
	checkDoubt:                  {spoil: func(r *rocket.Rocket) { r.Chamber.Burst = 200e5 }, of: "heron burst"},
	checkWeep:                   {spoil: func(r *rocket.Rocket) { r.Water.Pressure = 14e5 }}, // 0.23 % at 10 bar
	checkWeepy:                  {spoil: func(r *rocket.Rocket) { r.Water.Pressure = 14e5 }},
	checkSealed:                 {spoil: func(r *rocket.Rocket) { r.Chamber.Heating.Temperature = 273.15 + 64.8 }, motor: true}, // of its strength a hundredth is left
	checkSqueeze:                {spoil: func(r *rocket.Rocket) { r.Bench.Seal.Groove = 29.2e-3 }},
	checkFilled:                 {spoil: func(r *rocket.Rocket) { r.Bench.Seal.Width = 2.8e-3 }},
	checkExtrude:                {spoil: func(r *rocket.Rocket) { r.Bench.Seal.Plug = 33.8e-3 }},
	checkBoundary:               {spoil: func(r *rocket.Rocket) { r.Field.Boundary = around(10) }, of: "heron field"},
	LimitProofCycles:            {bound: func(r *rocket.Rocket) *float64 { return &r.Limits.ProofCycles }, of: "heron book"},
	checkPressed:                {spoil: func(r *rocket.Rocket) { r.Chamber.Booked.Most = 12e5 }, of: "heron book"},
	checkFell:                   {spoil: func(r *rocket.Rocket) { r.Chamber.Booked.Hardest = 6.5 }, of: "heron book"},
	CheckDamage:                 {spoil: func(r *rocket.Rocket) { r.Chamber.Booked.Damage = []string{"2026-09-20: a dent"} }, of: "heron book"},
}

// around is a square field, m from its middle to its sides.
func around(m float64) ground.Polygon {
	return ground.Polygon{{East: -m, North: -m}, {East: m, North: -m}, {East: m, North: m}, {East: -m, North: m}}
}

// sided is the rocket that passes a row.
func sided(t *testing.T, s side) *rocket.Rocket {
	name, with, _ := strings.Cut(s.of, " ")
	if name == "" {
		name = "heron"
	}
	i := slices.IndexFunc(kins, func(k kin) bool { return k.file == name && (k.power == rocket.MotorPower) == s.motor })
	require.GreaterOrEqual(t, i, 0, name)
	r := kins[i].open(t).Rocket().Clone()
	switch with {
	case "burst":
		r.Chamber.Burst, r.Chamber.BurstWord = 60e5, ""
	case "field":
		r.Field.Boundary = around(2000)
	case "book":
		r.Chamber.Booked = &chamber.Booked{Cycles: 6, Since: 5, Proof: 16e5, ProofDate: "2026-09-12", Most: 10e5, Hardest: 5}
	}
	return r
}

// family is a row's key without the canopies that it is about.
func family(key string) string {
	if head, _, _ := strings.Cut(key, "."); head != checkMargin {
		return head
	}
	return key
}

// Every row that there is can be had both ways: a rocket that is a go passes it, on its limit and not only far within,
// and one that differs in what the row is about alone does not.
func TestEveryRowBothWays(t *testing.T) {
	long.Unraced(t)
	for key, s := range sides {
		t.Run(key, func(t *testing.T) {
			r := sided(t, s)
			v := judge(t, r, Options{})
			i := slices.IndexFunc(v.Checks, func(c Check) bool { return family(c.Key) == key })
			if key == CheckDamage || key == checkUnstated {
				require.Negative(t, i, "there is none of it where nothing is wrong")
			} else {
				require.GreaterOrEqual(t, i, 0)
				c := &v.Checks[i]
				require.True(t, c.Judged && c.Pass && c.Level == Good, "%g, %s", c.Value, c.Word)
			}
			fails := func(what string) {
				t.Helper()
				v := judge(t, r, Options{})
				i := slices.IndexFunc(v.Checks, func(c Check) bool { return family(c.Key) == key && c.Judged && c.Level != Good })
				require.GreaterOrEqual(t, i, 0, what)
				if c := &v.Checks[i]; c.Level == Bad {
					assert.Equal(t, WordNoGo, v.Word(), what)
				}
			}
			if s.spoil != nil {
				s.spoil(r)
				fails("spoilt")
				return
			}
			c := &v.Checks[i]
			on, less := s.bound(r), 1e-3
			if !math.IsInf(c.Limit.Min, 0) && math.IsInf(c.Limit.Max, 0) {
				less = -less
			}
			*on = c.Value
			v = judge(t, r, Options{})
			assert.True(t, v.Checks[i].Pass && v.Checks[i].Level == Good, "on its limit: %g, %s", v.Checks[i].Value, v.Checks[i].Word)
			*on *= 1 - less
			fails("beyond its limit")
		})
	}
}

// No row is missing above: none of any example, its kin, what warns, and what a logbook adds.
func TestNoRowWithoutSides(t *testing.T) {
	for _, of := range []string{"heron", "heron burst", "heron field", "heron book", "mass-list", "drogue-main", "bottle", "tube", "wagtail"} {
		for _, motor := range []bool{false, true} {
			name, _, _ := strings.Cut(of, " ")
			if !slices.ContainsFunc(kins, func(k kin) bool { return k.file == name && (k.power == rocket.MotorPower) == motor }) {
				continue
			}
			r := sided(t, side{of: of, motor: motor})
			for _, c := range criteriaOf(r, today) {
				assert.Contains(t, sides, family(c.key), "%s has a row %s of which no go or no no-go is known", of, c.key)
			}
		}
	}
	for _, w := range warnings {
		if w.note == "" {
			assert.Contains(t, sides, w.check)
		}
	}
}
