package rocketfile

import (
	"bytes"
	"errors"
	"path/filepath"
	"sync"

	"ullage/sim/fault"
	"ullage/thrust"
)

// motorFile adds the file that [motor] names below the section's own keys.
func (rd *reading) motorFile(layers []located) []located {
	own := layers[0]
	at := own.node.member("file")
	if at == nil || at.kind != stringNode || aFileName(at.text) != nil {
		return layers
	}
	here := located{own.doc, at}
	path := beside(own.doc.dir, at.text)
	text, err := rd.disk.read(path)
	if err != nil {
		rd.fault(here, "motor.file", own.doc.written(at), fault.Reason(err), "name a file that holds the keys of [motor]")
		rd.unsure = "motor"
		return layers
	}
	doc, faults := parse(path, filepath.Dir(path), text)
	if foreign(doc) {
		rd.fault(here, "motor.file", own.doc.written(at), "a file without any key of [motor]", "name a file that holds them")
		rd.unsure = "motor"
		return layers
	}
	for _, f := range faults.faults {
		if f.Key != "" {
			f.Key = "motor." + f.Key
		}
		rd.faults.add(f)
	}
	if doc == nil || doc.partial {
		rd.unsure = "motor"
	}
	if doc == nil {
		return layers
	}
	s := sectionAt("motor")
	for _, n := range doc.root.members {
		switch {
		case n.name == "file":
			rd.fault(located{doc, n}, "motor.file", doc.written(n), "a motor file that names another", "give the keys here")
		case s.field(n.name) == nil:
			rd.stranger(located{doc, n}, s, "motor.")
		}
	}
	return append(layers, located{doc, doc.root})
}

// foreign tells of a file that is none of a motor and may be any: what it holds is not shown
// to whoever reads the faults. A name is in many files.
func foreign(motor *document) bool {
	if motor == nil {
		return false // what is no text is not quoted
	}
	for _, n := range motor.root.members {
		if n.name == "file" || n.name != "name" && sectionAt("motor").field(n.name) != nil {
			return false
		}
	}
	return true
}

// ofMotor tells a motor file from a rocket's.
func ofMotor(doc *document) bool {
	has := func(key string) bool { return doc.root.member(key) != nil }
	return (has("curve") || has("thrust")) && !has("body")
}

// ownCurve lets what the rocket file says of the curve come before what the motor's own file says, in the other way too.
func (rd *reading) ownCurve() {
	named, one := rd.where["motor.curve"]
	points, two := rd.where["motor.thrust"]
	switch {
	case !one || !two || named.doc == points.doc:
	case named.doc == rd.doc:
		delete(rd.where, "motor.thrust")
	default:
		delete(rd.where, "motor.curve")
	}
}

// curve loads the thrust curve.
func (rd *reading) curve(layers []located) {
	at, ok := rd.where["motor.curve"]
	if !ok || at.node.kind != stringNode || aFileName(at.node.text) != nil {
		return
	}
	path := beside(at.doc.dir, at.node.text)
	curve, err := rd.disk.curve(path)
	var bad fault.List
	switch {
	case errors.As(err, &bad):
		for _, f := range bad {
			f.File, f.Key = path, "motor.curve"
			rd.faults.add(f)
		}
	case err != nil:
		rd.fault(at, "motor.curve", at.doc.written(at.node), fault.Reason(err), "name a CSV file with the header time_s,thrust_n")
	default:
		rd.rocket.Motor.Curve = curve
	}
}

// beside is a path relative to the folder of the file that names it.
func beside(dir, name string) string {
	if filepath.IsAbs(name) {
		return filepath.Clean(name)
	}
	return filepath.Join(dir, filepath.FromSlash(name))
}

// files reads the files that a rocket file names, each once, so that an edit
// of the rocket does not read them again. It may be shared.
type files struct {
	mu     sync.Mutex
	open   func(path string) ([]byte, error)
	texts  map[string][]byte
	curves map[string]*thrust.Curve
}

func newFiles(open func(path string) ([]byte, error)) *files {
	return &files{open: open, texts: map[string][]byte{}, curves: map[string]*thrust.Curve{}}
}

func (d *files) read(path string) ([]byte, error) {
	d.mu.Lock()
	defer d.mu.Unlock()
	if text, ok := d.texts[path]; ok {
		return text, nil
	}
	text, err := d.open(path)
	if err == nil {
		d.texts[path] = text
	}
	return text, err
}

func (d *files) curve(path string) (*thrust.Curve, error) {
	text, err := d.read(path)
	if err != nil {
		return nil, err
	}
	d.mu.Lock()
	defer d.mu.Unlock()
	if c, ok := d.curves[path]; ok {
		return c, nil
	}
	c, err := thrust.ReadCurve(bytes.NewReader(text))
	if err == nil {
		d.curves[path] = c
	}
	return c, err
}
