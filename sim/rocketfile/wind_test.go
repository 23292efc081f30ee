package rocketfile

import (
	"math"
	"testing"

	"github.com/stretchr/testify/require"

	"ullage/atmosphere"
)

const layers = `[wind]
exponent = 0.2

[[wind.layer]]
height = "10 m"
speed = "4 m/s"
from = "270 deg"

[[wind.layer]]
height = "100 m"
speed = "8 m/s"
from = "290 deg"
`

// A wind in layers, and what is an input of it and what is not.
func TestWindInLayers(t *testing.T) {
	f := readIn(t, folder(t), plain+layers)
	r := f.Rocket()
	require.Len(t, r.Wind.Layers, 2)
	require.Equal(t, atmosphere.Layer{Height: 100, Speed: 8, From: r.Wind.Layers[1].From}, r.Wind.Layers[1])
	require.InDelta(t, 290*math.Pi/180, r.Wind.Layers[1].From, 1e-12)
	require.True(t, r.Wind.Known())
	require.Equal(t, 0.2, r.Wind.Exponent)
	for _, name := range []string{"wind.speed", "wind.from"} {
		_, err := Find(r, name)
		require.Error(t, err, name)
	}
	g, err := f.SetAll(Change{"wind.factor", "1.5"}, Change{"wind.veer", "20 deg"}, Change{"wind.layer.2.speed", "9 m/s"})
	require.NoError(t, err)
	require.Equal(t, 1.5, g.Rocket().Wind.Factor)
	require.Equal(t, 9.0, g.Rocket().Wind.Layers[1].Speed)
	require.Equal(t, 8.0, r.Wind.Layers[1].Speed, "the file edited stays as it is")
	_, err = Find(readIn(t, folder(t), plain).Rocket(), "wind.factor")
	require.Error(t, err, "there are no layers to turn")
}

func TestFaultsOfWindInLayers(t *testing.T) {
	for _, row := range []struct{ text, says string }{
		{"[wind]\nspeed = \"3 m/s\"\n" + layers[len("[wind]\n"):], `wind.speed = "3 m/s": is given beside layers`},
		{"[wind]\nfrom = \"30 deg\"\n" + layers[len("[wind]\n"):], `wind.from = "30 deg": is given beside layers`},
		{layers + "\n[[wind.layer]]\nheight = \"90 m\"\nspeed = \"3 m/s\"\nfrom = \"0 deg\"\n", `wind.layer.3.height = "90 m": is not above the layer before it`},
		{layers + "\n[[wind.layer]]\nheight = \"900 m\"\nfrom = \"0 deg\"\n", "wind.layer.3.speed: missing; add it"},
		{"[wind.layer]\nheight = \"900 m\"\n", "write it as [[wind.layer]] with keys below"},
	} {
		_, err := Read("heron.toml", folder(t), []byte(plain+row.text))
		require.ErrorContains(t, err, row.says, row.text)
		require.ErrorContains(t, err, "heron.toml:", "with the line")
	}
}

// The first layer added is the wind there was; those after it lie above and change nothing.
func TestAddLayer(t *testing.T) {
	f := readIn(t, folder(t), plain+"[wind]\nspeed = \"4 m/s\" # here\nheight = \"12 m\"\nfrom = \"30 deg\"\n[spread]\n\"wind.speed\" = \"1 m/s\"\n")
	before := f.Rocket().Wind.Profile()
	g, name, err := f.AddLayer()
	require.NoError(t, err)
	require.Equal(t, "1", name)
	require.Empty(t, g.Spreads())
	g, input, err := g.Add("wind.layer")
	require.NoError(t, err)
	require.Equal(t, "wind.layer.2.height", input)
	require.Equal(t, 112.0, g.Rocket().Wind.Layers[1].Height)
	after := g.Rocket().Wind.Profile()
	e0, n0 := before.At(5)
	e1, n1 := after.At(5)
	require.InDelta(t, e0, e1, 1e-9)
	require.InDelta(t, n0, n1, 1e-9)
	g, err = g.Remove("wind.layer.1.speed")
	require.NoError(t, err)
	require.Len(t, g.Rocket().Wind.Layers, 1)
	require.Equal(t, 112.0, g.Rocket().Wind.Layers[0].Height)
}
