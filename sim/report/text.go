package report

import (
	"fmt"
	"io"

	"ullage/sim"
	"ullage/sim/gates"
	"ullage/sim/quantity"
	"ullage/sim/report/page"
	"ullage/sim/report/words"
	"ullage/sim/rocket"
)

// WriteText writes the short report of one flight, with more findings about it, such as
// those of studies, if there are any.
func WriteText(w io.Writer, fl *sim.Flight, sys quantity.System, more ...Finding) error {
	p := words.In(sys)
	var s sheet
	s.heading(p, fl.Rocket)
	s.moments(p, fl)
	s.maxima(p, fl)
	s.stability(p, fl)
	s.landing(p, fl)
	s.findings(more)
	s.warnings(p, fl)
	s.closing(fl.Rocket)
	_, err := io.WriteString(w, s.String())
	return err
}

// sheet gathers the report line by line.
type sheet struct{ page.Sheet }

// row writes a moment: its label, time, height and speed to the right, a note.
func (s *sheet) row(label, time, height, speed, note string) {
	s.Hung(fmt.Sprintf("  %-13s%10s%11s%12s  ", label, time, height, speed), note)
}

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
	day := "; calm"
	if r.Wind.Speed > 0 {
		day = "; wind " + p.Given(r.Wind.Speed, "m/s") + " from " + p.Given(r.Wind.From, "deg")
	}
	s.Hung("  ", guide+", "+p.Given(r.Rail.Tilt, "deg")+" from vertical"+day)
}

// moments is the table of what happened when.
func (s *sheet) moments(p words.Printer, fl *sim.Flight) {
	r := &fl.Results
	s.Line("")
	s.row("", "time", "height", "speed", "")
	s.row("lift-off", p.Time(0), p.Height(0), p.Speed(0),
		p.Mass(r.LiftOffMass)+", thrust/weight "+p.Number(r.LiftOffThrustToWeight))
	if e := r.TubeExit; e.Happened {
		s.moment(p, "tube exit", e.Moment, "")
	}
	if e := r.RailExit; e.Happened {
		word, _ := gates.RailExit(fl.Rocket).Judge(e.Speed)
		thrust, _ := gates.LimitFor(fl.Rocket, gates.LimitThrustToWeight).Judge(e.ThrustToWeight)
		s.moment(p, "rail exit", e.Moment, word+"; thrust/weight "+p.Number(e.ThrustToWeight)+" "+thrust)
	} else {
		s.row("rail exit", "", "", "", gates.WordNever)
	}
	if r.WaterFlew {
		note := "nothing left"
		if r.LiquidLeft > 0 {
			note = p.Mass(r.LiquidLeft) + " " + gates.WordLeft
		}
		s.moment(p, "liquid out", r.LiquidOut, note)
	}
	if r.Burnout.Happened {
		s.moment(p, "burnout", r.Burnout, "")
	}
	early := func(c sim.CanopyResult) bool { return c.Opened && c.Time < r.Apogee.Time }
	for i := range r.Canopies {
		if early(r.Canopies[i]) {
			s.canopy(p, fl, i)
		}
	}
	if r.Apogee.Happened {
		s.moment(p, "apogee", r.Apogee, "")
	}
	for i := range r.Canopies {
		if !early(r.Canopies[i]) {
			s.canopy(p, fl, i)
		}
	}
	if l := r.Landing; l.Happened {
		word, _ := gates.LimitFor(fl.Rocket, gates.LimitLanding).Judge(l.Vertical)
		s.moment(p, "landing", l.Moment, p.Speed(l.Vertical)+" down "+word)
	}
}

func (s *sheet) moment(p words.Printer, label string, m sim.Moment, note string) {
	s.row(label, p.Time(m.Time), p.Height(m.Height), p.Speed(m.Speed), note)
}

// canopy writes one canopy's row; its speed is the airspeed.
func (s *sheet) canopy(p words.Printer, fl *sim.Flight, i int) {
	c := fl.Results.Canopies[i]
	label := page.Printable(c.Name)
	if !c.Opened {
		s.row(label, "", "", "", gates.WordNever+" opens")
		return
	}
	word, _ := gates.LimitFor(fl.Rocket, gates.LimitOpening).Judge(c.Airspeed)
	s.row(label, p.Time(c.Time), p.Height(c.Height), p.Speed(c.Airspeed),
		fmt.Sprintf("%s; load %s, at most %s; then %s down",
			word, p.Force(c.Load), p.Force(c.LoadBound), p.Speed(c.Descent)))
}

// maxima lists the greatest values, each with its time, and what pushed.
func (s *sheet) maxima(p words.Printer, fl *sim.Flight) {
	m, d, start := fl.Results.Max, fl.Results.Drive, fl.Results.Startup
	s.Line("")
	s.Line("  greatest")
	for _, g := range []struct {
		label, value string
		at           float64
	}{
		{"speed", p.Speed(m.Speed), m.SpeedTime},
		{"Mach number", p.Number(m.Mach), m.MachTime},
		{"acceleration", p.Acceleration(m.Acceleration) + ", " + p.Gravities(m.Acceleration), m.AccelerationTime},
		{"dynamic pressure", p.Text(m.DynamicPressure, "kPa"), m.DynamicPressureTime},
		{"thrust", p.Force(m.Thrust), m.ThrustTime},
	} {
		s.Field(g.label, g.value+" at "+p.Time(g.at))
	}
	if start.Thrust > 0 {
		s.Field("start-up", fmt.Sprintf("surge of at most %s and %s (%s), as if the valve opened at once",
			p.Force(start.Thrust), p.Acceleration(start.Acceleration), p.Gravities(start.Acceleration)))
	}
	s.Line("")
	drive := fmt.Sprintf("%s, %s on average over %s", p.Impulse(d.Impulse), p.Force(d.Average), p.Time(d.BurnTime))
	if d.Class != "" {
		drive = "class " + d.Class + ", " + drive
	}
	s.Field("drive", drive)
}

// landing says how hard and where it comes down.
func (s *sheet) landing(p words.Printer, fl *sim.Flight) {
	l := fl.Results.Landing
	if !l.Happened {
		s.Field("landing", gates.WordNever)
		return
	}
	word, _ := gates.LimitFor(fl.Rocket, gates.LimitEnergy).Judge(l.Energy)
	s.Field("landing energy", p.Energy(l.Energy)+" "+word)
	s.Field("drift", p.Drift(l))
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

// closing says what the model leaves out, and the cautions.
func (s *sheet) closing(r *rocket.Rocket) {
	s.Line("")
	s.Hung("  ", words.LeftOut(r))
	for _, c := range words.Cautions(r.Power) {
		s.Hung("  ", c)
	}
}
