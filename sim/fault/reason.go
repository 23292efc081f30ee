package fault

import (
	"errors"
	"io/fs"
	"os"
)

// Reason says why a file could not be read or written, in the same words on every system where they are known, without
// repeating its name.
func Reason(err error) string {
	var path *fs.PathError
	var link *os.LinkError
	switch {
	case errors.Is(err, fs.ErrNotExist):
		return "there is no such file"
	case errors.Is(err, fs.ErrPermission):
		return "the file may not be read"
	case errors.As(err, &path):
		return path.Err.Error()
	case errors.As(err, &link):
		return link.Err.Error()
	}
	return err.Error()
}
