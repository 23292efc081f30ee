package rocketfile

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"ullage/sim/quantity"
)

// Points are read as people and other programs write them; a comma that could be either, and a unit that is none of the
// column's, are refused.
func TestPasted(t *testing.T) {
	seconds, newtons := quantity.Usual(quantity.Time), quantity.Usual(quantity.Force)
	pounds, _ := quantity.LookupIn("lbf", quantity.Force)
	read := func(text string, force quantity.Unit) ([][]float64, string) {
		found, bad := newThrustCodec().pasted([]quantity.Unit{seconds, force}).read(text)
		if bad != nil {
			return nil, bad.Problem
		}
		var out [][]float64
		for _, row := range found {
			out = append(out, []float64{row[0].Value, row[1].Value})
		}
		return out, ""
	}
	want := [][]float64{{0, 0}, {0.05, 80}, {1.25, 60.5}}
	for name, text := range map[string]string{
		"commas":          "0,0\n0.05,80\n1.25,60.5\n",
		"heading":         "time_s,thrust_n\r\n0,0\r\n0.05,80\r\n1.25,60.5\r\n",
		"blanks":          "Time (s)   Thrust (N)\n0   0\n0.05   80\n1.25  60.5",
		"tabs":            "t\tF\n0\t0\n0,05\t80\n1,25\t60,5",
		"semicolons":      "0;0\n0,05;80\n1,25;60,5",
		"decimal commas":  "0 0\n0,05 80\n1,25 60,5 # end",
		"units":           "0 s, 0 N\n50 ms, 80 N\n1.25 s,60.5 N",
		"one line":        "0 0, 0.05 80, 1.25 60.5",
		"by turns":        "0 0 0.05 80 1.25 60.5",
		"commas by turns": "0,0,0.05,80,1.25,60.5",
		"of a file":       "[\n  [\"0 s\", \"0 N\"], # start\n  [\"50 ms\", \"80 N\"],\n  [\"1.25 s\", \"60.5 N\"],\n]",
		"milliseconds":    "time_ms;thrust_n\n0;0\n50;80\n1250;60.5",
		"carriage":        "0 0\r0.05 80\r1.25 60.5\r",
		"titles":          "A motor, measured twice\n\ntime_s thrust_n\n0 0\n0.05 80\n1.25 60.5",
	} {
		rows, bad := read(text, newtons)
		require.Empty(t, bad, name)
		require.InDeltaSlice(t, []float64{0, 0, 0.05, 80, 1.25, 60.5}, flat(rows), 1e-12, name)
		require.Len(t, rows, len(want), name)
	}
	rows, _ := read("0.1 10", pounds)
	require.InDelta(t, 44.4822, rows[0][1], 1e-4, "lbf")
	rows, _ = read("0.1 10\nx", pounds)
	require.Nil(t, rows)
	for text, says := range map[string]string{
		"0,5":                   "could part two numbers",
		"0,0,1,5,2,0":           "could part two numbers",
		"0":                     "1 numbers",
		"":                      "no row",
		"time_s,thrust_n\n":     "no row",
		"0 0\n1 5\nend":         "line 3, end: not a row",
		"0 0\n1 5 7":            "line 2, 1 5 7: 3 numbers",
		"0 0\n1 5 7 8":          "4 numbers",
		"time_s,thrust_lb\n0,0": "has a unit that is none of a force",
		"t (s);F (kN)\n0;0":     "has a unit that is none of a force",
		"0 0\n1 5 bar":          "5 bar in it",
		"0 0\n1,200 5":          "1,200 in it",
	} {
		rows, bad := read(text, newtons)
		require.Nil(t, rows, "%q", text)
		require.Contains(t, bad, says, "%q", text)
	}
}

func flat(rows [][]float64) (out []float64) {
	for _, row := range rows {
		out = append(out, row...)
	}
	return out
}

