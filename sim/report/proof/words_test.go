package proof

import (
	"regexp"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"ullage/sim/quantity"
	"ullage/sim/report/page"
	"ullage/sim/rocket"
)

func TestProofSteps(t *testing.T) {
	text := proofOf(t, page.AsText, structured(t, nil), quantity.Metric)
	flat := strings.Join(strings.Fields(text), " ")
	for _, want := range []string{
		"slowly to 3.75 bar and hold for 1 minute", "slowly to 7.50 bar and hold for 1 minute", "slowly to 11.2 bar and hold for 1 minute",
		"proof pressure, 15.0 bar, and no further. Hold for 5 minutes", "40 mL is expected", "or more than 3.7 mL if that is less, it has set",
		"Fill it completely with water", "behind the barrier", "chamber.proof_date", "weeping", "crackles", "set", "turned white",
		"gauge that was compared with another and whose full scale is 20 bar to 30 bar", "309 times the energy of water", " N for 2.78 ms",
		// 4.2 L/309 at 15 bar over 977 hPa were 16.35 times as much before.
		"a bubble of 222 mL, once pressed",
		"Fragments go farther", "never below 30 m",
	} {
		assert.Contains(t, flat, want)
	}
}

func TestProofStepsAreNumberedAndTicked(t *testing.T) {
	marked := proofOf(t, page.AsMarkdown, structured(t, nil), quantity.Metric)
	found := regexp.MustCompile(`(?m)^(\d+)\. \[ \] `).FindAllStringSubmatch(marked, -1)
	require.GreaterOrEqual(t, len(found), 15)
	for i, f := range found {
		assert.Equal(t, f[1], quantity.Format(float64(i+1), quantity.Usual(quantity.Number), 1))
	}
	for _, want := range []string{"| date |  |", "| signed |  |", "| 11.2 bar | 1 minute |", "| circumference, middle |"} {
		assert.Contains(t, marked, want)
	}
}

func TestProofEscapesNames(t *testing.T) {
	marked := proofOf(t, page.AsMarkdown, structured(t, oddChambers["named"]), quantity.Metric)
	assert.True(t, strings.HasPrefix(marked, `# Pipe \| \*star\* \_x\_ \[a\](b) \<i\>: the pressure`), marked[:80])
	assert.Contains(t, marked, `| ma\|in | water |`)
}

func TestProofWhereTheLimitForbids(t *testing.T) {
	s := structured(t, func(r *rocket.Rocket) { r.Chamber.Burst, r.Chamber.Proof, r.Chamber.ProofDate = 18e5, 0, "" })
	// 18 bar less what six cycles take (a tenth a decade) is 16.60, of which 0.8 are 13.28.
	flat := strings.Join(strings.Fields(proofOf(t, page.AsText, s, quantity.Metric)), " ")
	assert.Contains(t, flat, "burst 16.5 bar, from 18 bar measured on a chamber made alike, less what heat and cycles take")
	assert.Contains(t, flat, "proof limit 13.2 bar, 0.8 of a measured burst")
	assert.Contains(t, flat, "prove to 13.2 bar, low: the limit allows no more")
	assert.Contains(t, flat, "used at 8.80 bar at most")
	assert.Contains(t, flat, "This proof is for a working pressure of 8.80 bar at most, not for 10 bar")
	assert.NotContains(t, flat, "burst one made alike")
}

func TestProofOfWhatHeldMoreThanItsEstimate(t *testing.T) {
	s := structured(t, oddChambers["own"])
	// 60 bar less a tenth of the strength a decade of cycles: 1 − 0.1 log10(3000) = 0.6523.
	flat := strings.Join(strings.Fields(proofOf(t, page.AsText, s, quantity.Metric)), " ")
	assert.Contains(t, flat, "burst 39.1 bar, the proof it held, less what heat and cycles take")
	assert.Contains(t, flat, "proof limit 19.5 bar, half of that: what it held is no measured burst")
	assert.Contains(t, flat, "It held 60 bar, more than is estimated of it")
	assert.Contains(t, flat, "many times the energy of water", "its dilation is not known")
	assert.Contains(t, flat, "give chamber.modulus")
}

func TestProofOfAHotWall(t *testing.T) {
	s := structured(t, func(r *rocket.Rocket) { r.Chamber.Heating.Temperature = 273.15 + 80 })
	text := strings.Join(strings.Fields(proofOf(t, page.AsText, s, quantity.Metric)), " ")
	assert.Contains(t, text, "as hot as the air, where 0 % of their strength counts")
	s = structured(t, func(r *rocket.Rocket) { r.Chamber.Heating.Temperature = 273.15 + 50 })
	text = strings.Join(strings.Fields(proofOf(t, page.AsText, s, quantity.Metric)), " ")
	assert.Contains(t, text, "as hot as the air, where 75 % of their strength counts") // (65−50)/(65−45)
	s = structured(t, func(r *rocket.Rocket) { r.Chamber.Heating.Temperature = 273.15 + 40 })
	assert.NotContains(t, proofOf(t, page.AsText, s, quantity.Metric), "as hot as the air")
}

func TestProofWithoutProcedure(t *testing.T) {
	for name, want := range map[string]string{
		"hot":     "No strength is left at this wall temperature",
		"unknown": "There is no working pressure to prove it for",
		"weak":    "below the working pressure itself",
	} {
		text := strings.Join(strings.Fields(proofOf(t, page.AsText, structured(t, oddChambers[name]), quantity.Metric)), " ")
		assert.Contains(t, text, want, name)
		assert.NotContains(t, text, "Do it with two people", name)
	}
}

func TestProofLoadsWithoutAMount(t *testing.T) {
	text := strings.Join(strings.Fields(proofOf(t, page.AsText, structured(t, oddChambers["own"]), quantity.Metric)), " ")
	assert.Contains(t, text, "give [recovery] with pin, bond_area and line")
	s := structured(t, func(r *rocket.Rocket) { r.Recovery.LineLength = 0 })
	text = strings.Join(strings.Fields(proofOf(t, page.AsText, s, quantity.Metric)), " ")
	assert.Contains(t, text, "is not known: give line, line_length and canopy_mass")
	s = structured(t, func(r *rocket.Rocket) { r.Recovery.Line = 15 })
	text = proofOf(t, page.AsText, s, quantity.Metric)
	assert.Regexp(t, `line +15\.0 N +1\.26 +[0-9.]+ +low +your own`, text)
}
