package chart

import (
	"fmt"
	"math"
	"strings"

	"ullage/cmd/ullage/chart/page"
	"ullage/sim/quantity"
	"ullage/sim/report"
	textpage "ullage/sim/report/page"
	"ullage/sim/report/words"
	"ullage/sim/study"
)

// MostLandings is how many landings a page shows. They are drawn independently of
// each other, so the first ones stand for all.
const MostLandings = 4000

// MostFallen is the same of those on which canopies stay shut, whose signs are larger.
const MostFallen = 200

// Landings gathers the first landings of a scatter, and those of its draws on which no canopy
// opens.
type Landings struct{ east, north, fallEast, fallNorth, drogueEast, drogueNorth []float64 }

// Add takes a landing.
func (l *Landings) Add(p study.LandingPoint) error {
	switch {
	case p.Kind == study.DrogueOnly && len(l.drogueEast) < MostFallen:
		l.drogueEast, l.drogueNorth = append(l.drogueEast, p.East), append(l.drogueNorth, p.North)
	case p.Kind == study.Falling && len(l.fallEast) < MostFallen:
		l.fallEast, l.fallNorth = append(l.fallEast, p.East), append(l.fallNorth, p.North)
	case p.Kind != study.Planned:
	case len(l.east) < MostLandings:
		l.east, l.north = append(l.east, p.East), append(l.north, p.North)
	}
	return nil
}

// Dispersion is a page of where the flights of a scatter come down: seen from above,
// with the pad, the field, the mean and the ellipse that holds 90 % of them, and where they
// come down with no canopy.
func Dispersion(s report.Dispersion, landings *Landings, look Look) *page.Page {
	r := &s.Result
	p := look.above(&s, landings)
	p.Beside = look.beside(s, len(landings.east))
	what := fmt.Sprintf("where %d flights land", r.Landed)
	if r.Landed == 1 {
		what = "where 1 flight lands"
	}
	if r.Partial {
		what += fmt.Sprintf(" (partial: %d of %d drawn)", r.Drawn, r.Asked)
	}
	return &page.Page{
		Paper: look.Paper,
		Title: title(s.Rocket, what),
		Lines: []string{look.drive(s.Rocket), look.day(s.Rocket)},
		Rows:  []page.Row{{Panels: []page.Panel{p}}},
		Notes: look.doubts(s),
	}
}

// fieldPen draws where the field ends.
const fieldPen = page.Pen(1)

// ellipsePens draw the ellipses of each kind of landing.
var ellipsePens = [...]page.Pen{study.Planned: 0, study.DrogueOnly: 2, study.Falling: 3}

// above is the ground seen from above, with all that comes down on it.
func (l Look) above(s *report.Dispersion, landings *Landings) page.Panel {
	r := &s.Result
	u := l.unit("m")
	wind, from := s.Rocket.Wind.Surface()
	p := page.Panel{
		X:       page.Axis{Title: "east of the pad", Unit: u.Name},
		Y:       page.Axis{Title: "north of the pad", Unit: u.Name},
		Equal:   true,
		Points:  []page.Point{{Sign: page.Triangle, Label: "pad"}},
		Compass: &page.Compass{Wind: wind > 0, WindFrom: from, Label: l.nearGround(s.Rocket)},
	}
	for _, x := range []struct {
		east, north []float64
		sign        page.Sign
		label       string
	}{{landings.east, landings.north, page.Dot, "landing"}, {landings.drogueEast, landings.drogueNorth, page.Cross, "the main does not open"},
		{landings.fallEast, landings.fallNorth, page.Plus, "no canopy opens: ballistic"}} {
		if len(x.east) > 0 || x.sign == page.Dot {
			p.Dots = append(p.Dots, page.Dots{X: inUnit(x.east, u), Y: inUnit(x.north, u), Sign: x.sign, Label: x.label})
		}
	}
	if e := r.Landing; r.Landed > 0 {
		p.Points = append(p.Points, page.Point{X: u.FromSI(e.East), Y: u.FromSI(e.North), Sign: page.Target, Label: "mean"})
	}
	line := func(x, y []float64, pen page.Pen, label string) {
		p.Lines = append(p.Lines, page.Line{X: inUnit(x, u), Y: inUnit(y, u), Pen: pen, Label: label, Key: true})
	}
	for kind, label := range []string{study.Planned: "ellipse that holds 90 %", study.DrogueOnly: "90 %, no main", study.Falling: "90 %, ballistic"} {
		if k := r.Kinds()[kind]; k.Landed > 0 && k.Landing.Major > 0 {
			x, y := ellipse(k.Landing)
			line(x, y, ellipsePens[kind], label)
		}
	}
	field := &s.Rocket.Field
	if radius := field.Radius; radius > 0 {
		x, y := ellipse(study.Ellipse{Major: radius, Minor: radius})
		line(x, y, fieldPen, "field, radius "+l.given(radius, "m"))
	}
	if b := field.Boundary; len(b) > 0 {
		var x, y []float64
		for i := range len(b) + 1 {
			x, y = append(x, b[i%len(b)].East), append(y, b[i%len(b)].North)
		}
		line(x, y, fieldPen, "field's boundary")
	}
	p.Rings = rings(reach(landings, r.Landing), u)
	return p
}

// ellipse is the outline of an ellipse. Its heading counts from north, clockwise.
func ellipse(e study.Ellipse) (east, north []float64) {
	const corners = 180
	sinH, cosH := math.Sincos(e.Heading)
	for i := range corners + 1 {
		sin, cos := math.Sincos(2 * math.Pi * float64(i) / corners)
		along, across := e.Major*cos, e.Minor*sin
		east = append(east, e.East+along*sinH+across*cosH)
		north = append(north, e.North+along*cosH-across*sinH)
	}
	return east, north
}

