package main

import (
	"errors"
	"path/filepath"
	"slices"
	"strings"

	"github.com/agnivade/levenshtein"
	"github.com/spf13/cobra"
	"github.com/spf13/pflag"
)

// nearest is the candidate with the fewest letters different, or "" when none is near.
func nearest(word string, candidates []string) string {
	best, least := "", max(1, len(word)*2/5)+1
	for _, c := range candidates {
		if d := levenshtein.ComputeDistance(strings.ToLower(word), strings.ToLower(c)); d < least {
			best, least = c, d
		}
	}
	return best
}

// withNearest says the nearest word there is, else where to look.
func withNearest(problem, word string, candidates []string, look string) error {
	if near := nearest(word, candidates); near != "" {
		return misusef("%s; the nearest is `%s`", problem, near)
	}
	return misusef("%s; %s", problem, look)
}

func unknownCommand(root *cobra.Command, word string) error {
	switch strings.ToLower(filepath.Ext(word)) {
	case ".yaml", ".yml", ".json":
		return misusef("a file needs a command before it; write `dryfit review %s`", word)
	}
	var names []string
	for _, c := range root.Commands() {
		if !c.Hidden {
			names = append(names, c.Name())
		}
	}
	return withNearest("there is no command `"+word+"`", word, names, "`dryfit help` lists them")
}

// flagError turns what the flag library says into our words.
func flagError(cmd *cobra.Command, problem error) error {
	var unknown *pflag.NotExistError
	var empty *pflag.ValueRequiredError
	var bad *pflag.InvalidValueError
	look := "`dryfit help`"
	if cmd.HasParent() {
		look = "`dryfit help " + cmd.Name() + "`"
	}
	switch {
	case errors.As(problem, &unknown):
		name := unknown.GetSpecifiedName()
		if shorts := unknown.GetSpecifiedShortnames(); shorts != "" {
			return misusef("there is no option `-%s`; %s lists them", name, look)
		}
		if name == "version" {
			return misusef("there is no option `--version`; write `dryfit version`")
		}
		var names []string
		cmd.Flags().VisitAll(func(f *pflag.Flag) { names = append(names, "--"+f.Name) })
		return withNearest("there is no option `--"+name+"`", "--"+name, names, look+" lists them")
	case errors.As(problem, &empty):
		f := empty.GetFlag()
		return misusef("`--%s` wants a value: %s", f.Name, wanted(f))
	case errors.As(problem, &bad):
		f := bad.GetFlag()
		return misusef("`--%s` cannot be `%s`: write %s", f.Name, bad.GetValue(), wanted(f))
	}
	return misusef("%v; %s shows how to call it", problem, look)
}

// wanted is what may stand behind an option.
func wanted(f *pflag.Flag) string {
	if c, ok := f.Value.(*choice); ok {
		return c.words()
	}
	switch f.Value.Type() {
	case "int":
		return "a whole number"
	case "bool":
		return "true or false"
	case "duration":
		return "a time, such as 90s or 5m"
	case "date":
		return "a day, year first, such as 2026-03-14"
	}
	return "the name of a file"
}

// choice is an option that takes one of a few words.
type choice struct {
	value   string
	allowed []string
}

func newChoice(value string, allowed ...string) *choice { return &choice{value, allowed} }

func (c *choice) String() string { return c.value }
func (c *choice) Type() string   { return strings.Join(c.allowed, "|") }

func (c *choice) Set(word string) error {
	if !slices.Contains(c.allowed, word) {
		return errors.New(c.words())
	}
	c.value = word
	return nil
}

// words is the allowed words in a sentence: "text or json".
func (c *choice) words() string {
	last := len(c.allowed) - 1
	return strings.Join(c.allowed[:last], ", ") + " or " + c.allowed[last]
}

// completeChoices tells the shell the words that options take.
func completeChoices(cmd *cobra.Command) error {
	var problem error
	cmd.LocalFlags().VisitAll(func(f *pflag.Flag) {
		if c, ok := f.Value.(*choice); ok {
			problem = errors.Join(problem, cmd.RegisterFlagCompletionFunc(f.Name, cobra.FixedCompletions(c.allowed, cobra.ShellCompDirectiveNoFileComp)))
		}
	})
	return problem
}
