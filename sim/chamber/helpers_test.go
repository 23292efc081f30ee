package chamber

import (
	"math"
	"testing"

	"github.com/stretchr/testify/require"
)

const deg = math.Pi / 180

// glassTube is a 100 mm tube of four layers of 200 g/m² woven glass with bonded ends and
// a retainer; all of it is invented.
func glassTube() *Chamber {
	return &Chamber{
		Diameter: 0.1, Length: 0.6, Material: GlassEpoxy, Waste: 0.15, FibreFraction: 0.35,
		Plies:   []Ply{{Name: "cloth", Cloth: 0.2, Count: 4, Weave: Woven}},
		Forward: &Closure{Shape: Hemisphere, Wall: 0.0015, Overlap: 0.04},
		Aft:     &Closure{Shape: Ellipsoid, Wall: 0.003, Overlap: 0.04},
		Thread:  &Thread{Diameter: 0.04, Pitch: 0.0015, Engaged: 0.012, Hole: 0.022},
		Heating: &Heating{Temperature: 333.15, Time: 30, Rise: 2000},
	}
}

// pipe is a bare aluminium tube.
func pipe(inside, wall float64) *Chamber {
	return &Chamber{Diameter: inside, Length: 0.5, Material: Aluminium, Wall: wall}
}

func service() Service {
	return Service{Working: 10e5, Ambient: 101325, Fill: 0.33, Gamma: 1.4, AirTemperature: 293.15}
}

func part(t *testing.T, r Result, name string) Part {
	t.Helper()
	for _, p := range r.Parts {
		if p.Name == name {
			return p
		}
	}
	require.Fail(t, "no part", name)
	return Part{}
}

func names(parts []Part) []string {
	var all []string
	for _, p := range parts {
		all = append(all, p.Name)
	}
	return all
}
