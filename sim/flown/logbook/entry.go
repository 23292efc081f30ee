package logbook

import (
	"math"
	"slices"
	"strings"

	"ullage/sim/quantity"
)

// Kind is what an entry is of.
type Kind string

// The kinds.
const (
	Proof      Kind = "proof"
	LeakTest   Kind = "leak test"
	Flight     Kind = "flight"
	StaticTest Kind = "static test"
	Abort      Kind = "abort"
)

// Kinds are all of them, in the order to offer them.
func Kinds() []string {
	return []string{string(Proof), string(LeakTest), string(StaticTest), string(Flight), string(Abort)}
}

// Entry is one entry. A number that is not given is NaN, a text empty.
type Entry struct {
	Date    string // 2026-05-17, or with the time of day behind a blank
	Kind    Kind
	Chamber string // serial of the chamber

	Pressure        float64 // gauge, Pa
	Held            float64 // s
	WallTemperature float64 // K
	AirTemperature  float64 // K

	Fill   float64 // of the volume
	Throat float64 // m
	Motor  string
	Delay  float64 // s
	Rail   float64 // m
	Tilt   float64 // rad
	Wind   float64 // m/s

	Predicted, Measured map[string]string // results by their names, with units

	Log     string   // the recorder's file
	Columns []string // as --column takes them
	Rate    string   // as --rate takes it
	Heights string   // as --height takes it
	Part    string   // of the log, by its clock, where it holds more: "100 s to 200 s"

	Landing float64 // vertical speed measured, m/s
	Damage  string
	Note    string

	Line int // in the book, from 1; 0 for one that is not in it yet
}

// New is an entry of which nothing is known.
func New() Entry {
	nan := math.NaN()
	return Entry{Pressure: nan, Held: nan, WallTemperature: nan, AirTemperature: nan, Fill: nan, Throat: nan, Delay: nan,
		Rail: nan, Tilt: nan, Wind: nan, Landing: nan}
}

// Field is what an entry holds under one key of a book: a number, a text, a list of texts or a
// table of results.
type Field struct {
	Key       string
	Help      string
	Dimension quantity.Dimension // of a number
	Unit      string             // to write it in
	Number    func(*Entry) *float64
	Text      func(*Entry) *string
	List      func(*Entry) *[]string
	Results   func(*Entry) *map[string]string
	Told      bool // by whoever makes the entry, as key and value
}

// Fields are those of an entry in the order of a book.
func Fields() []Field {
	number := func(key string, d quantity.Dimension, unit, help string, at func(*Entry) *float64) Field {
		return Field{Key: key, Help: help, Dimension: d, Unit: unit, Number: at, Told: true}
	}
	text := func(key, help string, at func(*Entry) *string) Field {
		return Field{Key: key, Help: help, Text: at, Told: true}
	}
	own := func(key, help string, at func(*Entry) *string) Field { return Field{Key: key, Help: help, Text: at} }
	return []Field{
		own("date", "day, and time of day if you like", func(e *Entry) *string { return &e.Date }),
		own("kind", "what it was", func(e *Entry) *string { return (*string)(&e.Kind) }),
		text("chamber", "serial of the chamber", func(e *Entry) *string { return &e.Chamber }),
		number("pressure", quantity.Pressure, "bar", "greatest gauge pressure", func(e *Entry) *float64 { return &e.Pressure }),
		number("held", quantity.Time, "s", "how long it was held", func(e *Entry) *float64 { return &e.Held }),
		number("wall_temperature", quantity.Temperature, "degC", "of the chamber's wall", func(e *Entry) *float64 { return &e.WallTemperature }),
		number("air_temperature", quantity.Temperature, "degC", "of the air", func(e *Entry) *float64 { return &e.AirTemperature }),
		number("fill", quantity.Fraction, "%", "liquid, of the volume", func(e *Entry) *float64 { return &e.Fill }),
		number("throat", quantity.Length, "mm", "of the nozzle", func(e *Entry) *float64 { return &e.Throat }),
		text("motor", "which motor flew", func(e *Entry) *string { return &e.Motor }),
		number("delay", quantity.Time, "s", "of the motor's charge", func(e *Entry) *float64 { return &e.Delay }),
		number("rail", quantity.Length, "m", "guided length", func(e *Entry) *float64 { return &e.Rail }),
		number("tilt", quantity.Angle, "deg", "of the rail", func(e *Entry) *float64 { return &e.Tilt }),
		number("wind", quantity.Wind, "m/s", "of the day", func(e *Entry) *float64 { return &e.Wind }),
		number("landing", quantity.Speed, "m/s", "vertical speed of landing, measured", func(e *Entry) *float64 { return &e.Landing }),
		text("damage", "what was found damaged", func(e *Entry) *string { return &e.Damage }),
		text("note", "anything else", func(e *Entry) *string { return &e.Note }),
		own("log", "the recorder's file", func(e *Entry) *string { return &e.Log }),
		{Key: "columns", Help: "as --column takes them", List: func(e *Entry) *[]string { return &e.Columns }},
		own("rate", "as --rate takes it", func(e *Entry) *string { return &e.Rate }),
		own("heights", "as --height takes it", func(e *Entry) *string { return &e.Heights }),
		own("part", "of the log, by its clock", func(e *Entry) *string { return &e.Part }),
		{Key: "predicted", Help: "results by their names", Results: func(e *Entry) *map[string]string { return &e.Predicted }},
		{Key: "measured", Help: "results by their names", Results: func(e *Entry) *map[string]string { return &e.Measured }},
	}
}

// Told are the fields that whoever makes an entry may tell.
func Told() []Field {
	return slices.DeleteFunc(Fields(), func(f Field) bool { return !f.Told })
}

// Pressurises tells whether the chamber was under pressure in the entry: a motor's flight
// without a pressure was not; everything else that does not tell counts, an abort too: with
// pressure = "0 bar" it does not.
func (e *Entry) Pressurises() bool {
	if !math.IsNaN(e.Pressure) {
		return e.Pressure > 0
	}
	return e.Motor == ""
}

// Damaged tells whether damage was found.
func (e *Entry) Damaged() bool {
	switch strings.ToLower(strings.TrimSpace(e.Damage)) {
	case "", "none", "no", "-":
		return false
	}
	return true
}
