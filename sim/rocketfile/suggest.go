package rocketfile

import "strings"

// nearest finds the word most like a name, if any is like it at all.
func nearest(name string, words []string) (string, bool) {
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

// distance counts the bytes to insert, delete, replace or swap with the next
// to make one text of the other (optimal string alignment).
func distance(a, b string) int {
	older := make([]int, len(b)+1)
	old := make([]int, len(b)+1)
	row := make([]int, len(b)+1)
	for j := range old {
		old[j] = j
	}
	for i := 1; i <= len(a); i++ {
		row[0] = i
		for j := 1; j <= len(b); j++ {
			cost := 1
			if a[i-1] == b[j-1] {
				cost = 0
			}
			row[j] = min(old[j]+1, row[j-1]+1, old[j-1]+cost)
			if i > 1 && j > 1 && a[i-1] == b[j-2] && a[i-2] == b[j-1] {
				row[j] = min(row[j], older[j-2]+1)
			}
		}
		older, old, row = old, row, older
	}
	return old[len(b)]
}
