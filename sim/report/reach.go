package report

import (
	"fmt"
	"io"
	"strconv"
	"strings"

	"ullage/sim/plan"
	"ullage/sim/quantity"
	"ullage/sim/report/machine"
	"ullage/sim/report/words"
	"ullage/sim/rocket"
	"ullage/sim/study"
)

// dispersion is where one drive comes down, as a scatter has it.
func dispersion(x *plan.Reach, sys quantity.System) Dispersion {
	return Dispersion{Rocket: x.Rocket, Spreads: x.Spreads, Seed: x.Seed, Result: x.Scatter, System: sys}
}

// WriteReachText writes where a rocket may come down, drive by drive, for people.
func WriteReachText(w io.Writer, all []plan.Reach, sys quantity.System) error {
	p := words.In(sys)
	var s sheet
	r := all[0].Rocket
	s.Hung("", fmt.Sprintf("%s: where it may come down, %s drawn at random, seed %d", words.Name(r), words.Plural(all[0].Scatter.Drawn, "flight"), all[0].Seed))
	s.Line("")
	s.Field("pad", PadText(r))
	s.Field("wind", strings.TrimPrefix(p.DayWind(r), "wind "))
	s.Field("field", p.FieldText(&r.Field))
	for i := range all {
		x := &all[i]
		s.Line("")
		s.Line("  on " + string(x.Rocket.Power))
		d := dispersion(x, sys)
		s.whereabouts(p, &d)
		s.Field("clear", p.Clear(x.Clear, x.Rocket.Power))
		s.draws(&x.Scatter)
		if text := p.Beyond(x.Rocket); text != "" {
			s.Hung("! ", text)
		}
	}
	s.Line("")
	s.Hung("  ", words.Direction)
	for i := range all {
		for _, c := range words.Cautions(all[i].Rocket.Power) {
			if i == 0 || c != words.CommonCaution {
				s.Hung("  ", c)
			}
		}
	}
	_, err := io.WriteString(w, s.String())
	return err
}

// PadText is where the pad is on the map.
func PadText(r *rocket.Rocket) string {
	if !r.Site.Located {
		return "latitude and longitude are not given"
	}
	degrees := func(v float64) string { return strconv.FormatFloat(v, 'f', -1, 64) + "°" }
	return degrees(r.Site.Latitude) + " north, " + degrees(r.Site.Longitude) + " east"
}

type (
	reachJSON struct {
		Flights int                `json:"flights"`
		Seed    uint64             `json:"seed"`
		Pad     *padJSON           `json:"pad"` // null without latitude and longitude
		Field   fieldJSON          `json:"field"`
		Drives  []reachOnDriveJSON `json:"drives"`
	}
	padJSON struct {
		Latitude  number `json:"latitude_deg"`
		Longitude number `json:"longitude_deg"`
		Elevation number `json:"elevation_m"`
	}
	fieldJSON struct {
		Radius *number `json:"radius_m"`
		Area   *number `json:"boundary_area_m2"`
	}
	reachOnDriveJSON struct {
		Drive      string        `json:"drive"`
		Landing    *landingsJSON `json:"landing"`
		DrogueOnly *landingsJSON `json:"drogue_only"`
		Ballistic  *landingsJSON `json:"ballistic"`
		Farthest   []farthest    `json:"farthest"`
		Clear      clearJSON     `json:"clear_distance"`

		Pressure *machine.Object `json:"pressure"` // null on a motor
	}
	farthest struct {
		Kind string `json:"kind"`
		Away number `json:"away_m"`
	}
)

// WriteReachJSON writes where a rocket may come down as one object, SI units, angles in degrees.
func WriteReachJSON(w io.Writer, all []plan.Reach) error {
	r := all[0].Rocket
	doc := reachJSON{Flights: all[0].Scatter.Drawn, Seed: all[0].Seed, Drives: []reachOnDriveJSON{}}
	if at := r.Site; at.Located {
		doc.Pad = &padJSON{number(at.Latitude), number(at.Longitude), number(at.Elevation)}
	}
	if v := r.Field.Radius; v > 0 {
		doc.Field.Radius = machine.Pointer(v)
	}
	if b := r.Field.Boundary; len(b) > 0 {
		doc.Field.Area = machine.Pointer(b.Area())
	}
	for i := range all {
		x := &all[i]
		d := dispersion(x, quantity.Metric)
		out := reachOnDriveJSON{Drive: string(x.Rocket.Power), Clear: newClear(x.Clear), Farthest: []farthest{}, Pressure: words.PressureObject(x.Rocket)}
		var told [3]*landingsJSON
		for kind, k := range x.Scatter.Kinds() {
			told[kind] = d.landings(k.Landed, k.Outside, k.Landing)
			if k.Landed > 0 {
				out.Farthest = append(out.Farthest, farthest{study.LandingKind(kind).String(), number(k.Farthest)})
			}
		}
		out.Landing, out.DrogueOnly, out.Ballistic = told[study.Planned], told[study.DrogueOnly], told[study.Falling]
		doc.Drives = append(doc.Drives, out)
	}
	return machine.WriteDocument(w, doc)
}
