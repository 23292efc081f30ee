package measured_test

import (
	"bytes"
	"context"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"ullage/sim/flown"
	"ullage/sim/flown/logfile"
	"ullage/sim/golden"
	"ullage/sim/quantity"
	"ullage/sim/report/measured"
	"ullage/sim/rocketfile"
	"ullage/sim/study"
)

func logged(t *testing.T) (*rocketfile.File, flown.Logged) {
	f, err := rocketfile.Open("../../../testdata/wagtail.toml")
	require.NoError(t, err)
	log, err := logfile.Open("../../../testdata/logs/one.csv", logfile.Options{})
	require.NoError(t, err)
	log.Name = "one.csv"
	r := f.Rocket()
	rd, err := flown.Read(log, r, flown.Options{})
	require.NoError(t, err)
	return f, flown.Logged{Reading: rd, Rocket: r}.Dated("as in wagtail.toml")
}

func TestCompareText(t *testing.T) {
	f, l := logged(t)
	c, err := flown.Compare(context.Background(), l, study.Spreads(f), 100, study.Options{})
	require.NoError(t, err)
	for name, sys := range map[string]quantity.System{"compare.golden": quantity.Metric, "compare-us.golden": quantity.US} {
		var b bytes.Buffer
		require.NoError(t, measured.WriteCompareText(&b, []*flown.Compared{c}, nil, sys))
		golden.Equal(t, name, b.String())
	}
}

func TestFitText(t *testing.T) {
	f, l := logged(t)
	inputs, err := flown.Choose(context.Background(), []flown.Logged{l}, study.Spreads(f))
	require.NoError(t, err)
	got, err := flown.Fit(context.Background(), []flown.Logged{l}, inputs)
	require.NoError(t, err)
	var b bytes.Buffer
	require.NoError(t, measured.WriteFitText(&b, measured.Fit{Fitted: got}))
	golden.Equal(t, "fit.golden", b.String())
	b.Reset()
	require.NoError(t, measured.WriteFitText(&b, measured.Fit{Fitted: got, Failed: flown.ErrNotSettled}))
	assert.Contains(t, b.String(), "! The fit did not come to rest.")
	assert.NotContains(t, b.String(), "--write")
}
