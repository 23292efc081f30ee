package main

import (
	"bytes"
	"context"
	"io"
	"path/filepath"
	"strings"
	"syscall"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// result is what a run in this process came to.
type result struct {
	status   int
	out, err string
}

func runWith(ctx context.Context, stdin io.Reader, args ...string) result {
	var out, err bytes.Buffer
	status := run(ctx, args, stdin, &out, &err)
	return result{status, out.String(), err.String()}
}

func TestInterruptedWhileReading(t *testing.T) {
	ctx, cancel := context.WithCancel(context.Background())
	stdin, hold := io.Pipe() // never says anything
	defer hold.Close()
	done := make(chan result)
	go func() { done <- runWith(ctx, stdin, "fly", "-") }()
	cancel()
	got := <-done
	assert.Equal(t, statusInterrupted, got.status)
	assert.Empty(t, got.out)
	assert.Equal(t, "ullage: interrupted\n", got.err)
}

// limitedPipe is a reader's end that closes after some bytes, as head does.
type limitedPipe struct{ left int }

func (p *limitedPipe) Write(b []byte) (int, error) {
	if p.left -= len(b); p.left < 0 {
		return 0, syscall.EPIPE
	}
	return len(b), nil
}

func TestReaderThatClosesEarlyIsNoFailure(t *testing.T) {
	for _, args := range [][]string{{"--help"}, {"inputs"}, {"completion", "bash"}, {"notices"}, {"--version"}} {
		var stderr bytes.Buffer
		got := run(context.Background(), args, strings.NewReader(""), &limitedPipe{4}, &stderr)
		assert.Equal(t, statusDone, got, args)
		assert.Empty(t, stderr.String(), args)
	}
}

// Nor does it turn a no-go into a go: the starter has no proof on record.
func TestReaderThatClosesEarlyLeavesTheVerdict(t *testing.T) {
	file := filepath.Join(t.TempDir(), "heron.toml")
	require.Equal(t, statusDone, run(context.Background(), []string{"new", file}, strings.NewReader(""), io.Discard, io.Discard))
	for _, args := range [][]string{{"check", file}, {"card", file, "--flights", "40"}} {
		got := run(context.Background(), args, strings.NewReader(""), &limitedPipe{4}, io.Discard)
		assert.Equal(t, statusCheckFailed, got, args[0])
	}
}

type fullDisk struct{}

func (fullDisk) Write([]byte) (int, error) { return 0, syscall.ENOSPC }

func TestFullDiskIsAFailure(t *testing.T) {
	for _, args := range [][]string{{"--help"}, {"fly", "--help"}, {"inputs"}, {"completion", "bash"}, {"notices"}, {"--version"}} {
		var stderr bytes.Buffer
		got := run(context.Background(), args, strings.NewReader(""), fullDisk{}, &stderr)
		assert.Equal(t, statusFailed, got, args)
		assert.Contains(t, stderr.String(), "no space left on device", args)
	}
}

func TestEndlessInputIsRefused(t *testing.T) {
	got := runWith(context.Background(), endless{}, "fly", "-")
	assert.Equal(t, statusInput, got.status)
	assert.Empty(t, got.out)
	assert.Contains(t, got.err, "standard input: more than 4 MB")
}

type endless struct{}

func (endless) Read(b []byte) (int, error) {
	for i := range b {
		b[i] = '#'
	}
	return len(b), nil
}
