package fault

import (
	"errors"
	"fmt"
	"io"
	"io/fs"
	"os"
)

// Plain refuses a folder, and what may never end: a device, and a pipe unless pipes are waited for. Its errors are for [Reason].
func Plain(path string, pipes bool) (fs.FileInfo, error) {
	info, err := os.Stat(path)
	if err != nil {
		return nil, err
	}
	switch mode := info.Mode(); {
	case mode.IsDir():
		return nil, errors.New("it is a folder, not a file")
	case !mode.IsRegular() && !(pipes && mode&fs.ModeNamedPipe != 0):
		return nil, errors.New("it is not a plain file")
	}
	return info, nil
}

// ReadFile reads a file of at most so many bytes that is [Plain], or a pipe.
func ReadFile(path string, most int64) ([]byte, error) {
	info, err := Plain(path, true)
	if err != nil {
		return nil, err
	}
	tooLarge := fmt.Errorf("it is larger than %d MB", most>>20)
	if info.Size() > most {
		return nil, tooLarge
	}
	f, err := os.Open(path)
	if err != nil {
		return nil, err
	}
	defer f.Close()
	text, err := io.ReadAll(io.LimitReader(f, most+1))
	if err == nil && int64(len(text)) > most {
		err = tooLarge
	}
	if err != nil {
		return nil, err
	}
	return text, nil
}
