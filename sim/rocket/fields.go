package rocket

import (
	"math"

	"ullage/atmosphere"
	"ullage/sim/airframe"
	"ullage/sim/quantity"
)

func metres(min, max float64) quantity.Range { return quantity.Between(quantity.Length, "m", min, max) }

func degrees(min, max float64) quantity.Range {
	return quantity.Between(quantity.Angle, "deg", min, max)
}

func seconds(min, max float64) quantity.Range {
	return quantity.Between(quantity.Time, "s", min, max)
}

func grams(min, max float64) quantity.Range { return quantity.Between(quantity.Mass, "g", min, max) }

func number(min, max float64) quantity.Range {
	return quantity.Between(quantity.Number, "", min, max)
}

func speed(min, max float64) quantity.Range {
	return quantity.Between(quantity.Speed, "m/s", min, max)
}

var (
	place   = quantity.Millimetres(1, 20e3) // along the rocket, from the tip of the nose
	compass = quantity.Between(quantity.Bearing, "deg", -360, 360)
	inertia = quantity.Between(quantity.Inertia, "kg*m2", 1e-6, 1e4)
)

// What the numbers of a rocket and its day may be, under their names in a rocket file:
// common sense, no source. The rooms below have those of shape, chamber, site and wind.
var (
	bodyFields = []quantity.Field[Body]{
		{Key: "body.diameter", Range: quantity.Millimetres(1, 2000), At: func(b *Body) *float64 { return &b.Diameter }},
		{Key: "body.mass", Range: quantity.Between(quantity.Mass, "kg", 1e-3, 200), At: func(b *Body) *float64 { return &b.Mass }, Optional: true},
		{Key: "body.drag_factor", Range: number(0, 10), At: func(b *Body) *float64 { return &b.DragFactor }},
		{Key: "body.balance", Range: place, At: func(b *Body) *float64 { return &b.Balance }, Optional: true},
		{Key: "body.inertia", Range: inertia, At: func(b *Body) *float64 { return &b.Inertia }, Optional: true},
		{Key: "body.roll_inertia", Range: inertia, At: func(b *Body) *float64 { return &b.RollInertia }, Optional: true},
	}
	dragFields = []quantity.Field[MachDrag]{
		{Key: "body.drag", Range: number(0, 10), At: func(p *MachDrag) *float64 { return &p.Drag }},
		{Key: "body.drag.mach", Range: number(0, 10), At: func(p *MachDrag) *float64 { return &p.Mach }},
	}
	// What is filled into the chamber.
	filledFields = []quantity.Field[Water]{
		{Key: "water.fill", Range: quantity.Between(quantity.Fraction, "%", 0, 98), At: func(w *Water) *float64 { return &w.Fill }},
		{Key: "water.pressure", Range: quantity.Between(quantity.Pressure, "bar", 0, 100), At: func(w *Water) *float64 { return &w.Pressure }},
		{Key: "water.volume", Range: quantity.Between(quantity.Volume, "L", 1e-3, 1000), At: func(w *Water) *float64 { return &w.Volume }},
		{Key: "water.bore", Range: quantity.Millimetres(1, 2000), At: func(w *Water) *float64 { return &w.Bore }},
	}
	waterFields = []quantity.Field[Water]{
		{Key: "water.throat", Range: quantity.Millimetres(0.5, 500), At: func(w *Water) *float64 { return &w.Throat }},
		{Key: "water.discharge", Range: number(0.1, 1), At: func(w *Water) *float64 { return &w.Discharge }},
		// From isothermal to a little more than a monatomic gas has, 5/3.
		{Key: "water.exponent", Range: number(1, 1.7), At: func(w *Water) *float64 { return &w.Exponent }, Optional: true},
		{Key: "water.temperature", Range: quantity.Between(quantity.Temperature, "degC", -60, 100), At: func(w *Water) *float64 { return &w.Temperature }, Optional: true},
		{Key: "water.density", Range: quantity.Between(quantity.Density, "kg/m3", 300, 4000), At: func(w *Water) *float64 { return &w.Density }},
		{Key: "water.fittings", Range: grams(0, 20e3), At: func(w *Water) *float64 { return &w.Fittings }},
		{Key: "water.nozzle", Range: place, At: func(w *Water) *float64 { return &w.Nozzle }, Optional: true},
		{Key: "water.fittings_at", Range: place, At: func(w *Water) *float64 { return &w.FittingsAt }, Optional: true},
	}
	tubeFields = []quantity.Field[LaunchTube]{
		{Key: "water.tube.length", Range: quantity.Millimetres(1, 10e3), At: func(t *LaunchTube) *float64 { return &t.Length }},
		{Key: "water.tube.outer", Range: quantity.Millimetres(0.1, 500), At: func(t *LaunchTube) *float64 { return &t.Outer }},
		{Key: "water.tube.inner", Range: quantity.Millimetres(0, 500), At: func(t *LaunchTube) *float64 { return &t.Inner }},
		{Key: "water.tube.dead_volume", Range: quantity.Between(quantity.Volume, "L", 0, 100), At: func(t *LaunchTube) *float64 { return &t.DeadVolume }},
	}
	motorFields = []quantity.Field[Motor]{
		{Key: "motor.case", Range: grams(0, 100e3), At: func(m *Motor) *float64 { return &m.Case }},
		{Key: "motor.propellant", Range: grams(0.01, 100e3), At: func(m *Motor) *float64 { return &m.Propellant }},
		{Key: "motor.thrust_factor", Range: number(0.1, 10), At: func(m *Motor) *float64 { return &m.Factor }, Optional: true},
		{Key: "motor.delay", Range: seconds(0, 60), At: func(m *Motor) *float64 { return &m.Delay }, Optional: true, Absent: math.NaN()},
		{Key: "motor.diameter", Range: quantity.Millimetres(1, 500), At: func(m *Motor) *float64 { return &m.Diameter }, Optional: true},
		{Key: "motor.length", Range: quantity.Millimetres(1, 5000), At: func(m *Motor) *float64 { return &m.Length }, Optional: true},
		{Key: "motor.fittings", Range: grams(0, 20e3), At: func(m *Motor) *float64 { return &m.Fittings }},
		{Key: "motor.position", Range: place, At: func(m *Motor) *float64 { return &m.Position }, Optional: true},
		{Key: "motor.fittings_at", Range: place, At: func(m *Motor) *float64 { return &m.FittingsAt }, Optional: true},
	}
	delayFields = []quantity.Field[float64]{
		{Key: "motor.delays", Range: seconds(0, 60), At: func(v *float64) *float64 { return v }},
	}
	motorMountFields = []quantity.Field[MotorMount]{
		{Key: "motor_mount.diameter", Range: quantity.Millimetres(1, 500), At: func(m *MotorMount) *float64 { return &m.Diameter }},
		{Key: "motor_mount.length", Range: quantity.Millimetres(1, 5000), At: func(m *MotorMount) *float64 { return &m.Length }},
		{Key: "motor_mount.wall", Range: quantity.Millimetres(0.05, 50), At: func(m *MotorMount) *float64 { return &m.Wall }, Optional: true},
		{Key: "motor_mount.within", Range: quantity.Millimetres(1, 2000), At: func(m *MotorMount) *float64 { return &m.Within }, Optional: true},
		{Key: "motor_mount.liner", Range: quantity.Millimetres(1, 500), At: func(m *MotorMount) *float64 { return &m.Liner }, Optional: true},
		{Key: "motor_mount.retainer", Range: quantity.Millimetres(1, 500), At: func(m *MotorMount) *float64 { return &m.Retainer }, Optional: true},
		{Key: "motor_mount.rings", Range: number(1, 12), Count: func(m *MotorMount) *int { return &m.Rings }, Optional: true},
	}
	holeFields = []quantity.Field[Hole]{
		{Key: "position", Range: place, At: func(h *Hole) *float64 { return &h.Position }},
		{Key: "diameter", Range: quantity.Millimetres(0.1, 500), At: func(h *Hole) *float64 { return &h.Diameter }},
		{Key: "length", Range: quantity.Millimetres(0.1, 2000), At: func(h *Hole) *float64 { return &h.Length }, Optional: true},
		{Key: "count", Range: number(1, 36), Count: func(h *Hole) *int { return &h.Count }, Optional: true},
		{Key: "angle", Range: degrees(-360, 360), At: func(h *Hole) *float64 { return &h.Angle }},
	}
	canopyFields = []quantity.Field[Canopy]{
		{Key: "diameter", Range: metres(0.01, 50), At: func(c *Canopy) *float64 { return &c.Diameter }, Optional: true},
		{Key: "area", Range: quantity.Between(quantity.Area, "m2", 1e-4, 2000), At: func(c *Canopy) *float64 { return &c.Area }, Optional: true},
		// No canopy is known beyond some 1.8 on its nominal area, that of a rotor of gores (handbooks, from memory).
		{Key: "coefficient", Range: number(0.1, 2.5), At: func(c *Canopy) *float64 { return &c.Coefficient }},
		{Key: "fill_constant", Range: number(0, 100), At: func(c *Canopy) *float64 { return &c.FillConstant }},
		{Key: "opening_force_coefficient", Range: number(0, 10), At: func(c *Canopy) *float64 { return &c.OpeningForceCoefficient }},
		{Key: "gores", Range: number(3, 48), Count: func(c *Canopy) *int { return &c.Gores }, Optional: true},
		{Key: "seam", Range: quantity.Millimetres(0.1, 200), At: func(c *Canopy) *float64 { return &c.Seam }, Optional: true},
		{Key: "vent", Range: quantity.Millimetres(0, 20e3), At: func(c *Canopy) *float64 { return &c.Vent }},
	}
	railFields = []quantity.Field[Rail]{
		{Key: "rail.length", Range: metres(0.01, 100), At: func(r *Rail) *float64 { return &r.Length }, Optional: true},
		{Key: "rail.tilt", Range: degrees(0, 80), At: func(r *Rail) *float64 { return &r.Tilt }},
		{Key: "rail.heading", Range: compass, At: func(r *Rail) *float64 { return &r.Heading }},
	}
	gustFields      = atmosphere.GustFields()
	alignmentFields = []quantity.Field[Alignment]{
		{Key: "flight.misalignment", Range: degrees(-10, 10), At: func(a *Alignment) *float64 { return &a.Angle }},
		{Key: "flight.offset", Range: quantity.Millimetres(-50, 50), At: func(a *Alignment) *float64 { return &a.Offset }},
	}
	limitFields = []quantity.Field[Limits]{
		limit("rail_exit", speed(0.1, 1000), func(l *Limits) *float64 { return &l.RailExit }),
		limit("rail_exit_wind", number(0.1, 100), func(l *Limits) *float64 { return &l.RailExitWind }),
		limit("thrust_to_weight", number(0.1, 100), func(l *Limits) *float64 { return &l.ThrustToWeight }),
		limit("margin_least", number(0.01, 50), func(l *Limits) *float64 { return &l.MarginLeast }),
		limit("margin_most", number(0.01, 50), func(l *Limits) *float64 { return &l.MarginMost }),
		limit("margin_at_angle", number(0, 50), func(l *Limits) *float64 { return &l.MarginAtAngle }),
		limit("attack", degrees(0.1, 90), func(l *Limits) *float64 { return &l.Attack }),
		limit("attack_most", degrees(0.1, 180), func(l *Limits) *float64 { return &l.AttackMost }),
		limit("flutter", number(0.01, 10), func(l *Limits) *float64 { return &l.Flutter }),
		limit("tilt", degrees(0.1, 80), func(l *Limits) *float64 { return &l.Tilt }),
		limit("wind", quantity.Between(quantity.Wind, "m/s", 0.1, 1000), func(l *Limits) *float64 { return &l.Wind }),
		limit("impulse", quantity.Between(quantity.Impulse, "N*s", 0.1, 1e6), func(l *Limits) *float64 { return &l.Impulse }),
		limit("opening", speed(0.1, 1000), func(l *Limits) *float64 { return &l.Opening }),
		limit("mount_factor", number(0.1, 100), func(l *Limits) *float64 { return &l.MountFactor }),
		limit("landing", speed(0.1, 1000), func(l *Limits) *float64 { return &l.Landing }),
		limit("energy", quantity.Between(quantity.Energy, "J", 0.01, 1e7), func(l *Limits) *float64 { return &l.Energy }),
		limit("proof_factor", number(1.25, 10), func(l *Limits) *float64 { return &l.ProofFactor }),
		limit("proof_cycles", number(1, 1e6), func(l *Limits) *float64 { return &l.ProofCycles }),
		limit("proof_days", number(1, 36500), func(l *Limits) *float64 { return &l.ProofDays }),
	}
	fieldFields = []quantity.Field[Field]{
		{Key: "field.ceiling", Range: metres(1, 100e3), At: func(f *Field) *float64 { return &f.Ceiling }, Optional: true},
		{Key: "field.radius", Range: metres(1, 100e3), At: func(f *Field) *float64 { return &f.Radius }, Optional: true},
		{Key: "field.clear", Range: metres(1, 100e3), At: func(f *Field) *float64 { return &f.Clear }, Optional: true},
	}
)

// limit is a field of the limits, all of which may be left to their defaults.
func limit(key string, r quantity.Range, at func(*Limits) *float64) quantity.Field[Limits] {
	return quantity.Field[Limits]{Key: "limits." + key, Range: r, At: at, Optional: true}
}

// partFields are those of a mass list, which a rocket may have without a shape.
var partFields = airframe.PartFields()
