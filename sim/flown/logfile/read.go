package logfile

import (
	"bytes"
	"crypto/sha256"
	"encoding/hex"
	"math"
	"strconv"

	"ullage/sim/fault"
)

// mostBytes bounds a log: more rows than any recorder has written.
const mostBytes = 1 << 30

// Plain refuses what is no plain file, such as a folder or a pipe, which may never end. Its error
// is a fault.List.
func Plain(path string) error {
	_, err := fault.Plain(path, fault.Files)
	return notRead(path, err)
}

// notRead is why a log cannot be read; nil for nil.
func notRead(path string, err error) error {
	if err == nil {
		return nil
	}
	return fault.List{{File: path, Problem: fault.Reason(err), Remedy: "name a recorder's log: a table of numbers as text", Err: err}}
}

// Open reads a log from a file. What is wrong with it is a fault.List.
func Open(path string, o Options) (*Log, error) {
	text, err := fault.ReadFile(path, mostBytes, fault.Pipes)
	if err != nil {
		return nil, notRead(path, err)
	}
	return Read(path, text, o)
}

// Digest is that of a log's bytes.
func Digest(text []byte) string {
	sum := sha256.Sum256(text)
	return hex.EncodeToString(sum[:])
}

// DigestOf is that of a log's file, which has to be a plain one.
func DigestOf(path string) (string, error) {
	text, err := fault.ReadFile(path, mostBytes, fault.Files)
	return Digest(text), err
}

// Read reads a log; messages call it by the name. The errors are a fault.List.
func Read(name string, text []byte, o Options) (*Log, error) {
	rd := &reader{log: &Log{Name: name, Digest: Digest(text), Rate: o.Rate}, spelled: newSpelled()}
	if err := rd.read(text, o); err != nil {
		err.File = name
		return nil, fault.List{*err}
	}
	for i := range rd.log.Notes {
		rd.log.Notes[i].File = name
	}
	return rd.log, nil
}

// reader reads one log.
type reader struct {
	log     *Log
	spelled spelled
	layout  layout
	raw     [][]float64 // numbers as written, of log.Columns
	bad     []badCells  // of log.Columns
	skipped badCells    // lines that are no rows
}

// badCells counts what could not be read.
type badCells struct {
	n     int
	line  int // of the first
	value string
}

func (b *badCells) add(line int, value []byte) {
	if b.n++; b.n == 1 {
		b.line = line
		const most = 30
		b.value = strconv.Quote(string(value[:min(len(value), most)]))
	}
}

func (rd *reader) read(text []byte, o Options) *fault.Fault {
	if len(bytes.TrimSpace(text)) == 0 {
		return &fault.Fault{Problem: "is empty", Remedy: "a log is a table: a row of heads, then rows of numbers"}
	}
	text, encoding, bad := decode(text)
	if bad != nil {
		return bad
	}
	rd.log.Encoding = encoding
	if bytes.IndexByte(text, '\n') < 0 {
		text = bytes.ReplaceAll(text, []byte{'\r'}, []byte{'\n'})
	}
	least := 1
	for _, c := range o.Columns {
		least = max(least, c.At)
	}
	var found bool
	if rd.layout, found = findLayout(text, least, rd.spelled); !found {
		remedy := "a log has rows of numbers with one separator between them"
		if least > 1 {
			remedy = "no row has " + strconv.Itoa(least) + " columns: look at --column"
		}
		return &fault.Fault{Problem: "holds no table of numbers", Remedy: remedy}
	}
	rd.log.Separator, rd.log.HeaderLine = separatorName(rd.layout.sep), rd.layout.header
	if bad := rd.settleColumns(o); bad != nil {
		return bad
	}
	rd.rows(text)
	return rd.finish(o)
}

// rows reads the numbers of the columns that matter.
func (rd *reader) rows(text []byte) {
	columns := rd.log.Columns
	rd.raw, rd.bad = make([][]float64, len(columns)), make([]badCells, len(columns))
	place := make([]int, rd.layout.cells+1) // of a cell in columns, from 1; 0 for none
	last := 0
	for i, c := range columns {
		place[c.At-1] = i + 1
		last = max(last, c.At-1)
	}
	expect := rows(text, rd.layout)
	for i := range rd.raw {
		rd.raw[i] = make([]float64, 0, expect)
	}
	sep := rd.layout.sep
	comma := sep != ','
	row := make([]float64, len(columns))
	for l := (lines{rest: text}); ; {
		line, more := l.next()
		if !more {
			return
		}
		if l.number < rd.layout.first || len(trim(line)) == 0 {
			continue
		}
		if _, remark := comment(line, sep); remark {
			continue
		}
		for i := range row {
			row[i] = math.NaN()
		}
		numbers, texts := 0, 0
		each(line, sep, func(k int, c []byte) bool {
			if k >= len(place) || place[k] == 0 {
				return k < last
			}
			v, is := number(c, comma)
			switch is {
			case isNumber:
				numbers++
				row[place[k]-1] = v
				rd.log.DecimalComma = rd.log.DecimalComma || bytes.IndexByte(c, ',') >= 0
			case isText:
				texts++
				rd.bad[place[k]-1].add(l.number, trim(c))
			}
			return k < last
		})
		if numbers == 0 {
			if texts > 0 {
				rd.skipped.add(l.number, line)
			}
			continue
		}
		rd.log.Rows++
		for i := range row {
			rd.raw[i] = append(rd.raw[i], row[i])
		}
	}
}

// rows is about how many rows a text has, by the length of the first ones.
func rows(text []byte, l layout) int {
	const some = 200
	n, size := 0, 0
	for s := (lines{rest: text}); n < some; {
		line, ok := s.next()
		if !ok {
			break
		}
		if s.number >= l.first {
			n++
			size += len(line) + 1
		}
	}
	if n == 0 {
		return 0
	}
	return len(text)/(size/n+1) + some
}
