package certification

import (
	"ullage/sim/ground"
	"ullage/sim/plan"
	"ullage/sim/report/page"
	"ullage/sim/report/words"
)

// asks is what a flight usually asks by itself.
func (s *sheet) asks(f plan.CertifyingFlight) []string {
	near, far := "", ""
	if c, ok := ground.ClearingFor(f.Above + 1); ok {
		near = s.Farther(c.People)
	}
	if c, ok := ground.ClearingFor(f.Most); ok {
		far = s.Farther(c.People)
	}
	if near != far {
		near += " to " + far
	}
	before := "The first is held, and the written test (code, law, motors, stability) passed before the flight."
	if f.Name == plan.CertifyingFlights()[0].Name {
		before = "Usually no written test before it; the code is known."
	}
	return []string{
		"One motor of " + classes(f) + ", above " + s.Impulse(f.Above) + " up to " + s.Impulse(f.Most) + ", on the body's list of certified motors; people " + near + " away by its class (NFPA 1127, from memory).",
		before,
	}
}

// asked is what both usually ask.
func asked() []string {
	return []string{
		"The flyer is of age, a member of the body that certifies, built the rocket and can say how; name and a way to reach the flyer stand on it.",
		"Balance point with the motor in and centre of pressure are known and marked on the body; the margin is shown.",
		"A range with the height and the ground for it. Above 125 g of propellant or 1.5 kg at lift-off it has a waiver for the flight in the US (14 CFR 101, from memory).",
		"A witness whom the body accepts looks at it before, sees the flight, and looks at it after, on the same day.",
		"It flies straight, the canopy opens, all of it comes down together and inside the field, the motor's case still in it.",
		"It comes back fit to fly again: a scuff is no matter; a broken fin, a torn tube or a canopy that did not open is a fail.",
	}
}

// bring is what to take along, by what the rocket has.
func (s *sheet) bring() []string {
	r := s.rocket
	out := []string{
		"This page and the card (ullage card, on power=motor), printed; a pen.",
		"Membership, certification so far, a proof of age; for the second flight the test, passed.",
		"The motor in its packing with its papers, its igniter apart from it, what the delay is set with, the case's tools.",
		"What opens the canopies with fresh batteries, and what switches it from outside.",
		"Scales, a knife edge to balance on, a tape: the witness may ask for mass, balance and margin.",
		"Spare line, pin, cloth that shields from the charge; tape, glue, knife.",
	}
	if r.MotorMount == nil || r.MotorMount.Retainer == 0 {
		out = append(out, "A retainer, tried with this motor: the file says nothing of one ("+words.Retainer+").")
	}
	if r.Chamber != nil || r.Water != nil {
		out = append(out, "What keeps the chamber empty, dry and open to the air on a motor; the record of its proof, for whoever asks.")
	}
	if r.Chamber != nil && r.Chamber.Logbook != "" {
		out = append(out, "The logbook.")
	}
	return append(out, "Water, and what a grass fire is put out with, where the range has none.")
}

// result are the lines to write on.
func (s *sheet) result() page.Section {
	x := page.Section{Name: "Witness and result", Begins: true}
	const line, choice = "______________________________", "[ ] yes   [ ] no"
	name := s.rocket.Flyer.Name
	if name == "" {
		name = line
	}
	held := s.rocket.Flyer.Certification
	if held == "" {
		held = line
	}
	x.Add(page.Grid{Heads: page.AllWords("", ""), Rows: [][]string{
		{"flyer", page.Printable(name)}, {"certified", page.Printable(held)}, {"flight", "[ ] first   [ ] second"}, {"date, range", line}, {"motor, delay", line},
		{"looked at before", choice}, {"stable", choice}, {"canopy opened", choice}, {"down in field", choice}, {"case still in", choice}, {"fit to fly again", choice},
		{"result", "[ ] passed   [ ] not passed"}, {"because", line}, {"witness", line}, {"number, level", line}, {"signature", line}, {"range officer", line},
	}})
	return x
}
