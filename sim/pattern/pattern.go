package pattern

import (
	"math"
	"slices"

	"ullage/sim/fault"
	"ullage/sim/gore"
	"ullage/sim/rocket"
)

// Point is a place on a drawing, m.
type Point = gore.Point

// Pattern is one thing to make, at its true size.
type Pattern struct {
	Name  string // of its files: "fins-tail"
	Title string // "fins tail: one fin"
	Count int    // how many are cut by it
	Input string // one that it is drawn from, by its name

	Lines   []Line
	Sizes   []Size   // drawn as dimension lines
	Figures []Figure // named numbers beside the drawing, the sizes' among them
	Table   *Table
	Notes   []string // what is assumed, and how it is used
}

// Pen is what a line of a drawing is for.
type Pen int

// The pens.
const (
	Cut  Pen = iota // cut, saw or turn here
	Hole            // drill or cut out here
	Mark            // mark the part here
	Axis            // centre lines
	Fold            // a lap or a seam begins here
	Grain
)

// Line is a stroke through points. A word stands at its middle.
type Line struct {
	Points []Point
	Pen    Pen
	Word   string // empty for none
}

// Size is a distance that the drawing shows: between two points, its line moved to the left
// of the way from one to the other by Off, m.
type Size struct {
	Name     string
	From, To Point
	Off      float64
}

// Length is the size, m.
func (s Size) Length() float64 { return math.Hypot(s.To.X-s.From.X, s.To.Y-s.From.Y) }

// Figure is a number with its name and the unit that files give it in; without a unit it is
// a count or a ratio.
type Figure struct {
	Name  string
	Value float64 // SI
	Unit  string
}

// Table is rows of lengths, m, under heads.
type Table struct {
	Title string
	Heads []string
	Rows  [][]float64
}

// Lack is a pattern that the file does not say enough for.
type Lack struct {
	What string   // "centring rings"
	Keys []string // inputs to give
	Why  string   // in place of keys; empty otherwise
}

// Set is all that can be drawn of a rocket, and what cannot.
type Set struct {
	Patterns []Pattern
	Lacks    []Lack
}

// Of lists the patterns of a rocket, some of which may be missing.
func Of(r *rocket.Rocket) Set {
	var s Set
	if s.shaped(r) {
		s.nose(r.Shape)
		s.transitions(r.Shape)
		s.fins(r.Shape, r.Holes)
		s.holes(r.Shape, r.Holes)
	}
	s.target(r)
	s.chamber(r)
	s.rings(r)
	s.canopies(r)
	return s
}

// shaped tells whether the rocket has a sound shape.
func (s *Set) shaped(r *rocket.Rocket) bool {
	const what = "nose, fins and what goes round the body"
	if r.Shape == nil {
		s.lack(what, "body.length", "nose", "fins")
		return false
	}
	if faults := r.Shape.Check(); len(faults) > 0 {
		s.lack(what, keysOf(faults)...)
		return false
	}
	return true
}

// keysOf are the inputs that faults are about, each once.
func keysOf(faults fault.List) []string {
	var keys []string
	for _, f := range faults {
		if !slices.Contains(keys, f.Key) {
			keys = append(keys, f.Key)
		}
	}
	return keys
}

func (s *Set) add(p Pattern) { s.Patterns = append(s.Patterns, p) }

func (s *Set) lack(what string, keys ...string) {
	s.Lacks = append(s.Lacks, Lack{What: what, Keys: keys})
}

// Bounds is the smallest upright rectangle around what is cut and marked.
func (p *Pattern) Bounds() (low, high Point) {
	low, high = Point{X: math.Inf(1), Y: math.Inf(1)}, Point{X: math.Inf(-1), Y: math.Inf(-1)}
	for _, l := range p.Lines {
		if l.Pen == Axis || l.Pen == Grain {
			continue
		}
		for _, q := range l.Points {
			low = Point{X: math.Min(low.X, q.X), Y: math.Min(low.Y, q.Y)}
			high = Point{X: math.Max(high.X, q.X), Y: math.Max(high.Y, q.Y)}
		}
	}
	return low, high
}

// line adds a stroke.
func (p *Pattern) line(pen Pen, word string, points ...Point) {
	p.Lines = append(p.Lines, Line{Points: points, Pen: pen, Word: word})
}

// closed adds an outline.
func (p *Pattern) closed(pen Pen, points ...Point) {
	p.line(pen, "", append(slices.Clip(points), points[0])...)
}

// size adds a dimension line with its figure.
func (p *Pattern) size(name string, from, to Point, off float64) {
	s := Size{Name: name, From: from, To: to, Off: off}
	p.Sizes = append(p.Sizes, s)
	p.length(name, s.Length())
}

// length and angle add a figure.
func (p *Pattern) length(name string, v float64) {
	p.Figures = append(p.Figures, Figure{Name: name, Value: v, Unit: "mm"})
}

func (p *Pattern) angle(name string, v float64) {
	p.Figures = append(p.Figures, Figure{Name: name, Value: v, Unit: "deg"})
}

func (p *Pattern) count(name string, n int) {
	p.Figures = append(p.Figures, Figure{Name: name, Value: float64(n)})
}

func (p *Pattern) note(text string) { p.Notes = append(p.Notes, text) }

// sagitta is how far a circle's straight pieces stay from it at most, m: less than a pen's width.
const sagitta = 2e-6

// arc is part of a circle, from an angle to another, counted from X to Y.
func arc(centre Point, radius, from, to float64) []Point {
	n := 8
	if radius > sagitta {
		n = max(n, int(math.Ceil(math.Abs(to-from)/(2*math.Acos(1-sagitta/radius)))))
	}
	points := make([]Point, n+1)
	for i := range points {
		sin, cos := math.Sincos(from + (to-from)*float64(i)/float64(n))
		points[i] = Point{X: centre.X + radius*cos, Y: centre.Y + radius*sin}
	}
	return points
}

// circle adds a circle with its centre lines.
func (p *Pattern) circle(pen Pen, centre Point, diameter float64) {
	p.line(pen, "", arc(centre, diameter/2, 0, 2*math.Pi)...)
}

// cross adds centre lines of a size.
func (p *Pattern) cross(centre Point, half float64) {
	p.line(Axis, "", Point{X: centre.X - half, Y: centre.Y}, Point{X: centre.X + half, Y: centre.Y})
	p.line(Axis, "", Point{X: centre.X, Y: centre.Y - half}, Point{X: centre.X, Y: centre.Y + half})
}

// Area is that within the line, m²: of one that is closed.
func (l *Line) Area() float64 {
	sum := 0.0
	for i := 1; i < len(l.Points); i++ {
		a, b := l.Points[i-1], l.Points[i]
		sum += a.X*b.Y - b.X*a.Y
	}
	return math.Abs(sum) / 2
}
