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

// without are the texts with one key, one table, or all that is in one taken out, each with what it is.
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
			out[table+" emptied"] = strings.Join(slices.Concat(lines[:i+1], lines[end:]), "\n")
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

// worse are inputs that no flight depends on, of which less is worse, or more. Not among them is the proof on record, of which too
// much is as bad; nor limits, which are the user's to set; nor what the flight is made of, of which neither is the worse.
var worse = map[string]float64{
	"chamber.hoop_strength": -1, "chamber.axial_strength": -1, "chamber.burst": -1, "chamber.heat_factor": -1, "chamber.cycle_factor": -1,
	"chamber.temperature": 1, "chamber.cycles": 1, "chamber.forward.overlap": -1, "chamber.forward.bond_strength": -1, "chamber.forward.wall": -1,
	"chamber.forward.strength": -1, "chamber.aft.overlap": -1, "chamber.aft.bond_strength": -1, "chamber.aft.wall": -1, "chamber.aft.strength": -1,
	"chamber.adhesive.glue_line": -1, "chamber.adhesive.strength": -1, "chamber.adhesive.elastic_strain": -1, "chamber.adhesive.plastic_strain": -1,
	"chamber.boss.diameter": -1, "chamber.boss.length": -1, "chamber.boss.bond_strength": -1, "chamber.thread.engaged": -1, "chamber.thread.strength": -1,
	"chamber.thread.female_strength": -1, "chamber.thread.pitch": 1, "chamber.thread.seal": 1, "chamber.thread.hole": 1, "chamber.heating.temperature": 1,
	"recovery.line": -1, "recovery.pin": -1, "recovery.pin_strength": -1, "recovery.bond_area": -1, "recovery.bond_strength": -1,
	"recovery.line_length": -1, "recovery.line_stretch": -1, "recovery.canopy_mass": 1, "fins.tail.shear_modulus": -1,
	"field.ceiling": -1, "field.radius": -1, "motor_mount.liner": -1, "motor_mount.length": -1, "motor_mount.retainer": 1, "motor.length": 1,
}

// No example, nor its kin that is a go, is any better for a tenth less of what holds it, or a tenth more of what loads it.
func TestATenthWorseMakesNothingBetter(t *testing.T) {
	tried := map[string]bool{}
	for _, k := range kins {
		bare, err := rocketfile.Read(k.file+".toml", "../../testdata", k.bare(t))
		require.NoError(t, err)
		for _, f := range []*rocketfile.File{k.open(t), bare} {
			read := func(f *rocketfile.File) *Verdict {
				r := f.Rocket().Clone()
				r.Power = k.power
				v, err := Judge(context.Background(), r, Options{Today: today})
				require.NoError(t, err)
				return &v
			}
			was := read(f)
			for _, in := range rocketfile.Inputs(f.Rocket()) {
				v, given := in.Get(f.Rocket())
				if worse[in.Name] == 0 || !given {
					continue
				}
				if strings.HasSuffix(in.Name, "temperature") {
					v -= 273.15
				}
				to := v * (1 + worse[in.Name]/10)
				if strings.HasSuffix(in.Name, "temperature") {
					to += 273.15
				} else if in.Name == "chamber.cycles" {
					to = v + 1
				}
				less, err := f.SetValue(in.Name, to)
				if err != nil { // no rocket
					continue
				}
				tried[in.Name] = true
				lessKnown(t, k.file+" on "+string(k.power)+" with "+in.Name+" a tenth worse", was, read(less))
			}
		}
	}
	assert.GreaterOrEqual(t, len(tried), 38, "%v", tried)
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
