package planner

import (
	"fmt"
	"slices"
	"strconv"
	"strings"
)

// Change is one value of a job file that is to be another. Key is a path of the
// file, or a short form of one: "across" for layout.across, "square" for the
// block's wherever the file gives it, "tide.offset" for a colourway's,
// "borders.1.width" for the first border's.
type Change struct {
	Key   string
	Value string // as the file would have it
}

// String is the change as it was typed.
func (c Change) String() string { return c.Key + "=" + c.Value }

// Altered is a job read with changes to its file. Spread says that the blocks of
// its colourways were counted anew, since the layout holds another number.
type Altered struct {
	Job    Job
	Spread bool
}

// ParseAltered reads a job file as Parse does, with some of its values changed.
// The file itself is not touched. Where the layout then holds another number of
// blocks than the colourways have, they keep their proportions: each gets the
// whole number of its share, and the largest remainders one more each, the first
// in the file before others (largest remainder). A colourway whose number is
// among the changes keeps that, and each keeps at least one. Counts of fabrics
// are shared out likewise.
//
// The error is Problems. Their places are the file's, and say nothing of values
// that do not stand there.
func ParseAltered(file string, data []byte, changes []Change) (Altered, error) {
	r := &jobReader{file: file, at: Positions{}}
	root := r.tree(data)
	if root == nil {
		return Altered{}, r.found()
	}
	a := &altering{root: root, fixed: map[string]bool{}}
	for _, c := range changes {
		if problem := a.set(c); problem != nil {
			problem.File = file
			return Altered{}, Problems{problem}
		}
	}
	spread := a.spread(file)
	r.readJob(root)
	r.check()
	if len(r.problems) > 0 {
		return Altered{}, r.found()
	}
	r.job.File, r.job.At = file, r.at
	return Altered{r.job, spread}, nil
}

// altering is a job file's values while some are set anew.
type altering struct {
	root  *fileNode
	fixed map[string]bool // colourways whose blocks were given
}

// shortKeys are the keys of the layout that may stand alone.
var shortKeys = []string{"across", "down", "setting", "order", "sashing"}

// set puts a value in its place, or in each place where the file has it.
func (a *altering) set(c Change) *Problem {
	value, problem := valueOf(c)
	if problem != nil {
		return problem
	}
	paths, problem := a.paths(c)
	if problem != nil {
		return problem
	}
	for _, path := range paths {
		if problem := a.put(c, path, value); problem != nil {
			return problem
		}
		if len(path) == 3 && path[0] == "colourways" && path[2] == "blocks" {
			a.fixed[path[1]] = true
		}
	}
	return nil
}

// valueOf reads a value: a list or keys in brackets as YAML, anything else as
// its own text.
func valueOf(c Change) (*fileNode, *Problem) {
	if !strings.HasPrefix(c.Value, "[") && !strings.HasPrefix(c.Value, "{") {
		return &fileNode{kind: scalar, at: Position{1, 1}, text: trimmed(c.Value)}, nil
	}
	r := &jobReader{at: Positions{}}
	n := r.tree([]byte(c.Value))
	if n == nil {
		return nil, &Problem{Path: c.Key, What: r.problems[0].What, Hint: r.problems[0].Hint}
	}
	return n, nil
}

// paths are the places that a key means.
func (a *altering) paths(c Change) ([][]string, *Problem) {
	path := strings.Split(c.Key, ".")
	first := path[0]
	colourways := a.names("colourways")
	if key, ok := keyNamed(first, keysOfJobs()); ok && !slices.Contains(colourways, first) {
		path[0] = key
		return [][]string{path}, nil
	}
	if key, ok := keyNamed(first, shortKeys); ok {
		path[0] = key
		return [][]string{append([]string{"layout"}, path...)}, nil
	}
	if slices.Contains(colourways, first) {
		return [][]string{append([]string{"colourways"}, path...)}, nil
	}
	if slices.Contains(a.names("fabrics"), first) {
		return [][]string{append([]string{"fabrics"}, path...)}, nil
	}
	if key, ok := keyNamed(first, a.blockKeys()); ok {
		path[0] = key
		return a.blockPaths(path, colourways), nil
	}
	known := slices.Concat(keysOfJobs(), shortKeys, a.blockKeys(), colourways)
	hint := didYouMean(first, known)
	if hint == "" {
		hint = "write a path of the job file: across=5, square=6 1/2, tide.offset=1, borders.1.width=3"
	}
	return nil, &Problem{Path: c.Key, What: fmt.Sprintf("there is nothing called %s in a job file", said(first)), Hint: hint}
}

