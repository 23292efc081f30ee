package form

import (
	_ "embed"
	"html/template"
	"io"
	"strings"
)

//go:embed page.gohtml
var pageSource string

//go:embed page.css
var pageStyle string

// pageTemplate is the page; what is embedded cannot fail to parse.
func pageTemplate() *template.Template {
	return template.Must(template.New("page").Parse(pageSource))
}

// sheet is a page with what print needs.
type sheet struct {
	Page    *Page
	Size    float64   // of its type, pt
	Columns [][]Block // what stands beside, shared out
}

// WriteHTML writes a card as one file of HTML that is well-formed XML too.
func WriteHTML(w io.Writer, c Form) error {
	data := struct {
		Title  string
		Style  template.CSS
		Sheets []sheet
	}{Style: template.CSS(pageStyle)}
	for i := range c {
		p := &c[i]
		if data.Title == "" {
			data.Title = p.Title
		}
		size, split := p.fit()
		data.Sheets = append(data.Sheets, sheet{p, size, [][]Block{p.Beside[:split], p.Beside[split:]}})
	}
	var b strings.Builder
	if err := pageTemplate().Execute(&b, data); err != nil {
		return err
	}
	_, err := io.WriteString(w, b.String())
	return err
}

// Class is the column's class in HTML.
func (c Column) Class() string { return [...]string{"words", "figures", "hand"}[c.Kind] }

// Failed tells whether the row is marked as such.
func (r Row) Failed() bool { return r.Mark == Failed }
