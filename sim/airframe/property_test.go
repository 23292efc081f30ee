package airframe

import (
	"math"
	"reflect"
	"testing"

	"pgregory.net/rapid"
)

// anyShape draws a shape as a builder's might be, from darts to bottles; not all pass
// Check.
func anyShape(t *rapid.T) *Shape {
	number := func(low, high float64, name string) float64 { return rapid.Float64Range(low, high).Draw(t, name) }
	s := &Shape{Diameter: number(0.01, 0.3, "diameter"), Roughness: number(0, 1e-3, "roughness")}
	d := s.Diameter
	s.Nose = Nose{
		Shape:    rapid.SampledFrom([]NoseShape{Conical, TangentOgive, Elliptical, Parabolic, VonKarman, PowerSeries}).Draw(t, "nose"),
		Length:   d * number(0.5, 8, "nose length"),
		Exponent: number(0.05, 1, "exponent"),
		Diameter: d * rapid.SampledFrom([]float64{0, 0.5, 0.8, 1}).Draw(t, "nose diameter"),
	}
	at := s.Nose.Length
	if n := s.Nose.Diameter; n != 0 && n != d { // somewhere it is as wide as it says
		s.Sections = append(s.Sections, Section{Length: d * number(0.2, 3, "shoulder"), Aft: d})
		at += s.Sections[0].Length
	}
	for range rapid.IntRange(0, 4).Draw(t, "sections") {
		sec := Section{Length: d * number(0.2, 10, "section")}
		if rapid.Bool().Draw(t, "tapers") {
			sec.Aft = d * number(0.02, 1, "aft")
		}
		s.Sections = append(s.Sections, sec)
		at += sec.Length
	}
	s.Length = at
	if rapid.Bool().Draw(t, "remainder") || len(s.Sections) == 0 {
		s.Length += d * number(1, 10, "rest")
	}
	for range rapid.IntRange(0, 2).Draw(t, "fin sets") {
		root := d * number(0.2, 2, "root")
		span := d * number(0.1, 3, "span")
		s.Fins = append(s.Fins, Fins{
			Count: rapid.IntRange(3, 6).Draw(t, "count"), Root: root, Tip: root * number(0, 1.5, "tip"),
			Span: span, Sweep: span * number(-1, 3, "sweep"), Thickness: root * number(0.005, 0.2, "thickness"),
			Section:  rapid.SampledFrom([]FinSection{FlatSection, RoundedSection, WedgeSection, AirfoilSection}).Draw(t, "section"),
			Position: number(s.Nose.Length, math.Max(s.Nose.Length, s.Length-root), "position"), Cant: number(-0.1, 0.1, "cant"),
		})
	}
	return s
}

func finite(v ...float64) bool {
	for _, x := range v {
		if math.IsNaN(x) || math.IsInf(x, 0) {
			return false
		}
	}
	return true
}

// holds is what is so for every shape that passes Check; it returns what is not.
func holds(s *Shape, mach float64) string {
	a := s.Aero()
	m0, m1, m2 := a.Moments(mach)
	if !finite(m0, m1, m2, m1/m0) || !(m0 > 0) {
		return "normal force is not finite or not positive"
	}
	area, at, coefficient := a.Crossflow()
	drive, damp := a.Roll()
	if !finite(area, at, coefficient, drive, damp) || area <= 0 || at < 0 || at > s.Length+fit || damp < 0 {
		return "side view or roll"
	}
	f := Flow{Speed: mach * 340, Density: 1.2, SoundSpeed: 340, Viscosity: 1.8e-5}
	total, shares := s.Drag(f, 1e-5)
	sum := 0.
	for _, x := range shares {
		if !finite(x.Drag) || x.Drag < 0 {
			return "a share of drag: " + x.Name
		}
		sum += x.Drag
	}
	if !finite(total) || total <= 0 || math.Abs(sum-total) > 1e-9*total {
		return "shares do not add up to the drag"
	}
	var c0, c1, c2, size float64
	pushes := true // no part pulls back, as a boat-tail does
	components := a.Components(mach)
	for i, c := range components {
		c0, c1, c2 = c0+c.CNAlpha, c1+c.CNAlpha*c.At, c2+c.CNAlpha*c.At*c.At
		size += math.Abs(c.CNAlpha) * (1 + c.At*c.At)
		pushes = pushes && c.CNAlpha > 0
		if n := len(components) - len(s.Fins); i > 0 && i < n && components[i-1].At > c.At {
			return "components out of order"
		}
	}
	if math.Abs(c0-m0)+math.Abs(c1-m1)+math.Abs(c2-m2) > 1e-9*size {
		return "moments are not those of the components"
	}
	if pushes && m2*m0 < m1*m1*(1-1e-9) {
		return "m2 is below m1²/m0"
	}
	if !finite(s.Radius(s.Length / 3)) {
		return "radius"
	}
	return ""
}

