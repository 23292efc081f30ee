package report

import (
	"errors"
	"fmt"
	"io"
	"math"
	"strings"
	"unicode/utf8"

	"ullage/sim/gates"
	"ullage/sim/quantity"
	"ullage/sim/report/machine"
	"ullage/sim/report/page"
	"ullage/sim/report/words"
	"ullage/sim/results"
	"ullage/sim/rocket"
	"ullage/sim/study"
)

// Motors are motors side by side in one rocket.
type Motors struct {
	Rocket   *rocket.Rocket
	Compared []study.Compared
	Limit    float64 // of the impulse, N·s; 0 for none
	System   quantity.System
	Partial  bool // cut short: some have no flight
}

// onMotor is the rocket on the drive that is compared.
func (m *Motors) onMotor() *rocket.Rocket {
	r := *m.Rocket
	r.Power = rocket.MotorPower
	return &r
}

// table is the results of it.
func (m *Motors) table() results.Table { return results.For(m.onMotor()) }

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
	table := m.table()
	for i := range m.Compared {
		c := &m.Compared[i]
		var problem, delay, airspeed any
		if c.Problem != "" {
			problem = c.Problem
		}
		if d, ok := c.BestDelay(); ok {
			delay, airspeed = number(machine.Tidy(d.Value)), number(d.Airspeed)
		}
		var line machine.Object
		line.Add("motor", c.Name).Add("problem", problem).Add("best_delay_s", delay).Add("best_delay_airspeed_mps", airspeed)
		whole := addFlight(&line, c.Flight, table, whyNot(c))
		if c.Rocket != nil {
			whole.Add("fit", words.FitObject(c.Rocket.MotorFit()))
		}
		if err := machine.WriteLine(w, whole); err != nil {
			return err
		}
	}
	return nil
}

// The results among the columns of `motors --csv`, before and behind the best delay.
var (
	motorResults = []string{"drive.class", "drive.impulse", "drive.average", "drive.burn", "rail_exit.thrust_to_weight",
		"rail_exit.speed", "apogee.height", "apogee.time"}
	laterMotorResults = []string{"max.speed", "max.mach", "max.acceleration", "landing.speed", "landing.time", "landing.drift"}
)

// WriteMotorsCSV writes a header and a row a motor, SI; what keeps a motor out, or
// why it makes no rocket, is in the column problem.
func WriteMotorsCSV(w io.Writer, m Motors) error {
	table := m.table()
	b := []byte("motor,problem")
	for _, name := range motorResults {
		b = append(append(b, ','), table.Must(name).Column()...)
	}
	b = append(b, ",best_delay_s,best_delay_airspeed_mps"...)
	for _, name := range laterMotorResults {
		b = append(append(b, ','), table.Must(name).Column()...)
	}
	b = append(b, '\n')
	for i := range m.Compared {
		c := &m.Compared[i]
		problem := c.Problem
		if c.Flight == nil {
			problem = page.OneLine(whyNot(c))
		}
		b = append(b, machine.Cell(c.Name)+","+machine.Cell(problem)...)
		some := func(names []string) {
			for _, name := range names {
				if b = append(b, ','); c.Flight != nil {
					b = appendResult(b, table.Must(name), c.Flight)
				}
			}
		}
		some(motorResults)
		delay, airspeed := math.NaN(), math.NaN()
		if d, ok := c.BestDelay(); ok && c.Flight != nil {
			delay, airspeed = machine.Tidy(d.Value), machine.Tidy(d.Airspeed)
		}
		b = machine.AppendNumber(append(b, ','), delay)
		b = machine.AppendNumber(append(b, ','), airspeed)
		some(laterMotorResults)
		b = append(b, '\n')
	}
	_, err := w.Write(b)
	return err
}

// MotorMark stands before a motor that does not fit or exceeds the limit; the words
// below the table say which.
const MotorMark = "!"

// WriteMotorsText writes a table for people.
func WriteMotorsText(w io.Writer, m Motors) error {
	p := words.In(m.System)
	var s sheet
	flown, table := m.onMotor(), m.table()
	column := func(name string, width int) page.Heading { return columnOf(p, table.Must(name), width) }
	s.Hung("", words.Title(flown)+": "+words.Plural(len(m.Compared), "motor"))
	s.Line("")
	name := page.Heading{Lines: []string{"motor"}, Left: true, Width: 8}
	const most = 11 // longer ones have a line of their own
	for _, c := range m.Compared {
		name.Width = min(most, max(name.Width, utf8.RuneCountInString(page.Printable(c.Name))))
	}
	t := page.NewTable(&s, page.Heading{Width: 1}, name,
		column("drive.class", 0), column("rail_exit.thrust_to_weight", 0), column("rail_exit.speed", 5), verdictColumn,
		column("apogee.height", 6), page.Heading{Lines: []string{"best", "delay"}, Unit: "s", Width: 5},
		column("max.speed", 0), column("max.mach", 5), column("landing.vertical", 5), verdictColumn)
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
		cells := motorCells(p, table, c, mark)
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
	s.fits(p, &m)
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
	s.closing(p, flown)
	_, err := io.WriteString(w, s.String())
	return err
}

// motorCells are a motor's row.
func motorCells(p words.Printer, t results.Table, c *study.Compared, mark string) []string {
	out := []string{mark, page.Printable(c.Name)}
	fl := c.Flight
	if fl == nil {
		return out
	}
	one := func(name string) string { return cell(p, t.Must(name), fl) }
	delay := "-"
	if d, ok := c.BestDelay(); ok {
		delay = strings.TrimSuffix(p.Given(d.Value, "s"), " s")
	}
	out = append(out, one("drive.class"), one("rail_exit.thrust_to_weight"))
	out = append(out, judgedCells(p, t.Must("rail_exit.speed"), fl)...)
	out = append(out, one("apogee.height"), delay, one("max.speed"), one("max.mach"))
	return append(out, judgedCells(p, t.Must("landing.vertical"), fl)...)
}
