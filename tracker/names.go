package tracker

import (
	"fmt"
	"slices"
	"strconv"
	"strings"
)

// Title is an operation as it stands on the wall: "80 chain-sew pairs".
func (o Operation) Title() string {
	if o.Name == "" {
		return fmt.Sprintf("%d %s", o.Number, o.Key)
	}
	return fmt.Sprintf("%d %s", o.Number, o.Name)
}

// titleOf is the title of an operation by its key, the key alone where it is not
// in the route any more.
func (r *route) titleOf(key string) string {
	for _, o := range r.rows {
		if o.Key == key {
			return o.Title()
		}
	}
	return key
}

// titles is the titles of operations by their keys.
func (r *route) titles(keys []string) []string {
	all := make([]string, len(keys))
	for i, key := range keys {
		all[i] = r.titleOf(key)
	}
	return all
}

// runTitle is a run as a sentence names it.
func (r *route) runTitle(run []string) string {
	if len(run) == 1 {
		return r.titleOf(run[0])
	}
	return r.titleOf(run[0]) + " to " + r.titleOf(run[len(run)-1])
}

// plainName is a key or a name without what people leave out or type
// otherwise: capitals, further blanks, hyphens.
func plainName(text string) string {
	return strings.Join(strings.Fields(strings.ReplaceAll(strings.ToLower(text), "-", " ")), " ")
}

// found is the operations, by key, that a plain text means: those called so,
// else those whose keys begin so, else those whose names do. Keys come first,
// since what names are called may be worded anew and keys may not.
func (r *route) found(text string) []string {
	if text == "" {
		return nil
	}
	for _, means := range []func(o Operation) bool{
		func(o Operation) bool { return plainName(o.Name) == text || plainName(o.Key) == text },
		func(o Operation) bool { return strings.HasPrefix(plainName(o.Key), text) },
		func(o Operation) bool { return strings.HasPrefix(plainName(o.Name), text) },
	} {
		var keys []string
		for _, o := range r.rows {
			if means(o) && !slices.Contains(keys, o.Key) {
				keys = append(keys, o.Key)
			}
		}
		if len(keys) > 0 {
			return keys
		}
	}
	return nil
}

// asTitle is the key of the operation that a title means, number and name as
// they stand on the wall; "" where it is none.
func (r *route) asTitle(text string) string {
	digits, name, _ := strings.Cut(text, " ")
	n, err := strconv.Atoi(digits)
	if err != nil || name == "" {
		return ""
	}
	for _, o := range r.rows {
		if o.Number == n && strings.HasPrefix(plainName(o.Name), name) {
			return o.Key
		}
	}
	return ""
}

// near is the operations, by key, that a mistyped text may have meant.
func (r *route) near(text string) []string {
	var names, keys []string
	keyOf := map[string]string{}
	for _, o := range r.rows {
		for _, name := range []string{plainName(o.Key), plainName(o.Name)} {
			if _, known := keyOf[name]; !known {
				keyOf[name] = o.Key
				names = append(names, name)
			}
		}
	}
	for _, name := range Nearest(text, names) {
		if !slices.Contains(keys, keyOf[name]) {
			keys = append(keys, keyOf[name])
		}
	}
	return keys
}
