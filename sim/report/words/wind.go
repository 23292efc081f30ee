package words

import (
	"fmt"

	"ullage/atmosphere"
)

// Wind says what wind there is near the ground, and in how many layers it is known.
func (p Printer) Wind(w *atmosphere.Wind) string {
	speed, from := w.Surface()
	n := len(w.Layers)
	switch {
	case !w.Known():
		return "no wind stated"
	case n == 0 && speed == 0:
		return "calm"
	case n == 0:
		return "wind " + p.Given(speed, "m/s") + " from " + p.Given(from, "deg")
	}
	near := "calm"
	if speed > 0 {
		near = p.Given(speed, "m/s") + " from " + p.Given(from, "deg")
	}
	high := w.Top()
	text := fmt.Sprintf("wind %s at %s", near, p.Given(w.Reference(), "m"))
	if n == 1 {
		return text + ", one layer"
	}
	return text + fmt.Sprintf(", %d layers up to %s from %s at %s", n, p.Given(high.Speed, "m/s"), p.Given(high.From, "deg"), p.Given(high.Height, "m"))
}
