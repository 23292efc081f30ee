package page

import (
	"math"
	"strings"

	"gonum.org/v1/plot/vg"
	"gonum.org/v1/plot/vg/draw"
)

// Drawing is something at its true size, on one sheet with what is written about it, or
// on tiles to be joined behind a sheet that tells all of it.
type Drawing struct {
	Paper Paper
	Title string
	Lines []string // below the title, wrapped
	Notes []string // at the foot, small, wrapped
	Grid  *Grid    // below the lines

	Strokes  []Stroke
	Measures []Measure
}

// Stroke is a line through points. A word stands at its middle.
type Stroke struct {
	Points []vg.Point
	Pen    Nib
	Word   string
}

// Nib is how a stroke of a drawing looks.
type Nib int

// The nibs.
const (
	Heavy  Nib = iota // to cut
	Light             // to mark
	Chain             // axes
	Broken            // folds and laps
)

// nibs tell lines apart without colour. Widths differ, so that a drawing can be read by them.
var nibs = [...]draw.LineStyle{
	Heavy:  {Color: black, Width: 0.85},
	Light:  {Color: black, Width: 0.45},
	Chain:  {Color: dim, Width: 0.4, Dashes: []vg.Length{9, 2, 1.5, 2}},
	Broken: {Color: black, Width: 0.6, Dashes: []vg.Length{4.5, 2.5}},
}

// Measure is a distance between two points, written along a line that is moved to the left
// of the way from one to the other.
type Measure struct {
	From, To vg.Point
	Off      vg.Length
	Text     string
}

// Grid is a table of figures.
type Grid struct {
	Title string
	Heads []string
	Rows  [][]string
}

// Lines and places of a drawing, in points.
var (
	measureLine = draw.LineStyle{Color: dim, Width: 0.35}
	ruleLine    = draw.LineStyle{Color: black, Width: 0.75}
	joinLine    = draw.LineStyle{Color: dim, Width: 0.5, Dashes: []vg.Length{2, 2}}
	joinMark    = draw.LineStyle{Color: black, Width: 0.5}
)

const (
	ruleStrip = 9 * vg.Millimeter // left and below, for the rules
	ruleLong  = 100 * vg.Millimeter
	drawnGap  = 2 * vg.Millimeter // around what is drawn
	arrowLong = 2.2 * vg.Millimeter
	wordGap   = 1.1 * vg.Millimeter // between a line and the base of its word
	minor     = vg.Length(7.5)      // size of words on a drawing
)

// way is the direction from one point to another, and how far it is.
func way(from, to vg.Point) (x, y, long vg.Length) {
	x, y = to.X-from.X, to.Y-from.Y
	long = vg.Length(math.Hypot(float64(x), float64(y)))
	if !(long > 0) {
		return 1, 0, 0
	}
	return x / long, y / long, long
}

// moved are the ends of a measure's own line.
func (m *Measure) moved() (from, to vg.Point) {
	x, y, _ := way(m.From, m.To)
	shift := vg.Point{X: -y * m.Off, Y: x * m.Off}
	return m.From.Add(shift), m.To.Add(shift)
}

// wordAt is where a measure's text has its middle, and its direction: half way along its line, or beyond its end, to the right or up, where
// the text is too long to stand between the arrows.
func (m *Measure) wordAt() (at vg.Point, x, y vg.Length) {
	from, to := m.moved()
	x, y, long := way(from, to)
	if rx, ry := readable(x, y); rx != x || ry != y {
		from, to, x, y = to, from, rx, ry
	}
	along := long / 2
	if wide := plain(minor).Width(clean(m.Text)); wide > long-2*arrowLong {
		along = long + wide/2 + wordGap
	}
	return vg.Point{X: from.X + along*x, Y: from.Y + along*y}, x, y
}

// middleOf is the point half way along a stroke, and the direction there.
func (k *Stroke) middleOf() (at vg.Point, x, y vg.Length) {
	var all vg.Length
	for i := 1; i < len(k.Points); i++ {
		_, _, long := way(k.Points[i-1], k.Points[i])
		all += long
	}
	left := all / 2
	for i := 1; i < len(k.Points); i++ {
		x, y, long := way(k.Points[i-1], k.Points[i])
		if left <= long {
			return vg.Point{X: k.Points[i-1].X + left*x, Y: k.Points[i-1].Y + left*y}, x, y
		}
		left -= long
	}
	return vg.Point{}, 1, 0
}

// box grows around points.
type box struct{ vg.Rectangle }

func newBox() box {
	inf := vg.Length(math.Inf(1))
	return box{vg.Rectangle{Min: vg.Point{X: inf, Y: inf}, Max: vg.Point{X: -inf, Y: -inf}}}
}

func (b *box) add(points ...vg.Point) {
	for _, p := range points {
		b.Min = vg.Point{X: min(b.Min.X, p.X), Y: min(b.Min.Y, p.Y)}
		b.Max = vg.Point{X: max(b.Max.X, p.X), Y: max(b.Max.Y, p.Y)}
	}
}

