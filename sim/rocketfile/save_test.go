package rocketfile

import (
	"bytes"
	"io/fs"
	"os"
	"os/exec"
	"path/filepath"
	"runtime"
	"strings"
	"testing"
	"time"

	"ullage/sim/long"

	"github.com/stretchr/testify/require"
)

// saved puts plain with its curve into a new folder and opens it.
func saved(t *testing.T) (*File, string) {
	t.Helper()
	path := filepath.Join(folder(t), "plain.toml")
	require.NoError(t, os.WriteFile(path, []byte(plain), 0o644))
	f, err := Open(path)
	require.NoError(t, err)
	return f, path
}

func onDisk(t *testing.T, path string) string {
	t.Helper()
	text, err := os.ReadFile(path)
	require.NoError(t, err)
	return string(text)
}

// only holds that a folder has these files and no leftovers.
func only(t *testing.T, dir string, names ...string) {
	t.Helper()
	entries, err := os.ReadDir(dir)
	require.NoError(t, err)
	var got []string
	for _, e := range entries {
		got = append(got, e.Name())
	}
	require.ElementsMatch(t, names, got)
}

func TestSave(t *testing.T) {
	f, path := saved(t)
	require.False(t, f.Modified())
	g, err := f.Set("water.fill", "0.4")
	require.NoError(t, err)
	require.True(t, g.Modified())
	require.Equal(t, plain, onDisk(t, path), "an edit saves nothing")
	require.NoError(t, g.Save())
	require.Equal(t, string(g.Text()), onDisk(t, path))
	require.False(t, g.Modified())
	require.True(t, f.Modified(), "what was read first now differs from the disk")
	require.NoError(t, f.Save(), "going back is no change by someone else")
	require.Equal(t, plain, onDisk(t, path))
	only(t, filepath.Dir(path), "plain.toml", "h.csv")
}

func TestSaveKeepsPermissionsAndLinks(t *testing.T) {
	if runtime.GOOS == "windows" {
		t.Skip("permissions and links are of another kind there")
	}
	_, path := saved(t)
	require.NoError(t, os.Chmod(path, 0o640))
	link := filepath.Join(filepath.Dir(path), "link.toml")
	require.NoError(t, os.Symlink("plain.toml", link))
	f, err := Open(link)
	require.NoError(t, err)
	g, err := f.Set("water.fill", "0.4")
	require.NoError(t, err)
	require.NoError(t, g.Save())
	info, err := os.Lstat(link)
	require.NoError(t, err)
	require.NotZero(t, info.Mode()&fs.ModeSymlink, "the link stays a link")
	require.Equal(t, string(g.Text()), onDisk(t, path))
	info, err = os.Stat(path)
	require.NoError(t, err)
	require.Equal(t, fs.FileMode(0o640), info.Mode().Perm())

	require.NoError(t, os.Chmod(path, 0o440))
	require.EqualError(t, f.Save(), "saving "+link+": the file is read-only")
}

func TestSaveRefuses(t *testing.T) {
	require.ErrorIs(t, Starter().Save(), ErrNoPath)
	piped := readIn(t, folder(t), plain)
	require.ErrorIs(t, piped.Save(), ErrNoPath)

	f, path := saved(t)
	g, err := f.Set("water.fill", "0.4")
	require.NoError(t, err)
	require.NoError(t, os.WriteFile(path, []byte("# mine now\n"), 0o644))
	require.ErrorIs(t, g.Save(), ErrChanged)
	require.Equal(t, "# mine now\n", onDisk(t, path))
	_, err = g.SaveAs(path, false)
	require.ErrorIs(t, err, ErrExists)
	require.Equal(t, "# mine now\n", onDisk(t, path))
	h, err := g.SaveAs(path, true)
	require.NoError(t, err)
	require.Equal(t, string(g.Text()), onDisk(t, path))
	require.False(t, h.Modified())
	require.True(t, f.Modified())
	require.NoError(t, f.Save(), "the edits before a forced save are of the same file")
	require.NoError(t, h.Save())

	require.NoError(t, os.Remove(path))
	require.NoError(t, h.Save(), "a file that is gone is written anew")
	require.NoError(t, os.Remove(path))
	require.NoError(t, os.Mkdir(path, 0o755))
	require.EqualError(t, h.Save(), "saving "+path+": it is a folder, not a file")
	_, err = h.SaveAs(path, true)
	require.EqualError(t, err, "saving "+path+": it is a folder; give the name of a file")
	_, err = h.SaveAs(filepath.Join(path, "no", "x.toml"), false)
	require.EqualError(t, err, "saving "+filepath.Join(path, "no", "x.toml")+": there is no such folder; make it first")
	_, err = h.SaveAs(os.DevNull, true)
	require.EqualError(t, err, "saving "+os.DevNull+": it is not a plain file; give the name of one")
}

