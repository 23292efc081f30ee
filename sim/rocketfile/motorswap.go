package rocketfile

import (
	"errors"
	"io/fs"
	"os"
	"path/filepath"
	"slices"
	"strings"

	"ullage/sim/fault"
)

// WithMotor puts the motor of a motor file, given by a path from the working
// directory, into the rocket: [motor] then names that file, and the keys of
// the motor that was there go. Fittings and places, which are the rocket's, stay
// where the motor file has none. The errors are a fault.List.
func (f *File) WithMotor(path string) (*File, error) {
	s := sectionAt("motor")
	row := s.field("file")
	doc := f.rd.doc
	name := nameFrom(doc.dir, path)
	swap := func(splices []splice) bool {
		if doc != nil {
			doc = doc.edited(splices)
		}
		return doc != nil
	}
	if bad := aFileName(name); bad != nil {
		return nil, fault.List{bad.Of("motor.file", excerpt(name))}
	}
	ok := true
	if !f.Given("power") && f.rd.rocket.Motor == nil { // there are two drives now
		ok = swap(doc.set(schema()[0], schema()[0].field("power"), 0, quoted(string(f.rd.rocket.Power), `"`)))
	}
	ok = ok && swap(doc.set(s, row, 0, quoted(name, `"`)))
	keep := []string{"file"}
	for _, key := range []string{"fittings", "position", "fittings_at"} {
		if !motorHas(f.rd.disk, beside(f.rd.doc.dir, name), key) {
			keep = append(keep, key)
		}
	}
	for ok {
		members := doc.table(s, 0).members
		i := slices.IndexFunc(members, func(n *node) bool { return !slices.Contains(keep, n.name) })
		if i < 0 {
			return f.with(doc)
		}
		ok = swap(doc.remove(members[i]))
	}
	return nil, fault.List{{Key: "motor", Problem: "this text is too intricate to change", Remedy: "edit the file by hand"}}
}

// NameOf is how the text names a file, given by a path from the working directory: what [File.SetPath] takes.
func (f *File) NameOf(path string) string { return nameFrom(f.rd.doc.dir, path) }

// nameFrom is how a file in dir names another, whose path is from the working
// directory: relative where it can be, with slashes.
func nameFrom(dir, path string) string {
	if strings.TrimSpace(path) == "" || filepath.IsAbs(path) && !filepath.IsAbs(dir) {
		return filepath.ToSlash(path)
	}
	from, err := filepath.Abs(dir)
	if err != nil {
		return filepath.ToSlash(path)
	}
	to, err := filepath.Abs(path)
	if err != nil {
		return filepath.ToSlash(path)
	}
	if rel, err := filepath.Rel(from, to); err == nil {
		return filepath.ToSlash(rel)
	}
	return filepath.ToSlash(to)
}

// motorHas tells whether a motor file gives a key. One that cannot be read
// gives none; why is told where it is used.
func motorHas(disk *files, path, key string) bool {
	text, err := disk.read(path)
	if err != nil {
		return false
	}
	doc, _ := parse(path, filepath.Dir(path), text)
	return doc != nil && doc.root.member(key) != nil
}

// MotorFiles lists the motor files in the folder of a rocket file, as paths
// from the working directory, by name: TOML files that have a curve or the
// points of one at their top level and no body. Whether they are sound is for WithMotor to tell.
func (f *File) MotorFiles() ([]string, error) {
	const most = 500 // files looked into; a folder of rockets has a few
	dir := f.rd.doc.dir
	entries, err := os.ReadDir(dir)
	if err != nil {
		if errors.Is(err, fs.ErrNotExist) {
			return nil, nil
		}
		return nil, fault.List{{File: dir, Problem: fault.Reason(err), Remedy: "name motor files by their paths", Err: err}}
	}
	var paths []string
	looked := 0
	for _, e := range entries {
		if !strings.EqualFold(filepath.Ext(e.Name()), ".toml") || looked == most {
			continue
		}
		looked++
		path := filepath.Join(dir, e.Name())
		text, err := readBeside(path)
		if err != nil {
			continue
		}
		if doc, _ := parse(path, dir, text); doc != nil && ofMotor(doc) {
			paths = append(paths, path)
		}
	}
	return paths, nil
}
