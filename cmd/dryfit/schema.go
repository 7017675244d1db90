package main

import (
	"github.com/spf13/cobra"

	"dryfit/schema"
)

func (a *app) schemaCommand() *cobra.Command {
	return &cobra.Command{
		Use:   "schema [NAME]",
		Short: "the JSON Schema of a file, for an editor",
		Long: "Prints the JSON Schema (draft 2020-12) of a file that is read or written. An editor that reads YAML by schemas then knows " +
			"every key and word. Without a NAME it lists them.",
		Example: "dryfit schema\ndryfit schema system > system.schema.json",
		Args:    atMostOne("schema"),
		RunE: func(_ *cobra.Command, args []string) error {
			var list, names []string
			for _, s := range schema.All {
				if len(args) > 0 && s.Name == args[0] {
					_, err := a.out.Write(s.Text)
					return err
				}
				list, names = append(list, s.About), append(names, s.Name)
			}
			if len(args) > 0 {
				return withNearest("there is no schema `"+args[0]+"`", args[0], names, "`dryfit schema` lists them")
			}
			return a.list(names, list)
		},
		ValidArgsFunction: func(_ *cobra.Command, args []string, _ string) ([]string, cobra.ShellCompDirective) {
			var out []string
			for _, s := range schema.All {
				if len(args) == 0 {
					out = append(out, s.Name+"\t"+s.About)
				}
			}
			return out, cobra.ShellCompDirectiveNoFileComp
		},
	}
}
