// Package plan works out what needs both flights flown many times and the criteria they
// are judged by: the figures of a day at the field, values with which a rocket passes in many
// conditions at once, and the best of those that pass. Every function takes a context and
// ends early when it does.
package plan
