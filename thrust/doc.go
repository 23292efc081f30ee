// Package thrust is what pushes a rocket: the tabulated thrust of a solid motor
// ([Curve]), and liquid and gas out of a pressurised chamber ([Expulsion]: unsteady or
// steady Bernoulli flow of the liquid, then the gas through a convergent nozzle, NACA
// Report 1135). It gives forces and flows at a moment; who flies integrates them. SI
// units throughout; pressures are absolute.
package thrust
