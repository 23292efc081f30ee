package main

import (
	"context"
	"encoding/json"
	"fmt"
	"math"
	"os"
	"reflect"
	"regexp"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"ullage/sim/gates"
	"ullage/sim/long"
	"ullage/sim/rocket"
	"ullage/sim/rocketfile"
)

// judgedCheck is a check as JSON has it.
type judgedCheck struct {
	Key, Word, Source string
	Min, Max          *float64
	Judged            bool
}

func judgedBy(t *testing.T, args ...string) ([]judgedCheck, bool) {
	t.Helper()
	var doc struct{ Checks []judgedCheck }
	got := runWith(context.Background(), nil, append([]string{"check", "../../testdata/heron.toml", "--json", "--no-corner",
		"--set", "chamber.logbook=logs/heron.logbook.toml"}, args...)...)
	if got.out == "" { // margins that leave nothing between them are refused
		return nil, false
	}
	require.NoError(t, json.Unmarshal([]byte(got.out), &doc))
	return doc.Checks, true
}

// Every field of rocket.Limits is a limit: it has a default with a source, a key in the file
// and in the README, and a check that it fails when it is set hard enough. What is missing
// of a new one is named here.
func TestEveryLimitIsJudged(t *testing.T) {
	long.Unraced(t)
	file, err := rocketfile.Open("../../testdata/heron.toml")
	require.NoError(t, err)
	bare := file.Rocket().Clone()
	bare.Limits = rocket.Limits{}
	inputs := map[string]rocketfile.Input{} // by the field they set
	for _, in := range rocketfile.Inputs(bare) {
		if strings.HasPrefix(in.Name, "limits.") {
			r := bare.Clone()
			require.NoError(t, in.Set(r, in.Max), in.Name)
			inputs[oneField(t, in.Name, r.Limits)] = in
		}
	}
	defaults := rocket.DefaultLimits()
	readme, err := os.ReadFile("../../README.md")
	require.NoError(t, err)
	told := regexp.MustCompile("(?m)^\\| `\\[limits\\]` \\|.*$").FindString(string(readme))

	drives := []string{"water", "motor"}
	before := map[string][]judgedCheck{}
	for _, drive := range drives {
		before[drive], _ = judgedBy(t, "--set", "power="+drive)
	}
	for i := range reflect.TypeFor[rocket.Limits]().NumField() {
		name := reflect.TypeFor[rocket.Limits]().Field(i).Name
		t.Run(name, func(t *testing.T) {
			byDefault := reflect.ValueOf(defaults).Field(i).Float()
			if name != "MarginAtAngle" { // whose default is none at all
				require.Greater(t, byDefault, 0.0, "no default in rocket.DefaultLimits")
			}
			in, ok := inputs[name]
			require.True(t, ok, "no range in sim/rocket/fields.go, or no key in sim/rocketfile/schema_limits.go")
			v, given := in.Get(bare)
			assert.False(t, given)
			assert.InDelta(t, byDefault, v, 1e-12*byDefault, "the default is in force")
			assert.Contains(t, told, "`"+strings.TrimPrefix(in.Name, "limits.")+"`", "not in the README's table of the file")
			source := sourceOf(bare, in)
			require.NotEmpty(t, source, "no row in sim/gates/limits.go")
			assert.True(t, tellsOf(byDefault, source, append(before["water"], before["motor"]...)), "ullage check does not tell the default and its source")

			r := bare.Clone()
			require.NoError(t, in.Set(r, in.Max))
			inForce := r.Limits.InForce()
			assert.Equal(t, in.Max, reflect.ValueOf(inForce).Field(i).Float(), "set, it is in force")

			fails := func() bool {
				for _, hard := range []float64{in.Max, in.Min, 2.9 * byDefault, byDefault / 2.9} {
					for _, drive := range drives {
						if in.Set(r, hard) != nil {
							continue // out of range
						}
						after, ok := judgedBy(t, "--set", "power="+drive, "--set", in.Name+"="+in.Text(r))
						if ok && newlyOutside(before[drive], after) {
							return true
						}
					}
				}
				return false
			}
			assert.True(t, fails(), "no check is judged by it: sim/gates/criterion.go")
		})
	}
	assert.Len(t, inputs, reflect.TypeFor[rocket.Limits]().NumField())
}

// oneField names the only field of the limits that is set.
func oneField(t *testing.T, input string, l rocket.Limits) string {
	t.Helper()
	var names []string
	for i := range reflect.TypeOf(l).NumField() {
		if reflect.ValueOf(l).Field(i).Float() != 0 {
			names = append(names, reflect.TypeOf(l).Field(i).Name)
		}
	}
	require.Len(t, names, 1, "%s sets one field", input)
	return names[0]
}

// sourceOf is where the default of a limit comes from: that of the row in gates which moves
// with the input.
func sourceOf(bare *rocket.Rocket, in rocketfile.Input) string {
	r := bare.Clone()
	if in.Set(r, in.Max) != nil {
		return ""
	}
	for _, l := range gates.DefaultLimits() {
		if now := gates.LimitFor(r, l.Key); now.Source != l.Source {
			return l.Source
		}
	}
	return ""
}

// tellsOf tells that a check has a default, in degrees if it is an angle, for its bound, and
// its source; or a bound that is made of it, and a source that says so.
func tellsOf(byDefault float64, source string, checks []judgedCheck) bool {
	is := func(bound *float64) bool {
		return bound != nil && (*bound == byDefault || math.Abs(*bound/byDefault-1) < 1e-9 || math.Abs(*bound/byDefault*math.Pi/180-1) < 1e-9)
	}
	madeOf := fmt.Sprintf("over %.4g (%s)", byDefault, source)
	for _, c := range checks {
		if c.Source == source && (is(c.Min) || is(c.Max)) || strings.Contains(c.Source, madeOf) {
			return true
		}
	}
	return false
}

// newlyOutside tells that a check passed before, and does not now that the file has its limit.
func newlyOutside(before, after []judgedCheck) bool {
	for i, c := range after {
		if strings.Contains(c.Source, "the rocket file") && c.Judged && c.Word != gates.WordGood && before[i].Word == gates.WordGood &&
			before[i].Key == c.Key && moved(before[i].Min, c.Min)+moved(before[i].Max, c.Max) == 1 {
			return true
		}
	}
	return false
}

// moved is 1 when a bound is no longer what it was.
func moved(a, b *float64) int {
	if a == nil && b == nil || a != nil && b != nil && math.Abs(*a-*b) <= 1e-9*math.Abs(*a) {
		return 0
	}
	return 1
}
