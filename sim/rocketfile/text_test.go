package rocketfile

import (
	"bytes"
	"path/filepath"
	"testing"

	"github.com/stretchr/testify/require"

	"ullage/sim/fault"
)

// A text that was kept elsewhere takes the place of the file's own: it finds
// the starter's curve, and is saved where the file lives.
func TestWithText(t *testing.T) {
	edited, err := Starter().Set("water.fill", "0.41")
	require.NoError(t, err)
	again, err := Starter().WithText(edited.Text())
	require.NoError(t, err)
	require.Equal(t, edited.Rocket(), again.Rocket())
	require.True(t, again.Modified())

	path := filepath.Join(t.TempDir(), "a.toml")
	lodged, err := Starter().SaveAs(path, false)
	require.NoError(t, err)
	again, err = lodged.WithText(edited.Text())
	require.NoError(t, err)
	require.Equal(t, path, again.Path())
	require.NoError(t, again.Save())
	require.False(t, again.Modified())
	require.True(t, lodged.Modified(), "one home, one text on disk")
}

func TestWithTextThatIsNoRocket(t *testing.T) {
	for _, text := range [][]byte{nil, []byte("name = "), bytes.Repeat([]byte{0xff}, 40), []byte("[water]\nfill = 0.3\n")} {
		_, err := Starter().WithText(text)
		var faults fault.List
		require.ErrorAs(t, err, &faults, "%q", text)
		require.NotEmpty(t, faults)
	}
}
