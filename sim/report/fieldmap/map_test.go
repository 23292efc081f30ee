package fieldmap

import (
	"bytes"
	"context"
	"encoding/json"
	"encoding/xml"
	"fmt"
	"math"
	"slices"
	"strings"
	"syscall"
	"testing"

	"github.com/peterstace/simplefeatures/geom"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"ullage/sim"
	"ullage/sim/ground"
	"ullage/sim/rocket"
	"ullage/sim/rocketfile"
	"ullage/sim/study"
)

var meadow = Pad{Place: ground.Place{Latitude: 50.5, Longitude: -1.25}, Elevation: 120}

// read is a map as a library for simple features (OGC 06-103r4) reads it, which refuses rings that
// are open, cross themselves or have no area.
func read(t require.TestingT, text []byte) geom.GeoJSONFeatureCollection {
	var c geom.GeoJSONFeatureCollection
	require.NoError(t, json.Unmarshal(text, &c))
	return c
}

// of is the geometry of the first feature of a kind.
func of(t require.TestingT, c geom.GeoJSONFeatureCollection, kind string) geom.GeoJSONFeature {
	i := slices.IndexFunc(c, func(f geom.GeoJSONFeature) bool { return f.Properties["kind"] == kind })
	require.GreaterOrEqual(t, i, 0, kind)
	return c[i]
}

// back is a place of a map in the plane around the pad.
func back(pad Pad, c geom.Coordinates) ground.Point {
	return pad.To(ground.Place{Latitude: c.Y, Longitude: c.X})
}

// corners are those of the outer ring of a polygon.
func corners(g geom.Geometry) []geom.Coordinates {
	s := g.MustAsPolygon().ExteriorRing().Coordinates()
	out := make([]geom.Coordinates, s.Length())
	for i := range out {
		out[i] = s.Get(i)
	}
	return out
}

// whole is a scatter with something of every kind.
var whole = study.Dispersion{Landed: 9, Outside: 2, Landing: study.Ellipse{East: 80, North: -30, Major: 60, Minor: 25, Heading: 30 * math.Pi / 180},
	DrogueOnly: study.Fallen{Landed: 5, Outside: 5, Landing: study.Ellipse{East: 10, Major: 5, Minor: 4}},
	Ballistic:  study.Fallen{Landed: 4, Outside: 1, Landing: study.Ellipse{East: -10, Major: 3, Minor: 2}}}

var outlined = rocket.Field{Radius: 300, Boundary: ground.Polygon{{East: -90, North: -90}, {East: 0, North: 90}, {East: 90, North: -90}}} // clockwise

// told is all there is, in either form.
func told(t *testing.T, m *Map, fl *sim.Flight) {
	m.Of(rocket.WaterPower)
	require.NoError(t, m.Course(study.Falling, fl))
	require.NoError(t, m.Landing(study.LandingPoint{Draw: 3, East: 100, North: -50, Apogee: 150}))
	require.NoError(t, m.Rest(&whole, &outlined, ground.Keep(20, 45, 30)))
	m.Of("")
	require.NoError(t, m.Pad(meadow))
	require.NoError(t, m.Close(false))
}

func flown(t *testing.T) *sim.Flight {
	fl, err := sim.Fly(context.Background(), rocketfile.Starter().Rocket(), sim.Options{Keep: true})
	require.NoError(t, err)
	return fl
}

