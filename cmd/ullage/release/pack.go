package main

import (
	"archive/tar"
	"archive/zip"
	"bytes"
	"compress/flate"
	"compress/gzip"
	"io"
	"time"
)

// file is one of an archive.
type file struct {
	name     string
	bytes    []byte
	runnable bool
}

// mode is its permissions.
func (f file) mode() int64 {
	if f.runnable {
		return 0o755
	}
	return 0o644
}

// tarred packs files into a folder of a gzipped archive.
func tarred(folder string, when time.Time, files []file) ([]byte, error) {
	var out bytes.Buffer
	squeezed, err := gzip.NewWriterLevel(&out, gzip.BestCompression)
	if err != nil {
		return nil, err
	}
	w := tar.NewWriter(squeezed)
	for _, f := range files {
		head := &tar.Header{Typeflag: tar.TypeReg, Name: folder + "/" + f.name, Mode: f.mode(), Size: int64(len(f.bytes)), ModTime: when, Format: tar.FormatUSTAR}
		if err := w.WriteHeader(head); err != nil {
			return nil, err
		}
		if _, err := w.Write(f.bytes); err != nil {
			return nil, err
		}
	}
	if err := w.Close(); err != nil {
		return nil, err
	}
	if err := squeezed.Close(); err != nil {
		return nil, err
	}
	return out.Bytes(), nil
}

// zipped packs files into a folder of a zip archive.
func zipped(folder string, when time.Time, files []file) ([]byte, error) {
	var out bytes.Buffer
	w := zip.NewWriter(&out)
	w.RegisterCompressor(zip.Deflate, func(to io.Writer) (io.WriteCloser, error) { return flate.NewWriter(to, flate.BestCompression) })
	for _, f := range files {
		to, err := w.CreateHeader(&zip.FileHeader{Name: folder + "/" + f.name, Method: zip.Deflate, Modified: when})
		if err != nil {
			return nil, err
		}
		if _, err := to.Write(f.bytes); err != nil {
			return nil, err
		}
	}
	if err := w.Close(); err != nil {
		return nil, err
	}
	return out.Bytes(), nil
}
