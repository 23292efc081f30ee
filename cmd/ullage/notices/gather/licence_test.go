package main

import (
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// tree writes files into a folder of its own.
func tree(t *testing.T, files map[string]string) string {
	dir := t.TempDir()
	for name, text := range files {
		path := filepath.Join(dir, name)
		require.NoError(t, os.MkdirAll(filepath.Dir(path), 0o700))
		require.NoError(t, os.WriteFile(path, []byte(text), 0o600))
	}
	return dir
}

func TestLicencesOfWhatIsLinked(t *testing.T) {
	dir := tree(t, map[string]string{
		"LICENSE": "top\r\nof it \n\n", "LICENSE-SIL": "font", "licence.go": "package x", "README.md": "no licence here",
		"licenses/one.txt": "one", "used/deep/COPYING": "deep", "used/deep/testdata/LICENSE": "of data", "other/LICENSE": "of what is not linked",
	})
	m := module{name: "example.org/x v1.0.0", dir: dir, packages: []string{dir, filepath.Join(dir, "used", "deep")}}
	found, err := m.licences()
	require.NoError(t, err)
	assert.Equal(t, []licence{
		{m.name, "LICENSE", "top\nof it\n"},
		{m.name, "LICENSE-SIL", "font\n"},
		{m.name, "licenses/one.txt", "one\n"},
		{m.name, "used/deep/COPYING", "deep\n"},
	}, found)
}

func TestWithoutALicenceNothingIsWritten(t *testing.T) {
	m := module{name: "example.org/x v1.0.0", dir: tree(t, map[string]string{"README.md": "## License\n\nmine\n"})}
	_, err := m.licences()
	assert.EqualError(t, err, "example.org/x v1.0.0 has no licence file")

	m.name = "github.com/mattn/go-localereader v9.0.0" // known to tell of it in its README
	found, err := m.licences()
	require.NoError(t, err)
	assert.Equal(t, []licence{{m.name, "README.md", "## License\n\nmine\n"}}, found)
	require.NoError(t, os.WriteFile(filepath.Join(m.dir, "README.md"), []byte("nothing"), 0o600))
	_, err = m.licences()
	assert.ErrorContains(t, err, "is not in its README")
}

func TestTheSameTextStandsOnce(t *testing.T) {
	var b strings.Builder
	require.NoError(t, write(&b, []licence{{"a v1", "LICENSE", "one\n"}, {"b v1", "LICENSE", "two\n"}, {"c v1", "COPYING", "one\n"}}))
	rule := strings.Repeat("=", 80) + "\n"
	assert.Equal(t, head+
		"\n"+rule+"a v1: LICENSE\nc v1: COPYING\n"+rule+"\none\n"+
		"\n"+rule+"b v1: LICENSE\n"+rule+"\ntwo\n", b.String())
}
