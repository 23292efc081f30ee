package study

import (
	"errors"
	"fmt"
	"math"
	"strconv"
	"strings"

	"ullage/sim/fault"
	"ullage/sim/quantity"
	"ullage/sim/rocket"
	"ullage/sim/rocketfile"
)

// Axis is an input with the values it goes through.
type Axis struct {
	Input  rocketfile.Input
	Values []Value
}

// Bounds of a sweep: more is a slip of the pen.
const (
	maxPoints  = 1_000_000  // of one axis
	maxFlights = 10_000_000 // of a sweep
	maxAxes    = 2          // that ParseAxes takes; Sweep takes any number
)

// LargeSweep is where a sweep is worth a word before it starts.
const LargeSweep = 100_000

// Linear is an axis of n values from one number to another, both included and
// evenly spaced.
func Linear(in rocketfile.Input, from, to float64, n int) Axis {
	a := Axis{Input: in, Values: make([]Value, n)}
	for i := range a.Values {
		a.Values[i].Number = between(from, to, i, n)
	}
	return a
}

// between is the i-th of n points from one number to another, which are met exactly.
// Those inside have at most fifteen digits, so that the middle of 0.2 and 0.4 is the 0.3
// that a user would write.
func between(from, to float64, i, n int) float64 {
	switch i {
	case 0:
		return from
	case n - 1:
		return to
	}
	v := from + (to-from)*(float64(i)/float64(n-1))
	v, _ = strconv.ParseFloat(strconv.FormatFloat(v, 'e', 14, 64), 64)
	return v
}

// Count is how many flights a sweep over the axes takes: the product of their
// lengths, held to the largest int.
func Count(axes []Axis) int {
	n := 1
	for _, a := range axes {
		if len(a.Values) > 0 && n > math.MaxInt/len(a.Values) {
			return math.MaxInt
		}
		n *= len(a.Values)
	}
	return n
}

// ParseAxes reads one or two axes over different inputs. The error is
// fault.List, all at once.
func ParseAxes(r *rocket.Rocket, texts []string) ([]Axis, error) {
	var axes []Axis
	var faults fault.List
	seen := map[string]bool{}
	for _, text := range texts {
		a, err := ParseAxis(r, text)
		switch {
		case err != nil:
			faults = append(faults, fault.In(err)...)
		case seen[a.Input.Name]:
			faults = append(faults, fault.Fault{Key: a.Input.Name, Problem: "given twice", Remedy: "put all its values behind one name"})
		}
		seen[a.Input.Name] = true
		axes = append(axes, a)
	}
	switch n := Count(axes); {
	case len(faults) > 0:
	case len(axes) == 0:
		faults = fault.List{{Problem: "no input to sweep over", Remedy: axisMend}}
	case len(axes) > maxAxes:
		faults = fault.List{{Key: axes[maxAxes].Input.Name, Problem: "a third input", Remedy: "sweep over one or two"}}
	case n > maxFlights:
		faults = fault.List{{Problem: fmt.Sprintf("the grid has %d flights", n), Remedy: fmt.Sprintf("ask for at most %d", maxFlights)}}
	}
	if len(faults) > 0 {
		return nil, faults
	}
	return axes, nil
}

const axisMend = "write NAME=FROM..TO/POINTS such as water.fill=0.2..0.4/21, or NAME=A,B,C"

// ParseAxis reads an input with its values: "water.fill=0.2..0.4/21" (21 points,
// both ends included), or a list, "water.throat=9mm,11mm,13mm", "water.gas=air,helium".
// A number without a unit takes the last one's. The error is a fault.List.
func ParseAxis(r *rocket.Rocket, text string) (Axis, error) {
	name, values, given := strings.Cut(text, "=")
	name, values = strings.TrimSpace(name), strings.TrimSpace(values)
	in, err := rocketfile.Find(r, name)
	if err != nil {
		return Axis{}, err
	}
	p := axisParser{in: in, trial: r.Clone()}
	a := Axis{Input: in}
	switch {
	case in.Apart:
		return Axis{}, p.apart()
	case !given || values == "":
		return Axis{}, p.fault(values, "no values", axisMend)
	case strings.Contains(values, ".."):
		a.Values, err = p.stretch(values)
	default:
		a.Values, err = p.list(values)
	}
	if err != nil {
		return Axis{}, err
	}
	return a, nil
}

// axisParser reads the values of one input and tries each on a rocket.
type axisParser struct {
	in    rocketfile.Input
	trial *rocket.Rocket
}

