// Command ullage computes and shows the flight of a rocket driven by
// pressurised water or by a solid motor.
package main

import (
	"context"
	"io"
	"os"
	"os/signal"
	"syscall"
)

// main hands the process's own streams to run.
//
// Nothing here or in a command's path may ask the terminal anything. Bubble Tea
// v1 would, while the program loads; ullage/tui/quiet, which is initialised
// before it, keeps it from that, and pty_test.go holds it to be so. The screen
// that wants to know the terminal's background has to ask for itself.
func main() {
	ends := []os.Signal{os.Interrupt, syscall.SIGTERM}
	if !signal.Ignored(syscall.SIGHUP) { // as nohup has it
		ends = append(ends, syscall.SIGHUP)
	}
	ctx, stop := signal.NotifyContext(context.Background(), ends...)
	context.AfterFunc(ctx, stop) // a second one ends the program at once
	// A reader that closes early, such as head, shows as a write error, which
	// status knows, not as a signal.
	signal.Ignore(syscall.SIGPIPE)
	os.Exit(run(ctx, os.Args[1:], os.Stdin, os.Stdout, os.Stderr))
}

// streams are what a command reads from and writes to, and when to stop.
type streams struct {
	ctx      context.Context
	in       io.Reader
	out, err io.Writer

	inputs []string // files read so far, which no output may replace
}

// run is the whole program: it takes the arguments after the program's name and
// gives the exit status.
func run(ctx context.Context, args []string, stdin io.Reader, stdout, stderr io.Writer) int {
	s := &streams{ctx: ctx, in: stdin, out: stdout, err: escaping{stderr}}
	if len(args) > 0 && args[0] == completeCommand {
		complete(s, args[1:])
		return statusDone
	}
	return finish(s, execute(s, args))
}
