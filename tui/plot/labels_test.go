package plot

import (
	"math"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"
)

// marked is a chart of so many columns from 0 to columns−1 with marks above.
func marked(columns, rows int, marks ...VerticalMark) *Grid {
	s := Stack{
		X: Axis{Min: 0, Max: float64(columns - 1), Hide: true},
		Charts: []Chart{{
			Y:      Axis{Hide: true},
			Series: []Series{{Y: []float64{0}, Ink: TraceA}},
			Marks:  marks,
		}},
	}
	return s.Draw(columns, rows)
}

func rowsOf(g *Grid) []string { return strings.Split(g.String(), "\n") }

func TestMarkLabels(t *testing.T) {
	for _, c := range []struct {
		name  string
		rows  int
		marks []VerticalMark
		want  []string // the rows above the plotting area
	}{
		{"centred", 5, []VerticalMark{{X: 10, Label: "top"}}, []string{"         top"}},
		{"held inside", 5, []VerticalMark{{X: 0, Label: "rail"}, {X: 29, Label: "ground"}}, []string{"rail                    ground"}},
		{"side by side", 5, []VerticalMark{{X: 10, Label: "top"}, {X: 12, Label: "main"}}, []string{"         top main"}},
		{"in the order of their lines", 5, []VerticalMark{{X: 12, Label: "main", Priority: 9}, {X: 10, Label: "top"}}, []string{"         top main"}},
		{"pushed to the right", 5, []VerticalMark{{X: 10, Label: "liquid out", Short: "l", Priority: 1}, {X: 11, Label: "gas out", Short: "g"}}, []string{"      liquid out gas out"}},
		{"short where the word has no room", 5, []VerticalMark{{X: 28, Label: "liquid out", Short: "l", Priority: 1}, {X: 29, Label: "gas out", Short: "g"}}, []string{"                  liquid out g"}},
		{"short for all rather than long for one", 5, []VerticalMark{{X: 0, Label: "liquid out", Short: "l", Priority: 1}, {X: 0, Label: "gas out", Short: "g"}, {X: 1, Label: "top", Short: "t"}}, []string{"l g top"}},
		{"none where nothing has", 5, []VerticalMark{{X: 10, Label: "liquid out", Priority: 1}, {X: 10, Label: "gas out"}}, []string{"      liquid out"}},
		{"first come where priorities are equal", 5, []VerticalMark{{X: 10, Label: "ejection charge"}, {X: 10, Label: "liquid out"}}, []string{"   ejection charge"}},
		{"in two rows, with a lead", 12, []VerticalMark{{X: 20, Label: "gas out", Priority: 1}, {X: 28, Label: "ejection charge"}, {X: 3, Label: "rail"}}, []string{"               ejection charge", "  rail           gas out    ┊"}},
		{"out of sight", 5, []VerticalMark{{X: -1, Label: "before"}, {X: 31, Label: "after"}, {X: math.NaN(), Label: "never"}}, []string{""}},
	} {
		assert.Equal(t, c.want, rowsOf(marked(30, c.rows, c.marks...))[:len(c.want)], c.name)
	}
}

// However many marks, their labels stand apart, near their lines, in order.
func TestMarkLabelsNeverOverlap(t *testing.T) {
	words := []string{"r", "top", "main", "liquid out", "ejection charge"}
	rapid.Check(t, func(t *rapid.T) {
		rows := []labelRow{{lo: rapid.IntRange(0, 20).Draw(t, "lo"), hi: rapid.IntRange(20, 120).Draw(t, "hi")}}
		marks := make([]placedMark, rapid.IntRange(0, 30).Draw(t, "marks"))
		accepted := 0
		for i := range marks {
			m := &marks[i]
			m.VerticalMark = &VerticalMark{}
			m.column = rapid.IntRange(0, 119).Draw(t, "column")
			if m.place(rows, rapid.SampledFrom(words).Draw(t, "word"), Braille) {
				accepted++
			}
		}
		row := rows[0]
		require.Len(t, row.marks, accepted)
		end, column := row.lo-1, -1
		for _, m := range row.marks {
			require.Greater(t, m.start, end, "a blank between")
			require.GreaterOrEqual(t, m.column, column)
			require.LessOrEqual(t, m.start, m.column+stray)
			require.GreaterOrEqual(t, m.start+m.size-1, m.column-stray)
			end, column = m.start+m.size, m.column
		}
		require.LessOrEqual(t, end, max(row.hi, row.lo-1))
	})
}

