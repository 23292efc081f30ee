package form

import (
	"math"
	"unicode/utf8"

	"ullage/sim/report/page"
)

// The sheet that both papers hold: as wide as A4, as high as US Letter, less the margins
// of page.css; pt.
const (
	pageMargin = 8.0 // mm
	sheetWide  = (210 - 2*pageMargin) / 25.4 * 72
	sheetHigh  = (279.4 - 2*pageMargin) / 25.4 * 72
	gutter     = 14.0
	reserve    = 0.97 // of the height is used: other fonts are a little larger
)

// Sizes of type that are tried, pt: below the least it cannot be read in the field.
const (
	mostSize  = 9.4
	leastSize = 5.6
	sizeStep  = 0.1
)

// Measures of the type, in its size; they err to the large side. They follow page.css.
const (
	letter    = 0.46 // width of a letter, on average
	lineHigh  = 1.2
	rowHigh   = lineHigh + 0.15 // of a table, padding and rule in it
	tickHigh  = lineHigh + 0.18
	titleHigh = 1.2 + 0.18 + 0.7 // and the space above
	cellPad   = 0.8 / letter     // letters
	signGap   = 1.1
	boldShare = 0.94 // of letters that fit in bold type
	markWide  = 2    // letters
	smallUnit = 0.4  // width of a letter of a head, whose unit is in small type
)

// fit is the largest size of type with which a page fits the sheet, or the least one,
// and how many of the blocks beside each other stand in the first column.
func (p *Page) fit() (size float64, split int) {
	for n := math.Round((mostSize - leastSize) / sizeStep); n >= 0; n-- {
		size = math.Round((leastSize+n*sizeStep)*10) / 10
		var high float64
		if high, split = p.high(size); high <= reserve*sheetHigh {
			break
		}
	}
	return size, split
}

// high is how high a page is with a size of type, pt, and the split that makes it least.
func (p *Page) high(size float64) (pt float64, split int) {
	whole := sheetWide / (size * letter)
	half := (sheetWide - gutter) / 2 / (size * letter)
	em := 1.7*1.15*lines(p.Title+p.Kind, whole/1.7) + 0.1
	if p.Alarm != "" {
		em += 3.2*1.15 + 3.2*0.35
	}
	em += 1.15*lineHigh*lines(p.Verdict, whole/1.15) + 0.3
	em += facts(p.Facts, whole)
	columns := math.Inf(1)
	for k := range len(p.Beside) + 1 {
		if h := math.Max(stack(p.Beside[:k], half), stack(p.Beside[k:], half)); h < columns {
			columns, split = h, k
		}
	}
	em += columns + stack(p.Below, whole)
	return em * size, split
}

// facts is how high labels with their texts are, side by side.
func facts(list []Blank, wide float64) float64 {
	sum := 0.0
	for _, b := range list {
		n := float64(utf8.RuneCountInString(b.Label+b.Text)) + 4
		if b.Text == "" {
			n += 24
		}
		sum += n
	}
	if sum == 0 {
		return 0
	}
	return 0.4 + (lineHigh+0.25)*math.Ceil(sum/wide)
}

// stack is how high blocks are above each other, in the size of type.
func stack(blocks []Block, wide float64) float64 {
	em := 0.0
	for i := range blocks {
		em += blocks[i].high(wide)
	}
	return em
}

func (b *Block) high(wide float64) float64 {
	em := titleHigh
	if b.Table != nil {
		em += b.Table.high(wide)
	}
	ticks, highest := 0.0, 0.0
	for _, t := range b.Ticks {
		h := tickHigh + (lines(t, wide/2-4)-1)*lineHigh
		ticks, highest = ticks+h, math.Max(highest, h)
	}
	em += (ticks + highest) / 2 // the two columns may be a tick apart
	for _, n := range b.Notes {
		em += lines(n, wide)*lineHigh + 0.3
	}
	if len(b.Blanks) > 0 {
		sum := 0.0
		for _, x := range b.Blanks {
			sum += float64(utf8.RuneCountInString(x.Label)) + 26
		}
		em += 0.9 - signGap + (lineHigh+signGap)*math.Ceil(sum/wide)
	}
	return em
}

// high is how high a table is: its widest columns of words take what the others leave.
func (t *Table) high(wide float64) float64 {
	room := wide - cellPad*float64(len(t.Columns)-1)
	if t.marked() {
		room = room*boldShare - markWide
	}
	widths := t.widths(int(room), 0)
	sum := 0
	for _, w := range widths {
		sum += w
	}
	least := 1.0
	if float64(sum) > room {
		least = 2 // a browser breaks where it likes
	}
	em := 0.0
	if t.Headed() {
		most := 1.0
		for i, c := range t.Columns {
			most = math.Max(most, lines(c.Head+" "+c.Unit, float64(widths[i])*letter/smallUnit))
		}
		em = rowHigh + (most-1)*lineHigh
	}
	for i := range t.Rows {
		r := &t.Rows[i]
		most := least
		for j, w := range widths {
			most = math.Max(most, lines(r.Cell(j), float64(w)))
		}
		em += rowHigh + (most-1)*lineHigh
		for _, b := range r.Below {
			em += rowHigh + (lines(b, wide-3)-1)*lineHigh
		}
	}
	return em
}

// lines is how many lines text takes, roughly.
func lines(text string, wide float64) float64 {
	return float64(len(page.Chopped(text, max(1, int(wide)))))
}
