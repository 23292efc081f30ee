package machine

import (
	"bytes"
	"encoding/json"
	"io"
	"strings"
)

// writer writes JSON as encoding/json does, but for escapes that only a web page needs.
type writer struct {
	text    []byte
	indents bool
	deep    int
	err     error // the first
}

// write ends a value with the end of a line, and hands it on whole.
func (w *writer) write(to io.Writer, v any) error {
	w.value(v)
	if w.err != nil {
		return w.err
	}
	_, err := to.Write(append(w.text, '\n'))
	return err
}

func (w *writer) object(o *Object) {
	switch {
	case o.perhaps && !o.holds():
		w.text = append(w.text, "null"...)
		return
	case len(o.members) == 0:
		w.text = append(w.text, "{}"...)
		return
	}
	w.text = append(w.text, '{')
	w.deep++
	for i := range o.members {
		m := &o.members[i]
		w.next(i > 0)
		w.string(m.key)
		w.text = append(w.text, ':')
		if w.indents {
			w.text = append(w.text, ' ')
		}
		if m.isNumber {
			w.text = m.number.append(w.text)
		} else {
			w.value(m.value)
		}
	}
	w.deep--
	w.line()
	w.text = append(w.text, '}')
}

func (w *writer) list(l List) {
	if len(l) == 0 {
		w.text = append(w.text, "[]"...)
		return
	}
	w.text = append(w.text, '[')
	w.deep++
	for i, o := range l {
		w.next(i > 0)
		w.object(o)
	}
	w.deep--
	w.line()
	w.text = append(w.text, ']')
}

// next begins a member of an object or a list.
func (w *writer) next(more bool) {
	if more {
		w.text = append(w.text, ',')
	}
	w.line()
}

// line begins a line where lines are indented.
func (w *writer) line() {
	if w.indents {
		w.text = append(w.text, '\n')
		for range w.deep {
			w.text = append(w.text, indent...)
		}
	}
}

const indent = "  "

func (w *writer) value(v any) {
	switch v := v.(type) {
	case nil:
		w.text = append(w.text, "null"...)
	case Number:
		w.text = v.append(w.text)
	case *Object:
		w.object(v)
	case List:
		w.list(v)
	case string:
		w.string(v)
	default:
		w.other(v)
	}
}

func (w *writer) string(s string) {
	if !plain(s) {
		w.other(s)
		return
	}
	w.text = append(append(append(w.text, '"'), s...), '"')
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

// other leaves a value to encoding/json.
func (w *writer) other(v any) {
	var b bytes.Buffer
	e := json.NewEncoder(&b)
	e.SetEscapeHTML(false)
	if w.indents {
		e.SetIndent(strings.Repeat(indent, w.deep), indent)
	}
	if err := e.Encode(v); err != nil && w.err == nil {
		w.err = err
	}
	w.text = append(w.text, bytes.TrimRight(b.Bytes(), "\n")...)
}
