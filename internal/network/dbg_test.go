package network
import ("testing";"math")
func TestDbg(t *testing.T){
 n:=&Network{}
 z:=[]float64{135,120,112}; r:=[]float64{.7594,36.33,8.168}
 for i:=range z { _=i; n.Node(Node{Fixed:true}) }
 j:=n.Node(Node{})
 never:=func(float64)float64{return math.Inf(-1)}
 for i:=range r { f:=func(q float64)float64{return r[i]*q*q}; n.Join("p",i,j,&Line{Drowned:f,Free:never,Back:&Line{Drowned:f,Free:never}}) }
 for _,g:=range []float64{122.333,125,131,131.6,134} {
 s:=n.Steady(append(z,g))
 t.Log(g,s.Found,s.Reason,s.Z[3],s.Q,s.Left)
 }
}
