package study

import (
	"cmp"
	"context"
	"math"
	"slices"

	"ullage/sim"
	"ullage/sim/fault"
	"ullage/sim/results"
	"ullage/sim/rocket"
	"ullage/sim/rocketfile"
)

// LandingPoint is where one flight of a scatter came down.
type LandingPoint struct {
	Draw        int     // from 0
	East, North float64 // from the pad, m
	Apogee      float64 // m
	Kind        LandingKind
}

// LandingKind is how a flight of a scatter was recovered.
type LandingKind uint8

// As its rules have it; and the same draw without its main, the largest of several canopies, and
// without any.
const (
	Planned LandingKind = iota
	DrogueOnly
	Falling
)

// String is what it is called in maps.
func (k LandingKind) String() string { return [...]string{"landing", "drogue_only", "ballistic"}[k] }

// Summary is the distribution of one number over the flights that have it.
type Summary struct {
	Count         int
	Mean, SD      float64 // over all of them; NaN of too few
	Q05, Q50, Q95 float64 // NaN of none
}

// Influence is how much one uncertain input moves a result.
type Influence struct {
	Input rocketfile.Input
	SD    float64
	Rank  float64 // Spearman's correlation with it, -1 to 1; NaN when there is none
}

// Draws says what is drawn, how often, and what of each flight is summed up beside apogee
// and rail exit speed.
type Draws struct {
	Spreads []Spread
	Flights int
	Seed    uint64
	Show    []results.Row
}

// Shown is the distribution of a result that was asked for, over the flights in which it
// has a value, and what moves it.
type Shown struct {
	Row        results.Row
	Of         Summary
	Importance []Influence // of each uncertain input on it, the greatest first
}

// Dispersion sums up the flights of a scatter.
type Dispersion struct {
	Asked        int         // flights asked for
	Drawn        int         // so far: fewer when interrupted
	Invalid      int         // of these made no valid rocket
	FirstInvalid error       // the first of them
	Grounded     int         // of Drawn did not leave the rail: not in the summaries
	Apogee       Summary     // m
	RailExit     Summary     // m/s
	Landed       int         // left the rail and came down
	Landing      Ellipse     // NaN of fewer than three
	Outside      int         // of Landed came down outside the field; 0 where it is not said how far that reaches
	Farthest     float64     // from the pad of Landed, m
	DrogueOnly   Fallen      // without the main, where there are several canopies
	Ballistic    Fallen      // with no canopy opening
	Importance   []Influence // of each uncertain input on apogee, the greatest first
	Shown        []Shown     // as in Draws.Show
	Reservoir    int         // flights behind quantiles and ranks: all, or ReservoirSize chosen at random
	Partial      bool        // interrupted
}

// Fallen is where the first BallisticFlights of the draws come down when canopies do not open
// that should: their own model up to the top, nose first below it until another one opens, but where that one is the first anyway.
type Fallen struct {
	Landed   int     // 0 where none would open anyway
	Landing  Ellipse // NaN of fewer than three
	Outside  int     // as in Dispersion
	Farthest float64 // from the pad, m
}

// Kinds are where the flights of each LandingKind come down.
func (r *Dispersion) Kinds() [3]Fallen {
	return [...]Fallen{Planned: {r.Landed, r.Landing, r.Outside, r.Farthest}, DrogueOnly: r.DrogueOnly, Falling: r.Ballistic}
}

// BallisticFlights is how many draws fly once more without their canopies: enough for where
// they come down, too few to cost much.
const BallisticFlights = 500

// MaxDispersion bounds the flights of a scatter: beyond it a draw more says nothing.
const MaxDispersion = 100_000_000

// ReservoirSize bounds the flights kept for quantiles and ranks.
const ReservoirSize = 100_000

// outcome is what is kept of one draw.
type outcome struct {
	invalid     error
	exited      bool
	landed      bool
	east, north float64
	falls       [2]struct { // without its main, and without any canopy
		landed      bool
		east, north float64
	}
	figures []float64 // apogee, rail exit speed, what is shown, then the deviates
}

// Disperse flies a rocket with its uncertain inputs drawn from normal
// distributions. A tilt or a wind speed drawn below 0 points the other way; draws
// that make no valid rocket are counted and not replaced. The result depends on the
// seed, not on the workers, and memory does not grow with the flights. landed, if there is
// one, is given every landing in the order of the draws; its first error ends the study.
// One that ends early returns what it has, Partial, beside the error. Bad spreads or
// a bad number of flights are a fault.List.
func Disperse(ctx context.Context, r *rocket.Rocket, draws Draws, o Options, landed func(LandingPoint) error) (Dispersion, error) {
	n := draws.Flights
	if err := checkDispersion(r, draws.Spreads, n); err != nil {
		return Dispersion{Asked: n}, err
	}
	flight := o.unkept()
	rows := summedUp(r, draws.Show)
	width := len(rows) + len(draws.Spreads)
	jobs, each := o.jobs(n)
	newDo := func() func(context.Context, int, *[]outcome) error {
		d := newDrawer(r, draws.Spreads, draws.Seed)
		return func(ctx context.Context, job int, outcomes *[]outcome) error {
			if *outcomes == nil {
				*outcomes = newOutcomes(each, width)
			}
			first := job * each
			for i := range min(each, n-first) {
				if err := d.fly(ctx, first+i, rows, &(*outcomes)[i], flight); err != nil {
					return err
				}
			}
			return nil
		}
	}
	c := collector{result: Dispersion{Asked: n}, field: r.Field, spreads: draws.Spreads, rows: rows, each: landed,
		moments: make([]moments, len(rows)), kept: newReservoir(min(n, ReservoirSize), width, draws.Seed)}
	err := inPlace(ctx, jobs, o.inFlights(n, each), newDo, func(job int, outcomes *[]outcome) error {
		return c.take((*outcomes)[:min(each, n-job*each)])
	})
	return c.finish(err, o), err
}

