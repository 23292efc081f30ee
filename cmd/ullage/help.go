package main

import (
	"fmt"
	"io"
	"runtime"
	"runtime/debug"
	"strings"

	"github.com/alecthomas/kong"

	"ullage/sim/report/page"
)

// overview is the head of `ullage --help`.
const overview = `ullage computes the flight of a rocket that pressurised water or a solid motor
drives, from one file that describes it, and shows it on a live screen or as a
report.

Usage:
  ullage [FILE] [options]       the screen, on FILE or on a rocket built in
  ullage COMMAND … [options]    one of the commands below

Examples:
  ullage                        look around: the screen on the rocket built in
  ullage new heron.toml         write that rocket to a file of your own
  ullage heron.toml             change its numbers on the screen, save them
  ullage fly heron.toml         one flight as a short report
  ullage fly heron.toml --set water.fill=0.33 --json
  ullage best heron.toml water.fill
                                the fill that flies highest
  ullage sweep heron.toml water.throat=11mm,13mm,15mm
                                throats side by side
  ullage plot heron.toml -o flight.svg
                                a page to print
  ullage inputs heron.toml      what can be set, with units and ranges
`

// printHelp writes the overview of the program, or the page of one command.
func printHelp(_ kong.HelpOptions, ctx *kong.Context) error {
	w := &watched{w: ctx.Stdout}
	if n := ctx.Selected(); n != nil && n != ctx.Model.DefaultCmd {
		printPage(w, n)
		return w.err
	}
	fmt.Fprint(w, overview)
	section(w, "Commands", func() {
		eachCommand(func(name, help string) { entry(w, name, help) })
	})
	section(w, "Options", func() { printFlags(w, ctx.Model.Flags) })
	section(w, "Options of the screen", func() { printFlags(w, ctx.Model.DefaultCmd.Flags) })
	fmt.Fprintf(w, "\nullage COMMAND --help tells more of a command.\n")
	fmt.Fprintln(w, wrap("Exit status: "+statusHelp+".", 0))
	return w.err
}

// printPage writes the help of one command.
func printPage(w io.Writer, c *kong.Node) {
	usage := "ullage " + c.Name
	for _, a := range c.Positional {
		name := argumentName(a)
		if a.Tag.Optional {
			name = "[" + name + "]"
		}
		if a.IsCumulative() {
			name += "…"
		}
		usage += " " + name
	}
	fmt.Fprintf(w, "%s\n\nUsage:\n  %s [options]\n\n", c.Help, usage)
	text, examples, _ := strings.Cut(c.Detail, "\n\n")
	fmt.Fprintln(w, wrap(text, 0))
	section(w, "Examples", func() { fmt.Fprintln(w, "  "+strings.ReplaceAll(examples, "\n", "\n  ")) })
	section(w, "Arguments", func() {
		for _, a := range c.Positional {
			entry(w, argumentName(a), a.Help)
		}
	})
	section(w, "Options", func() {
		printFlags(w, c.Flags)
		printFlags(w, c.Parent.Flags)
	})
}

// section writes a heading and what follows it.
func section(w io.Writer, heading string, body func()) {
	fmt.Fprintf(w, "\n%s:\n", heading)
	body()
}

func argumentName(a *kong.Positional) string { return strings.ToUpper(a.Name) }

// printFlags writes the entries of options.
func printFlags(w io.Writer, flags []*kong.Flag) {
	for _, f := range flags {
		if f.Hidden {
			continue
		}
		name := "--" + f.Name
		if f.Short != 0 {
			name = "-" + string(f.Short) + ", " + name
		}
		if !f.IsBool() {
			name += "=" + f.FormatPlaceHolder()
		}
		entry(w, name, f.Help)
	}
}

// Columns of help: entries are told of from textColumn on.
const (
	helpWidth  = 80
	textColumn = 26
)

// entry writes a name and, beside or below it, what it is.
func entry(w io.Writer, name, text string) {
	told := wrap(text, textColumn)
	if len(name) > textColumn-4 {
		fmt.Fprintf(w, "  %s\n%*s%s\n", name, textColumn, "", told)
		return
	}
	fmt.Fprintf(w, "  %-*s%s\n", textColumn-2, name, told)
}

// wrap breaks text into lines that start at a column, all but the first
// indented to it.
func wrap(text string, column int) string {
	return strings.Join(page.Wrap(text, helpWidth-column), "\n"+strings.Repeat(" ", column))
}

// helpText is a command's help as printPage takes it: a paragraph, then examples.
func helpText(text string, examples ...string) string {
	return text + "\n\n" + strings.Join(examples, "\n")
}

// printVersion writes the version and what it was built from.
func printVersion(s *streams) error {
	version, from, changed := "devel", "", ""
	compiled := runtime.Version()
	if info, ok := debug.ReadBuildInfo(); ok {
		if v := info.Main.Version; v != "" && v != "(devel)" {
			version = v
		}
		for _, setting := range info.Settings {
			switch setting.Key {
			case "vcs.revision":
				from += " from " + setting.Value
			case "vcs.time":
				day, _, _ := strings.Cut(setting.Value, "T")
				from += " of " + day
			case "vcs.modified":
				if setting.Value == "true" {
					changed = ", with changes that are in no commit"
				}
			}
		}
	}
	_, err := fmt.Fprintf(s.out, "ullage %s\nbuilt%s by %s for %s/%s%s\n", version, from, compiled, runtime.GOOS, runtime.GOARCH, changed)
	return err
}

// watched remembers the first error of a writer whose users do not look.
type watched struct {
	w   io.Writer
	err error
}

func (w *watched) Write(b []byte) (int, error) {
	if w.err != nil {
		return 0, w.err
	}
	n, err := w.w.Write(b)
	w.err = err
	return n, err
}
