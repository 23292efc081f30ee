package plot

import (
	"iter"
	"strings"
	"unicode/utf8"
)

// Ink is the class of thing a cell shows; who paints gives each a style.
type Ink uint8

// The inks. Series choose theirs, usually TraceA to TraceD, Kept for what is
// kept for comparison; the others follow from what is drawn.
const (
	None   Ink = iota // blank
	Rule              // axis lines and ticks
	Label             // tick labels and the x axis's title
	Title             // a chart's title and unit
	Note              // a chart's note
	TraceA            // series …
	TraceB
	TraceC
	TraceD
	Kept    // a series kept for comparison
	Mark    // marks, their lines and labels
	Cursor  // the cursor line, and traces where it crosses them
	Limited // limit lines and their labels
	Shade   // band shading
	Inks    // how many inks there are
)

// Cell is one character of a grid. Every rune is one column wide.
type Cell struct {
	Rune rune
	Ink  Ink
}

// Grid is a drawn picture. The zero Grid is empty, ready for [Grid.Resize] and
// [Stack.DrawTo]. A Grid is for one goroutine at a time while it is drawn to.
type Grid struct {
	width, height int
	cells         []Cell
	frame         Frame
	scratch       scratch
}

// Frame tells where the plotting area of the last drawing stands and what x
// range it spans, so that a cursor can move by columns. Columns is 0 when
// nothing was drawn.
type Frame struct {
	Left, Columns int     // first cell column of the plotting area; how many there are
	Min, Max      float64 // x at the first and at the last dot of these
}

// X is the x at the middle of a cell column of the grid, held inside the range.
func (f Frame) X(column int) float64 {
	if f.Columns == 0 {
		return f.Min
	}
	share := (float64(column-f.Left) + 0.5) / float64(f.Columns)
	share = min(max(share, 0), 1)
	return f.Min*(1-share) + f.Max*share
}

// Resize makes the grid width by height blank cells, reusing its memory.
// Negative sizes count as 0.
func (g *Grid) Resize(width, height int) {
	g.width, g.height = max(width, 0), max(height, 0)
	n := g.width * g.height
	if cap(g.cells) < n {
		g.cells = make([]Cell, n)
	}
	g.cells = g.cells[:n]
	for i := range g.cells {
		g.cells[i] = Cell{Rune: ' '}
	}
	g.frame = Frame{}
}

// Width is the number of columns.
func (g *Grid) Width() int { return g.width }

// Height is the number of rows.
func (g *Grid) Height() int { return g.height }

// Frame tells where the plotting area stands.
func (g *Grid) Frame() Frame { return g.frame }

// At is the cell at a column and row counted from the top left; a blank beyond the grid.
func (g *Grid) At(column, row int) Cell {
	if column < 0 || column >= g.width || row < 0 || row >= g.height {
		return Cell{Rune: ' '}
	}
	return g.cells[row*g.width+column]
}

// Row is one row of cells, which the caller must not change.
func (g *Grid) Row(row int) []Cell {
	if row < 0 || row >= g.height {
		return nil
	}
	return g.cells[row*g.width : (row+1)*g.width : (row+1)*g.width]
}

// Runs yields a row's cells joined where neighbours have the same ink, from
// left to right, blanks included: together they are Width columns wide.
func (g *Grid) Runs(row int) iter.Seq2[Ink, string] {
	return func(yield func(Ink, string) bool) {
		cells := g.Row(row)
		var text strings.Builder
		text.Grow(len(cells) * 3) // box lines and dots are three bytes each
		for _, c := range cells {
			text.WriteRune(c.Rune)
		}
		rest := text.String()
		for i := 0; i < len(cells); {
			ink, size := cells[i].Ink, 0
			for ; i < len(cells) && cells[i].Ink == ink; i++ {
				size += utf8.RuneLen(cells[i].Rune)
			}
			if !yield(ink, rest[:size]) {
				return
			}
			rest = rest[size:]
		}
	}
}

// String is the picture as plain text, rows parted by newlines, without the
// blanks that end them.
func (g *Grid) String() string {
	var text strings.Builder
	text.Grow(len(g.cells)*2 + g.height)
	for row := range g.height {
		if row > 0 {
			text.WriteByte('\n')
		}
		cells := g.Row(row)
		end := len(cells)
		for end > 0 && cells[end-1].Rune == ' ' {
			end--
		}
		for _, c := range cells[:end] {
			text.WriteRune(c.Rune)
		}
	}
	return text.String()
}
