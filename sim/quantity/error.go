package quantity

import "strconv"

// Error tells what is wrong with a text that should have been a quantity, and
// what to write instead.
type Error struct {
	Text      string    // as it was given
	Dimension Dimension // what was due
	Problem   string    // completes a sentence that starts with the text: "has no unit"
	Mend      string    // what to do: `write "70 mm"`
}

// Error is one sentence: `"70" has no unit; write "70 mm"`.
func (e *Error) Error() string {
	return quote(e.Text) + " " + e.Problem + "; " + e.Mend
}

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

// write is the mend that shows what to write.
func write(number, unit string) string { return "write " + quote(join(number, unit)) }
