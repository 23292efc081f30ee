package rocketfile

import (
	"math"
	"strconv"

	"ullage/atmosphere"
	"ullage/sim/quantity"
	"ullage/sim/rocket"
)

// windSpeed is a number of which a rocket knows whether anybody stated it, 0 too.
func windSpeed(key, label string, step, coarse float64, help string) *field {
	return &field{key: key, label: label, help: help, codec: &numberCodec{step: step, coarse: coarse, in: windCell{}}}
}

// windCell is where a rocket holds its wind.
type windCell struct{}

func (windCell) get(p place) (v float64, given, there bool) {
	return p.rocket.Wind.Speed, true, true // what is not stated flies as calm
}

func (windCell) set(p place, v float64) bool {
	p.rocket.Wind.Speed, p.rocket.Wind.Stated = v, true
	return true
}

func windSection() *section {
	return &section{
		path: "wind", group: "wind", count: one,
		fields: []*field{
			windSpeed("speed", "speed", 0.5, 2,
				"Of the wind at its reference height; 0 m/s says that the air is calm, no value that nobody knows.").onlyFor(unlayered),
			num("height", "height", 1, 10,
				"Above the ground, where the wind was measured; of layers, where checks look at it.").byDefault("10 m"),
			num("exponent", "exponent", 0.01, 0.05,
				"Of the wind's growth with height, of layers below the first; open grass has 1/7 (common practice).").byDefault("0.142857142857142857"),
			num("from", "from", 5, 45,
				"The compass direction the wind blows from.").byDefault("0 deg").onlyFor(unlayered),
			num("factor", "factor", 0.05, 0.25,
				"On the speed of every layer: 1 as the forecast has them.").
				onlyFor(layered).otherwise(func(p place) float64 { return p.rocket.Wind.Scale() }),
			num("veer", "veer", 5, 45,
				"Turns every layer clockwise.").byDefault("0 deg").onlyFor(layered),
			num("turbulence", "turbulence", 1, 5,
				"Vertical gusts' standard deviation over the wind at 6.1 m, for scatters alone; 10 % is usual (MIL-F-8785C, low, from memory), 0 for none.").byDefault("0"),
		},
	}
}

// layered tells of a rocket whose wind is known in layers.
func layered(r *rocket.Rocket) bool { return len(r.Wind.Layers) > 0 }

func unlayered(r *rocket.Rocket) bool { return !layered(r) }

// layerSection are the layers of a forecast or a pilot balloon, by their place from the ground.
func layerSection() *section {
	return &section{
		path: "wind.layer", group: "wind layer", about: "The wind at a height, of a forecast or a pilot balloon.", many: true, most: atmosphere.MaxLayers,
		count: func(r *rocket.Rocket) int { return len(r.Wind.Layers) },
		make:  func(r *rocket.Rocket) { r.Wind.Layers = append(r.Wind.Layers, atmosphere.Layer{}) },
		fields: []*field{
			num("height", "height", 10, 100,
				"Above the ground, of the layers from the lowest up.").required(always, `"500 m"`),
			num("speed", "speed", 0.5, 2,
				"Of the wind there.").required(always, `"8 m/s"`),
			num("from", "from", 5, 45,
				"The compass direction it blows from there.").required(always, `"270 deg"`),
		},
	}
}

// AddLayer adds a layer of wind above those that are there, with the wind of the last: it changes
// nothing until it is given another. The first has the wind of [wind], whose speed and direction it
// takes the place of. It returns the name of the layer, its place.
func (f *File) AddLayer() (*File, string, error) {
	const up = 100 // m
	w := &f.rd.rocket.Wind
	speed, from := w.Surface()
	next := atmosphere.Layer{Height: w.Reference(), Speed: speed, From: from}
	if n := len(w.Layers); n > 0 {
		next = w.Layers[n-1]
		next.Height += up
	}
	s := sectionAt("wind.layer")
	var pairs []pair
	for _, v := range []struct {
		key string
		v   float64
	}{{"height", next.Height}, {"speed", next.Speed}, {"from", next.From}} {
		unit := s.field(v.key).codec.scale(nil, place{}).Unit
		pairs = append(pairs, pair{v.key, quoted(quantity.Exact(unit.ToSI(math.Round(unit.FromSI(v.v)*100)/100), unit), `"`)})
	}
	steps := []func(*document) []splice{func(d *document) []splice { return []splice{d.insertSection(s, pairs)} }}
	for _, key := range []string{"speed", "from"} {
		steps = append(steps, func(d *document) []splice {
			if n := d.root.find("wind", key); n != nil {
				return append(d.remove(n), d.dropSpread(func(name string) bool { return name == "wind."+key })...)
			}
			return nil
		})
	}
	made, err := f.steps(s.path, steps...)
	return made, strconv.Itoa(len(w.Layers) + 1), err
}

func gustSection() *section {
	return &section{
		path: "gust", group: "gust", about: "A wind above a height on top of the rest.", loose: true, count: one,
		quiet: func(r *rocket.Rocket) bool { return !shaped(r) && r.Gust == rocket.Gust{} },
		fields: []*field{
			num("speed", "speed", 0.5, 2,
				"Wind on top of the rest above a height; 0 for none.").byDefault("0 m/s"),
			num("from", "from", 5, 45,
				"The compass direction the gust blows from.").byDefault("0 deg"),
			num("height", "height", 5, 50,
				"Above the ground from which up it blows.").byDefault("0 m"),
			num("length", "length", 5, 50,
				"Height over which it rises as one minus cosine, and stays; 0 for a step.").byDefault("0 m"),
		},
	}
}
