// Package draw is what every part of the screen paints with: a [Theme] of roles and
// signs, texts of so many cells, tables, hints, plots as painted rows, and quantities as
// the screen writes them. It knows rockets only as far as their words and events go, and
// neither views nor the frame around them.
//
// A text is painted last: what has escape sequences in it can no longer be measured but
// by [PadPainted]. Colours are chosen in theme.go and nowhere else.
package draw
