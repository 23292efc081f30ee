package log

import (
	"fmt"
	"math"

	"ullage/sim/flown"
	"ullage/tui/draw"
	"ullage/tui/view"
)

// Steps of the lift-off, s.
const (
	fineShift   = 0.01
	coarseShift = 0.1
)

// widths are those of the window, s.
func widths() []float64 { return []float64{0.05, 0.1, 0.2, 0.5, 1, 2, 5, 10, 20} }

const usualWidth = 3

// window is the stretch of the log that keys move, s by its clock.
func (v *View) window() flown.Stretch {
	half := widths()[v.width] / 2
	at := v.entry().window
	return flown.Stretch{From: at - half, To: at + half}
}

// move moves the window by columns of the plot, inside the span shown.
func (v *View) move(columns float64) {
	h := v.held()
	if h == nil || h.compared == nil {
		return
	}
	from, to := v.extent(h)
	step := (to - from) / 100
	if f := v.grid.Frame(); f.Columns > 0 {
		step = (f.Max - f.Min) / float64(f.Columns)
	}
	e := v.entry()
	e.window = h.compared.Release + min(max(e.window-h.compared.Release+columns*step, from), to)
}

// jump moves the window to the next event of the predicted flight (by = 1) or the one before,
// in a span that has it.
func (v *View) jump(by float64) {
	h := v.held()
	if h == nil || h.compared == nil {
		return
	}
	e, c := v.entry(), h.compared
	at, best := e.window-c.Release, math.Inf(1)
	for _, x := range c.Flight.Events {
		if d := (x.Time - at) * by; d > 1e-9 && d < best {
			best = d
		}
	}
	if math.IsInf(best, 1) {
		return
	}
	at += best * by
	e.window = c.Release + at
	for v.span+1 < view.Spans && at > v.span.End(c.Flight) {
		v.span++
	}
}

// leaveOut leaves out the samples in the window; where none of them has a part, it takes them back.
func (v *View) leaveOut(frame view.Frame) {
	h := v.held()
	if h == nil || h.compared == nil {
		v.none(frame)
		return
	}
	e, w := v.entry(), v.window()
	in, out := 0, 0
	for _, t := range h.opened.Channels[0].T {
		if w.Has(t) {
			in++
			if flown.Left(e.LeftOut, t) {
				out++
			}
		}
	}
	switch {
	case in == 0:
		frame.Say(draw.Dim, "There is no sample in the window.")
		return
	case in > out:
		e.LeftOut = flown.Joined(e.LeftOut, w)
		frame.Say(draw.Plain, fmt.Sprintf("Left out: %s; %s takes them back.", samples(in-out), v.bindings.LeaveOut.Help().Key))
	default:
		e.LeftOut = flown.Parted(e.LeftOut, w)
		frame.Say(draw.Plain, "Taken back: "+samples(in)+".")
	}
	e.marked++
}

// takeBack takes back all that is left out.
func (v *View) takeBack(frame view.Frame) {
	e := v.entry()
	switch {
	case e == nil:
		v.none(frame)
	case len(e.LeftOut) == 0:
		frame.Say(draw.Dim, "No sample is left out.")
	default:
		e.LeftOut = nil
		e.marked++
		frame.Say(draw.Plain, "All samples have a part again.")
	}
}

// shift moves the lift-off.
func (v *View) shift(by float64) {
	e, h := v.entry(), v.held()
	if e == nil || h == nil || h.compared == nil {
		return
	}
	at := e.Release
	if math.IsNaN(at) {
		at = math.Round(h.compared.Release/fineShift) * fineShift
	}
	v.release(math.Round((at+by)/fineShift) * fineShift)
}

// release tells the time of release; NaN has it found.
func (v *View) release(at float64) {
	if e := v.entry(); e != nil && e.held != nil && e.held.compared != nil && e.Release != at {
		e.Release = at
		e.marked++
	}
}

func samples(n int) string {
	if n == 1 {
		return "1 sample"
	}
	return fmt.Sprintf("%d samples", n)
}
