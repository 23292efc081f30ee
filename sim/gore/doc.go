// Package gore lays surfaces of revolution flat: the gores of a closure, a nose or a
// canopy, and the sector that wraps a cone. It is geometry alone and knows neither cloth
// nor rockets. Lengths in m, areas in m², angles in rad; numbers that are not finite or
// not above 0 where they have to be give figures that are no numbers, never a panic.
//
// A Profile is half of a surface's section. Gores cuts the surface it sweeps out into so
// many pieces alike, each flattened along its middle: at every place along it a gore is as wide
// as its share of the surface's circumference there, so that gores together have the
// surface's area. Only a cone and a disc lie flat as they are. Of every other surface the
// edge of a gore is longer than its middle, by Gore.Excess, which cloth has to give.
package gore
