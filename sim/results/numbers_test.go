package results_test

import (
	"fmt"
	"reflect"
)

// numbers are all numbers in a value, by where they stand.
func numbers(v any) map[string]float64 {
	out := map[string]float64{}
	var walk func(where string, v reflect.Value)
	walk = func(where string, v reflect.Value) {
		switch v.Kind() {
		case reflect.Float64:
			out[where] = v.Float()
		case reflect.Struct:
			for i := range v.NumField() {
				name := v.Type().Field(i).Name
				if where != "" {
					name = where + "." + name
				}
				walk(name, v.Field(i))
			}
		case reflect.Slice:
			for i := range v.Len() {
				walk(fmt.Sprintf("%s[%d]", where, i), v.Index(i))
			}
		}
	}
	walk("", reflect.ValueOf(v))
	return out
}
