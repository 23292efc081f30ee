package fault

import (
	"bytes"
	"errors"
	"fmt"
	"io"
	"io/fs"
	"os"
)

// Kinds are what may be read besides a plain file; never a folder.
type Kinds int

// What may never end is only what the user names: a file that a file names has to be plain, lest reading it waits for nobody.
const (
	Files   Kinds = iota // plain files alone
	Pipes                // and named pipes, as a shell makes of a command's output
	Devices              // and everything else that can be read
)

// Plain refuses a folder and what is not of these kinds. Its errors are for [Reason].
func Plain(path string, kinds Kinds) (fs.FileInfo, error) {
	info, err := os.Stat(path)
	if err != nil {
		return nil, err
	}
	switch mode := info.Mode(); {
	case mode.IsDir():
		return nil, errors.New("it is a folder, not a file")
	case mode.IsRegular(), kinds == Devices, kinds == Pipes && mode&fs.ModeNamedPipe != 0:
		return info, nil
	}
	return nil, errors.New("it is not a plain file")
}

// ReadFile reads at most so many bytes of what is [Plain]; more is refused. Its errors are for [Reason].
func ReadFile(path string, most int64, kinds Kinds) ([]byte, error) {
	info, err := Plain(path, kinds)
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
	text := bytes.NewBuffer(make([]byte, 0, max(info.Size(), 0)+bytes.MinRead)) // of a pipe nobody knows the size
	_, err = text.ReadFrom(io.LimitReader(f, most+1))
	if err == nil && int64(text.Len()) > most {
		err = tooLarge
	}
	if err != nil {
		return nil, err
	}
	return text.Bytes(), nil
}
