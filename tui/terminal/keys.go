package terminal

import (
	"bytes"
	"io"
	"os"
	"time"
	"unicode/utf8"
)

// patience is how long the rest of a sequence, or of a paste, may take to come. Longer than
// the pauses within what a terminal sends, shorter than a hand.
const patience = 70 * time.Millisecond

// mostPasted bounds what is taken of one paste, bytes.
const mostPasted = 64 << 10

const (
	pasteStart = "\x1b[200~"
	pasteEnd   = "\x1b[201~"
)

// mostHeld bounds what is kept of any other sequence that goes on and on.
const mostHeld = 4 << 10

// longestKey is the longest sequence that can be a key, or the mouse, bytes.
const longestKey = 64

// Keys is what is typed, read in whole characters, sequences and pastes however the
// terminal cuts them, without the terminal's answers. What never ends is given up when
// nothing more has come for some 70 ms: an escape is then the key, a paste what came of it,
// and the beginning of anything else is dropped.
type Keys struct {
	answer func(light bool)
	chunks chan []byte // an empty one: nothing has followed the one before
	err    error       // why there are no more chunks
	held   []byte      // not whole yet
	ready  []byte      // to be read
}

// NewKeys reads keys from a terminal. Answer is told of its background, whether light.
func NewKeys(from io.Reader, answer func(light bool)) *Keys {
	k := &Keys{answer: answer, chunks: make(chan []byte)}
	go k.listen(from)
	return k
}

// listen passes on what is read, and where it pauses. It asks the system for both in one
// thread: however late the program gets to run, what has come by then is no pause.
func (k *Keys) listen(from io.Reader) {
	defer close(k.chunks)
	for {
		buf := make([]byte, 1024)
		n, err := from.Read(buf)
		if n > 0 {
			k.chunks <- buf[:n]
		}
		if err != nil {
			k.err = err
			return
		}
		if f, ok := from.(*os.File); ok && !follows(f, patience) {
			k.chunks <- nil
		}
	}
}

// Read gives what has come whole. It never fills p: its reader takes a full one for a part.
func (k *Keys) Read(p []byte) (int, error) {
	for len(k.ready) == 0 {
		switch chunk, more := <-k.chunks; {
		case !more && len(k.held) == 0:
			return 0, k.err
		case len(chunk) == 0:
			k.ready, k.held = unfinished(k.held), nil
		default:
			k.take(chunk)
		}
	}
	n := cut(k.ready, len(p)-1)
	copy(p, k.ready[:n])
	k.ready = k.ready[n:]
	return n, nil
}

// take adds what came to what is not whole yet.
func (k *Keys) take(chunk []byte) {
	k.held = append(k.held, chunk...)
	var n int
	k.ready, n = k.whole(k.held)
	k.held = bounded(bytes.Clone(k.held[n:]))
}

// bounded is the beginning of a sequence without what is too much of it; its last bytes
// stay, which may begin its end.
func bounded(b []byte) []byte {
	most := mostHeld
	if bytes.HasPrefix(b, []byte(pasteStart)) {
		most = len(pasteStart) + mostPasted
	}
	if len(b) > most+len(pasteEnd) {
		return append(b[:most], b[len(b)-len(pasteEnd):]...)
	}
	return b
}

// whole is what of b has come whole, without answers, and how far that goes.
func (k *Keys) whole(b []byte) (typed []byte, upTo int) {
	for upTo < len(b) {
		n, kind := first(b[upTo:])
		switch token := b[upTo : upTo+n]; {
		case kind == partial:
			return typed, upTo
		case kind == pasted:
			end := len(token) - len(pasteEnd)
			typed = append(typed, token[:min(end, len(pasteStart)+mostPasted)]...)
			typed = append(typed, pasteEnd...)
		case kind == answered:
			if light, ok := background(token); ok {
				k.answer(light)
			}
		case len(token) <= longestKey:
			typed = append(typed, token...)
		}
		upTo += n
	}
	return typed, upTo
}

// unfinished is what is made of a part of which no more comes.
func unfinished(b []byte) []byte {
	switch {
	case bytes.HasPrefix(b, []byte(pasteStart)):
		b = b[:min(len(b), len(pasteStart)+mostPasted)]
		for n := len(pasteEnd) - 1; n > 0; n-- { // of its end, a part
			if bytes.HasSuffix(b, []byte(pasteEnd[:n])) {
				b = b[:len(b)-n]
				break
			}
		}
		return append(b, pasteEnd...)
	case len(b) > 0 && b[0] == '\x1b' && len(b) > 2:
		return nil
	}
	return b // the escape key, alone or with another
}

// kind is what the beginning of a text is.
type kind int

const (
	typed    kind = iota
	partial       // something whose end is not there
	pasted        // a paste with its marks
	answered      // a text that the terminal sends
)

// first is the length and the kind of what a text begins with: a character, a control
// sequence (ECMA-48: CSI, SS3, OSC, DCS and their like), or a paste.
func first(b []byte) (int, kind) {
	if b[0] != '\x1b' {
		if !utf8.FullRune(b) {
			return 0, partial
		}
		_, n := utf8.DecodeRune(b)
		return n, typed
	}
	if len(b) == 1 {
		return 0, partial
	}
	switch b[1] {
	case '\x1b': // the escape key before another sequence
		return 1, typed
	case '[':
		return control(b)
	case 'O':
		if len(b) < 3 {
			return 0, partial
		}
		return 3, typed
	case ']', 'P', '_', '^', 'X':
		return text(b)
	}
	n, kind := first(b[1:])
	return n + 1, kind
}

// control is first for a sequence that begins with CSI.
func control(b []byte) (int, kind) {
	if bytes.HasPrefix(b, []byte(pasteStart)) {
		end := bytes.Index(b, []byte(pasteEnd))
		if end < 0 {
			return 0, partial
		}
		return end + len(pasteEnd), pasted
	}
	for i := 2; i < len(b); i++ {
		switch c := b[i]; {
		case c == 'M' && i == 2: // three bytes of a mouse follow
			return ended(b, 6)
		case c == '[' && i == 2: // a function key of the Linux console
			return ended(b, 4)
		case c >= '@' && c <= '~':
			return i + 1, typed
		case c < ' ' || c > '~': // no such sequence
			return i, typed
		}
	}
	return 0, partial
}

func ended(b []byte, n int) (int, kind) {
	if len(b) < n {
		return 0, partial
	}
	return n, typed
}

// text is first for a sequence that ends with BEL or ESC \.
func text(b []byte) (int, kind) {
	for i := 2; i < len(b); i++ {
		switch {
		case b[i] == '\a':
			return i + 1, answered
		case b[i] == '\\' && b[i-1] == '\x1b' && i > 2:
			return i + 1, answered
		}
	}
	return 0, partial
}

// cut is how much of a text to give to a reader with room for so much: as many whole
// sequences as find room, and of a paste any part.
func cut(b []byte, room int) int {
	if len(b) <= room {
		return len(b)
	}
	at := 0
	for at < len(b) {
		n, _ := first(b[at:])
		if at+n > room || n == 0 {
			if at == 0 {
				return room
			}
			return at
		}
		at += n
	}
	return at
}
