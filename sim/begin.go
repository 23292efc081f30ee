package sim

import (
	"math"

	"ullage/sim/airframe"
	"ullage/sim/rocket"
)

// begin puts the rocket on the pad and opens the flight.
func (r *run) begin() {
	m := &r.model
	res := &r.flight.Results
	m.guided, m.held = true, true
	r.pack()
	r.countFrom(rocket.Launch)
	if len(r.rocket.Canopies) == 0 {
		r.warn(Warning{Code: NoCanopy})
	}
	r.beginShape()
	if r.rocket.Power == rocket.MotorPower {
		if v := m.factor * m.curve.EndsAbove(); v > 0 {
			r.warn(Warning{Code: CurveEndsAbove, Value: v})
		}
		m.push = motorBurn
		m.loadSegment(0)
	} else {
		res.WaterFlew = true
		r.y[store] = m.liquid0
		r.beginWater()
	}
	r.enter()
	res.LiftOffMass = r.now.mass
	r.beginStability()
	if r.now.lift > 0 && !r.options.Held {
		r.letGo()
	} else if m.push == tubePush || (m.push == noPush && r.nothingToCome()) {
		r.rest()
	}
}

// pack packs the canopies: none is due but those whose moment is known beforehand.
func (r *run) pack() {
	for i := range r.rocket.Canopies {
		r.flight.Canopies = append(r.flight.Canopies, CanopyResult{Name: r.rocket.Canopies[i].Name})
		r.pending |= 1 << i
		r.due[i] = math.Inf(1)
		if _, wait, ok := r.rocket.Waits(i); ok && wait < 0 && !math.IsNaN(r.knownTop) {
			r.due[i] = max(0, r.knownTop+wait)
		}
	}
}

// beginShape warns of a shape whose drag is not known, where no table stands for it.
func (r *run) beginShape() {
	if !r.rocket.ShapeDrags() {
		return
	}
	if x := r.made.steep.nose; x > airframe.SteepJunction {
		r.warn(Warning{Code: SteepNose, Value: x, Limit: airframe.SteepJunction})
	}
	if x := r.made.steep.taper; x > airframe.SteepTaper {
		r.warn(Warning{Code: SteepTaper, Value: x, Limit: airframe.SteepTaper})
	}
}

// beginWater chooses what pushes first.
func (r *run) beginWater() {
	m, w := &r.model, r.rocket.Water
	if w.Tube == nil {
		r.beginLiquid()
		return
	}
	m.push = tubePush
	if gap := w.Tube.Gap(w); gap > rocket.LeakingGap {
		r.warn(Warning{Code: TubeLeaks, Value: gap, Limit: rocket.LeakingGap})
	}
	if depth := w.Tube.Depth(w); depth >= w.Tube.Length {
		r.warn(Warning{Code: TubeTipWet, Value: depth, Limit: w.Tube.Length})
	}
}
