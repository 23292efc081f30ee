package checklist

import (
	"fmt"
	"math"
	"slices"
	"sort"

	"ullage/sim/gates"
	"ullage/sim/report/bench"
	"ullage/sim/report/page"
	"ullage/sim/report/words"
	"ullage/sim/rocket"
	"ullage/thrust"
)

// packing is the recovery gear, a canopy at a time as they open.
func (w *writer) packing() {
	r := w.Rocket
	w.stands("packs", "at the bench, with the rocket empty and unarmed: one person; another looks and ticks")
	if m := r.Recovery; m != nil {
		var held []string
		if m.Line > 0 {
			held = append(held, "line "+w.Force(m.Line)+" as rigged")
		}
		if m.Pin > 0 {
			held = append(held, "pin "+w.Size(m.Pin))
		}
		if m.BondArea > 0 {
			held = append(held, "bond "+w.Text(m.BondArea, "cm2"))
		}
		if len(held) > 0 {
			w.fact("mount", page.Listed(held))
		}
	} else {
		w.alarm("The recovery mount is not described: nobody has said what holds the canopies.")
	}
	w.add("Look", "Line, knots, swivels, pin and bond looked at, and pulled at by hand as hard as you can: no fray, no burn, no crack, nothing that moves.")
	if len(r.Canopies) == 0 {
		w.alarm("The file has no canopy: nothing slows the fall.")
	}
	var pack []string
	for _, i := range w.inOrder() {
		c := &r.Canopies[i]
		text := fmt.Sprintf("Canopy %s, %s across: seams, vent and every line looked at, none twisted or crossed. Folded the way it was tried, and slid in and out once by hand: it falls out by its own weight.",
			page.Printable(c.Name), w.Given(c.NominalDiameter(), "m"))
		if w.Rocket.Power == rocket.MotorPower && c.Rule(r.Power).Trigger == rocket.Ejection {
			text += " Shielded from the charge by cloth that does not burn."
		}
		pack = append(pack, text)
	}
	pack = append(pack, "Line laid in bights so that it runs out without a snag; nothing of it near an edge.")
	w.add("Pack, what opens last first", pack...)
	var set []string
	order := w.inOrder()
	slices.Reverse(order) // as they open
	for _, i := range order {
		c := &r.Canopies[i]
		text := "Canopy " + page.Printable(c.Name) + " is set to open at: " + w.Opens(c.Rule(r.Power))
		if d := w.Verdict.Day; d != nil && i < len(d.Canopies) && d.Canopies[i].Opened {
			text += ", " + w.Time(d.Canopies[i].Time) + " into the flight by the prediction, with a load of " + w.Force(d.Canopies[i].Load)
		}
		set = append(set, text+". Read back from what releases it, and tried with nothing live in it.")
	}
	set = append(set,
		"Batteries fresh and measured. What opens canopies is off, and stays off until the rocket is on the rail.",
		"Nose or door: goes on and off by hand, does not fall off when shaken, and is not taped over.")
	w.add("Set", set...)
	w.list.Print = []page.Section{{Name: "Signed", Print: true, Blocks: []page.Block{page.Grid{Heads: page.AllWords("", ""), Rows: [][]string{{"packed by", ""}, {"looked over by", ""}, {"date", ""}}}}}}
}

// inOrder are the canopies as packed: what opens last goes in first.
func (w *writer) inOrder() []int {
	r := w.Rocket
	order := make([]int, len(r.Canopies))
	for i := range order {
		order[i] = i
	}
	sort.SliceStable(order, func(a, b int) bool { return r.Precedes(order[b], order[a]) })
	return order
}

