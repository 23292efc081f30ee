package sim

import "math"

// correct takes what the jet drags along once more over the step, by Simpson's rule
// on both ends and the middle of the dense output. The jet itself comes out of a stiff
// step to many digits, but not out of its stages, which costs volume, speed and
// impulse their order. The maxima look at the middle in any case.
func (r *run) correct() {
	hermite(r.stages.n, 0.5, r.h, &r.y, &r.f, &r.y1, &r.f1, &r.halfway)
	r.model.rates(r.t+r.h/2, &r.halfway, &r.dy, &r.middle)
	simpson := func(i int) float64 { return r.h / 6 * (r.f[i] + 4*r.dy[i] + r.f1[i]) }
	spurt := r.y1[jet] - r.y[jet] - simpson(jet) // what the rule would miss of the jet
	flow := &r.model.flow
	for i := range r.stages.n {
		if i == jet {
			continue
		}
		better := r.y[i] + simpson(i)
		switch i {
		case vEast, vNorth, vUp:
			better += r.stiff.push[i-vEast] * spurt
		case impulse:
			better += flow.Density() * flow.ThroatArea() * flow.Depth(r.y[store]) * spurt
		}
		// A correction that is not small beside the error allowed corrects nothing.
		if doubt := doubtful * math.Abs(better-r.y1[i]); !(doubt <= math.Abs(r.est[i])) {
			r.est[i] = doubt
		}
		r.y1[i] = better
	}
}

// doubtful is how much of a correction counts as error.
const doubtful = 0.2
