package airframe

import "math"

// subcriticalCylinder is the drag coefficient of a long circular cylinder across the
// flow below the critical Reynolds number, c_dc of NACA Report 1048.
const subcriticalCylinder = 1.2

// finiteCylinders is the drag coefficient of circular cylinders of finite length across
// the flow, by length over diameter: Wieselsberger's measurements as tabulated in
// F. M. White, Fluid Mechanics, table 7.3 (from memory, not checked against the page).
// Its ratio to the long cylinder's is the η of NACA Report 1048.
var finiteCylinders = [...]struct{ fineness, drag float64 }{
	{1, 0.64}, {2, 0.68}, {3, 0.72}, {5, 0.74}, {10, 0.82}, {20, 0.91}, {40, 0.98}, {1000, subcriticalCylinder},
}

// cylinderDrag is η·c_dc for a body of a fineness, linear in its logarithm between the
// entries and constant beyond them. That the last entry, "long", stands at 1000 is a
// choice of this program.
func cylinderDrag(fineness float64) float64 {
	t := finiteCylinders[:]
	if !(fineness > t[0].fineness) {
		return t[0].drag
	}
	for i := 1; i < len(t); i++ {
		a, b := t[i-1], t[i]
		if fineness <= b.fineness {
			return a.drag + (b.drag-a.drag)*math.Log(fineness/a.fineness)/math.Log(b.fineness/a.fineness)
		}
	}
	return t[len(t)-1].drag
}
