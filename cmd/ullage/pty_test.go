//go:build linux || darwin

package main

import (
	"encoding/json"
	"fmt"
	"io"
	"os"
	"os/exec"
	"os/signal"
	"path/filepath"
	"regexp"
	"strings"
	"sync"
	"syscall"
	"testing"
	"time"

	"github.com/creack/pty"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"ullage/sim/quantity"
	"ullage/tui/terminal/emulated"
)

// patience is how long to wait for what must come; only a failure takes it.
const patience = 30 * time.Second

// terminal is a program running on a terminal that answers no question.
type terminal struct {
	t       *testing.T
	command *exec.Cmd
	keys    *os.File

	mu    sync.Mutex
	shown strings.Builder
	now   *emulated.Screen
	done  chan struct{}
}

// onTerminal starts the program itself in a directory.
func onTerminal(t *testing.T, dir string, args ...string) *terminal {
	return onTerminalCalled(t, "xterm-256color", dir, args...)
}

// onTerminalCalled is onTerminal on one with a name.
func onTerminalCalled(t *testing.T, name, dir string, args ...string) *terminal {
	c := exec.Command("ullage", args...)
	c.Dir = dir
	c.Env = append(os.Environ(), noRaceWait, "TERM="+name, "NO_COLOR=", "XDG_STATE_HOME="+filepath.Join(dir, "state"))
	f, err := pty.StartWithSize(c, &pty.Winsize{Rows: 40, Cols: 120})
	require.NoError(t, err)
	term := &terminal{t: t, command: c, keys: f, now: emulated.New(120, 40), done: make(chan struct{})}
	go func() {
		defer close(term.done)
		buf := make([]byte, 1<<16)
		for {
			n, err := f.Read(buf) // fails when the program has gone
			term.mu.Lock()
			term.shown.Write(buf[:n])
			term.mu.Unlock()
			_, _ = term.now.Write(buf[:n])
			if err != nil {
				return
			}
		}
	}()
	t.Cleanup(func() {
		_ = c.Process.Kill()
		_ = f.Close()
	})
	return term
}

// output is all that came so far.
func (term *terminal) output() string {
	term.mu.Lock()
	defer term.mu.Unlock()
	return term.shown.String()
}

// escape is a control sequence of the terminal: CSI, OSC or a short one.
var escape = regexp.MustCompile("\x1b(\\[[0-9;?]*[ -/]*[@-~]|\\][^\x07\x1b]*(\x07|\x1b\\\\)|[^\\[\\]])")

// waitFor waits for a text, shown or after a mark in the output, and gives the mark behind it.
func (term *terminal) waitFor(after int, text string) int {
	term.t.Helper()
	for deadline := time.Now().Add(patience); ; time.Sleep(5 * time.Millisecond) {
		out := term.output()
		if strings.Contains(escape.ReplaceAllString(out[after:], ""), text) || strings.Contains(term.now.Text(), text) {
			return len(out)
		}
		if time.Now().After(deadline) {
			term.t.Fatalf("%q does not come; the terminal has\n%s", text, escape.ReplaceAllString(out[after:], ""))
		}
	}
}

func (term *terminal) press(keys string) {
	_, err := io.WriteString(term.keys, keys)
	require.NoError(term.t, err)
}

// status waits for the end of the program.
func (term *terminal) status() int {
	term.t.Helper()
	ended := make(chan error, 1)
	go func() { ended <- term.command.Wait() }()
	select {
	case <-ended:
		<-term.done
		return term.command.ProcessState.ExitCode()
	case <-time.After(patience):
		term.t.Fatalf("it does not end; the terminal has %q", term.output())
		return -1
	}
}

// waitTillAsleep waits until the program does nothing any more, of which there is nothing to
// see on the terminal; where the system does not tell, for a while.
func (term *terminal) waitTillAsleep() {
	asleep := regexp.MustCompile(`(?m)^State:\s+S`)
	for idle, deadline := 0, time.Now().Add(patience); idle < 10 && time.Now().Before(deadline); idle++ {
		time.Sleep(20 * time.Millisecond)
		threads, _ := filepath.Glob(fmt.Sprintf("/proc/%d/task/*/status", term.command.Process.Pid))
		if len(threads) == 0 {
			time.Sleep(time.Second)
			return
		}
		for _, path := range threads {
			if status, err := os.ReadFile(path); err == nil && !asleep.Match(status) {
				idle = -1
			}
		}
	}
}

