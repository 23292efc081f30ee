package ground

import (
	"bytes"
	"encoding/json"
	"errors"
	"fmt"
	"math"
	"strconv"
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
// only feature of a collection that is one; a multi-polygon of one counts. It is laid into the plane around a pad, which has to be
// inside. Every error is a BadBoundary.
func ParseBoundary(text []byte, pad Place) (Polygon, error) {
	const draw = "draw the field's outline as one polygon without holes, and save it as GeoJSON"
	var top geoObject
	if err := json.Unmarshal(bytes.TrimPrefix(text, []byte("\ufeff")), &top); errors.As(err, new(*json.UnmarshalTypeError)) {
		return nil, bad(draw, "no GeoJSON: it is no object of it")
	} else if err != nil {
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
	case "":
	default:
		found = append(found, top)
	}
	switch {
	case len(found) == 0:
		return nil, bad(draw, "holds no polygon")
	case len(found) > 1:
		return nil, bad("leave the field's own outline in it alone", "holds %d polygons", len(found))
	}
	var rings [][][]float64
	var err error
	switch found[0].Type {
	case "Polygon":
		err = json.Unmarshal(found[0].Coordinates, &rings)
	case "MultiPolygon":
		var all [][][][]float64
		if err = json.Unmarshal(found[0].Coordinates, &all); len(all) > 1 {
			return nil, bad("leave the field's own outline in it alone", "holds %d polygons", len(all))
		} else if len(all) == 1 {
			rings = all[0]
		}
	default:
		return nil, bad(draw, "is a %q, not a polygon", found[0].Type)
	}
	if err != nil || len(rings) == 0 {
		return nil, bad("give [[[longitude, latitude], …]]", "has no coordinates of a polygon")
	}
	if len(rings) > 1 {
		return nil, bad("draw the outline alone, or around what it leaves out", "has %s", several(len(rings)-1, "hole"))
	}
	return lay(rings[0], pad)
}

// lay puts a ring of longitudes and latitudes into the plane around the pad.
func lay(ring [][]float64, pad Place) (Polygon, error) {
	var at []Place
	for i, c := range ring {
		if len(c) < 2 || !(math.Abs(c[0]) <= 180) || !(math.Abs(c[1]) <= MostLatitude) {
			return nil, bad("give longitude, then latitude, in degrees", "corner %d is no place: %v", i+1, c)
		}
		if q := (Place{Latitude: c[1], Longitude: c[0]}); i == 0 || q != at[len(at)-1] { // a corner twice is one
			at = append(at, q)
		}
	}
	n := len(at) - 1 // the first again at the end (RFC 7946, section 3.1.6)
	closed := n >= 0 && len(ring) > 1 && at[n] == at[0]
	switch {
	case closed && n < 3 || !closed && n < 2:
		return nil, bad("give three or more", "has %s", several(max(n, 1), "corner"))
	case !closed:
		return nil, bad("see that it is whole, then give the first corner again at the end", "is not closed: corner %d, the last, is not the first", len(ring))
	case n > MaxCorners:
		return nil, bad("draw it with fewer", "has %d corners, more than %d", n, MaxCorners)
	}
	p, nearest := around(at[:n], pad)
	if i, j, crosses := p.Crosses(); crosses {
		return nil, bad("give the corners in turn around the field", "crosses itself: the side from corner %d meets the side from corner %d", i+1, j+1)
	}
	if !p.Holds(Point{}) {
		turned := make([]Place, n)
		for i, q := range at[:n] {
			turned[i] = Place{Latitude: q.Longitude, Longitude: q.Latitude}
		}
		if t, _ := around(turned, pad); t.Holds(Point{}) {
			return nil, bad("turn every pair round: longitude, then latitude", "has latitude before longitude: turned round, the pad is inside")
		}
	}
	if !p.Holds(Point{}) {
		away := strconv.FormatFloat(nearest/1000, 'g', 2, 64)
		if nearest > 10e3 {
			away = strconv.FormatFloat(nearest/1000, 'f', 0, 64)
		}
		return nil, bad("see that site.latitude and site.longitude are the pad's",
			"lies elsewhere: the pad is not inside, and its nearest corner is %s km away", away)
	}
	return p, nil
}

// around lays places into the plane around a pad, and tells how far the nearest is.
func around(at []Place, pad Place) (p Polygon, nearest float64) {
	nearest = math.Inf(1)
	for _, q := range at {
		c := pad.To(q)
		p, nearest = append(p, c), min(nearest, math.Hypot(c.East, c.North))
	}
	return p, nearest
}

// several counts things.
func several(n int, thing string) string {
	if n == 1 {
		return "1 " + thing
	}
	return fmt.Sprintf("%d %ss", n, thing)
}
