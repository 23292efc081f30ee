package tui

import (
	"cmp"
	"fmt"
	"math"
	"regexp"
	"slices"
	"strconv"
	"strings"
	"sync"

	"ullage/sim/quantity"
	"ullage/sim/rocket"
	"ullage/sim/rocketfile"
	"ullage/thrust"
	"ullage/tui/draw"
	"ullage/tui/plot"
)

// The inputs that may be rows of numbers and are drawn.
const (
	thrustInput = "motor.thrust"
	dragInput   = "body.drag"
)

// curveLines draw the curve that is typed on one line, as far as it is one.
func (m *Model) curveLines(text string, w, rows int) []string {
	curve := rocketfile.ParseCurve(text)
	if curve == nil {
		return draw.Paragraph(m.theme, draw.Dim, "Time in s and thrust in N by turns, with blanks or commas between them: 0 0, 0.05 80, 1.2 60, 1.3 0. "+
			"Lines of a table may be pasted. The curve is drawn here as soon as there are two points; times rise, and at the end nothing pushes.", w)
	}
	var points [][]quantity.Quantity
	for _, p := range curve.Points() {
		points = append(points, []quantity.Quantity{{Value: p.Time}, {Value: p.Thrust}})
	}
	return m.thrustLines(points, nil, w, rows)
}

// thrustLines draw points of a curve, sound or not, and say what they come to beside what the file states of the motor.
func (m *Model) thrustLines(points [][]quantity.Quantity, was *thrust.Curve, w, h int) []string {
	theme := m.theme
	if len(points) == 0 {
		return draw.Paragraph(theme, draw.Dim, "Each row is a time after ignition and the thrust then; the curve is drawn here. Between points it is linear; times rise, and at the end nothing pushes.", w)
	}
	force := m.units.Unit(draw.Unit("N"))
	raw := make([]thrust.Point, len(points))
	for i, p := range points {
		raw[i] = thrust.Point{Time: p[0].Value, Thrust: p[1].Value}
	}
	var says []string
	curve, err := thrust.NewCurve(raw)
	mot := m.file().Described().Motor
	if err != nil {
		says = draw.Paragraph(theme, draw.Bad, "These points are no curve yet: see the rows marked "+oddsSign+". They are drawn in order of time.", w)
		slices.SortStableFunc(raw, func(a, b thrust.Point) int { return cmp.Compare(a.Time, b.Time) })
	} else {
		raw = curve.Points()
		says = m.curveFacts(curve, mot, was, w)
	}
	var x, y []float64
	for _, p := range raw {
		x, y = append(x, p.Time), append(y, p.Thrust)
	}
	var other *plot.Series
	if was != nil && was != curve {
		other = &plot.Series{Ink: plot.Kept, Style: plot.Dotted}
		for _, p := range was.Points() {
			other.X, other.Y = append(other.X, p.Time), append(other.Y, p.Thrust)
		}
		other.Y = draw.InUnit(other.Y, force)
	}
	room := h - len(says)
	if room < 6 {
		return says[:min(len(says), h)]
	}
	return append(m.pointsChart(x, draw.InUnit(y, force), other, chartNames{"time", "s", "thrust", force.Name}, w, min(room, max(20, w/4))), says...)
}

// chartNames are what the axes of a chart are called.
type chartNames struct{ x, xUnit, y, yUnit string }

// pointsChart draws points, and others dotted.
func (m *Model) pointsChart(x, y []float64, other *plot.Series, names chartNames, w, h int) []string {
	chart := plot.Chart{Y: plot.Axis{Title: names.y, Unit: names.yUnit, Zero: true}}
	if other != nil {
		chart.Series = append(chart.Series, *other)
	}
	chart.Series = append(chart.Series, plot.Series{X: x, Y: y, Ink: plot.TraceA})
	stack := plot.Stack{Charset: m.theme.Charset, X: plot.Axis{Title: names.x, Unit: names.xUnit}, Charts: []plot.Chart{chart}}
	var grid plot.Grid
	return draw.PaintStack(m.theme, &grid, &stack, w, h)
}

