package main

import (
	"context"
	"errors"
	"os"
	"path/filepath"
	"strconv"
	"strings"
	"testing"

	"github.com/rogpeppe/go-internal/testscript"

	"ullage/sim/long"
)

// TestMain puts the program on the path, as ullage, for scripts and terminals that run
// it as a process.
func TestMain(m *testing.M) {
	testscript.Main(m, map[string]func(){"ullage": main})
}

// noRaceWait keeps a program built with the race detector from waiting a second
// before it ends, for the many that are run here.
const noRaceWait = "GORACE=atexit_sleep_ms=0"

// TestScripts runs the scripts one after another: what they run within this process
// shares its working directory. Goroutines meet in studies (studies_test.go) and at the
// terminal (pty_test.go), which the race detector sees without them.
func TestScripts(t *testing.T) {
	long.Unraced(t)
	testscript.RunT(oneByOne{t}, testscript.Params{
		Dir: "testdata/script",
		Setup: func(e *testscript.Env) error {
			data, err := filepath.Abs("testdata/rocket")
			examples, err2 := filepath.Abs("../../testdata")
			e.Vars = append(e.Vars, noRaceWait, "DATA="+data, "EXAMPLES="+examples)
			return errors.Join(err, err2)
		},
		Cmds: map[string]func(*testscript.TestScript, bool, []string){"run": cmdRun, "status": cmdStatus, "width": cmdWidth},
	})
}

// oneByOne is a test whose scripts do not run side by side.
type oneByOne struct{ *testing.T }

func (oneByOne) Parallel()     {}
func (oneByOne) Verbose() bool { return testing.Verbose() }

func (t oneByOne) Run(name string, f func(testscript.T)) {
	t.T.Run(name, func(t *testing.T) { f(oneByOne{t}) })
}

// cmdRun is as exec, but runs the program within this process, which is much quicker;
// what a process does with its streams and how it ends are left to exec:
//
//	run ullage fly heron.toml
//	run ullage fly - <heron.toml
//	! run ullage fly nothing.toml
func cmdRun(ts *testscript.TestScript, neg bool, args []string) {
	switch got := within(ts, args); {
	case neg && got == statusDone:
		ts.Fatalf("unexpected command success")
	case !neg && got != statusDone:
		ts.Fatalf("exit status %d", got)
	}
}

// cmdStatus runs the program within this process and holds its exit status to be the
// one given:
//
//	status 2 ullage fly nothing.toml
func cmdStatus(ts *testscript.TestScript, neg bool, args []string) {
	if neg || len(args) < 2 {
		ts.Fatalf("usage: status n ullage [arguments]")
	}
	want, err := strconv.Atoi(args[0])
	ts.Check(err)
	if got := within(ts, args[1:]); got != want {
		ts.Fatalf("exit status %d, not %d", got, want)
	}
}

// within runs the program within this process, in the script's directory, and gives
// its exit status.
func within(ts *testscript.TestScript, args []string) int {
	if len(args) == 0 || args[0] != "ullage" {
		ts.Fatalf("only ullage runs within this process; exec runs others")
	}
	before, err := os.Getwd()
	ts.Check(err)
	ts.Check(os.Chdir(ts.MkAbs(".")))
	defer os.Chdir(before)
	args, stdin := args[1:], ""
	if n := len(args) - 1; n >= 0 && strings.HasPrefix(args[n], "<") {
		args, stdin = args[:n], ts.ReadFile(args[n][1:])
	}
	return run(context.Background(), args, strings.NewReader(stdin), ts.Stdout(), ts.Stderr())
}

// cmdWidth holds every line of a stream to a number of columns:
//
//	width 80 stdout
func cmdWidth(ts *testscript.TestScript, neg bool, args []string) {
	if neg || len(args) != 2 {
		ts.Fatalf("usage: width columns file")
	}
	most, err := strconv.Atoi(args[0])
	ts.Check(err)
	for _, line := range strings.Split(ts.ReadFile(args[1]), "\n") {
		if n := len([]rune(line)); n > most {
			ts.Fatalf("%d columns: %s", n, line)
		}
	}
}
