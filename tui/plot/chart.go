package plot

// Stack is charts one above the other over one x axis. Series, marks and bands
// may lie beyond the ranges shown: they are clipped.
type Stack struct {
	Charset Charset
	X       Axis // labelled below the last chart
	Charts  []Chart
	Marks   []VerticalMark // through every chart, labelled above the first
	Bands   []Band         // through every chart

	ShowCursor bool
	Cursor     float64 // x of a line through every chart
}

// Chart is one plotting area with its y axis. Title and unit of Y stand at its
// top left.
type Chart struct {
	Y      Axis
	Right  Axis // for series with Right set; drawn when there are any
	Note   string
	Series []Series // later ones over earlier ones, solid ones over the others
	Marks  []VerticalMark
	Points []PointMark
	Limits []Limit
	Bands  []Band
	Weight int  // share of the stack's height; 0 counts as 1
	Equal  bool // one unit of x is as long as one of y, for maps (first chart of a stack only)
}

// Axis is a range of values and how it is labelled.
type Axis struct {
	Title, Unit string
	Min, Max    float64 // fixed when both are finite and Max > Min; from the data otherwise
	Zero        bool    // an automatic range includes 0
	Hide        bool    // no labels
}

// Style is how a series is drawn.
type Style uint8

// The styles.
const (
	Solid  Style = iota // samples joined
	Dashed              // samples joined by a broken line
	Dotted              // samples joined by a dotted line
	Points              // each sample a dot, not joined
)

// Series is samples in order. NaN and infinities break the line. X may run
// backwards or stand still; nil X counts 0, 1, 2, … The shorter slice ends it.
type Series struct {
	X, Y  []float64
	Ink   Ink
	Style Style
	Right bool   // against the right axis
	End   string // label beside the plotting area, level with the last value shown
}

// VerticalMark is a line at an x with a label above. Labels never overlap: in
// order of falling priority each takes the first free place, centred on its
// line, then to its right or left, in the label rows there are; its Short form
// if the Label has no room; none if that has none either. The line is drawn always.
type VerticalMark struct {
	X            float64
	Label, Short string
	Priority     int
}

// PointMark is a sign at a point, drawn over traces, with a label beside it
// where that hides nothing.
type PointMark struct {
	X, Y  float64
	Right bool // against the right axis
	Sign  rune // 0: a cross
	Label string
}

// Limit is a horizontal broken line with a label on it.
type Limit struct {
	Y     float64
	Right bool // against the right axis
	Label string
}

// Band is a shaded range of x.
type Band struct {
	From, To float64
}

// Draw draws the stack on a new grid.
func (s *Stack) Draw(width, height int) *Grid {
	g := new(Grid)
	g.Resize(width, height)
	s.DrawTo(g)
	return g
}

// DrawTo draws the stack over the whole of g at the size it has.
func (s *Stack) DrawTo(g *Grid) {
	g.Resize(g.width, g.height)
}

// scratch is memory kept between drawings.
type scratch struct{}
