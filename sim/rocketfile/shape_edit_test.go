package rocketfile

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/require"
)

// Adding leaves every line that is there as it is, and removing what was added
// leaves the very text.
func TestPartsOfShapesComeAndGo(t *testing.T) {
	for name, text := range map[string]string{
		"starter":  string(Starter().Text()),
		"CRLF":     strings.ReplaceAll(finned, "\n", "\r\n"),
		"comments": strings.ReplaceAll(finned, "\"\n", "\" # note\n"),
		"listed":   listed,
	} {
		f, err := fuzzed([]byte(text))
		require.NoError(t, err)
		bare := f
		if shaped(f.Rocket()) && len(f.Rocket().Body.Drag) == 0 {
			bare, err = f.Set("body.drag", "0.5")
			require.NoError(t, err)
		}
		if shaped(bare.Rocket()) {
			bare, err = bare.RemoveShape()
			require.NoError(t, err, name)
			require.Nil(t, bare.Rocket().Shape)
			require.NotContains(t, string(bare.Text()), "[nose]")
			require.NotContains(t, string(bare.Text()), "balance")
		}
		_, _, err = bare.AddFins()
		require.EqualError(t, err, "fins: the rocket has no shape; add one first: [nose], [[fins]] and body.length")
		_, err = bare.RemoveShape()
		require.Error(t, err)

		formed, err := bare.AddShape()
		require.NoError(t, err, name)
		require.NoError(t, formed.Rocket().Validate())
		require.False(t, formed.Rocket().Balanced() && len(formed.Rocket().Parts) == 0, "where it balances is for the scales to say")
		again, err := formed.RemoveShape()
		require.NoError(t, err)
		require.Equal(t, string(bare.Text()), string(again.Text()), name)
		_, err = formed.AddShape()
		require.EqualError(t, err, "nose: the rocket has a shape; change that one")

		for what, change := range map[string]struct {
			add    func(*File) (*File, string, error)
			remove func(*File, string) (*File, error)
		}{
			"fins":    {(*File).AddFins, (*File).RemoveFins},
			"section": {(*File).AddSection, (*File).RemoveSection},
			"part":    {(*File).AddPart, (*File).RemovePart},
		} {
			g, made, err := change.add(formed)
			require.NoError(t, err, what)
			_, err = Find(g.Rocket(), what+"."+made+".length")
			if what != "fins" {
				require.NoError(t, err)
			}
			back, err := change.remove(g, made)
			require.NoError(t, err)
			require.Equal(t, string(formed.Text()), string(back.Text()), "%s %s", name, what)
			_, err = change.remove(g, "none")
			require.ErrorContains(t, err, what+".none: the rocket has no such "+what+"; there is ")
		}
	}
}

// A tube more changes nothing in the shape, and a list begins with the rocket
// that was weighed.
func TestWhatIsAddedFits(t *testing.T) {
	f := readIn(t, folder(t), finned)
	g, name, err := f.AddSection()
	require.NoError(t, err)
	require.Equal(t, "body", name)
	before, _, _ := f.Rocket().Shape.Aero().Crossflow()
	after, _, _ := g.Rocket().Shape.Aero().Crossflow()
	require.InDelta(t, before, after, 1e-12)
	for err == nil {
		g, _, err = g.AddSection()
	}
	require.EqualError(t, err, "section: nose and sections fill the body; raise body.length or shorten one of them")

	g, name, err = f.AddPart()
	require.NoError(t, err)
	require.Equal(t, "airframe", name)
	a, b := f.Rocket().DryBody(), g.Rocket().DryBody()
	require.InDelta(t, a.Mass, b.Mass, 1e-12)
	require.InDelta(t, a.At, b.At, 1e-12)
	require.InDelta(t, a.Pitch, b.Pitch, 0.2*a.Pitch)
	h, name, err := g.AddPart()
	require.NoError(t, err)
	require.Equal(t, "part-2", name)
	require.InDelta(t, b.Mass, h.Rocket().DryBody().Mass, 1e-12, "the scales outrank the list")

	g, name, err = f.AddFins()
	require.NoError(t, err)
	require.Equal(t, "tail", name)
	for err == nil {
		g, _, err = g.AddFins()
	}
	require.EqualError(t, err, "fins: there is no room for more fins ahead of those there are; shorten those, or move them aft")
}

