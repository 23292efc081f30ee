// Package rocketfile reads, edits and saves rocket files: TOML texts that
// describe a rocket, what drives it and the day it flies.
//
// # The text is the truth
//
// A [File] is a text with the rocket that follows from it. It never changes: an
// edit such as [File.Set] replaces the bytes of one value, or adds or takes out
// a line, and reads the outcome anew into another File. Comments, order, blank
// lines, line endings, quotes and the user's units stay as they are, and a list
// of Files is all that undoing takes. Reading takes well under a millisecond;
// thrust curves and motor files are read once and shared by the edits of a File.
//
// # One table of inputs
//
// The schema lists the sections of a file and the keys of each, with label,
// step, default and help. It drives the reading of files, the edits, the search
// for unknown and missing keys, and the list of [Inputs] that screens, flags and
// sweeps work on under the dotted names of the keys. What a number measures and
// may be, and where it is, is said once, by the rocket ([rocket.Number]). How a
// key holds its value (a number with a unit, one word of several, a text, an
// opening rule, a table, a list) is the business of its codec.
//
// What is wrong with a file is told all at once, as a [fault.List]: each with file,
// line, key, value, problem and remedy. What concerns several inputs is in the
// Validate method of the rocket, whose faults find their lines here. A line that is no TOML is reported and
// stepped over, so that the lines below it are checked too.
//
// # Adding to it
//
// A number: give it a line in the list of fields of what it describes, with its
// range, here sim/airframe/fields.go,
//
//	{Key: "cant", Range: quantity.Between(quantity.Angle, "deg", -10, 10), At: func(f *Fins) *float64 { return &f.Cant }},
//
// and a row in its section of the schema, with what its nudges are in that unit.
//
//	num("cant", "cant", 0.1, 1,
//		"Angle of the fins to the axis, which makes the rocket roll.").byDefault("0 deg"),
//
// A row is a number or a count ([num]), or anything else with its codec ([text]),
// which points at the field of the rocket: one word of several (choose), a
// number or a word in its place (numberOr), a list (listCodec), rows of numbers
// (rowsCodec), which [File.EditRows] changes row by row, a text, an opening rule. It may be required, have a default or a
// value in force (otherwise), be excluded by another key, belong to one drive,
// or be an input only of some rockets (onlyFor).
//
// A key or section that gets another name leaves the one it had in former.go, and who
// still writes that is told the new one.
//
// A section: write a function like windSection, which gives its path, heading,
// count in a rocket and rows, and name it in the schema at its place on the
// screen, and says what it is (about). One that a rocket may lack has make and drop;
// one that every rocket has by its defaults, and a text may do without, is loose; a repeated one ([[fins]])
// has many, title and a row "name", by which its dotted names go; without these two
// they go by its place, counted from 1. A section within a section (water.tube)
// needs no more than its dotted path. Copy what
// is new in the rocket in Rocket.Clone. Nothing else knows the sections by name but
// motor.go, since a motor has a file of its own and a curve; spread.go, whose
// keys are names of inputs; and the shape method, since a word of a shape makes
// the whole of it due: [nose] and body.length.
package rocketfile
