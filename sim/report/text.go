package report

import (
	"fmt"
	"io"
	"strings"
	"unicode/utf8"

	"ullage/sim"
	"ullage/sim/gates"
	"ullage/sim/quantity"
	"ullage/sim/report/card"
	"ullage/sim/rocket"
)

// width is the widest line of the text report, in columns.
const width = 80

// WriteText writes the short report of one flight, with more findings about it, such as
// those of studies, if there are any.
func WriteText(w io.Writer, fl *sim.Flight, sys quantity.System, more ...Finding) error {
	p := printer{sys}
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
type sheet struct{ strings.Builder }

func (s *sheet) line(text string) {
	s.WriteString(strings.TrimRight(text, " "))
	s.WriteByte('\n')
}

// hung writes text wrapped after a first line's prefix, later lines below it.
func (s *sheet) hung(prefix, text string) {
	indent := strings.Repeat(" ", utf8.RuneCountInString(prefix))
	for _, l := range card.Wrap(text, width-len(indent)) {
		s.line(prefix + l)
		prefix = indent
	}
}

// field writes a labelled line of text.
func (s *sheet) field(label, text string) { s.hung(fmt.Sprintf("  %-16s  ", label), text) }

// row writes a moment: its label, time, height and speed to the right, a note.
func (s *sheet) row(label, time, height, speed, note string) {
	s.hung(fmt.Sprintf("  %-13s%10s%11s%12s  ", label, time, height, speed), note)
}

// heading says what flies.
func (s *sheet) heading(p printer, r *rocket.Rocket) {
	name := printable(r.Name)
	if name == "" {
		name = "A rocket without a name"
	}
	s.hung("", name+" on "+string(r.Power)+" power")
	switch {
	case r.Power == rocket.WaterPower && r.Water != nil:
		w := r.Water
		s.hung("  ", fmt.Sprintf("%s chamber, %s full, %s; throat %s",
			p.given(w.Volume, "L"), p.given(w.Fill, "%"), p.given(w.Pressure, "bar"), p.size(w.Throat)))
	case r.Power == rocket.MotorPower && r.Motor != nil:
		m := r.Motor
		s.hung("  ", fmt.Sprintf("%s of propellant in a case of %s", p.mass(m.Propellant), p.mass(m.Case)))
	}
	guide := "no rail"
	if r.Rail.Length > 0 {
		guide = "rail " + p.given(r.Rail.Length, "m")
	}
	day := "; calm"
	if r.Wind.Speed > 0 {
		day = "; wind " + p.given(r.Wind.Speed, "m/s") + " from " + p.given(r.Wind.From, "deg")
	}
	s.hung("  ", guide+", "+p.given(r.Rail.Tilt, "deg")+" from vertical"+day)
}

// moments is the table of what happened when.
func (s *sheet) moments(p printer, fl *sim.Flight) {
	r := &fl.Results
	s.line("")
	s.row("", "time", "height", "speed", "")
	s.row("lift-off", p.time(0), p.height(0), p.speed(0),
		p.mass(r.LiftOffMass)+", thrust/weight "+p.number(r.LiftOffThrustToWeight))
	if e := r.TubeExit; e.Happened {
		s.moment(p, "tube exit", e.Moment, "")
	}
	if e := r.RailExit; e.Happened {
		word, _ := gates.RailExit(fl.Rocket).Judge(e.Speed)
		thrust, _ := gates.LimitFor(fl.Rocket, gates.LimitThrustToWeight).Judge(e.ThrustToWeight)
		s.moment(p, "rail exit", e.Moment, word+"; thrust/weight "+p.number(e.ThrustToWeight)+" "+thrust)
	} else {
		s.row("rail exit", "", "", "", gates.WordNever)
	}
	if r.WaterFlew {
		note := "nothing left"
		if r.LiquidLeft > 0 {
			note = p.mass(r.LiquidLeft) + " " + gates.WordLeft
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
		s.moment(p, "landing", l.Moment, p.speed(l.Vertical)+" down "+word)
	}
}

func (s *sheet) moment(p printer, label string, m sim.Moment, note string) {
	s.row(label, p.time(m.Time), p.height(m.Height), p.speed(m.Speed), note)
}

// canopy writes one canopy's row; its speed is the airspeed.
func (s *sheet) canopy(p printer, fl *sim.Flight, i int) {
	c := fl.Results.Canopies[i]
	label := printable(c.Name)
	if !c.Opened {
		s.row(label, "", "", "", gates.WordNever+" opens")
		return
	}
	word, _ := gates.LimitFor(fl.Rocket, gates.LimitOpening).Judge(c.Airspeed)
	s.row(label, p.time(c.Time), p.height(c.Height), p.speed(c.Airspeed),
		fmt.Sprintf("%s; load %s, at most %s; then %s down",
			word, p.force(c.Load), p.force(c.LoadBound), p.speed(c.Descent)))
}

// maxima lists the greatest values, each with its time, and what pushed.
func (s *sheet) maxima(p printer, fl *sim.Flight) {
	m, d, start := fl.Results.Max, fl.Results.Drive, fl.Results.Startup
	s.line("")
	s.line("  greatest")
	for _, g := range []struct {
		label, value string
		at           float64
	}{
		{"speed", p.speed(m.Speed), m.SpeedTime},
		{"Mach number", p.number(m.Mach), m.MachTime},
		{"acceleration", p.acceleration(m.Acceleration) + ", " + p.gravities(m.Acceleration), m.AccelerationTime},
		{"dynamic pressure", p.text(m.DynamicPressure, "kPa"), m.DynamicPressureTime},
		{"thrust", p.force(m.Thrust), m.ThrustTime},
	} {
		s.field(g.label, g.value+" at "+p.time(g.at))
	}
	if start.Thrust > 0 {
		s.field("start-up", fmt.Sprintf("surge of at most %s and %s (%s), as if the valve opened at once",
			p.force(start.Thrust), p.acceleration(start.Acceleration), p.gravities(start.Acceleration)))
	}
	s.line("")
	drive := fmt.Sprintf("%s, %s on average over %s", p.impulse(d.Impulse), p.force(d.Average), p.time(d.BurnTime))
	if d.Class != "" {
		drive = "class " + d.Class + ", " + drive
	}
	s.field("drive", drive)
}

// landing says how hard and where it comes down.
func (s *sheet) landing(p printer, fl *sim.Flight) {
	l := fl.Results.Landing
	if !l.Happened {
		s.field("landing", gates.WordNever)
		return
	}
	word, _ := gates.LimitFor(fl.Rocket, gates.LimitEnergy).Judge(l.Energy)
	s.field("landing energy", p.energy(l.Energy)+" "+word)
	s.field("drift", drift(p, l))
}

// warnings writes each as sentences.
func (s *sheet) warnings(p printer, fl *sim.Flight) {
	if len(fl.Warnings) == 0 {
		return
	}
	s.line("")
	for _, w := range fl.Warnings {
		s.hung("  ! ", WarningText(w, p.sys))
	}
}

// closing says what the model leaves out, and the cautions.
func (s *sheet) closing(r *rocket.Rocket) {
	s.line("")
	s.hung("  ", leftOut(r))
	for _, c := range Cautions(r.Power) {
		s.hung("  ", c)
	}
}
