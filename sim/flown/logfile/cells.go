package logfile

import "bytes"

// The separators of cells; blanks are any run of spaces and tabs.
const blanks = ' '

// separatorName is how people call a separator.
func separatorName(sep byte) string {
	switch sep {
	case '\t':
		return "tab"
	case ';':
		return "semicolon"
	case ',':
		return "comma"
	case '|':
		return "bar"
	}
	return "blanks"
}

// each calls a function with every cell of a line and its place, until it says enough.
// Quotes keep a separator from parting.
func each(line []byte, sep byte, take func(i int, cell []byte) bool) {
	if sep == blanks {
		i := 0
		for line = trim(line); len(line) > 0; line = trim(line) {
			n := bytes.IndexAny(line, " \t")
			if n < 0 {
				n = len(line)
			}
			if !take(i, line[:n]) {
				return
			}
			line = line[n:]
			i++
		}
		return
	}
	quotes := bytes.IndexByte(line, '"') >= 0
	for i := 0; ; i++ {
		n := -1
		if quotes {
			n = unquoted(line, sep)
		} else {
			n = bytes.IndexByte(line, sep)
		}
		if n < 0 {
			take(i, line)
			return
		}
		if !take(i, line[:n]) {
			return
		}
		line = line[n+1:]
	}
}

// unquoted is the first separator outside quotes.
func unquoted(line []byte, sep byte) int {
	within := false
	for i, c := range line {
		switch {
		case c == '"':
			within = !within
		case c == sep && !within:
			return i
		}
	}
	return -1
}

// cellsOf are the cells of a line as texts, without quotes.
func cellsOf(line []byte, sep byte) []string {
	var cells []string
	each(line, sep, func(_ int, c []byte) bool {
		cells = append(cells, string(bytes.Trim(trim(c), `"`)))
		return true
	})
	return cells
}

// lines goes through a text line by line.
type lines struct {
	rest   []byte
	number int // of the line last given, from 1
}

// next gives the next line without its end; false when there is none.
func (l *lines) next() ([]byte, bool) {
	if len(l.rest) == 0 {
		return nil, false
	}
	l.number++
	line := l.rest
	if n := bytes.IndexByte(line, '\n'); n >= 0 {
		line, l.rest = line[:n], line[n+1:]
	} else {
		l.rest = nil
	}
	if n := len(line); n > 0 && line[n-1] == '\r' {
		line = line[:n-1]
	}
	return line, true
}

// comment tells whether a line is a remark, and gives it without its sign.
func comment(line []byte, sep byte) ([]byte, bool) {
	t := trim(line)
	switch {
	case len(t) == 0:
		return t, false
	case t[0] == '#' || t[0] == '%' || t[0] == '!' || t[0] == ';' && sep != ';':
		return bytes.TrimLeft(t, "#%!; "), true
	case bytes.HasPrefix(t, []byte("//")):
		return t[2:], true
	}
	return t, false
}
