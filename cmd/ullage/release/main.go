// Command release makes what is given away, an archive for each target and their digests, in the
// folder named:
//
//	go run ./cmd/ullage/release FOLDER
//
// The same commit and the same Go make the same bytes: nothing in an archive tells of the machine, and
// its times are the commit's. A tree with changes that are not committed is refused, for nobody
// could say what such a program was made from.
package main

import (
	"bytes"
	"crypto/sha256"
	"errors"
	"fmt"
	"os"
	"os/exec"
	"path/filepath"
	"strconv"
	"strings"
	"time"
)

// program is what is built.
const program = "ullage/cmd/ullage"

// target is a system and a machine that the program is built for.
type target struct{ system, machine string }

// targets are all of them.
var targets = []target{
	{"linux", "amd64"}, {"linux", "arm64"}, {"darwin", "amd64"}, {"darwin", "arm64"}, {"windows", "amd64"}, {"windows", "arm64"},
}

func main() {
	if len(os.Args) != 2 || strings.HasPrefix(os.Args[1], "-") {
		fmt.Fprintln(os.Stderr, "usage: go run ./cmd/ullage/release FOLDER")
		os.Exit(2)
	}
	if err := release(os.Args[1], targets); err != nil {
		fmt.Fprintln(os.Stderr, "release:", err)
		os.Exit(1)
	}
}

// release writes the archives of targets and a file of their SHA-256 digests, as sha256sum --check reads it.
func release(folder string, targets []target) error {
	from, err := look()
	if err != nil {
		return err
	}
	if err := os.MkdirAll(folder, 0o755); err != nil {
		return err
	}
	var digests strings.Builder
	for _, t := range targets {
		name, archive, err := from.archive(t)
		if err != nil {
			return fmt.Errorf("%s on %s: %w", t.system, t.machine, err)
		}
		if err := os.WriteFile(filepath.Join(folder, name), archive, 0o644); err != nil {
			return err
		}
		fmt.Fprintf(&digests, "%x  %s\n", sha256.Sum256(archive), name)
		fmt.Printf("%-40s %5.1f MB\n", name, float64(len(archive))/1e6)
	}
	return os.WriteFile(filepath.Join(folder, "SHA256SUMS"), []byte(digests.String()), 0o644)
}

// source is the commit that a release is made from.
type source struct {
	root    string // of the checkout
	version string // its tag without the v, else its date and the start of its digest
	when    time.Time
}

// look finds the commit that is checked out. A tree with changes is an error.
func look() (source, error) {
	root, err := output("go", "list", "-m", "-f", "{{.Dir}}")
	if err != nil {
		return source{}, err
	}
	changed, err := output("git", "-C", root, "status", "--porcelain")
	if err != nil {
		return source{}, err
	}
	if changed != "" {
		return source{}, errors.New("commit or put away what is changed first:\n" + changed)
	}
	told, err := output("git", "-C", root, "log", "-1", "--format=%ct %h")
	if err != nil {
		return source{}, err
	}
	seconds, digest, _ := strings.Cut(told, " ")
	at, err := strconv.ParseInt(seconds, 10, 64)
	if err != nil {
		return source{}, err
	}
	s := source{root: root, when: time.Unix(at, 0).UTC()}
	s.version = s.when.Format("2006-01-02") + "-" + digest
	if tag, err := output("git", "-C", root, "describe", "--exact-match", "--match", "v[0-9]*"); err == nil {
		s.version = strings.TrimPrefix(tag, "v")
	}
	return s, nil
}

// archive builds the program for a target and packs it with what has to go with it.
func (s source) archive(t target) (name string, archive []byte, err error) {
	name = "ullage-" + s.version + "-" + t.system + "-" + t.machine
	built, err := s.build(t)
	if err != nil {
		return "", nil, err
	}
	executable := "ullage"
	if t.system == "windows" {
		executable += ".exe"
	}
	files := []file{{executable, built, true}}
	for _, of := range []struct{ from, to string }{
		{"README.md", "README.md"}, {"LICENSE", "LICENSE"}, {"cmd/ullage/notices/notices.txt", "NOTICES.txt"},
	} {
		text, err := os.ReadFile(filepath.Join(s.root, filepath.FromSlash(of.from)))
		if err != nil {
			return "", nil, err
		}
		files = append(files, file{of.to, text, false})
	}
	if t.system == "windows" {
		archive, err = zipped(name, s.when, files)
		return name + ".zip", archive, err
	}
	archive, err = tarred(name, s.when, files)
	return name + ".tar.gz", archive, err
}

// build is the program for a target. It has no C in it, so that it runs on any machine of that kind.
func (s source) build(t target) ([]byte, error) {
	folder, err := os.MkdirTemp("", "ullage-release-")
	if err != nil {
		return nil, err
	}
	defer func() { _ = os.RemoveAll(folder) }()
	out := filepath.Join(folder, "ullage")
	command := exec.Command("go", "build", "-trimpath", "-ldflags", "-s -w", "-o", out, program)
	command.Dir = s.root
	command.Env = append(os.Environ(), "GOOS="+t.system, "GOARCH="+t.machine, "CGO_ENABLED=0", "GOFLAGS=")
	if told, err := command.CombinedOutput(); err != nil {
		return nil, fmt.Errorf("%w\n%s", err, told)
	}
	return os.ReadFile(out)
}

// output is what a command prints, without the newline at its end.
func output(name string, args ...string) (string, error) {
	var told bytes.Buffer
	command := exec.Command(name, args...)
	command.Stderr = &told
	out, err := command.Output()
	if err != nil {
		return "", fmt.Errorf("%s %s: %w %s", name, strings.Join(args, " "), err, told.String())
	}
	return strings.TrimRight(string(out), "\n"), nil
}
