// Package plan works out what needs both flights flown many times and the criteria they
// are judged by: the figures of a day at the field. Every function takes a context and
// ends early when it does.
package plan
