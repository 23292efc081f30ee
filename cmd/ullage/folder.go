package main

import (
	"context"
	"errors"
	"fmt"
	"io/fs"
	"os"
	"path/filepath"
	"strings"

	"ullage/sim/atomicfile"
)

// madeFile is a file to write into a folder.
type madeFile struct {
	name string
	text []byte
}

// folderOptions say into which folder a command writes its files.
type folderOptions struct {
	Folder string `name:"output" short:"o" placeholder:"DIR" help:"The folder to write into; it is made if it is not there."`
	Force  bool   `help:"Let -o write over files that exist."`
}

// mostNamed is how many files an error names.
const mostNamed = 4

// refuse tells whether the files cannot be written, before any of them is.
func (o folderOptions) refuse(s *streams, names []string) error {
	if info, err := os.Stat(o.Folder); err == nil && !info.IsDir() {
		return badInput("%s is a file; -o needs the name of a folder", o.Folder)
	}
	var there []string
	for _, name := range names {
		path := filepath.Join(o.Folder, name)
		info, err := os.Stat(path)
		if err != nil {
			continue
		}
		if info.IsDir() {
			return badInput("%s is a folder, and a file of this name is to be written; give -o another name", path)
		}
		for _, read := range s.inputs {
			if from, err := os.Stat(read); err == nil && os.SameFile(from, info) {
				return badInput("%s is what this command reads; give -o another name", path)
			}
		}
		there = append(there, path)
	}
	if len(there) == 0 || o.Force {
		return nil
	}
	more := ""
	if left := len(there) - mostNamed; left > 0 {
		there, more = there[:mostNamed], fmt.Sprintf(" and %d more", left)
	}
	verb := "exist and are"
	if len(there) == 1 {
		verb = "exists and is"
	}
	return badInput("%s%s %s kept; --force writes over what is there", strings.Join(there, ", "), more, verb)
}

// write writes all files or none, and none over one that exists unless told to.
func (o folderOptions) write(ctx context.Context, files []madeFile) (err error) {
	if _, gone := os.Stat(o.Folder); gone != nil {
		if err := os.MkdirAll(o.Folder, 0o777); err != nil {
			return unwritable(o.Folder, err)
		}
		defer func() {
			if err != nil {
				_ = os.Remove(o.Folder) // which is empty then
			}
		}()
	}
	parts := make([]*atomicfile.File, 0, len(files))
	defer func() {
		for _, p := range parts {
			p.Discard() // those that have their names are gone already
		}
	}()
	for _, f := range files {
		path := filepath.Join(o.Folder, f.name)
		part, err := atomicfile.Begin(path, 0o666)
		if err != nil {
			return unwritable(path, err)
		}
		parts = append(parts, part)
		if _, err := part.Write(f.text); err != nil {
			return unwritable(path, err)
		}
		if err := ctx.Err(); err != nil {
			return err
		}
	}
	return o.place(files, parts)
}

// place gives the finished files their names. Where one cannot have it, those before it lose
// theirs again, but for what they replaced.
func (o folderOptions) place(files []madeFile, parts []*atomicfile.File) error {
	for i, p := range parts {
		path := filepath.Join(o.Folder, files[i].name)
		var err error
		if o.Force {
			err = p.Replace()
		} else {
			err = p.Place()
		}
		if err == nil {
			continue
		}
		if !o.Force {
			for _, f := range files[:i] {
				_ = os.Remove(filepath.Join(o.Folder, f.name))
			}
		}
		if errors.Is(err, fs.ErrExist) {
			return existing(path)
		}
		return unwritable(path, err)
	}
	return nil
}

func unwritable(path string, err error) error {
	if bad := new(fs.PathError); errors.As(err, &bad) {
		err = bad.Err
	}
	return fmt.Errorf("cannot write %s: %w", path, err)
}
