// Package machine writes what programs read: numbers and objects of JSON, cells of CSV.
// Values are SI; angles are turned into degrees by whoever writes them.
package machine
