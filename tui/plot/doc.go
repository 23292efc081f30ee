// Package plot draws stacked charts as text: a grid of cells, each a rune and
// the class of thing it belongs to. It knows no terminal and no colours; who
// shows the grid gives each [Ink] a style and paints the runs of every row, as
// the examples do.
//
// Every sample counts: a trace lights, in each sub-column, everything between
// the least and the greatest value that fall there, so that a peak of one
// sample is seen however many samples share a column. Draw a stack when its
// data or size change and keep the grid; showing it again costs only Runs.
package plot
