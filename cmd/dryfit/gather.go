package main

import (
	"bufio"
	"errors"
	"fmt"
	"io"
	"os"

	"github.com/spf13/cobra"

	"dryfit/internal/corpus"
	"dryfit/internal/report"
	"dryfit/internal/review"
)

func (a *app) gatherCommand() *cobra.Command {
	o := newWriting()
	cmd := &cobra.Command{
		Use:   "gather FILE...",
		Short: "the results of several machines in one",
		Long: "Puts together what `dryfit review --share N --of M -o FILE.json` wrote on several machines, in the order of the names of the " +
			"system files, and writes it in any form. All must have been made by this dryfit with this book, on one day where permits are held, and no part may be missing. " +
			"The exit status is the highest of theirs, held to what they were held to unless --hold-to says otherwise.",
		Example: "dryfit gather part-1.json part-2.json\ndryfit gather part-*.json -o review.sarif -o review.json",
		Args: func(_ *cobra.Command, files []string) error {
			if len(files) == 0 {
				return misusef("name the results to put together: `dryfit gather part-1.json part-2.json`")
			}
			return nil
		},
		RunE: func(cmd *cobra.Command, files []string) error {
			return a.gather(files, o, cmd.Flags().Changed("as"), cmd.Flags().Changed("hold-to"))
		},
		ValidArgsFunction: func(*cobra.Command, []string, string) ([]string, cobra.ShellCompDirective) {
			return []string{"json"}, cobra.ShellCompDirectiveFilterFileExt
		},
	}
	o.add(cmd.Flags())
	return cmd
}

func (a *app) gather(names []string, o writing, asGiven, heldGiven bool) error {
	look, err := a.options(o.units.value)
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
	run := report.Run{HeldTo: review.Strength(o.holdTo.value), Look: look, Version: version(), Book: book, Clauses: reviewer.Book().Clauses}
	parts, err := readParts(names, run)
	if err != nil {
		return err
	}
	defer parts.close()
	if !heldGiven {
		run.HeldTo = parts[0].HeldTo
	}
	out, err := a.open(o.outputs, o.as.value, len(o.outputs) == 0 || asGiven, run)
	if err != nil {
		return err
	}
	return out.close(parts.each(func(i report.Item) error { return a.take(i, run, out) }))
}

// parts is the documents that are put together, with the next file of each.
type parts []*part

type part struct {
	name string
	file *os.File
	*report.Written
	next *report.Item // nil after the last one
}

func readParts(names []string, run report.Run) (parts, error) {
	var all parts
	var wrong []error
	for _, name := range names {
		f, err := os.Open(name)
		if err != nil {
			wrong = append(wrong, misusef("%s cannot be read: %v", name, corpus.Reason(err)))
			continue
		}
		w, err := report.ReadWritten(bufio.NewReader(f), run.Clauses())
		switch {
		case err != nil:
			wrong = append(wrong, misusef("%s: %v", name, err))
		case w.Book != run.Book:
			wrong = append(wrong, misusef("%s was made with another book or house, %.12s and not %.12s: gather with the dryfit and the --house that made it", name, w.Book, run.Book))
		case w.Version != run.Version:
			wrong = append(wrong, misusef("%s was made by dryfit %s, and this is %s: gather with the one that made it", name, w.Version, run.Version))
		default:
			all = append(all, &part{name: name, file: f, Written: w})
			continue
		}
		f.Close()
	}
	for _, p := range all {
		if err := p.advance(); err != nil {
			wrong = append(wrong, err)
		}
	}
	if len(wrong) == 0 {
		wrong = all.fit()
	}
	if len(wrong) > 0 {
		all.close()
		return nil, errors.Join(wrong...)
	}
	return all, nil
}

// fit says what keeps parts from being the whole.
func (all parts) fit() []error {
	var wrong []error
	there := map[int]bool{}
	for _, p := range all {
		if p.HeldTo != all[0].HeldTo {
			wrong = append(wrong, misusef("%s was held to %s and %s to %s: review them alike", p.name, p.HeldTo, all[0].name, all[0].HeldTo))
		}
		if p.Of != all[0].Of {
			wrong = append(wrong, misusef("%s is one of %d parts and %s one of %d: gather those of one call", p.name, max(1, p.Of), all[0].name, max(1, all[0].Of)))
		}
		there[p.Share] = true
	}
	for k := 1; k <= all[0].Of && len(wrong) == 0; k++ {
		if !there[k] {
			wrong = append(wrong, misusef("part %d of %d is missing: gather all of them", k, all[0].Of))
		}
	}
	return wrong
}

func (p *part) advance() error {
	i, err := p.Written.Next()
	switch {
	case errors.Is(err, io.EOF):
		p.next = nil
	case err != nil:
		return misusef("%s: %v", p.name, err)
	default:
		p.next = &i
	}
	return nil
}

// each takes the files of all parts by name. A part that was cut from a list in the order of names
// is in that order already, so that no more than one file of each is held.
func (all parts) each(take func(report.Item) error) error {
	last, day := "", ""
	for n := 0; ; n++ {
		var first *part
		for _, p := range all {
			if p.next != nil && (first == nil || p.next.File < first.next.File) {
				first = p
			}
		}
		if first == nil {
			return nil
		}
		i := *first.next
		if n > 0 && i.File == last {
			return misusef("%s stands in two of the files: give each part once", i.File)
		}
		if last = i.File; i.Summary != nil && i.Summary.AsOf != "" {
			if day != "" && i.Summary.AsOf != day {
				return misusef("permits were held on %s and, in %s, on %s: give every machine the same --as-of", day, i.File, i.Summary.AsOf)
			}
			day = i.Summary.AsOf
		}
		if err := take(i); err != nil {
			return err
		}
		if err := first.advance(); err != nil {
			return err
		}
	}
}

func (all parts) close() {
	for _, p := range all {
		p.file.Close()
	}
}
