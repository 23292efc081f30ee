package rocketfile

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/require"
	"ullage/sim/quantity"
)

// Every part that a file may have can be added, to a bare draft too, leads to an input of it, and is gone without a
// trace when it is removed.
func TestAddAndRemoveEveryPart(t *testing.T) {
	for name, text := range map[string]string{"bare": "name = \"New\"\n\n[body]\n", "plain": plain} {
		f := draftIn(t, text)
		all := f.Additions()
		require.Greater(t, len(all), 12)
		for _, a := range all {
			made, input, err := f.Add(a.Path)
			require.NoError(t, err, "%s %s", name, a.Path)
			in, err := made.Find(input)
			require.NoError(t, err, "%s %s: %s", name, a.Path, input)
			require.NotEmpty(t, made.PartOf(input), input)
			back, err := made.Remove(input)
			require.NoError(t, err, "%s %s", name, in.Name)
			if a.Path != "nose" { // whose addition gives the body a length
				require.Equal(t, strings.TrimSpace(text), strings.TrimSpace(string(back.Text())), "%s %s", name, a.Path)
			}
		}
	}
	f := draftIn(t, plain)
	_, err := f.Remove("body.mass")
	require.ErrorContains(t, err, "every rocket has")
	_, err = f.Remove("limits.wind")
	require.ErrorContains(t, err, "not in the file")
	dry, err := f.Remove("water.fill")
	require.NoError(t, err)
	require.Nil(t, dry.Described().Water)
	require.Equal(t, "motor", string(dry.Rocket().Power), "what is left drives it")
	require.Empty(t, dry.Unfinished())
}

// Items of a list change places with their comments, in every way of writing.
func TestMove(t *testing.T) {
	text := plain + "\n# The first cloth.\n[[chamber.ply]]\nname = \"a\" # inner\ncloth = \"200 g/m2\"\ncount = 2\n\n[wind]\nspeed = \"1 m/s\"\n\n" +
		"# The second.\n[[chamber.ply]]\nname = \"b\"\ncloth = \"80 g/m2\"\ncount = 1\n[chamber]\nmaterial = \"E-glass/epoxy\"\n"
	f := draftIn(t, text)
	g, err := f.Move("chamber.ply.b.cloth", -1)
	require.NoError(t, err)
	require.Equal(t, "b", g.Described().Chamber.Plies[0].Name)
	require.Less(t, strings.Index(string(g.Text()), "The second"), strings.Index(string(g.Text()), "The first"))
	require.Contains(t, string(g.Text()), "[wind]\nspeed")
	back, err := g.Move("chamber.ply.b.cloth", 1)
	require.NoError(t, err)
	require.Equal(t, text, string(back.Text()))
	_, err = f.Move("chamber.ply.a.cloth", -1)
	require.ErrorContains(t, err, "goes no further")
	_, err = f.Move("water.fill", 1)
	require.ErrorContains(t, err, "only one")
	inline := draftIn(t, base+"water = { "+waterKeys+" }\ncanopy = [{name=\"x\",area=\"1 m2\",deploy=\"apogee\"}, {name=\"y\",area=\"2 m2\",deploy=\"apogee\"}]\n")
	g, err = inline.Move("canopy.x.area", 1)
	require.NoError(t, err)
	require.Equal(t, "y", g.Described().Canopies[0].Name)
}

// An uncertainty is stated, changed and taken out by the name of its input.
func TestSpreadRows(t *testing.T) {
	f := draftIn(t, plain)
	mm, _ := quantity.LookupIn("mm", quantity.Length)
	g, err := f.SetSpreadText("water.throat", "0.2", mm)
	require.NoError(t, err)
	require.InDelta(t, 0.2e-3, g.Spreads()[0].SD, 1e-12)
	_, err = f.SetSpreadText("water.throat", "wide", mm)
	require.Error(t, err)
	g, err = g.Remove("spread.water.throat")
	require.NoError(t, err)
	require.Empty(t, g.Spreads())
	_, err = g.Remove("spread.water.throat")
	require.ErrorContains(t, err, "not in the file")
}

