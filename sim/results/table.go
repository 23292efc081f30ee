package results

import (
	"math"

	"ullage/atmosphere"
	"ullage/sim"
	"ullage/sim/quantity"
	"ullage/sim/rocket"
)

// When a result has no value.
const (
	neverLeft    = "when the rocket does not leave its guide"
	noTube       = "without a launch tube, on a motor, or when the rocket does not come off it"
	onMotor      = "on a motor"
	noEnd        = "when thrust does not end in flight"
	noTop        = "when the rocket does not fly"
	noLanding    = "when the rocket does not come down"
	noBalance    = "without a shape and a balance"
	pointFlies   = "without a shape and a balance, and of a point mass"
	calmAir      = "in calm air, and when the rocket does not leave its guide"
	onWater      = "on water, and below the first class"
	neverOpens   = "when the canopy never opens"
	neverFills   = "when the canopy never opens, or lands before it has filled"
	opensOrNoTop = "when the canopy never opens, or the rocket does not fly"
)

// happening gives the rows of an event their time, height and speed.
func happening(name, label, undefined string, at func(fl *sim.Flight) sim.Moment) (time, height, speed Row) {
	of := func(v func(sim.Moment) float64) func(fl *sim.Flight) float64 {
		return func(fl *sim.Flight) float64 {
			if m := at(fl); m.Happened {
				return v(m)
			}
			return math.NaN()
		}
	}
	time = Row{Name: name + ".time", Label: "time of " + label, Short: "time", Dimension: quantity.Time, Undefined: undefined,
		of: of(func(m sim.Moment) float64 { return m.Time })}
	height = Row{Name: name + ".height", Label: "height at " + label, Short: "height", Dimension: quantity.Length, Unit: "m", Undefined: undefined,
		of: of(func(m sim.Moment) float64 { return m.Height })}
	speed = Row{Name: name + ".speed", Label: "speed at " + label, Short: "speed", Dimension: quantity.Speed, Undefined: undefined,
		of: of(func(m sim.Moment) float64 { return m.Speed })}
	return time, height, speed
}

// EndOfThrust is what the end of thrust is called on a drive: the trade speaks of a
// motor's burnout.
func EndOfThrust(p rocket.Power) string { return rocket.Burnout.Name(p) }

// groups are those of every rocket on the drive that flies, but for the canopies', which
// stand before the landing.
func groups(p rocket.Power) (before, after []Group) {
	before = []Group{liftOff(), tubeExit(), railExit(), liquidOut(), burnout(EndOfThrust(p)), apogee(), greatest(), startup(), drive()}
	after = []Group{landing(), margin(EndOfThrust(p)), attack()}
	return before, after
}

func liftOff() Group {
	return Group{Name: "lift_off", Label: "lift-off", Rows: []Row{
		{Name: "lift_off.mass", Label: "lift-off mass", Short: "mass", Dimension: quantity.Mass, Unit: "kg",
			of: func(fl *sim.Flight) float64 { return fl.LiftOffMass }},
		{Name: "lift_off.thrust_to_weight", Label: "thrust/weight at lift-off", Short: "thrust/weight",
			of: func(fl *sim.Flight) float64 { return fl.LiftOffThrustToWeight }},
	}}
}

func railExit() Group {
	time, height, speed := happening("rail_exit", "rail exit", neverLeft, func(fl *sim.Flight) sim.Moment { return fl.RailExit.Moment })
	speed.Label, speed.Head, speed.column = "rail exit speed", "rail exit", "rail_exit_mps"
	return Group{Name: "rail_exit", Label: "rail exit", Event: true, Rows: []Row{
		time, height, speed,
		{Name: "rail_exit.thrust_to_weight", Label: "thrust/weight at rail exit", Short: "thrust/weight", Head: "thrust/ weight",
			Undefined: neverLeft, column: "thrust_to_weight",
			of: func(fl *sim.Flight) float64 { return when(fl.RailExit.Happened, fl.RailExit.ThrustToWeight) }},
		{Name: "rail_exit.wind_ratio", Label: "rail exit speed over wind", Short: "speed over wind", Undefined: calmAir,
			of: func(fl *sim.Flight) float64 {
				wind := fl.Rocket.GroundWind()
				return when(fl.RailExit.Happened && wind > 0, fl.RailExit.Speed/wind)
			}},
	}}
}

