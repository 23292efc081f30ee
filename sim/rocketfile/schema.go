package rocketfile

import (
	"math"
	"sync"

	"ullage/sim/airframe"
	"ullage/sim/rocket"
	"ullage/thrust"
)

// schema is the table of inputs: every section of a rocket file in the order
// of the screen, every key with its range, default and help. It is data; what
// reads, writes, edits, lists and checks is driven by it. What reads no rocket does without.
var schema = sync.OnceValue(func() []*section { return bind(sections()) })

func sections() []*section {
	return []*section{
		{
			path: "", group: "rocket", count: one,
			fields: []*field{
				text("name", "name", "What the rocket is called.",
					&textCodec{at: func(p place) *string { return &p.rocket.Name }, check: aTitle}),
				text("power", "drive", "What drives this flight.", powerCodec),
			},
		},
		bodySection(), noseSection(), sectionSection(), finsSection(), holeSection(), partSection(),
		waterSection(), tubeSection(), motorSection(), mountSection(),
		canopySection(), siteSection(), railSection(), windSection(), layerSection(), gustSection(), flightSection(),
		chamberSection(), plySection(), forwardSection(), aftSection(), adhesiveSection(), bossSection(), threadSection(), heatingSection(), recoverySection(), layupSection(),
		sealSection(), baySection(), jigSection(), fillingSection(),
		fieldSection(), flyerSection(), limitsSection(),
		spreadSection(), // last, since it names inputs of all the others
	}
}

// bind tells the codecs of a table the names of their keys.
func bind(sections []*section) []*section {
	for _, s := range sections {
		prefix := s.path + "."
		if s.many {
			prefix += "*."
		}
		for _, f := range s.fields {
			if c, ok := f.codec.(bound); ok {
				c.bind(prefix + f.key)
			}
		}
	}
	return sections
}

func one(*rocket.Rocket) int { return 1 }

// counted is a section's count when it is there or not.
func counted(there bool) int {
	if there {
		return 1
	}
	return 0
}

// num is a row for a number of the rocket's table, which says what it may be and where it
// is. Its nudges are in the unit of its range.
func num(key, label string, step, coarse float64, help string) *field {
	return &field{key: key, label: label, help: help, codec: &numberCodec{step: step, coarse: coarse}}
}

// text is a row for anything but a number.
func text(key, label, help string, c codec) *field {
	return &field{key: key, label: label, help: help, codec: c}
}

var powerCodec = func() *choiceCodec {
	c := choose(func(p place) *rocket.Power { return &p.rocket.Power }, rocket.WaterPower, rocket.MotorPower)
	c.offered = func(r *rocket.Rocket) []string {
		var words []string
		if r.Water != nil {
			words = append(words, string(rocket.WaterPower))
		}
		if r.Motor != nil {
			words = append(words, string(rocket.MotorPower))
		}
		return words
	}
	return c
}()

func bodySection() *section {
	drag := dragCodec(0.01, 0.05, func(p place) *[]rocket.MachDrag { return &p.rocket.Body.Drag })
	diameter := &numberCodec{step: 0.1, coarse: 1,
		also: of[airframe.Shape, float64](shape)(func(s *airframe.Shape) *float64 { return &s.Diameter })}
	return &section{
		path: "body", group: "body", count: one,
		fields: append([]*field{
			text("diameter", "diameter", "Largest outside diameter, the reference for drag and stability.", diameter).required(always, `"70.4 mm"`),
			num("mass", "mass", 0.005, 0.05,
				"Empty: without water, gas, motor and fittings; the parts' sum when not given.").
				required(func(r *rocket.Rocket) bool { return len(r.Parts) == 0 }, `"1.1 kg"`).
				otherwise(func(p place) float64 { return p.rocket.BodyMass() }),
			text("drag", "drag", "Drag coefficient, one number or a table against Mach; the shape's when not given.", drag).
				required(withoutShape, "0.48").otherwise(shapeDrag),
			num("drag_factor", "drag factor", 0.01, 0.1,
				"Multiplies the drag coefficient; what a fit to flights turns.").byDefault("1"),
		}, shapeRows()...),
	}
}

