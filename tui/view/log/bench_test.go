package log

import (
	"fmt"
	"math"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"ullage/sim"
	"ullage/sim/flown"
	"ullage/sim/rocketfile"
	"ullage/tui/view"
	"ullage/tui/view/viewtest"
)

// longLog is a made-up log of Wagtail of so many samples a second.
func longLog(b *testing.B, hertz float64) string {
	fl, err := sim.Fly(b.Context(), viewtest.Wagtail(b).Rocket(), sim.Options{Keep: true})
	require.NoError(b, err)
	var text strings.Builder
	text.WriteString("time_s,height_m\n")
	const release = 5
	for i := 0; float64(i)/hertz < release+fl.Duration()+3; i++ {
		t := float64(i) / hertz
		h := 0.3 * math.Sin(float64(i)*12.9898)
		if t > release {
			h += math.Max(fl.At(t-release).Height, 0)
		}
		fmt.Fprintf(&text, "%.4f,%.2f\n", t, h)
	}
	path := filepath.Join(b.TempDir(), "long.csv")
	require.NoError(b, os.WriteFile(path, []byte(text.String()), 0o600))
	return path
}

// From an edit, its flight being there, to the log drawn anew at 200×60: prediction, release,
// differences, rows. The spread comes later, and is called off by the next key.
func BenchmarkEditToLog(b *testing.B) {
	for _, hertz := range []float64{20, 150, 1000} {
		b.Run(fmt.Sprintf("%.0fHz", hertz), func(b *testing.B) {
			f := viewtest.New(b, New(view.DefaultKeys(), Options{Logs: []flown.Asked{{Path: longLog(b, hertz), Release: math.NaN()}}}), viewtest.Wagtail(b), viewtest.Large)
			other, err := f.File().Set("body.drag_factor", "1.1")
			require.NoError(b, err)
			files := []*rocketfile.File{f.File(), other}
			b.ReportMetric(float64(len(f.V.held().courses[0].t)), "samples")
			for i := 0; b.Loop(); i++ {
				f.Scene.File = files[(i+1)%2]
				f.V.Receive(f.V.Show(f.Scene)())
				require.NotNil(b, f.V.held().compared)
			}
		})
	}
}

// The window moves over a comparison that is there.
func BenchmarkWindow(b *testing.B) {
	for _, hertz := range []float64{20, 1000} {
		b.Run(fmt.Sprintf("%.0fHz", hertz), func(b *testing.B) {
			f := viewtest.New(b, New(view.DefaultKeys(), Options{Logs: []flown.Asked{{Path: longLog(b, hertz), Release: math.NaN()}}}), viewtest.Wagtail(b), viewtest.Large)
			for i := 0; b.Loop(); i++ {
				f.Press([]string{"[", "]"}[i%2])
			}
		})
	}
}
