package main

import (
	"errors"
	"io/fs"
	"maps"
	"os"
	"reflect"
	"slices"
	"strings"

	"github.com/alecthomas/kong"
)

// commands is the command line: one field a command, each in a file of its own.
// The screen is what runs when no command is named.
type commands struct {
	Screen     screenCommand     `cmd:"" default:"withargs" hidden:""`
	Fly        flyCommand        `cmd:"" help:"Fly once and report: text, JSON or samples as CSV."`
	Airframe   airframeCommand   `cmd:"" help:"Balance, stability and alignment of the airframe on each of its drives."`
	Check      checkCommand      `cmd:"" help:"Go or no-go: every limit in calm air, in wind and in the worst corner."`
	Proof      proofCommand      `cmd:"" help:"The pressure chamber: strength, water proof, stored energy, loads."`
	Bench      benchCommand      `cmd:"" help:"Seals, holes to drill, alignment, settings of the electronics, filling."`
	Patterns   patternsCommand   `cmd:"" help:"True-scale drawings to cut, drill and turn by, as SVG and PDF."`
	Layup      layupCommand      `cmd:"" help:"How the chamber is laid up: what to cut, mix and look at; weigh-in."`
	Card       cardCommand       `cmd:"" help:"One page for the field: weigh in, set, checks, wind, order of the day."`
	Checklist  checklistCommand  `cmd:"" help:"Lists to tick off, from laying up to recovery, and who stands where."`
	Sweep      sweepCommand      `cmd:"" help:"Fly over one or two inputs: a table, JSON or CSV."`
	Best       bestCommand       `cmd:"" help:"Find the values of inputs for the highest apogee, or for what else is wanted."`
	Size       sizeCommand       `cmd:"" help:"Find values that pass every check on all drives, in all winds and corners."`
	Day        dayCommand        `cmd:"" help:"Plan a day at the field: drives and winds that pass, hour by hour of a forecast."`
	Map        mapCommand        `cmd:"" help:"Where it may come down, as a map: GeoJSON, KML, SVG, PNG or PDF."`
	Scatter    scatterCommand    `cmd:"" help:"Fly with what is uncertain drawn at random."`
	Motors     motorsCommand     `cmd:"" help:"Set motors side by side in the rocket."`
	Opening    openingCommand    `cmd:"" help:"Tell when a canopy should open, and what if it does not."`
	Plot       plotCommand       `cmd:"" help:"Draw a flight, a sweep or a scatter on a page, as SVG or PNG."`
	Compare    compareCommand    `cmd:"" help:"Hold recorders' logs against the predicted flight."`
	Fit        fitCommand        `cmd:"" help:"Find the inputs with which the rocket flies as logs say."`
	Stand      standCommand      `cmd:"" help:"Read a static test on a thrust stand."`
	Record     recordCommand     `cmd:"" help:"Add an entry to the logbook: proof, test, flight or abort."`
	Logbook    logbookCommand    `cmd:"" help:"Show the logbook: entries, cycles since the proof, what is due."`
	New        newCommand        `cmd:"" help:"Write a rocket to start from, and its thrust curve."`
	Inputs     inputsCommand     `cmd:"" help:"List the inputs of a rocket by the names that --set takes."`
	Results    resultsCommand    `cmd:"" help:"List the results of a flight by the names that --show takes."`
	Completion completionCommand `cmd:"" help:"Print a shell's completion script."`
	Notices    noticesCommand    `cmd:"" help:"The licences of the program and of what is inside."`

	Version bool `help:"Print the version."`
}

// teller is a command whose tags have words in them that are worked out: ${draws}. The parser puts
// every one of them into every tag there is, so that it is given those of its own grammar alone.
type teller interface{ words() kong.Vars }

// newParser builds the parser of the command line.
func newParser(s *streams, grammar any, exit func(int)) (*kong.Kong, error) {
	words := kong.Vars{}
	all := reflect.ValueOf(grammar).Elem()
	for i := range all.NumField() {
		if c, ok := all.Field(i).Interface().(teller); ok {
			maps.Copy(words, c.words())
		}
	}
	parser, err := kong.New(grammar,
		kong.Name("ullage"),
		kong.Writers(s.out, s.err),
		kong.Exit(exit),
		kong.Help(printHelp),
		words,
	)
	if err == nil {
		parser.Model.HelpFlag.Help = "Show how it is used."
	}
	return parser, err
}

// grammarOf is what commands has of the command that the arguments name, or of the screen:
// to build the rest takes longer than a flight. It is all of it when options come first,
// which may be about any command, unless they are alone and ask for the version or for help.
func grammarOf(args []string) any {
	if len(args) > 0 && strings.HasPrefix(args[0], "-") && (len(args) > 1 || !slices.Contains([]string{"--version", "--help", "-h"}, args[0])) {
		return new(commands)
	}
	all := reflect.TypeFor[commands]()
	var named, rest []reflect.StructField
	for i := range all.NumField() {
		f := all.Field(i)
		_, isCommand := f.Tag.Lookup("cmd")
		switch {
		case !isCommand:
			rest = append(rest, f)
		case named == nil, len(args) > 0 && strings.ToLower(f.Name) == args[0]: // the screen is first
			named = []reflect.StructField{f}
		}
	}
	return reflect.New(reflect.StructOf(append(named, rest...))).Interface()
}

// eachCommand goes over the commands that help and completion list, whatever the parser has of them.
func eachCommand(each func(name, help string)) {
	all := reflect.TypeFor[commands]()
	for i := range all.NumField() {
		f := all.Field(i)
		_, isCommand := f.Tag.Lookup("cmd")
		if _, hidden := f.Tag.Lookup("hidden"); isCommand && !hidden {
			each(strings.ToLower(f.Name), f.Tag.Get("help"))
		}
	}
}

// execute parses the arguments and runs the command they name.
func execute(s *streams, args []string) error {
	if err := refused(args); err != nil {
		return err
	}
	grammar := grammarOf(args)
	helped := false
	out := &watched{w: s.out}
	parser, err := newParser(&streams{ctx: s.ctx, in: s.in, out: out, err: s.err}, grammar, func(int) { helped = true })
	if err != nil {
		return err
	}
	parsed, err := parser.Parse(args)
	switch {
	case helped, out.err != nil:
		return out.err
	case err != nil:
		return usageError(parser, args, err)
	case reflect.ValueOf(grammar).Elem().FieldByName("Version").Bool():
		return printVersion(s)
	}
	return parsed.Run(s)
}

// noSuchCommand is for a first word that is neither a command nor a file.
func noSuchCommand(word string) error {
	return badInput("%q is neither a command nor a file\nullage --help lists the commands; "+
		"ullage new %s.toml writes a rocket to start from", word, word)
}

func isCommand(parser *kong.Kong, word string) bool {
	for _, c := range parser.Model.Children {
		if c.Name == word {
			return true
		}
	}
	return false
}

// missing tells whether there is no file of this name.
func missing(name string) bool {
	_, err := os.Stat(name)
	return errors.Is(err, fs.ErrNotExist)
}
