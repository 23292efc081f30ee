package main

import (
	"context"
	"io"
	"io/fs"
	"os"
	"path/filepath"
	"regexp"
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"ullage/sim/long"
)

// shellWords splits a line as a shell does whose only quotes are single ones; a comment, a
// pipe and a redirection end it.
func shellWords(line string) []string {
	var out []string
	quoted, open := false, false
	for _, r := range line {
		switch {
		case r == '\'':
			quoted = !quoted
			if !open {
				out, open = append(out, ""), true
			}
		case r == ' ' && !quoted:
			open = false
		case !open && !quoted && strings.ContainsRune("#|<>", r):
			return out
		default:
			if !open {
				out, open = append(out, ""), true
			}
			out[len(out)-1] += string(r)
		}
	}
	return out
}

// tour is the commands that the README shows, without their first word.
func tour(t *testing.T) [][]string {
	text, err := os.ReadFile("../../README.md")
	require.NoError(t, err)
	_, rest, found := strings.Cut(string(text), "## A tour of the commands\n")
	require.True(t, found)
	rest, _, _ = strings.Cut(rest, "\n## ")
	var out [][]string
	for _, line := range strings.Split(rest, "\n") {
		if line, ok := strings.CutPrefix(line, "    ullage "); ok {
			out = append(out, shellWords(line))
		}
	}
	return out
}

// What the README shows works as it stands, one line after the other, and shows every
// command there is.
func TestTourOfTheCommands(t *testing.T) {
	long.Unraced(t)
	lines := tour(t)
	shown := map[string]bool{}
	examples, err := filepath.Abs("../../testdata")
	require.NoError(t, err)
	t.Chdir(t.TempDir())
	for _, name := range []string{"h-trainer.toml", "h-trainer.csv", "wagtail.toml", "logs/one.csv", "logs/stand.csv"} {
		text, err := os.ReadFile(filepath.Join(examples, name))
		require.NoError(t, err)
		require.NoError(t, os.WriteFile(filepath.Base(name), text, 0o600))
	}
	require.NoError(t, os.WriteFile("saturday.csv", []byte("time,wind (m/s)\n10:00,3\n"), 0o600))
	for _, args := range lines {
		shown[args[0]] = true
		want := []int{statusDone}
		switch {
		case args[0] == "heron.toml": // the screen
			want = []int{statusInput}
		case args[0] == "size", slices.Contains(args, "--passing"): // the starter does not state all that a pass takes
			want = []int{statusInput}
		}
		switch args[0] {
		case "check", "card", "checklist":
			want = []int{statusDone, statusCheckFailed}
		}
		if args[0] == "card" || args[0] == "scatter" {
			args = append(args, long.Of([]string{"--flights", "40"}, nil)...)
		}
		got := runWith(context.Background(), strings.NewReader(""), args...)
		assert.Contains(t, want, got.status, "ullage %s\n%s", strings.Join(args, " "), got.err)
	}
	parser, err := newParser(&streams{out: io.Discard, err: io.Discard}, new(commands), func(int) {})
	require.NoError(t, err)
	for _, c := range parser.Model.Children {
		assert.True(t, c.Hidden || shown[c.Name], "the README does not show ullage %s", c.Name)
	}
}

// What help and completion list without the parser is what it has.
func TestEachCommandIsTheParsers(t *testing.T) {
	parser, err := newParser(&streams{out: io.Discard, err: io.Discard}, new(commands), func(int) {})
	require.NoError(t, err)
	var want, got []candidate
	for _, c := range parser.Model.Children {
		if !c.Hidden {
			want = append(want, candidate{c.Name, c.Help})
		}
	}
	eachCommand(func(name, help string) { got = append(got, candidate{name, help}) })
	assert.Equal(t, want, got)
}

// Every example of every help is one that the parser takes.
func TestExamplesOfHelpParse(t *testing.T) {
	long.Unraced(t)
	parser, err := newParser(&streams{out: io.Discard, err: io.Discard}, new(commands), func(int) {})
	require.NoError(t, err)
	for _, c := range parser.Model.Children {
		if c.Hidden {
			continue
		}
		_, examples, found := strings.Cut(c.Detail, "\n\n")
		assert.True(t, found, "%s has no examples", c.Name)
		for _, line := range strings.Split(examples, "\n") {
			line = strings.TrimSuffix(strings.TrimPrefix(line, "source <("), ")")
			args := shellWords(line)
			if !assert.Equal(t, "ullage", args[0], line) {
				continue
			}
			fresh, err := newParser(&streams{out: io.Discard, err: io.Discard}, new(commands), func(int) {})
			require.NoError(t, err)
			_, err = fresh.Parse(args[1:])
			assert.NoError(t, err, line)
		}
	}
}

// DEVELOPERS.md names files and folders that are there.
func TestDevelopersNamesWhatIsThere(t *testing.T) {
	text, err := os.ReadFile("../../DEVELOPERS.md")
	require.NoError(t, err)
	var files []string
	require.NoError(t, filepath.WalkDir("../..", func(path string, d fs.DirEntry, err error) error {
		if err == nil && d.IsDir() && d.Name() == ".git" {
			return fs.SkipDir
		}
		files = append(files, filepath.ToSlash(strings.TrimPrefix(path, filepath.FromSlash("../.."))))
		return err
	}))
	named := regexp.MustCompile("`((?:\\.?[a-z_-]+/)*[a-z_-]+\\.(?:go|md|json|py|toml|csv)|(?:\\.?[a-z_-]+/)+[a-z_-]+)`").FindAllStringSubmatch(string(text), -1)
	require.Greater(t, len(named), 40)
	for _, m := range named {
		assert.True(t, slices.ContainsFunc(files, func(f string) bool { return strings.HasSuffix(f, "/"+m[1]) }), "there is no %s", m[1])
	}
}
