package words

import (
	"math"

	"ullage/sim/gates"
	"ullage/sim/rocket"
)

// Model says which equations fly a rocket: the same words on every face.
func Model(r *rocket.Rocket) string {
	switch {
	case r.Rigid():
		return "a rigid body up to the first canopy"
	case r.Balanced():
		return "a point mass, though its shape is known"
	}
	return "a point mass"
}

// LeftOut says what the model of a flight does not have, and how far to trust it. The
// figures are those of Barrio-Perotti et al., Eur. J. Phys. 31 (2010) 1131, for 6 %, and
// of works after it for 10 %, from memory. Gas breaking through the liquid: Watanabe
// et al., J. JSASS 51 (2003) 314, from memory.
func LeftOut(r *rocket.Rocket) string {
	text := "A" + Model(r)[1:]
	if r.Rigid() {
		text += ", a point mass below it; subsonic, slender, stiff"
	} else {
		text += ": it turns into the wind at once and does not wobble"
	}
	if r.Power == rocket.MotorPower {
		text += "; a motor's thrust varies from one to the next"
	} else {
		text += "; gas breaking through before the liquid is out is not modelled"
	}
	if text += "."; r.Power == rocket.WaterPower {
		text += " Published models met measured heights within 6 to 10 % (Barrio-Perotti et al. 2010, water)."
	}
	return text
}

// Beyond says that a water flight's pressure is beyond what its chamber is proved for, with
// the figures; empty where it is not, and on a motor.
func (p Printer) Beyond(r *rocket.Rocket) string {
	at, there := gates.PressureOf(r)
	if !there || !at.Beyond() {
		return ""
	}
	text := p.Given(at.Working, "bar") + ", and no proof of the chamber is on record"
	if !math.IsNaN(at.ProvedFor) {
		text = p.Given(at.Working, "bar") + " is beyond the " + p.AtMost(at.ProvedFor) + " that the chamber is proved for"
	}
	burst := "burst " + gates.WordUnknown
	if at.Burst > 0 {
		burst = "burst, " + BurstBasis(at.Basis, at.Stated) + ", " + p.AtMost(at.Burst)
	}
	return text + "; " + burst + ": " + gates.WordNoGo + "."
}

// Pressures are what the chamber is filled to, what it is proved for and at which it bursts, short.
func (p Printer) Pressures(at gates.Pressure) string {
	proved := "no proof"
	if at.ProvedFor > 0 {
		proved = "proved for " + p.AtMost(at.ProvedFor)
	}
	burst := "burst " + gates.WordUnknown
	if at.Burst > 0 {
		burst = BurstBasis(at.Basis, true) + " burst " + p.AtMost(at.Burst)
	}
	return p.Given(at.Working, "bar") + ", " + proved + ", " + burst
}

// ProvedFor says what pressure the chamber is proved for.
func (p Printer) ProvedFor(r *rocket.Rocket) string {
	if v := r.ProvedFor(); !math.IsNaN(v) {
		return "the chamber is proved for " + p.AtMost(v)
	}
	return "no proof of the chamber is on record"
}

// CommonCaution goes with every flight.
const CommonCaution = "These are estimates. Local law, the range officer and qualified people decide " +
	"whether and how this flies."

// MotorCaution goes with everything that flies on a motor.
const MotorCaution = "Motors are flown under the law and the certification of the place; everyone keeps the clear distance."

// ShortCautions are the caution of a drive in one line, and in a shorter one.
func ShortCautions(p rocket.Power) []string {
	if p == rocket.MotorPower {
		return []string{"Estimates: local law and the range officer decide.", "Local law and the range officer decide."}
	}
	return []string{"Estimates; pressure kills. Local law and the range officer decide.", "Pressure kills. Law and range officer decide."}
}

// Cautions are the cautions that go with results of a drive.
func Cautions(p rocket.Power) []string {
	if p == rocket.MotorPower {
		return []string{CommonCaution, MotorCaution}
	}
	return []string{
		CommonCaution,
		"A pressurised chamber can burst and kill: prove it with water first, fill it from a distance, " +
			"and never stand by it under pressure.",
	}
}
