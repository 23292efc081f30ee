package page

import "strings"

// Listed names things in a sentence: "a", "a and b", "a, b and c".
func Listed(names []string) string {
	names = Printables(names)
	if n := len(names); n > 1 {
		return strings.Join(names[:n-1], ", ") + " and " + names[n-1]
	}
	return strings.Join(names, "")
}
