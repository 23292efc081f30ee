package rocketfile

import (
	"math"
	"regexp"
	"strings"
	"sync"

	"ullage/sim/fault"
	"ullage/sim/quantity"
)

// SetSpread states the uncertainty of an input, SI, in [spread], with a remark in the line above
// it: where it is from. A spread that is there gives its place to the new one. Its error is a
// fault.List.
func (f *File) SetSpread(input string, sd float64, remark string) (*File, error) {
	in, err := Find(f.rd.rocket, input)
	if err != nil {
		return nil, err
	}
	if !(sd >= 0) || math.IsInf(sd, 0) {
		return nil, fault.List{{Key: "spread." + input, Problem: "no deviation", Remedy: "give a number that is not negative"}}
	}
	value := SpreadText(sd, f.Unit(input), in)
	s := sectionAt("spread")
	doc := f.rd.doc
	if n := doc.spreadOf(input); n != nil {
		doc = doc.edited([]splice{{n.value, value}})
	} else {
		table := doc.table(s, 0)
		with := func(key string) *document { return doc.edited([]splice{doc.insert(s, table, pair{key, value})}) }
		if plain := with(input); plain != nil {
			doc = plain
		} else {
			doc = with(`"` + input + `"`) // where [spread.body] has a header of its own
		}
	}
	if doc != nil && remark != "" {
		doc = doc.remarked(input, remark)
	}
	if doc == nil {
		return nil, fault.List{{Key: "spread." + input, Problem: "cannot be put into this text", Remedy: "edit the file by hand: " + input + " = " + value}}
	}
	return f.with(doc)
}

// SpreadText is a deviation of an input, SI, as a file has it in a unit, to two significant digits.
func SpreadText(sd float64, u quantity.Unit, in Input) string {
	u.Offset = 0
	if u.Name == "%" || u.Name == "" || u.Dimension == quantity.Number {
		return quantity.Exact(quantity.Rounded(sd, 2), quantity.Usual(quantity.Number))
	}
	x := u.FromSI(sd)
	if in.Dimension == quantity.Temperature {
		u.Dimension = quantity.TemperatureDifference
	}
	return quoted(quantity.Exact(u.ToSI(quantity.Rounded(x, 2)), u), `"`)
}

// Settled is a value rounded to what its deviation leaves of it, in the unit that the file uses:
// two digits of the deviation.
func (f *File) Settled(input string, v, sd float64) float64 {
	u := f.Unit(input)
	scale := u.ToSI(1) - u.ToSI(0)
	step := math.Pow(10, math.Floor(math.Log10(sd/scale))-1)
	if !(step > 0) || math.IsInf(step, 0) {
		return v
	}
	if y := u.ToSI(math.Round(u.FromSI(v)/step) * step); !math.IsNaN(y) && !math.IsInf(y, 0) {
		return y
	}
	return v
}

// spreadOf is the node of an input's uncertainty; nil when there is none.
func (d *document) spreadOf(input string) *node {
	for _, n := range d.spreads() {
		if n.spreadName() == input {
			return n
		}
	}
	return nil
}

// remarked puts a remark into the line above an input's uncertainty.
func (d *document) remarked(input, remark string) *document {
	n := d.spreadOf(input)
	if n == nil {
		return nil
	}
	at := d.lineStart(n.key.start)
	indent := ""
	for i := at; i < len(d.text) && (d.text[i] == ' ' || d.text[i] == '\t'); i++ {
		indent += string(d.text[i])
	}
	text := strings.Map(func(r rune) rune {
		if r < ' ' {
			return ' '
		}
		return r
	}, remark)
	return d.edited([]splice{{span{at, at}, indent + "# " + text + d.eol()}})
}

// remarks are the comments of a text; a digest in one names the bytes of a log by the
// beginning of their SHA-256.
var (
	remarks    = sync.OnceValue(func() *regexp.Regexp { return regexp.MustCompile(`(?m)#.*$`) })
	digestWord = sync.OnceValue(func() *regexp.Regexp { return regexp.MustCompile(`sha256:([0-9a-f]{16,64})`) })
)

// digestLength is how much of a digest a remark holds.
const digestLength = 16

// DigestWord is how a remark names the bytes of a log.
func DigestWord(sha256 string) string { return "sha256:" + sha256[:min(len(sha256), digestLength)] }

// HasDigest tells whether a remark of the file names a log by the digest of its bytes.
func (f *File) HasDigest(sha256 string) bool {
	for _, remark := range remarks().FindAllString(string(f.rd.doc.text), -1) {
		for _, m := range digestWord().FindAllStringSubmatch(remark, -1) {
			if strings.HasPrefix(sha256, m[1]) {
				return true
			}
		}
	}
	return false
}