// bounds is the room that strokes, measures and words take.
func (d *Drawing) bounds() vg.Rectangle {
	b := newBox()
	for i := range d.Strokes {
		b.add(d.Strokes[i].Points...)
		if d.Strokes[i].Word != "" {
			at, x, y := d.Strokes[i].middleOf()
			b.text(at, x, y, d.Strokes[i].Word)
		}
	}
	for i := range d.Measures {
		from, to := d.Measures[i].moved()
		b.add(from, to)
		at, x, y := d.Measures[i].wordAt()
		b.text(at, x, y, d.Measures[i].Text)
	}
	if len(d.Strokes) == 0 && len(d.Measures) == 0 {
		return vg.Rectangle{}
	}
	gap := vg.Point{X: drawnGap, Y: drawnGap}
	return vg.Rectangle{Min: b.Min.Sub(gap), Max: b.Max.Add(gap)}
}

// text adds the room of a word above a line.
func (b *box) text(at vg.Point, x, y vg.Length, word string) {
	half, tall := plain(minor).Width(clean(word))/2, minor+wordGap
	x, y = readable(x, y)
	for _, along := range []vg.Length{-half, half} {
		for _, across := range []vg.Length{0, tall} {
			b.add(vg.Point{X: at.X + along*x - across*y, Y: at.Y + along*y + across*x})
		}
	}
}

// readable is a direction along which words are not upside down: to the right, or up where it
// is steep.
func readable(x, y vg.Length) (vg.Length, vg.Length) {
	const steep = 0.1
	if x < -steep || x < steep && y < 0 {
		return -x, -y
	}
	return x, y
}

// stroke draws what of the drawing lies in a window; words and measures' texts only where
// their place is in the cell, so that two tiles that overlap have them once.
func (d *Drawing) stroke(s sheet, place func(vg.Point) vg.Point, window, cell vg.Rectangle) {
	inner := draw.Canvas{Canvas: s.Canvas.Canvas, Rectangle: window}
	line := func(style draw.LineStyle, points ...vg.Point) {
		inner.StrokeLines(style, inner.ClipLinesXY(points)...)
	}
	for i := range d.Strokes {
		k := &d.Strokes[i]
		points := make([]vg.Point, len(k.Points))
		for j, p := range k.Points {
			points[j] = place(p)
		}
		line(nibs[k.Pen], points...)
	}
	for i := range d.Measures {
		m := &d.Measures[i]
		from, to := m.moved()
		x, y, _ := way(m.From, m.To)
		for _, end := range [][2]vg.Point{{m.From, from}, {m.To, to}} {
			ex, ey, long := way(end[0], end[1])
			if long > 1*vg.Millimeter {
				start := vg.Point{X: end[0].X + ex*vg.Millimeter, Y: end[0].Y + ey*vg.Millimeter}
				beyond := vg.Point{X: end[1].X + ex*vg.Millimeter, Y: end[1].Y + ey*vg.Millimeter}
				line(measureLine, place(start), place(beyond))
			}
		}
		line(measureLine, place(from), place(to))
		for _, tip := range []struct {
			at   vg.Point
			sign vg.Length
		}{{from, 1}, {to, -1}} {
			for _, side := range []vg.Length{-0.25, 0.25} {
				tail := vg.Point{X: tip.at.X + tip.sign*arrowLong*(x-side*y), Y: tip.at.Y + tip.sign*arrowLong*(y+side*x)}
				line(measureLine, place(tip.at), place(tail))
			}
		}
	}
	for i := range d.Strokes {
		if k := &d.Strokes[i]; k.Word != "" {
			at, x, y := k.middleOf()
			s.along(place(at), x, y, k.Word, cell)
		}
	}
	for i := range d.Measures {
		at, x, y := d.Measures[i].wordAt()
		s.along(place(at), x, y, d.Measures[i].Text, cell)
	}
}

// along writes a word above a line's middle, along it, never upside down, and moved along it
// where it would leave the cell; nothing where the middle is not in the cell.
func (s sheet) along(at vg.Point, x, y vg.Length, word string, cell vg.Rectangle) {
	if at.X < cell.Min.X || at.X >= cell.Max.X || at.Y < cell.Min.Y || at.Y >= cell.Max.Y {
		return
	}
	word = clean(word)
	x, y = readable(x, y)
	half := plain(minor).Width(word)/2 + 1
	back := func(at, low, high, reach vg.Length) vg.Length { // how far beyond, as a share of the reach
		switch {
		case reach == 0 || 2*reach > high-low:
			return 0
		case at+reach > high:
			return (at + reach - high) / reach
		case at-reach < low:
			return (at - reach - low) / reach
		}
		return 0
	}
	reachX, reachY := half*x, half*max(y, -y)
	shift := half * back(at.X, cell.Min.X, cell.Max.X, reachX)
	if up := half * back(at.Y, cell.Min.Y, cell.Max.Y, reachY); y < 0 {
		shift -= up
	} else {
		shift += up
	}
	at = vg.Point{X: at.X - shift*x, Y: at.Y - shift*y}
	s.Push()
	s.Translate(at)
	s.Rotate(math.Atan2(float64(y), float64(x)))
	s.write(plain(minor), black, vg.Point{Y: wordGap}, atCentre, word)
	s.Pop()
}

// description is the drawing in words.
func (d *Drawing) description() string {
	p := Page{Lines: d.Lines, Notes: d.Notes}
	return strings.TrimSpace(p.description())
}
