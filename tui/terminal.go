package tui

import (
	"bytes"
	"fmt"
	"os"
	"strconv"
	"strings"

	"ullage/tui/draw"
)

// backgroundMsg tells the terminal's background, once the terminal has said it.
type backgroundMsg draw.Background

// askBackground is the question for the background colour (OSC 11, from xterm).
// A terminal that does not know it stays silent; nothing waits for the answer.
const askBackground = "\x1b]11;?\x1b\\"

// answerHead begins the answer, which ends with BEL or ESC \.
var answerHead = []byte("\x1b]11;")

// longestAnswer bounds what is taken for an answer.
const longestAnswer = 64

// guessBackground is what the environment tells of the background: COLORFGBG,
// which some terminals set, ends with the number of its colour.
func guessBackground() draw.Background {
	_, last, ok := cutLast(os.Getenv("COLORFGBG"), ";")
	n, err := strconv.Atoi(last)
	switch {
	case !ok || err != nil || n < 0 || n > 15:
		return draw.AnyBackground
	case n == 7 || n >= 9:
		return draw.LightBackground
	}
	return draw.DarkBackground
}

func cutLast(s, sep string) (before, after string, found bool) {
	if i := strings.LastIndex(s, sep); i >= 0 {
		return s[:i], s[i+len(sep):], true
	}
	return s, "", false
}

// answerFilter takes the terminal's answers out of what is typed, wherever
// they come, and passes everything else on untouched.
type answerFilter struct {
	held  []byte // the beginning of what may be an answer
	found func(draw.Background)
}

// pass is what of p, after what was held back, is typed.
func (f *answerFilter) pass(p []byte) []byte {
	in := append(f.held, p...)
	f.held = nil
	var out []byte
	for len(in) > 0 {
		i := bytes.IndexByte(in, '\x1b')
		if i < 0 {
			return append(out, in...)
		}
		out, in = append(out, in[:i]...), in[i:]
		switch head := in[:min(len(in), len(answerHead))]; {
		case len(head) == 1: // the escape key
			return append(out, in...)
		case !bytes.HasPrefix(answerHead, head):
			out, in = append(out, in[0]), in[1:]
			continue
		case len(head) < len(answerHead):
			f.held = bytes.Clone(in)
			return out
		}
		body, rest, ended := cutAnswer(in[len(answerHead):])
		switch {
		case ended:
			if bg, ok := parseBackground(string(body)); ok {
				f.found(bg)
			}
			in = rest
		case len(in) > longestAnswer:
			out, in = append(out, in[0]), in[1:]
		default:
			f.held = bytes.Clone(in)
			return out
		}
	}
	return out
}

// cutAnswer cuts at the end of an answer.
func cutAnswer(b []byte) (body, rest []byte, ended bool) {
	for i, c := range b {
		switch {
		case c == '\a':
			return b[:i], b[i+1:], true
		case c == '\\' && i > 0 && b[i-1] == '\x1b':
			return b[:i-1], b[i+1:], true
		}
	}
	return nil, b, false
}

// parseBackground reads rgb:RRRR/GGGG/BBBB, one to four hexadecimal digits each.
func parseBackground(s string) (draw.Background, bool) {
	parts := strings.Split(strings.TrimPrefix(s, "rgb:"), "/")
	if len(parts) != 3 || !strings.HasPrefix(s, "rgb:") {
		return draw.AnyBackground, false
	}
	var channel [3]float64
	for i, p := range parts {
		n, err := strconv.ParseUint(p, 16, 16)
		if err != nil || len(p) > 4 {
			return draw.AnyBackground, false
		}
		channel[i] = float64(n) / float64(uint(1)<<(4*len(p))-1)
	}
	// Luma after ITU-R BT.601, of the values as they are.
	if 0.299*channel[0]+0.587*channel[1]+0.114*channel[2] > 0.5 {
		return draw.LightBackground, true
	}
	return draw.DarkBackground, true
}

// terminalInput is a terminal whose answers are filtered out. What a read is
// given may be shorter than what the filter held back: the rest waits.
type terminalInput struct {
	*os.File
	filter answerFilter
	ready  []byte
}

// Read reads what is typed; 0 bytes when all there was is an answer.
func (t *terminalInput) Read(p []byte) (int, error) {
	if len(t.ready) == 0 {
		n, err := t.File.Read(p)
		if n <= 0 || err != nil {
			return n, err //nolint:wrapcheck // a reader passes errors on
		}
		t.ready = t.filter.pass(p[:n])
	}
	n := copy(p, t.ready)
	t.ready = t.ready[n:]
	return n, nil
}

// errNoTerminal says what the screen needs.
var errNoTerminal = fmt.Errorf("the screen needs a terminal; the commands do without: ullage fly FILE")
