package main

import (
	"bytes"
	"context"
	"encoding/json"
	"errors"
	"io"
	"os/exec"
	"path"
	"reflect"
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"ullage/sim"
	"ullage/sim/gates"
	"ullage/sim/long"
	"ullage/sim/plan"
	"ullage/sim/study"
)

// topLevel is all there is at the top of the repository, beside dot files.
var topLevel = []string{
	"DEVELOPERS.md", "LICENSE", "README.md", "atmosphere", "cmd", "go.mod", "go.sum", "sim", "testdata", "thrust", "tui",
}

func TestTopLevel(t *testing.T) {
	command := exec.Command("git", "ls-files", "--cached", "--others", "--exclude-standard")
	command.Dir = "../.."
	out, err := command.Output()
	if err != nil {
		t.Skip("not a git checkout")
	}
	var found []string
	for _, name := range strings.Fields(string(out)) {
		top, _, _ := strings.Cut(name, "/")
		if !strings.HasPrefix(top, ".") && !slices.Contains(found, top) {
			found = append(found, top)
		}
	}
	assert.ElementsMatch(t, topLevel, found)
}

// rooms are the packages from top to bottom, by the beginning of their paths, a star
// being any folder: each may import only those of a later row.
var rooms = [][]string{
	{"cmd/ullage"},
	{"cmd/ullage/chart"},
	{"tui"},
	{"tui/view/*"},
	{"tui/view"},
	{"tui/draw", "tui/terminal"},
	{"tui/plot", "tui/quiet", "tui/recovery"},
	{"sim/report"},
	{"sim/report/checklist"},
	{"sim/report/card", "sim/report/proof", "sim/report/bench", "sim/report/layup", "sim/report/measured", "sim/report/fieldmap"},
	{"sim/report/words"},
	{"sim/report/page", "sim/report/machine"},
	{"sim/plan"},
	{"sim/gates"},
	{"sim/flown"},
	{"sim/study"},
	{"sim/results"},
	{"sim", "sim/rocketfile", "sim/pattern"}, // neither knows the other
	{"sim/rocket", "sim/flown/logfile"},
	{"sim/layup", "sim/bench"},
	{"sim/airframe", "sim/chamber", "sim/flown/logbook", "sim/gore", "sim/ground", "thrust", "atmosphere"},
	{"sim/quantity"},
	{"sim/fault", "sim/golden", "sim/long", "sim/solve", "sim/atomicfile"},
}

// terminalPackages are of the screen alone.
var terminalPackages = []string{
	"github.com/charmbracelet/", "github.com/muesli/termenv", "github.com/mattn/go-isatty", "github.com/creack/pty",
}

// listed is what go list tells of a package.
type listed struct {
	ImportPath string
	Imports    []string
	Deps       []string
}

// ours lists the packages of the module.
func ours(t *testing.T) []listed {
	out, err := exec.Command("go", "list", "-json=ImportPath,Imports,Deps", "ullage/...").Output()
	require.NoError(t, err)
	var all []listed
	for d := json.NewDecoder(bytes.NewReader(out)); ; {
		var p listed
		err := d.Decode(&p)
		if errors.Is(err, io.EOF) {
			return all
		}
		require.NoError(t, err)
		all = append(all, p)
	}
}

// row is where in rooms a package stands: its own row, or that of the folder it
// is in; -1 when it has none.
func row(importPath string) int {
	for name := strings.TrimPrefix(importPath, "ullage/"); name != "."; name = path.Dir(name) {
		for i, r := range rooms {
			if slices.Contains(r, name) || slices.Contains(r, path.Dir(name)+"/*") {
				return i
			}
		}
	}
	return -1
}

func TestArrowsRunDown(t *testing.T) {
	long.Unraced(t)
	for _, p := range ours(t) {
		from := row(p.ImportPath)
		if !assert.GreaterOrEqual(t, from, 0, "%s has no room", p.ImportPath) {
			continue
		}
		for _, i := range p.Imports {
			// A folder without a row is its room's own.
			own := row(i) == from && strings.HasPrefix(i, p.ImportPath+"/")
			if strings.HasPrefix(i, "ullage/") && !own {
				assert.Greater(t, row(i), from, "%s imports %s", p.ImportPath, i)
			}
		}
	}
}

// Whatever flies, once or many times, takes a context so that it can be interrupted. Those
// who only format what they are given need none, so that one is a flight in the wrong room.
func TestReportsFlyNothing(t *testing.T) {
	long.Unraced(t)
	checked := 0
	for _, p := range ours(t) {
		if strings.HasPrefix(p.ImportPath+"/", "ullage/sim/report/") {
			checked++
			assert.NotContains(t, p.Imports, "context", "%s may fly", p.ImportPath)
		}
	}
	assert.Positive(t, checked)
	for name, fly := range map[string]any{
		"sim.Fly": sim.Fly, "study.Sweep": study.Sweep, "study.FindBest": study.FindBest, "study.Compare": study.Compare,
		"study.Opening": study.Opening, "study.WhatIfs": study.WhatIfs, "study.CanopyFor": study.CanopyFor,
		"study.RailExitFor": study.RailExitFor, "study.WindTilts": study.WindTilts, "study.Disperse": study.Disperse,
		"study.Airframes": study.Airframes, "study.StructureOf": study.StructureOf, "gates.Judge": gates.Judge, "plan.DayOf": plan.DayOf, "plan.MostWind": plan.MostWind,
	} {
		assert.Equal(t, reflect.TypeFor[context.Context](), reflect.TypeOf(fly).In(0), name)
	}
}

func TestNothingBelowTheScreenKnowsATerminal(t *testing.T) {
	long.Unraced(t)
	screen := row("ullage/tui/draw") // the lowest of it that paints
	checked := 0
	for _, p := range ours(t) {
		if row(p.ImportPath) <= screen {
			continue
		}
		checked++
		for _, d := range p.Deps {
			for _, terminal := range terminalPackages {
				assert.False(t, strings.HasPrefix(d, terminal), "%s needs %s", p.ImportPath, d)
			}
		}
	}
	assert.Greater(t, checked, 5)
}
