package main

import (
	"context"
	"errors"
	"fmt"
	"io"
	"os"
	"path/filepath"
	"runtime"
	"slices"
	"strings"
	"time"

	"github.com/spf13/cobra"

	"dryfit/internal/corpus"
	"dryfit/internal/marking"
	"dryfit/internal/report"
	"dryfit/internal/review"
	"dryfit/internal/system"
	"dryfit/rules"
)

// markOptions is the options of the command.
type markOptions struct {
	guide, moderation, starter string
	as, units                  *choice
	outputs                    []string
	names                      bool
	workers                    int
	most                       time.Duration
}

func (a *app) markCommand() *cobra.Command {
	o := markOptions{as: newChoice("text", "text", "csv", "json"), units: newChoice("metric", "metric", "us", "both")}
	cmd := &cobra.Command{
		Use:   "mark FOLDER",
		Short: "marks for a class of designs, by a marking guide",
		Long: "Marks every YAML and JSON file of a folder by a marking guide: what is stated is held against what follows from the student's own inputs, " +
			"and from what was stated before. A file that is broken gets its mistakes as feedback, and is marked as far as it goes. " +
			"With -o a folder takes a feedback sheet for each submission, the table of marks and a report on the class; a file takes the table (.csv, .json) " +
			"or the report (.html, .md). Tables in files have the names of the submissions; what is printed, and the report, call them by numbers, in the order " +
			"of their files, unless --names is given. Marks that were changed by hand stand in moderation.yaml in the folder. The exit status is 0, or 1 when a " +
			"submission could not be read in full or a change by hand no longer fits.",
		Example: "dryfit mark --guide guide.yaml class\ndryfit mark --guide guide.yaml class -o marked/\n" +
			"dryfit mark --guide guide.yaml class -o marks.csv -o before-the-lesson.html --as text",
		Args: func(_ *cobra.Command, args []string) error {
			if len(args) != 1 {
				return misusef("name one folder of submissions: `dryfit mark --guide GUIDE FOLDER`")
			}
			return nil
		},
		RunE: func(cmd *cobra.Command, args []string) error {
			return a.mark(cmd.Context(), args[0], o, cmd.Flags().Changed("as"))
		},
		ValidArgsFunction: func(*cobra.Command, []string, string) ([]string, cobra.ShellCompDirective) {
			return nil, cobra.ShellCompDirectiveFilterDirs
		},
	}
	flags := cmd.Flags()
	flags.StringVar(&o.guide, "guide", "", "the marking guide")
	flags.StringVar(&o.moderation, "moderation", "", "marks that were changed by hand; else moderation.yaml in the folder, if there is one")
	flags.StringVar(&o.starter, "starter", "", "system file that all began from: what it says is nobody's own when alike pairs are looked for")
	flags.Var(o.as, "as", "form of what is printed")
	flags.StringArrayVarP(&o.outputs, "output", "o", nil, "write into a folder, or a file that ends in .csv, .json, .html or .md; may be said again; nothing is then printed unless --as is given")
	flags.BoolVar(&o.names, "names", false, "print the names of the files, too, and put them into the report on the class")
	flags.Var(o.units, "units", "units to show values in")
	flags.IntVar(&o.workers, "workers", runtime.GOMAXPROCS(0), "submissions to mark at the same time")
	flags.DurationVar(&o.most, "most-time", 2*time.Minute, "time for one submission; then it is given up and the others go on")
	return cmd
}

func (a *app) mark(ctx context.Context, folder string, o markOptions, asGiven bool) error {
	look, err := a.options(o.units.value)
	if err != nil {
		return err
	}
	if err := o.sound(folder); err != nil {
		return err
	}
	reviewer, err := a.reviewer(look)
	if reviewer == nil {
		return err
	}
	guide, err := a.readGuide(o.guide, reviewer, look)
	if guide == nil {
		return err
	}
	changes, at, err := a.readModeration(o.moderation, folder, guide, look)
	if err != nil || a.status != review.NothingToAct {
		return err
	}
	starter, err := a.readStarter(o.starter)
	if err != nil {
		return err
	}
	class, passed, err := corpus.Submissions(folder, o.guide, at, o.starter)
	if err != nil {
		return misusef("the folder %s cannot be read: %v", folder, err)
	}
	if passed > 0 {
		a.say("%d of the files in the folder are no submissions: guides, changes by hand, results, permits, and what begins with a dot or does not end in .yaml, .yml or .json", passed)
	}
	if len(class) == 0 {
		return misusef("there is no submission in %s: one ends in .yaml, .yml or .json", folder)
	}
	book, err := report.BookHash(rules.Book, rules.Tables)
	if err != nil {
		return fmt.Errorf("the book cannot be read: %w", err)
	}
	stamp := report.Stamp{Book: book, Version: version(), Units: o.units.value, Guide: guide.Hash, House: houseHash(reviewer)}
	to := marksOut{app: a, options: o, guide: guide, stamp: stamp, look: look, counter: marking.NewCounter(guide, starter), read: filesOf(class, o.guide, at, o.starter)}
	batch := corpus.Batch{Workers: o.workers, Most: o.most}
	if _, watched := terminal(a.err); watched && len(class) > 1 {
		batch.Progress = func(done int) {
			fmt.Fprintf(a.err, "\r%d of %d submissions marked", done, len(class))
			if done == len(class) {
				fmt.Fprintln(a.err)
			}
		}
	}
	if err := reviewer.MarkClass(ctx, class, batch, corpus.Marking{Guide: guide, Changes: changes}, to.take); err != nil {
		return err
	}
	return to.finish(filepath.Base(at), changes, len(o.outputs) == 0 || asGiven)
}

