package sim

import (
	"context"
	"fmt"
	"math"
	"path/filepath"
	"reflect"
	"testing"

	"github.com/stretchr/testify/require"

	"ullage/sim/rocket"
	"ullage/sim/rocketfile"
)

// A flight that goes on from the way up of another rocket, alike but for its recovery, is to the last bit the one from
// release: of random rockets of both drives and models, and of the examples.
func TestWayUpLeadsOn(t *testing.T) {
	var rockets []*rocket.Rocket
	for i := range 150 {
		rockets = append(rockets, newLot(uint64(i)).rocket())
	}
	files, err := filepath.Glob("../testdata/*.toml")
	require.NoError(t, err)
	for _, name := range files {
		f, err := rocketfile.Open(name)
		if err != nil {
			continue
		}
		for _, p := range f.Rocket().Drives() {
			r := f.Rocket().Clone()
			r.Power = p
			rockets = append(rockets, r)
		}
	}
	var up WayUp // one after the other in the same memory
	var first, whole, led Flyer
	kept, gone := 0, 0
	seed := uint64(0)
	for i, r := range rockets {
		up.known = false
		switch l := newLot(uint64(i)); {
		case i%3 == 0:
			r = l.recovered(r)
		case i%3 == 1 && len(r.Canopies) > 0: // due right after the top: the step over it is another for that
			shut := r.Clone()
			shut.Canopies = nil
			fl, err := first.Fly(context.Background(), shut, Options{})
			require.NoError(t, err)
			r.Canopies[0].Water = rocket.Rule{Trigger: rocket.AfterLaunch, Value: fl.Apogee.Time + l.spread(1e-9, 0.1)}
			r.Canopies[0].Motor = r.Canopies[0].Water
		}
		if _, err := first.Fly(context.Background(), r, Options{Keeps: &up}); err != nil {
			continue
		}
		if up.known {
			kept++
		}
		for range 4 {
			seed++
			other := newLot(seed).recovered(r)
			o := Options{NoseFirst: seed%3 == 0, Top: seed%17 == 0}
			want, err := whole.Fly(context.Background(), other, o)
			if err != nil {
				continue
			}
			o.From = &up
			o.Tolerance = DefaultTolerance
			if up.leads(other, &o, new(rocket.Rocket)) {
				gone++
			}
			got, err := led.Fly(context.Background(), other, o)
			require.NoError(t, err)
			sameToTheBit(t, want, got, fmt.Sprint(i, " ", r.Name, " ", r.Power))
		}
	}
	require.Greater(t, kept, 80)
	require.Greater(t, gone, 200, "of %d", seed)
}

// recovered is a rocket with another recovery, mostly one that opens after the top.
func (l lot) recovered(r *rocket.Rocket) *rocket.Rocket {
	other := r.Clone()
	for i := range other.Canopies {
		c := &other.Canopies[i]
		c.Coefficient *= l.within(0.5, 1.5)
		if l.chance(0.3) {
			c.Diameter, c.Area = 0, l.within(0.05, 2)
		}
		if l.chance(0.3) {
			c.FillConstant, c.OpeningForceCoefficient = l.within(0, 12), l.within(1, 2)
		}
		if l.chance(0.5) {
			rules := []rocket.Rule{{}, {Trigger: rocket.AfterApogee, Value: l.within(0, 4)}, {Trigger: rocket.Falling, Value: l.spread(5, 500)},
				{Trigger: rocket.AfterLaunch, Value: l.within(0, 30)}, {Trigger: rocket.AfterBurnout, Value: l.within(0, 20)}, {Trigger: rocket.AfterApogee, Value: -1}}
			c.Water = rules[l.IntN(len(rules))]
			c.Motor = c.Water
		}
	}
	if other.Motor != nil {
		other.Motor.Delay += l.within(-1, 2)
	}
	return other
}

func sameToTheBit(t *testing.T, want, got *Flight, name string) {
	t.Helper()
	require.Equal(t, want.Warnings, got.Warnings, name)
	require.Equal(t, want.Events, got.Events, name)
	require.Equal(t, want.Results, got.Results, name)
	require.Equal(t, [2]int{want.Steps, want.Rejected}, [2]int{got.Steps, got.Rejected}, name)
	require.Equal(t, want.effort, got.effort, name)
}

// Whatever else differs, by however little, the flight begins with its release: each number, word and choice of a rocket in turn.
func TestOnlyRecoveryMayDiffer(t *testing.T) {
	f, err := rocketfile.Open("../testdata/heron.toml")
	require.NoError(t, err)
	for _, power := range f.Rocket().Drives() {
		r := f.Rocket().Clone()
		r.Power = power
		var up WayUp
		_, err = Fly(context.Background(), r, Options{Keeps: &up})
		require.NoError(t, err)
		var leads []string
		all := 0
		leaves(reflect.ValueOf(r).Elem(), "", func(name string) {
			all++
			if up.leads(r, &Options{Tolerance: DefaultTolerance}, new(rocket.Rocket)) {
				leads = append(leads, name)
			}
		})
		require.Greater(t, all, 200)
		want := []string{".Canopies.Diameter", ".Canopies.Area", ".Canopies.Coefficient", ".Canopies.FillConstant", ".Canopies.OpeningForceCoefficient",
			".Canopies.Water.Trigger", ".Canopies.Water.Value", ".Canopies.Motor.Trigger", ".Canopies.Motor.Value", ".Motor.Delay"}
		require.Subset(t, want, leads, "only what opens a canopy and what it is once open")
		require.Contains(t, leads, ".Canopies.Diameter")
	}
}

// leaves changes one leaf of a value after another, calls look and puts it back.
func leaves(v reflect.Value, name string, look func(name string)) {
	switch v.Kind() {
	case reflect.Struct:
		for i := range v.NumField() {
			if v.Field(i).CanSet() {
				leaves(v.Field(i), name+"."+v.Type().Field(i).Name, look)
			}
		}
	case reflect.Pointer:
		if !v.IsNil() {
			leaves(v.Elem(), name, look)
		}
	case reflect.Slice, reflect.Array:
		for i := range v.Len() {
			leaves(v.Index(i), name, look)
		}
	default:
		was := reflect.New(v.Type()).Elem()
		was.Set(v)
		switch v.Kind() {
		case reflect.Float64:
			v.SetFloat(math.Nextafter(v.Float(), math.Inf(1)))
		case reflect.Int:
			v.SetInt(v.Int() + 1)
		case reflect.String:
			v.SetString(v.String() + "a")
		case reflect.Bool:
			v.SetBool(!v.Bool())
		default:
			return
		}
		look(name)
		v.Set(was)
	}
}
