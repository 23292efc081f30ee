package long

import "testing"

// Unraced leaves a test out under -short, with which .ci/run has the race detector run
// what is left: for a dear test in which no goroutines meet but those that meet in
// cheaper ones too. The race detector makes it ten times dearer and has nothing to find.
func Unraced(t testing.TB) {
	t.Helper()
	if testing.Short() {
		t.Skip("nothing for the race detector that cheaper tests do not show it")
	}
}
