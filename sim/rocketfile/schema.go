package rocketfile

import (
	"math"

	"ullage/atmosphere"
	"ullage/sim/airframe"
	"ullage/sim/quantity"
	"ullage/sim/rocket"
	"ullage/thrust"
)

// schema is the table of inputs: every section of a rocket file in the order
// of the screen, every key with its range, default and help. It is data; what
// reads, writes, edits, lists and checks is driven by it.
var schema = []*section{
	{
		path: "", group: "rocket", count: one,
		fields: []*field{
			text("name", "name", "What the rocket is called.",
				&textCodec{at: func(p place) *string { return &p.rocket.Name }, check: aTitle}),
			text("power", "drive", "What drives this flight.", powerCodec),
		},
	},
	bodySection(), noseSection(), sectionSection(), finsSection(), partSection(),
	waterSection(), tubeSection(), motorSection(), mountSection(),
	canopySection(), siteSection(), railSection(), windSection(), gustSection(), flightSection(),
	chamberSection(), plySection(), forwardSection(), aftSection(), threadSection(), heatingSection(), recoverySection(),
	fieldSection(), limitsSection(),
	spreadSection(), // last, since it names inputs of all the others
}

func one(*rocket.Rocket) int { return 1 }

// counted is a section's count when it is there or not.
func counted(there bool) int {
	if there {
		return 1
	}
	return 0
}

// num is a row for a number that a rocket always holds.
func num(key, label string, is scale, at func(place) *float64, help string) *field {
	return &field{key: key, label: label, help: help, codec: &numberCodec{is: is, at: at}}
}

// optional is a row for a number that a rocket holds or not.
func optional(key, label string, is scale, at func(place) *float64, absent float64, help string) *field {
	return &field{key: key, label: label, help: help,
		codec: &numberCodec{is: is, at: at, absent: absent, optional: true}}
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
	at := of[rocket.Body, float64](func(p place) *rocket.Body { return &p.rocket.Body })
	drag := &dragCodec{
		numberCodec: numberCodec{is: number(0, 10, 0.01, 0.05)},
		table:       func(p place) *[]rocket.MachDrag { return &p.rocket.Body.Drag },
	}
	diameter := &numberCodec{is: millimetres(1, 2000, 0.1, 1), at: at(func(b *rocket.Body) *float64 { return &b.Diameter }),
		also: of[airframe.Shape, float64](shape)(func(s *airframe.Shape) *float64 { return &s.Diameter })}
	return &section{
		path: "body", group: "body", count: one,
		fields: append([]*field{
			text("diameter", "diameter", "Largest outside diameter, the reference for drag and stability.", diameter).required(always, `"70.4 mm"`),
			optional("mass", "mass", measured(quantity.Mass, "kg", 1*gram, 200, 5*gram, 50*gram), at(func(b *rocket.Body) *float64 { return &b.Mass }), 0,
				"Ready to fly, without water, gas, motor and fittings; the parts' sum when not given.").
				required(func(r *rocket.Rocket) bool { return len(r.Parts) == 0 }, `"1.1 kg"`).
				otherwise(func(p place) float64 { return p.rocket.BodyMass() }),
			text("drag", "drag", "Drag coefficient, one number or a table against Mach; the shape's when not given.", drag).
				required(withoutShape, "0.48").otherwise(shapeDrag),
			num("drag_factor", "drag factor", number(0, 10, 0.01, 0.1), at(func(b *rocket.Body) *float64 { return &b.DragFactor }),
				"Multiplies the drag coefficient; what a fit to flights turns.").byDefault("1"),
		}, shapeRows()...),
	}
}

