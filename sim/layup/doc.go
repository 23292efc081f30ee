// Package layup plans how the laid-up parts of a pressure chamber are made: every ply with the
// size it is cut to, the cloth that takes off the roll, resin and hardener pot by pot, what the
// parts are to weigh and how thick they are to be; and, once a part is on the scales, what share of
// fibre it reached and what holds then. It knows the description of a chamber
// (sim/chamber) and the ways of a workshop (Practice), neither files nor flights. SI units.
//
// Densities are those of sim/chamber, typical and unverified. What closures are laid from is the
// tube's cloth, as many layers as their wall takes; tubes are wrapped on a mandrel, closures are laid over a
// plug, from the inside out.
package layup
