package main

import (
	"context"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// What is wrong with a command line is told in the program's words, not the parser's.
func TestUsage(t *testing.T) {
	for line, says := range map[string]string{
		"fly":                            "FILE is missing",
		"fly a b":                        "b is one argument too many",
		"fly a --foo":                    "there is no option --foo",
		"fly a --uints us":               "there is no option --uints; is it --units?",
		"fly a -z":                       "there is no option -z; is it one of -h, -o?",
		"fly a --units":                  "--units needs a value",
		"fly a -o":                       "--output needs a value",
		"fly a --units xx":               "--units xx: give one of metric, us",
		"fly a --json --csv":             "--json and --csv exclude each other; give one of them",
		"fly a --every 3":                `--every: "3": has no unit; write "3 s"`,
		"fly a --json=5":                 `--json takes no value, and "5" was given`,
		"best ../../testdata/heron.toml": "name an input to turn, such as water.fill, or motors to look among",
		"sweep a":                        "NAME=FROM..TO/POINTS is missing",
		"completion":                     "SHELL is missing",
		"completion foo":                 "SHELL foo: give one of bash, zsh, fish",
		"scatter a --flights x":          `--flights "x": a whole number is needed`,
		"scatter a --seed -3":            `--seed needs a value, and "-3" looks like an option; --seed="-3" is how to give it`,
		"airframe a --margin x":          `--margin "x": a number is needed`,
		"--units us fly a":               "--units comes before the command; put it behind",
		"screen a b":                     "b is one argument too many",
	} {
		got := runWith(context.Background(), strings.NewReader(""), strings.Fields(line)...)
		assert.Equal(t, statusInput, got.status, line)
		first, _, _ := strings.Cut(got.err, "\n")
		assert.Equal(t, "ullage: "+says, first, line)
		assert.Contains(t, got.err, "--help shows how it is used", line)
	}
	help := runWith(context.Background(), strings.NewReader(""), "fly", "--help")
	assert.NotContains(t, help.out, "context-sensitive")
}

// What a name or a file holds cannot move the terminal's cursor from a message, nor turn
// its words round.
func TestMessagesAreEscaped(t *testing.T) {
	dir := t.TempDir()
	file := filepath.Join(dir, "a.toml")
	require.NoError(t, os.WriteFile(file, []byte("name = \"x\x1b[31m\"\nfoo\x1b[1m = 3\n"), 0o600))
	for _, args := range [][]string{
		{"fly", "no\x1b[31m.toml"}, {"fly", "no\u009b31m.toml"}, {"fl\x1b[31my"}, {"fly", file}, {"fly", "\u202elmot.a"},
		{"fly", "a", "--sh\x1bow"}, {"fly", "a.toml", "--set", "a\x07=\x1b[31m3"}, {"sweep", file, "a\x1b=1,2"}, {"new", dir + "/no\x1b/a.toml"},
	} {
		got := runWith(context.Background(), strings.NewReader(""), args...)
		assert.NotEqual(t, statusDone, got.status, args)
		assert.False(t, strings.ContainsFunc(got.err, control), "%q", got.err)
	}
	got := runWith(context.Background(), strings.NewReader(""), "fly", "no\x1b[31m.toml")
	assert.True(t, strings.HasPrefix(got.err, `no\x1b[31m.toml: there is no such file`), got.err)
	assert.Equal(t, `ü\x07\xff\u009b`+"\n", escaped("ü\a\xff\u009b\n"))
}

// A variable of the shell that holds nothing is refused wherever it stands: no command takes it for the rocket built in, for
// standard output or for an option that was not given.
func TestBlankArguments(t *testing.T) {
	for _, args := range [][]string{
		{""}, {"", "fly"}, {"inputs", ""}, {"results", " "}, {"fly", ""}, {"fly", "a.toml", "-o", ""}, {"fly", "a.toml", "--output="}, {"new", ""},
		{"day", "a.toml", "--forecast", ""}, {"motors", "a.toml", ""}, {"compare", "a.toml", ""}, {"a.toml", "--log", ""}, {"record", "a.toml", "flight", "--log="},
	} {
		got := runWith(context.Background(), strings.NewReader(""), args...)
		assert.Equal(t, statusInput, got.status, args)
		assert.Regexp(t, `^ullage: (the first argument|the argument after \S+|--\w+=) is blank; give [^\n]+\n$`, got.err, args)
		assert.Empty(t, got.out, args)
	}
}

// A name that is not UTF-8 is refused as such, by command and screen.
func TestNamesThatAreNotUTF8(t *testing.T) {
	for _, args := range [][]string{{"fly", "a\xff.toml"}, {"a\xff.toml"}, {"new", "\xe9.toml"}, {"fly", "a.toml", "-o", "\xff"}} {
		got := runWith(context.Background(), strings.NewReader(""), args...)
		assert.Equal(t, statusInput, got.status, args)
		assert.Contains(t, got.err, "is not UTF-8", args)
		assert.Contains(t, got.err, `\x`, args)
	}
}
