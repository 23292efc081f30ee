package ground

import (
	"math"
	"strconv"
	"strings"
	"testing"

	"github.com/peterstace/simplefeatures/geom"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"
)

// A degree along the meridian and along the parallel of WGS 84 at 0, 45 and 89° (NIMA TR8350.2's
// ellipsoid; lengths as geodesy handbooks have them, from memory: 110.574, 111.132, 111.694 km and
// 111.320, 78.847, 1.949 km), by the slope at the place.
func TestDegreesOfWGS84(t *testing.T) {
	for _, row := range []struct{ latitude, meridian, across float64 }{{0, 110574, 111320}, {45, 111132, 78847}, {89, 111694, 1949}} {
		p := Place{row.latitude, 10}
		assert.InDelta(t, row.meridian, 1/(p.Offset(0, 1).Latitude-row.latitude), 0.6)
		assert.InDelta(t, row.across, 1/(p.Offset(1, 0).Longitude-10), 0.6)
	}
}

// A geodesic by its own equations on the ellipsoid, dφ/ds = cos α/M, dλ/ds = sin α/(N cos φ), dα/ds =
// tan φ sin α/N, by Runge and Kutta's steps: what Offset and To have in closed form.
func TestAgainstTheGeodesicsEquations(t *testing.T) {
	const steps = 20
	rates := func(y [3]float64) [3]float64 {
		sin, cos := math.Sincos(y[0])
		sinA, cosA := math.Sincos(y[2])
		w := 1 - wgsEccentricity*sin*sin
		m, n := wgsAxis*(1-wgsEccentricity)/math.Pow(w, 1.5), wgsAxis/math.Sqrt(w)
		return [3]float64{cosA / m, sinA / (n * cos), sin / cos * sinA / n}
	}
	along := func(y, k [3]float64, h float64) [3]float64 {
		return [3]float64{y[0] + h*k[0], y[1] + h*k[1], y[2] + h*k[2]}
	}
	for _, latitude := range []float64{-80, -33, 0, 50.5, 71} {
		for _, far := range []float64{30, 500, 20000} {
			for turn := range 8 {
				pad := Place{latitude, 179.9}
				sin, cos := math.Sincos(float64(turn)*math.Pi/4 + 0.1)
				y, h := [3]float64{pad.Latitude * degree, pad.Longitude * degree, math.Atan2(sin, cos)}, far/steps
				for range steps {
					k1 := rates(y)
					k2 := rates(along(y, k1, h/2))
					k3 := rates(along(y, k2, h/2))
					k4 := rates(along(y, k3, h))
					for i := range y {
						y[i] += h / 6 * (k1[i] + 2*k2[i] + 2*k3[i] + k4[i])
					}
				}
				got := pad.Offset(far*sin, far*cos)
				assert.InDelta(t, 0, (got.Latitude*degree-y[0])*wgsAxis, 1e-4)
				assert.InDelta(t, 0, (got.Longitude*degree-y[1])*wgsAxis*math.Cos(y[0]), 1e-4)
				back := pad.To(Place{y[0] / degree, y[1] / degree})
				assert.InDelta(t, far*sin, back.East, 1e-4)
				assert.InDelta(t, far*cos, back.North, 1e-4)
			}
		}
	}
}

func TestOffsetAndBack(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		pad := Place{rapid.Float64Range(-85, 85).Draw(t, "latitude"), rapid.Float64Range(-180, 180).Draw(t, "longitude")}
		at := Point{rapid.Float64Range(-5000, 5000).Draw(t, "east"), rapid.Float64Range(-5000, 5000).Draw(t, "north")}
		back := pad.To(pad.Offset(at.East, at.North))
		assert.InDelta(t, at.East, back.East, 1e-4)
		assert.InDelta(t, at.North, back.North, 1e-4)
	})
}

