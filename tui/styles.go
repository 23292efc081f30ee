package tui

import (
	"io"
	"strings"

	"github.com/charmbracelet/lipgloss"
	"github.com/muesli/termenv"

	"ullage/sim/gates"
	"ullage/tui/plot"
)

// role is what a piece of text is, which decides how it is painted.
type role int

const (
	plainText  role = iota
	dimText         // secondary: defaults, hints, units
	strongText      // the rocket's name, verdicts' numbers
	ruleLine        // borders and headings' lines
	heading         // names of groups
	focused         // the chosen input
	entry           // a field being typed in
	caret           // the place in it
	goodWord
	cautionWord
	badWord
	asked // what the program waits an answer for
	traceA
	traceB
	traceC
	traceD
	keptTrace
	markLine
	cursorLine
	limitLine
	shadeBand
	roles
)

// background is what is known of the terminal's background colour.
type background int

const (
	anyBackground background = iota // not known: colours that can be read on both
	darkBackground
	lightBackground
)

// shade is one colour on the three backgrounds, and the nearest of the sixteen
// that every terminal names for itself.
type shade struct{ unknown, dark, light, sixteen string }

var (
	grey   = shade{"#808080", "#8b919b", "#666c75", "8"}
	faint  = shade{"#808080", "#525964", "#b4b9c1", "8"}
	slate  = shade{"#7d8aa0", "#a9b4c6", "#475469", ""}
	amber  = shade{"#b07a1e", "#e6b566", "#8a5a00", "3"}
	sky    = shade{"#2f86c9", "#74b6e8", "#1563a3", "4"}
	violet = shade{"#9070c8", "#bba0e6", "#6743a6", "5"}
	teal   = shade{"#2b9178", "#7ccfb6", "#0d7459", "6"}
	leaf   = shade{"#3d9150", "#84c692", "#27733a", "2"}
	brick  = shade{"#d2553f", "#f08a76", "#ad2f1c", "1"}
)

// paint is one role's colour and attributes. Where there are no colours the
// attributes alone carry the meaning; faint and underline are for then.
type paint struct {
	colour           shade
	bold, reverse    bool
	faint, underline bool
}

// paints is the palette: the only place where colours are chosen.
var paints = [roles]paint{
	plainText:   {},
	dimText:     {colour: grey, faint: true},
	strongText:  {bold: true},
	ruleLine:    {colour: faint, faint: true},
	heading:     {colour: slate, bold: true},
	focused:     {colour: amber, bold: true},
	entry:       {colour: amber, underline: true},
	caret:       {colour: amber, reverse: true},
	goodWord:    {colour: leaf},
	cautionWord: {colour: amber, bold: true},
	badWord:     {colour: brick, bold: true, underline: true},
	asked:       {colour: amber, bold: true},
	traceA:      {colour: sky},
	traceB:      {colour: teal},
	traceC:      {colour: violet},
	traceD:      {colour: amber},
	keptTrace:   {colour: grey, faint: true},
	markLine:    {colour: slate},
	cursorLine:  {colour: amber, bold: true},
	limitLine:   {colour: brick},
	shadeBand:   {colour: faint, faint: true},
}

// brush paints a text: what goes before and after it.
type brush struct{ on, off string }

func (b brush) paint(s string) string {
	if s == "" || b.on == "" {
		return s
	}
	return b.on + s + b.off
}

// look is how everything is drawn: charset, colours and signs.
type look struct {
	charset plot.Charset
	brushes [roles]brush
	inks    [plot.Inks]brush
	plain   bool // no attributes at all: what they would say needs signs

	ellipsis, pointer, unsaved, dot, bar, line, up, down string
}

// newLook prepares a look. In colour or not, texts are painted only where the
// profile has escape sequences at all.
func newLook(charset plot.Charset, profile termenv.Profile, colour bool, bg background) *look {
	l := &look{
		charset: charset, plain: profile == termenv.Ascii,
		ellipsis: "…", pointer: "▸", unsaved: "•", dot: "·", bar: "│", line: "─", up: "↑", down: "↓",
	}
	if charset == plot.ASCII {
		for _, sign := range []*string{&l.ellipsis, &l.pointer, &l.unsaved, &l.dot, &l.bar, &l.line} {
			*sign = ascii(*sign)
		}
		l.up, l.down = "^", "v"
	}
	r := lipgloss.NewRenderer(io.Discard)
	r.SetColorProfile(profile)
	for i, p := range paints {
		style := r.NewStyle().Bold(p.bold).Reverse(p.reverse)
		if colour {
			style = style.Foreground(p.colour.on(bg))
		} else {
			style = style.Faint(p.faint).Underline(p.underline)
		}
		l.brushes[i].on, l.brushes[i].off, _ = strings.Cut(style.Render("x"), "x")
	}
	l.inks = [plot.Inks]brush{
		plot.Rule: l.brushes[ruleLine], plot.Label: l.brushes[dimText], plot.Title: l.brushes[heading],
		plot.Note: l.brushes[plainText], plot.TraceA: l.brushes[traceA], plot.TraceB: l.brushes[traceB],
		plot.TraceC: l.brushes[traceC], plot.TraceD: l.brushes[traceD], plot.Kept: l.brushes[keptTrace],
		plot.Mark: l.brushes[markLine], plot.Cursor: l.brushes[cursorLine], plot.Limited: l.brushes[limitLine],
		plot.Shade: l.brushes[shadeBand],
	}
	return l
}

func (s shade) on(bg background) lipgloss.TerminalColor {
	if s == (shade{}) {
		return lipgloss.NoColor{} // the terminal's own
	}
	full := s.unknown
	switch bg {
	case darkBackground:
		full = s.dark
	case lightBackground:
		full = s.light
	}
	return lipgloss.CompleteColor{TrueColor: full, ANSI256: full, ANSI: s.sixteen}
}

// in paints s as a role.
func (l *look) in(r role, s string) string { return l.brushes[r].paint(s) }

// say is a text fit for this look's charset. Texts of files and users come
// through [clean] besides.
func (l *look) say(s string) string {
	if l.charset == plot.ASCII {
		return ascii(s)
	}
	return s
}

// fit is exactly w cells of s.
func (l *look) fit(s string, w int) string { return fitted(s, w, l.ellipsis) }

// level is the role of a verdict.
func level(v gates.Level) role {
	switch v {
	case gates.Good:
		return goodWord
	case gates.Caution:
		return cautionWord
	case gates.Bad:
		return badWord
	}
	return plainText
}
