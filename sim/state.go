package sim

// state is what the integrator carries; the indices say what stands where. A point mass without thrust uses the
// first coastStates of it, with thrust the first pointStates, a rigid body all: the rates of the others are
// zero then, and a step leaves them alone.
type state [states]float64

const (
	east     = iota         // position from the pad, m
	north                   //
	up                      // height above the pad
	vEast                   // velocity over the ground, m/s
	vNorth                  //
	vUp                     //
	airPath                 // distance through the air, m: what a canopy fills over
	impulse                 // ∫ thrust dt, N·s
	store                   // liquid volume aboard, m³, or gas mass aboard, kg, as the phase says
	jet                     // speed of the liquid's jet, m/s
	attitude                // quaternion from the body's axes to east, north, up: scalar first
	spin     = attitude + 4 // angular momentum in the body's axes, kg·m²/s
	states   = spin + 3

	pointStates = attitude
	coastStates = impulse // place and motion
)

// active is how many components of the state change in the phase.
func (m *model) active() int {
	switch {
	case m.rigid:
		return states
	case m.push == noPush:
		return coastStates
	}
	return pointStates
}
