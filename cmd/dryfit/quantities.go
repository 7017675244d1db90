package main

import (
	"os"
	"strings"

	"github.com/spf13/cobra"

	"dryfit/internal/report"
	"dryfit/internal/review"
	"dryfit/internal/survey"
	"dryfit/internal/system"
	"dryfit/internal/working"
)

func (a *app) quantitiesCommand() *cobra.Command {
	as, units := newChoice("text", "text", "json"), newChoice("metric", "metric", "us")
	cmd := &cobra.Command{
		Use:     "quantities [FILE|NAME]",
		Short:   "every number that is worked out, and how",
		Long:    "Explains every quantity and fact that is worked out: what it means, its formula, its unit, the cases in which clauses judge it, and which clauses use it. With a name, such as flow, it explains that one. With a system file it prints what was worked out for that loop, in every state, each with its working; with --as json, what a clause in Rego sees of it.",
		Example: "dryfit quantities\ndryfit quantities lip_depth_fraction\ndryfit quantities courtyard.yaml\ndryfit quantities courtyard.yaml --as json",
		Args:    atMostOne("file or name"),
		RunE: func(_ *cobra.Command, args []string) error {
			return a.quantities(args, as.value, units.value)
		},
		ValidArgsFunction: func(_ *cobra.Command, args []string, begun string) ([]string, cobra.ShellCompDirective) {
			if begun == "" || len(args) > 0 { // nothing was begun: files are what is wanted mostly
				return systemFiles(nil, args, begun)
			}
			return survey.Catalogue().Names(), cobra.ShellCompDirectiveDefault
		},
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
		return a.explain(survey.Catalogue(), o)
	}
	k := survey.Catalogue()
	_, none := os.Stat(args[0])
	if only, there := k.Only(args[0]); there && none != nil && as == "text" {
		return a.explain(only, o)
	}
	data, err := a.read(args[0])
	if err != nil && none != nil && !strings.ContainsAny(args[0], "./-") {
		return withNearest("there is neither a file nor a quantity `"+args[0]+"`", args[0], k.Names(), "`dryfit quantities` lists the quantities")
	}
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
	reviewer, err := a.reviewer(o)
	if reviewer == nil {
		return err
	}
	input, err := reviewer.BookOf(s).Input(ledger)
	if err != nil {
		return err
	}
	_, err = a.out.Write(append(input, '\n'))
	return err
}

// explain prints what some quantities and facts mean, and which clauses use them.
func (a *app) explain(k working.Catalogue, o report.Options) error {
	reviewer, err := a.reviewer(o)
	if reviewer == nil {
		return err
	}
	return report.Quantities(a.out, k, reviewer.Book().Clauses(), o)
}
