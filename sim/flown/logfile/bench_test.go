package logfile

import (
	"bytes"
	"fmt"
	"os"
	"path/filepath"
	"runtime"
	"testing"

	"github.com/stretchr/testify/require"

	"ullage/sim/long"
)

// afternoon is a log of a million rows and four columns.
func afternoon(rows int) []byte {
	var b bytes.Buffer
	b.WriteString("time_ms,pressure_hpa,accel_g,temp_c\n")
	for i := range rows {
		fmt.Fprintf(&b, "%d,%.2f,%.4f,%.1f\n", 10*i, 977+0.01*float64(i%11), 1+0.001*float64(i%7), 18+0.1*float64(i%5))
	}
	return b.Bytes()
}

func BenchmarkReadAMillionRows(b *testing.B) {
	text := afternoon(1_000_000)
	b.SetBytes(int64(len(text)))
	b.ReportAllocs()
	for b.Loop() {
		_, err := Read("log", text, Options{})
		require.NoError(b, err)
	}
}

// A million rows, file and all, take less than 200 MB.
func TestMemoryOfLongLogs(t *testing.T) {
	rows := long.Of(200_000, 1_000_000)
	path := filepath.Join(t.TempDir(), "long.csv")
	require.NoError(t, os.WriteFile(path, afternoon(rows), 0o600))
	var before, after runtime.MemStats
	runtime.GC()
	runtime.ReadMemStats(&before)
	l, err := Open(path, Options{})
	require.NoError(t, err)
	runtime.ReadMemStats(&after)
	require.Len(t, l.Time, rows)
	require.Less(t, after.TotalAlloc-before.TotalAlloc, uint64(rows)*200) // all that was ever asked for
}
