package main

import (
	"bytes"
	"context"
	"encoding/json"
	"path/filepath"
	"regexp"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"ullage/sim"
	"ullage/sim/gates"
	"ullage/sim/long"
	"ullage/sim/rocket"
	"ullage/sim/rocketfile"
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
// its kin that fail, fly, check, card, opening and scatter have the same numbers, the same
// verdict and the same status; what fly warns of is a no-go of check and stands on the card.
func TestFacesAgree(t *testing.T) {
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
				t.Run(strings.Join(args, " "), func(t *testing.T) { facesAgree(t, args, len(r.Canopies) > 0) })
			}
		}
	}
	require.Greater(t, tried, 10)
}

func facesAgree(t *testing.T, args []string, canopies bool) {
	with := func(command string, more ...string) (string, int) {
		return said(t, append(append([]string{command}, args...), more...)...)
	}
	flown, _ := with("fly", "--json")
	fly := document(t, flown)
	told, status := with("check", "--json")
	check := document(t, told)
	assert.Equal(t, check["pass"] == true, status == 0, "check")

	rows := map[string]map[string]any{}
	failing, open := 0, 0
	for _, c := range check["checks"].([]any) {
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
	assert.Equal(t, word, check["verdict"])

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

	// What is warned of is no go, and on the card.
	card, cardStatus := with("card", "--flights", "20")
	assert.Equal(t, status, cardStatus, "card and check")
	flat := func(s string) string { return strings.Join(strings.Fields(s), " ") }
	headline := regexp.MustCompile(`(?m)^(go|no-go|not judged): .*$`).FindString(card)
	text, _ := with("check")
	assert.Contains(t, flat(text), flat(headline))
	for _, w := range fly["warnings"].([]any) {
		code := sim.WarningCode(w.(map[string]any)["code"].(string))
		if gates.NoteOn(code) == "" {
			assert.Equal(t, gates.WordNoGo, check["verdict"], code)
		}
		begin := flat(w.(map[string]any)["text"].(string))
		assert.Contains(t, strings.ReplaceAll(flat(card), "°", " deg"), begin[:min(len(begin), 40)], "on the card: %s", code)
	}
	for key, row := range rows {
		if row["judged"] == false {
			assert.Contains(t, card, gates.WordOpen, key)
		}
	}

	// The pressure is the same everywhere, and a no-go where check says so.
	others := []string{"scatter"}
	if canopies {
		others = append(others, "opening")
	}
	for _, command := range others {
		more := []string{"--json"}
		if command == "scatter" {
			more = append(more, "--flights", "20")
		}
		out, _ := with(command, more...)
		assert.Equal(t, fly["pressure"], document(t, out)["pressure"], command)
	}
	if proof, there := rows["proof"]; there && fly["pressure"] != nil {
		fails := proof["judged"] == true && proof["pass"] == false
		assert.Equal(t, fails, at(fly, "pressure", "no_go"))
	}
}
