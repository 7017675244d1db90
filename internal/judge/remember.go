package judge

import (
	"github.com/open-policy-agent/opa/v1/ast"
	"github.com/open-policy-agent/opa/v1/topdown"
)

// remembered is what has been evaluated within one query, but for the functions of the
// vocabulary: they are seldom asked the same thing twice, and to keep their answers
// costs more than to give them.
type remembered struct{ topdown.VirtualCache }

func (c remembered) Get(ref ast.Ref) (*ast.Term, bool) {
	if ofVocabulary(ref) {
		return nil, false
	}
	return c.VirtualCache.Get(ref)
}

func (c remembered) Put(ref ast.Ref, value *ast.Term) {
	if !ofVocabulary(ref) {
		c.VirtualCache.Put(ref, value)
	}
}

// ofVocabulary says whether a key is a call of the vocabulary: the name of a function, then its arguments.
func ofVocabulary(key ast.Ref) bool {
	name, call := key[0].Value.(ast.Ref)
	return call && len(name) > 1 && name[1].Value == ast.Value(ast.String("vocab"))
}
