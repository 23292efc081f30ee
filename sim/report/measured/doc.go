// Package measured writes what logs tell: how each was understood, what differs from the
// prediction, and what a fit learned. Words and layout only; it flies nothing.
package measured
