package main

import (
	"bytes"
	"context"
	"errors"
	"io"
	"os/exec"
	"path/filepath"
	"strconv"
	"strings"
	"syscall"
	"testing"

	"github.com/rogpeppe/go-internal/testscript"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// TestMain lets scripts run the program itself, as ullage.
func TestMain(m *testing.M) {
	testscript.Main(m, map[string]func(){"ullage": main})
}

// noRaceWait keeps a program built with the race detector from waiting a second
// before it ends, for the many that are run here.
const noRaceWait = "GORACE=atexit_sleep_ms=0"

func TestScripts(t *testing.T) {
	testscript.Run(t, testscript.Params{
		Dir: "testdata/script",
		Setup: func(e *testscript.Env) error {
			data, err := filepath.Abs("testdata/rocket")
			examples, err2 := filepath.Abs("../../testdata")
			e.Vars = append(e.Vars, noRaceWait, "DATA="+data, "EXAMPLES="+examples)
			return errors.Join(err, err2)
		},
		Cmds: map[string]func(*testscript.TestScript, bool, []string){"status": cmdStatus, "width": cmdWidth},
	})
}

// cmdStatus runs a program and holds its exit status to be the one given:
//
//	status 2 ullage fly nothing.toml
func cmdStatus(ts *testscript.TestScript, neg bool, args []string) {
	if neg || len(args) < 2 {
		ts.Fatalf("usage: status n program [arguments]")
	}
	want, err := strconv.Atoi(args[0])
	ts.Check(err)
	got := 0
	if err := ts.Exec(args[1], args[2:]...); err != nil {
		var exit *exec.ExitError
		if !errors.As(err, &exit) {
			ts.Fatalf("%v", err)
		}
		got = exit.ExitCode()
	}
	if got != want {
		ts.Fatalf("exit status %d, not %d", got, want)
	}
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

// result is what a run in this process came to.
type result struct {
	status   int
	out, err string
}

func runWith(ctx context.Context, stdin io.Reader, args ...string) result {
	var out, err bytes.Buffer
	status := run(ctx, args, stdin, &out, &err)
	return result{status, out.String(), err.String()}
}

func TestInterruptedWhileReading(t *testing.T) {
	ctx, cancel := context.WithCancel(context.Background())
	stdin, hold := io.Pipe() // never says anything
	defer hold.Close()
	done := make(chan result)
	go func() { done <- runWith(ctx, stdin, "fly", "-") }()
	cancel()
	got := <-done
	assert.Equal(t, statusInterrupted, got.status)
	assert.Empty(t, got.out)
	assert.Equal(t, "ullage: interrupted\n", got.err)
}

// limitedPipe is a reader's end that closes after some bytes, as head does.
type limitedPipe struct{ left int }

func (p *limitedPipe) Write(b []byte) (int, error) {
	if p.left -= len(b); p.left < 0 {
		return 0, syscall.EPIPE
	}
	return len(b), nil
}

func TestReaderThatClosesEarlyIsNoFailure(t *testing.T) {
	for _, args := range [][]string{{"--help"}, {"inputs"}, {"completion", "bash"}, {"--version"}} {
		var stderr bytes.Buffer
		got := run(context.Background(), args, strings.NewReader(""), &limitedPipe{4}, &stderr)
		assert.Equal(t, statusDone, got, args)
		assert.Empty(t, stderr.String(), args)
	}
}

// Nor does it turn a no-go into a go: the starter has no proof on record.
func TestReaderThatClosesEarlyLeavesTheVerdict(t *testing.T) {
	file := filepath.Join(t.TempDir(), "heron.toml")
	require.Equal(t, statusDone, run(context.Background(), []string{"new", file}, strings.NewReader(""), io.Discard, io.Discard))
	for _, command := range []string{"check", "card"} {
		got := run(context.Background(), []string{command, file}, strings.NewReader(""), &limitedPipe{4}, io.Discard)
		assert.Equal(t, statusCheckFailed, got, command)
	}
}

type fullDisk struct{}

func (fullDisk) Write([]byte) (int, error) { return 0, syscall.ENOSPC }

func TestFullDiskIsAFailure(t *testing.T) {
	for _, args := range [][]string{{"--help"}, {"fly", "--help"}, {"inputs"}, {"completion", "bash"}, {"--version"}} {
		var stderr bytes.Buffer
		got := run(context.Background(), args, strings.NewReader(""), fullDisk{}, &stderr)
		assert.Equal(t, statusFailed, got, args)
		assert.Contains(t, stderr.String(), "no space left on device", args)
	}
}

func TestEndlessInputIsRefused(t *testing.T) {
	got := runWith(context.Background(), endless{}, "fly", "-")
	assert.Equal(t, statusInput, got.status)
	assert.Empty(t, got.out)
	assert.Contains(t, got.err, "standard input: more than 4 MB")
}

type endless struct{}

func (endless) Read(b []byte) (int, error) {
	for i := range b {
		b[i] = '#'
	}
	return len(b), nil
}
