package main

import (
	"fmt"
	"io"
	"strings"

	"github.com/spf13/cobra"
	"github.com/spf13/pflag"

	"dryfit/internal/report"
)

const pageWidth = 80

func (a *app) helpCommand() *cobra.Command {
	return &cobra.Command{
		Use:   "help [COMMAND]",
		Short: "this page, or the page of a command",
		Long:  "Prints what dryfit does, by who wants it; with the name of a command, how to call that.",
		Args:  atMostOne("command"),
		RunE: func(cmd *cobra.Command, args []string) error {
			if len(args) == 0 {
				return overview(a.out)
			}
			for _, c := range cmd.Root().Commands() {
				if c.Name() == args[0] {
					return help(a.out, c)
				}
			}
			return unknownCommand(cmd.Root(), args[0])
		},
		ValidArgsFunction: func(cmd *cobra.Command, args []string, _ string) ([]string, cobra.ShellCompDirective) {
			var names []string
			for _, c := range cmd.Root().Commands() {
				if len(args) == 0 && !c.Hidden {
					names = append(names, c.Name()+"\t"+c.Short)
				}
			}
			return names, cobra.ShellCompDirectiveNoFileComp
		},
	}
}

// overview is the page of dryfit as a whole, by person.
func overview(w io.Writer) error {
	_, err := io.WriteString(w, `dryfit looks at the design of a small aquaponic loop before a hole is cut. It
reads one file that describes the loop, works out how water, waste and parts
will behave, and holds that against a book of clauses.

You build a loop, at home or in a school
    dryfit starter raft > loop.yaml  a commented file to begin with
    dryfit review loop.yaml          what holds, what does not, what to change
    dryfit levels loop.yaml          what may go wrong, and the levels in time
    dryfit day loop.yaml             what the feed of a day turns into
    dryfit sheet loop.yaml -o loop.html          what to take to the shed
    dryfit clauses sharp_bend        what one clause asks for, and why
    dryfit quantities loop.yaml      every number of your loop with its working

You keep the designs of a club or a class
    dryfit review designs            every loop of a folder, and a register of them
    dryfit review designs -o all.sarif -o all.xml -o comment.md
    dryfit review designs --touched-since main   only what has changed
    dryfit review designs --hold-to should       what should be counts, too
    dryfit gather part-1.json part-2.json        results of several machines
    dryfit compare main:designs designs   what moved, and whether it got worse
    dryfit sheet loop.yaml --confirm loop.html   whether a sheet is stale

You teach with it
    dryfit clauses                   the book, chapter by chapter
    dryfit quantities                what each quantity means and its formula
    dryfit guide guide.yaml          what a marking guide gives marks for
    dryfit mark --guide guide.yaml class -o marked/   marks and feedback

You write house rules
    dryfit review loop.yaml --house house        by your own limits and clauses
    dryfit clauses draft rim_reach -o house      a clause to fill in, with tests
    dryfit clauses examine house     what is undocumented, unsourced or untested
    dryfit clauses trial house       its tests, and the lines that none tried
    dryfit book -o book.html         the whole book, with all that is worked out
    dryfit quantities loop.yaml --as json        what a clause in Rego sees

You type a lot
    dryfit editor                    findings as you type, by an editor that speaks
                                     the language server protocol
    dryfit watch loop.yaml           again on every save: only what moved
    dryfit schema system             the schema of a file, for an editor
    dryfit completion bash           the shell finishes the words
    dryfit help review               all options of a command
    dryfit version

The exit status is 0 when there is nothing to act on, 1 when a shall is not met
or cannot be said yet, 2 when a file cannot be read or the call was wrong, and 3
when dryfit itself fails.
`)
	return err
}

// help is the page of one command.
func help(w io.Writer, cmd *cobra.Command) error {
	if !cmd.HasParent() {
		return overview(w)
	}
	var b strings.Builder
	fmt.Fprintf(&b, "%s%s\n\n", strings.TrimSuffix(cmd.CommandPath(), cmd.Name()), cmd.Use)
	for _, l := range report.Wrap(cmd.Long, pageWidth-4) {
		b.WriteString("    " + l + "\n")
	}
	b.WriteString("\n")
	cmd.LocalFlags().VisitAll(func(f *pflag.Flag) { option(&b, f) })
	cmd.InheritedFlags().VisitAll(func(f *pflag.Flag) { option(&b, f) })
	if cmd.Example != "" {
		b.WriteString("\nfor example\n")
		for _, l := range strings.Split(cmd.Example, "\n") {
			b.WriteString("    " + l + "\n")
		}
	}
	_, err := io.WriteString(w, b.String())
	return err
}

// option is one option with what may stand behind it and what it does.
func option(b *strings.Builder, f *pflag.Flag) {
	const column = 34
	if f.Hidden {
		return
	}
	head := "--" + f.Name
	if f.Shorthand != "" {
		head = "-" + f.Shorthand + ", " + head
	}
	what := f.Usage
	switch v := f.Value.(type) {
	case *choice:
		head += " " + v.Type()
		what += "; else " + v.value
	default:
		switch v.Type() {
		case "int":
			head += " N"
		case "stringArray":
			head += " FILE"
		case "date":
			head += " DATE"
		case "duration":
			head += " TIME"
		case "string":
			word := map[string]string{"confirm": "OUT", "cache": "FOLDER", "touched-since": "REV", "guide": "FILE", "moderation": "FILE", "starter": "FILE", "output": "FILE"}[f.Name]
			if word == "" {
				word = strings.ToUpper(f.Name)
			}
			head += " " + word
		}
	}
	head = "    " + head
	if len(head) > column-2 {
		b.WriteString(head + "\n")
		head = ""
	}
	for _, l := range report.Wrap(what, pageWidth-column) {
		fmt.Fprintf(b, "%-*s  %s\n", column-2, head, l)
		head = ""
	}
}
