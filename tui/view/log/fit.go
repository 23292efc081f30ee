package log

import (
	"context"
	"errors"
	"path/filepath"
	"strings"

	"ullage/sim/flown"
	"ullage/sim/quantity"
	"ullage/sim/report/measured"
	"ullage/sim/rocketfile"
	"ullage/sim/study"
	"ullage/tui/draw"
	"ullage/tui/view"
)

// fitted is what a fit found.
type fitted struct {
	of     state
	found  measured.Fit
	fault  string           // why there is none; empty mostly
	unused []string         // logs that could not be used, each with why
	taken  *rocketfile.File // the file that has it; nil when none has
}

// allOf is what a fit is of: all logs on the list, as they are asked for.
func (v *View) allOf() state {
	s := state{file: v.Scene.File, marked: len(v.entries)}
	for _, e := range v.entries {
		s.marked += e.marked << 8
	}
	return s
}

// startFit fits inputs of the rocket to the logs on the list, in the background: those that the
// logs can tell where none is named.
func (v *View) startFit(frame view.Frame, names ...string) {
	if len(v.entries) == 0 {
		frame.Say(draw.Dim, "There is no log to fit to; "+v.bindings.Add.Help().Key+" adds one.")
		return
	}
	v.fitOf = v.allOf()
	of, file := v.fitOf, frame.File()
	var jobs []job
	for _, e := range v.entries {
		jobs = append(jobs, job{state{e, file, e.marked}, e.Asked, e.opened})
	}
	v.then = v.fit.Ask(v.Scene.Ctx, func(ctx context.Context) (*fitted, error) { return fit(ctx, of, file, jobs, names) })
}

// fit fits a rocket to logs.
func fit(ctx context.Context, of state, file *rocketfile.File, jobs []job, names []string) (*fitted, error) {
	out := &fitted{of: of}
	var logs []flown.Logged
	for _, j := range jobs {
		l, _, err := j.logged()
		if err != nil {
			out.unused = append(out.unused, why(err))
			continue
		}
		logs = append(logs, l)
	}
	if len(logs) == 0 {
		out.fault = "No log on the list can be used."
		return out, nil
	}
	if err := flown.Refuse(file, logs); err != nil {
		out.fault = why(err)
		return out, nil
	}
	var inputs []study.Spread
	var err error
	if len(names) > 0 {
		inputs, err = flown.Vary(logs[0].Rocket, study.Spreads(file), names)
	} else {
		inputs, err = flown.Choose(ctx, logs, study.Spreads(file))
	}
	if err == nil {
		out.found.Fitted, err = flown.Fit(ctx, logs, inputs)
	}
	switch {
	case ctx.Err() != nil:
		return nil, ctx.Err()
	case errors.Is(err, flown.ErrNothingLearned), errors.Is(err, flown.ErrNotSettled):
		out.found.Failed = err
	case err != nil:
		out.fault = why(err)
	}
	for _, in := range inputs {
		out.found.Units = append(out.found.Units, file.Unit(in.Input.Name))
	}
	return out, nil
}

// settleFit takes note of a fit that ended, and shows it.
func (v *View) settleFit() {
	v.sheet = fitSheet
	if v.fit.Err != nil {
		v.fit.Result, v.fit.Ready = &fitted{of: v.fitOf, fault: why(v.fit.Err)}, true
	}
}

// take makes what was fitted the rocket's own.
func (v *View) take(frame view.Frame) {
	b := &v.bindings
	f := v.fit.Result
	switch {
	case v.fit.Busy:
		frame.Say(draw.Dim, "The fit is under way.")
		return
	case !v.fit.Ready || f.fault != "":
		frame.Say(draw.Dim, "There is no fit to take; "+b.Fit.Help().Key+" makes one.")
		return
	case f.found.Failed != nil:
		frame.Say(draw.Bad, "Not taken: "+f.found.Failed.Error()+".")
		return
	case f.taken != nil && f.taken == frame.File():
		frame.Say(draw.Dim, "The rocket has it already.")
		return
	case f.of.file != frame.File() || f.of != v.allOf():
		frame.Say(draw.Caution, "The fit is of another state of the rocket or the logs; "+b.Fit.Help().Key+" fits this one.")
		return
	}
	file, err := flown.Keep(frame.File(), f.found.Fitted, v.clock())
	if !frame.Take(file, err, view.Edit{Says: "fit to " + f.logs() + ", values and spreads of " + f.names()}) {
		return
	}
	f.taken = file
	v.sheet = plotSheet
	frame.Say(draw.Plain, "Values and spreads of "+f.names()+" are the rocket's; undo brings back what it had.")
}

// logs names the logs of a fit.
func (f *fitted) logs() string {
	var names []string
	for _, l := range f.found.Fitted.Logs {
		names = append(names, draw.Clean(filepath.Base(l.Log.Name)))
	}
	return listed(names)
}

// names are the inputs that were fitted.
func (f *fitted) names() string {
	var names []string
	for _, in := range f.found.Fitted.Inputs {
		if !in.Kept {
			names = append(names, in.Input.Name)
		}
	}
	return listed(names)
}

func listed(names []string) string {
	if n := len(names); n > 1 {
		return strings.Join(names[:n-1], ", ") + " and " + names[n-1]
	}
	return strings.Join(names, "")
}

// systemOf is the fit in a system of units.
func (f *fitted) in(sys quantity.System) *measured.Fit {
	x := f.found
	x.System = sys
	return &x
}