func (p *axisParser) fault(value, problem, mend string) error {
	return fault.List{{Key: p.in.Name, Value: value, Problem: problem, Remedy: mend}}
}

// apart says that flights over an input would all be the same.
func (p *axisParser) apart() error {
	return p.fault("", "no flight depends on it", "ullage check and ullage proof judge by it; vary what the flight depends on, such as water.fill")
}

// numeric tells whether the input holds a number now.
func (p *axisParser) numeric() bool {
	return p.in.Kind == rocketfile.NumberKind || p.in.Kind == rocketfile.RuleKind
}

// stretch reads FROM..TO/POINTS.
func (p *axisParser) stretch(text string) ([]Value, error) {
	ends, count := text, ""
	if i := strings.LastIndexByte(text, '/'); i >= 0 {
		ends, count = text[:i], strings.TrimSpace(text[i+1:])
	}
	n, err := strconv.Atoi(count)
	switch {
	case err != nil:
		return nil, p.fault(text, "no number of points", "write it after a slash: "+p.in.Name+"="+text+"/11")
	case n < 2:
		return nil, p.fault(text, "fewer than 2 points", "give 2 or more, both ends included")
	case n > maxPoints:
		return nil, p.fault(text, "too many points", fmt.Sprintf("give at most %d", maxPoints))
	}
	from, to, err := p.ends(ends)
	if err != nil {
		return nil, err
	}
	return Linear(p.in, from, to, n).Values, nil
}

// ends reads FROM..TO.
func (p *axisParser) ends(text string) (from, to float64, err error) {
	first, last, ok := strings.Cut(text, "..")
	switch {
	case !ok:
		return 0, 0, p.fault(text, "not a range", "write FROM..TO")
	case !p.numeric():
		return 0, 0, p.fault(text, "a range of what has no number", p.listMend())
	}
	end, errLast := p.number(last, nil)
	start, errFirst := p.number(first, &end.Unit)
	faults := append(fault.In(errFirst), fault.In(errLast)...)
	switch {
	case len(faults) > 0:
		return 0, 0, faults
	case start.Value == end.Value:
		return 0, 0, p.fault(text, "a range that ends where it begins", "give two different ends")
	}
	return start.Value, end.Value, nil
}

// listMend says how to list words of the input.
func (p *axisParser) listMend() string {
	if p.in.Kind == rocketfile.ChoiceKind {
		return "list them: " + p.in.Name + "=" + strings.Join(p.in.Choices, ",")
	}
	return "list its values: " + p.in.Name + "=A,B,C"
}

// list reads A,B,C.
func (p *axisParser) list(text string) ([]Value, error) {
	items := strings.Split(text, ",")
	values := make([]Value, len(items))
	var faults fault.List
	var usual *quantity.Unit // of the last number that has one
	for i := len(items) - 1; i >= 0; i-- {
		v, unit, err := p.item(strings.TrimSpace(items[i]), usual)
		if usual == nil {
			usual = unit
		}
		faults = append(fault.In(err), faults...)
		values[i] = v
	}
	if len(faults) > 0 {
		return nil, faults
	}
	return values, nil
}

// item reads one value of a list.
func (p *axisParser) item(text string, usual *quantity.Unit) (Value, *quantity.Unit, error) {
	if text == "" {
		return Value{}, nil, p.fault("", "an empty place in the list", axisMend)
	}
	if p.numeric() {
		q, err := p.number(text, usual)
		if err == nil {
			return Value{Number: q.Value}, &q.Unit, nil
		}
		if p.in.Kind == rocketfile.NumberKind {
			return Value{}, nil, err
		}
	}
	return Value{Word: text}, nil, p.in.SetText(p.trial.Clone(), text)
}

// number reads a number of the input and holds it to the input's range. One
// without a unit takes the usual one.
func (p *axisParser) number(text string, usual *quantity.Unit) (quantity.Quantity, error) {
	text = strings.TrimSpace(text)
	var q quantity.Quantity
	var err error
	if usual != nil && usual.Name != "" {
		q, err = quantity.ParseIn(text, p.in.Dimension, *usual)
	} else {
		q, err = quantity.ParseAs(text, p.in.Dimension, p.in.Unit)
	}
	var bad fault.Fault
	if errors.As(err, &bad) {
		return q, p.fault(text, bad.Problem, bad.Remedy)
	}
	return q, p.in.Set(p.trial, q.Value)
}
