package main

import (
	"fmt"
	"io/fs"
	"os"
	"path/filepath"

	"github.com/spf13/cobra"

	"dryfit/internal/corpus"
	"dryfit/internal/judge"
	"dryfit/internal/report"
	"dryfit/internal/review"
	"dryfit/internal/survey"
	"dryfit/internal/system"
	"dryfit/rules"
)

// houseClauses is the commands for those who write clauses of a house.
func (a *app) houseClauses() []*cobra.Command {
	return []*cobra.Command{a.examineCommand(), a.trialCommand(), a.draftCommand()}
}

func (a *app) examineCommand() *cobra.Command {
	return &cobra.Command{
		Use:   "examine DIR",
		Short: "whether the clauses of a house can be used",
		Long: "Reads the clauses (*.rego) of a folder and their tests, and says on which line what is missing or wrong and what to write instead: " +
			"names that there are not, clauses without title, reason, limits, sources or an example, without their four tests, with tests that fail or with lines " +
			"that no test reaches. The exit status is 2 where there is anything of it; else it lists the clauses.",
		Example: "dryfit clauses examine house",
		Args:    oneFolder,
		RunE: func(cmd *cobra.Command, args []string) error {
			look, folder, err := a.houseFolder(args[0])
			if err != nil {
				return err
			}
			found := judge.Examine(cmd.Context(), survey.Catalogue(), rules.Book, folder)
			if len(found.Problems) > 0 {
				return a.refuse(args[0], found.Problems, look)
			}
			if len(found.Clauses) == 0 {
				return misusef("there is no clause in %s; `dryfit clauses draft NAME -o %[1]s` writes one", report.ShownFile(args[0]))
			}
			return report.Clauses(a.out, found.Clauses, look)
		},
		ValidArgsFunction: onlyFolders,
	}
}

func (a *app) trialCommand() *cobra.Command {
	return &cobra.Command{
		Use:   "trial DIR",
		Short: "run the tests of the clauses of a house",
		Long: "Runs the tests (*_test.rego) that stand beside the clauses of a folder, with their limits and cases as data.limits and data.cases, and says of each whether it holds, " +
			"and which lines of the clauses no test tried. Tests can call what clauses can, and object.union and array.concat; those of one clause have 5 s and 256 MB. The exit status is 1 where " +
			"a test fails or a line was never tried, 2 where a clause does not load.",
		Example: "dryfit clauses trial house",
		Args:    oneFolder,
		RunE: func(cmd *cobra.Command, args []string) error {
			look, folder, err := a.houseFolder(args[0])
			if err != nil {
				return err
			}
			trial, problems := judge.Try(cmd.Context(), survey.Catalogue(), rules.Book, folder)
			if len(problems) > 0 {
				if err := a.refuse(args[0], problems, look); err != nil || len(trial.Tests) == 0 {
					return err
				}
				fmt.Fprintln(a.out)
			}
			if len(trial.Tests) == 0 {
				return misusef("there is no test in %s; `dryfit clauses draft NAME -o %[1]s` writes a clause with its tests", report.ShownFile(args[0]))
			}
			if !trial.Sound() {
				a.status = max(a.status, review.Act)
			}
			return report.Trial(a.out, tried(args[0], trial), look)
		},
		ValidArgsFunction: onlyFolders,
	}
}

// tried is a trial as it is written.
func tried(dir string, t *judge.Trial) []report.Tried {
	var out []report.Tried
	for _, test := range t.Tests {
		out = append(out, report.Tried{File: filepath.Join(dir, test.File), Row: test.Row, Name: test.Name, Why: test.Why, Failed: test.Why != ""})
	}
	for _, rows := range t.Untried {
		why := "never tried"
		if rows.To > rows.From {
			why = fmt.Sprintf("up to line %d never tried", rows.To)
		}
		out = append(out, report.Tried{File: filepath.Join(dir, rows.File), Row: rows.From, Why: why})
	}
	return out
}

