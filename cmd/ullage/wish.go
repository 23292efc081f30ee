package main

import (
	"errors"
	"strings"

	"ullage/sim/fault"
	"ullage/sim/results"
	"ullage/sim/rocket"
	"ullage/sim/study"
)

// wishOption says what a search is for.
type wishOption struct {
	For    string `placeholder:"RESULT" xor:"wish" help:"Search for the most of a result instead of the highest apogee, as in --for landing.drift --least. ullage results lists the names."`
	Least  bool   `help:"Search for the least of it."`
	Target string `sep:"none" placeholder:"RESULT=VALUE" xor:"wish" help:"Search for a value of a result, as in --target 'apogee.height=300 m'; the nearest there is if none comes to it."`
}

// wish is what is wanted of a flight of the rocket.
func (o wishOption) wish(r *rocket.Rocket) (study.Wish, error) {
	option, name, value := "--for", o.For, ""
	switch {
	case o.Least && o.For == "":
		return study.Wish{}, badInput("--least is for --for; name a result, as in --for landing.drift --least")
	case o.Target != "":
		var given bool
		option = "--target"
		if name, value, given = strings.Cut(o.Target, "="); !given {
			return study.Wish{}, badInput("--target %s: a result, =, and a value are needed, as in --target 'apogee.height=300 m'", o.Target)
		}
		if name, value = strings.TrimSpace(name), strings.TrimSpace(value); value == "" {
			value = " " // which no unit reads
		}
	case name == "":
		name = study.UsualWish
	}
	w, err := study.WishFor(results.For(r), name, o.Least, value)
	if bad := (fault.Fault{}); errors.As(err, &bad) && bad.Key == "" {
		return w, badInput("%s %s: %s", option, name, err)
	}
	if err != nil {
		return w, badInput("%s %s", option, err)
	}
	return w, nil
}

// numbered finds a result that is a number, for an option.
func numbered(table results.Table, option, name string) (*results.Row, error) {
	row, err := table.Number(name)
	if err != nil {
		return nil, badInput("%s %s", option, err)
	}
	return row, nil
}
