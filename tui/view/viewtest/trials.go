package viewtest

import (
	"reflect"
	"slices"
	"testing"

	"github.com/charmbracelet/bubbles/key"
	"github.com/stretchr/testify/require"

	"ullage/tui/view"
)

// TryKeys tries every key of a view: bindings is a struct of its keys by name, of which
// Open is the one that shows it. Each has a trial, on a frame of its own, and is one of the
// keys that the view lists.
func TryKeys[V view.View](t *testing.T, bindings any, begin func(t *testing.T) *Frame[V], trials map[string]func(*testing.T, *Frame[V])) {
	value := reflect.ValueOf(bindings)
	for i := range value.NumField() {
		name := value.Type().Field(i).Name
		b := value.Field(i).Interface().(key.Binding)
		t.Run(name, func(t *testing.T) {
			f := begin(t)
			if name == "Open" {
				require.Equal(t, b, f.V.About().Open)
				require.Len(t, f.V.Keys(), value.NumField()-1)
				return
			}
			require.True(t, slices.ContainsFunc(f.V.Keys(), func(k view.Key) bool { return reflect.DeepEqual(k.Binding, b) }),
				"not among the view's keys")
			require.NotNil(t, trials[name], "no trial of this key")
			trials[name](t, f)
		})
	}
}