func TestSaveAsTakesTheCurveAlong(t *testing.T) {
	f, path := saved(t)
	dir := t.TempDir()
	to := filepath.Join(dir, "copy.toml")
	g, err := f.SaveAs(to, false)
	require.NoError(t, err)
	require.Equal(t, to, g.Path())
	require.Equal(t, to, g.Name())
	require.Equal(t, plain, onDisk(t, to))
	require.Equal(t, curve, onDisk(t, filepath.Join(dir, "h.csv")))
	only(t, dir, "copy.toml", "h.csv")
	require.Equal(t, path, f.Path(), "the file saved stays where it is")

	other := t.TempDir()
	require.NoError(t, os.WriteFile(filepath.Join(other, "h.csv"), []byte("mine"), 0o644))
	_, err = f.SaveAs(filepath.Join(other, "copy.toml"), false)
	require.ErrorIs(t, err, ErrExists)
	only(t, other, "h.csv")
	require.Equal(t, "mine", onDisk(t, filepath.Join(other, "h.csv")))

	outside := filepath.Join(t.TempDir(), "rockets")
	require.NoError(t, os.Mkdir(outside, 0o755))
	require.NoError(t, os.WriteFile(filepath.Join(filepath.Dir(outside), "h.csv"), []byte(curve), 0o644))
	up := readIn(t, outside, swapped(t, `curve = "h.csv"`, `curve = "../h.csv"`))
	_, err = up.SaveAs(filepath.Join(t.TempDir(), "copy.toml"), false)
	require.EqualError(t, err, "saving: "+filepath.FromSlash("../h.csv")+" would not be found from there; move it there first")
}

func TestSaveAsTakesTheMotorFileAlong(t *testing.T) {
	dir := folder(t)
	require.NoError(t, os.Mkdir(filepath.Join(dir, "motors"), 0o755))
	require.NoError(t, os.WriteFile(filepath.Join(dir, "motors", "h.toml"), []byte("curve = \"../h.csv\"\n"), 0o644))
	f := readIn(t, dir, swapped(t, `curve = "h.csv"`, `file = "motors/h.toml"`))
	to := t.TempDir()
	g, err := f.SaveAs(filepath.Join(to, "x.toml"), false)
	require.NoError(t, err)
	require.Equal(t, f.Rocket().Motor.Curve.Points(), g.Rocket().Motor.Curve.Points())
	require.FileExists(t, filepath.Join(to, "motors", "h.toml"))
	require.FileExists(t, filepath.Join(to, "h.csv"))
}

