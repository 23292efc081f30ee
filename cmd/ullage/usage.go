package main

import (
	"regexp"
	"strings"

	"github.com/alecthomas/kong"
)

// usage is what the parser of the command line finds wrong, by its wording, and what the
// program says of it: $1 and $2 are parts of the first.
var usage = []struct{ found, says string }{
	{`^expected "?([^" ]+)( \.\.\.)?"?.*$`, `$1 is missing`},
	{`^unexpected argument (.*)$`, `$1 is one argument too many`},
	{`^unexpected flag argument (.*)$`, `$1 is no value here`},
	{`^unknown flag (\S+), did you mean one of (.*)\?$`, `there is no option $1; is it one of $2?`},
	{`^unknown flag (\S+), did you mean (.*)\?$`, `there is no option $1; is it $2?`},
	{`^unknown flag (\S+)$`, `there is no option $1`},
	{`^flag (\S+) applies to the default command.*$`, `$1 comes before the command; put it behind`},
	{`^(\S+) and (\S+) can't be used together$`, `$1 and $2 exclude each other; give one of them`},
	{`^missing flags: (.*)$`, `$1 is missing`},
	{`^(\S+) must be one of (.*) but got (.*)$`, `$1 $3: give one of $2`},
	{`^(\S+): expected .* but got "EOL".*$`, `$1 needs a value`},
	{`^(\S+): expected .* but got (\S+) .*; perhaps try (.*)\?$`, `$1 needs a value, and $2 looks like an option; $3 is how to give it`},
	{`^(\S+): missing value, expecting .*$`, `$1 needs a value`},
	{`^(\S+): bool value must be .* but got (.*)$`, `$1 takes no value, and $2 was given`},
	{`^(\S+): expected (?:an|a valid \d+ bit) u?int but got ("[^"]*").*$`, `$1 $2: a whole number is needed`},
	{`^(\S+): expected a float but got ("[^"]*").*$`, `$1 $2: a number is needed`},
}

// usageSays is a fault of the command line in the program's words.
func usageSays(err error) string {
	text := regexp.MustCompile(`<[^>]+>`).ReplaceAllStringFunc(err.Error(), func(name string) string {
		return strings.ToUpper(strings.Trim(name, "<>")) // as help has the names of arguments
	})
	for _, u := range usage {
		found := regexp.MustCompile(u.found)
		m := found.FindStringSubmatchIndex(text)
		if m == nil {
			continue
		}
		says := string(found.ExpandString(nil, u.says, text, m))
		if strings.HasSuffix(u.says, "one of $2") || strings.HasSuffix(u.says, "$2?") {
			says = strings.NewReplacer(`","`, ", ", `"`, "").Replace(says)
		}
		return says
	}
	return text
}

// usageError is a fault of the command line with where to learn more.
func usageError(parser *kong.Kong, args []string, err error) error {
	command := "ullage"
	if len(args) > 0 && !strings.HasPrefix(args[0], "-") {
		switch {
		case isCommand(parser, args[0]):
			command += " " + args[0]
		case missing(args[0]):
			return noSuchCommand(args[0])
		}
	}
	return badInput("%s\n%s --help shows how it is used", usageSays(err), command)
}
