package planner

import (
	"strings"
	"testing"
)

// The library's own complaints never reach a person.
func TestTextThatIsNoYAMLIsRefusedInWords(t *testing.T) {
	assertFaults(t, []faultCase{
		{
			"a tab as indent", "  across: 4",
			"\tacross: 4",
			[]string{"28:1: a tab indents this line; indent with blanks, two for each step; YAML does not take anything else"},
		},
		{
			"tabs as indents", "  across: 4\n  down: 2",
			"\tacross: 4\n\tdown: 2",
			[]string{"28:1: a tab indents this line, and 1 more; indent with blanks, two for each step; YAML does not take anything else"},
		},
		{
			"a blank that does not break, as indent", "  across: 4",
			"  across: 4",
			[]string{"28:1: a blank of another kind (U+00A0) indents this line; indent with blanks, two for each step; YAML does not take anything else"},
		},
		{
			"a control character", "title: Estuary lap quilt",
			"title: Estuary\a lap",
			[]string{"2:15: a control character (U+0007) stands here; delete it; it cannot be seen in most editors"},
		},
		{
			"a second colon", "title: Estuary lap quilt",
			"title: Estuary: lap",
			[]string{"2:8: a second colon stands in this value; put quotes round a text that holds a colon"},
		},
		{
			"a second colon within brackets", "{form: yardage, width: 42}",
			"{form: yardage width: 42}",
			[]string{`10:16: there is a second colon in "yardage width: 42"; put a comma before the next key, or quotes round a text that holds a colon`},
		},
		{
			"no blank after the colon", "title: Estuary lap quilt",
			"title:Estuary lap quilt",
			[]string{`2:1: a blank is missing after the colon in "title:Estuary lap quilt"; write key: value`},
		},
		{
			"no blank after the first colon", "job: estuary-lap\n",
			"job:estuary-lap\n",
			[]string{`1:1: a blank is missing after the colon in "job:estuary-lap"; write key: value`},
		},
		{
			"no colon", "title: Estuary lap quilt",
			"title",
			[]string{`2:1: there is no colon after "title"; write key: value`},
		},
		{
			"a line too deep", "title: Estuary lap quilt",
			"  title: Estuary lap quilt",
			[]string{"2:3: this line is indented deeper than the one above, which has its value already; give keys that belong together the same indent"},
		},
		{
			"a line too shallow", "    print: Kelp",
			"   print: Kelp",
			[]string{"20:4: this does not stand in line with what is above; give keys that belong together the same indent"},
		},
		{
			"a list between keys", "title: Estuary lap quilt",
			"- title",
			[]string{"2:1: a - begins a list here, between keys; indent the list under its key"},
		},
		{
			"a list on its key's line", "borders:\n  -",
			"borders: -",
			[]string{"30:10: a list begins on its key's own line; begin the list on the next line, or write [a, b]"},
		},
		{
			"a bracket not closed", "print: [Foam]",
			"print: [Foam",
			[]string{"24:12: the [ opened here is not closed before line 25; close it where its entries end"},
		},
		{
			"a brace not closed", "width: 42}",
			"width: 42",
			[]string{"10:9: the { opened here is not closed before line 12; close it where its entries end"},
		},
		{
			"a brace not closed at the end", "medium}",
			"medium",
			[]string{"35:11: the { opened here is never closed; close it where its entries end"},
		},
		{
			"a bracket closed by a brace", "print: [Foam]",
			"print: [Foam}",
			[]string{"24:12: the [ opened here is not closed before line 25; close it where its entries end"},
		},
		{
			"a bracket not opened", "print: [Foam]",
			"print: ]",
			[]string{"24:12: there is no [ before this ]"},
		},
		{
			"a comma too many", "print: [Foam]",
			"print: [Foam,, Kelp]",
			[]string{"24:18: there is nothing before this; take it out, or write what is missing"},
		},
		{
			"a double quote not closed", "title: Estuary lap quilt",
			`title: "Estuary`,
			[]string{`2:8: a " is opened here and never closed; write a " that belongs to the text as \"`},
		},
		{
			"a single quote not closed", "title: Estuary lap quilt",
			"title: 'Estuary",
			[]string{`2:8: a ' is opened here and never closed; put a text that holds an apostrophe in double quotes: "it's"`},
		},
		{
			"an apostrophe in single quotes", "title: Estuary lap quilt",
			"title: 'it's'",
			[]string{`2:12: a quoted text ends before this; an apostrophe or a quote in a text needs the other kind of quotes round it: "it's"`},
		},
		{
			"an escape that is none", "title: Estuary lap quilt",
			`title: "a\q"`,
			[]string{`2:11: a \ in double quotes stands before something that it does not go with; write \\ for the \ itself`},
		},
		{
			"an escape cut short", "quilting: {by: self, density: medium}\n",
			`client: "\u12"`,
			[]string{`35:10: a \ in double quotes stands before something that it does not go with; write \\ for the \ itself`},
		},
		{
			"an at sign in front", "title: Estuary lap quilt",
			"title: @home",
			[]string{"2:8: a text cannot begin with @ or `; put quotes round it"},
		},
		{
			"a per cent sign in front", "title: Estuary lap quilt",
			"title: %home",
			[]string{"2:8: a text begins with %, which YAML takes for a directive; job files have none; put quotes round a name"},
		},
		{
			"an anchor and its alias", "title: Estuary lap quilt",
			"title: &name Estuary\nclient: *name",
			[]string{
				`2:8: a text begins with "&", which YAML takes for a link to another place; job files have none; write the value out, or put quotes round a name`,
				`3:9: a text begins with "*", which YAML takes for a link to another place; job files have none; write the value out, or put quotes round a name`,
			},
		},
		{
			"a tag", "title: Estuary lap quilt",
			"title: !!str 3",
			[]string{"2:8: a text begins with !, which YAML takes for a tag; job files have none; put quotes round a name"},
		},
		{
			"merged keys", "title: Estuary lap quilt",
			"<<: {title: Estuary}",
			[]string{"2:1: << stands for merged keys in YAML; job files have none; write the keys out"},
		},
		{
			"a key with a question mark", "title: Estuary lap quilt",
			"? title\n: Estuary",
			[]string{"2:1: a key begins with ? here; job files have only plain keys; put quotes round a name"},
		},
		{
			"a second document", "title: Estuary lap quilt",
			"title: Estuary\n---\njob: other",
			[]string{"3:1: a second document begins here; a job file holds one job; give each job a file of its own"},
		},
		{
			"a mark after a multi-line sign", "title: Estuary lap quilt",
			"title: |x\n  Estuary",
			[]string{"2:8: this | or > is followed by something that it does not go with; put quotes round the text"},
		},
		{
			"brackets within brackets without end", "print: [Foam]",
			"print: " + strings.Repeat("[", 40),
			[]string{"24:28: brackets or hyphens stand too deep within each other here"},
		},
		{
			"hyphens within hyphens", "    print: [Foam]",
			"    print:\n      " + strings.Repeat("- ", 40),
			[]string{"25:39: brackets or hyphens stand too deep within each other here"},
		},
	})
}
