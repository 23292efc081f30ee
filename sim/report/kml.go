package report

import (
	"bufio"
	"encoding/xml"
	"fmt"
	"io"

	"ullage/sim"
	"ullage/sim/report/words"
	"ullage/sim/rocket"
	"ullage/sim/study"
)

// LandingsKML writes landings as a map in KML 2.3 (OGC 12-007r2): a Placemark a landing, as they
// come, then the ellipses that hold 90 % of each kind, the field, and the day's track in three
// dimensions, its heights above the ground. Close ends it, whatever was added.
type LandingsKML struct {
	w   *bufio.Writer
	pad Place
}

// NewLandingsKML starts a map around the pad.
func NewLandingsKML(w io.Writer, pad Place, r *rocket.Rocket) *LandingsKML {
	m := &LandingsKML{bufio.NewWriterSize(w, landingsBuffer), pad}
	m.w.WriteString(xml.Header + `<kml xmlns="http://www.opengis.net/kml/2.3" version="2.3">` + "\n<Document><name>")
	_ = xml.EscapeText(m.w, []byte(words.Title(r))) // a buffer keeps its error for Flush
	m.w.WriteString("</name>\n")
	return m
}

// Add writes one landing.
func (m *LandingsKML) Add(l study.LandingPoint) error {
	p := m.pad.Offset(l.East, l.North)
	_, err := fmt.Fprintf(m.w, "<Placemark><name>%s %d</name><Point><coordinates>%.7f,%.7f</coordinates></Point></Placemark>\n",
		l.Kind, l.Draw, p.Longitude, p.Latitude)
	return err
}

// Close writes the rest. The flight is that of the day, kept; nil leaves the track out.
func (m *LandingsKML) Close(r study.Dispersion, f *rocket.Field, day *sim.Flight) error {
	for _, x := range []struct {
		kind   study.LandingKind
		landed int
		of     study.Ellipse
	}{{study.Planned, r.Landed, r.Landing}, {study.DrogueOnly, r.DrogueOnly.Landed, r.DrogueOnly.Landing}, {study.Falling, r.Ballistic.Landed, r.Ballistic.Landing}} {
		if x.landed > 2 && x.of.Major > 0 && x.of.Minor > 0 {
			m.ring(x.kind.String()+", 90 % of them", ellipseRing(m.pad, x.of))
		}
	}
	if f.Radius > 0 {
		m.ring("field", ellipseRing(m.pad, study.Ellipse{Major: f.Radius, Minor: f.Radius}))
	}
	if len(f.Boundary) > 0 {
		m.ring("field's boundary", outline(m.pad, f.Boundary))
	}
	if day != nil {
		m.track(day)
	}
	m.w.WriteString("</Document>\n</kml>\n")
	return m.w.Flush()
}

func (m *LandingsKML) ring(name string, ring []Place) {
	m.w.WriteString("<Placemark><name>" + name + "</name><Polygon><outerBoundaryIs><LinearRing><coordinates>")
	for i := range len(ring) + 1 { // the first again at the end
		p := ring[i%len(ring)]
		fmt.Fprintf(m.w, "%.7f,%.7f ", p.Longitude, p.Latitude)
	}
	m.w.WriteString("</coordinates></LinearRing></outerBoundaryIs></Polygon></Placemark>\n")
}

// trackPoints is how many places of a flight its track has.
const trackPoints = 400

func (m *LandingsKML) track(fl *sim.Flight) {
	m.w.WriteString("<Placemark><name>the day's flight</name><LineString><altitudeMode>relativeToGround</altitudeMode><coordinates>")
	for i := range trackPoints {
		s := fl.At(fl.Duration() * float64(i) / (trackPoints - 1))
		p := m.pad.Offset(s.East, s.North)
		fmt.Fprintf(m.w, "%.7f,%.7f,%.2f ", p.Longitude, p.Latitude, max(s.Height, 0))
	}
	m.w.WriteString("</coordinates></LineString></Placemark>\n")
}
