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

// compile makes the clauses of the book ready.
func (b *Book) compile(modules map[string]*ast.Module, care care) error {
	var schemas *ast.SchemaSet
	if care == full {
		schemas = b.names.schemas(b.clauses...)
	}
	compiler, err := compiled(modules, care, schemas)
	if err != nil {
		return err
	}
	for _, c := range b.clauses {
		q, err := prepare(compiler, c)
		if err != nil {
			return err
		}
		b.ready[c.ID] = ready{compiler, q}
	}
	return nil
}

// compiled is modules compiled together.
func compiled(modules map[string]*ast.Module, care care, schemas *ast.SchemaSet) (*ast.Compiler, error) {
	compiler := ast.NewCompiler().
		WithCapabilities(capabilities()).
		WithDefaultRegoVersion(ast.RegoV1)
	if care == full {
		compiler = compiler.WithSchemas(schemas).WithStrict(true)
	} else {
		compiler = compiler.WithSkipStages(checks...)
		for _, m := range modules { // the compiler copies what it is given
			m.Annotations, m.Comments = nil, nil
		}
	}
	compiler.Compile(modules)
	if compiler.Failed() {
		return nil, compilerProblems("", compiler.Errors).err()
	}
	return compiler, nil
}

const answers = ast.Var("judgements")

// prepare is the query that asks one clause for its judgements. One query a clause
// costs little and lets every error name its clause. It holds nothing that a compiler
// would have to rewrite.
func prepare(compiler *ast.Compiler, c *review.Clause) (ast.Body, error) {
	ref := ast.Ref{ast.DefaultRootDocument, text(root(c.Own)), text(c.Chapter), text(c.ID), text("judgements")}
	if len(compiler.GetRulesExact(ref)) == 0 {
		return nil, fmt.Errorf("clause %s has no rule `judgements contains ... if { ... }`", c.ID)
	}
	return ast.NewBody(ast.Equality.Expr(ast.NewTerm(answers), ast.NewTerm(ref))), nil
}
