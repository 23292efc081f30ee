//go:build linux

package main

import (
	"bytes"
	"fmt"
	"os"
	"os/exec"
	"path/filepath"
	"slices"
	"strconv"
	"sync"
	"testing"
	"time"

	"github.com/charmbracelet/x/ansi"
	"github.com/creack/pty"
	"github.com/stretchr/testify/require"
)

// The screen as its user has it: the program itself in a pseudo-terminal of 200 by 60, from a
// key press to the first byte, to the last byte of the frame with the value changed (value-ms),
// to that of the one with the new flight (flight-ms), and to that of the last frame that it brings
// (all-ms), of curves, corners and mends, which follow the flight. Choose how many presses:
//
//	go test ./cmd/ullage -run XXX -bench BenchmarkScreen -benchtime 200x
//
// The times of a machine with other work to do say little.
func BenchmarkScreen(b *testing.B) {
	for _, view := range []struct{ name, open string }{
		{"flight", "\x1b"}, {"fill", "w"}, {"throats", "n"}, {"opening", "o"}, {"motors", "m"},
		{"airframe", "g"}, {"chamber", "h"}, {"check", "j"},
	} {
		b.Run(view.name, func(b *testing.B) {
			s := startScreen(b)
			s.press(view.open)
			s.settle()
			start, cpu := s.bytes(), s.cpu()
			var first, value, flight, all []float64
			for i := 0; b.Loop(); i++ {
				one, frames := s.key([]string{right, right, left, left}[i%4])
				first, all = append(first, one), append(all, frames[len(frames)-1])
				value, flight = append(value, frames[0]), append(flight, frames[min(1, len(frames)-1)])
			}
			b.ReportMetric(0, "ns/op")
			b.ReportMetric(quantile(first, 0.5), "first-ms")
			for _, x := range []struct {
				name  string
				times []float64
			}{{"value", value}, {"flight", flight}, {"all", all}} {
				b.ReportMetric(quantile(x.times, 0.5), x.name+"-ms")
				b.ReportMetric(quantile(x.times, 0.99), x.name+"-p99-ms")
			}
			b.ReportMetric(float64(s.bytes()-start)/1024/float64(len(all)), "kB/key")
			b.ReportMetric((s.cpu()-cpu).Seconds()*1e3/float64(len(all)), "cpu-ms/key")
		})
	}
}

// A key held at thirty a second: how long after the last press the last byte comes, and
// what goes over the line a second.
func BenchmarkScreenHeld(b *testing.B) {
	s := startScreen(b)
	s.press("o")
	s.settle()
	var tail []float64
	start, began := s.bytes(), time.Now()
	for b.Loop() {
		for range 29 {
			s.press(right)
			time.Sleep(time.Second / 30)
		}
		_, frames := s.key(left)
		tail = append(tail, frames[len(frames)-1])
	}
	b.ReportMetric(0, "ns/op")
	b.ReportMetric(slices.Max(tail), "tail-ms")
	b.ReportMetric(float64(s.bytes()-start)/1024/time.Since(began).Seconds(), "kB/s")
}

// With nothing to do: how often it wakes, and its processor time; then what its memory
// has grown by after as many presses as asked for with ULLAGE_PRESSES.
func BenchmarkScreenIdle(b *testing.B) {
	s := startScreen(b)
	var wakes, busy float64
	for b.Loop() {
		from, cpu := s.switches(), s.cpu()
		time.Sleep(2 * time.Second)
		wakes, busy = float64(s.switches()-from)/2, (s.cpu()-cpu).Seconds()*1e3/2
	}
	b.ReportMetric(0, "ns/op")
	b.ReportMetric(wakes, "wakes/s")
	b.ReportMetric(busy, "cpu-ms/s")
	presses, _ := strconv.Atoi(os.Getenv("ULLAGE_PRESSES"))
	before := s.resident()
	for i := range presses {
		s.press([]string{right, left}[i%2])
		time.Sleep(4 * time.Millisecond)
	}
	s.settle()
	b.ReportMetric(before, "MB")
	b.ReportMetric(s.resident()-before, "grown-MB")
}

// From the start of the program to its first frame, the rocket without its flight, and to
// the flight drawn; a program that does nothing takes none-ms.
func BenchmarkScreenStart(b *testing.B) {
	var none, first, flown []float64
	for b.Loop() {
		start := time.Now()
		require.NoError(b, exec.Command("true").Run())
		none = append(none, time.Since(start).Seconds()*1e3)
		s := open(b, bottomLine, "apogee")
		s.settle()
		s.mu.Lock()
		require.Len(b, s.shown, 2, "all that is waited for is shown")
		first = append(first, s.shown[0].Sub(s.started).Seconds()*1e3)
		flown = append(flown, s.shown[1].Sub(s.started).Seconds()*1e3)
		s.mu.Unlock()
		s.end()
	}
	b.ReportMetric(0, "ns/op")
	b.ReportMetric(quantile(none, 0.5), "none-ms")
	b.ReportMetric(quantile(first, 0.5), "first-ms")
	b.ReportMetric(quantile(flown, 0.5), "flown-ms")
}

// bottomLine is what the last row of the first frame says.
const bottomLine = "quit"

const (
	left  = "\x1b[D"
	right = "\x1b[C"
)

// typist is the program on a terminal, timed.
type typist struct {
	b       *testing.B
	cmd     *exec.Cmd
	tty     *os.File
	started time.Time

	mu    sync.Mutex
	total int
	begun []byte      // the first of them
	shown []time.Time // when each text that is waited for had come, in their order
	first time.Time   // byte since the last press
	ends  []time.Time // of frames since then
	last  time.Time
}

