function g(i,e={},...t){const n=document.createElement(i);e.class&&(n.className=e.class);for(const[s,r]of Object.entries(e.attrs??{}))r===!0?n.setAttribute(s,""):r!==!1&&r!==void 0&&n.setAttribute(s,String(r));for(const[s,r]of Object.entries(e.on??{}))n.addEventListener(s,r);return G(n,...t),n}const jl=new WeakMap;let Yl=null;function Yr(i,e){jl.set(i,e),Yl??=new ResizeObserver(t=>{for(const n of t)jl.get(n.target)?.()}),Yl.observe(i)}function G(i,...e){i.replaceChildren(...e.filter(t=>t!=null&&t!==!1).map(t=>t instanceof Node?t:String(t)))}function ce(i,e,t="",n=""){return g("button",{class:t,on:{click:e},attrs:{type:"button",title:n||void 0}},i)}function an(i,e,t,n){const s=g("select",{on:{change:()=>n(s.value)}},...e.map(([r,a])=>g("option",{attrs:{value:r}},a)));return s.value=t,s.setAttribute("aria-label",i),g("label",{class:"field"},g("span",{},i),s)}function Tn(i,e,t,n,s,r,a="",o=c=>`${c}${a}`){const c=g("output",{},o(s)),l=g("input",{attrs:{type:"range",min:e,max:t,step:n,value:s,"aria-label":i,"aria-valuetext":o(s)},on:{input:()=>{const h=Number(l.value);r(h),G(c,o(h)),l.setAttribute("aria-valuetext",o(h))}}});return g("label",{class:"field wide"},g("span",{},i),l,c)}function Wu(i,e,t,n){const s=g("div",{class:"tabs",attrs:{role:"tablist"}}),r=(a,o)=>{for(const c of s.children){const l=c.getAttribute("data-key")===a;c.setAttribute("aria-selected",String(l)),c.setAttribute("tabindex",l?"0":"-1"),l&&o&&c.focus()}t.setAttribute("aria-labelledby",`tab-${a}`),n(a)};return i.forEach(([a,o],c)=>{const l=g("button",{attrs:{type:"button",role:"tab",id:`tab-${a}`,"data-key":a,"aria-controls":t.id,"aria-selected":String(a===e),tabindex:a===e?0:-1},on:{click:()=>r(a,!1)}},o);l.addEventListener("keydown",h=>{const u=h.key==="ArrowRight"?1:h.key==="ArrowLeft"?-1:0,d=h.key==="Home"?0:h.key==="End"?i.length-1:u?(c+u+i.length)%i.length:-1;d<0||(h.preventDefault(),r(i[d][0],!0))}),s.append(l)}),t.setAttribute("role","tabpanel"),t.setAttribute("tabindex","0"),t.setAttribute("aria-labelledby",`tab-${e}`),s}function vt(i,e,t=""){return g("table",{class:t},g("thead",{},g("tr",{},...i.map(n=>g("th",{attrs:{scope:"col"}},n)))),g("tbody",{},...e.map(n=>g("tr",{},...n.map(s=>g("td",{},s))))))}function Ei(i){const e=Math.round(i/60);return i<90?`${Math.round(i)} s`:e<60?`${e} min`:`${Math.floor(e/60)} h ${String(e%60).padStart(2,"0")} min`}function Ge(i,e=2){if(i==null||!Number.isFinite(i))return"-";const t=i.toFixed(e);return Number(t)===0?t.replace("-",""):t}function Kl(i){return i.moves===!0||!!i.hand}function ll(i){return i.running||!!i.hand}const qu=7e3;class Xu{status={type:"status",state:"idle",running:!1,sequence:0,lease:""};grid=null;frame=null;up=!1;watchers=new Set;wait=250;heard=0;known=!1;open(){const e=new WebSocket(`${location.protocol==="https:"?"wss":"ws"}://${location.host}/api/live`);e.binaryType="arraybuffer",this.heard=Date.now();const t=window.setInterval(()=>{Date.now()-this.heard>qu&&n()},1e3),n=()=>{window.clearInterval(t),e.onclose=e.onmessage=e.onopen=null,e.close(),this.up=!1,this.tell(s=>s.linked?.(!1)),window.setTimeout(()=>this.open(),this.wait),this.wait=Math.min(4e3,this.wait*2)};e.onopen=()=>{this.heard=Date.now()},e.onmessage=s=>{if(this.heard=Date.now(),this.up||(this.wait=250,this.up=this.known=!0,this.tell(r=>r.linked?.(!0))),typeof s.data=="string")this.hear(JSON.parse(s.data));else{const r=this.frame=new Float32Array(s.data);this.tell(o=>o.frame?.(r));const a=()=>{e.readyState===WebSocket.OPEN&&e.send("taken")};document.hidden?window.setTimeout(a,250):requestAnimationFrame(a)}},e.onclose=n}watch(e){return this.watchers.add(e),e.status?.(this.status),this.grid&&e.grid?.(this.grid),this.frame&&e.frame?.(this.frame),e.linked?.(this.up||!this.known),()=>this.watchers.delete(e)}hear(e){if(e.type!=="alive")if(e.type==="grid")this.grid=e,this.frame=null,this.tell(t=>t.grid?.(e));else{const t=this.status={sequence:0,lease:"",...e};!t.run&&this.grid&&(this.grid=this.frame=null,this.tell(n=>n.grid?.(null))),this.tell(n=>n.status?.(t))}}tell(e){for(const t of[...this.watchers])try{e(t)}catch(n){console.error(n)}}}const gt=new Xu;class Rs extends Error{constructor(e,t){super(t.join("; ")),this.status=e,this.faults=t}}let Fh="";async function Oh(i){const e=await i.json();if(!i.ok)throw new Rs(i.status,e.errors??["no reason was given"]);return e}async function An(i,e=[],t){let n=0;const s=i.replace(/\{\w+\}/g,()=>encodeURIComponent(e[n++]??""));return Oh(await fetch(s,{headers:{Accept:"application/json"},signal:t??null}))}async function ke(i,e,t){return Oh(await fetch(i,{method:"POST",headers:{"Content-Type":"application/json","X-Colure-Token":Fh},body:JSON.stringify(e),signal:t??null}))}async function kh(){const i=await An("/api/me");return Fh=i.token,i}function Vn(i,e,t=()=>{}){const n=document.activeElement,s=[...document.querySelectorAll("header.top, main")],r=()=>{if(c.isConnected){c.remove();for(const l of s)l.inert=!1;n?.focus(),t()}},a=g("h2",{attrs:{id:"dialog-title",tabindex:-1}},i),o=g("div",{class:"dialog",attrs:{role:"dialog","aria-modal":"true","aria-labelledby":"dialog-title"}},g("div",{class:"row"},a,g("span",{class:"spring"}),ce("close",r,"tiny","close (Escape)")),...e(r).filter(l=>l instanceof Node)),c=g("div",{class:"shade"},o);c.addEventListener("keydown",l=>{l.key==="Escape"&&r()});for(const l of s)l.inert=!0;return document.body.append(c),a.focus(),{element:o,close:r}}const Or=new Map,so=new Set;function ii(i){let e=Or.get(i);if(!e){try{e=JSON.parse(sessionStorage.getItem(`draft-${i}`)??"{}")??{}}catch{e={}}Or.set(i,e)}return e}function Xs(i,e,t){const n=ii(i);t===void 0?delete n[e]:n[e]=t,zh(i)}function Zl(i){Or.set(i,{}),zh(i)}function cl(i){return Object.keys(ii(i)).length}function Bh(i){return so.add(i),()=>so.delete(i)}function zh(i){try{sessionStorage.setItem(`draft-${i}`,JSON.stringify(ii(i)))}catch{}for(const e of so)e()}window.addEventListener("beforeunload",i=>{[...Or.values()].some(e=>Object.keys(e).length)&&i.preventDefault()});const Ae={me:null,campaign:""};function _t(i){const e=["nobody","view","operate","configure"];return Ae.me!==null&&e.indexOf(Ae.me.role)>=e.indexOf(i)}function Vt(i){return i instanceof Rs?i.faults.join(`
`):i instanceof TypeError?"The server does not answer. Is colure serve still running?":i instanceof Error?i.message:String(i)}function ro(i){return i instanceof DOMException&&i.name==="AbortError"}const Hh={scan:"scan",flip:"flip test","beam-coarse":"coarse beam search","beam-fine":"fine beam search"};function ju(i){const e=`${i.measured} of ${i.total} points`,t=i.measured_at?`, the last on ${new Date(1e3*i.measured_at).toLocaleString()}`:"";return i.state==="nothing"?"nothing yet":i.state==="complete"?`complete${i.total?`, ${e}`:""}${t}`:i.state==="damaged"?"a journal that cannot be read":`${e}${t}: the start goes on with the rest`}function Yu(i){return/--again (reference|\d[\d,-]*)/.exec(i)?.[1].replace(/[,-]+$/,"")??""}function hl(i,e=""){const t=g("input",{attrs:{value:e,pattern:"[a-z0-9, \\-]{1,200}",placeholder:"3,7-9","aria-label":"slices"},on:{input:()=>r()}}),n=g("p",{class:"faults",attrs:{role:"alert"}}),s=ce("what it takes",()=>{},"main");Vn(`Measure slices of ${i} again`,a=>(s.addEventListener("click",()=>{Kr(i,c=>G(n,Vt(c)),"scan",t.value.trim()).then(c=>{if(!c)return;a();const l=(Ae.me?.campaigns.length??0)>1?`&c=${Ae.campaign}`:"";location.hash=`#scan?run=${encodeURIComponent(i)}${l}`})}),[g("p",{},"Mend the cause first, and leave the device on its mount. Slices are numbered as in the plan's list of points; the findings name those that went wrong. The word reference stands for the sweeps of the reference."),g("label",{class:"field stacked"},g("span",{},"slices, such as 3,7-9, or reference"),t),g("p",{class:"small quiet"},"The run's own plan is used. The first readings are kept in its journal, and stay in use until each has a new one."),Ae.me?.mine!==!0&&g("p",{class:"warn"},"Take the motion lease first (top right)."),n,g("div",{class:"row"},ce("not now",a),g("span",{class:"spring"}),s)]));function r(){s.disabled=Ae.me?.mine!==!0||!t.value.trim()||!t.validity.valid}r()}async function Kr(i,e,t="scan",n=""){let s;try{s=await ke("/api/before",{campaign:Ae.campaign,run:i,kind:t,again:n})}catch(r){return e(r),!1}return new Promise(r=>{let a=!1;Vn(n?`Before anything moves: ${n} of ${i} again`:t==="scan"?"Before anything moves":`Before anything moves: ${Hh[t]}`,o=>Ku(s,t,o,(c,l)=>{a=c,l!==void 0&&e(l),r(c)},c=>{o(),Kr(c,e,t).then(r)}),()=>{a||window.setTimeout(()=>r(!1),0)})})}function Ku(i,e,t,n,s){const r=g("input",{attrs:{type:"checkbox",disabled:i.fault!==""},on:{change:()=>d()}}),a=i.failed_checks,o=g("input",{attrs:{type:"checkbox"},on:{change:()=>d()}}),c=g("input",{attrs:{type:"checkbox"}}),l=g("p",{class:"faults",attrs:{role:"alert"}},i.fault),h=cl(Ae.campaign),u=ce("start",()=>{u.disabled=!0;const _={campaign:Ae.campaign,run:i.run,sequence:gt.status.sequence,cautions_read:!0,kind:e,again:i.again,home:c.checked,despite_check:o.checked};ke("/api/start",_).then(()=>{n(!0),t()},v=>{G(l,Vt(v)),u.disabled=!1})},"main");u.disabled=!0;function d(){u.disabled=!r.checked||a.length>0&&!o.checked}const p=[["run",i.run],["to measure",`${i.to_measure} of ${i.points} points${i.again?", and two boresight checks":""}`],["takes about",i.fault?"-":Ei(i.duration_s)],["on disk",`${ju(i.on_disk)}${i.again?"; the first readings are kept":""}`],["chamber",i.simulated?"simulated: nothing real moves":"real: the axes move"]];return[vt(["",""],p.map(([_,v])=>[g("strong",{},_),v]),"facts"),h>0&&g("p",{class:"warn"},`${h} unsaved ${h===1?"value":"values"} of the form: the scan uses what is on disk, without ${h===1?"it":"them"}.`),l,i.fault!==""&&g("div",{class:"row"},ce(`take the name ${i.free_name}`,()=>s(i.free_name),"main"),i.on_disk.state==="complete"&&e==="scan"&&ce("measure slices of it again",()=>{t(),hl(i.run)})),a.length>0&&g("h3",{},"The instruments did not pass their check"),a.length>0&&g("ul",{class:"warn"},...a.map(_=>g("li",{},_))),a.length>0&&g("p",{},g("label",{},o," Start in spite of it. Better: mend it, and check again under Align.")),g("h3",{},"Cautions"),g("ul",{},...i.cautions.map(_=>g("li",{},_))),g("p",{},g("label",{},r," Everyone is clear of the axes and the cautions are understood.")),g("p",{class:"small"},g("label",{},c," Home the axes first (needed after a fault of the motion).")),g("div",{class:"row"},ce("not now",t),g("span",{class:"spring"}),u)]}class tt{subject=g("span",{class:"subject mono"});body=g("div",{class:"panel-body"});faults=g("div",{class:"faults",attrs:{role:"alert"}});tools=g("span",{class:"row"});element;asked=0;stop=null;key="";constructor(e,t="card",n="h2"){this.element=g("section",{class:`${t} panel`,attrs:{"aria-label":e}},g("div",{class:"panel-head"},g(n,{},e),this.subject,g("span",{class:"spring"}),this.tools),this.faults,this.body)}async ask(e,t,n,s={}){const r=++this.asked;this.stop?.abort();const a=this.stop=new AbortController;this.element.setAttribute("aria-busy","true"),(!s.keep||this.key.split("|")[0]!==e.key.split("|")[0])&&this.empty("",e);const o=window.setTimeout(()=>{r===this.asked&&!this.body.childElementCount&&G(this.body,g("p",{class:"quiet loading"},s.waiting??"Being worked out."))},150);try{const c=await t(a.signal);if(r!==this.asked)return;const l=s.of?.(c);if(l&&s.expect&&!ul(l,s.expect))throw new Error(`The server answered about ${l.run}${l.state?`, ${l.state}`:""}, not about what was asked. Nothing is shown.`);return G(this.faults),G(this.subject,e.words),this.key=e.key,G(this.body,...n(c)),c}catch(c){if(r!==this.asked||ro(c))return;G(this.subject,e.words),this.key=e.key,G(this.body),G(this.faults,g("p",{},Vt(c)),ce("ask again",()=>void this.ask(e,t,n,s),"tiny"));return}finally{window.clearTimeout(o),r===this.asked&&this.element.removeAttribute("aria-busy")}}empty(e,t=null){t||(this.asked++,this.stop?.abort(),this.element.removeAttribute("aria-busy")),G(this.subject,t?.words??""),this.key=t?.key??"",G(this.faults),G(this.body,e&&g("p",{class:"quiet"},e))}show(e,...t){this.asked++,this.stop?.abort(),this.element.removeAttribute("aria-busy"),G(this.faults),G(this.subject,e.words),this.key=e.key,G(this.body,...t)}fault(e){ro(e)||G(this.faults,g("p",{},Vt(e)))}leave(){this.asked++,this.stop?.abort()}}function ul(i,e){const t=e.frequency_hz===null||i.frequency_hz===null||Math.abs(i.frequency_hz-e.frequency_hz)<1;return i.run===e.run&&(i.state??null)===(e.state??null)&&t}const Zu=["#3b1a6b","#453781","#404f8b","#38658c","#2e788e","#268b8d","#1f9e89","#2fb07b","#51c369","#7fd34e","#b0dd2f","#d9e21a","#fde725"],Ju=["#301437","#45135c","#592a8f","#5e51ad","#6276ba","#7297c1","#95b5c7","#c4ced4","#e2d9e2","#d8c7be","#cca389","#c27c63","#b25652","#983550","#741e4f","#4a1342","#2f1436"];function Vh(i){const e=new Uint8ClampedArray(768),t=i.map(n=>[1,3,5].map(s=>parseInt(n.slice(s,s+2),16)));for(let n=0;n<256;n++){const s=n/255*(t.length-1),r=Math.min(t.length-2,Math.floor(s));for(let a=0;a<3;a++)e[3*n+a]=t[r][a]+(s-r)*(t[r+1][a]-t[r][a])}return e}const Bn=Vh(Zu),Qu=Vh(Ju);function kr(i,e,t){return i===null||!Number.isFinite(i)?-1:Math.max(0,Math.min(255,Math.round(255*(i-e)/(t-e))))}function dn(){return Math.max(1,(parseFloat(getComputedStyle(document.documentElement).fontSize)||15)/15)}let fs=null;function rt(){const i=document.documentElement.dataset.theme??"";return fs?.theme===i&&fs.inks.ink||(fs={theme:i,inks:ed()}),fs.inks}function ed(){const i=getComputedStyle(document.documentElement),e=t=>i.getPropertyValue(t).trim();return{co:e("--co"),cross:e("--cross"),other:e("--other"),ink:e("--ink"),quiet:e("--quiet"),grid:e("--grid"),paper:e("--paper"),good:e("--good"),band:e("--band"),bad:e("--bad"),focus:e("--focus"),ring:e("--ring"),edge:e("--edge"),card:e("--card")}}function td(i,e){let t=0;for(let n=1;n<e.length;n++){const s=e[n-1],r=e[n];s&&r&&nd(i,s,r)&&t++}return t}function nd(i,e,t){let n=0,s=1;for(const[r,a,o,c]of[[e.x,t.x-e.x,i.left,i.left+i.wide],[e.y,t.y-e.y,i.top,i.top+i.high]]){if(a===0){if(r<o||r>c)return!1;continue}const[l,h]=[(o-r)/a,(c-r)/a].sort((u,d)=>u-d);n=Math.max(n,l),s=Math.min(s,h)}return n<=s}function id(i,e,t){const n=i.filter(r=>r.left>=e.left&&r.top>=e.top&&r.left+r.wide<=e.left+e.wide&&r.top+r.high<=e.top+e.high);return(n.length?n:i).map(r=>({box:r,count:t.reduce((a,o)=>a+td(r,o),0)})).reduce((r,a)=>a.count<r.count?a:r).box}function Rr(i,e){const t=URL.createObjectURL(e);g("a",{attrs:{href:t,download:i}}).click(),window.setTimeout(()=>URL.revokeObjectURL(t),1e4)}function Gh(i){const e=s=>{if(s==null||typeof s=="number"&&!Number.isFinite(s))return"";const r=typeof s=="string"&&/^[=+\-@\t\r]/.test(s)?`'${s}`:String(s);return/[",\n]/.test(r)?`"${r.replaceAll('"','""')}"`:r},t=Math.max(0,...i.map(s=>s.values.length)),n=[i.map(s=>e(s.name)).join(",")];for(let s=0;s<t;s++)n.push(i.map(r=>e(r.values[s])).join(","));return`${n.join(`\r
`)}\r
`}async function sd(i,e,t){const n=URL.createObjectURL(new Blob([i],{type:"image/svg+xml"})),s=new Image;await new Promise((o,c)=>{s.onload=o,s.onerror=()=>c(new Error("the picture could not be drawn")),s.src=n});const r=g("canvas",{attrs:{width:2*e,height:2*t}});return r.getContext("2d").drawImage(s,0,0,2*e,2*t),URL.revokeObjectURL(n),new Promise((o,c)=>r.toBlob(l=>l?o(l):c(new Error("the picture could not be packed")),"image/png"))}function Zr(i){const e=()=>Rr(`${i.name()}.svg`,new Blob([i.svg().text],{type:"image/svg+xml"})),t=()=>{const{text:s,width:r,height:a}=i.svg();sd(s,r,a).then(o=>Rr(`${i.name()}.png`,o))},n=()=>Rr(`${i.name()}.csv`,new Blob([Gh(i.columns())],{type:"text/csv"}));return g("span",{class:"save no-print",attrs:{role:"group","aria-label":"save this chart"}},ce("SVG",e,"tiny","save the picture as SVG"),ce("PNG",t,"tiny","save the picture as PNG"),ce("CSV",n,"tiny","save the values as CSV"))}function zs(...i){return i.filter(Boolean).join("-").toLowerCase().replaceAll(/[^a-z0-9._-]+/g,"-").replaceAll(/^-+|-+$/g,"")||"chart"}function Ms([i,e],t=7,n=!0){const s=Math.min(i,e),r=Math.abs(e-i);if(!(r>0))return[s];const a=r/t,o=10**Math.floor(Math.log10(a)),l=[...n&&r>=80&&r<=400?[15,30,45,60,90]:[],o,2*o,5*o,10*o].sort((u,d)=>u-d).find(u=>r/u<=t+1)??10*o,h=[];for(let u=Math.ceil(s/l-1e-9)*l;u<=s+r*(1+1e-9);u+=l)h.push(Math.round(u/l)*l);return h}function Qn(i,[e,t]){const n=Math.abs(t-e),s=n>20?0:n>2?1:n>.2?2:3,r=i.toFixed(Number.isInteger(i)&&n>5?0:s);return Number(r)===0?r.replace("-",""):r}function ca(i,e,t,n){const s=t+(i[0]-t)*n,r=t+(i[1]-t)*n;return $h([s,r],e)}function ha(i,e,t){return $h([i[0]+t,i[1]+t],e)}function $h([i,e],t){const n=Math.min(e-i,t[1]-t[0]),s=Math.max(t[0],Math.min(i,t[1]-n));return[s,s+n]}function Ti(i,e){let t=1/0,n=-1/0;for(const a of i)a===null||!Number.isFinite(a)||(t=Math.min(t,a),n=Math.max(n,a));if(t>n)return[0,e];const s=Math.floor(t/e-1e-9)*e,r=Math.ceil(n/e+1e-9)*e;return r>s?[s,r]:[s,s+e]}const Wh="http://www.w3.org/2000/svg",Ot=56,ua=14,bt=12,rd=40;function ft(i,e,t=""){const n=document.createElementNS(Wh,i);for(const[s,r]of Object.entries(e))n.setAttribute(s,String(r));return t&&(n.textContent=t),n}class pn{constructor(e){this.name=e;const t=g("div",{class:"chart-tools no-print"},ce("whole",()=>this.reset(),"tiny","show all of it (0)"),ce("+",()=>this.zoomAll(.5),"tiny","closer (+)"),ce("−",()=>this.zoomAll(2),"tiny","farther (-)"),ce("◂",()=>this.pan(-.25),"tiny","to the left"),ce("▸",()=>this.pan(.25),"tiny","to the right"),Zr({name:()=>zs(this.name),svg:()=>this.picture(),columns:()=>this.columns()}));this.canvas.setAttribute("aria-label",e),this.element=g("div",{class:"chart"},g("div",{class:"chart-view"}),this.legend,t),this.element.firstElementChild.append(this.canvas),Yr(this.element,()=>{this.data&&this.room()!==this.width&&this.paint()}),this.listen()}canvas=ft("svg",{tabindex:0,role:"img"});legend=g("div",{class:"legend mono"});element;moved=null;clicked=null;data=null;xView=[0,1];yView=[0,1];whole=[[0,1],[0,1]];cursor=null;overlay=ft("g",{});width=0;room(){return Math.max(260,Math.round(this.element.clientWidth/dn())||600)}draw(e,t=this.name){this.name=t,this.canvas.setAttribute("aria-label",t);const n=e.xWhole??[Math.min(...e.x),Math.max(...e.x)],s=e.yWhole??Ti(e.lines.flatMap(a=>a.values),5),r=this.data!==null&&this.data.xName===e.xName&&n.every((a,o)=>a===this.whole[0][o])&&s.every((a,o)=>a===this.whole[1][o]);this.data=e,r||(this.whole=[n[1]>n[0]?n:[n[0]-.5,n[0]+.5],s],this.xView=[...this.whole[0]],this.yView=[...this.whole[1]]),this.paint()}reset(){this.xView=[...this.whole[0]],this.yView=[...this.whole[1]],this.paint()}zoomAll(e){const t=this.cursor??(this.xView[0]+this.xView[1])/2;this.xView=ca(this.xView,this.whole[0],t,e),this.paint()}pan(e){this.xView=ha(this.xView,this.whole[0],e*(this.xView[1]-this.xView[0])),this.paint()}get view(){return{x:this.xView,y:this.yView}}inner(){return{w:this.width-Ot-ua,t:(this.data?.height??300)-bt-rd}}px(e){return Ot+(e-this.xView[0])/(this.xView[1]-this.xView[0])*this.inner().w}py(e){return bt+(1-(e-this.yView[0])/(this.yView[1]-this.yView[0]))*this.inner().t}paint(){const e=this.data;if(!e)return;this.width=this.room();const t=e.height??300,{w:n,t:s}=this.inner(),r=rt(),a=`clip-${Math.round(1e9*Math.random())}`;G(this.canvas);for(const[l,h]of Object.entries({width:Math.round(this.width*dn()),height:Math.round(t*dn()),viewBox:`0 0 ${this.width} ${t}`,"font-family":"system-ui, sans-serif","font-size":12}))this.canvas.setAttribute(l,String(h));const o=ft("clipPath",{id:a});o.append(ft("rect",{x:Ot,y:bt,width:n,height:s})),this.canvas.append(o);for(const l of Ms(this.xView,Math.max(3,Math.floor(n/75))))this.canvas.append(ft("line",{x1:this.px(l),x2:this.px(l),y1:bt,y2:bt+s,stroke:r.grid}),ft("text",{x:this.px(l),y:bt+s+15,fill:r.quiet,"text-anchor":"middle"},Qn(l,this.xView)));for(const l of Ms(this.yView,Math.max(3,Math.floor(s/40)),!1))this.canvas.append(ft("line",{x1:Ot,x2:Ot+n,y1:this.py(l),y2:this.py(l),stroke:r.grid}),ft("text",{x:Ot-6,y:this.py(l)+4,fill:r.quiet,"text-anchor":"end"},Qn(l,this.yView)));this.canvas.append(ft("rect",{x:Ot,y:bt,width:n,height:s,fill:"none",stroke:r.edge}),ft("text",{x:Ot+n/2,y:bt+s+33,fill:r.quiet,"text-anchor":"middle"},e.xName),ft("text",{x:0,y:0,fill:r.quiet,"text-anchor":"middle",transform:`translate(13 ${bt+s/2}) rotate(-90)`},e.yName));const c=ft("g",{"clip-path":`url(#${a})`});for(const l of e.marks??[])this.mark(c,l,s);for(const l of e.lines)c.append(ft("path",{d:this.path(l),fill:"none",stroke:l.colour,"stroke-width":l.width??1.8,...l.dash?{"stroke-dasharray":l.dash}:{},"stroke-linejoin":"round"})),l.points&&l.values.forEach((h,u)=>h!==null&&c.append(ft("circle",{cx:this.px(e.x[u]),cy:this.py(h),r:3,fill:l.colour})));this.overlay=ft("g",{}),this.canvas.append(c),this.peak(r.ink),this.canvas.append(this.overlay),this.showCursor()}path(e){let t="",n=!1;const s=this.data.x;return e.values.forEach((r,a)=>{if(r===null||!Number.isFinite(r)){n=!1;return}t+=`${n?"L":"M"}${this.px(s[a]).toFixed(1)} ${this.py(r).toFixed(1)}`,n=!0}),t}mark(e,t,n){const s=this.px(t.at);t.to!==void 0&&e.append(ft("rect",{x:Math.min(s,this.px(t.to)),y:bt,width:Math.abs(this.px(t.to)-s),height:n,fill:t.colour,opacity:.16})),e.append(ft("line",{x1:s,x2:s,y1:bt,y2:bt+n,stroke:t.colour,"stroke-dasharray":"4 4"})),t.text&&e.append(ft("text",{x:s+4,y:bt+13,fill:t.colour},t.text))}peak(e){const t=this.data?.lines[this.data.peakOf??-1];if(!this.data||!t)return;let n=-1;if(t.values.forEach((h,u)=>{h!==null&&(n<0||h>(t.values[n]??-1/0))&&(n=u)}),n<0)return;const s=this.px(this.data.x[n]),r=this.py(t.values[n]),{w:a,t:o}=this.inner();if(s<Ot-.5||s>Ot+a+.5||r<bt-.5||r>bt+o+.5)return;const c=`${t.values[n].toFixed(this.data.digits??2)} at ${Qn(this.data.x[n],[0,this.xView[1]-this.xView[0]>5?1:.1])}`,l=this.besides(s,r,6.8*c.length);this.canvas.append(ft("path",{d:`M${s} ${r-3}l-5 -8h10z`,fill:e}),ft("text",{x:l.left,y:l.top+11,fill:e,stroke:rt().card,"stroke-width":4,"paint-order":"stroke"},c))}besides(e,t,n){const s=this.data,{w:r,t:a}=this.inner(),o=14,c=d=>d>=this.xView[0]&&d<=this.xView[1],l=s.lines.map(d=>d.values.map((p,_)=>p!==null&&Number.isFinite(p)&&c(s.x[_])?{x:this.px(s.x[_]),y:this.py(p)}:null)),h=[t-15,t-28,t+4,t+18,t+34],u=h.flatMap(d=>[e+9,e-9-n].map(p=>({left:p,top:d,wide:n,high:o})));return u.splice(2,0,{left:e-n/2,top:t-28,wide:n,high:o}),id(u,{left:Ot,top:bt,wide:r,high:a},l)}point(e){this.cursor=e,this.showCursor()}showCursor(){const e=this.data;if(!e)return;G(this.overlay);let t=-1;if(this.cursor!==null){const r=this.cursor;t=e.x.reduce((o,c,l)=>o<0||Math.abs(c-r)<Math.abs(e.x[o]-r)?l:o,-1);const a=this.px(r);a>=Ot&&a<=this.width-ua&&this.overlay.append(ft("line",{x1:a,x2:a,y1:bt,y2:bt+this.inner().t,stroke:rt().ink,"stroke-width":1}))}const n=e.digits??2,s=e.lines.map(r=>{const a=ft("svg",{width:22,height:8,"aria-hidden":"true"});a.append(ft("line",{x1:0,x2:22,y1:4,y2:4,stroke:r.colour,"stroke-width":2,...r.dash?{"stroke-dasharray":r.dash}:{}}));const o=t<0?void 0:r.values[t];return g("span",{},a,` ${r.name}`,t<0?null:g("b",{},` ${o==null?"-":o.toFixed(n)}`))});G(this.legend,...s,t<0?null:g("span",{class:"quiet"},`${e.xName.split(" / ")[0]} ${e.x[t].toFixed(n)}`))}picture(){const e=this.canvas.cloneNode(!0),t=this.data?.height??300;return e.setAttribute("xmlns",Wh),e.removeAttribute("tabindex"),e.prepend(ft("rect",{width:this.width,height:t,fill:rt().card})),(this.data?.lines??[]).forEach((n,s)=>e.append(ft("text",{x:Ot+8,y:bt+16+15*s,fill:n.colour},n.name))),{text:new XMLSerializer().serializeToString(e),width:this.width,height:t}}columns(){const e=this.data;return e?[{name:e.xName,values:e.x},...e.lines.map(t=>({name:`${t.name} (${e.yName})`,values:t.values}))]:[]}listen(){let e=null,t=null,n=this.whole;const s=o=>{const c=this.canvas.getBoundingClientRect();return[(o.clientX-c.left)/dn(),(o.clientY-c.top)/dn()]},r=o=>this.xView[0]+(o-Ot)/this.inner().w*(this.xView[1]-this.xView[0]),a=o=>this.yView[0]+(1-(o-bt)/this.inner().t)*(this.yView[1]-this.yView[0]);this.canvas.addEventListener("pointerdown",o=>{e=s(o),n=[[...this.xView],[...this.yView]],this.canvas.setPointerCapture(o.pointerId)}),this.canvas.addEventListener("pointermove",o=>{const c=s(o);if(!e){const v=c[0]>=Ot&&c[0]<=this.width-ua;this.point(v?r(c[0]):null),this.moved?.(v?r(c[0]):null);return}const[l,h]=[this.inner().w,this.inner().t];if(o.shiftKey){this.xView=ha(n[0],this.whole[0],-(c[0]-e[0])/l*(n[0][1]-n[0][0])),this.yView=ha(n[1],this.whole[1],(c[1]-e[1])/h*(n[1][1]-n[1][0])),this.paint();return}const[u,d,p,_]=Jl(e,c,l,h);t?.remove(),t=ft("rect",{x:u,y:d,width:p,height:_,fill:rt().co,opacity:.15,stroke:rt().co}),this.overlay.append(t)}),this.canvas.addEventListener("pointerup",o=>{const c=e,l=s(o);if(e=null,t?.remove(),t=null,!c||o.shiftKey)return;if(Math.hypot(l[0]-c[0],l[1]-c[1])<5){this.clicked?.(r(l[0]));return}const[h,u,d,p]=Jl(c,l,this.inner().w,this.inner().t),_=[[r(h),r(h+d)],[a(u+p),a(u)]];[this.xView,this.yView]=[ca(_[0],this.whole[0],_[0][0],1),ca(_[1],this.whole[1],_[1][0],1)],this.paint()}),this.canvas.addEventListener("pointerleave",()=>{e||(this.point(null),this.moved?.(null))}),this.canvas.addEventListener("dblclick",()=>this.reset()),this.canvas.addEventListener("keydown",o=>this.key(o))}key(e){const t=(this.xView[1]-this.xView[0])/100,n=this.cursor??(this.xView[0]+this.xView[1])/2;if(e.key==="ArrowRight"||e.key==="ArrowLeft"){const s=Math.max(this.xView[0],Math.min(this.xView[1],n+(e.key==="ArrowRight"?t:-t)));this.point(s),this.moved?.(s)}else if(e.key==="+")this.zoomAll(.5);else if(e.key==="-")this.zoomAll(2);else if(e.key==="0")this.reset();else if(e.key==="Enter"&&this.cursor!==null)this.clicked?.(this.cursor);else return;e.preventDefault()}}function Jl(i,e,t,n){let s=Math.max(Ot,Math.min(i[0],e[0])),r=Math.max(bt,Math.min(i[1],e[1])),a=Math.min(Ot+t,Math.max(i[0],e[0]))-s,o=Math.min(bt+n,Math.max(i[1],e[1]))-r;return a>3*o?[r,o]=[bt,n]:o>3*a&&([s,a]=[Ot,t]),[s,r,Math.max(1,a),Math.max(1,o)]}const nt=Math.PI/180,ni=i=>Math.sin(i*nt),ei=i=>Math.cos(i*nt);function Tt(i,e){return i[0]*e[0]+i[1]*e[1]+i[2]*e[2]}function dl(i,e){return[i[1]*e[2]-i[2]*e[1],i[2]*e[0]-i[0]*e[2],i[0]*e[1]-i[1]*e[0]]}function ut(i,e,t,n){return[i*e[0]+t*n[0],i*e[1]+t*n[1],i*e[2]+t*n[2]]}function Ht(i,e){return[ni(i)*ei(e),ni(i)*ni(e),ei(i)]}function Jt(i){return[Math.acos(Math.max(-1,Math.min(1,i[2])))/nt,Math.atan2(i[1],i[0])/nt]}function Cs(i){const e=new Set,t=[];for(let n=0;3*n<i.length;n++){const s=[0,1,2].map(r=>Math.round(1e4*i[3*n+r])+0).join();e.has(s)||(e.add(s),t.push(n))}return t}function Ji(i,e){return[Tt(i[0],e),Tt(i[1],e),Tt(i[2],e)]}function Cr(i,e){const t=n=>[e[0][n],e[1][n],e[2][n]];return i.map(n=>[0,1,2].map(s=>Tt(n,t(s))))}function Ui(i,e){const t=ei(e),n=ni(e);return i==="x"?[[1,0,0],[0,t,-n],[0,n,t]]:i==="y"?[[t,0,n],[0,1,0],[-n,0,t]]:[[t,-n,0],[n,t,0],[0,0,1]]}function qh(i,e,t){return i==="roll-over-azimuth"?Cr(Ui("y",-e),Ui("z",-t)):i==="azimuth-over-elevation"?Cr(Ui("x",t),Ui("y",-e)):Cr(Ui("y",-e),Ui("x",t))}function ao(i,e,t){return qh(i,e,t)[2]}function fl(i,e,t=0){const n=[ei(i)*ei(e),ei(i)*ni(e),-ni(i)],s=[-ni(e),ei(e),0];return ut(ei(e-t),n,-ni(e-t),s)}function ad(i,e,t,n=0){const s=qh(i,e,t),[r,a]=Jt(s[2]),o=Ji(s,fl(r,a,n));return Math.atan2(o[1],o[0])/nt}function Ps(i){const[e="",t=""]=i.replace(/^#/,"").split("?");return{page:e,values:Object.fromEntries(new URLSearchParams(t))}}function od(i){const e=new URLSearchParams(Object.entries(i.values).filter(([,t])=>t!=="")).toString();return`#${i.page}${e?`?${e}`:""}`}function Gn(i,e=!1){const t=Ps(location.hash),n=od({page:t.page,values:{...t.values,...i}});n!==location.hash&&(e?history.pushState(null,"",n):history.replaceState(null,"",n))}function Dt(i){return Ps(location.hash).values[i]??""}function Ss(i){const e=Dt(i),t=Number(e);return e!==""&&Number.isFinite(t)?t:null}class ld{watchers=new Set;pinned=null;get at(){return this.pinned}fromAddress(){const[e,t]=Dt("at").split(",").map(Number);this.pinned=Number.isFinite(e)&&Number.isFinite(t)?Ht(e,t):null,this.tell(this.pinned,!0)}hover(e){this.tell(e??this.pinned,e===null)}pin(e){this.pinned=e;const[t,n]=e?Jt(e):[0,0];Gn({at:e?`${t.toFixed(2)},${n.toFixed(2)}`:""}),this.tell(e,!0)}watch(e){return this.watchers.add(e),e(this.pinned,!0),()=>this.watchers.delete(e)}tell(e,t){for(const n of[...this.watchers])n(e,t)}}const Ze=new ld,Wn=i=>i.unit==="mm"?" mm":"°",da=i=>i.trim()===""?{}:{speed_deg_s:Number(i)},cd=[-10,-1,-.1,.1,1,10];class hd{constructor(e,t){this.read=e,this.stands=t,this.draw();const n=this.gated(ce("take one sweep",()=>this.sweep(),"main","the source is on for one sweep; nothing moves"),!1);this.sweepPanel.tools.append(g("label",{class:"row small"},this.again,"again and again"),n),this.sweepPanel.empty("Level over frequency and impulse response, with the plan's settings. Nothing moves; the source is off afterwards."),this.stopWatching=gt.watch({status:()=>this.enable()})}panel=new tt("Axes by hand","card step");sweepPanel=new tt("One sweep","card step");level=new pn("level of one sweep");impulse=new pn("impulse response of one sweep");last=null;buttons=[];clear=g("input",{attrs:{type:"checkbox"},on:{change:()=>this.enable()}});stopWatching;speed=g("input",{attrs:{type:"number",min:.01,max:1e3,step:"any",placeholder:"declared","aria-label":"no axis goes faster than this, degrees (millimetres) per second; empty: as the chamber declares"}});again=g("input",{attrs:{type:"checkbox"}});timer=0;before=[];leave(){this.stopWatching(),this.again.checked=!1,window.clearTimeout(this.timer),this.panel.leave(),this.sweepPanel.leave()}gated(e,t=!0){return e.dataset.clear=String(t),this.buttons.push(e),e}enable(){const e=Ae.me?.mine===!0&&!ll(gt.status);for(const t of this.buttons)t.disabled=!e||t.dataset.clear==="true"&&!this.clear.checked}run(e,t){this.panel.ask({key:"hand",words:e},t,n=>(this.last=n,n.pose&&this.stands(n.pose),this.panel.subject.textContent=`${n.text}, ${new Date(1e3*n.at).toLocaleTimeString()}`,this.content()),{waiting:`${e}. STOP brakes.`}).then(n=>{n||this.panel.body.append(...this.content()),this.enable()})}draw(){this.panel.show({key:"",words:""},...this.content()),this.enable()}content(){const e=Ae.campaign;this.buttons=this.buttons.filter(d=>d.isConnected&&this.sweepPanel.element.contains(d));const t=ce("where are the axes?",()=>this.run("the axes are asked",()=>ke("/api/where",{campaign:e})),"","nothing moves");t.disabled=!_t("operate");const n=(this.last?.axes??[]).map(d=>{const p=g("input",{attrs:{type:"number",step:"any",value:d.readout_deg.toFixed(2),min:d.min_deg,max:d.max_deg,"aria-label":`${d.axis}: go to this readout, ${d.unit==="mm"?"millimetres":"degrees"}`}}),_=v=>this.run(`${d.axis} to ${v.toFixed(2)}${Wn(d)}`,()=>ke("/api/move",{campaign:e,to_deg:{[d.axis]:v},...da(this.speed.value),clear:!0}));return[g("strong",{},d.axis),g("span",{class:"mono"},`${d.readout_deg.toFixed(3)}${Wn(d)}`),g("span",{class:"jogs"},...cd.map(v=>this.gated(ce(`${v>0?"+":"−"}${Math.abs(v)}`,()=>_(d.readout_deg+v),"tiny",`${d.axis}: by ${v} ${d.unit==="mm"?"millimetres":"degrees"}`)))),g("span",{class:"row"},p,this.gated(ce("go",()=>_(Number(p.value)),"tiny"))),g("span",{class:"mono small"},`${d.min_deg}${Wn(d)} to ${d.max_deg}${Wn(d)}, home ${d.home_deg}${Wn(d)}, at most ${d.speed_deg_s}${Wn(d)}/s`)]}),s=Ze.at&&Jt(Ze.at),r=g("input",{attrs:{type:"number",min:0,max:180,step:"any",value:s?s[0].toFixed(1):"0","aria-label":"theta to go to"}}),a=g("input",{attrs:{type:"number",step:"any",value:s?s[1].toFixed(1):"0","aria-label":"phi to go to"}}),o=this.gated(ce("point there",()=>this.run("to a direction",()=>ke("/api/point",{campaign:e,theta_deg:Number(r.value),phi_deg:Number(a.value),...da(this.speed.value),clear:!0})))),c=this.gated(ce("all to home",()=>this.run("to home",()=>ke("/api/rest",{campaign:e,seek:!1,...da(this.speed.value),clear:!0})))),l=this.gated(ce("seek reference marks",()=>this.run("reference marks are sought",()=>ke("/api/rest",{campaign:e,seek:!0,clear:!0})))),h=ce("make this home",()=>this.keep(),"","writes home_deg into chamber.toml"),u=ce("make this zero",()=>this.zero(),"","writes zero_deg into chamber.toml: every angle changes");for(const d of[h,u])d.disabled=!_t("configure")||!this.last?.axes.length;return[g("div",{class:"row"},t,g("label",{class:"row small"},this.clear,"the axes are free to move"),g("label",{class:"row small"},"speed / deg/s",this.speed)),n.length?g("div",{class:"scroll-x"},vt(["axis","readout",this.last.axes.some(d=>d.unit==="mm")?"by / deg or mm":"by / deg","to","limits"],n,"axes")):g("p",{class:"quiet small"},"Moves need the motion lease and everyone clear."),g("div",{class:"row"},g("label",{class:"row small"},"theta",r),g("label",{class:"row small"},"phi",a),o,c,l,h,u)]}keep(){const e=this.last?.axes??[];Vn("Make these readouts the home of the axes?",t=>[g("p",{},e.map(n=>`${n.axis} ${n.readout_deg.toFixed(3)}${Wn(n)}`).join(", ")),g("p",{class:"small"},"home_deg of each axis in chamber.toml changes; the file as it was stays beside it."),g("div",{class:"row"},ce("back",t),g("span",{class:"spring"}),ce("make this home",()=>{ke("/api/set-rest",{campaign:Ae.campaign,home_deg:Object.fromEntries(e.map(n=>[n.axis,n.readout_deg]))}).then(()=>{for(const n of e)n.home_deg=n.readout_deg;this.draw(),t()},n=>{t(),this.panel.fault(n)})},"main"))])}zero(){const e=this.last?.axes??[],t=g("div",{class:"faults",attrs:{role:"alert"}}),n=e.map(s=>({a:s,box:g("input",{attrs:{type:"checkbox"}})}));Vn("Make these readouts the zeros of their axes?",s=>{const r=ce("write zeros",()=>{const o=Object.fromEntries(n.filter(c=>c.box.checked).map(({a:c})=>[c.axis,c.readout_deg]));ke("/api/set-zero",{campaign:Ae.campaign,zero_deg:o}).then(()=>{s(),this.run("zeros written; the axes are asked",()=>ke("/api/where",{campaign:Ae.campaign}))},c=>G(t,g("p",{},Vt(c))))},"main"),a=()=>r.disabled=!n.some(o=>o.box.checked);for(const{box:o}of n)o.addEventListener("change",a);return a(),[g("p",{},"Only for an axis that stands at its zero now, as a level, a laser or a pointer shows. Every angle counts from there in later runs; limits and home stay."),...n.map(({a:o,box:c})=>g("label",{class:"row"},c,`${o.axis} at ${o.readout_deg.toFixed(3)}${Wn(o)}`)),g("p",{class:"small"},"zero_deg (zero_mm) in chamber.toml changes; the file as it was stays beside it. Runs on disk keep the chamber they began with. How far a cable may turn counts from the zero too."),t,g("div",{class:"row"},ce("back",s),g("span",{class:"spring"}),r)]})}sweep(){const e=rt();this.sweepPanel.ask({key:"sweep|",words:""},()=>ke("/api/sweep",{campaign:Ae.campaign}),t=>{this.sweepPanel.subject.textContent=new Date(1e3*t.at).toLocaleTimeString();const n=t.sweep;if(!n)return[g("p",{},"No sweep came.")];const s=n.frequency_hz.map(c=>c/1e9),r=n.level_db[0].map(c=>10**((c??-200)/10));this.read(10*Math.log10(r.reduce((c,l)=>c+l,0)/r.length));const a=n.level_db.map((c,l)=>({name:`port ${l+1}`,values:c,colour:l?e.cross:e.co,points:s.length<30})),o=this.before.map(c=>({name:"the sweep before",values:c,colour:e.quiet,dash:"4 3"}));return this.before=[n.level_db[0]],this.again.checked&&(this.timer=window.setTimeout(()=>Ae.me?.mine&&this.again.checked&&this.sweep(),500)),this.level.draw({x:s,lines:[...a,...o],xName:"frequency / GHz",yName:"S21 / dB",height:220}),n.time_ns.length&&this.impulse.draw({x:n.time_ns,lines:[{name:"port 1",values:n.impulse_db,colour:e.co}],xName:"time / ns",yName:"level / dB",yWhole:[-70,5],height:220,peakOf:0}),[this.level.element,n.time_ns.length?this.impulse.element:g("p",{class:"quiet small"},"An impulse response needs three frequencies or more.")]},{keep:!0}).then(t=>{t||(this.again.checked=!1)})}}const js=52,ud=64,Ys=24,dd=40;class zn{constructor(e){this.name=e,this.canvas.setAttribute("aria-label",e);const t=Zr({name:()=>zs(this.name),svg:()=>this.picture(),columns:()=>this.columns()});this.element=g("div",{class:"chart"},this.canvas,g("div",{class:"chart-tools"},this.said,t)),this.canvas.addEventListener("pointermove",n=>{const s=this.under(n);this.say(s),this.moved?.(s)}),this.canvas.addEventListener("pointerleave",()=>this.moved?.(null)),this.canvas.addEventListener("click",n=>{const s=this.under(n);s&&this.clicked?.(s)}),this.canvas.addEventListener("keydown",n=>this.key(n)),Yr(this.canvas,()=>{this.data&&this.room()!==this.width&&this.paint()})}canvas=g("canvas",{class:"map",attrs:{role:"img",tabindex:0}});said=g("div",{class:"small quiet mono said"}," ");element;moved=null;clicked=null;data=null;image=document.createElement("canvas");box=[0,0,1,1];width=0;mark=null;room(){return Math.round(this.canvas.clientWidth/dn())||480}draw(e,t=this.name){this.name=t,this.canvas.setAttribute("aria-label",t),this.data=e,this.paint()}point(e){this.mark=e,this.data&&this.paint()}paint(){const e=this.data;if(!e)return;const t=e.ramp??Bn,n=dn(),s=this.width=this.room(),r=s-js-ud,a=e.height??Math.round(e.square?r:Math.min(380,Math.max(140,r*e.rows.length/Math.max(1,e.columns.length)))),o=window.devicePixelRatio||1,c=a+Ys+dd;this.canvas.style.height=`${c*n}px`,this.canvas.width=Math.round(s*o*n),this.canvas.height=Math.round(c*o*n);const l=this.canvas.getContext("2d"),h=rt();if(l.setTransform(o*n,0,0,o*n,0,0),l.font="12px system-ui",this.cells(e,t),l.imageSmoothingEnabled=!1,l.drawImage(this.image,js,Ys,r,a),l.strokeStyle=h.edge,l.strokeRect(js,Ys,r,a),this.box=[js,Ys,r,a],this.axes(l,e,t),this.mark){const[u,d]=this.placeOf(this.mark);l.strokeStyle=h.cross,l.lineWidth=2,l.strokeRect(u-5,d-5,10,10),l.lineWidth=1}}cells(e,t){this.image.width=e.columns.length,this.image.height=e.rows.length;const n=this.image.getContext("2d"),s=n.createImageData(e.columns.length,e.rows.length);for(let r=0;r<e.rows.length;r++)for(let a=0;a<e.columns.length;a++){const o=kr(e.values[r*e.columns.length+a],e.low,e.high);if(o<0)continue;const c=4*((e.flip?e.rows.length-1-r:r)*e.columns.length+a);for(let l=0;l<3;l++)s.data[c+l]=t[3*o+l];s.data[c+3]=255}n.putImageData(s,0,0)}axes(e,t,n){const[s,r,a,o]=this.box,c=rt(),l=[t.columns[0],t.columns[t.columns.length-1]],h=[t.rows[0],t.rows[t.rows.length-1]];e.fillStyle=c.quiet,e.textAlign="center";for(const d of Ms(l,Math.max(2,Math.floor(a/60))))e.fillText(Qn(d,l),this.placeOf({row:h[0],column:d})[0],r+o+15);e.textAlign="right",e.textBaseline="middle";for(const d of Ms(h,Math.max(2,Math.floor(o/34))))e.fillText(Qn(d,h),s-5,this.placeOf({row:d,column:l[0]})[1]);e.textAlign="center",e.textBaseline="alphabetic",e.fillText(t.columnName,s+a/2,r+o+33),e.save(),e.translate(13,r+o/2),e.rotate(-Math.PI/2),e.fillText(t.rowName,0,0),e.restore();for(let d=0;d<256;d++)e.fillStyle=`rgb(${n[3*d]} ${n[3*d+1]} ${n[3*d+2]})`,e.fillRect(s+a+10,r+o*(1-(d+1)/256),12,o/256+1);e.fillStyle=c.quiet,e.textAlign="left";const u=[t.low,t.high];for(const d of Ms(u,Math.max(2,Math.floor(o/40)),!1)){const p=(d-t.low)/(t.high-t.low);e.fillText(Qn(d,u),s+a+26,r+o*(1-p)+(p>.97?10:p<.03?0:4))}e.fillText(t.unit,s+a+10,r-9)}placeOf(e){const t=this.data,[n,s,r,a]=this.box,o=(l,h)=>{const u=.5/l.length,d=l[l.length-1]-l[0];return d?u+(h-l[0])/d*(1-2*u):.5},c=o(t.rows,e.row);return[n+o(t.columns,e.column)*r,s+(t.flip?1-c:c)*a]}under(e){const t=this.data;if(!t)return null;const n=this.canvas.getBoundingClientRect(),[s,r,a,o]=this.box,c=((e.clientX-n.left)/dn()-s)/a,l=((e.clientY-n.top)/dn()-r)/o;return c<0||c>=1||l<0||l>=1?null:{row:t.rows[Math.floor((t.flip?1-l:l)*t.rows.length)],column:t.columns[Math.floor(c*t.columns.length)]}}say(e){const t=this.data;if(!t||!e){G(this.said," ");return}const n=t.values[t.rows.indexOf(e.row)*t.columns.length+t.columns.indexOf(e.column)];G(this.said,`${t.rowName.split(" / ")[0]} ${Qn(e.row,[0,10])}, ${t.columnName.split(" / ")[0]} ${Qn(e.column,[0,10])}: ${n===null||Number.isNaN(n)?"not measured":`${n.toFixed(2)} ${t.unit}`}`)}key(e){const t=this.data,n={ArrowLeft:[0,-1],ArrowRight:[0,1],ArrowUp:[-1,0],ArrowDown:[1,0]}[e.key];if(!t||!n)return;e.preventDefault();const s=this.mark??{row:t.rows[0],column:t.columns[0]},r=(o,c,l)=>o[Math.max(0,Math.min(o.length-1,o.reduce((h,u,d)=>Math.abs(u-c)<Math.abs(o[h]-c)?d:h,0)+l))],a={row:r(t.rows,s.row,(t.flip?-1:1)*n[0]),column:r(t.columns,s.column,n[1])};this.say(a),this.clicked?.(a)}picture(){const e=this.width,t=parseFloat(this.canvas.style.height)/dn()||300;return{text:`<svg xmlns="http://www.w3.org/2000/svg" width="${e}" height="${t}"><rect width="100%" height="100%" fill="${rt().card}"/><image width="${e}" height="${t}" href="${this.canvas.toDataURL("image/png")}"/></svg>`,width:e,height:t}}columns(){const e=this.data;if(!e)return[];const t=e.columns.length;return[{name:e.rowName,values:e.rows.flatMap(n=>new Array(t).fill(n))},{name:e.columnName,values:e.rows.flatMap(()=>e.columns)},{name:`level / ${e.unit}`,values:Array.from(e.values)}]}}const Ds={r:[[1,0,0],[0,1,0],[0,0,1]],t:[0,0,0]};function sn(i,e){return ut(1,Ji(i.r,e),1,i.t)}function fd(i){return[0,1,2].map(e=>[i[0][e],i[1][e],i[2][e]])}function pd(i,e){return{r:Cr(i.r,e.r),t:sn(i,e.t)}}function md(i,e){const t=Math.cos(e*nt),n=Math.sin(e*nt),s=1-t;return[[t+s*i[0]*i[0],s*i[0]*i[1]-n*i[2],s*i[0]*i[2]+n*i[1]],[s*i[1]*i[0]+n*i[2],t+s*i[1]*i[1],s*i[1]*i[2]-n*i[0]],[s*i[2]*i[0]-n*i[1],s*i[2]*i[1]+n*i[0],t+s*i[2]*i[2]]]}function gd(i,e){const t=i.axis,n=i.point_m;if(i.kind==="prismatic")return{r:Ds.r,t:ut(.001*e,t,0,t)};const s=md(t,e);return{r:s,t:ut(1,n,-1,Ji(s,n))}}function pl(i,e){const t={device:Ds,probe:Ds};return i.map((n,s)=>t[n.carries]=pd(t[n.carries],gd(n,e[s]??0)))}function Jr(i,e){const t=pl(i,e),n=s=>t[i.map(r=>r.carries).lastIndexOf(s)]??Ds;return{device:n("device"),probe:n("probe")}}function oo(i,e,t){const{device:n,probe:s}=Jr(i,e),r=fd(n.r),a=Ji(r,ut(1,sn(s,[0,0,t]),-1,n.t)),o=Math.hypot(...a);return{direction:[a[0]/o,a[1]/o,a[2]/o],distance:o,port:Ji(r,Ji(s.r,[1,0,0]))}}function fa(i,e,t=!1){const[n,s]=Jt(i),r=Ht(n+90,s),a=Ht(90,s+90);return Math.atan2(Tt(e,a),Tt(e,r))/nt+(t?180:0)}const _d=["fixed","name","number"],vd=[0,1,-1,2,-2,3,-3];function xd(i,e){return Math.abs(i.x-e.x)<(i.wide+e.wide)/2&&Math.abs(i.y-e.y)<(i.high+e.high)/2}function Xh(i){const e=i.map(()=>0),t=[];for(const n of _d)i.forEach((s,r)=>{if(s.rank!==n)return;const a=c=>!t.some(l=>xd(l,{...s,y:s.y+c})),o=n==="fixed"?0:n==="number"?a(0)?0:null:vd.map(c=>c*s.high).find(a)??0;e[r]=o,o!==null&&t.push({...s,y:s.y+o})});return e}/**
 * @license
 * Copyright 2010-2025 Three.js Authors
 * SPDX-License-Identifier: MIT
 */const ml="180",Qi={ROTATE:0,DOLLY:1,PAN:2},Ki={ROTATE:0,PAN:1,DOLLY_PAN:2,DOLLY_ROTATE:3},yd=0,Ql=1,wd=2,jh=1,bd=2,Fn=3,oi=0,Kt=1,On=2,si=0,es=1,ec=2,tc=3,nc=4,Md=5,yi=100,Sd=101,Ed=102,Td=103,Ad=104,Rd=200,Cd=201,Pd=202,Dd=203,lo=204,co=205,Ld=206,Id=207,Ud=208,Nd=209,Fd=210,Od=211,kd=212,Bd=213,zd=214,ho=0,uo=1,fo=2,ns=3,po=4,mo=5,go=6,_o=7,gl=0,Hd=1,Vd=2,ri=0,Gd=1,$d=2,Wd=3,qd=4,Xd=5,jd=6,Yd=7,Yh=300,is=301,ss=302,vo=303,xo=304,Qr=306,yo=1e3,bi=1001,wo=1002,xn=1003,Kd=1004,Ks=1005,Sn=1006,pa=1007,Mi=1008,Rn=1009,Kh=1010,Zh=1011,Ls=1012,_l=1013,Ai=1014,kn=1015,Hs=1016,vl=1017,xl=1018,Is=1020,Jh=35902,Qh=35899,eu=1021,tu=1022,vn=1023,Us=1026,Ns=1027,nu=1028,yl=1029,iu=1030,wl=1031,bl=1033,Pr=33776,Dr=33777,Lr=33778,Ir=33779,bo=35840,Mo=35841,So=35842,Eo=35843,To=36196,Ao=37492,Ro=37496,Co=37808,Po=37809,Do=37810,Lo=37811,Io=37812,Uo=37813,No=37814,Fo=37815,Oo=37816,ko=37817,Bo=37818,zo=37819,Ho=37820,Vo=37821,Go=36492,$o=36494,Wo=36495,qo=36283,Xo=36284,jo=36285,Yo=36286,Zd=3200,Jd=3201,su=0,Qd=1,ti="",hn="srgb",rs="srgb-linear",Br="linear",lt="srgb",Ni=7680,ic=519,ef=512,tf=513,nf=514,ru=515,sf=516,rf=517,af=518,of=519,sc=35044,rc="300 es",En=2e3,zr=2001;class Pi{addEventListener(e,t){this._listeners===void 0&&(this._listeners={});const n=this._listeners;n[e]===void 0&&(n[e]=[]),n[e].indexOf(t)===-1&&n[e].push(t)}hasEventListener(e,t){const n=this._listeners;return n===void 0?!1:n[e]!==void 0&&n[e].indexOf(t)!==-1}removeEventListener(e,t){const n=this._listeners;if(n===void 0)return;const s=n[e];if(s!==void 0){const r=s.indexOf(t);r!==-1&&s.splice(r,1)}}dispatchEvent(e){const t=this._listeners;if(t===void 0)return;const n=t[e.type];if(n!==void 0){e.target=this;const s=n.slice(0);for(let r=0,a=s.length;r<a;r++)s[r].call(this,e);e.target=null}}}const Bt=["00","01","02","03","04","05","06","07","08","09","0a","0b","0c","0d","0e","0f","10","11","12","13","14","15","16","17","18","19","1a","1b","1c","1d","1e","1f","20","21","22","23","24","25","26","27","28","29","2a","2b","2c","2d","2e","2f","30","31","32","33","34","35","36","37","38","39","3a","3b","3c","3d","3e","3f","40","41","42","43","44","45","46","47","48","49","4a","4b","4c","4d","4e","4f","50","51","52","53","54","55","56","57","58","59","5a","5b","5c","5d","5e","5f","60","61","62","63","64","65","66","67","68","69","6a","6b","6c","6d","6e","6f","70","71","72","73","74","75","76","77","78","79","7a","7b","7c","7d","7e","7f","80","81","82","83","84","85","86","87","88","89","8a","8b","8c","8d","8e","8f","90","91","92","93","94","95","96","97","98","99","9a","9b","9c","9d","9e","9f","a0","a1","a2","a3","a4","a5","a6","a7","a8","a9","aa","ab","ac","ad","ae","af","b0","b1","b2","b3","b4","b5","b6","b7","b8","b9","ba","bb","bc","bd","be","bf","c0","c1","c2","c3","c4","c5","c6","c7","c8","c9","ca","cb","cc","cd","ce","cf","d0","d1","d2","d3","d4","d5","d6","d7","d8","d9","da","db","dc","dd","de","df","e0","e1","e2","e3","e4","e5","e6","e7","e8","e9","ea","eb","ec","ed","ee","ef","f0","f1","f2","f3","f4","f5","f6","f7","f8","f9","fa","fb","fc","fd","fe","ff"],Es=Math.PI/180,Ko=180/Math.PI;function Vs(){const i=Math.random()*4294967295|0,e=Math.random()*4294967295|0,t=Math.random()*4294967295|0,n=Math.random()*4294967295|0;return(Bt[i&255]+Bt[i>>8&255]+Bt[i>>16&255]+Bt[i>>24&255]+"-"+Bt[e&255]+Bt[e>>8&255]+"-"+Bt[e>>16&15|64]+Bt[e>>24&255]+"-"+Bt[t&63|128]+Bt[t>>8&255]+"-"+Bt[t>>16&255]+Bt[t>>24&255]+Bt[n&255]+Bt[n>>8&255]+Bt[n>>16&255]+Bt[n>>24&255]).toLowerCase()}function Qe(i,e,t){return Math.max(e,Math.min(t,i))}function lf(i,e){return(i%e+e)%e}function ma(i,e,t){return(1-t)*i+t*e}function ps(i,e){switch(e.constructor){case Float32Array:return i;case Uint32Array:return i/4294967295;case Uint16Array:return i/65535;case Uint8Array:return i/255;case Int32Array:return Math.max(i/2147483647,-1);case Int16Array:return Math.max(i/32767,-1);case Int8Array:return Math.max(i/127,-1);default:throw new Error("Invalid component type.")}}function jt(i,e){switch(e.constructor){case Float32Array:return i;case Uint32Array:return Math.round(i*4294967295);case Uint16Array:return Math.round(i*65535);case Uint8Array:return Math.round(i*255);case Int32Array:return Math.round(i*2147483647);case Int16Array:return Math.round(i*32767);case Int8Array:return Math.round(i*127);default:throw new Error("Invalid component type.")}}const cf={DEG2RAD:Es};class We{constructor(e=0,t=0){We.prototype.isVector2=!0,this.x=e,this.y=t}get width(){return this.x}set width(e){this.x=e}get height(){return this.y}set height(e){this.y=e}set(e,t){return this.x=e,this.y=t,this}setScalar(e){return this.x=e,this.y=e,this}setX(e){return this.x=e,this}setY(e){return this.y=e,this}setComponent(e,t){switch(e){case 0:this.x=t;break;case 1:this.y=t;break;default:throw new Error("index is out of range: "+e)}return this}getComponent(e){switch(e){case 0:return this.x;case 1:return this.y;default:throw new Error("index is out of range: "+e)}}clone(){return new this.constructor(this.x,this.y)}copy(e){return this.x=e.x,this.y=e.y,this}add(e){return this.x+=e.x,this.y+=e.y,this}addScalar(e){return this.x+=e,this.y+=e,this}addVectors(e,t){return this.x=e.x+t.x,this.y=e.y+t.y,this}addScaledVector(e,t){return this.x+=e.x*t,this.y+=e.y*t,this}sub(e){return this.x-=e.x,this.y-=e.y,this}subScalar(e){return this.x-=e,this.y-=e,this}subVectors(e,t){return this.x=e.x-t.x,this.y=e.y-t.y,this}multiply(e){return this.x*=e.x,this.y*=e.y,this}multiplyScalar(e){return this.x*=e,this.y*=e,this}divide(e){return this.x/=e.x,this.y/=e.y,this}divideScalar(e){return this.multiplyScalar(1/e)}applyMatrix3(e){const t=this.x,n=this.y,s=e.elements;return this.x=s[0]*t+s[3]*n+s[6],this.y=s[1]*t+s[4]*n+s[7],this}min(e){return this.x=Math.min(this.x,e.x),this.y=Math.min(this.y,e.y),this}max(e){return this.x=Math.max(this.x,e.x),this.y=Math.max(this.y,e.y),this}clamp(e,t){return this.x=Qe(this.x,e.x,t.x),this.y=Qe(this.y,e.y,t.y),this}clampScalar(e,t){return this.x=Qe(this.x,e,t),this.y=Qe(this.y,e,t),this}clampLength(e,t){const n=this.length();return this.divideScalar(n||1).multiplyScalar(Qe(n,e,t))}floor(){return this.x=Math.floor(this.x),this.y=Math.floor(this.y),this}ceil(){return this.x=Math.ceil(this.x),this.y=Math.ceil(this.y),this}round(){return this.x=Math.round(this.x),this.y=Math.round(this.y),this}roundToZero(){return this.x=Math.trunc(this.x),this.y=Math.trunc(this.y),this}negate(){return this.x=-this.x,this.y=-this.y,this}dot(e){return this.x*e.x+this.y*e.y}cross(e){return this.x*e.y-this.y*e.x}lengthSq(){return this.x*this.x+this.y*this.y}length(){return Math.sqrt(this.x*this.x+this.y*this.y)}manhattanLength(){return Math.abs(this.x)+Math.abs(this.y)}normalize(){return this.divideScalar(this.length()||1)}angle(){return Math.atan2(-this.y,-this.x)+Math.PI}angleTo(e){const t=Math.sqrt(this.lengthSq()*e.lengthSq());if(t===0)return Math.PI/2;const n=this.dot(e)/t;return Math.acos(Qe(n,-1,1))}distanceTo(e){return Math.sqrt(this.distanceToSquared(e))}distanceToSquared(e){const t=this.x-e.x,n=this.y-e.y;return t*t+n*n}manhattanDistanceTo(e){return Math.abs(this.x-e.x)+Math.abs(this.y-e.y)}setLength(e){return this.normalize().multiplyScalar(e)}lerp(e,t){return this.x+=(e.x-this.x)*t,this.y+=(e.y-this.y)*t,this}lerpVectors(e,t,n){return this.x=e.x+(t.x-e.x)*n,this.y=e.y+(t.y-e.y)*n,this}equals(e){return e.x===this.x&&e.y===this.y}fromArray(e,t=0){return this.x=e[t],this.y=e[t+1],this}toArray(e=[],t=0){return e[t]=this.x,e[t+1]=this.y,e}fromBufferAttribute(e,t){return this.x=e.getX(t),this.y=e.getY(t),this}rotateAround(e,t){const n=Math.cos(t),s=Math.sin(t),r=this.x-e.x,a=this.y-e.y;return this.x=r*n-a*s+e.x,this.y=r*s+a*n+e.y,this}random(){return this.x=Math.random(),this.y=Math.random(),this}*[Symbol.iterator](){yield this.x,yield this.y}}class Ri{constructor(e=0,t=0,n=0,s=1){this.isQuaternion=!0,this._x=e,this._y=t,this._z=n,this._w=s}static slerpFlat(e,t,n,s,r,a,o){let c=n[s+0],l=n[s+1],h=n[s+2],u=n[s+3];const d=r[a+0],p=r[a+1],_=r[a+2],v=r[a+3];if(o===0){e[t+0]=c,e[t+1]=l,e[t+2]=h,e[t+3]=u;return}if(o===1){e[t+0]=d,e[t+1]=p,e[t+2]=_,e[t+3]=v;return}if(u!==v||c!==d||l!==p||h!==_){let m=1-o;const f=c*d+l*p+h*_+u*v,S=f>=0?1:-1,E=1-f*f;if(E>Number.EPSILON){const P=Math.sqrt(E),C=Math.atan2(P,f*S);m=Math.sin(m*C)/P,o=Math.sin(o*C)/P}const M=o*S;if(c=c*m+d*M,l=l*m+p*M,h=h*m+_*M,u=u*m+v*M,m===1-o){const P=1/Math.sqrt(c*c+l*l+h*h+u*u);c*=P,l*=P,h*=P,u*=P}}e[t]=c,e[t+1]=l,e[t+2]=h,e[t+3]=u}static multiplyQuaternionsFlat(e,t,n,s,r,a){const o=n[s],c=n[s+1],l=n[s+2],h=n[s+3],u=r[a],d=r[a+1],p=r[a+2],_=r[a+3];return e[t]=o*_+h*u+c*p-l*d,e[t+1]=c*_+h*d+l*u-o*p,e[t+2]=l*_+h*p+o*d-c*u,e[t+3]=h*_-o*u-c*d-l*p,e}get x(){return this._x}set x(e){this._x=e,this._onChangeCallback()}get y(){return this._y}set y(e){this._y=e,this._onChangeCallback()}get z(){return this._z}set z(e){this._z=e,this._onChangeCallback()}get w(){return this._w}set w(e){this._w=e,this._onChangeCallback()}set(e,t,n,s){return this._x=e,this._y=t,this._z=n,this._w=s,this._onChangeCallback(),this}clone(){return new this.constructor(this._x,this._y,this._z,this._w)}copy(e){return this._x=e.x,this._y=e.y,this._z=e.z,this._w=e.w,this._onChangeCallback(),this}setFromEuler(e,t=!0){const n=e._x,s=e._y,r=e._z,a=e._order,o=Math.cos,c=Math.sin,l=o(n/2),h=o(s/2),u=o(r/2),d=c(n/2),p=c(s/2),_=c(r/2);switch(a){case"XYZ":this._x=d*h*u+l*p*_,this._y=l*p*u-d*h*_,this._z=l*h*_+d*p*u,this._w=l*h*u-d*p*_;break;case"YXZ":this._x=d*h*u+l*p*_,this._y=l*p*u-d*h*_,this._z=l*h*_-d*p*u,this._w=l*h*u+d*p*_;break;case"ZXY":this._x=d*h*u-l*p*_,this._y=l*p*u+d*h*_,this._z=l*h*_+d*p*u,this._w=l*h*u-d*p*_;break;case"ZYX":this._x=d*h*u-l*p*_,this._y=l*p*u+d*h*_,this._z=l*h*_-d*p*u,this._w=l*h*u+d*p*_;break;case"YZX":this._x=d*h*u+l*p*_,this._y=l*p*u+d*h*_,this._z=l*h*_-d*p*u,this._w=l*h*u-d*p*_;break;case"XZY":this._x=d*h*u-l*p*_,this._y=l*p*u-d*h*_,this._z=l*h*_+d*p*u,this._w=l*h*u+d*p*_;break;default:console.warn("THREE.Quaternion: .setFromEuler() encountered an unknown order: "+a)}return t===!0&&this._onChangeCallback(),this}setFromAxisAngle(e,t){const n=t/2,s=Math.sin(n);return this._x=e.x*s,this._y=e.y*s,this._z=e.z*s,this._w=Math.cos(n),this._onChangeCallback(),this}setFromRotationMatrix(e){const t=e.elements,n=t[0],s=t[4],r=t[8],a=t[1],o=t[5],c=t[9],l=t[2],h=t[6],u=t[10],d=n+o+u;if(d>0){const p=.5/Math.sqrt(d+1);this._w=.25/p,this._x=(h-c)*p,this._y=(r-l)*p,this._z=(a-s)*p}else if(n>o&&n>u){const p=2*Math.sqrt(1+n-o-u);this._w=(h-c)/p,this._x=.25*p,this._y=(s+a)/p,this._z=(r+l)/p}else if(o>u){const p=2*Math.sqrt(1+o-n-u);this._w=(r-l)/p,this._x=(s+a)/p,this._y=.25*p,this._z=(c+h)/p}else{const p=2*Math.sqrt(1+u-n-o);this._w=(a-s)/p,this._x=(r+l)/p,this._y=(c+h)/p,this._z=.25*p}return this._onChangeCallback(),this}setFromUnitVectors(e,t){let n=e.dot(t)+1;return n<1e-8?(n=0,Math.abs(e.x)>Math.abs(e.z)?(this._x=-e.y,this._y=e.x,this._z=0,this._w=n):(this._x=0,this._y=-e.z,this._z=e.y,this._w=n)):(this._x=e.y*t.z-e.z*t.y,this._y=e.z*t.x-e.x*t.z,this._z=e.x*t.y-e.y*t.x,this._w=n),this.normalize()}angleTo(e){return 2*Math.acos(Math.abs(Qe(this.dot(e),-1,1)))}rotateTowards(e,t){const n=this.angleTo(e);if(n===0)return this;const s=Math.min(1,t/n);return this.slerp(e,s),this}identity(){return this.set(0,0,0,1)}invert(){return this.conjugate()}conjugate(){return this._x*=-1,this._y*=-1,this._z*=-1,this._onChangeCallback(),this}dot(e){return this._x*e._x+this._y*e._y+this._z*e._z+this._w*e._w}lengthSq(){return this._x*this._x+this._y*this._y+this._z*this._z+this._w*this._w}length(){return Math.sqrt(this._x*this._x+this._y*this._y+this._z*this._z+this._w*this._w)}normalize(){let e=this.length();return e===0?(this._x=0,this._y=0,this._z=0,this._w=1):(e=1/e,this._x=this._x*e,this._y=this._y*e,this._z=this._z*e,this._w=this._w*e),this._onChangeCallback(),this}multiply(e){return this.multiplyQuaternions(this,e)}premultiply(e){return this.multiplyQuaternions(e,this)}multiplyQuaternions(e,t){const n=e._x,s=e._y,r=e._z,a=e._w,o=t._x,c=t._y,l=t._z,h=t._w;return this._x=n*h+a*o+s*l-r*c,this._y=s*h+a*c+r*o-n*l,this._z=r*h+a*l+n*c-s*o,this._w=a*h-n*o-s*c-r*l,this._onChangeCallback(),this}slerp(e,t){if(t===0)return this;if(t===1)return this.copy(e);const n=this._x,s=this._y,r=this._z,a=this._w;let o=a*e._w+n*e._x+s*e._y+r*e._z;if(o<0?(this._w=-e._w,this._x=-e._x,this._y=-e._y,this._z=-e._z,o=-o):this.copy(e),o>=1)return this._w=a,this._x=n,this._y=s,this._z=r,this;const c=1-o*o;if(c<=Number.EPSILON){const p=1-t;return this._w=p*a+t*this._w,this._x=p*n+t*this._x,this._y=p*s+t*this._y,this._z=p*r+t*this._z,this.normalize(),this}const l=Math.sqrt(c),h=Math.atan2(l,o),u=Math.sin((1-t)*h)/l,d=Math.sin(t*h)/l;return this._w=a*u+this._w*d,this._x=n*u+this._x*d,this._y=s*u+this._y*d,this._z=r*u+this._z*d,this._onChangeCallback(),this}slerpQuaternions(e,t,n){return this.copy(e).slerp(t,n)}random(){const e=2*Math.PI*Math.random(),t=2*Math.PI*Math.random(),n=Math.random(),s=Math.sqrt(1-n),r=Math.sqrt(n);return this.set(s*Math.sin(e),s*Math.cos(e),r*Math.sin(t),r*Math.cos(t))}equals(e){return e._x===this._x&&e._y===this._y&&e._z===this._z&&e._w===this._w}fromArray(e,t=0){return this._x=e[t],this._y=e[t+1],this._z=e[t+2],this._w=e[t+3],this._onChangeCallback(),this}toArray(e=[],t=0){return e[t]=this._x,e[t+1]=this._y,e[t+2]=this._z,e[t+3]=this._w,e}fromBufferAttribute(e,t){return this._x=e.getX(t),this._y=e.getY(t),this._z=e.getZ(t),this._w=e.getW(t),this._onChangeCallback(),this}toJSON(){return this.toArray()}_onChange(e){return this._onChangeCallback=e,this}_onChangeCallback(){}*[Symbol.iterator](){yield this._x,yield this._y,yield this._z,yield this._w}}class I{constructor(e=0,t=0,n=0){I.prototype.isVector3=!0,this.x=e,this.y=t,this.z=n}set(e,t,n){return n===void 0&&(n=this.z),this.x=e,this.y=t,this.z=n,this}setScalar(e){return this.x=e,this.y=e,this.z=e,this}setX(e){return this.x=e,this}setY(e){return this.y=e,this}setZ(e){return this.z=e,this}setComponent(e,t){switch(e){case 0:this.x=t;break;case 1:this.y=t;break;case 2:this.z=t;break;default:throw new Error("index is out of range: "+e)}return this}getComponent(e){switch(e){case 0:return this.x;case 1:return this.y;case 2:return this.z;default:throw new Error("index is out of range: "+e)}}clone(){return new this.constructor(this.x,this.y,this.z)}copy(e){return this.x=e.x,this.y=e.y,this.z=e.z,this}add(e){return this.x+=e.x,this.y+=e.y,this.z+=e.z,this}addScalar(e){return this.x+=e,this.y+=e,this.z+=e,this}addVectors(e,t){return this.x=e.x+t.x,this.y=e.y+t.y,this.z=e.z+t.z,this}addScaledVector(e,t){return this.x+=e.x*t,this.y+=e.y*t,this.z+=e.z*t,this}sub(e){return this.x-=e.x,this.y-=e.y,this.z-=e.z,this}subScalar(e){return this.x-=e,this.y-=e,this.z-=e,this}subVectors(e,t){return this.x=e.x-t.x,this.y=e.y-t.y,this.z=e.z-t.z,this}multiply(e){return this.x*=e.x,this.y*=e.y,this.z*=e.z,this}multiplyScalar(e){return this.x*=e,this.y*=e,this.z*=e,this}multiplyVectors(e,t){return this.x=e.x*t.x,this.y=e.y*t.y,this.z=e.z*t.z,this}applyEuler(e){return this.applyQuaternion(ac.setFromEuler(e))}applyAxisAngle(e,t){return this.applyQuaternion(ac.setFromAxisAngle(e,t))}applyMatrix3(e){const t=this.x,n=this.y,s=this.z,r=e.elements;return this.x=r[0]*t+r[3]*n+r[6]*s,this.y=r[1]*t+r[4]*n+r[7]*s,this.z=r[2]*t+r[5]*n+r[8]*s,this}applyNormalMatrix(e){return this.applyMatrix3(e).normalize()}applyMatrix4(e){const t=this.x,n=this.y,s=this.z,r=e.elements,a=1/(r[3]*t+r[7]*n+r[11]*s+r[15]);return this.x=(r[0]*t+r[4]*n+r[8]*s+r[12])*a,this.y=(r[1]*t+r[5]*n+r[9]*s+r[13])*a,this.z=(r[2]*t+r[6]*n+r[10]*s+r[14])*a,this}applyQuaternion(e){const t=this.x,n=this.y,s=this.z,r=e.x,a=e.y,o=e.z,c=e.w,l=2*(a*s-o*n),h=2*(o*t-r*s),u=2*(r*n-a*t);return this.x=t+c*l+a*u-o*h,this.y=n+c*h+o*l-r*u,this.z=s+c*u+r*h-a*l,this}project(e){return this.applyMatrix4(e.matrixWorldInverse).applyMatrix4(e.projectionMatrix)}unproject(e){return this.applyMatrix4(e.projectionMatrixInverse).applyMatrix4(e.matrixWorld)}transformDirection(e){const t=this.x,n=this.y,s=this.z,r=e.elements;return this.x=r[0]*t+r[4]*n+r[8]*s,this.y=r[1]*t+r[5]*n+r[9]*s,this.z=r[2]*t+r[6]*n+r[10]*s,this.normalize()}divide(e){return this.x/=e.x,this.y/=e.y,this.z/=e.z,this}divideScalar(e){return this.multiplyScalar(1/e)}min(e){return this.x=Math.min(this.x,e.x),this.y=Math.min(this.y,e.y),this.z=Math.min(this.z,e.z),this}max(e){return this.x=Math.max(this.x,e.x),this.y=Math.max(this.y,e.y),this.z=Math.max(this.z,e.z),this}clamp(e,t){return this.x=Qe(this.x,e.x,t.x),this.y=Qe(this.y,e.y,t.y),this.z=Qe(this.z,e.z,t.z),this}clampScalar(e,t){return this.x=Qe(this.x,e,t),this.y=Qe(this.y,e,t),this.z=Qe(this.z,e,t),this}clampLength(e,t){const n=this.length();return this.divideScalar(n||1).multiplyScalar(Qe(n,e,t))}floor(){return this.x=Math.floor(this.x),this.y=Math.floor(this.y),this.z=Math.floor(this.z),this}ceil(){return this.x=Math.ceil(this.x),this.y=Math.ceil(this.y),this.z=Math.ceil(this.z),this}round(){return this.x=Math.round(this.x),this.y=Math.round(this.y),this.z=Math.round(this.z),this}roundToZero(){return this.x=Math.trunc(this.x),this.y=Math.trunc(this.y),this.z=Math.trunc(this.z),this}negate(){return this.x=-this.x,this.y=-this.y,this.z=-this.z,this}dot(e){return this.x*e.x+this.y*e.y+this.z*e.z}lengthSq(){return this.x*this.x+this.y*this.y+this.z*this.z}length(){return Math.sqrt(this.x*this.x+this.y*this.y+this.z*this.z)}manhattanLength(){return Math.abs(this.x)+Math.abs(this.y)+Math.abs(this.z)}normalize(){return this.divideScalar(this.length()||1)}setLength(e){return this.normalize().multiplyScalar(e)}lerp(e,t){return this.x+=(e.x-this.x)*t,this.y+=(e.y-this.y)*t,this.z+=(e.z-this.z)*t,this}lerpVectors(e,t,n){return this.x=e.x+(t.x-e.x)*n,this.y=e.y+(t.y-e.y)*n,this.z=e.z+(t.z-e.z)*n,this}cross(e){return this.crossVectors(this,e)}crossVectors(e,t){const n=e.x,s=e.y,r=e.z,a=t.x,o=t.y,c=t.z;return this.x=s*c-r*o,this.y=r*a-n*c,this.z=n*o-s*a,this}projectOnVector(e){const t=e.lengthSq();if(t===0)return this.set(0,0,0);const n=e.dot(this)/t;return this.copy(e).multiplyScalar(n)}projectOnPlane(e){return ga.copy(this).projectOnVector(e),this.sub(ga)}reflect(e){return this.sub(ga.copy(e).multiplyScalar(2*this.dot(e)))}angleTo(e){const t=Math.sqrt(this.lengthSq()*e.lengthSq());if(t===0)return Math.PI/2;const n=this.dot(e)/t;return Math.acos(Qe(n,-1,1))}distanceTo(e){return Math.sqrt(this.distanceToSquared(e))}distanceToSquared(e){const t=this.x-e.x,n=this.y-e.y,s=this.z-e.z;return t*t+n*n+s*s}manhattanDistanceTo(e){return Math.abs(this.x-e.x)+Math.abs(this.y-e.y)+Math.abs(this.z-e.z)}setFromSpherical(e){return this.setFromSphericalCoords(e.radius,e.phi,e.theta)}setFromSphericalCoords(e,t,n){const s=Math.sin(t)*e;return this.x=s*Math.sin(n),this.y=Math.cos(t)*e,this.z=s*Math.cos(n),this}setFromCylindrical(e){return this.setFromCylindricalCoords(e.radius,e.theta,e.y)}setFromCylindricalCoords(e,t,n){return this.x=e*Math.sin(t),this.y=n,this.z=e*Math.cos(t),this}setFromMatrixPosition(e){const t=e.elements;return this.x=t[12],this.y=t[13],this.z=t[14],this}setFromMatrixScale(e){const t=this.setFromMatrixColumn(e,0).length(),n=this.setFromMatrixColumn(e,1).length(),s=this.setFromMatrixColumn(e,2).length();return this.x=t,this.y=n,this.z=s,this}setFromMatrixColumn(e,t){return this.fromArray(e.elements,t*4)}setFromMatrix3Column(e,t){return this.fromArray(e.elements,t*3)}setFromEuler(e){return this.x=e._x,this.y=e._y,this.z=e._z,this}setFromColor(e){return this.x=e.r,this.y=e.g,this.z=e.b,this}equals(e){return e.x===this.x&&e.y===this.y&&e.z===this.z}fromArray(e,t=0){return this.x=e[t],this.y=e[t+1],this.z=e[t+2],this}toArray(e=[],t=0){return e[t]=this.x,e[t+1]=this.y,e[t+2]=this.z,e}fromBufferAttribute(e,t){return this.x=e.getX(t),this.y=e.getY(t),this.z=e.getZ(t),this}random(){return this.x=Math.random(),this.y=Math.random(),this.z=Math.random(),this}randomDirection(){const e=Math.random()*Math.PI*2,t=Math.random()*2-1,n=Math.sqrt(1-t*t);return this.x=n*Math.cos(e),this.y=t,this.z=n*Math.sin(e),this}*[Symbol.iterator](){yield this.x,yield this.y,yield this.z}}const ga=new I,ac=new Ri;class je{constructor(e,t,n,s,r,a,o,c,l){je.prototype.isMatrix3=!0,this.elements=[1,0,0,0,1,0,0,0,1],e!==void 0&&this.set(e,t,n,s,r,a,o,c,l)}set(e,t,n,s,r,a,o,c,l){const h=this.elements;return h[0]=e,h[1]=s,h[2]=o,h[3]=t,h[4]=r,h[5]=c,h[6]=n,h[7]=a,h[8]=l,this}identity(){return this.set(1,0,0,0,1,0,0,0,1),this}copy(e){const t=this.elements,n=e.elements;return t[0]=n[0],t[1]=n[1],t[2]=n[2],t[3]=n[3],t[4]=n[4],t[5]=n[5],t[6]=n[6],t[7]=n[7],t[8]=n[8],this}extractBasis(e,t,n){return e.setFromMatrix3Column(this,0),t.setFromMatrix3Column(this,1),n.setFromMatrix3Column(this,2),this}setFromMatrix4(e){const t=e.elements;return this.set(t[0],t[4],t[8],t[1],t[5],t[9],t[2],t[6],t[10]),this}multiply(e){return this.multiplyMatrices(this,e)}premultiply(e){return this.multiplyMatrices(e,this)}multiplyMatrices(e,t){const n=e.elements,s=t.elements,r=this.elements,a=n[0],o=n[3],c=n[6],l=n[1],h=n[4],u=n[7],d=n[2],p=n[5],_=n[8],v=s[0],m=s[3],f=s[6],S=s[1],E=s[4],M=s[7],P=s[2],C=s[5],D=s[8];return r[0]=a*v+o*S+c*P,r[3]=a*m+o*E+c*C,r[6]=a*f+o*M+c*D,r[1]=l*v+h*S+u*P,r[4]=l*m+h*E+u*C,r[7]=l*f+h*M+u*D,r[2]=d*v+p*S+_*P,r[5]=d*m+p*E+_*C,r[8]=d*f+p*M+_*D,this}multiplyScalar(e){const t=this.elements;return t[0]*=e,t[3]*=e,t[6]*=e,t[1]*=e,t[4]*=e,t[7]*=e,t[2]*=e,t[5]*=e,t[8]*=e,this}determinant(){const e=this.elements,t=e[0],n=e[1],s=e[2],r=e[3],a=e[4],o=e[5],c=e[6],l=e[7],h=e[8];return t*a*h-t*o*l-n*r*h+n*o*c+s*r*l-s*a*c}invert(){const e=this.elements,t=e[0],n=e[1],s=e[2],r=e[3],a=e[4],o=e[5],c=e[6],l=e[7],h=e[8],u=h*a-o*l,d=o*c-h*r,p=l*r-a*c,_=t*u+n*d+s*p;if(_===0)return this.set(0,0,0,0,0,0,0,0,0);const v=1/_;return e[0]=u*v,e[1]=(s*l-h*n)*v,e[2]=(o*n-s*a)*v,e[3]=d*v,e[4]=(h*t-s*c)*v,e[5]=(s*r-o*t)*v,e[6]=p*v,e[7]=(n*c-l*t)*v,e[8]=(a*t-n*r)*v,this}transpose(){let e;const t=this.elements;return e=t[1],t[1]=t[3],t[3]=e,e=t[2],t[2]=t[6],t[6]=e,e=t[5],t[5]=t[7],t[7]=e,this}getNormalMatrix(e){return this.setFromMatrix4(e).invert().transpose()}transposeIntoArray(e){const t=this.elements;return e[0]=t[0],e[1]=t[3],e[2]=t[6],e[3]=t[1],e[4]=t[4],e[5]=t[7],e[6]=t[2],e[7]=t[5],e[8]=t[8],this}setUvTransform(e,t,n,s,r,a,o){const c=Math.cos(r),l=Math.sin(r);return this.set(n*c,n*l,-n*(c*a+l*o)+a+e,-s*l,s*c,-s*(-l*a+c*o)+o+t,0,0,1),this}scale(e,t){return this.premultiply(_a.makeScale(e,t)),this}rotate(e){return this.premultiply(_a.makeRotation(-e)),this}translate(e,t){return this.premultiply(_a.makeTranslation(e,t)),this}makeTranslation(e,t){return e.isVector2?this.set(1,0,e.x,0,1,e.y,0,0,1):this.set(1,0,e,0,1,t,0,0,1),this}makeRotation(e){const t=Math.cos(e),n=Math.sin(e);return this.set(t,-n,0,n,t,0,0,0,1),this}makeScale(e,t){return this.set(e,0,0,0,t,0,0,0,1),this}equals(e){const t=this.elements,n=e.elements;for(let s=0;s<9;s++)if(t[s]!==n[s])return!1;return!0}fromArray(e,t=0){for(let n=0;n<9;n++)this.elements[n]=e[n+t];return this}toArray(e=[],t=0){const n=this.elements;return e[t]=n[0],e[t+1]=n[1],e[t+2]=n[2],e[t+3]=n[3],e[t+4]=n[4],e[t+5]=n[5],e[t+6]=n[6],e[t+7]=n[7],e[t+8]=n[8],e}clone(){return new this.constructor().fromArray(this.elements)}}const _a=new je;function au(i){for(let e=i.length-1;e>=0;--e)if(i[e]>=65535)return!0;return!1}function Hr(i){return document.createElementNS("http://www.w3.org/1999/xhtml",i)}function hf(){const i=Hr("canvas");return i.style.display="block",i}const oc={};function Fs(i){i in oc||(oc[i]=!0,console.warn(i))}function uf(i,e,t){return new Promise(function(n,s){function r(){switch(i.clientWaitSync(e,i.SYNC_FLUSH_COMMANDS_BIT,0)){case i.WAIT_FAILED:s();break;case i.TIMEOUT_EXPIRED:setTimeout(r,t);break;default:n()}}setTimeout(r,t)})}const lc=new je().set(.4123908,.3575843,.1804808,.212639,.7151687,.0721923,.0193308,.1191948,.9505322),cc=new je().set(3.2409699,-1.5373832,-.4986108,-.9692436,1.8759675,.0415551,.0556301,-.203977,1.0569715);function df(){const i={enabled:!0,workingColorSpace:rs,spaces:{},convert:function(s,r,a){return this.enabled===!1||r===a||!r||!a||(this.spaces[r].transfer===lt&&(s.r=Hn(s.r),s.g=Hn(s.g),s.b=Hn(s.b)),this.spaces[r].primaries!==this.spaces[a].primaries&&(s.applyMatrix3(this.spaces[r].toXYZ),s.applyMatrix3(this.spaces[a].fromXYZ)),this.spaces[a].transfer===lt&&(s.r=ts(s.r),s.g=ts(s.g),s.b=ts(s.b))),s},workingToColorSpace:function(s,r){return this.convert(s,this.workingColorSpace,r)},colorSpaceToWorking:function(s,r){return this.convert(s,r,this.workingColorSpace)},getPrimaries:function(s){return this.spaces[s].primaries},getTransfer:function(s){return s===ti?Br:this.spaces[s].transfer},getToneMappingMode:function(s){return this.spaces[s].outputColorSpaceConfig.toneMappingMode||"standard"},getLuminanceCoefficients:function(s,r=this.workingColorSpace){return s.fromArray(this.spaces[r].luminanceCoefficients)},define:function(s){Object.assign(this.spaces,s)},_getMatrix:function(s,r,a){return s.copy(this.spaces[r].toXYZ).multiply(this.spaces[a].fromXYZ)},_getDrawingBufferColorSpace:function(s){return this.spaces[s].outputColorSpaceConfig.drawingBufferColorSpace},_getUnpackColorSpace:function(s=this.workingColorSpace){return this.spaces[s].workingColorSpaceConfig.unpackColorSpace},fromWorkingColorSpace:function(s,r){return Fs("THREE.ColorManagement: .fromWorkingColorSpace() has been renamed to .workingToColorSpace()."),i.workingToColorSpace(s,r)},toWorkingColorSpace:function(s,r){return Fs("THREE.ColorManagement: .toWorkingColorSpace() has been renamed to .colorSpaceToWorking()."),i.colorSpaceToWorking(s,r)}},e=[.64,.33,.3,.6,.15,.06],t=[.2126,.7152,.0722],n=[.3127,.329];return i.define({[rs]:{primaries:e,whitePoint:n,transfer:Br,toXYZ:lc,fromXYZ:cc,luminanceCoefficients:t,workingColorSpaceConfig:{unpackColorSpace:hn},outputColorSpaceConfig:{drawingBufferColorSpace:hn}},[hn]:{primaries:e,whitePoint:n,transfer:lt,toXYZ:lc,fromXYZ:cc,luminanceCoefficients:t,outputColorSpaceConfig:{drawingBufferColorSpace:hn}}}),i}const st=df();function Hn(i){return i<.04045?i*.0773993808:Math.pow(i*.9478672986+.0521327014,2.4)}function ts(i){return i<.0031308?i*12.92:1.055*Math.pow(i,.41666)-.055}let Fi;class ff{static getDataURL(e,t="image/png"){if(/^data:/i.test(e.src)||typeof HTMLCanvasElement>"u")return e.src;let n;if(e instanceof HTMLCanvasElement)n=e;else{Fi===void 0&&(Fi=Hr("canvas")),Fi.width=e.width,Fi.height=e.height;const s=Fi.getContext("2d");e instanceof ImageData?s.putImageData(e,0,0):s.drawImage(e,0,0,e.width,e.height),n=Fi}return n.toDataURL(t)}static sRGBToLinear(e){if(typeof HTMLImageElement<"u"&&e instanceof HTMLImageElement||typeof HTMLCanvasElement<"u"&&e instanceof HTMLCanvasElement||typeof ImageBitmap<"u"&&e instanceof ImageBitmap){const t=Hr("canvas");t.width=e.width,t.height=e.height;const n=t.getContext("2d");n.drawImage(e,0,0,e.width,e.height);const s=n.getImageData(0,0,e.width,e.height),r=s.data;for(let a=0;a<r.length;a++)r[a]=Hn(r[a]/255)*255;return n.putImageData(s,0,0),t}else if(e.data){const t=e.data.slice(0);for(let n=0;n<t.length;n++)t instanceof Uint8Array||t instanceof Uint8ClampedArray?t[n]=Math.floor(Hn(t[n]/255)*255):t[n]=Hn(t[n]);return{data:t,width:e.width,height:e.height}}else return console.warn("THREE.ImageUtils.sRGBToLinear(): Unsupported image type. No color space conversion applied."),e}}let pf=0;class Ml{constructor(e=null){this.isSource=!0,Object.defineProperty(this,"id",{value:pf++}),this.uuid=Vs(),this.data=e,this.dataReady=!0,this.version=0}getSize(e){const t=this.data;return typeof HTMLVideoElement<"u"&&t instanceof HTMLVideoElement?e.set(t.videoWidth,t.videoHeight,0):t instanceof VideoFrame?e.set(t.displayHeight,t.displayWidth,0):t!==null?e.set(t.width,t.height,t.depth||0):e.set(0,0,0),e}set needsUpdate(e){e===!0&&this.version++}toJSON(e){const t=e===void 0||typeof e=="string";if(!t&&e.images[this.uuid]!==void 0)return e.images[this.uuid];const n={uuid:this.uuid,url:""},s=this.data;if(s!==null){let r;if(Array.isArray(s)){r=[];for(let a=0,o=s.length;a<o;a++)s[a].isDataTexture?r.push(va(s[a].image)):r.push(va(s[a]))}else r=va(s);n.url=r}return t||(e.images[this.uuid]=n),n}}function va(i){return typeof HTMLImageElement<"u"&&i instanceof HTMLImageElement||typeof HTMLCanvasElement<"u"&&i instanceof HTMLCanvasElement||typeof ImageBitmap<"u"&&i instanceof ImageBitmap?ff.getDataURL(i):i.data?{data:Array.from(i.data),width:i.width,height:i.height,type:i.data.constructor.name}:(console.warn("THREE.Texture: Unable to serialize Texture."),{})}let mf=0;const xa=new I;class Zt extends Pi{constructor(e=Zt.DEFAULT_IMAGE,t=Zt.DEFAULT_MAPPING,n=bi,s=bi,r=Sn,a=Mi,o=vn,c=Rn,l=Zt.DEFAULT_ANISOTROPY,h=ti){super(),this.isTexture=!0,Object.defineProperty(this,"id",{value:mf++}),this.uuid=Vs(),this.name="",this.source=new Ml(e),this.mipmaps=[],this.mapping=t,this.channel=0,this.wrapS=n,this.wrapT=s,this.magFilter=r,this.minFilter=a,this.anisotropy=l,this.format=o,this.internalFormat=null,this.type=c,this.offset=new We(0,0),this.repeat=new We(1,1),this.center=new We(0,0),this.rotation=0,this.matrixAutoUpdate=!0,this.matrix=new je,this.generateMipmaps=!0,this.premultiplyAlpha=!1,this.flipY=!0,this.unpackAlignment=4,this.colorSpace=h,this.userData={},this.updateRanges=[],this.version=0,this.onUpdate=null,this.renderTarget=null,this.isRenderTargetTexture=!1,this.isArrayTexture=!!(e&&e.depth&&e.depth>1),this.pmremVersion=0}get width(){return this.source.getSize(xa).x}get height(){return this.source.getSize(xa).y}get depth(){return this.source.getSize(xa).z}get image(){return this.source.data}set image(e=null){this.source.data=e}updateMatrix(){this.matrix.setUvTransform(this.offset.x,this.offset.y,this.repeat.x,this.repeat.y,this.rotation,this.center.x,this.center.y)}addUpdateRange(e,t){this.updateRanges.push({start:e,count:t})}clearUpdateRanges(){this.updateRanges.length=0}clone(){return new this.constructor().copy(this)}copy(e){return this.name=e.name,this.source=e.source,this.mipmaps=e.mipmaps.slice(0),this.mapping=e.mapping,this.channel=e.channel,this.wrapS=e.wrapS,this.wrapT=e.wrapT,this.magFilter=e.magFilter,this.minFilter=e.minFilter,this.anisotropy=e.anisotropy,this.format=e.format,this.internalFormat=e.internalFormat,this.type=e.type,this.offset.copy(e.offset),this.repeat.copy(e.repeat),this.center.copy(e.center),this.rotation=e.rotation,this.matrixAutoUpdate=e.matrixAutoUpdate,this.matrix.copy(e.matrix),this.generateMipmaps=e.generateMipmaps,this.premultiplyAlpha=e.premultiplyAlpha,this.flipY=e.flipY,this.unpackAlignment=e.unpackAlignment,this.colorSpace=e.colorSpace,this.renderTarget=e.renderTarget,this.isRenderTargetTexture=e.isRenderTargetTexture,this.isArrayTexture=e.isArrayTexture,this.userData=JSON.parse(JSON.stringify(e.userData)),this.needsUpdate=!0,this}setValues(e){for(const t in e){const n=e[t];if(n===void 0){console.warn(`THREE.Texture.setValues(): parameter '${t}' has value of undefined.`);continue}const s=this[t];if(s===void 0){console.warn(`THREE.Texture.setValues(): property '${t}' does not exist.`);continue}s&&n&&s.isVector2&&n.isVector2||s&&n&&s.isVector3&&n.isVector3||s&&n&&s.isMatrix3&&n.isMatrix3?s.copy(n):this[t]=n}}toJSON(e){const t=e===void 0||typeof e=="string";if(!t&&e.textures[this.uuid]!==void 0)return e.textures[this.uuid];const n={metadata:{version:4.7,type:"Texture",generator:"Texture.toJSON"},uuid:this.uuid,name:this.name,image:this.source.toJSON(e).uuid,mapping:this.mapping,channel:this.channel,repeat:[this.repeat.x,this.repeat.y],offset:[this.offset.x,this.offset.y],center:[this.center.x,this.center.y],rotation:this.rotation,wrap:[this.wrapS,this.wrapT],format:this.format,internalFormat:this.internalFormat,type:this.type,colorSpace:this.colorSpace,minFilter:this.minFilter,magFilter:this.magFilter,anisotropy:this.anisotropy,flipY:this.flipY,generateMipmaps:this.generateMipmaps,premultiplyAlpha:this.premultiplyAlpha,unpackAlignment:this.unpackAlignment};return Object.keys(this.userData).length>0&&(n.userData=this.userData),t||(e.textures[this.uuid]=n),n}dispose(){this.dispatchEvent({type:"dispose"})}transformUv(e){if(this.mapping!==Yh)return e;if(e.applyMatrix3(this.matrix),e.x<0||e.x>1)switch(this.wrapS){case yo:e.x=e.x-Math.floor(e.x);break;case bi:e.x=e.x<0?0:1;break;case wo:Math.abs(Math.floor(e.x)%2)===1?e.x=Math.ceil(e.x)-e.x:e.x=e.x-Math.floor(e.x);break}if(e.y<0||e.y>1)switch(this.wrapT){case yo:e.y=e.y-Math.floor(e.y);break;case bi:e.y=e.y<0?0:1;break;case wo:Math.abs(Math.floor(e.y)%2)===1?e.y=Math.ceil(e.y)-e.y:e.y=e.y-Math.floor(e.y);break}return this.flipY&&(e.y=1-e.y),e}set needsUpdate(e){e===!0&&(this.version++,this.source.needsUpdate=!0)}set needsPMREMUpdate(e){e===!0&&this.pmremVersion++}}Zt.DEFAULT_IMAGE=null;Zt.DEFAULT_MAPPING=Yh;Zt.DEFAULT_ANISOTROPY=1;class St{constructor(e=0,t=0,n=0,s=1){St.prototype.isVector4=!0,this.x=e,this.y=t,this.z=n,this.w=s}get width(){return this.z}set width(e){this.z=e}get height(){return this.w}set height(e){this.w=e}set(e,t,n,s){return this.x=e,this.y=t,this.z=n,this.w=s,this}setScalar(e){return this.x=e,this.y=e,this.z=e,this.w=e,this}setX(e){return this.x=e,this}setY(e){return this.y=e,this}setZ(e){return this.z=e,this}setW(e){return this.w=e,this}setComponent(e,t){switch(e){case 0:this.x=t;break;case 1:this.y=t;break;case 2:this.z=t;break;case 3:this.w=t;break;default:throw new Error("index is out of range: "+e)}return this}getComponent(e){switch(e){case 0:return this.x;case 1:return this.y;case 2:return this.z;case 3:return this.w;default:throw new Error("index is out of range: "+e)}}clone(){return new this.constructor(this.x,this.y,this.z,this.w)}copy(e){return this.x=e.x,this.y=e.y,this.z=e.z,this.w=e.w!==void 0?e.w:1,this}add(e){return this.x+=e.x,this.y+=e.y,this.z+=e.z,this.w+=e.w,this}addScalar(e){return this.x+=e,this.y+=e,this.z+=e,this.w+=e,this}addVectors(e,t){return this.x=e.x+t.x,this.y=e.y+t.y,this.z=e.z+t.z,this.w=e.w+t.w,this}addScaledVector(e,t){return this.x+=e.x*t,this.y+=e.y*t,this.z+=e.z*t,this.w+=e.w*t,this}sub(e){return this.x-=e.x,this.y-=e.y,this.z-=e.z,this.w-=e.w,this}subScalar(e){return this.x-=e,this.y-=e,this.z-=e,this.w-=e,this}subVectors(e,t){return this.x=e.x-t.x,this.y=e.y-t.y,this.z=e.z-t.z,this.w=e.w-t.w,this}multiply(e){return this.x*=e.x,this.y*=e.y,this.z*=e.z,this.w*=e.w,this}multiplyScalar(e){return this.x*=e,this.y*=e,this.z*=e,this.w*=e,this}applyMatrix4(e){const t=this.x,n=this.y,s=this.z,r=this.w,a=e.elements;return this.x=a[0]*t+a[4]*n+a[8]*s+a[12]*r,this.y=a[1]*t+a[5]*n+a[9]*s+a[13]*r,this.z=a[2]*t+a[6]*n+a[10]*s+a[14]*r,this.w=a[3]*t+a[7]*n+a[11]*s+a[15]*r,this}divide(e){return this.x/=e.x,this.y/=e.y,this.z/=e.z,this.w/=e.w,this}divideScalar(e){return this.multiplyScalar(1/e)}setAxisAngleFromQuaternion(e){this.w=2*Math.acos(e.w);const t=Math.sqrt(1-e.w*e.w);return t<1e-4?(this.x=1,this.y=0,this.z=0):(this.x=e.x/t,this.y=e.y/t,this.z=e.z/t),this}setAxisAngleFromRotationMatrix(e){let t,n,s,r;const c=e.elements,l=c[0],h=c[4],u=c[8],d=c[1],p=c[5],_=c[9],v=c[2],m=c[6],f=c[10];if(Math.abs(h-d)<.01&&Math.abs(u-v)<.01&&Math.abs(_-m)<.01){if(Math.abs(h+d)<.1&&Math.abs(u+v)<.1&&Math.abs(_+m)<.1&&Math.abs(l+p+f-3)<.1)return this.set(1,0,0,0),this;t=Math.PI;const E=(l+1)/2,M=(p+1)/2,P=(f+1)/2,C=(h+d)/4,D=(u+v)/4,O=(_+m)/4;return E>M&&E>P?E<.01?(n=0,s=.707106781,r=.707106781):(n=Math.sqrt(E),s=C/n,r=D/n):M>P?M<.01?(n=.707106781,s=0,r=.707106781):(s=Math.sqrt(M),n=C/s,r=O/s):P<.01?(n=.707106781,s=.707106781,r=0):(r=Math.sqrt(P),n=D/r,s=O/r),this.set(n,s,r,t),this}let S=Math.sqrt((m-_)*(m-_)+(u-v)*(u-v)+(d-h)*(d-h));return Math.abs(S)<.001&&(S=1),this.x=(m-_)/S,this.y=(u-v)/S,this.z=(d-h)/S,this.w=Math.acos((l+p+f-1)/2),this}setFromMatrixPosition(e){const t=e.elements;return this.x=t[12],this.y=t[13],this.z=t[14],this.w=t[15],this}min(e){return this.x=Math.min(this.x,e.x),this.y=Math.min(this.y,e.y),this.z=Math.min(this.z,e.z),this.w=Math.min(this.w,e.w),this}max(e){return this.x=Math.max(this.x,e.x),this.y=Math.max(this.y,e.y),this.z=Math.max(this.z,e.z),this.w=Math.max(this.w,e.w),this}clamp(e,t){return this.x=Qe(this.x,e.x,t.x),this.y=Qe(this.y,e.y,t.y),this.z=Qe(this.z,e.z,t.z),this.w=Qe(this.w,e.w,t.w),this}clampScalar(e,t){return this.x=Qe(this.x,e,t),this.y=Qe(this.y,e,t),this.z=Qe(this.z,e,t),this.w=Qe(this.w,e,t),this}clampLength(e,t){const n=this.length();return this.divideScalar(n||1).multiplyScalar(Qe(n,e,t))}floor(){return this.x=Math.floor(this.x),this.y=Math.floor(this.y),this.z=Math.floor(this.z),this.w=Math.floor(this.w),this}ceil(){return this.x=Math.ceil(this.x),this.y=Math.ceil(this.y),this.z=Math.ceil(this.z),this.w=Math.ceil(this.w),this}round(){return this.x=Math.round(this.x),this.y=Math.round(this.y),this.z=Math.round(this.z),this.w=Math.round(this.w),this}roundToZero(){return this.x=Math.trunc(this.x),this.y=Math.trunc(this.y),this.z=Math.trunc(this.z),this.w=Math.trunc(this.w),this}negate(){return this.x=-this.x,this.y=-this.y,this.z=-this.z,this.w=-this.w,this}dot(e){return this.x*e.x+this.y*e.y+this.z*e.z+this.w*e.w}lengthSq(){return this.x*this.x+this.y*this.y+this.z*this.z+this.w*this.w}length(){return Math.sqrt(this.x*this.x+this.y*this.y+this.z*this.z+this.w*this.w)}manhattanLength(){return Math.abs(this.x)+Math.abs(this.y)+Math.abs(this.z)+Math.abs(this.w)}normalize(){return this.divideScalar(this.length()||1)}setLength(e){return this.normalize().multiplyScalar(e)}lerp(e,t){return this.x+=(e.x-this.x)*t,this.y+=(e.y-this.y)*t,this.z+=(e.z-this.z)*t,this.w+=(e.w-this.w)*t,this}lerpVectors(e,t,n){return this.x=e.x+(t.x-e.x)*n,this.y=e.y+(t.y-e.y)*n,this.z=e.z+(t.z-e.z)*n,this.w=e.w+(t.w-e.w)*n,this}equals(e){return e.x===this.x&&e.y===this.y&&e.z===this.z&&e.w===this.w}fromArray(e,t=0){return this.x=e[t],this.y=e[t+1],this.z=e[t+2],this.w=e[t+3],this}toArray(e=[],t=0){return e[t]=this.x,e[t+1]=this.y,e[t+2]=this.z,e[t+3]=this.w,e}fromBufferAttribute(e,t){return this.x=e.getX(t),this.y=e.getY(t),this.z=e.getZ(t),this.w=e.getW(t),this}random(){return this.x=Math.random(),this.y=Math.random(),this.z=Math.random(),this.w=Math.random(),this}*[Symbol.iterator](){yield this.x,yield this.y,yield this.z,yield this.w}}class gf extends Pi{constructor(e=1,t=1,n={}){super(),n=Object.assign({generateMipmaps:!1,internalFormat:null,minFilter:Sn,depthBuffer:!0,stencilBuffer:!1,resolveDepthBuffer:!0,resolveStencilBuffer:!0,depthTexture:null,samples:0,count:1,depth:1,multiview:!1},n),this.isRenderTarget=!0,this.width=e,this.height=t,this.depth=n.depth,this.scissor=new St(0,0,e,t),this.scissorTest=!1,this.viewport=new St(0,0,e,t);const s={width:e,height:t,depth:n.depth},r=new Zt(s);this.textures=[];const a=n.count;for(let o=0;o<a;o++)this.textures[o]=r.clone(),this.textures[o].isRenderTargetTexture=!0,this.textures[o].renderTarget=this;this._setTextureOptions(n),this.depthBuffer=n.depthBuffer,this.stencilBuffer=n.stencilBuffer,this.resolveDepthBuffer=n.resolveDepthBuffer,this.resolveStencilBuffer=n.resolveStencilBuffer,this._depthTexture=null,this.depthTexture=n.depthTexture,this.samples=n.samples,this.multiview=n.multiview}_setTextureOptions(e={}){const t={minFilter:Sn,generateMipmaps:!1,flipY:!1,internalFormat:null};e.mapping!==void 0&&(t.mapping=e.mapping),e.wrapS!==void 0&&(t.wrapS=e.wrapS),e.wrapT!==void 0&&(t.wrapT=e.wrapT),e.wrapR!==void 0&&(t.wrapR=e.wrapR),e.magFilter!==void 0&&(t.magFilter=e.magFilter),e.minFilter!==void 0&&(t.minFilter=e.minFilter),e.format!==void 0&&(t.format=e.format),e.type!==void 0&&(t.type=e.type),e.anisotropy!==void 0&&(t.anisotropy=e.anisotropy),e.colorSpace!==void 0&&(t.colorSpace=e.colorSpace),e.flipY!==void 0&&(t.flipY=e.flipY),e.generateMipmaps!==void 0&&(t.generateMipmaps=e.generateMipmaps),e.internalFormat!==void 0&&(t.internalFormat=e.internalFormat);for(let n=0;n<this.textures.length;n++)this.textures[n].setValues(t)}get texture(){return this.textures[0]}set texture(e){this.textures[0]=e}set depthTexture(e){this._depthTexture!==null&&(this._depthTexture.renderTarget=null),e!==null&&(e.renderTarget=this),this._depthTexture=e}get depthTexture(){return this._depthTexture}setSize(e,t,n=1){if(this.width!==e||this.height!==t||this.depth!==n){this.width=e,this.height=t,this.depth=n;for(let s=0,r=this.textures.length;s<r;s++)this.textures[s].image.width=e,this.textures[s].image.height=t,this.textures[s].image.depth=n,this.textures[s].isArrayTexture=this.textures[s].image.depth>1;this.dispose()}this.viewport.set(0,0,e,t),this.scissor.set(0,0,e,t)}clone(){return new this.constructor().copy(this)}copy(e){this.width=e.width,this.height=e.height,this.depth=e.depth,this.scissor.copy(e.scissor),this.scissorTest=e.scissorTest,this.viewport.copy(e.viewport),this.textures.length=0;for(let t=0,n=e.textures.length;t<n;t++){this.textures[t]=e.textures[t].clone(),this.textures[t].isRenderTargetTexture=!0,this.textures[t].renderTarget=this;const s=Object.assign({},e.textures[t].image);this.textures[t].source=new Ml(s)}return this.depthBuffer=e.depthBuffer,this.stencilBuffer=e.stencilBuffer,this.resolveDepthBuffer=e.resolveDepthBuffer,this.resolveStencilBuffer=e.resolveStencilBuffer,e.depthTexture!==null&&(this.depthTexture=e.depthTexture.clone()),this.samples=e.samples,this}dispose(){this.dispatchEvent({type:"dispose"})}}class Ci extends gf{constructor(e=1,t=1,n={}){super(e,t,n),this.isWebGLRenderTarget=!0}}class ou extends Zt{constructor(e=null,t=1,n=1,s=1){super(null),this.isDataArrayTexture=!0,this.image={data:e,width:t,height:n,depth:s},this.magFilter=xn,this.minFilter=xn,this.wrapR=bi,this.generateMipmaps=!1,this.flipY=!1,this.unpackAlignment=1,this.layerUpdates=new Set}addLayerUpdate(e){this.layerUpdates.add(e)}clearLayerUpdates(){this.layerUpdates.clear()}}class _f extends Zt{constructor(e=null,t=1,n=1,s=1){super(null),this.isData3DTexture=!0,this.image={data:e,width:t,height:n,depth:s},this.magFilter=xn,this.minFilter=xn,this.wrapR=bi,this.generateMipmaps=!1,this.flipY=!1,this.unpackAlignment=1}}class Gs{constructor(e=new I(1/0,1/0,1/0),t=new I(-1/0,-1/0,-1/0)){this.isBox3=!0,this.min=e,this.max=t}set(e,t){return this.min.copy(e),this.max.copy(t),this}setFromArray(e){this.makeEmpty();for(let t=0,n=e.length;t<n;t+=3)this.expandByPoint(mn.fromArray(e,t));return this}setFromBufferAttribute(e){this.makeEmpty();for(let t=0,n=e.count;t<n;t++)this.expandByPoint(mn.fromBufferAttribute(e,t));return this}setFromPoints(e){this.makeEmpty();for(let t=0,n=e.length;t<n;t++)this.expandByPoint(e[t]);return this}setFromCenterAndSize(e,t){const n=mn.copy(t).multiplyScalar(.5);return this.min.copy(e).sub(n),this.max.copy(e).add(n),this}setFromObject(e,t=!1){return this.makeEmpty(),this.expandByObject(e,t)}clone(){return new this.constructor().copy(this)}copy(e){return this.min.copy(e.min),this.max.copy(e.max),this}makeEmpty(){return this.min.x=this.min.y=this.min.z=1/0,this.max.x=this.max.y=this.max.z=-1/0,this}isEmpty(){return this.max.x<this.min.x||this.max.y<this.min.y||this.max.z<this.min.z}getCenter(e){return this.isEmpty()?e.set(0,0,0):e.addVectors(this.min,this.max).multiplyScalar(.5)}getSize(e){return this.isEmpty()?e.set(0,0,0):e.subVectors(this.max,this.min)}expandByPoint(e){return this.min.min(e),this.max.max(e),this}expandByVector(e){return this.min.sub(e),this.max.add(e),this}expandByScalar(e){return this.min.addScalar(-e),this.max.addScalar(e),this}expandByObject(e,t=!1){e.updateWorldMatrix(!1,!1);const n=e.geometry;if(n!==void 0){const r=n.getAttribute("position");if(t===!0&&r!==void 0&&e.isInstancedMesh!==!0)for(let a=0,o=r.count;a<o;a++)e.isMesh===!0?e.getVertexPosition(a,mn):mn.fromBufferAttribute(r,a),mn.applyMatrix4(e.matrixWorld),this.expandByPoint(mn);else e.boundingBox!==void 0?(e.boundingBox===null&&e.computeBoundingBox(),Zs.copy(e.boundingBox)):(n.boundingBox===null&&n.computeBoundingBox(),Zs.copy(n.boundingBox)),Zs.applyMatrix4(e.matrixWorld),this.union(Zs)}const s=e.children;for(let r=0,a=s.length;r<a;r++)this.expandByObject(s[r],t);return this}containsPoint(e){return e.x>=this.min.x&&e.x<=this.max.x&&e.y>=this.min.y&&e.y<=this.max.y&&e.z>=this.min.z&&e.z<=this.max.z}containsBox(e){return this.min.x<=e.min.x&&e.max.x<=this.max.x&&this.min.y<=e.min.y&&e.max.y<=this.max.y&&this.min.z<=e.min.z&&e.max.z<=this.max.z}getParameter(e,t){return t.set((e.x-this.min.x)/(this.max.x-this.min.x),(e.y-this.min.y)/(this.max.y-this.min.y),(e.z-this.min.z)/(this.max.z-this.min.z))}intersectsBox(e){return e.max.x>=this.min.x&&e.min.x<=this.max.x&&e.max.y>=this.min.y&&e.min.y<=this.max.y&&e.max.z>=this.min.z&&e.min.z<=this.max.z}intersectsSphere(e){return this.clampPoint(e.center,mn),mn.distanceToSquared(e.center)<=e.radius*e.radius}intersectsPlane(e){let t,n;return e.normal.x>0?(t=e.normal.x*this.min.x,n=e.normal.x*this.max.x):(t=e.normal.x*this.max.x,n=e.normal.x*this.min.x),e.normal.y>0?(t+=e.normal.y*this.min.y,n+=e.normal.y*this.max.y):(t+=e.normal.y*this.max.y,n+=e.normal.y*this.min.y),e.normal.z>0?(t+=e.normal.z*this.min.z,n+=e.normal.z*this.max.z):(t+=e.normal.z*this.max.z,n+=e.normal.z*this.min.z),t<=-e.constant&&n>=-e.constant}intersectsTriangle(e){if(this.isEmpty())return!1;this.getCenter(ms),Js.subVectors(this.max,ms),Oi.subVectors(e.a,ms),ki.subVectors(e.b,ms),Bi.subVectors(e.c,ms),qn.subVectors(ki,Oi),Xn.subVectors(Bi,ki),fi.subVectors(Oi,Bi);let t=[0,-qn.z,qn.y,0,-Xn.z,Xn.y,0,-fi.z,fi.y,qn.z,0,-qn.x,Xn.z,0,-Xn.x,fi.z,0,-fi.x,-qn.y,qn.x,0,-Xn.y,Xn.x,0,-fi.y,fi.x,0];return!ya(t,Oi,ki,Bi,Js)||(t=[1,0,0,0,1,0,0,0,1],!ya(t,Oi,ki,Bi,Js))?!1:(Qs.crossVectors(qn,Xn),t=[Qs.x,Qs.y,Qs.z],ya(t,Oi,ki,Bi,Js))}clampPoint(e,t){return t.copy(e).clamp(this.min,this.max)}distanceToPoint(e){return this.clampPoint(e,mn).distanceTo(e)}getBoundingSphere(e){return this.isEmpty()?e.makeEmpty():(this.getCenter(e.center),e.radius=this.getSize(mn).length()*.5),e}intersect(e){return this.min.max(e.min),this.max.min(e.max),this.isEmpty()&&this.makeEmpty(),this}union(e){return this.min.min(e.min),this.max.max(e.max),this}applyMatrix4(e){return this.isEmpty()?this:(Dn[0].set(this.min.x,this.min.y,this.min.z).applyMatrix4(e),Dn[1].set(this.min.x,this.min.y,this.max.z).applyMatrix4(e),Dn[2].set(this.min.x,this.max.y,this.min.z).applyMatrix4(e),Dn[3].set(this.min.x,this.max.y,this.max.z).applyMatrix4(e),Dn[4].set(this.max.x,this.min.y,this.min.z).applyMatrix4(e),Dn[5].set(this.max.x,this.min.y,this.max.z).applyMatrix4(e),Dn[6].set(this.max.x,this.max.y,this.min.z).applyMatrix4(e),Dn[7].set(this.max.x,this.max.y,this.max.z).applyMatrix4(e),this.setFromPoints(Dn),this)}translate(e){return this.min.add(e),this.max.add(e),this}equals(e){return e.min.equals(this.min)&&e.max.equals(this.max)}toJSON(){return{min:this.min.toArray(),max:this.max.toArray()}}fromJSON(e){return this.min.fromArray(e.min),this.max.fromArray(e.max),this}}const Dn=[new I,new I,new I,new I,new I,new I,new I,new I],mn=new I,Zs=new Gs,Oi=new I,ki=new I,Bi=new I,qn=new I,Xn=new I,fi=new I,ms=new I,Js=new I,Qs=new I,pi=new I;function ya(i,e,t,n,s){for(let r=0,a=i.length-3;r<=a;r+=3){pi.fromArray(i,r);const o=s.x*Math.abs(pi.x)+s.y*Math.abs(pi.y)+s.z*Math.abs(pi.z),c=e.dot(pi),l=t.dot(pi),h=n.dot(pi);if(Math.max(-Math.max(c,l,h),Math.min(c,l,h))>o)return!1}return!0}const vf=new Gs,gs=new I,wa=new I;class ls{constructor(e=new I,t=-1){this.isSphere=!0,this.center=e,this.radius=t}set(e,t){return this.center.copy(e),this.radius=t,this}setFromPoints(e,t){const n=this.center;t!==void 0?n.copy(t):vf.setFromPoints(e).getCenter(n);let s=0;for(let r=0,a=e.length;r<a;r++)s=Math.max(s,n.distanceToSquared(e[r]));return this.radius=Math.sqrt(s),this}copy(e){return this.center.copy(e.center),this.radius=e.radius,this}isEmpty(){return this.radius<0}makeEmpty(){return this.center.set(0,0,0),this.radius=-1,this}containsPoint(e){return e.distanceToSquared(this.center)<=this.radius*this.radius}distanceToPoint(e){return e.distanceTo(this.center)-this.radius}intersectsSphere(e){const t=this.radius+e.radius;return e.center.distanceToSquared(this.center)<=t*t}intersectsBox(e){return e.intersectsSphere(this)}intersectsPlane(e){return Math.abs(e.distanceToPoint(this.center))<=this.radius}clampPoint(e,t){const n=this.center.distanceToSquared(e);return t.copy(e),n>this.radius*this.radius&&(t.sub(this.center).normalize(),t.multiplyScalar(this.radius).add(this.center)),t}getBoundingBox(e){return this.isEmpty()?(e.makeEmpty(),e):(e.set(this.center,this.center),e.expandByScalar(this.radius),e)}applyMatrix4(e){return this.center.applyMatrix4(e),this.radius=this.radius*e.getMaxScaleOnAxis(),this}translate(e){return this.center.add(e),this}expandByPoint(e){if(this.isEmpty())return this.center.copy(e),this.radius=0,this;gs.subVectors(e,this.center);const t=gs.lengthSq();if(t>this.radius*this.radius){const n=Math.sqrt(t),s=(n-this.radius)*.5;this.center.addScaledVector(gs,s/n),this.radius+=s}return this}union(e){return e.isEmpty()?this:this.isEmpty()?(this.copy(e),this):(this.center.equals(e.center)===!0?this.radius=Math.max(this.radius,e.radius):(wa.subVectors(e.center,this.center).setLength(e.radius),this.expandByPoint(gs.copy(e.center).add(wa)),this.expandByPoint(gs.copy(e.center).sub(wa))),this)}equals(e){return e.center.equals(this.center)&&e.radius===this.radius}clone(){return new this.constructor().copy(this)}toJSON(){return{radius:this.radius,center:this.center.toArray()}}fromJSON(e){return this.radius=e.radius,this.center.fromArray(e.center),this}}const Ln=new I,ba=new I,er=new I,jn=new I,Ma=new I,tr=new I,Sa=new I;class $s{constructor(e=new I,t=new I(0,0,-1)){this.origin=e,this.direction=t}set(e,t){return this.origin.copy(e),this.direction.copy(t),this}copy(e){return this.origin.copy(e.origin),this.direction.copy(e.direction),this}at(e,t){return t.copy(this.origin).addScaledVector(this.direction,e)}lookAt(e){return this.direction.copy(e).sub(this.origin).normalize(),this}recast(e){return this.origin.copy(this.at(e,Ln)),this}closestPointToPoint(e,t){t.subVectors(e,this.origin);const n=t.dot(this.direction);return n<0?t.copy(this.origin):t.copy(this.origin).addScaledVector(this.direction,n)}distanceToPoint(e){return Math.sqrt(this.distanceSqToPoint(e))}distanceSqToPoint(e){const t=Ln.subVectors(e,this.origin).dot(this.direction);return t<0?this.origin.distanceToSquared(e):(Ln.copy(this.origin).addScaledVector(this.direction,t),Ln.distanceToSquared(e))}distanceSqToSegment(e,t,n,s){ba.copy(e).add(t).multiplyScalar(.5),er.copy(t).sub(e).normalize(),jn.copy(this.origin).sub(ba);const r=e.distanceTo(t)*.5,a=-this.direction.dot(er),o=jn.dot(this.direction),c=-jn.dot(er),l=jn.lengthSq(),h=Math.abs(1-a*a);let u,d,p,_;if(h>0)if(u=a*c-o,d=a*o-c,_=r*h,u>=0)if(d>=-_)if(d<=_){const v=1/h;u*=v,d*=v,p=u*(u+a*d+2*o)+d*(a*u+d+2*c)+l}else d=r,u=Math.max(0,-(a*d+o)),p=-u*u+d*(d+2*c)+l;else d=-r,u=Math.max(0,-(a*d+o)),p=-u*u+d*(d+2*c)+l;else d<=-_?(u=Math.max(0,-(-a*r+o)),d=u>0?-r:Math.min(Math.max(-r,-c),r),p=-u*u+d*(d+2*c)+l):d<=_?(u=0,d=Math.min(Math.max(-r,-c),r),p=d*(d+2*c)+l):(u=Math.max(0,-(a*r+o)),d=u>0?r:Math.min(Math.max(-r,-c),r),p=-u*u+d*(d+2*c)+l);else d=a>0?-r:r,u=Math.max(0,-(a*d+o)),p=-u*u+d*(d+2*c)+l;return n&&n.copy(this.origin).addScaledVector(this.direction,u),s&&s.copy(ba).addScaledVector(er,d),p}intersectSphere(e,t){Ln.subVectors(e.center,this.origin);const n=Ln.dot(this.direction),s=Ln.dot(Ln)-n*n,r=e.radius*e.radius;if(s>r)return null;const a=Math.sqrt(r-s),o=n-a,c=n+a;return c<0?null:o<0?this.at(c,t):this.at(o,t)}intersectsSphere(e){return e.radius<0?!1:this.distanceSqToPoint(e.center)<=e.radius*e.radius}distanceToPlane(e){const t=e.normal.dot(this.direction);if(t===0)return e.distanceToPoint(this.origin)===0?0:null;const n=-(this.origin.dot(e.normal)+e.constant)/t;return n>=0?n:null}intersectPlane(e,t){const n=this.distanceToPlane(e);return n===null?null:this.at(n,t)}intersectsPlane(e){const t=e.distanceToPoint(this.origin);return t===0||e.normal.dot(this.direction)*t<0}intersectBox(e,t){let n,s,r,a,o,c;const l=1/this.direction.x,h=1/this.direction.y,u=1/this.direction.z,d=this.origin;return l>=0?(n=(e.min.x-d.x)*l,s=(e.max.x-d.x)*l):(n=(e.max.x-d.x)*l,s=(e.min.x-d.x)*l),h>=0?(r=(e.min.y-d.y)*h,a=(e.max.y-d.y)*h):(r=(e.max.y-d.y)*h,a=(e.min.y-d.y)*h),n>a||r>s||((r>n||isNaN(n))&&(n=r),(a<s||isNaN(s))&&(s=a),u>=0?(o=(e.min.z-d.z)*u,c=(e.max.z-d.z)*u):(o=(e.max.z-d.z)*u,c=(e.min.z-d.z)*u),n>c||o>s)||((o>n||n!==n)&&(n=o),(c<s||s!==s)&&(s=c),s<0)?null:this.at(n>=0?n:s,t)}intersectsBox(e){return this.intersectBox(e,Ln)!==null}intersectTriangle(e,t,n,s,r){Ma.subVectors(t,e),tr.subVectors(n,e),Sa.crossVectors(Ma,tr);let a=this.direction.dot(Sa),o;if(a>0){if(s)return null;o=1}else if(a<0)o=-1,a=-a;else return null;jn.subVectors(this.origin,e);const c=o*this.direction.dot(tr.crossVectors(jn,tr));if(c<0)return null;const l=o*this.direction.dot(Ma.cross(jn));if(l<0||c+l>a)return null;const h=-o*jn.dot(Sa);return h<0?null:this.at(h/a,r)}applyMatrix4(e){return this.origin.applyMatrix4(e),this.direction.transformDirection(e),this}equals(e){return e.origin.equals(this.origin)&&e.direction.equals(this.direction)}clone(){return new this.constructor().copy(this)}}class pt{constructor(e,t,n,s,r,a,o,c,l,h,u,d,p,_,v,m){pt.prototype.isMatrix4=!0,this.elements=[1,0,0,0,0,1,0,0,0,0,1,0,0,0,0,1],e!==void 0&&this.set(e,t,n,s,r,a,o,c,l,h,u,d,p,_,v,m)}set(e,t,n,s,r,a,o,c,l,h,u,d,p,_,v,m){const f=this.elements;return f[0]=e,f[4]=t,f[8]=n,f[12]=s,f[1]=r,f[5]=a,f[9]=o,f[13]=c,f[2]=l,f[6]=h,f[10]=u,f[14]=d,f[3]=p,f[7]=_,f[11]=v,f[15]=m,this}identity(){return this.set(1,0,0,0,0,1,0,0,0,0,1,0,0,0,0,1),this}clone(){return new pt().fromArray(this.elements)}copy(e){const t=this.elements,n=e.elements;return t[0]=n[0],t[1]=n[1],t[2]=n[2],t[3]=n[3],t[4]=n[4],t[5]=n[5],t[6]=n[6],t[7]=n[7],t[8]=n[8],t[9]=n[9],t[10]=n[10],t[11]=n[11],t[12]=n[12],t[13]=n[13],t[14]=n[14],t[15]=n[15],this}copyPosition(e){const t=this.elements,n=e.elements;return t[12]=n[12],t[13]=n[13],t[14]=n[14],this}setFromMatrix3(e){const t=e.elements;return this.set(t[0],t[3],t[6],0,t[1],t[4],t[7],0,t[2],t[5],t[8],0,0,0,0,1),this}extractBasis(e,t,n){return e.setFromMatrixColumn(this,0),t.setFromMatrixColumn(this,1),n.setFromMatrixColumn(this,2),this}makeBasis(e,t,n){return this.set(e.x,t.x,n.x,0,e.y,t.y,n.y,0,e.z,t.z,n.z,0,0,0,0,1),this}extractRotation(e){const t=this.elements,n=e.elements,s=1/zi.setFromMatrixColumn(e,0).length(),r=1/zi.setFromMatrixColumn(e,1).length(),a=1/zi.setFromMatrixColumn(e,2).length();return t[0]=n[0]*s,t[1]=n[1]*s,t[2]=n[2]*s,t[3]=0,t[4]=n[4]*r,t[5]=n[5]*r,t[6]=n[6]*r,t[7]=0,t[8]=n[8]*a,t[9]=n[9]*a,t[10]=n[10]*a,t[11]=0,t[12]=0,t[13]=0,t[14]=0,t[15]=1,this}makeRotationFromEuler(e){const t=this.elements,n=e.x,s=e.y,r=e.z,a=Math.cos(n),o=Math.sin(n),c=Math.cos(s),l=Math.sin(s),h=Math.cos(r),u=Math.sin(r);if(e.order==="XYZ"){const d=a*h,p=a*u,_=o*h,v=o*u;t[0]=c*h,t[4]=-c*u,t[8]=l,t[1]=p+_*l,t[5]=d-v*l,t[9]=-o*c,t[2]=v-d*l,t[6]=_+p*l,t[10]=a*c}else if(e.order==="YXZ"){const d=c*h,p=c*u,_=l*h,v=l*u;t[0]=d+v*o,t[4]=_*o-p,t[8]=a*l,t[1]=a*u,t[5]=a*h,t[9]=-o,t[2]=p*o-_,t[6]=v+d*o,t[10]=a*c}else if(e.order==="ZXY"){const d=c*h,p=c*u,_=l*h,v=l*u;t[0]=d-v*o,t[4]=-a*u,t[8]=_+p*o,t[1]=p+_*o,t[5]=a*h,t[9]=v-d*o,t[2]=-a*l,t[6]=o,t[10]=a*c}else if(e.order==="ZYX"){const d=a*h,p=a*u,_=o*h,v=o*u;t[0]=c*h,t[4]=_*l-p,t[8]=d*l+v,t[1]=c*u,t[5]=v*l+d,t[9]=p*l-_,t[2]=-l,t[6]=o*c,t[10]=a*c}else if(e.order==="YZX"){const d=a*c,p=a*l,_=o*c,v=o*l;t[0]=c*h,t[4]=v-d*u,t[8]=_*u+p,t[1]=u,t[5]=a*h,t[9]=-o*h,t[2]=-l*h,t[6]=p*u+_,t[10]=d-v*u}else if(e.order==="XZY"){const d=a*c,p=a*l,_=o*c,v=o*l;t[0]=c*h,t[4]=-u,t[8]=l*h,t[1]=d*u+v,t[5]=a*h,t[9]=p*u-_,t[2]=_*u-p,t[6]=o*h,t[10]=v*u+d}return t[3]=0,t[7]=0,t[11]=0,t[12]=0,t[13]=0,t[14]=0,t[15]=1,this}makeRotationFromQuaternion(e){return this.compose(xf,e,yf)}lookAt(e,t,n){const s=this.elements;return tn.subVectors(e,t),tn.lengthSq()===0&&(tn.z=1),tn.normalize(),Yn.crossVectors(n,tn),Yn.lengthSq()===0&&(Math.abs(n.z)===1?tn.x+=1e-4:tn.z+=1e-4,tn.normalize(),Yn.crossVectors(n,tn)),Yn.normalize(),nr.crossVectors(tn,Yn),s[0]=Yn.x,s[4]=nr.x,s[8]=tn.x,s[1]=Yn.y,s[5]=nr.y,s[9]=tn.y,s[2]=Yn.z,s[6]=nr.z,s[10]=tn.z,this}multiply(e){return this.multiplyMatrices(this,e)}premultiply(e){return this.multiplyMatrices(e,this)}multiplyMatrices(e,t){const n=e.elements,s=t.elements,r=this.elements,a=n[0],o=n[4],c=n[8],l=n[12],h=n[1],u=n[5],d=n[9],p=n[13],_=n[2],v=n[6],m=n[10],f=n[14],S=n[3],E=n[7],M=n[11],P=n[15],C=s[0],D=s[4],O=s[8],b=s[12],y=s[1],R=s[5],N=s[9],U=s[13],k=s[2],B=s[6],q=s[10],J=s[14],X=s[3],le=s[7],fe=s[11],W=s[15];return r[0]=a*C+o*y+c*k+l*X,r[4]=a*D+o*R+c*B+l*le,r[8]=a*O+o*N+c*q+l*fe,r[12]=a*b+o*U+c*J+l*W,r[1]=h*C+u*y+d*k+p*X,r[5]=h*D+u*R+d*B+p*le,r[9]=h*O+u*N+d*q+p*fe,r[13]=h*b+u*U+d*J+p*W,r[2]=_*C+v*y+m*k+f*X,r[6]=_*D+v*R+m*B+f*le,r[10]=_*O+v*N+m*q+f*fe,r[14]=_*b+v*U+m*J+f*W,r[3]=S*C+E*y+M*k+P*X,r[7]=S*D+E*R+M*B+P*le,r[11]=S*O+E*N+M*q+P*fe,r[15]=S*b+E*U+M*J+P*W,this}multiplyScalar(e){const t=this.elements;return t[0]*=e,t[4]*=e,t[8]*=e,t[12]*=e,t[1]*=e,t[5]*=e,t[9]*=e,t[13]*=e,t[2]*=e,t[6]*=e,t[10]*=e,t[14]*=e,t[3]*=e,t[7]*=e,t[11]*=e,t[15]*=e,this}determinant(){const e=this.elements,t=e[0],n=e[4],s=e[8],r=e[12],a=e[1],o=e[5],c=e[9],l=e[13],h=e[2],u=e[6],d=e[10],p=e[14],_=e[3],v=e[7],m=e[11],f=e[15];return _*(+r*c*u-s*l*u-r*o*d+n*l*d+s*o*p-n*c*p)+v*(+t*c*p-t*l*d+r*a*d-s*a*p+s*l*h-r*c*h)+m*(+t*l*u-t*o*p-r*a*u+n*a*p+r*o*h-n*l*h)+f*(-s*o*h-t*c*u+t*o*d+s*a*u-n*a*d+n*c*h)}transpose(){const e=this.elements;let t;return t=e[1],e[1]=e[4],e[4]=t,t=e[2],e[2]=e[8],e[8]=t,t=e[6],e[6]=e[9],e[9]=t,t=e[3],e[3]=e[12],e[12]=t,t=e[7],e[7]=e[13],e[13]=t,t=e[11],e[11]=e[14],e[14]=t,this}setPosition(e,t,n){const s=this.elements;return e.isVector3?(s[12]=e.x,s[13]=e.y,s[14]=e.z):(s[12]=e,s[13]=t,s[14]=n),this}invert(){const e=this.elements,t=e[0],n=e[1],s=e[2],r=e[3],a=e[4],o=e[5],c=e[6],l=e[7],h=e[8],u=e[9],d=e[10],p=e[11],_=e[12],v=e[13],m=e[14],f=e[15],S=u*m*l-v*d*l+v*c*p-o*m*p-u*c*f+o*d*f,E=_*d*l-h*m*l-_*c*p+a*m*p+h*c*f-a*d*f,M=h*v*l-_*u*l+_*o*p-a*v*p-h*o*f+a*u*f,P=_*u*c-h*v*c-_*o*d+a*v*d+h*o*m-a*u*m,C=t*S+n*E+s*M+r*P;if(C===0)return this.set(0,0,0,0,0,0,0,0,0,0,0,0,0,0,0,0);const D=1/C;return e[0]=S*D,e[1]=(v*d*r-u*m*r-v*s*p+n*m*p+u*s*f-n*d*f)*D,e[2]=(o*m*r-v*c*r+v*s*l-n*m*l-o*s*f+n*c*f)*D,e[3]=(u*c*r-o*d*r-u*s*l+n*d*l+o*s*p-n*c*p)*D,e[4]=E*D,e[5]=(h*m*r-_*d*r+_*s*p-t*m*p-h*s*f+t*d*f)*D,e[6]=(_*c*r-a*m*r-_*s*l+t*m*l+a*s*f-t*c*f)*D,e[7]=(a*d*r-h*c*r+h*s*l-t*d*l-a*s*p+t*c*p)*D,e[8]=M*D,e[9]=(_*u*r-h*v*r-_*n*p+t*v*p+h*n*f-t*u*f)*D,e[10]=(a*v*r-_*o*r+_*n*l-t*v*l-a*n*f+t*o*f)*D,e[11]=(h*o*r-a*u*r-h*n*l+t*u*l+a*n*p-t*o*p)*D,e[12]=P*D,e[13]=(h*v*s-_*u*s+_*n*d-t*v*d-h*n*m+t*u*m)*D,e[14]=(_*o*s-a*v*s-_*n*c+t*v*c+a*n*m-t*o*m)*D,e[15]=(a*u*s-h*o*s+h*n*c-t*u*c-a*n*d+t*o*d)*D,this}scale(e){const t=this.elements,n=e.x,s=e.y,r=e.z;return t[0]*=n,t[4]*=s,t[8]*=r,t[1]*=n,t[5]*=s,t[9]*=r,t[2]*=n,t[6]*=s,t[10]*=r,t[3]*=n,t[7]*=s,t[11]*=r,this}getMaxScaleOnAxis(){const e=this.elements,t=e[0]*e[0]+e[1]*e[1]+e[2]*e[2],n=e[4]*e[4]+e[5]*e[5]+e[6]*e[6],s=e[8]*e[8]+e[9]*e[9]+e[10]*e[10];return Math.sqrt(Math.max(t,n,s))}makeTranslation(e,t,n){return e.isVector3?this.set(1,0,0,e.x,0,1,0,e.y,0,0,1,e.z,0,0,0,1):this.set(1,0,0,e,0,1,0,t,0,0,1,n,0,0,0,1),this}makeRotationX(e){const t=Math.cos(e),n=Math.sin(e);return this.set(1,0,0,0,0,t,-n,0,0,n,t,0,0,0,0,1),this}makeRotationY(e){const t=Math.cos(e),n=Math.sin(e);return this.set(t,0,n,0,0,1,0,0,-n,0,t,0,0,0,0,1),this}makeRotationZ(e){const t=Math.cos(e),n=Math.sin(e);return this.set(t,-n,0,0,n,t,0,0,0,0,1,0,0,0,0,1),this}makeRotationAxis(e,t){const n=Math.cos(t),s=Math.sin(t),r=1-n,a=e.x,o=e.y,c=e.z,l=r*a,h=r*o;return this.set(l*a+n,l*o-s*c,l*c+s*o,0,l*o+s*c,h*o+n,h*c-s*a,0,l*c-s*o,h*c+s*a,r*c*c+n,0,0,0,0,1),this}makeScale(e,t,n){return this.set(e,0,0,0,0,t,0,0,0,0,n,0,0,0,0,1),this}makeShear(e,t,n,s,r,a){return this.set(1,n,r,0,e,1,a,0,t,s,1,0,0,0,0,1),this}compose(e,t,n){const s=this.elements,r=t._x,a=t._y,o=t._z,c=t._w,l=r+r,h=a+a,u=o+o,d=r*l,p=r*h,_=r*u,v=a*h,m=a*u,f=o*u,S=c*l,E=c*h,M=c*u,P=n.x,C=n.y,D=n.z;return s[0]=(1-(v+f))*P,s[1]=(p+M)*P,s[2]=(_-E)*P,s[3]=0,s[4]=(p-M)*C,s[5]=(1-(d+f))*C,s[6]=(m+S)*C,s[7]=0,s[8]=(_+E)*D,s[9]=(m-S)*D,s[10]=(1-(d+v))*D,s[11]=0,s[12]=e.x,s[13]=e.y,s[14]=e.z,s[15]=1,this}decompose(e,t,n){const s=this.elements;let r=zi.set(s[0],s[1],s[2]).length();const a=zi.set(s[4],s[5],s[6]).length(),o=zi.set(s[8],s[9],s[10]).length();this.determinant()<0&&(r=-r),e.x=s[12],e.y=s[13],e.z=s[14],gn.copy(this);const l=1/r,h=1/a,u=1/o;return gn.elements[0]*=l,gn.elements[1]*=l,gn.elements[2]*=l,gn.elements[4]*=h,gn.elements[5]*=h,gn.elements[6]*=h,gn.elements[8]*=u,gn.elements[9]*=u,gn.elements[10]*=u,t.setFromRotationMatrix(gn),n.x=r,n.y=a,n.z=o,this}makePerspective(e,t,n,s,r,a,o=En,c=!1){const l=this.elements,h=2*r/(t-e),u=2*r/(n-s),d=(t+e)/(t-e),p=(n+s)/(n-s);let _,v;if(c)_=r/(a-r),v=a*r/(a-r);else if(o===En)_=-(a+r)/(a-r),v=-2*a*r/(a-r);else if(o===zr)_=-a/(a-r),v=-a*r/(a-r);else throw new Error("THREE.Matrix4.makePerspective(): Invalid coordinate system: "+o);return l[0]=h,l[4]=0,l[8]=d,l[12]=0,l[1]=0,l[5]=u,l[9]=p,l[13]=0,l[2]=0,l[6]=0,l[10]=_,l[14]=v,l[3]=0,l[7]=0,l[11]=-1,l[15]=0,this}makeOrthographic(e,t,n,s,r,a,o=En,c=!1){const l=this.elements,h=2/(t-e),u=2/(n-s),d=-(t+e)/(t-e),p=-(n+s)/(n-s);let _,v;if(c)_=1/(a-r),v=a/(a-r);else if(o===En)_=-2/(a-r),v=-(a+r)/(a-r);else if(o===zr)_=-1/(a-r),v=-r/(a-r);else throw new Error("THREE.Matrix4.makeOrthographic(): Invalid coordinate system: "+o);return l[0]=h,l[4]=0,l[8]=0,l[12]=d,l[1]=0,l[5]=u,l[9]=0,l[13]=p,l[2]=0,l[6]=0,l[10]=_,l[14]=v,l[3]=0,l[7]=0,l[11]=0,l[15]=1,this}equals(e){const t=this.elements,n=e.elements;for(let s=0;s<16;s++)if(t[s]!==n[s])return!1;return!0}fromArray(e,t=0){for(let n=0;n<16;n++)this.elements[n]=e[n+t];return this}toArray(e=[],t=0){const n=this.elements;return e[t]=n[0],e[t+1]=n[1],e[t+2]=n[2],e[t+3]=n[3],e[t+4]=n[4],e[t+5]=n[5],e[t+6]=n[6],e[t+7]=n[7],e[t+8]=n[8],e[t+9]=n[9],e[t+10]=n[10],e[t+11]=n[11],e[t+12]=n[12],e[t+13]=n[13],e[t+14]=n[14],e[t+15]=n[15],e}}const zi=new I,gn=new pt,xf=new I(0,0,0),yf=new I(1,1,1),Yn=new I,nr=new I,tn=new I,hc=new pt,uc=new Ri;class Cn{constructor(e=0,t=0,n=0,s=Cn.DEFAULT_ORDER){this.isEuler=!0,this._x=e,this._y=t,this._z=n,this._order=s}get x(){return this._x}set x(e){this._x=e,this._onChangeCallback()}get y(){return this._y}set y(e){this._y=e,this._onChangeCallback()}get z(){return this._z}set z(e){this._z=e,this._onChangeCallback()}get order(){return this._order}set order(e){this._order=e,this._onChangeCallback()}set(e,t,n,s=this._order){return this._x=e,this._y=t,this._z=n,this._order=s,this._onChangeCallback(),this}clone(){return new this.constructor(this._x,this._y,this._z,this._order)}copy(e){return this._x=e._x,this._y=e._y,this._z=e._z,this._order=e._order,this._onChangeCallback(),this}setFromRotationMatrix(e,t=this._order,n=!0){const s=e.elements,r=s[0],a=s[4],o=s[8],c=s[1],l=s[5],h=s[9],u=s[2],d=s[6],p=s[10];switch(t){case"XYZ":this._y=Math.asin(Qe(o,-1,1)),Math.abs(o)<.9999999?(this._x=Math.atan2(-h,p),this._z=Math.atan2(-a,r)):(this._x=Math.atan2(d,l),this._z=0);break;case"YXZ":this._x=Math.asin(-Qe(h,-1,1)),Math.abs(h)<.9999999?(this._y=Math.atan2(o,p),this._z=Math.atan2(c,l)):(this._y=Math.atan2(-u,r),this._z=0);break;case"ZXY":this._x=Math.asin(Qe(d,-1,1)),Math.abs(d)<.9999999?(this._y=Math.atan2(-u,p),this._z=Math.atan2(-a,l)):(this._y=0,this._z=Math.atan2(c,r));break;case"ZYX":this._y=Math.asin(-Qe(u,-1,1)),Math.abs(u)<.9999999?(this._x=Math.atan2(d,p),this._z=Math.atan2(c,r)):(this._x=0,this._z=Math.atan2(-a,l));break;case"YZX":this._z=Math.asin(Qe(c,-1,1)),Math.abs(c)<.9999999?(this._x=Math.atan2(-h,l),this._y=Math.atan2(-u,r)):(this._x=0,this._y=Math.atan2(o,p));break;case"XZY":this._z=Math.asin(-Qe(a,-1,1)),Math.abs(a)<.9999999?(this._x=Math.atan2(d,l),this._y=Math.atan2(o,r)):(this._x=Math.atan2(-h,p),this._y=0);break;default:console.warn("THREE.Euler: .setFromRotationMatrix() encountered an unknown order: "+t)}return this._order=t,n===!0&&this._onChangeCallback(),this}setFromQuaternion(e,t,n){return hc.makeRotationFromQuaternion(e),this.setFromRotationMatrix(hc,t,n)}setFromVector3(e,t=this._order){return this.set(e.x,e.y,e.z,t)}reorder(e){return uc.setFromEuler(this),this.setFromQuaternion(uc,e)}equals(e){return e._x===this._x&&e._y===this._y&&e._z===this._z&&e._order===this._order}fromArray(e){return this._x=e[0],this._y=e[1],this._z=e[2],e[3]!==void 0&&(this._order=e[3]),this._onChangeCallback(),this}toArray(e=[],t=0){return e[t]=this._x,e[t+1]=this._y,e[t+2]=this._z,e[t+3]=this._order,e}_onChange(e){return this._onChangeCallback=e,this}_onChangeCallback(){}*[Symbol.iterator](){yield this._x,yield this._y,yield this._z,yield this._order}}Cn.DEFAULT_ORDER="XYZ";class Sl{constructor(){this.mask=1}set(e){this.mask=(1<<e|0)>>>0}enable(e){this.mask|=1<<e|0}enableAll(){this.mask=-1}toggle(e){this.mask^=1<<e|0}disable(e){this.mask&=~(1<<e|0)}disableAll(){this.mask=0}test(e){return(this.mask&e.mask)!==0}isEnabled(e){return(this.mask&(1<<e|0))!==0}}let wf=0;const dc=new I,Hi=new Ri,In=new pt,ir=new I,_s=new I,bf=new I,Mf=new Ri,fc=new I(1,0,0),pc=new I(0,1,0),mc=new I(0,0,1),gc={type:"added"},Sf={type:"removed"},Vi={type:"childadded",child:null},Ea={type:"childremoved",child:null};class Lt extends Pi{constructor(){super(),this.isObject3D=!0,Object.defineProperty(this,"id",{value:wf++}),this.uuid=Vs(),this.name="",this.type="Object3D",this.parent=null,this.children=[],this.up=Lt.DEFAULT_UP.clone();const e=new I,t=new Cn,n=new Ri,s=new I(1,1,1);function r(){n.setFromEuler(t,!1)}function a(){t.setFromQuaternion(n,void 0,!1)}t._onChange(r),n._onChange(a),Object.defineProperties(this,{position:{configurable:!0,enumerable:!0,value:e},rotation:{configurable:!0,enumerable:!0,value:t},quaternion:{configurable:!0,enumerable:!0,value:n},scale:{configurable:!0,enumerable:!0,value:s},modelViewMatrix:{value:new pt},normalMatrix:{value:new je}}),this.matrix=new pt,this.matrixWorld=new pt,this.matrixAutoUpdate=Lt.DEFAULT_MATRIX_AUTO_UPDATE,this.matrixWorldAutoUpdate=Lt.DEFAULT_MATRIX_WORLD_AUTO_UPDATE,this.matrixWorldNeedsUpdate=!1,this.layers=new Sl,this.visible=!0,this.castShadow=!1,this.receiveShadow=!1,this.frustumCulled=!0,this.renderOrder=0,this.animations=[],this.customDepthMaterial=void 0,this.customDistanceMaterial=void 0,this.userData={}}onBeforeShadow(){}onAfterShadow(){}onBeforeRender(){}onAfterRender(){}applyMatrix4(e){this.matrixAutoUpdate&&this.updateMatrix(),this.matrix.premultiply(e),this.matrix.decompose(this.position,this.quaternion,this.scale)}applyQuaternion(e){return this.quaternion.premultiply(e),this}setRotationFromAxisAngle(e,t){this.quaternion.setFromAxisAngle(e,t)}setRotationFromEuler(e){this.quaternion.setFromEuler(e,!0)}setRotationFromMatrix(e){this.quaternion.setFromRotationMatrix(e)}setRotationFromQuaternion(e){this.quaternion.copy(e)}rotateOnAxis(e,t){return Hi.setFromAxisAngle(e,t),this.quaternion.multiply(Hi),this}rotateOnWorldAxis(e,t){return Hi.setFromAxisAngle(e,t),this.quaternion.premultiply(Hi),this}rotateX(e){return this.rotateOnAxis(fc,e)}rotateY(e){return this.rotateOnAxis(pc,e)}rotateZ(e){return this.rotateOnAxis(mc,e)}translateOnAxis(e,t){return dc.copy(e).applyQuaternion(this.quaternion),this.position.add(dc.multiplyScalar(t)),this}translateX(e){return this.translateOnAxis(fc,e)}translateY(e){return this.translateOnAxis(pc,e)}translateZ(e){return this.translateOnAxis(mc,e)}localToWorld(e){return this.updateWorldMatrix(!0,!1),e.applyMatrix4(this.matrixWorld)}worldToLocal(e){return this.updateWorldMatrix(!0,!1),e.applyMatrix4(In.copy(this.matrixWorld).invert())}lookAt(e,t,n){e.isVector3?ir.copy(e):ir.set(e,t,n);const s=this.parent;this.updateWorldMatrix(!0,!1),_s.setFromMatrixPosition(this.matrixWorld),this.isCamera||this.isLight?In.lookAt(_s,ir,this.up):In.lookAt(ir,_s,this.up),this.quaternion.setFromRotationMatrix(In),s&&(In.extractRotation(s.matrixWorld),Hi.setFromRotationMatrix(In),this.quaternion.premultiply(Hi.invert()))}add(e){if(arguments.length>1){for(let t=0;t<arguments.length;t++)this.add(arguments[t]);return this}return e===this?(console.error("THREE.Object3D.add: object can't be added as a child of itself.",e),this):(e&&e.isObject3D?(e.removeFromParent(),e.parent=this,this.children.push(e),e.dispatchEvent(gc),Vi.child=e,this.dispatchEvent(Vi),Vi.child=null):console.error("THREE.Object3D.add: object not an instance of THREE.Object3D.",e),this)}remove(e){if(arguments.length>1){for(let n=0;n<arguments.length;n++)this.remove(arguments[n]);return this}const t=this.children.indexOf(e);return t!==-1&&(e.parent=null,this.children.splice(t,1),e.dispatchEvent(Sf),Ea.child=e,this.dispatchEvent(Ea),Ea.child=null),this}removeFromParent(){const e=this.parent;return e!==null&&e.remove(this),this}clear(){return this.remove(...this.children)}attach(e){return this.updateWorldMatrix(!0,!1),In.copy(this.matrixWorld).invert(),e.parent!==null&&(e.parent.updateWorldMatrix(!0,!1),In.multiply(e.parent.matrixWorld)),e.applyMatrix4(In),e.removeFromParent(),e.parent=this,this.children.push(e),e.updateWorldMatrix(!1,!0),e.dispatchEvent(gc),Vi.child=e,this.dispatchEvent(Vi),Vi.child=null,this}getObjectById(e){return this.getObjectByProperty("id",e)}getObjectByName(e){return this.getObjectByProperty("name",e)}getObjectByProperty(e,t){if(this[e]===t)return this;for(let n=0,s=this.children.length;n<s;n++){const a=this.children[n].getObjectByProperty(e,t);if(a!==void 0)return a}}getObjectsByProperty(e,t,n=[]){this[e]===t&&n.push(this);const s=this.children;for(let r=0,a=s.length;r<a;r++)s[r].getObjectsByProperty(e,t,n);return n}getWorldPosition(e){return this.updateWorldMatrix(!0,!1),e.setFromMatrixPosition(this.matrixWorld)}getWorldQuaternion(e){return this.updateWorldMatrix(!0,!1),this.matrixWorld.decompose(_s,e,bf),e}getWorldScale(e){return this.updateWorldMatrix(!0,!1),this.matrixWorld.decompose(_s,Mf,e),e}getWorldDirection(e){this.updateWorldMatrix(!0,!1);const t=this.matrixWorld.elements;return e.set(t[8],t[9],t[10]).normalize()}raycast(){}traverse(e){e(this);const t=this.children;for(let n=0,s=t.length;n<s;n++)t[n].traverse(e)}traverseVisible(e){if(this.visible===!1)return;e(this);const t=this.children;for(let n=0,s=t.length;n<s;n++)t[n].traverseVisible(e)}traverseAncestors(e){const t=this.parent;t!==null&&(e(t),t.traverseAncestors(e))}updateMatrix(){this.matrix.compose(this.position,this.quaternion,this.scale),this.matrixWorldNeedsUpdate=!0}updateMatrixWorld(e){this.matrixAutoUpdate&&this.updateMatrix(),(this.matrixWorldNeedsUpdate||e)&&(this.matrixWorldAutoUpdate===!0&&(this.parent===null?this.matrixWorld.copy(this.matrix):this.matrixWorld.multiplyMatrices(this.parent.matrixWorld,this.matrix)),this.matrixWorldNeedsUpdate=!1,e=!0);const t=this.children;for(let n=0,s=t.length;n<s;n++)t[n].updateMatrixWorld(e)}updateWorldMatrix(e,t){const n=this.parent;if(e===!0&&n!==null&&n.updateWorldMatrix(!0,!1),this.matrixAutoUpdate&&this.updateMatrix(),this.matrixWorldAutoUpdate===!0&&(this.parent===null?this.matrixWorld.copy(this.matrix):this.matrixWorld.multiplyMatrices(this.parent.matrixWorld,this.matrix)),t===!0){const s=this.children;for(let r=0,a=s.length;r<a;r++)s[r].updateWorldMatrix(!1,!0)}}toJSON(e){const t=e===void 0||typeof e=="string",n={};t&&(e={geometries:{},materials:{},textures:{},images:{},shapes:{},skeletons:{},animations:{},nodes:{}},n.metadata={version:4.7,type:"Object",generator:"Object3D.toJSON"});const s={};s.uuid=this.uuid,s.type=this.type,this.name!==""&&(s.name=this.name),this.castShadow===!0&&(s.castShadow=!0),this.receiveShadow===!0&&(s.receiveShadow=!0),this.visible===!1&&(s.visible=!1),this.frustumCulled===!1&&(s.frustumCulled=!1),this.renderOrder!==0&&(s.renderOrder=this.renderOrder),Object.keys(this.userData).length>0&&(s.userData=this.userData),s.layers=this.layers.mask,s.matrix=this.matrix.toArray(),s.up=this.up.toArray(),this.matrixAutoUpdate===!1&&(s.matrixAutoUpdate=!1),this.isInstancedMesh&&(s.type="InstancedMesh",s.count=this.count,s.instanceMatrix=this.instanceMatrix.toJSON(),this.instanceColor!==null&&(s.instanceColor=this.instanceColor.toJSON())),this.isBatchedMesh&&(s.type="BatchedMesh",s.perObjectFrustumCulled=this.perObjectFrustumCulled,s.sortObjects=this.sortObjects,s.drawRanges=this._drawRanges,s.reservedRanges=this._reservedRanges,s.geometryInfo=this._geometryInfo.map(o=>({...o,boundingBox:o.boundingBox?o.boundingBox.toJSON():void 0,boundingSphere:o.boundingSphere?o.boundingSphere.toJSON():void 0})),s.instanceInfo=this._instanceInfo.map(o=>({...o})),s.availableInstanceIds=this._availableInstanceIds.slice(),s.availableGeometryIds=this._availableGeometryIds.slice(),s.nextIndexStart=this._nextIndexStart,s.nextVertexStart=this._nextVertexStart,s.geometryCount=this._geometryCount,s.maxInstanceCount=this._maxInstanceCount,s.maxVertexCount=this._maxVertexCount,s.maxIndexCount=this._maxIndexCount,s.geometryInitialized=this._geometryInitialized,s.matricesTexture=this._matricesTexture.toJSON(e),s.indirectTexture=this._indirectTexture.toJSON(e),this._colorsTexture!==null&&(s.colorsTexture=this._colorsTexture.toJSON(e)),this.boundingSphere!==null&&(s.boundingSphere=this.boundingSphere.toJSON()),this.boundingBox!==null&&(s.boundingBox=this.boundingBox.toJSON()));function r(o,c){return o[c.uuid]===void 0&&(o[c.uuid]=c.toJSON(e)),c.uuid}if(this.isScene)this.background&&(this.background.isColor?s.background=this.background.toJSON():this.background.isTexture&&(s.background=this.background.toJSON(e).uuid)),this.environment&&this.environment.isTexture&&this.environment.isRenderTargetTexture!==!0&&(s.environment=this.environment.toJSON(e).uuid);else if(this.isMesh||this.isLine||this.isPoints){s.geometry=r(e.geometries,this.geometry);const o=this.geometry.parameters;if(o!==void 0&&o.shapes!==void 0){const c=o.shapes;if(Array.isArray(c))for(let l=0,h=c.length;l<h;l++){const u=c[l];r(e.shapes,u)}else r(e.shapes,c)}}if(this.isSkinnedMesh&&(s.bindMode=this.bindMode,s.bindMatrix=this.bindMatrix.toArray(),this.skeleton!==void 0&&(r(e.skeletons,this.skeleton),s.skeleton=this.skeleton.uuid)),this.material!==void 0)if(Array.isArray(this.material)){const o=[];for(let c=0,l=this.material.length;c<l;c++)o.push(r(e.materials,this.material[c]));s.material=o}else s.material=r(e.materials,this.material);if(this.children.length>0){s.children=[];for(let o=0;o<this.children.length;o++)s.children.push(this.children[o].toJSON(e).object)}if(this.animations.length>0){s.animations=[];for(let o=0;o<this.animations.length;o++){const c=this.animations[o];s.animations.push(r(e.animations,c))}}if(t){const o=a(e.geometries),c=a(e.materials),l=a(e.textures),h=a(e.images),u=a(e.shapes),d=a(e.skeletons),p=a(e.animations),_=a(e.nodes);o.length>0&&(n.geometries=o),c.length>0&&(n.materials=c),l.length>0&&(n.textures=l),h.length>0&&(n.images=h),u.length>0&&(n.shapes=u),d.length>0&&(n.skeletons=d),p.length>0&&(n.animations=p),_.length>0&&(n.nodes=_)}return n.object=s,n;function a(o){const c=[];for(const l in o){const h=o[l];delete h.metadata,c.push(h)}return c}}clone(e){return new this.constructor().copy(this,e)}copy(e,t=!0){if(this.name=e.name,this.up.copy(e.up),this.position.copy(e.position),this.rotation.order=e.rotation.order,this.quaternion.copy(e.quaternion),this.scale.copy(e.scale),this.matrix.copy(e.matrix),this.matrixWorld.copy(e.matrixWorld),this.matrixAutoUpdate=e.matrixAutoUpdate,this.matrixWorldAutoUpdate=e.matrixWorldAutoUpdate,this.matrixWorldNeedsUpdate=e.matrixWorldNeedsUpdate,this.layers.mask=e.layers.mask,this.visible=e.visible,this.castShadow=e.castShadow,this.receiveShadow=e.receiveShadow,this.frustumCulled=e.frustumCulled,this.renderOrder=e.renderOrder,this.animations=e.animations.slice(),this.userData=JSON.parse(JSON.stringify(e.userData)),t===!0)for(let n=0;n<e.children.length;n++){const s=e.children[n];this.add(s.clone())}return this}}Lt.DEFAULT_UP=new I(0,1,0);Lt.DEFAULT_MATRIX_AUTO_UPDATE=!0;Lt.DEFAULT_MATRIX_WORLD_AUTO_UPDATE=!0;const _n=new I,Un=new I,Ta=new I,Nn=new I,Gi=new I,$i=new I,_c=new I,Aa=new I,Ra=new I,Ca=new I,Pa=new St,Da=new St,La=new St;class fn{constructor(e=new I,t=new I,n=new I){this.a=e,this.b=t,this.c=n}static getNormal(e,t,n,s){s.subVectors(n,t),_n.subVectors(e,t),s.cross(_n);const r=s.lengthSq();return r>0?s.multiplyScalar(1/Math.sqrt(r)):s.set(0,0,0)}static getBarycoord(e,t,n,s,r){_n.subVectors(s,t),Un.subVectors(n,t),Ta.subVectors(e,t);const a=_n.dot(_n),o=_n.dot(Un),c=_n.dot(Ta),l=Un.dot(Un),h=Un.dot(Ta),u=a*l-o*o;if(u===0)return r.set(0,0,0),null;const d=1/u,p=(l*c-o*h)*d,_=(a*h-o*c)*d;return r.set(1-p-_,_,p)}static containsPoint(e,t,n,s){return this.getBarycoord(e,t,n,s,Nn)===null?!1:Nn.x>=0&&Nn.y>=0&&Nn.x+Nn.y<=1}static getInterpolation(e,t,n,s,r,a,o,c){return this.getBarycoord(e,t,n,s,Nn)===null?(c.x=0,c.y=0,"z"in c&&(c.z=0),"w"in c&&(c.w=0),null):(c.setScalar(0),c.addScaledVector(r,Nn.x),c.addScaledVector(a,Nn.y),c.addScaledVector(o,Nn.z),c)}static getInterpolatedAttribute(e,t,n,s,r,a){return Pa.setScalar(0),Da.setScalar(0),La.setScalar(0),Pa.fromBufferAttribute(e,t),Da.fromBufferAttribute(e,n),La.fromBufferAttribute(e,s),a.setScalar(0),a.addScaledVector(Pa,r.x),a.addScaledVector(Da,r.y),a.addScaledVector(La,r.z),a}static isFrontFacing(e,t,n,s){return _n.subVectors(n,t),Un.subVectors(e,t),_n.cross(Un).dot(s)<0}set(e,t,n){return this.a.copy(e),this.b.copy(t),this.c.copy(n),this}setFromPointsAndIndices(e,t,n,s){return this.a.copy(e[t]),this.b.copy(e[n]),this.c.copy(e[s]),this}setFromAttributeAndIndices(e,t,n,s){return this.a.fromBufferAttribute(e,t),this.b.fromBufferAttribute(e,n),this.c.fromBufferAttribute(e,s),this}clone(){return new this.constructor().copy(this)}copy(e){return this.a.copy(e.a),this.b.copy(e.b),this.c.copy(e.c),this}getArea(){return _n.subVectors(this.c,this.b),Un.subVectors(this.a,this.b),_n.cross(Un).length()*.5}getMidpoint(e){return e.addVectors(this.a,this.b).add(this.c).multiplyScalar(1/3)}getNormal(e){return fn.getNormal(this.a,this.b,this.c,e)}getPlane(e){return e.setFromCoplanarPoints(this.a,this.b,this.c)}getBarycoord(e,t){return fn.getBarycoord(e,this.a,this.b,this.c,t)}getInterpolation(e,t,n,s,r){return fn.getInterpolation(e,this.a,this.b,this.c,t,n,s,r)}containsPoint(e){return fn.containsPoint(e,this.a,this.b,this.c)}isFrontFacing(e){return fn.isFrontFacing(this.a,this.b,this.c,e)}intersectsBox(e){return e.intersectsTriangle(this)}closestPointToPoint(e,t){const n=this.a,s=this.b,r=this.c;let a,o;Gi.subVectors(s,n),$i.subVectors(r,n),Aa.subVectors(e,n);const c=Gi.dot(Aa),l=$i.dot(Aa);if(c<=0&&l<=0)return t.copy(n);Ra.subVectors(e,s);const h=Gi.dot(Ra),u=$i.dot(Ra);if(h>=0&&u<=h)return t.copy(s);const d=c*u-h*l;if(d<=0&&c>=0&&h<=0)return a=c/(c-h),t.copy(n).addScaledVector(Gi,a);Ca.subVectors(e,r);const p=Gi.dot(Ca),_=$i.dot(Ca);if(_>=0&&p<=_)return t.copy(r);const v=p*l-c*_;if(v<=0&&l>=0&&_<=0)return o=l/(l-_),t.copy(n).addScaledVector($i,o);const m=h*_-p*u;if(m<=0&&u-h>=0&&p-_>=0)return _c.subVectors(r,s),o=(u-h)/(u-h+(p-_)),t.copy(s).addScaledVector(_c,o);const f=1/(m+v+d);return a=v*f,o=d*f,t.copy(n).addScaledVector(Gi,a).addScaledVector($i,o)}equals(e){return e.a.equals(this.a)&&e.b.equals(this.b)&&e.c.equals(this.c)}}const lu={aliceblue:15792383,antiquewhite:16444375,aqua:65535,aquamarine:8388564,azure:15794175,beige:16119260,bisque:16770244,black:0,blanchedalmond:16772045,blue:255,blueviolet:9055202,brown:10824234,burlywood:14596231,cadetblue:6266528,chartreuse:8388352,chocolate:13789470,coral:16744272,cornflowerblue:6591981,cornsilk:16775388,crimson:14423100,cyan:65535,darkblue:139,darkcyan:35723,darkgoldenrod:12092939,darkgray:11119017,darkgreen:25600,darkgrey:11119017,darkkhaki:12433259,darkmagenta:9109643,darkolivegreen:5597999,darkorange:16747520,darkorchid:10040012,darkred:9109504,darksalmon:15308410,darkseagreen:9419919,darkslateblue:4734347,darkslategray:3100495,darkslategrey:3100495,darkturquoise:52945,darkviolet:9699539,deeppink:16716947,deepskyblue:49151,dimgray:6908265,dimgrey:6908265,dodgerblue:2003199,firebrick:11674146,floralwhite:16775920,forestgreen:2263842,fuchsia:16711935,gainsboro:14474460,ghostwhite:16316671,gold:16766720,goldenrod:14329120,gray:8421504,green:32768,greenyellow:11403055,grey:8421504,honeydew:15794160,hotpink:16738740,indianred:13458524,indigo:4915330,ivory:16777200,khaki:15787660,lavender:15132410,lavenderblush:16773365,lawngreen:8190976,lemonchiffon:16775885,lightblue:11393254,lightcoral:15761536,lightcyan:14745599,lightgoldenrodyellow:16448210,lightgray:13882323,lightgreen:9498256,lightgrey:13882323,lightpink:16758465,lightsalmon:16752762,lightseagreen:2142890,lightskyblue:8900346,lightslategray:7833753,lightslategrey:7833753,lightsteelblue:11584734,lightyellow:16777184,lime:65280,limegreen:3329330,linen:16445670,magenta:16711935,maroon:8388608,mediumaquamarine:6737322,mediumblue:205,mediumorchid:12211667,mediumpurple:9662683,mediumseagreen:3978097,mediumslateblue:8087790,mediumspringgreen:64154,mediumturquoise:4772300,mediumvioletred:13047173,midnightblue:1644912,mintcream:16121850,mistyrose:16770273,moccasin:16770229,navajowhite:16768685,navy:128,oldlace:16643558,olive:8421376,olivedrab:7048739,orange:16753920,orangered:16729344,orchid:14315734,palegoldenrod:15657130,palegreen:10025880,paleturquoise:11529966,palevioletred:14381203,papayawhip:16773077,peachpuff:16767673,peru:13468991,pink:16761035,plum:14524637,powderblue:11591910,purple:8388736,rebeccapurple:6697881,red:16711680,rosybrown:12357519,royalblue:4286945,saddlebrown:9127187,salmon:16416882,sandybrown:16032864,seagreen:3050327,seashell:16774638,sienna:10506797,silver:12632256,skyblue:8900331,slateblue:6970061,slategray:7372944,slategrey:7372944,snow:16775930,springgreen:65407,steelblue:4620980,tan:13808780,teal:32896,thistle:14204888,tomato:16737095,turquoise:4251856,violet:15631086,wheat:16113331,white:16777215,whitesmoke:16119285,yellow:16776960,yellowgreen:10145074},Kn={h:0,s:0,l:0},sr={h:0,s:0,l:0};function Ia(i,e,t){return t<0&&(t+=1),t>1&&(t-=1),t<1/6?i+(e-i)*6*t:t<1/2?e:t<2/3?i+(e-i)*6*(2/3-t):i}class Ke{constructor(e,t,n){return this.isColor=!0,this.r=1,this.g=1,this.b=1,this.set(e,t,n)}set(e,t,n){if(t===void 0&&n===void 0){const s=e;s&&s.isColor?this.copy(s):typeof s=="number"?this.setHex(s):typeof s=="string"&&this.setStyle(s)}else this.setRGB(e,t,n);return this}setScalar(e){return this.r=e,this.g=e,this.b=e,this}setHex(e,t=hn){return e=Math.floor(e),this.r=(e>>16&255)/255,this.g=(e>>8&255)/255,this.b=(e&255)/255,st.colorSpaceToWorking(this,t),this}setRGB(e,t,n,s=st.workingColorSpace){return this.r=e,this.g=t,this.b=n,st.colorSpaceToWorking(this,s),this}setHSL(e,t,n,s=st.workingColorSpace){if(e=lf(e,1),t=Qe(t,0,1),n=Qe(n,0,1),t===0)this.r=this.g=this.b=n;else{const r=n<=.5?n*(1+t):n+t-n*t,a=2*n-r;this.r=Ia(a,r,e+1/3),this.g=Ia(a,r,e),this.b=Ia(a,r,e-1/3)}return st.colorSpaceToWorking(this,s),this}setStyle(e,t=hn){function n(r){r!==void 0&&parseFloat(r)<1&&console.warn("THREE.Color: Alpha component of "+e+" will be ignored.")}let s;if(s=/^(\w+)\(([^\)]*)\)/.exec(e)){let r;const a=s[1],o=s[2];switch(a){case"rgb":case"rgba":if(r=/^\s*(\d+)\s*,\s*(\d+)\s*,\s*(\d+)\s*(?:,\s*(\d*\.?\d+)\s*)?$/.exec(o))return n(r[4]),this.setRGB(Math.min(255,parseInt(r[1],10))/255,Math.min(255,parseInt(r[2],10))/255,Math.min(255,parseInt(r[3],10))/255,t);if(r=/^\s*(\d+)\%\s*,\s*(\d+)\%\s*,\s*(\d+)\%\s*(?:,\s*(\d*\.?\d+)\s*)?$/.exec(o))return n(r[4]),this.setRGB(Math.min(100,parseInt(r[1],10))/100,Math.min(100,parseInt(r[2],10))/100,Math.min(100,parseInt(r[3],10))/100,t);break;case"hsl":case"hsla":if(r=/^\s*(\d*\.?\d+)\s*,\s*(\d*\.?\d+)\%\s*,\s*(\d*\.?\d+)\%\s*(?:,\s*(\d*\.?\d+)\s*)?$/.exec(o))return n(r[4]),this.setHSL(parseFloat(r[1])/360,parseFloat(r[2])/100,parseFloat(r[3])/100,t);break;default:console.warn("THREE.Color: Unknown color model "+e)}}else if(s=/^\#([A-Fa-f\d]+)$/.exec(e)){const r=s[1],a=r.length;if(a===3)return this.setRGB(parseInt(r.charAt(0),16)/15,parseInt(r.charAt(1),16)/15,parseInt(r.charAt(2),16)/15,t);if(a===6)return this.setHex(parseInt(r,16),t);console.warn("THREE.Color: Invalid hex color "+e)}else if(e&&e.length>0)return this.setColorName(e,t);return this}setColorName(e,t=hn){const n=lu[e.toLowerCase()];return n!==void 0?this.setHex(n,t):console.warn("THREE.Color: Unknown color "+e),this}clone(){return new this.constructor(this.r,this.g,this.b)}copy(e){return this.r=e.r,this.g=e.g,this.b=e.b,this}copySRGBToLinear(e){return this.r=Hn(e.r),this.g=Hn(e.g),this.b=Hn(e.b),this}copyLinearToSRGB(e){return this.r=ts(e.r),this.g=ts(e.g),this.b=ts(e.b),this}convertSRGBToLinear(){return this.copySRGBToLinear(this),this}convertLinearToSRGB(){return this.copyLinearToSRGB(this),this}getHex(e=hn){return st.workingToColorSpace(zt.copy(this),e),Math.round(Qe(zt.r*255,0,255))*65536+Math.round(Qe(zt.g*255,0,255))*256+Math.round(Qe(zt.b*255,0,255))}getHexString(e=hn){return("000000"+this.getHex(e).toString(16)).slice(-6)}getHSL(e,t=st.workingColorSpace){st.workingToColorSpace(zt.copy(this),t);const n=zt.r,s=zt.g,r=zt.b,a=Math.max(n,s,r),o=Math.min(n,s,r);let c,l;const h=(o+a)/2;if(o===a)c=0,l=0;else{const u=a-o;switch(l=h<=.5?u/(a+o):u/(2-a-o),a){case n:c=(s-r)/u+(s<r?6:0);break;case s:c=(r-n)/u+2;break;case r:c=(n-s)/u+4;break}c/=6}return e.h=c,e.s=l,e.l=h,e}getRGB(e,t=st.workingColorSpace){return st.workingToColorSpace(zt.copy(this),t),e.r=zt.r,e.g=zt.g,e.b=zt.b,e}getStyle(e=hn){st.workingToColorSpace(zt.copy(this),e);const t=zt.r,n=zt.g,s=zt.b;return e!==hn?`color(${e} ${t.toFixed(3)} ${n.toFixed(3)} ${s.toFixed(3)})`:`rgb(${Math.round(t*255)},${Math.round(n*255)},${Math.round(s*255)})`}offsetHSL(e,t,n){return this.getHSL(Kn),this.setHSL(Kn.h+e,Kn.s+t,Kn.l+n)}add(e){return this.r+=e.r,this.g+=e.g,this.b+=e.b,this}addColors(e,t){return this.r=e.r+t.r,this.g=e.g+t.g,this.b=e.b+t.b,this}addScalar(e){return this.r+=e,this.g+=e,this.b+=e,this}sub(e){return this.r=Math.max(0,this.r-e.r),this.g=Math.max(0,this.g-e.g),this.b=Math.max(0,this.b-e.b),this}multiply(e){return this.r*=e.r,this.g*=e.g,this.b*=e.b,this}multiplyScalar(e){return this.r*=e,this.g*=e,this.b*=e,this}lerp(e,t){return this.r+=(e.r-this.r)*t,this.g+=(e.g-this.g)*t,this.b+=(e.b-this.b)*t,this}lerpColors(e,t,n){return this.r=e.r+(t.r-e.r)*n,this.g=e.g+(t.g-e.g)*n,this.b=e.b+(t.b-e.b)*n,this}lerpHSL(e,t){this.getHSL(Kn),e.getHSL(sr);const n=ma(Kn.h,sr.h,t),s=ma(Kn.s,sr.s,t),r=ma(Kn.l,sr.l,t);return this.setHSL(n,s,r),this}setFromVector3(e){return this.r=e.x,this.g=e.y,this.b=e.z,this}applyMatrix3(e){const t=this.r,n=this.g,s=this.b,r=e.elements;return this.r=r[0]*t+r[3]*n+r[6]*s,this.g=r[1]*t+r[4]*n+r[7]*s,this.b=r[2]*t+r[5]*n+r[8]*s,this}equals(e){return e.r===this.r&&e.g===this.g&&e.b===this.b}fromArray(e,t=0){return this.r=e[t],this.g=e[t+1],this.b=e[t+2],this}toArray(e=[],t=0){return e[t]=this.r,e[t+1]=this.g,e[t+2]=this.b,e}fromBufferAttribute(e,t){return this.r=e.getX(t),this.g=e.getY(t),this.b=e.getZ(t),this}toJSON(){return this.getHex()}*[Symbol.iterator](){yield this.r,yield this.g,yield this.b}}const zt=new Ke;Ke.NAMES=lu;let Ef=0;class Di extends Pi{constructor(){super(),this.isMaterial=!0,Object.defineProperty(this,"id",{value:Ef++}),this.uuid=Vs(),this.name="",this.type="Material",this.blending=es,this.side=oi,this.vertexColors=!1,this.opacity=1,this.transparent=!1,this.alphaHash=!1,this.blendSrc=lo,this.blendDst=co,this.blendEquation=yi,this.blendSrcAlpha=null,this.blendDstAlpha=null,this.blendEquationAlpha=null,this.blendColor=new Ke(0,0,0),this.blendAlpha=0,this.depthFunc=ns,this.depthTest=!0,this.depthWrite=!0,this.stencilWriteMask=255,this.stencilFunc=ic,this.stencilRef=0,this.stencilFuncMask=255,this.stencilFail=Ni,this.stencilZFail=Ni,this.stencilZPass=Ni,this.stencilWrite=!1,this.clippingPlanes=null,this.clipIntersection=!1,this.clipShadows=!1,this.shadowSide=null,this.colorWrite=!0,this.precision=null,this.polygonOffset=!1,this.polygonOffsetFactor=0,this.polygonOffsetUnits=0,this.dithering=!1,this.alphaToCoverage=!1,this.premultipliedAlpha=!1,this.forceSinglePass=!1,this.allowOverride=!0,this.visible=!0,this.toneMapped=!0,this.userData={},this.version=0,this._alphaTest=0}get alphaTest(){return this._alphaTest}set alphaTest(e){this._alphaTest>0!=e>0&&this.version++,this._alphaTest=e}onBeforeRender(){}onBeforeCompile(){}customProgramCacheKey(){return this.onBeforeCompile.toString()}setValues(e){if(e!==void 0)for(const t in e){const n=e[t];if(n===void 0){console.warn(`THREE.Material: parameter '${t}' has value of undefined.`);continue}const s=this[t];if(s===void 0){console.warn(`THREE.Material: '${t}' is not a property of THREE.${this.type}.`);continue}s&&s.isColor?s.set(n):s&&s.isVector3&&n&&n.isVector3?s.copy(n):this[t]=n}}toJSON(e){const t=e===void 0||typeof e=="string";t&&(e={textures:{},images:{}});const n={metadata:{version:4.7,type:"Material",generator:"Material.toJSON"}};n.uuid=this.uuid,n.type=this.type,this.name!==""&&(n.name=this.name),this.color&&this.color.isColor&&(n.color=this.color.getHex()),this.roughness!==void 0&&(n.roughness=this.roughness),this.metalness!==void 0&&(n.metalness=this.metalness),this.sheen!==void 0&&(n.sheen=this.sheen),this.sheenColor&&this.sheenColor.isColor&&(n.sheenColor=this.sheenColor.getHex()),this.sheenRoughness!==void 0&&(n.sheenRoughness=this.sheenRoughness),this.emissive&&this.emissive.isColor&&(n.emissive=this.emissive.getHex()),this.emissiveIntensity!==void 0&&this.emissiveIntensity!==1&&(n.emissiveIntensity=this.emissiveIntensity),this.specular&&this.specular.isColor&&(n.specular=this.specular.getHex()),this.specularIntensity!==void 0&&(n.specularIntensity=this.specularIntensity),this.specularColor&&this.specularColor.isColor&&(n.specularColor=this.specularColor.getHex()),this.shininess!==void 0&&(n.shininess=this.shininess),this.clearcoat!==void 0&&(n.clearcoat=this.clearcoat),this.clearcoatRoughness!==void 0&&(n.clearcoatRoughness=this.clearcoatRoughness),this.clearcoatMap&&this.clearcoatMap.isTexture&&(n.clearcoatMap=this.clearcoatMap.toJSON(e).uuid),this.clearcoatRoughnessMap&&this.clearcoatRoughnessMap.isTexture&&(n.clearcoatRoughnessMap=this.clearcoatRoughnessMap.toJSON(e).uuid),this.clearcoatNormalMap&&this.clearcoatNormalMap.isTexture&&(n.clearcoatNormalMap=this.clearcoatNormalMap.toJSON(e).uuid,n.clearcoatNormalScale=this.clearcoatNormalScale.toArray()),this.sheenColorMap&&this.sheenColorMap.isTexture&&(n.sheenColorMap=this.sheenColorMap.toJSON(e).uuid),this.sheenRoughnessMap&&this.sheenRoughnessMap.isTexture&&(n.sheenRoughnessMap=this.sheenRoughnessMap.toJSON(e).uuid),this.dispersion!==void 0&&(n.dispersion=this.dispersion),this.iridescence!==void 0&&(n.iridescence=this.iridescence),this.iridescenceIOR!==void 0&&(n.iridescenceIOR=this.iridescenceIOR),this.iridescenceThicknessRange!==void 0&&(n.iridescenceThicknessRange=this.iridescenceThicknessRange),this.iridescenceMap&&this.iridescenceMap.isTexture&&(n.iridescenceMap=this.iridescenceMap.toJSON(e).uuid),this.iridescenceThicknessMap&&this.iridescenceThicknessMap.isTexture&&(n.iridescenceThicknessMap=this.iridescenceThicknessMap.toJSON(e).uuid),this.anisotropy!==void 0&&(n.anisotropy=this.anisotropy),this.anisotropyRotation!==void 0&&(n.anisotropyRotation=this.anisotropyRotation),this.anisotropyMap&&this.anisotropyMap.isTexture&&(n.anisotropyMap=this.anisotropyMap.toJSON(e).uuid),this.map&&this.map.isTexture&&(n.map=this.map.toJSON(e).uuid),this.matcap&&this.matcap.isTexture&&(n.matcap=this.matcap.toJSON(e).uuid),this.alphaMap&&this.alphaMap.isTexture&&(n.alphaMap=this.alphaMap.toJSON(e).uuid),this.lightMap&&this.lightMap.isTexture&&(n.lightMap=this.lightMap.toJSON(e).uuid,n.lightMapIntensity=this.lightMapIntensity),this.aoMap&&this.aoMap.isTexture&&(n.aoMap=this.aoMap.toJSON(e).uuid,n.aoMapIntensity=this.aoMapIntensity),this.bumpMap&&this.bumpMap.isTexture&&(n.bumpMap=this.bumpMap.toJSON(e).uuid,n.bumpScale=this.bumpScale),this.normalMap&&this.normalMap.isTexture&&(n.normalMap=this.normalMap.toJSON(e).uuid,n.normalMapType=this.normalMapType,n.normalScale=this.normalScale.toArray()),this.displacementMap&&this.displacementMap.isTexture&&(n.displacementMap=this.displacementMap.toJSON(e).uuid,n.displacementScale=this.displacementScale,n.displacementBias=this.displacementBias),this.roughnessMap&&this.roughnessMap.isTexture&&(n.roughnessMap=this.roughnessMap.toJSON(e).uuid),this.metalnessMap&&this.metalnessMap.isTexture&&(n.metalnessMap=this.metalnessMap.toJSON(e).uuid),this.emissiveMap&&this.emissiveMap.isTexture&&(n.emissiveMap=this.emissiveMap.toJSON(e).uuid),this.specularMap&&this.specularMap.isTexture&&(n.specularMap=this.specularMap.toJSON(e).uuid),this.specularIntensityMap&&this.specularIntensityMap.isTexture&&(n.specularIntensityMap=this.specularIntensityMap.toJSON(e).uuid),this.specularColorMap&&this.specularColorMap.isTexture&&(n.specularColorMap=this.specularColorMap.toJSON(e).uuid),this.envMap&&this.envMap.isTexture&&(n.envMap=this.envMap.toJSON(e).uuid,this.combine!==void 0&&(n.combine=this.combine)),this.envMapRotation!==void 0&&(n.envMapRotation=this.envMapRotation.toArray()),this.envMapIntensity!==void 0&&(n.envMapIntensity=this.envMapIntensity),this.reflectivity!==void 0&&(n.reflectivity=this.reflectivity),this.refractionRatio!==void 0&&(n.refractionRatio=this.refractionRatio),this.gradientMap&&this.gradientMap.isTexture&&(n.gradientMap=this.gradientMap.toJSON(e).uuid),this.transmission!==void 0&&(n.transmission=this.transmission),this.transmissionMap&&this.transmissionMap.isTexture&&(n.transmissionMap=this.transmissionMap.toJSON(e).uuid),this.thickness!==void 0&&(n.thickness=this.thickness),this.thicknessMap&&this.thicknessMap.isTexture&&(n.thicknessMap=this.thicknessMap.toJSON(e).uuid),this.attenuationDistance!==void 0&&this.attenuationDistance!==1/0&&(n.attenuationDistance=this.attenuationDistance),this.attenuationColor!==void 0&&(n.attenuationColor=this.attenuationColor.getHex()),this.size!==void 0&&(n.size=this.size),this.shadowSide!==null&&(n.shadowSide=this.shadowSide),this.sizeAttenuation!==void 0&&(n.sizeAttenuation=this.sizeAttenuation),this.blending!==es&&(n.blending=this.blending),this.side!==oi&&(n.side=this.side),this.vertexColors===!0&&(n.vertexColors=!0),this.opacity<1&&(n.opacity=this.opacity),this.transparent===!0&&(n.transparent=!0),this.blendSrc!==lo&&(n.blendSrc=this.blendSrc),this.blendDst!==co&&(n.blendDst=this.blendDst),this.blendEquation!==yi&&(n.blendEquation=this.blendEquation),this.blendSrcAlpha!==null&&(n.blendSrcAlpha=this.blendSrcAlpha),this.blendDstAlpha!==null&&(n.blendDstAlpha=this.blendDstAlpha),this.blendEquationAlpha!==null&&(n.blendEquationAlpha=this.blendEquationAlpha),this.blendColor&&this.blendColor.isColor&&(n.blendColor=this.blendColor.getHex()),this.blendAlpha!==0&&(n.blendAlpha=this.blendAlpha),this.depthFunc!==ns&&(n.depthFunc=this.depthFunc),this.depthTest===!1&&(n.depthTest=this.depthTest),this.depthWrite===!1&&(n.depthWrite=this.depthWrite),this.colorWrite===!1&&(n.colorWrite=this.colorWrite),this.stencilWriteMask!==255&&(n.stencilWriteMask=this.stencilWriteMask),this.stencilFunc!==ic&&(n.stencilFunc=this.stencilFunc),this.stencilRef!==0&&(n.stencilRef=this.stencilRef),this.stencilFuncMask!==255&&(n.stencilFuncMask=this.stencilFuncMask),this.stencilFail!==Ni&&(n.stencilFail=this.stencilFail),this.stencilZFail!==Ni&&(n.stencilZFail=this.stencilZFail),this.stencilZPass!==Ni&&(n.stencilZPass=this.stencilZPass),this.stencilWrite===!0&&(n.stencilWrite=this.stencilWrite),this.rotation!==void 0&&this.rotation!==0&&(n.rotation=this.rotation),this.polygonOffset===!0&&(n.polygonOffset=!0),this.polygonOffsetFactor!==0&&(n.polygonOffsetFactor=this.polygonOffsetFactor),this.polygonOffsetUnits!==0&&(n.polygonOffsetUnits=this.polygonOffsetUnits),this.linewidth!==void 0&&this.linewidth!==1&&(n.linewidth=this.linewidth),this.dashSize!==void 0&&(n.dashSize=this.dashSize),this.gapSize!==void 0&&(n.gapSize=this.gapSize),this.scale!==void 0&&(n.scale=this.scale),this.dithering===!0&&(n.dithering=!0),this.alphaTest>0&&(n.alphaTest=this.alphaTest),this.alphaHash===!0&&(n.alphaHash=!0),this.alphaToCoverage===!0&&(n.alphaToCoverage=!0),this.premultipliedAlpha===!0&&(n.premultipliedAlpha=!0),this.forceSinglePass===!0&&(n.forceSinglePass=!0),this.wireframe===!0&&(n.wireframe=!0),this.wireframeLinewidth>1&&(n.wireframeLinewidth=this.wireframeLinewidth),this.wireframeLinecap!=="round"&&(n.wireframeLinecap=this.wireframeLinecap),this.wireframeLinejoin!=="round"&&(n.wireframeLinejoin=this.wireframeLinejoin),this.flatShading===!0&&(n.flatShading=!0),this.visible===!1&&(n.visible=!1),this.toneMapped===!1&&(n.toneMapped=!1),this.fog===!1&&(n.fog=!1),Object.keys(this.userData).length>0&&(n.userData=this.userData);function s(r){const a=[];for(const o in r){const c=r[o];delete c.metadata,a.push(c)}return a}if(t){const r=s(e.textures),a=s(e.images);r.length>0&&(n.textures=r),a.length>0&&(n.images=a)}return n}clone(){return new this.constructor().copy(this)}copy(e){this.name=e.name,this.blending=e.blending,this.side=e.side,this.vertexColors=e.vertexColors,this.opacity=e.opacity,this.transparent=e.transparent,this.blendSrc=e.blendSrc,this.blendDst=e.blendDst,this.blendEquation=e.blendEquation,this.blendSrcAlpha=e.blendSrcAlpha,this.blendDstAlpha=e.blendDstAlpha,this.blendEquationAlpha=e.blendEquationAlpha,this.blendColor.copy(e.blendColor),this.blendAlpha=e.blendAlpha,this.depthFunc=e.depthFunc,this.depthTest=e.depthTest,this.depthWrite=e.depthWrite,this.stencilWriteMask=e.stencilWriteMask,this.stencilFunc=e.stencilFunc,this.stencilRef=e.stencilRef,this.stencilFuncMask=e.stencilFuncMask,this.stencilFail=e.stencilFail,this.stencilZFail=e.stencilZFail,this.stencilZPass=e.stencilZPass,this.stencilWrite=e.stencilWrite;const t=e.clippingPlanes;let n=null;if(t!==null){const s=t.length;n=new Array(s);for(let r=0;r!==s;++r)n[r]=t[r].clone()}return this.clippingPlanes=n,this.clipIntersection=e.clipIntersection,this.clipShadows=e.clipShadows,this.shadowSide=e.shadowSide,this.colorWrite=e.colorWrite,this.precision=e.precision,this.polygonOffset=e.polygonOffset,this.polygonOffsetFactor=e.polygonOffsetFactor,this.polygonOffsetUnits=e.polygonOffsetUnits,this.dithering=e.dithering,this.alphaTest=e.alphaTest,this.alphaHash=e.alphaHash,this.alphaToCoverage=e.alphaToCoverage,this.premultipliedAlpha=e.premultipliedAlpha,this.forceSinglePass=e.forceSinglePass,this.visible=e.visible,this.toneMapped=e.toneMapped,this.userData=JSON.parse(JSON.stringify(e.userData)),this}dispose(){this.dispatchEvent({type:"dispose"})}set needsUpdate(e){e===!0&&this.version++}}class Os extends Di{constructor(e){super(),this.isMeshBasicMaterial=!0,this.type="MeshBasicMaterial",this.color=new Ke(16777215),this.map=null,this.lightMap=null,this.lightMapIntensity=1,this.aoMap=null,this.aoMapIntensity=1,this.specularMap=null,this.alphaMap=null,this.envMap=null,this.envMapRotation=new Cn,this.combine=gl,this.reflectivity=1,this.refractionRatio=.98,this.wireframe=!1,this.wireframeLinewidth=1,this.wireframeLinecap="round",this.wireframeLinejoin="round",this.fog=!0,this.setValues(e)}copy(e){return super.copy(e),this.color.copy(e.color),this.map=e.map,this.lightMap=e.lightMap,this.lightMapIntensity=e.lightMapIntensity,this.aoMap=e.aoMap,this.aoMapIntensity=e.aoMapIntensity,this.specularMap=e.specularMap,this.alphaMap=e.alphaMap,this.envMap=e.envMap,this.envMapRotation.copy(e.envMapRotation),this.combine=e.combine,this.reflectivity=e.reflectivity,this.refractionRatio=e.refractionRatio,this.wireframe=e.wireframe,this.wireframeLinewidth=e.wireframeLinewidth,this.wireframeLinecap=e.wireframeLinecap,this.wireframeLinejoin=e.wireframeLinejoin,this.fog=e.fog,this}}const Ct=new I,rr=new We;let Tf=0;class Wt{constructor(e,t,n=!1){if(Array.isArray(e))throw new TypeError("THREE.BufferAttribute: array should be a Typed Array.");this.isBufferAttribute=!0,Object.defineProperty(this,"id",{value:Tf++}),this.name="",this.array=e,this.itemSize=t,this.count=e!==void 0?e.length/t:0,this.normalized=n,this.usage=sc,this.updateRanges=[],this.gpuType=kn,this.version=0}onUploadCallback(){}set needsUpdate(e){e===!0&&this.version++}setUsage(e){return this.usage=e,this}addUpdateRange(e,t){this.updateRanges.push({start:e,count:t})}clearUpdateRanges(){this.updateRanges.length=0}copy(e){return this.name=e.name,this.array=new e.array.constructor(e.array),this.itemSize=e.itemSize,this.count=e.count,this.normalized=e.normalized,this.usage=e.usage,this.gpuType=e.gpuType,this}copyAt(e,t,n){e*=this.itemSize,n*=t.itemSize;for(let s=0,r=this.itemSize;s<r;s++)this.array[e+s]=t.array[n+s];return this}copyArray(e){return this.array.set(e),this}applyMatrix3(e){if(this.itemSize===2)for(let t=0,n=this.count;t<n;t++)rr.fromBufferAttribute(this,t),rr.applyMatrix3(e),this.setXY(t,rr.x,rr.y);else if(this.itemSize===3)for(let t=0,n=this.count;t<n;t++)Ct.fromBufferAttribute(this,t),Ct.applyMatrix3(e),this.setXYZ(t,Ct.x,Ct.y,Ct.z);return this}applyMatrix4(e){for(let t=0,n=this.count;t<n;t++)Ct.fromBufferAttribute(this,t),Ct.applyMatrix4(e),this.setXYZ(t,Ct.x,Ct.y,Ct.z);return this}applyNormalMatrix(e){for(let t=0,n=this.count;t<n;t++)Ct.fromBufferAttribute(this,t),Ct.applyNormalMatrix(e),this.setXYZ(t,Ct.x,Ct.y,Ct.z);return this}transformDirection(e){for(let t=0,n=this.count;t<n;t++)Ct.fromBufferAttribute(this,t),Ct.transformDirection(e),this.setXYZ(t,Ct.x,Ct.y,Ct.z);return this}set(e,t=0){return this.array.set(e,t),this}getComponent(e,t){let n=this.array[e*this.itemSize+t];return this.normalized&&(n=ps(n,this.array)),n}setComponent(e,t,n){return this.normalized&&(n=jt(n,this.array)),this.array[e*this.itemSize+t]=n,this}getX(e){let t=this.array[e*this.itemSize];return this.normalized&&(t=ps(t,this.array)),t}setX(e,t){return this.normalized&&(t=jt(t,this.array)),this.array[e*this.itemSize]=t,this}getY(e){let t=this.array[e*this.itemSize+1];return this.normalized&&(t=ps(t,this.array)),t}setY(e,t){return this.normalized&&(t=jt(t,this.array)),this.array[e*this.itemSize+1]=t,this}getZ(e){let t=this.array[e*this.itemSize+2];return this.normalized&&(t=ps(t,this.array)),t}setZ(e,t){return this.normalized&&(t=jt(t,this.array)),this.array[e*this.itemSize+2]=t,this}getW(e){let t=this.array[e*this.itemSize+3];return this.normalized&&(t=ps(t,this.array)),t}setW(e,t){return this.normalized&&(t=jt(t,this.array)),this.array[e*this.itemSize+3]=t,this}setXY(e,t,n){return e*=this.itemSize,this.normalized&&(t=jt(t,this.array),n=jt(n,this.array)),this.array[e+0]=t,this.array[e+1]=n,this}setXYZ(e,t,n,s){return e*=this.itemSize,this.normalized&&(t=jt(t,this.array),n=jt(n,this.array),s=jt(s,this.array)),this.array[e+0]=t,this.array[e+1]=n,this.array[e+2]=s,this}setXYZW(e,t,n,s,r){return e*=this.itemSize,this.normalized&&(t=jt(t,this.array),n=jt(n,this.array),s=jt(s,this.array),r=jt(r,this.array)),this.array[e+0]=t,this.array[e+1]=n,this.array[e+2]=s,this.array[e+3]=r,this}onUpload(e){return this.onUploadCallback=e,this}clone(){return new this.constructor(this.array,this.itemSize).copy(this)}toJSON(){const e={itemSize:this.itemSize,type:this.array.constructor.name,array:Array.from(this.array),normalized:this.normalized};return this.name!==""&&(e.name=this.name),this.usage!==sc&&(e.usage=this.usage),e}}class cu extends Wt{constructor(e,t,n){super(new Uint16Array(e),t,n)}}class hu extends Wt{constructor(e,t,n){super(new Uint32Array(e),t,n)}}class Et extends Wt{constructor(e,t,n){super(new Float32Array(e),t,n)}}let Af=0;const cn=new pt,Ua=new Lt,Wi=new I,nn=new Gs,vs=new Gs,Nt=new I;class At extends Pi{constructor(){super(),this.isBufferGeometry=!0,Object.defineProperty(this,"id",{value:Af++}),this.uuid=Vs(),this.name="",this.type="BufferGeometry",this.index=null,this.indirect=null,this.attributes={},this.morphAttributes={},this.morphTargetsRelative=!1,this.groups=[],this.boundingBox=null,this.boundingSphere=null,this.drawRange={start:0,count:1/0},this.userData={}}getIndex(){return this.index}setIndex(e){return Array.isArray(e)?this.index=new(au(e)?hu:cu)(e,1):this.index=e,this}setIndirect(e){return this.indirect=e,this}getIndirect(){return this.indirect}getAttribute(e){return this.attributes[e]}setAttribute(e,t){return this.attributes[e]=t,this}deleteAttribute(e){return delete this.attributes[e],this}hasAttribute(e){return this.attributes[e]!==void 0}addGroup(e,t,n=0){this.groups.push({start:e,count:t,materialIndex:n})}clearGroups(){this.groups=[]}setDrawRange(e,t){this.drawRange.start=e,this.drawRange.count=t}applyMatrix4(e){const t=this.attributes.position;t!==void 0&&(t.applyMatrix4(e),t.needsUpdate=!0);const n=this.attributes.normal;if(n!==void 0){const r=new je().getNormalMatrix(e);n.applyNormalMatrix(r),n.needsUpdate=!0}const s=this.attributes.tangent;return s!==void 0&&(s.transformDirection(e),s.needsUpdate=!0),this.boundingBox!==null&&this.computeBoundingBox(),this.boundingSphere!==null&&this.computeBoundingSphere(),this}applyQuaternion(e){return cn.makeRotationFromQuaternion(e),this.applyMatrix4(cn),this}rotateX(e){return cn.makeRotationX(e),this.applyMatrix4(cn),this}rotateY(e){return cn.makeRotationY(e),this.applyMatrix4(cn),this}rotateZ(e){return cn.makeRotationZ(e),this.applyMatrix4(cn),this}translate(e,t,n){return cn.makeTranslation(e,t,n),this.applyMatrix4(cn),this}scale(e,t,n){return cn.makeScale(e,t,n),this.applyMatrix4(cn),this}lookAt(e){return Ua.lookAt(e),Ua.updateMatrix(),this.applyMatrix4(Ua.matrix),this}center(){return this.computeBoundingBox(),this.boundingBox.getCenter(Wi).negate(),this.translate(Wi.x,Wi.y,Wi.z),this}setFromPoints(e){const t=this.getAttribute("position");if(t===void 0){const n=[];for(let s=0,r=e.length;s<r;s++){const a=e[s];n.push(a.x,a.y,a.z||0)}this.setAttribute("position",new Et(n,3))}else{const n=Math.min(e.length,t.count);for(let s=0;s<n;s++){const r=e[s];t.setXYZ(s,r.x,r.y,r.z||0)}e.length>t.count&&console.warn("THREE.BufferGeometry: Buffer size too small for points data. Use .dispose() and create a new geometry."),t.needsUpdate=!0}return this}computeBoundingBox(){this.boundingBox===null&&(this.boundingBox=new Gs);const e=this.attributes.position,t=this.morphAttributes.position;if(e&&e.isGLBufferAttribute){console.error("THREE.BufferGeometry.computeBoundingBox(): GLBufferAttribute requires a manual bounding box.",this),this.boundingBox.set(new I(-1/0,-1/0,-1/0),new I(1/0,1/0,1/0));return}if(e!==void 0){if(this.boundingBox.setFromBufferAttribute(e),t)for(let n=0,s=t.length;n<s;n++){const r=t[n];nn.setFromBufferAttribute(r),this.morphTargetsRelative?(Nt.addVectors(this.boundingBox.min,nn.min),this.boundingBox.expandByPoint(Nt),Nt.addVectors(this.boundingBox.max,nn.max),this.boundingBox.expandByPoint(Nt)):(this.boundingBox.expandByPoint(nn.min),this.boundingBox.expandByPoint(nn.max))}}else this.boundingBox.makeEmpty();(isNaN(this.boundingBox.min.x)||isNaN(this.boundingBox.min.y)||isNaN(this.boundingBox.min.z))&&console.error('THREE.BufferGeometry.computeBoundingBox(): Computed min/max have NaN values. The "position" attribute is likely to have NaN values.',this)}computeBoundingSphere(){this.boundingSphere===null&&(this.boundingSphere=new ls);const e=this.attributes.position,t=this.morphAttributes.position;if(e&&e.isGLBufferAttribute){console.error("THREE.BufferGeometry.computeBoundingSphere(): GLBufferAttribute requires a manual bounding sphere.",this),this.boundingSphere.set(new I,1/0);return}if(e){const n=this.boundingSphere.center;if(nn.setFromBufferAttribute(e),t)for(let r=0,a=t.length;r<a;r++){const o=t[r];vs.setFromBufferAttribute(o),this.morphTargetsRelative?(Nt.addVectors(nn.min,vs.min),nn.expandByPoint(Nt),Nt.addVectors(nn.max,vs.max),nn.expandByPoint(Nt)):(nn.expandByPoint(vs.min),nn.expandByPoint(vs.max))}nn.getCenter(n);let s=0;for(let r=0,a=e.count;r<a;r++)Nt.fromBufferAttribute(e,r),s=Math.max(s,n.distanceToSquared(Nt));if(t)for(let r=0,a=t.length;r<a;r++){const o=t[r],c=this.morphTargetsRelative;for(let l=0,h=o.count;l<h;l++)Nt.fromBufferAttribute(o,l),c&&(Wi.fromBufferAttribute(e,l),Nt.add(Wi)),s=Math.max(s,n.distanceToSquared(Nt))}this.boundingSphere.radius=Math.sqrt(s),isNaN(this.boundingSphere.radius)&&console.error('THREE.BufferGeometry.computeBoundingSphere(): Computed radius is NaN. The "position" attribute is likely to have NaN values.',this)}}computeTangents(){const e=this.index,t=this.attributes;if(e===null||t.position===void 0||t.normal===void 0||t.uv===void 0){console.error("THREE.BufferGeometry: .computeTangents() failed. Missing required attributes (index, position, normal or uv)");return}const n=t.position,s=t.normal,r=t.uv;this.hasAttribute("tangent")===!1&&this.setAttribute("tangent",new Wt(new Float32Array(4*n.count),4));const a=this.getAttribute("tangent"),o=[],c=[];for(let O=0;O<n.count;O++)o[O]=new I,c[O]=new I;const l=new I,h=new I,u=new I,d=new We,p=new We,_=new We,v=new I,m=new I;function f(O,b,y){l.fromBufferAttribute(n,O),h.fromBufferAttribute(n,b),u.fromBufferAttribute(n,y),d.fromBufferAttribute(r,O),p.fromBufferAttribute(r,b),_.fromBufferAttribute(r,y),h.sub(l),u.sub(l),p.sub(d),_.sub(d);const R=1/(p.x*_.y-_.x*p.y);isFinite(R)&&(v.copy(h).multiplyScalar(_.y).addScaledVector(u,-p.y).multiplyScalar(R),m.copy(u).multiplyScalar(p.x).addScaledVector(h,-_.x).multiplyScalar(R),o[O].add(v),o[b].add(v),o[y].add(v),c[O].add(m),c[b].add(m),c[y].add(m))}let S=this.groups;S.length===0&&(S=[{start:0,count:e.count}]);for(let O=0,b=S.length;O<b;++O){const y=S[O],R=y.start,N=y.count;for(let U=R,k=R+N;U<k;U+=3)f(e.getX(U+0),e.getX(U+1),e.getX(U+2))}const E=new I,M=new I,P=new I,C=new I;function D(O){P.fromBufferAttribute(s,O),C.copy(P);const b=o[O];E.copy(b),E.sub(P.multiplyScalar(P.dot(b))).normalize(),M.crossVectors(C,b);const R=M.dot(c[O])<0?-1:1;a.setXYZW(O,E.x,E.y,E.z,R)}for(let O=0,b=S.length;O<b;++O){const y=S[O],R=y.start,N=y.count;for(let U=R,k=R+N;U<k;U+=3)D(e.getX(U+0)),D(e.getX(U+1)),D(e.getX(U+2))}}computeVertexNormals(){const e=this.index,t=this.getAttribute("position");if(t!==void 0){let n=this.getAttribute("normal");if(n===void 0)n=new Wt(new Float32Array(t.count*3),3),this.setAttribute("normal",n);else for(let d=0,p=n.count;d<p;d++)n.setXYZ(d,0,0,0);const s=new I,r=new I,a=new I,o=new I,c=new I,l=new I,h=new I,u=new I;if(e)for(let d=0,p=e.count;d<p;d+=3){const _=e.getX(d+0),v=e.getX(d+1),m=e.getX(d+2);s.fromBufferAttribute(t,_),r.fromBufferAttribute(t,v),a.fromBufferAttribute(t,m),h.subVectors(a,r),u.subVectors(s,r),h.cross(u),o.fromBufferAttribute(n,_),c.fromBufferAttribute(n,v),l.fromBufferAttribute(n,m),o.add(h),c.add(h),l.add(h),n.setXYZ(_,o.x,o.y,o.z),n.setXYZ(v,c.x,c.y,c.z),n.setXYZ(m,l.x,l.y,l.z)}else for(let d=0,p=t.count;d<p;d+=3)s.fromBufferAttribute(t,d+0),r.fromBufferAttribute(t,d+1),a.fromBufferAttribute(t,d+2),h.subVectors(a,r),u.subVectors(s,r),h.cross(u),n.setXYZ(d+0,h.x,h.y,h.z),n.setXYZ(d+1,h.x,h.y,h.z),n.setXYZ(d+2,h.x,h.y,h.z);this.normalizeNormals(),n.needsUpdate=!0}}normalizeNormals(){const e=this.attributes.normal;for(let t=0,n=e.count;t<n;t++)Nt.fromBufferAttribute(e,t),Nt.normalize(),e.setXYZ(t,Nt.x,Nt.y,Nt.z)}toNonIndexed(){function e(o,c){const l=o.array,h=o.itemSize,u=o.normalized,d=new l.constructor(c.length*h);let p=0,_=0;for(let v=0,m=c.length;v<m;v++){o.isInterleavedBufferAttribute?p=c[v]*o.data.stride+o.offset:p=c[v]*h;for(let f=0;f<h;f++)d[_++]=l[p++]}return new Wt(d,h,u)}if(this.index===null)return console.warn("THREE.BufferGeometry.toNonIndexed(): BufferGeometry is already non-indexed."),this;const t=new At,n=this.index.array,s=this.attributes;for(const o in s){const c=s[o],l=e(c,n);t.setAttribute(o,l)}const r=this.morphAttributes;for(const o in r){const c=[],l=r[o];for(let h=0,u=l.length;h<u;h++){const d=l[h],p=e(d,n);c.push(p)}t.morphAttributes[o]=c}t.morphTargetsRelative=this.morphTargetsRelative;const a=this.groups;for(let o=0,c=a.length;o<c;o++){const l=a[o];t.addGroup(l.start,l.count,l.materialIndex)}return t}toJSON(){const e={metadata:{version:4.7,type:"BufferGeometry",generator:"BufferGeometry.toJSON"}};if(e.uuid=this.uuid,e.type=this.type,this.name!==""&&(e.name=this.name),Object.keys(this.userData).length>0&&(e.userData=this.userData),this.parameters!==void 0){const c=this.parameters;for(const l in c)c[l]!==void 0&&(e[l]=c[l]);return e}e.data={attributes:{}};const t=this.index;t!==null&&(e.data.index={type:t.array.constructor.name,array:Array.prototype.slice.call(t.array)});const n=this.attributes;for(const c in n){const l=n[c];e.data.attributes[c]=l.toJSON(e.data)}const s={};let r=!1;for(const c in this.morphAttributes){const l=this.morphAttributes[c],h=[];for(let u=0,d=l.length;u<d;u++){const p=l[u];h.push(p.toJSON(e.data))}h.length>0&&(s[c]=h,r=!0)}r&&(e.data.morphAttributes=s,e.data.morphTargetsRelative=this.morphTargetsRelative);const a=this.groups;a.length>0&&(e.data.groups=JSON.parse(JSON.stringify(a)));const o=this.boundingSphere;return o!==null&&(e.data.boundingSphere=o.toJSON()),e}clone(){return new this.constructor().copy(this)}copy(e){this.index=null,this.attributes={},this.morphAttributes={},this.groups=[],this.boundingBox=null,this.boundingSphere=null;const t={};this.name=e.name;const n=e.index;n!==null&&this.setIndex(n.clone());const s=e.attributes;for(const l in s){const h=s[l];this.setAttribute(l,h.clone(t))}const r=e.morphAttributes;for(const l in r){const h=[],u=r[l];for(let d=0,p=u.length;d<p;d++)h.push(u[d].clone(t));this.morphAttributes[l]=h}this.morphTargetsRelative=e.morphTargetsRelative;const a=e.groups;for(let l=0,h=a.length;l<h;l++){const u=a[l];this.addGroup(u.start,u.count,u.materialIndex)}const o=e.boundingBox;o!==null&&(this.boundingBox=o.clone());const c=e.boundingSphere;return c!==null&&(this.boundingSphere=c.clone()),this.drawRange.start=e.drawRange.start,this.drawRange.count=e.drawRange.count,this.userData=e.userData,this}dispose(){this.dispatchEvent({type:"dispose"})}}const vc=new pt,mi=new $s,ar=new ls,xc=new I,or=new I,lr=new I,cr=new I,Na=new I,hr=new I,yc=new I,ur=new I;class kt extends Lt{constructor(e=new At,t=new Os){super(),this.isMesh=!0,this.type="Mesh",this.geometry=e,this.material=t,this.morphTargetDictionary=void 0,this.morphTargetInfluences=void 0,this.count=1,this.updateMorphTargets()}copy(e,t){return super.copy(e,t),e.morphTargetInfluences!==void 0&&(this.morphTargetInfluences=e.morphTargetInfluences.slice()),e.morphTargetDictionary!==void 0&&(this.morphTargetDictionary=Object.assign({},e.morphTargetDictionary)),this.material=Array.isArray(e.material)?e.material.slice():e.material,this.geometry=e.geometry,this}updateMorphTargets(){const t=this.geometry.morphAttributes,n=Object.keys(t);if(n.length>0){const s=t[n[0]];if(s!==void 0){this.morphTargetInfluences=[],this.morphTargetDictionary={};for(let r=0,a=s.length;r<a;r++){const o=s[r].name||String(r);this.morphTargetInfluences.push(0),this.morphTargetDictionary[o]=r}}}}getVertexPosition(e,t){const n=this.geometry,s=n.attributes.position,r=n.morphAttributes.position,a=n.morphTargetsRelative;t.fromBufferAttribute(s,e);const o=this.morphTargetInfluences;if(r&&o){hr.set(0,0,0);for(let c=0,l=r.length;c<l;c++){const h=o[c],u=r[c];h!==0&&(Na.fromBufferAttribute(u,e),a?hr.addScaledVector(Na,h):hr.addScaledVector(Na.sub(t),h))}t.add(hr)}return t}raycast(e,t){const n=this.geometry,s=this.material,r=this.matrixWorld;s!==void 0&&(n.boundingSphere===null&&n.computeBoundingSphere(),ar.copy(n.boundingSphere),ar.applyMatrix4(r),mi.copy(e.ray).recast(e.near),!(ar.containsPoint(mi.origin)===!1&&(mi.intersectSphere(ar,xc)===null||mi.origin.distanceToSquared(xc)>(e.far-e.near)**2))&&(vc.copy(r).invert(),mi.copy(e.ray).applyMatrix4(vc),!(n.boundingBox!==null&&mi.intersectsBox(n.boundingBox)===!1)&&this._computeIntersections(e,t,mi)))}_computeIntersections(e,t,n){let s;const r=this.geometry,a=this.material,o=r.index,c=r.attributes.position,l=r.attributes.uv,h=r.attributes.uv1,u=r.attributes.normal,d=r.groups,p=r.drawRange;if(o!==null)if(Array.isArray(a))for(let _=0,v=d.length;_<v;_++){const m=d[_],f=a[m.materialIndex],S=Math.max(m.start,p.start),E=Math.min(o.count,Math.min(m.start+m.count,p.start+p.count));for(let M=S,P=E;M<P;M+=3){const C=o.getX(M),D=o.getX(M+1),O=o.getX(M+2);s=dr(this,f,e,n,l,h,u,C,D,O),s&&(s.faceIndex=Math.floor(M/3),s.face.materialIndex=m.materialIndex,t.push(s))}}else{const _=Math.max(0,p.start),v=Math.min(o.count,p.start+p.count);for(let m=_,f=v;m<f;m+=3){const S=o.getX(m),E=o.getX(m+1),M=o.getX(m+2);s=dr(this,a,e,n,l,h,u,S,E,M),s&&(s.faceIndex=Math.floor(m/3),t.push(s))}}else if(c!==void 0)if(Array.isArray(a))for(let _=0,v=d.length;_<v;_++){const m=d[_],f=a[m.materialIndex],S=Math.max(m.start,p.start),E=Math.min(c.count,Math.min(m.start+m.count,p.start+p.count));for(let M=S,P=E;M<P;M+=3){const C=M,D=M+1,O=M+2;s=dr(this,f,e,n,l,h,u,C,D,O),s&&(s.faceIndex=Math.floor(M/3),s.face.materialIndex=m.materialIndex,t.push(s))}}else{const _=Math.max(0,p.start),v=Math.min(c.count,p.start+p.count);for(let m=_,f=v;m<f;m+=3){const S=m,E=m+1,M=m+2;s=dr(this,a,e,n,l,h,u,S,E,M),s&&(s.faceIndex=Math.floor(m/3),t.push(s))}}}}function Rf(i,e,t,n,s,r,a,o){let c;if(e.side===Kt?c=n.intersectTriangle(a,r,s,!0,o):c=n.intersectTriangle(s,r,a,e.side===oi,o),c===null)return null;ur.copy(o),ur.applyMatrix4(i.matrixWorld);const l=t.ray.origin.distanceTo(ur);return l<t.near||l>t.far?null:{distance:l,point:ur.clone(),object:i}}function dr(i,e,t,n,s,r,a,o,c,l){i.getVertexPosition(o,or),i.getVertexPosition(c,lr),i.getVertexPosition(l,cr);const h=Rf(i,e,t,n,or,lr,cr,yc);if(h){const u=new I;fn.getBarycoord(yc,or,lr,cr,u),s&&(h.uv=fn.getInterpolatedAttribute(s,o,c,l,u,new We)),r&&(h.uv1=fn.getInterpolatedAttribute(r,o,c,l,u,new We)),a&&(h.normal=fn.getInterpolatedAttribute(a,o,c,l,u,new I),h.normal.dot(n.direction)>0&&h.normal.multiplyScalar(-1));const d={a:o,b:c,c:l,normal:new I,materialIndex:0};fn.getNormal(or,lr,cr,d.normal),h.face=d,h.barycoord=u}return h}class Li extends At{constructor(e=1,t=1,n=1,s=1,r=1,a=1){super(),this.type="BoxGeometry",this.parameters={width:e,height:t,depth:n,widthSegments:s,heightSegments:r,depthSegments:a};const o=this;s=Math.floor(s),r=Math.floor(r),a=Math.floor(a);const c=[],l=[],h=[],u=[];let d=0,p=0;_("z","y","x",-1,-1,n,t,e,a,r,0),_("z","y","x",1,-1,n,t,-e,a,r,1),_("x","z","y",1,1,e,n,t,s,a,2),_("x","z","y",1,-1,e,n,-t,s,a,3),_("x","y","z",1,-1,e,t,n,s,r,4),_("x","y","z",-1,-1,e,t,-n,s,r,5),this.setIndex(c),this.setAttribute("position",new Et(l,3)),this.setAttribute("normal",new Et(h,3)),this.setAttribute("uv",new Et(u,2));function _(v,m,f,S,E,M,P,C,D,O,b){const y=M/D,R=P/O,N=M/2,U=P/2,k=C/2,B=D+1,q=O+1;let J=0,X=0;const le=new I;for(let fe=0;fe<q;fe++){const W=fe*R-U;for(let ue=0;ue<B;ue++){const Ce=ue*y-N;le[v]=Ce*S,le[m]=W*E,le[f]=k,l.push(le.x,le.y,le.z),le[v]=0,le[m]=0,le[f]=C>0?1:-1,h.push(le.x,le.y,le.z),u.push(ue/D),u.push(1-fe/O),J+=1}}for(let fe=0;fe<O;fe++)for(let W=0;W<D;W++){const ue=d+W+B*fe,Ce=d+W+B*(fe+1),Oe=d+(W+1)+B*(fe+1),$e=d+(W+1)+B*fe;c.push(ue,Ce,$e),c.push(Ce,Oe,$e),X+=6}o.addGroup(p,X,b),p+=X,d+=J}}copy(e){return super.copy(e),this.parameters=Object.assign({},e.parameters),this}static fromJSON(e){return new Li(e.width,e.height,e.depth,e.widthSegments,e.heightSegments,e.depthSegments)}}function as(i){const e={};for(const t in i){e[t]={};for(const n in i[t]){const s=i[t][n];s&&(s.isColor||s.isMatrix3||s.isMatrix4||s.isVector2||s.isVector3||s.isVector4||s.isTexture||s.isQuaternion)?s.isRenderTargetTexture?(console.warn("UniformsUtils: Textures of render targets cannot be cloned via cloneUniforms() or mergeUniforms()."),e[t][n]=null):e[t][n]=s.clone():Array.isArray(s)?e[t][n]=s.slice():e[t][n]=s}}return e}function $t(i){const e={};for(let t=0;t<i.length;t++){const n=as(i[t]);for(const s in n)e[s]=n[s]}return e}function Cf(i){const e=[];for(let t=0;t<i.length;t++)e.push(i[t].clone());return e}function uu(i){const e=i.getRenderTarget();return e===null?i.outputColorSpace:e.isXRRenderTarget===!0?e.texture.colorSpace:st.workingColorSpace}const Pf={clone:as,merge:$t};var Df=`void main() {
	gl_Position = projectionMatrix * modelViewMatrix * vec4( position, 1.0 );
}`,Lf=`void main() {
	gl_FragColor = vec4( 1.0, 0.0, 0.0, 1.0 );
}`;class li extends Di{constructor(e){super(),this.isShaderMaterial=!0,this.type="ShaderMaterial",this.defines={},this.uniforms={},this.uniformsGroups=[],this.vertexShader=Df,this.fragmentShader=Lf,this.linewidth=1,this.wireframe=!1,this.wireframeLinewidth=1,this.fog=!1,this.lights=!1,this.clipping=!1,this.forceSinglePass=!0,this.extensions={clipCullDistance:!1,multiDraw:!1},this.defaultAttributeValues={color:[1,1,1],uv:[0,0],uv1:[0,0]},this.index0AttributeName=void 0,this.uniformsNeedUpdate=!1,this.glslVersion=null,e!==void 0&&this.setValues(e)}copy(e){return super.copy(e),this.fragmentShader=e.fragmentShader,this.vertexShader=e.vertexShader,this.uniforms=as(e.uniforms),this.uniformsGroups=Cf(e.uniformsGroups),this.defines=Object.assign({},e.defines),this.wireframe=e.wireframe,this.wireframeLinewidth=e.wireframeLinewidth,this.fog=e.fog,this.lights=e.lights,this.clipping=e.clipping,this.extensions=Object.assign({},e.extensions),this.glslVersion=e.glslVersion,this}toJSON(e){const t=super.toJSON(e);t.glslVersion=this.glslVersion,t.uniforms={};for(const s in this.uniforms){const a=this.uniforms[s].value;a&&a.isTexture?t.uniforms[s]={type:"t",value:a.toJSON(e).uuid}:a&&a.isColor?t.uniforms[s]={type:"c",value:a.getHex()}:a&&a.isVector2?t.uniforms[s]={type:"v2",value:a.toArray()}:a&&a.isVector3?t.uniforms[s]={type:"v3",value:a.toArray()}:a&&a.isVector4?t.uniforms[s]={type:"v4",value:a.toArray()}:a&&a.isMatrix3?t.uniforms[s]={type:"m3",value:a.toArray()}:a&&a.isMatrix4?t.uniforms[s]={type:"m4",value:a.toArray()}:t.uniforms[s]={value:a}}Object.keys(this.defines).length>0&&(t.defines=this.defines),t.vertexShader=this.vertexShader,t.fragmentShader=this.fragmentShader,t.lights=this.lights,t.clipping=this.clipping;const n={};for(const s in this.extensions)this.extensions[s]===!0&&(n[s]=!0);return Object.keys(n).length>0&&(t.extensions=n),t}}class du extends Lt{constructor(){super(),this.isCamera=!0,this.type="Camera",this.matrixWorldInverse=new pt,this.projectionMatrix=new pt,this.projectionMatrixInverse=new pt,this.coordinateSystem=En,this._reversedDepth=!1}get reversedDepth(){return this._reversedDepth}copy(e,t){return super.copy(e,t),this.matrixWorldInverse.copy(e.matrixWorldInverse),this.projectionMatrix.copy(e.projectionMatrix),this.projectionMatrixInverse.copy(e.projectionMatrixInverse),this.coordinateSystem=e.coordinateSystem,this}getWorldDirection(e){return super.getWorldDirection(e).negate()}updateMatrixWorld(e){super.updateMatrixWorld(e),this.matrixWorldInverse.copy(this.matrixWorld).invert()}updateWorldMatrix(e,t){super.updateWorldMatrix(e,t),this.matrixWorldInverse.copy(this.matrixWorld).invert()}clone(){return new this.constructor().copy(this)}}const Zn=new I,wc=new We,bc=new We;class un extends du{constructor(e=50,t=1,n=.1,s=2e3){super(),this.isPerspectiveCamera=!0,this.type="PerspectiveCamera",this.fov=e,this.zoom=1,this.near=n,this.far=s,this.focus=10,this.aspect=t,this.view=null,this.filmGauge=35,this.filmOffset=0,this.updateProjectionMatrix()}copy(e,t){return super.copy(e,t),this.fov=e.fov,this.zoom=e.zoom,this.near=e.near,this.far=e.far,this.focus=e.focus,this.aspect=e.aspect,this.view=e.view===null?null:Object.assign({},e.view),this.filmGauge=e.filmGauge,this.filmOffset=e.filmOffset,this}setFocalLength(e){const t=.5*this.getFilmHeight()/e;this.fov=Ko*2*Math.atan(t),this.updateProjectionMatrix()}getFocalLength(){const e=Math.tan(Es*.5*this.fov);return .5*this.getFilmHeight()/e}getEffectiveFOV(){return Ko*2*Math.atan(Math.tan(Es*.5*this.fov)/this.zoom)}getFilmWidth(){return this.filmGauge*Math.min(this.aspect,1)}getFilmHeight(){return this.filmGauge/Math.max(this.aspect,1)}getViewBounds(e,t,n){Zn.set(-1,-1,.5).applyMatrix4(this.projectionMatrixInverse),t.set(Zn.x,Zn.y).multiplyScalar(-e/Zn.z),Zn.set(1,1,.5).applyMatrix4(this.projectionMatrixInverse),n.set(Zn.x,Zn.y).multiplyScalar(-e/Zn.z)}getViewSize(e,t){return this.getViewBounds(e,wc,bc),t.subVectors(bc,wc)}setViewOffset(e,t,n,s,r,a){this.aspect=e/t,this.view===null&&(this.view={enabled:!0,fullWidth:1,fullHeight:1,offsetX:0,offsetY:0,width:1,height:1}),this.view.enabled=!0,this.view.fullWidth=e,this.view.fullHeight=t,this.view.offsetX=n,this.view.offsetY=s,this.view.width=r,this.view.height=a,this.updateProjectionMatrix()}clearViewOffset(){this.view!==null&&(this.view.enabled=!1),this.updateProjectionMatrix()}updateProjectionMatrix(){const e=this.near;let t=e*Math.tan(Es*.5*this.fov)/this.zoom,n=2*t,s=this.aspect*n,r=-.5*s;const a=this.view;if(this.view!==null&&this.view.enabled){const c=a.fullWidth,l=a.fullHeight;r+=a.offsetX*s/c,t-=a.offsetY*n/l,s*=a.width/c,n*=a.height/l}const o=this.filmOffset;o!==0&&(r+=e*o/this.getFilmWidth()),this.projectionMatrix.makePerspective(r,r+s,t,t-n,e,this.far,this.coordinateSystem,this.reversedDepth),this.projectionMatrixInverse.copy(this.projectionMatrix).invert()}toJSON(e){const t=super.toJSON(e);return t.object.fov=this.fov,t.object.zoom=this.zoom,t.object.near=this.near,t.object.far=this.far,t.object.focus=this.focus,t.object.aspect=this.aspect,this.view!==null&&(t.object.view=Object.assign({},this.view)),t.object.filmGauge=this.filmGauge,t.object.filmOffset=this.filmOffset,t}}const qi=-90,Xi=1;class If extends Lt{constructor(e,t,n){super(),this.type="CubeCamera",this.renderTarget=n,this.coordinateSystem=null,this.activeMipmapLevel=0;const s=new un(qi,Xi,e,t);s.layers=this.layers,this.add(s);const r=new un(qi,Xi,e,t);r.layers=this.layers,this.add(r);const a=new un(qi,Xi,e,t);a.layers=this.layers,this.add(a);const o=new un(qi,Xi,e,t);o.layers=this.layers,this.add(o);const c=new un(qi,Xi,e,t);c.layers=this.layers,this.add(c);const l=new un(qi,Xi,e,t);l.layers=this.layers,this.add(l)}updateCoordinateSystem(){const e=this.coordinateSystem,t=this.children.concat(),[n,s,r,a,o,c]=t;for(const l of t)this.remove(l);if(e===En)n.up.set(0,1,0),n.lookAt(1,0,0),s.up.set(0,1,0),s.lookAt(-1,0,0),r.up.set(0,0,-1),r.lookAt(0,1,0),a.up.set(0,0,1),a.lookAt(0,-1,0),o.up.set(0,1,0),o.lookAt(0,0,1),c.up.set(0,1,0),c.lookAt(0,0,-1);else if(e===zr)n.up.set(0,-1,0),n.lookAt(-1,0,0),s.up.set(0,-1,0),s.lookAt(1,0,0),r.up.set(0,0,1),r.lookAt(0,1,0),a.up.set(0,0,-1),a.lookAt(0,-1,0),o.up.set(0,-1,0),o.lookAt(0,0,1),c.up.set(0,-1,0),c.lookAt(0,0,-1);else throw new Error("THREE.CubeCamera.updateCoordinateSystem(): Invalid coordinate system: "+e);for(const l of t)this.add(l),l.updateMatrixWorld()}update(e,t){this.parent===null&&this.updateMatrixWorld();const{renderTarget:n,activeMipmapLevel:s}=this;this.coordinateSystem!==e.coordinateSystem&&(this.coordinateSystem=e.coordinateSystem,this.updateCoordinateSystem());const[r,a,o,c,l,h]=this.children,u=e.getRenderTarget(),d=e.getActiveCubeFace(),p=e.getActiveMipmapLevel(),_=e.xr.enabled;e.xr.enabled=!1;const v=n.texture.generateMipmaps;n.texture.generateMipmaps=!1,e.setRenderTarget(n,0,s),e.render(t,r),e.setRenderTarget(n,1,s),e.render(t,a),e.setRenderTarget(n,2,s),e.render(t,o),e.setRenderTarget(n,3,s),e.render(t,c),e.setRenderTarget(n,4,s),e.render(t,l),n.texture.generateMipmaps=v,e.setRenderTarget(n,5,s),e.render(t,h),e.setRenderTarget(u,d,p),e.xr.enabled=_,n.texture.needsPMREMUpdate=!0}}class fu extends Zt{constructor(e=[],t=is,n,s,r,a,o,c,l,h){super(e,t,n,s,r,a,o,c,l,h),this.isCubeTexture=!0,this.flipY=!1}get images(){return this.image}set images(e){this.image=e}}class Uf extends Ci{constructor(e=1,t={}){super(e,e,t),this.isWebGLCubeRenderTarget=!0;const n={width:e,height:e,depth:1},s=[n,n,n,n,n,n];this.texture=new fu(s),this._setTextureOptions(t),this.texture.isRenderTargetTexture=!0}fromEquirectangularTexture(e,t){this.texture.type=t.type,this.texture.colorSpace=t.colorSpace,this.texture.generateMipmaps=t.generateMipmaps,this.texture.minFilter=t.minFilter,this.texture.magFilter=t.magFilter;const n={uniforms:{tEquirect:{value:null}},vertexShader:`

				varying vec3 vWorldDirection;

				vec3 transformDirection( in vec3 dir, in mat4 matrix ) {

					return normalize( ( matrix * vec4( dir, 0.0 ) ).xyz );

				}

				void main() {

					vWorldDirection = transformDirection( position, modelMatrix );

					#include <begin_vertex>
					#include <project_vertex>

				}
			`,fragmentShader:`

				uniform sampler2D tEquirect;

				varying vec3 vWorldDirection;

				#include <common>

				void main() {

					vec3 direction = normalize( vWorldDirection );

					vec2 sampleUV = equirectUv( direction );

					gl_FragColor = texture2D( tEquirect, sampleUV );

				}
			`},s=new Li(5,5,5),r=new li({name:"CubemapFromEquirect",uniforms:as(n.uniforms),vertexShader:n.vertexShader,fragmentShader:n.fragmentShader,side:Kt,blending:si});r.uniforms.tEquirect.value=t;const a=new kt(s,r),o=t.minFilter;return t.minFilter===Mi&&(t.minFilter=Sn),new If(1,10,this).update(e,a),t.minFilter=o,a.geometry.dispose(),a.material.dispose(),this}clear(e,t=!0,n=!0,s=!0){const r=e.getRenderTarget();for(let a=0;a<6;a++)e.setRenderTarget(this,a),e.clear(t,n,s);e.setRenderTarget(r)}}class qt extends Lt{constructor(){super(),this.isGroup=!0,this.type="Group"}}const Nf={type:"move"};class Fa{constructor(){this._targetRay=null,this._grip=null,this._hand=null}getHandSpace(){return this._hand===null&&(this._hand=new qt,this._hand.matrixAutoUpdate=!1,this._hand.visible=!1,this._hand.joints={},this._hand.inputState={pinching:!1}),this._hand}getTargetRaySpace(){return this._targetRay===null&&(this._targetRay=new qt,this._targetRay.matrixAutoUpdate=!1,this._targetRay.visible=!1,this._targetRay.hasLinearVelocity=!1,this._targetRay.linearVelocity=new I,this._targetRay.hasAngularVelocity=!1,this._targetRay.angularVelocity=new I),this._targetRay}getGripSpace(){return this._grip===null&&(this._grip=new qt,this._grip.matrixAutoUpdate=!1,this._grip.visible=!1,this._grip.hasLinearVelocity=!1,this._grip.linearVelocity=new I,this._grip.hasAngularVelocity=!1,this._grip.angularVelocity=new I),this._grip}dispatchEvent(e){return this._targetRay!==null&&this._targetRay.dispatchEvent(e),this._grip!==null&&this._grip.dispatchEvent(e),this._hand!==null&&this._hand.dispatchEvent(e),this}connect(e){if(e&&e.hand){const t=this._hand;if(t)for(const n of e.hand.values())this._getHandJoint(t,n)}return this.dispatchEvent({type:"connected",data:e}),this}disconnect(e){return this.dispatchEvent({type:"disconnected",data:e}),this._targetRay!==null&&(this._targetRay.visible=!1),this._grip!==null&&(this._grip.visible=!1),this._hand!==null&&(this._hand.visible=!1),this}update(e,t,n){let s=null,r=null,a=null;const o=this._targetRay,c=this._grip,l=this._hand;if(e&&t.session.visibilityState!=="visible-blurred"){if(l&&e.hand){a=!0;for(const v of e.hand.values()){const m=t.getJointPose(v,n),f=this._getHandJoint(l,v);m!==null&&(f.matrix.fromArray(m.transform.matrix),f.matrix.decompose(f.position,f.rotation,f.scale),f.matrixWorldNeedsUpdate=!0,f.jointRadius=m.radius),f.visible=m!==null}const h=l.joints["index-finger-tip"],u=l.joints["thumb-tip"],d=h.position.distanceTo(u.position),p=.02,_=.005;l.inputState.pinching&&d>p+_?(l.inputState.pinching=!1,this.dispatchEvent({type:"pinchend",handedness:e.handedness,target:this})):!l.inputState.pinching&&d<=p-_&&(l.inputState.pinching=!0,this.dispatchEvent({type:"pinchstart",handedness:e.handedness,target:this}))}else c!==null&&e.gripSpace&&(r=t.getPose(e.gripSpace,n),r!==null&&(c.matrix.fromArray(r.transform.matrix),c.matrix.decompose(c.position,c.rotation,c.scale),c.matrixWorldNeedsUpdate=!0,r.linearVelocity?(c.hasLinearVelocity=!0,c.linearVelocity.copy(r.linearVelocity)):c.hasLinearVelocity=!1,r.angularVelocity?(c.hasAngularVelocity=!0,c.angularVelocity.copy(r.angularVelocity)):c.hasAngularVelocity=!1));o!==null&&(s=t.getPose(e.targetRaySpace,n),s===null&&r!==null&&(s=r),s!==null&&(o.matrix.fromArray(s.transform.matrix),o.matrix.decompose(o.position,o.rotation,o.scale),o.matrixWorldNeedsUpdate=!0,s.linearVelocity?(o.hasLinearVelocity=!0,o.linearVelocity.copy(s.linearVelocity)):o.hasLinearVelocity=!1,s.angularVelocity?(o.hasAngularVelocity=!0,o.angularVelocity.copy(s.angularVelocity)):o.hasAngularVelocity=!1,this.dispatchEvent(Nf)))}return o!==null&&(o.visible=s!==null),c!==null&&(c.visible=r!==null),l!==null&&(l.visible=a!==null),this}_getHandJoint(e,t){if(e.joints[t.jointName]===void 0){const n=new qt;n.matrixAutoUpdate=!1,n.visible=!1,e.joints[t.jointName]=n,e.add(n)}return e.joints[t.jointName]}}class Ff extends Lt{constructor(){super(),this.isScene=!0,this.type="Scene",this.background=null,this.environment=null,this.fog=null,this.backgroundBlurriness=0,this.backgroundIntensity=1,this.backgroundRotation=new Cn,this.environmentIntensity=1,this.environmentRotation=new Cn,this.overrideMaterial=null,typeof __THREE_DEVTOOLS__<"u"&&__THREE_DEVTOOLS__.dispatchEvent(new CustomEvent("observe",{detail:this}))}copy(e,t){return super.copy(e,t),e.background!==null&&(this.background=e.background.clone()),e.environment!==null&&(this.environment=e.environment.clone()),e.fog!==null&&(this.fog=e.fog.clone()),this.backgroundBlurriness=e.backgroundBlurriness,this.backgroundIntensity=e.backgroundIntensity,this.backgroundRotation.copy(e.backgroundRotation),this.environmentIntensity=e.environmentIntensity,this.environmentRotation.copy(e.environmentRotation),e.overrideMaterial!==null&&(this.overrideMaterial=e.overrideMaterial.clone()),this.matrixAutoUpdate=e.matrixAutoUpdate,this}toJSON(e){const t=super.toJSON(e);return this.fog!==null&&(t.object.fog=this.fog.toJSON()),this.backgroundBlurriness>0&&(t.object.backgroundBlurriness=this.backgroundBlurriness),this.backgroundIntensity!==1&&(t.object.backgroundIntensity=this.backgroundIntensity),t.object.backgroundRotation=this.backgroundRotation.toArray(),this.environmentIntensity!==1&&(t.object.environmentIntensity=this.environmentIntensity),t.object.environmentRotation=this.environmentRotation.toArray(),t}}const Oa=new I,Of=new I,kf=new je;class Jn{constructor(e=new I(1,0,0),t=0){this.isPlane=!0,this.normal=e,this.constant=t}set(e,t){return this.normal.copy(e),this.constant=t,this}setComponents(e,t,n,s){return this.normal.set(e,t,n),this.constant=s,this}setFromNormalAndCoplanarPoint(e,t){return this.normal.copy(e),this.constant=-t.dot(this.normal),this}setFromCoplanarPoints(e,t,n){const s=Oa.subVectors(n,t).cross(Of.subVectors(e,t)).normalize();return this.setFromNormalAndCoplanarPoint(s,e),this}copy(e){return this.normal.copy(e.normal),this.constant=e.constant,this}normalize(){const e=1/this.normal.length();return this.normal.multiplyScalar(e),this.constant*=e,this}negate(){return this.constant*=-1,this.normal.negate(),this}distanceToPoint(e){return this.normal.dot(e)+this.constant}distanceToSphere(e){return this.distanceToPoint(e.center)-e.radius}projectPoint(e,t){return t.copy(e).addScaledVector(this.normal,-this.distanceToPoint(e))}intersectLine(e,t){const n=e.delta(Oa),s=this.normal.dot(n);if(s===0)return this.distanceToPoint(e.start)===0?t.copy(e.start):null;const r=-(e.start.dot(this.normal)+this.constant)/s;return r<0||r>1?null:t.copy(e.start).addScaledVector(n,r)}intersectsLine(e){const t=this.distanceToPoint(e.start),n=this.distanceToPoint(e.end);return t<0&&n>0||n<0&&t>0}intersectsBox(e){return e.intersectsPlane(this)}intersectsSphere(e){return e.intersectsPlane(this)}coplanarPoint(e){return e.copy(this.normal).multiplyScalar(-this.constant)}applyMatrix4(e,t){const n=t||kf.getNormalMatrix(e),s=this.coplanarPoint(Oa).applyMatrix4(e),r=this.normal.applyMatrix3(n).normalize();return this.constant=-s.dot(r),this}translate(e){return this.constant-=e.dot(this.normal),this}equals(e){return e.normal.equals(this.normal)&&e.constant===this.constant}clone(){return new this.constructor().copy(this)}}const gi=new ls,Bf=new We(.5,.5),fr=new I;class El{constructor(e=new Jn,t=new Jn,n=new Jn,s=new Jn,r=new Jn,a=new Jn){this.planes=[e,t,n,s,r,a]}set(e,t,n,s,r,a){const o=this.planes;return o[0].copy(e),o[1].copy(t),o[2].copy(n),o[3].copy(s),o[4].copy(r),o[5].copy(a),this}copy(e){const t=this.planes;for(let n=0;n<6;n++)t[n].copy(e.planes[n]);return this}setFromProjectionMatrix(e,t=En,n=!1){const s=this.planes,r=e.elements,a=r[0],o=r[1],c=r[2],l=r[3],h=r[4],u=r[5],d=r[6],p=r[7],_=r[8],v=r[9],m=r[10],f=r[11],S=r[12],E=r[13],M=r[14],P=r[15];if(s[0].setComponents(l-a,p-h,f-_,P-S).normalize(),s[1].setComponents(l+a,p+h,f+_,P+S).normalize(),s[2].setComponents(l+o,p+u,f+v,P+E).normalize(),s[3].setComponents(l-o,p-u,f-v,P-E).normalize(),n)s[4].setComponents(c,d,m,M).normalize(),s[5].setComponents(l-c,p-d,f-m,P-M).normalize();else if(s[4].setComponents(l-c,p-d,f-m,P-M).normalize(),t===En)s[5].setComponents(l+c,p+d,f+m,P+M).normalize();else if(t===zr)s[5].setComponents(c,d,m,M).normalize();else throw new Error("THREE.Frustum.setFromProjectionMatrix(): Invalid coordinate system: "+t);return this}intersectsObject(e){if(e.boundingSphere!==void 0)e.boundingSphere===null&&e.computeBoundingSphere(),gi.copy(e.boundingSphere).applyMatrix4(e.matrixWorld);else{const t=e.geometry;t.boundingSphere===null&&t.computeBoundingSphere(),gi.copy(t.boundingSphere).applyMatrix4(e.matrixWorld)}return this.intersectsSphere(gi)}intersectsSprite(e){gi.center.set(0,0,0);const t=Bf.distanceTo(e.center);return gi.radius=.7071067811865476+t,gi.applyMatrix4(e.matrixWorld),this.intersectsSphere(gi)}intersectsSphere(e){const t=this.planes,n=e.center,s=-e.radius;for(let r=0;r<6;r++)if(t[r].distanceToPoint(n)<s)return!1;return!0}intersectsBox(e){const t=this.planes;for(let n=0;n<6;n++){const s=t[n];if(fr.x=s.normal.x>0?e.max.x:e.min.x,fr.y=s.normal.y>0?e.max.y:e.min.y,fr.z=s.normal.z>0?e.max.z:e.min.z,s.distanceToPoint(fr)<0)return!1}return!0}containsPoint(e){const t=this.planes;for(let n=0;n<6;n++)if(t[n].distanceToPoint(e)<0)return!1;return!0}clone(){return new this.constructor().copy(this)}}class ci extends Di{constructor(e){super(),this.isLineBasicMaterial=!0,this.type="LineBasicMaterial",this.color=new Ke(16777215),this.map=null,this.linewidth=1,this.linecap="round",this.linejoin="round",this.fog=!0,this.setValues(e)}copy(e){return super.copy(e),this.color.copy(e.color),this.map=e.map,this.linewidth=e.linewidth,this.linecap=e.linecap,this.linejoin=e.linejoin,this.fog=e.fog,this}}const Vr=new I,Gr=new I,Mc=new pt,xs=new $s,pr=new ls,ka=new I,Sc=new I;class cs extends Lt{constructor(e=new At,t=new ci){super(),this.isLine=!0,this.type="Line",this.geometry=e,this.material=t,this.morphTargetDictionary=void 0,this.morphTargetInfluences=void 0,this.updateMorphTargets()}copy(e,t){return super.copy(e,t),this.material=Array.isArray(e.material)?e.material.slice():e.material,this.geometry=e.geometry,this}computeLineDistances(){const e=this.geometry;if(e.index===null){const t=e.attributes.position,n=[0];for(let s=1,r=t.count;s<r;s++)Vr.fromBufferAttribute(t,s-1),Gr.fromBufferAttribute(t,s),n[s]=n[s-1],n[s]+=Vr.distanceTo(Gr);e.setAttribute("lineDistance",new Et(n,1))}else console.warn("THREE.Line.computeLineDistances(): Computation only possible with non-indexed BufferGeometry.");return this}raycast(e,t){const n=this.geometry,s=this.matrixWorld,r=e.params.Line.threshold,a=n.drawRange;if(n.boundingSphere===null&&n.computeBoundingSphere(),pr.copy(n.boundingSphere),pr.applyMatrix4(s),pr.radius+=r,e.ray.intersectsSphere(pr)===!1)return;Mc.copy(s).invert(),xs.copy(e.ray).applyMatrix4(Mc);const o=r/((this.scale.x+this.scale.y+this.scale.z)/3),c=o*o,l=this.isLineSegments?2:1,h=n.index,d=n.attributes.position;if(h!==null){const p=Math.max(0,a.start),_=Math.min(h.count,a.start+a.count);for(let v=p,m=_-1;v<m;v+=l){const f=h.getX(v),S=h.getX(v+1),E=mr(this,e,xs,c,f,S,v);E&&t.push(E)}if(this.isLineLoop){const v=h.getX(_-1),m=h.getX(p),f=mr(this,e,xs,c,v,m,_-1);f&&t.push(f)}}else{const p=Math.max(0,a.start),_=Math.min(d.count,a.start+a.count);for(let v=p,m=_-1;v<m;v+=l){const f=mr(this,e,xs,c,v,v+1,v);f&&t.push(f)}if(this.isLineLoop){const v=mr(this,e,xs,c,_-1,p,_-1);v&&t.push(v)}}}updateMorphTargets(){const t=this.geometry.morphAttributes,n=Object.keys(t);if(n.length>0){const s=t[n[0]];if(s!==void 0){this.morphTargetInfluences=[],this.morphTargetDictionary={};for(let r=0,a=s.length;r<a;r++){const o=s[r].name||String(r);this.morphTargetInfluences.push(0),this.morphTargetDictionary[o]=r}}}}}function mr(i,e,t,n,s,r,a){const o=i.geometry.attributes.position;if(Vr.fromBufferAttribute(o,s),Gr.fromBufferAttribute(o,r),t.distanceSqToSegment(Vr,Gr,ka,Sc)>n)return;ka.applyMatrix4(i.matrixWorld);const l=e.ray.origin.distanceTo(ka);if(!(l<e.near||l>e.far))return{distance:l,point:Sc.clone().applyMatrix4(i.matrixWorld),index:a,face:null,faceIndex:null,barycoord:null,object:i}}const Ec=new I,Tc=new I;class Tl extends cs{constructor(e,t){super(e,t),this.isLineSegments=!0,this.type="LineSegments"}computeLineDistances(){const e=this.geometry;if(e.index===null){const t=e.attributes.position,n=[];for(let s=0,r=t.count;s<r;s+=2)Ec.fromBufferAttribute(t,s),Tc.fromBufferAttribute(t,s+1),n[s]=s===0?0:n[s-1],n[s+1]=n[s]+Ec.distanceTo(Tc);e.setAttribute("lineDistance",new Et(n,1))}else console.warn("THREE.LineSegments.computeLineDistances(): Computation only possible with non-indexed BufferGeometry.");return this}}class pu extends Di{constructor(e){super(),this.isPointsMaterial=!0,this.type="PointsMaterial",this.color=new Ke(16777215),this.map=null,this.alphaMap=null,this.size=1,this.sizeAttenuation=!0,this.fog=!0,this.setValues(e)}copy(e){return super.copy(e),this.color.copy(e.color),this.map=e.map,this.alphaMap=e.alphaMap,this.size=e.size,this.sizeAttenuation=e.sizeAttenuation,this.fog=e.fog,this}}const Ac=new pt,Zo=new $s,gr=new ls,_r=new I;class mu extends Lt{constructor(e=new At,t=new pu){super(),this.isPoints=!0,this.type="Points",this.geometry=e,this.material=t,this.morphTargetDictionary=void 0,this.morphTargetInfluences=void 0,this.updateMorphTargets()}copy(e,t){return super.copy(e,t),this.material=Array.isArray(e.material)?e.material.slice():e.material,this.geometry=e.geometry,this}raycast(e,t){const n=this.geometry,s=this.matrixWorld,r=e.params.Points.threshold,a=n.drawRange;if(n.boundingSphere===null&&n.computeBoundingSphere(),gr.copy(n.boundingSphere),gr.applyMatrix4(s),gr.radius+=r,e.ray.intersectsSphere(gr)===!1)return;Ac.copy(s).invert(),Zo.copy(e.ray).applyMatrix4(Ac);const o=r/((this.scale.x+this.scale.y+this.scale.z)/3),c=o*o,l=n.index,u=n.attributes.position;if(l!==null){const d=Math.max(0,a.start),p=Math.min(l.count,a.start+a.count);for(let _=d,v=p;_<v;_++){const m=l.getX(_);_r.fromBufferAttribute(u,m),Rc(_r,m,c,s,e,t,this)}}else{const d=Math.max(0,a.start),p=Math.min(u.count,a.start+a.count);for(let _=d,v=p;_<v;_++)_r.fromBufferAttribute(u,_),Rc(_r,_,c,s,e,t,this)}}updateMorphTargets(){const t=this.geometry.morphAttributes,n=Object.keys(t);if(n.length>0){const s=t[n[0]];if(s!==void 0){this.morphTargetInfluences=[],this.morphTargetDictionary={};for(let r=0,a=s.length;r<a;r++){const o=s[r].name||String(r);this.morphTargetInfluences.push(0),this.morphTargetDictionary[o]=r}}}}}function Rc(i,e,t,n,s,r,a){const o=Zo.distanceSqToPoint(i);if(o<t){const c=new I;Zo.closestPointToPoint(i,c),c.applyMatrix4(n);const l=s.ray.origin.distanceTo(c);if(l<s.near||l>s.far)return;r.push({distance:l,distanceToRay:Math.sqrt(o),point:c,index:e,face:null,faceIndex:null,barycoord:null,object:a})}}class gu extends Zt{constructor(e,t,n=Ai,s,r,a,o=xn,c=xn,l,h=Us,u=1){if(h!==Us&&h!==Ns)throw new Error("DepthTexture format must be either THREE.DepthFormat or THREE.DepthStencilFormat");const d={width:e,height:t,depth:u};super(d,s,r,a,o,c,h,n,l),this.isDepthTexture=!0,this.flipY=!1,this.generateMipmaps=!1,this.compareFunction=null}copy(e){return super.copy(e),this.source=new Ml(Object.assign({},e.image)),this.compareFunction=e.compareFunction,this}toJSON(e){const t=super.toJSON(e);return this.compareFunction!==null&&(t.compareFunction=this.compareFunction),t}}class _u extends Zt{constructor(e=null){super(),this.sourceTexture=e,this.isExternalTexture=!0}copy(e){return super.copy(e),this.sourceTexture=e.sourceTexture,this}}class $r extends At{constructor(e=1,t=1,n=4,s=8,r=1){super(),this.type="CapsuleGeometry",this.parameters={radius:e,height:t,capSegments:n,radialSegments:s,heightSegments:r},t=Math.max(0,t),n=Math.max(1,Math.floor(n)),s=Math.max(3,Math.floor(s)),r=Math.max(1,Math.floor(r));const a=[],o=[],c=[],l=[],h=t/2,u=Math.PI/2*e,d=t,p=2*u+d,_=n*2+r,v=s+1,m=new I,f=new I;for(let S=0;S<=_;S++){let E=0,M=0,P=0,C=0;if(S<=n){const b=S/n,y=b*Math.PI/2;M=-h-e*Math.cos(y),P=e*Math.sin(y),C=-e*Math.cos(y),E=b*u}else if(S<=n+r){const b=(S-n)/r;M=-h+b*t,P=e,C=0,E=u+b*d}else{const b=(S-n-r)/n,y=b*Math.PI/2;M=h+e*Math.sin(y),P=e*Math.cos(y),C=e*Math.sin(y),E=u+d+b*u}const D=Math.max(0,Math.min(1,E/p));let O=0;S===0?O=.5/s:S===_&&(O=-.5/s);for(let b=0;b<=s;b++){const y=b/s,R=y*Math.PI*2,N=Math.sin(R),U=Math.cos(R);f.x=-P*U,f.y=M,f.z=P*N,o.push(f.x,f.y,f.z),m.set(-P*U,C,P*N),m.normalize(),c.push(m.x,m.y,m.z),l.push(y+O,D)}if(S>0){const b=(S-1)*v;for(let y=0;y<s;y++){const R=b+y,N=b+y+1,U=S*v+y,k=S*v+y+1;a.push(R,N,U),a.push(N,k,U)}}}this.setIndex(a),this.setAttribute("position",new Et(o,3)),this.setAttribute("normal",new Et(c,3)),this.setAttribute("uv",new Et(l,2))}copy(e){return super.copy(e),this.parameters=Object.assign({},e.parameters),this}static fromJSON(e){return new $r(e.radius,e.height,e.capSegments,e.radialSegments,e.heightSegments)}}class ea extends At{constructor(e=1,t=1,n=1,s=32,r=1,a=!1,o=0,c=Math.PI*2){super(),this.type="CylinderGeometry",this.parameters={radiusTop:e,radiusBottom:t,height:n,radialSegments:s,heightSegments:r,openEnded:a,thetaStart:o,thetaLength:c};const l=this;s=Math.floor(s),r=Math.floor(r);const h=[],u=[],d=[],p=[];let _=0;const v=[],m=n/2;let f=0;S(),a===!1&&(e>0&&E(!0),t>0&&E(!1)),this.setIndex(h),this.setAttribute("position",new Et(u,3)),this.setAttribute("normal",new Et(d,3)),this.setAttribute("uv",new Et(p,2));function S(){const M=new I,P=new I;let C=0;const D=(t-e)/n;for(let O=0;O<=r;O++){const b=[],y=O/r,R=y*(t-e)+e;for(let N=0;N<=s;N++){const U=N/s,k=U*c+o,B=Math.sin(k),q=Math.cos(k);P.x=R*B,P.y=-y*n+m,P.z=R*q,u.push(P.x,P.y,P.z),M.set(B,D,q).normalize(),d.push(M.x,M.y,M.z),p.push(U,1-y),b.push(_++)}v.push(b)}for(let O=0;O<s;O++)for(let b=0;b<r;b++){const y=v[b][O],R=v[b+1][O],N=v[b+1][O+1],U=v[b][O+1];(e>0||b!==0)&&(h.push(y,R,U),C+=3),(t>0||b!==r-1)&&(h.push(R,N,U),C+=3)}l.addGroup(f,C,0),f+=C}function E(M){const P=_,C=new We,D=new I;let O=0;const b=M===!0?e:t,y=M===!0?1:-1;for(let N=1;N<=s;N++)u.push(0,m*y,0),d.push(0,y,0),p.push(.5,.5),_++;const R=_;for(let N=0;N<=s;N++){const k=N/s*c+o,B=Math.cos(k),q=Math.sin(k);D.x=b*q,D.y=m*y,D.z=b*B,u.push(D.x,D.y,D.z),d.push(0,y,0),C.x=B*.5+.5,C.y=q*.5*y+.5,p.push(C.x,C.y),_++}for(let N=0;N<s;N++){const U=P+N,k=R+N;M===!0?h.push(k,k+1,U):h.push(k+1,k,U),O+=3}l.addGroup(f,O,M===!0?1:2),f+=O}}copy(e){return super.copy(e),this.parameters=Object.assign({},e.parameters),this}static fromJSON(e){return new ea(e.radiusTop,e.radiusBottom,e.height,e.radialSegments,e.heightSegments,e.openEnded,e.thetaStart,e.thetaLength)}}class ta extends ea{constructor(e=1,t=1,n=32,s=1,r=!1,a=0,o=Math.PI*2){super(0,e,t,n,s,r,a,o),this.type="ConeGeometry",this.parameters={radius:e,height:t,radialSegments:n,heightSegments:s,openEnded:r,thetaStart:a,thetaLength:o}}static fromJSON(e){return new ta(e.radius,e.height,e.radialSegments,e.heightSegments,e.openEnded,e.thetaStart,e.thetaLength)}}const vr=new I,xr=new I,Ba=new I,yr=new fn;class zf extends At{constructor(e=null,t=1){if(super(),this.type="EdgesGeometry",this.parameters={geometry:e,thresholdAngle:t},e!==null){const s=Math.pow(10,4),r=Math.cos(Es*t),a=e.getIndex(),o=e.getAttribute("position"),c=a?a.count:o.count,l=[0,0,0],h=["a","b","c"],u=new Array(3),d={},p=[];for(let _=0;_<c;_+=3){a?(l[0]=a.getX(_),l[1]=a.getX(_+1),l[2]=a.getX(_+2)):(l[0]=_,l[1]=_+1,l[2]=_+2);const{a:v,b:m,c:f}=yr;if(v.fromBufferAttribute(o,l[0]),m.fromBufferAttribute(o,l[1]),f.fromBufferAttribute(o,l[2]),yr.getNormal(Ba),u[0]=`${Math.round(v.x*s)},${Math.round(v.y*s)},${Math.round(v.z*s)}`,u[1]=`${Math.round(m.x*s)},${Math.round(m.y*s)},${Math.round(m.z*s)}`,u[2]=`${Math.round(f.x*s)},${Math.round(f.y*s)},${Math.round(f.z*s)}`,!(u[0]===u[1]||u[1]===u[2]||u[2]===u[0]))for(let S=0;S<3;S++){const E=(S+1)%3,M=u[S],P=u[E],C=yr[h[S]],D=yr[h[E]],O=`${M}_${P}`,b=`${P}_${M}`;b in d&&d[b]?(Ba.dot(d[b].normal)<=r&&(p.push(C.x,C.y,C.z),p.push(D.x,D.y,D.z)),d[b]=null):O in d||(d[O]={index0:l[S],index1:l[E],normal:Ba.clone()})}}for(const _ in d)if(d[_]){const{index0:v,index1:m}=d[_];vr.fromBufferAttribute(o,v),xr.fromBufferAttribute(o,m),p.push(vr.x,vr.y,vr.z),p.push(xr.x,xr.y,xr.z)}this.setAttribute("position",new Et(p,3))}}copy(e){return super.copy(e),this.parameters=Object.assign({},e.parameters),this}}class na extends At{constructor(e=1,t=1,n=1,s=1){super(),this.type="PlaneGeometry",this.parameters={width:e,height:t,widthSegments:n,heightSegments:s};const r=e/2,a=t/2,o=Math.floor(n),c=Math.floor(s),l=o+1,h=c+1,u=e/o,d=t/c,p=[],_=[],v=[],m=[];for(let f=0;f<h;f++){const S=f*d-a;for(let E=0;E<l;E++){const M=E*u-r;_.push(M,-S,0),v.push(0,0,1),m.push(E/o),m.push(1-f/c)}}for(let f=0;f<c;f++)for(let S=0;S<o;S++){const E=S+l*f,M=S+l*(f+1),P=S+1+l*(f+1),C=S+1+l*f;p.push(E,M,C),p.push(M,P,C)}this.setIndex(p),this.setAttribute("position",new Et(_,3)),this.setAttribute("normal",new Et(v,3)),this.setAttribute("uv",new Et(m,2))}copy(e){return super.copy(e),this.parameters=Object.assign({},e.parameters),this}static fromJSON(e){return new na(e.width,e.height,e.widthSegments,e.heightSegments)}}class Al extends At{constructor(e=1,t=32,n=16,s=0,r=Math.PI*2,a=0,o=Math.PI){super(),this.type="SphereGeometry",this.parameters={radius:e,widthSegments:t,heightSegments:n,phiStart:s,phiLength:r,thetaStart:a,thetaLength:o},t=Math.max(3,Math.floor(t)),n=Math.max(2,Math.floor(n));const c=Math.min(a+o,Math.PI);let l=0;const h=[],u=new I,d=new I,p=[],_=[],v=[],m=[];for(let f=0;f<=n;f++){const S=[],E=f/n;let M=0;f===0&&a===0?M=.5/t:f===n&&c===Math.PI&&(M=-.5/t);for(let P=0;P<=t;P++){const C=P/t;u.x=-e*Math.cos(s+C*r)*Math.sin(a+E*o),u.y=e*Math.cos(a+E*o),u.z=e*Math.sin(s+C*r)*Math.sin(a+E*o),_.push(u.x,u.y,u.z),d.copy(u).normalize(),v.push(d.x,d.y,d.z),m.push(C+M,1-E),S.push(l++)}h.push(S)}for(let f=0;f<n;f++)for(let S=0;S<t;S++){const E=h[f][S+1],M=h[f][S],P=h[f+1][S],C=h[f+1][S+1];(f!==0||a>0)&&p.push(E,M,C),(f!==n-1||c<Math.PI)&&p.push(M,P,C)}this.setIndex(p),this.setAttribute("position",new Et(_,3)),this.setAttribute("normal",new Et(v,3)),this.setAttribute("uv",new Et(m,2))}copy(e){return super.copy(e),this.parameters=Object.assign({},e.parameters),this}static fromJSON(e){return new Al(e.radius,e.widthSegments,e.heightSegments,e.phiStart,e.phiLength,e.thetaStart,e.thetaLength)}}class Hf extends Di{constructor(e){super(),this.isMeshLambertMaterial=!0,this.type="MeshLambertMaterial",this.color=new Ke(16777215),this.map=null,this.lightMap=null,this.lightMapIntensity=1,this.aoMap=null,this.aoMapIntensity=1,this.emissive=new Ke(0),this.emissiveIntensity=1,this.emissiveMap=null,this.bumpMap=null,this.bumpScale=1,this.normalMap=null,this.normalMapType=su,this.normalScale=new We(1,1),this.displacementMap=null,this.displacementScale=1,this.displacementBias=0,this.specularMap=null,this.alphaMap=null,this.envMap=null,this.envMapRotation=new Cn,this.combine=gl,this.reflectivity=1,this.refractionRatio=.98,this.wireframe=!1,this.wireframeLinewidth=1,this.wireframeLinecap="round",this.wireframeLinejoin="round",this.flatShading=!1,this.fog=!0,this.setValues(e)}copy(e){return super.copy(e),this.color.copy(e.color),this.map=e.map,this.lightMap=e.lightMap,this.lightMapIntensity=e.lightMapIntensity,this.aoMap=e.aoMap,this.aoMapIntensity=e.aoMapIntensity,this.emissive.copy(e.emissive),this.emissiveMap=e.emissiveMap,this.emissiveIntensity=e.emissiveIntensity,this.bumpMap=e.bumpMap,this.bumpScale=e.bumpScale,this.normalMap=e.normalMap,this.normalMapType=e.normalMapType,this.normalScale.copy(e.normalScale),this.displacementMap=e.displacementMap,this.displacementScale=e.displacementScale,this.displacementBias=e.displacementBias,this.specularMap=e.specularMap,this.alphaMap=e.alphaMap,this.envMap=e.envMap,this.envMapRotation.copy(e.envMapRotation),this.combine=e.combine,this.reflectivity=e.reflectivity,this.refractionRatio=e.refractionRatio,this.wireframe=e.wireframe,this.wireframeLinewidth=e.wireframeLinewidth,this.wireframeLinecap=e.wireframeLinecap,this.wireframeLinejoin=e.wireframeLinejoin,this.flatShading=e.flatShading,this.fog=e.fog,this}}class Vf extends Di{constructor(e){super(),this.isMeshDepthMaterial=!0,this.type="MeshDepthMaterial",this.depthPacking=Zd,this.map=null,this.alphaMap=null,this.displacementMap=null,this.displacementScale=1,this.displacementBias=0,this.wireframe=!1,this.wireframeLinewidth=1,this.setValues(e)}copy(e){return super.copy(e),this.depthPacking=e.depthPacking,this.map=e.map,this.alphaMap=e.alphaMap,this.displacementMap=e.displacementMap,this.displacementScale=e.displacementScale,this.displacementBias=e.displacementBias,this.wireframe=e.wireframe,this.wireframeLinewidth=e.wireframeLinewidth,this}}class Gf extends Di{constructor(e){super(),this.isMeshDistanceMaterial=!0,this.type="MeshDistanceMaterial",this.map=null,this.alphaMap=null,this.displacementMap=null,this.displacementScale=1,this.displacementBias=0,this.setValues(e)}copy(e){return super.copy(e),this.map=e.map,this.alphaMap=e.alphaMap,this.displacementMap=e.displacementMap,this.displacementScale=e.displacementScale,this.displacementBias=e.displacementBias,this}}class vu extends Lt{constructor(e,t=1){super(),this.isLight=!0,this.type="Light",this.color=new Ke(e),this.intensity=t}dispose(){}copy(e,t){return super.copy(e,t),this.color.copy(e.color),this.intensity=e.intensity,this}toJSON(e){const t=super.toJSON(e);return t.object.color=this.color.getHex(),t.object.intensity=this.intensity,this.groundColor!==void 0&&(t.object.groundColor=this.groundColor.getHex()),this.distance!==void 0&&(t.object.distance=this.distance),this.angle!==void 0&&(t.object.angle=this.angle),this.decay!==void 0&&(t.object.decay=this.decay),this.penumbra!==void 0&&(t.object.penumbra=this.penumbra),this.shadow!==void 0&&(t.object.shadow=this.shadow.toJSON()),this.target!==void 0&&(t.object.target=this.target.uuid),t}}const za=new pt,Cc=new I,Pc=new I;class $f{constructor(e){this.camera=e,this.intensity=1,this.bias=0,this.normalBias=0,this.radius=1,this.blurSamples=8,this.mapSize=new We(512,512),this.mapType=Rn,this.map=null,this.mapPass=null,this.matrix=new pt,this.autoUpdate=!0,this.needsUpdate=!1,this._frustum=new El,this._frameExtents=new We(1,1),this._viewportCount=1,this._viewports=[new St(0,0,1,1)]}getViewportCount(){return this._viewportCount}getFrustum(){return this._frustum}updateMatrices(e){const t=this.camera,n=this.matrix;Cc.setFromMatrixPosition(e.matrixWorld),t.position.copy(Cc),Pc.setFromMatrixPosition(e.target.matrixWorld),t.lookAt(Pc),t.updateMatrixWorld(),za.multiplyMatrices(t.projectionMatrix,t.matrixWorldInverse),this._frustum.setFromProjectionMatrix(za,t.coordinateSystem,t.reversedDepth),t.reversedDepth?n.set(.5,0,0,.5,0,.5,0,.5,0,0,1,0,0,0,0,1):n.set(.5,0,0,.5,0,.5,0,.5,0,0,.5,.5,0,0,0,1),n.multiply(za)}getViewport(e){return this._viewports[e]}getFrameExtents(){return this._frameExtents}dispose(){this.map&&this.map.dispose(),this.mapPass&&this.mapPass.dispose()}copy(e){return this.camera=e.camera.clone(),this.intensity=e.intensity,this.bias=e.bias,this.radius=e.radius,this.autoUpdate=e.autoUpdate,this.needsUpdate=e.needsUpdate,this.normalBias=e.normalBias,this.blurSamples=e.blurSamples,this.mapSize.copy(e.mapSize),this}clone(){return new this.constructor().copy(this)}toJSON(){const e={};return this.intensity!==1&&(e.intensity=this.intensity),this.bias!==0&&(e.bias=this.bias),this.normalBias!==0&&(e.normalBias=this.normalBias),this.radius!==1&&(e.radius=this.radius),(this.mapSize.x!==512||this.mapSize.y!==512)&&(e.mapSize=this.mapSize.toArray()),e.camera=this.camera.toJSON(!1).object,delete e.camera.matrix,e}}class xu extends du{constructor(e=-1,t=1,n=1,s=-1,r=.1,a=2e3){super(),this.isOrthographicCamera=!0,this.type="OrthographicCamera",this.zoom=1,this.view=null,this.left=e,this.right=t,this.top=n,this.bottom=s,this.near=r,this.far=a,this.updateProjectionMatrix()}copy(e,t){return super.copy(e,t),this.left=e.left,this.right=e.right,this.top=e.top,this.bottom=e.bottom,this.near=e.near,this.far=e.far,this.zoom=e.zoom,this.view=e.view===null?null:Object.assign({},e.view),this}setViewOffset(e,t,n,s,r,a){this.view===null&&(this.view={enabled:!0,fullWidth:1,fullHeight:1,offsetX:0,offsetY:0,width:1,height:1}),this.view.enabled=!0,this.view.fullWidth=e,this.view.fullHeight=t,this.view.offsetX=n,this.view.offsetY=s,this.view.width=r,this.view.height=a,this.updateProjectionMatrix()}clearViewOffset(){this.view!==null&&(this.view.enabled=!1),this.updateProjectionMatrix()}updateProjectionMatrix(){const e=(this.right-this.left)/(2*this.zoom),t=(this.top-this.bottom)/(2*this.zoom),n=(this.right+this.left)/2,s=(this.top+this.bottom)/2;let r=n-e,a=n+e,o=s+t,c=s-t;if(this.view!==null&&this.view.enabled){const l=(this.right-this.left)/this.view.fullWidth/this.zoom,h=(this.top-this.bottom)/this.view.fullHeight/this.zoom;r+=l*this.view.offsetX,a=r+l*this.view.width,o-=h*this.view.offsetY,c=o-h*this.view.height}this.projectionMatrix.makeOrthographic(r,a,o,c,this.near,this.far,this.coordinateSystem,this.reversedDepth),this.projectionMatrixInverse.copy(this.projectionMatrix).invert()}toJSON(e){const t=super.toJSON(e);return t.object.zoom=this.zoom,t.object.left=this.left,t.object.right=this.right,t.object.top=this.top,t.object.bottom=this.bottom,t.object.near=this.near,t.object.far=this.far,this.view!==null&&(t.object.view=Object.assign({},this.view)),t}}class Wf extends $f{constructor(){super(new xu(-5,5,5,-5,.5,500)),this.isDirectionalLightShadow=!0}}class qf extends vu{constructor(e,t){super(e,t),this.isDirectionalLight=!0,this.type="DirectionalLight",this.position.copy(Lt.DEFAULT_UP),this.updateMatrix(),this.target=new Lt,this.shadow=new Wf}dispose(){this.shadow.dispose()}copy(e){return super.copy(e),this.target=e.target.clone(),this.shadow=e.shadow.clone(),this}}class Xf extends vu{constructor(e,t){super(e,t),this.isAmbientLight=!0,this.type="AmbientLight"}}class jf extends un{constructor(e=[]){super(),this.isArrayCamera=!0,this.isMultiViewCamera=!1,this.cameras=e}}const Dc=new pt;class Yf{constructor(e,t,n=0,s=1/0){this.ray=new $s(e,t),this.near=n,this.far=s,this.camera=null,this.layers=new Sl,this.params={Mesh:{},Line:{threshold:1},LOD:{},Points:{threshold:1},Sprite:{}}}set(e,t){this.ray.set(e,t)}setFromCamera(e,t){t.isPerspectiveCamera?(this.ray.origin.setFromMatrixPosition(t.matrixWorld),this.ray.direction.set(e.x,e.y,.5).unproject(t).sub(this.ray.origin).normalize(),this.camera=t):t.isOrthographicCamera?(this.ray.origin.set(e.x,e.y,(t.near+t.far)/(t.near-t.far)).unproject(t),this.ray.direction.set(0,0,-1).transformDirection(t.matrixWorld),this.camera=t):console.error("THREE.Raycaster: Unsupported camera type: "+t.type)}setFromXRController(e){return Dc.identity().extractRotation(e.matrixWorld),this.ray.origin.setFromMatrixPosition(e.matrixWorld),this.ray.direction.set(0,0,-1).applyMatrix4(Dc),this}intersectObject(e,t=!0,n=[]){return Jo(e,this,n,t),n.sort(Lc),n}intersectObjects(e,t=!0,n=[]){for(let s=0,r=e.length;s<r;s++)Jo(e[s],this,n,t);return n.sort(Lc),n}}function Lc(i,e){return i.distance-e.distance}function Jo(i,e,t,n){let s=!0;if(i.layers.test(e.layers)&&i.raycast(e,t)===!1&&(s=!1),s===!0&&n===!0){const r=i.children;for(let a=0,o=r.length;a<o;a++)Jo(r[a],e,t,!0)}}class Ic{constructor(e=1,t=0,n=0){this.radius=e,this.phi=t,this.theta=n}set(e,t,n){return this.radius=e,this.phi=t,this.theta=n,this}copy(e){return this.radius=e.radius,this.phi=e.phi,this.theta=e.theta,this}makeSafe(){return this.phi=Qe(this.phi,1e-6,Math.PI-1e-6),this}setFromVector3(e){return this.setFromCartesianCoords(e.x,e.y,e.z)}setFromCartesianCoords(e,t,n){return this.radius=Math.sqrt(e*e+t*t+n*n),this.radius===0?(this.theta=0,this.phi=0):(this.theta=Math.atan2(e,n),this.phi=Math.acos(Qe(t/this.radius,-1,1))),this}clone(){return new this.constructor().copy(this)}}class yu extends Tl{constructor(e=10,t=10,n=4473924,s=8947848){n=new Ke(n),s=new Ke(s);const r=t/2,a=e/t,o=e/2,c=[],l=[];for(let d=0,p=0,_=-o;d<=t;d++,_+=a){c.push(-o,0,_,o,0,_),c.push(_,0,-o,_,0,o);const v=d===r?n:s;v.toArray(l,p),p+=3,v.toArray(l,p),p+=3,v.toArray(l,p),p+=3,v.toArray(l,p),p+=3}const h=new At;h.setAttribute("position",new Et(c,3)),h.setAttribute("color",new Et(l,3));const u=new ci({vertexColors:!0,toneMapped:!1});super(h,u),this.type="GridHelper"}dispose(){this.geometry.dispose(),this.material.dispose()}}const Uc=new I;let wr,Ha;class ks extends Lt{constructor(e=new I(0,0,1),t=new I(0,0,0),n=1,s=16776960,r=n*.2,a=r*.2){super(),this.type="ArrowHelper",wr===void 0&&(wr=new At,wr.setAttribute("position",new Et([0,0,0,0,1,0],3)),Ha=new ta(.5,1,5,1),Ha.translate(0,-.5,0)),this.position.copy(t),this.line=new cs(wr,new ci({color:s,toneMapped:!1})),this.line.matrixAutoUpdate=!1,this.add(this.line),this.cone=new kt(Ha,new Os({color:s,toneMapped:!1})),this.cone.matrixAutoUpdate=!1,this.add(this.cone),this.setDirection(e),this.setLength(n,r,a)}setDirection(e){if(e.y>.99999)this.quaternion.set(0,0,0,1);else if(e.y<-.99999)this.quaternion.set(1,0,0,0);else{Uc.set(e.z,0,-e.x).normalize();const t=Math.acos(e.y);this.quaternion.setFromAxisAngle(Uc,t)}}setLength(e,t=e*.2,n=t*.2){this.line.scale.set(1,Math.max(1e-4,e-t),1),this.line.updateMatrix(),this.cone.scale.set(n,t,n),this.cone.position.y=e,this.cone.updateMatrix()}setColor(e){this.line.material.color.set(e),this.cone.material.color.set(e)}copy(e){return super.copy(e,!1),this.line.copy(e.line),this.cone.copy(e.cone),this}dispose(){this.line.geometry.dispose(),this.line.material.dispose(),this.cone.geometry.dispose(),this.cone.material.dispose()}}class Kf extends Pi{constructor(e,t=null){super(),this.object=e,this.domElement=t,this.enabled=!0,this.state=-1,this.keys={},this.mouseButtons={LEFT:null,MIDDLE:null,RIGHT:null},this.touches={ONE:null,TWO:null}}connect(e){if(e===void 0){console.warn("THREE.Controls: connect() now requires an element.");return}this.domElement!==null&&this.disconnect(),this.domElement=e}disconnect(){}dispose(){}update(){}}function Nc(i,e,t,n){const s=Zf(n);switch(t){case eu:return i*e;case nu:return i*e/s.components*s.byteLength;case yl:return i*e/s.components*s.byteLength;case iu:return i*e*2/s.components*s.byteLength;case wl:return i*e*2/s.components*s.byteLength;case tu:return i*e*3/s.components*s.byteLength;case vn:return i*e*4/s.components*s.byteLength;case bl:return i*e*4/s.components*s.byteLength;case Pr:case Dr:return Math.floor((i+3)/4)*Math.floor((e+3)/4)*8;case Lr:case Ir:return Math.floor((i+3)/4)*Math.floor((e+3)/4)*16;case Mo:case Eo:return Math.max(i,16)*Math.max(e,8)/4;case bo:case So:return Math.max(i,8)*Math.max(e,8)/2;case To:case Ao:return Math.floor((i+3)/4)*Math.floor((e+3)/4)*8;case Ro:return Math.floor((i+3)/4)*Math.floor((e+3)/4)*16;case Co:return Math.floor((i+3)/4)*Math.floor((e+3)/4)*16;case Po:return Math.floor((i+4)/5)*Math.floor((e+3)/4)*16;case Do:return Math.floor((i+4)/5)*Math.floor((e+4)/5)*16;case Lo:return Math.floor((i+5)/6)*Math.floor((e+4)/5)*16;case Io:return Math.floor((i+5)/6)*Math.floor((e+5)/6)*16;case Uo:return Math.floor((i+7)/8)*Math.floor((e+4)/5)*16;case No:return Math.floor((i+7)/8)*Math.floor((e+5)/6)*16;case Fo:return Math.floor((i+7)/8)*Math.floor((e+7)/8)*16;case Oo:return Math.floor((i+9)/10)*Math.floor((e+4)/5)*16;case ko:return Math.floor((i+9)/10)*Math.floor((e+5)/6)*16;case Bo:return Math.floor((i+9)/10)*Math.floor((e+7)/8)*16;case zo:return Math.floor((i+9)/10)*Math.floor((e+9)/10)*16;case Ho:return Math.floor((i+11)/12)*Math.floor((e+9)/10)*16;case Vo:return Math.floor((i+11)/12)*Math.floor((e+11)/12)*16;case Go:case $o:case Wo:return Math.ceil(i/4)*Math.ceil(e/4)*16;case qo:case Xo:return Math.ceil(i/4)*Math.ceil(e/4)*8;case jo:case Yo:return Math.ceil(i/4)*Math.ceil(e/4)*16}throw new Error(`Unable to determine texture byte length for ${t} format.`)}function Zf(i){switch(i){case Rn:case Kh:return{byteLength:1,components:1};case Ls:case Zh:case Hs:return{byteLength:2,components:1};case vl:case xl:return{byteLength:2,components:4};case Ai:case _l:case kn:return{byteLength:4,components:1};case Jh:case Qh:return{byteLength:4,components:3}}throw new Error(`Unknown texture type ${i}.`)}typeof __THREE_DEVTOOLS__<"u"&&__THREE_DEVTOOLS__.dispatchEvent(new CustomEvent("register",{detail:{revision:ml}}));typeof window<"u"&&(window.__THREE__?console.warn("WARNING: Multiple instances of Three.js being imported."):window.__THREE__=ml);/**
 * @license
 * Copyright 2010-2025 Three.js Authors
 * SPDX-License-Identifier: MIT
 */function wu(){let i=null,e=!1,t=null,n=null;function s(r,a){t(r,a),n=i.requestAnimationFrame(s)}return{start:function(){e!==!0&&t!==null&&(n=i.requestAnimationFrame(s),e=!0)},stop:function(){i.cancelAnimationFrame(n),e=!1},setAnimationLoop:function(r){t=r},setContext:function(r){i=r}}}function Jf(i){const e=new WeakMap;function t(o,c){const l=o.array,h=o.usage,u=l.byteLength,d=i.createBuffer();i.bindBuffer(c,d),i.bufferData(c,l,h),o.onUploadCallback();let p;if(l instanceof Float32Array)p=i.FLOAT;else if(typeof Float16Array<"u"&&l instanceof Float16Array)p=i.HALF_FLOAT;else if(l instanceof Uint16Array)o.isFloat16BufferAttribute?p=i.HALF_FLOAT:p=i.UNSIGNED_SHORT;else if(l instanceof Int16Array)p=i.SHORT;else if(l instanceof Uint32Array)p=i.UNSIGNED_INT;else if(l instanceof Int32Array)p=i.INT;else if(l instanceof Int8Array)p=i.BYTE;else if(l instanceof Uint8Array)p=i.UNSIGNED_BYTE;else if(l instanceof Uint8ClampedArray)p=i.UNSIGNED_BYTE;else throw new Error("THREE.WebGLAttributes: Unsupported buffer data format: "+l);return{buffer:d,type:p,bytesPerElement:l.BYTES_PER_ELEMENT,version:o.version,size:u}}function n(o,c,l){const h=c.array,u=c.updateRanges;if(i.bindBuffer(l,o),u.length===0)i.bufferSubData(l,0,h);else{u.sort((p,_)=>p.start-_.start);let d=0;for(let p=1;p<u.length;p++){const _=u[d],v=u[p];v.start<=_.start+_.count+1?_.count=Math.max(_.count,v.start+v.count-_.start):(++d,u[d]=v)}u.length=d+1;for(let p=0,_=u.length;p<_;p++){const v=u[p];i.bufferSubData(l,v.start*h.BYTES_PER_ELEMENT,h,v.start,v.count)}c.clearUpdateRanges()}c.onUploadCallback()}function s(o){return o.isInterleavedBufferAttribute&&(o=o.data),e.get(o)}function r(o){o.isInterleavedBufferAttribute&&(o=o.data);const c=e.get(o);c&&(i.deleteBuffer(c.buffer),e.delete(o))}function a(o,c){if(o.isInterleavedBufferAttribute&&(o=o.data),o.isGLBufferAttribute){const h=e.get(o);(!h||h.version<o.version)&&e.set(o,{buffer:o.buffer,type:o.type,bytesPerElement:o.elementSize,version:o.version});return}const l=e.get(o);if(l===void 0)e.set(o,t(o,c));else if(l.version<o.version){if(l.size!==o.array.byteLength)throw new Error("THREE.WebGLAttributes: The size of the buffer attribute's array buffer does not match the original size. Resizing buffer attributes is not supported.");n(l.buffer,o,c),l.version=o.version}}return{get:s,remove:r,update:a}}var Qf=`#ifdef USE_ALPHAHASH
	if ( diffuseColor.a < getAlphaHashThreshold( vPosition ) ) discard;
#endif`,ep=`#ifdef USE_ALPHAHASH
	const float ALPHA_HASH_SCALE = 0.05;
	float hash2D( vec2 value ) {
		return fract( 1.0e4 * sin( 17.0 * value.x + 0.1 * value.y ) * ( 0.1 + abs( sin( 13.0 * value.y + value.x ) ) ) );
	}
	float hash3D( vec3 value ) {
		return hash2D( vec2( hash2D( value.xy ), value.z ) );
	}
	float getAlphaHashThreshold( vec3 position ) {
		float maxDeriv = max(
			length( dFdx( position.xyz ) ),
			length( dFdy( position.xyz ) )
		);
		float pixScale = 1.0 / ( ALPHA_HASH_SCALE * maxDeriv );
		vec2 pixScales = vec2(
			exp2( floor( log2( pixScale ) ) ),
			exp2( ceil( log2( pixScale ) ) )
		);
		vec2 alpha = vec2(
			hash3D( floor( pixScales.x * position.xyz ) ),
			hash3D( floor( pixScales.y * position.xyz ) )
		);
		float lerpFactor = fract( log2( pixScale ) );
		float x = ( 1.0 - lerpFactor ) * alpha.x + lerpFactor * alpha.y;
		float a = min( lerpFactor, 1.0 - lerpFactor );
		vec3 cases = vec3(
			x * x / ( 2.0 * a * ( 1.0 - a ) ),
			( x - 0.5 * a ) / ( 1.0 - a ),
			1.0 - ( ( 1.0 - x ) * ( 1.0 - x ) / ( 2.0 * a * ( 1.0 - a ) ) )
		);
		float threshold = ( x < ( 1.0 - a ) )
			? ( ( x < a ) ? cases.x : cases.y )
			: cases.z;
		return clamp( threshold , 1.0e-6, 1.0 );
	}
#endif`,tp=`#ifdef USE_ALPHAMAP
	diffuseColor.a *= texture2D( alphaMap, vAlphaMapUv ).g;
#endif`,np=`#ifdef USE_ALPHAMAP
	uniform sampler2D alphaMap;
#endif`,ip=`#ifdef USE_ALPHATEST
	#ifdef ALPHA_TO_COVERAGE
	diffuseColor.a = smoothstep( alphaTest, alphaTest + fwidth( diffuseColor.a ), diffuseColor.a );
	if ( diffuseColor.a == 0.0 ) discard;
	#else
	if ( diffuseColor.a < alphaTest ) discard;
	#endif
#endif`,sp=`#ifdef USE_ALPHATEST
	uniform float alphaTest;
#endif`,rp=`#ifdef USE_AOMAP
	float ambientOcclusion = ( texture2D( aoMap, vAoMapUv ).r - 1.0 ) * aoMapIntensity + 1.0;
	reflectedLight.indirectDiffuse *= ambientOcclusion;
	#if defined( USE_CLEARCOAT ) 
		clearcoatSpecularIndirect *= ambientOcclusion;
	#endif
	#if defined( USE_SHEEN ) 
		sheenSpecularIndirect *= ambientOcclusion;
	#endif
	#if defined( USE_ENVMAP ) && defined( STANDARD )
		float dotNV = saturate( dot( geometryNormal, geometryViewDir ) );
		reflectedLight.indirectSpecular *= computeSpecularOcclusion( dotNV, ambientOcclusion, material.roughness );
	#endif
#endif`,ap=`#ifdef USE_AOMAP
	uniform sampler2D aoMap;
	uniform float aoMapIntensity;
#endif`,op=`#ifdef USE_BATCHING
	#if ! defined( GL_ANGLE_multi_draw )
	#define gl_DrawID _gl_DrawID
	uniform int _gl_DrawID;
	#endif
	uniform highp sampler2D batchingTexture;
	uniform highp usampler2D batchingIdTexture;
	mat4 getBatchingMatrix( const in float i ) {
		int size = textureSize( batchingTexture, 0 ).x;
		int j = int( i ) * 4;
		int x = j % size;
		int y = j / size;
		vec4 v1 = texelFetch( batchingTexture, ivec2( x, y ), 0 );
		vec4 v2 = texelFetch( batchingTexture, ivec2( x + 1, y ), 0 );
		vec4 v3 = texelFetch( batchingTexture, ivec2( x + 2, y ), 0 );
		vec4 v4 = texelFetch( batchingTexture, ivec2( x + 3, y ), 0 );
		return mat4( v1, v2, v3, v4 );
	}
	float getIndirectIndex( const in int i ) {
		int size = textureSize( batchingIdTexture, 0 ).x;
		int x = i % size;
		int y = i / size;
		return float( texelFetch( batchingIdTexture, ivec2( x, y ), 0 ).r );
	}
#endif
#ifdef USE_BATCHING_COLOR
	uniform sampler2D batchingColorTexture;
	vec3 getBatchingColor( const in float i ) {
		int size = textureSize( batchingColorTexture, 0 ).x;
		int j = int( i );
		int x = j % size;
		int y = j / size;
		return texelFetch( batchingColorTexture, ivec2( x, y ), 0 ).rgb;
	}
#endif`,lp=`#ifdef USE_BATCHING
	mat4 batchingMatrix = getBatchingMatrix( getIndirectIndex( gl_DrawID ) );
#endif`,cp=`vec3 transformed = vec3( position );
#ifdef USE_ALPHAHASH
	vPosition = vec3( position );
#endif`,hp=`vec3 objectNormal = vec3( normal );
#ifdef USE_TANGENT
	vec3 objectTangent = vec3( tangent.xyz );
#endif`,up=`float G_BlinnPhong_Implicit( ) {
	return 0.25;
}
float D_BlinnPhong( const in float shininess, const in float dotNH ) {
	return RECIPROCAL_PI * ( shininess * 0.5 + 1.0 ) * pow( dotNH, shininess );
}
vec3 BRDF_BlinnPhong( const in vec3 lightDir, const in vec3 viewDir, const in vec3 normal, const in vec3 specularColor, const in float shininess ) {
	vec3 halfDir = normalize( lightDir + viewDir );
	float dotNH = saturate( dot( normal, halfDir ) );
	float dotVH = saturate( dot( viewDir, halfDir ) );
	vec3 F = F_Schlick( specularColor, 1.0, dotVH );
	float G = G_BlinnPhong_Implicit( );
	float D = D_BlinnPhong( shininess, dotNH );
	return F * ( G * D );
} // validated`,dp=`#ifdef USE_IRIDESCENCE
	const mat3 XYZ_TO_REC709 = mat3(
		 3.2404542, -0.9692660,  0.0556434,
		-1.5371385,  1.8760108, -0.2040259,
		-0.4985314,  0.0415560,  1.0572252
	);
	vec3 Fresnel0ToIor( vec3 fresnel0 ) {
		vec3 sqrtF0 = sqrt( fresnel0 );
		return ( vec3( 1.0 ) + sqrtF0 ) / ( vec3( 1.0 ) - sqrtF0 );
	}
	vec3 IorToFresnel0( vec3 transmittedIor, float incidentIor ) {
		return pow2( ( transmittedIor - vec3( incidentIor ) ) / ( transmittedIor + vec3( incidentIor ) ) );
	}
	float IorToFresnel0( float transmittedIor, float incidentIor ) {
		return pow2( ( transmittedIor - incidentIor ) / ( transmittedIor + incidentIor ));
	}
	vec3 evalSensitivity( float OPD, vec3 shift ) {
		float phase = 2.0 * PI * OPD * 1.0e-9;
		vec3 val = vec3( 5.4856e-13, 4.4201e-13, 5.2481e-13 );
		vec3 pos = vec3( 1.6810e+06, 1.7953e+06, 2.2084e+06 );
		vec3 var = vec3( 4.3278e+09, 9.3046e+09, 6.6121e+09 );
		vec3 xyz = val * sqrt( 2.0 * PI * var ) * cos( pos * phase + shift ) * exp( - pow2( phase ) * var );
		xyz.x += 9.7470e-14 * sqrt( 2.0 * PI * 4.5282e+09 ) * cos( 2.2399e+06 * phase + shift[ 0 ] ) * exp( - 4.5282e+09 * pow2( phase ) );
		xyz /= 1.0685e-7;
		vec3 rgb = XYZ_TO_REC709 * xyz;
		return rgb;
	}
	vec3 evalIridescence( float outsideIOR, float eta2, float cosTheta1, float thinFilmThickness, vec3 baseF0 ) {
		vec3 I;
		float iridescenceIOR = mix( outsideIOR, eta2, smoothstep( 0.0, 0.03, thinFilmThickness ) );
		float sinTheta2Sq = pow2( outsideIOR / iridescenceIOR ) * ( 1.0 - pow2( cosTheta1 ) );
		float cosTheta2Sq = 1.0 - sinTheta2Sq;
		if ( cosTheta2Sq < 0.0 ) {
			return vec3( 1.0 );
		}
		float cosTheta2 = sqrt( cosTheta2Sq );
		float R0 = IorToFresnel0( iridescenceIOR, outsideIOR );
		float R12 = F_Schlick( R0, 1.0, cosTheta1 );
		float T121 = 1.0 - R12;
		float phi12 = 0.0;
		if ( iridescenceIOR < outsideIOR ) phi12 = PI;
		float phi21 = PI - phi12;
		vec3 baseIOR = Fresnel0ToIor( clamp( baseF0, 0.0, 0.9999 ) );		vec3 R1 = IorToFresnel0( baseIOR, iridescenceIOR );
		vec3 R23 = F_Schlick( R1, 1.0, cosTheta2 );
		vec3 phi23 = vec3( 0.0 );
		if ( baseIOR[ 0 ] < iridescenceIOR ) phi23[ 0 ] = PI;
		if ( baseIOR[ 1 ] < iridescenceIOR ) phi23[ 1 ] = PI;
		if ( baseIOR[ 2 ] < iridescenceIOR ) phi23[ 2 ] = PI;
		float OPD = 2.0 * iridescenceIOR * thinFilmThickness * cosTheta2;
		vec3 phi = vec3( phi21 ) + phi23;
		vec3 R123 = clamp( R12 * R23, 1e-5, 0.9999 );
		vec3 r123 = sqrt( R123 );
		vec3 Rs = pow2( T121 ) * R23 / ( vec3( 1.0 ) - R123 );
		vec3 C0 = R12 + Rs;
		I = C0;
		vec3 Cm = Rs - T121;
		for ( int m = 1; m <= 2; ++ m ) {
			Cm *= r123;
			vec3 Sm = 2.0 * evalSensitivity( float( m ) * OPD, float( m ) * phi );
			I += Cm * Sm;
		}
		return max( I, vec3( 0.0 ) );
	}
#endif`,fp=`#ifdef USE_BUMPMAP
	uniform sampler2D bumpMap;
	uniform float bumpScale;
	vec2 dHdxy_fwd() {
		vec2 dSTdx = dFdx( vBumpMapUv );
		vec2 dSTdy = dFdy( vBumpMapUv );
		float Hll = bumpScale * texture2D( bumpMap, vBumpMapUv ).x;
		float dBx = bumpScale * texture2D( bumpMap, vBumpMapUv + dSTdx ).x - Hll;
		float dBy = bumpScale * texture2D( bumpMap, vBumpMapUv + dSTdy ).x - Hll;
		return vec2( dBx, dBy );
	}
	vec3 perturbNormalArb( vec3 surf_pos, vec3 surf_norm, vec2 dHdxy, float faceDirection ) {
		vec3 vSigmaX = normalize( dFdx( surf_pos.xyz ) );
		vec3 vSigmaY = normalize( dFdy( surf_pos.xyz ) );
		vec3 vN = surf_norm;
		vec3 R1 = cross( vSigmaY, vN );
		vec3 R2 = cross( vN, vSigmaX );
		float fDet = dot( vSigmaX, R1 ) * faceDirection;
		vec3 vGrad = sign( fDet ) * ( dHdxy.x * R1 + dHdxy.y * R2 );
		return normalize( abs( fDet ) * surf_norm - vGrad );
	}
#endif`,pp=`#if NUM_CLIPPING_PLANES > 0
	vec4 plane;
	#ifdef ALPHA_TO_COVERAGE
		float distanceToPlane, distanceGradient;
		float clipOpacity = 1.0;
		#pragma unroll_loop_start
		for ( int i = 0; i < UNION_CLIPPING_PLANES; i ++ ) {
			plane = clippingPlanes[ i ];
			distanceToPlane = - dot( vClipPosition, plane.xyz ) + plane.w;
			distanceGradient = fwidth( distanceToPlane ) / 2.0;
			clipOpacity *= smoothstep( - distanceGradient, distanceGradient, distanceToPlane );
			if ( clipOpacity == 0.0 ) discard;
		}
		#pragma unroll_loop_end
		#if UNION_CLIPPING_PLANES < NUM_CLIPPING_PLANES
			float unionClipOpacity = 1.0;
			#pragma unroll_loop_start
			for ( int i = UNION_CLIPPING_PLANES; i < NUM_CLIPPING_PLANES; i ++ ) {
				plane = clippingPlanes[ i ];
				distanceToPlane = - dot( vClipPosition, plane.xyz ) + plane.w;
				distanceGradient = fwidth( distanceToPlane ) / 2.0;
				unionClipOpacity *= 1.0 - smoothstep( - distanceGradient, distanceGradient, distanceToPlane );
			}
			#pragma unroll_loop_end
			clipOpacity *= 1.0 - unionClipOpacity;
		#endif
		diffuseColor.a *= clipOpacity;
		if ( diffuseColor.a == 0.0 ) discard;
	#else
		#pragma unroll_loop_start
		for ( int i = 0; i < UNION_CLIPPING_PLANES; i ++ ) {
			plane = clippingPlanes[ i ];
			if ( dot( vClipPosition, plane.xyz ) > plane.w ) discard;
		}
		#pragma unroll_loop_end
		#if UNION_CLIPPING_PLANES < NUM_CLIPPING_PLANES
			bool clipped = true;
			#pragma unroll_loop_start
			for ( int i = UNION_CLIPPING_PLANES; i < NUM_CLIPPING_PLANES; i ++ ) {
				plane = clippingPlanes[ i ];
				clipped = ( dot( vClipPosition, plane.xyz ) > plane.w ) && clipped;
			}
			#pragma unroll_loop_end
			if ( clipped ) discard;
		#endif
	#endif
#endif`,mp=`#if NUM_CLIPPING_PLANES > 0
	varying vec3 vClipPosition;
	uniform vec4 clippingPlanes[ NUM_CLIPPING_PLANES ];
#endif`,gp=`#if NUM_CLIPPING_PLANES > 0
	varying vec3 vClipPosition;
#endif`,_p=`#if NUM_CLIPPING_PLANES > 0
	vClipPosition = - mvPosition.xyz;
#endif`,vp=`#if defined( USE_COLOR_ALPHA )
	diffuseColor *= vColor;
#elif defined( USE_COLOR )
	diffuseColor.rgb *= vColor;
#endif`,xp=`#if defined( USE_COLOR_ALPHA )
	varying vec4 vColor;
#elif defined( USE_COLOR )
	varying vec3 vColor;
#endif`,yp=`#if defined( USE_COLOR_ALPHA )
	varying vec4 vColor;
#elif defined( USE_COLOR ) || defined( USE_INSTANCING_COLOR ) || defined( USE_BATCHING_COLOR )
	varying vec3 vColor;
#endif`,wp=`#if defined( USE_COLOR_ALPHA )
	vColor = vec4( 1.0 );
#elif defined( USE_COLOR ) || defined( USE_INSTANCING_COLOR ) || defined( USE_BATCHING_COLOR )
	vColor = vec3( 1.0 );
#endif
#ifdef USE_COLOR
	vColor *= color;
#endif
#ifdef USE_INSTANCING_COLOR
	vColor.xyz *= instanceColor.xyz;
#endif
#ifdef USE_BATCHING_COLOR
	vec3 batchingColor = getBatchingColor( getIndirectIndex( gl_DrawID ) );
	vColor.xyz *= batchingColor.xyz;
#endif`,bp=`#define PI 3.141592653589793
#define PI2 6.283185307179586
#define PI_HALF 1.5707963267948966
#define RECIPROCAL_PI 0.3183098861837907
#define RECIPROCAL_PI2 0.15915494309189535
#define EPSILON 1e-6
#ifndef saturate
#define saturate( a ) clamp( a, 0.0, 1.0 )
#endif
#define whiteComplement( a ) ( 1.0 - saturate( a ) )
float pow2( const in float x ) { return x*x; }
vec3 pow2( const in vec3 x ) { return x*x; }
float pow3( const in float x ) { return x*x*x; }
float pow4( const in float x ) { float x2 = x*x; return x2*x2; }
float max3( const in vec3 v ) { return max( max( v.x, v.y ), v.z ); }
float average( const in vec3 v ) { return dot( v, vec3( 0.3333333 ) ); }
highp float rand( const in vec2 uv ) {
	const highp float a = 12.9898, b = 78.233, c = 43758.5453;
	highp float dt = dot( uv.xy, vec2( a,b ) ), sn = mod( dt, PI );
	return fract( sin( sn ) * c );
}
#ifdef HIGH_PRECISION
	float precisionSafeLength( vec3 v ) { return length( v ); }
#else
	float precisionSafeLength( vec3 v ) {
		float maxComponent = max3( abs( v ) );
		return length( v / maxComponent ) * maxComponent;
	}
#endif
struct IncidentLight {
	vec3 color;
	vec3 direction;
	bool visible;
};
struct ReflectedLight {
	vec3 directDiffuse;
	vec3 directSpecular;
	vec3 indirectDiffuse;
	vec3 indirectSpecular;
};
#ifdef USE_ALPHAHASH
	varying vec3 vPosition;
#endif
vec3 transformDirection( in vec3 dir, in mat4 matrix ) {
	return normalize( ( matrix * vec4( dir, 0.0 ) ).xyz );
}
vec3 inverseTransformDirection( in vec3 dir, in mat4 matrix ) {
	return normalize( ( vec4( dir, 0.0 ) * matrix ).xyz );
}
mat3 transposeMat3( const in mat3 m ) {
	mat3 tmp;
	tmp[ 0 ] = vec3( m[ 0 ].x, m[ 1 ].x, m[ 2 ].x );
	tmp[ 1 ] = vec3( m[ 0 ].y, m[ 1 ].y, m[ 2 ].y );
	tmp[ 2 ] = vec3( m[ 0 ].z, m[ 1 ].z, m[ 2 ].z );
	return tmp;
}
bool isPerspectiveMatrix( mat4 m ) {
	return m[ 2 ][ 3 ] == - 1.0;
}
vec2 equirectUv( in vec3 dir ) {
	float u = atan( dir.z, dir.x ) * RECIPROCAL_PI2 + 0.5;
	float v = asin( clamp( dir.y, - 1.0, 1.0 ) ) * RECIPROCAL_PI + 0.5;
	return vec2( u, v );
}
vec3 BRDF_Lambert( const in vec3 diffuseColor ) {
	return RECIPROCAL_PI * diffuseColor;
}
vec3 F_Schlick( const in vec3 f0, const in float f90, const in float dotVH ) {
	float fresnel = exp2( ( - 5.55473 * dotVH - 6.98316 ) * dotVH );
	return f0 * ( 1.0 - fresnel ) + ( f90 * fresnel );
}
float F_Schlick( const in float f0, const in float f90, const in float dotVH ) {
	float fresnel = exp2( ( - 5.55473 * dotVH - 6.98316 ) * dotVH );
	return f0 * ( 1.0 - fresnel ) + ( f90 * fresnel );
} // validated`,Mp=`#ifdef ENVMAP_TYPE_CUBE_UV
	#define cubeUV_minMipLevel 4.0
	#define cubeUV_minTileSize 16.0
	float getFace( vec3 direction ) {
		vec3 absDirection = abs( direction );
		float face = - 1.0;
		if ( absDirection.x > absDirection.z ) {
			if ( absDirection.x > absDirection.y )
				face = direction.x > 0.0 ? 0.0 : 3.0;
			else
				face = direction.y > 0.0 ? 1.0 : 4.0;
		} else {
			if ( absDirection.z > absDirection.y )
				face = direction.z > 0.0 ? 2.0 : 5.0;
			else
				face = direction.y > 0.0 ? 1.0 : 4.0;
		}
		return face;
	}
	vec2 getUV( vec3 direction, float face ) {
		vec2 uv;
		if ( face == 0.0 ) {
			uv = vec2( direction.z, direction.y ) / abs( direction.x );
		} else if ( face == 1.0 ) {
			uv = vec2( - direction.x, - direction.z ) / abs( direction.y );
		} else if ( face == 2.0 ) {
			uv = vec2( - direction.x, direction.y ) / abs( direction.z );
		} else if ( face == 3.0 ) {
			uv = vec2( - direction.z, direction.y ) / abs( direction.x );
		} else if ( face == 4.0 ) {
			uv = vec2( - direction.x, direction.z ) / abs( direction.y );
		} else {
			uv = vec2( direction.x, direction.y ) / abs( direction.z );
		}
		return 0.5 * ( uv + 1.0 );
	}
	vec3 bilinearCubeUV( sampler2D envMap, vec3 direction, float mipInt ) {
		float face = getFace( direction );
		float filterInt = max( cubeUV_minMipLevel - mipInt, 0.0 );
		mipInt = max( mipInt, cubeUV_minMipLevel );
		float faceSize = exp2( mipInt );
		highp vec2 uv = getUV( direction, face ) * ( faceSize - 2.0 ) + 1.0;
		if ( face > 2.0 ) {
			uv.y += faceSize;
			face -= 3.0;
		}
		uv.x += face * faceSize;
		uv.x += filterInt * 3.0 * cubeUV_minTileSize;
		uv.y += 4.0 * ( exp2( CUBEUV_MAX_MIP ) - faceSize );
		uv.x *= CUBEUV_TEXEL_WIDTH;
		uv.y *= CUBEUV_TEXEL_HEIGHT;
		#ifdef texture2DGradEXT
			return texture2DGradEXT( envMap, uv, vec2( 0.0 ), vec2( 0.0 ) ).rgb;
		#else
			return texture2D( envMap, uv ).rgb;
		#endif
	}
	#define cubeUV_r0 1.0
	#define cubeUV_m0 - 2.0
	#define cubeUV_r1 0.8
	#define cubeUV_m1 - 1.0
	#define cubeUV_r4 0.4
	#define cubeUV_m4 2.0
	#define cubeUV_r5 0.305
	#define cubeUV_m5 3.0
	#define cubeUV_r6 0.21
	#define cubeUV_m6 4.0
	float roughnessToMip( float roughness ) {
		float mip = 0.0;
		if ( roughness >= cubeUV_r1 ) {
			mip = ( cubeUV_r0 - roughness ) * ( cubeUV_m1 - cubeUV_m0 ) / ( cubeUV_r0 - cubeUV_r1 ) + cubeUV_m0;
		} else if ( roughness >= cubeUV_r4 ) {
			mip = ( cubeUV_r1 - roughness ) * ( cubeUV_m4 - cubeUV_m1 ) / ( cubeUV_r1 - cubeUV_r4 ) + cubeUV_m1;
		} else if ( roughness >= cubeUV_r5 ) {
			mip = ( cubeUV_r4 - roughness ) * ( cubeUV_m5 - cubeUV_m4 ) / ( cubeUV_r4 - cubeUV_r5 ) + cubeUV_m4;
		} else if ( roughness >= cubeUV_r6 ) {
			mip = ( cubeUV_r5 - roughness ) * ( cubeUV_m6 - cubeUV_m5 ) / ( cubeUV_r5 - cubeUV_r6 ) + cubeUV_m5;
		} else {
			mip = - 2.0 * log2( 1.16 * roughness );		}
		return mip;
	}
	vec4 textureCubeUV( sampler2D envMap, vec3 sampleDir, float roughness ) {
		float mip = clamp( roughnessToMip( roughness ), cubeUV_m0, CUBEUV_MAX_MIP );
		float mipF = fract( mip );
		float mipInt = floor( mip );
		vec3 color0 = bilinearCubeUV( envMap, sampleDir, mipInt );
		if ( mipF == 0.0 ) {
			return vec4( color0, 1.0 );
		} else {
			vec3 color1 = bilinearCubeUV( envMap, sampleDir, mipInt + 1.0 );
			return vec4( mix( color0, color1, mipF ), 1.0 );
		}
	}
#endif`,Sp=`vec3 transformedNormal = objectNormal;
#ifdef USE_TANGENT
	vec3 transformedTangent = objectTangent;
#endif
#ifdef USE_BATCHING
	mat3 bm = mat3( batchingMatrix );
	transformedNormal /= vec3( dot( bm[ 0 ], bm[ 0 ] ), dot( bm[ 1 ], bm[ 1 ] ), dot( bm[ 2 ], bm[ 2 ] ) );
	transformedNormal = bm * transformedNormal;
	#ifdef USE_TANGENT
		transformedTangent = bm * transformedTangent;
	#endif
#endif
#ifdef USE_INSTANCING
	mat3 im = mat3( instanceMatrix );
	transformedNormal /= vec3( dot( im[ 0 ], im[ 0 ] ), dot( im[ 1 ], im[ 1 ] ), dot( im[ 2 ], im[ 2 ] ) );
	transformedNormal = im * transformedNormal;
	#ifdef USE_TANGENT
		transformedTangent = im * transformedTangent;
	#endif
#endif
transformedNormal = normalMatrix * transformedNormal;
#ifdef FLIP_SIDED
	transformedNormal = - transformedNormal;
#endif
#ifdef USE_TANGENT
	transformedTangent = ( modelViewMatrix * vec4( transformedTangent, 0.0 ) ).xyz;
	#ifdef FLIP_SIDED
		transformedTangent = - transformedTangent;
	#endif
#endif`,Ep=`#ifdef USE_DISPLACEMENTMAP
	uniform sampler2D displacementMap;
	uniform float displacementScale;
	uniform float displacementBias;
#endif`,Tp=`#ifdef USE_DISPLACEMENTMAP
	transformed += normalize( objectNormal ) * ( texture2D( displacementMap, vDisplacementMapUv ).x * displacementScale + displacementBias );
#endif`,Ap=`#ifdef USE_EMISSIVEMAP
	vec4 emissiveColor = texture2D( emissiveMap, vEmissiveMapUv );
	#ifdef DECODE_VIDEO_TEXTURE_EMISSIVE
		emissiveColor = sRGBTransferEOTF( emissiveColor );
	#endif
	totalEmissiveRadiance *= emissiveColor.rgb;
#endif`,Rp=`#ifdef USE_EMISSIVEMAP
	uniform sampler2D emissiveMap;
#endif`,Cp="gl_FragColor = linearToOutputTexel( gl_FragColor );",Pp=`vec4 LinearTransferOETF( in vec4 value ) {
	return value;
}
vec4 sRGBTransferEOTF( in vec4 value ) {
	return vec4( mix( pow( value.rgb * 0.9478672986 + vec3( 0.0521327014 ), vec3( 2.4 ) ), value.rgb * 0.0773993808, vec3( lessThanEqual( value.rgb, vec3( 0.04045 ) ) ) ), value.a );
}
vec4 sRGBTransferOETF( in vec4 value ) {
	return vec4( mix( pow( value.rgb, vec3( 0.41666 ) ) * 1.055 - vec3( 0.055 ), value.rgb * 12.92, vec3( lessThanEqual( value.rgb, vec3( 0.0031308 ) ) ) ), value.a );
}`,Dp=`#ifdef USE_ENVMAP
	#ifdef ENV_WORLDPOS
		vec3 cameraToFrag;
		if ( isOrthographic ) {
			cameraToFrag = normalize( vec3( - viewMatrix[ 0 ][ 2 ], - viewMatrix[ 1 ][ 2 ], - viewMatrix[ 2 ][ 2 ] ) );
		} else {
			cameraToFrag = normalize( vWorldPosition - cameraPosition );
		}
		vec3 worldNormal = inverseTransformDirection( normal, viewMatrix );
		#ifdef ENVMAP_MODE_REFLECTION
			vec3 reflectVec = reflect( cameraToFrag, worldNormal );
		#else
			vec3 reflectVec = refract( cameraToFrag, worldNormal, refractionRatio );
		#endif
	#else
		vec3 reflectVec = vReflect;
	#endif
	#ifdef ENVMAP_TYPE_CUBE
		vec4 envColor = textureCube( envMap, envMapRotation * vec3( flipEnvMap * reflectVec.x, reflectVec.yz ) );
	#else
		vec4 envColor = vec4( 0.0 );
	#endif
	#ifdef ENVMAP_BLENDING_MULTIPLY
		outgoingLight = mix( outgoingLight, outgoingLight * envColor.xyz, specularStrength * reflectivity );
	#elif defined( ENVMAP_BLENDING_MIX )
		outgoingLight = mix( outgoingLight, envColor.xyz, specularStrength * reflectivity );
	#elif defined( ENVMAP_BLENDING_ADD )
		outgoingLight += envColor.xyz * specularStrength * reflectivity;
	#endif
#endif`,Lp=`#ifdef USE_ENVMAP
	uniform float envMapIntensity;
	uniform float flipEnvMap;
	uniform mat3 envMapRotation;
	#ifdef ENVMAP_TYPE_CUBE
		uniform samplerCube envMap;
	#else
		uniform sampler2D envMap;
	#endif
	
#endif`,Ip=`#ifdef USE_ENVMAP
	uniform float reflectivity;
	#if defined( USE_BUMPMAP ) || defined( USE_NORMALMAP ) || defined( PHONG ) || defined( LAMBERT )
		#define ENV_WORLDPOS
	#endif
	#ifdef ENV_WORLDPOS
		varying vec3 vWorldPosition;
		uniform float refractionRatio;
	#else
		varying vec3 vReflect;
	#endif
#endif`,Up=`#ifdef USE_ENVMAP
	#if defined( USE_BUMPMAP ) || defined( USE_NORMALMAP ) || defined( PHONG ) || defined( LAMBERT )
		#define ENV_WORLDPOS
	#endif
	#ifdef ENV_WORLDPOS
		
		varying vec3 vWorldPosition;
	#else
		varying vec3 vReflect;
		uniform float refractionRatio;
	#endif
#endif`,Np=`#ifdef USE_ENVMAP
	#ifdef ENV_WORLDPOS
		vWorldPosition = worldPosition.xyz;
	#else
		vec3 cameraToVertex;
		if ( isOrthographic ) {
			cameraToVertex = normalize( vec3( - viewMatrix[ 0 ][ 2 ], - viewMatrix[ 1 ][ 2 ], - viewMatrix[ 2 ][ 2 ] ) );
		} else {
			cameraToVertex = normalize( worldPosition.xyz - cameraPosition );
		}
		vec3 worldNormal = inverseTransformDirection( transformedNormal, viewMatrix );
		#ifdef ENVMAP_MODE_REFLECTION
			vReflect = reflect( cameraToVertex, worldNormal );
		#else
			vReflect = refract( cameraToVertex, worldNormal, refractionRatio );
		#endif
	#endif
#endif`,Fp=`#ifdef USE_FOG
	vFogDepth = - mvPosition.z;
#endif`,Op=`#ifdef USE_FOG
	varying float vFogDepth;
#endif`,kp=`#ifdef USE_FOG
	#ifdef FOG_EXP2
		float fogFactor = 1.0 - exp( - fogDensity * fogDensity * vFogDepth * vFogDepth );
	#else
		float fogFactor = smoothstep( fogNear, fogFar, vFogDepth );
	#endif
	gl_FragColor.rgb = mix( gl_FragColor.rgb, fogColor, fogFactor );
#endif`,Bp=`#ifdef USE_FOG
	uniform vec3 fogColor;
	varying float vFogDepth;
	#ifdef FOG_EXP2
		uniform float fogDensity;
	#else
		uniform float fogNear;
		uniform float fogFar;
	#endif
#endif`,zp=`#ifdef USE_GRADIENTMAP
	uniform sampler2D gradientMap;
#endif
vec3 getGradientIrradiance( vec3 normal, vec3 lightDirection ) {
	float dotNL = dot( normal, lightDirection );
	vec2 coord = vec2( dotNL * 0.5 + 0.5, 0.0 );
	#ifdef USE_GRADIENTMAP
		return vec3( texture2D( gradientMap, coord ).r );
	#else
		vec2 fw = fwidth( coord ) * 0.5;
		return mix( vec3( 0.7 ), vec3( 1.0 ), smoothstep( 0.7 - fw.x, 0.7 + fw.x, coord.x ) );
	#endif
}`,Hp=`#ifdef USE_LIGHTMAP
	uniform sampler2D lightMap;
	uniform float lightMapIntensity;
#endif`,Vp=`LambertMaterial material;
material.diffuseColor = diffuseColor.rgb;
material.specularStrength = specularStrength;`,Gp=`varying vec3 vViewPosition;
struct LambertMaterial {
	vec3 diffuseColor;
	float specularStrength;
};
void RE_Direct_Lambert( const in IncidentLight directLight, const in vec3 geometryPosition, const in vec3 geometryNormal, const in vec3 geometryViewDir, const in vec3 geometryClearcoatNormal, const in LambertMaterial material, inout ReflectedLight reflectedLight ) {
	float dotNL = saturate( dot( geometryNormal, directLight.direction ) );
	vec3 irradiance = dotNL * directLight.color;
	reflectedLight.directDiffuse += irradiance * BRDF_Lambert( material.diffuseColor );
}
void RE_IndirectDiffuse_Lambert( const in vec3 irradiance, const in vec3 geometryPosition, const in vec3 geometryNormal, const in vec3 geometryViewDir, const in vec3 geometryClearcoatNormal, const in LambertMaterial material, inout ReflectedLight reflectedLight ) {
	reflectedLight.indirectDiffuse += irradiance * BRDF_Lambert( material.diffuseColor );
}
#define RE_Direct				RE_Direct_Lambert
#define RE_IndirectDiffuse		RE_IndirectDiffuse_Lambert`,$p=`uniform bool receiveShadow;
uniform vec3 ambientLightColor;
#if defined( USE_LIGHT_PROBES )
	uniform vec3 lightProbe[ 9 ];
#endif
vec3 shGetIrradianceAt( in vec3 normal, in vec3 shCoefficients[ 9 ] ) {
	float x = normal.x, y = normal.y, z = normal.z;
	vec3 result = shCoefficients[ 0 ] * 0.886227;
	result += shCoefficients[ 1 ] * 2.0 * 0.511664 * y;
	result += shCoefficients[ 2 ] * 2.0 * 0.511664 * z;
	result += shCoefficients[ 3 ] * 2.0 * 0.511664 * x;
	result += shCoefficients[ 4 ] * 2.0 * 0.429043 * x * y;
	result += shCoefficients[ 5 ] * 2.0 * 0.429043 * y * z;
	result += shCoefficients[ 6 ] * ( 0.743125 * z * z - 0.247708 );
	result += shCoefficients[ 7 ] * 2.0 * 0.429043 * x * z;
	result += shCoefficients[ 8 ] * 0.429043 * ( x * x - y * y );
	return result;
}
vec3 getLightProbeIrradiance( const in vec3 lightProbe[ 9 ], const in vec3 normal ) {
	vec3 worldNormal = inverseTransformDirection( normal, viewMatrix );
	vec3 irradiance = shGetIrradianceAt( worldNormal, lightProbe );
	return irradiance;
}
vec3 getAmbientLightIrradiance( const in vec3 ambientLightColor ) {
	vec3 irradiance = ambientLightColor;
	return irradiance;
}
float getDistanceAttenuation( const in float lightDistance, const in float cutoffDistance, const in float decayExponent ) {
	float distanceFalloff = 1.0 / max( pow( lightDistance, decayExponent ), 0.01 );
	if ( cutoffDistance > 0.0 ) {
		distanceFalloff *= pow2( saturate( 1.0 - pow4( lightDistance / cutoffDistance ) ) );
	}
	return distanceFalloff;
}
float getSpotAttenuation( const in float coneCosine, const in float penumbraCosine, const in float angleCosine ) {
	return smoothstep( coneCosine, penumbraCosine, angleCosine );
}
#if NUM_DIR_LIGHTS > 0
	struct DirectionalLight {
		vec3 direction;
		vec3 color;
	};
	uniform DirectionalLight directionalLights[ NUM_DIR_LIGHTS ];
	void getDirectionalLightInfo( const in DirectionalLight directionalLight, out IncidentLight light ) {
		light.color = directionalLight.color;
		light.direction = directionalLight.direction;
		light.visible = true;
	}
#endif
#if NUM_POINT_LIGHTS > 0
	struct PointLight {
		vec3 position;
		vec3 color;
		float distance;
		float decay;
	};
	uniform PointLight pointLights[ NUM_POINT_LIGHTS ];
	void getPointLightInfo( const in PointLight pointLight, const in vec3 geometryPosition, out IncidentLight light ) {
		vec3 lVector = pointLight.position - geometryPosition;
		light.direction = normalize( lVector );
		float lightDistance = length( lVector );
		light.color = pointLight.color;
		light.color *= getDistanceAttenuation( lightDistance, pointLight.distance, pointLight.decay );
		light.visible = ( light.color != vec3( 0.0 ) );
	}
#endif
#if NUM_SPOT_LIGHTS > 0
	struct SpotLight {
		vec3 position;
		vec3 direction;
		vec3 color;
		float distance;
		float decay;
		float coneCos;
		float penumbraCos;
	};
	uniform SpotLight spotLights[ NUM_SPOT_LIGHTS ];
	void getSpotLightInfo( const in SpotLight spotLight, const in vec3 geometryPosition, out IncidentLight light ) {
		vec3 lVector = spotLight.position - geometryPosition;
		light.direction = normalize( lVector );
		float angleCos = dot( light.direction, spotLight.direction );
		float spotAttenuation = getSpotAttenuation( spotLight.coneCos, spotLight.penumbraCos, angleCos );
		if ( spotAttenuation > 0.0 ) {
			float lightDistance = length( lVector );
			light.color = spotLight.color * spotAttenuation;
			light.color *= getDistanceAttenuation( lightDistance, spotLight.distance, spotLight.decay );
			light.visible = ( light.color != vec3( 0.0 ) );
		} else {
			light.color = vec3( 0.0 );
			light.visible = false;
		}
	}
#endif
#if NUM_RECT_AREA_LIGHTS > 0
	struct RectAreaLight {
		vec3 color;
		vec3 position;
		vec3 halfWidth;
		vec3 halfHeight;
	};
	uniform sampler2D ltc_1;	uniform sampler2D ltc_2;
	uniform RectAreaLight rectAreaLights[ NUM_RECT_AREA_LIGHTS ];
#endif
#if NUM_HEMI_LIGHTS > 0
	struct HemisphereLight {
		vec3 direction;
		vec3 skyColor;
		vec3 groundColor;
	};
	uniform HemisphereLight hemisphereLights[ NUM_HEMI_LIGHTS ];
	vec3 getHemisphereLightIrradiance( const in HemisphereLight hemiLight, const in vec3 normal ) {
		float dotNL = dot( normal, hemiLight.direction );
		float hemiDiffuseWeight = 0.5 * dotNL + 0.5;
		vec3 irradiance = mix( hemiLight.groundColor, hemiLight.skyColor, hemiDiffuseWeight );
		return irradiance;
	}
#endif`,Wp=`#ifdef USE_ENVMAP
	vec3 getIBLIrradiance( const in vec3 normal ) {
		#ifdef ENVMAP_TYPE_CUBE_UV
			vec3 worldNormal = inverseTransformDirection( normal, viewMatrix );
			vec4 envMapColor = textureCubeUV( envMap, envMapRotation * worldNormal, 1.0 );
			return PI * envMapColor.rgb * envMapIntensity;
		#else
			return vec3( 0.0 );
		#endif
	}
	vec3 getIBLRadiance( const in vec3 viewDir, const in vec3 normal, const in float roughness ) {
		#ifdef ENVMAP_TYPE_CUBE_UV
			vec3 reflectVec = reflect( - viewDir, normal );
			reflectVec = normalize( mix( reflectVec, normal, roughness * roughness) );
			reflectVec = inverseTransformDirection( reflectVec, viewMatrix );
			vec4 envMapColor = textureCubeUV( envMap, envMapRotation * reflectVec, roughness );
			return envMapColor.rgb * envMapIntensity;
		#else
			return vec3( 0.0 );
		#endif
	}
	#ifdef USE_ANISOTROPY
		vec3 getIBLAnisotropyRadiance( const in vec3 viewDir, const in vec3 normal, const in float roughness, const in vec3 bitangent, const in float anisotropy ) {
			#ifdef ENVMAP_TYPE_CUBE_UV
				vec3 bentNormal = cross( bitangent, viewDir );
				bentNormal = normalize( cross( bentNormal, bitangent ) );
				bentNormal = normalize( mix( bentNormal, normal, pow2( pow2( 1.0 - anisotropy * ( 1.0 - roughness ) ) ) ) );
				return getIBLRadiance( viewDir, bentNormal, roughness );
			#else
				return vec3( 0.0 );
			#endif
		}
	#endif
#endif`,qp=`ToonMaterial material;
material.diffuseColor = diffuseColor.rgb;`,Xp=`varying vec3 vViewPosition;
struct ToonMaterial {
	vec3 diffuseColor;
};
void RE_Direct_Toon( const in IncidentLight directLight, const in vec3 geometryPosition, const in vec3 geometryNormal, const in vec3 geometryViewDir, const in vec3 geometryClearcoatNormal, const in ToonMaterial material, inout ReflectedLight reflectedLight ) {
	vec3 irradiance = getGradientIrradiance( geometryNormal, directLight.direction ) * directLight.color;
	reflectedLight.directDiffuse += irradiance * BRDF_Lambert( material.diffuseColor );
}
void RE_IndirectDiffuse_Toon( const in vec3 irradiance, const in vec3 geometryPosition, const in vec3 geometryNormal, const in vec3 geometryViewDir, const in vec3 geometryClearcoatNormal, const in ToonMaterial material, inout ReflectedLight reflectedLight ) {
	reflectedLight.indirectDiffuse += irradiance * BRDF_Lambert( material.diffuseColor );
}
#define RE_Direct				RE_Direct_Toon
#define RE_IndirectDiffuse		RE_IndirectDiffuse_Toon`,jp=`BlinnPhongMaterial material;
material.diffuseColor = diffuseColor.rgb;
material.specularColor = specular;
material.specularShininess = shininess;
material.specularStrength = specularStrength;`,Yp=`varying vec3 vViewPosition;
struct BlinnPhongMaterial {
	vec3 diffuseColor;
	vec3 specularColor;
	float specularShininess;
	float specularStrength;
};
void RE_Direct_BlinnPhong( const in IncidentLight directLight, const in vec3 geometryPosition, const in vec3 geometryNormal, const in vec3 geometryViewDir, const in vec3 geometryClearcoatNormal, const in BlinnPhongMaterial material, inout ReflectedLight reflectedLight ) {
	float dotNL = saturate( dot( geometryNormal, directLight.direction ) );
	vec3 irradiance = dotNL * directLight.color;
	reflectedLight.directDiffuse += irradiance * BRDF_Lambert( material.diffuseColor );
	reflectedLight.directSpecular += irradiance * BRDF_BlinnPhong( directLight.direction, geometryViewDir, geometryNormal, material.specularColor, material.specularShininess ) * material.specularStrength;
}
void RE_IndirectDiffuse_BlinnPhong( const in vec3 irradiance, const in vec3 geometryPosition, const in vec3 geometryNormal, const in vec3 geometryViewDir, const in vec3 geometryClearcoatNormal, const in BlinnPhongMaterial material, inout ReflectedLight reflectedLight ) {
	reflectedLight.indirectDiffuse += irradiance * BRDF_Lambert( material.diffuseColor );
}
#define RE_Direct				RE_Direct_BlinnPhong
#define RE_IndirectDiffuse		RE_IndirectDiffuse_BlinnPhong`,Kp=`PhysicalMaterial material;
material.diffuseColor = diffuseColor.rgb * ( 1.0 - metalnessFactor );
vec3 dxy = max( abs( dFdx( nonPerturbedNormal ) ), abs( dFdy( nonPerturbedNormal ) ) );
float geometryRoughness = max( max( dxy.x, dxy.y ), dxy.z );
material.roughness = max( roughnessFactor, 0.0525 );material.roughness += geometryRoughness;
material.roughness = min( material.roughness, 1.0 );
#ifdef IOR
	material.ior = ior;
	#ifdef USE_SPECULAR
		float specularIntensityFactor = specularIntensity;
		vec3 specularColorFactor = specularColor;
		#ifdef USE_SPECULAR_COLORMAP
			specularColorFactor *= texture2D( specularColorMap, vSpecularColorMapUv ).rgb;
		#endif
		#ifdef USE_SPECULAR_INTENSITYMAP
			specularIntensityFactor *= texture2D( specularIntensityMap, vSpecularIntensityMapUv ).a;
		#endif
		material.specularF90 = mix( specularIntensityFactor, 1.0, metalnessFactor );
	#else
		float specularIntensityFactor = 1.0;
		vec3 specularColorFactor = vec3( 1.0 );
		material.specularF90 = 1.0;
	#endif
	material.specularColor = mix( min( pow2( ( material.ior - 1.0 ) / ( material.ior + 1.0 ) ) * specularColorFactor, vec3( 1.0 ) ) * specularIntensityFactor, diffuseColor.rgb, metalnessFactor );
#else
	material.specularColor = mix( vec3( 0.04 ), diffuseColor.rgb, metalnessFactor );
	material.specularF90 = 1.0;
#endif
#ifdef USE_CLEARCOAT
	material.clearcoat = clearcoat;
	material.clearcoatRoughness = clearcoatRoughness;
	material.clearcoatF0 = vec3( 0.04 );
	material.clearcoatF90 = 1.0;
	#ifdef USE_CLEARCOATMAP
		material.clearcoat *= texture2D( clearcoatMap, vClearcoatMapUv ).x;
	#endif
	#ifdef USE_CLEARCOAT_ROUGHNESSMAP
		material.clearcoatRoughness *= texture2D( clearcoatRoughnessMap, vClearcoatRoughnessMapUv ).y;
	#endif
	material.clearcoat = saturate( material.clearcoat );	material.clearcoatRoughness = max( material.clearcoatRoughness, 0.0525 );
	material.clearcoatRoughness += geometryRoughness;
	material.clearcoatRoughness = min( material.clearcoatRoughness, 1.0 );
#endif
#ifdef USE_DISPERSION
	material.dispersion = dispersion;
#endif
#ifdef USE_IRIDESCENCE
	material.iridescence = iridescence;
	material.iridescenceIOR = iridescenceIOR;
	#ifdef USE_IRIDESCENCEMAP
		material.iridescence *= texture2D( iridescenceMap, vIridescenceMapUv ).r;
	#endif
	#ifdef USE_IRIDESCENCE_THICKNESSMAP
		material.iridescenceThickness = (iridescenceThicknessMaximum - iridescenceThicknessMinimum) * texture2D( iridescenceThicknessMap, vIridescenceThicknessMapUv ).g + iridescenceThicknessMinimum;
	#else
		material.iridescenceThickness = iridescenceThicknessMaximum;
	#endif
#endif
#ifdef USE_SHEEN
	material.sheenColor = sheenColor;
	#ifdef USE_SHEEN_COLORMAP
		material.sheenColor *= texture2D( sheenColorMap, vSheenColorMapUv ).rgb;
	#endif
	material.sheenRoughness = clamp( sheenRoughness, 0.07, 1.0 );
	#ifdef USE_SHEEN_ROUGHNESSMAP
		material.sheenRoughness *= texture2D( sheenRoughnessMap, vSheenRoughnessMapUv ).a;
	#endif
#endif
#ifdef USE_ANISOTROPY
	#ifdef USE_ANISOTROPYMAP
		mat2 anisotropyMat = mat2( anisotropyVector.x, anisotropyVector.y, - anisotropyVector.y, anisotropyVector.x );
		vec3 anisotropyPolar = texture2D( anisotropyMap, vAnisotropyMapUv ).rgb;
		vec2 anisotropyV = anisotropyMat * normalize( 2.0 * anisotropyPolar.rg - vec2( 1.0 ) ) * anisotropyPolar.b;
	#else
		vec2 anisotropyV = anisotropyVector;
	#endif
	material.anisotropy = length( anisotropyV );
	if( material.anisotropy == 0.0 ) {
		anisotropyV = vec2( 1.0, 0.0 );
	} else {
		anisotropyV /= material.anisotropy;
		material.anisotropy = saturate( material.anisotropy );
	}
	material.alphaT = mix( pow2( material.roughness ), 1.0, pow2( material.anisotropy ) );
	material.anisotropyT = tbn[ 0 ] * anisotropyV.x + tbn[ 1 ] * anisotropyV.y;
	material.anisotropyB = tbn[ 1 ] * anisotropyV.x - tbn[ 0 ] * anisotropyV.y;
#endif`,Zp=`struct PhysicalMaterial {
	vec3 diffuseColor;
	float roughness;
	vec3 specularColor;
	float specularF90;
	float dispersion;
	#ifdef USE_CLEARCOAT
		float clearcoat;
		float clearcoatRoughness;
		vec3 clearcoatF0;
		float clearcoatF90;
	#endif
	#ifdef USE_IRIDESCENCE
		float iridescence;
		float iridescenceIOR;
		float iridescenceThickness;
		vec3 iridescenceFresnel;
		vec3 iridescenceF0;
	#endif
	#ifdef USE_SHEEN
		vec3 sheenColor;
		float sheenRoughness;
	#endif
	#ifdef IOR
		float ior;
	#endif
	#ifdef USE_TRANSMISSION
		float transmission;
		float transmissionAlpha;
		float thickness;
		float attenuationDistance;
		vec3 attenuationColor;
	#endif
	#ifdef USE_ANISOTROPY
		float anisotropy;
		float alphaT;
		vec3 anisotropyT;
		vec3 anisotropyB;
	#endif
};
vec3 clearcoatSpecularDirect = vec3( 0.0 );
vec3 clearcoatSpecularIndirect = vec3( 0.0 );
vec3 sheenSpecularDirect = vec3( 0.0 );
vec3 sheenSpecularIndirect = vec3(0.0 );
vec3 Schlick_to_F0( const in vec3 f, const in float f90, const in float dotVH ) {
    float x = clamp( 1.0 - dotVH, 0.0, 1.0 );
    float x2 = x * x;
    float x5 = clamp( x * x2 * x2, 0.0, 0.9999 );
    return ( f - vec3( f90 ) * x5 ) / ( 1.0 - x5 );
}
float V_GGX_SmithCorrelated( const in float alpha, const in float dotNL, const in float dotNV ) {
	float a2 = pow2( alpha );
	float gv = dotNL * sqrt( a2 + ( 1.0 - a2 ) * pow2( dotNV ) );
	float gl = dotNV * sqrt( a2 + ( 1.0 - a2 ) * pow2( dotNL ) );
	return 0.5 / max( gv + gl, EPSILON );
}
float D_GGX( const in float alpha, const in float dotNH ) {
	float a2 = pow2( alpha );
	float denom = pow2( dotNH ) * ( a2 - 1.0 ) + 1.0;
	return RECIPROCAL_PI * a2 / pow2( denom );
}
#ifdef USE_ANISOTROPY
	float V_GGX_SmithCorrelated_Anisotropic( const in float alphaT, const in float alphaB, const in float dotTV, const in float dotBV, const in float dotTL, const in float dotBL, const in float dotNV, const in float dotNL ) {
		float gv = dotNL * length( vec3( alphaT * dotTV, alphaB * dotBV, dotNV ) );
		float gl = dotNV * length( vec3( alphaT * dotTL, alphaB * dotBL, dotNL ) );
		float v = 0.5 / ( gv + gl );
		return saturate(v);
	}
	float D_GGX_Anisotropic( const in float alphaT, const in float alphaB, const in float dotNH, const in float dotTH, const in float dotBH ) {
		float a2 = alphaT * alphaB;
		highp vec3 v = vec3( alphaB * dotTH, alphaT * dotBH, a2 * dotNH );
		highp float v2 = dot( v, v );
		float w2 = a2 / v2;
		return RECIPROCAL_PI * a2 * pow2 ( w2 );
	}
#endif
#ifdef USE_CLEARCOAT
	vec3 BRDF_GGX_Clearcoat( const in vec3 lightDir, const in vec3 viewDir, const in vec3 normal, const in PhysicalMaterial material) {
		vec3 f0 = material.clearcoatF0;
		float f90 = material.clearcoatF90;
		float roughness = material.clearcoatRoughness;
		float alpha = pow2( roughness );
		vec3 halfDir = normalize( lightDir + viewDir );
		float dotNL = saturate( dot( normal, lightDir ) );
		float dotNV = saturate( dot( normal, viewDir ) );
		float dotNH = saturate( dot( normal, halfDir ) );
		float dotVH = saturate( dot( viewDir, halfDir ) );
		vec3 F = F_Schlick( f0, f90, dotVH );
		float V = V_GGX_SmithCorrelated( alpha, dotNL, dotNV );
		float D = D_GGX( alpha, dotNH );
		return F * ( V * D );
	}
#endif
vec3 BRDF_GGX( const in vec3 lightDir, const in vec3 viewDir, const in vec3 normal, const in PhysicalMaterial material ) {
	vec3 f0 = material.specularColor;
	float f90 = material.specularF90;
	float roughness = material.roughness;
	float alpha = pow2( roughness );
	vec3 halfDir = normalize( lightDir + viewDir );
	float dotNL = saturate( dot( normal, lightDir ) );
	float dotNV = saturate( dot( normal, viewDir ) );
	float dotNH = saturate( dot( normal, halfDir ) );
	float dotVH = saturate( dot( viewDir, halfDir ) );
	vec3 F = F_Schlick( f0, f90, dotVH );
	#ifdef USE_IRIDESCENCE
		F = mix( F, material.iridescenceFresnel, material.iridescence );
	#endif
	#ifdef USE_ANISOTROPY
		float dotTL = dot( material.anisotropyT, lightDir );
		float dotTV = dot( material.anisotropyT, viewDir );
		float dotTH = dot( material.anisotropyT, halfDir );
		float dotBL = dot( material.anisotropyB, lightDir );
		float dotBV = dot( material.anisotropyB, viewDir );
		float dotBH = dot( material.anisotropyB, halfDir );
		float V = V_GGX_SmithCorrelated_Anisotropic( material.alphaT, alpha, dotTV, dotBV, dotTL, dotBL, dotNV, dotNL );
		float D = D_GGX_Anisotropic( material.alphaT, alpha, dotNH, dotTH, dotBH );
	#else
		float V = V_GGX_SmithCorrelated( alpha, dotNL, dotNV );
		float D = D_GGX( alpha, dotNH );
	#endif
	return F * ( V * D );
}
vec2 LTC_Uv( const in vec3 N, const in vec3 V, const in float roughness ) {
	const float LUT_SIZE = 64.0;
	const float LUT_SCALE = ( LUT_SIZE - 1.0 ) / LUT_SIZE;
	const float LUT_BIAS = 0.5 / LUT_SIZE;
	float dotNV = saturate( dot( N, V ) );
	vec2 uv = vec2( roughness, sqrt( 1.0 - dotNV ) );
	uv = uv * LUT_SCALE + LUT_BIAS;
	return uv;
}
float LTC_ClippedSphereFormFactor( const in vec3 f ) {
	float l = length( f );
	return max( ( l * l + f.z ) / ( l + 1.0 ), 0.0 );
}
vec3 LTC_EdgeVectorFormFactor( const in vec3 v1, const in vec3 v2 ) {
	float x = dot( v1, v2 );
	float y = abs( x );
	float a = 0.8543985 + ( 0.4965155 + 0.0145206 * y ) * y;
	float b = 3.4175940 + ( 4.1616724 + y ) * y;
	float v = a / b;
	float theta_sintheta = ( x > 0.0 ) ? v : 0.5 * inversesqrt( max( 1.0 - x * x, 1e-7 ) ) - v;
	return cross( v1, v2 ) * theta_sintheta;
}
vec3 LTC_Evaluate( const in vec3 N, const in vec3 V, const in vec3 P, const in mat3 mInv, const in vec3 rectCoords[ 4 ] ) {
	vec3 v1 = rectCoords[ 1 ] - rectCoords[ 0 ];
	vec3 v2 = rectCoords[ 3 ] - rectCoords[ 0 ];
	vec3 lightNormal = cross( v1, v2 );
	if( dot( lightNormal, P - rectCoords[ 0 ] ) < 0.0 ) return vec3( 0.0 );
	vec3 T1, T2;
	T1 = normalize( V - N * dot( V, N ) );
	T2 = - cross( N, T1 );
	mat3 mat = mInv * transposeMat3( mat3( T1, T2, N ) );
	vec3 coords[ 4 ];
	coords[ 0 ] = mat * ( rectCoords[ 0 ] - P );
	coords[ 1 ] = mat * ( rectCoords[ 1 ] - P );
	coords[ 2 ] = mat * ( rectCoords[ 2 ] - P );
	coords[ 3 ] = mat * ( rectCoords[ 3 ] - P );
	coords[ 0 ] = normalize( coords[ 0 ] );
	coords[ 1 ] = normalize( coords[ 1 ] );
	coords[ 2 ] = normalize( coords[ 2 ] );
	coords[ 3 ] = normalize( coords[ 3 ] );
	vec3 vectorFormFactor = vec3( 0.0 );
	vectorFormFactor += LTC_EdgeVectorFormFactor( coords[ 0 ], coords[ 1 ] );
	vectorFormFactor += LTC_EdgeVectorFormFactor( coords[ 1 ], coords[ 2 ] );
	vectorFormFactor += LTC_EdgeVectorFormFactor( coords[ 2 ], coords[ 3 ] );
	vectorFormFactor += LTC_EdgeVectorFormFactor( coords[ 3 ], coords[ 0 ] );
	float result = LTC_ClippedSphereFormFactor( vectorFormFactor );
	return vec3( result );
}
#if defined( USE_SHEEN )
float D_Charlie( float roughness, float dotNH ) {
	float alpha = pow2( roughness );
	float invAlpha = 1.0 / alpha;
	float cos2h = dotNH * dotNH;
	float sin2h = max( 1.0 - cos2h, 0.0078125 );
	return ( 2.0 + invAlpha ) * pow( sin2h, invAlpha * 0.5 ) / ( 2.0 * PI );
}
float V_Neubelt( float dotNV, float dotNL ) {
	return saturate( 1.0 / ( 4.0 * ( dotNL + dotNV - dotNL * dotNV ) ) );
}
vec3 BRDF_Sheen( const in vec3 lightDir, const in vec3 viewDir, const in vec3 normal, vec3 sheenColor, const in float sheenRoughness ) {
	vec3 halfDir = normalize( lightDir + viewDir );
	float dotNL = saturate( dot( normal, lightDir ) );
	float dotNV = saturate( dot( normal, viewDir ) );
	float dotNH = saturate( dot( normal, halfDir ) );
	float D = D_Charlie( sheenRoughness, dotNH );
	float V = V_Neubelt( dotNV, dotNL );
	return sheenColor * ( D * V );
}
#endif
float IBLSheenBRDF( const in vec3 normal, const in vec3 viewDir, const in float roughness ) {
	float dotNV = saturate( dot( normal, viewDir ) );
	float r2 = roughness * roughness;
	float a = roughness < 0.25 ? -339.2 * r2 + 161.4 * roughness - 25.9 : -8.48 * r2 + 14.3 * roughness - 9.95;
	float b = roughness < 0.25 ? 44.0 * r2 - 23.7 * roughness + 3.26 : 1.97 * r2 - 3.27 * roughness + 0.72;
	float DG = exp( a * dotNV + b ) + ( roughness < 0.25 ? 0.0 : 0.1 * ( roughness - 0.25 ) );
	return saturate( DG * RECIPROCAL_PI );
}
vec2 DFGApprox( const in vec3 normal, const in vec3 viewDir, const in float roughness ) {
	float dotNV = saturate( dot( normal, viewDir ) );
	const vec4 c0 = vec4( - 1, - 0.0275, - 0.572, 0.022 );
	const vec4 c1 = vec4( 1, 0.0425, 1.04, - 0.04 );
	vec4 r = roughness * c0 + c1;
	float a004 = min( r.x * r.x, exp2( - 9.28 * dotNV ) ) * r.x + r.y;
	vec2 fab = vec2( - 1.04, 1.04 ) * a004 + r.zw;
	return fab;
}
vec3 EnvironmentBRDF( const in vec3 normal, const in vec3 viewDir, const in vec3 specularColor, const in float specularF90, const in float roughness ) {
	vec2 fab = DFGApprox( normal, viewDir, roughness );
	return specularColor * fab.x + specularF90 * fab.y;
}
#ifdef USE_IRIDESCENCE
void computeMultiscatteringIridescence( const in vec3 normal, const in vec3 viewDir, const in vec3 specularColor, const in float specularF90, const in float iridescence, const in vec3 iridescenceF0, const in float roughness, inout vec3 singleScatter, inout vec3 multiScatter ) {
#else
void computeMultiscattering( const in vec3 normal, const in vec3 viewDir, const in vec3 specularColor, const in float specularF90, const in float roughness, inout vec3 singleScatter, inout vec3 multiScatter ) {
#endif
	vec2 fab = DFGApprox( normal, viewDir, roughness );
	#ifdef USE_IRIDESCENCE
		vec3 Fr = mix( specularColor, iridescenceF0, iridescence );
	#else
		vec3 Fr = specularColor;
	#endif
	vec3 FssEss = Fr * fab.x + specularF90 * fab.y;
	float Ess = fab.x + fab.y;
	float Ems = 1.0 - Ess;
	vec3 Favg = Fr + ( 1.0 - Fr ) * 0.047619;	vec3 Fms = FssEss * Favg / ( 1.0 - Ems * Favg );
	singleScatter += FssEss;
	multiScatter += Fms * Ems;
}
#if NUM_RECT_AREA_LIGHTS > 0
	void RE_Direct_RectArea_Physical( const in RectAreaLight rectAreaLight, const in vec3 geometryPosition, const in vec3 geometryNormal, const in vec3 geometryViewDir, const in vec3 geometryClearcoatNormal, const in PhysicalMaterial material, inout ReflectedLight reflectedLight ) {
		vec3 normal = geometryNormal;
		vec3 viewDir = geometryViewDir;
		vec3 position = geometryPosition;
		vec3 lightPos = rectAreaLight.position;
		vec3 halfWidth = rectAreaLight.halfWidth;
		vec3 halfHeight = rectAreaLight.halfHeight;
		vec3 lightColor = rectAreaLight.color;
		float roughness = material.roughness;
		vec3 rectCoords[ 4 ];
		rectCoords[ 0 ] = lightPos + halfWidth - halfHeight;		rectCoords[ 1 ] = lightPos - halfWidth - halfHeight;
		rectCoords[ 2 ] = lightPos - halfWidth + halfHeight;
		rectCoords[ 3 ] = lightPos + halfWidth + halfHeight;
		vec2 uv = LTC_Uv( normal, viewDir, roughness );
		vec4 t1 = texture2D( ltc_1, uv );
		vec4 t2 = texture2D( ltc_2, uv );
		mat3 mInv = mat3(
			vec3( t1.x, 0, t1.y ),
			vec3(    0, 1,    0 ),
			vec3( t1.z, 0, t1.w )
		);
		vec3 fresnel = ( material.specularColor * t2.x + ( vec3( 1.0 ) - material.specularColor ) * t2.y );
		reflectedLight.directSpecular += lightColor * fresnel * LTC_Evaluate( normal, viewDir, position, mInv, rectCoords );
		reflectedLight.directDiffuse += lightColor * material.diffuseColor * LTC_Evaluate( normal, viewDir, position, mat3( 1.0 ), rectCoords );
	}
#endif
void RE_Direct_Physical( const in IncidentLight directLight, const in vec3 geometryPosition, const in vec3 geometryNormal, const in vec3 geometryViewDir, const in vec3 geometryClearcoatNormal, const in PhysicalMaterial material, inout ReflectedLight reflectedLight ) {
	float dotNL = saturate( dot( geometryNormal, directLight.direction ) );
	vec3 irradiance = dotNL * directLight.color;
	#ifdef USE_CLEARCOAT
		float dotNLcc = saturate( dot( geometryClearcoatNormal, directLight.direction ) );
		vec3 ccIrradiance = dotNLcc * directLight.color;
		clearcoatSpecularDirect += ccIrradiance * BRDF_GGX_Clearcoat( directLight.direction, geometryViewDir, geometryClearcoatNormal, material );
	#endif
	#ifdef USE_SHEEN
		sheenSpecularDirect += irradiance * BRDF_Sheen( directLight.direction, geometryViewDir, geometryNormal, material.sheenColor, material.sheenRoughness );
	#endif
	reflectedLight.directSpecular += irradiance * BRDF_GGX( directLight.direction, geometryViewDir, geometryNormal, material );
	reflectedLight.directDiffuse += irradiance * BRDF_Lambert( material.diffuseColor );
}
void RE_IndirectDiffuse_Physical( const in vec3 irradiance, const in vec3 geometryPosition, const in vec3 geometryNormal, const in vec3 geometryViewDir, const in vec3 geometryClearcoatNormal, const in PhysicalMaterial material, inout ReflectedLight reflectedLight ) {
	reflectedLight.indirectDiffuse += irradiance * BRDF_Lambert( material.diffuseColor );
}
void RE_IndirectSpecular_Physical( const in vec3 radiance, const in vec3 irradiance, const in vec3 clearcoatRadiance, const in vec3 geometryPosition, const in vec3 geometryNormal, const in vec3 geometryViewDir, const in vec3 geometryClearcoatNormal, const in PhysicalMaterial material, inout ReflectedLight reflectedLight) {
	#ifdef USE_CLEARCOAT
		clearcoatSpecularIndirect += clearcoatRadiance * EnvironmentBRDF( geometryClearcoatNormal, geometryViewDir, material.clearcoatF0, material.clearcoatF90, material.clearcoatRoughness );
	#endif
	#ifdef USE_SHEEN
		sheenSpecularIndirect += irradiance * material.sheenColor * IBLSheenBRDF( geometryNormal, geometryViewDir, material.sheenRoughness );
	#endif
	vec3 singleScattering = vec3( 0.0 );
	vec3 multiScattering = vec3( 0.0 );
	vec3 cosineWeightedIrradiance = irradiance * RECIPROCAL_PI;
	#ifdef USE_IRIDESCENCE
		computeMultiscatteringIridescence( geometryNormal, geometryViewDir, material.specularColor, material.specularF90, material.iridescence, material.iridescenceFresnel, material.roughness, singleScattering, multiScattering );
	#else
		computeMultiscattering( geometryNormal, geometryViewDir, material.specularColor, material.specularF90, material.roughness, singleScattering, multiScattering );
	#endif
	vec3 totalScattering = singleScattering + multiScattering;
	vec3 diffuse = material.diffuseColor * ( 1.0 - max( max( totalScattering.r, totalScattering.g ), totalScattering.b ) );
	reflectedLight.indirectSpecular += radiance * singleScattering;
	reflectedLight.indirectSpecular += multiScattering * cosineWeightedIrradiance;
	reflectedLight.indirectDiffuse += diffuse * cosineWeightedIrradiance;
}
#define RE_Direct				RE_Direct_Physical
#define RE_Direct_RectArea		RE_Direct_RectArea_Physical
#define RE_IndirectDiffuse		RE_IndirectDiffuse_Physical
#define RE_IndirectSpecular		RE_IndirectSpecular_Physical
float computeSpecularOcclusion( const in float dotNV, const in float ambientOcclusion, const in float roughness ) {
	return saturate( pow( dotNV + ambientOcclusion, exp2( - 16.0 * roughness - 1.0 ) ) - 1.0 + ambientOcclusion );
}`,Jp=`
vec3 geometryPosition = - vViewPosition;
vec3 geometryNormal = normal;
vec3 geometryViewDir = ( isOrthographic ) ? vec3( 0, 0, 1 ) : normalize( vViewPosition );
vec3 geometryClearcoatNormal = vec3( 0.0 );
#ifdef USE_CLEARCOAT
	geometryClearcoatNormal = clearcoatNormal;
#endif
#ifdef USE_IRIDESCENCE
	float dotNVi = saturate( dot( normal, geometryViewDir ) );
	if ( material.iridescenceThickness == 0.0 ) {
		material.iridescence = 0.0;
	} else {
		material.iridescence = saturate( material.iridescence );
	}
	if ( material.iridescence > 0.0 ) {
		material.iridescenceFresnel = evalIridescence( 1.0, material.iridescenceIOR, dotNVi, material.iridescenceThickness, material.specularColor );
		material.iridescenceF0 = Schlick_to_F0( material.iridescenceFresnel, 1.0, dotNVi );
	}
#endif
IncidentLight directLight;
#if ( NUM_POINT_LIGHTS > 0 ) && defined( RE_Direct )
	PointLight pointLight;
	#if defined( USE_SHADOWMAP ) && NUM_POINT_LIGHT_SHADOWS > 0
	PointLightShadow pointLightShadow;
	#endif
	#pragma unroll_loop_start
	for ( int i = 0; i < NUM_POINT_LIGHTS; i ++ ) {
		pointLight = pointLights[ i ];
		getPointLightInfo( pointLight, geometryPosition, directLight );
		#if defined( USE_SHADOWMAP ) && ( UNROLLED_LOOP_INDEX < NUM_POINT_LIGHT_SHADOWS )
		pointLightShadow = pointLightShadows[ i ];
		directLight.color *= ( directLight.visible && receiveShadow ) ? getPointShadow( pointShadowMap[ i ], pointLightShadow.shadowMapSize, pointLightShadow.shadowIntensity, pointLightShadow.shadowBias, pointLightShadow.shadowRadius, vPointShadowCoord[ i ], pointLightShadow.shadowCameraNear, pointLightShadow.shadowCameraFar ) : 1.0;
		#endif
		RE_Direct( directLight, geometryPosition, geometryNormal, geometryViewDir, geometryClearcoatNormal, material, reflectedLight );
	}
	#pragma unroll_loop_end
#endif
#if ( NUM_SPOT_LIGHTS > 0 ) && defined( RE_Direct )
	SpotLight spotLight;
	vec4 spotColor;
	vec3 spotLightCoord;
	bool inSpotLightMap;
	#if defined( USE_SHADOWMAP ) && NUM_SPOT_LIGHT_SHADOWS > 0
	SpotLightShadow spotLightShadow;
	#endif
	#pragma unroll_loop_start
	for ( int i = 0; i < NUM_SPOT_LIGHTS; i ++ ) {
		spotLight = spotLights[ i ];
		getSpotLightInfo( spotLight, geometryPosition, directLight );
		#if ( UNROLLED_LOOP_INDEX < NUM_SPOT_LIGHT_SHADOWS_WITH_MAPS )
		#define SPOT_LIGHT_MAP_INDEX UNROLLED_LOOP_INDEX
		#elif ( UNROLLED_LOOP_INDEX < NUM_SPOT_LIGHT_SHADOWS )
		#define SPOT_LIGHT_MAP_INDEX NUM_SPOT_LIGHT_MAPS
		#else
		#define SPOT_LIGHT_MAP_INDEX ( UNROLLED_LOOP_INDEX - NUM_SPOT_LIGHT_SHADOWS + NUM_SPOT_LIGHT_SHADOWS_WITH_MAPS )
		#endif
		#if ( SPOT_LIGHT_MAP_INDEX < NUM_SPOT_LIGHT_MAPS )
			spotLightCoord = vSpotLightCoord[ i ].xyz / vSpotLightCoord[ i ].w;
			inSpotLightMap = all( lessThan( abs( spotLightCoord * 2. - 1. ), vec3( 1.0 ) ) );
			spotColor = texture2D( spotLightMap[ SPOT_LIGHT_MAP_INDEX ], spotLightCoord.xy );
			directLight.color = inSpotLightMap ? directLight.color * spotColor.rgb : directLight.color;
		#endif
		#undef SPOT_LIGHT_MAP_INDEX
		#if defined( USE_SHADOWMAP ) && ( UNROLLED_LOOP_INDEX < NUM_SPOT_LIGHT_SHADOWS )
		spotLightShadow = spotLightShadows[ i ];
		directLight.color *= ( directLight.visible && receiveShadow ) ? getShadow( spotShadowMap[ i ], spotLightShadow.shadowMapSize, spotLightShadow.shadowIntensity, spotLightShadow.shadowBias, spotLightShadow.shadowRadius, vSpotLightCoord[ i ] ) : 1.0;
		#endif
		RE_Direct( directLight, geometryPosition, geometryNormal, geometryViewDir, geometryClearcoatNormal, material, reflectedLight );
	}
	#pragma unroll_loop_end
#endif
#if ( NUM_DIR_LIGHTS > 0 ) && defined( RE_Direct )
	DirectionalLight directionalLight;
	#if defined( USE_SHADOWMAP ) && NUM_DIR_LIGHT_SHADOWS > 0
	DirectionalLightShadow directionalLightShadow;
	#endif
	#pragma unroll_loop_start
	for ( int i = 0; i < NUM_DIR_LIGHTS; i ++ ) {
		directionalLight = directionalLights[ i ];
		getDirectionalLightInfo( directionalLight, directLight );
		#if defined( USE_SHADOWMAP ) && ( UNROLLED_LOOP_INDEX < NUM_DIR_LIGHT_SHADOWS )
		directionalLightShadow = directionalLightShadows[ i ];
		directLight.color *= ( directLight.visible && receiveShadow ) ? getShadow( directionalShadowMap[ i ], directionalLightShadow.shadowMapSize, directionalLightShadow.shadowIntensity, directionalLightShadow.shadowBias, directionalLightShadow.shadowRadius, vDirectionalShadowCoord[ i ] ) : 1.0;
		#endif
		RE_Direct( directLight, geometryPosition, geometryNormal, geometryViewDir, geometryClearcoatNormal, material, reflectedLight );
	}
	#pragma unroll_loop_end
#endif
#if ( NUM_RECT_AREA_LIGHTS > 0 ) && defined( RE_Direct_RectArea )
	RectAreaLight rectAreaLight;
	#pragma unroll_loop_start
	for ( int i = 0; i < NUM_RECT_AREA_LIGHTS; i ++ ) {
		rectAreaLight = rectAreaLights[ i ];
		RE_Direct_RectArea( rectAreaLight, geometryPosition, geometryNormal, geometryViewDir, geometryClearcoatNormal, material, reflectedLight );
	}
	#pragma unroll_loop_end
#endif
#if defined( RE_IndirectDiffuse )
	vec3 iblIrradiance = vec3( 0.0 );
	vec3 irradiance = getAmbientLightIrradiance( ambientLightColor );
	#if defined( USE_LIGHT_PROBES )
		irradiance += getLightProbeIrradiance( lightProbe, geometryNormal );
	#endif
	#if ( NUM_HEMI_LIGHTS > 0 )
		#pragma unroll_loop_start
		for ( int i = 0; i < NUM_HEMI_LIGHTS; i ++ ) {
			irradiance += getHemisphereLightIrradiance( hemisphereLights[ i ], geometryNormal );
		}
		#pragma unroll_loop_end
	#endif
#endif
#if defined( RE_IndirectSpecular )
	vec3 radiance = vec3( 0.0 );
	vec3 clearcoatRadiance = vec3( 0.0 );
#endif`,Qp=`#if defined( RE_IndirectDiffuse )
	#ifdef USE_LIGHTMAP
		vec4 lightMapTexel = texture2D( lightMap, vLightMapUv );
		vec3 lightMapIrradiance = lightMapTexel.rgb * lightMapIntensity;
		irradiance += lightMapIrradiance;
	#endif
	#if defined( USE_ENVMAP ) && defined( STANDARD ) && defined( ENVMAP_TYPE_CUBE_UV )
		iblIrradiance += getIBLIrradiance( geometryNormal );
	#endif
#endif
#if defined( USE_ENVMAP ) && defined( RE_IndirectSpecular )
	#ifdef USE_ANISOTROPY
		radiance += getIBLAnisotropyRadiance( geometryViewDir, geometryNormal, material.roughness, material.anisotropyB, material.anisotropy );
	#else
		radiance += getIBLRadiance( geometryViewDir, geometryNormal, material.roughness );
	#endif
	#ifdef USE_CLEARCOAT
		clearcoatRadiance += getIBLRadiance( geometryViewDir, geometryClearcoatNormal, material.clearcoatRoughness );
	#endif
#endif`,em=`#if defined( RE_IndirectDiffuse )
	RE_IndirectDiffuse( irradiance, geometryPosition, geometryNormal, geometryViewDir, geometryClearcoatNormal, material, reflectedLight );
#endif
#if defined( RE_IndirectSpecular )
	RE_IndirectSpecular( radiance, iblIrradiance, clearcoatRadiance, geometryPosition, geometryNormal, geometryViewDir, geometryClearcoatNormal, material, reflectedLight );
#endif`,tm=`#if defined( USE_LOGARITHMIC_DEPTH_BUFFER )
	gl_FragDepth = vIsPerspective == 0.0 ? gl_FragCoord.z : log2( vFragDepth ) * logDepthBufFC * 0.5;
#endif`,nm=`#if defined( USE_LOGARITHMIC_DEPTH_BUFFER )
	uniform float logDepthBufFC;
	varying float vFragDepth;
	varying float vIsPerspective;
#endif`,im=`#ifdef USE_LOGARITHMIC_DEPTH_BUFFER
	varying float vFragDepth;
	varying float vIsPerspective;
#endif`,sm=`#ifdef USE_LOGARITHMIC_DEPTH_BUFFER
	vFragDepth = 1.0 + gl_Position.w;
	vIsPerspective = float( isPerspectiveMatrix( projectionMatrix ) );
#endif`,rm=`#ifdef USE_MAP
	vec4 sampledDiffuseColor = texture2D( map, vMapUv );
	#ifdef DECODE_VIDEO_TEXTURE
		sampledDiffuseColor = sRGBTransferEOTF( sampledDiffuseColor );
	#endif
	diffuseColor *= sampledDiffuseColor;
#endif`,am=`#ifdef USE_MAP
	uniform sampler2D map;
#endif`,om=`#if defined( USE_MAP ) || defined( USE_ALPHAMAP )
	#if defined( USE_POINTS_UV )
		vec2 uv = vUv;
	#else
		vec2 uv = ( uvTransform * vec3( gl_PointCoord.x, 1.0 - gl_PointCoord.y, 1 ) ).xy;
	#endif
#endif
#ifdef USE_MAP
	diffuseColor *= texture2D( map, uv );
#endif
#ifdef USE_ALPHAMAP
	diffuseColor.a *= texture2D( alphaMap, uv ).g;
#endif`,lm=`#if defined( USE_POINTS_UV )
	varying vec2 vUv;
#else
	#if defined( USE_MAP ) || defined( USE_ALPHAMAP )
		uniform mat3 uvTransform;
	#endif
#endif
#ifdef USE_MAP
	uniform sampler2D map;
#endif
#ifdef USE_ALPHAMAP
	uniform sampler2D alphaMap;
#endif`,cm=`float metalnessFactor = metalness;
#ifdef USE_METALNESSMAP
	vec4 texelMetalness = texture2D( metalnessMap, vMetalnessMapUv );
	metalnessFactor *= texelMetalness.b;
#endif`,hm=`#ifdef USE_METALNESSMAP
	uniform sampler2D metalnessMap;
#endif`,um=`#ifdef USE_INSTANCING_MORPH
	float morphTargetInfluences[ MORPHTARGETS_COUNT ];
	float morphTargetBaseInfluence = texelFetch( morphTexture, ivec2( 0, gl_InstanceID ), 0 ).r;
	for ( int i = 0; i < MORPHTARGETS_COUNT; i ++ ) {
		morphTargetInfluences[i] =  texelFetch( morphTexture, ivec2( i + 1, gl_InstanceID ), 0 ).r;
	}
#endif`,dm=`#if defined( USE_MORPHCOLORS )
	vColor *= morphTargetBaseInfluence;
	for ( int i = 0; i < MORPHTARGETS_COUNT; i ++ ) {
		#if defined( USE_COLOR_ALPHA )
			if ( morphTargetInfluences[ i ] != 0.0 ) vColor += getMorph( gl_VertexID, i, 2 ) * morphTargetInfluences[ i ];
		#elif defined( USE_COLOR )
			if ( morphTargetInfluences[ i ] != 0.0 ) vColor += getMorph( gl_VertexID, i, 2 ).rgb * morphTargetInfluences[ i ];
		#endif
	}
#endif`,fm=`#ifdef USE_MORPHNORMALS
	objectNormal *= morphTargetBaseInfluence;
	for ( int i = 0; i < MORPHTARGETS_COUNT; i ++ ) {
		if ( morphTargetInfluences[ i ] != 0.0 ) objectNormal += getMorph( gl_VertexID, i, 1 ).xyz * morphTargetInfluences[ i ];
	}
#endif`,pm=`#ifdef USE_MORPHTARGETS
	#ifndef USE_INSTANCING_MORPH
		uniform float morphTargetBaseInfluence;
		uniform float morphTargetInfluences[ MORPHTARGETS_COUNT ];
	#endif
	uniform sampler2DArray morphTargetsTexture;
	uniform ivec2 morphTargetsTextureSize;
	vec4 getMorph( const in int vertexIndex, const in int morphTargetIndex, const in int offset ) {
		int texelIndex = vertexIndex * MORPHTARGETS_TEXTURE_STRIDE + offset;
		int y = texelIndex / morphTargetsTextureSize.x;
		int x = texelIndex - y * morphTargetsTextureSize.x;
		ivec3 morphUV = ivec3( x, y, morphTargetIndex );
		return texelFetch( morphTargetsTexture, morphUV, 0 );
	}
#endif`,mm=`#ifdef USE_MORPHTARGETS
	transformed *= morphTargetBaseInfluence;
	for ( int i = 0; i < MORPHTARGETS_COUNT; i ++ ) {
		if ( morphTargetInfluences[ i ] != 0.0 ) transformed += getMorph( gl_VertexID, i, 0 ).xyz * morphTargetInfluences[ i ];
	}
#endif`,gm=`float faceDirection = gl_FrontFacing ? 1.0 : - 1.0;
#ifdef FLAT_SHADED
	vec3 fdx = dFdx( vViewPosition );
	vec3 fdy = dFdy( vViewPosition );
	vec3 normal = normalize( cross( fdx, fdy ) );
#else
	vec3 normal = normalize( vNormal );
	#ifdef DOUBLE_SIDED
		normal *= faceDirection;
	#endif
#endif
#if defined( USE_NORMALMAP_TANGENTSPACE ) || defined( USE_CLEARCOAT_NORMALMAP ) || defined( USE_ANISOTROPY )
	#ifdef USE_TANGENT
		mat3 tbn = mat3( normalize( vTangent ), normalize( vBitangent ), normal );
	#else
		mat3 tbn = getTangentFrame( - vViewPosition, normal,
		#if defined( USE_NORMALMAP )
			vNormalMapUv
		#elif defined( USE_CLEARCOAT_NORMALMAP )
			vClearcoatNormalMapUv
		#else
			vUv
		#endif
		);
	#endif
	#if defined( DOUBLE_SIDED ) && ! defined( FLAT_SHADED )
		tbn[0] *= faceDirection;
		tbn[1] *= faceDirection;
	#endif
#endif
#ifdef USE_CLEARCOAT_NORMALMAP
	#ifdef USE_TANGENT
		mat3 tbn2 = mat3( normalize( vTangent ), normalize( vBitangent ), normal );
	#else
		mat3 tbn2 = getTangentFrame( - vViewPosition, normal, vClearcoatNormalMapUv );
	#endif
	#if defined( DOUBLE_SIDED ) && ! defined( FLAT_SHADED )
		tbn2[0] *= faceDirection;
		tbn2[1] *= faceDirection;
	#endif
#endif
vec3 nonPerturbedNormal = normal;`,_m=`#ifdef USE_NORMALMAP_OBJECTSPACE
	normal = texture2D( normalMap, vNormalMapUv ).xyz * 2.0 - 1.0;
	#ifdef FLIP_SIDED
		normal = - normal;
	#endif
	#ifdef DOUBLE_SIDED
		normal = normal * faceDirection;
	#endif
	normal = normalize( normalMatrix * normal );
#elif defined( USE_NORMALMAP_TANGENTSPACE )
	vec3 mapN = texture2D( normalMap, vNormalMapUv ).xyz * 2.0 - 1.0;
	mapN.xy *= normalScale;
	normal = normalize( tbn * mapN );
#elif defined( USE_BUMPMAP )
	normal = perturbNormalArb( - vViewPosition, normal, dHdxy_fwd(), faceDirection );
#endif`,vm=`#ifndef FLAT_SHADED
	varying vec3 vNormal;
	#ifdef USE_TANGENT
		varying vec3 vTangent;
		varying vec3 vBitangent;
	#endif
#endif`,xm=`#ifndef FLAT_SHADED
	varying vec3 vNormal;
	#ifdef USE_TANGENT
		varying vec3 vTangent;
		varying vec3 vBitangent;
	#endif
#endif`,ym=`#ifndef FLAT_SHADED
	vNormal = normalize( transformedNormal );
	#ifdef USE_TANGENT
		vTangent = normalize( transformedTangent );
		vBitangent = normalize( cross( vNormal, vTangent ) * tangent.w );
	#endif
#endif`,wm=`#ifdef USE_NORMALMAP
	uniform sampler2D normalMap;
	uniform vec2 normalScale;
#endif
#ifdef USE_NORMALMAP_OBJECTSPACE
	uniform mat3 normalMatrix;
#endif
#if ! defined ( USE_TANGENT ) && ( defined ( USE_NORMALMAP_TANGENTSPACE ) || defined ( USE_CLEARCOAT_NORMALMAP ) || defined( USE_ANISOTROPY ) )
	mat3 getTangentFrame( vec3 eye_pos, vec3 surf_norm, vec2 uv ) {
		vec3 q0 = dFdx( eye_pos.xyz );
		vec3 q1 = dFdy( eye_pos.xyz );
		vec2 st0 = dFdx( uv.st );
		vec2 st1 = dFdy( uv.st );
		vec3 N = surf_norm;
		vec3 q1perp = cross( q1, N );
		vec3 q0perp = cross( N, q0 );
		vec3 T = q1perp * st0.x + q0perp * st1.x;
		vec3 B = q1perp * st0.y + q0perp * st1.y;
		float det = max( dot( T, T ), dot( B, B ) );
		float scale = ( det == 0.0 ) ? 0.0 : inversesqrt( det );
		return mat3( T * scale, B * scale, N );
	}
#endif`,bm=`#ifdef USE_CLEARCOAT
	vec3 clearcoatNormal = nonPerturbedNormal;
#endif`,Mm=`#ifdef USE_CLEARCOAT_NORMALMAP
	vec3 clearcoatMapN = texture2D( clearcoatNormalMap, vClearcoatNormalMapUv ).xyz * 2.0 - 1.0;
	clearcoatMapN.xy *= clearcoatNormalScale;
	clearcoatNormal = normalize( tbn2 * clearcoatMapN );
#endif`,Sm=`#ifdef USE_CLEARCOATMAP
	uniform sampler2D clearcoatMap;
#endif
#ifdef USE_CLEARCOAT_NORMALMAP
	uniform sampler2D clearcoatNormalMap;
	uniform vec2 clearcoatNormalScale;
#endif
#ifdef USE_CLEARCOAT_ROUGHNESSMAP
	uniform sampler2D clearcoatRoughnessMap;
#endif`,Em=`#ifdef USE_IRIDESCENCEMAP
	uniform sampler2D iridescenceMap;
#endif
#ifdef USE_IRIDESCENCE_THICKNESSMAP
	uniform sampler2D iridescenceThicknessMap;
#endif`,Tm=`#ifdef OPAQUE
diffuseColor.a = 1.0;
#endif
#ifdef USE_TRANSMISSION
diffuseColor.a *= material.transmissionAlpha;
#endif
gl_FragColor = vec4( outgoingLight, diffuseColor.a );`,Am=`vec3 packNormalToRGB( const in vec3 normal ) {
	return normalize( normal ) * 0.5 + 0.5;
}
vec3 unpackRGBToNormal( const in vec3 rgb ) {
	return 2.0 * rgb.xyz - 1.0;
}
const float PackUpscale = 256. / 255.;const float UnpackDownscale = 255. / 256.;const float ShiftRight8 = 1. / 256.;
const float Inv255 = 1. / 255.;
const vec4 PackFactors = vec4( 1.0, 256.0, 256.0 * 256.0, 256.0 * 256.0 * 256.0 );
const vec2 UnpackFactors2 = vec2( UnpackDownscale, 1.0 / PackFactors.g );
const vec3 UnpackFactors3 = vec3( UnpackDownscale / PackFactors.rg, 1.0 / PackFactors.b );
const vec4 UnpackFactors4 = vec4( UnpackDownscale / PackFactors.rgb, 1.0 / PackFactors.a );
vec4 packDepthToRGBA( const in float v ) {
	if( v <= 0.0 )
		return vec4( 0., 0., 0., 0. );
	if( v >= 1.0 )
		return vec4( 1., 1., 1., 1. );
	float vuf;
	float af = modf( v * PackFactors.a, vuf );
	float bf = modf( vuf * ShiftRight8, vuf );
	float gf = modf( vuf * ShiftRight8, vuf );
	return vec4( vuf * Inv255, gf * PackUpscale, bf * PackUpscale, af );
}
vec3 packDepthToRGB( const in float v ) {
	if( v <= 0.0 )
		return vec3( 0., 0., 0. );
	if( v >= 1.0 )
		return vec3( 1., 1., 1. );
	float vuf;
	float bf = modf( v * PackFactors.b, vuf );
	float gf = modf( vuf * ShiftRight8, vuf );
	return vec3( vuf * Inv255, gf * PackUpscale, bf );
}
vec2 packDepthToRG( const in float v ) {
	if( v <= 0.0 )
		return vec2( 0., 0. );
	if( v >= 1.0 )
		return vec2( 1., 1. );
	float vuf;
	float gf = modf( v * 256., vuf );
	return vec2( vuf * Inv255, gf );
}
float unpackRGBAToDepth( const in vec4 v ) {
	return dot( v, UnpackFactors4 );
}
float unpackRGBToDepth( const in vec3 v ) {
	return dot( v, UnpackFactors3 );
}
float unpackRGToDepth( const in vec2 v ) {
	return v.r * UnpackFactors2.r + v.g * UnpackFactors2.g;
}
vec4 pack2HalfToRGBA( const in vec2 v ) {
	vec4 r = vec4( v.x, fract( v.x * 255.0 ), v.y, fract( v.y * 255.0 ) );
	return vec4( r.x - r.y / 255.0, r.y, r.z - r.w / 255.0, r.w );
}
vec2 unpackRGBATo2Half( const in vec4 v ) {
	return vec2( v.x + ( v.y / 255.0 ), v.z + ( v.w / 255.0 ) );
}
float viewZToOrthographicDepth( const in float viewZ, const in float near, const in float far ) {
	return ( viewZ + near ) / ( near - far );
}
float orthographicDepthToViewZ( const in float depth, const in float near, const in float far ) {
	return depth * ( near - far ) - near;
}
float viewZToPerspectiveDepth( const in float viewZ, const in float near, const in float far ) {
	return ( ( near + viewZ ) * far ) / ( ( far - near ) * viewZ );
}
float perspectiveDepthToViewZ( const in float depth, const in float near, const in float far ) {
	return ( near * far ) / ( ( far - near ) * depth - far );
}`,Rm=`#ifdef PREMULTIPLIED_ALPHA
	gl_FragColor.rgb *= gl_FragColor.a;
#endif`,Cm=`vec4 mvPosition = vec4( transformed, 1.0 );
#ifdef USE_BATCHING
	mvPosition = batchingMatrix * mvPosition;
#endif
#ifdef USE_INSTANCING
	mvPosition = instanceMatrix * mvPosition;
#endif
mvPosition = modelViewMatrix * mvPosition;
gl_Position = projectionMatrix * mvPosition;`,Pm=`#ifdef DITHERING
	gl_FragColor.rgb = dithering( gl_FragColor.rgb );
#endif`,Dm=`#ifdef DITHERING
	vec3 dithering( vec3 color ) {
		float grid_position = rand( gl_FragCoord.xy );
		vec3 dither_shift_RGB = vec3( 0.25 / 255.0, -0.25 / 255.0, 0.25 / 255.0 );
		dither_shift_RGB = mix( 2.0 * dither_shift_RGB, -2.0 * dither_shift_RGB, grid_position );
		return color + dither_shift_RGB;
	}
#endif`,Lm=`float roughnessFactor = roughness;
#ifdef USE_ROUGHNESSMAP
	vec4 texelRoughness = texture2D( roughnessMap, vRoughnessMapUv );
	roughnessFactor *= texelRoughness.g;
#endif`,Im=`#ifdef USE_ROUGHNESSMAP
	uniform sampler2D roughnessMap;
#endif`,Um=`#if NUM_SPOT_LIGHT_COORDS > 0
	varying vec4 vSpotLightCoord[ NUM_SPOT_LIGHT_COORDS ];
#endif
#if NUM_SPOT_LIGHT_MAPS > 0
	uniform sampler2D spotLightMap[ NUM_SPOT_LIGHT_MAPS ];
#endif
#ifdef USE_SHADOWMAP
	#if NUM_DIR_LIGHT_SHADOWS > 0
		uniform sampler2D directionalShadowMap[ NUM_DIR_LIGHT_SHADOWS ];
		varying vec4 vDirectionalShadowCoord[ NUM_DIR_LIGHT_SHADOWS ];
		struct DirectionalLightShadow {
			float shadowIntensity;
			float shadowBias;
			float shadowNormalBias;
			float shadowRadius;
			vec2 shadowMapSize;
		};
		uniform DirectionalLightShadow directionalLightShadows[ NUM_DIR_LIGHT_SHADOWS ];
	#endif
	#if NUM_SPOT_LIGHT_SHADOWS > 0
		uniform sampler2D spotShadowMap[ NUM_SPOT_LIGHT_SHADOWS ];
		struct SpotLightShadow {
			float shadowIntensity;
			float shadowBias;
			float shadowNormalBias;
			float shadowRadius;
			vec2 shadowMapSize;
		};
		uniform SpotLightShadow spotLightShadows[ NUM_SPOT_LIGHT_SHADOWS ];
	#endif
	#if NUM_POINT_LIGHT_SHADOWS > 0
		uniform sampler2D pointShadowMap[ NUM_POINT_LIGHT_SHADOWS ];
		varying vec4 vPointShadowCoord[ NUM_POINT_LIGHT_SHADOWS ];
		struct PointLightShadow {
			float shadowIntensity;
			float shadowBias;
			float shadowNormalBias;
			float shadowRadius;
			vec2 shadowMapSize;
			float shadowCameraNear;
			float shadowCameraFar;
		};
		uniform PointLightShadow pointLightShadows[ NUM_POINT_LIGHT_SHADOWS ];
	#endif
	float texture2DCompare( sampler2D depths, vec2 uv, float compare ) {
		float depth = unpackRGBAToDepth( texture2D( depths, uv ) );
		#ifdef USE_REVERSED_DEPTH_BUFFER
			return step( depth, compare );
		#else
			return step( compare, depth );
		#endif
	}
	vec2 texture2DDistribution( sampler2D shadow, vec2 uv ) {
		return unpackRGBATo2Half( texture2D( shadow, uv ) );
	}
	float VSMShadow( sampler2D shadow, vec2 uv, float compare ) {
		float occlusion = 1.0;
		vec2 distribution = texture2DDistribution( shadow, uv );
		#ifdef USE_REVERSED_DEPTH_BUFFER
			float hard_shadow = step( distribution.x, compare );
		#else
			float hard_shadow = step( compare, distribution.x );
		#endif
		if ( hard_shadow != 1.0 ) {
			float distance = compare - distribution.x;
			float variance = max( 0.00000, distribution.y * distribution.y );
			float softness_probability = variance / (variance + distance * distance );			softness_probability = clamp( ( softness_probability - 0.3 ) / ( 0.95 - 0.3 ), 0.0, 1.0 );			occlusion = clamp( max( hard_shadow, softness_probability ), 0.0, 1.0 );
		}
		return occlusion;
	}
	float getShadow( sampler2D shadowMap, vec2 shadowMapSize, float shadowIntensity, float shadowBias, float shadowRadius, vec4 shadowCoord ) {
		float shadow = 1.0;
		shadowCoord.xyz /= shadowCoord.w;
		shadowCoord.z += shadowBias;
		bool inFrustum = shadowCoord.x >= 0.0 && shadowCoord.x <= 1.0 && shadowCoord.y >= 0.0 && shadowCoord.y <= 1.0;
		bool frustumTest = inFrustum && shadowCoord.z <= 1.0;
		if ( frustumTest ) {
		#if defined( SHADOWMAP_TYPE_PCF )
			vec2 texelSize = vec2( 1.0 ) / shadowMapSize;
			float dx0 = - texelSize.x * shadowRadius;
			float dy0 = - texelSize.y * shadowRadius;
			float dx1 = + texelSize.x * shadowRadius;
			float dy1 = + texelSize.y * shadowRadius;
			float dx2 = dx0 / 2.0;
			float dy2 = dy0 / 2.0;
			float dx3 = dx1 / 2.0;
			float dy3 = dy1 / 2.0;
			shadow = (
				texture2DCompare( shadowMap, shadowCoord.xy + vec2( dx0, dy0 ), shadowCoord.z ) +
				texture2DCompare( shadowMap, shadowCoord.xy + vec2( 0.0, dy0 ), shadowCoord.z ) +
				texture2DCompare( shadowMap, shadowCoord.xy + vec2( dx1, dy0 ), shadowCoord.z ) +
				texture2DCompare( shadowMap, shadowCoord.xy + vec2( dx2, dy2 ), shadowCoord.z ) +
				texture2DCompare( shadowMap, shadowCoord.xy + vec2( 0.0, dy2 ), shadowCoord.z ) +
				texture2DCompare( shadowMap, shadowCoord.xy + vec2( dx3, dy2 ), shadowCoord.z ) +
				texture2DCompare( shadowMap, shadowCoord.xy + vec2( dx0, 0.0 ), shadowCoord.z ) +
				texture2DCompare( shadowMap, shadowCoord.xy + vec2( dx2, 0.0 ), shadowCoord.z ) +
				texture2DCompare( shadowMap, shadowCoord.xy, shadowCoord.z ) +
				texture2DCompare( shadowMap, shadowCoord.xy + vec2( dx3, 0.0 ), shadowCoord.z ) +
				texture2DCompare( shadowMap, shadowCoord.xy + vec2( dx1, 0.0 ), shadowCoord.z ) +
				texture2DCompare( shadowMap, shadowCoord.xy + vec2( dx2, dy3 ), shadowCoord.z ) +
				texture2DCompare( shadowMap, shadowCoord.xy + vec2( 0.0, dy3 ), shadowCoord.z ) +
				texture2DCompare( shadowMap, shadowCoord.xy + vec2( dx3, dy3 ), shadowCoord.z ) +
				texture2DCompare( shadowMap, shadowCoord.xy + vec2( dx0, dy1 ), shadowCoord.z ) +
				texture2DCompare( shadowMap, shadowCoord.xy + vec2( 0.0, dy1 ), shadowCoord.z ) +
				texture2DCompare( shadowMap, shadowCoord.xy + vec2( dx1, dy1 ), shadowCoord.z )
			) * ( 1.0 / 17.0 );
		#elif defined( SHADOWMAP_TYPE_PCF_SOFT )
			vec2 texelSize = vec2( 1.0 ) / shadowMapSize;
			float dx = texelSize.x;
			float dy = texelSize.y;
			vec2 uv = shadowCoord.xy;
			vec2 f = fract( uv * shadowMapSize + 0.5 );
			uv -= f * texelSize;
			shadow = (
				texture2DCompare( shadowMap, uv, shadowCoord.z ) +
				texture2DCompare( shadowMap, uv + vec2( dx, 0.0 ), shadowCoord.z ) +
				texture2DCompare( shadowMap, uv + vec2( 0.0, dy ), shadowCoord.z ) +
				texture2DCompare( shadowMap, uv + texelSize, shadowCoord.z ) +
				mix( texture2DCompare( shadowMap, uv + vec2( -dx, 0.0 ), shadowCoord.z ),
					 texture2DCompare( shadowMap, uv + vec2( 2.0 * dx, 0.0 ), shadowCoord.z ),
					 f.x ) +
				mix( texture2DCompare( shadowMap, uv + vec2( -dx, dy ), shadowCoord.z ),
					 texture2DCompare( shadowMap, uv + vec2( 2.0 * dx, dy ), shadowCoord.z ),
					 f.x ) +
				mix( texture2DCompare( shadowMap, uv + vec2( 0.0, -dy ), shadowCoord.z ),
					 texture2DCompare( shadowMap, uv + vec2( 0.0, 2.0 * dy ), shadowCoord.z ),
					 f.y ) +
				mix( texture2DCompare( shadowMap, uv + vec2( dx, -dy ), shadowCoord.z ),
					 texture2DCompare( shadowMap, uv + vec2( dx, 2.0 * dy ), shadowCoord.z ),
					 f.y ) +
				mix( mix( texture2DCompare( shadowMap, uv + vec2( -dx, -dy ), shadowCoord.z ),
						  texture2DCompare( shadowMap, uv + vec2( 2.0 * dx, -dy ), shadowCoord.z ),
						  f.x ),
					 mix( texture2DCompare( shadowMap, uv + vec2( -dx, 2.0 * dy ), shadowCoord.z ),
						  texture2DCompare( shadowMap, uv + vec2( 2.0 * dx, 2.0 * dy ), shadowCoord.z ),
						  f.x ),
					 f.y )
			) * ( 1.0 / 9.0 );
		#elif defined( SHADOWMAP_TYPE_VSM )
			shadow = VSMShadow( shadowMap, shadowCoord.xy, shadowCoord.z );
		#else
			shadow = texture2DCompare( shadowMap, shadowCoord.xy, shadowCoord.z );
		#endif
		}
		return mix( 1.0, shadow, shadowIntensity );
	}
	vec2 cubeToUV( vec3 v, float texelSizeY ) {
		vec3 absV = abs( v );
		float scaleToCube = 1.0 / max( absV.x, max( absV.y, absV.z ) );
		absV *= scaleToCube;
		v *= scaleToCube * ( 1.0 - 2.0 * texelSizeY );
		vec2 planar = v.xy;
		float almostATexel = 1.5 * texelSizeY;
		float almostOne = 1.0 - almostATexel;
		if ( absV.z >= almostOne ) {
			if ( v.z > 0.0 )
				planar.x = 4.0 - v.x;
		} else if ( absV.x >= almostOne ) {
			float signX = sign( v.x );
			planar.x = v.z * signX + 2.0 * signX;
		} else if ( absV.y >= almostOne ) {
			float signY = sign( v.y );
			planar.x = v.x + 2.0 * signY + 2.0;
			planar.y = v.z * signY - 2.0;
		}
		return vec2( 0.125, 0.25 ) * planar + vec2( 0.375, 0.75 );
	}
	float getPointShadow( sampler2D shadowMap, vec2 shadowMapSize, float shadowIntensity, float shadowBias, float shadowRadius, vec4 shadowCoord, float shadowCameraNear, float shadowCameraFar ) {
		float shadow = 1.0;
		vec3 lightToPosition = shadowCoord.xyz;
		
		float lightToPositionLength = length( lightToPosition );
		if ( lightToPositionLength - shadowCameraFar <= 0.0 && lightToPositionLength - shadowCameraNear >= 0.0 ) {
			float dp = ( lightToPositionLength - shadowCameraNear ) / ( shadowCameraFar - shadowCameraNear );			dp += shadowBias;
			vec3 bd3D = normalize( lightToPosition );
			vec2 texelSize = vec2( 1.0 ) / ( shadowMapSize * vec2( 4.0, 2.0 ) );
			#if defined( SHADOWMAP_TYPE_PCF ) || defined( SHADOWMAP_TYPE_PCF_SOFT ) || defined( SHADOWMAP_TYPE_VSM )
				vec2 offset = vec2( - 1, 1 ) * shadowRadius * texelSize.y;
				shadow = (
					texture2DCompare( shadowMap, cubeToUV( bd3D + offset.xyy, texelSize.y ), dp ) +
					texture2DCompare( shadowMap, cubeToUV( bd3D + offset.yyy, texelSize.y ), dp ) +
					texture2DCompare( shadowMap, cubeToUV( bd3D + offset.xyx, texelSize.y ), dp ) +
					texture2DCompare( shadowMap, cubeToUV( bd3D + offset.yyx, texelSize.y ), dp ) +
					texture2DCompare( shadowMap, cubeToUV( bd3D, texelSize.y ), dp ) +
					texture2DCompare( shadowMap, cubeToUV( bd3D + offset.xxy, texelSize.y ), dp ) +
					texture2DCompare( shadowMap, cubeToUV( bd3D + offset.yxy, texelSize.y ), dp ) +
					texture2DCompare( shadowMap, cubeToUV( bd3D + offset.xxx, texelSize.y ), dp ) +
					texture2DCompare( shadowMap, cubeToUV( bd3D + offset.yxx, texelSize.y ), dp )
				) * ( 1.0 / 9.0 );
			#else
				shadow = texture2DCompare( shadowMap, cubeToUV( bd3D, texelSize.y ), dp );
			#endif
		}
		return mix( 1.0, shadow, shadowIntensity );
	}
#endif`,Nm=`#if NUM_SPOT_LIGHT_COORDS > 0
	uniform mat4 spotLightMatrix[ NUM_SPOT_LIGHT_COORDS ];
	varying vec4 vSpotLightCoord[ NUM_SPOT_LIGHT_COORDS ];
#endif
#ifdef USE_SHADOWMAP
	#if NUM_DIR_LIGHT_SHADOWS > 0
		uniform mat4 directionalShadowMatrix[ NUM_DIR_LIGHT_SHADOWS ];
		varying vec4 vDirectionalShadowCoord[ NUM_DIR_LIGHT_SHADOWS ];
		struct DirectionalLightShadow {
			float shadowIntensity;
			float shadowBias;
			float shadowNormalBias;
			float shadowRadius;
			vec2 shadowMapSize;
		};
		uniform DirectionalLightShadow directionalLightShadows[ NUM_DIR_LIGHT_SHADOWS ];
	#endif
	#if NUM_SPOT_LIGHT_SHADOWS > 0
		struct SpotLightShadow {
			float shadowIntensity;
			float shadowBias;
			float shadowNormalBias;
			float shadowRadius;
			vec2 shadowMapSize;
		};
		uniform SpotLightShadow spotLightShadows[ NUM_SPOT_LIGHT_SHADOWS ];
	#endif
	#if NUM_POINT_LIGHT_SHADOWS > 0
		uniform mat4 pointShadowMatrix[ NUM_POINT_LIGHT_SHADOWS ];
		varying vec4 vPointShadowCoord[ NUM_POINT_LIGHT_SHADOWS ];
		struct PointLightShadow {
			float shadowIntensity;
			float shadowBias;
			float shadowNormalBias;
			float shadowRadius;
			vec2 shadowMapSize;
			float shadowCameraNear;
			float shadowCameraFar;
		};
		uniform PointLightShadow pointLightShadows[ NUM_POINT_LIGHT_SHADOWS ];
	#endif
#endif`,Fm=`#if ( defined( USE_SHADOWMAP ) && ( NUM_DIR_LIGHT_SHADOWS > 0 || NUM_POINT_LIGHT_SHADOWS > 0 ) ) || ( NUM_SPOT_LIGHT_COORDS > 0 )
	vec3 shadowWorldNormal = inverseTransformDirection( transformedNormal, viewMatrix );
	vec4 shadowWorldPosition;
#endif
#if defined( USE_SHADOWMAP )
	#if NUM_DIR_LIGHT_SHADOWS > 0
		#pragma unroll_loop_start
		for ( int i = 0; i < NUM_DIR_LIGHT_SHADOWS; i ++ ) {
			shadowWorldPosition = worldPosition + vec4( shadowWorldNormal * directionalLightShadows[ i ].shadowNormalBias, 0 );
			vDirectionalShadowCoord[ i ] = directionalShadowMatrix[ i ] * shadowWorldPosition;
		}
		#pragma unroll_loop_end
	#endif
	#if NUM_POINT_LIGHT_SHADOWS > 0
		#pragma unroll_loop_start
		for ( int i = 0; i < NUM_POINT_LIGHT_SHADOWS; i ++ ) {
			shadowWorldPosition = worldPosition + vec4( shadowWorldNormal * pointLightShadows[ i ].shadowNormalBias, 0 );
			vPointShadowCoord[ i ] = pointShadowMatrix[ i ] * shadowWorldPosition;
		}
		#pragma unroll_loop_end
	#endif
#endif
#if NUM_SPOT_LIGHT_COORDS > 0
	#pragma unroll_loop_start
	for ( int i = 0; i < NUM_SPOT_LIGHT_COORDS; i ++ ) {
		shadowWorldPosition = worldPosition;
		#if ( defined( USE_SHADOWMAP ) && UNROLLED_LOOP_INDEX < NUM_SPOT_LIGHT_SHADOWS )
			shadowWorldPosition.xyz += shadowWorldNormal * spotLightShadows[ i ].shadowNormalBias;
		#endif
		vSpotLightCoord[ i ] = spotLightMatrix[ i ] * shadowWorldPosition;
	}
	#pragma unroll_loop_end
#endif`,Om=`float getShadowMask() {
	float shadow = 1.0;
	#ifdef USE_SHADOWMAP
	#if NUM_DIR_LIGHT_SHADOWS > 0
	DirectionalLightShadow directionalLight;
	#pragma unroll_loop_start
	for ( int i = 0; i < NUM_DIR_LIGHT_SHADOWS; i ++ ) {
		directionalLight = directionalLightShadows[ i ];
		shadow *= receiveShadow ? getShadow( directionalShadowMap[ i ], directionalLight.shadowMapSize, directionalLight.shadowIntensity, directionalLight.shadowBias, directionalLight.shadowRadius, vDirectionalShadowCoord[ i ] ) : 1.0;
	}
	#pragma unroll_loop_end
	#endif
	#if NUM_SPOT_LIGHT_SHADOWS > 0
	SpotLightShadow spotLight;
	#pragma unroll_loop_start
	for ( int i = 0; i < NUM_SPOT_LIGHT_SHADOWS; i ++ ) {
		spotLight = spotLightShadows[ i ];
		shadow *= receiveShadow ? getShadow( spotShadowMap[ i ], spotLight.shadowMapSize, spotLight.shadowIntensity, spotLight.shadowBias, spotLight.shadowRadius, vSpotLightCoord[ i ] ) : 1.0;
	}
	#pragma unroll_loop_end
	#endif
	#if NUM_POINT_LIGHT_SHADOWS > 0
	PointLightShadow pointLight;
	#pragma unroll_loop_start
	for ( int i = 0; i < NUM_POINT_LIGHT_SHADOWS; i ++ ) {
		pointLight = pointLightShadows[ i ];
		shadow *= receiveShadow ? getPointShadow( pointShadowMap[ i ], pointLight.shadowMapSize, pointLight.shadowIntensity, pointLight.shadowBias, pointLight.shadowRadius, vPointShadowCoord[ i ], pointLight.shadowCameraNear, pointLight.shadowCameraFar ) : 1.0;
	}
	#pragma unroll_loop_end
	#endif
	#endif
	return shadow;
}`,km=`#ifdef USE_SKINNING
	mat4 boneMatX = getBoneMatrix( skinIndex.x );
	mat4 boneMatY = getBoneMatrix( skinIndex.y );
	mat4 boneMatZ = getBoneMatrix( skinIndex.z );
	mat4 boneMatW = getBoneMatrix( skinIndex.w );
#endif`,Bm=`#ifdef USE_SKINNING
	uniform mat4 bindMatrix;
	uniform mat4 bindMatrixInverse;
	uniform highp sampler2D boneTexture;
	mat4 getBoneMatrix( const in float i ) {
		int size = textureSize( boneTexture, 0 ).x;
		int j = int( i ) * 4;
		int x = j % size;
		int y = j / size;
		vec4 v1 = texelFetch( boneTexture, ivec2( x, y ), 0 );
		vec4 v2 = texelFetch( boneTexture, ivec2( x + 1, y ), 0 );
		vec4 v3 = texelFetch( boneTexture, ivec2( x + 2, y ), 0 );
		vec4 v4 = texelFetch( boneTexture, ivec2( x + 3, y ), 0 );
		return mat4( v1, v2, v3, v4 );
	}
#endif`,zm=`#ifdef USE_SKINNING
	vec4 skinVertex = bindMatrix * vec4( transformed, 1.0 );
	vec4 skinned = vec4( 0.0 );
	skinned += boneMatX * skinVertex * skinWeight.x;
	skinned += boneMatY * skinVertex * skinWeight.y;
	skinned += boneMatZ * skinVertex * skinWeight.z;
	skinned += boneMatW * skinVertex * skinWeight.w;
	transformed = ( bindMatrixInverse * skinned ).xyz;
#endif`,Hm=`#ifdef USE_SKINNING
	mat4 skinMatrix = mat4( 0.0 );
	skinMatrix += skinWeight.x * boneMatX;
	skinMatrix += skinWeight.y * boneMatY;
	skinMatrix += skinWeight.z * boneMatZ;
	skinMatrix += skinWeight.w * boneMatW;
	skinMatrix = bindMatrixInverse * skinMatrix * bindMatrix;
	objectNormal = vec4( skinMatrix * vec4( objectNormal, 0.0 ) ).xyz;
	#ifdef USE_TANGENT
		objectTangent = vec4( skinMatrix * vec4( objectTangent, 0.0 ) ).xyz;
	#endif
#endif`,Vm=`float specularStrength;
#ifdef USE_SPECULARMAP
	vec4 texelSpecular = texture2D( specularMap, vSpecularMapUv );
	specularStrength = texelSpecular.r;
#else
	specularStrength = 1.0;
#endif`,Gm=`#ifdef USE_SPECULARMAP
	uniform sampler2D specularMap;
#endif`,$m=`#if defined( TONE_MAPPING )
	gl_FragColor.rgb = toneMapping( gl_FragColor.rgb );
#endif`,Wm=`#ifndef saturate
#define saturate( a ) clamp( a, 0.0, 1.0 )
#endif
uniform float toneMappingExposure;
vec3 LinearToneMapping( vec3 color ) {
	return saturate( toneMappingExposure * color );
}
vec3 ReinhardToneMapping( vec3 color ) {
	color *= toneMappingExposure;
	return saturate( color / ( vec3( 1.0 ) + color ) );
}
vec3 CineonToneMapping( vec3 color ) {
	color *= toneMappingExposure;
	color = max( vec3( 0.0 ), color - 0.004 );
	return pow( ( color * ( 6.2 * color + 0.5 ) ) / ( color * ( 6.2 * color + 1.7 ) + 0.06 ), vec3( 2.2 ) );
}
vec3 RRTAndODTFit( vec3 v ) {
	vec3 a = v * ( v + 0.0245786 ) - 0.000090537;
	vec3 b = v * ( 0.983729 * v + 0.4329510 ) + 0.238081;
	return a / b;
}
vec3 ACESFilmicToneMapping( vec3 color ) {
	const mat3 ACESInputMat = mat3(
		vec3( 0.59719, 0.07600, 0.02840 ),		vec3( 0.35458, 0.90834, 0.13383 ),
		vec3( 0.04823, 0.01566, 0.83777 )
	);
	const mat3 ACESOutputMat = mat3(
		vec3(  1.60475, -0.10208, -0.00327 ),		vec3( -0.53108,  1.10813, -0.07276 ),
		vec3( -0.07367, -0.00605,  1.07602 )
	);
	color *= toneMappingExposure / 0.6;
	color = ACESInputMat * color;
	color = RRTAndODTFit( color );
	color = ACESOutputMat * color;
	return saturate( color );
}
const mat3 LINEAR_REC2020_TO_LINEAR_SRGB = mat3(
	vec3( 1.6605, - 0.1246, - 0.0182 ),
	vec3( - 0.5876, 1.1329, - 0.1006 ),
	vec3( - 0.0728, - 0.0083, 1.1187 )
);
const mat3 LINEAR_SRGB_TO_LINEAR_REC2020 = mat3(
	vec3( 0.6274, 0.0691, 0.0164 ),
	vec3( 0.3293, 0.9195, 0.0880 ),
	vec3( 0.0433, 0.0113, 0.8956 )
);
vec3 agxDefaultContrastApprox( vec3 x ) {
	vec3 x2 = x * x;
	vec3 x4 = x2 * x2;
	return + 15.5 * x4 * x2
		- 40.14 * x4 * x
		+ 31.96 * x4
		- 6.868 * x2 * x
		+ 0.4298 * x2
		+ 0.1191 * x
		- 0.00232;
}
vec3 AgXToneMapping( vec3 color ) {
	const mat3 AgXInsetMatrix = mat3(
		vec3( 0.856627153315983, 0.137318972929847, 0.11189821299995 ),
		vec3( 0.0951212405381588, 0.761241990602591, 0.0767994186031903 ),
		vec3( 0.0482516061458583, 0.101439036467562, 0.811302368396859 )
	);
	const mat3 AgXOutsetMatrix = mat3(
		vec3( 1.1271005818144368, - 0.1413297634984383, - 0.14132976349843826 ),
		vec3( - 0.11060664309660323, 1.157823702216272, - 0.11060664309660294 ),
		vec3( - 0.016493938717834573, - 0.016493938717834257, 1.2519364065950405 )
	);
	const float AgxMinEv = - 12.47393;	const float AgxMaxEv = 4.026069;
	color *= toneMappingExposure;
	color = LINEAR_SRGB_TO_LINEAR_REC2020 * color;
	color = AgXInsetMatrix * color;
	color = max( color, 1e-10 );	color = log2( color );
	color = ( color - AgxMinEv ) / ( AgxMaxEv - AgxMinEv );
	color = clamp( color, 0.0, 1.0 );
	color = agxDefaultContrastApprox( color );
	color = AgXOutsetMatrix * color;
	color = pow( max( vec3( 0.0 ), color ), vec3( 2.2 ) );
	color = LINEAR_REC2020_TO_LINEAR_SRGB * color;
	color = clamp( color, 0.0, 1.0 );
	return color;
}
vec3 NeutralToneMapping( vec3 color ) {
	const float StartCompression = 0.8 - 0.04;
	const float Desaturation = 0.15;
	color *= toneMappingExposure;
	float x = min( color.r, min( color.g, color.b ) );
	float offset = x < 0.08 ? x - 6.25 * x * x : 0.04;
	color -= offset;
	float peak = max( color.r, max( color.g, color.b ) );
	if ( peak < StartCompression ) return color;
	float d = 1. - StartCompression;
	float newPeak = 1. - d * d / ( peak + d - StartCompression );
	color *= newPeak / peak;
	float g = 1. - 1. / ( Desaturation * ( peak - newPeak ) + 1. );
	return mix( color, vec3( newPeak ), g );
}
vec3 CustomToneMapping( vec3 color ) { return color; }`,qm=`#ifdef USE_TRANSMISSION
	material.transmission = transmission;
	material.transmissionAlpha = 1.0;
	material.thickness = thickness;
	material.attenuationDistance = attenuationDistance;
	material.attenuationColor = attenuationColor;
	#ifdef USE_TRANSMISSIONMAP
		material.transmission *= texture2D( transmissionMap, vTransmissionMapUv ).r;
	#endif
	#ifdef USE_THICKNESSMAP
		material.thickness *= texture2D( thicknessMap, vThicknessMapUv ).g;
	#endif
	vec3 pos = vWorldPosition;
	vec3 v = normalize( cameraPosition - pos );
	vec3 n = inverseTransformDirection( normal, viewMatrix );
	vec4 transmitted = getIBLVolumeRefraction(
		n, v, material.roughness, material.diffuseColor, material.specularColor, material.specularF90,
		pos, modelMatrix, viewMatrix, projectionMatrix, material.dispersion, material.ior, material.thickness,
		material.attenuationColor, material.attenuationDistance );
	material.transmissionAlpha = mix( material.transmissionAlpha, transmitted.a, material.transmission );
	totalDiffuse = mix( totalDiffuse, transmitted.rgb, material.transmission );
#endif`,Xm=`#ifdef USE_TRANSMISSION
	uniform float transmission;
	uniform float thickness;
	uniform float attenuationDistance;
	uniform vec3 attenuationColor;
	#ifdef USE_TRANSMISSIONMAP
		uniform sampler2D transmissionMap;
	#endif
	#ifdef USE_THICKNESSMAP
		uniform sampler2D thicknessMap;
	#endif
	uniform vec2 transmissionSamplerSize;
	uniform sampler2D transmissionSamplerMap;
	uniform mat4 modelMatrix;
	uniform mat4 projectionMatrix;
	varying vec3 vWorldPosition;
	float w0( float a ) {
		return ( 1.0 / 6.0 ) * ( a * ( a * ( - a + 3.0 ) - 3.0 ) + 1.0 );
	}
	float w1( float a ) {
		return ( 1.0 / 6.0 ) * ( a *  a * ( 3.0 * a - 6.0 ) + 4.0 );
	}
	float w2( float a ){
		return ( 1.0 / 6.0 ) * ( a * ( a * ( - 3.0 * a + 3.0 ) + 3.0 ) + 1.0 );
	}
	float w3( float a ) {
		return ( 1.0 / 6.0 ) * ( a * a * a );
	}
	float g0( float a ) {
		return w0( a ) + w1( a );
	}
	float g1( float a ) {
		return w2( a ) + w3( a );
	}
	float h0( float a ) {
		return - 1.0 + w1( a ) / ( w0( a ) + w1( a ) );
	}
	float h1( float a ) {
		return 1.0 + w3( a ) / ( w2( a ) + w3( a ) );
	}
	vec4 bicubic( sampler2D tex, vec2 uv, vec4 texelSize, float lod ) {
		uv = uv * texelSize.zw + 0.5;
		vec2 iuv = floor( uv );
		vec2 fuv = fract( uv );
		float g0x = g0( fuv.x );
		float g1x = g1( fuv.x );
		float h0x = h0( fuv.x );
		float h1x = h1( fuv.x );
		float h0y = h0( fuv.y );
		float h1y = h1( fuv.y );
		vec2 p0 = ( vec2( iuv.x + h0x, iuv.y + h0y ) - 0.5 ) * texelSize.xy;
		vec2 p1 = ( vec2( iuv.x + h1x, iuv.y + h0y ) - 0.5 ) * texelSize.xy;
		vec2 p2 = ( vec2( iuv.x + h0x, iuv.y + h1y ) - 0.5 ) * texelSize.xy;
		vec2 p3 = ( vec2( iuv.x + h1x, iuv.y + h1y ) - 0.5 ) * texelSize.xy;
		return g0( fuv.y ) * ( g0x * textureLod( tex, p0, lod ) + g1x * textureLod( tex, p1, lod ) ) +
			g1( fuv.y ) * ( g0x * textureLod( tex, p2, lod ) + g1x * textureLod( tex, p3, lod ) );
	}
	vec4 textureBicubic( sampler2D sampler, vec2 uv, float lod ) {
		vec2 fLodSize = vec2( textureSize( sampler, int( lod ) ) );
		vec2 cLodSize = vec2( textureSize( sampler, int( lod + 1.0 ) ) );
		vec2 fLodSizeInv = 1.0 / fLodSize;
		vec2 cLodSizeInv = 1.0 / cLodSize;
		vec4 fSample = bicubic( sampler, uv, vec4( fLodSizeInv, fLodSize ), floor( lod ) );
		vec4 cSample = bicubic( sampler, uv, vec4( cLodSizeInv, cLodSize ), ceil( lod ) );
		return mix( fSample, cSample, fract( lod ) );
	}
	vec3 getVolumeTransmissionRay( const in vec3 n, const in vec3 v, const in float thickness, const in float ior, const in mat4 modelMatrix ) {
		vec3 refractionVector = refract( - v, normalize( n ), 1.0 / ior );
		vec3 modelScale;
		modelScale.x = length( vec3( modelMatrix[ 0 ].xyz ) );
		modelScale.y = length( vec3( modelMatrix[ 1 ].xyz ) );
		modelScale.z = length( vec3( modelMatrix[ 2 ].xyz ) );
		return normalize( refractionVector ) * thickness * modelScale;
	}
	float applyIorToRoughness( const in float roughness, const in float ior ) {
		return roughness * clamp( ior * 2.0 - 2.0, 0.0, 1.0 );
	}
	vec4 getTransmissionSample( const in vec2 fragCoord, const in float roughness, const in float ior ) {
		float lod = log2( transmissionSamplerSize.x ) * applyIorToRoughness( roughness, ior );
		return textureBicubic( transmissionSamplerMap, fragCoord.xy, lod );
	}
	vec3 volumeAttenuation( const in float transmissionDistance, const in vec3 attenuationColor, const in float attenuationDistance ) {
		if ( isinf( attenuationDistance ) ) {
			return vec3( 1.0 );
		} else {
			vec3 attenuationCoefficient = -log( attenuationColor ) / attenuationDistance;
			vec3 transmittance = exp( - attenuationCoefficient * transmissionDistance );			return transmittance;
		}
	}
	vec4 getIBLVolumeRefraction( const in vec3 n, const in vec3 v, const in float roughness, const in vec3 diffuseColor,
		const in vec3 specularColor, const in float specularF90, const in vec3 position, const in mat4 modelMatrix,
		const in mat4 viewMatrix, const in mat4 projMatrix, const in float dispersion, const in float ior, const in float thickness,
		const in vec3 attenuationColor, const in float attenuationDistance ) {
		vec4 transmittedLight;
		vec3 transmittance;
		#ifdef USE_DISPERSION
			float halfSpread = ( ior - 1.0 ) * 0.025 * dispersion;
			vec3 iors = vec3( ior - halfSpread, ior, ior + halfSpread );
			for ( int i = 0; i < 3; i ++ ) {
				vec3 transmissionRay = getVolumeTransmissionRay( n, v, thickness, iors[ i ], modelMatrix );
				vec3 refractedRayExit = position + transmissionRay;
				vec4 ndcPos = projMatrix * viewMatrix * vec4( refractedRayExit, 1.0 );
				vec2 refractionCoords = ndcPos.xy / ndcPos.w;
				refractionCoords += 1.0;
				refractionCoords /= 2.0;
				vec4 transmissionSample = getTransmissionSample( refractionCoords, roughness, iors[ i ] );
				transmittedLight[ i ] = transmissionSample[ i ];
				transmittedLight.a += transmissionSample.a;
				transmittance[ i ] = diffuseColor[ i ] * volumeAttenuation( length( transmissionRay ), attenuationColor, attenuationDistance )[ i ];
			}
			transmittedLight.a /= 3.0;
		#else
			vec3 transmissionRay = getVolumeTransmissionRay( n, v, thickness, ior, modelMatrix );
			vec3 refractedRayExit = position + transmissionRay;
			vec4 ndcPos = projMatrix * viewMatrix * vec4( refractedRayExit, 1.0 );
			vec2 refractionCoords = ndcPos.xy / ndcPos.w;
			refractionCoords += 1.0;
			refractionCoords /= 2.0;
			transmittedLight = getTransmissionSample( refractionCoords, roughness, ior );
			transmittance = diffuseColor * volumeAttenuation( length( transmissionRay ), attenuationColor, attenuationDistance );
		#endif
		vec3 attenuatedColor = transmittance * transmittedLight.rgb;
		vec3 F = EnvironmentBRDF( n, v, specularColor, specularF90, roughness );
		float transmittanceFactor = ( transmittance.r + transmittance.g + transmittance.b ) / 3.0;
		return vec4( ( 1.0 - F ) * attenuatedColor, 1.0 - ( 1.0 - transmittedLight.a ) * transmittanceFactor );
	}
#endif`,jm=`#if defined( USE_UV ) || defined( USE_ANISOTROPY )
	varying vec2 vUv;
#endif
#ifdef USE_MAP
	varying vec2 vMapUv;
#endif
#ifdef USE_ALPHAMAP
	varying vec2 vAlphaMapUv;
#endif
#ifdef USE_LIGHTMAP
	varying vec2 vLightMapUv;
#endif
#ifdef USE_AOMAP
	varying vec2 vAoMapUv;
#endif
#ifdef USE_BUMPMAP
	varying vec2 vBumpMapUv;
#endif
#ifdef USE_NORMALMAP
	varying vec2 vNormalMapUv;
#endif
#ifdef USE_EMISSIVEMAP
	varying vec2 vEmissiveMapUv;
#endif
#ifdef USE_METALNESSMAP
	varying vec2 vMetalnessMapUv;
#endif
#ifdef USE_ROUGHNESSMAP
	varying vec2 vRoughnessMapUv;
#endif
#ifdef USE_ANISOTROPYMAP
	varying vec2 vAnisotropyMapUv;
#endif
#ifdef USE_CLEARCOATMAP
	varying vec2 vClearcoatMapUv;
#endif
#ifdef USE_CLEARCOAT_NORMALMAP
	varying vec2 vClearcoatNormalMapUv;
#endif
#ifdef USE_CLEARCOAT_ROUGHNESSMAP
	varying vec2 vClearcoatRoughnessMapUv;
#endif
#ifdef USE_IRIDESCENCEMAP
	varying vec2 vIridescenceMapUv;
#endif
#ifdef USE_IRIDESCENCE_THICKNESSMAP
	varying vec2 vIridescenceThicknessMapUv;
#endif
#ifdef USE_SHEEN_COLORMAP
	varying vec2 vSheenColorMapUv;
#endif
#ifdef USE_SHEEN_ROUGHNESSMAP
	varying vec2 vSheenRoughnessMapUv;
#endif
#ifdef USE_SPECULARMAP
	varying vec2 vSpecularMapUv;
#endif
#ifdef USE_SPECULAR_COLORMAP
	varying vec2 vSpecularColorMapUv;
#endif
#ifdef USE_SPECULAR_INTENSITYMAP
	varying vec2 vSpecularIntensityMapUv;
#endif
#ifdef USE_TRANSMISSIONMAP
	uniform mat3 transmissionMapTransform;
	varying vec2 vTransmissionMapUv;
#endif
#ifdef USE_THICKNESSMAP
	uniform mat3 thicknessMapTransform;
	varying vec2 vThicknessMapUv;
#endif`,Ym=`#if defined( USE_UV ) || defined( USE_ANISOTROPY )
	varying vec2 vUv;
#endif
#ifdef USE_MAP
	uniform mat3 mapTransform;
	varying vec2 vMapUv;
#endif
#ifdef USE_ALPHAMAP
	uniform mat3 alphaMapTransform;
	varying vec2 vAlphaMapUv;
#endif
#ifdef USE_LIGHTMAP
	uniform mat3 lightMapTransform;
	varying vec2 vLightMapUv;
#endif
#ifdef USE_AOMAP
	uniform mat3 aoMapTransform;
	varying vec2 vAoMapUv;
#endif
#ifdef USE_BUMPMAP
	uniform mat3 bumpMapTransform;
	varying vec2 vBumpMapUv;
#endif
#ifdef USE_NORMALMAP
	uniform mat3 normalMapTransform;
	varying vec2 vNormalMapUv;
#endif
#ifdef USE_DISPLACEMENTMAP
	uniform mat3 displacementMapTransform;
	varying vec2 vDisplacementMapUv;
#endif
#ifdef USE_EMISSIVEMAP
	uniform mat3 emissiveMapTransform;
	varying vec2 vEmissiveMapUv;
#endif
#ifdef USE_METALNESSMAP
	uniform mat3 metalnessMapTransform;
	varying vec2 vMetalnessMapUv;
#endif
#ifdef USE_ROUGHNESSMAP
	uniform mat3 roughnessMapTransform;
	varying vec2 vRoughnessMapUv;
#endif
#ifdef USE_ANISOTROPYMAP
	uniform mat3 anisotropyMapTransform;
	varying vec2 vAnisotropyMapUv;
#endif
#ifdef USE_CLEARCOATMAP
	uniform mat3 clearcoatMapTransform;
	varying vec2 vClearcoatMapUv;
#endif
#ifdef USE_CLEARCOAT_NORMALMAP
	uniform mat3 clearcoatNormalMapTransform;
	varying vec2 vClearcoatNormalMapUv;
#endif
#ifdef USE_CLEARCOAT_ROUGHNESSMAP
	uniform mat3 clearcoatRoughnessMapTransform;
	varying vec2 vClearcoatRoughnessMapUv;
#endif
#ifdef USE_SHEEN_COLORMAP
	uniform mat3 sheenColorMapTransform;
	varying vec2 vSheenColorMapUv;
#endif
#ifdef USE_SHEEN_ROUGHNESSMAP
	uniform mat3 sheenRoughnessMapTransform;
	varying vec2 vSheenRoughnessMapUv;
#endif
#ifdef USE_IRIDESCENCEMAP
	uniform mat3 iridescenceMapTransform;
	varying vec2 vIridescenceMapUv;
#endif
#ifdef USE_IRIDESCENCE_THICKNESSMAP
	uniform mat3 iridescenceThicknessMapTransform;
	varying vec2 vIridescenceThicknessMapUv;
#endif
#ifdef USE_SPECULARMAP
	uniform mat3 specularMapTransform;
	varying vec2 vSpecularMapUv;
#endif
#ifdef USE_SPECULAR_COLORMAP
	uniform mat3 specularColorMapTransform;
	varying vec2 vSpecularColorMapUv;
#endif
#ifdef USE_SPECULAR_INTENSITYMAP
	uniform mat3 specularIntensityMapTransform;
	varying vec2 vSpecularIntensityMapUv;
#endif
#ifdef USE_TRANSMISSIONMAP
	uniform mat3 transmissionMapTransform;
	varying vec2 vTransmissionMapUv;
#endif
#ifdef USE_THICKNESSMAP
	uniform mat3 thicknessMapTransform;
	varying vec2 vThicknessMapUv;
#endif`,Km=`#if defined( USE_UV ) || defined( USE_ANISOTROPY )
	vUv = vec3( uv, 1 ).xy;
#endif
#ifdef USE_MAP
	vMapUv = ( mapTransform * vec3( MAP_UV, 1 ) ).xy;
#endif
#ifdef USE_ALPHAMAP
	vAlphaMapUv = ( alphaMapTransform * vec3( ALPHAMAP_UV, 1 ) ).xy;
#endif
#ifdef USE_LIGHTMAP
	vLightMapUv = ( lightMapTransform * vec3( LIGHTMAP_UV, 1 ) ).xy;
#endif
#ifdef USE_AOMAP
	vAoMapUv = ( aoMapTransform * vec3( AOMAP_UV, 1 ) ).xy;
#endif
#ifdef USE_BUMPMAP
	vBumpMapUv = ( bumpMapTransform * vec3( BUMPMAP_UV, 1 ) ).xy;
#endif
#ifdef USE_NORMALMAP
	vNormalMapUv = ( normalMapTransform * vec3( NORMALMAP_UV, 1 ) ).xy;
#endif
#ifdef USE_DISPLACEMENTMAP
	vDisplacementMapUv = ( displacementMapTransform * vec3( DISPLACEMENTMAP_UV, 1 ) ).xy;
#endif
#ifdef USE_EMISSIVEMAP
	vEmissiveMapUv = ( emissiveMapTransform * vec3( EMISSIVEMAP_UV, 1 ) ).xy;
#endif
#ifdef USE_METALNESSMAP
	vMetalnessMapUv = ( metalnessMapTransform * vec3( METALNESSMAP_UV, 1 ) ).xy;
#endif
#ifdef USE_ROUGHNESSMAP
	vRoughnessMapUv = ( roughnessMapTransform * vec3( ROUGHNESSMAP_UV, 1 ) ).xy;
#endif
#ifdef USE_ANISOTROPYMAP
	vAnisotropyMapUv = ( anisotropyMapTransform * vec3( ANISOTROPYMAP_UV, 1 ) ).xy;
#endif
#ifdef USE_CLEARCOATMAP
	vClearcoatMapUv = ( clearcoatMapTransform * vec3( CLEARCOATMAP_UV, 1 ) ).xy;
#endif
#ifdef USE_CLEARCOAT_NORMALMAP
	vClearcoatNormalMapUv = ( clearcoatNormalMapTransform * vec3( CLEARCOAT_NORMALMAP_UV, 1 ) ).xy;
#endif
#ifdef USE_CLEARCOAT_ROUGHNESSMAP
	vClearcoatRoughnessMapUv = ( clearcoatRoughnessMapTransform * vec3( CLEARCOAT_ROUGHNESSMAP_UV, 1 ) ).xy;
#endif
#ifdef USE_IRIDESCENCEMAP
	vIridescenceMapUv = ( iridescenceMapTransform * vec3( IRIDESCENCEMAP_UV, 1 ) ).xy;
#endif
#ifdef USE_IRIDESCENCE_THICKNESSMAP
	vIridescenceThicknessMapUv = ( iridescenceThicknessMapTransform * vec3( IRIDESCENCE_THICKNESSMAP_UV, 1 ) ).xy;
#endif
#ifdef USE_SHEEN_COLORMAP
	vSheenColorMapUv = ( sheenColorMapTransform * vec3( SHEEN_COLORMAP_UV, 1 ) ).xy;
#endif
#ifdef USE_SHEEN_ROUGHNESSMAP
	vSheenRoughnessMapUv = ( sheenRoughnessMapTransform * vec3( SHEEN_ROUGHNESSMAP_UV, 1 ) ).xy;
#endif
#ifdef USE_SPECULARMAP
	vSpecularMapUv = ( specularMapTransform * vec3( SPECULARMAP_UV, 1 ) ).xy;
#endif
#ifdef USE_SPECULAR_COLORMAP
	vSpecularColorMapUv = ( specularColorMapTransform * vec3( SPECULAR_COLORMAP_UV, 1 ) ).xy;
#endif
#ifdef USE_SPECULAR_INTENSITYMAP
	vSpecularIntensityMapUv = ( specularIntensityMapTransform * vec3( SPECULAR_INTENSITYMAP_UV, 1 ) ).xy;
#endif
#ifdef USE_TRANSMISSIONMAP
	vTransmissionMapUv = ( transmissionMapTransform * vec3( TRANSMISSIONMAP_UV, 1 ) ).xy;
#endif
#ifdef USE_THICKNESSMAP
	vThicknessMapUv = ( thicknessMapTransform * vec3( THICKNESSMAP_UV, 1 ) ).xy;
#endif`,Zm=`#if defined( USE_ENVMAP ) || defined( DISTANCE ) || defined ( USE_SHADOWMAP ) || defined ( USE_TRANSMISSION ) || NUM_SPOT_LIGHT_COORDS > 0
	vec4 worldPosition = vec4( transformed, 1.0 );
	#ifdef USE_BATCHING
		worldPosition = batchingMatrix * worldPosition;
	#endif
	#ifdef USE_INSTANCING
		worldPosition = instanceMatrix * worldPosition;
	#endif
	worldPosition = modelMatrix * worldPosition;
#endif`;const Jm=`varying vec2 vUv;
uniform mat3 uvTransform;
void main() {
	vUv = ( uvTransform * vec3( uv, 1 ) ).xy;
	gl_Position = vec4( position.xy, 1.0, 1.0 );
}`,Qm=`uniform sampler2D t2D;
uniform float backgroundIntensity;
varying vec2 vUv;
void main() {
	vec4 texColor = texture2D( t2D, vUv );
	#ifdef DECODE_VIDEO_TEXTURE
		texColor = vec4( mix( pow( texColor.rgb * 0.9478672986 + vec3( 0.0521327014 ), vec3( 2.4 ) ), texColor.rgb * 0.0773993808, vec3( lessThanEqual( texColor.rgb, vec3( 0.04045 ) ) ) ), texColor.w );
	#endif
	texColor.rgb *= backgroundIntensity;
	gl_FragColor = texColor;
	#include <tonemapping_fragment>
	#include <colorspace_fragment>
}`,eg=`varying vec3 vWorldDirection;
#include <common>
void main() {
	vWorldDirection = transformDirection( position, modelMatrix );
	#include <begin_vertex>
	#include <project_vertex>
	gl_Position.z = gl_Position.w;
}`,tg=`#ifdef ENVMAP_TYPE_CUBE
	uniform samplerCube envMap;
#elif defined( ENVMAP_TYPE_CUBE_UV )
	uniform sampler2D envMap;
#endif
uniform float flipEnvMap;
uniform float backgroundBlurriness;
uniform float backgroundIntensity;
uniform mat3 backgroundRotation;
varying vec3 vWorldDirection;
#include <cube_uv_reflection_fragment>
void main() {
	#ifdef ENVMAP_TYPE_CUBE
		vec4 texColor = textureCube( envMap, backgroundRotation * vec3( flipEnvMap * vWorldDirection.x, vWorldDirection.yz ) );
	#elif defined( ENVMAP_TYPE_CUBE_UV )
		vec4 texColor = textureCubeUV( envMap, backgroundRotation * vWorldDirection, backgroundBlurriness );
	#else
		vec4 texColor = vec4( 0.0, 0.0, 0.0, 1.0 );
	#endif
	texColor.rgb *= backgroundIntensity;
	gl_FragColor = texColor;
	#include <tonemapping_fragment>
	#include <colorspace_fragment>
}`,ng=`varying vec3 vWorldDirection;
#include <common>
void main() {
	vWorldDirection = transformDirection( position, modelMatrix );
	#include <begin_vertex>
	#include <project_vertex>
	gl_Position.z = gl_Position.w;
}`,ig=`uniform samplerCube tCube;
uniform float tFlip;
uniform float opacity;
varying vec3 vWorldDirection;
void main() {
	vec4 texColor = textureCube( tCube, vec3( tFlip * vWorldDirection.x, vWorldDirection.yz ) );
	gl_FragColor = texColor;
	gl_FragColor.a *= opacity;
	#include <tonemapping_fragment>
	#include <colorspace_fragment>
}`,sg=`#include <common>
#include <batching_pars_vertex>
#include <uv_pars_vertex>
#include <displacementmap_pars_vertex>
#include <morphtarget_pars_vertex>
#include <skinning_pars_vertex>
#include <logdepthbuf_pars_vertex>
#include <clipping_planes_pars_vertex>
varying vec2 vHighPrecisionZW;
void main() {
	#include <uv_vertex>
	#include <batching_vertex>
	#include <skinbase_vertex>
	#include <morphinstance_vertex>
	#ifdef USE_DISPLACEMENTMAP
		#include <beginnormal_vertex>
		#include <morphnormal_vertex>
		#include <skinnormal_vertex>
	#endif
	#include <begin_vertex>
	#include <morphtarget_vertex>
	#include <skinning_vertex>
	#include <displacementmap_vertex>
	#include <project_vertex>
	#include <logdepthbuf_vertex>
	#include <clipping_planes_vertex>
	vHighPrecisionZW = gl_Position.zw;
}`,rg=`#if DEPTH_PACKING == 3200
	uniform float opacity;
#endif
#include <common>
#include <packing>
#include <uv_pars_fragment>
#include <map_pars_fragment>
#include <alphamap_pars_fragment>
#include <alphatest_pars_fragment>
#include <alphahash_pars_fragment>
#include <logdepthbuf_pars_fragment>
#include <clipping_planes_pars_fragment>
varying vec2 vHighPrecisionZW;
void main() {
	vec4 diffuseColor = vec4( 1.0 );
	#include <clipping_planes_fragment>
	#if DEPTH_PACKING == 3200
		diffuseColor.a = opacity;
	#endif
	#include <map_fragment>
	#include <alphamap_fragment>
	#include <alphatest_fragment>
	#include <alphahash_fragment>
	#include <logdepthbuf_fragment>
	#ifdef USE_REVERSED_DEPTH_BUFFER
		float fragCoordZ = vHighPrecisionZW[ 0 ] / vHighPrecisionZW[ 1 ];
	#else
		float fragCoordZ = 0.5 * vHighPrecisionZW[ 0 ] / vHighPrecisionZW[ 1 ] + 0.5;
	#endif
	#if DEPTH_PACKING == 3200
		gl_FragColor = vec4( vec3( 1.0 - fragCoordZ ), opacity );
	#elif DEPTH_PACKING == 3201
		gl_FragColor = packDepthToRGBA( fragCoordZ );
	#elif DEPTH_PACKING == 3202
		gl_FragColor = vec4( packDepthToRGB( fragCoordZ ), 1.0 );
	#elif DEPTH_PACKING == 3203
		gl_FragColor = vec4( packDepthToRG( fragCoordZ ), 0.0, 1.0 );
	#endif
}`,ag=`#define DISTANCE
varying vec3 vWorldPosition;
#include <common>
#include <batching_pars_vertex>
#include <uv_pars_vertex>
#include <displacementmap_pars_vertex>
#include <morphtarget_pars_vertex>
#include <skinning_pars_vertex>
#include <clipping_planes_pars_vertex>
void main() {
	#include <uv_vertex>
	#include <batching_vertex>
	#include <skinbase_vertex>
	#include <morphinstance_vertex>
	#ifdef USE_DISPLACEMENTMAP
		#include <beginnormal_vertex>
		#include <morphnormal_vertex>
		#include <skinnormal_vertex>
	#endif
	#include <begin_vertex>
	#include <morphtarget_vertex>
	#include <skinning_vertex>
	#include <displacementmap_vertex>
	#include <project_vertex>
	#include <worldpos_vertex>
	#include <clipping_planes_vertex>
	vWorldPosition = worldPosition.xyz;
}`,og=`#define DISTANCE
uniform vec3 referencePosition;
uniform float nearDistance;
uniform float farDistance;
varying vec3 vWorldPosition;
#include <common>
#include <packing>
#include <uv_pars_fragment>
#include <map_pars_fragment>
#include <alphamap_pars_fragment>
#include <alphatest_pars_fragment>
#include <alphahash_pars_fragment>
#include <clipping_planes_pars_fragment>
void main () {
	vec4 diffuseColor = vec4( 1.0 );
	#include <clipping_planes_fragment>
	#include <map_fragment>
	#include <alphamap_fragment>
	#include <alphatest_fragment>
	#include <alphahash_fragment>
	float dist = length( vWorldPosition - referencePosition );
	dist = ( dist - nearDistance ) / ( farDistance - nearDistance );
	dist = saturate( dist );
	gl_FragColor = packDepthToRGBA( dist );
}`,lg=`varying vec3 vWorldDirection;
#include <common>
void main() {
	vWorldDirection = transformDirection( position, modelMatrix );
	#include <begin_vertex>
	#include <project_vertex>
}`,cg=`uniform sampler2D tEquirect;
varying vec3 vWorldDirection;
#include <common>
void main() {
	vec3 direction = normalize( vWorldDirection );
	vec2 sampleUV = equirectUv( direction );
	gl_FragColor = texture2D( tEquirect, sampleUV );
	#include <tonemapping_fragment>
	#include <colorspace_fragment>
}`,hg=`uniform float scale;
attribute float lineDistance;
varying float vLineDistance;
#include <common>
#include <uv_pars_vertex>
#include <color_pars_vertex>
#include <fog_pars_vertex>
#include <morphtarget_pars_vertex>
#include <logdepthbuf_pars_vertex>
#include <clipping_planes_pars_vertex>
void main() {
	vLineDistance = scale * lineDistance;
	#include <uv_vertex>
	#include <color_vertex>
	#include <morphinstance_vertex>
	#include <morphcolor_vertex>
	#include <begin_vertex>
	#include <morphtarget_vertex>
	#include <project_vertex>
	#include <logdepthbuf_vertex>
	#include <clipping_planes_vertex>
	#include <fog_vertex>
}`,ug=`uniform vec3 diffuse;
uniform float opacity;
uniform float dashSize;
uniform float totalSize;
varying float vLineDistance;
#include <common>
#include <color_pars_fragment>
#include <uv_pars_fragment>
#include <map_pars_fragment>
#include <fog_pars_fragment>
#include <logdepthbuf_pars_fragment>
#include <clipping_planes_pars_fragment>
void main() {
	vec4 diffuseColor = vec4( diffuse, opacity );
	#include <clipping_planes_fragment>
	if ( mod( vLineDistance, totalSize ) > dashSize ) {
		discard;
	}
	vec3 outgoingLight = vec3( 0.0 );
	#include <logdepthbuf_fragment>
	#include <map_fragment>
	#include <color_fragment>
	outgoingLight = diffuseColor.rgb;
	#include <opaque_fragment>
	#include <tonemapping_fragment>
	#include <colorspace_fragment>
	#include <fog_fragment>
	#include <premultiplied_alpha_fragment>
}`,dg=`#include <common>
#include <batching_pars_vertex>
#include <uv_pars_vertex>
#include <envmap_pars_vertex>
#include <color_pars_vertex>
#include <fog_pars_vertex>
#include <morphtarget_pars_vertex>
#include <skinning_pars_vertex>
#include <logdepthbuf_pars_vertex>
#include <clipping_planes_pars_vertex>
void main() {
	#include <uv_vertex>
	#include <color_vertex>
	#include <morphinstance_vertex>
	#include <morphcolor_vertex>
	#include <batching_vertex>
	#if defined ( USE_ENVMAP ) || defined ( USE_SKINNING )
		#include <beginnormal_vertex>
		#include <morphnormal_vertex>
		#include <skinbase_vertex>
		#include <skinnormal_vertex>
		#include <defaultnormal_vertex>
	#endif
	#include <begin_vertex>
	#include <morphtarget_vertex>
	#include <skinning_vertex>
	#include <project_vertex>
	#include <logdepthbuf_vertex>
	#include <clipping_planes_vertex>
	#include <worldpos_vertex>
	#include <envmap_vertex>
	#include <fog_vertex>
}`,fg=`uniform vec3 diffuse;
uniform float opacity;
#ifndef FLAT_SHADED
	varying vec3 vNormal;
#endif
#include <common>
#include <dithering_pars_fragment>
#include <color_pars_fragment>
#include <uv_pars_fragment>
#include <map_pars_fragment>
#include <alphamap_pars_fragment>
#include <alphatest_pars_fragment>
#include <alphahash_pars_fragment>
#include <aomap_pars_fragment>
#include <lightmap_pars_fragment>
#include <envmap_common_pars_fragment>
#include <envmap_pars_fragment>
#include <fog_pars_fragment>
#include <specularmap_pars_fragment>
#include <logdepthbuf_pars_fragment>
#include <clipping_planes_pars_fragment>
void main() {
	vec4 diffuseColor = vec4( diffuse, opacity );
	#include <clipping_planes_fragment>
	#include <logdepthbuf_fragment>
	#include <map_fragment>
	#include <color_fragment>
	#include <alphamap_fragment>
	#include <alphatest_fragment>
	#include <alphahash_fragment>
	#include <specularmap_fragment>
	ReflectedLight reflectedLight = ReflectedLight( vec3( 0.0 ), vec3( 0.0 ), vec3( 0.0 ), vec3( 0.0 ) );
	#ifdef USE_LIGHTMAP
		vec4 lightMapTexel = texture2D( lightMap, vLightMapUv );
		reflectedLight.indirectDiffuse += lightMapTexel.rgb * lightMapIntensity * RECIPROCAL_PI;
	#else
		reflectedLight.indirectDiffuse += vec3( 1.0 );
	#endif
	#include <aomap_fragment>
	reflectedLight.indirectDiffuse *= diffuseColor.rgb;
	vec3 outgoingLight = reflectedLight.indirectDiffuse;
	#include <envmap_fragment>
	#include <opaque_fragment>
	#include <tonemapping_fragment>
	#include <colorspace_fragment>
	#include <fog_fragment>
	#include <premultiplied_alpha_fragment>
	#include <dithering_fragment>
}`,pg=`#define LAMBERT
varying vec3 vViewPosition;
#include <common>
#include <batching_pars_vertex>
#include <uv_pars_vertex>
#include <displacementmap_pars_vertex>
#include <envmap_pars_vertex>
#include <color_pars_vertex>
#include <fog_pars_vertex>
#include <normal_pars_vertex>
#include <morphtarget_pars_vertex>
#include <skinning_pars_vertex>
#include <shadowmap_pars_vertex>
#include <logdepthbuf_pars_vertex>
#include <clipping_planes_pars_vertex>
void main() {
	#include <uv_vertex>
	#include <color_vertex>
	#include <morphinstance_vertex>
	#include <morphcolor_vertex>
	#include <batching_vertex>
	#include <beginnormal_vertex>
	#include <morphnormal_vertex>
	#include <skinbase_vertex>
	#include <skinnormal_vertex>
	#include <defaultnormal_vertex>
	#include <normal_vertex>
	#include <begin_vertex>
	#include <morphtarget_vertex>
	#include <skinning_vertex>
	#include <displacementmap_vertex>
	#include <project_vertex>
	#include <logdepthbuf_vertex>
	#include <clipping_planes_vertex>
	vViewPosition = - mvPosition.xyz;
	#include <worldpos_vertex>
	#include <envmap_vertex>
	#include <shadowmap_vertex>
	#include <fog_vertex>
}`,mg=`#define LAMBERT
uniform vec3 diffuse;
uniform vec3 emissive;
uniform float opacity;
#include <common>
#include <packing>
#include <dithering_pars_fragment>
#include <color_pars_fragment>
#include <uv_pars_fragment>
#include <map_pars_fragment>
#include <alphamap_pars_fragment>
#include <alphatest_pars_fragment>
#include <alphahash_pars_fragment>
#include <aomap_pars_fragment>
#include <lightmap_pars_fragment>
#include <emissivemap_pars_fragment>
#include <envmap_common_pars_fragment>
#include <envmap_pars_fragment>
#include <fog_pars_fragment>
#include <bsdfs>
#include <lights_pars_begin>
#include <normal_pars_fragment>
#include <lights_lambert_pars_fragment>
#include <shadowmap_pars_fragment>
#include <bumpmap_pars_fragment>
#include <normalmap_pars_fragment>
#include <specularmap_pars_fragment>
#include <logdepthbuf_pars_fragment>
#include <clipping_planes_pars_fragment>
void main() {
	vec4 diffuseColor = vec4( diffuse, opacity );
	#include <clipping_planes_fragment>
	ReflectedLight reflectedLight = ReflectedLight( vec3( 0.0 ), vec3( 0.0 ), vec3( 0.0 ), vec3( 0.0 ) );
	vec3 totalEmissiveRadiance = emissive;
	#include <logdepthbuf_fragment>
	#include <map_fragment>
	#include <color_fragment>
	#include <alphamap_fragment>
	#include <alphatest_fragment>
	#include <alphahash_fragment>
	#include <specularmap_fragment>
	#include <normal_fragment_begin>
	#include <normal_fragment_maps>
	#include <emissivemap_fragment>
	#include <lights_lambert_fragment>
	#include <lights_fragment_begin>
	#include <lights_fragment_maps>
	#include <lights_fragment_end>
	#include <aomap_fragment>
	vec3 outgoingLight = reflectedLight.directDiffuse + reflectedLight.indirectDiffuse + totalEmissiveRadiance;
	#include <envmap_fragment>
	#include <opaque_fragment>
	#include <tonemapping_fragment>
	#include <colorspace_fragment>
	#include <fog_fragment>
	#include <premultiplied_alpha_fragment>
	#include <dithering_fragment>
}`,gg=`#define MATCAP
varying vec3 vViewPosition;
#include <common>
#include <batching_pars_vertex>
#include <uv_pars_vertex>
#include <color_pars_vertex>
#include <displacementmap_pars_vertex>
#include <fog_pars_vertex>
#include <normal_pars_vertex>
#include <morphtarget_pars_vertex>
#include <skinning_pars_vertex>
#include <logdepthbuf_pars_vertex>
#include <clipping_planes_pars_vertex>
void main() {
	#include <uv_vertex>
	#include <color_vertex>
	#include <morphinstance_vertex>
	#include <morphcolor_vertex>
	#include <batching_vertex>
	#include <beginnormal_vertex>
	#include <morphnormal_vertex>
	#include <skinbase_vertex>
	#include <skinnormal_vertex>
	#include <defaultnormal_vertex>
	#include <normal_vertex>
	#include <begin_vertex>
	#include <morphtarget_vertex>
	#include <skinning_vertex>
	#include <displacementmap_vertex>
	#include <project_vertex>
	#include <logdepthbuf_vertex>
	#include <clipping_planes_vertex>
	#include <fog_vertex>
	vViewPosition = - mvPosition.xyz;
}`,_g=`#define MATCAP
uniform vec3 diffuse;
uniform float opacity;
uniform sampler2D matcap;
varying vec3 vViewPosition;
#include <common>
#include <dithering_pars_fragment>
#include <color_pars_fragment>
#include <uv_pars_fragment>
#include <map_pars_fragment>
#include <alphamap_pars_fragment>
#include <alphatest_pars_fragment>
#include <alphahash_pars_fragment>
#include <fog_pars_fragment>
#include <normal_pars_fragment>
#include <bumpmap_pars_fragment>
#include <normalmap_pars_fragment>
#include <logdepthbuf_pars_fragment>
#include <clipping_planes_pars_fragment>
void main() {
	vec4 diffuseColor = vec4( diffuse, opacity );
	#include <clipping_planes_fragment>
	#include <logdepthbuf_fragment>
	#include <map_fragment>
	#include <color_fragment>
	#include <alphamap_fragment>
	#include <alphatest_fragment>
	#include <alphahash_fragment>
	#include <normal_fragment_begin>
	#include <normal_fragment_maps>
	vec3 viewDir = normalize( vViewPosition );
	vec3 x = normalize( vec3( viewDir.z, 0.0, - viewDir.x ) );
	vec3 y = cross( viewDir, x );
	vec2 uv = vec2( dot( x, normal ), dot( y, normal ) ) * 0.495 + 0.5;
	#ifdef USE_MATCAP
		vec4 matcapColor = texture2D( matcap, uv );
	#else
		vec4 matcapColor = vec4( vec3( mix( 0.2, 0.8, uv.y ) ), 1.0 );
	#endif
	vec3 outgoingLight = diffuseColor.rgb * matcapColor.rgb;
	#include <opaque_fragment>
	#include <tonemapping_fragment>
	#include <colorspace_fragment>
	#include <fog_fragment>
	#include <premultiplied_alpha_fragment>
	#include <dithering_fragment>
}`,vg=`#define NORMAL
#if defined( FLAT_SHADED ) || defined( USE_BUMPMAP ) || defined( USE_NORMALMAP_TANGENTSPACE )
	varying vec3 vViewPosition;
#endif
#include <common>
#include <batching_pars_vertex>
#include <uv_pars_vertex>
#include <displacementmap_pars_vertex>
#include <normal_pars_vertex>
#include <morphtarget_pars_vertex>
#include <skinning_pars_vertex>
#include <logdepthbuf_pars_vertex>
#include <clipping_planes_pars_vertex>
void main() {
	#include <uv_vertex>
	#include <batching_vertex>
	#include <beginnormal_vertex>
	#include <morphinstance_vertex>
	#include <morphnormal_vertex>
	#include <skinbase_vertex>
	#include <skinnormal_vertex>
	#include <defaultnormal_vertex>
	#include <normal_vertex>
	#include <begin_vertex>
	#include <morphtarget_vertex>
	#include <skinning_vertex>
	#include <displacementmap_vertex>
	#include <project_vertex>
	#include <logdepthbuf_vertex>
	#include <clipping_planes_vertex>
#if defined( FLAT_SHADED ) || defined( USE_BUMPMAP ) || defined( USE_NORMALMAP_TANGENTSPACE )
	vViewPosition = - mvPosition.xyz;
#endif
}`,xg=`#define NORMAL
uniform float opacity;
#if defined( FLAT_SHADED ) || defined( USE_BUMPMAP ) || defined( USE_NORMALMAP_TANGENTSPACE )
	varying vec3 vViewPosition;
#endif
#include <packing>
#include <uv_pars_fragment>
#include <normal_pars_fragment>
#include <bumpmap_pars_fragment>
#include <normalmap_pars_fragment>
#include <logdepthbuf_pars_fragment>
#include <clipping_planes_pars_fragment>
void main() {
	vec4 diffuseColor = vec4( 0.0, 0.0, 0.0, opacity );
	#include <clipping_planes_fragment>
	#include <logdepthbuf_fragment>
	#include <normal_fragment_begin>
	#include <normal_fragment_maps>
	gl_FragColor = vec4( packNormalToRGB( normal ), diffuseColor.a );
	#ifdef OPAQUE
		gl_FragColor.a = 1.0;
	#endif
}`,yg=`#define PHONG
varying vec3 vViewPosition;
#include <common>
#include <batching_pars_vertex>
#include <uv_pars_vertex>
#include <displacementmap_pars_vertex>
#include <envmap_pars_vertex>
#include <color_pars_vertex>
#include <fog_pars_vertex>
#include <normal_pars_vertex>
#include <morphtarget_pars_vertex>
#include <skinning_pars_vertex>
#include <shadowmap_pars_vertex>
#include <logdepthbuf_pars_vertex>
#include <clipping_planes_pars_vertex>
void main() {
	#include <uv_vertex>
	#include <color_vertex>
	#include <morphcolor_vertex>
	#include <batching_vertex>
	#include <beginnormal_vertex>
	#include <morphinstance_vertex>
	#include <morphnormal_vertex>
	#include <skinbase_vertex>
	#include <skinnormal_vertex>
	#include <defaultnormal_vertex>
	#include <normal_vertex>
	#include <begin_vertex>
	#include <morphtarget_vertex>
	#include <skinning_vertex>
	#include <displacementmap_vertex>
	#include <project_vertex>
	#include <logdepthbuf_vertex>
	#include <clipping_planes_vertex>
	vViewPosition = - mvPosition.xyz;
	#include <worldpos_vertex>
	#include <envmap_vertex>
	#include <shadowmap_vertex>
	#include <fog_vertex>
}`,wg=`#define PHONG
uniform vec3 diffuse;
uniform vec3 emissive;
uniform vec3 specular;
uniform float shininess;
uniform float opacity;
#include <common>
#include <packing>
#include <dithering_pars_fragment>
#include <color_pars_fragment>
#include <uv_pars_fragment>
#include <map_pars_fragment>
#include <alphamap_pars_fragment>
#include <alphatest_pars_fragment>
#include <alphahash_pars_fragment>
#include <aomap_pars_fragment>
#include <lightmap_pars_fragment>
#include <emissivemap_pars_fragment>
#include <envmap_common_pars_fragment>
#include <envmap_pars_fragment>
#include <fog_pars_fragment>
#include <bsdfs>
#include <lights_pars_begin>
#include <normal_pars_fragment>
#include <lights_phong_pars_fragment>
#include <shadowmap_pars_fragment>
#include <bumpmap_pars_fragment>
#include <normalmap_pars_fragment>
#include <specularmap_pars_fragment>
#include <logdepthbuf_pars_fragment>
#include <clipping_planes_pars_fragment>
void main() {
	vec4 diffuseColor = vec4( diffuse, opacity );
	#include <clipping_planes_fragment>
	ReflectedLight reflectedLight = ReflectedLight( vec3( 0.0 ), vec3( 0.0 ), vec3( 0.0 ), vec3( 0.0 ) );
	vec3 totalEmissiveRadiance = emissive;
	#include <logdepthbuf_fragment>
	#include <map_fragment>
	#include <color_fragment>
	#include <alphamap_fragment>
	#include <alphatest_fragment>
	#include <alphahash_fragment>
	#include <specularmap_fragment>
	#include <normal_fragment_begin>
	#include <normal_fragment_maps>
	#include <emissivemap_fragment>
	#include <lights_phong_fragment>
	#include <lights_fragment_begin>
	#include <lights_fragment_maps>
	#include <lights_fragment_end>
	#include <aomap_fragment>
	vec3 outgoingLight = reflectedLight.directDiffuse + reflectedLight.indirectDiffuse + reflectedLight.directSpecular + reflectedLight.indirectSpecular + totalEmissiveRadiance;
	#include <envmap_fragment>
	#include <opaque_fragment>
	#include <tonemapping_fragment>
	#include <colorspace_fragment>
	#include <fog_fragment>
	#include <premultiplied_alpha_fragment>
	#include <dithering_fragment>
}`,bg=`#define STANDARD
varying vec3 vViewPosition;
#ifdef USE_TRANSMISSION
	varying vec3 vWorldPosition;
#endif
#include <common>
#include <batching_pars_vertex>
#include <uv_pars_vertex>
#include <displacementmap_pars_vertex>
#include <color_pars_vertex>
#include <fog_pars_vertex>
#include <normal_pars_vertex>
#include <morphtarget_pars_vertex>
#include <skinning_pars_vertex>
#include <shadowmap_pars_vertex>
#include <logdepthbuf_pars_vertex>
#include <clipping_planes_pars_vertex>
void main() {
	#include <uv_vertex>
	#include <color_vertex>
	#include <morphinstance_vertex>
	#include <morphcolor_vertex>
	#include <batching_vertex>
	#include <beginnormal_vertex>
	#include <morphnormal_vertex>
	#include <skinbase_vertex>
	#include <skinnormal_vertex>
	#include <defaultnormal_vertex>
	#include <normal_vertex>
	#include <begin_vertex>
	#include <morphtarget_vertex>
	#include <skinning_vertex>
	#include <displacementmap_vertex>
	#include <project_vertex>
	#include <logdepthbuf_vertex>
	#include <clipping_planes_vertex>
	vViewPosition = - mvPosition.xyz;
	#include <worldpos_vertex>
	#include <shadowmap_vertex>
	#include <fog_vertex>
#ifdef USE_TRANSMISSION
	vWorldPosition = worldPosition.xyz;
#endif
}`,Mg=`#define STANDARD
#ifdef PHYSICAL
	#define IOR
	#define USE_SPECULAR
#endif
uniform vec3 diffuse;
uniform vec3 emissive;
uniform float roughness;
uniform float metalness;
uniform float opacity;
#ifdef IOR
	uniform float ior;
#endif
#ifdef USE_SPECULAR
	uniform float specularIntensity;
	uniform vec3 specularColor;
	#ifdef USE_SPECULAR_COLORMAP
		uniform sampler2D specularColorMap;
	#endif
	#ifdef USE_SPECULAR_INTENSITYMAP
		uniform sampler2D specularIntensityMap;
	#endif
#endif
#ifdef USE_CLEARCOAT
	uniform float clearcoat;
	uniform float clearcoatRoughness;
#endif
#ifdef USE_DISPERSION
	uniform float dispersion;
#endif
#ifdef USE_IRIDESCENCE
	uniform float iridescence;
	uniform float iridescenceIOR;
	uniform float iridescenceThicknessMinimum;
	uniform float iridescenceThicknessMaximum;
#endif
#ifdef USE_SHEEN
	uniform vec3 sheenColor;
	uniform float sheenRoughness;
	#ifdef USE_SHEEN_COLORMAP
		uniform sampler2D sheenColorMap;
	#endif
	#ifdef USE_SHEEN_ROUGHNESSMAP
		uniform sampler2D sheenRoughnessMap;
	#endif
#endif
#ifdef USE_ANISOTROPY
	uniform vec2 anisotropyVector;
	#ifdef USE_ANISOTROPYMAP
		uniform sampler2D anisotropyMap;
	#endif
#endif
varying vec3 vViewPosition;
#include <common>
#include <packing>
#include <dithering_pars_fragment>
#include <color_pars_fragment>
#include <uv_pars_fragment>
#include <map_pars_fragment>
#include <alphamap_pars_fragment>
#include <alphatest_pars_fragment>
#include <alphahash_pars_fragment>
#include <aomap_pars_fragment>
#include <lightmap_pars_fragment>
#include <emissivemap_pars_fragment>
#include <iridescence_fragment>
#include <cube_uv_reflection_fragment>
#include <envmap_common_pars_fragment>
#include <envmap_physical_pars_fragment>
#include <fog_pars_fragment>
#include <lights_pars_begin>
#include <normal_pars_fragment>
#include <lights_physical_pars_fragment>
#include <transmission_pars_fragment>
#include <shadowmap_pars_fragment>
#include <bumpmap_pars_fragment>
#include <normalmap_pars_fragment>
#include <clearcoat_pars_fragment>
#include <iridescence_pars_fragment>
#include <roughnessmap_pars_fragment>
#include <metalnessmap_pars_fragment>
#include <logdepthbuf_pars_fragment>
#include <clipping_planes_pars_fragment>
void main() {
	vec4 diffuseColor = vec4( diffuse, opacity );
	#include <clipping_planes_fragment>
	ReflectedLight reflectedLight = ReflectedLight( vec3( 0.0 ), vec3( 0.0 ), vec3( 0.0 ), vec3( 0.0 ) );
	vec3 totalEmissiveRadiance = emissive;
	#include <logdepthbuf_fragment>
	#include <map_fragment>
	#include <color_fragment>
	#include <alphamap_fragment>
	#include <alphatest_fragment>
	#include <alphahash_fragment>
	#include <roughnessmap_fragment>
	#include <metalnessmap_fragment>
	#include <normal_fragment_begin>
	#include <normal_fragment_maps>
	#include <clearcoat_normal_fragment_begin>
	#include <clearcoat_normal_fragment_maps>
	#include <emissivemap_fragment>
	#include <lights_physical_fragment>
	#include <lights_fragment_begin>
	#include <lights_fragment_maps>
	#include <lights_fragment_end>
	#include <aomap_fragment>
	vec3 totalDiffuse = reflectedLight.directDiffuse + reflectedLight.indirectDiffuse;
	vec3 totalSpecular = reflectedLight.directSpecular + reflectedLight.indirectSpecular;
	#include <transmission_fragment>
	vec3 outgoingLight = totalDiffuse + totalSpecular + totalEmissiveRadiance;
	#ifdef USE_SHEEN
		float sheenEnergyComp = 1.0 - 0.157 * max3( material.sheenColor );
		outgoingLight = outgoingLight * sheenEnergyComp + sheenSpecularDirect + sheenSpecularIndirect;
	#endif
	#ifdef USE_CLEARCOAT
		float dotNVcc = saturate( dot( geometryClearcoatNormal, geometryViewDir ) );
		vec3 Fcc = F_Schlick( material.clearcoatF0, material.clearcoatF90, dotNVcc );
		outgoingLight = outgoingLight * ( 1.0 - material.clearcoat * Fcc ) + ( clearcoatSpecularDirect + clearcoatSpecularIndirect ) * material.clearcoat;
	#endif
	#include <opaque_fragment>
	#include <tonemapping_fragment>
	#include <colorspace_fragment>
	#include <fog_fragment>
	#include <premultiplied_alpha_fragment>
	#include <dithering_fragment>
}`,Sg=`#define TOON
varying vec3 vViewPosition;
#include <common>
#include <batching_pars_vertex>
#include <uv_pars_vertex>
#include <displacementmap_pars_vertex>
#include <color_pars_vertex>
#include <fog_pars_vertex>
#include <normal_pars_vertex>
#include <morphtarget_pars_vertex>
#include <skinning_pars_vertex>
#include <shadowmap_pars_vertex>
#include <logdepthbuf_pars_vertex>
#include <clipping_planes_pars_vertex>
void main() {
	#include <uv_vertex>
	#include <color_vertex>
	#include <morphinstance_vertex>
	#include <morphcolor_vertex>
	#include <batching_vertex>
	#include <beginnormal_vertex>
	#include <morphnormal_vertex>
	#include <skinbase_vertex>
	#include <skinnormal_vertex>
	#include <defaultnormal_vertex>
	#include <normal_vertex>
	#include <begin_vertex>
	#include <morphtarget_vertex>
	#include <skinning_vertex>
	#include <displacementmap_vertex>
	#include <project_vertex>
	#include <logdepthbuf_vertex>
	#include <clipping_planes_vertex>
	vViewPosition = - mvPosition.xyz;
	#include <worldpos_vertex>
	#include <shadowmap_vertex>
	#include <fog_vertex>
}`,Eg=`#define TOON
uniform vec3 diffuse;
uniform vec3 emissive;
uniform float opacity;
#include <common>
#include <packing>
#include <dithering_pars_fragment>
#include <color_pars_fragment>
#include <uv_pars_fragment>
#include <map_pars_fragment>
#include <alphamap_pars_fragment>
#include <alphatest_pars_fragment>
#include <alphahash_pars_fragment>
#include <aomap_pars_fragment>
#include <lightmap_pars_fragment>
#include <emissivemap_pars_fragment>
#include <gradientmap_pars_fragment>
#include <fog_pars_fragment>
#include <bsdfs>
#include <lights_pars_begin>
#include <normal_pars_fragment>
#include <lights_toon_pars_fragment>
#include <shadowmap_pars_fragment>
#include <bumpmap_pars_fragment>
#include <normalmap_pars_fragment>
#include <logdepthbuf_pars_fragment>
#include <clipping_planes_pars_fragment>
void main() {
	vec4 diffuseColor = vec4( diffuse, opacity );
	#include <clipping_planes_fragment>
	ReflectedLight reflectedLight = ReflectedLight( vec3( 0.0 ), vec3( 0.0 ), vec3( 0.0 ), vec3( 0.0 ) );
	vec3 totalEmissiveRadiance = emissive;
	#include <logdepthbuf_fragment>
	#include <map_fragment>
	#include <color_fragment>
	#include <alphamap_fragment>
	#include <alphatest_fragment>
	#include <alphahash_fragment>
	#include <normal_fragment_begin>
	#include <normal_fragment_maps>
	#include <emissivemap_fragment>
	#include <lights_toon_fragment>
	#include <lights_fragment_begin>
	#include <lights_fragment_maps>
	#include <lights_fragment_end>
	#include <aomap_fragment>
	vec3 outgoingLight = reflectedLight.directDiffuse + reflectedLight.indirectDiffuse + totalEmissiveRadiance;
	#include <opaque_fragment>
	#include <tonemapping_fragment>
	#include <colorspace_fragment>
	#include <fog_fragment>
	#include <premultiplied_alpha_fragment>
	#include <dithering_fragment>
}`,Tg=`uniform float size;
uniform float scale;
#include <common>
#include <color_pars_vertex>
#include <fog_pars_vertex>
#include <morphtarget_pars_vertex>
#include <logdepthbuf_pars_vertex>
#include <clipping_planes_pars_vertex>
#ifdef USE_POINTS_UV
	varying vec2 vUv;
	uniform mat3 uvTransform;
#endif
void main() {
	#ifdef USE_POINTS_UV
		vUv = ( uvTransform * vec3( uv, 1 ) ).xy;
	#endif
	#include <color_vertex>
	#include <morphinstance_vertex>
	#include <morphcolor_vertex>
	#include <begin_vertex>
	#include <morphtarget_vertex>
	#include <project_vertex>
	gl_PointSize = size;
	#ifdef USE_SIZEATTENUATION
		bool isPerspective = isPerspectiveMatrix( projectionMatrix );
		if ( isPerspective ) gl_PointSize *= ( scale / - mvPosition.z );
	#endif
	#include <logdepthbuf_vertex>
	#include <clipping_planes_vertex>
	#include <worldpos_vertex>
	#include <fog_vertex>
}`,Ag=`uniform vec3 diffuse;
uniform float opacity;
#include <common>
#include <color_pars_fragment>
#include <map_particle_pars_fragment>
#include <alphatest_pars_fragment>
#include <alphahash_pars_fragment>
#include <fog_pars_fragment>
#include <logdepthbuf_pars_fragment>
#include <clipping_planes_pars_fragment>
void main() {
	vec4 diffuseColor = vec4( diffuse, opacity );
	#include <clipping_planes_fragment>
	vec3 outgoingLight = vec3( 0.0 );
	#include <logdepthbuf_fragment>
	#include <map_particle_fragment>
	#include <color_fragment>
	#include <alphatest_fragment>
	#include <alphahash_fragment>
	outgoingLight = diffuseColor.rgb;
	#include <opaque_fragment>
	#include <tonemapping_fragment>
	#include <colorspace_fragment>
	#include <fog_fragment>
	#include <premultiplied_alpha_fragment>
}`,Rg=`#include <common>
#include <batching_pars_vertex>
#include <fog_pars_vertex>
#include <morphtarget_pars_vertex>
#include <skinning_pars_vertex>
#include <logdepthbuf_pars_vertex>
#include <shadowmap_pars_vertex>
void main() {
	#include <batching_vertex>
	#include <beginnormal_vertex>
	#include <morphinstance_vertex>
	#include <morphnormal_vertex>
	#include <skinbase_vertex>
	#include <skinnormal_vertex>
	#include <defaultnormal_vertex>
	#include <begin_vertex>
	#include <morphtarget_vertex>
	#include <skinning_vertex>
	#include <project_vertex>
	#include <logdepthbuf_vertex>
	#include <worldpos_vertex>
	#include <shadowmap_vertex>
	#include <fog_vertex>
}`,Cg=`uniform vec3 color;
uniform float opacity;
#include <common>
#include <packing>
#include <fog_pars_fragment>
#include <bsdfs>
#include <lights_pars_begin>
#include <logdepthbuf_pars_fragment>
#include <shadowmap_pars_fragment>
#include <shadowmask_pars_fragment>
void main() {
	#include <logdepthbuf_fragment>
	gl_FragColor = vec4( color, opacity * ( 1.0 - getShadowMask() ) );
	#include <tonemapping_fragment>
	#include <colorspace_fragment>
	#include <fog_fragment>
}`,Pg=`uniform float rotation;
uniform vec2 center;
#include <common>
#include <uv_pars_vertex>
#include <fog_pars_vertex>
#include <logdepthbuf_pars_vertex>
#include <clipping_planes_pars_vertex>
void main() {
	#include <uv_vertex>
	vec4 mvPosition = modelViewMatrix[ 3 ];
	vec2 scale = vec2( length( modelMatrix[ 0 ].xyz ), length( modelMatrix[ 1 ].xyz ) );
	#ifndef USE_SIZEATTENUATION
		bool isPerspective = isPerspectiveMatrix( projectionMatrix );
		if ( isPerspective ) scale *= - mvPosition.z;
	#endif
	vec2 alignedPosition = ( position.xy - ( center - vec2( 0.5 ) ) ) * scale;
	vec2 rotatedPosition;
	rotatedPosition.x = cos( rotation ) * alignedPosition.x - sin( rotation ) * alignedPosition.y;
	rotatedPosition.y = sin( rotation ) * alignedPosition.x + cos( rotation ) * alignedPosition.y;
	mvPosition.xy += rotatedPosition;
	gl_Position = projectionMatrix * mvPosition;
	#include <logdepthbuf_vertex>
	#include <clipping_planes_vertex>
	#include <fog_vertex>
}`,Dg=`uniform vec3 diffuse;
uniform float opacity;
#include <common>
#include <uv_pars_fragment>
#include <map_pars_fragment>
#include <alphamap_pars_fragment>
#include <alphatest_pars_fragment>
#include <alphahash_pars_fragment>
#include <fog_pars_fragment>
#include <logdepthbuf_pars_fragment>
#include <clipping_planes_pars_fragment>
void main() {
	vec4 diffuseColor = vec4( diffuse, opacity );
	#include <clipping_planes_fragment>
	vec3 outgoingLight = vec3( 0.0 );
	#include <logdepthbuf_fragment>
	#include <map_fragment>
	#include <alphamap_fragment>
	#include <alphatest_fragment>
	#include <alphahash_fragment>
	outgoingLight = diffuseColor.rgb;
	#include <opaque_fragment>
	#include <tonemapping_fragment>
	#include <colorspace_fragment>
	#include <fog_fragment>
}`,Ye={alphahash_fragment:Qf,alphahash_pars_fragment:ep,alphamap_fragment:tp,alphamap_pars_fragment:np,alphatest_fragment:ip,alphatest_pars_fragment:sp,aomap_fragment:rp,aomap_pars_fragment:ap,batching_pars_vertex:op,batching_vertex:lp,begin_vertex:cp,beginnormal_vertex:hp,bsdfs:up,iridescence_fragment:dp,bumpmap_pars_fragment:fp,clipping_planes_fragment:pp,clipping_planes_pars_fragment:mp,clipping_planes_pars_vertex:gp,clipping_planes_vertex:_p,color_fragment:vp,color_pars_fragment:xp,color_pars_vertex:yp,color_vertex:wp,common:bp,cube_uv_reflection_fragment:Mp,defaultnormal_vertex:Sp,displacementmap_pars_vertex:Ep,displacementmap_vertex:Tp,emissivemap_fragment:Ap,emissivemap_pars_fragment:Rp,colorspace_fragment:Cp,colorspace_pars_fragment:Pp,envmap_fragment:Dp,envmap_common_pars_fragment:Lp,envmap_pars_fragment:Ip,envmap_pars_vertex:Up,envmap_physical_pars_fragment:Wp,envmap_vertex:Np,fog_vertex:Fp,fog_pars_vertex:Op,fog_fragment:kp,fog_pars_fragment:Bp,gradientmap_pars_fragment:zp,lightmap_pars_fragment:Hp,lights_lambert_fragment:Vp,lights_lambert_pars_fragment:Gp,lights_pars_begin:$p,lights_toon_fragment:qp,lights_toon_pars_fragment:Xp,lights_phong_fragment:jp,lights_phong_pars_fragment:Yp,lights_physical_fragment:Kp,lights_physical_pars_fragment:Zp,lights_fragment_begin:Jp,lights_fragment_maps:Qp,lights_fragment_end:em,logdepthbuf_fragment:tm,logdepthbuf_pars_fragment:nm,logdepthbuf_pars_vertex:im,logdepthbuf_vertex:sm,map_fragment:rm,map_pars_fragment:am,map_particle_fragment:om,map_particle_pars_fragment:lm,metalnessmap_fragment:cm,metalnessmap_pars_fragment:hm,morphinstance_vertex:um,morphcolor_vertex:dm,morphnormal_vertex:fm,morphtarget_pars_vertex:pm,morphtarget_vertex:mm,normal_fragment_begin:gm,normal_fragment_maps:_m,normal_pars_fragment:vm,normal_pars_vertex:xm,normal_vertex:ym,normalmap_pars_fragment:wm,clearcoat_normal_fragment_begin:bm,clearcoat_normal_fragment_maps:Mm,clearcoat_pars_fragment:Sm,iridescence_pars_fragment:Em,opaque_fragment:Tm,packing:Am,premultiplied_alpha_fragment:Rm,project_vertex:Cm,dithering_fragment:Pm,dithering_pars_fragment:Dm,roughnessmap_fragment:Lm,roughnessmap_pars_fragment:Im,shadowmap_pars_fragment:Um,shadowmap_pars_vertex:Nm,shadowmap_vertex:Fm,shadowmask_pars_fragment:Om,skinbase_vertex:km,skinning_pars_vertex:Bm,skinning_vertex:zm,skinnormal_vertex:Hm,specularmap_fragment:Vm,specularmap_pars_fragment:Gm,tonemapping_fragment:$m,tonemapping_pars_fragment:Wm,transmission_fragment:qm,transmission_pars_fragment:Xm,uv_pars_fragment:jm,uv_pars_vertex:Ym,uv_vertex:Km,worldpos_vertex:Zm,background_vert:Jm,background_frag:Qm,backgroundCube_vert:eg,backgroundCube_frag:tg,cube_vert:ng,cube_frag:ig,depth_vert:sg,depth_frag:rg,distanceRGBA_vert:ag,distanceRGBA_frag:og,equirect_vert:lg,equirect_frag:cg,linedashed_vert:hg,linedashed_frag:ug,meshbasic_vert:dg,meshbasic_frag:fg,meshlambert_vert:pg,meshlambert_frag:mg,meshmatcap_vert:gg,meshmatcap_frag:_g,meshnormal_vert:vg,meshnormal_frag:xg,meshphong_vert:yg,meshphong_frag:wg,meshphysical_vert:bg,meshphysical_frag:Mg,meshtoon_vert:Sg,meshtoon_frag:Eg,points_vert:Tg,points_frag:Ag,shadow_vert:Rg,shadow_frag:Cg,sprite_vert:Pg,sprite_frag:Dg},me={common:{diffuse:{value:new Ke(16777215)},opacity:{value:1},map:{value:null},mapTransform:{value:new je},alphaMap:{value:null},alphaMapTransform:{value:new je},alphaTest:{value:0}},specularmap:{specularMap:{value:null},specularMapTransform:{value:new je}},envmap:{envMap:{value:null},envMapRotation:{value:new je},flipEnvMap:{value:-1},reflectivity:{value:1},ior:{value:1.5},refractionRatio:{value:.98}},aomap:{aoMap:{value:null},aoMapIntensity:{value:1},aoMapTransform:{value:new je}},lightmap:{lightMap:{value:null},lightMapIntensity:{value:1},lightMapTransform:{value:new je}},bumpmap:{bumpMap:{value:null},bumpMapTransform:{value:new je},bumpScale:{value:1}},normalmap:{normalMap:{value:null},normalMapTransform:{value:new je},normalScale:{value:new We(1,1)}},displacementmap:{displacementMap:{value:null},displacementMapTransform:{value:new je},displacementScale:{value:1},displacementBias:{value:0}},emissivemap:{emissiveMap:{value:null},emissiveMapTransform:{value:new je}},metalnessmap:{metalnessMap:{value:null},metalnessMapTransform:{value:new je}},roughnessmap:{roughnessMap:{value:null},roughnessMapTransform:{value:new je}},gradientmap:{gradientMap:{value:null}},fog:{fogDensity:{value:25e-5},fogNear:{value:1},fogFar:{value:2e3},fogColor:{value:new Ke(16777215)}},lights:{ambientLightColor:{value:[]},lightProbe:{value:[]},directionalLights:{value:[],properties:{direction:{},color:{}}},directionalLightShadows:{value:[],properties:{shadowIntensity:1,shadowBias:{},shadowNormalBias:{},shadowRadius:{},shadowMapSize:{}}},directionalShadowMap:{value:[]},directionalShadowMatrix:{value:[]},spotLights:{value:[],properties:{color:{},position:{},direction:{},distance:{},coneCos:{},penumbraCos:{},decay:{}}},spotLightShadows:{value:[],properties:{shadowIntensity:1,shadowBias:{},shadowNormalBias:{},shadowRadius:{},shadowMapSize:{}}},spotLightMap:{value:[]},spotShadowMap:{value:[]},spotLightMatrix:{value:[]},pointLights:{value:[],properties:{color:{},position:{},decay:{},distance:{}}},pointLightShadows:{value:[],properties:{shadowIntensity:1,shadowBias:{},shadowNormalBias:{},shadowRadius:{},shadowMapSize:{},shadowCameraNear:{},shadowCameraFar:{}}},pointShadowMap:{value:[]},pointShadowMatrix:{value:[]},hemisphereLights:{value:[],properties:{direction:{},skyColor:{},groundColor:{}}},rectAreaLights:{value:[],properties:{color:{},position:{},width:{},height:{}}},ltc_1:{value:null},ltc_2:{value:null}},points:{diffuse:{value:new Ke(16777215)},opacity:{value:1},size:{value:1},scale:{value:1},map:{value:null},alphaMap:{value:null},alphaMapTransform:{value:new je},alphaTest:{value:0},uvTransform:{value:new je}},sprite:{diffuse:{value:new Ke(16777215)},opacity:{value:1},center:{value:new We(.5,.5)},rotation:{value:0},map:{value:null},mapTransform:{value:new je},alphaMap:{value:null},alphaMapTransform:{value:new je},alphaTest:{value:0}}},Mn={basic:{uniforms:$t([me.common,me.specularmap,me.envmap,me.aomap,me.lightmap,me.fog]),vertexShader:Ye.meshbasic_vert,fragmentShader:Ye.meshbasic_frag},lambert:{uniforms:$t([me.common,me.specularmap,me.envmap,me.aomap,me.lightmap,me.emissivemap,me.bumpmap,me.normalmap,me.displacementmap,me.fog,me.lights,{emissive:{value:new Ke(0)}}]),vertexShader:Ye.meshlambert_vert,fragmentShader:Ye.meshlambert_frag},phong:{uniforms:$t([me.common,me.specularmap,me.envmap,me.aomap,me.lightmap,me.emissivemap,me.bumpmap,me.normalmap,me.displacementmap,me.fog,me.lights,{emissive:{value:new Ke(0)},specular:{value:new Ke(1118481)},shininess:{value:30}}]),vertexShader:Ye.meshphong_vert,fragmentShader:Ye.meshphong_frag},standard:{uniforms:$t([me.common,me.envmap,me.aomap,me.lightmap,me.emissivemap,me.bumpmap,me.normalmap,me.displacementmap,me.roughnessmap,me.metalnessmap,me.fog,me.lights,{emissive:{value:new Ke(0)},roughness:{value:1},metalness:{value:0},envMapIntensity:{value:1}}]),vertexShader:Ye.meshphysical_vert,fragmentShader:Ye.meshphysical_frag},toon:{uniforms:$t([me.common,me.aomap,me.lightmap,me.emissivemap,me.bumpmap,me.normalmap,me.displacementmap,me.gradientmap,me.fog,me.lights,{emissive:{value:new Ke(0)}}]),vertexShader:Ye.meshtoon_vert,fragmentShader:Ye.meshtoon_frag},matcap:{uniforms:$t([me.common,me.bumpmap,me.normalmap,me.displacementmap,me.fog,{matcap:{value:null}}]),vertexShader:Ye.meshmatcap_vert,fragmentShader:Ye.meshmatcap_frag},points:{uniforms:$t([me.points,me.fog]),vertexShader:Ye.points_vert,fragmentShader:Ye.points_frag},dashed:{uniforms:$t([me.common,me.fog,{scale:{value:1},dashSize:{value:1},totalSize:{value:2}}]),vertexShader:Ye.linedashed_vert,fragmentShader:Ye.linedashed_frag},depth:{uniforms:$t([me.common,me.displacementmap]),vertexShader:Ye.depth_vert,fragmentShader:Ye.depth_frag},normal:{uniforms:$t([me.common,me.bumpmap,me.normalmap,me.displacementmap,{opacity:{value:1}}]),vertexShader:Ye.meshnormal_vert,fragmentShader:Ye.meshnormal_frag},sprite:{uniforms:$t([me.sprite,me.fog]),vertexShader:Ye.sprite_vert,fragmentShader:Ye.sprite_frag},background:{uniforms:{uvTransform:{value:new je},t2D:{value:null},backgroundIntensity:{value:1}},vertexShader:Ye.background_vert,fragmentShader:Ye.background_frag},backgroundCube:{uniforms:{envMap:{value:null},flipEnvMap:{value:-1},backgroundBlurriness:{value:0},backgroundIntensity:{value:1},backgroundRotation:{value:new je}},vertexShader:Ye.backgroundCube_vert,fragmentShader:Ye.backgroundCube_frag},cube:{uniforms:{tCube:{value:null},tFlip:{value:-1},opacity:{value:1}},vertexShader:Ye.cube_vert,fragmentShader:Ye.cube_frag},equirect:{uniforms:{tEquirect:{value:null}},vertexShader:Ye.equirect_vert,fragmentShader:Ye.equirect_frag},distanceRGBA:{uniforms:$t([me.common,me.displacementmap,{referencePosition:{value:new I},nearDistance:{value:1},farDistance:{value:1e3}}]),vertexShader:Ye.distanceRGBA_vert,fragmentShader:Ye.distanceRGBA_frag},shadow:{uniforms:$t([me.lights,me.fog,{color:{value:new Ke(0)},opacity:{value:1}}]),vertexShader:Ye.shadow_vert,fragmentShader:Ye.shadow_frag}};Mn.physical={uniforms:$t([Mn.standard.uniforms,{clearcoat:{value:0},clearcoatMap:{value:null},clearcoatMapTransform:{value:new je},clearcoatNormalMap:{value:null},clearcoatNormalMapTransform:{value:new je},clearcoatNormalScale:{value:new We(1,1)},clearcoatRoughness:{value:0},clearcoatRoughnessMap:{value:null},clearcoatRoughnessMapTransform:{value:new je},dispersion:{value:0},iridescence:{value:0},iridescenceMap:{value:null},iridescenceMapTransform:{value:new je},iridescenceIOR:{value:1.3},iridescenceThicknessMinimum:{value:100},iridescenceThicknessMaximum:{value:400},iridescenceThicknessMap:{value:null},iridescenceThicknessMapTransform:{value:new je},sheen:{value:0},sheenColor:{value:new Ke(0)},sheenColorMap:{value:null},sheenColorMapTransform:{value:new je},sheenRoughness:{value:1},sheenRoughnessMap:{value:null},sheenRoughnessMapTransform:{value:new je},transmission:{value:0},transmissionMap:{value:null},transmissionMapTransform:{value:new je},transmissionSamplerSize:{value:new We},transmissionSamplerMap:{value:null},thickness:{value:0},thicknessMap:{value:null},thicknessMapTransform:{value:new je},attenuationDistance:{value:0},attenuationColor:{value:new Ke(0)},specularColor:{value:new Ke(1,1,1)},specularColorMap:{value:null},specularColorMapTransform:{value:new je},specularIntensity:{value:1},specularIntensityMap:{value:null},specularIntensityMapTransform:{value:new je},anisotropyVector:{value:new We},anisotropyMap:{value:null},anisotropyMapTransform:{value:new je}}]),vertexShader:Ye.meshphysical_vert,fragmentShader:Ye.meshphysical_frag};const br={r:0,b:0,g:0},_i=new Cn,Lg=new pt;function Ig(i,e,t,n,s,r,a){const o=new Ke(0);let c=r===!0?0:1,l,h,u=null,d=0,p=null;function _(E){let M=E.isScene===!0?E.background:null;return M&&M.isTexture&&(M=(E.backgroundBlurriness>0?t:e).get(M)),M}function v(E){let M=!1;const P=_(E);P===null?f(o,c):P&&P.isColor&&(f(P,1),M=!0);const C=i.xr.getEnvironmentBlendMode();C==="additive"?n.buffers.color.setClear(0,0,0,1,a):C==="alpha-blend"&&n.buffers.color.setClear(0,0,0,0,a),(i.autoClear||M)&&(n.buffers.depth.setTest(!0),n.buffers.depth.setMask(!0),n.buffers.color.setMask(!0),i.clear(i.autoClearColor,i.autoClearDepth,i.autoClearStencil))}function m(E,M){const P=_(M);P&&(P.isCubeTexture||P.mapping===Qr)?(h===void 0&&(h=new kt(new Li(1,1,1),new li({name:"BackgroundCubeMaterial",uniforms:as(Mn.backgroundCube.uniforms),vertexShader:Mn.backgroundCube.vertexShader,fragmentShader:Mn.backgroundCube.fragmentShader,side:Kt,depthTest:!1,depthWrite:!1,fog:!1,allowOverride:!1})),h.geometry.deleteAttribute("normal"),h.geometry.deleteAttribute("uv"),h.onBeforeRender=function(C,D,O){this.matrixWorld.copyPosition(O.matrixWorld)},Object.defineProperty(h.material,"envMap",{get:function(){return this.uniforms.envMap.value}}),s.update(h)),_i.copy(M.backgroundRotation),_i.x*=-1,_i.y*=-1,_i.z*=-1,P.isCubeTexture&&P.isRenderTargetTexture===!1&&(_i.y*=-1,_i.z*=-1),h.material.uniforms.envMap.value=P,h.material.uniforms.flipEnvMap.value=P.isCubeTexture&&P.isRenderTargetTexture===!1?-1:1,h.material.uniforms.backgroundBlurriness.value=M.backgroundBlurriness,h.material.uniforms.backgroundIntensity.value=M.backgroundIntensity,h.material.uniforms.backgroundRotation.value.setFromMatrix4(Lg.makeRotationFromEuler(_i)),h.material.toneMapped=st.getTransfer(P.colorSpace)!==lt,(u!==P||d!==P.version||p!==i.toneMapping)&&(h.material.needsUpdate=!0,u=P,d=P.version,p=i.toneMapping),h.layers.enableAll(),E.unshift(h,h.geometry,h.material,0,0,null)):P&&P.isTexture&&(l===void 0&&(l=new kt(new na(2,2),new li({name:"BackgroundMaterial",uniforms:as(Mn.background.uniforms),vertexShader:Mn.background.vertexShader,fragmentShader:Mn.background.fragmentShader,side:oi,depthTest:!1,depthWrite:!1,fog:!1,allowOverride:!1})),l.geometry.deleteAttribute("normal"),Object.defineProperty(l.material,"map",{get:function(){return this.uniforms.t2D.value}}),s.update(l)),l.material.uniforms.t2D.value=P,l.material.uniforms.backgroundIntensity.value=M.backgroundIntensity,l.material.toneMapped=st.getTransfer(P.colorSpace)!==lt,P.matrixAutoUpdate===!0&&P.updateMatrix(),l.material.uniforms.uvTransform.value.copy(P.matrix),(u!==P||d!==P.version||p!==i.toneMapping)&&(l.material.needsUpdate=!0,u=P,d=P.version,p=i.toneMapping),l.layers.enableAll(),E.unshift(l,l.geometry,l.material,0,0,null))}function f(E,M){E.getRGB(br,uu(i)),n.buffers.color.setClear(br.r,br.g,br.b,M,a)}function S(){h!==void 0&&(h.geometry.dispose(),h.material.dispose(),h=void 0),l!==void 0&&(l.geometry.dispose(),l.material.dispose(),l=void 0)}return{getClearColor:function(){return o},setClearColor:function(E,M=1){o.set(E),c=M,f(o,c)},getClearAlpha:function(){return c},setClearAlpha:function(E){c=E,f(o,c)},render:v,addToRenderList:m,dispose:S}}function Ug(i,e){const t=i.getParameter(i.MAX_VERTEX_ATTRIBS),n={},s=d(null);let r=s,a=!1;function o(y,R,N,U,k){let B=!1;const q=u(U,N,R);r!==q&&(r=q,l(r.object)),B=p(y,U,N,k),B&&_(y,U,N,k),k!==null&&e.update(k,i.ELEMENT_ARRAY_BUFFER),(B||a)&&(a=!1,M(y,R,N,U),k!==null&&i.bindBuffer(i.ELEMENT_ARRAY_BUFFER,e.get(k).buffer))}function c(){return i.createVertexArray()}function l(y){return i.bindVertexArray(y)}function h(y){return i.deleteVertexArray(y)}function u(y,R,N){const U=N.wireframe===!0;let k=n[y.id];k===void 0&&(k={},n[y.id]=k);let B=k[R.id];B===void 0&&(B={},k[R.id]=B);let q=B[U];return q===void 0&&(q=d(c()),B[U]=q),q}function d(y){const R=[],N=[],U=[];for(let k=0;k<t;k++)R[k]=0,N[k]=0,U[k]=0;return{geometry:null,program:null,wireframe:!1,newAttributes:R,enabledAttributes:N,attributeDivisors:U,object:y,attributes:{},index:null}}function p(y,R,N,U){const k=r.attributes,B=R.attributes;let q=0;const J=N.getAttributes();for(const X in J)if(J[X].location>=0){const fe=k[X];let W=B[X];if(W===void 0&&(X==="instanceMatrix"&&y.instanceMatrix&&(W=y.instanceMatrix),X==="instanceColor"&&y.instanceColor&&(W=y.instanceColor)),fe===void 0||fe.attribute!==W||W&&fe.data!==W.data)return!0;q++}return r.attributesNum!==q||r.index!==U}function _(y,R,N,U){const k={},B=R.attributes;let q=0;const J=N.getAttributes();for(const X in J)if(J[X].location>=0){let fe=B[X];fe===void 0&&(X==="instanceMatrix"&&y.instanceMatrix&&(fe=y.instanceMatrix),X==="instanceColor"&&y.instanceColor&&(fe=y.instanceColor));const W={};W.attribute=fe,fe&&fe.data&&(W.data=fe.data),k[X]=W,q++}r.attributes=k,r.attributesNum=q,r.index=U}function v(){const y=r.newAttributes;for(let R=0,N=y.length;R<N;R++)y[R]=0}function m(y){f(y,0)}function f(y,R){const N=r.newAttributes,U=r.enabledAttributes,k=r.attributeDivisors;N[y]=1,U[y]===0&&(i.enableVertexAttribArray(y),U[y]=1),k[y]!==R&&(i.vertexAttribDivisor(y,R),k[y]=R)}function S(){const y=r.newAttributes,R=r.enabledAttributes;for(let N=0,U=R.length;N<U;N++)R[N]!==y[N]&&(i.disableVertexAttribArray(N),R[N]=0)}function E(y,R,N,U,k,B,q){q===!0?i.vertexAttribIPointer(y,R,N,k,B):i.vertexAttribPointer(y,R,N,U,k,B)}function M(y,R,N,U){v();const k=U.attributes,B=N.getAttributes(),q=R.defaultAttributeValues;for(const J in B){const X=B[J];if(X.location>=0){let le=k[J];if(le===void 0&&(J==="instanceMatrix"&&y.instanceMatrix&&(le=y.instanceMatrix),J==="instanceColor"&&y.instanceColor&&(le=y.instanceColor)),le!==void 0){const fe=le.normalized,W=le.itemSize,ue=e.get(le);if(ue===void 0)continue;const Ce=ue.buffer,Oe=ue.type,$e=ue.bytesPerElement,Q=Oe===i.INT||Oe===i.UNSIGNED_INT||le.gpuType===_l;if(le.isInterleavedBufferAttribute){const ee=le.data,Se=ee.stride,V=le.offset;if(ee.isInstancedInterleavedBuffer){for(let L=0;L<X.locationSize;L++)f(X.location+L,ee.meshPerAttribute);y.isInstancedMesh!==!0&&U._maxInstanceCount===void 0&&(U._maxInstanceCount=ee.meshPerAttribute*ee.count)}else for(let L=0;L<X.locationSize;L++)m(X.location+L);i.bindBuffer(i.ARRAY_BUFFER,Ce);for(let L=0;L<X.locationSize;L++)E(X.location+L,W/X.locationSize,Oe,fe,Se*$e,(V+W/X.locationSize*L)*$e,Q)}else{if(le.isInstancedBufferAttribute){for(let ee=0;ee<X.locationSize;ee++)f(X.location+ee,le.meshPerAttribute);y.isInstancedMesh!==!0&&U._maxInstanceCount===void 0&&(U._maxInstanceCount=le.meshPerAttribute*le.count)}else for(let ee=0;ee<X.locationSize;ee++)m(X.location+ee);i.bindBuffer(i.ARRAY_BUFFER,Ce);for(let ee=0;ee<X.locationSize;ee++)E(X.location+ee,W/X.locationSize,Oe,fe,W*$e,W/X.locationSize*ee*$e,Q)}}else if(q!==void 0){const fe=q[J];if(fe!==void 0)switch(fe.length){case 2:i.vertexAttrib2fv(X.location,fe);break;case 3:i.vertexAttrib3fv(X.location,fe);break;case 4:i.vertexAttrib4fv(X.location,fe);break;default:i.vertexAttrib1fv(X.location,fe)}}}}S()}function P(){O();for(const y in n){const R=n[y];for(const N in R){const U=R[N];for(const k in U)h(U[k].object),delete U[k];delete R[N]}delete n[y]}}function C(y){if(n[y.id]===void 0)return;const R=n[y.id];for(const N in R){const U=R[N];for(const k in U)h(U[k].object),delete U[k];delete R[N]}delete n[y.id]}function D(y){for(const R in n){const N=n[R];if(N[y.id]===void 0)continue;const U=N[y.id];for(const k in U)h(U[k].object),delete U[k];delete N[y.id]}}function O(){b(),a=!0,r!==s&&(r=s,l(r.object))}function b(){s.geometry=null,s.program=null,s.wireframe=!1}return{setup:o,reset:O,resetDefaultState:b,dispose:P,releaseStatesOfGeometry:C,releaseStatesOfProgram:D,initAttributes:v,enableAttribute:m,disableUnusedAttributes:S}}function Ng(i,e,t){let n;function s(l){n=l}function r(l,h){i.drawArrays(n,l,h),t.update(h,n,1)}function a(l,h,u){u!==0&&(i.drawArraysInstanced(n,l,h,u),t.update(h,n,u))}function o(l,h,u){if(u===0)return;e.get("WEBGL_multi_draw").multiDrawArraysWEBGL(n,l,0,h,0,u);let p=0;for(let _=0;_<u;_++)p+=h[_];t.update(p,n,1)}function c(l,h,u,d){if(u===0)return;const p=e.get("WEBGL_multi_draw");if(p===null)for(let _=0;_<l.length;_++)a(l[_],h[_],d[_]);else{p.multiDrawArraysInstancedWEBGL(n,l,0,h,0,d,0,u);let _=0;for(let v=0;v<u;v++)_+=h[v]*d[v];t.update(_,n,1)}}this.setMode=s,this.render=r,this.renderInstances=a,this.renderMultiDraw=o,this.renderMultiDrawInstances=c}function Fg(i,e,t,n){let s;function r(){if(s!==void 0)return s;if(e.has("EXT_texture_filter_anisotropic")===!0){const D=e.get("EXT_texture_filter_anisotropic");s=i.getParameter(D.MAX_TEXTURE_MAX_ANISOTROPY_EXT)}else s=0;return s}function a(D){return!(D!==vn&&n.convert(D)!==i.getParameter(i.IMPLEMENTATION_COLOR_READ_FORMAT))}function o(D){const O=D===Hs&&(e.has("EXT_color_buffer_half_float")||e.has("EXT_color_buffer_float"));return!(D!==Rn&&n.convert(D)!==i.getParameter(i.IMPLEMENTATION_COLOR_READ_TYPE)&&D!==kn&&!O)}function c(D){if(D==="highp"){if(i.getShaderPrecisionFormat(i.VERTEX_SHADER,i.HIGH_FLOAT).precision>0&&i.getShaderPrecisionFormat(i.FRAGMENT_SHADER,i.HIGH_FLOAT).precision>0)return"highp";D="mediump"}return D==="mediump"&&i.getShaderPrecisionFormat(i.VERTEX_SHADER,i.MEDIUM_FLOAT).precision>0&&i.getShaderPrecisionFormat(i.FRAGMENT_SHADER,i.MEDIUM_FLOAT).precision>0?"mediump":"lowp"}let l=t.precision!==void 0?t.precision:"highp";const h=c(l);h!==l&&(console.warn("THREE.WebGLRenderer:",l,"not supported, using",h,"instead."),l=h);const u=t.logarithmicDepthBuffer===!0,d=t.reversedDepthBuffer===!0&&e.has("EXT_clip_control"),p=i.getParameter(i.MAX_TEXTURE_IMAGE_UNITS),_=i.getParameter(i.MAX_VERTEX_TEXTURE_IMAGE_UNITS),v=i.getParameter(i.MAX_TEXTURE_SIZE),m=i.getParameter(i.MAX_CUBE_MAP_TEXTURE_SIZE),f=i.getParameter(i.MAX_VERTEX_ATTRIBS),S=i.getParameter(i.MAX_VERTEX_UNIFORM_VECTORS),E=i.getParameter(i.MAX_VARYING_VECTORS),M=i.getParameter(i.MAX_FRAGMENT_UNIFORM_VECTORS),P=_>0,C=i.getParameter(i.MAX_SAMPLES);return{isWebGL2:!0,getMaxAnisotropy:r,getMaxPrecision:c,textureFormatReadable:a,textureTypeReadable:o,precision:l,logarithmicDepthBuffer:u,reversedDepthBuffer:d,maxTextures:p,maxVertexTextures:_,maxTextureSize:v,maxCubemapSize:m,maxAttributes:f,maxVertexUniforms:S,maxVaryings:E,maxFragmentUniforms:M,vertexTextures:P,maxSamples:C}}function Og(i){const e=this;let t=null,n=0,s=!1,r=!1;const a=new Jn,o=new je,c={value:null,needsUpdate:!1};this.uniform=c,this.numPlanes=0,this.numIntersection=0,this.init=function(u,d){const p=u.length!==0||d||n!==0||s;return s=d,n=u.length,p},this.beginShadows=function(){r=!0,h(null)},this.endShadows=function(){r=!1},this.setGlobalState=function(u,d){t=h(u,d,0)},this.setState=function(u,d,p){const _=u.clippingPlanes,v=u.clipIntersection,m=u.clipShadows,f=i.get(u);if(!s||_===null||_.length===0||r&&!m)r?h(null):l();else{const S=r?0:n,E=S*4;let M=f.clippingState||null;c.value=M,M=h(_,d,E,p);for(let P=0;P!==E;++P)M[P]=t[P];f.clippingState=M,this.numIntersection=v?this.numPlanes:0,this.numPlanes+=S}};function l(){c.value!==t&&(c.value=t,c.needsUpdate=n>0),e.numPlanes=n,e.numIntersection=0}function h(u,d,p,_){const v=u!==null?u.length:0;let m=null;if(v!==0){if(m=c.value,_!==!0||m===null){const f=p+v*4,S=d.matrixWorldInverse;o.getNormalMatrix(S),(m===null||m.length<f)&&(m=new Float32Array(f));for(let E=0,M=p;E!==v;++E,M+=4)a.copy(u[E]).applyMatrix4(S,o),a.normal.toArray(m,M),m[M+3]=a.constant}c.value=m,c.needsUpdate=!0}return e.numPlanes=v,e.numIntersection=0,m}}function kg(i){let e=new WeakMap;function t(a,o){return o===vo?a.mapping=is:o===xo&&(a.mapping=ss),a}function n(a){if(a&&a.isTexture){const o=a.mapping;if(o===vo||o===xo)if(e.has(a)){const c=e.get(a).texture;return t(c,a.mapping)}else{const c=a.image;if(c&&c.height>0){const l=new Uf(c.height);return l.fromEquirectangularTexture(i,a),e.set(a,l),a.addEventListener("dispose",s),t(l.texture,a.mapping)}else return null}}return a}function s(a){const o=a.target;o.removeEventListener("dispose",s);const c=e.get(o);c!==void 0&&(e.delete(o),c.dispose())}function r(){e=new WeakMap}return{get:n,dispose:r}}const Zi=4,Fc=[.125,.215,.35,.446,.526,.582],wi=20,Va=new xu,Oc=new Ke;let Ga=null,$a=0,Wa=0,qa=!1;const xi=(1+Math.sqrt(5))/2,ji=1/xi,kc=[new I(-xi,ji,0),new I(xi,ji,0),new I(-ji,0,xi),new I(ji,0,xi),new I(0,xi,-ji),new I(0,xi,ji),new I(-1,1,-1),new I(1,1,-1),new I(-1,1,1),new I(1,1,1)],Bg=new I;class Bc{constructor(e){this._renderer=e,this._pingPongRenderTarget=null,this._lodMax=0,this._cubeSize=0,this._lodPlanes=[],this._sizeLods=[],this._sigmas=[],this._blurMaterial=null,this._cubemapMaterial=null,this._equirectMaterial=null,this._compileMaterial(this._blurMaterial)}fromScene(e,t=0,n=.1,s=100,r={}){const{size:a=256,position:o=Bg}=r;Ga=this._renderer.getRenderTarget(),$a=this._renderer.getActiveCubeFace(),Wa=this._renderer.getActiveMipmapLevel(),qa=this._renderer.xr.enabled,this._renderer.xr.enabled=!1,this._setSize(a);const c=this._allocateTargets();return c.depthBuffer=!0,this._sceneToCubeUV(e,n,s,c,o),t>0&&this._blur(c,0,0,t),this._applyPMREM(c),this._cleanup(c),c}fromEquirectangular(e,t=null){return this._fromTexture(e,t)}fromCubemap(e,t=null){return this._fromTexture(e,t)}compileCubemapShader(){this._cubemapMaterial===null&&(this._cubemapMaterial=Vc(),this._compileMaterial(this._cubemapMaterial))}compileEquirectangularShader(){this._equirectMaterial===null&&(this._equirectMaterial=Hc(),this._compileMaterial(this._equirectMaterial))}dispose(){this._dispose(),this._cubemapMaterial!==null&&this._cubemapMaterial.dispose(),this._equirectMaterial!==null&&this._equirectMaterial.dispose()}_setSize(e){this._lodMax=Math.floor(Math.log2(e)),this._cubeSize=Math.pow(2,this._lodMax)}_dispose(){this._blurMaterial!==null&&this._blurMaterial.dispose(),this._pingPongRenderTarget!==null&&this._pingPongRenderTarget.dispose();for(let e=0;e<this._lodPlanes.length;e++)this._lodPlanes[e].dispose()}_cleanup(e){this._renderer.setRenderTarget(Ga,$a,Wa),this._renderer.xr.enabled=qa,e.scissorTest=!1,Mr(e,0,0,e.width,e.height)}_fromTexture(e,t){e.mapping===is||e.mapping===ss?this._setSize(e.image.length===0?16:e.image[0].width||e.image[0].image.width):this._setSize(e.image.width/4),Ga=this._renderer.getRenderTarget(),$a=this._renderer.getActiveCubeFace(),Wa=this._renderer.getActiveMipmapLevel(),qa=this._renderer.xr.enabled,this._renderer.xr.enabled=!1;const n=t||this._allocateTargets();return this._textureToCubeUV(e,n),this._applyPMREM(n),this._cleanup(n),n}_allocateTargets(){const e=3*Math.max(this._cubeSize,112),t=4*this._cubeSize,n={magFilter:Sn,minFilter:Sn,generateMipmaps:!1,type:Hs,format:vn,colorSpace:rs,depthBuffer:!1},s=zc(e,t,n);if(this._pingPongRenderTarget===null||this._pingPongRenderTarget.width!==e||this._pingPongRenderTarget.height!==t){this._pingPongRenderTarget!==null&&this._dispose(),this._pingPongRenderTarget=zc(e,t,n);const{_lodMax:r}=this;({sizeLods:this._sizeLods,lodPlanes:this._lodPlanes,sigmas:this._sigmas}=zg(r)),this._blurMaterial=Hg(r,e,t)}return s}_compileMaterial(e){const t=new kt(this._lodPlanes[0],e);this._renderer.compile(t,Va)}_sceneToCubeUV(e,t,n,s,r){const c=new un(90,1,t,n),l=[1,-1,1,1,1,1],h=[1,1,1,-1,-1,-1],u=this._renderer,d=u.autoClear,p=u.toneMapping;u.getClearColor(Oc),u.toneMapping=ri,u.autoClear=!1,u.state.buffers.depth.getReversed()&&(u.setRenderTarget(s),u.clearDepth(),u.setRenderTarget(null));const v=new Os({name:"PMREM.Background",side:Kt,depthWrite:!1,depthTest:!1}),m=new kt(new Li,v);let f=!1;const S=e.background;S?S.isColor&&(v.color.copy(S),e.background=null,f=!0):(v.color.copy(Oc),f=!0);for(let E=0;E<6;E++){const M=E%3;M===0?(c.up.set(0,l[E],0),c.position.set(r.x,r.y,r.z),c.lookAt(r.x+h[E],r.y,r.z)):M===1?(c.up.set(0,0,l[E]),c.position.set(r.x,r.y,r.z),c.lookAt(r.x,r.y+h[E],r.z)):(c.up.set(0,l[E],0),c.position.set(r.x,r.y,r.z),c.lookAt(r.x,r.y,r.z+h[E]));const P=this._cubeSize;Mr(s,M*P,E>2?P:0,P,P),u.setRenderTarget(s),f&&u.render(m,c),u.render(e,c)}m.geometry.dispose(),m.material.dispose(),u.toneMapping=p,u.autoClear=d,e.background=S}_textureToCubeUV(e,t){const n=this._renderer,s=e.mapping===is||e.mapping===ss;s?(this._cubemapMaterial===null&&(this._cubemapMaterial=Vc()),this._cubemapMaterial.uniforms.flipEnvMap.value=e.isRenderTargetTexture===!1?-1:1):this._equirectMaterial===null&&(this._equirectMaterial=Hc());const r=s?this._cubemapMaterial:this._equirectMaterial,a=new kt(this._lodPlanes[0],r),o=r.uniforms;o.envMap.value=e;const c=this._cubeSize;Mr(t,0,0,3*c,2*c),n.setRenderTarget(t),n.render(a,Va)}_applyPMREM(e){const t=this._renderer,n=t.autoClear;t.autoClear=!1;const s=this._lodPlanes.length;for(let r=1;r<s;r++){const a=Math.sqrt(this._sigmas[r]*this._sigmas[r]-this._sigmas[r-1]*this._sigmas[r-1]),o=kc[(s-r-1)%kc.length];this._blur(e,r-1,r,a,o)}t.autoClear=n}_blur(e,t,n,s,r){const a=this._pingPongRenderTarget;this._halfBlur(e,a,t,n,s,"latitudinal",r),this._halfBlur(a,e,n,n,s,"longitudinal",r)}_halfBlur(e,t,n,s,r,a,o){const c=this._renderer,l=this._blurMaterial;a!=="latitudinal"&&a!=="longitudinal"&&console.error("blur direction must be either latitudinal or longitudinal!");const h=3,u=new kt(this._lodPlanes[s],l),d=l.uniforms,p=this._sizeLods[n]-1,_=isFinite(r)?Math.PI/(2*p):2*Math.PI/(2*wi-1),v=r/_,m=isFinite(r)?1+Math.floor(h*v):wi;m>wi&&console.warn(`sigmaRadians, ${r}, is too large and will clip, as it requested ${m} samples when the maximum is set to ${wi}`);const f=[];let S=0;for(let D=0;D<wi;++D){const O=D/v,b=Math.exp(-O*O/2);f.push(b),D===0?S+=b:D<m&&(S+=2*b)}for(let D=0;D<f.length;D++)f[D]=f[D]/S;d.envMap.value=e.texture,d.samples.value=m,d.weights.value=f,d.latitudinal.value=a==="latitudinal",o&&(d.poleAxis.value=o);const{_lodMax:E}=this;d.dTheta.value=_,d.mipInt.value=E-n;const M=this._sizeLods[s],P=3*M*(s>E-Zi?s-E+Zi:0),C=4*(this._cubeSize-M);Mr(t,P,C,3*M,2*M),c.setRenderTarget(t),c.render(u,Va)}}function zg(i){const e=[],t=[],n=[];let s=i;const r=i-Zi+1+Fc.length;for(let a=0;a<r;a++){const o=Math.pow(2,s);t.push(o);let c=1/o;a>i-Zi?c=Fc[a-i+Zi-1]:a===0&&(c=0),n.push(c);const l=1/(o-2),h=-l,u=1+l,d=[h,h,u,h,u,u,h,h,u,u,h,u],p=6,_=6,v=3,m=2,f=1,S=new Float32Array(v*_*p),E=new Float32Array(m*_*p),M=new Float32Array(f*_*p);for(let C=0;C<p;C++){const D=C%3*2/3-1,O=C>2?0:-1,b=[D,O,0,D+2/3,O,0,D+2/3,O+1,0,D,O,0,D+2/3,O+1,0,D,O+1,0];S.set(b,v*_*C),E.set(d,m*_*C);const y=[C,C,C,C,C,C];M.set(y,f*_*C)}const P=new At;P.setAttribute("position",new Wt(S,v)),P.setAttribute("uv",new Wt(E,m)),P.setAttribute("faceIndex",new Wt(M,f)),e.push(P),s>Zi&&s--}return{lodPlanes:e,sizeLods:t,sigmas:n}}function zc(i,e,t){const n=new Ci(i,e,t);return n.texture.mapping=Qr,n.texture.name="PMREM.cubeUv",n.scissorTest=!0,n}function Mr(i,e,t,n,s){i.viewport.set(e,t,n,s),i.scissor.set(e,t,n,s)}function Hg(i,e,t){const n=new Float32Array(wi),s=new I(0,1,0);return new li({name:"SphericalGaussianBlur",defines:{n:wi,CUBEUV_TEXEL_WIDTH:1/e,CUBEUV_TEXEL_HEIGHT:1/t,CUBEUV_MAX_MIP:`${i}.0`},uniforms:{envMap:{value:null},samples:{value:1},weights:{value:n},latitudinal:{value:!1},dTheta:{value:0},mipInt:{value:0},poleAxis:{value:s}},vertexShader:Rl(),fragmentShader:`

			precision mediump float;
			precision mediump int;

			varying vec3 vOutputDirection;

			uniform sampler2D envMap;
			uniform int samples;
			uniform float weights[ n ];
			uniform bool latitudinal;
			uniform float dTheta;
			uniform float mipInt;
			uniform vec3 poleAxis;

			#define ENVMAP_TYPE_CUBE_UV
			#include <cube_uv_reflection_fragment>

			vec3 getSample( float theta, vec3 axis ) {

				float cosTheta = cos( theta );
				// Rodrigues' axis-angle rotation
				vec3 sampleDirection = vOutputDirection * cosTheta
					+ cross( axis, vOutputDirection ) * sin( theta )
					+ axis * dot( axis, vOutputDirection ) * ( 1.0 - cosTheta );

				return bilinearCubeUV( envMap, sampleDirection, mipInt );

			}

			void main() {

				vec3 axis = latitudinal ? poleAxis : cross( poleAxis, vOutputDirection );

				if ( all( equal( axis, vec3( 0.0 ) ) ) ) {

					axis = vec3( vOutputDirection.z, 0.0, - vOutputDirection.x );

				}

				axis = normalize( axis );

				gl_FragColor = vec4( 0.0, 0.0, 0.0, 1.0 );
				gl_FragColor.rgb += weights[ 0 ] * getSample( 0.0, axis );

				for ( int i = 1; i < n; i++ ) {

					if ( i >= samples ) {

						break;

					}

					float theta = dTheta * float( i );
					gl_FragColor.rgb += weights[ i ] * getSample( -1.0 * theta, axis );
					gl_FragColor.rgb += weights[ i ] * getSample( theta, axis );

				}

			}
		`,blending:si,depthTest:!1,depthWrite:!1})}function Hc(){return new li({name:"EquirectangularToCubeUV",uniforms:{envMap:{value:null}},vertexShader:Rl(),fragmentShader:`

			precision mediump float;
			precision mediump int;

			varying vec3 vOutputDirection;

			uniform sampler2D envMap;

			#include <common>

			void main() {

				vec3 outputDirection = normalize( vOutputDirection );
				vec2 uv = equirectUv( outputDirection );

				gl_FragColor = vec4( texture2D ( envMap, uv ).rgb, 1.0 );

			}
		`,blending:si,depthTest:!1,depthWrite:!1})}function Vc(){return new li({name:"CubemapToCubeUV",uniforms:{envMap:{value:null},flipEnvMap:{value:-1}},vertexShader:Rl(),fragmentShader:`

			precision mediump float;
			precision mediump int;

			uniform float flipEnvMap;

			varying vec3 vOutputDirection;

			uniform samplerCube envMap;

			void main() {

				gl_FragColor = textureCube( envMap, vec3( flipEnvMap * vOutputDirection.x, vOutputDirection.yz ) );

			}
		`,blending:si,depthTest:!1,depthWrite:!1})}function Rl(){return`

		precision mediump float;
		precision mediump int;

		attribute float faceIndex;

		varying vec3 vOutputDirection;

		// RH coordinate system; PMREM face-indexing convention
		vec3 getDirection( vec2 uv, float face ) {

			uv = 2.0 * uv - 1.0;

			vec3 direction = vec3( uv, 1.0 );

			if ( face == 0.0 ) {

				direction = direction.zyx; // ( 1, v, u ) pos x

			} else if ( face == 1.0 ) {

				direction = direction.xzy;
				direction.xz *= -1.0; // ( -u, 1, -v ) pos y

			} else if ( face == 2.0 ) {

				direction.x *= -1.0; // ( -u, v, 1 ) pos z

			} else if ( face == 3.0 ) {

				direction = direction.zyx;
				direction.xz *= -1.0; // ( -1, v, -u ) neg x

			} else if ( face == 4.0 ) {

				direction = direction.xzy;
				direction.xy *= -1.0; // ( -u, -1, v ) neg y

			} else if ( face == 5.0 ) {

				direction.z *= -1.0; // ( u, v, -1 ) neg z

			}

			return direction;

		}

		void main() {

			vOutputDirection = getDirection( uv, faceIndex );
			gl_Position = vec4( position, 1.0 );

		}
	`}function Vg(i){let e=new WeakMap,t=null;function n(o){if(o&&o.isTexture){const c=o.mapping,l=c===vo||c===xo,h=c===is||c===ss;if(l||h){let u=e.get(o);const d=u!==void 0?u.texture.pmremVersion:0;if(o.isRenderTargetTexture&&o.pmremVersion!==d)return t===null&&(t=new Bc(i)),u=l?t.fromEquirectangular(o,u):t.fromCubemap(o,u),u.texture.pmremVersion=o.pmremVersion,e.set(o,u),u.texture;if(u!==void 0)return u.texture;{const p=o.image;return l&&p&&p.height>0||h&&p&&s(p)?(t===null&&(t=new Bc(i)),u=l?t.fromEquirectangular(o):t.fromCubemap(o),u.texture.pmremVersion=o.pmremVersion,e.set(o,u),o.addEventListener("dispose",r),u.texture):null}}}return o}function s(o){let c=0;const l=6;for(let h=0;h<l;h++)o[h]!==void 0&&c++;return c===l}function r(o){const c=o.target;c.removeEventListener("dispose",r);const l=e.get(c);l!==void 0&&(e.delete(c),l.dispose())}function a(){e=new WeakMap,t!==null&&(t.dispose(),t=null)}return{get:n,dispose:a}}function Gg(i){const e={};function t(n){if(e[n]!==void 0)return e[n];let s;switch(n){case"WEBGL_depth_texture":s=i.getExtension("WEBGL_depth_texture")||i.getExtension("MOZ_WEBGL_depth_texture")||i.getExtension("WEBKIT_WEBGL_depth_texture");break;case"EXT_texture_filter_anisotropic":s=i.getExtension("EXT_texture_filter_anisotropic")||i.getExtension("MOZ_EXT_texture_filter_anisotropic")||i.getExtension("WEBKIT_EXT_texture_filter_anisotropic");break;case"WEBGL_compressed_texture_s3tc":s=i.getExtension("WEBGL_compressed_texture_s3tc")||i.getExtension("MOZ_WEBGL_compressed_texture_s3tc")||i.getExtension("WEBKIT_WEBGL_compressed_texture_s3tc");break;case"WEBGL_compressed_texture_pvrtc":s=i.getExtension("WEBGL_compressed_texture_pvrtc")||i.getExtension("WEBKIT_WEBGL_compressed_texture_pvrtc");break;default:s=i.getExtension(n)}return e[n]=s,s}return{has:function(n){return t(n)!==null},init:function(){t("EXT_color_buffer_float"),t("WEBGL_clip_cull_distance"),t("OES_texture_float_linear"),t("EXT_color_buffer_half_float"),t("WEBGL_multisampled_render_to_texture"),t("WEBGL_render_shared_exponent")},get:function(n){const s=t(n);return s===null&&Fs("THREE.WebGLRenderer: "+n+" extension not supported."),s}}}function $g(i,e,t,n){const s={},r=new WeakMap;function a(u){const d=u.target;d.index!==null&&e.remove(d.index);for(const _ in d.attributes)e.remove(d.attributes[_]);d.removeEventListener("dispose",a),delete s[d.id];const p=r.get(d);p&&(e.remove(p),r.delete(d)),n.releaseStatesOfGeometry(d),d.isInstancedBufferGeometry===!0&&delete d._maxInstanceCount,t.memory.geometries--}function o(u,d){return s[d.id]===!0||(d.addEventListener("dispose",a),s[d.id]=!0,t.memory.geometries++),d}function c(u){const d=u.attributes;for(const p in d)e.update(d[p],i.ARRAY_BUFFER)}function l(u){const d=[],p=u.index,_=u.attributes.position;let v=0;if(p!==null){const S=p.array;v=p.version;for(let E=0,M=S.length;E<M;E+=3){const P=S[E+0],C=S[E+1],D=S[E+2];d.push(P,C,C,D,D,P)}}else if(_!==void 0){const S=_.array;v=_.version;for(let E=0,M=S.length/3-1;E<M;E+=3){const P=E+0,C=E+1,D=E+2;d.push(P,C,C,D,D,P)}}else return;const m=new(au(d)?hu:cu)(d,1);m.version=v;const f=r.get(u);f&&e.remove(f),r.set(u,m)}function h(u){const d=r.get(u);if(d){const p=u.index;p!==null&&d.version<p.version&&l(u)}else l(u);return r.get(u)}return{get:o,update:c,getWireframeAttribute:h}}function Wg(i,e,t){let n;function s(d){n=d}let r,a;function o(d){r=d.type,a=d.bytesPerElement}function c(d,p){i.drawElements(n,p,r,d*a),t.update(p,n,1)}function l(d,p,_){_!==0&&(i.drawElementsInstanced(n,p,r,d*a,_),t.update(p,n,_))}function h(d,p,_){if(_===0)return;e.get("WEBGL_multi_draw").multiDrawElementsWEBGL(n,p,0,r,d,0,_);let m=0;for(let f=0;f<_;f++)m+=p[f];t.update(m,n,1)}function u(d,p,_,v){if(_===0)return;const m=e.get("WEBGL_multi_draw");if(m===null)for(let f=0;f<d.length;f++)l(d[f]/a,p[f],v[f]);else{m.multiDrawElementsInstancedWEBGL(n,p,0,r,d,0,v,0,_);let f=0;for(let S=0;S<_;S++)f+=p[S]*v[S];t.update(f,n,1)}}this.setMode=s,this.setIndex=o,this.render=c,this.renderInstances=l,this.renderMultiDraw=h,this.renderMultiDrawInstances=u}function qg(i){const e={geometries:0,textures:0},t={frame:0,calls:0,triangles:0,points:0,lines:0};function n(r,a,o){switch(t.calls++,a){case i.TRIANGLES:t.triangles+=o*(r/3);break;case i.LINES:t.lines+=o*(r/2);break;case i.LINE_STRIP:t.lines+=o*(r-1);break;case i.LINE_LOOP:t.lines+=o*r;break;case i.POINTS:t.points+=o*r;break;default:console.error("THREE.WebGLInfo: Unknown draw mode:",a);break}}function s(){t.calls=0,t.triangles=0,t.points=0,t.lines=0}return{memory:e,render:t,programs:null,autoReset:!0,reset:s,update:n}}function Xg(i,e,t){const n=new WeakMap,s=new St;function r(a,o,c){const l=a.morphTargetInfluences,h=o.morphAttributes.position||o.morphAttributes.normal||o.morphAttributes.color,u=h!==void 0?h.length:0;let d=n.get(o);if(d===void 0||d.count!==u){let y=function(){O.dispose(),n.delete(o),o.removeEventListener("dispose",y)};var p=y;d!==void 0&&d.texture.dispose();const _=o.morphAttributes.position!==void 0,v=o.morphAttributes.normal!==void 0,m=o.morphAttributes.color!==void 0,f=o.morphAttributes.position||[],S=o.morphAttributes.normal||[],E=o.morphAttributes.color||[];let M=0;_===!0&&(M=1),v===!0&&(M=2),m===!0&&(M=3);let P=o.attributes.position.count*M,C=1;P>e.maxTextureSize&&(C=Math.ceil(P/e.maxTextureSize),P=e.maxTextureSize);const D=new Float32Array(P*C*4*u),O=new ou(D,P,C,u);O.type=kn,O.needsUpdate=!0;const b=M*4;for(let R=0;R<u;R++){const N=f[R],U=S[R],k=E[R],B=P*C*4*R;for(let q=0;q<N.count;q++){const J=q*b;_===!0&&(s.fromBufferAttribute(N,q),D[B+J+0]=s.x,D[B+J+1]=s.y,D[B+J+2]=s.z,D[B+J+3]=0),v===!0&&(s.fromBufferAttribute(U,q),D[B+J+4]=s.x,D[B+J+5]=s.y,D[B+J+6]=s.z,D[B+J+7]=0),m===!0&&(s.fromBufferAttribute(k,q),D[B+J+8]=s.x,D[B+J+9]=s.y,D[B+J+10]=s.z,D[B+J+11]=k.itemSize===4?s.w:1)}}d={count:u,texture:O,size:new We(P,C)},n.set(o,d),o.addEventListener("dispose",y)}if(a.isInstancedMesh===!0&&a.morphTexture!==null)c.getUniforms().setValue(i,"morphTexture",a.morphTexture,t);else{let _=0;for(let m=0;m<l.length;m++)_+=l[m];const v=o.morphTargetsRelative?1:1-_;c.getUniforms().setValue(i,"morphTargetBaseInfluence",v),c.getUniforms().setValue(i,"morphTargetInfluences",l)}c.getUniforms().setValue(i,"morphTargetsTexture",d.texture,t),c.getUniforms().setValue(i,"morphTargetsTextureSize",d.size)}return{update:r}}function jg(i,e,t,n){let s=new WeakMap;function r(c){const l=n.render.frame,h=c.geometry,u=e.get(c,h);if(s.get(u)!==l&&(e.update(u),s.set(u,l)),c.isInstancedMesh&&(c.hasEventListener("dispose",o)===!1&&c.addEventListener("dispose",o),s.get(c)!==l&&(t.update(c.instanceMatrix,i.ARRAY_BUFFER),c.instanceColor!==null&&t.update(c.instanceColor,i.ARRAY_BUFFER),s.set(c,l))),c.isSkinnedMesh){const d=c.skeleton;s.get(d)!==l&&(d.update(),s.set(d,l))}return u}function a(){s=new WeakMap}function o(c){const l=c.target;l.removeEventListener("dispose",o),t.remove(l.instanceMatrix),l.instanceColor!==null&&t.remove(l.instanceColor)}return{update:r,dispose:a}}const bu=new Zt,Gc=new gu(1,1),Mu=new ou,Su=new _f,Eu=new fu,$c=[],Wc=[],qc=new Float32Array(16),Xc=new Float32Array(9),jc=new Float32Array(4);function hs(i,e,t){const n=i[0];if(n<=0||n>0)return i;const s=e*t;let r=$c[s];if(r===void 0&&(r=new Float32Array(s),$c[s]=r),e!==0){n.toArray(r,0);for(let a=1,o=0;a!==e;++a)o+=t,i[a].toArray(r,o)}return r}function It(i,e){if(i.length!==e.length)return!1;for(let t=0,n=i.length;t<n;t++)if(i[t]!==e[t])return!1;return!0}function Ut(i,e){for(let t=0,n=e.length;t<n;t++)i[t]=e[t]}function ia(i,e){let t=Wc[e];t===void 0&&(t=new Int32Array(e),Wc[e]=t);for(let n=0;n!==e;++n)t[n]=i.allocateTextureUnit();return t}function Yg(i,e){const t=this.cache;t[0]!==e&&(i.uniform1f(this.addr,e),t[0]=e)}function Kg(i,e){const t=this.cache;if(e.x!==void 0)(t[0]!==e.x||t[1]!==e.y)&&(i.uniform2f(this.addr,e.x,e.y),t[0]=e.x,t[1]=e.y);else{if(It(t,e))return;i.uniform2fv(this.addr,e),Ut(t,e)}}function Zg(i,e){const t=this.cache;if(e.x!==void 0)(t[0]!==e.x||t[1]!==e.y||t[2]!==e.z)&&(i.uniform3f(this.addr,e.x,e.y,e.z),t[0]=e.x,t[1]=e.y,t[2]=e.z);else if(e.r!==void 0)(t[0]!==e.r||t[1]!==e.g||t[2]!==e.b)&&(i.uniform3f(this.addr,e.r,e.g,e.b),t[0]=e.r,t[1]=e.g,t[2]=e.b);else{if(It(t,e))return;i.uniform3fv(this.addr,e),Ut(t,e)}}function Jg(i,e){const t=this.cache;if(e.x!==void 0)(t[0]!==e.x||t[1]!==e.y||t[2]!==e.z||t[3]!==e.w)&&(i.uniform4f(this.addr,e.x,e.y,e.z,e.w),t[0]=e.x,t[1]=e.y,t[2]=e.z,t[3]=e.w);else{if(It(t,e))return;i.uniform4fv(this.addr,e),Ut(t,e)}}function Qg(i,e){const t=this.cache,n=e.elements;if(n===void 0){if(It(t,e))return;i.uniformMatrix2fv(this.addr,!1,e),Ut(t,e)}else{if(It(t,n))return;jc.set(n),i.uniformMatrix2fv(this.addr,!1,jc),Ut(t,n)}}function e_(i,e){const t=this.cache,n=e.elements;if(n===void 0){if(It(t,e))return;i.uniformMatrix3fv(this.addr,!1,e),Ut(t,e)}else{if(It(t,n))return;Xc.set(n),i.uniformMatrix3fv(this.addr,!1,Xc),Ut(t,n)}}function t_(i,e){const t=this.cache,n=e.elements;if(n===void 0){if(It(t,e))return;i.uniformMatrix4fv(this.addr,!1,e),Ut(t,e)}else{if(It(t,n))return;qc.set(n),i.uniformMatrix4fv(this.addr,!1,qc),Ut(t,n)}}function n_(i,e){const t=this.cache;t[0]!==e&&(i.uniform1i(this.addr,e),t[0]=e)}function i_(i,e){const t=this.cache;if(e.x!==void 0)(t[0]!==e.x||t[1]!==e.y)&&(i.uniform2i(this.addr,e.x,e.y),t[0]=e.x,t[1]=e.y);else{if(It(t,e))return;i.uniform2iv(this.addr,e),Ut(t,e)}}function s_(i,e){const t=this.cache;if(e.x!==void 0)(t[0]!==e.x||t[1]!==e.y||t[2]!==e.z)&&(i.uniform3i(this.addr,e.x,e.y,e.z),t[0]=e.x,t[1]=e.y,t[2]=e.z);else{if(It(t,e))return;i.uniform3iv(this.addr,e),Ut(t,e)}}function r_(i,e){const t=this.cache;if(e.x!==void 0)(t[0]!==e.x||t[1]!==e.y||t[2]!==e.z||t[3]!==e.w)&&(i.uniform4i(this.addr,e.x,e.y,e.z,e.w),t[0]=e.x,t[1]=e.y,t[2]=e.z,t[3]=e.w);else{if(It(t,e))return;i.uniform4iv(this.addr,e),Ut(t,e)}}function a_(i,e){const t=this.cache;t[0]!==e&&(i.uniform1ui(this.addr,e),t[0]=e)}function o_(i,e){const t=this.cache;if(e.x!==void 0)(t[0]!==e.x||t[1]!==e.y)&&(i.uniform2ui(this.addr,e.x,e.y),t[0]=e.x,t[1]=e.y);else{if(It(t,e))return;i.uniform2uiv(this.addr,e),Ut(t,e)}}function l_(i,e){const t=this.cache;if(e.x!==void 0)(t[0]!==e.x||t[1]!==e.y||t[2]!==e.z)&&(i.uniform3ui(this.addr,e.x,e.y,e.z),t[0]=e.x,t[1]=e.y,t[2]=e.z);else{if(It(t,e))return;i.uniform3uiv(this.addr,e),Ut(t,e)}}function c_(i,e){const t=this.cache;if(e.x!==void 0)(t[0]!==e.x||t[1]!==e.y||t[2]!==e.z||t[3]!==e.w)&&(i.uniform4ui(this.addr,e.x,e.y,e.z,e.w),t[0]=e.x,t[1]=e.y,t[2]=e.z,t[3]=e.w);else{if(It(t,e))return;i.uniform4uiv(this.addr,e),Ut(t,e)}}function h_(i,e,t){const n=this.cache,s=t.allocateTextureUnit();n[0]!==s&&(i.uniform1i(this.addr,s),n[0]=s);let r;this.type===i.SAMPLER_2D_SHADOW?(Gc.compareFunction=ru,r=Gc):r=bu,t.setTexture2D(e||r,s)}function u_(i,e,t){const n=this.cache,s=t.allocateTextureUnit();n[0]!==s&&(i.uniform1i(this.addr,s),n[0]=s),t.setTexture3D(e||Su,s)}function d_(i,e,t){const n=this.cache,s=t.allocateTextureUnit();n[0]!==s&&(i.uniform1i(this.addr,s),n[0]=s),t.setTextureCube(e||Eu,s)}function f_(i,e,t){const n=this.cache,s=t.allocateTextureUnit();n[0]!==s&&(i.uniform1i(this.addr,s),n[0]=s),t.setTexture2DArray(e||Mu,s)}function p_(i){switch(i){case 5126:return Yg;case 35664:return Kg;case 35665:return Zg;case 35666:return Jg;case 35674:return Qg;case 35675:return e_;case 35676:return t_;case 5124:case 35670:return n_;case 35667:case 35671:return i_;case 35668:case 35672:return s_;case 35669:case 35673:return r_;case 5125:return a_;case 36294:return o_;case 36295:return l_;case 36296:return c_;case 35678:case 36198:case 36298:case 36306:case 35682:return h_;case 35679:case 36299:case 36307:return u_;case 35680:case 36300:case 36308:case 36293:return d_;case 36289:case 36303:case 36311:case 36292:return f_}}function m_(i,e){i.uniform1fv(this.addr,e)}function g_(i,e){const t=hs(e,this.size,2);i.uniform2fv(this.addr,t)}function __(i,e){const t=hs(e,this.size,3);i.uniform3fv(this.addr,t)}function v_(i,e){const t=hs(e,this.size,4);i.uniform4fv(this.addr,t)}function x_(i,e){const t=hs(e,this.size,4);i.uniformMatrix2fv(this.addr,!1,t)}function y_(i,e){const t=hs(e,this.size,9);i.uniformMatrix3fv(this.addr,!1,t)}function w_(i,e){const t=hs(e,this.size,16);i.uniformMatrix4fv(this.addr,!1,t)}function b_(i,e){i.uniform1iv(this.addr,e)}function M_(i,e){i.uniform2iv(this.addr,e)}function S_(i,e){i.uniform3iv(this.addr,e)}function E_(i,e){i.uniform4iv(this.addr,e)}function T_(i,e){i.uniform1uiv(this.addr,e)}function A_(i,e){i.uniform2uiv(this.addr,e)}function R_(i,e){i.uniform3uiv(this.addr,e)}function C_(i,e){i.uniform4uiv(this.addr,e)}function P_(i,e,t){const n=this.cache,s=e.length,r=ia(t,s);It(n,r)||(i.uniform1iv(this.addr,r),Ut(n,r));for(let a=0;a!==s;++a)t.setTexture2D(e[a]||bu,r[a])}function D_(i,e,t){const n=this.cache,s=e.length,r=ia(t,s);It(n,r)||(i.uniform1iv(this.addr,r),Ut(n,r));for(let a=0;a!==s;++a)t.setTexture3D(e[a]||Su,r[a])}function L_(i,e,t){const n=this.cache,s=e.length,r=ia(t,s);It(n,r)||(i.uniform1iv(this.addr,r),Ut(n,r));for(let a=0;a!==s;++a)t.setTextureCube(e[a]||Eu,r[a])}function I_(i,e,t){const n=this.cache,s=e.length,r=ia(t,s);It(n,r)||(i.uniform1iv(this.addr,r),Ut(n,r));for(let a=0;a!==s;++a)t.setTexture2DArray(e[a]||Mu,r[a])}function U_(i){switch(i){case 5126:return m_;case 35664:return g_;case 35665:return __;case 35666:return v_;case 35674:return x_;case 35675:return y_;case 35676:return w_;case 5124:case 35670:return b_;case 35667:case 35671:return M_;case 35668:case 35672:return S_;case 35669:case 35673:return E_;case 5125:return T_;case 36294:return A_;case 36295:return R_;case 36296:return C_;case 35678:case 36198:case 36298:case 36306:case 35682:return P_;case 35679:case 36299:case 36307:return D_;case 35680:case 36300:case 36308:case 36293:return L_;case 36289:case 36303:case 36311:case 36292:return I_}}class N_{constructor(e,t,n){this.id=e,this.addr=n,this.cache=[],this.type=t.type,this.setValue=p_(t.type)}}class F_{constructor(e,t,n){this.id=e,this.addr=n,this.cache=[],this.type=t.type,this.size=t.size,this.setValue=U_(t.type)}}class O_{constructor(e){this.id=e,this.seq=[],this.map={}}setValue(e,t,n){const s=this.seq;for(let r=0,a=s.length;r!==a;++r){const o=s[r];o.setValue(e,t[o.id],n)}}}const Xa=/(\w+)(\])?(\[|\.)?/g;function Yc(i,e){i.seq.push(e),i.map[e.id]=e}function k_(i,e,t){const n=i.name,s=n.length;for(Xa.lastIndex=0;;){const r=Xa.exec(n),a=Xa.lastIndex;let o=r[1];const c=r[2]==="]",l=r[3];if(c&&(o=o|0),l===void 0||l==="["&&a+2===s){Yc(t,l===void 0?new N_(o,i,e):new F_(o,i,e));break}else{let u=t.map[o];u===void 0&&(u=new O_(o),Yc(t,u)),t=u}}}class Ur{constructor(e,t){this.seq=[],this.map={};const n=e.getProgramParameter(t,e.ACTIVE_UNIFORMS);for(let s=0;s<n;++s){const r=e.getActiveUniform(t,s),a=e.getUniformLocation(t,r.name);k_(r,a,this)}}setValue(e,t,n,s){const r=this.map[t];r!==void 0&&r.setValue(e,n,s)}setOptional(e,t,n){const s=t[n];s!==void 0&&this.setValue(e,n,s)}static upload(e,t,n,s){for(let r=0,a=t.length;r!==a;++r){const o=t[r],c=n[o.id];c.needsUpdate!==!1&&o.setValue(e,c.value,s)}}static seqWithValue(e,t){const n=[];for(let s=0,r=e.length;s!==r;++s){const a=e[s];a.id in t&&n.push(a)}return n}}function Kc(i,e,t){const n=i.createShader(e);return i.shaderSource(n,t),i.compileShader(n),n}const B_=37297;let z_=0;function H_(i,e){const t=i.split(`
`),n=[],s=Math.max(e-6,0),r=Math.min(e+6,t.length);for(let a=s;a<r;a++){const o=a+1;n.push(`${o===e?">":" "} ${o}: ${t[a]}`)}return n.join(`
`)}const Zc=new je;function V_(i){st._getMatrix(Zc,st.workingColorSpace,i);const e=`mat3( ${Zc.elements.map(t=>t.toFixed(4))} )`;switch(st.getTransfer(i)){case Br:return[e,"LinearTransferOETF"];case lt:return[e,"sRGBTransferOETF"];default:return console.warn("THREE.WebGLProgram: Unsupported color space: ",i),[e,"LinearTransferOETF"]}}function Jc(i,e,t){const n=i.getShaderParameter(e,i.COMPILE_STATUS),r=(i.getShaderInfoLog(e)||"").trim();if(n&&r==="")return"";const a=/ERROR: 0:(\d+)/.exec(r);if(a){const o=parseInt(a[1]);return t.toUpperCase()+`

`+r+`

`+H_(i.getShaderSource(e),o)}else return r}function G_(i,e){const t=V_(e);return[`vec4 ${i}( vec4 value ) {`,`	return ${t[1]}( vec4( value.rgb * ${t[0]}, value.a ) );`,"}"].join(`
`)}function $_(i,e){let t;switch(e){case Gd:t="Linear";break;case $d:t="Reinhard";break;case Wd:t="Cineon";break;case qd:t="ACESFilmic";break;case jd:t="AgX";break;case Yd:t="Neutral";break;case Xd:t="Custom";break;default:console.warn("THREE.WebGLProgram: Unsupported toneMapping:",e),t="Linear"}return"vec3 "+i+"( vec3 color ) { return "+t+"ToneMapping( color ); }"}const Sr=new I;function W_(){st.getLuminanceCoefficients(Sr);const i=Sr.x.toFixed(4),e=Sr.y.toFixed(4),t=Sr.z.toFixed(4);return["float luminance( const in vec3 rgb ) {",`	const vec3 weights = vec3( ${i}, ${e}, ${t} );`,"	return dot( weights, rgb );","}"].join(`
`)}function q_(i){return[i.extensionClipCullDistance?"#extension GL_ANGLE_clip_cull_distance : require":"",i.extensionMultiDraw?"#extension GL_ANGLE_multi_draw : require":""].filter(ws).join(`
`)}function X_(i){const e=[];for(const t in i){const n=i[t];n!==!1&&e.push("#define "+t+" "+n)}return e.join(`
`)}function j_(i,e){const t={},n=i.getProgramParameter(e,i.ACTIVE_ATTRIBUTES);for(let s=0;s<n;s++){const r=i.getActiveAttrib(e,s),a=r.name;let o=1;r.type===i.FLOAT_MAT2&&(o=2),r.type===i.FLOAT_MAT3&&(o=3),r.type===i.FLOAT_MAT4&&(o=4),t[a]={type:r.type,location:i.getAttribLocation(e,a),locationSize:o}}return t}function ws(i){return i!==""}function Qc(i,e){const t=e.numSpotLightShadows+e.numSpotLightMaps-e.numSpotLightShadowsWithMaps;return i.replace(/NUM_DIR_LIGHTS/g,e.numDirLights).replace(/NUM_SPOT_LIGHTS/g,e.numSpotLights).replace(/NUM_SPOT_LIGHT_MAPS/g,e.numSpotLightMaps).replace(/NUM_SPOT_LIGHT_COORDS/g,t).replace(/NUM_RECT_AREA_LIGHTS/g,e.numRectAreaLights).replace(/NUM_POINT_LIGHTS/g,e.numPointLights).replace(/NUM_HEMI_LIGHTS/g,e.numHemiLights).replace(/NUM_DIR_LIGHT_SHADOWS/g,e.numDirLightShadows).replace(/NUM_SPOT_LIGHT_SHADOWS_WITH_MAPS/g,e.numSpotLightShadowsWithMaps).replace(/NUM_SPOT_LIGHT_SHADOWS/g,e.numSpotLightShadows).replace(/NUM_POINT_LIGHT_SHADOWS/g,e.numPointLightShadows)}function eh(i,e){return i.replace(/NUM_CLIPPING_PLANES/g,e.numClippingPlanes).replace(/UNION_CLIPPING_PLANES/g,e.numClippingPlanes-e.numClipIntersection)}const Y_=/^[ \t]*#include +<([\w\d./]+)>/gm;function Qo(i){return i.replace(Y_,Z_)}const K_=new Map;function Z_(i,e){let t=Ye[e];if(t===void 0){const n=K_.get(e);if(n!==void 0)t=Ye[n],console.warn('THREE.WebGLRenderer: Shader chunk "%s" has been deprecated. Use "%s" instead.',e,n);else throw new Error("Can not resolve #include <"+e+">")}return Qo(t)}const J_=/#pragma unroll_loop_start\s+for\s*\(\s*int\s+i\s*=\s*(\d+)\s*;\s*i\s*<\s*(\d+)\s*;\s*i\s*\+\+\s*\)\s*{([\s\S]+?)}\s+#pragma unroll_loop_end/g;function th(i){return i.replace(J_,Q_)}function Q_(i,e,t,n){let s="";for(let r=parseInt(e);r<parseInt(t);r++)s+=n.replace(/\[\s*i\s*\]/g,"[ "+r+" ]").replace(/UNROLLED_LOOP_INDEX/g,r);return s}function nh(i){let e=`precision ${i.precision} float;
	precision ${i.precision} int;
	precision ${i.precision} sampler2D;
	precision ${i.precision} samplerCube;
	precision ${i.precision} sampler3D;
	precision ${i.precision} sampler2DArray;
	precision ${i.precision} sampler2DShadow;
	precision ${i.precision} samplerCubeShadow;
	precision ${i.precision} sampler2DArrayShadow;
	precision ${i.precision} isampler2D;
	precision ${i.precision} isampler3D;
	precision ${i.precision} isamplerCube;
	precision ${i.precision} isampler2DArray;
	precision ${i.precision} usampler2D;
	precision ${i.precision} usampler3D;
	precision ${i.precision} usamplerCube;
	precision ${i.precision} usampler2DArray;
	`;return i.precision==="highp"?e+=`
#define HIGH_PRECISION`:i.precision==="mediump"?e+=`
#define MEDIUM_PRECISION`:i.precision==="lowp"&&(e+=`
#define LOW_PRECISION`),e}function e0(i){let e="SHADOWMAP_TYPE_BASIC";return i.shadowMapType===jh?e="SHADOWMAP_TYPE_PCF":i.shadowMapType===bd?e="SHADOWMAP_TYPE_PCF_SOFT":i.shadowMapType===Fn&&(e="SHADOWMAP_TYPE_VSM"),e}function t0(i){let e="ENVMAP_TYPE_CUBE";if(i.envMap)switch(i.envMapMode){case is:case ss:e="ENVMAP_TYPE_CUBE";break;case Qr:e="ENVMAP_TYPE_CUBE_UV";break}return e}function n0(i){let e="ENVMAP_MODE_REFLECTION";if(i.envMap)switch(i.envMapMode){case ss:e="ENVMAP_MODE_REFRACTION";break}return e}function i0(i){let e="ENVMAP_BLENDING_NONE";if(i.envMap)switch(i.combine){case gl:e="ENVMAP_BLENDING_MULTIPLY";break;case Hd:e="ENVMAP_BLENDING_MIX";break;case Vd:e="ENVMAP_BLENDING_ADD";break}return e}function s0(i){const e=i.envMapCubeUVHeight;if(e===null)return null;const t=Math.log2(e)-2,n=1/e;return{texelWidth:1/(3*Math.max(Math.pow(2,t),112)),texelHeight:n,maxMip:t}}function r0(i,e,t,n){const s=i.getContext(),r=t.defines;let a=t.vertexShader,o=t.fragmentShader;const c=e0(t),l=t0(t),h=n0(t),u=i0(t),d=s0(t),p=q_(t),_=X_(r),v=s.createProgram();let m,f,S=t.glslVersion?"#version "+t.glslVersion+`
`:"";t.isRawShaderMaterial?(m=["#define SHADER_TYPE "+t.shaderType,"#define SHADER_NAME "+t.shaderName,_].filter(ws).join(`
`),m.length>0&&(m+=`
`),f=["#define SHADER_TYPE "+t.shaderType,"#define SHADER_NAME "+t.shaderName,_].filter(ws).join(`
`),f.length>0&&(f+=`
`)):(m=[nh(t),"#define SHADER_TYPE "+t.shaderType,"#define SHADER_NAME "+t.shaderName,_,t.extensionClipCullDistance?"#define USE_CLIP_DISTANCE":"",t.batching?"#define USE_BATCHING":"",t.batchingColor?"#define USE_BATCHING_COLOR":"",t.instancing?"#define USE_INSTANCING":"",t.instancingColor?"#define USE_INSTANCING_COLOR":"",t.instancingMorph?"#define USE_INSTANCING_MORPH":"",t.useFog&&t.fog?"#define USE_FOG":"",t.useFog&&t.fogExp2?"#define FOG_EXP2":"",t.map?"#define USE_MAP":"",t.envMap?"#define USE_ENVMAP":"",t.envMap?"#define "+h:"",t.lightMap?"#define USE_LIGHTMAP":"",t.aoMap?"#define USE_AOMAP":"",t.bumpMap?"#define USE_BUMPMAP":"",t.normalMap?"#define USE_NORMALMAP":"",t.normalMapObjectSpace?"#define USE_NORMALMAP_OBJECTSPACE":"",t.normalMapTangentSpace?"#define USE_NORMALMAP_TANGENTSPACE":"",t.displacementMap?"#define USE_DISPLACEMENTMAP":"",t.emissiveMap?"#define USE_EMISSIVEMAP":"",t.anisotropy?"#define USE_ANISOTROPY":"",t.anisotropyMap?"#define USE_ANISOTROPYMAP":"",t.clearcoatMap?"#define USE_CLEARCOATMAP":"",t.clearcoatRoughnessMap?"#define USE_CLEARCOAT_ROUGHNESSMAP":"",t.clearcoatNormalMap?"#define USE_CLEARCOAT_NORMALMAP":"",t.iridescenceMap?"#define USE_IRIDESCENCEMAP":"",t.iridescenceThicknessMap?"#define USE_IRIDESCENCE_THICKNESSMAP":"",t.specularMap?"#define USE_SPECULARMAP":"",t.specularColorMap?"#define USE_SPECULAR_COLORMAP":"",t.specularIntensityMap?"#define USE_SPECULAR_INTENSITYMAP":"",t.roughnessMap?"#define USE_ROUGHNESSMAP":"",t.metalnessMap?"#define USE_METALNESSMAP":"",t.alphaMap?"#define USE_ALPHAMAP":"",t.alphaHash?"#define USE_ALPHAHASH":"",t.transmission?"#define USE_TRANSMISSION":"",t.transmissionMap?"#define USE_TRANSMISSIONMAP":"",t.thicknessMap?"#define USE_THICKNESSMAP":"",t.sheenColorMap?"#define USE_SHEEN_COLORMAP":"",t.sheenRoughnessMap?"#define USE_SHEEN_ROUGHNESSMAP":"",t.mapUv?"#define MAP_UV "+t.mapUv:"",t.alphaMapUv?"#define ALPHAMAP_UV "+t.alphaMapUv:"",t.lightMapUv?"#define LIGHTMAP_UV "+t.lightMapUv:"",t.aoMapUv?"#define AOMAP_UV "+t.aoMapUv:"",t.emissiveMapUv?"#define EMISSIVEMAP_UV "+t.emissiveMapUv:"",t.bumpMapUv?"#define BUMPMAP_UV "+t.bumpMapUv:"",t.normalMapUv?"#define NORMALMAP_UV "+t.normalMapUv:"",t.displacementMapUv?"#define DISPLACEMENTMAP_UV "+t.displacementMapUv:"",t.metalnessMapUv?"#define METALNESSMAP_UV "+t.metalnessMapUv:"",t.roughnessMapUv?"#define ROUGHNESSMAP_UV "+t.roughnessMapUv:"",t.anisotropyMapUv?"#define ANISOTROPYMAP_UV "+t.anisotropyMapUv:"",t.clearcoatMapUv?"#define CLEARCOATMAP_UV "+t.clearcoatMapUv:"",t.clearcoatNormalMapUv?"#define CLEARCOAT_NORMALMAP_UV "+t.clearcoatNormalMapUv:"",t.clearcoatRoughnessMapUv?"#define CLEARCOAT_ROUGHNESSMAP_UV "+t.clearcoatRoughnessMapUv:"",t.iridescenceMapUv?"#define IRIDESCENCEMAP_UV "+t.iridescenceMapUv:"",t.iridescenceThicknessMapUv?"#define IRIDESCENCE_THICKNESSMAP_UV "+t.iridescenceThicknessMapUv:"",t.sheenColorMapUv?"#define SHEEN_COLORMAP_UV "+t.sheenColorMapUv:"",t.sheenRoughnessMapUv?"#define SHEEN_ROUGHNESSMAP_UV "+t.sheenRoughnessMapUv:"",t.specularMapUv?"#define SPECULARMAP_UV "+t.specularMapUv:"",t.specularColorMapUv?"#define SPECULAR_COLORMAP_UV "+t.specularColorMapUv:"",t.specularIntensityMapUv?"#define SPECULAR_INTENSITYMAP_UV "+t.specularIntensityMapUv:"",t.transmissionMapUv?"#define TRANSMISSIONMAP_UV "+t.transmissionMapUv:"",t.thicknessMapUv?"#define THICKNESSMAP_UV "+t.thicknessMapUv:"",t.vertexTangents&&t.flatShading===!1?"#define USE_TANGENT":"",t.vertexColors?"#define USE_COLOR":"",t.vertexAlphas?"#define USE_COLOR_ALPHA":"",t.vertexUv1s?"#define USE_UV1":"",t.vertexUv2s?"#define USE_UV2":"",t.vertexUv3s?"#define USE_UV3":"",t.pointsUvs?"#define USE_POINTS_UV":"",t.flatShading?"#define FLAT_SHADED":"",t.skinning?"#define USE_SKINNING":"",t.morphTargets?"#define USE_MORPHTARGETS":"",t.morphNormals&&t.flatShading===!1?"#define USE_MORPHNORMALS":"",t.morphColors?"#define USE_MORPHCOLORS":"",t.morphTargetsCount>0?"#define MORPHTARGETS_TEXTURE_STRIDE "+t.morphTextureStride:"",t.morphTargetsCount>0?"#define MORPHTARGETS_COUNT "+t.morphTargetsCount:"",t.doubleSided?"#define DOUBLE_SIDED":"",t.flipSided?"#define FLIP_SIDED":"",t.shadowMapEnabled?"#define USE_SHADOWMAP":"",t.shadowMapEnabled?"#define "+c:"",t.sizeAttenuation?"#define USE_SIZEATTENUATION":"",t.numLightProbes>0?"#define USE_LIGHT_PROBES":"",t.logarithmicDepthBuffer?"#define USE_LOGARITHMIC_DEPTH_BUFFER":"",t.reversedDepthBuffer?"#define USE_REVERSED_DEPTH_BUFFER":"","uniform mat4 modelMatrix;","uniform mat4 modelViewMatrix;","uniform mat4 projectionMatrix;","uniform mat4 viewMatrix;","uniform mat3 normalMatrix;","uniform vec3 cameraPosition;","uniform bool isOrthographic;","#ifdef USE_INSTANCING","	attribute mat4 instanceMatrix;","#endif","#ifdef USE_INSTANCING_COLOR","	attribute vec3 instanceColor;","#endif","#ifdef USE_INSTANCING_MORPH","	uniform sampler2D morphTexture;","#endif","attribute vec3 position;","attribute vec3 normal;","attribute vec2 uv;","#ifdef USE_UV1","	attribute vec2 uv1;","#endif","#ifdef USE_UV2","	attribute vec2 uv2;","#endif","#ifdef USE_UV3","	attribute vec2 uv3;","#endif","#ifdef USE_TANGENT","	attribute vec4 tangent;","#endif","#if defined( USE_COLOR_ALPHA )","	attribute vec4 color;","#elif defined( USE_COLOR )","	attribute vec3 color;","#endif","#ifdef USE_SKINNING","	attribute vec4 skinIndex;","	attribute vec4 skinWeight;","#endif",`
`].filter(ws).join(`
`),f=[nh(t),"#define SHADER_TYPE "+t.shaderType,"#define SHADER_NAME "+t.shaderName,_,t.useFog&&t.fog?"#define USE_FOG":"",t.useFog&&t.fogExp2?"#define FOG_EXP2":"",t.alphaToCoverage?"#define ALPHA_TO_COVERAGE":"",t.map?"#define USE_MAP":"",t.matcap?"#define USE_MATCAP":"",t.envMap?"#define USE_ENVMAP":"",t.envMap?"#define "+l:"",t.envMap?"#define "+h:"",t.envMap?"#define "+u:"",d?"#define CUBEUV_TEXEL_WIDTH "+d.texelWidth:"",d?"#define CUBEUV_TEXEL_HEIGHT "+d.texelHeight:"",d?"#define CUBEUV_MAX_MIP "+d.maxMip+".0":"",t.lightMap?"#define USE_LIGHTMAP":"",t.aoMap?"#define USE_AOMAP":"",t.bumpMap?"#define USE_BUMPMAP":"",t.normalMap?"#define USE_NORMALMAP":"",t.normalMapObjectSpace?"#define USE_NORMALMAP_OBJECTSPACE":"",t.normalMapTangentSpace?"#define USE_NORMALMAP_TANGENTSPACE":"",t.emissiveMap?"#define USE_EMISSIVEMAP":"",t.anisotropy?"#define USE_ANISOTROPY":"",t.anisotropyMap?"#define USE_ANISOTROPYMAP":"",t.clearcoat?"#define USE_CLEARCOAT":"",t.clearcoatMap?"#define USE_CLEARCOATMAP":"",t.clearcoatRoughnessMap?"#define USE_CLEARCOAT_ROUGHNESSMAP":"",t.clearcoatNormalMap?"#define USE_CLEARCOAT_NORMALMAP":"",t.dispersion?"#define USE_DISPERSION":"",t.iridescence?"#define USE_IRIDESCENCE":"",t.iridescenceMap?"#define USE_IRIDESCENCEMAP":"",t.iridescenceThicknessMap?"#define USE_IRIDESCENCE_THICKNESSMAP":"",t.specularMap?"#define USE_SPECULARMAP":"",t.specularColorMap?"#define USE_SPECULAR_COLORMAP":"",t.specularIntensityMap?"#define USE_SPECULAR_INTENSITYMAP":"",t.roughnessMap?"#define USE_ROUGHNESSMAP":"",t.metalnessMap?"#define USE_METALNESSMAP":"",t.alphaMap?"#define USE_ALPHAMAP":"",t.alphaTest?"#define USE_ALPHATEST":"",t.alphaHash?"#define USE_ALPHAHASH":"",t.sheen?"#define USE_SHEEN":"",t.sheenColorMap?"#define USE_SHEEN_COLORMAP":"",t.sheenRoughnessMap?"#define USE_SHEEN_ROUGHNESSMAP":"",t.transmission?"#define USE_TRANSMISSION":"",t.transmissionMap?"#define USE_TRANSMISSIONMAP":"",t.thicknessMap?"#define USE_THICKNESSMAP":"",t.vertexTangents&&t.flatShading===!1?"#define USE_TANGENT":"",t.vertexColors||t.instancingColor||t.batchingColor?"#define USE_COLOR":"",t.vertexAlphas?"#define USE_COLOR_ALPHA":"",t.vertexUv1s?"#define USE_UV1":"",t.vertexUv2s?"#define USE_UV2":"",t.vertexUv3s?"#define USE_UV3":"",t.pointsUvs?"#define USE_POINTS_UV":"",t.gradientMap?"#define USE_GRADIENTMAP":"",t.flatShading?"#define FLAT_SHADED":"",t.doubleSided?"#define DOUBLE_SIDED":"",t.flipSided?"#define FLIP_SIDED":"",t.shadowMapEnabled?"#define USE_SHADOWMAP":"",t.shadowMapEnabled?"#define "+c:"",t.premultipliedAlpha?"#define PREMULTIPLIED_ALPHA":"",t.numLightProbes>0?"#define USE_LIGHT_PROBES":"",t.decodeVideoTexture?"#define DECODE_VIDEO_TEXTURE":"",t.decodeVideoTextureEmissive?"#define DECODE_VIDEO_TEXTURE_EMISSIVE":"",t.logarithmicDepthBuffer?"#define USE_LOGARITHMIC_DEPTH_BUFFER":"",t.reversedDepthBuffer?"#define USE_REVERSED_DEPTH_BUFFER":"","uniform mat4 viewMatrix;","uniform vec3 cameraPosition;","uniform bool isOrthographic;",t.toneMapping!==ri?"#define TONE_MAPPING":"",t.toneMapping!==ri?Ye.tonemapping_pars_fragment:"",t.toneMapping!==ri?$_("toneMapping",t.toneMapping):"",t.dithering?"#define DITHERING":"",t.opaque?"#define OPAQUE":"",Ye.colorspace_pars_fragment,G_("linearToOutputTexel",t.outputColorSpace),W_(),t.useDepthPacking?"#define DEPTH_PACKING "+t.depthPacking:"",`
`].filter(ws).join(`
`)),a=Qo(a),a=Qc(a,t),a=eh(a,t),o=Qo(o),o=Qc(o,t),o=eh(o,t),a=th(a),o=th(o),t.isRawShaderMaterial!==!0&&(S=`#version 300 es
`,m=[p,"#define attribute in","#define varying out","#define texture2D texture"].join(`
`)+`
`+m,f=["#define varying in",t.glslVersion===rc?"":"layout(location = 0) out highp vec4 pc_fragColor;",t.glslVersion===rc?"":"#define gl_FragColor pc_fragColor","#define gl_FragDepthEXT gl_FragDepth","#define texture2D texture","#define textureCube texture","#define texture2DProj textureProj","#define texture2DLodEXT textureLod","#define texture2DProjLodEXT textureProjLod","#define textureCubeLodEXT textureLod","#define texture2DGradEXT textureGrad","#define texture2DProjGradEXT textureProjGrad","#define textureCubeGradEXT textureGrad"].join(`
`)+`
`+f);const E=S+m+a,M=S+f+o,P=Kc(s,s.VERTEX_SHADER,E),C=Kc(s,s.FRAGMENT_SHADER,M);s.attachShader(v,P),s.attachShader(v,C),t.index0AttributeName!==void 0?s.bindAttribLocation(v,0,t.index0AttributeName):t.morphTargets===!0&&s.bindAttribLocation(v,0,"position"),s.linkProgram(v);function D(R){if(i.debug.checkShaderErrors){const N=s.getProgramInfoLog(v)||"",U=s.getShaderInfoLog(P)||"",k=s.getShaderInfoLog(C)||"",B=N.trim(),q=U.trim(),J=k.trim();let X=!0,le=!0;if(s.getProgramParameter(v,s.LINK_STATUS)===!1)if(X=!1,typeof i.debug.onShaderError=="function")i.debug.onShaderError(s,v,P,C);else{const fe=Jc(s,P,"vertex"),W=Jc(s,C,"fragment");console.error("THREE.WebGLProgram: Shader Error "+s.getError()+" - VALIDATE_STATUS "+s.getProgramParameter(v,s.VALIDATE_STATUS)+`

Material Name: `+R.name+`
Material Type: `+R.type+`

Program Info Log: `+B+`
`+fe+`
`+W)}else B!==""?console.warn("THREE.WebGLProgram: Program Info Log:",B):(q===""||J==="")&&(le=!1);le&&(R.diagnostics={runnable:X,programLog:B,vertexShader:{log:q,prefix:m},fragmentShader:{log:J,prefix:f}})}s.deleteShader(P),s.deleteShader(C),O=new Ur(s,v),b=j_(s,v)}let O;this.getUniforms=function(){return O===void 0&&D(this),O};let b;this.getAttributes=function(){return b===void 0&&D(this),b};let y=t.rendererExtensionParallelShaderCompile===!1;return this.isReady=function(){return y===!1&&(y=s.getProgramParameter(v,B_)),y},this.destroy=function(){n.releaseStatesOfProgram(this),s.deleteProgram(v),this.program=void 0},this.type=t.shaderType,this.name=t.shaderName,this.id=z_++,this.cacheKey=e,this.usedTimes=1,this.program=v,this.vertexShader=P,this.fragmentShader=C,this}let a0=0;class o0{constructor(){this.shaderCache=new Map,this.materialCache=new Map}update(e){const t=e.vertexShader,n=e.fragmentShader,s=this._getShaderStage(t),r=this._getShaderStage(n),a=this._getShaderCacheForMaterial(e);return a.has(s)===!1&&(a.add(s),s.usedTimes++),a.has(r)===!1&&(a.add(r),r.usedTimes++),this}remove(e){const t=this.materialCache.get(e);for(const n of t)n.usedTimes--,n.usedTimes===0&&this.shaderCache.delete(n.code);return this.materialCache.delete(e),this}getVertexShaderID(e){return this._getShaderStage(e.vertexShader).id}getFragmentShaderID(e){return this._getShaderStage(e.fragmentShader).id}dispose(){this.shaderCache.clear(),this.materialCache.clear()}_getShaderCacheForMaterial(e){const t=this.materialCache;let n=t.get(e);return n===void 0&&(n=new Set,t.set(e,n)),n}_getShaderStage(e){const t=this.shaderCache;let n=t.get(e);return n===void 0&&(n=new l0(e),t.set(e,n)),n}}class l0{constructor(e){this.id=a0++,this.code=e,this.usedTimes=0}}function c0(i,e,t,n,s,r,a){const o=new Sl,c=new o0,l=new Set,h=[],u=s.logarithmicDepthBuffer,d=s.vertexTextures;let p=s.precision;const _={MeshDepthMaterial:"depth",MeshDistanceMaterial:"distanceRGBA",MeshNormalMaterial:"normal",MeshBasicMaterial:"basic",MeshLambertMaterial:"lambert",MeshPhongMaterial:"phong",MeshToonMaterial:"toon",MeshStandardMaterial:"physical",MeshPhysicalMaterial:"physical",MeshMatcapMaterial:"matcap",LineBasicMaterial:"basic",LineDashedMaterial:"dashed",PointsMaterial:"points",ShadowMaterial:"shadow",SpriteMaterial:"sprite"};function v(b){return l.add(b),b===0?"uv":`uv${b}`}function m(b,y,R,N,U){const k=N.fog,B=U.geometry,q=b.isMeshStandardMaterial?N.environment:null,J=(b.isMeshStandardMaterial?t:e).get(b.envMap||q),X=J&&J.mapping===Qr?J.image.height:null,le=_[b.type];b.precision!==null&&(p=s.getMaxPrecision(b.precision),p!==b.precision&&console.warn("THREE.WebGLProgram.getParameters:",b.precision,"not supported, using",p,"instead."));const fe=B.morphAttributes.position||B.morphAttributes.normal||B.morphAttributes.color,W=fe!==void 0?fe.length:0;let ue=0;B.morphAttributes.position!==void 0&&(ue=1),B.morphAttributes.normal!==void 0&&(ue=2),B.morphAttributes.color!==void 0&&(ue=3);let Ce,Oe,$e,Q;if(le){const at=Mn[le];Ce=at.vertexShader,Oe=at.fragmentShader}else Ce=b.vertexShader,Oe=b.fragmentShader,c.update(b),$e=c.getVertexShaderID(b),Q=c.getFragmentShaderID(b);const ee=i.getRenderTarget(),Se=i.state.buffers.depth.getReversed(),V=U.isInstancedMesh===!0,L=U.isBatchedMesh===!0,te=!!b.map,ge=!!b.matcap,A=!!J,we=!!b.aoMap,Me=!!b.lightMap,be=!!b.bumpMap,pe=!!b.normalMap,Je=!!b.displacementMap,ve=!!b.emissiveMap,He=!!b.metalnessMap,Rt=!!b.roughnessMap,xt=b.anisotropy>0,T=b.clearcoat>0,x=b.dispersion>0,$=b.iridescence>0,Z=b.sheen>0,ie=b.transmission>0,K=xt&&!!b.anisotropyMap,Ue=T&&!!b.clearcoatMap,he=T&&!!b.clearcoatNormalMap,De=T&&!!b.clearcoatRoughnessMap,Le=$&&!!b.iridescenceMap,ae=$&&!!b.iridescenceThicknessMap,ye=Z&&!!b.sheenColorMap,ze=Z&&!!b.sheenRoughnessMap,Ie=!!b.specularMap,_e=!!b.specularColorMap,Xe=!!b.specularIntensityMap,F=ie&&!!b.transmissionMap,oe=ie&&!!b.thicknessMap,de=!!b.gradientMap,Te=!!b.alphaMap,se=b.alphaTest>0,ne=!!b.alphaHash,Pe=!!b.extensions;let qe=ri;b.toneMapped&&(ee===null||ee.isXRRenderTarget===!0)&&(qe=i.toneMapping);const dt={shaderID:le,shaderType:b.type,shaderName:b.name,vertexShader:Ce,fragmentShader:Oe,defines:b.defines,customVertexShaderID:$e,customFragmentShaderID:Q,isRawShaderMaterial:b.isRawShaderMaterial===!0,glslVersion:b.glslVersion,precision:p,batching:L,batchingColor:L&&U._colorsTexture!==null,instancing:V,instancingColor:V&&U.instanceColor!==null,instancingMorph:V&&U.morphTexture!==null,supportsVertexTextures:d,outputColorSpace:ee===null?i.outputColorSpace:ee.isXRRenderTarget===!0?ee.texture.colorSpace:rs,alphaToCoverage:!!b.alphaToCoverage,map:te,matcap:ge,envMap:A,envMapMode:A&&J.mapping,envMapCubeUVHeight:X,aoMap:we,lightMap:Me,bumpMap:be,normalMap:pe,displacementMap:d&&Je,emissiveMap:ve,normalMapObjectSpace:pe&&b.normalMapType===Qd,normalMapTangentSpace:pe&&b.normalMapType===su,metalnessMap:He,roughnessMap:Rt,anisotropy:xt,anisotropyMap:K,clearcoat:T,clearcoatMap:Ue,clearcoatNormalMap:he,clearcoatRoughnessMap:De,dispersion:x,iridescence:$,iridescenceMap:Le,iridescenceThicknessMap:ae,sheen:Z,sheenColorMap:ye,sheenRoughnessMap:ze,specularMap:Ie,specularColorMap:_e,specularIntensityMap:Xe,transmission:ie,transmissionMap:F,thicknessMap:oe,gradientMap:de,opaque:b.transparent===!1&&b.blending===es&&b.alphaToCoverage===!1,alphaMap:Te,alphaTest:se,alphaHash:ne,combine:b.combine,mapUv:te&&v(b.map.channel),aoMapUv:we&&v(b.aoMap.channel),lightMapUv:Me&&v(b.lightMap.channel),bumpMapUv:be&&v(b.bumpMap.channel),normalMapUv:pe&&v(b.normalMap.channel),displacementMapUv:Je&&v(b.displacementMap.channel),emissiveMapUv:ve&&v(b.emissiveMap.channel),metalnessMapUv:He&&v(b.metalnessMap.channel),roughnessMapUv:Rt&&v(b.roughnessMap.channel),anisotropyMapUv:K&&v(b.anisotropyMap.channel),clearcoatMapUv:Ue&&v(b.clearcoatMap.channel),clearcoatNormalMapUv:he&&v(b.clearcoatNormalMap.channel),clearcoatRoughnessMapUv:De&&v(b.clearcoatRoughnessMap.channel),iridescenceMapUv:Le&&v(b.iridescenceMap.channel),iridescenceThicknessMapUv:ae&&v(b.iridescenceThicknessMap.channel),sheenColorMapUv:ye&&v(b.sheenColorMap.channel),sheenRoughnessMapUv:ze&&v(b.sheenRoughnessMap.channel),specularMapUv:Ie&&v(b.specularMap.channel),specularColorMapUv:_e&&v(b.specularColorMap.channel),specularIntensityMapUv:Xe&&v(b.specularIntensityMap.channel),transmissionMapUv:F&&v(b.transmissionMap.channel),thicknessMapUv:oe&&v(b.thicknessMap.channel),alphaMapUv:Te&&v(b.alphaMap.channel),vertexTangents:!!B.attributes.tangent&&(pe||xt),vertexColors:b.vertexColors,vertexAlphas:b.vertexColors===!0&&!!B.attributes.color&&B.attributes.color.itemSize===4,pointsUvs:U.isPoints===!0&&!!B.attributes.uv&&(te||Te),fog:!!k,useFog:b.fog===!0,fogExp2:!!k&&k.isFogExp2,flatShading:b.flatShading===!0&&b.wireframe===!1,sizeAttenuation:b.sizeAttenuation===!0,logarithmicDepthBuffer:u,reversedDepthBuffer:Se,skinning:U.isSkinnedMesh===!0,morphTargets:B.morphAttributes.position!==void 0,morphNormals:B.morphAttributes.normal!==void 0,morphColors:B.morphAttributes.color!==void 0,morphTargetsCount:W,morphTextureStride:ue,numDirLights:y.directional.length,numPointLights:y.point.length,numSpotLights:y.spot.length,numSpotLightMaps:y.spotLightMap.length,numRectAreaLights:y.rectArea.length,numHemiLights:y.hemi.length,numDirLightShadows:y.directionalShadowMap.length,numPointLightShadows:y.pointShadowMap.length,numSpotLightShadows:y.spotShadowMap.length,numSpotLightShadowsWithMaps:y.numSpotLightShadowsWithMaps,numLightProbes:y.numLightProbes,numClippingPlanes:a.numPlanes,numClipIntersection:a.numIntersection,dithering:b.dithering,shadowMapEnabled:i.shadowMap.enabled&&R.length>0,shadowMapType:i.shadowMap.type,toneMapping:qe,decodeVideoTexture:te&&b.map.isVideoTexture===!0&&st.getTransfer(b.map.colorSpace)===lt,decodeVideoTextureEmissive:ve&&b.emissiveMap.isVideoTexture===!0&&st.getTransfer(b.emissiveMap.colorSpace)===lt,premultipliedAlpha:b.premultipliedAlpha,doubleSided:b.side===On,flipSided:b.side===Kt,useDepthPacking:b.depthPacking>=0,depthPacking:b.depthPacking||0,index0AttributeName:b.index0AttributeName,extensionClipCullDistance:Pe&&b.extensions.clipCullDistance===!0&&n.has("WEBGL_clip_cull_distance"),extensionMultiDraw:(Pe&&b.extensions.multiDraw===!0||L)&&n.has("WEBGL_multi_draw"),rendererExtensionParallelShaderCompile:n.has("KHR_parallel_shader_compile"),customProgramCacheKey:b.customProgramCacheKey()};return dt.vertexUv1s=l.has(1),dt.vertexUv2s=l.has(2),dt.vertexUv3s=l.has(3),l.clear(),dt}function f(b){const y=[];if(b.shaderID?y.push(b.shaderID):(y.push(b.customVertexShaderID),y.push(b.customFragmentShaderID)),b.defines!==void 0)for(const R in b.defines)y.push(R),y.push(b.defines[R]);return b.isRawShaderMaterial===!1&&(S(y,b),E(y,b),y.push(i.outputColorSpace)),y.push(b.customProgramCacheKey),y.join()}function S(b,y){b.push(y.precision),b.push(y.outputColorSpace),b.push(y.envMapMode),b.push(y.envMapCubeUVHeight),b.push(y.mapUv),b.push(y.alphaMapUv),b.push(y.lightMapUv),b.push(y.aoMapUv),b.push(y.bumpMapUv),b.push(y.normalMapUv),b.push(y.displacementMapUv),b.push(y.emissiveMapUv),b.push(y.metalnessMapUv),b.push(y.roughnessMapUv),b.push(y.anisotropyMapUv),b.push(y.clearcoatMapUv),b.push(y.clearcoatNormalMapUv),b.push(y.clearcoatRoughnessMapUv),b.push(y.iridescenceMapUv),b.push(y.iridescenceThicknessMapUv),b.push(y.sheenColorMapUv),b.push(y.sheenRoughnessMapUv),b.push(y.specularMapUv),b.push(y.specularColorMapUv),b.push(y.specularIntensityMapUv),b.push(y.transmissionMapUv),b.push(y.thicknessMapUv),b.push(y.combine),b.push(y.fogExp2),b.push(y.sizeAttenuation),b.push(y.morphTargetsCount),b.push(y.morphAttributeCount),b.push(y.numDirLights),b.push(y.numPointLights),b.push(y.numSpotLights),b.push(y.numSpotLightMaps),b.push(y.numHemiLights),b.push(y.numRectAreaLights),b.push(y.numDirLightShadows),b.push(y.numPointLightShadows),b.push(y.numSpotLightShadows),b.push(y.numSpotLightShadowsWithMaps),b.push(y.numLightProbes),b.push(y.shadowMapType),b.push(y.toneMapping),b.push(y.numClippingPlanes),b.push(y.numClipIntersection),b.push(y.depthPacking)}function E(b,y){o.disableAll(),y.supportsVertexTextures&&o.enable(0),y.instancing&&o.enable(1),y.instancingColor&&o.enable(2),y.instancingMorph&&o.enable(3),y.matcap&&o.enable(4),y.envMap&&o.enable(5),y.normalMapObjectSpace&&o.enable(6),y.normalMapTangentSpace&&o.enable(7),y.clearcoat&&o.enable(8),y.iridescence&&o.enable(9),y.alphaTest&&o.enable(10),y.vertexColors&&o.enable(11),y.vertexAlphas&&o.enable(12),y.vertexUv1s&&o.enable(13),y.vertexUv2s&&o.enable(14),y.vertexUv3s&&o.enable(15),y.vertexTangents&&o.enable(16),y.anisotropy&&o.enable(17),y.alphaHash&&o.enable(18),y.batching&&o.enable(19),y.dispersion&&o.enable(20),y.batchingColor&&o.enable(21),y.gradientMap&&o.enable(22),b.push(o.mask),o.disableAll(),y.fog&&o.enable(0),y.useFog&&o.enable(1),y.flatShading&&o.enable(2),y.logarithmicDepthBuffer&&o.enable(3),y.reversedDepthBuffer&&o.enable(4),y.skinning&&o.enable(5),y.morphTargets&&o.enable(6),y.morphNormals&&o.enable(7),y.morphColors&&o.enable(8),y.premultipliedAlpha&&o.enable(9),y.shadowMapEnabled&&o.enable(10),y.doubleSided&&o.enable(11),y.flipSided&&o.enable(12),y.useDepthPacking&&o.enable(13),y.dithering&&o.enable(14),y.transmission&&o.enable(15),y.sheen&&o.enable(16),y.opaque&&o.enable(17),y.pointsUvs&&o.enable(18),y.decodeVideoTexture&&o.enable(19),y.decodeVideoTextureEmissive&&o.enable(20),y.alphaToCoverage&&o.enable(21),b.push(o.mask)}function M(b){const y=_[b.type];let R;if(y){const N=Mn[y];R=Pf.clone(N.uniforms)}else R=b.uniforms;return R}function P(b,y){let R;for(let N=0,U=h.length;N<U;N++){const k=h[N];if(k.cacheKey===y){R=k,++R.usedTimes;break}}return R===void 0&&(R=new r0(i,y,b,r),h.push(R)),R}function C(b){if(--b.usedTimes===0){const y=h.indexOf(b);h[y]=h[h.length-1],h.pop(),b.destroy()}}function D(b){c.remove(b)}function O(){c.dispose()}return{getParameters:m,getProgramCacheKey:f,getUniforms:M,acquireProgram:P,releaseProgram:C,releaseShaderCache:D,programs:h,dispose:O}}function h0(){let i=new WeakMap;function e(a){return i.has(a)}function t(a){let o=i.get(a);return o===void 0&&(o={},i.set(a,o)),o}function n(a){i.delete(a)}function s(a,o,c){i.get(a)[o]=c}function r(){i=new WeakMap}return{has:e,get:t,remove:n,update:s,dispose:r}}function u0(i,e){return i.groupOrder!==e.groupOrder?i.groupOrder-e.groupOrder:i.renderOrder!==e.renderOrder?i.renderOrder-e.renderOrder:i.material.id!==e.material.id?i.material.id-e.material.id:i.z!==e.z?i.z-e.z:i.id-e.id}function ih(i,e){return i.groupOrder!==e.groupOrder?i.groupOrder-e.groupOrder:i.renderOrder!==e.renderOrder?i.renderOrder-e.renderOrder:i.z!==e.z?e.z-i.z:i.id-e.id}function sh(){const i=[];let e=0;const t=[],n=[],s=[];function r(){e=0,t.length=0,n.length=0,s.length=0}function a(u,d,p,_,v,m){let f=i[e];return f===void 0?(f={id:u.id,object:u,geometry:d,material:p,groupOrder:_,renderOrder:u.renderOrder,z:v,group:m},i[e]=f):(f.id=u.id,f.object=u,f.geometry=d,f.material=p,f.groupOrder=_,f.renderOrder=u.renderOrder,f.z=v,f.group=m),e++,f}function o(u,d,p,_,v,m){const f=a(u,d,p,_,v,m);p.transmission>0?n.push(f):p.transparent===!0?s.push(f):t.push(f)}function c(u,d,p,_,v,m){const f=a(u,d,p,_,v,m);p.transmission>0?n.unshift(f):p.transparent===!0?s.unshift(f):t.unshift(f)}function l(u,d){t.length>1&&t.sort(u||u0),n.length>1&&n.sort(d||ih),s.length>1&&s.sort(d||ih)}function h(){for(let u=e,d=i.length;u<d;u++){const p=i[u];if(p.id===null)break;p.id=null,p.object=null,p.geometry=null,p.material=null,p.group=null}}return{opaque:t,transmissive:n,transparent:s,init:r,push:o,unshift:c,finish:h,sort:l}}function d0(){let i=new WeakMap;function e(n,s){const r=i.get(n);let a;return r===void 0?(a=new sh,i.set(n,[a])):s>=r.length?(a=new sh,r.push(a)):a=r[s],a}function t(){i=new WeakMap}return{get:e,dispose:t}}function f0(){const i={};return{get:function(e){if(i[e.id]!==void 0)return i[e.id];let t;switch(e.type){case"DirectionalLight":t={direction:new I,color:new Ke};break;case"SpotLight":t={position:new I,direction:new I,color:new Ke,distance:0,coneCos:0,penumbraCos:0,decay:0};break;case"PointLight":t={position:new I,color:new Ke,distance:0,decay:0};break;case"HemisphereLight":t={direction:new I,skyColor:new Ke,groundColor:new Ke};break;case"RectAreaLight":t={color:new Ke,position:new I,halfWidth:new I,halfHeight:new I};break}return i[e.id]=t,t}}}function p0(){const i={};return{get:function(e){if(i[e.id]!==void 0)return i[e.id];let t;switch(e.type){case"DirectionalLight":t={shadowIntensity:1,shadowBias:0,shadowNormalBias:0,shadowRadius:1,shadowMapSize:new We};break;case"SpotLight":t={shadowIntensity:1,shadowBias:0,shadowNormalBias:0,shadowRadius:1,shadowMapSize:new We};break;case"PointLight":t={shadowIntensity:1,shadowBias:0,shadowNormalBias:0,shadowRadius:1,shadowMapSize:new We,shadowCameraNear:1,shadowCameraFar:1e3};break}return i[e.id]=t,t}}}let m0=0;function g0(i,e){return(e.castShadow?2:0)-(i.castShadow?2:0)+(e.map?1:0)-(i.map?1:0)}function _0(i){const e=new f0,t=p0(),n={version:0,hash:{directionalLength:-1,pointLength:-1,spotLength:-1,rectAreaLength:-1,hemiLength:-1,numDirectionalShadows:-1,numPointShadows:-1,numSpotShadows:-1,numSpotMaps:-1,numLightProbes:-1},ambient:[0,0,0],probe:[],directional:[],directionalShadow:[],directionalShadowMap:[],directionalShadowMatrix:[],spot:[],spotLightMap:[],spotShadow:[],spotShadowMap:[],spotLightMatrix:[],rectArea:[],rectAreaLTC1:null,rectAreaLTC2:null,point:[],pointShadow:[],pointShadowMap:[],pointShadowMatrix:[],hemi:[],numSpotLightShadowsWithMaps:0,numLightProbes:0};for(let l=0;l<9;l++)n.probe.push(new I);const s=new I,r=new pt,a=new pt;function o(l){let h=0,u=0,d=0;for(let b=0;b<9;b++)n.probe[b].set(0,0,0);let p=0,_=0,v=0,m=0,f=0,S=0,E=0,M=0,P=0,C=0,D=0;l.sort(g0);for(let b=0,y=l.length;b<y;b++){const R=l[b],N=R.color,U=R.intensity,k=R.distance,B=R.shadow&&R.shadow.map?R.shadow.map.texture:null;if(R.isAmbientLight)h+=N.r*U,u+=N.g*U,d+=N.b*U;else if(R.isLightProbe){for(let q=0;q<9;q++)n.probe[q].addScaledVector(R.sh.coefficients[q],U);D++}else if(R.isDirectionalLight){const q=e.get(R);if(q.color.copy(R.color).multiplyScalar(R.intensity),R.castShadow){const J=R.shadow,X=t.get(R);X.shadowIntensity=J.intensity,X.shadowBias=J.bias,X.shadowNormalBias=J.normalBias,X.shadowRadius=J.radius,X.shadowMapSize=J.mapSize,n.directionalShadow[p]=X,n.directionalShadowMap[p]=B,n.directionalShadowMatrix[p]=R.shadow.matrix,S++}n.directional[p]=q,p++}else if(R.isSpotLight){const q=e.get(R);q.position.setFromMatrixPosition(R.matrixWorld),q.color.copy(N).multiplyScalar(U),q.distance=k,q.coneCos=Math.cos(R.angle),q.penumbraCos=Math.cos(R.angle*(1-R.penumbra)),q.decay=R.decay,n.spot[v]=q;const J=R.shadow;if(R.map&&(n.spotLightMap[P]=R.map,P++,J.updateMatrices(R),R.castShadow&&C++),n.spotLightMatrix[v]=J.matrix,R.castShadow){const X=t.get(R);X.shadowIntensity=J.intensity,X.shadowBias=J.bias,X.shadowNormalBias=J.normalBias,X.shadowRadius=J.radius,X.shadowMapSize=J.mapSize,n.spotShadow[v]=X,n.spotShadowMap[v]=B,M++}v++}else if(R.isRectAreaLight){const q=e.get(R);q.color.copy(N).multiplyScalar(U),q.halfWidth.set(R.width*.5,0,0),q.halfHeight.set(0,R.height*.5,0),n.rectArea[m]=q,m++}else if(R.isPointLight){const q=e.get(R);if(q.color.copy(R.color).multiplyScalar(R.intensity),q.distance=R.distance,q.decay=R.decay,R.castShadow){const J=R.shadow,X=t.get(R);X.shadowIntensity=J.intensity,X.shadowBias=J.bias,X.shadowNormalBias=J.normalBias,X.shadowRadius=J.radius,X.shadowMapSize=J.mapSize,X.shadowCameraNear=J.camera.near,X.shadowCameraFar=J.camera.far,n.pointShadow[_]=X,n.pointShadowMap[_]=B,n.pointShadowMatrix[_]=R.shadow.matrix,E++}n.point[_]=q,_++}else if(R.isHemisphereLight){const q=e.get(R);q.skyColor.copy(R.color).multiplyScalar(U),q.groundColor.copy(R.groundColor).multiplyScalar(U),n.hemi[f]=q,f++}}m>0&&(i.has("OES_texture_float_linear")===!0?(n.rectAreaLTC1=me.LTC_FLOAT_1,n.rectAreaLTC2=me.LTC_FLOAT_2):(n.rectAreaLTC1=me.LTC_HALF_1,n.rectAreaLTC2=me.LTC_HALF_2)),n.ambient[0]=h,n.ambient[1]=u,n.ambient[2]=d;const O=n.hash;(O.directionalLength!==p||O.pointLength!==_||O.spotLength!==v||O.rectAreaLength!==m||O.hemiLength!==f||O.numDirectionalShadows!==S||O.numPointShadows!==E||O.numSpotShadows!==M||O.numSpotMaps!==P||O.numLightProbes!==D)&&(n.directional.length=p,n.spot.length=v,n.rectArea.length=m,n.point.length=_,n.hemi.length=f,n.directionalShadow.length=S,n.directionalShadowMap.length=S,n.pointShadow.length=E,n.pointShadowMap.length=E,n.spotShadow.length=M,n.spotShadowMap.length=M,n.directionalShadowMatrix.length=S,n.pointShadowMatrix.length=E,n.spotLightMatrix.length=M+P-C,n.spotLightMap.length=P,n.numSpotLightShadowsWithMaps=C,n.numLightProbes=D,O.directionalLength=p,O.pointLength=_,O.spotLength=v,O.rectAreaLength=m,O.hemiLength=f,O.numDirectionalShadows=S,O.numPointShadows=E,O.numSpotShadows=M,O.numSpotMaps=P,O.numLightProbes=D,n.version=m0++)}function c(l,h){let u=0,d=0,p=0,_=0,v=0;const m=h.matrixWorldInverse;for(let f=0,S=l.length;f<S;f++){const E=l[f];if(E.isDirectionalLight){const M=n.directional[u];M.direction.setFromMatrixPosition(E.matrixWorld),s.setFromMatrixPosition(E.target.matrixWorld),M.direction.sub(s),M.direction.transformDirection(m),u++}else if(E.isSpotLight){const M=n.spot[p];M.position.setFromMatrixPosition(E.matrixWorld),M.position.applyMatrix4(m),M.direction.setFromMatrixPosition(E.matrixWorld),s.setFromMatrixPosition(E.target.matrixWorld),M.direction.sub(s),M.direction.transformDirection(m),p++}else if(E.isRectAreaLight){const M=n.rectArea[_];M.position.setFromMatrixPosition(E.matrixWorld),M.position.applyMatrix4(m),a.identity(),r.copy(E.matrixWorld),r.premultiply(m),a.extractRotation(r),M.halfWidth.set(E.width*.5,0,0),M.halfHeight.set(0,E.height*.5,0),M.halfWidth.applyMatrix4(a),M.halfHeight.applyMatrix4(a),_++}else if(E.isPointLight){const M=n.point[d];M.position.setFromMatrixPosition(E.matrixWorld),M.position.applyMatrix4(m),d++}else if(E.isHemisphereLight){const M=n.hemi[v];M.direction.setFromMatrixPosition(E.matrixWorld),M.direction.transformDirection(m),v++}}}return{setup:o,setupView:c,state:n}}function rh(i){const e=new _0(i),t=[],n=[];function s(h){l.camera=h,t.length=0,n.length=0}function r(h){t.push(h)}function a(h){n.push(h)}function o(){e.setup(t)}function c(h){e.setupView(t,h)}const l={lightsArray:t,shadowsArray:n,camera:null,lights:e,transmissionRenderTarget:{}};return{init:s,state:l,setupLights:o,setupLightsView:c,pushLight:r,pushShadow:a}}function v0(i){let e=new WeakMap;function t(s,r=0){const a=e.get(s);let o;return a===void 0?(o=new rh(i),e.set(s,[o])):r>=a.length?(o=new rh(i),a.push(o)):o=a[r],o}function n(){e=new WeakMap}return{get:t,dispose:n}}const x0=`void main() {
	gl_Position = vec4( position, 1.0 );
}`,y0=`uniform sampler2D shadow_pass;
uniform vec2 resolution;
uniform float radius;
#include <packing>
void main() {
	const float samples = float( VSM_SAMPLES );
	float mean = 0.0;
	float squared_mean = 0.0;
	float uvStride = samples <= 1.0 ? 0.0 : 2.0 / ( samples - 1.0 );
	float uvStart = samples <= 1.0 ? 0.0 : - 1.0;
	for ( float i = 0.0; i < samples; i ++ ) {
		float uvOffset = uvStart + i * uvStride;
		#ifdef HORIZONTAL_PASS
			vec2 distribution = unpackRGBATo2Half( texture2D( shadow_pass, ( gl_FragCoord.xy + vec2( uvOffset, 0.0 ) * radius ) / resolution ) );
			mean += distribution.x;
			squared_mean += distribution.y * distribution.y + distribution.x * distribution.x;
		#else
			float depth = unpackRGBAToDepth( texture2D( shadow_pass, ( gl_FragCoord.xy + vec2( 0.0, uvOffset ) * radius ) / resolution ) );
			mean += depth;
			squared_mean += depth * depth;
		#endif
	}
	mean = mean / samples;
	squared_mean = squared_mean / samples;
	float std_dev = sqrt( squared_mean - mean * mean );
	gl_FragColor = pack2HalfToRGBA( vec2( mean, std_dev ) );
}`;function w0(i,e,t){let n=new El;const s=new We,r=new We,a=new St,o=new Vf({depthPacking:Jd}),c=new Gf,l={},h=t.maxTextureSize,u={[oi]:Kt,[Kt]:oi,[On]:On},d=new li({defines:{VSM_SAMPLES:8},uniforms:{shadow_pass:{value:null},resolution:{value:new We},radius:{value:4}},vertexShader:x0,fragmentShader:y0}),p=d.clone();p.defines.HORIZONTAL_PASS=1;const _=new At;_.setAttribute("position",new Wt(new Float32Array([-1,-1,.5,3,-1,.5,-1,3,.5]),3));const v=new kt(_,d),m=this;this.enabled=!1,this.autoUpdate=!0,this.needsUpdate=!1,this.type=jh;let f=this.type;this.render=function(C,D,O){if(m.enabled===!1||m.autoUpdate===!1&&m.needsUpdate===!1||C.length===0)return;const b=i.getRenderTarget(),y=i.getActiveCubeFace(),R=i.getActiveMipmapLevel(),N=i.state;N.setBlending(si),N.buffers.depth.getReversed()===!0?N.buffers.color.setClear(0,0,0,0):N.buffers.color.setClear(1,1,1,1),N.buffers.depth.setTest(!0),N.setScissorTest(!1);const U=f!==Fn&&this.type===Fn,k=f===Fn&&this.type!==Fn;for(let B=0,q=C.length;B<q;B++){const J=C[B],X=J.shadow;if(X===void 0){console.warn("THREE.WebGLShadowMap:",J,"has no shadow.");continue}if(X.autoUpdate===!1&&X.needsUpdate===!1)continue;s.copy(X.mapSize);const le=X.getFrameExtents();if(s.multiply(le),r.copy(X.mapSize),(s.x>h||s.y>h)&&(s.x>h&&(r.x=Math.floor(h/le.x),s.x=r.x*le.x,X.mapSize.x=r.x),s.y>h&&(r.y=Math.floor(h/le.y),s.y=r.y*le.y,X.mapSize.y=r.y)),X.map===null||U===!0||k===!0){const W=this.type!==Fn?{minFilter:xn,magFilter:xn}:{};X.map!==null&&X.map.dispose(),X.map=new Ci(s.x,s.y,W),X.map.texture.name=J.name+".shadowMap",X.camera.updateProjectionMatrix()}i.setRenderTarget(X.map),i.clear();const fe=X.getViewportCount();for(let W=0;W<fe;W++){const ue=X.getViewport(W);a.set(r.x*ue.x,r.y*ue.y,r.x*ue.z,r.y*ue.w),N.viewport(a),X.updateMatrices(J,W),n=X.getFrustum(),M(D,O,X.camera,J,this.type)}X.isPointLightShadow!==!0&&this.type===Fn&&S(X,O),X.needsUpdate=!1}f=this.type,m.needsUpdate=!1,i.setRenderTarget(b,y,R)};function S(C,D){const O=e.update(v);d.defines.VSM_SAMPLES!==C.blurSamples&&(d.defines.VSM_SAMPLES=C.blurSamples,p.defines.VSM_SAMPLES=C.blurSamples,d.needsUpdate=!0,p.needsUpdate=!0),C.mapPass===null&&(C.mapPass=new Ci(s.x,s.y)),d.uniforms.shadow_pass.value=C.map.texture,d.uniforms.resolution.value=C.mapSize,d.uniforms.radius.value=C.radius,i.setRenderTarget(C.mapPass),i.clear(),i.renderBufferDirect(D,null,O,d,v,null),p.uniforms.shadow_pass.value=C.mapPass.texture,p.uniforms.resolution.value=C.mapSize,p.uniforms.radius.value=C.radius,i.setRenderTarget(C.map),i.clear(),i.renderBufferDirect(D,null,O,p,v,null)}function E(C,D,O,b){let y=null;const R=O.isPointLight===!0?C.customDistanceMaterial:C.customDepthMaterial;if(R!==void 0)y=R;else if(y=O.isPointLight===!0?c:o,i.localClippingEnabled&&D.clipShadows===!0&&Array.isArray(D.clippingPlanes)&&D.clippingPlanes.length!==0||D.displacementMap&&D.displacementScale!==0||D.alphaMap&&D.alphaTest>0||D.map&&D.alphaTest>0||D.alphaToCoverage===!0){const N=y.uuid,U=D.uuid;let k=l[N];k===void 0&&(k={},l[N]=k);let B=k[U];B===void 0&&(B=y.clone(),k[U]=B,D.addEventListener("dispose",P)),y=B}if(y.visible=D.visible,y.wireframe=D.wireframe,b===Fn?y.side=D.shadowSide!==null?D.shadowSide:D.side:y.side=D.shadowSide!==null?D.shadowSide:u[D.side],y.alphaMap=D.alphaMap,y.alphaTest=D.alphaToCoverage===!0?.5:D.alphaTest,y.map=D.map,y.clipShadows=D.clipShadows,y.clippingPlanes=D.clippingPlanes,y.clipIntersection=D.clipIntersection,y.displacementMap=D.displacementMap,y.displacementScale=D.displacementScale,y.displacementBias=D.displacementBias,y.wireframeLinewidth=D.wireframeLinewidth,y.linewidth=D.linewidth,O.isPointLight===!0&&y.isMeshDistanceMaterial===!0){const N=i.properties.get(y);N.light=O}return y}function M(C,D,O,b,y){if(C.visible===!1)return;if(C.layers.test(D.layers)&&(C.isMesh||C.isLine||C.isPoints)&&(C.castShadow||C.receiveShadow&&y===Fn)&&(!C.frustumCulled||n.intersectsObject(C))){C.modelViewMatrix.multiplyMatrices(O.matrixWorldInverse,C.matrixWorld);const U=e.update(C),k=C.material;if(Array.isArray(k)){const B=U.groups;for(let q=0,J=B.length;q<J;q++){const X=B[q],le=k[X.materialIndex];if(le&&le.visible){const fe=E(C,le,b,y);C.onBeforeShadow(i,C,D,O,U,fe,X),i.renderBufferDirect(O,null,U,fe,C,X),C.onAfterShadow(i,C,D,O,U,fe,X)}}}else if(k.visible){const B=E(C,k,b,y);C.onBeforeShadow(i,C,D,O,U,B,null),i.renderBufferDirect(O,null,U,B,C,null),C.onAfterShadow(i,C,D,O,U,B,null)}}const N=C.children;for(let U=0,k=N.length;U<k;U++)M(N[U],D,O,b,y)}function P(C){C.target.removeEventListener("dispose",P);for(const O in l){const b=l[O],y=C.target.uuid;y in b&&(b[y].dispose(),delete b[y])}}}const b0={[ho]:uo,[fo]:go,[po]:_o,[ns]:mo,[uo]:ho,[go]:fo,[_o]:po,[mo]:ns};function M0(i,e){function t(){let F=!1;const oe=new St;let de=null;const Te=new St(0,0,0,0);return{setMask:function(se){de!==se&&!F&&(i.colorMask(se,se,se,se),de=se)},setLocked:function(se){F=se},setClear:function(se,ne,Pe,qe,dt){dt===!0&&(se*=qe,ne*=qe,Pe*=qe),oe.set(se,ne,Pe,qe),Te.equals(oe)===!1&&(i.clearColor(se,ne,Pe,qe),Te.copy(oe))},reset:function(){F=!1,de=null,Te.set(-1,0,0,0)}}}function n(){let F=!1,oe=!1,de=null,Te=null,se=null;return{setReversed:function(ne){if(oe!==ne){const Pe=e.get("EXT_clip_control");ne?Pe.clipControlEXT(Pe.LOWER_LEFT_EXT,Pe.ZERO_TO_ONE_EXT):Pe.clipControlEXT(Pe.LOWER_LEFT_EXT,Pe.NEGATIVE_ONE_TO_ONE_EXT),oe=ne;const qe=se;se=null,this.setClear(qe)}},getReversed:function(){return oe},setTest:function(ne){ne?ee(i.DEPTH_TEST):Se(i.DEPTH_TEST)},setMask:function(ne){de!==ne&&!F&&(i.depthMask(ne),de=ne)},setFunc:function(ne){if(oe&&(ne=b0[ne]),Te!==ne){switch(ne){case ho:i.depthFunc(i.NEVER);break;case uo:i.depthFunc(i.ALWAYS);break;case fo:i.depthFunc(i.LESS);break;case ns:i.depthFunc(i.LEQUAL);break;case po:i.depthFunc(i.EQUAL);break;case mo:i.depthFunc(i.GEQUAL);break;case go:i.depthFunc(i.GREATER);break;case _o:i.depthFunc(i.NOTEQUAL);break;default:i.depthFunc(i.LEQUAL)}Te=ne}},setLocked:function(ne){F=ne},setClear:function(ne){se!==ne&&(oe&&(ne=1-ne),i.clearDepth(ne),se=ne)},reset:function(){F=!1,de=null,Te=null,se=null,oe=!1}}}function s(){let F=!1,oe=null,de=null,Te=null,se=null,ne=null,Pe=null,qe=null,dt=null;return{setTest:function(at){F||(at?ee(i.STENCIL_TEST):Se(i.STENCIL_TEST))},setMask:function(at){oe!==at&&!F&&(i.stencilMask(at),oe=at)},setFunc:function(at,Pn,wn){(de!==at||Te!==Pn||se!==wn)&&(i.stencilFunc(at,Pn,wn),de=at,Te=Pn,se=wn)},setOp:function(at,Pn,wn){(ne!==at||Pe!==Pn||qe!==wn)&&(i.stencilOp(at,Pn,wn),ne=at,Pe=Pn,qe=wn)},setLocked:function(at){F=at},setClear:function(at){dt!==at&&(i.clearStencil(at),dt=at)},reset:function(){F=!1,oe=null,de=null,Te=null,se=null,ne=null,Pe=null,qe=null,dt=null}}}const r=new t,a=new n,o=new s,c=new WeakMap,l=new WeakMap;let h={},u={},d=new WeakMap,p=[],_=null,v=!1,m=null,f=null,S=null,E=null,M=null,P=null,C=null,D=new Ke(0,0,0),O=0,b=!1,y=null,R=null,N=null,U=null,k=null;const B=i.getParameter(i.MAX_COMBINED_TEXTURE_IMAGE_UNITS);let q=!1,J=0;const X=i.getParameter(i.VERSION);X.indexOf("WebGL")!==-1?(J=parseFloat(/^WebGL (\d)/.exec(X)[1]),q=J>=1):X.indexOf("OpenGL ES")!==-1&&(J=parseFloat(/^OpenGL ES (\d)/.exec(X)[1]),q=J>=2);let le=null,fe={};const W=i.getParameter(i.SCISSOR_BOX),ue=i.getParameter(i.VIEWPORT),Ce=new St().fromArray(W),Oe=new St().fromArray(ue);function $e(F,oe,de,Te){const se=new Uint8Array(4),ne=i.createTexture();i.bindTexture(F,ne),i.texParameteri(F,i.TEXTURE_MIN_FILTER,i.NEAREST),i.texParameteri(F,i.TEXTURE_MAG_FILTER,i.NEAREST);for(let Pe=0;Pe<de;Pe++)F===i.TEXTURE_3D||F===i.TEXTURE_2D_ARRAY?i.texImage3D(oe,0,i.RGBA,1,1,Te,0,i.RGBA,i.UNSIGNED_BYTE,se):i.texImage2D(oe+Pe,0,i.RGBA,1,1,0,i.RGBA,i.UNSIGNED_BYTE,se);return ne}const Q={};Q[i.TEXTURE_2D]=$e(i.TEXTURE_2D,i.TEXTURE_2D,1),Q[i.TEXTURE_CUBE_MAP]=$e(i.TEXTURE_CUBE_MAP,i.TEXTURE_CUBE_MAP_POSITIVE_X,6),Q[i.TEXTURE_2D_ARRAY]=$e(i.TEXTURE_2D_ARRAY,i.TEXTURE_2D_ARRAY,1,1),Q[i.TEXTURE_3D]=$e(i.TEXTURE_3D,i.TEXTURE_3D,1,1),r.setClear(0,0,0,1),a.setClear(1),o.setClear(0),ee(i.DEPTH_TEST),a.setFunc(ns),be(!1),pe(Ql),ee(i.CULL_FACE),we(si);function ee(F){h[F]!==!0&&(i.enable(F),h[F]=!0)}function Se(F){h[F]!==!1&&(i.disable(F),h[F]=!1)}function V(F,oe){return u[F]!==oe?(i.bindFramebuffer(F,oe),u[F]=oe,F===i.DRAW_FRAMEBUFFER&&(u[i.FRAMEBUFFER]=oe),F===i.FRAMEBUFFER&&(u[i.DRAW_FRAMEBUFFER]=oe),!0):!1}function L(F,oe){let de=p,Te=!1;if(F){de=d.get(oe),de===void 0&&(de=[],d.set(oe,de));const se=F.textures;if(de.length!==se.length||de[0]!==i.COLOR_ATTACHMENT0){for(let ne=0,Pe=se.length;ne<Pe;ne++)de[ne]=i.COLOR_ATTACHMENT0+ne;de.length=se.length,Te=!0}}else de[0]!==i.BACK&&(de[0]=i.BACK,Te=!0);Te&&i.drawBuffers(de)}function te(F){return _!==F?(i.useProgram(F),_=F,!0):!1}const ge={[yi]:i.FUNC_ADD,[Sd]:i.FUNC_SUBTRACT,[Ed]:i.FUNC_REVERSE_SUBTRACT};ge[Td]=i.MIN,ge[Ad]=i.MAX;const A={[Rd]:i.ZERO,[Cd]:i.ONE,[Pd]:i.SRC_COLOR,[lo]:i.SRC_ALPHA,[Fd]:i.SRC_ALPHA_SATURATE,[Ud]:i.DST_COLOR,[Ld]:i.DST_ALPHA,[Dd]:i.ONE_MINUS_SRC_COLOR,[co]:i.ONE_MINUS_SRC_ALPHA,[Nd]:i.ONE_MINUS_DST_COLOR,[Id]:i.ONE_MINUS_DST_ALPHA,[Od]:i.CONSTANT_COLOR,[kd]:i.ONE_MINUS_CONSTANT_COLOR,[Bd]:i.CONSTANT_ALPHA,[zd]:i.ONE_MINUS_CONSTANT_ALPHA};function we(F,oe,de,Te,se,ne,Pe,qe,dt,at){if(F===si){v===!0&&(Se(i.BLEND),v=!1);return}if(v===!1&&(ee(i.BLEND),v=!0),F!==Md){if(F!==m||at!==b){if((f!==yi||M!==yi)&&(i.blendEquation(i.FUNC_ADD),f=yi,M=yi),at)switch(F){case es:i.blendFuncSeparate(i.ONE,i.ONE_MINUS_SRC_ALPHA,i.ONE,i.ONE_MINUS_SRC_ALPHA);break;case ec:i.blendFunc(i.ONE,i.ONE);break;case tc:i.blendFuncSeparate(i.ZERO,i.ONE_MINUS_SRC_COLOR,i.ZERO,i.ONE);break;case nc:i.blendFuncSeparate(i.DST_COLOR,i.ONE_MINUS_SRC_ALPHA,i.ZERO,i.ONE);break;default:console.error("THREE.WebGLState: Invalid blending: ",F);break}else switch(F){case es:i.blendFuncSeparate(i.SRC_ALPHA,i.ONE_MINUS_SRC_ALPHA,i.ONE,i.ONE_MINUS_SRC_ALPHA);break;case ec:i.blendFuncSeparate(i.SRC_ALPHA,i.ONE,i.ONE,i.ONE);break;case tc:console.error("THREE.WebGLState: SubtractiveBlending requires material.premultipliedAlpha = true");break;case nc:console.error("THREE.WebGLState: MultiplyBlending requires material.premultipliedAlpha = true");break;default:console.error("THREE.WebGLState: Invalid blending: ",F);break}S=null,E=null,P=null,C=null,D.set(0,0,0),O=0,m=F,b=at}return}se=se||oe,ne=ne||de,Pe=Pe||Te,(oe!==f||se!==M)&&(i.blendEquationSeparate(ge[oe],ge[se]),f=oe,M=se),(de!==S||Te!==E||ne!==P||Pe!==C)&&(i.blendFuncSeparate(A[de],A[Te],A[ne],A[Pe]),S=de,E=Te,P=ne,C=Pe),(qe.equals(D)===!1||dt!==O)&&(i.blendColor(qe.r,qe.g,qe.b,dt),D.copy(qe),O=dt),m=F,b=!1}function Me(F,oe){F.side===On?Se(i.CULL_FACE):ee(i.CULL_FACE);let de=F.side===Kt;oe&&(de=!de),be(de),F.blending===es&&F.transparent===!1?we(si):we(F.blending,F.blendEquation,F.blendSrc,F.blendDst,F.blendEquationAlpha,F.blendSrcAlpha,F.blendDstAlpha,F.blendColor,F.blendAlpha,F.premultipliedAlpha),a.setFunc(F.depthFunc),a.setTest(F.depthTest),a.setMask(F.depthWrite),r.setMask(F.colorWrite);const Te=F.stencilWrite;o.setTest(Te),Te&&(o.setMask(F.stencilWriteMask),o.setFunc(F.stencilFunc,F.stencilRef,F.stencilFuncMask),o.setOp(F.stencilFail,F.stencilZFail,F.stencilZPass)),ve(F.polygonOffset,F.polygonOffsetFactor,F.polygonOffsetUnits),F.alphaToCoverage===!0?ee(i.SAMPLE_ALPHA_TO_COVERAGE):Se(i.SAMPLE_ALPHA_TO_COVERAGE)}function be(F){y!==F&&(F?i.frontFace(i.CW):i.frontFace(i.CCW),y=F)}function pe(F){F!==yd?(ee(i.CULL_FACE),F!==R&&(F===Ql?i.cullFace(i.BACK):F===wd?i.cullFace(i.FRONT):i.cullFace(i.FRONT_AND_BACK))):Se(i.CULL_FACE),R=F}function Je(F){F!==N&&(q&&i.lineWidth(F),N=F)}function ve(F,oe,de){F?(ee(i.POLYGON_OFFSET_FILL),(U!==oe||k!==de)&&(i.polygonOffset(oe,de),U=oe,k=de)):Se(i.POLYGON_OFFSET_FILL)}function He(F){F?ee(i.SCISSOR_TEST):Se(i.SCISSOR_TEST)}function Rt(F){F===void 0&&(F=i.TEXTURE0+B-1),le!==F&&(i.activeTexture(F),le=F)}function xt(F,oe,de){de===void 0&&(le===null?de=i.TEXTURE0+B-1:de=le);let Te=fe[de];Te===void 0&&(Te={type:void 0,texture:void 0},fe[de]=Te),(Te.type!==F||Te.texture!==oe)&&(le!==de&&(i.activeTexture(de),le=de),i.bindTexture(F,oe||Q[F]),Te.type=F,Te.texture=oe)}function T(){const F=fe[le];F!==void 0&&F.type!==void 0&&(i.bindTexture(F.type,null),F.type=void 0,F.texture=void 0)}function x(){try{i.compressedTexImage2D(...arguments)}catch(F){console.error("THREE.WebGLState:",F)}}function $(){try{i.compressedTexImage3D(...arguments)}catch(F){console.error("THREE.WebGLState:",F)}}function Z(){try{i.texSubImage2D(...arguments)}catch(F){console.error("THREE.WebGLState:",F)}}function ie(){try{i.texSubImage3D(...arguments)}catch(F){console.error("THREE.WebGLState:",F)}}function K(){try{i.compressedTexSubImage2D(...arguments)}catch(F){console.error("THREE.WebGLState:",F)}}function Ue(){try{i.compressedTexSubImage3D(...arguments)}catch(F){console.error("THREE.WebGLState:",F)}}function he(){try{i.texStorage2D(...arguments)}catch(F){console.error("THREE.WebGLState:",F)}}function De(){try{i.texStorage3D(...arguments)}catch(F){console.error("THREE.WebGLState:",F)}}function Le(){try{i.texImage2D(...arguments)}catch(F){console.error("THREE.WebGLState:",F)}}function ae(){try{i.texImage3D(...arguments)}catch(F){console.error("THREE.WebGLState:",F)}}function ye(F){Ce.equals(F)===!1&&(i.scissor(F.x,F.y,F.z,F.w),Ce.copy(F))}function ze(F){Oe.equals(F)===!1&&(i.viewport(F.x,F.y,F.z,F.w),Oe.copy(F))}function Ie(F,oe){let de=l.get(oe);de===void 0&&(de=new WeakMap,l.set(oe,de));let Te=de.get(F);Te===void 0&&(Te=i.getUniformBlockIndex(oe,F.name),de.set(F,Te))}function _e(F,oe){const Te=l.get(oe).get(F);c.get(oe)!==Te&&(i.uniformBlockBinding(oe,Te,F.__bindingPointIndex),c.set(oe,Te))}function Xe(){i.disable(i.BLEND),i.disable(i.CULL_FACE),i.disable(i.DEPTH_TEST),i.disable(i.POLYGON_OFFSET_FILL),i.disable(i.SCISSOR_TEST),i.disable(i.STENCIL_TEST),i.disable(i.SAMPLE_ALPHA_TO_COVERAGE),i.blendEquation(i.FUNC_ADD),i.blendFunc(i.ONE,i.ZERO),i.blendFuncSeparate(i.ONE,i.ZERO,i.ONE,i.ZERO),i.blendColor(0,0,0,0),i.colorMask(!0,!0,!0,!0),i.clearColor(0,0,0,0),i.depthMask(!0),i.depthFunc(i.LESS),a.setReversed(!1),i.clearDepth(1),i.stencilMask(4294967295),i.stencilFunc(i.ALWAYS,0,4294967295),i.stencilOp(i.KEEP,i.KEEP,i.KEEP),i.clearStencil(0),i.cullFace(i.BACK),i.frontFace(i.CCW),i.polygonOffset(0,0),i.activeTexture(i.TEXTURE0),i.bindFramebuffer(i.FRAMEBUFFER,null),i.bindFramebuffer(i.DRAW_FRAMEBUFFER,null),i.bindFramebuffer(i.READ_FRAMEBUFFER,null),i.useProgram(null),i.lineWidth(1),i.scissor(0,0,i.canvas.width,i.canvas.height),i.viewport(0,0,i.canvas.width,i.canvas.height),h={},le=null,fe={},u={},d=new WeakMap,p=[],_=null,v=!1,m=null,f=null,S=null,E=null,M=null,P=null,C=null,D=new Ke(0,0,0),O=0,b=!1,y=null,R=null,N=null,U=null,k=null,Ce.set(0,0,i.canvas.width,i.canvas.height),Oe.set(0,0,i.canvas.width,i.canvas.height),r.reset(),a.reset(),o.reset()}return{buffers:{color:r,depth:a,stencil:o},enable:ee,disable:Se,bindFramebuffer:V,drawBuffers:L,useProgram:te,setBlending:we,setMaterial:Me,setFlipSided:be,setCullFace:pe,setLineWidth:Je,setPolygonOffset:ve,setScissorTest:He,activeTexture:Rt,bindTexture:xt,unbindTexture:T,compressedTexImage2D:x,compressedTexImage3D:$,texImage2D:Le,texImage3D:ae,updateUBOMapping:Ie,uniformBlockBinding:_e,texStorage2D:he,texStorage3D:De,texSubImage2D:Z,texSubImage3D:ie,compressedTexSubImage2D:K,compressedTexSubImage3D:Ue,scissor:ye,viewport:ze,reset:Xe}}function S0(i,e,t,n,s,r,a){const o=e.has("WEBGL_multisampled_render_to_texture")?e.get("WEBGL_multisampled_render_to_texture"):null,c=typeof navigator>"u"?!1:/OculusBrowser/g.test(navigator.userAgent),l=new We,h=new WeakMap;let u;const d=new WeakMap;let p=!1;try{p=typeof OffscreenCanvas<"u"&&new OffscreenCanvas(1,1).getContext("2d")!==null}catch{}function _(T,x){return p?new OffscreenCanvas(T,x):Hr("canvas")}function v(T,x,$){let Z=1;const ie=xt(T);if((ie.width>$||ie.height>$)&&(Z=$/Math.max(ie.width,ie.height)),Z<1)if(typeof HTMLImageElement<"u"&&T instanceof HTMLImageElement||typeof HTMLCanvasElement<"u"&&T instanceof HTMLCanvasElement||typeof ImageBitmap<"u"&&T instanceof ImageBitmap||typeof VideoFrame<"u"&&T instanceof VideoFrame){const K=Math.floor(Z*ie.width),Ue=Math.floor(Z*ie.height);u===void 0&&(u=_(K,Ue));const he=x?_(K,Ue):u;return he.width=K,he.height=Ue,he.getContext("2d").drawImage(T,0,0,K,Ue),console.warn("THREE.WebGLRenderer: Texture has been resized from ("+ie.width+"x"+ie.height+") to ("+K+"x"+Ue+")."),he}else return"data"in T&&console.warn("THREE.WebGLRenderer: Image in DataTexture is too big ("+ie.width+"x"+ie.height+")."),T;return T}function m(T){return T.generateMipmaps}function f(T){i.generateMipmap(T)}function S(T){return T.isWebGLCubeRenderTarget?i.TEXTURE_CUBE_MAP:T.isWebGL3DRenderTarget?i.TEXTURE_3D:T.isWebGLArrayRenderTarget||T.isCompressedArrayTexture?i.TEXTURE_2D_ARRAY:i.TEXTURE_2D}function E(T,x,$,Z,ie=!1){if(T!==null){if(i[T]!==void 0)return i[T];console.warn("THREE.WebGLRenderer: Attempt to use non-existing WebGL internal format '"+T+"'")}let K=x;if(x===i.RED&&($===i.FLOAT&&(K=i.R32F),$===i.HALF_FLOAT&&(K=i.R16F),$===i.UNSIGNED_BYTE&&(K=i.R8)),x===i.RED_INTEGER&&($===i.UNSIGNED_BYTE&&(K=i.R8UI),$===i.UNSIGNED_SHORT&&(K=i.R16UI),$===i.UNSIGNED_INT&&(K=i.R32UI),$===i.BYTE&&(K=i.R8I),$===i.SHORT&&(K=i.R16I),$===i.INT&&(K=i.R32I)),x===i.RG&&($===i.FLOAT&&(K=i.RG32F),$===i.HALF_FLOAT&&(K=i.RG16F),$===i.UNSIGNED_BYTE&&(K=i.RG8)),x===i.RG_INTEGER&&($===i.UNSIGNED_BYTE&&(K=i.RG8UI),$===i.UNSIGNED_SHORT&&(K=i.RG16UI),$===i.UNSIGNED_INT&&(K=i.RG32UI),$===i.BYTE&&(K=i.RG8I),$===i.SHORT&&(K=i.RG16I),$===i.INT&&(K=i.RG32I)),x===i.RGB_INTEGER&&($===i.UNSIGNED_BYTE&&(K=i.RGB8UI),$===i.UNSIGNED_SHORT&&(K=i.RGB16UI),$===i.UNSIGNED_INT&&(K=i.RGB32UI),$===i.BYTE&&(K=i.RGB8I),$===i.SHORT&&(K=i.RGB16I),$===i.INT&&(K=i.RGB32I)),x===i.RGBA_INTEGER&&($===i.UNSIGNED_BYTE&&(K=i.RGBA8UI),$===i.UNSIGNED_SHORT&&(K=i.RGBA16UI),$===i.UNSIGNED_INT&&(K=i.RGBA32UI),$===i.BYTE&&(K=i.RGBA8I),$===i.SHORT&&(K=i.RGBA16I),$===i.INT&&(K=i.RGBA32I)),x===i.RGB&&($===i.UNSIGNED_INT_5_9_9_9_REV&&(K=i.RGB9_E5),$===i.UNSIGNED_INT_10F_11F_11F_REV&&(K=i.R11F_G11F_B10F)),x===i.RGBA){const Ue=ie?Br:st.getTransfer(Z);$===i.FLOAT&&(K=i.RGBA32F),$===i.HALF_FLOAT&&(K=i.RGBA16F),$===i.UNSIGNED_BYTE&&(K=Ue===lt?i.SRGB8_ALPHA8:i.RGBA8),$===i.UNSIGNED_SHORT_4_4_4_4&&(K=i.RGBA4),$===i.UNSIGNED_SHORT_5_5_5_1&&(K=i.RGB5_A1)}return(K===i.R16F||K===i.R32F||K===i.RG16F||K===i.RG32F||K===i.RGBA16F||K===i.RGBA32F)&&e.get("EXT_color_buffer_float"),K}function M(T,x){let $;return T?x===null||x===Ai||x===Is?$=i.DEPTH24_STENCIL8:x===kn?$=i.DEPTH32F_STENCIL8:x===Ls&&($=i.DEPTH24_STENCIL8,console.warn("DepthTexture: 16 bit depth attachment is not supported with stencil. Using 24-bit attachment.")):x===null||x===Ai||x===Is?$=i.DEPTH_COMPONENT24:x===kn?$=i.DEPTH_COMPONENT32F:x===Ls&&($=i.DEPTH_COMPONENT16),$}function P(T,x){return m(T)===!0||T.isFramebufferTexture&&T.minFilter!==xn&&T.minFilter!==Sn?Math.log2(Math.max(x.width,x.height))+1:T.mipmaps!==void 0&&T.mipmaps.length>0?T.mipmaps.length:T.isCompressedTexture&&Array.isArray(T.image)?x.mipmaps.length:1}function C(T){const x=T.target;x.removeEventListener("dispose",C),O(x),x.isVideoTexture&&h.delete(x)}function D(T){const x=T.target;x.removeEventListener("dispose",D),y(x)}function O(T){const x=n.get(T);if(x.__webglInit===void 0)return;const $=T.source,Z=d.get($);if(Z){const ie=Z[x.__cacheKey];ie.usedTimes--,ie.usedTimes===0&&b(T),Object.keys(Z).length===0&&d.delete($)}n.remove(T)}function b(T){const x=n.get(T);i.deleteTexture(x.__webglTexture);const $=T.source,Z=d.get($);delete Z[x.__cacheKey],a.memory.textures--}function y(T){const x=n.get(T);if(T.depthTexture&&(T.depthTexture.dispose(),n.remove(T.depthTexture)),T.isWebGLCubeRenderTarget)for(let Z=0;Z<6;Z++){if(Array.isArray(x.__webglFramebuffer[Z]))for(let ie=0;ie<x.__webglFramebuffer[Z].length;ie++)i.deleteFramebuffer(x.__webglFramebuffer[Z][ie]);else i.deleteFramebuffer(x.__webglFramebuffer[Z]);x.__webglDepthbuffer&&i.deleteRenderbuffer(x.__webglDepthbuffer[Z])}else{if(Array.isArray(x.__webglFramebuffer))for(let Z=0;Z<x.__webglFramebuffer.length;Z++)i.deleteFramebuffer(x.__webglFramebuffer[Z]);else i.deleteFramebuffer(x.__webglFramebuffer);if(x.__webglDepthbuffer&&i.deleteRenderbuffer(x.__webglDepthbuffer),x.__webglMultisampledFramebuffer&&i.deleteFramebuffer(x.__webglMultisampledFramebuffer),x.__webglColorRenderbuffer)for(let Z=0;Z<x.__webglColorRenderbuffer.length;Z++)x.__webglColorRenderbuffer[Z]&&i.deleteRenderbuffer(x.__webglColorRenderbuffer[Z]);x.__webglDepthRenderbuffer&&i.deleteRenderbuffer(x.__webglDepthRenderbuffer)}const $=T.textures;for(let Z=0,ie=$.length;Z<ie;Z++){const K=n.get($[Z]);K.__webglTexture&&(i.deleteTexture(K.__webglTexture),a.memory.textures--),n.remove($[Z])}n.remove(T)}let R=0;function N(){R=0}function U(){const T=R;return T>=s.maxTextures&&console.warn("THREE.WebGLTextures: Trying to use "+T+" texture units while this GPU supports only "+s.maxTextures),R+=1,T}function k(T){const x=[];return x.push(T.wrapS),x.push(T.wrapT),x.push(T.wrapR||0),x.push(T.magFilter),x.push(T.minFilter),x.push(T.anisotropy),x.push(T.internalFormat),x.push(T.format),x.push(T.type),x.push(T.generateMipmaps),x.push(T.premultiplyAlpha),x.push(T.flipY),x.push(T.unpackAlignment),x.push(T.colorSpace),x.join()}function B(T,x){const $=n.get(T);if(T.isVideoTexture&&He(T),T.isRenderTargetTexture===!1&&T.isExternalTexture!==!0&&T.version>0&&$.__version!==T.version){const Z=T.image;if(Z===null)console.warn("THREE.WebGLRenderer: Texture marked for update but no image data found.");else if(Z.complete===!1)console.warn("THREE.WebGLRenderer: Texture marked for update but image is incomplete");else{Q($,T,x);return}}else T.isExternalTexture&&($.__webglTexture=T.sourceTexture?T.sourceTexture:null);t.bindTexture(i.TEXTURE_2D,$.__webglTexture,i.TEXTURE0+x)}function q(T,x){const $=n.get(T);if(T.isRenderTargetTexture===!1&&T.version>0&&$.__version!==T.version){Q($,T,x);return}t.bindTexture(i.TEXTURE_2D_ARRAY,$.__webglTexture,i.TEXTURE0+x)}function J(T,x){const $=n.get(T);if(T.isRenderTargetTexture===!1&&T.version>0&&$.__version!==T.version){Q($,T,x);return}t.bindTexture(i.TEXTURE_3D,$.__webglTexture,i.TEXTURE0+x)}function X(T,x){const $=n.get(T);if(T.version>0&&$.__version!==T.version){ee($,T,x);return}t.bindTexture(i.TEXTURE_CUBE_MAP,$.__webglTexture,i.TEXTURE0+x)}const le={[yo]:i.REPEAT,[bi]:i.CLAMP_TO_EDGE,[wo]:i.MIRRORED_REPEAT},fe={[xn]:i.NEAREST,[Kd]:i.NEAREST_MIPMAP_NEAREST,[Ks]:i.NEAREST_MIPMAP_LINEAR,[Sn]:i.LINEAR,[pa]:i.LINEAR_MIPMAP_NEAREST,[Mi]:i.LINEAR_MIPMAP_LINEAR},W={[ef]:i.NEVER,[of]:i.ALWAYS,[tf]:i.LESS,[ru]:i.LEQUAL,[nf]:i.EQUAL,[af]:i.GEQUAL,[sf]:i.GREATER,[rf]:i.NOTEQUAL};function ue(T,x){if(x.type===kn&&e.has("OES_texture_float_linear")===!1&&(x.magFilter===Sn||x.magFilter===pa||x.magFilter===Ks||x.magFilter===Mi||x.minFilter===Sn||x.minFilter===pa||x.minFilter===Ks||x.minFilter===Mi)&&console.warn("THREE.WebGLRenderer: Unable to use linear filtering with floating point textures. OES_texture_float_linear not supported on this device."),i.texParameteri(T,i.TEXTURE_WRAP_S,le[x.wrapS]),i.texParameteri(T,i.TEXTURE_WRAP_T,le[x.wrapT]),(T===i.TEXTURE_3D||T===i.TEXTURE_2D_ARRAY)&&i.texParameteri(T,i.TEXTURE_WRAP_R,le[x.wrapR]),i.texParameteri(T,i.TEXTURE_MAG_FILTER,fe[x.magFilter]),i.texParameteri(T,i.TEXTURE_MIN_FILTER,fe[x.minFilter]),x.compareFunction&&(i.texParameteri(T,i.TEXTURE_COMPARE_MODE,i.COMPARE_REF_TO_TEXTURE),i.texParameteri(T,i.TEXTURE_COMPARE_FUNC,W[x.compareFunction])),e.has("EXT_texture_filter_anisotropic")===!0){if(x.magFilter===xn||x.minFilter!==Ks&&x.minFilter!==Mi||x.type===kn&&e.has("OES_texture_float_linear")===!1)return;if(x.anisotropy>1||n.get(x).__currentAnisotropy){const $=e.get("EXT_texture_filter_anisotropic");i.texParameterf(T,$.TEXTURE_MAX_ANISOTROPY_EXT,Math.min(x.anisotropy,s.getMaxAnisotropy())),n.get(x).__currentAnisotropy=x.anisotropy}}}function Ce(T,x){let $=!1;T.__webglInit===void 0&&(T.__webglInit=!0,x.addEventListener("dispose",C));const Z=x.source;let ie=d.get(Z);ie===void 0&&(ie={},d.set(Z,ie));const K=k(x);if(K!==T.__cacheKey){ie[K]===void 0&&(ie[K]={texture:i.createTexture(),usedTimes:0},a.memory.textures++,$=!0),ie[K].usedTimes++;const Ue=ie[T.__cacheKey];Ue!==void 0&&(ie[T.__cacheKey].usedTimes--,Ue.usedTimes===0&&b(x)),T.__cacheKey=K,T.__webglTexture=ie[K].texture}return $}function Oe(T,x,$){return Math.floor(Math.floor(T/$)/x)}function $e(T,x,$,Z){const K=T.updateRanges;if(K.length===0)t.texSubImage2D(i.TEXTURE_2D,0,0,0,x.width,x.height,$,Z,x.data);else{K.sort((ae,ye)=>ae.start-ye.start);let Ue=0;for(let ae=1;ae<K.length;ae++){const ye=K[Ue],ze=K[ae],Ie=ye.start+ye.count,_e=Oe(ze.start,x.width,4),Xe=Oe(ye.start,x.width,4);ze.start<=Ie+1&&_e===Xe&&Oe(ze.start+ze.count-1,x.width,4)===_e?ye.count=Math.max(ye.count,ze.start+ze.count-ye.start):(++Ue,K[Ue]=ze)}K.length=Ue+1;const he=i.getParameter(i.UNPACK_ROW_LENGTH),De=i.getParameter(i.UNPACK_SKIP_PIXELS),Le=i.getParameter(i.UNPACK_SKIP_ROWS);i.pixelStorei(i.UNPACK_ROW_LENGTH,x.width);for(let ae=0,ye=K.length;ae<ye;ae++){const ze=K[ae],Ie=Math.floor(ze.start/4),_e=Math.ceil(ze.count/4),Xe=Ie%x.width,F=Math.floor(Ie/x.width),oe=_e,de=1;i.pixelStorei(i.UNPACK_SKIP_PIXELS,Xe),i.pixelStorei(i.UNPACK_SKIP_ROWS,F),t.texSubImage2D(i.TEXTURE_2D,0,Xe,F,oe,de,$,Z,x.data)}T.clearUpdateRanges(),i.pixelStorei(i.UNPACK_ROW_LENGTH,he),i.pixelStorei(i.UNPACK_SKIP_PIXELS,De),i.pixelStorei(i.UNPACK_SKIP_ROWS,Le)}}function Q(T,x,$){let Z=i.TEXTURE_2D;(x.isDataArrayTexture||x.isCompressedArrayTexture)&&(Z=i.TEXTURE_2D_ARRAY),x.isData3DTexture&&(Z=i.TEXTURE_3D);const ie=Ce(T,x),K=x.source;t.bindTexture(Z,T.__webglTexture,i.TEXTURE0+$);const Ue=n.get(K);if(K.version!==Ue.__version||ie===!0){t.activeTexture(i.TEXTURE0+$);const he=st.getPrimaries(st.workingColorSpace),De=x.colorSpace===ti?null:st.getPrimaries(x.colorSpace),Le=x.colorSpace===ti||he===De?i.NONE:i.BROWSER_DEFAULT_WEBGL;i.pixelStorei(i.UNPACK_FLIP_Y_WEBGL,x.flipY),i.pixelStorei(i.UNPACK_PREMULTIPLY_ALPHA_WEBGL,x.premultiplyAlpha),i.pixelStorei(i.UNPACK_ALIGNMENT,x.unpackAlignment),i.pixelStorei(i.UNPACK_COLORSPACE_CONVERSION_WEBGL,Le);let ae=v(x.image,!1,s.maxTextureSize);ae=Rt(x,ae);const ye=r.convert(x.format,x.colorSpace),ze=r.convert(x.type);let Ie=E(x.internalFormat,ye,ze,x.colorSpace,x.isVideoTexture);ue(Z,x);let _e;const Xe=x.mipmaps,F=x.isVideoTexture!==!0,oe=Ue.__version===void 0||ie===!0,de=K.dataReady,Te=P(x,ae);if(x.isDepthTexture)Ie=M(x.format===Ns,x.type),oe&&(F?t.texStorage2D(i.TEXTURE_2D,1,Ie,ae.width,ae.height):t.texImage2D(i.TEXTURE_2D,0,Ie,ae.width,ae.height,0,ye,ze,null));else if(x.isDataTexture)if(Xe.length>0){F&&oe&&t.texStorage2D(i.TEXTURE_2D,Te,Ie,Xe[0].width,Xe[0].height);for(let se=0,ne=Xe.length;se<ne;se++)_e=Xe[se],F?de&&t.texSubImage2D(i.TEXTURE_2D,se,0,0,_e.width,_e.height,ye,ze,_e.data):t.texImage2D(i.TEXTURE_2D,se,Ie,_e.width,_e.height,0,ye,ze,_e.data);x.generateMipmaps=!1}else F?(oe&&t.texStorage2D(i.TEXTURE_2D,Te,Ie,ae.width,ae.height),de&&$e(x,ae,ye,ze)):t.texImage2D(i.TEXTURE_2D,0,Ie,ae.width,ae.height,0,ye,ze,ae.data);else if(x.isCompressedTexture)if(x.isCompressedArrayTexture){F&&oe&&t.texStorage3D(i.TEXTURE_2D_ARRAY,Te,Ie,Xe[0].width,Xe[0].height,ae.depth);for(let se=0,ne=Xe.length;se<ne;se++)if(_e=Xe[se],x.format!==vn)if(ye!==null)if(F){if(de)if(x.layerUpdates.size>0){const Pe=Nc(_e.width,_e.height,x.format,x.type);for(const qe of x.layerUpdates){const dt=_e.data.subarray(qe*Pe/_e.data.BYTES_PER_ELEMENT,(qe+1)*Pe/_e.data.BYTES_PER_ELEMENT);t.compressedTexSubImage3D(i.TEXTURE_2D_ARRAY,se,0,0,qe,_e.width,_e.height,1,ye,dt)}x.clearLayerUpdates()}else t.compressedTexSubImage3D(i.TEXTURE_2D_ARRAY,se,0,0,0,_e.width,_e.height,ae.depth,ye,_e.data)}else t.compressedTexImage3D(i.TEXTURE_2D_ARRAY,se,Ie,_e.width,_e.height,ae.depth,0,_e.data,0,0);else console.warn("THREE.WebGLRenderer: Attempt to load unsupported compressed texture format in .uploadTexture()");else F?de&&t.texSubImage3D(i.TEXTURE_2D_ARRAY,se,0,0,0,_e.width,_e.height,ae.depth,ye,ze,_e.data):t.texImage3D(i.TEXTURE_2D_ARRAY,se,Ie,_e.width,_e.height,ae.depth,0,ye,ze,_e.data)}else{F&&oe&&t.texStorage2D(i.TEXTURE_2D,Te,Ie,Xe[0].width,Xe[0].height);for(let se=0,ne=Xe.length;se<ne;se++)_e=Xe[se],x.format!==vn?ye!==null?F?de&&t.compressedTexSubImage2D(i.TEXTURE_2D,se,0,0,_e.width,_e.height,ye,_e.data):t.compressedTexImage2D(i.TEXTURE_2D,se,Ie,_e.width,_e.height,0,_e.data):console.warn("THREE.WebGLRenderer: Attempt to load unsupported compressed texture format in .uploadTexture()"):F?de&&t.texSubImage2D(i.TEXTURE_2D,se,0,0,_e.width,_e.height,ye,ze,_e.data):t.texImage2D(i.TEXTURE_2D,se,Ie,_e.width,_e.height,0,ye,ze,_e.data)}else if(x.isDataArrayTexture)if(F){if(oe&&t.texStorage3D(i.TEXTURE_2D_ARRAY,Te,Ie,ae.width,ae.height,ae.depth),de)if(x.layerUpdates.size>0){const se=Nc(ae.width,ae.height,x.format,x.type);for(const ne of x.layerUpdates){const Pe=ae.data.subarray(ne*se/ae.data.BYTES_PER_ELEMENT,(ne+1)*se/ae.data.BYTES_PER_ELEMENT);t.texSubImage3D(i.TEXTURE_2D_ARRAY,0,0,0,ne,ae.width,ae.height,1,ye,ze,Pe)}x.clearLayerUpdates()}else t.texSubImage3D(i.TEXTURE_2D_ARRAY,0,0,0,0,ae.width,ae.height,ae.depth,ye,ze,ae.data)}else t.texImage3D(i.TEXTURE_2D_ARRAY,0,Ie,ae.width,ae.height,ae.depth,0,ye,ze,ae.data);else if(x.isData3DTexture)F?(oe&&t.texStorage3D(i.TEXTURE_3D,Te,Ie,ae.width,ae.height,ae.depth),de&&t.texSubImage3D(i.TEXTURE_3D,0,0,0,0,ae.width,ae.height,ae.depth,ye,ze,ae.data)):t.texImage3D(i.TEXTURE_3D,0,Ie,ae.width,ae.height,ae.depth,0,ye,ze,ae.data);else if(x.isFramebufferTexture){if(oe)if(F)t.texStorage2D(i.TEXTURE_2D,Te,Ie,ae.width,ae.height);else{let se=ae.width,ne=ae.height;for(let Pe=0;Pe<Te;Pe++)t.texImage2D(i.TEXTURE_2D,Pe,Ie,se,ne,0,ye,ze,null),se>>=1,ne>>=1}}else if(Xe.length>0){if(F&&oe){const se=xt(Xe[0]);t.texStorage2D(i.TEXTURE_2D,Te,Ie,se.width,se.height)}for(let se=0,ne=Xe.length;se<ne;se++)_e=Xe[se],F?de&&t.texSubImage2D(i.TEXTURE_2D,se,0,0,ye,ze,_e):t.texImage2D(i.TEXTURE_2D,se,Ie,ye,ze,_e);x.generateMipmaps=!1}else if(F){if(oe){const se=xt(ae);t.texStorage2D(i.TEXTURE_2D,Te,Ie,se.width,se.height)}de&&t.texSubImage2D(i.TEXTURE_2D,0,0,0,ye,ze,ae)}else t.texImage2D(i.TEXTURE_2D,0,Ie,ye,ze,ae);m(x)&&f(Z),Ue.__version=K.version,x.onUpdate&&x.onUpdate(x)}T.__version=x.version}function ee(T,x,$){if(x.image.length!==6)return;const Z=Ce(T,x),ie=x.source;t.bindTexture(i.TEXTURE_CUBE_MAP,T.__webglTexture,i.TEXTURE0+$);const K=n.get(ie);if(ie.version!==K.__version||Z===!0){t.activeTexture(i.TEXTURE0+$);const Ue=st.getPrimaries(st.workingColorSpace),he=x.colorSpace===ti?null:st.getPrimaries(x.colorSpace),De=x.colorSpace===ti||Ue===he?i.NONE:i.BROWSER_DEFAULT_WEBGL;i.pixelStorei(i.UNPACK_FLIP_Y_WEBGL,x.flipY),i.pixelStorei(i.UNPACK_PREMULTIPLY_ALPHA_WEBGL,x.premultiplyAlpha),i.pixelStorei(i.UNPACK_ALIGNMENT,x.unpackAlignment),i.pixelStorei(i.UNPACK_COLORSPACE_CONVERSION_WEBGL,De);const Le=x.isCompressedTexture||x.image[0].isCompressedTexture,ae=x.image[0]&&x.image[0].isDataTexture,ye=[];for(let ne=0;ne<6;ne++)!Le&&!ae?ye[ne]=v(x.image[ne],!0,s.maxCubemapSize):ye[ne]=ae?x.image[ne].image:x.image[ne],ye[ne]=Rt(x,ye[ne]);const ze=ye[0],Ie=r.convert(x.format,x.colorSpace),_e=r.convert(x.type),Xe=E(x.internalFormat,Ie,_e,x.colorSpace),F=x.isVideoTexture!==!0,oe=K.__version===void 0||Z===!0,de=ie.dataReady;let Te=P(x,ze);ue(i.TEXTURE_CUBE_MAP,x);let se;if(Le){F&&oe&&t.texStorage2D(i.TEXTURE_CUBE_MAP,Te,Xe,ze.width,ze.height);for(let ne=0;ne<6;ne++){se=ye[ne].mipmaps;for(let Pe=0;Pe<se.length;Pe++){const qe=se[Pe];x.format!==vn?Ie!==null?F?de&&t.compressedTexSubImage2D(i.TEXTURE_CUBE_MAP_POSITIVE_X+ne,Pe,0,0,qe.width,qe.height,Ie,qe.data):t.compressedTexImage2D(i.TEXTURE_CUBE_MAP_POSITIVE_X+ne,Pe,Xe,qe.width,qe.height,0,qe.data):console.warn("THREE.WebGLRenderer: Attempt to load unsupported compressed texture format in .setTextureCube()"):F?de&&t.texSubImage2D(i.TEXTURE_CUBE_MAP_POSITIVE_X+ne,Pe,0,0,qe.width,qe.height,Ie,_e,qe.data):t.texImage2D(i.TEXTURE_CUBE_MAP_POSITIVE_X+ne,Pe,Xe,qe.width,qe.height,0,Ie,_e,qe.data)}}}else{if(se=x.mipmaps,F&&oe){se.length>0&&Te++;const ne=xt(ye[0]);t.texStorage2D(i.TEXTURE_CUBE_MAP,Te,Xe,ne.width,ne.height)}for(let ne=0;ne<6;ne++)if(ae){F?de&&t.texSubImage2D(i.TEXTURE_CUBE_MAP_POSITIVE_X+ne,0,0,0,ye[ne].width,ye[ne].height,Ie,_e,ye[ne].data):t.texImage2D(i.TEXTURE_CUBE_MAP_POSITIVE_X+ne,0,Xe,ye[ne].width,ye[ne].height,0,Ie,_e,ye[ne].data);for(let Pe=0;Pe<se.length;Pe++){const dt=se[Pe].image[ne].image;F?de&&t.texSubImage2D(i.TEXTURE_CUBE_MAP_POSITIVE_X+ne,Pe+1,0,0,dt.width,dt.height,Ie,_e,dt.data):t.texImage2D(i.TEXTURE_CUBE_MAP_POSITIVE_X+ne,Pe+1,Xe,dt.width,dt.height,0,Ie,_e,dt.data)}}else{F?de&&t.texSubImage2D(i.TEXTURE_CUBE_MAP_POSITIVE_X+ne,0,0,0,Ie,_e,ye[ne]):t.texImage2D(i.TEXTURE_CUBE_MAP_POSITIVE_X+ne,0,Xe,Ie,_e,ye[ne]);for(let Pe=0;Pe<se.length;Pe++){const qe=se[Pe];F?de&&t.texSubImage2D(i.TEXTURE_CUBE_MAP_POSITIVE_X+ne,Pe+1,0,0,Ie,_e,qe.image[ne]):t.texImage2D(i.TEXTURE_CUBE_MAP_POSITIVE_X+ne,Pe+1,Xe,Ie,_e,qe.image[ne])}}}m(x)&&f(i.TEXTURE_CUBE_MAP),K.__version=ie.version,x.onUpdate&&x.onUpdate(x)}T.__version=x.version}function Se(T,x,$,Z,ie,K){const Ue=r.convert($.format,$.colorSpace),he=r.convert($.type),De=E($.internalFormat,Ue,he,$.colorSpace),Le=n.get(x),ae=n.get($);if(ae.__renderTarget=x,!Le.__hasExternalTextures){const ye=Math.max(1,x.width>>K),ze=Math.max(1,x.height>>K);ie===i.TEXTURE_3D||ie===i.TEXTURE_2D_ARRAY?t.texImage3D(ie,K,De,ye,ze,x.depth,0,Ue,he,null):t.texImage2D(ie,K,De,ye,ze,0,Ue,he,null)}t.bindFramebuffer(i.FRAMEBUFFER,T),ve(x)?o.framebufferTexture2DMultisampleEXT(i.FRAMEBUFFER,Z,ie,ae.__webglTexture,0,Je(x)):(ie===i.TEXTURE_2D||ie>=i.TEXTURE_CUBE_MAP_POSITIVE_X&&ie<=i.TEXTURE_CUBE_MAP_NEGATIVE_Z)&&i.framebufferTexture2D(i.FRAMEBUFFER,Z,ie,ae.__webglTexture,K),t.bindFramebuffer(i.FRAMEBUFFER,null)}function V(T,x,$){if(i.bindRenderbuffer(i.RENDERBUFFER,T),x.depthBuffer){const Z=x.depthTexture,ie=Z&&Z.isDepthTexture?Z.type:null,K=M(x.stencilBuffer,ie),Ue=x.stencilBuffer?i.DEPTH_STENCIL_ATTACHMENT:i.DEPTH_ATTACHMENT,he=Je(x);ve(x)?o.renderbufferStorageMultisampleEXT(i.RENDERBUFFER,he,K,x.width,x.height):$?i.renderbufferStorageMultisample(i.RENDERBUFFER,he,K,x.width,x.height):i.renderbufferStorage(i.RENDERBUFFER,K,x.width,x.height),i.framebufferRenderbuffer(i.FRAMEBUFFER,Ue,i.RENDERBUFFER,T)}else{const Z=x.textures;for(let ie=0;ie<Z.length;ie++){const K=Z[ie],Ue=r.convert(K.format,K.colorSpace),he=r.convert(K.type),De=E(K.internalFormat,Ue,he,K.colorSpace),Le=Je(x);$&&ve(x)===!1?i.renderbufferStorageMultisample(i.RENDERBUFFER,Le,De,x.width,x.height):ve(x)?o.renderbufferStorageMultisampleEXT(i.RENDERBUFFER,Le,De,x.width,x.height):i.renderbufferStorage(i.RENDERBUFFER,De,x.width,x.height)}}i.bindRenderbuffer(i.RENDERBUFFER,null)}function L(T,x){if(x&&x.isWebGLCubeRenderTarget)throw new Error("Depth Texture with cube render targets is not supported");if(t.bindFramebuffer(i.FRAMEBUFFER,T),!(x.depthTexture&&x.depthTexture.isDepthTexture))throw new Error("renderTarget.depthTexture must be an instance of THREE.DepthTexture");const Z=n.get(x.depthTexture);Z.__renderTarget=x,(!Z.__webglTexture||x.depthTexture.image.width!==x.width||x.depthTexture.image.height!==x.height)&&(x.depthTexture.image.width=x.width,x.depthTexture.image.height=x.height,x.depthTexture.needsUpdate=!0),B(x.depthTexture,0);const ie=Z.__webglTexture,K=Je(x);if(x.depthTexture.format===Us)ve(x)?o.framebufferTexture2DMultisampleEXT(i.FRAMEBUFFER,i.DEPTH_ATTACHMENT,i.TEXTURE_2D,ie,0,K):i.framebufferTexture2D(i.FRAMEBUFFER,i.DEPTH_ATTACHMENT,i.TEXTURE_2D,ie,0);else if(x.depthTexture.format===Ns)ve(x)?o.framebufferTexture2DMultisampleEXT(i.FRAMEBUFFER,i.DEPTH_STENCIL_ATTACHMENT,i.TEXTURE_2D,ie,0,K):i.framebufferTexture2D(i.FRAMEBUFFER,i.DEPTH_STENCIL_ATTACHMENT,i.TEXTURE_2D,ie,0);else throw new Error("Unknown depthTexture format")}function te(T){const x=n.get(T),$=T.isWebGLCubeRenderTarget===!0;if(x.__boundDepthTexture!==T.depthTexture){const Z=T.depthTexture;if(x.__depthDisposeCallback&&x.__depthDisposeCallback(),Z){const ie=()=>{delete x.__boundDepthTexture,delete x.__depthDisposeCallback,Z.removeEventListener("dispose",ie)};Z.addEventListener("dispose",ie),x.__depthDisposeCallback=ie}x.__boundDepthTexture=Z}if(T.depthTexture&&!x.__autoAllocateDepthBuffer){if($)throw new Error("target.depthTexture not supported in Cube render targets");const Z=T.texture.mipmaps;Z&&Z.length>0?L(x.__webglFramebuffer[0],T):L(x.__webglFramebuffer,T)}else if($){x.__webglDepthbuffer=[];for(let Z=0;Z<6;Z++)if(t.bindFramebuffer(i.FRAMEBUFFER,x.__webglFramebuffer[Z]),x.__webglDepthbuffer[Z]===void 0)x.__webglDepthbuffer[Z]=i.createRenderbuffer(),V(x.__webglDepthbuffer[Z],T,!1);else{const ie=T.stencilBuffer?i.DEPTH_STENCIL_ATTACHMENT:i.DEPTH_ATTACHMENT,K=x.__webglDepthbuffer[Z];i.bindRenderbuffer(i.RENDERBUFFER,K),i.framebufferRenderbuffer(i.FRAMEBUFFER,ie,i.RENDERBUFFER,K)}}else{const Z=T.texture.mipmaps;if(Z&&Z.length>0?t.bindFramebuffer(i.FRAMEBUFFER,x.__webglFramebuffer[0]):t.bindFramebuffer(i.FRAMEBUFFER,x.__webglFramebuffer),x.__webglDepthbuffer===void 0)x.__webglDepthbuffer=i.createRenderbuffer(),V(x.__webglDepthbuffer,T,!1);else{const ie=T.stencilBuffer?i.DEPTH_STENCIL_ATTACHMENT:i.DEPTH_ATTACHMENT,K=x.__webglDepthbuffer;i.bindRenderbuffer(i.RENDERBUFFER,K),i.framebufferRenderbuffer(i.FRAMEBUFFER,ie,i.RENDERBUFFER,K)}}t.bindFramebuffer(i.FRAMEBUFFER,null)}function ge(T,x,$){const Z=n.get(T);x!==void 0&&Se(Z.__webglFramebuffer,T,T.texture,i.COLOR_ATTACHMENT0,i.TEXTURE_2D,0),$!==void 0&&te(T)}function A(T){const x=T.texture,$=n.get(T),Z=n.get(x);T.addEventListener("dispose",D);const ie=T.textures,K=T.isWebGLCubeRenderTarget===!0,Ue=ie.length>1;if(Ue||(Z.__webglTexture===void 0&&(Z.__webglTexture=i.createTexture()),Z.__version=x.version,a.memory.textures++),K){$.__webglFramebuffer=[];for(let he=0;he<6;he++)if(x.mipmaps&&x.mipmaps.length>0){$.__webglFramebuffer[he]=[];for(let De=0;De<x.mipmaps.length;De++)$.__webglFramebuffer[he][De]=i.createFramebuffer()}else $.__webglFramebuffer[he]=i.createFramebuffer()}else{if(x.mipmaps&&x.mipmaps.length>0){$.__webglFramebuffer=[];for(let he=0;he<x.mipmaps.length;he++)$.__webglFramebuffer[he]=i.createFramebuffer()}else $.__webglFramebuffer=i.createFramebuffer();if(Ue)for(let he=0,De=ie.length;he<De;he++){const Le=n.get(ie[he]);Le.__webglTexture===void 0&&(Le.__webglTexture=i.createTexture(),a.memory.textures++)}if(T.samples>0&&ve(T)===!1){$.__webglMultisampledFramebuffer=i.createFramebuffer(),$.__webglColorRenderbuffer=[],t.bindFramebuffer(i.FRAMEBUFFER,$.__webglMultisampledFramebuffer);for(let he=0;he<ie.length;he++){const De=ie[he];$.__webglColorRenderbuffer[he]=i.createRenderbuffer(),i.bindRenderbuffer(i.RENDERBUFFER,$.__webglColorRenderbuffer[he]);const Le=r.convert(De.format,De.colorSpace),ae=r.convert(De.type),ye=E(De.internalFormat,Le,ae,De.colorSpace,T.isXRRenderTarget===!0),ze=Je(T);i.renderbufferStorageMultisample(i.RENDERBUFFER,ze,ye,T.width,T.height),i.framebufferRenderbuffer(i.FRAMEBUFFER,i.COLOR_ATTACHMENT0+he,i.RENDERBUFFER,$.__webglColorRenderbuffer[he])}i.bindRenderbuffer(i.RENDERBUFFER,null),T.depthBuffer&&($.__webglDepthRenderbuffer=i.createRenderbuffer(),V($.__webglDepthRenderbuffer,T,!0)),t.bindFramebuffer(i.FRAMEBUFFER,null)}}if(K){t.bindTexture(i.TEXTURE_CUBE_MAP,Z.__webglTexture),ue(i.TEXTURE_CUBE_MAP,x);for(let he=0;he<6;he++)if(x.mipmaps&&x.mipmaps.length>0)for(let De=0;De<x.mipmaps.length;De++)Se($.__webglFramebuffer[he][De],T,x,i.COLOR_ATTACHMENT0,i.TEXTURE_CUBE_MAP_POSITIVE_X+he,De);else Se($.__webglFramebuffer[he],T,x,i.COLOR_ATTACHMENT0,i.TEXTURE_CUBE_MAP_POSITIVE_X+he,0);m(x)&&f(i.TEXTURE_CUBE_MAP),t.unbindTexture()}else if(Ue){for(let he=0,De=ie.length;he<De;he++){const Le=ie[he],ae=n.get(Le);let ye=i.TEXTURE_2D;(T.isWebGL3DRenderTarget||T.isWebGLArrayRenderTarget)&&(ye=T.isWebGL3DRenderTarget?i.TEXTURE_3D:i.TEXTURE_2D_ARRAY),t.bindTexture(ye,ae.__webglTexture),ue(ye,Le),Se($.__webglFramebuffer,T,Le,i.COLOR_ATTACHMENT0+he,ye,0),m(Le)&&f(ye)}t.unbindTexture()}else{let he=i.TEXTURE_2D;if((T.isWebGL3DRenderTarget||T.isWebGLArrayRenderTarget)&&(he=T.isWebGL3DRenderTarget?i.TEXTURE_3D:i.TEXTURE_2D_ARRAY),t.bindTexture(he,Z.__webglTexture),ue(he,x),x.mipmaps&&x.mipmaps.length>0)for(let De=0;De<x.mipmaps.length;De++)Se($.__webglFramebuffer[De],T,x,i.COLOR_ATTACHMENT0,he,De);else Se($.__webglFramebuffer,T,x,i.COLOR_ATTACHMENT0,he,0);m(x)&&f(he),t.unbindTexture()}T.depthBuffer&&te(T)}function we(T){const x=T.textures;for(let $=0,Z=x.length;$<Z;$++){const ie=x[$];if(m(ie)){const K=S(T),Ue=n.get(ie).__webglTexture;t.bindTexture(K,Ue),f(K),t.unbindTexture()}}}const Me=[],be=[];function pe(T){if(T.samples>0){if(ve(T)===!1){const x=T.textures,$=T.width,Z=T.height;let ie=i.COLOR_BUFFER_BIT;const K=T.stencilBuffer?i.DEPTH_STENCIL_ATTACHMENT:i.DEPTH_ATTACHMENT,Ue=n.get(T),he=x.length>1;if(he)for(let Le=0;Le<x.length;Le++)t.bindFramebuffer(i.FRAMEBUFFER,Ue.__webglMultisampledFramebuffer),i.framebufferRenderbuffer(i.FRAMEBUFFER,i.COLOR_ATTACHMENT0+Le,i.RENDERBUFFER,null),t.bindFramebuffer(i.FRAMEBUFFER,Ue.__webglFramebuffer),i.framebufferTexture2D(i.DRAW_FRAMEBUFFER,i.COLOR_ATTACHMENT0+Le,i.TEXTURE_2D,null,0);t.bindFramebuffer(i.READ_FRAMEBUFFER,Ue.__webglMultisampledFramebuffer);const De=T.texture.mipmaps;De&&De.length>0?t.bindFramebuffer(i.DRAW_FRAMEBUFFER,Ue.__webglFramebuffer[0]):t.bindFramebuffer(i.DRAW_FRAMEBUFFER,Ue.__webglFramebuffer);for(let Le=0;Le<x.length;Le++){if(T.resolveDepthBuffer&&(T.depthBuffer&&(ie|=i.DEPTH_BUFFER_BIT),T.stencilBuffer&&T.resolveStencilBuffer&&(ie|=i.STENCIL_BUFFER_BIT)),he){i.framebufferRenderbuffer(i.READ_FRAMEBUFFER,i.COLOR_ATTACHMENT0,i.RENDERBUFFER,Ue.__webglColorRenderbuffer[Le]);const ae=n.get(x[Le]).__webglTexture;i.framebufferTexture2D(i.DRAW_FRAMEBUFFER,i.COLOR_ATTACHMENT0,i.TEXTURE_2D,ae,0)}i.blitFramebuffer(0,0,$,Z,0,0,$,Z,ie,i.NEAREST),c===!0&&(Me.length=0,be.length=0,Me.push(i.COLOR_ATTACHMENT0+Le),T.depthBuffer&&T.resolveDepthBuffer===!1&&(Me.push(K),be.push(K),i.invalidateFramebuffer(i.DRAW_FRAMEBUFFER,be)),i.invalidateFramebuffer(i.READ_FRAMEBUFFER,Me))}if(t.bindFramebuffer(i.READ_FRAMEBUFFER,null),t.bindFramebuffer(i.DRAW_FRAMEBUFFER,null),he)for(let Le=0;Le<x.length;Le++){t.bindFramebuffer(i.FRAMEBUFFER,Ue.__webglMultisampledFramebuffer),i.framebufferRenderbuffer(i.FRAMEBUFFER,i.COLOR_ATTACHMENT0+Le,i.RENDERBUFFER,Ue.__webglColorRenderbuffer[Le]);const ae=n.get(x[Le]).__webglTexture;t.bindFramebuffer(i.FRAMEBUFFER,Ue.__webglFramebuffer),i.framebufferTexture2D(i.DRAW_FRAMEBUFFER,i.COLOR_ATTACHMENT0+Le,i.TEXTURE_2D,ae,0)}t.bindFramebuffer(i.DRAW_FRAMEBUFFER,Ue.__webglMultisampledFramebuffer)}else if(T.depthBuffer&&T.resolveDepthBuffer===!1&&c){const x=T.stencilBuffer?i.DEPTH_STENCIL_ATTACHMENT:i.DEPTH_ATTACHMENT;i.invalidateFramebuffer(i.DRAW_FRAMEBUFFER,[x])}}}function Je(T){return Math.min(s.maxSamples,T.samples)}function ve(T){const x=n.get(T);return T.samples>0&&e.has("WEBGL_multisampled_render_to_texture")===!0&&x.__useRenderToTexture!==!1}function He(T){const x=a.render.frame;h.get(T)!==x&&(h.set(T,x),T.update())}function Rt(T,x){const $=T.colorSpace,Z=T.format,ie=T.type;return T.isCompressedTexture===!0||T.isVideoTexture===!0||$!==rs&&$!==ti&&(st.getTransfer($)===lt?(Z!==vn||ie!==Rn)&&console.warn("THREE.WebGLTextures: sRGB encoded textures have to use RGBAFormat and UnsignedByteType."):console.error("THREE.WebGLTextures: Unsupported texture color space:",$)),x}function xt(T){return typeof HTMLImageElement<"u"&&T instanceof HTMLImageElement?(l.width=T.naturalWidth||T.width,l.height=T.naturalHeight||T.height):typeof VideoFrame<"u"&&T instanceof VideoFrame?(l.width=T.displayWidth,l.height=T.displayHeight):(l.width=T.width,l.height=T.height),l}this.allocateTextureUnit=U,this.resetTextureUnits=N,this.setTexture2D=B,this.setTexture2DArray=q,this.setTexture3D=J,this.setTextureCube=X,this.rebindTextures=ge,this.setupRenderTarget=A,this.updateRenderTargetMipmap=we,this.updateMultisampleRenderTarget=pe,this.setupDepthRenderbuffer=te,this.setupFrameBufferTexture=Se,this.useMultisampledRTT=ve}function E0(i,e){function t(n,s=ti){let r;const a=st.getTransfer(s);if(n===Rn)return i.UNSIGNED_BYTE;if(n===vl)return i.UNSIGNED_SHORT_4_4_4_4;if(n===xl)return i.UNSIGNED_SHORT_5_5_5_1;if(n===Jh)return i.UNSIGNED_INT_5_9_9_9_REV;if(n===Qh)return i.UNSIGNED_INT_10F_11F_11F_REV;if(n===Kh)return i.BYTE;if(n===Zh)return i.SHORT;if(n===Ls)return i.UNSIGNED_SHORT;if(n===_l)return i.INT;if(n===Ai)return i.UNSIGNED_INT;if(n===kn)return i.FLOAT;if(n===Hs)return i.HALF_FLOAT;if(n===eu)return i.ALPHA;if(n===tu)return i.RGB;if(n===vn)return i.RGBA;if(n===Us)return i.DEPTH_COMPONENT;if(n===Ns)return i.DEPTH_STENCIL;if(n===nu)return i.RED;if(n===yl)return i.RED_INTEGER;if(n===iu)return i.RG;if(n===wl)return i.RG_INTEGER;if(n===bl)return i.RGBA_INTEGER;if(n===Pr||n===Dr||n===Lr||n===Ir)if(a===lt)if(r=e.get("WEBGL_compressed_texture_s3tc_srgb"),r!==null){if(n===Pr)return r.COMPRESSED_SRGB_S3TC_DXT1_EXT;if(n===Dr)return r.COMPRESSED_SRGB_ALPHA_S3TC_DXT1_EXT;if(n===Lr)return r.COMPRESSED_SRGB_ALPHA_S3TC_DXT3_EXT;if(n===Ir)return r.COMPRESSED_SRGB_ALPHA_S3TC_DXT5_EXT}else return null;else if(r=e.get("WEBGL_compressed_texture_s3tc"),r!==null){if(n===Pr)return r.COMPRESSED_RGB_S3TC_DXT1_EXT;if(n===Dr)return r.COMPRESSED_RGBA_S3TC_DXT1_EXT;if(n===Lr)return r.COMPRESSED_RGBA_S3TC_DXT3_EXT;if(n===Ir)return r.COMPRESSED_RGBA_S3TC_DXT5_EXT}else return null;if(n===bo||n===Mo||n===So||n===Eo)if(r=e.get("WEBGL_compressed_texture_pvrtc"),r!==null){if(n===bo)return r.COMPRESSED_RGB_PVRTC_4BPPV1_IMG;if(n===Mo)return r.COMPRESSED_RGB_PVRTC_2BPPV1_IMG;if(n===So)return r.COMPRESSED_RGBA_PVRTC_4BPPV1_IMG;if(n===Eo)return r.COMPRESSED_RGBA_PVRTC_2BPPV1_IMG}else return null;if(n===To||n===Ao||n===Ro)if(r=e.get("WEBGL_compressed_texture_etc"),r!==null){if(n===To||n===Ao)return a===lt?r.COMPRESSED_SRGB8_ETC2:r.COMPRESSED_RGB8_ETC2;if(n===Ro)return a===lt?r.COMPRESSED_SRGB8_ALPHA8_ETC2_EAC:r.COMPRESSED_RGBA8_ETC2_EAC}else return null;if(n===Co||n===Po||n===Do||n===Lo||n===Io||n===Uo||n===No||n===Fo||n===Oo||n===ko||n===Bo||n===zo||n===Ho||n===Vo)if(r=e.get("WEBGL_compressed_texture_astc"),r!==null){if(n===Co)return a===lt?r.COMPRESSED_SRGB8_ALPHA8_ASTC_4x4_KHR:r.COMPRESSED_RGBA_ASTC_4x4_KHR;if(n===Po)return a===lt?r.COMPRESSED_SRGB8_ALPHA8_ASTC_5x4_KHR:r.COMPRESSED_RGBA_ASTC_5x4_KHR;if(n===Do)return a===lt?r.COMPRESSED_SRGB8_ALPHA8_ASTC_5x5_KHR:r.COMPRESSED_RGBA_ASTC_5x5_KHR;if(n===Lo)return a===lt?r.COMPRESSED_SRGB8_ALPHA8_ASTC_6x5_KHR:r.COMPRESSED_RGBA_ASTC_6x5_KHR;if(n===Io)return a===lt?r.COMPRESSED_SRGB8_ALPHA8_ASTC_6x6_KHR:r.COMPRESSED_RGBA_ASTC_6x6_KHR;if(n===Uo)return a===lt?r.COMPRESSED_SRGB8_ALPHA8_ASTC_8x5_KHR:r.COMPRESSED_RGBA_ASTC_8x5_KHR;if(n===No)return a===lt?r.COMPRESSED_SRGB8_ALPHA8_ASTC_8x6_KHR:r.COMPRESSED_RGBA_ASTC_8x6_KHR;if(n===Fo)return a===lt?r.COMPRESSED_SRGB8_ALPHA8_ASTC_8x8_KHR:r.COMPRESSED_RGBA_ASTC_8x8_KHR;if(n===Oo)return a===lt?r.COMPRESSED_SRGB8_ALPHA8_ASTC_10x5_KHR:r.COMPRESSED_RGBA_ASTC_10x5_KHR;if(n===ko)return a===lt?r.COMPRESSED_SRGB8_ALPHA8_ASTC_10x6_KHR:r.COMPRESSED_RGBA_ASTC_10x6_KHR;if(n===Bo)return a===lt?r.COMPRESSED_SRGB8_ALPHA8_ASTC_10x8_KHR:r.COMPRESSED_RGBA_ASTC_10x8_KHR;if(n===zo)return a===lt?r.COMPRESSED_SRGB8_ALPHA8_ASTC_10x10_KHR:r.COMPRESSED_RGBA_ASTC_10x10_KHR;if(n===Ho)return a===lt?r.COMPRESSED_SRGB8_ALPHA8_ASTC_12x10_KHR:r.COMPRESSED_RGBA_ASTC_12x10_KHR;if(n===Vo)return a===lt?r.COMPRESSED_SRGB8_ALPHA8_ASTC_12x12_KHR:r.COMPRESSED_RGBA_ASTC_12x12_KHR}else return null;if(n===Go||n===$o||n===Wo)if(r=e.get("EXT_texture_compression_bptc"),r!==null){if(n===Go)return a===lt?r.COMPRESSED_SRGB_ALPHA_BPTC_UNORM_EXT:r.COMPRESSED_RGBA_BPTC_UNORM_EXT;if(n===$o)return r.COMPRESSED_RGB_BPTC_SIGNED_FLOAT_EXT;if(n===Wo)return r.COMPRESSED_RGB_BPTC_UNSIGNED_FLOAT_EXT}else return null;if(n===qo||n===Xo||n===jo||n===Yo)if(r=e.get("EXT_texture_compression_rgtc"),r!==null){if(n===qo)return r.COMPRESSED_RED_RGTC1_EXT;if(n===Xo)return r.COMPRESSED_SIGNED_RED_RGTC1_EXT;if(n===jo)return r.COMPRESSED_RED_GREEN_RGTC2_EXT;if(n===Yo)return r.COMPRESSED_SIGNED_RED_GREEN_RGTC2_EXT}else return null;return n===Is?i.UNSIGNED_INT_24_8:i[n]!==void 0?i[n]:null}return{convert:t}}const T0=`
void main() {

	gl_Position = vec4( position, 1.0 );

}`,A0=`
uniform sampler2DArray depthColor;
uniform float depthWidth;
uniform float depthHeight;

void main() {

	vec2 coord = vec2( gl_FragCoord.x / depthWidth, gl_FragCoord.y / depthHeight );

	if ( coord.x >= 1.0 ) {

		gl_FragDepth = texture( depthColor, vec3( coord.x - 1.0, coord.y, 1 ) ).r;

	} else {

		gl_FragDepth = texture( depthColor, vec3( coord.x, coord.y, 0 ) ).r;

	}

}`;class R0{constructor(){this.texture=null,this.mesh=null,this.depthNear=0,this.depthFar=0}init(e,t){if(this.texture===null){const n=new _u(e.texture);(e.depthNear!==t.depthNear||e.depthFar!==t.depthFar)&&(this.depthNear=e.depthNear,this.depthFar=e.depthFar),this.texture=n}}getMesh(e){if(this.texture!==null&&this.mesh===null){const t=e.cameras[0].viewport,n=new li({vertexShader:T0,fragmentShader:A0,uniforms:{depthColor:{value:this.texture},depthWidth:{value:t.z},depthHeight:{value:t.w}}});this.mesh=new kt(new na(20,20),n)}return this.mesh}reset(){this.texture=null,this.mesh=null}getDepthTexture(){return this.texture}}class C0 extends Pi{constructor(e,t){super();const n=this;let s=null,r=1,a=null,o="local-floor",c=1,l=null,h=null,u=null,d=null,p=null,_=null;const v=typeof XRWebGLBinding<"u",m=new R0,f={},S=t.getContextAttributes();let E=null,M=null;const P=[],C=[],D=new We;let O=null;const b=new un;b.viewport=new St;const y=new un;y.viewport=new St;const R=[b,y],N=new jf;let U=null,k=null;this.cameraAutoUpdate=!0,this.enabled=!1,this.isPresenting=!1,this.getController=function(Q){let ee=P[Q];return ee===void 0&&(ee=new Fa,P[Q]=ee),ee.getTargetRaySpace()},this.getControllerGrip=function(Q){let ee=P[Q];return ee===void 0&&(ee=new Fa,P[Q]=ee),ee.getGripSpace()},this.getHand=function(Q){let ee=P[Q];return ee===void 0&&(ee=new Fa,P[Q]=ee),ee.getHandSpace()};function B(Q){const ee=C.indexOf(Q.inputSource);if(ee===-1)return;const Se=P[ee];Se!==void 0&&(Se.update(Q.inputSource,Q.frame,l||a),Se.dispatchEvent({type:Q.type,data:Q.inputSource}))}function q(){s.removeEventListener("select",B),s.removeEventListener("selectstart",B),s.removeEventListener("selectend",B),s.removeEventListener("squeeze",B),s.removeEventListener("squeezestart",B),s.removeEventListener("squeezeend",B),s.removeEventListener("end",q),s.removeEventListener("inputsourceschange",J);for(let Q=0;Q<P.length;Q++){const ee=C[Q];ee!==null&&(C[Q]=null,P[Q].disconnect(ee))}U=null,k=null,m.reset();for(const Q in f)delete f[Q];e.setRenderTarget(E),p=null,d=null,u=null,s=null,M=null,$e.stop(),n.isPresenting=!1,e.setPixelRatio(O),e.setSize(D.width,D.height,!1),n.dispatchEvent({type:"sessionend"})}this.setFramebufferScaleFactor=function(Q){r=Q,n.isPresenting===!0&&console.warn("THREE.WebXRManager: Cannot change framebuffer scale while presenting.")},this.setReferenceSpaceType=function(Q){o=Q,n.isPresenting===!0&&console.warn("THREE.WebXRManager: Cannot change reference space type while presenting.")},this.getReferenceSpace=function(){return l||a},this.setReferenceSpace=function(Q){l=Q},this.getBaseLayer=function(){return d!==null?d:p},this.getBinding=function(){return u===null&&v&&(u=new XRWebGLBinding(s,t)),u},this.getFrame=function(){return _},this.getSession=function(){return s},this.setSession=async function(Q){if(s=Q,s!==null){if(E=e.getRenderTarget(),s.addEventListener("select",B),s.addEventListener("selectstart",B),s.addEventListener("selectend",B),s.addEventListener("squeeze",B),s.addEventListener("squeezestart",B),s.addEventListener("squeezeend",B),s.addEventListener("end",q),s.addEventListener("inputsourceschange",J),S.xrCompatible!==!0&&await t.makeXRCompatible(),O=e.getPixelRatio(),e.getSize(D),v&&"createProjectionLayer"in XRWebGLBinding.prototype){let Se=null,V=null,L=null;S.depth&&(L=S.stencil?t.DEPTH24_STENCIL8:t.DEPTH_COMPONENT24,Se=S.stencil?Ns:Us,V=S.stencil?Is:Ai);const te={colorFormat:t.RGBA8,depthFormat:L,scaleFactor:r};u=this.getBinding(),d=u.createProjectionLayer(te),s.updateRenderState({layers:[d]}),e.setPixelRatio(1),e.setSize(d.textureWidth,d.textureHeight,!1),M=new Ci(d.textureWidth,d.textureHeight,{format:vn,type:Rn,depthTexture:new gu(d.textureWidth,d.textureHeight,V,void 0,void 0,void 0,void 0,void 0,void 0,Se),stencilBuffer:S.stencil,colorSpace:e.outputColorSpace,samples:S.antialias?4:0,resolveDepthBuffer:d.ignoreDepthValues===!1,resolveStencilBuffer:d.ignoreDepthValues===!1})}else{const Se={antialias:S.antialias,alpha:!0,depth:S.depth,stencil:S.stencil,framebufferScaleFactor:r};p=new XRWebGLLayer(s,t,Se),s.updateRenderState({baseLayer:p}),e.setPixelRatio(1),e.setSize(p.framebufferWidth,p.framebufferHeight,!1),M=new Ci(p.framebufferWidth,p.framebufferHeight,{format:vn,type:Rn,colorSpace:e.outputColorSpace,stencilBuffer:S.stencil,resolveDepthBuffer:p.ignoreDepthValues===!1,resolveStencilBuffer:p.ignoreDepthValues===!1})}M.isXRRenderTarget=!0,this.setFoveation(c),l=null,a=await s.requestReferenceSpace(o),$e.setContext(s),$e.start(),n.isPresenting=!0,n.dispatchEvent({type:"sessionstart"})}},this.getEnvironmentBlendMode=function(){if(s!==null)return s.environmentBlendMode},this.getDepthTexture=function(){return m.getDepthTexture()};function J(Q){for(let ee=0;ee<Q.removed.length;ee++){const Se=Q.removed[ee],V=C.indexOf(Se);V>=0&&(C[V]=null,P[V].disconnect(Se))}for(let ee=0;ee<Q.added.length;ee++){const Se=Q.added[ee];let V=C.indexOf(Se);if(V===-1){for(let te=0;te<P.length;te++)if(te>=C.length){C.push(Se),V=te;break}else if(C[te]===null){C[te]=Se,V=te;break}if(V===-1)break}const L=P[V];L&&L.connect(Se)}}const X=new I,le=new I;function fe(Q,ee,Se){X.setFromMatrixPosition(ee.matrixWorld),le.setFromMatrixPosition(Se.matrixWorld);const V=X.distanceTo(le),L=ee.projectionMatrix.elements,te=Se.projectionMatrix.elements,ge=L[14]/(L[10]-1),A=L[14]/(L[10]+1),we=(L[9]+1)/L[5],Me=(L[9]-1)/L[5],be=(L[8]-1)/L[0],pe=(te[8]+1)/te[0],Je=ge*be,ve=ge*pe,He=V/(-be+pe),Rt=He*-be;if(ee.matrixWorld.decompose(Q.position,Q.quaternion,Q.scale),Q.translateX(Rt),Q.translateZ(He),Q.matrixWorld.compose(Q.position,Q.quaternion,Q.scale),Q.matrixWorldInverse.copy(Q.matrixWorld).invert(),L[10]===-1)Q.projectionMatrix.copy(ee.projectionMatrix),Q.projectionMatrixInverse.copy(ee.projectionMatrixInverse);else{const xt=ge+He,T=A+He,x=Je-Rt,$=ve+(V-Rt),Z=we*A/T*xt,ie=Me*A/T*xt;Q.projectionMatrix.makePerspective(x,$,Z,ie,xt,T),Q.projectionMatrixInverse.copy(Q.projectionMatrix).invert()}}function W(Q,ee){ee===null?Q.matrixWorld.copy(Q.matrix):Q.matrixWorld.multiplyMatrices(ee.matrixWorld,Q.matrix),Q.matrixWorldInverse.copy(Q.matrixWorld).invert()}this.updateCamera=function(Q){if(s===null)return;let ee=Q.near,Se=Q.far;m.texture!==null&&(m.depthNear>0&&(ee=m.depthNear),m.depthFar>0&&(Se=m.depthFar)),N.near=y.near=b.near=ee,N.far=y.far=b.far=Se,(U!==N.near||k!==N.far)&&(s.updateRenderState({depthNear:N.near,depthFar:N.far}),U=N.near,k=N.far),N.layers.mask=Q.layers.mask|6,b.layers.mask=N.layers.mask&3,y.layers.mask=N.layers.mask&5;const V=Q.parent,L=N.cameras;W(N,V);for(let te=0;te<L.length;te++)W(L[te],V);L.length===2?fe(N,b,y):N.projectionMatrix.copy(b.projectionMatrix),ue(Q,N,V)};function ue(Q,ee,Se){Se===null?Q.matrix.copy(ee.matrixWorld):(Q.matrix.copy(Se.matrixWorld),Q.matrix.invert(),Q.matrix.multiply(ee.matrixWorld)),Q.matrix.decompose(Q.position,Q.quaternion,Q.scale),Q.updateMatrixWorld(!0),Q.projectionMatrix.copy(ee.projectionMatrix),Q.projectionMatrixInverse.copy(ee.projectionMatrixInverse),Q.isPerspectiveCamera&&(Q.fov=Ko*2*Math.atan(1/Q.projectionMatrix.elements[5]),Q.zoom=1)}this.getCamera=function(){return N},this.getFoveation=function(){if(!(d===null&&p===null))return c},this.setFoveation=function(Q){c=Q,d!==null&&(d.fixedFoveation=Q),p!==null&&p.fixedFoveation!==void 0&&(p.fixedFoveation=Q)},this.hasDepthSensing=function(){return m.texture!==null},this.getDepthSensingMesh=function(){return m.getMesh(N)},this.getCameraTexture=function(Q){return f[Q]};let Ce=null;function Oe(Q,ee){if(h=ee.getViewerPose(l||a),_=ee,h!==null){const Se=h.views;p!==null&&(e.setRenderTargetFramebuffer(M,p.framebuffer),e.setRenderTarget(M));let V=!1;Se.length!==N.cameras.length&&(N.cameras.length=0,V=!0);for(let A=0;A<Se.length;A++){const we=Se[A];let Me=null;if(p!==null)Me=p.getViewport(we);else{const pe=u.getViewSubImage(d,we);Me=pe.viewport,A===0&&(e.setRenderTargetTextures(M,pe.colorTexture,pe.depthStencilTexture),e.setRenderTarget(M))}let be=R[A];be===void 0&&(be=new un,be.layers.enable(A),be.viewport=new St,R[A]=be),be.matrix.fromArray(we.transform.matrix),be.matrix.decompose(be.position,be.quaternion,be.scale),be.projectionMatrix.fromArray(we.projectionMatrix),be.projectionMatrixInverse.copy(be.projectionMatrix).invert(),be.viewport.set(Me.x,Me.y,Me.width,Me.height),A===0&&(N.matrix.copy(be.matrix),N.matrix.decompose(N.position,N.quaternion,N.scale)),V===!0&&N.cameras.push(be)}const L=s.enabledFeatures;if(L&&L.includes("depth-sensing")&&s.depthUsage=="gpu-optimized"&&v){u=n.getBinding();const A=u.getDepthInformation(Se[0]);A&&A.isValid&&A.texture&&m.init(A,s.renderState)}if(L&&L.includes("camera-access")&&v){e.state.unbindTexture(),u=n.getBinding();for(let A=0;A<Se.length;A++){const we=Se[A].camera;if(we){let Me=f[we];Me||(Me=new _u,f[we]=Me);const be=u.getCameraImage(we);Me.sourceTexture=be}}}}for(let Se=0;Se<P.length;Se++){const V=C[Se],L=P[Se];V!==null&&L!==void 0&&L.update(V,ee,l||a)}Ce&&Ce(Q,ee),ee.detectedPlanes&&n.dispatchEvent({type:"planesdetected",data:ee}),_=null}const $e=new wu;$e.setAnimationLoop(Oe),this.setAnimationLoop=function(Q){Ce=Q},this.dispose=function(){}}}const vi=new Cn,P0=new pt;function D0(i,e){function t(m,f){m.matrixAutoUpdate===!0&&m.updateMatrix(),f.value.copy(m.matrix)}function n(m,f){f.color.getRGB(m.fogColor.value,uu(i)),f.isFog?(m.fogNear.value=f.near,m.fogFar.value=f.far):f.isFogExp2&&(m.fogDensity.value=f.density)}function s(m,f,S,E,M){f.isMeshBasicMaterial||f.isMeshLambertMaterial?r(m,f):f.isMeshToonMaterial?(r(m,f),u(m,f)):f.isMeshPhongMaterial?(r(m,f),h(m,f)):f.isMeshStandardMaterial?(r(m,f),d(m,f),f.isMeshPhysicalMaterial&&p(m,f,M)):f.isMeshMatcapMaterial?(r(m,f),_(m,f)):f.isMeshDepthMaterial?r(m,f):f.isMeshDistanceMaterial?(r(m,f),v(m,f)):f.isMeshNormalMaterial?r(m,f):f.isLineBasicMaterial?(a(m,f),f.isLineDashedMaterial&&o(m,f)):f.isPointsMaterial?c(m,f,S,E):f.isSpriteMaterial?l(m,f):f.isShadowMaterial?(m.color.value.copy(f.color),m.opacity.value=f.opacity):f.isShaderMaterial&&(f.uniformsNeedUpdate=!1)}function r(m,f){m.opacity.value=f.opacity,f.color&&m.diffuse.value.copy(f.color),f.emissive&&m.emissive.value.copy(f.emissive).multiplyScalar(f.emissiveIntensity),f.map&&(m.map.value=f.map,t(f.map,m.mapTransform)),f.alphaMap&&(m.alphaMap.value=f.alphaMap,t(f.alphaMap,m.alphaMapTransform)),f.bumpMap&&(m.bumpMap.value=f.bumpMap,t(f.bumpMap,m.bumpMapTransform),m.bumpScale.value=f.bumpScale,f.side===Kt&&(m.bumpScale.value*=-1)),f.normalMap&&(m.normalMap.value=f.normalMap,t(f.normalMap,m.normalMapTransform),m.normalScale.value.copy(f.normalScale),f.side===Kt&&m.normalScale.value.negate()),f.displacementMap&&(m.displacementMap.value=f.displacementMap,t(f.displacementMap,m.displacementMapTransform),m.displacementScale.value=f.displacementScale,m.displacementBias.value=f.displacementBias),f.emissiveMap&&(m.emissiveMap.value=f.emissiveMap,t(f.emissiveMap,m.emissiveMapTransform)),f.specularMap&&(m.specularMap.value=f.specularMap,t(f.specularMap,m.specularMapTransform)),f.alphaTest>0&&(m.alphaTest.value=f.alphaTest);const S=e.get(f),E=S.envMap,M=S.envMapRotation;E&&(m.envMap.value=E,vi.copy(M),vi.x*=-1,vi.y*=-1,vi.z*=-1,E.isCubeTexture&&E.isRenderTargetTexture===!1&&(vi.y*=-1,vi.z*=-1),m.envMapRotation.value.setFromMatrix4(P0.makeRotationFromEuler(vi)),m.flipEnvMap.value=E.isCubeTexture&&E.isRenderTargetTexture===!1?-1:1,m.reflectivity.value=f.reflectivity,m.ior.value=f.ior,m.refractionRatio.value=f.refractionRatio),f.lightMap&&(m.lightMap.value=f.lightMap,m.lightMapIntensity.value=f.lightMapIntensity,t(f.lightMap,m.lightMapTransform)),f.aoMap&&(m.aoMap.value=f.aoMap,m.aoMapIntensity.value=f.aoMapIntensity,t(f.aoMap,m.aoMapTransform))}function a(m,f){m.diffuse.value.copy(f.color),m.opacity.value=f.opacity,f.map&&(m.map.value=f.map,t(f.map,m.mapTransform))}function o(m,f){m.dashSize.value=f.dashSize,m.totalSize.value=f.dashSize+f.gapSize,m.scale.value=f.scale}function c(m,f,S,E){m.diffuse.value.copy(f.color),m.opacity.value=f.opacity,m.size.value=f.size*S,m.scale.value=E*.5,f.map&&(m.map.value=f.map,t(f.map,m.uvTransform)),f.alphaMap&&(m.alphaMap.value=f.alphaMap,t(f.alphaMap,m.alphaMapTransform)),f.alphaTest>0&&(m.alphaTest.value=f.alphaTest)}function l(m,f){m.diffuse.value.copy(f.color),m.opacity.value=f.opacity,m.rotation.value=f.rotation,f.map&&(m.map.value=f.map,t(f.map,m.mapTransform)),f.alphaMap&&(m.alphaMap.value=f.alphaMap,t(f.alphaMap,m.alphaMapTransform)),f.alphaTest>0&&(m.alphaTest.value=f.alphaTest)}function h(m,f){m.specular.value.copy(f.specular),m.shininess.value=Math.max(f.shininess,1e-4)}function u(m,f){f.gradientMap&&(m.gradientMap.value=f.gradientMap)}function d(m,f){m.metalness.value=f.metalness,f.metalnessMap&&(m.metalnessMap.value=f.metalnessMap,t(f.metalnessMap,m.metalnessMapTransform)),m.roughness.value=f.roughness,f.roughnessMap&&(m.roughnessMap.value=f.roughnessMap,t(f.roughnessMap,m.roughnessMapTransform)),f.envMap&&(m.envMapIntensity.value=f.envMapIntensity)}function p(m,f,S){m.ior.value=f.ior,f.sheen>0&&(m.sheenColor.value.copy(f.sheenColor).multiplyScalar(f.sheen),m.sheenRoughness.value=f.sheenRoughness,f.sheenColorMap&&(m.sheenColorMap.value=f.sheenColorMap,t(f.sheenColorMap,m.sheenColorMapTransform)),f.sheenRoughnessMap&&(m.sheenRoughnessMap.value=f.sheenRoughnessMap,t(f.sheenRoughnessMap,m.sheenRoughnessMapTransform))),f.clearcoat>0&&(m.clearcoat.value=f.clearcoat,m.clearcoatRoughness.value=f.clearcoatRoughness,f.clearcoatMap&&(m.clearcoatMap.value=f.clearcoatMap,t(f.clearcoatMap,m.clearcoatMapTransform)),f.clearcoatRoughnessMap&&(m.clearcoatRoughnessMap.value=f.clearcoatRoughnessMap,t(f.clearcoatRoughnessMap,m.clearcoatRoughnessMapTransform)),f.clearcoatNormalMap&&(m.clearcoatNormalMap.value=f.clearcoatNormalMap,t(f.clearcoatNormalMap,m.clearcoatNormalMapTransform),m.clearcoatNormalScale.value.copy(f.clearcoatNormalScale),f.side===Kt&&m.clearcoatNormalScale.value.negate())),f.dispersion>0&&(m.dispersion.value=f.dispersion),f.iridescence>0&&(m.iridescence.value=f.iridescence,m.iridescenceIOR.value=f.iridescenceIOR,m.iridescenceThicknessMinimum.value=f.iridescenceThicknessRange[0],m.iridescenceThicknessMaximum.value=f.iridescenceThicknessRange[1],f.iridescenceMap&&(m.iridescenceMap.value=f.iridescenceMap,t(f.iridescenceMap,m.iridescenceMapTransform)),f.iridescenceThicknessMap&&(m.iridescenceThicknessMap.value=f.iridescenceThicknessMap,t(f.iridescenceThicknessMap,m.iridescenceThicknessMapTransform))),f.transmission>0&&(m.transmission.value=f.transmission,m.transmissionSamplerMap.value=S.texture,m.transmissionSamplerSize.value.set(S.width,S.height),f.transmissionMap&&(m.transmissionMap.value=f.transmissionMap,t(f.transmissionMap,m.transmissionMapTransform)),m.thickness.value=f.thickness,f.thicknessMap&&(m.thicknessMap.value=f.thicknessMap,t(f.thicknessMap,m.thicknessMapTransform)),m.attenuationDistance.value=f.attenuationDistance,m.attenuationColor.value.copy(f.attenuationColor)),f.anisotropy>0&&(m.anisotropyVector.value.set(f.anisotropy*Math.cos(f.anisotropyRotation),f.anisotropy*Math.sin(f.anisotropyRotation)),f.anisotropyMap&&(m.anisotropyMap.value=f.anisotropyMap,t(f.anisotropyMap,m.anisotropyMapTransform))),m.specularIntensity.value=f.specularIntensity,m.specularColor.value.copy(f.specularColor),f.specularColorMap&&(m.specularColorMap.value=f.specularColorMap,t(f.specularColorMap,m.specularColorMapTransform)),f.specularIntensityMap&&(m.specularIntensityMap.value=f.specularIntensityMap,t(f.specularIntensityMap,m.specularIntensityMapTransform))}function _(m,f){f.matcap&&(m.matcap.value=f.matcap)}function v(m,f){const S=e.get(f).light;m.referencePosition.value.setFromMatrixPosition(S.matrixWorld),m.nearDistance.value=S.shadow.camera.near,m.farDistance.value=S.shadow.camera.far}return{refreshFogUniforms:n,refreshMaterialUniforms:s}}function L0(i,e,t,n){let s={},r={},a=[];const o=i.getParameter(i.MAX_UNIFORM_BUFFER_BINDINGS);function c(S,E){const M=E.program;n.uniformBlockBinding(S,M)}function l(S,E){let M=s[S.id];M===void 0&&(_(S),M=h(S),s[S.id]=M,S.addEventListener("dispose",m));const P=E.program;n.updateUBOMapping(S,P);const C=e.render.frame;r[S.id]!==C&&(d(S),r[S.id]=C)}function h(S){const E=u();S.__bindingPointIndex=E;const M=i.createBuffer(),P=S.__size,C=S.usage;return i.bindBuffer(i.UNIFORM_BUFFER,M),i.bufferData(i.UNIFORM_BUFFER,P,C),i.bindBuffer(i.UNIFORM_BUFFER,null),i.bindBufferBase(i.UNIFORM_BUFFER,E,M),M}function u(){for(let S=0;S<o;S++)if(a.indexOf(S)===-1)return a.push(S),S;return console.error("THREE.WebGLRenderer: Maximum number of simultaneously usable uniforms groups reached."),0}function d(S){const E=s[S.id],M=S.uniforms,P=S.__cache;i.bindBuffer(i.UNIFORM_BUFFER,E);for(let C=0,D=M.length;C<D;C++){const O=Array.isArray(M[C])?M[C]:[M[C]];for(let b=0,y=O.length;b<y;b++){const R=O[b];if(p(R,C,b,P)===!0){const N=R.__offset,U=Array.isArray(R.value)?R.value:[R.value];let k=0;for(let B=0;B<U.length;B++){const q=U[B],J=v(q);typeof q=="number"||typeof q=="boolean"?(R.__data[0]=q,i.bufferSubData(i.UNIFORM_BUFFER,N+k,R.__data)):q.isMatrix3?(R.__data[0]=q.elements[0],R.__data[1]=q.elements[1],R.__data[2]=q.elements[2],R.__data[3]=0,R.__data[4]=q.elements[3],R.__data[5]=q.elements[4],R.__data[6]=q.elements[5],R.__data[7]=0,R.__data[8]=q.elements[6],R.__data[9]=q.elements[7],R.__data[10]=q.elements[8],R.__data[11]=0):(q.toArray(R.__data,k),k+=J.storage/Float32Array.BYTES_PER_ELEMENT)}i.bufferSubData(i.UNIFORM_BUFFER,N,R.__data)}}}i.bindBuffer(i.UNIFORM_BUFFER,null)}function p(S,E,M,P){const C=S.value,D=E+"_"+M;if(P[D]===void 0)return typeof C=="number"||typeof C=="boolean"?P[D]=C:P[D]=C.clone(),!0;{const O=P[D];if(typeof C=="number"||typeof C=="boolean"){if(O!==C)return P[D]=C,!0}else if(O.equals(C)===!1)return O.copy(C),!0}return!1}function _(S){const E=S.uniforms;let M=0;const P=16;for(let D=0,O=E.length;D<O;D++){const b=Array.isArray(E[D])?E[D]:[E[D]];for(let y=0,R=b.length;y<R;y++){const N=b[y],U=Array.isArray(N.value)?N.value:[N.value];for(let k=0,B=U.length;k<B;k++){const q=U[k],J=v(q),X=M%P,le=X%J.boundary,fe=X+le;M+=le,fe!==0&&P-fe<J.storage&&(M+=P-fe),N.__data=new Float32Array(J.storage/Float32Array.BYTES_PER_ELEMENT),N.__offset=M,M+=J.storage}}}const C=M%P;return C>0&&(M+=P-C),S.__size=M,S.__cache={},this}function v(S){const E={boundary:0,storage:0};return typeof S=="number"||typeof S=="boolean"?(E.boundary=4,E.storage=4):S.isVector2?(E.boundary=8,E.storage=8):S.isVector3||S.isColor?(E.boundary=16,E.storage=12):S.isVector4?(E.boundary=16,E.storage=16):S.isMatrix3?(E.boundary=48,E.storage=48):S.isMatrix4?(E.boundary=64,E.storage=64):S.isTexture?console.warn("THREE.WebGLRenderer: Texture samplers can not be part of an uniforms group."):console.warn("THREE.WebGLRenderer: Unsupported uniform value type.",S),E}function m(S){const E=S.target;E.removeEventListener("dispose",m);const M=a.indexOf(E.__bindingPointIndex);a.splice(M,1),i.deleteBuffer(s[E.id]),delete s[E.id],delete r[E.id]}function f(){for(const S in s)i.deleteBuffer(s[S]);a=[],s={},r={}}return{bind:c,update:l,dispose:f}}class I0{constructor(e={}){const{canvas:t=hf(),context:n=null,depth:s=!0,stencil:r=!1,alpha:a=!1,antialias:o=!1,premultipliedAlpha:c=!0,preserveDrawingBuffer:l=!1,powerPreference:h="default",failIfMajorPerformanceCaveat:u=!1,reversedDepthBuffer:d=!1}=e;this.isWebGLRenderer=!0;let p;if(n!==null){if(typeof WebGLRenderingContext<"u"&&n instanceof WebGLRenderingContext)throw new Error("THREE.WebGLRenderer: WebGL 1 is not supported since r163.");p=n.getContextAttributes().alpha}else p=a;const _=new Uint32Array(4),v=new Int32Array(4);let m=null,f=null;const S=[],E=[];this.domElement=t,this.debug={checkShaderErrors:!0,onShaderError:null},this.autoClear=!0,this.autoClearColor=!0,this.autoClearDepth=!0,this.autoClearStencil=!0,this.sortObjects=!0,this.clippingPlanes=[],this.localClippingEnabled=!1,this.toneMapping=ri,this.toneMappingExposure=1,this.transmissionResolutionScale=1;const M=this;let P=!1;this._outputColorSpace=hn;let C=0,D=0,O=null,b=-1,y=null;const R=new St,N=new St;let U=null;const k=new Ke(0);let B=0,q=t.width,J=t.height,X=1,le=null,fe=null;const W=new St(0,0,q,J),ue=new St(0,0,q,J);let Ce=!1;const Oe=new El;let $e=!1,Q=!1;const ee=new pt,Se=new I,V=new St,L={background:null,fog:null,environment:null,overrideMaterial:null,isScene:!0};let te=!1;function ge(){return O===null?X:1}let A=n;function we(w,z){return t.getContext(w,z)}try{const w={alpha:!0,depth:s,stencil:r,antialias:o,premultipliedAlpha:c,preserveDrawingBuffer:l,powerPreference:h,failIfMajorPerformanceCaveat:u};if("setAttribute"in t&&t.setAttribute("data-engine",`three.js r${ml}`),t.addEventListener("webglcontextlost",de,!1),t.addEventListener("webglcontextrestored",Te,!1),t.addEventListener("webglcontextcreationerror",se,!1),A===null){const z="webgl2";if(A=we(z,w),A===null)throw we(z)?new Error("Error creating WebGL context with your selected attributes."):new Error("Error creating WebGL context.")}}catch(w){throw console.error("THREE.WebGLRenderer: "+w.message),w}let Me,be,pe,Je,ve,He,Rt,xt,T,x,$,Z,ie,K,Ue,he,De,Le,ae,ye,ze,Ie,_e,Xe;function F(){Me=new Gg(A),Me.init(),Ie=new E0(A,Me),be=new Fg(A,Me,e,Ie),pe=new M0(A,Me),be.reversedDepthBuffer&&d&&pe.buffers.depth.setReversed(!0),Je=new qg(A),ve=new h0,He=new S0(A,Me,pe,ve,be,Ie,Je),Rt=new kg(M),xt=new Vg(M),T=new Jf(A),_e=new Ug(A,T),x=new $g(A,T,Je,_e),$=new jg(A,x,T,Je),ae=new Xg(A,be,He),he=new Og(ve),Z=new c0(M,Rt,xt,Me,be,_e,he),ie=new D0(M,ve),K=new d0,Ue=new v0(Me),Le=new Ig(M,Rt,xt,pe,$,p,c),De=new w0(M,$,be),Xe=new L0(A,Je,be,pe),ye=new Ng(A,Me,Je),ze=new Wg(A,Me,Je),Je.programs=Z.programs,M.capabilities=be,M.extensions=Me,M.properties=ve,M.renderLists=K,M.shadowMap=De,M.state=pe,M.info=Je}F();const oe=new C0(M,A);this.xr=oe,this.getContext=function(){return A},this.getContextAttributes=function(){return A.getContextAttributes()},this.forceContextLoss=function(){const w=Me.get("WEBGL_lose_context");w&&w.loseContext()},this.forceContextRestore=function(){const w=Me.get("WEBGL_lose_context");w&&w.restoreContext()},this.getPixelRatio=function(){return X},this.setPixelRatio=function(w){w!==void 0&&(X=w,this.setSize(q,J,!1))},this.getSize=function(w){return w.set(q,J)},this.setSize=function(w,z,j=!0){if(oe.isPresenting){console.warn("THREE.WebGLRenderer: Can't change size while VR device is presenting.");return}q=w,J=z,t.width=Math.floor(w*X),t.height=Math.floor(z*X),j===!0&&(t.style.width=w+"px",t.style.height=z+"px"),this.setViewport(0,0,w,z)},this.getDrawingBufferSize=function(w){return w.set(q*X,J*X).floor()},this.setDrawingBufferSize=function(w,z,j){q=w,J=z,X=j,t.width=Math.floor(w*j),t.height=Math.floor(z*j),this.setViewport(0,0,w,z)},this.getCurrentViewport=function(w){return w.copy(R)},this.getViewport=function(w){return w.copy(W)},this.setViewport=function(w,z,j,Y){w.isVector4?W.set(w.x,w.y,w.z,w.w):W.set(w,z,j,Y),pe.viewport(R.copy(W).multiplyScalar(X).round())},this.getScissor=function(w){return w.copy(ue)},this.setScissor=function(w,z,j,Y){w.isVector4?ue.set(w.x,w.y,w.z,w.w):ue.set(w,z,j,Y),pe.scissor(N.copy(ue).multiplyScalar(X).round())},this.getScissorTest=function(){return Ce},this.setScissorTest=function(w){pe.setScissorTest(Ce=w)},this.setOpaqueSort=function(w){le=w},this.setTransparentSort=function(w){fe=w},this.getClearColor=function(w){return w.copy(Le.getClearColor())},this.setClearColor=function(){Le.setClearColor(...arguments)},this.getClearAlpha=function(){return Le.getClearAlpha()},this.setClearAlpha=function(){Le.setClearAlpha(...arguments)},this.clear=function(w=!0,z=!0,j=!0){let Y=0;if(w){let H=!1;if(O!==null){const re=O.texture.format;H=re===bl||re===wl||re===yl}if(H){const re=O.texture.type,xe=re===Rn||re===Ai||re===Ls||re===Is||re===vl||re===xl,Re=Le.getClearColor(),Ee=Le.getClearAlpha(),Be=Re.r,Ve=Re.g,Ne=Re.b;xe?(_[0]=Be,_[1]=Ve,_[2]=Ne,_[3]=Ee,A.clearBufferuiv(A.COLOR,0,_)):(v[0]=Be,v[1]=Ve,v[2]=Ne,v[3]=Ee,A.clearBufferiv(A.COLOR,0,v))}else Y|=A.COLOR_BUFFER_BIT}z&&(Y|=A.DEPTH_BUFFER_BIT),j&&(Y|=A.STENCIL_BUFFER_BIT,this.state.buffers.stencil.setMask(4294967295)),A.clear(Y)},this.clearColor=function(){this.clear(!0,!1,!1)},this.clearDepth=function(){this.clear(!1,!0,!1)},this.clearStencil=function(){this.clear(!1,!1,!0)},this.dispose=function(){t.removeEventListener("webglcontextlost",de,!1),t.removeEventListener("webglcontextrestored",Te,!1),t.removeEventListener("webglcontextcreationerror",se,!1),Le.dispose(),K.dispose(),Ue.dispose(),ve.dispose(),Rt.dispose(),xt.dispose(),$.dispose(),_e.dispose(),Xe.dispose(),Z.dispose(),oe.dispose(),oe.removeEventListener("sessionstart",wn),oe.removeEventListener("sessionend",Vl),ui.stop()};function de(w){w.preventDefault(),console.log("THREE.WebGLRenderer: Context Lost."),P=!0}function Te(){console.log("THREE.WebGLRenderer: Context Restored."),P=!1;const w=Je.autoReset,z=De.enabled,j=De.autoUpdate,Y=De.needsUpdate,H=De.type;F(),Je.autoReset=w,De.enabled=z,De.autoUpdate=j,De.needsUpdate=Y,De.type=H}function se(w){console.error("THREE.WebGLRenderer: A WebGL context could not be created. Reason: ",w.statusMessage)}function ne(w){const z=w.target;z.removeEventListener("dispose",ne),Pe(z)}function Pe(w){qe(w),ve.remove(w)}function qe(w){const z=ve.get(w).programs;z!==void 0&&(z.forEach(function(j){Z.releaseProgram(j)}),w.isShaderMaterial&&Z.releaseShaderCache(w))}this.renderBufferDirect=function(w,z,j,Y,H,re){z===null&&(z=L);const xe=H.isMesh&&H.matrixWorld.determinant()<0,Re=Bu(w,z,j,Y,H);pe.setMaterial(Y,xe);let Ee=j.index,Be=1;if(Y.wireframe===!0){if(Ee=x.getWireframeAttribute(j),Ee===void 0)return;Be=2}const Ve=j.drawRange,Ne=j.attributes.position;let et=Ve.start*Be,ot=(Ve.start+Ve.count)*Be;re!==null&&(et=Math.max(et,re.start*Be),ot=Math.min(ot,(re.start+re.count)*Be)),Ee!==null?(et=Math.max(et,0),ot=Math.min(ot,Ee.count)):Ne!=null&&(et=Math.max(et,0),ot=Math.min(ot,Ne.count));const Mt=ot-et;if(Mt<0||Mt===1/0)return;_e.setup(H,Y,Re,j,Ee);let mt,ht=ye;if(Ee!==null&&(mt=T.get(Ee),ht=ze,ht.setIndex(mt)),H.isMesh)Y.wireframe===!0?(pe.setLineWidth(Y.wireframeLinewidth*ge()),ht.setMode(A.LINES)):ht.setMode(A.TRIANGLES);else if(H.isLine){let Fe=Y.linewidth;Fe===void 0&&(Fe=1),pe.setLineWidth(Fe*ge()),H.isLineSegments?ht.setMode(A.LINES):H.isLineLoop?ht.setMode(A.LINE_LOOP):ht.setMode(A.LINE_STRIP)}else H.isPoints?ht.setMode(A.POINTS):H.isSprite&&ht.setMode(A.TRIANGLES);if(H.isBatchedMesh)if(H._multiDrawInstances!==null)Fs("THREE.WebGLRenderer: renderMultiDrawInstances has been deprecated and will be removed in r184. Append to renderMultiDraw arguments and use indirection."),ht.renderMultiDrawInstances(H._multiDrawStarts,H._multiDrawCounts,H._multiDrawCount,H._multiDrawInstances);else if(Me.get("WEBGL_multi_draw"))ht.renderMultiDraw(H._multiDrawStarts,H._multiDrawCounts,H._multiDrawCount);else{const Fe=H._multiDrawStarts,yt=H._multiDrawCounts,it=H._multiDrawCount,Qt=Ee?T.get(Ee).bytesPerElement:1,Ii=ve.get(Y).currentProgram.getUniforms();for(let en=0;en<it;en++)Ii.setValue(A,"_gl_DrawID",en),ht.render(Fe[en]/Qt,yt[en])}else if(H.isInstancedMesh)ht.renderInstances(et,Mt,H.count);else if(j.isInstancedBufferGeometry){const Fe=j._maxInstanceCount!==void 0?j._maxInstanceCount:1/0,yt=Math.min(j.instanceCount,Fe);ht.renderInstances(et,Mt,yt)}else ht.render(et,Mt)};function dt(w,z,j){w.transparent===!0&&w.side===On&&w.forceSinglePass===!1?(w.side=Kt,w.needsUpdate=!0,qs(w,z,j),w.side=oi,w.needsUpdate=!0,qs(w,z,j),w.side=On):qs(w,z,j)}this.compile=function(w,z,j=null){j===null&&(j=w),f=Ue.get(j),f.init(z),E.push(f),j.traverseVisible(function(H){H.isLight&&H.layers.test(z.layers)&&(f.pushLight(H),H.castShadow&&f.pushShadow(H))}),w!==j&&w.traverseVisible(function(H){H.isLight&&H.layers.test(z.layers)&&(f.pushLight(H),H.castShadow&&f.pushShadow(H))}),f.setupLights();const Y=new Set;return w.traverse(function(H){if(!(H.isMesh||H.isPoints||H.isLine||H.isSprite))return;const re=H.material;if(re)if(Array.isArray(re))for(let xe=0;xe<re.length;xe++){const Re=re[xe];dt(Re,j,H),Y.add(Re)}else dt(re,j,H),Y.add(re)}),f=E.pop(),Y},this.compileAsync=function(w,z,j=null){const Y=this.compile(w,z,j);return new Promise(H=>{function re(){if(Y.forEach(function(xe){ve.get(xe).currentProgram.isReady()&&Y.delete(xe)}),Y.size===0){H(w);return}setTimeout(re,10)}Me.get("KHR_parallel_shader_compile")!==null?re():setTimeout(re,10)})};let at=null;function Pn(w){at&&at(w)}function wn(){ui.stop()}function Vl(){ui.start()}const ui=new wu;ui.setAnimationLoop(Pn),typeof self<"u"&&ui.setContext(self),this.setAnimationLoop=function(w){at=w,oe.setAnimationLoop(w),w===null?ui.stop():ui.start()},oe.addEventListener("sessionstart",wn),oe.addEventListener("sessionend",Vl),this.render=function(w,z){if(z!==void 0&&z.isCamera!==!0){console.error("THREE.WebGLRenderer.render: camera is not an instance of THREE.Camera.");return}if(P===!0)return;if(w.matrixWorldAutoUpdate===!0&&w.updateMatrixWorld(),z.parent===null&&z.matrixWorldAutoUpdate===!0&&z.updateMatrixWorld(),oe.enabled===!0&&oe.isPresenting===!0&&(oe.cameraAutoUpdate===!0&&oe.updateCamera(z),z=oe.getCamera()),w.isScene===!0&&w.onBeforeRender(M,w,z,O),f=Ue.get(w,E.length),f.init(z),E.push(f),ee.multiplyMatrices(z.projectionMatrix,z.matrixWorldInverse),Oe.setFromProjectionMatrix(ee,En,z.reversedDepth),Q=this.localClippingEnabled,$e=he.init(this.clippingPlanes,Q),m=K.get(w,S.length),m.init(),S.push(m),oe.enabled===!0&&oe.isPresenting===!0){const re=M.xr.getDepthSensingMesh();re!==null&&oa(re,z,-1/0,M.sortObjects)}oa(w,z,0,M.sortObjects),m.finish(),M.sortObjects===!0&&m.sort(le,fe),te=oe.enabled===!1||oe.isPresenting===!1||oe.hasDepthSensing()===!1,te&&Le.addToRenderList(m,w),this.info.render.frame++,$e===!0&&he.beginShadows();const j=f.state.shadowsArray;De.render(j,w,z),$e===!0&&he.endShadows(),this.info.autoReset===!0&&this.info.reset();const Y=m.opaque,H=m.transmissive;if(f.setupLights(),z.isArrayCamera){const re=z.cameras;if(H.length>0)for(let xe=0,Re=re.length;xe<Re;xe++){const Ee=re[xe];$l(Y,H,w,Ee)}te&&Le.render(w);for(let xe=0,Re=re.length;xe<Re;xe++){const Ee=re[xe];Gl(m,w,Ee,Ee.viewport)}}else H.length>0&&$l(Y,H,w,z),te&&Le.render(w),Gl(m,w,z);O!==null&&D===0&&(He.updateMultisampleRenderTarget(O),He.updateRenderTargetMipmap(O)),w.isScene===!0&&w.onAfterRender(M,w,z),_e.resetDefaultState(),b=-1,y=null,E.pop(),E.length>0?(f=E[E.length-1],$e===!0&&he.setGlobalState(M.clippingPlanes,f.state.camera)):f=null,S.pop(),S.length>0?m=S[S.length-1]:m=null};function oa(w,z,j,Y){if(w.visible===!1)return;if(w.layers.test(z.layers)){if(w.isGroup)j=w.renderOrder;else if(w.isLOD)w.autoUpdate===!0&&w.update(z);else if(w.isLight)f.pushLight(w),w.castShadow&&f.pushShadow(w);else if(w.isSprite){if(!w.frustumCulled||Oe.intersectsSprite(w)){Y&&V.setFromMatrixPosition(w.matrixWorld).applyMatrix4(ee);const xe=$.update(w),Re=w.material;Re.visible&&m.push(w,xe,Re,j,V.z,null)}}else if((w.isMesh||w.isLine||w.isPoints)&&(!w.frustumCulled||Oe.intersectsObject(w))){const xe=$.update(w),Re=w.material;if(Y&&(w.boundingSphere!==void 0?(w.boundingSphere===null&&w.computeBoundingSphere(),V.copy(w.boundingSphere.center)):(xe.boundingSphere===null&&xe.computeBoundingSphere(),V.copy(xe.boundingSphere.center)),V.applyMatrix4(w.matrixWorld).applyMatrix4(ee)),Array.isArray(Re)){const Ee=xe.groups;for(let Be=0,Ve=Ee.length;Be<Ve;Be++){const Ne=Ee[Be],et=Re[Ne.materialIndex];et&&et.visible&&m.push(w,xe,et,j,V.z,Ne)}}else Re.visible&&m.push(w,xe,Re,j,V.z,null)}}const re=w.children;for(let xe=0,Re=re.length;xe<Re;xe++)oa(re[xe],z,j,Y)}function Gl(w,z,j,Y){const H=w.opaque,re=w.transmissive,xe=w.transparent;f.setupLightsView(j),$e===!0&&he.setGlobalState(M.clippingPlanes,j),Y&&pe.viewport(R.copy(Y)),H.length>0&&Ws(H,z,j),re.length>0&&Ws(re,z,j),xe.length>0&&Ws(xe,z,j),pe.buffers.depth.setTest(!0),pe.buffers.depth.setMask(!0),pe.buffers.color.setMask(!0),pe.setPolygonOffset(!1)}function $l(w,z,j,Y){if((j.isScene===!0?j.overrideMaterial:null)!==null)return;f.state.transmissionRenderTarget[Y.id]===void 0&&(f.state.transmissionRenderTarget[Y.id]=new Ci(1,1,{generateMipmaps:!0,type:Me.has("EXT_color_buffer_half_float")||Me.has("EXT_color_buffer_float")?Hs:Rn,minFilter:Mi,samples:4,stencilBuffer:r,resolveDepthBuffer:!1,resolveStencilBuffer:!1,colorSpace:st.workingColorSpace}));const re=f.state.transmissionRenderTarget[Y.id],xe=Y.viewport||R;re.setSize(xe.z*M.transmissionResolutionScale,xe.w*M.transmissionResolutionScale);const Re=M.getRenderTarget(),Ee=M.getActiveCubeFace(),Be=M.getActiveMipmapLevel();M.setRenderTarget(re),M.getClearColor(k),B=M.getClearAlpha(),B<1&&M.setClearColor(16777215,.5),M.clear(),te&&Le.render(j);const Ve=M.toneMapping;M.toneMapping=ri;const Ne=Y.viewport;if(Y.viewport!==void 0&&(Y.viewport=void 0),f.setupLightsView(Y),$e===!0&&he.setGlobalState(M.clippingPlanes,Y),Ws(w,j,Y),He.updateMultisampleRenderTarget(re),He.updateRenderTargetMipmap(re),Me.has("WEBGL_multisampled_render_to_texture")===!1){let et=!1;for(let ot=0,Mt=z.length;ot<Mt;ot++){const mt=z[ot],ht=mt.object,Fe=mt.geometry,yt=mt.material,it=mt.group;if(yt.side===On&&ht.layers.test(Y.layers)){const Qt=yt.side;yt.side=Kt,yt.needsUpdate=!0,Wl(ht,j,Y,Fe,yt,it),yt.side=Qt,yt.needsUpdate=!0,et=!0}}et===!0&&(He.updateMultisampleRenderTarget(re),He.updateRenderTargetMipmap(re))}M.setRenderTarget(Re,Ee,Be),M.setClearColor(k,B),Ne!==void 0&&(Y.viewport=Ne),M.toneMapping=Ve}function Ws(w,z,j){const Y=z.isScene===!0?z.overrideMaterial:null;for(let H=0,re=w.length;H<re;H++){const xe=w[H],Re=xe.object,Ee=xe.geometry,Be=xe.group;let Ve=xe.material;Ve.allowOverride===!0&&Y!==null&&(Ve=Y),Re.layers.test(j.layers)&&Wl(Re,z,j,Ee,Ve,Be)}}function Wl(w,z,j,Y,H,re){w.onBeforeRender(M,z,j,Y,H,re),w.modelViewMatrix.multiplyMatrices(j.matrixWorldInverse,w.matrixWorld),w.normalMatrix.getNormalMatrix(w.modelViewMatrix),H.onBeforeRender(M,z,j,Y,w,re),H.transparent===!0&&H.side===On&&H.forceSinglePass===!1?(H.side=Kt,H.needsUpdate=!0,M.renderBufferDirect(j,z,Y,H,w,re),H.side=oi,H.needsUpdate=!0,M.renderBufferDirect(j,z,Y,H,w,re),H.side=On):M.renderBufferDirect(j,z,Y,H,w,re),w.onAfterRender(M,z,j,Y,H,re)}function qs(w,z,j){z.isScene!==!0&&(z=L);const Y=ve.get(w),H=f.state.lights,re=f.state.shadowsArray,xe=H.state.version,Re=Z.getParameters(w,H.state,re,z,j),Ee=Z.getProgramCacheKey(Re);let Be=Y.programs;Y.environment=w.isMeshStandardMaterial?z.environment:null,Y.fog=z.fog,Y.envMap=(w.isMeshStandardMaterial?xt:Rt).get(w.envMap||Y.environment),Y.envMapRotation=Y.environment!==null&&w.envMap===null?z.environmentRotation:w.envMapRotation,Be===void 0&&(w.addEventListener("dispose",ne),Be=new Map,Y.programs=Be);let Ve=Be.get(Ee);if(Ve!==void 0){if(Y.currentProgram===Ve&&Y.lightsStateVersion===xe)return Xl(w,Re),Ve}else Re.uniforms=Z.getUniforms(w),w.onBeforeCompile(Re,M),Ve=Z.acquireProgram(Re,Ee),Be.set(Ee,Ve),Y.uniforms=Re.uniforms;const Ne=Y.uniforms;return(!w.isShaderMaterial&&!w.isRawShaderMaterial||w.clipping===!0)&&(Ne.clippingPlanes=he.uniform),Xl(w,Re),Y.needsLights=Hu(w),Y.lightsStateVersion=xe,Y.needsLights&&(Ne.ambientLightColor.value=H.state.ambient,Ne.lightProbe.value=H.state.probe,Ne.directionalLights.value=H.state.directional,Ne.directionalLightShadows.value=H.state.directionalShadow,Ne.spotLights.value=H.state.spot,Ne.spotLightShadows.value=H.state.spotShadow,Ne.rectAreaLights.value=H.state.rectArea,Ne.ltc_1.value=H.state.rectAreaLTC1,Ne.ltc_2.value=H.state.rectAreaLTC2,Ne.pointLights.value=H.state.point,Ne.pointLightShadows.value=H.state.pointShadow,Ne.hemisphereLights.value=H.state.hemi,Ne.directionalShadowMap.value=H.state.directionalShadowMap,Ne.directionalShadowMatrix.value=H.state.directionalShadowMatrix,Ne.spotShadowMap.value=H.state.spotShadowMap,Ne.spotLightMatrix.value=H.state.spotLightMatrix,Ne.spotLightMap.value=H.state.spotLightMap,Ne.pointShadowMap.value=H.state.pointShadowMap,Ne.pointShadowMatrix.value=H.state.pointShadowMatrix),Y.currentProgram=Ve,Y.uniformsList=null,Ve}function ql(w){if(w.uniformsList===null){const z=w.currentProgram.getUniforms();w.uniformsList=Ur.seqWithValue(z.seq,w.uniforms)}return w.uniformsList}function Xl(w,z){const j=ve.get(w);j.outputColorSpace=z.outputColorSpace,j.batching=z.batching,j.batchingColor=z.batchingColor,j.instancing=z.instancing,j.instancingColor=z.instancingColor,j.instancingMorph=z.instancingMorph,j.skinning=z.skinning,j.morphTargets=z.morphTargets,j.morphNormals=z.morphNormals,j.morphColors=z.morphColors,j.morphTargetsCount=z.morphTargetsCount,j.numClippingPlanes=z.numClippingPlanes,j.numIntersection=z.numClipIntersection,j.vertexAlphas=z.vertexAlphas,j.vertexTangents=z.vertexTangents,j.toneMapping=z.toneMapping}function Bu(w,z,j,Y,H){z.isScene!==!0&&(z=L),He.resetTextureUnits();const re=z.fog,xe=Y.isMeshStandardMaterial?z.environment:null,Re=O===null?M.outputColorSpace:O.isXRRenderTarget===!0?O.texture.colorSpace:rs,Ee=(Y.isMeshStandardMaterial?xt:Rt).get(Y.envMap||xe),Be=Y.vertexColors===!0&&!!j.attributes.color&&j.attributes.color.itemSize===4,Ve=!!j.attributes.tangent&&(!!Y.normalMap||Y.anisotropy>0),Ne=!!j.morphAttributes.position,et=!!j.morphAttributes.normal,ot=!!j.morphAttributes.color;let Mt=ri;Y.toneMapped&&(O===null||O.isXRRenderTarget===!0)&&(Mt=M.toneMapping);const mt=j.morphAttributes.position||j.morphAttributes.normal||j.morphAttributes.color,ht=mt!==void 0?mt.length:0,Fe=ve.get(Y),yt=f.state.lights;if($e===!0&&(Q===!0||w!==y)){const Gt=w===y&&Y.id===b;he.setState(Y,w,Gt)}let it=!1;Y.version===Fe.__version?(Fe.needsLights&&Fe.lightsStateVersion!==yt.state.version||Fe.outputColorSpace!==Re||H.isBatchedMesh&&Fe.batching===!1||!H.isBatchedMesh&&Fe.batching===!0||H.isBatchedMesh&&Fe.batchingColor===!0&&H.colorTexture===null||H.isBatchedMesh&&Fe.batchingColor===!1&&H.colorTexture!==null||H.isInstancedMesh&&Fe.instancing===!1||!H.isInstancedMesh&&Fe.instancing===!0||H.isSkinnedMesh&&Fe.skinning===!1||!H.isSkinnedMesh&&Fe.skinning===!0||H.isInstancedMesh&&Fe.instancingColor===!0&&H.instanceColor===null||H.isInstancedMesh&&Fe.instancingColor===!1&&H.instanceColor!==null||H.isInstancedMesh&&Fe.instancingMorph===!0&&H.morphTexture===null||H.isInstancedMesh&&Fe.instancingMorph===!1&&H.morphTexture!==null||Fe.envMap!==Ee||Y.fog===!0&&Fe.fog!==re||Fe.numClippingPlanes!==void 0&&(Fe.numClippingPlanes!==he.numPlanes||Fe.numIntersection!==he.numIntersection)||Fe.vertexAlphas!==Be||Fe.vertexTangents!==Ve||Fe.morphTargets!==Ne||Fe.morphNormals!==et||Fe.morphColors!==ot||Fe.toneMapping!==Mt||Fe.morphTargetsCount!==ht)&&(it=!0):(it=!0,Fe.__version=Y.version);let Qt=Fe.currentProgram;it===!0&&(Qt=qs(Y,z,H));let Ii=!1,en=!1,ds=!1;const wt=Qt.getUniforms(),on=Fe.uniforms;if(pe.useProgram(Qt.program)&&(Ii=!0,en=!0,ds=!0),Y.id!==b&&(b=Y.id,en=!0),Ii||y!==w){pe.buffers.depth.getReversed()&&w.reversedDepth!==!0&&(w._reversedDepth=!0,w.updateProjectionMatrix()),wt.setValue(A,"projectionMatrix",w.projectionMatrix),wt.setValue(A,"viewMatrix",w.matrixWorldInverse);const Xt=wt.map.cameraPosition;Xt!==void 0&&Xt.setValue(A,Se.setFromMatrixPosition(w.matrixWorld)),be.logarithmicDepthBuffer&&wt.setValue(A,"logDepthBufFC",2/(Math.log(w.far+1)/Math.LN2)),(Y.isMeshPhongMaterial||Y.isMeshToonMaterial||Y.isMeshLambertMaterial||Y.isMeshBasicMaterial||Y.isMeshStandardMaterial||Y.isShaderMaterial)&&wt.setValue(A,"isOrthographic",w.isOrthographicCamera===!0),y!==w&&(y=w,en=!0,ds=!0)}if(H.isSkinnedMesh){wt.setOptional(A,H,"bindMatrix"),wt.setOptional(A,H,"bindMatrixInverse");const Gt=H.skeleton;Gt&&(Gt.boneTexture===null&&Gt.computeBoneTexture(),wt.setValue(A,"boneTexture",Gt.boneTexture,He))}H.isBatchedMesh&&(wt.setOptional(A,H,"batchingTexture"),wt.setValue(A,"batchingTexture",H._matricesTexture,He),wt.setOptional(A,H,"batchingIdTexture"),wt.setValue(A,"batchingIdTexture",H._indirectTexture,He),wt.setOptional(A,H,"batchingColorTexture"),H._colorsTexture!==null&&wt.setValue(A,"batchingColorTexture",H._colorsTexture,He));const ln=j.morphAttributes;if((ln.position!==void 0||ln.normal!==void 0||ln.color!==void 0)&&ae.update(H,j,Qt),(en||Fe.receiveShadow!==H.receiveShadow)&&(Fe.receiveShadow=H.receiveShadow,wt.setValue(A,"receiveShadow",H.receiveShadow)),Y.isMeshGouraudMaterial&&Y.envMap!==null&&(on.envMap.value=Ee,on.flipEnvMap.value=Ee.isCubeTexture&&Ee.isRenderTargetTexture===!1?-1:1),Y.isMeshStandardMaterial&&Y.envMap===null&&z.environment!==null&&(on.envMapIntensity.value=z.environmentIntensity),en&&(wt.setValue(A,"toneMappingExposure",M.toneMappingExposure),Fe.needsLights&&zu(on,ds),re&&Y.fog===!0&&ie.refreshFogUniforms(on,re),ie.refreshMaterialUniforms(on,Y,X,J,f.state.transmissionRenderTarget[w.id]),Ur.upload(A,ql(Fe),on,He)),Y.isShaderMaterial&&Y.uniformsNeedUpdate===!0&&(Ur.upload(A,ql(Fe),on,He),Y.uniformsNeedUpdate=!1),Y.isSpriteMaterial&&wt.setValue(A,"center",H.center),wt.setValue(A,"modelViewMatrix",H.modelViewMatrix),wt.setValue(A,"normalMatrix",H.normalMatrix),wt.setValue(A,"modelMatrix",H.matrixWorld),Y.isShaderMaterial||Y.isRawShaderMaterial){const Gt=Y.uniformsGroups;for(let Xt=0,la=Gt.length;Xt<la;Xt++){const di=Gt[Xt];Xe.update(di,Qt),Xe.bind(di,Qt)}}return Qt}function zu(w,z){w.ambientLightColor.needsUpdate=z,w.lightProbe.needsUpdate=z,w.directionalLights.needsUpdate=z,w.directionalLightShadows.needsUpdate=z,w.pointLights.needsUpdate=z,w.pointLightShadows.needsUpdate=z,w.spotLights.needsUpdate=z,w.spotLightShadows.needsUpdate=z,w.rectAreaLights.needsUpdate=z,w.hemisphereLights.needsUpdate=z}function Hu(w){return w.isMeshLambertMaterial||w.isMeshToonMaterial||w.isMeshPhongMaterial||w.isMeshStandardMaterial||w.isShadowMaterial||w.isShaderMaterial&&w.lights===!0}this.getActiveCubeFace=function(){return C},this.getActiveMipmapLevel=function(){return D},this.getRenderTarget=function(){return O},this.setRenderTargetTextures=function(w,z,j){const Y=ve.get(w);Y.__autoAllocateDepthBuffer=w.resolveDepthBuffer===!1,Y.__autoAllocateDepthBuffer===!1&&(Y.__useRenderToTexture=!1),ve.get(w.texture).__webglTexture=z,ve.get(w.depthTexture).__webglTexture=Y.__autoAllocateDepthBuffer?void 0:j,Y.__hasExternalTextures=!0},this.setRenderTargetFramebuffer=function(w,z){const j=ve.get(w);j.__webglFramebuffer=z,j.__useDefaultFramebuffer=z===void 0};const Vu=A.createFramebuffer();this.setRenderTarget=function(w,z=0,j=0){O=w,C=z,D=j;let Y=!0,H=null,re=!1,xe=!1;if(w){const Ee=ve.get(w);if(Ee.__useDefaultFramebuffer!==void 0)pe.bindFramebuffer(A.FRAMEBUFFER,null),Y=!1;else if(Ee.__webglFramebuffer===void 0)He.setupRenderTarget(w);else if(Ee.__hasExternalTextures)He.rebindTextures(w,ve.get(w.texture).__webglTexture,ve.get(w.depthTexture).__webglTexture);else if(w.depthBuffer){const Ne=w.depthTexture;if(Ee.__boundDepthTexture!==Ne){if(Ne!==null&&ve.has(Ne)&&(w.width!==Ne.image.width||w.height!==Ne.image.height))throw new Error("WebGLRenderTarget: Attached DepthTexture is initialized to the incorrect size.");He.setupDepthRenderbuffer(w)}}const Be=w.texture;(Be.isData3DTexture||Be.isDataArrayTexture||Be.isCompressedArrayTexture)&&(xe=!0);const Ve=ve.get(w).__webglFramebuffer;w.isWebGLCubeRenderTarget?(Array.isArray(Ve[z])?H=Ve[z][j]:H=Ve[z],re=!0):w.samples>0&&He.useMultisampledRTT(w)===!1?H=ve.get(w).__webglMultisampledFramebuffer:Array.isArray(Ve)?H=Ve[j]:H=Ve,R.copy(w.viewport),N.copy(w.scissor),U=w.scissorTest}else R.copy(W).multiplyScalar(X).floor(),N.copy(ue).multiplyScalar(X).floor(),U=Ce;if(j!==0&&(H=Vu),pe.bindFramebuffer(A.FRAMEBUFFER,H)&&Y&&pe.drawBuffers(w,H),pe.viewport(R),pe.scissor(N),pe.setScissorTest(U),re){const Ee=ve.get(w.texture);A.framebufferTexture2D(A.FRAMEBUFFER,A.COLOR_ATTACHMENT0,A.TEXTURE_CUBE_MAP_POSITIVE_X+z,Ee.__webglTexture,j)}else if(xe){const Ee=z;for(let Be=0;Be<w.textures.length;Be++){const Ve=ve.get(w.textures[Be]);A.framebufferTextureLayer(A.FRAMEBUFFER,A.COLOR_ATTACHMENT0+Be,Ve.__webglTexture,j,Ee)}}else if(w!==null&&j!==0){const Ee=ve.get(w.texture);A.framebufferTexture2D(A.FRAMEBUFFER,A.COLOR_ATTACHMENT0,A.TEXTURE_2D,Ee.__webglTexture,j)}b=-1},this.readRenderTargetPixels=function(w,z,j,Y,H,re,xe,Re=0){if(!(w&&w.isWebGLRenderTarget)){console.error("THREE.WebGLRenderer.readRenderTargetPixels: renderTarget is not THREE.WebGLRenderTarget.");return}let Ee=ve.get(w).__webglFramebuffer;if(w.isWebGLCubeRenderTarget&&xe!==void 0&&(Ee=Ee[xe]),Ee){pe.bindFramebuffer(A.FRAMEBUFFER,Ee);try{const Be=w.textures[Re],Ve=Be.format,Ne=Be.type;if(!be.textureFormatReadable(Ve)){console.error("THREE.WebGLRenderer.readRenderTargetPixels: renderTarget is not in RGBA or implementation defined format.");return}if(!be.textureTypeReadable(Ne)){console.error("THREE.WebGLRenderer.readRenderTargetPixels: renderTarget is not in UnsignedByteType or implementation defined type.");return}z>=0&&z<=w.width-Y&&j>=0&&j<=w.height-H&&(w.textures.length>1&&A.readBuffer(A.COLOR_ATTACHMENT0+Re),A.readPixels(z,j,Y,H,Ie.convert(Ve),Ie.convert(Ne),re))}finally{const Be=O!==null?ve.get(O).__webglFramebuffer:null;pe.bindFramebuffer(A.FRAMEBUFFER,Be)}}},this.readRenderTargetPixelsAsync=async function(w,z,j,Y,H,re,xe,Re=0){if(!(w&&w.isWebGLRenderTarget))throw new Error("THREE.WebGLRenderer.readRenderTargetPixels: renderTarget is not THREE.WebGLRenderTarget.");let Ee=ve.get(w).__webglFramebuffer;if(w.isWebGLCubeRenderTarget&&xe!==void 0&&(Ee=Ee[xe]),Ee)if(z>=0&&z<=w.width-Y&&j>=0&&j<=w.height-H){pe.bindFramebuffer(A.FRAMEBUFFER,Ee);const Be=w.textures[Re],Ve=Be.format,Ne=Be.type;if(!be.textureFormatReadable(Ve))throw new Error("THREE.WebGLRenderer.readRenderTargetPixelsAsync: renderTarget is not in RGBA or implementation defined format.");if(!be.textureTypeReadable(Ne))throw new Error("THREE.WebGLRenderer.readRenderTargetPixelsAsync: renderTarget is not in UnsignedByteType or implementation defined type.");const et=A.createBuffer();A.bindBuffer(A.PIXEL_PACK_BUFFER,et),A.bufferData(A.PIXEL_PACK_BUFFER,re.byteLength,A.STREAM_READ),w.textures.length>1&&A.readBuffer(A.COLOR_ATTACHMENT0+Re),A.readPixels(z,j,Y,H,Ie.convert(Ve),Ie.convert(Ne),0);const ot=O!==null?ve.get(O).__webglFramebuffer:null;pe.bindFramebuffer(A.FRAMEBUFFER,ot);const Mt=A.fenceSync(A.SYNC_GPU_COMMANDS_COMPLETE,0);return A.flush(),await uf(A,Mt,4),A.bindBuffer(A.PIXEL_PACK_BUFFER,et),A.getBufferSubData(A.PIXEL_PACK_BUFFER,0,re),A.deleteBuffer(et),A.deleteSync(Mt),re}else throw new Error("THREE.WebGLRenderer.readRenderTargetPixelsAsync: requested read bounds are out of range.")},this.copyFramebufferToTexture=function(w,z=null,j=0){const Y=Math.pow(2,-j),H=Math.floor(w.image.width*Y),re=Math.floor(w.image.height*Y),xe=z!==null?z.x:0,Re=z!==null?z.y:0;He.setTexture2D(w,0),A.copyTexSubImage2D(A.TEXTURE_2D,j,0,0,xe,Re,H,re),pe.unbindTexture()};const Gu=A.createFramebuffer(),$u=A.createFramebuffer();this.copyTextureToTexture=function(w,z,j=null,Y=null,H=0,re=null){re===null&&(H!==0?(Fs("WebGLRenderer: copyTextureToTexture function signature has changed to support src and dst mipmap levels."),re=H,H=0):re=0);let xe,Re,Ee,Be,Ve,Ne,et,ot,Mt;const mt=w.isCompressedTexture?w.mipmaps[re]:w.image;if(j!==null)xe=j.max.x-j.min.x,Re=j.max.y-j.min.y,Ee=j.isBox3?j.max.z-j.min.z:1,Be=j.min.x,Ve=j.min.y,Ne=j.isBox3?j.min.z:0;else{const ln=Math.pow(2,-H);xe=Math.floor(mt.width*ln),Re=Math.floor(mt.height*ln),w.isDataArrayTexture?Ee=mt.depth:w.isData3DTexture?Ee=Math.floor(mt.depth*ln):Ee=1,Be=0,Ve=0,Ne=0}Y!==null?(et=Y.x,ot=Y.y,Mt=Y.z):(et=0,ot=0,Mt=0);const ht=Ie.convert(z.format),Fe=Ie.convert(z.type);let yt;z.isData3DTexture?(He.setTexture3D(z,0),yt=A.TEXTURE_3D):z.isDataArrayTexture||z.isCompressedArrayTexture?(He.setTexture2DArray(z,0),yt=A.TEXTURE_2D_ARRAY):(He.setTexture2D(z,0),yt=A.TEXTURE_2D),A.pixelStorei(A.UNPACK_FLIP_Y_WEBGL,z.flipY),A.pixelStorei(A.UNPACK_PREMULTIPLY_ALPHA_WEBGL,z.premultiplyAlpha),A.pixelStorei(A.UNPACK_ALIGNMENT,z.unpackAlignment);const it=A.getParameter(A.UNPACK_ROW_LENGTH),Qt=A.getParameter(A.UNPACK_IMAGE_HEIGHT),Ii=A.getParameter(A.UNPACK_SKIP_PIXELS),en=A.getParameter(A.UNPACK_SKIP_ROWS),ds=A.getParameter(A.UNPACK_SKIP_IMAGES);A.pixelStorei(A.UNPACK_ROW_LENGTH,mt.width),A.pixelStorei(A.UNPACK_IMAGE_HEIGHT,mt.height),A.pixelStorei(A.UNPACK_SKIP_PIXELS,Be),A.pixelStorei(A.UNPACK_SKIP_ROWS,Ve),A.pixelStorei(A.UNPACK_SKIP_IMAGES,Ne);const wt=w.isDataArrayTexture||w.isData3DTexture,on=z.isDataArrayTexture||z.isData3DTexture;if(w.isDepthTexture){const ln=ve.get(w),Gt=ve.get(z),Xt=ve.get(ln.__renderTarget),la=ve.get(Gt.__renderTarget);pe.bindFramebuffer(A.READ_FRAMEBUFFER,Xt.__webglFramebuffer),pe.bindFramebuffer(A.DRAW_FRAMEBUFFER,la.__webglFramebuffer);for(let di=0;di<Ee;di++)wt&&(A.framebufferTextureLayer(A.READ_FRAMEBUFFER,A.COLOR_ATTACHMENT0,ve.get(w).__webglTexture,H,Ne+di),A.framebufferTextureLayer(A.DRAW_FRAMEBUFFER,A.COLOR_ATTACHMENT0,ve.get(z).__webglTexture,re,Mt+di)),A.blitFramebuffer(Be,Ve,xe,Re,et,ot,xe,Re,A.DEPTH_BUFFER_BIT,A.NEAREST);pe.bindFramebuffer(A.READ_FRAMEBUFFER,null),pe.bindFramebuffer(A.DRAW_FRAMEBUFFER,null)}else if(H!==0||w.isRenderTargetTexture||ve.has(w)){const ln=ve.get(w),Gt=ve.get(z);pe.bindFramebuffer(A.READ_FRAMEBUFFER,Gu),pe.bindFramebuffer(A.DRAW_FRAMEBUFFER,$u);for(let Xt=0;Xt<Ee;Xt++)wt?A.framebufferTextureLayer(A.READ_FRAMEBUFFER,A.COLOR_ATTACHMENT0,ln.__webglTexture,H,Ne+Xt):A.framebufferTexture2D(A.READ_FRAMEBUFFER,A.COLOR_ATTACHMENT0,A.TEXTURE_2D,ln.__webglTexture,H),on?A.framebufferTextureLayer(A.DRAW_FRAMEBUFFER,A.COLOR_ATTACHMENT0,Gt.__webglTexture,re,Mt+Xt):A.framebufferTexture2D(A.DRAW_FRAMEBUFFER,A.COLOR_ATTACHMENT0,A.TEXTURE_2D,Gt.__webglTexture,re),H!==0?A.blitFramebuffer(Be,Ve,xe,Re,et,ot,xe,Re,A.COLOR_BUFFER_BIT,A.NEAREST):on?A.copyTexSubImage3D(yt,re,et,ot,Mt+Xt,Be,Ve,xe,Re):A.copyTexSubImage2D(yt,re,et,ot,Be,Ve,xe,Re);pe.bindFramebuffer(A.READ_FRAMEBUFFER,null),pe.bindFramebuffer(A.DRAW_FRAMEBUFFER,null)}else on?w.isDataTexture||w.isData3DTexture?A.texSubImage3D(yt,re,et,ot,Mt,xe,Re,Ee,ht,Fe,mt.data):z.isCompressedArrayTexture?A.compressedTexSubImage3D(yt,re,et,ot,Mt,xe,Re,Ee,ht,mt.data):A.texSubImage3D(yt,re,et,ot,Mt,xe,Re,Ee,ht,Fe,mt):w.isDataTexture?A.texSubImage2D(A.TEXTURE_2D,re,et,ot,xe,Re,ht,Fe,mt.data):w.isCompressedTexture?A.compressedTexSubImage2D(A.TEXTURE_2D,re,et,ot,mt.width,mt.height,ht,mt.data):A.texSubImage2D(A.TEXTURE_2D,re,et,ot,xe,Re,ht,Fe,mt);A.pixelStorei(A.UNPACK_ROW_LENGTH,it),A.pixelStorei(A.UNPACK_IMAGE_HEIGHT,Qt),A.pixelStorei(A.UNPACK_SKIP_PIXELS,Ii),A.pixelStorei(A.UNPACK_SKIP_ROWS,en),A.pixelStorei(A.UNPACK_SKIP_IMAGES,ds),re===0&&z.generateMipmaps&&A.generateMipmap(yt),pe.unbindTexture()},this.initRenderTarget=function(w){ve.get(w).__webglFramebuffer===void 0&&He.setupRenderTarget(w)},this.initTexture=function(w){w.isCubeTexture?He.setTextureCube(w,0):w.isData3DTexture?He.setTexture3D(w,0):w.isDataArrayTexture||w.isCompressedArrayTexture?He.setTexture2DArray(w,0):He.setTexture2D(w,0),pe.unbindTexture()},this.resetState=function(){C=0,D=0,O=null,pe.reset(),_e.reset()},typeof __THREE_DEVTOOLS__<"u"&&__THREE_DEVTOOLS__.dispatchEvent(new CustomEvent("observe",{detail:this}))}get coordinateSystem(){return En}get outputColorSpace(){return this._outputColorSpace}set outputColorSpace(e){this._outputColorSpace=e;const t=this.getContext();t.drawingBufferColorSpace=st._getDrawingBufferColorSpace(e),t.unpackColorSpace=st._getUnpackColorSpace()}}function Wr(i){return new Hf({color:new Ke(i)})}function Ft(i,e,t,n){const s=new I(...i),r=new I(...e).sub(s),a=new kt(new ea(t,t,r.length(),18),Wr(n));return a.position.copy(s).addScaledVector(r,.5),a.quaternion.setFromUnitVectors(new I(0,1,0),r.normalize()),a}function ai(i){i.traverse(e=>{if(e instanceof kt||e instanceof cs||e instanceof mu){e.geometry.dispose();for(const t of[e.material].flat())t.dispose()}}),i.clear()}class U0{constructor(e){this.stage=e,e.room.add(this.fixed,this.carried,this.probe),e.device.add(this.onDevice)}fixed=new qt;carried=new qt;onDevice=new qt;probe=new qt;built=null;angles=[0,0,0];mount=null;values=[];whose="";get stand(){return this.built}clear(){this.built=null;for(const e of[this.fixed,this.carried,this.onDevice,this.probe])ai(e);this.stage.clearLabels(this.stage.room),this.stage.clearLabels(this.probe),this.mount?.leave(),this.mount=null,this.stage.eye=null,this.stage.moves=null,this.values=[],this.angles=[0,0,0],this.stage.ask()}get geometry(){return this.built?.geometry??"roll-over-azimuth"}build(e,t=!1){if(!(this.built&&this.key(e)===this.key(this.built)&&!t)){this.built=e;for(const s of[this.fixed,this.carried,this.onDevice,this.probe])ai(s);if(this.stage.clearLabels(this.stage.room),this.mount?.leave(),this.mount=e.mount?new lv(this.stage,this.fixed,this.probe,e.mount,e.range_m):null,this.stage.upright(e.mount?.up??[0,1,0],this.mount?.needs??1),this.stage.eye=this.mount&&(()=>this.probe.position.clone()),this.mount){this.addDevice(e),this.addProbe(e),this.pose(this.values);return}this.probe.rotation.set(0,0,0),this.stage.device.position.set(0,0,0),this.stacked(e),this.addDevice(e),this.addProbe(e),this.turn(this.angles[0],this.angles[1],this.angles[2])}}key(e){const t=e.mount&&[e.mount.joints,e.mount.solids,e.mount.up];return JSON.stringify([e.geometry,e.range_m,e.size_mm,e.offset_mm,e.ports,t??null])}stacked(e){const t=rt(),n=t.quiet,s=new yu(2.4,12,t.grid,t.grid);s.position.set(0,-.68,.4),this.fixed.add(s),e.geometry==="roll-over-azimuth"?(this.carried.add(Ft([0,-.66,0],[0,-.58,0],.14,n),Ft([0,-.62,-.02],[0,-.62,-.6],.03,n),Ft([0,-.62,-.58],[0,0,-.58],.03,n),Ft([0,0,-.64],[0,0,-.5],.05,n)),this.onDevice.add(Ft([0,0,-.5],[0,0,-.05],.022,t.co))):e.geometry==="azimuth-over-elevation"?(this.fixed.add(Ft([.62,-.68,0],[.62,0,0],.028,n),Ft([-.62,-.68,0],[-.62,0,0],.028,n)),this.carried.add(Ft([-.62,0,0],[-.55,-.54,0],.022,n),Ft([.62,0,0],[.55,-.54,0],.022,n),Ft([-.55,-.54,0],[.55,-.54,0],.028,n)),this.onDevice.add(Ft([0,-.54,0],[0,-.05,0],.022,t.co))):(this.carried.add(Ft([0,-.66,0],[0,-.58,0],.14,n),Ft([-.56,-.6,0],[.56,-.6,0],.028,n),Ft([-.56,-.6,0],[-.56,0,0],.028,n),Ft([.56,-.6,0],[.56,0,0],.028,n)),this.onDevice.add(Ft([-.56,0,0],[.56,0,0],.016,t.co)))}addDevice(e){const t=.001/e.range_m,n=Math.max(1,.14/(Math.max(...e.size_mm)*t)),s=e.size_mm.map(a=>Math.max(.012,a*t*n)),r=new kt(new Li(s[0],s[1],s[2]),Wr(rt().other));r.position.set(e.offset_mm[0]*t,e.offset_mm[1]*t,e.offset_mm[2]*t),this.onDevice.add(r),this.enlarged=n}enlarged=1;addProbe(e){const t=rt(),n=new kt(new ta(.045,.13,24,1,!0),Wr(t.ink));n.rotation.x=Math.PI/2,n.position.z=.065,this.probe.add(n,new ks(new I(1,0,0),new I(0,0,-.02),.16,t.cross,.045,.03)),e.ports===2&&this.probe.add(new ks(new I(0,1,0),new I(0,0,-.02),.16,t.co,.045,.03)),this.probe.position.set(0,0,1),this.stage.clearLabels(this.probe);const s=this.mount?-1:0;this.mount?this.stage.label("probe",[-.15,0,.05],this.probe,"quiet",!1):this.stage.label("probe",[0,.13,1.02],this.stage.room,"quiet",!1);const r=new cs(new At().setFromPoints([new I(0,0,s+N0),new I(0,0,s+.96)]),new ci({color:t.quiet}));(this.mount?this.probe:this.fixed).add(r)}rest(){this.stage.moves=null,this.values=[],this.mount?this.pose([]):this.turn(0,0,0)}pose(e){this.values=[...e],this.mount?.pose(e),this.stage.ask()}turn(e,t,n){if(this.angles=[e,t,n],this.mount)return;const s=this.stage.device.rotation,r=this.carried.rotation;this.geometry==="roll-over-azimuth"?(s.set(0,-e*nt,-t*nt,"YXZ"),r.set(0,-e*nt,0)):this.geometry==="azimuth-over-elevation"?(s.set(t*nt,-e*nt,0,"XYZ"),r.set(t*nt,0,0)):(s.set(t*nt,-e*nt,0,"YXZ"),r.set(0,-e*nt,0)),this.probe.rotation.z=n*nt,this.stage.ask()}named(e,t){const n=s=>e[t.indexOf(s)]??0;return[n("azimuth"),n(this.geometry==="roll-over-azimuth"?"roll":"elevation"),n("probe")]}turnTo(e,t,n=[]){this.stage.moves=null,this.turn(...this.named(e,t)),this.pose(n)}follow(e,t,n=[]){const s=this.mount!==null,r=s?n:this.named(e,t),a=s?this.values:this.angles;if(r.every((c,l)=>Math.abs(c-(a[l]??0))<.001))return;if(s||(this.values=n),matchMedia("(prefers-reduced-motion: reduce)").matches||document.hidden){this.turnTo(e,t,n);return}let o=0;this.stage.moves=c=>{o||=c;const l=Math.min(1,(c-o)/F0),h=r.map((u,d)=>(a[d]??0)+(u-(a[d]??0))*l);return s?this.pose(h):this.turn(...h),l<1},this.stage.ask()}}const N0=.06,F0=85,ah={type:"change"},Cl={type:"start"},Tu={type:"end"},Er=new $s,oh=new Jn,O0=Math.cos(70*cf.DEG2RAD),Pt=new I,Yt=2*Math.PI,ct={NONE:-1,ROTATE:0,DOLLY:1,PAN:2,TOUCH_ROTATE:3,TOUCH_PAN:4,TOUCH_DOLLY_PAN:5,TOUCH_DOLLY_ROTATE:6},ja=1e-6;class k0 extends Kf{constructor(e,t=null){super(e,t),this.state=ct.NONE,this.target=new I,this.cursor=new I,this.minDistance=0,this.maxDistance=1/0,this.minZoom=0,this.maxZoom=1/0,this.minTargetRadius=0,this.maxTargetRadius=1/0,this.minPolarAngle=0,this.maxPolarAngle=Math.PI,this.minAzimuthAngle=-1/0,this.maxAzimuthAngle=1/0,this.enableDamping=!1,this.dampingFactor=.05,this.enableZoom=!0,this.zoomSpeed=1,this.enableRotate=!0,this.rotateSpeed=1,this.keyRotateSpeed=1,this.enablePan=!0,this.panSpeed=1,this.screenSpacePanning=!0,this.keyPanSpeed=7,this.zoomToCursor=!1,this.autoRotate=!1,this.autoRotateSpeed=2,this.keys={LEFT:"ArrowLeft",UP:"ArrowUp",RIGHT:"ArrowRight",BOTTOM:"ArrowDown"},this.mouseButtons={LEFT:Qi.ROTATE,MIDDLE:Qi.DOLLY,RIGHT:Qi.PAN},this.touches={ONE:Ki.ROTATE,TWO:Ki.DOLLY_PAN},this.target0=this.target.clone(),this.position0=this.object.position.clone(),this.zoom0=this.object.zoom,this._domElementKeyEvents=null,this._lastPosition=new I,this._lastQuaternion=new Ri,this._lastTargetPosition=new I,this._quat=new Ri().setFromUnitVectors(e.up,new I(0,1,0)),this._quatInverse=this._quat.clone().invert(),this._spherical=new Ic,this._sphericalDelta=new Ic,this._scale=1,this._panOffset=new I,this._rotateStart=new We,this._rotateEnd=new We,this._rotateDelta=new We,this._panStart=new We,this._panEnd=new We,this._panDelta=new We,this._dollyStart=new We,this._dollyEnd=new We,this._dollyDelta=new We,this._dollyDirection=new I,this._mouse=new We,this._performCursorZoom=!1,this._pointers=[],this._pointerPositions={},this._controlActive=!1,this._onPointerMove=z0.bind(this),this._onPointerDown=B0.bind(this),this._onPointerUp=H0.bind(this),this._onContextMenu=j0.bind(this),this._onMouseWheel=$0.bind(this),this._onKeyDown=W0.bind(this),this._onTouchStart=q0.bind(this),this._onTouchMove=X0.bind(this),this._onMouseDown=V0.bind(this),this._onMouseMove=G0.bind(this),this._interceptControlDown=Y0.bind(this),this._interceptControlUp=K0.bind(this),this.domElement!==null&&this.connect(this.domElement),this.update()}connect(e){super.connect(e),this.domElement.addEventListener("pointerdown",this._onPointerDown),this.domElement.addEventListener("pointercancel",this._onPointerUp),this.domElement.addEventListener("contextmenu",this._onContextMenu),this.domElement.addEventListener("wheel",this._onMouseWheel,{passive:!1}),this.domElement.getRootNode().addEventListener("keydown",this._interceptControlDown,{passive:!0,capture:!0}),this.domElement.style.touchAction="none"}disconnect(){this.domElement.removeEventListener("pointerdown",this._onPointerDown),this.domElement.removeEventListener("pointermove",this._onPointerMove),this.domElement.removeEventListener("pointerup",this._onPointerUp),this.domElement.removeEventListener("pointercancel",this._onPointerUp),this.domElement.removeEventListener("wheel",this._onMouseWheel),this.domElement.removeEventListener("contextmenu",this._onContextMenu),this.stopListenToKeyEvents(),this.domElement.getRootNode().removeEventListener("keydown",this._interceptControlDown,{capture:!0}),this.domElement.style.touchAction="auto"}dispose(){this.disconnect()}getPolarAngle(){return this._spherical.phi}getAzimuthalAngle(){return this._spherical.theta}getDistance(){return this.object.position.distanceTo(this.target)}listenToKeyEvents(e){e.addEventListener("keydown",this._onKeyDown),this._domElementKeyEvents=e}stopListenToKeyEvents(){this._domElementKeyEvents!==null&&(this._domElementKeyEvents.removeEventListener("keydown",this._onKeyDown),this._domElementKeyEvents=null)}saveState(){this.target0.copy(this.target),this.position0.copy(this.object.position),this.zoom0=this.object.zoom}reset(){this.target.copy(this.target0),this.object.position.copy(this.position0),this.object.zoom=this.zoom0,this.object.updateProjectionMatrix(),this.dispatchEvent(ah),this.update(),this.state=ct.NONE}update(e=null){const t=this.object.position;Pt.copy(t).sub(this.target),Pt.applyQuaternion(this._quat),this._spherical.setFromVector3(Pt),this.autoRotate&&this.state===ct.NONE&&this._rotateLeft(this._getAutoRotationAngle(e)),this.enableDamping?(this._spherical.theta+=this._sphericalDelta.theta*this.dampingFactor,this._spherical.phi+=this._sphericalDelta.phi*this.dampingFactor):(this._spherical.theta+=this._sphericalDelta.theta,this._spherical.phi+=this._sphericalDelta.phi);let n=this.minAzimuthAngle,s=this.maxAzimuthAngle;isFinite(n)&&isFinite(s)&&(n<-Math.PI?n+=Yt:n>Math.PI&&(n-=Yt),s<-Math.PI?s+=Yt:s>Math.PI&&(s-=Yt),n<=s?this._spherical.theta=Math.max(n,Math.min(s,this._spherical.theta)):this._spherical.theta=this._spherical.theta>(n+s)/2?Math.max(n,this._spherical.theta):Math.min(s,this._spherical.theta)),this._spherical.phi=Math.max(this.minPolarAngle,Math.min(this.maxPolarAngle,this._spherical.phi)),this._spherical.makeSafe(),this.enableDamping===!0?this.target.addScaledVector(this._panOffset,this.dampingFactor):this.target.add(this._panOffset),this.target.sub(this.cursor),this.target.clampLength(this.minTargetRadius,this.maxTargetRadius),this.target.add(this.cursor);let r=!1;if(this.zoomToCursor&&this._performCursorZoom||this.object.isOrthographicCamera)this._spherical.radius=this._clampDistance(this._spherical.radius);else{const a=this._spherical.radius;this._spherical.radius=this._clampDistance(this._spherical.radius*this._scale),r=a!=this._spherical.radius}if(Pt.setFromSpherical(this._spherical),Pt.applyQuaternion(this._quatInverse),t.copy(this.target).add(Pt),this.object.lookAt(this.target),this.enableDamping===!0?(this._sphericalDelta.theta*=1-this.dampingFactor,this._sphericalDelta.phi*=1-this.dampingFactor,this._panOffset.multiplyScalar(1-this.dampingFactor)):(this._sphericalDelta.set(0,0,0),this._panOffset.set(0,0,0)),this.zoomToCursor&&this._performCursorZoom){let a=null;if(this.object.isPerspectiveCamera){const o=Pt.length();a=this._clampDistance(o*this._scale);const c=o-a;this.object.position.addScaledVector(this._dollyDirection,c),this.object.updateMatrixWorld(),r=!!c}else if(this.object.isOrthographicCamera){const o=new I(this._mouse.x,this._mouse.y,0);o.unproject(this.object);const c=this.object.zoom;this.object.zoom=Math.max(this.minZoom,Math.min(this.maxZoom,this.object.zoom/this._scale)),this.object.updateProjectionMatrix(),r=c!==this.object.zoom;const l=new I(this._mouse.x,this._mouse.y,0);l.unproject(this.object),this.object.position.sub(l).add(o),this.object.updateMatrixWorld(),a=Pt.length()}else console.warn("WARNING: OrbitControls.js encountered an unknown camera type - zoom to cursor disabled."),this.zoomToCursor=!1;a!==null&&(this.screenSpacePanning?this.target.set(0,0,-1).transformDirection(this.object.matrix).multiplyScalar(a).add(this.object.position):(Er.origin.copy(this.object.position),Er.direction.set(0,0,-1).transformDirection(this.object.matrix),Math.abs(this.object.up.dot(Er.direction))<O0?this.object.lookAt(this.target):(oh.setFromNormalAndCoplanarPoint(this.object.up,this.target),Er.intersectPlane(oh,this.target))))}else if(this.object.isOrthographicCamera){const a=this.object.zoom;this.object.zoom=Math.max(this.minZoom,Math.min(this.maxZoom,this.object.zoom/this._scale)),a!==this.object.zoom&&(this.object.updateProjectionMatrix(),r=!0)}return this._scale=1,this._performCursorZoom=!1,r||this._lastPosition.distanceToSquared(this.object.position)>ja||8*(1-this._lastQuaternion.dot(this.object.quaternion))>ja||this._lastTargetPosition.distanceToSquared(this.target)>ja?(this.dispatchEvent(ah),this._lastPosition.copy(this.object.position),this._lastQuaternion.copy(this.object.quaternion),this._lastTargetPosition.copy(this.target),!0):!1}_getAutoRotationAngle(e){return e!==null?Yt/60*this.autoRotateSpeed*e:Yt/60/60*this.autoRotateSpeed}_getZoomScale(e){const t=Math.abs(e*.01);return Math.pow(.95,this.zoomSpeed*t)}_rotateLeft(e){this._sphericalDelta.theta-=e}_rotateUp(e){this._sphericalDelta.phi-=e}_panLeft(e,t){Pt.setFromMatrixColumn(t,0),Pt.multiplyScalar(-e),this._panOffset.add(Pt)}_panUp(e,t){this.screenSpacePanning===!0?Pt.setFromMatrixColumn(t,1):(Pt.setFromMatrixColumn(t,0),Pt.crossVectors(this.object.up,Pt)),Pt.multiplyScalar(e),this._panOffset.add(Pt)}_pan(e,t){const n=this.domElement;if(this.object.isPerspectiveCamera){const s=this.object.position;Pt.copy(s).sub(this.target);let r=Pt.length();r*=Math.tan(this.object.fov/2*Math.PI/180),this._panLeft(2*e*r/n.clientHeight,this.object.matrix),this._panUp(2*t*r/n.clientHeight,this.object.matrix)}else this.object.isOrthographicCamera?(this._panLeft(e*(this.object.right-this.object.left)/this.object.zoom/n.clientWidth,this.object.matrix),this._panUp(t*(this.object.top-this.object.bottom)/this.object.zoom/n.clientHeight,this.object.matrix)):(console.warn("WARNING: OrbitControls.js encountered an unknown camera type - pan disabled."),this.enablePan=!1)}_dollyOut(e){this.object.isPerspectiveCamera||this.object.isOrthographicCamera?this._scale/=e:(console.warn("WARNING: OrbitControls.js encountered an unknown camera type - dolly/zoom disabled."),this.enableZoom=!1)}_dollyIn(e){this.object.isPerspectiveCamera||this.object.isOrthographicCamera?this._scale*=e:(console.warn("WARNING: OrbitControls.js encountered an unknown camera type - dolly/zoom disabled."),this.enableZoom=!1)}_updateZoomParameters(e,t){if(!this.zoomToCursor)return;this._performCursorZoom=!0;const n=this.domElement.getBoundingClientRect(),s=e-n.left,r=t-n.top,a=n.width,o=n.height;this._mouse.x=s/a*2-1,this._mouse.y=-(r/o)*2+1,this._dollyDirection.set(this._mouse.x,this._mouse.y,1).unproject(this.object).sub(this.object.position).normalize()}_clampDistance(e){return Math.max(this.minDistance,Math.min(this.maxDistance,e))}_handleMouseDownRotate(e){this._rotateStart.set(e.clientX,e.clientY)}_handleMouseDownDolly(e){this._updateZoomParameters(e.clientX,e.clientX),this._dollyStart.set(e.clientX,e.clientY)}_handleMouseDownPan(e){this._panStart.set(e.clientX,e.clientY)}_handleMouseMoveRotate(e){this._rotateEnd.set(e.clientX,e.clientY),this._rotateDelta.subVectors(this._rotateEnd,this._rotateStart).multiplyScalar(this.rotateSpeed);const t=this.domElement;this._rotateLeft(Yt*this._rotateDelta.x/t.clientHeight),this._rotateUp(Yt*this._rotateDelta.y/t.clientHeight),this._rotateStart.copy(this._rotateEnd),this.update()}_handleMouseMoveDolly(e){this._dollyEnd.set(e.clientX,e.clientY),this._dollyDelta.subVectors(this._dollyEnd,this._dollyStart),this._dollyDelta.y>0?this._dollyOut(this._getZoomScale(this._dollyDelta.y)):this._dollyDelta.y<0&&this._dollyIn(this._getZoomScale(this._dollyDelta.y)),this._dollyStart.copy(this._dollyEnd),this.update()}_handleMouseMovePan(e){this._panEnd.set(e.clientX,e.clientY),this._panDelta.subVectors(this._panEnd,this._panStart).multiplyScalar(this.panSpeed),this._pan(this._panDelta.x,this._panDelta.y),this._panStart.copy(this._panEnd),this.update()}_handleMouseWheel(e){this._updateZoomParameters(e.clientX,e.clientY),e.deltaY<0?this._dollyIn(this._getZoomScale(e.deltaY)):e.deltaY>0&&this._dollyOut(this._getZoomScale(e.deltaY)),this.update()}_handleKeyDown(e){let t=!1;switch(e.code){case this.keys.UP:e.ctrlKey||e.metaKey||e.shiftKey?this.enableRotate&&this._rotateUp(Yt*this.keyRotateSpeed/this.domElement.clientHeight):this.enablePan&&this._pan(0,this.keyPanSpeed),t=!0;break;case this.keys.BOTTOM:e.ctrlKey||e.metaKey||e.shiftKey?this.enableRotate&&this._rotateUp(-Yt*this.keyRotateSpeed/this.domElement.clientHeight):this.enablePan&&this._pan(0,-this.keyPanSpeed),t=!0;break;case this.keys.LEFT:e.ctrlKey||e.metaKey||e.shiftKey?this.enableRotate&&this._rotateLeft(Yt*this.keyRotateSpeed/this.domElement.clientHeight):this.enablePan&&this._pan(this.keyPanSpeed,0),t=!0;break;case this.keys.RIGHT:e.ctrlKey||e.metaKey||e.shiftKey?this.enableRotate&&this._rotateLeft(-Yt*this.keyRotateSpeed/this.domElement.clientHeight):this.enablePan&&this._pan(-this.keyPanSpeed,0),t=!0;break}t&&(e.preventDefault(),this.update())}_handleTouchStartRotate(e){if(this._pointers.length===1)this._rotateStart.set(e.pageX,e.pageY);else{const t=this._getSecondPointerPosition(e),n=.5*(e.pageX+t.x),s=.5*(e.pageY+t.y);this._rotateStart.set(n,s)}}_handleTouchStartPan(e){if(this._pointers.length===1)this._panStart.set(e.pageX,e.pageY);else{const t=this._getSecondPointerPosition(e),n=.5*(e.pageX+t.x),s=.5*(e.pageY+t.y);this._panStart.set(n,s)}}_handleTouchStartDolly(e){const t=this._getSecondPointerPosition(e),n=e.pageX-t.x,s=e.pageY-t.y,r=Math.sqrt(n*n+s*s);this._dollyStart.set(0,r)}_handleTouchStartDollyPan(e){this.enableZoom&&this._handleTouchStartDolly(e),this.enablePan&&this._handleTouchStartPan(e)}_handleTouchStartDollyRotate(e){this.enableZoom&&this._handleTouchStartDolly(e),this.enableRotate&&this._handleTouchStartRotate(e)}_handleTouchMoveRotate(e){if(this._pointers.length==1)this._rotateEnd.set(e.pageX,e.pageY);else{const n=this._getSecondPointerPosition(e),s=.5*(e.pageX+n.x),r=.5*(e.pageY+n.y);this._rotateEnd.set(s,r)}this._rotateDelta.subVectors(this._rotateEnd,this._rotateStart).multiplyScalar(this.rotateSpeed);const t=this.domElement;this._rotateLeft(Yt*this._rotateDelta.x/t.clientHeight),this._rotateUp(Yt*this._rotateDelta.y/t.clientHeight),this._rotateStart.copy(this._rotateEnd)}_handleTouchMovePan(e){if(this._pointers.length===1)this._panEnd.set(e.pageX,e.pageY);else{const t=this._getSecondPointerPosition(e),n=.5*(e.pageX+t.x),s=.5*(e.pageY+t.y);this._panEnd.set(n,s)}this._panDelta.subVectors(this._panEnd,this._panStart).multiplyScalar(this.panSpeed),this._pan(this._panDelta.x,this._panDelta.y),this._panStart.copy(this._panEnd)}_handleTouchMoveDolly(e){const t=this._getSecondPointerPosition(e),n=e.pageX-t.x,s=e.pageY-t.y,r=Math.sqrt(n*n+s*s);this._dollyEnd.set(0,r),this._dollyDelta.set(0,Math.pow(this._dollyEnd.y/this._dollyStart.y,this.zoomSpeed)),this._dollyOut(this._dollyDelta.y),this._dollyStart.copy(this._dollyEnd);const a=(e.pageX+t.x)*.5,o=(e.pageY+t.y)*.5;this._updateZoomParameters(a,o)}_handleTouchMoveDollyPan(e){this.enableZoom&&this._handleTouchMoveDolly(e),this.enablePan&&this._handleTouchMovePan(e)}_handleTouchMoveDollyRotate(e){this.enableZoom&&this._handleTouchMoveDolly(e),this.enableRotate&&this._handleTouchMoveRotate(e)}_addPointer(e){this._pointers.push(e.pointerId)}_removePointer(e){delete this._pointerPositions[e.pointerId];for(let t=0;t<this._pointers.length;t++)if(this._pointers[t]==e.pointerId){this._pointers.splice(t,1);return}}_isTrackingPointer(e){for(let t=0;t<this._pointers.length;t++)if(this._pointers[t]==e.pointerId)return!0;return!1}_trackPointer(e){let t=this._pointerPositions[e.pointerId];t===void 0&&(t=new We,this._pointerPositions[e.pointerId]=t),t.set(e.pageX,e.pageY)}_getSecondPointerPosition(e){const t=e.pointerId===this._pointers[0]?this._pointers[1]:this._pointers[0];return this._pointerPositions[t]}_customWheelEvent(e){const t=e.deltaMode,n={clientX:e.clientX,clientY:e.clientY,deltaY:e.deltaY};switch(t){case 1:n.deltaY*=16;break;case 2:n.deltaY*=100;break}return e.ctrlKey&&!this._controlActive&&(n.deltaY*=10),n}}function B0(i){this.enabled!==!1&&(this._pointers.length===0&&(this.domElement.setPointerCapture(i.pointerId),this.domElement.addEventListener("pointermove",this._onPointerMove),this.domElement.addEventListener("pointerup",this._onPointerUp)),!this._isTrackingPointer(i)&&(this._addPointer(i),i.pointerType==="touch"?this._onTouchStart(i):this._onMouseDown(i)))}function z0(i){this.enabled!==!1&&(i.pointerType==="touch"?this._onTouchMove(i):this._onMouseMove(i))}function H0(i){switch(this._removePointer(i),this._pointers.length){case 0:this.domElement.releasePointerCapture(i.pointerId),this.domElement.removeEventListener("pointermove",this._onPointerMove),this.domElement.removeEventListener("pointerup",this._onPointerUp),this.dispatchEvent(Tu),this.state=ct.NONE;break;case 1:const e=this._pointers[0],t=this._pointerPositions[e];this._onTouchStart({pointerId:e,pageX:t.x,pageY:t.y});break}}function V0(i){let e;switch(i.button){case 0:e=this.mouseButtons.LEFT;break;case 1:e=this.mouseButtons.MIDDLE;break;case 2:e=this.mouseButtons.RIGHT;break;default:e=-1}switch(e){case Qi.DOLLY:if(this.enableZoom===!1)return;this._handleMouseDownDolly(i),this.state=ct.DOLLY;break;case Qi.ROTATE:if(i.ctrlKey||i.metaKey||i.shiftKey){if(this.enablePan===!1)return;this._handleMouseDownPan(i),this.state=ct.PAN}else{if(this.enableRotate===!1)return;this._handleMouseDownRotate(i),this.state=ct.ROTATE}break;case Qi.PAN:if(i.ctrlKey||i.metaKey||i.shiftKey){if(this.enableRotate===!1)return;this._handleMouseDownRotate(i),this.state=ct.ROTATE}else{if(this.enablePan===!1)return;this._handleMouseDownPan(i),this.state=ct.PAN}break;default:this.state=ct.NONE}this.state!==ct.NONE&&this.dispatchEvent(Cl)}function G0(i){switch(this.state){case ct.ROTATE:if(this.enableRotate===!1)return;this._handleMouseMoveRotate(i);break;case ct.DOLLY:if(this.enableZoom===!1)return;this._handleMouseMoveDolly(i);break;case ct.PAN:if(this.enablePan===!1)return;this._handleMouseMovePan(i);break}}function $0(i){this.enabled===!1||this.enableZoom===!1||this.state!==ct.NONE||(i.preventDefault(),this.dispatchEvent(Cl),this._handleMouseWheel(this._customWheelEvent(i)),this.dispatchEvent(Tu))}function W0(i){this.enabled!==!1&&this._handleKeyDown(i)}function q0(i){switch(this._trackPointer(i),this._pointers.length){case 1:switch(this.touches.ONE){case Ki.ROTATE:if(this.enableRotate===!1)return;this._handleTouchStartRotate(i),this.state=ct.TOUCH_ROTATE;break;case Ki.PAN:if(this.enablePan===!1)return;this._handleTouchStartPan(i),this.state=ct.TOUCH_PAN;break;default:this.state=ct.NONE}break;case 2:switch(this.touches.TWO){case Ki.DOLLY_PAN:if(this.enableZoom===!1&&this.enablePan===!1)return;this._handleTouchStartDollyPan(i),this.state=ct.TOUCH_DOLLY_PAN;break;case Ki.DOLLY_ROTATE:if(this.enableZoom===!1&&this.enableRotate===!1)return;this._handleTouchStartDollyRotate(i),this.state=ct.TOUCH_DOLLY_ROTATE;break;default:this.state=ct.NONE}break;default:this.state=ct.NONE}this.state!==ct.NONE&&this.dispatchEvent(Cl)}function X0(i){switch(this._trackPointer(i),this.state){case ct.TOUCH_ROTATE:if(this.enableRotate===!1)return;this._handleTouchMoveRotate(i),this.update();break;case ct.TOUCH_PAN:if(this.enablePan===!1)return;this._handleTouchMovePan(i),this.update();break;case ct.TOUCH_DOLLY_PAN:if(this.enableZoom===!1&&this.enablePan===!1)return;this._handleTouchMoveDollyPan(i),this.update();break;case ct.TOUCH_DOLLY_ROTATE:if(this.enableZoom===!1&&this.enableRotate===!1)return;this._handleTouchMoveDollyRotate(i),this.update();break;default:this.state=ct.NONE}}function j0(i){this.enabled!==!1&&i.preventDefault()}function Y0(i){i.key==="Control"&&(this._controlActive=!0,this.domElement.getRootNode().addEventListener("keyup",this._interceptControlUp,{passive:!0,capture:!0}))}function K0(i){i.key==="Control"&&(this._controlActive=!1,this.domElement.getRootNode().removeEventListener("keyup",this._interceptControlUp,{passive:!0,capture:!0}))}function Pl(i){try{return localStorage.getItem(i)}catch{return null}}function el(i,e){try{localStorage.setItem(i,e)}catch{}}const rn=.5,lh=2,Z0=25e5,J0=180,Q0=.5,ch=36,ev=1.08,Ya=[["corner","from the corner",[1.6,1,2.05]],["probe","as the probe sees it",[.001,.12,2.3]],["side","from the side",[2.3,.15,.3]],["above","from above",[.001,2.4,.3]]],Au=1.5,hh=.22,tv=10.8;class nv{scene=new Ff;room=new qt;device=new qt;world=new qt;eye=null;back=1;canvasPlace=g("div",{class:"canvas"});labels=g("div",{class:"labels",attrs:{"aria-hidden":"true"}});readout=g("div",{class:"readout mono",attrs:{"aria-live":"off"}});caption=g("div",{class:"stage-caption"});colourBar=g("div",{class:"colour-bar"});presets=g("div",{class:"presets"});element;camera=new un(ch,4/3,.02,80);ok;software;hovered=null;picked=null;dragged=null;detail=null;drawn=0;hairlines=null;renderer=null;controls=null;asked=!1;marks=[];riding=!1;goal=null;resting=0;moves=null;constructor(){this.element=g("section",{class:"stage",attrs:{"aria-label":"chamber and sphere of directions"}},this.caption,g("div",{class:"view"},this.canvasPlace,this.labels,this.readout,this.colourBar),this.presets),this.scene.add(this.world),this.world.add(this.room),this.room.add(this.device),this.scene.add(new Xf(16777215,1.7));const e=new qf(16777215,1.8);e.position.set(1.5,3,2),this.scene.add(e);let t=!1;try{this.renderer=new I0({antialias:!1,alpha:!0,powerPreference:"low-power"});const n=this.renderer.getContext(),s=n.getExtension("WEBGL_debug_renderer_info");t=s?/swiftshader|llvmpipe|software/i.test(String(n.getParameter(s.UNMASKED_RENDERER_WEBGL))):!1;const r=this.renderer.domElement;r.setAttribute("role","img"),r.setAttribute("aria-label","chamber with positioner, device, probe and the sphere of directions; drag to turn"),this.canvasPlace.append(r),this.controls=new k0(this.camera,r),this.controls.enablePan=!1,this.controls.minDistance=.9,this.controls.maxDistance=5.4,this.controls.target.set(0,0,hh),this.controls.addEventListener("change",()=>this.ask()),this.controls.addEventListener("end",()=>el(this.cameraKey,JSON.stringify(this.camera.position.toArray()))),this.listen(r),r.addEventListener("webglcontextlost",a=>a.preventDefault()),r.addEventListener("webglcontextrestored",()=>this.ask())}catch{G(this.canvasPlace,g("p",{class:"quiet pad"},"This browser draws no 3D here (WebGL is off). Everything is on the page in numbers and maps as well."))}this.ok=this.renderer!==null,this.software=t,this.placeCamera(),new ResizeObserver(()=>this.ask()).observe(this.canvasPlace),G(this.presets,...Ya.map(([n,s,r])=>ce(s,()=>this.fly(this.seat(n,r)))))}get wide(){return this.back>1}get cameraKey(){return this.wide?this.back>Au?`camera-wide-${this.back.toFixed(1)}`:"camera-wide":"camera"}upright(e,t){this.world.quaternion.setFromUnitVectors(new I(...e),new I(0,1,0)),t!==this.back&&(this.back=t,this.goal=null,this.controls&&(this.controls.target.set(0,0,this.wide?0:hh),this.controls.maxDistance=5.4*t),this.placeCamera(),this.ask())}seat(e,t){if(!this.wide)return t;const n=new I(...t);return e==="probe"&&this.eye&&n.copy(this.world.localToWorld(this.eye())).setLength(n.length()),n.multiplyScalar(this.back).toArray()}placeCamera(){let e=this.seat(Ya[0][0],Ya[0][2]);try{const t=JSON.parse(Pl(this.cameraKey)??"null");Array.isArray(t)&&t.length===3&&t.every(n=>Number.isFinite(n))&&(e=t)}catch{}this.camera.position.set(...e),this.controls?.update()}fly(e){this.goal=new I(...e),matchMedia("(prefers-reduced-motion: reduce)").matches&&this.camera.position.copy(this.goal),el(this.cameraKey,JSON.stringify(e)),this.ask()}ride(e){this.riding=e,this.ask()}label(e,t,n,s="",r=!0,a){const o=g("span",{class:s},e);this.labels.append(o);const c=s==="ring"?"number":s==="joint"?"name":"fixed";this.marks.push({element:o,at:new I(...t),parent:n,hides:r,text:e,rank:c,letter:s.startsWith("letter"),of:a?new I(...a):null})}clearLabels(e){for(const t of this.marks)t.parent===e&&t.element.remove();this.marks=this.marks.filter(t=>t.parent!==e)}ask(){this.asked||!this.renderer||(this.asked=!0,requestAnimationFrame(e=>{this.asked=!1,this.render(e,!this.software)}),this.software&&(window.clearTimeout(this.resting),this.resting=window.setTimeout(()=>{this.asked||this.render(performance.now(),!0)},J0)))}ratio(e,t){return this.software?e?Math.max(1,Math.min(lh,Math.sqrt(Z0/t))):1:Math.max(lh,window.devicePixelRatio)}render(e,t){const n=this.canvasPlace.clientWidth,s=this.canvasPlace.clientHeight;if(!this.renderer||!n||!s)return;const r=this.renderer.getSize(new We),a=this.ratio(t,n*s);this.renderer.getPixelRatio()!==a&&this.renderer.setPixelRatio(a),this.hairlines&&(this.hairlines.opacity=Math.min(1,Q0*a)),(r.x!==n||r.y!==s)&&(this.renderer.setSize(n,s),this.camera.aspect=n/s,this.camera.fov=2*Math.atan(Math.tan(ch*Math.PI/360)*Math.max(1,ev/this.camera.aspect))*180/Math.PI,this.camera.updateProjectionMatrix()),this.goal&&(this.camera.position.lerp(this.goal,.3),this.camera.position.distanceTo(this.goal)<.01&&(this.goal=null),this.controls?.update(),this.ask()),this.moves?.(e)?this.ask():this.moves=null,this.room.quaternion.identity(),this.room.position.set(0,0,0),this.riding&&(this.room.quaternion.copy(this.device.quaternion).invert(),this.room.position.copy(this.device.position).negate().applyQuaternion(this.room.quaternion)),this.detail?.(t),this.renderer.render(this.scene,this.camera),this.place(n,s),this.drawn++}place(e,t){const n=this.device.getWorldPosition(new I),s=this.camera.position,r=new I,a=new I,o=s.clone().sub(n),c=[],l=tv*dn();for(const h of this.marks){r.copy(h.at),h.parent.localToWorld(r);const u=h.hides&&r.clone().sub(n).dot(o)<0;if(r.project(this.camera),h.element.hidden=u||r.z>1,h.element.hidden)continue;const d=h.letter?1.4*l:l,p=.6*d*h.text.length+4,_=h.of?Math.sign(r.x-h.parent.localToWorld(a.copy(h.of)).project(this.camera).x):0;c.push({mark:h,rank:h.rank,x:(r.x+1)/2*e+_*p/2,y:(1-r.y)/2*t,wide:p,high:1.25*d})}Xh(c).forEach((h,u)=>{const{mark:d,x:p,y:_}=c[u];d.element.hidden=h===null,h!==null&&(d.element.style.transform=`translate(${p.toFixed(1)}px, ${(_+h).toFixed(1)}px) translate(-50%, -50%)`)})}under(e){const t=this.canvasPlace.getBoundingClientRect(),n=new Yf;n.setFromCamera(new We((e.clientX-t.left)/t.width*2-1,1-(e.clientY-t.top)/t.height*2),this.camera);const s=this.device.getWorldPosition(new I),r=n.ray.intersectSphere(new ls(s,rn),new I);if(!r)return null;const a=this.device.worldToLocal(r).normalize();return[a.x,a.y,a.z]}listen(e){let t=[0,0],n=!1;e.addEventListener("pointerdown",s=>{t=[s.clientX,s.clientY],this.goal=null;const r=this.dragged?this.under(s):null;!r||!this.dragged||(n=!0,this.controls&&(this.controls.enabled=!1),e.setPointerCapture(s.pointerId),this.dragged(r))},{capture:!0}),e.addEventListener("pointermove",s=>{const r=s.buttons&&!n?null:this.under(s);n&&r?this.dragged?.(r):s.buttons||this.hovered?.(r)}),e.addEventListener("pointerleave",()=>this.hovered?.(null)),e.addEventListener("pointerup",s=>{this.controls&&(this.controls.enabled=!0);const a=Math.hypot(s.clientX-t[0],s.clientY-t[1])<4&&!n?this.under(s):null;n=!1,a&&this.picked?.(a)})}}const qr=.62,uh=.55,iv=.17,sv=1.35,rv=4,sa=(i,e)=>ut(1,i,-1,e),Si=(i,e)=>[i*e[0],i*e[1],i*e[2]],Ru=(i,e)=>Si(Tt(i,e),e);function av(i,e,t){const n=i.axis,s=Si(1/t,i.point_m),r=sa(s,Ru(s,n));if(i.rolls)return{at:ut(1,r,1+iv,[0,0,1]),slid:[0,0,0]};if(Math.hypot(...r)>uh||Math.hypot(...s)>uh)return{at:s,slid:[0,0,0]};const a=-Tt(n,e),o=-n[2],c=Math.abs(a)>.3?Math.sign(a):Math.abs(o)>.3?Math.sign(o):1,l=Si(c*Math.sqrt(qr*qr-Tt(r,r)),n);return{at:ut(1,r,1,l),slid:l}}function Xr(i,e,t){const n=i.map(()=>[0,0,0]),s=[];for(const r of["device","probe"]){const a=i.map((d,p)=>p).filter(d=>i[d].carries===r),o=r==="device"?[0,0,0]:[0,0,1.06],c=a.map(d=>i[d].kind==="revolute"?av(i[d],e,t):null),l=d=>c.slice(d+1).find(p=>p!==null)?.at??o;let h=[0,0,0];if(a.forEach((d,p)=>{const _=c[p],v=l(p),m=i[d].axis;_&&(h=_.slid);const f=ut(1,v,1,h),S=p?n[a[p-1]]:ut(1,v,-2*qr,e);n[d]=_?.at??(p?ut(1,f,.5,Ru(sa(S,f),m)):ut(1,v,-qr,e)),p+1<a.length&&!c[p+1]||s.push({body:d,path:Ka([n[d],f,v])})}),a.forEach((d,p)=>{p+1<a.length&&!c[p+1]&&s.push({body:d,path:Ka([n[d],n[a[p+1]]])})}),!a.length)continue;const u=n[a[0]];s.push({body:-1,path:Ka([ut(1,u,-1.3-Tt(u,e),e),u])})}return{nodes:n,links:s}}function Ka(i){return i.filter((e,t)=>t===0||Math.hypot(...sa(e,i[t-1]))>1e-6)}function Za(i,e){const[t,n,s]=i.r,r=Si(1/e,i.t);return new pt().set(...t,r[0],...n,r[1],...s,r[2],0,0,0,1)}function ov(i,e){const t=new Set(i.solids.map(a=>a.body)),n=Xr(i.joints,i.up,e),s=n.links.filter(a=>a.body>=0&&!t.has(a.body)).flatMap(a=>a.path),r=i.solids.filter(a=>a.body>=0).map(a=>a.shape==="box"?Math.hypot(...a.a_m.map((o,c)=>(Math.abs(o)+a.b_m[c])/e)):Math.max(Math.hypot(...a.a_m),Math.hypot(...a.b_m))/e+a.radius_m/e);return Math.max(1,...s.map(a=>Math.hypot(...a)),...r)}class lv{constructor(e,t,n,s,r){this.stage=e,this.fixed=t,this.probe=n,this.mount=s,this.rangeM=r,this.needs=Math.min(rv,Au*Math.max(1,ov(s,r)/sv)),this.groups=s.joints.map(()=>new qt);for(const a of this.groups)a.matrixAutoUpdate=!1;e.room.add(...this.groups),this.draw()}groups;needs;leave(){for(const e of this.groups)this.stage.clearLabels(e),ai(e),this.stage.room.remove(e)}pose(e){const{joints:t}=this.mount,n=pl(t,e),{device:s,probe:r}=Jr(t,e);n.forEach((o,c)=>{this.groups[c].matrix.copy(Za(o,this.rangeM)),this.groups[c].matrixWorldNeedsUpdate=!0});const a=new I;Za(s,this.rangeM).decompose(this.stage.device.position,this.stage.device.quaternion,a),Za(r,this.rangeM).multiply(new pt().makeTranslation(0,0,1)).decompose(this.probe.position,this.probe.quaternion,a)}body(e){return e<0?this.fixed:this.groups[e]}draw(){const e=rt(),{joints:t,solids:n}=this.mount,s=this.mount.up,r=new Set(n.map(o=>o.body)),a=Xr(t,s,this.rangeM);for(const o of n)this.addSolid(o);for(const{body:o,path:c}of a.links)if(!r.has(o))for(let l=1;l<c.length;l++)this.body(o).add(Ft(c[l-1],c[l],.022,e.quiet));if(t.forEach((o,c)=>this.addJoint(o,a.nodes[c],c,r.has(c))),!n.some(o=>o.body<0&&o.shape==="box")){const o=new yu(3.2,16,e.grid,e.grid);o.quaternion.setFromUnitVectors(new I(0,1,0),new I(...s)),o.position.copy(new I(...s).multiplyScalar(-1.3)),this.fixed.add(o)}}addJoint(e,t,n,s){const r=rt(),a=e.carries==="device"?r.co:r.other,o=e.axis,c=this.groups[n],l=e.kind==="prismatic"?.09:.05;s||c.add(Ft(ut(1,t,-l,o),ut(1,t,l,o),e.kind==="prismatic"?.034:.045,a)),c.add(new cs(new At().setFromPoints([1,-1].map(d=>new I(...ut(1,t,.2*d,o)))),new ci({color:a})));const h=ut(1,dl(this.mount.up,o),.01,[1,0,0]),u=Math.hypot(...h)>.5?Si(1/Math.hypot(...h),h):[1,0,0];this.stage.label(e.name,ut(1,t,.12,u),c,"joint",!1,t)}addSolid(e){const t=rt(),n=Si(1/this.rangeM,e.a_m),s=Si(1/this.rangeM,e.b_m),r=e.body<0,a=this.body(e.body),o=u=>{const d=Wr(t.quiet);return r&&Object.assign(d,{transparent:!0,opacity:.3,depthWrite:!1}),new kt(u,d)};if(e.shape==="box"){const u=o(new Li(2*s[0],2*s[1],2*s[2])),d=new Tl(new zf(u.geometry),new ci({color:new Ke(r?t.grid:t.edge)}));u.position.set(...n),d.position.set(...n),a.add(u,d);return}const c=e.radius_m/this.rangeM,l=new I(...sa(s,n)),h=o(l.length()>1e-9?new $r(c,l.length(),6,18):new $r(c,1e-6,8,18));h.position.set(...ut(.5,n,.5,s)),l.length()>1e-9&&h.quaternion.setFromUnitVectors(new I(0,1,0),l.normalize()),a.add(h)}}const Cu="http://www.w3.org/2000/svg",Nr=300,dh=34,tl=13,cv=.95;function hv(i){const e=Math.abs(i[2])>.9?[1,0,0]:[0,0,1];return{right:e,top:dl(i,e)}}function bn(i,e){const{right:t,top:n}=hv(i);return e.map(s=>[Tt(s,t),Tt(s,n)])}function fh(i){const e=[...i].sort((n,s)=>n[0]-s[0]||n[1]-s[1]),t=n=>{const s=[];for(const r of n){for(;s.length>1;){const[a,o]=s.slice(-2);if((o[0]-a[0])*(r[1]-a[1])-(o[1]-a[1])*(r[0]-a[0])>1e-12)break;s.pop()}s.push(r)}return s.slice(0,-1)};return[...t(e),...t(e.reverse())]}function ph(i,e){const t=[-1,1];return t.flatMap(n=>t.flatMap(s=>t.map(r=>[i[0]+n*e[0],i[1]+s*e[1],i[2]+r*e[2]])))}function uv(i){const{joints:e,values:t}=i.mount,n=e.length;return Array.from({length:Math.floor(t.length/n)},(s,r)=>sn(Jr(e,t.slice(n*r,n*r+n)).probe,[0,0,i.range_m]))}function dv(i,e,t,n=640){const s=document.createElementNS(Cu,"svg"),r=i.mount.joints.map((o,c)=>`${o.name} ${Ge(e[c]??0,1)} ${o.unit}`).join(", "),a={viewBox:`0 0 ${n} ${Nr}`,role:"img","aria-label":`mount from above: ${r}`,"font-size":tl,class:"range-picture"};for(const[o,c]of Object.entries(a))s.setAttribute(o,String(c));return new fv(s,i,e,n).draw(),g("div",{},s,g("p",{class:"small"},`${t}: ${r}.`),g("p",{class:"small quiet"},"To scale, seen from above. Small points: where the plan takes the probe. A joint without a declared solid is drawn as a line."))}class fv{constructor(e,t,n,s){this.svg=e,this.of=t,this.values=n,this.wide=s,this.up=t.mount.up,this.bodies=pl(t.mount.joints,n),this.places=uv(t);const r=[...bn(this.up,[...this.places,this.probe()]),...this.sketched().flatMap(o=>o.path)],a=o=>Math.max(.2*t.range_m,...r.map(c=>Math.abs(c[o])));this.scale=Math.min((this.wide/2-dh)/a(0),(Nr/2-dh)/a(1))}scale;up;bodies;places;draw(){for(const t of this.of.mount.solids)this.solid(t);const e=new Set(this.of.mount.solids.map(t=>t.body));for(const{body:t,path:n}of this.sketched())e.has(t)||this.add("path",{d:Tr(n.map(s=>this.at(s))),fill:"none",stroke:"var(--quiet)","stroke-width":4,"stroke-linejoin":"round"});for(const t of bn(this.up,this.places)){const[n,s]=this.at(t);this.add("circle",{cx:n,cy:s,r:1.6,fill:"var(--cross)"})}this.device(),this.of.mount.joints.forEach((t,n)=>this.joint(t,n)),this.horn(),this.ruler(),this.write()}add(e,t,n=""){const s=document.createElementNS(Cu,e);for(const[r,a]of Object.entries(t))s.setAttribute(r,String(a));n&&(s.textContent=n),this.svg.append(s)}at(e){return[Yi(this.wide/2+this.scale*e[0]),Yi(Nr/2-this.scale*e[1])]}body(e){return e<0?Ds:this.bodies[e]}end(){return Jr(this.of.mount.joints,this.values)}probe(){return sn(this.end().probe,[0,0,this.of.range_m])}sketched(){const{joints:e}=this.of.mount,t=this.of.range_m;return Xr(e,this.up,t).links.map(({body:n,path:s})=>({body:n,path:bn(this.up,s.map(r=>sn(this.body(n),ut(t,r,0,r))))}))}solid(e){const t=this.body(e.body),n=e.body<0,s={fill:"var(--quiet)","fill-opacity":n?.14:.4,stroke:"var(--quiet)"};if(e.shape==="box"){const l=ph(e.a_m,e.b_m).map(u=>sn(t,u)),h=fh(bn(this.up,l)).map(u=>this.at(u));this.add("path",{d:`${Tr(h)} Z`,...s});return}const[[r,a],[o,c]]=bn(this.up,[sn(t,e.a_m),sn(t,e.b_m)]).map(l=>this.at(l));this.add("line",{x1:r,y1:a,x2:o+.001,y2:c,stroke:"var(--quiet)","stroke-opacity":n?.3:.6,"stroke-width":Math.max(2,2*this.scale*e.radius_m),"stroke-linecap":"round"})}device(){const e=this.of.size_mm.map(l=>Math.max(5e-4*l,3/this.scale)),t=this.of.offset_mm.map(l=>.001*l),{device:n}=this.end(),[[s,r],[a,o]]=bn(this.up,[[0,0,0],[.3*this.of.range_m,0,0]].map(l=>sn(n,l))).map(l=>this.at(l)),c=ph(t,e).map(l=>sn(n,l));this.add("path",{d:`${Tr(fh(bn(this.up,c)).map(l=>this.at(l)))} Z`,fill:"var(--other)"}),this.add("line",{x1:s,y1:r,x2:a,y2:o,stroke:"var(--co)","stroke-width":2}),this.words.push({text:"x of the device",x:a+(a<s?-6:6),y:o+4,anchor:a<s?"end":"start",rank:"fixed",fill:"var(--co)"})}joint(e,t){const n=this.of.range_m,s=Xr(this.of.mount.joints,this.up,n).nodes[t],r=sn(this.bodies[t],ut(n,s,0,s)),a=ut(1,sn(this.bodies[t],ut(1,ut(n,s,0,s),.09*n,e.axis)),-1,r),[o,c]=this.at(bn(this.up,[r])[0]),l=e.carries==="device"?"var(--co)":"var(--cross)";if(Math.abs(Tt(e.axis,this.up))>cv&&e.kind==="revolute")this.add("circle",{cx:o,cy:c,r:7,fill:"none",stroke:l,"stroke-width":3});else{const[[d,p],[_,v]]=bn(this.up,[ut(1,r,-1,a),ut(1,r,1,a)]).map(m=>this.at(m));this.add("line",{x1:d,y1:p,x2:_+.001,y2:v,stroke:l,"stroke-width":5,"stroke-linecap":"round"})}const u=o>this.wide-120;this.words.push({text:e.name,x:u?o-12:o+12,y:c+18,anchor:u?"end":"start",rank:"name",fill:"var(--ink)"})}words=[];write(){const e={start:.5,middle:0,end:-.5},t=this.words.map(({text:n,x:s,y:r,anchor:a,rank:o})=>{const c=.6*tl*n.length;return{x:s+e[a]*c,y:r,wide:c,high:tl+2,rank:o}});Xh(t).forEach((n,s)=>{const{text:r,x:a,y:o,anchor:c,fill:l,rank:h}=this.words[s];this.add("text",{x:a,y:o+(n??0),fill:l,"text-anchor":c,"font-weight":h==="fixed"||r==="probe"?600:400,stroke:"var(--card)","stroke-width":4,"paint-order":"stroke"},r)})}horn(){const{probe:e}=this.end(),t=.1*this.of.range_m,[n,s]=bn(this.up,[this.probe(),sn(e,[0,0,this.of.range_m+t])]).map(o=>this.at(o)),r=[n[0]-s[0],n[1]-s[1]],a=Math.hypot(...r);if(a<4)this.add("circle",{cx:n[0],cy:n[1],r:9,fill:"var(--ink)"});else{const[o,c]=[r[0]/a,r[1]/a],l=(h,u)=>[Yi(n[0]+h*o-u*c),Yi(n[1]+h*c+u*o)];this.add("path",{d:`${Tr([l(0,11),l(-24,4),l(-24,-4),l(0,-11)])} Z`,fill:"var(--ink)"})}this.words.push({text:"probe",x:n[0],y:n[1]-16,anchor:"middle",rank:"name",fill:"var(--ink)"})}ruler(){const e=[.05,.1,.2,.5,1,2,5,10].find(n=>n*this.scale>60)??10,t=Nr-14;this.add("path",{d:`M12 ${t-5} V${t} H${Yi(12+e*this.scale)} V${t-5}`,fill:"none",stroke:"var(--ink)"}),this.add("text",{x:Yi(18+e*this.scale),y:t,fill:"var(--ink)"},`${e} m`)}}function Tr(i){return i.map(([e,t],n)=>`${n?"L":"M"}${e} ${t}`).join(" ")}function Yi(i){return Math.round(10*i)/10}const mh="http://www.w3.org/2000/svg",gh=250,pv=240;function Pu(i){return{turn_deg:Math.abs(i.theta_zero_deg)>i.theta_zero_expanded_deg?i.theta_zero_deg:0,shift_mm:Math.abs(i.axes_offset_mm)>i.axes_offset_expanded_mm?i.axes_offset_mm:0}}function _h(i){const{turn_deg:e,shift_mm:t}=Pu(i),n=`${i.theta_zero_deg.toFixed(3)}° ± ${i.theta_zero_expanded_deg.toFixed(3)}°`,s=`${i.axes_offset_mm.toFixed(2)} mm ± ${i.axes_offset_expanded_mm.toFixed(2)} mm`,r=(c,l,h,u)=>l>h?` (cannot tell: echoes and noise hide more than the declared ±${h}${u})`:` (nothing to ${c})`,a=e?"":r("turn",i.theta_zero_expanded_deg,i.theta_zero_declared_deg,"°"),o=t?"":r("shift",i.axes_offset_expanded_mm,i.axes_offset_declared_mm," mm");return`zero ${n}${a}; axes apart ${s}${o}`}function mv(i,e,t=640){const n=e.slice(-2),s=n.length===2?["before","after"]:["as measured"],r=n.length?n.map((_,v)=>({one:_,title:`${s[v]}: run ${_.run}`})):[null],a={turn:Math.max(1e-9,...n.map(_=>Math.abs(_.numbers.theta_zero_deg))),shift:Math.max(1e-9,...n.map(_=>Math.abs(_.numbers.axes_offset_mm)))},o=document.createElementNS(mh,"svg"),c=(_,v,m="")=>{const f=document.createElementNS(mh,_);for(const[S,E]of Object.entries(v))f.setAttribute(S,String(E));m&&(f.textContent=m),o.append(f)},l=t/r.length>=pv,h=l?t/r.length:t,u=gh*(l?1:r.length),d=n.map(_=>`${_.run}: ${_h(_.numbers)}`).join("; ")||"nothing was measured";for(const[_,v]of Object.entries({viewBox:`0 0 ${t} ${u}`,role:"img","aria-label":`range from above: ${d}`,"font-size":13,class:"range-picture"}))o.setAttribute(_,String(v));r.forEach((_,v)=>gv(c,i,l?[v*h,0]:[0,v*gh],h,_,a));const p=n.length?"Blue-green: the roll axis as found, enlarged. Green, dashed: as it should lie.":i?"Nothing was measured: the green line is where the roll axis should lie. A flip test tells how it does.":"This positioner has no roll axis: a flip test needs one. The beam search finds what both axes read on the beam.";return g("div",{},o,g("p",{class:"small quiet"},p),...n.map(_=>g("p",{class:"small"},g("strong",{},`${_.run}: `),_h(_.numbers))))}function gv(i,e,[t,n],s,r,a){const o="var(--quiet)",c="var(--ink)",l=t+Math.min(120,.33*s),h=n+132,u=Math.min(84,.27*s),d=t+s-40;if(i("text",{x:t+12,y:n+22,fill:c,"font-weight":600},r?.title??"from above, as it should be"),i("line",{x1:l,y1:h,x2:d-8,y2:h,stroke:o,"stroke-dasharray":"5 5"}),i("circle",{cx:l,cy:h,r:u,fill:"none",stroke:o}),i("text",{x:l,y:h+u+18,fill:o,"text-anchor":"middle"},"azimuth axis"),e&&i("line",{x1:l-u,y1:h,x2:l+u,y2:h,stroke:"var(--good)","stroke-width":3,"stroke-dasharray":"9 5"}),i("circle",{cx:l,cy:h,r:5,fill:c}),i("path",{d:`M${d-10} ${h-14} L${d+22} ${h} L${d-10} ${h+14} Z`,fill:c}),i("text",{x:d+4,y:h-22,fill:c,"text-anchor":"middle"},"probe"),!r)return;const p=r.one.numbers,{turn_deg:_,shift_mm:v}=Pu(p),m=14*p.theta_zero_deg/a.turn,f=22*p.axes_offset_mm/a.shift,[S,E]=[v?f:0,_?m:0];i("line",{x1:l-u,y1:h+S+E,x2:l+u,y2:h+S-E,stroke:"var(--co)","stroke-width":6,"stroke-linecap":"round"}),_&&i("path",{d:E>0?`M${l+u+2} ${h-28} q14 24 2 46`:`M${l+u+2} ${h+28} q14 -24 2 -46`,fill:"none",stroke:"var(--cross)","stroke-width":3}),v&&i("line",{x1:l-u/2,y1:h+S,x2:l-u/2,y2:h,stroke:"var(--cross)","stroke-width":3})}const vh=[["above","range from above"],["beam","beam map"],["live","live reading"]],_v=40,vv=12;class xv{panel=new tt("Range from above","card align-screen");showing="above";drawnFor=640;rolls=!0;chamber="being read";mount=null;joints={values:[],words:"All joints drawn at zero"};flips=[];beam=null;maps=[new zn("coarse look of the beam search"),new zn("fine look of the beam search")];liveMap=new zn("levels of the beam search");watched=null;readings=[];chart=new pn("level of the last readings");last=null;buttons=vh.map(([e,t])=>ce(t,()=>this.show(e),"tiny"));constructor(){this.panel.tools.append(...this.buttons),this.show("above"),Yr(this.panel.element,()=>{this.showing==="above"&&this.room()!==this.drawnFor&&this.draw()})}positioner(e,t){this.rolls=e,this.mount=t,this.chamber="read",this.showing==="above"&&this.show("above")}unread(){this.chamber="not read",this.showing==="above"&&this.draw()}pose(e){!e.length||String(e)===String(this.joints.values)||(this.joints={values:e,words:`Joints as told at ${new Date().toLocaleTimeString()}`},this.showing==="above"&&this.mount&&this.draw())}flip(e,t=!0){this.flips=[...this.flips.filter(n=>n.run!==e.run),e].sort((n,s)=>n.measured_at-s.measured_at),(t||this.showing==="above")&&this.show("above")}found(e){this.beam=e,this.watched=null,this.show("beam")}look(e,t,n){const s=this.watched?.run!==e;this.watched={run:e,grid:t,frame:n},s?this.show("beam"):this.showing==="beam"&&this.draw()}reading(e){this.readings=[...this.readings,{at:Date.now()/1e3,db:e}].slice(-400),this.showing==="live"&&this.draw()}status(e){const t=this.last?.measured!==e.measured||this.last?.run!==e.run;this.last=e,e.running&&t&&typeof e.level_db=="number"?this.reading(e.level_db):this.showing==="live"&&this.draw()}show(e){this.showing=e,vh.forEach(([t,n],s)=>{this.buttons[s].setAttribute("aria-pressed",String(t===e)),t===e&&(G(this.panel.element.querySelector("h2"),n[0].toUpperCase()+n.slice(1)),this.panel.element.setAttribute("aria-label",n))}),this.draw()}room(){const e=this.panel.element.clientWidth;return e?Math.max(260,Math.round(e/dn()-2*vv)):640}draw(){if(this.drawnFor=this.room(),this.showing==="above"&&this.chamber!=="read")this.panel.empty(this.chamber==="being read"?"The chamber is being read.":"The chamber could not be read: see below.");else if(this.showing==="above"&&this.mount)this.panel.show({key:"above",words:"as declared in chamber.toml"},dv(this.mount,this.joints.values,this.joints.words,this.drawnFor));else if(this.showing==="above"){const e=this.flips.length?`flip test${this.flips.length>1?"s":""} ${this.flips.slice(-2).map(t=>t.run).join(", ")}`:"not measured yet";this.panel.show({key:"above",words:e},mv(this.rolls,this.flips,this.drawnFor))}else this.showing==="beam"?this.drawBeam():this.drawLive()}drawBeam(){if(this.watched){const{run:s,grid:r,frame:a}=this.watched,o=a.filter(l=>!Number.isNaN(l));this.panel.show({key:s,words:`run ${s}, under way`},this.liveMap.element,g("p",{class:"small quiet"},`${o.length} of ${a.length} directions; empty cells were not looked at yet.`));const c=o.length?Math.ceil(o.reduce((l,h)=>Math.max(l,h),-1/0)/5)*5:0;xh(this.liveMap,r.columns,r.rows,a,c,`levels of ${s}`);return}const e=this.beam;if(!e){this.panel.empty("No beam search was read. A look draws its levels here as they come.");return}this.panel.show({key:e.run,words:`beam search ${e.run}`},...e.maps.map((s,r)=>this.maps[r].element),...e.sentences.map(s=>g("p",{class:"small"},s)));const t=e.maps.flatMap(s=>s.level_db).filter(s=>s!==null),n=Math.ceil(Math.max(-200,...t)/5)*5;e.maps.forEach((s,r)=>{xh(this.maps[r],s.azimuth_deg,s.elevation_deg,s.level_db,n,`${s.stage} look of ${e.run}`),this.maps[r].point(e.beam_deg?{row:e.beam_deg[1],column:e.beam_deg[0]}:null)})}drawLive(){const e=this.last,t=this.readings[this.readings.length-1],n=(e?.axes??[]).map((o,c)=>[o,`${Ge(e?.position_deg?.[c],2)}°`]),s=g("div",{class:"row"},g("span",{class:"big"},t?`${Ge(t.db,1)} dB`:"-"),g("span",{class:"quiet"},t?`S21, ${new Date(1e3*t.at).toLocaleTimeString()}`:"no reading yet"));if(this.panel.show({key:"live",words:e?.hand?e.hand.text:e?.run?`run ${e.run}: ${e.state}`:""},s,this.readings.length>1&&this.chart.element,n.length>0&&vt(["axis","readout"],n),!t&&g("p",{class:"quiet"},"Readings come with a sweep (A signal is there), a flip test or a beam search.")),this.readings.length<2)return;const r=this.readings.map(o=>o.at-this.readings[0].at),a=this.readings.map(o=>o.db);this.chart.draw({x:r,lines:[{name:"level",values:a,colour:rt().co,points:r.length<60}],xName:"time / s",yName:"S21 / dB",yWhole:Ti(a,2),height:220,peakOf:0,digits:1})}}function xh(i,e,t,n,s,r){i.draw({rows:t,columns:e,values:n,rowName:"elevation / deg",columnName:"azimuth / deg",low:s-_v,high:s,unit:"dB",flip:!0,height:180},r)}function yv(i){const e=new tt("Instruments","card step"),t=new tt("Level, laser or pointer","card step"),n=new tt("Flip test","card step"),s=new tt("Beam search","card step"),r=new tt("What only a scan shows","card step"),a=new xv,o=new hd(W=>{a.reading(W),d("sweep",`${W.toFixed(1)} dB`)},W=>{i.chamber.follow(W.angles_deg,W.axes,W.joints),a.pose(W.joints),G(i.stage.caption,"The chamber as chamber.toml declares it, axes as read by hand.")}),c=g("ol",{class:"checklist"}),l=Ae.campaign,h=new AbortController,u=[{key:"talk",words:"Instruments answer",panel:e,state:""},{key:"hand",words:"Axes move as told",panel:o.panel,state:""},{key:"sweep",words:"A signal is there",panel:o.sweepPanel,state:""},{key:"level",words:"Levelled by other means",panel:t,state:""},{key:"flip",words:"Flip test",panel:n,state:""},{key:"beam",words:"Beam found",panel:s,state:""},{key:"rest",words:"Taken out of the data",panel:r,state:""}],d=(W,ue)=>{const Ce=u.find(Oe=>Oe.key===W);Ce.state!==ue&&(Ce.state=ue,p())},p=()=>G(c,...u.map(W=>g("li",{class:W.state?"ticked":""},g("button",{attrs:{type:"button"},on:{click:()=>W.panel.element.scrollIntoView({block:"start"})}},W.words,W.state&&g("span",{class:"small quiet"},W.state))))),_=W=>{if(!W.at)return[g("p",{class:"quiet"},"Not asked since the server began. Nothing moves when they are.")];const ue=new Date(1e3*W.at).toLocaleString();return e.subject.textContent=`asked ${ue}`,d("talk",W.lines.every(Ce=>Ce.good)?`ready, ${new Date(1e3*W.at).toLocaleString([],{dateStyle:"short",timeStyle:"short"})}`:""),[vt(["what","state","found"],W.lines.map(Ce=>[Ce.what,g("span",{class:Ce.good?"good":"bad"},Ce.good?"ready":"not ready"),Ce.found]))]},v=ce("talk to every instrument",()=>{v.disabled=!0,e.ask({key:"talk",words:""},()=>ke("/api/check",{campaign:l}),_,{waiting:"The instruments are asked; nothing moves."}).finally(()=>v.disabled=!_t("operate"))},"main");v.disabled=!_t("operate"),e.tools.append(v),e.ask({key:"talk",words:""},W=>An("/api/checked/{campaign}",[l],W),_),t.show({key:"",words:""},g("p",{},"Set the roll axis level, and the probe on its line, with the means you have. The readings go into chamber.toml under [alignment] with their uncertainty; they count as what was known beforehand."),g("p",{class:"small"},"Alignment lasers: class 2 or lower, never towards eyes, off before the run.")),r.show({key:"",words:""},g("p",{},"Whole spheres find the remaining misalignments by themselves: tilt of the roll axis, both offsets, the probe's roll. They are taken out of the data, and listed in the run's findings with what to turn."));const m=[],f=(W,ue,Ce,Oe,$e)=>{const Q=ce(W,()=>void Kr(ue(),ee=>Oe.fault(ee),Ce),"main",$e);return m.push(Q),Q},S=(W,ue)=>g("input",{attrs:{value:W,pattern:"[A-Za-z0-9_-]{1,70}","aria-label":ue}}),E=S("flip","name of the flip test's run"),M=S("beam","name of the beam search"),P=g("div",{}),C=g("div",{}),D=g("p",{class:"quiet small"}),O=g("p",{class:"quiet small"}),b=async()=>{const W=E.value;try{const ue=await ke("/api/flip",{campaign:l,run:W});G(P,...ue.sentences.map(Ce=>g("p",{},Ce))),G(n.faults),G(n.subject,`run ${W}`),a.flip(ue),d("flip",`run ${W}`)}catch(ue){G(P),n.fault(ue)}},y=async()=>{const W=M.value;try{const ue=await ke("/api/beam",{campaign:l,run:W}),Ce=ce("set as home",()=>void U(W,"home"),"","home_deg in chamber.toml: all to home then turns the beam to the probe"),Oe=ce("take as zeros",()=>N(W),"","zero_deg in chamber.toml: every angle changes");for(const $e of[Ce,Oe])$e.disabled=!_t("configure");G(C,...ue.sentences.map($e=>g("p",{},$e)),ue.beam_deg&&g("div",{class:"row"},Ce,J&&Oe)),G(s.faults),G(s.subject,`run ${W}`),a.found(ue),ue.beam_deg&&d("beam",`run ${W}`)}catch(ue){G(C),s.fault(ue)}},R=async()=>{try{const Ce=((await An("/api/campaigns",[],h.signal)).find(Oe=>Oe.id===l)?.runs??[]).filter(Oe=>Oe.record&&/^flip/.test(Oe.name)).slice(0,2);for(const Oe of Ce.reverse())a.flip(await ke("/api/flip",{campaign:l,run:Oe.name},h.signal),!1);Ce.length&&d("flip",`run ${Ce[Ce.length-1].name}`)}catch{}},N=W=>Vn("Take the beam's readouts as the zeros of both axes?",ue=>[g("p",{},"Only where the beam is known to leave the device straight: then what was found is an error of the zeros. A beam that leans on its device is none; with zeros set to it, directions away from the zero come out wrong."),g("p",{class:"small"},"zero_deg of both axes in chamber.toml changes; the file as it was stays beside it."),g("div",{class:"row"},ce("back",ue),g("span",{class:"spring"}),ce("take as zeros",()=>{ue(),U(W,"zeros")},"main"))]),U=async(W,ue)=>{try{G(O,(await ke("/api/home",{campaign:l,run:W,into:ue})).join("; ")),G(s.faults)}catch(Ce){G(s.faults,g("p",{},Vt(Ce)))}},k=f("measure both sides",()=>E.value,"flip",n,"needs the motion lease");n.show({key:"",words:""},g("p",{},"One cut from both sides: theta, and -theta with the roll at 180°. A device cannot tell them apart. What differs is the range: a zero that is off, or axes that miss each other. It takes a few minutes."),g("div",{class:"row"},g("label",{class:"row"},"run",E),k,ce("read a finished one",()=>void b())),D,P),s.show({key:"",words:""},g("p",{},"Steps of half a beam over the front, then a fine look where it was strongest. So you know where the beam is before hours are spent."),g("div",{class:"row"},g("label",{class:"row"},"run",M),f("look coarsely",()=>M.value,"beam-coarse",s,"needs the motion lease"),f("look finely",()=>M.value,"beam-fine",s,"needs the motion lease, and a coarse look"),ce("read a finished one",()=>void y())),O,C);let B=!1,q=!0,J=!1;const X=W=>W.running&&W.campaign===l&&(W.kind??"").startsWith("beam"),le=gt.watch({frame:W=>{gt.grid&&X(gt.status)&&a.look(gt.status.run??"",gt.grid,W)},status:W=>{const ue=B&&!W.running&&W.state==="done"&&W.campaign===l,Ce=`${W.state}: ${W.measured??0} of ${W.total??0} points of ${W.run??""}`;W.kind==="flip"&&W.running&&G(D,Ce),W.kind?.startsWith("beam")&&W.running&&G(O,`${W.kind==="beam-coarse"?"coarse":"fine"} look, ${Ce}`),ue&&W.kind==="flip"&&b(),ue&&W.kind==="beam-coarse"&&(G(O,"The coarse look is done; the fine one goes where it was strongest."),y()),ue&&W.kind==="beam-fine"&&y(),B=W.running;for(const Oe of m)Oe.disabled=ll(W)||Ae.me?.mine!==!0||Oe===k&&!q;a.status(W),W.axes&&W.angles_deg?.length&&i.chamber.turnTo(W.angles_deg,W.axes,W.joints),a.pose(W.joints??[])}});return ke("/api/motion",{campaign:l},h.signal).then(W=>{i.chamber.build(W),G(i.stage.caption,`The chamber as chamber.toml declares it, ${gt.status.angles_deg?.length?"axes as last told":"all axes drawn at zero"}.`),q=W.geometry==="roll-over-azimuth"&&!W.mount,J=!q&&!W.mount,a.positioner(q,W.mount&&{...W,mount:W.mount}),!q&&(k.disabled=!0,G(D,W.mount?"A mount that is described by its joints has no flip test: a whole sphere shows what is misaligned.":"This positioner has no roll axis: the beam search finds what both axes read on the beam."))},W=>{h.signal.aborted||(e.fault(W),a.unread(),G(i.stage.caption,"The chamber could not be read."))}),R(),gt.status.angles_deg?.length||i.chamber.rest(),G(i.stage.caption,"The chamber is being read."),p(),{title:"Align",element:g("div",{class:"page align-page"},g("nav",{class:"card steps",attrs:{"aria-label":"steps"}},c),g("div",{class:"align-steps"},a.panel.element,...u.map(W=>W.panel.element))),leave:()=>{le(),h.abort(),o.leave(),a.panel.leave();for(const W of[e,n,s])W.leave()}}}const Ja="http://www.w3.org/2000/svg";function wv(i,e,t,n,s){const c=rt(),l=document.createElementNS(Ja,"svg"),h=(p,_,v="")=>{const m=document.createElementNS(Ja,p);for(const[f,S]of Object.entries(_))m.setAttribute(f,String(S));v&&(m.textContent=v),l.append(m)};for(const[p,_]of Object.entries({viewBox:"0 0 460 460",width:460,height:460,role:"img","aria-label":i,"font-family":"system-ui, sans-serif","font-size":12,class:"polar"}))l.setAttribute(p,String(_));for(let p=0;p<s;p+=10)h("circle",{cx:230,cy:230,r:200*(1-p/s),fill:"none",stroke:c.grid}),h("text",{x:234,y:230-200*(1-p/s)+13,fill:c.quiet},(n-p).toFixed(0));for(let p=0;p<360;p+=30){const _=Math.sin(p*Math.PI/180),v=-Math.cos(p*Math.PI/180);h("line",{x1:230,y1:230,x2:230+200*_,y2:230+200*v,stroke:c.grid}),h("text",{x:230+216*_,y:230+214*v+4,fill:c.quiet,"text-anchor":"middle"},`${p>180?p-360:p}°`)}for(const p of t){let _="",v=!1;e.forEach((m,f)=>{const S=p.values[f];if(S===null){v=!1;return}const E=200*Math.max(0,1-(n-S)/s);_+=`${v?"L":"M"}${(230+E*Math.sin(m*Math.PI/180)).toFixed(1)} ${(230-E*Math.cos(m*Math.PI/180)).toFixed(1)}`,v=!0}),h("path",{d:_,fill:"none",stroke:p.colour,"stroke-width":p.width??1.8,...p.dash?{"stroke-dasharray":p.dash}:{}})}t.forEach((p,_)=>h("text",{x:6,y:16+15*_,fill:p.colour},p.name));const u=Zr({name:()=>zs(i),svg:()=>{const p=l.cloneNode(!0);return p.setAttribute("xmlns",Ja),{text:new XMLSerializer().serializeToString(p),width:460,height:460}},columns:()=>[{name:"angle / deg",values:e},...t.map(p=>({name:p.name,values:p.values}))]}),d=g("div",{class:"chart"});return G(d,l,g("div",{class:"chart-tools no-print"},u)),d}class bv{constructor(e){this.explorer=e,this.chart.moved=t=>Ze.hover(t===null||!this.cut?null:this.directionAt(t)),this.chart.clicked=t=>{this.marks=[...this.marks.slice(-1),t],this.cut&&Ze.pin(this.directionAt(t)),this.show()},this.stopCursor=Ze.watch(t=>this.follow(t)),this.tools()}panel=new tt("Cut through the peak","card tab-card");chart=new pn("cut");apart=new pn("difference");element=g("div",{},this.panel.element);round=Dt("polar")==="1";marks=[];stopCursor;cut=null;leave(){this.stopCursor(),this.panel.leave()}directionAt(e){const{peak:t,tangent:n}=this.cut;return ut(Math.cos(e*nt),t,Math.sin(e*nt),n)}follow(e){if(!this.cut||!e){this.chart.point(null);return}const t=Tt(e,this.cut.peak),n=Tt(e,this.cut.tangent),r=t*t+n*n>Math.cos(2*nt)**2?Math.atan2(n,t)/nt:null;this.chart.point(r),this.apart.point(r)}tools(){const{looked:e}=this.explorer,t=e.known?.basis==="circular",[n,s]=t?["declared","at right angles"]:["E","H"],r=Tn(t?"plane, from the declared one":"plane, from E towards H",0,175,5,e.plane,h=>{e.plane=h,this.explorer.changed()},"°"),a=h=>{e.plane=h;const u=r.querySelector("input");u.value=String(h),u.dispatchEvent(new Event("input"))},o=ce(this.round?"rectangular":"polar",()=>{this.round=!this.round,Gn({polar:this.round?"1":""}),G(o,this.round?"rectangular":"polar"),this.show()}),l=this.explorer.runs().filter(h=>h!==e.run).map(h=>{const u=g("input",{attrs:{type:"checkbox",checked:e.beside.includes(h)},on:{change:()=>{e.beside=u.checked?[...e.beside,h].slice(-4):e.beside.filter(d=>d!==h),this.explorer.changed()}}});return g("label",{class:"row small"},u,h)});this.element.prepend(g("div",{class:"row no-print"},r,ce(n,()=>a(0)),ce(s,()=>a(90)),o),l.length?g("div",{class:"row no-print",attrs:{role:"group","aria-label":"beside"}},g("span",{class:"small quiet"},"beside:"),...l):"")}show(){const{looked:e}=this.explorer,t={...e.body(),frequency:e.frequency,plane_deg:e.plane,basis:e.basis},n=e.of(!0),s=[...e.beside],r=async a=>{const o=await ke("/api/cut",t,a),c=e.known?.specification&&!e.tried?await ke("/api/masks",t,a):null,l=await Promise.all(s.map(async h=>{try{const u=await ke("/api/cut",{...t,run:h,off:[],gate_ns:null},a);if(!ul(u.of,{...n,run:h}))return{run:h,cut:null,difference:null,why:`was not measured at ${(n.frequency_hz/1e9).toFixed(3)} GHz`};const d=e.tried?null:await ke("/api/difference",{...t,other:h},a);return{run:h,cut:u,difference:d,why:""}}catch(u){if(a.aborted)throw u;return{run:h,cut:null,difference:null,why:Vt(u)}}}));return{cut:o,masks:c,beside:l}};this.panel.ask(e.subject(!0,`${e.plane} ${e.basis} ${s.join()} ${this.round}`),r,a=>this.draw(a),{keep:!0,of:a=>a.cut.of,expect:n}).then(a=>{a&&this.follow(Ze.at)})}draw({cut:e,masks:t,beside:n}){const{looked:s,pattern:r}=this.explorer,a=rt();this.cut=e;const o=[{name:e.names[0],values:e.first,colour:a.co},{name:e.names[1],values:e.second,colour:a.cross,dash:"6 3"}];e.singular&&o.push({name:"total",values:e.total,colour:a.ink,dash:"2 2",width:1.2});const c=[a.other,a.good,a.band,a.bad];n.forEach((m,f)=>m.cut&&o.push({name:`${e.names[0]} of ${m.run}`,values:m.cut.first,colour:c[f],width:1.3}));for(const m of t?.masks??[])o.push({name:`mask: ${m.name}`,values:m.level,colour:a.ink,width:1.2});const l=Math.ceil(Math.max(e.peak_dbi,...[...e.total,...n.flatMap(m=>m.cut?.total??[])].map(m=>m??-200))/5)*5,h=e.peak_dbi>l-2.5?l+5:l,u=e.total.reduce((m,f,S)=>(f??-999)>(e.total[m]??-999)?S:m,0),d=e.singular!==""&&e.first[u]===null,p=`cut of ${s.run} at ${s.plane}°`,_={x:e.angle_deg,lines:o,xName:`angle from the peak, plane ${s.plane}° / deg`,yName:`level / ${s.unit}`,yWhole:[l-s.span-5,h],xWhole:[-180,180],peakOf:d?2:0,height:340,marks:this.marks.map((m,f)=>({at:m,colour:a.focus,text:`${f+1}`}))};return this.round||this.chart.draw(_,p),[this.round?wv(p,e.angle_deg,o,l,s.span):this.chart.element,this.readings(o,e),...this.besides(n,e),vt([`peak / ${s.unit}`,"at theta, phi","half-power beamwidth","first side lobe","first null"],[[Ge(e.peak_dbi,2),`${Ge(e.peak_theta_deg,1)}°, ${Ge(e.peak_phi_deg,1)}°`,e.beamwidth_deg===null?"-":`${Ge(e.beamwidth_deg,2)}° (${Ge(e.edges_deg[0],1)}° to ${Ge(e.edges_deg[1],1)}°)`,e.side_lobe_db===null?"-":`${Ge(e.side_lobe_db,1)} dB`,e.null_db===null?"-":`${Ge(e.null_db,1)} dB`]],"figures"),e.why!==""&&g("p",{class:"small warn-text"},`Side lobe ${e.why}. The cut goes through one of the maxima.`),e.singular!==""&&g("p",{class:"small warn-text"},e.singular),g("p",{class:"small quiet"},"Drag to enlarge (along one axis, or a box), Shift and drag to move, double-click for all of it; a click sets the cursor and a mark.")]}besides(e,t){if(!e.length)return[];const n=rt(),s=[n.other,n.good,n.band,n.bad],r=e.map(o=>g("p",{class:"small"},g("strong",{},o.run),o.why?`: ${o.why}`:o.difference?`: ${Ge(o.difference.difference_db,1)} dB re peak is left of the fields as they stand; only the phase of each frequency is matched, no turn, place or level (Several runs can match those)`:": beside a trial no difference is worked out")),a=e.flatMap((o,c)=>o.difference?[{name:`difference to ${o.run}`,values:o.difference.total,colour:s[c]}]:[]);return a.length?(this.apart.draw({x:t.angle_deg,lines:a,xName:"angle from the peak / deg",yName:`difference / ${this.explorer.looked.unit}`,xWhole:[-180,180],yWhole:Ti(a.flatMap(o=>o.values.map(c=>c===null?null:Math.max(c,-90))),10),height:200,digits:1},`difference of ${this.explorer.looked.run}`),[g("h3",{},"Difference between the fields"),this.apart.element,...r]):r}readings(e,t){if(!this.marks.length)return null;const n=this.marks.map((s,r)=>{const a=Math.max(0,Math.min(t.angle_deg.length-1,Math.round((s+180)/.5))),o=e[0].values[a],c=e[0].values[Math.round((this.marks[0]+180)/.5)],l=r&&o!==null&&c!==null?`${Ge(s-this.marks[0],1)}°, ${Ge(o-c,2)} dB`:"";return[`${r+1}`,`${Ge(s,1)}°`,...e.map(h=>Ge(h.values[a],2)),l]});return g("div",{},vt(["mark","angle",...e.map(s=>s.name),"from mark 1"],n),ce("no marks",()=>{this.marks=[],this.show()},"tiny"))}}const Dl=[["ludwig-3","Ludwig 3"],["theta-phi","theta and phi"],["ludwig-2-az-over-el","Ludwig 2, pole y"],["ludwig-2-el-over-az","Ludwig 2, pole x"],["circular","circular"]],Ll=[["theta-phi","theta, phi"],["az-el","azimuth, elevation"],["alpha-epsilon","alpha, epsilon"],["u-v","direction cosines u, v"]],Il=[["total","total"],["first","first component"],["second","second component"]];function Qa(i,e,t){return e.find(([n])=>n===i)?.[0]??t}function yn(i){return`${(i/1e9).toFixed(3)} GHz`}function Ul(i,e){return i.reduce((t,n,s)=>Math.abs(n-1e9*e)<Math.abs(i[t]-1e9*e)?s:t,0)}class yh{run=Dt("run");state=Dt("state")||null;off=Dt("off")?Dt("off").split(" "):[];gate=Mv(Dt("gate"));frequency=-1;plane=Ss("plane")??0;basis=Qa(Dt("basis"),Dl,"ludwig-3");basisChosen=Dt("basis")!=="";coordinates=Qa(Dt("coords"),Ll,"theta-phi");component=Qa(Dt("shown"),Il,"total");beside=Dt("beside")?Dt("beside").split(" "):[];tab=Dt("tab")||"cuts";span=Ss("span")??50;known=null;moved="";get tried(){return this.off.length>0||this.gate!==null}get hz(){return this.known?.frequency_hz[this.frequency]??Number.NaN}get unit(){return this.known?.unit??"dB"}open(e){this.known=e,e.states.length>1&&(this.state??=e.states[0]),this.basisChosen||(this.basis=e.basis);const t=e.frequency_hz,n=Ss("f");if(n!==null){this.frequency=Ul(t,n);const s=Math.abs(t[this.frequency]-1e9*n)>1e-6*Math.abs(1e9*n);this.moved=s?`${yn(1e9*n)} of the address was not measured: the nearest is shown.`:""}else(this.frequency<0||this.frequency>=t.length)&&(this.frequency=e.shown);this.keep()}keep(e=!1){const t=(n,s)=>n===s?"":String(n);Gn({run:this.run,state:this.state??"",tab:this.tab==="cuts"?"":this.tab,f:this.known?String(this.hz/1e9):Dt("f"),plane:t(this.plane,0),basis:this.basisChosen?this.basis:"",coords:this.coordinates==="theta-phi"?"":this.coordinates,shown:this.component==="total"?"":this.component,beside:this.beside.join(" "),off:this.off.join(" "),gate:this.gate?this.gate.join(" "):"",span:t(this.span,50)},e)}body(){return{campaign:Ae.campaign,run:this.run,state:this.state,off:this.off,gate_ns:this.gate}}one(){return{campaign:Ae.campaign,run:this.run,state:this.state}}of(e){return{run:this.run,state:this.state,frequency_hz:e?this.hz:null}}subject(e,t=""){const n=this.state?`, state ${this.state}`:"",s=this.tried?", a trial":"";return{key:`${this.run}/${this.state??""}|${e?this.frequency:""}/${this.off.join()}/${this.gate?.join()??""}/${t}`,words:`run ${this.run}${n}${e?`, ${yn(this.hz)}`:""}${s}`}}}function Mv(i){const[e,t]=i.split(" ").map(Number);return i&&Number.isFinite(e)&&t>0?[e,t]:null}async function Sv(i,e,t,n){let s;try{s=await ke("/api/as-read",{campaign:Ae.campaign,run:e})}catch{return}if(!n()||s.of.run!==e)return;const{sphere:r,stage:a}=i,o=s.directions,c=Math.ceil(s.level_db.reduce((d,p)=>Math.max(d,p),-300)/5)*5,l={low:c-50,high:c,unit:"dB"},h=s.state?`, state ${s.state}`:"",u=Cs(o).length;r.shape({rows:1,columns:o.length/3,closed:!1,directions:o}),r.dots(s.level_db,l),r.scaleBar(l,"S21"),G(a.caption,`Run ${e}${h}, ${yn(s.of.frequency_hz??0)}: ${u} directions as they were read, uncorrected.`),a.hovered=d=>{Ze.hover(d),G(a.readout,d?r.told(d,4,p=>`${s.level_db[p].toFixed(2)} dB`):"")},G(t,g("p",{class:"small"},`${s.measured} of ${s.total} points were read${s.measured<s.total?"; Scan goes on with the rest under this name":""}. `,"The sphere shows their levels as read (S21), both polarizations together, uncorrected: no figure follows from them."))}const nl=new Set;let Ts=[],As=0,Du="",eo=null;const os=i=>i.state!=="waiting"&&i.state!=="at work";function Ev(i){return nl.add(i),i(Ts),()=>nl.delete(i)}async function Bs(){Ts=await An("/api/jobs");const i=Ts.filter(os);if(eo)for(const e of i)e.mine&&!eo.has(e.id)&&Av(e);eo=new Set(i.map(e=>e.id));for(const e of[...nl])e(Ts)}async function hi(i,e,t=()=>{}){const{job:n}=await ke(i,e);Bs().catch(()=>{});for(let s=0;;){await new Promise(a=>window.setTimeout(a,350));let r;try{r=await An("/api/job/{job}",[n]),s=0}catch(a){if(a instanceof Rs||++s>60)throw a;continue}if(t(r.state),!!os(r.state)){if(Bs().catch(()=>{}),r.state.state==="done")return r.result;throw new Rs(422,r.state.faults.length?r.state.faults:[`${r.state.words}: ${r.state.state}`])}}}function Tv(){return"Notification"in window&&Notification.permission==="granted"}const Fr=g("span",{class:"chip said-job",attrs:{role:"status",hidden:!0}});let wh=0;function Av(i){const e=`${i.words}: ${i.state}`;G(Fr,e),Fr.hidden=!1,window.clearTimeout(wh),wh=window.setTimeout(()=>Fr.hidden=!0,15e3),document.hidden&&(As||(Du=document.title),As++,document.title=`(${As}) ${e}`,Tv()&&new Notification("Colure",{body:e}))}document.addEventListener("visibilitychange",()=>{!document.hidden&&As&&(As=0,document.title=Du)});function $n(i){const e=ce("give up",()=>void ke("/api/cancel",{job:i.id}).then(Bs,s=>G(t,Vt(s))),"tiny"),t=g("span",{}),n=g("i",{});return i.state==="waiting"?G(t,`${i.words}: waits, place ${i.place} in the line`):i.state==="at work"?(G(t,`${i.words}: for ${Ei(i.for_s)}${i.usual_s?`, the last one took ${Ei(i.usual_s)}`:""}`),i.usual_s?n.style.width=`${Math.min(95,100*i.for_s/i.usual_s)}%`:n.className="unknown"):G(t,`${i.words}: ${i.state}${i.faults.length?`: ${i.faults.join("; ")}`:""}`),g("div",{class:"job"},g("div",{class:"row"},t,g("span",{class:"spring"}),!os(i)&&e),!os(i)&&g("div",{class:"meter"},n))}function Rv(){const i=g("div",{class:"job-list",attrs:{"aria-live":"polite"}}),e=g("summary",{},"work"),t=g("details",{class:"jobs"},e,i),n=g("p",{class:"small"}),s=()=>{!("Notification"in window)||Notification.permission!=="default"||G(n,ce("tell me when work ends",()=>void Notification.requestPermission().then(()=>G(n)),"tiny"))};Ev(a=>{const o=a.filter(c=>!os(c));t.hidden=a.length===0,G(e,o.length?`work: ${o.length}`:"work"),G(i,n,...a.slice(0,8).map($n)),s()}),window.setInterval(()=>{(Ts.some(a=>!os(a))||t.open)&&Bs().catch(()=>{})},1500);let r=-1;return gt.watch({status:a=>{a.jobs===void 0||a.jobs===r||(r=a.jobs,Bs().catch(()=>{}))}}),[Fr,t]}function ra(i){if(i.lower===null||i.upper===null)return"";const e=Math.min(4,Math.max(1,/\.(\d+)/.exec(i.text)?.[1].length??1));return`${i.lower.toFixed(e)} to ${i.upper.toFixed(e)}`}function Nl(i){return i.value===null?g("span",{class:"quiet"},i.text):g("span",{class:"num"},`${i.text} ${i.unit}`.trim())}class Cv{constructor(e){this.explorer=e}panel=new tt("Figures","card figures-panel");element=this.panel.element;plain=new Map;clear(e=""){this.panel.empty(e)}show(){const{looked:e}=this.explorer,t=e.known;if(!t)return;const n=`${e.run}/${e.state??""}`;e.tried||this.plain.set(n,t.figures);const s=this.plain.get(n),r=t.figures.filter(u=>Math.abs(u.frequency_hz-e.hz)<1),a=r.some(u=>u.lower!==null),o=u=>{const d=s?.find(p=>p.name===u.name&&Math.abs(p.frequency_hz-u.frequency_hz)<1)?.value;return d==null||u.value===null?"":`${u.value>=d?"+":""}${Ge(u.value-d,3)}`},c=jr(r).map(u=>[g("span",{attrs:{title:u.definition}},u.label),Nl(u),e.tried?o(u):ra(u)]),l=Zr({name:()=>zs("figures",e.run,e.state??""),svg:()=>({text:Pv(r),width:560,height:30+18*r.length}),columns:()=>[{name:"figure",values:t.figures.map(u=>u.label)},{name:"frequency / Hz",values:t.figures.map(u=>u.frequency_hz)},{name:"value",values:t.figures.map(u=>u.value)},{name:"lower",values:t.figures.map(u=>u.lower)},{name:"upper",values:t.figures.map(u=>u.upper)},{name:"unit",values:t.figures.map(u=>u.unit)}]}),h=e.tried?"change by the trial":"95 % interval";this.panel.show(e.subject(!0),g("div",{class:"scroll",attrs:{tabindex:0,role:"region","aria-label":"table of figures"}},Fl(vt(["figure","value",h],c,"figures"),jr(r))),g("div",{class:"chart-tools"},l),!a&&!e.tried?this.evaluate():null)}evaluate(){const e=g("div",{}),{looked:t}=this.explorer,n=t.one(),s=ce("with intervals",()=>{s.disabled=!0,hi("/api/evaluate",n,r=>G(e,$n(r))).then(()=>t.run===n.run&&t.state===n.state?this.explorer.again():void 0,r=>{s.disabled=!1,G(e),this.panel.fault(r)})},"","evaluate every figure with its uncertainty");return s.disabled=!_t("operate"),g("div",{},g("p",{class:"small quiet"},_t("operate")?"Values without intervals so far.":"Values without intervals; a session that may operate works them out."),s,e)}}function Fl(i,e){return e.forEach((t,n)=>{if(t.value!==null)return;const s=i.tBodies[0].rows[n];s.deleteCell(2),s.cells[1].colSpan=2}),i}function jr(i){return[...i.filter(e=>e.value!==null),...i.filter(e=>e.value===null)]}function Pv(i){const e=n=>n.replaceAll("&","&amp;").replaceAll("<","&lt;"),t=i.map((n,s)=>`<text x="10" y="${38+18*s}">${e(n.label)}</text><text x="330" y="${38+18*s}">${e(`${n.text} ${n.unit}`)}</text><text x="440" y="${38+18*s}">${e(ra(n))}</text>`);return`<svg xmlns="http://www.w3.org/2000/svg" width="560" height="${30+18*i.length}" font-family="system-ui" font-size="12"><rect width="100%" height="100%" fill="#fff"/>${t.join("")}</svg>`}const Dv=[["frame","match the turn"],["origin","match the place"],["level","match the level"]];class aa{place=g("div",{class:"came"});faults=g("p",{class:"faults",attrs:{role:"alert"}});asked=0;clear(){this.asked++,G(this.place),G(this.faults)}start(e){this.clear();const t=this.asked;e(n=>t===this.asked&&G(this.place,n)).then(n=>t===this.asked&&G(this.place,...n),n=>{t===this.asked&&(G(this.place),G(this.faults,Vt(n)))})}body(e,t,...n){return g("section",{class:"piece",attrs:{"aria-label":e}},g("h3",{},e),g("p",{class:"small quiet"},t),g("div",{class:"row"},...n),this.faults,this.place)}}class Lv{constructor(e){this.explorer=e}panel=new tt("Several runs","card tab-card");element=this.panel.element;leave(){this.panel.leave()}show(){const{looked:e}=this.explorer,t={...e.subject(!1),words:`run ${e.run}${e.state?`, ${e.state}`:""}`};this.panel.ask(t,n=>An("/api/campaigns",[],n),n=>[Lu(this.explorer,n),Nv(this.explorer,n),e.known&&e.known.states.length>1?kv(this.explorer):null,zv(this.explorer,n)])}}function Iv(i,e){return(i.find(t=>t.id===e)?.runs??[]).filter(t=>t.record).map(t=>t.name)}function Ol(i,e){const t=ce(i,e,"main");return t.disabled=!_t("operate"),t.disabled&&(t.title="a session that may operate starts this"),t}function Lu({looked:i},e,t=!0){const n=new aa,s=Iv(e,Ae.campaign).filter(l=>l!==i.run);if(!s.length)return n.body("Compare","There is no second run in this campaign to compare with.");let r=i.beside[0]&&s.includes(i.beside[0])?i.beside[0]:s[0];const a=new Set,o=Dv.map(([l,h])=>{const u=g("input",{attrs:{type:"checkbox"},on:{change:()=>{u.checked?a.add(l):a.delete(l),n.clear()}}});return g("label",{class:"row"},u,h)}),c=i.one();return n.body("Compare","Every figure of both runs. E_n is the change over both uncertainties together; the runs agree where it is 1 or less.",an("other run",s.map(l=>[l,l]),r,l=>{r=l,n.clear()}),...t?o:[],Ol("compare",()=>n.start(async l=>{const h={...c,other:r,matched:[...a]};return Uv(await hi("/api/compare",h,u=>l($n(u))),c.run,r)})))}function Uv(i,e,t){const n=i.middle_hz,s=i.rows.filter(l=>n===null||Math.abs(l.frequency_hz-n)<1),r=i.rows.filter(l=>!l.agrees).length,a=(l,h,u="")=>l===null?"-":`${Ge(l,2)}${h===null?"":` ± ${Ge(h,2)}`} ${u}`.trim(),o=l=>l.value===null&&l.other===null,c=i.matched.length?`Matched: turned by ${i.rotation_deg.map(l=>l.toFixed(3)).join(", ")}° about x, y, z, shifted by ${i.shift_mm.map(l=>l.toFixed(3)).join(", ")} mm, ${Ge(i.level_db,3)} dB.`:"";return[g("p",{class:`verdict ${i.agrees?"good":"bad"}`},i.agrees?"All figures agree.":`${r} of ${i.rows.length} figures do not agree.`),g("p",{class:"small"},i.difference_db===null?"Figure by figure; nothing is matched.":`The fields differ by ${Ge(i.difference_db,1)} dB rms re peak at ${kl(n)}. ${c}`),Bl("figures of both runs",vt(["figure",e,t,"change","agrees"],s.map(l=>[l.label,a(l.value,l.expanded,l.unit),a(l.other,l.other_expanded,l.unit),l.change===null?l.reason||"-":a(l.change,l.change_expanded),o(l)?"-":g("strong",{class:l.agrees?"good":"bad"},l.agrees?"yes":"no")]))),zl(`compared ${e} ${t}`,()=>[{name:"figure",values:i.rows.map(l=>l.label)},{name:"frequency / Hz",values:i.rows.map(l=>l.frequency_hz)},{name:e,values:i.rows.map(l=>l.value)},{name:t,values:i.rows.map(l=>l.other)},{name:"change",values:i.rows.map(l=>l.change)},{name:"its expanded uncertainty",values:i.rows.map(l=>l.change_expanded)},{name:"unit",values:i.rows.map(l=>l.unit)}])]}function Nv({looked:i},e){const t=new aa,n=(e.find(d=>d.id===Ae.campaign)?.runs??[]).filter(d=>d.record&&d.kind==="sphere").sort((d,p)=>(d.measured_at??0)-(p.measured_at??0)),s=n.filter(d=>!d.figures).map(d=>d.name),r=n.filter(d=>d.figures).map(d=>d.name),a=s.length?` Left out, because without intervals: ${s.join(", ")}.`:"";if(r.length<2)return t.body("Series",`A series needs two runs whose figures have intervals; there ${r.length===1?"is one":"are none"}.${a}`);const o=new Set(r);let c=r.includes(i.run)?i.run:r[0];const l=ce("show the series",()=>t.start(async d=>{d(g("p",{class:"quiet loading"},"Being worked out."));const p=r.filter(v=>o.has(v)||v===c),_=await ke("/api/series",{campaign:Ae.campaign,runs:p,golden:c,state:i.state});return Ov(_,i.state)}),"main"),h=()=>{t.clear(),u.forEach(({box:d},p)=>{d.disabled=r[p]===c,d.checked=d.disabled||o.has(r[p])}),l.disabled=!r.some(d=>d!==c&&o.has(d)),l.title=l.disabled?"a series needs another run beside the golden unit's":""},u=r.map(d=>{const p=g("input",{attrs:{type:"checkbox",checked:!0},on:{change:()=>{p.checked?o.add(d):o.delete(d),h()}}});return{box:p,label:g("label",{class:"row"},p,d)}});return h(),t.body("Series",`Spread and trend over the devices in the order they were measured, each against a golden unit.${a}`,an("golden unit",r.map(d=>[d,d]),c,d=>{c=d,h()}),g("div",{class:"row",attrs:{role:"group","aria-label":"runs of the series"}},...u.map(d=>d.label)),l)}function Fv(i){const e=i.runs.map((a,o)=>({run:a,i:o})).filter(({run:a})=>a!==i.golden),t=a=>e.map(({i:o})=>a.e_n[o]),n=i.rows.filter(a=>t(a).some(o=>o!==null&&Math.abs(o)>1)).length,s=i.rows.filter(a=>t(a).some(o=>o===null)).length,r=s?` Of ${s} nothing can be told: a value or its uncertainty is missing.`:"";return n?{good:!1,words:`${n} of ${i.rows.length} figures differ from ${i.golden} by more than both uncertainties.${r}`}:s===i.rows.length?{good:!1,words:`Nothing can be told against ${i.golden}: values or uncertainties are missing.`}:{good:s===0,words:`No figure${s?" that can be compared":""} differs from ${i.golden} by more than both uncertainties.${r}`}}function Ov(i,e){const t=i.rows.map(s=>[s.label,`${Ge(s.mean,2)} ${s.unit}`,Ge(s.spread,3),s.trend===null?"-":`${Ge(s.trend,3)} ± ${Ge(s.trend_expanded,3)}`,...s.e_n.map((r,a)=>i.runs[a]===i.golden?g("span",{class:"quiet"},Ge(s.values[a],2)):g("span",{class:r!==null&&Math.abs(r)>1?"bad":""},`${Ge(s.values[a],2)} (${Ge(r,2)})`))]),n=Fv(i);return[g("p",{class:`verdict ${n.good?"good":"bad"}`},n.words),g("p",{class:"small quiet"},`At ${kl(i.frequency_hz)}${e?`, state ${e}`:""}; in brackets E_n against ${i.golden}. Spread: one standard deviation; trend: change per device.`),Bl("series",vt(["figure","mean","spread","trend",...i.runs],t)),zl("series",()=>[{name:"figure",values:i.rows.map(s=>s.label)},{name:"mean",values:i.rows.map(s=>s.mean)},{name:"spread",values:i.rows.map(s=>s.spread)},{name:"trend per device",values:i.rows.map(s=>s.trend)},{name:"its expanded uncertainty",values:i.rows.map(s=>s.trend_expanded)},...i.runs.flatMap((s,r)=>[{name:s,values:i.rows.map(a=>a.values[r])},...s===i.golden?[]:[{name:`${s} E_n`,values:i.rows.map(a=>a.e_n[r])}]]),{name:"unit",values:i.rows.map(s=>s.unit)}])]}function kv({looked:i}){const e=new aa,t=i.one();return e.body("Coverage","Levels that a share of all solid angle does not exceed, of every state and of the best of all states.",Ol("read the coverage",()=>e.start(async n=>Bv(await hi("/api/coverage",t,s=>n($n(s)))))))}function Bv(i){const e=rt(),t=new pn("coverage over states"),n=i.rows.length-1,s=["","5 3","2 3","8 3 2 3"];return t.draw({x:i.percent,lines:i.rows.map((r,a)=>({name:r.state,values:r.levels,points:i.percent.length<20,colour:a===n?e.cross:[e.co,e.other,e.good,e.quiet][a%4],dash:a===n?"":s[Math.floor(a/4)%4]})),xName:"share of all solid angle / %",yName:`level not exceeded / ${i.unit}`,height:240,digits:1},"coverage over states"),[g("p",{class:"small"},`At ${kl(i.frequency_hz)}, ${i.unit} ± ${i.expanded_db.toFixed(2)} dB (k = 2).`),t.element,Bl("coverage",vt(["state","peak",...i.percent.map(r=>`${r} %`)],i.rows.map((r,a)=>[a===n?g("strong",{},r.state):r.state,Ge(r.peak),...r.levels.map(o=>Ge(o))]))),zl("coverage",()=>[{name:"state",values:i.rows.map(r=>r.state)},{name:`peak / ${i.unit}`,values:i.rows.map(r=>r.peak)},...i.percent.map((r,a)=>({name:`${r} % / ${i.unit}`,values:i.rows.map(o=>o.levels[a])}))])]}function zv({looked:i},e){const t=new aa,n=i.one(),s=e.flatMap(o=>o.runs.filter(c=>c.kind==="sphere"&&!(o.id===Ae.campaign&&c.name===i.run)).map(c=>[`${o.id} ${c.name}`,e.length>1?`${o.folder}: ${c.name}`:c.name])),r="The same device in another range length or turned with its positioner: what moved, and how strong the room's stray signals are.";if(!s.length)return t.body("Two set-ups",`${r} There is no second run of a sphere.`);let a=s[0][0];return t.body("Two set-ups",r,an("other set-up",s,a,o=>{a=o,t.clear()}),Ol("compare the set-ups",()=>t.start(async o=>{const[c,l]=a.split(" "),h=await hi("/api/two-set-ups",{...n,other_campaign:c,other:l},u=>o($n(u)));return[g("ul",{},...h.sentences.map(u=>g("li",{},u)))]})))}function kl(i){return i===null?"mid-band":`${(i/1e9).toFixed(3)} GHz`}function Bl(i,e){return g("div",{class:"scroll",attrs:{tabindex:0,role:"region","aria-label":i}},e)}function zl(i,e){return g("div",{class:"chart-tools no-print"},ce("CSV",()=>Rr(`${zs(i)}.csv`,new Blob([Gh(e())],{type:"text/csv"})),"tiny","save the values as CSV"))}const Hv=10;class Vv{constructor(e){this.explorer=e,this.stopCursor=Ze.watch(t=>this.follow(t))}cuts=new tt("Measured cuts","card tab-card");figures=new tt("Figures","card figures-panel");beside=new tt("Beside another run","card");tools=g("div",{class:"controls"});element=g("div",{},this.tools,this.cuts.element,this.figures.element,this.beside.element);frequency=null;wanted=Ss("f");charts=new Map;shown=[];stopCursor;leave(){this.stopCursor(),this.cuts.leave(),this.figures.leave(),this.beside.leave()}show(){const{looked:e}=this.explorer,t={key:`${e.run}/|${this.frequency??""}`,words:`run ${e.run}`},n={...e.one(),frequency:this.frequency};this.cuts.ask(t,s=>ke("/api/cuts",n,s),s=>{const r=`run ${s.of.run}, ${yn(s.of.frequency_hz??0)}`;return this.shown=s.cuts,this.elsewhere(s)?[]:(this.controls(s),this.table({key:t.key,words:r},s),this.cuts.subject.textContent=r,this.onSphere(s,r),s.cuts.map(a=>this.chart(s,a)))},{keep:!0}).then(s=>{s&&(G(this.cuts.subject,`run ${s.of.run}, ${yn(s.of.frequency_hz??0)}`),this.follow(Ze.at))}),this.frequency===null&&this.beside.ask(t,s=>An("/api/campaigns",[],s),s=>[Lu(this.explorer,s,!1)])}elsewhere(e){const t=this.wanted,n=e.all_hz;if(this.wanted=null,t===null)return!1;const s=Ul(n,t);return Math.abs(n[s]-(e.of.frequency_hz??0))<1?!1:(this.frequency=s,this.show(),!0)}follow(e){for(const t of this.shown){const n=e?$v(t,e):-1;this.charts.get(t.name)?.point(n<0?null:t.angle_deg[n])}}controls(e){if(this.tools.childElementCount||e.all_hz.length<2)return;const t=e.all_hz,n=t.findIndex(r=>Math.abs(r-(e.of.frequency_hz??0))<1),s=r=>{this.frequency=r,Gn({f:String(t[r]/1e9)}),this.show()};G(this.tools,Tn("frequency",0,t.length-1,1,n,s,"",r=>yn(t[r])))}chart(e,t){const n=rt(),s=this.charts.get(t.name)??new pn(t.label);this.charts.set(t.name,s);const r=u=>u===null?null:Gv(t,u);s.moved=u=>Ze.hover(r(u)),s.clicked=u=>Ze.pin(r(u));const a=[{name:e.components[0],values:t.co,colour:n.co,width:2},{name:e.components[1],values:t.cross,colour:n.cross},{name:"95 % interval, lower end",values:t.lower,colour:n.co,dash:"2 3"},{name:"upper end",values:t.upper,colour:n.co,dash:"2 3"}].filter(u=>u.values.some(d=>d!==null)),o=[t.co,t.cross,t.upper].flat().filter(u=>u!==null),c=Math.min(...o)-Hv,l=Ti(a.flatMap(u=>u.values.map(d=>d===null?null:Math.max(d,c))),5),h=[l[0],Math.max(...t.co.map(u=>u??-200))>l[1]-2.5?l[1]+5:l[1]];return s.draw({x:t.angle_deg,lines:a,xName:`${t.angle_name} / deg`,yName:`level / ${t.unit}`,peakOf:0,height:300,yWhole:h},`${t.label} of run ${e.of.run}`),g("div",{},g("h3",{},t.label),s.element)}onSphere(e,t){const{sphere:n,stage:s}=this.explorer.view,r=e.cuts.flatMap(u=>u.directions),a=e.cuts.flatMap(u=>u.co),o=e.cuts[0]?.unit??"dBi",c=a.filter(u=>u!==null),l=Math.ceil(Math.max(-200,...c)/5)*5,h={low:l-50,high:l,unit:o};n.shape({rows:1,columns:r.length/3,closed:!1,directions:r}),n.dots(a,h),n.scaleBar(h,"level"),G(s.caption,`${t[0].toUpperCase()}${t.slice(1)}: ${Cs(r).length} directions, coloured by level. Nothing was measured elsewhere.`),s.hovered=u=>{Ze.hover(u);const d=p=>a[p]===null?null:`${a[p].toFixed(2)} ${o}`;G(s.readout,u?n.told(u,3,d):"")}}table(e,t){const n=jr(t.figures.filter(r=>Math.abs(r.frequency_hz-(t.of.frequency_hz??0))<1)),s=n.map(r=>[g("span",{attrs:{title:r.definition}},r.label),Nl(r),ra(r)]);this.figures.show(e,Fl(vt(["figure","value","95 % interval"],s,"figures"),n))}}function Gv(i,e){const t=i.angle_deg.reduce((n,s,r)=>Math.abs(s-e)<Math.abs(i.angle_deg[n]-e)?r:n,0);return i.directions.slice(3*t,3*t+3)}function $v(i,e){let t=-1,n=Math.cos(2*nt);return i.angle_deg.forEach((s,r)=>{const a=Tt(e,i.directions.slice(3*r,3*r+3));a>n&&([t,n]=[r,a])}),t}class Wv{constructor(e,t,n){this.view=e,this.looked=t,this.changed=n,e.stage.hovered=s=>{Ze.hover(s),this.say(s)}}map=null;stop=null;shape="";asked="";scale(e=this.map){let t=-200;for(const s of e?.total??[])s!==null&&s>t&&(t=s);const n=Math.ceil(t/5)*5;return{low:n-this.looked.span,high:n,unit:this.looked.unit}}clear(){this.stop?.abort(),this.map=null,this.shape=this.asked="",this.view.sphere.clear(),this.view.sphere.scaleBar(null),G(this.view.stage.caption,"Nothing of a run is drawn here yet."),G(this.view.stage.readout)}leave(){this.stop?.abort(),this.stop=null}show(){const{looked:e}=this,t=`${e.subject(!0,e.basis).key}`;if(t===this.asked&&this.map){this.draw();return}this.asked=t,this.stop?.abort();const n=this.stop=new AbortController,s=e.of(!0);ke("/api/map",{...e.body(),frequency:e.frequency,coordinates:"theta-phi",basis:e.basis},n.signal).then(r=>{this.stop!==n||!ul(r.of,s)||(this.map=r,this.draw())},r=>{this.stop!==n||ro(r)||(this.clear(),G(this.view.stage.caption,g("span",{class:"bad"},Vt(r))))})}draw(){const e=this.map,{sphere:t,stage:n}=this.view,{looked:s}=this;if(!e)return;const r=`${e.rows.length} ${e.columns.length} ${e.rows[e.rows.length-1]}`;if(r!==this.shape){this.shape=r;const c=[];for(const h of e.rows)for(const u of e.columns)c.push(...Ht(h,u));const l=e.columns.length>1?e.columns[1]-e.columns[0]:0;t.shape({rows:e.rows.length,columns:e.columns.length,closed:Math.abs(e.columns[e.columns.length-1]-e.columns[0]+l-360)<1e-6,directions:c})}const a=this.scale();t.surface(e[s.component],a,`${s.run} ${s.state} ${r} ${s.component}`);const o=s.component==="total"?"total":e.names[s.component==="first"?0:1];t.scaleBar(a,o),G(n.caption,`Run ${e.of.run}${e.of.state?`, state ${e.of.state}`:""}, ${yn(e.of.frequency_hz??0)}: ${o}, level outwards and in colour.`),this.say(Ze.at)}say(e){const t=e??Ze.at,n=t&&this.map?this.view.sphere.nearest(t):-1;if(!t||!this.map||n<0){G(this.view.stage.readout);return}const s=this.map,r=l=>l===null?"-":l.toFixed(2),a=Ht(s.rows[Math.floor(n/s.columns.length)],s.columns[n%s.columns.length]),o=a[0]*t[0]+a[1]*t[1]+a[2]*t[2]>Math.cos(3*Math.PI/180),c=o&&s.total[n]!==null?`total ${r(s.total[n])} ${this.looked.unit}, ${s.names[0]} ${r(s.first[n])}, ${s.names[1]} ${r(s.second[n])}`:"not measured";G(this.view.stage.readout,`${this.view.sphere.words(o?a:t)}: ${c}`)}controls(){const{looked:e}=this,t=Dl.map(([n,s])=>[n,s]);return g("div",{class:"row"},an("components",t,e.basis,n=>{e.basis=n,e.basisChosen=!0,this.changed()}),an("shown",Il,e.component,n=>{e.component=n,this.changed()}),Tn("range",20,80,10,e.span,n=>{e.span=n,this.changed()}," dB"))}}function bh(i,e,t){const[n,s]=[t*nt,e*nt];if(i==="theta-phi")return Ht(e,t);if(i==="az-el")return[Math.sin(n)*Math.cos(s),Math.sin(s),Math.cos(n)*Math.cos(s)];if(i==="alpha-epsilon")return[Math.sin(n),Math.cos(n)*Math.sin(s),Math.cos(n)*Math.cos(s)];const r=1-e*e-t*t;return r<0?null:[t,e,Math.sqrt(r)]}function Mh(i,[e,t,n]){if(i==="theta-phi"){const[s,r]=Jt([e,t,n]);return{row:s,column:(r+360)%360}}return i==="az-el"?{row:Math.asin(t)/nt,column:Math.atan2(e,n)/nt}:i==="alpha-epsilon"?{row:Math.atan2(t,n)/nt,column:Math.asin(e)/nt}:{row:t,column:e}}class qv{constructor(e){this.explorer=e;const{looked:t}=e,n=an("coordinates",Ll.map(([s,r])=>[s,r]),t.coordinates,s=>{t.coordinates=s,e.changed()});this.element=g("div",{},g("div",{class:"row no-print"},n),this.panel.element),this.map.clicked=s=>Ze.pin(bh(t.coordinates,s.row,s.column)),this.map.moved=s=>Ze.hover(s&&bh(t.coordinates,s.row,s.column)),this.stopCursor=Ze.watch(s=>this.map.point(s&&this.found&&(t.coordinates!=="u-v"||s[2]>=0)?Mh(t.coordinates,s):null))}panel=new tt("Levels over all directions","card tab-card");map=new zn("levels over all directions");found=null;stopCursor;element;leave(){this.stopCursor(),this.panel.leave()}show(){const{looked:e,pattern:t}=this.explorer,n=e.coordinates;this.panel.ask(e.subject(!0,`${n} ${e.basis} ${e.component}`),s=>ke("/api/map",{...e.body(),frequency:e.frequency,coordinates:n,basis:e.basis},s),s=>{this.found=s;const r=t.scale(n==="theta-phi"?s:t.map??s),a=e.component==="total"?"total":s.names[e.component==="first"?0:1],o=c=>c.replace("_deg"," / deg");return this.map.draw({rows:s.rows,columns:s.columns,values:s[e.component],rowName:o(s.row_name),columnName:o(s.column_name),...r,flip:n!=="theta-phi",square:n==="u-v"},`${a} of ${e.run}`),[g("p",{class:"small"},`Shown: ${a}. The colours keep their levels whatever is shown.`),this.map.element,g("p",{class:"small mono"},s.formula)]},{keep:!0,of:s=>s.of,expect:e.of(!0)}).then(s=>s&&this.map.point(Ze.at&&(n!=="u-v"||Ze.at[2]>=0)?Mh(n,Ze.at):null))}}class Xv{constructor(e){this.explorer=e;const{looked:t}=e,n=new Map(t.known.figures.map(a=>[a.name,a.label]));n.has(this.chosen)||(this.chosen=t.known.figures[0]?.name??"");const s=an("figure",[...n],this.chosen,a=>{this.chosen=a,this.show()});this.element=g("div",{},g("div",{class:"row no-print"},s),this.panel.element),this.chart.clicked=a=>{const o=t.known.frequency_hz;t.frequency=o.reduce((c,l,h)=>Math.abs(l/1e9-a)<Math.abs(o[c]/1e9-a)?h:c,0),e.changed()};let r=!0;this.stopCursor=Ze.watch((a,o)=>{o&&!r&&this.show(),r=!1})}panel=new tt("Over frequency","card tab-card");chart=new pn("level over frequency");figure=new pn("figure over frequency");chosen="gain_dbi";stopCursor;element;leave(){this.stopCursor(),this.panel.leave()}show(){const{looked:e}=this.explorer,t=e.known;if(t.frequency_hz.length<2){this.panel.empty("This run holds one frequency.",e.subject(!1));return}const[n,s]=Ze.at?Jt(Ze.at):[0,0],r=rt(),a={...e.body(),theta_deg:n,phi_deg:s,basis:e.basis};this.panel.ask(e.subject(!1,`${n} ${s} ${e.basis} ${this.chosen}`),o=>ke("/api/spectrum",a,o),o=>{const c=o.frequency_hz.map(d=>d/1e9),l=[{at:e.hz/1e9,colour:r.focus,text:"looked at"}];this.chart.draw({x:c,lines:[{name:o.names[0],values:o.first,colour:r.co,points:c.length<40},{name:o.names[1],values:o.second,colour:r.cross,dash:"6 3",points:c.length<40},{name:"total",values:o.total,colour:r.ink,width:1.1}],xName:"frequency / GHz",yName:`level / ${e.unit}`,yWhole:Ti([...o.total,...o.first,...o.second].map(d=>d===null?null:Math.max(d,-60)),5),marks:l,peakOf:2,digits:3},`spectrum of ${e.run}`);const h=t.figures.filter(d=>d.name===this.chosen),u=h.some(d=>d.value!==null);return u&&this.figure.draw({x:h.map(d=>d.frequency_hz/1e9),lines:[{name:h[0].label,values:h.map(d=>d.value),colour:r.co,points:!0},...h.some(d=>d.lower!==null)?[{name:"95 % interval",values:h.map(d=>d.lower),colour:r.band,dash:"3 3"},{name:"to",values:h.map(d=>d.upper),colour:r.band,dash:"3 3"}]:[]],xName:"frequency / GHz",yName:`${h[0].label} / ${h[0].unit||"1"}`,yWhole:Ti(h.flatMap(d=>[d.value,d.lower,d.upper]),.5),marks:l,height:240,digits:3},`${h[0].label} of ${e.run}`),[g("p",{class:"small"},`Direction theta ${n.toFixed(1)}°, phi ${s.toFixed(1)}°${Ze.at?"":" (boresight; a click on sphere, map or cut sets another)"}. A click in the chart sets the frequency.`),this.chart.element,g("h3",{},"A figure over frequency"),u?this.figure.element:g("p",{class:"quiet"},"This figure has no value here.")]},{keep:!0,of:o=>o.of,expect:e.of(!1)})}}class jv{constructor(e){this.explorer=e,this.map.clicked=t=>Ze.pin(Ht(t.row,t.column)),this.map.moved=t=>Ze.hover(t&&Ht(t.row,t.column)),this.stopCursor=Ze.watch(t=>this.map.point(t&&this.place(t)))}panel=new tt("Total of both polarizations","card tab-card");figures=new tt("Figures","card figures-panel");tools=g("div",{class:"controls row"});map=new zn("total level over all directions");frequency=null;wanted=Ss("f");stopCursor;element=g("div",{},this.tools,this.panel.element,this.figures.element);leave(){this.stopCursor(),this.panel.leave(),this.figures.leave()}show(){const{looked:e}=this.explorer,t=e.state?`, state ${e.state}`:"",n={key:`${e.run}/${e.state??""}|${this.frequency??""}`,words:`run ${e.run}${t}`},s={...e.one(),frequency:this.frequency};this.panel.ask(n,r=>ke("/api/power",s,r),r=>this.elsewhere(r)?[]:this.draw(r,n),{keep:!0}).then(r=>r&&G(this.panel.subject,`${n.words}, ${yn(r.of.frequency_hz??0)}`))}draw(e,t){const n=`${t.words}, ${yn(e.of.frequency_hz??0)}`;this.controls(e);const s=jr(e.figures.filter(l=>Math.abs(l.frequency_hz-(e.of.frequency_hz??0))<1)),r=s.map(l=>[g("span",{attrs:{title:l.definition}},l.label),Nl(l),ra(l)]);this.figures.show({key:t.key,words:n},Fl(vt(["figure","value","95 % interval"],r,"figures"),s));const a=e.total.filter(l=>l!==null),o=Math.ceil(a.reduce((l,h)=>Math.max(l,h),-200)/5)*5,c={low:o-this.explorer.looked.span,high:o,unit:e.unit};return this.onSphere(e,c,n),this.map.draw({rows:e.rows,columns:e.columns,values:e.total,rowName:"theta / deg",columnName:"phi / deg",...c},`total of ${e.of.run}`),[g("p",{class:"small"},"The receiver gave levels without phase: no polarization, no phase centre, no transform."),this.map.element]}controls(e){if(this.tools.childElementCount)return;const{looked:t}=this.explorer,n=e.all_hz,s=n.findIndex(r=>Math.abs(r-(e.of.frequency_hz??0))<1);G(this.tools,n.length>1&&Tn("frequency",0,n.length-1,1,s,r=>this.change(r,n),"",r=>yn(n[r])),e.states.length>1&&an("state",e.states.map(r=>[r,r]),t.state??e.states[0],r=>{t.state=r,t.keep(),this.show()}))}change(e,t){this.frequency=e,Gn({f:String(t[e]/1e9)}),this.show()}elsewhere(e){const t=this.wanted===null?-1:Ul(e.all_hz,this.wanted);return this.wanted=null,t<0||Math.abs(e.all_hz[t]-(e.of.frequency_hz??0))<1?!1:(this.change(t,e.all_hz),!0)}place([e,t,n]){const[s,r]=Jt([e,t,n]);return{row:s,column:(r+360)%360}}onSphere(e,t,n){const{sphere:s,stage:r}=this.explorer.view,a=[],{rows:o,columns:c}=e;for(const u of o)for(const d of c)a.push(...Ht(u,d));const l=c.length>1?c[1]-c[0]:0,h=Math.abs(c[c.length-1]-c[0]+l-360)<1e-6;s.shape({rows:o.length,columns:c.length,closed:h,directions:a}),s.surface(e.total,t,`power ${n}`),s.scaleBar(t,"total"),G(r.caption,`${n[0].toUpperCase()}${n.slice(1)}: total level outwards and in colour, without phase.`),r.hovered=u=>{Ze.hover(u);const d=p=>e.total[p]===null?null:`${e.total[p].toFixed(2)} ${t.unit}`;G(r.readout,u?s.told(u,.75*Math.max(l,4),d):"")}}}const Iu={complete:"complete",stopped:"stopped, can go on",begun:"begun, can go on",damaged:"journal cannot be read",nothing:"empty"},Yv=[["tag","tag"],["operator","operator"],["serial","serial number"],["customer","customer"],["order","order"],["note","notes"]];function Kv(i,e){const t=[i.name,i.kind,Iu[i.state],...Object.values(i.identity)].join(" ").toLowerCase();return e.toLowerCase().split(/\s+/).every(n=>t.includes(n))}function Zv(i){const e=i.total&&i.state!=="complete"?` (${i.measured} of ${i.total})`:"";return`${Iu[i.state]}${e}`}class Jv{constructor(e){this.open=e,this.element=g("details",{class:"card drawer",attrs:{open:!0}},this.summary,this.search,this.list),this.draw()}list=g("div",{class:"runs"});element;runs=[];chosen="";loaded=!1;asking=!1;wanted=[];thumbs=new Map;stop=new AbortController;campaign=Ae.campaign;seen=new IntersectionObserver(e=>{for(const t of e)t.isIntersecting&&(this.seen.unobserve(t.target),this.wanted.push(t.target.getAttribute("data-thumb")??""));this.askThumbs()});search=g("input",{attrs:{type:"search",placeholder:"find by name, tag, operator, state","aria-label":"find runs"},on:{input:()=>this.draw()}});summary=g("summary",{},"Runs");fill(e){this.runs=e,this.loaded=!0,this.draw()}leave(){this.stop.abort(),this.seen.disconnect()}thumbOf(e){const t=this.thumbs.get(e.name);if(t)return t;const n=g("span",{class:"thumb",attrs:{"data-thumb":e.name}});return this.thumbs.set(e.name,n),this.seen.observe(n),n}async askThumbs(){if(!this.asking){this.asking=!0;for(let e;(e=this.wanted.shift())!==void 0&&!this.stop.signal.aborted;){const t=this.thumbs.get(e);try{const n=await ke("/api/thumb",{campaign:this.campaign,run:e},this.stop.signal);t&&G(t,ex(n)),t&&(t.title=Qv[n.what])}catch{}}this.asking=!1}}choose(e){this.chosen=e,G(this.summary,"Runs",g("span",{class:"subject mono"},e?`open: ${e}`:""));for(const t of this.list.querySelectorAll("button[data-run]"))t.setAttribute("aria-pressed",String(t.getAttribute("data-run")===e))}draw(){const e=this.runs.filter(t=>Kv(t,this.search.value));this.loaded?this.runs.length?e.length?G(this.list,...e.map(t=>this.card(t))):G(this.list,g("p",{class:"quiet"},"No run has these words.")):G(this.list,g("p",{class:"quiet"},"No runs yet. Scan makes them; colure acquire does too.")):G(this.list,g("p",{class:"quiet"},"The runs are being listed.")),this.choose(this.chosen)}card(e){const t=e.measured_at?new Date(1e3*e.measured_at).toLocaleString([],{dateStyle:"medium",timeStyle:"short"}):"",n=e.kind==="begun"?"not sealed":e.kind==="power"?"power only":e.kind,s=g("button",{class:"run",on:{click:()=>this.open(e.name)},attrs:{type:"button","data-run":e.name,"aria-pressed":"false"}},this.thumbOf(e),g("strong",{},e.name),g("span",{class:"small"},[n,e.identity.tag,e.identity.operator].filter(Boolean).join(", ")),g("span",{class:`small ${e.state==="complete"?"good":"warn-text"}`},Zv(e)),g("span",{class:"small quiet"},t)),r=ce("notes",()=>this.about(e),"tiny","tag, operator, notes");r.setAttribute("aria-label",`notes of ${e.name}`);const a=ce("again",()=>hl(e.name),"tiny","measure slices of it again");return a.setAttribute("aria-label",`measure slices of ${e.name} again`),g("div",{class:"run-card"},s,g("span",{class:"run-tools"},e.state==="complete"&&e.total>0&&_t("operate")&&a,r))}about(e){const t=g("p",{class:"faults",attrs:{role:"alert"}}),n=Yv.map(([s,r])=>{const a=s==="note"?g("textarea",{attrs:{rows:4,maxlength:2e3,disabled:!_t("operate")}}):g("input",{attrs:{maxlength:200,disabled:!_t("operate")}});return a.value=e.identity[s]??"",[s,r,a]});Vn(`What is said of ${e.name}`,s=>[...n.map(([,r,a])=>g("label",{class:"field stacked"},g("span",{},r),a)),t,g("div",{class:"row"},g("span",{class:"small quiet"},"Kept beside the record and shown in its reports. An empty entry leaves the former one."),g("span",{class:"spring"}),_t("operate")&&ce("keep",()=>{const r=Object.fromEntries(n.map(([a,,o])=>[a,o.value.trim()]).filter(([,a])=>a));ke("/api/identity",{campaign:Ae.campaign,run:e.name,said:r}).then(a=>{e.identity=a,this.draw(),s()},a=>G(t,Vt(a)))},"main"))])}}const Qv={pattern:"total level over theta (down) and phi (across), 40 dB","as read":"levels as they were read, over theta (down) and phi (across), 40 dB; no pattern was processed yet",cut:"the first cut, 40 dB","":"nothing measured"};function ex(i){if(!i.what)return null;const e=g("canvas",{attrs:{width:i.what==="cut"?192:48,height:i.what==="cut"?48:24,"aria-hidden":"true"}}),t=e.getContext("2d");if(!t)return null;if(i.what==="cut")return t.strokeStyle=rt().co,t.lineWidth=2,i.shades.forEach((s,r)=>t.lineTo(192*r/(i.shades.length-1),46-44*s/255)),t.stroke(),e;const n=t.createImageData(48,24);return i.shades.forEach((s,r)=>{for(let a=0;a<3;a++)n.data[4*r+a]=Bn[3*Math.max(0,s)+a];n.data[4*r+3]=s<0?0:255}),t.putImageData(n,0,0),e}class us{constructor(e,t){this.explorer=e,this.panel=new tt(t,"card tab-card"),this.element=this.panel.element}panel;element;leave(){this.panel.leave()}}class tx extends us{size=new zn("amplitude on the face");turn=new zn("phase on the face");grid=g("canvas",{class:"elements",attrs:{role:"img","aria-label":"excitation of every element, dB"}});constructor(e){super(e,"Waves drawn back to the device's face")}show(){const{looked:e}=this.explorer;this.panel.ask(e.subject(!0),t=>ke("/api/aperture",{...e.body(),frequency:e.frequency},t),({face:t})=>t?(this.draw(t),[g("div",{class:"two"},g("div",{},g("h3",{},"Amplitude"),this.size.element),g("div",{},g("h3",{},"Phase"),this.turn.element)),g("h3",{},"Excitation of every element / dB"),this.grid,...t.suspects.length?t.suspects.map(n=>g("p",{class:"bad"},n)):[g("p",{},"No element stands out.")]]):[g("p",{},"device.toml declares no [elements]: there is no face to draw the waves back to.")],{keep:!0,of:t=>t.of,expect:e.of(!0)})}draw(e){const t={rows:e.y_mm,columns:e.x_mm,rowName:"y / mm",columnName:"x / mm",flip:!0,square:!0};this.size.draw({...t,values:e.level_db,low:-25,high:0,unit:"dB"}),this.turn.draw({...t,values:e.phase_deg,low:-180,high:180,unit:"deg",ramp:Qu}),nx(this.grid,e.elements,e.excitation_db)}}function nx(i,e,t){const s=window.devicePixelRatio||1;i.style.width=i.style.height="340px",i.width=i.height=340*s;const r=i.getContext("2d"),a=e.flat();r.scale(s,s);const o=Math.min(...a),c=Math.max(...a),l=(c-o)/Math.max(1,Math.round(Math.sqrt(e.length))-1),h=d=>(d-o+l/2)/(c-o+l)*340,u=l/(c-o+l)*340;r.font="11px system-ui",r.textAlign="center",r.textBaseline="middle",e.forEach(([d,p],_)=>{const v=3*Math.max(0,kr(t[_],-15,0));r.fillStyle=`rgb(${Bn[v]} ${Bn[v+1]} ${Bn[v+2]})`,r.fillRect(h(d)-u/2+1,340-h(p)-u/2+1,u-2,u-2),r.fillStyle=t[_]>-9?"#12191f":"#ffffff",r.fillText(t[_].toFixed(1),h(d),340-h(p))})}class ix extends us{chart=new pn("impulse response");constructor(e){super(e,"Impulse response of the strongest check")}show(){const{looked:e}=this.explorer,t=e.known?.frequency_hz.length??0;if(t<3){const n=t===1?"1 frequency":`${t} frequencies`;this.panel.empty(`This run holds ${n}; an impulse response needs at least 3.`,e.subject(!1));return}this.panel.ask(e.subject(!1),n=>ke("/api/impulse",e.one(),n),n=>this.draw(n),{of:n=>({...n.of,state:e.state}),expect:e.of(!1)})}draw(e){const{looked:t,open:n}=this.explorer,[s,r]=e.widths_ns,a=p=>Math.round(100*p)/100;let o=a(t.gate?.[0]??e.strongest_ns),c=a(t.gate?.[1]??Math.max(s,.5*r));const l=()=>{const p=rt(),_=r>0?[{at:o-c/2,to:o+c/2,colour:p.cross,text:t.gate?"gate, tried":"gate"}]:[];this.chart.draw({x:e.time_ns,lines:[{name:"strongest check",values:e.level_db,colour:p.co}],xName:"time / ns",yName:"level / dB",height:320,yWhole:[-70,5],marks:_,peakOf:0,digits:2},`impulse response of ${t.run}`)};this.chart.clicked=p=>{o=a(p),this.show()},l();const h=g("p",{class:"small quiet"},"Hann window. A gate tried here changes every view and figure of this page, and nothing on disk; recipe.toml keeps one.");if(r<=0)return[this.chart.element,h,g("p",{class:"small quiet"},"A gate needs five frequencies or more.")];const u=a((r-s)/200)||.01,d=Math.floor(r/u)*u;return[this.chart.element,g("div",{class:"row"},Tn("gate, middle",0,a(e.time_ns[e.time_ns.length-1]),u,o,p=>{o=p,l()}," ns"),Tn("gate, width",Math.ceil(s/u)*u,d,u,c,p=>{c=p,l()}," ns"),ce("try this gate",()=>void n(t.run,t.state,t.off,[o,c]),"main"),...t.gate?[ce("no gate",()=>void n(t.run,t.state,t.off,null))]:[]),g("p",{class:"small"},`${a(s)} ns is the narrowest that the span resolves, ${a(r)} ns the widest before echoes repeat.`),h]}}class sx extends us{constructor(e){super(e,"Steps of the recipe")}show(){const{looked:e,open:t}=this.explorer,n=e.known,s=e.one(),r=n.steps.map(l=>{const h=g("input",{attrs:{type:"checkbox",checked:l.on,disabled:!l.may_change},on:{change:()=>void t(e.run,e.state,h.checked?e.off.filter(u=>u!==l.name):[...e.off,l.name],e.gate)}});return g("label",{class:"row"},h,l.name)}),a=g("div"),o=ce("what does every step do?",()=>{o.disabled=!0,hi("/api/effects",s,l=>G(a,$n(l))).then(l=>{Sh.set(JSON.stringify(s),l),e.run===s.run&&this.explorer.changed()},l=>{o.disabled=!1,G(a),this.panel.fault(l)})});o.disabled=!_t("operate");const c=Sh.get(JSON.stringify(s));c&&G(a,rx(c)),this.panel.show(e.subject(!1),g("p",{},"Switch a step off, and every view and figure follows. The record itself is never changed."),g("div",{class:"steps-list"},...r),o,a)}}const Sh=new Map;function rx(i){const e=Object.keys(i.without),t=Object.keys(i.whole).map(n=>[i.labels[n],Ge(i.whole[n],3),...e.map(s=>{const r=i.without[s][n],a=i.whole[n];return r===null||a===null?"-":`${r-a>=0?"+":""}${(r-a).toFixed(3)}`})]);return g("div",{class:"scroll",attrs:{tabindex:0,role:"region","aria-label":"effect of every step"}},vt(["figure","all steps",...e.map(n=>`without ${n}`)],t))}function ax(i,e){const t=Yu(e);if(!t||!_t("operate"))return null;const n=t==="reference"?"the reference":`slices ${t}`;return g("span",{}," ",ce(`measure ${n} again`,()=>hl(i,t),"tiny"))}class ox extends us{constructor(e){super(e,"Self-consistency checks")}show(){const{looked:e}=this.explorer;this.panel.ask(e.subject(!1),t=>ke("/api/findings",e.one(),t),({rows:t})=>[vt(["what","field / dB re peak","in words"],t.map(n=>[n.topic,n.level_db<=-199?"":Ge(n.level_db,1),g("span",{},n.text,ax(e.run,n.text))]))],{of:t=>t.of,expect:e.of(!1),waiting:"The data are asked what is wrong with them."})}}class lx extends us{constructor(e){super(e,"Verdict against limits.toml")}show(){const{looked:e}=this.explorer;if(!e.known?.specification){this.panel.empty("There is no limits.toml beside the campaign: nothing to hold the run against.",e.subject(!1));return}this.panel.ask(e.subject(!1),t=>ke("/api/verdicts",e.one(),t),t=>[t?cx(t):g("p",{class:"quiet"},"limits.toml was not held against this run yet."),this.judge()],{of:t=>t?.of??null,expect:e.of(!1)})}judge(){const{looked:e}=this.explorer,t=e.one(),n=g("div"),s=ce("hold limits.toml against this run",()=>{s.disabled=!0,hi("/api/judge",t,r=>G(n,$n(r))).then(()=>e.run===t.run&&this.explorer.changed(),r=>{s.disabled=!1,G(n),this.panel.fault(r)})},"main");return s.disabled=!_t("operate"),g("div",{class:"no-print"},s,n)}}function cx(i){const e=t=>t==="pass"?"good":t==="fail"?"bad":"warn-text";return g("div",{},g("p",{class:`verdict ${e(i.outcome)}`},`${i.specification}: ${i.outcome}`),g("p",{class:"small quiet"},`${i.document?`${i.document}; decided`:"Decided"} by ${i.decision}.`),i.current?"":g("p",{class:"warn"},"The record or limits.toml changed since: hold it against the run again."),vt(["requirement","outcome","margin","in words"],i.rows.map(t=>[t.requirement,g("strong",{class:e(t.outcome)},t.outcome),t.margin===null?"-":`${Ge(t.margin,2)} ${t.unit}`,t.text]),"verdicts"))}class hx extends us{constructor(e){super(e,"Report")}show(){const{looked:e,again:t}=this.explorer,n=e.known,s=e.one(),r=g("div",{class:"row"}),a=e.state===null?"":`?state=${encodeURIComponent(e.state)}`,o=()=>["html","pdf"].map(l=>g("a",{attrs:{href:`/api/report/${Ae.campaign}/${e.run}/${l}${a}`,target:"_blank",rel:"noopener"}},`open the report (${l})`));n.report&&G(r,...o());const c=ce("write the report",()=>{c.disabled=!0,hi("/api/report",s,l=>G(r,$n(l))).then(()=>e.run===s.run&&e.state===s.state?t():void 0,l=>{c.disabled=!1,G(r),this.panel.fault(l)})},"main");c.disabled=!_t("operate"),this.panel.show(e.subject(!1),g("p",{},n.specification?"With a verdict against limits.toml on its first page.":"Without a verdict: there is no limits.toml beside the campaign."),c,r,g("p",{class:"small quiet"},"The page itself prints too (Ctrl + P): the opened view with its run, state and frequency."))}}const il=[["cuts","Cuts"],["map","Map"],["frequency","Over frequency"],["aperture","Aperture"],["impulse","Impulse"],["recipe","Recipe"],["findings","Findings"],["verdict","Verdict"],["together","Several runs"],["report","Report"]];function ux(i){const e=new yh,t=new tt("Run","card opened"),n=g("div",{class:"tab-panel",attrs:{id:"explore-panel"}}),s=g("div",{class:"controls"}),r=new Map;let a=!0,o=[],c=null,l=0;const h=async(R,N,U=[],k=null)=>{const B=R!==e.run||N!==e.state;Object.assign(e,{run:R,state:N,off:U,gate:k}),e.beside=e.beside.filter(q=>q!==R),e.known=null,M.choose(R),B&&(D.clear(),P.clear()),S(),D.element.hidden=!1,G(n),G(s),r.get(R)==="cuts"?u(new Vv(C),"Cuts or single directions: figures of a sphere do not follow from them."):r.get(R)==="power"?u(new jv(C),"Levels without phase."):await d()},u=(R,N)=>{t.show(e.subject(!1),g("p",{class:"small"},N)),c=R,e.keep(),G(s,R.element),D.element.hidden=!0,R.show()},d=async()=>{const R=e.run,N=()=>JSON.stringify([e.off,e.gate]),U=N(),k=await t.ask(e.subject(!1),B=>ke("/api/overview",e.body(),B),B=>(e.open(B),[p()]),{of:B=>B.of,expect:e.of(!1),waiting:"The run is being processed; the first time takes some seconds."});if(!(!a||R!==e.run||U!==N())){if(!k&&(e.off.length||e.gate)){D.clear("This trial was refused: no figure follows from it."),G(s,ce("without the trial",()=>void h(R,e.state),"main"));return}if(!k){D.clear("No figure follows from what this run holds so far."),await Sv(i,R,s,()=>a&&R===e.run&&!e.known);return}G(t.subject,e.subject(!1).words),_(),P.show(),D.show(),E(e.tab)}},p=()=>{const R=e.known;return g("p",{class:"small"},R.demo?"Simulated chamber, invented device. ":"",`${R.frequency_hz.length} ${R.frequency_hz.length===1?"frequency":"frequencies"}, measured out to ${R.region_deg.toFixed(0)}° from boresight.`,e.tried?g("strong",{class:"warn-text"},` A trial${e.off.length?`, without ${e.off.join(", ")}`:""}${e.gate?`, gate ${e.gate[1].toFixed(2)} ns about ${e.gate[0].toFixed(2)} ns`:""}: nothing of it is kept.`):null,e.moved&&g("span",{class:"warn-text"},` ${e.moved}`),...R.edited.flatMap(N=>[g("br"),g("span",{class:"warn-text"},N)]))},_=()=>{const R=e.known,N=R.frequency_hz;v();const U=ce("play",()=>{l?v():l=window.setInterval(()=>{if(document.querySelector(".panel[aria-busy]"))return;const k=s.querySelector("input[type=range]");k.value=String((e.frequency+1)%N.length),k.dispatchEvent(new Event("input"))},400),G(U,l?"pause":"play")},"tiny","go through the frequencies");G(s,N.length>1&&g("div",{class:"row"},Tn("frequency",0,N.length-1,1,e.frequency,k=>{e.frequency=k,f()},"",k=>yn(N[k])),U),R.states.length>1&&an("state",R.states.map(k=>[k,k]),e.state??R.states[0],k=>void h(e.run,k,e.off,e.gate)),P.controls(),Wu(il,e.tab,n,k=>E(k,!0)),n)},v=()=>{window.clearInterval(l),l=0};let m=0;const f=()=>{window.clearTimeout(m),m=window.setTimeout(()=>{e.keep(),P.show(),D.show(),c?.show()},60)},S=()=>{c?.leave?.(),c=null},E=(R,N=!1)=>{e.known&&(e.tab=il.some(([U])=>U===R)?R:"cuts",e.keep(N),S(),c=O[e.tab](),G(n,c.element),c.show())},M=new Jv(R=>void h(R,null)),P=new Wv(i,e,()=>f()),C={looked:e,view:i,runs:()=>o,open:h,changed:f,again:d,pattern:P},D=new Cv(C),O={cuts:()=>new bv(C),map:()=>new qv(C),frequency:()=>new Xv(C),aperture:()=>new tx(C),impulse:()=>new ix(C),recipe:()=>new sx(C),findings:()=>new ox(C),verdict:()=>new lx(C),together:()=>new Lv(C),report:()=>new hx(C)};return t.empty("The runs are being listed."),D.clear("Figures stand here once a run is open."),P.clear(),(async()=>{ke("/api/motion",{campaign:Ae.campaign}).then(R=>a&&i.chamber.build(R),()=>{}),i.chamber.rest();try{const R=await An("/api/campaigns");if(!a)return;const N=R.find(B=>B.id===Ae.campaign)?.runs??[];o=N.filter(B=>B.kind==="sphere").map(B=>B.name);for(const B of N)r.set(B.name,B.kind);M.fill(N),M.element.open=N.length!==1&&!e.run;const U=N.find(B=>B.kind==="sphere")??N.find(B=>B.kind!=="begun")??N[0],k=e.run||U?.name;k?await h(k,e.state,e.off,e.gate):t.empty("What a run holds is shown here: cuts, maps, figures, findings, report.")}catch(R){t.fault(R)}})(),Gn({}),{title:"Explore",element:g("div",{class:"page explore-page"},M.element,t.element,s,D.element),follow:()=>{if(!e.known)return;const R=new yh;R.open(e.known);const N=[R,e].map(ee=>JSON.stringify([ee.state,ee.off,ee.gate,ee.frequency,ee.plane,ee.basis,ee.coordinates,ee.component,ee.beside,ee.tab,ee.span]));if(N[0]===N[1])return;const{run:U,state:k,off:B,gate:q,frequency:J,plane:X,basis:le,basisChosen:fe,coordinates:W,component:ue,beside:Ce,tab:Oe,span:$e}=R,Q=k===e.state&&B.join()===e.off.join()&&q?.join()===e.gate?.join();if(Object.assign(e,{frequency:J,plane:X,basis:le,basisChosen:fe,coordinates:W,component:ue,beside:Ce,tab:Oe,span:$e}),!Q){h(U,k,B,q);return}_(),P.show(),D.show(),E(e.tab)},leave:()=>{a=!1,M.leave(),v(),window.clearTimeout(m),t.leave(),P.leave(),S()}}}const to=["goal.start_ghz","goal.stop_ghz","goal.points"];function dx(i,e){return(e["goal.band"]??i.rows).map(t=>({...t}))}function fx(i){const e=Number(i?.start_ghz??1),t=Number(i?.stop_ghz??e),n=Math.max(t-e,.01*t),s=r=>Number(r.toPrecision(6));return{start_ghz:s(t+n),stop_ghz:s(t+2*n),points:Math.max(2,Number(i?.points??2))}}function px(i,e,t,n){const s=i.listed==="",r=(c,l,h)=>{const u=i.columns[h],d=u.key.replace("band.",""),p=c.frequencies_ghz,_=g("span",{},u.unit===u.label?u.label:`${u.label} / ${u.unit}`);if(Array.isArray(p)&&["start_ghz","stop_ghz","points","step_mhz"].includes(d)){if(h)return null;const m=p.slice(0,5).join(", ")+(p.length>5?`, ... (${p.length})`:"");return g("div",{class:"listed small"},`${m} GHz: a list of its own, which is edited in goal.toml`)}const v=g("input",{attrs:{type:"number",step:u.whole?"1":"any",value:c[d]===null||c[d]===void 0?"":String(c[d]),placeholder:d.startsWith("if_")||d.startsWith("power")?"of all":"","aria-label":`band ${l+1}, ${u.label} in ${u.unit}`,title:`${u.help} From ${u.least??"-"} to ${u.most??"-"} ${u.unit}.`,disabled:!s},on:{input:()=>{c[d]=v.value===""?null:Number(v.value);const m=d==="points"?"step_mhz":d==="step_mhz"?"points":"";if(m&&v.value!==""&&c[m]!==void 0&&c[m]!==null){c[m]=null;const f=i.columns.findIndex(E=>E.key===`band.${m}`),S=v.closest(".band").querySelectorAll("input")[f];S&&(S.value="")}t(e)}}});return g("label",{},_,v)},a=c=>ce("remove",()=>{e.splice(c,1),t(e),n()},"tiny",`remove band ${c+1}`),o=ce("add a band",()=>{e.push(fx(e[e.length-1])),t(e),n()},"tiny");return g("div",{class:"bands"},g("p",{class:"small quiet"},s?i.help:`From the list ${i.listed}: it is edited there. ${i.help}`),...e.map((c,l)=>g("div",{class:"band",attrs:{role:"group","aria-label":`band ${l+1}`}},g("strong",{},`${l+1}`),g("div",{class:"band-boxes"},...i.columns.map((h,u)=>r(c,l,u))),s&&e.length>1&&a(l))),g("p",{class:"field-fault",attrs:{role:"status"}}),s?o:"")}class mx{constructor(e,t,n,s){this.campaign=e,this.changed=n,this.again=s;const r=dx(t.bands,ii(e)),a=t.fields.filter(o=>!r.length||!to.includes(o.key));for(const o of new Set(a.map(c=>c.group)))this.element.append(g("fieldset",{},g("legend",{},o),...o==="Wanted"?[r.length?this.bands(t,r):null]:[],...a.filter(c=>c.group===o).map(c=>this.field(c)),o==="Wanted"&&!r.length&&this.several(t)))}element=g("form",{on:{submit:e=>e.preventDefault()}});labels=new Map;bands(e,t){const n=JSON.stringify(e.bands.rows),s=px(e.bands,t,r=>{const a=r.map(o=>Object.fromEntries(Object.entries(o).filter(([,c])=>c!==null)));Xs(this.campaign,"goal.band",JSON.stringify(a)===n?void 0:r),this.changed()},this.again);return this.labels.set("goal.band",s),s}several(e){return ce("several bands",()=>{const t=ii(this.campaign),n=o=>t[o]??e.fields.find(c=>c.key===o)?.value??null,[s,r,a]=to.map(n);for(const o of to)Xs(this.campaign,o,void 0);Xs(this.campaign,"goal.band",[{start_ghz:s,stop_ghz:r,points:a}]),this.again(),this.changed()},"tiny",e.bands.help)}set(e,t){const n=JSON.stringify(t)===JSON.stringify(e.value);this.labels.get(e.key)?.classList.toggle("changed",!n),Xs(this.campaign,e.key,n?void 0:t),this.changed()}field(e){const t=ii(this.campaign),n=e.key in t?t[e.key]:e.value,s=e.least!==null||e.most!==null?`from ${e.least??"-"} to ${e.most??"-"} ${e.unit}`:"",r=[e.help,s].filter(Boolean).join(" "),a=g("label",{class:e.key in t?"field changed":"field",attrs:{title:r}},g("span",{},e.label));this.labels.set(e.key,a);const o=g("span",{class:"field-fault"});if(e.choices.length){const l=g("select",{on:{change:()=>this.set(e,l.value)}},...e.choices.map(h=>g("option",{attrs:{value:h}},h)));return l.value=String(n),a.append(l,g("span",{class:"unit"}),o),a}if(Array.isArray(e.value)){const h=n.map((u,d)=>g("input",{attrs:{type:"number",step:"any",value:String(u),"aria-label":`${e.label}, ${"xyz"[d]??d}`},on:{input:()=>this.set(e,h.map(p=>Number(p.value)))}}));return a.classList.add("three"),a.append(...h,g("span",{class:"unit"},e.unit||"mm"),o),g("div",{class:"field-group"},a)}const c=g("input",{attrs:{type:"number",step:e.whole?"1":"any",value:n==null?"":String(n),placeholder:e.optional?"chosen":""},on:{input:()=>this.set(e,c.value===""?e.optional?null:e.value:Number(c.value))}});return a.append(c,g("span",{class:"unit"},e.unit===e.label?"":e.unit),o),a}marks(e){for(const[t,n]of this.labels){const s=t.split(".").at(-1),r=s==="band"?/(^|[\s.:])band([. ]\d|:| =)/:new RegExp(`(^|[\\s.:])${s} =`),a=e.find(o=>r.test(o))??"";n.classList.toggle("wrong",a!==""),n.querySelector(".field-fault").textContent=a.slice(a.indexOf("must")>=0?a.indexOf("must"):0);for(const o of n.querySelectorAll("input, select"))o.setAttribute("aria-invalid",String(a!==""))}}}const gx=["scan","boresight check","reference","resume","turn","cable"];function _x(i){const e=new tt("Campaign","card plan-form"),t=new tt("What follows","card plan-answer"),n=new tt("Rehearsal"),s=new tt("Positioners and polarization schemes"),r=g("div",{class:"small mono"}),a=g("div",{class:"walk"},g("p",{class:"quiet small"},"The path of the scan is being worked out.")),o=g("p",{class:"small quiet",attrs:{role:"status"}}),c=Ae.campaign;let l=null,h=null,u=0,d=0,p=0,_=null,v=0,m="",f="";const S=()=>{const U=cl(c);return{key:`${c}|${JSON.stringify(ii(c))}`,words:U?`${U} unsaved`:"as saved"}},E=()=>({campaign:c,edits:{...ii(c)}}),M=async()=>{const U=E(),k=S();if(m&&m!==k.key&&(m="",s.empty("The form changed since; set them side by side anew.")),f&&f!==k.key&&G(n.subject,"of the form as it was before"),!await t.ask(k,async J=>{try{const X=await ke("/api/plan",U,J);return l?.marks([]),X}catch(X){throw X instanceof Rs&&l?.marks(X.faults),X}},vx,{keep:!0}))return;const q=++v;ke("/api/motion",U).then(J=>q===v&&P(J),J=>{q===v&&(h||G(a,g("p",{class:"quiet small"},"The path of the scan could not be worked out.")),t.fault(J))})},P=U=>{h=U,i.chamber.build(U),i.sphere.shape({rows:1,columns:U.directions.length/3,closed:!1,directions:U.directions});const k=U.role.length-1,B=Math.min(u,k),q=ce("play",()=>{window.clearInterval(p),p=p?0:window.setInterval(()=>{const J=a.querySelector("input");J.value=String(u>=k?0:Math.min(k,u+Math.max(1,Math.round(k/600)))),J.dispatchEvent(new Event("input"))},50),G(q,p?"pause":"play")},"tiny");G(a,Tn("through the scan",0,k,1,B,C,"",J=>String(J+1)),q,r),C(B)},C=U=>{if(!h)return;u=U;const k=h.axes.length,B=h,q=new Array(B.directions.length/3).fill(null),J=B.mount?.joints.length??0;i.chamber.turnTo(B.angles_deg.slice(k*U,k*U+k),B.axes,B.mount?.values.slice(J*U,J*U+J));for(let X=0;X<U;X++)B.cell[X]>=0&&(q[B.cell[X]]=.35);i.sphere.dots(q,{low:0,high:1,unit:""},B.cell[U]),G(i.stage.caption,`Plan: ${Cs(B.directions).length} directions; passed ones coloured, the present one orange. Nothing is measured here.`),G(r,`point ${U+1} of ${B.role.length} (${gx[B.role[U]]}), after ${Ei(B.time_s[U])}: ${B.axes.map((X,le)=>`${X} ${B.readouts_deg[k*U+le].toFixed(1)}°`).join(", ")}`)},D=()=>{G(o),window.clearTimeout(d),d=window.setTimeout(()=>void M(),80)},O=U=>{_=U,l=new mx(c,U,D,()=>e.show({key:c,words:""},...O(U)));const k=ce("write into the files",()=>void b(k),"main"),B=ce("as saved",()=>{Zl(c),_&&e.show({key:"",words:""},...O(_)),D()});return k.disabled=!_t("configure"),[g("h1",{},U.name),g("p",{class:"small quiet"},`${U.device}; ${U.chamber}${U.simulated?" (simulated chamber, invented data)":""}`),l.element,g("div",{class:"row"},k,B),o]},b=async U=>{U.disabled=!0;try{const k=await ke("/api/save",E());Zl(c),G(o,k.written.length?`written: ${k.written.join(", ")}; the files as they were stay beside them`:"nothing was changed");const B=o.textContent,q=await An("/api/form/{campaign}",[c]);e.show({key:c,words:""},...O(q)),G(o,B),M()}catch(k){G(o,g("span",{class:"bad"},Vt(k))),U.disabled=!_t("configure")}},y=ce("rehearse on the simulated chamber",()=>{const U=E(),k=S();y.disabled=!0,f=k.key;const B=g("div",{});n.show(k,g("p",{class:"quiet"},"The plan is carried out on an invented chamber as imperfect as the declared one, and held against known truth."),B),hi("/api/rehearse",{...U,seed:1+Math.floor(Math.random()*1e3)},q=>G(B,$n(q))).then(q=>{n.show(k,...wx(q)),k.key!==S().key&&G(n.subject,"of the form as it was before")},q=>{n.show(k),n.fault(q)}).finally(()=>y.disabled=!_t("operate"))});y.disabled=!_t("operate"),n.tools.append(y),n.empty(_t("operate")?"What the finished measurement would say, beside the truth.":"A session that may operate can rehearse the plan."),s.tools.append(ce("set side by side",()=>{const U=E(),k=S();m=k.key,s.ask(k,B=>ke("/api/schemes",U,B),yx)})),s.empty("All three positioners with every scheme, for this device and goal.");const R=Bh(()=>G(e.subject,S().words));return e.ask({key:c,words:""},U=>An("/api/form/{campaign}",[c],U),O).then(U=>U&&M()),{title:"Plan",element:g("div",{class:"page plan-page"},g("div",{class:"card walk-card"},a),g("div",{class:"two"},e.element,t.element),n.element,s.element),leave:()=>{R(),window.clearTimeout(d),window.clearInterval(p),v++;for(const U of[e,t,n,s])U.leave()}}}function vx(i){const e=i.split.reduce((n,s)=>n+s[1],0),t=g("div",{class:"split-bar",attrs:{role:"img","aria-label":i.split.map(([n,s])=>`${n} ${Ei(s)}`).join(", ")}},...i.split.map(([,n],s)=>{const r=g("i",{class:s?"two":"one"});return r.style.width=`${100*n/e}%`,r}));return[g("p",{class:"verdict"},i.verdict),g("div",{class:"large"},i.duration),g("p",{class:"small quiet"},`${i.points} points`),t,g("p",{class:"small quiet"},i.split.map(([n,s])=>`${n} ${Ei(s)}`).join(", ")),...i.missing.map(n=>g("p",{class:"warn small"},`Not from this plan: ${n.replace(/^\w+: /,"")}.`)),...i.forecast.length?[g("h3",{},"Forecast"),xx(i)]:[],g("h3",{},"Alternatives"),vt(["plan","duration","points"],i.alternatives.map(n=>[g("span",{attrs:{title:n.why}},n.name),n.duration,n.points])),g("details",{},g("summary",{},"Why"),vt(["question","answer"],i.rows.map(([n,s])=>[g("strong",{},n),s])))]}function xx(i){const e=i.forecast.some(n=>n.wanted!==null),t=n=>n.wanted===null?"":g("span",{class:n.expanded<=n.wanted?"good num":"bad num"},`${n.wanted} ${n.unit}`);return vt(["figure","±",...e?["wanted"]:[],"mostly from"],i.forecast.map(n=>[n.label,g("span",{class:"num"},`${n.text} ${n.unit}`),...e?[t(n)]:[],n.cause]))}function yx(i){return[vt(["positioner","scheme","duration","points","slices meet at"],i.map(e=>[g("span",{attrs:{title:`${e.formula}; suits ${e.suits}; polarization ${e.polarization}`}},e.geometry.replaceAll("-"," ")),e.scheme,e.fault?g("span",{class:"small bad"},`not here: ${e.fault}`):e.duration,e.points||"-",e.pole]))]}function wx(i){const e=new zn("predicted error over all directions"),t=Math.ceil(Math.max(...i.error_db)/5)*5;return e.draw({rows:i.theta,columns:i.phi,values:i.error_db,rowName:"theta / deg",columnName:"phi / deg",low:t-40,high:t,unit:"dB"}),[g("p",{},`${(100*i.share_inside).toFixed(0)} % of all stated intervals hold the truth; it took ${i.seconds.toFixed(1)} s. An invented chamber, drawn anew each time.`),e.element,g("div",{class:"scroll",attrs:{tabindex:0,role:"region","aria-label":"rehearsed figures"}},vt(["figure","measured","true","interval","mostly from"],i.rows.map(n=>[n.name,`${n.value} ${n.unit}`,Ge(n.truth,3),g("span",{class:n.inside?"good":"bad"},n.inside?"holds the truth":"does not"),n.cause])))]}const bx={flip:"flip test","beam-coarse":"coarse beam search","beam-fine":"fine beam search"},Mx=["done","stopped","aborted","faulted"];function Uu(i){return i.running?Mx.includes(i.state)?"the record is being written":i.left_s===void 0?"":`${Ei(i.left_s)} left`:""}function Sx(i){if(i.hand)return{run:i.hand.text,share:"",left:"",level:""};if(!i.run||!i.total)return{run:"no scan since the server began",share:"",left:"",level:""};const e=(i.measured??0)/i.total,t=i.kind&&i.kind!=="scan"?` (${bx[i.kind]??i.kind})`:"";return{run:`${i.run}${t}: ${i.state}`,share:`${(100*e).toFixed(e<.1?1:0)} %`,left:Uu(i)||`${i.measured} of ${i.total} points`,level:i.running&&typeof i.level_db=="number"?`${Ge(i.level_db,1)} dB`:""}}function Ex(){const i=g("div",{class:"bar-told"}),e=g("i"),t=g("div",{class:"alarm",attrs:{role:"alert"}});let n=!1,s=0;const r=async()=>{n=!0,a.classList.add("pressed");for(let l=0;n;l++)try{await ke("/api/stop",{}),n=!1,G(t)}catch(h){G(t,`STOP WAS NOT HEARD (${l+1} tries): ${Vt(h)} Use the emergency stop.`),await new Promise(u=>window.setTimeout(u,700))}a.classList.remove("pressed")},a=ce("STOP",()=>void(n||r()),"stop","brake the axes and end the scan (Ctrl + .)");window.addEventListener("keydown",l=>{l.ctrlKey&&l.key==="."&&a.click()});const o=g("footer",{class:"control-bar",attrs:{"aria-label":"scan and stop"}},g("div",{class:"bar-progress"},e),g("div",{class:"bar-row"},i,t,a)),c=()=>{if(!s)return;const l=Math.round((Date.now()-s)/1e3);!n&&l>=1&&G(t,`THE SERVER HAS NOT ANSWERED FOR ${l} s. This page shows old values and cannot stop the axes: use the emergency stop.`),o.classList.toggle("lost",l>=1)};return window.setInterval(c,500),gt.watch({status:l=>{const h=Sx(l);G(i,g("b",{},h.run),h.share&&g("span",{class:"share"},h.share),h.left&&g("span",{},h.left),h.level&&g("span",{},h.level)),e.style.width=l.total&&!l.hand?`${100*(l.measured??0)/l.total}%`:"0",o.classList.toggle("moving",Kl(l)),a.setAttribute("aria-label",Kl(l)?"STOP: the axes may move":"STOP: nothing moves")},linked:l=>{l?(s=0,o.classList.remove("lost"),n||G(t)):s||(s=Date.now())}}),o}const Eh=60;function Tx(i){const e=new tt("Scan"),t=new tt("Now"),n=new tt("What happened"),s=new tt("Measured so far"),r=new tt("Cut through the strongest direction"),a=new tt("Drift of the boresight checks"),o=new zn("levels measured so far"),c=new pn("cut through the strongest direction"),l=new pn("drift of the boresight checks"),h=g("div",{class:"large"}),u=g("div",{class:"big"}),d=g("div",{class:"large"}),p=g("p",{class:"quiet"}),_=g("div",{class:"row"}),v=g("ul",{class:"words",attrs:{tabindex:0,"aria-label":"what happened, the newest first"}}),m=g("input",{attrs:{value:Dt("run")||"first",pattern:"[A-Za-z0-9_-]{1,80}","aria-label":"name of the run"},on:{input:()=>Gn({run:m.value})}});G(e.body,h,u,d,p,_),G(n.body,v);let f=null,S=[],E=null,M="",P="",C=Eh,D="",O=!0,b=-1;const y=V=>({key:V.run??"",words:V.run?`run ${V.run}${V.kind&&V.kind!=="scan"?`, ${Hh[V.kind]??V.kind}`:""}`:""}),R=V=>()=>void ke(`/api/${V}`,{run:gt.status.run??"",sequence:gt.status.sequence}).catch(L=>e.fault(L)),N=()=>void Kr(m.value,V=>e.fault(V)).then(V=>V&&G(e.faults)),U=()=>Vn("Abort takes the drives' power away",V=>[g("p",{},"Stop brakes the axes and keeps their positions. Abort also takes the drives' power away: the axes must seek their reference marks before the next scan. What was measured stays on disk."),g("div",{class:"row"},ce("back",V),g("span",{class:"spring"}),ce("abort",()=>{ke("/api/abort",{}).then(V,L=>e.fault(L))},"danger"))]),k=V=>{const L=Ae.me?.mine===!0,te=ll(V),ge=`${V.state}${L}${te}`;if(ge===M)return;M=ge;const A=L?"":_t("operate")?"Take the motion lease first (top right).":"This session may watch and stop.",we=ce("start or go on",N,"main"),Me=ce("pause",R("pause")),be=ce("resume",R("resume")),pe=ce("abort",U,"","brake and take the drives' power away");we.disabled=!L||te,Me.disabled=!L||V.state!=="running",be.disabled=!L||V.state!=="paused",pe.disabled=!_t("operate")||!te,G(_,!te&&g("label",{class:"row"},"run",m),we,Me,be,pe,A&&g("span",{class:"small quiet"},A))},B=V=>{k(V);const L=V.total?(V.measured??0)/V.total:0;G(e.subject,y(V).words),G(h,V.state),G(u,V.total?`${(100*L).toFixed(L<.1?1:0)} %`:""),G(d,Uu(V)||(V.text??"")),G(p,V.total?`${V.measured} of ${V.total} points; every one is on disk.`:"No scan yet. Start one here. The page may be closed: a scan does not need it.");const te=V.campaign??Ae.campaign;P!==te&&(P=te,ke("/api/motion",{campaign:te}).then(ge=>{O&&(i.chamber.build(ge),i.chamber.whose=te,!f&&P===te&&q(ge.directions))},ge=>e.fault(ge))),V.axes&&V.angles_deg?.length&&i.chamber.follow(V.angles_deg,V.axes,V.joints),X(V),le(V),fe(V)},q=V=>{i.sphere.shape({rows:1,columns:V.length/3,closed:!1,directions:V}),i.sphere.dots([],{low:0,high:1,unit:"dB"}),G(i.stage.caption,`Planned: ${Cs(V).length} directions, none measured.`)},J=V=>V.joints?.length&&V.campaign===i.chamber.whose&&i.chamber.stand?.mount?.joints||[],X=V=>{const L=V.level_db,te=typeof L=="number"&&typeof V.noise_db=="number"&&L<V.noise_db+10,ge=[...(V.axes??[]).map((A,we)=>[A,ys(V.position_deg?.[we],2,"°")]),...J(V).map((A,we)=>[`joint ${A.name}`,ys(V.joints?.[we],2,` ${A.unit}`)]),["last sweep",ys(L,1," dB (S21)")],["strongest",ys(V.strongest_db,1," dB")],["noise, as planned",ys(V.noise_db,1," dB")]];V.run?t.show(y(V),g("dl",{class:te?"reading bad":"reading"},...ge.flatMap(([A,we])=>[g("dt",{},A),g("dd",{class:"mono"},we)])),te&&g("p",{class:"bad small"},"The last sweep is within 10 dB of the noise.")):t.empty("Axes and levels stand here while a scan runs.")},le=V=>{const L=V.words??[];if(!V.run){n.empty("Events of a scan are listed here.");return}const te=L.length?L[L.length-1].at+L.length:0;te===b&&n.body.contains(v)||(b=te,G(v,...[...L].reverse().slice(0,80).map(ge=>g("li",{class:ge.kind},g("time",{},new Date(1e3*ge.at).toLocaleTimeString()),ge.text))),n.body.contains(v)||n.show(y(V),v))},fe=V=>{const L=V.ties??[];if(L.length<2){a.empty("Two checks along one direction show a drift.");return}const te=rt(),ge=L.length<20,A=`${V.run} ${L.length} ${L[L.length-1][0]}`;A===D&&a.body.contains(l.element)||(D=A,a.body.contains(l.element)||a.show(y(V),l.element),l.draw({x:L.map(we=>we[0]/60),lines:[{name:"level / dB",values:L.map(we=>we[1]),colour:te.co,points:ge},{name:"phase / 10°",values:L.map(we=>we[2]/10),colour:te.cross,dash:"5 3",points:ge}],xName:"time since the first / min",yName:"change",yWhole:Ti(L.flatMap(we=>[we[1],we[2]/10]),.2),height:200},`drift of ${V.run}`))};function W(){s.empty("Levels are drawn as they come; where nothing was measured, nothing is drawn."),r.empty("The cut follows the strongest direction.")}const ue=()=>{const V=f,L=E;if(!V||!L)return;const te=gt.status,ge=L.filter(ve=>!Number.isNaN(ve)),A=ge.length?Math.ceil(ge.reduce((ve,He)=>Math.max(ve,He),-1/0)/5)*5:0,we={low:A-C,high:A,unit:"dB"};i.sphere.dots(L,we),i.sphere.scaleBar(we,"S21");const Me=V.state?`, state ${V.state}`:"";if(G(i.stage.caption,`Run ${te.run}${Me}: ${S.filter(ve=>!Number.isNaN(L[ve])).length} of ${S.length} directions measured, coloured by level; the others are grey.`),s.body.contains(o.element)||s.show(y(te),o.element,g("p",{class:"small quiet"},`Both polarizations together${V.state?`, state ${V.state} alone`:""}. Empty cells are not measured yet.`)),o.draw({rows:V.rows,columns:V.columns,values:L,rowName:`${V.row_name} / deg`,columnName:`${V.column_name} / deg`,...we},`levels of ${te.run}`),!ge.length)return;const be=Ax(L),pe=be%V.columns.length;r.body.contains(c.element)||r.show(y(te),c.element);const Je=V.rows.map((ve,He)=>Number.isNaN(L[He*V.columns.length+pe])?null:L[He*V.columns.length+pe]);c.draw({x:V.rows,lines:[{name:`${V.column_name} ${Ge(V.columns[pe],0)}°`,values:Je,colour:rt().co,points:Je.filter(ve=>ve!==null).length<25}],xName:`${V.row_name} / deg`,yName:"S21 / dB",yWhole:[we.low,we.high],height:220,peakOf:0,digits:1},`cut of ${te.run}`)},Ce=gt.watch({status:B,grid:V=>{if(f=V,E=null,!V){S=[],P="",i.sphere.clear(),i.sphere.scaleBar(null),G(i.stage.caption),W();return}S=Cs(V.directions),i.sphere.shape({rows:V.rows.length,columns:V.columns.length,closed:V.column_name==="phi",directions:V.directions});for(const L of[s,r])L.empty("The first points are awaited.",y(gt.status))},frame:V=>{E=V,ue()}});i.stage.hovered=V=>{Ze.hover(V);const L=V&&E?i.sphere.nearest(V):-1;if(!V||!f||L<0||!E){G(i.stage.readout);return}const te=[f.directions[3*L],f.directions[3*L+1],f.directions[3*L+2]],ge=E[L];G(i.stage.readout,`${i.sphere.words(te)}: ${Number.isNaN(ge)?"not measured":`${ge.toFixed(1)} dB`}`)},o.clicked=V=>Ze.pin(Oe(V)),o.moved=V=>Ze.hover(V?Oe(V):null);const Oe=V=>{const L=f,te=3*(L.rows.indexOf(V.row)*L.columns.length+L.columns.indexOf(V.column));return[L.directions[te],L.directions[te+1],L.directions[te+2]]},$e=Ze.watch(V=>{if(!f||!V||f.row_name!=="theta"){o.point(null);return}const[L,te]=Jt(V);o.point({row:L,column:(te+360)%360})});gt.status.angles_deg?.length||i.chamber.rest(),gt.grid||W();const Q=Tn("range of colours",20,100,10,Eh,V=>{C=V,ue()}," dB"),ee=g("input",{attrs:{type:"checkbox"},on:{change:()=>i.stage.ride(ee.checked)}}),Se=g("div",{class:"page scan-page"},e.element,g("div",{class:"two"},t.element,n.element),g("div",{class:"row no-print"},Q,g("label",{class:"row small"},ee,"ride with the device")),s.element,g("div",{class:"two"},r.element,a.element));return gt.grid||i.sphere.cursor(Ze.at??Ht(0,0)),{title:"Scan",element:Se,leave:()=>{O=!1,Ce(),$e()}}}function ys(i,e,t){const n=Ge(i,e);return n==="-"?n:`${n}${t}`}function Ax(i){let e=-1;return i.forEach((t,n)=>{!Number.isNaN(t)&&(e<0||t>i[e])&&(e=n)}),Math.max(0,e)}const Rx=3e3;function Cx(i){return Math.max(1,Math.ceil(Math.sqrt(i.rows*i.columns/Rx)))}function Th(i,e){const t=[];for(let n=0;n<i;n+=e)t.push(n);return i&&t.at(-1)!==i-1&&t.push(i-1),t}function Ah(i,e,t){const n=Th(i.rows,e),s=Th(i.columns,e),r=s.length,a=[],o=(c,l)=>{const h=l+1<r?s[l+1]:i.columns;for(let u=n[c];u<=n[c+1];u++)for(let d=s[l];d<=h;d++)if(!t(u*i.columns+d%i.columns))return!1;return!0};for(let c=0;c+1<n.length;c++)for(let l=0;l<r;l++){if(l+1===r&&!i.closed||!o(c,l))continue;const h=c*r+l,u=c*r+(l+1)%r;a.push(h,h+r,u,u,h+r,u+r)}return{index:Uint32Array.from(a),cells:Int32Array.from({length:n.length*r},(c,l)=>n[Math.floor(l/r)]*i.columns+s[l%r])}}const Rh=Float32Array.from(Bn,i=>(i/255)**2.2);class Px{constructor(e){this.stage=e,this.cursorMark=new kt(new Al(.016,16,12),new Os({color:16777215})),this.cursorMark.visible=!1,e.device.add(this.rings,this.drawn,this.cursorMark),e.detail=t=>this.detail(t),this.frame()}rings=new qt;points=null;mesh=null;coarse=null;drawn=new qt;cursorMark;cells=null;cellKey="";frame(){const e=rt(),t=[];ai(this.rings),this.stage.clearLabels(this.rings);const n=(a,o)=>t.push(new I(...a).multiplyScalar(rn),new I(...o).multiplyScalar(rn));for(let a=30;a<180;a+=30)for(let o=0;o<360;o+=6)n(Ht(a,o),Ht(a,o+6));for(let a=0;a<360;a+=30)for(let o=0;o<180;o+=6)n(Ht(o,a),Ht(o+6,a));const s=this.stage.hairlines=new ci({color:e.ring,transparent:!0});this.rings.add(new Tl(new At().setFromPoints(t),s));const r=(a,o)=>[a[0]*o,a[1]*o,a[2]*o];for(let a=30;a<180;a+=30)this.stage.label(`${a}°`,r(Ht(a,0),rn*1.05),this.rings,"ring");for(let a=30;a<360;a+=30)this.stage.label(`${a}°`,r(Ht(90,a),rn*1.05),this.rings,"ring");for(const[a,o,c]of[["x",[1,0,0],"x"],["y",[0,1,0],"y"],["z",[0,0,1],"z"]]){const l=c==="x"?e.cross:c==="y"?e.good:e.co;this.rings.add(new ks(new I(...o),new I,rn*1.16,l,.05,.03)),this.stage.label(a,r(o,rn*1.24),this.rings,`letter ${c}`,!1)}this.cursorMark.material.color.set(e.cross),this.stage.ask()}shape(e){this.clear(),this.cells=e}clear(){ai(this.drawn),this.points=this.mesh=this.coarse=null,this.cellKey="",this.stage.ask()}dots(e,t,n=-1){const s=this.cells;if(!s)return;const r=s.directions.length/3;if(!this.points||this.mesh){this.clear();const h=new At;h.setAttribute("position",new Wt(Float32Array.from(s.directions,d=>rn*d),3)),h.setAttribute("color",new Wt(new Float32Array(s.directions.length),3));const u=r>6e3?.012:r>1500?.02:r>400?.03:.045;this.points=new mu(h,new pu({size:u,vertexColors:!0})),this.points.frustumCulled=!1,this.drawn.add(this.points)}const a=new Ke(rt().ring),o=new Ke(rt().cross),c=this.points.geometry.getAttribute("color"),l=c.array;for(let h=0;h<r;h++){const u=3*kr(e[h],t.low,t.high);h===n?l.set([o.r,o.g,o.b],3*h):u<0?l.set([a.r,a.g,a.b],3*h):l.set(Rh.subarray(u,u+3),3*h)}c.needsUpdate=!0,this.stage.ask()}surface(e,t,n){const s=this.cells;if(!s)return;const r=s.directions,a=r.length/3,{low:o,high:c}=t,l=f=>e[f]!==null&&Number.isFinite(e[f]),h=f=>rn*Math.max(.03,Math.min(1,(e[f]-o)/(c-o)));if(!this.mesh||this.cellKey!==n){this.clear(),this.cellKey=n,this.mesh=this.faced(Ah(s,1,l));const f=Cx(s);if(this.stage.software&&f>1){const S=Ah(s,f,l);this.coarse={mesh:this.faced(S),cells:S.cells}}}const u=this.mesh.geometry,d=u.getAttribute("position"),p=u.getAttribute("color"),_=d.array,v=p.array;for(let f=0;f<a;f++){const S=l(f)?h(f):0;_[3*f]=r[3*f]*S,_[3*f+1]=r[3*f+1]*S,_[3*f+2]=r[3*f+2]*S}d.needsUpdate=!0,u.computeVertexNormals();const m=u.getAttribute("normal").array;for(let f=0;f<a;f++){const S=3*Math.max(0,kr(e[f],o,c)),E=.42+.58*Math.abs(.48*m[3*f]+.72*m[3*f+1]+.5*m[3*f+2]);for(let M=0;M<3;M++)v[3*f+M]=Rh[S+M]*E}p.needsUpdate=!0,this.thin(_,v),this.detail(!0),this.stage.ask()}faced(e){const t=new At,n=e.cells.length;t.setIndex(new Wt(e.index,1)),t.setAttribute("position",new Wt(new Float32Array(3*n),3)),t.setAttribute("color",new Wt(new Float32Array(3*n),3));const s=new kt(t,new Os({vertexColors:!0,side:2}));return s.frustumCulled=!1,this.drawn.add(s),s}thin(e,t){if(!this.coarse)return;const{mesh:n,cells:s}=this.coarse;for(const[r,a]of[["position",e],["color",t]]){const o=n.geometry.getAttribute(r),c=o.array;for(let l=0;l<s.length;l++)c.set(a.subarray(3*s[l],3*s[l]+3),3*l);o.needsUpdate=!0}}detail(e){!this.coarse||!this.mesh||(this.mesh.visible=e,this.coarse.mesh.visible=!e)}get holds(){return this.mesh?"surface":this.points?"points":"nothing"}cursor(e){this.cursorMark.visible=e!==null,e&&this.cursorMark.position.set(e[0],e[1],e[2]).multiplyScalar(rn),this.stage.ask()}nearest(e){const t=this.cells?.directions;if(!t)return-1;let n=-2,s=-1;for(let r=0;r<t.length;r+=3){const a=t[r]*e[0]+t[r+1]*e[1]+t[r+2]*e[2];a>n&&(n=a,s=r/3)}return s}told(e,t,n){const s=this.nearest(e),r=this.cells?.directions??[],a=s<0?null:[r[3*s],r[3*s+1],r[3*s+2]],o=a!==null&&Tt(e,a)>Math.cos(t*nt);return`${this.words(o?a:e)}: ${(o?n(s):null)??"not measured"}`}scaleBar(e,t=""){if(!e){G(this.stage.colourBar);return}const n=g("canvas",{attrs:{width:1,height:128,"aria-hidden":"true"}}),s=n.getContext("2d");for(let c=0;c<128;c++){const l=6*(127-c);s.fillStyle=`rgb(${Bn[l]} ${Bn[l+1]} ${Bn[l+2]})`,s.fillRect(0,c,1,1)}const r=e.high-e.low,a=r>60&&r%20===0?20:10,o=Array.from({length:Math.round(r/a)+1},(c,l)=>e.high-l*a);G(this.stage.colourBar,g("span",{},`${t} / ${e.unit}`),g("div",{},n,g("ol",{},...o.map(c=>g("li",{},c.toFixed(0))))))}words(e){const[t,n]=Jt(e);return`theta ${t.toFixed(1)}°, phi ${((n+360)%360).toFixed(1)}°`}}function Dx(i,e){return new cs(new At().setFromPoints(i.map(t=>new I(...t).multiplyScalar(rn*1.003))),new ci({color:e}))}const Lx=["c","run","state","tab","f","plane","basis","coords","shown","beside","off","gate","span","polar","at","stand"],Ix=["f","plane","span"];function Ux(i,e){const t=[],{values:n}=i;i.page&&!e.pages.includes(i.page)&&t.push(`There is no page "${i.page}"; ${e.pages[0]} is shown.`),n.c&&!e.campaigns.includes(n.c)&&t.push(`This control room has no campaign "${n.c}"; another is shown.`);for(const s of Object.keys(n).filter(r=>!Lx.includes(r)))t.push(`The address says "${s}", which no page knows; it is ignored.`);for(const s of Ix)n[s]&&!Number.isFinite(Number(n[s]))&&t.push(`The address says ${s} = "${n[s]}", which is no number; it is ignored.`);for(const[s,r]of Object.entries(e.choices))n[s]&&!r.includes(n[s])&&t.push(`The address says ${s} = "${n[s]}", which is none of ${r.join(", ")}; it is ignored.`);return t}function Nx(){const i=g("span",{class:"row lease"}),e=g("span",{class:"bad small",attrs:{role:"status"}});let t="";const n=()=>{const r=Ae.me?.mine===!0,a=gt.status.lease,o=`${r}${a}`;if(o===t)return;t=o;const c=r?"you may move the axes":a?`${a} may move the axes`:"nobody may move the axes";G(i,g("span",{class:`chip${r?" hot":""}`},c),_t("operate")&&(r?ce("give back",()=>void s(!1)):ce("take motion lease",()=>void s(!0))),e)},s=async r=>{try{Ae.me=await ke("/api/lease",{hold:r}),G(e)}catch(a){G(e,Vt(a)),Ae.me=await kh().catch(()=>Ae.me)}t="",n()};return window.setInterval(()=>{Ae.me?.mine&&gt.up&&s(!0)},1e4),gt.watch({status:r=>{Ae.me&&(Ae.me.mine=r.lease===Ae.me.name),n()}}),n(),i}const Fx={"roll-over-azimuth":{swept:"azimuth",stepped:"roll",slice:"a great circle through boresight",poles:"All slices meet at +z, in front; slices over the whole circle meet at -z too."},"azimuth-over-elevation":{swept:"azimuth",stepped:"elevation",slice:"a circle of constant elevation",poles:"The circles shrink towards +y and -y."},"elevation-over-azimuth":{swept:"elevation",stepped:"azimuth",slice:"a circle of constant azimuth",poles:"The circles shrink towards +x and -x."}};function Ox(i,e,t){const n=[Math.max(i[0],e),Math.min(i[1],t)];return n[0]<n[1]?n:i}function Hl(i,e){const t=i==="roll-over-azimuth",n=i==="elevation-over-azimuth"?e.first:e.second,s=Ox(i==="elevation-over-azimuth"?e.second:e.first,-90,90),r=(t?[0,30,60,90,120,150]:[0,20,40,-20,-40]).filter(a=>a>=n[0]&&a<=n[1]);return(r.length?r:[(n[0]+n[1])/2]).map((a,o)=>o%2?{stepped:a,from:s[1],to:s[0]}:{stepped:a,from:s[0],to:s[1]})}function sl(i,e,t){const n=Hl(i,e),s=Math.min(.999999,Math.max(0,t))*n.length,r=Math.floor(s),a=s-r,o=n[r],c=n[Math.max(0,r-1)],h=r>0&&a<.2?c.stepped+(o.stepped-c.stepped)*(a/.2):o.stepped,u=r>0?Math.max(0,(a-.2)/.8):a,d=o.from+(o.to-o.from)*u;return i==="elevation-over-azimuth"?{slice:r,first:h,second:d}:{slice:r,first:d,second:h}}function kx(i,e,t){const n=Hl(i,e),s=sl(i,e,t);return n.slice(0,s.slice+1).map((r,a)=>{const o=i==="elevation-over-azimuth"?s.second:s.first,c=a<s.slice?r.to:o,l=Math.max(2,Math.ceil(Math.abs(c-r.from)/2));return Array.from({length:l},(h,u)=>{const d=r.from+(c-r.from)*u/(l-1);return i==="elevation-over-azimuth"?ao(i,r.stepped,d):ao(i,d,r.stepped)})})}function Bx(i,e,t){const n=ad(i,e.first,e.second),s=t?i==="roll-over-azimuth"?-e.second:n:0;return{field:n,probe:s,level:Math.cos((n-s)*Math.PI/180)}}const zx=6,Ch=.5,Ph=2,no=.5;function Hx(i){const{joints:e,values:t,slice_index:n,pass_index:s}=i.mount,r=e.length,a=i.axes.length,o=Math.min(...s.filter(u=>u>=0)),c=new Map;n.forEach((u,d)=>{if(u<0||s[d]>o)return;let p=c.get(u);p||c.set(u,p={values:[],behind:[],chi:[]}),p.values.push(t.slice(r*d,r*d+r)),p.behind.push(i.angles_deg[a*d]<0),p.chi.push(a>2?i.angles_deg[a*d+2]:0)});const l=[...c.values()].filter(u=>u.values.length>1),h=Math.min(zx,l.length);return Array.from({length:h},(u,d)=>l[Math.floor(d*l.length/h)])}const rl=(i,e,t)=>i.map((n,s)=>n+(e[s]-n)*t);function al(i,e){const t=Math.min(.999999,Math.max(0,e))*i.length,n=Math.floor(t),s=t-n,r=i[n],a=r.values.length-1;if(n>0&&s<.2){const l=i[n-1],h=l.values.length-1;return{slice:n,values:rl(l.values[h],r.values[0],s/.2),behind:r.behind[0],chi:r.chi[0]}}const o=(n>0?(s-.2)/.8:s)*a,c=Math.min(a-1,Math.floor(o));return{slice:n,values:rl(r.values[c],r.values[c+1],o-c),behind:r.behind[Math.round(o)],chi:r.chi[c]+(r.chi[c+1]-r.chi[c])*(o-c)}}function Nu(i,e,t,n){const s=al(t,n);return t.slice(0,s.slice+1).map((r,a)=>{const o=Math.min(.999999,Math.max(0,n))*t.length-a,c=a<s.slice?1:Math.max(0,a>0?(o-.2)/.8:o),l=r.values.length-1,h=Math.max(2,Math.ceil(3*l*c));return Array.from({length:h},(u,d)=>{const p=c*l*d/(h-1),_=Math.min(l-1,Math.floor(p));return oo(i,rl(r.values[_],r.values[_+1],p-_),e).direction})})}function Vx(i){const e=i[0]?.values[0].map((l,h)=>h)??[],t=(l,h)=>l.values.map(u=>u[h]),n=l=>Math.max(...i.map(h=>Math.max(...t(h,l))-Math.min(...t(h,l)))),s=(l,h)=>t(l,h).reduce((u,d)=>u+d,0)/l.values.length,r=e.filter(l=>n(l)>Ch).sort((l,h)=>n(h)-n(l)),a=l=>Math.max(0,...i.slice(1).map((h,u)=>Math.abs(s(h,l)-s(i[u],l)))),o=e.filter(l=>a(l)>Ch).sort((l,h)=>a(h)-a(l)),c=o.filter(l=>!r.includes(l));return{swept:r,stepped:c.length?c:o}}function Gx(i){return i.length<2?i[0]??"nothing":`${i.slice(0,-1).join(", ")} and ${i.at(-1)}`}function $x(i){const e=i.map(o=>Jt(o)[0]),t=Math.min(...e),n=Math.max(...e),s=o=>i.slice(1).some((c,l)=>c[0]*i[l][0]+c[1]*i[l][1]<0&&c[2]>0===o),r=t<Ph||s(!0),a=n>180-Ph||s(!1);return r&&a?"All slices meet at +z, in front, and at -z.":r?`All slices meet at +z, in front; they end at theta ${n.toFixed(0)}° and do not come to -z.`:a?`All slices meet at -z, behind; they begin at theta ${t.toFixed(0)}° and do not come to +z.`:`The slices go from theta ${t.toFixed(0)}° to ${n.toFixed(0)}° and do not meet.`}function Wx(i){const e=i.map(o=>Jt(o)[0]);if(Math.max(...e)-Math.min(...e)<no)return{kind:"theta",words:`a circle of constant theta, ${e[0].toFixed(0)}°`,poles:"The circles shrink towards +z and -z."};let n=[0,0,0];for(const o of i){const c=dl(i[0],o);Tt(c,c)>Tt(n,n)&&(n=c)}const s=Math.sqrt(Tt(n,n)),r=Math.max(...i.map(o=>Math.abs(Math.asin(Math.min(1,Math.abs(Tt(o,n))/s))/nt))),a=Math.abs(n[2])/s<Math.sin(no*nt);return r<no&&a?{kind:"great",words:"a great circle through boresight",poles:$x(i)}:{kind:"other",words:`a curve that leaves a great circle by up to ${r.toFixed(1)}°`,poles:""}}function qx(i,e,t){const{swept:n,stepped:s}=Vx(t),r=u=>u.some(d=>!i[d].rolls)?u.filter(d=>!i[d].rolls):u,a=u=>`${r(u).length>1?"joints":"joint"} ${Gx(r(u).map(d=>i[d].name))}`,o=t.reduce((u,d)=>d.values.length>u.values.length?d:u),{words:c,poles:l,kind:h}=Wx(Nu(i,e,[o],1)[0]);return{swept:a(n),stepped:a(s),sweeps:r(n).length===1?"sweeps":"sweep together",steps:r(s).length===1?"steps":"step",slice:c,poles:l,kind:h}}function ol(i){return i.findIndex(e=>e.rolls)}function Fu(i,e,t){const n=ol(i);if(n<0)return null;const s=Math.sign(i[n].axis[2])||1,{least:r,most:a}=i[n],o=[0,180,-180,360,-360].map(l=>e[n]+s*(t+l)).filter(l=>l>=r&&l<=a);if(!o.length)return null;const c=o.reduce((l,h)=>Math.abs(h-e[n])<Math.abs(l-e[n])?h:l);return e.map((l,h)=>h===n?c:l)}const Dh=i=>i-360*Math.round(i/360);function Xx(i,e,t,n){const s=oo(i,t.values,e),r=s.direction,a=fl(...Jt(r)),o=fa(r,a,t.behind),c=fa(r,s.port,t.behind),l=Fu(i,t.values,(n?o:0)-c)??t.values,h=fa(r,oo(i,l,e).port,t.behind);return{values:l,direction:r,fieldVector:a,field:Dh(o),probe:Dh(h),level:Math.cos((o-h)*nt)}}const jx=[{text:"On a roll over azimuth, azimuth sweeps and the roll stands. What does the probe pass over on the device's sphere?",answers:["a circle of constant theta","a great circle through boresight","one point"],right:1,why:"Each slice is a great circle through +z; the roll angle says which one."},{text:"The roll stands at 90°, the probe stands still with its axis horizontal. The device radiates along x. What does the probe take in?",answers:["all of the field","half of its power","none of it: the field is across"],right:2,why:"The device turned by 90°, its field with it: the probe's axis and the field are at right angles. A probe that follows the roll takes in all of it."},{text:"Where do the slices of a roll over azimuth crowd together?",answers:["at boresight and behind the device","at the horizon, theta 90°","nowhere"],right:0,why:"All great circles through +z meet there and at -z. Theta and phi turn quickly near them; Ludwig 3 does not at boresight."}];function Lh(i,e,t,n){return[{text:`On an ${i}, ${e} sweeps and ${t} stands. What does the probe pass over on the device's sphere?`,answers:["a great circle through boresight, whatever the step",`a circle of constant ${t}`,"one point"],right:1,why:`Only the slice of ${t} 0° is a great circle; the others are smaller, parallel to it.`},{text:"The device radiates along x. At boresight the probe takes in all of it. Both axes stand at 40° now, and the probe stands still. What does it take in?",answers:["all of the field","less: the field leans before it","none of it"],right:1,why:"Away from both axes' zeros the field of Ludwig's third definition leans before a probe that stands still; the dial shows by how much."},{text:`Where do the slices of an ${i} crowd together?`,answers:["at boresight and behind the device",`towards +${n} and -${n}`,"nowhere"],right:1,why:`The circles shrink towards the ends of the axis that carries them: +${n} and -${n}.`}]}const Yx={"roll-over-azimuth":jx,"azimuth-over-elevation":Lh("azimuth over elevation","azimuth","elevation","y"),"elevation-over-azimuth":Lh("elevation over azimuth","elevation","azimuth","x")};function Kx(i,e,t,n){return[{text:`Of this mount, ${i} ${i.startsWith("joints")?"move":"moves"}, and ${e} ${e.startsWith("joints")?"stand":"stands"}. What does the probe pass over on the device's sphere?`,answers:n?[t,"a great circle through boresight","one point"]:["a circle of constant theta",t,"one point"],right:n?0:1,why:"The orange curve is where the joints really look, worked out from their lines."},{text:"The probe stands before theta 40°, phi 90° and lies along theta. The device radiates along x. What does the probe take in?",answers:["all of the field","half of its power","none of it: the field is across"],right:2,why:"At phi 90° the co-polar field of Ludwig's third definition lies along phi. A probe that follows, chi = psi - phi, takes in all of it."},{text:"Which frame do plans, records and figures of this mount keep?",answers:["the joints' readouts alone","theta and phi of the device, and the probe's roll","azimuth and elevation"],right:1,why:"Joints are how the mount gets there; the record keeps their readouts beside theta, phi and the probe's roll."}]}function Zx(i,e){const t=g("div",{class:"quiz",attrs:{"aria-live":"polite"}});let n=0;const s=r=>{const a=i[r];if(!a){G(t,g("p",{class:n===i.length?"good":""},`${n} of ${i.length} right.`),ce("once more",()=>{n=0,s(0)}));return}const o=g("p",{}),c=a.answers.map((l,h)=>ce(l,()=>{h===a.right&&n++,c.forEach((u,d)=>{u.disabled=!0,u.classList.toggle("right",d===a.right),u.classList.toggle("wrong",d===h&&h!==a.right)}),G(o,`${h===a.right?"Right. ":"No. "}${a.why} `,ce(r+1<i.length?"next question":"end",()=>s(r+1),"main"))}));G(t,g("p",{},`${r+1} of ${i.length}: ${a.text}`),g("div",{class:"stacked"},...c),o)};return s(0),t}const bs=[["roll-over-azimuth","roll over azimuth"],["azimuth-over-elevation","azimuth over elevation"],["elevation-over-azimuth","elevation over azimuth"]],Ih="this campaign's mount",Uh={first:[-180,180],second:[-180,360]};function Jx(i){const e=new tt("Slice by slice"),t=new tt("One direction by hand"),n=new tt("Three questions"),s=new qt,r=g("div",{class:"dial"}),a=g("ol",{class:"captions"}),o=new AbortController,c=g("p",{class:"small quiet"});i.stage.device.add(s);let l=bs.find(([L])=>L===Dt("stand"))?.[0]??"roll-over-azimuth",h=[],u=null,d=Uh,p=null,_=0,v=!1,m=0,f=null,S=3;const E=()=>{d=p&&p.geometry===l?p.limits:Uh;const L=p?.geometry===l?p:null;i.chamber.build(L?.motion??{geometry:l,range_m:1,size_mm:[90,90,12],offset_mm:[0,0,0],ports:1}),i.chamber.whose=L?Ae.campaign:"",G(c,L?`This campaign's chamber, by its readouts: ${L.motion.limits_words.join(", ")}. ${l==="mount"?`${h.length} slices of the plan are played, as the joints go through them.`:"The slices stay within."}${L.motion.axes.includes("probe")?"":" Its probe cannot turn."}`:p?"Not this campaign's positioner: shown without limits.":""),n.show({key:l,words:M()},Zx(l==="mount"?D():Yx[l])),y()},M=()=>bs.find(([L])=>L===l)?.[1]??Ih,P=()=>({joints:p.motion.mount.joints,range:p.motion.range_m}),C=()=>l!=="mount"?{...Fx[l],sweeps:"sweeps",steps:"steps",kind:"great"}:u,D=()=>{const L=C();return Kx(L.swept,L.stepped,L.slice,L.kind==="theta")},O=()=>l==="mount"?h.length:Hl(l,d).length,b=()=>{if(l==="mount"){const{joints:A,range:we}=P(),Me=al(h,_),be=Xx(A,we,Me,v);return i.chamber.pose(be.values),{slice:Me.slice,seen:be,d:be.direction,field:be.fieldVector,ways:Nu(A,we,h,_)}}const L=sl(l,d,_),te=Bx(l,L,v),ge=ao(l,L.first,L.second);return i.chamber.turn(L.first,L.second,te.probe),{slice:L.slice,seen:te,d:ge,field:fl(...Jt(ge)),ways:kx(l,d,_)}},y=()=>{const{slice:L,seen:te,d:ge,field:A,ways:we}=b(),Me=rt();ai(s);for(const Je of we)Je.length>1&&s.add(Dx(Je,Me.cross));s.add(new ks(new I(...A),new I(...ge).multiplyScalar(rn*1.01),.24,Me.co,.07,.04)),i.sphere.cursor(ge),N(te),U(L,te.level);const be=C();G(i.stage.caption,`${io(M())}: ${be.swept} ${be.sweeps}, ${be.stepped} ${be.steps}. Orange: swept. Blue-green arrow: the device's field.`);const pe=k.querySelector("input");(document.activeElement!==pe||m)&&(pe.value=String(Math.round(1e3*_)),G(k.querySelector("output"),R()))},R=()=>`slice ${(l==="mount"?al(h,_):sl(l,d,_)).slice+1} of ${O()}`,N=L=>{const te="http://www.w3.org/2000/svg",ge=document.createElementNS(te,"svg"),A=(T,x,$="")=>{const Z=document.createElementNS(te,T);for(const[ie,K]of Object.entries(x))Z.setAttribute(ie,String(K));$&&(Z.textContent=$),ge.append(Z)};for(const[T,x]of Object.entries({viewBox:"0 0 180 180",role:"img","aria-label":`what the probe sees: field at ${L.field.toFixed(0)} degrees, probe at ${L.probe.toFixed(0)} degrees`}))ge.setAttribute(T,x);const we=(T,x)=>[90+x*Math.cos(T*Math.PI/180),90-x*Math.sin(T*Math.PI/180)];A("circle",{cx:90,cy:90,r:78,fill:"none",stroke:"var(--edge)","stroke-width":2});for(let T=0;T<360;T+=30){const[x,$]=we(T,72),[Z,ie]=we(T,78);A("line",{x1:x,y1:$,x2:Z,y2:ie,stroke:"var(--quiet)"})}const[Me,be]=we(L.probe,78),[pe,Je]=we(L.probe+180,78);A("line",{x1:Me,y1:be,x2:pe,y2:Je,stroke:"var(--cross)","stroke-width":3,"stroke-dasharray":"7 4"});const[ve,He]=we(L.field,62);A("line",{x1:90,y1:90,x2:ve,y2:He,stroke:"var(--co)","stroke-width":5,"stroke-linecap":"round"});const[Rt,xt]=we(L.probe,62*L.level);A("circle",{cx:Rt,cy:xt,r:6,fill:"var(--cross)"}),G(r,g("h3",{},"What the probe sees"),ge,g("p",{class:"small"},`Field (blue-green) at ${L.field.toFixed(0)}°, probe axis (orange) at ${L.probe.toFixed(0)}°: the probe takes in ${(100*L.level*L.level).toFixed(0)} % of the power.`))},U=(L,te)=>{const ge=C(),A=L===0?0:v?3:Math.abs(te)<.98?2:1,we=l==="mount"?[`${io(ge.swept)} ${ge.sweeps}. The probe passes over ${ge.slice}.`,`${io(ge.stepped)} ${ge.steps}, and the next slice begins. ${ge.poles}`,"The field rides on the device: with every step of phi it turns before a probe that lies along theta.",ol(P().joints)<0?"No joint of this mount turns the probe alone: it keeps what the plan gives it.":`A probe that follows, turned by ${P().joints[ol(P().joints)].name}, keeps the same component all the time.`]:[`The ${ge.swept} axis sweeps. The probe passes over ${ge.slice}.`,`The ${ge.stepped} axis steps, and the next slice begins. ${ge.poles}`,l==="roll-over-azimuth"?"The field rides on the device: with every step of the roll it turns before a probe that stands still.":"The field rides on the device: away from the middle it leans before a probe that stands still.",l==="roll-over-azimuth"?"A probe that follows the roll keeps the same component all the time.":"A probe that turns along with the field keeps the same component."];G(a,...we.map((Me,be)=>g("li",{class:be===A?"now":""},Me)))},k=Tn("through the slices",0,1e3,1,0,L=>{_=L/1e3,f=null,y()},"",R),B=ce("play",()=>{if(m){q();return}_>=.999&&(_=0),f=null;let L=performance.now();const te=ge=>{_=Math.min(1,_+(ge-L)/(4500*O())),L=ge,y(),_>=1?q():m=requestAnimationFrame(te)};m=requestAnimationFrame(te),G(B,"pause")},"main"),q=()=>{cancelAnimationFrame(m),m=0,G(B,"play")},J=an("positioner",bs.map(([L,te])=>[L,te]),l,L=>{l=L,Gn({stand:l===p?.geometry?"":l}),_=0,E(),f&&$e()}),X=an("probe",[["still","stands still"],["following","follows"]],"still",L=>{v=L==="following",y()}),le=g("input",{attrs:{type:"checkbox"},on:{change:()=>i.stage.ride(le.checked)}});e.show({key:"",words:""},g("div",{class:"row no-print"},B,J,X,g("label",{class:"row small"},le,"ride with the device")),k,c,g("div",{class:"two"},a,r));let fe=40,W=25;const ue=[g("input",{attrs:{type:"number",min:0,max:180,step:1,value:fe,"aria-label":"theta in degrees"}}),g("input",{attrs:{type:"number",min:-180,max:360,step:1,value:W,"aria-label":"phi in degrees"}})],Ce=g("div",{});ue.forEach((L,te)=>L.addEventListener("input",()=>{L.value!==""&&(te?W=Number(L.value):fe=Number(L.value),$e())})),i.stage.dragged=L=>{q(),[fe,W]=Jt(L).map(te=>Math.round(10*te)/10),ue[0].value=String(fe),ue[1].value=String(W),f=L,$e()};const Oe=new tt("readings","bare","h3");Ce.append(Oe.element);const $e=async()=>{const L=await Oe.ask({key:"hand|",words:""},te=>ke("/api/tutor",{theta_deg:fe,phi_deg:W,...l==="mount"?{campaign:Ae.campaign}:{}},te),te=>Se(te),{keep:!0});L&&Q(L)},Q=L=>{const te=rt(),ge=L.bases[S],A=L.positioners[ee()],we=A.axes,Me=A.ways[0],be=new I(...L.direction).multiplyScalar(rn*1.01);if(ai(s),i.sphere.cursor(L.direction),L.mount?.fault){G(i.stage.caption,`By hand: ${L.mount.fault}.`);return}for(const[pe,Je,ve]of[[ge.first,te.co,.26],[ge.second,te.good,.26],[Me.fixed,te.quiet,.34],[Me.following,te.cross,.3]])s.add(new ks(new I(...pe),be,ve,Je,.06,.035));if(L.mount){const{joints:pe}=P(),Je=L.mount.values;i.chamber.pose(v&&Fu(pe,Je,Me.probe_roll)||Je)}else i.chamber.turn(Me.readouts[we[0]],Me.readouts[we[1]],v?Me.probe_roll:0);G(i.stage.caption,"By hand. Blue-green and green: unit vectors of the components. Grey: a probe that stands still, as an arrow on the device. Orange: one that follows.")},ee=()=>Math.max(0,bs.findIndex(([L])=>L===l)),Se=L=>[vt(["this direction","angles / deg","formula"],[["theta, phi",`${Ge(L.theta,1)}, ${Ge(L.phi,1)}`,g("code",{},"(sin th cos ph, sin th sin ph, cos th)")],["azimuth, elevation (pole y)",`${Ge(L.azimuth,1)}, ${Ge(L.elevation,1)}`,g("code",{},"(sin az cos el, sin el, cos az cos el)")],["alpha, epsilon (pole x)",`${Ge(L.alpha,1)}, ${Ge(L.epsilon,1)}`,g("code",{},"(sin al, cos al sin ep, cos al cos ep)")]]),vt(["components there","first","second"],L.bases.map(te=>[g("span",{attrs:{title:te.formula}},te.name),g("code",{},Nh(te.first)),g("code",{},Nh(te.second))])),vt(["positioner","readouts / deg","still probe sees slant","probe roll that follows"],L.positioners.map(te=>[te.name,te.axes.map(ge=>`${ge} ${Ge(te.ways[0].readouts[ge],1)}`).join(", "),`${Ge(te.ways[0].slant_fixed,1)}°`,`${Ge(te.ways[0].probe_roll,1)}°`])),L.mount&&!L.mount.fault&&vt(["joint of this mount","value"],P().joints.map((te,ge)=>[te.name,`${Ge(L.mount.values[ge],2)} ${te.unit}`])),g("p",{class:"small"},l==="mount"?`On this mount a slice is ${C().slice}. ${C().poles}`:L.positioners[ee()].pole)].filter(te=>te instanceof Node),V=[["0","theta and phi"],["1","Ludwig 2, pole y"],["2","Ludwig 2, pole x"],["3","Ludwig 3"]];return t.show({key:"",words:""},g("p",{class:"small"},"Drag on the sphere, or type an angle."),g("div",{class:"row"},g("label",{class:"row"},"theta",ue[0],"deg"),g("label",{class:"row"},"phi",ue[1],"deg"),an("arrows",V,"3",L=>{S=Number(L),$e()})),Ce),ke("/api/motion",{campaign:Ae.campaign},o.signal).then(L=>{const te=Me=>L.limits_deg[L.axes.indexOf(Me)]??[-180,360],ge=te("azimuth"),A=te(L.geometry==="roll-over-azimuth"?"roll":"elevation"),we=L.mount?"mount":L.geometry;if(L.mount){if(h=Hx({...L,mount:L.mount}),!h.length)return;u=qx(L.mount.joints,L.range_m,h),J.querySelector("select").append(g("option",{attrs:{value:"mount"}},Ih))}p={geometry:we,motion:L,limits:{first:ge,second:A}},Dt("stand")||(l=we,J.querySelector("select").value=l),E()},L=>{o.signal.aborted||(E(),e.fault(L))}),E(),{title:"Learn",element:g("div",{class:"page learn-page"},e.element,n.element,t.element),leave:()=>{q(),o.abort(),Oe.leave(),ai(s),i.stage.device.remove(s),i.stage.dragged=null}}}function io(i){return i[0].toUpperCase()+i.slice(1)}function Nh(i){return`(${i.map(e=>(Object.is(e,-0)?0:e).toFixed(3)).join(", ")})`}const Ar={plan:["Plan",_x],align:["Align",yv],scan:["Scan",Tx],explore:["Explore",ux],learn:["Learn",Jx]},Qx=Object.fromEntries(Object.entries({tab:il,basis:Dl,coords:Ll,shown:Il,stand:bs}).map(([i,e])=>[i,e.map(([t])=>t)])),ey={view:"may watch and stop",operate:"may operate",configure:"may configure"},Ou=matchMedia("(prefers-color-scheme: dark)");function ku(i){const e=Ou.matches?"dark":"light",t=i??Pl("theme")??e;document.documentElement.dataset.theme=t,i&&el("theme",i)}class ty{page=null;name="";view;content=g("div",{class:"content"});remarks=g("div",{class:"remarks warn-text",attrs:{role:"status"}});campaigns=null;open(e){const t=new nv;this.view={stage:t,chamber:new U0(t),sphere:new Px(t)},Ze.watch(s=>this.view.sphere.cursor(s)),t.picked=s=>Ze.pin(s);const n=this.head();Yr(n,()=>document.documentElement.style.setProperty("--head",`${n.offsetHeight}px`)),G(e,n,this.remarks,g("main",{class:"split"},t.element,this.content),Ex()),window.addEventListener("hashchange",()=>this.show()),window.addEventListener("popstate",()=>this.show()),Ou.addEventListener("change",()=>{Pl("theme")||this.recolour()}),gt.open(),this.show(!0)}show(e=!1){const t=Ps(location.hash);G(this.remarks,...Ux(t,{pages:Object.keys(Ar),campaigns:(Ae.me?.campaigns??[]).map(l=>l.id),choices:Qx}).map(l=>g("p",{},l)));const n=t.page in Ar?t.page:"plan",s=t.values.c;s&&Ae.me?.campaigns.some(l=>l.id===s)&&(Ae.campaign=s),this.campaigns&&(this.campaigns.value=Ae.campaign);const r=`${n} ${Ae.campaign} ${t.values.run??""}`;if(!e&&r===this.name){this.page?.follow?.();return}this.name=r,this.page?.leave();const{stage:a,sphere:o,chamber:c}=this.view;c.whose!==Ae.campaign&&c.clear(),c.whose=Ae.campaign,a.hovered=a.dragged=null,a.picked=l=>Ze.pin(l),G(a.readout),G(a.caption),o.clear(),o.scaleBar(null),a.ride(!1),Ze.fromAddress(),this.page=Ar[n][1](this.view),document.title=`Colure: ${this.page.title}`;for(const l of document.querySelectorAll("nav a"))l.getAttribute("data-page")===n?l.setAttribute("aria-current","page"):l.removeAttribute("aria-current");G(this.content,n==="plan"?null:g("h1",{class:"heard"},this.page.title),this.page.element)}head(){const e=g("span",{class:"chip",attrs:{role:"status"}}),t=g("a",{class:"chip draft",attrs:{href:"#plan"}}),n=Ae.me?.campaigns??[];gt.watch({linked:o=>{e.className=`chip${o?"":" hot"}`,G(e,o?ey[Ae.me?.role??""]??"":"not connected")}}),Bh(()=>this.drafts(t)),this.drafts(t);const s=n.length>1&&an("campaign",n.map(o=>[o.id,o.folder]),Ae.campaign,o=>{Ae.campaign=o,history.replaceState(null,"",`#${Ps(location.hash).page}`),Gn({c:o}),this.show(!0)});this.campaigns=s?s.querySelector("select"):null;const r=ce("◐",()=>this.recolour(document.documentElement.dataset.theme==="dark"?"light":"dark"));r.setAttribute("aria-label","light or dark"),r.title="light or dark";const a=g("nav",{attrs:{"aria-label":"pages"}},...Object.entries(Ar).map(([o,[c]])=>g("a",{attrs:{href:`#${o}`,"data-page":o},on:{click:l=>this.go(l,o)}},c)));return g("header",{class:"top"},g("span",{class:"name"},ny(),"Colure"),a,s,g("span",{class:"spring"}),t,...Rv(),e,_t("configure")&&ce("invite",()=>void this.invite()),r,Nx())}recolour(e){ku(e),this.view.sphere.frame();const{chamber:t}=this.view;t.stand&&t.build({...t.stand},!0),this.show(!0)}go(e,t){e.preventDefault();const n=(Ae.me?.campaigns.length??0)>1?`?c=${Ae.campaign}`:"";location.hash=`#${t}${n}`}drafts(e){const t=cl(Ae.campaign);e.hidden=t===0,G(e,`${t} unsaved ${t===1?"value":"values"}`)}async invite(){try{const{code:e}=await ke("/api/invite",{role:"view"});Vn("A link for somebody who watches",()=>[g("p",{},"It opens one session on this computer. That session may look and stop, and nothing else. The link works once and for a short while."),g("p",{class:"mono copy"},`${location.origin}/launch?code=${e}`)])}catch(e){Vn("No link was made",()=>[g("p",{class:"faults"},Vt(e))])}}}function ny(){const i="http://www.w3.org/2000/svg",e=document.createElementNS(i,"svg");for(const[t,n]of Object.entries({viewBox:"0 0 24 24",width:"24",height:"24","aria-hidden":"true"}))e.setAttribute(t,n);for(const[t,n]of[[10,"var(--ink)"],[4,"var(--cross)"]]){const s=document.createElementNS(i,"ellipse");for(const[r,a]of Object.entries({cx:12,cy:12,rx:t,ry:10,fill:"none",stroke:n,"stroke-width":1.8}))s.setAttribute(r,String(a));e.append(s)}return e}async function iy(){ku();const i=document.getElementById("app");try{Ae.me=await kh();const e=Ps(location.hash).values.c;Ae.campaign=Ae.me.campaigns.find(t=>t.id===e)?.id??Ae.me.campaigns[0].id,new ty().open(i)}catch(e){G(i,g("main",{class:"pad"},g("h1",{},"The control room did not open"),g("p",{class:"faults"},Vt(e)),g("p",{},"A link opens once. colure serve prints a new one when it starts; a session that may configure makes more with invite.")))}}iy();
