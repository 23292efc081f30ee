package page

import (
	_ "embed"
	"fmt"
	"html"
	"strings"
)

//go:embed page.css
var htmlStyle string

// htmlPage gathers a page as HTML that is well-formed XML too.
type htmlPage struct{ strings.Builder }

// HTML writes the document as one file that needs nothing else, to be printed.
func (p *Document) HTML() string {
	var h htmlPage
	h.WriteString("<!DOCTYPE html>\n<html lang=\"en\">\n<head>\n<meta charset=\"utf-8\"/>\n" +
		"<meta name=\"viewport\" content=\"width=device-width, initial-scale=1\"/>\n")
	h.element("title", "", p.Title)
	h.WriteString("<style>\n" + htmlStyle + "</style>\n</head>\n<body>\n<article>\n")
	h.element("h1", "", p.Title)
	for i := range p.Sections {
		x := &p.Sections[i]
		if x.Begins {
			h.WriteString("<section class=\"begins\">\n")
		} else {
			h.WriteString("<section>\n")
		}
		if x.Name != "" {
			h.element("h2", "", x.Name)
		}
		for _, b := range x.Blocks {
			b.html(&h)
		}
		h.WriteString("</section>\n")
	}
	h.WriteString("</article>\n</body>\n</html>\n")
	return h.String()
}

// plain is text that HTML shows as it is.
func plain(text string) string {
	return html.EscapeString(glued(Printable(text)))
}

// element writes text in an element, with a class if one is named.
func (h *htmlPage) element(name, class, text string) {
	open := name
	if class != "" {
		open += ` class="` + class + `"`
	}
	fmt.Fprintf(h, "<%s>%s</%s>\n", open, plain(text), name)
}

func (b Prose) html(h *htmlPage) { h.element("p", "", string(b)) }
func (b Alarm) html(h *htmlPage) { h.element("p", "alarm", string(b)) }

func (b Facts) html(h *htmlPage) {
	h.WriteString("<dl>\n")
	for _, f := range b {
		fmt.Fprintf(h, "<dt>%s</dt><dd>%s</dd>\n", plain(f[0]), plain(f[1]))
	}
	h.WriteString("</dl>\n")
}

func (b Points) html(h *htmlPage) {
	h.WriteString("<ul>\n")
	for _, p := range b {
		h.element("li", "", p)
	}
	h.WriteString("</ul>\n")
}

// htmlBox is there to be ticked.
const htmlBox = `<i class="box"></i>`

func (b Steps) html(h *htmlPage) {
	h.element("h3", "", b.Phase)
	h.WriteString("<ol>\n")
	for i, d := range b.Does {
		fmt.Fprintf(h, "<li><span class=\"number\">%d.</span>%s%s</li>\n", b.From+i, htmlBox, plain(d))
	}
	h.WriteString("</ol>\n")
}

func (b Grid) html(h *htmlPage) {
	h.WriteString("<table>\n")
	if b.named() {
		h.WriteString("<thead><tr>")
		if b.Ticks {
			h.WriteString("<th></th>")
		}
		for _, head := range b.Heads {
			fmt.Fprintf(h, `<th scope="col" class="%s">%s</th>`, head.class(), plain(head.name))
		}
		h.WriteString("</tr></thead>\n")
	}
	h.WriteString("<tbody>\n")
	for _, row := range b.Rows {
		h.WriteString("<tr>")
		if b.Ticks {
			h.WriteString("<td>" + htmlBox + "</td>")
		}
		for j, cell := range row {
			class := b.Heads[j].class()
			if cell == "" { // to be filled in by hand
				class = "blank"
			}
			fmt.Fprintf(h, `<td class="%s">%s</td>`, class, plain(cell))
		}
		h.WriteString("</tr>\n")
	}
	h.WriteString("</tbody>\n</table>\n")
}

// named tells whether any column has a head.
func (b Grid) named() bool {
	for _, h := range b.Heads {
		if h.name != "" {
			return true
		}
	}
	return false
}

func (h GridHead) class() string {
	if h.words {
		return "words"
	}
	return "figures"
}
