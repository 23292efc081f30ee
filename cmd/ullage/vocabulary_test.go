package main

import (
	"context"
	"os"
	"path/filepath"
	"regexp"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"ullage/sim/long"
)

// formerly are words that no face says any more, with the one that it says instead.
var formerly = map[string]string{
	`gas out`:                      "end of thrust",
	`tube end`:                     "tube exit",
	`rail (ends\b|end at)`:         "rail exit",
	`as the guide ends`:            "at rail exit",
	`(before|after|since) the top`: "apogee",
	`\btop at\b`:                   "apogee",
	`ready to fly`:                 "empty",
	`pressure cent(re|er)`:         "centre of pressure",
	`counted on`:                   "burst, estimated, or burst, measured",
	`\bsteep\b`:                    "far over, or high",
	`\bleans?\b|\bleaning\b`:       "tilt",
	`\[mount\]`:                    "[recovery]",
	`gate\b`:                       "check",
	`\bsafe\b`:                     "nothing: it is never said",
}

// correlation says of what kind it is.
var correlation = regexp.MustCompile(`(?i)(\S+)\s+correlation`)

// TestOneVocabulary reads what every command prints of every example, every help text and
// every screen that is kept.
func TestOneVocabulary(t *testing.T) {
	long.Unraced(t)
	texts := map[string]string{}
	for _, file := range []string{"heron", "tube", "bottle", "drogue-main", "mass-list"} {
		name := filepath.Join("..", "..", "testdata", file+".toml")
		for _, command := range [][]string{
			{"fly"}, {"airframe"}, {"check"}, {"proof"}, {"card"}, {"opening"}, {"inputs"}, {"results"}, {"best", "body.mass"},
			{"sweep", "rail.tilt=0deg,3deg"}, {"scatter", "--flights", "50"}, {"plot", "-o", "-"},
		} {
			args := append([]string{command[0], name}, command[1:]...)
			got := runWith(context.Background(), strings.NewReader(""), args...)
			texts[strings.Join(args, " ")] = got.out + got.err
		}
	}
	for _, command := range []string{"fly", "airframe", "check", "proof", "card", "sweep", "best", "scatter", "motors", "opening", "plot", "new", "inputs", "results"} {
		texts[command+" --help"] = runWith(context.Background(), strings.NewReader(""), command, "--help").out
	}
	goldens, err := filepath.Glob(filepath.Join("..", "..", "tui", "testdata", "*.golden"))
	require.NoError(t, err)
	require.NotEmpty(t, goldens)
	for _, name := range goldens {
		b, err := os.ReadFile(name)
		require.NoError(t, err)
		texts[filepath.Base(name)] = string(b)
	}
	for word, instead := range formerly {
		former := regexp.MustCompile(`(?i)` + word)
		for where, text := range texts {
			if at := former.FindStringIndex(text); at != nil {
				t.Errorf("%s says %q, not %s: …%s…", where, text[at[0]:at[1]], instead, around(text, at[0]))
			}
		}
	}
	for where, text := range texts {
		for _, m := range correlation.FindAllStringSubmatch(text, -1) {
			assert.Equal(t, "rank", strings.ToLower(strings.Trim(m[1], "(")), where)
		}
	}
}

// around is a text's neighbourhood on one line.
func around(text string, at int) string {
	const reach = 30
	part := text[max(0, at-reach):min(len(text), at+reach)]
	return strings.ToValidUTF8(strings.ReplaceAll(part, "\n", " / "), "")
}