// filling takes a rocket that is go from the bench to its pressure.
func (w *writer) filling() {
	r := w.Rocket
	water := r.Water
	w.pressureAlarm()
	service := r.Service()
	liquid := service.Fill * service.Volume
	figure := w.FillTo(water.Pressure)
	w.fact("water", fmt.Sprintf("%s, %s, %s of the chamber", w.Mass(liquid*water.Density), w.Text(liquid, "mL"), w.Given(water.Fill, "%")))
	w.fact("pressure", figure+" by a gauge open to the air, of "+string(water.Gas))
	filling, _ := bench.Filling(w.Printer, r)
	for _, f := range filling {
		w.fact(f[0], f[1])
	}
	w.fact("proof on record", w.ProofOnRecord(r)+": "+w.ProvedFor(r))
	w.fact("gas stores", w.Energy(w.Pad.Gas.Isentropic))
	w.stands("pump and vent", "at the far end of the filling line, "+w.away()+" away at least: one person")
	w.stands("watches", "beside the pump, eyes on rocket and gauge; writes: one person")
	w.stands("everyone else", w.clearance())
	ground := []string{
		"Proof on record seen, and the card for today: " + w.ProofOnRecord(r) + ".",
		"Wall, bonds, thread and seal looked at: no crack, no white patch, no edge that lifts, nothing dented. Otherwise it is not filled.",
		w.ring() + " as in the leak test, greased, in its groove all around: no cut, no twist, no grit.",
		"The vent of the filling line is tried now: it opens from the far end, and the line falls to nothing. Without a vent that works from afar nothing is pressurised.",
		"A relief valve on the line opens above " + figure + " and below the proof, tried by itself.",
		"Water weighed in: " + w.Mass(liquid*water.Density) + ", on the scales, not by eye.",
	}
	w.add("On the ground, no pressure", ground...)
	onRail := []string{
		"On the rail, buttons run free, tilt and heading set as on the card. Release locked.",
		"Line on, hose laid so that nothing drags at the rocket. It drips nowhere.",
		"What opens the canopies switched on and heard to be ready. Last look; all leave the pad.",
	}
	if t := water.Tube; t != nil {
		onRail = append([]string{"Launch tube, " + w.Size(t.Length) + " by " + w.Size(t.Outer) + ", clean and greased; the nozzle slides down it without force."}, onRail...)
	}
	w.add("On the rail, no pressure", onRail...)
	half := "Pressure slowly to " + w.Rough(water.Pressure/2, "bar") + w.counted(water.Pressure/2) + "; closed off for 1 minute. A gauge that falls, a drip, a sound: vent from where you stand."
	if w.counted(water.Pressure) != "" {
		half += " Far fewer strokes: too much water in it. Far more: a leak, or the pump's. Either: vent."
	}
	w.add("Pressure, from afar",
		"Everyone counted, and standing where the list says. The range officer says go on. From here on nobody goes nearer.",
		half,
		"Slowly to "+figure+w.counted(water.Pressure)+", and no further. The needle steady. Then the launch list, at once: a chamber is not left under pressure, and the sun warms it.",
	)
	w.list.Notes = append(w.list.Notes, "Called off, at any step: vent from where you stand until the gauge reads 0 and stays there; then as the list for one that did not release says.")
	w.warms()
}

// warms is what a gauge shows on the closed chamber as it warms or cools.
func (w *writer) warms() {
	rows, note := w.Closed(w.Rocket)
	g := page.Grid{Heads: []page.GridHead{page.Words("gas and wall at, " + w.Unit("degC"))}, Rows: [][]string{{"gauge shows, " + w.Unit("bar")}}}
	for _, row := range rows {
		g.Heads = append(g.Heads, page.Figures(row.Temperature))
		g.Rows[0] = append(g.Rows[0], row.Gauge)
	}
	x := page.Section{Name: "The gauge on a closed chamber"}
	x.Add(g, page.Prose(note))
	w.list.Print = append(w.list.Print, x)
}

// ring names the seal's ring.
func (w *writer) ring() string {
	if text := bench.Ring(w.Printer, &w.Rocket.Bench.Seal); text != "" {
		return "The seal's ring, " + text + ","
	}
	return "The seal's ring"
}

// counted is what the pump counts up to a pressure; empty without a pump.
func (w *writer) counted(pressure float64) string {
	text := bench.Strokes(w.Rocket, pressure)
	if text == "" {
		return ""
	}
	return ", " + text + " or a few more"
}

