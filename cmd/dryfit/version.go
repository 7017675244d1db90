package main

import (
	"fmt"
	"runtime/debug"

	"github.com/spf13/cobra"
)

func (a *app) versionCommand() *cobra.Command {
	return &cobra.Command{
		Use:   "version",
		Short: "which dryfit this is",
		Long:  "Prints which dryfit this is and which notation of system files it reads.",
		Args:  nothingMore,
		RunE: func(*cobra.Command, []string) error {
			_, err := fmt.Fprintf(a.out, "dryfit %s\nreads system files that start with `dryfit: 1`\n", version())
			return err
		},
		ValidArgsFunction: cobra.NoFileCompletions,
	}
}

// version is the version that the program was built as.
func version() string {
	info, ok := debug.ReadBuildInfo()
	if !ok || info.Main.Version == "" || info.Main.Version == "(devel)" {
		return "unreleased"
	}
	return info.Main.Version
}

// nothingMore wants no further word.
func nothingMore(cmd *cobra.Command, args []string) error {
	if len(args) > 0 {
		return misusef("`dryfit %s` takes no further word: leave out `%s`", cmd.Name(), args[0])
	}
	return nil
}
