package bench

import (
	"ullage/sim/fault"
	"ullage/sim/quantity"
)

// Bench is all of it for one rocket.
type Bench struct {
	Seal    Seal
	Bay     Bay
	Jig     float64 // from the nozzle or the mount to where the gap of an alignment jig is read, m
	Filling Filling
}

// Fields lists the numbers under their names in a rocket file. Their ranges are common sense, no source.
func Fields() []quantity.Field[Bench] {
	pressure := func(most float64) quantity.Range { return quantity.Between(quantity.Pressure, "bar", 0.001, most) }
	across := quantity.Millimetres(0.1, 2000)
	return []quantity.Field[Bench]{
		{Key: "seal.cord", Range: quantity.Millimetres(0.5, 20), At: func(b *Bench) *float64 { return &b.Seal.Cord }, Optional: true},
		{Key: "seal.inside", Range: across, At: func(b *Bench) *float64 { return &b.Seal.Inside }, Optional: true},
		{Key: "seal.groove", Range: across, At: func(b *Bench) *float64 { return &b.Seal.Groove }, Optional: true},
		{Key: "seal.width", Range: quantity.Millimetres(0.1, 100), At: func(b *Bench) *float64 { return &b.Seal.Width }, Optional: true},
		{Key: "seal.bore", Range: across, At: func(b *Bench) *float64 { return &b.Seal.Bore }, Optional: true},
		{Key: "seal.plug", Range: across, At: func(b *Bench) *float64 { return &b.Seal.Plug }, Optional: true},
		{Key: "seal.hardness", Range: quantity.Between(quantity.Number, "", 30, 99), At: func(b *Bench) *float64 { return &b.Seal.Hardness }, Optional: true},
		{Key: "bay.volume", Range: quantity.Between(quantity.Volume, "L", 0.005, 100), At: func(b *Bench) *float64 { return &b.Bay.Volume }, Optional: true},
		{Key: "bay.ports", Range: quantity.Between(quantity.Number, "", 1, 12), Count: func(b *Bench) *int { return &b.Bay.Ports }, Optional: true},
		{Key: "jig.length", Range: quantity.Millimetres(10, 5000), At: func(b *Bench) *float64 { return &b.Jig }, Optional: true},
		{Key: "filling.stroke", Range: quantity.Between(quantity.Volume, "L", 0.01, 20), At: func(b *Bench) *float64 { return &b.Filling.Stroke }, Optional: true},
		{Key: "filling.bottle", Range: quantity.Between(quantity.Volume, "L", 0.01, 500), At: func(b *Bench) *float64 { return &b.Filling.Bottle }, Optional: true},
		{Key: "filling.bottle_pressure", Range: pressure(400), At: func(b *Bench) *float64 { return &b.Filling.BottlePressure }, Optional: true},
		{Key: "filling.leak", Range: pressure(100), At: func(b *Bench) *float64 { return &b.Filling.Leak }, Optional: true},
		{Key: "filling.leak_time", Range: quantity.Between(quantity.Time, "min", 0.1, 1440), At: func(b *Bench) *float64 { return &b.Filling.LeakTime }, Optional: true},
		{Key: "filling.wait", Range: quantity.Between(quantity.Time, "min", 0.01, 1440), At: func(b *Bench) *float64 { return &b.Filling.Wait }, Optional: true},
	}
}

// fields is the list, made once: a check may be asked for thousands of times.
var fields = Fields()

// Check tells what is wrong by the names of a rocket file, nil when nothing is.
func (b *Bench) Check() fault.List {
	var faults fault.List
	quantity.Check(&faults, b, fields)
	s := &b.Seal
	switch {
	case s.Groove != 0 && s.Bore != 0 && s.Groove >= s.Bore:
		faults.Add("seal.groove", "leaves no room for the ring", "give the diameter of the groove's floor, less than seal.bore")
	case s.Plug != 0 && s.Bore != 0 && s.Plug > s.Bore:
		faults.Add("seal.plug", "is wider than the bore", "give the diameter of the plug beside the groove, at most seal.bore")
	case s.Plug != 0 && s.Groove != 0 && s.Plug <= s.Groove:
		faults.Add("seal.plug", "is no wider than the floor of its groove", "give the diameter of the plug beside the groove")
	}
	return faults
}
