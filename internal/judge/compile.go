package judge

import (
	"fmt"

	"github.com/open-policy-agent/opa/v1/ast"

	"dryfit/internal/review"
)

// care says how far the compiler looks for mistakes.
type care bool

const (
	full   care = true
	little care = false // the same files were compiled with full care before
)

// checks are the steps of the compiler that find mistakes and leave the modules as
// they are, and those for language that clauses do not have: annotations read by
// clauses, text put together, printing.
var checks = []ast.StageID{
	ast.StageCheckUnusedImports, ast.StageCheckKeywordOverrides, ast.StageCheckDuplicateImports,
	ast.StageRewriteTemplateStrings, ast.StageCheckVoidCalls, ast.StageRewritePrintCalls,
	ast.StageParseMetadataBlocks, ast.StageSetAnnotationSet, ast.StageRewriteRegoMetadataCalls,
	ast.StageCheckRuleConflicts, ast.StageCheckUndefinedFuncs, ast.StageCheckSafetyRuleHeads,
	ast.StageCheckRecursion, ast.StageCheckTypes, ast.StageCheckUnsafeBuiltins,
	ast.StageCheckDeprecatedBuiltins, ast.StageBuildRequiredCapabilities,
}

func (b *Book) compile(modules map[string]*ast.Module, care care) error {
	b.compiler = ast.NewCompiler().
		WithCapabilities(capabilities()).
		WithDefaultRegoVersion(ast.RegoV1)
	if care == full {
		b.compiler = b.compiler.WithSchemas(b.schemas()).WithStrict(true)
	} else {
		b.compiler = b.compiler.WithSkipStages(checks...)
		for _, m := range modules { // the compiler copies what it is given
			m.Annotations, m.Comments = nil, nil
		}
	}
	b.compiler.Compile(modules)
	if b.compiler.Failed() {
		return compilerProblems("", b.compiler.Errors).err()
	}
	b.limits, b.cases = inForce(b.clauses)
	for _, c := range b.clauses {
		q, err := b.prepare(c)
		if err != nil {
			return err
		}
		b.queries = append(b.queries, q)
	}
	return nil
}

const answers = ast.Var("judgements")

// prepare is the query that asks one clause for its judgements. One query a clause
// costs little and lets every error name its clause. It holds nothing that a compiler
// would have to rewrite.
func (b *Book) prepare(c *review.Clause) (ast.Body, error) {
	ref := ast.Ref{ast.DefaultRootDocument, text("book"), text(c.Chapter), text(c.ID), text("judgements")}
	if len(b.compiler.GetRulesExact(ref)) == 0 {
		return nil, fmt.Errorf("clause %s has no rule `judgements contains ... if { ... }`", c.ID)
	}
	return ast.NewBody(ast.Equality.Expr(ast.NewTerm(answers), ast.NewTerm(ref))), nil
}