// newOutcomes are the outcomes of one job, their figures in one piece.
func newOutcomes(n, width int) []outcome {
	outcomes, figures := make([]outcome, n), make([]float64, n*width)
	for i := range outcomes {
		outcomes[i].figures = figures[i*width:][:width]
	}
	return outcomes
}

// The results that are always summed up, first among the figures of a draw.
const (
	apogeeFigure = iota
	exitFigure
	shownFigures // the first of those asked for
)

// summedUp are the results that are summed up.
func summedUp(r *rocket.Rocket, show []results.Row) []results.Row {
	table := results.For(r)
	rows := make([]results.Row, shownFigures, shownFigures+len(show))
	rows[apogeeFigure], rows[exitFigure] = *table.Must("apogee.height"), *table.Must("rail_exit.speed")
	return append(rows, show...)
}

// checkDispersion tells what is wrong before anything flies.
func checkDispersion(r *rocket.Rocket, spreads []Spread, n int) error {
	var faults fault.List
	if n < 1 || n > MaxDispersion {
		faults = append(faults, fault.Fault{Problem: "not a number of flights", Remedy: "ask for 1 to 100000000"})
	}
	for _, s := range spreads {
		if _, err := rocketfile.Find(r, s.Input.Name); err != nil {
			faults = append(faults, fault.In(err)...)
		} else if !(s.SD >= 0) || math.IsInf(s.SD, 0) {
			faults = append(faults, fault.Fault{Key: "spread." + s.Input.Name, Problem: "not a standard deviation", Remedy: "give 0 or more"})
		}
	}
	return append(faults, fault.In(r.Validate())...).Err()
}

// fly draws and flies one rocket.
func (d *drawer) fly(ctx context.Context, i int, rows []results.Row, out *outcome, o sim.Options) error {
	*out = outcome{figures: out.figures}
	rocket, invalid := d.draw(i, out.figures[len(rows):])
	if invalid != nil {
		out.invalid = invalid
		return nil
	}
	fl, err := d.flyer.Fly(ctx, rocket, o)
	if err != nil {
		out.invalid, err = parted(err)
		return err
	}
	out.exited = fl.RailExit.Happened && fl.Apogee.Happened
	out.landed = out.exited && fl.Landing.Happened
	out.east, out.north = fl.Landing.East, fl.Landing.North
	for k := range rows {
		out.figures[k] = rows[k].Of(fl)
	}
	if i >= BallisticFlights || !out.landed {
		return nil
	}
	withoutMain := nothingBefore(fl, mainOf(rocket))
	for k := range out.falls {
		if k == 0 && !shutMain(rocket) || k == 1 && !shutAll(rocket) {
			continue
		}
		o.NoseFirst = k == 1 || withoutMain
		fl, err := d.flyer.Fly(ctx, rocket, o)
		if err != nil {
			return err
		}
		at := &out.falls[k]
		at.landed, at.east, at.north = fl.Landing.Happened, fl.Landing.East, fl.Landing.North
	}
	return nil
}

// mainOf is the largest of several canopies that open; -1 where there are not several.
func mainOf(r *rocket.Rocket) int {
	n, main := 0, -1
	for i := range r.Canopies {
		if r.Canopies[i].Rule(r.Power).Trigger == rocket.Never {
			continue
		}
		if n++; n == 1 || r.Canopies[i].NominalArea() > r.Canopies[main].NominalArea() {
			main = i
		}
	}
	if n < 2 {
		return -1
	}
	return main
}

// shutMain keeps the largest of several canopies shut, and tells whether there are several.
func shutMain(r *rocket.Rocket) bool {
	main := mainOf(r)
	if main >= 0 {
		r.Canopies[main].Water, r.Canopies[main].Motor = rocket.Rule{}, rocket.Rule{}
	}
	return main >= 0
}

// shutAll keeps every canopy of a rocket shut, and tells whether any would have opened.
func shutAll(r *rocket.Rocket) bool {
	any := false
	for i := range r.Canopies {
		any = any || r.Canopies[i].Rule(r.Power).Trigger != rocket.Never
		r.Canopies[i].Water, r.Canopies[i].Motor = rocket.Rule{}, rocket.Rule{}
	}
	return any
}