func waterSection() *section {
	water := func(p place) *rocket.Water { return p.rocket.Water }
	return &section{
		path: "water", group: "water", about: "Flight on water: the chamber, its fill and pressure, the nozzle.", drive: rocket.WaterPower,
		count: func(r *rocket.Rocket) int { return counted(r.Water != nil) },
		make:  func(r *rocket.Rocket) { r.Water = &rocket.Water{} },
		drop:  func(r *rocket.Rocket) { r.Water = nil },
		fields: []*field{
			(&field{key: "fill", label: "fill", codec: &amountCodec{numberCodec{step: 1, coarse: 5}}, late: true,
				help: "Liquid over the chamber's volume, or what is poured in, as in 30 % or 1.3 L."}).required(onWater, "0.3"),
			num("pressure", "pressure", 0.1, 1,
				"Gauge pressure of the chamber at release.").required(onWater, `"9 bar"`),
			num("throat", "throat", 0.1, 1,
				"Diameter of the nozzle's narrowest place.").required(onWater, `"13 mm"`),
			num("volume", "volume", 0.05, 0.5,
				"Inside volume of the chamber.").required(onWater, `"4.2 L"`),
			num("bore", "bore", 0.5, 5,
				"Inside diameter of the chamber.").required(onWater, `"68 mm"`),
			num("discharge", "discharge", 0.01, 0.05,
				"Nozzle coefficient: velocity in the liquid, mass flow in the gas; smooth ones have 0.95 to 0.99.").byDefault("0.97"),
			text("exponent", "exponent", "Of the gas's expansion: as fitted to flights, or that of gas over water.",
				numberOr(&numberCodec{step: 0.01, coarse: 0.05},
					choose(of[rocket.Water, rocket.Expansion](water)(func(w *rocket.Water) *rocket.Expansion { return &w.Expansion }), rocket.Saturated))).
				otherwise(func(p place) float64 { return p.rocket.ExponentInForce() }),
			text("gas", "gas", "What drives the liquid out.",
				choose(of[rocket.Water, thrust.Gas](water)(func(w *rocket.Water) *thrust.Gas { return &w.Gas }), thrust.Gases()...)).byDefault("air"),
			num("temperature", "gas temp", 1, 5,
				"Of the gas at release; the site's when not given.").otherwise(siteTemperature),
			num("density", "density", 1, 10,
				"Of the liquid; water at 20 degC has 998.2.").byDefault("998.2 kg/m3"),
			text("flow", "flow", "Model of the liquid's flow: with its inertia, or the textbook form without.",
				choose(of[rocket.Water, rocket.Flow](water)(func(w *rocket.Water) *rocket.Flow { return &w.Flow }), rocket.UnsteadyFlow, rocket.SteadyFlow)).byDefault("unsteady"),
			num("fittings", "fittings", 5, 50,
				"What only this drive carries: nozzle, adapter.").byDefault("0 g"),
			num("nozzle", "nozzle", 1, 10,
				"The nozzle's exit from the tip of the nose; the body's aft end when not given.").onlyFor(shaped).otherwise(nozzleAt),
			num("fittings_at", "fittings at", 1, 10,
				"Where the fittings balance, from the tip of the nose; the nozzle's exit when not given.").onlyFor(shaped).otherwise(nozzleAt),
		},
	}
}

func tubeSection() *section {
	tube := func(p place) *rocket.LaunchTube {
		if p.rocket.Water == nil {
			return nil
		}
		return p.rocket.Water.Tube
	}
	there := func(r *rocket.Rocket) bool { return tube(place{rocket: r}) != nil }
	return &section{
		path: "water.tube", group: "launch tube", about: "A launch tube that reaches into the chamber and fills the throat.", drive: rocket.WaterPower,
		count: func(r *rocket.Rocket) int { return counted(there(r)) },
		make:  func(r *rocket.Rocket) { r.Water.Tube = &rocket.LaunchTube{} },
		drop:  func(r *rocket.Rocket) { r.Water.Tube = nil },
		fields: []*field{
			num("length", "length", 5, 50,
				"How far the launch tube reaches into the chamber.").required(there, `"300 mm"`),
			num("outer", "outer", 0.1, 1,
				"Outside diameter of the launch tube, which fills the throat.").required(there, `"12.8 mm"`),
			num("inner", "inner", 0.1, 1,
				"Inside diameter of the launch tube.").required(there, `"9 mm"`),
			num("dead_volume", "dead volume", 0.01, 0.1,
				"Hoses and valve that stay open to the chamber.").byDefault("0 L"),
		},
	}
}

