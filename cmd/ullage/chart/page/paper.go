package page

import "gonum.org/v1/plot/vg"

// Paper is the size of a sheet, landscape.
type Paper struct {
	Name          string
	Width, Height vg.Length
}

// The sheets there are.
var (
	A4     = Paper{"a4", 297 * vg.Millimeter, 210 * vg.Millimeter}
	Letter = Paper{"letter", 11 * vg.Inch, 8.5 * vg.Inch}
)

// border is left free on all sides, since printers cannot reach the edge.
const border = 12 * vg.Millimeter
