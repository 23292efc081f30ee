package rocketfile

import (
	"strconv"
	"strings"

	"ullage/sim/fault"
	"ullage/sim/quantity"
	"ullage/sim/rocket"
	"ullage/thrust"
)

const thrustRemedy = `write times that rise with their thrusts, such as 0 0, 0.05 80, 1.2 60, 1.3 0 in s and N, or in the file [["0 s", "0 N"], ["0.05 s", "80 N"]]`

// thrustCodec is a thrust curve point by point, in place of a file that holds one.
type thrustCodec struct{ rowsCodec }

func newThrustCodec() *thrustCodec {
	in := func(d quantity.Dimension, most float64) scale {
		return scale{Range: quantity.Range{Dimension: d, Unit: quantity.Usual(d), Min: 0, Max: most}}
	}
	const longest, strongest = 600, 1e6 // s, N
	c := &thrustCodec{rowsCodec{
		least: 2, most: thrust.MaxPoints, rising: true,
		notRows: "not 2 to 10000 points of thrust against time", notRow: "a point is not a pair", written: thrustRemedy,
		notRising: "the times do not rise", inOrder: "put the points in order of time, each once",
		notNumber: "a curve, not a number", instead: "turn motor.thrust_factor, which multiplies it",
		is: []scale{in(quantity.Time, longest), in(quantity.Force, strongest)},
		get: func(p place) (rows [][]float64) {
			if m := p.rocket.Motor; m != nil && m.Curve != nil {
				for _, at := range m.Curve.Points() {
					rows = append(rows, []float64{at.Time, at.Thrust})
				}
			}
			return rows
		},
		set: func(p place, rows [][]float64) bool {
			if p.rocket.Motor == nil {
				return false
			}
			curve, err := thrust.NewCurve(thrustPoints(rows))
			if err == nil {
				p.rocket.Motor.Curve = curve
			}
			return err == nil
		},
	}}
	return c
}

func thrustPoints(rows [][]float64) []thrust.Point {
	points := make([]thrust.Point, len(rows))
	for i, row := range rows {
		points[i] = thrust.Point{Time: row[0], Thrust: row[1]}
	}
	return points
}

// bind does nothing: a rocket holds the curve whole, not its numbers.
func (c *thrustCodec) bind(string) {}

func (c *thrustCodec) read(f *field, p place, n *node) *fault.Fault {
	n, bad := plainPairs(n)
	if bad == nil {
		bad = c.sound(n)
	}
	if bad != nil {
		return bad
	}
	return c.rowsCodec.read(f, p, n)
}

func (c *thrustCodec) encode(f *field, p place, n *node, s style) (string, *fault.Fault) {
	n, bad := plainPairs(n)
	if bad == nil {
		bad = c.sound(n)
	}
	if bad != nil {
		return "", bad
	}
	return c.rowsCodec.encode(f, p, n, s)
}

// sound tells what is wrong with the points together.
func (c *thrustCodec) sound(n *node) *fault.Fault {
	rows, _, bad := c.rows(n)
	if bad != nil {
		return bad
	}
	if _, err := thrust.NewCurve(thrustPoints(rows)); err != nil {
		first := fault.In(err)[0]
		return flaw(first.Problem, first.Remedy)
	}
	return nil
}

// plainPairs are the rows of what is typed or pasted as plain numbers, times in s and thrusts in N by turns, with blanks,
// commas or semicolons between them; lines of a table may have a heading, and remarks behind #.
func plainPairs(n *node) (*node, *fault.Fault) {
	if n.kind != stringNode {
		return n, nil
	}
	words := strings.FieldsFunc(n.text, func(r rune) bool { return strings.ContainsRune(" \t\r\n,;", r) })
	var numbers []string
	for _, w := range words {
		if _, err := strconv.ParseFloat(w, 64); err == nil {
			numbers = append(numbers, w)
		} else if len(numbers) > 0 && w != "s" && w != "N" {
			return nil, flaw(excerpt(w)+" in it is not a number", thrustRemedy)
		}
	}
	if len(numbers)%2 != 0 {
		return nil, flaw("not pairs of time and thrust", thrustRemedy)
	}
	whole := &node{kind: arrayNode}
	for i := 0; i < len(numbers); i += 2 {
		row := &node{kind: arrayNode, members: []*node{{kind: stringNode, text: numbers[i] + " s"}, {kind: stringNode, text: numbers[i+1] + " N"}}}
		whole.members = append(whole.members, row)
	}
	return whole, nil
}

// PlainCurve is a thrust curve as pairs of numbers, in s and N, as it is typed; empty without one.
func PlainCurve(r *rocket.Rocket) string {
	if r.Motor == nil || r.Motor.Curve == nil {
		return ""
	}
	var pairs []string
	for _, p := range r.Motor.Curve.Points() {
		pairs = append(pairs, strconv.FormatFloat(p.Time, 'g', -1, 64)+" "+strconv.FormatFloat(p.Thrust, 'g', -1, 64))
	}
	return strings.Join(pairs, ", ")
}

// ParseCurve reads points as they are typed, as far as they make a curve: nil where they do not yet.
func ParseCurve(text string) *thrust.Curve {
	n, bad := plainPairs(&node{kind: stringNode, text: text})
	if bad != nil {
		return nil
	}
	c := newThrustCodec()
	rows, _, bad := c.rows(n)
	if bad != nil {
		return nil
	}
	curve, err := thrust.NewCurve(thrustPoints(rows))
	if err != nil {
		return nil
	}
	return curve
}
