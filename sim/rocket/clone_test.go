package rocket

import (
	"reflect"
	"testing"

	"github.com/stretchr/testify/require"

	"ullage/thrust"
)

// filled makes everything that v points to, so that nothing is nil.
func filled(v reflect.Value, n int) {
	switch v.Kind() {
	case reflect.Pointer:
		if v.Type() == reflect.TypeFor[*thrust.Curve]() {
			v.Set(reflect.ValueOf(new(thrust.Curve)))
			return
		}
		v.Set(reflect.New(v.Type().Elem()))
		filled(v.Elem(), n)
	case reflect.Slice:
		v.Set(reflect.MakeSlice(v.Type(), n, n))
		for i := range n {
			filled(v.Index(i), n)
		}
	case reflect.Struct:
		for i := range v.NumField() {
			if v.Field(i).CanSet() {
				filled(v.Field(i), n)
			}
		}
	case reflect.Float64:
		v.SetFloat(float64(n))
	}
}

// places are the addresses of what v points to.
func places(v reflect.Value, seen map[uintptr]string, at string) {
	switch v.Kind() {
	case reflect.Pointer:
		if !v.IsNil() && v.Type() != reflect.TypeFor[*thrust.Curve]() {
			seen[v.Pointer()] = at
			places(v.Elem(), seen, at)
		}
	case reflect.Slice:
		if v.Len() > 0 {
			seen[v.Pointer()] = at
		}
		for i := range v.Len() {
			places(v.Index(i), seen, at)
		}
	case reflect.Struct:
		for i := range v.NumField() {
			places(v.Field(i), seen, at+"."+v.Type().Field(i).Name)
		}
	}
}

// A copy shares nothing with what it was made from, whatever fields there are, is equal to it,
// and costs no memory the second time; nil stays nil.
func TestCopiesAreApart(t *testing.T) {
	full := new(Rocket)
	filled(reflect.ValueOf(full).Elem(), 3)
	mine := map[uintptr]string{}
	places(reflect.ValueOf(full).Elem(), mine, "")
	require.Greater(t, len(mine), 12)
	into := full.Clone()
	bare := &Rocket{Name: "bare", Body: Body{Drag: []MachDrag{}}}
	for _, from := range []*Rocket{full, bare, full} {
		from.CopyTo(into)
		require.Equal(t, from, into)
		theirs := map[uintptr]string{}
		places(reflect.ValueOf(into).Elem(), theirs, "")
		for p, at := range theirs {
			require.NotContains(t, mine, p, at)
		}
	}
	require.Zero(t, testing.AllocsPerRun(10, func() { full.CopyTo(into) }))
}
