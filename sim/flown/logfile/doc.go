// Package logfile reads what a recorder has written: any table of numbers, in text, with
// a column of time or a known rate. It knows no maker's format and no rocket.
//
// Encoding, separator, decimal comma, preamble, comments and header are found in the text;
// what a column is comes from its header, or is told ([Options]). What was understood is in
// the [Log], so that a wrong guess is seen; what cannot be understood is a [fault.List]
// with line, column and the option that settles it. Values are SI.
package logfile