// arming takes a motor to the rail.
func (w *writer) arming() {
	r := w.Rocket
	m := r.Motor
	what := w.Impulse(m.Impulse())
	if class := thrust.Class(m.Impulse()); class != "" {
		what = "class " + class + ", " + what
	}
	w.fact("motor", what+", of which only a person certified for it is in charge where the law asks for that")
	delay := "no charge"
	if !math.IsNaN(m.Delay) {
		delay = w.Given(m.Delay, "s")
	}
	w.fact("delay", delay)
	w.stands("arms", "at the pad, beside the rail, never over it: one person, the last to leave")
	w.stands("launcher", "at its desk, launcher off and locked, its key in the pocket of who arms")
	w.stands("everyone else", w.clearance())
	prepare := []string{
		"Motor and delay are those of the card: " + what + ", " + delay + ". Case, nozzle and closures looked at; no igniter in it.",
		"Motor in, retainer on: it slides neither way by hand.",
	}
	if r.MotorMount == nil {
		prepare[1] += " The file has no mount: measured now, that it fits."
	}
	if r.Water != nil || r.Chamber != nil {
		prepare = append(prepare, "Chamber empty, dry and open to the air.")
	}
	prepare = append(prepare, "Nobody smokes, nothing burns, no radio is keyed within "+w.Farther(10)+" of motor and charges (common practice).")
	w.add("At the bench", prepare...)
	w.add("On the rail",
		"On the rail, buttons run free, tilt and heading set as on the card; dry grass cleared, blast plate under it.",
		"Launcher off and locked, leads touched together: no spark. Leads shorted.",
		"What opens the canopies switched on, from the side, and heard to be ready. Should it not be: off again, and back to the bench.",
		"Igniter last: all the way in, held, clips clean and apart, leads tied off.",
		"The one who arms leaves with the key, and gives it to the launcher only when everyone stands where the list says.",
		"Continuity looked at from there. None: the launcher off and locked, and the misfire list.",
	)
}

// launch is from the last look to the landing.
func (w *writer) launch() {
	r := w.Rocket
	w.pressureAlarm()
	d := w.Verdict.Day
	if d != nil {
		w.fact("expected", w.Height(d.Apogee.Height)+" high after "+w.Time(d.Apogee.Time)+w.landing())
	}
	if r.Field.Ceiling > 0 {
		w.fact("cleared for", w.Height(r.Field.Ceiling))
	}
	w.stands("releases", "one person, who does nothing else, "+w.clearance())
	w.stands("watch", "two people beside, eyes on the rocket from release to landing, arm out towards it")
	w.stands("everyone else", "there too, standing and facing it; nobody under its path or downwind")
	w.add("Before",
		"The range officer has said go on, aloud.",
		"Sky: no aircraft, birds or cloud below "+w.ceiling()+". Field: nobody on it. Road, crowd and cars not under the way it may take.",
		w.windStep(),
	)
	count := "Count-down aloud from five; a shout of stop stops it."
	if r.Power == rocket.WaterPower {
		w.add("Release", count, "Release. Not released within a few seconds: hands off, and the list for one that did not release.")
	} else {
		w.add("Launch", count, "Launch, the button held for two seconds. Not lit: launcher off, key out, and the misfire list.")
	}
	w.add("Up and down",
		"Everybody watches it. No canopy by "+w.canopyTime()+": shout heads up, point, and get out from under it; nobody runs towards it.",
		"Watched to the ground; bearing and distance noted. Nobody leaves before the range officer says so.",
	)
}

// landing is where it is expected to come down.
func (w *writer) landing() string {
	d := w.Verdict.Day
	if d == nil || !d.Landing.Happened {
		return ""
	}
	return ", down after " + w.Time(d.Landing.Time) + ", " + w.Height(math.Hypot(d.Landing.East, d.Landing.North)) + " from the pad"
}

func (w *writer) ceiling() string {
	if h := w.Rocket.Field.Ceiling; h > 0 {
		return w.Height(h)
	}
	if d := w.Verdict.Day; d != nil {
		return "twice the height that is expected, " + w.Height(2*d.Apogee.Height)
	}
	return "where it may go"
}

// windStep is in which wind it flies: that up to which it passes, where somebody looked for that.
func (w *writer) windStep() string {
	if w.Most != nil {
		return "Wind measured at the pad, on a row of the card without a mark: " + w.MostWind(w.Most) + ". Otherwise it waits."
	}
	return "Wind on a row of the card without a mark, and never more than " + w.WindSpeed(gates.LimitFor(w.Rocket, gates.LimitWind).Max) + ": otherwise it waits."
}

// canopyTime is when the last canopy should be seen.
func (w *writer) canopyTime() string {
	last := 0.
	if d := w.Verdict.Day; d != nil {
		for i := range d.Canopies {
			if d.Canopies[i].Opened {
				last = math.Max(last, d.Canopies[i].Time)
			}
		}
	}
	if last == 0 {
		return "the top"
	}
	return w.Given(math.Ceil(last)+2, "s") + " of flight"
}

