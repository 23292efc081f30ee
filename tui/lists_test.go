package tui

import (
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"ullage/sim/long"
	"ullage/sim/rocketfile"
	"ullage/tui/view"
)

// stated is what a file states, by name, as written.
func stated(f *rocketfile.File) map[string]string {
	r := f.Described()
	out := map[string]string{}
	for _, in := range f.Inputs() {
		if f.Given(in.Name) && in.Name != "power" && !strings.Contains(in.Name, ".deploy.") { // these go with their drive
			out[in.Name] = in.Text(r)
		}
	}
	for _, s := range f.Spreads() {
		out[spreadPrefix+s.Input.Name] = rocketfile.SpreadText(s.SD, f.Unit(s.Input.Name), s.Input)
	}
	return out
}

// without is what is stated but for a part and its uncertainties.
func without(all map[string]string, part string) map[string]string {
	out := map[string]string{}
	for name, text := range all {
		if !strings.HasPrefix(strings.TrimPrefix(name, spreadPrefix), part) {
			out[name] = text
		}
	}
	return out
}

// Whatever is added, moved and taken out, one after the other, leaves everything else as it was stated, in a text that
// reads back to the same rocket, and undoing all of it gives the bytes of the start.
func TestAnyPartsComeAndGo(t *testing.T) {
	heron, err := rocketfile.OpenDraft("../testdata/heron.toml")
	require.NoError(t, err)
	long.Check(t, 12, func(t *rapid.T) {
		h := newHistory(heron)
		open := func(_ *step, text string) (*rocketfile.File, error) { return heron.WithText([]byte(text)) }
		edits := rapid.IntRange(1, 7).Draw(t, "edits")
		for range edits {
			f, before := h.file, stated(h.file)
			var g *rocketfile.File
			switch rapid.SampledFrom([]string{"add", "add", "move", "remove"}).Draw(t, "what") {
			case "add":
				all := f.Additions()
				path := all[rapid.IntRange(0, len(all)-1).Draw(t, "part")].Path
				made, input, err := f.Add(path)
				require.NoError(t, err, "%s to\n%s", path, f.Text())
				_, err = made.Find(input)
				require.NoError(t, err, path)
				gone := path + "."
				if path == "wind.layer" {
					gone = "wind." // the first takes the place of speed and from
				}
				left := without(stated(made), gone)
				if f.Described().Shape == nil { // the first word of a shape makes a whole one
					require.Subset(t, left, without(before, gone), path)
				} else {
					require.Equal(t, without(before, gone), left, path)
				}
				g = made
			case "move":
				input := anyInput(t, f)
				by := rapid.SampledFrom([]int{-1, 1}).Draw(t, "by")
				made, err := f.Move(input, by)
				if err != nil {
					continue
				}
				after := stated(made)
				if strings.HasPrefix(input, "wind.layer") {
					require.ElementsMatch(t, texts(before), texts(after))
				} else {
					require.Equal(t, before, after, "%s by %d", input, by)
				}
				back, err := made.Move(renumbered(input, by), -by)
				require.NoError(t, err)
				require.Equal(t, string(f.Text()), string(back.Text()), "%s there and back", input)
				g = made
			case "remove":
				input := anyInput(t, f)
				part := f.PartOf(input)
				made, err := f.Remove(input)
				if part == "" {
					require.Error(t, err)
				}
				if err != nil {
					continue
				}
				if !strings.HasPrefix(input, "wind.layer") {
					gone := input[:strings.LastIndex(input, ".")+1]
					if strings.HasPrefix(input, "canopy.") {
						gone = strings.Join(strings.Split(input, ".")[:2], ".") + "."
					}
					left := without(stated(made), gone)
					want := without(before, gone)
					if gone != "nose." { // the whole shape
						require.Equal(t, want, left, input)
					}
				}
				g = made
			}
			if string(g.Text()) == string(f.Text()) {
				continue
			}
			again, err := rocketfile.ReadDraft("heron.toml", "../testdata", g.Text())
			require.NoError(t, err, "%s", g.Text())
			require.Equal(t, stated(g), stated(again))
			h = h.done(view.Edit{}, g, heron)
		}
		for h.past != nil {
			var err error
			h, _, err = h.undone(open)
			require.NoError(t, err)
		}
		require.Equal(t, string(heron.Text()), string(h.file.Text()))
	})
}

func anyInput(t *rapid.T, f *rocketfile.File) string {
	all := f.Inputs()
	return all[rapid.IntRange(0, len(all)-1).Draw(t, "input")].Name
}

func texts(all map[string]string) []string {
	var out []string
	for _, text := range all {
		out = append(out, text)
	}
	slices.Sort(out)
	return out
}

// renumbered is the name of an input of a layer that has moved.
func renumbered(input string, by int) string {
	rest, ok := strings.CutPrefix(input, "wind.layer.")
	if !ok {
		return input
	}
	number, key, _ := strings.Cut(rest, ".")
	return "wind.layer." + string(rune(number[0]+byte(by))) + "." + key
}
