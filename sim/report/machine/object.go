package machine

import (
	"io"
	"math"
)

// Object is a JSON object whose keys are not known beforehand, in the order in which they
// were added. The zero value is empty and fit for use.
type Object struct {
	members []member
	perhaps bool // null while it holds nothing but nulls
}

// member is a number or another value.
type member struct {
	key      string
	isNumber bool
	number   Number
	value    any
}

// List is a JSON list of objects.
type List []*Object

// Add appends a member and returns the object.
func (o *Object) Add(key string, value any) *Object {
	o.append(member{key: key, value: value})
	return o
}

// Put is Add of a number: null when it is not finite.
func (o *Object) Put(key string, v float64) {
	o.append(member{key: key, isNumber: true, number: Number(v)})
}

func (o *Object) append(m member) {
	if o.members == nil {
		o.members = make([]member, 0, 8)
	}
	o.members = append(o.members, m)
}

// In is the object below a key, which is null as long as it holds nothing but nulls. It is
// added when it is not there.
func (o *Object) In(key string) *Object {
	for i := len(o.members) - 1; i >= 0; i-- {
		if below, is := o.members[i].value.(*Object); is && o.members[i].key == key {
			return below
		}
	}
	below := &Object{perhaps: true}
	o.Add(key, below)
	return below
}

// holds tells that some member has a value.
func (o *Object) holds() bool {
	for i := range o.members {
		m := &o.members[i]
		switch below, is := m.value.(*Object); {
		case m.isNumber && !math.IsNaN(float64(m.number)):
			return true
		case is && (!below.perhaps || below.holds()):
			return true
		case !is && m.value != nil:
			return true
		}
	}
	return false
}

// MarshalJSON implements json.Marshaler.
func (o *Object) MarshalJSON() ([]byte, error) {
	w := writer{}
	w.object(o)
	return w.text, w.err
}

// MarshalJSON implements json.Marshaler.
func (l List) MarshalJSON() ([]byte, error) {
	w := writer{}
	w.list(l)
	return w.text, w.err
}

// WriteLine writes an object on a line of its own, with one call of Write.
func WriteLine(w io.Writer, v any) error { return (&writer{}).write(w, v) }

// WriteDocument writes an object indented by two spaces, with one call of Write.
func WriteDocument(w io.Writer, v any) error { return (&writer{indents: true}).write(w, v) }
