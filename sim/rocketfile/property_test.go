package rocketfile

import (
	"bytes"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"ullage/sim/quantity"
)

// anyText draws a rocket file that is written in any of the ways that TOML has.
func anyText(t *rapid.T) string {
	eol := rapid.SampledFrom([]string{"\n", "\r\n"}).Draw(t, "eol")
	comment := func() string {
		return rapid.SampledFrom([]string{"", "", "   # note", "\t# \"quoted\" = 1"}).Draw(t, "comment")
	}
	gap := func() string {
		lines := rapid.SampledFrom([]string{"", "\n", "# above\n", "\n# apart\n\n", "  # indented\n"}).Draw(t, "gap")
		return strings.ReplaceAll(lines, "\n", eol)
	}
	equals := func() string { return rapid.SampledFrom([]string{" = ", "=", "   = ", "\t=\t"}).Draw(t, "equals") }
	quote := func(value string) string {
		q := rapid.SampledFrom([]string{`"`, `'`, `"""`, `'''`}).Draw(t, "quote")
		return q + value + q
	}
	type pair struct{ key, value string }
	sections := map[string][]pair{
		"body":       {{"diameter", quote("70 mm")}, {"mass", quote("1 kg")}, {"drag", "0.5"}},
		"water":      {{"volume", quote("4 L")}, {"bore", quote("68 mm")}, {"throat", quote("13 mm")}, {"fill", rapid.SampledFrom([]string{"0.3", `"30 %"`}).Draw(t, "fill")}, {"pressure", quote("9 bar")}},
		"water.tube": {{"length", quote("0.6 m")}, {"outer", quote("12 mm")}, {"inner", quote("9 mm")}},
		"motor":      {{"curve", quote("h.csv")}, {"case", quote("200 g")}, {"propellant", quote("100 g")}},
		"rail":       {{"length", quote("6 ft")}},
		"wind":       {{"speed", quote("3 m/s")}},
	}
	names := []string{"body", "water", "rail"}
	shaped := rapid.Bool().Draw(t, "shaped")
	if shaped {
		sections["body"] = append(sections["body"], pair{"length", quote("1.5 m")}, pair{"balance", quote("28 in")})
		sections["nose"] = []pair{{"shape", quote("conical")}, {"length", quote("200 mm")}}
		sections["flight"] = []pair{{"misalignment", quote("0.5 deg")}}
		names = append(names, "nose", "flight")
	}
	for _, name := range []string{"motor", "wind", "water.tube"} {
		if rapid.Bool().Draw(t, name) {
			names = append(names, name)
		}
	}
	names = rapid.Permutation(names).Draw(t, "order")
	tubeInside := ""
	for _, name := range names {
		if name == "water.tube" {
			tubeInside = name
		}
	}
	var top, tables strings.Builder
	top.WriteString(gap() + "power" + equals() + quote("water") + comment() + eol)
	waterStyle := rapid.IntRange(0, 2).Draw(t, "water style")
	for _, name := range names {
		style := rapid.IntRange(0, 2).Draw(t, "style")
		if name == "water" {
			style = waterStyle
		}
		if name == "water.tube" {
			if waterStyle != 0 {
				style = 1 // braces of water take no header; see below
				if waterStyle == 2 {
					continue
				}
			} else {
				style = 0
			}
		}
		pairs := sections[name]
		switch style {
		case 0:
			tables.WriteString(gap() + "[" + name + "]" + comment() + eol)
			indent := rapid.SampledFrom([]string{"", "  ", "\t"}).Draw(t, "indent")
			for _, p := range pairs {
				tables.WriteString(indent + p.key + equals() + p.value + comment() + eol)
			}
		case 1:
			for _, p := range pairs {
				top.WriteString(name + "." + p.key + equals() + p.value + comment() + eol)
			}
		case 2:
			items := []string{}
			for _, p := range pairs {
				items = append(items, p.key+equals()+p.value)
			}
			if name == "water" && tubeInside != "" {
				items = append(items, "tube = { length = \"0.6 m\", outer = \"12 mm\", inner = \"9 mm\" }")
			}
			top.WriteString(name + equals() + "{ " + strings.Join(items, " , ") + " }" + comment() + eol)
		}
	}
	deploy := func() string {
		return rapid.SampledFrom([]string{`deploy = "apogee + 1 s"`, `deploy = { water = "apogee" }`, `deploy = { motor = "ejection", water = 'launch + 9 s' }`, `deploy.water = "falling through 100 m"`}).Draw(t, "deploy")
	}
	switch rapid.IntRange(0, 2).Draw(t, "canopies") {
	case 1:
		for range rapid.IntRange(1, 2).Draw(t, "count") {
			tables.WriteString(gap() + "[[canopy]]" + comment() + eol + "diameter = " + quote("1 m") + comment() + eol + deploy() + comment() + eol)
		}
	case 2:
		top.WriteString("canopy = [ { area = \"1 m2\", " + deploy() + " }, ]" + comment() + eol)
	}
	if shaped {
		lists := []struct{ name, keys string }{
			{"section", `length = "100 mm"`},
			{"fins", `count = 4, root = "110 mm", tip = "60 mm", span = "75 mm", sweep = "40 mm", thickness = "3 mm", position = "1300 mm"`},
			{"part", `mass = "1 kg", position = "700 mm"`},
		}
		for _, l := range lists {
			switch rapid.IntRange(0, 2).Draw(t, l.name) {
			case 1:
				tables.WriteString(gap() + "[[" + l.name + "]]" + comment() + eol + strings.ReplaceAll(l.keys, ", ", comment()+eol) + eol)
			case 2:
				top.WriteString(l.name + equals() + "[ { " + l.keys + " }, ]" + comment() + eol)
			}
		}
	}
	text := top.String() + tables.String() + gap()
	if rapid.Bool().Draw(t, "cut") {
		text = strings.TrimRight(text, "\r\n")
	}
	if rapid.Bool().Draw(t, "mark") {
		text = string(byteOrderMark) + text
	}
	return text
}

