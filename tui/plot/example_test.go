package plot_test

import (
	"fmt"
	"strings"

	"ullage/tui/plot"
)

// hop is a short flight upward: times, heights and speeds, and the heights of
// another to compare with.
func hop() (times, heights, speeds, kept []float64) {
	for i := range 33 {
		t := float64(i) / 10
		times = append(times, t)
		heights = append(heights, 20*t-4.9*t*t)
		speeds = append(speeds, 20-9.8*t)
		kept = append(kept, 16*t-4.9*t*t)
	}
	return times, heights, speeds, kept
}

func ExampleStack() {
	times, heights, speeds, kept := hop()
	s := plot.Stack{
		Charset: plot.ASCII, // or Braille, or Block
		X:       plot.Axis{Title: "time", Unit: "s"},
		Charts: []plot.Chart{
			{
				Y: plot.Axis{Title: "height", Unit: "m", Zero: true},
				Series: []plot.Series{
					{X: times, Y: kept, Ink: plot.Kept, Style: plot.Dotted},
					{X: times, Y: heights, Ink: plot.TraceA},
				},
			},
			{
				Y:      plot.Axis{Title: "speed", Unit: "m/s", Zero: true},
				Series: []plot.Series{{X: times, Y: speeds, Ink: plot.TraceB}},
				Limits: []plot.Limit{{Y: 15, Label: "rail"}},
			},
		},
		Marks: []plot.VerticalMark{{X: 2.04, Label: "apogee", Short: "a", Priority: 1}},
	}
	grid := s.Draw(56, 20) // or s.DrawTo(grid), which reuses what grid holds
	fmt.Println(grid)
	// Output:
	// height m                           apogee
	//    |                                 :
	//  20+                          ..............
	//    |                   .--''''       :      '''---..
	//    |             .--'''    .  .  .   :              '--.
	//  10+         ..-' .  -  '           ': -  .
	//    |      .-'  '                     :       '  .
	//    |   .-'                           :             -
	//   0+.-'                              :               '
	// speed m/s
	//  20+..                               :
	//    |=='''--...===  ===  ===  ===  ===: ===  ===  ===rail
	//  10+          '''--....              :
	//    |                   ''---...      :
	//   0+                           ''---..
	//    |                                 :'''---...
	// -10+                                 :         '''--...
	//    |                                 :                 '
	//    ++-------+-------+-------+-------+-------+-------+---
	//     0 s    0.5     1.0     1.5     2.0     2.5      time
}

// A screen gives each ink a style of its own.
func ExampleGrid_Runs() {
	times, heights, _, _ := hop()
	s := plot.Stack{
		Charset: plot.ASCII,
		Charts:  []plot.Chart{{Y: plot.Axis{Title: "height", Unit: "m"}, Series: []plot.Series{{X: times, Y: heights, Ink: plot.TraceA}}}},
	}
	styles := map[plot.Ink]string{plot.Rule: "rule", plot.Label: "label", plot.TraceA: "trace"}
	grid := s.Draw(40, 8)
	var line strings.Builder
	for ink, text := range grid.Runs(3) {
		if style, shown := styles[ink]; shown {
			fmt.Fprintf(&line, "<%s>%s</%[1]s>", style, text)
			continue
		}
		line.WriteString(text)
	}
	fmt.Println(line.String())
	// Output:
	// <label>10</label><rule>+</rule>       <trace>.-''</trace>                         <trace>'</trace>
}
