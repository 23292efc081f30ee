package rocketfile

import (
	"strings"

	"ullage/sim/fault"
)

// eitherCodec is a value that may be said in two ways: with a number, or with something
// in its place, a table or a word. What is nudged and varied is always the number; while
// the other stands there, none is given.
type eitherCodec struct {
	plain codec // the number
	other codec
	// meant tells that a value is written in the other way.
	meant func(n *node) bool
	// holds tells that the rocket holds the other.
	holds func(p place) bool
	// drop takes the other out of the rocket for a number; nil where the two share room.
	drop func(p place)
	// words are what the other may be, when it is a word.
	words []string
}

// numberOr is a number, or one of the words of a choice in its place.
func numberOr(number *numberCodec, word *choiceCodec) *eitherCodec {
	return &eitherCodec{
		plain: number, other: word, words: word.words,
		meant: func(n *node) bool { return n.kind == stringNode && !startsNumber(strings.TrimSpace(n.text)) },
		holds: func(p place) bool {
			held, there := word.get(p)
			return there && held != ""
		},
		drop: func(p place) { word.set(p, "") },
	}
}

func (c *eitherCodec) bind(name string) {
	for _, way := range []codec{c.plain, c.other} {
		if b, ok := way.(bound); ok {
			b.bind(name)
		}
	}
}

// table is the rows of numbers that the value may be; nil where it is none.
func (c *eitherCodec) table() *rowsCodec {
	if t, ok := c.other.(rowed); ok {
		return t.table()
	}
	return nil
}

// held is the way in which the rocket holds the value.
func (c *eitherCodec) held(p place) codec {
	if c.holds(p) {
		return c.other
	}
	return c.plain
}

// written is the way in which a value is written.
func (c *eitherCodec) written(n *node) codec {
	if c.meant(n) {
		return c.other
	}
	return c.plain
}

// kind is that of a number also where a word takes its place, so that it can be varied.
func (c *eitherCodec) kind(p place) Kind {
	if len(c.words) > 0 {
		return NumberKind
	}
	return c.held(p).kind(p)
}

func (c *eitherCodec) scale(f *field, p place) scale { return c.plain.scale(f, p) }

func (c *eitherCodec) text(f *field, p place) string { return c.held(p).text(f, p) }

func (c *eitherCodec) number(f *field, p place) (float64, bool) {
	if c.holds(p) && f.inForce != nil {
		return f.inForce(p), false
	}
	v, given := c.plain.number(f, p)
	return v, given && !c.holds(p)
}

func (c *eitherCodec) setNumber(f *field, p place, v float64) *fault.Fault {
	if c.drop == nil && c.holds(p) {
		return c.other.setNumber(f, p, v)
	}
	bad := c.plain.setNumber(f, p, v)
	if bad == nil && c.drop != nil {
		c.drop(p)
	}
	return bad
}

func (c *eitherCodec) read(f *field, p place, n *node) *fault.Fault {
	way := c.written(n)
	bad := c.both(f, p, way, way.read(f, p, n))
	if bad == nil && way == c.plain && c.drop != nil {
		c.drop(p)
	}
	return bad
}

func (c *eitherCodec) encode(f *field, p place, n *node, s style) (string, *fault.Fault) {
	way := c.written(n)
	text, bad := way.encode(f, p, n, s)
	return text, c.both(f, p, way, bad)
}

// both is a fault of a word, with the number that may be given instead.
func (c *eitherCodec) both(f *field, p place, way codec, bad *fault.Fault) *fault.Fault {
	if bad == nil || way == c.plain || len(c.words) == 0 {
		return bad
	}
	is := c.plain.scale(f, p)
	return flaw(bad.Problem, bad.Remedy+", or give "+is.String())
}
