package flown

import "strconv"

func itoa(n int) string { return strconv.Itoa(n) }

// figure is a ratio for people.
func figure(v float64) string { return strconv.FormatFloat(v, 'g', 2, 64) }
