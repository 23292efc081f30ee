package checklist

import (
	"bytes"
	"context"
	"encoding/json"
	"regexp"
	"strings"
	"sync"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"ullage/sim/gates"
	"ullage/sim/golden"
	"ullage/sim/plan"
	"ullage/sim/quantity"
	"ullage/sim/report/page"
	"ullage/sim/rocket"
	"ullage/sim/rocketfile"
	"ullage/sim/study"
)

// dayOf is an example on a drive, judged on a fixed day, with something changed.
func dayOf(t testing.TB, power rocket.Power, change func(r *rocket.Rocket)) *Day {
	t.Helper()
	f, err := rocketfile.Open("../../../testdata/heron.toml")
	require.NoError(t, err)
	r := f.Rocket()
	r.Power = power
	if change != nil {
		change(r)
	}
	d := &Day{Rocket: r, Pad: plan.OnThePad(r)}
	d.Verdict, err = gates.Judge(context.Background(), r, gates.Options{Today: time.Date(2026, 10, 1, 0, 0, 0, 0, time.UTC)})
	require.NoError(t, err)
	if r.Chamber != nil {
		s, err := study.StructureOf(context.Background(), r)
		require.NoError(t, err)
		d.Structure = &s
	}
	return d
}

// onWater and onMotor are the example as it is, flown once for all tests.
var (
	onWater = shared(rocket.WaterPower)
	onMotor = shared(rocket.MotorPower)
)

func shared(power rocket.Power) func(t testing.TB) *Day {
	var once sync.Once
	var d *Day
	return func(t testing.TB) *Day {
		once.Do(func() { d = dayOf(t, power, nil) })
		return d
	}
}

func listsOf(t testing.TB, d *Day, names ...string) []List {
	t.Helper()
	var lists []List
	for _, n := range names {
		l, ok := New(d, n, quantity.Metric)
		require.True(t, ok, n)
		lists = append(lists, l)
	}
	return lists
}

func text(t testing.TB, d *Day, form page.Form, names ...string) string {
	t.Helper()
	var b bytes.Buffer
	doc := Document(d, listsOf(t, d, names...))
	require.NoError(t, doc.Write(&b, form))
	return b.String()
}

func flat(s string) string { return strings.Join(strings.Fields(s), " ") }

func names(d *Day) []string {
	var out []string
	for _, l := range Of(d.Rocket) {
		out = append(out, l.Name)
	}
	return out
}

func TestOnlyTheDrivesOwn(t *testing.T) {
	assert.Equal(t, []string{"layup", "proof", "leak", "packing", "filling", "launch", "unreleased", "recovery"}, names(onWater(t)))
	assert.Equal(t, []string{"layup", "packing", "arming", "launch", "misfire", "recovery"}, names(onMotor(t)))
	assert.Contains(t, Why(onWater(t).Rocket, "misfire"), "power=motor")
	assert.Empty(t, Why(onWater(t).Rocket, "filling"))
	bare := *onWater(t).Rocket
	bare.Chamber = nil
	assert.Contains(t, Why(&bare, "proof"), "[chamber]")
	_, ok := New(onWater(t), "misfire", quantity.Metric)
	assert.False(t, ok)
}

func TestLists(t *testing.T) {
	golden.Equal(t, "water.golden", text(t, onWater(t), page.AsText, "leak", "packing", "filling", "launch", "unreleased", "recovery"))
	golden.Equal(t, "motor.golden", text(t, onMotor(t), page.AsText, "packing", "arming", "launch", "misfire", "recovery"))
}

// The lists of the bench are the lay-up's and the proof's own steps.
func TestBorrowedLists(t *testing.T) {
	proof := flat(text(t, onWater(t), page.AsText, "proof"))
	for _, want := range []string{"15.0 bar, and no further", "bleed", "Write the chamber off if", "behind the barrier"} {
		assert.Contains(t, proof, want)
	}
	assert.Contains(t, flat(text(t, onWater(t), page.AsText, "layup")), "Wet out layers 1 to 2 of the tube")
	assert.Contains(t, text(t, onWater(t), page.AsMarkdown, "proof"), "## Record of the test")
}

// A rocket that is no go has no list to fill, arm or launch by; what to do about one that did not
// release or light is told of any.
func TestNoGoIsNoLeave(t *testing.T) {
	water := dayOf(t, rocket.WaterPower, func(r *rocket.Rocket) { r.Water.Pressure = 14e5 })
	motor := dayOf(t, rocket.MotorPower, func(r *rocket.Rocket) { r.Canopies = nil })
	open := dayOf(t, rocket.WaterPower, func(r *rocket.Rocket) { r.Chamber.Cycles, r.Chamber.Counted = 0, false })
	require.Equal(t, gates.WordOpen, open.Verdict.Word(), "not judged is no go")
	for _, d := range []*Day{water, motor, open} {
		for _, name := range names(d) {
			l, ok := New(d, name, quantity.Metric)
			require.True(t, ok)
			if leads, _ := Leads(name); !leads {
				assert.NotEqual(t, "What is left to do", append(l.Phases, Phase{})[0].Name == "What is left to do" && name != "leak", name)
				continue
			}
			require.Len(t, l.Phases, 1, name)
			assert.Equal(t, "What is left to do", l.Phases[0].Name)
			assert.Contains(t, l.Alarms[0], "This is no leave: "+d.Verdict.Word())
			all := flat(text(t, d, page.AsText, name))
			assert.Contains(t, all, "nothing is filled, pressurised, armed or launched by this")
			assert.NotContains(t, all, "ount-down")
			assert.NotContains(t, all, "Slowly to")
		}
	}
	assert.Contains(t, flat(text(t, water, page.AsText, "filling")), "14 bar is beyond the 10.6 bar that the chamber is proved for")
	assert.Contains(t, flat(text(t, open, page.AsText, "launch")), "not judged: ")
	left, _ := New(water, "unreleased", quantity.Metric)
	assert.GreaterOrEqual(t, len(left.Phases), 2)
	assert.Contains(t, strings.Join(left.Alarms, " "), "14 bar is beyond", "told here too")
}

