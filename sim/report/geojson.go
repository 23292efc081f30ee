package report

import (
	"bufio"
	"fmt"
	"io"
	"math"
	"strconv"

	"ullage/sim/ground"
	"ullage/sim/report/machine"
	"ullage/sim/rocket"
	"ullage/sim/study"
)

// Place is a point on the map in decimal degrees, north and east positive.
type Place = ground.Place

// MostLatitude is the latitude up to which a map is drawn, degrees.
const MostLatitude = ground.MostLatitude

// LandingsMap writes landings as GeoJSON (RFC 7946): a FeatureCollection of a Point
// a landing, those without canopies (ballistic) among them, as they come, and at last the Polygons
// of the ellipses that hold 90 % of either and of the field. Close ends it, whatever was added: the text is whole even when it is cut short,
// and has a member `partial` then.
type LandingsMap struct {
	w     *bufio.Writer
	pad   Place
	begun bool
}

// NewLandingsMap starts a map around the pad.
func NewLandingsMap(w io.Writer, pad Place) *LandingsMap {
	return &LandingsMap{w: bufio.NewWriterSize(w, landingsBuffer), pad: pad}
}

// begin writes what stands before the next feature.
func (m *LandingsMap) begin() {
	if m.begun {
		m.w.WriteString(",\n")
		return
	}
	m.begun = true
	m.w.WriteString(`{"type":"FeatureCollection","features":[` + "\n")
}

// Add writes one landing.
func (m *LandingsMap) Add(l study.LandingPoint) error {
	m.begin()
	b := append(m.w.AvailableBuffer(), `{"type":"Feature","geometry":{"type":"Point","coordinates":`...)
	b = appendPosition(b, m.pad.Offset(l.East, l.North))
	b = append(b, `},"properties":{"kind":"`...)
	b = append(b, l.Kind.String()...)
	b = append(b, `","draw":`...)
	b = strconv.AppendInt(b, int64(l.Draw), 10)
	b = append(b, `,"apogee_m":`...)
	b = machine.AppendNumber(b, l.Apogee) // a landing has one
	_, err := m.w.Write(append(b, `}}`...))
	return err
}

// Close writes the ellipses, if there are any, and how far the field reaches, if that is said, and
// ends the collection.
func (m *LandingsMap) Close(r study.Dispersion, f *rocket.Field) error {
	radius := f.Radius
	for _, x := range []struct {
		kind    string
		landed  int
		outside int
		of      study.Ellipse
	}{{"ellipse_90", r.Landed, r.Outside, r.Landing}, {"drogue_only_90", r.DrogueOnly.Landed, r.DrogueOnly.Outside, r.DrogueOnly.Landing}, {"ballistic_90", r.Ballistic.Landed, r.Ballistic.Outside, r.Ballistic.Landing}} {
		if x.landed > 2 && x.of.Major > 0 && x.of.Minor > 0 {
			m.begin()
			m.w.WriteString(`{"type":"Feature","geometry":`)
			m.w.Write(appendPolygon(nil, ellipseRing(m.pad, x.of)))
			fmt.Fprintf(m.w, `,"properties":{"kind":"%s","landings":%d`, x.kind, x.landed)
			if f.Bounded() {
				fmt.Fprintf(m.w, `,"outside":%d`, x.outside)
			}
			m.w.WriteString(`}}`)
		}
	}
	if radius > 0 {
		m.begin()
		m.w.WriteString(`{"type":"Feature","geometry":`)
		m.w.Write(appendPolygon(nil, ellipseRing(m.pad, study.Ellipse{Major: radius, Minor: radius})))
		b := append(m.w.AvailableBuffer(), `,"properties":{"kind":"field","radius_m":`...)
		m.w.Write(append(machine.AppendNumber(b, radius), `}}`...))
	}
	if len(f.Boundary) > 0 {
		m.begin()
		m.w.WriteString(`{"type":"Feature","geometry":{"type":"Polygon","coordinates":[`)
		m.w.Write(appendRing(nil, outline(m.pad, f.Boundary)))
		b := append(m.w.AvailableBuffer(), `]},"properties":{"kind":"boundary","area_m2":`...)
		m.w.Write(append(machine.AppendNumber(b, f.Boundary.Area()), `}}`...))
	}
	if !m.begun {
		m.w.WriteString(`{"type":"FeatureCollection","features":[`)
	}
	end := "\n]}\n"
	if r.Partial {
		end = "\n]," + `"partial":true` + "}\n"
	}
	m.w.WriteString(end)
	return m.w.Flush()
}

