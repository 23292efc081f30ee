package main

import (
	"context"
	"io"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"ullage/sim"
	"ullage/sim/rocket"
	"ullage/sim/rocketfile"
	"ullage/sim/study"
)

// BenchmarkSweepsOwnWork sets a sweep as the command runs it, on one core, against the bare
// flights of the same rockets: own-% is what it does beside them (rows, copies, the rest), as a
// share of its time.
func BenchmarkSweepsOwnWork(b *testing.B) {
	const axis = "water.fill=0.2..0.4/2000"
	for _, model := range []rocket.Model{rocket.PointModel, rocket.RigidModel} {
		b.Run(string(model), func(b *testing.B) {
			f, err := rocketfile.Open("../../testdata/heron.toml")
			require.NoError(b, err)
			base := f.Rocket()
			base.Model = model
			axes, err := study.ParseAxes(base, []string{axis})
			require.NoError(b, err)
			rockets := make([]*rocket.Rocket, len(axes[0].Values))
			for i, v := range axes[0].Values {
				rockets[i] = base.Clone()
				require.NoError(b, axes[0].Input.Set(rockets[i], v.Number))
			}
			var flyer sim.Flyer
			bare := func() {
				for _, r := range rockets {
					if _, err := flyer.Fly(context.Background(), r, sim.Options{}); err != nil {
						b.Fatal(err)
					}
				}
			}
			args := []string{"sweep", "../../testdata/heron.toml", axis, "--csv", "--set", "flight.model=" + string(model)}
			whole := func() {
				if status := run(context.Background(), args, strings.NewReader(""), io.Discard, io.Discard); status != statusDone {
					b.Fatal(status)
				}
			}
			swept, flown := 0.0, 0.0
			for b.Loop() {
				swept += cpuSeconds(whole)
				flown += cpuSeconds(bare)
			}
			b.ReportMetric(100*(1-flown/swept), "own-%")
			b.ReportMetric(flown/float64(b.N*len(rockets))*1e6, "µs/flight")
		})
	}
}
