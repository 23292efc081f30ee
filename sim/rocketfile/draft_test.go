package rocketfile

import (
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"ullage/sim/rocket"
)

// draftIn is a text read as a draft.
func draftIn(t testing.TB, text string) *File {
	t.Helper()
	f, err := load("x.toml", folder(t), []byte(text), newFiles(readBeside), true)
	require.NoError(t, err)
	return f
}

// Values that disagree may be given in any order: each is taken, the draft says what disagrees and with what, and
// nothing is left of it once they agree. A file that is no draft refuses them one by one and together.
func TestDisagreement(t *testing.T) {
	f := draftIn(t, plain)
	require.Empty(t, f.Unfinished())
	wide, err := f.Set("water.throat", "70 mm")
	require.NoError(t, err)
	open := wide.Unfinished()
	require.Len(t, open, 1)
	require.Equal(t, "water.throat", open[0].Key)
	require.Equal(t, "water.bore", open[0].With)
	require.False(t, open[0].Missing)
	require.Zero(t, open[0].Line, "it is not on disk")
	both, err := wide.Set("water.bore", "90 mm")
	require.NoError(t, err)
	for _, o := range both.Unfinished() {
		require.NotEqual(t, "water.throat", o.Key)
	}
	back, err := wide.Set("water.throat", "13 mm")
	require.NoError(t, err)
	require.Empty(t, back.Unfinished())
	_, err = wide.Set("water.throat", "3 km")
	require.ErrorContains(t, err, "water.throat", "a value that cannot be is refused as ever")

	path := filepath.Join(t.TempDir(), "wide.toml")
	saved, err := wide.SaveAs(path, false)
	require.NoError(t, err)
	require.Equal(t, open[0].Problem, saved.Unfinished()[0].Problem, "and it can be saved")
	require.Positive(t, saved.Unfinished()[0].Line)
	_, err = Open(path)
	require.ErrorContains(t, err, "water.throat")
	strict := readIn(t, folder(t), plain)
	_, err = strict.Set("water.throat", "70 mm")
	require.ErrorContains(t, err, "water.throat")
	again, err := strict.Draft().Set("water.throat", "70 mm")
	require.NoError(t, err)
	require.Len(t, again.Unfinished(), 1)
}

// A draft may lack anything, and every input of it can be read nonetheless; what is missing is told by name.
func TestDraftsOfAnyPart(t *testing.T) {
	text, err := os.ReadFile(filepath.Join("..", "..", "testdata", "heron.toml"))
	require.NoError(t, err)
	lines := strings.SplitAfter(string(text), "\n")
	for n := range lines {
		less := strings.Join(lines[:n], "")
		f, err := load("x.toml", filepath.Join("..", "..", "testdata"), []byte(less), newFiles(readBeside), true)
		if err != nil {
			require.NotEqual(t, len(lines)-1, n, err)
			continue // cut within a section whose keys depend on one below
		}
		r := f.Described()
		for _, in := range Inputs(r) {
			in.Get(r)
			in.Text(r)
			in.Takes()
			f.Unit(in.Name)
		}
		for _, a := range rocket.Answers() {
			f.Rocket().Check(a)
		}
		_, strict := Read("x.toml", filepath.Join("..", "..", "testdata"), []byte(less))
		require.Equal(t, strict == nil, len(f.Unfinished()) == 0, "after line %d: %v and %v", n, strict, f.Unfinished())
	}
	bare := draftIn(t, "name = \"New\"\n[body]\n")
	var keys []string
	for _, o := range bare.Unfinished() {
		require.True(t, o.Missing)
		keys = append(keys, o.Key)
	}
	require.ElementsMatch(t, []string{"power", "body.diameter", "body.mass", "body.drag", "rail"}, keys)
}

// A drive that does not fly may be described in part: a draft lists it, and what flies goes without.
func TestIdleDrive(t *testing.T) {
	f := draftIn(t, plain)
	f, err := f.Reset("motor.case")
	require.NoError(t, err)
	require.Empty(t, f.Unfinished())
	require.NotNil(t, f.Described().Motor)
	require.Nil(t, f.Rocket().Motor)
	f, err = f.Set("motor.propellant", "90 g")
	require.NoError(t, err)
	f, err = f.Set("power", "motor")
	require.NoError(t, err)
	require.Len(t, f.Unfinished(), 1)
	require.Equal(t, "motor.case", f.Unfinished()[0].Key)
	require.True(t, f.Unfinished()[0].Missing)
}