func tubeExit() Group {
	time, height, speed := happening("tube_exit", "tube exit", noTube, func(fl *sim.Flight) sim.Moment { return fl.TubeExit.Moment })
	return Group{Name: "tube_exit", Label: "tube exit", Event: true, Rows: []Row{time, height, speed}}
}

func liquidOut() Group {
	time, height, speed := happening("liquid_out", "liquid out", onMotor, func(fl *sim.Flight) sim.Moment {
		m := fl.LiquidOut
		m.Happened = fl.WaterFlew // the jet may have stopped with liquid left
		return m
	})
	return Group{Name: "liquid_out", Label: "liquid out", Event: true, Rows: []Row{
		time, height, speed,
		{Name: "liquid_out.left", Label: "liquid left", Short: "left", Head: "liquid left", Dimension: quantity.Mass, Unit: "g",
			Undefined: onMotor, column: "liquid_left_kg",
			of: func(fl *sim.Flight) float64 { return when(fl.WaterFlew, fl.LiquidLeft) }},
	}}
}

func burnout(label string) Group {
	time, height, speed := happening("burnout", label, noEnd, func(fl *sim.Flight) sim.Moment { return fl.Burnout })
	time.Head, time.column = label, "burnout_s"
	return Group{Name: "burnout", Label: label, Event: true, Rows: []Row{time, height, speed}}
}

func apogee() Group {
	time, height, speed := happening("apogee", "apogee", noTop, func(fl *sim.Flight) sim.Moment { return fl.Apogee })
	time.Label, time.Head, time.column = "time to apogee", "at", "apogee_s"
	height.Label, height.column = "apogee", "apogee_m"
	return Group{Name: "apogee", Label: "apogee", Event: true, Rows: []Row{time, height, speed}}
}

func greatest() Group {
	g := Group{Name: "max", Label: "greatest"}
	for _, m := range []struct {
		name, label, head string
		dimension         quantity.Dimension
		unit              string
		of, at            func(m *sim.Maxima) float64
	}{
		{"speed", "speed", "top speed", quantity.Speed, "", func(m *sim.Maxima) float64 { return m.Speed }, func(m *sim.Maxima) float64 { return m.SpeedTime }},
		{"mach", "Mach number", "Mach", quantity.Number, "", func(m *sim.Maxima) float64 { return m.Mach }, func(m *sim.Maxima) float64 { return m.MachTime }},
		{"acceleration", "acceleration", "greatest accel.", quantity.Acceleration, "", func(m *sim.Maxima) float64 { return m.Acceleration }, func(m *sim.Maxima) float64 { return m.AccelerationTime }},
		{"dynamic_pressure", "dynamic pressure", "", quantity.Pressure, "kPa", func(m *sim.Maxima) float64 { return m.DynamicPressure }, func(m *sim.Maxima) float64 { return m.DynamicPressureTime }},
		{"thrust", "thrust", "", quantity.Force, "", func(m *sim.Maxima) float64 { return m.Thrust }, func(m *sim.Maxima) float64 { return m.ThrustTime }},
	} {
		g.Rows = append(g.Rows,
			Row{Name: "max." + m.name, Label: "greatest " + m.label, Short: m.label, Head: m.head, Dimension: m.dimension, Unit: m.unit,
				of: func(fl *sim.Flight) float64 { return m.of(&fl.Max) }},
			Row{Name: "max." + m.name + "_time", Label: "time of greatest " + m.label, Short: "time of " + m.label, Dimension: quantity.Time,
				of: func(fl *sim.Flight) float64 { return m.at(&fl.Max) }})
	}
	g.Rows = append(g.Rows, Row{Name: "max.flutter", Label: "greatest speed over that of flutter", Short: "over flutter", Undefined: "without fins, and where the shear modulus of some is not given",
		of: func(fl *sim.Flight) float64 {
			if fl.Rocket.Shape == nil {
				return math.NaN()
			}
			return fl.Rocket.Shape.Flutter(fl.Max.DynamicPressure, atmosphere.Gamma)
		}})
	return g
}

