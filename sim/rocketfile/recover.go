package rocketfile

import (
	"bytes"
	"errors"
	"strings"

	"github.com/pelletier/go-toml/v2/unstable"
)

// recover reports what stopped the parser. It tells whether reading can go on
// with the next line, which holds when the line of one key is to blame.
func (b *builder) recover(err error) bool {
	offset := len(b.doc.text) - 1
	problem := err.Error()
	var parse *unstable.ParserError
	if errors.As(err, &parse) {
		problem = parse.Message
		if len(parse.Highlight) > 0 {
			offset = b.base + int(b.parser.Range(parse.Highlight).Offset)
		}
	}
	start := b.stopped()
	end := b.doc.lineEnd(start)
	line := strings.TrimSpace(string(b.doc.text[start:end]))
	// An error further down than where the expression began means an open
	// string or bracket, and a header decides what the keys below it mean:
	// reading on would call good lines faulty.
	if offset < start || offset >= end || strings.HasPrefix(line, "[") {
		b.doc.partial = true
		b.report(min(offset, start), "", excerpt(line), problem, "mend it; below this line nothing was checked")
		return false
	}
	key, value, ok := strings.Cut(line, "=")
	key = strings.TrimSpace(key)
	if !ok || !bareKey(key) {
		b.doc.partial = true
		b.report(start, "", excerpt(line), problem, `write it as key = value`)
	} else {
		b.brokenKey(key, value, start, problem)
	}
	b.doc.blocks[len(b.doc.blocks)-1].end = end
	b.base = end
	return end < len(b.doc.text)
}

// stopped is where the line starts on which the parser gave up on an
// expression: the first that is not blank and no comment after the last key.
func (b *builder) stopped() int {
	at := max(b.base, b.doc.blocks[len(b.doc.blocks)-1].end)
	for at < len(b.doc.text) {
		end := b.doc.lineEnd(at)
		line := bytes.TrimSpace(b.doc.text[at:end])
		if len(line) > 0 && line[0] != '#' || end == len(b.doc.text) {
			break
		}
		at = end
	}
	return at
}

// brokenKey reports a key whose value cannot be read, and remembers that the
// key is there.
func (b *builder) brokenKey(key, value string, start int, problem string) {
	value = withoutComment(value)
	dotted := key
	if path := b.table.path(); path != "" {
		dotted = path + "." + key
	}
	if !strings.Contains(key, ".") && b.table.member(key) == nil {
		b.table.add(&node{kind: brokenNode, name: key, key: span{start, start + 1}})
	} else {
		b.doc.partial = true
	}
	problem, remedy := unreadable(value, problem)
	b.report(start, dotted, excerpt(value), problem, remedy)
}

// bareKey tells a key, dotted or not, that needs no quotes.
func bareKey(key string) bool {
	const letters = "abcdefghijklmnopqrstuvwxyzABCDEFGHIJKLMNOPQRSTUVWXYZ0123456789_-."
	return key != "" && strings.Trim(key, letters) == ""
}

// withoutComment cuts the comment off a value on one line.
func withoutComment(value string) string {
	var quote rune
	for i, r := range value {
		switch {
		case quote != 0:
			if r == quote {
				quote = 0
			}
		case r == '"' || r == '\'':
			quote = r
		case r == '#':
			return strings.TrimSpace(value[:i])
		}
	}
	return strings.TrimSpace(value)
}

// unreadable says in the words of a rocket file why TOML has no such value.
func unreadable(value, problem string) (string, string) {
	if value == "" {
		return "no value", "give one, or take the line out"
	}
	digits := strings.TrimLeft(value, "+-")
	number := digits != "" && strings.IndexByte(".0123456789", digits[0]) >= 0
	switch word := strings.ToLower(digits); {
	case word == "nan", word == "inf", word == "infinity":
		return "not a finite number", "give a finite value"
	case value[0] == '"' || value[0] == '\'':
		if strings.Contains(problem, "new lines") || strings.Contains(problem, "unterminated") {
			problem = "a quote that is not closed"
		}
		return problem, "end the text with the quote it began with, on the same line"
	case strings.ContainsAny(value, "\"'\\[]{}="):
		return problem, "write it as key = value"
	case number && strings.Trim(digits, ".0123456789") != "":
		return "a quantity without quotes", `write "` + excerpt(value) + `"`
	case number && digits[0] == '.':
		return "a number without a digit before its point", "write 0" + digits
	case number:
		return problem, "write a plain number, such as 0.5"
	}
	return "a text without quotes", `write "` + excerpt(value) + `"`
}
