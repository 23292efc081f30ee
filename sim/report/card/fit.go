package card

import (
	"math"
	"unicode/utf8"
)

// The sheet that both papers hold: as wide as A4, as high as US Letter, less the margins
// of page.css; pt.
const (
	sheetWide = (210 - 2*9) / 25.4 * 72
	sheetHigh = (279.4 - 2*9) / 25.4 * 72
	gutter    = 14.0
)

// Sizes of type that are tried, pt: below the least it cannot be read in the field.
const (
	mostSize  = 9.4
	leastSize = 5.6
	sizeStep  = 0.1
)

// Measures of the type, in its size; they err to the large side. They follow page.css.
const (
	letter    = 0.52 // width of a letter, on average
	lineHigh  = 1.2
	rowHigh   = lineHigh + 0.21 // of a table, padding and rule in it
	tickHigh  = lineHigh + 0.24
	titleHigh = 1.2 + 0.18 + 0.9 // and the space above
	cellPad   = 0.5 / letter     // letters
	signHigh  = 1.2 + 1.1
)

// fit is the largest size of type with which a page fits the sheet, or the least one,
// and how many of the blocks beside each other stand in the first column.
func (p *Page) fit() (size float64, split int) {
	for n := math.Round((mostSize - leastSize) / sizeStep); n >= 0; n-- {
		size = math.Round((leastSize+n*sizeStep)*10) / 10
		var high float64
		if high, split = p.high(size); high <= sheetHigh {
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
	ticks := 0.0
	for _, t := range b.Ticks {
		ticks += tickHigh + (lines(t, wide/2-4)-1)*lineHigh
	}
	em += ticks / 2 // in two columns, which may be a tick apart
	if len(b.Ticks) > 0 {
		em += tickHigh
	}
	for _, n := range b.Notes {
		em += lines(n, wide)*lineHigh + 0.3
	}
	if len(b.Blanks) > 0 {
		sum := 0.0
		for _, x := range b.Blanks {
			sum += float64(utf8.RuneCountInString(x.Label)) + 26
		}
		em += 0.9 + signHigh*math.Ceil(sum/wide)
	}
	return em
}

// high is how high a table is: its widest columns of words take what the others leave.
func (t *Table) high(wide float64) float64 {
	room := int(wide - cellPad*float64(len(t.Columns)))
	widths := t.widths(room, 0)
	em := rowHigh // the head; names and units may stand above each other
	for _, c := range t.Columns {
		if c.Unit != "" {
			em = rowHigh + lineHigh
		}
	}
	for i := range t.Rows {
		r := &t.Rows[i]
		most := 1.0
		for j, w := range widths {
			most = math.Max(most, lines(r.cell(j), float64(w)))
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
	return float64(len(chopped(text, max(1, int(wide)))))
}
