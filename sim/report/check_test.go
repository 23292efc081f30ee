package report

import (
	"bytes"
	"context"
	"encoding/json"
	"strings"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"ullage/sim/gates"
	"ullage/sim/plan"
	"ullage/sim/quantity"
	"ullage/sim/report/page"
	"ullage/sim/report/words"
	"ullage/sim/rocketfile"
	"ullage/sim/study"
)

// verdictOf judges a rocket of testdata, with some inputs set.
func verdictOf(t *testing.T, name string, changes ...rocketfile.Change) gates.Verdict {
	t.Helper()
	f, err := rocketfile.Open("../../testdata/" + name + ".toml")
	require.NoError(t, err)
	if len(changes) > 0 {
		f, err = f.SetAll(changes...)
		require.NoError(t, err)
	}
	v, err := gates.Judge(context.Background(), f.Rocket(), gates.Options{
		Today: time.Date(2026, 10, 1, 0, 0, 0, 0, time.UTC), Spreads: study.Spreads(f), Remedies: true})
	require.NoError(t, err)
	return v
}

// noGo fails the rail exit and the ceiling, and lacks a radius.
func noGo(t *testing.T) gates.Verdict {
	return verdictOf(t, "heron", rocketfile.Change{Input: "rail.length", Value: "0.5 m"}, rocketfile.Change{Input: "field.ceiling", Value: "90 m"})
}

func TestVerdictText(t *testing.T) {
	for _, sys := range []quantity.System{quantity.Metric, quantity.US} {
		v := noGo(t)
		var b bytes.Buffer
		require.NoError(t, WriteVerdictText(&b, &v, &plan.WindLimit{Passes: true, Most: 4.2, Above: []string{"wind"}}, sys))
		goldenPage(t, "check-"+map[quantity.System]string{quantity.Metric: "metric", quantity.US: "us"}[sys], b.String())
		for _, line := range strings.Split(b.String(), "\n") {
			assert.LessOrEqual(t, len([]rune(line)), page.Width, line)
		}
	}
}

func TestVerdictFinding(t *testing.T) {
	good := verdictOf(t, "heron")
	f := VerdictFinding(&good, quantity.Metric)
	assert.Equal(t, "33 checks within the limits given", f.Value)
	assert.Equal(t, gates.WordGo, f.Word)
	assert.Equal(t, gates.Good, f.Level)
	bad := noGo(t)
	f = VerdictFinding(&bad, quantity.Metric)
	assert.Equal(t, gates.WordNoGo, f.Word)
	assert.Equal(t, gates.Bad, f.Level)
	assert.Contains(t, f.Detail, "rail exit speed 10.5 m/s low")
	assert.Contains(t, f.Detail, "in the worst corner")
	assert.Contains(t, f.Detail, "local law and the range officer decide")
	bare := verdictOf(t, "bottle")
	assert.Equal(t, "no-go: 1 of 18 checks outside the limits given, 4 not judged", words.Verdict(&bare))
}

// The keys that others read, in SI units and degrees, null where there is nothing.
func TestVerdictJSON(t *testing.T) {
	v := noGo(t)
	var b bytes.Buffer
	require.NoError(t, WriteVerdictJSON(&b, &v, &plan.WindLimit{Fails: []string{"wind"}}))
	var doc struct {
		Pass   *bool
		Checks []map[string]any
	}
	require.NoError(t, json.Unmarshal(b.Bytes(), &doc))
	require.NotNil(t, doc.Pass)
	assert.False(t, *doc.Pass)
	require.Len(t, doc.Checks, len(v.Checks))
	for i, c := range doc.Checks {
		for _, key := range []string{"name", "value", "min", "max", "unit", "word", "pass", "source", "mend"} {
			assert.Contains(t, c, key)
		}
		assert.Contains(t, gates.Words(), c["word"])
		assert.Equal(t, v.Checks[i].Pass, c["pass"])
		assert.Equal(t, v.Checks[i].Pass, c["mend"] == nil, c["name"])
		switch c["key"] {
		case "tilt":
			assert.InDelta(t, 3, c["value"], 1e-9, "degrees")
			assert.InDelta(t, 20, c["max"], 1e-9)
			assert.Nil(t, c["min"])
			assert.Equal(t, "deg", c["unit"])
			assert.InDelta(t, 2, c["day"], 1e-9)
			assert.InDelta(t, 3, c["corner"], 1e-9)
		case "margin.burnout":
			assert.InDelta(t, 1, c["min"], 1e-12)
			assert.InDelta(t, 3, c["max"], 1e-12)
		case "liquid-left":
			assert.Equal(t, "kg", c["unit"])
		case "proof":
			assert.Nil(t, c["corner"])
		}
	}
	assert.NotContains(t, b.String(), "NaN")
}
