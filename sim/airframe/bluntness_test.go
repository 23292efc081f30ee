package airframe

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"pgregory.net/rapid"
)

// A handbook's table: cones with their own base 0.51 at a half-angle of 30° and 0.34 at 15°,
// of which the base takes 0.2 to 0.25; Hoerner's flat face 0.8 (both from memory).
func TestConesOfTheHandbook(t *testing.T) {
	for angle, all := range map[float64]float64{15: 0.34, 30: 0.51} {
		n := Nose{Shape: Conical, Length: 0.03 / math.Tan(angle*math.Pi/180), Diameter: 0.06}
		assert.InDelta(t, angle*math.Pi/180, n.JunctionAngle(), 1e-12)
		assert.InDelta(t, all-0.225, n.pressureDrag(), 0.0251, angle)
		assert.InDelta(t, all-0.225, n.pressureDrag(), 1e-9, angle)
	}
	flat := Nose{Shape: Conical, Length: 1e-9, Diameter: 0.06}
	assert.InDelta(t, 0.8, flat.pressureDrag(), 1e-6)
	last := -1.
	for angle := 0.5; angle <= 90; angle += 0.5 {
		v := coneDrag(angle * math.Pi / 180)
		assert.Greater(t, v, last)
		last = v
	}
	assert.Less(t, coneDrag(5*math.Pi/180), 0.02, "slender")
}

// Slender and well rounded noses have next to none; nearly flat ones that of a flat face.
func TestRoundedNoses(t *testing.T) {
	const d = 0.06
	for _, x := range []struct {
		name     string
		nose     Nose
		min, max float64
	}{
		{"hemisphere", Nose{Shape: Elliptical, Length: d / 2, Diameter: d}, 0, 0},
		{"ogive", Nose{Shape: TangentOgive, Length: 3 * d, Diameter: d}, 0, 0},
		{"von Karman", Nose{Shape: VonKarman, Length: 3 * d, Diameter: d}, 0, 0},
		{"paraboloid", Nose{Shape: PowerSeries, Exponent: 0.5, Length: 3 * d, Diameter: d}, 0, 0.02},
		{"nearly flat", Nose{Shape: Elliptical, Length: d / 100, Diameter: d}, 0.7, 0.8},
		{"a little rounded", Nose{Shape: Elliptical, Length: d / 10, Diameter: d}, 0.1, 0.7},
		{"cone as a power", Nose{Shape: PowerSeries, Exponent: 1, Length: d / 2 / math.Tan(math.Pi/6), Diameter: d}, 0.2849, 0.2851},
	} {
		v := x.nose.pressureDrag()
		assert.True(t, v >= x.min && v <= x.max, "%s: %g", x.name, v)
	}
	// A corner rounded by less than a fifth of the diameter: half of that is half the way.
	last := math.Inf(1)
	for l := 0.002; l < 0.03; l += 0.001 {
		v := Nose{Shape: Elliptical, Length: l, Diameter: d}.pressureDrag()
		assert.LessOrEqual(t, v, last, l)
		last = v
	}
}

// What is shorter never has less drag, by whatever shape a nose may well have.
func TestShorterNosesHaveNoLessDrag(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		n := Nose{Shape: rapid.SampledFrom([]NoseShape{Conical, TangentOgive, Elliptical, Parabolic, VonKarman, PowerSeries}).Draw(t, "shape"),
			Diameter: 0.06, Exponent: rapid.Float64Range(0.4, 1).Draw(t, "exponent")}
		n.Length = rapid.Float64Range(0.031, 0.3).Draw(t, "length")
		long := n
		long.Length *= rapid.Float64Range(1, 3).Draw(t, "longer")
		a, b := n.pressureDrag(), long.pressureDrag()
		assert.True(t, a >= 0 && a <= 0.8, "%g", a)
		assert.LessOrEqual(t, b, a+1e-6)
	})
}

