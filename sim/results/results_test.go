package results_test

import (
	"context"
	"math"
	"path/filepath"
	"regexp"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"ullage/sim"
	"ullage/sim/quantity"
	"ullage/sim/results"
	"ullage/sim/rocket"
	"ullage/sim/rocketfile"
)

// examples flies every example on every drive it has, as it is and as a rocket that
// cannot lift itself.
func examples(t *testing.T) []*sim.Flight {
	files, err := filepath.Glob("../../testdata/*.toml")
	require.NoError(t, err)
	var flights []*sim.Flight
	fly := func(r *rocket.Rocket) {
		// Tight, so that what is between steps and what is found in them is the same.
		fl, err := sim.Fly(context.Background(), r, sim.Options{Keep: true, Tolerance: 1e-8})
		require.NoError(t, err)
		flights = append(flights, fl)
	}
	for _, name := range files {
		f, err := rocketfile.Open(name)
		if err != nil {
			continue // a motor's file
		}
		for _, p := range []rocket.Power{rocket.WaterPower, rocket.MotorPower} {
			r := f.Rocket()
			if p == rocket.WaterPower && r.Water == nil || p == rocket.MotorPower && r.Motor == nil {
				continue
			}
			r.Power = p
			fly(r)
			stays := r.Clone()
			stays.Body.Mass = 150
			stays.Shape = nil
			if len(stays.Body.Drag) == 0 {
				stays.Body.Drag = []rocket.MachDrag{{Drag: 0.5}}
			}
			fly(stays)
		}
	}
	require.Greater(t, len(flights), 8)
	return flights
}

// Names, labels, columns and places in the JSON are one to a result, and a name leads
// back to its row.
func TestRowsAreApart(t *testing.T) {
	wellFormed := regexp.MustCompile(`^[a-z0-9_-]+(\.[a-z0-9_-]+)+$`)
	for _, fl := range examples(t) {
		table := results.For(fl.Rocket)
		seen := map[string]string{}
		once := func(kind, text, name string) {
			assert.NotEmpty(t, text, "%s of %s", kind, name)
			assert.Empty(t, seen[kind+text], "%s %q of %s", kind, text, name)
			seen[kind+text] = name
		}
		for _, g := range table {
			assert.NotEmpty(t, g.Label)
			for i := range g.Rows {
				r := &g.Rows[i]
				assert.Regexp(t, wellFormed, r.Name)
				assert.Equal(t, r.Name, table.Find(r.Name).Name)
				once("name", r.Name, r.Name)
				once("label", r.Label, r.Name)
				once("column", r.Column(), r.Name)
				once("place", g.Canopy+"/"+strings.Join(r.Path(), "/"), r.Name)
				assert.NotEmpty(t, r.Short, r.Name)
				assert.NotEmpty(t, r.Heading(), r.Name)
				assert.Equal(t, r.Dimension, r.Metric().Dimension, r.Name)
			}
		}
		assert.Nil(t, table.Find("apogee.hight"))
		assert.Nil(t, table.Find("apogee"))
		assert.Equal(t, "apogee.height", table.Nearest("apogee.hight"))
		assert.Panics(t, func() { table.Must("apogee.hight") })
	}
}

