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

// newThrustCodec is a thrust curve point by point, in place of a file that holds one. A rocket holds the curve whole, not
// its numbers.
func newThrustCodec() *rowsCodec {
	in := func(d quantity.Dimension, most float64) scale {
		return scale{Range: quantity.Range{Dimension: d, Unit: quantity.Usual(d), Min: 0, Max: most}}
	}
	return &rowsCodec{
		labels: []string{"time", "thrust"}, most: thrust.MaxPoints, written: thrustRemedy,
		notRows: "not 2 to 10000 points of thrust against time", notRow: "a point is not a pair",
		notNumber: "a curve, not a number", instead: "turn motor.thrust_factor, which multiplies it",
		is: []scale{in(quantity.Time, thrust.MaxTime), in(quantity.Force, thrust.MaxThrust)},
		judge: func(rows [][]float64) fault.List {
			_, err := thrust.NewCurve(thrustPoints(rows))
			return fault.In(err)
		},
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
	}
}

func thrustPoints(rows [][]float64) []thrust.Point {
	points := make([]thrust.Point, len(rows))
	for i, row := range rows {
		points[i] = thrust.Point{Time: row[0], Thrust: row[1]}
	}
	return points
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

// ParseCurve reads points as they are typed, numbers without a unit in s and N, as far as they make a curve: nil where
// they do not yet.
func ParseCurve(text string) *thrust.Curve {
	found, bad := newThrustCodec().pasted(nil).read(text)
	if bad != nil {
		return nil
	}
	points := make([]thrust.Point, len(found))
	for i, row := range found {
		points[i] = thrust.Point{Time: row[0].Value, Thrust: row[1].Value}
	}
	curve, err := thrust.NewCurve(points)
	if err != nil {
		return nil
	}
	return curve
}
