package flown

import (
	"fmt"
	"math"
	"strings"

	"ullage/sim/fault"
	"ullage/sim/flown/logfile"
)

// Asked is a log to be opened, with what a person says of it.
type Asked struct {
	Path    string
	Told    Told
	LeftOut []Stretch
	Release float64 // s by the log's clock; NaN to be found
}

// ParseTold reads the options of the command line that say how a log is read, as a person types
// them: "--column 'height=3 ft' --rate '20 Hz'". Its error is a fault.
func ParseTold(text string) (Told, error) {
	var t Told
	words, err := split(text)
	if err != nil {
		return t, err
	}
	from, to := math.NaN(), math.NaN()
	for len(words) > 0 {
		option, value, joined := strings.Cut(words[0], "=")
		words = words[1:]
		if !joined {
			if len(words) == 0 {
				return t, fault.Fault{Key: option, Problem: "is followed by nothing", Remedy: toldExample}
			}
			value, words = words[0], words[1:]
		}
		var err error
		switch option {
		case "--column":
			_, err = logfile.ParseColumn(value)
			t.Columns = append(t.Columns, value)
		case "--rate":
			_, err = logfile.ParseRate(value)
			t.Rate = value
		case "--height":
			t.Heights, err = ParseHeights(value)
		case "--from":
			from, err = logfile.ParseTime(value)
		case "--to":
			to, err = logfile.ParseTime(value)
		default:
			err = fault.Fault{Key: option, Problem: "says nothing of a log", Remedy: "there are --column, --rate, --height, --from and --to; " + toldExample}
		}
		if err != nil {
			return t, err
		}
	}
	t.From, t.To = Between(from, to)
	return t, nil
}

const toldExample = "write it as in --column 'height=3 ft'"

// Between are the times of Options for where to look, either of them NaN when it is not told.
func Between(from, to float64) (float64, float64) {
	if math.IsNaN(from) && math.IsNaN(to) {
		return 0, 0
	}
	if math.IsNaN(from) {
		from = math.Inf(-1)
	}
	if math.IsNaN(to) {
		to = math.Inf(1)
	}
	return from, to
}

// String is what ParseTold reads.
func (t Told) String() string {
	var parts []string
	add := func(option, value string) { parts = append(parts, option+" '"+value+"'") }
	for _, c := range t.Columns {
		add("--column", c)
	}
	if t.Rate != "" {
		add("--rate", t.Rate)
	}
	if t.Heights != "" && t.Heights != StandardHeights {
		parts = append(parts, "--height "+string(t.Heights))
	}
	if t.To > t.From {
		if !math.IsInf(t.From, 0) {
			add("--from", fmt.Sprintf("%g s", t.From))
		}
		if !math.IsInf(t.To, 0) {
			add("--to", fmt.Sprintf("%g s", t.To))
		}
	}
	return strings.Join(parts, " ")
}

// split parts a text at blanks, but for those between quotes.
func split(text string) ([]string, error) {
	var words []string
	word, quote, in := "", rune(0), false
	for _, r := range text {
		switch {
		case quote != 0 && r == quote:
			quote = 0
		case quote == 0 && (r == '\'' || r == '"'):
			quote, in = r, true
		case quote == 0 && (r == ' ' || r == '\t'):
			if in {
				words = append(words, word)
			}
			word, in = "", false
		default:
			word, in = word+string(r), true
		}
	}
	if quote != 0 {
		return nil, fault.Fault{Problem: fmt.Sprintf("a quote %c is not closed", quote), Remedy: toldExample}
	}
	if in {
		words = append(words, word)
	}
	return words, nil
}
