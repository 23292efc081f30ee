package quantity

import "strconv"

// quote shows a text of any length and content within one short line.
func quote(text string) string {
	const longest = 40
	n := 0
	for i := range text {
		if n == longest {
			return strconv.Quote(text[:i] + "…")
		}
		n++
	}
	return strconv.Quote(text)
}

// write is the remedy that shows what to write.
func write(number, unit string) string { return "write " + quote(join(number, unit)) }
