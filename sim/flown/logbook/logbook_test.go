package logbook

import (
	"errors"
	"io/fs"
	"math"
	"os"
	"path/filepath"
	"strings"
	"sync"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

func flight(date string) Entry {
	e := New()
	e.Date, e.Kind, e.Chamber, e.Pressure, e.Fill, e.Landing = date, Flight, "TH-1", 9e5, 0.3, 5.2
	e.AirTemperature = 291.15
	e.Log, e.Columns, e.Rate = "one.csv", []string{"time=1 ms", "height=3 ft"}, "20 Hz"
	e.Predicted = map[string]string{"apogee.height": "103 m"}
	e.Measured = map[string]string{"apogee.height": "104 m", "apogee.time": "4.7 s"}
	e.Note = "said \"go\" \\ wet grass\tand more"
	return e
}

// What is written is read as it was; older entries stay as they are, to the last byte.
func TestAppendAndRead(t *testing.T) {
	path := filepath.Join(t.TempDir(), "heron.logbook.toml")
	require.NoError(t, Append(path, "Twin Heron", flight("2026-05-17")))
	first, err := os.ReadFile(path)
	require.NoError(t, err)
	second := New()
	second.Date, second.Kind, second.Pressure, second.Held, second.WallTemperature = "2026-05-01 10:30", Proof, 16e5, 300, 288.15
	require.NoError(t, Append(path, "Twin Heron", second))
	both, err := os.ReadFile(path)
	require.NoError(t, err)
	assert.True(t, strings.HasPrefix(string(both), string(first)))
	b, err := Open(path)
	require.NoError(t, err)
	require.Len(t, b.Entries, 2)
	want := flight("2026-05-17")
	want.Line = b.Entries[0].Line
	assert.Equal(t, text(want), text(b.Entries[0]))
	assert.InDelta(t, 9e5, b.Entries[0].Pressure, 1e-6)
	assert.InDelta(t, 291.15, b.Entries[0].AirTemperature, 1e-9)
	assert.Equal(t, want.Columns, b.Entries[0].Columns)
	assert.Equal(t, want.Measured, b.Entries[0].Measured)
	assert.Equal(t, want.Note, b.Entries[0].Note)
	assert.True(t, math.IsNaN(b.Entries[0].Held))
	assert.Contains(t, string(both), "# Logbook of Twin Heron.")
	assert.Greater(t, b.Entries[1].Line, b.Entries[0].Line)
}

func text(e Entry) string { return e.text() }

// Many who write at once lose nothing.
func TestManyAtOnce(t *testing.T) {
	path := filepath.Join(t.TempDir(), "x.logbook.toml")
	var running sync.WaitGroup
	for range 20 {
		running.Go(func() { assert.NoError(t, Append(path, "X", flight("2026-05-17"))) })
	}
	running.Wait()
	b, err := Open(path)
	require.NoError(t, err)
	assert.Len(t, b.Entries, 20)
}

// A book that is broken takes no entry and stays as it is.
func TestBrokenBooks(t *testing.T) {
	for name, x := range map[string]struct{ text, want string }{
		"no TOML":    {"[[entry]]\ndate = \n", "x.toml:2: "},
		"top key":    {"name = \"x\"\n", "x.toml:1: name: a logbook has no such key"},
		"key":        {"[[entry]]\ndate = \"2026-05-17\"\nkind = \"flight\"\npresure = \"9 bar\"\n", "x.toml:4: presure: an entry has no such key; perhaps pressure is meant"},
		"unit":       {"[[entry]]\ndate = \"2026-05-17\"\nkind = \"flight\"\npressure = \"9 m\"\n", "x.toml:4: pressure = \"9 m\""},
		"kind":       {"[[entry]]\ndate = \"2026-05-17\"\nkind = \"party\"\n", "x.toml:3: kind = party: is no kind of entry; there are proof, leak test"},
		"no date":    {"[[entry]]\nkind = \"flight\"\n", "date: is missing"},
		"day":        {"[[entry]]\ndate = \"2026-02-30\"\nkind = \"flight\"\n", "x.toml:2: date = 2026-02-30: is no day of the calendar"},
		"columns":    {"[[entry]]\ndate = \"2026-05-17\"\nkind = \"flight\"\ncolumns = 3\n", "columns: is no list of texts"},
		"predicted":  {"[[entry]]\ndate = \"2026-05-17\"\nkind = \"flight\"\npredicted = 3\n", "predicted: is no table of results"},
		"no text":    {"[[entry]]\ndate = \"2026-05-17\"\nkind = \"flight\"\nnote = true\n", "note = true: is no text"},
		"no proof":   {"[[entry]]\ndate = \"2026-05-17\"\nkind = \"proof\"\npressure = \"0 bar\"\n", "x.toml:4: pressure = \"0 bar\": is no pressure of a proof"},
		"share":      {"[[entry]]\ndate = \"2026-05-17\"\nkind = \"flight\"\nfill = 30\n", "x.toml:4: fill = \"30\": is more than the whole"},
		"below zero": {"[[entry]]\ndate = \"2026-05-17\"\nkind = \"flight\"\nheld = \"-3 s\"\n", "negative"},
	} {
		t.Run(name, func(t *testing.T) {
			path := filepath.Join(t.TempDir(), "x.toml")
			require.NoError(t, os.WriteFile(path, []byte(x.text), 0o600))
			_, err := Read("x.toml", []byte(x.text))
			assert.ErrorContains(t, err, x.want)
			require.Error(t, Append(path, "X", flight("2026-05-17")))
			after, err := os.ReadFile(path)
			require.NoError(t, err)
			assert.Equal(t, x.text, string(after))
		})
	}
	_, err := Open(filepath.Join(t.TempDir(), "none.toml"))
	assert.True(t, errors.Is(err, fs.ErrNotExist))
	bad := flight("yesterday")
	path := filepath.Join(t.TempDir(), "new.toml")
	require.Error(t, Append(path, "X", bad))
	_, err = os.Stat(path)
	assert.ErrorIs(t, err, fs.ErrNotExist, "a bad entry begins no book")
}

// What is no book says why it cannot be read, and why nothing can be added to it.
func TestNoBooks(t *testing.T) {
	folder := t.TempDir()
	_, err := Open(folder)
	assert.EqualError(t, err, folder+": the logbook cannot be read: it is a folder, not a file; ullage record begins one")
	assert.EqualError(t, Append(folder, "X", flight("2026-05-17")), folder+": nothing was added to the logbook: it is a folder, not a file; give another with --book")
	nowhere := filepath.Join(folder, "none", "x.toml")
	assert.EqualError(t, Append(nowhere, "X", flight("2026-05-17")), nowhere+": nothing was added to the logbook: there is no such folder; give another with --book")
	_, err = Open(os.DevNull)
	assert.ErrorContains(t, err, "not a plain file", "one that never ends would be read for ever")
}

func TestState(t *testing.T) {
	entry := func(date string, kind Kind, serial string, pressure float64) Entry {
		e := New()
		e.Date, e.Kind, e.Chamber, e.Pressure = date, kind, serial, pressure
		return e
	}
	nan := math.NaN()
	motor := entry("2026-04-10", Flight, "A", nan)
	motor.Motor = "H-trainer"
	hard := entry("2026-04-11", Flight, "A", 9e5)
	hard.Landing, hard.Damage = 9, "cracked fin"
	fine := entry("2026-04-12", Flight, "A", 8e5)
	fine.Damage, fine.Landing = "none", 5
	b := &Book{Entries: []Entry{
		entry("2026-04-12", LeakTest, "", 2e5), // of whichever chamber
		entry("2026-03-01", Flight, "A", 9e5), entry("2026-04-01", Proof, "A", 16e5), motor, hard, fine,
		entry("2026-04-13", Flight, "B", 12e5), entry("2026-04-14", Abort, "A", 0), entry("2026-04-15", StaticTest, "A", nan),
	}}
	s := b.Of("A", 15e5)
	assert.Equal(t, 8, s.Entries)
	require.NotNil(t, s.Proof)
	assert.Equal(t, "2026-04-01", s.Proof.Date)
	assert.Equal(t, 4, s.Since, "leak test, two flights and the static test")
	assert.Equal(t, 6, s.Cycles)
	assert.InDelta(t, 9e5, s.Most, 0)
	assert.Equal(t, 1, s.Untold, "the static test")
	assert.True(t, s.Enough)
	assert.InDelta(t, 9, s.Hardest, 0)
	require.Len(t, s.Damaged, 1)
	assert.Equal(t, "cracked fin", s.Damaged[0].Damage)
	assert.Equal(t, 1, s.Unmarked)
	assert.Equal(t, 9, b.Of("", 15e5).Entries)
	none := (&Book{}).Of("A", 15e5)
	assert.Nil(t, none.Proof)
	assert.True(t, math.IsNaN(none.Most))
}

// What settles nothing of what was before: a proof that is too low, or of which no pressure is told. One of no
// pressure is no proof.
func TestLowProofsSettleNothing(t *testing.T) {
	entry := func(date string, kind Kind, pressure float64) Entry {
		e := New()
		e.Date, e.Kind, e.Pressure = date, kind, pressure
		return e
	}
	hurt := entry("2026-04-02", Flight, 10e5)
	hurt.Landing, hurt.Damage = 12, "cracked"
	for name, x := range map[string]struct {
		pressure, last float64
		settles        bool
	}{
		"none":     {0, 15e5, false},
		"not told": {math.NaN(), 15e5, false},
		"low":      {1e5, 1e5, false},
		"short":    {14.9e5, 14.9e5, false},
		"enough":   {15e5, 15e5, true},
	} {
		t.Run(name, func(t *testing.T) {
			b := &Book{Entries: []Entry{entry("2026-04-01", Proof, 15e5), hurt, entry("2026-04-03", Proof, x.pressure)}}
			s := b.Of("", 15e5)
			require.NotNil(t, s.Proof)
			assert.InDelta(t, x.last, s.Proof.Pressure, 0)
			assert.Equal(t, x.settles, s.Since == 0)
			assert.Equal(t, x.settles, len(s.Damaged) == 0)
			assert.Equal(t, x.settles, math.IsNaN(s.Hardest))
			assert.Equal(t, x.settles, math.IsNaN(s.Most))
		})
	}
}

func FuzzReadBook(f *testing.F) {
	e := flight("2026-05-17")
	f.Add(e.text())
	f.Add("[[entry]]\ndate = 2026-05-17\nkind = \"proof\"\npressure = \"16 bar\"\n")
	f.Add("[[ entry ]]\n\"date\" = 2026-05-17T10:00:00Z\n")
	f.Fuzz(func(t *testing.T, text string) {
		b, err := Read("x", []byte(text))
		if err != nil {
			require.NotEmpty(t, err.Error())
			return
		}
		_ = b.Of("A", 15e5)
		for i := range b.Entries {
			again, err := Read("x", []byte(b.Entries[i].text()))
			require.NoError(t, err)
			require.Len(t, again.Entries, 1)
		}
	})
}
