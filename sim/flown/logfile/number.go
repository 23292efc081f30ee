package logfile

import (
	"math"
	"strconv"
	"strings"
)

// cell is what stands in one place of a table.
type cell int

const (
	isNumber cell = iota
	isGap         // nothing, or a word that says so
	isText
)

// number reads a cell: a decimal number with a point, or a comma where that parts no
// cells, or a time of day.
func number(b []byte, comma bool) (float64, cell) {
	b = trim(b)
	if len(b) == 0 {
		return math.NaN(), isGap
	}
	if v, ok := plain(b); ok {
		return v, isNumber
	}
	return unusual(string(b), comma)
}

// plain reads most numbers and leaves the others: a whole number of up to 15 digits with a
// power of ten that is exact is divided once, which rounds as it has to (Clinger, PLDI 1990).
func plain(b []byte) (float64, bool) {
	negative := false
	i := 0
	if b[0] == '-' || b[0] == '+' {
		negative = b[0] == '-'
		i = 1
	}
	const most = 15
	n, some, digits, behind, point := 0.0, false, 0, 0, false
	for ; i < len(b); i++ {
		switch c := b[i]; {
		case '0' <= c && c <= '9':
			n = 10*n + float64(c-'0')
			some = true
			if n > 0 {
				digits++
			}
			if point {
				behind++
			}
		case c == '.' && !point:
			point = true
		default:
			return 0, false
		}
	}
	if !some || digits > most || behind > most {
		return 0, false
	}
	v := n / tens[behind]
	if negative {
		v = -v
	}
	return v, true
}

// tens are powers of ten that are exact.
var tens = [...]float64{1, 1e1, 1e2, 1e3, 1e4, 1e5, 1e6, 1e7, 1e8, 1e9, 1e10, 1e11, 1e12, 1e13, 1e14, 1e15}

func unusual(s string, comma bool) (float64, cell) {
	if n := len(s); n >= 2 && s[0] == '"' && s[n-1] == '"' {
		s, comma = strings.TrimSpace(s[1:n-1]), true
	}
	s = strings.Replace(s, "−", "-", 1)
	if comma && strings.Count(s, ",") == 1 && !strings.Contains(s, ".") {
		s = strings.Replace(s, ",", ".", 1)
	}
	switch strings.ToLower(s) {
	case "", "-", "--", "---", "?", "*", "nan", "-nan", "na", "n/a", "#n/a", "null", "none", "nil", "inf", "-inf", "+inf":
		return math.NaN(), isGap
	}
	if strings.ContainsAny(s, "_xXpP") {
		return math.NaN(), isText
	}
	if v, err := strconv.ParseFloat(s, 64); err == nil {
		if math.IsNaN(v) || math.IsInf(v, 0) {
			return math.NaN(), isGap
		}
		return v, isNumber
	}
	if v, ok := clock(s); ok {
		return v, isNumber
	}
	return math.NaN(), isText
}

func trim(b []byte) []byte {
	for len(b) > 0 && (b[0] == ' ' || b[0] == '\t') {
		b = b[1:]
	}
	for n := len(b); n > 0 && (b[n-1] == ' ' || b[n-1] == '\t'); n-- {
		b = b[:n-1]
	}
	return b
}
