// Package plot draws stacked charts as text: a grid of cells, each a rune and
// the class of thing it belongs to. It knows no terminal and no colours; who
// shows the grid gives each [Ink] a style and paints the runs of every row.
//
//	s := plot.Stack{
//		Charset: plot.Braille,
//		X:       plot.Axis{Title: "time", Unit: "s"},
//		Charts: []plot.Chart{
//			{
//				Y:      plot.Axis{Title: "height", Unit: "m", Zero: true},
//				Series: []plot.Series{
//					{X: keptTimes, Y: keptHeights, Ink: plot.Kept, Style: plot.Dotted},
//					{X: times, Y: heights, Ink: plot.TraceA, End: "214"},
//				},
//			},
//			{
//				Y:      plot.Axis{Title: "speed", Unit: "m/s", Zero: true},
//				Series: []plot.Series{{X: times, Y: speeds, Ink: plot.TraceB}},
//				Limits: []plot.Limit{{Y: 15, Label: "rail"}},
//			},
//		},
//		Marks: []plot.Mark{
//			{X: 0.31, Label: "liquid out", Short: "l", Priority: 2},
//			{X: 6.7, Label: "top", Short: "t", Priority: 3},
//		},
//		ShowCursor: true,
//		Cursor:     1.84,
//	}
//	grid := s.Draw(160, 42) // or s.DrawTo(grid), which reuses what grid holds
//	for row := range grid.Height() {
//		for ink, text := range grid.Runs(row) {
//			line.WriteString(styles[ink].Render(text))
//		}
//	}
//
// Every sample counts: a trace lights, in each sub-column, everything between
// the least and the greatest value that fall there, so that a peak of one
// sample is seen however many samples share a column. Draw a stack when its
// data or size change and keep the grid; showing it again costs only Runs.
package plot
