// Package page draws charts on a sheet of paper (Page), and lines at their true size on one
// sheet or on tiles to join (Drawing), as SVG, PNG and, drawings, PDF. It knows no rockets: it is given numbers in
// the units to show, and words.
//
// It stands on the drawing layer of gonum/plot (vg, vg/draw, vg/vgimg, font) and
// lays out its own axes: panels over a common axis, labels of events, labels at
// the ends of curves and equal scales need that, and the packages above the
// drawing layer would make the program 6 MB larger and its start, and so that of
// the screen, half a millisecond longer. Fonts are read when a page is drawn.
//
// Everything is told apart without colour: curves by dashes and by a label at
// their end, points by their signs. The same page gives the same bytes.
package page