func startup() Group {
	return Group{Name: "startup", Label: "start-up", Rows: []Row{
		{Name: "startup.thrust", Label: "thrust of the start-up surge, at most", Short: "thrust", Dimension: quantity.Force, Undefined: onMotor,
			of: func(fl *sim.Flight) float64 { return when(fl.WaterFlew, fl.Startup.Thrust) }},
		{Name: "startup.acceleration", Label: "acceleration of the start-up surge, at most", Short: "acceleration", Dimension: quantity.Acceleration, Undefined: onMotor,
			of: func(fl *sim.Flight) float64 { return when(fl.WaterFlew, fl.Startup.Acceleration) }},
		{Name: "startup.duration", Label: "duration of the start-up surge", Short: "duration", Dimension: quantity.Time, Undefined: onMotor,
			of: func(fl *sim.Flight) float64 { return when(fl.WaterFlew, fl.Startup.Duration) }},
	}}
}

func drive() Group {
	return Group{Name: "drive", Label: "drive", Rows: []Row{
		{Name: "drive.impulse", Label: "total impulse", Short: "impulse", Dimension: quantity.Impulse, column: "impulse_ns",
			of: func(fl *sim.Flight) float64 { return fl.Drive.Impulse }},
		{Name: "drive.average", Label: "average thrust", Short: "on average", Dimension: quantity.Force, column: "average_n",
			of: func(fl *sim.Flight) float64 { return fl.Drive.Average }},
		{Name: "drive.burn", Label: "burn time", Short: "burn time", Dimension: quantity.Time, column: "burn_s",
			of: func(fl *sim.Flight) float64 { return fl.Drive.BurnTime }},
		{Name: "drive.class", Label: "motor class", Short: "class", Head: "class", Undefined: onWater, column: "class",
			word: func(fl *sim.Flight) string { return fl.Drive.Class }},
		{Name: "drive.exponent", Label: "exponent of the expansion", Short: "exponent", Undefined: onMotor,
			of: func(fl *sim.Flight) float64 { return when(fl.Drive.Exponent > 0, fl.Drive.Exponent) }},
		{Name: "drive.growth", Label: "growth of the chamber under pressure", Short: "chamber grown by", Dimension: quantity.Fraction, Unit: "%", Undefined: onMotor + ", and where nothing is known of the wall",
			of: func(fl *sim.Flight) float64 { return when(fl.Drive.Growth > 0, fl.Drive.Growth) }},
	}}
}

func landing() Group {
	time, _, speed := happening("landing", "landing", noLanding, func(fl *sim.Flight) sim.Moment { return fl.Landing.Moment })
	time.Label, time.column = "flight time", "landing_s"
	speed.Label, speed.column = "landing speed", "landing_mps"
	of := func(v func(l *sim.Landing) float64) func(fl *sim.Flight) float64 {
		return func(fl *sim.Flight) float64 { return when(fl.Landing.Happened, v(&fl.Landing)) }
	}
	return Group{Name: "landing", Label: "landing", Event: true, Rows: []Row{
		time, speed,
		{Name: "landing.vertical", Label: "vertical landing speed", Short: "down", Head: "landing", Dimension: quantity.Speed, Undefined: noLanding,
			of: of(func(l *sim.Landing) float64 { return l.Vertical })},
		{Name: "landing.energy", Label: "landing energy", Short: "energy", Dimension: quantity.Energy, Undefined: noLanding,
			of: of(func(l *sim.Landing) float64 { return l.Energy })},
		{Name: "landing.east", Label: "landing east of the pad", Short: "east", Dimension: quantity.Length, Unit: "m", Undefined: noLanding,
			of: of(func(l *sim.Landing) float64 { return l.East })},
		{Name: "landing.north", Label: "landing north of the pad", Short: "north", Dimension: quantity.Length, Unit: "m", Undefined: noLanding,
			of: of(func(l *sim.Landing) float64 { return l.North })},
		{Name: "landing.drift", Label: "drift", Short: "drift", Dimension: quantity.Length, Unit: "m", Undefined: noLanding, column: "drift_m",
			of: of(func(l *sim.Landing) float64 { return math.Hypot(l.East, l.North) })},
	}}
}

