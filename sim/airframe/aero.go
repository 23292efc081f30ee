package airframe

import (
	"math"

	"ullage/sim/fault"
)

// MachLimit is how far the equations for pressure hold: past it Moments, Components and
// Drag keep the compressibility of this Mach number. What flies faster needs a measured
// drag table, and a stability that is known from elsewhere.
const MachLimit = 0.8

// Component is one part's share of the normal force at a small angle of attack.
type Component struct {
	Name    string  // as inputs are named: "nose", "section.NAME", "fins.NAME"
	CNAlpha float64 // slope of the normal-force coefficient on π/4·Diameter², per rad; below 0 for a boat-tail
	At      float64 // where it acts, from the tip of the nose, m
}

// Aero is a shape made ready: nothing is worked out in flight that could be before it.
// It does not change and may be shared.
type Aero struct {
	body       []Component // nose and transitions, whatever the Mach number
	m0, m1, m2 float64     // their moments
	fins       []finLift

	reference              float64 // π/4·Diameter²
	plan, planAt, planDrag float64
	rollDrive, rollDamp    float64
	resistance             resistance
}

// Aero works out all of a shape's aerodynamics that no flight changes. The shape must
// have passed Check; numbers of one that has not mean nothing.
func (s *Shape) Aero() *Aero {
	a := &Aero{resistance: newResistance(s), reference: math.Pi / 4 * s.Diameter * s.Diameter}
	nose := s.Forebody()
	a.addBody(Component{"nose", slender(0, nose.Diameter, s.Diameter), nose.pressureCentre()})
	moment := 0.
	a.plan, moment = nose.Plan()
	moment *= a.plan
	for f := range s.trunk {
		if f.fore != f.aft {
			a.addBody(Component{f.name, slender(f.fore, f.aft, s.Diameter), f.pressureCentre()})
		}
		area, centroid := f.plan()
		a.plan += area
		moment += area * centroid
	}
	if a.plan > 0 {
		a.planAt = moment / a.plan
	}
	a.planDrag = cylinderDrag(s.Length / s.Diameter)
	for i := range s.Fins {
		f := &s.Fins[i]
		radius := s.Radius(f.Position + f.Root/2)
		a.fins = append(a.fins, newFinLift(f, "fins."+fault.Entry(f.Name, i), radius, s.Diameter))
		drive, damp := f.roll(radius)
		a.rollDrive += drive
		a.rollDamp += damp
	}
	return a
}

func (a *Aero) addBody(c Component) {
	a.body = append(a.body, c)
	a.m0 += c.CNAlpha
	a.m1 += c.CNAlpha * c.At
	a.m2 += c.CNAlpha * c.At * c.At
}

// slender is 2(A_aft − A_fore)/A, the normal-force slope of a body of revolution whose
// cross-section grows from one diameter to another (Barrowman 1967, from slender-body
// theory).
func slender(fore, aft, reference float64) float64 {
	return 2 * (aft*aft - fore*fore) / (reference * reference)
}

// pressureCentre of a conical transition is Barrowman's x₀ + (L/3)[1 + (1 − d₁/d₂)/(1 −
// (d₁/d₂)²)], with the fraction cancelled so that it holds for equal diameters too.
func (f frustum) pressureCentre() float64 {
	return f.start + f.length/3*(1+f.aft/(f.fore+f.aft))
}

// held is the Mach number up to which a flow's compressibility is followed.
func held(mach float64) float64 {
	if !(mach > 0) {
		return 0
	}
	return min(mach, MachLimit)
}

// Components lists who makes the normal force at a Mach number, from the nose aft and
// the fins last: nose, transitions, and each fin set with the body's interference. Tubes
// make none.
func (a *Aero) Components(mach float64) []Component {
	all := make([]Component, 0, len(a.body)+len(a.fins))
	all = append(all, a.body...)
	beta2 := 1 - held(mach)*held(mach)
	for i := range a.fins {
		f := &a.fins[i]
		all = append(all, Component{f.name, f.slope(beta2), f.at})
	}
	return all
}

// Moments are ΣC, ΣC·x and ΣC·x² of the components at a Mach number, C per rad on
// π/4·Diameter² and x in m from the tip of the nose. The centre of pressure is m1/m0;
// damping in pitch about a point is m2 − 2x·m1 + x²·m0, the normal force of each
// component in the flow that the rotation makes there. It allocates nothing.
func (a *Aero) Moments(mach float64) (m0, m1, m2 float64) {
	return a.MomentsBySquare(held(mach) * held(mach))
}

// MomentsBySquare is Moments by the square of the Mach number, which one who flies has without a root.
func (a *Aero) MomentsBySquare(mach2 float64) (m0, m1, m2 float64) {
	m0, m1, m2 = a.m0, a.m1, a.m2
	if mach2 > MachLimit*MachLimit {
		mach2 = MachLimit * MachLimit
	}
	beta2 := 1 - mach2
	for i := range a.fins {
		f := &a.fins[i]
		c := f.slope(beta2)
		m0 += c
		m1 += c * f.at
		m2 += c * f.at * f.at
	}
	return m0, m1, m2
}

// Roll gives what turns the rocket about its axis and what stops it, by strip theory
// (Barrowman 1967): moment = ½ρv²·drive − ½ρv·damp·p at the roll rate p, drive
// in m³ and damp in m⁴, so that it settles at p = v·drive/damp = V·δ·J1/J2 for one set.
func (a *Aero) Roll() (drive, damp float64) { return a.rollDrive, a.rollDamp }

// Crossflow is the body's side view, m², its centroid from the tip of the nose, m, and
// the drag coefficient of the flow across it, for a force ½ρ(v sin α)²·area·coefficient
// (Allen and Perkins, NACA Report 1048, from memory). Fins are not in it.
func (a *Aero) Crossflow() (area, centroid, coefficient float64) {
	return a.plan, a.planAt, a.planDrag
}

// PressureCentre is where normal force and cross-flow act together at a total angle of attack,
// rad, and a Mach number, m from the tip of the nose (Allen and Perkins, NACA Report 1048, from memory): the components'
// centre of pressure at small angles, and the farther towards the middle of the side view the larger
// the angle. Against wind from behind the beam it stays that of broadside.
//
//	x = (ΣC·x + k·sin α·x_plan)/(ΣC + k·sin α),  k = A_plan·c/A
func (a *Aero) PressureCentre(mach, attack float64) float64 {
	m0, m1, _ := a.Moments(mach)
	across := a.plan * a.planDrag / a.reference * math.Sin(min(math.Abs(attack), math.Pi/2))
	return (m1 + across*a.planAt) / (m0 + across)
}
