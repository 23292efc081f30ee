//go:build unix

package tui

import (
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"syscall"
	"testing"
	"time"

	"github.com/creack/pty"
	"github.com/stretchr/testify/require"
)

// drawnAnew is what begins a screen that is drawn in full.
const drawnAnew = "\x1b[H\x1b[J"

// Where there is no shell that minds its jobs the key stops nothing, and says so; the
// screen goes on.
func TestSuspendWithoutAShell(t *testing.T) {
	t.Parallel()
	c := startChild(t, "screen", t.TempDir())
	c.expect("apogee at")
	c.typed("\x1b[C")
	c.expect("31 %")
	c.typed("\x1a")
	c.expect("There is no shell here")
	c.record("0.31") // kept before, as if it had been stopped
	c.typed("\x1b[C")
	c.expect("32 %")
	c.typed("\x03\x03")
	require.Error(t, c.wait(), "interrupted")
}

// A shell that does gets the terminal back as it was, and the screen is there again when it
// lets the program go on.
func TestSuspendToTheShell(t *testing.T) {
	t.Parallel()
	script := `set -m; "$0"; echo "now the shell"; stty -a | grep -o ' echo '; read word; fg; echo over`
	c := startCommand(t, exec.Command("sh", "-c", script, os.Args[0]), "screen", filepath.Dir(copied(t).Path()), t.TempDir())
	c.expect("apogee at")
	c.typed("\x1b[C")
	c.expect("31 %")
	c.typed("\x1a")
	c.expect("now the shell")
	c.expect(" echo ") // the terminal shows what is typed
	require.Contains(t, c.all(), leaveScreen)
	before := strings.Count(c.all(), drawnAnew)
	c.typed("on\n")
	require.Eventually(t, func() bool { return strings.Count(c.all(), drawnAnew) > before }, 10*time.Second, time.Millisecond)
	c.typed("\x1b[C")
	c.expect("32 %")
	c.typed("\x03\x03")
	c.expect("over")
	require.NoError(t, c.wait())
}

// Stopped and let go on from outside, it takes the terminal again and draws everything.
func TestStoppedFromOutside(t *testing.T) {
	t.Parallel()
	c := startChild(t, "screen", t.TempDir())
	c.expect("apogee at")
	require.NoError(t, c.cmd.Process.Signal(syscall.SIGSTOP))
	// Its window is another and the same again meanwhile.
	require.NoError(t, pty.Setsize(c.tty, &pty.Winsize{Cols: 100, Rows: 30}))
	require.NoError(t, pty.Setsize(c.tty, &pty.Winsize{Cols: 80, Rows: 24}))
	_, err := c.shows.Write([]byte("\x1b[H\x1b[Jsome other program"))
	require.NoError(t, err)
	before := strings.Count(c.all(), drawnAnew)
	require.NoError(t, c.cmd.Process.Signal(syscall.SIGCONT))
	require.Eventually(t, func() bool { return strings.Count(c.all(), drawnAnew) > before }, 10*time.Second, time.Millisecond)
	c.expect("Ringed Plover")
	require.NotContains(t, c.shows.Text(), "some other program")

	_, err = c.shows.Write([]byte("\x1b[H\x1b[Jwhat a terminal makes of a window that changes"))
	require.NoError(t, err)
	before = strings.Count(c.all(), drawnAnew)
	require.NoError(t, pty.Setsize(c.tty, &pty.Winsize{Cols: 100, Rows: 30}))
	require.NoError(t, pty.Setsize(c.tty, &pty.Winsize{Cols: 80, Rows: 24}))
	require.Eventually(t, func() bool { return strings.Count(c.all(), drawnAnew) > before }, 10*time.Second, time.Millisecond)
	c.expect("Ringed Plover")
	c.typed("q")
	require.NoError(t, c.wait())
}

// Keys split over two reads are keys, and an escape that nothing follows is the key.
func TestKeysThatComeInParts(t *testing.T) {
	t.Parallel()
	var c *child
	for inTime := false; !inTime; { // again with another where the test itself could not run
		c = startChild(t, "screen", t.TempDir())
		c.expect("apogee at")
		c.typed("w") // the view of fills
		c.expect("▸w fill")
		inTime = true
		for range 3 {
			// A program that could not run when the rest came, as on a busy machine, has waited
			// no longer than one that could.
			start := time.Now()
			c.typed("\x1b")
			time.Sleep(5 * time.Millisecond)
			require.NoError(t, c.cmd.Process.Signal(syscall.SIGSTOP))
			inTime = inTime && time.Since(start) < 40*time.Millisecond // of the 70 that a sequence may take
			c.typed("[C")
			time.Sleep(100 * time.Millisecond)
			require.NoError(t, c.cmd.Process.Signal(syscall.SIGCONT))
		}
	}
	c.expect("33 %")
	c.typed("\x1b")
	c.expect("▸esc flight")
	c.typed("\x1b[200~2") // a paste without an end
	c.expect("take what was typed")
	c.typed("5\r")
	c.expect("25 %")
	c.typed("\x03\x03")
	require.Error(t, c.wait(), "interrupted")
}
