package ground

import "math"

// WGS 84, the datum of RFC 7946 and of KML: semi-major axis, m, and first eccentricity squared
// (NIMA TR8350.2, 3rd edition, table 3.1 and 3.3).
const (
	wgsAxis         = 6378137.0
	wgsEccentricity = 6.69437999014e-3
)

const degree = math.Pi / 180

// Place is a point on the map in decimal degrees, north and east positive.
type Place struct{ Latitude, Longitude float64 }

// radii are what the ellipsoid's radii of curvature, along the meridian and across it, make of a
// degree of latitude and of longitude there, m.
func (p Place) radii() (meridian, across float64) {
	sin, cos := math.Sincos(p.Latitude * degree)
	w := 1 - wgsEccentricity*sin*sin
	return degree * wgsAxis * (1 - wgsEccentricity) / (w * math.Sqrt(w)), degree * wgsAxis / math.Sqrt(w) * cos
}

// Offset is the place a distance east and north, m, of another: along the ellipsoid's
// radii of curvature there, so for distances that are small beside the Earth.
func (p Place) Offset(east, north float64) Place {
	meridian, across := p.radii()
	return Place{Latitude: p.Latitude + north/meridian, Longitude: p.Longitude + east/across}
}

// To is how far east and north of it another place lies, m: the inverse of Offset.
func (p Place) To(q Place) Point {
	meridian, across := p.radii()
	return Point{math.Remainder(q.Longitude-p.Longitude, 360) * across, (q.Latitude - p.Latitude) * meridian}
}

// MostLatitude is the latitude up to which a map is drawn, degrees: east and north
// lose their meaning at the poles.
const MostLatitude = 89.0
