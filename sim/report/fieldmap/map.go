package fieldmap

import (
	"fmt"
	"io"
	"math"

	"ullage/sim"
	"ullage/sim/ground"
	"ullage/sim/report/machine"
	"ullage/sim/rocket"
	"ullage/sim/study"
)

// A feature is one thing on a map.
type feature struct {
	drive rocket.Power // empty of what all drives share
	kind  string       // for programs
	name  string       // for people
	shape shape
	at    []spot
	facts []fact
}

// spot is a place in the plane around the pad and its height above it, m.
type spot struct{ east, north, height float64 }

type shape uint8

const (
	aSpot    shape = iota
	aTrack         // in three dimensions
	aOutline       // closed, the first corner not repeated, counter-clockwise
)

// fact is a property of a feature, a word or a number in SI.
type fact struct {
	key    string
	word   string
	number float64 // where there is no word; not finite: none
}

// form is a way to write features.
type form interface {
	add(f *feature) error
	close(partial bool) error
}

// Map writes what is on a map, in the order in which it is told. Close ends it, whatever was told:
// the text is whole even when it is cut short.
type Map struct {
	form form
	now  feature // its memory is used again
}

// Pad is where on the map the rocket starts.
type Pad struct {
	ground.Place
	Elevation float64 // above mean sea level, m
}

// NewGeoJSON starts a FeatureCollection. Altitudes are above mean sea level, of which the ellipsoid
// that RFC 7946 counts from may lie a hundred metres off: the pad says so.
func NewGeoJSON(w io.Writer, pad Pad) *Map { return &Map{form: newGeoJSON(w, pad)} }

// NewKML starts a document for a globe. Tracks are above mean sea level where the pad's elevation is
// given, above the ground else.
func NewKML(w io.Writer, pad Pad, title string) *Map { return &Map{form: newKML(w, pad, title)} }

// Of says which drive what follows is of; none in particular when empty.
func (m *Map) Of(drive rocket.Power) { m.now.drive = drive }

// begin is a feature without places and facts.
func (m *Map) begin(kind, name string, s shape) *feature {
	m.now = feature{drive: m.now.drive, kind: kind, name: name, shape: s, at: m.now.at[:0], facts: m.now.facts[:0]}
	return &m.now
}

func (f *feature) put(key string, v float64) { f.facts = append(f.facts, fact{key: key, number: v}) }
func (f *feature) say(key, word string)      { f.facts = append(f.facts, fact{key: key, word: word}) }

// Pad puts the pad on the map.
func (m *Map) Pad(p Pad) error {
	f := m.begin("pad", "pad", aSpot)
	f.at = append(f.at, spot{})
	f.put("elevation_m", p.Elevation)
	f.say("altitudes", "above mean sea level")
	return m.form.add(f)
}

// Landing puts one landing on the map.
func (m *Map) Landing(l study.LandingPoint) error {
	f := m.begin(l.Kind.String(), "", aSpot)
	f.at = append(f.at, spot{l.East, l.North, 0})
	f.put("draw", float64(l.Draw))
	f.put("apogee_m", l.Apogee)
	return m.form.add(f)
}

// Rest puts on the map what a scatter comes to, where its field ends, and how far people are kept
// away.
func (m *Map) Rest(r *study.Dispersion, f *rocket.Field, k ground.Kept) error {
	if err := m.Ellipses(r, f); err != nil {
		return err
	}
	if err := m.Field(f); err != nil {
		return err
	}
	return m.Clear(k)
}

// ellipseKinds are what the ellipses are called for programs.
var ellipseKinds = [...]string{study.Planned: "ellipse_90", study.DrogueOnly: "drogue_only_90", study.Falling: "ballistic_90"}

// kindNames are the kinds of landing for people.
var kindNames = [...]string{study.Planned: "as planned", study.DrogueOnly: "the main does not open", study.Falling: "ballistic: no canopy opens"}

