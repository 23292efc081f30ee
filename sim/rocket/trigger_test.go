package rocket

import (
	"math"
	"strconv"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"ullage/sim/quantity"
)

// Every row of the table says what a rule needs to be read, written and told.
func TestTriggers(t *testing.T) {
	seen := map[string]bool{}
	for _, row := range Triggers() {
		assert.Equal(t, row.Trigger, row.Trigger.Row().Trigger)
		assert.False(t, seen[row.Words], row.Words)
		seen[row.Words] = true
		assert.True(t, strings.HasPrefix(row.Example, row.Words))
		assert.NotEqual(t, Never, row.Trigger)
		assert.NotEqual(t, row.Trigger.Numbered(), row.Charge)
		if row.Trigger.Numbered() {
			assert.Less(t, row.Range.Min, row.Range.Max)
			assert.Contains(t, []quantity.Dimension{quantity.Time, quantity.Length}, row.Range.Dimension)
		}
		for _, p := range []Power{WaterPower, MotorPower} {
			assert.NotEmpty(t, row.Trigger.Title(p))
			assert.Contains(t, row.Trigger.Sentence(p, "7 x", false), "7 x")
		}
	}
	assert.Len(t, seen, int(afterLast-Never-1), "a trigger without a row")
	assert.Nil(t, Never.Row())
	assert.Empty(t, Never.Title(WaterPower)+Never.Sentence(WaterPower, "1 s", false))
	assert.False(t, Never.Numbered() || Never.Falls() || Never.ByCharge())
}

func TestRulesInWords(t *testing.T) {
	plain := func(v float64) string { return strconv.FormatFloat(v, 'g', -1, 64) }
	for want, rule := range map[string]Rule{
		"launch + 9": {AfterLaunch, 9}, "burnout + 0": {AfterBurnout, 0}, "apogee + 1": {AfterApogee, 1}, "apogee − 1.5": {AfterApogee, -1.5},
		"falling through 120": {Falling, 120}, "ejection": {Ejection, 3}, "": {Never, 3},
	} {
		assert.Equal(t, want, rule.Text(plain, "−"))
	}
	assert.Equal(t, "2 s after end of thrust", AfterBurnout.Sentence(WaterPower, "2 s", false))
	assert.Equal(t, "8 s after burnout", Ejection.Sentence(MotorPower, "8 s", false))
	assert.Equal(t, "1 s before apogee", AfterApogee.Sentence(MotorPower, "1 s", true))
	assert.Equal(t, "falling through 90 m", Falling.Sentence(MotorPower, "90 m", false))
	assert.Equal(t, "after launch", AfterLaunch.Title(WaterPower))
}

func TestWaits(t *testing.T) {
	r := full(t)
	for _, tt := range []struct {
		power Power
		rule  Rule
		delay float64
		from  Moment
		waits float64
		ok    bool
		input string
	}{
		{MotorPower, Rule{AfterLaunch, 9}, 6, Launch, 9, true, "canopy.main.deploy.motor"},
		{MotorPower, Rule{AfterApogee, -2}, 6, Apogee, -2, true, "canopy.main.deploy.motor"},
		{MotorPower, Rule{Ejection, 0}, 6, Burnout, 6, true, "motor.delay"},
		{MotorPower, Rule{Ejection, 0}, math.NaN(), 0, 0, false, ""},
		{MotorPower, Rule{Falling, 90}, 6, 0, 0, false, "canopy.main.deploy.motor"},
		{MotorPower, Rule{}, 6, 0, 0, false, ""},
		{WaterPower, Rule{AfterBurnout, 1}, 6, Burnout, 1, true, "canopy.main.deploy.water"},
		{WaterPower, Rule{Ejection, 0}, 6, 0, 0, false, ""},
	} {
		r.Power, r.Motor.Delay = tt.power, tt.delay
		r.Canopies[0].Water, r.Canopies[0].Motor = Rule{AfterLaunch, 1}, Rule{AfterLaunch, 1}
		if tt.power == MotorPower {
			r.Canopies[0].Motor = tt.rule
		} else {
			r.Canopies[0].Water = tt.rule
		}
		from, waits, ok := r.Waits(0)
		assert.Equal(t, []any{tt.from, tt.waits, tt.ok}, []any{from, waits, ok}, "%v", tt)
		assert.Equal(t, tt.input, r.OpeningInput(0), "%v", tt)
	}
	r.Motor, r.Power = nil, MotorPower
	r.Canopies[0].Motor = Rule{Ejection, 0}
	_, _, ok := r.Waits(0)
	require.False(t, ok)
}
