// Package golden is for tests alone: it holds a text to a file in testdata.
package golden

import (
	"flag"
	"os"
	"path/filepath"
	"testing"

	"github.com/rogpeppe/go-internal/diff"
)

var update = flag.Bool("update", false, "write the golden files anew")

// Updating tells that files are to be written anew, with -update.
func Updating() bool { return *update }

// Equal fails the test and prints the lines that differ, with a few around them,
// unless got is what the file of that name in testdata holds. With -update it
// writes the file instead.
func Equal(t testing.TB, name, got string) {
	t.Helper()
	path := filepath.Join("testdata", name)
	if *update {
		if err := os.WriteFile(path, []byte(got), 0o644); err != nil {
			t.Fatal(err)
		}
		return
	}
	want, err := os.ReadFile(path)
	if err != nil {
		t.Fatalf("%v; -update writes it", err)
	}
	if d := diff.Diff(path, want, "now", []byte(got)); d != nil {
		t.Errorf("%s", d)
	}
}
