package rocket

import (
	"math"
	"reflect"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"ullage/sim/airframe"
	"ullage/sim/fault"
	"ullage/thrust"
)

// addresses finds every number that a value holds, by where it is.
func addresses(v reflect.Value, path string, found map[any]string) {
	switch v.Kind() {
	case reflect.Pointer:
		if !v.IsNil() && v.Type() != reflect.TypeFor[*thrust.Curve]() {
			addresses(v.Elem(), path, found)
		}
	case reflect.Struct:
		if v.Type() == reflect.TypeFor[Rule]() {
			return // the table of triggers has its number
		}
		for i := range v.NumField() {
			addresses(v.Field(i), path+"."+v.Type().Field(i).Name, found)
		}
	case reflect.Slice:
		for i := range v.Len() {
			addresses(v.Index(i), path, found)
		}
	case reflect.Float64:
		found[v.Addr().Interface().(*float64)] = path
	case reflect.Int:
		if v.Type() == reflect.TypeFor[int]() {
			found[v.Addr().Interface().(*int)] = path
		}
	}
}

// at is where a rocket holds a number; nil beyond the last item.
func (n *Number) at(r *Rocket, item int) any {
	if n.Count != nil {
		if p := n.Count(r, item); p != nil {
			return p
		}
		return nil
	}
	if p := n.At(r, item); p != nil {
		return p
	}
	return nil
}

// Every number that a rocket holds has one row of the table, and so one range.
func TestEveryNumberHasOneRange(t *testing.T) {
	for name, r := range map[string]*Rocket{"full": full(t), "wet": wet(t)} {
		held := map[any]string{}
		addresses(reflect.ValueOf(r), "", held)
		require.Greater(t, len(held), 60)
		for _, n := range numbers() {
			var last any
			for item := range 2 {
				where := n.at(r, item)
				if where == nil || where == last { // no list
					continue
				}
				assert.Contains(t, held, where, "%s: two rows for one number: %s", name, n.Name)
				delete(held, where)
				last = where
			}
		}
		// A shape repeats the body's diameter.
		assert.Equal(t, ".Shape.Diameter", held[&r.Shape.Diameter])
		delete(held, &r.Shape.Diameter)
		assert.Empty(t, held, "%s: numbers without a range", name)
	}
	for _, f := range airframe.ShapeFields() {
		assert.Equal(t, NumberNamed(f.Key).Range, f.Range, f.Key)
	}
}

// What is at either end of its range is in order, for all that a range can tell, and what
// is just beyond is refused with the range.
func TestValidateGoesByTheRanges(t *testing.T) {
	set := func(n *Number, r *Rocket, v float64) {
		if n.Count != nil {
			*n.Count(r, 0) = int(v)
			return
		}
		*n.At(r, 0) = v
		if n.Name == "body.diameter" {
			r.Shape.Diameter = v
		}
	}
	looked := 0
	for name, n := range numbers() {
		one := full
		switch {
		case strings.HasPrefix(name, "water."):
			one = wet
		case strings.HasPrefix(name, "wind.layer."):
			one = blown
		}
		key := keyOf(n)
		told := func(v float64) bool {
			r := one(t)
			switch name { // one of two numbers that exclude each other
			case "canopy.*.area":
				r.Canopies[0].Diameter = 0
			case "site.sea_level_pressure":
				r.Site.Pressure = 0
			}
			set(n, r, v)
			for _, f := range fault.In(r.Validate()) {
				if f.Key == key && f.Remedy == n.Range.Check(math.Inf(1)).Remedy {
					return true
				}
			}
			return false
		}
		below, above := math.Nextafter(n.Range.Min, math.Inf(-1)), math.Nextafter(n.Range.Max, math.Inf(1))
		if n.Count != nil {
			below, above = n.Range.Min-1, n.Range.Max+1
			if n.Optional && below == n.Absent { // which says that none is given
				below--
			}
		}
		assert.False(t, told(n.Range.Min), "%s at its least, %g", name, n.Range.Min)
		assert.False(t, told(n.Range.Max), "%s at its most, %g", name, n.Range.Max)
		assert.True(t, told(below), "%s below its least, %g", name, below)
		assert.True(t, told(above), "%s above its most, %g", name, above)
		looked++
	}
	require.Greater(t, looked, 100)
	for _, row := range Triggers() {
		if !row.Trigger.Numbered() {
			continue
		}
		for v, ok := range map[float64]bool{row.Range.Min: true, row.Range.Max: true, row.Range.Min - 1e-9: false, row.Range.Max + 1e-9: false} {
			r := full(t)
			r.Canopies[0].Motor = Rule{row.Trigger, v}
			assert.Equal(t, ok, r.Validate() == nil, "%s at %g", row.Words, v)
		}
	}
}
