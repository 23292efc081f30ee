package view

import (
	tea "github.com/charmbracelet/bubbletea"

	"ullage/sim/rocketfile"
	"ullage/tui/draw"
)

// Frame is what a view may ask of the screen around it. It is good for the call it is
// given in and must not be kept. What the screen shows is in the [Scene].
type Frame interface {
	// File is the rocket file as it stands, with what keys have changed since the scene.
	File() *rocketfile.File
	// Chosen is the dotted name of the input that the keys change; empty for none.
	Chosen() string
	// Choose chooses an input by its dotted name and tells whether it is there.
	Choose(input string) bool
	// Nudge moves the chosen value by a step, or a coarse one (by = ±1).
	Nudge(by int, coarse bool)
	// Put sets an input to a number, SI, as an edit that can be undone, chooses it, and
	// tells whether the file is another now.
	Put(input string, to float64) (changed bool)
	// Take makes an edit that can be undone of a file and an error that come of one
	// another, or shows why it cannot be; it tells whether the file is as it was to be.
	Take(f *rocketfile.File, err error, did Edit) (taken bool)
	// Say puts a message on the status line until the next key.
	Say(r draw.Role, text string)
	// Ask has the user type a line.
	Ask(q Question)
}

// Edit is what was done to a rocket file.
type Edit struct {
	Input string // the one that was changed; empty when it was more than one
	Says  string // what was done, for the message when it is undone
}

// Question asks for a line of text. It can always be left without an answer.
type Question struct {
	Says  string   // what for
	Text  string   // there already, to be amended
	Rules string   // what is taken
	Path  bool     // it is the path of a file, and can be completed
	Names []string // names of which one may be the last word typed, and can be completed
	// Submit takes the line, or says what is wrong with it, and the line stays open.
	Submit func(frame Frame, text string) (wrong string, cmd tea.Cmd)
}
