package main

import (
	"errors"
	"io"

	"ullage/sim/fault"
	"ullage/sim/layup"
	report "ullage/sim/report/layup"
)

// layupCommand tells how the chamber is laid up.
type layupCommand struct {
	File string `arg:"" placeholder:"FILE" help:"The rocket file; - reads standard input."`

	printOptions
	setOptions
	unitsOption
	outputOptions
}

// Help teaches by example.
func (layupCommand) Help() string {
	return helpText(
		"How the pressure chamber is laid up: every ply with the size it is cut to, the gores of the closures, cloth off the roll, "+
			"resin and hardener pot by pot, wall and weight as they are to be, the order of work with what to look at, and, once a part is "+
			"on the scales (layup.tube, layup.forward, layup.aft) and its wall measured, the fibre it reached and what holds then. "+
			"The file must describe [chamber] with plies; [layup] has mix ratio, pot life, trim and overlap. All of it is an estimate: a chamber "+
			"is no pressure chamber before it was proved with water, under local law and qualified people.",
		"ullage layup heron.toml",
		"ullage layup heron.toml --set 'layup.hardener=40 %' --set 'layup.pot=80 g'",
		"ullage layup heron.toml --set 'layup.tube=301 g' --set 'chamber.wall=0.74 mm'",
		"ullage layup heron.toml --html -o layup.html",
		"ullage layup heron.toml --json")
}

// Run plans and writes the form asked for.
func (c *layupCommand) Run(s *streams) error {
	file, err := s.openDraft(c.File) // a tube is laid up before anybody knows how it flies
	if err == nil {
		file, err = c.apply(file)
	}
	if err != nil {
		return err
	}
	sheet, err := report.For(file.Rocket(), c.system())
	if errors.Is(err, layup.ErrNoPlies) {
		return badInput("%s: %w; give a laid-up material and its plies, as in\n%s", file.Name(), err, chamberExample)
	}
	if faults := (fault.List)(nil); errors.As(err, &faults) {
		return lacking(file, faults)
	}
	if err != nil {
		return err
	}
	return c.write(s, func(w io.Writer) error {
		return c.print(w, sheet.Document, sheet.WriteJSON)
	})
}
