package main

import (
	"github.com/spf13/cobra"

	"dryfit/internal/editor"
	"dryfit/internal/report"
	"dryfit/internal/review"
)

func (a *app) editorCommand() *cobra.Command {
	var asOf string
	cmd := &cobra.Command{
		Use:   "editor",
		Short: "serve an editor: findings as you type",
		Long: "Speaks the Language Server Protocol 3.17 on the standard input and output, for an editor that starts it: findings while a " +
			"system file is typed, with the clause, the number and the remedy; what a value means and what is worked out of it; what may stand " +
			"somewhere; where a name stands; and remedies that change one value, as edits. Other files are left alone, and nothing is ever formatted. " +
			"The exit status is 0 when the editor took its leave as the protocol wants, else 1.",
		Example: "dryfit editor\ndryfit editor --house house",
		Args:    nothingMore,
		RunE: func(cmd *cobra.Command, _ []string) error {
			if _, err := a.today(asOf); err != nil {
				return err
			}
			out := a.out
			a.out = a.err // nothing but the protocol goes to the editor
			reviewer, err := a.reviewer(report.Options{Width: pageWidth})
			if reviewer == nil {
				return err
			}
			a.endless = true
			today := func() string {
				day, _ := a.today(asOf) // it was asked for before, and the clock always answers
				return day
			}
			orderly, err := editor.Serve(cmd.Context(), a.in, out, editor.Options{Reviewer: reviewer, Today: today, Version: version()})
			switch {
			case cmd.Context().Err() != nil:
				return nil // it was stopped
			case err != nil:
				return misusef("the editor cannot be understood: %v", err)
			case !orderly:
				a.status = review.Act
			}
			return nil
		},
	}
	cmd.Flags().Var((*day)(&asOf), "as-of", "day on which deviation permits are held, such as 2026-03-14; else that of SOURCE_DATE_EPOCH, else today")
	cmd.Flags().Bool("stdio", false, "changes nothing: some editors say so where there is no other way")
	return cmd
}
