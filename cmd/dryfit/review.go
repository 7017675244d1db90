package main

import (
	"context"
	"errors"
	"fmt"
	"io/fs"
	"runtime"
	"slices"
	"syscall"
	"time"

	"github.com/spf13/cobra"

	"dryfit/internal/corpus"
	"dryfit/internal/report"
	"dryfit/internal/review"
)

// reviewing is the options of the command.
type reviewing struct {
	writing
	asOf, touched string
	share, of     int
	cache         string
	afresh, whole bool
	only          bool
	workers       int
	most          time.Duration
}

func (a *app) reviewCommand() *cobra.Command {
	o := reviewing{writing: newWriting()}
	cmd := &cobra.Command{
		Use:   "review FILE...",
		Short: "what will hold, what will not, what to change",
		Long: "Reads system files (YAML or JSON; `-` is the standard input), works out how each loop behaves, holds it " +
			"against the book of clauses, and says part by part what was found and what to change. FILE is also a folder, whose system " +
			"files are found by their key `dryfit`, or a pattern such as 'designs/**/*.yaml'. Of several loops it says what to act on, and ends with a " +
			"register of them. The exit status is the highest of theirs. Leave to differ stands in the file, or in NAME.permits.yaml beside NAME.yaml.",
		Example: "dryfit review courtyard.yaml\ndryfit review designs -o review.sarif -o review.xml -o comment.md\n" +
			"dryfit review designs --touched-since origin/main --as markdown\ndryfit review designs --share 3 --of 8 -o part-3.json",
		Args: someFiles,
		RunE: func(cmd *cobra.Command, files []string) error {
			return a.review(cmd.Context(), files, o, cmd.Flags().Changed("as"), cmd.Flags().Changed("touched-since"))
		},
		ValidArgsFunction: systemFiles,
	}
	flags := cmd.Flags()
	o.add(flags)
	flags.Var((*day)(&o.asOf), "as-of", "day on which deviation permits are held, such as 2026-03-14; else that of SOURCE_DATE_EPOCH, else today")
	flags.BoolVar(&o.whole, "whole", false, "of several loops, print the whole report of each")
	flags.BoolVar(&o.only, "only-systems", false, "pass over files named that have no key `dryfit`, as a folder does")
	flags.StringVar(&o.touched, "touched-since", "", "only files that have changed since REV, as git knows it")
	flags.IntVar(&o.share, "share", 0, "only part N of the files, for one of several machines; with --of")
	flags.IntVar(&o.of, "of", 0, "how many parts there are; `dryfit gather` puts them together")
	flags.IntVar(&o.workers, "workers", runtime.GOMAXPROCS(0), "loops to review at the same time")
	flags.DurationVar(&o.most, "most-time", 2*time.Minute, "time for one file; then it is given up and the others go on")
	flags.StringVar(&o.cache, "cache", "", "folder in which results are kept; else DRYFIT_CACHE, else that of the user")
	flags.BoolVar(&o.afresh, "afresh", false, "do not read results that are kept")
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

func (a *app) review(ctx context.Context, args []string, o reviewing, asGiven, touched bool) error {
	look, err := a.options(o.units.value)
	if err != nil {
		return err
	}
	if err := o.sound(); err != nil {
		return err
	}
	files, err := a.files(ctx, args, o, touched)
	if err != nil {
		return err
	}
	today, err := a.today(o.asOf)
	if err != nil {
		return err
	}
	reviewer, err := a.reviewer(look)
	if reviewer == nil {
		return err
	}
	book, err := reviewer.Hash()
	if err != nil {
		return fmt.Errorf("the book cannot be read: %w", err)
	}
	cache, err := a.cache(o.cache, book)
	if err != nil {
		return err
	}
	whole := o.whole || len(files) == 1
	run := report.Run{
		HeldTo: review.Strength(o.holdTo.value), Look: look, Version: version(), Book: book, Clauses: reviewer.Book().Clauses, AsOf: today, Whole: whole, Share: o.share, Of: o.of,
	}
	out, err := a.open(o.outputs, o.as.value, len(o.outputs) == 0 || asGiven, run)
	if err != nil {
		return err
	}
	batch := corpus.Batch{
		Workers: o.workers, Most: o.most, Cache: cache, Afresh: o.afresh, AsOf: today,
		Live: whole && slices.Contains(out.forms, "text"), Whole: out.all(),
	}
	if _, watched := terminal(a.err); watched && len(files) > 1 && !out.scrolls {
		batch.Progress = func(done int) {
			fmt.Fprintf(a.err, "\r%d of %d loops read", done, len(files))
			if done == len(files) {
				fmt.Fprintln(a.err)
			}
		}
	}
	err = reviewer.Run(ctx, files, batch, func(i report.Item) error { return a.take(i, run, out) })
	if err := out.close(err); err != nil {
		return err
	}
	if cache != nil {
		cache.Tidy() // one that cannot be tidied is only larger
	}
	return nil
}

// sound says what cannot be meant.
func (o reviewing) sound() error {
	switch {
	case (o.share != 0) != (o.of != 0):
		return misusef("say both which part and of how many: --share 3 --of 8")
	case o.of != 0 && (o.share < 1 || o.share > o.of):
		return misusef("there is no part %d of %d: count from 1", o.share, o.of)
	case o.workers < 1 || o.workers > 1024:
		return misusef("`--workers %d` is out of reach: write 1 to 1024", o.workers)
	case o.most <= 0:
		return misusef("`--most-time %v` leaves no time: write 90s or 5m", o.most)
	}
	return nil
}

// take writes what came of one file into every output.
func (a *app) take(i report.Item, run report.Run, out *outputs) error {
	if i.Unread != "" && !out.tells {
		a.say("%s cannot be read: %s", report.ShownFile(i.File), i.Unread)
	}
	if i.Fault != "" && !out.tells {
		a.say("%s could not be reviewed, something in dryfit itself is broken: %s", report.ShownFile(i.File), i.Fault)
	}
	a.status = max(a.status, i.Status(run.HeldTo))
	return out.add(i)
}

// files is the system files that the words of the call stand for.
func (a *app) files(ctx context.Context, args []string, o reviewing, touched bool) ([]corpus.File, error) {
	if i := slices.Index(args, "-"); i >= 0 && slices.Contains(args[i+1:], "-") {
		return nil, misusef("the standard input can be read only once: write `-` once")
	}
	if slices.Contains(args, "") {
		return nil, misusef("the name of a file is empty; give the name of a system file")
	}
	files, err := corpus.Find(args)
	if err != nil {
		return nil, misusef("%v", err)
	}
	for i, f := range files {
		if f.Name == "-" {
			files[i] = corpus.Given("-", a.in)
		}
	}
	if o.only {
		files = slices.DeleteFunc(files, func(f corpus.File) bool { return f.Name != "-" && f.Other() })
	}
	if touched {
		if files, err = touchedSince(ctx, o.touched, files); err != nil {
			return nil, misusef("%v", err)
		}
		if len(files) == 0 {
			a.say("no system file has changed since %s", o.touched)
		}
	}
	if o.of > 0 {
		files = corpus.Share(files, o.share, o.of)
	}
	return files, nil
}

// read is the content of a file, or of the standard input for `-`.
func (a *app) read(name string) ([]byte, error) {
	f := corpus.Named(name)
	switch name {
	case "-":
		f = corpus.Given(name, a.in)
	case "":
		return nil, errors.New("the name is empty; give the name of a system file")
	}
	data, err := f.Data()
	if err != nil {
		return nil, corpus.Reason(err)
	}
	return data, nil
}

// unwritable is why a file could not be written.
func unwritable(err error) error {
	switch {
	case errors.Is(err, fs.ErrNotExist):
		return errors.New("there is no such folder; make it first")
	case errors.Is(err, syscall.EISDIR):
		return errors.New("it is a folder; name a file in it")
	case errors.Is(err, fs.ErrPermission):
		return errors.New("the folder may not be written to; choose another one or change its rights")
	}
	return corpus.Reason(err)
}
