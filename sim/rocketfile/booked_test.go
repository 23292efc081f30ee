package rocketfile

import (
	"os"
	"path/filepath"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

const bookText = `[[entry]]
date = "2026-04-01"
kind = "proof"
chamber = "TH-1"
pressure = "15 bar"

[[entry]]
date = "2026-04-02"
kind = "flight"
chamber = "TH-1"
pressure = "9 bar"
landing = "8 m/s"
damage = "dent"

[[entry]]
date = "2026-04-03"
kind = "flight"
chamber = "TH-2"
pressure = "9 bar"
`

// The worse of file and logbook counts, and what differs is named.
func TestLogbookOfAChamber(t *testing.T) {
	heron, err := os.ReadFile("../../testdata/heron.toml")
	require.NoError(t, err)
	curve, err := os.ReadFile("../../testdata/h-trainer.csv")
	require.NoError(t, err)
	dir := t.TempDir()
	path := filepath.Join(dir, "heron.toml")
	require.NoError(t, os.WriteFile(path, heron, 0o600))
	require.NoError(t, os.WriteFile(filepath.Join(dir, "h-trainer.csv"), curve, 0o600))
	book := filepath.Join(dir, "heron.logbook.toml")
	open := func() *File {
		f, err := Open(path)
		require.NoError(t, err)
		f, err = f.SetAll(Change{"chamber.logbook", "heron.logbook.toml"}, Change{"chamber.serial", "TH-1"})
		require.NoError(t, err)
		return f
	}
	c := open().Rocket().Chamber
	require.NotNil(t, c.Booked)
	assert.NotEmpty(t, c.Booked.Missing, "a book that is not there is no book without entries")

	require.NoError(t, os.WriteFile(book, []byte(bookText), 0o600))
	plain, err := Open(path)
	require.NoError(t, err)
	c = plain.Rocket().Chamber
	require.NotNil(t, c.Booked, "a file that does not name it")
	assert.Equal(t, "heron.logbook.toml", c.Booked.Unnamed)
	assert.NotEmpty(t, c.Booked.Missing)
	assert.InDelta(t, 16e5, c.Proof, 1)
	c = open().Rocket().Chamber
	require.Empty(t, c.Booked.Missing)
	assert.Empty(t, c.Booked.Unnamed)
	assert.Equal(t, 6, c.Cycles, "the file says 6, the book 2")
	assert.Equal(t, 2, c.Booked.Cycles)
	assert.Equal(t, 1, c.Booked.Since)
	assert.InDelta(t, 15e5, c.Proof, 1, "the file says 16 bar")
	assert.InDelta(t, 16e5, c.ProvedTo(), 1, "which it went through all the same")
	assert.Equal(t, "2026-04-01", c.ProofDate, "the file says September")
	assert.InDelta(t, 8, c.Booked.Hardest, 0)
	assert.Equal(t, []string{"2026-04-02: dent"}, c.Booked.Damage)
	assert.Equal(t, []string{"chamber.cycles", "chamber.proof", "chamber.proof_date"}, c.Booked.Disagrees)

	// A book without a proof of this chamber leaves none.
	f, err := open().Set("chamber.serial", "TH-2")
	require.NoError(t, err)
	c = f.Rocket().Chamber
	assert.Zero(t, c.Proof)
	assert.Zero(t, c.Booked.Proof)
	assert.Empty(t, c.ProofDate)
	assert.Equal(t, "2026-04-01", open().Rocket().Chamber.Booked.ProofDate)

	require.NoError(t, os.WriteFile(book, []byte("[[entry]]\nkind = 3\n"), 0o600))
	c = open().Rocket().Chamber
	assert.Contains(t, c.Booked.Missing, "heron.logbook.toml")
	assert.InDelta(t, 16e5, c.Proof, 1)
}