// filesOf is the files that a call reads, which it does not write over.
func filesOf(class []corpus.Handed, others ...string) []os.FileInfo {
	for _, h := range class {
		others = append(others, h.File.Name)
	}
	var out []os.FileInfo
	for _, name := range others {
		if info, err := os.Stat(name); name != "" && err == nil {
			out = append(out, info)
		}
	}
	return out
}

// sound says what cannot be meant.
func (o markOptions) sound(folder string) error {
	var errs []error
	if o.guide == "" {
		errs = append(errs, misusef("say which guide to mark by: `dryfit mark --guide guide.yaml %s`", report.ShownFile(folder)))
	}
	for _, to := range o.outputs {
		if marksForm(to) == "" {
			errs = append(errs, misusef("the ending of `%s` names no form: end it in .csv, .json, .html or .md, or in / for a folder", to))
		}
	}
	if o.workers < 1 || o.workers > 1024 {
		errs = append(errs, misusef("`--workers %d` is out of reach: write 1 to 1024", o.workers))
	}
	if o.most <= 0 {
		errs = append(errs, misusef("`--most-time %v` leaves no time: write 90s or 5m", o.most))
	}
	return errors.Join(errs...)
}

// readModeration reads the marks that were changed by hand, and says where they stand.
func (a *app) readModeration(name, folder string, g *marking.Guide, look report.Options) ([]marking.Moderation, string, error) {
	for _, ending := range []string{".yaml", ".yml", ".json"} {
		beside := filepath.Join(folder, "moderation"+ending)
		if _, err := os.Stat(beside); name == "" && err == nil {
			name = beside
		}
	}
	if name == "" {
		return nil, "", nil
	}
	data, err := a.read(name)
	if err != nil {
		return nil, "", misusef("%s cannot be read: %v", report.ShownFile(name), err)
	}
	changes, problems := marking.ReadModeration(name, data, g)
	if len(problems) > 0 {
		a.status = review.Unreadable
		return nil, "", report.MarkingProblems(a.out, report.ShownFile(name), problems, look)
	}
	return changes, name, nil
}

// readStarter reads what all began from; nil without.
func (a *app) readStarter(name string) (*system.Document, error) {
	if name == "" {
		return nil, nil
	}
	data, err := a.read(name)
	if err != nil {
		return nil, misusef("%s cannot be read: %v", report.ShownFile(name), err)
	}
	s, _, _ := system.ReadAsFar(name, data)
	if s == nil {
		return nil, misusef("%s cannot be read as a system file; `dryfit review` says why", report.ShownFile(name))
	}
	return s.Document, nil
}

// marksForm is the form that a name asks for; empty for none.
func marksForm(name string) string {
	if form := sheetForm(name); form != "" {
		return form
	}
	if strings.EqualFold(filepath.Ext(name), ".json") {
		return "json"
	}
	return ""
}

// marksOut writes what comes of a class.
type marksOut struct {
	*app
	options markOptions
	guide   *marking.Guide
	stamp   report.Stamp
	look    report.Options
	counter *marking.Counter
	read    []os.FileInfo // by this call
}