// Rows are put in, changed, moved and taken out one by one, with the remarks beside the others where they are.
func TestEditRows(t *testing.T) {
	text := strings.Replace(plain, `curve = "h.csv"`, "thrust = [\n  [\"0 s\", \"0 N\"],\n  [\"50 ms\", \"80 N\"], # peak\n\n  # towards the end\n  [\"1.3 s\", \"0 N\"] # burnt out\n]", 1)
	require.NotEqual(t, plain, text)
	f := draftIn(t, text)
	edit := func(f *File, from, to int, typed string) *File {
		t.Helper()
		g, _, err := f.EditRows("motor.thrust", from, to, typed, nil)
		require.NoError(t, err)
		return g
	}
	changed := edit(f, 1, 2, "0.06 85")
	require.Contains(t, string(changed.Text()), "  [\"60 ms\", \"85 N\"], # peak\n")
	require.Contains(t, string(edit(f, 1, 2, "60 ms 85").Text()), "60 ms")
	require.Equal(t, text, string(edit(changed, 1, 2, "50 ms 80 N").Text()))
	more := edit(f, 2, 2, "1.2 60")
	require.Contains(t, string(more.Text()), "  # towards the end\n  [\"1.2 s\", \"60 N\"],\n  [\"1.3 s\", \"0 N\"] # burnt out\n]")
	require.Equal(t, text, string(edit(more, 2, 3, "").Text()))
	end := edit(f, 3, 3, "1.4 0")
	require.Contains(t, string(end.Text()), "  [\"1.3 s\", \"0 N\"], # burnt out\n  [\"1.4 s\", \"0 N\"]\n]")
	require.Equal(t, 4, end.Described().Motor.Curve.Len())
	require.NotContains(t, string(edit(f, 1, 2, "").Text()), "peak")
	moved, err := f.MoveRow("motor.thrust", 0, 1)
	require.NoError(t, err)
	require.Len(t, moved.Unfinished(), 0, "water flies")
	onMotor, err := moved.Set("power", "motor")
	require.NoError(t, err)
	open := onMotor.Unfinished()
	require.Len(t, open, 1, "%v", open)
	require.Equal(t, "motor.thrust", open[0].Key)
	require.Contains(t, open[0].Problem, "does not rise")
	is, err := onMotor.RowsOf("motor.thrust")
	require.NoError(t, err)
	require.Len(t, is.Rows, 3)
	require.Contains(t, is.Wrong[1], "does not rise")
	_, strict := Read("x.toml", folder(t), onMotor.Text())
	require.ErrorContains(t, strict, `["0 s", "0 N"]: the time does not rise`)
	_, err = f.MoveRow("motor.thrust", 2, 1)
	require.ErrorContains(t, err, "no further")
	_, _, err = f.EditRows("motor.thrust", 1, 2, "what", nil)
	require.Error(t, err)
	_, _, err = f.EditRows("water.fill", 0, 0, "1 2", nil)
	require.ErrorContains(t, err, "no rows")
	gone := edit(f, 0, 3, "")
	require.NotContains(t, string(gone.Text()), "thrust")

	one := edit(f, 0, 3, "0 5")
	require.Contains(t, string(one.Text()), `thrust = [["0 s", "5 N"]]`)
	one, err = one.Set("power", "motor")
	require.NoError(t, err)
	is, err = one.RowsOf("motor.thrust")
	require.NoError(t, err)
	require.Contains(t, is.Whole, "one point")
	two := edit(one, 1, 1, "1 -3")
	is, err = two.RowsOf("motor.thrust")
	require.NoError(t, err)
	require.Contains(t, is.Wrong[1], "negative")
}

