package rocketfile

import (
	"strings"

	"ullage/sim/quantity"
)

// nearest finds the word most like a name, if any is like it at all.
func nearest(name string, words []string) (string, bool) {
	const longest = 40
	if len(name) > longest {
		return "", false
	}
	name = strings.ToLower(name)
	best, least := "", max(1, len(name)/3)
	for _, w := range words {
		if d := quantity.Distance(name, w); d <= least && (best == "" || d < least) {
			best, least = w, d
		}
	}
	return best, best != ""
}
