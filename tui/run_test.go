//go:build unix

package tui

import (
	"bytes"
	"context"
	"errors"
	"fmt"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"sync"
	"sync/atomic"
	"syscall"
	"testing"
	"time"

	tea "github.com/charmbracelet/bubbletea"
	"github.com/creack/pty"
	"github.com/stretchr/testify/require"

	"ullage/sim"
	"ullage/sim/rocket"
	"ullage/sim/rocketfile"
	"ullage/tui/recovery"
	"ullage/tui/terminal/emulated"
	"ullage/tui/view"
)

const (
	childVariable = "ULLAGE_TEST_CHILD"
	enterScreen   = "\x1b[?1049h"
	leaveScreen   = "\x1b[?1049l"

	asksBackground = "\x1b]11;?"
)

// TestMain lets the test binary be the program that a test runs in a terminal.
func TestMain(m *testing.M) {
	switch os.Getenv(childVariable) {
	case "":
		os.Exit(m.Run())
	case "quiet":
		_, _ = os.Stdout.WriteString("term=" + os.Getenv("TERM") + "\n")
	default:
		runChild(os.Getenv(childVariable))
	}
}

// runChild is the screen in a process of its own, on the rocket file in the
// working directory.
func runChild(how string) {
	f, err := rocketfile.Open("plover.toml")
	if err != nil {
		panic(err)
	}
	o := Options{File: f}
	m := New(o)
	switch how {
	case "panic in a flight":
		m.flies = func(ctx context.Context, r *rocket.Rocket, fo sim.Options) (*sim.Flight, error) {
			if r.Water.Fill > 0.315 {
				panic("a flight failed")
			}
			return sim.Fly(ctx, r, fo)
		}
	case "panic in update":
		m.views = []view.View{&failingView{View: m.views[0]}}
	}
	err = run(context.Background(), o, m)
	fmt.Printf("ended: %v\n", err)
	if errors.Is(err, context.Canceled) {
		os.Exit(130)
	}
	if err != nil {
		os.Exit(3)
	}
}

// failingView panics at an edited flight.
type failingView struct {
	view.View
	scene view.Scene
}

func (v *failingView) Show(s view.Scene) tea.Cmd {
	v.scene = s
	return v.View.Show(s)
}

func (v *failingView) Lines() []string {
	if n := v.scene.Now; n != nil && n.Flight.Rocket.Water.Fill > 0.315 {
		panic("a drawing failed")
	}
	return v.View.Lines()
}

// child is a program in a pseudo-terminal.
type child struct {
	t     *testing.T
	cmd   *exec.Cmd
	tty   *os.File
	state string // its state directory

	mu    sync.Mutex
	out   bytes.Buffer
	shows *emulated.Screen
	gone  atomic.Bool   // its window is to be closed
	ended chan struct{} // closed when there is no more output
}

// startChild starts the program in a copy of the tests' rocket folder.
func startChild(t *testing.T, how, state string) *child {
	t.Helper()
	dir := filepath.Dir(copied(t).Path())
	return startChildIn(t, how, dir, state)
}

func startChildIn(t *testing.T, how, dir, state string) *child {
	t.Helper()
	return startCommand(t, exec.Command(os.Args[0]), how, dir, state)
}

func startCommand(t *testing.T, cmd *exec.Cmd, how, dir, state string) *child {
	t.Helper()
	c := &child{t: t, state: state, shows: emulated.New(80, 24), ended: make(chan struct{})}
	c.cmd = cmd
	c.cmd.Dir = dir
	c.cmd.Env = append(os.Environ(), childVariable+"="+how, "TERM=xterm-256color", "COLORTERM=", "COLORFGBG=", "NO_COLOR=", "CI=",
		"XDG_STATE_HOME="+state)
	tty, err := pty.StartWithSize(c.cmd, &pty.Winsize{Cols: 80, Rows: 24})
	if err != nil {
		t.Skip("no pseudo-terminal here:", err)
	}
	c.tty = tty
	t.Cleanup(func() { _ = c.cmd.Process.Kill(); _ = tty.Close() })
	go func() {
		defer close(c.ended)
		buf := make([]byte, 4096)
		for {
			n, err := tty.Read(buf)
			c.mu.Lock()
			c.out.Write(buf[:n])
			c.mu.Unlock()
			_, _ = c.shows.Write(buf[:n])
			if c.gone.Load() {
				_ = tty.Close()
				return
			}
			if err != nil {
				return
			}
		}
	}()
	return c
}

