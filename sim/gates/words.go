// Package gates decides go or no-go: the limits that a flight is judged by, the words
// of a verdict, the checks of one drive in calm air, in the day's wind and in the worst
// corner of what is uncertain, and what would mend a check that fails. The verdicts are
// about the limits given and the numbers given; local law and the range officer decide.
package gates

// Level grades a finding. It chooses a colour or a mark where there is one; the
// word beside it always says the same.
type Level int

// The levels. Plain findings are numbers without a verdict.
const (
	Plain Level = iota
	Good
	Caution
	Bad
)

// The verdicts: every word that grades a number, on the screen, in reports and
// in JSON, is one of these.
const (
	WordGo      = "go"
	WordGood    = "good"
	WordAhead   = "ahead"
	WordCutOff  = "cut off"
	WordEarly   = "early"
	WordFar     = "far"
	WordFast    = "fast"
	WordHard    = "hard"
	WordHigh    = "high"
	WordLarge   = "large"
	WordLate    = "late"
	WordLeft    = "left over"
	WordLow     = "low"
	WordNever   = "never"
	WordNoGo    = "no-go"
	WordNone    = "none"
	WordOpen    = "not judged"
	WordOld     = "old"
	WordOver    = "far over"
	WordPartial = "partial"
	WordShort   = "short"
	WordStrong  = "strong"
	WordUnknown = "unknown"
	WordWet     = "wet"
)

// Words lists the verdicts: good, then the others in alphabetical order.
func Words() []string {
	return []string{
		WordGood, WordAhead, WordCutOff, WordEarly, WordFar, WordOver, WordFast, WordGo, WordHard, WordHigh, WordLarge, WordLate, WordLeft, WordLow,
		WordNever, WordNoGo, WordNone, WordOpen, WordOld, WordPartial, WordShort, WordStrong, WordUnknown, WordWet,
	}
}