// blockKeys are the keys that a block may have, those of the file's own steps
// too.
func (a *altering) blockKeys() []string {
	keys := keysOfBlocks()
	for _, node := range a.blocks() {
		for _, pair := range node.pairs {
			if !slices.Contains(keys, pair.key) && pair.key != "blocks" && pair.key != "was" {
				keys = append(keys, pair.key)
			}
		}
	}
	return keys
}

// blocks are the shared block and each colourway's own.
func (a *altering) blocks() []*fileNode {
	var all []*fileNode
	if block := a.root.field("block"); block != nil {
		all = append(all, block)
	}
	if colourways := a.root.field("colourways"); colourways != nil {
		for _, pair := range colourways.pairs {
			all = append(all, pair.value)
		}
	}
	return all
}

// blockPaths are wherever the file gives a key of a block: the shared block, and
// each colourway that has it. Where none has, the shared block gets it.
func (a *altering) blockPaths(path, colourways []string) [][]string {
	var paths [][]string
	if a.root.field("block").field(path[0]) != nil {
		paths = append(paths, append([]string{"block"}, path...))
	}
	for _, name := range colourways {
		if a.root.field("colourways").field(name).field(path[0]) != nil {
			paths = append(paths, append([]string{"colourways", name}, path...))
		}
	}
	if paths == nil {
		paths = [][]string{append([]string{"block"}, path...)}
	}
	return paths
}

// names are the names under a key of the file.
func (a *altering) names(key string) []string {
	var names []string
	if n := a.root.field(key); n != nil {
		for _, pair := range n.pairs {
			names = append(names, pair.key)
		}
	}
	return names
}

// field is the value at a key, under any of its words; nil where there is none.
func (n *fileNode) field(key string) *fileNode {
	if n == nil {
		return nil
	}
	for _, pair := range n.pairs {
		if pair.key == key {
			return pair.value
		}
	}
	for _, pair := range n.pairs {
		if _, ok := keyNamed(pair.key, []string{key}); ok {
			return pair.value
		}
	}
	return nil
}

// put sets the value at a path; keys on the way that the file does not have are
// made, places of a list are not.
func (a *altering) put(c Change, path []string, value *fileNode) *Problem {
	node := a.root
	for i, key := range path {
		last := i == len(path)-1
		if node.kind == list {
			at, problem := placeIn(c, node, key)
			if problem != nil {
				return problem
			}
			if last {
				copied := *value
				node.items[at] = &copied
				return nil
			}
			node = node.items[at]
			continue
		}
		if node.kind == scalar {
			return &Problem{Path: c.Key, What: fmt.Sprintf("%s is %s and has no %s", said(path[i-1]), said(node.text), said(key))}
		}
		node = node.key(key, last, value)
	}
	return nil
}

// key is the value at a key, made where it is missing; the last one is set.
func (n *fileNode) key(key string, last bool, value *fileNode) *fileNode {
	n.kind = fields
	have := n.field(key)
	if have == nil {
		have = &fileNode{kind: fields, at: n.at}
		n.pairs = append(n.pairs, filePair{key: key, at: n.at, value: have})
	}
	if last {
		at := have.at
		*have = *value
		have.at = at
	}
	return have
}

// placeIn is the place of a list that a path names, counted from one.
func placeIn(c Change, n *fileNode, key string) (int, *Problem) {
	at, err := strconv.Atoi(key)
	if err != nil || at < 1 || at > len(n.items) {
		return 0, &Problem{Path: c.Key, What: fmt.Sprintf("%s is no place of a list of %d", said(key), len(n.items)),
			Hint: "places count from 1, such as borders.1.width"}
	}
	return at - 1, nil
}
