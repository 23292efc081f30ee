package rocketfile

import (
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"ullage/sim/quantity"
	"ullage/sim/rocket"
)

// trial is what the sections of these tests add to a rocket.
type trial struct {
	exponent float64
	word     string
	layers   []layer
}

type layer struct{ height, speed, from float64 }

// withTrial adds to the schema, for one test, a number that may be a word, [trial]
// exponent, and rows without names, [[trial.layer]].
func withTrial(t *testing.T) {
	trials := map[*rocket.Rocket]*trial{}
	of := func(r *rocket.Rocket) *trial {
		if trials[r] == nil {
			trials[r] = &trial{}
		}
		return trials[r]
	}
	exponent := &numberCodec{step: 0.01, coarse: 0.05, of: &rocket.Number{Range: quantity.Between(quantity.Number, "", 1, 1.7), Optional: true,
		At: func(r *rocket.Rocket, _ int) *float64 { return &of(r).exponent }}}
	word := choose(func(p place) *string { return &of(p.rocket).word }, "saturated", "dry")
	inLayer := func(key, label, unit string, d quantity.Dimension, most float64, part func(*layer) *float64) *field {
		return text(key, label, "Of the layer.", &numberCodec{step: 1, coarse: 10, of: &rocket.Number{Range: quantity.Between(d, unit, 0, most),
			At: func(r *rocket.Rocket, i int) *float64 {
				if layers := of(r).layers; i < len(layers) {
					return part(&layers[i])
				}
				return nil
			}}})
	}
	layers := func(r *rocket.Rocket) int { return len(of(r).layers) }
	old := schema
	with := slices.Insert(slices.Clone(schema()), len(schema())-1, bind([]*section{
		{path: "trial", group: "trial", count: one, fields: []*field{
			text("exponent", "exponent", "Of the expansion.", numberOr(exponent, word)).otherwise(func(place) float64 { return 1.25 }),
		}},
		{path: "trial.layer", group: "layer", many: true, most: 3, count: layers,
			make: func(r *rocket.Rocket) { of(r).layers = append(of(r).layers, layer{}) },
			fields: []*field{
				inLayer("height", "height", "m", quantity.Length, 1000, func(l *layer) *float64 { return &l.height }).required(always, `"100 m"`),
				inLayer("speed", "speed", "m/s", quantity.Speed, 60, func(l *layer) *float64 { return &l.speed }).required(always, `"5 m/s"`),
				inLayer("from", "from", "deg", quantity.Angle, 360, func(l *layer) *float64 { return &l.from }).byDefault("0 deg"),
			}},
	})...)
	schema = func() []*section { return with }
	t.Cleanup(func() { schema = old })
}

// inputNow is an input of a file as it stands.
func inputNow(t *testing.T, f *File, name string) Input {
	t.Helper()
	in, err := Find(f.rd.rocket, name)
	require.NoError(t, err)
	return in
}

// A number may have a word in its place: it is read, listed, varied and written as a
// number, and as the word where that stands.
func TestNumberOrWord(t *testing.T) {
	withTrial(t)
	f := readIn(t, folder(t), plain+"[trial]\nexponent = 1.3 # as measured\n")
	in := inputNow(t, f, "trial.exponent")
	assert.Equal(t, NumberKind, in.Kind)
	assert.Equal(t, "1 to 1.7, or saturated, dry", in.Takes())
	v, given := in.Get(f.rd.rocket)
	assert.Equal(t, 1.3, v)
	assert.True(t, given)

	g, err := f.Set("trial.exponent", "saturated")
	require.NoError(t, err)
	assert.Equal(t, strings.Replace(string(f.Text()), "1.3", `"saturated"`, 1), string(g.Text()))
	in = inputNow(t, g, "trial.exponent")
	assert.Equal(t, NumberKind, in.Kind, "still to be varied")
	v, given = in.Get(g.rd.rocket)
	assert.Equal(t, 1.25, v, "what is in force")
	assert.False(t, given)
	assert.Equal(t, "saturated", in.Text(g.rd.rocket))

	back, err := g.SetValue("trial.exponent", 1.4)
	require.NoError(t, err)
	assert.Equal(t, strings.Replace(string(f.Text()), "1.3", "1.4", 1), string(back.Text()))
	assert.Equal(t, "1.4", inputNow(t, back, "trial.exponent").Text(back.rd.rocket))

	// A study varies the rocket, not the file.
	require.NoError(t, in.Set(g.rd.rocket, 1.1))
	assert.Equal(t, "1.1", in.Text(g.rd.rocket))
	require.NoError(t, in.SetText(g.rd.rocket, "dry"))
	assert.Equal(t, "dry", in.Text(g.rd.rocket))
	require.NoError(t, in.SetText(g.rd.rocket, "1.2"))
	v, given = in.Get(g.rd.rocket)
	assert.True(t, given && v == 1.2)

	for value, want := range map[string]string{
		"saturate": `trial.exponent = saturate: not one of the words for it; write "saturated" or "dry", or give 1 to 1.7`,
		"2":        `trial.exponent = 2: too large; give 1 to 1.7`,
		"1.3 m":    `trial.exponent = 1.3 m: has a unit where a plain number is due; write "1.3"`,
	} {
		_, err := f.Set("trial.exponent", value)
		if assert.Error(t, err, value) {
			assert.Equal(t, want, err.Error())
		}
		assert.Error(t, in.SetText(g.rd.rocket, value))
	}
	_, err = Read("x.toml", folder(t), []byte(plain+"[trial]\nexponent = \"wet\"\n"))
	require.EqualError(t, err, `x.toml:34: trial.exponent = "wet": not one of the words for it; write "saturated" or "dry", or give 1 to 1.7`)
	none := readIn(t, folder(t), plain)
	v, given = inputNow(t, none, "trial.exponent").Get(none.rd.rocket)
	assert.True(t, !given && v == 1.25)
}

