package rocket

import (
	"fmt"
	"math"

	"ullage/sim/chamber"
	"ullage/sim/fault"
	"ullage/sim/layup"
)

// agree is how far two statements of one size may be apart: that is measuring.
const agree = 0.02

// tubeShare is how much of the mass that a tube's description makes the whole rocket has at the least: a share of fibre is not known
// better than to a fifth of the weight (common sense, no source).
const tubeShare = 0.8

// Vessel is the chamber with what the rest of the rocket says of it filled in: its bore
// and, from its volume, its length; the throat as the hole through the retainer; the air
// or the gas, whichever is warmer, as the temperature of a wall of which nothing is said, and as the least of one
// that is given.
// Closures are as thick as the layers in them make, where these were counted. It is nil when the file does not describe a
// chamber.
func (r *Rocket) Vessel() *chamber.Chamber {
	c := r.vessel()
	if c != nil && (r.Layup.ForwardLayers > 0 || r.Layup.AftLayers > 0) {
		c.Forward, c.Aft = r.Layup.Closures(c)
	}
	return c
}

// vessel is that with the closures as they are described.
func (r *Rocket) vessel() *chamber.Chamber {
	if r.Chamber == nil {
		return nil
	}
	c := *r.Chamber
	w := r.Water
	if w == nil {
		return &c
	}
	if c.Diameter == 0 {
		c.Diameter = w.Bore
	}
	if c.Length == 0 && w.Bore > 0 {
		c.Length = math.Max(0, (w.Volume-c.Volume())/(math.Pi/4*c.Diameter*c.Diameter))
	}
	column := r.Site.Column()
	if least := math.Max(column.Air(0).Temperature, w.Temperature); c.Temperature == 0 {
		c.Temperature = least
	} else {
		warm(&c, least) // no wall is colder for long than its day, nor than what rests in it
	}
	if c.Thread != nil && c.Thread.Hole == 0 {
		thread := *c.Thread
		thread.Hole = w.Throat
		c.Thread = &thread
	}
	return &c
}

// warm is a wall at a temperature, K, if it is colder than that; a factor that was given is of the one it had.
func warm(c *chamber.Chamber, to float64) {
	if to <= c.Temperature {
		return
	}
	if c.HeatFactor != 0 {
		c.HeatFactor = c.HeatLeftAt(to)
	}
	c.Temperature = to
}

// Service is what the chamber meets on a flight: the pressure it is filled to, the liquid
// in it, and the air it warms up with when it is sealed.
func (r *Rocket) Service() chamber.Service {
	column := r.Site.Column()
	air := column.Air(0)
	s := chamber.Service{Ambient: air.Pressure, AirTemperature: air.Temperature, ProofFactor: r.Limits.InForce().ProofFactor}
	if w := r.Water; w != nil {
		s.Working, s.Fill, s.Volume, s.Gamma = w.Pressure, w.Fill, w.Volume, w.Gas.Gamma()
	}
	return s
}

// ChamberAt is the chamber worked out in that service. The rocket must have one.
func (r *Rocket) ChamberAt() chamber.Result { return r.Vessel().At(r.Service()) }

// ProvedFor is the working pressure that the proof on record is for, gauge, Pa: the proof,
// with what heat leaves of a strength that was proved cold, over the factor asked for. NaN
// without a proof on record.
func (r *Rocket) ProvedFor() float64 { return r.ProvedForAt(0) }

// ProvedForAt is the same of a wall that is warmer than the file says, at a temperature, K; colder ones are as the file says.
func (r *Rocket) ProvedForAt(temperature float64) float64 {
	if r.Chamber == nil || r.Chamber.Proof == 0 {
		return math.NaN()
	}
	c := r.Vessel()
	warm(c, temperature)
	return r.Chamber.Proof * c.HeatLeft() / r.Limits.InForce().ProofFactor
}

// ProofWanted is the least proof, made cold, that the pressure to be filled to asks for, gauge, Pa: the
// other way round. 0 without water, infinite where heat leaves nothing.
func (r *Rocket) ProofWanted() float64 {
	if r.Water == nil || !(r.Water.Pressure > 0) {
		return 0
	}
	left := 1.0
	if v := r.Vessel(); v != nil {
		left = v.HeatLeft()
	}
	return r.Limits.InForce().ProofFactor * r.Water.Pressure / left
}

