package editor

import (
	"context"
	"encoding/json"
	"strings"

	"dryfit/internal/system"
)

// definition is where the thing stands that the word at a position names.
func (s *server) definition(_ context.Context, params json.RawMessage, doc *document) (any, error) {
	p, err := decode[positionParams](params)
	if err != nil {
		return nil, err
	}
	root := scan(doc.text.all)
	n, onKey := root.touched(doc.text.offset(p.Position))
	if n == nil || onKey {
		return nil, nil
	}
	if to := meant(root, n); to != nil {
		return []location{{doc.uri, doc.text.span(to.name)}}, nil
	}
	return nil, nil
}

// mostPlaces bounds the places that are named.
const mostPlaces = 500

// references is where the thing at a position is named.
func (s *server) references(_ context.Context, params json.RawMessage, doc *document) (any, error) {
	p, err := decode[positionParams](params)
	if err != nil {
		return nil, err
	}
	root := scan(doc.text.all)
	n, onKey := root.touched(doc.text.offset(p.Position))
	if n != nil && !onKey {
		n = meant(root, n)
	}
	out := []location{}
	if n == nil {
		return out, nil
	}
	root.each(func(from *node) {
		if len(out) < mostPlaces && from.form == scalar && meant(root, from) == n {
			out = append(out, location{doc.uri, doc.text.span(from.value)})
		}
	})
	return out, nil
}

// meant is the node of the thing that a value names: by its id, a vessel's part or a tee of a line
// behind a dot; nil where it names nothing.
func meant(root *node, n *node) *node {
	path := n.path()
	sorts, _ := system.NamedAt(path)
	id, rest, dotted := strings.Cut(n.word, ".")
	for _, sort := range sorts {
		thing := root.at(sort, id)
		switch {
		case thing == nil:
		case !dotted:
			return thing
		case sort == "lines":
			if tee := teeOf(thing, rest); tee != nil {
				return tee
			}
		default:
			if part := thing.step(rest); part != nil {
				return part
			}
			return thing
		}
	}
	if len(path) == 3 && path[0] == "permits" || len(path) == 3 && path[0] == "concessions" {
		return subject(root, path[2], n.word)
	}
	return nil
}

// subject is the vessel, line or piece that a permit names.
func subject(root *node, key, word string) *node {
	if key != "subject" {
		return nil
	}
	id, piece, _ := strings.Cut(word, "/")
	if vessel := root.at("vessels", id); vessel != nil {
		return vessel
	}
	if n := root.at("lines", id, "pieces", piece); n != nil && len(n.below) > 0 {
		return n.below[0]
	}
	return root.at("lines", id)
}

// teeOf is the tee of a line by its id: the key of the piece.
func teeOf(line *node, id string) *node {
	pieces := line.step("pieces")
	if pieces == nil {
		return nil
	}
	for _, piece := range pieces.below {
		if tee := piece.step("tee"); tee != nil {
			if named := tee.step("id"); named != nil && named.word == id {
				return named
			}
		}
	}
	return nil
}
