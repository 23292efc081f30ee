package chamber

import "strconv"

// label is the name of an entry of a list, its number from 1 when it has none.
func label(name string, i int) string {
	if name != "" {
		return name
	}
	return strconv.Itoa(i + 1)
}
