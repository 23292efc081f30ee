package certification

import (
	"bytes"
	"context"
	"encoding/json"
	"math"
	"strings"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"ullage/sim/ground"
	"ullage/sim/plan"
	"ullage/sim/quantity"
	"ullage/sim/rocket"
	"ullage/sim/rocketfile"
)

// motors are the example on its own motor, changed first, and on one too wide.
func motors(t *testing.T, change func(r *rocket.Rocket)) (*rocket.Rocket, []plan.Certification) {
	t.Helper()
	f, err := rocketfile.Open("../../../testdata/heron.toml")
	require.NoError(t, err)
	r := f.Rocket()
	change(r)
	wide := r.Clone()
	wide.Motor.Diameter = 38e-3
	wide.Motor.Delay = math.NaN()
	all, err := plan.Certify(context.Background(), []plan.Candidate{{Name: "own", Rocket: r}, {Name: "wi\x1bde", Rocket: wide}},
		plan.Options{Today: time.Date(2026, 10, 1, 0, 0, 0, 0, time.UTC)})
	require.NoError(t, err)
	return r, all
}

// text is the page on one line.
func text(r *rocket.Rocket, all []plan.Certification, sys quantity.System) string {
	doc := Document(r, all, sys)
	return strings.Join(strings.Fields(doc.Text()), " ")
}

func TestDocument(t *testing.T) {
	r, all := motors(t, func(r *rocket.Rocket) {
		r.Flyer = rocket.Flyer{Name: "A. Flyer", Certification: "12, level 1"}
		r.Field.Ceiling, r.Field.Radius = 0, 0
		r.Field.Boundary = ground.Polygon{{East: -2000, North: -2000}, {East: 2000, North: -2000}, {North: 2000}}
	})
	got := text(r, all, quantity.Metric)
	assert.Contains(t, got, "No leave to fly as the file has it, on own: not judged: ")
	assert.Contains(t, got, "not judged: apogee under the ceiling.")
	assert.Contains(t, got, "no ceiling is given (field.ceiling), field within its boundary.")
	assert.Contains(t, got, "Nothing here says that a flight will be accepted.")
	assert.Contains(t, got, "For the first flight, class H or I: none that fits and is go; by impulse alone: own and wide.")
	assert.Contains(t, got, "certified 12, level 1")
	assert.Contains(t, got, "wide H 220 N·s first wider than the mount no-go")
	assert.NotContains(t, strings.ToLower(got), "safe")

	r, all = motors(t, func(*rocket.Rocket) {})
	got = text(r, all, quantity.US)
	assert.NotContains(t, got, "No leave")
	assert.Contains(t, got, "For the first flight, class H or I: own; by impulse alone: wide.")
	assert.Contains(t, got, "For the second flight, class J, K or L: none of these.")
	assert.Contains(t, got, "above 160 N·s up to 640 N·s", "by which motors are sold, in US units too")
	assert.Contains(t, got, "people 100 ft to 300 ft away", "NFPA 1127 for J and L, from memory")
	assert.Contains(t, got, "witness ____")
	assert.Contains(t, got, "own 45 in 49.3 in 1.55 cal", "where it balances")
	for i := range all {
		all[i].Invalid = assert.AnError
	}
	assert.Contains(t, text(r, all, quantity.Metric), "No leave to fly as the file has it, on own: no flight: "+assert.AnError.Error())
}

func TestJSON(t *testing.T) {
	r, all := motors(t, func(*rocket.Rocket) {})
	var b bytes.Buffer
	require.NoError(t, WriteJSON(&b, r, all, quantity.US))
	var got struct {
		Pass    bool
		Flights []struct {
			Flight string
			Most   float64 `json:"impulse_most_ns"`
		}
		Motors []struct {
			Flight    *string
			Qualifies bool
			Failed    []string
			Apogee    float64 `json:"apogee_m"`
			Impulse   float64 `json:"impulse_ns"`
		}
	}
	require.NoError(t, json.Unmarshal(b.Bytes(), &got))
	assert.True(t, got.Pass)
	require.Len(t, got.Flights, 2)
	assert.Equal(t, 5120., got.Flights[1].Most)
	require.Len(t, got.Motors, 2)
	assert.True(t, got.Motors[0].Qualifies)
	assert.InDelta(t, all[0].Verdict.Day.Apogee.Height, got.Motors[0].Apogee, 1e-9, "SI whatever is shown")
	assert.False(t, got.Motors[1].Qualifies)
	assert.Contains(t, got.Motors[1].Failed, "motor-fits")
}