func motorSection() *section {
	motor := func(p place) *rocket.Motor { return p.rocket.Motor }
	file := text("file", "file", "A file with the keys of this section at its top level.", &textCodec{check: aFileName, path: true})
	curve := text("curve", "curve", "Thrust curve, a CSV file beside the file that names it.", &textCodec{check: aFileName, path: true})
	file.fileOnly, curve.fileOnly = true, true
	delays := listCodec("motor.delays", "delay", of[rocket.Motor, []float64](motor)(func(m *rocket.Motor) *[]float64 { return &m.Delays }))
	return &section{
		path: "motor", group: "motor", about: "A solid motor: a file of its own, or its masses and its curve.", drive: rocket.MotorPower,
		count: func(r *rocket.Rocket) int { return counted(r.Motor != nil) },
		make:  func(r *rocket.Rocket) { r.Motor = &rocket.Motor{Delay: math.NaN()} },
		drop:  func(r *rocket.Rocket) { r.Motor = nil },
		fields: []*field{
			file,
			curve.required(onMotor, `"h-trainer.csv"`).orElse("thrust"),
			num("case", "case", 1, 10,
				"The motor without its propellant.").required(onMotor, `"210 g"`),
			num("propellant", "propellant", 1, 10,
				"Mass of the propellant.").required(onMotor, `"140 g"`),
			num("thrust_factor", "thrust fact", 0.01, 0.05,
				"Multiplies the thrust of the curve, and so its impulse; burn time and propellant stay.").
				otherwise(func(p place) float64 { return p.rocket.Motor.ThrustFactor() }),
			num("delay", "delay", 1, 2,
				"From burnout to the ejection charge."),
			text("delays", "delays", "The delays that can be had or drilled.", delays),
			num("diameter", "diameter", 1, 1,
				"Outside diameter of the motor."),
			num("length", "length", 1, 10,
				"Length of the motor."),
			text("thrust", "thrust", "The curve point by point in place of a file: times in s and thrusts in N by turns, 0 0, 0.05 80, 1.3 0, typed or pasted.",
				newThrustCodec()).orElse("curve"),
			num("fittings", "fittings", 5, 50,
				"What only this drive carries: retainer, adapter.").byDefault("0 g"),
			num("position", "position", 1, 10,
				"Of the motor's aft end from the tip of the nose; the body's aft end when not given.").onlyFor(shaped).otherwise(aftEnd),
			num("fittings_at", "fittings at", 1, 10,
				"Where the fittings balance, from the tip of the nose; the motor's middle when not given.").onlyFor(shaped).otherwise(motorMiddle),
			text("name", "name", "What the motor is called, as its maker writes it.",
				&textCodec{at: of[rocket.Motor, string](motor)(func(m *rocket.Motor) *string { return &m.Name }), check: aTitle}),
		},
	}
}

func mountSection() *section {
	there := func(r *rocket.Rocket) bool { return r.MotorMount != nil }
	return &section{
		path: "motor_mount", group: "motor mount", about: "The tube that a motor slides into, with liner, rings and retainer.", drive: rocket.MotorPower,
		count: func(r *rocket.Rocket) int { return counted(there(r)) },
		make:  func(r *rocket.Rocket) { r.MotorMount = &rocket.MotorMount{} },
		drop:  func(r *rocket.Rocket) { r.MotorMount = nil },
		fields: []*field{
			num("diameter", "diameter", 1, 1,
				"Inside diameter of the tube a motor slides into.").required(there, `"29 mm"`),
			num("length", "length", 5, 50,
				"Length of motor that the mount takes.").required(there, `"250 mm"`),
			num("liner", "liner", 0.5, 1,
				"Inside diameter of a liner in the mount, where there is one: the motor slides into that."),
			num("retainer", "retainer", 0.5, 1,
				"Clear opening of what keeps the motor from sliding aft: less than the motor, more than its nozzle."),
			num("wall", "wall", 0.1, 0.5,
				"Of the mount's tube, for the hole of its centring rings."),
			num("within", "within", 0.5, 5,
				"Inside diameter of the tube around the mount, for its centring rings; water.bore when not given.").
				otherwise(func(p place) float64 { return p.rocket.AroundMount() }),
			num("rings", "rings", 1, 1,
				"Centring rings of the mount; one at either end when not given.").
				otherwise(func(place) float64 { return rocket.UsualRings }),
		},
	}
}