// Edits of any file, one after the other, keep to the rocket that the same
// edits make of a rocket, and to the bytes they do not concern.
func TestEditsOfAnyFile(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		text := anyText(t)
		f, err := fuzzed([]byte(text))
		require.NoError(t, err, text)
		for range rapid.IntRange(1, 6).Draw(t, "edits") {
			before := f.Text()
			g := anyEdit(t, f)
			require.Equal(t, before, f.Text(), "the file edited stays as it is")
			if g == nil {
				continue
			}
			again, err := fuzzed(g.Text())
			require.NoError(t, err, "%s", g.Text())
			sameRocket(t, g, again)
			require.Equal(t, bytes.HasPrefix(before, byteOrderMark), bytes.HasPrefix(g.Text(), byteOrderMark))
			if bytes.Contains(before, []byte("\r\n")) {
				require.Equal(t, bytes.Count(g.Text(), []byte("\n")), bytes.Count(g.Text(), []byte("\r\n")), "line endings stay")
			}
			f = g
		}
	})
}

// anyEdit makes one edit; nil when it was refused.
func anyEdit(t *rapid.T, f *File) *File {
	switch rapid.IntRange(0, 13).Draw(t, "edit") {
	case 10:
		g, err := f.AddShape()
		if err == nil {
			back, err := g.RemoveShape()
			require.NoError(t, err, "%s", g.Text())
			sameRocket(t, f, back)
			return g
		}
		if g, err = f.RemoveShape(); err != nil { // the drag was the shape's, say
			return nil
		}
		require.Nil(t, g.Rocket().Shape)
		return g
	case 11:
		return addedAndBack(t, f, f.AddFins, (*File).RemoveFins)
	case 12:
		return addedAndBack(t, f, f.AddSection, (*File).RemoveSection)
	case 13:
		return addedAndBack(t, f, f.AddPart, (*File).RemovePart)
	case 0:
		g, name, err := f.AddCanopy()
		if err != nil {
			return nil
		}
		back, err := g.RemoveCanopy(name)
		require.NoError(t, err, "%s", g.Text())
		sameRocket(t, f, back)
		return g
	case 1:
		names := []string{"none"}
		for _, c := range f.Rocket().Canopies {
			names = append(names, c.Name)
		}
		g, err := f.RemoveCanopy(rapid.SampledFrom(names).Draw(t, "canopy"))
		if err != nil {
			return nil
		}
		require.Len(t, g.Rocket().Canopies, len(f.Rocket().Canopies)-1)
		return g
	case 2:
		if g, err := f.AddTube(); err == nil {
			back, err := g.RemoveTube()
			require.NoError(t, err, "%s", g.Text())
			sameRocket(t, f, back)
			return g
		}
		g, err := f.RemoveTube()
		if w := f.Rocket().Water; w == nil { // it flies on a motor, and the chamber is unfinished
			return nil
		} else if w.Tube == nil { // there was no room for one
			require.Error(t, err)
			return nil
		}
		if err != nil { // nothing else would guide the rocket
			require.Contains(t, err.Error(), "rail")
			return nil
		}
		require.Nil(t, g.Rocket().Water.Tube)
		return g
	}
	inputs := Inputs(f.Rocket())
	in := inputs[rapid.IntRange(0, len(inputs)-1).Draw(t, "input")]
	if rapid.IntRange(0, 4).Draw(t, "reset") == 0 {
		g, err := f.Reset(in.Name)
		if err != nil {
			return nil
		}
		require.False(t, g.Given(in.Name) && in.Kind != TextKind, in.Name)
		return g
	}
	value := anyValue(t, in)
	r := f.Rocket()
	setErr := in.SetText(r, value)
	g, err := f.Set(in.Name, value)
	if setErr != nil {
		require.Error(t, err)
		return nil
	}
	if r.Validate() != nil {
		require.Error(t, err)
		return nil
	}
	if err != nil { // what a rocket cannot tell: two canopies of one name, half a place, what a file holds
		require.True(t, in.Name == "field.boundary" || in.Name == "site.latitude" || in.Name == "site.longitude" || strings.HasSuffix(in.Name, ".name"), "%s: %v", in.Name, err)
		return nil
	}
	want := &File{rd: &reading{rocket: r}}
	if in.Name != "water.pressure" { // psi rounds in the last place
		sameRocket(t, want, g)
	}
	untouched(t, in.Name, f, g)
	return g
}

