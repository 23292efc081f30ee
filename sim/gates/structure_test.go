package gates

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"ullage/sim/airframe"
	"ullage/sim/chamber"
	"ullage/sim/results"
	"ullage/sim/rocket"
)

// Rows of shape and structure on both sides of their limits, worked by hand of the heron: by plain arithmetic, and by
// classical lamination theory in numpy, from the equations that the rooms name with their sources.
func TestStructureByHand(t *testing.T) {
	const wall = 0.0022951862 // strain around at 10 bar
	cone := func(angle float64) func(r *rocket.Rocket) {
		return func(r *rocket.Rocket) {
			r.Shape.Nose.Shape = airframe.Conical
			r.Shape.Nose.Length = r.Body.Diameter / 2 / math.Tan(angle*math.Pi/180)
		}
	}
	tail := func(angle float64) func(r *rocket.Rocket) {
		return func(r *rocket.Rocket) {
			d := r.Body.Diameter
			r.Shape.Sections = append(r.Shape.Sections, airframe.Section{Name: "tail", Length: 0.1 * d / math.Tan(angle*math.Pi/180), Forward: d, Aft: 0.8 * d})
		}
	}
	pressed := func(bar float64) func(r *rocket.Rocket) {
		return func(r *rocket.Rocket) { r.Water.Pressure = bar * 1e5 }
	}
	proved := func(bar float64) func(r *rocket.Rocket) {
		return func(r *rocket.Rocket) { r.Chamber.Proof = bar * 1e5 }
	}
	glue := func(strength, overlap float64) func(r *rocket.Rocket) {
		return func(r *rocket.Rocket) {
			r.Chamber.Adhesive.Strength, r.Chamber.Forward.Overlap, r.Chamber.Aft.Overlap = strength, overlap, overlap
		}
	}
	boss := func(length float64) func(r *rocket.Rocket) {
		return func(r *rocket.Rocket) { r.Chamber.Boss.Length = length }
	}
	kept := 1 - 0.1*math.Log10(6) // of a bond after six pressurisations
	for name, test := range map[string]struct {
		key   string
		set   func(r *rocket.Rocket)
		value float64
		word  string
	}{
		"a wall that holds water":     {checkWeep, pressed(13), 1.3 * wall, WordGood},
		"one that weeps":              {checkWeep, pressed(13.1), 1.31 * wall, WordHigh},
		"at the proof on record":      {checkWeepy, pressed(10), 1.6 * wall, WordGood},
		"at the proof that is wanted": {checkWeepy, pressed(11), 1.5 * 1.1 * wall, WordGood},
		"wanted beyond it":            {checkWeepy, pressed(11.7), 1.5 * 1.17 * wall, WordHigh},
		"on record at it":             {checkWeepy, proved(17.4), 1.74 * wall, WordGood},
		"on record beyond it":         {checkWeepy, proved(17.5), 1.75 * wall, WordHigh},
		"a nose of 29 deg":            {checkNose, cone(29), 29 * math.Pi / 180, WordGood},
		"a nose of 31 deg":            {checkNose, cone(31), 31 * math.Pi / 180, WordHigh},
		"a boat-tail of 11.9 deg":     {checkTaper, tail(11.9), 11.9 * math.Pi / 180, WordGood},
		"a boat-tail of 12.1 deg":     {checkTaper, tail(12.1), 12.1 * math.Pi / 180, WordHigh},
		// 16 bar on a seal of 34 mm against 6 MPa on a face of 46 mm, 2 and 5 mm long.
		"a boss bonded well":   {checkBurst, boss(5e-3), 16e5 * 0.034 * 0.034 / 4 / (0.046 * 5e-3 * 6e6 * kept), WordGood},
		"a boss hardly bonded": {checkBurst, boss(2e-3), 16e5 * 0.034 * 0.034 / 4 / (0.046 * 2e-3 * 6e6 * kept), WordHigh},
		// Laps of 30 and 60 mm alike: their ends carry √(4 · 0.2 mm · 2 MPa · 0.06 · E t) whatever their length.
		"laps":                   {checkBurst, glue(2e6, 0.03), 16e5 * 0.068 / 4 / (kept * math.Sqrt(4*0.2e-3*2e6*0.06*axialStiffness)), WordHigh},
		"laps longer than use":   {checkBurst, glue(2e6, 0.06), 16e5 * 0.068 / 4 / (kept * math.Sqrt(4*0.2e-3*2e6*0.06*axialStiffness)), WordHigh},
		"short laps, by average": {checkBurst, glue(20e6, 0.005), 16e5 * 0.068 / 4 / (kept * 6e6 * 0.005), WordHigh},
	} {
		t.Run(name, func(t *testing.T) {
			r := open(t, "heron")
			test.set(r)
			v := judge(t, r, Options{})
			c := find(t, &v, test.key)
			assert.InEpsilon(t, test.value, c.Value, 1e-6)
			assert.Equal(t, test.word, c.Word)
			assert.Equal(t, test.word == WordGood, c.Pass)
		})
	}

	r := open(t, "heron")
	r.Chamber.Liner = chamber.Lined
	v := judge(t, r, Options{})
	for i := range v.Checks {
		assert.NotContains(t, []string{checkWeep, checkWeepy}, v.Checks[i].Key, "a liner holds the water")
	}
}

