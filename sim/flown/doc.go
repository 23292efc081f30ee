// Package flown holds what was measured against what is predicted: a recorder's log
// against a flight of the rocket it flew on.
//
// [Read] finds the flight in a log and turns its columns into what the flight's own
// numbers can be held against; [Compare] tells measured, predicted and spread of each result;
// [Fit] finds the inputs with which the rocket would have flown as the log says, each with
// its deviation and how much the log told of it.
package flown
