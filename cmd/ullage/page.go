package main

import (
	"path/filepath"
	"strings"

	"ullage/cmd/ullage/chart/page"
)

// The formats of a page that is drawn.
const (
	formatSVG = "svg"
	formatPNG = "png"
)

// pageFormat is the format that a name ends in, and whether it is one.
func pageFormat(name string) (string, bool) {
	ending := strings.ToLower(strings.TrimPrefix(filepath.Ext(name), "."))
	return ending, ending == formatSVG || ending == formatPNG
}

// pagePaper is the paper asked for, else the usual one with a system of units.
func pagePaper(paper, units string) page.Paper {
	if paper == page.Letter.Name || paper == "" && units == "us" {
		return page.Letter
	}
	return page.A4
}

// pageImage is a page in a format.
func pageImage(p *page.Page, format string, resolution int) ([]byte, error) {
	if format == formatSVG {
		return p.SVG(), nil
	}
	return p.PNG(resolution)
}
