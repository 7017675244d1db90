package schema

import (
	"reflect"
	"testing"
)

// A house may name every setting that a system file can have, and no other.
func TestSettingsOfHousesAreThoseOfSystems(t *testing.T) {
	enum := func(text []byte, name string) any {
		for _, key := range properties(read(t, text)) {
			if key.pointer[len(key.pointer)-len(name):] == name {
				rule := key.rule
				if items, is := rule["items"].(map[string]any); is {
					rule = items
				}
				return rule["enum"]
			}
		}
		return nil
	}
	of, have := enum(House, "/settings"), enum(System, "/setting")
	if of == nil || !reflect.DeepEqual(of, have) {
		t.Errorf("a house may name %v, a system file %v", of, have)
	}
}
