package main

import (
	"github.com/spf13/cobra"
)

func (a *app) completionCommand() *cobra.Command {
	shells := newChoice("", "bash", "zsh", "fish")
	return &cobra.Command{
		Use:   "completion bash|zsh|fish",
		Short: "let the shell finish words",
		Long:  "Prints a script that lets the shell finish the words of a dryfit command when the tab key is pressed.",
		Example: "dryfit completion bash > ~/.local/share/bash-completion/completions/dryfit\n" +
			"dryfit completion zsh > ~/.zfunc/_dryfit\ndryfit completion fish > ~/.config/fish/completions/dryfit.fish",
		Args: func(_ *cobra.Command, args []string) error {
			if len(args) != 1 || shells.Set(args[0]) != nil {
				return misusef("name the shell: `dryfit completion` takes %s", shells.words())
			}
			return nil
		},
		RunE: func(cmd *cobra.Command, args []string) error {
			root := cmd.Root()
			switch args[0] {
			case "bash":
				return root.GenBashCompletionV2(a.out, true)
			case "zsh":
				return root.GenZshCompletion(a.out)
			}
			return root.GenFishCompletion(a.out, true)
		},
		ValidArgsFunction: cobra.FixedCompletions(shells.allowed, cobra.ShellCompDirectiveNoFileComp),
	}
}
