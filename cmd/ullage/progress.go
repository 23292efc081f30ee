package main

import (
	"fmt"
	"io"
	"strings"
	"time"
)

// progress is a bar on a terminal's line for work that takes a while. A nil one shows
// nothing.
type progress struct {
	w     io.Writer
	now   func() time.Time
	start time.Time
	last  time.Time // when it was drawn
	wide  int       // columns it takes on the line now
}

const (
	barAfter = 400 * time.Millisecond // what takes less needs no bar
	barEvery = 100 * time.Millisecond
	barCells = 30
)

func newProgress(w io.Writer) *progress {
	now := time.Now
	return &progress{w: w, now: now, start: now()}
}

// update tells how many flights are done of how many; the total is 0 when it is not
// known. It draws the bar now and then.
func (p *progress) update(done, total int) {
	if p == nil {
		return
	}
	now := p.now()
	if now.Sub(p.start) < barAfter || now.Sub(p.last) < barEvery {
		return
	}
	p.last = now
	p.draw(barText(done, total, now.Sub(p.start)))
}

// barText is the bar as text: how much is done, and how long the rest will take.
func barText(done, total int, spent time.Duration) string {
	if total <= 0 {
		return fmt.Sprintf("%d flights", done)
	}
	done = min(done, total)
	full := barCells * done / total
	text := fmt.Sprintf("%3d %% %s%s %d of %d flights", 100*done/total,
		strings.Repeat("=", full), strings.Repeat(".", barCells-full), done, total)
	if done == 0 {
		return text
	}
	left := time.Duration(float64(spent) / float64(done) * float64(total-done))
	return text + ", " + left.Round(time.Second).String() + " left"
}

// draw puts a text in place of the one that is there.
func (p *progress) draw(text string) {
	blank := strings.Repeat(" ", max(0, p.wide-len(text)))
	fmt.Fprint(p.w, "\r", text, blank)
	p.wide = len(text)
}

// clear takes the bar off the terminal.
func (p *progress) clear() {
	if p == nil || p.wide == 0 {
		return
	}
	p.draw("")
	fmt.Fprint(p.w, "\r")
}
