package planner
import ("testing";"fmt")
func TestZZ(t *testing.T) {
	p := planOf(t, `
job: nine
fabrics: {Heron: {form: yardage, directional: yes}, Foam: {form: yardage}}
block: {make: nine-patch, square: 5, corner: Heron, side: Foam, centre: Heron}
colourways: {tide: {blocks: 8}, dune: {blocks: 8}}
layout: {across: 4, down: 4, order: [[tide,dune,tide,dune],[dune,tide,dune,tide],[tide,dune,tide,dune],[dune,tide,dune,tide]]}
`)
	for _, c := range p.Press.Cards { fmt.Printf("%+v\n", c) }
	fmt.Println(p.Press.Words())
	for _, c := range p.Colourways { fmt.Println(c.Name, c.Press, c.PressB) }
	for _, o := range p.Operations { if o.Place == Iron { fmt.Println(o.Key, o.Lot, o.Doing) } }
}
