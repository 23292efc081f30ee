package report

import (
	"errors"
	"fmt"
	"io"
	"math"
	"strings"
	"unicode/utf8"

	"ullage/sim"
	"ullage/sim/gates"
	"ullage/sim/quantity"
	"ullage/sim/report/machine"
	"ullage/sim/report/page"
	"ullage/sim/report/words"
	"ullage/sim/rocket"
	"ullage/sim/study"
)

// Motors are motors side by side in one rocket.
type Motors struct {
	Rocket   *rocket.Rocket
	Compared []study.Compared
	Limit    float64 // of the impulse, N·s; 0 for none
	System   quantity.System
	Rigid    bool // flights are not those of a point mass
	Partial  bool // cut short: some have no flight
}

// bestDelay is the best delay of a motor; nil when there is none.
func bestDelay(c *study.Compared) *study.Delay {
	if c.Delay < 0 || c.Delay >= len(c.Delays) {
		return nil
	}
	return &c.Delays[c.Delay]
}

// whyNot says why a variant has no flight.
func whyNot(c *study.Compared) error {
	if c.Invalid == nil {
		return errNotFlown
	}
	return c.Invalid
}

var errNotFlown = errors.New("not flown: interrupted")

// WriteMotorsJSON writes one object a line: the motor, what keeps it out (null when
// nothing does), its best delay with the airspeed at which the canopy then opens (null
// without a charge), and the keys of `fly --json` for the motor as its file has it.
func WriteMotorsJSON(w io.Writer, m Motors) error {
	for i := range m.Compared {
		c := &m.Compared[i]
		var problem, delay, airspeed any
		if c.Problem != "" {
			problem = c.Problem
		}
		if d := bestDelay(c); d != nil {
			delay, airspeed = number(machine.Tidy(d.Value)), number(d.Airspeed)
		}
		var line machine.Object
		line.Add("motor", c.Name).Add("problem", problem).Add("best_delay_s", delay).Add("best_delay_airspeed_mps", airspeed)
		if err := machine.WriteLine(w, addFlight(&line, c.Flight, whyNot(c))); err != nil {
			return err
		}
	}
	return nil
}

// motorColumn is one column of `motors --csv`.
type motorColumn struct {
	name string
	text func(c *study.Compared, r *sim.Results) string
}

func figureColumn(name string, of func(r *sim.Results) (float64, bool)) motorColumn {
	return motorColumn{name, func(_ *study.Compared, r *sim.Results) string {
		if v, happened := of(r); happened {
			return string(machine.AppendNumber(nil, v))
		}
		return ""
	}}
}

func delayColumn(name string, of func(d *study.Delay) float64) motorColumn {
	return motorColumn{name, func(c *study.Compared, _ *sim.Results) string {
		if d := bestDelay(c); d != nil {
			return string(machine.AppendNumber(nil, machine.Tidy(of(d))))
		}
		return ""
	}}
}

// motorColumns follow the motor and what keeps it out.
var motorColumns = []motorColumn{
	{"class", func(_ *study.Compared, r *sim.Results) string { return r.Drive.Class }},
	figureColumn("impulse_ns", func(r *sim.Results) (float64, bool) { return r.Drive.Impulse, true }),
	figureColumn("average_n", func(r *sim.Results) (float64, bool) { return r.Drive.Average, true }),
	figureColumn("burn_s", func(r *sim.Results) (float64, bool) { return r.Drive.BurnTime, true }),
	figureColumn("thrust_to_weight", func(r *sim.Results) (float64, bool) { return r.RailExit.ThrustToWeight, r.RailExit.Happened }),
	figureColumn("rail_exit_mps", func(r *sim.Results) (float64, bool) { return r.RailExit.Speed, r.RailExit.Happened }),
	figureColumn("apogee_m", func(r *sim.Results) (float64, bool) { return r.Apogee.Height, r.Apogee.Happened }),
	figureColumn("apogee_s", func(r *sim.Results) (float64, bool) { return r.Apogee.Time, r.Apogee.Happened }),
	delayColumn("best_delay_s", func(d *study.Delay) float64 { return d.Value }),
	delayColumn("best_delay_airspeed_mps", func(d *study.Delay) float64 { return d.Airspeed }),
	figureColumn("max_speed_mps", func(r *sim.Results) (float64, bool) { return r.Max.Speed, true }),
	figureColumn("max_mach", func(r *sim.Results) (float64, bool) { return r.Max.Mach, true }),
	figureColumn("max_acceleration_mps2", func(r *sim.Results) (float64, bool) { return r.Max.Acceleration, true }),
	figureColumn("landing_mps", func(r *sim.Results) (float64, bool) { return r.Landing.Speed, r.Landing.Happened }),
	figureColumn("landing_s", func(r *sim.Results) (float64, bool) { return r.Landing.Time, r.Landing.Happened }),
	figureColumn("drift_m", func(r *sim.Results) (float64, bool) {
		return math.Hypot(r.Landing.East, r.Landing.North), r.Landing.Happened
	}),
}

