package main

import (
	"fmt"
	"io"
	"path/filepath"
	"strings"

	"github.com/spf13/cobra"

	"dryfit/internal/remedy"
	"dryfit/internal/report"
	"dryfit/internal/survey"
	"dryfit/rules"
)

func (a *app) bookCommand() *cobra.Command {
	var outputs []string
	cmd := &cobra.Command{
		Use:   "book",
		Short: "the whole book, to print",
		Long: "Writes the whole book: every clause with its sentence, why, limits, cases, sources and remedies, chapter by chapter, and every quantity " +
			"and fact with its formula, its unit and the clauses that use it. The ending of the name chooses the form: .html is one page that prints, " +
			".md is Markdown.",
		Example:           "dryfit book -o book.html\ndryfit book -o book.md",
		Args:              nothingMore,
		RunE:              func(*cobra.Command, []string) error { return a.book(outputs) },
		ValidArgsFunction: cobra.NoFileCompletions,
	}
	cmd.Flags().StringArrayVarP(&outputs, "output", "o", nil, "write into a file, .html or .md; may be said again")
	return cmd
}

func (a *app) book(outputs []string) error {
	if len(outputs) == 0 {
		return misusef("say where to write it: `dryfit book -o book.html`")
	}
	forms := map[string]func(io.Writer, report.Book) error{
		".html": report.BookHTML, ".htm": report.BookHTML, ".md": report.BookMarkdown, ".markdown": report.BookMarkdown,
	}
	for _, out := range outputs {
		if forms[strings.ToLower(filepath.Ext(out))] == nil {
			return misusef("the ending of `%s` names no form: end it in .html or .md", out)
		}
	}
	look, err := a.options("metric")
	if err != nil {
		return err
	}
	reviewer, err := a.reviewer(look)
	if reviewer == nil {
		return err
	}
	hash, err := report.BookHash(rules.Book, rules.Tables)
	if err != nil {
		return fmt.Errorf("the book cannot be read: %w", err)
	}
	book := report.NewBook(report.BookOf{
		Clauses: reviewer.Book().Clauses(), House: reviewer.House(""), Catalogue: survey.Catalogue(), Lever: remedy.Words,
		Stamp: report.Stamp{Book: hash, Version: version()},
	})
	for _, out := range outputs {
		if err := inPlace(out, func(w io.Writer) error { return forms[strings.ToLower(filepath.Ext(out))](w, book) }); err != nil {
			return misusef("%s cannot be written: %v", out, unwritable(err))
		}
	}
	return nil
}
