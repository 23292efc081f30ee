package airframe

import (
	"fmt"
	"math"
	"testing"

	"ullage/sim/long"

	"github.com/stretchr/testify/assert"
)

// Centre of pressure x/L of the tangent ogive, exact, by fineness: computed.
func TestTangentOgiveCentre(t *testing.T) {
	for fineness, want := range map[float64]float64{2: 0.45724, 3: 0.46245, 4: 0.46429, 5: 0.46515} {
		n := Nose{Shape: TangentOgive, Diameter: 0.05, Length: 0.05 * fineness}
		assert.InDelta(t, want, n.pressureCentre()/n.Length, 5e-6, "fineness %v", fineness)
	}
}

// Volumes and centres in closed form: textbook solids; x = L − V/A_base gives the
// well-known 2/3 of a cone, 1/2 of a paraboloid and of von Kármán's ogive, 1/3 of an
// ellipsoid.
func TestVolumes(t *testing.T) {
	const l, r = 0.3, 0.04
	tube := math.Pi * r * r * l
	for _, c := range []struct {
		nose   Nose
		volume float64 // of the tube around it
	}{
		{Nose{Shape: Conical}, 1. / 3},
		{Nose{Shape: Elliptical}, 2. / 3},
		{Nose{Shape: Parabolic}, 8. / 15},
		{Nose{Shape: VonKarman}, 1. / 2},
		{Nose{Shape: PowerSeries, Exponent: 1}, 1. / 3},
		{Nose{Shape: PowerSeries, Exponent: 0.75}, 2. / 5},
		{Nose{Shape: PowerSeries, Exponent: 0.5}, 1. / 2},
	} {
		n := c.nose
		n.Length, n.Diameter = l, 2*r
		assert.InEpsilon(t, c.volume*tube, n.Volume(), 1e-12, n.Shape)
		assert.InEpsilon(t, l*(1-c.volume), n.pressureCentre(), 1e-12, n.Shape)
	}
	// An ogive as long as its base radius is half a ball.
	ball := Nose{Shape: TangentOgive, Length: r, Diameter: 2 * r}
	assert.InEpsilon(t, 2*math.Pi/3*r*r*r, ball.Volume(), 1e-12)
	assert.InEpsilon(t, 2*math.Pi*r*r, ball.Wetted(), 1e-12)
	plan, at := ball.Plan()
	assert.InEpsilon(t, math.Pi/2*r*r, plan, 1e-12)
	assert.InEpsilon(t, r*(1-4/(3*math.Pi)), at, 1e-12)
}

// Surfaces in closed form (textbook).
func TestWetted(t *testing.T) {
	const l, r = 0.3, 0.04
	// Paraboloid: π R/(6 L²)·[(R² + 4L²)^{3/2} − R³].
	paraboloid := math.Pi * r / (6 * l * l) * (math.Pow(r*r+4*l*l, 1.5) - r*r*r)
	assert.InEpsilon(t, paraboloid, Nose{Shape: PowerSeries, Exponent: 0.5, Length: l, Diameter: 2 * r}.Wetted(), 1e-10)
	cone := math.Pi * r * math.Hypot(l, r)
	assert.InEpsilon(t, cone, Nose{Shape: Conical, Length: l, Diameter: 2 * r}.Wetted(), 1e-12)
	assert.InEpsilon(t, cone, Nose{Shape: PowerSeries, Exponent: 1, Length: l, Diameter: 2 * r}.Wetted(), 1e-12)
	// Half a ball as an ellipsoid, from either side of it.
	for _, long := range []float64{r, r * (1 + 1e-7), r * (1 - 1e-7)} {
		assert.InEpsilon(t, 2*math.Pi*r*r, Nose{Shape: Elliptical, Length: long, Diameter: 2 * r}.Wetted(), 1e-6)
	}
	// Tangent parabola, k = 2R/L: 2πRL·{∫√(1 + k²v²) − ∫v²√(1 + k²v²)} over 0 to 1.
	k := 2 * r / l
	root := math.Sqrt(1 + k*k)
	whole := (root + math.Asinh(k)/k) / 2
	part := (k*(1+2*k*k)*root - math.Asinh(k)) / (8 * k * k * k)
	assert.InEpsilon(t, 2*math.Pi*r*l*(whole-part), Nose{Shape: Parabolic, Length: l, Diameter: 2 * r}.Wetted(), 1e-10)
}

