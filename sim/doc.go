// Package sim flies one rocket from release to landing: [Fly] takes a [rocket.Rocket]
// that passes its validation and gives a [Flight], its [Results], warnings as codes, the
// marks on its time axis and, if it was kept, the whole of it to be read at any time.
// The same arguments give the same bits. SI units throughout.
//
// The equations are those of a point mass, or, with a shape and a balance, of a rigid
// body until the first canopy opens. They are integrated from event to event by the
// classical Runge–Kutta method with an error estimate, in its exponential form where the
// jet or an open canopy makes them stiff.
//
// Flights that differ in what opens after the top only may share the way there: see [WayUp].
//
// What is flown is a model: it leaves out what its equations leave out, and it knows a
// rocket only as well as the file does.
package sim
