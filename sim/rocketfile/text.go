package rocketfile

import "bytes"

// WithText is the file with another text in place of its own, as if it had
// been edited so: it lives where f lives, and its curves are found as f's are.
// What is wrong with the text are a fault.List.
func (f *File) WithText(text []byte) (*File, error) {
	doc, faults := parse(f.rd.doc.name, f.rd.doc.dir, bytes.Clone(text))
	if err := faults.sorted(f.rd.doc.name); err != nil {
		return nil, err
	}
	return f.with(doc)
}
