package study

import (
	"slices"
	"strings"

	"ullage/sim/fault"
	"ullage/sim/rocket"
	"ullage/sim/rocketfile"
)

// bearsOnChamber tells of an input on which hangs whether a chamber goes with the rest of its rocket.
func bearsOnChamber(in rocketfile.Input) bool {
	switch in.Name {
	case "body.diameter", "water.bore", "water.volume", "water.throat":
		return true
	}
	return strings.HasPrefix(in.Name, "chamber.")
}

// ofChamber is what keeps the chamber of a rocket from going with the rest of it, a fault.List: no flight looks at that,
// and a file is refused for it. What is missing of it is none.
func ofChamber(r *rocket.Rocket) error {
	if r.Chamber == nil {
		return nil
	}
	return slices.DeleteFunc(r.Check(rocket.ForChamber), func(f fault.Fault) bool { return f.Missing }).Err()
}
