package bench_test

import (
	"bytes"
	"context"
	"encoding/json"
	"regexp"
	"strconv"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"ullage/sim/golden"
	"ullage/sim/quantity"
	"ullage/sim/report/bench"
	"ullage/sim/rocketfile"
	"ullage/sim/study"
)

func benched(t *testing.T, name string) *study.Benched {
	t.Helper()
	f, err := rocketfile.Open("../../../testdata/" + name + ".toml")
	require.NoError(t, err)
	b, err := study.BenchOf(context.Background(), f.Rocket(), study.Options{})
	require.NoError(t, err)
	return &b
}

func told(b *study.Benched, sys quantity.System) string {
	doc := bench.Document(b, sys)
	return doc.Text()
}

func TestSheet(t *testing.T) {
	golden.Equal(t, "heron.txt", told(benched(t, "heron"), quantity.Metric))
	golden.Equal(t, "bottle-us.txt", told(benched(t, "bottle"), quantity.US))
}

// What is out of bounds, missing or beyond a table says so, and never passes.
func TestWordsOfTheSeal(t *testing.T) {
	b := benched(t, "heron")
	r := b.Rocket.Clone()
	b.Rocket = r
	text := func() string { return strings.Join(strings.Fields(told(b, quantity.Metric)), " ") }
	r.Bench.Seal.Plug = 33.7e-3
	assert.Contains(t, text(), "at most 0.09 mm at the proof of 16.0 bar: out of bounds")
	r.Bench.Seal.Hardness = 60
	assert.Contains(t, text(), "not judged, the tables begin at 70 Shore A")
	r.Bench.Seal.Hardness, r.Chamber.Proof = 0, 200e5
	assert.Contains(t, text(), "too much, the tables end before")
	r.Bench.Seal.Width = 0
	assert.Contains(t, text(), "give seal.width")
	r.Bench.Filling.Bottle, r.Bench.Filling.BottlePressure = 5e-3, 9e5
	assert.Contains(t, text(), "9.00 bar in it do not reach 10.0 bar")
}

func TestJSON(t *testing.T) {
	for _, name := range []string{"heron", "bottle", "drogue-main"} {
		var s bytes.Buffer
		require.NoError(t, bench.WriteJSON(&s, benched(t, name)))
		var doc map[string]any
		require.NoError(t, json.Unmarshal(s.Bytes(), &doc))
		for _, key := range []string{"name", "seal", "bay", "vent", "alignment", "electronics", "filling"} {
			assert.Contains(t, doc, key, name)
		}
	}
}

// A drill is never narrower than the hole that it is for, in either system of units.
func TestDrillsAreWideEnough(t *testing.T) {
	b := benched(t, "heron")
	for _, sys := range []quantity.System{quantity.Metric, quantity.US} {
		rows := regexp.MustCompile(`(?m)^ +\d+ +([0-9.]+) (?:mm|in) +([0-9.]+) (?:mm|in)$`).FindAllStringSubmatch(told(b, sys), -1)
		require.Len(t, rows, 5)
		for _, row := range rows {
			drill, err := strconv.ParseFloat(row[1], 64)
			require.NoError(t, err)
			least, err := strconv.ParseFloat(row[2], 64)
			require.NoError(t, err)
			assert.GreaterOrEqual(t, drill, least)
		}
	}
}