// noses are one of each family, slender and blunt.
func noses() map[string]Nose {
	all := map[string]Nose{
		"flat ellipsoid":    {Shape: Elliptical, Length: 0.02, Diameter: 0.06},
		"flatter ellipsoid": {Shape: Elliptical, Length: 0.006, Diameter: 0.06},
	}
	for _, ratio := range []float64{0.5, 0.7, 1, 3, 8} {
		for _, shape := range []NoseShape{Conical, TangentOgive, Elliptical, Parabolic, VonKarman} {
			all[fmt.Sprint(shape, " ", ratio)] = Nose{Shape: shape, Length: 0.06 * ratio, Diameter: 0.06}
		}
		for _, n := range []float64{0.2, 1. / 3, 0.5, 0.6, 0.75, 0.9, 1} {
			all[fmt.Sprint(PowerSeries, " ", n, " ", ratio)] = Nose{Shape: PowerSeries, Exponent: n, Length: 0.06 * ratio, Diameter: 0.06}
		}
	}
	return all
}

// Every family's volume, surface and side view are those of the contour that Radius
// gives, summed over thin frusta: nothing but the radius is common to the two.
func TestContoursAgainstThinFrusta(t *testing.T) {
	slices := long.Of(8000, 40000)
	for name, n := range noses() {
		assert.InDelta(t, 0, n.Radius(n.Length*1e-12)/n.Diameter, 0.005, name)
		assert.InEpsilon(t, n.Diameter/2, n.Radius(n.Length*(1-1e-12)), 1e-9, name)
		var volume, wetted, plan, moment float64
		for i := range slices {
			// Slices crowd toward the tip, where contours may stand upright.
			at := func(i int) float64 { return n.Length * math.Pow(float64(i)/float64(slices), 6) }
			f := frustum{start: at(i), length: at(i+1) - at(i), fore: 2 * n.Radius(at(i)), aft: 2 * n.Radius(at(i+1))}
			area, centroid := f.plan()
			plan += area
			moment += area * centroid
			wetted += f.wetted()
			volume += math.Pi / 12 * f.length * (f.fore*f.fore + f.fore*f.aft + f.aft*f.aft)
		}
		area, centroid := n.Plan()
		assert.InEpsilon(t, volume, n.Volume(), 1e-6, name)
		assert.InEpsilon(t, wetted, n.Wetted(), 1e-6, name)
		assert.InEpsilon(t, plan, area, 1e-6, name)
		assert.InEpsilon(t, moment/plan, centroid, 1e-6, name)
	}
}

// An ogive's and von Kármán's contour at the middle, by hand; a nose of no size is nothing.
func TestRadius(t *testing.T) {
	n := Nose{Shape: TangentOgive, Length: 0.12, Diameter: 0.04}
	rho := (0.02*0.02 + 0.12*0.12) / 0.04
	assert.InDelta(t, math.Sqrt(rho*rho-0.06*0.06)+0.02-rho, n.Radius(0.06), 1e-14)
	n.Shape = VonKarman // θ = π/2: r = R/√2
	assert.InDelta(t, 0.02/math.Sqrt2, n.Radius(0.06), 1e-14)
	// At the tip θ − sin 2θ/2 is 2θ³/3 − 2θ⁵/15.
	for _, theta := range []float64{1e-6, 5e-4, 0.99e-3, 1.01e-3} {
		x := 0.12 * math.Pow(math.Sin(theta/2), 2)
		assert.InEpsilon(t, 0.02*math.Sqrt((2./3-2./15*theta*theta)*theta*theta*theta/math.Pi), n.Radius(x), 3e-7)
	}
	assert.Zero(t, n.Radius(-1))
	assert.Zero(t, n.Radius(math.NaN()))
	assert.Equal(t, 0.02, n.Radius(9))
	for _, shape := range []NoseShape{TangentOgive, Elliptical, Parabolic, VonKarman, PowerSeries} {
		none := Nose{Shape: shape, Length: 0.1}
		assert.Zero(t, none.Volume())
		assert.Zero(t, none.Wetted())
	}
}
