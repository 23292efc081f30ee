package rocketfile

import (
	"path/filepath"
	"slices"
	"strconv"
	"strings"
	"time"

	"ullage/sim/fault"
	"ullage/sim/quantity"
	"ullage/sim/rocket"
)

// Question is one value that is asked for, in the order in which a rocket is built and weighed.
type Question struct {
	Step  string // of the workshop: "tube", "closures", …
	Name  string // the dotted name of the input
	Input Input  // what it is: its help says how to measure it
	Unit  quantity.Unit
	Given bool   // the file has it
	Text  string // as it is
	path  string // of the section, with the name of the item that has to be there
	item  string
	offer func() string
}

// Offer is a usual value that nothing typed takes; empty where nothing typed leaves the question open.
func (q *Question) Offer() string {
	if q.offer == nil {
		return ""
	}
	return q.offer()
}

// ask is a row of the table of questions.
type ask struct {
	step, path, key string
	drive           rocket.Power
	when            func(r *rocket.Rocket) bool
	offer           func(f *File, item int) string // nil: none; never of strength, proof, balance, mass or pressure
}

// usual offers a text.
func usual(text string) func(*File, int) string { return func(*File, int) string { return text } }

// asForward offers what the forward closure has: its form and sizes, never its strength.
func asForward(key string) func(*File, int) string {
	return func(f *File, _ int) string {
		if c := f.rd.rocket.Chamber; c == nil || c.Forward == nil || !f.Given("chamber.forward."+key) {
			return ""
		}
		s := sectionAt("chamber.forward")
		return s.field(key).codec.text(s.field(key), place{rocket: f.rd.rocket})
	}
}

// onBoth is the answer that a rocket flies on water and on a motor.
const onBoth = "both"

// asks is the table of questions: what a flight, its stability, the chamber and the card take, as it comes to hand in a
// workshop. What is not in it has a usual value, and a row in the list of inputs.
func asks() []ask {
	const water, motor = rocket.WaterPower, rocket.MotorPower
	shape := func(r *rocket.Rocket) bool { return r.Shape != nil }
	list := []ask{
		{step: "tube", path: "", key: "power"},
		{step: "tube", path: "body", key: "diameter"},
		{step: "tube", path: "body", key: "length"},
		{step: "tube", path: "water", key: "bore", drive: water},
		{step: "tube", path: "water", key: "volume", drive: water},
		{step: "tube", path: "chamber", key: "material", drive: water},
	}
	chambered := func(r *rocket.Rocket) bool { return r.Chamber != nil }
	laid := func(r *rocket.Rocket) bool { return chambered(r) && r.Chamber.Material.FibreFraction() > 0 }
	add := func(rows ...ask) { list = append(list, rows...) }
	for _, key := range []string{"cloth", "count", "weave", "direction"} {
		row := ask{step: "tube", path: "chamber.ply", key: key, drive: water, when: laid}
		switch key {
		case "weave":
			row.offer = usual("woven")
		case "direction":
			row.offer = usual("0 deg")
		}
		add(row)
	}
	for _, key := range []string{"fibre_fraction"} {
		add(ask{step: "tube", path: "chamber", key: key, drive: water, when: laid})
	}
	for _, key := range []string{"hoop_strength", "axial_strength", "temperature"} {
		add(ask{step: "tube", path: "chamber", key: key, drive: water, when: chambered})
	}
	for _, end := range []string{"chamber.forward", "chamber.aft"} {
		for _, key := range []string{"shape", "wall", "overlap", "strength", "bond_strength"} {
			row := ask{step: "closures", path: end, key: key, drive: water, when: chambered}
			if end == "chamber.aft" && !strings.Contains(key, "strength") {
				row.offer = asForward(key)
			}
			add(row)
		}
	}
	section := func(step, path string, drive rocket.Power, when func(*rocket.Rocket) bool, keys ...string) {
		for _, key := range keys {
			add(ask{step: step, path: path, key: key, drive: drive, when: when})
		}
	}
	section("closures", "chamber.adhesive", water, chambered, "glue_line", "strength", "elastic_strain", "plastic_strain")
	section("nozzle", "water", water, nil, "throat")
	section("nozzle", "water", water, shape, "nozzle")
	section("nozzle", "water", water, nil, "fittings")
	section("nozzle", "chamber.boss", water, chambered, "diameter", "length", "bond_strength")
	section("nozzle", "chamber.thread", water, chambered, "diameter", "pitch", "engaged", "strength", "female_strength", "seal", "hole")
	section("fins", "fins", "", shape, "count", "root", "tip", "span", "sweep", "thickness", "section", "position", "shear_modulus")
	section("nose", "nose", "", shape, "shape", "length")
	section("nose", "body", "", shape, "roughness", "rail_buttons")
	section("nose", "body", "", func(r *rocket.Rocket) bool { return r.Shape == nil }, "drag")
	section("weigh", "body", "", nil, "mass")
	section("balance", "body", "", shape, "balance")
	add(ask{step: "canopy", path: "canopy", key: "diameter", offer: usualCanopy},
		ask{step: "canopy", path: "canopy", key: "deploy.water", drive: water, offer: usual("apogee + 1 s")},
		ask{step: "canopy", path: "canopy", key: "deploy.motor", drive: motor, offer: usual(rocket.Ejection.Row().Words)})
	section("canopy", "recovery", "", nil, "pin", "pin_strength", "bond_area", "bond_strength", "line", "line_length", "line_stretch", "canopy_mass")
	add(ask{step: "drive", path: "water", key: "fill", drive: water, offer: usual("30 %")})
	section("drive", "water", water, nil, "pressure")
	section("drive", "chamber", water, chambered, "burst", "proof", "proof_date", "cycles")
	add(ask{step: "drive", path: "motor", key: "file", drive: motor, offer: usualMotor},
		ask{step: "drive", path: "motor", key: "thrust", drive: motor},
		ask{step: "drive", path: "motor", key: "case", drive: motor},
		ask{step: "drive", path: "motor", key: "propellant", drive: motor},
		ask{step: "drive", path: "motor", key: "delay", drive: motor},
		ask{step: "drive", path: "motor", key: "diameter", drive: motor},
		ask{step: "drive", path: "motor", key: "length", drive: motor},
		ask{step: "drive", path: "motor_mount", key: "diameter", drive: motor, offer: motorWidth},
		ask{step: "drive", path: "motor_mount", key: "length", drive: motor, offer: motorLength},
		ask{step: "drive", path: "motor_mount", key: "retainer", drive: motor})
	section("drive", "chamber.heating", motor, chambered, "temperature", "time")
	section("site", "rail", "", withoutTube, "length")
	section("site", "wind", "", nil, "speed")
	section("site", "field", "", nil, "ceiling", "radius")
	for i := range list {
		switch list[i].path + "." + list[i].key {
		case "fins.count":
			list[i].offer = usual("3")
		case "fins.position":
			list[i].offer = flushFins
		}
	}
	return list
}

