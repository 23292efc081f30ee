package tui

import (
	"fmt"
	"os"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"ullage/sim/long"
	"ullage/sim/rocketfile"
	"ullage/tui/draw"
	"ullage/tui/plot"
	"ullage/tui/view/viewtest"
)

// shot is a screen to be held to a file of its name, which ends with its size and tells its
// charset, after some keys.
type shot struct {
	name string
	file func(testing.TB) *rocketfile.File
	keys string
}

// shots are the screens, view by view.
var shots = []shot{
	{"first-80x24", plover, ""},
	{"first-120x40", plover, ""},
	{"first-200x60", plover, ""},
	{"block-120x40", plover, ""},
	{"ascii-80x24", plover, ""},
	{"motor-80x24", plover, "d"},
	{"whole-120x40", plover, "z E"},
	{"thrust-80x24", plover, "Z end"},
	{"kept-120x40", plover, "p shift+right right"},
	{"us-120x40", plover, "x"},
	{"tube-80x24", plover, "t"},
	{"typing-80x24", plover, "7 5"},
	{"table-80x24", plover, "d / m o t o r . t h r u s t enter enter end up 0 space 5 enter"},
	{"table-ascii-80x24", plover, "d / m o t o r . t h r u s t enter enter down 9 9 enter"},
	{"bad-value-80x24", plover, "9 k g enter"},
	{"help-80x24", plover, "?"},
	{"help-120x40", plover, "?"},
	{"help-ascii-80x24", plover, "?"},
	{"findings-80x24", plover, "f"},
	{"no-canopy-80x24", plover, "C"},
	{"quit-80x24", plover, "right q"},
	{"name-80x24", plover, "S"},

	{"fill-80x24", plover, "w"},
	{"fill-120x40", plover, "w"},
	{"fill-200x60", plover, "w"},
	{"fill-block-120x40", plover, "w"},
	{"fill-ascii-80x24", plover, "w"},
	{"fill-best-80x24", plover, "w b"},
	{"fill-kept-120x40", plover, "p w b"},
	{"fill-us-120x40", plover, "w x"},
	{"fill-pressures-80x24", plover, "w z"},
	{"fill-pressures-120x40", plover, "w z"},
	{"fill-throats-120x40", plover, "w z z"},
	{"fill-throats-ascii-120x40", plover, "w z z"},
	{"fill-low-120x40", flat, "w"},
	{"fill-motor-80x24", plover, "w d"},
	{"fill-wish-80x24", plover, "w y tab"},
	{"fill-drift-120x40", plover, "w y ctrl+u l e a s t space l a n d i n g . d r tab enter"},

	{"throats-80x24", plover, "n"},
	{"throats-120x40", plover, "n"},
	{"throats-200x60", plover, "n"},
	{"throats-block-120x40", plover, "n ]"},
	{"throats-ascii-80x24", plover, "n ]"},
	{"throats-filled-80x24", plover, "n b"},
	{"throats-filled-200x60", plover, "n b"},
	{"throats-thrust-120x40", plover, "n z"},
	{"throats-us-120x40", plover, "n x b"},
	{"throats-tube-80x24", plover, "t n ["},
	{"throats-add-80x24", plover, "n a 9"},
	{"throats-bad-80x24", plover, "n a 9 k g enter"},
	{"throats-motor-80x24", plover, "n d"},

	{"opening-80x24", plover, "o"},
	{"opening-120x40", plover, "o"},
	{"opening-200x60", plover, "o"},
	{"opening-top-80x24", plover, "o z"},
	{"opening-block-120x40", plover, "o b"},
	{"opening-ascii-80x24", plover, "o right"},
	{"opening-us-120x40", plover, "o x ]"},
	{"opening-motor-80x24", plover, "d o"},
	{"opening-delays-80x24", plover, "d o z z"},
	{"opening-motor-120x40", plover, "d o"},
	{"opening-motor-200x60", plover, "d o"},
	{"opening-two-80x24", viewtest.TwoCanopies, "o e"},
	{"opening-others-80x24", viewtest.TwoCanopies, "o e Z"},
	{"opening-height-120x40", viewtest.TwoCanopies, "o"},
	{"opening-typed-80x24", plover, "o l"},
	{"opening-none-80x24", plover, "C o"},

	{"motors-80x24", viewtest.Aviary, "m"},
	{"motors-120x40", viewtest.Aviary, "m"},
	{"motors-200x60", viewtest.Aviary, "m"},
	{"motors-large-80x24", viewtest.Aviary, "m ]"},
	{"motors-torn-80x24", viewtest.Aviary, "m ] ] ] ] z"},
	{"motors-block-120x40", viewtest.Aviary, "m ]"},
	{"motors-ascii-80x24", viewtest.Aviary, "m ] ] ]"},
	{"motors-us-120x40", viewtest.Aviary, "m x"},
	{"motors-taken-120x40", viewtest.Aviary, "m ] ] ] k"},
	{"motors-add-80x24", viewtest.Aviary, "m a y enter"},

	{"airframe-80x24", viewtest.Shaped, "g"},
	{"airframe-figures-80x24", viewtest.Shaped, "g z"},
	{"airframe-120x40", viewtest.Shaped, "g"},
	{"airframe-200x60", viewtest.Shaped, "g"},
	{"airframe-block-120x40", viewtest.Shaped, "g"},
	{"airframe-ascii-120x40", viewtest.Shaped, "g z"},
	{"airframe-motor-120x40", viewtest.Shaped, "g d"},
	{"airframe-us-120x40", viewtest.Shaped, "g x z"},

	{"day-80x24", plover, "Y ] ]"},
	{"day-120x40", plover, "Y }"},
	{"day-us-200x60", plover, "Y x ]"},

	{"chamber-80x24", viewtest.Heron, "h"},
	{"chamber-figures-80x24", viewtest.Heron, "h z"},
	{"chamber-120x40", viewtest.Heron, "h"},
	{"chamber-figures-120x40", viewtest.Heron, "h z"},
	{"chamber-200x60", viewtest.Heron, "h"},
	{"chamber-starter-80x24", starter, "h"},
	{"chamber-starter-120x40", starter, "h z"},
	{"chamber-starter-200x60", starter, "h"},
	{"chamber-block-120x40", viewtest.Heron, "h"},
	{"chamber-ascii-80x24", viewtest.Heron, "h"},
	{"chamber-ascii-200x60", viewtest.Heron, "h"},
	{"chamber-motor-120x40", viewtest.Heron, "h d"},
	{"chamber-us-120x40", viewtest.Heron, "h x"},
	{"chamber-none-80x24", plover, "h"},

	{"layup-80x24", viewtest.Heron, "B"},
	{"layup-pots-80x24", viewtest.Heron, "B z"},
	{"layup-120x40", viewtest.Heron, "B ]"},
	{"layup-200x60", viewtest.Heron, "B"},
	{"layup-us-120x40", viewtest.Heron, "B x"},
	{"layup-ascii-80x24", viewtest.Heron, "B ]"},
	{"layup-none-80x24", plover, "B"},

	{"patterns-80x24", viewtest.Heron, "O ]"},
	{"patterns-sizes-80x24", viewtest.Heron, "O z"},
	{"patterns-lacks-80x24", starter, "O" + strings.Repeat(" ]", 20)},
	{"patterns-120x40", viewtest.Heron, "O ] ]"},
	{"patterns-200x60", viewtest.Heron, "O ] ] ] ] ] ] ] ]"},
	{"patterns-us-120x40", viewtest.Heron, "O x ]"},
	{"patterns-ascii-80x24", viewtest.Heron, "O ] ] ]"},
	{"patterns-block-120x40", viewtest.Heron, "O ]"},

	{"bench-80x24", viewtest.Heron, "H ] ]"},
	{"bench-120x40", viewtest.Heron, "H } }"},
	{"bench-200x60", viewtest.Heron, "H"},
	{"bench-us-120x40", viewtest.Heron, "H x"},
	{"bench-ascii-80x24", viewtest.Heron, "H ] ] ]"},
	{"bench-starter-80x24", starter, "H"},

	{"check-80x24", viewtest.Heron, "j"},
	{"check-120x40", viewtest.Heron, "j"},
	{"check-200x60", viewtest.Heron, "j"},
	{"check-starter-80x24", starter, "j"},
	{"check-starter-120x40", starter, "j"},
	{"check-starter-200x60", starter, "j"},
	{"check-windy-80x24", windy, "j ]"},
	{"check-windy-120x40", windy, "j }"},
	{"check-ascii-80x24", windy, "j"},
	{"check-us-block-120x40", viewtest.Heron, "j x"},
	{"check-motor-120x40", viewtest.Heron, "j d"},

	{"pad-80x24", viewtest.Heron, "R"},
	{"pad-us-120x40", viewtest.Heron, "x R right"},
	{"pad-200x60", viewtest.Heron, "R"},
	{"pad-motor-120x40", viewtest.Heron, "d R"},
	{"pad-starter-80x24", starter, "R"},
	{"pad-ascii-80x24", starter, "R e"},

	{"log-80x24", viewtest.Wagtail, "L" + oneLog},
	{"log-120x40", viewtest.Wagtail, "L" + oneLog},
	{"log-200x60", viewtest.Wagtail, "L" + oneLog},
	{"log-block-120x40", viewtest.Wagtail, "L" + oneLog + "z"},
	{"log-ascii-80x24", viewtest.Wagtail, "L" + oneLog + "Z ]"},
	{"log-us-120x40", viewtest.Wagtail, "L" + oneLog + "x I I"},
	{"log-out-120x40", viewtest.Wagtail, "L" + oneLog + "W W E s"},
	{"log-read-80x24", viewtest.Wagtail, "L" + oneLog + "I I"},
	{"log-fit-80x24", viewtest.Wagtail, "L" + oneLog + "b"},
	{"log-fit-120x40", viewtest.Wagtail, "L" + oneLog + "b"},
	{"log-taken-120x40", viewtest.Wagtail, "L" + oneLog + "b k"},
	{"log-acceleration-120x40", viewtest.Wagtail, "L a ../testdata/logs/three.tsv enter y"},
	{"log-none-80x24", viewtest.Wagtail, "L"},
}

