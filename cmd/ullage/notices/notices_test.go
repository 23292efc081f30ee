package notices

import (
	"os/exec"
	"strings"
	"testing"

	"github.com/rogpeppe/go-internal/diff"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"ullage/sim/long"
)

// What is linked here, in the version that is linked, is told of.
func TestEveryModuleIsToldOf(t *testing.T) {
	out, err := exec.Command("go", "list", "-deps", "-f", "{{with .Module}}{{if not .Main}}{{.Path}} {{.Version}}{{end}}{{end}}", "ullage/cmd/ullage").Output()
	require.NoError(t, err)
	modules := strings.FieldsFunc(string(out), func(r rune) bool { return r == '\n' })
	require.Greater(t, len(modules), 10)
	for _, m := range modules {
		assert.True(t, strings.Contains(Text(), "\n"+m+": "), "%s: go generate ./cmd/ullage/notices writes the file anew", m)
	}
}

func TestTheFontsLicenceIsThere(t *testing.T) {
	assert.Contains(t, Text(), "LICENSE-SIL\n")
	assert.Contains(t, Text(), "with Reserved Font Name Liberation.")
	assert.Contains(t, Text(), "SIL OPEN FONT LICENSE Version 1.1")
}

// What is linked on every target, as gather finds it now. It needs the modules of all of
// them, which a machine may have to fetch.
func TestNoticesAreCurrent(t *testing.T) {
	if !long.Wanted() {
		t.Skip("ULLAGE_LONG=1 compares the file with the module cache")
	}
	now, err := exec.Command("go", "run", "./gather").Output()
	require.NoError(t, err)
	if d := diff.Diff("notices.txt", []byte(Text()), "now", now); d != nil {
		t.Errorf("go generate ./cmd/ullage/notices writes the file anew\n%s", d)
	}
}
