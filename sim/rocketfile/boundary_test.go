package rocketfile

import (
	"os"
	"path/filepath"
	"testing"

	"github.com/stretchr/testify/require"
)

// The field's outline is read from its file around the pad; what is wrong with it is told with the
// line that names it.
func TestBoundaryOfTheField(t *testing.T) {
	dir := folder(t)
	write := func(name, text string) {
		require.NoError(t, os.WriteFile(filepath.Join(dir, name), []byte(text), 0o600))
	}
	write("meadow.geojson", `{"type":"Polygon","coordinates":[[[-1.26,50.49],[-1.24,50.49],[-1.24,50.51],[-1.26,50.51],[-1.26,50.49]]]}`)
	write("bow.geojson", `{"type":"Polygon","coordinates":[[[-1.26,50.49],[-1.24,50.51],[-1.24,50.49],[-1.26,50.51],[-1.26,50.49]]]}`)
	const site = "[site]\nlatitude = 50.5\nlongitude = -1.25\n"
	named := func(name string) string { return plain + site + "[field]\nboundary = \"" + name + "\"\n" }
	f := readIn(t, dir, named("meadow.geojson"))
	r := f.Rocket()
	require.Len(t, r.Field.Boundary, 4)
	require.InEpsilon(t, 0.02*70986*0.02*111246, r.Field.Boundary.Area(), 1e-3, "a degree at 50.5° north, by the ellipsoid")
	require.True(t, r.Field.Bounded())
	require.True(t, r.Field.Holds(0, 0))
	require.False(t, r.Field.Holds(800, 0))
	none := readIn(t, dir, plain+site)
	set, err := none.Set("field.boundary", "meadow.geojson")
	require.NoError(t, err)
	require.Equal(t, r.Field, set.Rocket().Field)
	in, err := Find(r, "field.boundary")
	require.NoError(t, err)
	require.Equal(t, "meadow.geojson", in.Text(r))
	_, err = none.Set("field.boundary", "bow.geojson")
	require.ErrorContains(t, err, "crosses itself")
	back, err := set.Reset("field.boundary")
	require.NoError(t, err)
	require.Empty(t, back.Rocket().Field.Boundary)
	require.Empty(t, back.Rocket().Field.Outline)
	elsewhere := filepath.Join(t.TempDir(), "copy.toml")
	moved, err := set.SaveAs(elsewhere, false)
	require.NoError(t, err)
	require.Equal(t, r.Field, moved.Rocket().Field, "its outline lies beside it")
	require.Contains(t, moved.Paths(), filepath.Join(filepath.Dir(elsewhere), "meadow.geojson"))
	r = r.Clone()
	r.Field.Radius = 100
	require.False(t, r.Field.Holds(0, 200), "the radius counts too")
	for text, says := range map[string]string{
		named("bow.geojson"):                               `field.boundary = "bow.geojson": crosses itself`,
		named("none.geojson"):                              `field.boundary = "none.geojson": there is no such file`,
		plain + "[field]\nboundary = \"meadow.geojson\"\n": "lies nowhere without the pad's place; give latitude and longitude in [site]",
	} {
		_, err := Read("heron.toml", dir, []byte(text))
		require.ErrorContains(t, err, says)
		require.ErrorContains(t, err, "heron.toml:")
	}
}
