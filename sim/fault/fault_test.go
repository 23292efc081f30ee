package fault

import (
	"errors"
	"fmt"
	"io/fs"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

func TestError(t *testing.T) {
	for want, f := range map[string]Fault{
		`heron.toml:7: body.drag = -1: negative; give 0 to 10`: {File: "heron.toml", Line: 7, Key: "body.drag", Value: "-1", Problem: "negative", Remedy: "give 0 to 10"},
		`heron.toml: body.drag: missing; add it`:               {File: "heron.toml", Key: "body.drag", Problem: "missing", Remedy: "add it"},
		`heron.toml: empty`:                                    {File: "heron.toml", Problem: "empty"},
		`line 3: 1e9: the time is too large; give less`:        {Line: 3, Value: "1e9", Problem: "the time is too large", Remedy: "give less"},
		`"70": has no unit; write "70 mm"`:                     {Value: `"70"`, Problem: "has no unit", Remedy: `write "70 mm"`},
		`no input to sweep over`:                               {Problem: "no input to sweep over"},
	} {
		assert.EqualError(t, f, want)
	}
}

func TestList(t *testing.T) {
	var l List
	require.NoError(t, l.Err(), "nothing is wrong")
	l.Add("body.mass", "missing", "weigh it")
	l = append(l, Fault{File: "x.toml", Problem: "there is no such file", Err: fs.ErrNotExist}.Of("motor.curve", `"x.csv"`))
	err := l.Err()
	require.EqualError(t, err, "body.mass: missing; weigh it\nx.toml: motor.curve = \"x.csv\": there is no such file")
	require.ErrorIs(t, err, fs.ErrNotExist)
	var first Fault
	require.ErrorAs(t, err, &first)
	require.Equal(t, "body.mass", first.Key)
}

func TestIn(t *testing.T) {
	one := Fault{Key: "k", Problem: "p"}
	require.Nil(t, In(nil))
	require.Equal(t, List{one, one}, In(fmt.Errorf("reading: %w", List{one, one})))
	require.Equal(t, List{one}, In(fmt.Errorf("reading: %w", one)))
	other := errors.New("disk full")
	require.Equal(t, List{{Problem: "disk full", Err: other}}, In(other))
}

func TestEntry(t *testing.T) {
	require.Equal(t, "main", Entry("main", 3))
	require.Equal(t, "4", Entry("", 3))
}

func TestOneOf(t *testing.T) {
	assert.Equal(t, "a, b or c", OneOf("a", "b", "c"))
	assert.Equal(t, "a or b", OneOf("a", "b"))
	assert.Equal(t, "a", OneOf("a"))
	assert.Empty(t, OneOf[string]())
}
