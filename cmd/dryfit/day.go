package main

import (
	"github.com/spf13/cobra"

	"dryfit/internal/report"
	"dryfit/internal/review"
	"dryfit/internal/survey"
	"dryfit/internal/system"
)

func (a *app) dayCommand() *cobra.Command {
	units := newChoice("metric", "metric", "us")
	cmd := &cobra.Command{
		Use:   "day FILE",
		Short: "what the feed of a day turns into",
		Long: "Follows the feed of a day on one page: the waste that the fish make, what bacteria, beds and settlers do with it, the " +
			"oxygen that is used and brought in, the acid, the water to replace, and how long the fish last in a power cut; each with " +
			"the water at its coldest, as usual and at its warmest. The exit status is 1 when some of it cannot be said because " +
			"something is missing.",
		Example:           "dryfit day courtyard.yaml\ndryfit day courtyard.yaml --units us",
		Args:              oneFile,
		RunE:              func(_ *cobra.Command, files []string) error { return a.day(files[0], units.value) },
		ValidArgsFunction: systemFiles,
	}
	cmd.Flags().Var(units, "units", "units to show values in")
	return cmd
}

func (a *app) day(name, units string) error {
	look, err := a.options(units)
	if err != nil {
		return err
	}
	data, err := a.read(name)
	if err != nil {
		return misusef("%s cannot be read: %v", report.ShownFile(name), err)
	}
	s, problems := system.Read(name, data)
	if len(problems) > 0 {
		a.status = review.Unreadable
		return report.Problems(a.out, report.ShownFile(name), problems, look)
	}
	ledger := survey.Survey(s)
	if !report.HasDay(ledger) {
		return misusef("there is no day of fish in a loop without fish and beds: give `fish`, or a vessel with the role of a fish tank or a bed")
	}
	complete, err := report.Day(a.out, s, ledger, look)
	if !complete {
		a.status = review.Act
	}
	return err
}
