package rocketfile

import "strings"

// nearest finds the word most like a name, if any is like it at all: by
// letters to insert, delete or replace (Levenshtein 1966).
func nearest(name string, words []string) (string, bool) {
	const longest = 40
	if len(name) > longest {
		return "", false
	}
	name = strings.ToLower(name)
	best, least := "", 1+len(name)/3
	for _, w := range words {
		if d := distance(name, w); d <= least && (best == "" || d < least) {
			best, least = w, d
		}
	}
	return best, best != ""
}

func distance(a, b string) int {
	row := make([]int, len(b)+1)
	for j := range row {
		row[j] = j
	}
	for i := 1; i <= len(a); i++ {
		diagonal := row[0]
		row[0] = i
		for j := 1; j <= len(b); j++ {
			cost := 1
			if a[i-1] == b[j-1] {
				cost = 0
			}
			diagonal, row[j] = row[j], min(diagonal+cost, row[j]+1, row[j-1]+1)
		}
	}
	return row[len(b)]
}