// outline is a boundary on the map, counter-clockwise.
func outline(pad Place, p ground.Polygon) []Place {
	ring := make([]Place, len(p))
	for i, c := range p {
		if !p.Counterclockwise() {
			i = len(p) - 1 - i
		}
		ring[i] = pad.Offset(c.East, c.North)
	}
	return ring
}

// ellipsePoints is how many corners stand for the ellipse: the polygon keeps within
// 0.2 % of it.
const ellipsePoints = 72

// ellipseRing is the ellipse's outline, counter-clockwise as RFC 7946 wants an
// exterior ring (section 3.1.6), its first point not repeated. Longitudes may pass 180.
func ellipseRing(pad Place, e study.Ellipse) []Place {
	sin, cos := math.Sincos(e.Heading)
	ring := make([]Place, ellipsePoints)
	for i := range ring {
		along, across := math.Sincos(2 * math.Pi * float64(i) / ellipsePoints)
		along, across = across*e.Major, along*e.Minor
		// The major axis points (sin, cos) east and north; (-cos, sin) is to its left.
		ring[i] = pad.Offset(e.East+along*sin-across*cos, e.North+along*cos+across*sin)
	}
	return ring
}

// appendPolygon writes a convex ring; one that crosses the antimeridian is cut there
// in two (RFC 7946, section 3.1.9).
func appendPolygon(b []byte, ring []Place) []byte {
	var parts [][]Place
	for turn := -360.0; turn <= 360; turn += 360 {
		part := make([]Place, len(ring))
		for i, p := range ring {
			part[i] = Place{Latitude: p.Latitude, Longitude: p.Longitude + turn}
		}
		part = clipped(clipped(part, 1), -1)
		if len(part) > 2 {
			parts = append(parts, part)
		}
	}
	if len(parts) == 1 {
		return append(appendRing(append(b, `{"type":"Polygon","coordinates":[`...), parts[0]), `]}`...)
	}
	b = append(b, `{"type":"MultiPolygon","coordinates":[`...)
	for i, part := range parts {
		if i > 0 {
			b = append(b, ',')
		}
		b = append(appendRing(append(b, '['), part), ']')
	}
	return append(b, `]}`...)
}

// clipped is what of a convex ring has side·longitude up to 180 (Sutherland and Hodgman,
// Comm. ACM 17 (1974) 32).
func clipped(ring []Place, side float64) []Place {
	var out []Place
	for i, p := range ring {
		q := ring[(i+1)%len(ring)]
		in, next := side*p.Longitude < 180, side*q.Longitude < 180
		if in {
			out = append(out, p)
		}
		if in != next {
			f := (side*180 - p.Longitude) / (q.Longitude - p.Longitude)
			out = append(out, Place{Latitude: p.Latitude + f*(q.Latitude-p.Latitude), Longitude: side * 180})
		}
	}
	return out
}

func appendRing(b []byte, ring []Place) []byte {
	b = append(b, '[')
	for i := range len(ring) + 1 { // the first point again at the end
		if i > 0 {
			b = append(b, ',')
		}
		b = appendPosition(b, ring[i%len(ring)])
	}
	return append(b, ']')
}

// appendPosition writes longitude, then latitude, to a centimetre.
func appendPosition(b []byte, p Place) []byte {
	const decimals = 7
	lon := math.Remainder(p.Longitude, 360)
	if math.Abs(p.Longitude) == 180 {
		lon = p.Longitude // which side of the cut it is on matters
	}
	b = strconv.AppendFloat(append(b, '['), lon, 'f', decimals, 64)
	b = strconv.AppendFloat(append(b, ','), p.Latitude, 'f', decimals, 64)
	return append(b, ']')
}