// Everything is where it is said to be, read back by a library; a ring of the map is as far from the
// pad as a geodesic of that length.
func TestGeoJSON(t *testing.T) {
	fl := flown(t)
	var b bytes.Buffer
	told(t, NewGeoJSON(&b, meadow), fl)
	c := read(t, b.Bytes())
	require.Len(t, c, 9)
	line := of(t, c, "track").Geometry.MustAsLineString().Coordinates()
	require.Equal(t, geom.DimXYZ, line.CoordinatesType())
	highest := 0.0
	for i := range line.Length() {
		highest = max(highest, line.Get(i).Z)
	}
	assert.InDelta(t, 120+fl.Apogee.Height, highest, 0.1)
	last := line.Get(line.Length() - 1)
	end := back(meadow, last)
	assert.InDelta(t, fl.Landing.East, end.East, 0.02)
	assert.InDelta(t, fl.Landing.North, end.North, 0.02)
	assert.InDelta(t, 120, last.Z, 0.01)

	landing := of(t, c, "landing")
	at := back(meadow, must(landing.Geometry.MustAsPoint().Coordinates()))
	assert.InDelta(t, 100, at.East, 0.02)
	assert.InDelta(t, -50, at.North, 0.02)
	assert.Equal(t, map[string]any{"kind": "landing", "drive": "water", "draw": 3.0, "apogee_m": 150.0}, landing.Properties)

	e := of(t, c, "ellipse_90")
	assert.Equal(t, map[string]any{"kind": "ellipse_90", "drive": "water", "landings": 9.0, "outside": 2.0, "outside_share": 2.0 / 9}, e.Properties)
	sin, cos := math.Sincos(whole.Landing.Heading)
	for _, q := range corners(e.Geometry) { // on the ellipse, whose long axis points 30° from north
		p := back(meadow, q)
		x, y := p.East-80, p.North+30
		assert.InDelta(t, 1, math.Hypot((x*sin+y*cos)/60, (x*cos-y*sin)/25), 1e-3)
	}
	assert.Equal(t, 5.0, of(t, c, "drogue_only_90").Properties["outside"])
	assert.Equal(t, 4.0, of(t, c, "ballistic_90").Properties["landings"])
	for kind, radius := range map[string]float64{"field": 300, "clear_distance": 45} {
		g := of(t, c, kind).Geometry
		require.True(t, g.MustAsPolygon().IsCCW(), "RFC 7946, section 3.1.6")
		for _, q := range corners(g) {
			p := back(meadow, q)
			assert.InDelta(t, radius, math.Hypot(p.East, p.North), 0.02)
		}
	}
	assert.Equal(t, map[string]any{"kind": "clear_distance", "drive": "water", "people_m": 45.0, "by": "field"}, of(t, c, "clear_distance").Properties)
	boundary := of(t, c, "boundary")
	assert.True(t, boundary.Geometry.MustAsPolygon().IsCCW())
	assert.Equal(t, 90.0*180, boundary.Properties["area_m2"])
	assert.Equal(t, map[string]any{"kind": "pad", "elevation_m": 120.0, "altitudes": "above mean sea level"}, of(t, c, "pad").Properties)
}

func must(c geom.Coordinates, ok bool) geom.Coordinates {
	if !ok {
		panic("empty")
	}
	return c
}

// What is read back by the standard library's XML reader has the names and the order of OGC's schema
// and lies where the flight and its landings do.
func TestKML(t *testing.T) {
	fl := flown(t)
	type placemark struct {
		Name  string   `xml:"name"`
		Style string   `xml:"styleUrl"`
		Data  []string `xml:"ExtendedData>Data>value"`
		Point string   `xml:"Point>coordinates"`
		Ring  string   `xml:"Polygon>outerBoundaryIs>LinearRing>coordinates"`
		Mode  string   `xml:"LineString>altitudeMode"`
		Line  string   `xml:"LineString>coordinates"`
	}
	type document struct {
		XMLName  xml.Name `xml:"http://www.opengis.net/kml/2.3 kml"`
		Version  string   `xml:"version,attr"`
		Document struct {
			Name  string `xml:"name"`
			Style []struct {
				ID string `xml:"id,attr"`
			} `xml:"Style"`
			Folder []struct {
				Name      string      `xml:"name"`
				Placemark []placemark `xml:"Placemark"`
			} `xml:"Folder"`
			Placemark []placemark `xml:"Placemark"`
		}
	}
	of := func(pad Pad) document {
		var b bytes.Buffer
		told(t, NewKML(&b, pad, `Heron & "sons" <1>`), fl)
		inOrder(t, b.Bytes())
		var k document
		require.NoError(t, xml.Unmarshal(b.Bytes(), &k))
		return k
	}
	k := of(meadow)
	assert.Equal(t, "2.3", k.Version)
	assert.Equal(t, `Heron & "sons" <1>`, k.Document.Name)
	require.Len(t, k.Document.Folder, 1)
	assert.Equal(t, "water", k.Document.Folder[0].Name)
	require.Len(t, k.Document.Placemark, 1)
	marks := k.Document.Folder[0].Placemark
	require.Len(t, marks, 8)
	var styles []string
	for _, s := range k.Document.Style {
		styles = append(styles, "#"+s.ID)
	}
	place := func(text string) (at ground.Point, height float64) {
		var p ground.Place
		n, _ := fmt.Sscanf(text, "%g,%g,%g", &p.Longitude, &p.Latitude, &height)
		require.GreaterOrEqual(t, n, 2, text)
		return meadow.To(p), height
	}
	for _, m := range append(marks, k.Document.Placemark...) {
		assert.Contains(t, styles, m.Style)
		assert.NotEmpty(t, m.Data)
		if m.Ring != "" {
			ring := strings.Fields(m.Ring)
			require.GreaterOrEqual(t, len(ring), 4)
			assert.Equal(t, ring[0], ring[len(ring)-1], "closed")
		}
	}
	assert.Equal(t, "absolute", marks[0].Mode)
	track := strings.Fields(marks[0].Line)
	at, height := place(track[len(track)-1])
	assert.InDelta(t, fl.Landing.East, at.East, 0.02)
	assert.InDelta(t, fl.Landing.North, at.North, 0.02)
	assert.InDelta(t, 120, height, 0.01)
	at, _ = place(marks[1].Point)
	assert.InDelta(t, 100, at.East, 0.02)
	assert.InDelta(t, -50, at.North, 0.02)
	assert.Equal(t, "clear distance, 45 m", marks[7].Name)
	low := meadow
	low.Elevation = 0
	assert.Equal(t, "relativeToGround", of(low).Document.Folder[0].Placemark[0].Mode, "where the elevation is not given")
}

