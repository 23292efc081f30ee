package sim

import (
	"math"

	"ullage/thrust"
)

// jetFrame is a change of variables for the unsteady jet, whose speed q runs after what it
// tends to, Q, within a millisecond, and whose acceleration shakes the rocket meanwhile. A step is
// taken in
//
//	z = (q − Q)/(q + Q)   which dies away like an exponential from the moment the valve
//	                      opens: dq/dt ∝ Q² − q² is dz/dt = λz, λ ∝ −Q
//	u = v − (ρ A_n h/M) q e   the velocity of rocket and liquid column together
//	j = impulse − ρ A_n h q
//
// with Q, h and M functions of the liquid's volume, and e, the direction the rocket points in, frozen at the start
// of the step: the rates of u and j know nothing of dq/dt, and z is stiff alone. What q and q²
// still take of the surge has an integral while λ and Q hold,
//
//	∫(q − Q) dt = −(2Q/λ) ln(1 − z),   ∫(q² − Q²) dt = (4Q²/λ) z/(1 − z)
//
// and is taken off volume, u and j with λ and Q as the step begins. The change is exact whatever they
// are; what they leave out only stands in the rates.
type jetFrame struct {
	flow             *thrust.Expulsion
	ambient, gravity float64
	others           float64 // mass aboard besides the liquid
	held             bool
	axis             vector
	first, at        thrust.Tendency // as the step begins, and of the liquid looked at last

	volume, impulse, velocity float64 // factors of the surge's share in each; 0 when it is over
}

// calm is how near to its tendency a jet is when its surge is over.
const calm = 0.01

// set makes it that of a step which begins in a state.
func (j *jetFrame) set(m *model, y *state, f *forces) {
	j.flow, j.ambient, j.gravity = &m.flow, f.pressure, m.gravity*m.cosTilt
	j.others, j.held = f.mass-m.flow.Density()*y[store], m.held
	j.axis = m.pushLine(y)
	j.tend(y[store])
	j.first = j.at
}

// begin sets what is frozen over a step from the state it begins in.
func (j *jetFrame) begin(y *state) {
	j.at = j.first
	j.volume, j.impulse, j.velocity = 0, 0, 0
	if z := j.lag(y[jet]); z < -calm {
		length := -1 / j.at.Relaxation // Q/λ
		j.volume = 2 * j.flow.ThroatArea() * length * min(-1-z/calm, 1)
		j.impulse = 2 * j.volume * j.flow.Density() * j.flow.Ahead() * j.at.Speed
		if !j.held {
			j.velocity = j.impulse / (j.others + j.flow.Density()*y[store])
		}
	}
}

// tend takes the tendency of a liquid volume.
func (j *jetFrame) tend(liquid float64) {
	j.flow.Tend(liquid, j.ambient, j.others, j.gravity, j.held, &j.at)
}

// lag is z of a jet's speed.
func (j *jetFrame) lag(q float64) float64 { return (q - j.at.Speed) / (q + j.at.Speed) }

// enter turns a state's variables into the step's; the rates come first.
func (j *jetFrame) enter(y *state) {
	q, z := y[jet], j.lag(y[jet])
	surge := z / (1 - z)
	setVelocity(y, velocity(y).on(j.velocity*surge-j.at.Share*q, j.axis))
	y[impulse] += j.impulse*surge - j.at.Momentum*q
	if j.volume != 0 {
		y[store] += j.volume * math.Log1p(-z)
	}
	y[jet] = z
}

// enterRates turns the rates dy of a state into those of the step's variables.
func (j *jetFrame) enterRates(y, dy *state) {
	q, dq, flow := y[jet], dy[jet], dy[store]
	sum := q + j.at.Speed
	dz := 2 * (j.at.Speed*dq - q*j.at.SpeedSlope*flow) / (sum * sum)
	left := 2 * j.at.Speed / sum // 1 − z
	surge := dz / (left * left)
	push := j.at.Share*dq + j.at.ShareSlope*flow*q - j.velocity*surge
	setVelocity(dy, velocity(dy).on(-push, j.axis))
	dy[impulse] -= j.at.Momentum*dq + j.at.MomentumSlope*flow*q - j.impulse*surge
	dy[store] -= j.volume * dz / left
	dy[jet] = dz
}

// leave turns the step's variables back.
func (j *jetFrame) leave(y *state) {
	z := y[jet]
	if j.volume != 0 {
		y[store] -= j.volume * math.Log1p(-z)
	}
	j.tend(y[store])
	q := j.at.Speed * (1 + z) / (1 - z)
	surge := z / (1 - z)
	y[jet] = q
	setVelocity(y, velocity(y).on(j.at.Share*q-j.velocity*surge, j.axis))
	y[impulse] += j.at.Momentum*q - j.impulse*surge
}

// stiffness is λ = ∂(dz/dt)/∂z, 1/s.
func (j *jetFrame) stiffness(y, dy *state) float64 {
	q, slope := y[jet], j.at.SpeedSlope*dy[store]
	return j.at.Relaxation*q - slope/j.at.Speed - 2*(dy[jet]-q*slope/j.at.Speed)/(q+j.at.Speed)
}

// perUnit is dq/dz at a jet's speed.
func (j *jetFrame) perUnit(q float64) float64 {
	sum := q + j.at.Speed
	return sum * sum / (2 * j.at.Speed)
}
