package thrust

import (
	"bytes"
	"errors"
	"fmt"
	"os"
	"path/filepath"
	"strings"
	"testing"
	"testing/iotest"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"ullage/sim/fault"
)

func TestReadCurve(t *testing.T) {
	want := []Point{{0, 0}, {0.02, 85}, {1.5, 60.25}, {2, 0}}
	for name, text := range map[string]string{
		"plain":            "time_s,thrust_n\n0.02,85\n1.5,60.25\n2,0\n",
		"no last line end": "time_s,thrust_n\n0.02,85\n1.5,60.25\n2,0",
		"CRLF":             "time_s,thrust_n\r\n0.02,85\r\n1.5,60.25\r\n2,0\r\n",
		"byte order mark":  "\uFEFFtime_s,thrust_n\n0.02,85\n1.5,60.25\n2,0\n",
		"comments":         "# a motor, café\n\n  # more\ntime_s,thrust_n # header\n0.02,85 # lit\n#\n1.5,60.25\n2,0\n\n",
		"blanks":           " time_s , thrust_n \n\t0.02 ,\t85\n1.5, 60.25 \n2 , 0\n",
		"exponents, signs": "time_s,thrust_n\n2e-2,+8.5E1\n+1.5,60.25\n2.,-0\n",
		"zero in front":    "time_s,thrust_n\n0,0\n0.02,85\n1.5,60.25\n2,0\n",
	} {
		t.Run(name, func(t *testing.T) {
			c, err := ReadCurve(strings.NewReader(text))
			require.NoError(t, err)
			assert.Equal(t, want, c.Points())
		})
	}
}

func rows(n int) string {
	var b strings.Builder
	b.WriteString("time_s,thrust_n\n")
	for i := range n {
		fmt.Fprintf(&b, "%d.%04d,5\n", i/10000, i%10000)
	}
	return b.String()
}

func TestMostPoints(t *testing.T) {
	c, err := ReadCurve(strings.NewReader(rows(MaxPoints)))
	require.NoError(t, err)
	assert.Equal(t, MaxPoints, c.Len())
	assert.InDelta(t, 5*0.9999, c.Impulse(), 1e-9)
}

