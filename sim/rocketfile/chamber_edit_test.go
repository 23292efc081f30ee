package rocketfile

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"ullage/sim/chamber"
	"ullage/sim/quantity"
)

// wet is a rocket with a water drive and nothing said of its chamber's structure.
const wet = `name = "Wet"
power = "water"

[body]
diameter = "104 mm"
mass     = "0.9 kg"
drag     = 0.45

[water]
volume   = "5 L"
bore     = "100 mm"
throat   = "14 mm"
fill     = 0.3
pressure = "9 bar"

[rail]
length = "1.8 m"
`

// The chamber added suits the rocket: it can be proved for its pressure, no layer is
// idle, and it has no proof on record. Every line that was there stays.
func TestAddChamber(t *testing.T) {
	f := readIn(t, folder(t), wet)
	g, err := f.AddChamber()
	require.NoError(t, err)
	r := g.Rocket()
	require.NoError(t, r.Validate())
	require.Zero(t, r.Chamber.Proof)
	require.Equal(t, chamber.GlassEpoxy, r.Chamber.Material)
	require.Equal(t, chamber.Ellipsoid, r.Chamber.Aft.Shape)
	result := r.ChamberAt()
	require.True(t, result.ProofEnough)
	require.Less(t, result.Parts[3].Use, 0.25, "the lap is no weak place")
	thinner := r.Clone()
	thinner.Chamber.Plies[0].Count--
	require.False(t, thinner.Vessel().At(thinner.Service()).ProofEnough, "a layer less is too little")
	for _, line := range strings.Split(wet, "\n") {
		require.Contains(t, string(g.Text()), line)
	}
	_, err = g.AddChamber()
	require.EqualError(t, err, "chamber: the rocket has a chamber; change that one")
	water := plain[strings.Index(plain, "[water]"):strings.Index(plain, "[motor]")]
	dry := readIn(t, folder(t), strings.Replace(plain, water, "", 1)[len("name = \"Plain\"\npower = \"water\"\n"):])
	_, err = dry.AddChamber()
	require.EqualError(t, err, "chamber: the rocket has no water drive; add [water] first")
}

// Where the body has no room for the wall that the pressure takes, the wall fills what
// room there is, and the checks say the rest.
func TestAddChamberInANarrowBody(t *testing.T) {
	f := readIn(t, folder(t), strings.Replace(wet, `"9 bar"`, `"40 bar"`, 1))
	g, err := f.AddChamber()
	require.NoError(t, err)
	r := g.Rocket()
	require.False(t, r.ChamberAt().ProofEnough)
	require.LessOrEqual(t, 0.1+2*r.Vessel().WallThickness(), r.Body.Diameter)
}

// A ply more is one layer of the outermost cloth; taking it out leaves the very text,
// however the plies are written.
func TestPliesComeAndGo(t *testing.T) {
	f := readIn(t, folder(t), wet)
	_, _, err := f.AddPly()
	require.EqualError(t, err, "chamber.ply: the rocket has no chamber; add one first")
	grown, err := f.AddChamber()
	require.NoError(t, err)
	ends := "forward = { shape = \"ellipsoid\", overlap = \"35 mm\" }\naft = { shape = \"ellipsoid\", overlap = \"35 mm\" }\n"
	for name, text := range map[string]string{
		"blocks":   string(grown.Text()),
		"CRLF":     strings.ReplaceAll(string(grown.Text()), "\n", "\r\n"),
		"brackets": wet + "\n[chamber]\nmaterial = \"E-glass/epoxy\"\n" + ends + `ply = [{ name = "a", cloth = "160 g/m2", count = 3, weave = "braided", direction = "54 deg" }]` + "\n",
		"measured": wet + "\n[chamber]\nmaterial = \"E-glass/epoxy\"\nhoop_strength = \"300 MPa\"\nwall = \"0.3 mm\"\n" + ends,
		"braces":   strings.Replace(wet, "\n[body]", `chamber = { material = "E-glass/epoxy", hoop_strength = "300 MPa", wall = "0.3 mm" }`+"\n\n[body]", 1),
	} {
		g, err := fuzzed([]byte(text))
		require.NoError(t, err, name)
		before := g.Rocket().Chamber.Plies
		h, made, err := g.AddPly()
		require.NoError(t, err, name)
		plies := h.Rocket().Chamber.Plies
		require.Len(t, plies, len(before)+1, name)
		last := plies[len(before)]
		require.Equal(t, 1, last.Count)
		require.Equal(t, made, last.Name)
		if len(before) > 0 {
			want := before[len(before)-1]
			want.Name, want.Count = made, 1
			require.Equal(t, want, last, name)
		}
		back, err := h.RemovePly(made)
		require.NoError(t, err, name)
		sameRocket(t, g, back)
		if name == "blocks" || name == "CRLF" {
			require.Equal(t, text, string(back.Text()), name)
		}
	}
	_, err = grown.RemovePly("none")
	require.EqualError(t, err, "chamber.ply.none: the rocket has no such ply; there is cloth")
	require.Equal(t, "200 g/m2", quantity.Exact(usualCloth, quantity.Usual(quantity.ArealDensity)))
}
