package main

import (
	"bytes"
	"context"
	"errors"
	"fmt"
	"os"
	"path/filepath"
	"strings"

	"github.com/spf13/cobra"

	"dryfit/internal/corpus"
	"dryfit/internal/making"
	"dryfit/internal/report"
	"dryfit/internal/review"
	"dryfit/internal/survey"
	"dryfit/internal/system"
	"dryfit/internal/tables"
	"dryfit/rules"
)

// sheeting is the options of the command.
type sheeting struct {
	units         *choice
	outputs       []string
	asOf, confirm string
}

func (a *app) sheetCommand() *cobra.Command {
	o := sheeting{units: newChoice("metric", "metric", "us", "both")}
	cmd := &cobra.Command{
		Use:   "sheet FILE",
		Short: "the calculation and build sheet to take to the shed",
		Long: "Writes the sheet of one loop: what it is and whether it is ready, cautions, levels, drawings, the calculation of each part, " +
			"findings, lists of what to cut, drill, join and buy, how to clean and start it, and the checks to make with water in. " +
			"The ending of the name chooses the form: .html is one page that prints, .md is Markdown with its drawings in a folder beside it, " +
			".csv is all lists in one file, and a folder takes one file a list. The exit status is that of `dryfit review`. " +
			"With --confirm it says whether a sheet is stale: 0 it is fresh, 1 something has changed, 2 it cannot be read.",
		Example: "dryfit sheet courtyard.yaml -o courtyard.html\ndryfit sheet courtyard.yaml -o courtyard.md -o lists/ --units both --as-of 2026-03-14\n" +
			"dryfit sheet courtyard.yaml --confirm courtyard.html",
		Args:              oneFile,
		RunE:              func(cmd *cobra.Command, files []string) error { return a.sheet(cmd.Context(), files[0], o) },
		ValidArgsFunction: systemFiles,
	}
	flags := cmd.Flags()
	flags.StringArrayVarP(&o.outputs, "output", "o", nil, "write into a file, .html, .md or .csv, or into a folder; may be said again")
	flags.Var(o.units, "units", "units to show values in")
	flags.Var((*day)(&o.asOf), "as-of", "day that the sheet stands for, such as 2026-03-14: it is shown, and says which deviation permits hold")
	flags.StringVar(&o.confirm, "confirm", "", "say whether this sheet, a file or a folder of lists, is stale")
	return cmd
}

func (a *app) sheet(ctx context.Context, name string, o sheeting) error {
	switch {
	case o.confirm == "" && len(o.outputs) == 0:
		return misusef("say where to write it: `dryfit sheet %s -o sheet.html`", report.ShownFile(name))
	case o.confirm != "" && len(o.outputs) > 0:
		return misusef("either write a sheet with -o or ask about one with --confirm")
	}
	for _, out := range o.outputs {
		if sheetForm(out) == "" {
			return misusef("the ending of `%s` names no form: end it in .html, .md or .csv, or in / for a folder", out)
		}
	}
	data, err := a.read(name)
	if err != nil {
		return misusef("%s cannot be read: %v", report.ShownFile(name), err)
	}
	permits, beside, problems := permitsOf(name)
	if len(problems) > 0 {
		a.status = review.Unreadable
		look, err := a.options(o.units.value)
		return errors.Join(err, report.Problems(a.out, problems[0].File, problems, look))
	}
	look, err := a.options(o.units.value)
	if err != nil {
		return err
	}
	reviewer, err := a.reviewer(look)
	if reviewer == nil {
		return err
	}
	book, err := report.BookHash(rules.Book, rules.Tables)
	if err != nil {
		return fmt.Errorf("the book cannot be read: %w", err)
	}
	today, err := a.today(o.asOf)
	if err != nil {
		return err
	}
	stamp := report.Stamp{File: report.HashOf(append(data[:len(data):len(data)], beside...)), Book: book, Version: version(), Units: o.units.value, AsOf: o.asOf, House: houseHash(reviewer)}
	if o.confirm != "" {
		return a.confirm(o.confirm, stamp)
	}
	out, err := reviewer.Review(ctx, name, data)
	if err != nil {
		return fmt.Errorf("%s could not be reviewed: %w", name, err)
	}
	if out.Review == nil {
		a.status = review.Unreadable
		return report.Problems(a.out, report.ShownFile(name), out.Problems, look)
	}
	r := out.Review
	r.Hold(today, reviewer.Book().Clauses(), permits...)
	if stamp.AsOf == "" {
		stamp.AsOf = r.AsOf // stamped where a permit exists
	}
	a.status = r.ExitStatus(review.Shall)
	sheet := report.NewSheet(report.SheetOf{
		Review: r, Lists: making.Lists(r.System, tables.Embedded(), r.Ledger), Followed: survey.Follow(r.System, "", ""),
	}, stamp, look)
	for _, to := range o.outputs {
		if err := writeSheet(to, sheet); err != nil {
			return misusef("%s cannot be written: %v", to, unwritable(err))
		}
	}
	return nil
}

