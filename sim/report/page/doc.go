// Package page lays text out: lines and tables in 80 columns for a terminal, and
// documents that are written as such text and as Markdown to print. It knows no rockets.
package page