func (a *app) draftCommand() *cobra.Command {
	var chapter, of, dir string
	cmd := &cobra.Command{
		Use:   "draft NAME",
		Short: "begin a clause of a house with its four tests",
		Long: "Writes CHAPTER/NAME.rego and CHAPTER/NAME_test.rego into a folder: a clause that loads, and four tests that hold. What is to be written into them says `to fill in`; " +
			"`dryfit clauses examine` says what is left. A file that is there is never written over.",
		Example: "dryfit clauses draft rim_reach --of rim_height --chapter yard -o house",
		Args: func(_ *cobra.Command, args []string) error {
			if len(args) != 1 {
				return misusef("give one name for the clause, such as `dryfit clauses draft rim_reach -o house`")
			}
			return nil
		},
		RunE: func(_ *cobra.Command, args []string) error {
			return a.draft(args[0], chapter, of, dir)
		},
		ValidArgsFunction: func(*cobra.Command, []string, string) ([]string, cobra.ShellCompDirective) {
			return nil, cobra.ShellCompDirectiveNoFileComp
		},
	}
	cmd.Flags().StringVar(&chapter, "chapter", "local", "chapter of the book that it goes into, or a new one")
	cmd.Flags().StringVar(&of, "of", "rim_height", "quantity that it measures; `dryfit quantities` lists them")
	cmd.Flags().StringVarP(&dir, "output", "o", ".", "folder to write into")
	return cmd
}

func (a *app) draft(name, chapter, of, dir string) error {
	reviewer, err := corpus.NewReviewer()
	if err != nil {
		return fmt.Errorf("the book does not load: %w", err)
	}
	for _, c := range reviewer.Book().Clauses() {
		if c.ID == name {
			return misusef("the book has a clause %s already; give yours another name, or change that one in house.yaml", name)
		}
	}
	if other := already(dir, name); other != "" {
		return misusef("%s is there already; give the clause another name", report.ShownFile(other))
	}
	text, tests, err := judge.Draft(survey.Catalogue(), chapter, name, of)
	if err != nil {
		return misusef("%v", err)
	}
	folder := filepath.Join(dir, chapter)
	files := []string{filepath.Join(folder, name+".rego"), filepath.Join(folder, name+"_test.rego")}
	for _, file := range files {
		if _, err := os.Lstat(file); err == nil {
			return misusef("%s is there already and is not written over; give the clause another name", report.ShownFile(file))
		}
	}
	if err := os.MkdirAll(folder, 0o755); err != nil {
		return misusef("the folder %s cannot be made: %v", report.ShownFile(folder), unwritable(err))
	}
	for i, content := range []string{text, tests} {
		if err := writeNew(files[i], []byte(content)); err != nil {
			return err
		}
		fmt.Fprintln(a.out, report.ShownFile(files[i]))
	}
	return nil
}

// houseFolder opens the folder of a house; nothing outside it is read.
func (a *app) houseFolder(name string) (report.Options, fs.FS, error) {
	look, err := a.options("metric")
	if err != nil {
		return look, nil, err
	}
	info, err := os.Stat(name)
	if err == nil && !info.IsDir() {
		return look, nil, misusef("%s is no folder; name the folder that holds the clauses", report.ShownFile(name))
	}
	root, err := os.OpenRoot(name)
	if err != nil {
		return look, nil, misusef("%s cannot be read: %v", report.ShownFile(name), corpus.Reason(err))
	}
	return look, root.FS(), nil
}

// refuse prints what is wrong with the files of a house, a table each.
func (a *app) refuse(dir string, problems judge.Problems, look report.Options) error {
	a.status = review.Unreadable
	for len(problems) > 0 {
		file := problems[0].File
		var rows []system.Problem
		for len(problems) > 0 && problems[0].File == file {
			found, write := problems[0].Parts()
			rows = append(rows, system.Problem{File: file, Line: problems[0].Row, Found: found, Write: write})
			problems = problems[1:]
		}
		if err := report.HouseProblems(a.out, filepath.Join(dir, file), rows, look); err != nil {
			return err
		}
		if len(problems) > 0 {
			fmt.Fprintln(a.out)
		}
	}
	return nil
}

func oneFolder(cmd *cobra.Command, args []string) error {
	if len(args) != 1 {
		return misusef("name one folder of clauses: `dryfit clauses %s DIR`", cmd.Name())
	}
	return nil
}

func onlyFolders(*cobra.Command, []string, string) ([]string, cobra.ShellCompDirective) {
	return nil, cobra.ShellCompDirectiveFilterDirs
}

// already is the file of a clause of that name in the folder of a house, whatever its chapter; empty without.
func already(dir, name string) string {
	found, err := filepath.Glob(filepath.Join(dir, "*", name+".rego"))
	if err != nil || len(found) == 0 {
		return ""
	}
	return found[0]
}
