package ground

import (
	"encoding/json"
	"fmt"
	"math"
)

// A geoObject is any object of RFC 7946, as far as it is looked at.
type geoObject struct {
	Type        string
	Coordinates json.RawMessage
	Geometry    *geoObject
	Features    []geoObject
}

// MaxCorners bounds a boundary.
const MaxCorners = 2000

// BadBoundary is what is wrong with a boundary, and what to do about it.
type BadBoundary struct{ Problem, Remedy string }

func (e BadBoundary) Error() string { return e.Problem + "; " + e.Remedy }

func bad(remedy, problem string, a ...any) error {
	return BadBoundary{fmt.Sprintf(problem, a...), remedy}
}

// ParseBoundary reads the one polygon of a GeoJSON text (RFC 7946): by itself, a feature, or the
// only feature of a collection that is one. It is laid into the plane around a pad, which has to be
// inside. Every error is a BadBoundary.
func ParseBoundary(text []byte, pad Place) (Polygon, error) {
	const draw = "draw the field's outline as one polygon without holes, and save it as GeoJSON"
	var top geoObject
	if err := json.Unmarshal(text, &top); err != nil {
		return nil, bad(draw, "no GeoJSON: %v", err)
	}
	var found []geoObject
	switch top.Type {
	case "FeatureCollection":
		for _, f := range top.Features {
			if f.Geometry != nil && (f.Geometry.Type == "Polygon" || f.Geometry.Type == "MultiPolygon") {
				found = append(found, *f.Geometry)
			}
		}
	case "Feature":
		if top.Geometry != nil {
			found = append(found, *top.Geometry)
		}
	default:
		found = append(found, top)
	}
	switch {
	case len(found) == 0:
		return nil, bad(draw, "holds no polygon")
	case len(found) > 1:
		return nil, bad("leave the field's own outline in it alone", "holds %d polygons", len(found))
	case found[0].Type != "Polygon":
		return nil, bad(draw, "is a %q, not a polygon", found[0].Type)
	}
	var rings [][][]float64
	if err := json.Unmarshal(found[0].Coordinates, &rings); err != nil || len(rings) == 0 {
		return nil, bad("give [[[longitude, latitude], …]]", "has no coordinates of a polygon")
	}
	if len(rings) > 1 {
		return nil, bad("draw the outline alone, or around what it leaves out", "has %d holes", len(rings)-1)
	}
	return lay(rings[0], pad)
}

// lay puts a ring of longitudes and latitudes into the plane around the pad.
func lay(ring [][]float64, pad Place) (Polygon, error) {
	n := len(ring)
	if n > 1 && n <= MaxCorners+1 && len(ring[0]) > 1 && len(ring[n-1]) > 1 && ring[0][0] == ring[n-1][0] && ring[0][1] == ring[n-1][1] {
		n-- // the first again, as RFC 7946 wants it
	}
	switch {
	case n < 3:
		return nil, bad("give three or more", "has %d corners", n)
	case n > MaxCorners:
		return nil, bad("draw it with fewer", "has %d corners, more than %d", n, MaxCorners)
	}
	p := make(Polygon, n)
	nearest := math.Inf(1)
	for i, c := range ring[:n] {
		if len(c) < 2 || !(math.Abs(c[0]) <= 180) || !(math.Abs(c[1]) <= MostLatitude) {
			return nil, bad("give longitude, then latitude, in degrees", "corner %d is no place: %v", i+1, c)
		}
		p[i] = pad.To(Place{Latitude: c[1], Longitude: c[0]})
		nearest = min(nearest, math.Hypot(p[i].East, p[i].North))
	}
	if i, j, crosses := p.Crosses(); crosses {
		return nil, bad("give the corners in turn around the field", "crosses itself: the side from corner %d meets the side from corner %d", i+1, j+1)
	}
	if !p.Holds(Point{}) {
		return nil, bad("see that site.latitude and site.longitude are the pad's, and that the file has longitude before latitude",
			"lies elsewhere: the pad is not inside, and its nearest corner is %.3g km away", nearest/1000)
	}
	return p, nil
}
