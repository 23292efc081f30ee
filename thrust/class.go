package thrust

import "math"

// Class returns the class letter of a motor by its total impulse, N·s: A from
// 1.26 to 2.50 N·s, and each letter up to twice the one before (NFPA 1125). The
// bounds are stated to 0.01 N·s, to which the impulse is rounded first. Below A,
// where fractions of A lie, it is empty. Past Z the letters run on as AA, AB, …
// (from memory; no motor that this program is for comes near).
func Class(impulse float64) string {
	rounded := math.Round(impulse*100) / 100
	if !(rounded > 1.25 && rounded <= math.MaxFloat64) {
		return ""
	}
	letter := 0
	for upper := 2.5; rounded > upper; upper *= 2 {
		letter++
	}
	name := ""
	for letter++; letter > 0; letter = (letter - 1) / 26 {
		i := (letter - 1) % 26
		name = "ABCDEFGHIJKLMNOPQRSTUVWXYZ"[i:i+1] + name
	}
	return name
}
