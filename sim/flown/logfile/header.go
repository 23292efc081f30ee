package logfile

import (
	"slices"
	"strings"
	"unicode"

	"ullage/sim/quantity"
)

// head is what the head of a column says.
type head struct {
	text     string // as written
	quantity Quantity
	unit     quantity.Unit
	hasUnit  bool
	measured bool // by satellites, a tape, radar: no pressure behind it
	absolute bool // told of a pressure
	gauge    bool
	sideways bool // an acceleration across the axis, or one of which that is not known
}

// elsewhere are words of columns that are no course of a flight.
func elsewhere() []string {
	return []string{"wind", "max", "maximum", "peak", "mean", "average", "error", "accuracy", "predicted", "simulated", "target", "limit", "count"}
}

// readHead reads the head of a column, with the unit below it where a header has a row of units.
func readHead(text, unitBelow string, s spelled) head {
	h := head{text: strings.TrimSpace(text)}
	rest, bracketed := bracket(h.text)
	words := wordsOf(rest)
	for _, w := range words {
		if slices.Contains(elsewhere(), w) {
			return h
		}
	}
	t := tells(words)
	if t == nil {
		return h
	}
	h.quantity = t.quantity
	for _, candidate := range append([]string{unitBelow}, append(bracketed, tail(h.text, words)...)...) {
		if candidate == "" || t.quantity == Time && candidate == "t" {
			continue
		}
		if u, ok := s.in(candidate, t.dimension); ok {
			h.unit, h.hasUnit = u, true
			as := tidyUnit(candidate)
			h.absolute = strings.HasSuffix(as, "bara") || strings.HasSuffix(as, "psia") || strings.HasSuffix(as, "kpaa")
			break
		}
	}
	has := func(any ...string) bool {
		return slices.ContainsFunc(words, func(w string) bool { return slices.Contains(any, w) })
	}
	h.measured = has("gps", "gnss", "tape", "radar", "laser", "lidar", "optical", "satellite")
	h.absolute = h.absolute || has("absolute", "abs")
	h.gauge = has("gauge", "gage", "rel", "relative")
	h.sideways = t.quantity == Acceleration && has("x", "y", "ax", "ay", "lateral", "z", "az")
	return h
}

// tells finds the quantity that words tell of.
func tells(words []string) *traits {
	all := quantities()
	for i := range all {
		t := &all[i]
		for _, w := range words {
			if slices.Contains(t.words, w) && (len(w) > 1 || len(words) <= 2 && w == words[0]) {
				return t
			}
		}
	}
	return nil
}

// bracket takes what stands in brackets out of a head: it may be a unit.
func bracket(text string) (rest string, within []string) {
	for {
		from := strings.IndexAny(text, "([{<")
		if from < 0 {
			return text, within
		}
		to := strings.IndexAny(text[from:], ")]}>")
		if to < 0 {
			return text[:from], append(within, text[from+1:])
		}
		within = append(within, text[from+1:from+to])
		text = text[:from] + " " + text[from+to+1:]
	}
}

// wordsOf are the words of a head, lower case: parted by anything that is no letter, and
// where a capital follows a small letter.
func wordsOf(text string) []string {
	var b strings.Builder
	before := rune(0)
	for _, r := range text {
		if unicode.IsUpper(r) && unicode.IsLower(before) {
			b.WriteByte(' ')
		}
		before = r
		if !unicode.IsLetter(r) {
			r = ' '
		}
		b.WriteRune(unicode.ToLower(r))
	}
	return strings.Fields(b.String())
}

// tail are what may be a unit at the end of a head: height_m, speed_m_s, Height m/s, H/m.
func tail(text string, words []string) []string {
	var found []string
	cut := func(s string) []string {
		return strings.FieldsFunc(s, func(r rune) bool { return r == '_' || unicode.IsSpace(r) || r == ',' || r == ':' })
	}
	parts := cut(text)
	if n := len(parts); n >= 3 {
		found = append(found, parts[n-2]+"/"+parts[n-1])
	}
	if n := len(parts); n >= 2 {
		found = append(found, parts[n-1])
	}
	if i := strings.IndexByte(text, '/'); i > 0 {
		found = append(found, text[i+1:])
	}
	if n := len(words); n >= 2 {
		found = append(found, words[n-1]) // heightM
	}
	if len(words) == 1 {
		found = append(found, words[0]) // "seconds", "millis"
	}
	return found
}
