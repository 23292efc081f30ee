package fault_test

import (
	"os"
	"path/filepath"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"ullage/sim/fault"
)

func TestReadFile(t *testing.T) {
	folder := t.TempDir()
	path := filepath.Join(folder, "a.csv")
	require.NoError(t, os.WriteFile(path, []byte("1,2\n"), 0o600))
	text, err := fault.ReadFile(path, 4, fault.Files)
	require.NoError(t, err)
	assert.Equal(t, "1,2\n", string(text))
	for path, why := range map[string]string{path: "it is larger than 0 MB", folder: "it is a folder, not a file", os.DevNull: "it is not a plain file",
		filepath.Join(folder, "b.csv"): "there is no such file"} {
		_, err := fault.ReadFile(path, 3, fault.Pipes)
		require.Error(t, err)
		assert.Equal(t, why, fault.Reason(err))
	}
	text, err = fault.ReadFile(os.DevNull, 3, fault.Devices)
	require.NoError(t, err)
	assert.Empty(t, text)
}
