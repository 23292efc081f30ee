package rocketfile

import (
	"strings"

	"ullage/sim/fault"
	"ullage/sim/quantity"
	"ullage/sim/rocket"
)

// ruleRemedy shows every kind of rule.
var ruleRemedy = func() string {
	var examples []string
	for _, t := range rocket.Triggers() {
		examples = append(examples, `"`+t.Example+`"`)
	}
	return "write " + list(examples, "or")
}()

// ruleScale is the scale of the number in a rule.
func ruleScale(t rocket.Trigger) scale {
	if t.Falls() {
		return scale{t.Row().Range, 5, 20} // m
	}
	return scale{t.Row().Range, 0.1, 1} // s
}

// ruleCodec is when a canopy opens on one drive.
type ruleCodec struct{ at func(place) *rocket.Rule }

func (c *ruleCodec) kind(place) Kind { return RuleKind }

func (c *ruleCodec) now(p place) rocket.Rule {
	if at := c.at(p); at != nil {
		return *at
	}
	return rocket.Rule{}
}

func (c *ruleCodec) scale(_ *field, p place) scale {
	if t := c.now(p).Trigger; t.Numbered() {
		return ruleScale(t)
	}
	return scale{Range: quantity.Range{Dimension: quantity.Time, Unit: quantity.Usual(quantity.Time)}}
}

func (c *ruleCodec) read(_ *field, p place, n *node) *fault.Fault {
	rule, _, bad := readRule(n, c.now(p), nil)
	if bad != nil {
		return bad
	}
	at := c.at(p)
	if at == nil {
		return notThere
	}
	*at = rule
	return nil
}

func (c *ruleCodec) text(_ *field, p place) string {
	return ruleText(c.now(p), c.scale(nil, p).Unit)
}

func (c *ruleCodec) number(_ *field, p place) (float64, bool) {
	rule := c.now(p)
	return rule.Value, rule.Trigger.Numbered()
}

func (c *ruleCodec) setNumber(_ *field, p place, v float64) *fault.Fault {
	t := c.now(p).Trigger
	if !t.Numbered() {
		return flaw("the rule has no number in it", ruleRemedy)
	}
	if bad := t.Row().Range.Check(v); bad != nil {
		return bad
	}
	c.at(p).Value = v
	return nil
}

func (c *ruleCodec) encode(_ *field, p place, n *node, s style) (string, *fault.Fault) {
	rule, q, bad := readRule(n, c.now(p), s.bare)
	if bad != nil {
		return "", bad
	}
	unit := q.Unit
	if unit.Name == "" && rule.Trigger.Numbered() {
		is := ruleScale(rule.Trigger)
		if unit = is.Unit; s.hasUnit && s.unit.Dimension == is.Dimension {
			unit = s.unit
		}
	}
	return quoted(ruleText(rule, unit), s.quote), nil
}

// readRule reads a rule, or a number alone that goes into the rule that holds
// now. The quantity's unit has no name when the number came without one.
func readRule(n *node, now rocket.Rule, bare *quantity.Unit) (rocket.Rule, quantity.Quantity, *fault.Fault) {
	var q quantity.Quantity
	if n.kind != stringNode && n.kind != numberNode {
		return now, q, flaw("not an opening rule", ruleRemedy)
	}
	text := strings.Join(strings.Fields(strings.ReplaceAll(n.text, "−", "-")), " ")
	t, number, ok := now.Trigger, text, startsNumber(text)
	if row := ruleNamed(text); row != nil {
		t = row.Trigger
		if number = strings.TrimSpace(text[len(row.Words):]); !t.Numbered() && number == "" {
			return rocket.Rule{Trigger: t}, q, nil
		}
		number, ok = signed(number, t)
	}
	if !ok || !t.Numbered() {
		return now, q, flaw("not an opening rule", ruleRemedy)
	}
	q, bad := ruleNumber(number, t, bare)
	if bad != nil {
		return now, q, bad
	}
	return rocket.Rule{Trigger: t, Value: q.Value}, q, nil
}

// ruleNamed is the row whose words a rule begins with, the longest of several; nil when
// it begins with none.
func ruleNamed(text string) *rocket.TriggerRow {
	var found *rocket.TriggerRow
	for _, row := range rocket.Triggers() {
		rest, ok := strings.CutPrefix(text, row.Words)
		if ok && (rest == "" || strings.IndexByte(" +-", rest[0]) >= 0) && (found == nil || len(row.Words) > len(found.Words)) {
			found = &row
		}
	}
	return found
}

// signed takes what stands between the words of a rule and its number.
func signed(rest string, t rocket.Trigger) (string, bool) {
	if t.Falls() {
		return rest, rest != "" && strings.IndexByte("+-", rest[0]) < 0
	}
	if rest == "" {
		return "0 s", true
	}
	sign, rest := rest[:1], strings.TrimSpace(rest[1:])
	switch {
	case rest == "" || strings.IndexByte("+-", rest[0]) >= 0:
		return "", false
	case sign == "+":
		return rest, true
	case sign == "-":
		return sign + rest, true
	}
	return "", false
}

func startsNumber(text string) bool {
	return text != "" && strings.IndexByte("+-.0123456789", text[0]) >= 0
}

// ruleNumber reads the number in a rule.
func ruleNumber(text string, t rocket.Trigger, bare *quantity.Unit) (quantity.Quantity, *fault.Fault) {
	is, plain := ruleScale(t), isNumber(text)
	if plain && bare != nil && bare.Dimension == is.Dimension {
		q, err := quantity.ParseIn(text, is.Dimension, *bare)
		q.Unit = quantity.Unit{}
		if bad := flawOf(err); bad != nil {
			return q, bad
		}
		return q, is.Check(q.Value)
	}
	q, err := quantity.ParseAs(text, is.Dimension, is.Unit)
	bad := flawOf(err)
	switch {
	case bad == nil:
		bad = is.Check(q.Value)
	case plain:
		q, err = quantity.ParseIn(text, is.Dimension, is.Unit)
		if err == nil {
			bad = flaw("has no unit after its number", `write "`+ruleText(rocket.Rule{Trigger: t, Value: q.Value}, is.Unit)+`"`)
		}
	}
	return q, bad
}

// ruleText writes a rule with its number in a unit.
func ruleText(rule rocket.Rule, u quantity.Unit) string {
	return rule.Text(func(v float64) string { return quantity.Exact(v, u) }, "-")
}
