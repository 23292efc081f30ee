package rocketfile

import (
	"testing"

	"github.com/stretchr/testify/require"
)

// A thrust curve is typed or pasted point by point, stands in the file in place of one that is named, and is the curve
// that flies; what is no curve is told with how it is written.
func TestThrustPoints(t *testing.T) {
	f := draftIn(t, plain)
	g, err := f.Set("motor.thrust", "0 0, 0.05 80; 1.2 60\n1.3 0")
	require.NoError(t, err)
	require.Contains(t, string(g.Text()), `thrust = [["0 s", "0 N"], ["0.05 s", "80 N"], ["1.2 s", "60 N"], ["1.3 s", "0 N"]]`)
	require.NotContains(t, string(g.Text()), "h.csv")
	curve := g.Rocket().Motor.Curve
	require.Equal(t, 4, curve.Len())
	// 0.05·80/2 + 1.15·70 + 0.1·60/2
	require.InDelta(t, 2+80.5+3, curve.Impulse(), 1e-9)
	require.Equal(t, "0 0, 0.05 80, 1.2 60, 1.3 0", PlainCurve(g.Rocket()))
	again, err := g.Set("motor.thrust", "time_s,thrust_n\n0,0\n0.1,50\n1,0")
	require.NoError(t, err)
	require.Equal(t, 3, again.Rocket().Motor.Curve.Len())
	named, err := g.Set("motor.curve", "h.csv")
	require.NoError(t, err)
	require.NotContains(t, string(named.Text()), "thrust =")
	_, err = Read("x.toml", folder(t), g.Text())
	require.NoError(t, err)
	for _, bad := range []string{"0 0, 0.05", "0 0", "0 0, 1 x", "1 5, 0.5 6", "0 -3, 1 5", "0 0, 1 0", ""} {
		_, err = f.Set("motor.thrust", bad)
		require.Error(t, err, bad)
		if bad != "" {
			require.Nil(t, ParseCurve(bad), bad)
		}
	}
	require.NotNil(t, ParseCurve("0 0 1 5"))
}
