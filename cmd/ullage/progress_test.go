package main

import (
	"bytes"
	"strings"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
)

// clock is a time that moves when it is told to.
type clock struct{ time.Time }

func (c *clock) now() time.Time { return c.Time }

func barAt(c *clock) (*progress, *bytes.Buffer) {
	var b bytes.Buffer
	return &progress{w: &b, now: c.now, start: c.Time}, &b
}

func TestProgressIsOnlyForLongWork(t *testing.T) {
	c := &clock{time.Unix(0, 0)}
	bar, shown := barAt(c)
	for i := range 1000 {
		bar.update(i, 1000)
	}
	bar.clear()
	assert.Empty(t, shown.String(), "short work shows nothing")

	c.Time = c.Add(2 * time.Second)
	bar.update(250, 1000)
	bar.update(251, 1000)
	assert.Equal(t, 1, strings.Count(shown.String(), "\r"), "not more often than an eye can follow")
	assert.Contains(t, shown.String(), " 25 % =======....................... 250 of 1000 flights, 6s left")
	c.Time = c.Add(time.Second)
	bar.update(1000, 1000)
	assert.Contains(t, shown.String(), "100 % ============================== 1000 of 1000 flights, 0s left")
}

func TestProgressLeavesTheLineBlank(t *testing.T) {
	c := &clock{time.Unix(0, 0)}
	bar, shown := barAt(c)
	c.Time = c.Add(time.Second)
	bar.update(12, 0)
	assert.Equal(t, "\r12 flights", shown.String())
	bar.clear()
	assert.Equal(t, "\r12 flights\r"+strings.Repeat(" ", len("12 flights"))+"\r", shown.String())
	shown.Reset()
	c.Time = c.Add(time.Second)
	bar.update(100, 200)
	long := len(shown.String()) - 1
	shown.Reset()
	c.Time = c.Add(time.Second)
	bar.update(7, 0)
	assert.Len(t, shown.String(), 1+long, "a shorter text covers the longer one")
}

func TestNoProgressIsFine(t *testing.T) {
	var bar *progress
	bar.update(1, 2)
	bar.clear()
	assert.Nil(t, outputOptions{}.bar(&streams{err: &bytes.Buffer{}}, false), "no terminal, no bar")
}

func TestProgressAnyCounts(t *testing.T) {
	for _, x := range [][2]int{{0, 0}, {0, 1}, {5, 3}, {1 << 40, 1 << 50}, {-1, 10}} {
		text := barText(max(0, x[0]), x[1], time.Second)
		assert.LessOrEqual(t, len(text), 110)
		assert.NotContains(t, text, "NaN")
	}
}
