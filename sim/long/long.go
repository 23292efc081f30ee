// Package long is for tests alone: it tells how much of a long suite to run. Plain
// `go test ./...` runs a sample, which has to be quick; with ULLAGE_LONG=1, as in
// .ci/run, all of it runs. A tolerance is the same in both.
package long

import "os"

// Wanted tells whether all of it is to run.
func Wanted() bool { return os.Getenv("ULLAGE_LONG") != "" }

// Of is the sample, or all of it where that is wanted.
func Of[T any](sample, all T) T {
	if Wanted() {
		return all
	}
	return sample
}