// The speeds at which propellants leave a motor, impulse over propellant, m/s: pressed black powder some 700, composites
// 1800 to 2400 (typical, from memory). Beyond these two it is likely that a unit is mistaken.
const (
	slowestJet = 400.0
	fastestJet = 2800.0
)

// curveFacts say what a curve comes to, beside what the file states of the motor and what the curve was.
func (m *Model) curveFacts(c *thrust.Curve, mot *rocket.Motor, was *thrust.Curve, w int) []string {
	theme := m.theme
	force, seconds := m.units.Unit(draw.Unit("N")), draw.Unit("s")
	text := func(v float64, u quantity.Unit) string { return quantity.Format(v, u, 3) }
	impulse := func(v float64) string {
		out := text(v, draw.Unit("N*s"))
		if class := thrust.Class(v); class != "" {
			out += ", class " + class
		}
		return out
	}
	peakAt := 0.0
	for _, p := range c.Points() {
		if p.Thrust == c.Peak() {
			peakAt = p.Time
			break
		}
	}
	lines := draw.Paragraph(theme, draw.Plain, fmt.Sprintf("%s; burns %s, %s on average, %s at most, at %s", impulse(c.Impulse()),
		text(c.BurnTime(), seconds), text(c.Average(), force), text(c.Peak(), force), draw.Exact(peakAt, seconds, 5)), w)
	add := func(r draw.Role, says string) { lines = append(lines, draw.Paragraph(theme, r, theme.Say(says), w)...) }
	if end := c.EndsAbove(); end > 0 {
		add(draw.Caution, "The last point still has "+text(end, force)+": a whole curve ends at 0.")
	}
	if mot != nil {
		if k := mot.ThrustFactor(); k != 1 {
			add(draw.Plain, fmt.Sprintf("With thrust_factor %s: %s, %s on average", quantity.Exact(k, quantity.Usual(quantity.Number)), impulse(k*c.Impulse()), text(k*c.Average(), force)))
		}
		if mot.Propellant > 0 {
			jet := mot.ThrustFactor() * c.Impulse() / mot.Propellant
			says, role := fmt.Sprintf("Over the %s of propellant: %s", text(mot.Propellant, m.units.Unit(draw.Unit("g"))), text(jet, m.units.Unit(draw.Unit("m/s")))), draw.Plain
			if jet < slowestJet || jet > fastestJet {
				says, role = says+"; propellants have 700 to 2400 m/s (typical, from memory): look at units, mass and points", draw.Caution
			}
			add(role, says)
		}
		if class, average, ok := designated(mot.Name); ok {
			says, role := fmt.Sprintf("Its name says class %s, %s on average", class, text(average, force)), draw.Plain
			k := mot.ThrustFactor()
			if class != thrust.Class(k*c.Impulse()) || math.Abs(k*c.Average()-average) > 0.2*average {
				says, role = says+": the points do not", draw.Caution
			}
			add(role, says)
		}
	}
	if was != nil && was != c && (was.Impulse() != c.Impulse() || was.BurnTime() != c.BurnTime()) {
		add(draw.Dim, fmt.Sprintf("Dotted, as it was: %s in %s", impulse(was.Impulse()), text(was.BurnTime(), seconds)))
	}
	return lines
}

// designation is the class and average thrust, N, as makers write them (NFPA 1125).
var designation = sync.OnceValue(func() *regexp.Regexp {
	return regexp.MustCompile(`(?:^|[ /(])([A-O])(\d{1,4})(?:[-A-Z]|$|[ )/])`)
})

// designated is what the name of a motor states of it.
func designated(name string) (class string, average float64, ok bool) {
	found := designation().FindStringSubmatch(name)
	if found == nil {
		return "", 0, false
	}
	average, err := strconv.ParseFloat(found[2], 64)
	return strings.ToUpper(found[1]), average, err == nil && average > 0
}
