package airframe

import (
	"reflect"
	"testing"

	"github.com/stretchr/testify/assert"
)

// Whatever differs, shapes are not equal: every field is tried.
func TestEqualShapes(t *testing.T) {
	same := func() *Shape {
		s := caseB()
		s.Fins = append([]Fins(nil), s.Fins...)
		return s
	}
	assert.True(t, same().Equal(caseB()))
	change := func(v reflect.Value, name string, of *Shape) {
		switch v.Kind() {
		case reflect.Float64:
			v.SetFloat(v.Float() + 1)
		case reflect.Int:
			v.SetInt(v.Int() + 1)
		case reflect.String:
			v.SetString(v.String() + "x")
		case reflect.Slice:
			v.Set(v.Slice(0, v.Len()-1))
		default:
			t.Fatalf("%s: a %s", name, v.Kind())
		}
		assert.False(t, of.Equal(caseB()), name)
	}
	fields := func(of func(*Shape) reflect.Value) {
		for i := range of(same()).NumField() {
			s := same()
			v := of(s)
			if v.Field(i).Kind() != reflect.Struct {
				change(v.Field(i), v.Type().Name()+"."+v.Type().Field(i).Name, s)
			}
		}
	}
	fields(func(s *Shape) reflect.Value { return reflect.ValueOf(s).Elem() })
	fields(func(s *Shape) reflect.Value { return reflect.ValueOf(&s.Nose).Elem() })
	fields(func(s *Shape) reflect.Value { return reflect.ValueOf(&s.Sections[1]).Elem() })
	fields(func(s *Shape) reflect.Value { return reflect.ValueOf(&s.Fins[0]).Elem() })
}
