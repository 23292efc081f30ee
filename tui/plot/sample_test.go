package plot

import "math"

var charsets = []Charset{Braille, Block, ASCII}

// ballistic is a made-up flight: a short push, a rise, a slow descent. Time,
// height, speed and a pressure that is soon gone.
func ballistic(points int) (t, h, v, p []float64) {
	const push, top, end = 0.3, 6.2, 31.0
	for i := range points {
		x := end * float64(i) / float64(points-1)
		x *= x / end // close together at first
		var height, speed, pressure float64
		switch {
		case x < push:
			height, speed = 90*x*x, 180*x
			pressure = 9 * math.Pow(1-x/push*0.7, 1.4)
		case x < top:
			u := (top - x) / (top - push)
			height, speed = 214-(214-90*push*push)*u*u, 54*u
		default:
			height, speed = 214*(end-x)/(end-top), 8.6
		}
		t, h, v, p = append(t, x), append(h, height), append(v, speed), append(p, pressure)
	}
	return t, h, v, p
}

func scaled(values []float64, by float64) []float64 {
	out := make([]float64, len(values))
	for i, v := range values {
		out[i] = v * by
	}
	return out
}

// flightStack is what the first view shows: three charts, a kept flight, marks.
func flightStack(c Charset, points int) Stack {
	t, h, v, p := ballistic(points)
	chart := func(title, unit string, y []float64, ink Ink) Chart {
		return Chart{
			Y: Axis{Title: title, Unit: unit, Zero: true},
			Series: []Series{
				{X: t, Y: scaled(y, 0.8), Ink: Kept, Style: Dotted},
				{X: t, Y: y, Ink: ink},
			},
		}
	}
	height := chart("height", "m", h, TraceA)
	height.Note = "+43 m"
	speed := chart("speed", "m/s", v, TraceB)
	speed.Limits = []Limit{{Y: 15, Label: "limit 15"}}
	return Stack{
		Charset: c,
		X:       Axis{Unit: "s"},
		Charts:  []Chart{height, speed, chart("chamber", "bar", p, TraceC)},
		Marks: []VerticalMark{
			{X: 0.18, Label: "rail", Short: "r", Priority: 2},
			{X: 0.30, Label: "liquid out", Short: "l", Priority: 3},
			{X: 0.36, Label: "gas out", Short: "g", Priority: 1},
			{X: 6.2, Label: "top", Short: "t", Priority: 5},
			{X: 7.2, Label: "main", Short: "m", Priority: 4},
		},
		ShowCursor: true,
		Cursor:     3.4,
	}
}

// fillStack is two curves on two axes, a family, points and a band.
func fillStack(c Charset) Stack {
	var x, best, exit []float64
	for f := 5.0; f <= 70; f++ {
		x = append(x, f)
		best = append(best, apogeeAt(f))
		exit = append(exit, 12+0.2*f)
	}
	return Stack{Charset: c, X: Axis{Title: "fill", Unit: "%"}, Charts: []Chart{{
		Y:     Axis{Title: "apogee", Unit: "m", Zero: true},
		Right: Axis{Title: "rail exit", Unit: "m/s"},
		Series: []Series{
			{X: x, Y: scaled(best, 0.6), Ink: TraceC, Style: Dotted, End: "5 bar"},
			{X: x, Y: scaled(best, 0.8), Ink: TraceD, Style: Dotted, End: "7 bar"},
			{X: x, Y: exit, Ink: TraceB, Style: Dashed, Right: true, End: "exit"},
			{X: x, Y: best, Ink: TraceA, End: "9 bar"},
		},
		Points: []PointMark{
			{X: 31, Y: apogeeAt(31), Sign: 'B', Label: "best 31 %"},
			{X: 45, Y: apogeeAt(45), Label: "now"},
		},
		Bands: []Band{{From: 34, To: 28}},
	}}}
}

func apogeeAt(fill float64) float64 { return 214 * math.Exp(-math.Pow((fill-31)/25, 2)) }

// mapStack is landing points with an ellipse, on equal scales.
func mapStack(c Charset) Stack {
	var x, y, ex, ey []float64
	for i := range 300 {
		// A spread without random numbers: golden-angle spiral.
		r, a := math.Sqrt(float64(i)/300), 2.399963*float64(i)
		x, y = append(x, 90+60*r*math.Cos(a)), append(y, 20+25*r*math.Sin(a))
	}
	for i := range 101 {
		a := 2 * math.Pi * float64(i) / 100
		ex, ey = append(ex, 90+57*math.Cos(a)), append(ey, 20+24*math.Sin(a))
	}
	return Stack{Charset: c, X: Axis{Title: "east", Unit: "m"}, Charts: []Chart{{
		Y:     Axis{Title: "north", Unit: "m"},
		Equal: true,
		Series: []Series{
			{X: x, Y: y, Ink: TraceA, Style: Points},
			{X: ex, Y: ey, Ink: TraceB},
		},
		Points: []PointMark{{Sign: '+', Label: "pad"}},
	}}}
}
