package main

import (
	"errors"
	"fmt"
	"io"
	"slices"
	"strings"
	"time"

	"ullage/sim/fault"
	"ullage/sim/gates"
	"ullage/sim/plan"
	"ullage/sim/report/checklist"
	"ullage/sim/report/page"
	"ullage/sim/report/words"
	"ullage/sim/rocketfile"
	"ullage/sim/study"
)

// checklistCommand writes lists to tick off.
type checklistCommand struct {
	File  string   `arg:"" placeholder:"FILE" help:"The rocket file; - reads standard input."`
	Names []string `arg:"" optional:"" name:"list" placeholder:"LIST" help:"Which: layup, proof, leak, packing, filling, arming, launch, misfire, unreleased, recovery; all for those of the drive. None tells which there are."`

	printOptions
	setOptions
	unitsOption
	outputOptions
}

// allLists asks for every list of the drive.
const allLists = "all"

// Help teaches by example.
func (checklistCommand) Help() string {
	return helpText(
		"What is done in which order, and who stands where, with the rocket's own numbers: laying up, proof, leak test, packing, filling, "+
			"arming, launch, a motor that did not light, a rocket under pressure that did not release, recovery; those that the drive has. "+
			"A list that fills, arms or launches is one only for a rocket that is go by ullage check: else it says what is left to do, and the "+
			"exit status is 1. Common practice: the range officer and local law decide.",
		"ullage checklist heron.toml",
		"ullage checklist heron.toml filling launch",
		"ullage checklist heron.toml unreleased",
		"ullage checklist heron.toml all --html -o lists.html",
		"ullage checklist heron.toml arming misfire --set power=motor")
}

// Run looks at what the lists take and writes them.
func (c *checklistCommand) Run(s *streams) error {
	file, err := c.open(s, c.File)
	if err != nil {
		return err
	}
	if len(c.Names) == 0 {
		return c.write(s, func(w io.Writer) error { return listLists(w, file) })
	}
	names, err := c.names(file)
	if err != nil {
		return err
	}
	day, err := c.day(s, file, names)
	if err != nil {
		return err
	}
	var lists []checklist.List
	leads := false
	for _, name := range names {
		l, ok := checklist.New(&day, name, c.system())
		if !ok {
			continue
		}
		lists = append(lists, l)
		leading, _ := checklist.Leads(name)
		leads = leads || leading
	}
	err = c.write(s, func(w io.Writer) error {
		return c.print(w, func() page.Document { return checklist.Document(&day, lists) },
			func(w io.Writer) error { return checklist.WriteJSON(w, &day, lists) })
	})
	if readEnough(err) && leads && !day.Verdict.Pass() {
		err = failedError{fmt.Errorf("%s: %s", file.Name(), words.Verdict(&day.Verdict))}
	}
	return err
}

// listLists tells which lists there are.
func listLists(w io.Writer, file *rocketfile.File) error {
	var b strings.Builder
	for _, l := range checklist.Of(file.Rocket()) {
		fmt.Fprintf(&b, "%-12s%s\n", l.Name, l.Title)
	}
	_, err := io.WriteString(w, b.String())
	return err
}

// names are the lists asked for, each once, in the order of a rocket's life for all.
func (c *checklistCommand) names(file *rocketfile.File) ([]string, error) {
	r := file.Rocket()
	var names []string
	for _, name := range c.Names {
		if name == allLists {
			for _, l := range checklist.Of(r) {
				names = append(names, l.Name)
			}
			continue
		}
		if !slices.Contains(checklist.Known(), name) {
			return nil, badInput("%q is no checklist; give one of %s, or all", name, strings.Join(checklist.Known(), ", "))
		}
		if why := checklist.Why(r, name); why != "" {
			return nil, badInput("%s: the list %s %s", file.Name(), name, why)
		}
		names = append(names, name)
	}
	slices.SortStableFunc(names, func(a, b string) int {
		return slices.Index(checklist.Known(), a) - slices.Index(checklist.Known(), b)
	})
	return slices.Compact(names), nil
}

// day is what the lists take: the flight and its checks only where one needs them.
func (c *checklistCommand) day(s *streams, file *rocketfile.File, names []string) (checklist.Day, error) {
	r := file.Rocket()
	day := checklist.Day{Rocket: r, Pad: plan.OnThePad(r)}
	day.Verdict.Rocket, day.Verdict.Power = r, r.Power
	flies := slices.ContainsFunc(names, func(name string) bool { _, flies := checklist.Leads(name); return flies })
	if flies {
		options := gates.Options{Today: time.Now(), Spreads: study.Spreads(file), Respread: study.Respread(file)}
		v, err := gates.Judge(s.ctx, r, options)
		if err != nil {
			return day, err
		}
		day.Verdict = v
		if v.Pass() && slices.Contains(names, "launch") {
			wind, err := plan.MostWind(s.ctx, r, plan.Options{Spreads: options.Spreads, Respread: options.Respread, Today: options.Today})
			if err != nil {
				return day, err
			}
			day.Most = &wind
		}
	}
	if slices.Contains(names, "proof") {
		structure, err := study.StructureOf(s.ctx, r)
		if err != nil && !errors.As(err, new(fault.List)) {
			return day, err
		}
		day.Structure = &structure
	}
	return day, nil
}
