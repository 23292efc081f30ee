package rocketfile

import (
	"strings"

	"ullage/sim/fault"
	"ullage/sim/quantity"
	"ullage/sim/rocket"
)

// trigger is a row of the table of opening rules.
type trigger struct {
	trigger rocket.Trigger
	words   string // how a file says it
	between string // and what stands before its number
	is      scale
}

// triggers lists every rule with a number in it. Ejection has none.
var triggers = []trigger{
	{rocket.AfterLaunch, "launch", "+", seconds(0, 600)},
	{rocket.AfterBurnout, "burnout", "+", seconds(0, 600)},
	{rocket.AfterApogee, "apogee", "+", seconds(-60, 600)},
	{rocket.Falling, "falling through", "", metres(1, 30e3, 5, 20)},
}

const ejection = "ejection"

const ruleMend = `write "launch + 9 s", "burnout + 8 s", "apogee + 1 s", "falling through 120 m" or "ejection"`

func triggerOf(t rocket.Trigger) *trigger {
	for i := range triggers {
		if triggers[i].trigger == t {
			return &triggers[i]
		}
	}
	return nil
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
	if t := triggerOf(c.now(p).Trigger); t != nil {
		return t.is
	}
	return scale{dimension: quantity.Time, unit: quantity.Usual(quantity.Time)}
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
	return ruleText(rule, c.scale(nil, p).unit)
}

func (c *ruleCodec) number(_ *field, p place) (float64, bool) {
	rule := c.now(p)
	return rule.Value, triggerOf(rule.Trigger) != nil
}

func (c *ruleCodec) setNumber(_ *field, p place, v float64) *fault.Fault {
	t := triggerOf(c.now(p).Trigger)
	if t == nil {
		return flaw("the rule has no number in it", ruleMend)
	}
	if bad := t.is.check(v); bad != nil {
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
	if t := triggerOf(rule.Trigger); unit.Name == "" && t != nil {
		if unit = t.is.unit; s.hasUnit && s.unit.Dimension == t.is.dimension {
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
		return now, q, flaw("not an opening rule", ruleMend)
	}
	text := strings.Join(strings.Fields(strings.ReplaceAll(n.text, "−", "-")), " ")
	if text == ejection {
		return rocket.Rule{Trigger: rocket.Ejection}, q, nil
	}
	t := triggerOf(now.Trigger)
	number := text
	for i := range triggers {
		rest, ok := strings.CutPrefix(text, triggers[i].words)
		if !ok || rest != "" && strings.IndexByte(" +-", rest[0]) < 0 {
			continue
		}
		t = &triggers[i]
		if number, ok = signed(rest, t.between); !ok {
			return now, q, flaw("not an opening rule", ruleMend)
		}
		break
	}
	if t == nil || number == text && !startsNumber(text) {
		return now, q, flaw("not an opening rule", ruleMend)
	}
	q, bad := ruleNumber(number, t, bare)
	if bad != nil {
		return now, q, bad
	}
	return rocket.Rule{Trigger: t.trigger, Value: q.Value}, q, nil
}

// signed takes what stands between the words of a rule and its number.
func signed(rest, between string) (string, bool) {
	rest = strings.TrimSpace(rest)
	if between == "" {
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
func ruleNumber(text string, t *trigger, bare *quantity.Unit) (quantity.Quantity, *fault.Fault) {
	plain := isNumber(text)
	if plain && bare != nil && bare.Dimension == t.is.dimension {
		q, err := quantity.ParseIn(text, t.is.dimension, *bare)
		q.Unit = quantity.Unit{}
		if bad := flawOf(err); bad != nil {
			return q, bad
		}
		return q, t.is.check(q.Value)
	}
	q, err := quantity.ParseAs(text, t.is.dimension, t.is.unit)
	bad := flawOf(err)
	switch {
	case bad == nil:
		bad = t.is.check(q.Value)
	case plain:
		q, err = quantity.ParseIn(text, t.is.dimension, t.is.unit)
		if err == nil {
			bad = flaw("has no unit after its number", `write "`+ruleText(rocket.Rule{Trigger: t.trigger, Value: q.Value}, t.is.unit)+`"`)
		}
	}
	return q, bad
}

// ruleText writes a rule with its number in a unit.
func ruleText(rule rocket.Rule, u quantity.Unit) string {
	t := triggerOf(rule.Trigger)
	if t == nil {
		return ejection
	}
	number := quantity.Exact(rule.Value, u)
	if t.between == "" {
		return t.words + " " + number
	}
	if after, negative := strings.CutPrefix(number, "-"); negative {
		return t.words + " - " + after
	}
	return t.words + " " + t.between + " " + number
}
