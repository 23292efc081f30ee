package machine

import (
	"bytes"
	"encoding/csv"
	"encoding/json"
	"math"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"
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

func TestNumbersAreThoseOfEncodingJSON(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		v := rapid.Float64().Draw(t, "v")
		if rapid.Bool().Draw(t, "small") {
			v = math.Ldexp(v, rapid.IntRange(-1100, 0).Draw(t, "by"))
		}
		got, err := Number(v).MarshalJSON()
		require.NoError(t, err)
		want, err := json.Marshal(v + 0)
		require.NoError(t, err)
		require.Equal(t, string(want), string(got))
	})
}

// What lies below a key is null until something there has a value.
func TestObjectsBelowAKey(t *testing.T) {
	var o Object
	o.In("a").In("b").Add("x", nil)
	o.In("a").Add("y", nil)
	o.Add("z", "Flügel \"q\"")
	var b bytes.Buffer
	require.NoError(t, WriteLine(&b, &o))
	assert.Equal(t, `{"a":null,"z":"Flügel \"q\""}`+"\n", b.String())
	o.In("a").In("b").Put("v", 0)
	b.Reset()
	require.NoError(t, WriteLine(&b, &o))
	assert.Equal(t, `{"a":{"b":{"x":null,"v":0},"y":null},"z":"Flügel \"q\""}`+"\n", b.String())
}
