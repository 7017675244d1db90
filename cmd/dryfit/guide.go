package main

import (
	"github.com/spf13/cobra"

	"dryfit/internal/corpus"
	"dryfit/internal/marking"
	"dryfit/internal/report"
	"dryfit/internal/review"
	"dryfit/internal/survey"
)

func (a *app) guideCommand() *cobra.Command {
	return &cobra.Command{
		Use:   "guide FILE",
		Short: "what a marking guide gives marks for",
		Long: "Explains a marking guide in plain words: what each item asks and what it is worth, the clauses that it picks, what is taken off, " +
			"the bonus and the caps. A guide whose total nobody can reach is refused, with the sum or the number that is wrong; the exit status is then 2.",
		Example:           "dryfit guide guide.yaml\ndryfit guide guide.yaml --width 120",
		Args:              oneGuide,
		RunE:              func(_ *cobra.Command, files []string) error { return a.guide(files[0]) },
		ValidArgsFunction: systemFiles,
	}
}

func oneGuide(_ *cobra.Command, args []string) error {
	switch len(args) {
	case 0:
		return misusef("name a marking guide: `dryfit guide guide.yaml`, or - for the standard input")
	case 1:
		return nil
	}
	return misusef("one guide at a time: leave out `%s`", args[1])
}

func (a *app) guide(name string) error {
	look, err := a.options("metric")
	if err != nil {
		return err
	}
	reviewer, err := a.reviewer(look)
	if reviewer == nil {
		return err
	}
	g, err := a.readGuide(name, reviewer, look)
	if g == nil {
		return err
	}
	return report.Guide(a.out, g, survey.Catalogue(), look)
}

// readGuide reads a guide; what is wrong with one is printed, and there is none then.
func (a *app) readGuide(name string, reviewer *corpus.Reviewer, look report.Options) (*marking.Guide, error) {
	data, err := a.read(name)
	if err != nil {
		return nil, misusef("%s cannot be read: %v", report.ShownFile(name), err)
	}
	g, problems := marking.ReadGuide(name, data, reviewer.Book().Clauses(), survey.Catalogue())
	if len(problems) > 0 {
		a.status = review.Unreadable
		return nil, report.MarkingProblems(a.out, report.ShownFile(name), problems, look)
	}
	return g, nil
}
