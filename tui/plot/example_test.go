package plot_test

import (
	"fmt"
	"strings"

	"ullage/tui/plot"
)

// A chart with a limit, a mark and a cursor, and how a screen paints a row.
func Example() {
	var t, h []float64
	for i := range 61 {
		x := float64(i) / 10
		t, h = append(t, x), append(h, 20*x-3.3*x*x)
	}
	s := plot.Stack{
		Charset: plot.Block,
		X:       plot.Axis{Unit: "s"},
		Charts: []plot.Chart{{
			Y:      plot.Axis{Title: "height", Unit: "m", Zero: true},
			Series: []plot.Series{{X: t, Y: h, Ink: plot.TraceA}},
			Limits: []plot.Limit{{Y: 20, Label: "ceiling"}},
		}},
		Marks: []plot.VerticalMark{{X: 3.03, Label: "top"}},
	}
	grid := s.Draw(48, 9)
	fmt.Println(grid)

	var row []string
	for ink, text := range grid.Runs(0) {
		if ink != plot.None {
			row = append(row, fmt.Sprintf("%q in ink %d", text, ink))
		}
	}
	fmt.Println(strings.Join(row, ", "))
	// Output:
	// height m                top
	//   │                ▄▄▄▄▄▄▄▄▄▄▄▄▄▖
	//   │           ▄▄▀▀▀      ┊      ▝▀▀▚▄▖
	// 20┤▀▀ ▀▀ ▀▜▄▀▀ ▀▀ ▀▀ ▀▀ ▀▀ ▀▀ ceiling▀▀▜█▖▀▀ ▀▀
	//   │    ▗▄▀▘              ┊               ▝▀▄
	//   │  ▄▀▘                 ┊                  ▀▚▖
	//  0┤▞▀                    ┊                    ▝▚
	//   └┬──────────────┬─────────────┬──────────────┬
	//    0 s            2             4              6
	// "height m" in ink 3, "top" in ink 10
}

func ExampleBar() {
	for _, part := range []struct {
		name  string
		share float64
	}{{"nose", 0.12}, {"body", 0.53}, {"fins", 0.35}} {
		fmt.Printf("%s %s %2.0f %%\n", part.name, plot.Bar(part.share, 20, plot.ASCII), 100*part.share)
	}
	// Output:
	// nose ##                   12 %
	// body ###########          53 %
	// fins #######              35 %
}