// newRocket writes the starter to heron.toml in a directory of its own.
func newRocket(t *testing.T) string {
	dir := t.TempDir()
	c := exec.Command("ullage", "new", "heron.toml")
	c.Dir = dir
	require.NoError(t, c.Run())
	return dir
}

// A command on a terminal asks it nothing: no control sequence leaves it, and it
// ends though no answer ever comes.
func TestCommandsAskTheTerminalNothing(t *testing.T) {
	dir := newRocket(t)
	for _, args := range [][]string{
		{"--help"}, {"--version"}, {"fly", "--help"}, {"fly", "heron.toml"}, {"fly", "heron.toml", "--json"},
		{"inputs", "heron.toml"}, {"completion", "bash"}, {"new", "other.toml"}, {completeCommand, "fl"},
	} {
		term := onTerminal(t, dir, args...)
		assert.Equal(t, statusDone, term.status(), args)
		assert.NotContains(t, term.output(), "\x1b", args)
		assert.NotEmpty(t, term.output(), args)
	}
	term := onTerminal(t, dir, "fly", "none.toml")
	assert.Equal(t, statusInput, term.status())
	assert.NotContains(t, term.output(), "\x1b")
}

// A terminal that says it cannot move its cursor gets no screen, and is told what it can have.
func TestNoScreenOnADumbTerminal(t *testing.T) {
	term := onTerminalCalled(t, "dumb", newRocket(t), "heron.toml")
	assert.Equal(t, statusInput, term.status())
	assert.Contains(t, term.output(), "TERM=dumb")
	assert.NotContains(t, term.output(), "\x1b")
}

// An interrupted command keeps what it has written and says that it was
// interrupted. At this spacing it would write for minutes.
func TestInterruptEndsACommand(t *testing.T) {
	term := onTerminal(t, newRocket(t), "fly", "heron.toml", "--csv", "--every", "0.001ms")
	term.waitFor(0, "time_s,")
	term.press("\x03")
	assert.Equal(t, statusInterrupted, term.status())
	assert.Contains(t, term.output(), "ullage: interrupted")
}

// However it is told to end, it keeps what there is by then and says so, and leaves nothing
// unfinished beside it.
func TestInterruptKeepsTheFile(t *testing.T) {
	// Under nohup what a test starts would be deaf to hanging up too; what is listened to here it has by default.
	signal.Notify(make(chan os.Signal, 1), syscall.SIGHUP)
	defer signal.Reset(syscall.SIGHUP)
	for name, end := range map[string]func(*terminal){
		"key":       func(term *terminal) { term.press("\x03") },
		"terminate": func(term *terminal) { _ = term.command.Process.Signal(syscall.SIGTERM) },
		"hang up":   func(term *terminal) { _ = term.command.Process.Signal(syscall.SIGHUP) },
	} {
		dir := newRocket(t)
		term := onTerminal(t, dir, "fly", "heron.toml", "--csv", "--every", "0.001ms", "-o", "heron.csv")
		parts := func() []string {
			names, err := filepath.Glob(filepath.Join(dir, ".heron.csv.*"))
			require.NoError(t, err)
			return names
		}
		for deadline := time.Now().Add(patience); len(parts()) == 0; time.Sleep(time.Millisecond) {
			require.True(t, time.Now().Before(deadline), "it begins to write")
		}
		end(term)
		assert.Equal(t, statusInterrupted, term.status(), name)
		assert.Contains(t, term.output(), "heron.csv is partial", name)
		assert.Empty(t, parts(), name)
		text, err := os.ReadFile(filepath.Join(dir, "heron.csv"))
		require.NoError(t, err)
		assert.True(t, strings.HasPrefix(string(text), "time_s,"), name)
	}
}

