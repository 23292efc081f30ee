package report

import (
	"bufio"
	"fmt"
	"io"
	"math"
	"strconv"
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

// Dispersion is a scatter of flights with all that a report of it needs.
type Dispersion struct {
	Rocket  *rocket.Rocket
	Spreads []study.Spread
	Units   []quantity.Unit // that the file uses for the input of each spread; the text shows them
	Seed    uint64
	Result  study.Dispersion
	System  quantity.System
}

type (
	scatterJSON struct {
		Flights    int              `json:"flights"`
		Invalid    int              `json:"invalid"`
		Apogee     summaryJSON      `json:"apogee_m"`
		RailExit   summaryJSON      `json:"rail_exit_mps"`
		Landing    *landingsJSON    `json:"landing"`
		DrogueOnly *landingsJSON    `json:"drogue_only"` // of the same with the main of several canopies shut
		Ballistic  *landingsJSON    `json:"ballistic"`   // of the same with no canopy opening
		Importance []importanceJSON `json:"importance"`
		Pressure   *machine.Object  `json:"pressure"` // null on a motor
		Model      string           `json:"model"`
		Shown      *machine.Object  `json:"shown,omitempty"`     // what was asked for, by name
		Reservoir  int              `json:"reservoir,omitempty"` // flights behind quantiles and ranks
		Partial    bool             `json:"partial,omitempty"`
	}
	summaryJSON struct {
		Mean number `json:"mean"`
		SD   number `json:"sd"`
		Q05  number `json:"q05"`
		Q50  number `json:"q50"`
		Q95  number `json:"q95"`
	}
	landingsJSON struct {
		East    number      `json:"east_m"`
		North   number      `json:"north_m"`
		Ellipse ellipseJSON `json:"ellipse_90"`
		Landed  int         `json:"landed"`
		Outside *number     `json:"outside_field"` // share of them; null without field.radius or field.boundary
	}
	ellipseJSON struct { // semi-axes
		Major   number `json:"major_m"`
		Minor   number `json:"minor_m"`
		Heading number `json:"heading_deg"`
	}
	shownJSON struct {
		summaryJSON
		Importance []importanceJSON `json:"importance"`
	}
	importanceJSON struct {
		Input string `json:"input"`
		Rank  number `json:"rank_correlation"`
	}
)

// WriteDispersionJSON writes one object, SI with angles in degrees. Beside the keys that
// are always there it has `shown` with what was asked for by name, `reservoir` when
// quantiles and ranks come from fewer flights than were flown, and `partial` when it was
// cut short.
func WriteDispersionJSON(w io.Writer, s Dispersion) error {
	r := &s.Result
	d := scatterJSON{
		Model:   string(s.Rocket.Flown()),
		Flights: r.Drawn, Invalid: r.Invalid,
		Apogee: newSummary(r.Apogee), RailExit: newSummary(r.RailExit),
		Pressure: words.PressureObject(s.Rocket), Partial: r.Partial,
	}
	d.Landing = s.landings(r.Landed, r.Outside, r.Landing)
	d.DrogueOnly = s.landings(r.DrogueOnly.Landed, r.DrogueOnly.Outside, r.DrogueOnly.Landing)
	d.Ballistic = s.landings(r.Ballistic.Landed, r.Ballistic.Outside, r.Ballistic.Landing)
	d.Importance = newImportance(r.Importance)
	for _, x := range r.Shown {
		of := newSummary(x.Of)
		for _, v := range []*number{&of.Mean, &of.SD, &of.Q05, &of.Q50, &of.Q95} {
			*v = number(results.Machine(x.Row.Dimension, float64(*v)))
		}
		if d.Shown == nil {
			d.Shown = new(machine.Object)
		}
		d.Shown.Add(x.Row.Name, shownJSON{of, newImportance(x.Importance)})
	}
	if reservoir(r) {
		d.Reservoir = r.Reservoir
	}
	return machine.WriteLine(w, d)
}

// landings is nil of none.
func (s *Dispersion) landings(landed, outside int, l study.Ellipse) *landingsJSON {
	if landed == 0 {
		return nil
	}
	out := &landingsJSON{East: number(l.East), North: number(l.North), Landed: landed,
		Ellipse: ellipseJSON{number(l.Major), number(l.Minor), number(machine.Tidy(machine.Degrees(l.Heading)))}}
	if s.Rocket.Field.Bounded() {
		share := number(float64(outside) / float64(landed))
		out.Outside = &share
	}
	return out
}

func newImportance(list []study.Influence) []importanceJSON {
	out := []importanceJSON{}
	for _, i := range list {
		out = append(out, importanceJSON{i.Input.Name, number(i.Rank)})
	}
	return out
}

// newSummary is null throughout when there is nothing to sum up.
func newSummary(s study.Summary) summaryJSON {
	if s.Count == 0 {
		nothing := number(math.NaN())
		return summaryJSON{nothing, nothing, nothing, nothing, nothing}
	}
	return summaryJSON{number(s.Mean), number(s.SD), number(s.Q05), number(s.Q50), number(s.Q95)}
}

// reservoir tells whether quantiles and ranks come from fewer flights than flown.
func reservoir(r *study.Dispersion) bool { return r.Apogee.Count > r.Reservoir }

// WriteDispersionText writes a scatter for people.
func WriteDispersionText(w io.Writer, sc Dispersion) error {
	p := words.In(sc.System)
	r := &sc.Result
	var s sheet
	s.Hung("", fmt.Sprintf("%s: %s drawn at random, seed %d", words.Title(sc.Rocket), words.Plural(r.Drawn, "flight"), sc.Seed))
	s.Line("")
	s.importance(p, sc)
	s.Line("")
	table := results.For(sc.Rocket)
	lines := append([]study.Shown{
		{Row: *table.Must("apogee.height"), Of: r.Apogee}, {Row: *table.Must("rail_exit.speed"), Of: r.RailExit}}, r.Shown...)
	labels, wide := make([]string, len(lines)), 16
	for i, x := range lines {
		labels[i] = strings.TrimSpace(x.Row.Heading() + " " + p.RowUnit(&x.Row))
		wide = max(wide, utf8.RuneCountInString(labels[i]))
	}
	t := page.NewTable(&s, page.Heading{Width: wide, Left: true},
		page.Heading{Lines: []string{"mean"}, Width: 8}, page.Heading{Lines: []string{"deviation"}, Width: 10},
		page.Heading{Lines: []string{"5 %"}, Width: 8}, page.Heading{Lines: []string{"50 %"}, Width: 8},
		page.Heading{Lines: []string{"95 %"}, Width: 8}, page.Heading{Left: true, Width: 5})
	// The sheet takes whatever is written to it.
	_ = t.Head()
	for i := range lines {
		x := &lines[i]
		if x.Of.Count == 0 {
			_ = t.Row(labels[i], "-", "-", "-", "-", "-", gates.WordNone)
			continue
		}
		bare := func(v float64) string { return p.BareRow(&x.Row, v) }
		_ = t.Row(labels[i], bare(x.Of.Mean), bare(x.Of.SD), bare(x.Of.Q05), bare(x.Of.Q50), bare(x.Of.Q95), judgedSpread(sc.Rocket, x))
	}
	for _, x := range r.Shown {
		s.moves(x)
	}
	s.Line("")
	s.whereabouts(p, &sc)
	s.draws(r)
	s.closing(p, sc.Rocket)
	_, err := io.WriteString(w, s.String())
	return err
}

// whereabouts say where flights come down, of every kind.
func (s *sheet) whereabouts(p words.Printer, sc *Dispersion) {
	r := &sc.Result
	s.landings(p, "landings", "", r.Landed, r.Landing)
	if r.Landed > 0 {
		s.Field("outside", Outside(sc.Rocket, r.Outside, r.Landed, p))
	}
	for _, x := range []struct {
		label, says string
		of          study.Fallen
	}{{"no main", "if the main does not open", r.DrogueOnly}, {"ballistic", "if no canopy opens", r.Ballistic}} {
		if b := x.of; b.Landed > 0 {
			s.landings(p, x.label, fmt.Sprintf(", %s (%s)", x.says, words.Plural(b.Landed, "draw")), b.Landed, b.Landing)
			s.Field("outside", Outside(sc.Rocket, b.Outside, b.Landed, p)+"; the farthest "+p.Height(b.Farthest)+" away")
		}
	}
}

// judgedSpread is the verdict on a result in nine flights of ten: the worse of that on
// either end.
func judgedSpread(r *rocket.Rocket, x *study.Shown) string {
	word, level := gates.JudgeResult(r, x.Row.Name, x.Of.Q05)
	if other, worse := gates.JudgeResult(r, x.Row.Name, x.Of.Q95); level == gates.Good && worse != gates.Good {
		word = other
	}
	return word
}

// importance lists what is uncertain, what matters most first.
func (s *sheet) importance(p words.Printer, sc Dispersion) {
	t := page.NewTable(s,
		page.Heading{Lines: []string{"uncertain"}, Left: true, Width: 26},
		page.Heading{Lines: []string{"value"}, Width: 12},
		page.Heading{Lines: []string{"one", "deviation"}, Width: 12},
		page.Heading{Lines: []string{"rank correlation", "with apogee"}})
	_ = t.Head()
	rows := sc.Result.Importance
	if len(rows) == 0 { // nothing flew; what would have been drawn is still of use
		for _, d := range sc.Spreads {
			rows = append(rows, study.Influence{Input: d.Input, SD: d.SD, Rank: math.NaN()})
		}
	}
	if len(rows) == 0 {
		s.Line("  nothing: every flight is the same")
	}
	for _, i := range rows {
		c := Column{i.Input, sc.unitOf(i.Input.Name, i.Input.Unit)}
		rank := "-"
		if !math.IsNaN(i.Rank) {
			rank = hundredths(i.Rank)
		}
		v, _ := i.Input.Get(sc.Rocket)
		_ = t.Row(i.Input.Name, c.text(v, p, valueDigits), p.Difference(i.SD, c.Unit), rank)
	}
}

// hundredths is a correlation to two decimals; what rounds to nothing has no sign.
func hundredths(v float64) string {
	text := strconv.FormatFloat(v, 'f', 2, 64)
	if text == "-0.00" {
		return text[1:]
	}
	return text
}

// moves says which inputs move a result most.
func (s *sheet) moves(x study.Shown) {
	const most = 3
	var parts []string
	for _, i := range x.Importance {
		if len(parts) < most && !math.IsNaN(i.Rank) {
			parts = append(parts, i.Input.Name+" "+hundredths(i.Rank))
		}
	}
	if len(parts) > 0 {
		s.Hung("  ", x.Row.Label+" goes with (rank correlation): "+strings.Join(parts, ", ")+".")
	}
}

// unitOf is the unit of a spread's input, else the one given.
func (s *Dispersion) unitOf(name string, other quantity.Unit) quantity.Unit {
	for i, d := range s.Spreads {
		if d.Input.Name == name && i < len(s.Units) {
			return s.Units[i]
		}
	}
	return other
}

// Outside says how many of the landings are outside the field.
func Outside(r *rocket.Rocket, outside, landed int, p words.Printer) string {
	if !r.Field.Bounded() {
		return gates.WordUnknown + ": neither field.radius nor field.boundary is given"
	}
	text := fmt.Sprintf("%d of %d", outside, landed)
	if outside > 0 {
		text += " (" + words.Share(outside, landed) + ") " + gates.WordFar
	}
	switch radius := r.Field.Radius; {
	case radius == 0:
		return text + ", beyond the field's boundary"
	case len(r.Field.Boundary) > 0:
		return text + ", beyond the field's boundary or " + p.Given(radius, "m")
	default:
		return text + ", beyond the field's " + p.Given(radius, "m")
	}
}

// landings says where flights come down.
func (s *sheet) landings(p words.Printer, label, of string, landed int, l study.Ellipse) {
	if landed == 0 {
		s.Field(label, gates.WordNone)
		return
	}
	where := "the pad"
	if d := math.Hypot(l.East, l.North); d >= 0.5 {
		where = p.Height(d) + " " + words.Bearing(l.East, l.North) + " of the pad"
	}
	s.Field(label, "around "+where+of)
	if !(l.Major > 0) {
		s.Field("90 % of them", gates.WordUnknown+": too few, or all in one place, for an ellipse")
		return
	}
	s.Field("90 % of them", p.Ellipse(l))
}

// draws counts what did not fly, and says how exact the figures are.
func (s *sheet) draws(r *study.Dispersion) {
	if r.Invalid > 0 {
		text := fmt.Sprintf("%d of %d draws made no rocket and are left out", r.Invalid, r.Drawn)
		if r.FirstInvalid != nil {
			text += "; the first: " + page.OneLine(r.FirstInvalid)
		}
		s.Field("no rocket", text)
	}
	if r.Grounded > 0 {
		s.Field("rail exit", fmt.Sprintf("%s in %d of %d", gates.WordNever, r.Grounded, r.Drawn))
	}
	if reservoir(r) {
		s.Field("quantiles", fmt.Sprintf("and correlations from a reservoir of %d of the flights, drawn with the seed", r.Reservoir))
	}
	if r.Partial {
		s.Field("scatter", fmt.Sprintf("%s: %d of %d flights", gates.WordPartial, r.Drawn, r.Asked))
	}
}

// LandingsCSV writes landings as they come: the draw (from 0), its apogee, and where
// it came down from the pad. Close writes what is held back.
type LandingsCSV struct{ w *bufio.Writer }

// NewLandingsCSV writes the header.
func NewLandingsCSV(w io.Writer) *LandingsCSV {
	b := bufio.NewWriterSize(w, landingsBuffer)
	b.WriteString("draw,apogee_m,east_m,north_m\n")
	return &LandingsCSV{b}
}

// landingsBuffer is how much of a stream of landings is written at once, bytes.
const landingsBuffer = 1 << 12

// Add writes one landing; those of which canopies stayed shut are for the map.
func (c *LandingsCSV) Add(l study.LandingPoint) error {
	if l.Kind != study.Planned {
		return nil
	}
	b := strconv.AppendInt(c.w.AvailableBuffer(), int64(l.Draw), 10)
	for _, v := range [...]float64{l.Apogee, l.East, l.North} {
		b = machine.AppendNumber(append(b, ','), v)
	}
	_, err := c.w.Write(append(b, '\n'))
	return err
}

// Close writes the rest.
func (c *LandingsCSV) Close() error { return c.w.Flush() }
