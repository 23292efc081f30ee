// Package rocket describes a rocket and its day: the airframe, both drives it may carry,
// its canopies, the pressure chamber, site, rail and wind, and what it is judged by. It is
// plain data in SI units. Nothing here flies: package sim does.
//
// A rocket may be described in part, and be at odds with itself. [Rocket.Check] says what
// keeps it from an answer, a flight, its stability, the strength of its chamber or the page
// for the range officer; [Rocket.Validate] all that is wrong. What a number is called, may
// be and where it is stands in one list of fields for each part (fields.go, and those of
// packages airframe, chamber and atmosphere); [NumberNamed] finds any of them by its dotted
// name, and files and screens go by that. How the opening rules of canopies read and count
// is the table in trigger.go.
package rocket