// collector takes outcomes in the order of the draws.
type collector struct {
	result  Dispersion
	spreads []Spread
	rows    []results.Row
	each    func(LandingPoint) error
	moments []moments // of each row, where it has a value
	landing plane
	falls   [2]plane
	field   rocket.Field
	kept    *reservoir
}

func (c *collector) take(outcomes []outcome) error {
	for i := range outcomes {
		o := &outcomes[i]
		draw := c.result.Drawn
		c.result.Drawn++
		switch {
		case o.invalid != nil:
			if c.result.Invalid++; c.result.FirstInvalid == nil {
				c.result.FirstInvalid = o.invalid
			}
			continue
		case !o.exited:
			c.result.Grounded++
			continue
		}
		for k := range c.moments {
			if v := o.figures[k]; !math.IsNaN(v) {
				c.moments[k].add(v)
			}
		}
		c.kept.add(o.figures...)
		if !o.landed {
			continue
		}
		c.landing.add(o.east, o.north)
		c.result.Outside += c.outside(o.east, o.north)
		c.result.Farthest = math.Max(c.result.Farthest, math.Hypot(o.east, o.north))
		at := LandingPoint{Draw: draw, East: o.east, North: o.north, Apogee: o.figures[apogeeFigure], Kind: Planned}
		if err := c.tell(at); err != nil {
			return err
		}
		for k, b := range c.fallen() {
			fall := &o.falls[k]
			if !fall.landed {
				continue
			}
			at.East, at.North, at.Kind = fall.east, fall.north, [...]LandingKind{DrogueOnly, Falling}[k]
			c.falls[k].add(at.East, at.North)
			b.Outside += c.outside(at.East, at.North)
			b.Farthest = math.Max(b.Farthest, math.Hypot(at.East, at.North))
			if err := c.tell(at); err != nil {
				return err
			}
		}
	}
	return nil
}

// fallen are the two in which canopies stay shut.
func (c *collector) fallen() [2]*Fallen {
	return [2]*Fallen{&c.result.DrogueOnly, &c.result.Ballistic}
}

func (c *collector) tell(at LandingPoint) error {
	if c.each == nil {
		return nil
	}
	return c.each(at)
}

// outside is 1 of a landing beyond the field.
func (c *collector) outside(east, north float64) int {
	if c.field.Bounded() && !c.field.Holds(east, north) {
		return 1
	}
	return 0
}

// finish sums up.
func (c *collector) finish(err error, o Options) Dispersion {
	r := &c.result
	r.Partial = err != nil
	r.Reservoir = c.kept.kept()
	r.Landed = c.landing.x.n
	r.Landing = c.landing.ellipse()
	for k, b := range c.fallen() {
		b.Landed, b.Landing = c.falls[k].x.n, c.falls[k].ellipse()
	}
	// Sorting takes its time, and is nobody's to interrupt.
	all := context.Background()
	o.Progress = nil
	deviates, _ := Collect(all, len(c.spreads), o, func(_ context.Context, k int) (column, error) {
		return newColumn(c.kept.column(len(c.rows) + k)), nil
	})
	figures, _ := Collect(all, len(c.rows), o, func(_ context.Context, k int) (Shown, error) {
		values := c.kept.column(k)
		x := Shown{Row: c.rows[k], Of: summary(&c.moments[k], values)}
		if k != exitFigure {
			x.Importance = c.importance(values, deviates)
		}
		return x, nil
	})
	r.Apogee, r.Importance = figures[apogeeFigure].Of, figures[apogeeFigure].Importance
	r.RailExit = figures[exitFigure].Of
	r.Shown = figures[shownFigures:]
	return *r
}

// column is a row of numbers with its ranks, in which no number is missing.
type column struct{ values, ranks []float64 }

func newColumn(values []float64) column { return column{values, ranks(values)} }

// importance is how much each input moves a result, by the flights kept in which that has
// a value.
func (c *collector) importance(values []float64, deviates []column) []Influence {
	there := defined(values, values)
	byValue := ranks(there)
	var out []Influence
	for k, s := range c.spreads {
		byInput := deviates[k].ranks
		if len(there) < len(values) {
			byInput = ranks(defined(deviates[k].values, values))
		}
		out = append(out, Influence{s.Input, s.SD, rankCorrelation(byInput, byValue)})
	}
	slices.SortStableFunc(out, func(a, b Influence) int {
		return cmp.Compare(size(b.Rank), size(a.Rank))
	})
	return out
}

// defined are the numbers that stand beside a value.
func defined(x, values []float64) []float64 {
	out := make([]float64, 0, len(x))
	for i, v := range values {
		if !math.IsNaN(v) {
			out = append(out, x[i])
		}
	}
	return out
}

// size orders correlations: none at all comes last.
func size(rank float64) float64 {
	if math.IsNaN(rank) {
		return -1
	}
	return math.Abs(rank)
}

func summary(m *moments, kept []float64) Summary {
	sorted := defined(kept, kept)
	slices.Sort(sorted)
	s := Summary{Count: m.n, Mean: m.mean, SD: m.sd(), Q05: quantile(sorted, 0.05), Q50: quantile(sorted, 0.5), Q95: quantile(sorted, 0.95)}
	if m.n == 0 {
		s.Mean = math.NaN()
	}
	return s
}
