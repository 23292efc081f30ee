package tui

import (
	"fmt"
	"regexp"
	"strings"
	"testing"

	tea "github.com/charmbracelet/bubbletea"
	"github.com/stretchr/testify/require"

	"ullage/sim/long"
	"ullage/sim/quantity"
	"ullage/sim/rocketfile"
	"ullage/tui/draw"
	"ullage/tui/plot"
)

// A bad value is told of beside its field, and the last good flight stays.
func TestBadValueKeepsTheFlight(t *testing.T) {
	s := newScreen(t, plover(t), 80, 24)
	flight, text := s.m.now, s.text()
	for _, bad := range []string{"5 kg", "-3", "400 %", "NaN", "1e400", "x", "0x1p3", "--1"} {
		s.press("enter", "ctrl+u")
		s.write(bad)
		s.press("enter")
		require.NotNil(t, s.m.typed, "%q stays open", bad)
		require.NotEmpty(t, s.m.fault.says, bad)
		require.Same(t, flight, s.m.now, bad)
		require.Equal(t, text, s.text(), bad)
		s.checkSize()
		s.press("esc")
		require.Nil(t, s.m.typed)
		require.Empty(t, s.m.fault.says)
		require.Equal(t, "30 %", s.value())
	}
}

// A value that another forbids is taken and said to disagree: the throat is no wider than
// the bore.
func TestNudgeIntoTheImpossible(t *testing.T) {
	s := newScreen(t, plover(t), 80, 24)
	s.choose("water.throat")
	s.write("67.95")
	s.press("enter", "right")
	require.Len(t, s.m.gaps, 1)
	require.Equal(t, "68.05 mm", s.value())
	s.press("left")
	require.Empty(t, s.m.gaps)
	require.Equal(t, "67.95 mm", s.value())
}

func TestRangeEnds(t *testing.T) {
	s := newScreen(t, plover(t), 80, 24)
	s.choose("site.humidity")
	s.press("left")
	require.Contains(t, s.view(), "goes no further")
	require.False(t, s.m.unsaved())
	s.write("98")
	s.press("enter", "right")
	require.Equal(t, "100 %", s.value())
	s.press("right")
	require.Equal(t, "100 %", s.value())
	require.Contains(t, s.view(), "goes no further: its range is 0 % to 100 %")
}

func TestAnyUnit(t *testing.T) {
	for _, typed := range []string{"65psi", "0.5 MPa", "7", "450 kPa"} {
		s := newScreen(t, plover(t), 80, 24)
		s.choose("water.pressure")
		s.write(typed)
		s.press("enter")
		q, err := quantity.ParseIn(typed, quantity.Pressure, draw.Unit("bar"))
		require.NoError(t, err)
		require.InDelta(t, q.Value, s.m.file().Rocket().Water.Pressure, 1e-6)
	}
}

// Another system of units is for the eye: the file keeps its own.
func TestUnitsLeaveTheFileAlone(t *testing.T) {
	s := newScreen(t, plover(t), 80, 24)
	text := s.text()
	s.press("x")
	require.Equal(t, text, s.text())
	s.choose("water.pressure")
	require.Equal(t, "130.5 psi", s.value())
	s.write("120")
	s.press("enter")
	require.InDelta(t, 120*6894.757293168, s.m.file().Rocket().Water.Pressure, 1)
	s.press("right")
	require.Equal(t, "122 psi", s.value(), "a nudge is a round step of the unit shown")
}

func TestChoicesCycle(t *testing.T) {
	s := newScreen(t, plover(t), 80, 24)
	s.choose("water.gas")
	seen := map[string]bool{}
	for range s.m.inputs.chosen().Choices {
		seen[s.value()] = true
		s.press("right")
	}
	require.Equal(t, "air", s.value())
	require.Len(t, seen, len(s.m.inputs.chosen().Choices))
	s.press("left", "right")
	require.Equal(t, "air", s.value())
}

// The number inside an opening rule is nudged, the rule is typed.
func TestRules(t *testing.T) {
	s := newScreen(t, plover(t), 80, 24)
	s.choose("canopy.main.deploy.water")
	s.press("right")
	require.Equal(t, "apogee + 1.1 s", s.value())
	s.press("enter", "ctrl+u")
	s.write("falling through 40 m")
	s.press("enter")
	require.Equal(t, "falling through 40 m", s.value())
	s.press("left")
	require.Equal(t, "falling through 35 m", s.value())
	s.press("d")
	s.choose("canopy.main.deploy.motor")
	s.press("right")
	require.Contains(t, s.view(), "has no steps")
}

// Keys repeated fast come as one message with several characters.
func TestRepeatedKeysInOneMessage(t *testing.T) {
	s := newScreen(t, plover(t), 80, 24)
	s.send(runes(">>>"))
	require.Equal(t, "45 %", s.value())
	s.send(runes("uuu"))
	require.Equal(t, "30 %", s.value())
	s.send(runes("27.5"))
	s.press("enter")
	require.Equal(t, "27.5 %", s.value())
}