// oneLog opens the first made-up log.
const oneLog = " a ../testdata/logs/one.csv enter "

func starter(testing.TB) *rocketfile.File { return rocketfile.Starter() }

func windy(t testing.TB) *rocketfile.File { return viewtest.Windy(t, "8 m/s") }

// flat has little pressure.
func flat(t testing.TB) *rocketfile.File {
	return viewtest.With(t, rocketfile.Change{Input: "water.pressure", Value: "2.5 bar"})
}

func TestGoldens(t *testing.T) {
	long.Unraced(t)
	home, err := os.Getwd()
	require.NoError(t, err)
	for _, c := range shots {
		t.Run(c.name, func(t *testing.T) {
			var w, h int
			_, err := fmt.Sscanf(c.name[strings.LastIndex(c.name, "-")+1:], "%dx%d", &w, &h)
			require.NoError(t, err)
			charset := plot.Braille
			switch {
			case strings.Contains(c.name, "ascii"):
				charset = plot.ASCII
			case strings.Contains(c.name, "block"):
				charset = plot.Block
			}
			s := newScreenIn(t, c.file(t), charset, w, h, noCorners)
			if strings.HasPrefix(c.name, "check") {
				s.judged() // what is on its list, and chosen, goes by the corners
			}
			s.press(strings.Fields(c.keys)...)
			s.judged()
			require.True(t, charset != plot.ASCII || draw.IsASCII(s.view()), "not 7-bit: %q", s.view())
			require.NotContains(t, strings.ToLower(s.view()), "safe")
			t.Chdir(home)
			s.golden(c.name)
		})
	}
}
