package study

import (
	"context"
	"errors"
	"runtime"
	"testing"

	"github.com/stretchr/testify/require"

	"ullage/sim/long"
	"ullage/sim/rocket"
	"ullage/sim/rocketfile"
)

func rows(t *testing.T, r *rocket.Rocket, o Options, texts ...string) []Row {
	t.Helper()
	axes, err := ParseAxes(r, texts)
	require.NoError(t, err)
	var got []Row
	require.NoError(t, Sweep(background, r, axes, o, func(row Row) error {
		got = append(got, row.Clone())
		return nil
	}))
	require.Len(t, got, Count(axes))
	return got
}

func TestSweepIsSingleFlights(t *testing.T) {
	r := bottle()
	got := rows(t, r, Options{}, "water.fill=0.2..0.4/5", "water.throat=9mm,15mm,21mm")
	for i, row := range got {
		require.Equal(t, i, row.Index)
		require.NoError(t, row.Invalid)
		fill, throat := row.Values[0].Number, row.Values[1].Number
		require.InDelta(t, 0.2+0.05*float64(i/3), fill, 1e-12, "the first axis is the slowest")
		require.InDelta(t, 0.009+0.006*float64(i%3), throat, 1e-12)
		alone := flown(t, with(t, with(t, r, "water.fill", fill), "water.throat", throat))
		require.Equal(t, alone.Results, row.Flight.Results, "to the last bit")
		require.Equal(t, fill, row.Flight.Rocket.Water.Fill, "each has a rocket of its own")
	}
	require.Equal(t, bottle(), r)
}

func TestSweepWords(t *testing.T) {
	r := rocketfile.Starter().Rocket()
	got := rows(t, r, Options{}, "power=water,motor")
	require.True(t, got[0].Flight.WaterFlew)
	require.False(t, got[1].Flight.WaterFlew)
}

func TestSweepAnyWorkers(t *testing.T) {
	r := bottle()
	one := rows(t, r, Options{Workers: 1}, "water.fill=0.05..0.9/40")
	for _, workers := range []int{2, 5, 16} {
		got := rows(t, r, Options{Workers: workers}, "water.fill=0.05..0.9/40")
		for i := range one {
			require.Equal(t, one[i].Flight.Results, got[i].Flight.Results)
		}
	}
}

// A point that makes no valid rocket is a row all the same, and says why.
func TestSweepInvalid(t *testing.T) {
	got := rows(t, bottle(), Options{}, "water.throat=21mm,106mm,200mm,10mm")
	for i, bad := range []bool{false, true, true, false} {
		require.Equal(t, bad, got[i].Flight == nil)
		if bad {
			require.ErrorContains(t, got[i].Invalid, "water.throat: is as wide as the bore or wider")
		}
	}
}

func TestSweepEnds(t *testing.T) {
	r := bottle()
	axes := []Axis{Linear(input(t, r, "water.fill"), 0.1, 0.5, 1000)}
	full := errors.New("disk full")
	n := 0
	err := Sweep(background, r, axes, Options{}, func(Row) error {
		if n++; n == 7 {
			return full
		}
		return nil
	})
	require.ErrorIs(t, err, full)
	require.Equal(t, 7, n)

	ctx, cancel := context.WithCancel(background)
	n = 0
	err = Sweep(ctx, r, axes, Options{}, func(Row) error {
		if n++; n == 7 {
			cancel()
		}
		return nil
	})
	require.ErrorIs(t, err, context.Canceled)
	require.Less(t, n, 200, "what was computed was handed out, and no more")
	require.GreaterOrEqual(t, n, 7)
}

func TestSweepKeeps(t *testing.T) {
	for _, keep := range []bool{true, false} {
		axes := []Axis{Linear(input(t, bottle(), "water.fill"), 0.2, 0.3, 2)}
		require.NoError(t, Sweep(background, bottle(), axes, Options{Keep: keep}, func(row Row) error {
			require.Equal(t, keep, len(row.Flight.Trace()) > 0)
			return nil
		}))
	}
}

// heap is the memory in use after a collection, in bytes.
func heap() uint64 {
	var m runtime.MemStats
	runtime.GC()
	runtime.ReadMemStats(&m)
	return m.HeapAlloc
}

func TestSweepFlatMemory(t *testing.T) {
	long.Unraced(t)
	r := dud()
	axes := []Axis{Linear(input(t, r, "body.mass"), 10, 20, long.Of(5_000, 20_000))}
	before := heap()
	most := uint64(0)
	require.NoError(t, Sweep(background, r, axes, Options{}, func(row Row) error {
		if row.Index%2_500 == 2_499 {
			most = max(most, heap())
		}
		return nil
	}))
	// Flights kept would take some 2 kB each.
	require.Less(t, int64(most)-int64(before), int64(4<<20))
}