// misfire is what to do about a motor that did not light.
func (w *writer) misfire() {
	w.stands("launcher", "at its desk, key out and in the pocket: one person")
	w.stands("goes to it", "after the wait, alone, from the side, never over motor or nose: one person")
	w.stands("everyone else", "where they stood for the launch; it is live until its igniter is out")
	w.add("At the desk",
		"The button off, the key out, launcher disconnected. Aloud: misfire.",
		sentence(words.Misfire)+" A motor may light late (NFPA 1127 has a minute, from memory).",
		"Everyone stays where they stand. The range officer says who goes, and when.",
	)
	w.add("At the pad",
		"One goes, from the side, face turned away, with the key. Smoke, heat or a hiss: back, and wait half an hour.",
		"Leads off the igniter first, and shorted. Nothing else is touched before that.",
		"What opens the canopies switched off, from the side: it may be armed, and its charge fires where the nose points.",
		"Igniter out, pointing away; looked at. Burnt: the motor is to be looked at by whoever is certified for it. Not burnt: leads, clips, battery.",
		"New igniter: the arming list from its middle on, and from the start if the rocket was taken down.",
	)
	w.add("After", "Three tries and no more: taken down, motor out, on another day. ullage record FILE abort keeps it.")
}

// unreleased is what to do about a rocket that stands under pressure.
func (w *writer) unreleased() {
	r := w.Rocket
	w.pressureAlarm()
	w.alarm("It may release, or burst, at any moment: nobody goes near while the gauge reads anything but 0.")
	w.fact("stored", w.Energy(w.Pad.Gas.Isentropic)+" in the gas at "+w.Given(r.Water.Pressure, "bar"))
	w.stands("valve and vent", "where they stood to fill it, "+w.away()+" away at least: one person")
	w.stands("everyone else", w.clearance())
	all := words.NotReleased(w.away())
	w.add("Under pressure",
		"Hands off the release. Aloud: not released, nobody moves.",
		"Release tried once more from where you stand, if it is made for that; lines are not jerked, nothing is thrown.",
		sentence(all[0]), sentence(all[1]),
		"In the sun it warms up and its pressure rises: "+w.Warmer(10)+" warmer the gauge shows "+w.AtLeast(r.ClosedAt(r.GasTemperature()+10).Gauge)+". Do not wait for a better idea, vent it.",
	)
	w.add("Vented",
		sentence(all[2]),
		"What opens the canopies switched off, from the side, before it is carried.",
		"The release is looked at on the ground, empty, and tried ten times without pressure before it sees any again.",
		"Add one to chamber.cycles, or ullage record FILE abort: it was under pressure.",
	)
}

// recovery is from the landing to the bench.
func (w *writer) recovery() {
	r := w.Rocket
	d := w.Verdict.Day
	if d != nil && d.Landing.Happened {
		w.fact("expected", "down"+w.landing()[len(", down"):])
	}
	w.stands("goes to it", "one person at first, from the side and from behind the nose; others once it is open and off")
	w.stands("everyone else", "on the flight line until the range officer opens the field")
	to := []string{
		"The range officer has opened the field. Nobody climbs trees, roofs or masts for it; near power lines it stays, and the owner of the line is called.",
		"Photograph it as it lies, before anything is moved.",
	}
	if r.Power == rocket.WaterPower {
		to = append(to, "Look from a distance: water still in it and the nozzle blocked or in the mud, it may be under pressure. Then: as the list for one that did not release, from where you stand.",
			"Chamber open and empty before it is carried; nozzle pointing away from everyone.")
	} else {
		to = append(to, "A charge that has not fired is live: switch off what fires it, from the side, before anything else. Hands away from nose and canopy bay until then.",
			"The motor is hot: not touched for ten minutes, not left in dry grass.")
	}
	to = append(to, "What opens the canopies switched off; its log kept.")
	w.add("At the rocket", to...)
	look := []string{
		"Canopies, lines, mount, pin: burns, tears, stretch, anything bent.",
		"Fins by hand, one after the other: nothing moves, no crack at a root. Nose, buttons, guide.",
	}
	if r.Chamber != nil || r.Water != nil {
		look = append(look, "Chamber: blows, dents, white patches, lifted edges, a scratch that catches a fingernail. Any of it, or a landing without a canopy: no pressure before it was proved again.")
	}
	w.add("At the bench", append(look, "ullage record FILE flight, with the log, where it landed and what broke; one to chamber.cycles where no logbook counts. ullage compare FILE LOG tells how the prediction did.")...)
}
