package sim

import "ullage/thrust"

// jetFrame is a change of variables for the unsteady jet, whose speed q runs after what it
// tends to, Q, within a millisecond, and whose acceleration shakes the rocket meanwhile. A step is
// taken in
//
//	z = (q − Q)/(q + Q)   which dies away like an exponential from the moment the valve
//	                      opens: dq/dt ∝ Q² − q² is dz/dt ∝ −Q z
//	u = v − (ρ A_n h/M) q e   the velocity of rocket and liquid column together
//	j = impulse − ρ A_n h q
//
// with Q, h and M functions of the liquid's volume, and e, the direction the rocket points in, frozen at the start
// of the step: the rates of u and j know nothing of dq/dt, and z is stiff alone. The change is exact
// whatever Q is; what it leaves out only stands in the rate of z.
type jetFrame struct {
	flow             *thrust.Expulsion
	ambient, gravity float64
	others           float64 // mass aboard besides the liquid
	held             bool
	axis             [3]float64
	at               thrust.Tendency
}

// tend takes the tendency of a liquid volume.
func (j *jetFrame) tend(liquid float64) {
	j.at = j.flow.Tendency(liquid, j.ambient, j.others, j.gravity, j.held)
}

// enter turns a state's variables into the step's; the rates come first.
func (j *jetFrame) enter(y *state) {
	q := y[jet]
	for i, e := range j.axis {
		y[vEast+i] -= j.at.Share * q * e
	}
	y[impulse] -= j.at.Momentum * q
	y[jet] = (q - j.at.Speed) / (q + j.at.Speed)
}

// enterRates turns the rates dy of a state into those of the step's variables.
func (j *jetFrame) enterRates(y, dy *state) {
	q, dq, flow := y[jet], dy[jet], dy[store]
	push := j.at.Share*dq + j.at.ShareSlope*flow*q
	for i, e := range j.axis {
		dy[vEast+i] -= push * e
	}
	dy[impulse] -= j.at.Momentum*dq + j.at.MomentumSlope*flow*q
	sum := q + j.at.Speed
	dy[jet] = 2 * (j.at.Speed*dq - q*j.at.SpeedSlope*flow) / (sum * sum)
}

// leave turns the step's variables back.
func (j *jetFrame) leave(y *state) {
	q := j.at.Speed * (1 + y[jet]) / (1 - y[jet])
	y[jet] = q
	for i, e := range j.axis {
		y[vEast+i] += j.at.Share * q * e
	}
	y[impulse] += j.at.Momentum * q
}

// stiffness is ∂(dz/dt)/∂z, 1/s: −Relaxation·Q all along the surge.
func (j *jetFrame) stiffness(y, dy *state) float64 {
	q, slope := y[jet], j.at.SpeedSlope*dy[store]
	return j.at.Relaxation*q - slope/j.at.Speed - 2*(dy[jet]-q*slope/j.at.Speed)/(q+j.at.Speed)
}

// perUnit is dq/dz at a jet's speed.
func (j *jetFrame) perUnit(q float64) float64 {
	sum := q + j.at.Speed
	return sum * sum / (2 * j.at.Speed)
}