func TestEveryMarkHasItsLine(t *testing.T) {
	marks := make([]VerticalMark, 300)
	for i := range marks {
		marks[i] = VerticalMark{X: float64(i % 60), Label: "label", Short: "l", Priority: i}
	}
	g := marked(60, 8, marks...)
	assert.Equal(t, strings.Repeat("┊", 60), rowsOf(g)[3])
}

func TestTitleKeepsItsPlace(t *testing.T) {
	s := Stack{X: Axis{Hide: true}, Charts: []Chart{{
		Y:      Axis{Title: "height", Unit: "m", Hide: true},
		Note:   "+12 m",
		Series: []Series{{Y: []float64{0, 1}}},
		Marks:  []VerticalMark{{X: 0, Label: "rail"}, {X: 1, Label: "ground", Short: "g"}},
	}}}
	assert.Equal(t, "height m            ground +12 m", rowsOf(s.Draw(32, 5))[0], "and no label far from its line")
	assert.Equal(t, "height m", rowsOf(s.Draw(8, 5))[0], "no room for more")
	assert.Equal(t, "heig…", rowsOf(s.Draw(5, 5))[0])
}

func TestStackMarksAreLabelledOnce(t *testing.T) {
	s := flightStack(Braille, 200)
	assert.Equal(t, 1, strings.Count(s.Draw(100, 36).String(), "top"))
}

func TestEndLabelsStandInOrder(t *testing.T) {
	ends := func(rows int, y ...float64) string {
		s := Stack{X: Axis{Hide: true}, Charts: []Chart{{Y: Axis{Min: 0, Max: 9, Hide: true}}}}
		for _, v := range y {
			s.Charts[0].Series = append(s.Charts[0].Series, Series{Y: []float64{5, v}, End: string(rune('0' + int(v)))})
		}
		g := s.Draw(20, rows)
		out := ""
		for row := range rows {
			out += string(g.At(19, row).Rune)
		}
		return out
	}
	assert.Equal(t, "9       1 ", ends(10, 1, 9))
	assert.Equal(t, "       210", ends(10, 0, 2, 1), "pushed up from the last row")
	assert.Equal(t, "987       ", ends(10, 9, 7, 8))
	assert.Equal(t, "32", ends(2, 1, 2, 3), "the later series have them")
}

func TestPointLabelsHideNoTrace(t *testing.T) {
	s := Stack{X: Axis{Hide: true}, Charts: []Chart{{
		Y:      Axis{Hide: true},
		Series: []Series{{Y: []float64{0, 1}, Ink: TraceA}},
		Points: []PointMark{{X: 0.5, Y: 0.5, Label: "here"}},
	}}}
	without := s
	without.Charts = []Chart{s.Charts[0]}
	without.Charts[0].Points = nil
	a, b := s.Draw(40, 9), without.Draw(40, 9)
	assert.Contains(t, a.String(), "here")
	assert.Equal(t, strings.Count(inked(b), "a")-1, strings.Count(inked(a), "a"), "the sign alone hides a cell")

	for i := range 40 { // a plotting area full of dots
		s.Charts[0].Series[0].Y = append(s.Charts[0].Series[0].Y, float64(i%2), float64(i%2))
	}
	assert.NotContains(t, s.Draw(40, 9).String(), "here")
}

func TestSigns(t *testing.T) {
	for _, c := range []struct {
		charset Charset
		sign    rune
		want    string
	}{
		{Braille, 0, "×"}, {Braille, 'B', "B"}, {Braille, '◆', "◆"}, {Braille, '火', "?"},
		{ASCII, 0, "x"}, {ASCII, '×', "x"}, {ASCII, '\n', "x"}, {ASCII, '\u0301', "x"}, {ASCII, '◆', "?"},
	} {
		s := Stack{Charset: c.charset, Charts: []Chart{{Points: []PointMark{{X: 1, Y: 1, Sign: c.sign}}}}}
		assert.Contains(t, s.Draw(21, 7).String(), c.want)
	}
}

func TestBands(t *testing.T) {
	s := Stack{X: Axis{Min: 0, Max: 10, Hide: true}, Charts: []Chart{{Y: Axis{Hide: true}}}}
	shaded := func(from, to float64) string {
		s.Bands = []Band{{from, to}}
		return rowsOf(s.Draw(11, 3))[0]
	}
	assert.Equal(t, "  · ·", shaded(2, 4))
	assert.Equal(t, "  · ·", shaded(4, 2))
	assert.Equal(t, "        · ·", shaded(8, math.Inf(1)))
	assert.Equal(t, "", shaded(11, 12))
	assert.Equal(t, "", shaded(math.NaN(), 4))
}
