package flown

import (
	"context"
	"testing"

	"github.com/stretchr/testify/require"

	"ullage/sim/rocket"
)

// Four inputs to one log of 5 000 samples.
func BenchmarkFit(b *testing.B) {
	for _, x := range []struct {
		name, file string
		model      rocket.Model
	}{{"point", "heron", rocket.PointModel}, {"rigid", "heron", rocket.RigidModel}} {
		b.Run(x.name, func(b *testing.B) {
			f := open(b, x.file)
			r := f.Rocket()
			r.Model = x.model
			fl := flyWith(b, r, map[string]float64{"body.drag_factor": 0.93, "canopy.main.coefficient": 0.8})
			m := usual()
			m.hertz = 5000 / (fl.Duration() + m.before + m.after)
			at, h := m.heights(fl)
			l := logged(b, "log.csv", csv("time_s,height_m", at, h), r, Options{Heights: MeasuredHeights})
			spreads := spreadsOf(b, f, "body.drag_factor", "water.discharge", "canopy.main.coefficient", "canopy.main.deploy.water")
			n := 0
			for b.Loop() {
				got, err := Fit(context.Background(), []Logged{l}, spreads)
				require.NoError(b, err)
				n = got.Flights
			}
			b.ReportMetric(float64(n), "flights")
			b.ReportMetric(float64(len(l.Channels[0].T)), "samples")
		})
	}
}