// Each malformed table with the faults it gives: line, value, a part of the
// problem and a part of the mend.
func TestReadCurveFaults(t *testing.T) {
	const header = "time_s,thrust_n\n"
	for _, c := range []struct {
		name, text string
		want       fault.List
	}{
		{"empty", "", fault.List{{Problem: "no points", Remedy: "time_s,thrust_n"}}},
		{"comments alone", "# nothing\n\n", fault.List{{Problem: "no points", Remedy: "two rows"}}},
		{"header alone", header, fault.List{{Problem: "no points", Remedy: "two rows"}}},
		{"one point", header + "0.1,5\n", fault.List{{Problem: "one point", Remedy: "at least two"}}},
		{"no header", "0,5\n1,0\n", fault.List{{Line: 1, Value: "0,5", Problem: "not the header", Remedy: "time_s,thrust_n"}}},
		{"other header", "# x\nTime,Thrust\n0,5\n1,0\n", fault.List{{Line: 2, Problem: "not the header", Remedy: "time_s,thrust_n"}}},
		{"not a number", header + "0,5\nx,4\n1,0x1p3\n2,1_0\n3,5 N\n", fault.List{
			{Line: 3, Value: "x", Problem: "time is not a number", Remedy: "of s"}, {Line: 4, Value: "0x1p3", Problem: "thrust is not a number", Remedy: "of N"},
			{Line: 5, Value: "1_0", Problem: "thrust is not a number", Remedy: "of N"}, {Line: 6, Value: "5 N", Problem: "thrust is not a number", Remedy: "without the unit"}}},
		{"no finite number", header + "0,NaN\nInf,4\n1,-Inf\n2,1e400\n-1e400,3\n", fault.List{
			{Line: 2, Value: "NaN", Problem: "not a number", Remedy: "number of N"}, {Line: 3, Value: "Inf", Problem: "not a number", Remedy: "number of s"},
			{Line: 4, Value: "-Inf", Problem: "not a number", Remedy: "number of N"}, {Line: 5, Value: "1e400", Problem: "out of range", Remedy: "from 0 to 10000000"},
			{Line: 6, Value: "-1e400", Problem: "out of range", Remedy: "from 0 to 1000"}}},
		{"negative", header + "-1,5\n0,-2\n1,0\n", fault.List{
			{Line: 2, Value: "-1", Problem: "time is negative", Remedy: "from 0"}, {Line: 3, Value: "-2", Problem: "thrust is negative", Remedy: "from 0"}}},
		{"too large", header + "0,1e9\n2000,5\n", fault.List{
			{Line: 2, Value: "1e9", Problem: "thrust is too large", Remedy: "to 10000000"}, {Line: 3, Value: "2000", Problem: "time is too large", Remedy: "to 1000"}}},
		{"not rising", header + "0,5\n0.5,4\n0.5,3\n0.2,3\n1,0\n", fault.List{
			{Line: 4, Value: "0.5", Problem: "does not rise above the 0.5 s", Remedy: "order of time"}, {Line: 5, Value: "0.2", Problem: "does not rise above the 0.5 s", Remedy: "once"}}},
		{"too close", header + "1e-9,5\n0.5,4\n0.5000001,0\n", fault.List{
			{Line: 2, Value: "1e-9", Problem: "too close", Remedy: "0.000001 s"}, {Line: 4, Value: "0.5000001", Problem: "too close", Remedy: "0.000001 s"}}},
		{"columns", header + "0\n0.5,4,3\n1;2\n1,5;2,5\n,\n", fault.List{
			{Line: 2, Value: "0", Problem: "1 of 2 values", Remedy: "a comma"}, {Line: 3, Value: "0.5,4,3", Problem: "3 of 2 values", Remedy: "only a time and a thrust"},
			{Line: 4, Value: "1;2", Problem: "1 of 2 values", Remedy: "not a semicolon"}, {Line: 5, Value: "1,5;2,5", Problem: "3 of 2 values", Remedy: "decimals with a point"},
			{Line: 6, Problem: "time is missing", Remedy: "of s"}, {Line: 6, Problem: "thrust is missing", Remedy: "of N"}}},
		{"header again", header + "0,5\ntime_s,thrust_n\n1,0\n", fault.List{
			{Line: 3, Value: "time_s", Problem: "not a number", Remedy: "of s"}, {Line: 3, Value: "thrust_n", Problem: "not a number", Remedy: "of N"}}},
		{"no thrust", header + "0,0\n1,0\n", fault.List{{Value: "0", Problem: "below 0.001 N", Remedy: "in N"}}},
		{"next to no thrust", header + "0,5e-324\n1,0\n", fault.List{{Value: "5e-324", Problem: "below 0.001 N", Remedy: "in N"}}},
		{"binary", header + "0,5\n\x00\x01\x02", fault.List{{Line: 3, Value: "byte 0x00", Problem: "not text", Remedy: "plain CSV text"}}},
		{"escape", header + "0,5\x1b[2J\n", fault.List{{Line: 2, Value: "byte 0x1b", Problem: "not text", Remedy: "plain CSV text"}}},
		{"UTF-16", "\xff\xfet\x00i\x00", fault.List{{Line: 1, Value: "byte 0xff", Problem: "not UTF-8", Remedy: "UTF-8"}}},
		{"lone CR", "time_s,thrust_n\r0,5\r1,0\r", fault.List{{Line: 1, Value: `"\r"`, Problem: "carriage return", Remedy: "CRLF"}}},
		{"long line", header + "0,5\n" + strings.Repeat("7", 2000) + "\n1,0\n", fault.List{
			{Line: 3, Value: strings.Repeat("7", 40) + "…", Problem: "longer than 1000", Remedy: "line of its own"}}},
		{"too many points", rows(MaxPoints + 1), fault.List{{Problem: "more than 10000 points", Remedy: "thin it out"}}},
		{"too much", header + strings.Repeat("# \n", 400_000), fault.List{{Problem: "larger than 1048576 bytes", Remedy: "points"}}},
	} {
		t.Run(c.name, func(t *testing.T) {
			curve, err := ReadCurve(strings.NewReader(c.text))
			assert.Nil(t, curve)
			var got fault.List
			require.ErrorAs(t, err, &got)
			require.Len(t, got, len(c.want), "%v", got)
			for i, want := range c.want {
				assert.Equal(t, want.Line, got[i].Line)
				assert.Equal(t, want.Value, got[i].Value)
				assert.Contains(t, got[i].Problem, want.Problem)
				assert.Contains(t, got[i].Remedy, want.Remedy)
			}
		})
	}
}

