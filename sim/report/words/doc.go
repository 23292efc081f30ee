// Package words has what every report says in the same words: figures in a system of
// units, names, limits and verdicts, what would mend a failed check, and the cautions that
// go with all of it. It lays out nothing and flies nothing.
package words
