package planner

import (
	"strconv"
	"strings"

	"github.com/goccy/go-yaml/ast"
	"github.com/goccy/go-yaml/lexer"
	"github.com/goccy/go-yaml/parser"
	"github.com/goccy/go-yaml/token"
)

// nodeKind is what a place of the file holds. Scalars have no further kind: a
// number, a date and `NO` are text until a reader asks for something else.
type nodeKind uint8

const (
	nothing nodeKind = iota
	scalar
	list
	fields
)

// fileNode is one value of the file.
type fileNode struct {
	kind  nodeKind
	at    Position // of the value; of its key for a block of lines under a key
	text  string   // of a scalar, without quotes and blanks round it
	items []*fileNode
	pairs []filePair // in file order

	label   string // the key that leads here, under its own word, not a synonym
	path    string // from the top, as in Problem
	example string // how the key and a value may be written, "" where unknown
}

// filePair is a key as written and its value.
type filePair struct {
	key   string
	at    Position
	value *fileNode
}

// tree reads the text into nodes; nil where it cannot, with the problems
// reported.
func (r *jobReader) tree(data []byte) *fileNode {
	text, ok := r.cleanText(data)
	if !ok {
		return nil
	}
	tokens := lexer.Tokenize(text)
	if !r.plainYAML(tokens) {
		return nil
	}
	parsed, err := parser.Parse(tokens, 0, parser.AllowDuplicateMapKey())
	if err != nil {
		r.reportSyntax(err)
		return nil
	}
	if !r.oneColonEach(tokens) {
		return nil
	}
	for _, doc := range parsed.Docs {
		if doc.Body != nil {
			return plant(doc.Body, Position{})
		}
	}
	r.report(Position{1, 1}, "", "the file is empty", "begin with "+keyExamples()["job"])
	return nil
}

// plant turns the library's node into ours. The key's position is zero where no
// key leads to the node.
func plant(n ast.Node, key Position) *fileNode {
	switch n := n.(type) {
	case *ast.MappingNode:
		return plantFields(n.Values, positionOf(n), key, n.IsFlowStyle)
	case *ast.MappingValueNode:
		return plantFields([]*ast.MappingValueNode{n}, positionOf(n.Key), key, false)
	case *ast.SequenceNode:
		node := &fileNode{kind: list, at: positionOf(n)}
		if !n.IsFlowStyle && key.Line > 0 {
			node.at = key
		}
		for _, value := range n.Values {
			node.items = append(node.items, plant(value, Position{}))
		}
		return node
	case *ast.LiteralNode:
		return &fileNode{kind: scalar, at: positionOf(n), text: trimmed(n.Value.Value)}
	}
	return plantScalar(n, key)
}

// plantFields makes a group of keys. Written in braces it stands where they open;
// as lines under a key it stands at that key, which is the line to look at.
func plantFields(values []*ast.MappingValueNode, at, key Position, bracketed bool) *fileNode {
	node := &fileNode{kind: fields, at: at, pairs: make([]filePair, 0, len(values))}
	for _, v := range values {
		keyAt := positionOf(v.Key)
		node.pairs = append(node.pairs, filePair{
			key: trimmed(v.Key.GetToken().Value), at: keyAt, value: plant(v.Value, keyAt),
		})
	}
	switch {
	case bracketed:
	case key.Line > 0:
		node.at = key
	case len(node.pairs) > 0:
		node.at = node.pairs[0].at
	}
	return node
}

// plantScalar keeps the text that the file has, whatever type the library saw in it.
func plantScalar(n ast.Node, key Position) *fileNode {
	t := n.GetToken()
	if t.Type == token.ImplicitNullType {
		if key.Line == 0 {
			key = positionOf(n)
		}
		return &fileNode{kind: nothing, at: key}
	}
	return &fileNode{kind: scalar, at: positionOf(n), text: trimmed(t.Value)}
}

// positionOf is where a node of the library begins.
func positionOf(n ast.Node) Position { return tokenPosition(n.GetToken()) }

// tokenPosition counts columns in characters, as editors do.
func tokenPosition(t *token.Token) Position {
	return Position{Line: max(1, t.Position.Line), Column: max(1, t.Position.Column)}
}

// trimmed takes the blanks off both ends, those in quotes too: nobody can see them.
func trimmed(text string) string { return strings.TrimSpace(text) }

// under marks the value as standing at a key of another.
func (n *fileNode) under(parent *fileNode, key string) {
	n.label, n.path, n.example = key, key, keyExamples()[key]
	if parent.path != "" {
		n.path = parent.path + "." + key
	}
}

// itemOf marks the value as one of a list, counted from zero.
func (n *fileNode) itemOf(parent *fileNode, i int) {
	n.label, n.path = parent.label, parent.path+"["+strconv.Itoa(i)+"]"
	n.example = parent.example
}

// hint shows how the key is written.
func (n *fileNode) hint() string { return writeAs(n.example) }

// holds says what the file gives here, for the end of "…, not".
func (n *fileNode) holds() string {
	switch n.kind {
	case list:
		return "a list"
	case fields:
		return "keys with values"
	case nothing:
		return "nothing"
	default:
		return said(n.text)
	}
}