// What only a rocket with a shape can be uncertain about goes with the shape.
func TestSpreadGoesWithTheShape(t *testing.T) {
	text := strings.Replace(finned, "[rail]", "[spread]\n\"body.balance\" = \"5 mm\"\nfins.1.span = \"1 mm\"\n\"flight.misalignment\" = \"0.2 deg\"\nwater.nozzle = \"2 mm\"\nwater.fill = 0.01\n\n[rail]", 1)
	f := readIn(t, folder(t), strings.Replace(text, "[nose]", "drag = 0.5\n[nose]", 1))
	require.Len(t, f.Spreads(), 5)
	g, err := f.RemoveFins("1")
	require.NoError(t, err)
	require.Len(t, g.Spreads(), 4)
	g, err = f.RemoveShape()
	require.NoError(t, err)
	require.Len(t, g.Spreads(), 1)
}

// An edit of a shape's value changes its bytes and no other.
func TestSetInAShape(t *testing.T) {
	f := readIn(t, folder(t), shapely)
	for _, tt := range []struct{ input, value, old, new string }{
		{"body.length", "60 in", `length      = "1.50 m"`, `length      = "60 in"`},
		{"body.inertia", "0.12 kg*m2", `"0.11 kg*m2"`, `"0.12 kg*m2"`},
		{"nose.shape", "von Karman", `"power series"`, `"von Karman"`},
		{"nose.exponent", "0.75", `exponent = 0.6`, `exponent = 0.75`},
		{"section.2.length", "120 mm", `length = "4 in"`, `length = "120 mm"`},
		{"section.front.name", "fore", `name   = "front"`, `name   = "fore"`},
		{"fins.tail.count", "6", `count     = 3`, `count     = 6`},
		{"fins.2.sweep", "-5 mm", `"-10 mm"`, `"-5 mm"`},
		{"fins.tail.section", "rounded", `"airfoil"`, `"rounded"`},
		{"part.battery.mass", "2 oz", `"45 g"`, `"2 oz"`},
		{"water.nozzle", "1.5 m", `"1510 mm"`, `"1.5 m"`},
		{"motor.fittings_at", "1470 mm", `"1480 mm"`, `"1470 mm"`},
		{"flight.model", "point", `"rigid"`, `"point"`},
		{"flight.offset", "1 mm", `"-0.5 mm"`, `"1 mm"`},
		{"gust.height", "200 ft", `height = "60 m"`, `height = "200 ft"`},
	} {
		require.Equal(t, 1, strings.Count(shapely, tt.old), tt.old)
		g, err := f.Set(tt.input, tt.value)
		require.NoError(t, err, tt.input)
		require.Equal(t, strings.Replace(shapely, tt.old, tt.new, 1), string(g.Text()))
	}
	short := readIn(t, folder(t), finned)
	for _, tt := range []struct{ input, value, after, line string }{
		{"fins.1.cant", "0.5 deg", "position = \"1290 mm\"\n", "cant = \"0.5 deg\"\n"},
		{"fins.1.section", "wedge", "thickness = \"3 mm\"\n", "section = \"wedge\"\n"},
		{"body.inertia", "0.1 kg*m2", "balance = \"650 mm\"\n", "inertia = \"0.1 kg*m2\"\n"},
		{"flight.misalignment", "0.5 deg", "length = \"1.8 m\"\n", "\n[flight]\nmisalignment = \"0.5 deg\"\n"},
		{"gust.speed", "3 m/s", "length = \"1.8 m\"\n", "\n[gust]\nspeed = \"3 m/s\"\n"},
		{"nose.diameter", "70 mm", "shape = \"conical\"\nlength = \"200 mm\"\n", "diameter = \"70 mm\"\n"},
	} {
		g, err := short.Set(tt.input, tt.value)
		require.NoError(t, err, tt.input)
		require.Equal(t, strings.Replace(finned, tt.after, tt.after+tt.line, 1), string(g.Text()))
		back, err := g.Reset(tt.input)
		require.NoError(t, err)
		require.False(t, back.Given(tt.input))
		sameRocket(t, short, back)
	}
}
