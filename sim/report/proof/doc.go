// Package proof writes all about a rocket's pressure chamber, as text for a terminal, as
// Markdown to print and keep beside the pump, and as JSON: what it is made of and holds, how
// to prove it with water, what it stores, and what a flight asks of it and of the recovery
// mount. A section is a method of proof, named in newPage.
package proof
