package rocketfile

import (
	"os"
	"path/filepath"
	"strings"
	"testing"
	"time"

	"github.com/stretchr/testify/require"

	"ullage/sim/rocket"
)

// heronTyped is what is typed for the dual airframe of the examples, by the input; what is offered is not typed.
var heronTyped = map[string]string{
	"power": "b", "body.diameter": "69.4", "body.length": "1520", "water.bore": "68", "water.volume": "4.2", "chamber.material": "e",
	"chamber.ply.cloth.cloth": "163", "chamber.ply.cloth.count": "3",
	"chamber.ply.hoop.cloth": "150", "chamber.ply.hoop.count": "1", "chamber.ply.hoop.weave": "u", "chamber.ply.hoop.direction": "90",
	"chamber.fibre_fraction": "35", "chamber.hoop_strength": "240", "chamber.axial_strength": "140", "chamber.temperature": "30",
	"chamber.forward.shape": "e", "chamber.forward.wall": "1.6", "chamber.forward.overlap": "30", "chamber.forward.strength": "200", "chamber.forward.bond_strength": "6",
	"chamber.aft.strength": "200", "chamber.aft.bond_strength": "6",
	"chamber.adhesive.glue_line": ".2", "chamber.adhesive.strength": "20", "chamber.adhesive.elastic_strain": "2", "chamber.adhesive.plastic_strain": "5",
	"water.throat": "13", "water.nozzle": "1440", "water.fittings": "95",
	"chamber.boss.diameter": "46", "chamber.boss.length": "14", "chamber.boss.bond_strength": "6",
	"chamber.thread.diameter": "36", "chamber.thread.pitch": "2", "chamber.thread.engaged": "10", "chamber.thread.strength": "240",
	"chamber.thread.female_strength": "240", "chamber.thread.seal": "34", "chamber.thread.hole": "20",
	"fins.tail.root": "140", "fins.tail.tip": "70", "fins.tail.span": "97", "fins.tail.sweep": "80", "fins.tail.thickness": "3",
	"fins.tail.section": "a", "fins.tail.position": "1375", "fins.tail.shear_modulus": "4.5",
	"nose.shape": "v", "nose.length": "230", "body.roughness": "20", "body.mass": ".62", "body.balance": "1000",
	"canopy.main.diameter": "1", "recovery.pin": "4", "recovery.pin_strength": "200", "recovery.bond_area": "15", "recovery.bond_strength": "8",
	"recovery.line": "1200", "recovery.line_length": "3", "recovery.line_stretch": "15", "recovery.canopy_mass": "60",
	"water.pressure": "10", "chamber.burst": "e", "chamber.proof": "16", "chamber.proof_date": "9-12", "chamber.cycles": "6",
	"motor_mount.length": "250", "chamber.heating.temperature": "52", "chamber.heating.time": "15", "rail.length": "2.2", "wind.speed": "3", "field.ceiling": "1000", "field.radius": "1300",
}

// From nothing the questions lead to the dual airframe of the examples: every value typed is the one of its file, what is
// offered is taken, and nothing is missing for any answer.
func TestQuestionsLeadToTheHeron(t *testing.T) {
	dir := t.TempDir()
	examples := filepath.Join("..", "..", "testdata")
	for _, name := range []string{"h-trainer.toml", "h-trainer.csv"} {
		copyFile(t, filepath.Join(examples, name), filepath.Join(dir, name))
	}
	bare, err := FromForm("bare")
	require.NoError(t, err)
	f, err := bare.SaveAs(filepath.Join(dir, "new.toml"), false)
	require.NoError(t, err)
	today := time.Date(2026, 11, 20, 12, 0, 0, 0, time.UTC)
	keys, asked := 0, map[string]bool{}
	for at := 0; ; at++ {
		all := f.Questions()
		if at = NextQuestion(all, at); at < 0 {
			break
		}
		q := all[at]
		require.NotEmpty(t, q.Input.Help, q.Name)
		asked[q.Name] = true
		f, err = f.Answer(q, heronTyped[q.Name], today)
		require.NoError(t, err, "%s: %q", q.Name, heronTyped[q.Name])
		keys += len(heronTyped[q.Name]) + 1
	}
	for name := range heronTyped {
		require.True(t, asked[name], "%s is not asked", name)
	}
	t.Logf("%d questions, %d keys", len(asked), keys)
	require.Empty(t, f.Unfinished())
	heron, err := Open(filepath.Join(examples, "heron.toml"))
	require.NoError(t, err)
	want := heron.Rocket()
	for name := range heronTyped {
		if name == "power" {
			continue
		}
		in, err := Find(want, name)
		require.NoError(t, err)
		v, _ := in.Get(want)
		got, _ := in.Get(f.Rocket())
		require.InDelta(t, v, got, 1e-9*(1+v), name)
		require.Equal(t, in.Text(want), in.Text(f.Rocket()), name)
	}
	for _, power := range []rocket.Power{rocket.WaterPower, rocket.MotorPower} {
		r := f.Rocket()
		r.Power = power
		require.Empty(t, r.Check(rocket.ForCard), power)
	}
}

// Nothing is offered that would be a statement about strength, proof, balance, mass or pressure.
func TestOffersAreNoStatements(t *testing.T) {
	for _, a := range asks() {
		if a.offer == nil {
			continue
		}
		for _, word := range []string{"strength", "strain", "proof", "burst", "mass", "balance", "pressure", "cycles", "modulus", "line", "temperature", "fibre", "material", "cloth", "count.ply"} {
			require.False(t, strings.Contains(a.key, word), "%s.%s is offered", a.path, a.key)
		}
	}
}

// A word may be cut short, a day may lack its year, and what is not understood is told with what would be.
func TestAnswers(t *testing.T) {
	today := time.Date(2026, 3, 1, 12, 0, 0, 0, time.UTC)
	require.Equal(t, "2025-09-12", dayOf("9-12", today))
	require.Equal(t, "2026-02-28", dayOf("2-28", today))
	require.Equal(t, "2-30", dayOf("2-30", today))
	require.Equal(t, "2026-01-02", dayOf("2026-01-02", today))
	bare, err := FromForm("bare")
	require.NoError(t, err)
	q := bare.Questions()[0]
	_, err = bare.Answer(q, "steam", today)
	require.ErrorContains(t, err, "water, motor or both")
	f, err := bare.Answer(q, "w", today)
	require.NoError(t, err)
	require.Equal(t, rocket.WaterPower, f.Rocket().Power)
	same, err := f.Answer(f.Questions()[1], " ", today)
	require.NoError(t, err)
	require.Same(t, f, same, "left open")
	_, err = f.Answer(f.Questions()[1], "wide", today)
	require.ErrorContains(t, err, "mm")
	for _, form := range Forms() {
		f, err := FromForm(form.Name)
		require.NoError(t, err)
		require.Equal(t, form.Name != "bare", len(f.Unfinished()) == 0, form.Name)
	}
	_, err = FromForm("zeppelin")
	require.ErrorContains(t, err, "bottle")
}

func copyFile(t *testing.T, from, to string) {
	t.Helper()
	text, err := os.ReadFile(from)
	require.NoError(t, err)
	require.NoError(t, os.WriteFile(to, text, 0o600))
}
