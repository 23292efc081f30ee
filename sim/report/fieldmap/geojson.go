package fieldmap

import (
	"bufio"
	"io"
	"math"
	"strconv"

	"ullage/sim/ground"
)

// buffer is how much of a map is written at once, bytes.
const buffer = 1 << 12

// geoJSON writes features as RFC 7946 has them, a line each.
type geoJSON struct {
	w     *bufio.Writer
	pad   Pad
	begun bool
}

func newGeoJSON(w io.Writer, pad Pad) *geoJSON {
	return &geoJSON{w: bufio.NewWriterSize(w, buffer), pad: pad}
}

func (g *geoJSON) begin() {
	if g.begun {
		return
	}
	g.begun = true
	g.w.WriteString(`{"type":"FeatureCollection","features":[` + "\n")
}

func (g *geoJSON) add(f *feature) error {
	if g.begun {
		g.w.WriteString(",\n")
	}
	g.begin()
	b := append(g.w.AvailableBuffer(), `{"type":"Feature","geometry":`...)
	switch f.shape {
	case aTrack:
		b = g.appendTrack(b, f.at)
	case aOutline:
		b = appendPolygon(b, g.places(f.at))
	default:
		p := g.pad.Offset(f.at[0].east, f.at[0].north)
		b = append(appendPosition(append(b, `{"type":"Point","coordinates":`...), p), '}')
	}
	b = append(append(append(b, `,"properties":{"kind":"`...), f.kind...), '"')
	if f.drive != "" {
		b = append(append(append(b, `,"drive":"`...), f.drive...), '"')
	}
	for i := range f.facts {
		x := &f.facts[i]
		b = append(append(append(b, `,"`...), x.key...), `":`...)
		if x.word != "" {
			b = strconv.AppendQuote(b, x.word)
		} else {
			b = x.appendNumber(b)
		}
	}
	_, err := g.w.Write(append(b, `}}`...))
	return err
}

func (g *geoJSON) close(partial bool) error {
	g.begin()
	end := "\n]}\n"
	if partial {
		end = "\n]," + `"partial":true` + "}\n"
	}
	g.w.WriteString(end)
	return g.w.Flush()
}

func (g *geoJSON) places(at []spot) []ground.Place {
	ring := make([]ground.Place, len(at))
	for i, s := range at {
		ring[i] = g.pad.Offset(s.east, s.north)
	}
	return ring
}

// appendTrack writes a line with altitudes, cut in two wherever it crosses the antimeridian (RFC 7946,
// section 3.1.9).
func (g *geoJSON) appendTrack(b []byte, at []spot) []byte {
	type vertex struct {
		ground.Place
		above float64
	}
	var parts [][]vertex
	var part []vertex
	turn := 0.0 // what is taken off the longitudes
	for i, s := range at {
		v := vertex{g.pad.Offset(s.east, s.north), g.pad.Elevation + s.height}
		if i == 0 {
			turn = 360 * math.Round(v.Longitude/360)
		}
		v.Longitude -= turn
		for side := 1.0; side >= -1; side -= 2 {
			if side*v.Longitude <= 180 || len(part) == 0 {
				continue
			}
			last := part[len(part)-1]
			f := (side*180 - last.Longitude) / (v.Longitude - last.Longitude)
			cut := vertex{ground.Place{Latitude: last.Latitude + f*(v.Latitude-last.Latitude), Longitude: side * 180}, last.above + f*(v.above-last.above)}
			parts = append(parts, append(part, cut))
			cut.Longitude, v.Longitude, turn = -side*180, v.Longitude-side*360, turn+side*360
			part = []vertex{cut}
		}
		part = append(part, v)
	}
	parts = append(parts, part)
	line := func(b []byte, part []vertex) []byte {
		b = append(b, '[')
		for i, v := range part {
			if i > 0 {
				b = append(b, ',')
			}
			b = appendPosition(b, v.Place)
			b = strconv.AppendFloat(append(b[:len(b)-1], ','), v.above, 'f', 2, 64)
			b = append(b, ']')
		}
		return append(b, ']')
	}
	if len(parts) == 1 {
		return append(line(append(b, `{"type":"LineString","coordinates":`...), part), '}')
	}
	b = append(b, `{"type":"MultiLineString","coordinates":[`...)
	for i, part := range parts {
		if i > 0 {
			b = append(b, ',')
		}
		b = line(b, part)
	}
	return append(b, `]}`...)
}

// appendPolygon writes a ring; one that crosses the antimeridian is cut there
// in two (RFC 7946, section 3.1.9).
func appendPolygon(b []byte, ring []ground.Place) []byte {
	var parts [][]ground.Place
	for turn := -360.0; turn <= 360; turn += 360 {
		part := make([]ground.Place, len(ring))
		for i, p := range ring {
			part[i] = ground.Place{Latitude: p.Latitude, Longitude: p.Longitude + turn}
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

// clipped is what of a ring has side·longitude up to 180 (Sutherland and Hodgman,
// Comm. ACM 17 (1974) 32).
func clipped(ring []ground.Place, side float64) []ground.Place {
	var out []ground.Place
	for i, p := range ring {
		q := ring[(i+1)%len(ring)]
		in, next := side*p.Longitude < 180, side*q.Longitude < 180
		if in {
			out = append(out, p)
		}
		if in != next {
			f := (side*180 - p.Longitude) / (q.Longitude - p.Longitude)
			out = append(out, ground.Place{Latitude: p.Latitude + f*(q.Latitude-p.Latitude), Longitude: side * 180})
		}
	}
	return out
}

func appendRing(b []byte, ring []ground.Place) []byte {
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
func appendPosition(b []byte, p ground.Place) []byte {
	b = strconv.AppendFloat(append(b, '['), wrapped(p.Longitude), 'f', decimals, 64)
	b = strconv.AppendFloat(append(b, ','), p.Latitude, 'f', decimals, 64)
	return append(b, ']')
}

// decimals are those of degrees: a millimetre, that the tips of a small ellipse do not cross.
const decimals = 8

// wrapped is a longitude from −180 to 180.
func wrapped(lon float64) float64 {
	if math.Abs(lon) == 180 {
		return lon // which side of the cut it is on matters
	}
	return math.Remainder(lon, 360)
}