// Rows without names go by their place.
func TestRowsWithoutNames(t *testing.T) {
	withTrial(t)
	const rows = "[[trial.layer]]\nheight = \"10 m\"\nspeed = \"3 m/s\"\n\n[[trial.layer]]\nheight = \"200 ft\"\nspeed = \"9 m/s\"\nfrom = \"270 deg\"\n"
	f := readIn(t, folder(t), plain+"\n"+rows+"\n[spread]\n\"trial.layer.2.speed\" = \"1 m/s\"\n")
	var names []string
	for _, in := range Inputs(f.rd.rocket) {
		if strings.HasPrefix(in.Name, "trial.layer.") {
			names = append(names, in.Group+": "+in.Name)
		}
	}
	assert.Equal(t, []string{
		"layer 1: trial.layer.1.height", "layer 1: trial.layer.1.speed", "layer 1: trial.layer.1.from",
		"layer 2: trial.layer.2.height", "layer 2: trial.layer.2.speed", "layer 2: trial.layer.2.from"}, names)
	v, given := inputNow(t, f, "trial.layer.2.height").Get(f.rd.rocket)
	assert.True(t, given)
	assert.InDelta(t, 60.96, v, 1e-12)
	require.Len(t, f.Spreads(), 1)
	assert.Equal(t, 1.0, f.Spreads()[0].SD)

	g, err := f.Set("trial.layer.2.height", "90 m")
	require.NoError(t, err)
	assert.Equal(t, strings.Replace(string(f.Text()), "200 ft", "90 m", 1), string(g.Text()))
	g, err = f.Set("trial.layer.1.from", "180 deg")
	require.NoError(t, err)
	assert.Equal(t, strings.Replace(string(f.Text()), "speed = \"3 m/s\"\n", "speed = \"3 m/s\"\nfrom = \"180 deg\"\n", 1), string(g.Text()))
	g, err = f.removeItem("trial.layer", "2", "layer")
	require.NoError(t, err)
	assert.Contains(t, string(g.Text()), "10 m\"")
	assert.NotContains(t, string(g.Text()), "200 ft")
	assert.Empty(t, g.Spreads())
	g, _, err = f.added("trial.layer", "3", []pair{{"height", `"500 m"`}, {"speed", `"12 m/s"`}})
	require.NoError(t, err)
	assert.Equal(t, "500 m", inputNow(t, g, "trial.layer.3.height").Text(g.rd.rocket))
	_, err = Find(f.rd.rocket, "trial.layer.3.height")
	require.Error(t, err, "there are two")

	for old, tt := range map[string]struct{ new, want string }{
		`speed = "9 m/s"`:    {`speed = "90 m/s"`, `x.toml:40: trial.layer.2.speed = "90 m/s": too large; give 0 m/s to 60 m/s`},
		`speed = "3 m/s"`:    {``, `x.toml:34: trial.layer.1.speed: missing; add it to [[trial.layer]], such as speed = "5 m/s"`},
		`from = "270 deg"`:   {`depth = "1 m"`, `x.toml:41: trial.layer.2.depth: unknown key; [[trial.layer]] may have height, speed and from`},
		"[[trial.layer]]\nh": {"[[trial.layer]]\n[[trial.layer]]\n[[trial.layer]]\nh", "trial.layer: more than 3 of them; take some out"},
	} {
		_, err := Read("x.toml", folder(t), []byte(strings.Replace(plain+"\n"+rows, old, tt.new, 1)))
		assert.ErrorContains(t, err, tt.want)
	}
}
