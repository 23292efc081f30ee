package fault

import (
	"errors"
	"fmt"
	"io"
	"os"
)

// ReadFile reads a file of at most so many bytes, a plain one or a pipe: a folder, and a device, which may never end, are
// refused, in the words of [Reason].
func ReadFile(path string, most int64) ([]byte, error) {
	info, err := os.Stat(path)
	if err != nil {
		return nil, err
	}
	switch mode := info.Mode(); {
	case mode.IsDir():
		return nil, errors.New("it is a folder, not a file")
	case !mode.IsRegular() && mode&os.ModeNamedPipe == 0:
		return nil, errors.New("it is not a plain file")
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
