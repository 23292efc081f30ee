package words

import (
	"fmt"
	"math"

	"ullage/sim"
	"ullage/sim/chamber"
	"ullage/sim/report/page"
	"ullage/sim/rocket"
	"ullage/sim/study"
)

// Name is a rocket's name, fit for a terminal.
func Name(r *rocket.Rocket) string {
	if name := page.Printable(r.Name); name != "" {
		return name
	}
	return "A rocket without a name"
}

// Title names a rocket and its drive.
func Title(r *rocket.Rocket) string { return Name(r) + " on " + string(r.Power) + " power" }

// Plural is a count with its noun.
func Plural(n int, noun string) string {
	if n == 1 {
		return "1 " + noun
	}
	return fmt.Sprintf("%d %ss", n, noun)
}

// Bearing names the direction of a vector on the compass.
func Bearing(east, north float64) string {
	names := [...]string{"north", "north-east", "east", "south-east", "south", "south-west", "west", "north-west"}
	eighth := int(math.Round(math.Atan2(east, north)/(math.Pi/4))) + len(names)
	return names[eighth%len(names)]
}

// BurstBasis says how a burst pressure is known, and whether anybody stated that it counts.
func BurstBasis(b chamber.Basis, stated bool) string {
	switch {
	case b == chamber.FromBurst:
		return "measured"
	case b == chamber.FromProof:
		return "as proved"
	case !stated:
		return "estimated, not stated"
	}
	return "estimated"
}

// AtPad is a distance within which a landing is at the pad, m.
const AtPad = 0.5

// Drift says how far from the pad a flight lands and in which direction.
func (p Printer) Drift(l sim.Landing) string {
	d := math.Hypot(l.East, l.North)
	if d < AtPad {
		return p.Height(0)
	}
	return p.Height(d) + " " + Bearing(l.East, l.North)
}

// Ellipse says how large an ellipse of landings is and how it lies.
func (p Printer) Ellipse(l study.Ellipse) string {
	return fmt.Sprintf("within an ellipse of semi-axes %s and %s, the longer towards %.0f deg",
		p.Height(l.Major), p.Height(l.Minor), math.Mod(math.Round(l.Heading*180/math.Pi), 180))
}