// Steps are the names of the steps of a workshop, in their order.
func Steps() []string {
	var steps []string
	for _, a := range asks() {
		if !slices.Contains(steps, a.step) {
			steps = append(steps, a.step)
		}
	}
	return steps
}

// Questions are those that the file asks now, given or not: what is answered decides what comes after it.
func (f *File) Questions() []Question {
	all := asks()
	var out []Question
	for i := 0; i < len(all); i++ {
		s := sectionAt(all[i].path)
		if !s.many {
			if q, ok := f.question(&all[i], s, 0, ""); ok {
				out = append(out, q)
			}
			continue
		}
		last := i // the rows of a list are asked together, item after item
		for last+1 < len(all) && all[last+1].path == s.path {
			last++
		}
		out = append(out, f.listQuestions(all[i:last+1], s)...)
		i = last
	}
	return out
}

// listQuestions are those about the items of a list: of those there are, or of a first one; of plies of one more too.
func (f *File) listQuestions(rows []ask, s *section) []Question {
	r := f.rd.rocket
	var out []Question
	var taken []string
	n := s.count(r)
	for i := range n {
		name := s.label(place{r, i})
		taken = append(taken, name)
		for k := range rows {
			if q, ok := f.question(&rows[k], s, i, name); ok {
				out = append(out, q)
			}
		}
	}
	if n > 0 && s.path != "chamber.ply" {
		return out
	}
	name := freeName(taken, lastKey(s.path), likedNames[s.path]...)
	if n > 0 {
		rows = rows[:1] // one more, if it is given
	}
	for k := range rows {
		if q, ok := f.question(&rows[k], s, n, name); ok {
			out = append(out, q)
		}
	}
	return out
}

