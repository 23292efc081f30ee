package atmosphere

import (
	"math"
	"strconv"

	"ullage/sim/fault"
	"ullage/sim/quantity"
)

// Wind is a horizontal wind over the height above the ground. It grows by a power law,
// Speed·(h/Height)^Exponent; or it is known in layers, by a forecast or a pilot balloon:
// its components to the east and north are then linear in height between two layers, above
// the last they stay, and below the first they are the power law through it. It is plain
// data: Faults tells what is wrong. The zero Wind is a calm.
//
// An exponent of 1/7 for open grass and a reference height of 10 m are common
// practice; over the lowest 100 m they keep within 1 % of the logarithmic law.
type Wind struct {
	Speed    float64 // at Height, m/s; 0 beside layers
	Stated   bool    // somebody gave Speed: 0 is calm air, else nobody knows
	Height   float64 // above the ground, where Speed was measured, m; 0: the usual 10 m
	Exponent float64 // 0: the same wind at all heights
	From     float64 // the compass direction it blows from, clockwise from north, rad; 0 beside layers

	Layers []Layer // rising; none: the power law alone
	Factor float64 // on the speed of every layer; 0: as they are
	Veer   float64 // clockwise, of where every layer comes from, rad

	Turbulence float64 // standard deviation of the vertical gusts over the wind at 6.1 m; 0: none
	Eddies     uint64  // which of all turbulent winds blows; 0: their mean
}

// Layer is the wind at one height.
type Layer struct {
	Height float64 // above the ground, m
	Speed  float64 // m/s
	From   float64 // rad
}

// MaxLayers bounds the layers of a wind.
const MaxLayers = 64

// Known tells whether the wind is stated: any but the calm that nobody spoke of.
func (w *Wind) Known() bool { return w.Stated || w.Speed != 0 || len(w.Layers) > 0 }

// Surface is the wind near the ground that tables go by, m/s, and where it comes
// from, rad: at the reference height, without gusts, which checks count too. Of layers that are calm there the
// direction is that of the lowest.
func (w *Wind) Surface() (speed, from float64) {
	if len(w.Layers) == 0 {
		return w.Speed, w.From
	}
	var p Profile
	p.layer(w)
	h := w.Reference()
	east, north := p.east, p.north
	if i := p.Stretch(h); i > 0 {
		east, north = p.stretches[i].straight(h)
	} else {
		f := math.Pow(h*p.inverse, exponentRange.Hold(w.Exponent))
		east, north = east*f, north*f
	}
	if speed = math.Hypot(east, north); speed == 0 {
		return 0, turned(w.Layers[0].From, w.Veer)
	}
	if from = math.Atan2(-east, -north); from < 0 {
		from += 2 * math.Pi
	}
	return speed, from
}

// Blow makes the wind near the ground another one, as Surface tells it. Layers are scaled
// with it; those that are calm there, which nothing scales, give way to the power law, and in
// calm air there are none.
func (w *Wind) Blow(speed float64) {
	if len(w.Layers) == 0 {
		w.Speed = speed
		return
	}
	if was, from := w.Surface(); speed > 0 && was > 0 {
		w.Factor = w.Scale() * speed / was
	} else {
		w.Speed, w.From, w.Stated, w.Layers = speed, from, true, nil
	}
}

// Top is the highest layer as it blows; there must be one.
func (w *Wind) Top() Layer {
	l := w.Layers[len(w.Layers)-1]
	return Layer{l.Height, l.Speed * w.Scale(), turned(l.From, w.Veer)}
}

// Scale is the factor in force on the speed of every layer.
func (w *Wind) Scale() float64 {
	if w.Factor == 0 {
		return 1
	}
	return factorRange.Hold(w.Factor)
}

// Reference is the height at which the wind near the ground is told, m.
func (w *Wind) Reference() float64 {
	if h := heldIfGiven(&heightRange, w.Height); h != 0 {
		return h
	}
	return usualHeight
}

// turned is a direction turned clockwise, from 0 to 2π.
func turned(from, by float64) float64 {
	if from = math.Mod(from+by, 2*math.Pi); from < 0 {
		from += 2 * math.Pi
	}
	return from
}

const (
	usualHeight = 10.0 // m
	windCeiling = 1e5  // m; beyond, the wind no longer grows: there is no air to blow
)

// Faults lists everything that is wrong with the wind; nil when nothing is.
func (w Wind) Faults() fault.List {
	var faults fault.List
	w.Check(&faults)
	return faults
}

// Check adds them to a list; it allocates nothing where there is nothing wrong.
func (w *Wind) Check(to *fault.List) {
	quantity.Check(to, w, windFields)
	if len(w.Layers) == 0 {
		return
	}
	if w.Stated || w.Speed != 0 {
		to.Add("wind.speed", "is given beside layers", "take it out, or the layers; wind.factor makes all of them stronger or weaker")
	}
	if w.From != 0 {
		to.Add("wind.from", "is given beside layers", "take it out, or the layers; wind.veer turns all of them")
	}
	if len(w.Layers) > MaxLayers {
		to.Add("wind.layer", "too many layers", "give "+strconv.Itoa(MaxLayers)+" at most")
	}
	for i := range w.Layers {
		l := &w.Layers[i]
		if quantity.Check(to, l, layerFields, "wind.layer.", strconv.Itoa(i+1), ".") && i > 0 && l.Height <= w.Layers[i-1].Height {
			to.Add("wind.layer."+strconv.Itoa(i+1)+".height", "is not above the layer before it", "give the layers from the lowest up, each height once")
		}
	}
}
