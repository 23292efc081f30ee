package logbook

import (
	"bytes"
	"errors"
	"fmt"
	"math"
	"strconv"
	"strings"
	"time"

	"github.com/pelletier/go-toml/v2"

	"ullage/sim/fault"
	"ullage/sim/quantity"
)

// Book is a logbook.
type Book struct {
	Name    string
	Entries []Entry // in the order of the text
}

// mostBytes bounds a logbook: more than anybody writes in a life.
const mostBytes = 16 << 20

// Open reads a book from a file, a plain one, since entries are added to it. The errors are a fault.List; of a file that is not there one
// whose Err is fs.ErrNotExist.
func Open(path string) (*Book, error) {
	text, err := fault.ReadFile(path, mostBytes, fault.Files)
	if err != nil {
		return nil, fault.List{{File: path, Problem: "the logbook cannot be read: " + fault.Reason(err), Remedy: "ullage record begins one", Err: err}}
	}
	return Read(path, text)
}

// raw is a book as TOML gives it.
type raw struct {
	Entry []map[string]any `toml:"entry"`
}

// Read reads a book; messages call it by the name. What is wrong is told all at once, a fault.List.
func Read(name string, text []byte) (*Book, error) {
	var r raw
	d := toml.NewDecoder(bytes.NewReader(text)).DisallowUnknownFields()
	if err := d.Decode(&r); err != nil {
		bad := fault.Fault{File: name, Problem: "is no logbook: " + firstLine(err.Error()), Remedy: "entries are tables: [[entry]] and below it key = value"}
		var at *toml.DecodeError
		var strict *toml.StrictMissingError
		switch {
		case errors.As(err, &strict) && len(strict.Errors) > 0:
			bad.Line, _ = strict.Errors[0].Position()
			bad.Key, bad.Problem = strings.Join(strict.Errors[0].Key(), "."), "a logbook has no such key"
		case errors.As(err, &at):
			bad.Line, _ = at.Position()
		}
		return nil, fault.List{bad}
	}
	b := &Book{Name: name}
	var faults fault.List
	lines := headers(text)
	for i, table := range r.Entry {
		e := New()
		if i < len(lines) {
			e.Line = lines[i]
		}
		e.take(table, func(key, value, problem, remedy string) {
			faults = append(faults, fault.Fault{File: name, Line: lineOf(text, e.Line, key), Key: key, Value: value, Problem: problem, Remedy: remedy})
		})
		b.Entries = append(b.Entries, e)
	}
	if err := faults.Err(); err != nil {
		return nil, err
	}
	return b, nil
}

func firstLine(s string) string {
	s, _, _ = strings.Cut(s, "\n")
	return strings.TrimPrefix(s, "toml: ")
}

// headers are the lines at which entries begin.
func headers(text []byte) []int {
	var lines []int
	for i, line := range bytes.Split(text, []byte("\n")) {
		if bytes.HasPrefix(bytes.ReplaceAll(bytes.TrimSpace(line), []byte(" "), nil), []byte("[[entry]]")) {
			lines = append(lines, i+1)
		}
	}
	return lines
}

// lineOf is the line of a key in the entry that begins at a line.
func lineOf(text []byte, from int, key string) int {
	lines := bytes.Split(text, []byte("\n"))
	for i := from; i < len(lines) && from > 0; i++ {
		line := bytes.TrimSpace(lines[i])
		if bytes.HasPrefix(line, []byte("[[")) {
			break
		}
		if rest, ok := bytes.CutPrefix(line, []byte(key)); ok && bytes.HasPrefix(bytes.TrimSpace(rest), []byte("=")) {
			return i + 1
		}
	}
	return from
}

// take reads the keys of an entry.
func (e *Entry) take(table map[string]any, wrong func(key, value, problem, remedy string)) {
	fields := map[string]Field{}
	var keys []string
	for _, f := range Fields() {
		fields[f.Key] = f
		keys = append(keys, f.Key)
	}
	for key, v := range table {
		if f, known := fields[key]; known {
			e.set(&f, v, wrong)
			continue
		}
		remedy := "there are " + strings.Join(keys, ", ")
		if word, ok := quantity.Nearest(key, keys); ok {
			remedy = "perhaps " + word + " is meant"
		}
		wrong(key, "", "an entry has no such key", remedy)
	}
	if e.Kind == Proof && e.Pressure <= 0 {
		text, _ := asText(table["pressure"])
		wrong("pressure", strconv.Quote(text), "is no pressure of a proof", "write the pressure that the chamber held, or take the entry out")
	}
	e.checkWords(wrong)
}