// question is a row about an item of a section, if the rocket as it is asks for it.
func (f *File) question(a *ask, s *section, item int, name string) (Question, bool) {
	r := f.rd.rocket
	switch {
	case a.path == "motor" && a.key != "file" && (f.Given("motor.file") || a.key == "thrust" && f.Given("motor.curve")):
		return Question{}, false // the file has them
	case a.drive == rocket.WaterPower && r.Water == nil, a.drive == rocket.MotorPower && r.Motor == nil, a.when != nil && !a.when(r):
		return Question{}, false
	}
	with := r
	if s.make != nil && item >= s.count(r) {
		with = r.Clone()
		s.make(with)
		if s.title != nil {
			*s.title(place{with, item}) = name
		}
	}
	row := s.field(a.key)
	if !row.fileOnly && a.key != "power" && row.only != nil && !row.only(with) && a.path != "body" {
		return Question{}, false
	}
	in := input(s, row, place{with, item})
	q := Question{Step: a.step, Name: in.Name, Input: in, Unit: in.Unit, Given: f.Given(in.Name), path: s.path, item: name}
	if !s.many || item < s.count(r) {
		q.Unit = f.Unit(in.Name)
	}
	switch {
	case a.key == "power":
		q.Input.Choices, q.Input.Label = []string{string(rocket.WaterPower), string(rocket.MotorPower), onBoth}, "drive"
		q.Input.Help = "What the rocket is built to fly on."
	case q.Given && !row.fileOnly:
		q.Text = in.Text(r)
	case a.offer != nil:
		q.offer = func() string { return a.offer(f, item) }
	}
	return q, true
}

// Answer takes what was typed for a question; nothing takes what is offered, and leaves open what has no offer. A word of a
// choice may be cut short, and a day of the last twelve months may do without its year; today says which those are.
func (f *File) Answer(q Question, text string, today time.Time) (*File, error) {
	if text = strings.TrimSpace(text); text == "" {
		text = q.Offer()
	}
	if text == "" {
		return f, nil
	}
	switch {
	case q.Name == "power":
		return f.answerDrive(q, text)
	case q.Name == "motor.file":
		return f.WithMotor(filepath.FromSlash(text))
	case len(q.Input.Choices) > 0 && q.Input.Kind == ChoiceKind:
		word, bad := chosen(q.Input.Choices, text)
		if bad != nil {
			return nil, fault.List{bad.Of(q.Name, excerpt(text))}
		}
		text = word
	case len(q.Input.Choices) > 0: // words in place of a number
		if word, bad := chosen(q.Input.Choices, text); bad == nil {
			text = word
		}
	case q.Input.Kind == RuleKind:
		if word, bad := chosen([]string{rocket.Ejection.Row().Words, "apogee"}, text); bad == nil {
			text = word
		}
	case q.Name == "chamber.proof_date":
		text = dayOf(text, today)
	}
	base := f
	s := sectionAt(q.path)
	if _, _, p := resolve(f.rd.rocket, q.Name); s.many && p.rocket == nil {
		made, _, err := f.addEmpty(s, q.item)
		if err != nil {
			return nil, err
		}
		base = made
	}
	return base.SetIn(q.Name, text, q.Unit)
}

// answerDrive gives the file the drives that a rocket is built for.
func (f *File) answerDrive(q Question, text string) (*File, error) {
	word, bad := chosen(q.Input.Choices, text)
	if bad != nil {
		return nil, fault.List{bad.Of(q.Name, excerpt(text))}
	}
	made := f
	for _, drive := range []rocket.Power{rocket.WaterPower, rocket.MotorPower} {
		there := made.rd.doc.root.member(string(drive)) != nil
		if (word == string(drive) || word == onBoth) && !there {
			var err error
			if made, _, err = made.addEmpty(sectionAt(string(drive)), ""); err != nil {
				return nil, err
			}
		}
	}
	if word == onBoth {
		word = string(rocket.WaterPower)
	}
	return made.Set("power", word)
}

// chosen is the word that a text is, or begins alone.
func chosen(words []string, text string) (string, *fault.Fault) {
	var found []string
	for _, w := range words {
		if strings.EqualFold(w, text) {
			return w, nil
		}
		if strings.HasPrefix(strings.ToLower(w), strings.ToLower(text)) {
			found = append(found, w)
		}
	}
	switch len(found) {
	case 1:
		return found[0], nil
	case 0:
		return "", flaw("not one of the words for it", "write "+list(words, "or")+", or how one of them begins")
	}
	return "", flaw("begins "+list(found, "and"), "write more of it")
}

// dayOf is a day written as month and day, as 9-12, of the twelve months up to today; any other text stays.
func dayOf(text string, today time.Time) string {
	month, day, ok := strings.Cut(text, "-")
	m, bad := strconv.Atoi(month)
	d, worse := strconv.Atoi(day)
	if !ok || bad != nil || worse != nil || m < 1 || m > 12 || d < 1 || d > 31 {
		return text
	}
	at := time.Date(today.Year(), time.Month(m), d, 0, 0, 0, 0, time.UTC)
	if at.After(today) {
		at = at.AddDate(-1, 0, 0)
	}
	if int(at.Month()) != m {
		return text // no such day
	}
	return at.Format(time.DateOnly)
}

// NextQuestion is the place among questions of the first that is not given from one on; −1 when there is none.
func NextQuestion(all []Question, from int) int {
	for i := max(from, 0); i < len(all); i++ {
		if !all[i].Given {
			return i
		}
	}
	return -1
}
