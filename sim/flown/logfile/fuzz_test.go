package logfile

import (
	"math"
	"testing"

	"github.com/stretchr/testify/require"
)

// Whatever the bytes are, there is a message or a log whose times rise, whose columns are of one
// length, and whose numbers are finite or missing.
func FuzzRead(f *testing.F) {
	for _, seed := range []string{
		"time_s,height_m\n0,1\n0.1,2\n", "t;h\n0,1;2\n", "# a\n1 2\n2 3\n3 4\n", "\xff\xfet\x00,\x00h\x00\n\x00", "\xef\xbb\xbft\th\n1\t2\n",
		"t,p\n1,977\n2,977.1\n3,nan\n4,1e308\n2,3\n3,3\n4,3\n5,3\n6,3\n7,3\n8,3\n9,3\n10,3\n11,3\n12,3\n", "\"a\"\"b\",\"c\n", "height\n1\n2\n",
		"14:03:00.1,2026-05-03T00:00:00Z\n", "(((,)))\n[[;]]\n",
	} {
		f.Add([]byte(seed), false)
		f.Add([]byte(seed), true)
	}
	f.Fuzz(func(t *testing.T, text []byte, withRate bool) {
		o := Options{}
		if withRate {
			o.Rate = 20
			c, err := ParseColumn("height=1 ft")
			require.NoError(t, err)
			o.Columns = []Told{c}
		}
		l, err := Read("log", text, o)
		if err != nil {
			require.NotEmpty(t, err.Error())
			return
		}
		for i := 1; i < len(l.Time); i++ {
			if l.Time[i] <= l.Time[i-1] {
				require.Contains(t, l.Starts, i)
			}
		}
		for i, v := range l.Values {
			if l.Columns[i].Quantity == Time {
				continue
			}
			require.Len(t, v, len(l.Time))
			for _, x := range v {
				require.False(t, math.IsInf(x, 0))
			}
		}
	})
}
