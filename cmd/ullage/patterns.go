package main

import (
	"context"
	"fmt"
	"os"
	"path/filepath"

	"ullage/cmd/ullage/chart"
	"ullage/cmd/ullage/chart/page"
	"ullage/sim/pattern"
	"ullage/sim/quantity"
	"ullage/sim/report"
	"ullage/sim/report/words"
	"ullage/sim/rocket"
)

// patternsCommand draws what is cut, drilled and turned at its true size.
type patternsCommand struct {
	File string `arg:"" placeholder:"FILE" help:"The rocket file; - reads standard input."`

	Format string `enum:"both,svg,pdf" default:"both" placeholder:"both|svg|pdf" help:"What to write: svg, a file a sheet; pdf, a file a pattern; or both."`
	Paper  string `enum:",a4,letter" default:"" placeholder:"a4|letter" help:"Size of the sheets: a4, or letter, which is usual with --units us."`
	JSON   bool   `name:"json" help:"The list as one JSON object, in SI units."`

	folderOptions
	setOptions
	unitsOption
}

// Help teaches by example.
func (patternsCommand) Help() string {
	return helpText(
		"True-scale drawings of what the file describes: nose and closures with their radii for a plug or mandrel, gores of "+
			"closures and canopies, wraps of transitions, fins, the wraps that mark where they and [[hole]] are, discs that "+
			"hold fins, centring rings. One pattern a sheet, with "+
			"its dimensions, what it assumes, and rules of 100 mm to check the print; what is larger comes on tiles to join. "+
			"Without -o, the list alone: sizes, sheets, and by name what the file does not say enough for. Measure the "+
			"part before you cut. Local law and qualified people decide what may be built and flown.",
		"ullage patterns heron.toml",
		"ullage patterns heron.toml -o patterns",
		"ullage patterns heron.toml -o patterns --format pdf --paper letter --units us",
		"ullage patterns heron.toml -o patterns --force --set 'fins.1.span=60 mm'",
		"ullage patterns heron.toml --json")
}

// Run draws, writes and lists.
func (c *patternsCommand) Run(s *streams) error {
	if c.Folder == "-" {
		return badInput("-o -: patterns are many files; give the name of a folder, as in -o patterns")
	}
	if c.Force && c.Folder == "" {
		return badInput("--force is for -o; give that too")
	}
	file, err := c.open(s, c.File)
	if err != nil {
		return err
	}
	r := file.Rocket()
	set := pattern.Of(r)
	sheeted, large := chart.Patterns(r, set.Patterns, c.look())
	list := report.Patterns{Lacks: append(set.Lacks, large...), Folder: c.Folder, System: c.system()}
	for i := range sheeted {
		x := &sheeted[i]
		across, down := x.Sheets.Tiles()
		list.All = append(list.All, report.Drawn{Pattern: &x.Pattern, Sheets: x.Sheets.Count(), Across: across, Down: down})
	}
	if c.Folder != "" {
		if err := c.draw(s, sheeted); err != nil {
			return err
		}
	}
	if c.JSON {
		err = report.WritePatternsJSON(interruptible{s.ctx, s.out}, &list)
	} else {
		err = report.WritePatternsText(interruptible{s.ctx, s.out}, &list)
	}
	if err == nil && len(list.All) == 0 {
		return failedError{fmt.Errorf("%s: nothing can be drawn of it", file.Name())}
	}
	return err
}

// look is how the sheets show their values.
func (c *patternsCommand) look() chart.Look {
	paper := page.A4
	if c.Paper == page.Letter.Name || c.Paper == "" && c.Units == "us" {
		paper = page.Letter
	}
	return chart.Look{System: c.system(), Paper: paper}
}

// draw writes the files.
func (c *patternsCommand) draw(s *streams, sheeted []chart.Sheeted) error {
	if err := c.refuse(s, c.allNames(sheeted)); err != nil { // before drawing, which takes a while
		return err
	}
	return c.writeAll(s.ctx, sheeted)
}

// writeAll draws the files and writes them.
func (c *patternsCommand) writeAll(ctx context.Context, sheeted []chart.Sheeted) error {
	var files []madeFile
	for i := range sheeted {
		x := &sheeted[i]
		if c.Format != formatPDF {
			for n := range x.Sheets.Count() {
				files = append(files, madeFile{svgName(x, n), x.Sheets.SVG(n)})
			}
		}
		if c.Format != formatSVG {
			text, err := x.Sheets.PDF()
			if err != nil {
				return err
			}
			files = append(files, madeFile{x.Pattern.Name + ".pdf", text})
		}
		if err := ctx.Err(); err != nil {
			return err
		}
	}
	return c.write(ctx, files)
}

// patternWriter writes the drawings for the screen, as the command does without options: never over a file.
func (s *streams) patternWriter(r *rocket.Rocket, sys quantity.System, folder string) (func(context.Context) (string, error), error) {
	c := patternsCommand{Format: "both", folderOptions: folderOptions{Folder: folder}}
	if sys == quantity.US {
		c.Units = "us"
	}
	if info, err := os.Stat(folder); err == nil && !info.IsDir() {
		return nil, fmt.Errorf("%s is a file; give the name of a folder", folder)
	}
	sheeted, _ := chart.Patterns(r, pattern.Of(r).Patterns, c.look())
	names := c.allNames(sheeted)
	for _, name := range names {
		if _, err := os.Lstat(filepath.Join(folder, name)); err == nil {
			return nil, fmt.Errorf("%s is there and is kept; give another folder", filepath.Join(folder, name))
		}
	}
	return func(ctx context.Context) (string, error) {
		return fmt.Sprintf("%s in %s written to %s.", words.Plural(len(sheeted), "pattern"), words.Plural(len(names), "file"), folder), c.writeAll(ctx, sheeted)
	}, nil
}

// allNames are the files of all patterns.
func (c *patternsCommand) allNames(sheeted []chart.Sheeted) (names []string) {
	for i := range sheeted {
		names = append(names, c.names(&sheeted[i])...)
	}
	return names
}

const formatPDF = "pdf"

// names are the files of a pattern.
func (c *patternsCommand) names(x *chart.Sheeted) []string {
	var names []string
	if c.Format != formatPDF {
		for n := range x.Sheets.Count() {
			names = append(names, svgName(x, n))
		}
	}
	if c.Format != formatSVG {
		names = append(names, x.Pattern.Name+".pdf")
	}
	return names
}

// svgName is the file of one sheet: numbered where there are several.
func svgName(x *chart.Sheeted, n int) string {
	if x.Sheets.Count() == 1 {
		return x.Pattern.Name + ".svg"
	}
	return fmt.Sprintf("%s-%d.svg", x.Pattern.Name, n+1)
}
