package main

import (
	"context"
	"fmt"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"ullage/sim/gates"
	"ullage/sim/quantity"
	"ullage/sim/report/words"
	"ullage/sim/rocket"
	"ullage/sim/rocketfile"
	"ullage/tui/view"
	"ullage/tui/view/pad"
	"ullage/tui/view/viewtest"
)

// mapAgrees holds the map of nothing uncertain to the flight: where it comes down, and how far people keep away.
// What it tells of a main that stays shut, and of no canopy at all, is what opening tells of them in falls.
func mapAgrees(t *testing.T, fly, checked map[string]any, falls []any, certain []string, with func(command string, more ...string) (string, int)) {
	t.Helper()
	out, _ := with("map", append(slices.Clone(certain), "--drive", fly["power"].(string))...)
	drives := document(t, out)["drives"].([]any)
	require.Len(t, drives, 1)
	drive := drives[0].(map[string]any)
	assert.Equal(t, fly["power"], drive["drive"])
	if landing, lands := fly["landing"].(map[string]any); lands {
		sameNumbers(t, landing, drive["landing"].(map[string]any), "east_m", "north_m")
	}
	compared := 0
	for key, canopy := range map[string]string{"ballistic": "all", "drogue_only": "main"} {
		for _, x := range falls {
			fall := x.(map[string]any)
			shut, _ := fall["canopy"].(string)
			landing, lands := fall["landing"].(map[string]any)
			if fall["case"] != "never" || !lands || !(shut == canopy && len(fly["canopies"].([]any)) > 1 || canopy == "all" && fall["ballistic"] == true) {
				continue
			}
			if told, there := drive[key].(map[string]any); assert.True(t, there, key) {
				sameNumbers(t, landing, told, "east_m", "north_m")
				compared++
			}
		}
	}
	if _, lands := fly["landing"].(map[string]any); lands && len(falls) > 0 {
		assert.Positive(t, compared, "a fall without canopies")
	}
	assert.Equal(t, checked["clear_distance"], drive["clear_distance"], "map: how far people keep away")
}

// sheetsAgree holds the bench, the results and the airframe to the flight.
func sheetsAgree(t *testing.T, fly map[string]any, with func(command string, more ...string) (string, int)) {
	t.Helper()
	told, _ := with("bench", "--json")
	for _, x := range document(t, told)["electronics"].([]any) {
		sheet := x.(map[string]any)
		if sheet["power"] != fly["power"] {
			continue
		}
		assert.Equal(t, fly["pressure"], sheet["pressure"], "bench")
		sameNumbers(t, map[string]any{"apogee_s": at(fly, "apogee", "time_s")}, sheet, "apogee_s")
		for i, c := range sheet["canopies"].([]any) {
			sameNumbers(t, fly["canopies"].([]any)[i].(map[string]any), c.(map[string]any), "time_s", "height_m", "airspeed_mps")
		}
	}
	told, _ = with("results", "--json")
	sameNumbers(t, map[string]any{
		"apogee.height": at(fly, "apogee", "height_m"), "rail_exit.speed": at(fly, "rail_exit", "speed_mps"),
		"landing.drift": at(fly, "landing", "drift_m"), "landing.energy": at(fly, "landing", "energy_j"),
	}, document(t, told), "apogee.height", "rail_exit.speed", "landing.drift", "landing.energy")
	if fly["stability"] == nil {
		return
	}
	told, _ = with("airframe", "--json")
	drive := document(t, told)[fly["power"].(string)].(map[string]any)
	assert.Equal(t, fly["pressure"], drive["pressure"], "airframe")
	sameNumbers(t, at(fly, "stability", "margin_cal").(map[string]any), drive["margin_cal"].(map[string]any),
		"release", "rail_exit", "liquid_out", "burnout", "least", "at_angle")
}

// fieldFacesAgree holds the planning of a day with the wind of the file alone, and the page for the pad, to check.
func fieldFacesAgree(t *testing.T, args []string) {
	t.Helper()
	text, status := said(t, append([]string{"check", "--json"}, args...)...)
	checked := document(t, text)
	f, err := rocketfile.Open(args[0])
	require.NoError(t, err)
	for _, set := range args[1:] {
		if name, value, is := strings.Cut(set, "="); is {
			f, err = f.Set(name, value)
			require.NoError(t, err)
		}
	}
	r := f.Rocket()

	wind, _ := r.Wind.Surface()
	hours := filepath.Join(t.TempDir(), "hours.csv")
	require.NoError(t, os.WriteFile(hours, fmt.Appendf(nil, "time,wind (m/s)\n12:00,%v\n", wind), 0o600))
	planned, planStatus := said(t, append([]string{"day", "--json", "--drive", string(r.Power), "--forecast", hours}, args...)...)
	assert.Equal(t, status, planStatus, "day and check")
	hour := document(t, planned)["rows"].([]any)[0].(map[string]any)
	assert.Equal(t, checked["verdict"], hour["verdict"], "day")
	var fails, open []any
	for _, c := range checked["checks"].([]any) {
		switch row := c.(map[string]any); {
		case row["judged"] == false:
			open = append(open, row["key"])
		case row["pass"] == false:
			fails = append(fails, row["key"])
		}
	}
	assert.ElementsMatch(t, fails, hour["fails"])
	assert.ElementsMatch(t, open, hour["not_judged"])

	judges := func(ctx context.Context, r *rocket.Rocket, o gates.Options) (gates.Verdict, error) {
		o.Today = time.Now()
		return gates.Judge(ctx, r, o)
	}
	frame := &viewtest.Frame[*pad.View]{T: t, V: pad.New(view.DefaultKeys(), time.Now), Judges: judges}
	frame.Begin(f, [2]int{100, 6}) // too low for large letters
	headline := strings.ToUpper(checked["verdict"].(string) + " " + string(r.Power))
	shown := frame.Shown()
	assert.True(t, strings.HasPrefix(shown, headline+" "), "on the pad: %s", shown)
	filled := words.In(quantity.Metric).FillTo(0)
	if r.Water != nil {
		filled = words.In(quantity.Metric).FillTo(r.Water.Pressure)
	}
	assert.Equal(t, r.Power == rocket.WaterPower && status == 0, strings.HasPrefix(shown, headline+" "+filled), "a pressure to fill to: %s", shown)
}