// Closed cases: a square, a triangle, an L, a regular polygon of n corners, n/2·r²·sin(2π/n).
func TestAreas(t *testing.T) {
	for _, row := range []struct {
		area float64
		p    Polygon
	}{
		{4, Polygon{{-1, -1}, {1, -1}, {1, 1}, {-1, 1}}},
		{6, Polygon{{0, 0}, {0, 3}, {4, 0}}},
		{3, Polygon{{0, 0}, {2, 0}, {2, 1}, {1, 1}, {1, 2}, {0, 2}}},
	} {
		assert.InDelta(t, row.area, row.p.Area(), 1e-12)
	}
	var p Polygon
	for i := range 7 {
		sin, cos := math.Sincos(2 * math.Pi * float64(i) / 7)
		p = append(p, Point{100 * sin, 100 * cos})
	}
	assert.InDelta(t, 3.5*1e4*math.Sin(2*math.Pi/7), p.Area(), 1e-9)
	assert.InDelta(t, 100*math.Cos(math.Pi/7), p.Inside(Point{}), 1e-9, "the inner radius")
	assert.InDelta(t, -100, p.Inside(Point{0, 200}), 1e-9, "outside, from a corner")
}

// The share of random points in a polygon is its area's; distance and inside agree; what lies in the
// dent of an L is outside.
func TestHolds(t *testing.T) {
	p := Polygon{{0, 0}, {2, 0}, {2, 1}, {1, 1}, {1, 2}, {0, 2}}
	in := 0
	for i := range 200 {
		for j := range 200 {
			q := Point{(float64(i) + 0.5) / 100, (float64(j) + 0.5) / 100}
			if p.Holds(q) {
				in++
			}
			require.Equal(t, p.Holds(q), p.Inside(q) > 0)
		}
	}
	assert.Equal(t, 30000, in)
	assert.InDelta(t, -0.25, p.Inside(Point{1.25, 1.5}), 1e-12)
}

// Any ring is the library's, which goes by OGC 06-103r4: whether it crosses itself, its area, what it holds.
func TestPolygonsAgainstALibrary(t *testing.T) {
	simple, crossed := 0, 0
	rapid.Check(t, func(t *rapid.T) {
		n := rapid.IntRange(3, 7).Draw(t, "corners")
		var p Polygon
		var flat []float64
		for range n {
			// To the millimetre, as no survey is: below a hair of arithmetic either may say what it likes.
			c := Point{float64(rapid.IntRange(-100000, 100000).Draw(t, "east")) / 1000, float64(rapid.IntRange(-100000, 100000).Draw(t, "north")) / 1000}
			if len(p) > 0 && (c == p[len(p)-1] || c == p[0]) {
				continue // a corner told twice is one by the time that a boundary is read
			}
			p, flat = append(p, c), append(flat, c.East, c.North)
		}
		if len(p) < 3 {
			return
		}
		ring := geom.NewLineString(geom.NewSequence(append(flat, flat[0], flat[1]), geom.DimXY))
		polygon := geom.NewPolygon([]geom.LineString{ring})
		_, _, crosses := p.Crosses()
		if polygon.Validate() != nil {
			crossed++
			require.True(t, crosses || p.Area() < 1e-9)
			return
		}
		simple++
		require.False(t, crosses)
		require.InDelta(t, polygon.Area(), p.Area(), 1e-6)
		for range 5 {
			q := Point{rapid.Float64Range(-100, 100).Draw(t, "x"), rapid.Float64Range(-100, 100).Draw(t, "y")}
			at := geom.XY{X: q.East, Y: q.North}.AsPoint().AsGeometry()
			if d, ok := geom.Distance(polygon.Boundary().AsGeometry(), at); ok && d > 1e-9 {
				require.InDelta(t, d, math.Abs(p.Inside(q)), 1e-9)
				require.Equal(t, geom.Intersects(polygon.AsGeometry(), at), p.Holds(q))
			}
		}
	})
	require.True(t, simple > 10 && crossed > 10, "%d and %d", simple, crossed)
}

