package golden

import (
	"fmt"
	"os"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// listener is a test that keeps what it is told.
type listener struct {
	testing.TB
	told string
}

func (*listener) Helper() {}

func (l *listener) Errorf(format string, args ...any) { l.told += fmt.Sprintf(format, args...) }

func TestOnlyTheDifferenceIsTold(t *testing.T) {
	t.Chdir(t.TempDir())
	require.NoError(t, os.Mkdir("testdata", 0o700))
	lines := strings.Split(strings.Repeat("same\n", 40), "\n")
	lines[20] = "before"
	require.NoError(t, os.WriteFile("testdata/page.txt", []byte(strings.Join(lines, "\n")), 0o600))

	var l listener
	Equal(&l, "page.txt", strings.Join(lines, "\n"))
	assert.Empty(t, l.told)

	lines[20] = "after"
	Equal(&l, "page.txt", strings.Join(lines, "\n"))
	assert.Contains(t, l.told, "\n-before\n+after\n")
	assert.LessOrEqual(t, strings.Count(l.told, "\n"), 12, l.told)
}
