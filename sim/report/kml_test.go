package report

import (
	"bytes"
	"context"
	"encoding/xml"
	"fmt"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"ullage/sim"
	"ullage/sim/ground"
	"ullage/sim/rocket"
	"ullage/sim/rocketfile"
	"ullage/sim/study"
)

// What is read back by the standard library's XML reader lies where the flight and its landings do.
func TestKML(t *testing.T) {
	r := rocketfile.Starter().Rocket()
	fl, err := sim.Fly(context.Background(), r, sim.Options{Keep: true})
	require.NoError(t, err)
	pad := Place{Latitude: 50.5, Longitude: -1.25}
	var b bytes.Buffer
	m := NewLandingsKML(&b, pad, r)
	require.NoError(t, m.Add(study.LandingPoint{Draw: 3, East: 100, North: -50}))
	require.NoError(t, m.Close(study.Dispersion{Landed: 9, Landing: study.Ellipse{East: 10, Major: 5, Minor: 4}},
		&rocket.Field{Boundary: ground.Polygon{{East: -90, North: -90}, {East: 90, North: -90}, {East: 0, North: 90}}}, fl))
	var k struct {
		XMLName  xml.Name `xml:"http://www.opengis.net/kml/2.3 kml"`
		Document struct {
			Name      string `xml:"name"`
			Placemark []struct {
				Name    string `xml:"name"`
				Point   string `xml:"Point>coordinates"`
				Ring    string `xml:"Polygon>outerBoundaryIs>LinearRing>coordinates"`
				Line    string `xml:"LineString>coordinates"`
				Heights string `xml:"LineString>altitudeMode"`
			}
		}
	}
	require.NoError(t, xml.Unmarshal(b.Bytes(), &k))
	marks := k.Document.Placemark
	require.Len(t, marks, 4)
	place := func(text string) (at ground.Point, height float64) {
		var p Place
		n, _ := fmt.Sscanf(text, "%g,%g,%g", &p.Longitude, &p.Latitude, &height)
		require.GreaterOrEqual(t, n, 2, text)
		return pad.To(p), height
	}
	at, _ := place(marks[0].Point)
	assert.InDelta(t, 100, at.East, 0.02)
	assert.InDelta(t, -50, at.North, 0.02)
	ring := strings.Fields(marks[2].Ring)
	require.Len(t, ring, 4)
	assert.Equal(t, ring[0], ring[3], "closed")
	track := strings.Fields(marks[3].Line)
	at, _ = place(track[len(track)-1])
	assert.InDelta(t, fl.Landing.East, at.East, 0.05)
	assert.InDelta(t, fl.Landing.North, at.North, 0.05)
	highest := 0.0
	for _, text := range track {
		_, h := place(text)
		highest = max(highest, h)
	}
	assert.InEpsilon(t, fl.Apogee.Height, highest, 1e-2)
	assert.Equal(t, "relativeToGround", marks[3].Heights)
}
