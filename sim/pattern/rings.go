package pattern

import (
	"math"

	"ullage/sim/rocket"
)

// rings adds the ring that centres the motor mount in the body.
func (s *Set) rings(r *rocket.Rocket) {
	m := r.MotorMount
	if m == nil {
		return
	}
	const what = "centring rings of the motor mount"
	var missing []string
	around := r.AroundMount()
	if around == 0 {
		missing = append(missing, "motor_mount.within")
	}
	if m.Wall == 0 {
		missing = append(missing, "motor_mount.wall")
	}
	if len(missing) > 0 {
		s.lack(what, missing...)
		return
	}
	hole := m.Diameter + 2*m.Wall
	if !(hole < around) {
		s.Lacks = append(s.Lacks, Lack{What: what, Why: "there is no room between the mount's tube and the one around it"})
		return
	}
	p := Pattern{Name: "ring-mount", Title: "centring ring of the motor mount", Count: m.Rings, Input: "motor_mount.diameter"}
	if p.Count == 0 {
		p.Count = rocket.UsualRings
	}
	p.circle(Cut, Point{}, around)
	p.circle(Hole, Point{}, hole)
	p.cross(Point{}, around/2+4*millimetre)
	p.size("outside", Point{X: around / 2, Y: -around / 2}, Point{X: -around / 2, Y: -around / 2}, 9*millimetre)
	p.size("hole", Point{X: -hole / 2, Y: around / 2}, Point{X: hole / 2, Y: around / 2}, 8*millimetre)
	p.length("mount inside", m.Diameter)
	p.length("wall of the mount", m.Wall)
	p.note("At the sizes of the tubes, without play: sand to fit. Openings for a retainer, a line or wires are not drawn. A ring ahead of a chamber's end carries no pressure.")
	if m.Within == 0 {
		p.note("The tube around the mount is taken as wide as the chamber (water.bore): give motor_mount.within if it is another.")
	}
	if m.Rings == 0 {
		p.note("How many is common practice, one at either end: none is given (motor_mount.rings).")
	}
	s.add(p)
}

// canopies adds a gore of each canopy.
func (s *Set) canopies(r *rocket.Rocket) {
	for i := range r.Canopies {
		k := &r.Canopies[i]
		if !(k.NominalArea() > 0) || math.IsInf(k.NominalArea(), 0) {
			s.lack("canopy "+k.Name, "canopy."+k.Name+".diameter")
			continue
		}
		s.add(canopyGore(k))
	}
}
