package flown

import (
	"context"
	"math"
	"slices"
	"strings"

	"gonum.org/v1/gonum/mathext"

	"ullage/sim/flown/logbook"
	"ullage/sim/quantity"
	"ullage/sim/results"
	"ullage/sim/rocket"
	"ullage/sim/rocketfile"
	"ullage/sim/study"
)

// FewestFlights tell anything of how far flights are apart.
const FewestFlights = 3

// Daily tells whether an uncertain input is another one on every flight: what the day sets, the drive that
// burns once, and the moment of an opening. All else is the rocket's own, unknown but the same each time.
func Daily(name string) bool {
	return slices.Contains(settingsOf(), name) || strings.Contains(name, ".deploy.") ||
		slices.ContainsFunc([]string{"motor.", "wind.", "gust.", "site.", "rail."}, func(p string) bool { return strings.HasPrefix(name, p) })
}

// Outcome is one result of one flight with the standard deviations of its prediction, SI: by what
// all flights of the rocket share, and by what is another one on every flight (see Daily).
type Outcome struct {
	Measured, Predicted float64
	Common, Daily       float64
}

// Past is what some flights say of the uncertainties behind one result.
type Past struct {
	Row     results.Row
	Flights int
	// Offset is by how much the measured are off in the mean, and OffsetSD the standard deviation
	// that it should have; Between is the deviation from flight to flight beside that, and
	// BetweenSD the one predicted. SI.
	Offset, OffsetSD   float64
	Between, BetweenSD float64
	// Factor is what the uncertainties would have to be multiplied with to give both, and Low to
	// High what 90 % of such flights leave open.
	Factor, Low, High float64
	// The same by the scatter from flight to flight alone; NaN where next to nothing that is uncertain
	// differs from flight to flight, so that the mean alone counts.
	BetweenFactor, BetweenLow, BetweenHigh float64
}

// nextToNothing is what from flight to flight is expected beside what is shared, below which only the mean
// is judged: such a scatter is how the log is read and what the model leaves out (a choice of this program's,
// no source).
const nextToNothing = 0.1

// InMean and InScatter tell where uncertainties that are too narrow show: in what all flights share, or in
// what is another one each time.
func (p *Past) InMean() bool { return math.Abs(p.Offset) > 1.645*p.OffsetSD }

// InScatter is the other one.
func (p *Past) InScatter() bool { return p.BetweenLow > 1 }

// Past verdicts: whether 1 is between Low and High.
const (
	TooNarrow = "too narrow"
	TooWide   = "too wide"
	Agrees    = "agrees"
)

// Word is the verdict on the uncertainties behind the result.
func (p *Past) Word() string {
	switch {
	case p.Low > 1:
		return TooNarrow
	case p.High < 1:
		return TooWide
	}
	return Agrees
}

// Judge holds the deviations of three and more flights against those predicted. What all flights
// share moves all of them alike, each in proportion to its own deviation by it: d_i = c_i·A + s_i·B_i
// with A and B_i standard normal. A is found by weighted least squares, its square over its own
// variance, 1 + 1/Σ(c_i/s_i)², is χ² of one degree, and the weighted squares left over are χ² of n − 1
// beside it; so the sum over k² is χ² of n, where k is what all deviations would have to
// be multiplied with, and k lies between √(sum/χ²(95 %)) and √(sum/χ²(5 %)) with 90 %
// (textbooks; the parting of squares is Cochran's theorem, 1934, from memory). False of fewer
// flights, and where nothing is another one from flight to flight.
func Judge(row results.Row, of []Outcome) (Past, bool) {
	n := float64(len(of))
	p := Past{Row: row, Flights: len(of)}
	if len(of) < FewestFlights {
		return p, false
	}
	shared, prior := false, 1.0
	for _, o := range of {
		if !(o.Daily > 0) || math.IsNaN(o.Measured-o.Predicted) || math.IsNaN(o.Common) {
			return p, false
		}
		shared = shared || o.Common > 0
	}
	shape := func(o Outcome) float64 { return o.Common }
	if !shared { // an offset is then none that anything predicts
		shape, prior = func(Outcome) float64 { return 1 }, 0
	}
	weight, sum, mean, daily, common := 0.0, 0.0, 0.0, 0.0, 0.0
	for _, o := range of {
		s2 := o.Daily * o.Daily
		weight += shape(o) * shape(o) / s2
		sum += shape(o) * (o.Measured - o.Predicted) / s2
		mean += shape(o) / n
		daily += s2 / n
		common += o.Common * o.Common / n
	}
	a := sum / weight
	left := 0.0
	for _, o := range of {
		e := (o.Measured - o.Predicted - shape(o)*a) / o.Daily
		left += e * e
	}
	variance := prior + 1/weight
	p.Offset, p.OffsetSD = a*mean, math.Sqrt(variance)*mean
	p.Between, p.BetweenSD = math.Sqrt(left/(n-1)*daily), math.Sqrt(daily)
	if daily < nextToNothing*nextToNothing*common {
		p.Factor, p.Low, p.High = factor(a*a/variance, 1)
		p.BetweenFactor, p.BetweenLow, p.BetweenHigh = math.NaN(), math.NaN(), math.NaN()
		return p, true
	}
	p.Factor, p.Low, p.High = factor(left+a*a/variance, n)
	p.BetweenFactor, p.BetweenLow, p.BetweenHigh = factor(left, n-1)
	return p, true
}

// factor is the root of a sum of squares over its degrees of freedom, and between what it lies.
func factor(sum, degrees float64) (mid, low, high float64) {
	return math.Sqrt(sum / degrees), math.Sqrt(sum / chiSquared(degrees, 0.95)), math.Sqrt(sum / chiSquared(degrees, 0.05))
}

