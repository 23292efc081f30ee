package logfile

import "slices"

// layout is how a text is a table.
type layout struct {
	sep       byte
	cells     int // of a row
	first     int // line of the first row, from 1
	header    int // line of the header; 0 for none
	heads     []head
	knows     int // heads that tell a quantity
	score     int
	rowsFound int
	open      bool // rows end with a separator, a header may not
}

// looked is how many lines, but empty ones, are looked at to find the layout.
const looked = 1000

// numbered is a line with its number.
type numbered struct {
	text []byte
	line int
}

// findLayout looks at the beginning of a text and takes the layout in which most of it is
// a table: first the one whose header tells most, then the one with most numbers.
func findLayout(text []byte, least int, s spelled) (layout, bool) {
	var top []numbered
	for l := (lines{rest: text}); len(top) < looked; {
		line, ok := l.next()
		if !ok {
			break
		}
		if len(trim(line)) > 0 {
			top = append(top, numbered{line, l.number})
		}
	}
	var best layout
	for _, sep := range []byte{'\t', ';', ',', '|', blanks} {
		l := layoutOf(top, sep, s)
		if l.rowsFound > 0 && l.cells >= least && (l.knows > best.knows || l.knows == best.knows && l.score > best.score) {
			best = l
		}
	}
	return best, best.rowsFound > 0
}

// layoutOf is the layout with one separator.
func layoutOf(top []numbered, sep byte, s spelled) layout {
	type shape struct {
		cells, numbers, words int
		open                  bool // ends with a separator
	}
	shapes := make([]shape, len(top))
	often := map[int]int{}
	for i, n := range top {
		if _, remark := comment(n.text, sep); remark {
			continue
		}
		x := &shapes[i]
		each(n.text, sep, func(_ int, c []byte) bool {
			x.cells++
			_, is := number(c, sep != ',')
			switch is {
			case isNumber:
				x.numbers++
			case isText:
				x.words++
			}
			x.open = len(trim(c)) == 0
			return true
		})
		if x.numbers > 0 && 2*x.numbers >= x.cells-1 {
			often[x.cells] += x.numbers
		}
	}
	l := layout{sep: sep}
	most := 0
	for cells, n := range often {
		if n > most || n == most && cells > l.cells {
			l.cells, most = cells, n
		}
	}
	first, usual, open := -1, 0, 0
	words := map[int]int{}
	for _, x := range shapes {
		if x.cells == l.cells && x.numbers > 0 {
			words[x.words]++
			if x.open {
				open++
			}
		}
	}
	for n, rows := range words {
		if rows > words[usual] || rows == words[usual] && n < usual {
			usual = n
		}
	}
	for i, x := range shapes {
		if x.cells != l.cells || x.numbers == 0 || 2*x.numbers < x.cells-1 || x.words > usual {
			continue
		}
		if first < 0 {
			first = i
		}
		l.rowsFound++
		l.score += 2*x.numbers - (x.cells - x.numbers)
	}
	l.open = l.rowsFound > 0 && open >= l.rowsFound
	if first >= 0 {
		l.first = top[first].line
		l.findHeader(top[max(0, first-6):first], s)
	}
	return l
}

// findHeader looks in the lines before the first row, from the last one up: a row of
// units, then one of names. Remarks may hold either.
func (l *layout) findHeader(before []numbered, s spelled) {
	var units []string
	for i := len(before) - 1; i >= 0; i-- {
		text, _ := comment(before[i].text, l.sep)
		cells := l.headCells(text)
		if cells == nil {
			continue
		}
		if units == nil && !slices.ContainsFunc(cells, func(c string) bool { return bare(c) != "" && !s.any(bare(c)) }) &&
			slices.ContainsFunc(cells, func(c string) bool { return bare(c) != "" }) && i > 0 {
			if above, _ := comment(before[i-1].text, l.sep); l.headCells(above) != nil {
				units = cells
				continue
			}
		}
		heads := make([]head, len(cells))
		knows := 0
		for k, c := range cells {
			below := ""
			if k < len(units) {
				below = bare(units[k])
			}
			heads[k] = readHead(c, below, s)
			if heads[k].quantity != "" {
				knows++
			}
		}
		if l.heads == nil || knows > l.knows {
			l.heads, l.knows, l.header = heads, knows, before[i].line
		}
		if knows > 0 {
			return
		}
	}
}

// headCells are the cells of a line that may be a header; nil when it has numbers or not as
// many cells as a row.
func (l *layout) headCells(line []byte) []string {
	cells := cellsOf(line, l.sep)
	if l.sep == blanks {
		cells = joined(cells)
		if len(cells) != l.cells {
			cells = apart(line)
		}
	}
	if len(cells) == 0 || len(cells) != l.cells && !(l.open && len(cells) == l.cells-1) {
		return nil
	}
	for _, c := range cells {
		if _, is := number([]byte(c), true); is == isNumber {
			return nil
		}
	}
	return cells
}

// bare is a unit without brackets around it.
func bare(cell string) string {
	rest, within := bracket(cell)
	if len(trim([]byte(rest))) == 0 && len(within) == 1 {
		return within[0]
	}
	return cell
}

// joined puts a unit in brackets to the name before it.
func joined(cells []string) []string {
	var out []string
	for _, c := range cells {
		if n := len(out); n > 0 && c != "" && (c[0] == '(' || c[0] == '[') {
			out[n-1] += " " + c
		} else {
			out = append(out, c)
		}
	}
	return out
}

// apart are heads of several words, with two blanks or a tab between them.
func apart(line []byte) []string {
	var cells []string
	from, gap := 0, 0
	line = trim(line)
	for i := 0; i <= len(line); i++ {
		if i < len(line) && (line[i] == ' ' || line[i] == '\t') {
			gap++
			if line[i] == '\t' {
				gap++
			}
			continue
		}
		if gap > 1 || i == len(line) {
			cells = append(cells, string(trim(line[from:i])))
			from = i
		}
		gap = 0
	}
	return cells
}
