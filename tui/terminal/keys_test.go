package terminal

import (
	"io"
	"os"
	"strings"
	"testing"
	"time"

	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"
)

// keyboard is a terminal that a test types on.
type keyboard struct {
	w     *os.File
	read  chan string
	light []bool
}

func newKeyboard(t *testing.T, room int) *keyboard {
	r, w, err := os.Pipe()
	require.NoError(t, err)
	k := &keyboard{w: w, read: make(chan string, 1000)}
	keys := NewKeys(r, func(light bool) { k.light = append(k.light, light) })
	go func() {
		defer close(k.read)
		p := make([]byte, room)
		for {
			n, err := keys.Read(p)
			if n > 0 {
				k.read <- string(p[:n])
			}
			if err != nil {
				return
			}
		}
	}()
	t.Cleanup(func() { _ = w.Close() })
	return k
}

func (k *keyboard) types(s string) { _, _ = io.WriteString(k.w, s) }

// next is what is read next, and how long that takes.
func (k *keyboard) next(t *testing.T) (string, time.Duration) {
	t.Helper()
	start := time.Now()
	select {
	case s := <-k.read:
		return s, time.Since(start)
	case <-time.After(10 * time.Second):
		require.Fail(t, "nothing is read")
		return "", 0
	}
}

// What comes in two parts is read as one, with the pause of a slow line between them.
func TestKeysJoinWhatWasCut(t *testing.T) {
	for _, c := range [][2]string{
		{"\x1b", "[A"}, {"\x1b[", "A"}, {"\x1b[1;", "2C"}, {"\x1bO", "P"}, {"\xe2", "\x82\xac"}, {"\x1b[[", "A"},
		{"\x1b[<0;1", ";1M"}, {"\x1b[M", " !!"}, {"\x1b[200~a", "b\x1b[201~"}, {"\x1b[200~a\x1b[20", "1~"},
	} {
		for { // again where the machine was too busy to type so fast
			k := newKeyboard(t, 256)
			start := time.Now()
			k.types(c[0])
			time.Sleep(10 * time.Millisecond)
			k.types(c[1])
			inTime := time.Since(start) < patience/2
			if got, _ := k.next(t); inTime {
				require.Equal(t, c[0]+c[1], got)
				break
			}
		}
	}
}

// What never ends is given up, soon: the escape key is one, a paste is what came of it,
// and the rest is dropped, so that none of it is taken for commands.
func TestKeysGiveUp(t *testing.T) {
	for _, c := range []struct{ typed, read string }{
		{"\x1b", "\x1b"}, {"\x1b[", "\x1b["}, {"\x1b[200~9 bar", "\x1b[200~9 bar\x1b[201~"}, {"\x1b[200~9\x1b[20", "\x1b[200~9\x1b[201~"},
		{"\xe2", "\xe2"},
		{"\x1b[1;1;", ""}, {"\x1b[" + strings.Repeat("1;", 5000), ""}, {"\x1b]52;c;" + strings.Repeat("q", 10000), ""}, {"\x1b]11;rgb:qdq", ""}, {"\x1bPqqq", ""}, {"\x1b[200", ""}, {"\x1bO", "\x1bO"},
	} {
		k := newKeyboard(t, 256)
		k.types(c.typed)
		if c.read == "" {
			time.Sleep(2 * patience)
			k.types("x")
			got, _ := k.next(t)
			require.Equal(t, "x", got, "%q", c.typed)
			continue
		}
		got, took := k.next(t)
		require.Equal(t, c.read, got, "%q", c.typed)
		require.Less(t, took, 10*patience, "%q", c.typed) // of a busy machine
	}
	require.Less(t, patience, 100*time.Millisecond)
}

// The terminal's answers are taken out wherever they come, however long, and so is what is
// longer than any key.
func TestKeysTakeAnswers(t *testing.T) {
	const most = mostHeld + 5000
	const answer, bell = "\x1b]11;rgb:ffff/ffff/ffff\x1b\\", "\x1b]11;rgb:0000/0000/0000\a"
	k := newKeyboard(t, 256)
	k.types("ab" + answer + "c\x1b[A" + bell + "\x1b]4;1;rgb:1/1/1\a" +
		"\x1b]52;c;" + strings.Repeat("q", most) + "\x1b\\" + "\x1b[" + strings.Repeat("1;", most) + "u" + "d")
	got := ""
	for !strings.HasSuffix(got, "d") {
		more, _ := k.next(t)
		got += more
	}
	require.Equal(t, "abc\x1b[Ad", got)
	require.Equal(t, []bool{true, false}, k.light)
}

// A paste is bounded, however it comes.
func TestKeysBoundAPaste(t *testing.T) {
	k := newKeyboard(t, 1<<18)
	k.types(pasteStart)
	for range 300 {
		k.types(strings.Repeat("x", 1000))
	}
	k.types(pasteEnd + "q")
	got, _ := k.next(t)
	require.Less(t, len(got), mostPasted+100)
	require.True(t, strings.HasPrefix(got, pasteStart+"xxx"))
	if !strings.HasSuffix(got, "q") {
		more, _ := k.next(t)
		got += more
	}
	require.True(t, strings.HasSuffix(got, "x"+pasteEnd+"q"), "%q", got[len(got)-20:])
}

// However the bytes are cut into reads, what is typed comes through whole and in order, no
// read is full, and none ends within a sequence.
func TestKeysKeepWhatIsTyped(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		tokens := rapid.SliceOfN(rapid.SampledFrom([]string{
			"a", "é", "🚀", "\x1b[A", "\x1b[1;2D", "\x1bOP", "\x1bx", "\x1b[3~", "\r", "\x03", "\x1b[<0;10;10M", "\x1b[200~1\r2\x1b[201~",
		}), 1, 40).Draw(t, "tokens")
		all := strings.Join(tokens, "") + "." // not the escape key at the end
		ends, at := map[int]bool{}, 0
		for _, token := range tokens {
			at += len(token)
			ends[at] = true
		}
		ends[len(all)] = true
		keys := NewKeys(&pieces{all}, func(bool) {})
		var got []byte
		p := make([]byte, 24)
		for {
			n, err := keys.Read(p)
			require.Less(t, n, len(p))
			got = append(got, p[:n]...)
			if err != nil {
				break
			}
			require.True(t, ends[len(got)], "cut at %d of %q", len(got), all)
		}
		require.Equal(t, all, string(got))
	})
}

// pieces gives a text in pieces.
type pieces struct{ left string }

func (s *pieces) Read(p []byte) (int, error) {
	if s.left == "" {
		return 0, io.EOF
	}
	n := copy(p, s.left[:min(1+len(s.left)%7, len(s.left))])
	s.left = s.left[n:]
	return n, nil
}
