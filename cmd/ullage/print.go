package main

import (
	"io"

	"ullage/sim/report/page"
)

// printOptions are the forms of a document: text for the terminal where none is asked for.
type printOptions struct {
	JSON     bool `name:"json" xor:"form" help:"One JSON object, in SI units."`
	Markdown bool `xor:"form" help:"A document to print, with boxes to tick and blanks to fill in where it has them."`
	HTML     bool `name:"html" xor:"form" help:"The same document as HTML."`
}

// print writes the document, or what object writes, in the form asked for.
func (o printOptions) print(w io.Writer, document func() page.Document, object func(io.Writer) error) error {
	if o.JSON {
		return object(w)
	}
	form := page.AsText
	switch {
	case o.Markdown:
		form = page.AsMarkdown
	case o.HTML:
		form = page.AsHTML
	}
	doc := document()
	return doc.Write(w, form)
}
