package flown

import (
	"context"
	"encoding/json"
	"math"
	"os"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"ullage/sim/flown/logfile"
	"ullage/sim/long"
	"ullage/sim/study"
)

// recorded are the logs that SciPy's integration made, with what flew: testdata/reference/logs.py.
func recorded(t testing.TB) (logs []Logged, spreads []study.Spread, truth map[string]float64, apogees []float64) {
	t.Helper()
	text, err := os.ReadFile("../../testdata/reference/logs.json")
	require.NoError(t, err)
	var made struct {
		True             map[string]float64
		Pressure, Apogee []float64
	}
	require.NoError(t, json.Unmarshal(text, &made))
	f := open(t, "wagtail")
	for i, name := range []string{"one.csv", "two.txt", "three.tsv"} {
		log, err := logfile.Open("../../testdata/logs/"+name, logfile.Options{})
		require.NoError(t, err)
		r := f.Rocket()
		r.Water.Pressure = made.Pressure[i]
		o := Options{}
		if name == "three.tsv" {
			o.Heights = MeasuredHeights
		}
		rd, err := Read(log, r, o)
		require.NoError(t, err)
		logs = append(logs, Logged{Reading: rd, Rocket: r})
	}
	return logs, study.Spreads(f), made.True, made.Apogee
}

// Logs of flights by equations of another program give back what flew, each by itself and all
// together; and what is learned from one makes the prediction of the next better.
func TestRecoveryFromOtherEquations(t *testing.T) {
	long.Unraced(t)
	logs, spreads, truth, apogees := recorded(t)
	ctx := context.Background()
	fit := func(logs ...Logged) Fitted {
		chosen, err := Choose(ctx, logs, spreads)
		require.NoError(t, err)
		got, err := Fit(ctx, logs, chosen)
		require.NoError(t, err)
		for _, in := range got.Inputs {
			if v, ok := truth[in.Input.Name]; ok {
				assert.Less(t, math.Abs(in.Value-v), 3*in.SD, "%s %v ± %v, flown with %v", in.Input.Name, in.Value, in.SD, v)
			}
			t.Logf("%s %v ± %v", in.Input.Name, in.Value, in.SD)
		}
		for i, l := range got.Logs {
			assert.Less(t, l.RMS.Fitted, 1.1*l.RMS.Measured)
			assert.InDelta(t, l.Apogee.Measured, l.Apogee.Fitted, 0.5, i)
		}
		return got
	}
	for i := range logs {
		got := fit(logs[i])
		assert.InDelta(t, apogees[i], got.Logs[0].Apogee.Fitted, 0.5)
	}
	together := fit(logs...)
	alone := fit(logs[0])
	for j, in := range together.Inputs {
		assert.Less(t, in.SD, 1.001*alone.Inputs[j].SD, in.Input.Name)
	}
	// The second flight, predicted before and after the first was fitted.
	before := flyWith(t, logs[1].Rocket, nil).Apogee.Height
	values := map[string]float64{}
	for _, in := range alone.Inputs {
		values[in.Input.Name] = in.Value
	}
	after := flyWith(t, logs[1].Rocket, values)
	assert.Less(t, math.Abs(after.Apogee.Height-apogees[1]), 0.5*math.Abs(before-apogees[1]))
}

// What a log says nothing of keeps its value; alone it is nothing learned.
func TestKeptWhereNothingIsTold(t *testing.T) {
	long.Unraced(t)
	logs, spreads, _, _ := recorded(t)
	ctx := context.Background()
	r := logs[0].Rocket
	pick := func(names ...string) []study.Spread {
		s, err := Vary(r, spreads, names)
		require.NoError(t, err)
		return s
	}
	got, err := Fit(ctx, logs[:1], pick("body.drag_factor", "wind.from"))
	require.NoError(t, err)
	assert.False(t, got.Inputs[0].Kept)
	assert.True(t, got.Inputs[1].Kept)
	assert.Equal(t, got.Inputs[1].Before, got.Inputs[1].Value)
	assert.Less(t, got.Inputs[1].Learned, 0.1)
	got, err = Fit(ctx, logs[:1], pick("wind.from"))
	assert.ErrorIs(t, err, ErrNothingLearned)
	assert.Len(t, got.Inputs, 1)
}

func TestWhatCannotBeFitted(t *testing.T) {
	logs, spreads, _, _ := recorded(t)
	r := logs[0].Rocket
	for name, want := range map[string]string{
		"body.diameter": `add a line to [spread], as in body.diameter = "4 mm"`,
		"body.drga":     "no such input",
		"name":          "nothing that a fit can turn",
	} {
		_, err := Vary(r, spreads, []string{name})
		assert.ErrorContains(t, err, want, name)
	}
	_, err := Vary(r, spreads, []string{"body.drag_factor", "body.drag_factor"})
	assert.ErrorContains(t, err, "named twice")
	chosen, err := Vary(r, spreads, []string{"body.drag_factor"})
	require.NoError(t, err)
	_, err = Fit(context.Background(), []Logged{logs[0], logs[0]}, chosen)
	assert.ErrorContains(t, err, "is the same log as")
	_, err = Fit(context.Background(), nil, chosen)
	assert.Error(t, err)
	_, err = Fit(context.Background(), logs, nil)
	assert.Error(t, err)
	ended, cancel := context.WithCancel(context.Background())
	cancel()
	_, err = Fit(ended, logs, chosen)
	assert.ErrorIs(t, err, context.Canceled)
}

// The stand's logs that SciPy's integration of other equations made (testdata/reference/stand.py)
// give discharge 0.955 and exponent 1.22 back.
func TestStandFromOtherEquations(t *testing.T) {
	long.Unraced(t)
	f := open(t, "wagtail")
	r := f.Rocket()
	log, err := logfile.Open("../../testdata/logs/stand.csv", logfile.Options{})
	require.NoError(t, err)
	s, err := ReadStand(context.Background(), log, r, "", Options{})
	require.NoError(t, err)
	spreads, err := Vary(r, study.Spreads(f), StandInputs())
	require.NoError(t, err)
	got, err := Fit(context.Background(), []Logged{*s.Logged}, spreads)
	require.NoError(t, err)
	assert.InDelta(t, 0.955, got.Inputs[0].Value, 3*got.Inputs[0].SD)
	assert.InDelta(t, 1.22, got.Inputs[1].Value, 3*got.Inputs[1].SD)
	assert.Less(t, got.Inputs[1].SD, 0.001)
}