// closeWindow closes the terminal, by its reader: a read that waits holds it open until there is output once
// more, which a key brings.
func (c *child) closeWindow() {
	c.gone.Store(true)
	_, _ = c.tty.WriteString("[") // unless output has come meanwhile
}

// all is everything it has written.
func (c *child) all() string {
	c.mu.Lock()
	defer c.mu.Unlock()
	return c.out.String()
}

// expect waits until it has written a text, or shows it.
func (c *child) expect(text string) {
	c.t.Helper()
	for deadline := time.Now().Add(20 * time.Second); ; time.Sleep(5 * time.Millisecond) {
		if strings.Contains(c.all(), text) || strings.Contains(c.shows.Text(), text) {
			return
		}
		if time.Now().After(deadline) {
			require.Fail(c.t, "it does not come", "%q in\n%s", text, c.shows.Text())
		}
	}
}

func (c *child) typed(text string) {
	c.t.Helper()
	_, err := c.tty.WriteString(text)
	require.NoError(c.t, err)
}

// wait waits for its end.
func (c *child) wait() error {
	c.t.Helper()
	how := make(chan error, 1)
	go func() {
		<-c.ended
		how <- c.cmd.Wait()
	}()
	select {
	case err := <-how:
		return err
	case <-time.After(20 * time.Second):
		require.Fail(c.t, "still running", "%q", c.all())
		return nil
	}
}

// record waits for a record of unsaved edits with a text in it.
func (c *child) record(text string) {
	c.t.Helper()
	require.Eventually(c.t, func() bool {
		paths, _ := filepath.Glob(filepath.Join(c.state, "ullage", "unsaved", "*.json"))
		for _, p := range paths {
			if data, err := os.ReadFile(p); err == nil && strings.Contains(string(data), text) {
				return true
			}
		}
		return false
	}, 20*time.Second, 5*time.Millisecond)
}

// records is how many there are.
func (c *child) records() int {
	paths, _ := filepath.Glob(filepath.Join(c.state, "ullage", "unsaved", "*.json"))
	return len(paths)
}

func TestStartEditSaveQuit(t *testing.T) {
	t.Parallel()
	c := startChild(t, "screen", t.TempDir())
	c.expect("Ringed Plover")
	c.expect("apogee at")
	c.typed("\x1b[C")
	c.expect("31 %")
	c.typed("\x13")
	c.expect("Saved to")
	c.typed("q")
	require.NoError(t, c.wait())
	require.Contains(t, c.all(), leaveScreen)
	require.Contains(t, c.all(), "ended: <nil>")
	f, err := rocketfile.Open(filepath.Join(c.cmd.Dir, "plover.toml"))
	require.NoError(t, err)
	require.InDelta(t, 0.31, f.Rocket().Water.Fill, 1e-12)
	require.Zero(t, c.records())
}

// The terminal is asked for its background after the screen is up, and an
// answer that comes late, in the middle of keys, is no key.
func TestLateAnswer(t *testing.T) {
	t.Parallel()
	c := startChild(t, "screen", t.TempDir())
	c.expect(enterScreen)
	c.expect(asksBackground)
	c.expect("apogee at")
	require.Less(t, strings.Index(c.all(), enterScreen), strings.Index(c.all(), asksBackground))
	c.typed("\x1b[C\x1b]11;rgb:ffff/ffff/ffff\x1b\\\x1b[C")
	c.expect("32 %")
	c.typed("q")
	c.expect("has unsaved changes")
	c.typed("d")
	require.NoError(t, c.wait())
	require.Zero(t, c.records(), "thrown away on purpose")
}

