// Package rocket describes a rocket and its day: the airframe, both drives it may carry,
// its canopies, the pressure chamber, site, rail and wind, and what it is judged by. It is
// plain data in SI units; [Rocket.Validate] says what is missing or disagrees. Nothing here
// flies: package sim does.
package rocket
