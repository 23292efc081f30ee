package rocketfile

import (
	"errors"

	"ullage/sim/fault"
	"ullage/sim/ground"
)

// boundary reads the outline of the field, once the place of the pad is known.
func (rd *reading) boundary() {
	const key = "field.boundary"
	at, ok := rd.where[key]
	if !ok || at.node.kind != stringNode || aFileName(at.node.text) != nil {
		return
	}
	site := &rd.rocket.Site
	if !site.Located {
		rd.odds(at, key, "site.latitude", "lies nowhere without the pad's place", "give latitude and longitude in [site]")
		return
	}
	outline, err := rd.disk.boundary(beside(at.doc.dir, at.node.text), ground.Place{Latitude: site.Latitude, Longitude: site.Longitude})
	var bad ground.BadBoundary
	switch {
	case errors.As(err, &bad):
		rd.fault(at, key, at.doc.written(at.node), bad.Problem, bad.Remedy)
	case err != nil:
		rd.fault(at, key, at.doc.written(at.node), fault.Reason(err), "name a GeoJSON file with the field's outline")
	default:
		rd.rocket.Field.Boundary = outline
	}
}

// boundary is the outline in a file around a pad.
func (d *files) boundary(path string, pad ground.Place) (ground.Polygon, error) {
	text, err := d.read(path)
	if err != nil {
		return nil, err
	}
	return ground.ParseBoundary(text, pad)
}
