package cli

import (
	"github.com/spf13/cobra"

	"quiltrun/tracker"
)

const parkLong = `park says where the things of JOB lie while it rests. left, next and jobs show
it before all else, until work on the job is logged, it is parked elsewhere, or
--clear takes it up. TEXT is one argument: put it into quotes.`

const parkExample = `  quiltrun park estuary-lap "blue box 3; row 4 half joined"
  quiltrun park estuary-lap --clear`

// newPark is the command park.
func newPark(env *Env) *cobra.Command {
	var opts remarkOptions
	taken := false
	cmd := &cobra.Command{
		Use:               "park JOB TEXT",
		Short:             "Say where a job's things lie while it rests",
		Long:              parkLong,
		Example:           parkExample,
		Args:              cobra.ArbitraryArgs,
		ValidArgsFunction: env.completeJob,
	}
	cmd.RunE = func(cmd *cobra.Command, args []string) error {
		check, own := oneText(2, 2), ownWords(loneText)
		if taken {
			check, own = between(1, 1, "JOB"), nil
		}
		return env.aboutJob(check, own, func(cmd *cobra.Command, args []string) error {
			opts.job, opts.text = args[0], ""
			if !taken {
				opts.text = args[1]
			}
			return runRemark(cmd.Context(), env, opts, tracker.State.Park)
		})(cmd, args)
	}
	cmd.Flags().BoolVar(&taken, "clear", false, "its things are taken up again")
	registerID(cmd.Flags(), &opts.id)
	return cmd
}
