package main

import (
	"math"

	"ullage/sim/ground"
	"ullage/sim/report/fieldmap"
	"ullage/sim/rocket"
)

// padOf is the pad as the file has it.
func padOf(r *rocket.Rocket) fieldmap.Pad {
	return fieldmap.Pad{Place: ground.Place{Latitude: r.Site.Latitude, Longitude: r.Site.Longitude}, Elevation: r.Site.Elevation}
}

// mappable refuses places of which no map is drawn.
func mappable(p fieldmap.Pad) error {
	switch {
	case !(math.Abs(p.Latitude) <= ground.MostLatitude):
		return badInput("latitude %v: a map needs one from -%v to %v degrees", p.Latitude, ground.MostLatitude, ground.MostLatitude)
	case !(math.Abs(p.Longitude) <= 180):
		return badInput("longitude %v: from -180 to 180 degrees are meant", p.Longitude)
	}
	return nil
}