func TestWriteStarter(t *testing.T) {
	dir := t.TempDir()
	path := filepath.Join(dir, "new.toml")
	require.NoError(t, WriteStarter(path))
	only(t, dir, "new.toml", "starter-h.csv")
	f, err := Open(path)
	require.NoError(t, err)
	require.Equal(t, Starter().Text(), f.Text())
	require.Equal(t, Starter().Rocket(), f.Rocket())

	require.ErrorIs(t, WriteStarter(path), ErrExists)
	require.NoError(t, WriteStarter(filepath.Join(dir, "second.toml")), "the same curve serves both")
	only(t, dir, "new.toml", "second.toml", "starter-h.csv")

	taken := t.TempDir()
	require.NoError(t, os.WriteFile(filepath.Join(taken, "starter-h.csv"), []byte("mine"), 0o644))
	require.ErrorIs(t, WriteStarter(filepath.Join(taken, "new.toml")), ErrExists)
	only(t, taken, "starter-h.csv")
	require.Equal(t, "mine", onDisk(t, filepath.Join(taken, "starter-h.csv")))

	require.Error(t, WriteStarter(filepath.Join(dir, "no", "new.toml")))
	require.NoDirExists(t, filepath.Join(dir, "no"))
}

// A folder that takes no new file loses none of the old.
func TestSaveThatFailsLeavesTheOldFile(t *testing.T) {
	f, path := saved(t)
	g, err := f.Set("water.fill", "0.4")
	require.NoError(t, err)
	dir := filepath.Dir(path)
	require.NoError(t, os.Chmod(dir, 0o555))
	defer os.Chmod(dir, 0o755)
	if probe := os.WriteFile(filepath.Join(dir, "probe"), nil, 0o644); probe == nil {
		t.Skip("this user may write everywhere")
	}
	require.EqualError(t, g.Save(), "saving "+path+": its folder may not be written to; save under another name")
	require.Equal(t, plain, onDisk(t, path))
	require.True(t, g.Modified())
}

// A folder that is gone is told of as such.
func TestSaveIntoAFolderThatIsGone(t *testing.T) {
	f, path := saved(t)
	require.NoError(t, os.RemoveAll(filepath.Dir(path)))
	require.EqualError(t, f.Save(), "saving "+path+": its folder is gone; save under another name")
}

const saverEnv = "ULLAGE_TEST_SAVER"

// TestSaverProcess is the other process of the test below: it saves two texts
// in turn until it is killed.
func TestSaverProcess(t *testing.T) {
	path := os.Getenv(saverEnv)
	if path == "" {
		t.Skip("runs in a process of its own")
	}
	f, err := Open(path)
	require.NoError(t, err)
	g, err := f.Set("water.fill", "0.4")
	require.NoError(t, err)
	for {
		require.NoError(t, g.Save())
		require.NoError(t, f.Save())
	}
}

// Whenever the program is killed while it saves, one of the two texts is there
// as a whole.
func TestKillDuringSaveLeavesAWholeFile(t *testing.T) {
	if runtime.GOOS == "windows" {
		t.Skip("renameio does not replace files at once there")
	}
	dir := folder(t)
	path := filepath.Join(dir, "plain.toml")
	old := plain + strings.Repeat("# a long comment that takes a while to write\n", 20_000)
	changed := strings.Replace(old, "fill = 0.3", "fill = 0.4", 1)
	for i := range long.Of(3, 8) {
		require.NoError(t, os.WriteFile(path, []byte(old), 0o644))
		cmd := exec.Command(os.Args[0], "-test.run=^TestSaverProcess$")
		elsewhere := t.TempDir()
		cmd.Env = append(os.Environ(), saverEnv+"="+path, "TMPDIR="+elsewhere)
		require.NoError(t, cmd.Start())
		// Once the first save is through, any moment is in the middle of one.
		require.Eventually(t, func() bool { return onDisk(t, path) == changed }, 10*time.Second, time.Millisecond)
		time.Sleep(time.Duration(i) * 1700 * time.Microsecond)
		require.NoError(t, cmd.Process.Kill())
		_ = cmd.Wait() // killed
		text := []byte(onDisk(t, path))
		require.True(t, bytes.Equal(text, []byte(old)) || bytes.Equal(text, []byte(changed)), "%d bytes of %d", len(text), len(old))
		only(t, elsewhere)
		f, err := Open(path)
		require.NoError(t, err)
		require.NoError(t, f.Save())
		only(t, dir, "plain.toml", "h.csv") // what was left unfinished went with the next save
	}
}
