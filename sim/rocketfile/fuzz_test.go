package rocketfile

import (
	"bytes"
	"errors"
	"math"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/pelletier/go-toml/v2"

	"ullage/sim/fault"
	"ullage/sim/quantity"
)

// seeds are texts of all sorts to start from.
func seeds(f *testing.F) []string {
	texts := []string{plain, whole, shapely, finned, vesselled,
		base + "water = { " + waterKeys + " }\nchamber = { material = 'own', wall = '1 mm', ply = [ { cloth = '1 g/m2' } ], forward = { shape = 'flat' } }\n", "", "\xef\xbb\xbf" + plain, strings.ReplaceAll(shapely, "\n", "\r\n"),
		strings.NewReplacer("[nose]", "nose", "[[fins]]", "fins").Replace(finned),
		base + "water = { " + waterKeys + " }\nnose = { shape = 'conical', length = '1 m' }\nsection = [ { length = '1 mm' } ]\nfins = [ ]\npart = [ { name = 'x', mass = '1 g', position = '1 m' } ]\n",
		base + "water = { " + waterKeys + " }\ncanopy = [ { area = \"1 m2\", deploy = { water = 'apogee' } } ]\n",
		base + "water." + strings.ReplaceAll(waterKeys, ", ", "\nwater.") + "\nwater.tube = { length = \"0.6 m\", outer = \"12 mm\", inner = \"9 mm\" }\n",
		"a = 1 kg\n[b\n", "a = [[[[", "[[a]]\n[a.b]\n[[a]]\n", "a = \"\\ud800\"\n", "body = nan\nwater = []\n"}
	paths, _ := filepath.Glob("../../testdata/*.toml")
	for _, path := range paths {
		if text, err := os.ReadFile(path); err == nil {
			texts = append(texts, string(text))
		}
	}
	return texts
}

// fuzzed reads a text; its curve is always there.
func fuzzed(text []byte) (*File, error) {
	disk := newFiles(func(string) ([]byte, error) { return []byte(curve), nil })
	return load("x.toml", ".", text, disk, false)
}

// Whatever the bytes, reading ends without a panic, and what is accepted is
// TOML, is a rocket in range, and reads the same again.
func FuzzRead(f *testing.F) {
	for _, text := range seeds(f) {
		f.Add([]byte(text))
	}
	f.Fuzz(func(t *testing.T, text []byte) {
		file, err := fuzzed(bytes.Clone(text))
		if err != nil {
			var faults fault.List
			if !errors.As(err, &faults) || len(faults) == 0 || len(faults) > maxFaults+1 {
				t.Fatalf("not faults: %v", err)
			}
			for _, line := range strings.Split(err.Error(), "\n") {
				if strings.ContainsFunc(line, func(r rune) bool { return r < ' ' || r == 0x7f }) {
					t.Fatalf("control characters in %q", line)
				}
			}
			if strings.Count(err.Error(), "\n") != len(faults)-1 {
				t.Fatalf("not one line a fault: %q", err)
			}
			return
		}
		if !bytes.Equal(file.Text(), text) {
			t.Fatal("the text was changed")
		}
		var tree map[string]any
		if err := toml.Unmarshal(bytes.TrimPrefix(text, byteOrderMark), &tree); err != nil {
			t.Fatalf("accepted, but not TOML: %v", err)
		}
		if err := file.Rocket().Validate(); err != nil {
			t.Fatalf("accepted, but not a rocket: %v", err)
		}
		again, err := fuzzed(file.Text())
		if err != nil {
			t.Fatal(err)
		}
		sameRocket(t, file, again)
		for _, in := range Inputs(file.Rocket()) {
			if v, _ := in.Get(file.Rocket()); math.IsNaN(v) || math.IsInf(v, 0) {
				t.Fatalf("%s is %v", in.Name, v)
			}
		}
	})
}