// checkChamber checks the chamber by itself and against the rest of the rocket.
func (r *Rocket) checkChamber(c *checker) {
	if r.Recovery != nil {
		c.take(r.Recovery.Check())
	}
	c.take(r.Layup.Check())
	v := r.Vessel()
	if v == nil {
		return
	}
	if w := r.Water; w != nil {
		if !(w.Bore > 0 && w.Volume > 0) {
			return // told already, and the chamber hangs on it
		}
		if own := r.Chamber.Diameter; own > 0 && apart(own, w.Bore) {
			c.odds("chamber.diameter", "water.bore", fmt.Sprintf("differs from water.bore, %.4g mm", 1e3*w.Bore), "give one of the two, or both alike")
			return
		}
		if v.Length == 0 && r.Chamber.Length == 0 {
			c.odds("water.volume", "water.bore", fmt.Sprintf("is less than the closures alone hold, %.3g L", 1e3*v.Volume()), "check the volume, the bore and the closures' shapes")
			return
		}
	} else if v.Diameter == 0 || v.Length == 0 {
		key := "chamber.diameter"
		if v.Diameter != 0 {
			key = "chamber.length"
		}
		c.faults = append(c.faults, fault.Fault{Key: key, Problem: "is missing, and there is no [water] that tells it",
			Remedy: "give diameter and length of the chamber", Missing: true})
		return
	}
	before := len(c.faults)
	c.take(v.Check())
	c.take(r.Chamber.CheckStated())
	if len(c.faults) > before {
		return
	}
	if w, t := r.Water, r.Chamber.Thread; w != nil && t != nil && t.Seal > 0 && t.Seal < w.Throat {
		c.odds("chamber.thread.seal", "water.throat", fmt.Sprintf("is narrower than the throat, %.4g mm", 1e3*w.Throat), "give the diameter that the pressure acts on: at least the throat")
	}
	if w := r.Water; w != nil && r.Chamber.Length > 0 && apart(v.Volume(), w.Volume) {
		c.odds("chamber.length", "water.volume", fmt.Sprintf("makes a chamber of %.3g L with its closures, and water.volume says %.3g L", 1e3*v.Volume(), 1e3*w.Volume),
			"measure the volume by filling it; leave chamber.length out to have it follow")
	}
	if tube, body := v.TubeMass(), r.BodyMass(); body > 0 && body < tubeShare*tube {
		key, makes := "body.mass", "is"
		if r.Body.Mass == 0 {
			key, makes = "part", "make"
		}
		c.odds(key, "chamber.material", fmt.Sprintf("%s %.3g kg, less than the chamber's tube alone by its wall, %.3g kg", makes, body, tube),
			"weigh the rocket with its chamber in it; or check wall, plies and density")
	}
	if outside := v.Diameter + 2*v.WallThickness(); r.Body.Diameter > 0 && outside > r.Body.Diameter*(1+agree) {
		c.odds("chamber.diameter", "body.diameter", fmt.Sprintf("is %.4g mm outside with its wall of %.3g mm, more than body.diameter", 1e3*outside, 1e3*v.WallThickness()),
			fmt.Sprintf("body.diameter is the largest outside diameter, %.4g mm now; check bore, plies and that", 1e3*r.Body.Diameter))
	}
}

// apart tells whether two sizes differ by more than measuring does.
func apart(a, b float64) bool { return math.Abs(a-b) > agree*math.Max(a, b) }

// LayUp plans how the chamber is laid up. It is layup.ErrNoPlies of one that is not, or of whose plies nothing
// is said, and a fault.List of what keeps the chamber from an answer.
func (r *Rocket) LayUp() (layup.Plan, error) {
	if r.Chamber == nil {
		return layup.Plan{}, layup.ErrNoPlies
	}
	if err := r.Check(ForChamber).Err(); err != nil {
		return layup.Plan{}, err
	}
	return layup.Of(r.vessel(), r.Recovery, &r.Layup)
}