// A leak test is with water, of a chamber that was proved, and never beyond what its proof is for.
func TestLeakTestOnlyOfAProvedChamber(t *testing.T) {
	whole := flat(text(t, onWater(t), page.AsText, "leak"))
	assert.Contains(t, whole, "test pressure 10.0 bar, with water")
	assert.Contains(t, whole, "slowly to 10.0 bar, and no further")
	for name, change := range map[string]func(r *rocket.Rocket){
		"no proof": func(r *rocket.Rocket) { r.Chamber.Proof, r.Chamber.ProofDate = 0, "" },
		"beyond":   func(r *rocket.Rocket) { r.Water.Pressure = 14e5 },
		"unstated": func(r *rocket.Rocket) { r.Chamber.Cycles, r.Chamber.Counted = 0, false },
	} {
		l, _ := New(dayOf(t, rocket.WaterPower, change), "leak", quantity.Metric)
		require.Len(t, l.Phases, 1, name)
		assert.Equal(t, "What is left to do", l.Phases[0].Name, name)
		assert.NotEmpty(t, l.Alarms, name)
	}
}

// An old proof is a caution, which every list that goes on from it tells.
func TestOldProofIsTold(t *testing.T) {
	d := dayOf(t, rocket.WaterPower, func(r *rocket.Rocket) { r.Chamber.ProofDate = "2020-01-01" })
	for _, name := range []string{"leak", "filling", "launch"} {
		assert.Contains(t, flat(text(t, d, page.AsText, name)), "old", name)
	}
}

func TestAllForms(t *testing.T) {
	two := dayOf(t, rocket.MotorPower, func(r *rocket.Rocket) {
		r.Canopies = append(r.Canopies, r.Canopies[0])
		r.Canopies[1].Name, r.Canopies[1].Diameter = "*drogue*", 0.3
	})
	for _, d := range []*Day{onWater(t), onMotor(t), two} {
		all := names(d)
		for _, form := range []page.Form{page.AsText, page.AsMarkdown, page.AsHTML} {
			whole := text(t, d, form, all...)
			for _, never := range []string{"NaN", "Inf", "afe", "%!"} {
				assert.False(t, strings.Contains(whole, never), "form %d: %s", form, never)
			}
			assert.True(t, strings.Contains(flat(whole), "local law come first"), "form %d", form)
			if form == page.AsText {
				for _, line := range strings.Split(whole, "\n") {
					assert.LessOrEqual(t, len([]rune(line)), page.Width, line)
				}
			}
		}
		var doc struct {
			Pass  bool
			Lists []struct {
				List   string
				Phases []struct{ Steps []string }
			}
		}
		var object bytes.Buffer
		require.NoError(t, WriteJSON(&object, d, listsOf(t, d, all...)))
		require.NoError(t, json.Unmarshal(object.Bytes(), &doc))
		require.Len(t, doc.Lists, len(all))
		for i, l := range doc.Lists {
			assert.Equal(t, all[i], l.List)
			assert.NotEmpty(t, l.Phases, l.List)
		}
	}
	packed := text(t, two, page.AsText, "packing")
	assert.Regexp(t, regexp.MustCompile(`(?s)Canopy main.*Canopy \*drogue\*.*Canopy \*drogue\*.*Canopy main`), packed, "packed last first, set as they open")
}

// Who thinks in feet is told no metres.
func TestListsInUSUnits(t *testing.T) {
	metric := regexp.MustCompile(`[0-9] (mm|cm|m|kg|bar|m/s|°C|N|J|L|mL)\b`)
	for _, d := range []*Day{onWater(t), onMotor(t)} {
		for _, name := range names(d) {
			l, ok := New(d, name, quantity.US)
			require.True(t, ok)
			for _, phase := range l.Phases {
				for _, step := range phase.Steps {
					assert.NotRegexp(t, metric, strings.ReplaceAll(flat(step), "N·s", ""), name)
				}
			}
		}
	}
}

// Each list begins on a sheet of its own where several are printed, the first below the title.
func TestListsBeginOnTheirOwnSheets(t *testing.T) {
	d := onWater(t)
	var lists []List
	for _, name := range []string{"leak", "filling", "launch"} {
		l, ok := New(d, name, quantity.Metric)
		require.True(t, ok)
		lists = append(lists, l)
	}
	doc := Document(d, lists)
	var begin []string
	for _, x := range doc.Sections {
		if x.Begins {
			begin = append(begin, x.Name)
		}
	}
	assert.Equal(t, []string{"Twin Heron: filling and pressurising", "Twin Heron: launch"}, begin)
	assert.Equal(t, 2, strings.Count(doc.HTML(), `<section class="begins">`))
	assert.NotContains(t, doc.Markdown(), "begins")
}
