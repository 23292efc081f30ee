package draw

import (
	"os"
	"path/filepath"
	"strings"
)

// ShortPath is a path as short as it can be said: from here, or from home.
func ShortPath(path string) string {
	if wd, err := os.Getwd(); err == nil {
		if rel, err := filepath.Rel(wd, path); err == nil && !strings.HasPrefix(rel, "..") && filepath.IsAbs(path) {
			return rel
		}
	}
	if home, err := os.UserHomeDir(); err == nil && home != "" {
		if rel, ok := strings.CutPrefix(path, home+string(filepath.Separator)); ok {
			return "~" + string(filepath.Separator) + rel
		}
	}
	return path
}

// LongPath is a path that was typed, without blanks around it and with the home folder for ~.
func LongPath(text string) string {
	path := strings.TrimSpace(text)
	if rest, ok := strings.CutPrefix(path, "~/"); ok {
		if home, err := os.UserHomeDir(); err == nil {
			return home + string(filepath.Separator) + rest
		}
	}
	return path
}