// frameEnd is what the program writes behind a frame.
const frameEnd = ansi.ResetModeSynchronizedOutput

// startScreen starts the program and waits for it.
func startScreen(b *testing.B) *typist {
	b.Helper()
	s := open(b)
	b.Cleanup(s.end)
	s.settle()
	return s
}

func (s *typist) end() {
	_ = s.cmd.Process.Kill()
	_ = s.cmd.Wait()
	_ = s.tty.Close()
}

// open starts the program on a copy of an example and notes, as it reads, when texts are on the screen: who looks for them now and
// then instead takes the processor from what is timed.
func open(b *testing.B, texts ...string) *typist {
	b.Helper()
	dir := b.TempDir()
	for _, name := range []string{"heron.toml", "h-trainer.csv", "h-trainer.toml", "i-steady.csv"} {
		text, err := os.ReadFile(filepath.Join("../../testdata", name))
		require.NoError(b, err)
		require.NoError(b, os.WriteFile(filepath.Join(dir, name), text, 0o600))
	}
	s := &typist{b: b, cmd: exec.Command(programToTime(), "heron.toml")}
	s.cmd.Dir = dir
	s.cmd.Env = append(os.Environ(), "TERM=xterm-256color", "COLORTERM=truecolor", "NO_COLOR=", "XDG_STATE_HOME="+dir)
	s.started = time.Now()
	tty, err := pty.StartWithSize(s.cmd, &pty.Winsize{Cols: 200, Rows: 60})
	require.NoError(b, err)
	s.tty = tty
	go func() {
		buf := make([]byte, 1<<16)
		var tail []byte // the beginning of an end of a frame
		for {
			n, err := tty.Read(buf)
			now := time.Now()
			s.mu.Lock()
			if s.total += n; s.first.IsZero() {
				s.first = now
			}
			if len(s.begun) < 1<<17 {
				s.begun = append(s.begun, buf[:n]...)
			}
			for len(s.shown) < len(texts) && bytes.Contains(s.begun, []byte(texts[len(s.shown)])) {
				s.shown = append(s.shown, now)
			}
			s.last = now
			tail = append(tail, buf[:n]...)
			for range bytes.Count(tail, []byte(frameEnd)) {
				s.ends = append(s.ends, now)
			}
			if i := bytes.LastIndex(tail, []byte(frameEnd)); i >= 0 {
				tail = tail[i+len(frameEnd):]
			}
			tail = tail[max(0, len(tail)-len(frameEnd)+1):]
			s.mu.Unlock()
			if err != nil {
				return
			}
		}
	}()
	return s
}

func (s *typist) bytes() int {
	s.mu.Lock()
	defer s.mu.Unlock()
	return s.total
}

func (s *typist) press(keys string) {
	_, err := s.tty.WriteString(keys)
	require.NoError(s.b, err)
}

// settle waits until nothing more comes.
func (s *typist) settle() {
	const quiet, patient = 150 * time.Millisecond, 5 * time.Second
	start := time.Now()
	for time.Since(start) < patient {
		s.mu.Lock()
		last := s.last
		s.mu.Unlock()
		if !last.IsZero() && time.Since(last) > quiet && time.Since(start) > quiet {
			return
		}
		time.Sleep(5 * time.Millisecond)
	}
}

// key is how many milliseconds after a press the first byte comes, and the ends of frames.
func (s *typist) key(k string) (first float64, frames []float64) {
	s.mu.Lock()
	s.first, s.ends = time.Time{}, nil
	s.mu.Unlock()
	start := time.Now()
	s.press(k)
	require.Eventually(s.b, s.answered, 5*time.Second, time.Millisecond, "%q", k)
	s.settle()
	s.mu.Lock()
	defer s.mu.Unlock()
	for _, at := range s.ends {
		frames = append(frames, at.Sub(start).Seconds()*1e3)
	}
	return s.first.Sub(start).Seconds() * 1e3, frames
}

func (s *typist) answered() bool {
	s.mu.Lock()
	defer s.mu.Unlock()
	return len(s.ends) > 0
}

func quantile(values []float64, q float64) float64 {
	sorted := slices.Sorted(slices.Values(values))
	return sorted[min(int(q*float64(len(sorted))), len(sorted)-1)]
}

// proc is a line of a file of the process in /proc, by its first word.
func (s *typist) proc(path, word string) (n int) {
	text, _ := os.ReadFile(path)
	for line := range bytes.Lines(text) {
		if f := bytes.Fields(line); len(f) > 1 && string(f[0]) == word {
			n, _ = strconv.Atoi(string(f[1]))
		}
	}
	return n
}

// switches is how often its threads have given up the processor.
func (s *typist) switches() (n int) {
	tasks, _ := filepath.Glob(fmt.Sprintf("/proc/%d/task/*/status", s.cmd.Process.Pid))
	for _, t := range tasks {
		n += s.proc(t, "voluntary_ctxt_switches:")
	}
	return n
}

// cpu is the processor time of its threads.
func (s *typist) cpu() (sum time.Duration) {
	tasks, _ := filepath.Glob(fmt.Sprintf("/proc/%d/task/*/schedstat", s.cmd.Process.Pid))
	for _, t := range tasks {
		text, _ := os.ReadFile(t)
		var ns int64
		_, _ = fmt.Sscan(string(text), &ns)
		sum += time.Duration(ns)
	}
	return sum
}

// resident is its memory in MB.
func (s *typist) resident() float64 {
	return float64(s.proc(fmt.Sprintf("/proc/%d/status", s.cmd.Process.Pid), "VmRSS:")) / 1024
}
