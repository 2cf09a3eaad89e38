package planner

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"quiltrun/planner/measure"
)

// amended is a job's plan with a measured seam.
func amended(t *testing.T, file, seam string) (asked, sewn Plan) {
	t.Helper()
	asked = planOf(t, file)
	job, err := Parse("job.yaml", []byte(file))
	require.NoError(t, err)
	sewn, err = Make(job, Prior{Amend: Amendments{Seam: inches(t, seam)}})
	require.NoError(t, err)
	return asked, sewn
}

// Hand-worked for a four-patch recut of 7 in squares with 9/32 in seams: raw
// 14 - 6 x 9/32 = 12 5/16, finished 14 - 8 x 9/32 = 11 3/4; a border cut 3 1/2
// finishes 2 15/16.
func TestWithAMeasuredSeamCutSizesStayAndFinishedSizesFollow(t *testing.T) {
	asked, sewn := amended(t, recutFour+"borders: [{width: 3, fabric: Foam}]\n", "9/32")
	assert.Equal(t, squareOf(inches(t, "12 5/16")), sewn.Colourways[0].Raw)
	assert.Equal(t, squareOf(inches(t, "11 3/4")), sewn.Colourways[0].Finished)
	assert.Equal(t, inches(t, "2 15/16"), sewn.Job.Borders[0].Width)
	assert.Equal(t, inchSize(t, "52 7/8", "29 3/8"), sewn.Quilt.Finished, "4 x 11 3/4 + 2 x 2 15/16, 2 x 11 3/4 + the same")
	assert.Equal(t, inches(t, "9/32"), sewn.Job.Seam)
	assert.Equal(t, inches(t, "1/4"), sewn.Job.SeamAsked)
	assert.Equal(t, "0.281 in", sewn.Job.SeamShown())
	assert.Equal(t, inches(t, "3"), asked.Job.Borders[0].Width, "the job itself is not touched")
	for i, need := range asked.Fabrics {
		for k, piece := range need.Pieces {
			assert.Equal(t, piece.Size, sewn.Fabrics[i].Pieces[k].Size, "%s is cut as before", need.Fabric.Name)
		}
	}
}

// Triangles keep the squares that are on the cutting list, and not those that
// the measured seam would ask for.
func TestWithAMeasuredSeamSquaresForTrianglesStay(t *testing.T) {
	asked, sewn := amended(t, triangles, "15/64")
	cut := func(p Plan) []PieceCount { return p.Fabrics[0].Pieces }
	assert.Equal(t, cut(asked), cut(sewn))
	assert.Equal(t, squareOf(inches(t, "6 17/32")), sewn.Colourways[0].Raw, "trimmed to 3 1/2 as before: 7 - 2 x 15/64")
}

// A strip cut to the planned length is longer than what came out smaller: it is
// cut back, and the block is made.
func TestWithAMeasuredSeamWhatIsTooLongIsCutBack(t *testing.T) {
	_, sewn := amended(t, shrunken, "31/112")
	assert.Equal(t, "12.125", sewn.Colourways[0].Raw.Width.Decimal(measure.Inches, 4), "12 1/8 was measured")
}

func TestTheJobFilesOwnSeamAmendsNothing(t *testing.T) {
	asked, sewn := amended(t, recutFour, "1/4")
	assert.Equal(t, asked, sewn)
}

func TestASeamThatEatsABorderIsRefused(t *testing.T) {
	job, err := Parse("job.yaml", []byte(recutFour+"borders: [{width: 1/8, fabric: Foam}]\n"))
	require.NoError(t, err)
	_, err = Make(job, Prior{Amend: Amendments{Seam: inches(t, "3/8")}})
	require.Error(t, err)
	assert.Contains(t, err.Error(), "with a seam of 0.375 in nothing is left of the border")
}

// Plain squares beside pieced blocks: with a wider seam the pieced ones come out
// smaller, hand-worked 3 x 3 1/2 - 4 x 9/32 = 9 3/8, and the squares of 9 1/2 are
// trimmed to them; with a narrower one it is the other way about.
func TestWithAMeasuredSeamAllBlocksAreTrimmedToTheSmallest(t *testing.T) {
	const file = `
job: beside
fabrics: {Kelp: {form: yardage, width: 42}, Foam: {form: yardage, width: 42}}
block: {}
colourways:
  pieced: {blocks: 4, make: nine-patch, square: 3 1/2, corner: Kelp, side: Foam, centre: Kelp}
  plain: {blocks: 4, make: plain square, square: 9 1/2, print: Kelp}
layout: {across: 4, down: 2}
`
	_, wide := amended(t, file, "9/32")
	_, narrow := amended(t, file, "7/32")
	for i := range 2 {
		assert.Equal(t, squareOf(inches(t, "9 3/8")), wide.Colourways[i].Raw)
		assert.Equal(t, squareOf(inches(t, "9 3/8")), wide.Colourways[i].Build.Block().Size)
		assert.Equal(t, squareOf(inches(t, "9 1/2")), narrow.Colourways[i].Raw)
	}
	piece, err := PieceAt(wide, "nine-patch", "pieced")
	require.NoError(t, err)
	assert.Equal(t, 2.0, piece.SeamsAcross())
	piece, err = PieceAt(narrow, "nine-patch", "pieced")
	require.NoError(t, err)
	assert.Equal(t, 2.0, piece.SeamsAcross(), "the trim hides no seam")
}