// Whatever the edit of whatever file, it is refused or makes a file that reads
// the same again and keeps the comments.
func FuzzEdit(f *testing.F) {
	for i, text := range seeds(f) {
		f.Add(text, uint(i*7), "0.4", uint(i))
		f.Add(text, uint(i*5+1), "apogee - 2 s", uint(0))
		for act := uint(8); act < 16; act++ {
			f.Add(text, uint(0), "1", act)
		}
	}
	f.Fuzz(func(t *testing.T, text string, which uint, value string, act uint) {
		file, err := fuzzed([]byte(text))
		if err != nil {
			return
		}
		inputs := Inputs(file.Rocket())
		name := inputs[which%uint(len(inputs))].Name
		var made *File
		switch act % 16 {
		case 0:
			made, err = file.Set(name, value)
		case 1:
			made, err = file.Reset(name)
		case 2:
			made, _, err = file.AddCanopy()
		case 3:
			made, err = file.AddTube()
		case 4:
			made, err = file.RemoveTube()
		case 5:
			made, err = file.RemoveCanopy(strings.TrimPrefix(value, "canopy."))
		case 6:
			made, err = file.SetIn(name, value, file.Unit(name))
		case 7:
			made, err = file.Set(value, "1 m")
		case 8:
			made, err = file.AddShape()
		case 9:
			made, err = file.RemoveShape()
		case 10:
			made, _, err = file.AddFins()
		case 11:
			made, err = file.RemoveFins(value)
		case 12:
			made, _, err = file.AddSection()
		case 13:
			made, err = file.RemoveSection(value)
		case 14:
			made, _, err = file.AddPart()
		case 15:
			made, err = file.RemovePart(value)
		}
		if err != nil {
			var faults fault.List
			if !errors.As(err, &faults) {
				t.Fatalf("not faults: %v", err)
			}
			for _, bad := range faults {
				if bad.Problem == "" || bad.Remedy == "" {
					t.Fatalf("says too little: %v", err)
				}
			}
			return
		}
		again, err := fuzzed(made.Text())
		if err != nil {
			t.Fatalf("an edit made a file with faults: %v\n%s", err, made.Text())
		}
		sameRocket(t, made, again)
		if (act%16 == 0 || act%16 == 6 || act%16 == 7) && !strings.Contains(value, "#") { // a name may have the sign
			if a, b := comments(text), comments(string(made.Text())); a != b {
				t.Fatalf("comments were %d, are %d:\n%s", a, b, made.Text())
			}
		}
	})
}

// comments counts what may be a comment: the same number before and after, as
// no value that an edit writes holds the sign.
func comments(text string) int { return strings.Count(text, "#") }

// Whatever is typed, Set and SetText of the rocket agree on it.
func FuzzTyped(f *testing.F) {
	file, err := fuzzed([]byte(shapely))
	if err != nil {
		f.Fatal(err)
	}
	inputs := Inputs(file.Rocket())
	for i := range inputs {
		f.Add(uint(i), "9 bar")
		f.Add(uint(i), inputs[i].Text(file.Rocket()))
	}
	f.Fuzz(func(t *testing.T, which uint, value string) {
		in := inputs[which%uint(len(inputs))]
		r := file.Rocket()
		setErr := in.SetText(r, value)
		made, err := file.Set(in.Name, value)
		if err == nil && setErr != nil {
			t.Fatalf("%s = %q: the text takes it, the rocket does not: %v", in.Name, value, setErr)
		}
		if err != nil && setErr == nil && r.Validate() == nil && !strings.HasSuffix(in.Name, ".name") && in.Name != "field.boundary" {
			t.Fatalf("%s = %q: the rocket takes it, the text does not: %v", in.Name, value, err)
		}
		if err != nil {
			return
		}
		if v, given := in.Get(made.Rocket()); given {
			want, _ := in.Get(r)
			if in.Kind == NumberKind && math.Abs(v-want) > 1e-14*math.Max(math.Abs(want), 300) {
				t.Fatalf("%s = %q: %v in the text, %v in the rocket", in.Name, value, v, want)
			}
			if in.Kind == NumberKind && quantity.Exact(v, in.Unit) == "" {
				t.Fatal("no text")
			}
		}
	})
}
