package main

import (
	"bytes"
	"context"
	"fmt"
	"image/png"
	"os"
	"path/filepath"
	"reflect"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"ullage/cmd/ullage/chart"
	"ullage/cmd/ullage/chart/page"
	"ullage/sim/long"
)

// TestPlotOptionsNameWhatThereIs holds the literals of the options to the tables
// behind them.
func TestPlotOptionsNameWhatThereIs(t *testing.T) {
	tag := func(field string) reflect.StructTag {
		f, ok := reflect.TypeFor[plotCommand]().FieldByName(field)
		require.True(t, ok, field)
		return f.Tag
	}
	assert.Contains(t, tag("Resolution").Get("help"),
		fmt.Sprintf("%d to %d; %d if not given", page.LeastResolution, page.GreatestResolution, page.DefaultResolution))
	assert.Equal(t, strings.Join([]string{string(chart.NoSpan), string(chart.ThrustSpan), string(chart.AscentSpan), string(chart.WholeSpan)}, ","),
		tag("Span").Get("enum"))
	assert.Equal(t, ","+page.A4.Name+","+page.Letter.Name, tag("Paper").Get("enum"))
}

func TestPlotPNGHasThePaperAtItsResolution(t *testing.T) {
	long.Unraced(t)
	out := filepath.Join(t.TempDir(), "flight.png")
	got := runWith(context.Background(), strings.NewReader(""), "plot", "../../testdata/heron.toml", "-o", out, "--paper", "letter")
	require.Equal(t, result{statusDone, "", ""}, got)
	b, err := os.ReadFile(out)
	require.NoError(t, err)
	img, err := png.Decode(bytes.NewReader(b))
	require.NoError(t, err)
	assert.Equal(t, 3300, img.Bounds().Dx())
	assert.Equal(t, 2550, img.Bounds().Dy())
}

// TestInterruptedPlotIsKept: what was flown is drawn, and the page says that it is not
// all. It is not known how far it gets, but with this many it does not get to the end.
func TestInterruptedPlotIsKept(t *testing.T) {
	dir := t.TempDir()
	for _, study := range [][]string{
		{"--scatter", "--flights", "90000000"},
		{"--sweep", "water.fill=0.1..0.6/199", "--sweep", "water.pressure=4..14bar/199"},
	} {
		out := filepath.Join(dir, study[0]+".svg")
		got := later(t, append([]string{"plot", "../../testdata/heron.toml", "-o", out}, study...)...)
		assert.Equal(t, statusInterrupted, got.status, got.err)
		assert.Empty(t, got.out)
		assert.Contains(t, got.err, "ullage: interrupted; "+out+" is partial: it holds what there was by then")
		svg, err := os.ReadFile(out)
		require.NoError(t, err)
		assert.Contains(t, string(svg), "(partial: ")
		assert.True(t, bytes.HasSuffix(svg, []byte("</svg>\n")))
	}
}

func TestPlotInterruptedAtOnceLeavesNothing(t *testing.T) {
	ctx, cancel := context.WithCancel(context.Background())
	cancel()
	out := filepath.Join(t.TempDir(), "out.svg")
	for _, more := range [][]string{nil, {"--scatter"}, {"--sweep", "water.fill=0.2..0.4/21"}} {
		got := runWith(ctx, strings.NewReader(""), append([]string{"plot", "../../testdata/heron.toml", "-o", out}, more...)...)
		assert.Equal(t, result{statusInterrupted, "", "ullage: interrupted\n"}, got, more)
		assert.NoFileExists(t, out)
	}
}

// TestTheScreenDoesWithoutPlots: nothing of the screen's needs the drawing of pages, and
// the program has none of the packages that would slow its start.
func TestTheScreenDoesWithoutPlots(t *testing.T) {
	long.Unraced(t)
	checked := 0
	for _, p := range ours(t) {
		for _, d := range p.Deps {
			assert.NotEqual(t, "gonum.org/v1/plot", d, "%s: the layer above vg costs 6 MB and half a millisecond at every start", p.ImportPath)
			assert.NotEqual(t, "gonum.org/v1/gonum/blas", d, "%s: linear algebra, which gonum's stat and optimize bring, costs 2 MB", p.ImportPath)
			if row(p.ImportPath) >= row("ullage/tui") {
				checked++
				assert.False(t, strings.HasPrefix(d, "gonum.org/v1/plot") || strings.HasPrefix(d, "ullage/cmd"), "%s depends on %s", p.ImportPath, d)
			}
		}
	}
	assert.Positive(t, checked)
}