// Ellipses puts the ellipses on the map that hold 90 % of each kind of landing, where there are
// enough for one, with how many of them are outside the field where its end is known.
func (m *Map) Ellipses(r *study.Dispersion, field *rocket.Field) error {
	for kind, x := range r.Kinds() {
		if x.Landed < 3 || !(x.Landing.Major > 0 && x.Landing.Minor > 0) {
			continue
		}
		f := m.begin(ellipseKinds[kind], kindNames[kind]+", 90 % of them", aOutline)
		f.at = ellipse(f.at, x.Landing)
		f.put("landings", float64(x.Landed))
		if field.Bounded() {
			f.put("outside", float64(x.Outside))
			f.put("outside_share", float64(x.Outside)/float64(x.Landed))
		}
		if err := m.form.add(f); err != nil {
			return err
		}
	}
	return nil
}

// Field puts on the map how far the field reaches, as far as it is said.
func (m *Map) Field(field *rocket.Field) error {
	if v := field.Radius; v > 0 {
		f := m.begin("field", "field", aOutline)
		f.at = ellipse(f.at, study.Ellipse{Major: v, Minor: v})
		f.put("radius_m", v)
		if err := m.form.add(f); err != nil {
			return err
		}
	}
	b := field.Boundary
	if len(b) == 0 {
		return nil
	}
	f := m.begin("boundary", "field's boundary", aOutline)
	for i := range b {
		if !b.Counterclockwise() {
			i = len(b) - 1 - i
		}
		f.at = append(f.at, spot{b[i].East, b[i].North, 0})
	}
	f.put("area_m2", b.Area())
	return m.form.add(f)
}

// Clear puts the ring on the map within which people are not.
func (m *Map) Clear(k ground.Kept) error {
	if k.People == 0 {
		return nil
	}
	f := m.begin("clear_distance", fmt.Sprintf("clear distance, %.0f m", math.Ceil(k.People-1e-9)), aOutline)
	f.at = ellipse(f.at, study.Ellipse{Major: k.People, Minor: k.People})
	f.put("people_m", k.People)
	f.say("by", string(k.By))
	return m.form.add(f)
}

// Course puts the track of a flight on the map, which keeps within trackWithin of it. The flight has
// to be kept.
func (m *Map) Course(kind study.LandingKind, fl *sim.Flight) error {
	f := m.begin("track", "flight "+kindNames[kind], aTrack)
	f.at = track(f.at, fl)
	f.say("recovery", [...]string{study.Planned: "planned", study.DrogueOnly: study.DrogueOnly.String(), study.Falling: study.Falling.String()}[kind])
	if fl.Apogee.Happened {
		f.put("apogee_m", fl.Apogee.Height)
	}
	if fl.Landing.Happened {
		f.put("landing_s", fl.Landing.Time)
		f.put("drift_m", math.Hypot(fl.Landing.East, fl.Landing.North))
	}
	return m.form.add(f)
}

// Close writes the rest; one that is partial says so.
func (m *Map) Close(partial bool) error { return m.form.close(partial) }

// ellipsePoints is how many corners stand for the ellipse: the polygon keeps within
// 0.2 % of it.
const ellipsePoints = 72

// ellipse is the outline of one, counter-clockwise.
func ellipse(at []spot, e study.Ellipse) []spot {
	sin, cos := math.Sincos(e.Heading)
	for i := range ellipsePoints {
		across, along := math.Sincos(2 * math.Pi * float64(i) / ellipsePoints)
		along, across = along*e.Major, across*e.Minor
		// The major axis points (sin, cos) east and north; (-cos, sin) is to its left.
		at = append(at, spot{e.East + along*sin - across*cos, e.North + along*cos + across*sin, 0})
	}
	return at
}

// appendNumber writes a fact's number as JSON has it.
func (x *fact) appendNumber(b []byte) []byte { return machine.AppendNumber(b, x.number) }
