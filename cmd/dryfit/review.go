package main

import (
	"bytes"
	"context"
	"errors"
	"fmt"
	"io"
	"io/fs"
	"os"
	"path/filepath"
	"slices"
	"strings"

	"github.com/spf13/cobra"

	"dryfit/internal/corpus"
	"dryfit/internal/report"
	"dryfit/internal/review"
)

// reviewing is the options of the command.
type reviewing struct {
	as, holdTo, units *choice
	outputs           []string
}

func (a *app) reviewCommand() *cobra.Command {
	o := reviewing{
		as:     newChoice("text", "text", "json"),
		holdTo: newChoice("shall", "shall", "should"),
		units:  newChoice("metric", "metric", "us", "both"),
	}
	cmd := &cobra.Command{
		Use:   "review FILE...",
		Short: "what will hold, what will not, what to change",
		Long: "Reads one or more system files (YAML or JSON; `-` is the standard input), works out how each loop behaves, holds it " +
			"against the book of clauses, and says part by part what was found and what to change. With several files the exit " +
			"status is the highest of theirs.",
		Example: "dryfit review courtyard.yaml\ndryfit review --as json designs/*.yaml\ndryfit review courtyard.yaml -o review.txt -o review.json",
		Args:    someFiles,
		RunE: func(cmd *cobra.Command, files []string) error {
			return a.review(cmd.Context(), files, o, cmd.Flags().Changed("as"))
		},
		ValidArgsFunction: systemFiles,
	}
	flags := cmd.Flags()
	flags.Var(o.as, "as", "form of what is printed")
	flags.StringArrayVarP(&o.outputs, "output", "o", nil, "write into a file, .txt or .json; may be said again; nothing is then printed unless --as is given")
	flags.Var(o.holdTo, "hold-to", "weakest clause that counts for the exit status")
	flags.Var(o.units, "units", "units to show values in")
	return cmd
}

// someFiles wants at least one file.
func someFiles(cmd *cobra.Command, args []string) error {
	if len(args) == 0 {
		return misusef("name a system file: `dryfit %s FILE`, or `-` for the standard input", cmd.Name())
	}
	return nil
}

func systemFiles(*cobra.Command, []string, string) ([]string, cobra.ShellCompDirective) {
	return []string{"yaml", "yml", "json"}, cobra.ShellCompDirectiveFilterFileExt
}

func (a *app) review(ctx context.Context, files []string, o reviewing, asGiven bool) error {
	look, err := a.options(o.units.value)
	if err != nil {
		return err
	}
	for _, name := range o.outputs {
		if formOf(name) == "" {
			return misusef("the ending of `%s` names no form: end it in .txt or .json", name)
		}
	}
	if i := slices.Index(files, "-"); i >= 0 && slices.Contains(files[i+1:], "-") {
		return misusef("the standard input can be read only once: write `-` once")
	}
	items, err := a.items(ctx, files)
	if err != nil {
		return err
	}
	heldTo := review.Strength(o.holdTo.value)
	for _, i := range items {
		a.status = max(a.status, i.Status(heldTo))
	}
	for _, name := range o.outputs {
		plain := look
		plain.Colour = a.colour.value == "always"
		if a.width == 0 {
			plain.Width = 80
		}
		var b bytes.Buffer
		if err := write(&b, items, formOf(name), heldTo, plain); err != nil {
			return err
		}
		if err := os.WriteFile(name, b.Bytes(), 0o644); err != nil {
			return misusef("%s cannot be written: %v", name, unwritable(err))
		}
	}
	if len(o.outputs) > 0 && !asGiven {
		return nil
	}
	return write(a.out, items, o.as.value, heldTo, look)
}

// formOf is the form that the ending of a file's name asks for.
func formOf(name string) string {
	return map[string]string{".txt": "text", ".json": "json"}[strings.ToLower(filepath.Ext(name))]
}

// items reviews each file. The error is a fault of the tool.
func (a *app) items(ctx context.Context, files []string) ([]report.Item, error) {
	reviewer, err := corpus.NewReviewer()
	if err != nil {
		return nil, fmt.Errorf("the book does not load: %w", err)
	}
	var items []report.Item
	_, watched := terminal(a.err)
	for i, name := range files {
		if watched && len(files) > 1 {
			fmt.Fprintf(a.err, "\r%d of %d loops read", i, len(files))
		}
		data, err := a.read(name)
		if err != nil {
			a.say("%s cannot be read: %v", shownName(name), err)
			items = append(items, report.Item{File: name, Unread: err.Error()})
			continue
		}
		out, err := reviewer.Review(ctx, name, data)
		if err != nil {
			return nil, fmt.Errorf("%s could not be reviewed: %w", name, err)
		}
		items = append(items, report.Item{File: out.File, Problems: out.Problems, Review: out.Review})
	}
	if watched && len(files) > 1 {
		fmt.Fprintf(a.err, "\r%d of %d loops read\n", len(files), len(files))
	}
	return items, nil
}

// mostBytes is more than the reader of system files takes, so that it, and not
// the memory of the machine, refuses what is too large.
const mostBytes = 64 << 20

// read is the content of a file, or of the standard input for `-`.
func (a *app) read(name string) ([]byte, error) {
	if name == "-" {
		return io.ReadAll(io.LimitReader(a.in, mostBytes))
	}
	if name == "" {
		return nil, errors.New("the name is empty; give the name of a system file")
	}
	f, err := os.Open(name)
	if err != nil {
		return nil, reason(err)
	}
	defer f.Close()
	if info, err := f.Stat(); err == nil && info.IsDir() {
		return nil, errors.New("it is a folder; name the files in it")
	}
	data, err := io.ReadAll(io.LimitReader(f, mostBytes))
	if err != nil {
		return nil, reason(err)
	}
	return data, nil
}

// shownName is the name of a file as it stands in a sentence.
func shownName(name string) string {
	switch name {
	case "":
		return "a file"
	case "-":
		return "the standard input"
	}
	return name
}

// reason is what the operating system says, without what we say ourselves.
func reason(err error) error {
	var path *fs.PathError
	switch {
	case errors.Is(err, fs.ErrNotExist):
		return errors.New("there is no such file; check the name")
	case errors.Is(err, fs.ErrPermission):
		return errors.New("it may not be opened; check its rights")
	case errors.As(err, &path):
		return path.Err
	}
	return err
}

// unwritable is why a file could not be written.
func unwritable(err error) error {
	switch {
	case errors.Is(err, fs.ErrNotExist):
		return errors.New("there is no such folder; make it first")
	case errors.Is(err, fs.ErrPermission):
		return errors.New("the folder may not be written to; choose another one or change its rights")
	}
	return reason(err)
}

func write(w io.Writer, items []report.Item, form string, heldTo review.Strength, o report.Options) error {
	if form == "json" {
		return report.JSON(w, items, heldTo, o)
	}
	o.Named = len(items) > 1
	first := true
	for _, item := range items {
		if item.Unread != "" {
			continue
		}
		if !first {
			if _, err := io.WriteString(w, "\n\n"); err != nil {
				return err
			}
		}
		first = false
		var err error
		if item.Review == nil {
			err = report.Problems(w, shownName(item.File), item.Problems, o)
		} else {
			err = report.Terminal(w, item.Review, o)
		}
		if err != nil {
			return err
		}
	}
	return nil
}
