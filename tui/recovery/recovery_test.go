package recovery

import (
	"os"
	"path/filepath"
	"testing"

	"github.com/stretchr/testify/require"
)

func open(t *testing.T, dir, file string) (*Keeper, *Left) {
	t.Helper()
	k, left, err := Open(dir, file)
	require.NoError(t, err)
	return k, left
}

// crash lets go of the lock as the system does when a program ends.
func crash(k *Keeper) { _ = k.lock.f.Close() }

// edit leaves a record behind.
func edit(t *testing.T, dir, file, text string) {
	t.Helper()
	k, _ := open(t, dir, file)
	k.Note("base", []byte(text))
	require.NoError(t, k.Flush())
	crash(k)
}

func TestLeftBehind(t *testing.T) {
	dir := filepath.Join(t.TempDir(), "state")
	k, left := open(t, dir, "a.toml")
	require.Nil(t, left)
	k.Note("base", []byte("first"))
	k.Note("base", []byte("second"))
	require.NoFileExists(t, k.path, "noting touches no disk")
	require.NoError(t, k.Flush())
	crash(k)

	k, left = open(t, dir, "a.toml")
	require.NotNil(t, left)
	require.Equal(t, "second", left.Text)
	require.Equal(t, "base", left.Base)
	require.Equal(t, "a.toml", left.File)
	require.False(t, left.At.IsZero())
	require.FileExists(t, left.Path())
	require.NoError(t, left.Discard())
	require.NoError(t, k.Close())

	_, left = open(t, dir, "a.toml")
	require.Nil(t, left)
}

func TestForgotten(t *testing.T) {
	dir := t.TempDir()
	k, _ := open(t, dir, "a.toml")
	k.Note("", []byte("x"))
	require.NoError(t, k.Flush())
	require.FileExists(t, k.path)
	k.Forget()
	require.NoError(t, k.Flush())
	require.NoFileExists(t, k.path)
	k.Note("", []byte("y"))
	require.NoError(t, k.Close())
	_, left := open(t, dir, "a.toml")
	require.Equal(t, "y", left.Text, "closing writes what was noted")
}

func TestReleasedIsOfferedAgain(t *testing.T) {
	dir := t.TempDir()
	edit(t, dir, "a.toml", "x")
	k, left := open(t, dir, "a.toml")
	k.Note("", []byte("a later run's"))
	require.NoError(t, k.Flush())
	k.Forget()
	left.Release()
	require.NoError(t, k.Close())
	_, left = open(t, dir, "a.toml")
	require.Equal(t, "x", left.Text)
}

func TestOtherFileSeesNothing(t *testing.T) {
	dir := t.TempDir()
	edit(t, dir, "a.toml", "x")
	_, left := open(t, dir, "b.toml")
	require.Nil(t, left)
}

func TestTwoProgramsOneFile(t *testing.T) {
	dir := t.TempDir()
	a, _ := open(t, dir, "a.toml")
	a.Note("", []byte("of a"))
	require.NoError(t, a.Flush())

	b, left := open(t, dir, "a.toml")
	require.Nil(t, left, "the record of a running program is not a leftover")
	require.NotEqual(t, a.path, b.path)
	b.Note("", []byte("of b"))
	require.NoError(t, b.Flush())
	b.Forget()
	require.NoError(t, b.Flush())
	require.FileExists(t, a.path, "clearing one record leaves the other's")

	b.Note("", []byte("of b, later"))
	require.NoError(t, b.Close())
	crash(a)
	c, left := open(t, dir, "a.toml")
	require.Equal(t, "of b, later", left.Text, "the newest first")
	require.NoError(t, left.Discard())
	require.NoError(t, c.Close())
	_, left = open(t, dir, "a.toml")
	require.Equal(t, "of a", left.Text, "then the older one")
}

func TestDamagedRecordIsNoEdit(t *testing.T) {
	dir := t.TempDir()
	k, _ := open(t, dir, "a.toml")
	require.NoError(t, os.WriteFile(k.path, []byte("{\"file\":"), 0o600))
	require.NoError(t, k.Close())
	_, left := open(t, dir, "a.toml")
	require.Nil(t, left)
}

func TestNothingLeftOfACleanRun(t *testing.T) {
	dir := t.TempDir()
	k, _ := open(t, dir, "a.toml")
	k.Note("", []byte("x"))
	require.NoError(t, k.Flush())
	k.Forget()
	require.NoError(t, k.Close())
	entries, err := os.ReadDir(dir)
	require.NoError(t, err)
	require.Empty(t, entries)
}

func TestFull(t *testing.T) {
	dir := t.TempDir()
	for range records {
		open(t, dir, "a.toml")
	}
	_, _, err := Open(dir, "a.toml")
	require.ErrorContains(t, err, "no place for unsaved edits")
}

func TestNilKeeperKeepsNothing(t *testing.T) {
	var k *Keeper
	k.Note("", []byte("x"))
	require.NoError(t, k.Flush())
	k.Forget()
	require.NoError(t, k.Close())
	var left *Left
	left.Release()
	require.NoError(t, left.Discard())
}

func TestNoPlace(t *testing.T) {
	file := filepath.Join(t.TempDir(), "file")
	require.NoError(t, os.WriteFile(file, nil, 0o600))
	_, _, err := Open(file, "a.toml")
	require.ErrorContains(t, err, "no place for unsaved edits")
}

// Edits of a file in a folder whose name is not UTF-8 are found again.
func TestNamesThatAreNotUTF8(t *testing.T) {
	dir := t.TempDir()
	k, _, err := Open(dir, "/caf\xe9/a.toml")
	require.NoError(t, err)
	k.Note("base", []byte("text"))
	require.NoError(t, k.Close())
	k, left, err := Open(dir, "/caf\xe9/a.toml")
	require.NoError(t, err)
	require.NotNil(t, left)
	require.Equal(t, "text", left.Text)
	left.Release()
	require.NoError(t, k.Close())
	k, left, err = Open(dir, "/caf\xe8/a.toml")
	require.NoError(t, err)
	require.Nil(t, left, "of another folder")
	require.NoError(t, k.Close())
}
