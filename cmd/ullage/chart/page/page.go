package page

// Page is one sheet: a title, lines of text, rows of panels, and notes at the
// foot.
type Page struct {
	Paper Paper
	Title string   // cut with an ellipsis when it does not fit
	Lines []string // below the title, wrapped
	Rows  []Row
	Notes []string // at the foot, small, wrapped
}

// Row is panels side by side.
type Row struct {
	Weight float64 // share of the height left for plotting; 0 counts as 1
	Panels []Panel
}

// Panel is one plotting area with its axes. Of numbers that are not finite
// nothing is drawn.
type Panel struct {
	Title string // above the area
	X, Y  Axis

	Lines  []Line
	Dots   []Dots
	Levels *Levels
	Marks  []Mark
	Limits []Limit
	Points []Point
	Rings  []Ring

	Equal   bool     // one unit of x is as long as one of y
	Compass *Compass // the plane is a map, north up
	Beside  []string // text right of the area, wrapped; an empty line is a gap
}

// Axis is a range of values and what to call it.
type Axis struct {
	Title, Unit string
	Min, Max    float64  // fixed when Max > Min; from what is drawn otherwise
	Zero        bool     // a range from what is drawn takes in 0
	Words       []string // stand at 0, 1, 2 … in place of numbers
	Bare        bool     // neither numbers nor title: the panel below has them
}

// Line is a curve through points in order; NaN breaks it.
type Line struct {
	X, Y  []float64
	Pen   Pen
	Label string // at its end, right of the area; empty for none
	Key   bool   // the label stands in the key at the top instead
	Dotty bool   // each point has the pen's sign too
}

// Dots are points that are not joined.
type Dots struct {
	X, Y  []float64
	Sign  Sign
	Label string // in the key
}

// Point is one point with its label beside it.
type Point struct {
	X, Y  float64
	Sign  Sign
	Label string
}

// Mark is an event: a line across the area at an x, with a label above it.
type Mark struct {
	At    float64
	Label string // empty for none
}

// Limit is a line across the area at a y, labelled where there is room on it.
type Limit struct {
	At    float64
	Label string
}

// Ring is a circle around the origin of a map, labelled on its lower right.
type Ring struct {
	Radius float64
	Label  string
}

// Compass is an arrow to the north, and one along which the wind blows.
type Compass struct {
	Wind     bool
	WindFrom float64 // clockwise from north, rad
	Label    string  // of the wind
}
