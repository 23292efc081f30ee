package main

import (
	"fmt"
	"io"
	"strings"

	"github.com/alecthomas/kong"

	"ullage/cmd/ullage/chart"
	"ullage/sim/results"
	"ullage/sim/rocket"
	"ullage/sim/rocketfile"
)

// completeCommand is how the completion scripts call the program: with the words
// typed so far, the last of them unfinished.
const completeCommand = "__complete"

// completeFiles asks the shell for the names of files.
const completeFiles = ":files"

// candidate is one way to go on, and what it means.
type candidate struct{ word, meaning string }

// complete prints the ways to finish the last word, one a line, a tab before
// what each means.
func complete(s *streams, words []string) {
	if len(words) == 0 {
		words = []string{""}
	}
	before, last := words[:len(words)-1], words[len(words)-1]
	parser, err := newParser(&streams{ctx: s.ctx, in: s.in, out: io.Discard, err: io.Discard}, grammarOf(before), func(int) {})
	if err != nil {
		return
	}
	for _, c := range candidates(parser.Model, before, last) {
		switch {
		case c.word == completeFiles:
			fmt.Fprintln(s.out, c.word)
		case strings.HasPrefix(c.word, last):
			fmt.Fprintf(s.out, "%s\t%s\n", c.word, c.meaning)
		}
	}
}

// candidates lists what may stand where last is, whether or not it begins so.
func candidates(app *kong.Application, before []string, last string) []candidate {
	command := app.DefaultCmd
	named := false
	if len(before) > 0 {
		for _, c := range app.Children {
			if c.Name == before[0] && !c.Hidden {
				command, named, before = c, true, before[1:]
				break
			}
		}
	}
	flags := append(append([]*kong.Flag(nil), command.Flags...), app.Flags...)

	if len(before) > 0 {
		if f := flagNamed(flags, before[len(before)-1]); f != nil && !f.IsBool() {
			return flagValues(f, before, "", last)
		}
	}
	if strings.HasPrefix(last, "-") {
		if name, value, ok := strings.Cut(last, "="); ok {
			if f := flagNamed(flags, name); f != nil {
				return flagValues(f, before, name+"=", value)
			}
			return nil
		}
		var out []candidate
		for _, f := range flags {
			if f.Hidden {
				continue
			}
			out = append(out, candidate{"--" + f.Name, f.Help})
		}
		return out
	}

	var out []candidate
	if !named && len(before) == 0 {
		eachCommand(func(name, help string) { out = append(out, candidate{name, help}) })
	}
	return append(out, positionalValues(command, positionals(flags, before), last)...)
}

// flagNamed finds a flag by the word that names it; nil if it does not.
func flagNamed(flags []*kong.Flag, word string) *kong.Flag {
	for _, f := range flags {
		if word == "--"+f.Name || f.Short != 0 && word == "-"+string(f.Short) {
			return f
		}
	}
	return nil
}

// positionals are the words that are neither flags nor their values.
func positionals(flags []*kong.Flag, words []string) []string {
	var out []string
	for i := 0; i < len(words); i++ {
		w := words[i]
		switch f := flagNamed(flags, w); {
		case f != nil && !f.IsBool():
			i++
		case w == "-" || !strings.HasPrefix(w, "-"):
			out = append(out, w)
		}
	}
	return out
}

// positionalValues are the ways to fill a command's next argument, after those that
// stand before it: one of its words, an input's name, else a file. The last argument
// may take any number of them.
func positionalValues(command *kong.Node, before []string, last string) []candidate {
	n := len(before)
	if most := len(command.Positional) - 1; n > most {
		if most < 0 || !command.Positional[most].IsCumulative() {
			return nil
		}
		n = most
	}
	arg := command.Positional[n]
	switch {
	case arg.Enum != "":
		return plain(arg.EnumSlice(), "")
	case strings.HasPrefix(arg.Tag.PlaceHolder, "NAME"):
		return names(before, last, strings.TrimPrefix(arg.Tag.PlaceHolder, "NAME"))
	}
	return []candidate{{completeFiles, ""}}
}

// names are the inputs that a study can go over, each with what follows its name, or
// once a name is there the words to choose from.
func names(before []string, text, after string) []candidate {
	var out []candidate
	for _, c := range settings(before, "", text) {
		if !strings.Contains(text, "=") {
			c.word = strings.TrimSuffix(c.word, "=") + after
		}
		out = append(out, c)
	}
	return out
}

// flagValues are the ways to finish a flag's value; prefix is what stands before
// the value in the same word.
func flagValues(f *kong.Flag, before []string, prefix, value string) []candidate {
	switch {
	case f.Enum != "":
		return plain(f.EnumSlice(), prefix)
	case strings.HasPrefix(f.PlaceHolder, "NAME="):
		return settings(before, prefix, value)
	case f.PlaceHolder == "RESULT":
		return shown(before, prefix, value)
	case strings.HasPrefix(f.PlaceHolder, "RESULT=") && !strings.Contains(value, "="):
		out := shown(before, prefix, value)
		for i := range out {
			out[i].word += "="
		}
		return out
	case f.PlaceHolder == "SERIES":
		listed := prefix + value[:strings.LastIndexByte(value, ',')+1]
		return append(plain(chart.QuantityNames(), listed), shown(before, prefix, value)...)
	case f.Name == "every":
		return plain([]string{"1ms", "10ms", "100ms", "1s"}, prefix)
	case f.PlaceHolder == "FILE", f.PlaceHolder == "DIR":
		return []candidate{{completeFiles, ""}}
	}
	return nil
}

// named is the rocket on the command line, else the one built in.
func named(before []string) *rocket.Rocket {
	for _, w := range before {
		if f, err := rocketfile.Open(w); err == nil && !strings.HasPrefix(w, "-") {
			return f.Rocket()
		}
	}
	return rocketfile.Starter().Rocket()
}

// shown are the results of the rocket on the command line, behind those that are already
// there.
func shown(before []string, prefix, text string) []candidate {
	prefix += text[:strings.LastIndexByte(text, ',')+1]
	var out []candidate
	for _, g := range results.For(named(before)) {
		for i := range g.Rows {
			out = append(out, candidate{prefix + g.Rows[i].Name, g.Rows[i].Label})
		}
	}
	return out
}

// settings are NAME= for every input of the rocket on the command line (else
// of the one built in), or, once a name is there, the values it may take.
func settings(before []string, prefix, text string) []candidate {
	rocket := named(before)
	name, _, chosen := strings.Cut(text, "=")
	if !chosen {
		var out []candidate
		for _, in := range rocketfile.Inputs(rocket) {
			out = append(out, candidate{prefix + in.Name + "=", in.Help})
		}
		return out
	}
	in, err := rocketfile.Find(rocket, name)
	if err != nil {
		return nil
	}
	if in.Kind == rocketfile.ChoiceKind {
		return plain(in.Choices, prefix+name+"=")
	}
	return plain(append([]string{in.Text(rocket)}, in.Choices...), prefix+name+"=")
}

// plain makes candidates of plain words.
func plain(list []string, prefix string) []candidate {
	var out []candidate
	for _, w := range list {
		if w != "" { // what stands for none in an enumeration
			out = append(out, candidate{word: prefix + w})
		}
	}
	return out
}
