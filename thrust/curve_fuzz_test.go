package thrust

import (
	"bytes"
	"errors"
	"fmt"
	"math"
	"slices"
	"testing"

	"ullage/sim/fault"
)

// FuzzReadCurve holds that any bytes give either a curve that is whole, finite
// and reads back the same, or faults that each say what is wrong and what is right.
func FuzzReadCurve(f *testing.F) {
	for _, seed := range []string{
		"time_s,thrust_n\n0.02,85\n1.5,60\n2,0\n",
		"\uFEFF# made up\r\ntime_s,thrust_n\r\n0,10\r\n1e-6,1e7\r\n1000,0\r\n",
		"time_s,thrust_n\n0,NaN\n1e400,-1\n0,0\n",
		"time,thrust\n0;1\n1,5;2,5\n",
		"time_s,thrust_n\n0.1,5e-324\n0.2,0.001\n",
		"0,1\n\x00",
		"",
	} {
		f.Add([]byte(seed))
	}
	f.Fuzz(func(t *testing.T, text []byte) {
		c, err := ReadCurve(bytes.NewReader(text))
		if err != nil {
			checkFaults(t, text, err)
			return
		}
		checkCurve(t, c)
		var again bytes.Buffer
		again.WriteString("time_s,thrust_n\n")
		for _, p := range c.Points() {
			fmt.Fprintf(&again, "%v,%v\n", p.Time, p.Thrust)
		}
		back, err := ReadCurve(&again)
		if err != nil {
			t.Fatalf("does not read back: %v", err)
		}
		if !slices.Equal(back.Points(), c.Points()) {
			t.Fatalf("%v came back as %v", c.Points(), back.Points())
		}
	})
}

func checkFaults(t *testing.T, text []byte, err error) {
	var faults fault.List
	if !errors.As(err, &faults) || len(faults) == 0 {
		t.Fatalf("not faults: %v", err)
	}
	lines := bytes.Count(text, []byte("\n")) + 1
	for i, bad := range faults {
		if bad.Problem == "" || bad.Remedy == "" || bad.Line < 0 || bad.Line > lines {
			t.Fatalf("fault %d of %d lines: %+v", i, lines, bad)
		}
	}
}

func checkCurve(t *testing.T, c *Curve) {
	if c.Len() < 2 || c.Len() > MaxPoints+1 {
		t.Fatalf("%d points", c.Len())
	}
	for name, v := range map[string]float64{
		"impulse": c.Impulse(), "peak": c.Peak(), "burn time": c.BurnTime(), "average": c.Average(), "end": c.End(),
	} {
		if !(v > 0) || math.IsInf(v, 0) {
			t.Fatalf("%s is %v", name, v)
		}
	}
	last := 0.0
	for i := range c.Len() - 1 {
		from, _, _ := c.Knot(i)
		to, _, _ := c.Knot(i + 1)
		if !(to > from) {
			t.Fatalf("time does not rise at point %d", i)
		}
		for _, at := range []float64{from, from + (to-from)/3, to} {
			thrust, impulse := c.Thrust(at), c.ImpulseAt(at)
			if !(thrust >= 0 && thrust <= c.Peak()*(1+1e-12)) {
				t.Fatalf("thrust at %v s is %v", at, thrust)
			}
			if !(impulse >= last*(1-1e-12) && impulse <= c.Impulse()*(1+1e-12)) {
				t.Fatalf("impulse at %v s is %v after %v", at, impulse, last)
			}
			last = impulse
		}
	}
}
