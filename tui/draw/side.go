package draw

import (
	"math"

	"ullage/sim/airframe"
	"ullage/sim/quantity"
	"ullage/tui/plot"
)

// Side is a shape from the side, nose to the left and to scale, over its length in a unit, with marks on it.
func Side(charset plot.Charset, s *airframe.Shape, u quantity.Unit, marks ...plot.PointMark) plot.Stack {
	return plot.Stack{Charset: charset, X: plot.Axis{Unit: u.Name, Title: "from the tip"},
		Charts: []plot.Chart{{Y: plot.Axis{Hide: true}, Equal: true, Series: Silhouette(s, u), Points: marks}}}
}

// SideRows is how many rows it takes to fill so many columns, from 5 up to the most.
func SideRows(s *airframe.Shape, columns, most int) int {
	reach := s.Diameter / 2
	for _, f := range s.Fins {
		reach = math.Max(reach, s.Diameter/2+f.Span)
	}
	need := int(math.Ceil(2*reach/s.Length*float64(columns)/2)) + 2 // a cell is twice as high as wide
	return max(min(need, most), 5)
}