func waterSection() *section {
	water := func(p place) *rocket.Water { return p.rocket.Water }
	at := of[rocket.Water, float64](water)
	return &section{
		path: "water", group: "water", drive: rocket.WaterPower,
		count: func(r *rocket.Rocket) int { return counted(r.Water != nil) },
		make:  func(r *rocket.Rocket) { r.Water = &rocket.Water{} },
		drop:  func(r *rocket.Rocket) { r.Water = nil },
		fields: []*field{
			num("fill", "fill", percent(0, 98, 1, 5), at(func(w *rocket.Water) *float64 { return &w.Fill }),
				"Liquid volume over the chamber's volume.").required(onWater, "0.3"),
			num("pressure", "pressure", measured(quantity.Pressure, "bar", 0, 100*bar, 0.1*bar, 1*bar), at(func(w *rocket.Water) *float64 { return &w.Pressure }),
				"Gauge pressure of the chamber at release.").required(onWater, `"9 bar"`),
			num("throat", "throat", millimetres(0.5, 500, 0.1, 1), at(func(w *rocket.Water) *float64 { return &w.Throat }),
				"Diameter of the nozzle's narrowest place.").required(onWater, `"13 mm"`),
			num("volume", "volume", measured(quantity.Volume, "L", 1*millilitre, 1000*litre, 0.05*litre, 0.5*litre), at(func(w *rocket.Water) *float64 { return &w.Volume }),
				"Inside volume of the chamber.").required(onWater, `"4.2 L"`),
			num("bore", "bore", millimetres(1, 2000, 0.5, 5), at(func(w *rocket.Water) *float64 { return &w.Bore }),
				"Inside diameter of the chamber.").required(onWater, `"68 mm"`),
			num("discharge", "discharge", number(0.1, 1, 0.01, 0.05), at(func(w *rocket.Water) *float64 { return &w.Discharge }),
				"Nozzle coefficient: velocity in the liquid, mass flow in the gas; smooth ones have 0.95 to 0.99.").byDefault("0.97"),
			optional("exponent", "exponent", number(1, 1.7, 0.01, 0.05), at(func(w *rocket.Water) *float64 { return &w.Exponent }), 0,
				"Of the gas's expansion; measured flights give less than the ratio of specific heats.").
				otherwise(func(p place) float64 { return p.rocket.Water.Gas.Gamma() }),
			text("gas", "gas", "What drives the liquid out.",
				choose(of[rocket.Water, thrust.Gas](water)(func(w *rocket.Water) *thrust.Gas { return &w.Gas }), thrust.Gases()...)).byDefault("air"),
			optional("temperature", "gas temp", celsius(-60, 100), at(func(w *rocket.Water) *float64 { return &w.Temperature }), 0,
				"Of the gas at release; the site's when not given.").otherwise(siteTemperature),
			num("density", "density", measured(quantity.Density, "kg/m3", 300, 4000, 1, 10), at(func(w *rocket.Water) *float64 { return &w.Density }),
				"Of the liquid; water at 20 degC has 998.2.").byDefault("998.2 kg/m3"),
			text("flow", "flow", "Model of the liquid's flow: with its inertia, or the textbook form without.",
				choose(of[rocket.Water, rocket.Flow](water)(func(w *rocket.Water) *rocket.Flow { return &w.Flow }), rocket.UnsteadyFlow, rocket.SteadyFlow)).byDefault("unsteady"),
			num("fittings", "fittings", grams(20e3, 5, 50), at(func(w *rocket.Water) *float64 { return &w.Fittings }),
				"What only this drive carries: nozzle, adapter.").byDefault("0 g"),
			optional("nozzle", "nozzle", position(1), at(func(w *rocket.Water) *float64 { return &w.Nozzle }), 0,
				"The nozzle's exit from the tip of the nose; the body's aft end when not given.").onlyFor(shaped).otherwise(nozzleAt),
			optional("fittings_at", "fittings at", position(1), at(func(w *rocket.Water) *float64 { return &w.FittingsAt }), 0,
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
	at := of[rocket.LaunchTube, float64](tube)
	there := func(r *rocket.Rocket) bool { return tube(place{rocket: r}) != nil }
	return &section{
		path: "water.tube", group: "launch tube", drive: rocket.WaterPower,
		count: func(r *rocket.Rocket) int { return counted(there(r)) },
		make:  func(r *rocket.Rocket) { r.Water.Tube = &rocket.LaunchTube{} },
		drop:  func(r *rocket.Rocket) { r.Water.Tube = nil },
		fields: []*field{
			num("length", "length", millimetres(1, 10e3, 5, 50), at(func(t *rocket.LaunchTube) *float64 { return &t.Length }),
				"How far the launch tube reaches into the chamber.").required(there, `"300 mm"`),
			num("outer", "outer", millimetres(0.1, 500, 0.1, 1), at(func(t *rocket.LaunchTube) *float64 { return &t.Outer }),
				"Outside diameter of the launch tube, which fills the throat.").required(there, `"12.8 mm"`),
			num("inner", "inner", millimetres(0, 500, 0.1, 1), at(func(t *rocket.LaunchTube) *float64 { return &t.Inner }),
				"Inside diameter of the launch tube.").required(there, `"9 mm"`),
			num("dead_volume", "dead volume", measured(quantity.Volume, "L", 0, 100*litre, 0.01*litre, 0.1*litre), at(func(t *rocket.LaunchTube) *float64 { return &t.DeadVolume }),
				"Hoses and valve that stay open to the chamber.").byDefault("0 L"),
		},
	}
}

func motorSection() *section {
	motor := func(p place) *rocket.Motor { return p.rocket.Motor }
	at := of[rocket.Motor, float64](motor)
	file := text("file", "file", "A file with the keys of this section at its top level.", &textCodec{check: aFileName})
	curve := text("curve", "curve", "Thrust curve, a CSV file beside the file that names it.", &textCodec{check: aFileName})
	file.fileOnly, curve.fileOnly = true, true
	delays := &listCodec{is: seconds(0, 60), at: of[rocket.Motor, []float64](motor)(func(m *rocket.Motor) *[]float64 { return &m.Delays })}
	return &section{
		path: "motor", group: "motor", drive: rocket.MotorPower,
		count: func(r *rocket.Rocket) int { return counted(r.Motor != nil) },
		make:  func(r *rocket.Rocket) { r.Motor = &rocket.Motor{Delay: math.NaN()} },
		drop:  func(r *rocket.Rocket) { r.Motor = nil },
		fields: []*field{
			file,
			curve.required(onMotor, `"h-trainer.csv"`),
			num("case", "case", grams(100e3, 1, 10), at(func(m *rocket.Motor) *float64 { return &m.Case }),
				"The motor without its propellant.").required(onMotor, `"210 g"`),
			num("propellant", "propellant", measured(quantity.Mass, "g", 0.01*gram, 100e3*gram, 1*gram, 10*gram), at(func(m *rocket.Motor) *float64 { return &m.Propellant }),
				"Mass of the propellant.").required(onMotor, `"140 g"`),
			optional("delay", "delay", measured(quantity.Time, "s", 0, 60, 1, 2), at(func(m *rocket.Motor) *float64 { return &m.Delay }), math.NaN(),
				"From burnout to the ejection charge."),
			text("delays", "delays", "The delays that can be had or drilled.", delays),
			optional("diameter", "diameter", millimetres(1, 500, 1, 1), at(func(m *rocket.Motor) *float64 { return &m.Diameter }), 0,
				"Outside diameter of the motor."),
			optional("length", "length", millimetres(1, 5000, 1, 10), at(func(m *rocket.Motor) *float64 { return &m.Length }), 0,
				"Length of the motor."),
			num("fittings", "fittings", grams(20e3, 5, 50), at(func(m *rocket.Motor) *float64 { return &m.Fittings }),
				"What only this drive carries: retainer, adapter.").byDefault("0 g"),
			optional("position", "position", position(1), at(func(m *rocket.Motor) *float64 { return &m.Position }), 0,
				"Of the motor's aft end from the tip of the nose; the body's aft end when not given.").onlyFor(shaped).otherwise(aftEnd),
			optional("fittings_at", "fittings at", position(1), at(func(m *rocket.Motor) *float64 { return &m.FittingsAt }), 0,
				"Where the fittings balance, from the tip of the nose; the motor's middle when not given.").onlyFor(shaped).otherwise(motorMiddle),
		},
	}
}

func mountSection() *section {
	at := of[rocket.MotorMount, float64](func(p place) *rocket.MotorMount { return p.rocket.MotorMount })
	there := func(r *rocket.Rocket) bool { return r.MotorMount != nil }
	return &section{
		path: "motor_mount", group: "motor mount", drive: rocket.MotorPower,
		count: func(r *rocket.Rocket) int { return counted(there(r)) },
		make:  func(r *rocket.Rocket) { r.MotorMount = &rocket.MotorMount{} },
		drop:  func(r *rocket.Rocket) { r.MotorMount = nil },
		fields: []*field{
			num("diameter", "diameter", millimetres(1, 500, 1, 1), at(func(m *rocket.MotorMount) *float64 { return &m.Diameter }),
				"Inside diameter of the tube a motor slides into.").required(there, `"29 mm"`),
			num("length", "length", millimetres(1, 5000, 5, 50), at(func(m *rocket.MotorMount) *float64 { return &m.Length }),
				"Length of motor that the mount takes.").required(there, `"250 mm"`),
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
	at := of[rocket.Canopy, float64](canopy)
	rule := of[rocket.Canopy, rocket.Rule](canopy)
	title := of[rocket.Canopy, string](canopy)(func(c *rocket.Canopy) *string { return &c.Name })
	return &section{
		path: "canopy", group: "canopy", many: true, title: title,
		count: func(r *rocket.Rocket) int { return len(r.Canopies) },
		make:  func(r *rocket.Rocket) { r.Canopies = append(r.Canopies, rocket.Canopy{}) },
		fields: []*field{
			text("name", "name", "What the canopy is called in dotted names.", &textCodec{at: title, check: aName("a canopy", "main")}),
			optional("diameter", "diameter", metres(0.01, 50, 0.01, 0.1), at(func(c *rocket.Canopy) *float64 { return &c.Diameter }), 0,
				"Nominal diameter, as constructed.").orElse("area").required(always, `"1.1 m"`).
				otherwise(func(p place) float64 { return canopy(p).NominalDiameter() }),
			optional("area", "area", measured(quantity.Area, "m2", 1e-4, 2000, 0.01, 0.1), at(func(c *rocket.Canopy) *float64 { return &c.Area }), 0,
				"Nominal area, as constructed.").orElse("diameter").
				otherwise(func(p place) float64 { return canopy(p).NominalArea() }),
			num("coefficient", "drag", number(0.1, 5, 0.01, 0.05), at(func(c *rocket.Canopy) *float64 { return &c.Coefficient }),
				"Drag coefficient on the nominal area.").byDefault("0.75"),
			num("fill_constant", "fill const", number(0, 100, 0.5, 2), at(func(c *rocket.Canopy) *float64 { return &c.FillConstant }),
				"Canopy diameters of air path to fill; 0 opens at once.").byDefault("8"),
			num("opening_force_coefficient", "opening coef", number(0, 10, 0.05, 0.5), at(func(c *rocket.Canopy) *float64 { return &c.OpeningForceCoefficient }),
				"Opening force coefficient, for the upper bound of the load only.").byDefault("1.7"),
			text("deploy.water", "opens", "When the canopy is released on a water flight.",
				&ruleCodec{rule(func(c *rocket.Canopy) *rocket.Rule { return &c.Water })}).forDrive(rocket.WaterPower).
				required(always, `"apogee + 1 s"`).enough("deploy.motor"),
			text("deploy.motor", "opens", "When the canopy is released on a motor flight.",
				&ruleCodec{rule(func(c *rocket.Canopy) *rocket.Rule { return &c.Motor })}).forDrive(rocket.MotorPower),
		},
	}
}

func siteSection() *section {
	at := of[atmosphere.Site, float64](func(p place) *atmosphere.Site { return &p.rocket.Site })
	coordinate := func(limit float64, get func(place) *float64) *coordinateCodec {
		return &coordinateCodec{numberCodec{is: number(-limit, limit, 0.001, 0.01), at: get}}
	}
	return &section{
		path: "site", group: "site", count: one,
		fields: []*field{
			num("elevation", "elevation", metres(-450, 9000, 10, 100), at(func(s *atmosphere.Site) *float64 { return &s.Elevation }),
				"Of the pad above sea level.").byDefault("0 m"),
			optional("temperature", "air temp", celsius(-60, 60), at(func(s *atmosphere.Site) *float64 { return &s.Temperature }), 0,
				"Of the air; the standard atmosphere's when not given.").otherwise(siteTemperature),
			optional("pressure", "air press", measured(quantity.Pressure, "hPa", 250*hectopascal, 1100*hectopascal, 1*hectopascal, 10*hectopascal), at(func(s *atmosphere.Site) *float64 { return &s.Pressure }), 0,
				"At the station, not reduced to sea level.").orElse("sea_level_pressure").otherwise(sitePressure),
			optional("sea_level_pressure", "sea press", measured(quantity.Pressure, "hPa", 850*hectopascal, 1100*hectopascal, 1*hectopascal, 10*hectopascal), at(func(s *atmosphere.Site) *float64 { return &s.SeaLevelPressure }), 0,
				"Reduced to sea level, as a telephone shows it; instead of pressure.").orElse("pressure").otherwise(seaLevelPressure),
			num("humidity", "humidity", percent(0, 100, 5, 20), at(func(s *atmosphere.Site) *float64 { return &s.Humidity }),
				"Relative humidity of the air.").byDefault("0"),
			text("latitude", "latitude", "Decimal degrees, north positive; for maps only.",
				coordinate(90, at(func(s *atmosphere.Site) *float64 { return &s.Latitude }))),
			text("longitude", "longitude", "Decimal degrees, east positive; for maps only.",
				coordinate(180, at(func(s *atmosphere.Site) *float64 { return &s.Longitude }))),
		},
	}
}

func railSection() *section {
	at := of[rocket.Rail, float64](func(p place) *rocket.Rail { return &p.rocket.Rail })
	return &section{
		path: "rail", group: "rail", count: one,
		fields: []*field{
			optional("length", "length", metres(0.01, 100, 0.1, 0.5), at(func(r *rocket.Rail) *float64 { return &r.Length }), 0,
				"Travel until the last rail button leaves the rail.").required(withoutTube, `"1.8 m"`),
			num("tilt", "tilt", degrees(0, 80, 1, 5), at(func(r *rocket.Rail) *float64 { return &r.Tilt }),
				"Of the rail from vertical.").byDefault("0 deg"),
			num("heading", "heading", degrees(-360, 360, 5, 45), at(func(r *rocket.Rail) *float64 { return &r.Heading }),
				"Where the tilt points, clockwise from north.").byDefault("0 deg"),
		},
	}
}

func windSection() *section {
	at := of[atmosphere.Wind, float64](func(p place) *atmosphere.Wind { return &p.rocket.Wind })
	return &section{
		path: "wind", group: "wind", count: one,
		fields: []*field{
			num("speed", "speed", measured(quantity.Speed, "m/s", 0, 60, 0.5, 2), at(func(w *atmosphere.Wind) *float64 { return &w.Speed }),
				"Of the wind at its reference height.").byDefault("0 m/s"),
			num("height", "height", metres(0.5, 1000, 1, 10), at(func(w *atmosphere.Wind) *float64 { return &w.Height }),
				"Above the ground, where the wind was measured.").byDefault("10 m"),
			num("exponent", "exponent", number(0, 1, 0.01, 0.05), at(func(w *atmosphere.Wind) *float64 { return &w.Exponent }),
				"Of the wind's growth with height; open grass has 1/7.").byDefault("0.142857142857142857"),
			num("from", "from", degrees(-360, 360, 5, 45), at(func(w *atmosphere.Wind) *float64 { return &w.From }),
				"The compass direction the wind blows from.").byDefault("0 deg"),
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