// addedAndBack adds a part, and holds that taking it out again leaves what was.
func addedAndBack(t *rapid.T, f *File, add func() (*File, string, error), remove func(*File, string) (*File, error)) *File {
	g, name, err := add()
	if err != nil {
		return nil
	}
	back, err := remove(g, name)
	require.NoError(t, err, "%s", g.Text())
	sameRocket(t, f, back)
	return g
}

// anyValue draws a value that is mostly good.
func anyValue(t *rapid.T, in Input) string {
	switch in.Kind {
	case NumberKind:
		v := in.Min + rapid.Float64Range(0, 1).Draw(t, "share")*(in.Max-in.Min)
		return quantity.Format(v, in.Unit, rapid.IntRange(1, 6).Draw(t, "digits"))
	case ChoiceKind:
		return rapid.SampledFrom(in.Choices).Draw(t, "choice")
	case RuleKind:
		return rapid.SampledFrom([]string{"apogee + 2 s", "launch + 9 s", "ejection", "falling through 300 ft", "burnout + 1500 ms"}).Draw(t, "rule")
	}
	return rapid.SampledFrom([]string{"main", "second", "0.45", `[[0, 0.4], [1, 0.6]]`, `["6 s"]`, `it's "it"`}).Draw(t, "text")
}

// untouched holds that an edit of a value that is there changes one stretch of
// the text, no longer than the old and the new value, and one of a value that
// is not there takes nothing away.
func untouched(t *rapid.T, name string, f, g *File) {
	old, new := f.rd.doc.text, g.rd.doc.text
	front := 0
	for front < len(old) && front < len(new) && old[front] == new[front] {
		front++
	}
	back := 0
	for back < len(old)-front && back < len(new)-front && old[len(old)-1-back] == new[len(new)-1-back] {
		back++
	}
	taken := old[front : len(old)-back]
	if at, ok := f.rd.where[name]; ok && at.node.kind != tableNode {
		require.LessOrEqual(t, len(taken), at.node.value.end-at.node.value.start)
		require.GreaterOrEqual(t, front, at.node.value.start)
		return
	}
	_, row, _ := resolve(f.rd.rocket, name)
	if row.instead == "" || !f.Given(strings.TrimSuffix(name, row.key)+row.instead) {
		require.Empty(t, string(taken), name)
	}
}
