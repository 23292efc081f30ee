package main

import (
	"archive/tar"
	"archive/zip"
	"bytes"
	"compress/gzip"
	"debug/pe"
	"io"
	"os"
	"os/exec"
	"path/filepath"
	"runtime"
	"strings"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"ullage/sim/long"
)

var (
	someTime  = time.Date(2026, 3, 4, 5, 6, 8, 0, time.UTC)
	someFiles = []file{{"ullage", []byte("\x7fELF"), true}, {"LICENSE", []byte("MIT\n"), false}}
)

// unpacked is what an archive of ours holds, by name, and which of it can be run.
func unpacked(t *testing.T, name string, archive []byte) (files map[string][]byte, runnable []string) {
	t.Helper()
	files = map[string][]byte{}
	if strings.HasSuffix(name, ".zip") {
		r, err := zip.NewReader(bytes.NewReader(archive), int64(len(archive)))
		require.NoError(t, err)
		for _, f := range r.File {
			in, err := f.Open()
			require.NoError(t, err)
			files[f.Name], err = io.ReadAll(in)
			require.NoError(t, err)
			assert.WithinDuration(t, someTime, f.Modified, 20*365*24*time.Hour)
		}
		return files, nil
	}
	plain, err := gzip.NewReader(bytes.NewReader(archive))
	require.NoError(t, err)
	for r := tar.NewReader(plain); ; {
		head, err := r.Next()
		if err == io.EOF {
			return files, runnable
		}
		require.NoError(t, err)
		files[head.Name], err = io.ReadAll(r)
		require.NoError(t, err)
		if head.Mode&0o111 != 0 {
			runnable = append(runnable, head.Name)
		}
	}
}

func TestArchivesHoldWhatIsPacked(t *testing.T) {
	for name, pack := range map[string]func(string, time.Time, []file) ([]byte, error){"a.tar.gz": tarred, "a.zip": zipped} {
		archive, err := pack("folder", someTime, someFiles)
		require.NoError(t, err)
		files, runnable := unpacked(t, name, archive)
		assert.Equal(t, map[string][]byte{"folder/ullage": []byte("\x7fELF"), "folder/LICENSE": []byte("MIT\n")}, files)
		if name == "a.tar.gz" {
			assert.Equal(t, []string{"folder/ullage"}, runnable)
		}
		again, err := pack("folder", someTime, someFiles)
		require.NoError(t, err)
		assert.Equal(t, archive, again, "nothing of the moment is in it")
	}
}

// A release for this machine and one for Windows: they hold the program, its licence and the notices, and the first runs.
func TestRelease(t *testing.T) {
	if !long.Wanted() {
		t.Skip("ULLAGE_LONG=1 builds two programs")
	}
	s, err := look()
	if err != nil {
		t.Skip("not a clean checkout: ", err)
	}
	here := target{runtime.GOOS, runtime.GOARCH}
	name, archive, err := s.archive(here)
	require.NoError(t, err)
	files, _ := unpacked(t, name, archive)
	folder := strings.TrimSuffix(strings.TrimSuffix(name, ".zip"), ".tar.gz")
	require.Len(t, files, 4)
	assert.Contains(t, string(files[folder+"/NOTICES.txt"]), "Ullage")
	assert.Contains(t, string(files[folder+"/README.md"]), "# Ullage")
	assert.NotEmpty(t, files[folder+"/LICENSE"])
	program := filepath.Join(t.TempDir(), "ullage.exe")
	require.NoError(t, os.WriteFile(program, files[folder+"/ullage"], 0o755))
	told, err := exec.Command(program, "--version").CombinedOutput()
	require.NoError(t, err, string(told))
	assert.Regexp(t, `^ullage \S+\nbuilt .* for `+here.system+"/"+here.machine, string(told))
	notices, err := exec.Command(program, "notices").Output()
	require.NoError(t, err)
	assert.Equal(t, string(files[folder+"/NOTICES.txt"]), string(notices))

	name, archive, err = s.archive(target{"windows", "amd64"})
	require.NoError(t, err)
	files, _ = unpacked(t, name, archive)
	image, err := pe.NewFile(bytes.NewReader(files[strings.TrimSuffix(name, ".zip")+"/ullage.exe"]))
	require.NoError(t, err)
	assert.EqualValues(t, pe.IMAGE_FILE_MACHINE_AMD64, image.Machine)
	_, err = image.ImportedLibraries()
	require.NoError(t, err)
}
