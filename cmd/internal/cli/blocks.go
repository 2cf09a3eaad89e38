package cli

import (
	"strings"

	"github.com/spf13/cobra"

	"quiltrun/cmd/internal/render"
	"quiltrun/planner"
)

const blocksLong = `blocks lists the built-in blocks that a job file can name with make, with their
roles and measures.

With the NAME of one, which may be any of the trade's names for it, it prints
the block's recipe as the part of a job file that makes it step by step: paste
it in place of make, and change it.`

const blocksExample = `  quiltrun blocks
  quiltrun blocks nine-patch recut
  quiltrun blocks "disappearing 4-patch" --json`

type blocksOptions struct{ name string }

// newBlocks is the command blocks. A name of several words needs no quotes.
func newBlocks(env *Env) *cobra.Command {
	return &cobra.Command{
		Use:               "blocks [NAME]",
		Short:             "List the built-in blocks, or show the recipe of one",
		Long:              blocksLong,
		Example:           blocksExample,
		Args:              between(0, -1),
		ValidArgsFunction: completeBlocks,
		RunE: func(_ *cobra.Command, args []string) error {
			return runBlocks(env, blocksOptions{name: strings.Join(args, " ")})
		},
	}
}

func runBlocks(env *Env, opts blocksOptions) error {
	if opts.name == "" {
		if env.given.json {
			return render.BlocksJSON(env.Out, planner.BuiltIns())
		}
		return render.Blocks(env.Out, planner.BuiltIns(), env.look())
	}
	block, ok := planner.BuiltInCalled(opts.name)
	switch {
	case !ok:
		return noBlock(opts.name)
	case env.given.json:
		return render.BlockRecipeJSON(env.Out, block)
	}
	return render.BlockRecipe(env.Out, block)
}

// noBlock is a name that no built-in block has.
func noBlock(name string) *fault {
	f := failed("there is no built-in block %q", name)
	if near := planner.NearBuiltIn(name); near != "" {
		return f.hint("did you mean %s?", near)
	}
	return f.hint("the blocks are %s", strings.Join(blockNames(), ", "))
}

func blockNames() []string {
	var names []string
	for _, b := range planner.BuiltIns() {
		names = append(names, b.Name)
	}
	return names
}

// completeBlocks offers the names of blocks.
func completeBlocks(_ *cobra.Command, args []string, typed string) (completions, cobra.ShellCompDirective) {
	if len(args) > 0 {
		return nil, noFiles
	}
	return fitting(blockNames(), typed), noFiles
}
