// Package bench writes the sheet of a rocket's small parts and settings: seal, static ports, vent, alignment jig,
// recovery electronics, filling; as text for a terminal, as Markdown and HTML to print, and as JSON.
package bench
