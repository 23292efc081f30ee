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

// numbered is the row of a trigger that has a number in its rule; nil of any other.
func numbered(t rocket.Trigger) *rocket.TriggerRow {
	if row := t.Row(); row != nil && row.Numbered() {
		return row
	}
	return nil
}

// ruleScale is the scale of the number in a rule.
func ruleScale(t *rocket.TriggerRow) scale {
	if t.Falls() {
		return scale{t.Range, 5, 20} // m
	}
	return scale{t.Range, 0.1, 1} // s
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
	if t := numbered(c.now(p).Trigger); t != nil {
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
	rule := c.now(p)
	if rule.Trigger == rocket.Never {
		return ""
	}
	return ruleText(rule, c.scale(nil, p).Unit)
}

func (c *ruleCodec) number(_ *field, p place) (float64, bool) {
	rule := c.now(p)
	return rule.Value, numbered(rule.Trigger) != nil
}

func (c *ruleCodec) setNumber(_ *field, p place, v float64) *fault.Fault {
	t := numbered(c.now(p).Trigger)
	if t == nil {
		return flaw("the rule has no number in it", ruleRemedy)
	}
	if bad := t.Range.Check(v); bad != nil {
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
	if t := numbered(rule.Trigger); unit.Name == "" && t != nil {
		if unit = t.Range.Unit; s.hasUnit && s.unit.Dimension == t.Range.Dimension {
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
	t := numbered(now.Trigger)
	number := text
	for _, row := range rocket.Triggers() {
		rest, ok := strings.CutPrefix(text, row.Words)
		if !ok || rest != "" && strings.IndexByte(" +-", rest[0]) < 0 {
			continue
		}
		if !row.Numbered() && rest == "" {
			return rocket.Rule{Trigger: row.Trigger}, q, nil
		}
		if number, ok = signed(rest, &row); !ok {
			return now, q, flaw("not an opening rule", ruleRemedy)
		}
		t = &row
		break
	}
	if t == nil || number == text && !startsNumber(text) {
		return now, q, flaw("not an opening rule", ruleRemedy)
	}
	q, bad := ruleNumber(number, t, bare)
	if bad != nil {
		return now, q, bad
	}
	return rocket.Rule{Trigger: t.Trigger, Value: q.Value}, q, nil
}

// signed takes what stands between the words of a rule and its number.
func signed(rest string, t *rocket.TriggerRow) (string, bool) {
	rest = strings.TrimSpace(rest)
	if !t.Numbered() {
		return "", false
	}
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
func ruleNumber(text string, t *rocket.TriggerRow, bare *quantity.Unit) (quantity.Quantity, *fault.Fault) {
	plain := isNumber(text)
	if plain && bare != nil && bare.Dimension == t.Range.Dimension {
		q, err := quantity.ParseIn(text, t.Range.Dimension, *bare)
		q.Unit = quantity.Unit{}
		if bad := flawOf(err); bad != nil {
			return q, bad
		}
		return q, t.Range.Check(q.Value)
	}
	q, err := quantity.ParseAs(text, t.Range.Dimension, t.Range.Unit)
	bad := flawOf(err)
	switch {
	case bad == nil:
		bad = t.Range.Check(q.Value)
	case plain:
		q, err = quantity.ParseIn(text, t.Range.Dimension, t.Range.Unit)
		if err == nil {
			bad = flaw("has no unit after its number", `write "`+ruleText(rocket.Rule{Trigger: t.Trigger, Value: q.Value}, t.Range.Unit)+`"`)
		}
	}
	return q, bad
}

// ruleText writes a rule with its number in a unit.
func ruleText(rule rocket.Rule, u quantity.Unit) string {
	t := rule.Trigger.Row()
	if !t.Numbered() {
		return t.Words
	}
	number := quantity.Exact(rule.Value, u)
	if t.Falls() {
		return t.Words + " " + number
	}
	if after, negative := strings.CutPrefix(number, "-"); negative {
		return t.Words + " - " + after
	}
	return t.Words + " + " + number
}
