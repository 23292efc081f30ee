//go:build linux

package main

import (
	"os"
	"os/exec"
	"syscall"
	"testing"
	"time"

	"github.com/stretchr/testify/require"
)

// BenchmarkStart runs commands to their end, by turns: medians of the time, of the processor's, and of the pages that
// each touches first. Those of the program as it is given away are told by
//
//	CGO_ENABLED=0 go build -o ullage ./cmd/ullage
//	ULLAGE_PROGRAM=$PWD/ullage go test ./cmd/ullage -run XXX -bench Start$ -benchtime 40x
//
// since a test's binary is larger.
func BenchmarkStart(b *testing.B) {
	commands := []struct {
		name string
		args []string
	}{
		{"none", []string{"true"}},
		{"version", []string{programToTime(), "--version"}},
		{"help", []string{programToTime(), "--help"}},
		{"fly", []string{programToTime(), "fly", "../../testdata/heron.toml"}},
	}
	type taken struct{ time, cpu, pages []float64 }
	all := make([]taken, len(commands))
	for b.Loop() {
		for i, c := range commands {
			cmd, start := exec.Command(c.args[0], c.args[1:]...), time.Now()
			require.NoError(b, cmd.Run())
			t := &all[i]
			t.time = append(t.time, time.Since(start).Seconds()*1e3)
			t.cpu = append(t.cpu, (cmd.ProcessState.UserTime()+cmd.ProcessState.SystemTime()).Seconds()*1e3)
			t.pages = append(t.pages, float64(cmd.ProcessState.SysUsage().(*syscall.Rusage).Minflt))
		}
	}
	b.ReportMetric(0, "ns/op")
	for i, c := range commands {
		b.ReportMetric(quantile(all[i].time, 0.5), c.name+"-ms")
		b.ReportMetric(quantile(all[i].cpu, 0.5), c.name+"-cpu-ms")
		b.ReportMetric(quantile(all[i].pages, 0.5), c.name+"-pages")
	}
}

// programToTime is the program that benchmarks run: that of the test, or another to compare with.
func programToTime() string {
	if other := os.Getenv("ULLAGE_PROGRAM"); other != "" {
		return other
	}
	return "ullage"
}
