package long

import (
	"flag"
	"strconv"
	"testing"

	"pgregory.net/rapid"
)

const checksFlag = "rapid.checks"

// Check is rapid.Check for a property that is dear: the sample is how many checks of
// it are enough for a quick run. What -rapid.checks says goes before. It is not for tests
// that run side by side.
func Check(t *testing.T, sample int, property func(*rapid.T)) {
	t.Helper()
	if f := flag.Lookup(checksFlag); !given(checksFlag) && !Wanted() {
		usual := f.Value.String()
		defer func() { _ = f.Value.Set(usual) }()
		if err := f.Value.Set(strconv.Itoa(sample)); err != nil {
			t.Fatal(err)
		}
	}
	rapid.Check(t, property)
}

// given tells whether the command line sets a flag.
func given(name string) bool {
	found := false
	flag.Visit(func(f *flag.Flag) { found = found || f.Name == name })
	return found
}
