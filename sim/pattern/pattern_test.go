package pattern_test

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"ullage/sim/airframe"
	"ullage/sim/pattern"
	"ullage/sim/rocket"
	"ullage/sim/rocketfile"
)

const mm = 1e-3

// of is the pattern of a name.
func of(t *testing.T, s pattern.Set, name string) *pattern.Pattern {
	t.Helper()
	for i := range s.Patterns {
		if s.Patterns[i].Name == name {
			return &s.Patterns[i]
		}
	}
	require.Fail(t, "no pattern "+name)
	return nil
}

// figure is a named number of a pattern.
func figure(t *testing.T, p *pattern.Pattern, name string) float64 {
	t.Helper()
	for _, f := range p.Figures {
		if f.Name == name {
			return f.Value
		}
	}
	require.Fail(t, "no figure "+name+" of "+p.Name)
	return 0
}

// lines are those of a pen.
func lines(p *pattern.Pattern, pen pattern.Pen) (all []pattern.Line) {
	for _, l := range p.Lines {
		if l.Pen == pen {
			all = append(all, l)
		}
	}
	return all
}

// long is how long a line is.
func long(l pattern.Line) float64 {
	sum := 0.0
	for i := 1; i < len(l.Points); i++ {
		sum += math.Hypot(l.Points[i].X-l.Points[i-1].X, l.Points[i].Y-l.Points[i-1].Y)
	}
	return sum
}

// shaped is a rocket of a nose, a tube, a boat-tail and fins.
func shaped() *rocket.Rocket {
	return &rocket.Rocket{Body: rocket.Body{Diameter: 64 * mm}, Shape: &airframe.Shape{
		Length: 1000 * mm, Diameter: 64 * mm, Nose: airframe.Nose{Shape: airframe.Conical, Length: 160 * mm},
		Sections: []airframe.Section{{Name: "tube", Length: 780 * mm}, {Name: "tail", Length: 60 * mm, Aft: 46 * mm}},
		Fins:     []airframe.Fins{{Name: "tail", Count: 4, Root: 110 * mm, Tip: 60 * mm, Span: 75 * mm, Sweep: 40 * mm, Thickness: 3 * mm, Position: 820 * mm, Section: airframe.FlatSection}},
	}}
}

// What the starter describes is drawn, every size with a figure, every table falling to its crown.
func TestStarterIsDrawn(t *testing.T) {
	s := pattern.Of(rocketfile.Starter().Rocket())
	for _, name := range []string{"nose", "fins-tail", "wrap-fins-tail", "jig-fins-tail", "closure-forward", "closure-forward-gore",
		"closure-aft", "closure-aft-gore", "canopy-main-gore"} {
		p := of(t, s, name)
		assert.NotEmpty(t, p.Notes, name)
		assert.NotEmpty(t, p.Title, name)
		_, err := rocketfile.Find(rocketfile.Starter().Rocket(), p.Input)
		assert.NoError(t, err, name)
		for _, x := range p.Sizes {
			assert.InDelta(t, x.Length(), figure(t, p, x.Name), 1e-12, "%s: %s", name, x.Name)
		}
		low, high := p.Bounds()
		assert.True(t, high.X > low.X && high.Y > low.Y, name)
	}
	rows := of(t, s, "closure-aft").Table.Rows
	for i := 1; i < len(rows); i++ {
		assert.Less(t, rows[i][1], rows[i-1][1])
		assert.Greater(t, rows[i][0], rows[i-1][0])
	}
	assert.Zero(t, rows[len(rows)-1][1])
}

// What is missing or unsound is told by name.
func TestLacks(t *testing.T) {
	s := pattern.Of(&rocket.Rocket{Water: &rocket.Water{}})
	assert.Empty(t, s.Patterns)
	assert.Equal(t, []pattern.Lack{
		{What: "nose, fins and what goes round the body", Keys: []string{"body.length", "nose", "fins"}},
		{What: "target of the alignment jig", Keys: []string{"jig.length"}},
		{What: "closures of the chamber", Keys: []string{"chamber"}},
	}, s.Lacks)

	r := shaped()
	r.Shape.Fins[0].Span = 0
	s = pattern.Of(r)
	assert.Empty(t, s.Patterns)
	assert.Equal(t, []string{"fins.tail.span"}, s.Lacks[0].Keys)
}

func TestRings(t *testing.T) {
	r := &rocket.Rocket{MotorMount: &rocket.MotorMount{Diameter: 29 * mm, Length: 250 * mm}}
	s := pattern.Of(r)
	assert.Contains(t, s.Lacks, pattern.Lack{What: "centring rings of the motor mount", Keys: []string{"motor_mount.within", "motor_mount.wall"}})
	r.MotorMount.Wall, r.Water = 1.5*mm, &rocket.Water{Bore: 68 * mm}
	p := of(t, pattern.Of(r), "ring-mount")
	assert.Equal(t, rocket.UsualRings, p.Count)
	assert.InDelta(t, 68*mm, figure(t, p, "outside"), 1e-12)
	assert.InDelta(t, 32*mm, figure(t, p, "hole"), 1e-12)
	assert.InEpsilon(t, math.Pi/4*32*32*mm*mm, lines(p, pattern.Hole)[0].Area(), 1e-3)
	r.MotorMount.Within, r.MotorMount.Rings = 60*mm, 3
	p = of(t, pattern.Of(r), "ring-mount")
	assert.Equal(t, 3, p.Count)
	assert.InDelta(t, 60*mm, figure(t, p, "outside"), 1e-12)
}

// By hand: at the end of 300 mm a quarter of a degree is 1.309 mm off, a degree 5.236 mm.
func TestTarget(t *testing.T) {
	r := &rocket.Rocket{Motor: &rocket.Motor{}}
	assert.Contains(t, pattern.Of(r).Lacks, pattern.Lack{What: "target of the alignment jig", Keys: []string{"jig.length"}})
	r.Bench.Jig = 300 * mm
	p := of(t, pattern.Of(r), "jig-thrust")
	assert.InDelta(t, 1.309*mm, figure(t, p, "ring of 0.25°"), 1e-6)
	assert.InDelta(t, 5.236*mm, figure(t, p, "ring of 1°"), 1e-6)
	rings := lines(p, pattern.Mark)
	assert.InDelta(t, 2*math.Pi*1.309*mm, long(rings[0]), 5e-5)
}