// axialStiffness is modulus times thickness of the heron's wall along its axis, N/m: three layers of 163 g/m² of cloth and one of
// 150 g/m² wound around it, of glass and epoxy with 35 % of fibre, by lamination theory in numpy.
const axialStiffness = 10.510796e6

// How it stands as it leaves the rail, worked by hand of the heron: the angle from the wind at its balance point, 2.49 m up; the
// margin there by Barrowman's equations and NACA Report 1048's cross-flow on the side view; flutter by NACA TN 4197's form
// at the greatest dynamic pressure, in the air of the pad.
func TestFlightRowsByHand(t *testing.T) {
	r := open(t, "heron")
	v := judge(t, r, Options{})
	day := v.Day
	tilt, s := 2*math.Pi/180, &day.Stability
	height := day.RailExit.Height + (1.440-s.RailExit.Balance)*math.Cos(tilt)
	wind := 3 * math.Pow(height/10, 0.15)
	angle := math.Atan2(day.RailExit.Speed*math.Sin(tilt)+wind, day.RailExit.Speed*math.Cos(tilt)) - tilt
	const slope, moment, side, middle = 14.211488, 17.787406, 24.279785, 0.7988009 // ΣC, ΣC·x, A_plan·c/A and its centroid
	margin := ((moment+side*math.Sin(angle)*middle)/(slope+side*math.Sin(angle)) - s.RailExit.Balance) / 0.0694

	const pressure, temperature, gas = 97700, 289.15, 287.05287
	sound := math.Sqrt(1.4 * gas * temperature)
	aspect := 0.097 / 0.105
	thin := 0.003 / 0.140
	flutters := sound * math.Sqrt(4.5e9/(1.337*math.Pow(aspect, 3)*pressure*1.5/((aspect+2)*math.Pow(thin, 3))))
	flutter := math.Sqrt(2*day.Max.DynamicPressure*gas*temperature/pressure) / flutters

	for key, test := range map[string]struct {
		value float64
		limit *float64
		most  bool
	}{
		LimitAttack:      {angle, &r.Limits.Attack, true},
		LimitAttackMost:  {angle, &r.Limits.AttackMost, true},
		LimitMarginAngle: {margin, &r.Limits.MarginAtAngle, false},
		LimitFlutter:     {flutter, &r.Limits.Flutter, true},
	} {
		c := find(t, &v, key)
		require.InEpsilon(t, test.value, c.Values[results.Day].V, 1e-4, key)
		for _, share := range []float64{0.999, 1.001} {
			*test.limit = share * test.value
			is := judge(t, r, Options{Day: day})
			assert.Equal(t, (share > 1) == test.most, find(t, &is, key).Pass, key)
		}
		*test.limit = 0
	}
	r.Shape.Fins[0].ShearModulus = 0
	v = judge(t, r, Options{})
	c := find(t, &v, LimitFlutter)
	assert.True(t, c.Open())
	assert.Equal(t, []string{"fins.tail.shear_modulus"}, c.Remedies[0].Keys)
}
