package plot

// Stack is charts one above the other over one x axis. Series, marks and bands
// may lie beyond the ranges shown: they are clipped.
//
// Where room is short a drawing leaves out, in this order: the second row of
// mark labels (below 8 rows in the chart), the line under the x axis (below 6
// rows a chart), x labels and titles (below 3 rows a chart), y labels and
// labels at the ends of traces (where they would take more than a third or a
// quarter of the width), and at last the lower charts.
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
// top left, those of Right at its top right.
type Chart struct {
	Y      Axis
	Right  Axis // for series with Right set; drawn when there are any
	Note   string
	Series []Series // later ones over earlier ones, solid lines over all others
	Marks  []VerticalMark
	Points []PointMark
	Limits []Limit
	Bands  []Band
	Weight int // share of the stack's height; below 1 counts as 1

	// Equal makes one unit of x as long as one of y, for maps, by widening one
	// of the ranges. It counts only where the chart is alone in its stack.
	Equal bool
}

// Axis is a range of values and how it is labelled.
//
// A range from the data is that of the samples shown, from edge to edge of the
// x range. A y range is rounded outwards a little, if that can be so that ticks
// stand a whole number of rows apart; it takes in limits that do not more than
// double it. Values beyond ±1e300 are clipped, and values that differ by less
// than a part in 1e9 count as equal. Without data there are no labels.
type Axis struct {
	Title, Unit string
	Min, Max    float64 // fixed when both are finite and Max > Min; from the data otherwise
	Zero        bool    // a range from the data includes 0
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
	End   string // label right of the plotting area, about level with the last sample shown
}

// VerticalMark is a line at an x with a label above.
//
// Labels never overlap, keep the order of their lines, and stand over these or
// at most six columns beside them. First each mark has its Short form, then
// each its Label where there is room for it, both in order of falling priority,
// then as listed. A label takes the lowest row that has a place, pushing others
// aside within these bounds; a mark that finds none has its line alone.
type VerticalMark struct {
	X            float64
	Label, Short string
	Priority     int
}

// PointMark is a sign at a point, drawn over traces, with a label beside it
// where that hides nothing, and without one elsewhere.
type PointMark struct {
	X, Y  float64
	Right bool // against the right axis
	Sign  rune // 0: a cross
	Label string
}

// Limit is a horizontal broken line. Its label stands on it, as far to the
// right as hides no trace, and is left out where there is no such place.
type Limit struct {
	Y     float64
	Right bool // against the right axis
	Label string
}

// Band is a shaded range of x, in either order.
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
