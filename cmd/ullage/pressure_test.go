package main

import (
	"bytes"
	"context"
	"io"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// A form for programs says of a pressure that no proof is for on standard error, and leaves the
// numbers on standard output as they are: every command that has one.
func TestFormsForProgramsTellThePressure(t *testing.T) {
	const rocket, log = "../../testdata/wagtail.toml", "../../testdata/logs/"
	args := map[string][]string{
		"fly": {rocket}, "sweep": {rocket, "water.fill=0.3,0.31"}, "scatter": {rocket, "--flights", "5"}, "opening": {rocket},
		"compare": {rocket, log + "one.csv", "--flights", "20"}, "stand": {rocket, log + "stand.csv"},
		"motors": nil, // of motors, which have none
	}
	parser, err := newParser(&streams{out: io.Discard, err: io.Discard}, new(commands), func(int) {})
	require.NoError(t, err)
	forms := 0
	for _, c := range parser.Model.Children {
		for _, f := range c.Flags {
			if f.Name != "csv" && f.Name != "geojson" {
				continue
			}
			given, known := args[c.Name]
			require.True(t, known, "%s --%s: how it is run is not known here", c.Name, f.Name)
			if given == nil {
				continue
			}
			forms++
			given = append([]string{c.Name, "--" + f.Name}, given...)
			if f.Name == "geojson" {
				given = append(given, "--latitude=5", "--longitude=5")
			}
			var out, said bytes.Buffer
			require.Zero(t, run(context.Background(), given, strings.NewReader(""), &out, &said), said.String())
			assert.Contains(t, said.String(), "9 bar, and no proof of the chamber is on record; burst unknown: no-go.", "%v", given)
			assert.NotContains(t, out.String(), "no-go", "%v", given)
		}
	}
	assert.GreaterOrEqual(t, forms, 7)
}