// A boat-tail counts as far as its half-angle stays under 12° (common practice, no source); a steeper one
// leaves the wake of what lies before it, and something wide behind it catches the flow again.
func TestSteepBoatTails(t *testing.T) {
	base := func(tail ...Section) float64 {
		s := caseA()
		s.Fins = nil
		s.Sections = append([]Section{{Name: "tube", Length: 0.5}}, tail...)
		s.Length = s.Nose.Length + 0.5
		for i := range tail {
			s.Length += tail[i].Length
		}
		return 1e3 * s.wakeDiameter()
	}
	at := func(angle float64) Section {
		return Section{Name: "tail", Aft: 0.028, Length: 0.006 / math.Tan(angle*math.Pi/180)}
	}
	assert.InDelta(t, 28, base(at(11.9)), 1e-9)
	assert.InDelta(t, 40, base(at(12.1)), 1e-9)
	assert.InDelta(t, 40, base(at(12.1), Section{Name: "rest", Length: 0.1}), 1e-9, "a narrow tube behind it")
	assert.InDelta(t, 40, base(at(12.1), Section{Name: "flare", Aft: 0.04, Length: 0.1}), 1e-9)
	assert.InDelta(t, 28, base(Section{Name: "flare", Aft: 0.05, Length: 0.1}, Section{Name: "long", Aft: 0.028, Length: 0.2}), 1e-9)

	// In drag: what a steep boat-tail leaves is the base of the tube before it, more than that of none at all
	// by the boat-tail's own friction only.
	drag := func(angle float64) float64 {
		s := caseA()
		s.Sections = []Section{{Name: "tube", Length: 0.5}, at(angle)}
		s.Length = s.Nose.Length + 0.5 + s.Sections[1].Length
		_, shares := s.Drag(seaLevel(50), 0)
		return share(t, shares, "base")
	}
	assert.Greater(t, drag(12.1), 2*drag(11.9))
}

// A section that widens pushes air aside like a cone of its angle, on the area it adds.
func TestSteepFlares(t *testing.T) {
	s := caseB()
	s.Nose.Diameter = 0.03
	s.Sections = append([]Section{{Name: "flare", Forward: 0.03, Aft: 0.04, Length: 0.005 / math.Tan(math.Pi/6)}}, s.Sections...)
	s.Length += s.Sections[0].Length
	f := seaLevel(50)
	_, shares := s.Drag(f, 0)
	skin := share(t, shares, "section.flare") - 0.285*(1-9./16)*f.squeeze()
	assert.Positive(t, skin)
	assert.Less(t, skin, 0.01)
}

// NACA TN 4197 on a fin of root 190, tip 100, span 160, 3 mm of 5 GPa, at sea level: aspect ratio 1.10345 and 159.6 m/s
// (computed by plain arithmetic; the form from memory).
func TestFlutter(t *testing.T) {
	f := Fins{Name: "1", Count: 3, Root: 0.19, Tip: 0.1, Span: 0.16, Thickness: 0.003, ShearModulus: 5e9}
	assert.InDelta(t, 1.10345, f.Span*f.Span/f.area(), 1e-5)
	v := f.FlutterSpeed(101325, 340.294)
	assert.InDelta(t, 159.6, v, 0.05)
	// The greatest share of it is that of the greatest dynamic pressure, at any height: here 22 632 Pa and 295.069 m/s,
	// 0.363918 kg/m³ (ISO 2533, 11 km).
	s := Shape{Fins: []Fins{f}}
	assert.InEpsilon(t, 100/v, s.Flutter(0.5*1.225*1e4, 1.4), 1e-4)
	assert.InEpsilon(t, 200/f.FlutterSpeed(22632, 295.069), s.Flutter(0.5*0.363918*4e4, 1.4), 1e-4)
	soft := f
	soft.ShearModulus /= 4
	s.Fins = append(s.Fins, soft)
	assert.InEpsilon(t, 2*100/v, s.Flutter(0.5*1.225*1e4, 1.4), 1e-4, "the first to flutter")
	s.Fins[0].ShearModulus = 0
	assert.True(t, math.IsNaN(s.Flutter(1000, 1.4)), "not known")
	assert.True(t, math.IsNaN((&Shape{}).Flutter(1000, 1.4)))
}