// sequences are the orders in which the schema of KML 2.3 wants what is below an element (ogckml23.xsd, from memory).
var sequences = map[string][]string{
	"Document":        {"name", "Style", "Folder", "Placemark"},
	"Folder":          {"name", "Placemark"},
	"Placemark":       {"name", "styleUrl", "ExtendedData", "Point", "LineString", "Polygon"},
	"Style":           {"IconStyle", "LabelStyle", "LineStyle", "PolyStyle"},
	"IconStyle":       {"color", "scale"},
	"LabelStyle":      {"scale"},
	"LineStyle":       {"color", "width"},
	"PolyStyle":       {"color", "fill"},
	"Data":            {"value"},
	"ExtendedData":    {"Data"},
	"Point":           {"coordinates"},
	"LineString":      {"altitudeMode", "coordinates"},
	"Polygon":         {"tessellate", "altitudeMode", "outerBoundaryIs"},
	"LinearRing":      {"coordinates"},
	"kml":             {"Document"},
	"outerBoundaryIs": {"LinearRing"},
}

// inOrder holds a document to the sequences.
func inOrder(t *testing.T, text []byte) {
	d := xml.NewDecoder(bytes.NewReader(text))
	var path []string
	last := []int{0}
	for {
		token, err := d.Token()
		if err != nil {
			require.Equal(t, "EOF", err.Error())
			return
		}
		switch x := token.(type) {
		case xml.StartElement:
			if len(path) > 0 {
				i := slices.Index(sequences[path[len(path)-1]], x.Name.Local)
				require.GreaterOrEqual(t, i, last[len(last)-1], "%s in %v", x.Name.Local, path)
				last[len(last)-1] = i
			}
			path, last = append(path, x.Name.Local), append(last, 0)
		case xml.EndElement:
			path, last = path[:len(path)-1], last[:len(last)-1]
		}
	}
}

// The straight pieces of a track keep within 0.1 m of the flight, whenever.
func TestTrackKeepsToTheFlight(t *testing.T) {
	fl := flown(t)
	at := track(nil, fl)
	require.Less(t, len(at), 3000)
	far := 0.0
	for i := range 2000 {
		s := fl.At(fl.Duration() * (float64(i) + 0.5) / 2000)
		near := math.Inf(1)
		for k := 1; k < len(at); k++ {
			near = math.Min(near, apart(at[k-1], at[k], spot{s.East, s.North, math.Max(s.Height, 0)}))
		}
		far = math.Max(far, near)
	}
	assert.Less(t, far, 0.1)
}

// apart is how far a place is from a straight piece.
func apart(a, b, p spot) float64 {
	d, q := spot{b.east - a.east, b.north - a.north, b.height - a.height}, spot{p.east - a.east, p.north - a.north, p.height - a.height}
	dot := func(x, y spot) float64 { return x.east*y.east + x.north*y.north + x.height*y.height }
	if l := dot(d, d); l > 0 {
		f := min(max(dot(q, d)/l, 0), 1)
		q = spot{q.east - f*d.east, q.north - f*d.north, q.height - f*d.height}
	}
	return math.Sqrt(dot(q, q))
}

