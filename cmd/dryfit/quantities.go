package main

import (
	"fmt"

	"github.com/spf13/cobra"

	"dryfit/internal/corpus"
	"dryfit/internal/report"
	"dryfit/internal/review"
	"dryfit/internal/survey"
	"dryfit/internal/system"
)

func (a *app) quantitiesCommand() *cobra.Command {
	as, units := newChoice("text", "text", "json"), newChoice("metric", "metric", "us")
	cmd := &cobra.Command{
		Use:     "quantities [FILE]",
		Short:   "every number that is worked out, and how",
		Long:    "Explains every quantity and fact that is worked out. With a system file it prints what was worked out for that loop, in every state, each with its working; with --as json, what a clause in Rego sees of it.",
		Example: "dryfit quantities\ndryfit quantities courtyard.yaml\ndryfit quantities courtyard.yaml --as json",
		Args:    atMostOne("file"),
		RunE: func(_ *cobra.Command, args []string) error {
			return a.quantities(args, as.value, units.value)
		},
		ValidArgsFunction: systemFiles,
	}
	cmd.Flags().Var(as, "as", "form of what is printed; json wants a file")
	cmd.Flags().Var(units, "units", "units to show values in")
	return cmd
}

func (a *app) quantities(args []string, as, units string) error {
	o, err := a.options(units)
	if err != nil {
		return err
	}
	if len(args) == 0 {
		if as == "json" {
			return misusef("name a system file: --as json prints what a clause sees of one loop")
		}
		return report.Quantities(a.out, survey.Catalogue(), o)
	}
	data, err := a.read(args[0])
	if err != nil {
		return misusef("%s cannot be read: %v", report.ShownFile(args[0]), err)
	}
	s, problems := system.Read(args[0], data)
	if len(problems) > 0 {
		a.status = review.Unreadable
		return report.Problems(a.out, report.ShownFile(args[0]), problems, o)
	}
	ledger := survey.Survey(s)
	if as == "text" {
		return report.Seen(a.out, ledger, o)
	}
	reviewer, err := corpus.NewReviewer()
	if err != nil {
		return fmt.Errorf("the book does not load: %w", err)
	}
	input, err := reviewer.Book().Input(ledger)
	if err != nil {
		return err
	}
	_, err = a.out.Write(append(input, '\n'))
	return err
}
