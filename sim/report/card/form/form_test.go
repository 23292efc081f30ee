package form

import (
	"strings"
	"testing"
	"unicode/utf8"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// specimen is a page with one of everything.
func specimen() Page {
	return Page{
		Title: `A < B & "C" | d_e`, Kind: "card", Alarm: "NO-GO", Verdict: "no-go: 1 of 3",
		Facts: []Blank{{Label: "date"}, {Label: "site", Text: "120 m"}},
		Beside: []Block{
			{Title: "weigh", Table: &Table{
				Columns: []Column{{Head: "part"}, {Head: "mass", Unit: "g", Kind: Figures}, {Head: "measured", Kind: ByHand}},
				Rows:    []Row{{Cells: []string{"body", "9"}}, {Cells: []string{"a <b>part</b>", "120"}}}}},
			{Title: "checks", Table: &Table{
				Columns: []Column{{Head: "check"}, {Head: "word"}},
				Rows: []Row{{Cells: []string{"exit", "good"}}, {Cells: []string{"wind", "strong"}, Mark: Failed, Below: []string{"mend: wait"}},
					{Cells: []string{"margin", "unknown"}, Mark: Doubt}}},
				Notes: []string{"A note."}},
		},
		Below: []Block{
			{Table: &Table{Columns: []Column{{}, {}}, Rows: []Row{{Cells: []string{"no", "heads"}}}}},
			{Title: "order", Ticks: []string{"first", "then"}},
			{Title: "sign", Blanks: []Blank{{Label: "flyer"}, {Label: "decision", Choices: []string{"go", "no-go"}}}},
		},
	}
}

func written(t *testing.T, write func(*strings.Builder) error) string {
	t.Helper()
	var b strings.Builder
	require.NoError(t, write(&b))
	return b.String()
}

func text(t *testing.T, c Form) string {
	return written(t, func(b *strings.Builder) error { return WriteText(b, c) })
}

func markdown(t *testing.T, c Form) string {
	return written(t, func(b *strings.Builder) error { return WriteMarkdown(b, c) })
}

func TestText(t *testing.T) {
	edge := strings.Repeat("#", 80)
	side := "#" + strings.Repeat(" ", 78) + "#"
	want := `A < B & "C" | d_e` + strings.Repeat(" ", 59) + `card

` + edge + "\n" + side + "\n#" + strings.Repeat(" ", 36) + "NO-GO" + strings.Repeat(" ", 37) + "#\n" + side + "\n" + edge + `

no-go: 1 of 3

date  ________________________________________
site  120 m

WEIGH
  part           mass  measured
                    g
  body              9  __________
  a <b>part</b>   120  __________

CHECKS
  check   word
  exit    good
! wind    strong
      mend: wait
? margin  unknown
  A note.

  no  heads

ORDER
  [ ] first
  [ ] then

SIGN
  flyer     ________________________________________
  decision  [ ] go    [ ] no-go
`
	assert.Equal(t, want, text(t, Form{specimen()}))
	assert.Equal(t, want+"\f"+want, text(t, Form{specimen(), specimen()}), "pages are parted by a form feed")
}

// Whatever is long is broken: no line of text is wider than the page.
func TestTextKeepsItsWidth(t *testing.T) {
	p := specimen()
	long := strings.Repeat("unbroken", 20)
	words := strings.Repeat("some words ", 30)
	p.Title, p.Verdict = long, words
	p.Beside[0].Table.Rows[0].Cells = []string{long, "1.23 m/s"}
	p.Beside[1].Table.Rows[1].Below = []string{words + long}
	p.Below[1].Ticks = []string{words, long}
	for _, l := range strings.FieldsFunc(text(t, Form{p, p}), func(r rune) bool { return r == '\n' || r == '\f' }) {
		assert.LessOrEqual(t, utf8.RuneCountInString(l), textWidth, l)
	}
	assert.Contains(t, text(t, Form{p}), "1.23 m/s  __________", "figures are not broken")
}

func TestMarkdown(t *testing.T) {
	want := `# A \< B \& "C" \| d\_e – card

# **NO-GO**

**no-go: 1 of 3**

- date: \_\_\_\_\_\_\_\_\_\_\_\_\_\_\_\_\_\_\_\_
- site: 120 m

## weigh

| part | mass g | measured |
| --- | ---: | --- |
| body | 9 |  |
| a \<b\>part\</b\> | 120 |  |

## checks

|  | check | word |
| --- | --- | --- |
|  | exit | good |
| ! | **wind** | **strong** |
|  | mend: wait |  |
| ? | margin | unknown |

A note.

|  |  |
| --- | --- |
| no | heads |

## order

- [ ] first
- [ ] then

## sign

- flyer: \_\_\_\_\_\_\_\_\_\_\_\_\_\_\_\_\_\_\_\_
- decision:
  - [ ] go
  - [ ] no-go

`
	assert.Equal(t, want, markdown(t, Form{specimen()}))
	assert.Equal(t, want+"---\n\n"+want, markdown(t, Form{specimen(), specimen()}))
}