func margin(end string) Group {
	g := Group{Name: "margin", Label: "margin"}
	add := func(name, label, short, undefined string, of func(s *sim.Stability) float64) {
		g.Rows = append(g.Rows, Row{Name: "margin." + name, Label: label, Short: short, Head: "margin at " + short, Suffix: "calibres", Undefined: undefined,
			path: []string{"stability", "margin_cal", name}, column: "margin_" + name + "_cal",
			of: func(fl *sim.Flight) float64 { return when(fl.Stability.Known, of(&fl.Stability)) }})
	}
	at := func(of func(s *sim.Stability) *sim.StabilityAt) func(s *sim.Stability) float64 {
		return func(s *sim.Stability) float64 { return when(of(s).Happened, of(s).Margin) }
	}
	add("release", "margin at lift-off", "lift-off", noBalance, at(func(s *sim.Stability) *sim.StabilityAt { return &s.Release }))
	add("rail_exit", "margin at rail exit", "rail exit", noBalance+", and "+neverLeft, at(func(s *sim.Stability) *sim.StabilityAt { return &s.RailExit }))
	add("liquid_out", "margin at liquid out", "liquid out", noBalance+", and "+onMotor, at(func(s *sim.Stability) *sim.StabilityAt { return &s.LiquidOut }))
	add("burnout", "margin at "+end, end, noBalance+", and "+noEnd, at(func(s *sim.Stability) *sim.StabilityAt { return &s.Burnout }))
	add("least", "least margin on the way up", "least", noBalance, func(s *sim.Stability) float64 { return s.Least })
	g.Rows[len(g.Rows)-1].Head = "least margin"
	add("at_angle", "margin at the angle of rail exit", "at the angle", noBalance+", and "+neverLeft, func(s *sim.Stability) float64 {
		return when(s.RailExit.Happened, s.AtAngle)
	})
	g.Rows = append(g.Rows, Row{Name: "margin.least_time", Label: "time of the least margin", Short: "time of the least", Dimension: quantity.Time, Undefined: noBalance,
		path: []string{"stability", "least_margin_time_s"},
		of:   func(fl *sim.Flight) float64 { return when(fl.Stability.Known, fl.Stability.LeastTime) }})
	return g
}

func attack() Group {
	return Group{Name: "attack", Label: "angle of attack", Rows: []Row{
		{Name: "attack.rail_exit", Label: "angle of attack at rail exit", Short: "rail exit", Dimension: quantity.Angle, Undefined: noBalance + ", and " + neverLeft,
			path: []string{"stability", "rail_exit_angle_deg"},
			of: func(fl *sim.Flight) float64 {
				return when(fl.Stability.Known && fl.RailExit.Happened, fl.Stability.RailExitAngle)
			}},
		{Name: "attack.most", Label: "greatest angle of attack", Short: "greatest", Dimension: quantity.Angle, Undefined: pointFlies + ", and " + neverLeft,
			path: []string{"stability", "max_angle_deg"},
			of: func(fl *sim.Flight) float64 {
				return when(fl.Stability.Known && fl.RailExit.Happened && fl.Rocket.Rigid(), fl.Stability.MaxAngle)
			}},
	}}
}

// when is a value that there is, or NaN.
func when(there bool, v float64) float64 {
	if !there {
		return math.NaN()
	}
	return v
}
