package report

import (
	"math"
	"strconv"

	"ullage/sim/gates"
)

// limitSentence says a limit and where it comes from: "At least 15 m/s: common practice."
func limitSentence(p printer, l gates.Limit) string {
	return limitBound(p, l) + ": " + l.Source + "."
}

// limitBound says a limit: "At least 15 m/s".
func limitBound(p printer, l gates.Limit) string {
	bound, v := "At least ", l.Min
	if math.IsInf(v, 0) {
		bound, v = "At most ", l.Max
	}
	shown := ratio(v)
	if l.Unit != "" {
		shown = p.given(v, l.Unit)
	}
	return bound + shown
}

// ratio writes a ratio that was set rather than computed.
func ratio(v float64) string {
	if v == math.Trunc(v) { // 36500 days, not 3.65e+04
		return strconv.FormatFloat(v, 'f', 0, 64)
	}
	return strconv.FormatFloat(v, 'g', digits, 64)
}