// take writes the feedback sheets of one submission, and counts it. What is said of it here does not name it.
func (w *marksOut) take(m *marking.Marked) error {
	switch {
	case m.Late:
		w.say("submission %d is not marked: %s", m.Number, m.Fault)
		w.status = max(w.status, review.Act)
	case m.Fault != "":
		w.say("submission %d could not be marked, something in dryfit itself is broken: %s", m.Number, m.Fault)
		w.status = max(w.status, review.Fault)
	case m.Unread != "":
		w.say("submission %d could not be read: %s", m.Number, m.Unread)
		w.status = max(w.status, review.Act)
	case len(m.Problems) > 0:
		w.status = max(w.status, review.Act)
	}
	if m.NoGains != "" {
		w.say("what submission %d would gain most by is not told: %s", m.Number, m.NoGains)
	}
	stamp := w.stamp
	stamp.File = m.Hash
	for _, to := range w.options.outputs {
		if marksForm(to) != "folder" {
			continue
		}
		sheet := report.NewFeedback(m, w.guide, stamp, w.look)
		base := filepath.Join(to, "feedback", sheetName(m))
		err := errors.Join(
			w.put(base+".html", func(b io.Writer) error { return report.SheetHTML(b, sheet) }),
			w.put(base+".md", func(b io.Writer) error { return report.SheetMarkdown(b, sheet, "") }))
		if err != nil { // the others get theirs
			w.say("the feedback sheets of submission %d cannot be written into %s: %v", m.Number, to, apart(err)[0])
			w.status = max(w.status, review.Unreadable)
		}
	}
	w.counter.Add(m)
	return nil
}

// longName is the longest name of a submission that its sheets have too; those of a longer one go by its number.
const longName = 120

func sheetName(m *marking.Marked) string {
	if len(m.Name) > longName {
		return fmt.Sprintf("submission-%d", m.Number)
	}
	return filepath.FromSlash(m.Name)
}

// finish writes what is said of the class.
func (w *marksOut) finish(moderation string, changes []marking.Moderation, printed bool) error {
	class := w.counter.Class(moderation, changes)
	if len(class.Unfit) > 0 || stale(class) {
		w.status = max(w.status, review.Act)
	}
	page := func() report.Sheet { return report.NewClassReport(class, w.stamp, w.look, w.options.names) }
	shown := class
	if !w.options.names {
		shown = class.Nameless()
	}
	printing := map[string]func(io.Writer) error{
		"csv":  func(b io.Writer) error { return report.MarksCSV(b, shown, w.stamp) },
		"json": func(b io.Writer) error { return report.MarksJSON(b, shown, w.stamp) },
		"text": func(b io.Writer) error { return report.MarksText(b, class, w.stamp, w.look, w.options.names) },
	}
	forms := map[string]func(io.Writer) error{
		"csv":  func(b io.Writer) error { return report.MarksCSV(b, class, w.stamp) },
		"json": func(b io.Writer) error { return report.MarksJSON(b, class, w.stamp) },
		"html": func(b io.Writer) error { return report.SheetHTML(b, page()) },
	}
	markdown := func(name string) error {
		sheet, folder := page(), strings.TrimSuffix(name, filepath.Ext(name))+"-drawings"
		if err := writeDrawings(folder, sheet); err != nil {
			return unwritable(err)
		}
		return w.put(name, func(b io.Writer) error { return report.SheetMarkdown(b, sheet, filepath.Base(folder)) })
	}
	for _, to := range w.options.outputs {
		var err error
		switch form := marksForm(to); form {
		case "folder":
			err = errors.Join(w.put(filepath.Join(to, "marks.csv"), forms["csv"]), w.put(filepath.Join(to, "marks.json"), forms["json"]),
				w.put(filepath.Join(to, "class.html"), forms["html"]), markdown(filepath.Join(to, "class.md")))
		case "md":
			err = markdown(to)
		default:
			err = w.put(to, forms[form])
		}
		if err != nil {
			return misusef("%s cannot be written: %v", to, err)
		}
	}
	if !printed {
		return nil
	}
	return printing[w.options.as.value](w.out)
}

// stale says that a change by hand was made for another version of its submission.
func stale(c *marking.Class) bool {
	for _, m := range c.Marked {
		for _, change := range m.ByHand() {
			if change.Stale {
				return true
			}
		}
	}
	return false
}

// errRead is why a file that the call reads is not written over.
var errRead = errors.New("it is one of the files that are read here; choose another name")

// put writes a file in the place of another one, with the folders above it. Its error does not name it.
func (w *marksOut) put(name string, write func(io.Writer) error) error {
	if info, err := os.Stat(name); err == nil && slices.ContainsFunc(w.read, func(r os.FileInfo) bool { return os.SameFile(info, r) }) {
		return errRead
	}
	if dir := filepath.Dir(name); strings.Contains(name, string(filepath.Separator)) {
		if err := os.MkdirAll(dir, 0o755); err != nil {
			return unwritable(err)
		}
	}
	if err := inPlace(name, write); err != nil {
		return unwritable(err)
	}
	return nil
}
