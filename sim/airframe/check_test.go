package airframe

import (
	"math"
	"regexp"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

func TestSoundShapes(t *testing.T) {
	assert.Empty(t, caseA().Check())
	assert.Empty(t, caseB().Check())
	assert.Empty(t, (&Shape{Length: 0.5, Diameter: 0.05, Nose: Nose{Shape: Elliptical, Length: 0.05}}).Check(), "bare")
	// What a tape and a calliper leave open: half a millimetre, half a per cent.
	s := caseB()
	s.Sections[0].Forward, s.Sections[0].Aft = 0.0398, 0.0398
	s.Sections[1].Forward = 0.0401
	s.Sections[1].Length += 0.0005
	assert.Empty(t, s.Check())
	for f := range s.trunk {
		if f.name == "section.tube" {
			assert.Equal(t, f.fore, f.aft, "a tube stays one")
		}
	}
	// Two sets that stand one behind the other.
	s = caseA()
	fore := s.Fins[0]
	fore.Name, fore.Position = "forward", 0.3
	s.Fins = append(s.Fins, fore)
	assert.Empty(t, s.Check())
}

// Every fault by what makes it: name, words of problem and mend, and that it is alone.
func TestFaults(t *testing.T) {
	nan, inf := math.NaN(), math.Inf(1)
	for _, c := range []struct {
		spoil         func(*Shape)
		name          string
		problem, mend string
	}{
		{func(s *Shape) { s.Length = nan }, "body.length", "is missing", "10 mm to 20000 mm"},
		{func(s *Shape) { s.Length = inf }, "body.length", "not a finite number", "10 mm to 20000 mm"},
		{func(s *Shape) { s.Length = -1 }, "body.length", "negative", "10 mm to 20000 mm"},
		{func(s *Shape) { s.Length = 0.03; s.Fins = nil }, "body.length", "less than the diameter", "from the tip"},
		{func(s *Shape) { s.Length = 5; s.Diameter = 0.04 }, "body.length", "more than 100 diameters", "units"},
		{func(s *Shape) { s.Diameter = 0 }, "body.diameter", "is missing", "1 mm to 2000 mm"},
		{func(s *Shape) { s.Diameter = 1e-4; s.Fins = nil }, "body.diameter", "too small", "1 mm to"},
		{func(s *Shape) { s.Diameter = 1e-7 }, "body.diameter", "too small", "1 mm to"},
		{func(s *Shape) { s.Diameter = 0.06; s.Sections[0].Forward = 0.04 }, "body.diameter", "more than nose and sections have, 40 mm", "largest outside diameter"},
		{func(s *Shape) { s.Roughness = -1 }, "body.roughness", "negative", "0 um to 1000 um"},
		{func(s *Shape) { s.RailButtons = nan }, "body.rail_buttons", "is missing", "0 mm2 to 10000 mm2"},

		{func(s *Shape) { s.Nose.Shape = "round" }, "nose.shape", "not a contour", "tangent ogive"},
		{func(s *Shape) { s.Nose.Length = 0 }, "nose.length", "is missing", "1 mm to"},
		{func(s *Shape) { s.Nose.Length = 2 }, "nose.length", "longer than the whole rocket, 850 mm", "body.length"},
		{func(s *Shape) { s.Nose.Length = 0.019; s.Nose.Shape = TangentOgive }, "nose.length", "too short for a tangent ogive", "20 mm.*elliptical"},
		{func(s *Shape) { s.Nose.Shape = PowerSeries }, "nose.exponent", "is missing", "0.05 to 1"},
		{func(s *Shape) { s.Nose.Shape, s.Nose.Exponent = PowerSeries, 1.5 }, "nose.exponent", "too large", "0.05 to 1"},
		{func(s *Shape) { s.Nose.Diameter = -1 }, "nose.diameter", "negative", "1 mm to"},
		{func(s *Shape) { s.Nose.Diameter = 0.05; s.Sections[0].Forward = 0.05; s.Sections[0].Aft = 0.04 }, "nose.diameter", "wider than the body, 40 mm", "body.diameter"},
		{func(s *Shape) { s.Nose.Diameter = 0.0001; s.Sections[0].Aft = 0.04 }, "nose.diameter", "too small", "1 mm to"},

		{func(s *Shape) { s.Sections[0].Length = 0 }, "section.tube.length", "is missing", "0.1 mm to"},
		{func(s *Shape) { s.Sections[1].Aft = -0.1 }, "section.tail.aft", "negative", "0.5 mm to"},
		{func(s *Shape) { s.Sections[1].Forward = nan }, "section.tail.forward", "not a finite number", "0.5 mm to"},
		{func(s *Shape) { s.Sections[1].Forward = 0.035 }, "section.tail.forward", "does not meet what is before it, 40 mm wide", "tapers"},
		{func(s *Shape) { s.Sections[0].Forward = 0.05; s.Sections[0].Aft = 0.04 }, "section.tube.forward", "wider than the body", "body.diameter"},
		{func(s *Shape) { s.Sections[1].Aft = 0.05 }, "section.tail.aft", "wider than the body", "body.diameter"},
		{func(s *Shape) { s.Sections[1].Aft = 1e-9 }, "section.tail.aft", "too small", "0.5 mm to"},
		{func(s *Shape) { enlarge(s, 5); s.Sections[1].Aft = 1.9e-3 }, "section.tail.aft", "tapers to next to nothing", "at least 1 %.*2 mm"},
		{func(s *Shape) { s.Sections[1].Length = 0.06 }, "body.length", "nose and sections add up to, 860 mm", "shorten what is in it by 10 mm"},
		{func(s *Shape) { s.Sections[1].Name = ""; s.Sections[1].Length = nan }, "section.2.length", "is missing", "0.1 mm to"},

		{func(s *Shape) { s.Fins[0].Count = 2 }, "fins.1.count", "too small", "3 to 6"},
		{func(s *Shape) { s.Fins[0].Count = 7 }, "fins.1.count", "too large", "3 to 6"},
		{func(s *Shape) { s.Fins[0].Root = 0 }, "fins.1.root", "is missing", "1 mm to"},
		{func(s *Shape) { s.Fins[0].Root = 0.8 }, "fins.1.root", "longer than the body behind the nose, 730 mm", "shorten"},
		{func(s *Shape) { s.Fins[0].Tip = 0.21 }, "fins.1.tip", "more than twice the root chord", "200 mm.*exchanged"},
		{func(s *Shape) { s.Fins[0].Tip = -0.01 }, "fins.1.tip", "negative", "0 mm to"},
		{func(s *Shape) { s.Fins[0].Span = 0 }, "fins.1.span", "is missing", "1 mm to"},
		{func(s *Shape) { s.Fins[0].Span = 0.41 }, "fins.1.span", "more than ten diameters", "400 mm"},
		{func(s *Shape) { s.Fins[0].Sweep = 0.5 }, "fins.1.sweep", "more than 80 deg", "at most 340.28 mm"},
		{func(s *Shape) { s.Fins[0].Sweep = nan }, "fins.1.sweep", "is missing", "-5000 mm to 5000 mm"},
		{func(s *Shape) { s.Fins[0].Thickness = 0 }, "fins.1.thickness", "is missing", "0.05 mm to"},
		{func(s *Shape) { s.Fins[0].Thickness = 0.05 }, "fins.1.thickness", "too much", "half the mean chord, 37.5 mm"},
		{func(s *Shape) { s.Fins[0].Section = "" }, "fins.1.section", "not a profile", "airfoil"},
		{func(s *Shape) { s.Fins[0].Cant = 20 * deg }, "fins.1.cant", "too large", "-10 deg to 10 deg"},
		{func(s *Shape) { s.Fins[0].Position = nan }, "fins.1.position", "is missing", "0 mm to"},
		{func(s *Shape) { s.Fins[0].Position = 0.9 }, "fins.1.position", "floats: it is off the body, 850 mm long", "leading edge"},
		{func(s *Shape) { s.Fins[0].Position = -0.2 }, "fins.1.position", "negative", "0 mm to"},
		{func(s *Shape) { s.Fins[0].Position = 0.8 }, "fins.1.position", "floats: the root ends 50 mm behind the body", "at most 750 mm"},
		{func(s *Shape) { s.Fins[0].Position = 0.1 }, "fins.1.position", "stands on the nose, which ends at 120 mm", "aft"},
		{func(s *Shape) {
			g := s.Fins[0]
			g.Name, g.Position = "more", 0.62
			s.Fins = append(s.Fins, g)
		}, "fins.more.position", "overlaps fins.1, whose root goes from 700 mm to 800 mm", "move one"},
	} {
		s := caseB()
		c.spoil(s)
		faults := s.Check()
		require.Len(t, faults, 1, "%s: %s: %+v", c.name, c.problem, faults)
		f := faults[0]
		assert.Equal(t, c.name, f.Key)
		assert.Regexp(t, regexp.QuoteMeta(c.problem), f.Problem)
		assert.Regexp(t, c.mend, f.Remedy)
	}
}

// enlarge makes everything of a shape several times as large.
func enlarge(s *Shape, times float64) {
	s.Length, s.Diameter = times*s.Length, times*s.Diameter
	s.Nose.Length, s.Nose.Diameter = times*s.Nose.Length, times*s.Nose.Diameter
	for i := range s.Sections {
		x := &s.Sections[i]
		x.Length, x.Forward, x.Aft = times*x.Length, times*x.Forward, times*x.Aft
	}
	for i := range s.Fins {
		f := &s.Fins[i]
		f.Root, f.Tip, f.Span, f.Sweep = times*f.Root, times*f.Tip, times*f.Span, times*f.Sweep
		f.Thickness, f.Position = times*f.Thickness, times*f.Position
	}
}

// All faults come at once.
func TestFaultsTogether(t *testing.T) {
	s := caseB()
	s.Roughness, s.Nose.Shape, s.Fins[0].Count, s.Fins[0].Span, s.Fins[0].Section = 1, "", 9, 0, "flaked"
	s.Sections[0].Length = -1
	var names []string
	for _, f := range s.Check() {
		names = append(names, f.Key)
		assert.NotEmpty(t, f.Problem)
		assert.NotEmpty(t, f.Remedy)
	}
	assert.Equal(t, []string{"body.roughness", "nose.shape", "section.tube.length", "fins.1.count", "fins.1.span", "fins.1.section"}, names)
}

func TestParts(t *testing.T) {
	s := caseA()
	sound := Part{Name: "tube", Mass: 0.2, Position: 0.4, Length: 0.8}
	assert.Empty(t, s.CheckParts(nil))
	assert.Empty(t, s.CheckParts([]Part{sound, {Mass: 0.1, Position: 0.75, Length: 0.1, Diameter: 0.16}}))
	for _, c := range []struct {
		part          Part
		name, problem string
	}{
		{Part{Mass: -1, Position: 0.1}, "part.2.mass", "negative"},
		{Part{Mass: math.Inf(1), Position: 0.1}, "part.2.mass", "not a finite number"},
		{Part{Mass: 1, Position: 0.9}, "part.2.position", "floats"},
		{Part{Mass: 1, Position: -0.1}, "part.2.position", "negative"},
		{Part{Name: "x", Mass: 1, Position: math.NaN()}, "part.x.position", "is missing"},
		{Part{Mass: 1, Position: 0.1, Length: 0.3}, "part.2.length", "reaches ahead of the tip"},
		{Part{Mass: 1, Position: 0.7, Length: 0.6}, "part.2.length", "reaches behind the body"},
		{Part{Mass: 1, Position: 0.7, Length: -1}, "part.2.length", "negative"},
		{Part{Mass: 1, Position: 0.7, Diameter: 0.2}, "part.2.diameter", "wider than body and fins"},
	} {
		faults := s.CheckParts([]Part{sound, c.part})
		require.Len(t, faults, 1, "%+v: %+v", c.part, faults)
		assert.Equal(t, c.name, faults[0].Key)
		assert.Contains(t, faults[0].Problem, c.problem)
		assert.NotEmpty(t, faults[0].Remedy)
	}
	faults := s.CheckParts([]Part{{Position: 0.1}, {Position: 0.2}})
	require.Len(t, faults, 1)
	assert.Equal(t, "part.1.mass", faults[0].Key)
}
