package quantity

import (
	"strconv"
	"strings"
)

// minus is the minus sign of print.
const minus = "−"

// split parts a text into its leading number, empty if there is none, and the rest:
// a decimal with a point or, where that is plain, with a comma, or a common
// fraction such as 9/16 or 1 1/2, which is handed back as it was written.
func split(text string) (number, rest string) {
	text = strings.TrimSpace(text)
	if after, ok := strings.CutPrefix(text, minus); ok {
		text = "-" + after
	}
	if n := fractionLength(text); n > 0 {
		return text[:n], strings.TrimSpace(text[n:])
	}
	text = decimalComma(text)
	n := decimalLength(text)
	return text[:n], strings.TrimSpace(text[n:])
}

// valueOf is the value of a number that split has found.
func valueOf(number string) (float64, error) {
	over := strings.IndexByte(number, '/')
	if over < 0 {
		return strconv.ParseFloat(number, 64)
	}
	below, err := strconv.ParseFloat(number[over+1:], 64)
	if err != nil {
		return 0, err
	}
	above, whole, sign := number[:over], 0.0, 1.0
	if n := signLength(above); n > 0 {
		if above[0] == '-' {
			sign = -1
		}
		above = above[n:]
	}
	if i := strings.LastIndexAny(above, " -"); i >= 0 {
		if whole, err = strconv.ParseFloat(strings.TrimSpace(above[:i]), 64); err != nil {
			return 0, err
		}
		above = above[i+1:]
	}
	parts, err := strconv.ParseFloat(above, 64)
	return sign * (whole + parts/below), err
}

// decimalLength is the length of the decimal number that a text starts with: a
// sign, digits with at most one point among them, and an exponent, where sign
// and exponent may be absent. Neither infinities nor hexadecimal are numbers.
func decimalLength(s string) int {
	i := signLength(s)
	whole := digitsLength(s[i:])
	i += whole
	parts := 0
	if i < len(s) && s[i] == '.' {
		parts = digitsLength(s[i+1:])
		if whole+parts > 0 {
			i += 1 + parts
		}
	}
	if whole+parts == 0 {
		return 0
	}
	if i < len(s) && (s[i] == 'e' || s[i] == 'E') {
		j := i + 1
		j += signLength(s[j:])
		if n := digitsLength(s[j:]); n > 0 {
			i = j + n
		}
	}
	return i
}

// decimalComma writes a text that starts with a number such as 0,93 with a point.
// Before exactly three digits a comma could part thousands: such a number stays,
// and is refused, but for one below 1, which has no thousands.
func decimalComma(s string) string {
	sign := signLength(s)
	whole := sign + digitsLength(s[sign:])
	if whole == sign || whole == len(s) || s[whole] != ',' {
		return s
	}
	parts := digitsLength(s[whole+1:])
	if parts == 0 || parts == 3 && s[sign:whole] != "0" {
		return s
	}
	return s[:whole] + "." + s[whole+1:]
}

// fractionLength is the length of the common fraction that a text starts with: a
// sign, perhaps a whole number and a space or a hyphen, and two whole numbers
// with a stroke between, of which the lower is not 0.
func fractionLength(s string) int {
	i := signLength(s)
	first := digitsLength(s[i:])
	if first == 0 {
		return 0
	}
	i += first
	if j := i + gapLength(s[i:]); j > i {
		if above := digitsLength(s[j:]); above > 0 {
			i = j + above
		}
	}
	if i == len(s) || s[i] != '/' {
		return 0
	}
	below := digitsLength(s[i+1:])
	if strings.Trim(s[i+1:i+1+below], "0") == "" {
		return 0
	}
	return i + 1 + below
}

// gapLength is the length of what parts a whole number from a fraction of it.
func gapLength(s string) int {
	if s != "" && s[0] == '-' {
		return 1
	}
	return len(s) - len(strings.TrimLeft(s, " "))
}

func signLength(s string) int {
	if s != "" && (s[0] == '+' || s[0] == '-') {
		return 1
	}
	return 0
}

func digitsLength(s string) int {
	n := 0
	for n < len(s) && '0' <= s[n] && s[n] <= '9' {
		n++
	}
	return n
}

// zero says whether a number is written with no digit but 0 before its exponent.
func zero(number string) bool {
	if i := strings.IndexAny(number, "eE/"); i >= 0 {
		number = number[:i]
	}
	return !strings.ContainsAny(number, "123456789")
}