// chiSquared is a quantile of χ²: twice that of the gamma distribution of half its degrees.
func chiSquared(degrees, share float64) float64 { return 2 * mathext.GammaIncRegInv(degrees/2, share) }

// Pasts is what flights say of a rocket's uncertainties.
type Pasts struct {
	Flights       int      // that count
	LeftOut       []string // logs that values of the file were fitted to: they would agree by that alone
	Common, Daily []string // the uncertain inputs of both kinds, by their names
	Results       []Past   // of results that every flight tells
}

// flight is one flight whose results are known.
type flight struct {
	rocket              *rocket.Rocket
	measured, predicted map[string]float64
}

// PastOf holds compared logs against the spread of the prediction; nothing is said of fewer than three.
func PastOf(ctx context.Context, file *rocketfile.File, all []*Compared, spreads []study.Spread, o study.Options) (*Pasts, error) {
	p := &Pasts{}
	var flights []flight
	seen := map[string]bool{} // a flight counts once
	for _, c := range all {
		if seen[c.Log.Digest] {
			continue
		}
		seen[c.Log.Digest] = true
		if file.HasDigest(c.Log.Digest) {
			p.LeftOut = append(p.LeftOut, c.Log.Name)
			continue
		}
		f := flight{c.Rocket, map[string]float64{}, map[string]float64{}}
		for _, d := range c.Differences {
			f.measured[d.Row.Name], f.predicted[d.Row.Name] = d.Measured, d.Predicted
		}
		flights = append(flights, f)
	}
	return p, p.judge(ctx, flights, spreads, o)
}

// PastOfBook does the same with the flights of a logbook, against what each was predicted to do as it was
// entered.
func PastOfBook(ctx context.Context, file *rocketfile.File, d Days, spreads []study.Spread, o study.Options) (*Pasts, error) {
	p := &Pasts{}
	var flights []flight
	seen := map[string]bool{}
	water := file.Rocket().Power == rocket.WaterPower
	for i := range d.Entries {
		e := &d.Entries[i]
		if e.Kind != logbook.Flight || len(e.Measured) == 0 || len(e.Predicted) == 0 || water == (e.Motor != "") {
			continue
		}
		if digest, err := d.digest(e); err == nil {
			if seen[digest+e.Part] {
				continue
			}
			seen[digest+e.Part] = true
			if file.HasDigest(digest) {
				p.LeftOut = append(p.LeftOut, e.Log)
				continue
			}
		}
		flies, err := AsEntered(file, e)
		if err != nil {
			return nil, err
		}
		f := flight{flies.Rocket(), map[string]float64{}, map[string]float64{}}
		for name := range e.Measured {
			_, m, told := Entered(f.rocket, e.Measured, name)
			if _, v, ok := Entered(f.rocket, e.Predicted, name); ok && told {
				f.measured[name], f.predicted[name] = m, v
			}
		}
		flights = append(flights, f)
	}
	return p, p.judge(ctx, flights, spreads, o)
}

// Entered is a result of an entry of a logbook, SI, by the row of the rocket's table; false where the rocket
// has no such result or its text is none.
func Entered(r *rocket.Rocket, of map[string]string, name string) (*results.Row, float64, bool) {
	row := results.For(r).Find(name)
	if row == nil || of[name] == "" {
		return nil, 0, false
	}
	q, err := quantity.Parse(strings.TrimSpace(strings.TrimSuffix(of[name], row.Suffix)), row.Dimension)
	return row, q.Value, err == nil
}

// judge flies what is uncertain and judges every result that all flights tell.
func (p *Pasts) judge(ctx context.Context, flights []flight, spreads []study.Spread, o study.Options) error {
	p.Flights = len(flights)
	var parts [2][]study.Spread // shared, daily
	for _, s := range spreads {
		if Daily(s.Input.Name) {
			parts[1], p.Daily = append(parts[1], s), append(p.Daily, s.Input.Name)
		} else {
			parts[0], p.Common = append(parts[0], s), append(p.Common, s.Input.Name)
		}
	}
	if len(flights) < FewestFlights {
		return nil
	}
	rows := told(flights)
	outcomes := make([][]Outcome, len(rows))
	for _, f := range flights {
		var sd [2]map[string]float64
		for k, part := range parts {
			const draws = 300
			flies := f.rocket
			if k == 0 && flies.Wind.Turbulence > 0 { // its gusts are others every time
				flies = flies.Clone()
				flies.Wind.Turbulence = 0
			}
			d, err := study.Disperse(ctx, flies, study.Draws{Spreads: part, Flights: draws, Seed: 1, Show: rows}, o, nil)
			if err != nil {
				return err
			}
			sd[k] = map[string]float64{}
			for i := range d.Shown {
				sd[k][d.Shown[i].Row.Name] = d.Shown[i].Of.SD
			}
		}
		for i := range rows {
			name := rows[i].Name
			outcomes[i] = append(outcomes[i], Outcome{f.measured[name], f.predicted[name], sd[0][name], sd[1][name]})
		}
	}
	for i, row := range rows {
		if past, ok := Judge(row, outcomes[i]); ok {
			p.Results = append(p.Results, past)
		}
	}
	return nil
}

// told are the rows that every flight has measured and predicted, in the order of the table.
func told(flights []flight) []results.Row {
	var rows []results.Row
	for _, g := range results.For(flights[0].rocket) {
		for _, row := range g.Rows {
			if !slices.ContainsFunc(flights, func(f flight) bool { _, ok := f.measured[row.Name]; return !ok }) {
				rows = append(rows, row)
			}
		}
	}
	return rows
}
