package sim

import (
	"context"
	"fmt"
	"testing"
)

func BenchmarkWaterFlight(b *testing.B) {
	for _, throat := range []float64{0.005, 0.009, 0.013, 0.022} {
		for _, windy := range []bool{false, true} {
			b.Run(fmt.Sprintf("throat=%gmm/wind=%v", throat*1e3, windy), func(b *testing.B) {
				r := bottle()
				if windy {
					withWind(r)
				}
				r.Water.Throat = throat
				b.ReportAllocs()
				for b.Loop() {
					if _, err := Fly(context.Background(), r, Options{}); err != nil {
						b.Fatal(err)
					}
				}
			})
		}
	}
}
