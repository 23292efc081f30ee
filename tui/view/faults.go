package view

import (
	"errors"
	"fmt"

	"ullage/sim/fault"
	"ullage/tui/draw"
)

// FaultText tells what is wrong in one sentence, the first of several, and
// names the input at fault when it is another than the one changed.
func FaultText(err error, changed string) string {
	text, more := draw.Clean(err.Error()), 0
	var all fault.List
	if errors.As(err, &all) && len(all) > 0 {
		text, more = sentence(all[0], changed), len(all)-1
	}
	if more > 0 {
		text += fmt.Sprintf(" (and %d more)", more)
	}
	return text
}

func sentence(f fault.Fault, changed string) string {
	text := draw.Clean(f.Problem)
	if f.Key != changed && f.Key != "" {
		text = draw.Clean(f.Key) + ": " + text
	}
	if f.Remedy != "" {
		text += "; " + draw.Clean(f.Remedy)
	}
	return text
}