// reach is the distance from the pad of the farthest landing, m.
func reach(l *Landings, e study.Ellipse) float64 {
	far := math.Hypot(e.East, e.North)
	for i := range l.east {
		far = math.Max(far, math.Hypot(l.east[i], l.north[i]))
	}
	for i := range l.drogueEast {
		far = math.Max(far, math.Hypot(l.drogueEast[i], l.drogueNorth[i]))
	}
	for i := range l.fallEast {
		far = math.Max(far, math.Hypot(l.fallEast[i], l.fallNorth[i]))
	}
	return far
}

// rings are circles around the pad at two to five round distances, the last of them
// about as far as anything lands.
func rings(far float64, u quantity.Unit) []page.Ring {
	shown := u.FromSI(far)
	if !(shown > 0) {
		return nil
	}
	step := math.Pow(10, math.Floor(math.Log10(shown)))
	for _, m := range []float64{0.2, 0.5, 1, 2} {
		if shown/(m*step) <= 5.5 {
			step *= m
			break
		}
	}
	var out []page.Ring
	for i := 1; float64(i)*step <= shown*1.05; i++ {
		out = append(out, page.Ring{Radius: float64(i) * step, Label: given(u.ToSI(float64(i)*step), u, digits)})
	}
	return out
}

// beside is what a scatter comes to, in lines of text.
func (l Look) beside(s report.Dispersion, drawn int) []string {
	r := &s.Result
	var out []string
	if r.Landed > drawn {
		out = append(out, fmt.Sprintf("(%d of %d landings are drawn)", drawn, r.Landed))
	}
	if e := r.Landing; r.Landed > 0 {
		out = append(out, "", "mean "+l.text(math.Hypot(e.East, e.North), "m")+" from the pad, towards "+bearing(e.East, e.North))
		if e.Major > 0 {
			out = append(out, "90 % "+words.In(l.System).Ellipse(e))
		}
	}
	if p := words.In(l.System); r.Landed > 0 {
		out = append(out, "outside: "+report.Outside(s.Rocket, r.Outside, r.Landed, p))
		if b := r.DrogueOnly; b.Landed > 0 {
			out = append(out, fmt.Sprintf("main shut (%d draws): outside %s; the farthest %s away",
				b.Landed, report.Outside(s.Rocket, b.Outside, b.Landed, p), l.text(b.Farthest, "m")))
		}
		if b := r.Ballistic; b.Landed > 0 {
			out = append(out, "", fmt.Sprintf("ballistic (%d draws with no canopy opening): outside %s; the farthest %s away",
				b.Landed, report.Outside(s.Rocket, b.Outside, b.Landed, p), l.text(b.Farthest, "m")))
		}
	}
	for _, x := range []struct {
		label, unit string
		of          study.Summary
	}{{"apogee", "m", r.Apogee}, {"rail exit", "m/s", r.RailExit}} {
		if x.of.Count > 0 {
			out = append(out, "", fmt.Sprintf("%s %s on average, deviation %s; 5 %% below %s, 5 %% above %s", x.label,
				l.text(x.of.Mean, x.unit), l.text(x.of.SD, x.unit), l.text(x.of.Q05, x.unit), l.text(x.of.Q95, x.unit)))
		}
	}
	var uncertain []string
	for i, x := range s.Spreads {
		if i == mostSpreads {
			uncertain = append(uncertain, fmt.Sprintf("and %d more", len(s.Spreads)-i))
			break
		}
		u := x.Input.Unit
		if i < len(s.Units) {
			u = s.Units[i]
		}
		u = l.System.Unit(u)
		u.Offset = 0 // a difference
		uncertain = append(uncertain, strings.ReplaceAll(x.Input.Name+" "+given(x.SD, u, 2), " ", textpage.Glue))
	}
	if len(uncertain) > 0 {
		out = append(out, "", "Uncertain, one standard deviation: "+strings.Join(uncertain, ", "))
	}
	return append(out, "", fmt.Sprintf("%d flights drawn, seed %d", r.Drawn, s.Seed))
}

// mostSpreads is how many uncertain inputs a page lists: with every kind of landing above them, what the compass leaves room for.
const mostSpreads = 9

// bearing is a compass direction in degrees.
func bearing(east, north float64) string {
	degrees := math.Mod(math.Atan2(east, north)*180/math.Pi+360, 360)
	return fmt.Sprintf("%.0f°", math.Mod(math.Round(degrees), 360))
}

// doubts tell of draws that are not among the landings, and the cautions.
func (l Look) doubts(s report.Dispersion) []string {
	r := &s.Result
	var out []string
	if r.Invalid > 0 {
		out = append(out, fmt.Sprintf("%d of %d draws made no rocket; the first: %v.", r.Invalid, r.Drawn, r.FirstInvalid))
	}
	if r.Grounded > 0 {
		out = append(out, fmt.Sprintf("%d of %d flights did not leave the rail.", r.Grounded, r.Drawn))
	}
	if n := r.Drawn - r.Invalid - r.Landed; n > 0 {
		out = append(out, fmt.Sprintf("%d of %d flights did not land.", n, r.Drawn))
	}
	if max(r.DrogueOnly.Landed, r.Ballistic.Landed) > MostFallen {
		out = append(out, fmt.Sprintf("Of those on which canopies stay shut the first %d are drawn.", MostFallen))
	}
	wind := "Wind that changes with time, thermals"
	if s.Rocket.Wind.Turbulence > 0 {
		wind = "Thermals"
	}
	out = append(out, "The ellipse holds 90 % if landings are normally distributed. "+wind+" and what is not in the list of uncertainties are not in it.")
	return append(out, l.closing(s.Rocket))
}
