// Package recovery keeps unsaved edits through a crash or a closed window.
//
// Each edited file has one record in the user's state directory, written
// atomically. A [Keeper] holds a lock on its record for as long as its program
// runs, so two programs that edit one file keep a record each and neither takes
// the other's for a leftover. A record whose lock is free was left behind: the
// next [Open] for that file returns it.
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
	"sync"
	"time"

	"github.com/adrg/xdg"
	"github.com/google/renameio/v2/maybe"
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
	file string
	path string // of the record
	lock *lock

	mu      sync.Mutex
	noted   *Edits // newest edits; nil when there are none
	written bool   // noted is on disk
}

// Open takes a record for the file in dir, which is made if need be, and
// returns edits that a program which has ended left behind for that file: the
// newest of them, or nil.
func Open(dir, file string) (*Keeper, *Edits, error) {
	if err := os.MkdirAll(dir, 0o700); err != nil {
		return nil, nil, fmt.Errorf("no place for unsaved edits: %w", err)
	}
	var chosen *Keeper
	var left *Edits
	for i := range records {
		k, err := claim(dir, file, i)
		if errors.Is(err, errHeld) {
			continue
		}
		if err != nil {
			return nil, nil, fmt.Errorf("no place for unsaved edits: %w", err)
		}
		e := k.read()
		if chosen == nil || e != nil && (left == nil || e.At.After(left.At)) {
			chosen.release()
			chosen, left = k, e
		} else {
			k.release()
		}
	}
	if chosen == nil {
		return nil, nil, fmt.Errorf("no place for unsaved edits: %d programs edit %s", records, file)
	}
	return chosen, left, nil
}

func claim(dir, file string, i int) (*Keeper, error) {
	sum := sha256.Sum256([]byte(file))
	name := filepath.Join(dir, fmt.Sprintf("%x-%d", sum[:8], i))
	l, err := acquire(name + ".lock")
	if err != nil {
		return nil, err
	}
	return &Keeper{file: file, path: name + ".json", lock: l}, nil
}

// read returns what the record holds, nil when it is missing, damaged or of
// another file.
func (k *Keeper) read() *Edits {
	data, err := os.ReadFile(k.path)
	if err != nil {
		return nil
	}
	var e Edits
	if json.Unmarshal(data, &e) != nil || e.File != k.file {
		return nil
	}
	return &e
}

// Path is where the record is written.
func (k *Keeper) Path() string {
	if k == nil {
		return ""
	}
	return k.path
}

// Note remembers edits for the next Flush. It touches no disk.
func (k *Keeper) Note(base string, text []byte) {
	if k == nil {
		return
	}
	k.mu.Lock()
	defer k.mu.Unlock()
	k.noted = &Edits{File: k.file, Base: base, Text: string(text)}
	k.written = false
}

// Flush writes the noted edits unless they are on disk already.
func (k *Keeper) Flush() error {
	if k == nil {
		return nil
	}
	k.mu.Lock()
	defer k.mu.Unlock()
	if k.noted == nil || k.written {
		return nil
	}
	k.noted.At = time.Now()
	data, err := json.Marshal(k.noted)
	if err != nil {
		return fmt.Errorf("unsaved edits: %w", err)
	}
	if err := maybe.WriteFile(k.path, data, 0o600); err != nil {
		return fmt.Errorf("unsaved edits: %w", err)
	}
	k.written = true
	return nil
}

// Clear forgets the edits and removes the record: they were saved, undone or
// thrown away on purpose.
func (k *Keeper) Clear() error {
	if k == nil {
		return nil
	}
	k.mu.Lock()
	defer k.mu.Unlock()
	k.noted, k.written = nil, false
	if err := os.Remove(k.path); err != nil && !errors.Is(err, fs.ErrNotExist) {
		return fmt.Errorf("unsaved edits: %w", err)
	}
	return nil
}

// Close writes what is noted and lets go of the record, which stays when it
// holds anything.
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