func TestFaultsAreBounded(t *testing.T) {
	_, err := ReadCurve(strings.NewReader("time_s,thrust_n\n" + strings.Repeat("x,y\n", 5000)))
	var faults fault.List
	require.ErrorAs(t, err, &faults)
	assert.LessOrEqual(t, len(faults), maxFaults+2)
	assert.Contains(t, faults[len(faults)-1].Problem, "stopped after")
}

func TestFaultText(t *testing.T) {
	_, err := ReadCurve(strings.NewReader("time_s,thrust_n\n0,5\nsoon,4\n"))
	assert.EqualError(t, err, "line 3: soon: the time is not a number; give a plain number of s, without the unit")
	_, err = NewCurve([]Point{{0, 5}, {1, -2}, {0.5, 0}})
	assert.EqualError(t, err, "line 2: -2: the thrust is negative; give a number of N from 0 to 10000000\n"+
		"line 3: 0.5: the time does not rise above the 1 s of an earlier row; put the rows in order of time, each time once")
}

func TestReadersErrorIsKept(t *testing.T) {
	broken := errors.New("the disk went away")
	_, err := ReadCurve(iotest.ErrReader(broken))
	assert.ErrorIs(t, err, broken)
	var faults fault.List
	assert.NotErrorAs(t, err, &faults)
}

// The invented curves of the examples: their classes, what is written of them and,
// with the propellant of the rocket that takes them, a specific impulse as composite
// propellants have.
func TestExampleCurves(t *testing.T) {
	const g0 = 9.80665
	for _, c := range []struct {
		file       string
		class      string
		propellant float64 // kg
		told       string  // the file that tells of it
	}{
		{"testdata/h-trainer.csv", "H", 0.116, "testdata/README.md"},
		{"testdata/i-steady.csv", "I", 0.240, "testdata/README.md"},
		{"sim/rocketfile/starter-h.csv", "H", 0.105, "sim/rocketfile/starter-h.csv"},
	} {
		text, err := os.ReadFile(filepath.Join("..", c.file))
		require.NoError(t, err)
		curve, err := ReadCurve(bytes.NewReader(text))
		require.NoError(t, err)
		assert.Equal(t, c.class, Class(curve.Impulse()))
		told, err := os.ReadFile(filepath.Join("..", c.told))
		require.NoError(t, err)
		assert.Contains(t, string(told), fmt.Sprintf("class %s, %.1f N·s, %.0f N on average over %.2f s",
			c.class, curve.Impulse(), curve.Average(), curve.BurnTime()))
		assert.Zero(t, curve.EndsAbove())
		specific := curve.Impulse() / (g0 * c.propellant)
		assert.True(t, specific >= 180 && specific <= 210, "%s: %.1f s", c.file, specific)
	}
}

// A file that a curve's name leads to by mistake, or on purpose, is not quoted.
func TestForeignFilesAreNotQuoted(t *testing.T) {
	for _, text := range []string{
		"root:x:0:0:root:/root:/bin/sh\ndaemon:x:1:1::/:/bin/false\n", "secret = 'hunter2'\n0,5\nhunter2,5\n",
		strings.Repeat("hunter2 ", 400) + "\n0,5\n", "0,5\nhunter2,5\n",
	} {
		_, err := ReadCurve(strings.NewReader(text))
		require.Error(t, err)
		for _, word := range []string{"root", "daemon", "bin", "secret", "hunter2"} {
			require.NotContains(t, err.Error(), word, text)
		}
	}
}
