package planner

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"quiltrun/planner/measure"
)

// Hand-worked: 9 squares of 5 in take two strips, 10 in, and 23 of both jobs three. By
// proportion 16 in are left for the first, 6 more than it takes: of 20 in 14 count, two
// strips, and the third is bought, 5 in: 1/4 yd.
func TestWhatAHalfCutJobIsThoughtToLeaveIsPromisedToNoOther(t *testing.T) {
	half, other := shopJob(t, "spit", 9, "5", ""), shopJob(t, "dune", 14, "5", "")
	free := Stocked{Cloth: func(Fabric) Have { return Have{Lengths: []measure.Length{inches(t, "20")}} }}
	s, err := Shop([]Wanted{half, other}, free)
	require.NoError(t, err)
	assert.Zero(t, s.Fabrics[0].Buy, "23 squares are three strips")
	half.Fabrics[0].Half = Amount(inches(t, "16"))
	s, err = Shop([]Wanted{half, other}, free)
	require.NoError(t, err)
	assert.Equal(t, Amount(inches(t, "9")), s.Fabrics[0].Buy)
	s, err = Shop([]Wanted{half}, free)
	require.NoError(t, err)
	assert.Zero(t, s.Fabrics[0].Buy)
}

// Hand-worked: of two fat quarters of 18 × 21, 12 squares of 5 in from each, one job
// has cut 1 and wants 2 more: all three have room in one sheet, and another job's 9 do
// too, but not in the begun one: the second serves it, and 4 more squares buy another.
func TestTheRoomInABegunSheetIsForItsJobAlone(t *testing.T) {
	kelp := Fabric{Name: "Kelp", Form: FatQuarter, Size: inchSize(t, "18", "21")}
	wants := func(n int) WantedFabric {
		return WantedFabric{FabricNeed: FabricNeed{Fabric: kelp, Pieces: []PieceCount{{Size: squareOf(inches(t, "5")), Count: n, For: forBlocks}}}}
	}
	begun, other := wants(2), wants(16)
	begun.Begun = []PieceCount{{Size: squareOf(inches(t, "5")), Count: 1, For: forBlocks}}
	free := Stocked{Cloth: func(Fabric) Have { return Have{Sheets: []HaveSheets{{kelp.Size, 2}}} }}
	s, err := Shop([]Wanted{{Fabrics: []WantedFabric{begun}}, {Fabrics: []WantedFabric{other}}}, free)
	require.NoError(t, err)
	assert.Equal(t, Amount(1), s.Fabrics[0].Buy)
	here := 0
	for _, c := range s.Fabrics[0].Cuts {
		here += oneIf(!c.Bought)
	}
	assert.Equal(t, 2, here)
}
