package report

import (
	"io"
	"reflect"
	"strings"

	"ullage/sim"
	"ullage/sim/quantity"
	"ullage/sim/report/machine"
	"ullage/sim/report/page"
	"ullage/sim/rocket"
)

type number = machine.Number

// The document of `fly --json`. Keys are always present; a pointer is null when
// the thing did not happen. SI units, named in the keys.
type (
	document struct {
		Name      string         `json:"name"`
		Power     rocket.Power   `json:"power"`
		LiftOff   liftOffJSON    `json:"lift_off"`
		RailExit  *railExitJSON  `json:"rail_exit"`
		TubeExit  *tubeExitJSON  `json:"tube_exit"`
		LiquidOut *liquidJSON    `json:"liquid_out"`
		Burnout   *momentJSON    `json:"burnout"`
		Apogee    *momentJSON    `json:"apogee"`
		Max       maxJSON        `json:"max"`
		Startup   *startupJSON   `json:"startup"`
		Drive     driveJSON      `json:"drive"`
		Canopies  []canopyJSON   `json:"canopies"`
		Landing   *landingJSON   `json:"landing"`
		Stability *stabilityJSON `json:"stability"`
		Warnings  []warningJSON  `json:"warnings"`
	}
	liftOffJSON struct {
		Mass           number `json:"mass_kg"`
		ThrustToWeight number `json:"thrust_to_weight"`
	}
	railExitJSON struct {
		Time           number `json:"time_s"`
		Speed          number `json:"speed_mps"`
		ThrustToWeight number `json:"thrust_to_weight"`
	}
	tubeExitJSON struct {
		Time  number `json:"time_s"`
		Speed number `json:"speed_mps"`
	}
	momentJSON struct {
		Time   number `json:"time_s"`
		Height number `json:"height_m"`
		Speed  number `json:"speed_mps"`
	}
	liquidJSON struct {
		momentJSON
		Left number `json:"left_kg"`
	}
	maxJSON struct {
		Speed           number `json:"speed_mps"`
		Mach            number `json:"mach"`
		Acceleration    number `json:"acceleration_mps2"`
		DynamicPressure number `json:"dynamic_pressure_pa"`
		Thrust          number `json:"thrust_n"`
	}
	startupJSON struct {
		Thrust       number `json:"thrust_n"`
		Acceleration number `json:"acceleration_mps2"`
	}
	driveJSON struct {
		Impulse  number  `json:"impulse_ns"`
		Average  number  `json:"average_n"`
		BurnTime number  `json:"burn_s"`
		Class    *string `json:"class"`
	}
	canopyJSON struct {
		Name      string  `json:"name"`
		Time      *number `json:"time_s"`
		Height    *number `json:"height_m"`
		Airspeed  *number `json:"airspeed_mps"`
		Load      *number `json:"load_n"`
		LoadBound *number `json:"load_bound_n"`
		Descent   *number `json:"descent_mps"`
	}
	landingJSON struct {
		Time     number `json:"time_s"`
		Speed    number `json:"speed_mps"`
		Vertical number `json:"vertical_mps"`
		Energy   number `json:"energy_j"`
		East     number `json:"east_m"`
		North    number `json:"north_m"`
	}
	warningJSON struct {
		Code sim.WarningCode `json:"code"`
		Text string          `json:"text"`
	}
)

// newDocument gathers a flight's results.
func newDocument(fl *sim.Flight) document {
	r := &fl.Results
	d := document{
		Name:    fl.Rocket.Name,
		Power:   fl.Rocket.Power,
		LiftOff: liftOffJSON{number(r.LiftOffMass), number(r.LiftOffThrustToWeight)},
		Burnout: newMoment(r.Burnout),
		Apogee:  newMoment(r.Apogee),
		Max: maxJSON{
			number(r.Max.Speed), number(r.Max.Mach), number(r.Max.Acceleration),
			number(r.Max.DynamicPressure), number(r.Max.Thrust),
		},
		Drive:    driveJSON{Impulse: number(r.Drive.Impulse), Average: number(r.Drive.Average), BurnTime: number(r.Drive.BurnTime)},
		Canopies: []canopyJSON{},
		Warnings: []warningJSON{},
	}
	if e := r.RailExit; e.Happened {
		d.RailExit = &railExitJSON{number(e.Time), number(e.Speed), number(e.ThrustToWeight)}
	}
	if e := r.TubeExit; e.Happened {
		d.TubeExit = &tubeExitJSON{number(e.Time), number(e.Speed)}
	}
	if r.WaterFlew {
		d.LiquidOut = &liquidJSON{
			momentJSON{number(r.LiquidOut.Time), number(r.LiquidOut.Height), number(r.LiquidOut.Speed)},
			number(r.LiquidLeft),
		}
		d.Startup = &startupJSON{number(r.Startup.Thrust), number(r.Startup.Acceleration)}
	}
	if r.Drive.Class != "" {
		d.Drive.Class = &r.Drive.Class
	}
	for _, c := range r.Canopies {
		d.Canopies = append(d.Canopies, newCanopy(c))
	}
	if l := r.Landing; l.Happened {
		d.Landing = &landingJSON{
			number(l.Time), number(l.Speed), number(l.Vertical), number(l.Energy), number(l.East), number(l.North),
		}
	}
	d.Stability = newStability(fl)
	for _, w := range fl.Warnings {
		d.Warnings = append(d.Warnings, warningJSON{w.Code, WarningText(w, quantity.Metric)})
	}
	return d
}

func newMoment(m sim.Moment) *momentJSON {
	if !m.Happened {
		return nil
	}
	return &momentJSON{number(m.Time), number(m.Height), number(m.Speed)}
}

func newCanopy(c sim.CanopyResult) canopyJSON {
	if !c.Opened {
		return canopyJSON{Name: c.Name}
	}
	return canopyJSON{
		c.Name, machine.Pointer(c.Time), machine.Pointer(c.Height), machine.Pointer(c.Airspeed),
		machine.Pointer(c.Load), machine.Pointer(c.LoadBound), machine.Pointer(c.Descent),
	}
}

// WriteJSON writes a flight's results as one JSON object, indented by two
// spaces, in SI units with angles in degrees. The same flight gives the same
// bytes. Keys are always there; what did not happen is null.
func WriteJSON(w io.Writer, fl *sim.Flight) error {
	return machine.WriteDocument(w, newDocument(fl))
}

// addFlight adds why there is no flight, null when there is one, and the keys of
// `fly --json`, null when there is none.
func addFlight(line *machine.Object, fl *sim.Flight, invalid error) *machine.Object {
	if fl == nil {
		why := "no flight"
		if invalid != nil {
			why = page.OneLine(invalid)
		}
		line.Add("invalid", why)
		for _, key := range documentKeys {
			line.Add(key, nil)
		}
		return line
	}
	line.Add("invalid", nil)
	d := reflect.ValueOf(newDocument(fl))
	for i, key := range documentKeys {
		line.Add(key, d.Field(i).Interface())
	}
	return line
}

// documentKeys are the keys of `fly --json` in order.
var documentKeys = func() []string {
	t := reflect.TypeFor[document]()
	keys := make([]string, t.NumField())
	for i := range keys {
		keys[i], _, _ = strings.Cut(t.Field(i).Tag.Get("json"), ",")
	}
	return keys
}()
