package quantity_test

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"

	"ullage/sim/fault"
	"ullage/sim/quantity"
)

func TestRange(t *testing.T) {
	throat := quantity.Between(quantity.Length, "mm", 0.5, 500)
	assert.Equal(t, "0.5 mm to 500 mm", throat.String())
	for v, want := range map[float64]string{
		0.0005: "", 0.5: "", 0.013: "", 0: "zero", -1: "negative", math.Nextafter(0.0005, 0): "too small", math.Nextafter(0.5, 1): "too large",
		math.Inf(1): "not a finite number", math.Inf(-1): "not a finite number",
	} {
		bad := throat.Check(v)
		if want == "" {
			assert.Nil(t, bad, v)
			continue
		}
		assert.Equal(t, &fault.Fault{Problem: want, Remedy: "give 0.5 mm to 500 mm"}, bad, v)
	}
	assert.Equal(t, "not a finite number", throat.Check(math.NaN()).Problem)

	// A cold temperature is not called negative, nor is one below a range that has such.
	air := quantity.Between(quantity.Temperature, "degC", -60, 60)
	assert.Equal(t, &fault.Fault{Problem: "too small", Remedy: "give -60 degC to 60 degC"}, air.Check(200))
	turn := quantity.Between(quantity.Angle, "deg", -10, 10)
	assert.Equal(t, "too small", turn.Check(-1).Problem)
	assert.Panics(t, func() { quantity.Between(quantity.Length, "bar", 0, 1) })

	for v, want := range map[float64]float64{0.2: 0.2, 0: 0.0005, 3: 0.5, math.Inf(-1): 0.0005, math.Inf(1): 0.5} {
		assert.Equal(t, want, throat.Hold(v))
	}
	assert.Equal(t, 0.0, turn.Hold(math.NaN()))
}

// What is missing is told apart from what is wrong; what may be missing is not told.
func TestCheckFields(t *testing.T) {
	type thing struct {
		length, delay, extra, angle float64
		count                       int
		leans                       bool
	}
	metres := quantity.Between(quantity.Length, "m", 1, 10)
	fields := []quantity.Field[thing]{
		{Key: "length", Range: metres, At: func(x *thing) *float64 { return &x.length }},
		{Key: "delay", Range: quantity.Between(quantity.Time, "s", 0, 60), At: func(x *thing) *float64 { return &x.delay }, Optional: true, Absent: math.NaN()},
		{Key: "extra", Range: metres, At: func(x *thing) *float64 { return &x.extra }, Optional: true},
		{Key: "angle", Range: quantity.Between(quantity.Angle, "deg", 1, 80), At: func(x *thing) *float64 { return &x.angle },
			Only: func(x *thing) bool { return x.leans }},
		{Key: "count", Range: quantity.Between(quantity.Number, "", 1, 6), Count: func(x *thing) *int { return &x.count }},
	}
	sound := thing{length: 2, delay: math.NaN(), count: 3}
	var none fault.List
	assert.True(t, quantity.Check(&none, &sound, fields))
	assert.Empty(t, none)
	for want, spoil := range map[string]func(x *thing){
		"a.1.length: is missing; give 1 m to 10 m":         func(x *thing) { x.length = 0 },
		"a.1.length: is missing; give 1 m to 10 m ":        func(x *thing) { x.length = math.NaN() },
		"a.1.length: too large; give 1 m to 10 m":          func(x *thing) { x.length = 11 },
		"a.1.delay: negative; give 0 s to 60 s":            func(x *thing) { x.delay = -1 },
		"a.1.extra: too small; give 1 m to 10 m":           func(x *thing) { x.extra = 0.5 },
		"a.1.extra: not a finite number; give 1 m to 10 m": func(x *thing) { x.extra = math.NaN() },
		"a.1.angle: is missing; give 1 deg to 80 deg":      func(x *thing) { x.leans = true },
		"a.1.count: is missing; give 1 to 6":               func(x *thing) { x.count = 0 },
		"a.1.count: too large; give 1 to 6":                func(x *thing) { x.count = 7 },
		"a.1.count: negative; give 1 to 6":                 func(x *thing) { x.count = -1 },
	} {
		x := sound
		spoil(&x)
		var faults fault.List
		assert.False(t, quantity.Check(&faults, &x, fields, "a.", "1", "."))
		if assert.Len(t, faults, 1, want) {
			told := faults[0].Error()
			if want[len(want)-1] == ' ' {
				told += " "
			}
			assert.Equal(t, want, told)
			assert.Equal(t, faults[0].Problem == "is missing", faults[0].Missing)
		}
	}
}
