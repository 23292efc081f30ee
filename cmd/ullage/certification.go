package main

import (
	"errors"
	"fmt"
	"io"
	"reflect"
	"time"

	"ullage/sim/fault"
	"ullage/sim/plan"
	"ullage/sim/report/certification"
	"ullage/sim/report/page"
	"ullage/sim/rocket"
	"ullage/sim/rocketfile"
	"ullage/sim/study"
)

// certify writes the page for a flight that certifies the flyer.
func (c *cardCommand) certify(s *streams, file *rocketfile.File) error {
	r := file.Rocket()
	if r.Motor == nil {
		return badInput("%s flies on %s alone, and a flight that certifies is on a motor\ngive it one: [motor] with its curve or its file, and a fitting [motor_mount]", file.Name(), r.Power)
	}
	if err := errors.Join(c.spare(s), c.refuse()); err != nil {
		return err
	}
	all, err := certifying(file)
	if err != nil {
		return err
	}
	motors, err := plan.Certify(s.ctx, all, plan.Options{Today: time.Now()})
	if err != nil {
		return err
	}
	form := printOptions{JSON: c.JSON, Markdown: c.Markdown, HTML: c.HTML}
	err = c.write(s, func(w io.Writer) error {
		return form.print(w, func() page.Document { return certification.Document(r, motors, c.system()) },
			func(w io.Writer) error { return certification.WriteJSON(w, r, motors, c.system()) })
	})
	own := &motors[0]
	if readEnough(err) && (own.Invalid != nil || !own.Verdict.Pass()) {
		err = failedError{fmt.Errorf("%s: on %s: %s", file.Name(), own.Name, certification.Word(own))}
	}
	return err
}

// certifying are the motor of a rocket and those of the motor files in its folder, each once.
func certifying(file *rocketfile.File) ([]plan.Candidate, error) {
	own := file.Rocket().Motor
	name := own.Name
	paths, err := file.MotorFiles()
	if err != nil {
		return nil, err
	}
	named := motorNames(paths)
	var all []plan.Candidate
	var faults fault.List
	add := func(name string, f *rocketfile.File) {
		all = append(all, plan.Candidate{Name: name, Rocket: f.Rocket(), Spreads: study.Spreads(f), Respread: study.Respread(f)})
	}
	for i, path := range paths {
		with, err := file.WithMotor(path)
		var bad fault.List
		switch {
		case errors.As(err, &bad):
			faults = append(faults, bad...)
		case err != nil:
			return nil, err
		case reflect.DeepEqual(with.Rocket().Motor, own): // the one that the file names
			name = named[i]
		default:
			add(named[i], with)
		}
	}
	if len(faults) > 0 {
		return nil, faults
	}
	if name == "" {
		name = "its own motor"
	}
	on := file
	if file.Rocket().Power != rocket.MotorPower {
		if on, err = file.Set("power", string(rocket.MotorPower)); err != nil {
			return nil, asInput(err)
		}
	}
	others := all
	all = nil
	add(name, on)
	return append(all, others...), nil
}
