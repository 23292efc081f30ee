// Package recovery keeps unsaved edits through a crash or a closed window.
//
// Each edited file has one record in the user's state directory, written
// atomically. A [Keeper] holds a lock on its record for as long as its program
// runs, so two programs that edit one file keep a record each and neither takes
// the other's for a leftover. A record whose lock is free was left behind: the
// next [Open] for that file returns it as [Left].
package recovery

import (
	"crypto/sha256"
	"encoding/hex"
	"encoding/json"
	"errors"
	"fmt"
	"io/fs"
	"os"
	"path/filepath"
	"strconv"
	"strings"
	"sync"
	"time"
	"unicode/utf8"

	"github.com/adrg/xdg"

	"ullage/sim/atomicfile"
)

// records bounds how many programs keep records of one file at once.
const records = 16

// Dir is where records live: ullage/unsaved in the user's state directory.
func Dir() string { return filepath.Join(xdg.StateHome, "ullage", "unsaved") }

// Edits are the unsaved edits of one file.
type Edits struct {
	File string    `json:"file"` // whose edits these are
	Base string    `json:"base"` // Digest of the text they started from
	Text string    `json:"text"` // the whole edited text
	At   time.Time `json:"at"`   // when they were written
}

// Digest identifies a text.
func Digest(text []byte) string {
	sum := sha256.Sum256(text)
	return hex.EncodeToString(sum[:])
}

// Keeper writes the unsaved edits of one file. Its methods may be called from
// several goroutines. A nil Keeper keeps nothing.
type Keeper struct {
	record
	mu    sync.Mutex
	noted *Edits // what the record should hold; nil for nothing
	stale bool   // it does not yet
}

// Left is a record that a program left behind. It is held until it is discarded
// or released. A nil Left is none.
type Left struct {
	record
	Edits
}

// record is a file in the state directory, held by its lock.
type record struct {
	file string // whose edits it is for
	path string
	lock *lock
}

// Open takes a new record for the file in dir, which is made if need be, and
// the newest of those that programs which have ended left behind for that
// file, nil if there is none.
func Open(dir, file string) (*Keeper, *Left, error) {
	if !utf8.ValidString(file) {
		file = strconv.Quote(file) // as JSON can hold it
	}
	if err := os.MkdirAll(dir, 0o700); err != nil {
		return nil, nil, fmt.Errorf("no place for unsaved edits: %w", err)
	}
	var keeper *Keeper
	var left *Left
	for i := range records {
		if keeper != nil && !written(dir, file, i) {
			continue // neither a place needed nor something left
		}
		r, err := claim(dir, file, i)
		if errors.Is(err, atomicfile.ErrHeld) {
			continue
		}
		if err != nil {
			keeper.release()
			left.Release()
			return nil, nil, fmt.Errorf("no place for unsaved edits: %w", err)
		}
		switch e := r.read(); {
		case e == nil && keeper == nil:
			keeper = &Keeper{record: r}
		case e != nil && (left == nil || e.At.After(left.At)):
			left.Release()
			left = &Left{record: r, Edits: *e}
		default:
			r.lock.release()
		}
	}
	if keeper == nil {
		left.Release()
		return nil, nil, fmt.Errorf("no place for unsaved edits: there are %d records of %s already", records, file)
	}
	return keeper, left, nil
}

// nameOf is where a record of a file is, less the ending.
func nameOf(dir, file string, i int) string {
	sum := sha256.Sum256([]byte(file))
	return filepath.Join(dir, fmt.Sprintf("%x-%d", sum[:8], i))
}

func written(dir, file string, i int) bool {
	_, err := os.Lstat(nameOf(dir, file, i) + ".json")
	return err == nil
}

func claim(dir, file string, i int) (record, error) {
	name := nameOf(dir, file, i)
	l, err := acquire(name + ".lock")
	return record{file: file, path: name + ".json", lock: l}, err
}

// read returns what the record holds, nil when it is missing, damaged or of
// another file.
func (r *record) read() *Edits {
	data, err := os.ReadFile(r.path)
	if err != nil {
		return nil
	}
	var e Edits
	if json.Unmarshal(data, &e) != nil || e.File != r.file {
		return nil
	}
	return &e
}

func (r *record) remove() error {
	if err := os.Remove(r.path); err != nil && !errors.Is(err, fs.ErrNotExist) {
		return fmt.Errorf("unsaved edits: %w", err)
	}
	return nil
}

// Path is where the edits are.
func (l *Left) Path() string { return l.path }

// Discard removes the record.
func (l *Left) Discard() error {
	if l == nil {
		return nil
	}
	err := l.remove()
	l.lock.release()
	return err
}

// PutAside makes the record one that is not offered any more, in place of one put aside
// before, and tells where it is.
func (l *Left) PutAside() (string, error) {
	aside := strings.TrimSuffix(l.path, ".json") + ".aside"
	err := os.Rename(l.path, aside)
	l.lock.release()
	if err != nil {
		return "", fmt.Errorf("unsaved edits: %w", err)
	}
	return aside, nil
}

// Release leaves the record for another time.
func (l *Left) Release() {
	if l != nil {
		l.lock.release()
	}
}

// Note remembers edits for the next Flush. It touches no disk.
func (k *Keeper) Note(base string, text []byte) {
	if k == nil {
		return
	}
	k.mu.Lock()
	defer k.mu.Unlock()
	k.noted, k.stale = &Edits{File: k.file, Base: base, Text: string(text)}, true
}

// Forget is Note for no edits: they were saved, undone or thrown away.
func (k *Keeper) Forget() {
	if k == nil {
		return
	}
	k.mu.Lock()
	defer k.mu.Unlock()
	k.noted, k.stale = nil, true
}

// Holds tells whether there are edits to be kept.
func (k *Keeper) Holds() bool {
	if k == nil {
		return false
	}
	k.mu.Lock()
	defer k.mu.Unlock()
	return k.noted != nil
}

// Flush brings the record up to what was noted.
func (k *Keeper) Flush() error {
	if k == nil {
		return nil
	}
	k.mu.Lock()
	defer k.mu.Unlock()
	if !k.stale {
		return nil
	}
	if err := k.write(); err != nil {
		return err
	}
	k.stale = false
	return nil
}

func (k *Keeper) write() error {
	if k.noted == nil {
		return k.remove()
	}
	k.noted.At = time.Now()
	data, err := json.Marshal(k.noted)
	if err != nil {
		return fmt.Errorf("unsaved edits: %w", err)
	}
	if err := atomicfile.Write(k.path, data, 0o600); err != nil {
		return fmt.Errorf("unsaved edits: %w", err)
	}
	return nil
}

// Close flushes and lets go of the record, which stays when it holds anything.
func (k *Keeper) Close() error {
	if k == nil {
		return nil
	}
	err := k.Flush()
	k.release()
	return err
}

func (k *Keeper) release() {
	if k != nil {
		k.lock.release()
	}
}
