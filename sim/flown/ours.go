package flown

import (
	"slices"

	"ullage/sim/fault"
	"ullage/sim/flown/logfile"
	"ullage/sim/results"
)

// ours tells whether a log is samples of a flight as `ullage fly --csv` writes them, by the columns that
// no recorder has: heights in it are heights, the thrust is the thrust, and the chamber's
// pressure is absolute.
func ours(log *logfile.Log) bool {
	for _, name := range []string{"drag", "mass", "air"} {
		if !slices.Contains(log.Others, results.FindSeries(name).Column) {
			return false
		}
	}
	return true
}

// ownNote says how such a log is read.
func ownNote() fault.Fault {
	return fault.Fault{Problem: "these are samples of a flight of this program: heights are taken as measured, speeds as those of the whole motion, the chamber's pressure as absolute",
		Remedy: "acceleration is left out, which is not what an accelerometer feels"}
}
