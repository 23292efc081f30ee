// Package terminal is the terminal that the screen is on: its modes, its size, its keys and
// what it shows. It knows neither rockets nor Bubble Tea.
//
// [Terminal.Show] takes a frame, rows of painted text, and returns at once; the newest frame
// is written as soon as the terminal has taken the one before, and of it only the cells that
// differ from what is there (canvas.go). There is no clock in it: with nothing to show
// nothing wakes. [Keys] gives what is typed in whole sequences, however they come (keys.go).
//
// However the program ends, [Terminal.Close] gives the terminal back as it was; stopping it
// and going on, by key ([Terminal.Suspend]) or from outside, draws everything again.
package terminal
