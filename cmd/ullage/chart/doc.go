// Package chart makes pages of flights, sweeps and scatters: it says what is drawn,
// in which units and words; ullage/cmd/ullage/chart/page draws it.
package chart
