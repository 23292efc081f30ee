package atomicfile

import (
	"io/fs"
	"os"
	"path/filepath"
	"runtime"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"
)

func text(t *testing.T, path string) string {
	t.Helper()
	b, err := os.ReadFile(path)
	require.NoError(t, err)
	return string(b)
}

// names are the files of a folder, unfinished ones by their mark alone.
func names(t *testing.T, dir string) (all []string) {
	t.Helper()
	entries, err := os.ReadDir(dir)
	require.NoError(t, err)
	for _, e := range entries {
		name, _, open := strings.Cut(e.Name(), mark)
		if open {
			name += mark
		}
		all = append(all, name)
	}
	return all
}

// Until it is replaced the old file is there as it was, and the new one beside it in its
// own folder, wherever temporary files go, with its permissions.
func TestReplace(t *testing.T) {
	dir := t.TempDir()
	t.Setenv("TMPDIR", t.TempDir())
	path := filepath.Join(dir, "a.toml")
	require.NoError(t, os.WriteFile(path, []byte("old"), 0o600))
	f, err := Begin(path, 0o644)
	require.NoError(t, err)
	_, err = f.Write([]byte("new"))
	require.NoError(t, err)
	require.Equal(t, []string{".a.toml" + mark, "a.toml"}, names(t, dir))
	if runtime.GOOS != "windows" {
		info, err := os.Stat(f.Name())
		require.NoError(t, err)
		require.Equal(t, fs.FileMode(0o600), info.Mode().Perm(), "not for others to read meanwhile")
	}
	require.Equal(t, "old", text(t, path))
	require.NoError(t, f.Replace())
	require.Equal(t, "new", text(t, path))
	require.Equal(t, []string{"a.toml"}, names(t, dir))
	require.Empty(t, names(t, os.Getenv("TMPDIR")))
}

func TestPlaceReplacesNothing(t *testing.T) {
	dir := t.TempDir()
	path := filepath.Join(dir, "a.csv")
	for i, want := range []error{nil, fs.ErrExist} {
		f, err := Begin(path, 0o644)
		require.NoError(t, err)
		_, err = f.Write([]byte{byte('0' + i)})
		require.NoError(t, err)
		require.ErrorIs(t, f.Place(), want)
	}
	require.Equal(t, "0", text(t, path))
	require.Equal(t, []string{"a.csv"}, names(t, dir))

	f, err := Begin(filepath.Join(dir, "b.csv"), 0o644)
	require.NoError(t, err)
	f.Discard()
	require.Equal(t, []string{"a.csv"}, names(t, dir))
}

// What a program that has ended left goes with the next file, of whatever name, in that
// folder; what another is writing stays, and so do files that only look like it.
func TestLeftoversGo(t *testing.T) {
	dir := t.TempDir()
	left := filepath.Join(dir, ".z.toml"+mark+"1a2b")
	require.NoError(t, os.WriteFile(left, []byte("half"), 0o600))
	others := []string{".hidden", ".z.toml" + mark + "NOT", "z" + mark + "1"}
	for _, name := range others {
		require.NoError(t, os.WriteFile(filepath.Join(dir, name), nil, 0o600))
	}
	open, err := Begin(filepath.Join(dir, "b.csv"), 0o644)
	require.NoError(t, err)
	require.NoFileExists(t, left)

	require.NoError(t, Write(filepath.Join(dir, "a.toml"), []byte("a"), 0o644))
	require.FileExists(t, open.Name())
	require.NoError(t, open.Replace())
	for _, name := range others {
		require.FileExists(t, filepath.Join(dir, name))
	}
}

func TestLinksStayLinks(t *testing.T) {
	dir := t.TempDir()
	require.NoError(t, os.WriteFile(filepath.Join(dir, "a"), []byte("old"), 0o600))
	if err := os.Symlink("a", filepath.Join(dir, "link")); err != nil {
		t.Skip("no links here:", err)
	}
	require.NoError(t, Write(filepath.Join(dir, "link"), []byte("new"), 0o644))
	require.Equal(t, "new", text(t, filepath.Join(dir, "a")))
	require.Equal(t, []string{"a", "link"}, names(t, dir))

	require.NoError(t, os.Remove(filepath.Join(dir, "a")))
	require.NoError(t, Write(filepath.Join(dir, "link"), []byte("newer"), 0o644))
	require.Equal(t, "newer", text(t, filepath.Join(dir, "a")), "of one that points at nothing too")
	require.Equal(t, []string{"a", "link"}, names(t, dir))
	require.NoError(t, os.Symlink("round", filepath.Join(dir, "round")))
	require.Error(t, Write(filepath.Join(dir, "round", "x"), nil, 0o644))
}

func TestErrorsNameThePath(t *testing.T) {
	path := filepath.Join(t.TempDir(), "none", "a")
	_, err := Begin(path, 0o644)
	require.ErrorIs(t, err, fs.ErrNotExist)
	require.ErrorContains(t, err, "write "+path+": ")
	long := filepath.Join(t.TempDir(), strings.Repeat("n", 240))
	require.NoError(t, Write(long, []byte("x"), 0o644), "a long name leaves room for the mark")
}
