import highsPackage from 'highs';
import { searchPlan } from '#core/work/plan/searchPlan.ts';
import { planModel } from '#core/work/plan/planModel.ts';
import type { Job, Round, OutingChoice, PlanProblem } from '#core/work/plan/planProblem.ts';
const load = (typeof highsPackage === 'function' ? highsPackage : (highsPackage as any).default) as any;
const mins = [18, 35, 6, 22, 41, 55];
const n = [18, 17, 14, 17, 20, 10];
const far = (a: number, b: number) => [[0,30,14,12,38,60],[30,0,33,36,14,34],[14,33,0,20,40,58],[12,36,20,0,44,66],[38,14,40,44,0,24],[60,34,58,66,24,0]][a]![b]!;
function tour(ys: number[]): number { let best = 1e9; const perm=(r:number[],rest:number[])=>{ if(!rest.length){ let m=mins[r[0]!]!+mins[r.at(-1)!]!; for(let i=1;i<r.length;i++)m+=far(r[i-1]!,r[i]!); best=Math.min(best,m);} else for(const x of rest) perm([...r,x],rest.filter(y=>y!==x)); }; perm([],ys); return best; }
const subsets: number[][] = []; for (let a=0;a<6;a++){subsets.push([a]);for(let b=a+1;b<6;b++){subsets.push([a,b]);for(let c=b+1;c<6;c++)subsets.push([a,b,c]);}}
const days = 56; const outings: OutingChoice[] = [];
for (let d=0; d<days; d++) { const w=(d+4)%7; // day 0 Friday
  const slot = w<5?120:w===5?480:0; if(!slot) continue;
  for (const ys of subsets) { const t=tour(ys); const stay=slot-t; if (stay < 25*ys.length) continue; if (w<5 && ys.length>2) continue;
    outings.push({day:d,yards:ys,crew:[0],driving:t,room:stay}); if(w===5) outings.push({day:d,yards:ys,crew:[0,1],driving:t,room:stay*2}); } }
const jobs: Job[] = []; const none = new Set<number>();
const add=(yard:number,units:number,each:number,e:number,l:number,people=1)=>{ jobs.push({yard,units,each,people,earliest:Math.max(0,e),latest:l,last:Math.min(days-1,l+5),left:300,after:null,only:null,never:none}); return jobs.length-1; };
const again=Array.from({length:days},(_,d)=>d+(d<7?10:d<46?7:14)); for(let d=days-2;d>=0;d--) again[d]=Math.min(again[d]!,again[d+1]!);
const parts=[2,2,1,2,3,1]; const E=Number(process.argv[3]??5);
const rounds = n.map((units,y)=>({yard:y,units:parts[y]!,each:Array.from({length:days},()=>Math.ceil(units/parts[y]!)*E),again,due:Array.from({length:parts[y]!},()=>[4,7,3,6,8,5][y]!)}));
for (let y=0;y<6;y++) { const q=parts[y]!; add(y, q, n[y]!*5/q, 24, 38); add(y, q,n[y]!*4/q, 40, 52); add(y, q, n[y]!*.5*10/q, 20, 45); add(y, q,n[y]!*.3*30/q, 25, 46); add(y,1,n[y]!*.3*10,2,12);}
const problem: PlanProblem = { days, yards:6, jobs, rounds, outings, held: [], before: null };
let t=performance.now(); const draft = searchPlan(problem,Number(process.argv[4]??10)); console.log('greedy', draft.cost, Math.round(performance.now()-t),'ms', 'drive', draft.outing.reduce((s,o)=>s+(o<0?0:outings[o]!.driving),0), 'outings', draft.outing.filter(o=>o>=0).length, 'jobs',jobs.length,'choices',outings.length);
draft.rounds.forEach((r,i)=>console.log('round',i,n[i],[...r].map(([d,m])=>d+':'+m).join(' ')));
jobs.forEach((j,i)=>{ const sum=[...draft.jobs[i]!.values()].reduce((a,b)=>a+b,0); const late=[...draft.jobs[i]!].filter(([d])=>d>j.latest); if(sum<j.units||late.length) console.log('job',i,'yard',j.yard,j.units,sum,'late',late,j.earliest,j.latest)});
console.log(draft.outing.map((o,d)=>o<0?'':d+':'+outings[o]!.yards.join('+')+'c'+outings[o]!.crew.length).join(' '));
const model = planModel(problem); const m=model.milp; console.log('vars',m.variables.length,'rows',m.rows.length);
const highs = await load(); t=performance.now();
const starts=[0], indices:number[]=[], values:number[]=[]; for(const {terms} of m.rows){for(const [v,f] of terms){indices.push(v);values.push(f);}starts.push(indices.length);}
const {continuous,integer}=highs.constants.variableType;
highs.withModel({numCols:m.variables.length,numRows:m.rows.length,colCost:m.variables.map(v=>v.cost),colLower:m.variables.map(v=>v.low),colUpper:m.variables.map(v=>v.high??highs.infinity),rowLower:m.rows.map(r=>r.low??-highs.infinity),rowUpper:m.rows.map(r=>r.high??highs.infinity),matrix:{format:'csr',numRows:m.rows.length,numCols:m.variables.length,starts,indices,values},integrality:m.variables.map(v=>v.whole?integer:continuous)},(task:any)=>{
  task.options.set({output_flag:false,mip_rel_gap:0.02,time_limit:Number(process.argv[2]??40)});
  console.log(task.setSolution({colValue: model.fromDraft(draft)}));
  let last=0;
  const cb=highs.constants.callbackType;
  task.run({[cb.mipLogging]:(e:any)=>{const now=performance.now()-t; if(now-last>1000){last=now;console.log(Math.round(now),'primal',e.data.mip_primal_bound,'dual',e.data.mip_dual_bound,'gap',e.data.mip_gap, 'nodes', e.data.mip_node_count);}}, [cb.mipImprovingSolution]:(e:any)=>console.log('improved',Math.round(performance.now()-t),e.data.objective_function_value, e.data.mip_dual_bound)});
  console.log(task.getModelStatus(), task.getObjectiveValue(), task.info.get('mip_gap'), task.info.get('mip_dual_bound'));
});
