package main

import (
	"bytes"
	"context"
	"encoding/json"
	"math"
	"math/rand/v2"
	"path/filepath"
	"regexp"
	"slices"
	"strings"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"ullage/sim"
	"ullage/sim/gates"
	"ullage/sim/long"
	"ullage/sim/plan"
	"ullage/sim/quantity"
	"ullage/sim/report/words"
	"ullage/sim/results"
	"ullage/sim/rocket"
	"ullage/sim/rocketfile"
	"ullage/tui/view"
	"ullage/tui/view/check"
	"ullage/tui/view/viewtest"
)

// said is what a command wrote, with its status.
func said(t *testing.T, args ...string) (text string, status int) {
	t.Helper()
	var out, complaints bytes.Buffer
	status = run(context.Background(), args, strings.NewReader(""), &out, &complaints)
	require.LessOrEqual(t, status, 1, "%v: %s", args, complaints.String())
	return out.String(), status
}

// document is what a command wrote as JSON.
func document(t *testing.T, text string) map[string]any {
	t.Helper()
	var d map[string]any
	require.NoError(t, json.Unmarshal([]byte(text), &d))
	return d
}

// at is a number or a word of a document.
func at(d map[string]any, path ...string) any {
	for _, key := range path[:len(path)-1] {
		next, _ := d[key].(map[string]any)
		d = next
	}
	return d[path[len(path)-1]]
}

// No face contradicts another: of every example, on each drive that it has, and of some of
// its kin that fail and some with their numbers off at random, fly, check, the screen's check, card, opening and
// scatter have the same numbers, the same
// verdict and the same status; what fly warns of is a no-go of check and stands on the card.
func TestFacesAgree(t *testing.T) {
	long.Unraced(t)
	files, err := filepath.Glob("../../testdata/*.toml")
	require.NoError(t, err)
	kins := []string{"", "rail.length=0.4 m", "body.mass=1.9 kg", "wind.speed=0 m/s"}
	tried := 0
	for _, path := range files {
		f, err := rocketfile.Open(path)
		if err != nil || f.Rocket().Validate() != nil {
			continue // a motor's own file
		}
		for _, power := range []rocket.Power{rocket.WaterPower, rocket.MotorPower} {
			r := f.Rocket().Clone()
			if r.Power = power; r.Validate() != nil {
				continue
			}
			for _, kin := range long.Of(kins[:2], kins) {
				args := []string{path, "--set", "power=" + string(power)}
				if kin != "" {
					args = append(args, "--set", kin)
				}
				tried++
				t.Run(strings.Join(args, " "), func(t *testing.T) {
					facesAgree(t, args, len(r.Canopies) > 0)
					if kin == "" {
						fieldFacesAgree(t, args)
					}
				})
			}
			chance := rand.New(rand.NewPCG(uint64(len(path)), uint64(tried)))
			for range long.Of(1, 2) {
				args := append([]string{path, "--set", "power=" + string(power)}, off(t, r, chance)...)
				t.Run(strings.Join(args, " "), func(t *testing.T) { facesAgree(t, args, len(r.Canopies) > 0) })
			}
		}
	}
	require.Greater(t, tried, 10)
}

// off is a rocket's numbers off at random, as options: those of a rocket that can be flown.
func off(t *testing.T, r *rocket.Rocket, chance *rand.Rand) (args []string) {
	t.Helper()
	for range 50 {
		args, other := args[:0], r.Clone()
		for _, name := range []string{"body.mass", "body.balance", "wind.speed", "rail.length", "water.fill", "water.throat", "recovery.line", "field.radius", "nose.length"} {
			in, err := rocketfile.Find(r, name)
			if err != nil || in.Drive != "" && in.Drive != r.Power {
				continue
			}
			v, stated := in.Get(r)
			if !stated || v == 0 {
				continue
			}
			v = min(max(v*(0.5+1.3*chance.Float64()), in.Min), in.Max)
			text := quantity.Format(v, in.Unit, 4)
			if in.SetText(other, text) == nil {
				args = append(args, "--set", name+"="+text)
			}
		}
		if len(args) > 0 && other.Validate() == nil {
			return args
		}
	}
	require.Fail(t, "no rocket near it flies")
	return nil
}

