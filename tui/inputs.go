package tui

import (
	"cmp"
	"slices"
	"strconv"
	"strings"

	"ullage/sim/quantity"
	"ullage/sim/rocket"
	"ullage/sim/rocketfile"
	"ullage/tui/draw"
)

// field is one input as the list shows it.
type field struct {
	*rocketfile.Input
	unit   quantity.Unit // shown
	number string        // the value without its unit; empty when it is words
	words  string        // a choice, a rule or a text
	short  string        // said in its place in the list, where it has brackets
	given  bool          // in the file; what is not is the default in force
	folded int           // how many inputs of its group it stands for; 0: for itself alone
}

// value is the whole value as one text.
func (f field) value() string {
	if f.number == "" {
		return f.words
	}
	return strings.TrimSpace(f.number + " " + f.unit.Name)
}

// list is the inputs that bear on the flight, which one is chosen, and which
// part is in sight.
type list struct {
	all    []field             // every one
	fields []field             // those that are not folded away, or those found
	open   map[string]openness // what is missing or at odds, by name
	folds  map[string]bool     // the groups that are folded
	sought string              // what is looked for; empty when all are shown
	at     int                 // the chosen one of fields
	top    int                 // first row in sight, headings counted
	sight  []int               // the field of every row in sight, negative where there is none
}

// fieldsOf lists the inputs of the drive that flies and of everything shared.
func fieldsOf(f *rocketfile.File, sys quantity.System) []field {
	r := f.Described()
	all := f.Inputs()
	fields := make([]field, 0, len(all))
	for i := range all {
		if in := &all[i]; in.Drive == "" || in.Drive == r.Power {
			fields = append(fields, newField(f, r, in, sys))
		}
	}
	return append(fields, spreadFields(f, sys)...)
}

func newField(f *rocketfile.File, r *rocket.Rocket, in *rocketfile.Input, sys quantity.System) field {
	own := f.Unit(in.Name)
	d := field{Input: in, unit: sys.Unit(own), given: f.Given(in.Name)}
	if in.Kind != rocketfile.NumberKind {
		d.words = draw.Clean(in.Text(r))
		if n := strings.Count(d.words, "[") - 1; n > 0 && strings.HasPrefix(d.words, "[") {
			d.short = "table of " + strconv.Itoa(n)
		} else if strings.HasPrefix(d.words, "[") {
			d.short = strings.NewReplacer("[", "", "]", "", `"`, "").Replace(d.words)
		}
		if d.words == "" && (in.Path || !d.given && f.CanBeRows(in.Name)) {
			d.short = "none"
		}
		if d.words == "" && d.given {
			if rows, err := f.RowsOf(in.Name); err == nil && len(rows.Rows) > 0 { // they are no curve yet
				d.short = "table of " + strconv.Itoa(len(rows.Rows))
			}
		}
		return d
	}
	switch v, there := in.Get(r); {
	case !there && v == 0: // a word may stand in a number's place
		d.words = cmp.Or(draw.Clean(in.Text(r)), "none")
	case d.given && d.unit == own:
		d.number = draw.Number(draw.Exact(v, d.unit, 9), d.unit)
	default:
		d.number = draw.Number(draw.Exact(v, d.unit, 6), d.unit)
	}
	return d
}

// chosen is the field the keys change; nil in an empty list.
func (l *list) chosen() *field {
	if l.at >= len(l.fields) {
		return nil
	}
	return &l.fields[l.at]
}

// refill puts in new fields and stays at the input that was chosen, or at its
// place when it is gone.
func (l *list) refill(fields []field) {
	l.all = fields
	l.sieve()
}

// sieve shows what is not folded away, or what is looked for, and stays at the input that was chosen.
func (l *list) sieve() {
	name, group := "", ""
	if c := l.chosen(); c != nil {
		name, group = c.Name, c.Group
	}
	if l.sought == "" {
		l.fields = folded(l.all, l.folds)
	} else {
		l.fields = found(l.all, l.sought)
	}
	at := slices.IndexFunc(l.fields, func(d field) bool { return d.Name == name })
	if at < 0 {
		at = slices.IndexFunc(l.fields, func(d field) bool { return d.folded > 0 && d.Group == group })
	}
	if at < 0 {
		at = min(l.at, len(l.fields)-1)
	}
	l.at = max(at, 0)
}

// choose goes to an input by its name, unfolding its group, and tells whether it is there.
func (l *list) choose(name string) bool {
	is := func(d field) bool { return d.Name == name }
	i := slices.IndexFunc(l.all, is)
	if i < 0 {
		return false
	}
	if l.folds[l.all[i].Group] {
		l.fold(l.all[i].Group, false)
	}
	at := slices.IndexFunc(l.fields, is)
	if at >= 0 {
		l.at = at
	}
	return at >= 0
}

// point chooses the field in a row in sight.
func (l *list) point(row int) {
	if row < len(l.sight) && l.sight[row] >= 0 {
		l.at = l.sight[row]
	}
}

// chooseDrive goes to the first input of the drive that flies.
func (l *list) chooseDrive() {
	l.at = max(slices.IndexFunc(l.fields, func(d field) bool { return d.Drive != "" }), 0)
}

// move goes up or down by so many inputs, stopping at the ends.
func (l *list) move(by int) { l.at = max(min(l.at+by, len(l.fields)-1), 0) }

// group goes to the first input of the next group (by = 1), or of this or the
// group before (by = −1).
func (l *list) group(by int) {
	starts := func(i int) bool { return i == 0 || l.fields[i].Group != l.fields[i-1].Group }
	for i := l.at + by; i >= 0 && i < len(l.fields); i += by {
		if starts(i) {
			l.at = i
			return
		}
	}
}