// A row says when it has no value, and only then has it none; a value is finite.
func TestUndefinedIsSaid(t *testing.T) {
	never, ever := map[string]bool{}, map[string]bool{}
	for _, fl := range examples(t) {
		for _, g := range results.For(fl.Rocket) {
			some := false
			for i := range g.Rows {
				r := &g.Rows[i]
				v, defined := r.Defined(fl)
				if r.IsWord() {
					assert.False(t, defined, r.Name)
					defined = r.Word(fl) != ""
				} else {
					assert.False(t, math.IsInf(v, 0), r.Name)
				}
				if !defined && r.Undefined == "" {
					t.Errorf("%s: %s has no value, and does not say when", fl.Rocket.Name, r.Name)
				}
				some = some || defined
				name := r.Name
				if g.Canopy != "" {
					name = strings.Replace(name, g.Canopy, "*", 1)
				}
				never[name] = never[name] || !defined
				ever[name] = ever[name] || defined
				if r.Undefined != "" {
					assert.True(t, strings.HasPrefix(r.Undefined, "when ") || strings.HasPrefix(r.Undefined, "without ") ||
						strings.HasPrefix(r.Undefined, "on ") || strings.HasPrefix(r.Undefined, "in "), r.Undefined)
				}
			}
			assert.Equal(t, some, g.Happened(fl), g.Name)
		}
	}
	for name := range never {
		assert.True(t, ever[name], "%s never has a value", name)
	}
	for _, r := range results.For(&rocket.Rocket{Power: rocket.MotorPower})[0].Rows {
		assert.Empty(t, r.Undefined, r.Name)
	}
}

// The keys that programs read are fixed.
func TestMachineNames(t *testing.T) {
	table := results.For(&rocket.Rocket{Power: rocket.WaterPower, Canopies: []rocket.Canopy{{Name: "main"}}})
	for _, x := range []struct{ name, path, column string }{
		{"lift_off.mass", "lift_off/mass_kg", "lift_off_mass_kg"},
		{"lift_off.thrust_to_weight", "lift_off/thrust_to_weight", "lift_off_thrust_to_weight"},
		{"rail_exit.speed", "rail_exit/speed_mps", "rail_exit_mps"},
		{"liquid_out.left", "liquid_out/left_kg", "liquid_left_kg"},
		{"burnout.time", "burnout/time_s", "burnout_s"},
		{"apogee.height", "apogee/height_m", "apogee_m"},
		{"apogee.time", "apogee/time_s", "apogee_s"},
		{"max.speed", "max/speed_mps", "max_speed_mps"},
		{"max.mach", "max/mach", "max_mach"},
		{"max.acceleration", "max/acceleration_mps2", "max_acceleration_mps2"},
		{"max.dynamic_pressure", "max/dynamic_pressure_pa", "max_dynamic_pressure_pa"},
		{"startup.thrust", "startup/thrust_n", "startup_thrust_n"},
		{"drive.impulse", "drive/impulse_ns", "impulse_ns"},
		{"drive.burn", "drive/burn_s", "burn_s"},
		{"drive.class", "drive/class", "class"},
		{"canopy.main.load_bound", "load_bound_n", "canopy_main_load_bound_n"},
		{"canopy.main.descent", "descent_mps", "canopy_main_descent_mps"},
		{"landing.speed", "landing/speed_mps", "landing_mps"},
		{"landing.time", "landing/time_s", "landing_s"},
		{"landing.energy", "landing/energy_j", "landing_energy_j"},
		{"landing.drift", "landing/drift_m", "drift_m"},
		{"margin.rail_exit", "stability/margin_cal/rail_exit", "margin_rail_exit_cal"},
		{"margin.least", "stability/margin_cal/least", "margin_least_cal"},
		{"attack.rail_exit", "stability/rail_exit_angle_deg", "attack_rail_exit_deg"},
		{"attack.most", "stability/max_angle_deg", "attack_most_deg"},
	} {
		r := table.Must(x.name)
		assert.Equal(t, x.path, strings.Join(r.Path(), "/"))
		assert.Equal(t, x.column, r.Column())
	}
	assert.Equal(t, 180.0, results.Machine(quantity.Angle, math.Pi))
	assert.Equal(t, 2.0, results.Machine(quantity.Speed, 2))
}

// The end of thrust has one dotted name on both drives, and the trade's word on each.
func TestEndOfThrust(t *testing.T) {
	label := func(p rocket.Power) string { return results.For(&rocket.Rocket{Power: p}).Group("burnout").Label }
	assert.Equal(t, "end of thrust", label(rocket.WaterPower))
	assert.Equal(t, "burnout", label(rocket.MotorPower))
}

