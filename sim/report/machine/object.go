package machine

import (
	"bytes"
	"encoding/json"
	"io"
)

// Object is a JSON object whose keys are not known beforehand, in the order in which they
// were added. The zero value is empty and fit for use.
type Object struct{ members []member }

type member struct {
	key   string
	value any
}

// Add appends a member and returns the object.
func (o *Object) Add(key string, value any) *Object {
	o.members = append(o.members, member{key, value})
	return o
}

// MarshalJSON implements json.Marshaler.
func (o *Object) MarshalJSON() ([]byte, error) {
	var b bytes.Buffer
	b.WriteByte('{')
	for i, x := range o.members {
		if i > 0 {
			b.WriteByte(',')
		}
		if err := encode(&b, x.key); err != nil {
			return nil, err
		}
		b.WriteByte(':')
		if err := encode(&b, x.value); err != nil {
			return nil, err
		}
	}
	b.WriteByte('}')
	return b.Bytes(), nil
}

// encode appends a value without a line end and without escapes that only a web page
// needs.
func encode(b *bytes.Buffer, v any) error {
	e := json.NewEncoder(b)
	e.SetEscapeHTML(false)
	if err := e.Encode(v); err != nil {
		return err
	}
	b.Truncate(b.Len() - 1)
	return nil
}

// WriteLine writes an object on a line of its own, with one call of Write.
func WriteLine(w io.Writer, v any) error {
	var b bytes.Buffer
	if err := encode(&b, v); err != nil {
		return err
	}
	b.WriteByte('\n')
	_, err := w.Write(b.Bytes())
	return err
}

// WriteDocument writes an object indented by two spaces, with one call of Write.
func WriteDocument(w io.Writer, v any) error {
	var b bytes.Buffer
	e := json.NewEncoder(&b)
	e.SetEscapeHTML(false)
	e.SetIndent("", "  ")
	if err := e.Encode(v); err != nil {
		return err
	}
	_, err := w.Write(b.Bytes())
	return err
}
