package logfile

import (
	"bytes"
	"unicode/utf8"

	"golang.org/x/text/encoding"
	"golang.org/x/text/encoding/charmap"
	"golang.org/x/text/encoding/unicode"
	"golang.org/x/text/transform"

	"ullage/sim/fault"
)

// The encodings, as people are told of them.
const (
	inUTF8   = "UTF-8"
	inUTF16  = "UTF-16"
	inLatin1 = "Latin-1"
)

// sampled is how much of a text is looked at to tell its encoding.
const sampled = 1 << 16

// decode makes UTF-8 of a text, without a mark at its beginning, and tells what it was.
// What is no text at all is a fault.
func decode(text []byte) ([]byte, string, *fault.Fault) {
	head := text[:min(len(text), sampled)]
	switch {
	case bytes.HasPrefix(head, []byte("\xef\xbb\xbf")):
		return text[3:], inUTF8, nil
	case bytes.HasPrefix(head, []byte("\xff\xfe")), bytes.HasPrefix(head, []byte("\xfe\xff")):
		return through(text, unicode.UTF16(unicode.LittleEndian, unicode.UseBOM), inUTF16)
	}
	if odd, even := zeros(head, 1), zeros(head, 0); odd+even > 0 {
		switch half := len(head) / 2; {
		case odd > half*8/10 && even < half/10:
			return through(text, unicode.UTF16(unicode.LittleEndian, unicode.IgnoreBOM), inUTF16)
		case even > half*8/10 && odd < half/10:
			return through(text, unicode.UTF16(unicode.BigEndian, unicode.IgnoreBOM), inUTF16)
		}
	}
	if notText(head) {
		return nil, "", &fault.Fault{Problem: "is no text but bytes of another kind",
			Remedy: "let the recorder's own program export it as a table of text, such as CSV"}
	}
	if !utf8.Valid(text) {
		return through(text, charmap.Windows1252, inLatin1) // Latin-1 and more
	}
	return text, inUTF8, nil
}

func through(text []byte, e encoding.Encoding, name string) ([]byte, string, *fault.Fault) {
	out, _, err := transform.Bytes(e.NewDecoder(), text)
	if err != nil || notText(out[:min(len(out), sampled)]) {
		return nil, "", &fault.Fault{Problem: "cannot be read as " + name, Remedy: "save it as UTF-8 text"}
	}
	return out, name, nil
}

// zeros counts those at every second place.
func zeros(b []byte, from int) int {
	n := 0
	for i := from; i < len(b); i += 2 {
		if b[i] == 0 {
			n++
		}
	}
	return n
}

// notText tells whether bytes are no text: more than one in a hundred is a control
// character that no table has.
func notText(b []byte) bool {
	n := 0
	for _, c := range b {
		if c < ' ' && c != '\t' && c != '\n' && c != '\r' && c != '\f' && c != '\v' {
			n++
		}
	}
	return n > len(b)/100
}
