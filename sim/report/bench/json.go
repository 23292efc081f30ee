package bench

import (
	"io"
	"math"

	"ullage/sim/gates"
	"ullage/sim/report/machine"
	"ullage/sim/report/words"
	"ullage/sim/study"
)

// WriteJSON writes the sheet as one object in SI units, angles in degrees; null is what is not known.
func WriteJSON(w io.Writer, b *study.Benched) error {
	r := b.Rocket
	doc := new(machine.Object).Add("name", r.Name)
	seal := &r.Bench.Seal
	known := seal.Cord > 0 && len(seal.Missing()) == 0
	o := new(machine.Object)
	number := func(o *machine.Object, key string, v float64, known bool) {
		if !known {
			v = math.NaN()
		}
		o.Put(key, v)
	}
	groove, width := seal.Proposed()
	number(o, "proposed_groove_m", groove, seal.Cord > 0 && seal.Bore > 0)
	number(o, "proposed_width_m", width, seal.Cord > 0)
	number(o, "squeeze", seal.Squeeze(), known)
	number(o, "fill", seal.Fill(), known)
	number(o, "stretch", seal.Stretch(), known)
	number(o, "gap_m", seal.Gap(), known)
	number(o, "gap_allowed_m", seal.AllowedGap(gates.SealPressure(r)), seal.Cord > 0)
	doc.Add("seal", o)

	bay := &r.Bench.Bay
	o = new(machine.Object).Add("ports", bay.Number())
	number(o, "port_m", bay.Port(), bay.Volume > 0)
	doc.Add("bay", o)

	o = new(machine.Object)
	area := math.NaN()
	if b.Sealed != nil && b.Sealed.Result.Heated != nil {
		area = b.Sealed.Result.Heated.Wider().Area
	}
	o.Put("area_m2", area)
	doc.Add("vent", o)

	jigs := machine.List{}
	for i := range b.Jigs {
		j := &b.Jigs[i]
		rows := machine.List{}
		for _, x := range j.Rows {
			rows = append(rows, jigRow(x))
		}
		jigs = append(jigs, new(machine.Object).Add("power", j.Power).Add("flights", rows).Add("within_field", jigRow(j.Field)).Add("within_attack", jigRow(j.Attack)))
	}
	doc.Add("alignment", jigs)

	settings := machine.List{}
	for i := range b.Settings {
		x := &b.Settings[i]
		o := new(machine.Object).Add("power", x.Flight.Rocket.Power)
		number(o, "apogee_s", x.Flight.Apogee.Time, x.Flight.Apogee.Happened)
		o.Put("fast_until_s", x.Slow)
		o.Put("beyond_mach_0_8_until_s", x.Sonic)
		canopies := machine.List{}
		for k := range x.Flight.Canopies {
			c := &x.Flight.Canopies[k]
			line := new(machine.Object).Add("name", c.Name)
			number(line, "time_s", c.Time, c.Opened)
			number(line, "height_m", c.Height, c.Opened)
			number(line, "airspeed_mps", c.Airspeed, c.Opened)
			canopies = append(canopies, line)
		}
		o.Add("canopies", canopies)
		words.AddPressure(o, x.Flight.Rocket)
		settings = append(settings, o)
	}
	doc.Add("electronics", settings)

	f := &r.Bench.Filling
	water := r.Water != nil
	o = new(machine.Object)
	number(o, "gas_kg", b.Gas.Mass(), water)
	number(o, "strokes", b.Gas.Strokes(f.Stroke), water && f.Stroke > 0)
	number(o, "bottle_after_pa", b.Gas.BottleAfter(f), water && f.Bottle > 0 && f.BottlePressure > 0)
	number(o, "leak_by_release_pa", f.LostBy(), water)
	number(o, "leak_height_m", b.LeakCost, water)
	doc.Add("filling", o)
	return machine.WriteDocument(w, doc)
}

func jigRow(x study.JigRow) *machine.Object {
	o := new(machine.Object)
	o.Put("angle_deg", machine.Degrees(x.Angle))
	o.Put("gap_m", x.Gap)
	o.Put("landing_m", x.Drift)
	o.Add("no_canopy_open", x.Shut)
	return o
}