// A curve of a file is the table at first, and stands in the rocket file once it is changed; drag and delays are rows too.
func TestRowsOfOthers(t *testing.T) {
	f := draftIn(t, plain)
	is, err := f.RowsOf("motor.thrust")
	require.NoError(t, err)
	require.Equal(t, "h.csv", is.From)
	n := len(is.Rows)
	require.Positive(t, n)
	g, made, err := f.EditRows("motor.thrust", n, n, "9 0", nil)
	require.NoError(t, err)
	require.Equal(t, 1, made)
	is, err = g.RowsOf("motor.thrust")
	require.NoError(t, err)
	require.Empty(t, is.From)
	require.Len(t, is.Rows, n+1)
	require.NotContains(t, string(g.Text()), "h.csv")
	g, err = f.Set("motor.delays", "6 8, 10 s")
	require.NoError(t, err)
	require.Contains(t, string(g.Text()), `delays = ["6 s", "8 s", "10 s"]`)
	g, _, err = g.EditRows("motor.delays", 1, 2, "7.5", nil)
	require.NoError(t, err)
	require.Contains(t, string(g.Text()), `delays = ["6 s", "7.5 s", "10 s"]`)
	g, err = f.Set("body.drag", "0 0.46, 0.8 0.55")
	require.NoError(t, err)
	require.Contains(t, string(g.Text()), `drag = [[0, 0.46], [0.8, 0.55]]`)
	g, _, err = g.EditRows("body.drag", 1, 1, "0.9 0.4", nil)
	require.NoError(t, err)
	require.Len(t, g.Unfinished(), 1)
	require.Contains(t, g.Unfinished()[0].Problem, "do not rise")
	five := "0 0.4, 0.2 0.4, 0.4 0.4, 0.6 0.41, 0.8 0.5"
	crlf, err := ReadDraft("x.toml", folder(t), []byte(strings.ReplaceAll(plain, "\n", "\r\n")))
	require.NoError(t, err)
	g, err = crlf.Set("body.drag", five)
	require.NoError(t, err)
	require.Contains(t, string(g.Text()), "drag = [\r\n  [0, 0.4],\r\n  [0.2, 0.4],")
	in, err := g.Find("body.drag")
	require.NoError(t, err)
	require.NotContains(t, in.Text(g.Described()), "\n", "lists of inputs are tables")
	again, err := g.Set("body.drag", five)
	require.NoError(t, err)
	require.Same(t, g, again)
	_, err = f.Set("body.drag", "0,46")
	require.NoError(t, err)
}

// Any rows put in, moved and taken out are what is read back, and the rest of the text stays.
func TestAnyRows(t *testing.T) {
	base := draftIn(t, strings.Replace(plain, `curve = "h.csv"`, "thrust = [[\"0 s\", \"0 N\"], [\"1 s\", \"9 N\"]]", 1))
	rapid.Check(t, func(t *rapid.T) {
		f, want := base, [][]float64{{0, 0}, {1, 9}}
		for range rapid.IntRange(1, 8).Draw(t, "edits") {
			from := rapid.IntRange(0, len(want)).Draw(t, "from")
			to := rapid.IntRange(from, len(want)).Draw(t, "to")
			var text strings.Builder
			var made [][]float64
			for range rapid.IntRange(0, 6).Draw(t, "rows") {
				row := []float64{float64(rapid.IntRange(-2, 40).Draw(t, "time")), float64(rapid.IntRange(-2, 40).Draw(t, "thrust"))}
				made = append(made, row)
				text.WriteString(quantity.Exact(row[0], quantity.Usual(quantity.Time)) + "; " + quantity.Exact(row[1], quantity.Usual(quantity.Force)) + "\n")
			}
			next := append(append(append([][]float64{}, want[:from]...), made...), want[to:]...)
			if len(next) == 0 {
				continue
			}
			g, _, err := f.EditRows("motor.thrust", from, to, text.String(), nil)
			require.NoError(t, err, "%s", f.Text())
			is, err := g.RowsOf("motor.thrust")
			require.NoError(t, err)
			require.Equal(t, next, plainRows(is.Rows), "%s", g.Text())
			f, want = g, next
		}
		head, _, _ := strings.Cut(string(base.Text()), "thrust =")
		require.True(t, strings.HasPrefix(string(f.Text()), head))
	})
}