func TestMapOfOneLandingIsOnePoint(t *testing.T) {
	nan := math.NaN()
	text := mapOf(t, meadow, study.Dispersion{Landed: 1, Landing: study.Ellipse{East: 100, North: 200, Major: nan, Minor: nan, Heading: nan}},
		study.LandingPoint{Draw: 3, East: 100, North: 200, Apogee: 150})
	require.Len(t, read(t, text), 1)
	assert.Empty(t, read(t, mapOf(t, meadow, study.Dispersion{})), "none at all is still a map")
	var c struct{ Partial bool }
	require.NoError(t, json.Unmarshal(mapOf(t, meadow, study.Dispersion{Partial: true}), &c))
	assert.True(t, c.Partial)
}

func mapOf(t require.TestingT, pad Pad, r study.Dispersion, points ...study.LandingPoint) []byte {
	var b bytes.Buffer
	m := NewGeoJSON(&b, pad)
	for _, p := range points {
		require.NoError(t, m.Landing(p))
	}
	require.NoError(t, m.Rest(&r, &rocket.Field{}, ground.Kept{}))
	require.NoError(t, m.Close(r.Partial))
	return b.Bytes()
}

func TestMapsCrossTheAntimeridianCut(t *testing.T) {
	e := study.Ellipse{East: 10, North: 20, Major: 80, Minor: 40, Heading: 1}
	for _, place := range []ground.Place{{Latitude: 50, Longitude: 179.9999}, {Latitude: 50, Longitude: -179.9999}, {Latitude: -10, Longitude: 180}, {Latitude: -10, Longitude: -180}} {
		pad := Pad{Place: place}
		c := read(t, mapOf(t, pad, study.Dispersion{Landed: 3, Landing: e}, study.LandingPoint{East: 60}, study.LandingPoint{East: -60}))
		parts := c[2].Geometry.MustAsMultiPolygon()
		require.Equal(t, 2, parts.NumPolygons())
		assert.Less(t, c[0].Geometry.MustAsPoint().DumpCoordinates().Get(0).X, 0.0, "east of the line")
		assert.Greater(t, c[1].Geometry.MustAsPoint().DumpCoordinates().Get(0).X, 0.0, "west of it")
		var b bytes.Buffer
		g := newGeoJSON(&b, pad)
		require.NoError(t, g.add(&feature{kind: "track", shape: aTrack, at: []spot{{-60, 0, 0}, {60, 10, 100}, {-60, 20, 50}, {70, 30, 0}}}))
		require.NoError(t, g.close(false))
		lines := read(t, b.Bytes())[0].Geometry.MustAsMultiLineString()
		require.Equal(t, 4, lines.NumLineStrings())
		for i := range 4 {
			s := lines.LineStringN(i).Coordinates()
			for k := range s.Length() {
				require.LessOrEqual(t, math.Abs(s.Get(k).X), 180.0)
				require.Equal(t, i%2 == 1, s.Get(k).X < 0, "%d of %d", k, i)
			}
		}
	}
}

// Any map is one that the library takes, and has the area of its ellipse.
func TestAnyMapIsValid(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		number := func(name string, low, high float64) float64 { return rapid.Float64Range(low, high).Draw(t, name) }
		pad := Pad{Place: ground.Place{Latitude: number("latitude", -ground.MostLatitude, ground.MostLatitude), Longitude: number("longitude", -180, 180)}}
		major := number("major", 1, 5000)
		e := study.Ellipse{East: number("east", -5000, 5000), North: number("north", -5000, 5000),
			Major: major, Minor: major * number("flatness", 0.05, 1), Heading: number("heading", 0, math.Pi)}
		c := read(t, mapOf(t, pad, study.Dispersion{Landed: 9, Landing: e}, study.LandingPoint{East: e.East, North: e.North}))
		require.Len(t, c, 2)
		require.Positive(t, c[1].Geometry.Area())
		env := c[1].Geometry.Envelope()
		low, high, ok := env.MinMaxXYs()
		require.True(t, ok)
		require.LessOrEqual(t, high.X, 180.0)
		require.GreaterOrEqual(t, low.X, -180.0)
	})
}

// stubborn is a disk that is full.
type stubborn struct{}

func (stubborn) Write([]byte) (int, error) { return 0, syscall.ENOSPC }

func TestMapsTellOfAFullDisk(t *testing.T) {
	for _, m := range []*Map{NewGeoJSON(stubborn{}, meadow), NewKML(stubborn{}, meadow, "x")} {
		var err error
		for i := 0; i < 1000 && err == nil; i++ {
			err = m.Landing(study.LandingPoint{Draw: i})
		}
		require.ErrorIs(t, err, syscall.ENOSPC)
		require.ErrorIs(t, m.Close(false), syscall.ENOSPC)
	}
}