// permitsOf is the permits beside a system file.
func permitsOf(name string) ([]system.Deviation, []byte, []system.Problem) {
	if name == "-" {
		return nil, nil, nil
	}
	return corpus.Named(name).Permits()
}

// sheetForm is the form that a name asks for: html, md, csv or folder; empty for none.
func sheetForm(name string) string {
	if info, err := os.Stat(name); err == nil && info.IsDir() || strings.HasSuffix(name, "/") {
		return "folder"
	}
	return map[string]string{".html": "html", ".htm": "html", ".md": "md", ".markdown": "md", ".csv": "csv"}[strings.ToLower(filepath.Ext(name))]
}

func writeSheet(to string, s report.Sheet) error {
	var b bytes.Buffer
	var err error
	switch sheetForm(to) {
	case "folder":
		return writeLists(to, s)
	case "html":
		err = report.SheetHTML(&b, s)
	case "csv":
		err = report.SheetCSV(&b, s)
	default:
		folder := strings.TrimSuffix(to, filepath.Ext(to)) + "-drawings"
		if err := writeDrawings(folder, s); err != nil {
			return err
		}
		err = report.SheetMarkdown(&b, s, filepath.Base(folder))
	}
	if err != nil {
		return err
	}
	return os.WriteFile(to, b.Bytes(), 0o644)
}

// writeLists writes each list of a sheet into a file of its own.
func writeLists(folder string, s report.Sheet) error {
	if err := os.MkdirAll(folder, 0o755); err != nil {
		return err
	}
	for _, t := range s.Lists() {
		var b bytes.Buffer
		if err := report.ListCSV(&b, t); err != nil {
			return err
		}
		if err := os.WriteFile(filepath.Join(folder, t.Name+".csv"), b.Bytes(), 0o644); err != nil {
			return err
		}
	}
	var b bytes.Buffer
	if err := report.StampCSV(&b, s); err != nil {
		return err
	}
	return os.WriteFile(filepath.Join(folder, stampFile), b.Bytes(), 0o644)
}

const stampFile = "stamp.csv"

func writeDrawings(folder string, s report.Sheet) error {
	if len(s.Drawings()) == 0 {
		return nil
	}
	if err := os.MkdirAll(folder, 0o755); err != nil {
		return err
	}
	for _, d := range s.Drawings() {
		if err := os.WriteFile(filepath.Join(folder, d.Name+".svg"), []byte(d.SVG), 0o644); err != nil {
			return err
		}
	}
	return nil
}

// confirm says whether a sheet was made from what there is now.
func (a *app) confirm(name string, now report.Stamp) error {
	at := name
	if info, err := os.Stat(name); err == nil && info.IsDir() {
		at = filepath.Join(name, stampFile)
	}
	data, err := a.read(at)
	if err != nil {
		return misusef("%s cannot be read: %v", at, err)
	}
	was, err := report.ReadStamp(data)
	if err != nil {
		return misusef("%s cannot be read as a sheet: %v", at, err)
	}
	changed := was.Since(now)
	if len(changed) == 0 {
		_, err := fmt.Fprintf(a.out, "%s is fresh\n", name)
		return err
	}
	a.status = review.Act
	text := name + " is stale:\n"
	for _, what := range changed {
		text += "    " + what + "\n"
	}
	_, err = fmt.Fprint(a.out, text+"make it anew with -o\n")
	return err
}