// Uncertainties of what goes by its place follow it, in every way of writing them.
func TestSpreadsFollowTheirItems(t *testing.T) {
	layers := ""
	for _, h := range []string{"10", "300", "600"} {
		layers += "\n[[wind.layer]]\nheight = \"" + h + " m\"\nspeed = \"3 m/s\"\nfrom = \"90 deg\"\n"
	}
	stated := func(f *File) map[string]float64 {
		all := map[string]float64{}
		for _, s := range f.Spreads() {
			all[s.Input.Name] = s.SD
		}
		return all
	}
	for _, spread := range []string{
		"\n[spread]\n# of the ground\n\"wind.layer.1.speed\" = \"1 m/s\"\nwind.layer.3.speed = \"3 m/s\" # high\n",
		"\n[spread.wind]\nlayer.1.speed = \"1 m/s\"\n\"layer.3.speed\" = \"3 m/s\"\n",
		"\n[spread.wind.layer.1]\nspeed = \"1 m/s\"\n[spread.wind.layer.3]\nspeed = \"3 m/s\"\n",
	} {
		f := draftIn(t, plain+layers+spread)
		require.Equal(t, map[string]float64{"wind.layer.1.speed": 1, "wind.layer.3.speed": 3}, stated(f), spread)
		g, err := f.Remove("wind.layer.2.speed")
		require.NoError(t, err, spread)
		require.Equal(t, map[string]float64{"wind.layer.1.speed": 1, "wind.layer.2.speed": 3}, stated(g), "%s", g.Text())
		g, err = f.Remove("wind.layer.1.speed")
		require.NoError(t, err, spread)
		require.Equal(t, map[string]float64{"wind.layer.2.speed": 3}, stated(g), "%s", g.Text())
		g, err = f.Move("wind.layer.1.height", 1) // which no longer rises
		require.NoError(t, err, spread)
		require.Equal(t, map[string]float64{"wind.layer.2.speed": 1, "wind.layer.3.speed": 3}, stated(g), "%s", g.Text())
		if strings.Contains(spread, "#") {
			require.Equal(t, 2, strings.Count(string(g.Text()), "# of the ground")+strings.Count(string(g.Text()), "# high"))
		}
	}
	// One with a name of its own keeps it, one without goes by its place.
	f := draftIn(t, base+"water = { "+waterKeys+" }\ncanopy = [{area=\"1 m2\",deploy=\"apogee\"}, {name=\"y\",area=\"2 m2\",deploy=\"apogee\"}, {area=\"3 m2\",deploy=\"apogee\"}]\n"+
		"spread = { \"canopy.y.area\" = \"0.2 m2\", \"canopy.3.area\" = \"0.3 m2\", \"canopy.1.deploy.water\" = \"1 s\" }\n")
	g, err := f.Move("canopy.y.area", -1)
	require.NoError(t, err)
	require.Equal(t, map[string]float64{"canopy.y.area": 0.2, "canopy.3.area": 0.3, "canopy.2.deploy.water": 1}, stated(g), "%s", g.Text())
}

// One coordinate alone is taken, shown, and left open until the other is there; so is an outline without a place.
func TestCoordinatesInAnyOrder(t *testing.T) {
	f := draftIn(t, plain)
	f, err := f.Set("site.latitude", "47,25")
	require.NoError(t, err)
	in, err := f.Find("site.latitude")
	require.NoError(t, err)
	v, given := in.Get(f.Described())
	require.True(t, given)
	require.InDelta(t, 47.25, v, 1e-12)
	require.Len(t, f.Unfinished(), 1)
	require.Equal(t, "site.longitude", f.Unfinished()[0].With)
	_, err = Read("x.toml", folder(t), f.Text())
	require.ErrorContains(t, err, "given without longitude")
	f, err = f.Set("site.longitude", "8.5")
	require.NoError(t, err)
	require.Empty(t, f.Unfinished())
}
