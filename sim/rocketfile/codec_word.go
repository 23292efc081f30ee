package rocketfile

import (
	"slices"
	"strings"
	"unicode"

	"ullage/sim/fault"
	"ullage/sim/rocket"
)

// choiceCodec is one word of several.
type choiceCodec struct {
	words []string // that a file may have
	// offered are the words that make sense for a rocket; nil: all of them.
	offered func(r *rocket.Rocket) []string
	// otherwise is the word in force when the rocket holds none; nil: it always does.
	otherwise func(p place) string
	get       func(p place) (string, bool)
	set       func(p place, word string)
}

// choose makes a choiceCodec of a string of a rocket.
func choose[V ~string](at func(place) *V, words ...V) *choiceCodec {
	c := &choiceCodec{
		get: func(p place) (string, bool) {
			if v := at(p); v != nil {
				return string(*v), true
			}
			return "", false
		},
		set: func(p place, word string) { *at(p) = V(word) },
	}
	for _, w := range words {
		c.words = append(c.words, string(w))
	}
	return c
}

func (c *choiceCodec) choices(r *rocket.Rocket) []string {
	if c.offered != nil {
		return c.offered(r)
	}
	return c.words
}

func (c *choiceCodec) kind(place) Kind           { return ChoiceKind }
func (c *choiceCodec) scale(*field, place) scale { return scale{} }

func (c *choiceCodec) read(_ *field, p place, n *node) *fault.Fault {
	if bad := c.check(n, c.words); bad != nil {
		return bad
	}
	if _, ok := c.get(p); !ok {
		return notThere
	}
	c.set(p, n.text)
	return nil
}

func (c *choiceCodec) check(n *node, words []string) *fault.Fault {
	if n.kind == stringNode && slices.Contains(words, n.text) {
		return nil
	}
	quotes := make([]string, len(words))
	for i, w := range words {
		quotes[i] = `"` + w + `"`
	}
	return flaw("not one of the words for it", "write "+list(quotes, "or"))
}

func (c *choiceCodec) text(_ *field, p place) string {
	word, there := c.get(p)
	if there && word == "" && c.otherwise != nil {
		return c.otherwise(p)
	}
	return word
}

func (c *choiceCodec) number(f *field, p place) (float64, bool) {
	word, ok := c.get(p)
	given := ok && word != ""
	i := slices.Index(c.choices(p.rocket), c.text(f, p))
	return float64(max(i, 0)), given && i >= 0
}

func (c *choiceCodec) setNumber(_ *field, p place, v float64) *fault.Fault {
	words := c.choices(p.rocket)
	i := int(v)
	if float64(i) != v || i < 0 || i >= len(words) {
		return flaw("not one of the choices", "give one of "+list(words, "or"))
	}
	if _, ok := c.get(p); !ok {
		return notThere
	}
	c.set(p, words[i])
	return nil
}

func (c *choiceCodec) encode(_ *field, _ place, n *node, s style) (string, *fault.Fault) {
	if bad := c.check(n, c.words); bad != nil {
		return "", bad
	}
	return quoted(n.text, s.quote), nil
}

// textCodec is a free text that must pass a check.
type textCodec struct {
	at    func(place) *string // nil for what a rocket does not hold
	check func(text string) *fault.Fault
	path  bool // it names a file
}

func (c *textCodec) kind(place) Kind           { return TextKind }
func (c *textCodec) scale(*field, place) scale { return scale{} }

func (c *textCodec) read(_ *field, p place, n *node) *fault.Fault {
	if bad := c.accept(n); bad != nil {
		return bad
	}
	if c.at == nil {
		return nil
	}
	at := c.at(p)
	if at == nil {
		return notThere
	}
	*at = n.text
	return nil
}

func (c *textCodec) accept(n *node) *fault.Fault {
	if n.kind != stringNode {
		return flaw("not a text", "write it in quotes")
	}
	return c.check(n.text)
}

func (c *textCodec) text(_ *field, p place) string {
	if c.at != nil {
		if at := c.at(p); at != nil {
			return *at
		}
	}
	return ""
}

func (c *textCodec) number(*field, place) (float64, bool) { return 0, false }

func (c *textCodec) setNumber(*field, place, float64) *fault.Fault {
	return flaw("a text, not a number", "give a text")
}

func (c *textCodec) encode(_ *field, _ place, n *node, s style) (string, *fault.Fault) {
	if bad := c.accept(n); bad != nil {
		return "", bad
	}
	return quoted(n.text, s.quote), nil
}

// aTitle accepts what fits in a heading.
func aTitle(text string) *fault.Fault {
	const most = 60
	switch {
	case strings.ContainsFunc(text, func(r rune) bool { return !unicode.IsPrint(r) }):
		return flaw("holds control characters", "write plain letters")
	case len([]rune(text)) > most:
		return flaw("too long for a heading", "give at most 60 letters")
	}
	return nil
}

// aName accepts what can be part of a dotted name.
func aName(of, example string) func(text string) *fault.Fault {
	const letters = "abcdefghijklmnopqrstuvwxyz0123456789-"
	return func(text string) *fault.Fault {
		if text == "" || len(text) > 24 || strings.Trim(text, letters) != "" {
			return flaw("not a name for "+of, "write 1 to 24 small letters, digits and hyphens, such as "+example)
		}
		return nil
	}
}

// aFileName accepts what can name a file.
func aFileName(text string) *fault.Fault {
	if strings.TrimSpace(text) == "" || strings.ContainsFunc(text, unicode.IsControl) {
		return flaw("not the name of a file", "give a name relative to this file")
	}
	return nil
}

// list joins words with commas, the last two with a word.
func list(words []string, last string) string {
	switch n := len(words); n {
	case 0:
		return ""
	case 1:
		return words[0]
	default:
		return strings.Join(words[:n-1], ", ") + " " + last + " " + words[n-1]
	}
}
