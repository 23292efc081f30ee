package airframe

import (
	"encoding/binary"
	"math"
	"testing"
)

// numbers reads a shape's numbers out of bytes, then zeros.
type numbers []byte

func (n *numbers) float() float64 {
	if len(*n) < 8 {
		return 0
	}
	v := math.Float64frombits(binary.LittleEndian.Uint64(*n))
	*n = (*n)[8:]
	return v
}

func (n *numbers) byte() byte {
	if len(*n) == 0 {
		return 0
	}
	b := (*n)[0]
	*n = (*n)[1:]
	return b
}

// shape has any float where a number stands, and lists of up to three.
func (n *numbers) shape() *Shape {
	noses := []NoseShape{Conical, TangentOgive, Elliptical, Parabolic, VonKarman, PowerSeries, "other"}
	profiles := []FinSection{FlatSection, RoundedSection, WedgeSection, AirfoilSection, "other"}
	kinds := n.byte()
	s := &Shape{
		Length: n.float(), Diameter: n.float(), Roughness: n.float(),
		Nose: Nose{Shape: noses[int(n.byte())%len(noses)], Length: n.float(), Exponent: n.float(), Diameter: n.float()},
	}
	for range kinds % 4 {
		s.Sections = append(s.Sections, Section{Length: n.float(), Forward: n.float(), Aft: n.float()})
	}
	for range kinds / 4 % 4 {
		k := n.byte()
		s.Fins = append(s.Fins, Fins{
			Count: int(k % 9), Section: profiles[int(k/9)%len(profiles)], Root: n.float(), Tip: n.float(), Span: n.float(),
			Sweep: n.float(), Thickness: n.float(), Position: n.float(), Cant: n.float(),
		})
	}
	return s
}

// seed writes a shape as numbers.shape reads it.
func seed(s *Shape, nose, fins byte) []byte {
	b := []byte{byte(len(s.Sections) + 4*len(s.Fins))}
	put := func(v ...float64) {
		for _, x := range v {
			b = binary.LittleEndian.AppendUint64(b, math.Float64bits(x))
		}
	}
	put(s.Length, s.Diameter, s.Roughness)
	b = append(b, nose)
	put(s.Nose.Length, s.Nose.Exponent, s.Nose.Diameter)
	for _, x := range s.Sections {
		put(x.Length, x.Forward, x.Aft)
	}
	for _, x := range s.Fins {
		b = append(b, fins)
		put(x.Root, x.Tip, x.Span, x.Sweep, x.Thickness, x.Position, x.Cant)
	}
	return b
}

// Any numbers: Check says what is wrong in whole sentences, or all that is worked out
// from them is finite; and nothing panics either way.
func FuzzCheck(f *testing.F) {
	f.Add(seed(caseA(), 1, 4))
	f.Add(seed(caseB(), 0, 3))
	for nose := range byte(6) {
		s := caseB()
		s.Nose.Exponent = 0.5
		f.Add(seed(s, nose, 6+9*3))
	}
	f.Add([]byte{})
	f.Fuzz(func(t *testing.T, b []byte) {
		n := numbers(b)
		s := n.shape()
		faults := s.Check()
		for _, x := range faults {
			if x.Key == "" || x.Problem == "" || x.Remedy == "" {
				t.Fatalf("%+v says too little", x)
			}
		}
		if len(faults) > 0 {
			s.Aero().Moments(0.5)
			s.Drag(Flow{Speed: 50, Density: 1.2, SoundSpeed: 340, Viscosity: 1.8e-5}, 0)
			s.Radius(0.1)
			return
		}
		for _, mach := range []float64{0.01, 0.7, 2} {
			if wrong := holds(s, mach); wrong != "" {
				t.Fatalf("%s: %+v", wrong, *s)
			}
		}
	})
}