func TestBoundary(t *testing.T) {
	pad := Place{50.5, -1.25}
	ring := func(corners ...Point) string {
		var parts []string
		for _, c := range append(corners, corners[0]) {
			q := pad.Offset(c.East, c.North)
			parts = append(parts, "["+number(q.Longitude)+","+number(q.Latitude)+"]")
		}
		return "[" + strings.Join(parts, ",") + "]"
	}
	square := ring(Point{-300, -200}, Point{300, -200}, Point{300, 200}, Point{-300, 200})
	polygon := `{"type":"Polygon","coordinates":[` + square + `]}`
	for _, text := range []string{polygon, `{"type":"Feature","properties":{},"geometry":` + polygon + `}`,
		"\ufeff" + `{"type":"MultiPolygon","coordinates":[[` + square + `]]}`,
		`{"type":"FeatureCollection","features":[{"type":"Feature","geometry":{"type":"Point","coordinates":[1,2]}},{"type":"Feature","geometry":` + polygon + `}]}`} {
		p, err := ParseBoundary([]byte(text), pad)
		require.NoError(t, err, text)
		require.Len(t, p, 4)
		assert.InEpsilon(t, 600*400, p.Area(), 1e-6)
	}
	for text, says := range map[string]string{
		`null`:                                 "holds no polygon",
		`[]`:                                   "no GeoJSON: it is no object of it",
		`no`:                                   "no GeoJSON",
		`{"type":"Point","coordinates":[1,2]}`: `is a "Point", not a polygon`,
		`{"type":"FeatureCollection","features":[]}`:                                                                                  "holds no polygon",
		`{"type":"Polygon","coordinates":[` + square + "," + square + `]}`:                                                            "has 1 hole",
		`{"type":"Polygon","coordinates":[[[0,0],[1,1],[0,0]]]}`:                                                                      "has 2 corners",
		`{"type":"MultiPolygon","coordinates":[[` + square + `],[` + square + `]]}`:                                                   "holds 2 polygons",
		`{"type":"Polygon","coordinates":[` + strings.TrimSuffix(square, square[strings.LastIndex(square, ","+square[1:8]):]) + `]]}`: "is not closed: corner 4, the last, is not the first",
		`{"type":"Polygon","coordinates":[[[50.4,-1.3],[50.4,-1.2],[50.6,-1.2],[50.6,-1.3],[50.4,-1.3]]]}`:                            "has latitude before longitude",
		`{"type":"Polygon","coordinates":[]}`:                                                                                         "has no coordinates of a polygon",
		`{"type":"Polygon","coordinates":[[[0,95],[1,1],[2,0]]]}`:                                                                     "corner 1 is no place",
		`{"type":"Polygon","coordinates":[` + ring(Point{-300, -200}, Point{300, 200}, Point{300, -200}, Point{-300, 200}) + `]}`:     "crosses itself: the side from corner 1 meets the side from corner 3",
		`{"type":"Polygon","coordinates":[` + ring(Point{5000, 0}, Point{5000, 100}, Point{5100, 0}) + `]}`:                           "lies elsewhere: the pad is not inside, and its nearest corner is 5 km away",
	} {
		_, err := ParseBoundary([]byte(text), pad)
		var bad BadBoundary
		require.ErrorAs(t, err, &bad, text)
		assert.Contains(t, bad.Problem, says)
		assert.NotEmpty(t, bad.Remedy)
	}
}

func number(v float64) string { return strconv.FormatFloat(v, 'f', 9, 64) }

// The rows rise and double with the classes of total impulse; water has the row of its impulse.
func TestClearings(t *testing.T) {
	for i, c := range clearings[1:] {
		assert.InDelta(t, 2*clearings[i].Impulse, c.Impulse, 1e-9)
		assert.GreaterOrEqual(t, c.People, clearings[i].People)
	}
	c, ok := ClearingFor(641)
	require.True(t, ok)
	assert.Equal(t, "J", c.Class)
	assert.InDelta(t, 30.48, c.People, 1e-9)
	_, ok = ClearingFor(50000)
	assert.False(t, ok)
}

// The greatest rules, the code where others ask for as much; beyond the classes it is not known.
func TestTheGreatestDistanceRules(t *testing.T) {
	for _, row := range []struct {
		impulse, field, blast, people float64
		by                            Ruling
	}{
		{300, 0, 0, 30.48, ByCode}, {300, 30.48, 30.48, 30.48, ByCode}, {300, 31, 0, 31, ByField}, {20, 12, 30, 30, ByBlast}, {20, 40, 30, 40, ByField},
		{1e6, 0, 0, 0, ByNobody}, {1e6, 40, 0, 40, ByField},
	} {
		k := Keep(row.impulse, row.field, row.blast)
		assert.Equal(t, row.by, k.By, row)
		assert.InDelta(t, row.people, k.People, 1e-9)
		assert.Equal(t, row.impulse < 1e6, k.Coded)
	}
}
