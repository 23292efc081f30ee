// Package view is what a way of looking at a rocket is ([View]), what it is given to draw
// (the [Scene]: the rocket file, its flight, units, theme) and what it may ask of the
// screen around it (the [Frame]). Every folder below is one view; none knows another, nor
// the frame but by that interface.
//
// A view embeds a [Pane], which keeps its room, its scene and the rows it drew, and gives
// what it does not care for; its keys are a table of what they do ([On]); what takes
// longer than drawing is [Work]: the old result stays, marked, until the new one is there.
// What several views need and is no painting is here as well: steps of values, faults in
// one sentence, a flight's traces.
package view
