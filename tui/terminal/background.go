package terminal

import (
	"os"
	"strconv"
	"strings"
)

// askBackground is the question for the background colour (OSC 11, from xterm).
// A terminal that does not know it stays silent; nothing waits for the answer.
const askBackground = "\x1b]11;?\x1b\\"

// answerHead begins the answer, which ends with BEL or ESC \.
const answerHead = "\x1b]11;"

// background tells from the terminal's answer whether its background is light.
func background(answer []byte) (light, ok bool) {
	s, ok := strings.CutPrefix(string(answer), answerHead)
	if !ok {
		return false, false
	}
	s = strings.TrimSuffix(strings.TrimSuffix(s, "\a"), "\x1b\\")
	return parseBackground(s)
}

// parseBackground reads rgb:RRRR/GGGG/BBBB, one to four hexadecimal digits each.
func parseBackground(s string) (light, ok bool) {
	parts := strings.Split(strings.TrimPrefix(s, "rgb:"), "/")
	if len(parts) != 3 || !strings.HasPrefix(s, "rgb:") {
		return false, false
	}
	var channel [3]float64
	for i, p := range parts {
		n, err := strconv.ParseUint(p, 16, 16)
		if err != nil || len(p) > 4 {
			return false, false
		}
		channel[i] = float64(n) / float64(uint(1)<<(4*len(p))-1)
	}
	// Luma after ITU-R BT.601, of the values as they are.
	return 0.299*channel[0]+0.587*channel[1]+0.114*channel[2] > 0.5, true
}

// GuessBackground is what the environment tells of the background: COLORFGBG,
// which some terminals set, ends with the number of its colour.
func GuessBackground() (light, ok bool) {
	value := os.Getenv("COLORFGBG")
	i := strings.LastIndex(value, ";")
	n, err := strconv.Atoi(value[i+1:])
	if i < 0 || err != nil || n < 0 || n > 15 {
		return false, false
	}
	return n == 7 || n >= 9, true
}
