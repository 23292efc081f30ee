package chamber

import (
	"math"
	"strconv"
	"strings"

	"ullage/sim/chamber"
	"ullage/sim/rocket"
	"ullage/tui/plot"
)

// chamberSection is the chamber cut along its axis as it is drawn: closures and laps to
// scale, the middle of the tube shortened where the whole is too long for the room.
type chamberSection struct {
	c         *chamber.Chamber
	rocket    *rocket.Rocket
	u         float64 // length of a dot on the drawing, m
	wall      float64 // thickness as drawn, m
	from, to  float64 // the stretch of the tube that may be shortened, m from its forward closure
	shortened float64 // how many times it is; 1 for not at all
	chart     plot.Chart
	stack     plot.Stack
}

// newChamberSection fits the drawing into so many columns and rows.
func newChamberSection(c *chamber.Chamber, r *rocket.Rocket, columns, rows int, charset plot.Charset) *chamberSection {
	s := &chamberSection{c: c, rocket: r, shortened: 1}
	across, along := 2, 4 // dots of a cell
	switch charset {
	case plot.Block:
		across, along = 2, 2
	case plot.ASCII:
		across, along = 1, 3
	}
	// A cell is twice as high as wide. A dot's length counts along the chamber; across,
	// the wall takes at least two dots each side.
	cell := c.Diameter / 2 / (float64(rows) - 4/float64(along)) // m that a column stands for
	dot := 2 * cell / float64(along)
	s.wall = math.Max(c.WallThickness(), 1.5*dot)
	s.u = cell / float64(across)
	room := float64(columns-1) * cell
	lead, trail := s.lead(), s.trail()
	if need := lead + c.Length + trail; need > room {
		// Both ends keep twice their laps, or what there is.
		keep := math.Min(math.Max(c.Diameter/2, 1.5*s.lap()), c.Length/3)
		s.from, s.to = keep, c.Length-keep
		left := math.Max(room-lead-trail-2*keep, 4*cell)
		s.shortened = math.Max((s.to-s.from)/left, 1)
	}
	reach := c.Diameter/2 + s.wall
	s.chart = plot.Chart{Y: plot.Axis{Hide: true, Min: -reach, Max: reach}, Equal: true}
	s.stack = plot.Stack{Charset: charset, X: plot.Axis{Hide: true, Min: -lead, Max: math.Max(s.at(c.Length)+trail, -lead+room)}}
	return s
}

// lap is the longer of the two laps.
func (s *chamberSection) lap() float64 { return math.Max(overlap(s.c.Forward), overlap(s.c.Aft)) }

func overlap(e *chamber.Closure) float64 {
	if e == nil {
		return 0
	}
	return e.Overlap
}

// lead and trail are what the drawing has ahead of the tube between its closures, and
// behind it.
func (s *chamberSection) lead() float64 { return overlap(s.c.Forward) + s.depth(s.c.Forward) }

func (s *chamberSection) trail() float64 {
	out := overlap(s.c.Aft) + s.depth(s.c.Aft)
	if s.rocket.Water != nil || s.c.Thread != nil {
		out += s.neck()
	}
	return out
}

// neck is how far nozzle and retainer stand out.
func (s *chamberSection) neck() float64 {
	if t := s.c.Thread; t != nil {
		return math.Max(1.5*t.Engaged, 0.12*s.c.Diameter)
	}
	return 0.12 * s.c.Diameter
}

// depth is how far a closure bulges.
func (s *chamberSection) depth(e *chamber.Closure) float64 {
	r := s.c.Diameter / 2
	if e == nil {
		return 0
	}
	switch e.Shape {
	case chamber.Hemisphere:
		return r
	case chamber.Ellipsoid:
		return r / 2
	case chamber.Cone:
		return math.Min(r/math.Tan(e.HalfAngle), 4*r)
	}
	return 0
}

// at is where a place along the tube is drawn.
func (s *chamberSection) at(x float64) float64 {
	switch {
	case s.shortened == 1 || x <= s.from:
		return x
	case x >= s.to:
		return x - (s.to-s.from)*(1-1/s.shortened)
	}
	return s.from + (x-s.from)/s.shortened
}

func (s *chamberSection) line(ink plot.Ink, style plot.Style, x, y []float64) {
	s.chart.Series = append(s.chart.Series, plot.Series{X: x, Y: y, Ink: ink, Style: style})
}

// both draws a line on both sides of the axis.
func (s *chamberSection) both(ink plot.Ink, style plot.Style, x, y []float64) {
	down := make([]float64, len(y))
	for i := range y {
		down[i] = -y[i]
	}
	s.line(ink, style, x, y)
	s.line(ink, style, x, down)
}

// draw is the whole drawing; weakest is the name of the part to mark.
func (s *chamberSection) draw(weakest string) plot.Stack {
	r, length := s.c.Diameter/2, s.c.Length
	if w := s.rocket.Water; w != nil && s.rocket.Power == rocket.WaterPower {
		s.water(w)
	}
	left, right := -overlap(s.c.Forward), s.at(length)+overlap(s.c.Aft)
	style := plot.Solid
	for _, part := range [][2]float64{{left, s.from}, {s.from, s.at(s.to)}, {s.at(s.to), right}} {
		if s.shortened == 1 {
			part = [2]float64{left, right}
		}
		for _, y := range []float64{r, r + s.wall} {
			s.both(plot.Note, style, []float64{part[0], part[1]}, []float64{y, y})
		}
		if style = plot.Dashed; part[0] != left {
			style = plot.Solid
		}
		if s.shortened == 1 {
			break
		}
	}
	for _, x := range []float64{left, right} {
		s.both(plot.Note, plot.Solid, []float64{x, x}, []float64{r, r + s.wall})
	}
	bore := 0.0
	if s.rocket.Water != nil {
		bore = s.rocket.Water.Throat / 2
	}
	s.closure(s.c.Forward, 0, -1, 0)
	s.closure(s.c.Aft, s.at(length), 1, s.nozzle(bore))
	s.mark(weakest)
	s.stack.Charts = []plot.Chart{s.chart}
	return s.stack
}

// says is how true to scale the drawing is.
func (s *chamberSection) says() string {
	var parts []string
	if t := s.c.WallThickness(); t > 0 && s.wall > 1.05*t {
		parts = append(parts, "walls drawn "+times(s.wall/t)+" times as thick")
	}
	if s.shortened > 1.05 {
		parts = append(parts, "the middle "+times(s.shortened)+" times shorter")
	}
	return strings.Join(parts, ", ")
}

// times is a factor in two digits.
func times(f float64) string {
	if f < 10 {
		return strconv.FormatFloat(f, 'f', 1, 64)
	}
	return strconv.FormatFloat(f, 'f', 0, 64)
}
