package tui

import (
	"fmt"

	"ullage/sim/quantity"
	"ullage/sim/rocketfile"
	"ullage/tui/draw"
	"ullage/tui/plot"
)

// thrustInput is the curve of a motor point by point, which is typed as pairs of numbers.
const thrustInput = "motor.thrust"

// typedText is the value of a row as it is typed.
func (m *Model) typedText(d *field) string {
	if d.Name == thrustInput {
		return rocketfile.PlainCurve(m.file().Described())
	}
	return d.value()
}

// curveLines draw the curve that is typed, as far as it is one.
func (m *Model) curveLines(text string, w, rows int) []string {
	theme := m.theme
	curve := rocketfile.ParseCurve(text)
	if curve == nil || rows < 6 {
		return draw.Paragraph(theme, draw.Dim, "Time in s and thrust in N by turns, with blanks or commas between them: 0 0, 0.05 80, 1.2 60, 1.3 0. "+
			"The curve is drawn here as soon as there are two points; times rise, and at the end nothing pushes.", w)
	}
	force := m.units.Unit(draw.Unit("N"))
	var x, y []float64
	for _, p := range curve.Points() {
		x, y = append(x, p.Time), append(y, p.Thrust)
	}
	stack := plot.Stack{Charset: theme.Charset, X: plot.Axis{Title: "time", Unit: "s"},
		Charts: []plot.Chart{{Y: plot.Axis{Title: "thrust", Unit: force.Name, Zero: true}, Series: []plot.Series{{X: x, Y: draw.InUnit(y, force), Ink: plot.TraceA}}}}}
	var grid plot.Grid
	lines := draw.PaintStack(theme, &grid, &stack, w, rows-2)
	text = fmt.Sprintf("%d points, %s in %s, %s on average, %s at most", curve.Len(),
		quantity.Format(curve.Impulse(), draw.Unit("N*s"), 3), quantity.Format(curve.BurnTime(), draw.Unit("s"), 3),
		quantity.Format(curve.Average(), force, 3), quantity.Format(curve.Peak(), force, 3))
	return append(lines, draw.Paragraph(theme, draw.Dim, text, w)...)
}
