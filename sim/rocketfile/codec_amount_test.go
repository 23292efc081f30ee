package rocketfile

import (
	"testing"

	"github.com/stretchr/testify/require"
)

// How full the chamber is may be a share, litres or grams: the measure stays as it was typed, whatever is changed besides,
// and what cannot be poured in is told with the most that can.
func TestFillAsAnAmount(t *testing.T) {
	f := draftIn(t, plain) // 4 L
	g, err := f.Set("water.fill", "1.3 L")
	require.NoError(t, err)
	require.Contains(t, string(g.Text()), `fill = "1.3 L"`)
	require.InDelta(t, 0.325, g.Rocket().Water.Fill, 1e-12)
	g, err = g.Set("water.volume", "5 L")
	require.NoError(t, err)
	require.InDelta(t, 0.26, g.Rocket().Water.Fill, 1e-12, "the same water in a larger chamber")
	g, err = g.SetValue("water.fill", 0.3)
	require.NoError(t, err)
	require.Contains(t, string(g.Text()), `fill = "1.5 L"`, "a step keeps the measure")
	g, err = g.Set("water.fill", "1497.3 g")
	require.NoError(t, err)
	require.InDelta(t, 0.3, g.Rocket().Water.Fill, 1e-12)
	in, err := Find(g.Rocket(), "water.fill")
	require.NoError(t, err)
	also := in.Also(g.Rocket())
	require.InDelta(t, 1.5e-3, also[0].Value, 1e-12)
	require.InDelta(t, 1.4973, also[1].Value, 1e-12)
	require.NoError(t, in.SetText(g.Rocket(), "2 L"))
	_, err = f.Set("water.fill", "9 L")
	require.EqualError(t, err, "water.fill = 9 L: more than the chamber takes; give at most 3.918 L")
	_, err = f.Set("water.fill", "1,300 g")
	require.EqualError(t, err, `water.fill = 1,300 g: is not one plain number; write "1.300 g" or "1300 g"`)
	_, err = f.Set("water.fill", "full")
	require.ErrorContains(t, err, "full")
	share, err := g.Set("water.fill", "31 %")
	require.NoError(t, err)
	require.Contains(t, string(share.Text()), `"31 %"`)
	less, err := draftIn(t, plain).Reset("water.volume")
	require.NoError(t, err)
	less, err = less.Set("water.fill", "1 L")
	require.NoError(t, err, "before the volume is known")
	less, err = less.Set("water.volume", "4 L")
	require.NoError(t, err)
	require.InDelta(t, 0.25, less.Rocket().Water.Fill, 1e-12)
	little, err := less.Set("water.fill", "0.3")
	require.NoError(t, err)
	little, err = little.SetValue("water.fill", 0.003)
	require.NoError(t, err)
	require.InDelta(t, 0.003, little.Rocket().Water.Fill, 1e-12, "0.3 % is not the 0.3 that stands there")
	_, err = Read("x.toml", folder(t), g.Text())
	require.NoError(t, err)
}