func TestAnyShapeThatPassesIsFinite(t *testing.T) {
	passed, drawn := 0, 0
	rapid.Check(t, func(t *rapid.T) {
		s := anyShape(t)
		mach := rapid.Float64Range(0, 3).Draw(t, "mach")
		drawn++
		if len(s.Check()) > 0 {
			return
		}
		passed++
		if wrong := holds(s, mach); wrong != "" {
			t.Fatal(wrong)
		}
	})
	t.Logf("%d of %d", passed, drawn)
	if 4*passed < drawn {
		t.Fatalf("only %d shapes of %d passed", passed, drawn)
	}
}

// With a nose as wide as the body, fins aft and no boat-tail, the centre of pressure lies
// within the rocket; larger fins move it aft; other reference units change nothing.
func TestUsualShapes(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		s := anyShape(t)
		d := s.Diameter
		s.Nose.Diameter, s.Sections = 0, nil
		s.Length = s.Nose.Length + d*rapid.Float64Range(3, 15).Draw(t, "tube")
		f := Fins{Count: 3, Root: d, Tip: d / 2, Span: d * rapid.Float64Range(0.3, 2).Draw(t, "span"), Sweep: d / 2, Thickness: d / 30,
			Section: FlatSection, Position: s.Length - d}
		s.Fins = []Fins{f}
		if faults := s.Check(); faults != nil {
			t.Fatal(faults)
		}
		m0, m1, _ := s.Aero().Moments(0)
		if x := m1 / m0; !(x > 0 && x < s.Length) {
			t.Fatalf("centre of pressure %v of %v", x, s.Length)
		}
		s.Fins[0].Span *= 1.1
		if n0, n1, _ := s.Aero().Moments(0); n1/n0 <= m1/m0 {
			t.Fatal("larger fins moved the centre of pressure forward")
		}
	})
}

// Twice as large in everything: the same coefficients, centres twice as far.
func TestSimilarShapes(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		s := anyShape(t)
		if len(s.Check()) > 0 {
			return
		}
		twice := *s
		twice.Sections = append([]Section(nil), s.Sections...)
		twice.Fins = append([]Fins(nil), s.Fins...)
		grow(reflect.ValueOf(&twice).Elem())
		if len(twice.Check()) > 0 {
			return // a millimetre is less there
		}
		a0, a1, a2 := s.Aero().Moments(0.5)
		b0, b1, b2 := twice.Aero().Moments(0.5)
		for _, p := range [][2]float64{{a0, b0}, {2 * a1, b1}, {4 * a2, b2}} {
			if math.Abs(p[0]-p[1]) > 1e-9*(1+math.Abs(p[0])) {
				t.Fatalf("%v is not %v", p[0], p[1])
			}
		}
	})
}

// grow doubles every length of a shape; exponents and angles have none.
func grow(v reflect.Value) {
	for i := range v.NumField() {
		f := v.Field(i)
		switch name := v.Type().Field(i).Name; {
		case name == "Exponent" || name == "Cant":
		case f.Kind() == reflect.Float64:
			f.SetFloat(2 * f.Float())
		case f.Kind() == reflect.Struct:
			grow(f)
		case f.Kind() == reflect.Slice:
			for j := range f.Len() {
				grow(f.Index(j))
			}
		}
	}
}
