package report

import (
	"fmt"
	"io"

	"ullage/sim"
	"ullage/sim/quantity"
	"ullage/sim/report/page"
	"ullage/sim/report/words"
	"ullage/sim/results"
	"ullage/sim/rocket"
)

// WriteText writes the short report of one flight, with the results of a table, and with
// more findings about it, such as those of studies, if there are any.
func WriteText(w io.Writer, fl *sim.Flight, t results.Table, sys quantity.System, more ...Finding) error {
	p := words.In(sys)
	s := flightSheet{p: p, fl: fl, t: t}
	s.heading(p, fl.Rocket)
	s.events()
	s.greatest()
	s.drive()
	s.stability()
	s.landing()
	s.others()
	s.findings(more)
	s.warnings(p, fl)
	s.closing(p, fl.Rocket)
	_, err := io.WriteString(w, s.String())
	return err
}

// sheet gathers a report line by line.
type sheet struct{ page.Sheet }

// heading says what flies.
func (s *sheet) heading(p words.Printer, r *rocket.Rocket) {
	s.Hung("", words.Title(r))
	switch {
	case r.Power == rocket.WaterPower && r.Water != nil:
		w := r.Water
		s.Hung("  ", fmt.Sprintf("%s chamber, %s full, %s; throat %s",
			p.Given(w.Volume, "L"), p.Given(w.Fill, "%"), p.Given(w.Pressure, "bar"), p.Size(w.Throat)))
	case r.Power == rocket.MotorPower && r.Motor != nil:
		m := r.Motor
		s.Hung("  ", fmt.Sprintf("%s of propellant in a case of %s", p.Mass(m.Propellant), p.Mass(m.Case)))
	}
	guide := "no rail"
	if r.Rail.Length > 0 {
		guide = "rail " + p.Given(r.Rail.Length, "m")
	}
	day := "; " + p.DayWind(r)
	if !r.Wind.Known() {
		day += ", flown as calm"
	}
	s.Hung("  ", guide+", "+p.Given(r.Rail.Tilt, "deg")+" from vertical"+day)
}

// warnings writes each as sentences.
func (s *sheet) warnings(p words.Printer, fl *sim.Flight) {
	if len(fl.Warnings) == 0 {
		return
	}
	s.Line("")
	for _, w := range fl.Warnings {
		s.Hung("  ! ", WarningText(w, p.System))
	}
}

// closing says what the model leaves out, and the cautions: first of all that no proof is for
// the pressure, where none is.
func (s *sheet) closing(p words.Printer, r *rocket.Rocket) {
	s.Line("")
	if text := p.Beyond(r); text != "" {
		s.Hung("  ! ", text)
	}
	s.Hung("  ", words.LeftOut(r))
	for _, c := range words.Cautions(r.Power) {
		s.Hung("  ", c)
	}
}
