package sim

import (
	"cmp"
	"math"

	"ullage/sim/airframe"

	"ullage/sim/rocket"
)

// massModel is how mass lies along the rocket: what never leaves, and where the rest
// stands. Sums count from the tip of the nose, so that putting together is adding.
type massModel struct {
	dryMass, dryFirst, dryPitch, dryRoll float64 // Σm, Σm·x, Σ(I + m·x²), ΣI of all that never leaves

	exit    float64 // nozzle's exit from the tip of the nose, m: where the thrust acts
	bore2   float64 // (bore/2)²/4: a liquid slug's own share
	area    float64 // of the bore, m²
	density float64 // of the liquid
	gasFrom float64 // fore end of the chamber

	grainMiddle, grainPitch, grainRoll float64 // propellant: its middle, and its own inertias per kg
}

// newLoading puts the drive that flies into the airframe.
func newMassModel(r *rocket.Rocket) massModel {
	var l massModel
	s := r.Shape
	l.add(r.DryBody())
	if r.Power == rocket.WaterPower {
		w := r.Water
		l.exit = cmp.Or(w.Nozzle, s.Length)
		l.area = math.Pi / 4 * w.Bore * w.Bore
		l.bore2 = w.Bore * w.Bore / 16
		l.density = w.Density
		l.gasFrom = l.exit - w.Volume/l.area
		l.add(airframe.Lump{Mass: w.Fittings, At: cmp.Or(w.FittingsAt, l.exit)})
		return l
	}
	m := r.Motor
	l.exit = cmp.Or(m.Position, s.Length)
	fore := l.exit - m.Length
	l.grainMiddle = (fore + l.exit) / 2
	grain := airframe.Cylinder(1, fore, l.exit, m.Diameter/2)
	l.grainPitch, l.grainRoll = grain.Pitch, grain.Roll
	l.add(airframe.Shell(m.Case, fore, l.exit, m.Diameter/2))
	l.add(airframe.Lump{Mass: m.Fittings, At: cmp.Or(m.FittingsAt, l.grainMiddle)})
	return l
}

func (l *massModel) add(p airframe.Lump) {
	l.dryMass += p.Mass
	l.dryFirst += p.Mass * p.At
	l.dryPitch += p.Pitch + p.Mass*p.At*p.At
	l.dryRoll += p.Roll
}

// massProperties are those of the rocket with what is aboard.
type massProperties struct {
	balance float64 // from the tip of the nose, m
	pitch   float64 // inertia about the balance point, across, kg·m²
	roll    float64 // along the axis
}

// with puts liquid (m³), gas (kg) and propellant (kg) aboard: the liquid a slug
// on the nozzle that does not roll with its walls, the gas spread over the chamber,
// the propellant a cylinder.
func (l *massModel) with(liquid, gas, propellant float64) massProperties {
	mass, first, second, roll := l.dryMass, l.dryFirst, l.dryPitch, l.dryRoll
	if liquid > 0 {
		m := l.density * liquid
		h := liquid / l.area
		x := l.exit - h/2
		mass += m
		first += m * x
		second += m * (x*x + h*h/12 + l.bore2)
	}
	if gas > 0 {
		length := l.exit - l.gasFrom
		x := (l.exit + l.gasFrom) / 2
		mass += gas
		first += gas * x
		second += gas * (x*x + length*length/12 + l.bore2)
	}
	if propellant > 0 {
		mass += propellant
		first += propellant * l.grainMiddle
		second += propellant * (l.grainMiddle*l.grainMiddle + l.grainPitch)
		roll += propellant * l.grainRoll
	}
	at := first / mass
	// A body without width or length would spin for nothing: never zero.
	return massProperties{at, max(second-mass*at*at, 1e-12), max(roll, 1e-12)}
}