// However the program ends but by choice, the terminal is restored and unsaved
// edits are left for the next start, which offers them.
func TestEndings(t *testing.T) {
	for _, e := range []struct {
		name, how string
		end       func(c *child)
		code      int
		kept      string
	}{
		{"terminated", "screen", func(c *child) { _ = c.cmd.Process.Signal(syscall.SIGTERM) }, 130, "0.31"},
		{"interrupted", "screen", func(c *child) { _ = c.cmd.Process.Signal(os.Interrupt) }, 130, "0.31"},
		{"hung up", "screen", func(c *child) { _ = c.cmd.Process.Signal(syscall.SIGHUP) }, 130, "0.31"},
		{"interrupted by key, twice", "screen", func(c *child) { c.typed("\x03"); c.expect("has unsaved"); c.typed("\x03") }, 130, "0.31"},
		{"panic in a flight", "panic in a flight", func(c *child) { c.typed("\x1b[C") }, 3, "0.32"},
		{"panic in update", "panic in update", func(c *child) { c.typed("\x1b[C") }, 3, "0.32"},
	} {
		t.Run(e.name, func(t *testing.T) {
			t.Parallel()
			c := startChild(t, e.how, t.TempDir())
			c.expect("apogee at")
			c.typed("\x1b[C")
			c.expect("31 %")
			c.record("0.31") // it is kept from here on
			e.end(c)
			err := c.wait()
			var exit *exec.ExitError
			require.ErrorAs(t, err, &exit)
			require.Equal(t, e.code, exit.ExitCode(), "%q", c.all())
			require.Contains(t, c.all(), leaveScreen)
			if e.code == 130 {
				require.Contains(t, c.all(), "ended: unsaved edits are kept, and offered at the next start")
			}
			require.Equal(t, 1, c.records())
			c.record(e.kept)

			again := startChildIn(t, "screen", c.cmd.Dir, c.state)
			again.expect("were left behind")
			again.typed("r")
			again.expect("Restored")
			again.typed("\x13")
			again.expect("Saved to")
			again.typed("q")
			require.NoError(t, again.wait())
			require.Zero(t, again.records())
		})
	}
}

// A program that is killed has left its edits of a moment before.
func TestKilled(t *testing.T) {
	t.Parallel()
	c := startChild(t, "screen", t.TempDir())
	c.expect("apogee at")
	c.typed("\x1b[C")
	c.record("0.31")
	require.NoError(t, c.cmd.Process.Kill())
	require.Error(t, c.wait())
	k, left, err := recovery.Open(filepath.Join(c.state, "ullage", "unsaved"), filepath.Join(c.cmd.Dir, "plover.toml"))
	require.NoError(t, err)
	defer func() { require.NoError(t, k.Close()) }()
	require.NotNil(t, left)
	left.Release()
}

// A closed window: the terminal is gone, the edits are not.
func TestWindowClosed(t *testing.T) {
	t.Parallel()
	c := startChild(t, "screen", t.TempDir())
	c.expect("apogee at")
	c.typed("\x1b[C")
	c.expect("31 %")
	c.closeWindow()
	require.Error(t, c.wait())
	require.Equal(t, 1, c.records())
}

func TestNoTerminal(t *testing.T) {
	out, err := os.CreateTemp(t.TempDir(), "out")
	require.NoError(t, err)
	defer func() { require.NoError(t, out.Close()) }()
	err = Run(context.Background(), Options{File: plover(t), Input: strings.NewReader(""), Output: out})
	require.ErrorIs(t, err, errNoTerminal)
}

// A program that links the screen asks the terminal nothing while it loads,
// and leaves its environment as it was.
func TestLoadingAsksTheTerminalNothing(t *testing.T) {
	t.Parallel()
	_ = tea.Quit // linked
	c := startChild(t, "quiet", t.TempDir())
	require.NoError(t, c.wait())
	require.Equal(t, "term=xterm-256color\r\n", c.all())
}
