package machine

import (
	"bytes"
	"encoding/csv"
	"math"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

func TestAppendNumber(t *testing.T) {
	for v, want := range map[float64]string{
		0: "0", math.Copysign(0, -1): "0", 101325: "101325", 1013250.5: "1013250.5", 0.1: "0.1", 1e-7: "1e-07",
		math.NaN(): "", math.Inf(1): "",
	} {
		assert.Equal(t, want, string(AppendNumber(nil, v)))
	}
}

func TestTidy(t *testing.T) {
	assert.Equal(t, 0.3, Tidy(0.1+0.2))
	assert.False(t, math.Signbit(Tidy(math.Copysign(0, -1))))
	assert.True(t, math.IsNaN(Tidy(math.NaN())))
	assert.True(t, math.IsInf(Tidy(math.Inf(-1)), -1))
}

func TestCell(t *testing.T) {
	for text, want := range map[string]string{
		"plain": "plain", "a,b": `"a,b"`, `say "so"`: `"say ""so"""`, "two\nlines": "\"two\nlines\"",
	} {
		assert.Equal(t, want, Cell(text))
		records, err := csv.NewReader(strings.NewReader(Cell(text))).ReadAll()
		require.NoError(t, err)
		assert.Equal(t, [][]string{{text}}, records)
	}
}

func TestObjectKeepsItsOrder(t *testing.T) {
	var inner, o Object
	inner.Add("b", Number(math.NaN())).Add("a", Number(math.Copysign(0, -1)))
	o.Add("z", "<&>").Add("inner", &inner).Add("none", nil).Add("there", Pointer(1.5))
	var line, document bytes.Buffer
	require.NoError(t, WriteLine(&line, &o))
	assert.Equal(t, `{"z":"<&>","inner":{"b":null,"a":0},"none":null,"there":1.5}`+"\n", line.String())
	require.NoError(t, WriteDocument(&document, &o))
	assert.JSONEq(t, line.String(), document.String())
	assert.True(t, strings.HasPrefix(document.String(), "{\n  \"z\": \"<&>\",\n  \"inner\": {\n    \"b\": null"))
	var empty Object
	line.Reset()
	require.NoError(t, WriteLine(&line, &empty))
	assert.Equal(t, "{}\n", line.String())
}
