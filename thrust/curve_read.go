package thrust

import (
	"bytes"
	"errors"
	"fmt"
	"io"
	"strconv"
	"strings"
	"unicode"
	"unicode/utf8"

	"ullage/sim/fault"
)

const (
	maxLineBytes  = 1000
	maxCurveBytes = 1 << 20
)

// format is a way to write a thrust table.
type format struct {
	header string                                 // the row it begins with, by which it is told from others
	row    func(k *checker, line int, row string) // takes a row below that: one point
}

// formats are the ways there are; the first is the one to recommend.
var formats = []format{
	{curveHeader, (*checker).commaRow},
}

const curveHeader = "time_s,thrust_n"

// ReadCurve reads a thrust table: text with a header row, in CSV
// "time_s,thrust_n", then one point a row under the rules of [NewCurve]. "#"
// starts a comment. Lines end in LF or CRLF, and a UTF-8 byte order mark is
// skipped. A malformed table gives a [fault.List] with all its faults by line;
// any other error is the reader's.
func ReadCurve(r io.Reader) (*Curve, error) {
	text, err := io.ReadAll(io.LimitReader(r, maxCurveBytes+1))
	if err != nil {
		return nil, fmt.Errorf("reading a thrust curve: %w", err)
	}
	text = bytes.TrimPrefix(text, []byte("\uFEFF"))
	if bad, ok := notText(text); !ok {
		return nil, fault.List{bad}
	}

	check := checker{foreign: true}
	var is *format
	number := 0
	for line := range bytes.Lines(text) {
		if number++; check.full() {
			break
		}
		if len(line) > maxLineBytes {
			check.add(number, excerpt(string(line)), fmt.Sprintf("the line is longer than %d characters", maxLineBytes),
				"put each point on a line of its own")
			continue
		}
		row, _, _ := strings.Cut(string(line), "#")
		row = strings.TrimSpace(row)
		if row == "" {
			continue
		}
		if is == nil {
			if is = formatOf(row); is != nil {
				check.foreign = false
				continue
			}
			is = &formats[0]
			check.add(number, excerpt(row), "the first row is not the header", "begin with the row "+curveHeader)
			if !startsNumber(row) {
				continue // some other header, not a point
			}
		}
		check.rows++
		is.row(&check, number, row)
	}
	return check.curve()
}

// notText finds what no table in plain text holds: too many bytes, control
// characters, bytes that are not UTF-8.
func notText(text []byte) (bad fault.Fault, ok bool) {
	const remedy = "save the table as plain CSV text in UTF-8"
	if len(text) > maxCurveBytes {
		return fault.Fault{Problem: fmt.Sprintf("the file is larger than %d bytes", maxCurveBytes),
			Remedy: fmt.Sprintf("give a table of at most %d points", MaxPoints)}, false
	}
	line := 1
	for i := 0; i < len(text); {
		r, size := utf8.DecodeRune(text[i:])
		switch {
		case r == '\n':
			line++
		case r == '\r' && !bytes.HasPrefix(text[i+1:], []byte("\n")):
			return fault.Fault{Line: line, Value: `"\r"`, Problem: "a carriage return stands alone", Remedy: "end the lines with LF or CRLF"}, false
		case r == utf8.RuneError && size == 1:
			return fault.Fault{Line: line, Value: fmt.Sprintf("byte 0x%02x", text[i]), Problem: "the file is not UTF-8 text", Remedy: remedy}, false
		case unicode.IsControl(r) && r != '\t' && r != '\r':
			return fault.Fault{Line: line, Value: fmt.Sprintf("byte 0x%02x", text[i]), Problem: "the file is not text", Remedy: remedy}, false
		}
		i += size
	}
	return fault.Fault{}, true
}

// formatOf is the format that begins with a row, blanks between its words allowed; nil
// when none does.
func formatOf(row string) *format {
	header := strings.Join(strings.Fields(row), "")
	for i := range formats {
		if formats[i].header == header {
			return &formats[i]
		}
	}
	return nil
}

// startsNumber tells whether a row can be a point.
func startsNumber(row string) bool { return strings.IndexByte("+-.0123456789", row[0]) >= 0 }

// commaRow takes a time in s, a comma and a thrust in N.
func (k *checker) commaRow(line int, row string) {
	fields := strings.Split(row, ",")
	if len(fields) != 2 {
		remedy := "give a time in s, a comma and a thrust in N, such as 0.02,85.0"
		if strings.Contains(row, ";") {
			remedy = "part the two with a comma, not a semicolon, and write decimals with a point"
		} else if len(fields) > 2 {
			remedy = "give only a time and a thrust, and write decimals with a point"
		}
		k.add(line, excerpt(row), fmt.Sprintf("the row has %d of 2 values", len(fields)), remedy)
		return
	}
	k.point(line, k.read(line, timeColumn, fields[0]), k.read(line, thrustColumn, fields[1]))
}

// read reads a plain decimal number. What ParseFloat takes besides (hexadecimal,
// words, underscores) is refused.
func (k *checker) read(line int, c column, field string) reading {
	text := strings.TrimSpace(field)
	if text == "" {
		k.add(line, "", "the "+c.name+" is missing", "give it as a plain number of "+c.unit)
		return reading{}
	}
	v, err := strconv.ParseFloat(text, 64)
	decimal := strings.Trim(text, "+-.0123456789eE") == ""
	switch {
	case decimal && err == nil:
		return reading{value: v, text: excerpt(text), ok: true}
	case decimal && errors.Is(err, strconv.ErrRange):
		k.add(line, excerpt(text), "the "+c.name+" is out of range", c.remedy())
	default:
		k.add(line, excerpt(text), "the "+c.name+" is not a number", "give a plain number of "+c.unit+", without the unit")
	}
	return reading{}
}