// Every number of sim.Results that a user reads is a row: none is forgotten when the
// engine learns a new one. Compared by value, which is enough for numbers of a flight.
func TestNothingIsLeftOut(t *testing.T) {
	f, err := rocketfile.Open("../../testdata/heron.toml")
	require.NoError(t, err)
	fl, err := sim.Fly(context.Background(), f.Rocket(), sim.Options{})
	require.NoError(t, err)
	there := map[float64]bool{0: true}
	table := results.For(fl.Rocket)
	for _, name := range table.Names() {
		there[table.Must(name).Of(fl)] = true
	}
	for where, v := range numbers(fl.Results) {
		if strings.Contains(where, "Stability.") && !strings.HasSuffix(where, "Margin") && !strings.Contains(where, "Angle") ||
			strings.HasSuffix(where, "Dry.Margin") || strings.HasSuffix(where, "MaxAngleTime") || strings.HasPrefix(where, "Landing.Height") {
			continue // the balance itself is the airframe's; what lands is on the ground
		}
		assert.True(t, there[v], "%s = %g is in no row", where, v)
	}
}

// A question finds the flight of its drive and case, or says that there is none.
func TestFlightsAnswer(t *testing.T) {
	f, err := rocketfile.Open("../../testdata/heron.toml")
	require.NoError(t, err)
	fl, err := sim.Fly(context.Background(), f.Rocket(), sim.Options{})
	require.NoError(t, err)
	have := results.Flights{results.Flown{Drive: rocket.WaterPower, Case: results.Day}: fl}
	row := results.For(fl.Rocket).Must("apogee.height")
	v, flown := have.Answer(results.Question{Row: row, Drive: rocket.WaterPower, Case: results.Day})
	assert.True(t, flown)
	assert.Equal(t, fl.Apogee.Height, v)
	v, flown = have.Answer(results.Question{Row: row, Drive: rocket.WaterPower, Case: results.Calm})
	assert.False(t, flown)
	assert.True(t, math.IsNaN(v))
	for c := results.Case(0); c < results.Cases; c++ {
		assert.NotEmpty(t, c.String())
	}
}

// A series has values in a flight that knows it and none in one that does not; its
// greatest value is the result it names.
func TestSeries(t *testing.T) {
	seen := map[string]bool{}
	columnsEnd := false
	for _, s := range results.Over() {
		assert.False(t, seen[s.Name], s.Name)
		seen[s.Name] = true
		assert.Equal(t, s.Name, results.FindSeries(s.Name).Name)
		assert.Equal(t, s.Dimension, s.Metric().Dimension, s.Name)
		assert.False(t, columnsEnd && s.Column != "", "%s: columns come first", s.Name)
		columnsEnd = columnsEnd || s.Column == ""
	}
	assert.Nil(t, results.FindSeries("heigth"))
	for _, fl := range examples(t) {
		if !fl.RailExit.Happened {
			continue
		}
		table := results.For(fl.Rocket)
		samples := fl.Trace()
		for _, s := range results.Over() {
			some := false
			for i := range samples {
				some = some || !math.IsNaN(s.Of(&samples[i]))
			}
			assert.Equal(t, s.Known(fl), some, "%s of %s", s.Name, fl.Rocket.Name)
			if s.Most == "" || !s.Known(fl) {
				continue
			}
			at := table.Must(s.At()).Of(fl)
			// A value may jump where a phase ends: look on both sides.
			before, after := fl.At(at-1e-6), fl.At(at+1e-6)
			v := math.Max(s.Of(&before), s.Of(&after))
			if s.Least {
				v = math.Min(s.Of(&before), s.Of(&after))
			}
			assert.InEpsilon(t, table.Must(s.Most).Of(fl), v, 1e-3, "%s of %s on %s", s.Name, fl.Rocket.Name, fl.Rocket.Power)
			if s.Surge != "" {
				table.Must(s.Surge)
			}
		}
	}
}
