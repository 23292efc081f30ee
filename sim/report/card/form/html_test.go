package form

import (
	"encoding/xml"
	"errors"
	"fmt"
	"io"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

func html(t *testing.T, c Form) string {
	return written(t, func(b *strings.Builder) error { return WriteHTML(b, c) })
}

// parsed reads a page as strict XML: every element closed, every character escaped. It
// gives the text of each element by its name and class.
func parsed(t *testing.T, page string) map[string][]string {
	t.Helper()
	d := xml.NewDecoder(strings.NewReader(page))
	found := map[string][]string{}
	var open []string
	for {
		token, err := d.Token()
		if errors.Is(err, io.EOF) {
			require.Empty(t, open)
			return found
		}
		require.NoError(t, err)
		switch x := token.(type) {
		case xml.StartElement:
			name := x.Name.Local
			for _, a := range x.Attr {
				if a.Name.Local == "class" {
					name += "." + a.Value
				}
			}
			open = append(open, name)
			found[name] = append(found[name], "")
		case xml.EndElement:
			open = open[:len(open)-1]
		case xml.CharData:
			for _, name := range open {
				of := found[name]
				of[len(of)-1] += string(x)
			}
		}
	}
}

func TestHTMLIsWellFormed(t *testing.T) {
	page := html(t, Form{specimen(), specimen()})
	assert.True(t, strings.HasPrefix(page, "<!DOCTYPE html>\n<html lang=\"en\">"))
	found := parsed(t, page)
	assert.Len(t, found["article"], 2)
	assert.Equal(t, `A < B & "C" | d_e`, found["title"][0])
	assert.Contains(t, found["h1"][0], `A < B & "C" | d_e`)
	assert.Equal(t, []string{"NO-GO", "NO-GO"}, found["p.alarm"])
	assert.Contains(t, found["td.words"], "a <b>part</b>", "markup of a name is text")
	assert.Contains(t, found["td.words"], "! wind")
	assert.Equal(t, "wind", strings.TrimPrefix(found["tr.failed"][0][:len("! wind")], "! "))
	assert.Equal(t, []string{"mend: wait", "mend: wait"}, found["tr.below"])
	assert.Len(t, found["td.hand"], 4)
	assert.Len(t, found["thead"], 4, "a table without heads has none")
	assert.Len(t, found["i.box"], 2*(2+2))
	assert.Empty(t, found["script"])
	assert.Empty(t, found["link"])
	assert.NotContains(t, page, "://")
	assert.NotContains(t, page, "url(")

	p := specimen()
	p.Alarm = ""
	assert.Empty(t, parsed(t, html(t, Form{p}))["p.alarm"])
}

// full is a page with so many rows on it.
func full(rows int) Page {
	p := specimen()
	t := p.Beside[1].Table
	for i := range rows {
		t.Rows = append(t.Rows, Row{Cells: []string{fmt.Sprint("check ", i), "good"}})
	}
	return p
}

func TestFit(t *testing.T) {
	few := full(0)
	size, split := few.fit()
	assert.Equal(t, mostSize, size)
	assert.Equal(t, 1, split)

	last := mostSize
	for _, rows := range []int{20, 40, 60, 80} {
		p := full(rows)
		size, _ := p.fit()
		high, _ := p.high(size)
		assert.LessOrEqual(t, size, last)
		assert.True(t, high <= sheetHigh || size == leastSize, "%d rows", rows)
		last = size
	}
	assert.Less(t, last, mostSize)

	over := full(500)
	size, _ = over.fit()
	assert.Equal(t, leastSize, size, "it runs over rather than shrink to nothing")

	// The taller blocks decide where the columns part.
	tall := full(30)
	tall.Beside = append(tall.Beside, tall.Beside[0])
	_, split = tall.fit()
	assert.Equal(t, 1, split)
	tall.Beside[0], tall.Beside[1] = tall.Beside[1], tall.Beside[0]
	_, split = tall.fit()
	assert.Equal(t, 1, split)
}

// Longer text takes more lines, and a row that needs two is reckoned with two.
func TestHighCountsLines(t *testing.T) {
	one, two := specimen(), specimen()
	two.Beside[1].Table.Rows[1].Below = []string{strings.Repeat("word ", 30)}
	a, _ := one.high(8)
	b, _ := two.high(8)
	assert.InDelta(t, 2*lineHigh*8, b-a, 1e-9, "three lines where there was one")
}
