package main

import (
	"github.com/spf13/cobra"

	"dryfit/internal/corpus"
	"dryfit/internal/report"
	"dryfit/internal/survey"
)

func (a *app) clausesCommand() *cobra.Command {
	units := newChoice("metric", "metric", "us")
	cmd := &cobra.Command{
		Use:   "clauses [ID]",
		Short: "the book of clauses, or one of them",
		Long: "Prints the book, chapter by chapter, each clause on a line. With the id of a clause it prints that one: what it says and why, what is measured, the limits, where they come from and how sure that is, and how a loop breaks it. " +
			"For clauses of your own, `dryfit clauses draft NAME` begins one, `examine DIR` says what is wrong with those of a folder, and `trial DIR` runs their tests.",
		Example: "dryfit clauses\ndryfit clauses sharp_bend\ndryfit clauses examine house",
		Args:    atMostOne("clause"),
		RunE: func(_ *cobra.Command, args []string) error {
			return a.clauses(args, units.value)
		},
		ValidArgsFunction: completeClauses,
	}
	cmd.Flags().Var(units, "units", "units to show limits in")
	cmd.AddCommand(a.houseClauses()...)
	return cmd
}

// atMostOne wants one word or none.
func atMostOne(what string) cobra.PositionalArgs {
	return func(_ *cobra.Command, args []string) error {
		if len(args) > 1 {
			return misusef("one %s at a time: leave out `%s`", what, args[1])
		}
		return nil
	}
}

func (a *app) clauses(args []string, units string) error {
	o, err := a.options(units)
	if err != nil {
		return err
	}
	reviewer, err := a.reviewer(o)
	if reviewer == nil {
		return err
	}
	list := reviewer.Clauses()
	if len(args) == 0 {
		return report.Clauses(a.out, list, o)
	}
	var ids []string
	for _, c := range list {
		if c.ID == args[0] {
			return report.Clause(a.out, c, survey.Catalogue(), o)
		}
		ids = append(ids, c.ID)
	}
	return withNearest("there is no clause `"+args[0]+"`", args[0], ids, "`dryfit clauses` lists them")
}

func completeClauses(_ *cobra.Command, args []string, _ string) ([]string, cobra.ShellCompDirective) {
	reviewer, err := corpus.NewReviewer()
	if err != nil || len(args) > 0 {
		return nil, cobra.ShellCompDirectiveNoFileComp
	}
	var ids []string
	for _, c := range reviewer.Book().Clauses() {
		ids = append(ids, c.ID)
	}
	return ids, cobra.ShellCompDirectiveNoFileComp
}
