// Package checklist writes what is done in which order, and who stands where, as lists to tick off: from laying up to
// recovery, each of a rocket's own numbers, as text, Markdown, HTML and JSON. It flies nothing. A list that fills, arms or launches
// is one only for a rocket that is go; what to do about one that did not release or light is told of any.
//
// All of it is common practice, no source, but where a source is named: the range officer and local law come first.
package checklist