// What nohup starts does not end when its terminal hangs up.
func TestHangUpThatIsIgnored(t *testing.T) {
	dir := newRocket(t)
	c := exec.Command("sh", "-c", `trap "" HUP; exec ullage fly heron.toml --csv --every 0.001ms -o heron.csv`)
	c.Dir = dir
	require.NoError(t, c.Start())
	t.Cleanup(func() { _ = c.Process.Kill(); _ = c.Wait() })
	begun := func() bool {
		names, _ := filepath.Glob(filepath.Join(dir, ".heron.csv.*"))
		return len(names) > 0
	}
	require.Eventually(t, begun, patience, time.Millisecond)
	require.NoError(t, c.Process.Signal(syscall.SIGHUP))
	time.Sleep(100 * time.Millisecond)
	assert.NoFileExists(t, filepath.Join(dir, "heron.csv"), "it goes on")
	assert.True(t, begun())
}

// A pipe that nobody writes to, or reads from, is left at the first interrupt.
func TestInterruptEndsTheWaitForAPipe(t *testing.T) {
	for _, args := range [][]string{{"fly", "pipe"}, {"pipe"}, {"check", "pipe"}, {"day", "heron.toml", "--forecast", "pipe"}, {"compare", "heron.toml", "pipe"},
		{"stand", "heron.toml", "pipe"}, {"fly", "heron.toml", "-o", "pipe"}} {
		dir := newRocket(t)
		require.NoError(t, syscall.Mkfifo(filepath.Join(dir, "pipe"), 0o600))
		term := onTerminal(t, dir, args...)
		term.waitTillAsleep()
		term.press("\x03")
		assert.Equal(t, statusInterrupted, term.status(), args)
		assert.Contains(t, term.output(), "ullage: interrupted", args)
	}
}

// From the first key to the last: start, edit, save, quit; then the command flies
// the saved file to the height the screen showed.
func TestStartEditSaveQuit(t *testing.T) {
	dir := newRocket(t)
	before, err := os.ReadFile(filepath.Join(dir, "heron.toml"))
	require.NoError(t, err)

	term := onTerminal(t, dir, "heron.toml")
	at := term.waitFor(0, "apogee")
	term.press("22\r") // the fill, which is chosen at the start
	top := apogee(t, dir, "--set", "water.fill=0.22")
	at = term.waitFor(at, quantity.Format(top, metre(t), 3)+" at ")
	term.press("\x13")
	term.waitFor(at, "Saved to heron.toml")
	term.press("q")
	assert.Equal(t, statusDone, term.status())

	after, err := os.ReadFile(filepath.Join(dir, "heron.toml"))
	require.NoError(t, err)
	fill := regexp.MustCompile(`(?m)^fill( +)= 0\.30`)
	require.Regexp(t, fill, string(before))
	assert.Equal(t, fill.ReplaceAllString(string(before), "fill$1= 0.22"), string(after), "one number, nothing else")
	assert.Equal(t, top, apogee(t, dir))
}

// A signal to end the program leaves the terminal as it was.
func TestTerminatedScreenRestoresTheTerminal(t *testing.T) {
	dir := newRocket(t)
	term := onTerminal(t, dir, "heron.toml")
	term.waitFor(0, "apogee")
	require.Contains(t, term.output(), "\x1b[?1049h", "the alternate screen is entered")
	require.NoError(t, term.command.Process.Signal(syscall.SIGTERM))
	term.status()
	assert.Contains(t, term.output(), "\x1b[?1049l", "and left")
	assert.Contains(t, term.output(), "\x1b[?25h", "the cursor is back")
}

func metre(t *testing.T) quantity.Unit {
	u, ok := quantity.Lookup("m")
	require.True(t, ok)
	return u
}

// apogee flies heron.toml by the command and gives the height of the top, m.
func apogee(t *testing.T, dir string, options ...string) float64 {
	c := exec.Command("ullage", append([]string{"fly", "heron.toml", "--json"}, options...)...)
	c.Dir = dir
	out, err := c.Output()
	require.NoError(t, err)
	var flown struct {
		Apogee struct {
			Height float64 `json:"height_m"`
		} `json:"apogee"`
	}
	require.NoError(t, json.Unmarshal(out, &flown))
	return flown.Apogee.Height
}
