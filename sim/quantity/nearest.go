package quantity

import "strings"

// Nearest finds the word most like a name, if any is like it at all.
func Nearest(name string, words []string) (string, bool) {
	const longest = 40
	if len(name) > longest {
		return "", false
	}
	name = strings.ToLower(name)
	best, least := "", max(1, len(name)/3)
	for _, w := range words {
		if d := distance(name, w); d <= least && (best == "" || d < least) {
			best, least = w, d
		}
	}
	return best, best != ""
}