// WriteMotorsCSV writes a header and a row a motor, SI; what keeps a motor out, or
// why it makes no rocket, is in the column problem.
func WriteMotorsCSV(w io.Writer, m Motors) error {
	var b strings.Builder
	b.WriteString("motor,problem")
	for _, k := range motorColumns {
		b.WriteString("," + k.name)
	}
	b.WriteByte('\n')
	for i := range m.Compared {
		c := &m.Compared[i]
		problem := c.Problem
		if c.Flight == nil {
			problem = page.OneLine(whyNot(c))
		}
		b.WriteString(machine.Cell(c.Name) + "," + machine.Cell(problem))
		for _, k := range motorColumns {
			b.WriteByte(',')
			if c.Flight != nil {
				b.WriteString(k.text(c, &c.Flight.Results))
			}
		}
		b.WriteByte('\n')
	}
	_, err := io.WriteString(w, b.String())
	return err
}

// MotorMark stands before a motor that does not fit or exceeds the limit; the words
// below the table say which.
const MotorMark = "!"

// WriteMotorsText writes a table for people.
func WriteMotorsText(w io.Writer, m Motors) error {
	p := words.In(m.System)
	var s sheet
	flown := *m.Rocket
	flown.Power = rocket.MotorPower
	s.Hung("", words.Title(&flown)+": "+words.Plural(len(m.Compared), "motor"))
	s.Line("")
	name := page.Heading{Lines: []string{"motor"}, Left: true, Width: 8}
	const most = 12 // longer ones have a line of their own
	for _, c := range m.Compared {
		name.Width = min(most, max(name.Width, utf8.RuneCountInString(page.Printable(c.Name))))
	}
	t := page.NewTable(&s, page.Heading{Width: 1}, name,
		page.Heading{Lines: []string{"class"}, Left: true},
		page.Heading{Lines: []string{"thrust/", "weight"}},
		page.Heading{Lines: []string{"rail", "exit"}, Unit: p.Unit("m/s"), Width: 5},
		page.Heading{Left: true, Width: 5},
		page.Heading{Lines: []string{"apogee"}, Unit: p.Unit("m"), Width: 6},
		page.Heading{Lines: []string{"best", "delay"}, Unit: "s", Width: 5},
		page.Heading{Lines: []string{"top", "speed"}, Unit: p.Unit("m/s")},
		page.Heading{Lines: []string{"Mach"}, Width: 5},
		page.Heading{Lines: []string{"lands"}, Unit: p.Unit("m/s"), Width: 5},
		page.Heading{Left: true, Width: 5})
	_ = t.Head()
	var notes []string
	for i := range m.Compared {
		c := &m.Compared[i]
		mark := ""
		switch {
		case c.Flight == nil:
			mark = MotorMark
			notes = append(notes, MotorMark+" "+page.Printable(c.Name)+": no flight: "+page.OneLine(whyNot(c)))
		case c.Problem != "":
			mark = MotorMark
			notes = append(notes, MotorMark+" "+page.Printable(c.Name)+" "+gates.WordLarge+": "+page.Printable(c.Problem))
		}
		cells := m.cells(p, c, mark)
		if utf8.RuneCountInString(cells[1]) > most && len(cells) > 2 {
			_ = t.Row(cells[:2]...)
			cells[0], cells[1] = "", ""
		}
		_ = t.Row(cells...)
	}
	s.Line("")
	for _, n := range notes {
		s.Hung("  ", n+".")
	}
	if m.Limit > 0 {
		text := fmt.Sprintf("Motors of more than %s are marked", p.Impulse(m.Limit))
		if l := gates.LimitFor(m.Rocket, gates.LimitImpulse); m.Limit == l.Max {
			text += ": " + l.Source
		}
		s.Hung("  ", text+".")
	}
	s.Hung("  ", "The best delay opens the canopy slowest; the rest is for the delay that each file has.")
	if m.Partial {
		s.Hung("  ", gates.WordPartial+": interrupted before all had flown.")
	}
	s.study(&flown, m.Rigid)
	_, err := io.WriteString(w, s.String())
	return err
}

// cells are a motor's row.
func (m *Motors) cells(p words.Printer, c *study.Compared, mark string) []string {
	name := page.Printable(c.Name)
	if c.Flight == nil {
		return []string{mark, name}
	}
	r := &c.Flight.Results
	class := r.Drive.Class
	if class == "" {
		class = "-"
	}
	out := []string{mark, name, class}
	if e := r.RailExit; e.Happened {
		word, _ := gates.RailExit(c.Flight.Rocket).Judge(e.Speed)
		out = append(out, p.Number(e.ThrustToWeight), p.Bare(e.Speed, "m/s"), word)
	} else {
		out = append(out, "-", "-", gates.WordNever)
	}
	apogee, delay := "-", "-"
	if r.Apogee.Happened {
		apogee = p.Bare(r.Apogee.Height, "m")
	}
	if d := bestDelay(c); d != nil {
		delay = strings.TrimSuffix(p.Given(d.Value, "s"), " s")
	}
	out = append(out, apogee, delay, p.Bare(r.Max.Speed, "m/s"), p.Number(r.Max.Mach))
	if l := r.Landing; l.Happened {
		word, _ := gates.LimitFor(c.Flight.Rocket, gates.LimitLanding).Judge(l.Vertical)
		return append(out, p.Bare(l.Vertical, "m/s"), word)
	}
	return append(out, "-", gates.WordNever)
}
