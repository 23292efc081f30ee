// Package pattern is what a builder cuts, drills and turns by: outlines at true size of the
// parts that a rocket file describes, with their dimensions, tables of radii and what is
// assumed. It says nothing of paper: ullage/cmd/ullage/chart lays a pattern out.
//
// Of gives all patterns of a rocket, and by name what lacks a value. Lengths in m, angles
// in rad. A drawing has X to the right and Y up. What is drawn is what the file describes,
// at the sizes it states: paper has no thickness, saws take nothing away. Words of a pattern
// have no figures in them; those are in Sizes, Figures and Table, to be written in whatever units.
package pattern
