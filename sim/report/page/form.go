package page

import "io"

// Form is how a document is written.
type Form int

// The forms of a document.
const (
	AsText     Form = iota // in 80 columns for a terminal, without what is to be filled in
	AsMarkdown             // to print, with boxes to tick and blanks to fill in
	AsHTML                 // the same as one file of HTML
)

// Write writes the document in a form; its error is the writer's.
func (p *Document) Write(w io.Writer, f Form) error {
	write := p.Text
	switch f {
	case AsMarkdown:
		write = p.Markdown
	case AsHTML:
		write = p.HTML
	}
	_, err := io.WriteString(w, write())
	return err
}
