package machine

import (
	"bytes"
	"encoding/json"
	"io"
	"slices"
	"strconv"
)

// Object is a JSON object whose keys are not known beforehand, in the order in which they
// were added. The zero value is empty and fit for use.
type Object struct {
	members []member
	perhaps bool // null when it holds nothing
}

type member struct {
	key   string
	value any
}

// Add appends a member and returns the object.
func (o *Object) Add(key string, value any) *Object {
	o.members = append(o.members, member{key, value})
	return o
}

// In is the object below a key, which is null as long as it holds nothing but nulls. It is
// added when it is not there.
func (o *Object) In(key string) *Object {
	for i := range o.members {
		if below, is := o.members[i].value.(*Object); is && o.members[i].key == key {
			return below
		}
	}
	below := &Object{perhaps: true}
	o.Add(key, below)
	return below
}

// Keys are the object's, in order.
func (o *Object) Keys() []string {
	keys := make([]string, len(o.members))
	for i := range o.members {
		keys[i] = o.members[i].key
	}
	return keys
}

// holds tells that some member has a value.
func (o *Object) holds() bool {
	return slices.ContainsFunc(o.members, func(m member) bool {
		if below, is := m.value.(*Object); is && below.perhaps {
			return below.holds()
		}
		return m.value != nil
	})
}

// MarshalJSON implements json.Marshaler.
func (o *Object) MarshalJSON() ([]byte, error) { return o.append(nil) }

func (o *Object) append(b []byte) ([]byte, error) {
	if o.perhaps && !o.holds() {
		return append(b, "null"...), nil
	}
	var err error
	b = append(b, '{')
	for i := range o.members {
		if i > 0 {
			b = append(b, ',')
		}
		if b, err = appendValue(b, o.members[i].key); err != nil {
			return nil, err
		}
		b = append(b, ':')
		if b, err = appendValue(b, o.members[i].value); err != nil {
			return nil, err
		}
	}
	return append(b, '}'), nil
}

// appendValue writes a value, without escapes that only a web page needs.
func appendValue(b []byte, v any) ([]byte, error) {
	switch v := v.(type) {
	case nil:
		return append(b, "null"...), nil
	case Number:
		return v.append(b), nil
	case *Object:
		return v.append(b)
	case string:
		if plain(v) {
			return append(append(append(b, '"'), v...), '"'), nil
		}
	case bool:
		return strconv.AppendBool(b, v), nil
	}
	var other bytes.Buffer
	e := json.NewEncoder(&other)
	e.SetEscapeHTML(false)
	if err := e.Encode(v); err != nil {
		return nil, err
	}
	return append(b, bytes.TrimRight(other.Bytes(), "\n")...), nil
}

// plain tells that a text needs no escapes.
func plain(s string) bool {
	for i := range len(s) {
		if c := s[i]; c < ' ' || c > '~' || c == '"' || c == '\\' {
			return false
		}
	}
	return true
}

// WriteLine writes an object on a line of its own, with one call of Write.
func WriteLine(w io.Writer, v any) error {
	b, err := appendValue(nil, v)
	if err != nil {
		return err
	}
	_, err = w.Write(append(b, '\n'))
	return err
}

// WriteDocument writes an object indented by two spaces, with one call of Write.
func WriteDocument(w io.Writer, v any) error {
	compact, err := appendValue(nil, v)
	if err != nil {
		return err
	}
	var b bytes.Buffer
	if err := json.Indent(&b, compact, "", "  "); err != nil {
		return err
	}
	b.WriteByte('\n')
	_, err = w.Write(b.Bytes())
	return err
}
