function g(i,e={},...t){const n=document.createElement(i);e.class&&(n.className=e.class);for(const[s,r]of Object.entries(e.attrs??{}))r===!0?n.setAttribute(s,""):r!==!1&&r!==void 0&&n.setAttribute(s,String(r));for(const[s,r]of Object.entries(e.on??{}))n.addEventListener(s,r);return $(n,...t),n}const sl=new WeakMap;let rl=null;function Oc(i,e){sl.set(i,e),rl??=new ResizeObserver(t=>{for(const n of t)sl.get(n.target)?.()}),rl.observe(i)}function $(i,...e){i.replaceChildren(...e.filter(t=>t!=null&&t!==!1).map(t=>t instanceof Node?t:String(t)))}function _e(i,e,t="",n=""){return g("button",{class:t,on:{click:e},attrs:{type:"button",title:n||void 0}},i)}function tn(i,e,t,n){const s=g("select",{on:{change:()=>n(s.value)}},...e.map(([r,a])=>g("option",{attrs:{value:r}},a)));return s.value=t,s.setAttribute("aria-label",i),g("label",{class:"field"},g("span",{},i),s)}function Mn(i,e,t,n,s,r,a="",o=c=>`${c}${a}`){const c=g("output",{},o(s)),l=g("input",{attrs:{type:"range",min:e,max:t,step:n,value:s,"aria-label":i,"aria-valuetext":o(s)},on:{input:()=>{const h=Number(l.value);r(h),$(c,o(h)),l.setAttribute("aria-valuetext",o(h))}}});return g("label",{class:"field wide"},g("span",{},i),l,c)}function Wh(i,e,t,n){const s=g("div",{class:"tabs",attrs:{role:"tablist"}}),r=(a,o)=>{for(const c of s.children){const l=c.getAttribute("data-key")===a;c.setAttribute("aria-selected",String(l)),c.setAttribute("tabindex",l?"0":"-1"),l&&o&&c.focus()}t.setAttribute("aria-labelledby",`tab-${a}`),n(a)};return i.forEach(([a,o],c)=>{const l=g("button",{attrs:{type:"button",role:"tab",id:`tab-${a}`,"data-key":a,"aria-controls":t.id,"aria-selected":String(a===e),tabindex:a===e?0:-1},on:{click:()=>r(a,!1)}},o);l.addEventListener("keydown",h=>{const u=h.key==="ArrowRight"?1:h.key==="ArrowLeft"?-1:0,d=h.key==="Home"?0:h.key==="End"?i.length-1:u?(c+u+i.length)%i.length:-1;d<0||(h.preventDefault(),r(i[d][0],!0))}),s.append(l)}),t.setAttribute("role","tabpanel"),t.setAttribute("tabindex","0"),t.setAttribute("aria-labelledby",`tab-${e}`),s}function xt(i,e,t=""){return g("table",{class:t},g("thead",{},g("tr",{},...i.map(n=>g("th",{attrs:{scope:"col"}},n)))),g("tbody",{},...e.map(n=>g("tr",{},...n.map(s=>g("td",{},s))))))}function Qn(i){const e=Math.round(i/60);return i<90?`${Math.round(i)} s`:e<60?`${e} min`:`${Math.floor(e/60)} h ${String(e%60).padStart(2,"0")} min`}function Be(i,e=2){return i==null||!Number.isFinite(i)?"-":i.toFixed(e)}function al(i){return i.moves===!0||!!i.hand}function Ro(i){return i.running||!!i.hand}const $h=7e3;class qh{status={type:"status",state:"idle",running:!1,sequence:0,lease:""};grid=null;frame=null;up=!1;watchers=new Set;wait=250;heard=0;known=!1;open(){const e=new WebSocket(`${location.protocol==="https:"?"wss":"ws"}://${location.host}/api/live`);e.binaryType="arraybuffer",this.heard=Date.now();const t=window.setInterval(()=>{Date.now()-this.heard>$h&&n()},1e3),n=()=>{window.clearInterval(t),e.onclose=e.onmessage=e.onopen=null,e.close(),this.up=!1,this.tell(s=>s.linked?.(!1)),window.setTimeout(()=>this.open(),this.wait),this.wait=Math.min(4e3,this.wait*2)};e.onopen=()=>{this.heard=Date.now()},e.onmessage=s=>{if(this.heard=Date.now(),this.up||(this.wait=250,this.up=this.known=!0,this.tell(r=>r.linked?.(!0))),typeof s.data=="string")this.hear(JSON.parse(s.data));else{const r=this.frame=new Float32Array(s.data);this.tell(o=>o.frame?.(r));const a=()=>{e.readyState===WebSocket.OPEN&&e.send("taken")};document.hidden?window.setTimeout(a,250):requestAnimationFrame(a)}},e.onclose=n}watch(e){return this.watchers.add(e),e.status?.(this.status),this.grid&&e.grid?.(this.grid),this.frame&&e.frame?.(this.frame),e.linked?.(this.up||!this.known),()=>this.watchers.delete(e)}hear(e){if(e.type!=="alive")if(e.type==="grid")this.grid=e,this.frame=null,this.tell(t=>t.grid?.(e));else{const t=this.status={sequence:0,lease:"",...e};!t.run&&this.grid&&(this.grid=this.frame=null,this.tell(n=>n.grid?.(null))),this.tell(n=>n.status?.(t))}}tell(e){for(const t of[...this.watchers])try{e(t)}catch(n){console.error(n)}}}const pt=new qh;class _s extends Error{constructor(e,t){super(t.join("; ")),this.status=e,this.faults=t}}let kc="";async function Bc(i){const e=await i.json();if(!i.ok)throw new _s(i.status,e.errors??["no reason was given"]);return e}async function wn(i,e=[],t){let n=0;const s=i.replace(/\{\w+\}/g,()=>encodeURIComponent(e[n++]??""));return Bc(await fetch(s,{headers:{Accept:"application/json"},signal:t??null}))}async function ze(i,e,t){return Bc(await fetch(i,{method:"POST",headers:{"Content-Type":"application/json","X-Colure-Token":kc},body:JSON.stringify(e),signal:t??null}))}async function zc(){const i=await wn("/api/me");return kc=i.token,i}function Xi(i,e,t=()=>{}){const n=document.activeElement,s=[...document.querySelectorAll("header.top, main")],r=()=>{if(c.isConnected){c.remove();for(const l of s)l.inert=!1;n?.focus(),t()}},a=g("h2",{attrs:{id:"dialog-title",tabindex:-1}},i),o=g("div",{class:"dialog",attrs:{role:"dialog","aria-modal":"true","aria-labelledby":"dialog-title"}},g("div",{class:"row"},a,g("span",{class:"spring"}),_e("close",r,"tiny","close (Escape)")),...e(r).filter(l=>l instanceof Node)),c=g("div",{class:"shade"},o);c.addEventListener("keydown",l=>{l.key==="Escape"&&r()});for(const l of s)l.inert=!0;return document.body.append(c),a.focus(),{element:o,close:r}}const Mr=new Map,Ca=new Set;function Kn(i){let e=Mr.get(i);if(!e){try{e=JSON.parse(sessionStorage.getItem(`draft-${i}`)??"{}")??{}}catch{e={}}Mr.set(i,e)}return e}function Fs(i,e,t){const n=Kn(i);t===void 0?delete n[e]:n[e]=t,Vc(i)}function ol(i){Mr.set(i,{}),Vc(i)}function Co(i){return Object.keys(Kn(i)).length}function Hc(i){return Ca.add(i),()=>Ca.delete(i)}function Vc(i){try{sessionStorage.setItem(`draft-${i}`,JSON.stringify(Kn(i)))}catch{}for(const e of Ca)e()}window.addEventListener("beforeunload",i=>{[...Mr.values()].some(e=>Object.keys(e).length)&&i.preventDefault()});const Ne={me:null,campaign:""};function vt(i){const e=["nobody","view","operate","configure"];return Ne.me!==null&&e.indexOf(Ne.me.role)>=e.indexOf(i)}function Yt(i){return i instanceof _s?i.faults.join(`
`):i instanceof TypeError?"The server does not answer. Is colure serve still running?":i instanceof Error?i.message:String(i)}function Pa(i){return i instanceof DOMException&&i.name==="AbortError"}const Gc={scan:"scan",flip:"flip test","beam-coarse":"coarse beam search","beam-fine":"fine beam search"};function Xh(i){const e=`${i.measured} of ${i.total} points`,t=i.measured_at?`, the last on ${new Date(1e3*i.measured_at).toLocaleString()}`:"";return i.state==="nothing"?"nothing yet":i.state==="complete"?`complete${i.total?`, ${e}`:""}${t}`:i.state==="damaged"?"a journal that cannot be read":`${e}${t}: the start goes on with the rest`}async function Po(i,e,t="scan"){let n;try{n=await ze("/api/before",{campaign:Ne.campaign,run:i,kind:t})}catch(s){return e(s),!1}return new Promise(s=>{let r=!1;Xi(t==="scan"?"Before anything moves":`Before anything moves: ${Gc[t]}`,a=>Yh(n,t,a,(o,c)=>{r=o,c!==void 0&&e(c),s(o)},o=>{a(),Po(o,e,t).then(s)}),()=>{r||window.setTimeout(()=>s(!1),0)})})}function Yh(i,e,t,n,s){const r=g("input",{attrs:{type:"checkbox",disabled:i.fault!==""},on:{change:()=>p()}}),a=i.failed_checks,o=g("input",{attrs:{type:"checkbox"},on:{change:()=>p()}}),c=g("input",{attrs:{type:"checkbox"}}),l=g("p",{class:"faults",attrs:{role:"alert"}},i.fault),h=i.on_disk.total?i.points-i.on_disk.measured:i.points,u=Co(Ne.campaign),d=_e("start",()=>{d.disabled=!0;const v={campaign:Ne.campaign,run:i.run,sequence:pt.status.sequence,cautions_read:!0,kind:e,home:c.checked,despite_check:o.checked};ze("/api/start",v).then(()=>{n(!0),t()},m=>{$(l,Yt(m)),d.disabled=!1})},"main");d.disabled=!0;function p(){d.disabled=!r.checked||a.length>0&&!o.checked}const _=[["run",i.run],["to measure",`${Math.max(0,h)} of ${i.points} points`],["takes about",i.fault?"-":Qn(i.duration_s)],["on disk",Xh(i.on_disk)],["chamber",i.simulated?"simulated: nothing real moves":"real: the axes move"]];return[xt(["",""],_.map(([v,m])=>[g("strong",{},v),m]),"facts"),u>0&&g("p",{class:"warn"},`${u} unsaved ${u===1?"value":"values"} of the form: the scan uses what is on disk, without ${u===1?"it":"them"}.`),l,i.fault!==""&&_e(`take the name ${i.free_name}`,()=>s(i.free_name),"main"),a.length>0&&g("h3",{},"The instruments did not pass their check"),a.length>0&&g("ul",{class:"warn"},...a.map(v=>g("li",{},v))),a.length>0&&g("p",{},g("label",{},o," Start in spite of it. Better: mend it, and check again under Align.")),g("h3",{},"Cautions"),g("ul",{},...i.cautions.map(v=>g("li",{},v))),g("p",{},g("label",{},r," Everyone is clear of the axes and the cautions are understood.")),g("p",{class:"small"},g("label",{},c," Home the axes first (needed after a fault of the motion).")),g("div",{class:"row"},_e("not now",t),g("span",{class:"spring"}),d)]}class Qe{subject=g("span",{class:"subject mono"});body=g("div",{class:"panel-body"});faults=g("div",{class:"faults",attrs:{role:"alert"}});tools=g("span",{class:"row"});element;asked=0;stop=null;key="";constructor(e,t="card",n="h2"){this.element=g("section",{class:`${t} panel`,attrs:{"aria-label":e}},g("div",{class:"panel-head"},g(n,{},e),this.subject,g("span",{class:"spring"}),this.tools),this.faults,this.body)}async ask(e,t,n,s={}){const r=++this.asked;this.stop?.abort();const a=this.stop=new AbortController;this.element.setAttribute("aria-busy","true"),(!s.keep||this.key.split("|")[0]!==e.key.split("|")[0])&&this.empty("",e);const o=window.setTimeout(()=>{r===this.asked&&!this.body.childElementCount&&$(this.body,g("p",{class:"quiet loading"},s.waiting??"Being worked out."))},150);try{const c=await t(a.signal);if(r!==this.asked)return;const l=s.of?.(c);if(l&&s.expect&&!Do(l,s.expect))throw new Error(`The server answered about ${l.run}${l.state?`, ${l.state}`:""}, not about what was asked. Nothing is shown.`);return $(this.faults),$(this.subject,e.words),this.key=e.key,$(this.body,...n(c)),c}catch(c){if(r!==this.asked||Pa(c))return;$(this.subject,e.words),this.key=e.key,$(this.body),$(this.faults,g("p",{},Yt(c)),_e("ask again",()=>void this.ask(e,t,n,s),"tiny"));return}finally{window.clearTimeout(o),r===this.asked&&this.element.removeAttribute("aria-busy")}}empty(e,t=null){t||(this.asked++,this.stop?.abort(),this.element.removeAttribute("aria-busy")),$(this.subject,t?.words??""),this.key=t?.key??"",$(this.faults),$(this.body,e&&g("p",{class:"quiet"},e))}show(e,...t){this.asked++,this.stop?.abort(),this.element.removeAttribute("aria-busy"),$(this.faults),$(this.subject,e.words),this.key=e.key,$(this.body,...t)}fault(e){Pa(e)||$(this.faults,g("p",{},Yt(e)))}leave(){this.asked++,this.stop?.abort()}}function Do(i,e){const t=e.frequency_hz===null||i.frequency_hz===null||Math.abs(i.frequency_hz-e.frequency_hz)<1;return i.run===e.run&&(i.state??null)===(e.state??null)&&t}const jh=["#3b1a6b","#453781","#404f8b","#38658c","#2e788e","#268b8d","#1f9e89","#2fb07b","#51c369","#7fd34e","#b0dd2f","#d9e21a","#fde725"],Kh=["#301437","#45135c","#592a8f","#5e51ad","#6276ba","#7297c1","#95b5c7","#c4ced4","#e2d9e2","#d8c7be","#cca389","#c27c63","#b25652","#983550","#741e4f","#4a1342","#2f1436"];function Wc(i){const e=new Uint8ClampedArray(768),t=i.map(n=>[1,3,5].map(s=>parseInt(n.slice(s,s+2),16)));for(let n=0;n<256;n++){const s=n/255*(t.length-1),r=Math.min(t.length-2,Math.floor(s));for(let a=0;a<3;a++)e[3*n+a]=t[r][a]+(s-r)*(t[r+1][a]-t[r][a])}return e}const Nn=Wc(jh),Zh=Wc(Kh);function wr(i,e,t){return i===null||!Number.isFinite(i)?-1:Math.max(0,Math.min(255,Math.round(255*(i-e)/(t-e))))}function _n(){return Math.max(1,(parseFloat(getComputedStyle(document.documentElement).fontSize)||15)/15)}let as=null;function lt(){const i=document.documentElement.dataset.theme??"";return as?.theme===i&&as.inks.ink||(as={theme:i,inks:Jh()}),as.inks}function Jh(){const i=getComputedStyle(document.documentElement),e=t=>i.getPropertyValue(t).trim();return{co:e("--co"),cross:e("--cross"),other:e("--other"),ink:e("--ink"),quiet:e("--quiet"),grid:e("--grid"),paper:e("--paper"),good:e("--good"),band:e("--band"),bad:e("--bad"),focus:e("--focus"),ring:e("--ring"),edge:e("--edge"),card:e("--card")}}function fr(i,e){const t=URL.createObjectURL(e);g("a",{attrs:{href:t,download:i}}).click(),window.setTimeout(()=>URL.revokeObjectURL(t),1e4)}function $c(i){const e=s=>{if(s==null||typeof s=="number"&&!Number.isFinite(s))return"";const r=typeof s=="string"&&/^[=+\-@\t\r]/.test(s)?`'${s}`:String(s);return/[",\n]/.test(r)?`"${r.replaceAll('"','""')}"`:r},t=Math.max(0,...i.map(s=>s.values.length)),n=[i.map(s=>e(s.name)).join(",")];for(let s=0;s<t;s++)n.push(i.map(r=>e(r.values[s])).join(","));return`${n.join(`\r
`)}\r
`}async function Qh(i,e,t){const n=URL.createObjectURL(new Blob([i],{type:"image/svg+xml"})),s=new Image;await new Promise((o,c)=>{s.onload=o,s.onerror=()=>c(new Error("the picture could not be drawn")),s.src=n});const r=g("canvas",{attrs:{width:2*e,height:2*t}});return r.getContext("2d").drawImage(s,0,0,2*e,2*t),URL.revokeObjectURL(n),new Promise((o,c)=>r.toBlob(l=>l?o(l):c(new Error("the picture could not be packed")),"image/png"))}function Cr(i){const e=()=>fr(`${i.name()}.svg`,new Blob([i.svg().text],{type:"image/svg+xml"})),t=()=>{const{text:s,width:r,height:a}=i.svg();Qh(s,r,a).then(o=>fr(`${i.name()}.png`,o))},n=()=>fr(`${i.name()}.csv`,new Blob([$c(i.columns())],{type:"text/csv"}));return g("span",{class:"save no-print",attrs:{role:"group","aria-label":"save this chart"}},_e("SVG",e,"tiny","save the picture as SVG"),_e("PNG",t,"tiny","save the picture as PNG"),_e("CSV",n,"tiny","save the values as CSV"))}function Rs(...i){return i.filter(Boolean).join("-").toLowerCase().replaceAll(/[^a-z0-9._-]+/g,"-").replaceAll(/^-+|-+$/g,"")||"chart"}function ps([i,e],t=7,n=!0){const s=Math.min(i,e),r=Math.abs(e-i);if(!(r>0))return[s];const a=r/t,o=10**Math.floor(Math.log10(a)),l=[...n&&r>=80&&r<=400?[15,30,45,60,90]:[],o,2*o,5*o,10*o].sort((u,d)=>u-d).find(u=>r/u<=t+1)??10*o,h=[];for(let u=Math.ceil(s/l-1e-9)*l;u<=s+r*(1+1e-9);u+=l)h.push(Math.round(u/l)*l);return h}function qn(i,[e,t]){const n=Math.abs(t-e),s=n>20?0:n>2?1:n>.2?2:3,r=i.toFixed(Number.isInteger(i)&&n>5?0:s);return Number(r)===0?r.replace("-",""):r}function Br(i,e,t,n){const s=t+(i[0]-t)*n,r=t+(i[1]-t)*n;return qc([s,r],e)}function zr(i,e,t){return qc([i[0]+t,i[1]+t],e)}function qc([i,e],t){const n=Math.min(e-i,t[1]-t[0]),s=Math.max(t[0],Math.min(i,t[1]-n));return[s,s+n]}function _i(i,e){let t=1/0,n=-1/0;for(const a of i)a===null||!Number.isFinite(a)||(t=Math.min(t,a),n=Math.max(n,a));if(t>n)return[0,e];const s=Math.floor(t/e-1e-9)*e,r=Math.ceil(n/e+1e-9)*e;return r>s?[s,r]:[s,s+e]}const Xc="http://www.w3.org/2000/svg",zt=56,Hr=14,bt=12,eu=40;function ut(i,e,t=""){const n=document.createElementNS(Xc,i);for(const[s,r]of Object.entries(e))n.setAttribute(s,String(r));return t&&(n.textContent=t),n}class pn{constructor(e){this.name=e;const t=g("div",{class:"chart-tools no-print"},_e("whole",()=>this.reset(),"tiny","show all of it (0)"),_e("+",()=>this.zoomAll(.5),"tiny","closer (+)"),_e("−",()=>this.zoomAll(2),"tiny","farther (-)"),_e("◂",()=>this.pan(-.25),"tiny","to the left"),_e("▸",()=>this.pan(.25),"tiny","to the right"),Cr({name:()=>Rs(this.name),svg:()=>this.picture(),columns:()=>this.columns()}));this.canvas.setAttribute("aria-label",e),this.element=g("div",{class:"chart"},g("div",{class:"chart-view"}),this.legend,t),this.element.firstElementChild.append(this.canvas),Oc(this.element,()=>{this.data&&this.room()!==this.width&&this.paint()}),this.listen()}canvas=ut("svg",{tabindex:0,role:"img"});legend=g("div",{class:"legend mono"});element;moved=null;clicked=null;data=null;xView=[0,1];yView=[0,1];whole=[[0,1],[0,1]];cursor=null;overlay=ut("g",{});width=0;room(){return Math.max(260,Math.round(this.element.clientWidth/_n())||600)}draw(e,t=this.name){this.name=t,this.canvas.setAttribute("aria-label",t);const n=e.xWhole??[Math.min(...e.x),Math.max(...e.x)],s=e.yWhole??_i(e.lines.flatMap(a=>a.values),5),r=this.data!==null&&this.data.xName===e.xName&&n.every((a,o)=>a===this.whole[0][o])&&s.every((a,o)=>a===this.whole[1][o]);this.data=e,r||(this.whole=[n[1]>n[0]?n:[n[0]-.5,n[0]+.5],s],this.xView=[...this.whole[0]],this.yView=[...this.whole[1]]),this.paint()}reset(){this.xView=[...this.whole[0]],this.yView=[...this.whole[1]],this.paint()}zoomAll(e){const t=this.cursor??(this.xView[0]+this.xView[1])/2;this.xView=Br(this.xView,this.whole[0],t,e),this.paint()}pan(e){this.xView=zr(this.xView,this.whole[0],e*(this.xView[1]-this.xView[0])),this.paint()}get view(){return{x:this.xView,y:this.yView}}inner(){return{w:this.width-zt-Hr,t:(this.data?.height??300)-bt-eu}}px(e){return zt+(e-this.xView[0])/(this.xView[1]-this.xView[0])*this.inner().w}py(e){return bt+(1-(e-this.yView[0])/(this.yView[1]-this.yView[0]))*this.inner().t}paint(){const e=this.data;if(!e)return;this.width=this.room();const t=e.height??300,{w:n,t:s}=this.inner(),r=lt(),a=`clip-${Math.round(1e9*Math.random())}`;$(this.canvas);for(const[l,h]of Object.entries({width:Math.round(this.width*_n()),height:Math.round(t*_n()),viewBox:`0 0 ${this.width} ${t}`,"font-family":"system-ui, sans-serif","font-size":12}))this.canvas.setAttribute(l,String(h));const o=ut("clipPath",{id:a});o.append(ut("rect",{x:zt,y:bt,width:n,height:s})),this.canvas.append(o);for(const l of ps(this.xView,Math.max(3,Math.floor(n/75))))this.canvas.append(ut("line",{x1:this.px(l),x2:this.px(l),y1:bt,y2:bt+s,stroke:r.grid}),ut("text",{x:this.px(l),y:bt+s+15,fill:r.quiet,"text-anchor":"middle"},qn(l,this.xView)));for(const l of ps(this.yView,Math.max(3,Math.floor(s/40)),!1))this.canvas.append(ut("line",{x1:zt,x2:zt+n,y1:this.py(l),y2:this.py(l),stroke:r.grid}),ut("text",{x:zt-6,y:this.py(l)+4,fill:r.quiet,"text-anchor":"end"},qn(l,this.yView)));this.canvas.append(ut("rect",{x:zt,y:bt,width:n,height:s,fill:"none",stroke:r.edge}),ut("text",{x:zt+n/2,y:bt+s+33,fill:r.quiet,"text-anchor":"middle"},e.xName),ut("text",{x:0,y:0,fill:r.quiet,"text-anchor":"middle",transform:`translate(13 ${bt+s/2}) rotate(-90)`},e.yName));const c=ut("g",{"clip-path":`url(#${a})`});for(const l of e.marks??[])this.mark(c,l,s);for(const l of e.lines)c.append(ut("path",{d:this.path(l),fill:"none",stroke:l.colour,"stroke-width":l.width??1.8,...l.dash?{"stroke-dasharray":l.dash}:{},"stroke-linejoin":"round"})),l.points&&l.values.forEach((h,u)=>h!==null&&c.append(ut("circle",{cx:this.px(e.x[u]),cy:this.py(h),r:3,fill:l.colour})));this.peak(c,r.ink),this.overlay=ut("g",{}),this.canvas.append(c,this.overlay),this.showCursor()}path(e){let t="",n=!1;const s=this.data.x;return e.values.forEach((r,a)=>{if(r===null||!Number.isFinite(r)){n=!1;return}t+=`${n?"L":"M"}${this.px(s[a]).toFixed(1)} ${this.py(r).toFixed(1)}`,n=!0}),t}mark(e,t,n){const s=this.px(t.at);t.to!==void 0&&e.append(ut("rect",{x:Math.min(s,this.px(t.to)),y:bt,width:Math.abs(this.px(t.to)-s),height:n,fill:t.colour,opacity:.16})),e.append(ut("line",{x1:s,x2:s,y1:bt,y2:bt+n,stroke:t.colour,"stroke-dasharray":"4 4"})),t.text&&e.append(ut("text",{x:s+4,y:bt+13,fill:t.colour},t.text))}peak(e,t){const n=this.data?.lines[this.data.peakOf??-1];if(!this.data||!n)return;let s=-1;if(n.values.forEach((o,c)=>{o!==null&&(s<0||o>(n.values[s]??-1/0))&&(s=c)}),s<0)return;const r=this.px(this.data.x[s]),a=this.py(n.values[s]);e.append(ut("path",{d:`M${r} ${a-3}l-5 -8h10z`,fill:t}),ut("text",{x:r+9,y:a-3<bt+12?a+14:a-4,fill:t,stroke:lt().card,"stroke-width":4,"paint-order":"stroke"},`${n.values[s].toFixed(this.data.digits??2)} at ${qn(this.data.x[s],[0,1])}`))}point(e){this.cursor=e,this.showCursor()}showCursor(){const e=this.data;if(!e)return;$(this.overlay);let t=-1;if(this.cursor!==null){const r=this.cursor;t=e.x.reduce((o,c,l)=>o<0||Math.abs(c-r)<Math.abs(e.x[o]-r)?l:o,-1);const a=this.px(r);a>=zt&&a<=this.width-Hr&&this.overlay.append(ut("line",{x1:a,x2:a,y1:bt,y2:bt+this.inner().t,stroke:lt().ink,"stroke-width":1}))}const n=e.digits??2,s=e.lines.map(r=>{const a=ut("svg",{width:22,height:8,"aria-hidden":"true"});a.append(ut("line",{x1:0,x2:22,y1:4,y2:4,stroke:r.colour,"stroke-width":2,...r.dash?{"stroke-dasharray":r.dash}:{}}));const o=t<0?void 0:r.values[t];return g("span",{},a,` ${r.name}`,t<0?null:g("b",{},` ${o==null?"-":o.toFixed(n)}`))});$(this.legend,...s,t<0?null:g("span",{class:"quiet"},`${e.xName.split(" / ")[0]} ${e.x[t].toFixed(n)}`))}picture(){const e=this.canvas.cloneNode(!0),t=this.data?.height??300;return e.setAttribute("xmlns",Xc),e.removeAttribute("tabindex"),e.prepend(ut("rect",{width:this.width,height:t,fill:lt().card})),(this.data?.lines??[]).forEach((n,s)=>e.append(ut("text",{x:zt+8,y:bt+16+15*s,fill:n.colour},n.name))),{text:new XMLSerializer().serializeToString(e),width:this.width,height:t}}columns(){const e=this.data;return e?[{name:e.xName,values:e.x},...e.lines.map(t=>({name:`${t.name} (${e.yName})`,values:t.values}))]:[]}listen(){let e=null,t=null,n=this.whole;const s=o=>{const c=this.canvas.getBoundingClientRect();return[(o.clientX-c.left)/_n(),(o.clientY-c.top)/_n()]},r=o=>this.xView[0]+(o-zt)/this.inner().w*(this.xView[1]-this.xView[0]),a=o=>this.yView[0]+(1-(o-bt)/this.inner().t)*(this.yView[1]-this.yView[0]);this.canvas.addEventListener("pointerdown",o=>{e=s(o),n=[[...this.xView],[...this.yView]],this.canvas.setPointerCapture(o.pointerId)}),this.canvas.addEventListener("pointermove",o=>{const c=s(o);if(!e){const v=c[0]>=zt&&c[0]<=this.width-Hr;this.point(v?r(c[0]):null),this.moved?.(v?r(c[0]):null);return}const[l,h]=[this.inner().w,this.inner().t];if(o.shiftKey){this.xView=zr(n[0],this.whole[0],-(c[0]-e[0])/l*(n[0][1]-n[0][0])),this.yView=zr(n[1],this.whole[1],(c[1]-e[1])/h*(n[1][1]-n[1][0])),this.paint();return}const[u,d,p,_]=ll(e,c,l,h);t?.remove(),t=ut("rect",{x:u,y:d,width:p,height:_,fill:lt().co,opacity:.15,stroke:lt().co}),this.overlay.append(t)}),this.canvas.addEventListener("pointerup",o=>{const c=e,l=s(o);if(e=null,t?.remove(),t=null,!c||o.shiftKey)return;if(Math.hypot(l[0]-c[0],l[1]-c[1])<5){this.clicked?.(r(l[0]));return}const[h,u,d,p]=ll(c,l,this.inner().w,this.inner().t),_=[[r(h),r(h+d)],[a(u+p),a(u)]];[this.xView,this.yView]=[Br(_[0],this.whole[0],_[0][0],1),Br(_[1],this.whole[1],_[1][0],1)],this.paint()}),this.canvas.addEventListener("pointerleave",()=>{e||(this.point(null),this.moved?.(null))}),this.canvas.addEventListener("dblclick",()=>this.reset()),this.canvas.addEventListener("keydown",o=>this.key(o))}key(e){const t=(this.xView[1]-this.xView[0])/100,n=this.cursor??(this.xView[0]+this.xView[1])/2;if(e.key==="ArrowRight"||e.key==="ArrowLeft"){const s=Math.max(this.xView[0],Math.min(this.xView[1],n+(e.key==="ArrowRight"?t:-t)));this.point(s),this.moved?.(s)}else if(e.key==="+")this.zoomAll(.5);else if(e.key==="-")this.zoomAll(2);else if(e.key==="0")this.reset();else if(e.key==="Enter"&&this.cursor!==null)this.clicked?.(this.cursor);else return;e.preventDefault()}}function ll(i,e,t,n){let s=Math.max(zt,Math.min(i[0],e[0])),r=Math.max(bt,Math.min(i[1],e[1])),a=Math.min(zt+t,Math.max(i[0],e[0]))-s,o=Math.min(bt+n,Math.max(i[1],e[1]))-r;return a>3*o?[r,o]=[bt,n]:o>3*a&&([s,a]=[zt,t]),[s,r,Math.max(1,a),Math.max(1,o)]}const dt=Math.PI/180,jn=i=>Math.sin(i*dt),Xn=i=>Math.cos(i*dt);function gi(i,e){return i[0]*e[0]+i[1]*e[1]+i[2]*e[2]}function Yc(i,e,t,n){return[i*e[0]+t*n[0],i*e[1]+t*n[1],i*e[2]+t*n[2]]}function Wt(i,e){return[jn(i)*Xn(e),jn(i)*jn(e),Xn(i)]}function bn(i){return[Math.acos(Math.max(-1,Math.min(1,i[2])))/dt,Math.atan2(i[1],i[0])/dt]}function vs(i){const e=new Set,t=[];for(let n=0;3*n<i.length;n++){const s=[0,1,2].map(r=>Math.round(1e4*i[3*n+r])+0).join();e.has(s)||(e.add(s),t.push(n))}return t}function tu(i,e){return[gi(i[0],e),gi(i[1],e),gi(i[2],e)]}function Vr(i,e){const t=n=>[e[0][n],e[1][n],e[2][n]];return i.map(n=>[0,1,2].map(s=>gi(n,t(s))))}function Ei(i,e){const t=Xn(e),n=jn(e);return i==="x"?[[1,0,0],[0,t,-n],[0,n,t]]:i==="y"?[[t,0,n],[0,1,0],[-n,0,t]]:[[t,-n,0],[n,t,0],[0,0,1]]}function jc(i,e,t){return i==="roll-over-azimuth"?Vr(Ei("y",-e),Ei("z",-t)):i==="azimuth-over-elevation"?Vr(Ei("x",t),Ei("y",-e)):Vr(Ei("y",-e),Ei("x",t))}function Da(i,e,t){return jc(i,e,t)[2]}function Kc(i,e,t=0){const n=[Xn(i)*Xn(e),Xn(i)*jn(e),-jn(i)],s=[-jn(e),Xn(e),0];return Yc(Xn(e-t),n,-jn(e-t),s)}function nu(i,e,t,n=0){const s=jc(i,e,t),[r,a]=bn(s[2]),o=tu(s,Kc(r,a,n));return Math.atan2(o[1],o[0])/dt}function xs(i){const[e="",t=""]=i.replace(/^#/,"").split("?");return{page:e,values:Object.fromEntries(new URLSearchParams(t))}}function iu(i){const e=new URLSearchParams(Object.entries(i.values).filter(([,t])=>t!=="")).toString();return`#${i.page}${e?`?${e}`:""}`}function Mi(i,e=!1){const t=xs(location.hash),n=iu({page:t.page,values:{...t.values,...i}});n!==location.hash&&(e?history.pushState(null,"",n):history.replaceState(null,"",n))}function Dt(i){return xs(location.hash).values[i]??""}function Gr(i){const e=Dt(i),t=Number(e);return e!==""&&Number.isFinite(t)?t:null}class su{watchers=new Set;pinned=null;get at(){return this.pinned}fromAddress(){const[e,t]=Dt("at").split(",").map(Number);this.pinned=Number.isFinite(e)&&Number.isFinite(t)?Wt(e,t):null,this.tell(this.pinned,!0)}hover(e){this.tell(e??this.pinned,e===null)}pin(e){this.pinned=e;const[t,n]=e?bn(e):[0,0];Mi({at:e?`${t.toFixed(2)},${n.toFixed(2)}`:""}),this.tell(e,!0)}watch(e){return this.watchers.add(e),e(this.pinned,!0),()=>this.watchers.delete(e)}tell(e,t){for(const n of[...this.watchers])n(e,t)}}const et=new su,ru=[-10,-1,-.1,.1,1,10];class au{constructor(e){this.read=e,this.draw();const t=this.gated(_e("take one sweep",()=>this.sweep(),"main","the source is on for one sweep; nothing moves"),!1);this.sweepPanel.tools.append(g("label",{class:"row small"},this.again,"again and again"),t),this.sweepPanel.empty("Level over frequency and impulse response, with the plan's settings. Nothing moves; the source is off afterwards."),this.stopWatching=pt.watch({status:()=>this.enable()})}panel=new Qe("Axes by hand","card step");sweepPanel=new Qe("One sweep","card step");level=new pn("level of one sweep");impulse=new pn("impulse response of one sweep");last=null;buttons=[];clear=g("input",{attrs:{type:"checkbox"},on:{change:()=>this.enable()}});stopWatching;again=g("input",{attrs:{type:"checkbox"}});timer=0;before=[];leave(){this.stopWatching(),this.again.checked=!1,window.clearTimeout(this.timer),this.panel.leave(),this.sweepPanel.leave()}gated(e,t=!0){return e.dataset.clear=String(t),this.buttons.push(e),e}enable(){const e=Ne.me?.mine===!0&&!Ro(pt.status);for(const t of this.buttons)t.disabled=!e||t.dataset.clear==="true"&&!this.clear.checked}run(e,t){this.panel.ask({key:"hand",words:e},t,n=>(this.last=n,this.panel.subject.textContent=`${n.text}, ${new Date(1e3*n.at).toLocaleTimeString()}`,this.content()),{waiting:`${e}. STOP brakes.`}).then(n=>{n||this.panel.body.append(...this.content()),this.enable()})}draw(){this.panel.show({key:"",words:""},...this.content()),this.enable()}content(){const e=Ne.campaign;this.buttons=this.buttons.filter(u=>u.isConnected&&this.sweepPanel.element.contains(u));const t=_e("where are the axes?",()=>this.run("the axes are asked",()=>ze("/api/where",{campaign:e})),"","nothing moves");t.disabled=!vt("operate");const n=(this.last?.axes??[]).map(u=>{const d=g("input",{attrs:{type:"number",step:"any",value:u.readout_deg.toFixed(2),min:u.min_deg,max:u.max_deg,"aria-label":`${u.axis}: go to this readout, degrees`}}),p=_=>this.run(`${u.axis} to ${_.toFixed(2)}°`,()=>ze("/api/move",{campaign:e,to_deg:{[u.axis]:_},clear:!0}));return[g("strong",{},u.axis),g("span",{class:"mono"},`${u.readout_deg.toFixed(3)}°`),g("span",{class:"jogs"},...ru.map(_=>this.gated(_e(`${_>0?"+":"−"}${Math.abs(_)}`,()=>p(u.readout_deg+_),"tiny",`${u.axis}: by ${_} degrees`)))),g("span",{class:"row"},d,this.gated(_e("go",()=>p(Number(d.value)),"tiny"))),g("span",{class:"mono small"},`${u.min_deg}° to ${u.max_deg}°, home ${u.home_deg}°`)]}),s=et.at&&bn(et.at),r=g("input",{attrs:{type:"number",min:0,max:180,step:"any",value:s?s[0].toFixed(1):"0","aria-label":"theta to go to"}}),a=g("input",{attrs:{type:"number",step:"any",value:s?s[1].toFixed(1):"0","aria-label":"phi to go to"}}),o=this.gated(_e("point there",()=>this.run("to a direction",()=>ze("/api/point",{campaign:e,theta_deg:Number(r.value),phi_deg:Number(a.value),clear:!0})))),c=this.gated(_e("all to home",()=>this.run("to home",()=>ze("/api/rest",{campaign:e,seek:!1,clear:!0})))),l=this.gated(_e("seek reference marks",()=>this.run("reference marks are sought",()=>ze("/api/rest",{campaign:e,seek:!0,clear:!0})))),h=_e("make this home",()=>this.keep(),"","writes home_deg into chamber.toml");return h.disabled=!vt("configure")||!this.last?.axes.length,[g("div",{class:"row"},t,g("label",{class:"row small"},this.clear,"the axes are free to move")),n.length?g("div",{class:"scroll-x"},xt(["axis","readout","by / deg","to / deg","limits"],n,"axes")):g("p",{class:"quiet small"},"Moves need the motion lease and everyone clear."),g("div",{class:"row"},g("label",{class:"row small"},"theta",r),g("label",{class:"row small"},"phi",a),o,c,l,h)]}keep(){const e=this.last?.axes??[];Xi("Make these readouts the home of the axes?",t=>[g("p",{},e.map(n=>`${n.axis} ${n.readout_deg.toFixed(3)}°`).join(", ")),g("p",{class:"small"},"home_deg of each axis in chamber.toml changes; the file as it was stays beside it."),g("div",{class:"row"},_e("back",t),g("span",{class:"spring"}),_e("make this home",()=>{ze("/api/set-rest",{campaign:Ne.campaign,home_deg:Object.fromEntries(e.map(n=>[n.axis,n.readout_deg]))}).then(()=>{for(const n of e)n.home_deg=n.readout_deg;this.draw(),t()},n=>{t(),this.panel.fault(n)})},"main"))])}sweep(){const e=lt();this.sweepPanel.ask({key:"sweep|",words:""},()=>ze("/api/sweep",{campaign:Ne.campaign}),t=>{this.sweepPanel.subject.textContent=new Date(1e3*t.at).toLocaleTimeString();const n=t.sweep;if(!n)return[g("p",{},"No sweep came.")];const s=n.frequency_hz.map(c=>c/1e9),r=n.level_db[0].map(c=>10**((c??-200)/10));this.read(10*Math.log10(r.reduce((c,l)=>c+l,0)/r.length));const a=n.level_db.map((c,l)=>({name:`port ${l+1}`,values:c,colour:l?e.cross:e.co,points:s.length<30})),o=this.before.map(c=>({name:"the sweep before",values:c,colour:e.quiet,dash:"4 3"}));return this.before=[n.level_db[0]],this.again.checked&&(this.timer=window.setTimeout(()=>Ne.me?.mine&&this.again.checked&&this.sweep(),500)),this.level.draw({x:s,lines:[...a,...o],xName:"frequency / GHz",yName:"S21 / dB",height:220}),n.time_ns.length&&this.impulse.draw({x:n.time_ns,lines:[{name:"port 1",values:n.impulse_db,colour:e.co}],xName:"time / ns",yName:"level / dB",yWhole:[-70,5],height:220,peakOf:0}),[this.level.element,n.time_ns.length?this.impulse.element:g("p",{class:"quiet small"},"An impulse response needs three frequencies or more.")]},{keep:!0}).then(t=>{t||(this.again.checked=!1)})}}const Os=52,ou=64,ks=24,lu=40;class Fn{constructor(e){this.name=e,this.canvas.setAttribute("aria-label",e);const t=Cr({name:()=>Rs(this.name),svg:()=>this.picture(),columns:()=>this.columns()});this.element=g("div",{class:"chart"},this.canvas,g("div",{class:"chart-tools"},this.said,t)),this.canvas.addEventListener("pointermove",n=>{const s=this.under(n);this.say(s),this.moved?.(s)}),this.canvas.addEventListener("pointerleave",()=>this.moved?.(null)),this.canvas.addEventListener("click",n=>{const s=this.under(n);s&&this.clicked?.(s)}),this.canvas.addEventListener("keydown",n=>this.key(n)),Oc(this.canvas,()=>{this.data&&this.room()!==this.width&&this.paint()})}canvas=g("canvas",{class:"map",attrs:{role:"img",tabindex:0}});said=g("div",{class:"small quiet mono said"}," ");element;moved=null;clicked=null;data=null;image=document.createElement("canvas");box=[0,0,1,1];width=0;mark=null;room(){return Math.round(this.canvas.clientWidth/_n())||480}draw(e,t=this.name){this.name=t,this.canvas.setAttribute("aria-label",t),this.data=e,this.paint()}point(e){this.mark=e,this.data&&this.paint()}paint(){const e=this.data;if(!e)return;const t=e.ramp??Nn,n=_n(),s=this.width=this.room(),r=s-Os-ou,a=e.height??Math.round(e.square?r:Math.min(380,Math.max(140,r*e.rows.length/Math.max(1,e.columns.length)))),o=window.devicePixelRatio||1,c=a+ks+lu;this.canvas.style.height=`${c*n}px`,this.canvas.width=Math.round(s*o*n),this.canvas.height=Math.round(c*o*n);const l=this.canvas.getContext("2d"),h=lt();if(l.setTransform(o*n,0,0,o*n,0,0),l.font="12px system-ui",this.cells(e,t),l.imageSmoothingEnabled=!1,l.drawImage(this.image,Os,ks,r,a),l.strokeStyle=h.edge,l.strokeRect(Os,ks,r,a),this.box=[Os,ks,r,a],this.axes(l,e,t),this.mark){const[u,d]=this.placeOf(this.mark);l.strokeStyle=h.cross,l.lineWidth=2,l.strokeRect(u-5,d-5,10,10),l.lineWidth=1}}cells(e,t){this.image.width=e.columns.length,this.image.height=e.rows.length;const n=this.image.getContext("2d"),s=n.createImageData(e.columns.length,e.rows.length);for(let r=0;r<e.rows.length;r++)for(let a=0;a<e.columns.length;a++){const o=wr(e.values[r*e.columns.length+a],e.low,e.high);if(o<0)continue;const c=4*((e.flip?e.rows.length-1-r:r)*e.columns.length+a);for(let l=0;l<3;l++)s.data[c+l]=t[3*o+l];s.data[c+3]=255}n.putImageData(s,0,0)}axes(e,t,n){const[s,r,a,o]=this.box,c=lt(),l=[t.columns[0],t.columns[t.columns.length-1]],h=[t.rows[0],t.rows[t.rows.length-1]];e.fillStyle=c.quiet,e.textAlign="center";for(const d of ps(l,Math.max(2,Math.floor(a/60))))e.fillText(qn(d,l),this.placeOf({row:h[0],column:d})[0],r+o+15);e.textAlign="right",e.textBaseline="middle";for(const d of ps(h,Math.max(2,Math.floor(o/34))))e.fillText(qn(d,h),s-5,this.placeOf({row:d,column:l[0]})[1]);e.textAlign="center",e.textBaseline="alphabetic",e.fillText(t.columnName,s+a/2,r+o+33),e.save(),e.translate(13,r+o/2),e.rotate(-Math.PI/2),e.fillText(t.rowName,0,0),e.restore();for(let d=0;d<256;d++)e.fillStyle=`rgb(${n[3*d]} ${n[3*d+1]} ${n[3*d+2]})`,e.fillRect(s+a+10,r+o*(1-(d+1)/256),12,o/256+1);e.fillStyle=c.quiet,e.textAlign="left";const u=[t.low,t.high];for(const d of ps(u,Math.max(2,Math.floor(o/40)),!1)){const p=(d-t.low)/(t.high-t.low);e.fillText(qn(d,u),s+a+26,r+o*(1-p)+(p>.97?10:p<.03?0:4))}e.fillText(t.unit,s+a+10,r-9)}placeOf(e){const t=this.data,[n,s,r,a]=this.box,o=(l,h)=>{const u=.5/l.length,d=l[l.length-1]-l[0];return d?u+(h-l[0])/d*(1-2*u):.5},c=o(t.rows,e.row);return[n+o(t.columns,e.column)*r,s+(t.flip?1-c:c)*a]}under(e){const t=this.data;if(!t)return null;const n=this.canvas.getBoundingClientRect(),[s,r,a,o]=this.box,c=((e.clientX-n.left)/_n()-s)/a,l=((e.clientY-n.top)/_n()-r)/o;return c<0||c>=1||l<0||l>=1?null:{row:t.rows[Math.floor((t.flip?1-l:l)*t.rows.length)],column:t.columns[Math.floor(c*t.columns.length)]}}say(e){const t=this.data;if(!t||!e){$(this.said," ");return}const n=t.values[t.rows.indexOf(e.row)*t.columns.length+t.columns.indexOf(e.column)];$(this.said,`${t.rowName.split(" / ")[0]} ${qn(e.row,[0,10])}, ${t.columnName.split(" / ")[0]} ${qn(e.column,[0,10])}: ${n===null||Number.isNaN(n)?"not measured":`${n.toFixed(2)} ${t.unit}`}`)}key(e){const t=this.data,n={ArrowLeft:[0,-1],ArrowRight:[0,1],ArrowUp:[-1,0],ArrowDown:[1,0]}[e.key];if(!t||!n)return;e.preventDefault();const s=this.mark??{row:t.rows[0],column:t.columns[0]},r=(o,c,l)=>o[Math.max(0,Math.min(o.length-1,o.reduce((h,u,d)=>Math.abs(u-c)<Math.abs(o[h]-c)?d:h,0)+l))],a={row:r(t.rows,s.row,(t.flip?-1:1)*n[0]),column:r(t.columns,s.column,n[1])};this.say(a),this.clicked?.(a)}picture(){const e=this.width,t=parseFloat(this.canvas.style.height)/_n()||300;return{text:`<svg xmlns="http://www.w3.org/2000/svg" width="${e}" height="${t}"><rect width="100%" height="100%" fill="${lt().card}"/><image width="${e}" height="${t}" href="${this.canvas.toDataURL("image/png")}"/></svg>`,width:e,height:t}}columns(){const e=this.data;if(!e)return[];const t=e.columns.length;return[{name:e.rowName,values:e.rows.flatMap(n=>new Array(t).fill(n))},{name:e.columnName,values:e.rows.flatMap(()=>e.columns)},{name:`level / ${e.unit}`,values:Array.from(e.values)}]}}const cl="http://www.w3.org/2000/svg";function Zc(i){return{turn_deg:Math.abs(i.theta_zero_deg)>i.theta_zero_expanded_deg?i.theta_zero_deg:0,shift_mm:Math.abs(i.axes_offset_mm)>i.axes_offset_expanded_mm?i.axes_offset_mm:0}}function hl(i){const{turn_deg:e,shift_mm:t}=Zc(i),n=`${i.theta_zero_deg.toFixed(3)}° ± ${i.theta_zero_expanded_deg.toFixed(3)}°`,s=`${i.axes_offset_mm.toFixed(2)} mm ± ${i.axes_offset_expanded_mm.toFixed(2)} mm`;return`zero ${n}${e?"":" (nothing to turn)"}; axes apart ${s}${t?"":" (nothing to shift)"}`}function cu(i,e){const t=e.slice(-2),n=t.length===2?["before","after"]:["as measured"],s=t.length?t.map((d,p)=>({one:d,title:`${n[p]}: run ${d.run}`})):[null],r={turn:Math.max(1e-9,...t.map(d=>Math.abs(d.numbers.theta_zero_deg))),shift:Math.max(1e-9,...t.map(d=>Math.abs(d.numbers.axes_offset_mm)))},a=document.createElementNS(cl,"svg"),o=(d,p,_="")=>{const v=document.createElementNS(cl,d);for(const[m,f]of Object.entries(p))v.setAttribute(m,String(f));_&&(v.textContent=_),a.append(v)},c=640,l=c/s.length,h=t.map(d=>`${d.run}: ${hl(d.numbers)}`).join("; ")||"nothing was measured";for(const[d,p]of Object.entries({viewBox:`0 0 ${c} 250`,role:"img","aria-label":`range from above: ${h}`,"font-size":13,class:"range-picture"}))a.setAttribute(d,String(p));s.forEach((d,p)=>hu(o,i,p*l,l,d,r));const u=t.length?"Blue-green: the roll axis as found, enlarged. Green, dashed: as it should lie.":i?"Nothing was measured: the green line is where the roll axis should lie. A flip test tells how it does.":"This positioner has no roll axis: a flip test needs one. The beam search finds the zeros of both axes.";return g("div",{},a,g("p",{class:"small quiet"},u),...t.map(d=>g("p",{class:"small"},g("strong",{},`${d.run}: `),hl(d.numbers))))}function hu(i,e,t,n,s,r){const a="var(--quiet)",o="var(--ink)",c=t+Math.min(120,.33*n),l=132,h=Math.min(84,.27*n),u=t+n-40;if(i("text",{x:t+12,y:22,fill:o,"font-weight":600},s?.title??"from above, as it should be"),i("line",{x1:c,y1:l,x2:u-8,y2:l,stroke:a,"stroke-dasharray":"5 5"}),i("circle",{cx:c,cy:l,r:h,fill:"none",stroke:a}),i("text",{x:c,y:l+h+18,fill:a,"text-anchor":"middle"},"azimuth axis"),e&&i("line",{x1:c-h,y1:l,x2:c+h,y2:l,stroke:"var(--good)","stroke-width":3,"stroke-dasharray":"9 5"}),i("circle",{cx:c,cy:l,r:5,fill:o}),i("path",{d:`M${u-10} ${l-14} L${u+22} ${l} L${u-10} ${l+14} Z`,fill:o}),i("text",{x:u+4,y:l-22,fill:o,"text-anchor":"middle"},"probe"),!s)return;const d=s.one.numbers,{turn_deg:p,shift_mm:_}=Zc(d),v=14*d.theta_zero_deg/r.turn,m=22*d.axes_offset_mm/r.shift,[f,A]=[_?m:0,p?v:0];i("line",{x1:c-h,y1:l+f+A,x2:c+h,y2:l+f-A,stroke:"var(--co)","stroke-width":6,"stroke-linecap":"round"}),p&&i("path",{d:A>0?`M${c+h+2} ${l-28} q14 24 2 46`:`M${c+h+2} ${l+28} q14 -24 2 -46`,fill:"none",stroke:"var(--cross)","stroke-width":3}),_&&i("line",{x1:c-h/2,y1:l+f,x2:c-h/2,y2:l,stroke:"var(--cross)","stroke-width":3})}const ul=[["above","range from above"],["beam","beam map"],["live","live reading"]],uu=40;class du{panel=new Qe("Range from above","card align-screen");showing="above";rolls=!0;flips=[];beam=null;maps=[new Fn("coarse look of the beam search"),new Fn("fine look of the beam search")];liveMap=new Fn("levels of the beam search");watched=null;readings=[];chart=new pn("level of the last readings");last=null;buttons=ul.map(([e,t])=>_e(t,()=>this.show(e),"tiny"));constructor(){this.panel.tools.append(...this.buttons),this.show("above")}positioner(e){this.rolls=e,this.showing==="above"&&this.show("above")}flip(e,t=!0){this.flips=[...this.flips.filter(n=>n.run!==e.run),e].sort((n,s)=>n.measured_at-s.measured_at),(t||this.showing==="above")&&this.show("above")}found(e){this.beam=e,this.watched=null,this.show("beam")}look(e,t,n){const s=this.watched?.run!==e;this.watched={run:e,grid:t,frame:n},s?this.show("beam"):this.showing==="beam"&&this.draw()}reading(e){this.readings=[...this.readings,{at:Date.now()/1e3,db:e}].slice(-400),this.showing==="live"&&this.draw()}status(e){const t=this.last?.measured!==e.measured||this.last?.run!==e.run;this.last=e,e.running&&t&&typeof e.level_db=="number"?this.reading(e.level_db):this.showing==="live"&&this.draw()}show(e){this.showing=e,ul.forEach(([t,n],s)=>{this.buttons[s].setAttribute("aria-pressed",String(t===e)),t===e&&($(this.panel.element.querySelector("h2"),n[0].toUpperCase()+n.slice(1)),this.panel.element.setAttribute("aria-label",n))}),this.draw()}draw(){if(this.showing==="above"){const e=this.flips.length?`flip test${this.flips.length>1?"s":""} ${this.flips.slice(-2).map(t=>t.run).join(", ")}`:"not measured yet";this.panel.show({key:"above",words:e},cu(this.rolls,this.flips))}else this.showing==="beam"?this.drawBeam():this.drawLive()}drawBeam(){if(this.watched){const{run:s,grid:r,frame:a}=this.watched,o=a.filter(l=>!Number.isNaN(l));this.panel.show({key:s,words:`run ${s}, under way`},this.liveMap.element,g("p",{class:"small quiet"},`${o.length} of ${a.length} directions; empty cells were not looked at yet.`));const c=o.length?Math.ceil(o.reduce((l,h)=>Math.max(l,h),-1/0)/5)*5:0;dl(this.liveMap,r.columns,r.rows,a,c,`levels of ${s}`);return}const e=this.beam;if(!e){this.panel.empty("No beam search was read. A look draws its levels here as they come.");return}this.panel.show({key:e.run,words:`beam search ${e.run}`},...e.maps.map((s,r)=>this.maps[r].element),...e.sentences.map(s=>g("p",{class:"small"},s)));const t=e.maps.flatMap(s=>s.level_db).filter(s=>s!==null),n=Math.ceil(Math.max(-200,...t)/5)*5;e.maps.forEach((s,r)=>{dl(this.maps[r],s.azimuth_deg,s.elevation_deg,s.level_db,n,`${s.stage} look of ${e.run}`),this.maps[r].point(e.beam_deg?{row:e.beam_deg[1],column:e.beam_deg[0]}:null)})}drawLive(){const e=this.last,t=this.readings[this.readings.length-1],n=(e?.axes??[]).map((o,c)=>[o,`${Be(e?.position_deg?.[c],2)}°`]),s=g("div",{class:"row"},g("span",{class:"big"},t?`${Be(t.db,1)} dB`:"-"),g("span",{class:"quiet"},t?`S21, ${new Date(1e3*t.at).toLocaleTimeString()}`:"no reading yet"));if(this.panel.show({key:"live",words:e?.hand?e.hand.text:e?.run?`run ${e.run}: ${e.state}`:""},s,this.readings.length>1&&this.chart.element,n.length>0&&xt(["axis","readout"],n),!t&&g("p",{class:"quiet"},"Readings come with a sweep (A signal is there), a flip test or a beam search.")),this.readings.length<2)return;const r=this.readings.map(o=>o.at-this.readings[0].at),a=this.readings.map(o=>o.db);this.chart.draw({x:r,lines:[{name:"level",values:a,colour:lt().co,points:r.length<60}],xName:"time / s",yName:"S21 / dB",yWhole:_i(a,2),height:220,peakOf:0,digits:1})}}function dl(i,e,t,n,s,r){i.draw({rows:t,columns:e,values:n,rowName:"elevation / deg",columnName:"azimuth / deg",low:s-uu,high:s,unit:"dB",flip:!0,height:180},r)}function fu(i){const e=new Qe("Instruments","card step"),t=new Qe("Level, laser or pointer","card step"),n=new Qe("Flip test","card step"),s=new Qe("Beam search","card step"),r=new Qe("What only a scan shows","card step"),a=new du,o=new au(G=>{a.reading(G),d("sweep",`${G.toFixed(1)} dB`)}),c=g("ol",{class:"checklist"}),l=Ne.campaign,h=new AbortController,u=[{key:"talk",words:"Instruments answer",panel:e,state:""},{key:"hand",words:"Axes move as told",panel:o.panel,state:""},{key:"sweep",words:"A signal is there",panel:o.sweepPanel,state:""},{key:"level",words:"Levelled by other means",panel:t,state:""},{key:"flip",words:"Flip test",panel:n,state:""},{key:"beam",words:"Beam found",panel:s,state:""},{key:"rest",words:"Taken out of the data",panel:r,state:""}],d=(G,se)=>{const H=u.find(ie=>ie.key===G);H.state!==se&&(H.state=se,p())},p=()=>$(c,...u.map(G=>g("li",{class:G.state?"ticked":""},g("button",{attrs:{type:"button"},on:{click:()=>G.panel.element.scrollIntoView({block:"start"})}},G.words,G.state&&g("span",{class:"small quiet"},G.state))))),_=G=>{if(!G.at)return[g("p",{class:"quiet"},"Not asked since the server began. Nothing moves when they are.")];const se=new Date(1e3*G.at).toLocaleString();return e.subject.textContent=`asked ${se}`,d("talk",G.lines.every(H=>H.good)?`ready, ${new Date(1e3*G.at).toLocaleString([],{dateStyle:"short",timeStyle:"short"})}`:""),[xt(["what","state","found"],G.lines.map(H=>[H.what,g("span",{class:H.good?"good":"bad"},H.good?"ready":"not ready"),H.found]))]},v=_e("talk to every instrument",()=>{v.disabled=!0,e.ask({key:"talk",words:""},()=>ze("/api/check",{campaign:l}),_,{waiting:"The instruments are asked; nothing moves."}).finally(()=>v.disabled=!vt("operate"))},"main");v.disabled=!vt("operate"),e.tools.append(v),e.ask({key:"talk",words:""},G=>wn("/api/checked/{campaign}",[l],G),_),t.show({key:"",words:""},g("p",{},"Set the roll axis level, and the probe on its line, with the means you have. The readings go into chamber.toml under [alignment] with their uncertainty; they count as what was known beforehand."),g("p",{class:"small"},"Alignment lasers: class 2 or lower, never towards eyes, off before the run.")),r.show({key:"",words:""},g("p",{},"Whole spheres find the remaining misalignments by themselves: tilt of the roll axis, both offsets, the probe's roll. They are taken out of the data, and listed in the run's findings with what to turn."));const m=[],f=(G,se,H,ie,Ce)=>{const Oe=_e(G,()=>void Po(se(),Le=>ie.fault(Le),H),"main",Ce);return m.push(Oe),Oe},A=(G,se)=>g("input",{attrs:{value:G,pattern:"[A-Za-z0-9_-]{1,70}","aria-label":se}}),T=A("flip","name of the flip test's run"),b=A("beam","name of the beam search"),P=g("div",{}),C=g("div",{}),D=g("p",{class:"quiet small"}),N=g("p",{class:"quiet small"}),w=async()=>{const G=T.value;try{const se=await ze("/api/flip",{campaign:l,run:G});$(P,...se.sentences.map(H=>g("p",{},H))),$(n.faults),$(n.subject,`run ${G}`),a.flip(se),d("flip",`run ${G}`)}catch(se){$(P),n.fault(se)}},M=async()=>{const G=b.value;try{const se=await ze("/api/beam",{campaign:l,run:G}),H=_e("set as home",()=>void L(G),"","azimuth/elevation positioners: the beam's readouts become the axes' zeros in chamber.toml");H.disabled=!vt("configure"),$(C,...se.sentences.map(ie=>g("p",{},ie)),se.beam_deg&&H),$(s.faults),$(s.subject,`run ${G}`),a.found(se),se.beam_deg&&d("beam",`run ${G}`)}catch(se){$(C),s.fault(se)}},S=async()=>{try{const H=((await wn("/api/campaigns",[],h.signal)).find(ie=>ie.id===l)?.runs??[]).filter(ie=>ie.record&&/^flip/.test(ie.name)).slice(0,2);for(const ie of H.reverse())a.flip(await ze("/api/flip",{campaign:l,run:ie.name},h.signal),!1);H.length&&d("flip",`run ${H[H.length-1].name}`)}catch{}},L=async G=>{try{$(N,(await ze("/api/home",{campaign:l,run:G})).join("; "))}catch(se){$(s.faults,g("p",{},Yt(se)))}},O=f("measure both sides",()=>T.value,"flip",n,"needs the motion lease");n.show({key:"",words:""},g("p",{},"One cut from both sides: theta, and -theta with the roll at 180°. A device cannot tell them apart. What differs is the range: a zero that is off, or axes that miss each other. It takes a few minutes."),g("div",{class:"row"},g("label",{class:"row"},"run",T),O,_e("read a finished one",()=>void w())),D,P),s.show({key:"",words:""},g("p",{},"Steps of half a beam over the front, then a fine look where it was strongest. So you know where the beam is before hours are spent."),g("div",{class:"row"},g("label",{class:"row"},"run",b),f("look coarsely",()=>b.value,"beam-coarse",s,"needs the motion lease"),f("look finely",()=>b.value,"beam-fine",s,"needs the motion lease, and a coarse look"),_e("read a finished one",()=>void M())),N,C);let V=!1,z=!0;const Y=G=>G.running&&G.campaign===l&&(G.kind??"").startsWith("beam"),ee=pt.watch({frame:G=>{pt.grid&&Y(pt.status)&&a.look(pt.status.run??"",pt.grid,G)},status:G=>{const se=V&&!G.running&&G.state==="done"&&G.campaign===l,H=`${G.state}: ${G.measured??0} of ${G.total??0} points of ${G.run??""}`;G.kind==="flip"&&G.running&&$(D,H),G.kind?.startsWith("beam")&&G.running&&$(N,`${G.kind==="beam-coarse"?"coarse":"fine"} look, ${H}`),se&&G.kind==="flip"&&w(),se&&G.kind==="beam-coarse"&&($(N,"The coarse look is done; the fine one goes where it was strongest."),M()),se&&G.kind==="beam-fine"&&M(),V=G.running;for(const ie of m)ie.disabled=Ro(G)||Ne.me?.mine!==!0||ie===O&&!z;a.status(G),G.axes&&G.angles_deg?.length&&i.chamber.turnTo(G.angles_deg,G.axes)}});return ze("/api/motion",{campaign:l},h.signal).then(G=>{i.chamber.build(G),G.joints&&$(i.stage.caption,`The mount's coordinates, drawn as a roll over azimuth; its ${G.joints} joints are not drawn.`),z=G.geometry==="roll-over-azimuth",a.positioner(z),!z&&(O.disabled=!0,$(D,"This positioner has no roll axis: the beam search finds the zeros of both axes instead."))},G=>e.fault(G)),S(),pt.status.angles_deg?.length?$(i.stage.caption,"The chamber as chamber.toml declares it, axes as last told."):(i.chamber.turn(0,0,0),$(i.stage.caption,"The chamber as chamber.toml declares it, all axes drawn at zero.")),p(),{title:"Align",element:g("div",{class:"page align-page"},g("nav",{class:"card steps",attrs:{"aria-label":"steps"}},c),g("div",{class:"align-steps"},a.panel.element,...u.map(G=>G.panel.element))),leave:()=>{ee(),h.abort(),o.leave(),a.panel.leave();for(const G of[e,n,s])G.leave()}}}const Wr="http://www.w3.org/2000/svg";function pu(i,e,t,n,s){const c=lt(),l=document.createElementNS(Wr,"svg"),h=(p,_,v="")=>{const m=document.createElementNS(Wr,p);for(const[f,A]of Object.entries(_))m.setAttribute(f,String(A));v&&(m.textContent=v),l.append(m)};for(const[p,_]of Object.entries({viewBox:"0 0 460 460",width:460,height:460,role:"img","aria-label":i,"font-family":"system-ui, sans-serif","font-size":12,class:"polar"}))l.setAttribute(p,String(_));for(let p=0;p<s;p+=10)h("circle",{cx:230,cy:230,r:200*(1-p/s),fill:"none",stroke:c.grid}),h("text",{x:234,y:230-200*(1-p/s)+13,fill:c.quiet},(n-p).toFixed(0));for(let p=0;p<360;p+=30){const _=Math.sin(p*Math.PI/180),v=-Math.cos(p*Math.PI/180);h("line",{x1:230,y1:230,x2:230+200*_,y2:230+200*v,stroke:c.grid}),h("text",{x:230+216*_,y:230+214*v+4,fill:c.quiet,"text-anchor":"middle"},`${p>180?p-360:p}°`)}for(const p of t){let _="",v=!1;e.forEach((m,f)=>{const A=p.values[f];if(A===null){v=!1;return}const T=200*Math.max(0,1-(n-A)/s);_+=`${v?"L":"M"}${(230+T*Math.sin(m*Math.PI/180)).toFixed(1)} ${(230-T*Math.cos(m*Math.PI/180)).toFixed(1)}`,v=!0}),h("path",{d:_,fill:"none",stroke:p.colour,"stroke-width":p.width??1.8,...p.dash?{"stroke-dasharray":p.dash}:{}})}t.forEach((p,_)=>h("text",{x:6,y:16+15*_,fill:p.colour},p.name));const u=Cr({name:()=>Rs(i),svg:()=>{const p=l.cloneNode(!0);return p.setAttribute("xmlns",Wr),{text:new XMLSerializer().serializeToString(p),width:460,height:460}},columns:()=>[{name:"angle / deg",values:e},...t.map(p=>({name:p.name,values:p.values}))]}),d=g("div",{class:"chart"});return $(d,l,g("div",{class:"chart-tools no-print"},u)),d}class mu{constructor(e){this.explorer=e,this.chart.moved=t=>et.hover(t===null||!this.cut?null:this.directionAt(t)),this.chart.clicked=t=>{this.marks=[...this.marks.slice(-1),t],this.cut&&et.pin(this.directionAt(t)),this.show()},this.stopCursor=et.watch(t=>this.follow(t)),this.tools()}panel=new Qe("Cut through the peak","card tab-card");chart=new pn("cut");apart=new pn("difference");element=g("div",{},this.panel.element);round=Dt("polar")==="1";marks=[];stopCursor;cut=null;leave(){this.stopCursor(),this.panel.leave()}directionAt(e){const{peak:t,tangent:n}=this.cut;return Yc(Math.cos(e*dt),t,Math.sin(e*dt),n)}follow(e){if(!this.cut||!e){this.chart.point(null);return}const t=gi(e,this.cut.peak),n=gi(e,this.cut.tangent),r=t*t+n*n>Math.cos(2*dt)**2?Math.atan2(n,t)/dt:null;this.chart.point(r),this.apart.point(r)}tools(){const{looked:e}=this.explorer,t=Mn("plane, from E towards H",0,175,5,e.plane,o=>{e.plane=o,this.explorer.changed()},"°"),n=o=>{e.plane=o;const c=t.querySelector("input");c.value=String(o),c.dispatchEvent(new Event("input"))},s=_e(this.round?"rectangular":"polar",()=>{this.round=!this.round,Mi({polar:this.round?"1":""}),$(s,this.round?"rectangular":"polar"),this.show()}),a=this.explorer.runs().filter(o=>o!==e.run).map(o=>{const c=g("input",{attrs:{type:"checkbox",checked:e.beside.includes(o)},on:{change:()=>{e.beside=c.checked?[...e.beside,o].slice(-4):e.beside.filter(l=>l!==o),this.explorer.changed()}}});return g("label",{class:"row small"},c,o)});this.element.prepend(g("div",{class:"row no-print"},t,_e("E",()=>n(0)),_e("H",()=>n(90)),s),a.length?g("div",{class:"row no-print",attrs:{role:"group","aria-label":"beside"}},g("span",{class:"small quiet"},"beside:"),...a):"")}show(){const{looked:e}=this.explorer,t={...e.body(),frequency:e.frequency,plane_deg:e.plane,basis:e.basis},n=e.of(!0),s=[...e.beside],r=async a=>{const o=await ze("/api/cut",t,a),c=e.known?.specification&&!e.tried?await ze("/api/masks",t,a):null,l=await Promise.all(s.map(async h=>{try{const u=await ze("/api/cut",{...t,run:h,off:[],gate_ns:null},a);if(!Do(u.of,{...n,run:h}))return{run:h,cut:null,difference:null,why:`was not measured at ${(n.frequency_hz/1e9).toFixed(3)} GHz`};const d=e.tried?null:await ze("/api/difference",{...t,other:h},a);return{run:h,cut:u,difference:d,why:""}}catch(u){if(a.aborted)throw u;return{run:h,cut:null,difference:null,why:Yt(u)}}}));return{cut:o,masks:c,beside:l}};this.panel.ask(e.subject(!0,`${e.plane} ${e.basis} ${s.join()} ${this.round}`),r,a=>this.draw(a),{keep:!0,of:a=>a.cut.of,expect:n}).then(a=>{a&&this.follow(et.at)})}draw({cut:e,masks:t,beside:n}){const{looked:s,pattern:r}=this.explorer,a=lt();this.cut=e;const o=[{name:e.names[0],values:e.first,colour:a.co},{name:e.names[1],values:e.second,colour:a.cross,dash:"6 3"}],c=[a.other,a.good,a.band,a.bad];n.forEach((_,v)=>_.cut&&o.push({name:`${e.names[0]} of ${_.run}`,values:_.cut.first,colour:c[v],width:1.3}));for(const _ of t?.masks??[])o.push({name:`mask: ${_.name}`,values:_.level,colour:a.ink,width:1.2});const l=Math.ceil(Math.max(e.peak_dbi,...[...e.total,...n.flatMap(_=>_.cut?.total??[])].map(_=>_??-200))/5)*5,h=e.peak_dbi>l-2.5?l+5:l,u=`cut of ${s.run} at ${s.plane}°`,d={x:e.angle_deg,lines:o,xName:`angle from the peak, plane ${s.plane}° / deg`,yName:`level / ${s.unit}`,yWhole:[l-s.span-5,h],xWhole:[-180,180],peakOf:0,height:340,marks:this.marks.map((_,v)=>({at:_,colour:a.focus,text:`${v+1}`}))};return this.round||this.chart.draw(d,u),[this.round?pu(u,e.angle_deg,o,l,s.span):this.chart.element,this.readings(o,e),...this.besides(n,e),xt([`peak / ${s.unit}`,"at theta, phi","half-power beamwidth","first side lobe","first null"],[[Be(e.peak_dbi,2),`${Be(e.peak_theta_deg,1)}°, ${Be(e.peak_phi_deg,1)}°`,e.beamwidth_deg===null?"-":`${Be(e.beamwidth_deg,2)}° (${Be(e.edges_deg[0],1)}° to ${Be(e.edges_deg[1],1)}°)`,e.side_lobe_db===null?"-":`${Be(e.side_lobe_db,1)} dB`,e.null_db===null?"-":`${Be(e.null_db,1)} dB`]],"figures"),e.why!==""&&g("p",{class:"small warn-text"},`Side lobe ${e.why}. The cut goes through one of the maxima.`),g("p",{class:"small quiet"},"Drag to enlarge (along one axis, or a box), Shift and drag to move, double-click for all of it; a click sets the cursor and a mark.")]}besides(e,t){if(!e.length)return[];const n=lt(),s=[n.other,n.good,n.band,n.bad],r=e.map(o=>g("p",{class:"small"},g("strong",{},o.run),o.why?`: ${o.why}`:o.difference?`: ${Be(o.difference.difference_db,1)} dB re peak is left when turned by ${o.difference.rotation_deg.map(c=>Be(c,2)).join(", ")}° about x, y, z, shifted by ${o.difference.shift_mm.map(c=>Be(c,2)).join(", ")} mm and raised by ${Be(o.difference.level_db,2)} dB`:": beside a trial no difference is worked out")),a=e.flatMap((o,c)=>o.difference?[{name:`difference to ${o.run}`,values:o.difference.total,colour:s[c]}]:[]);return a.length?(this.apart.draw({x:t.angle_deg,lines:a,xName:"angle from the peak / deg",yName:`difference / ${this.explorer.looked.unit}`,xWhole:[-180,180],yWhole:_i(a.flatMap(o=>o.values.map(c=>c===null?null:Math.max(c,-90))),10),height:200,digits:1},`difference of ${this.explorer.looked.run}`),[g("h3",{},"Difference between the fields"),this.apart.element,...r]):r}readings(e,t){if(!this.marks.length)return null;const n=this.marks.map((s,r)=>{const a=Math.max(0,Math.min(t.angle_deg.length-1,Math.round((s+180)/.5))),o=e[0].values[a],c=e[0].values[Math.round((this.marks[0]+180)/.5)],l=r&&o!==null&&c!==null?`${Be(s-this.marks[0],1)}°, ${Be(o-c,2)} dB`:"";return[`${r+1}`,`${Be(s,1)}°`,...e.map(h=>Be(h.values[a],2)),l]});return g("div",{},xt(["mark","angle",...e.map(s=>s.name),"from mark 1"],n),_e("no marks",()=>{this.marks=[],this.show()},"tiny"))}}const Jc=[["ludwig-3","Ludwig 3"],["theta-phi","theta and phi"],["ludwig-2-az-over-el","Ludwig 2, pole y"],["ludwig-2-el-over-az","Ludwig 2, pole x"],["circular","circular"]],Qc=[["theta-phi","theta, phi"],["az-el","azimuth, elevation"],["alpha-epsilon","alpha, epsilon"],["u-v","direction cosines u, v"]];function $r(i,e,t){return e.find(([n])=>n===i)?.[0]??t}function yn(i){return`${(i/1e9).toFixed(3)} GHz`}class fl{run=Dt("run");state=Dt("state")||null;off=Dt("off")?Dt("off").split(" "):[];gate=gu(Dt("gate"));frequency=-1;plane=Gr("plane")??0;basis=$r(Dt("basis"),Jc,"ludwig-3");basisChosen=Dt("basis")!=="";coordinates=$r(Dt("coords"),Qc,"theta-phi");component=$r(Dt("shown"),[["total",""],["first",""],["second",""]],"total");beside=Dt("beside")?Dt("beside").split(" "):[];tab=Dt("tab")||"cuts";span=Gr("span")??50;known=null;get tried(){return this.off.length>0||this.gate!==null}get hz(){return this.known?.frequency_hz[this.frequency]??Number.NaN}get unit(){return this.known?.unit??"dB"}open(e){this.known=e,e.states.length>1&&(this.state??=e.states[0]),this.basisChosen||(this.basis=e.basis);const t=e.frequency_hz,n=Gr("f");n!==null?this.frequency=t.reduce((s,r,a)=>Math.abs(r-1e9*n)<Math.abs(t[s]-1e9*n)?a:s,0):(this.frequency<0||this.frequency>=t.length)&&(this.frequency=e.shown),this.keep()}keep(e=!1){const t=(n,s)=>n===s?"":String(n);Mi({run:this.run,state:this.state??"",tab:this.tab==="cuts"?"":this.tab,f:this.known?String(this.hz/1e9):"",plane:t(this.plane,0),basis:this.basisChosen?this.basis:"",coords:this.coordinates==="theta-phi"?"":this.coordinates,shown:this.component==="total"?"":this.component,beside:this.beside.join(" "),off:this.off.join(" "),gate:this.gate?this.gate.join(" "):"",span:t(this.span,50)},e)}body(){return{campaign:Ne.campaign,run:this.run,state:this.state,off:this.off,gate_ns:this.gate}}one(){return{campaign:Ne.campaign,run:this.run,state:this.state}}of(e){return{run:this.run,state:this.state,frequency_hz:e?this.hz:null}}subject(e,t=""){const n=this.state?`, state ${this.state}`:"",s=this.tried?", a trial":"";return{key:`${this.run}/${this.state??""}|${e?this.frequency:""}/${this.off.join()}/${this.gate?.join()??""}/${t}`,words:`run ${this.run}${n}${e?`, ${yn(this.hz)}`:""}${s}`}}}function gu(i){const[e,t]=i.split(" ").map(Number);return i&&Number.isFinite(e)&&t>0?[e,t]:null}async function _u(i,e,t,n){let s;try{s=await ze("/api/as-read",{campaign:Ne.campaign,run:e})}catch{return}if(!n()||s.of.run!==e)return;const{sphere:r,stage:a}=i,o=s.directions,c=Math.ceil(s.level_db.reduce((d,p)=>Math.max(d,p),-300)/5)*5,l={low:c-50,high:c,unit:"dB"},h=s.state?`, state ${s.state}`:"",u=vs(o).length;r.shape({rows:1,columns:o.length/3,closed:!1,directions:o}),r.dots(s.level_db,l),r.scaleBar(l,"S21"),$(a.caption,`Run ${e}${h}, ${yn(s.of.frequency_hz??0)}: ${u} directions as they were read, uncorrected.`),a.hovered=d=>{et.hover(d),$(a.readout,d?r.told(d,4,p=>`${s.level_db[p].toFixed(2)} dB`):"")},$(t,g("p",{class:"small"},`${s.measured} of ${s.total} points were read${s.measured<s.total?"; Scan goes on with the rest under this name":""}. `,"The sphere shows their levels as read (S21), both polarizations together, uncorrected: no figure follows from them."))}const La=new Set;let ms=[],gs=0,eh="",qr=null;const Yi=i=>i.state!=="waiting"&&i.state!=="at work";function vu(i){return La.add(i),i(ms),()=>La.delete(i)}async function ys(){ms=await wn("/api/jobs");const i=ms.filter(Yi);if(qr)for(const e of i)e.mine&&!qr.has(e.id)&&yu(e);qr=new Set(i.map(e=>e.id));for(const e of[...La])e(ms)}async function ni(i,e,t=()=>{}){const{job:n}=await ze(i,e);ys().catch(()=>{});for(let s=0;;){await new Promise(a=>window.setTimeout(a,350));let r;try{r=await wn("/api/job/{job}",[n]),s=0}catch(a){if(a instanceof _s||++s>60)throw a;continue}if(t(r.state),!!Yi(r.state)){if(ys().catch(()=>{}),r.state.state==="done")return r.result;throw new _s(422,r.state.faults.length?r.state.faults:[`${r.state.words}: ${r.state.state}`])}}}function xu(){return"Notification"in window&&Notification.permission==="granted"}const pr=g("span",{class:"chip said-job",attrs:{role:"status",hidden:!0}});let pl=0;function yu(i){const e=`${i.words}: ${i.state}`;$(pr,e),pr.hidden=!1,window.clearTimeout(pl),pl=window.setTimeout(()=>pr.hidden=!0,15e3),document.hidden&&(gs||(eh=document.title),gs++,document.title=`(${gs}) ${e}`,xu()&&new Notification("Colure",{body:e}))}document.addEventListener("visibilitychange",()=>{!document.hidden&&gs&&(gs=0,document.title=eh)});function kn(i){const e=_e("give up",()=>void ze("/api/cancel",{job:i.id}).then(ys,s=>$(t,Yt(s))),"tiny"),t=g("span",{}),n=g("i",{});return i.state==="waiting"?$(t,`${i.words}: waits, place ${i.place} in the line`):i.state==="at work"?($(t,`${i.words}: for ${Qn(i.for_s)}${i.usual_s?`, the last one took ${Qn(i.usual_s)}`:""}`),i.usual_s?n.style.width=`${Math.min(95,100*i.for_s/i.usual_s)}%`:n.className="unknown"):$(t,`${i.words}: ${i.state}${i.faults.length?`: ${i.faults.join("; ")}`:""}`),g("div",{class:"job"},g("div",{class:"row"},t,g("span",{class:"spring"}),!Yi(i)&&e),!Yi(i)&&g("div",{class:"meter"},n))}function Mu(){const i=g("div",{class:"job-list",attrs:{"aria-live":"polite"}}),e=g("summary",{},"work"),t=g("details",{class:"jobs"},e,i),n=g("p",{class:"small"}),s=()=>{!("Notification"in window)||Notification.permission!=="default"||$(n,_e("tell me when work ends",()=>void Notification.requestPermission().then(()=>$(n)),"tiny"))};vu(a=>{const o=a.filter(c=>!Yi(c));t.hidden=a.length===0,$(e,o.length?`work: ${o.length}`:"work"),$(i,n,...a.slice(0,8).map(kn)),s()}),window.setInterval(()=>{(ms.some(a=>!Yi(a))||t.open)&&ys().catch(()=>{})},1500);let r=-1;return pt.watch({status:a=>{a.jobs===void 0||a.jobs===r||(r=a.jobs,ys().catch(()=>{}))}}),[pr,t]}function Pr(i){if(i.lower===null||i.upper===null)return"";const e=Math.min(4,Math.max(1,/\.(\d+)/.exec(i.text)?.[1].length??1));return`${i.lower.toFixed(e)} to ${i.upper.toFixed(e)}`}function Lo(i){return i.value===null?g("span",{class:"quiet"},i.text):g("span",{class:"num"},`${i.text} ${i.unit}`.trim())}class wu{constructor(e){this.explorer=e}panel=new Qe("Figures","card figures-panel");element=this.panel.element;plain=new Map;clear(e=""){this.panel.empty(e)}show(){const{looked:e}=this.explorer,t=e.known;if(!t)return;const n=`${e.run}/${e.state??""}`;e.tried||this.plain.set(n,t.figures);const s=this.plain.get(n),r=t.figures.filter(u=>Math.abs(u.frequency_hz-e.hz)<1),a=r.some(u=>u.lower!==null),o=u=>{const d=s?.find(p=>p.name===u.name&&Math.abs(p.frequency_hz-u.frequency_hz)<1)?.value;return d==null||u.value===null?"":`${u.value>=d?"+":""}${Be(u.value-d,3)}`},c=Io(r).map(u=>[g("span",{attrs:{title:u.definition}},u.label),Lo(u),e.tried?o(u):Pr(u)]),l=Cr({name:()=>Rs("figures",e.run,e.state??""),svg:()=>({text:bu(r),width:560,height:30+18*r.length}),columns:()=>[{name:"figure",values:t.figures.map(u=>u.label)},{name:"frequency / Hz",values:t.figures.map(u=>u.frequency_hz)},{name:"value",values:t.figures.map(u=>u.value)},{name:"lower",values:t.figures.map(u=>u.lower)},{name:"upper",values:t.figures.map(u=>u.upper)},{name:"unit",values:t.figures.map(u=>u.unit)}]}),h=e.tried?"change by the trial":"95 % interval";this.panel.show(e.subject(!0),g("div",{class:"scroll",attrs:{tabindex:0,role:"region","aria-label":"table of figures"}},xt(["figure","value",h],c,"figures")),g("div",{class:"chart-tools"},l),!a&&!e.tried?this.evaluate():null)}evaluate(){const e=g("div",{}),{looked:t}=this.explorer,n=t.one(),s=_e("with intervals",()=>{s.disabled=!0,ni("/api/evaluate",n,r=>$(e,kn(r))).then(()=>t.run===n.run&&t.state===n.state?this.explorer.again():void 0,r=>{s.disabled=!1,$(e),this.panel.fault(r)})},"","evaluate every figure with its uncertainty");return s.disabled=!vt("operate"),g("div",{},g("p",{class:"small quiet"},vt("operate")?"Values without intervals so far.":"Values without intervals; a session that may operate works them out."),s,e)}}function Io(i){return[...i.filter(e=>e.value!==null),...i.filter(e=>e.value===null)]}function bu(i){const e=n=>n.replaceAll("&","&amp;").replaceAll("<","&lt;"),t=i.map((n,s)=>`<text x="10" y="${38+18*s}">${e(n.label)}</text><text x="330" y="${38+18*s}">${e(`${n.text} ${n.unit}`)}</text><text x="440" y="${38+18*s}">${e(Pr(n))}</text>`);return`<svg xmlns="http://www.w3.org/2000/svg" width="560" height="${30+18*i.length}" font-family="system-ui" font-size="12"><rect width="100%" height="100%" fill="#fff"/>${t.join("")}</svg>`}const Su=[["frame","match the turn"],["origin","match the place"],["level","match the level"]];class Dr{place=g("div",{class:"came"});faults=g("p",{class:"faults",attrs:{role:"alert"}});asked=0;clear(){this.asked++,$(this.place),$(this.faults)}start(e){this.clear();const t=this.asked;e(n=>t===this.asked&&$(this.place,n)).then(n=>t===this.asked&&$(this.place,...n),n=>{t===this.asked&&($(this.place),$(this.faults,Yt(n)))})}body(e,t,...n){return g("section",{class:"piece",attrs:{"aria-label":e}},g("h3",{},e),g("p",{class:"small quiet"},t),g("div",{class:"row"},...n),this.faults,this.place)}}class Eu{constructor(e){this.explorer=e}panel=new Qe("Several runs","card tab-card");element=this.panel.element;leave(){this.panel.leave()}show(){const{looked:e}=this.explorer,t={...e.subject(!1),words:`run ${e.run}${e.state?`, ${e.state}`:""}`};this.panel.ask(t,n=>wn("/api/campaigns",[],n),n=>[th(this.explorer,n),Ru(this.explorer,n),e.known&&e.known.states.length>1?Pu(this.explorer):null,Lu(this.explorer,n)])}}function Tu(i,e){return(i.find(t=>t.id===e)?.runs??[]).filter(t=>t.record).map(t=>t.name)}function Uo(i,e){const t=_e(i,e,"main");return t.disabled=!vt("operate"),t.disabled&&(t.title="a session that may operate starts this"),t}function th({looked:i},e,t=!0){const n=new Dr,s=Tu(e,Ne.campaign).filter(l=>l!==i.run);if(!s.length)return n.body("Compare","There is no second run in this campaign to compare with.");let r=i.beside[0]&&s.includes(i.beside[0])?i.beside[0]:s[0];const a=new Set,o=Su.map(([l,h])=>{const u=g("input",{attrs:{type:"checkbox"},on:{change:()=>{u.checked?a.add(l):a.delete(l),n.clear()}}});return g("label",{class:"row"},u,h)}),c=i.one();return n.body("Compare","Every figure of both runs. E_n is the change over both uncertainties together; the runs agree where it is 1 or less.",tn("other run",s.map(l=>[l,l]),r,l=>{r=l,n.clear()}),...t?o:[],Uo("compare",()=>n.start(async l=>{const h={...c,other:r,matched:[...a]};return Au(await ni("/api/compare",h,u=>l(kn(u))),c.run,r)})))}function Au(i,e,t){const n=i.middle_hz,s=i.rows.filter(c=>n===null||Math.abs(c.frequency_hz-n)<1),r=i.rows.filter(c=>!c.agrees).length,a=(c,l)=>c===null?"-":`${Be(c,2)}${l===null?"":` ± ${Be(l,2)}`}`,o=i.matched.length?`Matched: turned by ${i.rotation_deg.map(c=>c.toFixed(3)).join(", ")}° about x, y, z, shifted by ${i.shift_mm.map(c=>c.toFixed(3)).join(", ")} mm, ${Be(i.level_db,3)} dB.`:"";return[g("p",{class:`verdict ${i.agrees?"good":"bad"}`},i.agrees?"All figures agree.":`${r} of ${i.rows.length} figures do not agree.`),g("p",{class:"small"},i.difference_db===null?"Figure by figure; nothing is matched.":`The fields differ by ${Be(i.difference_db,1)} dB rms re peak at ${No(n)}. ${o}`),Fo("figures of both runs",xt(["figure",e,t,"change","agrees"],s.map(c=>[c.label,`${a(c.value,c.expanded)} ${c.unit}`,`${a(c.other,c.other_expanded)} ${c.unit}`,c.change===null?c.reason||"-":a(c.change,c.change_expanded),g("strong",{class:c.agrees?"good":"bad"},c.agrees?"yes":"no")]))),Oo(`compared ${e} ${t}`,()=>[{name:"figure",values:i.rows.map(c=>c.label)},{name:"frequency / Hz",values:i.rows.map(c=>c.frequency_hz)},{name:e,values:i.rows.map(c=>c.value)},{name:t,values:i.rows.map(c=>c.other)},{name:"change",values:i.rows.map(c=>c.change)},{name:"its expanded uncertainty",values:i.rows.map(c=>c.change_expanded)},{name:"unit",values:i.rows.map(c=>c.unit)}])]}function Ru({looked:i},e){const t=new Dr,n=(e.find(h=>h.id===Ne.campaign)?.runs??[]).filter(h=>h.record&&h.kind==="sphere").sort((h,u)=>(h.measured_at??0)-(u.measured_at??0)),s=n.filter(h=>!h.figures).map(h=>h.name),r=n.filter(h=>h.figures).map(h=>h.name),a=s.length?` Left out, because without intervals: ${s.join(", ")}.`:"";if(r.length<2)return t.body("Series",`A series needs two runs whose figures have intervals; there ${r.length===1?"is one":"are none"}.${a}`);const o=new Set(r);let c=r.includes(i.run)?i.run:r[0];const l=r.map(h=>{const u=g("input",{attrs:{type:"checkbox",checked:!0},on:{change:()=>{u.checked?o.add(h):o.delete(h),t.clear()}}});return g("label",{class:"row"},u,h)});return t.body("Series",`Spread and trend over the devices in the order they were measured, each against a golden unit.${a}`,tn("golden unit",r.map(h=>[h,h]),c,h=>{c=h,t.clear()}),g("div",{class:"row",attrs:{role:"group","aria-label":"runs of the series"}},...l),_e("show the series",()=>t.start(async()=>{const h=r.filter(u=>o.has(u)||u===c);return Cu(await ze("/api/series",{campaign:Ne.campaign,runs:h,golden:c,state:i.state}))}),"main"))}function Cu(i){const e=s=>Math.max(...s.map(r=>Math.abs(r??0))),t=i.rows.map(s=>[s.label,`${Be(s.mean,2)} ${s.unit}`,Be(s.spread,3),s.trend===null?"-":`${Be(s.trend,3)} ± ${Be(s.trend_expanded,3)}`,...s.e_n.map((r,a)=>i.runs[a]===i.golden?g("span",{class:"quiet"},Be(s.values[a],2)):g("span",{class:r!==null&&Math.abs(r)>1?"bad":""},`${Be(s.values[a],2)} (${Be(r,2)})`))]),n=i.rows.filter(s=>e(s.e_n)>1).length;return[g("p",{class:`verdict ${n?"bad":"good"}`},n?`${n} of ${i.rows.length} figures differ from ${i.golden} by more than both uncertainties.`:`No figure differs from ${i.golden} by more than both uncertainties.`),g("p",{class:"small quiet"},`At ${No(i.frequency_hz)}; in brackets E_n against ${i.golden}.`),Fo("series",xt(["figure","mean","spread (1 s)","trend a device",...i.runs],t)),Oo("series",()=>[{name:"figure",values:i.rows.map(s=>s.label)},...i.runs.map((s,r)=>({name:s,values:i.rows.map(a=>a.values[r])})),{name:"unit",values:i.rows.map(s=>s.unit)}])]}function Pu({looked:i}){const e=new Dr,t=i.one();return e.body("Coverage","Levels that a share of all solid angle does not exceed, of every state and of the best of all states.",Uo("read the coverage",()=>e.start(async n=>Du(await ni("/api/coverage",t,s=>n(kn(s)))))))}function Du(i){return[g("p",{class:"small"},`At ${No(i.frequency_hz)}, ${i.unit} ± ${i.expanded_db.toFixed(2)} dB (k = 2).`),Fo("coverage",xt(["state","peak",...i.percent.map(e=>`${e} %`)],i.rows.map(e=>[e.state,Be(e.peak),...e.levels.map(t=>Be(t))]))),Oo("coverage",()=>[{name:"state",values:i.rows.map(e=>e.state)},{name:`peak / ${i.unit}`,values:i.rows.map(e=>e.peak)},...i.percent.map((e,t)=>({name:`${e} % / ${i.unit}`,values:i.rows.map(n=>n.levels[t])}))])]}function Lu({looked:i},e){const t=new Dr,n=i.one(),s=e.flatMap(o=>o.runs.filter(c=>c.kind==="sphere"&&!(o.id===Ne.campaign&&c.name===i.run)).map(c=>[`${o.id} ${c.name}`,e.length>1?`${o.folder}: ${c.name}`:c.name])),r="The same device in another range length or turned with its positioner: what moved, and how strong the room's stray signals are.";if(!s.length)return t.body("Two set-ups",`${r} There is no second run of a sphere.`);let a=s[0][0];return t.body("Two set-ups",r,tn("other set-up",s,a,o=>{a=o,t.clear()}),Uo("compare the set-ups",()=>t.start(async o=>{const[c,l]=a.split(" "),h=await ni("/api/two-set-ups",{...n,other_campaign:c,other:l},u=>o(kn(u)));return[g("ul",{},...h.sentences.map(u=>g("li",{},u)))]})))}function No(i){return i===null?"mid-band":`${(i/1e9).toFixed(3)} GHz`}function Fo(i,e){return g("div",{class:"scroll",attrs:{tabindex:0,role:"region","aria-label":i}},e)}function Oo(i,e){return g("div",{class:"chart-tools no-print"},_e("CSV",()=>fr(`${Rs(i)}.csv`,new Blob([$c(e())],{type:"text/csv"})),"tiny","save the values as CSV"))}class Iu{constructor(e){this.explorer=e}cuts=new Qe("Measured cuts","card tab-card");figures=new Qe("Figures","card figures-panel");beside=new Qe("Beside another run","card");tools=g("div",{class:"controls"});element=g("div",{},this.tools,this.cuts.element,this.figures.element,this.beside.element);frequency=null;charts=new Map;leave(){this.cuts.leave(),this.figures.leave(),this.beside.leave()}show(){const{looked:e}=this.explorer,t={key:`${e.run}/|${this.frequency??""}`,words:`run ${e.run}`},n={...e.one(),frequency:this.frequency};this.cuts.ask(t,s=>ze("/api/cuts",n,s),s=>{const r=`run ${s.of.run}, ${yn(s.of.frequency_hz??0)}`;return this.controls(s),this.table({key:t.key,words:r},s),this.cuts.subject.textContent=r,this.onSphere(s,r),s.cuts.map(a=>this.chart(s,a))},{keep:!0}).then(s=>s&&$(this.cuts.subject,`run ${s.of.run}, ${yn(s.of.frequency_hz??0)}`)),this.frequency===null&&this.beside.ask(t,s=>wn("/api/campaigns",[],s),s=>[th(this.explorer,s,!1)])}controls(e){if(this.tools.childElementCount||e.all_hz.length<2)return;const t=e.all_hz,n=t.findIndex(r=>Math.abs(r-(e.of.frequency_hz??0))<1),s=r=>{this.frequency=r,this.show()};$(this.tools,Mn("frequency",0,t.length-1,1,n,s,"",r=>yn(t[r])))}chart(e,t){const n=lt(),s=this.charts.get(t.name)??new pn(t.label);this.charts.set(t.name,s);const r=[{name:e.components[0],values:t.co,colour:n.co,width:2},{name:e.components[1],values:t.cross,colour:n.cross},{name:"95 % interval, lower end",values:t.lower,colour:n.co,dash:"2 3"},{name:"upper end",values:t.upper,colour:n.co,dash:"2 3"}].filter(c=>c.values.some(l=>l!==null)),a=_i(r.flatMap(c=>c.values),5),o=[a[0],Math.max(...t.co.map(c=>c??-200))>a[1]-2.5?a[1]+5:a[1]];return s.draw({x:t.angle_deg,lines:r,xName:`${t.angle_name} / deg`,yName:`level / ${t.unit}`,peakOf:0,height:300,yWhole:o},`${t.label} of run ${e.of.run}`),g("div",{},g("h3",{},t.label),s.element)}onSphere(e,t){const{sphere:n,stage:s}=this.explorer.view,r=e.cuts.flatMap(u=>u.directions),a=e.cuts.flatMap(u=>u.co),o=e.cuts[0]?.unit??"dBi",c=a.filter(u=>u!==null),l=Math.ceil(Math.max(-200,...c)/5)*5,h={low:l-50,high:l,unit:o};n.shape({rows:1,columns:r.length/3,closed:!1,directions:r}),n.dots(a,h),n.scaleBar(h,"level"),$(s.caption,`${t[0].toUpperCase()}${t.slice(1)}: ${vs(r).length} directions, coloured by level. Nothing was measured elsewhere.`),s.hovered=u=>{et.hover(u);const d=p=>a[p]===null?null:`${a[p].toFixed(2)} ${o}`;$(s.readout,u?n.told(u,3,d):"")}}table(e,t){const s=Io(t.figures.filter(r=>Math.abs(r.frequency_hz-(t.of.frequency_hz??0))<1)).map(r=>[g("span",{attrs:{title:r.definition}},r.label),Lo(r),Pr(r)]);this.figures.show(e,xt(["figure","value","95 % interval"],s,"figures"))}}class Uu{constructor(e,t,n){this.view=e,this.looked=t,this.changed=n,e.stage.hovered=s=>{et.hover(s),this.say(s)}}map=null;stop=null;shape="";asked="";scale(e=this.map){let t=-200;for(const s of e?.total??[])s!==null&&s>t&&(t=s);const n=Math.ceil(t/5)*5;return{low:n-this.looked.span,high:n,unit:this.looked.unit}}clear(){this.stop?.abort(),this.map=null,this.shape=this.asked="",this.view.sphere.clear(),this.view.sphere.scaleBar(null),$(this.view.stage.caption),$(this.view.stage.readout)}leave(){this.stop?.abort(),this.stop=null}show(){const{looked:e}=this,t=`${e.subject(!0,e.basis).key}`;if(t===this.asked&&this.map){this.draw();return}this.asked=t,this.stop?.abort();const n=this.stop=new AbortController,s=e.of(!0);ze("/api/map",{...e.body(),frequency:e.frequency,coordinates:"theta-phi",basis:e.basis},n.signal).then(r=>{this.stop!==n||!Do(r.of,s)||(this.map=r,this.draw())},r=>{this.stop!==n||Pa(r)||(this.clear(),$(this.view.stage.caption,g("span",{class:"bad"},Yt(r))))})}draw(){const e=this.map,{sphere:t,stage:n}=this.view,{looked:s}=this;if(!e)return;const r=`${e.rows.length} ${e.columns.length} ${e.rows[e.rows.length-1]}`;if(r!==this.shape){this.shape=r;const c=[];for(const h of e.rows)for(const u of e.columns)c.push(...Wt(h,u));const l=e.columns.length>1?e.columns[1]-e.columns[0]:0;t.shape({rows:e.rows.length,columns:e.columns.length,closed:Math.abs(e.columns[e.columns.length-1]-e.columns[0]+l-360)<1e-6,directions:c})}const a=this.scale();t.surface(e[s.component],a,`${s.run} ${s.state} ${r} ${s.component}`);const o=s.component==="total"?"total":e.names[s.component==="first"?0:1];t.scaleBar(a,o),$(n.caption,`Run ${e.of.run}${e.of.state?`, state ${e.of.state}`:""}, ${yn(e.of.frequency_hz??0)}: ${o}, level outwards and in colour.`),this.say(et.at)}say(e){const t=e??et.at,n=t&&this.map?this.view.sphere.nearest(t):-1;if(!t||!this.map||n<0){$(this.view.stage.readout);return}const s=this.map,r=l=>l===null?"-":l.toFixed(2),a=Wt(s.rows[Math.floor(n/s.columns.length)],s.columns[n%s.columns.length]),o=a[0]*t[0]+a[1]*t[1]+a[2]*t[2]>Math.cos(3*Math.PI/180),c=o&&s.total[n]!==null?`total ${r(s.total[n])} ${this.looked.unit}, ${s.names[0]} ${r(s.first[n])}, ${s.names[1]} ${r(s.second[n])}`:"not measured";$(this.view.stage.readout,`${this.view.sphere.words(o?a:t)}: ${c}`)}controls(){const{looked:e}=this,t=Jc.map(([s,r])=>[s,r]),n=[["total","total"],["first","first component"],["second","second component"]];return g("div",{class:"row"},tn("components",t,e.basis,s=>{e.basis=s,e.basisChosen=!0,this.changed()}),tn("shown",n,e.component,s=>{e.component=s,this.changed()}),Mn("range",20,80,10,e.span,s=>{e.span=s,this.changed()}," dB"))}}function ml(i,e,t){const[n,s]=[t*dt,e*dt];if(i==="theta-phi")return Wt(e,t);if(i==="az-el")return[Math.sin(n)*Math.cos(s),Math.sin(s),Math.cos(n)*Math.cos(s)];if(i==="alpha-epsilon")return[Math.sin(n),Math.cos(n)*Math.sin(s),Math.cos(n)*Math.cos(s)];const r=1-e*e-t*t;return r<0?null:[t,e,Math.sqrt(r)]}function gl(i,[e,t,n]){if(i==="theta-phi"){const[s,r]=bn([e,t,n]);return{row:s,column:(r+360)%360}}return i==="az-el"?{row:Math.asin(t)/dt,column:Math.atan2(e,n)/dt}:i==="alpha-epsilon"?{row:Math.atan2(t,n)/dt,column:Math.asin(e)/dt}:{row:t,column:e}}class Nu{constructor(e){this.explorer=e;const{looked:t}=e,n=tn("coordinates",Qc.map(([s,r])=>[s,r]),t.coordinates,s=>{t.coordinates=s,e.changed()});this.element=g("div",{},g("div",{class:"row no-print"},n),this.panel.element),this.map.clicked=s=>et.pin(ml(t.coordinates,s.row,s.column)),this.map.moved=s=>et.hover(s&&ml(t.coordinates,s.row,s.column)),this.stopCursor=et.watch(s=>this.map.point(s&&this.found&&(t.coordinates!=="u-v"||s[2]>=0)?gl(t.coordinates,s):null))}panel=new Qe("Levels over all directions","card tab-card");map=new Fn("levels over all directions");found=null;stopCursor;element;leave(){this.stopCursor(),this.panel.leave()}show(){const{looked:e,pattern:t}=this.explorer,n=e.coordinates;this.panel.ask(e.subject(!0,`${n} ${e.basis} ${e.component}`),s=>ze("/api/map",{...e.body(),frequency:e.frequency,coordinates:n,basis:e.basis},s),s=>{this.found=s;const r=t.scale(n==="theta-phi"?s:t.map??s),a=e.component==="total"?"total":s.names[e.component==="first"?0:1],o=c=>c.replace("_deg"," / deg");return this.map.draw({rows:s.rows,columns:s.columns,values:s[e.component],rowName:o(s.row_name),columnName:o(s.column_name),...r,flip:n!=="theta-phi",square:n==="u-v"},`${a} of ${e.run}`),[g("p",{class:"small"},`Shown: ${a}. The colours keep their levels whatever is shown.`),this.map.element,g("p",{class:"small mono"},s.formula)]},{keep:!0,of:s=>s.of,expect:e.of(!0)}).then(s=>s&&this.map.point(et.at&&(n!=="u-v"||et.at[2]>=0)?gl(n,et.at):null))}}class Fu{constructor(e){this.explorer=e;const{looked:t}=e,n=new Map(t.known.figures.map(a=>[a.name,a.label]));n.has(this.chosen)||(this.chosen=t.known.figures[0]?.name??"");const s=tn("figure",[...n],this.chosen,a=>{this.chosen=a,this.show()});this.element=g("div",{},g("div",{class:"row no-print"},s),this.panel.element),this.chart.clicked=a=>{const o=t.known.frequency_hz;t.frequency=o.reduce((c,l,h)=>Math.abs(l/1e9-a)<Math.abs(o[c]/1e9-a)?h:c,0),e.changed()};let r=!0;this.stopCursor=et.watch((a,o)=>{o&&!r&&this.show(),r=!1})}panel=new Qe("Over frequency","card tab-card");chart=new pn("level over frequency");figure=new pn("figure over frequency");chosen="gain_dbi";stopCursor;element;leave(){this.stopCursor(),this.panel.leave()}show(){const{looked:e}=this.explorer,t=e.known;if(t.frequency_hz.length<2){this.panel.empty("This run holds one frequency.",e.subject(!1));return}const[n,s]=et.at?bn(et.at):[0,0],r=lt(),a={...e.body(),theta_deg:n,phi_deg:s,basis:e.basis};this.panel.ask(e.subject(!1,`${n} ${s} ${e.basis} ${this.chosen}`),o=>ze("/api/spectrum",a,o),o=>{const c=o.frequency_hz.map(d=>d/1e9),l=[{at:e.hz/1e9,colour:r.focus,text:"looked at"}];this.chart.draw({x:c,lines:[{name:o.names[0],values:o.first,colour:r.co,points:c.length<40},{name:o.names[1],values:o.second,colour:r.cross,dash:"6 3",points:c.length<40},{name:"total",values:o.total,colour:r.ink,width:1.1}],xName:"frequency / GHz",yName:`level / ${e.unit}`,yWhole:_i([...o.total,...o.first,...o.second].map(d=>d===null?null:Math.max(d,-60)),5),marks:l,peakOf:2,digits:3},`spectrum of ${e.run}`);const h=t.figures.filter(d=>d.name===this.chosen),u=h.some(d=>d.value!==null);return u&&this.figure.draw({x:h.map(d=>d.frequency_hz/1e9),lines:[{name:h[0].label,values:h.map(d=>d.value),colour:r.co,points:!0},...h.some(d=>d.lower!==null)?[{name:"95 % interval",values:h.map(d=>d.lower),colour:r.band,dash:"3 3"},{name:"to",values:h.map(d=>d.upper),colour:r.band,dash:"3 3"}]:[]],xName:"frequency / GHz",yName:`${h[0].label} / ${h[0].unit||"1"}`,yWhole:_i(h.flatMap(d=>[d.value,d.lower,d.upper]),.5),marks:l,height:240,digits:3},`${h[0].label} of ${e.run}`),[g("p",{class:"small"},`Direction theta ${n.toFixed(1)}°, phi ${s.toFixed(1)}°${et.at?"":" (boresight; a click on sphere, map or cut sets another)"}. A click in the chart sets the frequency.`),this.chart.element,g("h3",{},"A figure over frequency"),u?this.figure.element:g("p",{class:"quiet"},"This figure has no value here.")]},{keep:!0,of:o=>o.of,expect:e.of(!1)})}}class Ou{constructor(e){this.explorer=e,this.map.clicked=t=>et.pin(Wt(t.row,t.column)),this.map.moved=t=>et.hover(t&&Wt(t.row,t.column)),this.stopCursor=et.watch(t=>this.map.point(t&&this.place(t)))}panel=new Qe("Total of both polarizations","card tab-card");figures=new Qe("Figures","card figures-panel");tools=g("div",{class:"controls row"});map=new Fn("total level over all directions");frequency=null;stopCursor;element=g("div",{},this.tools,this.panel.element,this.figures.element);leave(){this.stopCursor(),this.panel.leave(),this.figures.leave()}show(){const{looked:e}=this.explorer,t=e.state?`, state ${e.state}`:"",n={key:`${e.run}/${e.state??""}|${this.frequency??""}`,words:`run ${e.run}${t}`},s={...e.one(),frequency:this.frequency};this.panel.ask(n,r=>ze("/api/power",s,r),r=>this.draw(r,n),{keep:!0}).then(r=>r&&$(this.panel.subject,`${n.words}, ${yn(r.of.frequency_hz??0)}`))}draw(e,t){const n=`${t.words}, ${yn(e.of.frequency_hz??0)}`;this.controls(e);const r=Io(e.figures.filter(l=>Math.abs(l.frequency_hz-(e.of.frequency_hz??0))<1)).map(l=>[g("span",{attrs:{title:l.definition}},l.label),Lo(l),Pr(l)]);this.figures.show({key:t.key,words:n},xt(["figure","value","95 % interval"],r,"figures"));const a=e.total.filter(l=>l!==null),o=Math.ceil(a.reduce((l,h)=>Math.max(l,h),-200)/5)*5,c={low:o-this.explorer.looked.span,high:o,unit:e.unit};return this.onSphere(e,c,n),this.map.draw({rows:e.rows,columns:e.columns,values:e.total,rowName:"theta / deg",columnName:"phi / deg",...c},`total of ${e.of.run}`),[g("p",{class:"small"},"The receiver gave levels without phase: no polarization, no phase centre, no transform."),this.map.element]}controls(e){if(this.tools.childElementCount)return;const{looked:t}=this.explorer,n=e.all_hz,s=n.findIndex(r=>Math.abs(r-(e.of.frequency_hz??0))<1);$(this.tools,n.length>1&&Mn("frequency",0,n.length-1,1,s,r=>this.change(r),"",r=>yn(n[r])),e.states.length>1&&tn("state",e.states.map(r=>[r,r]),t.state??e.states[0],r=>{t.state=r,t.keep(),this.show()}))}change(e){this.frequency=e,this.show()}place([e,t,n]){const[s,r]=bn([e,t,n]);return{row:s,column:(r+360)%360}}onSphere(e,t,n){const{sphere:s,stage:r}=this.explorer.view,a=[],{rows:o,columns:c}=e;for(const u of o)for(const d of c)a.push(...Wt(u,d));const l=c.length>1?c[1]-c[0]:0,h=Math.abs(c[c.length-1]-c[0]+l-360)<1e-6;s.shape({rows:o.length,columns:c.length,closed:h,directions:a}),s.surface(e.total,t,`power ${n}`),s.scaleBar(t,"total"),$(r.caption,`${n[0].toUpperCase()}${n.slice(1)}: total level outwards and in colour, without phase.`),r.hovered=u=>{et.hover(u);const d=p=>e.total[p]===null?null:`${e.total[p].toFixed(2)} ${t.unit}`;$(r.readout,u?s.told(u,.75*Math.max(l,4),d):"")}}}const nh={complete:"complete",stopped:"stopped, can go on",begun:"begun, can go on",damaged:"journal cannot be read",nothing:"empty"},ku=[["tag","tag"],["operator","operator"],["serial","serial number"],["customer","customer"],["order","order"],["note","notes"]];function Bu(i,e){const t=[i.name,i.kind,nh[i.state],...Object.values(i.identity)].join(" ").toLowerCase();return e.toLowerCase().split(/\s+/).every(n=>t.includes(n))}function zu(i){const e=i.total&&i.state!=="complete"?` (${i.measured} of ${i.total})`:"";return`${nh[i.state]}${e}`}class Hu{constructor(e){this.open=e,this.element=g("details",{class:"card drawer",attrs:{open:!0}},this.summary,this.search,this.list),this.draw()}list=g("div",{class:"runs"});element;runs=[];chosen="";loaded=!1;asking=!1;wanted=[];thumbs=new Map;stop=new AbortController;campaign=Ne.campaign;seen=new IntersectionObserver(e=>{for(const t of e)t.isIntersecting&&(this.seen.unobserve(t.target),this.wanted.push(t.target.getAttribute("data-thumb")??""));this.askThumbs()});search=g("input",{attrs:{type:"search",placeholder:"find by name, tag, operator, state","aria-label":"find runs"},on:{input:()=>this.draw()}});summary=g("summary",{},"Runs");fill(e){this.runs=e,this.loaded=!0,this.draw()}leave(){this.stop.abort(),this.seen.disconnect()}thumbOf(e){const t=this.thumbs.get(e.name);if(t)return t;const n=g("span",{class:"thumb",attrs:{"data-thumb":e.name}});return this.thumbs.set(e.name,n),this.seen.observe(n),n}async askThumbs(){if(!this.asking){this.asking=!0;for(let e;(e=this.wanted.shift())!==void 0&&!this.stop.signal.aborted;){const t=this.thumbs.get(e);try{const n=await ze("/api/thumb",{campaign:this.campaign,run:e},this.stop.signal);t&&$(t,Gu(n)),t&&(t.title=Vu[n.what])}catch{}}this.asking=!1}}choose(e){this.chosen=e,$(this.summary,"Runs",g("span",{class:"subject mono"},e?`open: ${e}`:""));for(const t of this.list.querySelectorAll("button[data-run]"))t.setAttribute("aria-pressed",String(t.getAttribute("data-run")===e))}draw(){const e=this.runs.filter(t=>Bu(t,this.search.value));this.loaded?this.runs.length?e.length?$(this.list,...e.map(t=>this.card(t))):$(this.list,g("p",{class:"quiet"},"No run has these words.")):$(this.list,g("p",{class:"quiet"},"No runs yet. Scan makes them; colure acquire does too.")):$(this.list,g("p",{class:"quiet"},"The runs are being listed.")),this.choose(this.chosen)}card(e){const t=e.measured_at?new Date(1e3*e.measured_at).toLocaleString([],{dateStyle:"medium",timeStyle:"short"}):"",n=e.kind==="begun"?"not sealed":e.kind==="power"?"power only":e.kind,s=g("button",{class:"run",on:{click:()=>this.open(e.name)},attrs:{type:"button","data-run":e.name,"aria-pressed":"false"}},this.thumbOf(e),g("strong",{},e.name),g("span",{class:"small"},[n,e.identity.tag,e.identity.operator].filter(Boolean).join(", ")),g("span",{class:`small ${e.state==="complete"?"good":"warn-text"}`},zu(e)),g("span",{class:"small quiet"},t)),r=_e("notes",()=>this.about(e),"tiny","tag, operator, notes");return r.setAttribute("aria-label",`notes of ${e.name}`),g("div",{class:"run-card"},s,r)}about(e){const t=g("p",{class:"faults",attrs:{role:"alert"}}),n=ku.map(([s,r])=>{const a=s==="note"?g("textarea",{attrs:{rows:4,maxlength:2e3,disabled:!vt("operate")}}):g("input",{attrs:{maxlength:200,disabled:!vt("operate")}});return a.value=e.identity[s]??"",[s,r,a]});Xi(`What is said of ${e.name}`,s=>[...n.map(([,r,a])=>g("label",{class:"field stacked"},g("span",{},r),a)),t,g("div",{class:"row"},g("span",{class:"small quiet"},"Kept beside the record and shown in its reports. An empty entry leaves the former one."),g("span",{class:"spring"}),vt("operate")&&_e("keep",()=>{const r=Object.fromEntries(n.map(([a,,o])=>[a,o.value.trim()]).filter(([,a])=>a));ze("/api/identity",{campaign:Ne.campaign,run:e.name,said:r}).then(a=>{e.identity=a,this.draw(),s()},a=>$(t,Yt(a)))},"main"))])}}const Vu={pattern:"total level over theta (down) and phi (across), 40 dB","as read":"levels as they were read, over theta (down) and phi (across), 40 dB; no pattern was processed yet",cut:"the first cut, 40 dB","":"nothing measured"};function Gu(i){if(!i.what)return null;const e=g("canvas",{attrs:{width:i.what==="cut"?192:48,height:i.what==="cut"?48:24,"aria-hidden":"true"}}),t=e.getContext("2d");if(!t)return null;if(i.what==="cut")return t.strokeStyle=lt().co,t.lineWidth=2,i.shades.forEach((s,r)=>t.lineTo(192*r/(i.shades.length-1),46-44*s/255)),t.stroke(),e;const n=t.createImageData(48,24);return i.shades.forEach((s,r)=>{for(let a=0;a<3;a++)n.data[4*r+a]=Nn[3*Math.max(0,s)+a];n.data[4*r+3]=s<0?0:255}),t.putImageData(n,0,0),e}class es{constructor(e,t){this.explorer=e,this.panel=new Qe(t,"card tab-card"),this.element=this.panel.element}panel;element;leave(){this.panel.leave()}}class Wu extends es{size=new Fn("amplitude on the face");turn=new Fn("phase on the face");grid=g("canvas",{class:"elements",attrs:{role:"img","aria-label":"excitation of every element, dB"}});constructor(e){super(e,"Waves drawn back to the device's face")}show(){const{looked:e}=this.explorer;this.panel.ask(e.subject(!0),t=>ze("/api/aperture",{...e.body(),frequency:e.frequency},t),({face:t})=>t?(this.draw(t),[g("div",{class:"two"},g("div",{},g("h3",{},"Amplitude"),this.size.element),g("div",{},g("h3",{},"Phase"),this.turn.element)),g("h3",{},"Excitation of every element / dB"),this.grid,...t.suspects.length?t.suspects.map(n=>g("p",{class:"bad"},n)):[g("p",{},"No element stands out.")]]):[g("p",{},"device.toml declares no [elements]: there is no face to draw the waves back to.")],{keep:!0,of:t=>t.of,expect:e.of(!0)})}draw(e){const t={rows:e.y_mm,columns:e.x_mm,rowName:"y / mm",columnName:"x / mm",flip:!0,square:!0};this.size.draw({...t,values:e.level_db,low:-25,high:0,unit:"dB"}),this.turn.draw({...t,values:e.phase_deg,low:-180,high:180,unit:"deg",ramp:Zh}),$u(this.grid,e.elements,e.excitation_db)}}function $u(i,e,t){const s=window.devicePixelRatio||1;i.style.width=i.style.height="340px",i.width=i.height=340*s;const r=i.getContext("2d"),a=e.flat();r.scale(s,s);const o=Math.min(...a),c=Math.max(...a),l=(c-o)/Math.max(1,Math.round(Math.sqrt(e.length))-1),h=d=>(d-o+l/2)/(c-o+l)*340,u=l/(c-o+l)*340;r.font="11px system-ui",r.textAlign="center",r.textBaseline="middle",e.forEach(([d,p],_)=>{const v=3*Math.max(0,wr(t[_],-15,0));r.fillStyle=`rgb(${Nn[v]} ${Nn[v+1]} ${Nn[v+2]})`,r.fillRect(h(d)-u/2+1,340-h(p)-u/2+1,u-2,u-2),r.fillStyle=t[_]>-9?"#12191f":"#ffffff",r.fillText(t[_].toFixed(1),h(d),340-h(p))})}class qu extends es{chart=new pn("impulse response");constructor(e){super(e,"Impulse response of the strongest check")}show(){const{looked:e}=this.explorer,t=e.known?.frequency_hz.length??0;if(t<3){const n=t===1?"1 frequency":`${t} frequencies`;this.panel.empty(`This run holds ${n}; an impulse response needs at least 3.`,e.subject(!1));return}this.panel.ask(e.subject(!1),n=>ze("/api/impulse",e.one(),n),n=>this.draw(n),{of:n=>({...n.of,state:e.state}),expect:e.of(!1)})}draw(e){const{looked:t,open:n}=this.explorer,[s,r]=e.widths_ns,a=p=>Math.round(100*p)/100;let o=a(t.gate?.[0]??e.strongest_ns),c=a(t.gate?.[1]??Math.max(s,.5*r));const l=()=>{const p=lt(),_=r>0?[{at:o-c/2,to:o+c/2,colour:p.cross,text:t.gate?"gate, tried":"gate"}]:[];this.chart.draw({x:e.time_ns,lines:[{name:"strongest check",values:e.level_db,colour:p.co}],xName:"time / ns",yName:"level / dB",height:320,yWhole:[-70,5],marks:_,peakOf:0,digits:2},`impulse response of ${t.run}`)};this.chart.clicked=p=>{o=a(p),this.show()},l();const h=g("p",{class:"small quiet"},"Hann window. A gate tried here changes every view and figure of this page, and nothing on disk; recipe.toml keeps one.");if(r<=0)return[this.chart.element,h,g("p",{class:"small quiet"},"A gate needs five frequencies or more.")];const u=a((r-s)/200)||.01,d=Math.floor(r/u)*u;return[this.chart.element,g("div",{class:"row"},Mn("gate, middle",0,a(e.time_ns[e.time_ns.length-1]),u,o,p=>{o=p,l()}," ns"),Mn("gate, width",Math.ceil(s/u)*u,d,u,c,p=>{c=p,l()}," ns"),_e("try this gate",()=>void n(t.run,t.state,t.off,[o,c]),"main"),...t.gate?[_e("no gate",()=>void n(t.run,t.state,t.off,null))]:[]),g("p",{class:"small"},`${a(s)} ns is the narrowest that the span resolves, ${a(r)} ns the widest before echoes repeat.`),h]}}class Xu extends es{constructor(e){super(e,"Steps of the recipe")}show(){const{looked:e,open:t}=this.explorer,n=e.known,s=e.one(),r=n.steps.map(l=>{const h=g("input",{attrs:{type:"checkbox",checked:l.on,disabled:!l.may_change},on:{change:()=>void t(e.run,e.state,h.checked?e.off.filter(u=>u!==l.name):[...e.off,l.name],e.gate)}});return g("label",{class:"row"},h,l.name)}),a=g("div"),o=_e("what does every step do?",()=>{o.disabled=!0,ni("/api/effects",s,l=>$(a,kn(l))).then(l=>{_l.set(JSON.stringify(s),l),e.run===s.run&&this.explorer.changed()},l=>{o.disabled=!1,$(a),this.panel.fault(l)})});o.disabled=!vt("operate");const c=_l.get(JSON.stringify(s));c&&$(a,Yu(c)),this.panel.show(e.subject(!1),g("p",{},"Switch a step off, and every view and figure follows. The record itself is never changed."),g("div",{class:"steps-list"},...r),o,a)}}const _l=new Map;function Yu(i){const e=Object.keys(i.without),t=Object.keys(i.whole).map(n=>[i.labels[n],Be(i.whole[n],3),...e.map(s=>{const r=i.without[s][n],a=i.whole[n];return r===null||a===null?"-":`${r-a>=0?"+":""}${(r-a).toFixed(3)}`})]);return g("div",{class:"scroll",attrs:{tabindex:0,role:"region","aria-label":"effect of every step"}},xt(["figure","all steps",...e.map(n=>`without ${n}`)],t))}class ju extends es{constructor(e){super(e,"Self-consistency checks")}show(){const{looked:e}=this.explorer;this.panel.ask(e.subject(!1),t=>ze("/api/findings",e.one(),t),({rows:t})=>[xt(["what","field / dB re peak","in words"],t.map(n=>[n.topic,n.level_db<=-199?"":Be(n.level_db,1),n.text]))],{of:t=>t.of,expect:e.of(!1),waiting:"The data are asked what is wrong with them."})}}class Ku extends es{constructor(e){super(e,"Verdict against limits.toml")}show(){const{looked:e}=this.explorer;if(!e.known?.specification){this.panel.empty("There is no limits.toml beside the campaign: nothing to hold the run against.",e.subject(!1));return}this.panel.ask(e.subject(!1),t=>ze("/api/verdicts",e.one(),t),t=>[t?Zu(t):g("p",{class:"quiet"},"limits.toml was not held against this run yet."),this.judge()],{of:t=>t?.of??null,expect:e.of(!1)})}judge(){const{looked:e}=this.explorer,t=e.one(),n=g("div"),s=_e("hold limits.toml against this run",()=>{s.disabled=!0,ni("/api/judge",t,r=>$(n,kn(r))).then(()=>e.run===t.run&&this.explorer.changed(),r=>{s.disabled=!1,$(n),this.panel.fault(r)})},"main");return s.disabled=!vt("operate"),g("div",{class:"no-print"},s,n)}}function Zu(i){const e=t=>t==="pass"?"good":t==="fail"?"bad":"warn-text";return g("div",{},g("p",{class:`verdict ${e(i.outcome)}`},`${i.specification}: ${i.outcome}`),g("p",{class:"small quiet"},`${i.document?`${i.document}; decided`:"Decided"} by ${i.decision}.`),i.current?"":g("p",{class:"warn"},"The record or limits.toml changed since: hold it against the run again."),xt(["requirement","outcome","margin","in words"],i.rows.map(t=>[t.requirement,g("strong",{class:e(t.outcome)},t.outcome),t.margin===null?"-":`${Be(t.margin,2)} ${t.unit}`,t.text]),"verdicts"))}class Ju extends es{constructor(e){super(e,"Report")}show(){const{looked:e,again:t}=this.explorer,n=e.known,s=e.one(),r=g("div",{class:"row"}),a=e.state===null?"":`?state=${encodeURIComponent(e.state)}`,o=()=>["html","pdf"].map(l=>g("a",{attrs:{href:`/api/report/${Ne.campaign}/${e.run}/${l}${a}`,target:"_blank",rel:"noopener"}},`open the report (${l})`));n.report&&$(r,...o());const c=_e("write the report",()=>{c.disabled=!0,ni("/api/report",s,l=>$(r,kn(l))).then(()=>e.run===s.run&&e.state===s.state?t():void 0,l=>{c.disabled=!1,$(r),this.panel.fault(l)})},"main");c.disabled=!vt("operate"),this.panel.show(e.subject(!1),g("p",{},n.specification?"With a verdict against limits.toml on its first page.":"Without a verdict: there is no limits.toml beside the campaign."),c,r,g("p",{class:"small quiet"},"The page itself prints too (Ctrl + P): the opened view with its run, state and frequency."))}}const vl=[["cuts","Cuts"],["map","Map"],["frequency","Over frequency"],["aperture","Aperture"],["impulse","Impulse"],["recipe","Recipe"],["findings","Findings"],["verdict","Verdict"],["together","Several runs"],["report","Report"]];function Qu(i){const e=new fl,t=new Qe("Run","card opened"),n=g("div",{class:"tab-panel",attrs:{id:"explore-panel"}}),s=g("div",{class:"controls"}),r=new Map;let a=!0,o=[],c=null,l=0;const h=async(S,L,O=[],V=null)=>{const z=S!==e.run||L!==e.state;Object.assign(e,{run:S,state:L,off:O,gate:V}),e.beside=e.beside.filter(Y=>Y!==S),e.known=null,b.choose(S),z&&(D.clear(),P.clear()),A(),D.element.hidden=!1,$(n),$(s),r.get(S)==="cuts"?u(new Iu(C),"Cuts or single directions: figures of a sphere do not follow from them."):r.get(S)==="power"?u(new Ou(C),"Levels without phase."):await d()},u=(S,L)=>{t.show(e.subject(!1),g("p",{class:"small"},L)),c=S,e.keep(),$(s,S.element),D.element.hidden=!0,S.show()},d=async()=>{const S=e.run,L=await t.ask(e.subject(!1),O=>ze("/api/overview",e.body(),O),O=>(e.open(O),[p()]),{of:O=>O.of,expect:e.of(!1),waiting:"The run is being processed; the first time takes some seconds."});if(S===e.run){if(!L){D.clear("No figure follows from what this run holds so far."),await _u(i,S,s,()=>a&&S===e.run&&!e.known);return}$(t.subject,e.subject(!1).words),_(),P.show(),D.show(),T(e.tab)}},p=()=>{const S=e.known;return g("p",{class:"small"},S.demo?"Simulated chamber, invented device. ":"",`${S.frequency_hz.length} ${S.frequency_hz.length===1?"frequency":"frequencies"}, measured out to ${S.region_deg.toFixed(0)}° from boresight.`,e.tried?g("strong",{class:"warn-text"},` A trial${e.off.length?`, without ${e.off.join(", ")}`:""}${e.gate?`, gate ${e.gate[1].toFixed(2)} ns about ${e.gate[0].toFixed(2)} ns`:""}: nothing of it is kept.`):null)},_=()=>{const S=e.known,L=S.frequency_hz;v();const O=_e("play",()=>{l?v():l=window.setInterval(()=>{if(document.querySelector(".panel[aria-busy]"))return;const V=s.querySelector("input[type=range]");V.value=String((e.frequency+1)%L.length),V.dispatchEvent(new Event("input"))},400),$(O,l?"pause":"play")},"tiny","go through the frequencies");$(s,L.length>1&&Mn("frequency",0,L.length-1,1,e.frequency,V=>{e.frequency=V,f()},"",V=>yn(L[V])),L.length>1&&O,S.states.length>1&&tn("state",S.states.map(V=>[V,V]),e.state??S.states[0],V=>void h(e.run,V,e.off,e.gate)),P.controls(),Wh(vl,e.tab,n,V=>T(V,!0)),n)},v=()=>{window.clearInterval(l),l=0};let m=0;const f=()=>{window.clearTimeout(m),m=window.setTimeout(()=>{e.keep(),P.show(),D.show(),c?.show()},60)},A=()=>{c?.leave?.(),c=null},T=(S,L=!1)=>{e.known&&(e.tab=vl.some(([O])=>O===S)?S:"cuts",e.keep(L),A(),c=N[e.tab](),$(n,c.element),c.show())},b=new Hu(S=>void h(S,null)),P=new Uu(i,e,()=>f()),C={looked:e,view:i,runs:()=>o,open:h,changed:f,again:d,pattern:P},D=new wu(C),N={cuts:()=>new mu(C),map:()=>new Nu(C),frequency:()=>new Fu(C),aperture:()=>new Wu(C),impulse:()=>new qu(C),recipe:()=>new Xu(C),findings:()=>new ju(C),verdict:()=>new Ku(C),together:()=>new Eu(C),report:()=>new Ju(C)};return t.empty("The runs are being listed."),D.clear("Figures stand here once a run is open."),(async()=>{ze("/api/motion",{campaign:Ne.campaign}).then(S=>a&&i.chamber.build(S),()=>{}),i.chamber.turn(0,0,0);try{const S=await wn("/api/campaigns"),L=S.find(z=>z.id===Ne.campaign)?.runs??[];o=L.filter(z=>z.kind==="sphere").map(z=>z.name);for(const z of L)r.set(z.name,z.kind);b.fill(L),b.element.open=L.length!==1&&!e.run;const O=L.find(z=>z.kind==="sphere")??L.find(z=>z.kind!=="begun")??L[0],V=e.run||O?.name;V?await h(V,e.state,e.off,e.gate):t.empty("What a run holds is shown here: cuts, maps, figures, findings, report.")}catch(S){t.fault(S)}})(),Mi({}),{title:"Explore",element:g("div",{class:"page explore-page"},b.element,t.element,s,D.element),follow:()=>{if(!e.known)return;const S=new fl;S.open(e.known);const L=[S,e].map(J=>JSON.stringify([J.state,J.off,J.gate,J.frequency,J.plane,J.basis,J.coordinates,J.component,J.beside,J.tab,J.span]));if(L[0]===L[1])return;const{run:O,state:V,off:z,gate:Y,frequency:ee,plane:j,basis:G,basisChosen:se,coordinates:H,component:ie,beside:Ce,tab:Oe,span:Le}=S,K=V===e.state&&z.join()===e.off.join()&&Y?.join()===e.gate?.join();if(Object.assign(e,{frequency:ee,plane:j,basis:G,basisChosen:se,coordinates:H,component:ie,beside:Ce,tab:Oe,span:Le}),!K){h(O,V,z,Y);return}_(),P.show(),D.show(),T(e.tab)},leave:()=>{a=!1,b.leave(),v(),window.clearTimeout(m),t.leave(),P.leave(),A()}}}const Xr=["goal.start_ghz","goal.stop_ghz","goal.points"];function ed(i,e){return(e["goal.band"]??i.rows).map(t=>({...t}))}function td(i){const e=Number(i?.start_ghz??1),t=Number(i?.stop_ghz??e),n=Math.max(t-e,.01*t),s=r=>Number(r.toPrecision(6));return{start_ghz:s(t+n),stop_ghz:s(t+2*n),points:Math.max(2,Number(i?.points??2))}}function nd(i,e,t,n){const s=i.listed==="",r=(c,l,h)=>{const u=i.columns[h],d=u.key.replace("band.",""),p=c.frequencies_ghz,_=g("span",{},u.unit===u.label?u.label:`${u.label} / ${u.unit}`);if(Array.isArray(p)&&["start_ghz","stop_ghz","points","step_mhz"].includes(d)){if(h)return null;const m=p.slice(0,5).join(", ")+(p.length>5?`, ... (${p.length})`:"");return g("div",{class:"listed small"},`${m} GHz: a list of its own, which is edited in goal.toml`)}const v=g("input",{attrs:{type:"number",step:u.whole?"1":"any",value:c[d]===null||c[d]===void 0?"":String(c[d]),placeholder:d.startsWith("if_")||d.startsWith("power")?"of all":"","aria-label":`band ${l+1}, ${u.label} in ${u.unit}`,title:`${u.help} From ${u.least??"-"} to ${u.most??"-"} ${u.unit}.`,disabled:!s},on:{input:()=>{c[d]=v.value===""?null:Number(v.value);const m=d==="points"?"step_mhz":d==="step_mhz"?"points":"";if(m&&v.value!==""&&c[m]!==void 0&&c[m]!==null){c[m]=null;const f=i.columns.findIndex(T=>T.key===`band.${m}`),A=v.closest(".band").querySelectorAll("input")[f];A&&(A.value="")}t(e)}}});return g("label",{},_,v)},a=c=>_e("remove",()=>{e.splice(c,1),t(e),n()},"tiny",`remove band ${c+1}`),o=_e("add a band",()=>{e.push(td(e[e.length-1])),t(e),n()},"tiny");return g("div",{class:"bands"},g("p",{class:"small quiet"},s?i.help:`From the list ${i.listed}: it is edited there. ${i.help}`),...e.map((c,l)=>g("div",{class:"band",attrs:{role:"group","aria-label":`band ${l+1}`}},g("strong",{},`${l+1}`),g("div",{class:"band-boxes"},...i.columns.map((h,u)=>r(c,l,u))),s&&e.length>1&&a(l))),g("p",{class:"field-fault",attrs:{role:"status"}}),s?o:"")}class id{constructor(e,t,n,s){this.campaign=e,this.changed=n,this.again=s;const r=ed(t.bands,Kn(e)),a=t.fields.filter(o=>!r.length||!Xr.includes(o.key));for(const o of new Set(a.map(c=>c.group)))this.element.append(g("fieldset",{},g("legend",{},o),...o==="Wanted"?[r.length?this.bands(t,r):null]:[],...a.filter(c=>c.group===o).map(c=>this.field(c)),o==="Wanted"&&!r.length&&this.several(t)))}element=g("form",{on:{submit:e=>e.preventDefault()}});labels=new Map;bands(e,t){const n=JSON.stringify(e.bands.rows),s=nd(e.bands,t,r=>{const a=r.map(o=>Object.fromEntries(Object.entries(o).filter(([,c])=>c!==null)));Fs(this.campaign,"goal.band",JSON.stringify(a)===n?void 0:r),this.changed()},this.again);return this.labels.set("goal.band",s),s}several(e){return _e("several bands",()=>{const t=Kn(this.campaign),n=o=>t[o]??e.fields.find(c=>c.key===o)?.value??null,[s,r,a]=Xr.map(n);for(const o of Xr)Fs(this.campaign,o,void 0);Fs(this.campaign,"goal.band",[{start_ghz:s,stop_ghz:r,points:a}]),this.again(),this.changed()},"tiny",e.bands.help)}set(e,t){const n=JSON.stringify(t)===JSON.stringify(e.value);this.labels.get(e.key)?.classList.toggle("changed",!n),Fs(this.campaign,e.key,n?void 0:t),this.changed()}field(e){const t=Kn(this.campaign),n=e.key in t?t[e.key]:e.value,s=e.least!==null||e.most!==null?`from ${e.least??"-"} to ${e.most??"-"} ${e.unit}`:"",r=[e.help,s].filter(Boolean).join(" "),a=g("label",{class:e.key in t?"field changed":"field",attrs:{title:r}},g("span",{},e.label));this.labels.set(e.key,a);const o=g("span",{class:"field-fault"});if(e.choices.length){const l=g("select",{on:{change:()=>this.set(e,l.value)}},...e.choices.map(h=>g("option",{attrs:{value:h}},h)));return l.value=String(n),a.append(l,g("span",{class:"unit"}),o),a}if(Array.isArray(e.value)){const h=n.map((u,d)=>g("input",{attrs:{type:"number",step:"any",value:String(u),"aria-label":`${e.label}, ${"xyz"[d]??d}`},on:{input:()=>this.set(e,h.map(p=>Number(p.value)))}}));return a.classList.add("three"),a.append(...h,g("span",{class:"unit"},e.unit||"mm"),o),g("div",{class:"field-group"},a)}const c=g("input",{attrs:{type:"number",step:e.whole?"1":"any",value:n==null?"":String(n),placeholder:e.optional?"chosen":""},on:{input:()=>this.set(e,c.value===""?e.optional?null:e.value:Number(c.value))}});return a.append(c,g("span",{class:"unit"},e.unit===e.label?"":e.unit),o),a}marks(e){for(const[t,n]of this.labels){const s=t.split(".").at(-1),r=s==="band"?/(^|[\s.:])band([. ]\d|:| =)/:new RegExp(`(^|[\\s.:])${s} =`),a=e.find(o=>r.test(o))??"";n.classList.toggle("wrong",a!==""),n.querySelector(".field-fault").textContent=a.slice(a.indexOf("must")>=0?a.indexOf("must"):0);for(const o of n.querySelectorAll("input, select"))o.setAttribute("aria-invalid",String(a!==""))}}}const sd=["scan","boresight check","reference","resume","turn","cable"];function rd(i){const e=new Qe("Campaign","card plan-form"),t=new Qe("What follows","card plan-answer"),n=new Qe("Rehearsal"),s=new Qe("Positioners and polarization schemes"),r=g("div",{class:"small mono"}),a=g("div",{class:"walk"}),o=g("p",{class:"small quiet",attrs:{role:"status"}}),c=Ne.campaign;let l=null,h=null,u=0,d=0,p=0,_=null,v=0;const m=()=>{const S=Co(c);return{key:`${c}|${JSON.stringify(Kn(c))}`,words:S?`${S} unsaved`:"as saved"}},f=()=>({campaign:c,edits:{...Kn(c)}}),A=async()=>{const S=f(),L=m();if(s.subject.textContent&&s.subject.textContent!==L.words&&s.empty("The form changed since; set them side by side anew."),!await t.ask(L,async z=>{try{const Y=await ze("/api/plan",S,z);return l?.marks([]),Y}catch(Y){throw Y instanceof _s&&l?.marks(Y.faults),Y}},ad,{keep:!0}))return;const V=++v;ze("/api/motion",S).then(z=>V===v&&T(z),z=>t.fault(z))},T=S=>{h=S,i.chamber.build(S),i.sphere.shape({rows:1,columns:S.directions.length/3,closed:!1,directions:S.directions});const L=S.role.length-1,O=Math.min(u,L),V=_e("play",()=>{window.clearInterval(p),p=p?0:window.setInterval(()=>{const z=a.querySelector("input");z.value=String(u>=L?0:Math.min(L,u+Math.max(1,Math.round(L/600)))),z.dispatchEvent(new Event("input"))},50),$(V,p?"pause":"play")},"tiny");$(a,Mn("through the scan",0,L,1,O,b,"",z=>String(z+1)),V,r),b(O)},b=S=>{if(!h)return;u=S;const L=h.axes.length,O=h,V=new Array(O.directions.length/3).fill(null);i.chamber.turnTo(O.angles_deg.slice(L*S,L*S+L),O.axes);for(let z=0;z<S;z++)O.cell[z]>=0&&(V[O.cell[z]]=.35);i.sphere.dots(V,{low:0,high:1,unit:""},O.cell[S]),$(i.stage.caption,`Plan: ${vs(O.directions).length} directions; passed ones coloured, the present one orange. Nothing is measured here.`),$(r,`point ${S+1} of ${O.role.length} (${sd[O.role[S]]}), after ${Qn(O.time_s[S])}: ${O.axes.map((z,Y)=>`${z} ${O.readouts_deg[L*S+Y].toFixed(1)}°`).join(", ")}`)},P=()=>{$(o),window.clearTimeout(d),d=window.setTimeout(()=>void A(),80)},C=S=>{_=S,l=new id(c,S,P,()=>e.show({key:c,words:""},...C(S)));const L=_e("write into the files",()=>void D(L),"main"),O=_e("as saved",()=>{ol(c),_&&e.show({key:"",words:""},...C(_)),P()});return L.disabled=!vt("configure"),[g("h1",{},S.name),g("p",{class:"small quiet"},`${S.device}; ${S.chamber}${S.simulated?" (simulated chamber, invented data)":""}`),l.element,g("div",{class:"row"},L,O),o]},D=async S=>{S.disabled=!0;try{const L=await ze("/api/save",f());ol(c),$(o,L.written.length?`written: ${L.written.join(", ")}; the files as they were stay beside them`:"nothing was changed");const O=o.textContent,V=await wn("/api/form/{campaign}",[c]);e.show({key:c,words:""},...C(V)),$(o,O),A()}catch(L){$(o,g("span",{class:"bad"},Yt(L))),S.disabled=!vt("configure")}},N=_e("rehearse on the simulated chamber",()=>{const S=f(),L=m();N.disabled=!0;const O=g("div",{});n.show(L,g("p",{class:"quiet"},"The plan is carried out on an invented chamber as imperfect as the declared one, and held against known truth."),O),ni("/api/rehearse",{...S,seed:1+Math.floor(Math.random()*1e3)},V=>$(O,kn(V))).then(V=>n.show(L,...cd(V)),V=>{n.show(L),n.fault(V)}).finally(()=>N.disabled=!vt("operate"))});N.disabled=!vt("operate"),n.tools.append(N),n.empty(vt("operate")?"What the finished measurement would say, beside the truth.":"A session that may operate can rehearse the plan."),s.tools.append(_e("set side by side",()=>{const S=f();s.ask(m(),L=>ze("/api/schemes",S,L),ld)})),s.empty("All three positioners with every scheme, for this device and goal.");const w=Hc(()=>$(e.subject,m().words));return e.ask({key:c,words:""},S=>wn("/api/form/{campaign}",[c],S),C).then(S=>S&&A()),{title:"Plan",element:g("div",{class:"page plan-page"},g("div",{class:"card walk-card"},a),g("div",{class:"two"},e.element,t.element),n.element,s.element),leave:()=>{w(),window.clearTimeout(d),window.clearInterval(p),v++;for(const S of[e,t,n,s])S.leave()}}}function ad(i){const e=i.split.reduce((n,s)=>n+s[1],0),t=g("div",{class:"split-bar",attrs:{role:"img","aria-label":i.split.map(([n,s])=>`${n} ${Qn(s)}`).join(", ")}},...i.split.map(([,n],s)=>{const r=g("i",{class:s?"two":"one"});return r.style.width=`${100*n/e}%`,r}));return[g("p",{class:"verdict"},i.verdict),g("div",{class:"large"},i.duration),g("p",{class:"small quiet"},`${i.points} points`),t,g("p",{class:"small quiet"},i.split.map(([n,s])=>`${n} ${Qn(s)}`).join(", ")),...i.missing.map(n=>g("p",{class:"warn small"},`Not from this plan: ${n.replace(/^\w+: /,"")}.`)),...i.forecast.length?[g("h3",{},"Forecast"),od(i)]:[],g("h3",{},"Alternatives"),xt(["plan","duration","points"],i.alternatives.map(n=>[g("span",{attrs:{title:n.why}},n.name),n.duration,n.points])),g("details",{},g("summary",{},"Why"),xt(["question","answer"],i.rows.map(([n,s])=>[g("strong",{},n),s])))]}function od(i){const e=i.forecast.some(n=>n.wanted!==null),t=n=>n.wanted===null?"":g("span",{class:n.expanded<=n.wanted?"good num":"bad num"},`${n.wanted} ${n.unit}`);return xt(["figure","±",...e?["wanted"]:[],"mostly from"],i.forecast.map(n=>[n.label,g("span",{class:"num"},`${n.text} ${n.unit}`),...e?[t(n)]:[],n.cause]))}function ld(i){return[xt(["positioner","scheme","duration","points","slices meet at"],i.map(e=>[g("span",{attrs:{title:`${e.formula}; suits ${e.suits}; polarization ${e.polarization}`}},e.geometry),e.scheme,e.fault?g("span",{class:"small bad"},`not here: ${e.fault}`):e.duration,e.points||"-",e.pole]))]}function cd(i){const e=new Fn("predicted error over all directions"),t=Math.ceil(Math.max(...i.error_db)/5)*5;return e.draw({rows:i.theta,columns:i.phi,values:i.error_db,rowName:"theta / deg",columnName:"phi / deg",low:t-40,high:t,unit:"dB"}),[g("p",{},`${(100*i.share_inside).toFixed(0)} % of all stated intervals hold the truth; it took ${i.seconds.toFixed(1)} s. An invented chamber, drawn anew each time.`),e.element,g("div",{class:"scroll",attrs:{tabindex:0,role:"region","aria-label":"rehearsed figures"}},xt(["figure","measured","true","interval","mostly from"],i.rows.map(n=>[n.name,`${n.value} ${n.unit}`,Be(n.truth,3),g("span",{class:n.inside?"good":"bad"},n.inside?"holds the truth":"does not"),n.cause])))]}const xl=60;function hd(i){const e=new Qe("Scan"),t=new Qe("Now"),n=new Qe("What happened"),s=new Qe("Measured so far"),r=new Qe("Cut through the strongest direction"),a=new Qe("Drift of the boresight checks"),o=new Fn("levels measured so far"),c=new pn("cut through the strongest direction"),l=new pn("drift of the boresight checks"),h=g("div",{class:"large"}),u=g("div",{class:"big"}),d=g("div",{class:"large"}),p=g("p",{class:"quiet"}),_=g("div",{class:"row"}),v=g("ul",{class:"words",attrs:{tabindex:0,"aria-label":"what happened, the newest first"}}),m=g("input",{attrs:{value:Dt("run")||"first",pattern:"[A-Za-z0-9_-]{1,80}","aria-label":"name of the run"},on:{input:()=>Mi({run:m.value})}});$(e.body,h,u,d,p,_),$(n.body,v);let f=null,A=[],T=null,b="",P="",C=xl,D="",N=!0,w=-1;const M=F=>({key:F.run??"",words:F.run?`run ${F.run}${F.kind&&F.kind!=="scan"?`, ${Gc[F.kind]??F.kind}`:""}`:""}),S=F=>()=>void ze(`/api/${F}`,{run:pt.status.run??"",sequence:pt.status.sequence}).catch(te=>e.fault(te)),L=()=>void Po(m.value,F=>e.fault(F)).then(F=>F&&$(e.faults)),O=()=>Xi("Abort takes the drives' power away",F=>[g("p",{},"Stop brakes the axes and keeps their positions. Abort also takes the drives' power away: the axes must seek their reference marks before the next scan. What was measured stays on disk."),g("div",{class:"row"},_e("back",F),g("span",{class:"spring"}),_e("abort",()=>{ze("/api/abort",{}).then(F,te=>e.fault(te))},"danger"))]),V=F=>{const te=Ne.me?.mine===!0,ae=Ro(F),be=`${F.state}${te}${ae}`;if(be===b)return;b=be;const it=te?"":vt("operate")?"Take the motion lease first (top right).":"This session may watch and stop.",R=_e("start or go on",L,"main"),We=_e("pause",S("pause")),Pe=_e("resume",S("resume")),Ee=_e("abort",O,"","brake and take the drives' power away");R.disabled=!te||ae,We.disabled=!te||F.state!=="running",Pe.disabled=!te||F.state!=="paused",Ee.disabled=!vt("operate")||!ae,$(_,!ae&&g("label",{class:"row"},"run",m),R,We,Pe,Ee,it&&g("span",{class:"small quiet"},it))},z=F=>{V(F);const te=F.total?(F.measured??0)/F.total:0;$(e.subject,M(F).words),$(h,F.state),$(u,F.total?`${(100*te).toFixed(te<.1?1:0)} %`:""),$(d,F.running&&F.left_s!==void 0?`${Qn(F.left_s)} left`:F.text??""),$(p,F.total?`${F.measured} of ${F.total} points; every one is on disk.`:"No scan yet. Start one here. The page may be closed: a scan does not need it.");const ae=F.campaign??Ne.campaign;P!==ae&&(P=ae,ze("/api/motion",{campaign:ae}).then(be=>{N&&(i.chamber.build(be),!f&&P===ae&&Y(be.directions))},be=>e.fault(be))),F.axes&&F.angles_deg?.length&&i.chamber.follow(F.angles_deg,F.axes),ee(F),j(F),G(F)},Y=F=>{i.sphere.shape({rows:1,columns:F.length/3,closed:!1,directions:F}),i.sphere.dots([],{low:0,high:1,unit:"dB"}),$(i.stage.caption,`Planned: ${vs(F).length} directions, none measured.`)},ee=F=>{const te=F.level_db,ae=typeof te=="number"&&typeof F.noise_db=="number"&&te<F.noise_db+10,be=[...(F.axes??[]).map((it,R)=>[it,Bs(F.position_deg?.[R],2,"°")]),["last sweep",Bs(te,1," dB (S21)")],["strongest",Bs(F.strongest_db,1," dB")],["noise, as planned",Bs(F.noise_db,1," dB")]];F.run?t.show(M(F),g("dl",{class:ae?"reading bad":"reading"},...be.flatMap(([it,R])=>[g("dt",{},it),g("dd",{class:"mono"},R)])),ae&&g("p",{class:"bad small"},"The last sweep is within 10 dB of the noise.")):t.empty("Axes and levels stand here while a scan runs.")},j=F=>{const te=F.words??[];if(!F.run){n.empty("Events of a scan are listed here.");return}const ae=te.length?te[te.length-1].at+te.length:0;ae===w&&n.body.contains(v)||(w=ae,$(v,...[...te].reverse().slice(0,80).map(be=>g("li",{class:be.kind},g("time",{},new Date(1e3*be.at).toLocaleTimeString()),be.text))),n.body.contains(v)||n.show(M(F),v))},G=F=>{const te=F.ties??[];if(te.length<2){a.empty("Two checks along one direction show a drift.");return}const ae=lt(),be=te.length<20,it=`${F.run} ${te.length} ${te[te.length-1][0]}`;it===D&&a.body.contains(l.element)||(D=it,a.body.contains(l.element)||a.show(M(F),l.element),l.draw({x:te.map(R=>R[0]/60),lines:[{name:"level / dB",values:te.map(R=>R[1]),colour:ae.co,points:be},{name:"phase / 10°",values:te.map(R=>R[2]/10),colour:ae.cross,dash:"5 3",points:be}],xName:"time since the first / min",yName:"change",yWhole:_i(te.flatMap(R=>[R[1],R[2]/10]),.2),height:200},`drift of ${F.run}`))};function se(){s.empty("Levels are drawn as they come; where nothing was measured, nothing is drawn."),r.empty("The cut follows the strongest direction.")}const H=()=>{const F=f,te=T;if(!F||!te)return;const ae=pt.status,be=te.filter(Ke=>!Number.isNaN(Ke)),it=be.length?Math.ceil(be.reduce((Ke,xe)=>Math.max(Ke,xe),-1/0)/5)*5:0,R={low:it-C,high:it,unit:"dB"};i.sphere.dots(te,R),i.sphere.scaleBar(R,"S21");const We=F.state?`, state ${F.state}`:"";if($(i.stage.caption,`Run ${ae.run}${We}: ${A.filter(Ke=>!Number.isNaN(te[Ke])).length} of ${A.length} directions measured, coloured by level; the others are grey.`),s.body.contains(o.element)||s.show(M(ae),o.element,g("p",{class:"small quiet"},`Both polarizations together${F.state?`, state ${F.state} alone`:""}. Empty cells are not measured yet.`)),o.draw({rows:F.rows,columns:F.columns,values:te,rowName:`${F.row_name} / deg`,columnName:`${F.column_name} / deg`,...R},`levels of ${ae.run}`),!be.length)return;const Pe=ud(te),Ee=Pe%F.columns.length;r.body.contains(c.element)||r.show(M(ae),c.element);const ve=F.rows.map((Ke,xe)=>Number.isNaN(te[xe*F.columns.length+Ee])?null:te[xe*F.columns.length+Ee]);c.draw({x:F.rows,lines:[{name:`${F.column_name} ${Be(F.columns[Ee],0)}°`,values:ve,colour:lt().co,points:ve.filter(Ke=>Ke!==null).length<25}],xName:`${F.row_name} / deg`,yName:"S21 / dB",yWhole:[R.low,R.high],height:220,peakOf:0,digits:1},`cut of ${ae.run}`)},ie=pt.watch({status:z,grid:F=>{if(f=F,T=null,!F){A=[],P="",i.sphere.clear(),i.sphere.scaleBar(null),$(i.stage.caption),se();return}A=vs(F.directions),i.sphere.shape({rows:F.rows.length,columns:F.columns.length,closed:F.column_name==="phi",directions:F.directions});for(const te of[s,r])te.empty("The first points are awaited.",M(pt.status))},frame:F=>{T=F,H()}});i.stage.hovered=F=>{et.hover(F);const te=F&&T?i.sphere.nearest(F):-1;if(!F||!f||te<0||!T){$(i.stage.readout);return}const ae=[f.directions[3*te],f.directions[3*te+1],f.directions[3*te+2]],be=T[te];$(i.stage.readout,`${i.sphere.words(ae)}: ${Number.isNaN(be)?"not measured":`${be.toFixed(1)} dB`}`)},o.clicked=F=>et.pin(Ce(F)),o.moved=F=>et.hover(F?Ce(F):null);const Ce=F=>{const te=f,ae=3*(te.rows.indexOf(F.row)*te.columns.length+te.columns.indexOf(F.column));return[te.directions[ae],te.directions[ae+1],te.directions[ae+2]]},Oe=et.watch(F=>{if(!f||!F||f.row_name!=="theta"){o.point(null);return}const[te,ae]=bn(F);o.point({row:te,column:(ae+360)%360})});pt.status.angles_deg?.length||i.chamber.turn(0,0,0),pt.grid||se();const Le=Mn("range of colours",20,100,10,xl,F=>{C=F,H()}," dB"),K=g("input",{attrs:{type:"checkbox"},on:{change:()=>i.stage.ride(K.checked)}}),J=g("div",{class:"page scan-page"},e.element,g("div",{class:"two"},t.element,n.element),g("div",{class:"row no-print"},Le,g("label",{class:"row small"},K,"ride with the device")),s.element,g("div",{class:"two"},r.element,a.element));return pt.grid||i.sphere.cursor(et.at??Wt(0,0)),{title:"Scan",element:J,leave:()=>{N=!1,ie(),Oe()}}}function Bs(i,e,t){const n=Be(i,e);return n==="-"?n:`${n}${t}`}function ud(i){let e=-1;return i.forEach((t,n)=>{!Number.isNaN(t)&&(e<0||t>i[e])&&(e=n)}),Math.max(0,e)}/**
 * @license
 * Copyright 2010-2025 Three.js Authors
 * SPDX-License-Identifier: MIT
 */const ko="180",Gi={ROTATE:0,DOLLY:1,PAN:2},Hi={ROTATE:0,PAN:1,DOLLY_PAN:2,DOLLY_ROTATE:3},dd=0,yl=1,fd=2,ih=1,pd=2,Ln=3,ei=0,qt=1,In=2,Zn=0,Wi=1,Ml=2,wl=3,bl=4,md=5,di=100,gd=101,_d=102,vd=103,xd=104,yd=200,Md=201,wd=202,bd=203,Ia=204,Ua=205,Sd=206,Ed=207,Td=208,Ad=209,Rd=210,Cd=211,Pd=212,Dd=213,Ld=214,Na=0,Fa=1,Oa=2,ji=3,ka=4,Ba=5,za=6,Ha=7,Bo=0,Id=1,Ud=2,Jn=0,Nd=1,Fd=2,Od=3,kd=4,Bd=5,zd=6,Hd=7,sh=300,Ki=301,Zi=302,Va=303,Ga=304,Lr=306,Wa=1e3,pi=1001,$a=1002,fn=1003,Vd=1004,zs=1005,vn=1006,Yr=1007,mi=1008,Sn=1009,rh=1010,ah=1011,Ms=1012,zo=1013,vi=1014,Un=1015,Cs=1016,Ho=1017,Vo=1018,ws=1020,oh=35902,lh=35899,ch=1021,hh=1022,dn=1023,bs=1026,Ss=1027,uh=1028,Go=1029,dh=1030,Wo=1031,$o=1033,mr=33776,gr=33777,_r=33778,vr=33779,qa=35840,Xa=35841,Ya=35842,ja=35843,Ka=36196,Za=37492,Ja=37496,Qa=37808,eo=37809,to=37810,no=37811,io=37812,so=37813,ro=37814,ao=37815,oo=37816,lo=37817,co=37818,ho=37819,uo=37820,fo=37821,po=36492,mo=36494,go=36495,_o=36283,vo=36284,xo=36285,yo=36286,Gd=3200,Wd=3201,fh=0,$d=1,Yn="",an="srgb",Ji="srgb-linear",br="linear",at="srgb",Ti=7680,Sl=519,qd=512,Xd=513,Yd=514,ph=515,jd=516,Kd=517,Zd=518,Jd=519,El=35044,Tl="300 es",xn=2e3,Sr=2001;class wi{addEventListener(e,t){this._listeners===void 0&&(this._listeners={});const n=this._listeners;n[e]===void 0&&(n[e]=[]),n[e].indexOf(t)===-1&&n[e].push(t)}hasEventListener(e,t){const n=this._listeners;return n===void 0?!1:n[e]!==void 0&&n[e].indexOf(t)!==-1}removeEventListener(e,t){const n=this._listeners;if(n===void 0)return;const s=n[e];if(s!==void 0){const r=s.indexOf(t);r!==-1&&s.splice(r,1)}}dispatchEvent(e){const t=this._listeners;if(t===void 0)return;const n=t[e.type];if(n!==void 0){e.target=this;const s=n.slice(0);for(let r=0,a=s.length;r<a;r++)s[r].call(this,e);e.target=null}}}const Ut=["00","01","02","03","04","05","06","07","08","09","0a","0b","0c","0d","0e","0f","10","11","12","13","14","15","16","17","18","19","1a","1b","1c","1d","1e","1f","20","21","22","23","24","25","26","27","28","29","2a","2b","2c","2d","2e","2f","30","31","32","33","34","35","36","37","38","39","3a","3b","3c","3d","3e","3f","40","41","42","43","44","45","46","47","48","49","4a","4b","4c","4d","4e","4f","50","51","52","53","54","55","56","57","58","59","5a","5b","5c","5d","5e","5f","60","61","62","63","64","65","66","67","68","69","6a","6b","6c","6d","6e","6f","70","71","72","73","74","75","76","77","78","79","7a","7b","7c","7d","7e","7f","80","81","82","83","84","85","86","87","88","89","8a","8b","8c","8d","8e","8f","90","91","92","93","94","95","96","97","98","99","9a","9b","9c","9d","9e","9f","a0","a1","a2","a3","a4","a5","a6","a7","a8","a9","aa","ab","ac","ad","ae","af","b0","b1","b2","b3","b4","b5","b6","b7","b8","b9","ba","bb","bc","bd","be","bf","c0","c1","c2","c3","c4","c5","c6","c7","c8","c9","ca","cb","cc","cd","ce","cf","d0","d1","d2","d3","d4","d5","d6","d7","d8","d9","da","db","dc","dd","de","df","e0","e1","e2","e3","e4","e5","e6","e7","e8","e9","ea","eb","ec","ed","ee","ef","f0","f1","f2","f3","f4","f5","f6","f7","f8","f9","fa","fb","fc","fd","fe","ff"],xr=Math.PI/180,Mo=180/Math.PI;function Ps(){const i=Math.random()*4294967295|0,e=Math.random()*4294967295|0,t=Math.random()*4294967295|0,n=Math.random()*4294967295|0;return(Ut[i&255]+Ut[i>>8&255]+Ut[i>>16&255]+Ut[i>>24&255]+"-"+Ut[e&255]+Ut[e>>8&255]+"-"+Ut[e>>16&15|64]+Ut[e>>24&255]+"-"+Ut[t&63|128]+Ut[t>>8&255]+"-"+Ut[t>>16&255]+Ut[t>>24&255]+Ut[n&255]+Ut[n>>8&255]+Ut[n>>16&255]+Ut[n>>24&255]).toLowerCase()}function Ze(i,e,t){return Math.max(e,Math.min(t,i))}function Qd(i,e){return(i%e+e)%e}function jr(i,e,t){return(1-t)*i+t*e}function os(i,e){switch(e.constructor){case Float32Array:return i;case Uint32Array:return i/4294967295;case Uint16Array:return i/65535;case Uint8Array:return i/255;case Int32Array:return Math.max(i/2147483647,-1);case Int16Array:return Math.max(i/32767,-1);case Int8Array:return Math.max(i/127,-1);default:throw new Error("Invalid component type.")}}function Vt(i,e){switch(e.constructor){case Float32Array:return i;case Uint32Array:return Math.round(i*4294967295);case Uint16Array:return Math.round(i*65535);case Uint8Array:return Math.round(i*255);case Int32Array:return Math.round(i*2147483647);case Int16Array:return Math.round(i*32767);case Int8Array:return Math.round(i*127);default:throw new Error("Invalid component type.")}}const ef={DEG2RAD:xr};class Ve{constructor(e=0,t=0){Ve.prototype.isVector2=!0,this.x=e,this.y=t}get width(){return this.x}set width(e){this.x=e}get height(){return this.y}set height(e){this.y=e}set(e,t){return this.x=e,this.y=t,this}setScalar(e){return this.x=e,this.y=e,this}setX(e){return this.x=e,this}setY(e){return this.y=e,this}setComponent(e,t){switch(e){case 0:this.x=t;break;case 1:this.y=t;break;default:throw new Error("index is out of range: "+e)}return this}getComponent(e){switch(e){case 0:return this.x;case 1:return this.y;default:throw new Error("index is out of range: "+e)}}clone(){return new this.constructor(this.x,this.y)}copy(e){return this.x=e.x,this.y=e.y,this}add(e){return this.x+=e.x,this.y+=e.y,this}addScalar(e){return this.x+=e,this.y+=e,this}addVectors(e,t){return this.x=e.x+t.x,this.y=e.y+t.y,this}addScaledVector(e,t){return this.x+=e.x*t,this.y+=e.y*t,this}sub(e){return this.x-=e.x,this.y-=e.y,this}subScalar(e){return this.x-=e,this.y-=e,this}subVectors(e,t){return this.x=e.x-t.x,this.y=e.y-t.y,this}multiply(e){return this.x*=e.x,this.y*=e.y,this}multiplyScalar(e){return this.x*=e,this.y*=e,this}divide(e){return this.x/=e.x,this.y/=e.y,this}divideScalar(e){return this.multiplyScalar(1/e)}applyMatrix3(e){const t=this.x,n=this.y,s=e.elements;return this.x=s[0]*t+s[3]*n+s[6],this.y=s[1]*t+s[4]*n+s[7],this}min(e){return this.x=Math.min(this.x,e.x),this.y=Math.min(this.y,e.y),this}max(e){return this.x=Math.max(this.x,e.x),this.y=Math.max(this.y,e.y),this}clamp(e,t){return this.x=Ze(this.x,e.x,t.x),this.y=Ze(this.y,e.y,t.y),this}clampScalar(e,t){return this.x=Ze(this.x,e,t),this.y=Ze(this.y,e,t),this}clampLength(e,t){const n=this.length();return this.divideScalar(n||1).multiplyScalar(Ze(n,e,t))}floor(){return this.x=Math.floor(this.x),this.y=Math.floor(this.y),this}ceil(){return this.x=Math.ceil(this.x),this.y=Math.ceil(this.y),this}round(){return this.x=Math.round(this.x),this.y=Math.round(this.y),this}roundToZero(){return this.x=Math.trunc(this.x),this.y=Math.trunc(this.y),this}negate(){return this.x=-this.x,this.y=-this.y,this}dot(e){return this.x*e.x+this.y*e.y}cross(e){return this.x*e.y-this.y*e.x}lengthSq(){return this.x*this.x+this.y*this.y}length(){return Math.sqrt(this.x*this.x+this.y*this.y)}manhattanLength(){return Math.abs(this.x)+Math.abs(this.y)}normalize(){return this.divideScalar(this.length()||1)}angle(){return Math.atan2(-this.y,-this.x)+Math.PI}angleTo(e){const t=Math.sqrt(this.lengthSq()*e.lengthSq());if(t===0)return Math.PI/2;const n=this.dot(e)/t;return Math.acos(Ze(n,-1,1))}distanceTo(e){return Math.sqrt(this.distanceToSquared(e))}distanceToSquared(e){const t=this.x-e.x,n=this.y-e.y;return t*t+n*n}manhattanDistanceTo(e){return Math.abs(this.x-e.x)+Math.abs(this.y-e.y)}setLength(e){return this.normalize().multiplyScalar(e)}lerp(e,t){return this.x+=(e.x-this.x)*t,this.y+=(e.y-this.y)*t,this}lerpVectors(e,t,n){return this.x=e.x+(t.x-e.x)*n,this.y=e.y+(t.y-e.y)*n,this}equals(e){return e.x===this.x&&e.y===this.y}fromArray(e,t=0){return this.x=e[t],this.y=e[t+1],this}toArray(e=[],t=0){return e[t]=this.x,e[t+1]=this.y,e}fromBufferAttribute(e,t){return this.x=e.getX(t),this.y=e.getY(t),this}rotateAround(e,t){const n=Math.cos(t),s=Math.sin(t),r=this.x-e.x,a=this.y-e.y;return this.x=r*n-a*s+e.x,this.y=r*s+a*n+e.y,this}random(){return this.x=Math.random(),this.y=Math.random(),this}*[Symbol.iterator](){yield this.x,yield this.y}}class xi{constructor(e=0,t=0,n=0,s=1){this.isQuaternion=!0,this._x=e,this._y=t,this._z=n,this._w=s}static slerpFlat(e,t,n,s,r,a,o){let c=n[s+0],l=n[s+1],h=n[s+2],u=n[s+3];const d=r[a+0],p=r[a+1],_=r[a+2],v=r[a+3];if(o===0){e[t+0]=c,e[t+1]=l,e[t+2]=h,e[t+3]=u;return}if(o===1){e[t+0]=d,e[t+1]=p,e[t+2]=_,e[t+3]=v;return}if(u!==v||c!==d||l!==p||h!==_){let m=1-o;const f=c*d+l*p+h*_+u*v,A=f>=0?1:-1,T=1-f*f;if(T>Number.EPSILON){const P=Math.sqrt(T),C=Math.atan2(P,f*A);m=Math.sin(m*C)/P,o=Math.sin(o*C)/P}const b=o*A;if(c=c*m+d*b,l=l*m+p*b,h=h*m+_*b,u=u*m+v*b,m===1-o){const P=1/Math.sqrt(c*c+l*l+h*h+u*u);c*=P,l*=P,h*=P,u*=P}}e[t]=c,e[t+1]=l,e[t+2]=h,e[t+3]=u}static multiplyQuaternionsFlat(e,t,n,s,r,a){const o=n[s],c=n[s+1],l=n[s+2],h=n[s+3],u=r[a],d=r[a+1],p=r[a+2],_=r[a+3];return e[t]=o*_+h*u+c*p-l*d,e[t+1]=c*_+h*d+l*u-o*p,e[t+2]=l*_+h*p+o*d-c*u,e[t+3]=h*_-o*u-c*d-l*p,e}get x(){return this._x}set x(e){this._x=e,this._onChangeCallback()}get y(){return this._y}set y(e){this._y=e,this._onChangeCallback()}get z(){return this._z}set z(e){this._z=e,this._onChangeCallback()}get w(){return this._w}set w(e){this._w=e,this._onChangeCallback()}set(e,t,n,s){return this._x=e,this._y=t,this._z=n,this._w=s,this._onChangeCallback(),this}clone(){return new this.constructor(this._x,this._y,this._z,this._w)}copy(e){return this._x=e.x,this._y=e.y,this._z=e.z,this._w=e.w,this._onChangeCallback(),this}setFromEuler(e,t=!0){const n=e._x,s=e._y,r=e._z,a=e._order,o=Math.cos,c=Math.sin,l=o(n/2),h=o(s/2),u=o(r/2),d=c(n/2),p=c(s/2),_=c(r/2);switch(a){case"XYZ":this._x=d*h*u+l*p*_,this._y=l*p*u-d*h*_,this._z=l*h*_+d*p*u,this._w=l*h*u-d*p*_;break;case"YXZ":this._x=d*h*u+l*p*_,this._y=l*p*u-d*h*_,this._z=l*h*_-d*p*u,this._w=l*h*u+d*p*_;break;case"ZXY":this._x=d*h*u-l*p*_,this._y=l*p*u+d*h*_,this._z=l*h*_+d*p*u,this._w=l*h*u-d*p*_;break;case"ZYX":this._x=d*h*u-l*p*_,this._y=l*p*u+d*h*_,this._z=l*h*_-d*p*u,this._w=l*h*u+d*p*_;break;case"YZX":this._x=d*h*u+l*p*_,this._y=l*p*u+d*h*_,this._z=l*h*_-d*p*u,this._w=l*h*u-d*p*_;break;case"XZY":this._x=d*h*u-l*p*_,this._y=l*p*u-d*h*_,this._z=l*h*_+d*p*u,this._w=l*h*u+d*p*_;break;default:console.warn("THREE.Quaternion: .setFromEuler() encountered an unknown order: "+a)}return t===!0&&this._onChangeCallback(),this}setFromAxisAngle(e,t){const n=t/2,s=Math.sin(n);return this._x=e.x*s,this._y=e.y*s,this._z=e.z*s,this._w=Math.cos(n),this._onChangeCallback(),this}setFromRotationMatrix(e){const t=e.elements,n=t[0],s=t[4],r=t[8],a=t[1],o=t[5],c=t[9],l=t[2],h=t[6],u=t[10],d=n+o+u;if(d>0){const p=.5/Math.sqrt(d+1);this._w=.25/p,this._x=(h-c)*p,this._y=(r-l)*p,this._z=(a-s)*p}else if(n>o&&n>u){const p=2*Math.sqrt(1+n-o-u);this._w=(h-c)/p,this._x=.25*p,this._y=(s+a)/p,this._z=(r+l)/p}else if(o>u){const p=2*Math.sqrt(1+o-n-u);this._w=(r-l)/p,this._x=(s+a)/p,this._y=.25*p,this._z=(c+h)/p}else{const p=2*Math.sqrt(1+u-n-o);this._w=(a-s)/p,this._x=(r+l)/p,this._y=(c+h)/p,this._z=.25*p}return this._onChangeCallback(),this}setFromUnitVectors(e,t){let n=e.dot(t)+1;return n<1e-8?(n=0,Math.abs(e.x)>Math.abs(e.z)?(this._x=-e.y,this._y=e.x,this._z=0,this._w=n):(this._x=0,this._y=-e.z,this._z=e.y,this._w=n)):(this._x=e.y*t.z-e.z*t.y,this._y=e.z*t.x-e.x*t.z,this._z=e.x*t.y-e.y*t.x,this._w=n),this.normalize()}angleTo(e){return 2*Math.acos(Math.abs(Ze(this.dot(e),-1,1)))}rotateTowards(e,t){const n=this.angleTo(e);if(n===0)return this;const s=Math.min(1,t/n);return this.slerp(e,s),this}identity(){return this.set(0,0,0,1)}invert(){return this.conjugate()}conjugate(){return this._x*=-1,this._y*=-1,this._z*=-1,this._onChangeCallback(),this}dot(e){return this._x*e._x+this._y*e._y+this._z*e._z+this._w*e._w}lengthSq(){return this._x*this._x+this._y*this._y+this._z*this._z+this._w*this._w}length(){return Math.sqrt(this._x*this._x+this._y*this._y+this._z*this._z+this._w*this._w)}normalize(){let e=this.length();return e===0?(this._x=0,this._y=0,this._z=0,this._w=1):(e=1/e,this._x=this._x*e,this._y=this._y*e,this._z=this._z*e,this._w=this._w*e),this._onChangeCallback(),this}multiply(e){return this.multiplyQuaternions(this,e)}premultiply(e){return this.multiplyQuaternions(e,this)}multiplyQuaternions(e,t){const n=e._x,s=e._y,r=e._z,a=e._w,o=t._x,c=t._y,l=t._z,h=t._w;return this._x=n*h+a*o+s*l-r*c,this._y=s*h+a*c+r*o-n*l,this._z=r*h+a*l+n*c-s*o,this._w=a*h-n*o-s*c-r*l,this._onChangeCallback(),this}slerp(e,t){if(t===0)return this;if(t===1)return this.copy(e);const n=this._x,s=this._y,r=this._z,a=this._w;let o=a*e._w+n*e._x+s*e._y+r*e._z;if(o<0?(this._w=-e._w,this._x=-e._x,this._y=-e._y,this._z=-e._z,o=-o):this.copy(e),o>=1)return this._w=a,this._x=n,this._y=s,this._z=r,this;const c=1-o*o;if(c<=Number.EPSILON){const p=1-t;return this._w=p*a+t*this._w,this._x=p*n+t*this._x,this._y=p*s+t*this._y,this._z=p*r+t*this._z,this.normalize(),this}const l=Math.sqrt(c),h=Math.atan2(l,o),u=Math.sin((1-t)*h)/l,d=Math.sin(t*h)/l;return this._w=a*u+this._w*d,this._x=n*u+this._x*d,this._y=s*u+this._y*d,this._z=r*u+this._z*d,this._onChangeCallback(),this}slerpQuaternions(e,t,n){return this.copy(e).slerp(t,n)}random(){const e=2*Math.PI*Math.random(),t=2*Math.PI*Math.random(),n=Math.random(),s=Math.sqrt(1-n),r=Math.sqrt(n);return this.set(s*Math.sin(e),s*Math.cos(e),r*Math.sin(t),r*Math.cos(t))}equals(e){return e._x===this._x&&e._y===this._y&&e._z===this._z&&e._w===this._w}fromArray(e,t=0){return this._x=e[t],this._y=e[t+1],this._z=e[t+2],this._w=e[t+3],this._onChangeCallback(),this}toArray(e=[],t=0){return e[t]=this._x,e[t+1]=this._y,e[t+2]=this._z,e[t+3]=this._w,e}fromBufferAttribute(e,t){return this._x=e.getX(t),this._y=e.getY(t),this._z=e.getZ(t),this._w=e.getW(t),this._onChangeCallback(),this}toJSON(){return this.toArray()}_onChange(e){return this._onChangeCallback=e,this}_onChangeCallback(){}*[Symbol.iterator](){yield this._x,yield this._y,yield this._z,yield this._w}}class U{constructor(e=0,t=0,n=0){U.prototype.isVector3=!0,this.x=e,this.y=t,this.z=n}set(e,t,n){return n===void 0&&(n=this.z),this.x=e,this.y=t,this.z=n,this}setScalar(e){return this.x=e,this.y=e,this.z=e,this}setX(e){return this.x=e,this}setY(e){return this.y=e,this}setZ(e){return this.z=e,this}setComponent(e,t){switch(e){case 0:this.x=t;break;case 1:this.y=t;break;case 2:this.z=t;break;default:throw new Error("index is out of range: "+e)}return this}getComponent(e){switch(e){case 0:return this.x;case 1:return this.y;case 2:return this.z;default:throw new Error("index is out of range: "+e)}}clone(){return new this.constructor(this.x,this.y,this.z)}copy(e){return this.x=e.x,this.y=e.y,this.z=e.z,this}add(e){return this.x+=e.x,this.y+=e.y,this.z+=e.z,this}addScalar(e){return this.x+=e,this.y+=e,this.z+=e,this}addVectors(e,t){return this.x=e.x+t.x,this.y=e.y+t.y,this.z=e.z+t.z,this}addScaledVector(e,t){return this.x+=e.x*t,this.y+=e.y*t,this.z+=e.z*t,this}sub(e){return this.x-=e.x,this.y-=e.y,this.z-=e.z,this}subScalar(e){return this.x-=e,this.y-=e,this.z-=e,this}subVectors(e,t){return this.x=e.x-t.x,this.y=e.y-t.y,this.z=e.z-t.z,this}multiply(e){return this.x*=e.x,this.y*=e.y,this.z*=e.z,this}multiplyScalar(e){return this.x*=e,this.y*=e,this.z*=e,this}multiplyVectors(e,t){return this.x=e.x*t.x,this.y=e.y*t.y,this.z=e.z*t.z,this}applyEuler(e){return this.applyQuaternion(Al.setFromEuler(e))}applyAxisAngle(e,t){return this.applyQuaternion(Al.setFromAxisAngle(e,t))}applyMatrix3(e){const t=this.x,n=this.y,s=this.z,r=e.elements;return this.x=r[0]*t+r[3]*n+r[6]*s,this.y=r[1]*t+r[4]*n+r[7]*s,this.z=r[2]*t+r[5]*n+r[8]*s,this}applyNormalMatrix(e){return this.applyMatrix3(e).normalize()}applyMatrix4(e){const t=this.x,n=this.y,s=this.z,r=e.elements,a=1/(r[3]*t+r[7]*n+r[11]*s+r[15]);return this.x=(r[0]*t+r[4]*n+r[8]*s+r[12])*a,this.y=(r[1]*t+r[5]*n+r[9]*s+r[13])*a,this.z=(r[2]*t+r[6]*n+r[10]*s+r[14])*a,this}applyQuaternion(e){const t=this.x,n=this.y,s=this.z,r=e.x,a=e.y,o=e.z,c=e.w,l=2*(a*s-o*n),h=2*(o*t-r*s),u=2*(r*n-a*t);return this.x=t+c*l+a*u-o*h,this.y=n+c*h+o*l-r*u,this.z=s+c*u+r*h-a*l,this}project(e){return this.applyMatrix4(e.matrixWorldInverse).applyMatrix4(e.projectionMatrix)}unproject(e){return this.applyMatrix4(e.projectionMatrixInverse).applyMatrix4(e.matrixWorld)}transformDirection(e){const t=this.x,n=this.y,s=this.z,r=e.elements;return this.x=r[0]*t+r[4]*n+r[8]*s,this.y=r[1]*t+r[5]*n+r[9]*s,this.z=r[2]*t+r[6]*n+r[10]*s,this.normalize()}divide(e){return this.x/=e.x,this.y/=e.y,this.z/=e.z,this}divideScalar(e){return this.multiplyScalar(1/e)}min(e){return this.x=Math.min(this.x,e.x),this.y=Math.min(this.y,e.y),this.z=Math.min(this.z,e.z),this}max(e){return this.x=Math.max(this.x,e.x),this.y=Math.max(this.y,e.y),this.z=Math.max(this.z,e.z),this}clamp(e,t){return this.x=Ze(this.x,e.x,t.x),this.y=Ze(this.y,e.y,t.y),this.z=Ze(this.z,e.z,t.z),this}clampScalar(e,t){return this.x=Ze(this.x,e,t),this.y=Ze(this.y,e,t),this.z=Ze(this.z,e,t),this}clampLength(e,t){const n=this.length();return this.divideScalar(n||1).multiplyScalar(Ze(n,e,t))}floor(){return this.x=Math.floor(this.x),this.y=Math.floor(this.y),this.z=Math.floor(this.z),this}ceil(){return this.x=Math.ceil(this.x),this.y=Math.ceil(this.y),this.z=Math.ceil(this.z),this}round(){return this.x=Math.round(this.x),this.y=Math.round(this.y),this.z=Math.round(this.z),this}roundToZero(){return this.x=Math.trunc(this.x),this.y=Math.trunc(this.y),this.z=Math.trunc(this.z),this}negate(){return this.x=-this.x,this.y=-this.y,this.z=-this.z,this}dot(e){return this.x*e.x+this.y*e.y+this.z*e.z}lengthSq(){return this.x*this.x+this.y*this.y+this.z*this.z}length(){return Math.sqrt(this.x*this.x+this.y*this.y+this.z*this.z)}manhattanLength(){return Math.abs(this.x)+Math.abs(this.y)+Math.abs(this.z)}normalize(){return this.divideScalar(this.length()||1)}setLength(e){return this.normalize().multiplyScalar(e)}lerp(e,t){return this.x+=(e.x-this.x)*t,this.y+=(e.y-this.y)*t,this.z+=(e.z-this.z)*t,this}lerpVectors(e,t,n){return this.x=e.x+(t.x-e.x)*n,this.y=e.y+(t.y-e.y)*n,this.z=e.z+(t.z-e.z)*n,this}cross(e){return this.crossVectors(this,e)}crossVectors(e,t){const n=e.x,s=e.y,r=e.z,a=t.x,o=t.y,c=t.z;return this.x=s*c-r*o,this.y=r*a-n*c,this.z=n*o-s*a,this}projectOnVector(e){const t=e.lengthSq();if(t===0)return this.set(0,0,0);const n=e.dot(this)/t;return this.copy(e).multiplyScalar(n)}projectOnPlane(e){return Kr.copy(this).projectOnVector(e),this.sub(Kr)}reflect(e){return this.sub(Kr.copy(e).multiplyScalar(2*this.dot(e)))}angleTo(e){const t=Math.sqrt(this.lengthSq()*e.lengthSq());if(t===0)return Math.PI/2;const n=this.dot(e)/t;return Math.acos(Ze(n,-1,1))}distanceTo(e){return Math.sqrt(this.distanceToSquared(e))}distanceToSquared(e){const t=this.x-e.x,n=this.y-e.y,s=this.z-e.z;return t*t+n*n+s*s}manhattanDistanceTo(e){return Math.abs(this.x-e.x)+Math.abs(this.y-e.y)+Math.abs(this.z-e.z)}setFromSpherical(e){return this.setFromSphericalCoords(e.radius,e.phi,e.theta)}setFromSphericalCoords(e,t,n){const s=Math.sin(t)*e;return this.x=s*Math.sin(n),this.y=Math.cos(t)*e,this.z=s*Math.cos(n),this}setFromCylindrical(e){return this.setFromCylindricalCoords(e.radius,e.theta,e.y)}setFromCylindricalCoords(e,t,n){return this.x=e*Math.sin(t),this.y=n,this.z=e*Math.cos(t),this}setFromMatrixPosition(e){const t=e.elements;return this.x=t[12],this.y=t[13],this.z=t[14],this}setFromMatrixScale(e){const t=this.setFromMatrixColumn(e,0).length(),n=this.setFromMatrixColumn(e,1).length(),s=this.setFromMatrixColumn(e,2).length();return this.x=t,this.y=n,this.z=s,this}setFromMatrixColumn(e,t){return this.fromArray(e.elements,t*4)}setFromMatrix3Column(e,t){return this.fromArray(e.elements,t*3)}setFromEuler(e){return this.x=e._x,this.y=e._y,this.z=e._z,this}setFromColor(e){return this.x=e.r,this.y=e.g,this.z=e.b,this}equals(e){return e.x===this.x&&e.y===this.y&&e.z===this.z}fromArray(e,t=0){return this.x=e[t],this.y=e[t+1],this.z=e[t+2],this}toArray(e=[],t=0){return e[t]=this.x,e[t+1]=this.y,e[t+2]=this.z,e}fromBufferAttribute(e,t){return this.x=e.getX(t),this.y=e.getY(t),this.z=e.getZ(t),this}random(){return this.x=Math.random(),this.y=Math.random(),this.z=Math.random(),this}randomDirection(){const e=Math.random()*Math.PI*2,t=Math.random()*2-1,n=Math.sqrt(1-t*t);return this.x=n*Math.cos(e),this.y=t,this.z=n*Math.sin(e),this}*[Symbol.iterator](){yield this.x,yield this.y,yield this.z}}const Kr=new U,Al=new xi;class qe{constructor(e,t,n,s,r,a,o,c,l){qe.prototype.isMatrix3=!0,this.elements=[1,0,0,0,1,0,0,0,1],e!==void 0&&this.set(e,t,n,s,r,a,o,c,l)}set(e,t,n,s,r,a,o,c,l){const h=this.elements;return h[0]=e,h[1]=s,h[2]=o,h[3]=t,h[4]=r,h[5]=c,h[6]=n,h[7]=a,h[8]=l,this}identity(){return this.set(1,0,0,0,1,0,0,0,1),this}copy(e){const t=this.elements,n=e.elements;return t[0]=n[0],t[1]=n[1],t[2]=n[2],t[3]=n[3],t[4]=n[4],t[5]=n[5],t[6]=n[6],t[7]=n[7],t[8]=n[8],this}extractBasis(e,t,n){return e.setFromMatrix3Column(this,0),t.setFromMatrix3Column(this,1),n.setFromMatrix3Column(this,2),this}setFromMatrix4(e){const t=e.elements;return this.set(t[0],t[4],t[8],t[1],t[5],t[9],t[2],t[6],t[10]),this}multiply(e){return this.multiplyMatrices(this,e)}premultiply(e){return this.multiplyMatrices(e,this)}multiplyMatrices(e,t){const n=e.elements,s=t.elements,r=this.elements,a=n[0],o=n[3],c=n[6],l=n[1],h=n[4],u=n[7],d=n[2],p=n[5],_=n[8],v=s[0],m=s[3],f=s[6],A=s[1],T=s[4],b=s[7],P=s[2],C=s[5],D=s[8];return r[0]=a*v+o*A+c*P,r[3]=a*m+o*T+c*C,r[6]=a*f+o*b+c*D,r[1]=l*v+h*A+u*P,r[4]=l*m+h*T+u*C,r[7]=l*f+h*b+u*D,r[2]=d*v+p*A+_*P,r[5]=d*m+p*T+_*C,r[8]=d*f+p*b+_*D,this}multiplyScalar(e){const t=this.elements;return t[0]*=e,t[3]*=e,t[6]*=e,t[1]*=e,t[4]*=e,t[7]*=e,t[2]*=e,t[5]*=e,t[8]*=e,this}determinant(){const e=this.elements,t=e[0],n=e[1],s=e[2],r=e[3],a=e[4],o=e[5],c=e[6],l=e[7],h=e[8];return t*a*h-t*o*l-n*r*h+n*o*c+s*r*l-s*a*c}invert(){const e=this.elements,t=e[0],n=e[1],s=e[2],r=e[3],a=e[4],o=e[5],c=e[6],l=e[7],h=e[8],u=h*a-o*l,d=o*c-h*r,p=l*r-a*c,_=t*u+n*d+s*p;if(_===0)return this.set(0,0,0,0,0,0,0,0,0);const v=1/_;return e[0]=u*v,e[1]=(s*l-h*n)*v,e[2]=(o*n-s*a)*v,e[3]=d*v,e[4]=(h*t-s*c)*v,e[5]=(s*r-o*t)*v,e[6]=p*v,e[7]=(n*c-l*t)*v,e[8]=(a*t-n*r)*v,this}transpose(){let e;const t=this.elements;return e=t[1],t[1]=t[3],t[3]=e,e=t[2],t[2]=t[6],t[6]=e,e=t[5],t[5]=t[7],t[7]=e,this}getNormalMatrix(e){return this.setFromMatrix4(e).invert().transpose()}transposeIntoArray(e){const t=this.elements;return e[0]=t[0],e[1]=t[3],e[2]=t[6],e[3]=t[1],e[4]=t[4],e[5]=t[7],e[6]=t[2],e[7]=t[5],e[8]=t[8],this}setUvTransform(e,t,n,s,r,a,o){const c=Math.cos(r),l=Math.sin(r);return this.set(n*c,n*l,-n*(c*a+l*o)+a+e,-s*l,s*c,-s*(-l*a+c*o)+o+t,0,0,1),this}scale(e,t){return this.premultiply(Zr.makeScale(e,t)),this}rotate(e){return this.premultiply(Zr.makeRotation(-e)),this}translate(e,t){return this.premultiply(Zr.makeTranslation(e,t)),this}makeTranslation(e,t){return e.isVector2?this.set(1,0,e.x,0,1,e.y,0,0,1):this.set(1,0,e,0,1,t,0,0,1),this}makeRotation(e){const t=Math.cos(e),n=Math.sin(e);return this.set(t,-n,0,n,t,0,0,0,1),this}makeScale(e,t){return this.set(e,0,0,0,t,0,0,0,1),this}equals(e){const t=this.elements,n=e.elements;for(let s=0;s<9;s++)if(t[s]!==n[s])return!1;return!0}fromArray(e,t=0){for(let n=0;n<9;n++)this.elements[n]=e[n+t];return this}toArray(e=[],t=0){const n=this.elements;return e[t]=n[0],e[t+1]=n[1],e[t+2]=n[2],e[t+3]=n[3],e[t+4]=n[4],e[t+5]=n[5],e[t+6]=n[6],e[t+7]=n[7],e[t+8]=n[8],e}clone(){return new this.constructor().fromArray(this.elements)}}const Zr=new qe;function mh(i){for(let e=i.length-1;e>=0;--e)if(i[e]>=65535)return!0;return!1}function Er(i){return document.createElementNS("http://www.w3.org/1999/xhtml",i)}function tf(){const i=Er("canvas");return i.style.display="block",i}const Rl={};function Es(i){i in Rl||(Rl[i]=!0,console.warn(i))}function nf(i,e,t){return new Promise(function(n,s){function r(){switch(i.clientWaitSync(e,i.SYNC_FLUSH_COMMANDS_BIT,0)){case i.WAIT_FAILED:s();break;case i.TIMEOUT_EXPIRED:setTimeout(r,t);break;default:n()}}setTimeout(r,t)})}const Cl=new qe().set(.4123908,.3575843,.1804808,.212639,.7151687,.0721923,.0193308,.1191948,.9505322),Pl=new qe().set(3.2409699,-1.5373832,-.4986108,-.9692436,1.8759675,.0415551,.0556301,-.203977,1.0569715);function sf(){const i={enabled:!0,workingColorSpace:Ji,spaces:{},convert:function(s,r,a){return this.enabled===!1||r===a||!r||!a||(this.spaces[r].transfer===at&&(s.r=On(s.r),s.g=On(s.g),s.b=On(s.b)),this.spaces[r].primaries!==this.spaces[a].primaries&&(s.applyMatrix3(this.spaces[r].toXYZ),s.applyMatrix3(this.spaces[a].fromXYZ)),this.spaces[a].transfer===at&&(s.r=$i(s.r),s.g=$i(s.g),s.b=$i(s.b))),s},workingToColorSpace:function(s,r){return this.convert(s,this.workingColorSpace,r)},colorSpaceToWorking:function(s,r){return this.convert(s,r,this.workingColorSpace)},getPrimaries:function(s){return this.spaces[s].primaries},getTransfer:function(s){return s===Yn?br:this.spaces[s].transfer},getToneMappingMode:function(s){return this.spaces[s].outputColorSpaceConfig.toneMappingMode||"standard"},getLuminanceCoefficients:function(s,r=this.workingColorSpace){return s.fromArray(this.spaces[r].luminanceCoefficients)},define:function(s){Object.assign(this.spaces,s)},_getMatrix:function(s,r,a){return s.copy(this.spaces[r].toXYZ).multiply(this.spaces[a].fromXYZ)},_getDrawingBufferColorSpace:function(s){return this.spaces[s].outputColorSpaceConfig.drawingBufferColorSpace},_getUnpackColorSpace:function(s=this.workingColorSpace){return this.spaces[s].workingColorSpaceConfig.unpackColorSpace},fromWorkingColorSpace:function(s,r){return Es("THREE.ColorManagement: .fromWorkingColorSpace() has been renamed to .workingToColorSpace()."),i.workingToColorSpace(s,r)},toWorkingColorSpace:function(s,r){return Es("THREE.ColorManagement: .toWorkingColorSpace() has been renamed to .colorSpaceToWorking()."),i.colorSpaceToWorking(s,r)}},e=[.64,.33,.3,.6,.15,.06],t=[.2126,.7152,.0722],n=[.3127,.329];return i.define({[Ji]:{primaries:e,whitePoint:n,transfer:br,toXYZ:Cl,fromXYZ:Pl,luminanceCoefficients:t,workingColorSpaceConfig:{unpackColorSpace:an},outputColorSpaceConfig:{drawingBufferColorSpace:an}},[an]:{primaries:e,whitePoint:n,transfer:at,toXYZ:Cl,fromXYZ:Pl,luminanceCoefficients:t,outputColorSpaceConfig:{drawingBufferColorSpace:an}}}),i}const nt=sf();function On(i){return i<.04045?i*.0773993808:Math.pow(i*.9478672986+.0521327014,2.4)}function $i(i){return i<.0031308?i*12.92:1.055*Math.pow(i,.41666)-.055}let Ai;class rf{static getDataURL(e,t="image/png"){if(/^data:/i.test(e.src)||typeof HTMLCanvasElement>"u")return e.src;let n;if(e instanceof HTMLCanvasElement)n=e;else{Ai===void 0&&(Ai=Er("canvas")),Ai.width=e.width,Ai.height=e.height;const s=Ai.getContext("2d");e instanceof ImageData?s.putImageData(e,0,0):s.drawImage(e,0,0,e.width,e.height),n=Ai}return n.toDataURL(t)}static sRGBToLinear(e){if(typeof HTMLImageElement<"u"&&e instanceof HTMLImageElement||typeof HTMLCanvasElement<"u"&&e instanceof HTMLCanvasElement||typeof ImageBitmap<"u"&&e instanceof ImageBitmap){const t=Er("canvas");t.width=e.width,t.height=e.height;const n=t.getContext("2d");n.drawImage(e,0,0,e.width,e.height);const s=n.getImageData(0,0,e.width,e.height),r=s.data;for(let a=0;a<r.length;a++)r[a]=On(r[a]/255)*255;return n.putImageData(s,0,0),t}else if(e.data){const t=e.data.slice(0);for(let n=0;n<t.length;n++)t instanceof Uint8Array||t instanceof Uint8ClampedArray?t[n]=Math.floor(On(t[n]/255)*255):t[n]=On(t[n]);return{data:t,width:e.width,height:e.height}}else return console.warn("THREE.ImageUtils.sRGBToLinear(): Unsupported image type. No color space conversion applied."),e}}let af=0;class qo{constructor(e=null){this.isSource=!0,Object.defineProperty(this,"id",{value:af++}),this.uuid=Ps(),this.data=e,this.dataReady=!0,this.version=0}getSize(e){const t=this.data;return typeof HTMLVideoElement<"u"&&t instanceof HTMLVideoElement?e.set(t.videoWidth,t.videoHeight,0):t instanceof VideoFrame?e.set(t.displayHeight,t.displayWidth,0):t!==null?e.set(t.width,t.height,t.depth||0):e.set(0,0,0),e}set needsUpdate(e){e===!0&&this.version++}toJSON(e){const t=e===void 0||typeof e=="string";if(!t&&e.images[this.uuid]!==void 0)return e.images[this.uuid];const n={uuid:this.uuid,url:""},s=this.data;if(s!==null){let r;if(Array.isArray(s)){r=[];for(let a=0,o=s.length;a<o;a++)s[a].isDataTexture?r.push(Jr(s[a].image)):r.push(Jr(s[a]))}else r=Jr(s);n.url=r}return t||(e.images[this.uuid]=n),n}}function Jr(i){return typeof HTMLImageElement<"u"&&i instanceof HTMLImageElement||typeof HTMLCanvasElement<"u"&&i instanceof HTMLCanvasElement||typeof ImageBitmap<"u"&&i instanceof ImageBitmap?rf.getDataURL(i):i.data?{data:Array.from(i.data),width:i.width,height:i.height,type:i.data.constructor.name}:(console.warn("THREE.Texture: Unable to serialize Texture."),{})}let of=0;const Qr=new U;class Xt extends wi{constructor(e=Xt.DEFAULT_IMAGE,t=Xt.DEFAULT_MAPPING,n=pi,s=pi,r=vn,a=mi,o=dn,c=Sn,l=Xt.DEFAULT_ANISOTROPY,h=Yn){super(),this.isTexture=!0,Object.defineProperty(this,"id",{value:of++}),this.uuid=Ps(),this.name="",this.source=new qo(e),this.mipmaps=[],this.mapping=t,this.channel=0,this.wrapS=n,this.wrapT=s,this.magFilter=r,this.minFilter=a,this.anisotropy=l,this.format=o,this.internalFormat=null,this.type=c,this.offset=new Ve(0,0),this.repeat=new Ve(1,1),this.center=new Ve(0,0),this.rotation=0,this.matrixAutoUpdate=!0,this.matrix=new qe,this.generateMipmaps=!0,this.premultiplyAlpha=!1,this.flipY=!0,this.unpackAlignment=4,this.colorSpace=h,this.userData={},this.updateRanges=[],this.version=0,this.onUpdate=null,this.renderTarget=null,this.isRenderTargetTexture=!1,this.isArrayTexture=!!(e&&e.depth&&e.depth>1),this.pmremVersion=0}get width(){return this.source.getSize(Qr).x}get height(){return this.source.getSize(Qr).y}get depth(){return this.source.getSize(Qr).z}get image(){return this.source.data}set image(e=null){this.source.data=e}updateMatrix(){this.matrix.setUvTransform(this.offset.x,this.offset.y,this.repeat.x,this.repeat.y,this.rotation,this.center.x,this.center.y)}addUpdateRange(e,t){this.updateRanges.push({start:e,count:t})}clearUpdateRanges(){this.updateRanges.length=0}clone(){return new this.constructor().copy(this)}copy(e){return this.name=e.name,this.source=e.source,this.mipmaps=e.mipmaps.slice(0),this.mapping=e.mapping,this.channel=e.channel,this.wrapS=e.wrapS,this.wrapT=e.wrapT,this.magFilter=e.magFilter,this.minFilter=e.minFilter,this.anisotropy=e.anisotropy,this.format=e.format,this.internalFormat=e.internalFormat,this.type=e.type,this.offset.copy(e.offset),this.repeat.copy(e.repeat),this.center.copy(e.center),this.rotation=e.rotation,this.matrixAutoUpdate=e.matrixAutoUpdate,this.matrix.copy(e.matrix),this.generateMipmaps=e.generateMipmaps,this.premultiplyAlpha=e.premultiplyAlpha,this.flipY=e.flipY,this.unpackAlignment=e.unpackAlignment,this.colorSpace=e.colorSpace,this.renderTarget=e.renderTarget,this.isRenderTargetTexture=e.isRenderTargetTexture,this.isArrayTexture=e.isArrayTexture,this.userData=JSON.parse(JSON.stringify(e.userData)),this.needsUpdate=!0,this}setValues(e){for(const t in e){const n=e[t];if(n===void 0){console.warn(`THREE.Texture.setValues(): parameter '${t}' has value of undefined.`);continue}const s=this[t];if(s===void 0){console.warn(`THREE.Texture.setValues(): property '${t}' does not exist.`);continue}s&&n&&s.isVector2&&n.isVector2||s&&n&&s.isVector3&&n.isVector3||s&&n&&s.isMatrix3&&n.isMatrix3?s.copy(n):this[t]=n}}toJSON(e){const t=e===void 0||typeof e=="string";if(!t&&e.textures[this.uuid]!==void 0)return e.textures[this.uuid];const n={metadata:{version:4.7,type:"Texture",generator:"Texture.toJSON"},uuid:this.uuid,name:this.name,image:this.source.toJSON(e).uuid,mapping:this.mapping,channel:this.channel,repeat:[this.repeat.x,this.repeat.y],offset:[this.offset.x,this.offset.y],center:[this.center.x,this.center.y],rotation:this.rotation,wrap:[this.wrapS,this.wrapT],format:this.format,internalFormat:this.internalFormat,type:this.type,colorSpace:this.colorSpace,minFilter:this.minFilter,magFilter:this.magFilter,anisotropy:this.anisotropy,flipY:this.flipY,generateMipmaps:this.generateMipmaps,premultiplyAlpha:this.premultiplyAlpha,unpackAlignment:this.unpackAlignment};return Object.keys(this.userData).length>0&&(n.userData=this.userData),t||(e.textures[this.uuid]=n),n}dispose(){this.dispatchEvent({type:"dispose"})}transformUv(e){if(this.mapping!==sh)return e;if(e.applyMatrix3(this.matrix),e.x<0||e.x>1)switch(this.wrapS){case Wa:e.x=e.x-Math.floor(e.x);break;case pi:e.x=e.x<0?0:1;break;case $a:Math.abs(Math.floor(e.x)%2)===1?e.x=Math.ceil(e.x)-e.x:e.x=e.x-Math.floor(e.x);break}if(e.y<0||e.y>1)switch(this.wrapT){case Wa:e.y=e.y-Math.floor(e.y);break;case pi:e.y=e.y<0?0:1;break;case $a:Math.abs(Math.floor(e.y)%2)===1?e.y=Math.ceil(e.y)-e.y:e.y=e.y-Math.floor(e.y);break}return this.flipY&&(e.y=1-e.y),e}set needsUpdate(e){e===!0&&(this.version++,this.source.needsUpdate=!0)}set needsPMREMUpdate(e){e===!0&&this.pmremVersion++}}Xt.DEFAULT_IMAGE=null;Xt.DEFAULT_MAPPING=sh;Xt.DEFAULT_ANISOTROPY=1;class Mt{constructor(e=0,t=0,n=0,s=1){Mt.prototype.isVector4=!0,this.x=e,this.y=t,this.z=n,this.w=s}get width(){return this.z}set width(e){this.z=e}get height(){return this.w}set height(e){this.w=e}set(e,t,n,s){return this.x=e,this.y=t,this.z=n,this.w=s,this}setScalar(e){return this.x=e,this.y=e,this.z=e,this.w=e,this}setX(e){return this.x=e,this}setY(e){return this.y=e,this}setZ(e){return this.z=e,this}setW(e){return this.w=e,this}setComponent(e,t){switch(e){case 0:this.x=t;break;case 1:this.y=t;break;case 2:this.z=t;break;case 3:this.w=t;break;default:throw new Error("index is out of range: "+e)}return this}getComponent(e){switch(e){case 0:return this.x;case 1:return this.y;case 2:return this.z;case 3:return this.w;default:throw new Error("index is out of range: "+e)}}clone(){return new this.constructor(this.x,this.y,this.z,this.w)}copy(e){return this.x=e.x,this.y=e.y,this.z=e.z,this.w=e.w!==void 0?e.w:1,this}add(e){return this.x+=e.x,this.y+=e.y,this.z+=e.z,this.w+=e.w,this}addScalar(e){return this.x+=e,this.y+=e,this.z+=e,this.w+=e,this}addVectors(e,t){return this.x=e.x+t.x,this.y=e.y+t.y,this.z=e.z+t.z,this.w=e.w+t.w,this}addScaledVector(e,t){return this.x+=e.x*t,this.y+=e.y*t,this.z+=e.z*t,this.w+=e.w*t,this}sub(e){return this.x-=e.x,this.y-=e.y,this.z-=e.z,this.w-=e.w,this}subScalar(e){return this.x-=e,this.y-=e,this.z-=e,this.w-=e,this}subVectors(e,t){return this.x=e.x-t.x,this.y=e.y-t.y,this.z=e.z-t.z,this.w=e.w-t.w,this}multiply(e){return this.x*=e.x,this.y*=e.y,this.z*=e.z,this.w*=e.w,this}multiplyScalar(e){return this.x*=e,this.y*=e,this.z*=e,this.w*=e,this}applyMatrix4(e){const t=this.x,n=this.y,s=this.z,r=this.w,a=e.elements;return this.x=a[0]*t+a[4]*n+a[8]*s+a[12]*r,this.y=a[1]*t+a[5]*n+a[9]*s+a[13]*r,this.z=a[2]*t+a[6]*n+a[10]*s+a[14]*r,this.w=a[3]*t+a[7]*n+a[11]*s+a[15]*r,this}divide(e){return this.x/=e.x,this.y/=e.y,this.z/=e.z,this.w/=e.w,this}divideScalar(e){return this.multiplyScalar(1/e)}setAxisAngleFromQuaternion(e){this.w=2*Math.acos(e.w);const t=Math.sqrt(1-e.w*e.w);return t<1e-4?(this.x=1,this.y=0,this.z=0):(this.x=e.x/t,this.y=e.y/t,this.z=e.z/t),this}setAxisAngleFromRotationMatrix(e){let t,n,s,r;const c=e.elements,l=c[0],h=c[4],u=c[8],d=c[1],p=c[5],_=c[9],v=c[2],m=c[6],f=c[10];if(Math.abs(h-d)<.01&&Math.abs(u-v)<.01&&Math.abs(_-m)<.01){if(Math.abs(h+d)<.1&&Math.abs(u+v)<.1&&Math.abs(_+m)<.1&&Math.abs(l+p+f-3)<.1)return this.set(1,0,0,0),this;t=Math.PI;const T=(l+1)/2,b=(p+1)/2,P=(f+1)/2,C=(h+d)/4,D=(u+v)/4,N=(_+m)/4;return T>b&&T>P?T<.01?(n=0,s=.707106781,r=.707106781):(n=Math.sqrt(T),s=C/n,r=D/n):b>P?b<.01?(n=.707106781,s=0,r=.707106781):(s=Math.sqrt(b),n=C/s,r=N/s):P<.01?(n=.707106781,s=.707106781,r=0):(r=Math.sqrt(P),n=D/r,s=N/r),this.set(n,s,r,t),this}let A=Math.sqrt((m-_)*(m-_)+(u-v)*(u-v)+(d-h)*(d-h));return Math.abs(A)<.001&&(A=1),this.x=(m-_)/A,this.y=(u-v)/A,this.z=(d-h)/A,this.w=Math.acos((l+p+f-1)/2),this}setFromMatrixPosition(e){const t=e.elements;return this.x=t[12],this.y=t[13],this.z=t[14],this.w=t[15],this}min(e){return this.x=Math.min(this.x,e.x),this.y=Math.min(this.y,e.y),this.z=Math.min(this.z,e.z),this.w=Math.min(this.w,e.w),this}max(e){return this.x=Math.max(this.x,e.x),this.y=Math.max(this.y,e.y),this.z=Math.max(this.z,e.z),this.w=Math.max(this.w,e.w),this}clamp(e,t){return this.x=Ze(this.x,e.x,t.x),this.y=Ze(this.y,e.y,t.y),this.z=Ze(this.z,e.z,t.z),this.w=Ze(this.w,e.w,t.w),this}clampScalar(e,t){return this.x=Ze(this.x,e,t),this.y=Ze(this.y,e,t),this.z=Ze(this.z,e,t),this.w=Ze(this.w,e,t),this}clampLength(e,t){const n=this.length();return this.divideScalar(n||1).multiplyScalar(Ze(n,e,t))}floor(){return this.x=Math.floor(this.x),this.y=Math.floor(this.y),this.z=Math.floor(this.z),this.w=Math.floor(this.w),this}ceil(){return this.x=Math.ceil(this.x),this.y=Math.ceil(this.y),this.z=Math.ceil(this.z),this.w=Math.ceil(this.w),this}round(){return this.x=Math.round(this.x),this.y=Math.round(this.y),this.z=Math.round(this.z),this.w=Math.round(this.w),this}roundToZero(){return this.x=Math.trunc(this.x),this.y=Math.trunc(this.y),this.z=Math.trunc(this.z),this.w=Math.trunc(this.w),this}negate(){return this.x=-this.x,this.y=-this.y,this.z=-this.z,this.w=-this.w,this}dot(e){return this.x*e.x+this.y*e.y+this.z*e.z+this.w*e.w}lengthSq(){return this.x*this.x+this.y*this.y+this.z*this.z+this.w*this.w}length(){return Math.sqrt(this.x*this.x+this.y*this.y+this.z*this.z+this.w*this.w)}manhattanLength(){return Math.abs(this.x)+Math.abs(this.y)+Math.abs(this.z)+Math.abs(this.w)}normalize(){return this.divideScalar(this.length()||1)}setLength(e){return this.normalize().multiplyScalar(e)}lerp(e,t){return this.x+=(e.x-this.x)*t,this.y+=(e.y-this.y)*t,this.z+=(e.z-this.z)*t,this.w+=(e.w-this.w)*t,this}lerpVectors(e,t,n){return this.x=e.x+(t.x-e.x)*n,this.y=e.y+(t.y-e.y)*n,this.z=e.z+(t.z-e.z)*n,this.w=e.w+(t.w-e.w)*n,this}equals(e){return e.x===this.x&&e.y===this.y&&e.z===this.z&&e.w===this.w}fromArray(e,t=0){return this.x=e[t],this.y=e[t+1],this.z=e[t+2],this.w=e[t+3],this}toArray(e=[],t=0){return e[t]=this.x,e[t+1]=this.y,e[t+2]=this.z,e[t+3]=this.w,e}fromBufferAttribute(e,t){return this.x=e.getX(t),this.y=e.getY(t),this.z=e.getZ(t),this.w=e.getW(t),this}random(){return this.x=Math.random(),this.y=Math.random(),this.z=Math.random(),this.w=Math.random(),this}*[Symbol.iterator](){yield this.x,yield this.y,yield this.z,yield this.w}}class lf extends wi{constructor(e=1,t=1,n={}){super(),n=Object.assign({generateMipmaps:!1,internalFormat:null,minFilter:vn,depthBuffer:!0,stencilBuffer:!1,resolveDepthBuffer:!0,resolveStencilBuffer:!0,depthTexture:null,samples:0,count:1,depth:1,multiview:!1},n),this.isRenderTarget=!0,this.width=e,this.height=t,this.depth=n.depth,this.scissor=new Mt(0,0,e,t),this.scissorTest=!1,this.viewport=new Mt(0,0,e,t);const s={width:e,height:t,depth:n.depth},r=new Xt(s);this.textures=[];const a=n.count;for(let o=0;o<a;o++)this.textures[o]=r.clone(),this.textures[o].isRenderTargetTexture=!0,this.textures[o].renderTarget=this;this._setTextureOptions(n),this.depthBuffer=n.depthBuffer,this.stencilBuffer=n.stencilBuffer,this.resolveDepthBuffer=n.resolveDepthBuffer,this.resolveStencilBuffer=n.resolveStencilBuffer,this._depthTexture=null,this.depthTexture=n.depthTexture,this.samples=n.samples,this.multiview=n.multiview}_setTextureOptions(e={}){const t={minFilter:vn,generateMipmaps:!1,flipY:!1,internalFormat:null};e.mapping!==void 0&&(t.mapping=e.mapping),e.wrapS!==void 0&&(t.wrapS=e.wrapS),e.wrapT!==void 0&&(t.wrapT=e.wrapT),e.wrapR!==void 0&&(t.wrapR=e.wrapR),e.magFilter!==void 0&&(t.magFilter=e.magFilter),e.minFilter!==void 0&&(t.minFilter=e.minFilter),e.format!==void 0&&(t.format=e.format),e.type!==void 0&&(t.type=e.type),e.anisotropy!==void 0&&(t.anisotropy=e.anisotropy),e.colorSpace!==void 0&&(t.colorSpace=e.colorSpace),e.flipY!==void 0&&(t.flipY=e.flipY),e.generateMipmaps!==void 0&&(t.generateMipmaps=e.generateMipmaps),e.internalFormat!==void 0&&(t.internalFormat=e.internalFormat);for(let n=0;n<this.textures.length;n++)this.textures[n].setValues(t)}get texture(){return this.textures[0]}set texture(e){this.textures[0]=e}set depthTexture(e){this._depthTexture!==null&&(this._depthTexture.renderTarget=null),e!==null&&(e.renderTarget=this),this._depthTexture=e}get depthTexture(){return this._depthTexture}setSize(e,t,n=1){if(this.width!==e||this.height!==t||this.depth!==n){this.width=e,this.height=t,this.depth=n;for(let s=0,r=this.textures.length;s<r;s++)this.textures[s].image.width=e,this.textures[s].image.height=t,this.textures[s].image.depth=n,this.textures[s].isArrayTexture=this.textures[s].image.depth>1;this.dispose()}this.viewport.set(0,0,e,t),this.scissor.set(0,0,e,t)}clone(){return new this.constructor().copy(this)}copy(e){this.width=e.width,this.height=e.height,this.depth=e.depth,this.scissor.copy(e.scissor),this.scissorTest=e.scissorTest,this.viewport.copy(e.viewport),this.textures.length=0;for(let t=0,n=e.textures.length;t<n;t++){this.textures[t]=e.textures[t].clone(),this.textures[t].isRenderTargetTexture=!0,this.textures[t].renderTarget=this;const s=Object.assign({},e.textures[t].image);this.textures[t].source=new qo(s)}return this.depthBuffer=e.depthBuffer,this.stencilBuffer=e.stencilBuffer,this.resolveDepthBuffer=e.resolveDepthBuffer,this.resolveStencilBuffer=e.resolveStencilBuffer,e.depthTexture!==null&&(this.depthTexture=e.depthTexture.clone()),this.samples=e.samples,this}dispose(){this.dispatchEvent({type:"dispose"})}}class yi extends lf{constructor(e=1,t=1,n={}){super(e,t,n),this.isWebGLRenderTarget=!0}}class gh extends Xt{constructor(e=null,t=1,n=1,s=1){super(null),this.isDataArrayTexture=!0,this.image={data:e,width:t,height:n,depth:s},this.magFilter=fn,this.minFilter=fn,this.wrapR=pi,this.generateMipmaps=!1,this.flipY=!1,this.unpackAlignment=1,this.layerUpdates=new Set}addLayerUpdate(e){this.layerUpdates.add(e)}clearLayerUpdates(){this.layerUpdates.clear()}}class cf extends Xt{constructor(e=null,t=1,n=1,s=1){super(null),this.isData3DTexture=!0,this.image={data:e,width:t,height:n,depth:s},this.magFilter=fn,this.minFilter=fn,this.wrapR=pi,this.generateMipmaps=!1,this.flipY=!1,this.unpackAlignment=1}}class Ds{constructor(e=new U(1/0,1/0,1/0),t=new U(-1/0,-1/0,-1/0)){this.isBox3=!0,this.min=e,this.max=t}set(e,t){return this.min.copy(e),this.max.copy(t),this}setFromArray(e){this.makeEmpty();for(let t=0,n=e.length;t<n;t+=3)this.expandByPoint(ln.fromArray(e,t));return this}setFromBufferAttribute(e){this.makeEmpty();for(let t=0,n=e.count;t<n;t++)this.expandByPoint(ln.fromBufferAttribute(e,t));return this}setFromPoints(e){this.makeEmpty();for(let t=0,n=e.length;t<n;t++)this.expandByPoint(e[t]);return this}setFromCenterAndSize(e,t){const n=ln.copy(t).multiplyScalar(.5);return this.min.copy(e).sub(n),this.max.copy(e).add(n),this}setFromObject(e,t=!1){return this.makeEmpty(),this.expandByObject(e,t)}clone(){return new this.constructor().copy(this)}copy(e){return this.min.copy(e.min),this.max.copy(e.max),this}makeEmpty(){return this.min.x=this.min.y=this.min.z=1/0,this.max.x=this.max.y=this.max.z=-1/0,this}isEmpty(){return this.max.x<this.min.x||this.max.y<this.min.y||this.max.z<this.min.z}getCenter(e){return this.isEmpty()?e.set(0,0,0):e.addVectors(this.min,this.max).multiplyScalar(.5)}getSize(e){return this.isEmpty()?e.set(0,0,0):e.subVectors(this.max,this.min)}expandByPoint(e){return this.min.min(e),this.max.max(e),this}expandByVector(e){return this.min.sub(e),this.max.add(e),this}expandByScalar(e){return this.min.addScalar(-e),this.max.addScalar(e),this}expandByObject(e,t=!1){e.updateWorldMatrix(!1,!1);const n=e.geometry;if(n!==void 0){const r=n.getAttribute("position");if(t===!0&&r!==void 0&&e.isInstancedMesh!==!0)for(let a=0,o=r.count;a<o;a++)e.isMesh===!0?e.getVertexPosition(a,ln):ln.fromBufferAttribute(r,a),ln.applyMatrix4(e.matrixWorld),this.expandByPoint(ln);else e.boundingBox!==void 0?(e.boundingBox===null&&e.computeBoundingBox(),Hs.copy(e.boundingBox)):(n.boundingBox===null&&n.computeBoundingBox(),Hs.copy(n.boundingBox)),Hs.applyMatrix4(e.matrixWorld),this.union(Hs)}const s=e.children;for(let r=0,a=s.length;r<a;r++)this.expandByObject(s[r],t);return this}containsPoint(e){return e.x>=this.min.x&&e.x<=this.max.x&&e.y>=this.min.y&&e.y<=this.max.y&&e.z>=this.min.z&&e.z<=this.max.z}containsBox(e){return this.min.x<=e.min.x&&e.max.x<=this.max.x&&this.min.y<=e.min.y&&e.max.y<=this.max.y&&this.min.z<=e.min.z&&e.max.z<=this.max.z}getParameter(e,t){return t.set((e.x-this.min.x)/(this.max.x-this.min.x),(e.y-this.min.y)/(this.max.y-this.min.y),(e.z-this.min.z)/(this.max.z-this.min.z))}intersectsBox(e){return e.max.x>=this.min.x&&e.min.x<=this.max.x&&e.max.y>=this.min.y&&e.min.y<=this.max.y&&e.max.z>=this.min.z&&e.min.z<=this.max.z}intersectsSphere(e){return this.clampPoint(e.center,ln),ln.distanceToSquared(e.center)<=e.radius*e.radius}intersectsPlane(e){let t,n;return e.normal.x>0?(t=e.normal.x*this.min.x,n=e.normal.x*this.max.x):(t=e.normal.x*this.max.x,n=e.normal.x*this.min.x),e.normal.y>0?(t+=e.normal.y*this.min.y,n+=e.normal.y*this.max.y):(t+=e.normal.y*this.max.y,n+=e.normal.y*this.min.y),e.normal.z>0?(t+=e.normal.z*this.min.z,n+=e.normal.z*this.max.z):(t+=e.normal.z*this.max.z,n+=e.normal.z*this.min.z),t<=-e.constant&&n>=-e.constant}intersectsTriangle(e){if(this.isEmpty())return!1;this.getCenter(ls),Vs.subVectors(this.max,ls),Ri.subVectors(e.a,ls),Ci.subVectors(e.b,ls),Pi.subVectors(e.c,ls),Bn.subVectors(Ci,Ri),zn.subVectors(Pi,Ci),ri.subVectors(Ri,Pi);let t=[0,-Bn.z,Bn.y,0,-zn.z,zn.y,0,-ri.z,ri.y,Bn.z,0,-Bn.x,zn.z,0,-zn.x,ri.z,0,-ri.x,-Bn.y,Bn.x,0,-zn.y,zn.x,0,-ri.y,ri.x,0];return!ea(t,Ri,Ci,Pi,Vs)||(t=[1,0,0,0,1,0,0,0,1],!ea(t,Ri,Ci,Pi,Vs))?!1:(Gs.crossVectors(Bn,zn),t=[Gs.x,Gs.y,Gs.z],ea(t,Ri,Ci,Pi,Vs))}clampPoint(e,t){return t.copy(e).clamp(this.min,this.max)}distanceToPoint(e){return this.clampPoint(e,ln).distanceTo(e)}getBoundingSphere(e){return this.isEmpty()?e.makeEmpty():(this.getCenter(e.center),e.radius=this.getSize(ln).length()*.5),e}intersect(e){return this.min.max(e.min),this.max.min(e.max),this.isEmpty()&&this.makeEmpty(),this}union(e){return this.min.min(e.min),this.max.max(e.max),this}applyMatrix4(e){return this.isEmpty()?this:(An[0].set(this.min.x,this.min.y,this.min.z).applyMatrix4(e),An[1].set(this.min.x,this.min.y,this.max.z).applyMatrix4(e),An[2].set(this.min.x,this.max.y,this.min.z).applyMatrix4(e),An[3].set(this.min.x,this.max.y,this.max.z).applyMatrix4(e),An[4].set(this.max.x,this.min.y,this.min.z).applyMatrix4(e),An[5].set(this.max.x,this.min.y,this.max.z).applyMatrix4(e),An[6].set(this.max.x,this.max.y,this.min.z).applyMatrix4(e),An[7].set(this.max.x,this.max.y,this.max.z).applyMatrix4(e),this.setFromPoints(An),this)}translate(e){return this.min.add(e),this.max.add(e),this}equals(e){return e.min.equals(this.min)&&e.max.equals(this.max)}toJSON(){return{min:this.min.toArray(),max:this.max.toArray()}}fromJSON(e){return this.min.fromArray(e.min),this.max.fromArray(e.max),this}}const An=[new U,new U,new U,new U,new U,new U,new U,new U],ln=new U,Hs=new Ds,Ri=new U,Ci=new U,Pi=new U,Bn=new U,zn=new U,ri=new U,ls=new U,Vs=new U,Gs=new U,ai=new U;function ea(i,e,t,n,s){for(let r=0,a=i.length-3;r<=a;r+=3){ai.fromArray(i,r);const o=s.x*Math.abs(ai.x)+s.y*Math.abs(ai.y)+s.z*Math.abs(ai.z),c=e.dot(ai),l=t.dot(ai),h=n.dot(ai);if(Math.max(-Math.max(c,l,h),Math.min(c,l,h))>o)return!1}return!0}const hf=new Ds,cs=new U,ta=new U;class ts{constructor(e=new U,t=-1){this.isSphere=!0,this.center=e,this.radius=t}set(e,t){return this.center.copy(e),this.radius=t,this}setFromPoints(e,t){const n=this.center;t!==void 0?n.copy(t):hf.setFromPoints(e).getCenter(n);let s=0;for(let r=0,a=e.length;r<a;r++)s=Math.max(s,n.distanceToSquared(e[r]));return this.radius=Math.sqrt(s),this}copy(e){return this.center.copy(e.center),this.radius=e.radius,this}isEmpty(){return this.radius<0}makeEmpty(){return this.center.set(0,0,0),this.radius=-1,this}containsPoint(e){return e.distanceToSquared(this.center)<=this.radius*this.radius}distanceToPoint(e){return e.distanceTo(this.center)-this.radius}intersectsSphere(e){const t=this.radius+e.radius;return e.center.distanceToSquared(this.center)<=t*t}intersectsBox(e){return e.intersectsSphere(this)}intersectsPlane(e){return Math.abs(e.distanceToPoint(this.center))<=this.radius}clampPoint(e,t){const n=this.center.distanceToSquared(e);return t.copy(e),n>this.radius*this.radius&&(t.sub(this.center).normalize(),t.multiplyScalar(this.radius).add(this.center)),t}getBoundingBox(e){return this.isEmpty()?(e.makeEmpty(),e):(e.set(this.center,this.center),e.expandByScalar(this.radius),e)}applyMatrix4(e){return this.center.applyMatrix4(e),this.radius=this.radius*e.getMaxScaleOnAxis(),this}translate(e){return this.center.add(e),this}expandByPoint(e){if(this.isEmpty())return this.center.copy(e),this.radius=0,this;cs.subVectors(e,this.center);const t=cs.lengthSq();if(t>this.radius*this.radius){const n=Math.sqrt(t),s=(n-this.radius)*.5;this.center.addScaledVector(cs,s/n),this.radius+=s}return this}union(e){return e.isEmpty()?this:this.isEmpty()?(this.copy(e),this):(this.center.equals(e.center)===!0?this.radius=Math.max(this.radius,e.radius):(ta.subVectors(e.center,this.center).setLength(e.radius),this.expandByPoint(cs.copy(e.center).add(ta)),this.expandByPoint(cs.copy(e.center).sub(ta))),this)}equals(e){return e.center.equals(this.center)&&e.radius===this.radius}clone(){return new this.constructor().copy(this)}toJSON(){return{radius:this.radius,center:this.center.toArray()}}fromJSON(e){return this.radius=e.radius,this.center.fromArray(e.center),this}}const Rn=new U,na=new U,Ws=new U,Hn=new U,ia=new U,$s=new U,sa=new U;class Ls{constructor(e=new U,t=new U(0,0,-1)){this.origin=e,this.direction=t}set(e,t){return this.origin.copy(e),this.direction.copy(t),this}copy(e){return this.origin.copy(e.origin),this.direction.copy(e.direction),this}at(e,t){return t.copy(this.origin).addScaledVector(this.direction,e)}lookAt(e){return this.direction.copy(e).sub(this.origin).normalize(),this}recast(e){return this.origin.copy(this.at(e,Rn)),this}closestPointToPoint(e,t){t.subVectors(e,this.origin);const n=t.dot(this.direction);return n<0?t.copy(this.origin):t.copy(this.origin).addScaledVector(this.direction,n)}distanceToPoint(e){return Math.sqrt(this.distanceSqToPoint(e))}distanceSqToPoint(e){const t=Rn.subVectors(e,this.origin).dot(this.direction);return t<0?this.origin.distanceToSquared(e):(Rn.copy(this.origin).addScaledVector(this.direction,t),Rn.distanceToSquared(e))}distanceSqToSegment(e,t,n,s){na.copy(e).add(t).multiplyScalar(.5),Ws.copy(t).sub(e).normalize(),Hn.copy(this.origin).sub(na);const r=e.distanceTo(t)*.5,a=-this.direction.dot(Ws),o=Hn.dot(this.direction),c=-Hn.dot(Ws),l=Hn.lengthSq(),h=Math.abs(1-a*a);let u,d,p,_;if(h>0)if(u=a*c-o,d=a*o-c,_=r*h,u>=0)if(d>=-_)if(d<=_){const v=1/h;u*=v,d*=v,p=u*(u+a*d+2*o)+d*(a*u+d+2*c)+l}else d=r,u=Math.max(0,-(a*d+o)),p=-u*u+d*(d+2*c)+l;else d=-r,u=Math.max(0,-(a*d+o)),p=-u*u+d*(d+2*c)+l;else d<=-_?(u=Math.max(0,-(-a*r+o)),d=u>0?-r:Math.min(Math.max(-r,-c),r),p=-u*u+d*(d+2*c)+l):d<=_?(u=0,d=Math.min(Math.max(-r,-c),r),p=d*(d+2*c)+l):(u=Math.max(0,-(a*r+o)),d=u>0?r:Math.min(Math.max(-r,-c),r),p=-u*u+d*(d+2*c)+l);else d=a>0?-r:r,u=Math.max(0,-(a*d+o)),p=-u*u+d*(d+2*c)+l;return n&&n.copy(this.origin).addScaledVector(this.direction,u),s&&s.copy(na).addScaledVector(Ws,d),p}intersectSphere(e,t){Rn.subVectors(e.center,this.origin);const n=Rn.dot(this.direction),s=Rn.dot(Rn)-n*n,r=e.radius*e.radius;if(s>r)return null;const a=Math.sqrt(r-s),o=n-a,c=n+a;return c<0?null:o<0?this.at(c,t):this.at(o,t)}intersectsSphere(e){return e.radius<0?!1:this.distanceSqToPoint(e.center)<=e.radius*e.radius}distanceToPlane(e){const t=e.normal.dot(this.direction);if(t===0)return e.distanceToPoint(this.origin)===0?0:null;const n=-(this.origin.dot(e.normal)+e.constant)/t;return n>=0?n:null}intersectPlane(e,t){const n=this.distanceToPlane(e);return n===null?null:this.at(n,t)}intersectsPlane(e){const t=e.distanceToPoint(this.origin);return t===0||e.normal.dot(this.direction)*t<0}intersectBox(e,t){let n,s,r,a,o,c;const l=1/this.direction.x,h=1/this.direction.y,u=1/this.direction.z,d=this.origin;return l>=0?(n=(e.min.x-d.x)*l,s=(e.max.x-d.x)*l):(n=(e.max.x-d.x)*l,s=(e.min.x-d.x)*l),h>=0?(r=(e.min.y-d.y)*h,a=(e.max.y-d.y)*h):(r=(e.max.y-d.y)*h,a=(e.min.y-d.y)*h),n>a||r>s||((r>n||isNaN(n))&&(n=r),(a<s||isNaN(s))&&(s=a),u>=0?(o=(e.min.z-d.z)*u,c=(e.max.z-d.z)*u):(o=(e.max.z-d.z)*u,c=(e.min.z-d.z)*u),n>c||o>s)||((o>n||n!==n)&&(n=o),(c<s||s!==s)&&(s=c),s<0)?null:this.at(n>=0?n:s,t)}intersectsBox(e){return this.intersectBox(e,Rn)!==null}intersectTriangle(e,t,n,s,r){ia.subVectors(t,e),$s.subVectors(n,e),sa.crossVectors(ia,$s);let a=this.direction.dot(sa),o;if(a>0){if(s)return null;o=1}else if(a<0)o=-1,a=-a;else return null;Hn.subVectors(this.origin,e);const c=o*this.direction.dot($s.crossVectors(Hn,$s));if(c<0)return null;const l=o*this.direction.dot(ia.cross(Hn));if(l<0||c+l>a)return null;const h=-o*Hn.dot(sa);return h<0?null:this.at(h/a,r)}applyMatrix4(e){return this.origin.applyMatrix4(e),this.direction.transformDirection(e),this}equals(e){return e.origin.equals(this.origin)&&e.direction.equals(this.direction)}clone(){return new this.constructor().copy(this)}}class mt{constructor(e,t,n,s,r,a,o,c,l,h,u,d,p,_,v,m){mt.prototype.isMatrix4=!0,this.elements=[1,0,0,0,0,1,0,0,0,0,1,0,0,0,0,1],e!==void 0&&this.set(e,t,n,s,r,a,o,c,l,h,u,d,p,_,v,m)}set(e,t,n,s,r,a,o,c,l,h,u,d,p,_,v,m){const f=this.elements;return f[0]=e,f[4]=t,f[8]=n,f[12]=s,f[1]=r,f[5]=a,f[9]=o,f[13]=c,f[2]=l,f[6]=h,f[10]=u,f[14]=d,f[3]=p,f[7]=_,f[11]=v,f[15]=m,this}identity(){return this.set(1,0,0,0,0,1,0,0,0,0,1,0,0,0,0,1),this}clone(){return new mt().fromArray(this.elements)}copy(e){const t=this.elements,n=e.elements;return t[0]=n[0],t[1]=n[1],t[2]=n[2],t[3]=n[3],t[4]=n[4],t[5]=n[5],t[6]=n[6],t[7]=n[7],t[8]=n[8],t[9]=n[9],t[10]=n[10],t[11]=n[11],t[12]=n[12],t[13]=n[13],t[14]=n[14],t[15]=n[15],this}copyPosition(e){const t=this.elements,n=e.elements;return t[12]=n[12],t[13]=n[13],t[14]=n[14],this}setFromMatrix3(e){const t=e.elements;return this.set(t[0],t[3],t[6],0,t[1],t[4],t[7],0,t[2],t[5],t[8],0,0,0,0,1),this}extractBasis(e,t,n){return e.setFromMatrixColumn(this,0),t.setFromMatrixColumn(this,1),n.setFromMatrixColumn(this,2),this}makeBasis(e,t,n){return this.set(e.x,t.x,n.x,0,e.y,t.y,n.y,0,e.z,t.z,n.z,0,0,0,0,1),this}extractRotation(e){const t=this.elements,n=e.elements,s=1/Di.setFromMatrixColumn(e,0).length(),r=1/Di.setFromMatrixColumn(e,1).length(),a=1/Di.setFromMatrixColumn(e,2).length();return t[0]=n[0]*s,t[1]=n[1]*s,t[2]=n[2]*s,t[3]=0,t[4]=n[4]*r,t[5]=n[5]*r,t[6]=n[6]*r,t[7]=0,t[8]=n[8]*a,t[9]=n[9]*a,t[10]=n[10]*a,t[11]=0,t[12]=0,t[13]=0,t[14]=0,t[15]=1,this}makeRotationFromEuler(e){const t=this.elements,n=e.x,s=e.y,r=e.z,a=Math.cos(n),o=Math.sin(n),c=Math.cos(s),l=Math.sin(s),h=Math.cos(r),u=Math.sin(r);if(e.order==="XYZ"){const d=a*h,p=a*u,_=o*h,v=o*u;t[0]=c*h,t[4]=-c*u,t[8]=l,t[1]=p+_*l,t[5]=d-v*l,t[9]=-o*c,t[2]=v-d*l,t[6]=_+p*l,t[10]=a*c}else if(e.order==="YXZ"){const d=c*h,p=c*u,_=l*h,v=l*u;t[0]=d+v*o,t[4]=_*o-p,t[8]=a*l,t[1]=a*u,t[5]=a*h,t[9]=-o,t[2]=p*o-_,t[6]=v+d*o,t[10]=a*c}else if(e.order==="ZXY"){const d=c*h,p=c*u,_=l*h,v=l*u;t[0]=d-v*o,t[4]=-a*u,t[8]=_+p*o,t[1]=p+_*o,t[5]=a*h,t[9]=v-d*o,t[2]=-a*l,t[6]=o,t[10]=a*c}else if(e.order==="ZYX"){const d=a*h,p=a*u,_=o*h,v=o*u;t[0]=c*h,t[4]=_*l-p,t[8]=d*l+v,t[1]=c*u,t[5]=v*l+d,t[9]=p*l-_,t[2]=-l,t[6]=o*c,t[10]=a*c}else if(e.order==="YZX"){const d=a*c,p=a*l,_=o*c,v=o*l;t[0]=c*h,t[4]=v-d*u,t[8]=_*u+p,t[1]=u,t[5]=a*h,t[9]=-o*h,t[2]=-l*h,t[6]=p*u+_,t[10]=d-v*u}else if(e.order==="XZY"){const d=a*c,p=a*l,_=o*c,v=o*l;t[0]=c*h,t[4]=-u,t[8]=l*h,t[1]=d*u+v,t[5]=a*h,t[9]=p*u-_,t[2]=_*u-p,t[6]=o*h,t[10]=v*u+d}return t[3]=0,t[7]=0,t[11]=0,t[12]=0,t[13]=0,t[14]=0,t[15]=1,this}makeRotationFromQuaternion(e){return this.compose(uf,e,df)}lookAt(e,t,n){const s=this.elements;return Zt.subVectors(e,t),Zt.lengthSq()===0&&(Zt.z=1),Zt.normalize(),Vn.crossVectors(n,Zt),Vn.lengthSq()===0&&(Math.abs(n.z)===1?Zt.x+=1e-4:Zt.z+=1e-4,Zt.normalize(),Vn.crossVectors(n,Zt)),Vn.normalize(),qs.crossVectors(Zt,Vn),s[0]=Vn.x,s[4]=qs.x,s[8]=Zt.x,s[1]=Vn.y,s[5]=qs.y,s[9]=Zt.y,s[2]=Vn.z,s[6]=qs.z,s[10]=Zt.z,this}multiply(e){return this.multiplyMatrices(this,e)}premultiply(e){return this.multiplyMatrices(e,this)}multiplyMatrices(e,t){const n=e.elements,s=t.elements,r=this.elements,a=n[0],o=n[4],c=n[8],l=n[12],h=n[1],u=n[5],d=n[9],p=n[13],_=n[2],v=n[6],m=n[10],f=n[14],A=n[3],T=n[7],b=n[11],P=n[15],C=s[0],D=s[4],N=s[8],w=s[12],M=s[1],S=s[5],L=s[9],O=s[13],V=s[2],z=s[6],Y=s[10],ee=s[14],j=s[3],G=s[7],se=s[11],H=s[15];return r[0]=a*C+o*M+c*V+l*j,r[4]=a*D+o*S+c*z+l*G,r[8]=a*N+o*L+c*Y+l*se,r[12]=a*w+o*O+c*ee+l*H,r[1]=h*C+u*M+d*V+p*j,r[5]=h*D+u*S+d*z+p*G,r[9]=h*N+u*L+d*Y+p*se,r[13]=h*w+u*O+d*ee+p*H,r[2]=_*C+v*M+m*V+f*j,r[6]=_*D+v*S+m*z+f*G,r[10]=_*N+v*L+m*Y+f*se,r[14]=_*w+v*O+m*ee+f*H,r[3]=A*C+T*M+b*V+P*j,r[7]=A*D+T*S+b*z+P*G,r[11]=A*N+T*L+b*Y+P*se,r[15]=A*w+T*O+b*ee+P*H,this}multiplyScalar(e){const t=this.elements;return t[0]*=e,t[4]*=e,t[8]*=e,t[12]*=e,t[1]*=e,t[5]*=e,t[9]*=e,t[13]*=e,t[2]*=e,t[6]*=e,t[10]*=e,t[14]*=e,t[3]*=e,t[7]*=e,t[11]*=e,t[15]*=e,this}determinant(){const e=this.elements,t=e[0],n=e[4],s=e[8],r=e[12],a=e[1],o=e[5],c=e[9],l=e[13],h=e[2],u=e[6],d=e[10],p=e[14],_=e[3],v=e[7],m=e[11],f=e[15];return _*(+r*c*u-s*l*u-r*o*d+n*l*d+s*o*p-n*c*p)+v*(+t*c*p-t*l*d+r*a*d-s*a*p+s*l*h-r*c*h)+m*(+t*l*u-t*o*p-r*a*u+n*a*p+r*o*h-n*l*h)+f*(-s*o*h-t*c*u+t*o*d+s*a*u-n*a*d+n*c*h)}transpose(){const e=this.elements;let t;return t=e[1],e[1]=e[4],e[4]=t,t=e[2],e[2]=e[8],e[8]=t,t=e[6],e[6]=e[9],e[9]=t,t=e[3],e[3]=e[12],e[12]=t,t=e[7],e[7]=e[13],e[13]=t,t=e[11],e[11]=e[14],e[14]=t,this}setPosition(e,t,n){const s=this.elements;return e.isVector3?(s[12]=e.x,s[13]=e.y,s[14]=e.z):(s[12]=e,s[13]=t,s[14]=n),this}invert(){const e=this.elements,t=e[0],n=e[1],s=e[2],r=e[3],a=e[4],o=e[5],c=e[6],l=e[7],h=e[8],u=e[9],d=e[10],p=e[11],_=e[12],v=e[13],m=e[14],f=e[15],A=u*m*l-v*d*l+v*c*p-o*m*p-u*c*f+o*d*f,T=_*d*l-h*m*l-_*c*p+a*m*p+h*c*f-a*d*f,b=h*v*l-_*u*l+_*o*p-a*v*p-h*o*f+a*u*f,P=_*u*c-h*v*c-_*o*d+a*v*d+h*o*m-a*u*m,C=t*A+n*T+s*b+r*P;if(C===0)return this.set(0,0,0,0,0,0,0,0,0,0,0,0,0,0,0,0);const D=1/C;return e[0]=A*D,e[1]=(v*d*r-u*m*r-v*s*p+n*m*p+u*s*f-n*d*f)*D,e[2]=(o*m*r-v*c*r+v*s*l-n*m*l-o*s*f+n*c*f)*D,e[3]=(u*c*r-o*d*r-u*s*l+n*d*l+o*s*p-n*c*p)*D,e[4]=T*D,e[5]=(h*m*r-_*d*r+_*s*p-t*m*p-h*s*f+t*d*f)*D,e[6]=(_*c*r-a*m*r-_*s*l+t*m*l+a*s*f-t*c*f)*D,e[7]=(a*d*r-h*c*r+h*s*l-t*d*l-a*s*p+t*c*p)*D,e[8]=b*D,e[9]=(_*u*r-h*v*r-_*n*p+t*v*p+h*n*f-t*u*f)*D,e[10]=(a*v*r-_*o*r+_*n*l-t*v*l-a*n*f+t*o*f)*D,e[11]=(h*o*r-a*u*r-h*n*l+t*u*l+a*n*p-t*o*p)*D,e[12]=P*D,e[13]=(h*v*s-_*u*s+_*n*d-t*v*d-h*n*m+t*u*m)*D,e[14]=(_*o*s-a*v*s-_*n*c+t*v*c+a*n*m-t*o*m)*D,e[15]=(a*u*s-h*o*s+h*n*c-t*u*c-a*n*d+t*o*d)*D,this}scale(e){const t=this.elements,n=e.x,s=e.y,r=e.z;return t[0]*=n,t[4]*=s,t[8]*=r,t[1]*=n,t[5]*=s,t[9]*=r,t[2]*=n,t[6]*=s,t[10]*=r,t[3]*=n,t[7]*=s,t[11]*=r,this}getMaxScaleOnAxis(){const e=this.elements,t=e[0]*e[0]+e[1]*e[1]+e[2]*e[2],n=e[4]*e[4]+e[5]*e[5]+e[6]*e[6],s=e[8]*e[8]+e[9]*e[9]+e[10]*e[10];return Math.sqrt(Math.max(t,n,s))}makeTranslation(e,t,n){return e.isVector3?this.set(1,0,0,e.x,0,1,0,e.y,0,0,1,e.z,0,0,0,1):this.set(1,0,0,e,0,1,0,t,0,0,1,n,0,0,0,1),this}makeRotationX(e){const t=Math.cos(e),n=Math.sin(e);return this.set(1,0,0,0,0,t,-n,0,0,n,t,0,0,0,0,1),this}makeRotationY(e){const t=Math.cos(e),n=Math.sin(e);return this.set(t,0,n,0,0,1,0,0,-n,0,t,0,0,0,0,1),this}makeRotationZ(e){const t=Math.cos(e),n=Math.sin(e);return this.set(t,-n,0,0,n,t,0,0,0,0,1,0,0,0,0,1),this}makeRotationAxis(e,t){const n=Math.cos(t),s=Math.sin(t),r=1-n,a=e.x,o=e.y,c=e.z,l=r*a,h=r*o;return this.set(l*a+n,l*o-s*c,l*c+s*o,0,l*o+s*c,h*o+n,h*c-s*a,0,l*c-s*o,h*c+s*a,r*c*c+n,0,0,0,0,1),this}makeScale(e,t,n){return this.set(e,0,0,0,0,t,0,0,0,0,n,0,0,0,0,1),this}makeShear(e,t,n,s,r,a){return this.set(1,n,r,0,e,1,a,0,t,s,1,0,0,0,0,1),this}compose(e,t,n){const s=this.elements,r=t._x,a=t._y,o=t._z,c=t._w,l=r+r,h=a+a,u=o+o,d=r*l,p=r*h,_=r*u,v=a*h,m=a*u,f=o*u,A=c*l,T=c*h,b=c*u,P=n.x,C=n.y,D=n.z;return s[0]=(1-(v+f))*P,s[1]=(p+b)*P,s[2]=(_-T)*P,s[3]=0,s[4]=(p-b)*C,s[5]=(1-(d+f))*C,s[6]=(m+A)*C,s[7]=0,s[8]=(_+T)*D,s[9]=(m-A)*D,s[10]=(1-(d+v))*D,s[11]=0,s[12]=e.x,s[13]=e.y,s[14]=e.z,s[15]=1,this}decompose(e,t,n){const s=this.elements;let r=Di.set(s[0],s[1],s[2]).length();const a=Di.set(s[4],s[5],s[6]).length(),o=Di.set(s[8],s[9],s[10]).length();this.determinant()<0&&(r=-r),e.x=s[12],e.y=s[13],e.z=s[14],cn.copy(this);const l=1/r,h=1/a,u=1/o;return cn.elements[0]*=l,cn.elements[1]*=l,cn.elements[2]*=l,cn.elements[4]*=h,cn.elements[5]*=h,cn.elements[6]*=h,cn.elements[8]*=u,cn.elements[9]*=u,cn.elements[10]*=u,t.setFromRotationMatrix(cn),n.x=r,n.y=a,n.z=o,this}makePerspective(e,t,n,s,r,a,o=xn,c=!1){const l=this.elements,h=2*r/(t-e),u=2*r/(n-s),d=(t+e)/(t-e),p=(n+s)/(n-s);let _,v;if(c)_=r/(a-r),v=a*r/(a-r);else if(o===xn)_=-(a+r)/(a-r),v=-2*a*r/(a-r);else if(o===Sr)_=-a/(a-r),v=-a*r/(a-r);else throw new Error("THREE.Matrix4.makePerspective(): Invalid coordinate system: "+o);return l[0]=h,l[4]=0,l[8]=d,l[12]=0,l[1]=0,l[5]=u,l[9]=p,l[13]=0,l[2]=0,l[6]=0,l[10]=_,l[14]=v,l[3]=0,l[7]=0,l[11]=-1,l[15]=0,this}makeOrthographic(e,t,n,s,r,a,o=xn,c=!1){const l=this.elements,h=2/(t-e),u=2/(n-s),d=-(t+e)/(t-e),p=-(n+s)/(n-s);let _,v;if(c)_=1/(a-r),v=a/(a-r);else if(o===xn)_=-2/(a-r),v=-(a+r)/(a-r);else if(o===Sr)_=-1/(a-r),v=-r/(a-r);else throw new Error("THREE.Matrix4.makeOrthographic(): Invalid coordinate system: "+o);return l[0]=h,l[4]=0,l[8]=0,l[12]=d,l[1]=0,l[5]=u,l[9]=0,l[13]=p,l[2]=0,l[6]=0,l[10]=_,l[14]=v,l[3]=0,l[7]=0,l[11]=0,l[15]=1,this}equals(e){const t=this.elements,n=e.elements;for(let s=0;s<16;s++)if(t[s]!==n[s])return!1;return!0}fromArray(e,t=0){for(let n=0;n<16;n++)this.elements[n]=e[n+t];return this}toArray(e=[],t=0){const n=this.elements;return e[t]=n[0],e[t+1]=n[1],e[t+2]=n[2],e[t+3]=n[3],e[t+4]=n[4],e[t+5]=n[5],e[t+6]=n[6],e[t+7]=n[7],e[t+8]=n[8],e[t+9]=n[9],e[t+10]=n[10],e[t+11]=n[11],e[t+12]=n[12],e[t+13]=n[13],e[t+14]=n[14],e[t+15]=n[15],e}}const Di=new U,cn=new mt,uf=new U(0,0,0),df=new U(1,1,1),Vn=new U,qs=new U,Zt=new U,Dl=new mt,Ll=new xi;class En{constructor(e=0,t=0,n=0,s=En.DEFAULT_ORDER){this.isEuler=!0,this._x=e,this._y=t,this._z=n,this._order=s}get x(){return this._x}set x(e){this._x=e,this._onChangeCallback()}get y(){return this._y}set y(e){this._y=e,this._onChangeCallback()}get z(){return this._z}set z(e){this._z=e,this._onChangeCallback()}get order(){return this._order}set order(e){this._order=e,this._onChangeCallback()}set(e,t,n,s=this._order){return this._x=e,this._y=t,this._z=n,this._order=s,this._onChangeCallback(),this}clone(){return new this.constructor(this._x,this._y,this._z,this._order)}copy(e){return this._x=e._x,this._y=e._y,this._z=e._z,this._order=e._order,this._onChangeCallback(),this}setFromRotationMatrix(e,t=this._order,n=!0){const s=e.elements,r=s[0],a=s[4],o=s[8],c=s[1],l=s[5],h=s[9],u=s[2],d=s[6],p=s[10];switch(t){case"XYZ":this._y=Math.asin(Ze(o,-1,1)),Math.abs(o)<.9999999?(this._x=Math.atan2(-h,p),this._z=Math.atan2(-a,r)):(this._x=Math.atan2(d,l),this._z=0);break;case"YXZ":this._x=Math.asin(-Ze(h,-1,1)),Math.abs(h)<.9999999?(this._y=Math.atan2(o,p),this._z=Math.atan2(c,l)):(this._y=Math.atan2(-u,r),this._z=0);break;case"ZXY":this._x=Math.asin(Ze(d,-1,1)),Math.abs(d)<.9999999?(this._y=Math.atan2(-u,p),this._z=Math.atan2(-a,l)):(this._y=0,this._z=Math.atan2(c,r));break;case"ZYX":this._y=Math.asin(-Ze(u,-1,1)),Math.abs(u)<.9999999?(this._x=Math.atan2(d,p),this._z=Math.atan2(c,r)):(this._x=0,this._z=Math.atan2(-a,l));break;case"YZX":this._z=Math.asin(Ze(c,-1,1)),Math.abs(c)<.9999999?(this._x=Math.atan2(-h,l),this._y=Math.atan2(-u,r)):(this._x=0,this._y=Math.atan2(o,p));break;case"XZY":this._z=Math.asin(-Ze(a,-1,1)),Math.abs(a)<.9999999?(this._x=Math.atan2(d,l),this._y=Math.atan2(o,r)):(this._x=Math.atan2(-h,p),this._y=0);break;default:console.warn("THREE.Euler: .setFromRotationMatrix() encountered an unknown order: "+t)}return this._order=t,n===!0&&this._onChangeCallback(),this}setFromQuaternion(e,t,n){return Dl.makeRotationFromQuaternion(e),this.setFromRotationMatrix(Dl,t,n)}setFromVector3(e,t=this._order){return this.set(e.x,e.y,e.z,t)}reorder(e){return Ll.setFromEuler(this),this.setFromQuaternion(Ll,e)}equals(e){return e._x===this._x&&e._y===this._y&&e._z===this._z&&e._order===this._order}fromArray(e){return this._x=e[0],this._y=e[1],this._z=e[2],e[3]!==void 0&&(this._order=e[3]),this._onChangeCallback(),this}toArray(e=[],t=0){return e[t]=this._x,e[t+1]=this._y,e[t+2]=this._z,e[t+3]=this._order,e}_onChange(e){return this._onChangeCallback=e,this}_onChangeCallback(){}*[Symbol.iterator](){yield this._x,yield this._y,yield this._z,yield this._order}}En.DEFAULT_ORDER="XYZ";class Xo{constructor(){this.mask=1}set(e){this.mask=(1<<e|0)>>>0}enable(e){this.mask|=1<<e|0}enableAll(){this.mask=-1}toggle(e){this.mask^=1<<e|0}disable(e){this.mask&=~(1<<e|0)}disableAll(){this.mask=0}test(e){return(this.mask&e.mask)!==0}isEnabled(e){return(this.mask&(1<<e|0))!==0}}let ff=0;const Il=new U,Li=new xi,Cn=new mt,Xs=new U,hs=new U,pf=new U,mf=new xi,Ul=new U(1,0,0),Nl=new U(0,1,0),Fl=new U(0,0,1),Ol={type:"added"},gf={type:"removed"},Ii={type:"childadded",child:null},ra={type:"childremoved",child:null};class Tt extends wi{constructor(){super(),this.isObject3D=!0,Object.defineProperty(this,"id",{value:ff++}),this.uuid=Ps(),this.name="",this.type="Object3D",this.parent=null,this.children=[],this.up=Tt.DEFAULT_UP.clone();const e=new U,t=new En,n=new xi,s=new U(1,1,1);function r(){n.setFromEuler(t,!1)}function a(){t.setFromQuaternion(n,void 0,!1)}t._onChange(r),n._onChange(a),Object.defineProperties(this,{position:{configurable:!0,enumerable:!0,value:e},rotation:{configurable:!0,enumerable:!0,value:t},quaternion:{configurable:!0,enumerable:!0,value:n},scale:{configurable:!0,enumerable:!0,value:s},modelViewMatrix:{value:new mt},normalMatrix:{value:new qe}}),this.matrix=new mt,this.matrixWorld=new mt,this.matrixAutoUpdate=Tt.DEFAULT_MATRIX_AUTO_UPDATE,this.matrixWorldAutoUpdate=Tt.DEFAULT_MATRIX_WORLD_AUTO_UPDATE,this.matrixWorldNeedsUpdate=!1,this.layers=new Xo,this.visible=!0,this.castShadow=!1,this.receiveShadow=!1,this.frustumCulled=!0,this.renderOrder=0,this.animations=[],this.customDepthMaterial=void 0,this.customDistanceMaterial=void 0,this.userData={}}onBeforeShadow(){}onAfterShadow(){}onBeforeRender(){}onAfterRender(){}applyMatrix4(e){this.matrixAutoUpdate&&this.updateMatrix(),this.matrix.premultiply(e),this.matrix.decompose(this.position,this.quaternion,this.scale)}applyQuaternion(e){return this.quaternion.premultiply(e),this}setRotationFromAxisAngle(e,t){this.quaternion.setFromAxisAngle(e,t)}setRotationFromEuler(e){this.quaternion.setFromEuler(e,!0)}setRotationFromMatrix(e){this.quaternion.setFromRotationMatrix(e)}setRotationFromQuaternion(e){this.quaternion.copy(e)}rotateOnAxis(e,t){return Li.setFromAxisAngle(e,t),this.quaternion.multiply(Li),this}rotateOnWorldAxis(e,t){return Li.setFromAxisAngle(e,t),this.quaternion.premultiply(Li),this}rotateX(e){return this.rotateOnAxis(Ul,e)}rotateY(e){return this.rotateOnAxis(Nl,e)}rotateZ(e){return this.rotateOnAxis(Fl,e)}translateOnAxis(e,t){return Il.copy(e).applyQuaternion(this.quaternion),this.position.add(Il.multiplyScalar(t)),this}translateX(e){return this.translateOnAxis(Ul,e)}translateY(e){return this.translateOnAxis(Nl,e)}translateZ(e){return this.translateOnAxis(Fl,e)}localToWorld(e){return this.updateWorldMatrix(!0,!1),e.applyMatrix4(this.matrixWorld)}worldToLocal(e){return this.updateWorldMatrix(!0,!1),e.applyMatrix4(Cn.copy(this.matrixWorld).invert())}lookAt(e,t,n){e.isVector3?Xs.copy(e):Xs.set(e,t,n);const s=this.parent;this.updateWorldMatrix(!0,!1),hs.setFromMatrixPosition(this.matrixWorld),this.isCamera||this.isLight?Cn.lookAt(hs,Xs,this.up):Cn.lookAt(Xs,hs,this.up),this.quaternion.setFromRotationMatrix(Cn),s&&(Cn.extractRotation(s.matrixWorld),Li.setFromRotationMatrix(Cn),this.quaternion.premultiply(Li.invert()))}add(e){if(arguments.length>1){for(let t=0;t<arguments.length;t++)this.add(arguments[t]);return this}return e===this?(console.error("THREE.Object3D.add: object can't be added as a child of itself.",e),this):(e&&e.isObject3D?(e.removeFromParent(),e.parent=this,this.children.push(e),e.dispatchEvent(Ol),Ii.child=e,this.dispatchEvent(Ii),Ii.child=null):console.error("THREE.Object3D.add: object not an instance of THREE.Object3D.",e),this)}remove(e){if(arguments.length>1){for(let n=0;n<arguments.length;n++)this.remove(arguments[n]);return this}const t=this.children.indexOf(e);return t!==-1&&(e.parent=null,this.children.splice(t,1),e.dispatchEvent(gf),ra.child=e,this.dispatchEvent(ra),ra.child=null),this}removeFromParent(){const e=this.parent;return e!==null&&e.remove(this),this}clear(){return this.remove(...this.children)}attach(e){return this.updateWorldMatrix(!0,!1),Cn.copy(this.matrixWorld).invert(),e.parent!==null&&(e.parent.updateWorldMatrix(!0,!1),Cn.multiply(e.parent.matrixWorld)),e.applyMatrix4(Cn),e.removeFromParent(),e.parent=this,this.children.push(e),e.updateWorldMatrix(!1,!0),e.dispatchEvent(Ol),Ii.child=e,this.dispatchEvent(Ii),Ii.child=null,this}getObjectById(e){return this.getObjectByProperty("id",e)}getObjectByName(e){return this.getObjectByProperty("name",e)}getObjectByProperty(e,t){if(this[e]===t)return this;for(let n=0,s=this.children.length;n<s;n++){const a=this.children[n].getObjectByProperty(e,t);if(a!==void 0)return a}}getObjectsByProperty(e,t,n=[]){this[e]===t&&n.push(this);const s=this.children;for(let r=0,a=s.length;r<a;r++)s[r].getObjectsByProperty(e,t,n);return n}getWorldPosition(e){return this.updateWorldMatrix(!0,!1),e.setFromMatrixPosition(this.matrixWorld)}getWorldQuaternion(e){return this.updateWorldMatrix(!0,!1),this.matrixWorld.decompose(hs,e,pf),e}getWorldScale(e){return this.updateWorldMatrix(!0,!1),this.matrixWorld.decompose(hs,mf,e),e}getWorldDirection(e){this.updateWorldMatrix(!0,!1);const t=this.matrixWorld.elements;return e.set(t[8],t[9],t[10]).normalize()}raycast(){}traverse(e){e(this);const t=this.children;for(let n=0,s=t.length;n<s;n++)t[n].traverse(e)}traverseVisible(e){if(this.visible===!1)return;e(this);const t=this.children;for(let n=0,s=t.length;n<s;n++)t[n].traverseVisible(e)}traverseAncestors(e){const t=this.parent;t!==null&&(e(t),t.traverseAncestors(e))}updateMatrix(){this.matrix.compose(this.position,this.quaternion,this.scale),this.matrixWorldNeedsUpdate=!0}updateMatrixWorld(e){this.matrixAutoUpdate&&this.updateMatrix(),(this.matrixWorldNeedsUpdate||e)&&(this.matrixWorldAutoUpdate===!0&&(this.parent===null?this.matrixWorld.copy(this.matrix):this.matrixWorld.multiplyMatrices(this.parent.matrixWorld,this.matrix)),this.matrixWorldNeedsUpdate=!1,e=!0);const t=this.children;for(let n=0,s=t.length;n<s;n++)t[n].updateMatrixWorld(e)}updateWorldMatrix(e,t){const n=this.parent;if(e===!0&&n!==null&&n.updateWorldMatrix(!0,!1),this.matrixAutoUpdate&&this.updateMatrix(),this.matrixWorldAutoUpdate===!0&&(this.parent===null?this.matrixWorld.copy(this.matrix):this.matrixWorld.multiplyMatrices(this.parent.matrixWorld,this.matrix)),t===!0){const s=this.children;for(let r=0,a=s.length;r<a;r++)s[r].updateWorldMatrix(!1,!0)}}toJSON(e){const t=e===void 0||typeof e=="string",n={};t&&(e={geometries:{},materials:{},textures:{},images:{},shapes:{},skeletons:{},animations:{},nodes:{}},n.metadata={version:4.7,type:"Object",generator:"Object3D.toJSON"});const s={};s.uuid=this.uuid,s.type=this.type,this.name!==""&&(s.name=this.name),this.castShadow===!0&&(s.castShadow=!0),this.receiveShadow===!0&&(s.receiveShadow=!0),this.visible===!1&&(s.visible=!1),this.frustumCulled===!1&&(s.frustumCulled=!1),this.renderOrder!==0&&(s.renderOrder=this.renderOrder),Object.keys(this.userData).length>0&&(s.userData=this.userData),s.layers=this.layers.mask,s.matrix=this.matrix.toArray(),s.up=this.up.toArray(),this.matrixAutoUpdate===!1&&(s.matrixAutoUpdate=!1),this.isInstancedMesh&&(s.type="InstancedMesh",s.count=this.count,s.instanceMatrix=this.instanceMatrix.toJSON(),this.instanceColor!==null&&(s.instanceColor=this.instanceColor.toJSON())),this.isBatchedMesh&&(s.type="BatchedMesh",s.perObjectFrustumCulled=this.perObjectFrustumCulled,s.sortObjects=this.sortObjects,s.drawRanges=this._drawRanges,s.reservedRanges=this._reservedRanges,s.geometryInfo=this._geometryInfo.map(o=>({...o,boundingBox:o.boundingBox?o.boundingBox.toJSON():void 0,boundingSphere:o.boundingSphere?o.boundingSphere.toJSON():void 0})),s.instanceInfo=this._instanceInfo.map(o=>({...o})),s.availableInstanceIds=this._availableInstanceIds.slice(),s.availableGeometryIds=this._availableGeometryIds.slice(),s.nextIndexStart=this._nextIndexStart,s.nextVertexStart=this._nextVertexStart,s.geometryCount=this._geometryCount,s.maxInstanceCount=this._maxInstanceCount,s.maxVertexCount=this._maxVertexCount,s.maxIndexCount=this._maxIndexCount,s.geometryInitialized=this._geometryInitialized,s.matricesTexture=this._matricesTexture.toJSON(e),s.indirectTexture=this._indirectTexture.toJSON(e),this._colorsTexture!==null&&(s.colorsTexture=this._colorsTexture.toJSON(e)),this.boundingSphere!==null&&(s.boundingSphere=this.boundingSphere.toJSON()),this.boundingBox!==null&&(s.boundingBox=this.boundingBox.toJSON()));function r(o,c){return o[c.uuid]===void 0&&(o[c.uuid]=c.toJSON(e)),c.uuid}if(this.isScene)this.background&&(this.background.isColor?s.background=this.background.toJSON():this.background.isTexture&&(s.background=this.background.toJSON(e).uuid)),this.environment&&this.environment.isTexture&&this.environment.isRenderTargetTexture!==!0&&(s.environment=this.environment.toJSON(e).uuid);else if(this.isMesh||this.isLine||this.isPoints){s.geometry=r(e.geometries,this.geometry);const o=this.geometry.parameters;if(o!==void 0&&o.shapes!==void 0){const c=o.shapes;if(Array.isArray(c))for(let l=0,h=c.length;l<h;l++){const u=c[l];r(e.shapes,u)}else r(e.shapes,c)}}if(this.isSkinnedMesh&&(s.bindMode=this.bindMode,s.bindMatrix=this.bindMatrix.toArray(),this.skeleton!==void 0&&(r(e.skeletons,this.skeleton),s.skeleton=this.skeleton.uuid)),this.material!==void 0)if(Array.isArray(this.material)){const o=[];for(let c=0,l=this.material.length;c<l;c++)o.push(r(e.materials,this.material[c]));s.material=o}else s.material=r(e.materials,this.material);if(this.children.length>0){s.children=[];for(let o=0;o<this.children.length;o++)s.children.push(this.children[o].toJSON(e).object)}if(this.animations.length>0){s.animations=[];for(let o=0;o<this.animations.length;o++){const c=this.animations[o];s.animations.push(r(e.animations,c))}}if(t){const o=a(e.geometries),c=a(e.materials),l=a(e.textures),h=a(e.images),u=a(e.shapes),d=a(e.skeletons),p=a(e.animations),_=a(e.nodes);o.length>0&&(n.geometries=o),c.length>0&&(n.materials=c),l.length>0&&(n.textures=l),h.length>0&&(n.images=h),u.length>0&&(n.shapes=u),d.length>0&&(n.skeletons=d),p.length>0&&(n.animations=p),_.length>0&&(n.nodes=_)}return n.object=s,n;function a(o){const c=[];for(const l in o){const h=o[l];delete h.metadata,c.push(h)}return c}}clone(e){return new this.constructor().copy(this,e)}copy(e,t=!0){if(this.name=e.name,this.up.copy(e.up),this.position.copy(e.position),this.rotation.order=e.rotation.order,this.quaternion.copy(e.quaternion),this.scale.copy(e.scale),this.matrix.copy(e.matrix),this.matrixWorld.copy(e.matrixWorld),this.matrixAutoUpdate=e.matrixAutoUpdate,this.matrixWorldAutoUpdate=e.matrixWorldAutoUpdate,this.matrixWorldNeedsUpdate=e.matrixWorldNeedsUpdate,this.layers.mask=e.layers.mask,this.visible=e.visible,this.castShadow=e.castShadow,this.receiveShadow=e.receiveShadow,this.frustumCulled=e.frustumCulled,this.renderOrder=e.renderOrder,this.animations=e.animations.slice(),this.userData=JSON.parse(JSON.stringify(e.userData)),t===!0)for(let n=0;n<e.children.length;n++){const s=e.children[n];this.add(s.clone())}return this}}Tt.DEFAULT_UP=new U(0,1,0);Tt.DEFAULT_MATRIX_AUTO_UPDATE=!0;Tt.DEFAULT_MATRIX_WORLD_AUTO_UPDATE=!0;const hn=new U,Pn=new U,aa=new U,Dn=new U,Ui=new U,Ni=new U,kl=new U,oa=new U,la=new U,ca=new U,ha=new Mt,ua=new Mt,da=new Mt;class un{constructor(e=new U,t=new U,n=new U){this.a=e,this.b=t,this.c=n}static getNormal(e,t,n,s){s.subVectors(n,t),hn.subVectors(e,t),s.cross(hn);const r=s.lengthSq();return r>0?s.multiplyScalar(1/Math.sqrt(r)):s.set(0,0,0)}static getBarycoord(e,t,n,s,r){hn.subVectors(s,t),Pn.subVectors(n,t),aa.subVectors(e,t);const a=hn.dot(hn),o=hn.dot(Pn),c=hn.dot(aa),l=Pn.dot(Pn),h=Pn.dot(aa),u=a*l-o*o;if(u===0)return r.set(0,0,0),null;const d=1/u,p=(l*c-o*h)*d,_=(a*h-o*c)*d;return r.set(1-p-_,_,p)}static containsPoint(e,t,n,s){return this.getBarycoord(e,t,n,s,Dn)===null?!1:Dn.x>=0&&Dn.y>=0&&Dn.x+Dn.y<=1}static getInterpolation(e,t,n,s,r,a,o,c){return this.getBarycoord(e,t,n,s,Dn)===null?(c.x=0,c.y=0,"z"in c&&(c.z=0),"w"in c&&(c.w=0),null):(c.setScalar(0),c.addScaledVector(r,Dn.x),c.addScaledVector(a,Dn.y),c.addScaledVector(o,Dn.z),c)}static getInterpolatedAttribute(e,t,n,s,r,a){return ha.setScalar(0),ua.setScalar(0),da.setScalar(0),ha.fromBufferAttribute(e,t),ua.fromBufferAttribute(e,n),da.fromBufferAttribute(e,s),a.setScalar(0),a.addScaledVector(ha,r.x),a.addScaledVector(ua,r.y),a.addScaledVector(da,r.z),a}static isFrontFacing(e,t,n,s){return hn.subVectors(n,t),Pn.subVectors(e,t),hn.cross(Pn).dot(s)<0}set(e,t,n){return this.a.copy(e),this.b.copy(t),this.c.copy(n),this}setFromPointsAndIndices(e,t,n,s){return this.a.copy(e[t]),this.b.copy(e[n]),this.c.copy(e[s]),this}setFromAttributeAndIndices(e,t,n,s){return this.a.fromBufferAttribute(e,t),this.b.fromBufferAttribute(e,n),this.c.fromBufferAttribute(e,s),this}clone(){return new this.constructor().copy(this)}copy(e){return this.a.copy(e.a),this.b.copy(e.b),this.c.copy(e.c),this}getArea(){return hn.subVectors(this.c,this.b),Pn.subVectors(this.a,this.b),hn.cross(Pn).length()*.5}getMidpoint(e){return e.addVectors(this.a,this.b).add(this.c).multiplyScalar(1/3)}getNormal(e){return un.getNormal(this.a,this.b,this.c,e)}getPlane(e){return e.setFromCoplanarPoints(this.a,this.b,this.c)}getBarycoord(e,t){return un.getBarycoord(e,this.a,this.b,this.c,t)}getInterpolation(e,t,n,s,r){return un.getInterpolation(e,this.a,this.b,this.c,t,n,s,r)}containsPoint(e){return un.containsPoint(e,this.a,this.b,this.c)}isFrontFacing(e){return un.isFrontFacing(this.a,this.b,this.c,e)}intersectsBox(e){return e.intersectsTriangle(this)}closestPointToPoint(e,t){const n=this.a,s=this.b,r=this.c;let a,o;Ui.subVectors(s,n),Ni.subVectors(r,n),oa.subVectors(e,n);const c=Ui.dot(oa),l=Ni.dot(oa);if(c<=0&&l<=0)return t.copy(n);la.subVectors(e,s);const h=Ui.dot(la),u=Ni.dot(la);if(h>=0&&u<=h)return t.copy(s);const d=c*u-h*l;if(d<=0&&c>=0&&h<=0)return a=c/(c-h),t.copy(n).addScaledVector(Ui,a);ca.subVectors(e,r);const p=Ui.dot(ca),_=Ni.dot(ca);if(_>=0&&p<=_)return t.copy(r);const v=p*l-c*_;if(v<=0&&l>=0&&_<=0)return o=l/(l-_),t.copy(n).addScaledVector(Ni,o);const m=h*_-p*u;if(m<=0&&u-h>=0&&p-_>=0)return kl.subVectors(r,s),o=(u-h)/(u-h+(p-_)),t.copy(s).addScaledVector(kl,o);const f=1/(m+v+d);return a=v*f,o=d*f,t.copy(n).addScaledVector(Ui,a).addScaledVector(Ni,o)}equals(e){return e.a.equals(this.a)&&e.b.equals(this.b)&&e.c.equals(this.c)}}const _h={aliceblue:15792383,antiquewhite:16444375,aqua:65535,aquamarine:8388564,azure:15794175,beige:16119260,bisque:16770244,black:0,blanchedalmond:16772045,blue:255,blueviolet:9055202,brown:10824234,burlywood:14596231,cadetblue:6266528,chartreuse:8388352,chocolate:13789470,coral:16744272,cornflowerblue:6591981,cornsilk:16775388,crimson:14423100,cyan:65535,darkblue:139,darkcyan:35723,darkgoldenrod:12092939,darkgray:11119017,darkgreen:25600,darkgrey:11119017,darkkhaki:12433259,darkmagenta:9109643,darkolivegreen:5597999,darkorange:16747520,darkorchid:10040012,darkred:9109504,darksalmon:15308410,darkseagreen:9419919,darkslateblue:4734347,darkslategray:3100495,darkslategrey:3100495,darkturquoise:52945,darkviolet:9699539,deeppink:16716947,deepskyblue:49151,dimgray:6908265,dimgrey:6908265,dodgerblue:2003199,firebrick:11674146,floralwhite:16775920,forestgreen:2263842,fuchsia:16711935,gainsboro:14474460,ghostwhite:16316671,gold:16766720,goldenrod:14329120,gray:8421504,green:32768,greenyellow:11403055,grey:8421504,honeydew:15794160,hotpink:16738740,indianred:13458524,indigo:4915330,ivory:16777200,khaki:15787660,lavender:15132410,lavenderblush:16773365,lawngreen:8190976,lemonchiffon:16775885,lightblue:11393254,lightcoral:15761536,lightcyan:14745599,lightgoldenrodyellow:16448210,lightgray:13882323,lightgreen:9498256,lightgrey:13882323,lightpink:16758465,lightsalmon:16752762,lightseagreen:2142890,lightskyblue:8900346,lightslategray:7833753,lightslategrey:7833753,lightsteelblue:11584734,lightyellow:16777184,lime:65280,limegreen:3329330,linen:16445670,magenta:16711935,maroon:8388608,mediumaquamarine:6737322,mediumblue:205,mediumorchid:12211667,mediumpurple:9662683,mediumseagreen:3978097,mediumslateblue:8087790,mediumspringgreen:64154,mediumturquoise:4772300,mediumvioletred:13047173,midnightblue:1644912,mintcream:16121850,mistyrose:16770273,moccasin:16770229,navajowhite:16768685,navy:128,oldlace:16643558,olive:8421376,olivedrab:7048739,orange:16753920,orangered:16729344,orchid:14315734,palegoldenrod:15657130,palegreen:10025880,paleturquoise:11529966,palevioletred:14381203,papayawhip:16773077,peachpuff:16767673,peru:13468991,pink:16761035,plum:14524637,powderblue:11591910,purple:8388736,rebeccapurple:6697881,red:16711680,rosybrown:12357519,royalblue:4286945,saddlebrown:9127187,salmon:16416882,sandybrown:16032864,seagreen:3050327,seashell:16774638,sienna:10506797,silver:12632256,skyblue:8900331,slateblue:6970061,slategray:7372944,slategrey:7372944,snow:16775930,springgreen:65407,steelblue:4620980,tan:13808780,teal:32896,thistle:14204888,tomato:16737095,turquoise:4251856,violet:15631086,wheat:16113331,white:16777215,whitesmoke:16119285,yellow:16776960,yellowgreen:10145074},Gn={h:0,s:0,l:0},Ys={h:0,s:0,l:0};function fa(i,e,t){return t<0&&(t+=1),t>1&&(t-=1),t<1/6?i+(e-i)*6*t:t<1/2?e:t<2/3?i+(e-i)*6*(2/3-t):i}class je{constructor(e,t,n){return this.isColor=!0,this.r=1,this.g=1,this.b=1,this.set(e,t,n)}set(e,t,n){if(t===void 0&&n===void 0){const s=e;s&&s.isColor?this.copy(s):typeof s=="number"?this.setHex(s):typeof s=="string"&&this.setStyle(s)}else this.setRGB(e,t,n);return this}setScalar(e){return this.r=e,this.g=e,this.b=e,this}setHex(e,t=an){return e=Math.floor(e),this.r=(e>>16&255)/255,this.g=(e>>8&255)/255,this.b=(e&255)/255,nt.colorSpaceToWorking(this,t),this}setRGB(e,t,n,s=nt.workingColorSpace){return this.r=e,this.g=t,this.b=n,nt.colorSpaceToWorking(this,s),this}setHSL(e,t,n,s=nt.workingColorSpace){if(e=Qd(e,1),t=Ze(t,0,1),n=Ze(n,0,1),t===0)this.r=this.g=this.b=n;else{const r=n<=.5?n*(1+t):n+t-n*t,a=2*n-r;this.r=fa(a,r,e+1/3),this.g=fa(a,r,e),this.b=fa(a,r,e-1/3)}return nt.colorSpaceToWorking(this,s),this}setStyle(e,t=an){function n(r){r!==void 0&&parseFloat(r)<1&&console.warn("THREE.Color: Alpha component of "+e+" will be ignored.")}let s;if(s=/^(\w+)\(([^\)]*)\)/.exec(e)){let r;const a=s[1],o=s[2];switch(a){case"rgb":case"rgba":if(r=/^\s*(\d+)\s*,\s*(\d+)\s*,\s*(\d+)\s*(?:,\s*(\d*\.?\d+)\s*)?$/.exec(o))return n(r[4]),this.setRGB(Math.min(255,parseInt(r[1],10))/255,Math.min(255,parseInt(r[2],10))/255,Math.min(255,parseInt(r[3],10))/255,t);if(r=/^\s*(\d+)\%\s*,\s*(\d+)\%\s*,\s*(\d+)\%\s*(?:,\s*(\d*\.?\d+)\s*)?$/.exec(o))return n(r[4]),this.setRGB(Math.min(100,parseInt(r[1],10))/100,Math.min(100,parseInt(r[2],10))/100,Math.min(100,parseInt(r[3],10))/100,t);break;case"hsl":case"hsla":if(r=/^\s*(\d*\.?\d+)\s*,\s*(\d*\.?\d+)\%\s*,\s*(\d*\.?\d+)\%\s*(?:,\s*(\d*\.?\d+)\s*)?$/.exec(o))return n(r[4]),this.setHSL(parseFloat(r[1])/360,parseFloat(r[2])/100,parseFloat(r[3])/100,t);break;default:console.warn("THREE.Color: Unknown color model "+e)}}else if(s=/^\#([A-Fa-f\d]+)$/.exec(e)){const r=s[1],a=r.length;if(a===3)return this.setRGB(parseInt(r.charAt(0),16)/15,parseInt(r.charAt(1),16)/15,parseInt(r.charAt(2),16)/15,t);if(a===6)return this.setHex(parseInt(r,16),t);console.warn("THREE.Color: Invalid hex color "+e)}else if(e&&e.length>0)return this.setColorName(e,t);return this}setColorName(e,t=an){const n=_h[e.toLowerCase()];return n!==void 0?this.setHex(n,t):console.warn("THREE.Color: Unknown color "+e),this}clone(){return new this.constructor(this.r,this.g,this.b)}copy(e){return this.r=e.r,this.g=e.g,this.b=e.b,this}copySRGBToLinear(e){return this.r=On(e.r),this.g=On(e.g),this.b=On(e.b),this}copyLinearToSRGB(e){return this.r=$i(e.r),this.g=$i(e.g),this.b=$i(e.b),this}convertSRGBToLinear(){return this.copySRGBToLinear(this),this}convertLinearToSRGB(){return this.copyLinearToSRGB(this),this}getHex(e=an){return nt.workingToColorSpace(Nt.copy(this),e),Math.round(Ze(Nt.r*255,0,255))*65536+Math.round(Ze(Nt.g*255,0,255))*256+Math.round(Ze(Nt.b*255,0,255))}getHexString(e=an){return("000000"+this.getHex(e).toString(16)).slice(-6)}getHSL(e,t=nt.workingColorSpace){nt.workingToColorSpace(Nt.copy(this),t);const n=Nt.r,s=Nt.g,r=Nt.b,a=Math.max(n,s,r),o=Math.min(n,s,r);let c,l;const h=(o+a)/2;if(o===a)c=0,l=0;else{const u=a-o;switch(l=h<=.5?u/(a+o):u/(2-a-o),a){case n:c=(s-r)/u+(s<r?6:0);break;case s:c=(r-n)/u+2;break;case r:c=(n-s)/u+4;break}c/=6}return e.h=c,e.s=l,e.l=h,e}getRGB(e,t=nt.workingColorSpace){return nt.workingToColorSpace(Nt.copy(this),t),e.r=Nt.r,e.g=Nt.g,e.b=Nt.b,e}getStyle(e=an){nt.workingToColorSpace(Nt.copy(this),e);const t=Nt.r,n=Nt.g,s=Nt.b;return e!==an?`color(${e} ${t.toFixed(3)} ${n.toFixed(3)} ${s.toFixed(3)})`:`rgb(${Math.round(t*255)},${Math.round(n*255)},${Math.round(s*255)})`}offsetHSL(e,t,n){return this.getHSL(Gn),this.setHSL(Gn.h+e,Gn.s+t,Gn.l+n)}add(e){return this.r+=e.r,this.g+=e.g,this.b+=e.b,this}addColors(e,t){return this.r=e.r+t.r,this.g=e.g+t.g,this.b=e.b+t.b,this}addScalar(e){return this.r+=e,this.g+=e,this.b+=e,this}sub(e){return this.r=Math.max(0,this.r-e.r),this.g=Math.max(0,this.g-e.g),this.b=Math.max(0,this.b-e.b),this}multiply(e){return this.r*=e.r,this.g*=e.g,this.b*=e.b,this}multiplyScalar(e){return this.r*=e,this.g*=e,this.b*=e,this}lerp(e,t){return this.r+=(e.r-this.r)*t,this.g+=(e.g-this.g)*t,this.b+=(e.b-this.b)*t,this}lerpColors(e,t,n){return this.r=e.r+(t.r-e.r)*n,this.g=e.g+(t.g-e.g)*n,this.b=e.b+(t.b-e.b)*n,this}lerpHSL(e,t){this.getHSL(Gn),e.getHSL(Ys);const n=jr(Gn.h,Ys.h,t),s=jr(Gn.s,Ys.s,t),r=jr(Gn.l,Ys.l,t);return this.setHSL(n,s,r),this}setFromVector3(e){return this.r=e.x,this.g=e.y,this.b=e.z,this}applyMatrix3(e){const t=this.r,n=this.g,s=this.b,r=e.elements;return this.r=r[0]*t+r[3]*n+r[6]*s,this.g=r[1]*t+r[4]*n+r[7]*s,this.b=r[2]*t+r[5]*n+r[8]*s,this}equals(e){return e.r===this.r&&e.g===this.g&&e.b===this.b}fromArray(e,t=0){return this.r=e[t],this.g=e[t+1],this.b=e[t+2],this}toArray(e=[],t=0){return e[t]=this.r,e[t+1]=this.g,e[t+2]=this.b,e}fromBufferAttribute(e,t){return this.r=e.getX(t),this.g=e.getY(t),this.b=e.getZ(t),this}toJSON(){return this.getHex()}*[Symbol.iterator](){yield this.r,yield this.g,yield this.b}}const Nt=new je;je.NAMES=_h;let _f=0;class bi extends wi{constructor(){super(),this.isMaterial=!0,Object.defineProperty(this,"id",{value:_f++}),this.uuid=Ps(),this.name="",this.type="Material",this.blending=Wi,this.side=ei,this.vertexColors=!1,this.opacity=1,this.transparent=!1,this.alphaHash=!1,this.blendSrc=Ia,this.blendDst=Ua,this.blendEquation=di,this.blendSrcAlpha=null,this.blendDstAlpha=null,this.blendEquationAlpha=null,this.blendColor=new je(0,0,0),this.blendAlpha=0,this.depthFunc=ji,this.depthTest=!0,this.depthWrite=!0,this.stencilWriteMask=255,this.stencilFunc=Sl,this.stencilRef=0,this.stencilFuncMask=255,this.stencilFail=Ti,this.stencilZFail=Ti,this.stencilZPass=Ti,this.stencilWrite=!1,this.clippingPlanes=null,this.clipIntersection=!1,this.clipShadows=!1,this.shadowSide=null,this.colorWrite=!0,this.precision=null,this.polygonOffset=!1,this.polygonOffsetFactor=0,this.polygonOffsetUnits=0,this.dithering=!1,this.alphaToCoverage=!1,this.premultipliedAlpha=!1,this.forceSinglePass=!1,this.allowOverride=!0,this.visible=!0,this.toneMapped=!0,this.userData={},this.version=0,this._alphaTest=0}get alphaTest(){return this._alphaTest}set alphaTest(e){this._alphaTest>0!=e>0&&this.version++,this._alphaTest=e}onBeforeRender(){}onBeforeCompile(){}customProgramCacheKey(){return this.onBeforeCompile.toString()}setValues(e){if(e!==void 0)for(const t in e){const n=e[t];if(n===void 0){console.warn(`THREE.Material: parameter '${t}' has value of undefined.`);continue}const s=this[t];if(s===void 0){console.warn(`THREE.Material: '${t}' is not a property of THREE.${this.type}.`);continue}s&&s.isColor?s.set(n):s&&s.isVector3&&n&&n.isVector3?s.copy(n):this[t]=n}}toJSON(e){const t=e===void 0||typeof e=="string";t&&(e={textures:{},images:{}});const n={metadata:{version:4.7,type:"Material",generator:"Material.toJSON"}};n.uuid=this.uuid,n.type=this.type,this.name!==""&&(n.name=this.name),this.color&&this.color.isColor&&(n.color=this.color.getHex()),this.roughness!==void 0&&(n.roughness=this.roughness),this.metalness!==void 0&&(n.metalness=this.metalness),this.sheen!==void 0&&(n.sheen=this.sheen),this.sheenColor&&this.sheenColor.isColor&&(n.sheenColor=this.sheenColor.getHex()),this.sheenRoughness!==void 0&&(n.sheenRoughness=this.sheenRoughness),this.emissive&&this.emissive.isColor&&(n.emissive=this.emissive.getHex()),this.emissiveIntensity!==void 0&&this.emissiveIntensity!==1&&(n.emissiveIntensity=this.emissiveIntensity),this.specular&&this.specular.isColor&&(n.specular=this.specular.getHex()),this.specularIntensity!==void 0&&(n.specularIntensity=this.specularIntensity),this.specularColor&&this.specularColor.isColor&&(n.specularColor=this.specularColor.getHex()),this.shininess!==void 0&&(n.shininess=this.shininess),this.clearcoat!==void 0&&(n.clearcoat=this.clearcoat),this.clearcoatRoughness!==void 0&&(n.clearcoatRoughness=this.clearcoatRoughness),this.clearcoatMap&&this.clearcoatMap.isTexture&&(n.clearcoatMap=this.clearcoatMap.toJSON(e).uuid),this.clearcoatRoughnessMap&&this.clearcoatRoughnessMap.isTexture&&(n.clearcoatRoughnessMap=this.clearcoatRoughnessMap.toJSON(e).uuid),this.clearcoatNormalMap&&this.clearcoatNormalMap.isTexture&&(n.clearcoatNormalMap=this.clearcoatNormalMap.toJSON(e).uuid,n.clearcoatNormalScale=this.clearcoatNormalScale.toArray()),this.sheenColorMap&&this.sheenColorMap.isTexture&&(n.sheenColorMap=this.sheenColorMap.toJSON(e).uuid),this.sheenRoughnessMap&&this.sheenRoughnessMap.isTexture&&(n.sheenRoughnessMap=this.sheenRoughnessMap.toJSON(e).uuid),this.dispersion!==void 0&&(n.dispersion=this.dispersion),this.iridescence!==void 0&&(n.iridescence=this.iridescence),this.iridescenceIOR!==void 0&&(n.iridescenceIOR=this.iridescenceIOR),this.iridescenceThicknessRange!==void 0&&(n.iridescenceThicknessRange=this.iridescenceThicknessRange),this.iridescenceMap&&this.iridescenceMap.isTexture&&(n.iridescenceMap=this.iridescenceMap.toJSON(e).uuid),this.iridescenceThicknessMap&&this.iridescenceThicknessMap.isTexture&&(n.iridescenceThicknessMap=this.iridescenceThicknessMap.toJSON(e).uuid),this.anisotropy!==void 0&&(n.anisotropy=this.anisotropy),this.anisotropyRotation!==void 0&&(n.anisotropyRotation=this.anisotropyRotation),this.anisotropyMap&&this.anisotropyMap.isTexture&&(n.anisotropyMap=this.anisotropyMap.toJSON(e).uuid),this.map&&this.map.isTexture&&(n.map=this.map.toJSON(e).uuid),this.matcap&&this.matcap.isTexture&&(n.matcap=this.matcap.toJSON(e).uuid),this.alphaMap&&this.alphaMap.isTexture&&(n.alphaMap=this.alphaMap.toJSON(e).uuid),this.lightMap&&this.lightMap.isTexture&&(n.lightMap=this.lightMap.toJSON(e).uuid,n.lightMapIntensity=this.lightMapIntensity),this.aoMap&&this.aoMap.isTexture&&(n.aoMap=this.aoMap.toJSON(e).uuid,n.aoMapIntensity=this.aoMapIntensity),this.bumpMap&&this.bumpMap.isTexture&&(n.bumpMap=this.bumpMap.toJSON(e).uuid,n.bumpScale=this.bumpScale),this.normalMap&&this.normalMap.isTexture&&(n.normalMap=this.normalMap.toJSON(e).uuid,n.normalMapType=this.normalMapType,n.normalScale=this.normalScale.toArray()),this.displacementMap&&this.displacementMap.isTexture&&(n.displacementMap=this.displacementMap.toJSON(e).uuid,n.displacementScale=this.displacementScale,n.displacementBias=this.displacementBias),this.roughnessMap&&this.roughnessMap.isTexture&&(n.roughnessMap=this.roughnessMap.toJSON(e).uuid),this.metalnessMap&&this.metalnessMap.isTexture&&(n.metalnessMap=this.metalnessMap.toJSON(e).uuid),this.emissiveMap&&this.emissiveMap.isTexture&&(n.emissiveMap=this.emissiveMap.toJSON(e).uuid),this.specularMap&&this.specularMap.isTexture&&(n.specularMap=this.specularMap.toJSON(e).uuid),this.specularIntensityMap&&this.specularIntensityMap.isTexture&&(n.specularIntensityMap=this.specularIntensityMap.toJSON(e).uuid),this.specularColorMap&&this.specularColorMap.isTexture&&(n.specularColorMap=this.specularColorMap.toJSON(e).uuid),this.envMap&&this.envMap.isTexture&&(n.envMap=this.envMap.toJSON(e).uuid,this.combine!==void 0&&(n.combine=this.combine)),this.envMapRotation!==void 0&&(n.envMapRotation=this.envMapRotation.toArray()),this.envMapIntensity!==void 0&&(n.envMapIntensity=this.envMapIntensity),this.reflectivity!==void 0&&(n.reflectivity=this.reflectivity),this.refractionRatio!==void 0&&(n.refractionRatio=this.refractionRatio),this.gradientMap&&this.gradientMap.isTexture&&(n.gradientMap=this.gradientMap.toJSON(e).uuid),this.transmission!==void 0&&(n.transmission=this.transmission),this.transmissionMap&&this.transmissionMap.isTexture&&(n.transmissionMap=this.transmissionMap.toJSON(e).uuid),this.thickness!==void 0&&(n.thickness=this.thickness),this.thicknessMap&&this.thicknessMap.isTexture&&(n.thicknessMap=this.thicknessMap.toJSON(e).uuid),this.attenuationDistance!==void 0&&this.attenuationDistance!==1/0&&(n.attenuationDistance=this.attenuationDistance),this.attenuationColor!==void 0&&(n.attenuationColor=this.attenuationColor.getHex()),this.size!==void 0&&(n.size=this.size),this.shadowSide!==null&&(n.shadowSide=this.shadowSide),this.sizeAttenuation!==void 0&&(n.sizeAttenuation=this.sizeAttenuation),this.blending!==Wi&&(n.blending=this.blending),this.side!==ei&&(n.side=this.side),this.vertexColors===!0&&(n.vertexColors=!0),this.opacity<1&&(n.opacity=this.opacity),this.transparent===!0&&(n.transparent=!0),this.blendSrc!==Ia&&(n.blendSrc=this.blendSrc),this.blendDst!==Ua&&(n.blendDst=this.blendDst),this.blendEquation!==di&&(n.blendEquation=this.blendEquation),this.blendSrcAlpha!==null&&(n.blendSrcAlpha=this.blendSrcAlpha),this.blendDstAlpha!==null&&(n.blendDstAlpha=this.blendDstAlpha),this.blendEquationAlpha!==null&&(n.blendEquationAlpha=this.blendEquationAlpha),this.blendColor&&this.blendColor.isColor&&(n.blendColor=this.blendColor.getHex()),this.blendAlpha!==0&&(n.blendAlpha=this.blendAlpha),this.depthFunc!==ji&&(n.depthFunc=this.depthFunc),this.depthTest===!1&&(n.depthTest=this.depthTest),this.depthWrite===!1&&(n.depthWrite=this.depthWrite),this.colorWrite===!1&&(n.colorWrite=this.colorWrite),this.stencilWriteMask!==255&&(n.stencilWriteMask=this.stencilWriteMask),this.stencilFunc!==Sl&&(n.stencilFunc=this.stencilFunc),this.stencilRef!==0&&(n.stencilRef=this.stencilRef),this.stencilFuncMask!==255&&(n.stencilFuncMask=this.stencilFuncMask),this.stencilFail!==Ti&&(n.stencilFail=this.stencilFail),this.stencilZFail!==Ti&&(n.stencilZFail=this.stencilZFail),this.stencilZPass!==Ti&&(n.stencilZPass=this.stencilZPass),this.stencilWrite===!0&&(n.stencilWrite=this.stencilWrite),this.rotation!==void 0&&this.rotation!==0&&(n.rotation=this.rotation),this.polygonOffset===!0&&(n.polygonOffset=!0),this.polygonOffsetFactor!==0&&(n.polygonOffsetFactor=this.polygonOffsetFactor),this.polygonOffsetUnits!==0&&(n.polygonOffsetUnits=this.polygonOffsetUnits),this.linewidth!==void 0&&this.linewidth!==1&&(n.linewidth=this.linewidth),this.dashSize!==void 0&&(n.dashSize=this.dashSize),this.gapSize!==void 0&&(n.gapSize=this.gapSize),this.scale!==void 0&&(n.scale=this.scale),this.dithering===!0&&(n.dithering=!0),this.alphaTest>0&&(n.alphaTest=this.alphaTest),this.alphaHash===!0&&(n.alphaHash=!0),this.alphaToCoverage===!0&&(n.alphaToCoverage=!0),this.premultipliedAlpha===!0&&(n.premultipliedAlpha=!0),this.forceSinglePass===!0&&(n.forceSinglePass=!0),this.wireframe===!0&&(n.wireframe=!0),this.wireframeLinewidth>1&&(n.wireframeLinewidth=this.wireframeLinewidth),this.wireframeLinecap!=="round"&&(n.wireframeLinecap=this.wireframeLinecap),this.wireframeLinejoin!=="round"&&(n.wireframeLinejoin=this.wireframeLinejoin),this.flatShading===!0&&(n.flatShading=!0),this.visible===!1&&(n.visible=!1),this.toneMapped===!1&&(n.toneMapped=!1),this.fog===!1&&(n.fog=!1),Object.keys(this.userData).length>0&&(n.userData=this.userData);function s(r){const a=[];for(const o in r){const c=r[o];delete c.metadata,a.push(c)}return a}if(t){const r=s(e.textures),a=s(e.images);r.length>0&&(n.textures=r),a.length>0&&(n.images=a)}return n}clone(){return new this.constructor().copy(this)}copy(e){this.name=e.name,this.blending=e.blending,this.side=e.side,this.vertexColors=e.vertexColors,this.opacity=e.opacity,this.transparent=e.transparent,this.blendSrc=e.blendSrc,this.blendDst=e.blendDst,this.blendEquation=e.blendEquation,this.blendSrcAlpha=e.blendSrcAlpha,this.blendDstAlpha=e.blendDstAlpha,this.blendEquationAlpha=e.blendEquationAlpha,this.blendColor.copy(e.blendColor),this.blendAlpha=e.blendAlpha,this.depthFunc=e.depthFunc,this.depthTest=e.depthTest,this.depthWrite=e.depthWrite,this.stencilWriteMask=e.stencilWriteMask,this.stencilFunc=e.stencilFunc,this.stencilRef=e.stencilRef,this.stencilFuncMask=e.stencilFuncMask,this.stencilFail=e.stencilFail,this.stencilZFail=e.stencilZFail,this.stencilZPass=e.stencilZPass,this.stencilWrite=e.stencilWrite;const t=e.clippingPlanes;let n=null;if(t!==null){const s=t.length;n=new Array(s);for(let r=0;r!==s;++r)n[r]=t[r].clone()}return this.clippingPlanes=n,this.clipIntersection=e.clipIntersection,this.clipShadows=e.clipShadows,this.shadowSide=e.shadowSide,this.colorWrite=e.colorWrite,this.precision=e.precision,this.polygonOffset=e.polygonOffset,this.polygonOffsetFactor=e.polygonOffsetFactor,this.polygonOffsetUnits=e.polygonOffsetUnits,this.dithering=e.dithering,this.alphaTest=e.alphaTest,this.alphaHash=e.alphaHash,this.alphaToCoverage=e.alphaToCoverage,this.premultipliedAlpha=e.premultipliedAlpha,this.forceSinglePass=e.forceSinglePass,this.visible=e.visible,this.toneMapped=e.toneMapped,this.userData=JSON.parse(JSON.stringify(e.userData)),this}dispose(){this.dispatchEvent({type:"dispose"})}set needsUpdate(e){e===!0&&this.version++}}class Ts extends bi{constructor(e){super(),this.isMeshBasicMaterial=!0,this.type="MeshBasicMaterial",this.color=new je(16777215),this.map=null,this.lightMap=null,this.lightMapIntensity=1,this.aoMap=null,this.aoMapIntensity=1,this.specularMap=null,this.alphaMap=null,this.envMap=null,this.envMapRotation=new En,this.combine=Bo,this.reflectivity=1,this.refractionRatio=.98,this.wireframe=!1,this.wireframeLinewidth=1,this.wireframeLinecap="round",this.wireframeLinejoin="round",this.fog=!0,this.setValues(e)}copy(e){return super.copy(e),this.color.copy(e.color),this.map=e.map,this.lightMap=e.lightMap,this.lightMapIntensity=e.lightMapIntensity,this.aoMap=e.aoMap,this.aoMapIntensity=e.aoMapIntensity,this.specularMap=e.specularMap,this.alphaMap=e.alphaMap,this.envMap=e.envMap,this.envMapRotation.copy(e.envMapRotation),this.combine=e.combine,this.reflectivity=e.reflectivity,this.refractionRatio=e.refractionRatio,this.wireframe=e.wireframe,this.wireframeLinewidth=e.wireframeLinewidth,this.wireframeLinecap=e.wireframeLinecap,this.wireframeLinejoin=e.wireframeLinejoin,this.fog=e.fog,this}}const St=new U,js=new Ve;let vf=0;class $t{constructor(e,t,n=!1){if(Array.isArray(e))throw new TypeError("THREE.BufferAttribute: array should be a Typed Array.");this.isBufferAttribute=!0,Object.defineProperty(this,"id",{value:vf++}),this.name="",this.array=e,this.itemSize=t,this.count=e!==void 0?e.length/t:0,this.normalized=n,this.usage=El,this.updateRanges=[],this.gpuType=Un,this.version=0}onUploadCallback(){}set needsUpdate(e){e===!0&&this.version++}setUsage(e){return this.usage=e,this}addUpdateRange(e,t){this.updateRanges.push({start:e,count:t})}clearUpdateRanges(){this.updateRanges.length=0}copy(e){return this.name=e.name,this.array=new e.array.constructor(e.array),this.itemSize=e.itemSize,this.count=e.count,this.normalized=e.normalized,this.usage=e.usage,this.gpuType=e.gpuType,this}copyAt(e,t,n){e*=this.itemSize,n*=t.itemSize;for(let s=0,r=this.itemSize;s<r;s++)this.array[e+s]=t.array[n+s];return this}copyArray(e){return this.array.set(e),this}applyMatrix3(e){if(this.itemSize===2)for(let t=0,n=this.count;t<n;t++)js.fromBufferAttribute(this,t),js.applyMatrix3(e),this.setXY(t,js.x,js.y);else if(this.itemSize===3)for(let t=0,n=this.count;t<n;t++)St.fromBufferAttribute(this,t),St.applyMatrix3(e),this.setXYZ(t,St.x,St.y,St.z);return this}applyMatrix4(e){for(let t=0,n=this.count;t<n;t++)St.fromBufferAttribute(this,t),St.applyMatrix4(e),this.setXYZ(t,St.x,St.y,St.z);return this}applyNormalMatrix(e){for(let t=0,n=this.count;t<n;t++)St.fromBufferAttribute(this,t),St.applyNormalMatrix(e),this.setXYZ(t,St.x,St.y,St.z);return this}transformDirection(e){for(let t=0,n=this.count;t<n;t++)St.fromBufferAttribute(this,t),St.transformDirection(e),this.setXYZ(t,St.x,St.y,St.z);return this}set(e,t=0){return this.array.set(e,t),this}getComponent(e,t){let n=this.array[e*this.itemSize+t];return this.normalized&&(n=os(n,this.array)),n}setComponent(e,t,n){return this.normalized&&(n=Vt(n,this.array)),this.array[e*this.itemSize+t]=n,this}getX(e){let t=this.array[e*this.itemSize];return this.normalized&&(t=os(t,this.array)),t}setX(e,t){return this.normalized&&(t=Vt(t,this.array)),this.array[e*this.itemSize]=t,this}getY(e){let t=this.array[e*this.itemSize+1];return this.normalized&&(t=os(t,this.array)),t}setY(e,t){return this.normalized&&(t=Vt(t,this.array)),this.array[e*this.itemSize+1]=t,this}getZ(e){let t=this.array[e*this.itemSize+2];return this.normalized&&(t=os(t,this.array)),t}setZ(e,t){return this.normalized&&(t=Vt(t,this.array)),this.array[e*this.itemSize+2]=t,this}getW(e){let t=this.array[e*this.itemSize+3];return this.normalized&&(t=os(t,this.array)),t}setW(e,t){return this.normalized&&(t=Vt(t,this.array)),this.array[e*this.itemSize+3]=t,this}setXY(e,t,n){return e*=this.itemSize,this.normalized&&(t=Vt(t,this.array),n=Vt(n,this.array)),this.array[e+0]=t,this.array[e+1]=n,this}setXYZ(e,t,n,s){return e*=this.itemSize,this.normalized&&(t=Vt(t,this.array),n=Vt(n,this.array),s=Vt(s,this.array)),this.array[e+0]=t,this.array[e+1]=n,this.array[e+2]=s,this}setXYZW(e,t,n,s,r){return e*=this.itemSize,this.normalized&&(t=Vt(t,this.array),n=Vt(n,this.array),s=Vt(s,this.array),r=Vt(r,this.array)),this.array[e+0]=t,this.array[e+1]=n,this.array[e+2]=s,this.array[e+3]=r,this}onUpload(e){return this.onUploadCallback=e,this}clone(){return new this.constructor(this.array,this.itemSize).copy(this)}toJSON(){const e={itemSize:this.itemSize,type:this.array.constructor.name,array:Array.from(this.array),normalized:this.normalized};return this.name!==""&&(e.name=this.name),this.usage!==El&&(e.usage=this.usage),e}}class vh extends $t{constructor(e,t,n){super(new Uint16Array(e),t,n)}}class xh extends $t{constructor(e,t,n){super(new Uint32Array(e),t,n)}}class Lt extends $t{constructor(e,t,n){super(new Float32Array(e),t,n)}}let xf=0;const rn=new mt,pa=new Tt,Fi=new U,Jt=new Ds,us=new Ds,Pt=new U;class It extends wi{constructor(){super(),this.isBufferGeometry=!0,Object.defineProperty(this,"id",{value:xf++}),this.uuid=Ps(),this.name="",this.type="BufferGeometry",this.index=null,this.indirect=null,this.attributes={},this.morphAttributes={},this.morphTargetsRelative=!1,this.groups=[],this.boundingBox=null,this.boundingSphere=null,this.drawRange={start:0,count:1/0},this.userData={}}getIndex(){return this.index}setIndex(e){return Array.isArray(e)?this.index=new(mh(e)?xh:vh)(e,1):this.index=e,this}setIndirect(e){return this.indirect=e,this}getIndirect(){return this.indirect}getAttribute(e){return this.attributes[e]}setAttribute(e,t){return this.attributes[e]=t,this}deleteAttribute(e){return delete this.attributes[e],this}hasAttribute(e){return this.attributes[e]!==void 0}addGroup(e,t,n=0){this.groups.push({start:e,count:t,materialIndex:n})}clearGroups(){this.groups=[]}setDrawRange(e,t){this.drawRange.start=e,this.drawRange.count=t}applyMatrix4(e){const t=this.attributes.position;t!==void 0&&(t.applyMatrix4(e),t.needsUpdate=!0);const n=this.attributes.normal;if(n!==void 0){const r=new qe().getNormalMatrix(e);n.applyNormalMatrix(r),n.needsUpdate=!0}const s=this.attributes.tangent;return s!==void 0&&(s.transformDirection(e),s.needsUpdate=!0),this.boundingBox!==null&&this.computeBoundingBox(),this.boundingSphere!==null&&this.computeBoundingSphere(),this}applyQuaternion(e){return rn.makeRotationFromQuaternion(e),this.applyMatrix4(rn),this}rotateX(e){return rn.makeRotationX(e),this.applyMatrix4(rn),this}rotateY(e){return rn.makeRotationY(e),this.applyMatrix4(rn),this}rotateZ(e){return rn.makeRotationZ(e),this.applyMatrix4(rn),this}translate(e,t,n){return rn.makeTranslation(e,t,n),this.applyMatrix4(rn),this}scale(e,t,n){return rn.makeScale(e,t,n),this.applyMatrix4(rn),this}lookAt(e){return pa.lookAt(e),pa.updateMatrix(),this.applyMatrix4(pa.matrix),this}center(){return this.computeBoundingBox(),this.boundingBox.getCenter(Fi).negate(),this.translate(Fi.x,Fi.y,Fi.z),this}setFromPoints(e){const t=this.getAttribute("position");if(t===void 0){const n=[];for(let s=0,r=e.length;s<r;s++){const a=e[s];n.push(a.x,a.y,a.z||0)}this.setAttribute("position",new Lt(n,3))}else{const n=Math.min(e.length,t.count);for(let s=0;s<n;s++){const r=e[s];t.setXYZ(s,r.x,r.y,r.z||0)}e.length>t.count&&console.warn("THREE.BufferGeometry: Buffer size too small for points data. Use .dispose() and create a new geometry."),t.needsUpdate=!0}return this}computeBoundingBox(){this.boundingBox===null&&(this.boundingBox=new Ds);const e=this.attributes.position,t=this.morphAttributes.position;if(e&&e.isGLBufferAttribute){console.error("THREE.BufferGeometry.computeBoundingBox(): GLBufferAttribute requires a manual bounding box.",this),this.boundingBox.set(new U(-1/0,-1/0,-1/0),new U(1/0,1/0,1/0));return}if(e!==void 0){if(this.boundingBox.setFromBufferAttribute(e),t)for(let n=0,s=t.length;n<s;n++){const r=t[n];Jt.setFromBufferAttribute(r),this.morphTargetsRelative?(Pt.addVectors(this.boundingBox.min,Jt.min),this.boundingBox.expandByPoint(Pt),Pt.addVectors(this.boundingBox.max,Jt.max),this.boundingBox.expandByPoint(Pt)):(this.boundingBox.expandByPoint(Jt.min),this.boundingBox.expandByPoint(Jt.max))}}else this.boundingBox.makeEmpty();(isNaN(this.boundingBox.min.x)||isNaN(this.boundingBox.min.y)||isNaN(this.boundingBox.min.z))&&console.error('THREE.BufferGeometry.computeBoundingBox(): Computed min/max have NaN values. The "position" attribute is likely to have NaN values.',this)}computeBoundingSphere(){this.boundingSphere===null&&(this.boundingSphere=new ts);const e=this.attributes.position,t=this.morphAttributes.position;if(e&&e.isGLBufferAttribute){console.error("THREE.BufferGeometry.computeBoundingSphere(): GLBufferAttribute requires a manual bounding sphere.",this),this.boundingSphere.set(new U,1/0);return}if(e){const n=this.boundingSphere.center;if(Jt.setFromBufferAttribute(e),t)for(let r=0,a=t.length;r<a;r++){const o=t[r];us.setFromBufferAttribute(o),this.morphTargetsRelative?(Pt.addVectors(Jt.min,us.min),Jt.expandByPoint(Pt),Pt.addVectors(Jt.max,us.max),Jt.expandByPoint(Pt)):(Jt.expandByPoint(us.min),Jt.expandByPoint(us.max))}Jt.getCenter(n);let s=0;for(let r=0,a=e.count;r<a;r++)Pt.fromBufferAttribute(e,r),s=Math.max(s,n.distanceToSquared(Pt));if(t)for(let r=0,a=t.length;r<a;r++){const o=t[r],c=this.morphTargetsRelative;for(let l=0,h=o.count;l<h;l++)Pt.fromBufferAttribute(o,l),c&&(Fi.fromBufferAttribute(e,l),Pt.add(Fi)),s=Math.max(s,n.distanceToSquared(Pt))}this.boundingSphere.radius=Math.sqrt(s),isNaN(this.boundingSphere.radius)&&console.error('THREE.BufferGeometry.computeBoundingSphere(): Computed radius is NaN. The "position" attribute is likely to have NaN values.',this)}}computeTangents(){const e=this.index,t=this.attributes;if(e===null||t.position===void 0||t.normal===void 0||t.uv===void 0){console.error("THREE.BufferGeometry: .computeTangents() failed. Missing required attributes (index, position, normal or uv)");return}const n=t.position,s=t.normal,r=t.uv;this.hasAttribute("tangent")===!1&&this.setAttribute("tangent",new $t(new Float32Array(4*n.count),4));const a=this.getAttribute("tangent"),o=[],c=[];for(let N=0;N<n.count;N++)o[N]=new U,c[N]=new U;const l=new U,h=new U,u=new U,d=new Ve,p=new Ve,_=new Ve,v=new U,m=new U;function f(N,w,M){l.fromBufferAttribute(n,N),h.fromBufferAttribute(n,w),u.fromBufferAttribute(n,M),d.fromBufferAttribute(r,N),p.fromBufferAttribute(r,w),_.fromBufferAttribute(r,M),h.sub(l),u.sub(l),p.sub(d),_.sub(d);const S=1/(p.x*_.y-_.x*p.y);isFinite(S)&&(v.copy(h).multiplyScalar(_.y).addScaledVector(u,-p.y).multiplyScalar(S),m.copy(u).multiplyScalar(p.x).addScaledVector(h,-_.x).multiplyScalar(S),o[N].add(v),o[w].add(v),o[M].add(v),c[N].add(m),c[w].add(m),c[M].add(m))}let A=this.groups;A.length===0&&(A=[{start:0,count:e.count}]);for(let N=0,w=A.length;N<w;++N){const M=A[N],S=M.start,L=M.count;for(let O=S,V=S+L;O<V;O+=3)f(e.getX(O+0),e.getX(O+1),e.getX(O+2))}const T=new U,b=new U,P=new U,C=new U;function D(N){P.fromBufferAttribute(s,N),C.copy(P);const w=o[N];T.copy(w),T.sub(P.multiplyScalar(P.dot(w))).normalize(),b.crossVectors(C,w);const S=b.dot(c[N])<0?-1:1;a.setXYZW(N,T.x,T.y,T.z,S)}for(let N=0,w=A.length;N<w;++N){const M=A[N],S=M.start,L=M.count;for(let O=S,V=S+L;O<V;O+=3)D(e.getX(O+0)),D(e.getX(O+1)),D(e.getX(O+2))}}computeVertexNormals(){const e=this.index,t=this.getAttribute("position");if(t!==void 0){let n=this.getAttribute("normal");if(n===void 0)n=new $t(new Float32Array(t.count*3),3),this.setAttribute("normal",n);else for(let d=0,p=n.count;d<p;d++)n.setXYZ(d,0,0,0);const s=new U,r=new U,a=new U,o=new U,c=new U,l=new U,h=new U,u=new U;if(e)for(let d=0,p=e.count;d<p;d+=3){const _=e.getX(d+0),v=e.getX(d+1),m=e.getX(d+2);s.fromBufferAttribute(t,_),r.fromBufferAttribute(t,v),a.fromBufferAttribute(t,m),h.subVectors(a,r),u.subVectors(s,r),h.cross(u),o.fromBufferAttribute(n,_),c.fromBufferAttribute(n,v),l.fromBufferAttribute(n,m),o.add(h),c.add(h),l.add(h),n.setXYZ(_,o.x,o.y,o.z),n.setXYZ(v,c.x,c.y,c.z),n.setXYZ(m,l.x,l.y,l.z)}else for(let d=0,p=t.count;d<p;d+=3)s.fromBufferAttribute(t,d+0),r.fromBufferAttribute(t,d+1),a.fromBufferAttribute(t,d+2),h.subVectors(a,r),u.subVectors(s,r),h.cross(u),n.setXYZ(d+0,h.x,h.y,h.z),n.setXYZ(d+1,h.x,h.y,h.z),n.setXYZ(d+2,h.x,h.y,h.z);this.normalizeNormals(),n.needsUpdate=!0}}normalizeNormals(){const e=this.attributes.normal;for(let t=0,n=e.count;t<n;t++)Pt.fromBufferAttribute(e,t),Pt.normalize(),e.setXYZ(t,Pt.x,Pt.y,Pt.z)}toNonIndexed(){function e(o,c){const l=o.array,h=o.itemSize,u=o.normalized,d=new l.constructor(c.length*h);let p=0,_=0;for(let v=0,m=c.length;v<m;v++){o.isInterleavedBufferAttribute?p=c[v]*o.data.stride+o.offset:p=c[v]*h;for(let f=0;f<h;f++)d[_++]=l[p++]}return new $t(d,h,u)}if(this.index===null)return console.warn("THREE.BufferGeometry.toNonIndexed(): BufferGeometry is already non-indexed."),this;const t=new It,n=this.index.array,s=this.attributes;for(const o in s){const c=s[o],l=e(c,n);t.setAttribute(o,l)}const r=this.morphAttributes;for(const o in r){const c=[],l=r[o];for(let h=0,u=l.length;h<u;h++){const d=l[h],p=e(d,n);c.push(p)}t.morphAttributes[o]=c}t.morphTargetsRelative=this.morphTargetsRelative;const a=this.groups;for(let o=0,c=a.length;o<c;o++){const l=a[o];t.addGroup(l.start,l.count,l.materialIndex)}return t}toJSON(){const e={metadata:{version:4.7,type:"BufferGeometry",generator:"BufferGeometry.toJSON"}};if(e.uuid=this.uuid,e.type=this.type,this.name!==""&&(e.name=this.name),Object.keys(this.userData).length>0&&(e.userData=this.userData),this.parameters!==void 0){const c=this.parameters;for(const l in c)c[l]!==void 0&&(e[l]=c[l]);return e}e.data={attributes:{}};const t=this.index;t!==null&&(e.data.index={type:t.array.constructor.name,array:Array.prototype.slice.call(t.array)});const n=this.attributes;for(const c in n){const l=n[c];e.data.attributes[c]=l.toJSON(e.data)}const s={};let r=!1;for(const c in this.morphAttributes){const l=this.morphAttributes[c],h=[];for(let u=0,d=l.length;u<d;u++){const p=l[u];h.push(p.toJSON(e.data))}h.length>0&&(s[c]=h,r=!0)}r&&(e.data.morphAttributes=s,e.data.morphTargetsRelative=this.morphTargetsRelative);const a=this.groups;a.length>0&&(e.data.groups=JSON.parse(JSON.stringify(a)));const o=this.boundingSphere;return o!==null&&(e.data.boundingSphere=o.toJSON()),e}clone(){return new this.constructor().copy(this)}copy(e){this.index=null,this.attributes={},this.morphAttributes={},this.groups=[],this.boundingBox=null,this.boundingSphere=null;const t={};this.name=e.name;const n=e.index;n!==null&&this.setIndex(n.clone());const s=e.attributes;for(const l in s){const h=s[l];this.setAttribute(l,h.clone(t))}const r=e.morphAttributes;for(const l in r){const h=[],u=r[l];for(let d=0,p=u.length;d<p;d++)h.push(u[d].clone(t));this.morphAttributes[l]=h}this.morphTargetsRelative=e.morphTargetsRelative;const a=e.groups;for(let l=0,h=a.length;l<h;l++){const u=a[l];this.addGroup(u.start,u.count,u.materialIndex)}const o=e.boundingBox;o!==null&&(this.boundingBox=o.clone());const c=e.boundingSphere;return c!==null&&(this.boundingSphere=c.clone()),this.drawRange.start=e.drawRange.start,this.drawRange.count=e.drawRange.count,this.userData=e.userData,this}dispose(){this.dispatchEvent({type:"dispose"})}}const Bl=new mt,oi=new Ls,Ks=new ts,zl=new U,Zs=new U,Js=new U,Qs=new U,ma=new U,er=new U,Hl=new U,tr=new U;class Ot extends Tt{constructor(e=new It,t=new Ts){super(),this.isMesh=!0,this.type="Mesh",this.geometry=e,this.material=t,this.morphTargetDictionary=void 0,this.morphTargetInfluences=void 0,this.count=1,this.updateMorphTargets()}copy(e,t){return super.copy(e,t),e.morphTargetInfluences!==void 0&&(this.morphTargetInfluences=e.morphTargetInfluences.slice()),e.morphTargetDictionary!==void 0&&(this.morphTargetDictionary=Object.assign({},e.morphTargetDictionary)),this.material=Array.isArray(e.material)?e.material.slice():e.material,this.geometry=e.geometry,this}updateMorphTargets(){const t=this.geometry.morphAttributes,n=Object.keys(t);if(n.length>0){const s=t[n[0]];if(s!==void 0){this.morphTargetInfluences=[],this.morphTargetDictionary={};for(let r=0,a=s.length;r<a;r++){const o=s[r].name||String(r);this.morphTargetInfluences.push(0),this.morphTargetDictionary[o]=r}}}}getVertexPosition(e,t){const n=this.geometry,s=n.attributes.position,r=n.morphAttributes.position,a=n.morphTargetsRelative;t.fromBufferAttribute(s,e);const o=this.morphTargetInfluences;if(r&&o){er.set(0,0,0);for(let c=0,l=r.length;c<l;c++){const h=o[c],u=r[c];h!==0&&(ma.fromBufferAttribute(u,e),a?er.addScaledVector(ma,h):er.addScaledVector(ma.sub(t),h))}t.add(er)}return t}raycast(e,t){const n=this.geometry,s=this.material,r=this.matrixWorld;s!==void 0&&(n.boundingSphere===null&&n.computeBoundingSphere(),Ks.copy(n.boundingSphere),Ks.applyMatrix4(r),oi.copy(e.ray).recast(e.near),!(Ks.containsPoint(oi.origin)===!1&&(oi.intersectSphere(Ks,zl)===null||oi.origin.distanceToSquared(zl)>(e.far-e.near)**2))&&(Bl.copy(r).invert(),oi.copy(e.ray).applyMatrix4(Bl),!(n.boundingBox!==null&&oi.intersectsBox(n.boundingBox)===!1)&&this._computeIntersections(e,t,oi)))}_computeIntersections(e,t,n){let s;const r=this.geometry,a=this.material,o=r.index,c=r.attributes.position,l=r.attributes.uv,h=r.attributes.uv1,u=r.attributes.normal,d=r.groups,p=r.drawRange;if(o!==null)if(Array.isArray(a))for(let _=0,v=d.length;_<v;_++){const m=d[_],f=a[m.materialIndex],A=Math.max(m.start,p.start),T=Math.min(o.count,Math.min(m.start+m.count,p.start+p.count));for(let b=A,P=T;b<P;b+=3){const C=o.getX(b),D=o.getX(b+1),N=o.getX(b+2);s=nr(this,f,e,n,l,h,u,C,D,N),s&&(s.faceIndex=Math.floor(b/3),s.face.materialIndex=m.materialIndex,t.push(s))}}else{const _=Math.max(0,p.start),v=Math.min(o.count,p.start+p.count);for(let m=_,f=v;m<f;m+=3){const A=o.getX(m),T=o.getX(m+1),b=o.getX(m+2);s=nr(this,a,e,n,l,h,u,A,T,b),s&&(s.faceIndex=Math.floor(m/3),t.push(s))}}else if(c!==void 0)if(Array.isArray(a))for(let _=0,v=d.length;_<v;_++){const m=d[_],f=a[m.materialIndex],A=Math.max(m.start,p.start),T=Math.min(c.count,Math.min(m.start+m.count,p.start+p.count));for(let b=A,P=T;b<P;b+=3){const C=b,D=b+1,N=b+2;s=nr(this,f,e,n,l,h,u,C,D,N),s&&(s.faceIndex=Math.floor(b/3),s.face.materialIndex=m.materialIndex,t.push(s))}}else{const _=Math.max(0,p.start),v=Math.min(c.count,p.start+p.count);for(let m=_,f=v;m<f;m+=3){const A=m,T=m+1,b=m+2;s=nr(this,a,e,n,l,h,u,A,T,b),s&&(s.faceIndex=Math.floor(m/3),t.push(s))}}}}function yf(i,e,t,n,s,r,a,o){let c;if(e.side===qt?c=n.intersectTriangle(a,r,s,!0,o):c=n.intersectTriangle(s,r,a,e.side===ei,o),c===null)return null;tr.copy(o),tr.applyMatrix4(i.matrixWorld);const l=t.ray.origin.distanceTo(tr);return l<t.near||l>t.far?null:{distance:l,point:tr.clone(),object:i}}function nr(i,e,t,n,s,r,a,o,c,l){i.getVertexPosition(o,Zs),i.getVertexPosition(c,Js),i.getVertexPosition(l,Qs);const h=yf(i,e,t,n,Zs,Js,Qs,Hl);if(h){const u=new U;un.getBarycoord(Hl,Zs,Js,Qs,u),s&&(h.uv=un.getInterpolatedAttribute(s,o,c,l,u,new Ve)),r&&(h.uv1=un.getInterpolatedAttribute(r,o,c,l,u,new Ve)),a&&(h.normal=un.getInterpolatedAttribute(a,o,c,l,u,new U),h.normal.dot(n.direction)>0&&h.normal.multiplyScalar(-1));const d={a:o,b:c,c:l,normal:new U,materialIndex:0};un.getNormal(Zs,Js,Qs,d.normal),h.face=d,h.barycoord=u}return h}class ns extends It{constructor(e=1,t=1,n=1,s=1,r=1,a=1){super(),this.type="BoxGeometry",this.parameters={width:e,height:t,depth:n,widthSegments:s,heightSegments:r,depthSegments:a};const o=this;s=Math.floor(s),r=Math.floor(r),a=Math.floor(a);const c=[],l=[],h=[],u=[];let d=0,p=0;_("z","y","x",-1,-1,n,t,e,a,r,0),_("z","y","x",1,-1,n,t,-e,a,r,1),_("x","z","y",1,1,e,n,t,s,a,2),_("x","z","y",1,-1,e,n,-t,s,a,3),_("x","y","z",1,-1,e,t,n,s,r,4),_("x","y","z",-1,-1,e,t,-n,s,r,5),this.setIndex(c),this.setAttribute("position",new Lt(l,3)),this.setAttribute("normal",new Lt(h,3)),this.setAttribute("uv",new Lt(u,2));function _(v,m,f,A,T,b,P,C,D,N,w){const M=b/D,S=P/N,L=b/2,O=P/2,V=C/2,z=D+1,Y=N+1;let ee=0,j=0;const G=new U;for(let se=0;se<Y;se++){const H=se*S-O;for(let ie=0;ie<z;ie++){const Ce=ie*M-L;G[v]=Ce*A,G[m]=H*T,G[f]=V,l.push(G.x,G.y,G.z),G[v]=0,G[m]=0,G[f]=C>0?1:-1,h.push(G.x,G.y,G.z),u.push(ie/D),u.push(1-se/N),ee+=1}}for(let se=0;se<N;se++)for(let H=0;H<D;H++){const ie=d+H+z*se,Ce=d+H+z*(se+1),Oe=d+(H+1)+z*(se+1),Le=d+(H+1)+z*se;c.push(ie,Ce,Le),c.push(Ce,Oe,Le),j+=6}o.addGroup(p,j,w),p+=j,d+=ee}}copy(e){return super.copy(e),this.parameters=Object.assign({},e.parameters),this}static fromJSON(e){return new ns(e.width,e.height,e.depth,e.widthSegments,e.heightSegments,e.depthSegments)}}function Qi(i){const e={};for(const t in i){e[t]={};for(const n in i[t]){const s=i[t][n];s&&(s.isColor||s.isMatrix3||s.isMatrix4||s.isVector2||s.isVector3||s.isVector4||s.isTexture||s.isQuaternion)?s.isRenderTargetTexture?(console.warn("UniformsUtils: Textures of render targets cannot be cloned via cloneUniforms() or mergeUniforms()."),e[t][n]=null):e[t][n]=s.clone():Array.isArray(s)?e[t][n]=s.slice():e[t][n]=s}}return e}function Bt(i){const e={};for(let t=0;t<i.length;t++){const n=Qi(i[t]);for(const s in n)e[s]=n[s]}return e}function Mf(i){const e=[];for(let t=0;t<i.length;t++)e.push(i[t].clone());return e}function yh(i){const e=i.getRenderTarget();return e===null?i.outputColorSpace:e.isXRRenderTarget===!0?e.texture.colorSpace:nt.workingColorSpace}const wf={clone:Qi,merge:Bt};var bf=`void main() {
	gl_Position = projectionMatrix * modelViewMatrix * vec4( position, 1.0 );
}`,Sf=`void main() {
	gl_FragColor = vec4( 1.0, 0.0, 0.0, 1.0 );
}`;class ti extends bi{constructor(e){super(),this.isShaderMaterial=!0,this.type="ShaderMaterial",this.defines={},this.uniforms={},this.uniformsGroups=[],this.vertexShader=bf,this.fragmentShader=Sf,this.linewidth=1,this.wireframe=!1,this.wireframeLinewidth=1,this.fog=!1,this.lights=!1,this.clipping=!1,this.forceSinglePass=!0,this.extensions={clipCullDistance:!1,multiDraw:!1},this.defaultAttributeValues={color:[1,1,1],uv:[0,0],uv1:[0,0]},this.index0AttributeName=void 0,this.uniformsNeedUpdate=!1,this.glslVersion=null,e!==void 0&&this.setValues(e)}copy(e){return super.copy(e),this.fragmentShader=e.fragmentShader,this.vertexShader=e.vertexShader,this.uniforms=Qi(e.uniforms),this.uniformsGroups=Mf(e.uniformsGroups),this.defines=Object.assign({},e.defines),this.wireframe=e.wireframe,this.wireframeLinewidth=e.wireframeLinewidth,this.fog=e.fog,this.lights=e.lights,this.clipping=e.clipping,this.extensions=Object.assign({},e.extensions),this.glslVersion=e.glslVersion,this}toJSON(e){const t=super.toJSON(e);t.glslVersion=this.glslVersion,t.uniforms={};for(const s in this.uniforms){const a=this.uniforms[s].value;a&&a.isTexture?t.uniforms[s]={type:"t",value:a.toJSON(e).uuid}:a&&a.isColor?t.uniforms[s]={type:"c",value:a.getHex()}:a&&a.isVector2?t.uniforms[s]={type:"v2",value:a.toArray()}:a&&a.isVector3?t.uniforms[s]={type:"v3",value:a.toArray()}:a&&a.isVector4?t.uniforms[s]={type:"v4",value:a.toArray()}:a&&a.isMatrix3?t.uniforms[s]={type:"m3",value:a.toArray()}:a&&a.isMatrix4?t.uniforms[s]={type:"m4",value:a.toArray()}:t.uniforms[s]={value:a}}Object.keys(this.defines).length>0&&(t.defines=this.defines),t.vertexShader=this.vertexShader,t.fragmentShader=this.fragmentShader,t.lights=this.lights,t.clipping=this.clipping;const n={};for(const s in this.extensions)this.extensions[s]===!0&&(n[s]=!0);return Object.keys(n).length>0&&(t.extensions=n),t}}class Mh extends Tt{constructor(){super(),this.isCamera=!0,this.type="Camera",this.matrixWorldInverse=new mt,this.projectionMatrix=new mt,this.projectionMatrixInverse=new mt,this.coordinateSystem=xn,this._reversedDepth=!1}get reversedDepth(){return this._reversedDepth}copy(e,t){return super.copy(e,t),this.matrixWorldInverse.copy(e.matrixWorldInverse),this.projectionMatrix.copy(e.projectionMatrix),this.projectionMatrixInverse.copy(e.projectionMatrixInverse),this.coordinateSystem=e.coordinateSystem,this}getWorldDirection(e){return super.getWorldDirection(e).negate()}updateMatrixWorld(e){super.updateMatrixWorld(e),this.matrixWorldInverse.copy(this.matrixWorld).invert()}updateWorldMatrix(e,t){super.updateWorldMatrix(e,t),this.matrixWorldInverse.copy(this.matrixWorld).invert()}clone(){return new this.constructor().copy(this)}}const Wn=new U,Vl=new Ve,Gl=new Ve;class on extends Mh{constructor(e=50,t=1,n=.1,s=2e3){super(),this.isPerspectiveCamera=!0,this.type="PerspectiveCamera",this.fov=e,this.zoom=1,this.near=n,this.far=s,this.focus=10,this.aspect=t,this.view=null,this.filmGauge=35,this.filmOffset=0,this.updateProjectionMatrix()}copy(e,t){return super.copy(e,t),this.fov=e.fov,this.zoom=e.zoom,this.near=e.near,this.far=e.far,this.focus=e.focus,this.aspect=e.aspect,this.view=e.view===null?null:Object.assign({},e.view),this.filmGauge=e.filmGauge,this.filmOffset=e.filmOffset,this}setFocalLength(e){const t=.5*this.getFilmHeight()/e;this.fov=Mo*2*Math.atan(t),this.updateProjectionMatrix()}getFocalLength(){const e=Math.tan(xr*.5*this.fov);return .5*this.getFilmHeight()/e}getEffectiveFOV(){return Mo*2*Math.atan(Math.tan(xr*.5*this.fov)/this.zoom)}getFilmWidth(){return this.filmGauge*Math.min(this.aspect,1)}getFilmHeight(){return this.filmGauge/Math.max(this.aspect,1)}getViewBounds(e,t,n){Wn.set(-1,-1,.5).applyMatrix4(this.projectionMatrixInverse),t.set(Wn.x,Wn.y).multiplyScalar(-e/Wn.z),Wn.set(1,1,.5).applyMatrix4(this.projectionMatrixInverse),n.set(Wn.x,Wn.y).multiplyScalar(-e/Wn.z)}getViewSize(e,t){return this.getViewBounds(e,Vl,Gl),t.subVectors(Gl,Vl)}setViewOffset(e,t,n,s,r,a){this.aspect=e/t,this.view===null&&(this.view={enabled:!0,fullWidth:1,fullHeight:1,offsetX:0,offsetY:0,width:1,height:1}),this.view.enabled=!0,this.view.fullWidth=e,this.view.fullHeight=t,this.view.offsetX=n,this.view.offsetY=s,this.view.width=r,this.view.height=a,this.updateProjectionMatrix()}clearViewOffset(){this.view!==null&&(this.view.enabled=!1),this.updateProjectionMatrix()}updateProjectionMatrix(){const e=this.near;let t=e*Math.tan(xr*.5*this.fov)/this.zoom,n=2*t,s=this.aspect*n,r=-.5*s;const a=this.view;if(this.view!==null&&this.view.enabled){const c=a.fullWidth,l=a.fullHeight;r+=a.offsetX*s/c,t-=a.offsetY*n/l,s*=a.width/c,n*=a.height/l}const o=this.filmOffset;o!==0&&(r+=e*o/this.getFilmWidth()),this.projectionMatrix.makePerspective(r,r+s,t,t-n,e,this.far,this.coordinateSystem,this.reversedDepth),this.projectionMatrixInverse.copy(this.projectionMatrix).invert()}toJSON(e){const t=super.toJSON(e);return t.object.fov=this.fov,t.object.zoom=this.zoom,t.object.near=this.near,t.object.far=this.far,t.object.focus=this.focus,t.object.aspect=this.aspect,this.view!==null&&(t.object.view=Object.assign({},this.view)),t.object.filmGauge=this.filmGauge,t.object.filmOffset=this.filmOffset,t}}const Oi=-90,ki=1;class Ef extends Tt{constructor(e,t,n){super(),this.type="CubeCamera",this.renderTarget=n,this.coordinateSystem=null,this.activeMipmapLevel=0;const s=new on(Oi,ki,e,t);s.layers=this.layers,this.add(s);const r=new on(Oi,ki,e,t);r.layers=this.layers,this.add(r);const a=new on(Oi,ki,e,t);a.layers=this.layers,this.add(a);const o=new on(Oi,ki,e,t);o.layers=this.layers,this.add(o);const c=new on(Oi,ki,e,t);c.layers=this.layers,this.add(c);const l=new on(Oi,ki,e,t);l.layers=this.layers,this.add(l)}updateCoordinateSystem(){const e=this.coordinateSystem,t=this.children.concat(),[n,s,r,a,o,c]=t;for(const l of t)this.remove(l);if(e===xn)n.up.set(0,1,0),n.lookAt(1,0,0),s.up.set(0,1,0),s.lookAt(-1,0,0),r.up.set(0,0,-1),r.lookAt(0,1,0),a.up.set(0,0,1),a.lookAt(0,-1,0),o.up.set(0,1,0),o.lookAt(0,0,1),c.up.set(0,1,0),c.lookAt(0,0,-1);else if(e===Sr)n.up.set(0,-1,0),n.lookAt(-1,0,0),s.up.set(0,-1,0),s.lookAt(1,0,0),r.up.set(0,0,1),r.lookAt(0,1,0),a.up.set(0,0,-1),a.lookAt(0,-1,0),o.up.set(0,-1,0),o.lookAt(0,0,1),c.up.set(0,-1,0),c.lookAt(0,0,-1);else throw new Error("THREE.CubeCamera.updateCoordinateSystem(): Invalid coordinate system: "+e);for(const l of t)this.add(l),l.updateMatrixWorld()}update(e,t){this.parent===null&&this.updateMatrixWorld();const{renderTarget:n,activeMipmapLevel:s}=this;this.coordinateSystem!==e.coordinateSystem&&(this.coordinateSystem=e.coordinateSystem,this.updateCoordinateSystem());const[r,a,o,c,l,h]=this.children,u=e.getRenderTarget(),d=e.getActiveCubeFace(),p=e.getActiveMipmapLevel(),_=e.xr.enabled;e.xr.enabled=!1;const v=n.texture.generateMipmaps;n.texture.generateMipmaps=!1,e.setRenderTarget(n,0,s),e.render(t,r),e.setRenderTarget(n,1,s),e.render(t,a),e.setRenderTarget(n,2,s),e.render(t,o),e.setRenderTarget(n,3,s),e.render(t,c),e.setRenderTarget(n,4,s),e.render(t,l),n.texture.generateMipmaps=v,e.setRenderTarget(n,5,s),e.render(t,h),e.setRenderTarget(u,d,p),e.xr.enabled=_,n.texture.needsPMREMUpdate=!0}}class wh extends Xt{constructor(e=[],t=Ki,n,s,r,a,o,c,l,h){super(e,t,n,s,r,a,o,c,l,h),this.isCubeTexture=!0,this.flipY=!1}get images(){return this.image}set images(e){this.image=e}}class Tf extends yi{constructor(e=1,t={}){super(e,e,t),this.isWebGLCubeRenderTarget=!0;const n={width:e,height:e,depth:1},s=[n,n,n,n,n,n];this.texture=new wh(s),this._setTextureOptions(t),this.texture.isRenderTargetTexture=!0}fromEquirectangularTexture(e,t){this.texture.type=t.type,this.texture.colorSpace=t.colorSpace,this.texture.generateMipmaps=t.generateMipmaps,this.texture.minFilter=t.minFilter,this.texture.magFilter=t.magFilter;const n={uniforms:{tEquirect:{value:null}},vertexShader:`

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
			`},s=new ns(5,5,5),r=new ti({name:"CubemapFromEquirect",uniforms:Qi(n.uniforms),vertexShader:n.vertexShader,fragmentShader:n.fragmentShader,side:qt,blending:Zn});r.uniforms.tEquirect.value=t;const a=new Ot(s,r),o=t.minFilter;return t.minFilter===mi&&(t.minFilter=vn),new Ef(1,10,this).update(e,a),t.minFilter=o,a.geometry.dispose(),a.material.dispose(),this}clear(e,t=!0,n=!0,s=!0){const r=e.getRenderTarget();for(let a=0;a<6;a++)e.setRenderTarget(this,a),e.clear(t,n,s);e.setRenderTarget(r)}}class en extends Tt{constructor(){super(),this.isGroup=!0,this.type="Group"}}const Af={type:"move"};class ga{constructor(){this._targetRay=null,this._grip=null,this._hand=null}getHandSpace(){return this._hand===null&&(this._hand=new en,this._hand.matrixAutoUpdate=!1,this._hand.visible=!1,this._hand.joints={},this._hand.inputState={pinching:!1}),this._hand}getTargetRaySpace(){return this._targetRay===null&&(this._targetRay=new en,this._targetRay.matrixAutoUpdate=!1,this._targetRay.visible=!1,this._targetRay.hasLinearVelocity=!1,this._targetRay.linearVelocity=new U,this._targetRay.hasAngularVelocity=!1,this._targetRay.angularVelocity=new U),this._targetRay}getGripSpace(){return this._grip===null&&(this._grip=new en,this._grip.matrixAutoUpdate=!1,this._grip.visible=!1,this._grip.hasLinearVelocity=!1,this._grip.linearVelocity=new U,this._grip.hasAngularVelocity=!1,this._grip.angularVelocity=new U),this._grip}dispatchEvent(e){return this._targetRay!==null&&this._targetRay.dispatchEvent(e),this._grip!==null&&this._grip.dispatchEvent(e),this._hand!==null&&this._hand.dispatchEvent(e),this}connect(e){if(e&&e.hand){const t=this._hand;if(t)for(const n of e.hand.values())this._getHandJoint(t,n)}return this.dispatchEvent({type:"connected",data:e}),this}disconnect(e){return this.dispatchEvent({type:"disconnected",data:e}),this._targetRay!==null&&(this._targetRay.visible=!1),this._grip!==null&&(this._grip.visible=!1),this._hand!==null&&(this._hand.visible=!1),this}update(e,t,n){let s=null,r=null,a=null;const o=this._targetRay,c=this._grip,l=this._hand;if(e&&t.session.visibilityState!=="visible-blurred"){if(l&&e.hand){a=!0;for(const v of e.hand.values()){const m=t.getJointPose(v,n),f=this._getHandJoint(l,v);m!==null&&(f.matrix.fromArray(m.transform.matrix),f.matrix.decompose(f.position,f.rotation,f.scale),f.matrixWorldNeedsUpdate=!0,f.jointRadius=m.radius),f.visible=m!==null}const h=l.joints["index-finger-tip"],u=l.joints["thumb-tip"],d=h.position.distanceTo(u.position),p=.02,_=.005;l.inputState.pinching&&d>p+_?(l.inputState.pinching=!1,this.dispatchEvent({type:"pinchend",handedness:e.handedness,target:this})):!l.inputState.pinching&&d<=p-_&&(l.inputState.pinching=!0,this.dispatchEvent({type:"pinchstart",handedness:e.handedness,target:this}))}else c!==null&&e.gripSpace&&(r=t.getPose(e.gripSpace,n),r!==null&&(c.matrix.fromArray(r.transform.matrix),c.matrix.decompose(c.position,c.rotation,c.scale),c.matrixWorldNeedsUpdate=!0,r.linearVelocity?(c.hasLinearVelocity=!0,c.linearVelocity.copy(r.linearVelocity)):c.hasLinearVelocity=!1,r.angularVelocity?(c.hasAngularVelocity=!0,c.angularVelocity.copy(r.angularVelocity)):c.hasAngularVelocity=!1));o!==null&&(s=t.getPose(e.targetRaySpace,n),s===null&&r!==null&&(s=r),s!==null&&(o.matrix.fromArray(s.transform.matrix),o.matrix.decompose(o.position,o.rotation,o.scale),o.matrixWorldNeedsUpdate=!0,s.linearVelocity?(o.hasLinearVelocity=!0,o.linearVelocity.copy(s.linearVelocity)):o.hasLinearVelocity=!1,s.angularVelocity?(o.hasAngularVelocity=!0,o.angularVelocity.copy(s.angularVelocity)):o.hasAngularVelocity=!1,this.dispatchEvent(Af)))}return o!==null&&(o.visible=s!==null),c!==null&&(c.visible=r!==null),l!==null&&(l.visible=a!==null),this}_getHandJoint(e,t){if(e.joints[t.jointName]===void 0){const n=new en;n.matrixAutoUpdate=!1,n.visible=!1,e.joints[t.jointName]=n,e.add(n)}return e.joints[t.jointName]}}class Rf extends Tt{constructor(){super(),this.isScene=!0,this.type="Scene",this.background=null,this.environment=null,this.fog=null,this.backgroundBlurriness=0,this.backgroundIntensity=1,this.backgroundRotation=new En,this.environmentIntensity=1,this.environmentRotation=new En,this.overrideMaterial=null,typeof __THREE_DEVTOOLS__<"u"&&__THREE_DEVTOOLS__.dispatchEvent(new CustomEvent("observe",{detail:this}))}copy(e,t){return super.copy(e,t),e.background!==null&&(this.background=e.background.clone()),e.environment!==null&&(this.environment=e.environment.clone()),e.fog!==null&&(this.fog=e.fog.clone()),this.backgroundBlurriness=e.backgroundBlurriness,this.backgroundIntensity=e.backgroundIntensity,this.backgroundRotation.copy(e.backgroundRotation),this.environmentIntensity=e.environmentIntensity,this.environmentRotation.copy(e.environmentRotation),e.overrideMaterial!==null&&(this.overrideMaterial=e.overrideMaterial.clone()),this.matrixAutoUpdate=e.matrixAutoUpdate,this}toJSON(e){const t=super.toJSON(e);return this.fog!==null&&(t.object.fog=this.fog.toJSON()),this.backgroundBlurriness>0&&(t.object.backgroundBlurriness=this.backgroundBlurriness),this.backgroundIntensity!==1&&(t.object.backgroundIntensity=this.backgroundIntensity),t.object.backgroundRotation=this.backgroundRotation.toArray(),this.environmentIntensity!==1&&(t.object.environmentIntensity=this.environmentIntensity),t.object.environmentRotation=this.environmentRotation.toArray(),t}}const _a=new U,Cf=new U,Pf=new qe;class $n{constructor(e=new U(1,0,0),t=0){this.isPlane=!0,this.normal=e,this.constant=t}set(e,t){return this.normal.copy(e),this.constant=t,this}setComponents(e,t,n,s){return this.normal.set(e,t,n),this.constant=s,this}setFromNormalAndCoplanarPoint(e,t){return this.normal.copy(e),this.constant=-t.dot(this.normal),this}setFromCoplanarPoints(e,t,n){const s=_a.subVectors(n,t).cross(Cf.subVectors(e,t)).normalize();return this.setFromNormalAndCoplanarPoint(s,e),this}copy(e){return this.normal.copy(e.normal),this.constant=e.constant,this}normalize(){const e=1/this.normal.length();return this.normal.multiplyScalar(e),this.constant*=e,this}negate(){return this.constant*=-1,this.normal.negate(),this}distanceToPoint(e){return this.normal.dot(e)+this.constant}distanceToSphere(e){return this.distanceToPoint(e.center)-e.radius}projectPoint(e,t){return t.copy(e).addScaledVector(this.normal,-this.distanceToPoint(e))}intersectLine(e,t){const n=e.delta(_a),s=this.normal.dot(n);if(s===0)return this.distanceToPoint(e.start)===0?t.copy(e.start):null;const r=-(e.start.dot(this.normal)+this.constant)/s;return r<0||r>1?null:t.copy(e.start).addScaledVector(n,r)}intersectsLine(e){const t=this.distanceToPoint(e.start),n=this.distanceToPoint(e.end);return t<0&&n>0||n<0&&t>0}intersectsBox(e){return e.intersectsPlane(this)}intersectsSphere(e){return e.intersectsPlane(this)}coplanarPoint(e){return e.copy(this.normal).multiplyScalar(-this.constant)}applyMatrix4(e,t){const n=t||Pf.getNormalMatrix(e),s=this.coplanarPoint(_a).applyMatrix4(e),r=this.normal.applyMatrix3(n).normalize();return this.constant=-s.dot(r),this}translate(e){return this.constant-=e.dot(this.normal),this}equals(e){return e.normal.equals(this.normal)&&e.constant===this.constant}clone(){return new this.constructor().copy(this)}}const li=new ts,Df=new Ve(.5,.5),ir=new U;class Yo{constructor(e=new $n,t=new $n,n=new $n,s=new $n,r=new $n,a=new $n){this.planes=[e,t,n,s,r,a]}set(e,t,n,s,r,a){const o=this.planes;return o[0].copy(e),o[1].copy(t),o[2].copy(n),o[3].copy(s),o[4].copy(r),o[5].copy(a),this}copy(e){const t=this.planes;for(let n=0;n<6;n++)t[n].copy(e.planes[n]);return this}setFromProjectionMatrix(e,t=xn,n=!1){const s=this.planes,r=e.elements,a=r[0],o=r[1],c=r[2],l=r[3],h=r[4],u=r[5],d=r[6],p=r[7],_=r[8],v=r[9],m=r[10],f=r[11],A=r[12],T=r[13],b=r[14],P=r[15];if(s[0].setComponents(l-a,p-h,f-_,P-A).normalize(),s[1].setComponents(l+a,p+h,f+_,P+A).normalize(),s[2].setComponents(l+o,p+u,f+v,P+T).normalize(),s[3].setComponents(l-o,p-u,f-v,P-T).normalize(),n)s[4].setComponents(c,d,m,b).normalize(),s[5].setComponents(l-c,p-d,f-m,P-b).normalize();else if(s[4].setComponents(l-c,p-d,f-m,P-b).normalize(),t===xn)s[5].setComponents(l+c,p+d,f+m,P+b).normalize();else if(t===Sr)s[5].setComponents(c,d,m,b).normalize();else throw new Error("THREE.Frustum.setFromProjectionMatrix(): Invalid coordinate system: "+t);return this}intersectsObject(e){if(e.boundingSphere!==void 0)e.boundingSphere===null&&e.computeBoundingSphere(),li.copy(e.boundingSphere).applyMatrix4(e.matrixWorld);else{const t=e.geometry;t.boundingSphere===null&&t.computeBoundingSphere(),li.copy(t.boundingSphere).applyMatrix4(e.matrixWorld)}return this.intersectsSphere(li)}intersectsSprite(e){li.center.set(0,0,0);const t=Df.distanceTo(e.center);return li.radius=.7071067811865476+t,li.applyMatrix4(e.matrixWorld),this.intersectsSphere(li)}intersectsSphere(e){const t=this.planes,n=e.center,s=-e.radius;for(let r=0;r<6;r++)if(t[r].distanceToPoint(n)<s)return!1;return!0}intersectsBox(e){const t=this.planes;for(let n=0;n<6;n++){const s=t[n];if(ir.x=s.normal.x>0?e.max.x:e.min.x,ir.y=s.normal.y>0?e.max.y:e.min.y,ir.z=s.normal.z>0?e.max.z:e.min.z,s.distanceToPoint(ir)<0)return!1}return!0}containsPoint(e){const t=this.planes;for(let n=0;n<6;n++)if(t[n].distanceToPoint(e)<0)return!1;return!0}clone(){return new this.constructor().copy(this)}}class is extends bi{constructor(e){super(),this.isLineBasicMaterial=!0,this.type="LineBasicMaterial",this.color=new je(16777215),this.map=null,this.linewidth=1,this.linecap="round",this.linejoin="round",this.fog=!0,this.setValues(e)}copy(e){return super.copy(e),this.color.copy(e.color),this.map=e.map,this.linewidth=e.linewidth,this.linecap=e.linecap,this.linejoin=e.linejoin,this.fog=e.fog,this}}const Tr=new U,Ar=new U,Wl=new mt,ds=new Ls,sr=new ts,va=new U,$l=new U;class Is extends Tt{constructor(e=new It,t=new is){super(),this.isLine=!0,this.type="Line",this.geometry=e,this.material=t,this.morphTargetDictionary=void 0,this.morphTargetInfluences=void 0,this.updateMorphTargets()}copy(e,t){return super.copy(e,t),this.material=Array.isArray(e.material)?e.material.slice():e.material,this.geometry=e.geometry,this}computeLineDistances(){const e=this.geometry;if(e.index===null){const t=e.attributes.position,n=[0];for(let s=1,r=t.count;s<r;s++)Tr.fromBufferAttribute(t,s-1),Ar.fromBufferAttribute(t,s),n[s]=n[s-1],n[s]+=Tr.distanceTo(Ar);e.setAttribute("lineDistance",new Lt(n,1))}else console.warn("THREE.Line.computeLineDistances(): Computation only possible with non-indexed BufferGeometry.");return this}raycast(e,t){const n=this.geometry,s=this.matrixWorld,r=e.params.Line.threshold,a=n.drawRange;if(n.boundingSphere===null&&n.computeBoundingSphere(),sr.copy(n.boundingSphere),sr.applyMatrix4(s),sr.radius+=r,e.ray.intersectsSphere(sr)===!1)return;Wl.copy(s).invert(),ds.copy(e.ray).applyMatrix4(Wl);const o=r/((this.scale.x+this.scale.y+this.scale.z)/3),c=o*o,l=this.isLineSegments?2:1,h=n.index,d=n.attributes.position;if(h!==null){const p=Math.max(0,a.start),_=Math.min(h.count,a.start+a.count);for(let v=p,m=_-1;v<m;v+=l){const f=h.getX(v),A=h.getX(v+1),T=rr(this,e,ds,c,f,A,v);T&&t.push(T)}if(this.isLineLoop){const v=h.getX(_-1),m=h.getX(p),f=rr(this,e,ds,c,v,m,_-1);f&&t.push(f)}}else{const p=Math.max(0,a.start),_=Math.min(d.count,a.start+a.count);for(let v=p,m=_-1;v<m;v+=l){const f=rr(this,e,ds,c,v,v+1,v);f&&t.push(f)}if(this.isLineLoop){const v=rr(this,e,ds,c,_-1,p,_-1);v&&t.push(v)}}}updateMorphTargets(){const t=this.geometry.morphAttributes,n=Object.keys(t);if(n.length>0){const s=t[n[0]];if(s!==void 0){this.morphTargetInfluences=[],this.morphTargetDictionary={};for(let r=0,a=s.length;r<a;r++){const o=s[r].name||String(r);this.morphTargetInfluences.push(0),this.morphTargetDictionary[o]=r}}}}}function rr(i,e,t,n,s,r,a){const o=i.geometry.attributes.position;if(Tr.fromBufferAttribute(o,s),Ar.fromBufferAttribute(o,r),t.distanceSqToSegment(Tr,Ar,va,$l)>n)return;va.applyMatrix4(i.matrixWorld);const l=e.ray.origin.distanceTo(va);if(!(l<e.near||l>e.far))return{distance:l,point:$l.clone().applyMatrix4(i.matrixWorld),index:a,face:null,faceIndex:null,barycoord:null,object:i}}const ql=new U,Xl=new U;class bh extends Is{constructor(e,t){super(e,t),this.isLineSegments=!0,this.type="LineSegments"}computeLineDistances(){const e=this.geometry;if(e.index===null){const t=e.attributes.position,n=[];for(let s=0,r=t.count;s<r;s+=2)ql.fromBufferAttribute(t,s),Xl.fromBufferAttribute(t,s+1),n[s]=s===0?0:n[s-1],n[s+1]=n[s]+ql.distanceTo(Xl);e.setAttribute("lineDistance",new Lt(n,1))}else console.warn("THREE.LineSegments.computeLineDistances(): Computation only possible with non-indexed BufferGeometry.");return this}}class Sh extends bi{constructor(e){super(),this.isPointsMaterial=!0,this.type="PointsMaterial",this.color=new je(16777215),this.map=null,this.alphaMap=null,this.size=1,this.sizeAttenuation=!0,this.fog=!0,this.setValues(e)}copy(e){return super.copy(e),this.color.copy(e.color),this.map=e.map,this.alphaMap=e.alphaMap,this.size=e.size,this.sizeAttenuation=e.sizeAttenuation,this.fog=e.fog,this}}const Yl=new mt,wo=new Ls,ar=new ts,or=new U;class Eh extends Tt{constructor(e=new It,t=new Sh){super(),this.isPoints=!0,this.type="Points",this.geometry=e,this.material=t,this.morphTargetDictionary=void 0,this.morphTargetInfluences=void 0,this.updateMorphTargets()}copy(e,t){return super.copy(e,t),this.material=Array.isArray(e.material)?e.material.slice():e.material,this.geometry=e.geometry,this}raycast(e,t){const n=this.geometry,s=this.matrixWorld,r=e.params.Points.threshold,a=n.drawRange;if(n.boundingSphere===null&&n.computeBoundingSphere(),ar.copy(n.boundingSphere),ar.applyMatrix4(s),ar.radius+=r,e.ray.intersectsSphere(ar)===!1)return;Yl.copy(s).invert(),wo.copy(e.ray).applyMatrix4(Yl);const o=r/((this.scale.x+this.scale.y+this.scale.z)/3),c=o*o,l=n.index,u=n.attributes.position;if(l!==null){const d=Math.max(0,a.start),p=Math.min(l.count,a.start+a.count);for(let _=d,v=p;_<v;_++){const m=l.getX(_);or.fromBufferAttribute(u,m),jl(or,m,c,s,e,t,this)}}else{const d=Math.max(0,a.start),p=Math.min(u.count,a.start+a.count);for(let _=d,v=p;_<v;_++)or.fromBufferAttribute(u,_),jl(or,_,c,s,e,t,this)}}updateMorphTargets(){const t=this.geometry.morphAttributes,n=Object.keys(t);if(n.length>0){const s=t[n[0]];if(s!==void 0){this.morphTargetInfluences=[],this.morphTargetDictionary={};for(let r=0,a=s.length;r<a;r++){const o=s[r].name||String(r);this.morphTargetInfluences.push(0),this.morphTargetDictionary[o]=r}}}}}function jl(i,e,t,n,s,r,a){const o=wo.distanceSqToPoint(i);if(o<t){const c=new U;wo.closestPointToPoint(i,c),c.applyMatrix4(n);const l=s.ray.origin.distanceTo(c);if(l<s.near||l>s.far)return;r.push({distance:l,distanceToRay:Math.sqrt(o),point:c,index:e,face:null,faceIndex:null,barycoord:null,object:a})}}class Th extends Xt{constructor(e,t,n=vi,s,r,a,o=fn,c=fn,l,h=bs,u=1){if(h!==bs&&h!==Ss)throw new Error("DepthTexture format must be either THREE.DepthFormat or THREE.DepthStencilFormat");const d={width:e,height:t,depth:u};super(d,s,r,a,o,c,h,n,l),this.isDepthTexture=!0,this.flipY=!1,this.generateMipmaps=!1,this.compareFunction=null}copy(e){return super.copy(e),this.source=new qo(Object.assign({},e.image)),this.compareFunction=e.compareFunction,this}toJSON(e){const t=super.toJSON(e);return this.compareFunction!==null&&(t.compareFunction=this.compareFunction),t}}class Ah extends Xt{constructor(e=null){super(),this.sourceTexture=e,this.isExternalTexture=!0}copy(e){return super.copy(e),this.sourceTexture=e.sourceTexture,this}}class Ir extends It{constructor(e=1,t=1,n=1,s=32,r=1,a=!1,o=0,c=Math.PI*2){super(),this.type="CylinderGeometry",this.parameters={radiusTop:e,radiusBottom:t,height:n,radialSegments:s,heightSegments:r,openEnded:a,thetaStart:o,thetaLength:c};const l=this;s=Math.floor(s),r=Math.floor(r);const h=[],u=[],d=[],p=[];let _=0;const v=[],m=n/2;let f=0;A(),a===!1&&(e>0&&T(!0),t>0&&T(!1)),this.setIndex(h),this.setAttribute("position",new Lt(u,3)),this.setAttribute("normal",new Lt(d,3)),this.setAttribute("uv",new Lt(p,2));function A(){const b=new U,P=new U;let C=0;const D=(t-e)/n;for(let N=0;N<=r;N++){const w=[],M=N/r,S=M*(t-e)+e;for(let L=0;L<=s;L++){const O=L/s,V=O*c+o,z=Math.sin(V),Y=Math.cos(V);P.x=S*z,P.y=-M*n+m,P.z=S*Y,u.push(P.x,P.y,P.z),b.set(z,D,Y).normalize(),d.push(b.x,b.y,b.z),p.push(O,1-M),w.push(_++)}v.push(w)}for(let N=0;N<s;N++)for(let w=0;w<r;w++){const M=v[w][N],S=v[w+1][N],L=v[w+1][N+1],O=v[w][N+1];(e>0||w!==0)&&(h.push(M,S,O),C+=3),(t>0||w!==r-1)&&(h.push(S,L,O),C+=3)}l.addGroup(f,C,0),f+=C}function T(b){const P=_,C=new Ve,D=new U;let N=0;const w=b===!0?e:t,M=b===!0?1:-1;for(let L=1;L<=s;L++)u.push(0,m*M,0),d.push(0,M,0),p.push(.5,.5),_++;const S=_;for(let L=0;L<=s;L++){const V=L/s*c+o,z=Math.cos(V),Y=Math.sin(V);D.x=w*Y,D.y=m*M,D.z=w*z,u.push(D.x,D.y,D.z),d.push(0,M,0),C.x=z*.5+.5,C.y=Y*.5*M+.5,p.push(C.x,C.y),_++}for(let L=0;L<s;L++){const O=P+L,V=S+L;b===!0?h.push(V,V+1,O):h.push(V+1,V,O),N+=3}l.addGroup(f,N,b===!0?1:2),f+=N}}copy(e){return super.copy(e),this.parameters=Object.assign({},e.parameters),this}static fromJSON(e){return new Ir(e.radiusTop,e.radiusBottom,e.height,e.radialSegments,e.heightSegments,e.openEnded,e.thetaStart,e.thetaLength)}}class Ur extends Ir{constructor(e=1,t=1,n=32,s=1,r=!1,a=0,o=Math.PI*2){super(0,e,t,n,s,r,a,o),this.type="ConeGeometry",this.parameters={radius:e,height:t,radialSegments:n,heightSegments:s,openEnded:r,thetaStart:a,thetaLength:o}}static fromJSON(e){return new Ur(e.radius,e.height,e.radialSegments,e.heightSegments,e.openEnded,e.thetaStart,e.thetaLength)}}class Nr extends It{constructor(e=1,t=1,n=1,s=1){super(),this.type="PlaneGeometry",this.parameters={width:e,height:t,widthSegments:n,heightSegments:s};const r=e/2,a=t/2,o=Math.floor(n),c=Math.floor(s),l=o+1,h=c+1,u=e/o,d=t/c,p=[],_=[],v=[],m=[];for(let f=0;f<h;f++){const A=f*d-a;for(let T=0;T<l;T++){const b=T*u-r;_.push(b,-A,0),v.push(0,0,1),m.push(T/o),m.push(1-f/c)}}for(let f=0;f<c;f++)for(let A=0;A<o;A++){const T=A+l*f,b=A+l*(f+1),P=A+1+l*(f+1),C=A+1+l*f;p.push(T,b,C),p.push(b,P,C)}this.setIndex(p),this.setAttribute("position",new Lt(_,3)),this.setAttribute("normal",new Lt(v,3)),this.setAttribute("uv",new Lt(m,2))}copy(e){return super.copy(e),this.parameters=Object.assign({},e.parameters),this}static fromJSON(e){return new Nr(e.width,e.height,e.widthSegments,e.heightSegments)}}class jo extends It{constructor(e=1,t=32,n=16,s=0,r=Math.PI*2,a=0,o=Math.PI){super(),this.type="SphereGeometry",this.parameters={radius:e,widthSegments:t,heightSegments:n,phiStart:s,phiLength:r,thetaStart:a,thetaLength:o},t=Math.max(3,Math.floor(t)),n=Math.max(2,Math.floor(n));const c=Math.min(a+o,Math.PI);let l=0;const h=[],u=new U,d=new U,p=[],_=[],v=[],m=[];for(let f=0;f<=n;f++){const A=[],T=f/n;let b=0;f===0&&a===0?b=.5/t:f===n&&c===Math.PI&&(b=-.5/t);for(let P=0;P<=t;P++){const C=P/t;u.x=-e*Math.cos(s+C*r)*Math.sin(a+T*o),u.y=e*Math.cos(a+T*o),u.z=e*Math.sin(s+C*r)*Math.sin(a+T*o),_.push(u.x,u.y,u.z),d.copy(u).normalize(),v.push(d.x,d.y,d.z),m.push(C+b,1-T),A.push(l++)}h.push(A)}for(let f=0;f<n;f++)for(let A=0;A<t;A++){const T=h[f][A+1],b=h[f][A],P=h[f+1][A],C=h[f+1][A+1];(f!==0||a>0)&&p.push(T,b,C),(f!==n-1||c<Math.PI)&&p.push(b,P,C)}this.setIndex(p),this.setAttribute("position",new Lt(_,3)),this.setAttribute("normal",new Lt(v,3)),this.setAttribute("uv",new Lt(m,2))}copy(e){return super.copy(e),this.parameters=Object.assign({},e.parameters),this}static fromJSON(e){return new jo(e.radius,e.widthSegments,e.heightSegments,e.phiStart,e.phiLength,e.thetaStart,e.thetaLength)}}class Lf extends bi{constructor(e){super(),this.isMeshLambertMaterial=!0,this.type="MeshLambertMaterial",this.color=new je(16777215),this.map=null,this.lightMap=null,this.lightMapIntensity=1,this.aoMap=null,this.aoMapIntensity=1,this.emissive=new je(0),this.emissiveIntensity=1,this.emissiveMap=null,this.bumpMap=null,this.bumpScale=1,this.normalMap=null,this.normalMapType=fh,this.normalScale=new Ve(1,1),this.displacementMap=null,this.displacementScale=1,this.displacementBias=0,this.specularMap=null,this.alphaMap=null,this.envMap=null,this.envMapRotation=new En,this.combine=Bo,this.reflectivity=1,this.refractionRatio=.98,this.wireframe=!1,this.wireframeLinewidth=1,this.wireframeLinecap="round",this.wireframeLinejoin="round",this.flatShading=!1,this.fog=!0,this.setValues(e)}copy(e){return super.copy(e),this.color.copy(e.color),this.map=e.map,this.lightMap=e.lightMap,this.lightMapIntensity=e.lightMapIntensity,this.aoMap=e.aoMap,this.aoMapIntensity=e.aoMapIntensity,this.emissive.copy(e.emissive),this.emissiveMap=e.emissiveMap,this.emissiveIntensity=e.emissiveIntensity,this.bumpMap=e.bumpMap,this.bumpScale=e.bumpScale,this.normalMap=e.normalMap,this.normalMapType=e.normalMapType,this.normalScale.copy(e.normalScale),this.displacementMap=e.displacementMap,this.displacementScale=e.displacementScale,this.displacementBias=e.displacementBias,this.specularMap=e.specularMap,this.alphaMap=e.alphaMap,this.envMap=e.envMap,this.envMapRotation.copy(e.envMapRotation),this.combine=e.combine,this.reflectivity=e.reflectivity,this.refractionRatio=e.refractionRatio,this.wireframe=e.wireframe,this.wireframeLinewidth=e.wireframeLinewidth,this.wireframeLinecap=e.wireframeLinecap,this.wireframeLinejoin=e.wireframeLinejoin,this.flatShading=e.flatShading,this.fog=e.fog,this}}class If extends bi{constructor(e){super(),this.isMeshDepthMaterial=!0,this.type="MeshDepthMaterial",this.depthPacking=Gd,this.map=null,this.alphaMap=null,this.displacementMap=null,this.displacementScale=1,this.displacementBias=0,this.wireframe=!1,this.wireframeLinewidth=1,this.setValues(e)}copy(e){return super.copy(e),this.depthPacking=e.depthPacking,this.map=e.map,this.alphaMap=e.alphaMap,this.displacementMap=e.displacementMap,this.displacementScale=e.displacementScale,this.displacementBias=e.displacementBias,this.wireframe=e.wireframe,this.wireframeLinewidth=e.wireframeLinewidth,this}}class Uf extends bi{constructor(e){super(),this.isMeshDistanceMaterial=!0,this.type="MeshDistanceMaterial",this.map=null,this.alphaMap=null,this.displacementMap=null,this.displacementScale=1,this.displacementBias=0,this.setValues(e)}copy(e){return super.copy(e),this.map=e.map,this.alphaMap=e.alphaMap,this.displacementMap=e.displacementMap,this.displacementScale=e.displacementScale,this.displacementBias=e.displacementBias,this}}class Rh extends Tt{constructor(e,t=1){super(),this.isLight=!0,this.type="Light",this.color=new je(e),this.intensity=t}dispose(){}copy(e,t){return super.copy(e,t),this.color.copy(e.color),this.intensity=e.intensity,this}toJSON(e){const t=super.toJSON(e);return t.object.color=this.color.getHex(),t.object.intensity=this.intensity,this.groundColor!==void 0&&(t.object.groundColor=this.groundColor.getHex()),this.distance!==void 0&&(t.object.distance=this.distance),this.angle!==void 0&&(t.object.angle=this.angle),this.decay!==void 0&&(t.object.decay=this.decay),this.penumbra!==void 0&&(t.object.penumbra=this.penumbra),this.shadow!==void 0&&(t.object.shadow=this.shadow.toJSON()),this.target!==void 0&&(t.object.target=this.target.uuid),t}}const xa=new mt,Kl=new U,Zl=new U;class Nf{constructor(e){this.camera=e,this.intensity=1,this.bias=0,this.normalBias=0,this.radius=1,this.blurSamples=8,this.mapSize=new Ve(512,512),this.mapType=Sn,this.map=null,this.mapPass=null,this.matrix=new mt,this.autoUpdate=!0,this.needsUpdate=!1,this._frustum=new Yo,this._frameExtents=new Ve(1,1),this._viewportCount=1,this._viewports=[new Mt(0,0,1,1)]}getViewportCount(){return this._viewportCount}getFrustum(){return this._frustum}updateMatrices(e){const t=this.camera,n=this.matrix;Kl.setFromMatrixPosition(e.matrixWorld),t.position.copy(Kl),Zl.setFromMatrixPosition(e.target.matrixWorld),t.lookAt(Zl),t.updateMatrixWorld(),xa.multiplyMatrices(t.projectionMatrix,t.matrixWorldInverse),this._frustum.setFromProjectionMatrix(xa,t.coordinateSystem,t.reversedDepth),t.reversedDepth?n.set(.5,0,0,.5,0,.5,0,.5,0,0,1,0,0,0,0,1):n.set(.5,0,0,.5,0,.5,0,.5,0,0,.5,.5,0,0,0,1),n.multiply(xa)}getViewport(e){return this._viewports[e]}getFrameExtents(){return this._frameExtents}dispose(){this.map&&this.map.dispose(),this.mapPass&&this.mapPass.dispose()}copy(e){return this.camera=e.camera.clone(),this.intensity=e.intensity,this.bias=e.bias,this.radius=e.radius,this.autoUpdate=e.autoUpdate,this.needsUpdate=e.needsUpdate,this.normalBias=e.normalBias,this.blurSamples=e.blurSamples,this.mapSize.copy(e.mapSize),this}clone(){return new this.constructor().copy(this)}toJSON(){const e={};return this.intensity!==1&&(e.intensity=this.intensity),this.bias!==0&&(e.bias=this.bias),this.normalBias!==0&&(e.normalBias=this.normalBias),this.radius!==1&&(e.radius=this.radius),(this.mapSize.x!==512||this.mapSize.y!==512)&&(e.mapSize=this.mapSize.toArray()),e.camera=this.camera.toJSON(!1).object,delete e.camera.matrix,e}}class Ch extends Mh{constructor(e=-1,t=1,n=1,s=-1,r=.1,a=2e3){super(),this.isOrthographicCamera=!0,this.type="OrthographicCamera",this.zoom=1,this.view=null,this.left=e,this.right=t,this.top=n,this.bottom=s,this.near=r,this.far=a,this.updateProjectionMatrix()}copy(e,t){return super.copy(e,t),this.left=e.left,this.right=e.right,this.top=e.top,this.bottom=e.bottom,this.near=e.near,this.far=e.far,this.zoom=e.zoom,this.view=e.view===null?null:Object.assign({},e.view),this}setViewOffset(e,t,n,s,r,a){this.view===null&&(this.view={enabled:!0,fullWidth:1,fullHeight:1,offsetX:0,offsetY:0,width:1,height:1}),this.view.enabled=!0,this.view.fullWidth=e,this.view.fullHeight=t,this.view.offsetX=n,this.view.offsetY=s,this.view.width=r,this.view.height=a,this.updateProjectionMatrix()}clearViewOffset(){this.view!==null&&(this.view.enabled=!1),this.updateProjectionMatrix()}updateProjectionMatrix(){const e=(this.right-this.left)/(2*this.zoom),t=(this.top-this.bottom)/(2*this.zoom),n=(this.right+this.left)/2,s=(this.top+this.bottom)/2;let r=n-e,a=n+e,o=s+t,c=s-t;if(this.view!==null&&this.view.enabled){const l=(this.right-this.left)/this.view.fullWidth/this.zoom,h=(this.top-this.bottom)/this.view.fullHeight/this.zoom;r+=l*this.view.offsetX,a=r+l*this.view.width,o-=h*this.view.offsetY,c=o-h*this.view.height}this.projectionMatrix.makeOrthographic(r,a,o,c,this.near,this.far,this.coordinateSystem,this.reversedDepth),this.projectionMatrixInverse.copy(this.projectionMatrix).invert()}toJSON(e){const t=super.toJSON(e);return t.object.zoom=this.zoom,t.object.left=this.left,t.object.right=this.right,t.object.top=this.top,t.object.bottom=this.bottom,t.object.near=this.near,t.object.far=this.far,this.view!==null&&(t.object.view=Object.assign({},this.view)),t}}class Ff extends Nf{constructor(){super(new Ch(-5,5,5,-5,.5,500)),this.isDirectionalLightShadow=!0}}class Of extends Rh{constructor(e,t){super(e,t),this.isDirectionalLight=!0,this.type="DirectionalLight",this.position.copy(Tt.DEFAULT_UP),this.updateMatrix(),this.target=new Tt,this.shadow=new Ff}dispose(){this.shadow.dispose()}copy(e){return super.copy(e),this.target=e.target.clone(),this.shadow=e.shadow.clone(),this}}class kf extends Rh{constructor(e,t){super(e,t),this.isAmbientLight=!0,this.type="AmbientLight"}}class Bf extends on{constructor(e=[]){super(),this.isArrayCamera=!0,this.isMultiViewCamera=!1,this.cameras=e}}const Jl=new mt;class zf{constructor(e,t,n=0,s=1/0){this.ray=new Ls(e,t),this.near=n,this.far=s,this.camera=null,this.layers=new Xo,this.params={Mesh:{},Line:{threshold:1},LOD:{},Points:{threshold:1},Sprite:{}}}set(e,t){this.ray.set(e,t)}setFromCamera(e,t){t.isPerspectiveCamera?(this.ray.origin.setFromMatrixPosition(t.matrixWorld),this.ray.direction.set(e.x,e.y,.5).unproject(t).sub(this.ray.origin).normalize(),this.camera=t):t.isOrthographicCamera?(this.ray.origin.set(e.x,e.y,(t.near+t.far)/(t.near-t.far)).unproject(t),this.ray.direction.set(0,0,-1).transformDirection(t.matrixWorld),this.camera=t):console.error("THREE.Raycaster: Unsupported camera type: "+t.type)}setFromXRController(e){return Jl.identity().extractRotation(e.matrixWorld),this.ray.origin.setFromMatrixPosition(e.matrixWorld),this.ray.direction.set(0,0,-1).applyMatrix4(Jl),this}intersectObject(e,t=!0,n=[]){return bo(e,this,n,t),n.sort(Ql),n}intersectObjects(e,t=!0,n=[]){for(let s=0,r=e.length;s<r;s++)bo(e[s],this,n,t);return n.sort(Ql),n}}function Ql(i,e){return i.distance-e.distance}function bo(i,e,t,n){let s=!0;if(i.layers.test(e.layers)&&i.raycast(e,t)===!1&&(s=!1),s===!0&&n===!0){const r=i.children;for(let a=0,o=r.length;a<o;a++)bo(r[a],e,t,!0)}}class ec{constructor(e=1,t=0,n=0){this.radius=e,this.phi=t,this.theta=n}set(e,t,n){return this.radius=e,this.phi=t,this.theta=n,this}copy(e){return this.radius=e.radius,this.phi=e.phi,this.theta=e.theta,this}makeSafe(){return this.phi=Ze(this.phi,1e-6,Math.PI-1e-6),this}setFromVector3(e){return this.setFromCartesianCoords(e.x,e.y,e.z)}setFromCartesianCoords(e,t,n){return this.radius=Math.sqrt(e*e+t*t+n*n),this.radius===0?(this.theta=0,this.phi=0):(this.theta=Math.atan2(e,n),this.phi=Math.acos(Ze(t/this.radius,-1,1))),this}clone(){return new this.constructor().copy(this)}}class Hf extends bh{constructor(e=10,t=10,n=4473924,s=8947848){n=new je(n),s=new je(s);const r=t/2,a=e/t,o=e/2,c=[],l=[];for(let d=0,p=0,_=-o;d<=t;d++,_+=a){c.push(-o,0,_,o,0,_),c.push(_,0,-o,_,0,o);const v=d===r?n:s;v.toArray(l,p),p+=3,v.toArray(l,p),p+=3,v.toArray(l,p),p+=3,v.toArray(l,p),p+=3}const h=new It;h.setAttribute("position",new Lt(c,3)),h.setAttribute("color",new Lt(l,3));const u=new is({vertexColors:!0,toneMapped:!1});super(h,u),this.type="GridHelper"}dispose(){this.geometry.dispose(),this.material.dispose()}}const tc=new U;let lr,ya;class As extends Tt{constructor(e=new U(0,0,1),t=new U(0,0,0),n=1,s=16776960,r=n*.2,a=r*.2){super(),this.type="ArrowHelper",lr===void 0&&(lr=new It,lr.setAttribute("position",new Lt([0,0,0,0,1,0],3)),ya=new Ur(.5,1,5,1),ya.translate(0,-.5,0)),this.position.copy(t),this.line=new Is(lr,new is({color:s,toneMapped:!1})),this.line.matrixAutoUpdate=!1,this.add(this.line),this.cone=new Ot(ya,new Ts({color:s,toneMapped:!1})),this.cone.matrixAutoUpdate=!1,this.add(this.cone),this.setDirection(e),this.setLength(n,r,a)}setDirection(e){if(e.y>.99999)this.quaternion.set(0,0,0,1);else if(e.y<-.99999)this.quaternion.set(1,0,0,0);else{tc.set(e.z,0,-e.x).normalize();const t=Math.acos(e.y);this.quaternion.setFromAxisAngle(tc,t)}}setLength(e,t=e*.2,n=t*.2){this.line.scale.set(1,Math.max(1e-4,e-t),1),this.line.updateMatrix(),this.cone.scale.set(n,t,n),this.cone.position.y=e,this.cone.updateMatrix()}setColor(e){this.line.material.color.set(e),this.cone.material.color.set(e)}copy(e){return super.copy(e,!1),this.line.copy(e.line),this.cone.copy(e.cone),this}dispose(){this.line.geometry.dispose(),this.line.material.dispose(),this.cone.geometry.dispose(),this.cone.material.dispose()}}class Vf extends wi{constructor(e,t=null){super(),this.object=e,this.domElement=t,this.enabled=!0,this.state=-1,this.keys={},this.mouseButtons={LEFT:null,MIDDLE:null,RIGHT:null},this.touches={ONE:null,TWO:null}}connect(e){if(e===void 0){console.warn("THREE.Controls: connect() now requires an element.");return}this.domElement!==null&&this.disconnect(),this.domElement=e}disconnect(){}dispose(){}update(){}}function nc(i,e,t,n){const s=Gf(n);switch(t){case ch:return i*e;case uh:return i*e/s.components*s.byteLength;case Go:return i*e/s.components*s.byteLength;case dh:return i*e*2/s.components*s.byteLength;case Wo:return i*e*2/s.components*s.byteLength;case hh:return i*e*3/s.components*s.byteLength;case dn:return i*e*4/s.components*s.byteLength;case $o:return i*e*4/s.components*s.byteLength;case mr:case gr:return Math.floor((i+3)/4)*Math.floor((e+3)/4)*8;case _r:case vr:return Math.floor((i+3)/4)*Math.floor((e+3)/4)*16;case Xa:case ja:return Math.max(i,16)*Math.max(e,8)/4;case qa:case Ya:return Math.max(i,8)*Math.max(e,8)/2;case Ka:case Za:return Math.floor((i+3)/4)*Math.floor((e+3)/4)*8;case Ja:return Math.floor((i+3)/4)*Math.floor((e+3)/4)*16;case Qa:return Math.floor((i+3)/4)*Math.floor((e+3)/4)*16;case eo:return Math.floor((i+4)/5)*Math.floor((e+3)/4)*16;case to:return Math.floor((i+4)/5)*Math.floor((e+4)/5)*16;case no:return Math.floor((i+5)/6)*Math.floor((e+4)/5)*16;case io:return Math.floor((i+5)/6)*Math.floor((e+5)/6)*16;case so:return Math.floor((i+7)/8)*Math.floor((e+4)/5)*16;case ro:return Math.floor((i+7)/8)*Math.floor((e+5)/6)*16;case ao:return Math.floor((i+7)/8)*Math.floor((e+7)/8)*16;case oo:return Math.floor((i+9)/10)*Math.floor((e+4)/5)*16;case lo:return Math.floor((i+9)/10)*Math.floor((e+5)/6)*16;case co:return Math.floor((i+9)/10)*Math.floor((e+7)/8)*16;case ho:return Math.floor((i+9)/10)*Math.floor((e+9)/10)*16;case uo:return Math.floor((i+11)/12)*Math.floor((e+9)/10)*16;case fo:return Math.floor((i+11)/12)*Math.floor((e+11)/12)*16;case po:case mo:case go:return Math.ceil(i/4)*Math.ceil(e/4)*16;case _o:case vo:return Math.ceil(i/4)*Math.ceil(e/4)*8;case xo:case yo:return Math.ceil(i/4)*Math.ceil(e/4)*16}throw new Error(`Unable to determine texture byte length for ${t} format.`)}function Gf(i){switch(i){case Sn:case rh:return{byteLength:1,components:1};case Ms:case ah:case Cs:return{byteLength:2,components:1};case Ho:case Vo:return{byteLength:2,components:4};case vi:case zo:case Un:return{byteLength:4,components:1};case oh:case lh:return{byteLength:4,components:3}}throw new Error(`Unknown texture type ${i}.`)}typeof __THREE_DEVTOOLS__<"u"&&__THREE_DEVTOOLS__.dispatchEvent(new CustomEvent("register",{detail:{revision:ko}}));typeof window<"u"&&(window.__THREE__?console.warn("WARNING: Multiple instances of Three.js being imported."):window.__THREE__=ko);/**
 * @license
 * Copyright 2010-2025 Three.js Authors
 * SPDX-License-Identifier: MIT
 */function Ph(){let i=null,e=!1,t=null,n=null;function s(r,a){t(r,a),n=i.requestAnimationFrame(s)}return{start:function(){e!==!0&&t!==null&&(n=i.requestAnimationFrame(s),e=!0)},stop:function(){i.cancelAnimationFrame(n),e=!1},setAnimationLoop:function(r){t=r},setContext:function(r){i=r}}}function Wf(i){const e=new WeakMap;function t(o,c){const l=o.array,h=o.usage,u=l.byteLength,d=i.createBuffer();i.bindBuffer(c,d),i.bufferData(c,l,h),o.onUploadCallback();let p;if(l instanceof Float32Array)p=i.FLOAT;else if(typeof Float16Array<"u"&&l instanceof Float16Array)p=i.HALF_FLOAT;else if(l instanceof Uint16Array)o.isFloat16BufferAttribute?p=i.HALF_FLOAT:p=i.UNSIGNED_SHORT;else if(l instanceof Int16Array)p=i.SHORT;else if(l instanceof Uint32Array)p=i.UNSIGNED_INT;else if(l instanceof Int32Array)p=i.INT;else if(l instanceof Int8Array)p=i.BYTE;else if(l instanceof Uint8Array)p=i.UNSIGNED_BYTE;else if(l instanceof Uint8ClampedArray)p=i.UNSIGNED_BYTE;else throw new Error("THREE.WebGLAttributes: Unsupported buffer data format: "+l);return{buffer:d,type:p,bytesPerElement:l.BYTES_PER_ELEMENT,version:o.version,size:u}}function n(o,c,l){const h=c.array,u=c.updateRanges;if(i.bindBuffer(l,o),u.length===0)i.bufferSubData(l,0,h);else{u.sort((p,_)=>p.start-_.start);let d=0;for(let p=1;p<u.length;p++){const _=u[d],v=u[p];v.start<=_.start+_.count+1?_.count=Math.max(_.count,v.start+v.count-_.start):(++d,u[d]=v)}u.length=d+1;for(let p=0,_=u.length;p<_;p++){const v=u[p];i.bufferSubData(l,v.start*h.BYTES_PER_ELEMENT,h,v.start,v.count)}c.clearUpdateRanges()}c.onUploadCallback()}function s(o){return o.isInterleavedBufferAttribute&&(o=o.data),e.get(o)}function r(o){o.isInterleavedBufferAttribute&&(o=o.data);const c=e.get(o);c&&(i.deleteBuffer(c.buffer),e.delete(o))}function a(o,c){if(o.isInterleavedBufferAttribute&&(o=o.data),o.isGLBufferAttribute){const h=e.get(o);(!h||h.version<o.version)&&e.set(o,{buffer:o.buffer,type:o.type,bytesPerElement:o.elementSize,version:o.version});return}const l=e.get(o);if(l===void 0)e.set(o,t(o,c));else if(l.version<o.version){if(l.size!==o.array.byteLength)throw new Error("THREE.WebGLAttributes: The size of the buffer attribute's array buffer does not match the original size. Resizing buffer attributes is not supported.");n(l.buffer,o,c),l.version=o.version}}return{get:s,remove:r,update:a}}var $f=`#ifdef USE_ALPHAHASH
	if ( diffuseColor.a < getAlphaHashThreshold( vPosition ) ) discard;
#endif`,qf=`#ifdef USE_ALPHAHASH
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
#endif`,Xf=`#ifdef USE_ALPHAMAP
	diffuseColor.a *= texture2D( alphaMap, vAlphaMapUv ).g;
#endif`,Yf=`#ifdef USE_ALPHAMAP
	uniform sampler2D alphaMap;
#endif`,jf=`#ifdef USE_ALPHATEST
	#ifdef ALPHA_TO_COVERAGE
	diffuseColor.a = smoothstep( alphaTest, alphaTest + fwidth( diffuseColor.a ), diffuseColor.a );
	if ( diffuseColor.a == 0.0 ) discard;
	#else
	if ( diffuseColor.a < alphaTest ) discard;
	#endif
#endif`,Kf=`#ifdef USE_ALPHATEST
	uniform float alphaTest;
#endif`,Zf=`#ifdef USE_AOMAP
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
#endif`,Jf=`#ifdef USE_AOMAP
	uniform sampler2D aoMap;
	uniform float aoMapIntensity;
#endif`,Qf=`#ifdef USE_BATCHING
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
#endif`,ep=`#ifdef USE_BATCHING
	mat4 batchingMatrix = getBatchingMatrix( getIndirectIndex( gl_DrawID ) );
#endif`,tp=`vec3 transformed = vec3( position );
#ifdef USE_ALPHAHASH
	vPosition = vec3( position );
#endif`,np=`vec3 objectNormal = vec3( normal );
#ifdef USE_TANGENT
	vec3 objectTangent = vec3( tangent.xyz );
#endif`,ip=`float G_BlinnPhong_Implicit( ) {
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
} // validated`,sp=`#ifdef USE_IRIDESCENCE
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
#endif`,rp=`#ifdef USE_BUMPMAP
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
#endif`,ap=`#if NUM_CLIPPING_PLANES > 0
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
#endif`,op=`#if NUM_CLIPPING_PLANES > 0
	varying vec3 vClipPosition;
	uniform vec4 clippingPlanes[ NUM_CLIPPING_PLANES ];
#endif`,lp=`#if NUM_CLIPPING_PLANES > 0
	varying vec3 vClipPosition;
#endif`,cp=`#if NUM_CLIPPING_PLANES > 0
	vClipPosition = - mvPosition.xyz;
#endif`,hp=`#if defined( USE_COLOR_ALPHA )
	diffuseColor *= vColor;
#elif defined( USE_COLOR )
	diffuseColor.rgb *= vColor;
#endif`,up=`#if defined( USE_COLOR_ALPHA )
	varying vec4 vColor;
#elif defined( USE_COLOR )
	varying vec3 vColor;
#endif`,dp=`#if defined( USE_COLOR_ALPHA )
	varying vec4 vColor;
#elif defined( USE_COLOR ) || defined( USE_INSTANCING_COLOR ) || defined( USE_BATCHING_COLOR )
	varying vec3 vColor;
#endif`,fp=`#if defined( USE_COLOR_ALPHA )
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
#endif`,pp=`#define PI 3.141592653589793
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
} // validated`,mp=`#ifdef ENVMAP_TYPE_CUBE_UV
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
#endif`,gp=`vec3 transformedNormal = objectNormal;
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
#endif`,_p=`#ifdef USE_DISPLACEMENTMAP
	uniform sampler2D displacementMap;
	uniform float displacementScale;
	uniform float displacementBias;
#endif`,vp=`#ifdef USE_DISPLACEMENTMAP
	transformed += normalize( objectNormal ) * ( texture2D( displacementMap, vDisplacementMapUv ).x * displacementScale + displacementBias );
#endif`,xp=`#ifdef USE_EMISSIVEMAP
	vec4 emissiveColor = texture2D( emissiveMap, vEmissiveMapUv );
	#ifdef DECODE_VIDEO_TEXTURE_EMISSIVE
		emissiveColor = sRGBTransferEOTF( emissiveColor );
	#endif
	totalEmissiveRadiance *= emissiveColor.rgb;
#endif`,yp=`#ifdef USE_EMISSIVEMAP
	uniform sampler2D emissiveMap;
#endif`,Mp="gl_FragColor = linearToOutputTexel( gl_FragColor );",wp=`vec4 LinearTransferOETF( in vec4 value ) {
	return value;
}
vec4 sRGBTransferEOTF( in vec4 value ) {
	return vec4( mix( pow( value.rgb * 0.9478672986 + vec3( 0.0521327014 ), vec3( 2.4 ) ), value.rgb * 0.0773993808, vec3( lessThanEqual( value.rgb, vec3( 0.04045 ) ) ) ), value.a );
}
vec4 sRGBTransferOETF( in vec4 value ) {
	return vec4( mix( pow( value.rgb, vec3( 0.41666 ) ) * 1.055 - vec3( 0.055 ), value.rgb * 12.92, vec3( lessThanEqual( value.rgb, vec3( 0.0031308 ) ) ) ), value.a );
}`,bp=`#ifdef USE_ENVMAP
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
#endif`,Sp=`#ifdef USE_ENVMAP
	uniform float envMapIntensity;
	uniform float flipEnvMap;
	uniform mat3 envMapRotation;
	#ifdef ENVMAP_TYPE_CUBE
		uniform samplerCube envMap;
	#else
		uniform sampler2D envMap;
	#endif
	
#endif`,Ep=`#ifdef USE_ENVMAP
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
#endif`,Tp=`#ifdef USE_ENVMAP
	#if defined( USE_BUMPMAP ) || defined( USE_NORMALMAP ) || defined( PHONG ) || defined( LAMBERT )
		#define ENV_WORLDPOS
	#endif
	#ifdef ENV_WORLDPOS
		
		varying vec3 vWorldPosition;
	#else
		varying vec3 vReflect;
		uniform float refractionRatio;
	#endif
#endif`,Ap=`#ifdef USE_ENVMAP
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
#endif`,Rp=`#ifdef USE_FOG
	vFogDepth = - mvPosition.z;
#endif`,Cp=`#ifdef USE_FOG
	varying float vFogDepth;
#endif`,Pp=`#ifdef USE_FOG
	#ifdef FOG_EXP2
		float fogFactor = 1.0 - exp( - fogDensity * fogDensity * vFogDepth * vFogDepth );
	#else
		float fogFactor = smoothstep( fogNear, fogFar, vFogDepth );
	#endif
	gl_FragColor.rgb = mix( gl_FragColor.rgb, fogColor, fogFactor );
#endif`,Dp=`#ifdef USE_FOG
	uniform vec3 fogColor;
	varying float vFogDepth;
	#ifdef FOG_EXP2
		uniform float fogDensity;
	#else
		uniform float fogNear;
		uniform float fogFar;
	#endif
#endif`,Lp=`#ifdef USE_GRADIENTMAP
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
}`,Ip=`#ifdef USE_LIGHTMAP
	uniform sampler2D lightMap;
	uniform float lightMapIntensity;
#endif`,Up=`LambertMaterial material;
material.diffuseColor = diffuseColor.rgb;
material.specularStrength = specularStrength;`,Np=`varying vec3 vViewPosition;
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
#define RE_IndirectDiffuse		RE_IndirectDiffuse_Lambert`,Fp=`uniform bool receiveShadow;
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
#endif`,Op=`#ifdef USE_ENVMAP
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
#endif`,kp=`ToonMaterial material;
material.diffuseColor = diffuseColor.rgb;`,Bp=`varying vec3 vViewPosition;
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
#define RE_IndirectDiffuse		RE_IndirectDiffuse_Toon`,zp=`BlinnPhongMaterial material;
material.diffuseColor = diffuseColor.rgb;
material.specularColor = specular;
material.specularShininess = shininess;
material.specularStrength = specularStrength;`,Hp=`varying vec3 vViewPosition;
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
#define RE_IndirectDiffuse		RE_IndirectDiffuse_BlinnPhong`,Vp=`PhysicalMaterial material;
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
#endif`,Gp=`struct PhysicalMaterial {
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
}`,Wp=`
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
#endif`,$p=`#if defined( RE_IndirectDiffuse )
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
#endif`,qp=`#if defined( RE_IndirectDiffuse )
	RE_IndirectDiffuse( irradiance, geometryPosition, geometryNormal, geometryViewDir, geometryClearcoatNormal, material, reflectedLight );
#endif
#if defined( RE_IndirectSpecular )
	RE_IndirectSpecular( radiance, iblIrradiance, clearcoatRadiance, geometryPosition, geometryNormal, geometryViewDir, geometryClearcoatNormal, material, reflectedLight );
#endif`,Xp=`#if defined( USE_LOGARITHMIC_DEPTH_BUFFER )
	gl_FragDepth = vIsPerspective == 0.0 ? gl_FragCoord.z : log2( vFragDepth ) * logDepthBufFC * 0.5;
#endif`,Yp=`#if defined( USE_LOGARITHMIC_DEPTH_BUFFER )
	uniform float logDepthBufFC;
	varying float vFragDepth;
	varying float vIsPerspective;
#endif`,jp=`#ifdef USE_LOGARITHMIC_DEPTH_BUFFER
	varying float vFragDepth;
	varying float vIsPerspective;
#endif`,Kp=`#ifdef USE_LOGARITHMIC_DEPTH_BUFFER
	vFragDepth = 1.0 + gl_Position.w;
	vIsPerspective = float( isPerspectiveMatrix( projectionMatrix ) );
#endif`,Zp=`#ifdef USE_MAP
	vec4 sampledDiffuseColor = texture2D( map, vMapUv );
	#ifdef DECODE_VIDEO_TEXTURE
		sampledDiffuseColor = sRGBTransferEOTF( sampledDiffuseColor );
	#endif
	diffuseColor *= sampledDiffuseColor;
#endif`,Jp=`#ifdef USE_MAP
	uniform sampler2D map;
#endif`,Qp=`#if defined( USE_MAP ) || defined( USE_ALPHAMAP )
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
#endif`,em=`#if defined( USE_POINTS_UV )
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
#endif`,tm=`float metalnessFactor = metalness;
#ifdef USE_METALNESSMAP
	vec4 texelMetalness = texture2D( metalnessMap, vMetalnessMapUv );
	metalnessFactor *= texelMetalness.b;
#endif`,nm=`#ifdef USE_METALNESSMAP
	uniform sampler2D metalnessMap;
#endif`,im=`#ifdef USE_INSTANCING_MORPH
	float morphTargetInfluences[ MORPHTARGETS_COUNT ];
	float morphTargetBaseInfluence = texelFetch( morphTexture, ivec2( 0, gl_InstanceID ), 0 ).r;
	for ( int i = 0; i < MORPHTARGETS_COUNT; i ++ ) {
		morphTargetInfluences[i] =  texelFetch( morphTexture, ivec2( i + 1, gl_InstanceID ), 0 ).r;
	}
#endif`,sm=`#if defined( USE_MORPHCOLORS )
	vColor *= morphTargetBaseInfluence;
	for ( int i = 0; i < MORPHTARGETS_COUNT; i ++ ) {
		#if defined( USE_COLOR_ALPHA )
			if ( morphTargetInfluences[ i ] != 0.0 ) vColor += getMorph( gl_VertexID, i, 2 ) * morphTargetInfluences[ i ];
		#elif defined( USE_COLOR )
			if ( morphTargetInfluences[ i ] != 0.0 ) vColor += getMorph( gl_VertexID, i, 2 ).rgb * morphTargetInfluences[ i ];
		#endif
	}
#endif`,rm=`#ifdef USE_MORPHNORMALS
	objectNormal *= morphTargetBaseInfluence;
	for ( int i = 0; i < MORPHTARGETS_COUNT; i ++ ) {
		if ( morphTargetInfluences[ i ] != 0.0 ) objectNormal += getMorph( gl_VertexID, i, 1 ).xyz * morphTargetInfluences[ i ];
	}
#endif`,am=`#ifdef USE_MORPHTARGETS
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
#endif`,om=`#ifdef USE_MORPHTARGETS
	transformed *= morphTargetBaseInfluence;
	for ( int i = 0; i < MORPHTARGETS_COUNT; i ++ ) {
		if ( morphTargetInfluences[ i ] != 0.0 ) transformed += getMorph( gl_VertexID, i, 0 ).xyz * morphTargetInfluences[ i ];
	}
#endif`,lm=`float faceDirection = gl_FrontFacing ? 1.0 : - 1.0;
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
vec3 nonPerturbedNormal = normal;`,cm=`#ifdef USE_NORMALMAP_OBJECTSPACE
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
#endif`,hm=`#ifndef FLAT_SHADED
	varying vec3 vNormal;
	#ifdef USE_TANGENT
		varying vec3 vTangent;
		varying vec3 vBitangent;
	#endif
#endif`,um=`#ifndef FLAT_SHADED
	varying vec3 vNormal;
	#ifdef USE_TANGENT
		varying vec3 vTangent;
		varying vec3 vBitangent;
	#endif
#endif`,dm=`#ifndef FLAT_SHADED
	vNormal = normalize( transformedNormal );
	#ifdef USE_TANGENT
		vTangent = normalize( transformedTangent );
		vBitangent = normalize( cross( vNormal, vTangent ) * tangent.w );
	#endif
#endif`,fm=`#ifdef USE_NORMALMAP
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
#endif`,pm=`#ifdef USE_CLEARCOAT
	vec3 clearcoatNormal = nonPerturbedNormal;
#endif`,mm=`#ifdef USE_CLEARCOAT_NORMALMAP
	vec3 clearcoatMapN = texture2D( clearcoatNormalMap, vClearcoatNormalMapUv ).xyz * 2.0 - 1.0;
	clearcoatMapN.xy *= clearcoatNormalScale;
	clearcoatNormal = normalize( tbn2 * clearcoatMapN );
#endif`,gm=`#ifdef USE_CLEARCOATMAP
	uniform sampler2D clearcoatMap;
#endif
#ifdef USE_CLEARCOAT_NORMALMAP
	uniform sampler2D clearcoatNormalMap;
	uniform vec2 clearcoatNormalScale;
#endif
#ifdef USE_CLEARCOAT_ROUGHNESSMAP
	uniform sampler2D clearcoatRoughnessMap;
#endif`,_m=`#ifdef USE_IRIDESCENCEMAP
	uniform sampler2D iridescenceMap;
#endif
#ifdef USE_IRIDESCENCE_THICKNESSMAP
	uniform sampler2D iridescenceThicknessMap;
#endif`,vm=`#ifdef OPAQUE
diffuseColor.a = 1.0;
#endif
#ifdef USE_TRANSMISSION
diffuseColor.a *= material.transmissionAlpha;
#endif
gl_FragColor = vec4( outgoingLight, diffuseColor.a );`,xm=`vec3 packNormalToRGB( const in vec3 normal ) {
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
}`,ym=`#ifdef PREMULTIPLIED_ALPHA
	gl_FragColor.rgb *= gl_FragColor.a;
#endif`,Mm=`vec4 mvPosition = vec4( transformed, 1.0 );
#ifdef USE_BATCHING
	mvPosition = batchingMatrix * mvPosition;
#endif
#ifdef USE_INSTANCING
	mvPosition = instanceMatrix * mvPosition;
#endif
mvPosition = modelViewMatrix * mvPosition;
gl_Position = projectionMatrix * mvPosition;`,wm=`#ifdef DITHERING
	gl_FragColor.rgb = dithering( gl_FragColor.rgb );
#endif`,bm=`#ifdef DITHERING
	vec3 dithering( vec3 color ) {
		float grid_position = rand( gl_FragCoord.xy );
		vec3 dither_shift_RGB = vec3( 0.25 / 255.0, -0.25 / 255.0, 0.25 / 255.0 );
		dither_shift_RGB = mix( 2.0 * dither_shift_RGB, -2.0 * dither_shift_RGB, grid_position );
		return color + dither_shift_RGB;
	}
#endif`,Sm=`float roughnessFactor = roughness;
#ifdef USE_ROUGHNESSMAP
	vec4 texelRoughness = texture2D( roughnessMap, vRoughnessMapUv );
	roughnessFactor *= texelRoughness.g;
#endif`,Em=`#ifdef USE_ROUGHNESSMAP
	uniform sampler2D roughnessMap;
#endif`,Tm=`#if NUM_SPOT_LIGHT_COORDS > 0
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
#endif`,Am=`#if NUM_SPOT_LIGHT_COORDS > 0
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
#endif`,Rm=`#if ( defined( USE_SHADOWMAP ) && ( NUM_DIR_LIGHT_SHADOWS > 0 || NUM_POINT_LIGHT_SHADOWS > 0 ) ) || ( NUM_SPOT_LIGHT_COORDS > 0 )
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
#endif`,Cm=`float getShadowMask() {
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
}`,Pm=`#ifdef USE_SKINNING
	mat4 boneMatX = getBoneMatrix( skinIndex.x );
	mat4 boneMatY = getBoneMatrix( skinIndex.y );
	mat4 boneMatZ = getBoneMatrix( skinIndex.z );
	mat4 boneMatW = getBoneMatrix( skinIndex.w );
#endif`,Dm=`#ifdef USE_SKINNING
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
#endif`,Lm=`#ifdef USE_SKINNING
	vec4 skinVertex = bindMatrix * vec4( transformed, 1.0 );
	vec4 skinned = vec4( 0.0 );
	skinned += boneMatX * skinVertex * skinWeight.x;
	skinned += boneMatY * skinVertex * skinWeight.y;
	skinned += boneMatZ * skinVertex * skinWeight.z;
	skinned += boneMatW * skinVertex * skinWeight.w;
	transformed = ( bindMatrixInverse * skinned ).xyz;
#endif`,Im=`#ifdef USE_SKINNING
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
#endif`,Um=`float specularStrength;
#ifdef USE_SPECULARMAP
	vec4 texelSpecular = texture2D( specularMap, vSpecularMapUv );
	specularStrength = texelSpecular.r;
#else
	specularStrength = 1.0;
#endif`,Nm=`#ifdef USE_SPECULARMAP
	uniform sampler2D specularMap;
#endif`,Fm=`#if defined( TONE_MAPPING )
	gl_FragColor.rgb = toneMapping( gl_FragColor.rgb );
#endif`,Om=`#ifndef saturate
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
vec3 CustomToneMapping( vec3 color ) { return color; }`,km=`#ifdef USE_TRANSMISSION
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
#endif`,Bm=`#ifdef USE_TRANSMISSION
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
#endif`,zm=`#if defined( USE_UV ) || defined( USE_ANISOTROPY )
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
#endif`,Hm=`#if defined( USE_UV ) || defined( USE_ANISOTROPY )
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
#endif`,Vm=`#if defined( USE_UV ) || defined( USE_ANISOTROPY )
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
#endif`,Gm=`#if defined( USE_ENVMAP ) || defined( DISTANCE ) || defined ( USE_SHADOWMAP ) || defined ( USE_TRANSMISSION ) || NUM_SPOT_LIGHT_COORDS > 0
	vec4 worldPosition = vec4( transformed, 1.0 );
	#ifdef USE_BATCHING
		worldPosition = batchingMatrix * worldPosition;
	#endif
	#ifdef USE_INSTANCING
		worldPosition = instanceMatrix * worldPosition;
	#endif
	worldPosition = modelMatrix * worldPosition;
#endif`;const Wm=`varying vec2 vUv;
uniform mat3 uvTransform;
void main() {
	vUv = ( uvTransform * vec3( uv, 1 ) ).xy;
	gl_Position = vec4( position.xy, 1.0, 1.0 );
}`,$m=`uniform sampler2D t2D;
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
}`,qm=`varying vec3 vWorldDirection;
#include <common>
void main() {
	vWorldDirection = transformDirection( position, modelMatrix );
	#include <begin_vertex>
	#include <project_vertex>
	gl_Position.z = gl_Position.w;
}`,Xm=`#ifdef ENVMAP_TYPE_CUBE
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
}`,Ym=`varying vec3 vWorldDirection;
#include <common>
void main() {
	vWorldDirection = transformDirection( position, modelMatrix );
	#include <begin_vertex>
	#include <project_vertex>
	gl_Position.z = gl_Position.w;
}`,jm=`uniform samplerCube tCube;
uniform float tFlip;
uniform float opacity;
varying vec3 vWorldDirection;
void main() {
	vec4 texColor = textureCube( tCube, vec3( tFlip * vWorldDirection.x, vWorldDirection.yz ) );
	gl_FragColor = texColor;
	gl_FragColor.a *= opacity;
	#include <tonemapping_fragment>
	#include <colorspace_fragment>
}`,Km=`#include <common>
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
}`,Zm=`#if DEPTH_PACKING == 3200
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
}`,Jm=`#define DISTANCE
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
}`,Qm=`#define DISTANCE
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
}`,eg=`varying vec3 vWorldDirection;
#include <common>
void main() {
	vWorldDirection = transformDirection( position, modelMatrix );
	#include <begin_vertex>
	#include <project_vertex>
}`,tg=`uniform sampler2D tEquirect;
varying vec3 vWorldDirection;
#include <common>
void main() {
	vec3 direction = normalize( vWorldDirection );
	vec2 sampleUV = equirectUv( direction );
	gl_FragColor = texture2D( tEquirect, sampleUV );
	#include <tonemapping_fragment>
	#include <colorspace_fragment>
}`,ng=`uniform float scale;
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
}`,ig=`uniform vec3 diffuse;
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
}`,sg=`#include <common>
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
}`,rg=`uniform vec3 diffuse;
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
}`,ag=`#define LAMBERT
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
}`,og=`#define LAMBERT
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
}`,lg=`#define MATCAP
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
}`,cg=`#define MATCAP
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
}`,hg=`#define NORMAL
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
}`,ug=`#define NORMAL
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
}`,dg=`#define PHONG
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
}`,fg=`#define PHONG
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
}`,pg=`#define STANDARD
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
}`,mg=`#define STANDARD
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
}`,gg=`#define TOON
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
}`,_g=`#define TOON
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
}`,vg=`uniform float size;
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
}`,xg=`uniform vec3 diffuse;
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
}`,yg=`#include <common>
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
}`,Mg=`uniform vec3 color;
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
}`,wg=`uniform float rotation;
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
}`,bg=`uniform vec3 diffuse;
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
}`,Ye={alphahash_fragment:$f,alphahash_pars_fragment:qf,alphamap_fragment:Xf,alphamap_pars_fragment:Yf,alphatest_fragment:jf,alphatest_pars_fragment:Kf,aomap_fragment:Zf,aomap_pars_fragment:Jf,batching_pars_vertex:Qf,batching_vertex:ep,begin_vertex:tp,beginnormal_vertex:np,bsdfs:ip,iridescence_fragment:sp,bumpmap_pars_fragment:rp,clipping_planes_fragment:ap,clipping_planes_pars_fragment:op,clipping_planes_pars_vertex:lp,clipping_planes_vertex:cp,color_fragment:hp,color_pars_fragment:up,color_pars_vertex:dp,color_vertex:fp,common:pp,cube_uv_reflection_fragment:mp,defaultnormal_vertex:gp,displacementmap_pars_vertex:_p,displacementmap_vertex:vp,emissivemap_fragment:xp,emissivemap_pars_fragment:yp,colorspace_fragment:Mp,colorspace_pars_fragment:wp,envmap_fragment:bp,envmap_common_pars_fragment:Sp,envmap_pars_fragment:Ep,envmap_pars_vertex:Tp,envmap_physical_pars_fragment:Op,envmap_vertex:Ap,fog_vertex:Rp,fog_pars_vertex:Cp,fog_fragment:Pp,fog_pars_fragment:Dp,gradientmap_pars_fragment:Lp,lightmap_pars_fragment:Ip,lights_lambert_fragment:Up,lights_lambert_pars_fragment:Np,lights_pars_begin:Fp,lights_toon_fragment:kp,lights_toon_pars_fragment:Bp,lights_phong_fragment:zp,lights_phong_pars_fragment:Hp,lights_physical_fragment:Vp,lights_physical_pars_fragment:Gp,lights_fragment_begin:Wp,lights_fragment_maps:$p,lights_fragment_end:qp,logdepthbuf_fragment:Xp,logdepthbuf_pars_fragment:Yp,logdepthbuf_pars_vertex:jp,logdepthbuf_vertex:Kp,map_fragment:Zp,map_pars_fragment:Jp,map_particle_fragment:Qp,map_particle_pars_fragment:em,metalnessmap_fragment:tm,metalnessmap_pars_fragment:nm,morphinstance_vertex:im,morphcolor_vertex:sm,morphnormal_vertex:rm,morphtarget_pars_vertex:am,morphtarget_vertex:om,normal_fragment_begin:lm,normal_fragment_maps:cm,normal_pars_fragment:hm,normal_pars_vertex:um,normal_vertex:dm,normalmap_pars_fragment:fm,clearcoat_normal_fragment_begin:pm,clearcoat_normal_fragment_maps:mm,clearcoat_pars_fragment:gm,iridescence_pars_fragment:_m,opaque_fragment:vm,packing:xm,premultiplied_alpha_fragment:ym,project_vertex:Mm,dithering_fragment:wm,dithering_pars_fragment:bm,roughnessmap_fragment:Sm,roughnessmap_pars_fragment:Em,shadowmap_pars_fragment:Tm,shadowmap_pars_vertex:Am,shadowmap_vertex:Rm,shadowmask_pars_fragment:Cm,skinbase_vertex:Pm,skinning_pars_vertex:Dm,skinning_vertex:Lm,skinnormal_vertex:Im,specularmap_fragment:Um,specularmap_pars_fragment:Nm,tonemapping_fragment:Fm,tonemapping_pars_fragment:Om,transmission_fragment:km,transmission_pars_fragment:Bm,uv_pars_fragment:zm,uv_pars_vertex:Hm,uv_vertex:Vm,worldpos_vertex:Gm,background_vert:Wm,background_frag:$m,backgroundCube_vert:qm,backgroundCube_frag:Xm,cube_vert:Ym,cube_frag:jm,depth_vert:Km,depth_frag:Zm,distanceRGBA_vert:Jm,distanceRGBA_frag:Qm,equirect_vert:eg,equirect_frag:tg,linedashed_vert:ng,linedashed_frag:ig,meshbasic_vert:sg,meshbasic_frag:rg,meshlambert_vert:ag,meshlambert_frag:og,meshmatcap_vert:lg,meshmatcap_frag:cg,meshnormal_vert:hg,meshnormal_frag:ug,meshphong_vert:dg,meshphong_frag:fg,meshphysical_vert:pg,meshphysical_frag:mg,meshtoon_vert:gg,meshtoon_frag:_g,points_vert:vg,points_frag:xg,shadow_vert:yg,shadow_frag:Mg,sprite_vert:wg,sprite_frag:bg},fe={common:{diffuse:{value:new je(16777215)},opacity:{value:1},map:{value:null},mapTransform:{value:new qe},alphaMap:{value:null},alphaMapTransform:{value:new qe},alphaTest:{value:0}},specularmap:{specularMap:{value:null},specularMapTransform:{value:new qe}},envmap:{envMap:{value:null},envMapRotation:{value:new qe},flipEnvMap:{value:-1},reflectivity:{value:1},ior:{value:1.5},refractionRatio:{value:.98}},aomap:{aoMap:{value:null},aoMapIntensity:{value:1},aoMapTransform:{value:new qe}},lightmap:{lightMap:{value:null},lightMapIntensity:{value:1},lightMapTransform:{value:new qe}},bumpmap:{bumpMap:{value:null},bumpMapTransform:{value:new qe},bumpScale:{value:1}},normalmap:{normalMap:{value:null},normalMapTransform:{value:new qe},normalScale:{value:new Ve(1,1)}},displacementmap:{displacementMap:{value:null},displacementMapTransform:{value:new qe},displacementScale:{value:1},displacementBias:{value:0}},emissivemap:{emissiveMap:{value:null},emissiveMapTransform:{value:new qe}},metalnessmap:{metalnessMap:{value:null},metalnessMapTransform:{value:new qe}},roughnessmap:{roughnessMap:{value:null},roughnessMapTransform:{value:new qe}},gradientmap:{gradientMap:{value:null}},fog:{fogDensity:{value:25e-5},fogNear:{value:1},fogFar:{value:2e3},fogColor:{value:new je(16777215)}},lights:{ambientLightColor:{value:[]},lightProbe:{value:[]},directionalLights:{value:[],properties:{direction:{},color:{}}},directionalLightShadows:{value:[],properties:{shadowIntensity:1,shadowBias:{},shadowNormalBias:{},shadowRadius:{},shadowMapSize:{}}},directionalShadowMap:{value:[]},directionalShadowMatrix:{value:[]},spotLights:{value:[],properties:{color:{},position:{},direction:{},distance:{},coneCos:{},penumbraCos:{},decay:{}}},spotLightShadows:{value:[],properties:{shadowIntensity:1,shadowBias:{},shadowNormalBias:{},shadowRadius:{},shadowMapSize:{}}},spotLightMap:{value:[]},spotShadowMap:{value:[]},spotLightMatrix:{value:[]},pointLights:{value:[],properties:{color:{},position:{},decay:{},distance:{}}},pointLightShadows:{value:[],properties:{shadowIntensity:1,shadowBias:{},shadowNormalBias:{},shadowRadius:{},shadowMapSize:{},shadowCameraNear:{},shadowCameraFar:{}}},pointShadowMap:{value:[]},pointShadowMatrix:{value:[]},hemisphereLights:{value:[],properties:{direction:{},skyColor:{},groundColor:{}}},rectAreaLights:{value:[],properties:{color:{},position:{},width:{},height:{}}},ltc_1:{value:null},ltc_2:{value:null}},points:{diffuse:{value:new je(16777215)},opacity:{value:1},size:{value:1},scale:{value:1},map:{value:null},alphaMap:{value:null},alphaMapTransform:{value:new qe},alphaTest:{value:0},uvTransform:{value:new qe}},sprite:{diffuse:{value:new je(16777215)},opacity:{value:1},center:{value:new Ve(.5,.5)},rotation:{value:0},map:{value:null},mapTransform:{value:new qe},alphaMap:{value:null},alphaMapTransform:{value:new qe},alphaTest:{value:0}}},gn={basic:{uniforms:Bt([fe.common,fe.specularmap,fe.envmap,fe.aomap,fe.lightmap,fe.fog]),vertexShader:Ye.meshbasic_vert,fragmentShader:Ye.meshbasic_frag},lambert:{uniforms:Bt([fe.common,fe.specularmap,fe.envmap,fe.aomap,fe.lightmap,fe.emissivemap,fe.bumpmap,fe.normalmap,fe.displacementmap,fe.fog,fe.lights,{emissive:{value:new je(0)}}]),vertexShader:Ye.meshlambert_vert,fragmentShader:Ye.meshlambert_frag},phong:{uniforms:Bt([fe.common,fe.specularmap,fe.envmap,fe.aomap,fe.lightmap,fe.emissivemap,fe.bumpmap,fe.normalmap,fe.displacementmap,fe.fog,fe.lights,{emissive:{value:new je(0)},specular:{value:new je(1118481)},shininess:{value:30}}]),vertexShader:Ye.meshphong_vert,fragmentShader:Ye.meshphong_frag},standard:{uniforms:Bt([fe.common,fe.envmap,fe.aomap,fe.lightmap,fe.emissivemap,fe.bumpmap,fe.normalmap,fe.displacementmap,fe.roughnessmap,fe.metalnessmap,fe.fog,fe.lights,{emissive:{value:new je(0)},roughness:{value:1},metalness:{value:0},envMapIntensity:{value:1}}]),vertexShader:Ye.meshphysical_vert,fragmentShader:Ye.meshphysical_frag},toon:{uniforms:Bt([fe.common,fe.aomap,fe.lightmap,fe.emissivemap,fe.bumpmap,fe.normalmap,fe.displacementmap,fe.gradientmap,fe.fog,fe.lights,{emissive:{value:new je(0)}}]),vertexShader:Ye.meshtoon_vert,fragmentShader:Ye.meshtoon_frag},matcap:{uniforms:Bt([fe.common,fe.bumpmap,fe.normalmap,fe.displacementmap,fe.fog,{matcap:{value:null}}]),vertexShader:Ye.meshmatcap_vert,fragmentShader:Ye.meshmatcap_frag},points:{uniforms:Bt([fe.points,fe.fog]),vertexShader:Ye.points_vert,fragmentShader:Ye.points_frag},dashed:{uniforms:Bt([fe.common,fe.fog,{scale:{value:1},dashSize:{value:1},totalSize:{value:2}}]),vertexShader:Ye.linedashed_vert,fragmentShader:Ye.linedashed_frag},depth:{uniforms:Bt([fe.common,fe.displacementmap]),vertexShader:Ye.depth_vert,fragmentShader:Ye.depth_frag},normal:{uniforms:Bt([fe.common,fe.bumpmap,fe.normalmap,fe.displacementmap,{opacity:{value:1}}]),vertexShader:Ye.meshnormal_vert,fragmentShader:Ye.meshnormal_frag},sprite:{uniforms:Bt([fe.sprite,fe.fog]),vertexShader:Ye.sprite_vert,fragmentShader:Ye.sprite_frag},background:{uniforms:{uvTransform:{value:new qe},t2D:{value:null},backgroundIntensity:{value:1}},vertexShader:Ye.background_vert,fragmentShader:Ye.background_frag},backgroundCube:{uniforms:{envMap:{value:null},flipEnvMap:{value:-1},backgroundBlurriness:{value:0},backgroundIntensity:{value:1},backgroundRotation:{value:new qe}},vertexShader:Ye.backgroundCube_vert,fragmentShader:Ye.backgroundCube_frag},cube:{uniforms:{tCube:{value:null},tFlip:{value:-1},opacity:{value:1}},vertexShader:Ye.cube_vert,fragmentShader:Ye.cube_frag},equirect:{uniforms:{tEquirect:{value:null}},vertexShader:Ye.equirect_vert,fragmentShader:Ye.equirect_frag},distanceRGBA:{uniforms:Bt([fe.common,fe.displacementmap,{referencePosition:{value:new U},nearDistance:{value:1},farDistance:{value:1e3}}]),vertexShader:Ye.distanceRGBA_vert,fragmentShader:Ye.distanceRGBA_frag},shadow:{uniforms:Bt([fe.lights,fe.fog,{color:{value:new je(0)},opacity:{value:1}}]),vertexShader:Ye.shadow_vert,fragmentShader:Ye.shadow_frag}};gn.physical={uniforms:Bt([gn.standard.uniforms,{clearcoat:{value:0},clearcoatMap:{value:null},clearcoatMapTransform:{value:new qe},clearcoatNormalMap:{value:null},clearcoatNormalMapTransform:{value:new qe},clearcoatNormalScale:{value:new Ve(1,1)},clearcoatRoughness:{value:0},clearcoatRoughnessMap:{value:null},clearcoatRoughnessMapTransform:{value:new qe},dispersion:{value:0},iridescence:{value:0},iridescenceMap:{value:null},iridescenceMapTransform:{value:new qe},iridescenceIOR:{value:1.3},iridescenceThicknessMinimum:{value:100},iridescenceThicknessMaximum:{value:400},iridescenceThicknessMap:{value:null},iridescenceThicknessMapTransform:{value:new qe},sheen:{value:0},sheenColor:{value:new je(0)},sheenColorMap:{value:null},sheenColorMapTransform:{value:new qe},sheenRoughness:{value:1},sheenRoughnessMap:{value:null},sheenRoughnessMapTransform:{value:new qe},transmission:{value:0},transmissionMap:{value:null},transmissionMapTransform:{value:new qe},transmissionSamplerSize:{value:new Ve},transmissionSamplerMap:{value:null},thickness:{value:0},thicknessMap:{value:null},thicknessMapTransform:{value:new qe},attenuationDistance:{value:0},attenuationColor:{value:new je(0)},specularColor:{value:new je(1,1,1)},specularColorMap:{value:null},specularColorMapTransform:{value:new qe},specularIntensity:{value:1},specularIntensityMap:{value:null},specularIntensityMapTransform:{value:new qe},anisotropyVector:{value:new Ve},anisotropyMap:{value:null},anisotropyMapTransform:{value:new qe}}]),vertexShader:Ye.meshphysical_vert,fragmentShader:Ye.meshphysical_frag};const cr={r:0,b:0,g:0},ci=new En,Sg=new mt;function Eg(i,e,t,n,s,r,a){const o=new je(0);let c=r===!0?0:1,l,h,u=null,d=0,p=null;function _(T){let b=T.isScene===!0?T.background:null;return b&&b.isTexture&&(b=(T.backgroundBlurriness>0?t:e).get(b)),b}function v(T){let b=!1;const P=_(T);P===null?f(o,c):P&&P.isColor&&(f(P,1),b=!0);const C=i.xr.getEnvironmentBlendMode();C==="additive"?n.buffers.color.setClear(0,0,0,1,a):C==="alpha-blend"&&n.buffers.color.setClear(0,0,0,0,a),(i.autoClear||b)&&(n.buffers.depth.setTest(!0),n.buffers.depth.setMask(!0),n.buffers.color.setMask(!0),i.clear(i.autoClearColor,i.autoClearDepth,i.autoClearStencil))}function m(T,b){const P=_(b);P&&(P.isCubeTexture||P.mapping===Lr)?(h===void 0&&(h=new Ot(new ns(1,1,1),new ti({name:"BackgroundCubeMaterial",uniforms:Qi(gn.backgroundCube.uniforms),vertexShader:gn.backgroundCube.vertexShader,fragmentShader:gn.backgroundCube.fragmentShader,side:qt,depthTest:!1,depthWrite:!1,fog:!1,allowOverride:!1})),h.geometry.deleteAttribute("normal"),h.geometry.deleteAttribute("uv"),h.onBeforeRender=function(C,D,N){this.matrixWorld.copyPosition(N.matrixWorld)},Object.defineProperty(h.material,"envMap",{get:function(){return this.uniforms.envMap.value}}),s.update(h)),ci.copy(b.backgroundRotation),ci.x*=-1,ci.y*=-1,ci.z*=-1,P.isCubeTexture&&P.isRenderTargetTexture===!1&&(ci.y*=-1,ci.z*=-1),h.material.uniforms.envMap.value=P,h.material.uniforms.flipEnvMap.value=P.isCubeTexture&&P.isRenderTargetTexture===!1?-1:1,h.material.uniforms.backgroundBlurriness.value=b.backgroundBlurriness,h.material.uniforms.backgroundIntensity.value=b.backgroundIntensity,h.material.uniforms.backgroundRotation.value.setFromMatrix4(Sg.makeRotationFromEuler(ci)),h.material.toneMapped=nt.getTransfer(P.colorSpace)!==at,(u!==P||d!==P.version||p!==i.toneMapping)&&(h.material.needsUpdate=!0,u=P,d=P.version,p=i.toneMapping),h.layers.enableAll(),T.unshift(h,h.geometry,h.material,0,0,null)):P&&P.isTexture&&(l===void 0&&(l=new Ot(new Nr(2,2),new ti({name:"BackgroundMaterial",uniforms:Qi(gn.background.uniforms),vertexShader:gn.background.vertexShader,fragmentShader:gn.background.fragmentShader,side:ei,depthTest:!1,depthWrite:!1,fog:!1,allowOverride:!1})),l.geometry.deleteAttribute("normal"),Object.defineProperty(l.material,"map",{get:function(){return this.uniforms.t2D.value}}),s.update(l)),l.material.uniforms.t2D.value=P,l.material.uniforms.backgroundIntensity.value=b.backgroundIntensity,l.material.toneMapped=nt.getTransfer(P.colorSpace)!==at,P.matrixAutoUpdate===!0&&P.updateMatrix(),l.material.uniforms.uvTransform.value.copy(P.matrix),(u!==P||d!==P.version||p!==i.toneMapping)&&(l.material.needsUpdate=!0,u=P,d=P.version,p=i.toneMapping),l.layers.enableAll(),T.unshift(l,l.geometry,l.material,0,0,null))}function f(T,b){T.getRGB(cr,yh(i)),n.buffers.color.setClear(cr.r,cr.g,cr.b,b,a)}function A(){h!==void 0&&(h.geometry.dispose(),h.material.dispose(),h=void 0),l!==void 0&&(l.geometry.dispose(),l.material.dispose(),l=void 0)}return{getClearColor:function(){return o},setClearColor:function(T,b=1){o.set(T),c=b,f(o,c)},getClearAlpha:function(){return c},setClearAlpha:function(T){c=T,f(o,c)},render:v,addToRenderList:m,dispose:A}}function Tg(i,e){const t=i.getParameter(i.MAX_VERTEX_ATTRIBS),n={},s=d(null);let r=s,a=!1;function o(M,S,L,O,V){let z=!1;const Y=u(O,L,S);r!==Y&&(r=Y,l(r.object)),z=p(M,O,L,V),z&&_(M,O,L,V),V!==null&&e.update(V,i.ELEMENT_ARRAY_BUFFER),(z||a)&&(a=!1,b(M,S,L,O),V!==null&&i.bindBuffer(i.ELEMENT_ARRAY_BUFFER,e.get(V).buffer))}function c(){return i.createVertexArray()}function l(M){return i.bindVertexArray(M)}function h(M){return i.deleteVertexArray(M)}function u(M,S,L){const O=L.wireframe===!0;let V=n[M.id];V===void 0&&(V={},n[M.id]=V);let z=V[S.id];z===void 0&&(z={},V[S.id]=z);let Y=z[O];return Y===void 0&&(Y=d(c()),z[O]=Y),Y}function d(M){const S=[],L=[],O=[];for(let V=0;V<t;V++)S[V]=0,L[V]=0,O[V]=0;return{geometry:null,program:null,wireframe:!1,newAttributes:S,enabledAttributes:L,attributeDivisors:O,object:M,attributes:{},index:null}}function p(M,S,L,O){const V=r.attributes,z=S.attributes;let Y=0;const ee=L.getAttributes();for(const j in ee)if(ee[j].location>=0){const se=V[j];let H=z[j];if(H===void 0&&(j==="instanceMatrix"&&M.instanceMatrix&&(H=M.instanceMatrix),j==="instanceColor"&&M.instanceColor&&(H=M.instanceColor)),se===void 0||se.attribute!==H||H&&se.data!==H.data)return!0;Y++}return r.attributesNum!==Y||r.index!==O}function _(M,S,L,O){const V={},z=S.attributes;let Y=0;const ee=L.getAttributes();for(const j in ee)if(ee[j].location>=0){let se=z[j];se===void 0&&(j==="instanceMatrix"&&M.instanceMatrix&&(se=M.instanceMatrix),j==="instanceColor"&&M.instanceColor&&(se=M.instanceColor));const H={};H.attribute=se,se&&se.data&&(H.data=se.data),V[j]=H,Y++}r.attributes=V,r.attributesNum=Y,r.index=O}function v(){const M=r.newAttributes;for(let S=0,L=M.length;S<L;S++)M[S]=0}function m(M){f(M,0)}function f(M,S){const L=r.newAttributes,O=r.enabledAttributes,V=r.attributeDivisors;L[M]=1,O[M]===0&&(i.enableVertexAttribArray(M),O[M]=1),V[M]!==S&&(i.vertexAttribDivisor(M,S),V[M]=S)}function A(){const M=r.newAttributes,S=r.enabledAttributes;for(let L=0,O=S.length;L<O;L++)S[L]!==M[L]&&(i.disableVertexAttribArray(L),S[L]=0)}function T(M,S,L,O,V,z,Y){Y===!0?i.vertexAttribIPointer(M,S,L,V,z):i.vertexAttribPointer(M,S,L,O,V,z)}function b(M,S,L,O){v();const V=O.attributes,z=L.getAttributes(),Y=S.defaultAttributeValues;for(const ee in z){const j=z[ee];if(j.location>=0){let G=V[ee];if(G===void 0&&(ee==="instanceMatrix"&&M.instanceMatrix&&(G=M.instanceMatrix),ee==="instanceColor"&&M.instanceColor&&(G=M.instanceColor)),G!==void 0){const se=G.normalized,H=G.itemSize,ie=e.get(G);if(ie===void 0)continue;const Ce=ie.buffer,Oe=ie.type,Le=ie.bytesPerElement,K=Oe===i.INT||Oe===i.UNSIGNED_INT||G.gpuType===zo;if(G.isInterleavedBufferAttribute){const J=G.data,F=J.stride,te=G.offset;if(J.isInstancedInterleavedBuffer){for(let ae=0;ae<j.locationSize;ae++)f(j.location+ae,J.meshPerAttribute);M.isInstancedMesh!==!0&&O._maxInstanceCount===void 0&&(O._maxInstanceCount=J.meshPerAttribute*J.count)}else for(let ae=0;ae<j.locationSize;ae++)m(j.location+ae);i.bindBuffer(i.ARRAY_BUFFER,Ce);for(let ae=0;ae<j.locationSize;ae++)T(j.location+ae,H/j.locationSize,Oe,se,F*Le,(te+H/j.locationSize*ae)*Le,K)}else{if(G.isInstancedBufferAttribute){for(let J=0;J<j.locationSize;J++)f(j.location+J,G.meshPerAttribute);M.isInstancedMesh!==!0&&O._maxInstanceCount===void 0&&(O._maxInstanceCount=G.meshPerAttribute*G.count)}else for(let J=0;J<j.locationSize;J++)m(j.location+J);i.bindBuffer(i.ARRAY_BUFFER,Ce);for(let J=0;J<j.locationSize;J++)T(j.location+J,H/j.locationSize,Oe,se,H*Le,H/j.locationSize*J*Le,K)}}else if(Y!==void 0){const se=Y[ee];if(se!==void 0)switch(se.length){case 2:i.vertexAttrib2fv(j.location,se);break;case 3:i.vertexAttrib3fv(j.location,se);break;case 4:i.vertexAttrib4fv(j.location,se);break;default:i.vertexAttrib1fv(j.location,se)}}}}A()}function P(){N();for(const M in n){const S=n[M];for(const L in S){const O=S[L];for(const V in O)h(O[V].object),delete O[V];delete S[L]}delete n[M]}}function C(M){if(n[M.id]===void 0)return;const S=n[M.id];for(const L in S){const O=S[L];for(const V in O)h(O[V].object),delete O[V];delete S[L]}delete n[M.id]}function D(M){for(const S in n){const L=n[S];if(L[M.id]===void 0)continue;const O=L[M.id];for(const V in O)h(O[V].object),delete O[V];delete L[M.id]}}function N(){w(),a=!0,r!==s&&(r=s,l(r.object))}function w(){s.geometry=null,s.program=null,s.wireframe=!1}return{setup:o,reset:N,resetDefaultState:w,dispose:P,releaseStatesOfGeometry:C,releaseStatesOfProgram:D,initAttributes:v,enableAttribute:m,disableUnusedAttributes:A}}function Ag(i,e,t){let n;function s(l){n=l}function r(l,h){i.drawArrays(n,l,h),t.update(h,n,1)}function a(l,h,u){u!==0&&(i.drawArraysInstanced(n,l,h,u),t.update(h,n,u))}function o(l,h,u){if(u===0)return;e.get("WEBGL_multi_draw").multiDrawArraysWEBGL(n,l,0,h,0,u);let p=0;for(let _=0;_<u;_++)p+=h[_];t.update(p,n,1)}function c(l,h,u,d){if(u===0)return;const p=e.get("WEBGL_multi_draw");if(p===null)for(let _=0;_<l.length;_++)a(l[_],h[_],d[_]);else{p.multiDrawArraysInstancedWEBGL(n,l,0,h,0,d,0,u);let _=0;for(let v=0;v<u;v++)_+=h[v]*d[v];t.update(_,n,1)}}this.setMode=s,this.render=r,this.renderInstances=a,this.renderMultiDraw=o,this.renderMultiDrawInstances=c}function Rg(i,e,t,n){let s;function r(){if(s!==void 0)return s;if(e.has("EXT_texture_filter_anisotropic")===!0){const D=e.get("EXT_texture_filter_anisotropic");s=i.getParameter(D.MAX_TEXTURE_MAX_ANISOTROPY_EXT)}else s=0;return s}function a(D){return!(D!==dn&&n.convert(D)!==i.getParameter(i.IMPLEMENTATION_COLOR_READ_FORMAT))}function o(D){const N=D===Cs&&(e.has("EXT_color_buffer_half_float")||e.has("EXT_color_buffer_float"));return!(D!==Sn&&n.convert(D)!==i.getParameter(i.IMPLEMENTATION_COLOR_READ_TYPE)&&D!==Un&&!N)}function c(D){if(D==="highp"){if(i.getShaderPrecisionFormat(i.VERTEX_SHADER,i.HIGH_FLOAT).precision>0&&i.getShaderPrecisionFormat(i.FRAGMENT_SHADER,i.HIGH_FLOAT).precision>0)return"highp";D="mediump"}return D==="mediump"&&i.getShaderPrecisionFormat(i.VERTEX_SHADER,i.MEDIUM_FLOAT).precision>0&&i.getShaderPrecisionFormat(i.FRAGMENT_SHADER,i.MEDIUM_FLOAT).precision>0?"mediump":"lowp"}let l=t.precision!==void 0?t.precision:"highp";const h=c(l);h!==l&&(console.warn("THREE.WebGLRenderer:",l,"not supported, using",h,"instead."),l=h);const u=t.logarithmicDepthBuffer===!0,d=t.reversedDepthBuffer===!0&&e.has("EXT_clip_control"),p=i.getParameter(i.MAX_TEXTURE_IMAGE_UNITS),_=i.getParameter(i.MAX_VERTEX_TEXTURE_IMAGE_UNITS),v=i.getParameter(i.MAX_TEXTURE_SIZE),m=i.getParameter(i.MAX_CUBE_MAP_TEXTURE_SIZE),f=i.getParameter(i.MAX_VERTEX_ATTRIBS),A=i.getParameter(i.MAX_VERTEX_UNIFORM_VECTORS),T=i.getParameter(i.MAX_VARYING_VECTORS),b=i.getParameter(i.MAX_FRAGMENT_UNIFORM_VECTORS),P=_>0,C=i.getParameter(i.MAX_SAMPLES);return{isWebGL2:!0,getMaxAnisotropy:r,getMaxPrecision:c,textureFormatReadable:a,textureTypeReadable:o,precision:l,logarithmicDepthBuffer:u,reversedDepthBuffer:d,maxTextures:p,maxVertexTextures:_,maxTextureSize:v,maxCubemapSize:m,maxAttributes:f,maxVertexUniforms:A,maxVaryings:T,maxFragmentUniforms:b,vertexTextures:P,maxSamples:C}}function Cg(i){const e=this;let t=null,n=0,s=!1,r=!1;const a=new $n,o=new qe,c={value:null,needsUpdate:!1};this.uniform=c,this.numPlanes=0,this.numIntersection=0,this.init=function(u,d){const p=u.length!==0||d||n!==0||s;return s=d,n=u.length,p},this.beginShadows=function(){r=!0,h(null)},this.endShadows=function(){r=!1},this.setGlobalState=function(u,d){t=h(u,d,0)},this.setState=function(u,d,p){const _=u.clippingPlanes,v=u.clipIntersection,m=u.clipShadows,f=i.get(u);if(!s||_===null||_.length===0||r&&!m)r?h(null):l();else{const A=r?0:n,T=A*4;let b=f.clippingState||null;c.value=b,b=h(_,d,T,p);for(let P=0;P!==T;++P)b[P]=t[P];f.clippingState=b,this.numIntersection=v?this.numPlanes:0,this.numPlanes+=A}};function l(){c.value!==t&&(c.value=t,c.needsUpdate=n>0),e.numPlanes=n,e.numIntersection=0}function h(u,d,p,_){const v=u!==null?u.length:0;let m=null;if(v!==0){if(m=c.value,_!==!0||m===null){const f=p+v*4,A=d.matrixWorldInverse;o.getNormalMatrix(A),(m===null||m.length<f)&&(m=new Float32Array(f));for(let T=0,b=p;T!==v;++T,b+=4)a.copy(u[T]).applyMatrix4(A,o),a.normal.toArray(m,b),m[b+3]=a.constant}c.value=m,c.needsUpdate=!0}return e.numPlanes=v,e.numIntersection=0,m}}function Pg(i){let e=new WeakMap;function t(a,o){return o===Va?a.mapping=Ki:o===Ga&&(a.mapping=Zi),a}function n(a){if(a&&a.isTexture){const o=a.mapping;if(o===Va||o===Ga)if(e.has(a)){const c=e.get(a).texture;return t(c,a.mapping)}else{const c=a.image;if(c&&c.height>0){const l=new Tf(c.height);return l.fromEquirectangularTexture(i,a),e.set(a,l),a.addEventListener("dispose",s),t(l.texture,a.mapping)}else return null}}return a}function s(a){const o=a.target;o.removeEventListener("dispose",s);const c=e.get(o);c!==void 0&&(e.delete(o),c.dispose())}function r(){e=new WeakMap}return{get:n,dispose:r}}const Vi=4,ic=[.125,.215,.35,.446,.526,.582],fi=20,Ma=new Ch,sc=new je;let wa=null,ba=0,Sa=0,Ea=!1;const ui=(1+Math.sqrt(5))/2,Bi=1/ui,rc=[new U(-ui,Bi,0),new U(ui,Bi,0),new U(-Bi,0,ui),new U(Bi,0,ui),new U(0,ui,-Bi),new U(0,ui,Bi),new U(-1,1,-1),new U(1,1,-1),new U(-1,1,1),new U(1,1,1)],Dg=new U;class ac{constructor(e){this._renderer=e,this._pingPongRenderTarget=null,this._lodMax=0,this._cubeSize=0,this._lodPlanes=[],this._sizeLods=[],this._sigmas=[],this._blurMaterial=null,this._cubemapMaterial=null,this._equirectMaterial=null,this._compileMaterial(this._blurMaterial)}fromScene(e,t=0,n=.1,s=100,r={}){const{size:a=256,position:o=Dg}=r;wa=this._renderer.getRenderTarget(),ba=this._renderer.getActiveCubeFace(),Sa=this._renderer.getActiveMipmapLevel(),Ea=this._renderer.xr.enabled,this._renderer.xr.enabled=!1,this._setSize(a);const c=this._allocateTargets();return c.depthBuffer=!0,this._sceneToCubeUV(e,n,s,c,o),t>0&&this._blur(c,0,0,t),this._applyPMREM(c),this._cleanup(c),c}fromEquirectangular(e,t=null){return this._fromTexture(e,t)}fromCubemap(e,t=null){return this._fromTexture(e,t)}compileCubemapShader(){this._cubemapMaterial===null&&(this._cubemapMaterial=cc(),this._compileMaterial(this._cubemapMaterial))}compileEquirectangularShader(){this._equirectMaterial===null&&(this._equirectMaterial=lc(),this._compileMaterial(this._equirectMaterial))}dispose(){this._dispose(),this._cubemapMaterial!==null&&this._cubemapMaterial.dispose(),this._equirectMaterial!==null&&this._equirectMaterial.dispose()}_setSize(e){this._lodMax=Math.floor(Math.log2(e)),this._cubeSize=Math.pow(2,this._lodMax)}_dispose(){this._blurMaterial!==null&&this._blurMaterial.dispose(),this._pingPongRenderTarget!==null&&this._pingPongRenderTarget.dispose();for(let e=0;e<this._lodPlanes.length;e++)this._lodPlanes[e].dispose()}_cleanup(e){this._renderer.setRenderTarget(wa,ba,Sa),this._renderer.xr.enabled=Ea,e.scissorTest=!1,hr(e,0,0,e.width,e.height)}_fromTexture(e,t){e.mapping===Ki||e.mapping===Zi?this._setSize(e.image.length===0?16:e.image[0].width||e.image[0].image.width):this._setSize(e.image.width/4),wa=this._renderer.getRenderTarget(),ba=this._renderer.getActiveCubeFace(),Sa=this._renderer.getActiveMipmapLevel(),Ea=this._renderer.xr.enabled,this._renderer.xr.enabled=!1;const n=t||this._allocateTargets();return this._textureToCubeUV(e,n),this._applyPMREM(n),this._cleanup(n),n}_allocateTargets(){const e=3*Math.max(this._cubeSize,112),t=4*this._cubeSize,n={magFilter:vn,minFilter:vn,generateMipmaps:!1,type:Cs,format:dn,colorSpace:Ji,depthBuffer:!1},s=oc(e,t,n);if(this._pingPongRenderTarget===null||this._pingPongRenderTarget.width!==e||this._pingPongRenderTarget.height!==t){this._pingPongRenderTarget!==null&&this._dispose(),this._pingPongRenderTarget=oc(e,t,n);const{_lodMax:r}=this;({sizeLods:this._sizeLods,lodPlanes:this._lodPlanes,sigmas:this._sigmas}=Lg(r)),this._blurMaterial=Ig(r,e,t)}return s}_compileMaterial(e){const t=new Ot(this._lodPlanes[0],e);this._renderer.compile(t,Ma)}_sceneToCubeUV(e,t,n,s,r){const c=new on(90,1,t,n),l=[1,-1,1,1,1,1],h=[1,1,1,-1,-1,-1],u=this._renderer,d=u.autoClear,p=u.toneMapping;u.getClearColor(sc),u.toneMapping=Jn,u.autoClear=!1,u.state.buffers.depth.getReversed()&&(u.setRenderTarget(s),u.clearDepth(),u.setRenderTarget(null));const v=new Ts({name:"PMREM.Background",side:qt,depthWrite:!1,depthTest:!1}),m=new Ot(new ns,v);let f=!1;const A=e.background;A?A.isColor&&(v.color.copy(A),e.background=null,f=!0):(v.color.copy(sc),f=!0);for(let T=0;T<6;T++){const b=T%3;b===0?(c.up.set(0,l[T],0),c.position.set(r.x,r.y,r.z),c.lookAt(r.x+h[T],r.y,r.z)):b===1?(c.up.set(0,0,l[T]),c.position.set(r.x,r.y,r.z),c.lookAt(r.x,r.y+h[T],r.z)):(c.up.set(0,l[T],0),c.position.set(r.x,r.y,r.z),c.lookAt(r.x,r.y,r.z+h[T]));const P=this._cubeSize;hr(s,b*P,T>2?P:0,P,P),u.setRenderTarget(s),f&&u.render(m,c),u.render(e,c)}m.geometry.dispose(),m.material.dispose(),u.toneMapping=p,u.autoClear=d,e.background=A}_textureToCubeUV(e,t){const n=this._renderer,s=e.mapping===Ki||e.mapping===Zi;s?(this._cubemapMaterial===null&&(this._cubemapMaterial=cc()),this._cubemapMaterial.uniforms.flipEnvMap.value=e.isRenderTargetTexture===!1?-1:1):this._equirectMaterial===null&&(this._equirectMaterial=lc());const r=s?this._cubemapMaterial:this._equirectMaterial,a=new Ot(this._lodPlanes[0],r),o=r.uniforms;o.envMap.value=e;const c=this._cubeSize;hr(t,0,0,3*c,2*c),n.setRenderTarget(t),n.render(a,Ma)}_applyPMREM(e){const t=this._renderer,n=t.autoClear;t.autoClear=!1;const s=this._lodPlanes.length;for(let r=1;r<s;r++){const a=Math.sqrt(this._sigmas[r]*this._sigmas[r]-this._sigmas[r-1]*this._sigmas[r-1]),o=rc[(s-r-1)%rc.length];this._blur(e,r-1,r,a,o)}t.autoClear=n}_blur(e,t,n,s,r){const a=this._pingPongRenderTarget;this._halfBlur(e,a,t,n,s,"latitudinal",r),this._halfBlur(a,e,n,n,s,"longitudinal",r)}_halfBlur(e,t,n,s,r,a,o){const c=this._renderer,l=this._blurMaterial;a!=="latitudinal"&&a!=="longitudinal"&&console.error("blur direction must be either latitudinal or longitudinal!");const h=3,u=new Ot(this._lodPlanes[s],l),d=l.uniforms,p=this._sizeLods[n]-1,_=isFinite(r)?Math.PI/(2*p):2*Math.PI/(2*fi-1),v=r/_,m=isFinite(r)?1+Math.floor(h*v):fi;m>fi&&console.warn(`sigmaRadians, ${r}, is too large and will clip, as it requested ${m} samples when the maximum is set to ${fi}`);const f=[];let A=0;for(let D=0;D<fi;++D){const N=D/v,w=Math.exp(-N*N/2);f.push(w),D===0?A+=w:D<m&&(A+=2*w)}for(let D=0;D<f.length;D++)f[D]=f[D]/A;d.envMap.value=e.texture,d.samples.value=m,d.weights.value=f,d.latitudinal.value=a==="latitudinal",o&&(d.poleAxis.value=o);const{_lodMax:T}=this;d.dTheta.value=_,d.mipInt.value=T-n;const b=this._sizeLods[s],P=3*b*(s>T-Vi?s-T+Vi:0),C=4*(this._cubeSize-b);hr(t,P,C,3*b,2*b),c.setRenderTarget(t),c.render(u,Ma)}}function Lg(i){const e=[],t=[],n=[];let s=i;const r=i-Vi+1+ic.length;for(let a=0;a<r;a++){const o=Math.pow(2,s);t.push(o);let c=1/o;a>i-Vi?c=ic[a-i+Vi-1]:a===0&&(c=0),n.push(c);const l=1/(o-2),h=-l,u=1+l,d=[h,h,u,h,u,u,h,h,u,u,h,u],p=6,_=6,v=3,m=2,f=1,A=new Float32Array(v*_*p),T=new Float32Array(m*_*p),b=new Float32Array(f*_*p);for(let C=0;C<p;C++){const D=C%3*2/3-1,N=C>2?0:-1,w=[D,N,0,D+2/3,N,0,D+2/3,N+1,0,D,N,0,D+2/3,N+1,0,D,N+1,0];A.set(w,v*_*C),T.set(d,m*_*C);const M=[C,C,C,C,C,C];b.set(M,f*_*C)}const P=new It;P.setAttribute("position",new $t(A,v)),P.setAttribute("uv",new $t(T,m)),P.setAttribute("faceIndex",new $t(b,f)),e.push(P),s>Vi&&s--}return{lodPlanes:e,sizeLods:t,sigmas:n}}function oc(i,e,t){const n=new yi(i,e,t);return n.texture.mapping=Lr,n.texture.name="PMREM.cubeUv",n.scissorTest=!0,n}function hr(i,e,t,n,s){i.viewport.set(e,t,n,s),i.scissor.set(e,t,n,s)}function Ig(i,e,t){const n=new Float32Array(fi),s=new U(0,1,0);return new ti({name:"SphericalGaussianBlur",defines:{n:fi,CUBEUV_TEXEL_WIDTH:1/e,CUBEUV_TEXEL_HEIGHT:1/t,CUBEUV_MAX_MIP:`${i}.0`},uniforms:{envMap:{value:null},samples:{value:1},weights:{value:n},latitudinal:{value:!1},dTheta:{value:0},mipInt:{value:0},poleAxis:{value:s}},vertexShader:Ko(),fragmentShader:`

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
		`,blending:Zn,depthTest:!1,depthWrite:!1})}function lc(){return new ti({name:"EquirectangularToCubeUV",uniforms:{envMap:{value:null}},vertexShader:Ko(),fragmentShader:`

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
		`,blending:Zn,depthTest:!1,depthWrite:!1})}function cc(){return new ti({name:"CubemapToCubeUV",uniforms:{envMap:{value:null},flipEnvMap:{value:-1}},vertexShader:Ko(),fragmentShader:`

			precision mediump float;
			precision mediump int;

			uniform float flipEnvMap;

			varying vec3 vOutputDirection;

			uniform samplerCube envMap;

			void main() {

				gl_FragColor = textureCube( envMap, vec3( flipEnvMap * vOutputDirection.x, vOutputDirection.yz ) );

			}
		`,blending:Zn,depthTest:!1,depthWrite:!1})}function Ko(){return`

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
	`}function Ug(i){let e=new WeakMap,t=null;function n(o){if(o&&o.isTexture){const c=o.mapping,l=c===Va||c===Ga,h=c===Ki||c===Zi;if(l||h){let u=e.get(o);const d=u!==void 0?u.texture.pmremVersion:0;if(o.isRenderTargetTexture&&o.pmremVersion!==d)return t===null&&(t=new ac(i)),u=l?t.fromEquirectangular(o,u):t.fromCubemap(o,u),u.texture.pmremVersion=o.pmremVersion,e.set(o,u),u.texture;if(u!==void 0)return u.texture;{const p=o.image;return l&&p&&p.height>0||h&&p&&s(p)?(t===null&&(t=new ac(i)),u=l?t.fromEquirectangular(o):t.fromCubemap(o),u.texture.pmremVersion=o.pmremVersion,e.set(o,u),o.addEventListener("dispose",r),u.texture):null}}}return o}function s(o){let c=0;const l=6;for(let h=0;h<l;h++)o[h]!==void 0&&c++;return c===l}function r(o){const c=o.target;c.removeEventListener("dispose",r);const l=e.get(c);l!==void 0&&(e.delete(c),l.dispose())}function a(){e=new WeakMap,t!==null&&(t.dispose(),t=null)}return{get:n,dispose:a}}function Ng(i){const e={};function t(n){if(e[n]!==void 0)return e[n];let s;switch(n){case"WEBGL_depth_texture":s=i.getExtension("WEBGL_depth_texture")||i.getExtension("MOZ_WEBGL_depth_texture")||i.getExtension("WEBKIT_WEBGL_depth_texture");break;case"EXT_texture_filter_anisotropic":s=i.getExtension("EXT_texture_filter_anisotropic")||i.getExtension("MOZ_EXT_texture_filter_anisotropic")||i.getExtension("WEBKIT_EXT_texture_filter_anisotropic");break;case"WEBGL_compressed_texture_s3tc":s=i.getExtension("WEBGL_compressed_texture_s3tc")||i.getExtension("MOZ_WEBGL_compressed_texture_s3tc")||i.getExtension("WEBKIT_WEBGL_compressed_texture_s3tc");break;case"WEBGL_compressed_texture_pvrtc":s=i.getExtension("WEBGL_compressed_texture_pvrtc")||i.getExtension("WEBKIT_WEBGL_compressed_texture_pvrtc");break;default:s=i.getExtension(n)}return e[n]=s,s}return{has:function(n){return t(n)!==null},init:function(){t("EXT_color_buffer_float"),t("WEBGL_clip_cull_distance"),t("OES_texture_float_linear"),t("EXT_color_buffer_half_float"),t("WEBGL_multisampled_render_to_texture"),t("WEBGL_render_shared_exponent")},get:function(n){const s=t(n);return s===null&&Es("THREE.WebGLRenderer: "+n+" extension not supported."),s}}}function Fg(i,e,t,n){const s={},r=new WeakMap;function a(u){const d=u.target;d.index!==null&&e.remove(d.index);for(const _ in d.attributes)e.remove(d.attributes[_]);d.removeEventListener("dispose",a),delete s[d.id];const p=r.get(d);p&&(e.remove(p),r.delete(d)),n.releaseStatesOfGeometry(d),d.isInstancedBufferGeometry===!0&&delete d._maxInstanceCount,t.memory.geometries--}function o(u,d){return s[d.id]===!0||(d.addEventListener("dispose",a),s[d.id]=!0,t.memory.geometries++),d}function c(u){const d=u.attributes;for(const p in d)e.update(d[p],i.ARRAY_BUFFER)}function l(u){const d=[],p=u.index,_=u.attributes.position;let v=0;if(p!==null){const A=p.array;v=p.version;for(let T=0,b=A.length;T<b;T+=3){const P=A[T+0],C=A[T+1],D=A[T+2];d.push(P,C,C,D,D,P)}}else if(_!==void 0){const A=_.array;v=_.version;for(let T=0,b=A.length/3-1;T<b;T+=3){const P=T+0,C=T+1,D=T+2;d.push(P,C,C,D,D,P)}}else return;const m=new(mh(d)?xh:vh)(d,1);m.version=v;const f=r.get(u);f&&e.remove(f),r.set(u,m)}function h(u){const d=r.get(u);if(d){const p=u.index;p!==null&&d.version<p.version&&l(u)}else l(u);return r.get(u)}return{get:o,update:c,getWireframeAttribute:h}}function Og(i,e,t){let n;function s(d){n=d}let r,a;function o(d){r=d.type,a=d.bytesPerElement}function c(d,p){i.drawElements(n,p,r,d*a),t.update(p,n,1)}function l(d,p,_){_!==0&&(i.drawElementsInstanced(n,p,r,d*a,_),t.update(p,n,_))}function h(d,p,_){if(_===0)return;e.get("WEBGL_multi_draw").multiDrawElementsWEBGL(n,p,0,r,d,0,_);let m=0;for(let f=0;f<_;f++)m+=p[f];t.update(m,n,1)}function u(d,p,_,v){if(_===0)return;const m=e.get("WEBGL_multi_draw");if(m===null)for(let f=0;f<d.length;f++)l(d[f]/a,p[f],v[f]);else{m.multiDrawElementsInstancedWEBGL(n,p,0,r,d,0,v,0,_);let f=0;for(let A=0;A<_;A++)f+=p[A]*v[A];t.update(f,n,1)}}this.setMode=s,this.setIndex=o,this.render=c,this.renderInstances=l,this.renderMultiDraw=h,this.renderMultiDrawInstances=u}function kg(i){const e={geometries:0,textures:0},t={frame:0,calls:0,triangles:0,points:0,lines:0};function n(r,a,o){switch(t.calls++,a){case i.TRIANGLES:t.triangles+=o*(r/3);break;case i.LINES:t.lines+=o*(r/2);break;case i.LINE_STRIP:t.lines+=o*(r-1);break;case i.LINE_LOOP:t.lines+=o*r;break;case i.POINTS:t.points+=o*r;break;default:console.error("THREE.WebGLInfo: Unknown draw mode:",a);break}}function s(){t.calls=0,t.triangles=0,t.points=0,t.lines=0}return{memory:e,render:t,programs:null,autoReset:!0,reset:s,update:n}}function Bg(i,e,t){const n=new WeakMap,s=new Mt;function r(a,o,c){const l=a.morphTargetInfluences,h=o.morphAttributes.position||o.morphAttributes.normal||o.morphAttributes.color,u=h!==void 0?h.length:0;let d=n.get(o);if(d===void 0||d.count!==u){let M=function(){N.dispose(),n.delete(o),o.removeEventListener("dispose",M)};var p=M;d!==void 0&&d.texture.dispose();const _=o.morphAttributes.position!==void 0,v=o.morphAttributes.normal!==void 0,m=o.morphAttributes.color!==void 0,f=o.morphAttributes.position||[],A=o.morphAttributes.normal||[],T=o.morphAttributes.color||[];let b=0;_===!0&&(b=1),v===!0&&(b=2),m===!0&&(b=3);let P=o.attributes.position.count*b,C=1;P>e.maxTextureSize&&(C=Math.ceil(P/e.maxTextureSize),P=e.maxTextureSize);const D=new Float32Array(P*C*4*u),N=new gh(D,P,C,u);N.type=Un,N.needsUpdate=!0;const w=b*4;for(let S=0;S<u;S++){const L=f[S],O=A[S],V=T[S],z=P*C*4*S;for(let Y=0;Y<L.count;Y++){const ee=Y*w;_===!0&&(s.fromBufferAttribute(L,Y),D[z+ee+0]=s.x,D[z+ee+1]=s.y,D[z+ee+2]=s.z,D[z+ee+3]=0),v===!0&&(s.fromBufferAttribute(O,Y),D[z+ee+4]=s.x,D[z+ee+5]=s.y,D[z+ee+6]=s.z,D[z+ee+7]=0),m===!0&&(s.fromBufferAttribute(V,Y),D[z+ee+8]=s.x,D[z+ee+9]=s.y,D[z+ee+10]=s.z,D[z+ee+11]=V.itemSize===4?s.w:1)}}d={count:u,texture:N,size:new Ve(P,C)},n.set(o,d),o.addEventListener("dispose",M)}if(a.isInstancedMesh===!0&&a.morphTexture!==null)c.getUniforms().setValue(i,"morphTexture",a.morphTexture,t);else{let _=0;for(let m=0;m<l.length;m++)_+=l[m];const v=o.morphTargetsRelative?1:1-_;c.getUniforms().setValue(i,"morphTargetBaseInfluence",v),c.getUniforms().setValue(i,"morphTargetInfluences",l)}c.getUniforms().setValue(i,"morphTargetsTexture",d.texture,t),c.getUniforms().setValue(i,"morphTargetsTextureSize",d.size)}return{update:r}}function zg(i,e,t,n){let s=new WeakMap;function r(c){const l=n.render.frame,h=c.geometry,u=e.get(c,h);if(s.get(u)!==l&&(e.update(u),s.set(u,l)),c.isInstancedMesh&&(c.hasEventListener("dispose",o)===!1&&c.addEventListener("dispose",o),s.get(c)!==l&&(t.update(c.instanceMatrix,i.ARRAY_BUFFER),c.instanceColor!==null&&t.update(c.instanceColor,i.ARRAY_BUFFER),s.set(c,l))),c.isSkinnedMesh){const d=c.skeleton;s.get(d)!==l&&(d.update(),s.set(d,l))}return u}function a(){s=new WeakMap}function o(c){const l=c.target;l.removeEventListener("dispose",o),t.remove(l.instanceMatrix),l.instanceColor!==null&&t.remove(l.instanceColor)}return{update:r,dispose:a}}const Dh=new Xt,hc=new Th(1,1),Lh=new gh,Ih=new cf,Uh=new wh,uc=[],dc=[],fc=new Float32Array(16),pc=new Float32Array(9),mc=new Float32Array(4);function ss(i,e,t){const n=i[0];if(n<=0||n>0)return i;const s=e*t;let r=uc[s];if(r===void 0&&(r=new Float32Array(s),uc[s]=r),e!==0){n.toArray(r,0);for(let a=1,o=0;a!==e;++a)o+=t,i[a].toArray(r,o)}return r}function At(i,e){if(i.length!==e.length)return!1;for(let t=0,n=i.length;t<n;t++)if(i[t]!==e[t])return!1;return!0}function Rt(i,e){for(let t=0,n=e.length;t<n;t++)i[t]=e[t]}function Fr(i,e){let t=dc[e];t===void 0&&(t=new Int32Array(e),dc[e]=t);for(let n=0;n!==e;++n)t[n]=i.allocateTextureUnit();return t}function Hg(i,e){const t=this.cache;t[0]!==e&&(i.uniform1f(this.addr,e),t[0]=e)}function Vg(i,e){const t=this.cache;if(e.x!==void 0)(t[0]!==e.x||t[1]!==e.y)&&(i.uniform2f(this.addr,e.x,e.y),t[0]=e.x,t[1]=e.y);else{if(At(t,e))return;i.uniform2fv(this.addr,e),Rt(t,e)}}function Gg(i,e){const t=this.cache;if(e.x!==void 0)(t[0]!==e.x||t[1]!==e.y||t[2]!==e.z)&&(i.uniform3f(this.addr,e.x,e.y,e.z),t[0]=e.x,t[1]=e.y,t[2]=e.z);else if(e.r!==void 0)(t[0]!==e.r||t[1]!==e.g||t[2]!==e.b)&&(i.uniform3f(this.addr,e.r,e.g,e.b),t[0]=e.r,t[1]=e.g,t[2]=e.b);else{if(At(t,e))return;i.uniform3fv(this.addr,e),Rt(t,e)}}function Wg(i,e){const t=this.cache;if(e.x!==void 0)(t[0]!==e.x||t[1]!==e.y||t[2]!==e.z||t[3]!==e.w)&&(i.uniform4f(this.addr,e.x,e.y,e.z,e.w),t[0]=e.x,t[1]=e.y,t[2]=e.z,t[3]=e.w);else{if(At(t,e))return;i.uniform4fv(this.addr,e),Rt(t,e)}}function $g(i,e){const t=this.cache,n=e.elements;if(n===void 0){if(At(t,e))return;i.uniformMatrix2fv(this.addr,!1,e),Rt(t,e)}else{if(At(t,n))return;mc.set(n),i.uniformMatrix2fv(this.addr,!1,mc),Rt(t,n)}}function qg(i,e){const t=this.cache,n=e.elements;if(n===void 0){if(At(t,e))return;i.uniformMatrix3fv(this.addr,!1,e),Rt(t,e)}else{if(At(t,n))return;pc.set(n),i.uniformMatrix3fv(this.addr,!1,pc),Rt(t,n)}}function Xg(i,e){const t=this.cache,n=e.elements;if(n===void 0){if(At(t,e))return;i.uniformMatrix4fv(this.addr,!1,e),Rt(t,e)}else{if(At(t,n))return;fc.set(n),i.uniformMatrix4fv(this.addr,!1,fc),Rt(t,n)}}function Yg(i,e){const t=this.cache;t[0]!==e&&(i.uniform1i(this.addr,e),t[0]=e)}function jg(i,e){const t=this.cache;if(e.x!==void 0)(t[0]!==e.x||t[1]!==e.y)&&(i.uniform2i(this.addr,e.x,e.y),t[0]=e.x,t[1]=e.y);else{if(At(t,e))return;i.uniform2iv(this.addr,e),Rt(t,e)}}function Kg(i,e){const t=this.cache;if(e.x!==void 0)(t[0]!==e.x||t[1]!==e.y||t[2]!==e.z)&&(i.uniform3i(this.addr,e.x,e.y,e.z),t[0]=e.x,t[1]=e.y,t[2]=e.z);else{if(At(t,e))return;i.uniform3iv(this.addr,e),Rt(t,e)}}function Zg(i,e){const t=this.cache;if(e.x!==void 0)(t[0]!==e.x||t[1]!==e.y||t[2]!==e.z||t[3]!==e.w)&&(i.uniform4i(this.addr,e.x,e.y,e.z,e.w),t[0]=e.x,t[1]=e.y,t[2]=e.z,t[3]=e.w);else{if(At(t,e))return;i.uniform4iv(this.addr,e),Rt(t,e)}}function Jg(i,e){const t=this.cache;t[0]!==e&&(i.uniform1ui(this.addr,e),t[0]=e)}function Qg(i,e){const t=this.cache;if(e.x!==void 0)(t[0]!==e.x||t[1]!==e.y)&&(i.uniform2ui(this.addr,e.x,e.y),t[0]=e.x,t[1]=e.y);else{if(At(t,e))return;i.uniform2uiv(this.addr,e),Rt(t,e)}}function e_(i,e){const t=this.cache;if(e.x!==void 0)(t[0]!==e.x||t[1]!==e.y||t[2]!==e.z)&&(i.uniform3ui(this.addr,e.x,e.y,e.z),t[0]=e.x,t[1]=e.y,t[2]=e.z);else{if(At(t,e))return;i.uniform3uiv(this.addr,e),Rt(t,e)}}function t_(i,e){const t=this.cache;if(e.x!==void 0)(t[0]!==e.x||t[1]!==e.y||t[2]!==e.z||t[3]!==e.w)&&(i.uniform4ui(this.addr,e.x,e.y,e.z,e.w),t[0]=e.x,t[1]=e.y,t[2]=e.z,t[3]=e.w);else{if(At(t,e))return;i.uniform4uiv(this.addr,e),Rt(t,e)}}function n_(i,e,t){const n=this.cache,s=t.allocateTextureUnit();n[0]!==s&&(i.uniform1i(this.addr,s),n[0]=s);let r;this.type===i.SAMPLER_2D_SHADOW?(hc.compareFunction=ph,r=hc):r=Dh,t.setTexture2D(e||r,s)}function i_(i,e,t){const n=this.cache,s=t.allocateTextureUnit();n[0]!==s&&(i.uniform1i(this.addr,s),n[0]=s),t.setTexture3D(e||Ih,s)}function s_(i,e,t){const n=this.cache,s=t.allocateTextureUnit();n[0]!==s&&(i.uniform1i(this.addr,s),n[0]=s),t.setTextureCube(e||Uh,s)}function r_(i,e,t){const n=this.cache,s=t.allocateTextureUnit();n[0]!==s&&(i.uniform1i(this.addr,s),n[0]=s),t.setTexture2DArray(e||Lh,s)}function a_(i){switch(i){case 5126:return Hg;case 35664:return Vg;case 35665:return Gg;case 35666:return Wg;case 35674:return $g;case 35675:return qg;case 35676:return Xg;case 5124:case 35670:return Yg;case 35667:case 35671:return jg;case 35668:case 35672:return Kg;case 35669:case 35673:return Zg;case 5125:return Jg;case 36294:return Qg;case 36295:return e_;case 36296:return t_;case 35678:case 36198:case 36298:case 36306:case 35682:return n_;case 35679:case 36299:case 36307:return i_;case 35680:case 36300:case 36308:case 36293:return s_;case 36289:case 36303:case 36311:case 36292:return r_}}function o_(i,e){i.uniform1fv(this.addr,e)}function l_(i,e){const t=ss(e,this.size,2);i.uniform2fv(this.addr,t)}function c_(i,e){const t=ss(e,this.size,3);i.uniform3fv(this.addr,t)}function h_(i,e){const t=ss(e,this.size,4);i.uniform4fv(this.addr,t)}function u_(i,e){const t=ss(e,this.size,4);i.uniformMatrix2fv(this.addr,!1,t)}function d_(i,e){const t=ss(e,this.size,9);i.uniformMatrix3fv(this.addr,!1,t)}function f_(i,e){const t=ss(e,this.size,16);i.uniformMatrix4fv(this.addr,!1,t)}function p_(i,e){i.uniform1iv(this.addr,e)}function m_(i,e){i.uniform2iv(this.addr,e)}function g_(i,e){i.uniform3iv(this.addr,e)}function __(i,e){i.uniform4iv(this.addr,e)}function v_(i,e){i.uniform1uiv(this.addr,e)}function x_(i,e){i.uniform2uiv(this.addr,e)}function y_(i,e){i.uniform3uiv(this.addr,e)}function M_(i,e){i.uniform4uiv(this.addr,e)}function w_(i,e,t){const n=this.cache,s=e.length,r=Fr(t,s);At(n,r)||(i.uniform1iv(this.addr,r),Rt(n,r));for(let a=0;a!==s;++a)t.setTexture2D(e[a]||Dh,r[a])}function b_(i,e,t){const n=this.cache,s=e.length,r=Fr(t,s);At(n,r)||(i.uniform1iv(this.addr,r),Rt(n,r));for(let a=0;a!==s;++a)t.setTexture3D(e[a]||Ih,r[a])}function S_(i,e,t){const n=this.cache,s=e.length,r=Fr(t,s);At(n,r)||(i.uniform1iv(this.addr,r),Rt(n,r));for(let a=0;a!==s;++a)t.setTextureCube(e[a]||Uh,r[a])}function E_(i,e,t){const n=this.cache,s=e.length,r=Fr(t,s);At(n,r)||(i.uniform1iv(this.addr,r),Rt(n,r));for(let a=0;a!==s;++a)t.setTexture2DArray(e[a]||Lh,r[a])}function T_(i){switch(i){case 5126:return o_;case 35664:return l_;case 35665:return c_;case 35666:return h_;case 35674:return u_;case 35675:return d_;case 35676:return f_;case 5124:case 35670:return p_;case 35667:case 35671:return m_;case 35668:case 35672:return g_;case 35669:case 35673:return __;case 5125:return v_;case 36294:return x_;case 36295:return y_;case 36296:return M_;case 35678:case 36198:case 36298:case 36306:case 35682:return w_;case 35679:case 36299:case 36307:return b_;case 35680:case 36300:case 36308:case 36293:return S_;case 36289:case 36303:case 36311:case 36292:return E_}}class A_{constructor(e,t,n){this.id=e,this.addr=n,this.cache=[],this.type=t.type,this.setValue=a_(t.type)}}class R_{constructor(e,t,n){this.id=e,this.addr=n,this.cache=[],this.type=t.type,this.size=t.size,this.setValue=T_(t.type)}}class C_{constructor(e){this.id=e,this.seq=[],this.map={}}setValue(e,t,n){const s=this.seq;for(let r=0,a=s.length;r!==a;++r){const o=s[r];o.setValue(e,t[o.id],n)}}}const Ta=/(\w+)(\])?(\[|\.)?/g;function gc(i,e){i.seq.push(e),i.map[e.id]=e}function P_(i,e,t){const n=i.name,s=n.length;for(Ta.lastIndex=0;;){const r=Ta.exec(n),a=Ta.lastIndex;let o=r[1];const c=r[2]==="]",l=r[3];if(c&&(o=o|0),l===void 0||l==="["&&a+2===s){gc(t,l===void 0?new A_(o,i,e):new R_(o,i,e));break}else{let u=t.map[o];u===void 0&&(u=new C_(o),gc(t,u)),t=u}}}class yr{constructor(e,t){this.seq=[],this.map={};const n=e.getProgramParameter(t,e.ACTIVE_UNIFORMS);for(let s=0;s<n;++s){const r=e.getActiveUniform(t,s),a=e.getUniformLocation(t,r.name);P_(r,a,this)}}setValue(e,t,n,s){const r=this.map[t];r!==void 0&&r.setValue(e,n,s)}setOptional(e,t,n){const s=t[n];s!==void 0&&this.setValue(e,n,s)}static upload(e,t,n,s){for(let r=0,a=t.length;r!==a;++r){const o=t[r],c=n[o.id];c.needsUpdate!==!1&&o.setValue(e,c.value,s)}}static seqWithValue(e,t){const n=[];for(let s=0,r=e.length;s!==r;++s){const a=e[s];a.id in t&&n.push(a)}return n}}function _c(i,e,t){const n=i.createShader(e);return i.shaderSource(n,t),i.compileShader(n),n}const D_=37297;let L_=0;function I_(i,e){const t=i.split(`
`),n=[],s=Math.max(e-6,0),r=Math.min(e+6,t.length);for(let a=s;a<r;a++){const o=a+1;n.push(`${o===e?">":" "} ${o}: ${t[a]}`)}return n.join(`
`)}const vc=new qe;function U_(i){nt._getMatrix(vc,nt.workingColorSpace,i);const e=`mat3( ${vc.elements.map(t=>t.toFixed(4))} )`;switch(nt.getTransfer(i)){case br:return[e,"LinearTransferOETF"];case at:return[e,"sRGBTransferOETF"];default:return console.warn("THREE.WebGLProgram: Unsupported color space: ",i),[e,"LinearTransferOETF"]}}function xc(i,e,t){const n=i.getShaderParameter(e,i.COMPILE_STATUS),r=(i.getShaderInfoLog(e)||"").trim();if(n&&r==="")return"";const a=/ERROR: 0:(\d+)/.exec(r);if(a){const o=parseInt(a[1]);return t.toUpperCase()+`

`+r+`

`+I_(i.getShaderSource(e),o)}else return r}function N_(i,e){const t=U_(e);return[`vec4 ${i}( vec4 value ) {`,`	return ${t[1]}( vec4( value.rgb * ${t[0]}, value.a ) );`,"}"].join(`
`)}function F_(i,e){let t;switch(e){case Nd:t="Linear";break;case Fd:t="Reinhard";break;case Od:t="Cineon";break;case kd:t="ACESFilmic";break;case zd:t="AgX";break;case Hd:t="Neutral";break;case Bd:t="Custom";break;default:console.warn("THREE.WebGLProgram: Unsupported toneMapping:",e),t="Linear"}return"vec3 "+i+"( vec3 color ) { return "+t+"ToneMapping( color ); }"}const ur=new U;function O_(){nt.getLuminanceCoefficients(ur);const i=ur.x.toFixed(4),e=ur.y.toFixed(4),t=ur.z.toFixed(4);return["float luminance( const in vec3 rgb ) {",`	const vec3 weights = vec3( ${i}, ${e}, ${t} );`,"	return dot( weights, rgb );","}"].join(`
`)}function k_(i){return[i.extensionClipCullDistance?"#extension GL_ANGLE_clip_cull_distance : require":"",i.extensionMultiDraw?"#extension GL_ANGLE_multi_draw : require":""].filter(fs).join(`
`)}function B_(i){const e=[];for(const t in i){const n=i[t];n!==!1&&e.push("#define "+t+" "+n)}return e.join(`
`)}function z_(i,e){const t={},n=i.getProgramParameter(e,i.ACTIVE_ATTRIBUTES);for(let s=0;s<n;s++){const r=i.getActiveAttrib(e,s),a=r.name;let o=1;r.type===i.FLOAT_MAT2&&(o=2),r.type===i.FLOAT_MAT3&&(o=3),r.type===i.FLOAT_MAT4&&(o=4),t[a]={type:r.type,location:i.getAttribLocation(e,a),locationSize:o}}return t}function fs(i){return i!==""}function yc(i,e){const t=e.numSpotLightShadows+e.numSpotLightMaps-e.numSpotLightShadowsWithMaps;return i.replace(/NUM_DIR_LIGHTS/g,e.numDirLights).replace(/NUM_SPOT_LIGHTS/g,e.numSpotLights).replace(/NUM_SPOT_LIGHT_MAPS/g,e.numSpotLightMaps).replace(/NUM_SPOT_LIGHT_COORDS/g,t).replace(/NUM_RECT_AREA_LIGHTS/g,e.numRectAreaLights).replace(/NUM_POINT_LIGHTS/g,e.numPointLights).replace(/NUM_HEMI_LIGHTS/g,e.numHemiLights).replace(/NUM_DIR_LIGHT_SHADOWS/g,e.numDirLightShadows).replace(/NUM_SPOT_LIGHT_SHADOWS_WITH_MAPS/g,e.numSpotLightShadowsWithMaps).replace(/NUM_SPOT_LIGHT_SHADOWS/g,e.numSpotLightShadows).replace(/NUM_POINT_LIGHT_SHADOWS/g,e.numPointLightShadows)}function Mc(i,e){return i.replace(/NUM_CLIPPING_PLANES/g,e.numClippingPlanes).replace(/UNION_CLIPPING_PLANES/g,e.numClippingPlanes-e.numClipIntersection)}const H_=/^[ \t]*#include +<([\w\d./]+)>/gm;function So(i){return i.replace(H_,G_)}const V_=new Map;function G_(i,e){let t=Ye[e];if(t===void 0){const n=V_.get(e);if(n!==void 0)t=Ye[n],console.warn('THREE.WebGLRenderer: Shader chunk "%s" has been deprecated. Use "%s" instead.',e,n);else throw new Error("Can not resolve #include <"+e+">")}return So(t)}const W_=/#pragma unroll_loop_start\s+for\s*\(\s*int\s+i\s*=\s*(\d+)\s*;\s*i\s*<\s*(\d+)\s*;\s*i\s*\+\+\s*\)\s*{([\s\S]+?)}\s+#pragma unroll_loop_end/g;function wc(i){return i.replace(W_,$_)}function $_(i,e,t,n){let s="";for(let r=parseInt(e);r<parseInt(t);r++)s+=n.replace(/\[\s*i\s*\]/g,"[ "+r+" ]").replace(/UNROLLED_LOOP_INDEX/g,r);return s}function bc(i){let e=`precision ${i.precision} float;
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
#define LOW_PRECISION`),e}function q_(i){let e="SHADOWMAP_TYPE_BASIC";return i.shadowMapType===ih?e="SHADOWMAP_TYPE_PCF":i.shadowMapType===pd?e="SHADOWMAP_TYPE_PCF_SOFT":i.shadowMapType===Ln&&(e="SHADOWMAP_TYPE_VSM"),e}function X_(i){let e="ENVMAP_TYPE_CUBE";if(i.envMap)switch(i.envMapMode){case Ki:case Zi:e="ENVMAP_TYPE_CUBE";break;case Lr:e="ENVMAP_TYPE_CUBE_UV";break}return e}function Y_(i){let e="ENVMAP_MODE_REFLECTION";if(i.envMap)switch(i.envMapMode){case Zi:e="ENVMAP_MODE_REFRACTION";break}return e}function j_(i){let e="ENVMAP_BLENDING_NONE";if(i.envMap)switch(i.combine){case Bo:e="ENVMAP_BLENDING_MULTIPLY";break;case Id:e="ENVMAP_BLENDING_MIX";break;case Ud:e="ENVMAP_BLENDING_ADD";break}return e}function K_(i){const e=i.envMapCubeUVHeight;if(e===null)return null;const t=Math.log2(e)-2,n=1/e;return{texelWidth:1/(3*Math.max(Math.pow(2,t),112)),texelHeight:n,maxMip:t}}function Z_(i,e,t,n){const s=i.getContext(),r=t.defines;let a=t.vertexShader,o=t.fragmentShader;const c=q_(t),l=X_(t),h=Y_(t),u=j_(t),d=K_(t),p=k_(t),_=B_(r),v=s.createProgram();let m,f,A=t.glslVersion?"#version "+t.glslVersion+`
`:"";t.isRawShaderMaterial?(m=["#define SHADER_TYPE "+t.shaderType,"#define SHADER_NAME "+t.shaderName,_].filter(fs).join(`
`),m.length>0&&(m+=`
`),f=["#define SHADER_TYPE "+t.shaderType,"#define SHADER_NAME "+t.shaderName,_].filter(fs).join(`
`),f.length>0&&(f+=`
`)):(m=[bc(t),"#define SHADER_TYPE "+t.shaderType,"#define SHADER_NAME "+t.shaderName,_,t.extensionClipCullDistance?"#define USE_CLIP_DISTANCE":"",t.batching?"#define USE_BATCHING":"",t.batchingColor?"#define USE_BATCHING_COLOR":"",t.instancing?"#define USE_INSTANCING":"",t.instancingColor?"#define USE_INSTANCING_COLOR":"",t.instancingMorph?"#define USE_INSTANCING_MORPH":"",t.useFog&&t.fog?"#define USE_FOG":"",t.useFog&&t.fogExp2?"#define FOG_EXP2":"",t.map?"#define USE_MAP":"",t.envMap?"#define USE_ENVMAP":"",t.envMap?"#define "+h:"",t.lightMap?"#define USE_LIGHTMAP":"",t.aoMap?"#define USE_AOMAP":"",t.bumpMap?"#define USE_BUMPMAP":"",t.normalMap?"#define USE_NORMALMAP":"",t.normalMapObjectSpace?"#define USE_NORMALMAP_OBJECTSPACE":"",t.normalMapTangentSpace?"#define USE_NORMALMAP_TANGENTSPACE":"",t.displacementMap?"#define USE_DISPLACEMENTMAP":"",t.emissiveMap?"#define USE_EMISSIVEMAP":"",t.anisotropy?"#define USE_ANISOTROPY":"",t.anisotropyMap?"#define USE_ANISOTROPYMAP":"",t.clearcoatMap?"#define USE_CLEARCOATMAP":"",t.clearcoatRoughnessMap?"#define USE_CLEARCOAT_ROUGHNESSMAP":"",t.clearcoatNormalMap?"#define USE_CLEARCOAT_NORMALMAP":"",t.iridescenceMap?"#define USE_IRIDESCENCEMAP":"",t.iridescenceThicknessMap?"#define USE_IRIDESCENCE_THICKNESSMAP":"",t.specularMap?"#define USE_SPECULARMAP":"",t.specularColorMap?"#define USE_SPECULAR_COLORMAP":"",t.specularIntensityMap?"#define USE_SPECULAR_INTENSITYMAP":"",t.roughnessMap?"#define USE_ROUGHNESSMAP":"",t.metalnessMap?"#define USE_METALNESSMAP":"",t.alphaMap?"#define USE_ALPHAMAP":"",t.alphaHash?"#define USE_ALPHAHASH":"",t.transmission?"#define USE_TRANSMISSION":"",t.transmissionMap?"#define USE_TRANSMISSIONMAP":"",t.thicknessMap?"#define USE_THICKNESSMAP":"",t.sheenColorMap?"#define USE_SHEEN_COLORMAP":"",t.sheenRoughnessMap?"#define USE_SHEEN_ROUGHNESSMAP":"",t.mapUv?"#define MAP_UV "+t.mapUv:"",t.alphaMapUv?"#define ALPHAMAP_UV "+t.alphaMapUv:"",t.lightMapUv?"#define LIGHTMAP_UV "+t.lightMapUv:"",t.aoMapUv?"#define AOMAP_UV "+t.aoMapUv:"",t.emissiveMapUv?"#define EMISSIVEMAP_UV "+t.emissiveMapUv:"",t.bumpMapUv?"#define BUMPMAP_UV "+t.bumpMapUv:"",t.normalMapUv?"#define NORMALMAP_UV "+t.normalMapUv:"",t.displacementMapUv?"#define DISPLACEMENTMAP_UV "+t.displacementMapUv:"",t.metalnessMapUv?"#define METALNESSMAP_UV "+t.metalnessMapUv:"",t.roughnessMapUv?"#define ROUGHNESSMAP_UV "+t.roughnessMapUv:"",t.anisotropyMapUv?"#define ANISOTROPYMAP_UV "+t.anisotropyMapUv:"",t.clearcoatMapUv?"#define CLEARCOATMAP_UV "+t.clearcoatMapUv:"",t.clearcoatNormalMapUv?"#define CLEARCOAT_NORMALMAP_UV "+t.clearcoatNormalMapUv:"",t.clearcoatRoughnessMapUv?"#define CLEARCOAT_ROUGHNESSMAP_UV "+t.clearcoatRoughnessMapUv:"",t.iridescenceMapUv?"#define IRIDESCENCEMAP_UV "+t.iridescenceMapUv:"",t.iridescenceThicknessMapUv?"#define IRIDESCENCE_THICKNESSMAP_UV "+t.iridescenceThicknessMapUv:"",t.sheenColorMapUv?"#define SHEEN_COLORMAP_UV "+t.sheenColorMapUv:"",t.sheenRoughnessMapUv?"#define SHEEN_ROUGHNESSMAP_UV "+t.sheenRoughnessMapUv:"",t.specularMapUv?"#define SPECULARMAP_UV "+t.specularMapUv:"",t.specularColorMapUv?"#define SPECULAR_COLORMAP_UV "+t.specularColorMapUv:"",t.specularIntensityMapUv?"#define SPECULAR_INTENSITYMAP_UV "+t.specularIntensityMapUv:"",t.transmissionMapUv?"#define TRANSMISSIONMAP_UV "+t.transmissionMapUv:"",t.thicknessMapUv?"#define THICKNESSMAP_UV "+t.thicknessMapUv:"",t.vertexTangents&&t.flatShading===!1?"#define USE_TANGENT":"",t.vertexColors?"#define USE_COLOR":"",t.vertexAlphas?"#define USE_COLOR_ALPHA":"",t.vertexUv1s?"#define USE_UV1":"",t.vertexUv2s?"#define USE_UV2":"",t.vertexUv3s?"#define USE_UV3":"",t.pointsUvs?"#define USE_POINTS_UV":"",t.flatShading?"#define FLAT_SHADED":"",t.skinning?"#define USE_SKINNING":"",t.morphTargets?"#define USE_MORPHTARGETS":"",t.morphNormals&&t.flatShading===!1?"#define USE_MORPHNORMALS":"",t.morphColors?"#define USE_MORPHCOLORS":"",t.morphTargetsCount>0?"#define MORPHTARGETS_TEXTURE_STRIDE "+t.morphTextureStride:"",t.morphTargetsCount>0?"#define MORPHTARGETS_COUNT "+t.morphTargetsCount:"",t.doubleSided?"#define DOUBLE_SIDED":"",t.flipSided?"#define FLIP_SIDED":"",t.shadowMapEnabled?"#define USE_SHADOWMAP":"",t.shadowMapEnabled?"#define "+c:"",t.sizeAttenuation?"#define USE_SIZEATTENUATION":"",t.numLightProbes>0?"#define USE_LIGHT_PROBES":"",t.logarithmicDepthBuffer?"#define USE_LOGARITHMIC_DEPTH_BUFFER":"",t.reversedDepthBuffer?"#define USE_REVERSED_DEPTH_BUFFER":"","uniform mat4 modelMatrix;","uniform mat4 modelViewMatrix;","uniform mat4 projectionMatrix;","uniform mat4 viewMatrix;","uniform mat3 normalMatrix;","uniform vec3 cameraPosition;","uniform bool isOrthographic;","#ifdef USE_INSTANCING","	attribute mat4 instanceMatrix;","#endif","#ifdef USE_INSTANCING_COLOR","	attribute vec3 instanceColor;","#endif","#ifdef USE_INSTANCING_MORPH","	uniform sampler2D morphTexture;","#endif","attribute vec3 position;","attribute vec3 normal;","attribute vec2 uv;","#ifdef USE_UV1","	attribute vec2 uv1;","#endif","#ifdef USE_UV2","	attribute vec2 uv2;","#endif","#ifdef USE_UV3","	attribute vec2 uv3;","#endif","#ifdef USE_TANGENT","	attribute vec4 tangent;","#endif","#if defined( USE_COLOR_ALPHA )","	attribute vec4 color;","#elif defined( USE_COLOR )","	attribute vec3 color;","#endif","#ifdef USE_SKINNING","	attribute vec4 skinIndex;","	attribute vec4 skinWeight;","#endif",`
`].filter(fs).join(`
`),f=[bc(t),"#define SHADER_TYPE "+t.shaderType,"#define SHADER_NAME "+t.shaderName,_,t.useFog&&t.fog?"#define USE_FOG":"",t.useFog&&t.fogExp2?"#define FOG_EXP2":"",t.alphaToCoverage?"#define ALPHA_TO_COVERAGE":"",t.map?"#define USE_MAP":"",t.matcap?"#define USE_MATCAP":"",t.envMap?"#define USE_ENVMAP":"",t.envMap?"#define "+l:"",t.envMap?"#define "+h:"",t.envMap?"#define "+u:"",d?"#define CUBEUV_TEXEL_WIDTH "+d.texelWidth:"",d?"#define CUBEUV_TEXEL_HEIGHT "+d.texelHeight:"",d?"#define CUBEUV_MAX_MIP "+d.maxMip+".0":"",t.lightMap?"#define USE_LIGHTMAP":"",t.aoMap?"#define USE_AOMAP":"",t.bumpMap?"#define USE_BUMPMAP":"",t.normalMap?"#define USE_NORMALMAP":"",t.normalMapObjectSpace?"#define USE_NORMALMAP_OBJECTSPACE":"",t.normalMapTangentSpace?"#define USE_NORMALMAP_TANGENTSPACE":"",t.emissiveMap?"#define USE_EMISSIVEMAP":"",t.anisotropy?"#define USE_ANISOTROPY":"",t.anisotropyMap?"#define USE_ANISOTROPYMAP":"",t.clearcoat?"#define USE_CLEARCOAT":"",t.clearcoatMap?"#define USE_CLEARCOATMAP":"",t.clearcoatRoughnessMap?"#define USE_CLEARCOAT_ROUGHNESSMAP":"",t.clearcoatNormalMap?"#define USE_CLEARCOAT_NORMALMAP":"",t.dispersion?"#define USE_DISPERSION":"",t.iridescence?"#define USE_IRIDESCENCE":"",t.iridescenceMap?"#define USE_IRIDESCENCEMAP":"",t.iridescenceThicknessMap?"#define USE_IRIDESCENCE_THICKNESSMAP":"",t.specularMap?"#define USE_SPECULARMAP":"",t.specularColorMap?"#define USE_SPECULAR_COLORMAP":"",t.specularIntensityMap?"#define USE_SPECULAR_INTENSITYMAP":"",t.roughnessMap?"#define USE_ROUGHNESSMAP":"",t.metalnessMap?"#define USE_METALNESSMAP":"",t.alphaMap?"#define USE_ALPHAMAP":"",t.alphaTest?"#define USE_ALPHATEST":"",t.alphaHash?"#define USE_ALPHAHASH":"",t.sheen?"#define USE_SHEEN":"",t.sheenColorMap?"#define USE_SHEEN_COLORMAP":"",t.sheenRoughnessMap?"#define USE_SHEEN_ROUGHNESSMAP":"",t.transmission?"#define USE_TRANSMISSION":"",t.transmissionMap?"#define USE_TRANSMISSIONMAP":"",t.thicknessMap?"#define USE_THICKNESSMAP":"",t.vertexTangents&&t.flatShading===!1?"#define USE_TANGENT":"",t.vertexColors||t.instancingColor||t.batchingColor?"#define USE_COLOR":"",t.vertexAlphas?"#define USE_COLOR_ALPHA":"",t.vertexUv1s?"#define USE_UV1":"",t.vertexUv2s?"#define USE_UV2":"",t.vertexUv3s?"#define USE_UV3":"",t.pointsUvs?"#define USE_POINTS_UV":"",t.gradientMap?"#define USE_GRADIENTMAP":"",t.flatShading?"#define FLAT_SHADED":"",t.doubleSided?"#define DOUBLE_SIDED":"",t.flipSided?"#define FLIP_SIDED":"",t.shadowMapEnabled?"#define USE_SHADOWMAP":"",t.shadowMapEnabled?"#define "+c:"",t.premultipliedAlpha?"#define PREMULTIPLIED_ALPHA":"",t.numLightProbes>0?"#define USE_LIGHT_PROBES":"",t.decodeVideoTexture?"#define DECODE_VIDEO_TEXTURE":"",t.decodeVideoTextureEmissive?"#define DECODE_VIDEO_TEXTURE_EMISSIVE":"",t.logarithmicDepthBuffer?"#define USE_LOGARITHMIC_DEPTH_BUFFER":"",t.reversedDepthBuffer?"#define USE_REVERSED_DEPTH_BUFFER":"","uniform mat4 viewMatrix;","uniform vec3 cameraPosition;","uniform bool isOrthographic;",t.toneMapping!==Jn?"#define TONE_MAPPING":"",t.toneMapping!==Jn?Ye.tonemapping_pars_fragment:"",t.toneMapping!==Jn?F_("toneMapping",t.toneMapping):"",t.dithering?"#define DITHERING":"",t.opaque?"#define OPAQUE":"",Ye.colorspace_pars_fragment,N_("linearToOutputTexel",t.outputColorSpace),O_(),t.useDepthPacking?"#define DEPTH_PACKING "+t.depthPacking:"",`
`].filter(fs).join(`
`)),a=So(a),a=yc(a,t),a=Mc(a,t),o=So(o),o=yc(o,t),o=Mc(o,t),a=wc(a),o=wc(o),t.isRawShaderMaterial!==!0&&(A=`#version 300 es
`,m=[p,"#define attribute in","#define varying out","#define texture2D texture"].join(`
`)+`
`+m,f=["#define varying in",t.glslVersion===Tl?"":"layout(location = 0) out highp vec4 pc_fragColor;",t.glslVersion===Tl?"":"#define gl_FragColor pc_fragColor","#define gl_FragDepthEXT gl_FragDepth","#define texture2D texture","#define textureCube texture","#define texture2DProj textureProj","#define texture2DLodEXT textureLod","#define texture2DProjLodEXT textureProjLod","#define textureCubeLodEXT textureLod","#define texture2DGradEXT textureGrad","#define texture2DProjGradEXT textureProjGrad","#define textureCubeGradEXT textureGrad"].join(`
`)+`
`+f);const T=A+m+a,b=A+f+o,P=_c(s,s.VERTEX_SHADER,T),C=_c(s,s.FRAGMENT_SHADER,b);s.attachShader(v,P),s.attachShader(v,C),t.index0AttributeName!==void 0?s.bindAttribLocation(v,0,t.index0AttributeName):t.morphTargets===!0&&s.bindAttribLocation(v,0,"position"),s.linkProgram(v);function D(S){if(i.debug.checkShaderErrors){const L=s.getProgramInfoLog(v)||"",O=s.getShaderInfoLog(P)||"",V=s.getShaderInfoLog(C)||"",z=L.trim(),Y=O.trim(),ee=V.trim();let j=!0,G=!0;if(s.getProgramParameter(v,s.LINK_STATUS)===!1)if(j=!1,typeof i.debug.onShaderError=="function")i.debug.onShaderError(s,v,P,C);else{const se=xc(s,P,"vertex"),H=xc(s,C,"fragment");console.error("THREE.WebGLProgram: Shader Error "+s.getError()+" - VALIDATE_STATUS "+s.getProgramParameter(v,s.VALIDATE_STATUS)+`

Material Name: `+S.name+`
Material Type: `+S.type+`

Program Info Log: `+z+`
`+se+`
`+H)}else z!==""?console.warn("THREE.WebGLProgram: Program Info Log:",z):(Y===""||ee==="")&&(G=!1);G&&(S.diagnostics={runnable:j,programLog:z,vertexShader:{log:Y,prefix:m},fragmentShader:{log:ee,prefix:f}})}s.deleteShader(P),s.deleteShader(C),N=new yr(s,v),w=z_(s,v)}let N;this.getUniforms=function(){return N===void 0&&D(this),N};let w;this.getAttributes=function(){return w===void 0&&D(this),w};let M=t.rendererExtensionParallelShaderCompile===!1;return this.isReady=function(){return M===!1&&(M=s.getProgramParameter(v,D_)),M},this.destroy=function(){n.releaseStatesOfProgram(this),s.deleteProgram(v),this.program=void 0},this.type=t.shaderType,this.name=t.shaderName,this.id=L_++,this.cacheKey=e,this.usedTimes=1,this.program=v,this.vertexShader=P,this.fragmentShader=C,this}let J_=0;class Q_{constructor(){this.shaderCache=new Map,this.materialCache=new Map}update(e){const t=e.vertexShader,n=e.fragmentShader,s=this._getShaderStage(t),r=this._getShaderStage(n),a=this._getShaderCacheForMaterial(e);return a.has(s)===!1&&(a.add(s),s.usedTimes++),a.has(r)===!1&&(a.add(r),r.usedTimes++),this}remove(e){const t=this.materialCache.get(e);for(const n of t)n.usedTimes--,n.usedTimes===0&&this.shaderCache.delete(n.code);return this.materialCache.delete(e),this}getVertexShaderID(e){return this._getShaderStage(e.vertexShader).id}getFragmentShaderID(e){return this._getShaderStage(e.fragmentShader).id}dispose(){this.shaderCache.clear(),this.materialCache.clear()}_getShaderCacheForMaterial(e){const t=this.materialCache;let n=t.get(e);return n===void 0&&(n=new Set,t.set(e,n)),n}_getShaderStage(e){const t=this.shaderCache;let n=t.get(e);return n===void 0&&(n=new e0(e),t.set(e,n)),n}}class e0{constructor(e){this.id=J_++,this.code=e,this.usedTimes=0}}function t0(i,e,t,n,s,r,a){const o=new Xo,c=new Q_,l=new Set,h=[],u=s.logarithmicDepthBuffer,d=s.vertexTextures;let p=s.precision;const _={MeshDepthMaterial:"depth",MeshDistanceMaterial:"distanceRGBA",MeshNormalMaterial:"normal",MeshBasicMaterial:"basic",MeshLambertMaterial:"lambert",MeshPhongMaterial:"phong",MeshToonMaterial:"toon",MeshStandardMaterial:"physical",MeshPhysicalMaterial:"physical",MeshMatcapMaterial:"matcap",LineBasicMaterial:"basic",LineDashedMaterial:"dashed",PointsMaterial:"points",ShadowMaterial:"shadow",SpriteMaterial:"sprite"};function v(w){return l.add(w),w===0?"uv":`uv${w}`}function m(w,M,S,L,O){const V=L.fog,z=O.geometry,Y=w.isMeshStandardMaterial?L.environment:null,ee=(w.isMeshStandardMaterial?t:e).get(w.envMap||Y),j=ee&&ee.mapping===Lr?ee.image.height:null,G=_[w.type];w.precision!==null&&(p=s.getMaxPrecision(w.precision),p!==w.precision&&console.warn("THREE.WebGLProgram.getParameters:",w.precision,"not supported, using",p,"instead."));const se=z.morphAttributes.position||z.morphAttributes.normal||z.morphAttributes.color,H=se!==void 0?se.length:0;let ie=0;z.morphAttributes.position!==void 0&&(ie=1),z.morphAttributes.normal!==void 0&&(ie=2),z.morphAttributes.color!==void 0&&(ie=3);let Ce,Oe,Le,K;if(G){const st=gn[G];Ce=st.vertexShader,Oe=st.fragmentShader}else Ce=w.vertexShader,Oe=w.fragmentShader,c.update(w),Le=c.getVertexShaderID(w),K=c.getFragmentShaderID(w);const J=i.getRenderTarget(),F=i.state.buffers.depth.getReversed(),te=O.isInstancedMesh===!0,ae=O.isBatchedMesh===!0,be=!!w.map,it=!!w.matcap,R=!!ee,We=!!w.aoMap,Pe=!!w.lightMap,Ee=!!w.bumpMap,ve=!!w.normalMap,Ke=!!w.displacementMap,xe=!!w.emissiveMap,Xe=!!w.metalnessMap,Ct=!!w.roughnessMap,wt=w.anisotropy>0,E=w.clearcoat>0,x=w.dispersion>0,W=w.iridescence>0,Q=w.sheen>0,re=w.transmission>0,Z=wt&&!!w.anisotropyMap,De=E&&!!w.clearcoatMap,ue=E&&!!w.clearcoatNormalMap,Te=E&&!!w.clearcoatRoughnessMap,Ae=W&&!!w.iridescenceMap,ce=W&&!!w.iridescenceThicknessMap,ge=Q&&!!w.sheenColorMap,ke=Q&&!!w.sheenRoughnessMap,Re=!!w.specularMap,pe=!!w.specularColorMap,$e=!!w.specularIntensityMap,I=re&&!!w.transmissionMap,he=re&&!!w.thicknessMap,de=!!w.gradientMap,Me=!!w.alphaMap,oe=w.alphaTest>0,ne=!!w.alphaHash,Se=!!w.extensions;let Ge=Jn;w.toneMapped&&(J===null||J.isXRRenderTarget===!0)&&(Ge=i.toneMapping);const ht={shaderID:G,shaderType:w.type,shaderName:w.name,vertexShader:Ce,fragmentShader:Oe,defines:w.defines,customVertexShaderID:Le,customFragmentShaderID:K,isRawShaderMaterial:w.isRawShaderMaterial===!0,glslVersion:w.glslVersion,precision:p,batching:ae,batchingColor:ae&&O._colorsTexture!==null,instancing:te,instancingColor:te&&O.instanceColor!==null,instancingMorph:te&&O.morphTexture!==null,supportsVertexTextures:d,outputColorSpace:J===null?i.outputColorSpace:J.isXRRenderTarget===!0?J.texture.colorSpace:Ji,alphaToCoverage:!!w.alphaToCoverage,map:be,matcap:it,envMap:R,envMapMode:R&&ee.mapping,envMapCubeUVHeight:j,aoMap:We,lightMap:Pe,bumpMap:Ee,normalMap:ve,displacementMap:d&&Ke,emissiveMap:xe,normalMapObjectSpace:ve&&w.normalMapType===$d,normalMapTangentSpace:ve&&w.normalMapType===fh,metalnessMap:Xe,roughnessMap:Ct,anisotropy:wt,anisotropyMap:Z,clearcoat:E,clearcoatMap:De,clearcoatNormalMap:ue,clearcoatRoughnessMap:Te,dispersion:x,iridescence:W,iridescenceMap:Ae,iridescenceThicknessMap:ce,sheen:Q,sheenColorMap:ge,sheenRoughnessMap:ke,specularMap:Re,specularColorMap:pe,specularIntensityMap:$e,transmission:re,transmissionMap:I,thicknessMap:he,gradientMap:de,opaque:w.transparent===!1&&w.blending===Wi&&w.alphaToCoverage===!1,alphaMap:Me,alphaTest:oe,alphaHash:ne,combine:w.combine,mapUv:be&&v(w.map.channel),aoMapUv:We&&v(w.aoMap.channel),lightMapUv:Pe&&v(w.lightMap.channel),bumpMapUv:Ee&&v(w.bumpMap.channel),normalMapUv:ve&&v(w.normalMap.channel),displacementMapUv:Ke&&v(w.displacementMap.channel),emissiveMapUv:xe&&v(w.emissiveMap.channel),metalnessMapUv:Xe&&v(w.metalnessMap.channel),roughnessMapUv:Ct&&v(w.roughnessMap.channel),anisotropyMapUv:Z&&v(w.anisotropyMap.channel),clearcoatMapUv:De&&v(w.clearcoatMap.channel),clearcoatNormalMapUv:ue&&v(w.clearcoatNormalMap.channel),clearcoatRoughnessMapUv:Te&&v(w.clearcoatRoughnessMap.channel),iridescenceMapUv:Ae&&v(w.iridescenceMap.channel),iridescenceThicknessMapUv:ce&&v(w.iridescenceThicknessMap.channel),sheenColorMapUv:ge&&v(w.sheenColorMap.channel),sheenRoughnessMapUv:ke&&v(w.sheenRoughnessMap.channel),specularMapUv:Re&&v(w.specularMap.channel),specularColorMapUv:pe&&v(w.specularColorMap.channel),specularIntensityMapUv:$e&&v(w.specularIntensityMap.channel),transmissionMapUv:I&&v(w.transmissionMap.channel),thicknessMapUv:he&&v(w.thicknessMap.channel),alphaMapUv:Me&&v(w.alphaMap.channel),vertexTangents:!!z.attributes.tangent&&(ve||wt),vertexColors:w.vertexColors,vertexAlphas:w.vertexColors===!0&&!!z.attributes.color&&z.attributes.color.itemSize===4,pointsUvs:O.isPoints===!0&&!!z.attributes.uv&&(be||Me),fog:!!V,useFog:w.fog===!0,fogExp2:!!V&&V.isFogExp2,flatShading:w.flatShading===!0&&w.wireframe===!1,sizeAttenuation:w.sizeAttenuation===!0,logarithmicDepthBuffer:u,reversedDepthBuffer:F,skinning:O.isSkinnedMesh===!0,morphTargets:z.morphAttributes.position!==void 0,morphNormals:z.morphAttributes.normal!==void 0,morphColors:z.morphAttributes.color!==void 0,morphTargetsCount:H,morphTextureStride:ie,numDirLights:M.directional.length,numPointLights:M.point.length,numSpotLights:M.spot.length,numSpotLightMaps:M.spotLightMap.length,numRectAreaLights:M.rectArea.length,numHemiLights:M.hemi.length,numDirLightShadows:M.directionalShadowMap.length,numPointLightShadows:M.pointShadowMap.length,numSpotLightShadows:M.spotShadowMap.length,numSpotLightShadowsWithMaps:M.numSpotLightShadowsWithMaps,numLightProbes:M.numLightProbes,numClippingPlanes:a.numPlanes,numClipIntersection:a.numIntersection,dithering:w.dithering,shadowMapEnabled:i.shadowMap.enabled&&S.length>0,shadowMapType:i.shadowMap.type,toneMapping:Ge,decodeVideoTexture:be&&w.map.isVideoTexture===!0&&nt.getTransfer(w.map.colorSpace)===at,decodeVideoTextureEmissive:xe&&w.emissiveMap.isVideoTexture===!0&&nt.getTransfer(w.emissiveMap.colorSpace)===at,premultipliedAlpha:w.premultipliedAlpha,doubleSided:w.side===In,flipSided:w.side===qt,useDepthPacking:w.depthPacking>=0,depthPacking:w.depthPacking||0,index0AttributeName:w.index0AttributeName,extensionClipCullDistance:Se&&w.extensions.clipCullDistance===!0&&n.has("WEBGL_clip_cull_distance"),extensionMultiDraw:(Se&&w.extensions.multiDraw===!0||ae)&&n.has("WEBGL_multi_draw"),rendererExtensionParallelShaderCompile:n.has("KHR_parallel_shader_compile"),customProgramCacheKey:w.customProgramCacheKey()};return ht.vertexUv1s=l.has(1),ht.vertexUv2s=l.has(2),ht.vertexUv3s=l.has(3),l.clear(),ht}function f(w){const M=[];if(w.shaderID?M.push(w.shaderID):(M.push(w.customVertexShaderID),M.push(w.customFragmentShaderID)),w.defines!==void 0)for(const S in w.defines)M.push(S),M.push(w.defines[S]);return w.isRawShaderMaterial===!1&&(A(M,w),T(M,w),M.push(i.outputColorSpace)),M.push(w.customProgramCacheKey),M.join()}function A(w,M){w.push(M.precision),w.push(M.outputColorSpace),w.push(M.envMapMode),w.push(M.envMapCubeUVHeight),w.push(M.mapUv),w.push(M.alphaMapUv),w.push(M.lightMapUv),w.push(M.aoMapUv),w.push(M.bumpMapUv),w.push(M.normalMapUv),w.push(M.displacementMapUv),w.push(M.emissiveMapUv),w.push(M.metalnessMapUv),w.push(M.roughnessMapUv),w.push(M.anisotropyMapUv),w.push(M.clearcoatMapUv),w.push(M.clearcoatNormalMapUv),w.push(M.clearcoatRoughnessMapUv),w.push(M.iridescenceMapUv),w.push(M.iridescenceThicknessMapUv),w.push(M.sheenColorMapUv),w.push(M.sheenRoughnessMapUv),w.push(M.specularMapUv),w.push(M.specularColorMapUv),w.push(M.specularIntensityMapUv),w.push(M.transmissionMapUv),w.push(M.thicknessMapUv),w.push(M.combine),w.push(M.fogExp2),w.push(M.sizeAttenuation),w.push(M.morphTargetsCount),w.push(M.morphAttributeCount),w.push(M.numDirLights),w.push(M.numPointLights),w.push(M.numSpotLights),w.push(M.numSpotLightMaps),w.push(M.numHemiLights),w.push(M.numRectAreaLights),w.push(M.numDirLightShadows),w.push(M.numPointLightShadows),w.push(M.numSpotLightShadows),w.push(M.numSpotLightShadowsWithMaps),w.push(M.numLightProbes),w.push(M.shadowMapType),w.push(M.toneMapping),w.push(M.numClippingPlanes),w.push(M.numClipIntersection),w.push(M.depthPacking)}function T(w,M){o.disableAll(),M.supportsVertexTextures&&o.enable(0),M.instancing&&o.enable(1),M.instancingColor&&o.enable(2),M.instancingMorph&&o.enable(3),M.matcap&&o.enable(4),M.envMap&&o.enable(5),M.normalMapObjectSpace&&o.enable(6),M.normalMapTangentSpace&&o.enable(7),M.clearcoat&&o.enable(8),M.iridescence&&o.enable(9),M.alphaTest&&o.enable(10),M.vertexColors&&o.enable(11),M.vertexAlphas&&o.enable(12),M.vertexUv1s&&o.enable(13),M.vertexUv2s&&o.enable(14),M.vertexUv3s&&o.enable(15),M.vertexTangents&&o.enable(16),M.anisotropy&&o.enable(17),M.alphaHash&&o.enable(18),M.batching&&o.enable(19),M.dispersion&&o.enable(20),M.batchingColor&&o.enable(21),M.gradientMap&&o.enable(22),w.push(o.mask),o.disableAll(),M.fog&&o.enable(0),M.useFog&&o.enable(1),M.flatShading&&o.enable(2),M.logarithmicDepthBuffer&&o.enable(3),M.reversedDepthBuffer&&o.enable(4),M.skinning&&o.enable(5),M.morphTargets&&o.enable(6),M.morphNormals&&o.enable(7),M.morphColors&&o.enable(8),M.premultipliedAlpha&&o.enable(9),M.shadowMapEnabled&&o.enable(10),M.doubleSided&&o.enable(11),M.flipSided&&o.enable(12),M.useDepthPacking&&o.enable(13),M.dithering&&o.enable(14),M.transmission&&o.enable(15),M.sheen&&o.enable(16),M.opaque&&o.enable(17),M.pointsUvs&&o.enable(18),M.decodeVideoTexture&&o.enable(19),M.decodeVideoTextureEmissive&&o.enable(20),M.alphaToCoverage&&o.enable(21),w.push(o.mask)}function b(w){const M=_[w.type];let S;if(M){const L=gn[M];S=wf.clone(L.uniforms)}else S=w.uniforms;return S}function P(w,M){let S;for(let L=0,O=h.length;L<O;L++){const V=h[L];if(V.cacheKey===M){S=V,++S.usedTimes;break}}return S===void 0&&(S=new Z_(i,M,w,r),h.push(S)),S}function C(w){if(--w.usedTimes===0){const M=h.indexOf(w);h[M]=h[h.length-1],h.pop(),w.destroy()}}function D(w){c.remove(w)}function N(){c.dispose()}return{getParameters:m,getProgramCacheKey:f,getUniforms:b,acquireProgram:P,releaseProgram:C,releaseShaderCache:D,programs:h,dispose:N}}function n0(){let i=new WeakMap;function e(a){return i.has(a)}function t(a){let o=i.get(a);return o===void 0&&(o={},i.set(a,o)),o}function n(a){i.delete(a)}function s(a,o,c){i.get(a)[o]=c}function r(){i=new WeakMap}return{has:e,get:t,remove:n,update:s,dispose:r}}function i0(i,e){return i.groupOrder!==e.groupOrder?i.groupOrder-e.groupOrder:i.renderOrder!==e.renderOrder?i.renderOrder-e.renderOrder:i.material.id!==e.material.id?i.material.id-e.material.id:i.z!==e.z?i.z-e.z:i.id-e.id}function Sc(i,e){return i.groupOrder!==e.groupOrder?i.groupOrder-e.groupOrder:i.renderOrder!==e.renderOrder?i.renderOrder-e.renderOrder:i.z!==e.z?e.z-i.z:i.id-e.id}function Ec(){const i=[];let e=0;const t=[],n=[],s=[];function r(){e=0,t.length=0,n.length=0,s.length=0}function a(u,d,p,_,v,m){let f=i[e];return f===void 0?(f={id:u.id,object:u,geometry:d,material:p,groupOrder:_,renderOrder:u.renderOrder,z:v,group:m},i[e]=f):(f.id=u.id,f.object=u,f.geometry=d,f.material=p,f.groupOrder=_,f.renderOrder=u.renderOrder,f.z=v,f.group=m),e++,f}function o(u,d,p,_,v,m){const f=a(u,d,p,_,v,m);p.transmission>0?n.push(f):p.transparent===!0?s.push(f):t.push(f)}function c(u,d,p,_,v,m){const f=a(u,d,p,_,v,m);p.transmission>0?n.unshift(f):p.transparent===!0?s.unshift(f):t.unshift(f)}function l(u,d){t.length>1&&t.sort(u||i0),n.length>1&&n.sort(d||Sc),s.length>1&&s.sort(d||Sc)}function h(){for(let u=e,d=i.length;u<d;u++){const p=i[u];if(p.id===null)break;p.id=null,p.object=null,p.geometry=null,p.material=null,p.group=null}}return{opaque:t,transmissive:n,transparent:s,init:r,push:o,unshift:c,finish:h,sort:l}}function s0(){let i=new WeakMap;function e(n,s){const r=i.get(n);let a;return r===void 0?(a=new Ec,i.set(n,[a])):s>=r.length?(a=new Ec,r.push(a)):a=r[s],a}function t(){i=new WeakMap}return{get:e,dispose:t}}function r0(){const i={};return{get:function(e){if(i[e.id]!==void 0)return i[e.id];let t;switch(e.type){case"DirectionalLight":t={direction:new U,color:new je};break;case"SpotLight":t={position:new U,direction:new U,color:new je,distance:0,coneCos:0,penumbraCos:0,decay:0};break;case"PointLight":t={position:new U,color:new je,distance:0,decay:0};break;case"HemisphereLight":t={direction:new U,skyColor:new je,groundColor:new je};break;case"RectAreaLight":t={color:new je,position:new U,halfWidth:new U,halfHeight:new U};break}return i[e.id]=t,t}}}function a0(){const i={};return{get:function(e){if(i[e.id]!==void 0)return i[e.id];let t;switch(e.type){case"DirectionalLight":t={shadowIntensity:1,shadowBias:0,shadowNormalBias:0,shadowRadius:1,shadowMapSize:new Ve};break;case"SpotLight":t={shadowIntensity:1,shadowBias:0,shadowNormalBias:0,shadowRadius:1,shadowMapSize:new Ve};break;case"PointLight":t={shadowIntensity:1,shadowBias:0,shadowNormalBias:0,shadowRadius:1,shadowMapSize:new Ve,shadowCameraNear:1,shadowCameraFar:1e3};break}return i[e.id]=t,t}}}let o0=0;function l0(i,e){return(e.castShadow?2:0)-(i.castShadow?2:0)+(e.map?1:0)-(i.map?1:0)}function c0(i){const e=new r0,t=a0(),n={version:0,hash:{directionalLength:-1,pointLength:-1,spotLength:-1,rectAreaLength:-1,hemiLength:-1,numDirectionalShadows:-1,numPointShadows:-1,numSpotShadows:-1,numSpotMaps:-1,numLightProbes:-1},ambient:[0,0,0],probe:[],directional:[],directionalShadow:[],directionalShadowMap:[],directionalShadowMatrix:[],spot:[],spotLightMap:[],spotShadow:[],spotShadowMap:[],spotLightMatrix:[],rectArea:[],rectAreaLTC1:null,rectAreaLTC2:null,point:[],pointShadow:[],pointShadowMap:[],pointShadowMatrix:[],hemi:[],numSpotLightShadowsWithMaps:0,numLightProbes:0};for(let l=0;l<9;l++)n.probe.push(new U);const s=new U,r=new mt,a=new mt;function o(l){let h=0,u=0,d=0;for(let w=0;w<9;w++)n.probe[w].set(0,0,0);let p=0,_=0,v=0,m=0,f=0,A=0,T=0,b=0,P=0,C=0,D=0;l.sort(l0);for(let w=0,M=l.length;w<M;w++){const S=l[w],L=S.color,O=S.intensity,V=S.distance,z=S.shadow&&S.shadow.map?S.shadow.map.texture:null;if(S.isAmbientLight)h+=L.r*O,u+=L.g*O,d+=L.b*O;else if(S.isLightProbe){for(let Y=0;Y<9;Y++)n.probe[Y].addScaledVector(S.sh.coefficients[Y],O);D++}else if(S.isDirectionalLight){const Y=e.get(S);if(Y.color.copy(S.color).multiplyScalar(S.intensity),S.castShadow){const ee=S.shadow,j=t.get(S);j.shadowIntensity=ee.intensity,j.shadowBias=ee.bias,j.shadowNormalBias=ee.normalBias,j.shadowRadius=ee.radius,j.shadowMapSize=ee.mapSize,n.directionalShadow[p]=j,n.directionalShadowMap[p]=z,n.directionalShadowMatrix[p]=S.shadow.matrix,A++}n.directional[p]=Y,p++}else if(S.isSpotLight){const Y=e.get(S);Y.position.setFromMatrixPosition(S.matrixWorld),Y.color.copy(L).multiplyScalar(O),Y.distance=V,Y.coneCos=Math.cos(S.angle),Y.penumbraCos=Math.cos(S.angle*(1-S.penumbra)),Y.decay=S.decay,n.spot[v]=Y;const ee=S.shadow;if(S.map&&(n.spotLightMap[P]=S.map,P++,ee.updateMatrices(S),S.castShadow&&C++),n.spotLightMatrix[v]=ee.matrix,S.castShadow){const j=t.get(S);j.shadowIntensity=ee.intensity,j.shadowBias=ee.bias,j.shadowNormalBias=ee.normalBias,j.shadowRadius=ee.radius,j.shadowMapSize=ee.mapSize,n.spotShadow[v]=j,n.spotShadowMap[v]=z,b++}v++}else if(S.isRectAreaLight){const Y=e.get(S);Y.color.copy(L).multiplyScalar(O),Y.halfWidth.set(S.width*.5,0,0),Y.halfHeight.set(0,S.height*.5,0),n.rectArea[m]=Y,m++}else if(S.isPointLight){const Y=e.get(S);if(Y.color.copy(S.color).multiplyScalar(S.intensity),Y.distance=S.distance,Y.decay=S.decay,S.castShadow){const ee=S.shadow,j=t.get(S);j.shadowIntensity=ee.intensity,j.shadowBias=ee.bias,j.shadowNormalBias=ee.normalBias,j.shadowRadius=ee.radius,j.shadowMapSize=ee.mapSize,j.shadowCameraNear=ee.camera.near,j.shadowCameraFar=ee.camera.far,n.pointShadow[_]=j,n.pointShadowMap[_]=z,n.pointShadowMatrix[_]=S.shadow.matrix,T++}n.point[_]=Y,_++}else if(S.isHemisphereLight){const Y=e.get(S);Y.skyColor.copy(S.color).multiplyScalar(O),Y.groundColor.copy(S.groundColor).multiplyScalar(O),n.hemi[f]=Y,f++}}m>0&&(i.has("OES_texture_float_linear")===!0?(n.rectAreaLTC1=fe.LTC_FLOAT_1,n.rectAreaLTC2=fe.LTC_FLOAT_2):(n.rectAreaLTC1=fe.LTC_HALF_1,n.rectAreaLTC2=fe.LTC_HALF_2)),n.ambient[0]=h,n.ambient[1]=u,n.ambient[2]=d;const N=n.hash;(N.directionalLength!==p||N.pointLength!==_||N.spotLength!==v||N.rectAreaLength!==m||N.hemiLength!==f||N.numDirectionalShadows!==A||N.numPointShadows!==T||N.numSpotShadows!==b||N.numSpotMaps!==P||N.numLightProbes!==D)&&(n.directional.length=p,n.spot.length=v,n.rectArea.length=m,n.point.length=_,n.hemi.length=f,n.directionalShadow.length=A,n.directionalShadowMap.length=A,n.pointShadow.length=T,n.pointShadowMap.length=T,n.spotShadow.length=b,n.spotShadowMap.length=b,n.directionalShadowMatrix.length=A,n.pointShadowMatrix.length=T,n.spotLightMatrix.length=b+P-C,n.spotLightMap.length=P,n.numSpotLightShadowsWithMaps=C,n.numLightProbes=D,N.directionalLength=p,N.pointLength=_,N.spotLength=v,N.rectAreaLength=m,N.hemiLength=f,N.numDirectionalShadows=A,N.numPointShadows=T,N.numSpotShadows=b,N.numSpotMaps=P,N.numLightProbes=D,n.version=o0++)}function c(l,h){let u=0,d=0,p=0,_=0,v=0;const m=h.matrixWorldInverse;for(let f=0,A=l.length;f<A;f++){const T=l[f];if(T.isDirectionalLight){const b=n.directional[u];b.direction.setFromMatrixPosition(T.matrixWorld),s.setFromMatrixPosition(T.target.matrixWorld),b.direction.sub(s),b.direction.transformDirection(m),u++}else if(T.isSpotLight){const b=n.spot[p];b.position.setFromMatrixPosition(T.matrixWorld),b.position.applyMatrix4(m),b.direction.setFromMatrixPosition(T.matrixWorld),s.setFromMatrixPosition(T.target.matrixWorld),b.direction.sub(s),b.direction.transformDirection(m),p++}else if(T.isRectAreaLight){const b=n.rectArea[_];b.position.setFromMatrixPosition(T.matrixWorld),b.position.applyMatrix4(m),a.identity(),r.copy(T.matrixWorld),r.premultiply(m),a.extractRotation(r),b.halfWidth.set(T.width*.5,0,0),b.halfHeight.set(0,T.height*.5,0),b.halfWidth.applyMatrix4(a),b.halfHeight.applyMatrix4(a),_++}else if(T.isPointLight){const b=n.point[d];b.position.setFromMatrixPosition(T.matrixWorld),b.position.applyMatrix4(m),d++}else if(T.isHemisphereLight){const b=n.hemi[v];b.direction.setFromMatrixPosition(T.matrixWorld),b.direction.transformDirection(m),v++}}}return{setup:o,setupView:c,state:n}}function Tc(i){const e=new c0(i),t=[],n=[];function s(h){l.camera=h,t.length=0,n.length=0}function r(h){t.push(h)}function a(h){n.push(h)}function o(){e.setup(t)}function c(h){e.setupView(t,h)}const l={lightsArray:t,shadowsArray:n,camera:null,lights:e,transmissionRenderTarget:{}};return{init:s,state:l,setupLights:o,setupLightsView:c,pushLight:r,pushShadow:a}}function h0(i){let e=new WeakMap;function t(s,r=0){const a=e.get(s);let o;return a===void 0?(o=new Tc(i),e.set(s,[o])):r>=a.length?(o=new Tc(i),a.push(o)):o=a[r],o}function n(){e=new WeakMap}return{get:t,dispose:n}}const u0=`void main() {
	gl_Position = vec4( position, 1.0 );
}`,d0=`uniform sampler2D shadow_pass;
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
}`;function f0(i,e,t){let n=new Yo;const s=new Ve,r=new Ve,a=new Mt,o=new If({depthPacking:Wd}),c=new Uf,l={},h=t.maxTextureSize,u={[ei]:qt,[qt]:ei,[In]:In},d=new ti({defines:{VSM_SAMPLES:8},uniforms:{shadow_pass:{value:null},resolution:{value:new Ve},radius:{value:4}},vertexShader:u0,fragmentShader:d0}),p=d.clone();p.defines.HORIZONTAL_PASS=1;const _=new It;_.setAttribute("position",new $t(new Float32Array([-1,-1,.5,3,-1,.5,-1,3,.5]),3));const v=new Ot(_,d),m=this;this.enabled=!1,this.autoUpdate=!0,this.needsUpdate=!1,this.type=ih;let f=this.type;this.render=function(C,D,N){if(m.enabled===!1||m.autoUpdate===!1&&m.needsUpdate===!1||C.length===0)return;const w=i.getRenderTarget(),M=i.getActiveCubeFace(),S=i.getActiveMipmapLevel(),L=i.state;L.setBlending(Zn),L.buffers.depth.getReversed()===!0?L.buffers.color.setClear(0,0,0,0):L.buffers.color.setClear(1,1,1,1),L.buffers.depth.setTest(!0),L.setScissorTest(!1);const O=f!==Ln&&this.type===Ln,V=f===Ln&&this.type!==Ln;for(let z=0,Y=C.length;z<Y;z++){const ee=C[z],j=ee.shadow;if(j===void 0){console.warn("THREE.WebGLShadowMap:",ee,"has no shadow.");continue}if(j.autoUpdate===!1&&j.needsUpdate===!1)continue;s.copy(j.mapSize);const G=j.getFrameExtents();if(s.multiply(G),r.copy(j.mapSize),(s.x>h||s.y>h)&&(s.x>h&&(r.x=Math.floor(h/G.x),s.x=r.x*G.x,j.mapSize.x=r.x),s.y>h&&(r.y=Math.floor(h/G.y),s.y=r.y*G.y,j.mapSize.y=r.y)),j.map===null||O===!0||V===!0){const H=this.type!==Ln?{minFilter:fn,magFilter:fn}:{};j.map!==null&&j.map.dispose(),j.map=new yi(s.x,s.y,H),j.map.texture.name=ee.name+".shadowMap",j.camera.updateProjectionMatrix()}i.setRenderTarget(j.map),i.clear();const se=j.getViewportCount();for(let H=0;H<se;H++){const ie=j.getViewport(H);a.set(r.x*ie.x,r.y*ie.y,r.x*ie.z,r.y*ie.w),L.viewport(a),j.updateMatrices(ee,H),n=j.getFrustum(),b(D,N,j.camera,ee,this.type)}j.isPointLightShadow!==!0&&this.type===Ln&&A(j,N),j.needsUpdate=!1}f=this.type,m.needsUpdate=!1,i.setRenderTarget(w,M,S)};function A(C,D){const N=e.update(v);d.defines.VSM_SAMPLES!==C.blurSamples&&(d.defines.VSM_SAMPLES=C.blurSamples,p.defines.VSM_SAMPLES=C.blurSamples,d.needsUpdate=!0,p.needsUpdate=!0),C.mapPass===null&&(C.mapPass=new yi(s.x,s.y)),d.uniforms.shadow_pass.value=C.map.texture,d.uniforms.resolution.value=C.mapSize,d.uniforms.radius.value=C.radius,i.setRenderTarget(C.mapPass),i.clear(),i.renderBufferDirect(D,null,N,d,v,null),p.uniforms.shadow_pass.value=C.mapPass.texture,p.uniforms.resolution.value=C.mapSize,p.uniforms.radius.value=C.radius,i.setRenderTarget(C.map),i.clear(),i.renderBufferDirect(D,null,N,p,v,null)}function T(C,D,N,w){let M=null;const S=N.isPointLight===!0?C.customDistanceMaterial:C.customDepthMaterial;if(S!==void 0)M=S;else if(M=N.isPointLight===!0?c:o,i.localClippingEnabled&&D.clipShadows===!0&&Array.isArray(D.clippingPlanes)&&D.clippingPlanes.length!==0||D.displacementMap&&D.displacementScale!==0||D.alphaMap&&D.alphaTest>0||D.map&&D.alphaTest>0||D.alphaToCoverage===!0){const L=M.uuid,O=D.uuid;let V=l[L];V===void 0&&(V={},l[L]=V);let z=V[O];z===void 0&&(z=M.clone(),V[O]=z,D.addEventListener("dispose",P)),M=z}if(M.visible=D.visible,M.wireframe=D.wireframe,w===Ln?M.side=D.shadowSide!==null?D.shadowSide:D.side:M.side=D.shadowSide!==null?D.shadowSide:u[D.side],M.alphaMap=D.alphaMap,M.alphaTest=D.alphaToCoverage===!0?.5:D.alphaTest,M.map=D.map,M.clipShadows=D.clipShadows,M.clippingPlanes=D.clippingPlanes,M.clipIntersection=D.clipIntersection,M.displacementMap=D.displacementMap,M.displacementScale=D.displacementScale,M.displacementBias=D.displacementBias,M.wireframeLinewidth=D.wireframeLinewidth,M.linewidth=D.linewidth,N.isPointLight===!0&&M.isMeshDistanceMaterial===!0){const L=i.properties.get(M);L.light=N}return M}function b(C,D,N,w,M){if(C.visible===!1)return;if(C.layers.test(D.layers)&&(C.isMesh||C.isLine||C.isPoints)&&(C.castShadow||C.receiveShadow&&M===Ln)&&(!C.frustumCulled||n.intersectsObject(C))){C.modelViewMatrix.multiplyMatrices(N.matrixWorldInverse,C.matrixWorld);const O=e.update(C),V=C.material;if(Array.isArray(V)){const z=O.groups;for(let Y=0,ee=z.length;Y<ee;Y++){const j=z[Y],G=V[j.materialIndex];if(G&&G.visible){const se=T(C,G,w,M);C.onBeforeShadow(i,C,D,N,O,se,j),i.renderBufferDirect(N,null,O,se,C,j),C.onAfterShadow(i,C,D,N,O,se,j)}}}else if(V.visible){const z=T(C,V,w,M);C.onBeforeShadow(i,C,D,N,O,z,null),i.renderBufferDirect(N,null,O,z,C,null),C.onAfterShadow(i,C,D,N,O,z,null)}}const L=C.children;for(let O=0,V=L.length;O<V;O++)b(L[O],D,N,w,M)}function P(C){C.target.removeEventListener("dispose",P);for(const N in l){const w=l[N],M=C.target.uuid;M in w&&(w[M].dispose(),delete w[M])}}}const p0={[Na]:Fa,[Oa]:za,[ka]:Ha,[ji]:Ba,[Fa]:Na,[za]:Oa,[Ha]:ka,[Ba]:ji};function m0(i,e){function t(){let I=!1;const he=new Mt;let de=null;const Me=new Mt(0,0,0,0);return{setMask:function(oe){de!==oe&&!I&&(i.colorMask(oe,oe,oe,oe),de=oe)},setLocked:function(oe){I=oe},setClear:function(oe,ne,Se,Ge,ht){ht===!0&&(oe*=Ge,ne*=Ge,Se*=Ge),he.set(oe,ne,Se,Ge),Me.equals(he)===!1&&(i.clearColor(oe,ne,Se,Ge),Me.copy(he))},reset:function(){I=!1,de=null,Me.set(-1,0,0,0)}}}function n(){let I=!1,he=!1,de=null,Me=null,oe=null;return{setReversed:function(ne){if(he!==ne){const Se=e.get("EXT_clip_control");ne?Se.clipControlEXT(Se.LOWER_LEFT_EXT,Se.ZERO_TO_ONE_EXT):Se.clipControlEXT(Se.LOWER_LEFT_EXT,Se.NEGATIVE_ONE_TO_ONE_EXT),he=ne;const Ge=oe;oe=null,this.setClear(Ge)}},getReversed:function(){return he},setTest:function(ne){ne?J(i.DEPTH_TEST):F(i.DEPTH_TEST)},setMask:function(ne){de!==ne&&!I&&(i.depthMask(ne),de=ne)},setFunc:function(ne){if(he&&(ne=p0[ne]),Me!==ne){switch(ne){case Na:i.depthFunc(i.NEVER);break;case Fa:i.depthFunc(i.ALWAYS);break;case Oa:i.depthFunc(i.LESS);break;case ji:i.depthFunc(i.LEQUAL);break;case ka:i.depthFunc(i.EQUAL);break;case Ba:i.depthFunc(i.GEQUAL);break;case za:i.depthFunc(i.GREATER);break;case Ha:i.depthFunc(i.NOTEQUAL);break;default:i.depthFunc(i.LEQUAL)}Me=ne}},setLocked:function(ne){I=ne},setClear:function(ne){oe!==ne&&(he&&(ne=1-ne),i.clearDepth(ne),oe=ne)},reset:function(){I=!1,de=null,Me=null,oe=null,he=!1}}}function s(){let I=!1,he=null,de=null,Me=null,oe=null,ne=null,Se=null,Ge=null,ht=null;return{setTest:function(st){I||(st?J(i.STENCIL_TEST):F(i.STENCIL_TEST))},setMask:function(st){he!==st&&!I&&(i.stencilMask(st),he=st)},setFunc:function(st,Tn,mn){(de!==st||Me!==Tn||oe!==mn)&&(i.stencilFunc(st,Tn,mn),de=st,Me=Tn,oe=mn)},setOp:function(st,Tn,mn){(ne!==st||Se!==Tn||Ge!==mn)&&(i.stencilOp(st,Tn,mn),ne=st,Se=Tn,Ge=mn)},setLocked:function(st){I=st},setClear:function(st){ht!==st&&(i.clearStencil(st),ht=st)},reset:function(){I=!1,he=null,de=null,Me=null,oe=null,ne=null,Se=null,Ge=null,ht=null}}}const r=new t,a=new n,o=new s,c=new WeakMap,l=new WeakMap;let h={},u={},d=new WeakMap,p=[],_=null,v=!1,m=null,f=null,A=null,T=null,b=null,P=null,C=null,D=new je(0,0,0),N=0,w=!1,M=null,S=null,L=null,O=null,V=null;const z=i.getParameter(i.MAX_COMBINED_TEXTURE_IMAGE_UNITS);let Y=!1,ee=0;const j=i.getParameter(i.VERSION);j.indexOf("WebGL")!==-1?(ee=parseFloat(/^WebGL (\d)/.exec(j)[1]),Y=ee>=1):j.indexOf("OpenGL ES")!==-1&&(ee=parseFloat(/^OpenGL ES (\d)/.exec(j)[1]),Y=ee>=2);let G=null,se={};const H=i.getParameter(i.SCISSOR_BOX),ie=i.getParameter(i.VIEWPORT),Ce=new Mt().fromArray(H),Oe=new Mt().fromArray(ie);function Le(I,he,de,Me){const oe=new Uint8Array(4),ne=i.createTexture();i.bindTexture(I,ne),i.texParameteri(I,i.TEXTURE_MIN_FILTER,i.NEAREST),i.texParameteri(I,i.TEXTURE_MAG_FILTER,i.NEAREST);for(let Se=0;Se<de;Se++)I===i.TEXTURE_3D||I===i.TEXTURE_2D_ARRAY?i.texImage3D(he,0,i.RGBA,1,1,Me,0,i.RGBA,i.UNSIGNED_BYTE,oe):i.texImage2D(he+Se,0,i.RGBA,1,1,0,i.RGBA,i.UNSIGNED_BYTE,oe);return ne}const K={};K[i.TEXTURE_2D]=Le(i.TEXTURE_2D,i.TEXTURE_2D,1),K[i.TEXTURE_CUBE_MAP]=Le(i.TEXTURE_CUBE_MAP,i.TEXTURE_CUBE_MAP_POSITIVE_X,6),K[i.TEXTURE_2D_ARRAY]=Le(i.TEXTURE_2D_ARRAY,i.TEXTURE_2D_ARRAY,1,1),K[i.TEXTURE_3D]=Le(i.TEXTURE_3D,i.TEXTURE_3D,1,1),r.setClear(0,0,0,1),a.setClear(1),o.setClear(0),J(i.DEPTH_TEST),a.setFunc(ji),Ee(!1),ve(yl),J(i.CULL_FACE),We(Zn);function J(I){h[I]!==!0&&(i.enable(I),h[I]=!0)}function F(I){h[I]!==!1&&(i.disable(I),h[I]=!1)}function te(I,he){return u[I]!==he?(i.bindFramebuffer(I,he),u[I]=he,I===i.DRAW_FRAMEBUFFER&&(u[i.FRAMEBUFFER]=he),I===i.FRAMEBUFFER&&(u[i.DRAW_FRAMEBUFFER]=he),!0):!1}function ae(I,he){let de=p,Me=!1;if(I){de=d.get(he),de===void 0&&(de=[],d.set(he,de));const oe=I.textures;if(de.length!==oe.length||de[0]!==i.COLOR_ATTACHMENT0){for(let ne=0,Se=oe.length;ne<Se;ne++)de[ne]=i.COLOR_ATTACHMENT0+ne;de.length=oe.length,Me=!0}}else de[0]!==i.BACK&&(de[0]=i.BACK,Me=!0);Me&&i.drawBuffers(de)}function be(I){return _!==I?(i.useProgram(I),_=I,!0):!1}const it={[di]:i.FUNC_ADD,[gd]:i.FUNC_SUBTRACT,[_d]:i.FUNC_REVERSE_SUBTRACT};it[vd]=i.MIN,it[xd]=i.MAX;const R={[yd]:i.ZERO,[Md]:i.ONE,[wd]:i.SRC_COLOR,[Ia]:i.SRC_ALPHA,[Rd]:i.SRC_ALPHA_SATURATE,[Td]:i.DST_COLOR,[Sd]:i.DST_ALPHA,[bd]:i.ONE_MINUS_SRC_COLOR,[Ua]:i.ONE_MINUS_SRC_ALPHA,[Ad]:i.ONE_MINUS_DST_COLOR,[Ed]:i.ONE_MINUS_DST_ALPHA,[Cd]:i.CONSTANT_COLOR,[Pd]:i.ONE_MINUS_CONSTANT_COLOR,[Dd]:i.CONSTANT_ALPHA,[Ld]:i.ONE_MINUS_CONSTANT_ALPHA};function We(I,he,de,Me,oe,ne,Se,Ge,ht,st){if(I===Zn){v===!0&&(F(i.BLEND),v=!1);return}if(v===!1&&(J(i.BLEND),v=!0),I!==md){if(I!==m||st!==w){if((f!==di||b!==di)&&(i.blendEquation(i.FUNC_ADD),f=di,b=di),st)switch(I){case Wi:i.blendFuncSeparate(i.ONE,i.ONE_MINUS_SRC_ALPHA,i.ONE,i.ONE_MINUS_SRC_ALPHA);break;case Ml:i.blendFunc(i.ONE,i.ONE);break;case wl:i.blendFuncSeparate(i.ZERO,i.ONE_MINUS_SRC_COLOR,i.ZERO,i.ONE);break;case bl:i.blendFuncSeparate(i.DST_COLOR,i.ONE_MINUS_SRC_ALPHA,i.ZERO,i.ONE);break;default:console.error("THREE.WebGLState: Invalid blending: ",I);break}else switch(I){case Wi:i.blendFuncSeparate(i.SRC_ALPHA,i.ONE_MINUS_SRC_ALPHA,i.ONE,i.ONE_MINUS_SRC_ALPHA);break;case Ml:i.blendFuncSeparate(i.SRC_ALPHA,i.ONE,i.ONE,i.ONE);break;case wl:console.error("THREE.WebGLState: SubtractiveBlending requires material.premultipliedAlpha = true");break;case bl:console.error("THREE.WebGLState: MultiplyBlending requires material.premultipliedAlpha = true");break;default:console.error("THREE.WebGLState: Invalid blending: ",I);break}A=null,T=null,P=null,C=null,D.set(0,0,0),N=0,m=I,w=st}return}oe=oe||he,ne=ne||de,Se=Se||Me,(he!==f||oe!==b)&&(i.blendEquationSeparate(it[he],it[oe]),f=he,b=oe),(de!==A||Me!==T||ne!==P||Se!==C)&&(i.blendFuncSeparate(R[de],R[Me],R[ne],R[Se]),A=de,T=Me,P=ne,C=Se),(Ge.equals(D)===!1||ht!==N)&&(i.blendColor(Ge.r,Ge.g,Ge.b,ht),D.copy(Ge),N=ht),m=I,w=!1}function Pe(I,he){I.side===In?F(i.CULL_FACE):J(i.CULL_FACE);let de=I.side===qt;he&&(de=!de),Ee(de),I.blending===Wi&&I.transparent===!1?We(Zn):We(I.blending,I.blendEquation,I.blendSrc,I.blendDst,I.blendEquationAlpha,I.blendSrcAlpha,I.blendDstAlpha,I.blendColor,I.blendAlpha,I.premultipliedAlpha),a.setFunc(I.depthFunc),a.setTest(I.depthTest),a.setMask(I.depthWrite),r.setMask(I.colorWrite);const Me=I.stencilWrite;o.setTest(Me),Me&&(o.setMask(I.stencilWriteMask),o.setFunc(I.stencilFunc,I.stencilRef,I.stencilFuncMask),o.setOp(I.stencilFail,I.stencilZFail,I.stencilZPass)),xe(I.polygonOffset,I.polygonOffsetFactor,I.polygonOffsetUnits),I.alphaToCoverage===!0?J(i.SAMPLE_ALPHA_TO_COVERAGE):F(i.SAMPLE_ALPHA_TO_COVERAGE)}function Ee(I){M!==I&&(I?i.frontFace(i.CW):i.frontFace(i.CCW),M=I)}function ve(I){I!==dd?(J(i.CULL_FACE),I!==S&&(I===yl?i.cullFace(i.BACK):I===fd?i.cullFace(i.FRONT):i.cullFace(i.FRONT_AND_BACK))):F(i.CULL_FACE),S=I}function Ke(I){I!==L&&(Y&&i.lineWidth(I),L=I)}function xe(I,he,de){I?(J(i.POLYGON_OFFSET_FILL),(O!==he||V!==de)&&(i.polygonOffset(he,de),O=he,V=de)):F(i.POLYGON_OFFSET_FILL)}function Xe(I){I?J(i.SCISSOR_TEST):F(i.SCISSOR_TEST)}function Ct(I){I===void 0&&(I=i.TEXTURE0+z-1),G!==I&&(i.activeTexture(I),G=I)}function wt(I,he,de){de===void 0&&(G===null?de=i.TEXTURE0+z-1:de=G);let Me=se[de];Me===void 0&&(Me={type:void 0,texture:void 0},se[de]=Me),(Me.type!==I||Me.texture!==he)&&(G!==de&&(i.activeTexture(de),G=de),i.bindTexture(I,he||K[I]),Me.type=I,Me.texture=he)}function E(){const I=se[G];I!==void 0&&I.type!==void 0&&(i.bindTexture(I.type,null),I.type=void 0,I.texture=void 0)}function x(){try{i.compressedTexImage2D(...arguments)}catch(I){console.error("THREE.WebGLState:",I)}}function W(){try{i.compressedTexImage3D(...arguments)}catch(I){console.error("THREE.WebGLState:",I)}}function Q(){try{i.texSubImage2D(...arguments)}catch(I){console.error("THREE.WebGLState:",I)}}function re(){try{i.texSubImage3D(...arguments)}catch(I){console.error("THREE.WebGLState:",I)}}function Z(){try{i.compressedTexSubImage2D(...arguments)}catch(I){console.error("THREE.WebGLState:",I)}}function De(){try{i.compressedTexSubImage3D(...arguments)}catch(I){console.error("THREE.WebGLState:",I)}}function ue(){try{i.texStorage2D(...arguments)}catch(I){console.error("THREE.WebGLState:",I)}}function Te(){try{i.texStorage3D(...arguments)}catch(I){console.error("THREE.WebGLState:",I)}}function Ae(){try{i.texImage2D(...arguments)}catch(I){console.error("THREE.WebGLState:",I)}}function ce(){try{i.texImage3D(...arguments)}catch(I){console.error("THREE.WebGLState:",I)}}function ge(I){Ce.equals(I)===!1&&(i.scissor(I.x,I.y,I.z,I.w),Ce.copy(I))}function ke(I){Oe.equals(I)===!1&&(i.viewport(I.x,I.y,I.z,I.w),Oe.copy(I))}function Re(I,he){let de=l.get(he);de===void 0&&(de=new WeakMap,l.set(he,de));let Me=de.get(I);Me===void 0&&(Me=i.getUniformBlockIndex(he,I.name),de.set(I,Me))}function pe(I,he){const Me=l.get(he).get(I);c.get(he)!==Me&&(i.uniformBlockBinding(he,Me,I.__bindingPointIndex),c.set(he,Me))}function $e(){i.disable(i.BLEND),i.disable(i.CULL_FACE),i.disable(i.DEPTH_TEST),i.disable(i.POLYGON_OFFSET_FILL),i.disable(i.SCISSOR_TEST),i.disable(i.STENCIL_TEST),i.disable(i.SAMPLE_ALPHA_TO_COVERAGE),i.blendEquation(i.FUNC_ADD),i.blendFunc(i.ONE,i.ZERO),i.blendFuncSeparate(i.ONE,i.ZERO,i.ONE,i.ZERO),i.blendColor(0,0,0,0),i.colorMask(!0,!0,!0,!0),i.clearColor(0,0,0,0),i.depthMask(!0),i.depthFunc(i.LESS),a.setReversed(!1),i.clearDepth(1),i.stencilMask(4294967295),i.stencilFunc(i.ALWAYS,0,4294967295),i.stencilOp(i.KEEP,i.KEEP,i.KEEP),i.clearStencil(0),i.cullFace(i.BACK),i.frontFace(i.CCW),i.polygonOffset(0,0),i.activeTexture(i.TEXTURE0),i.bindFramebuffer(i.FRAMEBUFFER,null),i.bindFramebuffer(i.DRAW_FRAMEBUFFER,null),i.bindFramebuffer(i.READ_FRAMEBUFFER,null),i.useProgram(null),i.lineWidth(1),i.scissor(0,0,i.canvas.width,i.canvas.height),i.viewport(0,0,i.canvas.width,i.canvas.height),h={},G=null,se={},u={},d=new WeakMap,p=[],_=null,v=!1,m=null,f=null,A=null,T=null,b=null,P=null,C=null,D=new je(0,0,0),N=0,w=!1,M=null,S=null,L=null,O=null,V=null,Ce.set(0,0,i.canvas.width,i.canvas.height),Oe.set(0,0,i.canvas.width,i.canvas.height),r.reset(),a.reset(),o.reset()}return{buffers:{color:r,depth:a,stencil:o},enable:J,disable:F,bindFramebuffer:te,drawBuffers:ae,useProgram:be,setBlending:We,setMaterial:Pe,setFlipSided:Ee,setCullFace:ve,setLineWidth:Ke,setPolygonOffset:xe,setScissorTest:Xe,activeTexture:Ct,bindTexture:wt,unbindTexture:E,compressedTexImage2D:x,compressedTexImage3D:W,texImage2D:Ae,texImage3D:ce,updateUBOMapping:Re,uniformBlockBinding:pe,texStorage2D:ue,texStorage3D:Te,texSubImage2D:Q,texSubImage3D:re,compressedTexSubImage2D:Z,compressedTexSubImage3D:De,scissor:ge,viewport:ke,reset:$e}}function g0(i,e,t,n,s,r,a){const o=e.has("WEBGL_multisampled_render_to_texture")?e.get("WEBGL_multisampled_render_to_texture"):null,c=typeof navigator>"u"?!1:/OculusBrowser/g.test(navigator.userAgent),l=new Ve,h=new WeakMap;let u;const d=new WeakMap;let p=!1;try{p=typeof OffscreenCanvas<"u"&&new OffscreenCanvas(1,1).getContext("2d")!==null}catch{}function _(E,x){return p?new OffscreenCanvas(E,x):Er("canvas")}function v(E,x,W){let Q=1;const re=wt(E);if((re.width>W||re.height>W)&&(Q=W/Math.max(re.width,re.height)),Q<1)if(typeof HTMLImageElement<"u"&&E instanceof HTMLImageElement||typeof HTMLCanvasElement<"u"&&E instanceof HTMLCanvasElement||typeof ImageBitmap<"u"&&E instanceof ImageBitmap||typeof VideoFrame<"u"&&E instanceof VideoFrame){const Z=Math.floor(Q*re.width),De=Math.floor(Q*re.height);u===void 0&&(u=_(Z,De));const ue=x?_(Z,De):u;return ue.width=Z,ue.height=De,ue.getContext("2d").drawImage(E,0,0,Z,De),console.warn("THREE.WebGLRenderer: Texture has been resized from ("+re.width+"x"+re.height+") to ("+Z+"x"+De+")."),ue}else return"data"in E&&console.warn("THREE.WebGLRenderer: Image in DataTexture is too big ("+re.width+"x"+re.height+")."),E;return E}function m(E){return E.generateMipmaps}function f(E){i.generateMipmap(E)}function A(E){return E.isWebGLCubeRenderTarget?i.TEXTURE_CUBE_MAP:E.isWebGL3DRenderTarget?i.TEXTURE_3D:E.isWebGLArrayRenderTarget||E.isCompressedArrayTexture?i.TEXTURE_2D_ARRAY:i.TEXTURE_2D}function T(E,x,W,Q,re=!1){if(E!==null){if(i[E]!==void 0)return i[E];console.warn("THREE.WebGLRenderer: Attempt to use non-existing WebGL internal format '"+E+"'")}let Z=x;if(x===i.RED&&(W===i.FLOAT&&(Z=i.R32F),W===i.HALF_FLOAT&&(Z=i.R16F),W===i.UNSIGNED_BYTE&&(Z=i.R8)),x===i.RED_INTEGER&&(W===i.UNSIGNED_BYTE&&(Z=i.R8UI),W===i.UNSIGNED_SHORT&&(Z=i.R16UI),W===i.UNSIGNED_INT&&(Z=i.R32UI),W===i.BYTE&&(Z=i.R8I),W===i.SHORT&&(Z=i.R16I),W===i.INT&&(Z=i.R32I)),x===i.RG&&(W===i.FLOAT&&(Z=i.RG32F),W===i.HALF_FLOAT&&(Z=i.RG16F),W===i.UNSIGNED_BYTE&&(Z=i.RG8)),x===i.RG_INTEGER&&(W===i.UNSIGNED_BYTE&&(Z=i.RG8UI),W===i.UNSIGNED_SHORT&&(Z=i.RG16UI),W===i.UNSIGNED_INT&&(Z=i.RG32UI),W===i.BYTE&&(Z=i.RG8I),W===i.SHORT&&(Z=i.RG16I),W===i.INT&&(Z=i.RG32I)),x===i.RGB_INTEGER&&(W===i.UNSIGNED_BYTE&&(Z=i.RGB8UI),W===i.UNSIGNED_SHORT&&(Z=i.RGB16UI),W===i.UNSIGNED_INT&&(Z=i.RGB32UI),W===i.BYTE&&(Z=i.RGB8I),W===i.SHORT&&(Z=i.RGB16I),W===i.INT&&(Z=i.RGB32I)),x===i.RGBA_INTEGER&&(W===i.UNSIGNED_BYTE&&(Z=i.RGBA8UI),W===i.UNSIGNED_SHORT&&(Z=i.RGBA16UI),W===i.UNSIGNED_INT&&(Z=i.RGBA32UI),W===i.BYTE&&(Z=i.RGBA8I),W===i.SHORT&&(Z=i.RGBA16I),W===i.INT&&(Z=i.RGBA32I)),x===i.RGB&&(W===i.UNSIGNED_INT_5_9_9_9_REV&&(Z=i.RGB9_E5),W===i.UNSIGNED_INT_10F_11F_11F_REV&&(Z=i.R11F_G11F_B10F)),x===i.RGBA){const De=re?br:nt.getTransfer(Q);W===i.FLOAT&&(Z=i.RGBA32F),W===i.HALF_FLOAT&&(Z=i.RGBA16F),W===i.UNSIGNED_BYTE&&(Z=De===at?i.SRGB8_ALPHA8:i.RGBA8),W===i.UNSIGNED_SHORT_4_4_4_4&&(Z=i.RGBA4),W===i.UNSIGNED_SHORT_5_5_5_1&&(Z=i.RGB5_A1)}return(Z===i.R16F||Z===i.R32F||Z===i.RG16F||Z===i.RG32F||Z===i.RGBA16F||Z===i.RGBA32F)&&e.get("EXT_color_buffer_float"),Z}function b(E,x){let W;return E?x===null||x===vi||x===ws?W=i.DEPTH24_STENCIL8:x===Un?W=i.DEPTH32F_STENCIL8:x===Ms&&(W=i.DEPTH24_STENCIL8,console.warn("DepthTexture: 16 bit depth attachment is not supported with stencil. Using 24-bit attachment.")):x===null||x===vi||x===ws?W=i.DEPTH_COMPONENT24:x===Un?W=i.DEPTH_COMPONENT32F:x===Ms&&(W=i.DEPTH_COMPONENT16),W}function P(E,x){return m(E)===!0||E.isFramebufferTexture&&E.minFilter!==fn&&E.minFilter!==vn?Math.log2(Math.max(x.width,x.height))+1:E.mipmaps!==void 0&&E.mipmaps.length>0?E.mipmaps.length:E.isCompressedTexture&&Array.isArray(E.image)?x.mipmaps.length:1}function C(E){const x=E.target;x.removeEventListener("dispose",C),N(x),x.isVideoTexture&&h.delete(x)}function D(E){const x=E.target;x.removeEventListener("dispose",D),M(x)}function N(E){const x=n.get(E);if(x.__webglInit===void 0)return;const W=E.source,Q=d.get(W);if(Q){const re=Q[x.__cacheKey];re.usedTimes--,re.usedTimes===0&&w(E),Object.keys(Q).length===0&&d.delete(W)}n.remove(E)}function w(E){const x=n.get(E);i.deleteTexture(x.__webglTexture);const W=E.source,Q=d.get(W);delete Q[x.__cacheKey],a.memory.textures--}function M(E){const x=n.get(E);if(E.depthTexture&&(E.depthTexture.dispose(),n.remove(E.depthTexture)),E.isWebGLCubeRenderTarget)for(let Q=0;Q<6;Q++){if(Array.isArray(x.__webglFramebuffer[Q]))for(let re=0;re<x.__webglFramebuffer[Q].length;re++)i.deleteFramebuffer(x.__webglFramebuffer[Q][re]);else i.deleteFramebuffer(x.__webglFramebuffer[Q]);x.__webglDepthbuffer&&i.deleteRenderbuffer(x.__webglDepthbuffer[Q])}else{if(Array.isArray(x.__webglFramebuffer))for(let Q=0;Q<x.__webglFramebuffer.length;Q++)i.deleteFramebuffer(x.__webglFramebuffer[Q]);else i.deleteFramebuffer(x.__webglFramebuffer);if(x.__webglDepthbuffer&&i.deleteRenderbuffer(x.__webglDepthbuffer),x.__webglMultisampledFramebuffer&&i.deleteFramebuffer(x.__webglMultisampledFramebuffer),x.__webglColorRenderbuffer)for(let Q=0;Q<x.__webglColorRenderbuffer.length;Q++)x.__webglColorRenderbuffer[Q]&&i.deleteRenderbuffer(x.__webglColorRenderbuffer[Q]);x.__webglDepthRenderbuffer&&i.deleteRenderbuffer(x.__webglDepthRenderbuffer)}const W=E.textures;for(let Q=0,re=W.length;Q<re;Q++){const Z=n.get(W[Q]);Z.__webglTexture&&(i.deleteTexture(Z.__webglTexture),a.memory.textures--),n.remove(W[Q])}n.remove(E)}let S=0;function L(){S=0}function O(){const E=S;return E>=s.maxTextures&&console.warn("THREE.WebGLTextures: Trying to use "+E+" texture units while this GPU supports only "+s.maxTextures),S+=1,E}function V(E){const x=[];return x.push(E.wrapS),x.push(E.wrapT),x.push(E.wrapR||0),x.push(E.magFilter),x.push(E.minFilter),x.push(E.anisotropy),x.push(E.internalFormat),x.push(E.format),x.push(E.type),x.push(E.generateMipmaps),x.push(E.premultiplyAlpha),x.push(E.flipY),x.push(E.unpackAlignment),x.push(E.colorSpace),x.join()}function z(E,x){const W=n.get(E);if(E.isVideoTexture&&Xe(E),E.isRenderTargetTexture===!1&&E.isExternalTexture!==!0&&E.version>0&&W.__version!==E.version){const Q=E.image;if(Q===null)console.warn("THREE.WebGLRenderer: Texture marked for update but no image data found.");else if(Q.complete===!1)console.warn("THREE.WebGLRenderer: Texture marked for update but image is incomplete");else{K(W,E,x);return}}else E.isExternalTexture&&(W.__webglTexture=E.sourceTexture?E.sourceTexture:null);t.bindTexture(i.TEXTURE_2D,W.__webglTexture,i.TEXTURE0+x)}function Y(E,x){const W=n.get(E);if(E.isRenderTargetTexture===!1&&E.version>0&&W.__version!==E.version){K(W,E,x);return}t.bindTexture(i.TEXTURE_2D_ARRAY,W.__webglTexture,i.TEXTURE0+x)}function ee(E,x){const W=n.get(E);if(E.isRenderTargetTexture===!1&&E.version>0&&W.__version!==E.version){K(W,E,x);return}t.bindTexture(i.TEXTURE_3D,W.__webglTexture,i.TEXTURE0+x)}function j(E,x){const W=n.get(E);if(E.version>0&&W.__version!==E.version){J(W,E,x);return}t.bindTexture(i.TEXTURE_CUBE_MAP,W.__webglTexture,i.TEXTURE0+x)}const G={[Wa]:i.REPEAT,[pi]:i.CLAMP_TO_EDGE,[$a]:i.MIRRORED_REPEAT},se={[fn]:i.NEAREST,[Vd]:i.NEAREST_MIPMAP_NEAREST,[zs]:i.NEAREST_MIPMAP_LINEAR,[vn]:i.LINEAR,[Yr]:i.LINEAR_MIPMAP_NEAREST,[mi]:i.LINEAR_MIPMAP_LINEAR},H={[qd]:i.NEVER,[Jd]:i.ALWAYS,[Xd]:i.LESS,[ph]:i.LEQUAL,[Yd]:i.EQUAL,[Zd]:i.GEQUAL,[jd]:i.GREATER,[Kd]:i.NOTEQUAL};function ie(E,x){if(x.type===Un&&e.has("OES_texture_float_linear")===!1&&(x.magFilter===vn||x.magFilter===Yr||x.magFilter===zs||x.magFilter===mi||x.minFilter===vn||x.minFilter===Yr||x.minFilter===zs||x.minFilter===mi)&&console.warn("THREE.WebGLRenderer: Unable to use linear filtering with floating point textures. OES_texture_float_linear not supported on this device."),i.texParameteri(E,i.TEXTURE_WRAP_S,G[x.wrapS]),i.texParameteri(E,i.TEXTURE_WRAP_T,G[x.wrapT]),(E===i.TEXTURE_3D||E===i.TEXTURE_2D_ARRAY)&&i.texParameteri(E,i.TEXTURE_WRAP_R,G[x.wrapR]),i.texParameteri(E,i.TEXTURE_MAG_FILTER,se[x.magFilter]),i.texParameteri(E,i.TEXTURE_MIN_FILTER,se[x.minFilter]),x.compareFunction&&(i.texParameteri(E,i.TEXTURE_COMPARE_MODE,i.COMPARE_REF_TO_TEXTURE),i.texParameteri(E,i.TEXTURE_COMPARE_FUNC,H[x.compareFunction])),e.has("EXT_texture_filter_anisotropic")===!0){if(x.magFilter===fn||x.minFilter!==zs&&x.minFilter!==mi||x.type===Un&&e.has("OES_texture_float_linear")===!1)return;if(x.anisotropy>1||n.get(x).__currentAnisotropy){const W=e.get("EXT_texture_filter_anisotropic");i.texParameterf(E,W.TEXTURE_MAX_ANISOTROPY_EXT,Math.min(x.anisotropy,s.getMaxAnisotropy())),n.get(x).__currentAnisotropy=x.anisotropy}}}function Ce(E,x){let W=!1;E.__webglInit===void 0&&(E.__webglInit=!0,x.addEventListener("dispose",C));const Q=x.source;let re=d.get(Q);re===void 0&&(re={},d.set(Q,re));const Z=V(x);if(Z!==E.__cacheKey){re[Z]===void 0&&(re[Z]={texture:i.createTexture(),usedTimes:0},a.memory.textures++,W=!0),re[Z].usedTimes++;const De=re[E.__cacheKey];De!==void 0&&(re[E.__cacheKey].usedTimes--,De.usedTimes===0&&w(x)),E.__cacheKey=Z,E.__webglTexture=re[Z].texture}return W}function Oe(E,x,W){return Math.floor(Math.floor(E/W)/x)}function Le(E,x,W,Q){const Z=E.updateRanges;if(Z.length===0)t.texSubImage2D(i.TEXTURE_2D,0,0,0,x.width,x.height,W,Q,x.data);else{Z.sort((ce,ge)=>ce.start-ge.start);let De=0;for(let ce=1;ce<Z.length;ce++){const ge=Z[De],ke=Z[ce],Re=ge.start+ge.count,pe=Oe(ke.start,x.width,4),$e=Oe(ge.start,x.width,4);ke.start<=Re+1&&pe===$e&&Oe(ke.start+ke.count-1,x.width,4)===pe?ge.count=Math.max(ge.count,ke.start+ke.count-ge.start):(++De,Z[De]=ke)}Z.length=De+1;const ue=i.getParameter(i.UNPACK_ROW_LENGTH),Te=i.getParameter(i.UNPACK_SKIP_PIXELS),Ae=i.getParameter(i.UNPACK_SKIP_ROWS);i.pixelStorei(i.UNPACK_ROW_LENGTH,x.width);for(let ce=0,ge=Z.length;ce<ge;ce++){const ke=Z[ce],Re=Math.floor(ke.start/4),pe=Math.ceil(ke.count/4),$e=Re%x.width,I=Math.floor(Re/x.width),he=pe,de=1;i.pixelStorei(i.UNPACK_SKIP_PIXELS,$e),i.pixelStorei(i.UNPACK_SKIP_ROWS,I),t.texSubImage2D(i.TEXTURE_2D,0,$e,I,he,de,W,Q,x.data)}E.clearUpdateRanges(),i.pixelStorei(i.UNPACK_ROW_LENGTH,ue),i.pixelStorei(i.UNPACK_SKIP_PIXELS,Te),i.pixelStorei(i.UNPACK_SKIP_ROWS,Ae)}}function K(E,x,W){let Q=i.TEXTURE_2D;(x.isDataArrayTexture||x.isCompressedArrayTexture)&&(Q=i.TEXTURE_2D_ARRAY),x.isData3DTexture&&(Q=i.TEXTURE_3D);const re=Ce(E,x),Z=x.source;t.bindTexture(Q,E.__webglTexture,i.TEXTURE0+W);const De=n.get(Z);if(Z.version!==De.__version||re===!0){t.activeTexture(i.TEXTURE0+W);const ue=nt.getPrimaries(nt.workingColorSpace),Te=x.colorSpace===Yn?null:nt.getPrimaries(x.colorSpace),Ae=x.colorSpace===Yn||ue===Te?i.NONE:i.BROWSER_DEFAULT_WEBGL;i.pixelStorei(i.UNPACK_FLIP_Y_WEBGL,x.flipY),i.pixelStorei(i.UNPACK_PREMULTIPLY_ALPHA_WEBGL,x.premultiplyAlpha),i.pixelStorei(i.UNPACK_ALIGNMENT,x.unpackAlignment),i.pixelStorei(i.UNPACK_COLORSPACE_CONVERSION_WEBGL,Ae);let ce=v(x.image,!1,s.maxTextureSize);ce=Ct(x,ce);const ge=r.convert(x.format,x.colorSpace),ke=r.convert(x.type);let Re=T(x.internalFormat,ge,ke,x.colorSpace,x.isVideoTexture);ie(Q,x);let pe;const $e=x.mipmaps,I=x.isVideoTexture!==!0,he=De.__version===void 0||re===!0,de=Z.dataReady,Me=P(x,ce);if(x.isDepthTexture)Re=b(x.format===Ss,x.type),he&&(I?t.texStorage2D(i.TEXTURE_2D,1,Re,ce.width,ce.height):t.texImage2D(i.TEXTURE_2D,0,Re,ce.width,ce.height,0,ge,ke,null));else if(x.isDataTexture)if($e.length>0){I&&he&&t.texStorage2D(i.TEXTURE_2D,Me,Re,$e[0].width,$e[0].height);for(let oe=0,ne=$e.length;oe<ne;oe++)pe=$e[oe],I?de&&t.texSubImage2D(i.TEXTURE_2D,oe,0,0,pe.width,pe.height,ge,ke,pe.data):t.texImage2D(i.TEXTURE_2D,oe,Re,pe.width,pe.height,0,ge,ke,pe.data);x.generateMipmaps=!1}else I?(he&&t.texStorage2D(i.TEXTURE_2D,Me,Re,ce.width,ce.height),de&&Le(x,ce,ge,ke)):t.texImage2D(i.TEXTURE_2D,0,Re,ce.width,ce.height,0,ge,ke,ce.data);else if(x.isCompressedTexture)if(x.isCompressedArrayTexture){I&&he&&t.texStorage3D(i.TEXTURE_2D_ARRAY,Me,Re,$e[0].width,$e[0].height,ce.depth);for(let oe=0,ne=$e.length;oe<ne;oe++)if(pe=$e[oe],x.format!==dn)if(ge!==null)if(I){if(de)if(x.layerUpdates.size>0){const Se=nc(pe.width,pe.height,x.format,x.type);for(const Ge of x.layerUpdates){const ht=pe.data.subarray(Ge*Se/pe.data.BYTES_PER_ELEMENT,(Ge+1)*Se/pe.data.BYTES_PER_ELEMENT);t.compressedTexSubImage3D(i.TEXTURE_2D_ARRAY,oe,0,0,Ge,pe.width,pe.height,1,ge,ht)}x.clearLayerUpdates()}else t.compressedTexSubImage3D(i.TEXTURE_2D_ARRAY,oe,0,0,0,pe.width,pe.height,ce.depth,ge,pe.data)}else t.compressedTexImage3D(i.TEXTURE_2D_ARRAY,oe,Re,pe.width,pe.height,ce.depth,0,pe.data,0,0);else console.warn("THREE.WebGLRenderer: Attempt to load unsupported compressed texture format in .uploadTexture()");else I?de&&t.texSubImage3D(i.TEXTURE_2D_ARRAY,oe,0,0,0,pe.width,pe.height,ce.depth,ge,ke,pe.data):t.texImage3D(i.TEXTURE_2D_ARRAY,oe,Re,pe.width,pe.height,ce.depth,0,ge,ke,pe.data)}else{I&&he&&t.texStorage2D(i.TEXTURE_2D,Me,Re,$e[0].width,$e[0].height);for(let oe=0,ne=$e.length;oe<ne;oe++)pe=$e[oe],x.format!==dn?ge!==null?I?de&&t.compressedTexSubImage2D(i.TEXTURE_2D,oe,0,0,pe.width,pe.height,ge,pe.data):t.compressedTexImage2D(i.TEXTURE_2D,oe,Re,pe.width,pe.height,0,pe.data):console.warn("THREE.WebGLRenderer: Attempt to load unsupported compressed texture format in .uploadTexture()"):I?de&&t.texSubImage2D(i.TEXTURE_2D,oe,0,0,pe.width,pe.height,ge,ke,pe.data):t.texImage2D(i.TEXTURE_2D,oe,Re,pe.width,pe.height,0,ge,ke,pe.data)}else if(x.isDataArrayTexture)if(I){if(he&&t.texStorage3D(i.TEXTURE_2D_ARRAY,Me,Re,ce.width,ce.height,ce.depth),de)if(x.layerUpdates.size>0){const oe=nc(ce.width,ce.height,x.format,x.type);for(const ne of x.layerUpdates){const Se=ce.data.subarray(ne*oe/ce.data.BYTES_PER_ELEMENT,(ne+1)*oe/ce.data.BYTES_PER_ELEMENT);t.texSubImage3D(i.TEXTURE_2D_ARRAY,0,0,0,ne,ce.width,ce.height,1,ge,ke,Se)}x.clearLayerUpdates()}else t.texSubImage3D(i.TEXTURE_2D_ARRAY,0,0,0,0,ce.width,ce.height,ce.depth,ge,ke,ce.data)}else t.texImage3D(i.TEXTURE_2D_ARRAY,0,Re,ce.width,ce.height,ce.depth,0,ge,ke,ce.data);else if(x.isData3DTexture)I?(he&&t.texStorage3D(i.TEXTURE_3D,Me,Re,ce.width,ce.height,ce.depth),de&&t.texSubImage3D(i.TEXTURE_3D,0,0,0,0,ce.width,ce.height,ce.depth,ge,ke,ce.data)):t.texImage3D(i.TEXTURE_3D,0,Re,ce.width,ce.height,ce.depth,0,ge,ke,ce.data);else if(x.isFramebufferTexture){if(he)if(I)t.texStorage2D(i.TEXTURE_2D,Me,Re,ce.width,ce.height);else{let oe=ce.width,ne=ce.height;for(let Se=0;Se<Me;Se++)t.texImage2D(i.TEXTURE_2D,Se,Re,oe,ne,0,ge,ke,null),oe>>=1,ne>>=1}}else if($e.length>0){if(I&&he){const oe=wt($e[0]);t.texStorage2D(i.TEXTURE_2D,Me,Re,oe.width,oe.height)}for(let oe=0,ne=$e.length;oe<ne;oe++)pe=$e[oe],I?de&&t.texSubImage2D(i.TEXTURE_2D,oe,0,0,ge,ke,pe):t.texImage2D(i.TEXTURE_2D,oe,Re,ge,ke,pe);x.generateMipmaps=!1}else if(I){if(he){const oe=wt(ce);t.texStorage2D(i.TEXTURE_2D,Me,Re,oe.width,oe.height)}de&&t.texSubImage2D(i.TEXTURE_2D,0,0,0,ge,ke,ce)}else t.texImage2D(i.TEXTURE_2D,0,Re,ge,ke,ce);m(x)&&f(Q),De.__version=Z.version,x.onUpdate&&x.onUpdate(x)}E.__version=x.version}function J(E,x,W){if(x.image.length!==6)return;const Q=Ce(E,x),re=x.source;t.bindTexture(i.TEXTURE_CUBE_MAP,E.__webglTexture,i.TEXTURE0+W);const Z=n.get(re);if(re.version!==Z.__version||Q===!0){t.activeTexture(i.TEXTURE0+W);const De=nt.getPrimaries(nt.workingColorSpace),ue=x.colorSpace===Yn?null:nt.getPrimaries(x.colorSpace),Te=x.colorSpace===Yn||De===ue?i.NONE:i.BROWSER_DEFAULT_WEBGL;i.pixelStorei(i.UNPACK_FLIP_Y_WEBGL,x.flipY),i.pixelStorei(i.UNPACK_PREMULTIPLY_ALPHA_WEBGL,x.premultiplyAlpha),i.pixelStorei(i.UNPACK_ALIGNMENT,x.unpackAlignment),i.pixelStorei(i.UNPACK_COLORSPACE_CONVERSION_WEBGL,Te);const Ae=x.isCompressedTexture||x.image[0].isCompressedTexture,ce=x.image[0]&&x.image[0].isDataTexture,ge=[];for(let ne=0;ne<6;ne++)!Ae&&!ce?ge[ne]=v(x.image[ne],!0,s.maxCubemapSize):ge[ne]=ce?x.image[ne].image:x.image[ne],ge[ne]=Ct(x,ge[ne]);const ke=ge[0],Re=r.convert(x.format,x.colorSpace),pe=r.convert(x.type),$e=T(x.internalFormat,Re,pe,x.colorSpace),I=x.isVideoTexture!==!0,he=Z.__version===void 0||Q===!0,de=re.dataReady;let Me=P(x,ke);ie(i.TEXTURE_CUBE_MAP,x);let oe;if(Ae){I&&he&&t.texStorage2D(i.TEXTURE_CUBE_MAP,Me,$e,ke.width,ke.height);for(let ne=0;ne<6;ne++){oe=ge[ne].mipmaps;for(let Se=0;Se<oe.length;Se++){const Ge=oe[Se];x.format!==dn?Re!==null?I?de&&t.compressedTexSubImage2D(i.TEXTURE_CUBE_MAP_POSITIVE_X+ne,Se,0,0,Ge.width,Ge.height,Re,Ge.data):t.compressedTexImage2D(i.TEXTURE_CUBE_MAP_POSITIVE_X+ne,Se,$e,Ge.width,Ge.height,0,Ge.data):console.warn("THREE.WebGLRenderer: Attempt to load unsupported compressed texture format in .setTextureCube()"):I?de&&t.texSubImage2D(i.TEXTURE_CUBE_MAP_POSITIVE_X+ne,Se,0,0,Ge.width,Ge.height,Re,pe,Ge.data):t.texImage2D(i.TEXTURE_CUBE_MAP_POSITIVE_X+ne,Se,$e,Ge.width,Ge.height,0,Re,pe,Ge.data)}}}else{if(oe=x.mipmaps,I&&he){oe.length>0&&Me++;const ne=wt(ge[0]);t.texStorage2D(i.TEXTURE_CUBE_MAP,Me,$e,ne.width,ne.height)}for(let ne=0;ne<6;ne++)if(ce){I?de&&t.texSubImage2D(i.TEXTURE_CUBE_MAP_POSITIVE_X+ne,0,0,0,ge[ne].width,ge[ne].height,Re,pe,ge[ne].data):t.texImage2D(i.TEXTURE_CUBE_MAP_POSITIVE_X+ne,0,$e,ge[ne].width,ge[ne].height,0,Re,pe,ge[ne].data);for(let Se=0;Se<oe.length;Se++){const ht=oe[Se].image[ne].image;I?de&&t.texSubImage2D(i.TEXTURE_CUBE_MAP_POSITIVE_X+ne,Se+1,0,0,ht.width,ht.height,Re,pe,ht.data):t.texImage2D(i.TEXTURE_CUBE_MAP_POSITIVE_X+ne,Se+1,$e,ht.width,ht.height,0,Re,pe,ht.data)}}else{I?de&&t.texSubImage2D(i.TEXTURE_CUBE_MAP_POSITIVE_X+ne,0,0,0,Re,pe,ge[ne]):t.texImage2D(i.TEXTURE_CUBE_MAP_POSITIVE_X+ne,0,$e,Re,pe,ge[ne]);for(let Se=0;Se<oe.length;Se++){const Ge=oe[Se];I?de&&t.texSubImage2D(i.TEXTURE_CUBE_MAP_POSITIVE_X+ne,Se+1,0,0,Re,pe,Ge.image[ne]):t.texImage2D(i.TEXTURE_CUBE_MAP_POSITIVE_X+ne,Se+1,$e,Re,pe,Ge.image[ne])}}}m(x)&&f(i.TEXTURE_CUBE_MAP),Z.__version=re.version,x.onUpdate&&x.onUpdate(x)}E.__version=x.version}function F(E,x,W,Q,re,Z){const De=r.convert(W.format,W.colorSpace),ue=r.convert(W.type),Te=T(W.internalFormat,De,ue,W.colorSpace),Ae=n.get(x),ce=n.get(W);if(ce.__renderTarget=x,!Ae.__hasExternalTextures){const ge=Math.max(1,x.width>>Z),ke=Math.max(1,x.height>>Z);re===i.TEXTURE_3D||re===i.TEXTURE_2D_ARRAY?t.texImage3D(re,Z,Te,ge,ke,x.depth,0,De,ue,null):t.texImage2D(re,Z,Te,ge,ke,0,De,ue,null)}t.bindFramebuffer(i.FRAMEBUFFER,E),xe(x)?o.framebufferTexture2DMultisampleEXT(i.FRAMEBUFFER,Q,re,ce.__webglTexture,0,Ke(x)):(re===i.TEXTURE_2D||re>=i.TEXTURE_CUBE_MAP_POSITIVE_X&&re<=i.TEXTURE_CUBE_MAP_NEGATIVE_Z)&&i.framebufferTexture2D(i.FRAMEBUFFER,Q,re,ce.__webglTexture,Z),t.bindFramebuffer(i.FRAMEBUFFER,null)}function te(E,x,W){if(i.bindRenderbuffer(i.RENDERBUFFER,E),x.depthBuffer){const Q=x.depthTexture,re=Q&&Q.isDepthTexture?Q.type:null,Z=b(x.stencilBuffer,re),De=x.stencilBuffer?i.DEPTH_STENCIL_ATTACHMENT:i.DEPTH_ATTACHMENT,ue=Ke(x);xe(x)?o.renderbufferStorageMultisampleEXT(i.RENDERBUFFER,ue,Z,x.width,x.height):W?i.renderbufferStorageMultisample(i.RENDERBUFFER,ue,Z,x.width,x.height):i.renderbufferStorage(i.RENDERBUFFER,Z,x.width,x.height),i.framebufferRenderbuffer(i.FRAMEBUFFER,De,i.RENDERBUFFER,E)}else{const Q=x.textures;for(let re=0;re<Q.length;re++){const Z=Q[re],De=r.convert(Z.format,Z.colorSpace),ue=r.convert(Z.type),Te=T(Z.internalFormat,De,ue,Z.colorSpace),Ae=Ke(x);W&&xe(x)===!1?i.renderbufferStorageMultisample(i.RENDERBUFFER,Ae,Te,x.width,x.height):xe(x)?o.renderbufferStorageMultisampleEXT(i.RENDERBUFFER,Ae,Te,x.width,x.height):i.renderbufferStorage(i.RENDERBUFFER,Te,x.width,x.height)}}i.bindRenderbuffer(i.RENDERBUFFER,null)}function ae(E,x){if(x&&x.isWebGLCubeRenderTarget)throw new Error("Depth Texture with cube render targets is not supported");if(t.bindFramebuffer(i.FRAMEBUFFER,E),!(x.depthTexture&&x.depthTexture.isDepthTexture))throw new Error("renderTarget.depthTexture must be an instance of THREE.DepthTexture");const Q=n.get(x.depthTexture);Q.__renderTarget=x,(!Q.__webglTexture||x.depthTexture.image.width!==x.width||x.depthTexture.image.height!==x.height)&&(x.depthTexture.image.width=x.width,x.depthTexture.image.height=x.height,x.depthTexture.needsUpdate=!0),z(x.depthTexture,0);const re=Q.__webglTexture,Z=Ke(x);if(x.depthTexture.format===bs)xe(x)?o.framebufferTexture2DMultisampleEXT(i.FRAMEBUFFER,i.DEPTH_ATTACHMENT,i.TEXTURE_2D,re,0,Z):i.framebufferTexture2D(i.FRAMEBUFFER,i.DEPTH_ATTACHMENT,i.TEXTURE_2D,re,0);else if(x.depthTexture.format===Ss)xe(x)?o.framebufferTexture2DMultisampleEXT(i.FRAMEBUFFER,i.DEPTH_STENCIL_ATTACHMENT,i.TEXTURE_2D,re,0,Z):i.framebufferTexture2D(i.FRAMEBUFFER,i.DEPTH_STENCIL_ATTACHMENT,i.TEXTURE_2D,re,0);else throw new Error("Unknown depthTexture format")}function be(E){const x=n.get(E),W=E.isWebGLCubeRenderTarget===!0;if(x.__boundDepthTexture!==E.depthTexture){const Q=E.depthTexture;if(x.__depthDisposeCallback&&x.__depthDisposeCallback(),Q){const re=()=>{delete x.__boundDepthTexture,delete x.__depthDisposeCallback,Q.removeEventListener("dispose",re)};Q.addEventListener("dispose",re),x.__depthDisposeCallback=re}x.__boundDepthTexture=Q}if(E.depthTexture&&!x.__autoAllocateDepthBuffer){if(W)throw new Error("target.depthTexture not supported in Cube render targets");const Q=E.texture.mipmaps;Q&&Q.length>0?ae(x.__webglFramebuffer[0],E):ae(x.__webglFramebuffer,E)}else if(W){x.__webglDepthbuffer=[];for(let Q=0;Q<6;Q++)if(t.bindFramebuffer(i.FRAMEBUFFER,x.__webglFramebuffer[Q]),x.__webglDepthbuffer[Q]===void 0)x.__webglDepthbuffer[Q]=i.createRenderbuffer(),te(x.__webglDepthbuffer[Q],E,!1);else{const re=E.stencilBuffer?i.DEPTH_STENCIL_ATTACHMENT:i.DEPTH_ATTACHMENT,Z=x.__webglDepthbuffer[Q];i.bindRenderbuffer(i.RENDERBUFFER,Z),i.framebufferRenderbuffer(i.FRAMEBUFFER,re,i.RENDERBUFFER,Z)}}else{const Q=E.texture.mipmaps;if(Q&&Q.length>0?t.bindFramebuffer(i.FRAMEBUFFER,x.__webglFramebuffer[0]):t.bindFramebuffer(i.FRAMEBUFFER,x.__webglFramebuffer),x.__webglDepthbuffer===void 0)x.__webglDepthbuffer=i.createRenderbuffer(),te(x.__webglDepthbuffer,E,!1);else{const re=E.stencilBuffer?i.DEPTH_STENCIL_ATTACHMENT:i.DEPTH_ATTACHMENT,Z=x.__webglDepthbuffer;i.bindRenderbuffer(i.RENDERBUFFER,Z),i.framebufferRenderbuffer(i.FRAMEBUFFER,re,i.RENDERBUFFER,Z)}}t.bindFramebuffer(i.FRAMEBUFFER,null)}function it(E,x,W){const Q=n.get(E);x!==void 0&&F(Q.__webglFramebuffer,E,E.texture,i.COLOR_ATTACHMENT0,i.TEXTURE_2D,0),W!==void 0&&be(E)}function R(E){const x=E.texture,W=n.get(E),Q=n.get(x);E.addEventListener("dispose",D);const re=E.textures,Z=E.isWebGLCubeRenderTarget===!0,De=re.length>1;if(De||(Q.__webglTexture===void 0&&(Q.__webglTexture=i.createTexture()),Q.__version=x.version,a.memory.textures++),Z){W.__webglFramebuffer=[];for(let ue=0;ue<6;ue++)if(x.mipmaps&&x.mipmaps.length>0){W.__webglFramebuffer[ue]=[];for(let Te=0;Te<x.mipmaps.length;Te++)W.__webglFramebuffer[ue][Te]=i.createFramebuffer()}else W.__webglFramebuffer[ue]=i.createFramebuffer()}else{if(x.mipmaps&&x.mipmaps.length>0){W.__webglFramebuffer=[];for(let ue=0;ue<x.mipmaps.length;ue++)W.__webglFramebuffer[ue]=i.createFramebuffer()}else W.__webglFramebuffer=i.createFramebuffer();if(De)for(let ue=0,Te=re.length;ue<Te;ue++){const Ae=n.get(re[ue]);Ae.__webglTexture===void 0&&(Ae.__webglTexture=i.createTexture(),a.memory.textures++)}if(E.samples>0&&xe(E)===!1){W.__webglMultisampledFramebuffer=i.createFramebuffer(),W.__webglColorRenderbuffer=[],t.bindFramebuffer(i.FRAMEBUFFER,W.__webglMultisampledFramebuffer);for(let ue=0;ue<re.length;ue++){const Te=re[ue];W.__webglColorRenderbuffer[ue]=i.createRenderbuffer(),i.bindRenderbuffer(i.RENDERBUFFER,W.__webglColorRenderbuffer[ue]);const Ae=r.convert(Te.format,Te.colorSpace),ce=r.convert(Te.type),ge=T(Te.internalFormat,Ae,ce,Te.colorSpace,E.isXRRenderTarget===!0),ke=Ke(E);i.renderbufferStorageMultisample(i.RENDERBUFFER,ke,ge,E.width,E.height),i.framebufferRenderbuffer(i.FRAMEBUFFER,i.COLOR_ATTACHMENT0+ue,i.RENDERBUFFER,W.__webglColorRenderbuffer[ue])}i.bindRenderbuffer(i.RENDERBUFFER,null),E.depthBuffer&&(W.__webglDepthRenderbuffer=i.createRenderbuffer(),te(W.__webglDepthRenderbuffer,E,!0)),t.bindFramebuffer(i.FRAMEBUFFER,null)}}if(Z){t.bindTexture(i.TEXTURE_CUBE_MAP,Q.__webglTexture),ie(i.TEXTURE_CUBE_MAP,x);for(let ue=0;ue<6;ue++)if(x.mipmaps&&x.mipmaps.length>0)for(let Te=0;Te<x.mipmaps.length;Te++)F(W.__webglFramebuffer[ue][Te],E,x,i.COLOR_ATTACHMENT0,i.TEXTURE_CUBE_MAP_POSITIVE_X+ue,Te);else F(W.__webglFramebuffer[ue],E,x,i.COLOR_ATTACHMENT0,i.TEXTURE_CUBE_MAP_POSITIVE_X+ue,0);m(x)&&f(i.TEXTURE_CUBE_MAP),t.unbindTexture()}else if(De){for(let ue=0,Te=re.length;ue<Te;ue++){const Ae=re[ue],ce=n.get(Ae);let ge=i.TEXTURE_2D;(E.isWebGL3DRenderTarget||E.isWebGLArrayRenderTarget)&&(ge=E.isWebGL3DRenderTarget?i.TEXTURE_3D:i.TEXTURE_2D_ARRAY),t.bindTexture(ge,ce.__webglTexture),ie(ge,Ae),F(W.__webglFramebuffer,E,Ae,i.COLOR_ATTACHMENT0+ue,ge,0),m(Ae)&&f(ge)}t.unbindTexture()}else{let ue=i.TEXTURE_2D;if((E.isWebGL3DRenderTarget||E.isWebGLArrayRenderTarget)&&(ue=E.isWebGL3DRenderTarget?i.TEXTURE_3D:i.TEXTURE_2D_ARRAY),t.bindTexture(ue,Q.__webglTexture),ie(ue,x),x.mipmaps&&x.mipmaps.length>0)for(let Te=0;Te<x.mipmaps.length;Te++)F(W.__webglFramebuffer[Te],E,x,i.COLOR_ATTACHMENT0,ue,Te);else F(W.__webglFramebuffer,E,x,i.COLOR_ATTACHMENT0,ue,0);m(x)&&f(ue),t.unbindTexture()}E.depthBuffer&&be(E)}function We(E){const x=E.textures;for(let W=0,Q=x.length;W<Q;W++){const re=x[W];if(m(re)){const Z=A(E),De=n.get(re).__webglTexture;t.bindTexture(Z,De),f(Z),t.unbindTexture()}}}const Pe=[],Ee=[];function ve(E){if(E.samples>0){if(xe(E)===!1){const x=E.textures,W=E.width,Q=E.height;let re=i.COLOR_BUFFER_BIT;const Z=E.stencilBuffer?i.DEPTH_STENCIL_ATTACHMENT:i.DEPTH_ATTACHMENT,De=n.get(E),ue=x.length>1;if(ue)for(let Ae=0;Ae<x.length;Ae++)t.bindFramebuffer(i.FRAMEBUFFER,De.__webglMultisampledFramebuffer),i.framebufferRenderbuffer(i.FRAMEBUFFER,i.COLOR_ATTACHMENT0+Ae,i.RENDERBUFFER,null),t.bindFramebuffer(i.FRAMEBUFFER,De.__webglFramebuffer),i.framebufferTexture2D(i.DRAW_FRAMEBUFFER,i.COLOR_ATTACHMENT0+Ae,i.TEXTURE_2D,null,0);t.bindFramebuffer(i.READ_FRAMEBUFFER,De.__webglMultisampledFramebuffer);const Te=E.texture.mipmaps;Te&&Te.length>0?t.bindFramebuffer(i.DRAW_FRAMEBUFFER,De.__webglFramebuffer[0]):t.bindFramebuffer(i.DRAW_FRAMEBUFFER,De.__webglFramebuffer);for(let Ae=0;Ae<x.length;Ae++){if(E.resolveDepthBuffer&&(E.depthBuffer&&(re|=i.DEPTH_BUFFER_BIT),E.stencilBuffer&&E.resolveStencilBuffer&&(re|=i.STENCIL_BUFFER_BIT)),ue){i.framebufferRenderbuffer(i.READ_FRAMEBUFFER,i.COLOR_ATTACHMENT0,i.RENDERBUFFER,De.__webglColorRenderbuffer[Ae]);const ce=n.get(x[Ae]).__webglTexture;i.framebufferTexture2D(i.DRAW_FRAMEBUFFER,i.COLOR_ATTACHMENT0,i.TEXTURE_2D,ce,0)}i.blitFramebuffer(0,0,W,Q,0,0,W,Q,re,i.NEAREST),c===!0&&(Pe.length=0,Ee.length=0,Pe.push(i.COLOR_ATTACHMENT0+Ae),E.depthBuffer&&E.resolveDepthBuffer===!1&&(Pe.push(Z),Ee.push(Z),i.invalidateFramebuffer(i.DRAW_FRAMEBUFFER,Ee)),i.invalidateFramebuffer(i.READ_FRAMEBUFFER,Pe))}if(t.bindFramebuffer(i.READ_FRAMEBUFFER,null),t.bindFramebuffer(i.DRAW_FRAMEBUFFER,null),ue)for(let Ae=0;Ae<x.length;Ae++){t.bindFramebuffer(i.FRAMEBUFFER,De.__webglMultisampledFramebuffer),i.framebufferRenderbuffer(i.FRAMEBUFFER,i.COLOR_ATTACHMENT0+Ae,i.RENDERBUFFER,De.__webglColorRenderbuffer[Ae]);const ce=n.get(x[Ae]).__webglTexture;t.bindFramebuffer(i.FRAMEBUFFER,De.__webglFramebuffer),i.framebufferTexture2D(i.DRAW_FRAMEBUFFER,i.COLOR_ATTACHMENT0+Ae,i.TEXTURE_2D,ce,0)}t.bindFramebuffer(i.DRAW_FRAMEBUFFER,De.__webglMultisampledFramebuffer)}else if(E.depthBuffer&&E.resolveDepthBuffer===!1&&c){const x=E.stencilBuffer?i.DEPTH_STENCIL_ATTACHMENT:i.DEPTH_ATTACHMENT;i.invalidateFramebuffer(i.DRAW_FRAMEBUFFER,[x])}}}function Ke(E){return Math.min(s.maxSamples,E.samples)}function xe(E){const x=n.get(E);return E.samples>0&&e.has("WEBGL_multisampled_render_to_texture")===!0&&x.__useRenderToTexture!==!1}function Xe(E){const x=a.render.frame;h.get(E)!==x&&(h.set(E,x),E.update())}function Ct(E,x){const W=E.colorSpace,Q=E.format,re=E.type;return E.isCompressedTexture===!0||E.isVideoTexture===!0||W!==Ji&&W!==Yn&&(nt.getTransfer(W)===at?(Q!==dn||re!==Sn)&&console.warn("THREE.WebGLTextures: sRGB encoded textures have to use RGBAFormat and UnsignedByteType."):console.error("THREE.WebGLTextures: Unsupported texture color space:",W)),x}function wt(E){return typeof HTMLImageElement<"u"&&E instanceof HTMLImageElement?(l.width=E.naturalWidth||E.width,l.height=E.naturalHeight||E.height):typeof VideoFrame<"u"&&E instanceof VideoFrame?(l.width=E.displayWidth,l.height=E.displayHeight):(l.width=E.width,l.height=E.height),l}this.allocateTextureUnit=O,this.resetTextureUnits=L,this.setTexture2D=z,this.setTexture2DArray=Y,this.setTexture3D=ee,this.setTextureCube=j,this.rebindTextures=it,this.setupRenderTarget=R,this.updateRenderTargetMipmap=We,this.updateMultisampleRenderTarget=ve,this.setupDepthRenderbuffer=be,this.setupFrameBufferTexture=F,this.useMultisampledRTT=xe}function _0(i,e){function t(n,s=Yn){let r;const a=nt.getTransfer(s);if(n===Sn)return i.UNSIGNED_BYTE;if(n===Ho)return i.UNSIGNED_SHORT_4_4_4_4;if(n===Vo)return i.UNSIGNED_SHORT_5_5_5_1;if(n===oh)return i.UNSIGNED_INT_5_9_9_9_REV;if(n===lh)return i.UNSIGNED_INT_10F_11F_11F_REV;if(n===rh)return i.BYTE;if(n===ah)return i.SHORT;if(n===Ms)return i.UNSIGNED_SHORT;if(n===zo)return i.INT;if(n===vi)return i.UNSIGNED_INT;if(n===Un)return i.FLOAT;if(n===Cs)return i.HALF_FLOAT;if(n===ch)return i.ALPHA;if(n===hh)return i.RGB;if(n===dn)return i.RGBA;if(n===bs)return i.DEPTH_COMPONENT;if(n===Ss)return i.DEPTH_STENCIL;if(n===uh)return i.RED;if(n===Go)return i.RED_INTEGER;if(n===dh)return i.RG;if(n===Wo)return i.RG_INTEGER;if(n===$o)return i.RGBA_INTEGER;if(n===mr||n===gr||n===_r||n===vr)if(a===at)if(r=e.get("WEBGL_compressed_texture_s3tc_srgb"),r!==null){if(n===mr)return r.COMPRESSED_SRGB_S3TC_DXT1_EXT;if(n===gr)return r.COMPRESSED_SRGB_ALPHA_S3TC_DXT1_EXT;if(n===_r)return r.COMPRESSED_SRGB_ALPHA_S3TC_DXT3_EXT;if(n===vr)return r.COMPRESSED_SRGB_ALPHA_S3TC_DXT5_EXT}else return null;else if(r=e.get("WEBGL_compressed_texture_s3tc"),r!==null){if(n===mr)return r.COMPRESSED_RGB_S3TC_DXT1_EXT;if(n===gr)return r.COMPRESSED_RGBA_S3TC_DXT1_EXT;if(n===_r)return r.COMPRESSED_RGBA_S3TC_DXT3_EXT;if(n===vr)return r.COMPRESSED_RGBA_S3TC_DXT5_EXT}else return null;if(n===qa||n===Xa||n===Ya||n===ja)if(r=e.get("WEBGL_compressed_texture_pvrtc"),r!==null){if(n===qa)return r.COMPRESSED_RGB_PVRTC_4BPPV1_IMG;if(n===Xa)return r.COMPRESSED_RGB_PVRTC_2BPPV1_IMG;if(n===Ya)return r.COMPRESSED_RGBA_PVRTC_4BPPV1_IMG;if(n===ja)return r.COMPRESSED_RGBA_PVRTC_2BPPV1_IMG}else return null;if(n===Ka||n===Za||n===Ja)if(r=e.get("WEBGL_compressed_texture_etc"),r!==null){if(n===Ka||n===Za)return a===at?r.COMPRESSED_SRGB8_ETC2:r.COMPRESSED_RGB8_ETC2;if(n===Ja)return a===at?r.COMPRESSED_SRGB8_ALPHA8_ETC2_EAC:r.COMPRESSED_RGBA8_ETC2_EAC}else return null;if(n===Qa||n===eo||n===to||n===no||n===io||n===so||n===ro||n===ao||n===oo||n===lo||n===co||n===ho||n===uo||n===fo)if(r=e.get("WEBGL_compressed_texture_astc"),r!==null){if(n===Qa)return a===at?r.COMPRESSED_SRGB8_ALPHA8_ASTC_4x4_KHR:r.COMPRESSED_RGBA_ASTC_4x4_KHR;if(n===eo)return a===at?r.COMPRESSED_SRGB8_ALPHA8_ASTC_5x4_KHR:r.COMPRESSED_RGBA_ASTC_5x4_KHR;if(n===to)return a===at?r.COMPRESSED_SRGB8_ALPHA8_ASTC_5x5_KHR:r.COMPRESSED_RGBA_ASTC_5x5_KHR;if(n===no)return a===at?r.COMPRESSED_SRGB8_ALPHA8_ASTC_6x5_KHR:r.COMPRESSED_RGBA_ASTC_6x5_KHR;if(n===io)return a===at?r.COMPRESSED_SRGB8_ALPHA8_ASTC_6x6_KHR:r.COMPRESSED_RGBA_ASTC_6x6_KHR;if(n===so)return a===at?r.COMPRESSED_SRGB8_ALPHA8_ASTC_8x5_KHR:r.COMPRESSED_RGBA_ASTC_8x5_KHR;if(n===ro)return a===at?r.COMPRESSED_SRGB8_ALPHA8_ASTC_8x6_KHR:r.COMPRESSED_RGBA_ASTC_8x6_KHR;if(n===ao)return a===at?r.COMPRESSED_SRGB8_ALPHA8_ASTC_8x8_KHR:r.COMPRESSED_RGBA_ASTC_8x8_KHR;if(n===oo)return a===at?r.COMPRESSED_SRGB8_ALPHA8_ASTC_10x5_KHR:r.COMPRESSED_RGBA_ASTC_10x5_KHR;if(n===lo)return a===at?r.COMPRESSED_SRGB8_ALPHA8_ASTC_10x6_KHR:r.COMPRESSED_RGBA_ASTC_10x6_KHR;if(n===co)return a===at?r.COMPRESSED_SRGB8_ALPHA8_ASTC_10x8_KHR:r.COMPRESSED_RGBA_ASTC_10x8_KHR;if(n===ho)return a===at?r.COMPRESSED_SRGB8_ALPHA8_ASTC_10x10_KHR:r.COMPRESSED_RGBA_ASTC_10x10_KHR;if(n===uo)return a===at?r.COMPRESSED_SRGB8_ALPHA8_ASTC_12x10_KHR:r.COMPRESSED_RGBA_ASTC_12x10_KHR;if(n===fo)return a===at?r.COMPRESSED_SRGB8_ALPHA8_ASTC_12x12_KHR:r.COMPRESSED_RGBA_ASTC_12x12_KHR}else return null;if(n===po||n===mo||n===go)if(r=e.get("EXT_texture_compression_bptc"),r!==null){if(n===po)return a===at?r.COMPRESSED_SRGB_ALPHA_BPTC_UNORM_EXT:r.COMPRESSED_RGBA_BPTC_UNORM_EXT;if(n===mo)return r.COMPRESSED_RGB_BPTC_SIGNED_FLOAT_EXT;if(n===go)return r.COMPRESSED_RGB_BPTC_UNSIGNED_FLOAT_EXT}else return null;if(n===_o||n===vo||n===xo||n===yo)if(r=e.get("EXT_texture_compression_rgtc"),r!==null){if(n===_o)return r.COMPRESSED_RED_RGTC1_EXT;if(n===vo)return r.COMPRESSED_SIGNED_RED_RGTC1_EXT;if(n===xo)return r.COMPRESSED_RED_GREEN_RGTC2_EXT;if(n===yo)return r.COMPRESSED_SIGNED_RED_GREEN_RGTC2_EXT}else return null;return n===ws?i.UNSIGNED_INT_24_8:i[n]!==void 0?i[n]:null}return{convert:t}}const v0=`
void main() {

	gl_Position = vec4( position, 1.0 );

}`,x0=`
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

}`;class y0{constructor(){this.texture=null,this.mesh=null,this.depthNear=0,this.depthFar=0}init(e,t){if(this.texture===null){const n=new Ah(e.texture);(e.depthNear!==t.depthNear||e.depthFar!==t.depthFar)&&(this.depthNear=e.depthNear,this.depthFar=e.depthFar),this.texture=n}}getMesh(e){if(this.texture!==null&&this.mesh===null){const t=e.cameras[0].viewport,n=new ti({vertexShader:v0,fragmentShader:x0,uniforms:{depthColor:{value:this.texture},depthWidth:{value:t.z},depthHeight:{value:t.w}}});this.mesh=new Ot(new Nr(20,20),n)}return this.mesh}reset(){this.texture=null,this.mesh=null}getDepthTexture(){return this.texture}}class M0 extends wi{constructor(e,t){super();const n=this;let s=null,r=1,a=null,o="local-floor",c=1,l=null,h=null,u=null,d=null,p=null,_=null;const v=typeof XRWebGLBinding<"u",m=new y0,f={},A=t.getContextAttributes();let T=null,b=null;const P=[],C=[],D=new Ve;let N=null;const w=new on;w.viewport=new Mt;const M=new on;M.viewport=new Mt;const S=[w,M],L=new Bf;let O=null,V=null;this.cameraAutoUpdate=!0,this.enabled=!1,this.isPresenting=!1,this.getController=function(K){let J=P[K];return J===void 0&&(J=new ga,P[K]=J),J.getTargetRaySpace()},this.getControllerGrip=function(K){let J=P[K];return J===void 0&&(J=new ga,P[K]=J),J.getGripSpace()},this.getHand=function(K){let J=P[K];return J===void 0&&(J=new ga,P[K]=J),J.getHandSpace()};function z(K){const J=C.indexOf(K.inputSource);if(J===-1)return;const F=P[J];F!==void 0&&(F.update(K.inputSource,K.frame,l||a),F.dispatchEvent({type:K.type,data:K.inputSource}))}function Y(){s.removeEventListener("select",z),s.removeEventListener("selectstart",z),s.removeEventListener("selectend",z),s.removeEventListener("squeeze",z),s.removeEventListener("squeezestart",z),s.removeEventListener("squeezeend",z),s.removeEventListener("end",Y),s.removeEventListener("inputsourceschange",ee);for(let K=0;K<P.length;K++){const J=C[K];J!==null&&(C[K]=null,P[K].disconnect(J))}O=null,V=null,m.reset();for(const K in f)delete f[K];e.setRenderTarget(T),p=null,d=null,u=null,s=null,b=null,Le.stop(),n.isPresenting=!1,e.setPixelRatio(N),e.setSize(D.width,D.height,!1),n.dispatchEvent({type:"sessionend"})}this.setFramebufferScaleFactor=function(K){r=K,n.isPresenting===!0&&console.warn("THREE.WebXRManager: Cannot change framebuffer scale while presenting.")},this.setReferenceSpaceType=function(K){o=K,n.isPresenting===!0&&console.warn("THREE.WebXRManager: Cannot change reference space type while presenting.")},this.getReferenceSpace=function(){return l||a},this.setReferenceSpace=function(K){l=K},this.getBaseLayer=function(){return d!==null?d:p},this.getBinding=function(){return u===null&&v&&(u=new XRWebGLBinding(s,t)),u},this.getFrame=function(){return _},this.getSession=function(){return s},this.setSession=async function(K){if(s=K,s!==null){if(T=e.getRenderTarget(),s.addEventListener("select",z),s.addEventListener("selectstart",z),s.addEventListener("selectend",z),s.addEventListener("squeeze",z),s.addEventListener("squeezestart",z),s.addEventListener("squeezeend",z),s.addEventListener("end",Y),s.addEventListener("inputsourceschange",ee),A.xrCompatible!==!0&&await t.makeXRCompatible(),N=e.getPixelRatio(),e.getSize(D),v&&"createProjectionLayer"in XRWebGLBinding.prototype){let F=null,te=null,ae=null;A.depth&&(ae=A.stencil?t.DEPTH24_STENCIL8:t.DEPTH_COMPONENT24,F=A.stencil?Ss:bs,te=A.stencil?ws:vi);const be={colorFormat:t.RGBA8,depthFormat:ae,scaleFactor:r};u=this.getBinding(),d=u.createProjectionLayer(be),s.updateRenderState({layers:[d]}),e.setPixelRatio(1),e.setSize(d.textureWidth,d.textureHeight,!1),b=new yi(d.textureWidth,d.textureHeight,{format:dn,type:Sn,depthTexture:new Th(d.textureWidth,d.textureHeight,te,void 0,void 0,void 0,void 0,void 0,void 0,F),stencilBuffer:A.stencil,colorSpace:e.outputColorSpace,samples:A.antialias?4:0,resolveDepthBuffer:d.ignoreDepthValues===!1,resolveStencilBuffer:d.ignoreDepthValues===!1})}else{const F={antialias:A.antialias,alpha:!0,depth:A.depth,stencil:A.stencil,framebufferScaleFactor:r};p=new XRWebGLLayer(s,t,F),s.updateRenderState({baseLayer:p}),e.setPixelRatio(1),e.setSize(p.framebufferWidth,p.framebufferHeight,!1),b=new yi(p.framebufferWidth,p.framebufferHeight,{format:dn,type:Sn,colorSpace:e.outputColorSpace,stencilBuffer:A.stencil,resolveDepthBuffer:p.ignoreDepthValues===!1,resolveStencilBuffer:p.ignoreDepthValues===!1})}b.isXRRenderTarget=!0,this.setFoveation(c),l=null,a=await s.requestReferenceSpace(o),Le.setContext(s),Le.start(),n.isPresenting=!0,n.dispatchEvent({type:"sessionstart"})}},this.getEnvironmentBlendMode=function(){if(s!==null)return s.environmentBlendMode},this.getDepthTexture=function(){return m.getDepthTexture()};function ee(K){for(let J=0;J<K.removed.length;J++){const F=K.removed[J],te=C.indexOf(F);te>=0&&(C[te]=null,P[te].disconnect(F))}for(let J=0;J<K.added.length;J++){const F=K.added[J];let te=C.indexOf(F);if(te===-1){for(let be=0;be<P.length;be++)if(be>=C.length){C.push(F),te=be;break}else if(C[be]===null){C[be]=F,te=be;break}if(te===-1)break}const ae=P[te];ae&&ae.connect(F)}}const j=new U,G=new U;function se(K,J,F){j.setFromMatrixPosition(J.matrixWorld),G.setFromMatrixPosition(F.matrixWorld);const te=j.distanceTo(G),ae=J.projectionMatrix.elements,be=F.projectionMatrix.elements,it=ae[14]/(ae[10]-1),R=ae[14]/(ae[10]+1),We=(ae[9]+1)/ae[5],Pe=(ae[9]-1)/ae[5],Ee=(ae[8]-1)/ae[0],ve=(be[8]+1)/be[0],Ke=it*Ee,xe=it*ve,Xe=te/(-Ee+ve),Ct=Xe*-Ee;if(J.matrixWorld.decompose(K.position,K.quaternion,K.scale),K.translateX(Ct),K.translateZ(Xe),K.matrixWorld.compose(K.position,K.quaternion,K.scale),K.matrixWorldInverse.copy(K.matrixWorld).invert(),ae[10]===-1)K.projectionMatrix.copy(J.projectionMatrix),K.projectionMatrixInverse.copy(J.projectionMatrixInverse);else{const wt=it+Xe,E=R+Xe,x=Ke-Ct,W=xe+(te-Ct),Q=We*R/E*wt,re=Pe*R/E*wt;K.projectionMatrix.makePerspective(x,W,Q,re,wt,E),K.projectionMatrixInverse.copy(K.projectionMatrix).invert()}}function H(K,J){J===null?K.matrixWorld.copy(K.matrix):K.matrixWorld.multiplyMatrices(J.matrixWorld,K.matrix),K.matrixWorldInverse.copy(K.matrixWorld).invert()}this.updateCamera=function(K){if(s===null)return;let J=K.near,F=K.far;m.texture!==null&&(m.depthNear>0&&(J=m.depthNear),m.depthFar>0&&(F=m.depthFar)),L.near=M.near=w.near=J,L.far=M.far=w.far=F,(O!==L.near||V!==L.far)&&(s.updateRenderState({depthNear:L.near,depthFar:L.far}),O=L.near,V=L.far),L.layers.mask=K.layers.mask|6,w.layers.mask=L.layers.mask&3,M.layers.mask=L.layers.mask&5;const te=K.parent,ae=L.cameras;H(L,te);for(let be=0;be<ae.length;be++)H(ae[be],te);ae.length===2?se(L,w,M):L.projectionMatrix.copy(w.projectionMatrix),ie(K,L,te)};function ie(K,J,F){F===null?K.matrix.copy(J.matrixWorld):(K.matrix.copy(F.matrixWorld),K.matrix.invert(),K.matrix.multiply(J.matrixWorld)),K.matrix.decompose(K.position,K.quaternion,K.scale),K.updateMatrixWorld(!0),K.projectionMatrix.copy(J.projectionMatrix),K.projectionMatrixInverse.copy(J.projectionMatrixInverse),K.isPerspectiveCamera&&(K.fov=Mo*2*Math.atan(1/K.projectionMatrix.elements[5]),K.zoom=1)}this.getCamera=function(){return L},this.getFoveation=function(){if(!(d===null&&p===null))return c},this.setFoveation=function(K){c=K,d!==null&&(d.fixedFoveation=K),p!==null&&p.fixedFoveation!==void 0&&(p.fixedFoveation=K)},this.hasDepthSensing=function(){return m.texture!==null},this.getDepthSensingMesh=function(){return m.getMesh(L)},this.getCameraTexture=function(K){return f[K]};let Ce=null;function Oe(K,J){if(h=J.getViewerPose(l||a),_=J,h!==null){const F=h.views;p!==null&&(e.setRenderTargetFramebuffer(b,p.framebuffer),e.setRenderTarget(b));let te=!1;F.length!==L.cameras.length&&(L.cameras.length=0,te=!0);for(let R=0;R<F.length;R++){const We=F[R];let Pe=null;if(p!==null)Pe=p.getViewport(We);else{const ve=u.getViewSubImage(d,We);Pe=ve.viewport,R===0&&(e.setRenderTargetTextures(b,ve.colorTexture,ve.depthStencilTexture),e.setRenderTarget(b))}let Ee=S[R];Ee===void 0&&(Ee=new on,Ee.layers.enable(R),Ee.viewport=new Mt,S[R]=Ee),Ee.matrix.fromArray(We.transform.matrix),Ee.matrix.decompose(Ee.position,Ee.quaternion,Ee.scale),Ee.projectionMatrix.fromArray(We.projectionMatrix),Ee.projectionMatrixInverse.copy(Ee.projectionMatrix).invert(),Ee.viewport.set(Pe.x,Pe.y,Pe.width,Pe.height),R===0&&(L.matrix.copy(Ee.matrix),L.matrix.decompose(L.position,L.quaternion,L.scale)),te===!0&&L.cameras.push(Ee)}const ae=s.enabledFeatures;if(ae&&ae.includes("depth-sensing")&&s.depthUsage=="gpu-optimized"&&v){u=n.getBinding();const R=u.getDepthInformation(F[0]);R&&R.isValid&&R.texture&&m.init(R,s.renderState)}if(ae&&ae.includes("camera-access")&&v){e.state.unbindTexture(),u=n.getBinding();for(let R=0;R<F.length;R++){const We=F[R].camera;if(We){let Pe=f[We];Pe||(Pe=new Ah,f[We]=Pe);const Ee=u.getCameraImage(We);Pe.sourceTexture=Ee}}}}for(let F=0;F<P.length;F++){const te=C[F],ae=P[F];te!==null&&ae!==void 0&&ae.update(te,J,l||a)}Ce&&Ce(K,J),J.detectedPlanes&&n.dispatchEvent({type:"planesdetected",data:J}),_=null}const Le=new Ph;Le.setAnimationLoop(Oe),this.setAnimationLoop=function(K){Ce=K},this.dispose=function(){}}}const hi=new En,w0=new mt;function b0(i,e){function t(m,f){m.matrixAutoUpdate===!0&&m.updateMatrix(),f.value.copy(m.matrix)}function n(m,f){f.color.getRGB(m.fogColor.value,yh(i)),f.isFog?(m.fogNear.value=f.near,m.fogFar.value=f.far):f.isFogExp2&&(m.fogDensity.value=f.density)}function s(m,f,A,T,b){f.isMeshBasicMaterial||f.isMeshLambertMaterial?r(m,f):f.isMeshToonMaterial?(r(m,f),u(m,f)):f.isMeshPhongMaterial?(r(m,f),h(m,f)):f.isMeshStandardMaterial?(r(m,f),d(m,f),f.isMeshPhysicalMaterial&&p(m,f,b)):f.isMeshMatcapMaterial?(r(m,f),_(m,f)):f.isMeshDepthMaterial?r(m,f):f.isMeshDistanceMaterial?(r(m,f),v(m,f)):f.isMeshNormalMaterial?r(m,f):f.isLineBasicMaterial?(a(m,f),f.isLineDashedMaterial&&o(m,f)):f.isPointsMaterial?c(m,f,A,T):f.isSpriteMaterial?l(m,f):f.isShadowMaterial?(m.color.value.copy(f.color),m.opacity.value=f.opacity):f.isShaderMaterial&&(f.uniformsNeedUpdate=!1)}function r(m,f){m.opacity.value=f.opacity,f.color&&m.diffuse.value.copy(f.color),f.emissive&&m.emissive.value.copy(f.emissive).multiplyScalar(f.emissiveIntensity),f.map&&(m.map.value=f.map,t(f.map,m.mapTransform)),f.alphaMap&&(m.alphaMap.value=f.alphaMap,t(f.alphaMap,m.alphaMapTransform)),f.bumpMap&&(m.bumpMap.value=f.bumpMap,t(f.bumpMap,m.bumpMapTransform),m.bumpScale.value=f.bumpScale,f.side===qt&&(m.bumpScale.value*=-1)),f.normalMap&&(m.normalMap.value=f.normalMap,t(f.normalMap,m.normalMapTransform),m.normalScale.value.copy(f.normalScale),f.side===qt&&m.normalScale.value.negate()),f.displacementMap&&(m.displacementMap.value=f.displacementMap,t(f.displacementMap,m.displacementMapTransform),m.displacementScale.value=f.displacementScale,m.displacementBias.value=f.displacementBias),f.emissiveMap&&(m.emissiveMap.value=f.emissiveMap,t(f.emissiveMap,m.emissiveMapTransform)),f.specularMap&&(m.specularMap.value=f.specularMap,t(f.specularMap,m.specularMapTransform)),f.alphaTest>0&&(m.alphaTest.value=f.alphaTest);const A=e.get(f),T=A.envMap,b=A.envMapRotation;T&&(m.envMap.value=T,hi.copy(b),hi.x*=-1,hi.y*=-1,hi.z*=-1,T.isCubeTexture&&T.isRenderTargetTexture===!1&&(hi.y*=-1,hi.z*=-1),m.envMapRotation.value.setFromMatrix4(w0.makeRotationFromEuler(hi)),m.flipEnvMap.value=T.isCubeTexture&&T.isRenderTargetTexture===!1?-1:1,m.reflectivity.value=f.reflectivity,m.ior.value=f.ior,m.refractionRatio.value=f.refractionRatio),f.lightMap&&(m.lightMap.value=f.lightMap,m.lightMapIntensity.value=f.lightMapIntensity,t(f.lightMap,m.lightMapTransform)),f.aoMap&&(m.aoMap.value=f.aoMap,m.aoMapIntensity.value=f.aoMapIntensity,t(f.aoMap,m.aoMapTransform))}function a(m,f){m.diffuse.value.copy(f.color),m.opacity.value=f.opacity,f.map&&(m.map.value=f.map,t(f.map,m.mapTransform))}function o(m,f){m.dashSize.value=f.dashSize,m.totalSize.value=f.dashSize+f.gapSize,m.scale.value=f.scale}function c(m,f,A,T){m.diffuse.value.copy(f.color),m.opacity.value=f.opacity,m.size.value=f.size*A,m.scale.value=T*.5,f.map&&(m.map.value=f.map,t(f.map,m.uvTransform)),f.alphaMap&&(m.alphaMap.value=f.alphaMap,t(f.alphaMap,m.alphaMapTransform)),f.alphaTest>0&&(m.alphaTest.value=f.alphaTest)}function l(m,f){m.diffuse.value.copy(f.color),m.opacity.value=f.opacity,m.rotation.value=f.rotation,f.map&&(m.map.value=f.map,t(f.map,m.mapTransform)),f.alphaMap&&(m.alphaMap.value=f.alphaMap,t(f.alphaMap,m.alphaMapTransform)),f.alphaTest>0&&(m.alphaTest.value=f.alphaTest)}function h(m,f){m.specular.value.copy(f.specular),m.shininess.value=Math.max(f.shininess,1e-4)}function u(m,f){f.gradientMap&&(m.gradientMap.value=f.gradientMap)}function d(m,f){m.metalness.value=f.metalness,f.metalnessMap&&(m.metalnessMap.value=f.metalnessMap,t(f.metalnessMap,m.metalnessMapTransform)),m.roughness.value=f.roughness,f.roughnessMap&&(m.roughnessMap.value=f.roughnessMap,t(f.roughnessMap,m.roughnessMapTransform)),f.envMap&&(m.envMapIntensity.value=f.envMapIntensity)}function p(m,f,A){m.ior.value=f.ior,f.sheen>0&&(m.sheenColor.value.copy(f.sheenColor).multiplyScalar(f.sheen),m.sheenRoughness.value=f.sheenRoughness,f.sheenColorMap&&(m.sheenColorMap.value=f.sheenColorMap,t(f.sheenColorMap,m.sheenColorMapTransform)),f.sheenRoughnessMap&&(m.sheenRoughnessMap.value=f.sheenRoughnessMap,t(f.sheenRoughnessMap,m.sheenRoughnessMapTransform))),f.clearcoat>0&&(m.clearcoat.value=f.clearcoat,m.clearcoatRoughness.value=f.clearcoatRoughness,f.clearcoatMap&&(m.clearcoatMap.value=f.clearcoatMap,t(f.clearcoatMap,m.clearcoatMapTransform)),f.clearcoatRoughnessMap&&(m.clearcoatRoughnessMap.value=f.clearcoatRoughnessMap,t(f.clearcoatRoughnessMap,m.clearcoatRoughnessMapTransform)),f.clearcoatNormalMap&&(m.clearcoatNormalMap.value=f.clearcoatNormalMap,t(f.clearcoatNormalMap,m.clearcoatNormalMapTransform),m.clearcoatNormalScale.value.copy(f.clearcoatNormalScale),f.side===qt&&m.clearcoatNormalScale.value.negate())),f.dispersion>0&&(m.dispersion.value=f.dispersion),f.iridescence>0&&(m.iridescence.value=f.iridescence,m.iridescenceIOR.value=f.iridescenceIOR,m.iridescenceThicknessMinimum.value=f.iridescenceThicknessRange[0],m.iridescenceThicknessMaximum.value=f.iridescenceThicknessRange[1],f.iridescenceMap&&(m.iridescenceMap.value=f.iridescenceMap,t(f.iridescenceMap,m.iridescenceMapTransform)),f.iridescenceThicknessMap&&(m.iridescenceThicknessMap.value=f.iridescenceThicknessMap,t(f.iridescenceThicknessMap,m.iridescenceThicknessMapTransform))),f.transmission>0&&(m.transmission.value=f.transmission,m.transmissionSamplerMap.value=A.texture,m.transmissionSamplerSize.value.set(A.width,A.height),f.transmissionMap&&(m.transmissionMap.value=f.transmissionMap,t(f.transmissionMap,m.transmissionMapTransform)),m.thickness.value=f.thickness,f.thicknessMap&&(m.thicknessMap.value=f.thicknessMap,t(f.thicknessMap,m.thicknessMapTransform)),m.attenuationDistance.value=f.attenuationDistance,m.attenuationColor.value.copy(f.attenuationColor)),f.anisotropy>0&&(m.anisotropyVector.value.set(f.anisotropy*Math.cos(f.anisotropyRotation),f.anisotropy*Math.sin(f.anisotropyRotation)),f.anisotropyMap&&(m.anisotropyMap.value=f.anisotropyMap,t(f.anisotropyMap,m.anisotropyMapTransform))),m.specularIntensity.value=f.specularIntensity,m.specularColor.value.copy(f.specularColor),f.specularColorMap&&(m.specularColorMap.value=f.specularColorMap,t(f.specularColorMap,m.specularColorMapTransform)),f.specularIntensityMap&&(m.specularIntensityMap.value=f.specularIntensityMap,t(f.specularIntensityMap,m.specularIntensityMapTransform))}function _(m,f){f.matcap&&(m.matcap.value=f.matcap)}function v(m,f){const A=e.get(f).light;m.referencePosition.value.setFromMatrixPosition(A.matrixWorld),m.nearDistance.value=A.shadow.camera.near,m.farDistance.value=A.shadow.camera.far}return{refreshFogUniforms:n,refreshMaterialUniforms:s}}function S0(i,e,t,n){let s={},r={},a=[];const o=i.getParameter(i.MAX_UNIFORM_BUFFER_BINDINGS);function c(A,T){const b=T.program;n.uniformBlockBinding(A,b)}function l(A,T){let b=s[A.id];b===void 0&&(_(A),b=h(A),s[A.id]=b,A.addEventListener("dispose",m));const P=T.program;n.updateUBOMapping(A,P);const C=e.render.frame;r[A.id]!==C&&(d(A),r[A.id]=C)}function h(A){const T=u();A.__bindingPointIndex=T;const b=i.createBuffer(),P=A.__size,C=A.usage;return i.bindBuffer(i.UNIFORM_BUFFER,b),i.bufferData(i.UNIFORM_BUFFER,P,C),i.bindBuffer(i.UNIFORM_BUFFER,null),i.bindBufferBase(i.UNIFORM_BUFFER,T,b),b}function u(){for(let A=0;A<o;A++)if(a.indexOf(A)===-1)return a.push(A),A;return console.error("THREE.WebGLRenderer: Maximum number of simultaneously usable uniforms groups reached."),0}function d(A){const T=s[A.id],b=A.uniforms,P=A.__cache;i.bindBuffer(i.UNIFORM_BUFFER,T);for(let C=0,D=b.length;C<D;C++){const N=Array.isArray(b[C])?b[C]:[b[C]];for(let w=0,M=N.length;w<M;w++){const S=N[w];if(p(S,C,w,P)===!0){const L=S.__offset,O=Array.isArray(S.value)?S.value:[S.value];let V=0;for(let z=0;z<O.length;z++){const Y=O[z],ee=v(Y);typeof Y=="number"||typeof Y=="boolean"?(S.__data[0]=Y,i.bufferSubData(i.UNIFORM_BUFFER,L+V,S.__data)):Y.isMatrix3?(S.__data[0]=Y.elements[0],S.__data[1]=Y.elements[1],S.__data[2]=Y.elements[2],S.__data[3]=0,S.__data[4]=Y.elements[3],S.__data[5]=Y.elements[4],S.__data[6]=Y.elements[5],S.__data[7]=0,S.__data[8]=Y.elements[6],S.__data[9]=Y.elements[7],S.__data[10]=Y.elements[8],S.__data[11]=0):(Y.toArray(S.__data,V),V+=ee.storage/Float32Array.BYTES_PER_ELEMENT)}i.bufferSubData(i.UNIFORM_BUFFER,L,S.__data)}}}i.bindBuffer(i.UNIFORM_BUFFER,null)}function p(A,T,b,P){const C=A.value,D=T+"_"+b;if(P[D]===void 0)return typeof C=="number"||typeof C=="boolean"?P[D]=C:P[D]=C.clone(),!0;{const N=P[D];if(typeof C=="number"||typeof C=="boolean"){if(N!==C)return P[D]=C,!0}else if(N.equals(C)===!1)return N.copy(C),!0}return!1}function _(A){const T=A.uniforms;let b=0;const P=16;for(let D=0,N=T.length;D<N;D++){const w=Array.isArray(T[D])?T[D]:[T[D]];for(let M=0,S=w.length;M<S;M++){const L=w[M],O=Array.isArray(L.value)?L.value:[L.value];for(let V=0,z=O.length;V<z;V++){const Y=O[V],ee=v(Y),j=b%P,G=j%ee.boundary,se=j+G;b+=G,se!==0&&P-se<ee.storage&&(b+=P-se),L.__data=new Float32Array(ee.storage/Float32Array.BYTES_PER_ELEMENT),L.__offset=b,b+=ee.storage}}}const C=b%P;return C>0&&(b+=P-C),A.__size=b,A.__cache={},this}function v(A){const T={boundary:0,storage:0};return typeof A=="number"||typeof A=="boolean"?(T.boundary=4,T.storage=4):A.isVector2?(T.boundary=8,T.storage=8):A.isVector3||A.isColor?(T.boundary=16,T.storage=12):A.isVector4?(T.boundary=16,T.storage=16):A.isMatrix3?(T.boundary=48,T.storage=48):A.isMatrix4?(T.boundary=64,T.storage=64):A.isTexture?console.warn("THREE.WebGLRenderer: Texture samplers can not be part of an uniforms group."):console.warn("THREE.WebGLRenderer: Unsupported uniform value type.",A),T}function m(A){const T=A.target;T.removeEventListener("dispose",m);const b=a.indexOf(T.__bindingPointIndex);a.splice(b,1),i.deleteBuffer(s[T.id]),delete s[T.id],delete r[T.id]}function f(){for(const A in s)i.deleteBuffer(s[A]);a=[],s={},r={}}return{bind:c,update:l,dispose:f}}class E0{constructor(e={}){const{canvas:t=tf(),context:n=null,depth:s=!0,stencil:r=!1,alpha:a=!1,antialias:o=!1,premultipliedAlpha:c=!0,preserveDrawingBuffer:l=!1,powerPreference:h="default",failIfMajorPerformanceCaveat:u=!1,reversedDepthBuffer:d=!1}=e;this.isWebGLRenderer=!0;let p;if(n!==null){if(typeof WebGLRenderingContext<"u"&&n instanceof WebGLRenderingContext)throw new Error("THREE.WebGLRenderer: WebGL 1 is not supported since r163.");p=n.getContextAttributes().alpha}else p=a;const _=new Uint32Array(4),v=new Int32Array(4);let m=null,f=null;const A=[],T=[];this.domElement=t,this.debug={checkShaderErrors:!0,onShaderError:null},this.autoClear=!0,this.autoClearColor=!0,this.autoClearDepth=!0,this.autoClearStencil=!0,this.sortObjects=!0,this.clippingPlanes=[],this.localClippingEnabled=!1,this.toneMapping=Jn,this.toneMappingExposure=1,this.transmissionResolutionScale=1;const b=this;let P=!1;this._outputColorSpace=an;let C=0,D=0,N=null,w=-1,M=null;const S=new Mt,L=new Mt;let O=null;const V=new je(0);let z=0,Y=t.width,ee=t.height,j=1,G=null,se=null;const H=new Mt(0,0,Y,ee),ie=new Mt(0,0,Y,ee);let Ce=!1;const Oe=new Yo;let Le=!1,K=!1;const J=new mt,F=new U,te=new Mt,ae={background:null,fog:null,environment:null,overrideMaterial:null,isScene:!0};let be=!1;function it(){return N===null?j:1}let R=n;function We(y,k){return t.getContext(y,k)}try{const y={alpha:!0,depth:s,stencil:r,antialias:o,premultipliedAlpha:c,preserveDrawingBuffer:l,powerPreference:h,failIfMajorPerformanceCaveat:u};if("setAttribute"in t&&t.setAttribute("data-engine",`three.js r${ko}`),t.addEventListener("webglcontextlost",de,!1),t.addEventListener("webglcontextrestored",Me,!1),t.addEventListener("webglcontextcreationerror",oe,!1),R===null){const k="webgl2";if(R=We(k,y),R===null)throw We(k)?new Error("Error creating WebGL context with your selected attributes."):new Error("Error creating WebGL context.")}}catch(y){throw console.error("THREE.WebGLRenderer: "+y.message),y}let Pe,Ee,ve,Ke,xe,Xe,Ct,wt,E,x,W,Q,re,Z,De,ue,Te,Ae,ce,ge,ke,Re,pe,$e;function I(){Pe=new Ng(R),Pe.init(),Re=new _0(R,Pe),Ee=new Rg(R,Pe,e,Re),ve=new m0(R,Pe),Ee.reversedDepthBuffer&&d&&ve.buffers.depth.setReversed(!0),Ke=new kg(R),xe=new n0,Xe=new g0(R,Pe,ve,xe,Ee,Re,Ke),Ct=new Pg(b),wt=new Ug(b),E=new Wf(R),pe=new Tg(R,E),x=new Fg(R,E,Ke,pe),W=new zg(R,x,E,Ke),ce=new Bg(R,Ee,Xe),ue=new Cg(xe),Q=new t0(b,Ct,wt,Pe,Ee,pe,ue),re=new b0(b,xe),Z=new s0,De=new h0(Pe),Ae=new Eg(b,Ct,wt,ve,W,p,c),Te=new f0(b,W,Ee),$e=new S0(R,Ke,Ee,ve),ge=new Ag(R,Pe,Ke),ke=new Og(R,Pe,Ke),Ke.programs=Q.programs,b.capabilities=Ee,b.extensions=Pe,b.properties=xe,b.renderLists=Z,b.shadowMap=Te,b.state=ve,b.info=Ke}I();const he=new M0(b,R);this.xr=he,this.getContext=function(){return R},this.getContextAttributes=function(){return R.getContextAttributes()},this.forceContextLoss=function(){const y=Pe.get("WEBGL_lose_context");y&&y.loseContext()},this.forceContextRestore=function(){const y=Pe.get("WEBGL_lose_context");y&&y.restoreContext()},this.getPixelRatio=function(){return j},this.setPixelRatio=function(y){y!==void 0&&(j=y,this.setSize(Y,ee,!1))},this.getSize=function(y){return y.set(Y,ee)},this.setSize=function(y,k,q=!0){if(he.isPresenting){console.warn("THREE.WebGLRenderer: Can't change size while VR device is presenting.");return}Y=y,ee=k,t.width=Math.floor(y*j),t.height=Math.floor(k*j),q===!0&&(t.style.width=y+"px",t.style.height=k+"px"),this.setViewport(0,0,y,k)},this.getDrawingBufferSize=function(y){return y.set(Y*j,ee*j).floor()},this.setDrawingBufferSize=function(y,k,q){Y=y,ee=k,j=q,t.width=Math.floor(y*q),t.height=Math.floor(k*q),this.setViewport(0,0,y,k)},this.getCurrentViewport=function(y){return y.copy(S)},this.getViewport=function(y){return y.copy(H)},this.setViewport=function(y,k,q,X){y.isVector4?H.set(y.x,y.y,y.z,y.w):H.set(y,k,q,X),ve.viewport(S.copy(H).multiplyScalar(j).round())},this.getScissor=function(y){return y.copy(ie)},this.setScissor=function(y,k,q,X){y.isVector4?ie.set(y.x,y.y,y.z,y.w):ie.set(y,k,q,X),ve.scissor(L.copy(ie).multiplyScalar(j).round())},this.getScissorTest=function(){return Ce},this.setScissorTest=function(y){ve.setScissorTest(Ce=y)},this.setOpaqueSort=function(y){G=y},this.setTransparentSort=function(y){se=y},this.getClearColor=function(y){return y.copy(Ae.getClearColor())},this.setClearColor=function(){Ae.setClearColor(...arguments)},this.getClearAlpha=function(){return Ae.getClearAlpha()},this.setClearAlpha=function(){Ae.setClearAlpha(...arguments)},this.clear=function(y=!0,k=!0,q=!0){let X=0;if(y){let B=!1;if(N!==null){const le=N.texture.format;B=le===$o||le===Wo||le===Go}if(B){const le=N.texture.type,me=le===Sn||le===vi||le===Ms||le===ws||le===Ho||le===Vo,we=Ae.getClearColor(),ye=Ae.getClearAlpha(),Fe=we.r,He=we.g,Ie=we.b;me?(_[0]=Fe,_[1]=He,_[2]=Ie,_[3]=ye,R.clearBufferuiv(R.COLOR,0,_)):(v[0]=Fe,v[1]=He,v[2]=Ie,v[3]=ye,R.clearBufferiv(R.COLOR,0,v))}else X|=R.COLOR_BUFFER_BIT}k&&(X|=R.DEPTH_BUFFER_BIT),q&&(X|=R.STENCIL_BUFFER_BIT,this.state.buffers.stencil.setMask(4294967295)),R.clear(X)},this.clearColor=function(){this.clear(!0,!1,!1)},this.clearDepth=function(){this.clear(!1,!0,!1)},this.clearStencil=function(){this.clear(!1,!1,!0)},this.dispose=function(){t.removeEventListener("webglcontextlost",de,!1),t.removeEventListener("webglcontextrestored",Me,!1),t.removeEventListener("webglcontextcreationerror",oe,!1),Ae.dispose(),Z.dispose(),De.dispose(),xe.dispose(),Ct.dispose(),wt.dispose(),W.dispose(),pe.dispose(),$e.dispose(),Q.dispose(),he.dispose(),he.removeEventListener("sessionstart",mn),he.removeEventListener("sessionend",Jo),ii.stop()};function de(y){y.preventDefault(),console.log("THREE.WebGLRenderer: Context Lost."),P=!0}function Me(){console.log("THREE.WebGLRenderer: Context Restored."),P=!1;const y=Ke.autoReset,k=Te.enabled,q=Te.autoUpdate,X=Te.needsUpdate,B=Te.type;I(),Ke.autoReset=y,Te.enabled=k,Te.autoUpdate=q,Te.needsUpdate=X,Te.type=B}function oe(y){console.error("THREE.WebGLRenderer: A WebGL context could not be created. Reason: ",y.statusMessage)}function ne(y){const k=y.target;k.removeEventListener("dispose",ne),Se(k)}function Se(y){Ge(y),xe.remove(y)}function Ge(y){const k=xe.get(y).programs;k!==void 0&&(k.forEach(function(q){Q.releaseProgram(q)}),y.isShaderMaterial&&Q.releaseShaderCache(y))}this.renderBufferDirect=function(y,k,q,X,B,le){k===null&&(k=ae);const me=B.isMesh&&B.matrixWorld.determinant()<0,we=kh(y,k,q,X,B);ve.setMaterial(X,me);let ye=q.index,Fe=1;if(X.wireframe===!0){if(ye=x.getWireframeAttribute(q),ye===void 0)return;Fe=2}const He=q.drawRange,Ie=q.attributes.position;let Je=He.start*Fe,rt=(He.start+He.count)*Fe;le!==null&&(Je=Math.max(Je,le.start*Fe),rt=Math.min(rt,(le.start+le.count)*Fe)),ye!==null?(Je=Math.max(Je,0),rt=Math.min(rt,ye.count)):Ie!=null&&(Je=Math.max(Je,0),rt=Math.min(rt,Ie.count));const yt=rt-Je;if(yt<0||yt===1/0)return;pe.setup(B,X,we,q,ye);let ft,ct=ge;if(ye!==null&&(ft=E.get(ye),ct=ke,ct.setIndex(ft)),B.isMesh)X.wireframe===!0?(ve.setLineWidth(X.wireframeLinewidth*it()),ct.setMode(R.LINES)):ct.setMode(R.TRIANGLES);else if(B.isLine){let Ue=X.linewidth;Ue===void 0&&(Ue=1),ve.setLineWidth(Ue*it()),B.isLineSegments?ct.setMode(R.LINES):B.isLineLoop?ct.setMode(R.LINE_LOOP):ct.setMode(R.LINE_STRIP)}else B.isPoints?ct.setMode(R.POINTS):B.isSprite&&ct.setMode(R.TRIANGLES);if(B.isBatchedMesh)if(B._multiDrawInstances!==null)Es("THREE.WebGLRenderer: renderMultiDrawInstances has been deprecated and will be removed in r184. Append to renderMultiDraw arguments and use indirection."),ct.renderMultiDrawInstances(B._multiDrawStarts,B._multiDrawCounts,B._multiDrawCount,B._multiDrawInstances);else if(Pe.get("WEBGL_multi_draw"))ct.renderMultiDraw(B._multiDrawStarts,B._multiDrawCounts,B._multiDrawCount);else{const Ue=B._multiDrawStarts,gt=B._multiDrawCounts,tt=B._multiDrawCount,jt=ye?E.get(ye).bytesPerElement:1,Si=xe.get(X).currentProgram.getUniforms();for(let Kt=0;Kt<tt;Kt++)Si.setValue(R,"_gl_DrawID",Kt),ct.render(Ue[Kt]/jt,gt[Kt])}else if(B.isInstancedMesh)ct.renderInstances(Je,yt,B.count);else if(q.isInstancedBufferGeometry){const Ue=q._maxInstanceCount!==void 0?q._maxInstanceCount:1/0,gt=Math.min(q.instanceCount,Ue);ct.renderInstances(Je,yt,gt)}else ct.render(Je,yt)};function ht(y,k,q){y.transparent===!0&&y.side===In&&y.forceSinglePass===!1?(y.side=qt,y.needsUpdate=!0,Ns(y,k,q),y.side=ei,y.needsUpdate=!0,Ns(y,k,q),y.side=In):Ns(y,k,q)}this.compile=function(y,k,q=null){q===null&&(q=y),f=De.get(q),f.init(k),T.push(f),q.traverseVisible(function(B){B.isLight&&B.layers.test(k.layers)&&(f.pushLight(B),B.castShadow&&f.pushShadow(B))}),y!==q&&y.traverseVisible(function(B){B.isLight&&B.layers.test(k.layers)&&(f.pushLight(B),B.castShadow&&f.pushShadow(B))}),f.setupLights();const X=new Set;return y.traverse(function(B){if(!(B.isMesh||B.isPoints||B.isLine||B.isSprite))return;const le=B.material;if(le)if(Array.isArray(le))for(let me=0;me<le.length;me++){const we=le[me];ht(we,q,B),X.add(we)}else ht(le,q,B),X.add(le)}),f=T.pop(),X},this.compileAsync=function(y,k,q=null){const X=this.compile(y,k,q);return new Promise(B=>{function le(){if(X.forEach(function(me){xe.get(me).currentProgram.isReady()&&X.delete(me)}),X.size===0){B(y);return}setTimeout(le,10)}Pe.get("KHR_parallel_shader_compile")!==null?le():setTimeout(le,10)})};let st=null;function Tn(y){st&&st(y)}function mn(){ii.stop()}function Jo(){ii.start()}const ii=new Ph;ii.setAnimationLoop(Tn),typeof self<"u"&&ii.setContext(self),this.setAnimationLoop=function(y){st=y,he.setAnimationLoop(y),y===null?ii.stop():ii.start()},he.addEventListener("sessionstart",mn),he.addEventListener("sessionend",Jo),this.render=function(y,k){if(k!==void 0&&k.isCamera!==!0){console.error("THREE.WebGLRenderer.render: camera is not an instance of THREE.Camera.");return}if(P===!0)return;if(y.matrixWorldAutoUpdate===!0&&y.updateMatrixWorld(),k.parent===null&&k.matrixWorldAutoUpdate===!0&&k.updateMatrixWorld(),he.enabled===!0&&he.isPresenting===!0&&(he.cameraAutoUpdate===!0&&he.updateCamera(k),k=he.getCamera()),y.isScene===!0&&y.onBeforeRender(b,y,k,N),f=De.get(y,T.length),f.init(k),T.push(f),J.multiplyMatrices(k.projectionMatrix,k.matrixWorldInverse),Oe.setFromProjectionMatrix(J,xn,k.reversedDepth),K=this.localClippingEnabled,Le=ue.init(this.clippingPlanes,K),m=Z.get(y,A.length),m.init(),A.push(m),he.enabled===!0&&he.isPresenting===!0){const le=b.xr.getDepthSensingMesh();le!==null&&Or(le,k,-1/0,b.sortObjects)}Or(y,k,0,b.sortObjects),m.finish(),b.sortObjects===!0&&m.sort(G,se),be=he.enabled===!1||he.isPresenting===!1||he.hasDepthSensing()===!1,be&&Ae.addToRenderList(m,y),this.info.render.frame++,Le===!0&&ue.beginShadows();const q=f.state.shadowsArray;Te.render(q,y,k),Le===!0&&ue.endShadows(),this.info.autoReset===!0&&this.info.reset();const X=m.opaque,B=m.transmissive;if(f.setupLights(),k.isArrayCamera){const le=k.cameras;if(B.length>0)for(let me=0,we=le.length;me<we;me++){const ye=le[me];el(X,B,y,ye)}be&&Ae.render(y);for(let me=0,we=le.length;me<we;me++){const ye=le[me];Qo(m,y,ye,ye.viewport)}}else B.length>0&&el(X,B,y,k),be&&Ae.render(y),Qo(m,y,k);N!==null&&D===0&&(Xe.updateMultisampleRenderTarget(N),Xe.updateRenderTargetMipmap(N)),y.isScene===!0&&y.onAfterRender(b,y,k),pe.resetDefaultState(),w=-1,M=null,T.pop(),T.length>0?(f=T[T.length-1],Le===!0&&ue.setGlobalState(b.clippingPlanes,f.state.camera)):f=null,A.pop(),A.length>0?m=A[A.length-1]:m=null};function Or(y,k,q,X){if(y.visible===!1)return;if(y.layers.test(k.layers)){if(y.isGroup)q=y.renderOrder;else if(y.isLOD)y.autoUpdate===!0&&y.update(k);else if(y.isLight)f.pushLight(y),y.castShadow&&f.pushShadow(y);else if(y.isSprite){if(!y.frustumCulled||Oe.intersectsSprite(y)){X&&te.setFromMatrixPosition(y.matrixWorld).applyMatrix4(J);const me=W.update(y),we=y.material;we.visible&&m.push(y,me,we,q,te.z,null)}}else if((y.isMesh||y.isLine||y.isPoints)&&(!y.frustumCulled||Oe.intersectsObject(y))){const me=W.update(y),we=y.material;if(X&&(y.boundingSphere!==void 0?(y.boundingSphere===null&&y.computeBoundingSphere(),te.copy(y.boundingSphere.center)):(me.boundingSphere===null&&me.computeBoundingSphere(),te.copy(me.boundingSphere.center)),te.applyMatrix4(y.matrixWorld).applyMatrix4(J)),Array.isArray(we)){const ye=me.groups;for(let Fe=0,He=ye.length;Fe<He;Fe++){const Ie=ye[Fe],Je=we[Ie.materialIndex];Je&&Je.visible&&m.push(y,me,Je,q,te.z,Ie)}}else we.visible&&m.push(y,me,we,q,te.z,null)}}const le=y.children;for(let me=0,we=le.length;me<we;me++)Or(le[me],k,q,X)}function Qo(y,k,q,X){const B=y.opaque,le=y.transmissive,me=y.transparent;f.setupLightsView(q),Le===!0&&ue.setGlobalState(b.clippingPlanes,q),X&&ve.viewport(S.copy(X)),B.length>0&&Us(B,k,q),le.length>0&&Us(le,k,q),me.length>0&&Us(me,k,q),ve.buffers.depth.setTest(!0),ve.buffers.depth.setMask(!0),ve.buffers.color.setMask(!0),ve.setPolygonOffset(!1)}function el(y,k,q,X){if((q.isScene===!0?q.overrideMaterial:null)!==null)return;f.state.transmissionRenderTarget[X.id]===void 0&&(f.state.transmissionRenderTarget[X.id]=new yi(1,1,{generateMipmaps:!0,type:Pe.has("EXT_color_buffer_half_float")||Pe.has("EXT_color_buffer_float")?Cs:Sn,minFilter:mi,samples:4,stencilBuffer:r,resolveDepthBuffer:!1,resolveStencilBuffer:!1,colorSpace:nt.workingColorSpace}));const le=f.state.transmissionRenderTarget[X.id],me=X.viewport||S;le.setSize(me.z*b.transmissionResolutionScale,me.w*b.transmissionResolutionScale);const we=b.getRenderTarget(),ye=b.getActiveCubeFace(),Fe=b.getActiveMipmapLevel();b.setRenderTarget(le),b.getClearColor(V),z=b.getClearAlpha(),z<1&&b.setClearColor(16777215,.5),b.clear(),be&&Ae.render(q);const He=b.toneMapping;b.toneMapping=Jn;const Ie=X.viewport;if(X.viewport!==void 0&&(X.viewport=void 0),f.setupLightsView(X),Le===!0&&ue.setGlobalState(b.clippingPlanes,X),Us(y,q,X),Xe.updateMultisampleRenderTarget(le),Xe.updateRenderTargetMipmap(le),Pe.has("WEBGL_multisampled_render_to_texture")===!1){let Je=!1;for(let rt=0,yt=k.length;rt<yt;rt++){const ft=k[rt],ct=ft.object,Ue=ft.geometry,gt=ft.material,tt=ft.group;if(gt.side===In&&ct.layers.test(X.layers)){const jt=gt.side;gt.side=qt,gt.needsUpdate=!0,tl(ct,q,X,Ue,gt,tt),gt.side=jt,gt.needsUpdate=!0,Je=!0}}Je===!0&&(Xe.updateMultisampleRenderTarget(le),Xe.updateRenderTargetMipmap(le))}b.setRenderTarget(we,ye,Fe),b.setClearColor(V,z),Ie!==void 0&&(X.viewport=Ie),b.toneMapping=He}function Us(y,k,q){const X=k.isScene===!0?k.overrideMaterial:null;for(let B=0,le=y.length;B<le;B++){const me=y[B],we=me.object,ye=me.geometry,Fe=me.group;let He=me.material;He.allowOverride===!0&&X!==null&&(He=X),we.layers.test(q.layers)&&tl(we,k,q,ye,He,Fe)}}function tl(y,k,q,X,B,le){y.onBeforeRender(b,k,q,X,B,le),y.modelViewMatrix.multiplyMatrices(q.matrixWorldInverse,y.matrixWorld),y.normalMatrix.getNormalMatrix(y.modelViewMatrix),B.onBeforeRender(b,k,q,X,y,le),B.transparent===!0&&B.side===In&&B.forceSinglePass===!1?(B.side=qt,B.needsUpdate=!0,b.renderBufferDirect(q,k,X,B,y,le),B.side=ei,B.needsUpdate=!0,b.renderBufferDirect(q,k,X,B,y,le),B.side=In):b.renderBufferDirect(q,k,X,B,y,le),y.onAfterRender(b,k,q,X,B,le)}function Ns(y,k,q){k.isScene!==!0&&(k=ae);const X=xe.get(y),B=f.state.lights,le=f.state.shadowsArray,me=B.state.version,we=Q.getParameters(y,B.state,le,k,q),ye=Q.getProgramCacheKey(we);let Fe=X.programs;X.environment=y.isMeshStandardMaterial?k.environment:null,X.fog=k.fog,X.envMap=(y.isMeshStandardMaterial?wt:Ct).get(y.envMap||X.environment),X.envMapRotation=X.environment!==null&&y.envMap===null?k.environmentRotation:y.envMapRotation,Fe===void 0&&(y.addEventListener("dispose",ne),Fe=new Map,X.programs=Fe);let He=Fe.get(ye);if(He!==void 0){if(X.currentProgram===He&&X.lightsStateVersion===me)return il(y,we),He}else we.uniforms=Q.getUniforms(y),y.onBeforeCompile(we,b),He=Q.acquireProgram(we,ye),Fe.set(ye,He),X.uniforms=we.uniforms;const Ie=X.uniforms;return(!y.isShaderMaterial&&!y.isRawShaderMaterial||y.clipping===!0)&&(Ie.clippingPlanes=ue.uniform),il(y,we),X.needsLights=zh(y),X.lightsStateVersion=me,X.needsLights&&(Ie.ambientLightColor.value=B.state.ambient,Ie.lightProbe.value=B.state.probe,Ie.directionalLights.value=B.state.directional,Ie.directionalLightShadows.value=B.state.directionalShadow,Ie.spotLights.value=B.state.spot,Ie.spotLightShadows.value=B.state.spotShadow,Ie.rectAreaLights.value=B.state.rectArea,Ie.ltc_1.value=B.state.rectAreaLTC1,Ie.ltc_2.value=B.state.rectAreaLTC2,Ie.pointLights.value=B.state.point,Ie.pointLightShadows.value=B.state.pointShadow,Ie.hemisphereLights.value=B.state.hemi,Ie.directionalShadowMap.value=B.state.directionalShadowMap,Ie.directionalShadowMatrix.value=B.state.directionalShadowMatrix,Ie.spotShadowMap.value=B.state.spotShadowMap,Ie.spotLightMatrix.value=B.state.spotLightMatrix,Ie.spotLightMap.value=B.state.spotLightMap,Ie.pointShadowMap.value=B.state.pointShadowMap,Ie.pointShadowMatrix.value=B.state.pointShadowMatrix),X.currentProgram=He,X.uniformsList=null,He}function nl(y){if(y.uniformsList===null){const k=y.currentProgram.getUniforms();y.uniformsList=yr.seqWithValue(k.seq,y.uniforms)}return y.uniformsList}function il(y,k){const q=xe.get(y);q.outputColorSpace=k.outputColorSpace,q.batching=k.batching,q.batchingColor=k.batchingColor,q.instancing=k.instancing,q.instancingColor=k.instancingColor,q.instancingMorph=k.instancingMorph,q.skinning=k.skinning,q.morphTargets=k.morphTargets,q.morphNormals=k.morphNormals,q.morphColors=k.morphColors,q.morphTargetsCount=k.morphTargetsCount,q.numClippingPlanes=k.numClippingPlanes,q.numIntersection=k.numClipIntersection,q.vertexAlphas=k.vertexAlphas,q.vertexTangents=k.vertexTangents,q.toneMapping=k.toneMapping}function kh(y,k,q,X,B){k.isScene!==!0&&(k=ae),Xe.resetTextureUnits();const le=k.fog,me=X.isMeshStandardMaterial?k.environment:null,we=N===null?b.outputColorSpace:N.isXRRenderTarget===!0?N.texture.colorSpace:Ji,ye=(X.isMeshStandardMaterial?wt:Ct).get(X.envMap||me),Fe=X.vertexColors===!0&&!!q.attributes.color&&q.attributes.color.itemSize===4,He=!!q.attributes.tangent&&(!!X.normalMap||X.anisotropy>0),Ie=!!q.morphAttributes.position,Je=!!q.morphAttributes.normal,rt=!!q.morphAttributes.color;let yt=Jn;X.toneMapped&&(N===null||N.isXRRenderTarget===!0)&&(yt=b.toneMapping);const ft=q.morphAttributes.position||q.morphAttributes.normal||q.morphAttributes.color,ct=ft!==void 0?ft.length:0,Ue=xe.get(X),gt=f.state.lights;if(Le===!0&&(K===!0||y!==M)){const kt=y===M&&X.id===w;ue.setState(X,y,kt)}let tt=!1;X.version===Ue.__version?(Ue.needsLights&&Ue.lightsStateVersion!==gt.state.version||Ue.outputColorSpace!==we||B.isBatchedMesh&&Ue.batching===!1||!B.isBatchedMesh&&Ue.batching===!0||B.isBatchedMesh&&Ue.batchingColor===!0&&B.colorTexture===null||B.isBatchedMesh&&Ue.batchingColor===!1&&B.colorTexture!==null||B.isInstancedMesh&&Ue.instancing===!1||!B.isInstancedMesh&&Ue.instancing===!0||B.isSkinnedMesh&&Ue.skinning===!1||!B.isSkinnedMesh&&Ue.skinning===!0||B.isInstancedMesh&&Ue.instancingColor===!0&&B.instanceColor===null||B.isInstancedMesh&&Ue.instancingColor===!1&&B.instanceColor!==null||B.isInstancedMesh&&Ue.instancingMorph===!0&&B.morphTexture===null||B.isInstancedMesh&&Ue.instancingMorph===!1&&B.morphTexture!==null||Ue.envMap!==ye||X.fog===!0&&Ue.fog!==le||Ue.numClippingPlanes!==void 0&&(Ue.numClippingPlanes!==ue.numPlanes||Ue.numIntersection!==ue.numIntersection)||Ue.vertexAlphas!==Fe||Ue.vertexTangents!==He||Ue.morphTargets!==Ie||Ue.morphNormals!==Je||Ue.morphColors!==rt||Ue.toneMapping!==yt||Ue.morphTargetsCount!==ct)&&(tt=!0):(tt=!0,Ue.__version=X.version);let jt=Ue.currentProgram;tt===!0&&(jt=Ns(X,k,B));let Si=!1,Kt=!1,rs=!1;const _t=jt.getUniforms(),nn=Ue.uniforms;if(ve.useProgram(jt.program)&&(Si=!0,Kt=!0,rs=!0),X.id!==w&&(w=X.id,Kt=!0),Si||M!==y){ve.buffers.depth.getReversed()&&y.reversedDepth!==!0&&(y._reversedDepth=!0,y.updateProjectionMatrix()),_t.setValue(R,"projectionMatrix",y.projectionMatrix),_t.setValue(R,"viewMatrix",y.matrixWorldInverse);const Ht=_t.map.cameraPosition;Ht!==void 0&&Ht.setValue(R,F.setFromMatrixPosition(y.matrixWorld)),Ee.logarithmicDepthBuffer&&_t.setValue(R,"logDepthBufFC",2/(Math.log(y.far+1)/Math.LN2)),(X.isMeshPhongMaterial||X.isMeshToonMaterial||X.isMeshLambertMaterial||X.isMeshBasicMaterial||X.isMeshStandardMaterial||X.isShaderMaterial)&&_t.setValue(R,"isOrthographic",y.isOrthographicCamera===!0),M!==y&&(M=y,Kt=!0,rs=!0)}if(B.isSkinnedMesh){_t.setOptional(R,B,"bindMatrix"),_t.setOptional(R,B,"bindMatrixInverse");const kt=B.skeleton;kt&&(kt.boneTexture===null&&kt.computeBoneTexture(),_t.setValue(R,"boneTexture",kt.boneTexture,Xe))}B.isBatchedMesh&&(_t.setOptional(R,B,"batchingTexture"),_t.setValue(R,"batchingTexture",B._matricesTexture,Xe),_t.setOptional(R,B,"batchingIdTexture"),_t.setValue(R,"batchingIdTexture",B._indirectTexture,Xe),_t.setOptional(R,B,"batchingColorTexture"),B._colorsTexture!==null&&_t.setValue(R,"batchingColorTexture",B._colorsTexture,Xe));const sn=q.morphAttributes;if((sn.position!==void 0||sn.normal!==void 0||sn.color!==void 0)&&ce.update(B,q,jt),(Kt||Ue.receiveShadow!==B.receiveShadow)&&(Ue.receiveShadow=B.receiveShadow,_t.setValue(R,"receiveShadow",B.receiveShadow)),X.isMeshGouraudMaterial&&X.envMap!==null&&(nn.envMap.value=ye,nn.flipEnvMap.value=ye.isCubeTexture&&ye.isRenderTargetTexture===!1?-1:1),X.isMeshStandardMaterial&&X.envMap===null&&k.environment!==null&&(nn.envMapIntensity.value=k.environmentIntensity),Kt&&(_t.setValue(R,"toneMappingExposure",b.toneMappingExposure),Ue.needsLights&&Bh(nn,rs),le&&X.fog===!0&&re.refreshFogUniforms(nn,le),re.refreshMaterialUniforms(nn,X,j,ee,f.state.transmissionRenderTarget[y.id]),yr.upload(R,nl(Ue),nn,Xe)),X.isShaderMaterial&&X.uniformsNeedUpdate===!0&&(yr.upload(R,nl(Ue),nn,Xe),X.uniformsNeedUpdate=!1),X.isSpriteMaterial&&_t.setValue(R,"center",B.center),_t.setValue(R,"modelViewMatrix",B.modelViewMatrix),_t.setValue(R,"normalMatrix",B.normalMatrix),_t.setValue(R,"modelMatrix",B.matrixWorld),X.isShaderMaterial||X.isRawShaderMaterial){const kt=X.uniformsGroups;for(let Ht=0,kr=kt.length;Ht<kr;Ht++){const si=kt[Ht];$e.update(si,jt),$e.bind(si,jt)}}return jt}function Bh(y,k){y.ambientLightColor.needsUpdate=k,y.lightProbe.needsUpdate=k,y.directionalLights.needsUpdate=k,y.directionalLightShadows.needsUpdate=k,y.pointLights.needsUpdate=k,y.pointLightShadows.needsUpdate=k,y.spotLights.needsUpdate=k,y.spotLightShadows.needsUpdate=k,y.rectAreaLights.needsUpdate=k,y.hemisphereLights.needsUpdate=k}function zh(y){return y.isMeshLambertMaterial||y.isMeshToonMaterial||y.isMeshPhongMaterial||y.isMeshStandardMaterial||y.isShadowMaterial||y.isShaderMaterial&&y.lights===!0}this.getActiveCubeFace=function(){return C},this.getActiveMipmapLevel=function(){return D},this.getRenderTarget=function(){return N},this.setRenderTargetTextures=function(y,k,q){const X=xe.get(y);X.__autoAllocateDepthBuffer=y.resolveDepthBuffer===!1,X.__autoAllocateDepthBuffer===!1&&(X.__useRenderToTexture=!1),xe.get(y.texture).__webglTexture=k,xe.get(y.depthTexture).__webglTexture=X.__autoAllocateDepthBuffer?void 0:q,X.__hasExternalTextures=!0},this.setRenderTargetFramebuffer=function(y,k){const q=xe.get(y);q.__webglFramebuffer=k,q.__useDefaultFramebuffer=k===void 0};const Hh=R.createFramebuffer();this.setRenderTarget=function(y,k=0,q=0){N=y,C=k,D=q;let X=!0,B=null,le=!1,me=!1;if(y){const ye=xe.get(y);if(ye.__useDefaultFramebuffer!==void 0)ve.bindFramebuffer(R.FRAMEBUFFER,null),X=!1;else if(ye.__webglFramebuffer===void 0)Xe.setupRenderTarget(y);else if(ye.__hasExternalTextures)Xe.rebindTextures(y,xe.get(y.texture).__webglTexture,xe.get(y.depthTexture).__webglTexture);else if(y.depthBuffer){const Ie=y.depthTexture;if(ye.__boundDepthTexture!==Ie){if(Ie!==null&&xe.has(Ie)&&(y.width!==Ie.image.width||y.height!==Ie.image.height))throw new Error("WebGLRenderTarget: Attached DepthTexture is initialized to the incorrect size.");Xe.setupDepthRenderbuffer(y)}}const Fe=y.texture;(Fe.isData3DTexture||Fe.isDataArrayTexture||Fe.isCompressedArrayTexture)&&(me=!0);const He=xe.get(y).__webglFramebuffer;y.isWebGLCubeRenderTarget?(Array.isArray(He[k])?B=He[k][q]:B=He[k],le=!0):y.samples>0&&Xe.useMultisampledRTT(y)===!1?B=xe.get(y).__webglMultisampledFramebuffer:Array.isArray(He)?B=He[q]:B=He,S.copy(y.viewport),L.copy(y.scissor),O=y.scissorTest}else S.copy(H).multiplyScalar(j).floor(),L.copy(ie).multiplyScalar(j).floor(),O=Ce;if(q!==0&&(B=Hh),ve.bindFramebuffer(R.FRAMEBUFFER,B)&&X&&ve.drawBuffers(y,B),ve.viewport(S),ve.scissor(L),ve.setScissorTest(O),le){const ye=xe.get(y.texture);R.framebufferTexture2D(R.FRAMEBUFFER,R.COLOR_ATTACHMENT0,R.TEXTURE_CUBE_MAP_POSITIVE_X+k,ye.__webglTexture,q)}else if(me){const ye=k;for(let Fe=0;Fe<y.textures.length;Fe++){const He=xe.get(y.textures[Fe]);R.framebufferTextureLayer(R.FRAMEBUFFER,R.COLOR_ATTACHMENT0+Fe,He.__webglTexture,q,ye)}}else if(y!==null&&q!==0){const ye=xe.get(y.texture);R.framebufferTexture2D(R.FRAMEBUFFER,R.COLOR_ATTACHMENT0,R.TEXTURE_2D,ye.__webglTexture,q)}w=-1},this.readRenderTargetPixels=function(y,k,q,X,B,le,me,we=0){if(!(y&&y.isWebGLRenderTarget)){console.error("THREE.WebGLRenderer.readRenderTargetPixels: renderTarget is not THREE.WebGLRenderTarget.");return}let ye=xe.get(y).__webglFramebuffer;if(y.isWebGLCubeRenderTarget&&me!==void 0&&(ye=ye[me]),ye){ve.bindFramebuffer(R.FRAMEBUFFER,ye);try{const Fe=y.textures[we],He=Fe.format,Ie=Fe.type;if(!Ee.textureFormatReadable(He)){console.error("THREE.WebGLRenderer.readRenderTargetPixels: renderTarget is not in RGBA or implementation defined format.");return}if(!Ee.textureTypeReadable(Ie)){console.error("THREE.WebGLRenderer.readRenderTargetPixels: renderTarget is not in UnsignedByteType or implementation defined type.");return}k>=0&&k<=y.width-X&&q>=0&&q<=y.height-B&&(y.textures.length>1&&R.readBuffer(R.COLOR_ATTACHMENT0+we),R.readPixels(k,q,X,B,Re.convert(He),Re.convert(Ie),le))}finally{const Fe=N!==null?xe.get(N).__webglFramebuffer:null;ve.bindFramebuffer(R.FRAMEBUFFER,Fe)}}},this.readRenderTargetPixelsAsync=async function(y,k,q,X,B,le,me,we=0){if(!(y&&y.isWebGLRenderTarget))throw new Error("THREE.WebGLRenderer.readRenderTargetPixels: renderTarget is not THREE.WebGLRenderTarget.");let ye=xe.get(y).__webglFramebuffer;if(y.isWebGLCubeRenderTarget&&me!==void 0&&(ye=ye[me]),ye)if(k>=0&&k<=y.width-X&&q>=0&&q<=y.height-B){ve.bindFramebuffer(R.FRAMEBUFFER,ye);const Fe=y.textures[we],He=Fe.format,Ie=Fe.type;if(!Ee.textureFormatReadable(He))throw new Error("THREE.WebGLRenderer.readRenderTargetPixelsAsync: renderTarget is not in RGBA or implementation defined format.");if(!Ee.textureTypeReadable(Ie))throw new Error("THREE.WebGLRenderer.readRenderTargetPixelsAsync: renderTarget is not in UnsignedByteType or implementation defined type.");const Je=R.createBuffer();R.bindBuffer(R.PIXEL_PACK_BUFFER,Je),R.bufferData(R.PIXEL_PACK_BUFFER,le.byteLength,R.STREAM_READ),y.textures.length>1&&R.readBuffer(R.COLOR_ATTACHMENT0+we),R.readPixels(k,q,X,B,Re.convert(He),Re.convert(Ie),0);const rt=N!==null?xe.get(N).__webglFramebuffer:null;ve.bindFramebuffer(R.FRAMEBUFFER,rt);const yt=R.fenceSync(R.SYNC_GPU_COMMANDS_COMPLETE,0);return R.flush(),await nf(R,yt,4),R.bindBuffer(R.PIXEL_PACK_BUFFER,Je),R.getBufferSubData(R.PIXEL_PACK_BUFFER,0,le),R.deleteBuffer(Je),R.deleteSync(yt),le}else throw new Error("THREE.WebGLRenderer.readRenderTargetPixelsAsync: requested read bounds are out of range.")},this.copyFramebufferToTexture=function(y,k=null,q=0){const X=Math.pow(2,-q),B=Math.floor(y.image.width*X),le=Math.floor(y.image.height*X),me=k!==null?k.x:0,we=k!==null?k.y:0;Xe.setTexture2D(y,0),R.copyTexSubImage2D(R.TEXTURE_2D,q,0,0,me,we,B,le),ve.unbindTexture()};const Vh=R.createFramebuffer(),Gh=R.createFramebuffer();this.copyTextureToTexture=function(y,k,q=null,X=null,B=0,le=null){le===null&&(B!==0?(Es("WebGLRenderer: copyTextureToTexture function signature has changed to support src and dst mipmap levels."),le=B,B=0):le=0);let me,we,ye,Fe,He,Ie,Je,rt,yt;const ft=y.isCompressedTexture?y.mipmaps[le]:y.image;if(q!==null)me=q.max.x-q.min.x,we=q.max.y-q.min.y,ye=q.isBox3?q.max.z-q.min.z:1,Fe=q.min.x,He=q.min.y,Ie=q.isBox3?q.min.z:0;else{const sn=Math.pow(2,-B);me=Math.floor(ft.width*sn),we=Math.floor(ft.height*sn),y.isDataArrayTexture?ye=ft.depth:y.isData3DTexture?ye=Math.floor(ft.depth*sn):ye=1,Fe=0,He=0,Ie=0}X!==null?(Je=X.x,rt=X.y,yt=X.z):(Je=0,rt=0,yt=0);const ct=Re.convert(k.format),Ue=Re.convert(k.type);let gt;k.isData3DTexture?(Xe.setTexture3D(k,0),gt=R.TEXTURE_3D):k.isDataArrayTexture||k.isCompressedArrayTexture?(Xe.setTexture2DArray(k,0),gt=R.TEXTURE_2D_ARRAY):(Xe.setTexture2D(k,0),gt=R.TEXTURE_2D),R.pixelStorei(R.UNPACK_FLIP_Y_WEBGL,k.flipY),R.pixelStorei(R.UNPACK_PREMULTIPLY_ALPHA_WEBGL,k.premultiplyAlpha),R.pixelStorei(R.UNPACK_ALIGNMENT,k.unpackAlignment);const tt=R.getParameter(R.UNPACK_ROW_LENGTH),jt=R.getParameter(R.UNPACK_IMAGE_HEIGHT),Si=R.getParameter(R.UNPACK_SKIP_PIXELS),Kt=R.getParameter(R.UNPACK_SKIP_ROWS),rs=R.getParameter(R.UNPACK_SKIP_IMAGES);R.pixelStorei(R.UNPACK_ROW_LENGTH,ft.width),R.pixelStorei(R.UNPACK_IMAGE_HEIGHT,ft.height),R.pixelStorei(R.UNPACK_SKIP_PIXELS,Fe),R.pixelStorei(R.UNPACK_SKIP_ROWS,He),R.pixelStorei(R.UNPACK_SKIP_IMAGES,Ie);const _t=y.isDataArrayTexture||y.isData3DTexture,nn=k.isDataArrayTexture||k.isData3DTexture;if(y.isDepthTexture){const sn=xe.get(y),kt=xe.get(k),Ht=xe.get(sn.__renderTarget),kr=xe.get(kt.__renderTarget);ve.bindFramebuffer(R.READ_FRAMEBUFFER,Ht.__webglFramebuffer),ve.bindFramebuffer(R.DRAW_FRAMEBUFFER,kr.__webglFramebuffer);for(let si=0;si<ye;si++)_t&&(R.framebufferTextureLayer(R.READ_FRAMEBUFFER,R.COLOR_ATTACHMENT0,xe.get(y).__webglTexture,B,Ie+si),R.framebufferTextureLayer(R.DRAW_FRAMEBUFFER,R.COLOR_ATTACHMENT0,xe.get(k).__webglTexture,le,yt+si)),R.blitFramebuffer(Fe,He,me,we,Je,rt,me,we,R.DEPTH_BUFFER_BIT,R.NEAREST);ve.bindFramebuffer(R.READ_FRAMEBUFFER,null),ve.bindFramebuffer(R.DRAW_FRAMEBUFFER,null)}else if(B!==0||y.isRenderTargetTexture||xe.has(y)){const sn=xe.get(y),kt=xe.get(k);ve.bindFramebuffer(R.READ_FRAMEBUFFER,Vh),ve.bindFramebuffer(R.DRAW_FRAMEBUFFER,Gh);for(let Ht=0;Ht<ye;Ht++)_t?R.framebufferTextureLayer(R.READ_FRAMEBUFFER,R.COLOR_ATTACHMENT0,sn.__webglTexture,B,Ie+Ht):R.framebufferTexture2D(R.READ_FRAMEBUFFER,R.COLOR_ATTACHMENT0,R.TEXTURE_2D,sn.__webglTexture,B),nn?R.framebufferTextureLayer(R.DRAW_FRAMEBUFFER,R.COLOR_ATTACHMENT0,kt.__webglTexture,le,yt+Ht):R.framebufferTexture2D(R.DRAW_FRAMEBUFFER,R.COLOR_ATTACHMENT0,R.TEXTURE_2D,kt.__webglTexture,le),B!==0?R.blitFramebuffer(Fe,He,me,we,Je,rt,me,we,R.COLOR_BUFFER_BIT,R.NEAREST):nn?R.copyTexSubImage3D(gt,le,Je,rt,yt+Ht,Fe,He,me,we):R.copyTexSubImage2D(gt,le,Je,rt,Fe,He,me,we);ve.bindFramebuffer(R.READ_FRAMEBUFFER,null),ve.bindFramebuffer(R.DRAW_FRAMEBUFFER,null)}else nn?y.isDataTexture||y.isData3DTexture?R.texSubImage3D(gt,le,Je,rt,yt,me,we,ye,ct,Ue,ft.data):k.isCompressedArrayTexture?R.compressedTexSubImage3D(gt,le,Je,rt,yt,me,we,ye,ct,ft.data):R.texSubImage3D(gt,le,Je,rt,yt,me,we,ye,ct,Ue,ft):y.isDataTexture?R.texSubImage2D(R.TEXTURE_2D,le,Je,rt,me,we,ct,Ue,ft.data):y.isCompressedTexture?R.compressedTexSubImage2D(R.TEXTURE_2D,le,Je,rt,ft.width,ft.height,ct,ft.data):R.texSubImage2D(R.TEXTURE_2D,le,Je,rt,me,we,ct,Ue,ft);R.pixelStorei(R.UNPACK_ROW_LENGTH,tt),R.pixelStorei(R.UNPACK_IMAGE_HEIGHT,jt),R.pixelStorei(R.UNPACK_SKIP_PIXELS,Si),R.pixelStorei(R.UNPACK_SKIP_ROWS,Kt),R.pixelStorei(R.UNPACK_SKIP_IMAGES,rs),le===0&&k.generateMipmaps&&R.generateMipmap(gt),ve.unbindTexture()},this.initRenderTarget=function(y){xe.get(y).__webglFramebuffer===void 0&&Xe.setupRenderTarget(y)},this.initTexture=function(y){y.isCubeTexture?Xe.setTextureCube(y,0):y.isData3DTexture?Xe.setTexture3D(y,0):y.isDataArrayTexture||y.isCompressedArrayTexture?Xe.setTexture2DArray(y,0):Xe.setTexture2D(y,0),ve.unbindTexture()},this.resetState=function(){C=0,D=0,N=null,ve.reset(),pe.reset()},typeof __THREE_DEVTOOLS__<"u"&&__THREE_DEVTOOLS__.dispatchEvent(new CustomEvent("observe",{detail:this}))}get coordinateSystem(){return xn}get outputColorSpace(){return this._outputColorSpace}set outputColorSpace(e){this._outputColorSpace=e;const t=this.getContext();t.drawingBufferColorSpace=nt._getDrawingBufferColorSpace(e),t.unpackColorSpace=nt._getUnpackColorSpace()}}function Eo(i){return new Lf({color:new je(i)})}function Ft(i,e,t,n){const s=new U(...i),r=new U(...e).sub(s),a=new Ot(new Ir(t,t,r.length(),18),Eo(n));return a.position.copy(s).addScaledVector(r,.5),a.quaternion.setFromUnitVectors(new U(0,1,0),r.normalize()),a}function qi(i){i.traverse(e=>{if(e instanceof Ot||e instanceof Is||e instanceof Eh){e.geometry.dispose();for(const t of[e.material].flat())t.dispose()}}),i.clear()}class T0{constructor(e){this.stage=e,e.room.add(this.fixed,this.carried,this.probe),e.device.add(this.onDevice)}fixed=new en;carried=new en;onDevice=new en;probe=new en;built=null;angles=[0,0,0];get stand(){return this.built}get geometry(){return this.built?.geometry??"roll-over-azimuth"}build(e,t=!1){if(this.built&&JSON.stringify([e.geometry,e.range_m,e.size_mm,e.offset_mm,e.ports])===JSON.stringify([this.built.geometry,this.built.range_m,this.built.size_mm,this.built.offset_mm,this.built.ports])&&!t)return;this.built=e;for(const o of[this.fixed,this.carried,this.onDevice,this.probe])qi(o);this.stage.clearLabels(this.stage.room);const s=lt(),r=s.quiet,a=new Hf(2.4,12,s.grid,s.grid);a.position.set(0,-.68,.4),this.fixed.add(a),e.geometry==="roll-over-azimuth"?(this.carried.add(Ft([0,-.66,0],[0,-.58,0],.14,r),Ft([0,-.62,-.02],[0,-.62,-.6],.03,r),Ft([0,-.62,-.58],[0,0,-.58],.03,r),Ft([0,0,-.64],[0,0,-.5],.05,r)),this.onDevice.add(Ft([0,0,-.5],[0,0,-.05],.022,s.co))):e.geometry==="azimuth-over-elevation"?(this.fixed.add(Ft([.62,-.68,0],[.62,0,0],.028,r),Ft([-.62,-.68,0],[-.62,0,0],.028,r)),this.carried.add(Ft([-.62,0,0],[-.55,-.54,0],.022,r),Ft([.62,0,0],[.55,-.54,0],.022,r),Ft([-.55,-.54,0],[.55,-.54,0],.028,r)),this.onDevice.add(Ft([0,-.54,0],[0,-.05,0],.022,s.co))):(this.carried.add(Ft([0,-.66,0],[0,-.58,0],.14,r),Ft([-.56,-.6,0],[.56,-.6,0],.028,r),Ft([-.56,-.6,0],[-.56,0,0],.028,r),Ft([.56,-.6,0],[.56,0,0],.028,r)),this.onDevice.add(Ft([-.56,0,0],[.56,0,0],.016,s.co))),this.addDevice(e),this.addProbe(e),this.turn(this.angles[0],this.angles[1],this.angles[2])}addDevice(e){const t=.001/e.range_m,n=Math.max(1,.14/(Math.max(...e.size_mm)*t)),s=e.size_mm.map(a=>Math.max(.012,a*t*n)),r=new Ot(new ns(s[0],s[1],s[2]),Eo(lt().other));r.position.set(e.offset_mm[0]*t,e.offset_mm[1]*t,e.offset_mm[2]*t),this.onDevice.add(r),this.enlarged=n}enlarged=1;addProbe(e){const t=lt(),n=new Ot(new Ur(.045,.13,24,1,!0),Eo(t.ink));n.rotation.x=Math.PI/2,n.position.z=.065,this.probe.add(n,new As(new U(1,0,0),new U(0,0,-.02),.16,t.cross,.045,.03)),e.ports===2&&this.probe.add(new As(new U(0,1,0),new U(0,0,-.02),.16,t.co,.045,.03)),this.probe.position.set(0,0,1),this.stage.label("probe",[0,.13,1.02],this.stage.room,"quiet",!1);const s=new Is(new It().setFromPoints([new U(0,0,A0),new U(0,0,.96)]),new is({color:t.quiet}));this.fixed.add(s)}turn(e,t,n){this.angles=[e,t,n];const s=this.stage.device.rotation,r=this.carried.rotation;this.geometry==="roll-over-azimuth"?(s.set(0,-e*dt,-t*dt,"YXZ"),r.set(0,-e*dt,0)):this.geometry==="azimuth-over-elevation"?(s.set(t*dt,-e*dt,0,"XYZ"),r.set(t*dt,0,0)):(s.set(t*dt,-e*dt,0,"YXZ"),r.set(0,-e*dt,0)),this.probe.rotation.z=n*dt,this.stage.ask()}named(e,t){const n=s=>e[t.indexOf(s)]??0;return[n("azimuth"),n(this.geometry==="roll-over-azimuth"?"roll":"elevation"),n("probe")]}turnTo(e,t){this.stage.moves=null,this.turn(...this.named(e,t))}follow(e,t){const n=this.named(e,t),s=this.angles;if(n.every((a,o)=>Math.abs(a-s[o])<.001))return;if(matchMedia("(prefers-reduced-motion: reduce)").matches||document.hidden){this.turnTo(e,t);return}let r=0;this.stage.moves=a=>{r||=a;const o=Math.min(1,(a-r)/R0),c=n.map((l,h)=>s[h]+(l-s[h])*o);return this.turn(...c),o<1},this.stage.ask()}}const A0=.06,R0=85,Ac={type:"change"},Zo={type:"start"},Nh={type:"end"},dr=new Ls,Rc=new $n,C0=Math.cos(70*ef.DEG2RAD),Et=new U,Gt=2*Math.PI,ot={NONE:-1,ROTATE:0,DOLLY:1,PAN:2,TOUCH_ROTATE:3,TOUCH_PAN:4,TOUCH_DOLLY_PAN:5,TOUCH_DOLLY_ROTATE:6},Aa=1e-6;class P0 extends Vf{constructor(e,t=null){super(e,t),this.state=ot.NONE,this.target=new U,this.cursor=new U,this.minDistance=0,this.maxDistance=1/0,this.minZoom=0,this.maxZoom=1/0,this.minTargetRadius=0,this.maxTargetRadius=1/0,this.minPolarAngle=0,this.maxPolarAngle=Math.PI,this.minAzimuthAngle=-1/0,this.maxAzimuthAngle=1/0,this.enableDamping=!1,this.dampingFactor=.05,this.enableZoom=!0,this.zoomSpeed=1,this.enableRotate=!0,this.rotateSpeed=1,this.keyRotateSpeed=1,this.enablePan=!0,this.panSpeed=1,this.screenSpacePanning=!0,this.keyPanSpeed=7,this.zoomToCursor=!1,this.autoRotate=!1,this.autoRotateSpeed=2,this.keys={LEFT:"ArrowLeft",UP:"ArrowUp",RIGHT:"ArrowRight",BOTTOM:"ArrowDown"},this.mouseButtons={LEFT:Gi.ROTATE,MIDDLE:Gi.DOLLY,RIGHT:Gi.PAN},this.touches={ONE:Hi.ROTATE,TWO:Hi.DOLLY_PAN},this.target0=this.target.clone(),this.position0=this.object.position.clone(),this.zoom0=this.object.zoom,this._domElementKeyEvents=null,this._lastPosition=new U,this._lastQuaternion=new xi,this._lastTargetPosition=new U,this._quat=new xi().setFromUnitVectors(e.up,new U(0,1,0)),this._quatInverse=this._quat.clone().invert(),this._spherical=new ec,this._sphericalDelta=new ec,this._scale=1,this._panOffset=new U,this._rotateStart=new Ve,this._rotateEnd=new Ve,this._rotateDelta=new Ve,this._panStart=new Ve,this._panEnd=new Ve,this._panDelta=new Ve,this._dollyStart=new Ve,this._dollyEnd=new Ve,this._dollyDelta=new Ve,this._dollyDirection=new U,this._mouse=new Ve,this._performCursorZoom=!1,this._pointers=[],this._pointerPositions={},this._controlActive=!1,this._onPointerMove=L0.bind(this),this._onPointerDown=D0.bind(this),this._onPointerUp=I0.bind(this),this._onContextMenu=z0.bind(this),this._onMouseWheel=F0.bind(this),this._onKeyDown=O0.bind(this),this._onTouchStart=k0.bind(this),this._onTouchMove=B0.bind(this),this._onMouseDown=U0.bind(this),this._onMouseMove=N0.bind(this),this._interceptControlDown=H0.bind(this),this._interceptControlUp=V0.bind(this),this.domElement!==null&&this.connect(this.domElement),this.update()}connect(e){super.connect(e),this.domElement.addEventListener("pointerdown",this._onPointerDown),this.domElement.addEventListener("pointercancel",this._onPointerUp),this.domElement.addEventListener("contextmenu",this._onContextMenu),this.domElement.addEventListener("wheel",this._onMouseWheel,{passive:!1}),this.domElement.getRootNode().addEventListener("keydown",this._interceptControlDown,{passive:!0,capture:!0}),this.domElement.style.touchAction="none"}disconnect(){this.domElement.removeEventListener("pointerdown",this._onPointerDown),this.domElement.removeEventListener("pointermove",this._onPointerMove),this.domElement.removeEventListener("pointerup",this._onPointerUp),this.domElement.removeEventListener("pointercancel",this._onPointerUp),this.domElement.removeEventListener("wheel",this._onMouseWheel),this.domElement.removeEventListener("contextmenu",this._onContextMenu),this.stopListenToKeyEvents(),this.domElement.getRootNode().removeEventListener("keydown",this._interceptControlDown,{capture:!0}),this.domElement.style.touchAction="auto"}dispose(){this.disconnect()}getPolarAngle(){return this._spherical.phi}getAzimuthalAngle(){return this._spherical.theta}getDistance(){return this.object.position.distanceTo(this.target)}listenToKeyEvents(e){e.addEventListener("keydown",this._onKeyDown),this._domElementKeyEvents=e}stopListenToKeyEvents(){this._domElementKeyEvents!==null&&(this._domElementKeyEvents.removeEventListener("keydown",this._onKeyDown),this._domElementKeyEvents=null)}saveState(){this.target0.copy(this.target),this.position0.copy(this.object.position),this.zoom0=this.object.zoom}reset(){this.target.copy(this.target0),this.object.position.copy(this.position0),this.object.zoom=this.zoom0,this.object.updateProjectionMatrix(),this.dispatchEvent(Ac),this.update(),this.state=ot.NONE}update(e=null){const t=this.object.position;Et.copy(t).sub(this.target),Et.applyQuaternion(this._quat),this._spherical.setFromVector3(Et),this.autoRotate&&this.state===ot.NONE&&this._rotateLeft(this._getAutoRotationAngle(e)),this.enableDamping?(this._spherical.theta+=this._sphericalDelta.theta*this.dampingFactor,this._spherical.phi+=this._sphericalDelta.phi*this.dampingFactor):(this._spherical.theta+=this._sphericalDelta.theta,this._spherical.phi+=this._sphericalDelta.phi);let n=this.minAzimuthAngle,s=this.maxAzimuthAngle;isFinite(n)&&isFinite(s)&&(n<-Math.PI?n+=Gt:n>Math.PI&&(n-=Gt),s<-Math.PI?s+=Gt:s>Math.PI&&(s-=Gt),n<=s?this._spherical.theta=Math.max(n,Math.min(s,this._spherical.theta)):this._spherical.theta=this._spherical.theta>(n+s)/2?Math.max(n,this._spherical.theta):Math.min(s,this._spherical.theta)),this._spherical.phi=Math.max(this.minPolarAngle,Math.min(this.maxPolarAngle,this._spherical.phi)),this._spherical.makeSafe(),this.enableDamping===!0?this.target.addScaledVector(this._panOffset,this.dampingFactor):this.target.add(this._panOffset),this.target.sub(this.cursor),this.target.clampLength(this.minTargetRadius,this.maxTargetRadius),this.target.add(this.cursor);let r=!1;if(this.zoomToCursor&&this._performCursorZoom||this.object.isOrthographicCamera)this._spherical.radius=this._clampDistance(this._spherical.radius);else{const a=this._spherical.radius;this._spherical.radius=this._clampDistance(this._spherical.radius*this._scale),r=a!=this._spherical.radius}if(Et.setFromSpherical(this._spherical),Et.applyQuaternion(this._quatInverse),t.copy(this.target).add(Et),this.object.lookAt(this.target),this.enableDamping===!0?(this._sphericalDelta.theta*=1-this.dampingFactor,this._sphericalDelta.phi*=1-this.dampingFactor,this._panOffset.multiplyScalar(1-this.dampingFactor)):(this._sphericalDelta.set(0,0,0),this._panOffset.set(0,0,0)),this.zoomToCursor&&this._performCursorZoom){let a=null;if(this.object.isPerspectiveCamera){const o=Et.length();a=this._clampDistance(o*this._scale);const c=o-a;this.object.position.addScaledVector(this._dollyDirection,c),this.object.updateMatrixWorld(),r=!!c}else if(this.object.isOrthographicCamera){const o=new U(this._mouse.x,this._mouse.y,0);o.unproject(this.object);const c=this.object.zoom;this.object.zoom=Math.max(this.minZoom,Math.min(this.maxZoom,this.object.zoom/this._scale)),this.object.updateProjectionMatrix(),r=c!==this.object.zoom;const l=new U(this._mouse.x,this._mouse.y,0);l.unproject(this.object),this.object.position.sub(l).add(o),this.object.updateMatrixWorld(),a=Et.length()}else console.warn("WARNING: OrbitControls.js encountered an unknown camera type - zoom to cursor disabled."),this.zoomToCursor=!1;a!==null&&(this.screenSpacePanning?this.target.set(0,0,-1).transformDirection(this.object.matrix).multiplyScalar(a).add(this.object.position):(dr.origin.copy(this.object.position),dr.direction.set(0,0,-1).transformDirection(this.object.matrix),Math.abs(this.object.up.dot(dr.direction))<C0?this.object.lookAt(this.target):(Rc.setFromNormalAndCoplanarPoint(this.object.up,this.target),dr.intersectPlane(Rc,this.target))))}else if(this.object.isOrthographicCamera){const a=this.object.zoom;this.object.zoom=Math.max(this.minZoom,Math.min(this.maxZoom,this.object.zoom/this._scale)),a!==this.object.zoom&&(this.object.updateProjectionMatrix(),r=!0)}return this._scale=1,this._performCursorZoom=!1,r||this._lastPosition.distanceToSquared(this.object.position)>Aa||8*(1-this._lastQuaternion.dot(this.object.quaternion))>Aa||this._lastTargetPosition.distanceToSquared(this.target)>Aa?(this.dispatchEvent(Ac),this._lastPosition.copy(this.object.position),this._lastQuaternion.copy(this.object.quaternion),this._lastTargetPosition.copy(this.target),!0):!1}_getAutoRotationAngle(e){return e!==null?Gt/60*this.autoRotateSpeed*e:Gt/60/60*this.autoRotateSpeed}_getZoomScale(e){const t=Math.abs(e*.01);return Math.pow(.95,this.zoomSpeed*t)}_rotateLeft(e){this._sphericalDelta.theta-=e}_rotateUp(e){this._sphericalDelta.phi-=e}_panLeft(e,t){Et.setFromMatrixColumn(t,0),Et.multiplyScalar(-e),this._panOffset.add(Et)}_panUp(e,t){this.screenSpacePanning===!0?Et.setFromMatrixColumn(t,1):(Et.setFromMatrixColumn(t,0),Et.crossVectors(this.object.up,Et)),Et.multiplyScalar(e),this._panOffset.add(Et)}_pan(e,t){const n=this.domElement;if(this.object.isPerspectiveCamera){const s=this.object.position;Et.copy(s).sub(this.target);let r=Et.length();r*=Math.tan(this.object.fov/2*Math.PI/180),this._panLeft(2*e*r/n.clientHeight,this.object.matrix),this._panUp(2*t*r/n.clientHeight,this.object.matrix)}else this.object.isOrthographicCamera?(this._panLeft(e*(this.object.right-this.object.left)/this.object.zoom/n.clientWidth,this.object.matrix),this._panUp(t*(this.object.top-this.object.bottom)/this.object.zoom/n.clientHeight,this.object.matrix)):(console.warn("WARNING: OrbitControls.js encountered an unknown camera type - pan disabled."),this.enablePan=!1)}_dollyOut(e){this.object.isPerspectiveCamera||this.object.isOrthographicCamera?this._scale/=e:(console.warn("WARNING: OrbitControls.js encountered an unknown camera type - dolly/zoom disabled."),this.enableZoom=!1)}_dollyIn(e){this.object.isPerspectiveCamera||this.object.isOrthographicCamera?this._scale*=e:(console.warn("WARNING: OrbitControls.js encountered an unknown camera type - dolly/zoom disabled."),this.enableZoom=!1)}_updateZoomParameters(e,t){if(!this.zoomToCursor)return;this._performCursorZoom=!0;const n=this.domElement.getBoundingClientRect(),s=e-n.left,r=t-n.top,a=n.width,o=n.height;this._mouse.x=s/a*2-1,this._mouse.y=-(r/o)*2+1,this._dollyDirection.set(this._mouse.x,this._mouse.y,1).unproject(this.object).sub(this.object.position).normalize()}_clampDistance(e){return Math.max(this.minDistance,Math.min(this.maxDistance,e))}_handleMouseDownRotate(e){this._rotateStart.set(e.clientX,e.clientY)}_handleMouseDownDolly(e){this._updateZoomParameters(e.clientX,e.clientX),this._dollyStart.set(e.clientX,e.clientY)}_handleMouseDownPan(e){this._panStart.set(e.clientX,e.clientY)}_handleMouseMoveRotate(e){this._rotateEnd.set(e.clientX,e.clientY),this._rotateDelta.subVectors(this._rotateEnd,this._rotateStart).multiplyScalar(this.rotateSpeed);const t=this.domElement;this._rotateLeft(Gt*this._rotateDelta.x/t.clientHeight),this._rotateUp(Gt*this._rotateDelta.y/t.clientHeight),this._rotateStart.copy(this._rotateEnd),this.update()}_handleMouseMoveDolly(e){this._dollyEnd.set(e.clientX,e.clientY),this._dollyDelta.subVectors(this._dollyEnd,this._dollyStart),this._dollyDelta.y>0?this._dollyOut(this._getZoomScale(this._dollyDelta.y)):this._dollyDelta.y<0&&this._dollyIn(this._getZoomScale(this._dollyDelta.y)),this._dollyStart.copy(this._dollyEnd),this.update()}_handleMouseMovePan(e){this._panEnd.set(e.clientX,e.clientY),this._panDelta.subVectors(this._panEnd,this._panStart).multiplyScalar(this.panSpeed),this._pan(this._panDelta.x,this._panDelta.y),this._panStart.copy(this._panEnd),this.update()}_handleMouseWheel(e){this._updateZoomParameters(e.clientX,e.clientY),e.deltaY<0?this._dollyIn(this._getZoomScale(e.deltaY)):e.deltaY>0&&this._dollyOut(this._getZoomScale(e.deltaY)),this.update()}_handleKeyDown(e){let t=!1;switch(e.code){case this.keys.UP:e.ctrlKey||e.metaKey||e.shiftKey?this.enableRotate&&this._rotateUp(Gt*this.keyRotateSpeed/this.domElement.clientHeight):this.enablePan&&this._pan(0,this.keyPanSpeed),t=!0;break;case this.keys.BOTTOM:e.ctrlKey||e.metaKey||e.shiftKey?this.enableRotate&&this._rotateUp(-Gt*this.keyRotateSpeed/this.domElement.clientHeight):this.enablePan&&this._pan(0,-this.keyPanSpeed),t=!0;break;case this.keys.LEFT:e.ctrlKey||e.metaKey||e.shiftKey?this.enableRotate&&this._rotateLeft(Gt*this.keyRotateSpeed/this.domElement.clientHeight):this.enablePan&&this._pan(this.keyPanSpeed,0),t=!0;break;case this.keys.RIGHT:e.ctrlKey||e.metaKey||e.shiftKey?this.enableRotate&&this._rotateLeft(-Gt*this.keyRotateSpeed/this.domElement.clientHeight):this.enablePan&&this._pan(-this.keyPanSpeed,0),t=!0;break}t&&(e.preventDefault(),this.update())}_handleTouchStartRotate(e){if(this._pointers.length===1)this._rotateStart.set(e.pageX,e.pageY);else{const t=this._getSecondPointerPosition(e),n=.5*(e.pageX+t.x),s=.5*(e.pageY+t.y);this._rotateStart.set(n,s)}}_handleTouchStartPan(e){if(this._pointers.length===1)this._panStart.set(e.pageX,e.pageY);else{const t=this._getSecondPointerPosition(e),n=.5*(e.pageX+t.x),s=.5*(e.pageY+t.y);this._panStart.set(n,s)}}_handleTouchStartDolly(e){const t=this._getSecondPointerPosition(e),n=e.pageX-t.x,s=e.pageY-t.y,r=Math.sqrt(n*n+s*s);this._dollyStart.set(0,r)}_handleTouchStartDollyPan(e){this.enableZoom&&this._handleTouchStartDolly(e),this.enablePan&&this._handleTouchStartPan(e)}_handleTouchStartDollyRotate(e){this.enableZoom&&this._handleTouchStartDolly(e),this.enableRotate&&this._handleTouchStartRotate(e)}_handleTouchMoveRotate(e){if(this._pointers.length==1)this._rotateEnd.set(e.pageX,e.pageY);else{const n=this._getSecondPointerPosition(e),s=.5*(e.pageX+n.x),r=.5*(e.pageY+n.y);this._rotateEnd.set(s,r)}this._rotateDelta.subVectors(this._rotateEnd,this._rotateStart).multiplyScalar(this.rotateSpeed);const t=this.domElement;this._rotateLeft(Gt*this._rotateDelta.x/t.clientHeight),this._rotateUp(Gt*this._rotateDelta.y/t.clientHeight),this._rotateStart.copy(this._rotateEnd)}_handleTouchMovePan(e){if(this._pointers.length===1)this._panEnd.set(e.pageX,e.pageY);else{const t=this._getSecondPointerPosition(e),n=.5*(e.pageX+t.x),s=.5*(e.pageY+t.y);this._panEnd.set(n,s)}this._panDelta.subVectors(this._panEnd,this._panStart).multiplyScalar(this.panSpeed),this._pan(this._panDelta.x,this._panDelta.y),this._panStart.copy(this._panEnd)}_handleTouchMoveDolly(e){const t=this._getSecondPointerPosition(e),n=e.pageX-t.x,s=e.pageY-t.y,r=Math.sqrt(n*n+s*s);this._dollyEnd.set(0,r),this._dollyDelta.set(0,Math.pow(this._dollyEnd.y/this._dollyStart.y,this.zoomSpeed)),this._dollyOut(this._dollyDelta.y),this._dollyStart.copy(this._dollyEnd);const a=(e.pageX+t.x)*.5,o=(e.pageY+t.y)*.5;this._updateZoomParameters(a,o)}_handleTouchMoveDollyPan(e){this.enableZoom&&this._handleTouchMoveDolly(e),this.enablePan&&this._handleTouchMovePan(e)}_handleTouchMoveDollyRotate(e){this.enableZoom&&this._handleTouchMoveDolly(e),this.enableRotate&&this._handleTouchMoveRotate(e)}_addPointer(e){this._pointers.push(e.pointerId)}_removePointer(e){delete this._pointerPositions[e.pointerId];for(let t=0;t<this._pointers.length;t++)if(this._pointers[t]==e.pointerId){this._pointers.splice(t,1);return}}_isTrackingPointer(e){for(let t=0;t<this._pointers.length;t++)if(this._pointers[t]==e.pointerId)return!0;return!1}_trackPointer(e){let t=this._pointerPositions[e.pointerId];t===void 0&&(t=new Ve,this._pointerPositions[e.pointerId]=t),t.set(e.pageX,e.pageY)}_getSecondPointerPosition(e){const t=e.pointerId===this._pointers[0]?this._pointers[1]:this._pointers[0];return this._pointerPositions[t]}_customWheelEvent(e){const t=e.deltaMode,n={clientX:e.clientX,clientY:e.clientY,deltaY:e.deltaY};switch(t){case 1:n.deltaY*=16;break;case 2:n.deltaY*=100;break}return e.ctrlKey&&!this._controlActive&&(n.deltaY*=10),n}}function D0(i){this.enabled!==!1&&(this._pointers.length===0&&(this.domElement.setPointerCapture(i.pointerId),this.domElement.addEventListener("pointermove",this._onPointerMove),this.domElement.addEventListener("pointerup",this._onPointerUp)),!this._isTrackingPointer(i)&&(this._addPointer(i),i.pointerType==="touch"?this._onTouchStart(i):this._onMouseDown(i)))}function L0(i){this.enabled!==!1&&(i.pointerType==="touch"?this._onTouchMove(i):this._onMouseMove(i))}function I0(i){switch(this._removePointer(i),this._pointers.length){case 0:this.domElement.releasePointerCapture(i.pointerId),this.domElement.removeEventListener("pointermove",this._onPointerMove),this.domElement.removeEventListener("pointerup",this._onPointerUp),this.dispatchEvent(Nh),this.state=ot.NONE;break;case 1:const e=this._pointers[0],t=this._pointerPositions[e];this._onTouchStart({pointerId:e,pageX:t.x,pageY:t.y});break}}function U0(i){let e;switch(i.button){case 0:e=this.mouseButtons.LEFT;break;case 1:e=this.mouseButtons.MIDDLE;break;case 2:e=this.mouseButtons.RIGHT;break;default:e=-1}switch(e){case Gi.DOLLY:if(this.enableZoom===!1)return;this._handleMouseDownDolly(i),this.state=ot.DOLLY;break;case Gi.ROTATE:if(i.ctrlKey||i.metaKey||i.shiftKey){if(this.enablePan===!1)return;this._handleMouseDownPan(i),this.state=ot.PAN}else{if(this.enableRotate===!1)return;this._handleMouseDownRotate(i),this.state=ot.ROTATE}break;case Gi.PAN:if(i.ctrlKey||i.metaKey||i.shiftKey){if(this.enableRotate===!1)return;this._handleMouseDownRotate(i),this.state=ot.ROTATE}else{if(this.enablePan===!1)return;this._handleMouseDownPan(i),this.state=ot.PAN}break;default:this.state=ot.NONE}this.state!==ot.NONE&&this.dispatchEvent(Zo)}function N0(i){switch(this.state){case ot.ROTATE:if(this.enableRotate===!1)return;this._handleMouseMoveRotate(i);break;case ot.DOLLY:if(this.enableZoom===!1)return;this._handleMouseMoveDolly(i);break;case ot.PAN:if(this.enablePan===!1)return;this._handleMouseMovePan(i);break}}function F0(i){this.enabled===!1||this.enableZoom===!1||this.state!==ot.NONE||(i.preventDefault(),this.dispatchEvent(Zo),this._handleMouseWheel(this._customWheelEvent(i)),this.dispatchEvent(Nh))}function O0(i){this.enabled!==!1&&this._handleKeyDown(i)}function k0(i){switch(this._trackPointer(i),this._pointers.length){case 1:switch(this.touches.ONE){case Hi.ROTATE:if(this.enableRotate===!1)return;this._handleTouchStartRotate(i),this.state=ot.TOUCH_ROTATE;break;case Hi.PAN:if(this.enablePan===!1)return;this._handleTouchStartPan(i),this.state=ot.TOUCH_PAN;break;default:this.state=ot.NONE}break;case 2:switch(this.touches.TWO){case Hi.DOLLY_PAN:if(this.enableZoom===!1&&this.enablePan===!1)return;this._handleTouchStartDollyPan(i),this.state=ot.TOUCH_DOLLY_PAN;break;case Hi.DOLLY_ROTATE:if(this.enableZoom===!1&&this.enableRotate===!1)return;this._handleTouchStartDollyRotate(i),this.state=ot.TOUCH_DOLLY_ROTATE;break;default:this.state=ot.NONE}break;default:this.state=ot.NONE}this.state!==ot.NONE&&this.dispatchEvent(Zo)}function B0(i){switch(this._trackPointer(i),this.state){case ot.TOUCH_ROTATE:if(this.enableRotate===!1)return;this._handleTouchMoveRotate(i),this.update();break;case ot.TOUCH_PAN:if(this.enablePan===!1)return;this._handleTouchMovePan(i),this.update();break;case ot.TOUCH_DOLLY_PAN:if(this.enableZoom===!1&&this.enablePan===!1)return;this._handleTouchMoveDollyPan(i),this.update();break;case ot.TOUCH_DOLLY_ROTATE:if(this.enableZoom===!1&&this.enableRotate===!1)return;this._handleTouchMoveDollyRotate(i),this.update();break;default:this.state=ot.NONE}}function z0(i){this.enabled!==!1&&i.preventDefault()}function H0(i){i.key==="Control"&&(this._controlActive=!0,this.domElement.getRootNode().addEventListener("keyup",this._interceptControlUp,{passive:!0,capture:!0}))}function V0(i){i.key==="Control"&&(this._controlActive=!1,this.domElement.getRootNode().removeEventListener("keyup",this._interceptControlUp,{passive:!0,capture:!0}))}function Fh(i){try{return localStorage.getItem(i)}catch{return null}}function To(i,e){try{localStorage.setItem(i,e)}catch{}}const Qt=.5,Cc=2,G0=25e5,W0=180,$0=.5,Pc=36,q0=1.08,Dc=[["corner","from the corner",[1.6,1,2.05]],["probe","as the probe sees it",[.001,.12,2.3]],["side","from the side",[2.3,.15,.3]],["above","from above",[.001,2.4,.3]]];class X0{scene=new Rf;room=new en;device=new en;canvasPlace=g("div",{class:"canvas"});labels=g("div",{class:"labels",attrs:{"aria-hidden":"true"}});readout=g("div",{class:"readout mono",attrs:{"aria-live":"off"}});caption=g("div",{class:"stage-caption"});colourBar=g("div",{class:"colour-bar"});presets=g("div",{class:"presets"});element;camera=new on(Pc,4/3,.02,30);ok;software;hovered=null;picked=null;dragged=null;drawn=0;hairlines=null;renderer=null;controls=null;asked=!1;marks=[];riding=!1;goal=null;resting=0;moves=null;constructor(){this.element=g("section",{class:"stage",attrs:{"aria-label":"chamber and sphere of directions"}},this.caption,g("div",{class:"view"},this.canvasPlace,this.labels,this.readout,this.colourBar),this.presets),this.scene.add(this.room),this.room.add(this.device),this.scene.add(new kf(16777215,1.7));const e=new Of(16777215,1.8);e.position.set(1.5,3,2),this.scene.add(e);let t=!1;try{this.renderer=new E0({antialias:!1,alpha:!0,powerPreference:"low-power"});const n=this.renderer.getContext(),s=n.getExtension("WEBGL_debug_renderer_info");t=s?/swiftshader|llvmpipe|software/i.test(String(n.getParameter(s.UNMASKED_RENDERER_WEBGL))):!1;const r=this.renderer.domElement;r.setAttribute("role","img"),r.setAttribute("aria-label","chamber with positioner, device, probe and the sphere of directions; drag to turn"),this.canvasPlace.append(r),this.controls=new P0(this.camera,r),this.controls.enablePan=!1,this.controls.minDistance=.9,this.controls.maxDistance=5,this.controls.target.set(0,0,.22),this.controls.addEventListener("change",()=>this.ask()),this.controls.addEventListener("end",()=>To("camera",JSON.stringify(this.camera.position.toArray()))),this.listen(r),r.addEventListener("webglcontextlost",a=>a.preventDefault()),r.addEventListener("webglcontextrestored",()=>this.ask())}catch{$(this.canvasPlace,g("p",{class:"quiet pad"},"This browser draws no 3D here (WebGL is off). Everything is on the page in numbers and maps as well."))}this.ok=this.renderer!==null,this.software=t,this.placeCamera(),new ResizeObserver(()=>this.ask()).observe(this.canvasPlace),$(this.presets,...Dc.map(([,n,s])=>_e(n,()=>this.fly(s))))}placeCamera(){let e=Dc[0][2];try{const t=JSON.parse(Fh("camera")??"null");Array.isArray(t)&&t.length===3&&t.every(n=>Number.isFinite(n))&&(e=t)}catch{}this.camera.position.set(...e),this.controls?.update()}fly(e){this.goal=new U(...e),matchMedia("(prefers-reduced-motion: reduce)").matches&&this.camera.position.copy(this.goal),To("camera",JSON.stringify(e)),this.ask()}ride(e){this.riding=e,this.ask()}label(e,t,n,s="",r=!0){const a=g("span",{class:s},e);this.labels.append(a),this.marks.push({element:a,at:new U(...t),parent:n,hides:r})}clearLabels(e){for(const t of this.marks)t.parent===e&&t.element.remove();this.marks=this.marks.filter(t=>t.parent!==e)}ask(){this.asked||!this.renderer||(this.asked=!0,requestAnimationFrame(e=>{this.asked=!1,this.render(e,!this.software)}),this.software&&(window.clearTimeout(this.resting),this.resting=window.setTimeout(()=>{this.asked||this.render(performance.now(),!0)},W0)))}ratio(e,t){return this.software?e?Math.max(1,Math.min(Cc,Math.sqrt(G0/t))):1:Math.max(Cc,window.devicePixelRatio)}render(e,t){const n=this.canvasPlace.clientWidth,s=this.canvasPlace.clientHeight;if(!this.renderer||!n||!s)return;const r=this.renderer.getSize(new Ve),a=this.ratio(t,n*s);this.renderer.getPixelRatio()!==a&&this.renderer.setPixelRatio(a),this.hairlines&&(this.hairlines.opacity=Math.min(1,$0*a)),(r.x!==n||r.y!==s)&&(this.renderer.setSize(n,s),this.camera.aspect=n/s,this.camera.fov=2*Math.atan(Math.tan(Pc*Math.PI/360)*Math.max(1,q0/this.camera.aspect))*180/Math.PI,this.camera.updateProjectionMatrix()),this.goal&&(this.camera.position.lerp(this.goal,.3),this.camera.position.distanceTo(this.goal)<.01&&(this.goal=null),this.controls?.update(),this.ask()),this.moves?.(e)?this.ask():this.moves=null,this.room.quaternion.identity(),this.riding&&this.room.quaternion.copy(this.device.quaternion).invert(),this.renderer.render(this.scene,this.camera),this.place(n,s),this.drawn++}place(e,t){const n=this.device.getWorldPosition(new U),s=this.camera.position,r=new U,a=s.clone().sub(n);for(const o of this.marks){r.copy(o.at),o.parent.localToWorld(r);const c=o.hides&&r.clone().sub(n).dot(a)<0;r.project(this.camera),o.element.hidden=c||r.z>1,o.element.hidden||(o.element.style.transform=`translate(${((r.x+1)/2*e).toFixed(1)}px, ${((1-r.y)/2*t).toFixed(1)}px) translate(-50%, -50%)`)}}under(e){const t=this.canvasPlace.getBoundingClientRect(),n=new zf;n.setFromCamera(new Ve((e.clientX-t.left)/t.width*2-1,1-(e.clientY-t.top)/t.height*2),this.camera);const s=this.device.getWorldPosition(new U),r=n.ray.intersectSphere(new ts(s,Qt),new U);if(!r)return null;const a=this.device.worldToLocal(r).normalize();return[a.x,a.y,a.z]}listen(e){let t=[0,0],n=!1;e.addEventListener("pointerdown",s=>{t=[s.clientX,s.clientY],this.goal=null;const r=this.dragged?this.under(s):null;!r||!this.dragged||(n=!0,this.controls&&(this.controls.enabled=!1),e.setPointerCapture(s.pointerId),this.dragged(r))},{capture:!0}),e.addEventListener("pointermove",s=>{const r=s.buttons&&!n?null:this.under(s);n&&r?this.dragged?.(r):s.buttons||this.hovered?.(r)}),e.addEventListener("pointerleave",()=>this.hovered?.(null)),e.addEventListener("pointerup",s=>{this.controls&&(this.controls.enabled=!0);const a=Math.hypot(s.clientX-t[0],s.clientY-t[1])<4&&!n?this.under(s):null;n=!1,a&&this.picked?.(a)})}}const Lc=Float32Array.from(Nn,i=>(i/255)**2.2);class Y0{constructor(e){this.stage=e,this.cursorMark=new Ot(new jo(.016,16,12),new Ts({color:16777215})),this.cursorMark.visible=!1,e.device.add(this.rings,this.drawn,this.cursorMark),this.frame()}rings=new en;points=null;mesh=null;drawn=new en;cursorMark;cells=null;cellKey="";frame(){const e=lt(),t=[];qi(this.rings),this.stage.clearLabels(this.rings);const n=(a,o)=>t.push(new U(...a).multiplyScalar(Qt),new U(...o).multiplyScalar(Qt));for(let a=30;a<180;a+=30)for(let o=0;o<360;o+=6)n(Wt(a,o),Wt(a,o+6));for(let a=0;a<360;a+=30)for(let o=0;o<180;o+=6)n(Wt(o,a),Wt(o+6,a));const s=this.stage.hairlines=new is({color:e.ring,transparent:!0});this.rings.add(new bh(new It().setFromPoints(t),s));const r=(a,o)=>[a[0]*o,a[1]*o,a[2]*o];for(let a=30;a<180;a+=30)this.stage.label(`${a}°`,r(Wt(a,0),Qt*1.05),this.rings,"ring");for(let a=30;a<360;a+=30)this.stage.label(`${a}°`,r(Wt(90,a),Qt*1.05),this.rings,"ring");for(const[a,o,c]of[["x",[1,0,0],"x"],["y",[0,1,0],"y"],["z",[0,0,1],"z"]]){const l=c==="x"?e.cross:c==="y"?e.good:e.co;this.rings.add(new As(new U(...o),new U,Qt*1.16,l,.05,.03)),this.stage.label(a,r(o,Qt*1.24),this.rings,`letter ${c}`,!1)}this.cursorMark.material.color.set(e.cross),this.stage.ask()}shape(e){this.clear(),this.cells=e}clear(){qi(this.drawn),this.points=this.mesh=null,this.cellKey="",this.stage.ask()}dots(e,t,n=-1){const s=this.cells;if(!s)return;const r=s.directions.length/3;if(!this.points||this.mesh){this.clear();const h=new It;h.setAttribute("position",new $t(Float32Array.from(s.directions,d=>Qt*d),3)),h.setAttribute("color",new $t(new Float32Array(s.directions.length),3));const u=r>6e3?.012:r>1500?.02:.03;this.points=new Eh(h,new Sh({size:u,vertexColors:!0})),this.points.frustumCulled=!1,this.drawn.add(this.points)}const a=new je(lt().ring),o=new je(lt().cross),c=this.points.geometry.getAttribute("color"),l=c.array;for(let h=0;h<r;h++){const u=3*wr(e[h],t.low,t.high);h===n?l.set([o.r,o.g,o.b],3*h):u<0?l.set([a.r,a.g,a.b],3*h):l.set(Lc.subarray(u,u+3),3*h)}c.needsUpdate=!0,this.stage.ask()}surface(e,t,n){const s=this.cells;if(!s)return;const r=s.directions,a=r.length/3,{low:o,high:c}=t,l=f=>e[f]!==null&&Number.isFinite(e[f]),h=f=>Qt*Math.max(.03,Math.min(1,(e[f]-o)/(c-o)));if(!this.mesh||this.cellKey!==n){this.clear(),this.cellKey=n;const f=new It,A=[],T=this.stage.software&&a>8e3?2:1;for(let b=0;b+T<s.rows;b+=T)for(let P=0;P<s.columns;P+=T){const C=P+T>=s.columns;if(C&&!s.closed)continue;const D=b*s.columns+P,N=b*s.columns+(C?0:P+T),w=D+T*s.columns,M=N+T*s.columns;l(D)&&l(N)&&l(w)&&l(M)&&A.push(D,w,N,N,w,M)}f.setIndex(A),f.setAttribute("position",new $t(new Float32Array(3*a),3)),f.setAttribute("color",new $t(new Float32Array(3*a),3)),this.mesh=new Ot(f,new Ts({vertexColors:!0,side:2})),this.mesh.frustumCulled=!1,this.drawn.add(this.mesh)}const u=this.mesh.geometry,d=u.getAttribute("position"),p=u.getAttribute("color"),_=d.array,v=p.array;for(let f=0;f<a;f++){const A=l(f)?h(f):0;_[3*f]=r[3*f]*A,_[3*f+1]=r[3*f+1]*A,_[3*f+2]=r[3*f+2]*A}d.needsUpdate=!0,u.computeVertexNormals();const m=u.getAttribute("normal").array;for(let f=0;f<a;f++){const A=3*Math.max(0,wr(e[f],o,c)),T=.42+.58*Math.abs(.48*m[3*f]+.72*m[3*f+1]+.5*m[3*f+2]);for(let b=0;b<3;b++)v[3*f+b]=Lc[A+b]*T}p.needsUpdate=!0,this.stage.ask()}get holds(){return this.mesh?"surface":this.points?"points":"nothing"}cursor(e){this.cursorMark.visible=e!==null,e&&this.cursorMark.position.set(e[0],e[1],e[2]).multiplyScalar(Qt),this.stage.ask()}nearest(e){const t=this.cells?.directions;if(!t)return-1;let n=-2,s=-1;for(let r=0;r<t.length;r+=3){const a=t[r]*e[0]+t[r+1]*e[1]+t[r+2]*e[2];a>n&&(n=a,s=r/3)}return s}told(e,t,n){const s=this.nearest(e),r=this.cells?.directions??[],a=s<0?null:[r[3*s],r[3*s+1],r[3*s+2]],o=a!==null&&gi(e,a)>Math.cos(t*dt);return`${this.words(o?a:e)}: ${(o?n(s):null)??"not measured"}`}scaleBar(e,t=""){if(!e){$(this.stage.colourBar);return}const n=g("canvas",{attrs:{width:1,height:128,"aria-hidden":"true"}}),s=n.getContext("2d");for(let c=0;c<128;c++){const l=6*(127-c);s.fillStyle=`rgb(${Nn[l]} ${Nn[l+1]} ${Nn[l+2]})`,s.fillRect(0,c,1,1)}const r=e.high-e.low,a=r>60&&r%20===0?20:10,o=Array.from({length:Math.round(r/a)+1},(c,l)=>e.high-l*a);$(this.stage.colourBar,g("span",{},`${t} / ${e.unit}`),g("div",{},n,g("ol",{},...o.map(c=>g("li",{},c.toFixed(0))))))}words(e){const[t,n]=bn(e);return`theta ${t.toFixed(1)}°, phi ${((n+360)%360).toFixed(1)}°`}}function j0(i,e){return new Is(new It().setFromPoints(i.map(t=>new U(...t).multiplyScalar(Qt*1.003))),new is({color:e}))}const K0={flip:"flip test","beam-coarse":"coarse beam search","beam-fine":"fine beam search"};function Z0(i){if(i.hand)return{run:i.hand.text,share:"",left:"",level:""};if(!i.run||!i.total)return{run:"no scan since the server began",share:"",left:"",level:""};const e=(i.measured??0)/i.total,t=i.kind&&i.kind!=="scan"?` (${K0[i.kind]??i.kind})`:"";return{run:`${i.run}${t}: ${i.state}`,share:`${(100*e).toFixed(e<.1?1:0)} %`,left:i.running&&i.left_s!==void 0?`${Qn(i.left_s)} left`:`${i.measured} of ${i.total} points`,level:i.running&&typeof i.level_db=="number"?`${Be(i.level_db,1)} dB`:""}}function J0(){const i=g("div",{class:"bar-told"}),e=g("i"),t=g("div",{class:"alarm",attrs:{role:"alert"}});let n=!1,s=0;const r=async()=>{n=!0,a.classList.add("pressed");for(let l=0;n;l++)try{await ze("/api/stop",{}),n=!1,$(t)}catch(h){$(t,`STOP WAS NOT HEARD (${l+1} tries): ${Yt(h)} Use the emergency stop.`),await new Promise(u=>window.setTimeout(u,700))}a.classList.remove("pressed")},a=_e("STOP",()=>void(n||r()),"stop","brake the axes and end the scan (Ctrl + .)");window.addEventListener("keydown",l=>{l.ctrlKey&&l.key==="."&&a.click()});const o=g("footer",{class:"control-bar",attrs:{"aria-label":"scan and stop"}},g("div",{class:"bar-progress"},e),g("div",{class:"bar-row"},i,t,a)),c=()=>{if(!s)return;const l=Math.round((Date.now()-s)/1e3);!n&&l>=1&&$(t,`THE SERVER HAS NOT ANSWERED FOR ${l} s. This page shows old values and cannot stop the axes: use the emergency stop.`),o.classList.toggle("lost",l>=1)};return window.setInterval(c,500),pt.watch({status:l=>{const h=Z0(l);$(i,g("b",{},h.run),h.share&&g("span",{class:"share"},h.share),h.left&&g("span",{},h.left),h.level&&g("span",{},h.level)),e.style.width=l.total&&!l.hand?`${100*(l.measured??0)/l.total}%`:"0",o.classList.toggle("moving",al(l)),a.setAttribute("aria-label",al(l)?"STOP: the axes may move":"STOP: nothing moves")},linked:l=>{l?(s=0,o.classList.remove("lost"),n||$(t)):s||(s=Date.now())}}),o}function Q0(){const i=g("span",{class:"row lease"}),e=g("span",{class:"bad small",attrs:{role:"status"}});let t="";const n=()=>{const r=Ne.me?.mine===!0,a=pt.status.lease,o=`${r}${a}`;if(o===t)return;t=o;const c=r?"you may move the axes":a?`${a} may move the axes`:"nobody may move the axes";$(i,g("span",{class:`chip${r?" hot":""}`},c),vt("operate")&&(r?_e("give back",()=>void s(!1)):_e("take motion lease",()=>void s(!0))),e)},s=async r=>{try{Ne.me=await ze("/api/lease",{hold:r}),$(e)}catch(a){$(e,Yt(a)),Ne.me=await zc().catch(()=>Ne.me)}t="",n()};return window.setInterval(()=>{Ne.me?.mine&&pt.up&&s(!0)},1e4),pt.watch({status:r=>{Ne.me&&(Ne.me.mine=r.lease===Ne.me.name),n()}}),n(),i}const Ic={"roll-over-azimuth":{swept:"azimuth",stepped:"roll",slice:"a great circle through boresight",poles:"All slices meet at +z, in front, and at -z."},"azimuth-over-elevation":{swept:"azimuth",stepped:"elevation",slice:"a circle of constant elevation",poles:"The circles shrink towards +y and -y."},"elevation-over-azimuth":{swept:"elevation",stepped:"azimuth",slice:"a circle of constant azimuth",poles:"The circles shrink towards +x and -x."}};function ev(i,e,t){const n=[Math.max(i[0],e),Math.min(i[1],t)];return n[0]<n[1]?n:i}function Rr(i,e){const t=i==="roll-over-azimuth",n=i==="elevation-over-azimuth"?e.first:e.second,s=ev(i==="elevation-over-azimuth"?e.second:e.first,-90,90),r=(t?[0,30,60,90,120,150]:[0,20,40,-20,-40]).filter(a=>a>=n[0]&&a<=n[1]);return(r.length?r:[(n[0]+n[1])/2]).map((a,o)=>o%2?{stepped:a,from:s[1],to:s[0]}:{stepped:a,from:s[0],to:s[1]})}function Ao(i,e,t){const n=Rr(i,e),s=Math.min(.999999,Math.max(0,t))*n.length,r=Math.floor(s),a=s-r,o=n[r],c=n[Math.max(0,r-1)],h=r>0&&a<.2?c.stepped+(o.stepped-c.stepped)*(a/.2):o.stepped,u=r>0?Math.max(0,(a-.2)/.8):a,d=o.from+(o.to-o.from)*u;return i==="elevation-over-azimuth"?{slice:r,first:h,second:d}:{slice:r,first:d,second:h}}function tv(i,e,t){const n=Rr(i,e),s=Ao(i,e,t);return n.slice(0,s.slice+1).map((r,a)=>{const o=i==="elevation-over-azimuth"?s.second:s.first,c=a<s.slice?r.to:o,l=Math.max(2,Math.ceil(Math.abs(c-r.from)/2));return Array.from({length:l},(h,u)=>{const d=r.from+(c-r.from)*u/(l-1);return i==="elevation-over-azimuth"?Da(i,r.stepped,d):Da(i,d,r.stepped)})})}function nv(i,e,t){const n=nu(i,e.first,e.second),s=t?i==="roll-over-azimuth"?-e.second:n:0;return{field:n,probe:s,level:Math.cos((n-s)*Math.PI/180)}}const iv=[{text:"On a roll over azimuth, azimuth sweeps and the roll stands. What does the probe pass over on the device's sphere?",answers:["a circle of constant theta","a great circle through boresight","one point"],right:1,why:"Each slice is a great circle through +z; the roll angle says which one."},{text:"The roll stands at 90°, the probe stands still with its axis horizontal. The device radiates along x. What does the probe take in?",answers:["all of the field","half of its power","none of it: the field is across"],right:2,why:"The device turned by 90°, its field with it: the probe's axis and the field are at right angles. A probe that follows the roll takes in all of it."},{text:"Where do the slices of a roll over azimuth crowd together?",answers:["at boresight and behind the device","at the horizon, theta 90°","nowhere"],right:0,why:"All great circles through +z meet there and at -z. Theta and phi turn quickly near them; Ludwig 3 does not at boresight."}];function Uc(i,e,t,n){return[{text:`On an ${i}, ${e} sweeps and ${t} stands. What does the probe pass over on the device's sphere?`,answers:["a great circle through boresight, whatever the step",`a circle of constant ${t}`,"one point"],right:1,why:`Only the slice of ${t} 0° is a great circle; the others are smaller, parallel to it.`},{text:"The device radiates along x. At boresight the probe takes in all of it. Both axes stand at 40° now, and the probe stands still. What does it take in?",answers:["all of the field","less: the field leans before it","none of it"],right:1,why:"Away from both axes' zeros the field of Ludwig's third definition leans before a probe that stands still; the dial shows by how much."},{text:`Where do the slices of an ${i} crowd together?`,answers:["at boresight and behind the device",`towards +${n} and -${n}`,"nowhere"],right:1,why:`The circles shrink towards the ends of the axis that carries them: +${n} and -${n}.`}]}const sv={"roll-over-azimuth":iv,"azimuth-over-elevation":Uc("azimuth over elevation","azimuth","elevation","y"),"elevation-over-azimuth":Uc("elevation over azimuth","elevation","azimuth","x")};function rv(i,e){const t=sv[i],n=g("div",{class:"quiz",attrs:{"aria-live":"polite"}});let s=0;const r=a=>{const o=t[a];if(!o){$(n,g("p",{class:s===t.length?"good":""},`${s} of ${t.length} right.`),_e("once more",()=>{s=0,r(0)}));return}const c=g("p",{}),l=o.answers.map((h,u)=>_e(h,()=>{u===o.right&&s++,l.forEach((d,p)=>{d.disabled=!0,d.classList.toggle("right",p===o.right),d.classList.toggle("wrong",p===u&&u!==o.right)}),$(c,`${u===o.right?"Right. ":"No. "}${o.why} `,_e(a+1<t.length?"next question":"end",()=>r(a+1),"main"))}));$(n,g("p",{},`${a+1} of ${t.length}: ${o.text}`),g("div",{class:"stacked"},...l),c)};return r(0),n}const zi=[["roll-over-azimuth","roll over azimuth"],["azimuth-over-elevation","azimuth over elevation"],["elevation-over-azimuth","elevation over azimuth"]],Nc={first:[-180,180],second:[-180,360]};function av(i){const e=new Qe("Slice by slice"),t=new Qe("One direction by hand"),n=new Qe("Three questions"),s=new en,r=g("div",{class:"dial"}),a=g("ol",{class:"captions"}),o=new AbortController,c=g("p",{class:"small quiet"});i.stage.device.add(s);let l=zi.find(([H])=>H===Dt("stand"))?.[0]??"roll-over-azimuth",h=Nc,u=null,d=0,p=!1,_=0,v=null,m=3;const f=()=>{h=u&&u.geometry===l?u.limits:Nc;const H=u?.geometry===l?u:null;i.chamber.build(H?.motion??{geometry:l,range_m:1,size_mm:[90,90,12],offset_mm:[0,0,0],ports:1}),$(c,H?`This campaign's chamber, by its readouts: ${H.motion.limits_words.join(", ")}. The slices stay within${H.motion.joints?` what the plan goes to; the mount's coordinates are drawn, its ${H.motion.joints} joints are not`:""}.${H.motion.axes.includes("probe")?"":" Its probe cannot turn."}`:u?"Not this campaign's positioner: shown without limits.":""),n.show({key:l,words:zi.find(([ie])=>ie===l)[1]},rv(l)),A()},A=()=>{const H=Ao(l,h,d),ie=nv(l,H,p),Ce=lt(),Oe=Da(l,H.first,H.second);qi(s);for(const F of tv(l,h,d))F.length>1&&s.add(j0(F,Ce.cross));const Le=Kc(...bn(Oe));s.add(new As(new U(...Le),new U(...Oe).multiplyScalar(Qt*1.01),.24,Ce.co,.07,.04)),i.chamber.turn(H.first,H.second,ie.probe),i.sphere.cursor(Oe),b(ie),P(H.slice,ie.level);const K=Ic[l];$(i.stage.caption,`${zi.find(([F])=>F===l)[1]}: ${K.swept} sweeps, ${K.stepped} steps. Orange: swept. Blue-green arrow: the device's field.`);const J=C.querySelector("input");(document.activeElement!==J||_)&&(J.value=String(Math.round(1e3*d)),$(C.querySelector("output"),T()))},T=()=>`slice ${Ao(l,h,d).slice+1} of ${Rr(l,h).length}`,b=H=>{const ie="http://www.w3.org/2000/svg",Ce=document.createElementNS(ie,"svg"),Oe=(We,Pe,Ee="")=>{const ve=document.createElementNS(ie,We);for(const[Ke,xe]of Object.entries(Pe))ve.setAttribute(Ke,String(xe));Ee&&(ve.textContent=Ee),Ce.append(ve)};for(const[We,Pe]of Object.entries({viewBox:"0 0 180 180",role:"img","aria-label":`what the probe sees: field at ${H.field.toFixed(0)} degrees, probe at ${H.probe.toFixed(0)} degrees`}))Ce.setAttribute(We,Pe);const Le=(We,Pe)=>[90+Pe*Math.cos(We*Math.PI/180),90-Pe*Math.sin(We*Math.PI/180)];Oe("circle",{cx:90,cy:90,r:78,fill:"none",stroke:"var(--edge)","stroke-width":2});for(let We=0;We<360;We+=30){const[Pe,Ee]=Le(We,72),[ve,Ke]=Le(We,78);Oe("line",{x1:Pe,y1:Ee,x2:ve,y2:Ke,stroke:"var(--quiet)"})}const[K,J]=Le(H.probe,78),[F,te]=Le(H.probe+180,78);Oe("line",{x1:K,y1:J,x2:F,y2:te,stroke:"var(--cross)","stroke-width":3,"stroke-dasharray":"7 4"});const[ae,be]=Le(H.field,62);Oe("line",{x1:90,y1:90,x2:ae,y2:be,stroke:"var(--co)","stroke-width":5,"stroke-linecap":"round"});const[it,R]=Le(H.probe,62*H.level);Oe("circle",{cx:it,cy:R,r:6,fill:"var(--cross)"}),$(r,g("h3",{},"What the probe sees"),Ce,g("p",{class:"small"},`Field (blue-green) at ${H.field.toFixed(0)}°, probe axis (orange) at ${H.probe.toFixed(0)}°: the probe takes in ${(100*H.level*H.level).toFixed(0)} % of the power.`))},P=(H,ie)=>{const Ce=Ic[l],Oe=H===0?0:p?3:Math.abs(ie)<.98?2:1,Le=[`The ${Ce.swept} axis sweeps. The probe passes over ${Ce.slice}.`,`The ${Ce.stepped} axis steps, and the next slice begins. ${Ce.poles}`,l==="roll-over-azimuth"?"The field rides on the device: with every step of the roll it turns before a probe that stands still.":"The field rides on the device: away from the middle it leans before a probe that stands still.",l==="roll-over-azimuth"?"A probe that follows the roll keeps the same component all the time.":"A probe that turns along with the field keeps the same component."];$(a,...Le.map((K,J)=>g("li",{class:J===Oe?"now":""},K)))},C=Mn("through the slices",0,1e3,1,0,H=>{d=H/1e3,v=null,A()},"",T),D=_e("play",()=>{if(_){N();return}d>=.999&&(d=0),v=null;let H=performance.now();const ie=Ce=>{d=Math.min(1,d+(Ce-H)/(4500*Rr(l,h).length)),H=Ce,A(),d>=1?N():_=requestAnimationFrame(ie)};_=requestAnimationFrame(ie),$(D,"pause")},"main"),N=()=>{cancelAnimationFrame(_),_=0,$(D,"play")},w=tn("positioner",zi.map(([H,ie])=>[H,ie]),l,H=>{l=H,Mi({stand:l===u?.geometry?"":l}),d=0,f(),v&&ee()}),M=tn("probe",[["still","stands still"],["following","follows"]],"still",H=>{p=H==="following",A()}),S=g("input",{attrs:{type:"checkbox"},on:{change:()=>i.stage.ride(S.checked)}});e.show({key:"",words:""},g("div",{class:"row no-print"},D,w,M,g("label",{class:"row small"},S,"ride with the device")),C,c,g("div",{class:"two"},a,r));let L=40,O=25;const V=[g("input",{attrs:{type:"number",min:0,max:180,step:1,value:L,"aria-label":"theta in degrees"}}),g("input",{attrs:{type:"number",min:-180,max:360,step:1,value:O,"aria-label":"phi in degrees"}})],z=g("div",{});V.forEach((H,ie)=>H.addEventListener("input",()=>{H.value!==""&&(ie?O=Number(H.value):L=Number(H.value),ee())})),i.stage.dragged=H=>{N(),[L,O]=bn(H).map(ie=>Math.round(10*ie)/10),V[0].value=String(L),V[1].value=String(O),v=H,ee()};const Y=new Qe("readings","bare","h3");z.append(Y.element);const ee=async()=>{const H=await Y.ask({key:"hand|",words:""},ie=>ze("/api/tutor",{theta_deg:L,phi_deg:O},ie),ie=>G(ie),{keep:!0});H&&j(H)},j=H=>{const ie=lt(),Ce=H.bases[m],Oe=zi.findIndex(([F])=>F===l),Le=H.positioners[Oe].ways[0],K=H.positioners[Oe].axes,J=new U(...H.direction).multiplyScalar(Qt*1.01);qi(s);for(const[F,te,ae]of[[Ce.first,ie.co,.26],[Ce.second,ie.good,.26],[Le.fixed,ie.quiet,.34],[Le.following,ie.cross,.3]])s.add(new As(new U(...F),J,ae,te,.06,.035));i.chamber.turn(Le.readouts[K[0]],Le.readouts[K[1]],p?Le.probe_roll:0),i.sphere.cursor(H.direction),$(i.stage.caption,"By hand. Blue-green and green: unit vectors of the components. Grey: a probe that stands still, as an arrow on the device. Orange: one that follows.")},G=H=>[xt(["this direction","angles / deg","formula"],[["theta, phi",`${Be(H.theta,1)}, ${Be(H.phi,1)}`,g("code",{},"(sin th cos ph, sin th sin ph, cos th)")],["azimuth, elevation (pole y)",`${Be(H.azimuth,1)}, ${Be(H.elevation,1)}`,g("code",{},"(sin az cos el, sin el, cos az cos el)")],["alpha, epsilon (pole x)",`${Be(H.alpha,1)}, ${Be(H.epsilon,1)}`,g("code",{},"(sin al, cos al sin ep, cos al cos ep)")]]),xt(["components there","first","second"],H.bases.map(ie=>[g("span",{attrs:{title:ie.formula}},ie.name),g("code",{},Fc(ie.first)),g("code",{},Fc(ie.second))])),xt(["positioner","readouts / deg","still probe sees slant","probe roll that follows"],H.positioners.map(ie=>[ie.name,ie.axes.map(Ce=>`${Ce} ${Be(ie.ways[0].readouts[Ce],1)}`).join(", "),`${Be(ie.ways[0].slant_fixed,1)}°`,`${Be(ie.ways[0].probe_roll,1)}°`])),g("p",{class:"small"},H.positioners[zi.findIndex(([ie])=>ie===l)].pole)],se=[["0","theta and phi"],["1","Ludwig 2, pole y"],["2","Ludwig 2, pole x"],["3","Ludwig 3"]];return t.show({key:"",words:""},g("p",{class:"small"},"Drag on the sphere, or type an angle."),g("div",{class:"row"},g("label",{class:"row"},"theta",V[0],"deg"),g("label",{class:"row"},"phi",V[1],"deg"),tn("arrows",se,"3",H=>{m=Number(H),ee()})),z),ze("/api/motion",{campaign:Ne.campaign},o.signal).then(H=>{const ie=Le=>H.limits_deg[H.axes.indexOf(Le)]??[-180,360],Ce=ie("azimuth"),Oe=ie(H.geometry==="roll-over-azimuth"?"roll":"elevation");u={geometry:H.geometry,motion:H,limits:{first:Ce,second:Oe}},Dt("stand")||(l=H.geometry,w.querySelector("select").value=l),f()},()=>o.signal.aborted||f()),f(),{title:"Learn",element:g("div",{class:"page learn-page"},e.element,n.element,t.element),leave:()=>{N(),o.abort(),Y.leave(),qi(s),i.stage.device.remove(s),i.stage.dragged=null}}}function Fc(i){return`(${i.map(e=>(Object.is(e,-0)?0:e).toFixed(3)).join(", ")})`}const Ra={plan:["Plan",rd],align:["Align",fu],scan:["Scan",hd],explore:["Explore",Qu],learn:["Learn",av]},ov={view:"may watch and stop",operate:"may operate",configure:"may configure"};function Oh(i){const e=matchMedia("(prefers-color-scheme: dark)").matches?"dark":"light",t=i??Fh("theme")??e;document.documentElement.dataset.theme=t,i&&To("theme",i)}class lv{page=null;name="";view;content=g("div",{class:"content"});campaigns=null;open(e){const t=new X0;this.view={stage:t,chamber:new T0(t),sphere:new Y0(t)},et.watch(n=>this.view.sphere.cursor(n)),t.picked=n=>et.pin(n),$(e,this.head(),g("main",{class:"split"},t.element,this.content),J0()),window.addEventListener("hashchange",()=>this.show()),window.addEventListener("popstate",()=>this.show()),pt.open(),this.show(!0)}show(e=!1){const t=xs(location.hash),n=t.page in Ra?t.page:"plan",s=t.values.c;s&&Ne.me?.campaigns.some(c=>c.id===s)&&(Ne.campaign=s),this.campaigns&&(this.campaigns.value=Ne.campaign);const r=`${n} ${Ne.campaign} ${t.values.run??""}`;if(!e&&r===this.name){this.page?.follow?.();return}this.name=r,this.page?.leave();const{stage:a,sphere:o}=this.view;a.hovered=a.dragged=null,a.picked=c=>et.pin(c),$(a.readout),$(a.caption),o.clear(),o.scaleBar(null),a.ride(!1),et.fromAddress(),this.page=Ra[n][1](this.view),document.title=`Colure: ${this.page.title}`;for(const c of document.querySelectorAll("nav a"))c.getAttribute("data-page")===n?c.setAttribute("aria-current","page"):c.removeAttribute("aria-current");$(this.content,n==="plan"?null:g("h1",{class:"heard"},this.page.title),this.page.element)}head(){const e=g("span",{class:"chip",attrs:{role:"status"}}),t=g("a",{class:"chip draft",attrs:{href:"#plan"}}),n=Ne.me?.campaigns??[];pt.watch({linked:o=>{e.className=`chip${o?"":" hot"}`,$(e,o?ov[Ne.me?.role??""]??"":"not connected")}}),Hc(()=>this.drafts(t)),this.drafts(t);const s=n.length>1&&tn("campaign",n.map(o=>[o.id,o.folder]),Ne.campaign,o=>{Ne.campaign=o,history.replaceState(null,"",`#${xs(location.hash).page}`),Mi({c:o}),this.show(!0)});this.campaigns=s?s.querySelector("select"):null;const r=_e("◐",()=>{Oh(document.documentElement.dataset.theme==="dark"?"light":"dark"),this.view.sphere.frame(),this.view.chamber.build({...this.stand()},!0),this.show(!0)});r.setAttribute("aria-label","light or dark"),r.title="light or dark";const a=g("nav",{attrs:{"aria-label":"pages"}},...Object.entries(Ra).map(([o,[c]])=>g("a",{attrs:{href:`#${o}`,"data-page":o},on:{click:l=>this.go(l,o)}},c)));return g("header",{class:"top"},g("span",{class:"name"},cv(),"Colure"),a,s,g("span",{class:"spring"}),t,...Mu(),e,vt("configure")&&_e("invite",()=>void this.invite()),r,Q0())}go(e,t){e.preventDefault();const n=(Ne.me?.campaigns.length??0)>1?`?c=${Ne.campaign}`:"";location.hash=`#${t}${n}`}stand(){return this.view.chamber.stand??{geometry:"roll-over-azimuth",range_m:1,size_mm:[50,50,5],offset_mm:[0,0,0],ports:1}}drafts(e){const t=Co(Ne.campaign);e.hidden=t===0,$(e,`${t} unsaved ${t===1?"value":"values"}`)}async invite(){try{const{code:e}=await ze("/api/invite",{role:"view"});Xi("A link for somebody who watches",()=>[g("p",{},"It opens one session on this computer. That session may look and stop, and nothing else. The link works once and for a short while."),g("p",{class:"mono copy"},`${location.origin}/launch?code=${e}`)])}catch(e){Xi("No link was made",()=>[g("p",{class:"faults"},Yt(e))])}}}function cv(){const i="http://www.w3.org/2000/svg",e=document.createElementNS(i,"svg");for(const[t,n]of Object.entries({viewBox:"0 0 24 24",width:"24",height:"24","aria-hidden":"true"}))e.setAttribute(t,n);for(const[t,n]of[[10,"var(--ink)"],[4,"var(--cross)"]]){const s=document.createElementNS(i,"ellipse");for(const[r,a]of Object.entries({cx:12,cy:12,rx:t,ry:10,fill:"none",stroke:n,"stroke-width":1.8}))s.setAttribute(r,String(a));e.append(s)}return e}async function hv(){Oh();const i=document.getElementById("app");try{Ne.me=await zc();const e=xs(location.hash).values.c;Ne.campaign=Ne.me.campaigns.find(t=>t.id===e)?.id??Ne.me.campaigns[0].id,new lv().open(i)}catch(e){$(i,g("main",{class:"pad"},g("h1",{},"The control room did not open"),g("p",{class:"faults"},Yt(e)),g("p",{},"A link opens once. colure serve prints a new one when it starts; a session that may configure makes more with invite.")))}}hv();
