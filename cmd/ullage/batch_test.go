package main

import (
	"errors"
	"strings"
	"sync"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// pieces notes what is written, write by write.
type pieces struct {
	mutex sync.Mutex
	all   []string
	err   error
}

func (p *pieces) Write(b []byte) (int, error) {
	p.mutex.Lock()
	defer p.mutex.Unlock()
	p.all = append(p.all, string(b))
	return len(b), p.err
}

func (p *pieces) count() int {
	p.mutex.Lock()
	defer p.mutex.Unlock()
	return len(p.all)
}

// The first goes at once, what follows closely in few pieces, the last of it without more to
// come; nothing is lost, and nothing changes its order.
func TestBatch(t *testing.T) {
	var got pieces
	b := newBatch(&got)
	var want strings.Builder
	row := strings.Repeat("x", 99) + "\n"
	for i := range 2000 {
		want.WriteString(row)
		n, err := b.Write([]byte(row))
		require.NoError(t, err)
		require.Equal(t, len(row), n)
		if i == 0 {
			require.Equal(t, []string{row}, got.all, "streams start at once")
		}
	}
	assert.Less(t, got.count(), 200)
	require.Eventually(t, func() bool {
		got.mutex.Lock()
		defer got.mutex.Unlock()
		return strings.Join(got.all, "") == want.String()
	}, 10*time.Second, time.Millisecond, "without a Flush")
	for _, piece := range got.all {
		require.True(t, strings.HasSuffix(piece, "\n"), "rows stay whole")
	}

	broken := &pieces{err: errors.New("no more")}
	b = newBatch(broken)
	_, err := b.Write([]byte("a"))
	require.ErrorIs(t, err, broken.err)
	_, err = b.Write([]byte("b"))
	require.ErrorIs(t, err, broken.err)
	require.ErrorIs(t, b.Flush(), broken.err)
	require.Equal(t, 1, broken.count())
}