// onScreen holds that the check view says of a rocket what check says: its headline, and of
// each row its name, its number in the day's wind and its word.
func onScreen(t *testing.T, args []string, headline string, limit *plan.WindLimit, rows map[string]map[string]any) {
	f, err := rocketfile.Open(args[0])
	require.NoError(t, err)
	for _, set := range args[1:] {
		if name, value, is := strings.Cut(set, "="); is {
			f, err = f.Set(name, value)
			require.NoError(t, err)
		}
	}
	today := func(ctx context.Context, r *rocket.Rocket, o gates.Options) (gates.Verdict, error) {
		o.Today = time.Now() // as the commands have it
		return gates.Judge(ctx, r, o)
	}
	winds := func(context.Context, *rocket.Rocket, plan.Options) (plan.WindLimit, error) { return *limit, nil }
	frame := &viewtest.Frame[*check.View]{T: t, V: check.New(view.DefaultKeys(), check.Options{Winds: winds}), Judges: today}
	frame.Begin(f, [2]int{200, 300})
	shown := strings.ReplaceAll(frame.Shown(), "°", " deg")
	assert.Contains(t, shown, headline, "on the screen")
	assert.Contains(t, shown, words.In(quantity.Metric).MostWind(limit), "on the screen")
	v := frame.Scene.Corners.Result.Verdict
	assert.Len(t, v.Checks, len(rows))
	for i := range v.Checks {
		c := &v.Checks[i]
		row, there := rows[c.Key]
		require.True(t, there, c.Key)
		assert.Contains(t, shown, c.Name)
		assert.Equal(t, row["pass"], c.Pass, c.Key)
		assert.Equal(t, row["judged"], c.Judged, c.Key)
		assert.Equal(t, row["word"], c.Word, c.Key)
		if want, has := row["day"].(float64); has {
			day := c.Values[results.Day].V
			if c.Limit.Unit == "deg" {
				day *= 180 / math.Pi
			}
			assert.InDelta(t, want, day, 1e-6*max(1, math.Abs(want)), c.Key)
		}
	}
}

// windLimit is that of check's JSON.
func windLimit(checked map[string]any) *plan.WindLimit {
	list := func(key string) (out []string) {
		names, _ := at(checked, "wind_limit", key).([]any)
		for _, name := range names {
			out = append(out, name.(string))
		}
		return out
	}
	w := &plan.WindLimit{Above: list("fails_above"), Fails: list("fails"), Unjudged: list("not_judged")}
	w.Most, w.Passes = at(checked, "wind_limit", "most_mps").(float64)
	w.Least, _ = at(checked, "wind_limit", "least_mps").(float64)
	return w
}

