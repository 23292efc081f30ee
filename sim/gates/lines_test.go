package gates

import (
	"context"
	"regexp"
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"ullage/sim/chamber"
	"ullage/sim/rocket"
	"ullage/sim/rocketfile"
)

// A line with a key, and one with the head of a table.
var (
	keyed  = regexp.MustCompile(`^\s*("[^"]+"|[A-Za-z_.]+)\s*=`)
	headed = regexp.MustCompile(`^\s*\[`)
)

// anotherShape are rows of a part that goes with its lines: without it the rocket is another, with nothing there that could be judged.
var anotherShape = []string{checkTaper}

// cautions are rows that never fail: nothing is a go for their being gone.
var cautions = []string{checkSqueeze, checkFilled, checkExtrude}

// without are the texts with one key, or one table, taken out, each with what it is.
func without(text string) map[string]string {
	lines := strings.Split(text, "\n")
	out := map[string]string{}
	table, end := "", 0
	for i, line := range lines {
		switch {
		case headed.MatchString(line):
			table = strings.TrimSpace(line)
			for end = i + 1; end < len(lines) && !headed.MatchString(lines[end]); end++ {
			}
			out[table] = strings.Join(slices.Concat(lines[:i], lines[end:]), "\n")
		case keyed.MatchString(line) && keyed.FindStringSubmatch(line)[1] != "name": // rows go by it: without it by another
			out[table+" "+line] = strings.Join(slices.Concat(lines[:i], lines[i+1:]), "\n")
		}
	}
	return out
}

// lessKnown holds that a rocket of whose file something was taken out is no better for it: its verdict is no better, no
// row passes that did not, and where a row is gone that said go, the whole does not say it any more.
func lessKnown(t *testing.T, what string, was, is *Verdict) {
	grade := map[string]int{WordNoGo: 0, WordOpen: 1, WordGo: 2}
	assert.LessOrEqual(t, grade[is.Word()], grade[was.Word()], what)
	rows := map[string]*Check{}
	for i := range is.Checks {
		rows[is.Checks[i].Key] = &is.Checks[i]
	}
	for i := range was.Checks {
		c := &was.Checks[i]
		now := rows[c.Key]
		if now == nil {
			assert.True(t, !is.Pass() || slices.Contains(anotherShape, c.Key) || slices.Contains(cautions, c.Key), "%s: %s is gone, and it is a go", what, c.Key)
			continue
		}
		assert.False(t, !c.Pass && now.Pass, "%s: %s passes", what, c.Key)
	}
}

// No key and no table of any example, nor of its kin that is a go, makes a rocket any better by being taken out of its file.
func TestNoLineTakenOutMakesItBetter(t *testing.T) {
	tried := 0
	for _, k := range kins {
		texts := []string{string(k.open(t).Text())}
		if k.more != "" {
			texts = append(texts, string(k.bare(t)))
		}
		for _, text := range texts {
			read := func(text string) *Verdict {
				f, err := rocketfile.Read(k.file+".toml", "../../testdata", []byte(text))
				if err != nil {
					return nil
				}
				r := f.Rocket()
				r.Power = k.power
				v, err := Judge(context.Background(), r, Options{Today: today})
				if err != nil {
					return nil
				}
				return &v
			}
			was := read(text)
			require.NotNil(t, was)
			for what, less := range without(text) {
				if is := read(less); is != nil {
					lessKnown(t, k.file+" on "+string(k.power)+" without "+what, was, is)
					tried++
				}
			}
		}
	}
	assert.Greater(t, tried, 400)
}

// Beside a motor nobody knows what builds up in a closed chamber of which nothing is said; in an open one nothing does.
func TestChamberBesideAMotor(t *testing.T) {
	for name, test := range map[string]struct {
		set  func(r *rocket.Rocket)
		keys []string // asked for
		gone bool
	}{
		"described":         {set: func(*rocket.Rocket) {}},
		"said to be sealed": {set: func(r *rocket.Rocket) { r.Chamber.BesideMotor = chamber.Sealed }},
		"nothing said":      {set: func(r *rocket.Rocket) { r.Chamber.Heating = nil }, keys: []string{"chamber.heating"}},
		"sealed, no more": {set: func(r *rocket.Rocket) { r.Chamber.Heating, r.Chamber.BesideMotor = nil, chamber.Sealed },
			keys: []string{"chamber.heating"}},
		"open":              {set: func(r *rocket.Rocket) { r.Chamber.Heating, r.Chamber.BesideMotor = nil, chamber.Open }, gone: true},
		"open, and warmed":  {set: func(r *rocket.Rocket) { r.Chamber.BesideMotor = chamber.Open }, gone: true},
		"water, no chamber": {set: func(r *rocket.Rocket) { r.Chamber = nil }, keys: []string{"chamber"}},
		"no chamber at all": {set: func(r *rocket.Rocket) { r.Chamber, r.Water = nil, nil }, gone: true},
	} {
		t.Run(name, func(t *testing.T) {
			r := open(t, "heron")
			r.Power = rocket.MotorPower
			test.set(r)
			v := judge(t, r, Options{})
			i := slices.IndexFunc(v.Checks, func(c Check) bool { return c.Key == checkSealed })
			if test.gone {
				assert.Negative(t, i)
				return
			}
			require.GreaterOrEqual(t, i, 0)
			c := &v.Checks[i]
			assert.Equal(t, test.keys == nil, c.Judged && c.Pass)
			if test.keys != nil {
				assert.Equal(t, WordOpen, v.Word())
				assert.Equal(t, test.keys, c.Remedies[0].Keys)
			}
		})
	}
}