// A pasted text is one text.
func TestPaste(t *testing.T) {
	s := newScreen(t, plover(t), 80, 24)
	s.press("enter", "ctrl+u")
	s.send(tea.KeyMsg{Type: tea.KeyRunes, Runes: []rune("24 %\n\x1b[31m"), Paste: true})
	require.Equal(t, "24 % [31m", s.m.typed.line.String())
}

// No finding is cut without saying so: what has no room is counted, warnings
// are the last to go.
func TestFindingsAreNeverCutSilently(t *testing.T) {
	f := plover(t)
	for range 4 {
		made, name, err := f.AddCanopy()
		require.NoError(t, err)
		f, err = made.Set("canopy."+name+".deploy.water", "apogee + 9 s")
		require.NoError(t, err)
	}
	f, err := f.Set("canopy.main.deploy.water", "apogee + 9 s")
	require.NoError(t, err)
	s := newScreen(t, f, 80, 24)
	s.choose("rail.tilt")
	s.write("35")
	s.press("enter")
	list := s.m.phrases()
	lines := s.m.findingLines(80, 3)
	require.Len(t, lines, 3)
	shown := strings.Join(lines, "\n")
	hidden, pressing := 0, 0
	for i := range list {
		p := &list[i]
		switch in := strings.Contains(shown, p.piece(s.m.theme, 0, false).Painted); {
		case in:
			require.True(t, p.pressing(), "%s has room while warnings have none", p.Label)
		case p.pressing():
			pressing++
			fallthrough
		default:
			hidden++
		}
	}
	require.Positive(t, pressing)
	require.Contains(t, shown, fmt.Sprintf("%d more, %d of them warnings: f", hidden, pressing))
	s.press("f")
	for range 60 {
		s.press("down")
	}
	require.Contains(t, s.view(), "Local law")
}

// Names from a file cannot move the cursor or break the rows.
func TestOddNames(t *testing.T) {
	taken := 0
	for _, name := range []string{"雪の鶴 いち", "e\u0301\u0301\u0301", "🚀🚀🚀", "\u202eabc", strings.Repeat("long ", 60), "a\u200bb", "־x"} {
		f, err := plover(t).Set("name", name)
		if err != nil {
			continue // no rocket file can have this one
		}
		taken++
		for _, charset := range []plot.Charset{plot.Braille, plot.ASCII} {
			s := newScreenIn(t, f, charset, 80, 24, noCorners)
			for w := 80; w < 130; w += 7 {
				s.send(tea.WindowSizeMsg{Width: w, Height: 24})
				s.checkSize()
				require.True(t, charset != plot.ASCII || draw.IsASCII(s.view()))
			}
		}
	}
	require.GreaterOrEqual(t, taken, 4)
}

func TestMouse(t *testing.T) {
	s := newScreen(t, plover(t), 120, 40)
	press := func(x, y int, b tea.MouseButton) {
		s.send(tea.MouseMsg{X: x, Y: y, Button: b, Action: tea.MouseActionPress})
	}
	chosen := s.m.inputs.chosen().Name
	press(5, 5, tea.MouseButtonLeft)
	require.Equal(t, chosen, s.m.inputs.chosen().Name, "nobody asked for it")
	s.m.pointer = true
	press(5, 5, tea.MouseButtonLeft)
	require.Equal(t, "body.diameter", s.m.inputs.chosen().Name)
	press(5, 5, tea.MouseButtonWheelDown)
	require.Equal(t, "body.mass", s.m.inputs.chosen().Name)
	before := s.cursor()
	press(60, 12, tea.MouseButtonLeft)
	require.Less(t, s.cursor(), before)
	press(500, 12, tea.MouseButtonLeft)
	require.Greater(t, s.cursor(), before)
	s.press("?")
	press(60, 12, tea.MouseButtonWheelDown)
	require.Equal(t, 1, s.m.page.top)
	press(60, 12, tea.MouseButtonLeft)
	press(-4, -4, tea.MouseButtonLeft)
}

// The other system of units holds in every view, on both drives, and in the
// findings below.
func TestUnitsInEveryView(t *testing.T) {
	long.Unraced(t)
	metric := regexp.MustCompile(`(^|[ (0-9])(m/s|bar|kg|mm|cm|km|m)([ ,;.)]|$)`)
	for _, f := range []*rocketfile.File{plover(t), rocketfile.Starter()} {
		s := newScreen(t, f, 200, 60)
		for range 2 {
			require.Regexp(t, metric, s.said())
			s.press("x")
			for range s.m.views {
				s.press("v")
				for _, part := range append(s.m.view().Lines(), s.m.drawn.findings...) {
					require.False(t, metric.MatchString(part), "%s: %q", s.m.view().About().Name, part)
				}
			}
			s.press("x")
			s.press("esc", "d")
		}
	}
}