func canopySection() *section {
	canopy := func(p place) *rocket.Canopy {
		if p.item >= len(p.rocket.Canopies) {
			return nil
		}
		return &p.rocket.Canopies[p.item]
	}
	rule := of[rocket.Canopy, rocket.Rule](canopy)
	title := of[rocket.Canopy, string](canopy)(func(c *rocket.Canopy) *string { return &c.Name })
	cut := choose(of[rocket.Canopy, rocket.CanopyShape](canopy)(func(c *rocket.Canopy) *rocket.CanopyShape { return &c.Shape }),
		rocket.FlatCanopy, rocket.HemisphereCanopy, rocket.EllipsoidCanopy)
	cut.otherwise = func(place) string { return string(rocket.FlatCanopy) }
	return &section{
		path: "canopy", group: "canopy", about: "A canopy and when it opens: a main, or a drogue before it.", many: true, title: title,
		count: func(r *rocket.Rocket) int { return len(r.Canopies) },
		make:  func(r *rocket.Rocket) { r.Canopies = append(r.Canopies, rocket.Canopy{}) },
		fields: []*field{
			text("name", "name", "What the canopy is called in dotted names.", &textCodec{at: title, check: aName("a canopy", "main")}),
			num("diameter", "diameter", 0.01, 0.1,
				"Nominal diameter, as constructed.").orElse("area").required(always, `"1.1 m"`).
				otherwise(func(p place) float64 { return canopy(p).NominalDiameter() }),
			num("area", "area", 0.01, 0.1,
				"Nominal area, as constructed.").orElse("diameter").
				otherwise(func(p place) float64 { return canopy(p).NominalArea() }),
			num("coefficient", "drag", 0.01, 0.05,
				"Drag coefficient on the nominal area.").byDefault("0.75"),
			num("fill_constant", "fill const", 0.5, 2,
				"Canopy diameters of air path to fill; 0 opens at once.").byDefault("8"),
			num("opening_force_coefficient", "opening coef", 0.05, 0.5,
				"Opening force coefficient, for the upper bound of the load only.").byDefault("1.7"),
			text("deploy.water", "opens", "When the canopy is released on a water flight.",
				&ruleCodec{rule(func(c *rocket.Canopy) *rocket.Rule { return &c.Water })}).forDrive(rocket.WaterPower).
				required(always, `"apogee + 1 s"`).enough("deploy.motor"),
			text("deploy.motor", "opens", "When the canopy is released on a motor flight.",
				&ruleCodec{rule(func(c *rocket.Canopy) *rocket.Rule { return &c.Motor })}).forDrive(rocket.MotorPower),
			text("shape", "shape", "As constructed: flat, a hemisphere, or an ellipsoid half as deep as its radius; flat when not given.", cut),
			num("gores", "gores", 1, 2,
				"That the canopy is sewn of; 8 when not given (common practice).").
				otherwise(func(place) float64 { return rocket.UsualGores }),
			num("seam", "seam", 1, 5,
				"Allowance at every edge of a gore; 10 mm when not given (common practice).").
				otherwise(func(place) float64 { return rocket.UsualSeam }),
			num("vent", "vent", 5, 20,
				"Diameter of the opening at the top of the canopy; 0 for none.").byDefault("0 mm"),
		},
	}
}

func siteSection() *section {
	coordinate := func() *coordinateCodec { return &coordinateCodec{numberCodec{step: 0.001, coarse: 0.01}} }
	return &section{
		path: "site", group: "site", count: one,
		fields: []*field{
			num("elevation", "elevation", 10, 100,
				"Of the pad above sea level.").byDefault("0 m"),
			num("temperature", "air temp", 1, 5,
				"Of the air; the standard atmosphere's when not given.").otherwise(siteTemperature),
			num("pressure", "air press", 1, 10,
				"At the station, not reduced to sea level.").orElse("sea_level_pressure").otherwise(sitePressure),
			num("sea_level_pressure", "sea press", 1, 10,
				"Reduced to sea level, as a telephone shows it; instead of pressure.").orElse("pressure").otherwise(seaLevelPressure),
			num("humidity", "humidity", 5, 20,
				"Relative humidity of the air.").byDefault("0"),
			text("latitude", "latitude", "Decimal degrees, north positive; for maps only.", coordinate()),
			text("longitude", "longitude", "Decimal degrees, east positive; for maps only.", coordinate()),
		},
	}
}

func railSection() *section {
	return &section{
		path: "rail", group: "rail", count: one,
		fields: []*field{
			num("length", "length", 0.1, 0.5,
				"Travel until the last rail button leaves the rail.").required(withoutTube, `"1.8 m"`),
			num("tilt", "tilt", 1, 5,
				"Of the rail from vertical.").byDefault("0 deg"),
			num("heading", "heading", 5, 45,
				"Where the tilt points, clockwise from north.").byDefault("0 deg"),
		},
	}
}

// siteTemperature is the air's in force at the pad, K.
func siteTemperature(p place) float64 {
	column := p.rocket.Site.Column()
	return column.Air(0).Temperature
}

// sitePressure is the air's in force at the pad, Pa.
func sitePressure(p place) float64 {
	column := p.rocket.Site.Column()
	return column.Air(0).Pressure
}

// seaLevelPressure is what the air of the site would have at sea level, Pa.
func seaLevelPressure(p place) float64 {
	column := p.rocket.Site.Column()
	return column.Air(-p.rocket.Site.Elevation).Pressure
}
