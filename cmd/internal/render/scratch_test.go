package render
import ("testing";"os";"quiltrun/planner")
func scratch(t testing.TB, name string) planner.Plan {
 data,err:=os.ReadFile("../../../examples/"+name+".yaml"); if err!=nil {t.Fatal(err)}
 job,err:=planner.Parse(name+".yaml",data); if err!=nil {t.Fatal(err)}
 p,err:=planner.Make(job,planner.Prior{}); if err!=nil {t.Fatal(err)}
 return p
}
func TestScratch(t *testing.T){ Sheet(os.Stdout, scratch(t, os.Getenv("JOB")), Look{Width:80,Unicode:true}) }
