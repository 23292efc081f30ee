// Package chart makes pages of flights, sweeps and scatters, and of patterns at true size: it says what is drawn,
// in which units and words; ullage/cmd/ullage/chart/page draws it.
package chart