func facesAgree(t *testing.T, args []string, canopies bool) {
	with := func(command string, more ...string) (string, int) {
		return said(t, append(append([]string{command}, args...), more...)...)
	}
	flown, _ := with("fly", "--json")
	fly := document(t, flown)
	told, status := with("check", "--json")
	checked := document(t, told)
	assert.Equal(t, checked["pass"] == true, status == 0, "check")

	rows := map[string]map[string]any{}
	failing, open := 0, 0
	for _, c := range checked["checks"].([]any) {
		row := c.(map[string]any)
		rows[row["key"].(string)] = row
		switch {
		case row["judged"] == false:
			open++
			assert.Equal(t, false, row["pass"], "what is not judged is no pass")
		case row["pass"] == false:
			failing++
		}
	}
	word := gates.WordGo
	if failing > 0 {
		word = gates.WordNoGo
	} else if open > 0 {
		word = gates.WordOpen
	}
	assert.Equal(t, word, checked["verdict"])

	// The numbers of the day are those of the flight.
	for key, path := range map[string][]string{
		"rail-exit": {"rail_exit", "speed_mps"}, "thrust-to-weight": {"rail_exit", "thrust_to_weight"}, "ceiling": {"apogee", "height_m"},
		"landing": {"landing", "vertical_mps"}, "landing-energy": {"landing", "energy_j"}, "attack-most": {"stability", "max_angle_deg"},
		"liquid-left": {"liquid_out", "left_kg"}, "drag-reach": {"max", "mach"}, "margin.least": {"stability", "margin_cal", "least"},
	} {
		row, there := rows[key]
		want, known := at(fly, path...).(float64)
		if got, has := row["day"].(float64); there && known && has {
			assert.InDelta(t, want, got, 1e-6*max(1, want), key)
		}
	}

	// Its words are those of the limits.
	inFull, _ := with("fly")
	for key, form := range map[string]string{
		"thrust-to-weight": `rail exit [^;]*; thrust/weight \S+ ([a-z]+)`, "landing": `m/s down (good|hard)`, "landing-energy": `landing energy \S+ J ([a-z]+)`,
		"margin-at-angle": `at the angle \S+ calibres ([a-z]+)`, "attack": `deg at rail exit ([a-z]+)`, "attack-most": `, at most \S+ deg ([a-z]+)`,
	} {
		m := regexp.MustCompile(form).FindStringSubmatch(strings.Join(strings.Fields(inFull), " "))
		day, known := rows[key]["day"].(float64)
		if m == nil || !known {
			continue
		}
		least, bound := rows[key]["min"].(float64)
		most, capped := rows[key]["max"].(float64)
		within := (!bound || day >= least*(1-1e-9)) && (!capped || day <= most*(1+1e-9))
		assert.Equal(t, within, m[1] == gates.WordGood, "%s: %s", key, m[0])
	}

	// What is warned of is no go, and on the card.
	card, cardStatus := with("card", "--flights", "20")
	assert.Equal(t, status, cardStatus, "card and check")
	flat := func(s string) string { return strings.Join(strings.Fields(s), " ") }
	headline := regexp.MustCompile(`(?m)^(go|no-go|not judged): .*$`).FindString(card)
	text, _ := with("check")
	assert.Contains(t, flat(text), flat(headline))
	onScreen(t, args, strings.ReplaceAll(flat(headline), "°", " deg"), windLimit(checked), rows)
	wind := words.In(quantity.Metric).MostWind(windLimit(checked))
	assert.Contains(t, flat(text), wind, "check")
	assert.Contains(t, flat(card), strings.ReplaceAll(wind, " deg", "°"), "card")
	for _, w := range fly["warnings"].([]any) {
		code := sim.WarningCode(w.(map[string]any)["code"].(string))
		if gates.NoteOn(code) == "" {
			assert.Equal(t, gates.WordNoGo, checked["verdict"], code)
		}
		begin := flat(w.(map[string]any)["text"].(string))
		assert.Contains(t, strings.ReplaceAll(flat(card), "°", " deg"), begin[:min(len(begin), 40)], "on the card: %s", code)
	}
	for key, row := range rows {
		if row["judged"] == false {
			assert.Contains(t, card, gates.WordOpen, key)
		}
	}

	motorsAgree(t, args)
	sheetsAgree(t, fly, with)

	// The pressure is the same everywhere, and a no-go where check says so.
	others := []string{"scatter"}
	var falls []any
	var certain []string
	if canopies {
		others = append(others, "opening")
	}
	for _, command := range others {
		more := []string{"--json"}
		if command == "scatter" {
			more = append(more, "--flights", "20")
		}
		out, _ := with(command, more...)
		told := document(t, out)
		assert.Equal(t, fly["pressure"], told["pressure"], command)
		if command == "opening" {
			openingAgrees(t, fly, told)
			falls = told["what_if"].([]any)
		} else {
			certain = scatterAgrees(t, fly, told, rows["radius"], with)
		}
	}
	mapAgrees(t, fly, checked, falls, certain, with)
	if proof, there := rows["proof"]; there && fly["pressure"] != nil {
		fails := proof["judged"] == true && proof["pass"] == false
		assert.Equal(t, fails, at(fly, "pressure", "no_go"))
	}
}

// motorsAgree holds what motors tells of a motor to a flight of the file with that motor in it, whatever drives the rocket now.
func motorsAgree(t *testing.T, args []string) {
	t.Helper()
	const motor = "h-trainer.toml"
	sets := slices.Clone(args[1:])
	if strings.Contains(args[0], "tube") {
		sets = append(sets, "--set", "rail.length=1.5 m") // it has no rail
	}
	listed, _ := said(t, append([]string{"motors", "--json", args[0], filepath.Join(filepath.Dir(args[0]), motor)}, sets...)...)
	flown, _ := said(t, append([]string{"fly", "--json", args[0], "--set", "motor.file=" + motor, "--set", "power=motor"}, sets[2:]...)...)
	fly, told := document(t, flown), document(t, listed)
	for _, key := range []string{"lift_off", "rail_exit", "apogee", "max", "canopies", "landing", "stability", "warnings"} {
		assert.Equal(t, fly[key], told[key], "motors: %s", key)
	}
}

