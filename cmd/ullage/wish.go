package main

import (
	"strings"

	"ullage/sim/quantity"
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

// usualWish is what a search is for when nothing is said.
const usualWish = "apogee.height"

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
		name, value = strings.TrimSpace(name), strings.TrimSpace(value)
	case name == "":
		name = usualWish
	}
	row, err := numbered(results.For(r), option, name)
	if err != nil {
		return study.Wish{}, err
	}
	w := study.MostOf(*row)
	w.Least = o.Least
	if o.Target != "" {
		q, err := quantity.Parse(value, row.Dimension)
		if err != nil {
			return w, badInput("--target %s: %s", name, err)
		}
		w.Target = q.Value
	}
	return w, nil
}

// numbered finds a result that is a number, for an option.
func numbered(table results.Table, option, name string) (*results.Row, error) {
	row := table.Find(name)
	switch {
	case row == nil && table.Nearest(name) != "":
		return nil, badInput("%s %s: no flight of this rocket has a result of this name; perhaps %s is meant", option, name, table.Nearest(name))
	case row == nil:
		return nil, badInput("%s %s: no flight of this rocket has a result of this name; ullage results lists them", option, name)
	case row.IsWord():
		return nil, badInput("%s %s: it is a word, and a number is needed; ullage results lists others", option, name)
	}
	return row, nil
}
