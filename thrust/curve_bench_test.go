package thrust

import (
	"fmt"
	"strings"
	"testing"
)

func BenchmarkReadCurve(b *testing.B) {
	for _, n := range []int{20, MaxPoints} {
		text := rows(n)
		b.Run(fmt.Sprintf("%d points", n), func(b *testing.B) {
			b.SetBytes(int64(len(text)))
			b.ReportAllocs()
			for b.Loop() {
				if _, err := ReadCurve(strings.NewReader(text)); err != nil {
					b.Fatal(err)
				}
			}
		})
	}
}

func BenchmarkCurveLookup(b *testing.B) {
	for _, n := range []int{20, MaxPoints} {
		c, err := ReadCurve(strings.NewReader(rows(n)))
		if err != nil {
			b.Fatal(err)
		}
		b.Run(fmt.Sprintf("%d points", n), func(b *testing.B) {
			sum, t, step := 0.0, 0.0, c.End()/997
			for b.Loop() {
				sum += c.Thrust(t) + c.ImpulseAt(t)
				if t += step; t > c.End() {
					t = 0
				}
			}
			if sum < 0 {
				b.Fatal(sum)
			}
		})
	}
}