// sameNumbers holds numbers of one thing told by two faces to each other, null on both where it did not happen.
func sameNumbers(t *testing.T, want, got map[string]any, keys ...string) {
	t.Helper()
	for _, key := range keys {
		w, known := want[key].(float64)
		g, has := got[key].(float64)
		assert.Equal(t, known, has, key)
		assert.InDelta(t, w, g, 1e-6*max(1, math.Abs(w)), key)
	}
}

// openingAgrees holds what opening tells as planned to the flight: each canopy's height, airspeed and loads, and the landing.
func openingAgrees(t *testing.T, fly, told map[string]any) {
	planned := told["what_if"].([]any)[0].(map[string]any)
	require.Equal(t, "as planned", planned["case"])
	canopies := fly["canopies"].([]any)
	require.Len(t, planned["canopies"], len(canopies))
	for i, c := range planned["canopies"].([]any) {
		want, got := canopies[i].(map[string]any), c.(map[string]any)
		assert.Equal(t, want["name"], got["name"])
		sameNumbers(t, want, got, "height_m", "airspeed_mps", "load_n", "load_bound_n")
	}
	landing, lands := fly["landing"].(map[string]any)
	if got, has := planned["landing"].(map[string]any); assert.Equal(t, lands, has, "lands") && lands {
		sameNumbers(t, landing, got, "time_s", "speed_mps", "vertical_mps", "energy_j", "east_m", "north_m")
	}
}

// scatterAgrees holds a scatter of nothing uncertain to the flight: the numbers, and whether it comes down outside the field.
func scatterAgrees(t *testing.T, fly, told, radius map[string]any, with func(command string, more ...string) (string, int)) (certain []string) {
	certain = []string{"--json", "--flights", "2"}
	for _, x := range told["importance"].([]any) {
		certain = append(certain, "--spread", x.(map[string]any)["input"].(string)+"=0")
	}
	out, _ := with("scatter", certain...)
	one := document(t, out)
	assert.Empty(t, one["importance"], "nothing is uncertain")
	sameNumbers(t, map[string]any{"mean": at(fly, "apogee", "height_m")}, one["apogee_m"].(map[string]any), "mean")
	sameNumbers(t, map[string]any{"mean": at(fly, "rail_exit", "speed_mps")}, one["rail_exit_mps"].(map[string]any), "mean")
	landing, lands := fly["landing"].(map[string]any)
	if !lands {
		return certain
	}
	got := one["landing"].(map[string]any)
	sameNumbers(t, landing, got, "east_m", "north_m")
	drift := math.Hypot(landing["east_m"].(float64), landing["north_m"].(float64))
	sameNumbers(t, landing, map[string]any{"drift_m": drift}, "drift_m")
	most, stated := radius["max"].(float64)
	assert.Equal(t, stated, got["outside_field"] != nil, "the field's radius")
	if stated {
		sameNumbers(t, radius, map[string]any{"day": drift}, "day")
		assert.Equal(t, drift > most, got["outside_field"] == 1.0, "outside the field")
	}
	return certain
}

// The page for a flight that certifies says of the rocket's own motor what check and fly say of it.
func TestCertificationAgrees(t *testing.T) {
	long.Unraced(t)
	const path = "../../testdata/drogue-main.toml"
	flat := func(s string) string { return strings.Join(strings.Fields(s), " ") }
	text, _ := said(t, "check", path)
	headline := regexp.MustCompile(`no-go: .* not judged`).FindString(flat(text))
	require.NotEmpty(t, headline)
	page, _ := said(t, "card", path, "--certification")
	assert.Contains(t, flat(page), "on its own motor: "+regexp.MustCompile(`no-go: [^:]*? not judged`).FindString(headline))
	flown, _ := said(t, "fly", path, "--json")
	fly, own := document(t, flown), regexp.MustCompile(`(?m)^ +its own motor +[0-9].*$`).FindString(page)
	for _, figure := range []string{
		words.In(quantity.Metric).Height(at(fly, "apogee", "height_m").(float64)), words.In(quantity.Metric).Height(at(fly, "landing", "drift_m").(float64)),
	} {
		assert.Contains(t, own, figure)
	}
}
