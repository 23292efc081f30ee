package ground

import "math"

// WGS 84, the datum of RFC 7946 and of KML: semi-major axis, m, and first eccentricity squared
// (NIMA TR8350.2, 3rd edition, table 3.1 and 3.3).
const (
	wgsAxis         = 6378137.0
	wgsEccentricity = 6.69437999014e-3
	wgsSecond       = wgsEccentricity / (1 - wgsEccentricity) // second eccentricity squared
)

const degree = math.Pi / 180

// Place is a point on the map in decimal degrees, north and east positive.
type Place struct{ Latitude, Longitude float64 }

// The plane around a pad has as directions those in which geodesics leave the pad, and as distances
// their lengths. Offset and To are the direct and the inverse problem of B. R. Bowring, The direct
// and inverse problems for short geodesic lines on the ellipsoid, Surveying and Mapping 41 (1981)
// 135, from memory: within a millimetre up to 100 km.
type short struct{ a, b, c, sin, cos float64 }

func (p Place) short() short {
	sin, cos := math.Sincos(p.Latitude * degree)
	return short{math.Sqrt(1 + wgsSecond*cos*cos*cos*cos), math.Sqrt(1 + wgsSecond*cos*cos), math.Sqrt(1 + wgsSecond), sin, cos}
}

// Offset is the place a distance east and north, m, of another. Its longitude may pass 180.
func (p Place) Offset(east, north float64) Place {
	s := math.Hypot(east, north)
	if s == 0 {
		return p
	}
	k := p.short()
	sinTo, cosTo := east/s, north/s
	sin, cos := math.Sincos(s * k.b * k.b / (wgsAxis * k.c))
	turned := math.Atan2(k.a*sin*sinTo, k.b*k.cos*cos-sin*k.sin*cosTo) / k.a
	d := math.Asin(sin*(cosTo-k.sin*sinTo*math.Tan(k.a*turned/2)/k.a)) / 2
	up := 2 * d * (k.b - 1.5*wgsSecond*d*math.Sin(2*p.Latitude*degree+4./3*k.b*d))
	return Place{Latitude: p.Latitude + up/degree, Longitude: p.Longitude + turned/degree}
}

// To is how far east and north of it another place lies, m: the inverse of Offset. Places far away
// lie no more than roughly there.
func (p Place) To(q Place) Point {
	k := p.short()
	up := (q.Latitude - p.Latitude) * degree
	w := k.a * math.Remainder(q.Longitude-p.Longitude, 360) * degree / 2
	d := up / (2 * k.b) * (1 + 3*wgsSecond/(4*k.b*k.b)*up*math.Sin(2*p.Latitude*degree+2./3*up))
	sinD, cosD := math.Sincos(d)
	e, f := sinD*math.Cos(w), math.Sin(w)/k.a*(k.b*k.cos*cosD-k.sin*sinD)
	s := wgsAxis * k.c * 2 * math.Asin(min(math.Hypot(e, f), 1)) / (k.b * k.b)
	to := math.Atan2(f, e) - math.Atan((k.sin+k.b*k.cos*math.Tan(d))*math.Tan(w)/k.a)
	sin, cos := math.Sincos(to)
	return Point{s * sin, s * cos}
}

// MostLatitude is the latitude up to which a map is drawn, degrees: east and north
// lose their meaning at the poles.
const MostLatitude = 89.0
