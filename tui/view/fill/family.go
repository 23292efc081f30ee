package fill

import (
	"ullage/sim/quantity"
	"ullage/sim/rocket"
	"ullage/sim/rocketfile"
	"ullage/tui/draw"
	"ullage/tui/view"
)

// family is what the curves of the fill view differ by.
type family int

// The families: today's rocket alone, or with it two others.
const (
	alone family = iota
	byPressure
	byThroat
	families
)

// input is the input that the members differ in; empty when there is one alone.
func (f family) input() string { return [families]string{"", "water.pressure", "water.throat"}[f] }

// one is what its members differ in.
func (f family) one() string { return [families]string{"", "pressure", "throat"}[f] }

// member is one rocket of a family.
type member struct {
	name   string // its value with the unit
	today  bool   // it is the rocket as it stands
	rocket *rocket.Rocket
}

// members are the rockets of a family in rising order of the value. Of values
// that the input cannot take there is none.
func (f family) members(file *rocketfile.File, sys quantity.System) []member {
	own := file.Rocket()
	if f == alone {
		return []member{{today: true, rocket: own}}
	}
	in, err := rocketfile.Find(own, f.input())
	if err != nil {
		return []member{{today: true, rocket: own}}
	}
	unit := sys.Unit(file.Unit(in.Name))
	today, _ := in.Get(own)
	var out []member
	for _, v := range view.Around(today, in, unit) {
		r := file.Rocket()
		if in.Set(r, v) == nil {
			out = append(out, member{draw.Exact(v, unit, 6), v == today, r})
		}
	}
	return out
}
