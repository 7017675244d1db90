package system

import (
	"bytes"
	"encoding/json"
	"maps"
	"path"
	"reflect"
	"slices"
)

// ordered decodes JSON as encoding/json does, and notes beside it in which order
// the keys of each object stand, under the address of its map.
func ordered(data []byte, order map[uintptr][]string) (any, error) {
	var sound json.RawMessage
	if err := json.Unmarshal(data, &sound); err != nil {
		return nil, err
	}
	return decode(json.NewDecoder(bytes.NewReader(data)), order)
}

func decode(d *json.Decoder, order map[uintptr][]string) (any, error) {
	token, err := d.Token()
	if err != nil {
		return nil, err
	}
	switch token {
	case json.Delim('{'):
		object := map[string]any{}
		var keys []string
		for d.More() {
			name, err := d.Token()
			if err != nil {
				return nil, err
			}
			k, _ := name.(string) // sound JSON has no other keys
			if object[k], err = decode(d, order); err != nil {
				return nil, err
			}
			keys = append(keys, k)
		}
		order[reflect.ValueOf(object).Pointer()] = keys
		_, err := d.Token()
		return object, err
	case json.Delim('['):
		array := []any{}
		for d.More() {
			item, err := decode(d, order)
			if err != nil {
				return nil, err
			}
			array = append(array, item)
		}
		_, err := d.Token()
		return array, err
	}
	return token, nil
}

// names is the keys of an object of the schema, in its order.
func (book *Rules) names(object map[string]any) []string {
	if keys, noted := book.order[reflect.ValueOf(object).Pointer()]; noted {
		return keys
	}
	return slices.Sorted(maps.Keys(object))
}

// file is where the schema stands in the project, if its $id names a file.
func (book *Rules) file() string {
	top, _ := book.text.(map[string]any)
	id, _ := top["$id"].(string)
	if id == "" {
		return ""
	}
	return "schema/" + path.Base(id)
}

// node is a value of the schema, such as an example, as a value of a document.
func (book *Rules) node(value any) *node {
	switch v := value.(type) {
	case map[string]any:
		n := &node{form: mapping}
		for _, name := range book.names(v) {
			n.put(key{name: name}, book.node(v[name]))
		}
		return n
	case []any:
		n := &node{form: list}
		for _, item := range v {
			n.items = append(n.items, book.node(item))
		}
		return n
	case string:
		return &node{form: text, text: v}
	case nil:
		return &node{form: null}
	}
	b, err := json.Marshal(value)
	if err != nil {
		return &node{form: null}
	}
	return &node{form: number, text: string(b)} // flow writes numbers, true and false as they stand
}
