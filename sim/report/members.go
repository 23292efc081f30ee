package report

import (
	"bytes"
	"encoding/json"
	"io"
	"reflect"
	"strings"

	"ullage/sim"
)

// members is a JSON object whose keys are not known beforehand, in their order.
type members []pair

type pair struct {
	key   string
	value any
}

// MarshalJSON implements json.Marshaler.
func (m members) MarshalJSON() ([]byte, error) {
	var b bytes.Buffer
	b.WriteByte('{')
	for i, x := range m {
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

// writeLine writes an object on a line of its own, with one call of Write.
func writeLine(w io.Writer, v any) error {
	var b bytes.Buffer
	if err := encode(&b, v); err != nil {
		return err
	}
	b.WriteByte('\n')
	_, err := w.Write(b.Bytes())
	return err
}

// flightMembers are why there is no flight, null when there is one, and the keys of
// `fly --json`, null when there is none.
func flightMembers(fl *sim.Flight, invalid error) members {
	out := members{{"invalid", nil}}
	if fl == nil {
		why := "no flight"
		if invalid != nil {
			why = oneLine(invalid)
		}
		out[0].value = why
		for _, key := range documentKeys {
			out = append(out, pair{key, nil})
		}
		return out
	}
	d := reflect.ValueOf(newDocument(fl))
	for i, key := range documentKeys {
		out = append(out, pair{key, d.Field(i).Interface()})
	}
	return out
}

// documentKeys are the keys of `fly --json` in order.
var documentKeys = func() []string {
	t := reflect.TypeFor[document]()
	keys := make([]string, t.NumField())
	for i := range keys {
		keys[i], _, _ = strings.Cut(t.Field(i).Tag.Get("json"), ",")
	}
	return keys
}()

// oneLine is an error on one line, fit for a terminal.
func oneLine(err error) string {
	return printable(strings.ReplaceAll(err.Error(), "\n", "; "))
}

// csvText is a text as a cell of CSV (RFC 4180).
func csvText(s string) string {
	if strings.ContainsAny(s, ",\"\r\n") {
		return `"` + strings.ReplaceAll(s, `"`, `""`) + `"`
	}
	return s
}
