package draw

import (
	"io"
	"strings"

	"github.com/charmbracelet/lipgloss"
	"github.com/muesli/termenv"

	"ullage/sim/gates"
	"ullage/tui/plot"
)

// Role is what a piece of text is, which decides how it is painted.
type Role int

const (
	Plain    Role = iota
	Dim           // secondary: defaults, hints, units
	Strong        // the rocket's name, verdicts' numbers
	RuleLine      // borders and headings' lines
	Heading       // names of groups
	Focused       // the chosen input
	Entry         // a field being typed in
	Caret         // the place in it
	Good
	Caution
	Bad
	Asked // what the program waits an answer for
	TraceA
	TraceB
	TraceC
	TraceD
	keptTrace
	markLine
	cursorLine
	limitLine
	shadeBand
	Sunlit        // black on white whatever the terminal's colours are: to be read outdoors
	SunlitStrong  // the same, what counts
	SunlitReverse // white on black among them: what must not be overlooked
	roles
)

// Background is what is known of the terminal's background colour.
type Background int

const (
	AnyBackground Background = iota // not known: colours that can be read on both
	DarkBackground
	LightBackground
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
	black  = shade{"#000000", "#000000", "#000000", "0"}
	white  = shade{"#ffffff", "#ffffff", "#ffffff", "15"}
)

// paint is one role's colour and attributes. Where there are no colours the
// attributes alone carry the meaning; faint and underline are for then.
type paint struct {
	colour, ground   shade
	bold, reverse    bool
	faint, underline bool
}

// paints is the palette: the only place where colours are chosen.
var paints = [roles]paint{
	Plain:      {},
	Dim:        {colour: grey, faint: true},
	Strong:     {bold: true},
	RuleLine:   {colour: faint, faint: true},
	Heading:    {colour: slate, bold: true},
	Focused:    {colour: amber, bold: true},
	Entry:      {colour: amber, underline: true},
	Caret:      {colour: amber, reverse: true},
	Good:       {colour: leaf},
	Caution:    {colour: amber, bold: true},
	Bad:        {colour: brick, bold: true, underline: true},
	Asked:      {colour: amber, bold: true},
	TraceA:     {colour: sky},
	TraceB:     {colour: teal},
	TraceC:     {colour: violet},
	TraceD:     {colour: amber},
	keptTrace:  {colour: grey, faint: true},
	markLine:   {colour: slate},
	cursorLine: {colour: amber, bold: true},
	limitLine:  {colour: brick},
	shadeBand:  {colour: faint, faint: true},

	Sunlit:        {colour: black, ground: white},
	SunlitStrong:  {colour: black, ground: white, bold: true},
	SunlitReverse: {colour: white, ground: black, bold: true},
}

// brush paints a text: what goes before and after it.
type brush struct{ on, off string }

func (b brush) paint(s string) string {
	if s == "" || b.on == "" {
		return s
	}
	return b.on + s + b.off
}

// Theme is how everything is drawn: charset, colours and signs.
type Theme struct {
	Charset plot.Charset
	brushes [roles]brush
	inks    [plot.Inks]brush
	Plain   bool // no attributes at all: what they would say needs signs

	Ellipsis, Pointer, Unsaved, Dot, Bar, Line, Up, Down string
}

// NewTheme prepares a theme. In colour or not, texts are painted only where the
// profile has escape sequences at all.
func NewTheme(charset plot.Charset, profile termenv.Profile, colour bool, bg Background) *Theme {
	l := &Theme{
		Charset: charset, Plain: profile == termenv.Ascii,
		Ellipsis: "…", Pointer: "▸", Unsaved: "•", Dot: "·", Bar: "│", Line: "─", Up: "↑", Down: "↓",
	}
	if charset == plot.ASCII {
		for _, sign := range []*string{&l.Ellipsis, &l.Pointer, &l.Unsaved, &l.Dot, &l.Bar, &l.Line} {
			*sign = ASCII(*sign)
		}
		l.Up, l.Down = "^", "v"
	}
	r := lipgloss.NewRenderer(io.Discard)
	r.SetColorProfile(profile)
	for i, p := range paints {
		style := r.NewStyle().Bold(p.bold).Reverse(p.reverse)
		switch sunlit := p.ground != (shade{}); {
		case colour && sunlit:
			// Among sixteen colours a bold black is a dark grey on some terminals.
			style = style.Foreground(p.colour.on(bg)).Background(p.ground.on(bg)).Bold(p.bold && profile != termenv.ANSI)
		case colour:
			style = style.Foreground(p.colour.on(bg))
		case sunlit: // dark letters on a light ground, as far as reverse video makes them
			style = style.Reverse((p.ground == white) == (bg != LightBackground))
		default:
			style = style.Faint(p.faint).Underline(p.underline)
		}
		l.brushes[i].on, l.brushes[i].off, _ = strings.Cut(style.Render("x"), "x")
	}
	l.inks = [plot.Inks]brush{
		plot.Rule: l.brushes[RuleLine], plot.Label: l.brushes[Dim], plot.Title: l.brushes[Heading],
		plot.Note: l.brushes[Plain], plot.TraceA: l.brushes[TraceA], plot.TraceB: l.brushes[TraceB],
		plot.TraceC: l.brushes[TraceC], plot.TraceD: l.brushes[TraceD], plot.Kept: l.brushes[keptTrace],
		plot.Mark: l.brushes[markLine], plot.Cursor: l.brushes[cursorLine], plot.Limited: l.brushes[limitLine],
		plot.Shade: l.brushes[shadeBand],
	}
	return l
}

func (s shade) on(bg Background) lipgloss.TerminalColor {
	if s == (shade{}) {
		return lipgloss.NoColor{} // the terminal's own
	}
	full := s.unknown
	switch bg {
	case DarkBackground:
		full = s.dark
	case LightBackground:
		full = s.light
	}
	return lipgloss.CompleteColor{TrueColor: full, ANSI256: full, ANSI: s.sixteen}
}

// Paint paints s as a role.
func (l *Theme) Paint(r Role, s string) string { return l.brushes[r].paint(s) }

// Say is a text fit for this theme's charset. Texts of files and users come
// through [clean] besides.
func (l *Theme) Say(s string) string {
	if l.Charset == plot.ASCII {
		return ASCII(s)
	}
	return s
}

// Fit is exactly w cells of s.
func (l *Theme) Fit(s string, w int) string { return fitted(s, w, l.Ellipsis) }

// Level is the role of a verdict.
func Level(v gates.Level) Role {
	switch v {
	case gates.Good:
		return Good
	case gates.Caution:
		return Caution
	case gates.Bad:
		return Bad
	}
	return Plain
}
