package main

import (
	"context"
	"errors"
	"fmt"
	"io"
	"os"
	"os/signal"
	"runtime/debug"
	"strings"
	"syscall"

	"github.com/spf13/cobra"

	"dryfit/internal/report"
	"dryfit/internal/review"
)

// app is one call of the program: its streams, its surroundings, what it comes to.
type app struct {
	in     io.Reader
	out    io.Writer
	err    io.Writer
	env    func(string) string
	status int

	colour *choice
	width  int
	trace  bool
	house  string

	endless bool // what it does has no end of its own: it ends when it is stopped
}

// run does what the arguments ask and gives the exit status. It never panics.
func run(args []string, in io.Reader, out, err io.Writer, env func(string) string) (status int) {
	a := &app{in: in, out: out, err: err, env: env}
	defer func() {
		if fault := recover(); fault != nil {
			a.say("something in dryfit itself is broken: %v; do not rely on what it printed", fault)
			if a.trace {
				a.err.Write(debug.Stack())
			} else {
				a.say("run it again with --trace and send what it prints to whoever keeps dryfit")
			}
			status = review.Fault
		}
	}()
	root := a.root()
	if problem := strayWord(root, args); problem != nil {
		return a.fail(problem)
	}
	root.SetArgs(args)
	root.SetIn(in)
	root.SetOut(out)
	root.SetErr(err)
	ctx, stop := signal.NotifyContext(context.Background(), os.Interrupt, syscall.SIGTERM)
	defer stop()
	context.AfterFunc(ctx, stop) // the second time it ends at once
	problem := root.ExecuteContext(ctx)
	switch {
	case ctx.Err() != nil && !a.endless:
		return a.fail(misusef("stopped before the end; what it was to write into files is not written"))
	case problem != nil:
		return a.fail(problem)
	}
	return a.status
}

// say writes one line to the error stream. Names of files come from strangers, and stay names.
func (a *app) say(format string, args ...any) {
	fmt.Fprintf(a.err, "dryfit: %s\n", report.Plain(fmt.Sprintf(format, args...)))
}

// misuse is a call that cannot be answered: what is wrong and what to do next.
type misuse string

func (m misuse) Error() string { return string(m) }

func misusef(format string, args ...any) error { return misuse(fmt.Sprintf(format, args...)) }

// fail says what is wrong, one thing a line, and gives the exit status for it.
func (a *app) fail(problem error) int {
	for _, one := range apart(problem) {
		a.say("%v", one)
	}
	var m misuse
	if errors.As(problem, &m) {
		return review.Unreadable
	}
	return review.Fault
}

// apart is the errors that were joined into one.
func apart(problem error) []error {
	joined, ok := problem.(interface{ Unwrap() []error })
	if !ok {
		return []error{problem}
	}
	var out []error
	for _, one := range joined.Unwrap() {
		out = append(out, apart(one)...)
	}
	return out
}

func (a *app) root() *cobra.Command {
	root := &cobra.Command{
		Use: "dryfit", SilenceErrors: true, SilenceUsage: true,
		Args: cobra.ArbitraryArgs,
		RunE: func(cmd *cobra.Command, args []string) error {
			if len(args) > 0 {
				return unknownCommand(cmd, args[0])
			}
			a.status = review.Unreadable
			return overview(a.err)
		},
		CompletionOptions: cobra.CompletionOptions{DisableDefaultCmd: true},
	}
	a.colour = newChoice("auto", "auto", "always", "never")
	flags := root.PersistentFlags()
	flags.Var(a.colour, "colour", "colour: on a terminal that has it (auto), always, or never")
	flags.IntVar(&a.width, "width", 0, "columns to write in, 40 to 1000; else those of the terminal, or 80")
	flags.BoolVar(&a.trace, "trace", false, "if dryfit itself fails, print where")
	flags.StringVar(&a.house, "house", "", "rules of a house: a folder with house.yaml and clauses, or such a file; else DRYFIT_HOUSE")
	flags.BoolP("help", "h", false, "print this page")
	root.SetFlagErrorFunc(flagError)
	root.SetHelpFunc(func(cmd *cobra.Command, _ []string) {
		if err := help(a.out, cmd); err != nil {
			a.status = a.fail(err)
		}
	})
	helping := a.helpCommand()
	root.SetHelpCommand(helping)
	root.AddCommand(a.reviewCommand(), a.gatherCommand(), a.levelsCommand(), a.dayCommand(), a.sheetCommand(), a.compareCommand(), a.markCommand(), a.clausesCommand(), a.bookCommand(), a.quantitiesCommand(), a.guideCommand(), a.starterCommand(), a.watchCommand(), a.editorCommand(), a.schemaCommand(), a.versionCommand(), a.completionCommand())
	for _, c := range root.Commands() {
		if err := completeChoices(c); err != nil {
			panic(err)
		}
	}
	return root
}

// strayWord finds a first word that is no command, before its options are looked at.
func strayWord(root *cobra.Command, args []string) error {
	if len(args) == 0 || strings.HasPrefix(args[0], "-") || strings.HasPrefix(args[0], cobra.ShellCompRequestCmd) || args[0] == "help" {
		return nil
	}
	for _, c := range root.Commands() {
		if c.Name() == args[0] {
			return nil
		}
	}
	return unknownCommand(root, args[0])
}
