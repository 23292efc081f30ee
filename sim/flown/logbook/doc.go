// Package logbook keeps the logbook of a rocket: a text that a person reads and edits, one dated
// entry for each time its chamber was pressurised or it flew. Entries are added at the end and
// never rewritten. It knows no rocket.
package logbook
