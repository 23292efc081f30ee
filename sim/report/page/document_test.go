package page

import (
	"encoding/xml"
	"errors"
	"io"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// specimen has every kind of block.
func specimen() *Document {
	return &Document{Title: "All *of* it", Sections: []Section{
		{Blocks: []Block{Facts{{"wall", "0.8 mm"}, {"a label that is rather long", "kept whole"}}}},
		{Name: "First", Blocks: []Block{
			Prose(strings.Repeat("words ", 12) + "and 20 mm of it"), Alarm("Keep away."),
			Grid{Heads: []GridHead{Words("part"), Figures("use"), Words("kind")},
				Rows: [][]string{{"a|b", "3", "own"}, {strings.Repeat("long ", 20), "40", "typical"}}},
			Steps{Phase: "Do", From: 3, Does: []string{"this", "that"}}, Points{"one", "two"},
		}},
		{Name: "On paper", Print: true, Blocks: []Block{Grid{Heads: AllWords("date", "signed"), Rows: [][]string{{"", ""}}}}},
	}}
}

func TestDocumentAsText(t *testing.T) {
	text := specimen().Text()
	for _, line := range strings.Split(text, "\n") {
		assert.LessOrEqual(t, len([]rune(line)), max(Width, len("  "+strings.Repeat("long ", 20))), line)
		assert.Equal(t, strings.TrimRight(line, " "), line)
	}
	assert.True(t, strings.HasPrefix(text, "All *of* it\n  wall              0.8 mm\n"), text)
	assert.Contains(t, text, "\nFirst\n  words ")
	assert.Contains(t, text, "\n  20 mm of it\n", "a figure keeps its unit")
	assert.Contains(t, text, "  ! Keep away.\n")
	assert.Regexp(t, `(?m)^  a\|b +3 +own$`, text)
	assert.Regexp(t, `(?m)^  (long )+long\n +40 +typical$`, text, "a long name has a line of its own")
	assert.Contains(t, text, "  Do\n   3. this\n   4. that\n  - one\n")
	assert.NotContains(t, text, "On paper")
}

func TestDocumentAsMarkdown(t *testing.T) {
	text := specimen().Markdown()
	for _, want := range []string{
		"# All \\*of\\* it\n", "- **wall**: 0.8 mm\n", "\n## First\n", "> **Keep away.**\n", "| part | use | kind |\n| :--- | ---: | :--- |\n",
		"| a\\|b | 3 | own |\n", "**Do**\n\n3. [ ] this\n4. [ ] that\n", "- one\n- two\n", "## On paper\n", "| date | signed |\n",
	} {
		assert.Contains(t, text, want)
	}
}

func TestTable(t *testing.T) {
	var b strings.Builder
	table := NewTable(&b, Heading{Lines: []string{"what"}, Left: true}, Heading{Lines: []string{"rail", "exit"}, Unit: "m/s", Width: 6})
	require.NoError(t, table.Head())
	require.NoError(t, table.Row("a", "18.2"))
	require.NoError(t, table.Row("nothing"))
	assert.Equal(t, "         rail\n  what   exit\n          m/s\n  a      18.2\n  nothing\n", b.String())
	assert.Equal(t, 2+4+1+6, table.Wide())
	assert.Equal(t, "  b         3", table.Line("b", "3"))
}

func TestPrintable(t *testing.T) {
	assert.Equal(t, "a[2Jb", Printable("a\x1b[2Jb\x07\x9b\u202e"))
	assert.Equal(t, []string{"x", ""}, Printables([]string{"x\n", "\x00"}))
}

func TestDocumentAsHTML(t *testing.T) {
	text := specimen().HTML()
	for _, want := range []string{
		"<title>All *of* it</title>", "<h1>All *of* it</h1>", "<dt>wall</dt><dd>0.8\u00a0mm</dd>", "<h2>First</h2>", `<p class="alarm">Keep away.</p>`,
		`<th scope="col" class="words">part</th><th scope="col" class="figures">use</th>`, `<td class="words">a|b</td><td class="figures">3</td>`,
		"<h3>Do</h3>", `<span class="number">4.</span><i class="box"></i>that</li>`, "<li>one</li>", "<h2>On paper</h2>", `<td class="blank"></td>`,
	} {
		assert.Contains(t, text, want)
	}
	d := xml.NewDecoder(strings.NewReader(text))
	for {
		_, err := d.Token()
		if errors.Is(err, io.EOF) {
			break
		}
		require.NoError(t, err, "well-formed")
	}
	odd := Document{Title: `<i>&"'` + "\x1b[2J", Sections: []Section{{Blocks: []Block{Prose("<script>")}}}}
	assert.NotContains(t, odd.HTML(), "<script>")
	assert.NotContains(t, odd.HTML(), "\x1b")
}

func TestRowsToTick(t *testing.T) {
	d := &Document{Title: "Cut", Sections: []Section{{Blocks: []Block{Grid{Heads: AllWords("piece", "size"), Rows: [][]string{{"a", "1"}}, Ticks: true}}}}}
	assert.Contains(t, d.Text(), "  piece  size\n  a      1\n")
	assert.Contains(t, d.Markdown(), "|  | piece | size |\n| :--- | :--- | :--- |\n| [ ] | a | 1 |\n")
	assert.Contains(t, d.HTML(), `<tr><td><i class="box"></i></td><td class="words">a</td>`)
}
