package main

import (
	"errors"
	"fmt"
	"io/fs"
	"os"

	"github.com/spf13/cobra"

	"dryfit/internal/report"
	"dryfit/internal/starter"
)

func (a *app) starterCommand() *cobra.Command {
	var out string
	cmd := &cobra.Command{
		Use:   "starter [KIND]",
		Short: "a commented system file to begin with",
		Long: "Prints a commented system file for a kind of loop, whose review finds nothing to act on: a start from something that holds, to " +
			"change into your own. Without a KIND it lists them.",
		Example: "dryfit starter\ndryfit starter raft > loop.yaml\ndryfit starter small-us -o loop.yaml",
		Args:    atMostOne("kind"),
		RunE: func(cmd *cobra.Command, args []string) error {
			if len(args) == 0 {
				return a.starters(cmd.Flags().Changed("output"))
			}
			return a.starter(args[0], out, cmd.Flags().Changed("output"))
		},
		ValidArgsFunction: func(_ *cobra.Command, args []string, _ string) ([]string, cobra.ShellCompDirective) {
			var out []string
			for _, k := range starter.Kinds() {
				if len(args) == 0 {
					out = append(out, k.Name+"\t"+k.About)
				}
			}
			return out, cobra.ShellCompDirectiveNoFileComp
		},
	}
	cmd.Flags().StringVarP(&out, "output", "o", "", "write into a file, which must not be there yet")
	return cmd
}

// starters lists the kinds.
func (a *app) starters(named bool) error {
	if named {
		return misusef("name a kind of loop: `dryfit starter` lists them")
	}
	var names, about []string
	for _, k := range starter.Kinds() {
		names, about = append(names, k.Name), append(about, k.About)
	}
	return a.list(names, about)
}

// list prints words, each with what it stands for.
func (a *app) list(words, about []string) error {
	for i, word := range words {
		for _, l := range report.Wrap(about[i], pageWidth-16) {
			if _, err := fmt.Fprintf(a.out, "%-14s  %s\n", word, l); err != nil {
				return err
			}
			word = ""
		}
	}
	return nil
}

func (a *app) starter(kind, out string, named bool) error {
	data, ok := starter.File(kind)
	if !ok {
		var names []string
		for _, k := range starter.Kinds() {
			names = append(names, k.Name)
		}
		return withNearest("there is no kind `"+kind+"`", kind, names, "`dryfit starter` lists them")
	}
	if !named {
		_, err := a.out.Write(data)
		return err
	}
	return writeNew(out, data)
}

// writeNew writes a file that is not there yet.
func writeNew(name string, data []byte) error {
	f, err := os.OpenFile(name, os.O_WRONLY|os.O_CREATE|os.O_EXCL, 0o644)
	switch {
	case errors.Is(err, fs.ErrExist):
		return misusef("%s is there already and is left as it is; choose another name", report.ShownFile(name))
	case err != nil:
		return misusef("%s cannot be written: %v", name, unwritable(err))
	}
	_, err = f.Write(data)
	if err := errors.Join(err, f.Close()); err != nil {
		os.Remove(name)
		return misusef("%s cannot be written: %v", name, unwritable(err))
	}
	return nil
}
