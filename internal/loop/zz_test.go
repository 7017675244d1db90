package loop
import ("testing";"os";"fmt";"dryfit/internal/system";"dryfit/internal/tables";"dryfit/internal/working";"time")
func TestZZ(t *testing.T){
 file:=os.Getenv("ZZ"); data,_:=os.ReadFile(file)
 s,p:=system.Read(file,data); if len(p)>0 {t.Fatal(p)}
 l:=working.NewLedger()
 t0:=time.Now()
 Survey(s,tables.Embedded(),l)
 fmt.Println(time.Since(t0))
 for _,n:=range l.Nodes(){
  a:=n.Address
  switch a.Case {case "run_clean","run_least","run_worst","always": 
    if a.Name!="water_level" && a.Name!="first_air_under" || a.Water!="usual" {continue}}
  v,ok:=n.Value()
  if ok { fmt.Printf("%-60s %.5g\n",a,v.X)} else {fmt.Printf("%-60s ? %v\n",a,n.Gaps())}
 }
}
