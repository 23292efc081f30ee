package rocketfile

// SI values of units.
const (
	millimetre = 1e-3
	gram       = 1e-3
)
