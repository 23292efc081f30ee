package flown

import (
	"context"
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// A log without noise to speak of gives the values it was flown with back.
func TestFitRecoversWhatFlew(t *testing.T) {
	for _, x := range []struct {
		file  string
		flown map[string]float64
		log   madeUp
	}{
		{"bottle", map[string]float64{"body.drag_factor": 1.12}, usual()},
		{"heron", map[string]float64{"body.drag_factor": 0.9, "canopy.main.coefficient": 0.81}, usual()},
	} {
		t.Run(x.file, func(t *testing.T) {
			f := open(t, x.file)
			r := f.Rocket()
			m := x.log
			m.noise = 0.01
			at, h := m.heights(flyWith(t, r, x.flown))
			l := logged(t, "log.csv", csv("time_s,height_m", at, h), r, Options{Heights: MeasuredHeights})
			var names []string
			for name := range x.flown {
				names = append(names, name)
			}
			got, err := Fit(context.Background(), []Logged{l}, spreadsOf(t, f, names...))
			require.NoError(t, err)
			for _, in := range got.Inputs {
				assert.InEpsilon(t, x.flown[in.Input.Name], in.Value, 2e-3, in.Input.Name)
				assert.Less(t, math.Abs(in.Value-x.flown[in.Input.Name]), 4*in.SD, in.Input.Name)
				assert.Greater(t, in.Learned, 0.99)
				t.Logf("%s %v ± %v learned %v", in.Input.Name, in.Value, in.SD, in.Learned)
			}
			assert.InDelta(t, m.release, got.Logs[0].Release, 0.005)
			t.Logf("%+v %+v flights %d samples %d", got.Logs[0].Apogee, got.Logs[0].RMS, got.Flights, got.Logs[0].Samples)
			for _, c := range got.Logs[0].Channels {
				t.Logf("noise %v kappa %v rho %v zero %v", c.Noise, c.Kappa, c.Rho, c.Zero)
			}
		})
	}
}
