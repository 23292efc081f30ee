// Package layup writes how a pressure chamber is laid up, as text for a terminal, as Markdown and HTML to
// print and tick off, and as JSON: what the parts are to be, what is cut, what is mixed, the order of work, and what
// the scales said. The steps of the work are here for checklists too (Sheet.Work).
package layup
