package long

import (
	"flag"
	"strconv"
	"testing"

	"pgregory.net/rapid"
)

// What rapid is told: for how long it may look for a smaller case of a dear property
// that fails, since its own half minute grows to many where one trial takes seconds; and
// where its draws begin, so that a run that has to hold tries the same every time.
const (
	checksFlag = "rapid.checks"
	shrinkFlag = "rapid.shrinktime"
	shrinkFor  = "3s"
	seedFlag   = "rapid.seed"
	seed       = "1"
)

// Check is rapid.Check for a property that is dear: the sample is how many checks of
// it are enough for a quick run. It draws the same each time; -rapid.seed with another number
// draws anew. What the command line says of checks, shrinking and seed goes before.
// It is not for tests that run side by side.
func Check(t *testing.T, sample int, property func(*rapid.T)) {
	t.Helper()
	if !Wanted() {
		defer lent(t, checksFlag, strconv.Itoa(sample))()
	}
	defer lent(t, shrinkFlag, shrinkFor)()
	defer lent(t, seedFlag, seed)()
	rapid.Check(t, property)
}

// lent gives a flag that the command line leaves alone a value, until what it returns is called.
func lent(t *testing.T, name, value string) (back func()) {
	t.Helper()
	if given(name) {
		return func() {}
	}
	f := flag.Lookup(name)
	usual := f.Value.String()
	if err := f.Value.Set(value); err != nil {
		t.Fatal(err)
	}
	return func() { _ = f.Value.Set(usual) }
}

// given tells whether the command line sets a flag.
func given(name string) bool {
	found := false
	flag.Visit(func(f *flag.Flag) { found = found || f.Name == name })
	return found
}