// set takes the value of one key.
func (e *Entry) set(f *Field, v any, wrong func(key, value, problem, remedy string)) {
	switch {
	case f.List != nil:
		list := textsOf(v)
		if len(list) == 0 {
			wrong(f.Key, "", "is no list of texts", `write it as in columns = ["time=1 ms"]`)
		}
		*f.List(e) = list
		return
	case f.Results != nil:
		results, ok := resultsOf(v)
		if !ok {
			wrong(f.Key, "", "is no table of results", `write it as in { "apogee.height" = "104 m" }`)
		}
		*f.Results(e) = results
		return
	}
	text, isText := asText(v)
	if !isText {
		wrong(f.Key, fmt.Sprint(v), "is no text", "write it in quotes")
	} else if bad := f.Take(e, text); bad != nil {
		wrong(bad.Key, bad.Value, bad.Problem, bad.Remedy)
	}
}

// Take sets a number or a text of an entry from how it is written, unless there is a fault in it.
func (f *Field) Take(e *Entry, text string) *fault.Fault {
	if f.Text != nil {
		*f.Text(e) = text
		return nil
	}
	q, err := quantity.Parse(text, f.Dimension)
	bad := fault.Fault{Key: f.Key, Value: strconv.Quote(text)}
	switch {
	case err != nil:
		bad = fault.In(err)[0]
		bad.Key = f.Key
	case q.Value < 0 && f.Dimension != quantity.Temperature:
		bad.Problem, bad.Remedy = "negative", "give a figure that is not"
	case q.Value > 1 && f.Dimension == quantity.Fraction:
		bad.Problem, bad.Remedy = "is more than the whole", "write it as in \"30 %\" or \"0.3\""
	default:
		*f.Number(e) = q.Value
		return nil
	}
	return &bad
}

// checkWords asks for date and kind.
func (e *Entry) checkWords(wrong func(key, value, problem, remedy string)) {
	if _, err := e.Day(); err != nil {
		problem := "is no day of the calendar"
		if e.Date == "" {
			problem = "is missing"
		}
		wrong("date", e.Date, problem, `write year, month and day, as in "2026-05-17" or "2026-05-17 14:30"`)
	}
	for _, k := range Kinds() {
		if string(e.Kind) == k {
			return
		}
	}
	problem := "is no kind of entry"
	if e.Kind == "" {
		problem = "is missing"
	}
	wrong("kind", string(e.Kind), problem, "there are "+strings.Join(Kinds(), ", "))
}

// Day is the entry's day.
func (e *Entry) Day() (time.Time, error) {
	day := e.Date
	if len(day) > len(time.DateOnly) && (day[len(time.DateOnly)] == ' ' || day[len(time.DateOnly)] == 'T') {
		day = day[:len(time.DateOnly)]
	}
	return time.Parse(time.DateOnly, day)
}

// asText is a value as text: strings, days of TOML, and bare numbers.
func asText(v any) (string, bool) {
	switch x := v.(type) {
	case string:
		return x, true
	case toml.LocalDate:
		return x.String(), true
	case toml.LocalDateTime:
		return strings.Replace(x.String(), "T", " ", 1), true
	case time.Time:
		return x.Format("2006-01-02 15:04"), true
	case int64:
		return strconv.FormatInt(x, 10), true
	case float64:
		if !math.IsNaN(x) && !math.IsInf(x, 0) {
			return strconv.FormatFloat(x, 'g', -1, 64), true
		}
	}
	return "", false
}

func textsOf(v any) []string {
	list, ok := v.([]any)
	if !ok {
		return nil
	}
	var out []string
	for _, x := range list {
		s, ok := x.(string)
		if !ok {
			return nil
		}
		out = append(out, s)
	}
	return out
}

func resultsOf(v any) (map[string]string, bool) {
	table, ok := v.(map[string]any)
	if !ok {
		return nil, false
	}
	out := map[string]string{}
	for name, x := range table {
		text, ok := asText(x)
		if !ok {
			return nil, false
		}
		out[name] = text
	}
	return out, true
}
