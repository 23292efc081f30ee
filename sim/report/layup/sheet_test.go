package layup

import (
	"bytes"
	"encoding/json"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"ullage/sim/chamber"
	"ullage/sim/golden"
	"ullage/sim/layup"
	"ullage/sim/quantity"
	"ullage/sim/report/page"
	"ullage/sim/rocket"
	"ullage/sim/rocketfile"
)

// heron is the example with something changed.
func heron(t testing.TB, change func(r *rocket.Rocket)) *rocket.Rocket {
	t.Helper()
	f, err := rocketfile.Open("../../../testdata/heron.toml")
	require.NoError(t, err)
	r := f.Rocket()
	r.Layup.Hardener, r.Layup.PotLife = 0.4, 1800
	if change != nil {
		change(r)
	}
	return r
}

func sheetOf(t testing.TB, r *rocket.Rocket, sys quantity.System) *Sheet {
	t.Helper()
	s, err := For(r, sys)
	require.NoError(t, err)
	return s
}

func written(t testing.TB, s *Sheet, form page.Form) string {
	t.Helper()
	var b bytes.Buffer
	doc := s.Document()
	require.NoError(t, doc.Write(&b, form))
	return b.String()
}

func TestSheet(t *testing.T) {
	golden.Equal(t, "heron.golden", written(t, sheetOf(t, heron(t, nil), quantity.Metric), page.AsText))
	weighed := heron(t, func(r *rocket.Rocket) {
		r.Layup.Tube, r.Layup.Forward, r.Layup.Aft, r.Chamber.Wall, r.Layup.AftLayers = 0.33, 0.046, 0.03, 0.8e-3, 9
		r.Layup.MountLayers, r.Layup.Hardener, r.Layup.PotLife = 2, 0, 0
	})
	golden.Equal(t, "weighed-us.golden", written(t, sheetOf(t, weighed, quantity.US), page.AsText))
}

// Every form says the same, in lines that fit, without a figure that is none.
func TestAllForms(t *testing.T) {
	for name, change := range map[string]func(r *rocket.Rocket){
		"as it is": nil,
		"bare":     func(r *rocket.Rocket) { r.Layup = layup.Practice{} },
		"cone and plate": func(r *rocket.Rocket) {
			r.Chamber.Forward = &chamber.Closure{Shape: chamber.Cone, HalfAngle: 0.35, Overlap: 0.025}
			r.Chamber.Aft = &chamber.Closure{Shape: chamber.Flat, Overlap: 0.025, Wall: 6e-3}
		},
		"no closures": func(r *rocket.Rocket) {
			r.Chamber.Forward, r.Chamber.Aft, r.Chamber.Boss, r.Recovery = nil, nil, nil, nil
		},
		"too light": func(r *rocket.Rocket) { r.Layup.Tube = 0.01 },
		"sleeves": func(r *rocket.Rocket) {
			r.Chamber.Plies = []chamber.Ply{{Name: "*sleeve*", Cloth: 0.3, Count: 3, Weave: chamber.Braided, Direction: 0.8}}
			r.Layup.Wrap = layup.LayerByLayer
		},
	} {
		t.Run(name, func(t *testing.T) {
			s := sheetOf(t, heron(t, change), quantity.Metric)
			for form, text := range map[string]string{"text": written(t, s, page.AsText), "markdown": written(t, s, page.AsMarkdown), "html": written(t, s, page.AsHTML)} {
				for _, never := range []string{"NaN", "Inf", "afe", "%!"} {
					assert.False(t, strings.Contains(text, never), "%s: %s", form, never)
				}
				assert.True(t, strings.Contains(strings.Join(strings.Fields(text), " "), "Local law and qualified people decide"), form)
				if form == "text" {
					for _, line := range strings.Split(text, "\n") {
						assert.LessOrEqual(t, len([]rune(line)), page.Width, line)
					}
				}
			}
			var b bytes.Buffer
			require.NoError(t, s.WriteJSON(&b))
			var doc map[string]any
			require.NoError(t, json.Unmarshal(b.Bytes(), &doc))
			assert.Len(t, doc["parts"], len(s.Plan().Parts))
		})
	}
}

func TestToTickOff(t *testing.T) {
	text := written(t, sheetOf(t, heron(t, nil), quantity.Metric), page.AsMarkdown)
	assert.Contains(t, text, "| [ ] | 1 | tube |")
	assert.Contains(t, text, "| [ ] | 1 to 3 | 163 g/m² cloth | 1 sheet |")
	assert.Contains(t, text, "\n1. [ ] Gloves")
	assert.Contains(t, text, "## Record\n")
}

func TestNothingToLayUp(t *testing.T) {
	for _, change := range []func(r *rocket.Rocket){
		func(r *rocket.Rocket) { r.Chamber = nil },
		func(r *rocket.Rocket) { r.Chamber = &chamber.Chamber{Material: chamber.PETBottle, Wall: 0.3e-3} },
	} {
		_, err := For(heron(t, change), quantity.Metric)
		assert.ErrorIs(t, err, layup.ErrNoPlies)
	}
}
