function _(i,e={},...t){const n=document.createElement(i);e.class&&(n.className=e.class);for(const[s,r]of Object.entries(e.attrs??{}))r===!0?n.setAttribute(s,""):r!==!1&&r!==void 0&&n.setAttribute(s,String(r));for(const[s,r]of Object.entries(e.on??{}))n.addEventListener(s,r);return j(n,...t),n}function j(i,...e){i.replaceChildren(...e.filter(t=>t!=null&&t!==!1).map(t=>t instanceof Node?t:String(t)))}function ge(i,e,t="",n=""){return _("button",{class:t,on:{click:e},attrs:{type:"button",title:n||void 0}},i)}function an(i,e,t,n){const s=_("select",{on:{change:()=>n(s.value)}},...e.map(([r,a])=>_("option",{attrs:{value:r}},a)));return s.value=t,_("label",{class:"field"},_("span",{},i),s)}function Ln(i,e,t,n,s,r,a="",o=l=>`${l}${a}`){const l=_("output",{},o(s)),c=_("input",{attrs:{type:"range",min:e,max:t,step:n,value:s,"aria-label":i,"aria-valuetext":o(s)},on:{input:()=>{const h=Number(c.value);j(l,o(h)),c.setAttribute("aria-valuetext",o(h)),r(h)}}});return _("label",{class:"field wide"},_("span",{},i),c,l)}function xh(i,e,t,n){const s=_("div",{class:"tabs",attrs:{role:"tablist"}}),r=(a,o)=>{for(const l of s.children){const c=l.getAttribute("data-key")===a;l.setAttribute("aria-selected",String(c)),l.setAttribute("tabindex",c?"0":"-1"),c&&o&&l.focus()}t.setAttribute("aria-labelledby",`tab-${a}`),n(a)};return i.forEach(([a,o],l)=>{const c=_("button",{attrs:{type:"button",role:"tab",id:`tab-${a}`,"data-key":a,"aria-controls":t.id,"aria-selected":String(a===e),tabindex:a===e?0:-1},on:{click:()=>r(a,!1)}},o);c.addEventListener("keydown",h=>{const u=h.key==="ArrowRight"?1:h.key==="ArrowLeft"?-1:0,f=h.key==="Home"?0:h.key==="End"?i.length-1:u?(l+u+i.length)%i.length:-1;f<0||(h.preventDefault(),r(i[f][0],!0))}),s.append(c)}),t.setAttribute("role","tabpanel"),t.setAttribute("tabindex","0"),t.setAttribute("aria-labelledby",`tab-${e}`),s}function St(i,e,t=""){return _("table",{class:t},_("thead",{},_("tr",{},...i.map(n=>_("th",{attrs:{scope:"col"}},n)))),_("tbody",{},...e.map(n=>_("tr",{},...n.map(s=>_("td",{},s))))))}function Yn(i){const e=Math.round(i/60);return i<90?`${Math.round(i)} s`:e<60?`${e} min`:`${Math.floor(e/60)} h ${String(e%60).padStart(2,"0")} min`}function Ne(i,e=2){return i==null||!Number.isFinite(i)?"-":i.toFixed(e)}function cs(i){return i.running||!!i.hand}class yh{status={type:"status",state:"idle",running:!1,sequence:0,lease:""};grid=null;frame=null;up=!1;watchers=new Set;wait=250;heard=0;open(){const e=new WebSocket(`${location.protocol==="https:"?"wss":"ws"}://${location.host}/api/live`);e.binaryType="arraybuffer",e.onopen=()=>{this.wait=250,this.up=!0,this.tell(t=>t.linked?.(!0))},e.onmessage=t=>{if(this.heard=Date.now(),typeof t.data=="string")this.hear(JSON.parse(t.data));else{const n=this.frame=new Float32Array(t.data);this.tell(r=>r.frame?.(n));const s=()=>{e.readyState===WebSocket.OPEN&&e.send("taken")};document.hidden?window.setTimeout(s,250):requestAnimationFrame(s)}},e.onclose=()=>{this.up=!1,this.tell(t=>t.linked?.(!1)),window.setTimeout(()=>this.open(),this.wait),this.wait=Math.min(4e3,this.wait*2)}}watch(e){return this.watchers.add(e),e.status?.(this.status),this.grid&&e.grid?.(this.grid),this.frame&&e.frame?.(this.frame),e.linked?.(this.up||this.heard===0),()=>this.watchers.delete(e)}hear(e){if(e.type==="grid")this.grid=e,this.frame=null,this.tell(t=>t.grid?.(e));else{const t=this.status={sequence:0,lease:"",...e};this.tell(n=>n.status?.(t))}}tell(e){for(const t of[...this.watchers])try{e(t)}catch(n){console.error(n)}}}const It=new yh;class hs extends Error{constructor(e,t){super(t.join("; ")),this.status=e,this.faults=t}}let gc="";async function _c(i){const e=await i.json();if(!i.ok)throw new hs(i.status,e.errors??["no reason was given"]);return e}async function In(i,e=[],t){let n=0;const s=i.replace(/\{\w+\}/g,()=>encodeURIComponent(e[n++]??""));return _c(await fetch(s,{headers:{Accept:"application/json"},signal:t??null}))}async function He(i,e,t){return _c(await fetch(i,{method:"POST",headers:{"Content-Type":"application/json","X-Colure-Token":gc},body:JSON.stringify(e),signal:t??null}))}async function vc(){const i=await In("/api/me");return gc=i.token,i}function Hi(i,e,t=()=>{}){const n=document.activeElement,s=[...document.querySelectorAll("header.top, main")],r=()=>{if(l.isConnected){l.remove();for(const c of s)c.inert=!1;n?.focus(),t()}},a=_("h2",{attrs:{id:"dialog-title",tabindex:-1}},i),o=_("div",{class:"dialog",attrs:{role:"dialog","aria-modal":"true","aria-labelledby":"dialog-title"}},_("div",{class:"row"},a,_("span",{class:"spring"}),ge("close",r,"tiny","close (Escape)")),...e(r).filter(c=>c instanceof Node)),l=_("div",{class:"shade"},o);l.addEventListener("keydown",c=>{c.key==="Escape"&&r()});for(const c of s)c.inert=!0;return document.body.append(l),a.focus(),{element:o,close:r}}const dr=new Map,Ma=new Set;function Vi(i){let e=dr.get(i);if(!e){try{e=JSON.parse(sessionStorage.getItem(`draft-${i}`)??"{}")??{}}catch{e={}}dr.set(i,e)}return e}function Mh(i,e,t){const n=Vi(i);t===void 0?delete n[e]:n[e]=t,yc(i)}function Yo(i){dr.set(i,{}),yc(i)}function yo(i){return Object.keys(Vi(i)).length}function xc(i){return Ma.add(i),()=>Ma.delete(i)}function yc(i){try{sessionStorage.setItem(`draft-${i}`,JSON.stringify(Vi(i)))}catch{}for(const e of Ma)e()}window.addEventListener("beforeunload",i=>{[...dr.values()].some(e=>Object.keys(e).length)&&i.preventDefault()});const Be={me:null,campaign:""};function _t(i){const e=["nobody","view","operate","configure"];return Be.me!==null&&e.indexOf(Be.me.role)>=e.indexOf(i)}function qt(i){return i instanceof hs?i.faults.join(`
`):i instanceof TypeError?"The server does not answer. Is colure serve still running?":i instanceof Error?i.message:String(i)}function Sa(i){return i instanceof DOMException&&i.name==="AbortError"}const Mc={scan:"scan",flip:"flip test","beam-coarse":"coarse beam search","beam-fine":"fine beam search"};function Sh(i){const e=`${i.measured} of ${i.total} points`,t=i.measured_at?`, the last on ${new Date(1e3*i.measured_at).toLocaleString()}`:"";return i.state==="nothing"?"nothing yet":i.state==="complete"?`complete${i.total?`, ${e}`:""}${t}`:i.state==="damaged"?"a journal that cannot be read":`${e}${t}: the start goes on with the rest`}async function Mo(i,e,t="scan"){let n;try{n=await He("/api/before",{campaign:Be.campaign,run:i,kind:t})}catch(s){return e(s),!1}return new Promise(s=>{let r=!1;Hi(t==="scan"?"Before anything moves":`Before anything moves: ${Mc[t]}`,a=>wh(n,t,a,(o,l)=>{r=o,l!==void 0&&e(l),s(o)},o=>{a(),Mo(o,e,t).then(s)}),()=>{r||window.setTimeout(()=>s(!1),0)})})}function wh(i,e,t,n,s){const r=_("input",{attrs:{type:"checkbox",disabled:i.fault!==""},on:{change:()=>h.disabled=!r.checked}}),a=_("input",{attrs:{type:"checkbox"}}),o=_("p",{class:"faults",attrs:{role:"alert"}},i.fault),l=i.on_disk.total?i.points-i.on_disk.measured:i.points,c=yo(Be.campaign),h=ge("start",()=>{h.disabled=!0;const f={campaign:Be.campaign,run:i.run,sequence:It.status.sequence,cautions_read:!0,kind:e,home:a.checked};He("/api/start",f).then(()=>{n(!0),t()},p=>{j(o,qt(p)),h.disabled=!1})},"main");h.disabled=!0;const u=[["run",i.run],["to measure",`${Math.max(0,l)} of ${i.points} points`],["takes about",i.fault?"-":Yn(i.duration_s)],["on disk",Sh(i.on_disk)],["chamber",i.simulated?"simulated: nothing real moves":"real: the axes move"]];return[St(["",""],u.map(([f,p])=>[_("strong",{},f),p]),"facts"),c>0&&_("p",{class:"warn"},`${c} unsaved ${c===1?"value":"values"} of the form: the scan uses what is on disk, without ${c===1?"it":"them"}.`),o,i.fault!==""&&ge(`take the name ${i.free_name}`,()=>s(i.free_name),"main"),_("h3",{},"Cautions"),_("ul",{},...i.cautions.map(f=>_("li",{},f))),_("p",{},_("label",{},r," Everyone is clear of the axes and the cautions are understood.")),_("p",{class:"small"},_("label",{},a," Home the axes first (needed after a fault of the motion).")),_("div",{class:"row"},ge("not now",t),_("span",{class:"spring"}),h)]}class tt{subject=_("span",{class:"subject mono"});body=_("div",{class:"panel-body"});faults=_("div",{class:"faults",attrs:{role:"alert"}});tools=_("span",{class:"row"});element;asked=0;stop=null;key="";constructor(e,t="card",n="h2"){this.element=_("section",{class:`${t} panel`,attrs:{"aria-label":e}},_("div",{class:"panel-head"},_(n,{},e),this.subject,_("span",{class:"spring"}),this.tools),this.faults,this.body)}async ask(e,t,n,s={}){const r=++this.asked;this.stop?.abort();const a=this.stop=new AbortController;this.element.setAttribute("aria-busy","true"),(!s.keep||this.key.split("|")[0]!==e.key.split("|")[0])&&this.empty("",e);const o=window.setTimeout(()=>{r===this.asked&&!this.body.childElementCount&&j(this.body,_("p",{class:"quiet loading"},s.waiting??"Being worked out."))},150);try{const l=await t(a.signal);if(r!==this.asked)return;const c=s.of?.(l);if(c&&s.expect&&!So(c,s.expect))throw new Error(`The server answered about ${c.run}${c.state?`, ${c.state}`:""}, not about what was asked. Nothing is shown.`);return j(this.faults),j(this.subject,e.words),this.key=e.key,j(this.body,...n(l)),l}catch(l){if(r!==this.asked||Sa(l))return;j(this.subject,e.words),this.key=e.key,j(this.body),j(this.faults,_("p",{},qt(l)),ge("ask again",()=>void this.ask(e,t,n,s),"tiny"));return}finally{window.clearTimeout(o),r===this.asked&&this.element.removeAttribute("aria-busy")}}empty(e,t=null){t||(this.asked++,this.stop?.abort(),this.element.removeAttribute("aria-busy")),j(this.subject,t?.words??""),this.key=t?.key??"",j(this.faults),j(this.body,e&&_("p",{class:"quiet"},e))}show(e,...t){this.asked++,this.stop?.abort(),this.element.removeAttribute("aria-busy"),j(this.faults),j(this.subject,e.words),this.key=e.key,j(this.body,...t)}fault(e){Sa(e)||j(this.faults,_("p",{},qt(e)))}leave(){this.asked++,this.stop?.abort()}}function So(i,e){const t=e.frequency_hz===null||i.frequency_hz===null||Math.abs(i.frequency_hz-e.frequency_hz)<1;return i.run===e.run&&(i.state??null)===(e.state??null)&&t}const bh=["#3b1a6b","#453781","#404f8b","#38658c","#2e788e","#268b8d","#1f9e89","#2fb07b","#51c369","#7fd34e","#b0dd2f","#d9e21a","#fde725"],Eh=["#301437","#45135c","#592a8f","#5e51ad","#6276ba","#7297c1","#95b5c7","#c4ced4","#e2d9e2","#d8c7be","#cca389","#c27c63","#b25652","#983550","#741e4f","#4a1342","#2f1436"];function Sc(i){const e=new Uint8ClampedArray(768),t=i.map(n=>[1,3,5].map(s=>parseInt(n.slice(s,s+2),16)));for(let n=0;n<256;n++){const s=n/255*(t.length-1),r=Math.min(t.length-2,Math.floor(s));for(let a=0;a<3;a++)e[3*n+a]=t[r][a]+(s-r)*(t[r+1][a]-t[r][a])}return e}const Pn=Sc(bh),Th=Sc(Eh);function fr(i,e,t){return i===null||!Number.isFinite(i)?-1:Math.max(0,Math.min(255,Math.round(255*(i-e)/(t-e))))}function dt(){const i=getComputedStyle(document.documentElement),e=t=>i.getPropertyValue(t).trim();return{co:e("--co"),cross:e("--cross"),other:e("--other"),ink:e("--ink"),quiet:e("--quiet"),grid:e("--grid"),paper:e("--paper"),good:e("--good"),band:e("--band"),bad:e("--bad"),focus:e("--focus"),ring:e("--ring"),edge:e("--edge"),card:e("--card")}}function rr(i,e){const t=URL.createObjectURL(e);_("a",{attrs:{href:t,download:i}}).click(),window.setTimeout(()=>URL.revokeObjectURL(t),1e4)}function wc(i){const e=s=>{if(s==null||typeof s=="number"&&!Number.isFinite(s))return"";const r=typeof s=="string"&&/^[=+\-@\t\r]/.test(s)?`'${s}`:String(s);return/[",\n]/.test(r)?`"${r.replaceAll('"','""')}"`:r},t=Math.max(0,...i.map(s=>s.values.length)),n=[i.map(s=>e(s.name)).join(",")];for(let s=0;s<t;s++)n.push(i.map(r=>e(r.values[s])).join(","));return`${n.join(`\r
`)}\r
`}async function Ah(i,e,t){const n=URL.createObjectURL(new Blob([i],{type:"image/svg+xml"})),s=new Image;await new Promise((o,l)=>{s.onload=o,s.onerror=()=>l(new Error("the picture could not be drawn")),s.src=n});const r=_("canvas",{attrs:{width:2*e,height:2*t}});return r.getContext("2d").drawImage(s,0,0,2*e,2*t),URL.revokeObjectURL(n),new Promise((o,l)=>r.toBlob(c=>c?o(c):l(new Error("the picture could not be packed")),"image/png"))}function br(i){const e=()=>rr(`${i.name()}.svg`,new Blob([i.svg().text],{type:"image/svg+xml"})),t=()=>{const{text:s,width:r,height:a}=i.svg();Ah(s,r,a).then(o=>rr(`${i.name()}.png`,o))},n=()=>rr(`${i.name()}.csv`,new Blob([wc(i.columns())],{type:"text/csv"}));return _("span",{class:"save no-print",attrs:{role:"group","aria-label":"save this chart"}},ge("SVG",e,"tiny","save the picture as SVG"),ge("PNG",t,"tiny","save the picture as PNG"),ge("CSV",n,"tiny","save the values as CSV"))}function Ss(...i){return i.filter(Boolean).join("-").toLowerCase().replaceAll(/[^a-z0-9._-]+/g,"-").replaceAll(/^-+|-+$/g,"")||"chart"}function pr([i,e],t=7){const n=Math.min(i,e),s=Math.abs(e-i);if(!(s>0))return[n];const r=s/t,a=10**Math.floor(Math.log10(r)),l=[...s>=80&&s<=400?[15,30,45,60,90]:[],a,2*a,5*a,10*a].sort((h,u)=>h-u).find(h=>s/h<=t+1)??10*a,c=[];for(let h=Math.ceil(n/l-1e-9)*l;h<=n+s*(1+1e-9);h+=l)c.push(Math.round(h/l)*l);return c}function ci(i,[e,t]){const n=Math.abs(t-e),s=n>20?0:n>2?1:n>.2?2:3,r=i.toFixed(Number.isInteger(i)&&n>5?0:s);return Number(r)===0?r.replace("-",""):r}function Ir(i,e,t,n){const s=t+(i[0]-t)*n,r=t+(i[1]-t)*n;return bc([s,r],e)}function Ur(i,e,t){return bc([i[0]+t,i[1]+t],e)}function bc([i,e],t){const n=Math.min(e-i,t[1]-t[0]),s=Math.max(t[0],Math.min(i,t[1]-n));return[s,s+n]}function us(i,e){let t=1/0,n=-1/0;for(const a of i)a===null||!Number.isFinite(a)||(t=Math.min(t,a),n=Math.max(n,a));if(t>n)return[0,e];const s=Math.floor(t/e-1e-9)*e,r=Math.ceil(n/e+1e-9)*e;return r>s?[s,r]:[s,s+e]}const Ec="http://www.w3.org/2000/svg",zt=56,Nr=14,Mt=12,Rh=40;function ct(i,e,t=""){const n=document.createElementNS(Ec,i);for(const[s,r]of Object.entries(e))n.setAttribute(s,String(r));return t&&(n.textContent=t),n}class vn{constructor(e){this.name=e;const t=_("div",{class:"chart-tools no-print"},ge("whole",()=>this.reset(),"tiny","show all of it (0)"),ge("+",()=>this.zoomAll(.5),"tiny","closer (+)"),ge("−",()=>this.zoomAll(2),"tiny","farther (-)"),ge("◂",()=>this.pan(-.25),"tiny","to the left"),ge("▸",()=>this.pan(.25),"tiny","to the right"),br({name:()=>Ss(this.name),svg:()=>this.picture(),columns:()=>this.columns()}));this.canvas.setAttribute("aria-label",e),this.element=_("div",{class:"chart"},_("div",{class:"chart-view"}),this.legend,t),this.element.firstElementChild.append(this.canvas),new ResizeObserver(()=>{this.data&&this.room()!==this.width&&this.paint()}).observe(this.element),this.listen()}canvas=ct("svg",{tabindex:0,role:"img"});legend=_("div",{class:"legend mono"});element;moved=null;clicked=null;data=null;xView=[0,1];yView=[0,1];whole=[[0,1],[0,1]];cursor=null;overlay=ct("g",{});width=0;room(){return Math.max(260,Math.round(this.element.clientWidth)||600)}draw(e,t=this.name){this.name=t,this.canvas.setAttribute("aria-label",t);const n=e.xWhole??[Math.min(...e.x),Math.max(...e.x)],s=e.yWhole??us(e.lines.flatMap(a=>a.values),5),r=this.data!==null&&this.data.xName===e.xName&&n.every((a,o)=>a===this.whole[0][o])&&s.every((a,o)=>a===this.whole[1][o]);this.data=e,r||(this.whole=[n[1]>n[0]?n:[n[0]-.5,n[0]+.5],s],this.xView=[...this.whole[0]],this.yView=[...this.whole[1]]),this.paint()}reset(){this.xView=[...this.whole[0]],this.yView=[...this.whole[1]],this.paint()}zoomAll(e){const t=this.cursor??(this.xView[0]+this.xView[1])/2;this.xView=Ir(this.xView,this.whole[0],t,e),this.paint()}pan(e){this.xView=Ur(this.xView,this.whole[0],e*(this.xView[1]-this.xView[0])),this.paint()}get view(){return{x:this.xView,y:this.yView}}inner(){return{w:this.width-zt-Nr,t:(this.data?.height??300)-Mt-Rh}}px(e){return zt+(e-this.xView[0])/(this.xView[1]-this.xView[0])*this.inner().w}py(e){return Mt+(1-(e-this.yView[0])/(this.yView[1]-this.yView[0]))*this.inner().t}paint(){const e=this.data;if(!e)return;this.width=this.room();const t=e.height??300,{w:n,t:s}=this.inner(),r=dt(),a=`clip-${Math.round(1e9*Math.random())}`;j(this.canvas);for(const[c,h]of Object.entries({width:this.width,height:t,viewBox:`0 0 ${this.width} ${t}`,"font-family":"system-ui, sans-serif","font-size":12}))this.canvas.setAttribute(c,String(h));const o=ct("clipPath",{id:a});o.append(ct("rect",{x:zt,y:Mt,width:n,height:s})),this.canvas.append(o);for(const c of pr(this.xView,Math.max(3,Math.floor(n/75))))this.canvas.append(ct("line",{x1:this.px(c),x2:this.px(c),y1:Mt,y2:Mt+s,stroke:r.grid}),ct("text",{x:this.px(c),y:Mt+s+15,fill:r.quiet,"text-anchor":"middle"},ci(c,this.xView)));for(const c of pr(this.yView,Math.max(3,Math.floor(s/40))))this.canvas.append(ct("line",{x1:zt,x2:zt+n,y1:this.py(c),y2:this.py(c),stroke:r.grid}),ct("text",{x:zt-6,y:this.py(c)+4,fill:r.quiet,"text-anchor":"end"},ci(c,this.yView)));this.canvas.append(ct("rect",{x:zt,y:Mt,width:n,height:s,fill:"none",stroke:r.edge}),ct("text",{x:zt+n/2,y:Mt+s+33,fill:r.quiet,"text-anchor":"middle"},e.xName),ct("text",{x:0,y:0,fill:r.quiet,"text-anchor":"middle",transform:`translate(13 ${Mt+s/2}) rotate(-90)`},e.yName));const l=ct("g",{"clip-path":`url(#${a})`});for(const c of e.marks??[])this.mark(l,c,s);for(const c of e.lines)l.append(ct("path",{d:this.path(c),fill:"none",stroke:c.colour,"stroke-width":c.width??1.8,...c.dash?{"stroke-dasharray":c.dash}:{},"stroke-linejoin":"round"})),c.points&&c.values.forEach((h,u)=>h!==null&&l.append(ct("circle",{cx:this.px(e.x[u]),cy:this.py(h),r:3,fill:c.colour})));this.peak(l,r.ink),this.overlay=ct("g",{}),this.canvas.append(l,this.overlay),this.showCursor()}path(e){let t="",n=!1;const s=this.data.x;return e.values.forEach((r,a)=>{if(r===null||!Number.isFinite(r)){n=!1;return}t+=`${n?"L":"M"}${this.px(s[a]).toFixed(1)} ${this.py(r).toFixed(1)}`,n=!0}),t}mark(e,t,n){const s=this.px(t.at);t.to!==void 0&&e.append(ct("rect",{x:Math.min(s,this.px(t.to)),y:Mt,width:Math.abs(this.px(t.to)-s),height:n,fill:t.colour,opacity:.16})),e.append(ct("line",{x1:s,x2:s,y1:Mt,y2:Mt+n,stroke:t.colour,"stroke-dasharray":"4 4"})),t.text&&e.append(ct("text",{x:s+4,y:Mt+13,fill:t.colour},t.text))}peak(e,t){const n=this.data?.lines[this.data.peakOf??-1];if(!this.data||!n)return;let s=-1;if(n.values.forEach((o,l)=>{o!==null&&(s<0||o>(n.values[s]??-1/0))&&(s=l)}),s<0)return;const r=this.px(this.data.x[s]),a=this.py(n.values[s]);e.append(ct("path",{d:`M${r} ${a-3}l-5 -8h10z`,fill:t}),ct("text",{x:r+9,y:a-3<Mt+12?a+14:a-4,fill:t},`${n.values[s].toFixed(this.data.digits??2)} at ${ci(this.data.x[s],[0,1])}`))}point(e){this.cursor=e,this.showCursor()}showCursor(){const e=this.data;if(!e)return;j(this.overlay);let t=-1;if(this.cursor!==null){const r=this.cursor;t=e.x.reduce((o,l,c)=>o<0||Math.abs(l-r)<Math.abs(e.x[o]-r)?c:o,-1);const a=this.px(r);a>=zt&&a<=this.width-Nr&&this.overlay.append(ct("line",{x1:a,x2:a,y1:Mt,y2:Mt+this.inner().t,stroke:dt().ink,"stroke-width":1}))}const n=e.digits??2,s=e.lines.map(r=>{const a=ct("svg",{width:22,height:8,"aria-hidden":"true"});a.append(ct("line",{x1:0,x2:22,y1:4,y2:4,stroke:r.colour,"stroke-width":2,...r.dash?{"stroke-dasharray":r.dash}:{}}));const o=t<0?void 0:r.values[t];return _("span",{},a,` ${r.name}`,t<0?null:_("b",{},` ${o==null?"-":o.toFixed(n)}`))});j(this.legend,...s,t<0?null:_("span",{class:"quiet"},`${e.xName.split(" / ")[0]} ${e.x[t].toFixed(n)}`))}picture(){const e=this.canvas.cloneNode(!0),t=this.data?.height??300;return e.setAttribute("xmlns",Ec),e.removeAttribute("tabindex"),e.prepend(ct("rect",{width:this.width,height:t,fill:dt().card})),(this.data?.lines??[]).forEach((n,s)=>e.append(ct("text",{x:zt+8,y:Mt+16+15*s,fill:n.colour},n.name))),{text:new XMLSerializer().serializeToString(e),width:this.width,height:t}}columns(){const e=this.data;return e?[{name:e.xName,values:e.x},...e.lines.map(t=>({name:`${t.name} (${e.yName})`,values:t.values}))]:[]}listen(){let e=null,t=null,n=this.whole;const s=o=>{const l=this.canvas.getBoundingClientRect();return[o.clientX-l.left,o.clientY-l.top]},r=o=>this.xView[0]+(o-zt)/this.inner().w*(this.xView[1]-this.xView[0]),a=o=>this.yView[0]+(1-(o-Mt)/this.inner().t)*(this.yView[1]-this.yView[0]);this.canvas.addEventListener("pointerdown",o=>{e=s(o),n=[[...this.xView],[...this.yView]],this.canvas.setPointerCapture(o.pointerId)}),this.canvas.addEventListener("pointermove",o=>{const l=s(o);if(!e){const x=l[0]>=zt&&l[0]<=this.width-Nr;this.point(x?r(l[0]):null),this.moved?.(x?r(l[0]):null);return}const[c,h]=[this.inner().w,this.inner().t];if(o.shiftKey){this.xView=Ur(n[0],this.whole[0],-(l[0]-e[0])/c*(n[0][1]-n[0][0])),this.yView=Ur(n[1],this.whole[1],(l[1]-e[1])/h*(n[1][1]-n[1][0])),this.paint();return}const[u,f,p,g]=jo(e,l,c,h);t?.remove(),t=ct("rect",{x:u,y:f,width:p,height:g,fill:dt().co,opacity:.15,stroke:dt().co}),this.overlay.append(t)}),this.canvas.addEventListener("pointerup",o=>{const l=e,c=s(o);if(e=null,t?.remove(),t=null,!l||o.shiftKey)return;if(Math.hypot(c[0]-l[0],c[1]-l[1])<5){this.clicked?.(r(c[0]));return}const[h,u,f,p]=jo(l,c,this.inner().w,this.inner().t),g=[[r(h),r(h+f)],[a(u+p),a(u)]];[this.xView,this.yView]=[Ir(g[0],this.whole[0],g[0][0],1),Ir(g[1],this.whole[1],g[1][0],1)],this.paint()}),this.canvas.addEventListener("pointerleave",()=>{e||(this.point(null),this.moved?.(null))}),this.canvas.addEventListener("dblclick",()=>this.reset()),this.canvas.addEventListener("keydown",o=>this.key(o))}key(e){const t=(this.xView[1]-this.xView[0])/100,n=this.cursor??(this.xView[0]+this.xView[1])/2;if(e.key==="ArrowRight"||e.key==="ArrowLeft"){const s=Math.max(this.xView[0],Math.min(this.xView[1],n+(e.key==="ArrowRight"?t:-t)));this.point(s),this.moved?.(s)}else if(e.key==="+")this.zoomAll(.5);else if(e.key==="-")this.zoomAll(2);else if(e.key==="0")this.reset();else if(e.key==="Enter"&&this.cursor!==null)this.clicked?.(this.cursor);else return;e.preventDefault()}}function jo(i,e,t,n){let s=Math.max(zt,Math.min(i[0],e[0])),r=Math.max(Mt,Math.min(i[1],e[1])),a=Math.min(zt+t,Math.max(i[0],e[0]))-s,o=Math.min(Mt+n,Math.max(i[1],e[1]))-r;return a>3*o?[r,o]=[Mt,n]:o>3*a&&([s,a]=[zt,t]),[s,r,Math.max(1,a),Math.max(1,o)]}const ut=Math.PI/180,$n=i=>Math.sin(i*ut),Gn=i=>Math.cos(i*ut);function Fi(i,e){return i[0]*e[0]+i[1]*e[1]+i[2]*e[2]}function Tc(i,e,t,n){return[i*e[0]+t*n[0],i*e[1]+t*n[1],i*e[2]+t*n[2]]}function hn(i,e){return[$n(i)*Gn(e),$n(i)*$n(e),Gn(i)]}function Un(i){return[Math.acos(Math.max(-1,Math.min(1,i[2])))/ut,Math.atan2(i[1],i[0])/ut]}function Ch(i,e){return[Fi(i[0],e),Fi(i[1],e),Fi(i[2],e)]}function Fr(i,e){const t=n=>[e[0][n],e[1][n],e[2][n]];return i.map(n=>[0,1,2].map(s=>Fi(n,t(s))))}function xi(i,e){const t=Gn(e),n=$n(e);return i==="x"?[[1,0,0],[0,t,-n],[0,n,t]]:i==="y"?[[t,0,n],[0,1,0],[-n,0,t]]:[[t,-n,0],[n,t,0],[0,0,1]]}function Ac(i,e,t){return i==="roll-over-azimuth"?Fr(xi("y",-e),xi("z",-t)):i==="azimuth-over-elevation"?Fr(xi("x",t),xi("y",-e)):Fr(xi("y",-e),xi("x",t))}function wa(i,e,t){return Ac(i,e,t)[2]}function Rc(i,e,t=0){const n=[Gn(i)*Gn(e),Gn(i)*$n(e),-$n(i)],s=[-$n(e),Gn(e),0];return Tc(Gn(e-t),n,-$n(e-t),s)}function Ph(i,e,t,n=0){const s=Ac(i,e,t),[r,a]=Un(s[2]),o=Ch(s,Rc(r,a,n));return Math.atan2(o[1],o[0])/ut}function ds(i){const[e="",t=""]=i.replace(/^#/,"").split("?");return{page:e,values:Object.fromEntries(new URLSearchParams(t))}}function Dh(i){const e=new URLSearchParams(Object.entries(i.values).filter(([,t])=>t!=="")).toString();return`#${i.page}${e?`?${e}`:""}`}function mi(i,e=!1){const t=ds(location.hash),n=Dh({page:t.page,values:{...t.values,...i}});n!==location.hash&&(e?history.pushState(null,"",n):history.replaceState(null,"",n))}function Lt(i){return ds(location.hash).values[i]??""}function Or(i){const e=Lt(i),t=Number(e);return e!==""&&Number.isFinite(t)?t:null}class Lh{watchers=new Set;pinned=null;get at(){return this.pinned}fromAddress(){const[e,t]=Lt("at").split(",").map(Number);this.pinned=Number.isFinite(e)&&Number.isFinite(t)?hn(e,t):null,this.tell(this.pinned,!0)}hover(e){this.tell(e??this.pinned,e===null)}pin(e){this.pinned=e;const[t,n]=e?Un(e):[0,0];mi({at:e?`${t.toFixed(2)},${n.toFixed(2)}`:""}),this.tell(e,!0)}watch(e){return this.watchers.add(e),e(this.pinned,!0),()=>this.watchers.delete(e)}tell(e,t){for(const n of[...this.watchers])n(e,t)}}const at=new Lh,Ih=[-10,-1,-.1,.1,1,10];class Uh{panel=new tt("Axes by hand","card step");sweepPanel=new tt("One sweep","card step");level=new vn("level of one sweep");impulse=new vn("impulse response of one sweep");last=null;buttons=[];clear=_("input",{attrs:{type:"checkbox"},on:{change:()=>this.enable()}});stopWatching;constructor(){this.draw();const e=this.gated(ge("take one sweep",()=>this.sweep(),"main","the source is on for one sweep; nothing moves"),!1);this.sweepPanel.tools.append(e),this.sweepPanel.empty("Level over frequency and impulse response, with the plan's settings. Nothing moves; the source is off afterwards."),this.stopWatching=It.watch({status:()=>this.enable()})}leave(){this.stopWatching(),this.panel.leave(),this.sweepPanel.leave()}gated(e,t=!0){return e.dataset.clear=String(t),this.buttons.push(e),e}enable(){const e=Be.me?.mine===!0&&!cs(It.status);for(const t of this.buttons)t.disabled=!e||t.dataset.clear==="true"&&!this.clear.checked}run(e,t){this.panel.ask({key:"hand",words:e},t,n=>(this.last=n,this.panel.subject.textContent=`${n.text}, ${new Date(1e3*n.at).toLocaleTimeString()}`,this.content()),{waiting:`${e}. STOP brakes.`}).then(n=>{n||this.panel.body.append(...this.content()),this.enable()})}draw(){this.panel.show({key:"",words:""},...this.content()),this.enable()}content(){const e=Be.campaign;this.buttons=this.buttons.filter(u=>u.isConnected&&this.sweepPanel.element.contains(u));const t=ge("where are the axes?",()=>this.run("the axes are asked",()=>He("/api/where",{campaign:e})),"","nothing moves");t.disabled=!_t("operate");const n=(this.last?.axes??[]).map(u=>{const f=_("input",{attrs:{type:"number",step:"any",value:u.readout_deg.toFixed(2),min:u.min_deg,max:u.max_deg,"aria-label":`${u.axis}: go to this readout, degrees`}}),p=g=>this.run(`${u.axis} to ${g.toFixed(2)}°`,()=>He("/api/move",{campaign:e,to_deg:{[u.axis]:g},clear:!0}));return[_("strong",{},u.axis),_("span",{class:"mono"},`${u.readout_deg.toFixed(3)}°`),_("span",{class:"jogs"},...Ih.map(g=>this.gated(ge(`${g>0?"+":"−"}${Math.abs(g)}`,()=>p(u.readout_deg+g),"tiny",`${u.axis}: by ${g} degrees`)))),_("span",{class:"row"},f,this.gated(ge("go",()=>p(Number(f.value)),"tiny"))),_("span",{class:"mono small"},`${u.min_deg}° to ${u.max_deg}°, home ${u.home_deg}°`)]}),s=at.at&&Un(at.at),r=_("input",{attrs:{type:"number",min:0,max:180,step:"any",value:s?s[0].toFixed(1):"0","aria-label":"theta to go to"}}),a=_("input",{attrs:{type:"number",step:"any",value:s?s[1].toFixed(1):"0","aria-label":"phi to go to"}}),o=this.gated(ge("point there",()=>this.run("to a direction",()=>He("/api/point",{campaign:e,theta_deg:Number(r.value),phi_deg:Number(a.value),clear:!0})))),l=this.gated(ge("all to home",()=>this.run("to home",()=>He("/api/rest",{campaign:e,seek:!1,clear:!0})))),c=this.gated(ge("seek reference marks",()=>this.run("reference marks are sought",()=>He("/api/rest",{campaign:e,seek:!0,clear:!0})))),h=ge("make this home",()=>this.keep(),"","writes home_deg into chamber.toml");return h.disabled=!_t("configure")||!this.last?.axes.length,[_("div",{class:"row"},t,_("label",{class:"row small"},this.clear,"the axes are free to move")),n.length?_("div",{class:"scroll-x"},St(["axis","readout","by / deg","to / deg","limits"],n,"axes")):_("p",{class:"quiet small"},"Moves need the motion lease and everyone clear."),_("div",{class:"row"},_("label",{class:"row small"},"theta",r),_("label",{class:"row small"},"phi",a),o,l,c,h)]}keep(){const e=this.last?.axes??[];Hi("Make these readouts the home of the axes?",t=>[_("p",{},e.map(n=>`${n.axis} ${n.readout_deg.toFixed(3)}°`).join(", ")),_("p",{class:"small"},"home_deg of each axis in chamber.toml changes; the file as it was stays beside it."),_("div",{class:"row"},ge("back",t),_("span",{class:"spring"}),ge("make this home",()=>{He("/api/set-rest",{campaign:Be.campaign,home_deg:Object.fromEntries(e.map(n=>[n.axis,n.readout_deg]))}).then(t,n=>{t(),this.panel.fault(n)})},"main"))])}sweep(){const e=dt();this.sweepPanel.ask({key:"sweep",words:""},()=>He("/api/sweep",{campaign:Be.campaign}),t=>{this.sweepPanel.subject.textContent=new Date(1e3*t.at).toLocaleTimeString();const n=t.sweep;if(!n)return[_("p",{},"No sweep came.")];const s=n.frequency_hz.map(r=>r/1e9);return this.level.draw({x:s,lines:n.level_db.map((r,a)=>({name:`port ${a+1}`,values:r,colour:a?e.cross:e.co,points:s.length<30})),xName:"frequency / GHz",yName:"S21 / dB",height:220}),n.time_ns.length&&this.impulse.draw({x:n.time_ns,lines:[{name:"port 1",values:n.impulse_db,colour:e.co}],xName:"time / ns",yName:"level / dB",yWhole:[-70,5],height:220,peakOf:0}),[this.level.element,n.time_ns.length?this.impulse.element:_("p",{class:"quiet small"},"An impulse response needs three frequencies or more.")]})}}function Ko(i){const e="http://www.w3.org/2000/svg",t=document.createElementNS(e,"svg"),n=(f,p,g="")=>{const x=document.createElementNS(e,f);for(const[m,d]of Object.entries(p))x.setAttribute(m,String(d));g&&(x.textContent=g),t.append(x)},s=i!==null&&Math.abs(i.theta_zero_deg)>i.theta_zero_expanded_deg,r=i!==null&&Math.abs(i.axes_offset_mm)>i.axes_offset_expanded_mm,a=i===null?"not measured yet":`${s?`turn by ${i.theta_zero_deg.toFixed(3)} degrees`:"no turn"}, ${r?`shift by ${i.axes_offset_mm.toFixed(2)} mm`:"no shift"}`;for(const[f,p]of Object.entries({viewBox:"0 0 640 300",role:"img","aria-label":`range from above: ${a}`,"font-size":14,class:"range-picture"}))t.setAttribute(f,String(p));const o="var(--ink)",l="var(--cross)",c="var(--quiet)",h=r?22*Math.sign(i.axes_offset_mm):0,u=s?12*Math.sign(i.theta_zero_deg):0;return n("text",{x:16,y:26,fill:c},"from above"),n("line",{x1:150,y1:150,x2:560,y2:150,stroke:c,"stroke-dasharray":"5 5"}),n("circle",{cx:150,cy:150,r:84,fill:"none",stroke:c}),n("circle",{cx:150,cy:150,r:5,fill:o}),n("text",{x:160,y:144,fill:c},"azimuth axis"),n("line",{x1:66,y1:150,x2:234,y2:150,stroke:"var(--good)","stroke-width":3,"stroke-dasharray":"9 5"}),n("line",{x1:66,y1:150+h+u,x2:234,y2:150+h-u,stroke:"var(--co)","stroke-width":6,"stroke-linecap":"round"}),n("path",{d:"M560 132 L604 150 L560 168 Z",fill:o}),n("text",{x:556,y:120,fill:o},"probe"),s&&(n("path",{d:u>0?"M236 122 A90 90 0 0 1 240 168":"M240 132 A90 90 0 0 1 236 178",fill:"none",stroke:l,"stroke-width":3}),n("text",{x:252,y:206,fill:l},`turn ${i.theta_zero_deg.toFixed(3)}° ± ${i.theta_zero_expanded_deg.toFixed(3)}°`)),r&&(n("line",{x1:110,y1:150+h,x2:110,y2:150,stroke:l,"stroke-width":3}),n("text",{x:70,y:262,fill:l},`shift ${i.axes_offset_mm.toFixed(2)} mm ± ${i.axes_offset_expanded_mm.toFixed(2)} mm`)),i&&!s&&!r&&n("text",{x:252,y:206,fill:"var(--good)"},"nothing to turn or shift within the uncertainty"),n("text",{x:16,y:288,fill:c},"blue-green: roll axis as found (enlarged); green, dashed: as it should lie"),_("div",{},t)}function Nh(i){const e=new tt("Instruments","card step"),t=new tt("Level, laser or pointer","card step"),n=new tt("Flip test","card step"),s=new tt("Beam search","card step"),r=new tt("What only a scan shows","card step"),a=new tt("Range from above","card"),o=new Uh,l=_("ol",{class:"checklist"}),c=Be.campaign,h=[{key:"talk",words:"Instruments answer",panel:e,state:""},{key:"hand",words:"Axes move as told",panel:o.panel,state:""},{key:"sweep",words:"A signal is there",panel:o.sweepPanel,state:""},{key:"level",words:"Levelled by other means",panel:t,state:""},{key:"flip",words:"Flip test",panel:n,state:""},{key:"beam",words:"Beam found",panel:s,state:""},{key:"rest",words:"Taken out of the data",panel:r,state:""}],u=(I,k)=>{const $=h.find(ee=>ee.key===I);$.state!==k&&($.state=k,f())},f=()=>j(l,...h.map(I=>_("li",{class:I.state?"ticked":""},_("button",{attrs:{type:"button"},on:{click:()=>I.panel.element.scrollIntoView({block:"start"})}},I.words,I.state&&_("span",{class:"small quiet"},I.state))))),p=I=>{if(!I.at)return[_("p",{class:"quiet"},"Not asked since the server began. Nothing moves when they are.")];const k=new Date(1e3*I.at).toLocaleString();return e.subject.textContent=`asked ${k}`,u("talk",I.lines.every($=>$.good)?`ready, ${k}`:""),[St(["what","state","found"],I.lines.map($=>[$.what,_("span",{class:$.good?"good":"bad"},$.good?"ready":"not ready"),$.found]))]},g=ge("talk to every instrument",()=>{g.disabled=!0,e.ask({key:"talk",words:""},()=>He("/api/check",{campaign:c}),p,{waiting:"The instruments are asked; nothing moves."}).finally(()=>g.disabled=!_t("operate"))},"main");g.disabled=!_t("operate"),e.tools.append(g),e.ask({key:"talk",words:""},I=>In("/api/checked/{campaign}",[c],I),p),t.show({key:"",words:""},_("p",{},"Set the roll axis level, and the probe on its line, with the means you have. The readings go into chamber.toml under [alignment] with their uncertainty; they count as what was known beforehand."),_("p",{class:"small"},"Alignment lasers: class 2 or lower, never towards eyes, off before the run.")),r.show({key:"",words:""},_("p",{},"Whole spheres find the remaining misalignments by themselves: tilt of the roll axis, both offsets, the probe's roll. They are taken out of the data, and listed in the run's findings with what to turn.")),a.show({key:"",words:"not measured yet"},Ko(null));const x=[],m=(I,k,$,ee,Y)=>{const W=ge(I,()=>void Mo(k(),Q=>ee.fault(Q),$),"main",Y);return x.push(W),W},d=(I,k)=>_("input",{attrs:{value:I,pattern:"[A-Za-z0-9_-]{1,70}","aria-label":k}}),A=d("flip","name of the flip test's run"),T=d("beam","name of the beam search"),w=_("div",{}),C=_("div",{}),D=_("p",{class:"quiet small"}),L=_("p",{class:"quiet small"}),F=async()=>{const I=A.value;try{const k=await He("/api/flip",{campaign:c,run:I});j(w,...k.sentences.map($=>_("p",{},$))),j(n.faults),j(n.subject,`run ${I}`),a.show({key:I,words:`flip test ${I}`},Ko(k.numbers)),u("flip",`run ${I}`)}catch(k){j(w),n.fault(k)}},y=async()=>{const I=T.value;try{const k=await He("/api/beam",{campaign:c,run:I}),$=ge("set as home",()=>void M(I),"","azimuth/elevation positioners: the beam's readouts become the axes' zeros in chamber.toml");$.disabled=!_t("configure"),j(C,...k.sentences.map(ee=>_("p",{},ee)),$),j(s.faults),j(s.subject,`run ${I}`),u("beam",`run ${I}`)}catch(k){j(C),s.fault(k)}},M=async I=>{try{j(L,(await He("/api/home",{campaign:c,run:I})).join("; "))}catch(k){j(s.faults,_("p",{},qt(k)))}};n.show({key:"",words:""},_("p",{},"One cut from both sides: theta, and -theta with the roll at 180°. A device cannot tell them apart. What differs is the range: a zero that is off, or axes that miss each other. It takes a few minutes."),_("div",{class:"row"},_("label",{class:"row"},"run",A),m("measure both sides",()=>A.value,"flip",n,"needs the motion lease"),ge("read a finished one",()=>void F())),D,w),s.show({key:"",words:""},_("p",{},"Steps of half a beam over the front, then a fine look where it was strongest. So you know where the beam is before hours are spent."),_("div",{class:"row"},_("label",{class:"row"},"run",T),m("look coarsely",()=>T.value,"beam-coarse",s,"needs the motion lease"),m("look finely",()=>T.value,"beam-fine",s,"needs the motion lease, and a coarse look"),ge("read a finished one",()=>void y())),L,C);let b=!1;const P=It.watch({status:I=>{const k=b&&!I.running&&I.state==="done"&&I.campaign===c,$=`${I.state}: ${I.measured??0} of ${I.total??0} points of ${I.run??""}`;I.kind==="flip"&&I.running&&j(D,$),I.kind?.startsWith("beam")&&I.running&&j(L,`${I.kind==="beam-coarse"?"coarse":"fine"} look, ${$}`),k&&I.kind==="flip"&&F(),k&&I.kind==="beam-coarse"&&j(L,"The coarse look is done; the fine one goes where it was strongest."),k&&I.kind==="beam-fine"&&y(),b=I.running;for(const ee of x)ee.disabled=cs(I)||Be.me?.mine!==!0;I.axes&&I.angles_deg?.length&&i.chamber.turnTo(I.angles_deg,I.axes)}});return He("/api/motion",{campaign:c}).then(I=>i.chamber.build(I),I=>e.fault(I)),j(i.stage.caption,"The chamber as chamber.toml declares it."),f(),{title:"Align",element:_("div",{class:"page align-page"},_("nav",{class:"card",attrs:{"aria-label":"steps"}},l),_("div",{class:"align-steps"},a.element,...h.map(I=>I.panel.element))),leave:()=>{P(),o.leave();for(const I of[e,n,s])I.leave()}}}const kr="http://www.w3.org/2000/svg";function Fh(i,e,t,n,s){const l=dt(),c=document.createElementNS(kr,"svg"),h=(p,g,x="")=>{const m=document.createElementNS(kr,p);for(const[d,A]of Object.entries(g))m.setAttribute(d,String(A));x&&(m.textContent=x),c.append(m)};for(const[p,g]of Object.entries({viewBox:"0 0 460 460",width:460,height:460,role:"img","aria-label":i,"font-family":"system-ui, sans-serif","font-size":12,class:"polar"}))c.setAttribute(p,String(g));for(let p=0;p<s;p+=10)h("circle",{cx:230,cy:230,r:200*(1-p/s),fill:"none",stroke:l.grid}),h("text",{x:234,y:230-200*(1-p/s)+13,fill:l.quiet},(n-p).toFixed(0));for(let p=0;p<360;p+=30){const g=Math.sin(p*Math.PI/180),x=-Math.cos(p*Math.PI/180);h("line",{x1:230,y1:230,x2:230+200*g,y2:230+200*x,stroke:l.grid}),h("text",{x:230+216*g,y:230+214*x+4,fill:l.quiet,"text-anchor":"middle"},`${p>180?p-360:p}°`)}for(const p of t){let g="",x=!1;e.forEach((m,d)=>{const A=p.values[d];if(A===null){x=!1;return}const T=200*Math.max(0,1-(n-A)/s);g+=`${x?"L":"M"}${(230+T*Math.sin(m*Math.PI/180)).toFixed(1)} ${(230-T*Math.cos(m*Math.PI/180)).toFixed(1)}`,x=!0}),h("path",{d:g,fill:"none",stroke:p.colour,"stroke-width":p.width??1.8,...p.dash?{"stroke-dasharray":p.dash}:{}})}t.forEach((p,g)=>h("text",{x:6,y:16+15*g,fill:p.colour},p.name));const u=br({name:()=>Ss(i),svg:()=>{const p=c.cloneNode(!0);return p.setAttribute("xmlns",kr),{text:new XMLSerializer().serializeToString(p),width:460,height:460}},columns:()=>[{name:"angle / deg",values:e},...t.map(p=>({name:p.name,values:p.values}))]}),f=_("div",{class:"chart"});return j(f,c,_("div",{class:"chart-tools no-print"},u)),f}class Oh{constructor(e){this.explorer=e,this.chart.moved=t=>at.hover(t===null||!this.cut?null:this.directionAt(t)),this.chart.clicked=t=>{this.marks=[...this.marks.slice(-1),t],this.cut&&at.pin(this.directionAt(t)),this.show()},this.stopCursor=at.watch(t=>this.follow(t)),this.tools()}panel=new tt("Cut through the peak","card tab-card");chart=new vn("cut");apart=new vn("difference");element=_("div",{},this.panel.element);round=Lt("polar")==="1";marks=[];stopCursor;cut=null;leave(){this.stopCursor(),this.panel.leave()}directionAt(e){const{peak:t,tangent:n}=this.cut;return Tc(Math.cos(e*ut),t,Math.sin(e*ut),n)}follow(e){if(!this.cut||!e){this.chart.point(null);return}const t=Fi(e,this.cut.peak),n=Fi(e,this.cut.tangent),r=t*t+n*n>Math.cos(2*ut)**2?Math.atan2(n,t)/ut:null;this.chart.point(r),this.apart.point(r)}tools(){const{looked:e}=this.explorer,t=Ln("plane, from E towards H",0,175,5,e.plane,o=>{e.plane=o,this.explorer.changed()},"°"),n=o=>{e.plane=o;const l=t.querySelector("input");l.value=String(o),l.dispatchEvent(new Event("input"))},s=ge(this.round?"rectangular":"polar",()=>{this.round=!this.round,mi({polar:this.round?"1":""}),j(s,this.round?"rectangular":"polar"),this.show()}),a=this.explorer.runs().filter(o=>o!==e.run).map(o=>{const l=_("input",{attrs:{type:"checkbox",checked:e.beside.includes(o)},on:{change:()=>{e.beside=l.checked?[...e.beside,o].slice(-4):e.beside.filter(c=>c!==o),this.explorer.changed()}}});return _("label",{class:"row small"},l,o)});this.element.prepend(_("div",{class:"row no-print"},t,ge("E",()=>n(0)),ge("H",()=>n(90)),s),a.length?_("div",{class:"row no-print",attrs:{role:"group","aria-label":"beside"}},_("span",{class:"small quiet"},"beside:"),...a):"")}show(){const{looked:e}=this.explorer,t={...e.body(),frequency:e.frequency,plane_deg:e.plane,basis:e.basis},n=e.of(!0),s=[...e.beside],r=async a=>{const o=await He("/api/cut",t,a),l=e.known?.specification&&!e.tried?await He("/api/masks",t,a):null,c=await Promise.all(s.map(async h=>{try{const u=await He("/api/cut",{...t,run:h,off:[],gate_ns:null},a);if(!So(u.of,{...n,run:h}))return{run:h,cut:null,difference:null,why:`was not measured at ${(n.frequency_hz/1e9).toFixed(3)} GHz`};const f=e.tried?null:await He("/api/difference",{...t,other:h},a);return{run:h,cut:u,difference:f,why:""}}catch(u){if(a.aborted)throw u;return{run:h,cut:null,difference:null,why:qt(u)}}}));return{cut:o,masks:l,beside:c}};this.panel.ask(e.subject(!0,`${e.plane} ${e.basis} ${s.join()} ${this.round}`),r,a=>this.draw(a),{keep:!0,of:a=>a.cut.of,expect:n}).then(a=>{a&&this.follow(at.at)})}draw({cut:e,masks:t,beside:n}){const{looked:s,pattern:r}=this.explorer,a=dt();this.cut=e;const o=[{name:e.names[0],values:e.first,colour:a.co},{name:e.names[1],values:e.second,colour:a.cross,dash:"6 3"}],l=[a.other,a.good,a.band,a.bad];n.forEach((p,g)=>p.cut&&o.push({name:`${e.names[0]} of ${p.run}`,values:p.cut.first,colour:l[g],width:1.3}));for(const p of t?.masks??[])o.push({name:`mask: ${p.name}`,values:p.level,colour:a.ink,width:1.2});const c=Math.ceil(Math.max(e.peak_dbi,...[...e.total,...n.flatMap(p=>p.cut?.total??[])].map(p=>p??-200))/5)*5,h=`cut of ${s.run} at ${s.plane}°`,u={x:e.angle_deg,lines:o,xName:`angle from the peak, plane ${s.plane}° / deg`,yName:"level / dBi",yWhole:[c-s.span-5,c],xWhole:[-180,180],peakOf:0,height:340,marks:this.marks.map((p,g)=>({at:p,colour:a.focus,text:`${g+1}`}))};return this.round||this.chart.draw(u,h),[this.round?Fh(h,e.angle_deg,o,c,s.span):this.chart.element,this.readings(o,e),...this.besides(n,e),St(["peak / dBi","at theta, phi","half-power beamwidth","first side lobe","first null"],[[Ne(e.peak_dbi,2),`${Ne(e.peak_theta_deg,1)}°, ${Ne(e.peak_phi_deg,1)}°`,`${Ne(e.beamwidth_deg,2)}° (${Ne(e.edges_deg[0],1)}° to ${Ne(e.edges_deg[1],1)}°)`,`${Ne(e.side_lobe_db,1)} dB`,`${Ne(e.null_db,1)} dB`]]),_("p",{class:"small quiet"},"Drag to enlarge (along one axis, or a box), Shift and drag to move, double-click for all of it; a click sets the cursor and a mark.")]}besides(e,t){if(!e.length)return[];const n=dt(),s=[n.other,n.good,n.band,n.bad],r=e.map(o=>_("p",{class:"small"},_("strong",{},o.run),o.why?`: ${o.why}`:o.difference?`: ${Ne(o.difference.difference_db,1)} dB re peak is left when turned by ${o.difference.rotation_deg.map(l=>Ne(l,2)).join(", ")}° about x, y, z, shifted by ${o.difference.shift_mm.map(l=>Ne(l,2)).join(", ")} mm and raised by ${Ne(o.difference.level_db,2)} dB`:": beside a trial no difference is worked out")),a=e.flatMap((o,l)=>o.difference?[{name:`difference to ${o.run}`,values:o.difference.total,colour:s[l]}]:[]);return a.length?(this.apart.draw({x:t.angle_deg,lines:a,xName:"angle from the peak / deg",yName:"difference / dBi",xWhole:[-180,180],yWhole:us(a.flatMap(o=>o.values.map(l=>l===null?null:Math.max(l,-90))),10),height:200,digits:1},`difference of ${this.explorer.looked.run}`),[_("h3",{},"What is left between the fields"),this.apart.element,...r]):r}readings(e,t){if(!this.marks.length)return null;const n=this.marks.map((s,r)=>{const a=Math.max(0,Math.min(t.angle_deg.length-1,Math.round((s+180)/.5))),o=e[0].values[a],l=e[0].values[Math.round((this.marks[0]+180)/.5)],c=r&&o!==null&&l!==null?`${Ne(s-this.marks[0],1)}°, ${Ne(o-l,2)} dB`:"";return[`${r+1}`,`${Ne(s,1)}°`,...e.map(h=>Ne(h.values[a],2)),c]});return _("div",{},St(["mark","angle",...e.map(s=>s.name),"from mark 1"],n),ge("no marks",()=>{this.marks=[],this.show()},"tiny"))}}const ba=new Set;let mr=[],gr=0;function kh(i){return ba.add(i),i(mr),()=>ba.delete(i)}async function _r(){mr=await In("/api/jobs");for(const i of[...ba])i(mr)}async function Zn(i,e,t=()=>{}){const{job:n}=await He(i,e);_r().catch(()=>{});for(let s=0;;){await new Promise(a=>window.setTimeout(a,350));let r;try{r=await In("/api/job/{job}",[n]),s=0}catch(a){if(a instanceof hs||++s>60)throw a;continue}if(t(r.state),!(r.state.state==="waiting"||r.state.state==="at work")){if(_r().catch(()=>{}),zh(r.state),r.state.state==="done")return r.result;throw new hs(422,r.state.faults.length?r.state.faults:[`${r.state.words}: ${r.state.state}`])}}}function Bh(){return"Notification"in window&&Notification.permission==="granted"}function zh(i){const e=`${i.words}: ${i.state}`;document.hidden&&(gr++,document.title=`(${gr}) ${e}`,Bh()&&new Notification("Colure",{body:e}))}document.addEventListener("visibilitychange",()=>{!document.hidden&&gr&&(gr=0,document.title=document.title.replace(/^\(\d+\) /,""))});function Nn(i){const e=ge("give up",()=>void He("/api/cancel",{job:i.id}).then(_r,r=>j(t,qt(r))),"tiny"),t=_("span",{}),n=_("i",{});i.state==="waiting"?j(t,`${i.words}: waits, place ${i.place} in the line`):i.state==="at work"?(j(t,`${i.words}: for ${Yn(i.for_s)}${i.usual_s?`, the last one took ${Yn(i.usual_s)}`:""}`),n.style.width=`${i.usual_s?Math.min(95,100*i.for_s/i.usual_s):15}%`):j(t,`${i.words}: ${i.state}${i.faults.length?`: ${i.faults.join("; ")}`:""}`);const s=i.state!=="waiting"&&i.state!=="at work";return _("div",{class:"job"},_("div",{class:"row"},t,_("span",{class:"spring"}),!s&&e),!s&&_("div",{class:"meter"},n))}function Hh(){const i=_("div",{class:"job-list",attrs:{"aria-live":"polite"}}),e=_("summary",{},"work"),t=_("details",{class:"jobs"},e,i),n=_("p",{class:"small"}),s=()=>{!("Notification"in window)||Notification.permission!=="default"||j(n,ge("tell me when work ends",()=>void Notification.requestPermission().then(()=>j(n)),"tiny"))};return kh(r=>{const a=r.filter(o=>o.state==="waiting"||o.state==="at work");t.hidden=r.length===0,j(e,a.length?`work: ${a.length}`:"work"),j(i,n,...r.slice(0,8).map(Nn)),s()}),window.setInterval(()=>{(mr.some(r=>r.state==="waiting"||r.state==="at work")||t.open)&&_r().catch(()=>{})},1500),t}function wo(i){if(i.lower===null||i.upper===null)return"";const e=Math.min(4,Math.max(1,/\.(\d+)/.exec(i.text)?.[1].length??1));return`${i.lower.toFixed(e)} to ${i.upper.toFixed(e)}`}class Vh{constructor(e){this.explorer=e}panel=new tt("Figures","card figures-panel");element=this.panel.element;plain=new Map;clear(){this.panel.empty("")}show(){const{looked:e}=this.explorer,t=e.known;if(!t)return;const n=`${e.run}/${e.state??""}`;e.tried||this.plain.set(n,t.figures);const s=this.plain.get(n),r=t.figures.filter(u=>Math.abs(u.frequency_hz-e.hz)<1),a=r.some(u=>u.lower!==null),o=u=>{const f=s?.find(p=>p.name===u.name&&Math.abs(p.frequency_hz-u.frequency_hz)<1)?.value;return f==null||u.value===null?"":`${u.value>=f?"+":""}${Ne(u.value-f,3)}`},l=r.map(u=>[_("span",{attrs:{title:u.definition}},u.label),_("span",{class:"num"},`${u.text} ${u.unit}`),e.tried?o(u):wo(u)]),c=br({name:()=>Ss("figures",e.run,e.state??""),svg:()=>({text:Gh(r),width:560,height:30+18*r.length}),columns:()=>[{name:"figure",values:t.figures.map(u=>u.label)},{name:"frequency / Hz",values:t.figures.map(u=>u.frequency_hz)},{name:"value",values:t.figures.map(u=>u.value)},{name:"lower",values:t.figures.map(u=>u.lower)},{name:"upper",values:t.figures.map(u=>u.upper)},{name:"unit",values:t.figures.map(u=>u.unit)}]}),h=e.tried?"change by the trial":"95 % interval";this.panel.show(e.subject(!0),_("div",{class:"scroll",attrs:{tabindex:0,role:"region","aria-label":"table of figures"}},St(["figure","value",h],l,"figures")),_("div",{class:"chart-tools"},c),!a&&!e.tried?this.evaluate():null)}evaluate(){const e=_("div",{}),{looked:t}=this.explorer,n=t.one(),s=ge("with intervals",()=>{s.disabled=!0,Zn("/api/evaluate",n,r=>j(e,Nn(r))).then(()=>t.run===n.run&&t.state===n.state?this.explorer.again():void 0,r=>{s.disabled=!1,j(e),this.panel.fault(r)})},"","evaluate every figure with its uncertainty");return s.disabled=!_t("operate"),_("div",{},_("p",{class:"small quiet"},_t("operate")?"Values without intervals so far.":"Values without intervals; a session that may operate works them out."),s,e)}}function Gh(i){const e=n=>n.replaceAll("&","&amp;").replaceAll("<","&lt;"),t=i.map((n,s)=>`<text x="10" y="${38+18*s}">${e(n.label)}</text><text x="330" y="${38+18*s}">${e(`${n.text} ${n.unit}`)}</text><text x="440" y="${38+18*s}">${e(wo(n))}</text>`);return`<svg xmlns="http://www.w3.org/2000/svg" width="560" height="${30+18*i.length}" font-family="system-ui" font-size="12"><rect width="100%" height="100%" fill="#fff"/>${t.join("")}</svg>`}const Cc=[["ludwig-3","Ludwig 3"],["theta-phi","theta and phi"],["ludwig-2-az-over-el","Ludwig 2, pole y"],["ludwig-2-el-over-az","Ludwig 2, pole x"],["circular","circular"]],Pc=[["theta-phi","theta, phi"],["az-el","azimuth, elevation"],["alpha-epsilon","alpha, epsilon"],["u-v","direction cosines u, v"]];function Br(i,e,t){return e.find(([n])=>n===i)?.[0]??t}function fs(i){return`${(i/1e9).toFixed(3)} GHz`}class Zo{run=Lt("run");state=Lt("state")||null;off=Lt("off")?Lt("off").split(" "):[];gate=Wh(Lt("gate"));frequency=-1;plane=Or("plane")??0;basis=Br(Lt("basis"),Cc,"ludwig-3");coordinates=Br(Lt("coords"),Pc,"theta-phi");component=Br(Lt("shown"),[["total",""],["first",""],["second",""]],"total");beside=Lt("beside")?Lt("beside").split(" "):[];tab=Lt("tab")||"cuts";span=Or("span")??50;known=null;get tried(){return this.off.length>0||this.gate!==null}get hz(){return this.known?.frequency_hz[this.frequency]??Number.NaN}open(e){this.known=e;const t=e.frequency_hz,n=Or("f");n!==null?this.frequency=t.reduce((s,r,a)=>Math.abs(r-1e9*n)<Math.abs(t[s]-1e9*n)?a:s,0):(this.frequency<0||this.frequency>=t.length)&&(this.frequency=e.shown),this.keep()}keep(e=!1){const t=(n,s)=>n===s?"":String(n);mi({run:this.run,state:this.state??"",tab:this.tab==="cuts"?"":this.tab,f:this.known?String(this.hz/1e9):"",plane:t(this.plane,0),basis:this.basis==="ludwig-3"?"":this.basis,coords:this.coordinates==="theta-phi"?"":this.coordinates,shown:this.component==="total"?"":this.component,beside:this.beside.join(" "),off:this.off.join(" "),gate:this.gate?this.gate.join(" "):"",span:t(this.span,50)},e)}body(){return{campaign:Be.campaign,run:this.run,state:this.state,off:this.off,gate_ns:this.gate}}one(){return{campaign:Be.campaign,run:this.run,state:this.state}}of(e){return{run:this.run,state:this.state,frequency_hz:e?this.hz:null}}subject(e,t=""){const n=this.state?`, state ${this.state}`:"",s=this.tried?", a trial":"";return{key:`${this.run}/${this.state??""}|${e?this.frequency:""}/${this.off.join()}/${this.gate?.join()??""}/${t}`,words:`run ${this.run}${n}${e?`, ${fs(this.hz)}`:""}${s}`}}}function Wh(i){const[e,t]=i.split(" ").map(Number);return i&&Number.isFinite(e)&&t>0?[e,t]:null}const $h=[["frame","match the turn"],["origin","match the place"],["level","match the level"]];class Er{place=_("div",{class:"came"});faults=_("p",{class:"faults",attrs:{role:"alert"}});asked=0;clear(){this.asked++,j(this.place),j(this.faults)}start(e){this.clear();const t=this.asked;e(n=>t===this.asked&&j(this.place,n)).then(n=>t===this.asked&&j(this.place,...n),n=>{t===this.asked&&(j(this.place),j(this.faults,qt(n)))})}body(e,t,...n){return _("section",{class:"piece",attrs:{"aria-label":e}},_("h3",{},e),_("p",{class:"small quiet"},t),_("div",{class:"row"},...n),this.faults,this.place)}}class Xh{constructor(e){this.explorer=e}panel=new tt("Several runs","card tab-card");element=this.panel.element;leave(){this.panel.leave()}show(){const{looked:e}=this.explorer,t={...e.subject(!1),words:`run ${e.run}${e.state?`, ${e.state}`:""}`};this.panel.ask(t,n=>In("/api/campaigns",[],n),n=>[Dc(this.explorer,n),jh(this.explorer,n),e.known&&e.known.states.length>1?Zh(this.explorer):null,Qh(this.explorer,n)])}}function qh(i,e){return(i.find(t=>t.id===e)?.runs??[]).filter(t=>t.record).map(t=>t.name)}function bo(i,e){const t=ge(i,e,"main");return t.disabled=!_t("operate"),t.disabled&&(t.title="a session that may operate starts this"),t}function Dc({looked:i},e,t=!0){const n=new Er,s=qh(e,Be.campaign).filter(c=>c!==i.run);if(!s.length)return n.body("Compare","There is no second run in this campaign to compare with.");let r=i.beside[0]&&s.includes(i.beside[0])?i.beside[0]:s[0];const a=new Set,o=$h.map(([c,h])=>{const u=_("input",{attrs:{type:"checkbox"},on:{change:()=>{u.checked?a.add(c):a.delete(c),n.clear()}}});return _("label",{class:"row"},u,h)}),l=i.one();return n.body("Compare","Every figure of both runs. E_n is the change over both uncertainties together; the runs agree where it is 1 or less.",an("other run",s.map(c=>[c,c]),r,c=>{r=c,n.clear()}),...t?o:[],bo("compare",()=>n.start(async c=>{const h={...l,other:r,matched:[...a]};return Yh(await Zn("/api/compare",h,u=>c(Nn(u))),l.run,r)})))}function Yh(i,e,t){const n=i.middle_hz,s=i.rows.filter(l=>n===null||Math.abs(l.frequency_hz-n)<1),r=i.rows.filter(l=>!l.agrees).length,a=(l,c)=>l===null?"-":`${Ne(l,2)}${c===null?"":` ± ${Ne(c,2)}`}`,o=i.matched.length?`Matched: turned by ${i.rotation_deg.map(l=>l.toFixed(3)).join(", ")}° about x, y, z, shifted by ${i.shift_mm.map(l=>l.toFixed(3)).join(", ")} mm, ${Ne(i.level_db,3)} dB.`:"";return[_("p",{class:`verdict ${i.agrees?"good":"bad"}`},i.agrees?"All figures agree.":`${r} of ${i.rows.length} figures do not agree.`),_("p",{class:"small"},i.difference_db===null?"Figure by figure; nothing is matched.":`The fields differ by ${Ne(i.difference_db,1)} dB rms re peak at ${Eo(n)}. ${o}`),To("figures of both runs",St(["figure",e,t,"change","agrees"],s.map(l=>[l.label,`${a(l.value,l.expanded)} ${l.unit}`,`${a(l.other,l.other_expanded)} ${l.unit}`,l.change===null?l.reason||"-":a(l.change,l.change_expanded),_("strong",{class:l.agrees?"good":"bad"},l.agrees?"yes":"no")]))),Ao(`compared ${e} ${t}`,()=>[{name:"figure",values:i.rows.map(l=>l.label)},{name:"frequency / Hz",values:i.rows.map(l=>l.frequency_hz)},{name:e,values:i.rows.map(l=>l.value)},{name:t,values:i.rows.map(l=>l.other)},{name:"change",values:i.rows.map(l=>l.change)},{name:"its expanded uncertainty",values:i.rows.map(l=>l.change_expanded)},{name:"unit",values:i.rows.map(l=>l.unit)}])]}function jh({looked:i},e){const t=new Er,n=(e.find(h=>h.id===Be.campaign)?.runs??[]).filter(h=>h.record&&h.kind==="sphere").sort((h,u)=>(h.measured_at??0)-(u.measured_at??0)),s=n.filter(h=>!h.figures).map(h=>h.name),r=n.filter(h=>h.figures).map(h=>h.name),a=s.length?` Left out, because without intervals: ${s.join(", ")}.`:"";if(r.length<2)return t.body("Series",`A series needs two runs whose figures have intervals; there ${r.length===1?"is one":"are none"}.${a}`);const o=new Set(r);let l=r.includes(i.run)?i.run:r[0];const c=r.map(h=>{const u=_("input",{attrs:{type:"checkbox",checked:!0},on:{change:()=>{u.checked?o.add(h):o.delete(h),t.clear()}}});return _("label",{class:"row"},u,h)});return t.body("Series",`Spread and trend over the devices in the order they were measured, each against a golden unit.${a}`,an("golden unit",r.map(h=>[h,h]),l,h=>{l=h,t.clear()}),_("div",{class:"row",attrs:{role:"group","aria-label":"runs of the series"}},...c),ge("show the series",()=>t.start(async()=>{const h=r.filter(u=>o.has(u)||u===l);return Kh(await He("/api/series",{campaign:Be.campaign,runs:h,golden:l,state:i.state}))}),"main"))}function Kh(i){const e=s=>Math.max(...s.map(r=>Math.abs(r??0))),t=i.rows.map(s=>[s.label,`${Ne(s.mean,2)} ${s.unit}`,Ne(s.spread,3),s.trend===null?"-":`${Ne(s.trend,3)} ± ${Ne(s.trend_expanded,3)}`,...s.e_n.map((r,a)=>i.runs[a]===i.golden?_("span",{class:"quiet"},Ne(s.values[a],2)):_("span",{class:r!==null&&Math.abs(r)>1?"bad":""},`${Ne(s.values[a],2)} (${Ne(r,2)})`))]),n=i.rows.filter(s=>e(s.e_n)>1).length;return[_("p",{class:`verdict ${n?"bad":"good"}`},n?`${n} of ${i.rows.length} figures differ from ${i.golden} by more than both uncertainties.`:`No figure differs from ${i.golden} by more than both uncertainties.`),_("p",{class:"small quiet"},`At ${Eo(i.frequency_hz)}; in brackets E_n against ${i.golden}.`),To("series",St(["figure","mean","spread (1 s)","trend a device",...i.runs],t)),Ao("series",()=>[{name:"figure",values:i.rows.map(s=>s.label)},...i.runs.map((s,r)=>({name:s,values:i.rows.map(a=>a.values[r])})),{name:"unit",values:i.rows.map(s=>s.unit)}])]}function Zh({looked:i}){const e=new Er,t=i.one();return e.body("Coverage","Levels that a share of all solid angle does not exceed, of every state and of the best of all states.",bo("read the coverage",()=>e.start(async n=>Jh(await Zn("/api/coverage",t,s=>n(Nn(s)))))))}function Jh(i){return[_("p",{class:"small"},`At ${Eo(i.frequency_hz)}, ${i.unit} ± ${i.expanded_db.toFixed(2)} dB (k = 2).`),To("coverage",St(["state","peak",...i.percent.map(e=>`${e} %`)],i.rows.map(e=>[e.state,Ne(e.peak),...e.levels.map(t=>Ne(t))]))),Ao("coverage",()=>[{name:"state",values:i.rows.map(e=>e.state)},{name:`peak / ${i.unit}`,values:i.rows.map(e=>e.peak)},...i.percent.map((e,t)=>({name:`${e} % / ${i.unit}`,values:i.rows.map(n=>n.levels[t])}))])]}function Qh({looked:i},e){const t=new Er,n=i.one(),s=e.flatMap(o=>o.runs.filter(l=>l.kind==="sphere"&&!(o.id===Be.campaign&&l.name===i.run)).map(l=>[`${o.id} ${l.name}`,e.length>1?`${o.folder}: ${l.name}`:l.name])),r="The same device in another range length or turned with its positioner: what moved, and how strong the room's stray signals are.";if(!s.length)return t.body("Two set-ups",`${r} There is no second run of a sphere.`);let a=s[0][0];return t.body("Two set-ups",r,an("other set-up",s,a,o=>{a=o,t.clear()}),bo("compare the set-ups",()=>t.start(async o=>{const[l,c]=a.split(" "),h=await Zn("/api/two-set-ups",{...n,other_campaign:l,other:c},u=>o(Nn(u)));return[_("ul",{},...h.sentences.map(u=>_("li",{},u)))]})))}function Eo(i){return i===null?"mid-band":`${(i/1e9).toFixed(3)} GHz`}function To(i,e){return _("div",{class:"scroll",attrs:{tabindex:0,role:"region","aria-label":i}},e)}function Ao(i,e){return _("div",{class:"chart-tools no-print"},ge("CSV",()=>rr(`${Ss(i)}.csv`,new Blob([wc(e())],{type:"text/csv"})),"tiny","save the values as CSV"))}class eu{constructor(e){this.explorer=e}cuts=new tt("Measured cuts","card tab-card");figures=new tt("Figures","card figures-panel");beside=new tt("Beside another run","card");tools=_("div",{class:"controls"});element=_("div",{},this.tools,this.cuts.element,this.figures.element,this.beside.element);frequency=null;charts=new Map;leave(){this.cuts.leave(),this.figures.leave(),this.beside.leave()}show(){const{looked:e}=this.explorer,t={key:`${e.run}/|${this.frequency??""}`,words:`run ${e.run}`},n={...e.one(),frequency:this.frequency};this.cuts.ask(t,s=>He("/api/cuts",n,s),s=>{const r=`run ${s.of.run}, ${fs(s.of.frequency_hz??0)}`;return this.controls(s),this.table({key:t.key,words:r},s),[_("p",{class:"small quiet"},r),...s.cuts.map(a=>this.chart(s,a))]},{keep:!0}),this.frequency===null&&this.beside.ask(t,s=>In("/api/campaigns",[],s),s=>[Dc(this.explorer,s,!1)])}controls(e){if(this.tools.childElementCount||e.all_hz.length<2)return;const t=e.all_hz,n=t.findIndex(r=>Math.abs(r-(e.of.frequency_hz??0))<1),s=r=>{this.frequency=r,this.show()};j(this.tools,Ln("frequency",0,t.length-1,1,n,s,"",r=>fs(t[r])))}chart(e,t){const n=dt(),s=this.charts.get(t.name)??new vn(t.label);this.charts.set(t.name,s);const r=[{name:e.components[0],values:t.co,colour:n.co,width:2},{name:e.components[1],values:t.cross,colour:n.cross},{name:"95 % interval, lower end",values:t.lower,colour:n.co,dash:"2 3"},{name:"upper end",values:t.upper,colour:n.co,dash:"2 3"}].filter(a=>a.values.some(o=>o!==null));return s.draw({x:t.angle_deg,lines:r,xName:`${t.angle_name} / °`,yName:`level / ${t.unit}`,peakOf:0,height:300},`${t.label} of run ${e.of.run}`),_("div",{},_("h3",{},t.label),s.element)}table(e,t){const s=t.figures.filter(r=>Math.abs(r.frequency_hz-(t.of.frequency_hz??0))<1).map(r=>[_("span",{attrs:{title:r.definition}},r.label),`${r.text} ${r.unit}`,wo(r)]);this.figures.show(e,St(["figure","value","95 % interval"],s,"figures"))}}class tu{constructor(e,t,n){this.view=e,this.looked=t,this.changed=n,e.stage.hovered=s=>{at.hover(s),this.say(s)}}map=null;stop=null;shape="";asked="";scale(e=this.map){let t=-200;for(const s of e?.total??[])s!==null&&s>t&&(t=s);const n=Math.ceil(t/5)*5;return{low:n-this.looked.span,high:n,unit:"dBi"}}clear(){this.stop?.abort(),this.map=null,this.shape=this.asked="",this.view.sphere.clear(),this.view.sphere.scaleBar(null),j(this.view.stage.caption),j(this.view.stage.readout)}leave(){this.stop?.abort(),this.stop=null}show(){const{looked:e}=this,t=`${e.subject(!0,e.basis).key}`;if(t===this.asked&&this.map){this.draw();return}this.asked=t,this.stop?.abort();const n=this.stop=new AbortController,s=e.of(!0);He("/api/map",{...e.body(),frequency:e.frequency,coordinates:"theta-phi",basis:e.basis},n.signal).then(r=>{this.stop!==n||!So(r.of,s)||(this.map=r,this.draw())},r=>{this.stop!==n||Sa(r)||(this.clear(),j(this.view.stage.caption,_("span",{class:"bad"},qt(r))))})}draw(){const e=this.map,{sphere:t,stage:n}=this.view,{looked:s}=this;if(!e)return;const r=`${e.rows.length} ${e.columns.length} ${e.rows[e.rows.length-1]}`;if(r!==this.shape){this.shape=r;const l=[];for(const h of e.rows)for(const u of e.columns)l.push(...hn(h,u));const c=e.columns.length>1?e.columns[1]-e.columns[0]:0;t.shape({rows:e.rows.length,columns:e.columns.length,closed:Math.abs(e.columns[e.columns.length-1]-e.columns[0]+c-360)<1e-6,directions:l})}const a=this.scale();t.surface(e[s.component],a,`${s.run} ${s.state} ${r} ${s.component}`);const o=s.component==="total"?"total":e.names[s.component==="first"?0:1];t.scaleBar(a,o),j(n.caption,`Run ${e.of.run}${e.of.state?`, state ${e.of.state}`:""}, ${fs(e.of.frequency_hz??0)}: ${o}, level outwards and in colour.`),this.say(at.at)}say(e){const t=e??at.at,n=t&&this.map?this.view.sphere.nearest(t):-1;if(!t||!this.map||n<0){j(this.view.stage.readout);return}const s=this.map,r=c=>c===null?"-":c.toFixed(2),a=hn(s.rows[Math.floor(n/s.columns.length)],s.columns[n%s.columns.length]),o=a[0]*t[0]+a[1]*t[1]+a[2]*t[2]>Math.cos(3*Math.PI/180),l=o&&s.total[n]!==null?`total ${r(s.total[n])} dBi, ${s.names[0]} ${r(s.first[n])}, ${s.names[1]} ${r(s.second[n])}`:"not measured";j(this.view.stage.readout,`${this.view.sphere.words(o?a:t)}: ${l}`)}controls(){const{looked:e}=this,t=Cc.map(([s,r])=>[s,r]),n=[["total","total"],["first","first component"],["second","second component"]];return _("div",{class:"row"},an("components",t,e.basis,s=>{e.basis=s,this.changed()}),an("shown",n,e.component,s=>{e.component=s,this.changed()}),Ln("range",20,80,10,e.span,s=>{e.span=s,this.changed()}," dB"))}}const Ps=52,nu=64,Ds=24,iu=40;class ps{constructor(e){this.name=e,this.canvas.setAttribute("aria-label",e);const t=br({name:()=>Ss(this.name),svg:()=>this.picture(),columns:()=>this.columns()});this.element=_("div",{class:"chart"},this.canvas,_("div",{class:"chart-tools"},this.said,t)),this.canvas.addEventListener("pointermove",n=>{const s=this.under(n);this.say(s),this.moved?.(s)}),this.canvas.addEventListener("pointerleave",()=>this.moved?.(null)),this.canvas.addEventListener("click",n=>{const s=this.under(n);s&&this.clicked?.(s)}),this.canvas.addEventListener("keydown",n=>this.key(n)),new ResizeObserver(()=>{this.data&&this.room()!==this.width&&this.paint()}).observe(this.canvas)}canvas=_("canvas",{class:"map",attrs:{role:"img",tabindex:0}});said=_("div",{class:"small quiet mono said"}," ");element;moved=null;clicked=null;data=null;image=document.createElement("canvas");box=[0,0,1,1];width=0;mark=null;room(){return this.canvas.clientWidth||480}draw(e,t=this.name){this.name=t,this.canvas.setAttribute("aria-label",t),this.data=e,this.paint()}point(e){this.mark=e,this.data&&this.paint()}paint(){const e=this.data;if(!e)return;const t=e.ramp??Pn,n=this.width=this.room(),s=n-Ps-nu,r=e.height??Math.round(e.square?s:Math.min(380,Math.max(140,s*e.rows.length/Math.max(1,e.columns.length)))),a=window.devicePixelRatio||1,o=r+Ds+iu;this.canvas.style.height=`${o}px`,this.canvas.width=Math.round(n*a),this.canvas.height=Math.round(o*a);const l=this.canvas.getContext("2d"),c=dt();if(l.setTransform(a,0,0,a,0,0),l.font="12px system-ui",this.cells(e,t),l.imageSmoothingEnabled=!1,l.drawImage(this.image,Ps,Ds,s,r),l.strokeStyle=c.edge,l.strokeRect(Ps,Ds,s,r),this.box=[Ps,Ds,s,r],this.axes(l,e,t),this.mark){const[h,u]=this.placeOf(this.mark);l.strokeStyle=c.cross,l.lineWidth=2,l.strokeRect(h-5,u-5,10,10),l.lineWidth=1}}cells(e,t){this.image.width=e.columns.length,this.image.height=e.rows.length;const n=this.image.getContext("2d"),s=n.createImageData(e.columns.length,e.rows.length);for(let r=0;r<e.rows.length;r++)for(let a=0;a<e.columns.length;a++){const o=fr(e.values[r*e.columns.length+a],e.low,e.high);if(o<0)continue;const l=4*((e.flip?e.rows.length-1-r:r)*e.columns.length+a);for(let c=0;c<3;c++)s.data[l+c]=t[3*o+c];s.data[l+3]=255}n.putImageData(s,0,0)}axes(e,t,n){const[s,r,a,o]=this.box,l=dt(),c=[t.columns[0],t.columns[t.columns.length-1]],h=[t.rows[0],t.rows[t.rows.length-1]];e.fillStyle=l.quiet,e.textAlign="center";for(const u of pr(c,Math.max(2,Math.floor(a/60))))e.fillText(ci(u,c),this.placeOf({row:h[0],column:u})[0],r+o+15);e.textAlign="right",e.textBaseline="middle";for(const u of pr(h,Math.max(2,Math.floor(o/34))))e.fillText(ci(u,h),s-5,this.placeOf({row:u,column:c[0]})[1]);e.textAlign="center",e.textBaseline="alphabetic",e.fillText(t.columnName,s+a/2,r+o+33),e.save(),e.translate(13,r+o/2),e.rotate(-Math.PI/2),e.fillText(t.rowName,0,0),e.restore();for(let u=0;u<256;u++)e.fillStyle=`rgb(${n[3*u]} ${n[3*u+1]} ${n[3*u+2]})`,e.fillRect(s+a+10,r+o*(1-(u+1)/256),12,o/256+1);e.fillStyle=l.quiet,e.textAlign="left";for(const u of[0,.25,.5,.75,1])e.fillText((t.low+u*(t.high-t.low)).toFixed(0),s+a+26,r+o*(1-u)+(u===1?10:u===0?0:4));e.fillText(t.unit,s+a+10,r-9)}placeOf(e){const t=this.data,[n,s,r,a]=this.box,o=(c,h)=>{const u=.5/c.length,f=c[c.length-1]-c[0];return f?u+(h-c[0])/f*(1-2*u):.5},l=o(t.rows,e.row);return[n+o(t.columns,e.column)*r,s+(t.flip?1-l:l)*a]}under(e){const t=this.data;if(!t)return null;const n=this.canvas.getBoundingClientRect(),[s,r,a,o]=this.box,l=(e.clientX-n.left-s)/a,c=(e.clientY-n.top-r)/o;return l<0||l>=1||c<0||c>=1?null:{row:t.rows[Math.floor((t.flip?1-c:c)*t.rows.length)],column:t.columns[Math.floor(l*t.columns.length)]}}say(e){const t=this.data;if(!t||!e){j(this.said," ");return}const n=t.values[t.rows.indexOf(e.row)*t.columns.length+t.columns.indexOf(e.column)];j(this.said,`${t.rowName.split(" / ")[0]} ${ci(e.row,[0,10])}, ${t.columnName.split(" / ")[0]} ${ci(e.column,[0,10])}: ${n===null||Number.isNaN(n)?"not measured":`${n.toFixed(2)} ${t.unit}`}`)}key(e){const t=this.data,n={ArrowLeft:[0,-1],ArrowRight:[0,1],ArrowUp:[-1,0],ArrowDown:[1,0]}[e.key];if(!t||!n)return;e.preventDefault();const s=this.mark??{row:t.rows[0],column:t.columns[0]},r=(o,l,c)=>o[Math.max(0,Math.min(o.length-1,o.reduce((h,u,f)=>Math.abs(u-l)<Math.abs(o[h]-l)?f:h,0)+c))],a={row:r(t.rows,s.row,(t.flip?-1:1)*n[0]),column:r(t.columns,s.column,n[1])};this.say(a),this.clicked?.(a)}picture(){const e=this.width,t=parseFloat(this.canvas.style.height)||300;return{text:`<svg xmlns="http://www.w3.org/2000/svg" width="${e}" height="${t}"><rect width="100%" height="100%" fill="${dt().card}"/><image width="${e}" height="${t}" href="${this.canvas.toDataURL("image/png")}"/></svg>`,width:e,height:t}}columns(){const e=this.data;if(!e)return[];const t=e.columns.length;return[{name:e.rowName,values:e.rows.flatMap(n=>new Array(t).fill(n))},{name:e.columnName,values:e.rows.flatMap(()=>e.columns)},{name:`level / ${e.unit}`,values:Array.from(e.values)}]}}function Jo(i,e,t){const[n,s]=[t*ut,e*ut];if(i==="theta-phi")return hn(e,t);if(i==="az-el")return[Math.sin(n)*Math.cos(s),Math.sin(s),Math.cos(n)*Math.cos(s)];if(i==="alpha-epsilon")return[Math.sin(n),Math.cos(n)*Math.sin(s),Math.cos(n)*Math.cos(s)];const r=1-e*e-t*t;return r<0?null:[t,e,Math.sqrt(r)]}function Qo(i,[e,t,n]){if(i==="theta-phi"){const[s,r]=Un([e,t,n]);return{row:s,column:(r+360)%360}}return i==="az-el"?{row:Math.asin(t)/ut,column:Math.atan2(e,n)/ut}:i==="alpha-epsilon"?{row:Math.atan2(t,n)/ut,column:Math.asin(e)/ut}:{row:t,column:e}}class su{constructor(e){this.explorer=e;const{looked:t}=e,n=an("coordinates",Pc.map(([s,r])=>[s,r]),t.coordinates,s=>{t.coordinates=s,e.changed()});this.element=_("div",{},_("div",{class:"row no-print"},n),this.panel.element),this.map.clicked=s=>at.pin(Jo(t.coordinates,s.row,s.column)),this.map.moved=s=>at.hover(s&&Jo(t.coordinates,s.row,s.column)),this.stopCursor=at.watch(s=>this.map.point(s&&this.found&&(t.coordinates!=="u-v"||s[2]>=0)?Qo(t.coordinates,s):null))}panel=new tt("Levels over all directions","card tab-card");map=new ps("levels over all directions");found=null;stopCursor;element;leave(){this.stopCursor(),this.panel.leave()}show(){const{looked:e,pattern:t}=this.explorer,n=e.coordinates;this.panel.ask(e.subject(!0,`${n} ${e.basis} ${e.component}`),s=>He("/api/map",{...e.body(),frequency:e.frequency,coordinates:n,basis:e.basis},s),s=>{this.found=s;const r=t.scale(n==="theta-phi"?s:t.map??s),a=e.component==="total"?"total":s.names[e.component==="first"?0:1],o=l=>l.replace("_deg"," / deg");return this.map.draw({rows:s.rows,columns:s.columns,values:s[e.component],rowName:o(s.row_name),columnName:o(s.column_name),...r,flip:n!=="theta-phi",square:n==="u-v"},`${a} of ${e.run}`),[_("p",{class:"small"},`Shown: ${a}. The colours keep their levels whatever is shown.`),this.map.element,_("p",{class:"small mono"},s.formula)]},{keep:!0,of:s=>s.of,expect:e.of(!0)}).then(s=>s&&this.map.point(at.at&&(n!=="u-v"||at.at[2]>=0)?Qo(n,at.at):null))}}class ru{constructor(e){this.explorer=e;const{looked:t}=e,n=new Map(t.known.figures.map(a=>[a.name,a.label]));n.has(this.chosen)||(this.chosen=t.known.figures[0]?.name??"");const s=an("figure",[...n],this.chosen,a=>{this.chosen=a,this.show()});this.element=_("div",{},_("div",{class:"row no-print"},s),this.panel.element),this.chart.clicked=a=>{const o=t.known.frequency_hz;t.frequency=o.reduce((l,c,h)=>Math.abs(c/1e9-a)<Math.abs(o[l]/1e9-a)?h:l,0),e.changed()};let r=!0;this.stopCursor=at.watch((a,o)=>{o&&!r&&this.show(),r=!1})}panel=new tt("Over frequency","card tab-card");chart=new vn("level over frequency");figure=new vn("figure over frequency");chosen="gain_dbi";stopCursor;element;leave(){this.stopCursor(),this.panel.leave()}show(){const{looked:e}=this.explorer,t=e.known;if(t.frequency_hz.length<2){this.panel.empty("This run holds one frequency.",e.subject(!1));return}const[n,s]=at.at?Un(at.at):[0,0],r=dt(),a={...e.body(),theta_deg:n,phi_deg:s,basis:e.basis};this.panel.ask(e.subject(!1,`${n} ${s} ${e.basis} ${this.chosen}`),o=>He("/api/spectrum",a,o),o=>{const l=o.frequency_hz.map(f=>f/1e9),c=[{at:e.hz/1e9,colour:r.focus,text:"looked at"}];this.chart.draw({x:l,lines:[{name:o.names[0],values:o.first,colour:r.co,points:l.length<40},{name:o.names[1],values:o.second,colour:r.cross,dash:"6 3",points:l.length<40},{name:"total",values:o.total,colour:r.ink,width:1.1}],xName:"frequency / GHz",yName:"level / dBi",yWhole:us([...o.total,...o.first,...o.second].map(f=>f===null?null:Math.max(f,-60)),5),marks:c,peakOf:2,digits:3},`spectrum of ${e.run}`);const h=t.figures.filter(f=>f.name===this.chosen),u=h.some(f=>f.value!==null);return u&&this.figure.draw({x:h.map(f=>f.frequency_hz/1e9),lines:[{name:h[0].label,values:h.map(f=>f.value),colour:r.co,points:!0},...h.some(f=>f.lower!==null)?[{name:"95 % interval",values:h.map(f=>f.lower),colour:r.band,dash:"3 3"},{name:"to",values:h.map(f=>f.upper),colour:r.band,dash:"3 3"}]:[]],xName:"frequency / GHz",yName:`${h[0].label} / ${h[0].unit||"1"}`,yWhole:us(h.flatMap(f=>[f.value,f.lower,f.upper]),.5),marks:c,height:240,digits:3},`${h[0].label} of ${e.run}`),[_("p",{class:"small"},`Direction theta ${n.toFixed(1)}°, phi ${s.toFixed(1)}°${at.at?"":" (boresight; a click on sphere, map or cut sets another)"}. A click in the chart sets the frequency.`),this.chart.element,_("h3",{},"A figure over frequency"),u?this.figure.element:_("p",{class:"quiet"},"This figure has no value here.")]},{keep:!0,of:o=>o.of,expect:e.of(!1)})}}const Lc={complete:"complete",stopped:"stopped, can go on",begun:"begun, can go on",damaged:"journal cannot be read",nothing:"empty"},au=[["tag","tag"],["operator","operator"],["serial","serial number"],["customer","customer"],["order","order"],["note","notes"]];function ou(i,e){const t=[i.name,i.kind,Lc[i.state],...Object.values(i.identity)].join(" ").toLowerCase();return e.toLowerCase().split(/\s+/).every(n=>t.includes(n))}function lu(i){const e=i.total&&i.state!=="complete"?` (${i.measured} of ${i.total})`:"";return`${Lc[i.state]}${e}`}class cu{constructor(e){this.open=e,this.element=_("details",{class:"card drawer",attrs:{open:!0}},this.summary,this.search,this.list)}list=_("div",{class:"runs"});element;runs=[];chosen="";search=_("input",{attrs:{type:"search",placeholder:"find by name, tag, operator, state","aria-label":"find runs"},on:{input:()=>this.draw()}});summary=_("summary",{},"Runs");fill(e){this.runs=e,this.draw()}choose(e){this.chosen=e,j(this.summary,"Runs",_("span",{class:"subject mono"},e?`open: ${e}`:""));for(const t of this.list.querySelectorAll("button[data-run]"))t.setAttribute("aria-pressed",String(t.getAttribute("data-run")===e))}draw(){const e=this.runs.filter(t=>ou(t,this.search.value));this.runs.length?e.length?j(this.list,...e.map(t=>this.card(t))):j(this.list,_("p",{class:"quiet"},"No run has these words.")):j(this.list,_("p",{class:"quiet"},"No runs yet. Scan makes them; colure acquire does too.")),this.choose(this.chosen)}card(e){const t=e.measured_at?new Date(1e3*e.measured_at).toLocaleString([],{dateStyle:"medium",timeStyle:"short"}):"",n=e.kind==="cuts"?"cuts":e.kind==="sphere"?"sphere":"not sealed",s=_("button",{class:"run",on:{click:()=>this.open(e.name)},attrs:{type:"button","data-run":e.name,"aria-pressed":"false"}},hu(e),_("strong",{},e.name),_("span",{class:"small"},[n,e.identity.tag,e.identity.operator].filter(Boolean).join(", ")),_("span",{class:`small ${e.state==="complete"?"good":"warn-text"}`},lu(e)),_("span",{class:"small quiet"},t)),r=ge("notes",()=>this.about(e),"tiny","tag, operator, notes");return r.setAttribute("aria-label",`notes of ${e.name}`),_("div",{class:"run-card"},s,r)}about(e){const t=_("p",{class:"faults",attrs:{role:"alert"}}),n=au.map(([s,r])=>{const a=s==="note"?_("textarea",{attrs:{rows:4,maxlength:2e3,disabled:!_t("operate")}}):_("input",{attrs:{maxlength:200,disabled:!_t("operate")}});return a.value=e.identity[s]??"",[s,r,a]});Hi(`What is said of ${e.name}`,s=>[...n.map(([,r,a])=>_("label",{class:"field stacked"},_("span",{},r),a)),t,_("div",{class:"row"},_("span",{class:"small quiet"},"Kept beside the record and shown in its reports. An empty entry leaves the former one."),_("span",{class:"spring"}),_t("operate")&&ge("keep",()=>{const r=Object.fromEntries(n.map(([a,,o])=>[a,o.value.trim()]).filter(([,a])=>a));He("/api/identity",{campaign:Be.campaign,run:e.name,said:r}).then(a=>{e.identity=a,this.draw(),s()},a=>j(t,qt(a)))},"main"))])}}function hu(i){if(!i.thumb)return _("span",{class:"thumb none",attrs:{"aria-hidden":"true"}});const e=_("canvas",{class:"thumb",attrs:{width:48,height:24,"aria-hidden":"true"}}),t=e.getContext("2d");if(!t)return e;const n=t.createImageData(48,24);return i.thumb.forEach((s,r)=>{for(let a=0;a<3;a++)n.data[4*r+a]=Pn[3*s+a];n.data[4*r+3]=255}),t.putImageData(n,0,0),e}class Yi{constructor(e,t){this.explorer=e,this.panel=new tt(t,"card tab-card"),this.element=this.panel.element}panel;element;leave(){this.panel.leave()}}class uu extends Yi{size=new ps("amplitude on the face");turn=new ps("phase on the face");grid=_("canvas",{class:"elements",attrs:{role:"img","aria-label":"excitation of every element, dB"}});constructor(e){super(e,"Waves drawn back to the device's face")}show(){const{looked:e}=this.explorer;this.panel.ask(e.subject(!0),t=>He("/api/aperture",{...e.body(),frequency:e.frequency},t),({face:t})=>t?(this.draw(t),[_("div",{class:"two"},_("div",{},_("h3",{},"Amplitude"),this.size.element),_("div",{},_("h3",{},"Phase"),this.turn.element)),_("h3",{},"Excitation of every element / dB"),this.grid,...t.suspects.length?t.suspects.map(n=>_("p",{class:"bad"},n)):[_("p",{},"No element stands out.")]]):[_("p",{},"device.toml declares no [elements]: there is no face to draw the waves back to.")],{keep:!0,of:t=>t.of,expect:e.of(!0)})}draw(e){const t={rows:e.y_mm,columns:e.x_mm,rowName:"y / mm",columnName:"x / mm",flip:!0,square:!0};this.size.draw({...t,values:e.level_db,low:-25,high:0,unit:"dB"}),this.turn.draw({...t,values:e.phase_deg,low:-180,high:180,unit:"deg",ramp:Th}),du(this.grid,e.elements,e.excitation_db)}}function du(i,e,t){const s=window.devicePixelRatio||1;i.style.width=i.style.height="340px",i.width=i.height=340*s;const r=i.getContext("2d"),a=e.flat();r.scale(s,s);const o=Math.min(...a),l=Math.max(...a),c=(l-o)/Math.max(1,Math.round(Math.sqrt(e.length))-1),h=f=>(f-o+c/2)/(l-o+c)*340,u=c/(l-o+c)*340;r.font="11px system-ui",r.textAlign="center",r.textBaseline="middle",e.forEach(([f,p],g)=>{const x=3*Math.max(0,fr(t[g],-15,0));r.fillStyle=`rgb(${Pn[x]} ${Pn[x+1]} ${Pn[x+2]})`,r.fillRect(h(f)-u/2+1,340-h(p)-u/2+1,u-2,u-2),r.fillStyle=t[g]>-9?"#12191f":"#ffffff",r.fillText(t[g].toFixed(1),h(f),340-h(p))})}class fu extends Yi{chart=new vn("impulse response");constructor(e){super(e,"Impulse response of the strongest check")}show(){const{looked:e}=this.explorer;this.panel.ask(e.subject(!1),t=>He("/api/impulse",e.one(),t),t=>this.draw(t),{of:t=>({...t.of,state:e.state}),expect:e.of(!1)})}draw(e){const{looked:t,open:n}=this.explorer,[s,r]=e.widths_ns,a=p=>Math.round(100*p)/100;let o=a(t.gate?.[0]??e.strongest_ns),l=a(t.gate?.[1]??Math.max(s,.5*r));const c=()=>{const p=dt(),g=r>0?[{at:o-l/2,to:o+l/2,colour:p.cross,text:t.gate?"gate, tried":"gate"}]:[];this.chart.draw({x:e.time_ns,lines:[{name:"strongest check",values:e.level_db,colour:p.co}],xName:"time / ns",yName:"level / dB",height:320,yWhole:[-70,5],marks:g,peakOf:0,digits:2},`impulse response of ${t.run}`)};this.chart.clicked=p=>{o=a(p),this.show()},c();const h=_("p",{class:"small quiet"},"Hann window. A gate tried here changes every view and figure of this page, and nothing on disk; recipe.toml keeps one.");if(r<=0)return[this.chart.element,h,_("p",{class:"small quiet"},"A gate needs five frequencies or more.")];const u=a((r-s)/200)||.01,f=Math.floor(r/u)*u;return[this.chart.element,_("div",{class:"row"},Ln("gate, middle",0,a(e.time_ns[e.time_ns.length-1]),u,o,p=>{o=p,c()}," ns"),Ln("gate, width",Math.ceil(s/u)*u,f,u,l,p=>{l=p,c()}," ns"),ge("try this gate",()=>void n(t.run,t.state,t.off,[o,l]),"main"),...t.gate?[ge("no gate",()=>void n(t.run,t.state,t.off,null))]:[]),_("p",{class:"small"},`${a(s)} ns is the narrowest that the span resolves, ${a(r)} ns the widest before echoes repeat.`),h]}}class pu extends Yi{constructor(e){super(e,"Steps of the recipe")}show(){const{looked:e,open:t}=this.explorer,n=e.known,s=e.one(),r=n.steps.map(l=>{const c=_("input",{attrs:{type:"checkbox",checked:l.on,disabled:!l.may_change},on:{change:()=>void t(e.run,e.state,c.checked?e.off.filter(h=>h!==l.name):[...e.off,l.name],e.gate)}});return _("label",{class:"row"},c,l.name)}),a=_("div"),o=ge("what does every step do?",()=>{o.disabled=!0,Zn("/api/effects",s,l=>j(a,Nn(l))).then(l=>j(a,mu(l)),l=>{o.disabled=!1,j(a),this.panel.fault(l)})});o.disabled=!_t("operate"),this.panel.show(e.subject(!1),_("p",{},"Switch a step off, and every view and figure follows. The record itself is never changed."),_("div",{class:"steps-list"},...r),o,a)}}function mu(i){const e=Object.keys(i.without),t=Object.keys(i.whole).map(n=>[i.labels[n],Ne(i.whole[n],3),...e.map(s=>{const r=i.without[s][n],a=i.whole[n];return r===null||a===null?"-":`${r-a>=0?"+":""}${(r-a).toFixed(3)}`})]);return _("div",{class:"scroll",attrs:{tabindex:0,role:"region","aria-label":"effect of every step"}},St(["figure","all steps",...e.map(n=>`without ${n}`)],t))}class gu extends Yi{constructor(e){super(e,"What the data say of themselves")}show(){const{looked:e}=this.explorer;this.panel.ask(e.subject(!1),t=>He("/api/findings",e.one(),t),({rows:t})=>[St(["what","field / dB re peak","in words"],t.map(n=>[n.topic,n.level_db<=-199?"":Ne(n.level_db,1),n.text]))],{of:t=>t.of,expect:e.of(!1),waiting:"The data are asked what is wrong with them."})}}class _u extends Yi{constructor(e){super(e,"Verdict against limits.toml")}show(){const{looked:e}=this.explorer;if(!e.known?.specification){this.panel.empty("There is no limits.toml beside the campaign: nothing to hold the run against.",e.subject(!1));return}this.panel.ask(e.subject(!1),t=>He("/api/verdicts",e.one(),t),t=>[t?vu(t):_("p",{class:"quiet"},"limits.toml was not held against this run yet."),this.judge()],{of:t=>t?.of??null,expect:e.of(!1)})}judge(){const{looked:e}=this.explorer,t=e.one(),n=_("div"),s=ge("hold limits.toml against this run",()=>{s.disabled=!0,Zn("/api/judge",t,r=>j(n,Nn(r))).then(()=>e.run===t.run&&this.show(),r=>{s.disabled=!1,j(n),this.panel.fault(r)})},"main");return s.disabled=!_t("operate"),_("div",{class:"no-print"},s,n)}}function vu(i){const e=t=>t==="pass"?"good":t==="fail"?"bad":"warn-text";return _("div",{},_("p",{class:`verdict ${e(i.outcome)}`},`${i.specification}: ${i.outcome}`),_("p",{class:"small quiet"},`${i.document}; decided by ${i.decision}.`),i.current?"":_("p",{class:"warn"},"The record or limits.toml changed since: hold it against the run again."),St(["requirement","outcome","margin","in words"],i.rows.map(t=>[t.requirement,_("strong",{class:e(t.outcome)},t.outcome),t.margin===null?"-":`${Ne(t.margin,2)} ${t.unit}`,t.text])))}class xu extends Yi{constructor(e){super(e,"Report")}show(){const{looked:e,again:t}=this.explorer,n=e.known,s=e.one(),r=_("div",{class:"row"}),a=e.state===null?"":`?state=${encodeURIComponent(e.state)}`,o=()=>["html","pdf"].map(c=>_("a",{attrs:{href:`/api/report/${Be.campaign}/${e.run}/${c}${a}`,target:"_blank",rel:"noopener"}},`open the report (${c})`));n.report&&j(r,...o());const l=ge("write the report",()=>{l.disabled=!0,Zn("/api/report",s,c=>j(r,Nn(c))).then(()=>e.run===s.run&&e.state===s.state?t():void 0,c=>{l.disabled=!1,j(r),this.panel.fault(c)})},"main");l.disabled=!_t("operate"),this.panel.show(e.subject(!1),_("p",{},n.specification?"With a verdict against limits.toml on its first page.":"Without a verdict: there is no limits.toml beside the campaign."),l,r,_("p",{class:"small quiet"},"The page itself prints too (Ctrl + P): the opened view with its run, state and frequency."))}}const el=[["cuts","Cuts"],["map","Map"],["frequency","Over frequency"],["aperture","Aperture"],["impulse","Impulse"],["recipe","Recipe"],["findings","Findings"],["verdict","Verdict"],["together","Several runs"],["report","Report"]];function yu(i){const e=new Zo,t=new tt("Run","card opened"),n=_("div",{class:"tab-panel",attrs:{id:"explore-panel"}}),s=_("div",{class:"controls"}),r=new Map;let a=[],o=null,l=0;const c=async(y,M,b=[],P=null)=>{const z=y!==e.run||M!==e.state;Object.assign(e,{run:y,state:M,off:b,gate:P}),e.beside=e.beside.filter(I=>I!==y),e.known=null,A.choose(y),z&&(C.clear(),T.clear()),m(),C.element.hidden=!1,j(n),j(s),r.get(y)==="cuts"?h():await u()},h=()=>{const y=new eu(w);t.show(e.subject(!1),_("p",{class:"small"},"Cuts or single directions: figures of a sphere do not follow from them.")),o=y,e.keep(),j(s,y.element),C.element.hidden=!0,y.show()},u=async()=>{const y=e.run;!await t.ask(e.subject(!1),b=>He("/api/overview",e.body(),b),b=>(e.open(b),[f()]),{of:b=>b.of,expect:e.of(!1),waiting:"The run is being processed; the first time takes some seconds."})||y!==e.run||(p(),T.show(),C.show(),d(e.tab))},f=()=>{const y=e.known;return _("p",{class:"small"},y.demo?"Simulated chamber, invented device. ":"",`${y.frequency_hz.length} ${y.frequency_hz.length===1?"frequency":"frequencies"}, measured out to ${y.region_deg.toFixed(0)}° from boresight.`,e.tried?_("strong",{class:"warn-text"},` A trial${e.off.length?`, without ${e.off.join(", ")}`:""}${e.gate?`, gate ${e.gate[1].toFixed(2)} ns about ${e.gate[0].toFixed(2)} ns`:""}: nothing of it is kept.`):null)},p=()=>{const y=e.known,M=y.frequency_hz,b=ge("play",()=>{l=l?0:window.setInterval(()=>{if(document.querySelector(".panel[aria-busy]"))return;e.frequency=(e.frequency+1)%M.length;const P=s.querySelector("input[type=range]");P&&(P.value=String(e.frequency)),x()},400),j(b,l?"pause":"play")},"tiny","go through the frequencies");j(s,M.length>1&&Ln("frequency",0,M.length-1,1,e.frequency,P=>{e.frequency=P,x()},"",P=>fs(M[P])),M.length>1&&b,y.states.length>1&&an("state",y.states.map(P=>[P,P]),e.state??y.states[0],P=>void c(e.run,P,e.off,e.gate)),T.controls(),xh(el,e.tab,n,P=>d(P,!0)),n)};let g=0;const x=()=>{window.clearTimeout(g),g=window.setTimeout(()=>{e.keep(),T.show(),C.show(),o?.show()},60)},m=()=>{o?.leave?.(),o=null},d=(y,M=!1)=>{e.known&&(e.tab=el.some(([b])=>b===y)?y:"cuts",e.keep(M),m(),o=D[e.tab](),j(n,o.element),o.show())},A=new cu(y=>void c(y,null)),T=new tu(i,e,()=>x()),w={looked:e,view:i,runs:()=>a,open:c,changed:x,again:u,pattern:T},C=new Vh(w),D={cuts:()=>new Oh(w),map:()=>new su(w),frequency:()=>new ru(w),aperture:()=>new uu(w),impulse:()=>new fu(w),recipe:()=>new pu(w),findings:()=>new gu(w),verdict:()=>new _u(w),together:()=>new Xh(w),report:()=>new xu(w)};return(async()=>{He("/api/motion",{campaign:Be.campaign}).then(y=>i.chamber.build(y),()=>{}),i.chamber.turn(0,0,0);try{const y=await In("/api/campaigns"),M=y.find(P=>P.id===Be.campaign)?.runs??[];a=M.filter(P=>P.kind==="sphere").map(P=>P.name);for(const P of M)r.set(P.name,P.kind);A.fill(M);const b=e.run||(M.find(P=>P.kind==="sphere")??M.find(P=>P.kind==="cuts"))?.name||"";b?await c(b,e.state,e.off,e.gate):t.empty(M.length?"Choose a run.":"What a run holds is shown here: cuts, maps, figures, findings, report.")}catch(y){t.fault(y)}})(),mi({}),{title:"Explore",element:_("div",{class:"page explore-page"},A.element,t.element,s,C.element),follow:()=>{if(!e.known)return;const y=new Zo;y.open(e.known);const M=[y,e].map(G=>JSON.stringify([G.state,G.off,G.gate,G.frequency,G.plane,G.basis,G.coordinates,G.component,G.beside,G.tab,G.span]));if(M[0]===M[1])return;const{run:b,state:P,off:z,gate:I,frequency:k,plane:$,basis:ee,coordinates:Y,component:W,beside:Q,tab:ce,span:be}=y,Ie=P===e.state&&z.join()===e.off.join()&&I?.join()===e.gate?.join();if(Object.assign(e,{frequency:k,plane:$,basis:ee,coordinates:Y,component:W,beside:Q,tab:ce,span:be}),!Ie){c(b,P,z,I);return}p(),T.show(),C.show(),d(e.tab)},leave:()=>{window.clearInterval(l),window.clearTimeout(g),t.leave(),T.leave(),m()}}}class Mu{constructor(e,t,n){this.campaign=e,this.changed=n;for(const s of new Set(t.fields.map(r=>r.group)))this.element.append(_("fieldset",{},_("legend",{},s),...t.fields.filter(r=>r.group===s).map(r=>this.field(r))))}element=_("form",{on:{submit:e=>e.preventDefault()}});labels=new Map;set(e,t){const n=JSON.stringify(t)===JSON.stringify(e.value);this.labels.get(e.key)?.classList.toggle("changed",!n),Mh(this.campaign,e.key,n?void 0:t),this.changed()}field(e){const t=Vi(this.campaign),n=e.key in t?t[e.key]:e.value,s=e.least!==null||e.most!==null?`from ${e.least??"-"} to ${e.most??"-"} ${e.unit}`:"",r=[e.help,s].filter(Boolean).join(" "),a=_("label",{class:e.key in t?"field changed":"field",attrs:{title:r}},_("span",{},e.label));this.labels.set(e.key,a);const o=_("span",{class:"field-fault"});if(e.choices.length){const c=_("select",{on:{change:()=>this.set(e,c.value)}},...e.choices.map(h=>_("option",{attrs:{value:h}},h)));return c.value=String(n),a.append(c,_("span",{class:"unit"}),o),a}if(Array.isArray(e.value)){const h=n.map((u,f)=>_("input",{attrs:{type:"number",step:"any",value:String(u),"aria-label":`${e.label}, ${"xyz"[f]??f}`},on:{input:()=>this.set(e,h.map(p=>Number(p.value)))}}));return a.classList.add("three"),a.append(...h,_("span",{class:"unit"},e.unit||"mm"),o),_("div",{class:"field-group"},a)}const l=_("input",{attrs:{type:"number",step:e.whole?"1":"any",value:n==null?"":String(n),placeholder:e.optional?"chosen":""},on:{input:()=>this.set(e,l.value===""?e.optional?null:e.value:Number(l.value))}});return a.append(l,_("span",{class:"unit"},e.unit===e.label?"":e.unit),o),a}marks(e){for(const[t,n]of this.labels){const s=t.split(".").at(-1),r=e.find(a=>new RegExp(`(^|[\\s.:])${s} =`).test(a))??"";n.classList.toggle("wrong",r!==""),n.querySelector(".field-fault").textContent=r.slice(r.indexOf("must")>=0?r.indexOf("must"):0);for(const a of n.querySelectorAll("input, select"))a.setAttribute("aria-invalid",String(r!==""))}}}const Su=["scan","boresight check","reference","resume","turn","cable"];function wu(i){const e=new tt("Campaign","card plan-form"),t=new tt("What follows","card plan-answer"),n=new tt("Rehearsal"),s=new tt("Positioners and polarization schemes"),r=_("div",{class:"small mono"}),a=_("div",{class:"walk"}),o=_("p",{class:"small quiet",attrs:{role:"status"}}),l=Be.campaign;let c=null,h=null,u=0,f=0,p=0,g=null,x=0;const m=()=>{const b=yo(l);return{key:`${l}|${JSON.stringify(Vi(l))}`,words:b?`${b} unsaved`:"as saved"}},d=()=>({campaign:l,edits:{...Vi(l)}}),A=async()=>{const b=d(),P=m();if(s.subject.textContent&&s.subject.textContent!==P.words&&s.empty("The form changed since; set them side by side anew."),!await t.ask(P,async k=>{try{const $=await He("/api/plan",b,k);return c?.marks([]),$}catch($){throw $ instanceof hs&&c?.marks($.faults),$}},bu,{keep:!0}))return;const I=++x;He("/api/motion",b).then(k=>I===x&&T(k),k=>t.fault(k))},T=b=>{h=b,i.chamber.build(b),i.sphere.shape({rows:1,columns:b.directions.length/3,closed:!1,directions:b.directions});const P=b.role.length-1,z=Math.min(u,P),I=ge("play",()=>{window.clearInterval(p),p=p?0:window.setInterval(()=>{const k=a.querySelector("input");k.value=String(u>=P?0:Math.min(P,u+Math.max(1,Math.round(P/600)))),k.dispatchEvent(new Event("input"))},50),j(I,p?"pause":"play")},"tiny");j(a,Ln("through the scan",0,P,1,z,w,"",k=>String(k+1)),I,r),w(z)},w=b=>{if(!h)return;u=b;const P=h.axes.length,z=h,I=new Array(z.directions.length/3).fill(null);i.chamber.turnTo(z.angles_deg.slice(P*b,P*b+P),z.axes);for(let k=0;k<b;k++)z.cell[k]>=0&&(I[z.cell[k]]=.35);i.sphere.dots(I,{low:0,high:1,unit:""},z.cell[b]),j(i.stage.caption,`Plan: ${I.length} directions; passed ones coloured, the present one orange. Nothing is measured here.`),j(r,`point ${b+1} of ${z.role.length} (${Su[z.role[b]]}), after ${Yn(z.time_s[b])}: ${z.axes.map((k,$)=>`${k} ${z.readouts_deg[P*b+$].toFixed(1)}°`).join(", ")}`)},C=()=>{j(o),window.clearTimeout(f),f=window.setTimeout(()=>void A(),80)},D=b=>{g=b,c=new Mu(l,b,C);const P=ge("write into the files",()=>void L(P),"main"),z=ge("as saved",()=>{Yo(l),g&&e.show({key:"",words:""},...D(g)),C()});return P.disabled=!_t("configure"),[_("h1",{},b.name),_("p",{class:"small quiet"},`${b.device}; ${b.chamber}${b.simulated?" (simulated chamber, invented data)":""}`),c.element,_("div",{class:"row"},P,z),o]},L=async b=>{b.disabled=!0;try{const P=await He("/api/save",d());Yo(l),j(o,P.written.length?`written: ${P.written.join(", ")}; the files as they were stay beside them`:"nothing was changed");const z=o.textContent,I=await In("/api/form/{campaign}",[l]);e.show({key:l,words:""},...D(I)),j(o,z),A()}catch(P){j(o,_("span",{class:"bad"},qt(P))),b.disabled=!_t("configure")}},F=ge("rehearse on the simulated chamber",()=>{const b=d(),P=m();F.disabled=!0;const z=_("div",{});n.show(P,_("p",{class:"quiet"},"The plan is carried out on an invented chamber as imperfect as the declared one, and held against known truth."),z),Zn("/api/rehearse",{...b,seed:1+Math.floor(Math.random()*1e3)},I=>j(z,Nn(I))).then(I=>n.show(P,...Tu(I)),I=>{n.show(P),n.fault(I)}).finally(()=>F.disabled=!_t("operate"))});F.disabled=!_t("operate"),n.tools.append(F),n.empty(_t("operate")?"What the finished measurement would say, beside the truth.":"A session that may operate can rehearse the plan."),s.tools.append(ge("set side by side",()=>{const b=d();s.ask(m(),P=>He("/api/schemes",b,P),Eu)})),s.empty("All three positioners with every scheme, for this device and goal.");const y=xc(()=>j(e.subject,m().words));return e.ask({key:l,words:""},b=>In("/api/form/{campaign}",[l],b),D).then(b=>b&&A()),{title:"Plan",element:_("div",{class:"page plan-page"},_("div",{class:"card walk-card"},a),_("div",{class:"two"},e.element,t.element),n.element,s.element),leave:()=>{y(),window.clearTimeout(f),window.clearInterval(p),x++;for(const b of[e,t,n,s])b.leave()}}}function bu(i){const e=i.split.reduce((n,s)=>n+s[1],0),t=_("div",{class:"split-bar",attrs:{role:"img","aria-label":i.split.map(([n,s])=>`${n} ${Yn(s)}`).join(", ")}},...i.split.map(([,n],s)=>{const r=_("i",{class:s?"two":"one"});return r.style.width=`${100*n/e}%`,r}));return[_("p",{class:"verdict"},i.verdict),_("div",{class:"large"},i.duration),_("p",{class:"small quiet"},`${i.points} points`),t,_("p",{class:"small quiet"},i.split.map(([n,s])=>`${n} ${Yn(s)}`).join(", ")),...i.missing.map(n=>_("p",{class:"bad"},`Missing: ${n}`)),_("h3",{},"Forecast"),St(["figure","±","mostly from"],i.forecast.map(n=>[n.label,`${n.expanded.toPrecision(2)} ${n.unit}`,n.cause])),_("h3",{},"Alternatives"),St(["plan","duration","points"],i.alternatives.map(n=>[_("span",{attrs:{title:n.why}},n.name),n.duration,n.points])),_("details",{},_("summary",{},"Why"),St(["question","answer"],i.rows.map(([n,s])=>[_("strong",{},n),s])))]}function Eu(i){return[St(["positioner","scheme","duration","points","slices meet at"],i.map(e=>[_("span",{attrs:{title:`${e.formula}; suits ${e.suits}; polarization ${e.polarization}`}},e.geometry),e.scheme,e.fault?_("span",{class:"small bad"},`not here: ${e.fault}`):e.duration,e.points||"-",e.pole]))]}function Tu(i){const e=new ps("predicted error over all directions"),t=Math.ceil(Math.max(...i.error_db)/5)*5;return e.draw({rows:i.theta,columns:i.phi,values:i.error_db,rowName:"theta / deg",columnName:"phi / deg",low:t-40,high:t,unit:"dB"}),[_("p",{},`${(100*i.share_inside).toFixed(0)} % of all stated intervals hold the truth; it took ${i.seconds.toFixed(1)} s. An invented chamber, drawn anew each time.`),e.element,_("div",{class:"scroll",attrs:{tabindex:0,role:"region","aria-label":"rehearsed figures"}},St(["figure","measured","true","interval","mostly from"],i.rows.map(n=>[n.name,`${n.value} ${n.unit}`,Ne(n.truth,3),_("span",{class:n.inside?"good":"bad"},n.inside?"holds the truth":"does not"),n.cause])))]}const tl=60;function Au(i){const e=new tt("Scan"),t=new tt("Now"),n=new tt("What happened"),s=new tt("Measured so far"),r=new tt("Cut through the strongest direction"),a=new tt("Drift of the boresight checks"),o=new ps("levels measured so far"),l=new vn("cut through the strongest direction"),c=new vn("drift of the boresight checks"),h=_("div",{class:"large"}),u=_("div",{class:"big"}),f=_("div",{class:"large"}),p=_("p",{class:"quiet"}),g=_("div",{class:"row"}),x=_("ul",{class:"words",attrs:{tabindex:0,"aria-label":"what happened, the newest first"}}),m=_("input",{attrs:{value:Lt("run")||"first",pattern:"[A-Za-z0-9_-]{1,80}","aria-label":"name of the run"},on:{input:()=>mi({run:m.value})}});j(e.body,h,u,f,p,g),j(n.body,x);let d=null,A=null,T="",w="",C=tl,D=-1;const L=G=>({key:G.run??"",words:G.run?`run ${G.run}${G.kind&&G.kind!=="scan"?`, ${Mc[G.kind]??G.kind}`:""}`:""}),F=G=>()=>void He(`/api/${G}`,{run:It.status.run??"",sequence:It.status.sequence}).catch(ie=>e.fault(ie)),y=()=>void Mo(m.value,G=>e.fault(G)).then(G=>G&&j(e.faults)),M=()=>Hi("Abort takes the drives' power away",G=>[_("p",{},"Stop brakes the axes and keeps their positions. Abort also takes the drives' power away: the axes must seek their reference marks before the next scan. What was measured stays on disk."),_("div",{class:"row"},ge("back",G),_("span",{class:"spring"}),ge("abort",()=>{He("/api/abort",{}).then(G,ie=>e.fault(ie))},"danger"))]),b=G=>{const ie=Be.me?.mine===!0,H=cs(G),K=`${G.state}${ie}${H}`;if(K===T)return;T=K;const ue=ie?"":_t("operate")?"Take the motion lease first (top right).":"This session may watch and stop.",Se=ge("start or go on",y,"main"),xe=ge("pause",F("pause")),Ve=ge("resume",F("resume")),Ze=ge("abort",M,"","brake and take the drives' power away");Se.disabled=!ie||H,xe.disabled=!ie||G.state!=="running",Ve.disabled=!ie||G.state!=="paused",Ze.disabled=!_t("operate")||!H,j(g,!H&&_("label",{class:"row"},"run",m),Se,xe,Ve,Ze,ue&&_("span",{class:"small quiet"},ue))},P=G=>{b(G);const ie=G.total?(G.measured??0)/G.total:0;j(e.subject,L(G).words),j(h,G.state),j(u,G.total?`${(100*ie).toFixed(ie<.1?1:0)} %`:""),j(f,G.running&&G.left_s!==void 0?`${Yn(G.left_s)} left`:G.text??""),j(p,G.total?`${G.measured} of ${G.total} points; every one is on disk.`:"No scan yet. Start one here. The page may be closed: a scan does not need it.");const H=G.campaign??Be.campaign;w!==H&&(w=H,He("/api/motion",{campaign:H}).then(K=>{i.chamber.build(K),!d&&w===H&&z(K.directions)},K=>e.fault(K))),G.axes&&G.angles_deg?.length&&i.chamber.turnTo(G.angles_deg,G.axes),I(G),k(G),$(G)},z=G=>{i.sphere.shape({rows:1,columns:G.length/3,closed:!1,directions:G}),i.sphere.dots([],{low:0,high:1,unit:"dB"}),j(i.stage.caption,`Planned: ${G.length/3} directions, none measured.`)},I=G=>{const ie=G.level_db,H=typeof ie=="number"&&typeof G.noise_db=="number"&&ie<G.noise_db+10,K=[...(G.axes??[]).map((ue,Se)=>[ue,`${Ne(G.position_deg?.[Se],2)}°`]),["last sweep",`${Ne(ie,1)} dB (S21)`],["strongest",`${Ne(G.strongest_db,1)} dB`],["noise, as planned",`${Ne(G.noise_db,1)} dB`]];G.run?t.show(L(G),_("dl",{class:H?"reading bad":"reading"},...K.flatMap(([ue,Se])=>[_("dt",{},ue),_("dd",{class:"mono"},Se)])),H&&_("p",{class:"bad small"},"The last sweep is within 10 dB of the noise.")):t.empty("Axes and levels stand here while a scan runs.")},k=G=>{const ie=G.words??[];if(!G.run){n.empty("Events of a scan are listed here.");return}const H=ie.length?ie[ie.length-1].at+ie.length:0;H===D&&n.body.contains(x)||(D=H,j(x,...[...ie].reverse().slice(0,80).map(K=>_("li",{class:K.kind},_("time",{},new Date(1e3*K.at).toLocaleTimeString()),K.text))),n.body.contains(x)||n.show(L(G),x))},$=G=>{const ie=G.ties??[];if(ie.length<2){a.empty("Two checks along one direction show a drift.");return}const H=dt();a.body.contains(c.element)||a.show(L(G),c.element),c.draw({x:ie.map(K=>K[0]/60),lines:[{name:"level / dB",values:ie.map(K=>K[1]),colour:H.co,points:!0},{name:"phase / 10°",values:ie.map(K=>K[2]/10),colour:H.cross,dash:"5 3",points:!0}],xName:"time since the first / min",yName:"change",yWhole:us(ie.flatMap(K=>[K[1],K[2]/10]),.2),height:200},`drift of ${G.run}`)},ee=()=>{const G=d,ie=A;if(!G||!ie)return;const H=It.status,K=ie.filter(R=>!Number.isNaN(R)),ue=K.length?Math.ceil(K.reduce((R,Je)=>Math.max(R,Je),-1/0)/5)*5:0,Se={low:ue-C,high:ue,unit:"dB"};if(i.sphere.dots(ie,Se),i.sphere.scaleBar(Se,"S21"),j(i.stage.caption,`Run ${H.run}: ${K.length} of ${ie.length} directions measured, coloured by level; the others are grey.`),s.body.contains(o.element)||s.show(L(H),o.element,_("p",{class:"small quiet"},"Both polarizations together. Empty cells are not measured yet.")),o.draw({rows:G.rows,columns:G.columns,values:ie,rowName:`${G.row_name} / deg`,columnName:`${G.column_name} / deg`,...Se},`levels of ${H.run}`),!K.length)return;const xe=Ru(ie),Ve=xe%G.columns.length;r.body.contains(l.element)||r.show(L(H),l.element);const Ze=G.rows.map((R,Je)=>Number.isNaN(ie[Je*G.columns.length+Ve])?null:ie[Je*G.columns.length+Ve]);l.draw({x:G.rows,lines:[{name:`${G.column_name} ${Ne(G.columns[Ve],0)}°`,values:Ze,colour:dt().co,points:Ze.filter(R=>R!==null).length<25}],xName:`${G.row_name} / deg`,yName:"S21 / dB",yWhole:[Se.low,Se.high],height:220,peakOf:0,digits:1},`cut of ${H.run}`)},Y=It.watch({status:P,grid:G=>{d=G,A=null,i.sphere.shape({rows:G.rows.length,columns:G.columns.length,closed:G.column_name==="phi",directions:G.directions});for(const ie of[s,r])ie.empty("The first points are awaited.",L(It.status))},frame:G=>{A=G,ee()}});i.stage.hovered=G=>{at.hover(G);const ie=G&&A?i.sphere.nearest(G):-1;if(!G||!d||ie<0||!A){j(i.stage.readout);return}const H=[d.directions[3*ie],d.directions[3*ie+1],d.directions[3*ie+2]],K=A[ie];j(i.stage.readout,`${i.sphere.words(H)}: ${Number.isNaN(K)?"not measured":`${K.toFixed(1)} dB`}`)},o.clicked=G=>at.pin(W(G)),o.moved=G=>at.hover(G?W(G):null);const W=G=>{const ie=d,H=3*(ie.rows.indexOf(G.row)*ie.columns.length+ie.columns.indexOf(G.column));return[ie.directions[H],ie.directions[H+1],ie.directions[H+2]]},Q=at.watch(G=>{if(!d||!G||d.row_name!=="theta"){o.point(null);return}const[ie,H]=Un(G);o.point({row:ie,column:(H+360)%360})});It.grid||(s.empty("Levels are drawn as they come; where nothing was measured, nothing is drawn."),r.empty("The cut follows the strongest direction."));const ce=Ln("range of colours",20,100,10,tl,G=>{C=G,ee()}," dB"),be=_("input",{attrs:{type:"checkbox"},on:{change:()=>i.stage.ride(be.checked)}}),Ie=_("div",{class:"page scan-page"},e.element,_("div",{class:"two"},t.element,n.element),_("div",{class:"row no-print"},ce,_("label",{class:"row small"},be,"ride with the device")),s.element,_("div",{class:"two"},r.element,a.element));return It.grid||i.sphere.cursor(at.at??hn(0,0)),{title:"Scan",element:Ie,leave:()=>{Y(),Q()}}}function Ru(i){let e=-1;return i.forEach((t,n)=>{!Number.isNaN(t)&&(e<0||t>i[e])&&(e=n)}),Math.max(0,e)}/**
 * @license
 * Copyright 2010-2025 Three.js Authors
 * SPDX-License-Identifier: MIT
 */const Ro="180",Oi={ROTATE:0,DOLLY:1,PAN:2},Ui={ROTATE:0,PAN:1,DOLLY_PAN:2,DOLLY_ROTATE:3},Cu=0,nl=1,Pu=2,Ic=1,Du=2,An=3,jn=0,$t=1,Rn=2,Xn=0,ki=1,il=2,sl=3,rl=4,Lu=5,oi=100,Iu=101,Uu=102,Nu=103,Fu=104,Ou=200,ku=201,Bu=202,zu=203,Ea=204,Ta=205,Hu=206,Vu=207,Gu=208,Wu=209,$u=210,Xu=211,qu=212,Yu=213,ju=214,Aa=0,Ra=1,Ca=2,Gi=3,Pa=4,Da=5,La=6,Ia=7,Co=0,Ku=1,Zu=2,qn=0,Ju=1,Qu=2,ed=3,td=4,nd=5,id=6,sd=7,Uc=300,Wi=301,$i=302,Ua=303,Na=304,Tr=306,Fa=1e3,hi=1001,Oa=1002,fn=1003,rd=1004,Ls=1005,gn=1006,zr=1007,ui=1008,xn=1009,Nc=1010,Fc=1011,ms=1012,Po=1013,di=1014,Cn=1015,ws=1016,Do=1017,Lo=1018,gs=1020,Oc=35902,kc=35899,Bc=1021,zc=1022,dn=1023,_s=1026,vs=1027,Hc=1028,Io=1029,Vc=1030,Uo=1031,No=1033,ar=33776,or=33777,lr=33778,cr=33779,ka=35840,Ba=35841,za=35842,Ha=35843,Va=36196,Ga=37492,Wa=37496,$a=37808,Xa=37809,qa=37810,Ya=37811,ja=37812,Ka=37813,Za=37814,Ja=37815,Qa=37816,eo=37817,to=37818,no=37819,io=37820,so=37821,ro=36492,ao=36494,oo=36495,lo=36283,co=36284,ho=36285,uo=36286,ad=3200,od=3201,Gc=0,ld=1,Wn="",sn="srgb",Xi="srgb-linear",vr="linear",st="srgb",yi=7680,al=519,cd=512,hd=513,ud=514,Wc=515,dd=516,fd=517,pd=518,md=519,ol=35044,ll="300 es",_n=2e3,xr=2001;class gi{addEventListener(e,t){this._listeners===void 0&&(this._listeners={});const n=this._listeners;n[e]===void 0&&(n[e]=[]),n[e].indexOf(t)===-1&&n[e].push(t)}hasEventListener(e,t){const n=this._listeners;return n===void 0?!1:n[e]!==void 0&&n[e].indexOf(t)!==-1}removeEventListener(e,t){const n=this._listeners;if(n===void 0)return;const s=n[e];if(s!==void 0){const r=s.indexOf(t);r!==-1&&s.splice(r,1)}}dispatchEvent(e){const t=this._listeners;if(t===void 0)return;const n=t[e.type];if(n!==void 0){e.target=this;const s=n.slice(0);for(let r=0,a=s.length;r<a;r++)s[r].call(this,e);e.target=null}}}const Ut=["00","01","02","03","04","05","06","07","08","09","0a","0b","0c","0d","0e","0f","10","11","12","13","14","15","16","17","18","19","1a","1b","1c","1d","1e","1f","20","21","22","23","24","25","26","27","28","29","2a","2b","2c","2d","2e","2f","30","31","32","33","34","35","36","37","38","39","3a","3b","3c","3d","3e","3f","40","41","42","43","44","45","46","47","48","49","4a","4b","4c","4d","4e","4f","50","51","52","53","54","55","56","57","58","59","5a","5b","5c","5d","5e","5f","60","61","62","63","64","65","66","67","68","69","6a","6b","6c","6d","6e","6f","70","71","72","73","74","75","76","77","78","79","7a","7b","7c","7d","7e","7f","80","81","82","83","84","85","86","87","88","89","8a","8b","8c","8d","8e","8f","90","91","92","93","94","95","96","97","98","99","9a","9b","9c","9d","9e","9f","a0","a1","a2","a3","a4","a5","a6","a7","a8","a9","aa","ab","ac","ad","ae","af","b0","b1","b2","b3","b4","b5","b6","b7","b8","b9","ba","bb","bc","bd","be","bf","c0","c1","c2","c3","c4","c5","c6","c7","c8","c9","ca","cb","cc","cd","ce","cf","d0","d1","d2","d3","d4","d5","d6","d7","d8","d9","da","db","dc","dd","de","df","e0","e1","e2","e3","e4","e5","e6","e7","e8","e9","ea","eb","ec","ed","ee","ef","f0","f1","f2","f3","f4","f5","f6","f7","f8","f9","fa","fb","fc","fd","fe","ff"],hr=Math.PI/180,fo=180/Math.PI;function bs(){const i=Math.random()*4294967295|0,e=Math.random()*4294967295|0,t=Math.random()*4294967295|0,n=Math.random()*4294967295|0;return(Ut[i&255]+Ut[i>>8&255]+Ut[i>>16&255]+Ut[i>>24&255]+"-"+Ut[e&255]+Ut[e>>8&255]+"-"+Ut[e>>16&15|64]+Ut[e>>24&255]+"-"+Ut[t&63|128]+Ut[t>>8&255]+"-"+Ut[t>>16&255]+Ut[t>>24&255]+Ut[n&255]+Ut[n>>8&255]+Ut[n>>16&255]+Ut[n>>24&255]).toLowerCase()}function je(i,e,t){return Math.max(e,Math.min(t,i))}function gd(i,e){return(i%e+e)%e}function Hr(i,e,t){return(1-t)*i+t*e}function es(i,e){switch(e.constructor){case Float32Array:return i;case Uint32Array:return i/4294967295;case Uint16Array:return i/65535;case Uint8Array:return i/255;case Int32Array:return Math.max(i/2147483647,-1);case Int16Array:return Math.max(i/32767,-1);case Int8Array:return Math.max(i/127,-1);default:throw new Error("Invalid component type.")}}function Vt(i,e){switch(e.constructor){case Float32Array:return i;case Uint32Array:return Math.round(i*4294967295);case Uint16Array:return Math.round(i*65535);case Uint8Array:return Math.round(i*255);case Int32Array:return Math.round(i*2147483647);case Int16Array:return Math.round(i*32767);case Int8Array:return Math.round(i*127);default:throw new Error("Invalid component type.")}}const _d={DEG2RAD:hr};class ze{constructor(e=0,t=0){ze.prototype.isVector2=!0,this.x=e,this.y=t}get width(){return this.x}set width(e){this.x=e}get height(){return this.y}set height(e){this.y=e}set(e,t){return this.x=e,this.y=t,this}setScalar(e){return this.x=e,this.y=e,this}setX(e){return this.x=e,this}setY(e){return this.y=e,this}setComponent(e,t){switch(e){case 0:this.x=t;break;case 1:this.y=t;break;default:throw new Error("index is out of range: "+e)}return this}getComponent(e){switch(e){case 0:return this.x;case 1:return this.y;default:throw new Error("index is out of range: "+e)}}clone(){return new this.constructor(this.x,this.y)}copy(e){return this.x=e.x,this.y=e.y,this}add(e){return this.x+=e.x,this.y+=e.y,this}addScalar(e){return this.x+=e,this.y+=e,this}addVectors(e,t){return this.x=e.x+t.x,this.y=e.y+t.y,this}addScaledVector(e,t){return this.x+=e.x*t,this.y+=e.y*t,this}sub(e){return this.x-=e.x,this.y-=e.y,this}subScalar(e){return this.x-=e,this.y-=e,this}subVectors(e,t){return this.x=e.x-t.x,this.y=e.y-t.y,this}multiply(e){return this.x*=e.x,this.y*=e.y,this}multiplyScalar(e){return this.x*=e,this.y*=e,this}divide(e){return this.x/=e.x,this.y/=e.y,this}divideScalar(e){return this.multiplyScalar(1/e)}applyMatrix3(e){const t=this.x,n=this.y,s=e.elements;return this.x=s[0]*t+s[3]*n+s[6],this.y=s[1]*t+s[4]*n+s[7],this}min(e){return this.x=Math.min(this.x,e.x),this.y=Math.min(this.y,e.y),this}max(e){return this.x=Math.max(this.x,e.x),this.y=Math.max(this.y,e.y),this}clamp(e,t){return this.x=je(this.x,e.x,t.x),this.y=je(this.y,e.y,t.y),this}clampScalar(e,t){return this.x=je(this.x,e,t),this.y=je(this.y,e,t),this}clampLength(e,t){const n=this.length();return this.divideScalar(n||1).multiplyScalar(je(n,e,t))}floor(){return this.x=Math.floor(this.x),this.y=Math.floor(this.y),this}ceil(){return this.x=Math.ceil(this.x),this.y=Math.ceil(this.y),this}round(){return this.x=Math.round(this.x),this.y=Math.round(this.y),this}roundToZero(){return this.x=Math.trunc(this.x),this.y=Math.trunc(this.y),this}negate(){return this.x=-this.x,this.y=-this.y,this}dot(e){return this.x*e.x+this.y*e.y}cross(e){return this.x*e.y-this.y*e.x}lengthSq(){return this.x*this.x+this.y*this.y}length(){return Math.sqrt(this.x*this.x+this.y*this.y)}manhattanLength(){return Math.abs(this.x)+Math.abs(this.y)}normalize(){return this.divideScalar(this.length()||1)}angle(){return Math.atan2(-this.y,-this.x)+Math.PI}angleTo(e){const t=Math.sqrt(this.lengthSq()*e.lengthSq());if(t===0)return Math.PI/2;const n=this.dot(e)/t;return Math.acos(je(n,-1,1))}distanceTo(e){return Math.sqrt(this.distanceToSquared(e))}distanceToSquared(e){const t=this.x-e.x,n=this.y-e.y;return t*t+n*n}manhattanDistanceTo(e){return Math.abs(this.x-e.x)+Math.abs(this.y-e.y)}setLength(e){return this.normalize().multiplyScalar(e)}lerp(e,t){return this.x+=(e.x-this.x)*t,this.y+=(e.y-this.y)*t,this}lerpVectors(e,t,n){return this.x=e.x+(t.x-e.x)*n,this.y=e.y+(t.y-e.y)*n,this}equals(e){return e.x===this.x&&e.y===this.y}fromArray(e,t=0){return this.x=e[t],this.y=e[t+1],this}toArray(e=[],t=0){return e[t]=this.x,e[t+1]=this.y,e}fromBufferAttribute(e,t){return this.x=e.getX(t),this.y=e.getY(t),this}rotateAround(e,t){const n=Math.cos(t),s=Math.sin(t),r=this.x-e.x,a=this.y-e.y;return this.x=r*n-a*s+e.x,this.y=r*s+a*n+e.y,this}random(){return this.x=Math.random(),this.y=Math.random(),this}*[Symbol.iterator](){yield this.x,yield this.y}}class fi{constructor(e=0,t=0,n=0,s=1){this.isQuaternion=!0,this._x=e,this._y=t,this._z=n,this._w=s}static slerpFlat(e,t,n,s,r,a,o){let l=n[s+0],c=n[s+1],h=n[s+2],u=n[s+3];const f=r[a+0],p=r[a+1],g=r[a+2],x=r[a+3];if(o===0){e[t+0]=l,e[t+1]=c,e[t+2]=h,e[t+3]=u;return}if(o===1){e[t+0]=f,e[t+1]=p,e[t+2]=g,e[t+3]=x;return}if(u!==x||l!==f||c!==p||h!==g){let m=1-o;const d=l*f+c*p+h*g+u*x,A=d>=0?1:-1,T=1-d*d;if(T>Number.EPSILON){const C=Math.sqrt(T),D=Math.atan2(C,d*A);m=Math.sin(m*D)/C,o=Math.sin(o*D)/C}const w=o*A;if(l=l*m+f*w,c=c*m+p*w,h=h*m+g*w,u=u*m+x*w,m===1-o){const C=1/Math.sqrt(l*l+c*c+h*h+u*u);l*=C,c*=C,h*=C,u*=C}}e[t]=l,e[t+1]=c,e[t+2]=h,e[t+3]=u}static multiplyQuaternionsFlat(e,t,n,s,r,a){const o=n[s],l=n[s+1],c=n[s+2],h=n[s+3],u=r[a],f=r[a+1],p=r[a+2],g=r[a+3];return e[t]=o*g+h*u+l*p-c*f,e[t+1]=l*g+h*f+c*u-o*p,e[t+2]=c*g+h*p+o*f-l*u,e[t+3]=h*g-o*u-l*f-c*p,e}get x(){return this._x}set x(e){this._x=e,this._onChangeCallback()}get y(){return this._y}set y(e){this._y=e,this._onChangeCallback()}get z(){return this._z}set z(e){this._z=e,this._onChangeCallback()}get w(){return this._w}set w(e){this._w=e,this._onChangeCallback()}set(e,t,n,s){return this._x=e,this._y=t,this._z=n,this._w=s,this._onChangeCallback(),this}clone(){return new this.constructor(this._x,this._y,this._z,this._w)}copy(e){return this._x=e.x,this._y=e.y,this._z=e.z,this._w=e.w,this._onChangeCallback(),this}setFromEuler(e,t=!0){const n=e._x,s=e._y,r=e._z,a=e._order,o=Math.cos,l=Math.sin,c=o(n/2),h=o(s/2),u=o(r/2),f=l(n/2),p=l(s/2),g=l(r/2);switch(a){case"XYZ":this._x=f*h*u+c*p*g,this._y=c*p*u-f*h*g,this._z=c*h*g+f*p*u,this._w=c*h*u-f*p*g;break;case"YXZ":this._x=f*h*u+c*p*g,this._y=c*p*u-f*h*g,this._z=c*h*g-f*p*u,this._w=c*h*u+f*p*g;break;case"ZXY":this._x=f*h*u-c*p*g,this._y=c*p*u+f*h*g,this._z=c*h*g+f*p*u,this._w=c*h*u-f*p*g;break;case"ZYX":this._x=f*h*u-c*p*g,this._y=c*p*u+f*h*g,this._z=c*h*g-f*p*u,this._w=c*h*u+f*p*g;break;case"YZX":this._x=f*h*u+c*p*g,this._y=c*p*u+f*h*g,this._z=c*h*g-f*p*u,this._w=c*h*u-f*p*g;break;case"XZY":this._x=f*h*u-c*p*g,this._y=c*p*u-f*h*g,this._z=c*h*g+f*p*u,this._w=c*h*u+f*p*g;break;default:console.warn("THREE.Quaternion: .setFromEuler() encountered an unknown order: "+a)}return t===!0&&this._onChangeCallback(),this}setFromAxisAngle(e,t){const n=t/2,s=Math.sin(n);return this._x=e.x*s,this._y=e.y*s,this._z=e.z*s,this._w=Math.cos(n),this._onChangeCallback(),this}setFromRotationMatrix(e){const t=e.elements,n=t[0],s=t[4],r=t[8],a=t[1],o=t[5],l=t[9],c=t[2],h=t[6],u=t[10],f=n+o+u;if(f>0){const p=.5/Math.sqrt(f+1);this._w=.25/p,this._x=(h-l)*p,this._y=(r-c)*p,this._z=(a-s)*p}else if(n>o&&n>u){const p=2*Math.sqrt(1+n-o-u);this._w=(h-l)/p,this._x=.25*p,this._y=(s+a)/p,this._z=(r+c)/p}else if(o>u){const p=2*Math.sqrt(1+o-n-u);this._w=(r-c)/p,this._x=(s+a)/p,this._y=.25*p,this._z=(l+h)/p}else{const p=2*Math.sqrt(1+u-n-o);this._w=(a-s)/p,this._x=(r+c)/p,this._y=(l+h)/p,this._z=.25*p}return this._onChangeCallback(),this}setFromUnitVectors(e,t){let n=e.dot(t)+1;return n<1e-8?(n=0,Math.abs(e.x)>Math.abs(e.z)?(this._x=-e.y,this._y=e.x,this._z=0,this._w=n):(this._x=0,this._y=-e.z,this._z=e.y,this._w=n)):(this._x=e.y*t.z-e.z*t.y,this._y=e.z*t.x-e.x*t.z,this._z=e.x*t.y-e.y*t.x,this._w=n),this.normalize()}angleTo(e){return 2*Math.acos(Math.abs(je(this.dot(e),-1,1)))}rotateTowards(e,t){const n=this.angleTo(e);if(n===0)return this;const s=Math.min(1,t/n);return this.slerp(e,s),this}identity(){return this.set(0,0,0,1)}invert(){return this.conjugate()}conjugate(){return this._x*=-1,this._y*=-1,this._z*=-1,this._onChangeCallback(),this}dot(e){return this._x*e._x+this._y*e._y+this._z*e._z+this._w*e._w}lengthSq(){return this._x*this._x+this._y*this._y+this._z*this._z+this._w*this._w}length(){return Math.sqrt(this._x*this._x+this._y*this._y+this._z*this._z+this._w*this._w)}normalize(){let e=this.length();return e===0?(this._x=0,this._y=0,this._z=0,this._w=1):(e=1/e,this._x=this._x*e,this._y=this._y*e,this._z=this._z*e,this._w=this._w*e),this._onChangeCallback(),this}multiply(e){return this.multiplyQuaternions(this,e)}premultiply(e){return this.multiplyQuaternions(e,this)}multiplyQuaternions(e,t){const n=e._x,s=e._y,r=e._z,a=e._w,o=t._x,l=t._y,c=t._z,h=t._w;return this._x=n*h+a*o+s*c-r*l,this._y=s*h+a*l+r*o-n*c,this._z=r*h+a*c+n*l-s*o,this._w=a*h-n*o-s*l-r*c,this._onChangeCallback(),this}slerp(e,t){if(t===0)return this;if(t===1)return this.copy(e);const n=this._x,s=this._y,r=this._z,a=this._w;let o=a*e._w+n*e._x+s*e._y+r*e._z;if(o<0?(this._w=-e._w,this._x=-e._x,this._y=-e._y,this._z=-e._z,o=-o):this.copy(e),o>=1)return this._w=a,this._x=n,this._y=s,this._z=r,this;const l=1-o*o;if(l<=Number.EPSILON){const p=1-t;return this._w=p*a+t*this._w,this._x=p*n+t*this._x,this._y=p*s+t*this._y,this._z=p*r+t*this._z,this.normalize(),this}const c=Math.sqrt(l),h=Math.atan2(c,o),u=Math.sin((1-t)*h)/c,f=Math.sin(t*h)/c;return this._w=a*u+this._w*f,this._x=n*u+this._x*f,this._y=s*u+this._y*f,this._z=r*u+this._z*f,this._onChangeCallback(),this}slerpQuaternions(e,t,n){return this.copy(e).slerp(t,n)}random(){const e=2*Math.PI*Math.random(),t=2*Math.PI*Math.random(),n=Math.random(),s=Math.sqrt(1-n),r=Math.sqrt(n);return this.set(s*Math.sin(e),s*Math.cos(e),r*Math.sin(t),r*Math.cos(t))}equals(e){return e._x===this._x&&e._y===this._y&&e._z===this._z&&e._w===this._w}fromArray(e,t=0){return this._x=e[t],this._y=e[t+1],this._z=e[t+2],this._w=e[t+3],this._onChangeCallback(),this}toArray(e=[],t=0){return e[t]=this._x,e[t+1]=this._y,e[t+2]=this._z,e[t+3]=this._w,e}fromBufferAttribute(e,t){return this._x=e.getX(t),this._y=e.getY(t),this._z=e.getZ(t),this._w=e.getW(t),this._onChangeCallback(),this}toJSON(){return this.toArray()}_onChange(e){return this._onChangeCallback=e,this}_onChangeCallback(){}*[Symbol.iterator](){yield this._x,yield this._y,yield this._z,yield this._w}}class N{constructor(e=0,t=0,n=0){N.prototype.isVector3=!0,this.x=e,this.y=t,this.z=n}set(e,t,n){return n===void 0&&(n=this.z),this.x=e,this.y=t,this.z=n,this}setScalar(e){return this.x=e,this.y=e,this.z=e,this}setX(e){return this.x=e,this}setY(e){return this.y=e,this}setZ(e){return this.z=e,this}setComponent(e,t){switch(e){case 0:this.x=t;break;case 1:this.y=t;break;case 2:this.z=t;break;default:throw new Error("index is out of range: "+e)}return this}getComponent(e){switch(e){case 0:return this.x;case 1:return this.y;case 2:return this.z;default:throw new Error("index is out of range: "+e)}}clone(){return new this.constructor(this.x,this.y,this.z)}copy(e){return this.x=e.x,this.y=e.y,this.z=e.z,this}add(e){return this.x+=e.x,this.y+=e.y,this.z+=e.z,this}addScalar(e){return this.x+=e,this.y+=e,this.z+=e,this}addVectors(e,t){return this.x=e.x+t.x,this.y=e.y+t.y,this.z=e.z+t.z,this}addScaledVector(e,t){return this.x+=e.x*t,this.y+=e.y*t,this.z+=e.z*t,this}sub(e){return this.x-=e.x,this.y-=e.y,this.z-=e.z,this}subScalar(e){return this.x-=e,this.y-=e,this.z-=e,this}subVectors(e,t){return this.x=e.x-t.x,this.y=e.y-t.y,this.z=e.z-t.z,this}multiply(e){return this.x*=e.x,this.y*=e.y,this.z*=e.z,this}multiplyScalar(e){return this.x*=e,this.y*=e,this.z*=e,this}multiplyVectors(e,t){return this.x=e.x*t.x,this.y=e.y*t.y,this.z=e.z*t.z,this}applyEuler(e){return this.applyQuaternion(cl.setFromEuler(e))}applyAxisAngle(e,t){return this.applyQuaternion(cl.setFromAxisAngle(e,t))}applyMatrix3(e){const t=this.x,n=this.y,s=this.z,r=e.elements;return this.x=r[0]*t+r[3]*n+r[6]*s,this.y=r[1]*t+r[4]*n+r[7]*s,this.z=r[2]*t+r[5]*n+r[8]*s,this}applyNormalMatrix(e){return this.applyMatrix3(e).normalize()}applyMatrix4(e){const t=this.x,n=this.y,s=this.z,r=e.elements,a=1/(r[3]*t+r[7]*n+r[11]*s+r[15]);return this.x=(r[0]*t+r[4]*n+r[8]*s+r[12])*a,this.y=(r[1]*t+r[5]*n+r[9]*s+r[13])*a,this.z=(r[2]*t+r[6]*n+r[10]*s+r[14])*a,this}applyQuaternion(e){const t=this.x,n=this.y,s=this.z,r=e.x,a=e.y,o=e.z,l=e.w,c=2*(a*s-o*n),h=2*(o*t-r*s),u=2*(r*n-a*t);return this.x=t+l*c+a*u-o*h,this.y=n+l*h+o*c-r*u,this.z=s+l*u+r*h-a*c,this}project(e){return this.applyMatrix4(e.matrixWorldInverse).applyMatrix4(e.projectionMatrix)}unproject(e){return this.applyMatrix4(e.projectionMatrixInverse).applyMatrix4(e.matrixWorld)}transformDirection(e){const t=this.x,n=this.y,s=this.z,r=e.elements;return this.x=r[0]*t+r[4]*n+r[8]*s,this.y=r[1]*t+r[5]*n+r[9]*s,this.z=r[2]*t+r[6]*n+r[10]*s,this.normalize()}divide(e){return this.x/=e.x,this.y/=e.y,this.z/=e.z,this}divideScalar(e){return this.multiplyScalar(1/e)}min(e){return this.x=Math.min(this.x,e.x),this.y=Math.min(this.y,e.y),this.z=Math.min(this.z,e.z),this}max(e){return this.x=Math.max(this.x,e.x),this.y=Math.max(this.y,e.y),this.z=Math.max(this.z,e.z),this}clamp(e,t){return this.x=je(this.x,e.x,t.x),this.y=je(this.y,e.y,t.y),this.z=je(this.z,e.z,t.z),this}clampScalar(e,t){return this.x=je(this.x,e,t),this.y=je(this.y,e,t),this.z=je(this.z,e,t),this}clampLength(e,t){const n=this.length();return this.divideScalar(n||1).multiplyScalar(je(n,e,t))}floor(){return this.x=Math.floor(this.x),this.y=Math.floor(this.y),this.z=Math.floor(this.z),this}ceil(){return this.x=Math.ceil(this.x),this.y=Math.ceil(this.y),this.z=Math.ceil(this.z),this}round(){return this.x=Math.round(this.x),this.y=Math.round(this.y),this.z=Math.round(this.z),this}roundToZero(){return this.x=Math.trunc(this.x),this.y=Math.trunc(this.y),this.z=Math.trunc(this.z),this}negate(){return this.x=-this.x,this.y=-this.y,this.z=-this.z,this}dot(e){return this.x*e.x+this.y*e.y+this.z*e.z}lengthSq(){return this.x*this.x+this.y*this.y+this.z*this.z}length(){return Math.sqrt(this.x*this.x+this.y*this.y+this.z*this.z)}manhattanLength(){return Math.abs(this.x)+Math.abs(this.y)+Math.abs(this.z)}normalize(){return this.divideScalar(this.length()||1)}setLength(e){return this.normalize().multiplyScalar(e)}lerp(e,t){return this.x+=(e.x-this.x)*t,this.y+=(e.y-this.y)*t,this.z+=(e.z-this.z)*t,this}lerpVectors(e,t,n){return this.x=e.x+(t.x-e.x)*n,this.y=e.y+(t.y-e.y)*n,this.z=e.z+(t.z-e.z)*n,this}cross(e){return this.crossVectors(this,e)}crossVectors(e,t){const n=e.x,s=e.y,r=e.z,a=t.x,o=t.y,l=t.z;return this.x=s*l-r*o,this.y=r*a-n*l,this.z=n*o-s*a,this}projectOnVector(e){const t=e.lengthSq();if(t===0)return this.set(0,0,0);const n=e.dot(this)/t;return this.copy(e).multiplyScalar(n)}projectOnPlane(e){return Vr.copy(this).projectOnVector(e),this.sub(Vr)}reflect(e){return this.sub(Vr.copy(e).multiplyScalar(2*this.dot(e)))}angleTo(e){const t=Math.sqrt(this.lengthSq()*e.lengthSq());if(t===0)return Math.PI/2;const n=this.dot(e)/t;return Math.acos(je(n,-1,1))}distanceTo(e){return Math.sqrt(this.distanceToSquared(e))}distanceToSquared(e){const t=this.x-e.x,n=this.y-e.y,s=this.z-e.z;return t*t+n*n+s*s}manhattanDistanceTo(e){return Math.abs(this.x-e.x)+Math.abs(this.y-e.y)+Math.abs(this.z-e.z)}setFromSpherical(e){return this.setFromSphericalCoords(e.radius,e.phi,e.theta)}setFromSphericalCoords(e,t,n){const s=Math.sin(t)*e;return this.x=s*Math.sin(n),this.y=Math.cos(t)*e,this.z=s*Math.cos(n),this}setFromCylindrical(e){return this.setFromCylindricalCoords(e.radius,e.theta,e.y)}setFromCylindricalCoords(e,t,n){return this.x=e*Math.sin(t),this.y=n,this.z=e*Math.cos(t),this}setFromMatrixPosition(e){const t=e.elements;return this.x=t[12],this.y=t[13],this.z=t[14],this}setFromMatrixScale(e){const t=this.setFromMatrixColumn(e,0).length(),n=this.setFromMatrixColumn(e,1).length(),s=this.setFromMatrixColumn(e,2).length();return this.x=t,this.y=n,this.z=s,this}setFromMatrixColumn(e,t){return this.fromArray(e.elements,t*4)}setFromMatrix3Column(e,t){return this.fromArray(e.elements,t*3)}setFromEuler(e){return this.x=e._x,this.y=e._y,this.z=e._z,this}setFromColor(e){return this.x=e.r,this.y=e.g,this.z=e.b,this}equals(e){return e.x===this.x&&e.y===this.y&&e.z===this.z}fromArray(e,t=0){return this.x=e[t],this.y=e[t+1],this.z=e[t+2],this}toArray(e=[],t=0){return e[t]=this.x,e[t+1]=this.y,e[t+2]=this.z,e}fromBufferAttribute(e,t){return this.x=e.getX(t),this.y=e.getY(t),this.z=e.getZ(t),this}random(){return this.x=Math.random(),this.y=Math.random(),this.z=Math.random(),this}randomDirection(){const e=Math.random()*Math.PI*2,t=Math.random()*2-1,n=Math.sqrt(1-t*t);return this.x=n*Math.cos(e),this.y=t,this.z=n*Math.sin(e),this}*[Symbol.iterator](){yield this.x,yield this.y,yield this.z}}const Vr=new N,cl=new fi;class $e{constructor(e,t,n,s,r,a,o,l,c){$e.prototype.isMatrix3=!0,this.elements=[1,0,0,0,1,0,0,0,1],e!==void 0&&this.set(e,t,n,s,r,a,o,l,c)}set(e,t,n,s,r,a,o,l,c){const h=this.elements;return h[0]=e,h[1]=s,h[2]=o,h[3]=t,h[4]=r,h[5]=l,h[6]=n,h[7]=a,h[8]=c,this}identity(){return this.set(1,0,0,0,1,0,0,0,1),this}copy(e){const t=this.elements,n=e.elements;return t[0]=n[0],t[1]=n[1],t[2]=n[2],t[3]=n[3],t[4]=n[4],t[5]=n[5],t[6]=n[6],t[7]=n[7],t[8]=n[8],this}extractBasis(e,t,n){return e.setFromMatrix3Column(this,0),t.setFromMatrix3Column(this,1),n.setFromMatrix3Column(this,2),this}setFromMatrix4(e){const t=e.elements;return this.set(t[0],t[4],t[8],t[1],t[5],t[9],t[2],t[6],t[10]),this}multiply(e){return this.multiplyMatrices(this,e)}premultiply(e){return this.multiplyMatrices(e,this)}multiplyMatrices(e,t){const n=e.elements,s=t.elements,r=this.elements,a=n[0],o=n[3],l=n[6],c=n[1],h=n[4],u=n[7],f=n[2],p=n[5],g=n[8],x=s[0],m=s[3],d=s[6],A=s[1],T=s[4],w=s[7],C=s[2],D=s[5],L=s[8];return r[0]=a*x+o*A+l*C,r[3]=a*m+o*T+l*D,r[6]=a*d+o*w+l*L,r[1]=c*x+h*A+u*C,r[4]=c*m+h*T+u*D,r[7]=c*d+h*w+u*L,r[2]=f*x+p*A+g*C,r[5]=f*m+p*T+g*D,r[8]=f*d+p*w+g*L,this}multiplyScalar(e){const t=this.elements;return t[0]*=e,t[3]*=e,t[6]*=e,t[1]*=e,t[4]*=e,t[7]*=e,t[2]*=e,t[5]*=e,t[8]*=e,this}determinant(){const e=this.elements,t=e[0],n=e[1],s=e[2],r=e[3],a=e[4],o=e[5],l=e[6],c=e[7],h=e[8];return t*a*h-t*o*c-n*r*h+n*o*l+s*r*c-s*a*l}invert(){const e=this.elements,t=e[0],n=e[1],s=e[2],r=e[3],a=e[4],o=e[5],l=e[6],c=e[7],h=e[8],u=h*a-o*c,f=o*l-h*r,p=c*r-a*l,g=t*u+n*f+s*p;if(g===0)return this.set(0,0,0,0,0,0,0,0,0);const x=1/g;return e[0]=u*x,e[1]=(s*c-h*n)*x,e[2]=(o*n-s*a)*x,e[3]=f*x,e[4]=(h*t-s*l)*x,e[5]=(s*r-o*t)*x,e[6]=p*x,e[7]=(n*l-c*t)*x,e[8]=(a*t-n*r)*x,this}transpose(){let e;const t=this.elements;return e=t[1],t[1]=t[3],t[3]=e,e=t[2],t[2]=t[6],t[6]=e,e=t[5],t[5]=t[7],t[7]=e,this}getNormalMatrix(e){return this.setFromMatrix4(e).invert().transpose()}transposeIntoArray(e){const t=this.elements;return e[0]=t[0],e[1]=t[3],e[2]=t[6],e[3]=t[1],e[4]=t[4],e[5]=t[7],e[6]=t[2],e[7]=t[5],e[8]=t[8],this}setUvTransform(e,t,n,s,r,a,o){const l=Math.cos(r),c=Math.sin(r);return this.set(n*l,n*c,-n*(l*a+c*o)+a+e,-s*c,s*l,-s*(-c*a+l*o)+o+t,0,0,1),this}scale(e,t){return this.premultiply(Gr.makeScale(e,t)),this}rotate(e){return this.premultiply(Gr.makeRotation(-e)),this}translate(e,t){return this.premultiply(Gr.makeTranslation(e,t)),this}makeTranslation(e,t){return e.isVector2?this.set(1,0,e.x,0,1,e.y,0,0,1):this.set(1,0,e,0,1,t,0,0,1),this}makeRotation(e){const t=Math.cos(e),n=Math.sin(e);return this.set(t,-n,0,n,t,0,0,0,1),this}makeScale(e,t){return this.set(e,0,0,0,t,0,0,0,1),this}equals(e){const t=this.elements,n=e.elements;for(let s=0;s<9;s++)if(t[s]!==n[s])return!1;return!0}fromArray(e,t=0){for(let n=0;n<9;n++)this.elements[n]=e[n+t];return this}toArray(e=[],t=0){const n=this.elements;return e[t]=n[0],e[t+1]=n[1],e[t+2]=n[2],e[t+3]=n[3],e[t+4]=n[4],e[t+5]=n[5],e[t+6]=n[6],e[t+7]=n[7],e[t+8]=n[8],e}clone(){return new this.constructor().fromArray(this.elements)}}const Gr=new $e;function $c(i){for(let e=i.length-1;e>=0;--e)if(i[e]>=65535)return!0;return!1}function yr(i){return document.createElementNS("http://www.w3.org/1999/xhtml",i)}function vd(){const i=yr("canvas");return i.style.display="block",i}const hl={};function xs(i){i in hl||(hl[i]=!0,console.warn(i))}function xd(i,e,t){return new Promise(function(n,s){function r(){switch(i.clientWaitSync(e,i.SYNC_FLUSH_COMMANDS_BIT,0)){case i.WAIT_FAILED:s();break;case i.TIMEOUT_EXPIRED:setTimeout(r,t);break;default:n()}}setTimeout(r,t)})}const ul=new $e().set(.4123908,.3575843,.1804808,.212639,.7151687,.0721923,.0193308,.1191948,.9505322),dl=new $e().set(3.2409699,-1.5373832,-.4986108,-.9692436,1.8759675,.0415551,.0556301,-.203977,1.0569715);function yd(){const i={enabled:!0,workingColorSpace:Xi,spaces:{},convert:function(s,r,a){return this.enabled===!1||r===a||!r||!a||(this.spaces[r].transfer===st&&(s.r=Dn(s.r),s.g=Dn(s.g),s.b=Dn(s.b)),this.spaces[r].primaries!==this.spaces[a].primaries&&(s.applyMatrix3(this.spaces[r].toXYZ),s.applyMatrix3(this.spaces[a].fromXYZ)),this.spaces[a].transfer===st&&(s.r=Bi(s.r),s.g=Bi(s.g),s.b=Bi(s.b))),s},workingToColorSpace:function(s,r){return this.convert(s,this.workingColorSpace,r)},colorSpaceToWorking:function(s,r){return this.convert(s,r,this.workingColorSpace)},getPrimaries:function(s){return this.spaces[s].primaries},getTransfer:function(s){return s===Wn?vr:this.spaces[s].transfer},getToneMappingMode:function(s){return this.spaces[s].outputColorSpaceConfig.toneMappingMode||"standard"},getLuminanceCoefficients:function(s,r=this.workingColorSpace){return s.fromArray(this.spaces[r].luminanceCoefficients)},define:function(s){Object.assign(this.spaces,s)},_getMatrix:function(s,r,a){return s.copy(this.spaces[r].toXYZ).multiply(this.spaces[a].fromXYZ)},_getDrawingBufferColorSpace:function(s){return this.spaces[s].outputColorSpaceConfig.drawingBufferColorSpace},_getUnpackColorSpace:function(s=this.workingColorSpace){return this.spaces[s].workingColorSpaceConfig.unpackColorSpace},fromWorkingColorSpace:function(s,r){return xs("THREE.ColorManagement: .fromWorkingColorSpace() has been renamed to .workingToColorSpace()."),i.workingToColorSpace(s,r)},toWorkingColorSpace:function(s,r){return xs("THREE.ColorManagement: .toWorkingColorSpace() has been renamed to .colorSpaceToWorking()."),i.colorSpaceToWorking(s,r)}},e=[.64,.33,.3,.6,.15,.06],t=[.2126,.7152,.0722],n=[.3127,.329];return i.define({[Xi]:{primaries:e,whitePoint:n,transfer:vr,toXYZ:ul,fromXYZ:dl,luminanceCoefficients:t,workingColorSpaceConfig:{unpackColorSpace:sn},outputColorSpaceConfig:{drawingBufferColorSpace:sn}},[sn]:{primaries:e,whitePoint:n,transfer:st,toXYZ:ul,fromXYZ:dl,luminanceCoefficients:t,outputColorSpaceConfig:{drawingBufferColorSpace:sn}}}),i}const et=yd();function Dn(i){return i<.04045?i*.0773993808:Math.pow(i*.9478672986+.0521327014,2.4)}function Bi(i){return i<.0031308?i*12.92:1.055*Math.pow(i,.41666)-.055}let Mi;class Md{static getDataURL(e,t="image/png"){if(/^data:/i.test(e.src)||typeof HTMLCanvasElement>"u")return e.src;let n;if(e instanceof HTMLCanvasElement)n=e;else{Mi===void 0&&(Mi=yr("canvas")),Mi.width=e.width,Mi.height=e.height;const s=Mi.getContext("2d");e instanceof ImageData?s.putImageData(e,0,0):s.drawImage(e,0,0,e.width,e.height),n=Mi}return n.toDataURL(t)}static sRGBToLinear(e){if(typeof HTMLImageElement<"u"&&e instanceof HTMLImageElement||typeof HTMLCanvasElement<"u"&&e instanceof HTMLCanvasElement||typeof ImageBitmap<"u"&&e instanceof ImageBitmap){const t=yr("canvas");t.width=e.width,t.height=e.height;const n=t.getContext("2d");n.drawImage(e,0,0,e.width,e.height);const s=n.getImageData(0,0,e.width,e.height),r=s.data;for(let a=0;a<r.length;a++)r[a]=Dn(r[a]/255)*255;return n.putImageData(s,0,0),t}else if(e.data){const t=e.data.slice(0);for(let n=0;n<t.length;n++)t instanceof Uint8Array||t instanceof Uint8ClampedArray?t[n]=Math.floor(Dn(t[n]/255)*255):t[n]=Dn(t[n]);return{data:t,width:e.width,height:e.height}}else return console.warn("THREE.ImageUtils.sRGBToLinear(): Unsupported image type. No color space conversion applied."),e}}let Sd=0;class Fo{constructor(e=null){this.isSource=!0,Object.defineProperty(this,"id",{value:Sd++}),this.uuid=bs(),this.data=e,this.dataReady=!0,this.version=0}getSize(e){const t=this.data;return typeof HTMLVideoElement<"u"&&t instanceof HTMLVideoElement?e.set(t.videoWidth,t.videoHeight,0):t instanceof VideoFrame?e.set(t.displayHeight,t.displayWidth,0):t!==null?e.set(t.width,t.height,t.depth||0):e.set(0,0,0),e}set needsUpdate(e){e===!0&&this.version++}toJSON(e){const t=e===void 0||typeof e=="string";if(!t&&e.images[this.uuid]!==void 0)return e.images[this.uuid];const n={uuid:this.uuid,url:""},s=this.data;if(s!==null){let r;if(Array.isArray(s)){r=[];for(let a=0,o=s.length;a<o;a++)s[a].isDataTexture?r.push(Wr(s[a].image)):r.push(Wr(s[a]))}else r=Wr(s);n.url=r}return t||(e.images[this.uuid]=n),n}}function Wr(i){return typeof HTMLImageElement<"u"&&i instanceof HTMLImageElement||typeof HTMLCanvasElement<"u"&&i instanceof HTMLCanvasElement||typeof ImageBitmap<"u"&&i instanceof ImageBitmap?Md.getDataURL(i):i.data?{data:Array.from(i.data),width:i.width,height:i.height,type:i.data.constructor.name}:(console.warn("THREE.Texture: Unable to serialize Texture."),{})}let wd=0;const $r=new N;class Xt extends gi{constructor(e=Xt.DEFAULT_IMAGE,t=Xt.DEFAULT_MAPPING,n=hi,s=hi,r=gn,a=ui,o=dn,l=xn,c=Xt.DEFAULT_ANISOTROPY,h=Wn){super(),this.isTexture=!0,Object.defineProperty(this,"id",{value:wd++}),this.uuid=bs(),this.name="",this.source=new Fo(e),this.mipmaps=[],this.mapping=t,this.channel=0,this.wrapS=n,this.wrapT=s,this.magFilter=r,this.minFilter=a,this.anisotropy=c,this.format=o,this.internalFormat=null,this.type=l,this.offset=new ze(0,0),this.repeat=new ze(1,1),this.center=new ze(0,0),this.rotation=0,this.matrixAutoUpdate=!0,this.matrix=new $e,this.generateMipmaps=!0,this.premultiplyAlpha=!1,this.flipY=!0,this.unpackAlignment=4,this.colorSpace=h,this.userData={},this.updateRanges=[],this.version=0,this.onUpdate=null,this.renderTarget=null,this.isRenderTargetTexture=!1,this.isArrayTexture=!!(e&&e.depth&&e.depth>1),this.pmremVersion=0}get width(){return this.source.getSize($r).x}get height(){return this.source.getSize($r).y}get depth(){return this.source.getSize($r).z}get image(){return this.source.data}set image(e=null){this.source.data=e}updateMatrix(){this.matrix.setUvTransform(this.offset.x,this.offset.y,this.repeat.x,this.repeat.y,this.rotation,this.center.x,this.center.y)}addUpdateRange(e,t){this.updateRanges.push({start:e,count:t})}clearUpdateRanges(){this.updateRanges.length=0}clone(){return new this.constructor().copy(this)}copy(e){return this.name=e.name,this.source=e.source,this.mipmaps=e.mipmaps.slice(0),this.mapping=e.mapping,this.channel=e.channel,this.wrapS=e.wrapS,this.wrapT=e.wrapT,this.magFilter=e.magFilter,this.minFilter=e.minFilter,this.anisotropy=e.anisotropy,this.format=e.format,this.internalFormat=e.internalFormat,this.type=e.type,this.offset.copy(e.offset),this.repeat.copy(e.repeat),this.center.copy(e.center),this.rotation=e.rotation,this.matrixAutoUpdate=e.matrixAutoUpdate,this.matrix.copy(e.matrix),this.generateMipmaps=e.generateMipmaps,this.premultiplyAlpha=e.premultiplyAlpha,this.flipY=e.flipY,this.unpackAlignment=e.unpackAlignment,this.colorSpace=e.colorSpace,this.renderTarget=e.renderTarget,this.isRenderTargetTexture=e.isRenderTargetTexture,this.isArrayTexture=e.isArrayTexture,this.userData=JSON.parse(JSON.stringify(e.userData)),this.needsUpdate=!0,this}setValues(e){for(const t in e){const n=e[t];if(n===void 0){console.warn(`THREE.Texture.setValues(): parameter '${t}' has value of undefined.`);continue}const s=this[t];if(s===void 0){console.warn(`THREE.Texture.setValues(): property '${t}' does not exist.`);continue}s&&n&&s.isVector2&&n.isVector2||s&&n&&s.isVector3&&n.isVector3||s&&n&&s.isMatrix3&&n.isMatrix3?s.copy(n):this[t]=n}}toJSON(e){const t=e===void 0||typeof e=="string";if(!t&&e.textures[this.uuid]!==void 0)return e.textures[this.uuid];const n={metadata:{version:4.7,type:"Texture",generator:"Texture.toJSON"},uuid:this.uuid,name:this.name,image:this.source.toJSON(e).uuid,mapping:this.mapping,channel:this.channel,repeat:[this.repeat.x,this.repeat.y],offset:[this.offset.x,this.offset.y],center:[this.center.x,this.center.y],rotation:this.rotation,wrap:[this.wrapS,this.wrapT],format:this.format,internalFormat:this.internalFormat,type:this.type,colorSpace:this.colorSpace,minFilter:this.minFilter,magFilter:this.magFilter,anisotropy:this.anisotropy,flipY:this.flipY,generateMipmaps:this.generateMipmaps,premultiplyAlpha:this.premultiplyAlpha,unpackAlignment:this.unpackAlignment};return Object.keys(this.userData).length>0&&(n.userData=this.userData),t||(e.textures[this.uuid]=n),n}dispose(){this.dispatchEvent({type:"dispose"})}transformUv(e){if(this.mapping!==Uc)return e;if(e.applyMatrix3(this.matrix),e.x<0||e.x>1)switch(this.wrapS){case Fa:e.x=e.x-Math.floor(e.x);break;case hi:e.x=e.x<0?0:1;break;case Oa:Math.abs(Math.floor(e.x)%2)===1?e.x=Math.ceil(e.x)-e.x:e.x=e.x-Math.floor(e.x);break}if(e.y<0||e.y>1)switch(this.wrapT){case Fa:e.y=e.y-Math.floor(e.y);break;case hi:e.y=e.y<0?0:1;break;case Oa:Math.abs(Math.floor(e.y)%2)===1?e.y=Math.ceil(e.y)-e.y:e.y=e.y-Math.floor(e.y);break}return this.flipY&&(e.y=1-e.y),e}set needsUpdate(e){e===!0&&(this.version++,this.source.needsUpdate=!0)}set needsPMREMUpdate(e){e===!0&&this.pmremVersion++}}Xt.DEFAULT_IMAGE=null;Xt.DEFAULT_MAPPING=Uc;Xt.DEFAULT_ANISOTROPY=1;class xt{constructor(e=0,t=0,n=0,s=1){xt.prototype.isVector4=!0,this.x=e,this.y=t,this.z=n,this.w=s}get width(){return this.z}set width(e){this.z=e}get height(){return this.w}set height(e){this.w=e}set(e,t,n,s){return this.x=e,this.y=t,this.z=n,this.w=s,this}setScalar(e){return this.x=e,this.y=e,this.z=e,this.w=e,this}setX(e){return this.x=e,this}setY(e){return this.y=e,this}setZ(e){return this.z=e,this}setW(e){return this.w=e,this}setComponent(e,t){switch(e){case 0:this.x=t;break;case 1:this.y=t;break;case 2:this.z=t;break;case 3:this.w=t;break;default:throw new Error("index is out of range: "+e)}return this}getComponent(e){switch(e){case 0:return this.x;case 1:return this.y;case 2:return this.z;case 3:return this.w;default:throw new Error("index is out of range: "+e)}}clone(){return new this.constructor(this.x,this.y,this.z,this.w)}copy(e){return this.x=e.x,this.y=e.y,this.z=e.z,this.w=e.w!==void 0?e.w:1,this}add(e){return this.x+=e.x,this.y+=e.y,this.z+=e.z,this.w+=e.w,this}addScalar(e){return this.x+=e,this.y+=e,this.z+=e,this.w+=e,this}addVectors(e,t){return this.x=e.x+t.x,this.y=e.y+t.y,this.z=e.z+t.z,this.w=e.w+t.w,this}addScaledVector(e,t){return this.x+=e.x*t,this.y+=e.y*t,this.z+=e.z*t,this.w+=e.w*t,this}sub(e){return this.x-=e.x,this.y-=e.y,this.z-=e.z,this.w-=e.w,this}subScalar(e){return this.x-=e,this.y-=e,this.z-=e,this.w-=e,this}subVectors(e,t){return this.x=e.x-t.x,this.y=e.y-t.y,this.z=e.z-t.z,this.w=e.w-t.w,this}multiply(e){return this.x*=e.x,this.y*=e.y,this.z*=e.z,this.w*=e.w,this}multiplyScalar(e){return this.x*=e,this.y*=e,this.z*=e,this.w*=e,this}applyMatrix4(e){const t=this.x,n=this.y,s=this.z,r=this.w,a=e.elements;return this.x=a[0]*t+a[4]*n+a[8]*s+a[12]*r,this.y=a[1]*t+a[5]*n+a[9]*s+a[13]*r,this.z=a[2]*t+a[6]*n+a[10]*s+a[14]*r,this.w=a[3]*t+a[7]*n+a[11]*s+a[15]*r,this}divide(e){return this.x/=e.x,this.y/=e.y,this.z/=e.z,this.w/=e.w,this}divideScalar(e){return this.multiplyScalar(1/e)}setAxisAngleFromQuaternion(e){this.w=2*Math.acos(e.w);const t=Math.sqrt(1-e.w*e.w);return t<1e-4?(this.x=1,this.y=0,this.z=0):(this.x=e.x/t,this.y=e.y/t,this.z=e.z/t),this}setAxisAngleFromRotationMatrix(e){let t,n,s,r;const l=e.elements,c=l[0],h=l[4],u=l[8],f=l[1],p=l[5],g=l[9],x=l[2],m=l[6],d=l[10];if(Math.abs(h-f)<.01&&Math.abs(u-x)<.01&&Math.abs(g-m)<.01){if(Math.abs(h+f)<.1&&Math.abs(u+x)<.1&&Math.abs(g+m)<.1&&Math.abs(c+p+d-3)<.1)return this.set(1,0,0,0),this;t=Math.PI;const T=(c+1)/2,w=(p+1)/2,C=(d+1)/2,D=(h+f)/4,L=(u+x)/4,F=(g+m)/4;return T>w&&T>C?T<.01?(n=0,s=.707106781,r=.707106781):(n=Math.sqrt(T),s=D/n,r=L/n):w>C?w<.01?(n=.707106781,s=0,r=.707106781):(s=Math.sqrt(w),n=D/s,r=F/s):C<.01?(n=.707106781,s=.707106781,r=0):(r=Math.sqrt(C),n=L/r,s=F/r),this.set(n,s,r,t),this}let A=Math.sqrt((m-g)*(m-g)+(u-x)*(u-x)+(f-h)*(f-h));return Math.abs(A)<.001&&(A=1),this.x=(m-g)/A,this.y=(u-x)/A,this.z=(f-h)/A,this.w=Math.acos((c+p+d-1)/2),this}setFromMatrixPosition(e){const t=e.elements;return this.x=t[12],this.y=t[13],this.z=t[14],this.w=t[15],this}min(e){return this.x=Math.min(this.x,e.x),this.y=Math.min(this.y,e.y),this.z=Math.min(this.z,e.z),this.w=Math.min(this.w,e.w),this}max(e){return this.x=Math.max(this.x,e.x),this.y=Math.max(this.y,e.y),this.z=Math.max(this.z,e.z),this.w=Math.max(this.w,e.w),this}clamp(e,t){return this.x=je(this.x,e.x,t.x),this.y=je(this.y,e.y,t.y),this.z=je(this.z,e.z,t.z),this.w=je(this.w,e.w,t.w),this}clampScalar(e,t){return this.x=je(this.x,e,t),this.y=je(this.y,e,t),this.z=je(this.z,e,t),this.w=je(this.w,e,t),this}clampLength(e,t){const n=this.length();return this.divideScalar(n||1).multiplyScalar(je(n,e,t))}floor(){return this.x=Math.floor(this.x),this.y=Math.floor(this.y),this.z=Math.floor(this.z),this.w=Math.floor(this.w),this}ceil(){return this.x=Math.ceil(this.x),this.y=Math.ceil(this.y),this.z=Math.ceil(this.z),this.w=Math.ceil(this.w),this}round(){return this.x=Math.round(this.x),this.y=Math.round(this.y),this.z=Math.round(this.z),this.w=Math.round(this.w),this}roundToZero(){return this.x=Math.trunc(this.x),this.y=Math.trunc(this.y),this.z=Math.trunc(this.z),this.w=Math.trunc(this.w),this}negate(){return this.x=-this.x,this.y=-this.y,this.z=-this.z,this.w=-this.w,this}dot(e){return this.x*e.x+this.y*e.y+this.z*e.z+this.w*e.w}lengthSq(){return this.x*this.x+this.y*this.y+this.z*this.z+this.w*this.w}length(){return Math.sqrt(this.x*this.x+this.y*this.y+this.z*this.z+this.w*this.w)}manhattanLength(){return Math.abs(this.x)+Math.abs(this.y)+Math.abs(this.z)+Math.abs(this.w)}normalize(){return this.divideScalar(this.length()||1)}setLength(e){return this.normalize().multiplyScalar(e)}lerp(e,t){return this.x+=(e.x-this.x)*t,this.y+=(e.y-this.y)*t,this.z+=(e.z-this.z)*t,this.w+=(e.w-this.w)*t,this}lerpVectors(e,t,n){return this.x=e.x+(t.x-e.x)*n,this.y=e.y+(t.y-e.y)*n,this.z=e.z+(t.z-e.z)*n,this.w=e.w+(t.w-e.w)*n,this}equals(e){return e.x===this.x&&e.y===this.y&&e.z===this.z&&e.w===this.w}fromArray(e,t=0){return this.x=e[t],this.y=e[t+1],this.z=e[t+2],this.w=e[t+3],this}toArray(e=[],t=0){return e[t]=this.x,e[t+1]=this.y,e[t+2]=this.z,e[t+3]=this.w,e}fromBufferAttribute(e,t){return this.x=e.getX(t),this.y=e.getY(t),this.z=e.getZ(t),this.w=e.getW(t),this}random(){return this.x=Math.random(),this.y=Math.random(),this.z=Math.random(),this.w=Math.random(),this}*[Symbol.iterator](){yield this.x,yield this.y,yield this.z,yield this.w}}class bd extends gi{constructor(e=1,t=1,n={}){super(),n=Object.assign({generateMipmaps:!1,internalFormat:null,minFilter:gn,depthBuffer:!0,stencilBuffer:!1,resolveDepthBuffer:!0,resolveStencilBuffer:!0,depthTexture:null,samples:0,count:1,depth:1,multiview:!1},n),this.isRenderTarget=!0,this.width=e,this.height=t,this.depth=n.depth,this.scissor=new xt(0,0,e,t),this.scissorTest=!1,this.viewport=new xt(0,0,e,t);const s={width:e,height:t,depth:n.depth},r=new Xt(s);this.textures=[];const a=n.count;for(let o=0;o<a;o++)this.textures[o]=r.clone(),this.textures[o].isRenderTargetTexture=!0,this.textures[o].renderTarget=this;this._setTextureOptions(n),this.depthBuffer=n.depthBuffer,this.stencilBuffer=n.stencilBuffer,this.resolveDepthBuffer=n.resolveDepthBuffer,this.resolveStencilBuffer=n.resolveStencilBuffer,this._depthTexture=null,this.depthTexture=n.depthTexture,this.samples=n.samples,this.multiview=n.multiview}_setTextureOptions(e={}){const t={minFilter:gn,generateMipmaps:!1,flipY:!1,internalFormat:null};e.mapping!==void 0&&(t.mapping=e.mapping),e.wrapS!==void 0&&(t.wrapS=e.wrapS),e.wrapT!==void 0&&(t.wrapT=e.wrapT),e.wrapR!==void 0&&(t.wrapR=e.wrapR),e.magFilter!==void 0&&(t.magFilter=e.magFilter),e.minFilter!==void 0&&(t.minFilter=e.minFilter),e.format!==void 0&&(t.format=e.format),e.type!==void 0&&(t.type=e.type),e.anisotropy!==void 0&&(t.anisotropy=e.anisotropy),e.colorSpace!==void 0&&(t.colorSpace=e.colorSpace),e.flipY!==void 0&&(t.flipY=e.flipY),e.generateMipmaps!==void 0&&(t.generateMipmaps=e.generateMipmaps),e.internalFormat!==void 0&&(t.internalFormat=e.internalFormat);for(let n=0;n<this.textures.length;n++)this.textures[n].setValues(t)}get texture(){return this.textures[0]}set texture(e){this.textures[0]=e}set depthTexture(e){this._depthTexture!==null&&(this._depthTexture.renderTarget=null),e!==null&&(e.renderTarget=this),this._depthTexture=e}get depthTexture(){return this._depthTexture}setSize(e,t,n=1){if(this.width!==e||this.height!==t||this.depth!==n){this.width=e,this.height=t,this.depth=n;for(let s=0,r=this.textures.length;s<r;s++)this.textures[s].image.width=e,this.textures[s].image.height=t,this.textures[s].image.depth=n,this.textures[s].isArrayTexture=this.textures[s].image.depth>1;this.dispose()}this.viewport.set(0,0,e,t),this.scissor.set(0,0,e,t)}clone(){return new this.constructor().copy(this)}copy(e){this.width=e.width,this.height=e.height,this.depth=e.depth,this.scissor.copy(e.scissor),this.scissorTest=e.scissorTest,this.viewport.copy(e.viewport),this.textures.length=0;for(let t=0,n=e.textures.length;t<n;t++){this.textures[t]=e.textures[t].clone(),this.textures[t].isRenderTargetTexture=!0,this.textures[t].renderTarget=this;const s=Object.assign({},e.textures[t].image);this.textures[t].source=new Fo(s)}return this.depthBuffer=e.depthBuffer,this.stencilBuffer=e.stencilBuffer,this.resolveDepthBuffer=e.resolveDepthBuffer,this.resolveStencilBuffer=e.resolveStencilBuffer,e.depthTexture!==null&&(this.depthTexture=e.depthTexture.clone()),this.samples=e.samples,this}dispose(){this.dispatchEvent({type:"dispose"})}}class pi extends bd{constructor(e=1,t=1,n={}){super(e,t,n),this.isWebGLRenderTarget=!0}}class Xc extends Xt{constructor(e=null,t=1,n=1,s=1){super(null),this.isDataArrayTexture=!0,this.image={data:e,width:t,height:n,depth:s},this.magFilter=fn,this.minFilter=fn,this.wrapR=hi,this.generateMipmaps=!1,this.flipY=!1,this.unpackAlignment=1,this.layerUpdates=new Set}addLayerUpdate(e){this.layerUpdates.add(e)}clearLayerUpdates(){this.layerUpdates.clear()}}class Ed extends Xt{constructor(e=null,t=1,n=1,s=1){super(null),this.isData3DTexture=!0,this.image={data:e,width:t,height:n,depth:s},this.magFilter=fn,this.minFilter=fn,this.wrapR=hi,this.generateMipmaps=!1,this.flipY=!1,this.unpackAlignment=1}}class Es{constructor(e=new N(1/0,1/0,1/0),t=new N(-1/0,-1/0,-1/0)){this.isBox3=!0,this.min=e,this.max=t}set(e,t){return this.min.copy(e),this.max.copy(t),this}setFromArray(e){this.makeEmpty();for(let t=0,n=e.length;t<n;t+=3)this.expandByPoint(on.fromArray(e,t));return this}setFromBufferAttribute(e){this.makeEmpty();for(let t=0,n=e.count;t<n;t++)this.expandByPoint(on.fromBufferAttribute(e,t));return this}setFromPoints(e){this.makeEmpty();for(let t=0,n=e.length;t<n;t++)this.expandByPoint(e[t]);return this}setFromCenterAndSize(e,t){const n=on.copy(t).multiplyScalar(.5);return this.min.copy(e).sub(n),this.max.copy(e).add(n),this}setFromObject(e,t=!1){return this.makeEmpty(),this.expandByObject(e,t)}clone(){return new this.constructor().copy(this)}copy(e){return this.min.copy(e.min),this.max.copy(e.max),this}makeEmpty(){return this.min.x=this.min.y=this.min.z=1/0,this.max.x=this.max.y=this.max.z=-1/0,this}isEmpty(){return this.max.x<this.min.x||this.max.y<this.min.y||this.max.z<this.min.z}getCenter(e){return this.isEmpty()?e.set(0,0,0):e.addVectors(this.min,this.max).multiplyScalar(.5)}getSize(e){return this.isEmpty()?e.set(0,0,0):e.subVectors(this.max,this.min)}expandByPoint(e){return this.min.min(e),this.max.max(e),this}expandByVector(e){return this.min.sub(e),this.max.add(e),this}expandByScalar(e){return this.min.addScalar(-e),this.max.addScalar(e),this}expandByObject(e,t=!1){e.updateWorldMatrix(!1,!1);const n=e.geometry;if(n!==void 0){const r=n.getAttribute("position");if(t===!0&&r!==void 0&&e.isInstancedMesh!==!0)for(let a=0,o=r.count;a<o;a++)e.isMesh===!0?e.getVertexPosition(a,on):on.fromBufferAttribute(r,a),on.applyMatrix4(e.matrixWorld),this.expandByPoint(on);else e.boundingBox!==void 0?(e.boundingBox===null&&e.computeBoundingBox(),Is.copy(e.boundingBox)):(n.boundingBox===null&&n.computeBoundingBox(),Is.copy(n.boundingBox)),Is.applyMatrix4(e.matrixWorld),this.union(Is)}const s=e.children;for(let r=0,a=s.length;r<a;r++)this.expandByObject(s[r],t);return this}containsPoint(e){return e.x>=this.min.x&&e.x<=this.max.x&&e.y>=this.min.y&&e.y<=this.max.y&&e.z>=this.min.z&&e.z<=this.max.z}containsBox(e){return this.min.x<=e.min.x&&e.max.x<=this.max.x&&this.min.y<=e.min.y&&e.max.y<=this.max.y&&this.min.z<=e.min.z&&e.max.z<=this.max.z}getParameter(e,t){return t.set((e.x-this.min.x)/(this.max.x-this.min.x),(e.y-this.min.y)/(this.max.y-this.min.y),(e.z-this.min.z)/(this.max.z-this.min.z))}intersectsBox(e){return e.max.x>=this.min.x&&e.min.x<=this.max.x&&e.max.y>=this.min.y&&e.min.y<=this.max.y&&e.max.z>=this.min.z&&e.min.z<=this.max.z}intersectsSphere(e){return this.clampPoint(e.center,on),on.distanceToSquared(e.center)<=e.radius*e.radius}intersectsPlane(e){let t,n;return e.normal.x>0?(t=e.normal.x*this.min.x,n=e.normal.x*this.max.x):(t=e.normal.x*this.max.x,n=e.normal.x*this.min.x),e.normal.y>0?(t+=e.normal.y*this.min.y,n+=e.normal.y*this.max.y):(t+=e.normal.y*this.max.y,n+=e.normal.y*this.min.y),e.normal.z>0?(t+=e.normal.z*this.min.z,n+=e.normal.z*this.max.z):(t+=e.normal.z*this.max.z,n+=e.normal.z*this.min.z),t<=-e.constant&&n>=-e.constant}intersectsTriangle(e){if(this.isEmpty())return!1;this.getCenter(ts),Us.subVectors(this.max,ts),Si.subVectors(e.a,ts),wi.subVectors(e.b,ts),bi.subVectors(e.c,ts),Fn.subVectors(wi,Si),On.subVectors(bi,wi),ei.subVectors(Si,bi);let t=[0,-Fn.z,Fn.y,0,-On.z,On.y,0,-ei.z,ei.y,Fn.z,0,-Fn.x,On.z,0,-On.x,ei.z,0,-ei.x,-Fn.y,Fn.x,0,-On.y,On.x,0,-ei.y,ei.x,0];return!Xr(t,Si,wi,bi,Us)||(t=[1,0,0,0,1,0,0,0,1],!Xr(t,Si,wi,bi,Us))?!1:(Ns.crossVectors(Fn,On),t=[Ns.x,Ns.y,Ns.z],Xr(t,Si,wi,bi,Us))}clampPoint(e,t){return t.copy(e).clamp(this.min,this.max)}distanceToPoint(e){return this.clampPoint(e,on).distanceTo(e)}getBoundingSphere(e){return this.isEmpty()?e.makeEmpty():(this.getCenter(e.center),e.radius=this.getSize(on).length()*.5),e}intersect(e){return this.min.max(e.min),this.max.min(e.max),this.isEmpty()&&this.makeEmpty(),this}union(e){return this.min.min(e.min),this.max.max(e.max),this}applyMatrix4(e){return this.isEmpty()?this:(Sn[0].set(this.min.x,this.min.y,this.min.z).applyMatrix4(e),Sn[1].set(this.min.x,this.min.y,this.max.z).applyMatrix4(e),Sn[2].set(this.min.x,this.max.y,this.min.z).applyMatrix4(e),Sn[3].set(this.min.x,this.max.y,this.max.z).applyMatrix4(e),Sn[4].set(this.max.x,this.min.y,this.min.z).applyMatrix4(e),Sn[5].set(this.max.x,this.min.y,this.max.z).applyMatrix4(e),Sn[6].set(this.max.x,this.max.y,this.min.z).applyMatrix4(e),Sn[7].set(this.max.x,this.max.y,this.max.z).applyMatrix4(e),this.setFromPoints(Sn),this)}translate(e){return this.min.add(e),this.max.add(e),this}equals(e){return e.min.equals(this.min)&&e.max.equals(this.max)}toJSON(){return{min:this.min.toArray(),max:this.max.toArray()}}fromJSON(e){return this.min.fromArray(e.min),this.max.fromArray(e.max),this}}const Sn=[new N,new N,new N,new N,new N,new N,new N,new N],on=new N,Is=new Es,Si=new N,wi=new N,bi=new N,Fn=new N,On=new N,ei=new N,ts=new N,Us=new N,Ns=new N,ti=new N;function Xr(i,e,t,n,s){for(let r=0,a=i.length-3;r<=a;r+=3){ti.fromArray(i,r);const o=s.x*Math.abs(ti.x)+s.y*Math.abs(ti.y)+s.z*Math.abs(ti.z),l=e.dot(ti),c=t.dot(ti),h=n.dot(ti);if(Math.max(-Math.max(l,c,h),Math.min(l,c,h))>o)return!1}return!0}const Td=new Es,ns=new N,qr=new N;class ji{constructor(e=new N,t=-1){this.isSphere=!0,this.center=e,this.radius=t}set(e,t){return this.center.copy(e),this.radius=t,this}setFromPoints(e,t){const n=this.center;t!==void 0?n.copy(t):Td.setFromPoints(e).getCenter(n);let s=0;for(let r=0,a=e.length;r<a;r++)s=Math.max(s,n.distanceToSquared(e[r]));return this.radius=Math.sqrt(s),this}copy(e){return this.center.copy(e.center),this.radius=e.radius,this}isEmpty(){return this.radius<0}makeEmpty(){return this.center.set(0,0,0),this.radius=-1,this}containsPoint(e){return e.distanceToSquared(this.center)<=this.radius*this.radius}distanceToPoint(e){return e.distanceTo(this.center)-this.radius}intersectsSphere(e){const t=this.radius+e.radius;return e.center.distanceToSquared(this.center)<=t*t}intersectsBox(e){return e.intersectsSphere(this)}intersectsPlane(e){return Math.abs(e.distanceToPoint(this.center))<=this.radius}clampPoint(e,t){const n=this.center.distanceToSquared(e);return t.copy(e),n>this.radius*this.radius&&(t.sub(this.center).normalize(),t.multiplyScalar(this.radius).add(this.center)),t}getBoundingBox(e){return this.isEmpty()?(e.makeEmpty(),e):(e.set(this.center,this.center),e.expandByScalar(this.radius),e)}applyMatrix4(e){return this.center.applyMatrix4(e),this.radius=this.radius*e.getMaxScaleOnAxis(),this}translate(e){return this.center.add(e),this}expandByPoint(e){if(this.isEmpty())return this.center.copy(e),this.radius=0,this;ns.subVectors(e,this.center);const t=ns.lengthSq();if(t>this.radius*this.radius){const n=Math.sqrt(t),s=(n-this.radius)*.5;this.center.addScaledVector(ns,s/n),this.radius+=s}return this}union(e){return e.isEmpty()?this:this.isEmpty()?(this.copy(e),this):(this.center.equals(e.center)===!0?this.radius=Math.max(this.radius,e.radius):(qr.subVectors(e.center,this.center).setLength(e.radius),this.expandByPoint(ns.copy(e.center).add(qr)),this.expandByPoint(ns.copy(e.center).sub(qr))),this)}equals(e){return e.center.equals(this.center)&&e.radius===this.radius}clone(){return new this.constructor().copy(this)}toJSON(){return{radius:this.radius,center:this.center.toArray()}}fromJSON(e){return this.radius=e.radius,this.center.fromArray(e.center),this}}const wn=new N,Yr=new N,Fs=new N,kn=new N,jr=new N,Os=new N,Kr=new N;class Ts{constructor(e=new N,t=new N(0,0,-1)){this.origin=e,this.direction=t}set(e,t){return this.origin.copy(e),this.direction.copy(t),this}copy(e){return this.origin.copy(e.origin),this.direction.copy(e.direction),this}at(e,t){return t.copy(this.origin).addScaledVector(this.direction,e)}lookAt(e){return this.direction.copy(e).sub(this.origin).normalize(),this}recast(e){return this.origin.copy(this.at(e,wn)),this}closestPointToPoint(e,t){t.subVectors(e,this.origin);const n=t.dot(this.direction);return n<0?t.copy(this.origin):t.copy(this.origin).addScaledVector(this.direction,n)}distanceToPoint(e){return Math.sqrt(this.distanceSqToPoint(e))}distanceSqToPoint(e){const t=wn.subVectors(e,this.origin).dot(this.direction);return t<0?this.origin.distanceToSquared(e):(wn.copy(this.origin).addScaledVector(this.direction,t),wn.distanceToSquared(e))}distanceSqToSegment(e,t,n,s){Yr.copy(e).add(t).multiplyScalar(.5),Fs.copy(t).sub(e).normalize(),kn.copy(this.origin).sub(Yr);const r=e.distanceTo(t)*.5,a=-this.direction.dot(Fs),o=kn.dot(this.direction),l=-kn.dot(Fs),c=kn.lengthSq(),h=Math.abs(1-a*a);let u,f,p,g;if(h>0)if(u=a*l-o,f=a*o-l,g=r*h,u>=0)if(f>=-g)if(f<=g){const x=1/h;u*=x,f*=x,p=u*(u+a*f+2*o)+f*(a*u+f+2*l)+c}else f=r,u=Math.max(0,-(a*f+o)),p=-u*u+f*(f+2*l)+c;else f=-r,u=Math.max(0,-(a*f+o)),p=-u*u+f*(f+2*l)+c;else f<=-g?(u=Math.max(0,-(-a*r+o)),f=u>0?-r:Math.min(Math.max(-r,-l),r),p=-u*u+f*(f+2*l)+c):f<=g?(u=0,f=Math.min(Math.max(-r,-l),r),p=f*(f+2*l)+c):(u=Math.max(0,-(a*r+o)),f=u>0?r:Math.min(Math.max(-r,-l),r),p=-u*u+f*(f+2*l)+c);else f=a>0?-r:r,u=Math.max(0,-(a*f+o)),p=-u*u+f*(f+2*l)+c;return n&&n.copy(this.origin).addScaledVector(this.direction,u),s&&s.copy(Yr).addScaledVector(Fs,f),p}intersectSphere(e,t){wn.subVectors(e.center,this.origin);const n=wn.dot(this.direction),s=wn.dot(wn)-n*n,r=e.radius*e.radius;if(s>r)return null;const a=Math.sqrt(r-s),o=n-a,l=n+a;return l<0?null:o<0?this.at(l,t):this.at(o,t)}intersectsSphere(e){return e.radius<0?!1:this.distanceSqToPoint(e.center)<=e.radius*e.radius}distanceToPlane(e){const t=e.normal.dot(this.direction);if(t===0)return e.distanceToPoint(this.origin)===0?0:null;const n=-(this.origin.dot(e.normal)+e.constant)/t;return n>=0?n:null}intersectPlane(e,t){const n=this.distanceToPlane(e);return n===null?null:this.at(n,t)}intersectsPlane(e){const t=e.distanceToPoint(this.origin);return t===0||e.normal.dot(this.direction)*t<0}intersectBox(e,t){let n,s,r,a,o,l;const c=1/this.direction.x,h=1/this.direction.y,u=1/this.direction.z,f=this.origin;return c>=0?(n=(e.min.x-f.x)*c,s=(e.max.x-f.x)*c):(n=(e.max.x-f.x)*c,s=(e.min.x-f.x)*c),h>=0?(r=(e.min.y-f.y)*h,a=(e.max.y-f.y)*h):(r=(e.max.y-f.y)*h,a=(e.min.y-f.y)*h),n>a||r>s||((r>n||isNaN(n))&&(n=r),(a<s||isNaN(s))&&(s=a),u>=0?(o=(e.min.z-f.z)*u,l=(e.max.z-f.z)*u):(o=(e.max.z-f.z)*u,l=(e.min.z-f.z)*u),n>l||o>s)||((o>n||n!==n)&&(n=o),(l<s||s!==s)&&(s=l),s<0)?null:this.at(n>=0?n:s,t)}intersectsBox(e){return this.intersectBox(e,wn)!==null}intersectTriangle(e,t,n,s,r){jr.subVectors(t,e),Os.subVectors(n,e),Kr.crossVectors(jr,Os);let a=this.direction.dot(Kr),o;if(a>0){if(s)return null;o=1}else if(a<0)o=-1,a=-a;else return null;kn.subVectors(this.origin,e);const l=o*this.direction.dot(Os.crossVectors(kn,Os));if(l<0)return null;const c=o*this.direction.dot(jr.cross(kn));if(c<0||l+c>a)return null;const h=-o*kn.dot(Kr);return h<0?null:this.at(h/a,r)}applyMatrix4(e){return this.origin.applyMatrix4(e),this.direction.transformDirection(e),this}equals(e){return e.origin.equals(this.origin)&&e.direction.equals(this.direction)}clone(){return new this.constructor().copy(this)}}class pt{constructor(e,t,n,s,r,a,o,l,c,h,u,f,p,g,x,m){pt.prototype.isMatrix4=!0,this.elements=[1,0,0,0,0,1,0,0,0,0,1,0,0,0,0,1],e!==void 0&&this.set(e,t,n,s,r,a,o,l,c,h,u,f,p,g,x,m)}set(e,t,n,s,r,a,o,l,c,h,u,f,p,g,x,m){const d=this.elements;return d[0]=e,d[4]=t,d[8]=n,d[12]=s,d[1]=r,d[5]=a,d[9]=o,d[13]=l,d[2]=c,d[6]=h,d[10]=u,d[14]=f,d[3]=p,d[7]=g,d[11]=x,d[15]=m,this}identity(){return this.set(1,0,0,0,0,1,0,0,0,0,1,0,0,0,0,1),this}clone(){return new pt().fromArray(this.elements)}copy(e){const t=this.elements,n=e.elements;return t[0]=n[0],t[1]=n[1],t[2]=n[2],t[3]=n[3],t[4]=n[4],t[5]=n[5],t[6]=n[6],t[7]=n[7],t[8]=n[8],t[9]=n[9],t[10]=n[10],t[11]=n[11],t[12]=n[12],t[13]=n[13],t[14]=n[14],t[15]=n[15],this}copyPosition(e){const t=this.elements,n=e.elements;return t[12]=n[12],t[13]=n[13],t[14]=n[14],this}setFromMatrix3(e){const t=e.elements;return this.set(t[0],t[3],t[6],0,t[1],t[4],t[7],0,t[2],t[5],t[8],0,0,0,0,1),this}extractBasis(e,t,n){return e.setFromMatrixColumn(this,0),t.setFromMatrixColumn(this,1),n.setFromMatrixColumn(this,2),this}makeBasis(e,t,n){return this.set(e.x,t.x,n.x,0,e.y,t.y,n.y,0,e.z,t.z,n.z,0,0,0,0,1),this}extractRotation(e){const t=this.elements,n=e.elements,s=1/Ei.setFromMatrixColumn(e,0).length(),r=1/Ei.setFromMatrixColumn(e,1).length(),a=1/Ei.setFromMatrixColumn(e,2).length();return t[0]=n[0]*s,t[1]=n[1]*s,t[2]=n[2]*s,t[3]=0,t[4]=n[4]*r,t[5]=n[5]*r,t[6]=n[6]*r,t[7]=0,t[8]=n[8]*a,t[9]=n[9]*a,t[10]=n[10]*a,t[11]=0,t[12]=0,t[13]=0,t[14]=0,t[15]=1,this}makeRotationFromEuler(e){const t=this.elements,n=e.x,s=e.y,r=e.z,a=Math.cos(n),o=Math.sin(n),l=Math.cos(s),c=Math.sin(s),h=Math.cos(r),u=Math.sin(r);if(e.order==="XYZ"){const f=a*h,p=a*u,g=o*h,x=o*u;t[0]=l*h,t[4]=-l*u,t[8]=c,t[1]=p+g*c,t[5]=f-x*c,t[9]=-o*l,t[2]=x-f*c,t[6]=g+p*c,t[10]=a*l}else if(e.order==="YXZ"){const f=l*h,p=l*u,g=c*h,x=c*u;t[0]=f+x*o,t[4]=g*o-p,t[8]=a*c,t[1]=a*u,t[5]=a*h,t[9]=-o,t[2]=p*o-g,t[6]=x+f*o,t[10]=a*l}else if(e.order==="ZXY"){const f=l*h,p=l*u,g=c*h,x=c*u;t[0]=f-x*o,t[4]=-a*u,t[8]=g+p*o,t[1]=p+g*o,t[5]=a*h,t[9]=x-f*o,t[2]=-a*c,t[6]=o,t[10]=a*l}else if(e.order==="ZYX"){const f=a*h,p=a*u,g=o*h,x=o*u;t[0]=l*h,t[4]=g*c-p,t[8]=f*c+x,t[1]=l*u,t[5]=x*c+f,t[9]=p*c-g,t[2]=-c,t[6]=o*l,t[10]=a*l}else if(e.order==="YZX"){const f=a*l,p=a*c,g=o*l,x=o*c;t[0]=l*h,t[4]=x-f*u,t[8]=g*u+p,t[1]=u,t[5]=a*h,t[9]=-o*h,t[2]=-c*h,t[6]=p*u+g,t[10]=f-x*u}else if(e.order==="XZY"){const f=a*l,p=a*c,g=o*l,x=o*c;t[0]=l*h,t[4]=-u,t[8]=c*h,t[1]=f*u+x,t[5]=a*h,t[9]=p*u-g,t[2]=g*u-p,t[6]=o*h,t[10]=x*u+f}return t[3]=0,t[7]=0,t[11]=0,t[12]=0,t[13]=0,t[14]=0,t[15]=1,this}makeRotationFromQuaternion(e){return this.compose(Ad,e,Rd)}lookAt(e,t,n){const s=this.elements;return Kt.subVectors(e,t),Kt.lengthSq()===0&&(Kt.z=1),Kt.normalize(),Bn.crossVectors(n,Kt),Bn.lengthSq()===0&&(Math.abs(n.z)===1?Kt.x+=1e-4:Kt.z+=1e-4,Kt.normalize(),Bn.crossVectors(n,Kt)),Bn.normalize(),ks.crossVectors(Kt,Bn),s[0]=Bn.x,s[4]=ks.x,s[8]=Kt.x,s[1]=Bn.y,s[5]=ks.y,s[9]=Kt.y,s[2]=Bn.z,s[6]=ks.z,s[10]=Kt.z,this}multiply(e){return this.multiplyMatrices(this,e)}premultiply(e){return this.multiplyMatrices(e,this)}multiplyMatrices(e,t){const n=e.elements,s=t.elements,r=this.elements,a=n[0],o=n[4],l=n[8],c=n[12],h=n[1],u=n[5],f=n[9],p=n[13],g=n[2],x=n[6],m=n[10],d=n[14],A=n[3],T=n[7],w=n[11],C=n[15],D=s[0],L=s[4],F=s[8],y=s[12],M=s[1],b=s[5],P=s[9],z=s[13],I=s[2],k=s[6],$=s[10],ee=s[14],Y=s[3],W=s[7],Q=s[11],ce=s[15];return r[0]=a*D+o*M+l*I+c*Y,r[4]=a*L+o*b+l*k+c*W,r[8]=a*F+o*P+l*$+c*Q,r[12]=a*y+o*z+l*ee+c*ce,r[1]=h*D+u*M+f*I+p*Y,r[5]=h*L+u*b+f*k+p*W,r[9]=h*F+u*P+f*$+p*Q,r[13]=h*y+u*z+f*ee+p*ce,r[2]=g*D+x*M+m*I+d*Y,r[6]=g*L+x*b+m*k+d*W,r[10]=g*F+x*P+m*$+d*Q,r[14]=g*y+x*z+m*ee+d*ce,r[3]=A*D+T*M+w*I+C*Y,r[7]=A*L+T*b+w*k+C*W,r[11]=A*F+T*P+w*$+C*Q,r[15]=A*y+T*z+w*ee+C*ce,this}multiplyScalar(e){const t=this.elements;return t[0]*=e,t[4]*=e,t[8]*=e,t[12]*=e,t[1]*=e,t[5]*=e,t[9]*=e,t[13]*=e,t[2]*=e,t[6]*=e,t[10]*=e,t[14]*=e,t[3]*=e,t[7]*=e,t[11]*=e,t[15]*=e,this}determinant(){const e=this.elements,t=e[0],n=e[4],s=e[8],r=e[12],a=e[1],o=e[5],l=e[9],c=e[13],h=e[2],u=e[6],f=e[10],p=e[14],g=e[3],x=e[7],m=e[11],d=e[15];return g*(+r*l*u-s*c*u-r*o*f+n*c*f+s*o*p-n*l*p)+x*(+t*l*p-t*c*f+r*a*f-s*a*p+s*c*h-r*l*h)+m*(+t*c*u-t*o*p-r*a*u+n*a*p+r*o*h-n*c*h)+d*(-s*o*h-t*l*u+t*o*f+s*a*u-n*a*f+n*l*h)}transpose(){const e=this.elements;let t;return t=e[1],e[1]=e[4],e[4]=t,t=e[2],e[2]=e[8],e[8]=t,t=e[6],e[6]=e[9],e[9]=t,t=e[3],e[3]=e[12],e[12]=t,t=e[7],e[7]=e[13],e[13]=t,t=e[11],e[11]=e[14],e[14]=t,this}setPosition(e,t,n){const s=this.elements;return e.isVector3?(s[12]=e.x,s[13]=e.y,s[14]=e.z):(s[12]=e,s[13]=t,s[14]=n),this}invert(){const e=this.elements,t=e[0],n=e[1],s=e[2],r=e[3],a=e[4],o=e[5],l=e[6],c=e[7],h=e[8],u=e[9],f=e[10],p=e[11],g=e[12],x=e[13],m=e[14],d=e[15],A=u*m*c-x*f*c+x*l*p-o*m*p-u*l*d+o*f*d,T=g*f*c-h*m*c-g*l*p+a*m*p+h*l*d-a*f*d,w=h*x*c-g*u*c+g*o*p-a*x*p-h*o*d+a*u*d,C=g*u*l-h*x*l-g*o*f+a*x*f+h*o*m-a*u*m,D=t*A+n*T+s*w+r*C;if(D===0)return this.set(0,0,0,0,0,0,0,0,0,0,0,0,0,0,0,0);const L=1/D;return e[0]=A*L,e[1]=(x*f*r-u*m*r-x*s*p+n*m*p+u*s*d-n*f*d)*L,e[2]=(o*m*r-x*l*r+x*s*c-n*m*c-o*s*d+n*l*d)*L,e[3]=(u*l*r-o*f*r-u*s*c+n*f*c+o*s*p-n*l*p)*L,e[4]=T*L,e[5]=(h*m*r-g*f*r+g*s*p-t*m*p-h*s*d+t*f*d)*L,e[6]=(g*l*r-a*m*r-g*s*c+t*m*c+a*s*d-t*l*d)*L,e[7]=(a*f*r-h*l*r+h*s*c-t*f*c-a*s*p+t*l*p)*L,e[8]=w*L,e[9]=(g*u*r-h*x*r-g*n*p+t*x*p+h*n*d-t*u*d)*L,e[10]=(a*x*r-g*o*r+g*n*c-t*x*c-a*n*d+t*o*d)*L,e[11]=(h*o*r-a*u*r-h*n*c+t*u*c+a*n*p-t*o*p)*L,e[12]=C*L,e[13]=(h*x*s-g*u*s+g*n*f-t*x*f-h*n*m+t*u*m)*L,e[14]=(g*o*s-a*x*s-g*n*l+t*x*l+a*n*m-t*o*m)*L,e[15]=(a*u*s-h*o*s+h*n*l-t*u*l-a*n*f+t*o*f)*L,this}scale(e){const t=this.elements,n=e.x,s=e.y,r=e.z;return t[0]*=n,t[4]*=s,t[8]*=r,t[1]*=n,t[5]*=s,t[9]*=r,t[2]*=n,t[6]*=s,t[10]*=r,t[3]*=n,t[7]*=s,t[11]*=r,this}getMaxScaleOnAxis(){const e=this.elements,t=e[0]*e[0]+e[1]*e[1]+e[2]*e[2],n=e[4]*e[4]+e[5]*e[5]+e[6]*e[6],s=e[8]*e[8]+e[9]*e[9]+e[10]*e[10];return Math.sqrt(Math.max(t,n,s))}makeTranslation(e,t,n){return e.isVector3?this.set(1,0,0,e.x,0,1,0,e.y,0,0,1,e.z,0,0,0,1):this.set(1,0,0,e,0,1,0,t,0,0,1,n,0,0,0,1),this}makeRotationX(e){const t=Math.cos(e),n=Math.sin(e);return this.set(1,0,0,0,0,t,-n,0,0,n,t,0,0,0,0,1),this}makeRotationY(e){const t=Math.cos(e),n=Math.sin(e);return this.set(t,0,n,0,0,1,0,0,-n,0,t,0,0,0,0,1),this}makeRotationZ(e){const t=Math.cos(e),n=Math.sin(e);return this.set(t,-n,0,0,n,t,0,0,0,0,1,0,0,0,0,1),this}makeRotationAxis(e,t){const n=Math.cos(t),s=Math.sin(t),r=1-n,a=e.x,o=e.y,l=e.z,c=r*a,h=r*o;return this.set(c*a+n,c*o-s*l,c*l+s*o,0,c*o+s*l,h*o+n,h*l-s*a,0,c*l-s*o,h*l+s*a,r*l*l+n,0,0,0,0,1),this}makeScale(e,t,n){return this.set(e,0,0,0,0,t,0,0,0,0,n,0,0,0,0,1),this}makeShear(e,t,n,s,r,a){return this.set(1,n,r,0,e,1,a,0,t,s,1,0,0,0,0,1),this}compose(e,t,n){const s=this.elements,r=t._x,a=t._y,o=t._z,l=t._w,c=r+r,h=a+a,u=o+o,f=r*c,p=r*h,g=r*u,x=a*h,m=a*u,d=o*u,A=l*c,T=l*h,w=l*u,C=n.x,D=n.y,L=n.z;return s[0]=(1-(x+d))*C,s[1]=(p+w)*C,s[2]=(g-T)*C,s[3]=0,s[4]=(p-w)*D,s[5]=(1-(f+d))*D,s[6]=(m+A)*D,s[7]=0,s[8]=(g+T)*L,s[9]=(m-A)*L,s[10]=(1-(f+x))*L,s[11]=0,s[12]=e.x,s[13]=e.y,s[14]=e.z,s[15]=1,this}decompose(e,t,n){const s=this.elements;let r=Ei.set(s[0],s[1],s[2]).length();const a=Ei.set(s[4],s[5],s[6]).length(),o=Ei.set(s[8],s[9],s[10]).length();this.determinant()<0&&(r=-r),e.x=s[12],e.y=s[13],e.z=s[14],ln.copy(this);const c=1/r,h=1/a,u=1/o;return ln.elements[0]*=c,ln.elements[1]*=c,ln.elements[2]*=c,ln.elements[4]*=h,ln.elements[5]*=h,ln.elements[6]*=h,ln.elements[8]*=u,ln.elements[9]*=u,ln.elements[10]*=u,t.setFromRotationMatrix(ln),n.x=r,n.y=a,n.z=o,this}makePerspective(e,t,n,s,r,a,o=_n,l=!1){const c=this.elements,h=2*r/(t-e),u=2*r/(n-s),f=(t+e)/(t-e),p=(n+s)/(n-s);let g,x;if(l)g=r/(a-r),x=a*r/(a-r);else if(o===_n)g=-(a+r)/(a-r),x=-2*a*r/(a-r);else if(o===xr)g=-a/(a-r),x=-a*r/(a-r);else throw new Error("THREE.Matrix4.makePerspective(): Invalid coordinate system: "+o);return c[0]=h,c[4]=0,c[8]=f,c[12]=0,c[1]=0,c[5]=u,c[9]=p,c[13]=0,c[2]=0,c[6]=0,c[10]=g,c[14]=x,c[3]=0,c[7]=0,c[11]=-1,c[15]=0,this}makeOrthographic(e,t,n,s,r,a,o=_n,l=!1){const c=this.elements,h=2/(t-e),u=2/(n-s),f=-(t+e)/(t-e),p=-(n+s)/(n-s);let g,x;if(l)g=1/(a-r),x=a/(a-r);else if(o===_n)g=-2/(a-r),x=-(a+r)/(a-r);else if(o===xr)g=-1/(a-r),x=-r/(a-r);else throw new Error("THREE.Matrix4.makeOrthographic(): Invalid coordinate system: "+o);return c[0]=h,c[4]=0,c[8]=0,c[12]=f,c[1]=0,c[5]=u,c[9]=0,c[13]=p,c[2]=0,c[6]=0,c[10]=g,c[14]=x,c[3]=0,c[7]=0,c[11]=0,c[15]=1,this}equals(e){const t=this.elements,n=e.elements;for(let s=0;s<16;s++)if(t[s]!==n[s])return!1;return!0}fromArray(e,t=0){for(let n=0;n<16;n++)this.elements[n]=e[n+t];return this}toArray(e=[],t=0){const n=this.elements;return e[t]=n[0],e[t+1]=n[1],e[t+2]=n[2],e[t+3]=n[3],e[t+4]=n[4],e[t+5]=n[5],e[t+6]=n[6],e[t+7]=n[7],e[t+8]=n[8],e[t+9]=n[9],e[t+10]=n[10],e[t+11]=n[11],e[t+12]=n[12],e[t+13]=n[13],e[t+14]=n[14],e[t+15]=n[15],e}}const Ei=new N,ln=new pt,Ad=new N(0,0,0),Rd=new N(1,1,1),Bn=new N,ks=new N,Kt=new N,fl=new pt,pl=new fi;class yn{constructor(e=0,t=0,n=0,s=yn.DEFAULT_ORDER){this.isEuler=!0,this._x=e,this._y=t,this._z=n,this._order=s}get x(){return this._x}set x(e){this._x=e,this._onChangeCallback()}get y(){return this._y}set y(e){this._y=e,this._onChangeCallback()}get z(){return this._z}set z(e){this._z=e,this._onChangeCallback()}get order(){return this._order}set order(e){this._order=e,this._onChangeCallback()}set(e,t,n,s=this._order){return this._x=e,this._y=t,this._z=n,this._order=s,this._onChangeCallback(),this}clone(){return new this.constructor(this._x,this._y,this._z,this._order)}copy(e){return this._x=e._x,this._y=e._y,this._z=e._z,this._order=e._order,this._onChangeCallback(),this}setFromRotationMatrix(e,t=this._order,n=!0){const s=e.elements,r=s[0],a=s[4],o=s[8],l=s[1],c=s[5],h=s[9],u=s[2],f=s[6],p=s[10];switch(t){case"XYZ":this._y=Math.asin(je(o,-1,1)),Math.abs(o)<.9999999?(this._x=Math.atan2(-h,p),this._z=Math.atan2(-a,r)):(this._x=Math.atan2(f,c),this._z=0);break;case"YXZ":this._x=Math.asin(-je(h,-1,1)),Math.abs(h)<.9999999?(this._y=Math.atan2(o,p),this._z=Math.atan2(l,c)):(this._y=Math.atan2(-u,r),this._z=0);break;case"ZXY":this._x=Math.asin(je(f,-1,1)),Math.abs(f)<.9999999?(this._y=Math.atan2(-u,p),this._z=Math.atan2(-a,c)):(this._y=0,this._z=Math.atan2(l,r));break;case"ZYX":this._y=Math.asin(-je(u,-1,1)),Math.abs(u)<.9999999?(this._x=Math.atan2(f,p),this._z=Math.atan2(l,r)):(this._x=0,this._z=Math.atan2(-a,c));break;case"YZX":this._z=Math.asin(je(l,-1,1)),Math.abs(l)<.9999999?(this._x=Math.atan2(-h,c),this._y=Math.atan2(-u,r)):(this._x=0,this._y=Math.atan2(o,p));break;case"XZY":this._z=Math.asin(-je(a,-1,1)),Math.abs(a)<.9999999?(this._x=Math.atan2(f,c),this._y=Math.atan2(o,r)):(this._x=Math.atan2(-h,p),this._y=0);break;default:console.warn("THREE.Euler: .setFromRotationMatrix() encountered an unknown order: "+t)}return this._order=t,n===!0&&this._onChangeCallback(),this}setFromQuaternion(e,t,n){return fl.makeRotationFromQuaternion(e),this.setFromRotationMatrix(fl,t,n)}setFromVector3(e,t=this._order){return this.set(e.x,e.y,e.z,t)}reorder(e){return pl.setFromEuler(this),this.setFromQuaternion(pl,e)}equals(e){return e._x===this._x&&e._y===this._y&&e._z===this._z&&e._order===this._order}fromArray(e){return this._x=e[0],this._y=e[1],this._z=e[2],e[3]!==void 0&&(this._order=e[3]),this._onChangeCallback(),this}toArray(e=[],t=0){return e[t]=this._x,e[t+1]=this._y,e[t+2]=this._z,e[t+3]=this._order,e}_onChange(e){return this._onChangeCallback=e,this}_onChangeCallback(){}*[Symbol.iterator](){yield this._x,yield this._y,yield this._z,yield this._order}}yn.DEFAULT_ORDER="XYZ";class Oo{constructor(){this.mask=1}set(e){this.mask=(1<<e|0)>>>0}enable(e){this.mask|=1<<e|0}enableAll(){this.mask=-1}toggle(e){this.mask^=1<<e|0}disable(e){this.mask&=~(1<<e|0)}disableAll(){this.mask=0}test(e){return(this.mask&e.mask)!==0}isEnabled(e){return(this.mask&(1<<e|0))!==0}}let Cd=0;const ml=new N,Ti=new fi,bn=new pt,Bs=new N,is=new N,Pd=new N,Dd=new fi,gl=new N(1,0,0),_l=new N(0,1,0),vl=new N(0,0,1),xl={type:"added"},Ld={type:"removed"},Ai={type:"childadded",child:null},Zr={type:"childremoved",child:null};class Et extends gi{constructor(){super(),this.isObject3D=!0,Object.defineProperty(this,"id",{value:Cd++}),this.uuid=bs(),this.name="",this.type="Object3D",this.parent=null,this.children=[],this.up=Et.DEFAULT_UP.clone();const e=new N,t=new yn,n=new fi,s=new N(1,1,1);function r(){n.setFromEuler(t,!1)}function a(){t.setFromQuaternion(n,void 0,!1)}t._onChange(r),n._onChange(a),Object.defineProperties(this,{position:{configurable:!0,enumerable:!0,value:e},rotation:{configurable:!0,enumerable:!0,value:t},quaternion:{configurable:!0,enumerable:!0,value:n},scale:{configurable:!0,enumerable:!0,value:s},modelViewMatrix:{value:new pt},normalMatrix:{value:new $e}}),this.matrix=new pt,this.matrixWorld=new pt,this.matrixAutoUpdate=Et.DEFAULT_MATRIX_AUTO_UPDATE,this.matrixWorldAutoUpdate=Et.DEFAULT_MATRIX_WORLD_AUTO_UPDATE,this.matrixWorldNeedsUpdate=!1,this.layers=new Oo,this.visible=!0,this.castShadow=!1,this.receiveShadow=!1,this.frustumCulled=!0,this.renderOrder=0,this.animations=[],this.customDepthMaterial=void 0,this.customDistanceMaterial=void 0,this.userData={}}onBeforeShadow(){}onAfterShadow(){}onBeforeRender(){}onAfterRender(){}applyMatrix4(e){this.matrixAutoUpdate&&this.updateMatrix(),this.matrix.premultiply(e),this.matrix.decompose(this.position,this.quaternion,this.scale)}applyQuaternion(e){return this.quaternion.premultiply(e),this}setRotationFromAxisAngle(e,t){this.quaternion.setFromAxisAngle(e,t)}setRotationFromEuler(e){this.quaternion.setFromEuler(e,!0)}setRotationFromMatrix(e){this.quaternion.setFromRotationMatrix(e)}setRotationFromQuaternion(e){this.quaternion.copy(e)}rotateOnAxis(e,t){return Ti.setFromAxisAngle(e,t),this.quaternion.multiply(Ti),this}rotateOnWorldAxis(e,t){return Ti.setFromAxisAngle(e,t),this.quaternion.premultiply(Ti),this}rotateX(e){return this.rotateOnAxis(gl,e)}rotateY(e){return this.rotateOnAxis(_l,e)}rotateZ(e){return this.rotateOnAxis(vl,e)}translateOnAxis(e,t){return ml.copy(e).applyQuaternion(this.quaternion),this.position.add(ml.multiplyScalar(t)),this}translateX(e){return this.translateOnAxis(gl,e)}translateY(e){return this.translateOnAxis(_l,e)}translateZ(e){return this.translateOnAxis(vl,e)}localToWorld(e){return this.updateWorldMatrix(!0,!1),e.applyMatrix4(this.matrixWorld)}worldToLocal(e){return this.updateWorldMatrix(!0,!1),e.applyMatrix4(bn.copy(this.matrixWorld).invert())}lookAt(e,t,n){e.isVector3?Bs.copy(e):Bs.set(e,t,n);const s=this.parent;this.updateWorldMatrix(!0,!1),is.setFromMatrixPosition(this.matrixWorld),this.isCamera||this.isLight?bn.lookAt(is,Bs,this.up):bn.lookAt(Bs,is,this.up),this.quaternion.setFromRotationMatrix(bn),s&&(bn.extractRotation(s.matrixWorld),Ti.setFromRotationMatrix(bn),this.quaternion.premultiply(Ti.invert()))}add(e){if(arguments.length>1){for(let t=0;t<arguments.length;t++)this.add(arguments[t]);return this}return e===this?(console.error("THREE.Object3D.add: object can't be added as a child of itself.",e),this):(e&&e.isObject3D?(e.removeFromParent(),e.parent=this,this.children.push(e),e.dispatchEvent(xl),Ai.child=e,this.dispatchEvent(Ai),Ai.child=null):console.error("THREE.Object3D.add: object not an instance of THREE.Object3D.",e),this)}remove(e){if(arguments.length>1){for(let n=0;n<arguments.length;n++)this.remove(arguments[n]);return this}const t=this.children.indexOf(e);return t!==-1&&(e.parent=null,this.children.splice(t,1),e.dispatchEvent(Ld),Zr.child=e,this.dispatchEvent(Zr),Zr.child=null),this}removeFromParent(){const e=this.parent;return e!==null&&e.remove(this),this}clear(){return this.remove(...this.children)}attach(e){return this.updateWorldMatrix(!0,!1),bn.copy(this.matrixWorld).invert(),e.parent!==null&&(e.parent.updateWorldMatrix(!0,!1),bn.multiply(e.parent.matrixWorld)),e.applyMatrix4(bn),e.removeFromParent(),e.parent=this,this.children.push(e),e.updateWorldMatrix(!1,!0),e.dispatchEvent(xl),Ai.child=e,this.dispatchEvent(Ai),Ai.child=null,this}getObjectById(e){return this.getObjectByProperty("id",e)}getObjectByName(e){return this.getObjectByProperty("name",e)}getObjectByProperty(e,t){if(this[e]===t)return this;for(let n=0,s=this.children.length;n<s;n++){const a=this.children[n].getObjectByProperty(e,t);if(a!==void 0)return a}}getObjectsByProperty(e,t,n=[]){this[e]===t&&n.push(this);const s=this.children;for(let r=0,a=s.length;r<a;r++)s[r].getObjectsByProperty(e,t,n);return n}getWorldPosition(e){return this.updateWorldMatrix(!0,!1),e.setFromMatrixPosition(this.matrixWorld)}getWorldQuaternion(e){return this.updateWorldMatrix(!0,!1),this.matrixWorld.decompose(is,e,Pd),e}getWorldScale(e){return this.updateWorldMatrix(!0,!1),this.matrixWorld.decompose(is,Dd,e),e}getWorldDirection(e){this.updateWorldMatrix(!0,!1);const t=this.matrixWorld.elements;return e.set(t[8],t[9],t[10]).normalize()}raycast(){}traverse(e){e(this);const t=this.children;for(let n=0,s=t.length;n<s;n++)t[n].traverse(e)}traverseVisible(e){if(this.visible===!1)return;e(this);const t=this.children;for(let n=0,s=t.length;n<s;n++)t[n].traverseVisible(e)}traverseAncestors(e){const t=this.parent;t!==null&&(e(t),t.traverseAncestors(e))}updateMatrix(){this.matrix.compose(this.position,this.quaternion,this.scale),this.matrixWorldNeedsUpdate=!0}updateMatrixWorld(e){this.matrixAutoUpdate&&this.updateMatrix(),(this.matrixWorldNeedsUpdate||e)&&(this.matrixWorldAutoUpdate===!0&&(this.parent===null?this.matrixWorld.copy(this.matrix):this.matrixWorld.multiplyMatrices(this.parent.matrixWorld,this.matrix)),this.matrixWorldNeedsUpdate=!1,e=!0);const t=this.children;for(let n=0,s=t.length;n<s;n++)t[n].updateMatrixWorld(e)}updateWorldMatrix(e,t){const n=this.parent;if(e===!0&&n!==null&&n.updateWorldMatrix(!0,!1),this.matrixAutoUpdate&&this.updateMatrix(),this.matrixWorldAutoUpdate===!0&&(this.parent===null?this.matrixWorld.copy(this.matrix):this.matrixWorld.multiplyMatrices(this.parent.matrixWorld,this.matrix)),t===!0){const s=this.children;for(let r=0,a=s.length;r<a;r++)s[r].updateWorldMatrix(!1,!0)}}toJSON(e){const t=e===void 0||typeof e=="string",n={};t&&(e={geometries:{},materials:{},textures:{},images:{},shapes:{},skeletons:{},animations:{},nodes:{}},n.metadata={version:4.7,type:"Object",generator:"Object3D.toJSON"});const s={};s.uuid=this.uuid,s.type=this.type,this.name!==""&&(s.name=this.name),this.castShadow===!0&&(s.castShadow=!0),this.receiveShadow===!0&&(s.receiveShadow=!0),this.visible===!1&&(s.visible=!1),this.frustumCulled===!1&&(s.frustumCulled=!1),this.renderOrder!==0&&(s.renderOrder=this.renderOrder),Object.keys(this.userData).length>0&&(s.userData=this.userData),s.layers=this.layers.mask,s.matrix=this.matrix.toArray(),s.up=this.up.toArray(),this.matrixAutoUpdate===!1&&(s.matrixAutoUpdate=!1),this.isInstancedMesh&&(s.type="InstancedMesh",s.count=this.count,s.instanceMatrix=this.instanceMatrix.toJSON(),this.instanceColor!==null&&(s.instanceColor=this.instanceColor.toJSON())),this.isBatchedMesh&&(s.type="BatchedMesh",s.perObjectFrustumCulled=this.perObjectFrustumCulled,s.sortObjects=this.sortObjects,s.drawRanges=this._drawRanges,s.reservedRanges=this._reservedRanges,s.geometryInfo=this._geometryInfo.map(o=>({...o,boundingBox:o.boundingBox?o.boundingBox.toJSON():void 0,boundingSphere:o.boundingSphere?o.boundingSphere.toJSON():void 0})),s.instanceInfo=this._instanceInfo.map(o=>({...o})),s.availableInstanceIds=this._availableInstanceIds.slice(),s.availableGeometryIds=this._availableGeometryIds.slice(),s.nextIndexStart=this._nextIndexStart,s.nextVertexStart=this._nextVertexStart,s.geometryCount=this._geometryCount,s.maxInstanceCount=this._maxInstanceCount,s.maxVertexCount=this._maxVertexCount,s.maxIndexCount=this._maxIndexCount,s.geometryInitialized=this._geometryInitialized,s.matricesTexture=this._matricesTexture.toJSON(e),s.indirectTexture=this._indirectTexture.toJSON(e),this._colorsTexture!==null&&(s.colorsTexture=this._colorsTexture.toJSON(e)),this.boundingSphere!==null&&(s.boundingSphere=this.boundingSphere.toJSON()),this.boundingBox!==null&&(s.boundingBox=this.boundingBox.toJSON()));function r(o,l){return o[l.uuid]===void 0&&(o[l.uuid]=l.toJSON(e)),l.uuid}if(this.isScene)this.background&&(this.background.isColor?s.background=this.background.toJSON():this.background.isTexture&&(s.background=this.background.toJSON(e).uuid)),this.environment&&this.environment.isTexture&&this.environment.isRenderTargetTexture!==!0&&(s.environment=this.environment.toJSON(e).uuid);else if(this.isMesh||this.isLine||this.isPoints){s.geometry=r(e.geometries,this.geometry);const o=this.geometry.parameters;if(o!==void 0&&o.shapes!==void 0){const l=o.shapes;if(Array.isArray(l))for(let c=0,h=l.length;c<h;c++){const u=l[c];r(e.shapes,u)}else r(e.shapes,l)}}if(this.isSkinnedMesh&&(s.bindMode=this.bindMode,s.bindMatrix=this.bindMatrix.toArray(),this.skeleton!==void 0&&(r(e.skeletons,this.skeleton),s.skeleton=this.skeleton.uuid)),this.material!==void 0)if(Array.isArray(this.material)){const o=[];for(let l=0,c=this.material.length;l<c;l++)o.push(r(e.materials,this.material[l]));s.material=o}else s.material=r(e.materials,this.material);if(this.children.length>0){s.children=[];for(let o=0;o<this.children.length;o++)s.children.push(this.children[o].toJSON(e).object)}if(this.animations.length>0){s.animations=[];for(let o=0;o<this.animations.length;o++){const l=this.animations[o];s.animations.push(r(e.animations,l))}}if(t){const o=a(e.geometries),l=a(e.materials),c=a(e.textures),h=a(e.images),u=a(e.shapes),f=a(e.skeletons),p=a(e.animations),g=a(e.nodes);o.length>0&&(n.geometries=o),l.length>0&&(n.materials=l),c.length>0&&(n.textures=c),h.length>0&&(n.images=h),u.length>0&&(n.shapes=u),f.length>0&&(n.skeletons=f),p.length>0&&(n.animations=p),g.length>0&&(n.nodes=g)}return n.object=s,n;function a(o){const l=[];for(const c in o){const h=o[c];delete h.metadata,l.push(h)}return l}}clone(e){return new this.constructor().copy(this,e)}copy(e,t=!0){if(this.name=e.name,this.up.copy(e.up),this.position.copy(e.position),this.rotation.order=e.rotation.order,this.quaternion.copy(e.quaternion),this.scale.copy(e.scale),this.matrix.copy(e.matrix),this.matrixWorld.copy(e.matrixWorld),this.matrixAutoUpdate=e.matrixAutoUpdate,this.matrixWorldAutoUpdate=e.matrixWorldAutoUpdate,this.matrixWorldNeedsUpdate=e.matrixWorldNeedsUpdate,this.layers.mask=e.layers.mask,this.visible=e.visible,this.castShadow=e.castShadow,this.receiveShadow=e.receiveShadow,this.frustumCulled=e.frustumCulled,this.renderOrder=e.renderOrder,this.animations=e.animations.slice(),this.userData=JSON.parse(JSON.stringify(e.userData)),t===!0)for(let n=0;n<e.children.length;n++){const s=e.children[n];this.add(s.clone())}return this}}Et.DEFAULT_UP=new N(0,1,0);Et.DEFAULT_MATRIX_AUTO_UPDATE=!0;Et.DEFAULT_MATRIX_WORLD_AUTO_UPDATE=!0;const cn=new N,En=new N,Jr=new N,Tn=new N,Ri=new N,Ci=new N,yl=new N,Qr=new N,ea=new N,ta=new N,na=new xt,ia=new xt,sa=new xt;class un{constructor(e=new N,t=new N,n=new N){this.a=e,this.b=t,this.c=n}static getNormal(e,t,n,s){s.subVectors(n,t),cn.subVectors(e,t),s.cross(cn);const r=s.lengthSq();return r>0?s.multiplyScalar(1/Math.sqrt(r)):s.set(0,0,0)}static getBarycoord(e,t,n,s,r){cn.subVectors(s,t),En.subVectors(n,t),Jr.subVectors(e,t);const a=cn.dot(cn),o=cn.dot(En),l=cn.dot(Jr),c=En.dot(En),h=En.dot(Jr),u=a*c-o*o;if(u===0)return r.set(0,0,0),null;const f=1/u,p=(c*l-o*h)*f,g=(a*h-o*l)*f;return r.set(1-p-g,g,p)}static containsPoint(e,t,n,s){return this.getBarycoord(e,t,n,s,Tn)===null?!1:Tn.x>=0&&Tn.y>=0&&Tn.x+Tn.y<=1}static getInterpolation(e,t,n,s,r,a,o,l){return this.getBarycoord(e,t,n,s,Tn)===null?(l.x=0,l.y=0,"z"in l&&(l.z=0),"w"in l&&(l.w=0),null):(l.setScalar(0),l.addScaledVector(r,Tn.x),l.addScaledVector(a,Tn.y),l.addScaledVector(o,Tn.z),l)}static getInterpolatedAttribute(e,t,n,s,r,a){return na.setScalar(0),ia.setScalar(0),sa.setScalar(0),na.fromBufferAttribute(e,t),ia.fromBufferAttribute(e,n),sa.fromBufferAttribute(e,s),a.setScalar(0),a.addScaledVector(na,r.x),a.addScaledVector(ia,r.y),a.addScaledVector(sa,r.z),a}static isFrontFacing(e,t,n,s){return cn.subVectors(n,t),En.subVectors(e,t),cn.cross(En).dot(s)<0}set(e,t,n){return this.a.copy(e),this.b.copy(t),this.c.copy(n),this}setFromPointsAndIndices(e,t,n,s){return this.a.copy(e[t]),this.b.copy(e[n]),this.c.copy(e[s]),this}setFromAttributeAndIndices(e,t,n,s){return this.a.fromBufferAttribute(e,t),this.b.fromBufferAttribute(e,n),this.c.fromBufferAttribute(e,s),this}clone(){return new this.constructor().copy(this)}copy(e){return this.a.copy(e.a),this.b.copy(e.b),this.c.copy(e.c),this}getArea(){return cn.subVectors(this.c,this.b),En.subVectors(this.a,this.b),cn.cross(En).length()*.5}getMidpoint(e){return e.addVectors(this.a,this.b).add(this.c).multiplyScalar(1/3)}getNormal(e){return un.getNormal(this.a,this.b,this.c,e)}getPlane(e){return e.setFromCoplanarPoints(this.a,this.b,this.c)}getBarycoord(e,t){return un.getBarycoord(e,this.a,this.b,this.c,t)}getInterpolation(e,t,n,s,r){return un.getInterpolation(e,this.a,this.b,this.c,t,n,s,r)}containsPoint(e){return un.containsPoint(e,this.a,this.b,this.c)}isFrontFacing(e){return un.isFrontFacing(this.a,this.b,this.c,e)}intersectsBox(e){return e.intersectsTriangle(this)}closestPointToPoint(e,t){const n=this.a,s=this.b,r=this.c;let a,o;Ri.subVectors(s,n),Ci.subVectors(r,n),Qr.subVectors(e,n);const l=Ri.dot(Qr),c=Ci.dot(Qr);if(l<=0&&c<=0)return t.copy(n);ea.subVectors(e,s);const h=Ri.dot(ea),u=Ci.dot(ea);if(h>=0&&u<=h)return t.copy(s);const f=l*u-h*c;if(f<=0&&l>=0&&h<=0)return a=l/(l-h),t.copy(n).addScaledVector(Ri,a);ta.subVectors(e,r);const p=Ri.dot(ta),g=Ci.dot(ta);if(g>=0&&p<=g)return t.copy(r);const x=p*c-l*g;if(x<=0&&c>=0&&g<=0)return o=c/(c-g),t.copy(n).addScaledVector(Ci,o);const m=h*g-p*u;if(m<=0&&u-h>=0&&p-g>=0)return yl.subVectors(r,s),o=(u-h)/(u-h+(p-g)),t.copy(s).addScaledVector(yl,o);const d=1/(m+x+f);return a=x*d,o=f*d,t.copy(n).addScaledVector(Ri,a).addScaledVector(Ci,o)}equals(e){return e.a.equals(this.a)&&e.b.equals(this.b)&&e.c.equals(this.c)}}const qc={aliceblue:15792383,antiquewhite:16444375,aqua:65535,aquamarine:8388564,azure:15794175,beige:16119260,bisque:16770244,black:0,blanchedalmond:16772045,blue:255,blueviolet:9055202,brown:10824234,burlywood:14596231,cadetblue:6266528,chartreuse:8388352,chocolate:13789470,coral:16744272,cornflowerblue:6591981,cornsilk:16775388,crimson:14423100,cyan:65535,darkblue:139,darkcyan:35723,darkgoldenrod:12092939,darkgray:11119017,darkgreen:25600,darkgrey:11119017,darkkhaki:12433259,darkmagenta:9109643,darkolivegreen:5597999,darkorange:16747520,darkorchid:10040012,darkred:9109504,darksalmon:15308410,darkseagreen:9419919,darkslateblue:4734347,darkslategray:3100495,darkslategrey:3100495,darkturquoise:52945,darkviolet:9699539,deeppink:16716947,deepskyblue:49151,dimgray:6908265,dimgrey:6908265,dodgerblue:2003199,firebrick:11674146,floralwhite:16775920,forestgreen:2263842,fuchsia:16711935,gainsboro:14474460,ghostwhite:16316671,gold:16766720,goldenrod:14329120,gray:8421504,green:32768,greenyellow:11403055,grey:8421504,honeydew:15794160,hotpink:16738740,indianred:13458524,indigo:4915330,ivory:16777200,khaki:15787660,lavender:15132410,lavenderblush:16773365,lawngreen:8190976,lemonchiffon:16775885,lightblue:11393254,lightcoral:15761536,lightcyan:14745599,lightgoldenrodyellow:16448210,lightgray:13882323,lightgreen:9498256,lightgrey:13882323,lightpink:16758465,lightsalmon:16752762,lightseagreen:2142890,lightskyblue:8900346,lightslategray:7833753,lightslategrey:7833753,lightsteelblue:11584734,lightyellow:16777184,lime:65280,limegreen:3329330,linen:16445670,magenta:16711935,maroon:8388608,mediumaquamarine:6737322,mediumblue:205,mediumorchid:12211667,mediumpurple:9662683,mediumseagreen:3978097,mediumslateblue:8087790,mediumspringgreen:64154,mediumturquoise:4772300,mediumvioletred:13047173,midnightblue:1644912,mintcream:16121850,mistyrose:16770273,moccasin:16770229,navajowhite:16768685,navy:128,oldlace:16643558,olive:8421376,olivedrab:7048739,orange:16753920,orangered:16729344,orchid:14315734,palegoldenrod:15657130,palegreen:10025880,paleturquoise:11529966,palevioletred:14381203,papayawhip:16773077,peachpuff:16767673,peru:13468991,pink:16761035,plum:14524637,powderblue:11591910,purple:8388736,rebeccapurple:6697881,red:16711680,rosybrown:12357519,royalblue:4286945,saddlebrown:9127187,salmon:16416882,sandybrown:16032864,seagreen:3050327,seashell:16774638,sienna:10506797,silver:12632256,skyblue:8900331,slateblue:6970061,slategray:7372944,slategrey:7372944,snow:16775930,springgreen:65407,steelblue:4620980,tan:13808780,teal:32896,thistle:14204888,tomato:16737095,turquoise:4251856,violet:15631086,wheat:16113331,white:16777215,whitesmoke:16119285,yellow:16776960,yellowgreen:10145074},zn={h:0,s:0,l:0},zs={h:0,s:0,l:0};function ra(i,e,t){return t<0&&(t+=1),t>1&&(t-=1),t<1/6?i+(e-i)*6*t:t<1/2?e:t<2/3?i+(e-i)*6*(2/3-t):i}class Ye{constructor(e,t,n){return this.isColor=!0,this.r=1,this.g=1,this.b=1,this.set(e,t,n)}set(e,t,n){if(t===void 0&&n===void 0){const s=e;s&&s.isColor?this.copy(s):typeof s=="number"?this.setHex(s):typeof s=="string"&&this.setStyle(s)}else this.setRGB(e,t,n);return this}setScalar(e){return this.r=e,this.g=e,this.b=e,this}setHex(e,t=sn){return e=Math.floor(e),this.r=(e>>16&255)/255,this.g=(e>>8&255)/255,this.b=(e&255)/255,et.colorSpaceToWorking(this,t),this}setRGB(e,t,n,s=et.workingColorSpace){return this.r=e,this.g=t,this.b=n,et.colorSpaceToWorking(this,s),this}setHSL(e,t,n,s=et.workingColorSpace){if(e=gd(e,1),t=je(t,0,1),n=je(n,0,1),t===0)this.r=this.g=this.b=n;else{const r=n<=.5?n*(1+t):n+t-n*t,a=2*n-r;this.r=ra(a,r,e+1/3),this.g=ra(a,r,e),this.b=ra(a,r,e-1/3)}return et.colorSpaceToWorking(this,s),this}setStyle(e,t=sn){function n(r){r!==void 0&&parseFloat(r)<1&&console.warn("THREE.Color: Alpha component of "+e+" will be ignored.")}let s;if(s=/^(\w+)\(([^\)]*)\)/.exec(e)){let r;const a=s[1],o=s[2];switch(a){case"rgb":case"rgba":if(r=/^\s*(\d+)\s*,\s*(\d+)\s*,\s*(\d+)\s*(?:,\s*(\d*\.?\d+)\s*)?$/.exec(o))return n(r[4]),this.setRGB(Math.min(255,parseInt(r[1],10))/255,Math.min(255,parseInt(r[2],10))/255,Math.min(255,parseInt(r[3],10))/255,t);if(r=/^\s*(\d+)\%\s*,\s*(\d+)\%\s*,\s*(\d+)\%\s*(?:,\s*(\d*\.?\d+)\s*)?$/.exec(o))return n(r[4]),this.setRGB(Math.min(100,parseInt(r[1],10))/100,Math.min(100,parseInt(r[2],10))/100,Math.min(100,parseInt(r[3],10))/100,t);break;case"hsl":case"hsla":if(r=/^\s*(\d*\.?\d+)\s*,\s*(\d*\.?\d+)\%\s*,\s*(\d*\.?\d+)\%\s*(?:,\s*(\d*\.?\d+)\s*)?$/.exec(o))return n(r[4]),this.setHSL(parseFloat(r[1])/360,parseFloat(r[2])/100,parseFloat(r[3])/100,t);break;default:console.warn("THREE.Color: Unknown color model "+e)}}else if(s=/^\#([A-Fa-f\d]+)$/.exec(e)){const r=s[1],a=r.length;if(a===3)return this.setRGB(parseInt(r.charAt(0),16)/15,parseInt(r.charAt(1),16)/15,parseInt(r.charAt(2),16)/15,t);if(a===6)return this.setHex(parseInt(r,16),t);console.warn("THREE.Color: Invalid hex color "+e)}else if(e&&e.length>0)return this.setColorName(e,t);return this}setColorName(e,t=sn){const n=qc[e.toLowerCase()];return n!==void 0?this.setHex(n,t):console.warn("THREE.Color: Unknown color "+e),this}clone(){return new this.constructor(this.r,this.g,this.b)}copy(e){return this.r=e.r,this.g=e.g,this.b=e.b,this}copySRGBToLinear(e){return this.r=Dn(e.r),this.g=Dn(e.g),this.b=Dn(e.b),this}copyLinearToSRGB(e){return this.r=Bi(e.r),this.g=Bi(e.g),this.b=Bi(e.b),this}convertSRGBToLinear(){return this.copySRGBToLinear(this),this}convertLinearToSRGB(){return this.copyLinearToSRGB(this),this}getHex(e=sn){return et.workingToColorSpace(Nt.copy(this),e),Math.round(je(Nt.r*255,0,255))*65536+Math.round(je(Nt.g*255,0,255))*256+Math.round(je(Nt.b*255,0,255))}getHexString(e=sn){return("000000"+this.getHex(e).toString(16)).slice(-6)}getHSL(e,t=et.workingColorSpace){et.workingToColorSpace(Nt.copy(this),t);const n=Nt.r,s=Nt.g,r=Nt.b,a=Math.max(n,s,r),o=Math.min(n,s,r);let l,c;const h=(o+a)/2;if(o===a)l=0,c=0;else{const u=a-o;switch(c=h<=.5?u/(a+o):u/(2-a-o),a){case n:l=(s-r)/u+(s<r?6:0);break;case s:l=(r-n)/u+2;break;case r:l=(n-s)/u+4;break}l/=6}return e.h=l,e.s=c,e.l=h,e}getRGB(e,t=et.workingColorSpace){return et.workingToColorSpace(Nt.copy(this),t),e.r=Nt.r,e.g=Nt.g,e.b=Nt.b,e}getStyle(e=sn){et.workingToColorSpace(Nt.copy(this),e);const t=Nt.r,n=Nt.g,s=Nt.b;return e!==sn?`color(${e} ${t.toFixed(3)} ${n.toFixed(3)} ${s.toFixed(3)})`:`rgb(${Math.round(t*255)},${Math.round(n*255)},${Math.round(s*255)})`}offsetHSL(e,t,n){return this.getHSL(zn),this.setHSL(zn.h+e,zn.s+t,zn.l+n)}add(e){return this.r+=e.r,this.g+=e.g,this.b+=e.b,this}addColors(e,t){return this.r=e.r+t.r,this.g=e.g+t.g,this.b=e.b+t.b,this}addScalar(e){return this.r+=e,this.g+=e,this.b+=e,this}sub(e){return this.r=Math.max(0,this.r-e.r),this.g=Math.max(0,this.g-e.g),this.b=Math.max(0,this.b-e.b),this}multiply(e){return this.r*=e.r,this.g*=e.g,this.b*=e.b,this}multiplyScalar(e){return this.r*=e,this.g*=e,this.b*=e,this}lerp(e,t){return this.r+=(e.r-this.r)*t,this.g+=(e.g-this.g)*t,this.b+=(e.b-this.b)*t,this}lerpColors(e,t,n){return this.r=e.r+(t.r-e.r)*n,this.g=e.g+(t.g-e.g)*n,this.b=e.b+(t.b-e.b)*n,this}lerpHSL(e,t){this.getHSL(zn),e.getHSL(zs);const n=Hr(zn.h,zs.h,t),s=Hr(zn.s,zs.s,t),r=Hr(zn.l,zs.l,t);return this.setHSL(n,s,r),this}setFromVector3(e){return this.r=e.x,this.g=e.y,this.b=e.z,this}applyMatrix3(e){const t=this.r,n=this.g,s=this.b,r=e.elements;return this.r=r[0]*t+r[3]*n+r[6]*s,this.g=r[1]*t+r[4]*n+r[7]*s,this.b=r[2]*t+r[5]*n+r[8]*s,this}equals(e){return e.r===this.r&&e.g===this.g&&e.b===this.b}fromArray(e,t=0){return this.r=e[t],this.g=e[t+1],this.b=e[t+2],this}toArray(e=[],t=0){return e[t]=this.r,e[t+1]=this.g,e[t+2]=this.b,e}fromBufferAttribute(e,t){return this.r=e.getX(t),this.g=e.getY(t),this.b=e.getZ(t),this}toJSON(){return this.getHex()}*[Symbol.iterator](){yield this.r,yield this.g,yield this.b}}const Nt=new Ye;Ye.NAMES=qc;let Id=0;class _i extends gi{constructor(){super(),this.isMaterial=!0,Object.defineProperty(this,"id",{value:Id++}),this.uuid=bs(),this.name="",this.type="Material",this.blending=ki,this.side=jn,this.vertexColors=!1,this.opacity=1,this.transparent=!1,this.alphaHash=!1,this.blendSrc=Ea,this.blendDst=Ta,this.blendEquation=oi,this.blendSrcAlpha=null,this.blendDstAlpha=null,this.blendEquationAlpha=null,this.blendColor=new Ye(0,0,0),this.blendAlpha=0,this.depthFunc=Gi,this.depthTest=!0,this.depthWrite=!0,this.stencilWriteMask=255,this.stencilFunc=al,this.stencilRef=0,this.stencilFuncMask=255,this.stencilFail=yi,this.stencilZFail=yi,this.stencilZPass=yi,this.stencilWrite=!1,this.clippingPlanes=null,this.clipIntersection=!1,this.clipShadows=!1,this.shadowSide=null,this.colorWrite=!0,this.precision=null,this.polygonOffset=!1,this.polygonOffsetFactor=0,this.polygonOffsetUnits=0,this.dithering=!1,this.alphaToCoverage=!1,this.premultipliedAlpha=!1,this.forceSinglePass=!1,this.allowOverride=!0,this.visible=!0,this.toneMapped=!0,this.userData={},this.version=0,this._alphaTest=0}get alphaTest(){return this._alphaTest}set alphaTest(e){this._alphaTest>0!=e>0&&this.version++,this._alphaTest=e}onBeforeRender(){}onBeforeCompile(){}customProgramCacheKey(){return this.onBeforeCompile.toString()}setValues(e){if(e!==void 0)for(const t in e){const n=e[t];if(n===void 0){console.warn(`THREE.Material: parameter '${t}' has value of undefined.`);continue}const s=this[t];if(s===void 0){console.warn(`THREE.Material: '${t}' is not a property of THREE.${this.type}.`);continue}s&&s.isColor?s.set(n):s&&s.isVector3&&n&&n.isVector3?s.copy(n):this[t]=n}}toJSON(e){const t=e===void 0||typeof e=="string";t&&(e={textures:{},images:{}});const n={metadata:{version:4.7,type:"Material",generator:"Material.toJSON"}};n.uuid=this.uuid,n.type=this.type,this.name!==""&&(n.name=this.name),this.color&&this.color.isColor&&(n.color=this.color.getHex()),this.roughness!==void 0&&(n.roughness=this.roughness),this.metalness!==void 0&&(n.metalness=this.metalness),this.sheen!==void 0&&(n.sheen=this.sheen),this.sheenColor&&this.sheenColor.isColor&&(n.sheenColor=this.sheenColor.getHex()),this.sheenRoughness!==void 0&&(n.sheenRoughness=this.sheenRoughness),this.emissive&&this.emissive.isColor&&(n.emissive=this.emissive.getHex()),this.emissiveIntensity!==void 0&&this.emissiveIntensity!==1&&(n.emissiveIntensity=this.emissiveIntensity),this.specular&&this.specular.isColor&&(n.specular=this.specular.getHex()),this.specularIntensity!==void 0&&(n.specularIntensity=this.specularIntensity),this.specularColor&&this.specularColor.isColor&&(n.specularColor=this.specularColor.getHex()),this.shininess!==void 0&&(n.shininess=this.shininess),this.clearcoat!==void 0&&(n.clearcoat=this.clearcoat),this.clearcoatRoughness!==void 0&&(n.clearcoatRoughness=this.clearcoatRoughness),this.clearcoatMap&&this.clearcoatMap.isTexture&&(n.clearcoatMap=this.clearcoatMap.toJSON(e).uuid),this.clearcoatRoughnessMap&&this.clearcoatRoughnessMap.isTexture&&(n.clearcoatRoughnessMap=this.clearcoatRoughnessMap.toJSON(e).uuid),this.clearcoatNormalMap&&this.clearcoatNormalMap.isTexture&&(n.clearcoatNormalMap=this.clearcoatNormalMap.toJSON(e).uuid,n.clearcoatNormalScale=this.clearcoatNormalScale.toArray()),this.sheenColorMap&&this.sheenColorMap.isTexture&&(n.sheenColorMap=this.sheenColorMap.toJSON(e).uuid),this.sheenRoughnessMap&&this.sheenRoughnessMap.isTexture&&(n.sheenRoughnessMap=this.sheenRoughnessMap.toJSON(e).uuid),this.dispersion!==void 0&&(n.dispersion=this.dispersion),this.iridescence!==void 0&&(n.iridescence=this.iridescence),this.iridescenceIOR!==void 0&&(n.iridescenceIOR=this.iridescenceIOR),this.iridescenceThicknessRange!==void 0&&(n.iridescenceThicknessRange=this.iridescenceThicknessRange),this.iridescenceMap&&this.iridescenceMap.isTexture&&(n.iridescenceMap=this.iridescenceMap.toJSON(e).uuid),this.iridescenceThicknessMap&&this.iridescenceThicknessMap.isTexture&&(n.iridescenceThicknessMap=this.iridescenceThicknessMap.toJSON(e).uuid),this.anisotropy!==void 0&&(n.anisotropy=this.anisotropy),this.anisotropyRotation!==void 0&&(n.anisotropyRotation=this.anisotropyRotation),this.anisotropyMap&&this.anisotropyMap.isTexture&&(n.anisotropyMap=this.anisotropyMap.toJSON(e).uuid),this.map&&this.map.isTexture&&(n.map=this.map.toJSON(e).uuid),this.matcap&&this.matcap.isTexture&&(n.matcap=this.matcap.toJSON(e).uuid),this.alphaMap&&this.alphaMap.isTexture&&(n.alphaMap=this.alphaMap.toJSON(e).uuid),this.lightMap&&this.lightMap.isTexture&&(n.lightMap=this.lightMap.toJSON(e).uuid,n.lightMapIntensity=this.lightMapIntensity),this.aoMap&&this.aoMap.isTexture&&(n.aoMap=this.aoMap.toJSON(e).uuid,n.aoMapIntensity=this.aoMapIntensity),this.bumpMap&&this.bumpMap.isTexture&&(n.bumpMap=this.bumpMap.toJSON(e).uuid,n.bumpScale=this.bumpScale),this.normalMap&&this.normalMap.isTexture&&(n.normalMap=this.normalMap.toJSON(e).uuid,n.normalMapType=this.normalMapType,n.normalScale=this.normalScale.toArray()),this.displacementMap&&this.displacementMap.isTexture&&(n.displacementMap=this.displacementMap.toJSON(e).uuid,n.displacementScale=this.displacementScale,n.displacementBias=this.displacementBias),this.roughnessMap&&this.roughnessMap.isTexture&&(n.roughnessMap=this.roughnessMap.toJSON(e).uuid),this.metalnessMap&&this.metalnessMap.isTexture&&(n.metalnessMap=this.metalnessMap.toJSON(e).uuid),this.emissiveMap&&this.emissiveMap.isTexture&&(n.emissiveMap=this.emissiveMap.toJSON(e).uuid),this.specularMap&&this.specularMap.isTexture&&(n.specularMap=this.specularMap.toJSON(e).uuid),this.specularIntensityMap&&this.specularIntensityMap.isTexture&&(n.specularIntensityMap=this.specularIntensityMap.toJSON(e).uuid),this.specularColorMap&&this.specularColorMap.isTexture&&(n.specularColorMap=this.specularColorMap.toJSON(e).uuid),this.envMap&&this.envMap.isTexture&&(n.envMap=this.envMap.toJSON(e).uuid,this.combine!==void 0&&(n.combine=this.combine)),this.envMapRotation!==void 0&&(n.envMapRotation=this.envMapRotation.toArray()),this.envMapIntensity!==void 0&&(n.envMapIntensity=this.envMapIntensity),this.reflectivity!==void 0&&(n.reflectivity=this.reflectivity),this.refractionRatio!==void 0&&(n.refractionRatio=this.refractionRatio),this.gradientMap&&this.gradientMap.isTexture&&(n.gradientMap=this.gradientMap.toJSON(e).uuid),this.transmission!==void 0&&(n.transmission=this.transmission),this.transmissionMap&&this.transmissionMap.isTexture&&(n.transmissionMap=this.transmissionMap.toJSON(e).uuid),this.thickness!==void 0&&(n.thickness=this.thickness),this.thicknessMap&&this.thicknessMap.isTexture&&(n.thicknessMap=this.thicknessMap.toJSON(e).uuid),this.attenuationDistance!==void 0&&this.attenuationDistance!==1/0&&(n.attenuationDistance=this.attenuationDistance),this.attenuationColor!==void 0&&(n.attenuationColor=this.attenuationColor.getHex()),this.size!==void 0&&(n.size=this.size),this.shadowSide!==null&&(n.shadowSide=this.shadowSide),this.sizeAttenuation!==void 0&&(n.sizeAttenuation=this.sizeAttenuation),this.blending!==ki&&(n.blending=this.blending),this.side!==jn&&(n.side=this.side),this.vertexColors===!0&&(n.vertexColors=!0),this.opacity<1&&(n.opacity=this.opacity),this.transparent===!0&&(n.transparent=!0),this.blendSrc!==Ea&&(n.blendSrc=this.blendSrc),this.blendDst!==Ta&&(n.blendDst=this.blendDst),this.blendEquation!==oi&&(n.blendEquation=this.blendEquation),this.blendSrcAlpha!==null&&(n.blendSrcAlpha=this.blendSrcAlpha),this.blendDstAlpha!==null&&(n.blendDstAlpha=this.blendDstAlpha),this.blendEquationAlpha!==null&&(n.blendEquationAlpha=this.blendEquationAlpha),this.blendColor&&this.blendColor.isColor&&(n.blendColor=this.blendColor.getHex()),this.blendAlpha!==0&&(n.blendAlpha=this.blendAlpha),this.depthFunc!==Gi&&(n.depthFunc=this.depthFunc),this.depthTest===!1&&(n.depthTest=this.depthTest),this.depthWrite===!1&&(n.depthWrite=this.depthWrite),this.colorWrite===!1&&(n.colorWrite=this.colorWrite),this.stencilWriteMask!==255&&(n.stencilWriteMask=this.stencilWriteMask),this.stencilFunc!==al&&(n.stencilFunc=this.stencilFunc),this.stencilRef!==0&&(n.stencilRef=this.stencilRef),this.stencilFuncMask!==255&&(n.stencilFuncMask=this.stencilFuncMask),this.stencilFail!==yi&&(n.stencilFail=this.stencilFail),this.stencilZFail!==yi&&(n.stencilZFail=this.stencilZFail),this.stencilZPass!==yi&&(n.stencilZPass=this.stencilZPass),this.stencilWrite===!0&&(n.stencilWrite=this.stencilWrite),this.rotation!==void 0&&this.rotation!==0&&(n.rotation=this.rotation),this.polygonOffset===!0&&(n.polygonOffset=!0),this.polygonOffsetFactor!==0&&(n.polygonOffsetFactor=this.polygonOffsetFactor),this.polygonOffsetUnits!==0&&(n.polygonOffsetUnits=this.polygonOffsetUnits),this.linewidth!==void 0&&this.linewidth!==1&&(n.linewidth=this.linewidth),this.dashSize!==void 0&&(n.dashSize=this.dashSize),this.gapSize!==void 0&&(n.gapSize=this.gapSize),this.scale!==void 0&&(n.scale=this.scale),this.dithering===!0&&(n.dithering=!0),this.alphaTest>0&&(n.alphaTest=this.alphaTest),this.alphaHash===!0&&(n.alphaHash=!0),this.alphaToCoverage===!0&&(n.alphaToCoverage=!0),this.premultipliedAlpha===!0&&(n.premultipliedAlpha=!0),this.forceSinglePass===!0&&(n.forceSinglePass=!0),this.wireframe===!0&&(n.wireframe=!0),this.wireframeLinewidth>1&&(n.wireframeLinewidth=this.wireframeLinewidth),this.wireframeLinecap!=="round"&&(n.wireframeLinecap=this.wireframeLinecap),this.wireframeLinejoin!=="round"&&(n.wireframeLinejoin=this.wireframeLinejoin),this.flatShading===!0&&(n.flatShading=!0),this.visible===!1&&(n.visible=!1),this.toneMapped===!1&&(n.toneMapped=!1),this.fog===!1&&(n.fog=!1),Object.keys(this.userData).length>0&&(n.userData=this.userData);function s(r){const a=[];for(const o in r){const l=r[o];delete l.metadata,a.push(l)}return a}if(t){const r=s(e.textures),a=s(e.images);r.length>0&&(n.textures=r),a.length>0&&(n.images=a)}return n}clone(){return new this.constructor().copy(this)}copy(e){this.name=e.name,this.blending=e.blending,this.side=e.side,this.vertexColors=e.vertexColors,this.opacity=e.opacity,this.transparent=e.transparent,this.blendSrc=e.blendSrc,this.blendDst=e.blendDst,this.blendEquation=e.blendEquation,this.blendSrcAlpha=e.blendSrcAlpha,this.blendDstAlpha=e.blendDstAlpha,this.blendEquationAlpha=e.blendEquationAlpha,this.blendColor.copy(e.blendColor),this.blendAlpha=e.blendAlpha,this.depthFunc=e.depthFunc,this.depthTest=e.depthTest,this.depthWrite=e.depthWrite,this.stencilWriteMask=e.stencilWriteMask,this.stencilFunc=e.stencilFunc,this.stencilRef=e.stencilRef,this.stencilFuncMask=e.stencilFuncMask,this.stencilFail=e.stencilFail,this.stencilZFail=e.stencilZFail,this.stencilZPass=e.stencilZPass,this.stencilWrite=e.stencilWrite;const t=e.clippingPlanes;let n=null;if(t!==null){const s=t.length;n=new Array(s);for(let r=0;r!==s;++r)n[r]=t[r].clone()}return this.clippingPlanes=n,this.clipIntersection=e.clipIntersection,this.clipShadows=e.clipShadows,this.shadowSide=e.shadowSide,this.colorWrite=e.colorWrite,this.precision=e.precision,this.polygonOffset=e.polygonOffset,this.polygonOffsetFactor=e.polygonOffsetFactor,this.polygonOffsetUnits=e.polygonOffsetUnits,this.dithering=e.dithering,this.alphaTest=e.alphaTest,this.alphaHash=e.alphaHash,this.alphaToCoverage=e.alphaToCoverage,this.premultipliedAlpha=e.premultipliedAlpha,this.forceSinglePass=e.forceSinglePass,this.visible=e.visible,this.toneMapped=e.toneMapped,this.userData=JSON.parse(JSON.stringify(e.userData)),this}dispose(){this.dispatchEvent({type:"dispose"})}set needsUpdate(e){e===!0&&this.version++}}class ys extends _i{constructor(e){super(),this.isMeshBasicMaterial=!0,this.type="MeshBasicMaterial",this.color=new Ye(16777215),this.map=null,this.lightMap=null,this.lightMapIntensity=1,this.aoMap=null,this.aoMapIntensity=1,this.specularMap=null,this.alphaMap=null,this.envMap=null,this.envMapRotation=new yn,this.combine=Co,this.reflectivity=1,this.refractionRatio=.98,this.wireframe=!1,this.wireframeLinewidth=1,this.wireframeLinecap="round",this.wireframeLinejoin="round",this.fog=!0,this.setValues(e)}copy(e){return super.copy(e),this.color.copy(e.color),this.map=e.map,this.lightMap=e.lightMap,this.lightMapIntensity=e.lightMapIntensity,this.aoMap=e.aoMap,this.aoMapIntensity=e.aoMapIntensity,this.specularMap=e.specularMap,this.alphaMap=e.alphaMap,this.envMap=e.envMap,this.envMapRotation.copy(e.envMapRotation),this.combine=e.combine,this.reflectivity=e.reflectivity,this.refractionRatio=e.refractionRatio,this.wireframe=e.wireframe,this.wireframeLinewidth=e.wireframeLinewidth,this.wireframeLinecap=e.wireframeLinecap,this.wireframeLinejoin=e.wireframeLinejoin,this.fog=e.fog,this}}const wt=new N,Hs=new ze;let Ud=0;class Wt{constructor(e,t,n=!1){if(Array.isArray(e))throw new TypeError("THREE.BufferAttribute: array should be a Typed Array.");this.isBufferAttribute=!0,Object.defineProperty(this,"id",{value:Ud++}),this.name="",this.array=e,this.itemSize=t,this.count=e!==void 0?e.length/t:0,this.normalized=n,this.usage=ol,this.updateRanges=[],this.gpuType=Cn,this.version=0}onUploadCallback(){}set needsUpdate(e){e===!0&&this.version++}setUsage(e){return this.usage=e,this}addUpdateRange(e,t){this.updateRanges.push({start:e,count:t})}clearUpdateRanges(){this.updateRanges.length=0}copy(e){return this.name=e.name,this.array=new e.array.constructor(e.array),this.itemSize=e.itemSize,this.count=e.count,this.normalized=e.normalized,this.usage=e.usage,this.gpuType=e.gpuType,this}copyAt(e,t,n){e*=this.itemSize,n*=t.itemSize;for(let s=0,r=this.itemSize;s<r;s++)this.array[e+s]=t.array[n+s];return this}copyArray(e){return this.array.set(e),this}applyMatrix3(e){if(this.itemSize===2)for(let t=0,n=this.count;t<n;t++)Hs.fromBufferAttribute(this,t),Hs.applyMatrix3(e),this.setXY(t,Hs.x,Hs.y);else if(this.itemSize===3)for(let t=0,n=this.count;t<n;t++)wt.fromBufferAttribute(this,t),wt.applyMatrix3(e),this.setXYZ(t,wt.x,wt.y,wt.z);return this}applyMatrix4(e){for(let t=0,n=this.count;t<n;t++)wt.fromBufferAttribute(this,t),wt.applyMatrix4(e),this.setXYZ(t,wt.x,wt.y,wt.z);return this}applyNormalMatrix(e){for(let t=0,n=this.count;t<n;t++)wt.fromBufferAttribute(this,t),wt.applyNormalMatrix(e),this.setXYZ(t,wt.x,wt.y,wt.z);return this}transformDirection(e){for(let t=0,n=this.count;t<n;t++)wt.fromBufferAttribute(this,t),wt.transformDirection(e),this.setXYZ(t,wt.x,wt.y,wt.z);return this}set(e,t=0){return this.array.set(e,t),this}getComponent(e,t){let n=this.array[e*this.itemSize+t];return this.normalized&&(n=es(n,this.array)),n}setComponent(e,t,n){return this.normalized&&(n=Vt(n,this.array)),this.array[e*this.itemSize+t]=n,this}getX(e){let t=this.array[e*this.itemSize];return this.normalized&&(t=es(t,this.array)),t}setX(e,t){return this.normalized&&(t=Vt(t,this.array)),this.array[e*this.itemSize]=t,this}getY(e){let t=this.array[e*this.itemSize+1];return this.normalized&&(t=es(t,this.array)),t}setY(e,t){return this.normalized&&(t=Vt(t,this.array)),this.array[e*this.itemSize+1]=t,this}getZ(e){let t=this.array[e*this.itemSize+2];return this.normalized&&(t=es(t,this.array)),t}setZ(e,t){return this.normalized&&(t=Vt(t,this.array)),this.array[e*this.itemSize+2]=t,this}getW(e){let t=this.array[e*this.itemSize+3];return this.normalized&&(t=es(t,this.array)),t}setW(e,t){return this.normalized&&(t=Vt(t,this.array)),this.array[e*this.itemSize+3]=t,this}setXY(e,t,n){return e*=this.itemSize,this.normalized&&(t=Vt(t,this.array),n=Vt(n,this.array)),this.array[e+0]=t,this.array[e+1]=n,this}setXYZ(e,t,n,s){return e*=this.itemSize,this.normalized&&(t=Vt(t,this.array),n=Vt(n,this.array),s=Vt(s,this.array)),this.array[e+0]=t,this.array[e+1]=n,this.array[e+2]=s,this}setXYZW(e,t,n,s,r){return e*=this.itemSize,this.normalized&&(t=Vt(t,this.array),n=Vt(n,this.array),s=Vt(s,this.array),r=Vt(r,this.array)),this.array[e+0]=t,this.array[e+1]=n,this.array[e+2]=s,this.array[e+3]=r,this}onUpload(e){return this.onUploadCallback=e,this}clone(){return new this.constructor(this.array,this.itemSize).copy(this)}toJSON(){const e={itemSize:this.itemSize,type:this.array.constructor.name,array:Array.from(this.array),normalized:this.normalized};return this.name!==""&&(e.name=this.name),this.usage!==ol&&(e.usage=this.usage),e}}class Yc extends Wt{constructor(e,t,n){super(new Uint16Array(e),t,n)}}class jc extends Wt{constructor(e,t,n){super(new Uint32Array(e),t,n)}}class Pt extends Wt{constructor(e,t,n){super(new Float32Array(e),t,n)}}let Nd=0;const nn=new pt,aa=new Et,Pi=new N,Zt=new Es,ss=new Es,Ct=new N;class Dt extends gi{constructor(){super(),this.isBufferGeometry=!0,Object.defineProperty(this,"id",{value:Nd++}),this.uuid=bs(),this.name="",this.type="BufferGeometry",this.index=null,this.indirect=null,this.attributes={},this.morphAttributes={},this.morphTargetsRelative=!1,this.groups=[],this.boundingBox=null,this.boundingSphere=null,this.drawRange={start:0,count:1/0},this.userData={}}getIndex(){return this.index}setIndex(e){return Array.isArray(e)?this.index=new($c(e)?jc:Yc)(e,1):this.index=e,this}setIndirect(e){return this.indirect=e,this}getIndirect(){return this.indirect}getAttribute(e){return this.attributes[e]}setAttribute(e,t){return this.attributes[e]=t,this}deleteAttribute(e){return delete this.attributes[e],this}hasAttribute(e){return this.attributes[e]!==void 0}addGroup(e,t,n=0){this.groups.push({start:e,count:t,materialIndex:n})}clearGroups(){this.groups=[]}setDrawRange(e,t){this.drawRange.start=e,this.drawRange.count=t}applyMatrix4(e){const t=this.attributes.position;t!==void 0&&(t.applyMatrix4(e),t.needsUpdate=!0);const n=this.attributes.normal;if(n!==void 0){const r=new $e().getNormalMatrix(e);n.applyNormalMatrix(r),n.needsUpdate=!0}const s=this.attributes.tangent;return s!==void 0&&(s.transformDirection(e),s.needsUpdate=!0),this.boundingBox!==null&&this.computeBoundingBox(),this.boundingSphere!==null&&this.computeBoundingSphere(),this}applyQuaternion(e){return nn.makeRotationFromQuaternion(e),this.applyMatrix4(nn),this}rotateX(e){return nn.makeRotationX(e),this.applyMatrix4(nn),this}rotateY(e){return nn.makeRotationY(e),this.applyMatrix4(nn),this}rotateZ(e){return nn.makeRotationZ(e),this.applyMatrix4(nn),this}translate(e,t,n){return nn.makeTranslation(e,t,n),this.applyMatrix4(nn),this}scale(e,t,n){return nn.makeScale(e,t,n),this.applyMatrix4(nn),this}lookAt(e){return aa.lookAt(e),aa.updateMatrix(),this.applyMatrix4(aa.matrix),this}center(){return this.computeBoundingBox(),this.boundingBox.getCenter(Pi).negate(),this.translate(Pi.x,Pi.y,Pi.z),this}setFromPoints(e){const t=this.getAttribute("position");if(t===void 0){const n=[];for(let s=0,r=e.length;s<r;s++){const a=e[s];n.push(a.x,a.y,a.z||0)}this.setAttribute("position",new Pt(n,3))}else{const n=Math.min(e.length,t.count);for(let s=0;s<n;s++){const r=e[s];t.setXYZ(s,r.x,r.y,r.z||0)}e.length>t.count&&console.warn("THREE.BufferGeometry: Buffer size too small for points data. Use .dispose() and create a new geometry."),t.needsUpdate=!0}return this}computeBoundingBox(){this.boundingBox===null&&(this.boundingBox=new Es);const e=this.attributes.position,t=this.morphAttributes.position;if(e&&e.isGLBufferAttribute){console.error("THREE.BufferGeometry.computeBoundingBox(): GLBufferAttribute requires a manual bounding box.",this),this.boundingBox.set(new N(-1/0,-1/0,-1/0),new N(1/0,1/0,1/0));return}if(e!==void 0){if(this.boundingBox.setFromBufferAttribute(e),t)for(let n=0,s=t.length;n<s;n++){const r=t[n];Zt.setFromBufferAttribute(r),this.morphTargetsRelative?(Ct.addVectors(this.boundingBox.min,Zt.min),this.boundingBox.expandByPoint(Ct),Ct.addVectors(this.boundingBox.max,Zt.max),this.boundingBox.expandByPoint(Ct)):(this.boundingBox.expandByPoint(Zt.min),this.boundingBox.expandByPoint(Zt.max))}}else this.boundingBox.makeEmpty();(isNaN(this.boundingBox.min.x)||isNaN(this.boundingBox.min.y)||isNaN(this.boundingBox.min.z))&&console.error('THREE.BufferGeometry.computeBoundingBox(): Computed min/max have NaN values. The "position" attribute is likely to have NaN values.',this)}computeBoundingSphere(){this.boundingSphere===null&&(this.boundingSphere=new ji);const e=this.attributes.position,t=this.morphAttributes.position;if(e&&e.isGLBufferAttribute){console.error("THREE.BufferGeometry.computeBoundingSphere(): GLBufferAttribute requires a manual bounding sphere.",this),this.boundingSphere.set(new N,1/0);return}if(e){const n=this.boundingSphere.center;if(Zt.setFromBufferAttribute(e),t)for(let r=0,a=t.length;r<a;r++){const o=t[r];ss.setFromBufferAttribute(o),this.morphTargetsRelative?(Ct.addVectors(Zt.min,ss.min),Zt.expandByPoint(Ct),Ct.addVectors(Zt.max,ss.max),Zt.expandByPoint(Ct)):(Zt.expandByPoint(ss.min),Zt.expandByPoint(ss.max))}Zt.getCenter(n);let s=0;for(let r=0,a=e.count;r<a;r++)Ct.fromBufferAttribute(e,r),s=Math.max(s,n.distanceToSquared(Ct));if(t)for(let r=0,a=t.length;r<a;r++){const o=t[r],l=this.morphTargetsRelative;for(let c=0,h=o.count;c<h;c++)Ct.fromBufferAttribute(o,c),l&&(Pi.fromBufferAttribute(e,c),Ct.add(Pi)),s=Math.max(s,n.distanceToSquared(Ct))}this.boundingSphere.radius=Math.sqrt(s),isNaN(this.boundingSphere.radius)&&console.error('THREE.BufferGeometry.computeBoundingSphere(): Computed radius is NaN. The "position" attribute is likely to have NaN values.',this)}}computeTangents(){const e=this.index,t=this.attributes;if(e===null||t.position===void 0||t.normal===void 0||t.uv===void 0){console.error("THREE.BufferGeometry: .computeTangents() failed. Missing required attributes (index, position, normal or uv)");return}const n=t.position,s=t.normal,r=t.uv;this.hasAttribute("tangent")===!1&&this.setAttribute("tangent",new Wt(new Float32Array(4*n.count),4));const a=this.getAttribute("tangent"),o=[],l=[];for(let F=0;F<n.count;F++)o[F]=new N,l[F]=new N;const c=new N,h=new N,u=new N,f=new ze,p=new ze,g=new ze,x=new N,m=new N;function d(F,y,M){c.fromBufferAttribute(n,F),h.fromBufferAttribute(n,y),u.fromBufferAttribute(n,M),f.fromBufferAttribute(r,F),p.fromBufferAttribute(r,y),g.fromBufferAttribute(r,M),h.sub(c),u.sub(c),p.sub(f),g.sub(f);const b=1/(p.x*g.y-g.x*p.y);isFinite(b)&&(x.copy(h).multiplyScalar(g.y).addScaledVector(u,-p.y).multiplyScalar(b),m.copy(u).multiplyScalar(p.x).addScaledVector(h,-g.x).multiplyScalar(b),o[F].add(x),o[y].add(x),o[M].add(x),l[F].add(m),l[y].add(m),l[M].add(m))}let A=this.groups;A.length===0&&(A=[{start:0,count:e.count}]);for(let F=0,y=A.length;F<y;++F){const M=A[F],b=M.start,P=M.count;for(let z=b,I=b+P;z<I;z+=3)d(e.getX(z+0),e.getX(z+1),e.getX(z+2))}const T=new N,w=new N,C=new N,D=new N;function L(F){C.fromBufferAttribute(s,F),D.copy(C);const y=o[F];T.copy(y),T.sub(C.multiplyScalar(C.dot(y))).normalize(),w.crossVectors(D,y);const b=w.dot(l[F])<0?-1:1;a.setXYZW(F,T.x,T.y,T.z,b)}for(let F=0,y=A.length;F<y;++F){const M=A[F],b=M.start,P=M.count;for(let z=b,I=b+P;z<I;z+=3)L(e.getX(z+0)),L(e.getX(z+1)),L(e.getX(z+2))}}computeVertexNormals(){const e=this.index,t=this.getAttribute("position");if(t!==void 0){let n=this.getAttribute("normal");if(n===void 0)n=new Wt(new Float32Array(t.count*3),3),this.setAttribute("normal",n);else for(let f=0,p=n.count;f<p;f++)n.setXYZ(f,0,0,0);const s=new N,r=new N,a=new N,o=new N,l=new N,c=new N,h=new N,u=new N;if(e)for(let f=0,p=e.count;f<p;f+=3){const g=e.getX(f+0),x=e.getX(f+1),m=e.getX(f+2);s.fromBufferAttribute(t,g),r.fromBufferAttribute(t,x),a.fromBufferAttribute(t,m),h.subVectors(a,r),u.subVectors(s,r),h.cross(u),o.fromBufferAttribute(n,g),l.fromBufferAttribute(n,x),c.fromBufferAttribute(n,m),o.add(h),l.add(h),c.add(h),n.setXYZ(g,o.x,o.y,o.z),n.setXYZ(x,l.x,l.y,l.z),n.setXYZ(m,c.x,c.y,c.z)}else for(let f=0,p=t.count;f<p;f+=3)s.fromBufferAttribute(t,f+0),r.fromBufferAttribute(t,f+1),a.fromBufferAttribute(t,f+2),h.subVectors(a,r),u.subVectors(s,r),h.cross(u),n.setXYZ(f+0,h.x,h.y,h.z),n.setXYZ(f+1,h.x,h.y,h.z),n.setXYZ(f+2,h.x,h.y,h.z);this.normalizeNormals(),n.needsUpdate=!0}}normalizeNormals(){const e=this.attributes.normal;for(let t=0,n=e.count;t<n;t++)Ct.fromBufferAttribute(e,t),Ct.normalize(),e.setXYZ(t,Ct.x,Ct.y,Ct.z)}toNonIndexed(){function e(o,l){const c=o.array,h=o.itemSize,u=o.normalized,f=new c.constructor(l.length*h);let p=0,g=0;for(let x=0,m=l.length;x<m;x++){o.isInterleavedBufferAttribute?p=l[x]*o.data.stride+o.offset:p=l[x]*h;for(let d=0;d<h;d++)f[g++]=c[p++]}return new Wt(f,h,u)}if(this.index===null)return console.warn("THREE.BufferGeometry.toNonIndexed(): BufferGeometry is already non-indexed."),this;const t=new Dt,n=this.index.array,s=this.attributes;for(const o in s){const l=s[o],c=e(l,n);t.setAttribute(o,c)}const r=this.morphAttributes;for(const o in r){const l=[],c=r[o];for(let h=0,u=c.length;h<u;h++){const f=c[h],p=e(f,n);l.push(p)}t.morphAttributes[o]=l}t.morphTargetsRelative=this.morphTargetsRelative;const a=this.groups;for(let o=0,l=a.length;o<l;o++){const c=a[o];t.addGroup(c.start,c.count,c.materialIndex)}return t}toJSON(){const e={metadata:{version:4.7,type:"BufferGeometry",generator:"BufferGeometry.toJSON"}};if(e.uuid=this.uuid,e.type=this.type,this.name!==""&&(e.name=this.name),Object.keys(this.userData).length>0&&(e.userData=this.userData),this.parameters!==void 0){const l=this.parameters;for(const c in l)l[c]!==void 0&&(e[c]=l[c]);return e}e.data={attributes:{}};const t=this.index;t!==null&&(e.data.index={type:t.array.constructor.name,array:Array.prototype.slice.call(t.array)});const n=this.attributes;for(const l in n){const c=n[l];e.data.attributes[l]=c.toJSON(e.data)}const s={};let r=!1;for(const l in this.morphAttributes){const c=this.morphAttributes[l],h=[];for(let u=0,f=c.length;u<f;u++){const p=c[u];h.push(p.toJSON(e.data))}h.length>0&&(s[l]=h,r=!0)}r&&(e.data.morphAttributes=s,e.data.morphTargetsRelative=this.morphTargetsRelative);const a=this.groups;a.length>0&&(e.data.groups=JSON.parse(JSON.stringify(a)));const o=this.boundingSphere;return o!==null&&(e.data.boundingSphere=o.toJSON()),e}clone(){return new this.constructor().copy(this)}copy(e){this.index=null,this.attributes={},this.morphAttributes={},this.groups=[],this.boundingBox=null,this.boundingSphere=null;const t={};this.name=e.name;const n=e.index;n!==null&&this.setIndex(n.clone());const s=e.attributes;for(const c in s){const h=s[c];this.setAttribute(c,h.clone(t))}const r=e.morphAttributes;for(const c in r){const h=[],u=r[c];for(let f=0,p=u.length;f<p;f++)h.push(u[f].clone(t));this.morphAttributes[c]=h}this.morphTargetsRelative=e.morphTargetsRelative;const a=e.groups;for(let c=0,h=a.length;c<h;c++){const u=a[c];this.addGroup(u.start,u.count,u.materialIndex)}const o=e.boundingBox;o!==null&&(this.boundingBox=o.clone());const l=e.boundingSphere;return l!==null&&(this.boundingSphere=l.clone()),this.drawRange.start=e.drawRange.start,this.drawRange.count=e.drawRange.count,this.userData=e.userData,this}dispose(){this.dispatchEvent({type:"dispose"})}}const Ml=new pt,ni=new Ts,Vs=new ji,Sl=new N,Gs=new N,Ws=new N,$s=new N,oa=new N,Xs=new N,wl=new N,qs=new N;class Ot extends Et{constructor(e=new Dt,t=new ys){super(),this.isMesh=!0,this.type="Mesh",this.geometry=e,this.material=t,this.morphTargetDictionary=void 0,this.morphTargetInfluences=void 0,this.count=1,this.updateMorphTargets()}copy(e,t){return super.copy(e,t),e.morphTargetInfluences!==void 0&&(this.morphTargetInfluences=e.morphTargetInfluences.slice()),e.morphTargetDictionary!==void 0&&(this.morphTargetDictionary=Object.assign({},e.morphTargetDictionary)),this.material=Array.isArray(e.material)?e.material.slice():e.material,this.geometry=e.geometry,this}updateMorphTargets(){const t=this.geometry.morphAttributes,n=Object.keys(t);if(n.length>0){const s=t[n[0]];if(s!==void 0){this.morphTargetInfluences=[],this.morphTargetDictionary={};for(let r=0,a=s.length;r<a;r++){const o=s[r].name||String(r);this.morphTargetInfluences.push(0),this.morphTargetDictionary[o]=r}}}}getVertexPosition(e,t){const n=this.geometry,s=n.attributes.position,r=n.morphAttributes.position,a=n.morphTargetsRelative;t.fromBufferAttribute(s,e);const o=this.morphTargetInfluences;if(r&&o){Xs.set(0,0,0);for(let l=0,c=r.length;l<c;l++){const h=o[l],u=r[l];h!==0&&(oa.fromBufferAttribute(u,e),a?Xs.addScaledVector(oa,h):Xs.addScaledVector(oa.sub(t),h))}t.add(Xs)}return t}raycast(e,t){const n=this.geometry,s=this.material,r=this.matrixWorld;s!==void 0&&(n.boundingSphere===null&&n.computeBoundingSphere(),Vs.copy(n.boundingSphere),Vs.applyMatrix4(r),ni.copy(e.ray).recast(e.near),!(Vs.containsPoint(ni.origin)===!1&&(ni.intersectSphere(Vs,Sl)===null||ni.origin.distanceToSquared(Sl)>(e.far-e.near)**2))&&(Ml.copy(r).invert(),ni.copy(e.ray).applyMatrix4(Ml),!(n.boundingBox!==null&&ni.intersectsBox(n.boundingBox)===!1)&&this._computeIntersections(e,t,ni)))}_computeIntersections(e,t,n){let s;const r=this.geometry,a=this.material,o=r.index,l=r.attributes.position,c=r.attributes.uv,h=r.attributes.uv1,u=r.attributes.normal,f=r.groups,p=r.drawRange;if(o!==null)if(Array.isArray(a))for(let g=0,x=f.length;g<x;g++){const m=f[g],d=a[m.materialIndex],A=Math.max(m.start,p.start),T=Math.min(o.count,Math.min(m.start+m.count,p.start+p.count));for(let w=A,C=T;w<C;w+=3){const D=o.getX(w),L=o.getX(w+1),F=o.getX(w+2);s=Ys(this,d,e,n,c,h,u,D,L,F),s&&(s.faceIndex=Math.floor(w/3),s.face.materialIndex=m.materialIndex,t.push(s))}}else{const g=Math.max(0,p.start),x=Math.min(o.count,p.start+p.count);for(let m=g,d=x;m<d;m+=3){const A=o.getX(m),T=o.getX(m+1),w=o.getX(m+2);s=Ys(this,a,e,n,c,h,u,A,T,w),s&&(s.faceIndex=Math.floor(m/3),t.push(s))}}else if(l!==void 0)if(Array.isArray(a))for(let g=0,x=f.length;g<x;g++){const m=f[g],d=a[m.materialIndex],A=Math.max(m.start,p.start),T=Math.min(l.count,Math.min(m.start+m.count,p.start+p.count));for(let w=A,C=T;w<C;w+=3){const D=w,L=w+1,F=w+2;s=Ys(this,d,e,n,c,h,u,D,L,F),s&&(s.faceIndex=Math.floor(w/3),s.face.materialIndex=m.materialIndex,t.push(s))}}else{const g=Math.max(0,p.start),x=Math.min(l.count,p.start+p.count);for(let m=g,d=x;m<d;m+=3){const A=m,T=m+1,w=m+2;s=Ys(this,a,e,n,c,h,u,A,T,w),s&&(s.faceIndex=Math.floor(m/3),t.push(s))}}}}function Fd(i,e,t,n,s,r,a,o){let l;if(e.side===$t?l=n.intersectTriangle(a,r,s,!0,o):l=n.intersectTriangle(s,r,a,e.side===jn,o),l===null)return null;qs.copy(o),qs.applyMatrix4(i.matrixWorld);const c=t.ray.origin.distanceTo(qs);return c<t.near||c>t.far?null:{distance:c,point:qs.clone(),object:i}}function Ys(i,e,t,n,s,r,a,o,l,c){i.getVertexPosition(o,Gs),i.getVertexPosition(l,Ws),i.getVertexPosition(c,$s);const h=Fd(i,e,t,n,Gs,Ws,$s,wl);if(h){const u=new N;un.getBarycoord(wl,Gs,Ws,$s,u),s&&(h.uv=un.getInterpolatedAttribute(s,o,l,c,u,new ze)),r&&(h.uv1=un.getInterpolatedAttribute(r,o,l,c,u,new ze)),a&&(h.normal=un.getInterpolatedAttribute(a,o,l,c,u,new N),h.normal.dot(n.direction)>0&&h.normal.multiplyScalar(-1));const f={a:o,b:l,c,normal:new N,materialIndex:0};un.getNormal(Gs,Ws,$s,f.normal),h.face=f,h.barycoord=u}return h}class Ki extends Dt{constructor(e=1,t=1,n=1,s=1,r=1,a=1){super(),this.type="BoxGeometry",this.parameters={width:e,height:t,depth:n,widthSegments:s,heightSegments:r,depthSegments:a};const o=this;s=Math.floor(s),r=Math.floor(r),a=Math.floor(a);const l=[],c=[],h=[],u=[];let f=0,p=0;g("z","y","x",-1,-1,n,t,e,a,r,0),g("z","y","x",1,-1,n,t,-e,a,r,1),g("x","z","y",1,1,e,n,t,s,a,2),g("x","z","y",1,-1,e,n,-t,s,a,3),g("x","y","z",1,-1,e,t,n,s,r,4),g("x","y","z",-1,-1,e,t,-n,s,r,5),this.setIndex(l),this.setAttribute("position",new Pt(c,3)),this.setAttribute("normal",new Pt(h,3)),this.setAttribute("uv",new Pt(u,2));function g(x,m,d,A,T,w,C,D,L,F,y){const M=w/L,b=C/F,P=w/2,z=C/2,I=D/2,k=L+1,$=F+1;let ee=0,Y=0;const W=new N;for(let Q=0;Q<$;Q++){const ce=Q*b-z;for(let be=0;be<k;be++){const Ie=be*M-P;W[x]=Ie*A,W[m]=ce*T,W[d]=I,c.push(W.x,W.y,W.z),W[x]=0,W[m]=0,W[d]=D>0?1:-1,h.push(W.x,W.y,W.z),u.push(be/L),u.push(1-Q/F),ee+=1}}for(let Q=0;Q<F;Q++)for(let ce=0;ce<L;ce++){const be=f+ce+k*Q,Ie=f+ce+k*(Q+1),G=f+(ce+1)+k*(Q+1),ie=f+(ce+1)+k*Q;l.push(be,Ie,ie),l.push(Ie,G,ie),Y+=6}o.addGroup(p,Y,y),p+=Y,f+=ee}}copy(e){return super.copy(e),this.parameters=Object.assign({},e.parameters),this}static fromJSON(e){return new Ki(e.width,e.height,e.depth,e.widthSegments,e.heightSegments,e.depthSegments)}}function qi(i){const e={};for(const t in i){e[t]={};for(const n in i[t]){const s=i[t][n];s&&(s.isColor||s.isMatrix3||s.isMatrix4||s.isVector2||s.isVector3||s.isVector4||s.isTexture||s.isQuaternion)?s.isRenderTargetTexture?(console.warn("UniformsUtils: Textures of render targets cannot be cloned via cloneUniforms() or mergeUniforms()."),e[t][n]=null):e[t][n]=s.clone():Array.isArray(s)?e[t][n]=s.slice():e[t][n]=s}}return e}function Bt(i){const e={};for(let t=0;t<i.length;t++){const n=qi(i[t]);for(const s in n)e[s]=n[s]}return e}function Od(i){const e=[];for(let t=0;t<i.length;t++)e.push(i[t].clone());return e}function Kc(i){const e=i.getRenderTarget();return e===null?i.outputColorSpace:e.isXRRenderTarget===!0?e.texture.colorSpace:et.workingColorSpace}const kd={clone:qi,merge:Bt};var Bd=`void main() {
	gl_Position = projectionMatrix * modelViewMatrix * vec4( position, 1.0 );
}`,zd=`void main() {
	gl_FragColor = vec4( 1.0, 0.0, 0.0, 1.0 );
}`;class Kn extends _i{constructor(e){super(),this.isShaderMaterial=!0,this.type="ShaderMaterial",this.defines={},this.uniforms={},this.uniformsGroups=[],this.vertexShader=Bd,this.fragmentShader=zd,this.linewidth=1,this.wireframe=!1,this.wireframeLinewidth=1,this.fog=!1,this.lights=!1,this.clipping=!1,this.forceSinglePass=!0,this.extensions={clipCullDistance:!1,multiDraw:!1},this.defaultAttributeValues={color:[1,1,1],uv:[0,0],uv1:[0,0]},this.index0AttributeName=void 0,this.uniformsNeedUpdate=!1,this.glslVersion=null,e!==void 0&&this.setValues(e)}copy(e){return super.copy(e),this.fragmentShader=e.fragmentShader,this.vertexShader=e.vertexShader,this.uniforms=qi(e.uniforms),this.uniformsGroups=Od(e.uniformsGroups),this.defines=Object.assign({},e.defines),this.wireframe=e.wireframe,this.wireframeLinewidth=e.wireframeLinewidth,this.fog=e.fog,this.lights=e.lights,this.clipping=e.clipping,this.extensions=Object.assign({},e.extensions),this.glslVersion=e.glslVersion,this}toJSON(e){const t=super.toJSON(e);t.glslVersion=this.glslVersion,t.uniforms={};for(const s in this.uniforms){const a=this.uniforms[s].value;a&&a.isTexture?t.uniforms[s]={type:"t",value:a.toJSON(e).uuid}:a&&a.isColor?t.uniforms[s]={type:"c",value:a.getHex()}:a&&a.isVector2?t.uniforms[s]={type:"v2",value:a.toArray()}:a&&a.isVector3?t.uniforms[s]={type:"v3",value:a.toArray()}:a&&a.isVector4?t.uniforms[s]={type:"v4",value:a.toArray()}:a&&a.isMatrix3?t.uniforms[s]={type:"m3",value:a.toArray()}:a&&a.isMatrix4?t.uniforms[s]={type:"m4",value:a.toArray()}:t.uniforms[s]={value:a}}Object.keys(this.defines).length>0&&(t.defines=this.defines),t.vertexShader=this.vertexShader,t.fragmentShader=this.fragmentShader,t.lights=this.lights,t.clipping=this.clipping;const n={};for(const s in this.extensions)this.extensions[s]===!0&&(n[s]=!0);return Object.keys(n).length>0&&(t.extensions=n),t}}class Zc extends Et{constructor(){super(),this.isCamera=!0,this.type="Camera",this.matrixWorldInverse=new pt,this.projectionMatrix=new pt,this.projectionMatrixInverse=new pt,this.coordinateSystem=_n,this._reversedDepth=!1}get reversedDepth(){return this._reversedDepth}copy(e,t){return super.copy(e,t),this.matrixWorldInverse.copy(e.matrixWorldInverse),this.projectionMatrix.copy(e.projectionMatrix),this.projectionMatrixInverse.copy(e.projectionMatrixInverse),this.coordinateSystem=e.coordinateSystem,this}getWorldDirection(e){return super.getWorldDirection(e).negate()}updateMatrixWorld(e){super.updateMatrixWorld(e),this.matrixWorldInverse.copy(this.matrixWorld).invert()}updateWorldMatrix(e,t){super.updateWorldMatrix(e,t),this.matrixWorldInverse.copy(this.matrixWorld).invert()}clone(){return new this.constructor().copy(this)}}const Hn=new N,bl=new ze,El=new ze;class rn extends Zc{constructor(e=50,t=1,n=.1,s=2e3){super(),this.isPerspectiveCamera=!0,this.type="PerspectiveCamera",this.fov=e,this.zoom=1,this.near=n,this.far=s,this.focus=10,this.aspect=t,this.view=null,this.filmGauge=35,this.filmOffset=0,this.updateProjectionMatrix()}copy(e,t){return super.copy(e,t),this.fov=e.fov,this.zoom=e.zoom,this.near=e.near,this.far=e.far,this.focus=e.focus,this.aspect=e.aspect,this.view=e.view===null?null:Object.assign({},e.view),this.filmGauge=e.filmGauge,this.filmOffset=e.filmOffset,this}setFocalLength(e){const t=.5*this.getFilmHeight()/e;this.fov=fo*2*Math.atan(t),this.updateProjectionMatrix()}getFocalLength(){const e=Math.tan(hr*.5*this.fov);return .5*this.getFilmHeight()/e}getEffectiveFOV(){return fo*2*Math.atan(Math.tan(hr*.5*this.fov)/this.zoom)}getFilmWidth(){return this.filmGauge*Math.min(this.aspect,1)}getFilmHeight(){return this.filmGauge/Math.max(this.aspect,1)}getViewBounds(e,t,n){Hn.set(-1,-1,.5).applyMatrix4(this.projectionMatrixInverse),t.set(Hn.x,Hn.y).multiplyScalar(-e/Hn.z),Hn.set(1,1,.5).applyMatrix4(this.projectionMatrixInverse),n.set(Hn.x,Hn.y).multiplyScalar(-e/Hn.z)}getViewSize(e,t){return this.getViewBounds(e,bl,El),t.subVectors(El,bl)}setViewOffset(e,t,n,s,r,a){this.aspect=e/t,this.view===null&&(this.view={enabled:!0,fullWidth:1,fullHeight:1,offsetX:0,offsetY:0,width:1,height:1}),this.view.enabled=!0,this.view.fullWidth=e,this.view.fullHeight=t,this.view.offsetX=n,this.view.offsetY=s,this.view.width=r,this.view.height=a,this.updateProjectionMatrix()}clearViewOffset(){this.view!==null&&(this.view.enabled=!1),this.updateProjectionMatrix()}updateProjectionMatrix(){const e=this.near;let t=e*Math.tan(hr*.5*this.fov)/this.zoom,n=2*t,s=this.aspect*n,r=-.5*s;const a=this.view;if(this.view!==null&&this.view.enabled){const l=a.fullWidth,c=a.fullHeight;r+=a.offsetX*s/l,t-=a.offsetY*n/c,s*=a.width/l,n*=a.height/c}const o=this.filmOffset;o!==0&&(r+=e*o/this.getFilmWidth()),this.projectionMatrix.makePerspective(r,r+s,t,t-n,e,this.far,this.coordinateSystem,this.reversedDepth),this.projectionMatrixInverse.copy(this.projectionMatrix).invert()}toJSON(e){const t=super.toJSON(e);return t.object.fov=this.fov,t.object.zoom=this.zoom,t.object.near=this.near,t.object.far=this.far,t.object.focus=this.focus,t.object.aspect=this.aspect,this.view!==null&&(t.object.view=Object.assign({},this.view)),t.object.filmGauge=this.filmGauge,t.object.filmOffset=this.filmOffset,t}}const Di=-90,Li=1;class Hd extends Et{constructor(e,t,n){super(),this.type="CubeCamera",this.renderTarget=n,this.coordinateSystem=null,this.activeMipmapLevel=0;const s=new rn(Di,Li,e,t);s.layers=this.layers,this.add(s);const r=new rn(Di,Li,e,t);r.layers=this.layers,this.add(r);const a=new rn(Di,Li,e,t);a.layers=this.layers,this.add(a);const o=new rn(Di,Li,e,t);o.layers=this.layers,this.add(o);const l=new rn(Di,Li,e,t);l.layers=this.layers,this.add(l);const c=new rn(Di,Li,e,t);c.layers=this.layers,this.add(c)}updateCoordinateSystem(){const e=this.coordinateSystem,t=this.children.concat(),[n,s,r,a,o,l]=t;for(const c of t)this.remove(c);if(e===_n)n.up.set(0,1,0),n.lookAt(1,0,0),s.up.set(0,1,0),s.lookAt(-1,0,0),r.up.set(0,0,-1),r.lookAt(0,1,0),a.up.set(0,0,1),a.lookAt(0,-1,0),o.up.set(0,1,0),o.lookAt(0,0,1),l.up.set(0,1,0),l.lookAt(0,0,-1);else if(e===xr)n.up.set(0,-1,0),n.lookAt(-1,0,0),s.up.set(0,-1,0),s.lookAt(1,0,0),r.up.set(0,0,1),r.lookAt(0,1,0),a.up.set(0,0,-1),a.lookAt(0,-1,0),o.up.set(0,-1,0),o.lookAt(0,0,1),l.up.set(0,-1,0),l.lookAt(0,0,-1);else throw new Error("THREE.CubeCamera.updateCoordinateSystem(): Invalid coordinate system: "+e);for(const c of t)this.add(c),c.updateMatrixWorld()}update(e,t){this.parent===null&&this.updateMatrixWorld();const{renderTarget:n,activeMipmapLevel:s}=this;this.coordinateSystem!==e.coordinateSystem&&(this.coordinateSystem=e.coordinateSystem,this.updateCoordinateSystem());const[r,a,o,l,c,h]=this.children,u=e.getRenderTarget(),f=e.getActiveCubeFace(),p=e.getActiveMipmapLevel(),g=e.xr.enabled;e.xr.enabled=!1;const x=n.texture.generateMipmaps;n.texture.generateMipmaps=!1,e.setRenderTarget(n,0,s),e.render(t,r),e.setRenderTarget(n,1,s),e.render(t,a),e.setRenderTarget(n,2,s),e.render(t,o),e.setRenderTarget(n,3,s),e.render(t,l),e.setRenderTarget(n,4,s),e.render(t,c),n.texture.generateMipmaps=x,e.setRenderTarget(n,5,s),e.render(t,h),e.setRenderTarget(u,f,p),e.xr.enabled=g,n.texture.needsPMREMUpdate=!0}}class Jc extends Xt{constructor(e=[],t=Wi,n,s,r,a,o,l,c,h){super(e,t,n,s,r,a,o,l,c,h),this.isCubeTexture=!0,this.flipY=!1}get images(){return this.image}set images(e){this.image=e}}class Vd extends pi{constructor(e=1,t={}){super(e,e,t),this.isWebGLCubeRenderTarget=!0;const n={width:e,height:e,depth:1},s=[n,n,n,n,n,n];this.texture=new Jc(s),this._setTextureOptions(t),this.texture.isRenderTargetTexture=!0}fromEquirectangularTexture(e,t){this.texture.type=t.type,this.texture.colorSpace=t.colorSpace,this.texture.generateMipmaps=t.generateMipmaps,this.texture.minFilter=t.minFilter,this.texture.magFilter=t.magFilter;const n={uniforms:{tEquirect:{value:null}},vertexShader:`

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
			`},s=new Ki(5,5,5),r=new Kn({name:"CubemapFromEquirect",uniforms:qi(n.uniforms),vertexShader:n.vertexShader,fragmentShader:n.fragmentShader,side:$t,blending:Xn});r.uniforms.tEquirect.value=t;const a=new Ot(s,r),o=t.minFilter;return t.minFilter===ui&&(t.minFilter=gn),new Hd(1,10,this).update(e,a),t.minFilter=o,a.geometry.dispose(),a.material.dispose(),this}clear(e,t=!0,n=!0,s=!0){const r=e.getRenderTarget();for(let a=0;a<6;a++)e.setRenderTarget(this,a),e.clear(t,n,s);e.setRenderTarget(r)}}class Qt extends Et{constructor(){super(),this.isGroup=!0,this.type="Group"}}const Gd={type:"move"};class la{constructor(){this._targetRay=null,this._grip=null,this._hand=null}getHandSpace(){return this._hand===null&&(this._hand=new Qt,this._hand.matrixAutoUpdate=!1,this._hand.visible=!1,this._hand.joints={},this._hand.inputState={pinching:!1}),this._hand}getTargetRaySpace(){return this._targetRay===null&&(this._targetRay=new Qt,this._targetRay.matrixAutoUpdate=!1,this._targetRay.visible=!1,this._targetRay.hasLinearVelocity=!1,this._targetRay.linearVelocity=new N,this._targetRay.hasAngularVelocity=!1,this._targetRay.angularVelocity=new N),this._targetRay}getGripSpace(){return this._grip===null&&(this._grip=new Qt,this._grip.matrixAutoUpdate=!1,this._grip.visible=!1,this._grip.hasLinearVelocity=!1,this._grip.linearVelocity=new N,this._grip.hasAngularVelocity=!1,this._grip.angularVelocity=new N),this._grip}dispatchEvent(e){return this._targetRay!==null&&this._targetRay.dispatchEvent(e),this._grip!==null&&this._grip.dispatchEvent(e),this._hand!==null&&this._hand.dispatchEvent(e),this}connect(e){if(e&&e.hand){const t=this._hand;if(t)for(const n of e.hand.values())this._getHandJoint(t,n)}return this.dispatchEvent({type:"connected",data:e}),this}disconnect(e){return this.dispatchEvent({type:"disconnected",data:e}),this._targetRay!==null&&(this._targetRay.visible=!1),this._grip!==null&&(this._grip.visible=!1),this._hand!==null&&(this._hand.visible=!1),this}update(e,t,n){let s=null,r=null,a=null;const o=this._targetRay,l=this._grip,c=this._hand;if(e&&t.session.visibilityState!=="visible-blurred"){if(c&&e.hand){a=!0;for(const x of e.hand.values()){const m=t.getJointPose(x,n),d=this._getHandJoint(c,x);m!==null&&(d.matrix.fromArray(m.transform.matrix),d.matrix.decompose(d.position,d.rotation,d.scale),d.matrixWorldNeedsUpdate=!0,d.jointRadius=m.radius),d.visible=m!==null}const h=c.joints["index-finger-tip"],u=c.joints["thumb-tip"],f=h.position.distanceTo(u.position),p=.02,g=.005;c.inputState.pinching&&f>p+g?(c.inputState.pinching=!1,this.dispatchEvent({type:"pinchend",handedness:e.handedness,target:this})):!c.inputState.pinching&&f<=p-g&&(c.inputState.pinching=!0,this.dispatchEvent({type:"pinchstart",handedness:e.handedness,target:this}))}else l!==null&&e.gripSpace&&(r=t.getPose(e.gripSpace,n),r!==null&&(l.matrix.fromArray(r.transform.matrix),l.matrix.decompose(l.position,l.rotation,l.scale),l.matrixWorldNeedsUpdate=!0,r.linearVelocity?(l.hasLinearVelocity=!0,l.linearVelocity.copy(r.linearVelocity)):l.hasLinearVelocity=!1,r.angularVelocity?(l.hasAngularVelocity=!0,l.angularVelocity.copy(r.angularVelocity)):l.hasAngularVelocity=!1));o!==null&&(s=t.getPose(e.targetRaySpace,n),s===null&&r!==null&&(s=r),s!==null&&(o.matrix.fromArray(s.transform.matrix),o.matrix.decompose(o.position,o.rotation,o.scale),o.matrixWorldNeedsUpdate=!0,s.linearVelocity?(o.hasLinearVelocity=!0,o.linearVelocity.copy(s.linearVelocity)):o.hasLinearVelocity=!1,s.angularVelocity?(o.hasAngularVelocity=!0,o.angularVelocity.copy(s.angularVelocity)):o.hasAngularVelocity=!1,this.dispatchEvent(Gd)))}return o!==null&&(o.visible=s!==null),l!==null&&(l.visible=r!==null),c!==null&&(c.visible=a!==null),this}_getHandJoint(e,t){if(e.joints[t.jointName]===void 0){const n=new Qt;n.matrixAutoUpdate=!1,n.visible=!1,e.joints[t.jointName]=n,e.add(n)}return e.joints[t.jointName]}}class Wd extends Et{constructor(){super(),this.isScene=!0,this.type="Scene",this.background=null,this.environment=null,this.fog=null,this.backgroundBlurriness=0,this.backgroundIntensity=1,this.backgroundRotation=new yn,this.environmentIntensity=1,this.environmentRotation=new yn,this.overrideMaterial=null,typeof __THREE_DEVTOOLS__<"u"&&__THREE_DEVTOOLS__.dispatchEvent(new CustomEvent("observe",{detail:this}))}copy(e,t){return super.copy(e,t),e.background!==null&&(this.background=e.background.clone()),e.environment!==null&&(this.environment=e.environment.clone()),e.fog!==null&&(this.fog=e.fog.clone()),this.backgroundBlurriness=e.backgroundBlurriness,this.backgroundIntensity=e.backgroundIntensity,this.backgroundRotation.copy(e.backgroundRotation),this.environmentIntensity=e.environmentIntensity,this.environmentRotation.copy(e.environmentRotation),e.overrideMaterial!==null&&(this.overrideMaterial=e.overrideMaterial.clone()),this.matrixAutoUpdate=e.matrixAutoUpdate,this}toJSON(e){const t=super.toJSON(e);return this.fog!==null&&(t.object.fog=this.fog.toJSON()),this.backgroundBlurriness>0&&(t.object.backgroundBlurriness=this.backgroundBlurriness),this.backgroundIntensity!==1&&(t.object.backgroundIntensity=this.backgroundIntensity),t.object.backgroundRotation=this.backgroundRotation.toArray(),this.environmentIntensity!==1&&(t.object.environmentIntensity=this.environmentIntensity),t.object.environmentRotation=this.environmentRotation.toArray(),t}}const ca=new N,$d=new N,Xd=new $e;class Vn{constructor(e=new N(1,0,0),t=0){this.isPlane=!0,this.normal=e,this.constant=t}set(e,t){return this.normal.copy(e),this.constant=t,this}setComponents(e,t,n,s){return this.normal.set(e,t,n),this.constant=s,this}setFromNormalAndCoplanarPoint(e,t){return this.normal.copy(e),this.constant=-t.dot(this.normal),this}setFromCoplanarPoints(e,t,n){const s=ca.subVectors(n,t).cross($d.subVectors(e,t)).normalize();return this.setFromNormalAndCoplanarPoint(s,e),this}copy(e){return this.normal.copy(e.normal),this.constant=e.constant,this}normalize(){const e=1/this.normal.length();return this.normal.multiplyScalar(e),this.constant*=e,this}negate(){return this.constant*=-1,this.normal.negate(),this}distanceToPoint(e){return this.normal.dot(e)+this.constant}distanceToSphere(e){return this.distanceToPoint(e.center)-e.radius}projectPoint(e,t){return t.copy(e).addScaledVector(this.normal,-this.distanceToPoint(e))}intersectLine(e,t){const n=e.delta(ca),s=this.normal.dot(n);if(s===0)return this.distanceToPoint(e.start)===0?t.copy(e.start):null;const r=-(e.start.dot(this.normal)+this.constant)/s;return r<0||r>1?null:t.copy(e.start).addScaledVector(n,r)}intersectsLine(e){const t=this.distanceToPoint(e.start),n=this.distanceToPoint(e.end);return t<0&&n>0||n<0&&t>0}intersectsBox(e){return e.intersectsPlane(this)}intersectsSphere(e){return e.intersectsPlane(this)}coplanarPoint(e){return e.copy(this.normal).multiplyScalar(-this.constant)}applyMatrix4(e,t){const n=t||Xd.getNormalMatrix(e),s=this.coplanarPoint(ca).applyMatrix4(e),r=this.normal.applyMatrix3(n).normalize();return this.constant=-s.dot(r),this}translate(e){return this.constant-=e.dot(this.normal),this}equals(e){return e.normal.equals(this.normal)&&e.constant===this.constant}clone(){return new this.constructor().copy(this)}}const ii=new ji,qd=new ze(.5,.5),js=new N;class ko{constructor(e=new Vn,t=new Vn,n=new Vn,s=new Vn,r=new Vn,a=new Vn){this.planes=[e,t,n,s,r,a]}set(e,t,n,s,r,a){const o=this.planes;return o[0].copy(e),o[1].copy(t),o[2].copy(n),o[3].copy(s),o[4].copy(r),o[5].copy(a),this}copy(e){const t=this.planes;for(let n=0;n<6;n++)t[n].copy(e.planes[n]);return this}setFromProjectionMatrix(e,t=_n,n=!1){const s=this.planes,r=e.elements,a=r[0],o=r[1],l=r[2],c=r[3],h=r[4],u=r[5],f=r[6],p=r[7],g=r[8],x=r[9],m=r[10],d=r[11],A=r[12],T=r[13],w=r[14],C=r[15];if(s[0].setComponents(c-a,p-h,d-g,C-A).normalize(),s[1].setComponents(c+a,p+h,d+g,C+A).normalize(),s[2].setComponents(c+o,p+u,d+x,C+T).normalize(),s[3].setComponents(c-o,p-u,d-x,C-T).normalize(),n)s[4].setComponents(l,f,m,w).normalize(),s[5].setComponents(c-l,p-f,d-m,C-w).normalize();else if(s[4].setComponents(c-l,p-f,d-m,C-w).normalize(),t===_n)s[5].setComponents(c+l,p+f,d+m,C+w).normalize();else if(t===xr)s[5].setComponents(l,f,m,w).normalize();else throw new Error("THREE.Frustum.setFromProjectionMatrix(): Invalid coordinate system: "+t);return this}intersectsObject(e){if(e.boundingSphere!==void 0)e.boundingSphere===null&&e.computeBoundingSphere(),ii.copy(e.boundingSphere).applyMatrix4(e.matrixWorld);else{const t=e.geometry;t.boundingSphere===null&&t.computeBoundingSphere(),ii.copy(t.boundingSphere).applyMatrix4(e.matrixWorld)}return this.intersectsSphere(ii)}intersectsSprite(e){ii.center.set(0,0,0);const t=qd.distanceTo(e.center);return ii.radius=.7071067811865476+t,ii.applyMatrix4(e.matrixWorld),this.intersectsSphere(ii)}intersectsSphere(e){const t=this.planes,n=e.center,s=-e.radius;for(let r=0;r<6;r++)if(t[r].distanceToPoint(n)<s)return!1;return!0}intersectsBox(e){const t=this.planes;for(let n=0;n<6;n++){const s=t[n];if(js.x=s.normal.x>0?e.max.x:e.min.x,js.y=s.normal.y>0?e.max.y:e.min.y,js.z=s.normal.z>0?e.max.z:e.min.z,s.distanceToPoint(js)<0)return!1}return!0}containsPoint(e){const t=this.planes;for(let n=0;n<6;n++)if(t[n].distanceToPoint(e)<0)return!1;return!0}clone(){return new this.constructor().copy(this)}}class Zi extends _i{constructor(e){super(),this.isLineBasicMaterial=!0,this.type="LineBasicMaterial",this.color=new Ye(16777215),this.map=null,this.linewidth=1,this.linecap="round",this.linejoin="round",this.fog=!0,this.setValues(e)}copy(e){return super.copy(e),this.color.copy(e.color),this.map=e.map,this.linewidth=e.linewidth,this.linecap=e.linecap,this.linejoin=e.linejoin,this.fog=e.fog,this}}const Mr=new N,Sr=new N,Tl=new pt,rs=new Ts,Ks=new ji,ha=new N,Al=new N;class As extends Et{constructor(e=new Dt,t=new Zi){super(),this.isLine=!0,this.type="Line",this.geometry=e,this.material=t,this.morphTargetDictionary=void 0,this.morphTargetInfluences=void 0,this.updateMorphTargets()}copy(e,t){return super.copy(e,t),this.material=Array.isArray(e.material)?e.material.slice():e.material,this.geometry=e.geometry,this}computeLineDistances(){const e=this.geometry;if(e.index===null){const t=e.attributes.position,n=[0];for(let s=1,r=t.count;s<r;s++)Mr.fromBufferAttribute(t,s-1),Sr.fromBufferAttribute(t,s),n[s]=n[s-1],n[s]+=Mr.distanceTo(Sr);e.setAttribute("lineDistance",new Pt(n,1))}else console.warn("THREE.Line.computeLineDistances(): Computation only possible with non-indexed BufferGeometry.");return this}raycast(e,t){const n=this.geometry,s=this.matrixWorld,r=e.params.Line.threshold,a=n.drawRange;if(n.boundingSphere===null&&n.computeBoundingSphere(),Ks.copy(n.boundingSphere),Ks.applyMatrix4(s),Ks.radius+=r,e.ray.intersectsSphere(Ks)===!1)return;Tl.copy(s).invert(),rs.copy(e.ray).applyMatrix4(Tl);const o=r/((this.scale.x+this.scale.y+this.scale.z)/3),l=o*o,c=this.isLineSegments?2:1,h=n.index,f=n.attributes.position;if(h!==null){const p=Math.max(0,a.start),g=Math.min(h.count,a.start+a.count);for(let x=p,m=g-1;x<m;x+=c){const d=h.getX(x),A=h.getX(x+1),T=Zs(this,e,rs,l,d,A,x);T&&t.push(T)}if(this.isLineLoop){const x=h.getX(g-1),m=h.getX(p),d=Zs(this,e,rs,l,x,m,g-1);d&&t.push(d)}}else{const p=Math.max(0,a.start),g=Math.min(f.count,a.start+a.count);for(let x=p,m=g-1;x<m;x+=c){const d=Zs(this,e,rs,l,x,x+1,x);d&&t.push(d)}if(this.isLineLoop){const x=Zs(this,e,rs,l,g-1,p,g-1);x&&t.push(x)}}}updateMorphTargets(){const t=this.geometry.morphAttributes,n=Object.keys(t);if(n.length>0){const s=t[n[0]];if(s!==void 0){this.morphTargetInfluences=[],this.morphTargetDictionary={};for(let r=0,a=s.length;r<a;r++){const o=s[r].name||String(r);this.morphTargetInfluences.push(0),this.morphTargetDictionary[o]=r}}}}}function Zs(i,e,t,n,s,r,a){const o=i.geometry.attributes.position;if(Mr.fromBufferAttribute(o,s),Sr.fromBufferAttribute(o,r),t.distanceSqToSegment(Mr,Sr,ha,Al)>n)return;ha.applyMatrix4(i.matrixWorld);const c=e.ray.origin.distanceTo(ha);if(!(c<e.near||c>e.far))return{distance:c,point:Al.clone().applyMatrix4(i.matrixWorld),index:a,face:null,faceIndex:null,barycoord:null,object:i}}const Rl=new N,Cl=new N;class Qc extends As{constructor(e,t){super(e,t),this.isLineSegments=!0,this.type="LineSegments"}computeLineDistances(){const e=this.geometry;if(e.index===null){const t=e.attributes.position,n=[];for(let s=0,r=t.count;s<r;s+=2)Rl.fromBufferAttribute(t,s),Cl.fromBufferAttribute(t,s+1),n[s]=s===0?0:n[s-1],n[s+1]=n[s]+Rl.distanceTo(Cl);e.setAttribute("lineDistance",new Pt(n,1))}else console.warn("THREE.LineSegments.computeLineDistances(): Computation only possible with non-indexed BufferGeometry.");return this}}class eh extends _i{constructor(e){super(),this.isPointsMaterial=!0,this.type="PointsMaterial",this.color=new Ye(16777215),this.map=null,this.alphaMap=null,this.size=1,this.sizeAttenuation=!0,this.fog=!0,this.setValues(e)}copy(e){return super.copy(e),this.color.copy(e.color),this.map=e.map,this.alphaMap=e.alphaMap,this.size=e.size,this.sizeAttenuation=e.sizeAttenuation,this.fog=e.fog,this}}const Pl=new pt,po=new Ts,Js=new ji,Qs=new N;class Yd extends Et{constructor(e=new Dt,t=new eh){super(),this.isPoints=!0,this.type="Points",this.geometry=e,this.material=t,this.morphTargetDictionary=void 0,this.morphTargetInfluences=void 0,this.updateMorphTargets()}copy(e,t){return super.copy(e,t),this.material=Array.isArray(e.material)?e.material.slice():e.material,this.geometry=e.geometry,this}raycast(e,t){const n=this.geometry,s=this.matrixWorld,r=e.params.Points.threshold,a=n.drawRange;if(n.boundingSphere===null&&n.computeBoundingSphere(),Js.copy(n.boundingSphere),Js.applyMatrix4(s),Js.radius+=r,e.ray.intersectsSphere(Js)===!1)return;Pl.copy(s).invert(),po.copy(e.ray).applyMatrix4(Pl);const o=r/((this.scale.x+this.scale.y+this.scale.z)/3),l=o*o,c=n.index,u=n.attributes.position;if(c!==null){const f=Math.max(0,a.start),p=Math.min(c.count,a.start+a.count);for(let g=f,x=p;g<x;g++){const m=c.getX(g);Qs.fromBufferAttribute(u,m),Dl(Qs,m,l,s,e,t,this)}}else{const f=Math.max(0,a.start),p=Math.min(u.count,a.start+a.count);for(let g=f,x=p;g<x;g++)Qs.fromBufferAttribute(u,g),Dl(Qs,g,l,s,e,t,this)}}updateMorphTargets(){const t=this.geometry.morphAttributes,n=Object.keys(t);if(n.length>0){const s=t[n[0]];if(s!==void 0){this.morphTargetInfluences=[],this.morphTargetDictionary={};for(let r=0,a=s.length;r<a;r++){const o=s[r].name||String(r);this.morphTargetInfluences.push(0),this.morphTargetDictionary[o]=r}}}}}function Dl(i,e,t,n,s,r,a){const o=po.distanceSqToPoint(i);if(o<t){const l=new N;po.closestPointToPoint(i,l),l.applyMatrix4(n);const c=s.ray.origin.distanceTo(l);if(c<s.near||c>s.far)return;r.push({distance:c,distanceToRay:Math.sqrt(o),point:l,index:e,face:null,faceIndex:null,barycoord:null,object:a})}}class th extends Xt{constructor(e,t,n=di,s,r,a,o=fn,l=fn,c,h=_s,u=1){if(h!==_s&&h!==vs)throw new Error("DepthTexture format must be either THREE.DepthFormat or THREE.DepthStencilFormat");const f={width:e,height:t,depth:u};super(f,s,r,a,o,l,h,n,c),this.isDepthTexture=!0,this.flipY=!1,this.generateMipmaps=!1,this.compareFunction=null}copy(e){return super.copy(e),this.source=new Fo(Object.assign({},e.image)),this.compareFunction=e.compareFunction,this}toJSON(e){const t=super.toJSON(e);return this.compareFunction!==null&&(t.compareFunction=this.compareFunction),t}}class nh extends Xt{constructor(e=null){super(),this.sourceTexture=e,this.isExternalTexture=!0}copy(e){return super.copy(e),this.sourceTexture=e.sourceTexture,this}}class Ar extends Dt{constructor(e=1,t=1,n=1,s=32,r=1,a=!1,o=0,l=Math.PI*2){super(),this.type="CylinderGeometry",this.parameters={radiusTop:e,radiusBottom:t,height:n,radialSegments:s,heightSegments:r,openEnded:a,thetaStart:o,thetaLength:l};const c=this;s=Math.floor(s),r=Math.floor(r);const h=[],u=[],f=[],p=[];let g=0;const x=[],m=n/2;let d=0;A(),a===!1&&(e>0&&T(!0),t>0&&T(!1)),this.setIndex(h),this.setAttribute("position",new Pt(u,3)),this.setAttribute("normal",new Pt(f,3)),this.setAttribute("uv",new Pt(p,2));function A(){const w=new N,C=new N;let D=0;const L=(t-e)/n;for(let F=0;F<=r;F++){const y=[],M=F/r,b=M*(t-e)+e;for(let P=0;P<=s;P++){const z=P/s,I=z*l+o,k=Math.sin(I),$=Math.cos(I);C.x=b*k,C.y=-M*n+m,C.z=b*$,u.push(C.x,C.y,C.z),w.set(k,L,$).normalize(),f.push(w.x,w.y,w.z),p.push(z,1-M),y.push(g++)}x.push(y)}for(let F=0;F<s;F++)for(let y=0;y<r;y++){const M=x[y][F],b=x[y+1][F],P=x[y+1][F+1],z=x[y][F+1];(e>0||y!==0)&&(h.push(M,b,z),D+=3),(t>0||y!==r-1)&&(h.push(b,P,z),D+=3)}c.addGroup(d,D,0),d+=D}function T(w){const C=g,D=new ze,L=new N;let F=0;const y=w===!0?e:t,M=w===!0?1:-1;for(let P=1;P<=s;P++)u.push(0,m*M,0),f.push(0,M,0),p.push(.5,.5),g++;const b=g;for(let P=0;P<=s;P++){const I=P/s*l+o,k=Math.cos(I),$=Math.sin(I);L.x=y*$,L.y=m*M,L.z=y*k,u.push(L.x,L.y,L.z),f.push(0,M,0),D.x=k*.5+.5,D.y=$*.5*M+.5,p.push(D.x,D.y),g++}for(let P=0;P<s;P++){const z=C+P,I=b+P;w===!0?h.push(I,I+1,z):h.push(I+1,I,z),F+=3}c.addGroup(d,F,w===!0?1:2),d+=F}}copy(e){return super.copy(e),this.parameters=Object.assign({},e.parameters),this}static fromJSON(e){return new Ar(e.radiusTop,e.radiusBottom,e.height,e.radialSegments,e.heightSegments,e.openEnded,e.thetaStart,e.thetaLength)}}class Rr extends Ar{constructor(e=1,t=1,n=32,s=1,r=!1,a=0,o=Math.PI*2){super(0,e,t,n,s,r,a,o),this.type="ConeGeometry",this.parameters={radius:e,height:t,radialSegments:n,heightSegments:s,openEnded:r,thetaStart:a,thetaLength:o}}static fromJSON(e){return new Rr(e.radius,e.height,e.radialSegments,e.heightSegments,e.openEnded,e.thetaStart,e.thetaLength)}}class Cr extends Dt{constructor(e=1,t=1,n=1,s=1){super(),this.type="PlaneGeometry",this.parameters={width:e,height:t,widthSegments:n,heightSegments:s};const r=e/2,a=t/2,o=Math.floor(n),l=Math.floor(s),c=o+1,h=l+1,u=e/o,f=t/l,p=[],g=[],x=[],m=[];for(let d=0;d<h;d++){const A=d*f-a;for(let T=0;T<c;T++){const w=T*u-r;g.push(w,-A,0),x.push(0,0,1),m.push(T/o),m.push(1-d/l)}}for(let d=0;d<l;d++)for(let A=0;A<o;A++){const T=A+c*d,w=A+c*(d+1),C=A+1+c*(d+1),D=A+1+c*d;p.push(T,w,D),p.push(w,C,D)}this.setIndex(p),this.setAttribute("position",new Pt(g,3)),this.setAttribute("normal",new Pt(x,3)),this.setAttribute("uv",new Pt(m,2))}copy(e){return super.copy(e),this.parameters=Object.assign({},e.parameters),this}static fromJSON(e){return new Cr(e.width,e.height,e.widthSegments,e.heightSegments)}}class Bo extends Dt{constructor(e=1,t=32,n=16,s=0,r=Math.PI*2,a=0,o=Math.PI){super(),this.type="SphereGeometry",this.parameters={radius:e,widthSegments:t,heightSegments:n,phiStart:s,phiLength:r,thetaStart:a,thetaLength:o},t=Math.max(3,Math.floor(t)),n=Math.max(2,Math.floor(n));const l=Math.min(a+o,Math.PI);let c=0;const h=[],u=new N,f=new N,p=[],g=[],x=[],m=[];for(let d=0;d<=n;d++){const A=[],T=d/n;let w=0;d===0&&a===0?w=.5/t:d===n&&l===Math.PI&&(w=-.5/t);for(let C=0;C<=t;C++){const D=C/t;u.x=-e*Math.cos(s+D*r)*Math.sin(a+T*o),u.y=e*Math.cos(a+T*o),u.z=e*Math.sin(s+D*r)*Math.sin(a+T*o),g.push(u.x,u.y,u.z),f.copy(u).normalize(),x.push(f.x,f.y,f.z),m.push(D+w,1-T),A.push(c++)}h.push(A)}for(let d=0;d<n;d++)for(let A=0;A<t;A++){const T=h[d][A+1],w=h[d][A],C=h[d+1][A],D=h[d+1][A+1];(d!==0||a>0)&&p.push(T,w,D),(d!==n-1||l<Math.PI)&&p.push(w,C,D)}this.setIndex(p),this.setAttribute("position",new Pt(g,3)),this.setAttribute("normal",new Pt(x,3)),this.setAttribute("uv",new Pt(m,2))}copy(e){return super.copy(e),this.parameters=Object.assign({},e.parameters),this}static fromJSON(e){return new Bo(e.radius,e.widthSegments,e.heightSegments,e.phiStart,e.phiLength,e.thetaStart,e.thetaLength)}}class jd extends _i{constructor(e){super(),this.isMeshLambertMaterial=!0,this.type="MeshLambertMaterial",this.color=new Ye(16777215),this.map=null,this.lightMap=null,this.lightMapIntensity=1,this.aoMap=null,this.aoMapIntensity=1,this.emissive=new Ye(0),this.emissiveIntensity=1,this.emissiveMap=null,this.bumpMap=null,this.bumpScale=1,this.normalMap=null,this.normalMapType=Gc,this.normalScale=new ze(1,1),this.displacementMap=null,this.displacementScale=1,this.displacementBias=0,this.specularMap=null,this.alphaMap=null,this.envMap=null,this.envMapRotation=new yn,this.combine=Co,this.reflectivity=1,this.refractionRatio=.98,this.wireframe=!1,this.wireframeLinewidth=1,this.wireframeLinecap="round",this.wireframeLinejoin="round",this.flatShading=!1,this.fog=!0,this.setValues(e)}copy(e){return super.copy(e),this.color.copy(e.color),this.map=e.map,this.lightMap=e.lightMap,this.lightMapIntensity=e.lightMapIntensity,this.aoMap=e.aoMap,this.aoMapIntensity=e.aoMapIntensity,this.emissive.copy(e.emissive),this.emissiveMap=e.emissiveMap,this.emissiveIntensity=e.emissiveIntensity,this.bumpMap=e.bumpMap,this.bumpScale=e.bumpScale,this.normalMap=e.normalMap,this.normalMapType=e.normalMapType,this.normalScale.copy(e.normalScale),this.displacementMap=e.displacementMap,this.displacementScale=e.displacementScale,this.displacementBias=e.displacementBias,this.specularMap=e.specularMap,this.alphaMap=e.alphaMap,this.envMap=e.envMap,this.envMapRotation.copy(e.envMapRotation),this.combine=e.combine,this.reflectivity=e.reflectivity,this.refractionRatio=e.refractionRatio,this.wireframe=e.wireframe,this.wireframeLinewidth=e.wireframeLinewidth,this.wireframeLinecap=e.wireframeLinecap,this.wireframeLinejoin=e.wireframeLinejoin,this.flatShading=e.flatShading,this.fog=e.fog,this}}class Kd extends _i{constructor(e){super(),this.isMeshDepthMaterial=!0,this.type="MeshDepthMaterial",this.depthPacking=ad,this.map=null,this.alphaMap=null,this.displacementMap=null,this.displacementScale=1,this.displacementBias=0,this.wireframe=!1,this.wireframeLinewidth=1,this.setValues(e)}copy(e){return super.copy(e),this.depthPacking=e.depthPacking,this.map=e.map,this.alphaMap=e.alphaMap,this.displacementMap=e.displacementMap,this.displacementScale=e.displacementScale,this.displacementBias=e.displacementBias,this.wireframe=e.wireframe,this.wireframeLinewidth=e.wireframeLinewidth,this}}class Zd extends _i{constructor(e){super(),this.isMeshDistanceMaterial=!0,this.type="MeshDistanceMaterial",this.map=null,this.alphaMap=null,this.displacementMap=null,this.displacementScale=1,this.displacementBias=0,this.setValues(e)}copy(e){return super.copy(e),this.map=e.map,this.alphaMap=e.alphaMap,this.displacementMap=e.displacementMap,this.displacementScale=e.displacementScale,this.displacementBias=e.displacementBias,this}}class ih extends Et{constructor(e,t=1){super(),this.isLight=!0,this.type="Light",this.color=new Ye(e),this.intensity=t}dispose(){}copy(e,t){return super.copy(e,t),this.color.copy(e.color),this.intensity=e.intensity,this}toJSON(e){const t=super.toJSON(e);return t.object.color=this.color.getHex(),t.object.intensity=this.intensity,this.groundColor!==void 0&&(t.object.groundColor=this.groundColor.getHex()),this.distance!==void 0&&(t.object.distance=this.distance),this.angle!==void 0&&(t.object.angle=this.angle),this.decay!==void 0&&(t.object.decay=this.decay),this.penumbra!==void 0&&(t.object.penumbra=this.penumbra),this.shadow!==void 0&&(t.object.shadow=this.shadow.toJSON()),this.target!==void 0&&(t.object.target=this.target.uuid),t}}const ua=new pt,Ll=new N,Il=new N;class Jd{constructor(e){this.camera=e,this.intensity=1,this.bias=0,this.normalBias=0,this.radius=1,this.blurSamples=8,this.mapSize=new ze(512,512),this.mapType=xn,this.map=null,this.mapPass=null,this.matrix=new pt,this.autoUpdate=!0,this.needsUpdate=!1,this._frustum=new ko,this._frameExtents=new ze(1,1),this._viewportCount=1,this._viewports=[new xt(0,0,1,1)]}getViewportCount(){return this._viewportCount}getFrustum(){return this._frustum}updateMatrices(e){const t=this.camera,n=this.matrix;Ll.setFromMatrixPosition(e.matrixWorld),t.position.copy(Ll),Il.setFromMatrixPosition(e.target.matrixWorld),t.lookAt(Il),t.updateMatrixWorld(),ua.multiplyMatrices(t.projectionMatrix,t.matrixWorldInverse),this._frustum.setFromProjectionMatrix(ua,t.coordinateSystem,t.reversedDepth),t.reversedDepth?n.set(.5,0,0,.5,0,.5,0,.5,0,0,1,0,0,0,0,1):n.set(.5,0,0,.5,0,.5,0,.5,0,0,.5,.5,0,0,0,1),n.multiply(ua)}getViewport(e){return this._viewports[e]}getFrameExtents(){return this._frameExtents}dispose(){this.map&&this.map.dispose(),this.mapPass&&this.mapPass.dispose()}copy(e){return this.camera=e.camera.clone(),this.intensity=e.intensity,this.bias=e.bias,this.radius=e.radius,this.autoUpdate=e.autoUpdate,this.needsUpdate=e.needsUpdate,this.normalBias=e.normalBias,this.blurSamples=e.blurSamples,this.mapSize.copy(e.mapSize),this}clone(){return new this.constructor().copy(this)}toJSON(){const e={};return this.intensity!==1&&(e.intensity=this.intensity),this.bias!==0&&(e.bias=this.bias),this.normalBias!==0&&(e.normalBias=this.normalBias),this.radius!==1&&(e.radius=this.radius),(this.mapSize.x!==512||this.mapSize.y!==512)&&(e.mapSize=this.mapSize.toArray()),e.camera=this.camera.toJSON(!1).object,delete e.camera.matrix,e}}class sh extends Zc{constructor(e=-1,t=1,n=1,s=-1,r=.1,a=2e3){super(),this.isOrthographicCamera=!0,this.type="OrthographicCamera",this.zoom=1,this.view=null,this.left=e,this.right=t,this.top=n,this.bottom=s,this.near=r,this.far=a,this.updateProjectionMatrix()}copy(e,t){return super.copy(e,t),this.left=e.left,this.right=e.right,this.top=e.top,this.bottom=e.bottom,this.near=e.near,this.far=e.far,this.zoom=e.zoom,this.view=e.view===null?null:Object.assign({},e.view),this}setViewOffset(e,t,n,s,r,a){this.view===null&&(this.view={enabled:!0,fullWidth:1,fullHeight:1,offsetX:0,offsetY:0,width:1,height:1}),this.view.enabled=!0,this.view.fullWidth=e,this.view.fullHeight=t,this.view.offsetX=n,this.view.offsetY=s,this.view.width=r,this.view.height=a,this.updateProjectionMatrix()}clearViewOffset(){this.view!==null&&(this.view.enabled=!1),this.updateProjectionMatrix()}updateProjectionMatrix(){const e=(this.right-this.left)/(2*this.zoom),t=(this.top-this.bottom)/(2*this.zoom),n=(this.right+this.left)/2,s=(this.top+this.bottom)/2;let r=n-e,a=n+e,o=s+t,l=s-t;if(this.view!==null&&this.view.enabled){const c=(this.right-this.left)/this.view.fullWidth/this.zoom,h=(this.top-this.bottom)/this.view.fullHeight/this.zoom;r+=c*this.view.offsetX,a=r+c*this.view.width,o-=h*this.view.offsetY,l=o-h*this.view.height}this.projectionMatrix.makeOrthographic(r,a,o,l,this.near,this.far,this.coordinateSystem,this.reversedDepth),this.projectionMatrixInverse.copy(this.projectionMatrix).invert()}toJSON(e){const t=super.toJSON(e);return t.object.zoom=this.zoom,t.object.left=this.left,t.object.right=this.right,t.object.top=this.top,t.object.bottom=this.bottom,t.object.near=this.near,t.object.far=this.far,this.view!==null&&(t.object.view=Object.assign({},this.view)),t}}class Qd extends Jd{constructor(){super(new sh(-5,5,5,-5,.5,500)),this.isDirectionalLightShadow=!0}}class ef extends ih{constructor(e,t){super(e,t),this.isDirectionalLight=!0,this.type="DirectionalLight",this.position.copy(Et.DEFAULT_UP),this.updateMatrix(),this.target=new Et,this.shadow=new Qd}dispose(){this.shadow.dispose()}copy(e){return super.copy(e),this.target=e.target.clone(),this.shadow=e.shadow.clone(),this}}class tf extends ih{constructor(e,t){super(e,t),this.isAmbientLight=!0,this.type="AmbientLight"}}class nf extends rn{constructor(e=[]){super(),this.isArrayCamera=!0,this.isMultiViewCamera=!1,this.cameras=e}}const Ul=new pt;class sf{constructor(e,t,n=0,s=1/0){this.ray=new Ts(e,t),this.near=n,this.far=s,this.camera=null,this.layers=new Oo,this.params={Mesh:{},Line:{threshold:1},LOD:{},Points:{threshold:1},Sprite:{}}}set(e,t){this.ray.set(e,t)}setFromCamera(e,t){t.isPerspectiveCamera?(this.ray.origin.setFromMatrixPosition(t.matrixWorld),this.ray.direction.set(e.x,e.y,.5).unproject(t).sub(this.ray.origin).normalize(),this.camera=t):t.isOrthographicCamera?(this.ray.origin.set(e.x,e.y,(t.near+t.far)/(t.near-t.far)).unproject(t),this.ray.direction.set(0,0,-1).transformDirection(t.matrixWorld),this.camera=t):console.error("THREE.Raycaster: Unsupported camera type: "+t.type)}setFromXRController(e){return Ul.identity().extractRotation(e.matrixWorld),this.ray.origin.setFromMatrixPosition(e.matrixWorld),this.ray.direction.set(0,0,-1).applyMatrix4(Ul),this}intersectObject(e,t=!0,n=[]){return mo(e,this,n,t),n.sort(Nl),n}intersectObjects(e,t=!0,n=[]){for(let s=0,r=e.length;s<r;s++)mo(e[s],this,n,t);return n.sort(Nl),n}}function Nl(i,e){return i.distance-e.distance}function mo(i,e,t,n){let s=!0;if(i.layers.test(e.layers)&&i.raycast(e,t)===!1&&(s=!1),s===!0&&n===!0){const r=i.children;for(let a=0,o=r.length;a<o;a++)mo(r[a],e,t,!0)}}class Fl{constructor(e=1,t=0,n=0){this.radius=e,this.phi=t,this.theta=n}set(e,t,n){return this.radius=e,this.phi=t,this.theta=n,this}copy(e){return this.radius=e.radius,this.phi=e.phi,this.theta=e.theta,this}makeSafe(){return this.phi=je(this.phi,1e-6,Math.PI-1e-6),this}setFromVector3(e){return this.setFromCartesianCoords(e.x,e.y,e.z)}setFromCartesianCoords(e,t,n){return this.radius=Math.sqrt(e*e+t*t+n*n),this.radius===0?(this.theta=0,this.phi=0):(this.theta=Math.atan2(e,n),this.phi=Math.acos(je(t/this.radius,-1,1))),this}clone(){return new this.constructor().copy(this)}}class rf extends Qc{constructor(e=10,t=10,n=4473924,s=8947848){n=new Ye(n),s=new Ye(s);const r=t/2,a=e/t,o=e/2,l=[],c=[];for(let f=0,p=0,g=-o;f<=t;f++,g+=a){l.push(-o,0,g,o,0,g),l.push(g,0,-o,g,0,o);const x=f===r?n:s;x.toArray(c,p),p+=3,x.toArray(c,p),p+=3,x.toArray(c,p),p+=3,x.toArray(c,p),p+=3}const h=new Dt;h.setAttribute("position",new Pt(l,3)),h.setAttribute("color",new Pt(c,3));const u=new Zi({vertexColors:!0,toneMapped:!1});super(h,u),this.type="GridHelper"}dispose(){this.geometry.dispose(),this.material.dispose()}}const Ol=new N;let er,da;class Ms extends Et{constructor(e=new N(0,0,1),t=new N(0,0,0),n=1,s=16776960,r=n*.2,a=r*.2){super(),this.type="ArrowHelper",er===void 0&&(er=new Dt,er.setAttribute("position",new Pt([0,0,0,0,1,0],3)),da=new Rr(.5,1,5,1),da.translate(0,-.5,0)),this.position.copy(t),this.line=new As(er,new Zi({color:s,toneMapped:!1})),this.line.matrixAutoUpdate=!1,this.add(this.line),this.cone=new Ot(da,new ys({color:s,toneMapped:!1})),this.cone.matrixAutoUpdate=!1,this.add(this.cone),this.setDirection(e),this.setLength(n,r,a)}setDirection(e){if(e.y>.99999)this.quaternion.set(0,0,0,1);else if(e.y<-.99999)this.quaternion.set(1,0,0,0);else{Ol.set(e.z,0,-e.x).normalize();const t=Math.acos(e.y);this.quaternion.setFromAxisAngle(Ol,t)}}setLength(e,t=e*.2,n=t*.2){this.line.scale.set(1,Math.max(1e-4,e-t),1),this.line.updateMatrix(),this.cone.scale.set(n,t,n),this.cone.position.y=e,this.cone.updateMatrix()}setColor(e){this.line.material.color.set(e),this.cone.material.color.set(e)}copy(e){return super.copy(e,!1),this.line.copy(e.line),this.cone.copy(e.cone),this}dispose(){this.line.geometry.dispose(),this.line.material.dispose(),this.cone.geometry.dispose(),this.cone.material.dispose()}}class af extends gi{constructor(e,t=null){super(),this.object=e,this.domElement=t,this.enabled=!0,this.state=-1,this.keys={},this.mouseButtons={LEFT:null,MIDDLE:null,RIGHT:null},this.touches={ONE:null,TWO:null}}connect(e){if(e===void 0){console.warn("THREE.Controls: connect() now requires an element.");return}this.domElement!==null&&this.disconnect(),this.domElement=e}disconnect(){}dispose(){}update(){}}function kl(i,e,t,n){const s=of(n);switch(t){case Bc:return i*e;case Hc:return i*e/s.components*s.byteLength;case Io:return i*e/s.components*s.byteLength;case Vc:return i*e*2/s.components*s.byteLength;case Uo:return i*e*2/s.components*s.byteLength;case zc:return i*e*3/s.components*s.byteLength;case dn:return i*e*4/s.components*s.byteLength;case No:return i*e*4/s.components*s.byteLength;case ar:case or:return Math.floor((i+3)/4)*Math.floor((e+3)/4)*8;case lr:case cr:return Math.floor((i+3)/4)*Math.floor((e+3)/4)*16;case Ba:case Ha:return Math.max(i,16)*Math.max(e,8)/4;case ka:case za:return Math.max(i,8)*Math.max(e,8)/2;case Va:case Ga:return Math.floor((i+3)/4)*Math.floor((e+3)/4)*8;case Wa:return Math.floor((i+3)/4)*Math.floor((e+3)/4)*16;case $a:return Math.floor((i+3)/4)*Math.floor((e+3)/4)*16;case Xa:return Math.floor((i+4)/5)*Math.floor((e+3)/4)*16;case qa:return Math.floor((i+4)/5)*Math.floor((e+4)/5)*16;case Ya:return Math.floor((i+5)/6)*Math.floor((e+4)/5)*16;case ja:return Math.floor((i+5)/6)*Math.floor((e+5)/6)*16;case Ka:return Math.floor((i+7)/8)*Math.floor((e+4)/5)*16;case Za:return Math.floor((i+7)/8)*Math.floor((e+5)/6)*16;case Ja:return Math.floor((i+7)/8)*Math.floor((e+7)/8)*16;case Qa:return Math.floor((i+9)/10)*Math.floor((e+4)/5)*16;case eo:return Math.floor((i+9)/10)*Math.floor((e+5)/6)*16;case to:return Math.floor((i+9)/10)*Math.floor((e+7)/8)*16;case no:return Math.floor((i+9)/10)*Math.floor((e+9)/10)*16;case io:return Math.floor((i+11)/12)*Math.floor((e+9)/10)*16;case so:return Math.floor((i+11)/12)*Math.floor((e+11)/12)*16;case ro:case ao:case oo:return Math.ceil(i/4)*Math.ceil(e/4)*16;case lo:case co:return Math.ceil(i/4)*Math.ceil(e/4)*8;case ho:case uo:return Math.ceil(i/4)*Math.ceil(e/4)*16}throw new Error(`Unable to determine texture byte length for ${t} format.`)}function of(i){switch(i){case xn:case Nc:return{byteLength:1,components:1};case ms:case Fc:case ws:return{byteLength:2,components:1};case Do:case Lo:return{byteLength:2,components:4};case di:case Po:case Cn:return{byteLength:4,components:1};case Oc:case kc:return{byteLength:4,components:3}}throw new Error(`Unknown texture type ${i}.`)}typeof __THREE_DEVTOOLS__<"u"&&__THREE_DEVTOOLS__.dispatchEvent(new CustomEvent("register",{detail:{revision:Ro}}));typeof window<"u"&&(window.__THREE__?console.warn("WARNING: Multiple instances of Three.js being imported."):window.__THREE__=Ro);/**
 * @license
 * Copyright 2010-2025 Three.js Authors
 * SPDX-License-Identifier: MIT
 */function rh(){let i=null,e=!1,t=null,n=null;function s(r,a){t(r,a),n=i.requestAnimationFrame(s)}return{start:function(){e!==!0&&t!==null&&(n=i.requestAnimationFrame(s),e=!0)},stop:function(){i.cancelAnimationFrame(n),e=!1},setAnimationLoop:function(r){t=r},setContext:function(r){i=r}}}function lf(i){const e=new WeakMap;function t(o,l){const c=o.array,h=o.usage,u=c.byteLength,f=i.createBuffer();i.bindBuffer(l,f),i.bufferData(l,c,h),o.onUploadCallback();let p;if(c instanceof Float32Array)p=i.FLOAT;else if(typeof Float16Array<"u"&&c instanceof Float16Array)p=i.HALF_FLOAT;else if(c instanceof Uint16Array)o.isFloat16BufferAttribute?p=i.HALF_FLOAT:p=i.UNSIGNED_SHORT;else if(c instanceof Int16Array)p=i.SHORT;else if(c instanceof Uint32Array)p=i.UNSIGNED_INT;else if(c instanceof Int32Array)p=i.INT;else if(c instanceof Int8Array)p=i.BYTE;else if(c instanceof Uint8Array)p=i.UNSIGNED_BYTE;else if(c instanceof Uint8ClampedArray)p=i.UNSIGNED_BYTE;else throw new Error("THREE.WebGLAttributes: Unsupported buffer data format: "+c);return{buffer:f,type:p,bytesPerElement:c.BYTES_PER_ELEMENT,version:o.version,size:u}}function n(o,l,c){const h=l.array,u=l.updateRanges;if(i.bindBuffer(c,o),u.length===0)i.bufferSubData(c,0,h);else{u.sort((p,g)=>p.start-g.start);let f=0;for(let p=1;p<u.length;p++){const g=u[f],x=u[p];x.start<=g.start+g.count+1?g.count=Math.max(g.count,x.start+x.count-g.start):(++f,u[f]=x)}u.length=f+1;for(let p=0,g=u.length;p<g;p++){const x=u[p];i.bufferSubData(c,x.start*h.BYTES_PER_ELEMENT,h,x.start,x.count)}l.clearUpdateRanges()}l.onUploadCallback()}function s(o){return o.isInterleavedBufferAttribute&&(o=o.data),e.get(o)}function r(o){o.isInterleavedBufferAttribute&&(o=o.data);const l=e.get(o);l&&(i.deleteBuffer(l.buffer),e.delete(o))}function a(o,l){if(o.isInterleavedBufferAttribute&&(o=o.data),o.isGLBufferAttribute){const h=e.get(o);(!h||h.version<o.version)&&e.set(o,{buffer:o.buffer,type:o.type,bytesPerElement:o.elementSize,version:o.version});return}const c=e.get(o);if(c===void 0)e.set(o,t(o,l));else if(c.version<o.version){if(c.size!==o.array.byteLength)throw new Error("THREE.WebGLAttributes: The size of the buffer attribute's array buffer does not match the original size. Resizing buffer attributes is not supported.");n(c.buffer,o,l),c.version=o.version}}return{get:s,remove:r,update:a}}var cf=`#ifdef USE_ALPHAHASH
	if ( diffuseColor.a < getAlphaHashThreshold( vPosition ) ) discard;
#endif`,hf=`#ifdef USE_ALPHAHASH
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
#endif`,uf=`#ifdef USE_ALPHAMAP
	diffuseColor.a *= texture2D( alphaMap, vAlphaMapUv ).g;
#endif`,df=`#ifdef USE_ALPHAMAP
	uniform sampler2D alphaMap;
#endif`,ff=`#ifdef USE_ALPHATEST
	#ifdef ALPHA_TO_COVERAGE
	diffuseColor.a = smoothstep( alphaTest, alphaTest + fwidth( diffuseColor.a ), diffuseColor.a );
	if ( diffuseColor.a == 0.0 ) discard;
	#else
	if ( diffuseColor.a < alphaTest ) discard;
	#endif
#endif`,pf=`#ifdef USE_ALPHATEST
	uniform float alphaTest;
#endif`,mf=`#ifdef USE_AOMAP
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
#endif`,gf=`#ifdef USE_AOMAP
	uniform sampler2D aoMap;
	uniform float aoMapIntensity;
#endif`,_f=`#ifdef USE_BATCHING
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
#endif`,vf=`#ifdef USE_BATCHING
	mat4 batchingMatrix = getBatchingMatrix( getIndirectIndex( gl_DrawID ) );
#endif`,xf=`vec3 transformed = vec3( position );
#ifdef USE_ALPHAHASH
	vPosition = vec3( position );
#endif`,yf=`vec3 objectNormal = vec3( normal );
#ifdef USE_TANGENT
	vec3 objectTangent = vec3( tangent.xyz );
#endif`,Mf=`float G_BlinnPhong_Implicit( ) {
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
} // validated`,Sf=`#ifdef USE_IRIDESCENCE
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
#endif`,wf=`#ifdef USE_BUMPMAP
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
#endif`,bf=`#if NUM_CLIPPING_PLANES > 0
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
#endif`,Ef=`#if NUM_CLIPPING_PLANES > 0
	varying vec3 vClipPosition;
	uniform vec4 clippingPlanes[ NUM_CLIPPING_PLANES ];
#endif`,Tf=`#if NUM_CLIPPING_PLANES > 0
	varying vec3 vClipPosition;
#endif`,Af=`#if NUM_CLIPPING_PLANES > 0
	vClipPosition = - mvPosition.xyz;
#endif`,Rf=`#if defined( USE_COLOR_ALPHA )
	diffuseColor *= vColor;
#elif defined( USE_COLOR )
	diffuseColor.rgb *= vColor;
#endif`,Cf=`#if defined( USE_COLOR_ALPHA )
	varying vec4 vColor;
#elif defined( USE_COLOR )
	varying vec3 vColor;
#endif`,Pf=`#if defined( USE_COLOR_ALPHA )
	varying vec4 vColor;
#elif defined( USE_COLOR ) || defined( USE_INSTANCING_COLOR ) || defined( USE_BATCHING_COLOR )
	varying vec3 vColor;
#endif`,Df=`#if defined( USE_COLOR_ALPHA )
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
#endif`,Lf=`#define PI 3.141592653589793
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
} // validated`,If=`#ifdef ENVMAP_TYPE_CUBE_UV
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
#endif`,Uf=`vec3 transformedNormal = objectNormal;
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
#endif`,Nf=`#ifdef USE_DISPLACEMENTMAP
	uniform sampler2D displacementMap;
	uniform float displacementScale;
	uniform float displacementBias;
#endif`,Ff=`#ifdef USE_DISPLACEMENTMAP
	transformed += normalize( objectNormal ) * ( texture2D( displacementMap, vDisplacementMapUv ).x * displacementScale + displacementBias );
#endif`,Of=`#ifdef USE_EMISSIVEMAP
	vec4 emissiveColor = texture2D( emissiveMap, vEmissiveMapUv );
	#ifdef DECODE_VIDEO_TEXTURE_EMISSIVE
		emissiveColor = sRGBTransferEOTF( emissiveColor );
	#endif
	totalEmissiveRadiance *= emissiveColor.rgb;
#endif`,kf=`#ifdef USE_EMISSIVEMAP
	uniform sampler2D emissiveMap;
#endif`,Bf="gl_FragColor = linearToOutputTexel( gl_FragColor );",zf=`vec4 LinearTransferOETF( in vec4 value ) {
	return value;
}
vec4 sRGBTransferEOTF( in vec4 value ) {
	return vec4( mix( pow( value.rgb * 0.9478672986 + vec3( 0.0521327014 ), vec3( 2.4 ) ), value.rgb * 0.0773993808, vec3( lessThanEqual( value.rgb, vec3( 0.04045 ) ) ) ), value.a );
}
vec4 sRGBTransferOETF( in vec4 value ) {
	return vec4( mix( pow( value.rgb, vec3( 0.41666 ) ) * 1.055 - vec3( 0.055 ), value.rgb * 12.92, vec3( lessThanEqual( value.rgb, vec3( 0.0031308 ) ) ) ), value.a );
}`,Hf=`#ifdef USE_ENVMAP
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
#endif`,Vf=`#ifdef USE_ENVMAP
	uniform float envMapIntensity;
	uniform float flipEnvMap;
	uniform mat3 envMapRotation;
	#ifdef ENVMAP_TYPE_CUBE
		uniform samplerCube envMap;
	#else
		uniform sampler2D envMap;
	#endif
	
#endif`,Gf=`#ifdef USE_ENVMAP
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
#endif`,Wf=`#ifdef USE_ENVMAP
	#if defined( USE_BUMPMAP ) || defined( USE_NORMALMAP ) || defined( PHONG ) || defined( LAMBERT )
		#define ENV_WORLDPOS
	#endif
	#ifdef ENV_WORLDPOS
		
		varying vec3 vWorldPosition;
	#else
		varying vec3 vReflect;
		uniform float refractionRatio;
	#endif
#endif`,$f=`#ifdef USE_ENVMAP
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
#endif`,Xf=`#ifdef USE_FOG
	vFogDepth = - mvPosition.z;
#endif`,qf=`#ifdef USE_FOG
	varying float vFogDepth;
#endif`,Yf=`#ifdef USE_FOG
	#ifdef FOG_EXP2
		float fogFactor = 1.0 - exp( - fogDensity * fogDensity * vFogDepth * vFogDepth );
	#else
		float fogFactor = smoothstep( fogNear, fogFar, vFogDepth );
	#endif
	gl_FragColor.rgb = mix( gl_FragColor.rgb, fogColor, fogFactor );
#endif`,jf=`#ifdef USE_FOG
	uniform vec3 fogColor;
	varying float vFogDepth;
	#ifdef FOG_EXP2
		uniform float fogDensity;
	#else
		uniform float fogNear;
		uniform float fogFar;
	#endif
#endif`,Kf=`#ifdef USE_GRADIENTMAP
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
}`,Zf=`#ifdef USE_LIGHTMAP
	uniform sampler2D lightMap;
	uniform float lightMapIntensity;
#endif`,Jf=`LambertMaterial material;
material.diffuseColor = diffuseColor.rgb;
material.specularStrength = specularStrength;`,Qf=`varying vec3 vViewPosition;
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
#define RE_IndirectDiffuse		RE_IndirectDiffuse_Lambert`,ep=`uniform bool receiveShadow;
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
#endif`,tp=`#ifdef USE_ENVMAP
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
#endif`,np=`ToonMaterial material;
material.diffuseColor = diffuseColor.rgb;`,ip=`varying vec3 vViewPosition;
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
#define RE_IndirectDiffuse		RE_IndirectDiffuse_Toon`,sp=`BlinnPhongMaterial material;
material.diffuseColor = diffuseColor.rgb;
material.specularColor = specular;
material.specularShininess = shininess;
material.specularStrength = specularStrength;`,rp=`varying vec3 vViewPosition;
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
#define RE_IndirectDiffuse		RE_IndirectDiffuse_BlinnPhong`,ap=`PhysicalMaterial material;
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
#endif`,op=`struct PhysicalMaterial {
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
}`,lp=`
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
#endif`,cp=`#if defined( RE_IndirectDiffuse )
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
#endif`,hp=`#if defined( RE_IndirectDiffuse )
	RE_IndirectDiffuse( irradiance, geometryPosition, geometryNormal, geometryViewDir, geometryClearcoatNormal, material, reflectedLight );
#endif
#if defined( RE_IndirectSpecular )
	RE_IndirectSpecular( radiance, iblIrradiance, clearcoatRadiance, geometryPosition, geometryNormal, geometryViewDir, geometryClearcoatNormal, material, reflectedLight );
#endif`,up=`#if defined( USE_LOGARITHMIC_DEPTH_BUFFER )
	gl_FragDepth = vIsPerspective == 0.0 ? gl_FragCoord.z : log2( vFragDepth ) * logDepthBufFC * 0.5;
#endif`,dp=`#if defined( USE_LOGARITHMIC_DEPTH_BUFFER )
	uniform float logDepthBufFC;
	varying float vFragDepth;
	varying float vIsPerspective;
#endif`,fp=`#ifdef USE_LOGARITHMIC_DEPTH_BUFFER
	varying float vFragDepth;
	varying float vIsPerspective;
#endif`,pp=`#ifdef USE_LOGARITHMIC_DEPTH_BUFFER
	vFragDepth = 1.0 + gl_Position.w;
	vIsPerspective = float( isPerspectiveMatrix( projectionMatrix ) );
#endif`,mp=`#ifdef USE_MAP
	vec4 sampledDiffuseColor = texture2D( map, vMapUv );
	#ifdef DECODE_VIDEO_TEXTURE
		sampledDiffuseColor = sRGBTransferEOTF( sampledDiffuseColor );
	#endif
	diffuseColor *= sampledDiffuseColor;
#endif`,gp=`#ifdef USE_MAP
	uniform sampler2D map;
#endif`,_p=`#if defined( USE_MAP ) || defined( USE_ALPHAMAP )
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
#endif`,vp=`#if defined( USE_POINTS_UV )
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
#endif`,xp=`float metalnessFactor = metalness;
#ifdef USE_METALNESSMAP
	vec4 texelMetalness = texture2D( metalnessMap, vMetalnessMapUv );
	metalnessFactor *= texelMetalness.b;
#endif`,yp=`#ifdef USE_METALNESSMAP
	uniform sampler2D metalnessMap;
#endif`,Mp=`#ifdef USE_INSTANCING_MORPH
	float morphTargetInfluences[ MORPHTARGETS_COUNT ];
	float morphTargetBaseInfluence = texelFetch( morphTexture, ivec2( 0, gl_InstanceID ), 0 ).r;
	for ( int i = 0; i < MORPHTARGETS_COUNT; i ++ ) {
		morphTargetInfluences[i] =  texelFetch( morphTexture, ivec2( i + 1, gl_InstanceID ), 0 ).r;
	}
#endif`,Sp=`#if defined( USE_MORPHCOLORS )
	vColor *= morphTargetBaseInfluence;
	for ( int i = 0; i < MORPHTARGETS_COUNT; i ++ ) {
		#if defined( USE_COLOR_ALPHA )
			if ( morphTargetInfluences[ i ] != 0.0 ) vColor += getMorph( gl_VertexID, i, 2 ) * morphTargetInfluences[ i ];
		#elif defined( USE_COLOR )
			if ( morphTargetInfluences[ i ] != 0.0 ) vColor += getMorph( gl_VertexID, i, 2 ).rgb * morphTargetInfluences[ i ];
		#endif
	}
#endif`,wp=`#ifdef USE_MORPHNORMALS
	objectNormal *= morphTargetBaseInfluence;
	for ( int i = 0; i < MORPHTARGETS_COUNT; i ++ ) {
		if ( morphTargetInfluences[ i ] != 0.0 ) objectNormal += getMorph( gl_VertexID, i, 1 ).xyz * morphTargetInfluences[ i ];
	}
#endif`,bp=`#ifdef USE_MORPHTARGETS
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
#endif`,Ep=`#ifdef USE_MORPHTARGETS
	transformed *= morphTargetBaseInfluence;
	for ( int i = 0; i < MORPHTARGETS_COUNT; i ++ ) {
		if ( morphTargetInfluences[ i ] != 0.0 ) transformed += getMorph( gl_VertexID, i, 0 ).xyz * morphTargetInfluences[ i ];
	}
#endif`,Tp=`float faceDirection = gl_FrontFacing ? 1.0 : - 1.0;
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
vec3 nonPerturbedNormal = normal;`,Ap=`#ifdef USE_NORMALMAP_OBJECTSPACE
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
#endif`,Rp=`#ifndef FLAT_SHADED
	varying vec3 vNormal;
	#ifdef USE_TANGENT
		varying vec3 vTangent;
		varying vec3 vBitangent;
	#endif
#endif`,Cp=`#ifndef FLAT_SHADED
	varying vec3 vNormal;
	#ifdef USE_TANGENT
		varying vec3 vTangent;
		varying vec3 vBitangent;
	#endif
#endif`,Pp=`#ifndef FLAT_SHADED
	vNormal = normalize( transformedNormal );
	#ifdef USE_TANGENT
		vTangent = normalize( transformedTangent );
		vBitangent = normalize( cross( vNormal, vTangent ) * tangent.w );
	#endif
#endif`,Dp=`#ifdef USE_NORMALMAP
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
#endif`,Lp=`#ifdef USE_CLEARCOAT
	vec3 clearcoatNormal = nonPerturbedNormal;
#endif`,Ip=`#ifdef USE_CLEARCOAT_NORMALMAP
	vec3 clearcoatMapN = texture2D( clearcoatNormalMap, vClearcoatNormalMapUv ).xyz * 2.0 - 1.0;
	clearcoatMapN.xy *= clearcoatNormalScale;
	clearcoatNormal = normalize( tbn2 * clearcoatMapN );
#endif`,Up=`#ifdef USE_CLEARCOATMAP
	uniform sampler2D clearcoatMap;
#endif
#ifdef USE_CLEARCOAT_NORMALMAP
	uniform sampler2D clearcoatNormalMap;
	uniform vec2 clearcoatNormalScale;
#endif
#ifdef USE_CLEARCOAT_ROUGHNESSMAP
	uniform sampler2D clearcoatRoughnessMap;
#endif`,Np=`#ifdef USE_IRIDESCENCEMAP
	uniform sampler2D iridescenceMap;
#endif
#ifdef USE_IRIDESCENCE_THICKNESSMAP
	uniform sampler2D iridescenceThicknessMap;
#endif`,Fp=`#ifdef OPAQUE
diffuseColor.a = 1.0;
#endif
#ifdef USE_TRANSMISSION
diffuseColor.a *= material.transmissionAlpha;
#endif
gl_FragColor = vec4( outgoingLight, diffuseColor.a );`,Op=`vec3 packNormalToRGB( const in vec3 normal ) {
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
}`,kp=`#ifdef PREMULTIPLIED_ALPHA
	gl_FragColor.rgb *= gl_FragColor.a;
#endif`,Bp=`vec4 mvPosition = vec4( transformed, 1.0 );
#ifdef USE_BATCHING
	mvPosition = batchingMatrix * mvPosition;
#endif
#ifdef USE_INSTANCING
	mvPosition = instanceMatrix * mvPosition;
#endif
mvPosition = modelViewMatrix * mvPosition;
gl_Position = projectionMatrix * mvPosition;`,zp=`#ifdef DITHERING
	gl_FragColor.rgb = dithering( gl_FragColor.rgb );
#endif`,Hp=`#ifdef DITHERING
	vec3 dithering( vec3 color ) {
		float grid_position = rand( gl_FragCoord.xy );
		vec3 dither_shift_RGB = vec3( 0.25 / 255.0, -0.25 / 255.0, 0.25 / 255.0 );
		dither_shift_RGB = mix( 2.0 * dither_shift_RGB, -2.0 * dither_shift_RGB, grid_position );
		return color + dither_shift_RGB;
	}
#endif`,Vp=`float roughnessFactor = roughness;
#ifdef USE_ROUGHNESSMAP
	vec4 texelRoughness = texture2D( roughnessMap, vRoughnessMapUv );
	roughnessFactor *= texelRoughness.g;
#endif`,Gp=`#ifdef USE_ROUGHNESSMAP
	uniform sampler2D roughnessMap;
#endif`,Wp=`#if NUM_SPOT_LIGHT_COORDS > 0
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
#endif`,$p=`#if NUM_SPOT_LIGHT_COORDS > 0
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
#endif`,Xp=`#if ( defined( USE_SHADOWMAP ) && ( NUM_DIR_LIGHT_SHADOWS > 0 || NUM_POINT_LIGHT_SHADOWS > 0 ) ) || ( NUM_SPOT_LIGHT_COORDS > 0 )
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
#endif`,qp=`float getShadowMask() {
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
}`,Yp=`#ifdef USE_SKINNING
	mat4 boneMatX = getBoneMatrix( skinIndex.x );
	mat4 boneMatY = getBoneMatrix( skinIndex.y );
	mat4 boneMatZ = getBoneMatrix( skinIndex.z );
	mat4 boneMatW = getBoneMatrix( skinIndex.w );
#endif`,jp=`#ifdef USE_SKINNING
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
#endif`,Kp=`#ifdef USE_SKINNING
	vec4 skinVertex = bindMatrix * vec4( transformed, 1.0 );
	vec4 skinned = vec4( 0.0 );
	skinned += boneMatX * skinVertex * skinWeight.x;
	skinned += boneMatY * skinVertex * skinWeight.y;
	skinned += boneMatZ * skinVertex * skinWeight.z;
	skinned += boneMatW * skinVertex * skinWeight.w;
	transformed = ( bindMatrixInverse * skinned ).xyz;
#endif`,Zp=`#ifdef USE_SKINNING
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
#endif`,Jp=`float specularStrength;
#ifdef USE_SPECULARMAP
	vec4 texelSpecular = texture2D( specularMap, vSpecularMapUv );
	specularStrength = texelSpecular.r;
#else
	specularStrength = 1.0;
#endif`,Qp=`#ifdef USE_SPECULARMAP
	uniform sampler2D specularMap;
#endif`,em=`#if defined( TONE_MAPPING )
	gl_FragColor.rgb = toneMapping( gl_FragColor.rgb );
#endif`,tm=`#ifndef saturate
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
vec3 CustomToneMapping( vec3 color ) { return color; }`,nm=`#ifdef USE_TRANSMISSION
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
#endif`,im=`#ifdef USE_TRANSMISSION
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
#endif`,sm=`#if defined( USE_UV ) || defined( USE_ANISOTROPY )
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
#endif`,rm=`#if defined( USE_UV ) || defined( USE_ANISOTROPY )
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
#endif`,am=`#if defined( USE_UV ) || defined( USE_ANISOTROPY )
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
#endif`,om=`#if defined( USE_ENVMAP ) || defined( DISTANCE ) || defined ( USE_SHADOWMAP ) || defined ( USE_TRANSMISSION ) || NUM_SPOT_LIGHT_COORDS > 0
	vec4 worldPosition = vec4( transformed, 1.0 );
	#ifdef USE_BATCHING
		worldPosition = batchingMatrix * worldPosition;
	#endif
	#ifdef USE_INSTANCING
		worldPosition = instanceMatrix * worldPosition;
	#endif
	worldPosition = modelMatrix * worldPosition;
#endif`;const lm=`varying vec2 vUv;
uniform mat3 uvTransform;
void main() {
	vUv = ( uvTransform * vec3( uv, 1 ) ).xy;
	gl_Position = vec4( position.xy, 1.0, 1.0 );
}`,cm=`uniform sampler2D t2D;
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
}`,hm=`varying vec3 vWorldDirection;
#include <common>
void main() {
	vWorldDirection = transformDirection( position, modelMatrix );
	#include <begin_vertex>
	#include <project_vertex>
	gl_Position.z = gl_Position.w;
}`,um=`#ifdef ENVMAP_TYPE_CUBE
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
}`,dm=`varying vec3 vWorldDirection;
#include <common>
void main() {
	vWorldDirection = transformDirection( position, modelMatrix );
	#include <begin_vertex>
	#include <project_vertex>
	gl_Position.z = gl_Position.w;
}`,fm=`uniform samplerCube tCube;
uniform float tFlip;
uniform float opacity;
varying vec3 vWorldDirection;
void main() {
	vec4 texColor = textureCube( tCube, vec3( tFlip * vWorldDirection.x, vWorldDirection.yz ) );
	gl_FragColor = texColor;
	gl_FragColor.a *= opacity;
	#include <tonemapping_fragment>
	#include <colorspace_fragment>
}`,pm=`#include <common>
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
}`,mm=`#if DEPTH_PACKING == 3200
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
}`,gm=`#define DISTANCE
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
}`,_m=`#define DISTANCE
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
}`,vm=`varying vec3 vWorldDirection;
#include <common>
void main() {
	vWorldDirection = transformDirection( position, modelMatrix );
	#include <begin_vertex>
	#include <project_vertex>
}`,xm=`uniform sampler2D tEquirect;
varying vec3 vWorldDirection;
#include <common>
void main() {
	vec3 direction = normalize( vWorldDirection );
	vec2 sampleUV = equirectUv( direction );
	gl_FragColor = texture2D( tEquirect, sampleUV );
	#include <tonemapping_fragment>
	#include <colorspace_fragment>
}`,ym=`uniform float scale;
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
}`,Mm=`uniform vec3 diffuse;
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
}`,Sm=`#include <common>
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
}`,wm=`uniform vec3 diffuse;
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
}`,bm=`#define LAMBERT
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
}`,Em=`#define LAMBERT
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
}`,Tm=`#define MATCAP
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
}`,Am=`#define MATCAP
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
}`,Rm=`#define NORMAL
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
}`,Cm=`#define NORMAL
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
}`,Pm=`#define PHONG
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
}`,Dm=`#define PHONG
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
}`,Lm=`#define STANDARD
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
}`,Im=`#define STANDARD
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
}`,Um=`#define TOON
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
}`,Nm=`#define TOON
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
}`,Fm=`uniform float size;
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
}`,Om=`uniform vec3 diffuse;
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
}`,km=`#include <common>
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
}`,Bm=`uniform vec3 color;
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
}`,zm=`uniform float rotation;
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
}`,Hm=`uniform vec3 diffuse;
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
}`,qe={alphahash_fragment:cf,alphahash_pars_fragment:hf,alphamap_fragment:uf,alphamap_pars_fragment:df,alphatest_fragment:ff,alphatest_pars_fragment:pf,aomap_fragment:mf,aomap_pars_fragment:gf,batching_pars_vertex:_f,batching_vertex:vf,begin_vertex:xf,beginnormal_vertex:yf,bsdfs:Mf,iridescence_fragment:Sf,bumpmap_pars_fragment:wf,clipping_planes_fragment:bf,clipping_planes_pars_fragment:Ef,clipping_planes_pars_vertex:Tf,clipping_planes_vertex:Af,color_fragment:Rf,color_pars_fragment:Cf,color_pars_vertex:Pf,color_vertex:Df,common:Lf,cube_uv_reflection_fragment:If,defaultnormal_vertex:Uf,displacementmap_pars_vertex:Nf,displacementmap_vertex:Ff,emissivemap_fragment:Of,emissivemap_pars_fragment:kf,colorspace_fragment:Bf,colorspace_pars_fragment:zf,envmap_fragment:Hf,envmap_common_pars_fragment:Vf,envmap_pars_fragment:Gf,envmap_pars_vertex:Wf,envmap_physical_pars_fragment:tp,envmap_vertex:$f,fog_vertex:Xf,fog_pars_vertex:qf,fog_fragment:Yf,fog_pars_fragment:jf,gradientmap_pars_fragment:Kf,lightmap_pars_fragment:Zf,lights_lambert_fragment:Jf,lights_lambert_pars_fragment:Qf,lights_pars_begin:ep,lights_toon_fragment:np,lights_toon_pars_fragment:ip,lights_phong_fragment:sp,lights_phong_pars_fragment:rp,lights_physical_fragment:ap,lights_physical_pars_fragment:op,lights_fragment_begin:lp,lights_fragment_maps:cp,lights_fragment_end:hp,logdepthbuf_fragment:up,logdepthbuf_pars_fragment:dp,logdepthbuf_pars_vertex:fp,logdepthbuf_vertex:pp,map_fragment:mp,map_pars_fragment:gp,map_particle_fragment:_p,map_particle_pars_fragment:vp,metalnessmap_fragment:xp,metalnessmap_pars_fragment:yp,morphinstance_vertex:Mp,morphcolor_vertex:Sp,morphnormal_vertex:wp,morphtarget_pars_vertex:bp,morphtarget_vertex:Ep,normal_fragment_begin:Tp,normal_fragment_maps:Ap,normal_pars_fragment:Rp,normal_pars_vertex:Cp,normal_vertex:Pp,normalmap_pars_fragment:Dp,clearcoat_normal_fragment_begin:Lp,clearcoat_normal_fragment_maps:Ip,clearcoat_pars_fragment:Up,iridescence_pars_fragment:Np,opaque_fragment:Fp,packing:Op,premultiplied_alpha_fragment:kp,project_vertex:Bp,dithering_fragment:zp,dithering_pars_fragment:Hp,roughnessmap_fragment:Vp,roughnessmap_pars_fragment:Gp,shadowmap_pars_fragment:Wp,shadowmap_pars_vertex:$p,shadowmap_vertex:Xp,shadowmask_pars_fragment:qp,skinbase_vertex:Yp,skinning_pars_vertex:jp,skinning_vertex:Kp,skinnormal_vertex:Zp,specularmap_fragment:Jp,specularmap_pars_fragment:Qp,tonemapping_fragment:em,tonemapping_pars_fragment:tm,transmission_fragment:nm,transmission_pars_fragment:im,uv_pars_fragment:sm,uv_pars_vertex:rm,uv_vertex:am,worldpos_vertex:om,background_vert:lm,background_frag:cm,backgroundCube_vert:hm,backgroundCube_frag:um,cube_vert:dm,cube_frag:fm,depth_vert:pm,depth_frag:mm,distanceRGBA_vert:gm,distanceRGBA_frag:_m,equirect_vert:vm,equirect_frag:xm,linedashed_vert:ym,linedashed_frag:Mm,meshbasic_vert:Sm,meshbasic_frag:wm,meshlambert_vert:bm,meshlambert_frag:Em,meshmatcap_vert:Tm,meshmatcap_frag:Am,meshnormal_vert:Rm,meshnormal_frag:Cm,meshphong_vert:Pm,meshphong_frag:Dm,meshphysical_vert:Lm,meshphysical_frag:Im,meshtoon_vert:Um,meshtoon_frag:Nm,points_vert:Fm,points_frag:Om,shadow_vert:km,shadow_frag:Bm,sprite_vert:zm,sprite_frag:Hm},de={common:{diffuse:{value:new Ye(16777215)},opacity:{value:1},map:{value:null},mapTransform:{value:new $e},alphaMap:{value:null},alphaMapTransform:{value:new $e},alphaTest:{value:0}},specularmap:{specularMap:{value:null},specularMapTransform:{value:new $e}},envmap:{envMap:{value:null},envMapRotation:{value:new $e},flipEnvMap:{value:-1},reflectivity:{value:1},ior:{value:1.5},refractionRatio:{value:.98}},aomap:{aoMap:{value:null},aoMapIntensity:{value:1},aoMapTransform:{value:new $e}},lightmap:{lightMap:{value:null},lightMapIntensity:{value:1},lightMapTransform:{value:new $e}},bumpmap:{bumpMap:{value:null},bumpMapTransform:{value:new $e},bumpScale:{value:1}},normalmap:{normalMap:{value:null},normalMapTransform:{value:new $e},normalScale:{value:new ze(1,1)}},displacementmap:{displacementMap:{value:null},displacementMapTransform:{value:new $e},displacementScale:{value:1},displacementBias:{value:0}},emissivemap:{emissiveMap:{value:null},emissiveMapTransform:{value:new $e}},metalnessmap:{metalnessMap:{value:null},metalnessMapTransform:{value:new $e}},roughnessmap:{roughnessMap:{value:null},roughnessMapTransform:{value:new $e}},gradientmap:{gradientMap:{value:null}},fog:{fogDensity:{value:25e-5},fogNear:{value:1},fogFar:{value:2e3},fogColor:{value:new Ye(16777215)}},lights:{ambientLightColor:{value:[]},lightProbe:{value:[]},directionalLights:{value:[],properties:{direction:{},color:{}}},directionalLightShadows:{value:[],properties:{shadowIntensity:1,shadowBias:{},shadowNormalBias:{},shadowRadius:{},shadowMapSize:{}}},directionalShadowMap:{value:[]},directionalShadowMatrix:{value:[]},spotLights:{value:[],properties:{color:{},position:{},direction:{},distance:{},coneCos:{},penumbraCos:{},decay:{}}},spotLightShadows:{value:[],properties:{shadowIntensity:1,shadowBias:{},shadowNormalBias:{},shadowRadius:{},shadowMapSize:{}}},spotLightMap:{value:[]},spotShadowMap:{value:[]},spotLightMatrix:{value:[]},pointLights:{value:[],properties:{color:{},position:{},decay:{},distance:{}}},pointLightShadows:{value:[],properties:{shadowIntensity:1,shadowBias:{},shadowNormalBias:{},shadowRadius:{},shadowMapSize:{},shadowCameraNear:{},shadowCameraFar:{}}},pointShadowMap:{value:[]},pointShadowMatrix:{value:[]},hemisphereLights:{value:[],properties:{direction:{},skyColor:{},groundColor:{}}},rectAreaLights:{value:[],properties:{color:{},position:{},width:{},height:{}}},ltc_1:{value:null},ltc_2:{value:null}},points:{diffuse:{value:new Ye(16777215)},opacity:{value:1},size:{value:1},scale:{value:1},map:{value:null},alphaMap:{value:null},alphaMapTransform:{value:new $e},alphaTest:{value:0},uvTransform:{value:new $e}},sprite:{diffuse:{value:new Ye(16777215)},opacity:{value:1},center:{value:new ze(.5,.5)},rotation:{value:0},map:{value:null},mapTransform:{value:new $e},alphaMap:{value:null},alphaMapTransform:{value:new $e},alphaTest:{value:0}}},mn={basic:{uniforms:Bt([de.common,de.specularmap,de.envmap,de.aomap,de.lightmap,de.fog]),vertexShader:qe.meshbasic_vert,fragmentShader:qe.meshbasic_frag},lambert:{uniforms:Bt([de.common,de.specularmap,de.envmap,de.aomap,de.lightmap,de.emissivemap,de.bumpmap,de.normalmap,de.displacementmap,de.fog,de.lights,{emissive:{value:new Ye(0)}}]),vertexShader:qe.meshlambert_vert,fragmentShader:qe.meshlambert_frag},phong:{uniforms:Bt([de.common,de.specularmap,de.envmap,de.aomap,de.lightmap,de.emissivemap,de.bumpmap,de.normalmap,de.displacementmap,de.fog,de.lights,{emissive:{value:new Ye(0)},specular:{value:new Ye(1118481)},shininess:{value:30}}]),vertexShader:qe.meshphong_vert,fragmentShader:qe.meshphong_frag},standard:{uniforms:Bt([de.common,de.envmap,de.aomap,de.lightmap,de.emissivemap,de.bumpmap,de.normalmap,de.displacementmap,de.roughnessmap,de.metalnessmap,de.fog,de.lights,{emissive:{value:new Ye(0)},roughness:{value:1},metalness:{value:0},envMapIntensity:{value:1}}]),vertexShader:qe.meshphysical_vert,fragmentShader:qe.meshphysical_frag},toon:{uniforms:Bt([de.common,de.aomap,de.lightmap,de.emissivemap,de.bumpmap,de.normalmap,de.displacementmap,de.gradientmap,de.fog,de.lights,{emissive:{value:new Ye(0)}}]),vertexShader:qe.meshtoon_vert,fragmentShader:qe.meshtoon_frag},matcap:{uniforms:Bt([de.common,de.bumpmap,de.normalmap,de.displacementmap,de.fog,{matcap:{value:null}}]),vertexShader:qe.meshmatcap_vert,fragmentShader:qe.meshmatcap_frag},points:{uniforms:Bt([de.points,de.fog]),vertexShader:qe.points_vert,fragmentShader:qe.points_frag},dashed:{uniforms:Bt([de.common,de.fog,{scale:{value:1},dashSize:{value:1},totalSize:{value:2}}]),vertexShader:qe.linedashed_vert,fragmentShader:qe.linedashed_frag},depth:{uniforms:Bt([de.common,de.displacementmap]),vertexShader:qe.depth_vert,fragmentShader:qe.depth_frag},normal:{uniforms:Bt([de.common,de.bumpmap,de.normalmap,de.displacementmap,{opacity:{value:1}}]),vertexShader:qe.meshnormal_vert,fragmentShader:qe.meshnormal_frag},sprite:{uniforms:Bt([de.sprite,de.fog]),vertexShader:qe.sprite_vert,fragmentShader:qe.sprite_frag},background:{uniforms:{uvTransform:{value:new $e},t2D:{value:null},backgroundIntensity:{value:1}},vertexShader:qe.background_vert,fragmentShader:qe.background_frag},backgroundCube:{uniforms:{envMap:{value:null},flipEnvMap:{value:-1},backgroundBlurriness:{value:0},backgroundIntensity:{value:1},backgroundRotation:{value:new $e}},vertexShader:qe.backgroundCube_vert,fragmentShader:qe.backgroundCube_frag},cube:{uniforms:{tCube:{value:null},tFlip:{value:-1},opacity:{value:1}},vertexShader:qe.cube_vert,fragmentShader:qe.cube_frag},equirect:{uniforms:{tEquirect:{value:null}},vertexShader:qe.equirect_vert,fragmentShader:qe.equirect_frag},distanceRGBA:{uniforms:Bt([de.common,de.displacementmap,{referencePosition:{value:new N},nearDistance:{value:1},farDistance:{value:1e3}}]),vertexShader:qe.distanceRGBA_vert,fragmentShader:qe.distanceRGBA_frag},shadow:{uniforms:Bt([de.lights,de.fog,{color:{value:new Ye(0)},opacity:{value:1}}]),vertexShader:qe.shadow_vert,fragmentShader:qe.shadow_frag}};mn.physical={uniforms:Bt([mn.standard.uniforms,{clearcoat:{value:0},clearcoatMap:{value:null},clearcoatMapTransform:{value:new $e},clearcoatNormalMap:{value:null},clearcoatNormalMapTransform:{value:new $e},clearcoatNormalScale:{value:new ze(1,1)},clearcoatRoughness:{value:0},clearcoatRoughnessMap:{value:null},clearcoatRoughnessMapTransform:{value:new $e},dispersion:{value:0},iridescence:{value:0},iridescenceMap:{value:null},iridescenceMapTransform:{value:new $e},iridescenceIOR:{value:1.3},iridescenceThicknessMinimum:{value:100},iridescenceThicknessMaximum:{value:400},iridescenceThicknessMap:{value:null},iridescenceThicknessMapTransform:{value:new $e},sheen:{value:0},sheenColor:{value:new Ye(0)},sheenColorMap:{value:null},sheenColorMapTransform:{value:new $e},sheenRoughness:{value:1},sheenRoughnessMap:{value:null},sheenRoughnessMapTransform:{value:new $e},transmission:{value:0},transmissionMap:{value:null},transmissionMapTransform:{value:new $e},transmissionSamplerSize:{value:new ze},transmissionSamplerMap:{value:null},thickness:{value:0},thicknessMap:{value:null},thicknessMapTransform:{value:new $e},attenuationDistance:{value:0},attenuationColor:{value:new Ye(0)},specularColor:{value:new Ye(1,1,1)},specularColorMap:{value:null},specularColorMapTransform:{value:new $e},specularIntensity:{value:1},specularIntensityMap:{value:null},specularIntensityMapTransform:{value:new $e},anisotropyVector:{value:new ze},anisotropyMap:{value:null},anisotropyMapTransform:{value:new $e}}]),vertexShader:qe.meshphysical_vert,fragmentShader:qe.meshphysical_frag};const tr={r:0,b:0,g:0},si=new yn,Vm=new pt;function Gm(i,e,t,n,s,r,a){const o=new Ye(0);let l=r===!0?0:1,c,h,u=null,f=0,p=null;function g(T){let w=T.isScene===!0?T.background:null;return w&&w.isTexture&&(w=(T.backgroundBlurriness>0?t:e).get(w)),w}function x(T){let w=!1;const C=g(T);C===null?d(o,l):C&&C.isColor&&(d(C,1),w=!0);const D=i.xr.getEnvironmentBlendMode();D==="additive"?n.buffers.color.setClear(0,0,0,1,a):D==="alpha-blend"&&n.buffers.color.setClear(0,0,0,0,a),(i.autoClear||w)&&(n.buffers.depth.setTest(!0),n.buffers.depth.setMask(!0),n.buffers.color.setMask(!0),i.clear(i.autoClearColor,i.autoClearDepth,i.autoClearStencil))}function m(T,w){const C=g(w);C&&(C.isCubeTexture||C.mapping===Tr)?(h===void 0&&(h=new Ot(new Ki(1,1,1),new Kn({name:"BackgroundCubeMaterial",uniforms:qi(mn.backgroundCube.uniforms),vertexShader:mn.backgroundCube.vertexShader,fragmentShader:mn.backgroundCube.fragmentShader,side:$t,depthTest:!1,depthWrite:!1,fog:!1,allowOverride:!1})),h.geometry.deleteAttribute("normal"),h.geometry.deleteAttribute("uv"),h.onBeforeRender=function(D,L,F){this.matrixWorld.copyPosition(F.matrixWorld)},Object.defineProperty(h.material,"envMap",{get:function(){return this.uniforms.envMap.value}}),s.update(h)),si.copy(w.backgroundRotation),si.x*=-1,si.y*=-1,si.z*=-1,C.isCubeTexture&&C.isRenderTargetTexture===!1&&(si.y*=-1,si.z*=-1),h.material.uniforms.envMap.value=C,h.material.uniforms.flipEnvMap.value=C.isCubeTexture&&C.isRenderTargetTexture===!1?-1:1,h.material.uniforms.backgroundBlurriness.value=w.backgroundBlurriness,h.material.uniforms.backgroundIntensity.value=w.backgroundIntensity,h.material.uniforms.backgroundRotation.value.setFromMatrix4(Vm.makeRotationFromEuler(si)),h.material.toneMapped=et.getTransfer(C.colorSpace)!==st,(u!==C||f!==C.version||p!==i.toneMapping)&&(h.material.needsUpdate=!0,u=C,f=C.version,p=i.toneMapping),h.layers.enableAll(),T.unshift(h,h.geometry,h.material,0,0,null)):C&&C.isTexture&&(c===void 0&&(c=new Ot(new Cr(2,2),new Kn({name:"BackgroundMaterial",uniforms:qi(mn.background.uniforms),vertexShader:mn.background.vertexShader,fragmentShader:mn.background.fragmentShader,side:jn,depthTest:!1,depthWrite:!1,fog:!1,allowOverride:!1})),c.geometry.deleteAttribute("normal"),Object.defineProperty(c.material,"map",{get:function(){return this.uniforms.t2D.value}}),s.update(c)),c.material.uniforms.t2D.value=C,c.material.uniforms.backgroundIntensity.value=w.backgroundIntensity,c.material.toneMapped=et.getTransfer(C.colorSpace)!==st,C.matrixAutoUpdate===!0&&C.updateMatrix(),c.material.uniforms.uvTransform.value.copy(C.matrix),(u!==C||f!==C.version||p!==i.toneMapping)&&(c.material.needsUpdate=!0,u=C,f=C.version,p=i.toneMapping),c.layers.enableAll(),T.unshift(c,c.geometry,c.material,0,0,null))}function d(T,w){T.getRGB(tr,Kc(i)),n.buffers.color.setClear(tr.r,tr.g,tr.b,w,a)}function A(){h!==void 0&&(h.geometry.dispose(),h.material.dispose(),h=void 0),c!==void 0&&(c.geometry.dispose(),c.material.dispose(),c=void 0)}return{getClearColor:function(){return o},setClearColor:function(T,w=1){o.set(T),l=w,d(o,l)},getClearAlpha:function(){return l},setClearAlpha:function(T){l=T,d(o,l)},render:x,addToRenderList:m,dispose:A}}function Wm(i,e){const t=i.getParameter(i.MAX_VERTEX_ATTRIBS),n={},s=f(null);let r=s,a=!1;function o(M,b,P,z,I){let k=!1;const $=u(z,P,b);r!==$&&(r=$,c(r.object)),k=p(M,z,P,I),k&&g(M,z,P,I),I!==null&&e.update(I,i.ELEMENT_ARRAY_BUFFER),(k||a)&&(a=!1,w(M,b,P,z),I!==null&&i.bindBuffer(i.ELEMENT_ARRAY_BUFFER,e.get(I).buffer))}function l(){return i.createVertexArray()}function c(M){return i.bindVertexArray(M)}function h(M){return i.deleteVertexArray(M)}function u(M,b,P){const z=P.wireframe===!0;let I=n[M.id];I===void 0&&(I={},n[M.id]=I);let k=I[b.id];k===void 0&&(k={},I[b.id]=k);let $=k[z];return $===void 0&&($=f(l()),k[z]=$),$}function f(M){const b=[],P=[],z=[];for(let I=0;I<t;I++)b[I]=0,P[I]=0,z[I]=0;return{geometry:null,program:null,wireframe:!1,newAttributes:b,enabledAttributes:P,attributeDivisors:z,object:M,attributes:{},index:null}}function p(M,b,P,z){const I=r.attributes,k=b.attributes;let $=0;const ee=P.getAttributes();for(const Y in ee)if(ee[Y].location>=0){const Q=I[Y];let ce=k[Y];if(ce===void 0&&(Y==="instanceMatrix"&&M.instanceMatrix&&(ce=M.instanceMatrix),Y==="instanceColor"&&M.instanceColor&&(ce=M.instanceColor)),Q===void 0||Q.attribute!==ce||ce&&Q.data!==ce.data)return!0;$++}return r.attributesNum!==$||r.index!==z}function g(M,b,P,z){const I={},k=b.attributes;let $=0;const ee=P.getAttributes();for(const Y in ee)if(ee[Y].location>=0){let Q=k[Y];Q===void 0&&(Y==="instanceMatrix"&&M.instanceMatrix&&(Q=M.instanceMatrix),Y==="instanceColor"&&M.instanceColor&&(Q=M.instanceColor));const ce={};ce.attribute=Q,Q&&Q.data&&(ce.data=Q.data),I[Y]=ce,$++}r.attributes=I,r.attributesNum=$,r.index=z}function x(){const M=r.newAttributes;for(let b=0,P=M.length;b<P;b++)M[b]=0}function m(M){d(M,0)}function d(M,b){const P=r.newAttributes,z=r.enabledAttributes,I=r.attributeDivisors;P[M]=1,z[M]===0&&(i.enableVertexAttribArray(M),z[M]=1),I[M]!==b&&(i.vertexAttribDivisor(M,b),I[M]=b)}function A(){const M=r.newAttributes,b=r.enabledAttributes;for(let P=0,z=b.length;P<z;P++)b[P]!==M[P]&&(i.disableVertexAttribArray(P),b[P]=0)}function T(M,b,P,z,I,k,$){$===!0?i.vertexAttribIPointer(M,b,P,I,k):i.vertexAttribPointer(M,b,P,z,I,k)}function w(M,b,P,z){x();const I=z.attributes,k=P.getAttributes(),$=b.defaultAttributeValues;for(const ee in k){const Y=k[ee];if(Y.location>=0){let W=I[ee];if(W===void 0&&(ee==="instanceMatrix"&&M.instanceMatrix&&(W=M.instanceMatrix),ee==="instanceColor"&&M.instanceColor&&(W=M.instanceColor)),W!==void 0){const Q=W.normalized,ce=W.itemSize,be=e.get(W);if(be===void 0)continue;const Ie=be.buffer,G=be.type,ie=be.bytesPerElement,H=G===i.INT||G===i.UNSIGNED_INT||W.gpuType===Po;if(W.isInterleavedBufferAttribute){const K=W.data,ue=K.stride,Se=W.offset;if(K.isInstancedInterleavedBuffer){for(let xe=0;xe<Y.locationSize;xe++)d(Y.location+xe,K.meshPerAttribute);M.isInstancedMesh!==!0&&z._maxInstanceCount===void 0&&(z._maxInstanceCount=K.meshPerAttribute*K.count)}else for(let xe=0;xe<Y.locationSize;xe++)m(Y.location+xe);i.bindBuffer(i.ARRAY_BUFFER,Ie);for(let xe=0;xe<Y.locationSize;xe++)T(Y.location+xe,ce/Y.locationSize,G,Q,ue*ie,(Se+ce/Y.locationSize*xe)*ie,H)}else{if(W.isInstancedBufferAttribute){for(let K=0;K<Y.locationSize;K++)d(Y.location+K,W.meshPerAttribute);M.isInstancedMesh!==!0&&z._maxInstanceCount===void 0&&(z._maxInstanceCount=W.meshPerAttribute*W.count)}else for(let K=0;K<Y.locationSize;K++)m(Y.location+K);i.bindBuffer(i.ARRAY_BUFFER,Ie);for(let K=0;K<Y.locationSize;K++)T(Y.location+K,ce/Y.locationSize,G,Q,ce*ie,ce/Y.locationSize*K*ie,H)}}else if($!==void 0){const Q=$[ee];if(Q!==void 0)switch(Q.length){case 2:i.vertexAttrib2fv(Y.location,Q);break;case 3:i.vertexAttrib3fv(Y.location,Q);break;case 4:i.vertexAttrib4fv(Y.location,Q);break;default:i.vertexAttrib1fv(Y.location,Q)}}}}A()}function C(){F();for(const M in n){const b=n[M];for(const P in b){const z=b[P];for(const I in z)h(z[I].object),delete z[I];delete b[P]}delete n[M]}}function D(M){if(n[M.id]===void 0)return;const b=n[M.id];for(const P in b){const z=b[P];for(const I in z)h(z[I].object),delete z[I];delete b[P]}delete n[M.id]}function L(M){for(const b in n){const P=n[b];if(P[M.id]===void 0)continue;const z=P[M.id];for(const I in z)h(z[I].object),delete z[I];delete P[M.id]}}function F(){y(),a=!0,r!==s&&(r=s,c(r.object))}function y(){s.geometry=null,s.program=null,s.wireframe=!1}return{setup:o,reset:F,resetDefaultState:y,dispose:C,releaseStatesOfGeometry:D,releaseStatesOfProgram:L,initAttributes:x,enableAttribute:m,disableUnusedAttributes:A}}function $m(i,e,t){let n;function s(c){n=c}function r(c,h){i.drawArrays(n,c,h),t.update(h,n,1)}function a(c,h,u){u!==0&&(i.drawArraysInstanced(n,c,h,u),t.update(h,n,u))}function o(c,h,u){if(u===0)return;e.get("WEBGL_multi_draw").multiDrawArraysWEBGL(n,c,0,h,0,u);let p=0;for(let g=0;g<u;g++)p+=h[g];t.update(p,n,1)}function l(c,h,u,f){if(u===0)return;const p=e.get("WEBGL_multi_draw");if(p===null)for(let g=0;g<c.length;g++)a(c[g],h[g],f[g]);else{p.multiDrawArraysInstancedWEBGL(n,c,0,h,0,f,0,u);let g=0;for(let x=0;x<u;x++)g+=h[x]*f[x];t.update(g,n,1)}}this.setMode=s,this.render=r,this.renderInstances=a,this.renderMultiDraw=o,this.renderMultiDrawInstances=l}function Xm(i,e,t,n){let s;function r(){if(s!==void 0)return s;if(e.has("EXT_texture_filter_anisotropic")===!0){const L=e.get("EXT_texture_filter_anisotropic");s=i.getParameter(L.MAX_TEXTURE_MAX_ANISOTROPY_EXT)}else s=0;return s}function a(L){return!(L!==dn&&n.convert(L)!==i.getParameter(i.IMPLEMENTATION_COLOR_READ_FORMAT))}function o(L){const F=L===ws&&(e.has("EXT_color_buffer_half_float")||e.has("EXT_color_buffer_float"));return!(L!==xn&&n.convert(L)!==i.getParameter(i.IMPLEMENTATION_COLOR_READ_TYPE)&&L!==Cn&&!F)}function l(L){if(L==="highp"){if(i.getShaderPrecisionFormat(i.VERTEX_SHADER,i.HIGH_FLOAT).precision>0&&i.getShaderPrecisionFormat(i.FRAGMENT_SHADER,i.HIGH_FLOAT).precision>0)return"highp";L="mediump"}return L==="mediump"&&i.getShaderPrecisionFormat(i.VERTEX_SHADER,i.MEDIUM_FLOAT).precision>0&&i.getShaderPrecisionFormat(i.FRAGMENT_SHADER,i.MEDIUM_FLOAT).precision>0?"mediump":"lowp"}let c=t.precision!==void 0?t.precision:"highp";const h=l(c);h!==c&&(console.warn("THREE.WebGLRenderer:",c,"not supported, using",h,"instead."),c=h);const u=t.logarithmicDepthBuffer===!0,f=t.reversedDepthBuffer===!0&&e.has("EXT_clip_control"),p=i.getParameter(i.MAX_TEXTURE_IMAGE_UNITS),g=i.getParameter(i.MAX_VERTEX_TEXTURE_IMAGE_UNITS),x=i.getParameter(i.MAX_TEXTURE_SIZE),m=i.getParameter(i.MAX_CUBE_MAP_TEXTURE_SIZE),d=i.getParameter(i.MAX_VERTEX_ATTRIBS),A=i.getParameter(i.MAX_VERTEX_UNIFORM_VECTORS),T=i.getParameter(i.MAX_VARYING_VECTORS),w=i.getParameter(i.MAX_FRAGMENT_UNIFORM_VECTORS),C=g>0,D=i.getParameter(i.MAX_SAMPLES);return{isWebGL2:!0,getMaxAnisotropy:r,getMaxPrecision:l,textureFormatReadable:a,textureTypeReadable:o,precision:c,logarithmicDepthBuffer:u,reversedDepthBuffer:f,maxTextures:p,maxVertexTextures:g,maxTextureSize:x,maxCubemapSize:m,maxAttributes:d,maxVertexUniforms:A,maxVaryings:T,maxFragmentUniforms:w,vertexTextures:C,maxSamples:D}}function qm(i){const e=this;let t=null,n=0,s=!1,r=!1;const a=new Vn,o=new $e,l={value:null,needsUpdate:!1};this.uniform=l,this.numPlanes=0,this.numIntersection=0,this.init=function(u,f){const p=u.length!==0||f||n!==0||s;return s=f,n=u.length,p},this.beginShadows=function(){r=!0,h(null)},this.endShadows=function(){r=!1},this.setGlobalState=function(u,f){t=h(u,f,0)},this.setState=function(u,f,p){const g=u.clippingPlanes,x=u.clipIntersection,m=u.clipShadows,d=i.get(u);if(!s||g===null||g.length===0||r&&!m)r?h(null):c();else{const A=r?0:n,T=A*4;let w=d.clippingState||null;l.value=w,w=h(g,f,T,p);for(let C=0;C!==T;++C)w[C]=t[C];d.clippingState=w,this.numIntersection=x?this.numPlanes:0,this.numPlanes+=A}};function c(){l.value!==t&&(l.value=t,l.needsUpdate=n>0),e.numPlanes=n,e.numIntersection=0}function h(u,f,p,g){const x=u!==null?u.length:0;let m=null;if(x!==0){if(m=l.value,g!==!0||m===null){const d=p+x*4,A=f.matrixWorldInverse;o.getNormalMatrix(A),(m===null||m.length<d)&&(m=new Float32Array(d));for(let T=0,w=p;T!==x;++T,w+=4)a.copy(u[T]).applyMatrix4(A,o),a.normal.toArray(m,w),m[w+3]=a.constant}l.value=m,l.needsUpdate=!0}return e.numPlanes=x,e.numIntersection=0,m}}function Ym(i){let e=new WeakMap;function t(a,o){return o===Ua?a.mapping=Wi:o===Na&&(a.mapping=$i),a}function n(a){if(a&&a.isTexture){const o=a.mapping;if(o===Ua||o===Na)if(e.has(a)){const l=e.get(a).texture;return t(l,a.mapping)}else{const l=a.image;if(l&&l.height>0){const c=new Vd(l.height);return c.fromEquirectangularTexture(i,a),e.set(a,c),a.addEventListener("dispose",s),t(c.texture,a.mapping)}else return null}}return a}function s(a){const o=a.target;o.removeEventListener("dispose",s);const l=e.get(o);l!==void 0&&(e.delete(o),l.dispose())}function r(){e=new WeakMap}return{get:n,dispose:r}}const Ni=4,Bl=[.125,.215,.35,.446,.526,.582],li=20,fa=new sh,zl=new Ye;let pa=null,ma=0,ga=0,_a=!1;const ai=(1+Math.sqrt(5))/2,Ii=1/ai,Hl=[new N(-ai,Ii,0),new N(ai,Ii,0),new N(-Ii,0,ai),new N(Ii,0,ai),new N(0,ai,-Ii),new N(0,ai,Ii),new N(-1,1,-1),new N(1,1,-1),new N(-1,1,1),new N(1,1,1)],jm=new N;class Vl{constructor(e){this._renderer=e,this._pingPongRenderTarget=null,this._lodMax=0,this._cubeSize=0,this._lodPlanes=[],this._sizeLods=[],this._sigmas=[],this._blurMaterial=null,this._cubemapMaterial=null,this._equirectMaterial=null,this._compileMaterial(this._blurMaterial)}fromScene(e,t=0,n=.1,s=100,r={}){const{size:a=256,position:o=jm}=r;pa=this._renderer.getRenderTarget(),ma=this._renderer.getActiveCubeFace(),ga=this._renderer.getActiveMipmapLevel(),_a=this._renderer.xr.enabled,this._renderer.xr.enabled=!1,this._setSize(a);const l=this._allocateTargets();return l.depthBuffer=!0,this._sceneToCubeUV(e,n,s,l,o),t>0&&this._blur(l,0,0,t),this._applyPMREM(l),this._cleanup(l),l}fromEquirectangular(e,t=null){return this._fromTexture(e,t)}fromCubemap(e,t=null){return this._fromTexture(e,t)}compileCubemapShader(){this._cubemapMaterial===null&&(this._cubemapMaterial=$l(),this._compileMaterial(this._cubemapMaterial))}compileEquirectangularShader(){this._equirectMaterial===null&&(this._equirectMaterial=Wl(),this._compileMaterial(this._equirectMaterial))}dispose(){this._dispose(),this._cubemapMaterial!==null&&this._cubemapMaterial.dispose(),this._equirectMaterial!==null&&this._equirectMaterial.dispose()}_setSize(e){this._lodMax=Math.floor(Math.log2(e)),this._cubeSize=Math.pow(2,this._lodMax)}_dispose(){this._blurMaterial!==null&&this._blurMaterial.dispose(),this._pingPongRenderTarget!==null&&this._pingPongRenderTarget.dispose();for(let e=0;e<this._lodPlanes.length;e++)this._lodPlanes[e].dispose()}_cleanup(e){this._renderer.setRenderTarget(pa,ma,ga),this._renderer.xr.enabled=_a,e.scissorTest=!1,nr(e,0,0,e.width,e.height)}_fromTexture(e,t){e.mapping===Wi||e.mapping===$i?this._setSize(e.image.length===0?16:e.image[0].width||e.image[0].image.width):this._setSize(e.image.width/4),pa=this._renderer.getRenderTarget(),ma=this._renderer.getActiveCubeFace(),ga=this._renderer.getActiveMipmapLevel(),_a=this._renderer.xr.enabled,this._renderer.xr.enabled=!1;const n=t||this._allocateTargets();return this._textureToCubeUV(e,n),this._applyPMREM(n),this._cleanup(n),n}_allocateTargets(){const e=3*Math.max(this._cubeSize,112),t=4*this._cubeSize,n={magFilter:gn,minFilter:gn,generateMipmaps:!1,type:ws,format:dn,colorSpace:Xi,depthBuffer:!1},s=Gl(e,t,n);if(this._pingPongRenderTarget===null||this._pingPongRenderTarget.width!==e||this._pingPongRenderTarget.height!==t){this._pingPongRenderTarget!==null&&this._dispose(),this._pingPongRenderTarget=Gl(e,t,n);const{_lodMax:r}=this;({sizeLods:this._sizeLods,lodPlanes:this._lodPlanes,sigmas:this._sigmas}=Km(r)),this._blurMaterial=Zm(r,e,t)}return s}_compileMaterial(e){const t=new Ot(this._lodPlanes[0],e);this._renderer.compile(t,fa)}_sceneToCubeUV(e,t,n,s,r){const l=new rn(90,1,t,n),c=[1,-1,1,1,1,1],h=[1,1,1,-1,-1,-1],u=this._renderer,f=u.autoClear,p=u.toneMapping;u.getClearColor(zl),u.toneMapping=qn,u.autoClear=!1,u.state.buffers.depth.getReversed()&&(u.setRenderTarget(s),u.clearDepth(),u.setRenderTarget(null));const x=new ys({name:"PMREM.Background",side:$t,depthWrite:!1,depthTest:!1}),m=new Ot(new Ki,x);let d=!1;const A=e.background;A?A.isColor&&(x.color.copy(A),e.background=null,d=!0):(x.color.copy(zl),d=!0);for(let T=0;T<6;T++){const w=T%3;w===0?(l.up.set(0,c[T],0),l.position.set(r.x,r.y,r.z),l.lookAt(r.x+h[T],r.y,r.z)):w===1?(l.up.set(0,0,c[T]),l.position.set(r.x,r.y,r.z),l.lookAt(r.x,r.y+h[T],r.z)):(l.up.set(0,c[T],0),l.position.set(r.x,r.y,r.z),l.lookAt(r.x,r.y,r.z+h[T]));const C=this._cubeSize;nr(s,w*C,T>2?C:0,C,C),u.setRenderTarget(s),d&&u.render(m,l),u.render(e,l)}m.geometry.dispose(),m.material.dispose(),u.toneMapping=p,u.autoClear=f,e.background=A}_textureToCubeUV(e,t){const n=this._renderer,s=e.mapping===Wi||e.mapping===$i;s?(this._cubemapMaterial===null&&(this._cubemapMaterial=$l()),this._cubemapMaterial.uniforms.flipEnvMap.value=e.isRenderTargetTexture===!1?-1:1):this._equirectMaterial===null&&(this._equirectMaterial=Wl());const r=s?this._cubemapMaterial:this._equirectMaterial,a=new Ot(this._lodPlanes[0],r),o=r.uniforms;o.envMap.value=e;const l=this._cubeSize;nr(t,0,0,3*l,2*l),n.setRenderTarget(t),n.render(a,fa)}_applyPMREM(e){const t=this._renderer,n=t.autoClear;t.autoClear=!1;const s=this._lodPlanes.length;for(let r=1;r<s;r++){const a=Math.sqrt(this._sigmas[r]*this._sigmas[r]-this._sigmas[r-1]*this._sigmas[r-1]),o=Hl[(s-r-1)%Hl.length];this._blur(e,r-1,r,a,o)}t.autoClear=n}_blur(e,t,n,s,r){const a=this._pingPongRenderTarget;this._halfBlur(e,a,t,n,s,"latitudinal",r),this._halfBlur(a,e,n,n,s,"longitudinal",r)}_halfBlur(e,t,n,s,r,a,o){const l=this._renderer,c=this._blurMaterial;a!=="latitudinal"&&a!=="longitudinal"&&console.error("blur direction must be either latitudinal or longitudinal!");const h=3,u=new Ot(this._lodPlanes[s],c),f=c.uniforms,p=this._sizeLods[n]-1,g=isFinite(r)?Math.PI/(2*p):2*Math.PI/(2*li-1),x=r/g,m=isFinite(r)?1+Math.floor(h*x):li;m>li&&console.warn(`sigmaRadians, ${r}, is too large and will clip, as it requested ${m} samples when the maximum is set to ${li}`);const d=[];let A=0;for(let L=0;L<li;++L){const F=L/x,y=Math.exp(-F*F/2);d.push(y),L===0?A+=y:L<m&&(A+=2*y)}for(let L=0;L<d.length;L++)d[L]=d[L]/A;f.envMap.value=e.texture,f.samples.value=m,f.weights.value=d,f.latitudinal.value=a==="latitudinal",o&&(f.poleAxis.value=o);const{_lodMax:T}=this;f.dTheta.value=g,f.mipInt.value=T-n;const w=this._sizeLods[s],C=3*w*(s>T-Ni?s-T+Ni:0),D=4*(this._cubeSize-w);nr(t,C,D,3*w,2*w),l.setRenderTarget(t),l.render(u,fa)}}function Km(i){const e=[],t=[],n=[];let s=i;const r=i-Ni+1+Bl.length;for(let a=0;a<r;a++){const o=Math.pow(2,s);t.push(o);let l=1/o;a>i-Ni?l=Bl[a-i+Ni-1]:a===0&&(l=0),n.push(l);const c=1/(o-2),h=-c,u=1+c,f=[h,h,u,h,u,u,h,h,u,u,h,u],p=6,g=6,x=3,m=2,d=1,A=new Float32Array(x*g*p),T=new Float32Array(m*g*p),w=new Float32Array(d*g*p);for(let D=0;D<p;D++){const L=D%3*2/3-1,F=D>2?0:-1,y=[L,F,0,L+2/3,F,0,L+2/3,F+1,0,L,F,0,L+2/3,F+1,0,L,F+1,0];A.set(y,x*g*D),T.set(f,m*g*D);const M=[D,D,D,D,D,D];w.set(M,d*g*D)}const C=new Dt;C.setAttribute("position",new Wt(A,x)),C.setAttribute("uv",new Wt(T,m)),C.setAttribute("faceIndex",new Wt(w,d)),e.push(C),s>Ni&&s--}return{lodPlanes:e,sizeLods:t,sigmas:n}}function Gl(i,e,t){const n=new pi(i,e,t);return n.texture.mapping=Tr,n.texture.name="PMREM.cubeUv",n.scissorTest=!0,n}function nr(i,e,t,n,s){i.viewport.set(e,t,n,s),i.scissor.set(e,t,n,s)}function Zm(i,e,t){const n=new Float32Array(li),s=new N(0,1,0);return new Kn({name:"SphericalGaussianBlur",defines:{n:li,CUBEUV_TEXEL_WIDTH:1/e,CUBEUV_TEXEL_HEIGHT:1/t,CUBEUV_MAX_MIP:`${i}.0`},uniforms:{envMap:{value:null},samples:{value:1},weights:{value:n},latitudinal:{value:!1},dTheta:{value:0},mipInt:{value:0},poleAxis:{value:s}},vertexShader:zo(),fragmentShader:`

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
		`,blending:Xn,depthTest:!1,depthWrite:!1})}function Wl(){return new Kn({name:"EquirectangularToCubeUV",uniforms:{envMap:{value:null}},vertexShader:zo(),fragmentShader:`

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
		`,blending:Xn,depthTest:!1,depthWrite:!1})}function $l(){return new Kn({name:"CubemapToCubeUV",uniforms:{envMap:{value:null},flipEnvMap:{value:-1}},vertexShader:zo(),fragmentShader:`

			precision mediump float;
			precision mediump int;

			uniform float flipEnvMap;

			varying vec3 vOutputDirection;

			uniform samplerCube envMap;

			void main() {

				gl_FragColor = textureCube( envMap, vec3( flipEnvMap * vOutputDirection.x, vOutputDirection.yz ) );

			}
		`,blending:Xn,depthTest:!1,depthWrite:!1})}function zo(){return`

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
	`}function Jm(i){let e=new WeakMap,t=null;function n(o){if(o&&o.isTexture){const l=o.mapping,c=l===Ua||l===Na,h=l===Wi||l===$i;if(c||h){let u=e.get(o);const f=u!==void 0?u.texture.pmremVersion:0;if(o.isRenderTargetTexture&&o.pmremVersion!==f)return t===null&&(t=new Vl(i)),u=c?t.fromEquirectangular(o,u):t.fromCubemap(o,u),u.texture.pmremVersion=o.pmremVersion,e.set(o,u),u.texture;if(u!==void 0)return u.texture;{const p=o.image;return c&&p&&p.height>0||h&&p&&s(p)?(t===null&&(t=new Vl(i)),u=c?t.fromEquirectangular(o):t.fromCubemap(o),u.texture.pmremVersion=o.pmremVersion,e.set(o,u),o.addEventListener("dispose",r),u.texture):null}}}return o}function s(o){let l=0;const c=6;for(let h=0;h<c;h++)o[h]!==void 0&&l++;return l===c}function r(o){const l=o.target;l.removeEventListener("dispose",r);const c=e.get(l);c!==void 0&&(e.delete(l),c.dispose())}function a(){e=new WeakMap,t!==null&&(t.dispose(),t=null)}return{get:n,dispose:a}}function Qm(i){const e={};function t(n){if(e[n]!==void 0)return e[n];let s;switch(n){case"WEBGL_depth_texture":s=i.getExtension("WEBGL_depth_texture")||i.getExtension("MOZ_WEBGL_depth_texture")||i.getExtension("WEBKIT_WEBGL_depth_texture");break;case"EXT_texture_filter_anisotropic":s=i.getExtension("EXT_texture_filter_anisotropic")||i.getExtension("MOZ_EXT_texture_filter_anisotropic")||i.getExtension("WEBKIT_EXT_texture_filter_anisotropic");break;case"WEBGL_compressed_texture_s3tc":s=i.getExtension("WEBGL_compressed_texture_s3tc")||i.getExtension("MOZ_WEBGL_compressed_texture_s3tc")||i.getExtension("WEBKIT_WEBGL_compressed_texture_s3tc");break;case"WEBGL_compressed_texture_pvrtc":s=i.getExtension("WEBGL_compressed_texture_pvrtc")||i.getExtension("WEBKIT_WEBGL_compressed_texture_pvrtc");break;default:s=i.getExtension(n)}return e[n]=s,s}return{has:function(n){return t(n)!==null},init:function(){t("EXT_color_buffer_float"),t("WEBGL_clip_cull_distance"),t("OES_texture_float_linear"),t("EXT_color_buffer_half_float"),t("WEBGL_multisampled_render_to_texture"),t("WEBGL_render_shared_exponent")},get:function(n){const s=t(n);return s===null&&xs("THREE.WebGLRenderer: "+n+" extension not supported."),s}}}function eg(i,e,t,n){const s={},r=new WeakMap;function a(u){const f=u.target;f.index!==null&&e.remove(f.index);for(const g in f.attributes)e.remove(f.attributes[g]);f.removeEventListener("dispose",a),delete s[f.id];const p=r.get(f);p&&(e.remove(p),r.delete(f)),n.releaseStatesOfGeometry(f),f.isInstancedBufferGeometry===!0&&delete f._maxInstanceCount,t.memory.geometries--}function o(u,f){return s[f.id]===!0||(f.addEventListener("dispose",a),s[f.id]=!0,t.memory.geometries++),f}function l(u){const f=u.attributes;for(const p in f)e.update(f[p],i.ARRAY_BUFFER)}function c(u){const f=[],p=u.index,g=u.attributes.position;let x=0;if(p!==null){const A=p.array;x=p.version;for(let T=0,w=A.length;T<w;T+=3){const C=A[T+0],D=A[T+1],L=A[T+2];f.push(C,D,D,L,L,C)}}else if(g!==void 0){const A=g.array;x=g.version;for(let T=0,w=A.length/3-1;T<w;T+=3){const C=T+0,D=T+1,L=T+2;f.push(C,D,D,L,L,C)}}else return;const m=new($c(f)?jc:Yc)(f,1);m.version=x;const d=r.get(u);d&&e.remove(d),r.set(u,m)}function h(u){const f=r.get(u);if(f){const p=u.index;p!==null&&f.version<p.version&&c(u)}else c(u);return r.get(u)}return{get:o,update:l,getWireframeAttribute:h}}function tg(i,e,t){let n;function s(f){n=f}let r,a;function o(f){r=f.type,a=f.bytesPerElement}function l(f,p){i.drawElements(n,p,r,f*a),t.update(p,n,1)}function c(f,p,g){g!==0&&(i.drawElementsInstanced(n,p,r,f*a,g),t.update(p,n,g))}function h(f,p,g){if(g===0)return;e.get("WEBGL_multi_draw").multiDrawElementsWEBGL(n,p,0,r,f,0,g);let m=0;for(let d=0;d<g;d++)m+=p[d];t.update(m,n,1)}function u(f,p,g,x){if(g===0)return;const m=e.get("WEBGL_multi_draw");if(m===null)for(let d=0;d<f.length;d++)c(f[d]/a,p[d],x[d]);else{m.multiDrawElementsInstancedWEBGL(n,p,0,r,f,0,x,0,g);let d=0;for(let A=0;A<g;A++)d+=p[A]*x[A];t.update(d,n,1)}}this.setMode=s,this.setIndex=o,this.render=l,this.renderInstances=c,this.renderMultiDraw=h,this.renderMultiDrawInstances=u}function ng(i){const e={geometries:0,textures:0},t={frame:0,calls:0,triangles:0,points:0,lines:0};function n(r,a,o){switch(t.calls++,a){case i.TRIANGLES:t.triangles+=o*(r/3);break;case i.LINES:t.lines+=o*(r/2);break;case i.LINE_STRIP:t.lines+=o*(r-1);break;case i.LINE_LOOP:t.lines+=o*r;break;case i.POINTS:t.points+=o*r;break;default:console.error("THREE.WebGLInfo: Unknown draw mode:",a);break}}function s(){t.calls=0,t.triangles=0,t.points=0,t.lines=0}return{memory:e,render:t,programs:null,autoReset:!0,reset:s,update:n}}function ig(i,e,t){const n=new WeakMap,s=new xt;function r(a,o,l){const c=a.morphTargetInfluences,h=o.morphAttributes.position||o.morphAttributes.normal||o.morphAttributes.color,u=h!==void 0?h.length:0;let f=n.get(o);if(f===void 0||f.count!==u){let M=function(){F.dispose(),n.delete(o),o.removeEventListener("dispose",M)};var p=M;f!==void 0&&f.texture.dispose();const g=o.morphAttributes.position!==void 0,x=o.morphAttributes.normal!==void 0,m=o.morphAttributes.color!==void 0,d=o.morphAttributes.position||[],A=o.morphAttributes.normal||[],T=o.morphAttributes.color||[];let w=0;g===!0&&(w=1),x===!0&&(w=2),m===!0&&(w=3);let C=o.attributes.position.count*w,D=1;C>e.maxTextureSize&&(D=Math.ceil(C/e.maxTextureSize),C=e.maxTextureSize);const L=new Float32Array(C*D*4*u),F=new Xc(L,C,D,u);F.type=Cn,F.needsUpdate=!0;const y=w*4;for(let b=0;b<u;b++){const P=d[b],z=A[b],I=T[b],k=C*D*4*b;for(let $=0;$<P.count;$++){const ee=$*y;g===!0&&(s.fromBufferAttribute(P,$),L[k+ee+0]=s.x,L[k+ee+1]=s.y,L[k+ee+2]=s.z,L[k+ee+3]=0),x===!0&&(s.fromBufferAttribute(z,$),L[k+ee+4]=s.x,L[k+ee+5]=s.y,L[k+ee+6]=s.z,L[k+ee+7]=0),m===!0&&(s.fromBufferAttribute(I,$),L[k+ee+8]=s.x,L[k+ee+9]=s.y,L[k+ee+10]=s.z,L[k+ee+11]=I.itemSize===4?s.w:1)}}f={count:u,texture:F,size:new ze(C,D)},n.set(o,f),o.addEventListener("dispose",M)}if(a.isInstancedMesh===!0&&a.morphTexture!==null)l.getUniforms().setValue(i,"morphTexture",a.morphTexture,t);else{let g=0;for(let m=0;m<c.length;m++)g+=c[m];const x=o.morphTargetsRelative?1:1-g;l.getUniforms().setValue(i,"morphTargetBaseInfluence",x),l.getUniforms().setValue(i,"morphTargetInfluences",c)}l.getUniforms().setValue(i,"morphTargetsTexture",f.texture,t),l.getUniforms().setValue(i,"morphTargetsTextureSize",f.size)}return{update:r}}function sg(i,e,t,n){let s=new WeakMap;function r(l){const c=n.render.frame,h=l.geometry,u=e.get(l,h);if(s.get(u)!==c&&(e.update(u),s.set(u,c)),l.isInstancedMesh&&(l.hasEventListener("dispose",o)===!1&&l.addEventListener("dispose",o),s.get(l)!==c&&(t.update(l.instanceMatrix,i.ARRAY_BUFFER),l.instanceColor!==null&&t.update(l.instanceColor,i.ARRAY_BUFFER),s.set(l,c))),l.isSkinnedMesh){const f=l.skeleton;s.get(f)!==c&&(f.update(),s.set(f,c))}return u}function a(){s=new WeakMap}function o(l){const c=l.target;c.removeEventListener("dispose",o),t.remove(c.instanceMatrix),c.instanceColor!==null&&t.remove(c.instanceColor)}return{update:r,dispose:a}}const ah=new Xt,Xl=new th(1,1),oh=new Xc,lh=new Ed,ch=new Jc,ql=[],Yl=[],jl=new Float32Array(16),Kl=new Float32Array(9),Zl=new Float32Array(4);function Ji(i,e,t){const n=i[0];if(n<=0||n>0)return i;const s=e*t;let r=ql[s];if(r===void 0&&(r=new Float32Array(s),ql[s]=r),e!==0){n.toArray(r,0);for(let a=1,o=0;a!==e;++a)o+=t,i[a].toArray(r,o)}return r}function Tt(i,e){if(i.length!==e.length)return!1;for(let t=0,n=i.length;t<n;t++)if(i[t]!==e[t])return!1;return!0}function At(i,e){for(let t=0,n=e.length;t<n;t++)i[t]=e[t]}function Pr(i,e){let t=Yl[e];t===void 0&&(t=new Int32Array(e),Yl[e]=t);for(let n=0;n!==e;++n)t[n]=i.allocateTextureUnit();return t}function rg(i,e){const t=this.cache;t[0]!==e&&(i.uniform1f(this.addr,e),t[0]=e)}function ag(i,e){const t=this.cache;if(e.x!==void 0)(t[0]!==e.x||t[1]!==e.y)&&(i.uniform2f(this.addr,e.x,e.y),t[0]=e.x,t[1]=e.y);else{if(Tt(t,e))return;i.uniform2fv(this.addr,e),At(t,e)}}function og(i,e){const t=this.cache;if(e.x!==void 0)(t[0]!==e.x||t[1]!==e.y||t[2]!==e.z)&&(i.uniform3f(this.addr,e.x,e.y,e.z),t[0]=e.x,t[1]=e.y,t[2]=e.z);else if(e.r!==void 0)(t[0]!==e.r||t[1]!==e.g||t[2]!==e.b)&&(i.uniform3f(this.addr,e.r,e.g,e.b),t[0]=e.r,t[1]=e.g,t[2]=e.b);else{if(Tt(t,e))return;i.uniform3fv(this.addr,e),At(t,e)}}function lg(i,e){const t=this.cache;if(e.x!==void 0)(t[0]!==e.x||t[1]!==e.y||t[2]!==e.z||t[3]!==e.w)&&(i.uniform4f(this.addr,e.x,e.y,e.z,e.w),t[0]=e.x,t[1]=e.y,t[2]=e.z,t[3]=e.w);else{if(Tt(t,e))return;i.uniform4fv(this.addr,e),At(t,e)}}function cg(i,e){const t=this.cache,n=e.elements;if(n===void 0){if(Tt(t,e))return;i.uniformMatrix2fv(this.addr,!1,e),At(t,e)}else{if(Tt(t,n))return;Zl.set(n),i.uniformMatrix2fv(this.addr,!1,Zl),At(t,n)}}function hg(i,e){const t=this.cache,n=e.elements;if(n===void 0){if(Tt(t,e))return;i.uniformMatrix3fv(this.addr,!1,e),At(t,e)}else{if(Tt(t,n))return;Kl.set(n),i.uniformMatrix3fv(this.addr,!1,Kl),At(t,n)}}function ug(i,e){const t=this.cache,n=e.elements;if(n===void 0){if(Tt(t,e))return;i.uniformMatrix4fv(this.addr,!1,e),At(t,e)}else{if(Tt(t,n))return;jl.set(n),i.uniformMatrix4fv(this.addr,!1,jl),At(t,n)}}function dg(i,e){const t=this.cache;t[0]!==e&&(i.uniform1i(this.addr,e),t[0]=e)}function fg(i,e){const t=this.cache;if(e.x!==void 0)(t[0]!==e.x||t[1]!==e.y)&&(i.uniform2i(this.addr,e.x,e.y),t[0]=e.x,t[1]=e.y);else{if(Tt(t,e))return;i.uniform2iv(this.addr,e),At(t,e)}}function pg(i,e){const t=this.cache;if(e.x!==void 0)(t[0]!==e.x||t[1]!==e.y||t[2]!==e.z)&&(i.uniform3i(this.addr,e.x,e.y,e.z),t[0]=e.x,t[1]=e.y,t[2]=e.z);else{if(Tt(t,e))return;i.uniform3iv(this.addr,e),At(t,e)}}function mg(i,e){const t=this.cache;if(e.x!==void 0)(t[0]!==e.x||t[1]!==e.y||t[2]!==e.z||t[3]!==e.w)&&(i.uniform4i(this.addr,e.x,e.y,e.z,e.w),t[0]=e.x,t[1]=e.y,t[2]=e.z,t[3]=e.w);else{if(Tt(t,e))return;i.uniform4iv(this.addr,e),At(t,e)}}function gg(i,e){const t=this.cache;t[0]!==e&&(i.uniform1ui(this.addr,e),t[0]=e)}function _g(i,e){const t=this.cache;if(e.x!==void 0)(t[0]!==e.x||t[1]!==e.y)&&(i.uniform2ui(this.addr,e.x,e.y),t[0]=e.x,t[1]=e.y);else{if(Tt(t,e))return;i.uniform2uiv(this.addr,e),At(t,e)}}function vg(i,e){const t=this.cache;if(e.x!==void 0)(t[0]!==e.x||t[1]!==e.y||t[2]!==e.z)&&(i.uniform3ui(this.addr,e.x,e.y,e.z),t[0]=e.x,t[1]=e.y,t[2]=e.z);else{if(Tt(t,e))return;i.uniform3uiv(this.addr,e),At(t,e)}}function xg(i,e){const t=this.cache;if(e.x!==void 0)(t[0]!==e.x||t[1]!==e.y||t[2]!==e.z||t[3]!==e.w)&&(i.uniform4ui(this.addr,e.x,e.y,e.z,e.w),t[0]=e.x,t[1]=e.y,t[2]=e.z,t[3]=e.w);else{if(Tt(t,e))return;i.uniform4uiv(this.addr,e),At(t,e)}}function yg(i,e,t){const n=this.cache,s=t.allocateTextureUnit();n[0]!==s&&(i.uniform1i(this.addr,s),n[0]=s);let r;this.type===i.SAMPLER_2D_SHADOW?(Xl.compareFunction=Wc,r=Xl):r=ah,t.setTexture2D(e||r,s)}function Mg(i,e,t){const n=this.cache,s=t.allocateTextureUnit();n[0]!==s&&(i.uniform1i(this.addr,s),n[0]=s),t.setTexture3D(e||lh,s)}function Sg(i,e,t){const n=this.cache,s=t.allocateTextureUnit();n[0]!==s&&(i.uniform1i(this.addr,s),n[0]=s),t.setTextureCube(e||ch,s)}function wg(i,e,t){const n=this.cache,s=t.allocateTextureUnit();n[0]!==s&&(i.uniform1i(this.addr,s),n[0]=s),t.setTexture2DArray(e||oh,s)}function bg(i){switch(i){case 5126:return rg;case 35664:return ag;case 35665:return og;case 35666:return lg;case 35674:return cg;case 35675:return hg;case 35676:return ug;case 5124:case 35670:return dg;case 35667:case 35671:return fg;case 35668:case 35672:return pg;case 35669:case 35673:return mg;case 5125:return gg;case 36294:return _g;case 36295:return vg;case 36296:return xg;case 35678:case 36198:case 36298:case 36306:case 35682:return yg;case 35679:case 36299:case 36307:return Mg;case 35680:case 36300:case 36308:case 36293:return Sg;case 36289:case 36303:case 36311:case 36292:return wg}}function Eg(i,e){i.uniform1fv(this.addr,e)}function Tg(i,e){const t=Ji(e,this.size,2);i.uniform2fv(this.addr,t)}function Ag(i,e){const t=Ji(e,this.size,3);i.uniform3fv(this.addr,t)}function Rg(i,e){const t=Ji(e,this.size,4);i.uniform4fv(this.addr,t)}function Cg(i,e){const t=Ji(e,this.size,4);i.uniformMatrix2fv(this.addr,!1,t)}function Pg(i,e){const t=Ji(e,this.size,9);i.uniformMatrix3fv(this.addr,!1,t)}function Dg(i,e){const t=Ji(e,this.size,16);i.uniformMatrix4fv(this.addr,!1,t)}function Lg(i,e){i.uniform1iv(this.addr,e)}function Ig(i,e){i.uniform2iv(this.addr,e)}function Ug(i,e){i.uniform3iv(this.addr,e)}function Ng(i,e){i.uniform4iv(this.addr,e)}function Fg(i,e){i.uniform1uiv(this.addr,e)}function Og(i,e){i.uniform2uiv(this.addr,e)}function kg(i,e){i.uniform3uiv(this.addr,e)}function Bg(i,e){i.uniform4uiv(this.addr,e)}function zg(i,e,t){const n=this.cache,s=e.length,r=Pr(t,s);Tt(n,r)||(i.uniform1iv(this.addr,r),At(n,r));for(let a=0;a!==s;++a)t.setTexture2D(e[a]||ah,r[a])}function Hg(i,e,t){const n=this.cache,s=e.length,r=Pr(t,s);Tt(n,r)||(i.uniform1iv(this.addr,r),At(n,r));for(let a=0;a!==s;++a)t.setTexture3D(e[a]||lh,r[a])}function Vg(i,e,t){const n=this.cache,s=e.length,r=Pr(t,s);Tt(n,r)||(i.uniform1iv(this.addr,r),At(n,r));for(let a=0;a!==s;++a)t.setTextureCube(e[a]||ch,r[a])}function Gg(i,e,t){const n=this.cache,s=e.length,r=Pr(t,s);Tt(n,r)||(i.uniform1iv(this.addr,r),At(n,r));for(let a=0;a!==s;++a)t.setTexture2DArray(e[a]||oh,r[a])}function Wg(i){switch(i){case 5126:return Eg;case 35664:return Tg;case 35665:return Ag;case 35666:return Rg;case 35674:return Cg;case 35675:return Pg;case 35676:return Dg;case 5124:case 35670:return Lg;case 35667:case 35671:return Ig;case 35668:case 35672:return Ug;case 35669:case 35673:return Ng;case 5125:return Fg;case 36294:return Og;case 36295:return kg;case 36296:return Bg;case 35678:case 36198:case 36298:case 36306:case 35682:return zg;case 35679:case 36299:case 36307:return Hg;case 35680:case 36300:case 36308:case 36293:return Vg;case 36289:case 36303:case 36311:case 36292:return Gg}}class $g{constructor(e,t,n){this.id=e,this.addr=n,this.cache=[],this.type=t.type,this.setValue=bg(t.type)}}class Xg{constructor(e,t,n){this.id=e,this.addr=n,this.cache=[],this.type=t.type,this.size=t.size,this.setValue=Wg(t.type)}}class qg{constructor(e){this.id=e,this.seq=[],this.map={}}setValue(e,t,n){const s=this.seq;for(let r=0,a=s.length;r!==a;++r){const o=s[r];o.setValue(e,t[o.id],n)}}}const va=/(\w+)(\])?(\[|\.)?/g;function Jl(i,e){i.seq.push(e),i.map[e.id]=e}function Yg(i,e,t){const n=i.name,s=n.length;for(va.lastIndex=0;;){const r=va.exec(n),a=va.lastIndex;let o=r[1];const l=r[2]==="]",c=r[3];if(l&&(o=o|0),c===void 0||c==="["&&a+2===s){Jl(t,c===void 0?new $g(o,i,e):new Xg(o,i,e));break}else{let u=t.map[o];u===void 0&&(u=new qg(o),Jl(t,u)),t=u}}}class ur{constructor(e,t){this.seq=[],this.map={};const n=e.getProgramParameter(t,e.ACTIVE_UNIFORMS);for(let s=0;s<n;++s){const r=e.getActiveUniform(t,s),a=e.getUniformLocation(t,r.name);Yg(r,a,this)}}setValue(e,t,n,s){const r=this.map[t];r!==void 0&&r.setValue(e,n,s)}setOptional(e,t,n){const s=t[n];s!==void 0&&this.setValue(e,n,s)}static upload(e,t,n,s){for(let r=0,a=t.length;r!==a;++r){const o=t[r],l=n[o.id];l.needsUpdate!==!1&&o.setValue(e,l.value,s)}}static seqWithValue(e,t){const n=[];for(let s=0,r=e.length;s!==r;++s){const a=e[s];a.id in t&&n.push(a)}return n}}function Ql(i,e,t){const n=i.createShader(e);return i.shaderSource(n,t),i.compileShader(n),n}const jg=37297;let Kg=0;function Zg(i,e){const t=i.split(`
`),n=[],s=Math.max(e-6,0),r=Math.min(e+6,t.length);for(let a=s;a<r;a++){const o=a+1;n.push(`${o===e?">":" "} ${o}: ${t[a]}`)}return n.join(`
`)}const ec=new $e;function Jg(i){et._getMatrix(ec,et.workingColorSpace,i);const e=`mat3( ${ec.elements.map(t=>t.toFixed(4))} )`;switch(et.getTransfer(i)){case vr:return[e,"LinearTransferOETF"];case st:return[e,"sRGBTransferOETF"];default:return console.warn("THREE.WebGLProgram: Unsupported color space: ",i),[e,"LinearTransferOETF"]}}function tc(i,e,t){const n=i.getShaderParameter(e,i.COMPILE_STATUS),r=(i.getShaderInfoLog(e)||"").trim();if(n&&r==="")return"";const a=/ERROR: 0:(\d+)/.exec(r);if(a){const o=parseInt(a[1]);return t.toUpperCase()+`

`+r+`

`+Zg(i.getShaderSource(e),o)}else return r}function Qg(i,e){const t=Jg(e);return[`vec4 ${i}( vec4 value ) {`,`	return ${t[1]}( vec4( value.rgb * ${t[0]}, value.a ) );`,"}"].join(`
`)}function e_(i,e){let t;switch(e){case Ju:t="Linear";break;case Qu:t="Reinhard";break;case ed:t="Cineon";break;case td:t="ACESFilmic";break;case id:t="AgX";break;case sd:t="Neutral";break;case nd:t="Custom";break;default:console.warn("THREE.WebGLProgram: Unsupported toneMapping:",e),t="Linear"}return"vec3 "+i+"( vec3 color ) { return "+t+"ToneMapping( color ); }"}const ir=new N;function t_(){et.getLuminanceCoefficients(ir);const i=ir.x.toFixed(4),e=ir.y.toFixed(4),t=ir.z.toFixed(4);return["float luminance( const in vec3 rgb ) {",`	const vec3 weights = vec3( ${i}, ${e}, ${t} );`,"	return dot( weights, rgb );","}"].join(`
`)}function n_(i){return[i.extensionClipCullDistance?"#extension GL_ANGLE_clip_cull_distance : require":"",i.extensionMultiDraw?"#extension GL_ANGLE_multi_draw : require":""].filter(ls).join(`
`)}function i_(i){const e=[];for(const t in i){const n=i[t];n!==!1&&e.push("#define "+t+" "+n)}return e.join(`
`)}function s_(i,e){const t={},n=i.getProgramParameter(e,i.ACTIVE_ATTRIBUTES);for(let s=0;s<n;s++){const r=i.getActiveAttrib(e,s),a=r.name;let o=1;r.type===i.FLOAT_MAT2&&(o=2),r.type===i.FLOAT_MAT3&&(o=3),r.type===i.FLOAT_MAT4&&(o=4),t[a]={type:r.type,location:i.getAttribLocation(e,a),locationSize:o}}return t}function ls(i){return i!==""}function nc(i,e){const t=e.numSpotLightShadows+e.numSpotLightMaps-e.numSpotLightShadowsWithMaps;return i.replace(/NUM_DIR_LIGHTS/g,e.numDirLights).replace(/NUM_SPOT_LIGHTS/g,e.numSpotLights).replace(/NUM_SPOT_LIGHT_MAPS/g,e.numSpotLightMaps).replace(/NUM_SPOT_LIGHT_COORDS/g,t).replace(/NUM_RECT_AREA_LIGHTS/g,e.numRectAreaLights).replace(/NUM_POINT_LIGHTS/g,e.numPointLights).replace(/NUM_HEMI_LIGHTS/g,e.numHemiLights).replace(/NUM_DIR_LIGHT_SHADOWS/g,e.numDirLightShadows).replace(/NUM_SPOT_LIGHT_SHADOWS_WITH_MAPS/g,e.numSpotLightShadowsWithMaps).replace(/NUM_SPOT_LIGHT_SHADOWS/g,e.numSpotLightShadows).replace(/NUM_POINT_LIGHT_SHADOWS/g,e.numPointLightShadows)}function ic(i,e){return i.replace(/NUM_CLIPPING_PLANES/g,e.numClippingPlanes).replace(/UNION_CLIPPING_PLANES/g,e.numClippingPlanes-e.numClipIntersection)}const r_=/^[ \t]*#include +<([\w\d./]+)>/gm;function go(i){return i.replace(r_,o_)}const a_=new Map;function o_(i,e){let t=qe[e];if(t===void 0){const n=a_.get(e);if(n!==void 0)t=qe[n],console.warn('THREE.WebGLRenderer: Shader chunk "%s" has been deprecated. Use "%s" instead.',e,n);else throw new Error("Can not resolve #include <"+e+">")}return go(t)}const l_=/#pragma unroll_loop_start\s+for\s*\(\s*int\s+i\s*=\s*(\d+)\s*;\s*i\s*<\s*(\d+)\s*;\s*i\s*\+\+\s*\)\s*{([\s\S]+?)}\s+#pragma unroll_loop_end/g;function sc(i){return i.replace(l_,c_)}function c_(i,e,t,n){let s="";for(let r=parseInt(e);r<parseInt(t);r++)s+=n.replace(/\[\s*i\s*\]/g,"[ "+r+" ]").replace(/UNROLLED_LOOP_INDEX/g,r);return s}function rc(i){let e=`precision ${i.precision} float;
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
#define LOW_PRECISION`),e}function h_(i){let e="SHADOWMAP_TYPE_BASIC";return i.shadowMapType===Ic?e="SHADOWMAP_TYPE_PCF":i.shadowMapType===Du?e="SHADOWMAP_TYPE_PCF_SOFT":i.shadowMapType===An&&(e="SHADOWMAP_TYPE_VSM"),e}function u_(i){let e="ENVMAP_TYPE_CUBE";if(i.envMap)switch(i.envMapMode){case Wi:case $i:e="ENVMAP_TYPE_CUBE";break;case Tr:e="ENVMAP_TYPE_CUBE_UV";break}return e}function d_(i){let e="ENVMAP_MODE_REFLECTION";if(i.envMap)switch(i.envMapMode){case $i:e="ENVMAP_MODE_REFRACTION";break}return e}function f_(i){let e="ENVMAP_BLENDING_NONE";if(i.envMap)switch(i.combine){case Co:e="ENVMAP_BLENDING_MULTIPLY";break;case Ku:e="ENVMAP_BLENDING_MIX";break;case Zu:e="ENVMAP_BLENDING_ADD";break}return e}function p_(i){const e=i.envMapCubeUVHeight;if(e===null)return null;const t=Math.log2(e)-2,n=1/e;return{texelWidth:1/(3*Math.max(Math.pow(2,t),112)),texelHeight:n,maxMip:t}}function m_(i,e,t,n){const s=i.getContext(),r=t.defines;let a=t.vertexShader,o=t.fragmentShader;const l=h_(t),c=u_(t),h=d_(t),u=f_(t),f=p_(t),p=n_(t),g=i_(r),x=s.createProgram();let m,d,A=t.glslVersion?"#version "+t.glslVersion+`
`:"";t.isRawShaderMaterial?(m=["#define SHADER_TYPE "+t.shaderType,"#define SHADER_NAME "+t.shaderName,g].filter(ls).join(`
`),m.length>0&&(m+=`
`),d=["#define SHADER_TYPE "+t.shaderType,"#define SHADER_NAME "+t.shaderName,g].filter(ls).join(`
`),d.length>0&&(d+=`
`)):(m=[rc(t),"#define SHADER_TYPE "+t.shaderType,"#define SHADER_NAME "+t.shaderName,g,t.extensionClipCullDistance?"#define USE_CLIP_DISTANCE":"",t.batching?"#define USE_BATCHING":"",t.batchingColor?"#define USE_BATCHING_COLOR":"",t.instancing?"#define USE_INSTANCING":"",t.instancingColor?"#define USE_INSTANCING_COLOR":"",t.instancingMorph?"#define USE_INSTANCING_MORPH":"",t.useFog&&t.fog?"#define USE_FOG":"",t.useFog&&t.fogExp2?"#define FOG_EXP2":"",t.map?"#define USE_MAP":"",t.envMap?"#define USE_ENVMAP":"",t.envMap?"#define "+h:"",t.lightMap?"#define USE_LIGHTMAP":"",t.aoMap?"#define USE_AOMAP":"",t.bumpMap?"#define USE_BUMPMAP":"",t.normalMap?"#define USE_NORMALMAP":"",t.normalMapObjectSpace?"#define USE_NORMALMAP_OBJECTSPACE":"",t.normalMapTangentSpace?"#define USE_NORMALMAP_TANGENTSPACE":"",t.displacementMap?"#define USE_DISPLACEMENTMAP":"",t.emissiveMap?"#define USE_EMISSIVEMAP":"",t.anisotropy?"#define USE_ANISOTROPY":"",t.anisotropyMap?"#define USE_ANISOTROPYMAP":"",t.clearcoatMap?"#define USE_CLEARCOATMAP":"",t.clearcoatRoughnessMap?"#define USE_CLEARCOAT_ROUGHNESSMAP":"",t.clearcoatNormalMap?"#define USE_CLEARCOAT_NORMALMAP":"",t.iridescenceMap?"#define USE_IRIDESCENCEMAP":"",t.iridescenceThicknessMap?"#define USE_IRIDESCENCE_THICKNESSMAP":"",t.specularMap?"#define USE_SPECULARMAP":"",t.specularColorMap?"#define USE_SPECULAR_COLORMAP":"",t.specularIntensityMap?"#define USE_SPECULAR_INTENSITYMAP":"",t.roughnessMap?"#define USE_ROUGHNESSMAP":"",t.metalnessMap?"#define USE_METALNESSMAP":"",t.alphaMap?"#define USE_ALPHAMAP":"",t.alphaHash?"#define USE_ALPHAHASH":"",t.transmission?"#define USE_TRANSMISSION":"",t.transmissionMap?"#define USE_TRANSMISSIONMAP":"",t.thicknessMap?"#define USE_THICKNESSMAP":"",t.sheenColorMap?"#define USE_SHEEN_COLORMAP":"",t.sheenRoughnessMap?"#define USE_SHEEN_ROUGHNESSMAP":"",t.mapUv?"#define MAP_UV "+t.mapUv:"",t.alphaMapUv?"#define ALPHAMAP_UV "+t.alphaMapUv:"",t.lightMapUv?"#define LIGHTMAP_UV "+t.lightMapUv:"",t.aoMapUv?"#define AOMAP_UV "+t.aoMapUv:"",t.emissiveMapUv?"#define EMISSIVEMAP_UV "+t.emissiveMapUv:"",t.bumpMapUv?"#define BUMPMAP_UV "+t.bumpMapUv:"",t.normalMapUv?"#define NORMALMAP_UV "+t.normalMapUv:"",t.displacementMapUv?"#define DISPLACEMENTMAP_UV "+t.displacementMapUv:"",t.metalnessMapUv?"#define METALNESSMAP_UV "+t.metalnessMapUv:"",t.roughnessMapUv?"#define ROUGHNESSMAP_UV "+t.roughnessMapUv:"",t.anisotropyMapUv?"#define ANISOTROPYMAP_UV "+t.anisotropyMapUv:"",t.clearcoatMapUv?"#define CLEARCOATMAP_UV "+t.clearcoatMapUv:"",t.clearcoatNormalMapUv?"#define CLEARCOAT_NORMALMAP_UV "+t.clearcoatNormalMapUv:"",t.clearcoatRoughnessMapUv?"#define CLEARCOAT_ROUGHNESSMAP_UV "+t.clearcoatRoughnessMapUv:"",t.iridescenceMapUv?"#define IRIDESCENCEMAP_UV "+t.iridescenceMapUv:"",t.iridescenceThicknessMapUv?"#define IRIDESCENCE_THICKNESSMAP_UV "+t.iridescenceThicknessMapUv:"",t.sheenColorMapUv?"#define SHEEN_COLORMAP_UV "+t.sheenColorMapUv:"",t.sheenRoughnessMapUv?"#define SHEEN_ROUGHNESSMAP_UV "+t.sheenRoughnessMapUv:"",t.specularMapUv?"#define SPECULARMAP_UV "+t.specularMapUv:"",t.specularColorMapUv?"#define SPECULAR_COLORMAP_UV "+t.specularColorMapUv:"",t.specularIntensityMapUv?"#define SPECULAR_INTENSITYMAP_UV "+t.specularIntensityMapUv:"",t.transmissionMapUv?"#define TRANSMISSIONMAP_UV "+t.transmissionMapUv:"",t.thicknessMapUv?"#define THICKNESSMAP_UV "+t.thicknessMapUv:"",t.vertexTangents&&t.flatShading===!1?"#define USE_TANGENT":"",t.vertexColors?"#define USE_COLOR":"",t.vertexAlphas?"#define USE_COLOR_ALPHA":"",t.vertexUv1s?"#define USE_UV1":"",t.vertexUv2s?"#define USE_UV2":"",t.vertexUv3s?"#define USE_UV3":"",t.pointsUvs?"#define USE_POINTS_UV":"",t.flatShading?"#define FLAT_SHADED":"",t.skinning?"#define USE_SKINNING":"",t.morphTargets?"#define USE_MORPHTARGETS":"",t.morphNormals&&t.flatShading===!1?"#define USE_MORPHNORMALS":"",t.morphColors?"#define USE_MORPHCOLORS":"",t.morphTargetsCount>0?"#define MORPHTARGETS_TEXTURE_STRIDE "+t.morphTextureStride:"",t.morphTargetsCount>0?"#define MORPHTARGETS_COUNT "+t.morphTargetsCount:"",t.doubleSided?"#define DOUBLE_SIDED":"",t.flipSided?"#define FLIP_SIDED":"",t.shadowMapEnabled?"#define USE_SHADOWMAP":"",t.shadowMapEnabled?"#define "+l:"",t.sizeAttenuation?"#define USE_SIZEATTENUATION":"",t.numLightProbes>0?"#define USE_LIGHT_PROBES":"",t.logarithmicDepthBuffer?"#define USE_LOGARITHMIC_DEPTH_BUFFER":"",t.reversedDepthBuffer?"#define USE_REVERSED_DEPTH_BUFFER":"","uniform mat4 modelMatrix;","uniform mat4 modelViewMatrix;","uniform mat4 projectionMatrix;","uniform mat4 viewMatrix;","uniform mat3 normalMatrix;","uniform vec3 cameraPosition;","uniform bool isOrthographic;","#ifdef USE_INSTANCING","	attribute mat4 instanceMatrix;","#endif","#ifdef USE_INSTANCING_COLOR","	attribute vec3 instanceColor;","#endif","#ifdef USE_INSTANCING_MORPH","	uniform sampler2D morphTexture;","#endif","attribute vec3 position;","attribute vec3 normal;","attribute vec2 uv;","#ifdef USE_UV1","	attribute vec2 uv1;","#endif","#ifdef USE_UV2","	attribute vec2 uv2;","#endif","#ifdef USE_UV3","	attribute vec2 uv3;","#endif","#ifdef USE_TANGENT","	attribute vec4 tangent;","#endif","#if defined( USE_COLOR_ALPHA )","	attribute vec4 color;","#elif defined( USE_COLOR )","	attribute vec3 color;","#endif","#ifdef USE_SKINNING","	attribute vec4 skinIndex;","	attribute vec4 skinWeight;","#endif",`
`].filter(ls).join(`
`),d=[rc(t),"#define SHADER_TYPE "+t.shaderType,"#define SHADER_NAME "+t.shaderName,g,t.useFog&&t.fog?"#define USE_FOG":"",t.useFog&&t.fogExp2?"#define FOG_EXP2":"",t.alphaToCoverage?"#define ALPHA_TO_COVERAGE":"",t.map?"#define USE_MAP":"",t.matcap?"#define USE_MATCAP":"",t.envMap?"#define USE_ENVMAP":"",t.envMap?"#define "+c:"",t.envMap?"#define "+h:"",t.envMap?"#define "+u:"",f?"#define CUBEUV_TEXEL_WIDTH "+f.texelWidth:"",f?"#define CUBEUV_TEXEL_HEIGHT "+f.texelHeight:"",f?"#define CUBEUV_MAX_MIP "+f.maxMip+".0":"",t.lightMap?"#define USE_LIGHTMAP":"",t.aoMap?"#define USE_AOMAP":"",t.bumpMap?"#define USE_BUMPMAP":"",t.normalMap?"#define USE_NORMALMAP":"",t.normalMapObjectSpace?"#define USE_NORMALMAP_OBJECTSPACE":"",t.normalMapTangentSpace?"#define USE_NORMALMAP_TANGENTSPACE":"",t.emissiveMap?"#define USE_EMISSIVEMAP":"",t.anisotropy?"#define USE_ANISOTROPY":"",t.anisotropyMap?"#define USE_ANISOTROPYMAP":"",t.clearcoat?"#define USE_CLEARCOAT":"",t.clearcoatMap?"#define USE_CLEARCOATMAP":"",t.clearcoatRoughnessMap?"#define USE_CLEARCOAT_ROUGHNESSMAP":"",t.clearcoatNormalMap?"#define USE_CLEARCOAT_NORMALMAP":"",t.dispersion?"#define USE_DISPERSION":"",t.iridescence?"#define USE_IRIDESCENCE":"",t.iridescenceMap?"#define USE_IRIDESCENCEMAP":"",t.iridescenceThicknessMap?"#define USE_IRIDESCENCE_THICKNESSMAP":"",t.specularMap?"#define USE_SPECULARMAP":"",t.specularColorMap?"#define USE_SPECULAR_COLORMAP":"",t.specularIntensityMap?"#define USE_SPECULAR_INTENSITYMAP":"",t.roughnessMap?"#define USE_ROUGHNESSMAP":"",t.metalnessMap?"#define USE_METALNESSMAP":"",t.alphaMap?"#define USE_ALPHAMAP":"",t.alphaTest?"#define USE_ALPHATEST":"",t.alphaHash?"#define USE_ALPHAHASH":"",t.sheen?"#define USE_SHEEN":"",t.sheenColorMap?"#define USE_SHEEN_COLORMAP":"",t.sheenRoughnessMap?"#define USE_SHEEN_ROUGHNESSMAP":"",t.transmission?"#define USE_TRANSMISSION":"",t.transmissionMap?"#define USE_TRANSMISSIONMAP":"",t.thicknessMap?"#define USE_THICKNESSMAP":"",t.vertexTangents&&t.flatShading===!1?"#define USE_TANGENT":"",t.vertexColors||t.instancingColor||t.batchingColor?"#define USE_COLOR":"",t.vertexAlphas?"#define USE_COLOR_ALPHA":"",t.vertexUv1s?"#define USE_UV1":"",t.vertexUv2s?"#define USE_UV2":"",t.vertexUv3s?"#define USE_UV3":"",t.pointsUvs?"#define USE_POINTS_UV":"",t.gradientMap?"#define USE_GRADIENTMAP":"",t.flatShading?"#define FLAT_SHADED":"",t.doubleSided?"#define DOUBLE_SIDED":"",t.flipSided?"#define FLIP_SIDED":"",t.shadowMapEnabled?"#define USE_SHADOWMAP":"",t.shadowMapEnabled?"#define "+l:"",t.premultipliedAlpha?"#define PREMULTIPLIED_ALPHA":"",t.numLightProbes>0?"#define USE_LIGHT_PROBES":"",t.decodeVideoTexture?"#define DECODE_VIDEO_TEXTURE":"",t.decodeVideoTextureEmissive?"#define DECODE_VIDEO_TEXTURE_EMISSIVE":"",t.logarithmicDepthBuffer?"#define USE_LOGARITHMIC_DEPTH_BUFFER":"",t.reversedDepthBuffer?"#define USE_REVERSED_DEPTH_BUFFER":"","uniform mat4 viewMatrix;","uniform vec3 cameraPosition;","uniform bool isOrthographic;",t.toneMapping!==qn?"#define TONE_MAPPING":"",t.toneMapping!==qn?qe.tonemapping_pars_fragment:"",t.toneMapping!==qn?e_("toneMapping",t.toneMapping):"",t.dithering?"#define DITHERING":"",t.opaque?"#define OPAQUE":"",qe.colorspace_pars_fragment,Qg("linearToOutputTexel",t.outputColorSpace),t_(),t.useDepthPacking?"#define DEPTH_PACKING "+t.depthPacking:"",`
`].filter(ls).join(`
`)),a=go(a),a=nc(a,t),a=ic(a,t),o=go(o),o=nc(o,t),o=ic(o,t),a=sc(a),o=sc(o),t.isRawShaderMaterial!==!0&&(A=`#version 300 es
`,m=[p,"#define attribute in","#define varying out","#define texture2D texture"].join(`
`)+`
`+m,d=["#define varying in",t.glslVersion===ll?"":"layout(location = 0) out highp vec4 pc_fragColor;",t.glslVersion===ll?"":"#define gl_FragColor pc_fragColor","#define gl_FragDepthEXT gl_FragDepth","#define texture2D texture","#define textureCube texture","#define texture2DProj textureProj","#define texture2DLodEXT textureLod","#define texture2DProjLodEXT textureProjLod","#define textureCubeLodEXT textureLod","#define texture2DGradEXT textureGrad","#define texture2DProjGradEXT textureProjGrad","#define textureCubeGradEXT textureGrad"].join(`
`)+`
`+d);const T=A+m+a,w=A+d+o,C=Ql(s,s.VERTEX_SHADER,T),D=Ql(s,s.FRAGMENT_SHADER,w);s.attachShader(x,C),s.attachShader(x,D),t.index0AttributeName!==void 0?s.bindAttribLocation(x,0,t.index0AttributeName):t.morphTargets===!0&&s.bindAttribLocation(x,0,"position"),s.linkProgram(x);function L(b){if(i.debug.checkShaderErrors){const P=s.getProgramInfoLog(x)||"",z=s.getShaderInfoLog(C)||"",I=s.getShaderInfoLog(D)||"",k=P.trim(),$=z.trim(),ee=I.trim();let Y=!0,W=!0;if(s.getProgramParameter(x,s.LINK_STATUS)===!1)if(Y=!1,typeof i.debug.onShaderError=="function")i.debug.onShaderError(s,x,C,D);else{const Q=tc(s,C,"vertex"),ce=tc(s,D,"fragment");console.error("THREE.WebGLProgram: Shader Error "+s.getError()+" - VALIDATE_STATUS "+s.getProgramParameter(x,s.VALIDATE_STATUS)+`

Material Name: `+b.name+`
Material Type: `+b.type+`

Program Info Log: `+k+`
`+Q+`
`+ce)}else k!==""?console.warn("THREE.WebGLProgram: Program Info Log:",k):($===""||ee==="")&&(W=!1);W&&(b.diagnostics={runnable:Y,programLog:k,vertexShader:{log:$,prefix:m},fragmentShader:{log:ee,prefix:d}})}s.deleteShader(C),s.deleteShader(D),F=new ur(s,x),y=s_(s,x)}let F;this.getUniforms=function(){return F===void 0&&L(this),F};let y;this.getAttributes=function(){return y===void 0&&L(this),y};let M=t.rendererExtensionParallelShaderCompile===!1;return this.isReady=function(){return M===!1&&(M=s.getProgramParameter(x,jg)),M},this.destroy=function(){n.releaseStatesOfProgram(this),s.deleteProgram(x),this.program=void 0},this.type=t.shaderType,this.name=t.shaderName,this.id=Kg++,this.cacheKey=e,this.usedTimes=1,this.program=x,this.vertexShader=C,this.fragmentShader=D,this}let g_=0;class __{constructor(){this.shaderCache=new Map,this.materialCache=new Map}update(e){const t=e.vertexShader,n=e.fragmentShader,s=this._getShaderStage(t),r=this._getShaderStage(n),a=this._getShaderCacheForMaterial(e);return a.has(s)===!1&&(a.add(s),s.usedTimes++),a.has(r)===!1&&(a.add(r),r.usedTimes++),this}remove(e){const t=this.materialCache.get(e);for(const n of t)n.usedTimes--,n.usedTimes===0&&this.shaderCache.delete(n.code);return this.materialCache.delete(e),this}getVertexShaderID(e){return this._getShaderStage(e.vertexShader).id}getFragmentShaderID(e){return this._getShaderStage(e.fragmentShader).id}dispose(){this.shaderCache.clear(),this.materialCache.clear()}_getShaderCacheForMaterial(e){const t=this.materialCache;let n=t.get(e);return n===void 0&&(n=new Set,t.set(e,n)),n}_getShaderStage(e){const t=this.shaderCache;let n=t.get(e);return n===void 0&&(n=new v_(e),t.set(e,n)),n}}class v_{constructor(e){this.id=g_++,this.code=e,this.usedTimes=0}}function x_(i,e,t,n,s,r,a){const o=new Oo,l=new __,c=new Set,h=[],u=s.logarithmicDepthBuffer,f=s.vertexTextures;let p=s.precision;const g={MeshDepthMaterial:"depth",MeshDistanceMaterial:"distanceRGBA",MeshNormalMaterial:"normal",MeshBasicMaterial:"basic",MeshLambertMaterial:"lambert",MeshPhongMaterial:"phong",MeshToonMaterial:"toon",MeshStandardMaterial:"physical",MeshPhysicalMaterial:"physical",MeshMatcapMaterial:"matcap",LineBasicMaterial:"basic",LineDashedMaterial:"dashed",PointsMaterial:"points",ShadowMaterial:"shadow",SpriteMaterial:"sprite"};function x(y){return c.add(y),y===0?"uv":`uv${y}`}function m(y,M,b,P,z){const I=P.fog,k=z.geometry,$=y.isMeshStandardMaterial?P.environment:null,ee=(y.isMeshStandardMaterial?t:e).get(y.envMap||$),Y=ee&&ee.mapping===Tr?ee.image.height:null,W=g[y.type];y.precision!==null&&(p=s.getMaxPrecision(y.precision),p!==y.precision&&console.warn("THREE.WebGLProgram.getParameters:",y.precision,"not supported, using",p,"instead."));const Q=k.morphAttributes.position||k.morphAttributes.normal||k.morphAttributes.color,ce=Q!==void 0?Q.length:0;let be=0;k.morphAttributes.position!==void 0&&(be=1),k.morphAttributes.normal!==void 0&&(be=2),k.morphAttributes.color!==void 0&&(be=3);let Ie,G,ie,H;if(W){const nt=mn[W];Ie=nt.vertexShader,G=nt.fragmentShader}else Ie=y.vertexShader,G=y.fragmentShader,l.update(y),ie=l.getVertexShaderID(y),H=l.getFragmentShaderID(y);const K=i.getRenderTarget(),ue=i.state.buffers.depth.getReversed(),Se=z.isInstancedMesh===!0,xe=z.isBatchedMesh===!0,Ve=!!y.map,Ze=!!y.matcap,R=!!ee,Je=!!y.aoMap,Fe=!!y.lightMap,De=!!y.bumpMap,ye=!!y.normalMap,ft=!!y.displacementMap,Ee=!!y.emissiveMap,Xe=!!y.metalnessMap,Rt=!!y.roughnessMap,yt=y.anisotropy>0,E=y.clearcoat>0,v=y.dispersion>0,V=y.iridescence>0,J=y.sheen>0,ne=y.transmission>0,Z=yt&&!!y.anisotropyMap,Ce=E&&!!y.clearcoatMap,le=E&&!!y.clearcoatNormalMap,Te=E&&!!y.clearcoatRoughnessMap,Ae=V&&!!y.iridescenceMap,ae=V&&!!y.iridescenceThicknessMap,me=J&&!!y.sheenColorMap,Oe=J&&!!y.sheenRoughnessMap,Re=!!y.specularMap,fe=!!y.specularColorMap,We=!!y.specularIntensityMap,U=ne&&!!y.transmissionMap,oe=ne&&!!y.thicknessMap,he=!!y.gradientMap,ve=!!y.alphaMap,se=y.alphaTest>0,te=!!y.alphaHash,we=!!y.extensions;let Ge=qn;y.toneMapped&&(K===null||K.isXRRenderTarget===!0)&&(Ge=i.toneMapping);const lt={shaderID:W,shaderType:y.type,shaderName:y.name,vertexShader:Ie,fragmentShader:G,defines:y.defines,customVertexShaderID:ie,customFragmentShaderID:H,isRawShaderMaterial:y.isRawShaderMaterial===!0,glslVersion:y.glslVersion,precision:p,batching:xe,batchingColor:xe&&z._colorsTexture!==null,instancing:Se,instancingColor:Se&&z.instanceColor!==null,instancingMorph:Se&&z.morphTexture!==null,supportsVertexTextures:f,outputColorSpace:K===null?i.outputColorSpace:K.isXRRenderTarget===!0?K.texture.colorSpace:Xi,alphaToCoverage:!!y.alphaToCoverage,map:Ve,matcap:Ze,envMap:R,envMapMode:R&&ee.mapping,envMapCubeUVHeight:Y,aoMap:Je,lightMap:Fe,bumpMap:De,normalMap:ye,displacementMap:f&&ft,emissiveMap:Ee,normalMapObjectSpace:ye&&y.normalMapType===ld,normalMapTangentSpace:ye&&y.normalMapType===Gc,metalnessMap:Xe,roughnessMap:Rt,anisotropy:yt,anisotropyMap:Z,clearcoat:E,clearcoatMap:Ce,clearcoatNormalMap:le,clearcoatRoughnessMap:Te,dispersion:v,iridescence:V,iridescenceMap:Ae,iridescenceThicknessMap:ae,sheen:J,sheenColorMap:me,sheenRoughnessMap:Oe,specularMap:Re,specularColorMap:fe,specularIntensityMap:We,transmission:ne,transmissionMap:U,thicknessMap:oe,gradientMap:he,opaque:y.transparent===!1&&y.blending===ki&&y.alphaToCoverage===!1,alphaMap:ve,alphaTest:se,alphaHash:te,combine:y.combine,mapUv:Ve&&x(y.map.channel),aoMapUv:Je&&x(y.aoMap.channel),lightMapUv:Fe&&x(y.lightMap.channel),bumpMapUv:De&&x(y.bumpMap.channel),normalMapUv:ye&&x(y.normalMap.channel),displacementMapUv:ft&&x(y.displacementMap.channel),emissiveMapUv:Ee&&x(y.emissiveMap.channel),metalnessMapUv:Xe&&x(y.metalnessMap.channel),roughnessMapUv:Rt&&x(y.roughnessMap.channel),anisotropyMapUv:Z&&x(y.anisotropyMap.channel),clearcoatMapUv:Ce&&x(y.clearcoatMap.channel),clearcoatNormalMapUv:le&&x(y.clearcoatNormalMap.channel),clearcoatRoughnessMapUv:Te&&x(y.clearcoatRoughnessMap.channel),iridescenceMapUv:Ae&&x(y.iridescenceMap.channel),iridescenceThicknessMapUv:ae&&x(y.iridescenceThicknessMap.channel),sheenColorMapUv:me&&x(y.sheenColorMap.channel),sheenRoughnessMapUv:Oe&&x(y.sheenRoughnessMap.channel),specularMapUv:Re&&x(y.specularMap.channel),specularColorMapUv:fe&&x(y.specularColorMap.channel),specularIntensityMapUv:We&&x(y.specularIntensityMap.channel),transmissionMapUv:U&&x(y.transmissionMap.channel),thicknessMapUv:oe&&x(y.thicknessMap.channel),alphaMapUv:ve&&x(y.alphaMap.channel),vertexTangents:!!k.attributes.tangent&&(ye||yt),vertexColors:y.vertexColors,vertexAlphas:y.vertexColors===!0&&!!k.attributes.color&&k.attributes.color.itemSize===4,pointsUvs:z.isPoints===!0&&!!k.attributes.uv&&(Ve||ve),fog:!!I,useFog:y.fog===!0,fogExp2:!!I&&I.isFogExp2,flatShading:y.flatShading===!0&&y.wireframe===!1,sizeAttenuation:y.sizeAttenuation===!0,logarithmicDepthBuffer:u,reversedDepthBuffer:ue,skinning:z.isSkinnedMesh===!0,morphTargets:k.morphAttributes.position!==void 0,morphNormals:k.morphAttributes.normal!==void 0,morphColors:k.morphAttributes.color!==void 0,morphTargetsCount:ce,morphTextureStride:be,numDirLights:M.directional.length,numPointLights:M.point.length,numSpotLights:M.spot.length,numSpotLightMaps:M.spotLightMap.length,numRectAreaLights:M.rectArea.length,numHemiLights:M.hemi.length,numDirLightShadows:M.directionalShadowMap.length,numPointLightShadows:M.pointShadowMap.length,numSpotLightShadows:M.spotShadowMap.length,numSpotLightShadowsWithMaps:M.numSpotLightShadowsWithMaps,numLightProbes:M.numLightProbes,numClippingPlanes:a.numPlanes,numClipIntersection:a.numIntersection,dithering:y.dithering,shadowMapEnabled:i.shadowMap.enabled&&b.length>0,shadowMapType:i.shadowMap.type,toneMapping:Ge,decodeVideoTexture:Ve&&y.map.isVideoTexture===!0&&et.getTransfer(y.map.colorSpace)===st,decodeVideoTextureEmissive:Ee&&y.emissiveMap.isVideoTexture===!0&&et.getTransfer(y.emissiveMap.colorSpace)===st,premultipliedAlpha:y.premultipliedAlpha,doubleSided:y.side===Rn,flipSided:y.side===$t,useDepthPacking:y.depthPacking>=0,depthPacking:y.depthPacking||0,index0AttributeName:y.index0AttributeName,extensionClipCullDistance:we&&y.extensions.clipCullDistance===!0&&n.has("WEBGL_clip_cull_distance"),extensionMultiDraw:(we&&y.extensions.multiDraw===!0||xe)&&n.has("WEBGL_multi_draw"),rendererExtensionParallelShaderCompile:n.has("KHR_parallel_shader_compile"),customProgramCacheKey:y.customProgramCacheKey()};return lt.vertexUv1s=c.has(1),lt.vertexUv2s=c.has(2),lt.vertexUv3s=c.has(3),c.clear(),lt}function d(y){const M=[];if(y.shaderID?M.push(y.shaderID):(M.push(y.customVertexShaderID),M.push(y.customFragmentShaderID)),y.defines!==void 0)for(const b in y.defines)M.push(b),M.push(y.defines[b]);return y.isRawShaderMaterial===!1&&(A(M,y),T(M,y),M.push(i.outputColorSpace)),M.push(y.customProgramCacheKey),M.join()}function A(y,M){y.push(M.precision),y.push(M.outputColorSpace),y.push(M.envMapMode),y.push(M.envMapCubeUVHeight),y.push(M.mapUv),y.push(M.alphaMapUv),y.push(M.lightMapUv),y.push(M.aoMapUv),y.push(M.bumpMapUv),y.push(M.normalMapUv),y.push(M.displacementMapUv),y.push(M.emissiveMapUv),y.push(M.metalnessMapUv),y.push(M.roughnessMapUv),y.push(M.anisotropyMapUv),y.push(M.clearcoatMapUv),y.push(M.clearcoatNormalMapUv),y.push(M.clearcoatRoughnessMapUv),y.push(M.iridescenceMapUv),y.push(M.iridescenceThicknessMapUv),y.push(M.sheenColorMapUv),y.push(M.sheenRoughnessMapUv),y.push(M.specularMapUv),y.push(M.specularColorMapUv),y.push(M.specularIntensityMapUv),y.push(M.transmissionMapUv),y.push(M.thicknessMapUv),y.push(M.combine),y.push(M.fogExp2),y.push(M.sizeAttenuation),y.push(M.morphTargetsCount),y.push(M.morphAttributeCount),y.push(M.numDirLights),y.push(M.numPointLights),y.push(M.numSpotLights),y.push(M.numSpotLightMaps),y.push(M.numHemiLights),y.push(M.numRectAreaLights),y.push(M.numDirLightShadows),y.push(M.numPointLightShadows),y.push(M.numSpotLightShadows),y.push(M.numSpotLightShadowsWithMaps),y.push(M.numLightProbes),y.push(M.shadowMapType),y.push(M.toneMapping),y.push(M.numClippingPlanes),y.push(M.numClipIntersection),y.push(M.depthPacking)}function T(y,M){o.disableAll(),M.supportsVertexTextures&&o.enable(0),M.instancing&&o.enable(1),M.instancingColor&&o.enable(2),M.instancingMorph&&o.enable(3),M.matcap&&o.enable(4),M.envMap&&o.enable(5),M.normalMapObjectSpace&&o.enable(6),M.normalMapTangentSpace&&o.enable(7),M.clearcoat&&o.enable(8),M.iridescence&&o.enable(9),M.alphaTest&&o.enable(10),M.vertexColors&&o.enable(11),M.vertexAlphas&&o.enable(12),M.vertexUv1s&&o.enable(13),M.vertexUv2s&&o.enable(14),M.vertexUv3s&&o.enable(15),M.vertexTangents&&o.enable(16),M.anisotropy&&o.enable(17),M.alphaHash&&o.enable(18),M.batching&&o.enable(19),M.dispersion&&o.enable(20),M.batchingColor&&o.enable(21),M.gradientMap&&o.enable(22),y.push(o.mask),o.disableAll(),M.fog&&o.enable(0),M.useFog&&o.enable(1),M.flatShading&&o.enable(2),M.logarithmicDepthBuffer&&o.enable(3),M.reversedDepthBuffer&&o.enable(4),M.skinning&&o.enable(5),M.morphTargets&&o.enable(6),M.morphNormals&&o.enable(7),M.morphColors&&o.enable(8),M.premultipliedAlpha&&o.enable(9),M.shadowMapEnabled&&o.enable(10),M.doubleSided&&o.enable(11),M.flipSided&&o.enable(12),M.useDepthPacking&&o.enable(13),M.dithering&&o.enable(14),M.transmission&&o.enable(15),M.sheen&&o.enable(16),M.opaque&&o.enable(17),M.pointsUvs&&o.enable(18),M.decodeVideoTexture&&o.enable(19),M.decodeVideoTextureEmissive&&o.enable(20),M.alphaToCoverage&&o.enable(21),y.push(o.mask)}function w(y){const M=g[y.type];let b;if(M){const P=mn[M];b=kd.clone(P.uniforms)}else b=y.uniforms;return b}function C(y,M){let b;for(let P=0,z=h.length;P<z;P++){const I=h[P];if(I.cacheKey===M){b=I,++b.usedTimes;break}}return b===void 0&&(b=new m_(i,M,y,r),h.push(b)),b}function D(y){if(--y.usedTimes===0){const M=h.indexOf(y);h[M]=h[h.length-1],h.pop(),y.destroy()}}function L(y){l.remove(y)}function F(){l.dispose()}return{getParameters:m,getProgramCacheKey:d,getUniforms:w,acquireProgram:C,releaseProgram:D,releaseShaderCache:L,programs:h,dispose:F}}function y_(){let i=new WeakMap;function e(a){return i.has(a)}function t(a){let o=i.get(a);return o===void 0&&(o={},i.set(a,o)),o}function n(a){i.delete(a)}function s(a,o,l){i.get(a)[o]=l}function r(){i=new WeakMap}return{has:e,get:t,remove:n,update:s,dispose:r}}function M_(i,e){return i.groupOrder!==e.groupOrder?i.groupOrder-e.groupOrder:i.renderOrder!==e.renderOrder?i.renderOrder-e.renderOrder:i.material.id!==e.material.id?i.material.id-e.material.id:i.z!==e.z?i.z-e.z:i.id-e.id}function ac(i,e){return i.groupOrder!==e.groupOrder?i.groupOrder-e.groupOrder:i.renderOrder!==e.renderOrder?i.renderOrder-e.renderOrder:i.z!==e.z?e.z-i.z:i.id-e.id}function oc(){const i=[];let e=0;const t=[],n=[],s=[];function r(){e=0,t.length=0,n.length=0,s.length=0}function a(u,f,p,g,x,m){let d=i[e];return d===void 0?(d={id:u.id,object:u,geometry:f,material:p,groupOrder:g,renderOrder:u.renderOrder,z:x,group:m},i[e]=d):(d.id=u.id,d.object=u,d.geometry=f,d.material=p,d.groupOrder=g,d.renderOrder=u.renderOrder,d.z=x,d.group=m),e++,d}function o(u,f,p,g,x,m){const d=a(u,f,p,g,x,m);p.transmission>0?n.push(d):p.transparent===!0?s.push(d):t.push(d)}function l(u,f,p,g,x,m){const d=a(u,f,p,g,x,m);p.transmission>0?n.unshift(d):p.transparent===!0?s.unshift(d):t.unshift(d)}function c(u,f){t.length>1&&t.sort(u||M_),n.length>1&&n.sort(f||ac),s.length>1&&s.sort(f||ac)}function h(){for(let u=e,f=i.length;u<f;u++){const p=i[u];if(p.id===null)break;p.id=null,p.object=null,p.geometry=null,p.material=null,p.group=null}}return{opaque:t,transmissive:n,transparent:s,init:r,push:o,unshift:l,finish:h,sort:c}}function S_(){let i=new WeakMap;function e(n,s){const r=i.get(n);let a;return r===void 0?(a=new oc,i.set(n,[a])):s>=r.length?(a=new oc,r.push(a)):a=r[s],a}function t(){i=new WeakMap}return{get:e,dispose:t}}function w_(){const i={};return{get:function(e){if(i[e.id]!==void 0)return i[e.id];let t;switch(e.type){case"DirectionalLight":t={direction:new N,color:new Ye};break;case"SpotLight":t={position:new N,direction:new N,color:new Ye,distance:0,coneCos:0,penumbraCos:0,decay:0};break;case"PointLight":t={position:new N,color:new Ye,distance:0,decay:0};break;case"HemisphereLight":t={direction:new N,skyColor:new Ye,groundColor:new Ye};break;case"RectAreaLight":t={color:new Ye,position:new N,halfWidth:new N,halfHeight:new N};break}return i[e.id]=t,t}}}function b_(){const i={};return{get:function(e){if(i[e.id]!==void 0)return i[e.id];let t;switch(e.type){case"DirectionalLight":t={shadowIntensity:1,shadowBias:0,shadowNormalBias:0,shadowRadius:1,shadowMapSize:new ze};break;case"SpotLight":t={shadowIntensity:1,shadowBias:0,shadowNormalBias:0,shadowRadius:1,shadowMapSize:new ze};break;case"PointLight":t={shadowIntensity:1,shadowBias:0,shadowNormalBias:0,shadowRadius:1,shadowMapSize:new ze,shadowCameraNear:1,shadowCameraFar:1e3};break}return i[e.id]=t,t}}}let E_=0;function T_(i,e){return(e.castShadow?2:0)-(i.castShadow?2:0)+(e.map?1:0)-(i.map?1:0)}function A_(i){const e=new w_,t=b_(),n={version:0,hash:{directionalLength:-1,pointLength:-1,spotLength:-1,rectAreaLength:-1,hemiLength:-1,numDirectionalShadows:-1,numPointShadows:-1,numSpotShadows:-1,numSpotMaps:-1,numLightProbes:-1},ambient:[0,0,0],probe:[],directional:[],directionalShadow:[],directionalShadowMap:[],directionalShadowMatrix:[],spot:[],spotLightMap:[],spotShadow:[],spotShadowMap:[],spotLightMatrix:[],rectArea:[],rectAreaLTC1:null,rectAreaLTC2:null,point:[],pointShadow:[],pointShadowMap:[],pointShadowMatrix:[],hemi:[],numSpotLightShadowsWithMaps:0,numLightProbes:0};for(let c=0;c<9;c++)n.probe.push(new N);const s=new N,r=new pt,a=new pt;function o(c){let h=0,u=0,f=0;for(let y=0;y<9;y++)n.probe[y].set(0,0,0);let p=0,g=0,x=0,m=0,d=0,A=0,T=0,w=0,C=0,D=0,L=0;c.sort(T_);for(let y=0,M=c.length;y<M;y++){const b=c[y],P=b.color,z=b.intensity,I=b.distance,k=b.shadow&&b.shadow.map?b.shadow.map.texture:null;if(b.isAmbientLight)h+=P.r*z,u+=P.g*z,f+=P.b*z;else if(b.isLightProbe){for(let $=0;$<9;$++)n.probe[$].addScaledVector(b.sh.coefficients[$],z);L++}else if(b.isDirectionalLight){const $=e.get(b);if($.color.copy(b.color).multiplyScalar(b.intensity),b.castShadow){const ee=b.shadow,Y=t.get(b);Y.shadowIntensity=ee.intensity,Y.shadowBias=ee.bias,Y.shadowNormalBias=ee.normalBias,Y.shadowRadius=ee.radius,Y.shadowMapSize=ee.mapSize,n.directionalShadow[p]=Y,n.directionalShadowMap[p]=k,n.directionalShadowMatrix[p]=b.shadow.matrix,A++}n.directional[p]=$,p++}else if(b.isSpotLight){const $=e.get(b);$.position.setFromMatrixPosition(b.matrixWorld),$.color.copy(P).multiplyScalar(z),$.distance=I,$.coneCos=Math.cos(b.angle),$.penumbraCos=Math.cos(b.angle*(1-b.penumbra)),$.decay=b.decay,n.spot[x]=$;const ee=b.shadow;if(b.map&&(n.spotLightMap[C]=b.map,C++,ee.updateMatrices(b),b.castShadow&&D++),n.spotLightMatrix[x]=ee.matrix,b.castShadow){const Y=t.get(b);Y.shadowIntensity=ee.intensity,Y.shadowBias=ee.bias,Y.shadowNormalBias=ee.normalBias,Y.shadowRadius=ee.radius,Y.shadowMapSize=ee.mapSize,n.spotShadow[x]=Y,n.spotShadowMap[x]=k,w++}x++}else if(b.isRectAreaLight){const $=e.get(b);$.color.copy(P).multiplyScalar(z),$.halfWidth.set(b.width*.5,0,0),$.halfHeight.set(0,b.height*.5,0),n.rectArea[m]=$,m++}else if(b.isPointLight){const $=e.get(b);if($.color.copy(b.color).multiplyScalar(b.intensity),$.distance=b.distance,$.decay=b.decay,b.castShadow){const ee=b.shadow,Y=t.get(b);Y.shadowIntensity=ee.intensity,Y.shadowBias=ee.bias,Y.shadowNormalBias=ee.normalBias,Y.shadowRadius=ee.radius,Y.shadowMapSize=ee.mapSize,Y.shadowCameraNear=ee.camera.near,Y.shadowCameraFar=ee.camera.far,n.pointShadow[g]=Y,n.pointShadowMap[g]=k,n.pointShadowMatrix[g]=b.shadow.matrix,T++}n.point[g]=$,g++}else if(b.isHemisphereLight){const $=e.get(b);$.skyColor.copy(b.color).multiplyScalar(z),$.groundColor.copy(b.groundColor).multiplyScalar(z),n.hemi[d]=$,d++}}m>0&&(i.has("OES_texture_float_linear")===!0?(n.rectAreaLTC1=de.LTC_FLOAT_1,n.rectAreaLTC2=de.LTC_FLOAT_2):(n.rectAreaLTC1=de.LTC_HALF_1,n.rectAreaLTC2=de.LTC_HALF_2)),n.ambient[0]=h,n.ambient[1]=u,n.ambient[2]=f;const F=n.hash;(F.directionalLength!==p||F.pointLength!==g||F.spotLength!==x||F.rectAreaLength!==m||F.hemiLength!==d||F.numDirectionalShadows!==A||F.numPointShadows!==T||F.numSpotShadows!==w||F.numSpotMaps!==C||F.numLightProbes!==L)&&(n.directional.length=p,n.spot.length=x,n.rectArea.length=m,n.point.length=g,n.hemi.length=d,n.directionalShadow.length=A,n.directionalShadowMap.length=A,n.pointShadow.length=T,n.pointShadowMap.length=T,n.spotShadow.length=w,n.spotShadowMap.length=w,n.directionalShadowMatrix.length=A,n.pointShadowMatrix.length=T,n.spotLightMatrix.length=w+C-D,n.spotLightMap.length=C,n.numSpotLightShadowsWithMaps=D,n.numLightProbes=L,F.directionalLength=p,F.pointLength=g,F.spotLength=x,F.rectAreaLength=m,F.hemiLength=d,F.numDirectionalShadows=A,F.numPointShadows=T,F.numSpotShadows=w,F.numSpotMaps=C,F.numLightProbes=L,n.version=E_++)}function l(c,h){let u=0,f=0,p=0,g=0,x=0;const m=h.matrixWorldInverse;for(let d=0,A=c.length;d<A;d++){const T=c[d];if(T.isDirectionalLight){const w=n.directional[u];w.direction.setFromMatrixPosition(T.matrixWorld),s.setFromMatrixPosition(T.target.matrixWorld),w.direction.sub(s),w.direction.transformDirection(m),u++}else if(T.isSpotLight){const w=n.spot[p];w.position.setFromMatrixPosition(T.matrixWorld),w.position.applyMatrix4(m),w.direction.setFromMatrixPosition(T.matrixWorld),s.setFromMatrixPosition(T.target.matrixWorld),w.direction.sub(s),w.direction.transformDirection(m),p++}else if(T.isRectAreaLight){const w=n.rectArea[g];w.position.setFromMatrixPosition(T.matrixWorld),w.position.applyMatrix4(m),a.identity(),r.copy(T.matrixWorld),r.premultiply(m),a.extractRotation(r),w.halfWidth.set(T.width*.5,0,0),w.halfHeight.set(0,T.height*.5,0),w.halfWidth.applyMatrix4(a),w.halfHeight.applyMatrix4(a),g++}else if(T.isPointLight){const w=n.point[f];w.position.setFromMatrixPosition(T.matrixWorld),w.position.applyMatrix4(m),f++}else if(T.isHemisphereLight){const w=n.hemi[x];w.direction.setFromMatrixPosition(T.matrixWorld),w.direction.transformDirection(m),x++}}}return{setup:o,setupView:l,state:n}}function lc(i){const e=new A_(i),t=[],n=[];function s(h){c.camera=h,t.length=0,n.length=0}function r(h){t.push(h)}function a(h){n.push(h)}function o(){e.setup(t)}function l(h){e.setupView(t,h)}const c={lightsArray:t,shadowsArray:n,camera:null,lights:e,transmissionRenderTarget:{}};return{init:s,state:c,setupLights:o,setupLightsView:l,pushLight:r,pushShadow:a}}function R_(i){let e=new WeakMap;function t(s,r=0){const a=e.get(s);let o;return a===void 0?(o=new lc(i),e.set(s,[o])):r>=a.length?(o=new lc(i),a.push(o)):o=a[r],o}function n(){e=new WeakMap}return{get:t,dispose:n}}const C_=`void main() {
	gl_Position = vec4( position, 1.0 );
}`,P_=`uniform sampler2D shadow_pass;
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
}`;function D_(i,e,t){let n=new ko;const s=new ze,r=new ze,a=new xt,o=new Kd({depthPacking:od}),l=new Zd,c={},h=t.maxTextureSize,u={[jn]:$t,[$t]:jn,[Rn]:Rn},f=new Kn({defines:{VSM_SAMPLES:8},uniforms:{shadow_pass:{value:null},resolution:{value:new ze},radius:{value:4}},vertexShader:C_,fragmentShader:P_}),p=f.clone();p.defines.HORIZONTAL_PASS=1;const g=new Dt;g.setAttribute("position",new Wt(new Float32Array([-1,-1,.5,3,-1,.5,-1,3,.5]),3));const x=new Ot(g,f),m=this;this.enabled=!1,this.autoUpdate=!0,this.needsUpdate=!1,this.type=Ic;let d=this.type;this.render=function(D,L,F){if(m.enabled===!1||m.autoUpdate===!1&&m.needsUpdate===!1||D.length===0)return;const y=i.getRenderTarget(),M=i.getActiveCubeFace(),b=i.getActiveMipmapLevel(),P=i.state;P.setBlending(Xn),P.buffers.depth.getReversed()===!0?P.buffers.color.setClear(0,0,0,0):P.buffers.color.setClear(1,1,1,1),P.buffers.depth.setTest(!0),P.setScissorTest(!1);const z=d!==An&&this.type===An,I=d===An&&this.type!==An;for(let k=0,$=D.length;k<$;k++){const ee=D[k],Y=ee.shadow;if(Y===void 0){console.warn("THREE.WebGLShadowMap:",ee,"has no shadow.");continue}if(Y.autoUpdate===!1&&Y.needsUpdate===!1)continue;s.copy(Y.mapSize);const W=Y.getFrameExtents();if(s.multiply(W),r.copy(Y.mapSize),(s.x>h||s.y>h)&&(s.x>h&&(r.x=Math.floor(h/W.x),s.x=r.x*W.x,Y.mapSize.x=r.x),s.y>h&&(r.y=Math.floor(h/W.y),s.y=r.y*W.y,Y.mapSize.y=r.y)),Y.map===null||z===!0||I===!0){const ce=this.type!==An?{minFilter:fn,magFilter:fn}:{};Y.map!==null&&Y.map.dispose(),Y.map=new pi(s.x,s.y,ce),Y.map.texture.name=ee.name+".shadowMap",Y.camera.updateProjectionMatrix()}i.setRenderTarget(Y.map),i.clear();const Q=Y.getViewportCount();for(let ce=0;ce<Q;ce++){const be=Y.getViewport(ce);a.set(r.x*be.x,r.y*be.y,r.x*be.z,r.y*be.w),P.viewport(a),Y.updateMatrices(ee,ce),n=Y.getFrustum(),w(L,F,Y.camera,ee,this.type)}Y.isPointLightShadow!==!0&&this.type===An&&A(Y,F),Y.needsUpdate=!1}d=this.type,m.needsUpdate=!1,i.setRenderTarget(y,M,b)};function A(D,L){const F=e.update(x);f.defines.VSM_SAMPLES!==D.blurSamples&&(f.defines.VSM_SAMPLES=D.blurSamples,p.defines.VSM_SAMPLES=D.blurSamples,f.needsUpdate=!0,p.needsUpdate=!0),D.mapPass===null&&(D.mapPass=new pi(s.x,s.y)),f.uniforms.shadow_pass.value=D.map.texture,f.uniforms.resolution.value=D.mapSize,f.uniforms.radius.value=D.radius,i.setRenderTarget(D.mapPass),i.clear(),i.renderBufferDirect(L,null,F,f,x,null),p.uniforms.shadow_pass.value=D.mapPass.texture,p.uniforms.resolution.value=D.mapSize,p.uniforms.radius.value=D.radius,i.setRenderTarget(D.map),i.clear(),i.renderBufferDirect(L,null,F,p,x,null)}function T(D,L,F,y){let M=null;const b=F.isPointLight===!0?D.customDistanceMaterial:D.customDepthMaterial;if(b!==void 0)M=b;else if(M=F.isPointLight===!0?l:o,i.localClippingEnabled&&L.clipShadows===!0&&Array.isArray(L.clippingPlanes)&&L.clippingPlanes.length!==0||L.displacementMap&&L.displacementScale!==0||L.alphaMap&&L.alphaTest>0||L.map&&L.alphaTest>0||L.alphaToCoverage===!0){const P=M.uuid,z=L.uuid;let I=c[P];I===void 0&&(I={},c[P]=I);let k=I[z];k===void 0&&(k=M.clone(),I[z]=k,L.addEventListener("dispose",C)),M=k}if(M.visible=L.visible,M.wireframe=L.wireframe,y===An?M.side=L.shadowSide!==null?L.shadowSide:L.side:M.side=L.shadowSide!==null?L.shadowSide:u[L.side],M.alphaMap=L.alphaMap,M.alphaTest=L.alphaToCoverage===!0?.5:L.alphaTest,M.map=L.map,M.clipShadows=L.clipShadows,M.clippingPlanes=L.clippingPlanes,M.clipIntersection=L.clipIntersection,M.displacementMap=L.displacementMap,M.displacementScale=L.displacementScale,M.displacementBias=L.displacementBias,M.wireframeLinewidth=L.wireframeLinewidth,M.linewidth=L.linewidth,F.isPointLight===!0&&M.isMeshDistanceMaterial===!0){const P=i.properties.get(M);P.light=F}return M}function w(D,L,F,y,M){if(D.visible===!1)return;if(D.layers.test(L.layers)&&(D.isMesh||D.isLine||D.isPoints)&&(D.castShadow||D.receiveShadow&&M===An)&&(!D.frustumCulled||n.intersectsObject(D))){D.modelViewMatrix.multiplyMatrices(F.matrixWorldInverse,D.matrixWorld);const z=e.update(D),I=D.material;if(Array.isArray(I)){const k=z.groups;for(let $=0,ee=k.length;$<ee;$++){const Y=k[$],W=I[Y.materialIndex];if(W&&W.visible){const Q=T(D,W,y,M);D.onBeforeShadow(i,D,L,F,z,Q,Y),i.renderBufferDirect(F,null,z,Q,D,Y),D.onAfterShadow(i,D,L,F,z,Q,Y)}}}else if(I.visible){const k=T(D,I,y,M);D.onBeforeShadow(i,D,L,F,z,k,null),i.renderBufferDirect(F,null,z,k,D,null),D.onAfterShadow(i,D,L,F,z,k,null)}}const P=D.children;for(let z=0,I=P.length;z<I;z++)w(P[z],L,F,y,M)}function C(D){D.target.removeEventListener("dispose",C);for(const F in c){const y=c[F],M=D.target.uuid;M in y&&(y[M].dispose(),delete y[M])}}}const L_={[Aa]:Ra,[Ca]:La,[Pa]:Ia,[Gi]:Da,[Ra]:Aa,[La]:Ca,[Ia]:Pa,[Da]:Gi};function I_(i,e){function t(){let U=!1;const oe=new xt;let he=null;const ve=new xt(0,0,0,0);return{setMask:function(se){he!==se&&!U&&(i.colorMask(se,se,se,se),he=se)},setLocked:function(se){U=se},setClear:function(se,te,we,Ge,lt){lt===!0&&(se*=Ge,te*=Ge,we*=Ge),oe.set(se,te,we,Ge),ve.equals(oe)===!1&&(i.clearColor(se,te,we,Ge),ve.copy(oe))},reset:function(){U=!1,he=null,ve.set(-1,0,0,0)}}}function n(){let U=!1,oe=!1,he=null,ve=null,se=null;return{setReversed:function(te){if(oe!==te){const we=e.get("EXT_clip_control");te?we.clipControlEXT(we.LOWER_LEFT_EXT,we.ZERO_TO_ONE_EXT):we.clipControlEXT(we.LOWER_LEFT_EXT,we.NEGATIVE_ONE_TO_ONE_EXT),oe=te;const Ge=se;se=null,this.setClear(Ge)}},getReversed:function(){return oe},setTest:function(te){te?K(i.DEPTH_TEST):ue(i.DEPTH_TEST)},setMask:function(te){he!==te&&!U&&(i.depthMask(te),he=te)},setFunc:function(te){if(oe&&(te=L_[te]),ve!==te){switch(te){case Aa:i.depthFunc(i.NEVER);break;case Ra:i.depthFunc(i.ALWAYS);break;case Ca:i.depthFunc(i.LESS);break;case Gi:i.depthFunc(i.LEQUAL);break;case Pa:i.depthFunc(i.EQUAL);break;case Da:i.depthFunc(i.GEQUAL);break;case La:i.depthFunc(i.GREATER);break;case Ia:i.depthFunc(i.NOTEQUAL);break;default:i.depthFunc(i.LEQUAL)}ve=te}},setLocked:function(te){U=te},setClear:function(te){se!==te&&(oe&&(te=1-te),i.clearDepth(te),se=te)},reset:function(){U=!1,he=null,ve=null,se=null,oe=!1}}}function s(){let U=!1,oe=null,he=null,ve=null,se=null,te=null,we=null,Ge=null,lt=null;return{setTest:function(nt){U||(nt?K(i.STENCIL_TEST):ue(i.STENCIL_TEST))},setMask:function(nt){oe!==nt&&!U&&(i.stencilMask(nt),oe=nt)},setFunc:function(nt,Mn,pn){(he!==nt||ve!==Mn||se!==pn)&&(i.stencilFunc(nt,Mn,pn),he=nt,ve=Mn,se=pn)},setOp:function(nt,Mn,pn){(te!==nt||we!==Mn||Ge!==pn)&&(i.stencilOp(nt,Mn,pn),te=nt,we=Mn,Ge=pn)},setLocked:function(nt){U=nt},setClear:function(nt){lt!==nt&&(i.clearStencil(nt),lt=nt)},reset:function(){U=!1,oe=null,he=null,ve=null,se=null,te=null,we=null,Ge=null,lt=null}}}const r=new t,a=new n,o=new s,l=new WeakMap,c=new WeakMap;let h={},u={},f=new WeakMap,p=[],g=null,x=!1,m=null,d=null,A=null,T=null,w=null,C=null,D=null,L=new Ye(0,0,0),F=0,y=!1,M=null,b=null,P=null,z=null,I=null;const k=i.getParameter(i.MAX_COMBINED_TEXTURE_IMAGE_UNITS);let $=!1,ee=0;const Y=i.getParameter(i.VERSION);Y.indexOf("WebGL")!==-1?(ee=parseFloat(/^WebGL (\d)/.exec(Y)[1]),$=ee>=1):Y.indexOf("OpenGL ES")!==-1&&(ee=parseFloat(/^OpenGL ES (\d)/.exec(Y)[1]),$=ee>=2);let W=null,Q={};const ce=i.getParameter(i.SCISSOR_BOX),be=i.getParameter(i.VIEWPORT),Ie=new xt().fromArray(ce),G=new xt().fromArray(be);function ie(U,oe,he,ve){const se=new Uint8Array(4),te=i.createTexture();i.bindTexture(U,te),i.texParameteri(U,i.TEXTURE_MIN_FILTER,i.NEAREST),i.texParameteri(U,i.TEXTURE_MAG_FILTER,i.NEAREST);for(let we=0;we<he;we++)U===i.TEXTURE_3D||U===i.TEXTURE_2D_ARRAY?i.texImage3D(oe,0,i.RGBA,1,1,ve,0,i.RGBA,i.UNSIGNED_BYTE,se):i.texImage2D(oe+we,0,i.RGBA,1,1,0,i.RGBA,i.UNSIGNED_BYTE,se);return te}const H={};H[i.TEXTURE_2D]=ie(i.TEXTURE_2D,i.TEXTURE_2D,1),H[i.TEXTURE_CUBE_MAP]=ie(i.TEXTURE_CUBE_MAP,i.TEXTURE_CUBE_MAP_POSITIVE_X,6),H[i.TEXTURE_2D_ARRAY]=ie(i.TEXTURE_2D_ARRAY,i.TEXTURE_2D_ARRAY,1,1),H[i.TEXTURE_3D]=ie(i.TEXTURE_3D,i.TEXTURE_3D,1,1),r.setClear(0,0,0,1),a.setClear(1),o.setClear(0),K(i.DEPTH_TEST),a.setFunc(Gi),De(!1),ye(nl),K(i.CULL_FACE),Je(Xn);function K(U){h[U]!==!0&&(i.enable(U),h[U]=!0)}function ue(U){h[U]!==!1&&(i.disable(U),h[U]=!1)}function Se(U,oe){return u[U]!==oe?(i.bindFramebuffer(U,oe),u[U]=oe,U===i.DRAW_FRAMEBUFFER&&(u[i.FRAMEBUFFER]=oe),U===i.FRAMEBUFFER&&(u[i.DRAW_FRAMEBUFFER]=oe),!0):!1}function xe(U,oe){let he=p,ve=!1;if(U){he=f.get(oe),he===void 0&&(he=[],f.set(oe,he));const se=U.textures;if(he.length!==se.length||he[0]!==i.COLOR_ATTACHMENT0){for(let te=0,we=se.length;te<we;te++)he[te]=i.COLOR_ATTACHMENT0+te;he.length=se.length,ve=!0}}else he[0]!==i.BACK&&(he[0]=i.BACK,ve=!0);ve&&i.drawBuffers(he)}function Ve(U){return g!==U?(i.useProgram(U),g=U,!0):!1}const Ze={[oi]:i.FUNC_ADD,[Iu]:i.FUNC_SUBTRACT,[Uu]:i.FUNC_REVERSE_SUBTRACT};Ze[Nu]=i.MIN,Ze[Fu]=i.MAX;const R={[Ou]:i.ZERO,[ku]:i.ONE,[Bu]:i.SRC_COLOR,[Ea]:i.SRC_ALPHA,[$u]:i.SRC_ALPHA_SATURATE,[Gu]:i.DST_COLOR,[Hu]:i.DST_ALPHA,[zu]:i.ONE_MINUS_SRC_COLOR,[Ta]:i.ONE_MINUS_SRC_ALPHA,[Wu]:i.ONE_MINUS_DST_COLOR,[Vu]:i.ONE_MINUS_DST_ALPHA,[Xu]:i.CONSTANT_COLOR,[qu]:i.ONE_MINUS_CONSTANT_COLOR,[Yu]:i.CONSTANT_ALPHA,[ju]:i.ONE_MINUS_CONSTANT_ALPHA};function Je(U,oe,he,ve,se,te,we,Ge,lt,nt){if(U===Xn){x===!0&&(ue(i.BLEND),x=!1);return}if(x===!1&&(K(i.BLEND),x=!0),U!==Lu){if(U!==m||nt!==y){if((d!==oi||w!==oi)&&(i.blendEquation(i.FUNC_ADD),d=oi,w=oi),nt)switch(U){case ki:i.blendFuncSeparate(i.ONE,i.ONE_MINUS_SRC_ALPHA,i.ONE,i.ONE_MINUS_SRC_ALPHA);break;case il:i.blendFunc(i.ONE,i.ONE);break;case sl:i.blendFuncSeparate(i.ZERO,i.ONE_MINUS_SRC_COLOR,i.ZERO,i.ONE);break;case rl:i.blendFuncSeparate(i.DST_COLOR,i.ONE_MINUS_SRC_ALPHA,i.ZERO,i.ONE);break;default:console.error("THREE.WebGLState: Invalid blending: ",U);break}else switch(U){case ki:i.blendFuncSeparate(i.SRC_ALPHA,i.ONE_MINUS_SRC_ALPHA,i.ONE,i.ONE_MINUS_SRC_ALPHA);break;case il:i.blendFuncSeparate(i.SRC_ALPHA,i.ONE,i.ONE,i.ONE);break;case sl:console.error("THREE.WebGLState: SubtractiveBlending requires material.premultipliedAlpha = true");break;case rl:console.error("THREE.WebGLState: MultiplyBlending requires material.premultipliedAlpha = true");break;default:console.error("THREE.WebGLState: Invalid blending: ",U);break}A=null,T=null,C=null,D=null,L.set(0,0,0),F=0,m=U,y=nt}return}se=se||oe,te=te||he,we=we||ve,(oe!==d||se!==w)&&(i.blendEquationSeparate(Ze[oe],Ze[se]),d=oe,w=se),(he!==A||ve!==T||te!==C||we!==D)&&(i.blendFuncSeparate(R[he],R[ve],R[te],R[we]),A=he,T=ve,C=te,D=we),(Ge.equals(L)===!1||lt!==F)&&(i.blendColor(Ge.r,Ge.g,Ge.b,lt),L.copy(Ge),F=lt),m=U,y=!1}function Fe(U,oe){U.side===Rn?ue(i.CULL_FACE):K(i.CULL_FACE);let he=U.side===$t;oe&&(he=!he),De(he),U.blending===ki&&U.transparent===!1?Je(Xn):Je(U.blending,U.blendEquation,U.blendSrc,U.blendDst,U.blendEquationAlpha,U.blendSrcAlpha,U.blendDstAlpha,U.blendColor,U.blendAlpha,U.premultipliedAlpha),a.setFunc(U.depthFunc),a.setTest(U.depthTest),a.setMask(U.depthWrite),r.setMask(U.colorWrite);const ve=U.stencilWrite;o.setTest(ve),ve&&(o.setMask(U.stencilWriteMask),o.setFunc(U.stencilFunc,U.stencilRef,U.stencilFuncMask),o.setOp(U.stencilFail,U.stencilZFail,U.stencilZPass)),Ee(U.polygonOffset,U.polygonOffsetFactor,U.polygonOffsetUnits),U.alphaToCoverage===!0?K(i.SAMPLE_ALPHA_TO_COVERAGE):ue(i.SAMPLE_ALPHA_TO_COVERAGE)}function De(U){M!==U&&(U?i.frontFace(i.CW):i.frontFace(i.CCW),M=U)}function ye(U){U!==Cu?(K(i.CULL_FACE),U!==b&&(U===nl?i.cullFace(i.BACK):U===Pu?i.cullFace(i.FRONT):i.cullFace(i.FRONT_AND_BACK))):ue(i.CULL_FACE),b=U}function ft(U){U!==P&&($&&i.lineWidth(U),P=U)}function Ee(U,oe,he){U?(K(i.POLYGON_OFFSET_FILL),(z!==oe||I!==he)&&(i.polygonOffset(oe,he),z=oe,I=he)):ue(i.POLYGON_OFFSET_FILL)}function Xe(U){U?K(i.SCISSOR_TEST):ue(i.SCISSOR_TEST)}function Rt(U){U===void 0&&(U=i.TEXTURE0+k-1),W!==U&&(i.activeTexture(U),W=U)}function yt(U,oe,he){he===void 0&&(W===null?he=i.TEXTURE0+k-1:he=W);let ve=Q[he];ve===void 0&&(ve={type:void 0,texture:void 0},Q[he]=ve),(ve.type!==U||ve.texture!==oe)&&(W!==he&&(i.activeTexture(he),W=he),i.bindTexture(U,oe||H[U]),ve.type=U,ve.texture=oe)}function E(){const U=Q[W];U!==void 0&&U.type!==void 0&&(i.bindTexture(U.type,null),U.type=void 0,U.texture=void 0)}function v(){try{i.compressedTexImage2D(...arguments)}catch(U){console.error("THREE.WebGLState:",U)}}function V(){try{i.compressedTexImage3D(...arguments)}catch(U){console.error("THREE.WebGLState:",U)}}function J(){try{i.texSubImage2D(...arguments)}catch(U){console.error("THREE.WebGLState:",U)}}function ne(){try{i.texSubImage3D(...arguments)}catch(U){console.error("THREE.WebGLState:",U)}}function Z(){try{i.compressedTexSubImage2D(...arguments)}catch(U){console.error("THREE.WebGLState:",U)}}function Ce(){try{i.compressedTexSubImage3D(...arguments)}catch(U){console.error("THREE.WebGLState:",U)}}function le(){try{i.texStorage2D(...arguments)}catch(U){console.error("THREE.WebGLState:",U)}}function Te(){try{i.texStorage3D(...arguments)}catch(U){console.error("THREE.WebGLState:",U)}}function Ae(){try{i.texImage2D(...arguments)}catch(U){console.error("THREE.WebGLState:",U)}}function ae(){try{i.texImage3D(...arguments)}catch(U){console.error("THREE.WebGLState:",U)}}function me(U){Ie.equals(U)===!1&&(i.scissor(U.x,U.y,U.z,U.w),Ie.copy(U))}function Oe(U){G.equals(U)===!1&&(i.viewport(U.x,U.y,U.z,U.w),G.copy(U))}function Re(U,oe){let he=c.get(oe);he===void 0&&(he=new WeakMap,c.set(oe,he));let ve=he.get(U);ve===void 0&&(ve=i.getUniformBlockIndex(oe,U.name),he.set(U,ve))}function fe(U,oe){const ve=c.get(oe).get(U);l.get(oe)!==ve&&(i.uniformBlockBinding(oe,ve,U.__bindingPointIndex),l.set(oe,ve))}function We(){i.disable(i.BLEND),i.disable(i.CULL_FACE),i.disable(i.DEPTH_TEST),i.disable(i.POLYGON_OFFSET_FILL),i.disable(i.SCISSOR_TEST),i.disable(i.STENCIL_TEST),i.disable(i.SAMPLE_ALPHA_TO_COVERAGE),i.blendEquation(i.FUNC_ADD),i.blendFunc(i.ONE,i.ZERO),i.blendFuncSeparate(i.ONE,i.ZERO,i.ONE,i.ZERO),i.blendColor(0,0,0,0),i.colorMask(!0,!0,!0,!0),i.clearColor(0,0,0,0),i.depthMask(!0),i.depthFunc(i.LESS),a.setReversed(!1),i.clearDepth(1),i.stencilMask(4294967295),i.stencilFunc(i.ALWAYS,0,4294967295),i.stencilOp(i.KEEP,i.KEEP,i.KEEP),i.clearStencil(0),i.cullFace(i.BACK),i.frontFace(i.CCW),i.polygonOffset(0,0),i.activeTexture(i.TEXTURE0),i.bindFramebuffer(i.FRAMEBUFFER,null),i.bindFramebuffer(i.DRAW_FRAMEBUFFER,null),i.bindFramebuffer(i.READ_FRAMEBUFFER,null),i.useProgram(null),i.lineWidth(1),i.scissor(0,0,i.canvas.width,i.canvas.height),i.viewport(0,0,i.canvas.width,i.canvas.height),h={},W=null,Q={},u={},f=new WeakMap,p=[],g=null,x=!1,m=null,d=null,A=null,T=null,w=null,C=null,D=null,L=new Ye(0,0,0),F=0,y=!1,M=null,b=null,P=null,z=null,I=null,Ie.set(0,0,i.canvas.width,i.canvas.height),G.set(0,0,i.canvas.width,i.canvas.height),r.reset(),a.reset(),o.reset()}return{buffers:{color:r,depth:a,stencil:o},enable:K,disable:ue,bindFramebuffer:Se,drawBuffers:xe,useProgram:Ve,setBlending:Je,setMaterial:Fe,setFlipSided:De,setCullFace:ye,setLineWidth:ft,setPolygonOffset:Ee,setScissorTest:Xe,activeTexture:Rt,bindTexture:yt,unbindTexture:E,compressedTexImage2D:v,compressedTexImage3D:V,texImage2D:Ae,texImage3D:ae,updateUBOMapping:Re,uniformBlockBinding:fe,texStorage2D:le,texStorage3D:Te,texSubImage2D:J,texSubImage3D:ne,compressedTexSubImage2D:Z,compressedTexSubImage3D:Ce,scissor:me,viewport:Oe,reset:We}}function U_(i,e,t,n,s,r,a){const o=e.has("WEBGL_multisampled_render_to_texture")?e.get("WEBGL_multisampled_render_to_texture"):null,l=typeof navigator>"u"?!1:/OculusBrowser/g.test(navigator.userAgent),c=new ze,h=new WeakMap;let u;const f=new WeakMap;let p=!1;try{p=typeof OffscreenCanvas<"u"&&new OffscreenCanvas(1,1).getContext("2d")!==null}catch{}function g(E,v){return p?new OffscreenCanvas(E,v):yr("canvas")}function x(E,v,V){let J=1;const ne=yt(E);if((ne.width>V||ne.height>V)&&(J=V/Math.max(ne.width,ne.height)),J<1)if(typeof HTMLImageElement<"u"&&E instanceof HTMLImageElement||typeof HTMLCanvasElement<"u"&&E instanceof HTMLCanvasElement||typeof ImageBitmap<"u"&&E instanceof ImageBitmap||typeof VideoFrame<"u"&&E instanceof VideoFrame){const Z=Math.floor(J*ne.width),Ce=Math.floor(J*ne.height);u===void 0&&(u=g(Z,Ce));const le=v?g(Z,Ce):u;return le.width=Z,le.height=Ce,le.getContext("2d").drawImage(E,0,0,Z,Ce),console.warn("THREE.WebGLRenderer: Texture has been resized from ("+ne.width+"x"+ne.height+") to ("+Z+"x"+Ce+")."),le}else return"data"in E&&console.warn("THREE.WebGLRenderer: Image in DataTexture is too big ("+ne.width+"x"+ne.height+")."),E;return E}function m(E){return E.generateMipmaps}function d(E){i.generateMipmap(E)}function A(E){return E.isWebGLCubeRenderTarget?i.TEXTURE_CUBE_MAP:E.isWebGL3DRenderTarget?i.TEXTURE_3D:E.isWebGLArrayRenderTarget||E.isCompressedArrayTexture?i.TEXTURE_2D_ARRAY:i.TEXTURE_2D}function T(E,v,V,J,ne=!1){if(E!==null){if(i[E]!==void 0)return i[E];console.warn("THREE.WebGLRenderer: Attempt to use non-existing WebGL internal format '"+E+"'")}let Z=v;if(v===i.RED&&(V===i.FLOAT&&(Z=i.R32F),V===i.HALF_FLOAT&&(Z=i.R16F),V===i.UNSIGNED_BYTE&&(Z=i.R8)),v===i.RED_INTEGER&&(V===i.UNSIGNED_BYTE&&(Z=i.R8UI),V===i.UNSIGNED_SHORT&&(Z=i.R16UI),V===i.UNSIGNED_INT&&(Z=i.R32UI),V===i.BYTE&&(Z=i.R8I),V===i.SHORT&&(Z=i.R16I),V===i.INT&&(Z=i.R32I)),v===i.RG&&(V===i.FLOAT&&(Z=i.RG32F),V===i.HALF_FLOAT&&(Z=i.RG16F),V===i.UNSIGNED_BYTE&&(Z=i.RG8)),v===i.RG_INTEGER&&(V===i.UNSIGNED_BYTE&&(Z=i.RG8UI),V===i.UNSIGNED_SHORT&&(Z=i.RG16UI),V===i.UNSIGNED_INT&&(Z=i.RG32UI),V===i.BYTE&&(Z=i.RG8I),V===i.SHORT&&(Z=i.RG16I),V===i.INT&&(Z=i.RG32I)),v===i.RGB_INTEGER&&(V===i.UNSIGNED_BYTE&&(Z=i.RGB8UI),V===i.UNSIGNED_SHORT&&(Z=i.RGB16UI),V===i.UNSIGNED_INT&&(Z=i.RGB32UI),V===i.BYTE&&(Z=i.RGB8I),V===i.SHORT&&(Z=i.RGB16I),V===i.INT&&(Z=i.RGB32I)),v===i.RGBA_INTEGER&&(V===i.UNSIGNED_BYTE&&(Z=i.RGBA8UI),V===i.UNSIGNED_SHORT&&(Z=i.RGBA16UI),V===i.UNSIGNED_INT&&(Z=i.RGBA32UI),V===i.BYTE&&(Z=i.RGBA8I),V===i.SHORT&&(Z=i.RGBA16I),V===i.INT&&(Z=i.RGBA32I)),v===i.RGB&&(V===i.UNSIGNED_INT_5_9_9_9_REV&&(Z=i.RGB9_E5),V===i.UNSIGNED_INT_10F_11F_11F_REV&&(Z=i.R11F_G11F_B10F)),v===i.RGBA){const Ce=ne?vr:et.getTransfer(J);V===i.FLOAT&&(Z=i.RGBA32F),V===i.HALF_FLOAT&&(Z=i.RGBA16F),V===i.UNSIGNED_BYTE&&(Z=Ce===st?i.SRGB8_ALPHA8:i.RGBA8),V===i.UNSIGNED_SHORT_4_4_4_4&&(Z=i.RGBA4),V===i.UNSIGNED_SHORT_5_5_5_1&&(Z=i.RGB5_A1)}return(Z===i.R16F||Z===i.R32F||Z===i.RG16F||Z===i.RG32F||Z===i.RGBA16F||Z===i.RGBA32F)&&e.get("EXT_color_buffer_float"),Z}function w(E,v){let V;return E?v===null||v===di||v===gs?V=i.DEPTH24_STENCIL8:v===Cn?V=i.DEPTH32F_STENCIL8:v===ms&&(V=i.DEPTH24_STENCIL8,console.warn("DepthTexture: 16 bit depth attachment is not supported with stencil. Using 24-bit attachment.")):v===null||v===di||v===gs?V=i.DEPTH_COMPONENT24:v===Cn?V=i.DEPTH_COMPONENT32F:v===ms&&(V=i.DEPTH_COMPONENT16),V}function C(E,v){return m(E)===!0||E.isFramebufferTexture&&E.minFilter!==fn&&E.minFilter!==gn?Math.log2(Math.max(v.width,v.height))+1:E.mipmaps!==void 0&&E.mipmaps.length>0?E.mipmaps.length:E.isCompressedTexture&&Array.isArray(E.image)?v.mipmaps.length:1}function D(E){const v=E.target;v.removeEventListener("dispose",D),F(v),v.isVideoTexture&&h.delete(v)}function L(E){const v=E.target;v.removeEventListener("dispose",L),M(v)}function F(E){const v=n.get(E);if(v.__webglInit===void 0)return;const V=E.source,J=f.get(V);if(J){const ne=J[v.__cacheKey];ne.usedTimes--,ne.usedTimes===0&&y(E),Object.keys(J).length===0&&f.delete(V)}n.remove(E)}function y(E){const v=n.get(E);i.deleteTexture(v.__webglTexture);const V=E.source,J=f.get(V);delete J[v.__cacheKey],a.memory.textures--}function M(E){const v=n.get(E);if(E.depthTexture&&(E.depthTexture.dispose(),n.remove(E.depthTexture)),E.isWebGLCubeRenderTarget)for(let J=0;J<6;J++){if(Array.isArray(v.__webglFramebuffer[J]))for(let ne=0;ne<v.__webglFramebuffer[J].length;ne++)i.deleteFramebuffer(v.__webglFramebuffer[J][ne]);else i.deleteFramebuffer(v.__webglFramebuffer[J]);v.__webglDepthbuffer&&i.deleteRenderbuffer(v.__webglDepthbuffer[J])}else{if(Array.isArray(v.__webglFramebuffer))for(let J=0;J<v.__webglFramebuffer.length;J++)i.deleteFramebuffer(v.__webglFramebuffer[J]);else i.deleteFramebuffer(v.__webglFramebuffer);if(v.__webglDepthbuffer&&i.deleteRenderbuffer(v.__webglDepthbuffer),v.__webglMultisampledFramebuffer&&i.deleteFramebuffer(v.__webglMultisampledFramebuffer),v.__webglColorRenderbuffer)for(let J=0;J<v.__webglColorRenderbuffer.length;J++)v.__webglColorRenderbuffer[J]&&i.deleteRenderbuffer(v.__webglColorRenderbuffer[J]);v.__webglDepthRenderbuffer&&i.deleteRenderbuffer(v.__webglDepthRenderbuffer)}const V=E.textures;for(let J=0,ne=V.length;J<ne;J++){const Z=n.get(V[J]);Z.__webglTexture&&(i.deleteTexture(Z.__webglTexture),a.memory.textures--),n.remove(V[J])}n.remove(E)}let b=0;function P(){b=0}function z(){const E=b;return E>=s.maxTextures&&console.warn("THREE.WebGLTextures: Trying to use "+E+" texture units while this GPU supports only "+s.maxTextures),b+=1,E}function I(E){const v=[];return v.push(E.wrapS),v.push(E.wrapT),v.push(E.wrapR||0),v.push(E.magFilter),v.push(E.minFilter),v.push(E.anisotropy),v.push(E.internalFormat),v.push(E.format),v.push(E.type),v.push(E.generateMipmaps),v.push(E.premultiplyAlpha),v.push(E.flipY),v.push(E.unpackAlignment),v.push(E.colorSpace),v.join()}function k(E,v){const V=n.get(E);if(E.isVideoTexture&&Xe(E),E.isRenderTargetTexture===!1&&E.isExternalTexture!==!0&&E.version>0&&V.__version!==E.version){const J=E.image;if(J===null)console.warn("THREE.WebGLRenderer: Texture marked for update but no image data found.");else if(J.complete===!1)console.warn("THREE.WebGLRenderer: Texture marked for update but image is incomplete");else{H(V,E,v);return}}else E.isExternalTexture&&(V.__webglTexture=E.sourceTexture?E.sourceTexture:null);t.bindTexture(i.TEXTURE_2D,V.__webglTexture,i.TEXTURE0+v)}function $(E,v){const V=n.get(E);if(E.isRenderTargetTexture===!1&&E.version>0&&V.__version!==E.version){H(V,E,v);return}t.bindTexture(i.TEXTURE_2D_ARRAY,V.__webglTexture,i.TEXTURE0+v)}function ee(E,v){const V=n.get(E);if(E.isRenderTargetTexture===!1&&E.version>0&&V.__version!==E.version){H(V,E,v);return}t.bindTexture(i.TEXTURE_3D,V.__webglTexture,i.TEXTURE0+v)}function Y(E,v){const V=n.get(E);if(E.version>0&&V.__version!==E.version){K(V,E,v);return}t.bindTexture(i.TEXTURE_CUBE_MAP,V.__webglTexture,i.TEXTURE0+v)}const W={[Fa]:i.REPEAT,[hi]:i.CLAMP_TO_EDGE,[Oa]:i.MIRRORED_REPEAT},Q={[fn]:i.NEAREST,[rd]:i.NEAREST_MIPMAP_NEAREST,[Ls]:i.NEAREST_MIPMAP_LINEAR,[gn]:i.LINEAR,[zr]:i.LINEAR_MIPMAP_NEAREST,[ui]:i.LINEAR_MIPMAP_LINEAR},ce={[cd]:i.NEVER,[md]:i.ALWAYS,[hd]:i.LESS,[Wc]:i.LEQUAL,[ud]:i.EQUAL,[pd]:i.GEQUAL,[dd]:i.GREATER,[fd]:i.NOTEQUAL};function be(E,v){if(v.type===Cn&&e.has("OES_texture_float_linear")===!1&&(v.magFilter===gn||v.magFilter===zr||v.magFilter===Ls||v.magFilter===ui||v.minFilter===gn||v.minFilter===zr||v.minFilter===Ls||v.minFilter===ui)&&console.warn("THREE.WebGLRenderer: Unable to use linear filtering with floating point textures. OES_texture_float_linear not supported on this device."),i.texParameteri(E,i.TEXTURE_WRAP_S,W[v.wrapS]),i.texParameteri(E,i.TEXTURE_WRAP_T,W[v.wrapT]),(E===i.TEXTURE_3D||E===i.TEXTURE_2D_ARRAY)&&i.texParameteri(E,i.TEXTURE_WRAP_R,W[v.wrapR]),i.texParameteri(E,i.TEXTURE_MAG_FILTER,Q[v.magFilter]),i.texParameteri(E,i.TEXTURE_MIN_FILTER,Q[v.minFilter]),v.compareFunction&&(i.texParameteri(E,i.TEXTURE_COMPARE_MODE,i.COMPARE_REF_TO_TEXTURE),i.texParameteri(E,i.TEXTURE_COMPARE_FUNC,ce[v.compareFunction])),e.has("EXT_texture_filter_anisotropic")===!0){if(v.magFilter===fn||v.minFilter!==Ls&&v.minFilter!==ui||v.type===Cn&&e.has("OES_texture_float_linear")===!1)return;if(v.anisotropy>1||n.get(v).__currentAnisotropy){const V=e.get("EXT_texture_filter_anisotropic");i.texParameterf(E,V.TEXTURE_MAX_ANISOTROPY_EXT,Math.min(v.anisotropy,s.getMaxAnisotropy())),n.get(v).__currentAnisotropy=v.anisotropy}}}function Ie(E,v){let V=!1;E.__webglInit===void 0&&(E.__webglInit=!0,v.addEventListener("dispose",D));const J=v.source;let ne=f.get(J);ne===void 0&&(ne={},f.set(J,ne));const Z=I(v);if(Z!==E.__cacheKey){ne[Z]===void 0&&(ne[Z]={texture:i.createTexture(),usedTimes:0},a.memory.textures++,V=!0),ne[Z].usedTimes++;const Ce=ne[E.__cacheKey];Ce!==void 0&&(ne[E.__cacheKey].usedTimes--,Ce.usedTimes===0&&y(v)),E.__cacheKey=Z,E.__webglTexture=ne[Z].texture}return V}function G(E,v,V){return Math.floor(Math.floor(E/V)/v)}function ie(E,v,V,J){const Z=E.updateRanges;if(Z.length===0)t.texSubImage2D(i.TEXTURE_2D,0,0,0,v.width,v.height,V,J,v.data);else{Z.sort((ae,me)=>ae.start-me.start);let Ce=0;for(let ae=1;ae<Z.length;ae++){const me=Z[Ce],Oe=Z[ae],Re=me.start+me.count,fe=G(Oe.start,v.width,4),We=G(me.start,v.width,4);Oe.start<=Re+1&&fe===We&&G(Oe.start+Oe.count-1,v.width,4)===fe?me.count=Math.max(me.count,Oe.start+Oe.count-me.start):(++Ce,Z[Ce]=Oe)}Z.length=Ce+1;const le=i.getParameter(i.UNPACK_ROW_LENGTH),Te=i.getParameter(i.UNPACK_SKIP_PIXELS),Ae=i.getParameter(i.UNPACK_SKIP_ROWS);i.pixelStorei(i.UNPACK_ROW_LENGTH,v.width);for(let ae=0,me=Z.length;ae<me;ae++){const Oe=Z[ae],Re=Math.floor(Oe.start/4),fe=Math.ceil(Oe.count/4),We=Re%v.width,U=Math.floor(Re/v.width),oe=fe,he=1;i.pixelStorei(i.UNPACK_SKIP_PIXELS,We),i.pixelStorei(i.UNPACK_SKIP_ROWS,U),t.texSubImage2D(i.TEXTURE_2D,0,We,U,oe,he,V,J,v.data)}E.clearUpdateRanges(),i.pixelStorei(i.UNPACK_ROW_LENGTH,le),i.pixelStorei(i.UNPACK_SKIP_PIXELS,Te),i.pixelStorei(i.UNPACK_SKIP_ROWS,Ae)}}function H(E,v,V){let J=i.TEXTURE_2D;(v.isDataArrayTexture||v.isCompressedArrayTexture)&&(J=i.TEXTURE_2D_ARRAY),v.isData3DTexture&&(J=i.TEXTURE_3D);const ne=Ie(E,v),Z=v.source;t.bindTexture(J,E.__webglTexture,i.TEXTURE0+V);const Ce=n.get(Z);if(Z.version!==Ce.__version||ne===!0){t.activeTexture(i.TEXTURE0+V);const le=et.getPrimaries(et.workingColorSpace),Te=v.colorSpace===Wn?null:et.getPrimaries(v.colorSpace),Ae=v.colorSpace===Wn||le===Te?i.NONE:i.BROWSER_DEFAULT_WEBGL;i.pixelStorei(i.UNPACK_FLIP_Y_WEBGL,v.flipY),i.pixelStorei(i.UNPACK_PREMULTIPLY_ALPHA_WEBGL,v.premultiplyAlpha),i.pixelStorei(i.UNPACK_ALIGNMENT,v.unpackAlignment),i.pixelStorei(i.UNPACK_COLORSPACE_CONVERSION_WEBGL,Ae);let ae=x(v.image,!1,s.maxTextureSize);ae=Rt(v,ae);const me=r.convert(v.format,v.colorSpace),Oe=r.convert(v.type);let Re=T(v.internalFormat,me,Oe,v.colorSpace,v.isVideoTexture);be(J,v);let fe;const We=v.mipmaps,U=v.isVideoTexture!==!0,oe=Ce.__version===void 0||ne===!0,he=Z.dataReady,ve=C(v,ae);if(v.isDepthTexture)Re=w(v.format===vs,v.type),oe&&(U?t.texStorage2D(i.TEXTURE_2D,1,Re,ae.width,ae.height):t.texImage2D(i.TEXTURE_2D,0,Re,ae.width,ae.height,0,me,Oe,null));else if(v.isDataTexture)if(We.length>0){U&&oe&&t.texStorage2D(i.TEXTURE_2D,ve,Re,We[0].width,We[0].height);for(let se=0,te=We.length;se<te;se++)fe=We[se],U?he&&t.texSubImage2D(i.TEXTURE_2D,se,0,0,fe.width,fe.height,me,Oe,fe.data):t.texImage2D(i.TEXTURE_2D,se,Re,fe.width,fe.height,0,me,Oe,fe.data);v.generateMipmaps=!1}else U?(oe&&t.texStorage2D(i.TEXTURE_2D,ve,Re,ae.width,ae.height),he&&ie(v,ae,me,Oe)):t.texImage2D(i.TEXTURE_2D,0,Re,ae.width,ae.height,0,me,Oe,ae.data);else if(v.isCompressedTexture)if(v.isCompressedArrayTexture){U&&oe&&t.texStorage3D(i.TEXTURE_2D_ARRAY,ve,Re,We[0].width,We[0].height,ae.depth);for(let se=0,te=We.length;se<te;se++)if(fe=We[se],v.format!==dn)if(me!==null)if(U){if(he)if(v.layerUpdates.size>0){const we=kl(fe.width,fe.height,v.format,v.type);for(const Ge of v.layerUpdates){const lt=fe.data.subarray(Ge*we/fe.data.BYTES_PER_ELEMENT,(Ge+1)*we/fe.data.BYTES_PER_ELEMENT);t.compressedTexSubImage3D(i.TEXTURE_2D_ARRAY,se,0,0,Ge,fe.width,fe.height,1,me,lt)}v.clearLayerUpdates()}else t.compressedTexSubImage3D(i.TEXTURE_2D_ARRAY,se,0,0,0,fe.width,fe.height,ae.depth,me,fe.data)}else t.compressedTexImage3D(i.TEXTURE_2D_ARRAY,se,Re,fe.width,fe.height,ae.depth,0,fe.data,0,0);else console.warn("THREE.WebGLRenderer: Attempt to load unsupported compressed texture format in .uploadTexture()");else U?he&&t.texSubImage3D(i.TEXTURE_2D_ARRAY,se,0,0,0,fe.width,fe.height,ae.depth,me,Oe,fe.data):t.texImage3D(i.TEXTURE_2D_ARRAY,se,Re,fe.width,fe.height,ae.depth,0,me,Oe,fe.data)}else{U&&oe&&t.texStorage2D(i.TEXTURE_2D,ve,Re,We[0].width,We[0].height);for(let se=0,te=We.length;se<te;se++)fe=We[se],v.format!==dn?me!==null?U?he&&t.compressedTexSubImage2D(i.TEXTURE_2D,se,0,0,fe.width,fe.height,me,fe.data):t.compressedTexImage2D(i.TEXTURE_2D,se,Re,fe.width,fe.height,0,fe.data):console.warn("THREE.WebGLRenderer: Attempt to load unsupported compressed texture format in .uploadTexture()"):U?he&&t.texSubImage2D(i.TEXTURE_2D,se,0,0,fe.width,fe.height,me,Oe,fe.data):t.texImage2D(i.TEXTURE_2D,se,Re,fe.width,fe.height,0,me,Oe,fe.data)}else if(v.isDataArrayTexture)if(U){if(oe&&t.texStorage3D(i.TEXTURE_2D_ARRAY,ve,Re,ae.width,ae.height,ae.depth),he)if(v.layerUpdates.size>0){const se=kl(ae.width,ae.height,v.format,v.type);for(const te of v.layerUpdates){const we=ae.data.subarray(te*se/ae.data.BYTES_PER_ELEMENT,(te+1)*se/ae.data.BYTES_PER_ELEMENT);t.texSubImage3D(i.TEXTURE_2D_ARRAY,0,0,0,te,ae.width,ae.height,1,me,Oe,we)}v.clearLayerUpdates()}else t.texSubImage3D(i.TEXTURE_2D_ARRAY,0,0,0,0,ae.width,ae.height,ae.depth,me,Oe,ae.data)}else t.texImage3D(i.TEXTURE_2D_ARRAY,0,Re,ae.width,ae.height,ae.depth,0,me,Oe,ae.data);else if(v.isData3DTexture)U?(oe&&t.texStorage3D(i.TEXTURE_3D,ve,Re,ae.width,ae.height,ae.depth),he&&t.texSubImage3D(i.TEXTURE_3D,0,0,0,0,ae.width,ae.height,ae.depth,me,Oe,ae.data)):t.texImage3D(i.TEXTURE_3D,0,Re,ae.width,ae.height,ae.depth,0,me,Oe,ae.data);else if(v.isFramebufferTexture){if(oe)if(U)t.texStorage2D(i.TEXTURE_2D,ve,Re,ae.width,ae.height);else{let se=ae.width,te=ae.height;for(let we=0;we<ve;we++)t.texImage2D(i.TEXTURE_2D,we,Re,se,te,0,me,Oe,null),se>>=1,te>>=1}}else if(We.length>0){if(U&&oe){const se=yt(We[0]);t.texStorage2D(i.TEXTURE_2D,ve,Re,se.width,se.height)}for(let se=0,te=We.length;se<te;se++)fe=We[se],U?he&&t.texSubImage2D(i.TEXTURE_2D,se,0,0,me,Oe,fe):t.texImage2D(i.TEXTURE_2D,se,Re,me,Oe,fe);v.generateMipmaps=!1}else if(U){if(oe){const se=yt(ae);t.texStorage2D(i.TEXTURE_2D,ve,Re,se.width,se.height)}he&&t.texSubImage2D(i.TEXTURE_2D,0,0,0,me,Oe,ae)}else t.texImage2D(i.TEXTURE_2D,0,Re,me,Oe,ae);m(v)&&d(J),Ce.__version=Z.version,v.onUpdate&&v.onUpdate(v)}E.__version=v.version}function K(E,v,V){if(v.image.length!==6)return;const J=Ie(E,v),ne=v.source;t.bindTexture(i.TEXTURE_CUBE_MAP,E.__webglTexture,i.TEXTURE0+V);const Z=n.get(ne);if(ne.version!==Z.__version||J===!0){t.activeTexture(i.TEXTURE0+V);const Ce=et.getPrimaries(et.workingColorSpace),le=v.colorSpace===Wn?null:et.getPrimaries(v.colorSpace),Te=v.colorSpace===Wn||Ce===le?i.NONE:i.BROWSER_DEFAULT_WEBGL;i.pixelStorei(i.UNPACK_FLIP_Y_WEBGL,v.flipY),i.pixelStorei(i.UNPACK_PREMULTIPLY_ALPHA_WEBGL,v.premultiplyAlpha),i.pixelStorei(i.UNPACK_ALIGNMENT,v.unpackAlignment),i.pixelStorei(i.UNPACK_COLORSPACE_CONVERSION_WEBGL,Te);const Ae=v.isCompressedTexture||v.image[0].isCompressedTexture,ae=v.image[0]&&v.image[0].isDataTexture,me=[];for(let te=0;te<6;te++)!Ae&&!ae?me[te]=x(v.image[te],!0,s.maxCubemapSize):me[te]=ae?v.image[te].image:v.image[te],me[te]=Rt(v,me[te]);const Oe=me[0],Re=r.convert(v.format,v.colorSpace),fe=r.convert(v.type),We=T(v.internalFormat,Re,fe,v.colorSpace),U=v.isVideoTexture!==!0,oe=Z.__version===void 0||J===!0,he=ne.dataReady;let ve=C(v,Oe);be(i.TEXTURE_CUBE_MAP,v);let se;if(Ae){U&&oe&&t.texStorage2D(i.TEXTURE_CUBE_MAP,ve,We,Oe.width,Oe.height);for(let te=0;te<6;te++){se=me[te].mipmaps;for(let we=0;we<se.length;we++){const Ge=se[we];v.format!==dn?Re!==null?U?he&&t.compressedTexSubImage2D(i.TEXTURE_CUBE_MAP_POSITIVE_X+te,we,0,0,Ge.width,Ge.height,Re,Ge.data):t.compressedTexImage2D(i.TEXTURE_CUBE_MAP_POSITIVE_X+te,we,We,Ge.width,Ge.height,0,Ge.data):console.warn("THREE.WebGLRenderer: Attempt to load unsupported compressed texture format in .setTextureCube()"):U?he&&t.texSubImage2D(i.TEXTURE_CUBE_MAP_POSITIVE_X+te,we,0,0,Ge.width,Ge.height,Re,fe,Ge.data):t.texImage2D(i.TEXTURE_CUBE_MAP_POSITIVE_X+te,we,We,Ge.width,Ge.height,0,Re,fe,Ge.data)}}}else{if(se=v.mipmaps,U&&oe){se.length>0&&ve++;const te=yt(me[0]);t.texStorage2D(i.TEXTURE_CUBE_MAP,ve,We,te.width,te.height)}for(let te=0;te<6;te++)if(ae){U?he&&t.texSubImage2D(i.TEXTURE_CUBE_MAP_POSITIVE_X+te,0,0,0,me[te].width,me[te].height,Re,fe,me[te].data):t.texImage2D(i.TEXTURE_CUBE_MAP_POSITIVE_X+te,0,We,me[te].width,me[te].height,0,Re,fe,me[te].data);for(let we=0;we<se.length;we++){const lt=se[we].image[te].image;U?he&&t.texSubImage2D(i.TEXTURE_CUBE_MAP_POSITIVE_X+te,we+1,0,0,lt.width,lt.height,Re,fe,lt.data):t.texImage2D(i.TEXTURE_CUBE_MAP_POSITIVE_X+te,we+1,We,lt.width,lt.height,0,Re,fe,lt.data)}}else{U?he&&t.texSubImage2D(i.TEXTURE_CUBE_MAP_POSITIVE_X+te,0,0,0,Re,fe,me[te]):t.texImage2D(i.TEXTURE_CUBE_MAP_POSITIVE_X+te,0,We,Re,fe,me[te]);for(let we=0;we<se.length;we++){const Ge=se[we];U?he&&t.texSubImage2D(i.TEXTURE_CUBE_MAP_POSITIVE_X+te,we+1,0,0,Re,fe,Ge.image[te]):t.texImage2D(i.TEXTURE_CUBE_MAP_POSITIVE_X+te,we+1,We,Re,fe,Ge.image[te])}}}m(v)&&d(i.TEXTURE_CUBE_MAP),Z.__version=ne.version,v.onUpdate&&v.onUpdate(v)}E.__version=v.version}function ue(E,v,V,J,ne,Z){const Ce=r.convert(V.format,V.colorSpace),le=r.convert(V.type),Te=T(V.internalFormat,Ce,le,V.colorSpace),Ae=n.get(v),ae=n.get(V);if(ae.__renderTarget=v,!Ae.__hasExternalTextures){const me=Math.max(1,v.width>>Z),Oe=Math.max(1,v.height>>Z);ne===i.TEXTURE_3D||ne===i.TEXTURE_2D_ARRAY?t.texImage3D(ne,Z,Te,me,Oe,v.depth,0,Ce,le,null):t.texImage2D(ne,Z,Te,me,Oe,0,Ce,le,null)}t.bindFramebuffer(i.FRAMEBUFFER,E),Ee(v)?o.framebufferTexture2DMultisampleEXT(i.FRAMEBUFFER,J,ne,ae.__webglTexture,0,ft(v)):(ne===i.TEXTURE_2D||ne>=i.TEXTURE_CUBE_MAP_POSITIVE_X&&ne<=i.TEXTURE_CUBE_MAP_NEGATIVE_Z)&&i.framebufferTexture2D(i.FRAMEBUFFER,J,ne,ae.__webglTexture,Z),t.bindFramebuffer(i.FRAMEBUFFER,null)}function Se(E,v,V){if(i.bindRenderbuffer(i.RENDERBUFFER,E),v.depthBuffer){const J=v.depthTexture,ne=J&&J.isDepthTexture?J.type:null,Z=w(v.stencilBuffer,ne),Ce=v.stencilBuffer?i.DEPTH_STENCIL_ATTACHMENT:i.DEPTH_ATTACHMENT,le=ft(v);Ee(v)?o.renderbufferStorageMultisampleEXT(i.RENDERBUFFER,le,Z,v.width,v.height):V?i.renderbufferStorageMultisample(i.RENDERBUFFER,le,Z,v.width,v.height):i.renderbufferStorage(i.RENDERBUFFER,Z,v.width,v.height),i.framebufferRenderbuffer(i.FRAMEBUFFER,Ce,i.RENDERBUFFER,E)}else{const J=v.textures;for(let ne=0;ne<J.length;ne++){const Z=J[ne],Ce=r.convert(Z.format,Z.colorSpace),le=r.convert(Z.type),Te=T(Z.internalFormat,Ce,le,Z.colorSpace),Ae=ft(v);V&&Ee(v)===!1?i.renderbufferStorageMultisample(i.RENDERBUFFER,Ae,Te,v.width,v.height):Ee(v)?o.renderbufferStorageMultisampleEXT(i.RENDERBUFFER,Ae,Te,v.width,v.height):i.renderbufferStorage(i.RENDERBUFFER,Te,v.width,v.height)}}i.bindRenderbuffer(i.RENDERBUFFER,null)}function xe(E,v){if(v&&v.isWebGLCubeRenderTarget)throw new Error("Depth Texture with cube render targets is not supported");if(t.bindFramebuffer(i.FRAMEBUFFER,E),!(v.depthTexture&&v.depthTexture.isDepthTexture))throw new Error("renderTarget.depthTexture must be an instance of THREE.DepthTexture");const J=n.get(v.depthTexture);J.__renderTarget=v,(!J.__webglTexture||v.depthTexture.image.width!==v.width||v.depthTexture.image.height!==v.height)&&(v.depthTexture.image.width=v.width,v.depthTexture.image.height=v.height,v.depthTexture.needsUpdate=!0),k(v.depthTexture,0);const ne=J.__webglTexture,Z=ft(v);if(v.depthTexture.format===_s)Ee(v)?o.framebufferTexture2DMultisampleEXT(i.FRAMEBUFFER,i.DEPTH_ATTACHMENT,i.TEXTURE_2D,ne,0,Z):i.framebufferTexture2D(i.FRAMEBUFFER,i.DEPTH_ATTACHMENT,i.TEXTURE_2D,ne,0);else if(v.depthTexture.format===vs)Ee(v)?o.framebufferTexture2DMultisampleEXT(i.FRAMEBUFFER,i.DEPTH_STENCIL_ATTACHMENT,i.TEXTURE_2D,ne,0,Z):i.framebufferTexture2D(i.FRAMEBUFFER,i.DEPTH_STENCIL_ATTACHMENT,i.TEXTURE_2D,ne,0);else throw new Error("Unknown depthTexture format")}function Ve(E){const v=n.get(E),V=E.isWebGLCubeRenderTarget===!0;if(v.__boundDepthTexture!==E.depthTexture){const J=E.depthTexture;if(v.__depthDisposeCallback&&v.__depthDisposeCallback(),J){const ne=()=>{delete v.__boundDepthTexture,delete v.__depthDisposeCallback,J.removeEventListener("dispose",ne)};J.addEventListener("dispose",ne),v.__depthDisposeCallback=ne}v.__boundDepthTexture=J}if(E.depthTexture&&!v.__autoAllocateDepthBuffer){if(V)throw new Error("target.depthTexture not supported in Cube render targets");const J=E.texture.mipmaps;J&&J.length>0?xe(v.__webglFramebuffer[0],E):xe(v.__webglFramebuffer,E)}else if(V){v.__webglDepthbuffer=[];for(let J=0;J<6;J++)if(t.bindFramebuffer(i.FRAMEBUFFER,v.__webglFramebuffer[J]),v.__webglDepthbuffer[J]===void 0)v.__webglDepthbuffer[J]=i.createRenderbuffer(),Se(v.__webglDepthbuffer[J],E,!1);else{const ne=E.stencilBuffer?i.DEPTH_STENCIL_ATTACHMENT:i.DEPTH_ATTACHMENT,Z=v.__webglDepthbuffer[J];i.bindRenderbuffer(i.RENDERBUFFER,Z),i.framebufferRenderbuffer(i.FRAMEBUFFER,ne,i.RENDERBUFFER,Z)}}else{const J=E.texture.mipmaps;if(J&&J.length>0?t.bindFramebuffer(i.FRAMEBUFFER,v.__webglFramebuffer[0]):t.bindFramebuffer(i.FRAMEBUFFER,v.__webglFramebuffer),v.__webglDepthbuffer===void 0)v.__webglDepthbuffer=i.createRenderbuffer(),Se(v.__webglDepthbuffer,E,!1);else{const ne=E.stencilBuffer?i.DEPTH_STENCIL_ATTACHMENT:i.DEPTH_ATTACHMENT,Z=v.__webglDepthbuffer;i.bindRenderbuffer(i.RENDERBUFFER,Z),i.framebufferRenderbuffer(i.FRAMEBUFFER,ne,i.RENDERBUFFER,Z)}}t.bindFramebuffer(i.FRAMEBUFFER,null)}function Ze(E,v,V){const J=n.get(E);v!==void 0&&ue(J.__webglFramebuffer,E,E.texture,i.COLOR_ATTACHMENT0,i.TEXTURE_2D,0),V!==void 0&&Ve(E)}function R(E){const v=E.texture,V=n.get(E),J=n.get(v);E.addEventListener("dispose",L);const ne=E.textures,Z=E.isWebGLCubeRenderTarget===!0,Ce=ne.length>1;if(Ce||(J.__webglTexture===void 0&&(J.__webglTexture=i.createTexture()),J.__version=v.version,a.memory.textures++),Z){V.__webglFramebuffer=[];for(let le=0;le<6;le++)if(v.mipmaps&&v.mipmaps.length>0){V.__webglFramebuffer[le]=[];for(let Te=0;Te<v.mipmaps.length;Te++)V.__webglFramebuffer[le][Te]=i.createFramebuffer()}else V.__webglFramebuffer[le]=i.createFramebuffer()}else{if(v.mipmaps&&v.mipmaps.length>0){V.__webglFramebuffer=[];for(let le=0;le<v.mipmaps.length;le++)V.__webglFramebuffer[le]=i.createFramebuffer()}else V.__webglFramebuffer=i.createFramebuffer();if(Ce)for(let le=0,Te=ne.length;le<Te;le++){const Ae=n.get(ne[le]);Ae.__webglTexture===void 0&&(Ae.__webglTexture=i.createTexture(),a.memory.textures++)}if(E.samples>0&&Ee(E)===!1){V.__webglMultisampledFramebuffer=i.createFramebuffer(),V.__webglColorRenderbuffer=[],t.bindFramebuffer(i.FRAMEBUFFER,V.__webglMultisampledFramebuffer);for(let le=0;le<ne.length;le++){const Te=ne[le];V.__webglColorRenderbuffer[le]=i.createRenderbuffer(),i.bindRenderbuffer(i.RENDERBUFFER,V.__webglColorRenderbuffer[le]);const Ae=r.convert(Te.format,Te.colorSpace),ae=r.convert(Te.type),me=T(Te.internalFormat,Ae,ae,Te.colorSpace,E.isXRRenderTarget===!0),Oe=ft(E);i.renderbufferStorageMultisample(i.RENDERBUFFER,Oe,me,E.width,E.height),i.framebufferRenderbuffer(i.FRAMEBUFFER,i.COLOR_ATTACHMENT0+le,i.RENDERBUFFER,V.__webglColorRenderbuffer[le])}i.bindRenderbuffer(i.RENDERBUFFER,null),E.depthBuffer&&(V.__webglDepthRenderbuffer=i.createRenderbuffer(),Se(V.__webglDepthRenderbuffer,E,!0)),t.bindFramebuffer(i.FRAMEBUFFER,null)}}if(Z){t.bindTexture(i.TEXTURE_CUBE_MAP,J.__webglTexture),be(i.TEXTURE_CUBE_MAP,v);for(let le=0;le<6;le++)if(v.mipmaps&&v.mipmaps.length>0)for(let Te=0;Te<v.mipmaps.length;Te++)ue(V.__webglFramebuffer[le][Te],E,v,i.COLOR_ATTACHMENT0,i.TEXTURE_CUBE_MAP_POSITIVE_X+le,Te);else ue(V.__webglFramebuffer[le],E,v,i.COLOR_ATTACHMENT0,i.TEXTURE_CUBE_MAP_POSITIVE_X+le,0);m(v)&&d(i.TEXTURE_CUBE_MAP),t.unbindTexture()}else if(Ce){for(let le=0,Te=ne.length;le<Te;le++){const Ae=ne[le],ae=n.get(Ae);let me=i.TEXTURE_2D;(E.isWebGL3DRenderTarget||E.isWebGLArrayRenderTarget)&&(me=E.isWebGL3DRenderTarget?i.TEXTURE_3D:i.TEXTURE_2D_ARRAY),t.bindTexture(me,ae.__webglTexture),be(me,Ae),ue(V.__webglFramebuffer,E,Ae,i.COLOR_ATTACHMENT0+le,me,0),m(Ae)&&d(me)}t.unbindTexture()}else{let le=i.TEXTURE_2D;if((E.isWebGL3DRenderTarget||E.isWebGLArrayRenderTarget)&&(le=E.isWebGL3DRenderTarget?i.TEXTURE_3D:i.TEXTURE_2D_ARRAY),t.bindTexture(le,J.__webglTexture),be(le,v),v.mipmaps&&v.mipmaps.length>0)for(let Te=0;Te<v.mipmaps.length;Te++)ue(V.__webglFramebuffer[Te],E,v,i.COLOR_ATTACHMENT0,le,Te);else ue(V.__webglFramebuffer,E,v,i.COLOR_ATTACHMENT0,le,0);m(v)&&d(le),t.unbindTexture()}E.depthBuffer&&Ve(E)}function Je(E){const v=E.textures;for(let V=0,J=v.length;V<J;V++){const ne=v[V];if(m(ne)){const Z=A(E),Ce=n.get(ne).__webglTexture;t.bindTexture(Z,Ce),d(Z),t.unbindTexture()}}}const Fe=[],De=[];function ye(E){if(E.samples>0){if(Ee(E)===!1){const v=E.textures,V=E.width,J=E.height;let ne=i.COLOR_BUFFER_BIT;const Z=E.stencilBuffer?i.DEPTH_STENCIL_ATTACHMENT:i.DEPTH_ATTACHMENT,Ce=n.get(E),le=v.length>1;if(le)for(let Ae=0;Ae<v.length;Ae++)t.bindFramebuffer(i.FRAMEBUFFER,Ce.__webglMultisampledFramebuffer),i.framebufferRenderbuffer(i.FRAMEBUFFER,i.COLOR_ATTACHMENT0+Ae,i.RENDERBUFFER,null),t.bindFramebuffer(i.FRAMEBUFFER,Ce.__webglFramebuffer),i.framebufferTexture2D(i.DRAW_FRAMEBUFFER,i.COLOR_ATTACHMENT0+Ae,i.TEXTURE_2D,null,0);t.bindFramebuffer(i.READ_FRAMEBUFFER,Ce.__webglMultisampledFramebuffer);const Te=E.texture.mipmaps;Te&&Te.length>0?t.bindFramebuffer(i.DRAW_FRAMEBUFFER,Ce.__webglFramebuffer[0]):t.bindFramebuffer(i.DRAW_FRAMEBUFFER,Ce.__webglFramebuffer);for(let Ae=0;Ae<v.length;Ae++){if(E.resolveDepthBuffer&&(E.depthBuffer&&(ne|=i.DEPTH_BUFFER_BIT),E.stencilBuffer&&E.resolveStencilBuffer&&(ne|=i.STENCIL_BUFFER_BIT)),le){i.framebufferRenderbuffer(i.READ_FRAMEBUFFER,i.COLOR_ATTACHMENT0,i.RENDERBUFFER,Ce.__webglColorRenderbuffer[Ae]);const ae=n.get(v[Ae]).__webglTexture;i.framebufferTexture2D(i.DRAW_FRAMEBUFFER,i.COLOR_ATTACHMENT0,i.TEXTURE_2D,ae,0)}i.blitFramebuffer(0,0,V,J,0,0,V,J,ne,i.NEAREST),l===!0&&(Fe.length=0,De.length=0,Fe.push(i.COLOR_ATTACHMENT0+Ae),E.depthBuffer&&E.resolveDepthBuffer===!1&&(Fe.push(Z),De.push(Z),i.invalidateFramebuffer(i.DRAW_FRAMEBUFFER,De)),i.invalidateFramebuffer(i.READ_FRAMEBUFFER,Fe))}if(t.bindFramebuffer(i.READ_FRAMEBUFFER,null),t.bindFramebuffer(i.DRAW_FRAMEBUFFER,null),le)for(let Ae=0;Ae<v.length;Ae++){t.bindFramebuffer(i.FRAMEBUFFER,Ce.__webglMultisampledFramebuffer),i.framebufferRenderbuffer(i.FRAMEBUFFER,i.COLOR_ATTACHMENT0+Ae,i.RENDERBUFFER,Ce.__webglColorRenderbuffer[Ae]);const ae=n.get(v[Ae]).__webglTexture;t.bindFramebuffer(i.FRAMEBUFFER,Ce.__webglFramebuffer),i.framebufferTexture2D(i.DRAW_FRAMEBUFFER,i.COLOR_ATTACHMENT0+Ae,i.TEXTURE_2D,ae,0)}t.bindFramebuffer(i.DRAW_FRAMEBUFFER,Ce.__webglMultisampledFramebuffer)}else if(E.depthBuffer&&E.resolveDepthBuffer===!1&&l){const v=E.stencilBuffer?i.DEPTH_STENCIL_ATTACHMENT:i.DEPTH_ATTACHMENT;i.invalidateFramebuffer(i.DRAW_FRAMEBUFFER,[v])}}}function ft(E){return Math.min(s.maxSamples,E.samples)}function Ee(E){const v=n.get(E);return E.samples>0&&e.has("WEBGL_multisampled_render_to_texture")===!0&&v.__useRenderToTexture!==!1}function Xe(E){const v=a.render.frame;h.get(E)!==v&&(h.set(E,v),E.update())}function Rt(E,v){const V=E.colorSpace,J=E.format,ne=E.type;return E.isCompressedTexture===!0||E.isVideoTexture===!0||V!==Xi&&V!==Wn&&(et.getTransfer(V)===st?(J!==dn||ne!==xn)&&console.warn("THREE.WebGLTextures: sRGB encoded textures have to use RGBAFormat and UnsignedByteType."):console.error("THREE.WebGLTextures: Unsupported texture color space:",V)),v}function yt(E){return typeof HTMLImageElement<"u"&&E instanceof HTMLImageElement?(c.width=E.naturalWidth||E.width,c.height=E.naturalHeight||E.height):typeof VideoFrame<"u"&&E instanceof VideoFrame?(c.width=E.displayWidth,c.height=E.displayHeight):(c.width=E.width,c.height=E.height),c}this.allocateTextureUnit=z,this.resetTextureUnits=P,this.setTexture2D=k,this.setTexture2DArray=$,this.setTexture3D=ee,this.setTextureCube=Y,this.rebindTextures=Ze,this.setupRenderTarget=R,this.updateRenderTargetMipmap=Je,this.updateMultisampleRenderTarget=ye,this.setupDepthRenderbuffer=Ve,this.setupFrameBufferTexture=ue,this.useMultisampledRTT=Ee}function N_(i,e){function t(n,s=Wn){let r;const a=et.getTransfer(s);if(n===xn)return i.UNSIGNED_BYTE;if(n===Do)return i.UNSIGNED_SHORT_4_4_4_4;if(n===Lo)return i.UNSIGNED_SHORT_5_5_5_1;if(n===Oc)return i.UNSIGNED_INT_5_9_9_9_REV;if(n===kc)return i.UNSIGNED_INT_10F_11F_11F_REV;if(n===Nc)return i.BYTE;if(n===Fc)return i.SHORT;if(n===ms)return i.UNSIGNED_SHORT;if(n===Po)return i.INT;if(n===di)return i.UNSIGNED_INT;if(n===Cn)return i.FLOAT;if(n===ws)return i.HALF_FLOAT;if(n===Bc)return i.ALPHA;if(n===zc)return i.RGB;if(n===dn)return i.RGBA;if(n===_s)return i.DEPTH_COMPONENT;if(n===vs)return i.DEPTH_STENCIL;if(n===Hc)return i.RED;if(n===Io)return i.RED_INTEGER;if(n===Vc)return i.RG;if(n===Uo)return i.RG_INTEGER;if(n===No)return i.RGBA_INTEGER;if(n===ar||n===or||n===lr||n===cr)if(a===st)if(r=e.get("WEBGL_compressed_texture_s3tc_srgb"),r!==null){if(n===ar)return r.COMPRESSED_SRGB_S3TC_DXT1_EXT;if(n===or)return r.COMPRESSED_SRGB_ALPHA_S3TC_DXT1_EXT;if(n===lr)return r.COMPRESSED_SRGB_ALPHA_S3TC_DXT3_EXT;if(n===cr)return r.COMPRESSED_SRGB_ALPHA_S3TC_DXT5_EXT}else return null;else if(r=e.get("WEBGL_compressed_texture_s3tc"),r!==null){if(n===ar)return r.COMPRESSED_RGB_S3TC_DXT1_EXT;if(n===or)return r.COMPRESSED_RGBA_S3TC_DXT1_EXT;if(n===lr)return r.COMPRESSED_RGBA_S3TC_DXT3_EXT;if(n===cr)return r.COMPRESSED_RGBA_S3TC_DXT5_EXT}else return null;if(n===ka||n===Ba||n===za||n===Ha)if(r=e.get("WEBGL_compressed_texture_pvrtc"),r!==null){if(n===ka)return r.COMPRESSED_RGB_PVRTC_4BPPV1_IMG;if(n===Ba)return r.COMPRESSED_RGB_PVRTC_2BPPV1_IMG;if(n===za)return r.COMPRESSED_RGBA_PVRTC_4BPPV1_IMG;if(n===Ha)return r.COMPRESSED_RGBA_PVRTC_2BPPV1_IMG}else return null;if(n===Va||n===Ga||n===Wa)if(r=e.get("WEBGL_compressed_texture_etc"),r!==null){if(n===Va||n===Ga)return a===st?r.COMPRESSED_SRGB8_ETC2:r.COMPRESSED_RGB8_ETC2;if(n===Wa)return a===st?r.COMPRESSED_SRGB8_ALPHA8_ETC2_EAC:r.COMPRESSED_RGBA8_ETC2_EAC}else return null;if(n===$a||n===Xa||n===qa||n===Ya||n===ja||n===Ka||n===Za||n===Ja||n===Qa||n===eo||n===to||n===no||n===io||n===so)if(r=e.get("WEBGL_compressed_texture_astc"),r!==null){if(n===$a)return a===st?r.COMPRESSED_SRGB8_ALPHA8_ASTC_4x4_KHR:r.COMPRESSED_RGBA_ASTC_4x4_KHR;if(n===Xa)return a===st?r.COMPRESSED_SRGB8_ALPHA8_ASTC_5x4_KHR:r.COMPRESSED_RGBA_ASTC_5x4_KHR;if(n===qa)return a===st?r.COMPRESSED_SRGB8_ALPHA8_ASTC_5x5_KHR:r.COMPRESSED_RGBA_ASTC_5x5_KHR;if(n===Ya)return a===st?r.COMPRESSED_SRGB8_ALPHA8_ASTC_6x5_KHR:r.COMPRESSED_RGBA_ASTC_6x5_KHR;if(n===ja)return a===st?r.COMPRESSED_SRGB8_ALPHA8_ASTC_6x6_KHR:r.COMPRESSED_RGBA_ASTC_6x6_KHR;if(n===Ka)return a===st?r.COMPRESSED_SRGB8_ALPHA8_ASTC_8x5_KHR:r.COMPRESSED_RGBA_ASTC_8x5_KHR;if(n===Za)return a===st?r.COMPRESSED_SRGB8_ALPHA8_ASTC_8x6_KHR:r.COMPRESSED_RGBA_ASTC_8x6_KHR;if(n===Ja)return a===st?r.COMPRESSED_SRGB8_ALPHA8_ASTC_8x8_KHR:r.COMPRESSED_RGBA_ASTC_8x8_KHR;if(n===Qa)return a===st?r.COMPRESSED_SRGB8_ALPHA8_ASTC_10x5_KHR:r.COMPRESSED_RGBA_ASTC_10x5_KHR;if(n===eo)return a===st?r.COMPRESSED_SRGB8_ALPHA8_ASTC_10x6_KHR:r.COMPRESSED_RGBA_ASTC_10x6_KHR;if(n===to)return a===st?r.COMPRESSED_SRGB8_ALPHA8_ASTC_10x8_KHR:r.COMPRESSED_RGBA_ASTC_10x8_KHR;if(n===no)return a===st?r.COMPRESSED_SRGB8_ALPHA8_ASTC_10x10_KHR:r.COMPRESSED_RGBA_ASTC_10x10_KHR;if(n===io)return a===st?r.COMPRESSED_SRGB8_ALPHA8_ASTC_12x10_KHR:r.COMPRESSED_RGBA_ASTC_12x10_KHR;if(n===so)return a===st?r.COMPRESSED_SRGB8_ALPHA8_ASTC_12x12_KHR:r.COMPRESSED_RGBA_ASTC_12x12_KHR}else return null;if(n===ro||n===ao||n===oo)if(r=e.get("EXT_texture_compression_bptc"),r!==null){if(n===ro)return a===st?r.COMPRESSED_SRGB_ALPHA_BPTC_UNORM_EXT:r.COMPRESSED_RGBA_BPTC_UNORM_EXT;if(n===ao)return r.COMPRESSED_RGB_BPTC_SIGNED_FLOAT_EXT;if(n===oo)return r.COMPRESSED_RGB_BPTC_UNSIGNED_FLOAT_EXT}else return null;if(n===lo||n===co||n===ho||n===uo)if(r=e.get("EXT_texture_compression_rgtc"),r!==null){if(n===lo)return r.COMPRESSED_RED_RGTC1_EXT;if(n===co)return r.COMPRESSED_SIGNED_RED_RGTC1_EXT;if(n===ho)return r.COMPRESSED_RED_GREEN_RGTC2_EXT;if(n===uo)return r.COMPRESSED_SIGNED_RED_GREEN_RGTC2_EXT}else return null;return n===gs?i.UNSIGNED_INT_24_8:i[n]!==void 0?i[n]:null}return{convert:t}}const F_=`
void main() {

	gl_Position = vec4( position, 1.0 );

}`,O_=`
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

}`;class k_{constructor(){this.texture=null,this.mesh=null,this.depthNear=0,this.depthFar=0}init(e,t){if(this.texture===null){const n=new nh(e.texture);(e.depthNear!==t.depthNear||e.depthFar!==t.depthFar)&&(this.depthNear=e.depthNear,this.depthFar=e.depthFar),this.texture=n}}getMesh(e){if(this.texture!==null&&this.mesh===null){const t=e.cameras[0].viewport,n=new Kn({vertexShader:F_,fragmentShader:O_,uniforms:{depthColor:{value:this.texture},depthWidth:{value:t.z},depthHeight:{value:t.w}}});this.mesh=new Ot(new Cr(20,20),n)}return this.mesh}reset(){this.texture=null,this.mesh=null}getDepthTexture(){return this.texture}}class B_ extends gi{constructor(e,t){super();const n=this;let s=null,r=1,a=null,o="local-floor",l=1,c=null,h=null,u=null,f=null,p=null,g=null;const x=typeof XRWebGLBinding<"u",m=new k_,d={},A=t.getContextAttributes();let T=null,w=null;const C=[],D=[],L=new ze;let F=null;const y=new rn;y.viewport=new xt;const M=new rn;M.viewport=new xt;const b=[y,M],P=new nf;let z=null,I=null;this.cameraAutoUpdate=!0,this.enabled=!1,this.isPresenting=!1,this.getController=function(H){let K=C[H];return K===void 0&&(K=new la,C[H]=K),K.getTargetRaySpace()},this.getControllerGrip=function(H){let K=C[H];return K===void 0&&(K=new la,C[H]=K),K.getGripSpace()},this.getHand=function(H){let K=C[H];return K===void 0&&(K=new la,C[H]=K),K.getHandSpace()};function k(H){const K=D.indexOf(H.inputSource);if(K===-1)return;const ue=C[K];ue!==void 0&&(ue.update(H.inputSource,H.frame,c||a),ue.dispatchEvent({type:H.type,data:H.inputSource}))}function $(){s.removeEventListener("select",k),s.removeEventListener("selectstart",k),s.removeEventListener("selectend",k),s.removeEventListener("squeeze",k),s.removeEventListener("squeezestart",k),s.removeEventListener("squeezeend",k),s.removeEventListener("end",$),s.removeEventListener("inputsourceschange",ee);for(let H=0;H<C.length;H++){const K=D[H];K!==null&&(D[H]=null,C[H].disconnect(K))}z=null,I=null,m.reset();for(const H in d)delete d[H];e.setRenderTarget(T),p=null,f=null,u=null,s=null,w=null,ie.stop(),n.isPresenting=!1,e.setPixelRatio(F),e.setSize(L.width,L.height,!1),n.dispatchEvent({type:"sessionend"})}this.setFramebufferScaleFactor=function(H){r=H,n.isPresenting===!0&&console.warn("THREE.WebXRManager: Cannot change framebuffer scale while presenting.")},this.setReferenceSpaceType=function(H){o=H,n.isPresenting===!0&&console.warn("THREE.WebXRManager: Cannot change reference space type while presenting.")},this.getReferenceSpace=function(){return c||a},this.setReferenceSpace=function(H){c=H},this.getBaseLayer=function(){return f!==null?f:p},this.getBinding=function(){return u===null&&x&&(u=new XRWebGLBinding(s,t)),u},this.getFrame=function(){return g},this.getSession=function(){return s},this.setSession=async function(H){if(s=H,s!==null){if(T=e.getRenderTarget(),s.addEventListener("select",k),s.addEventListener("selectstart",k),s.addEventListener("selectend",k),s.addEventListener("squeeze",k),s.addEventListener("squeezestart",k),s.addEventListener("squeezeend",k),s.addEventListener("end",$),s.addEventListener("inputsourceschange",ee),A.xrCompatible!==!0&&await t.makeXRCompatible(),F=e.getPixelRatio(),e.getSize(L),x&&"createProjectionLayer"in XRWebGLBinding.prototype){let ue=null,Se=null,xe=null;A.depth&&(xe=A.stencil?t.DEPTH24_STENCIL8:t.DEPTH_COMPONENT24,ue=A.stencil?vs:_s,Se=A.stencil?gs:di);const Ve={colorFormat:t.RGBA8,depthFormat:xe,scaleFactor:r};u=this.getBinding(),f=u.createProjectionLayer(Ve),s.updateRenderState({layers:[f]}),e.setPixelRatio(1),e.setSize(f.textureWidth,f.textureHeight,!1),w=new pi(f.textureWidth,f.textureHeight,{format:dn,type:xn,depthTexture:new th(f.textureWidth,f.textureHeight,Se,void 0,void 0,void 0,void 0,void 0,void 0,ue),stencilBuffer:A.stencil,colorSpace:e.outputColorSpace,samples:A.antialias?4:0,resolveDepthBuffer:f.ignoreDepthValues===!1,resolveStencilBuffer:f.ignoreDepthValues===!1})}else{const ue={antialias:A.antialias,alpha:!0,depth:A.depth,stencil:A.stencil,framebufferScaleFactor:r};p=new XRWebGLLayer(s,t,ue),s.updateRenderState({baseLayer:p}),e.setPixelRatio(1),e.setSize(p.framebufferWidth,p.framebufferHeight,!1),w=new pi(p.framebufferWidth,p.framebufferHeight,{format:dn,type:xn,colorSpace:e.outputColorSpace,stencilBuffer:A.stencil,resolveDepthBuffer:p.ignoreDepthValues===!1,resolveStencilBuffer:p.ignoreDepthValues===!1})}w.isXRRenderTarget=!0,this.setFoveation(l),c=null,a=await s.requestReferenceSpace(o),ie.setContext(s),ie.start(),n.isPresenting=!0,n.dispatchEvent({type:"sessionstart"})}},this.getEnvironmentBlendMode=function(){if(s!==null)return s.environmentBlendMode},this.getDepthTexture=function(){return m.getDepthTexture()};function ee(H){for(let K=0;K<H.removed.length;K++){const ue=H.removed[K],Se=D.indexOf(ue);Se>=0&&(D[Se]=null,C[Se].disconnect(ue))}for(let K=0;K<H.added.length;K++){const ue=H.added[K];let Se=D.indexOf(ue);if(Se===-1){for(let Ve=0;Ve<C.length;Ve++)if(Ve>=D.length){D.push(ue),Se=Ve;break}else if(D[Ve]===null){D[Ve]=ue,Se=Ve;break}if(Se===-1)break}const xe=C[Se];xe&&xe.connect(ue)}}const Y=new N,W=new N;function Q(H,K,ue){Y.setFromMatrixPosition(K.matrixWorld),W.setFromMatrixPosition(ue.matrixWorld);const Se=Y.distanceTo(W),xe=K.projectionMatrix.elements,Ve=ue.projectionMatrix.elements,Ze=xe[14]/(xe[10]-1),R=xe[14]/(xe[10]+1),Je=(xe[9]+1)/xe[5],Fe=(xe[9]-1)/xe[5],De=(xe[8]-1)/xe[0],ye=(Ve[8]+1)/Ve[0],ft=Ze*De,Ee=Ze*ye,Xe=Se/(-De+ye),Rt=Xe*-De;if(K.matrixWorld.decompose(H.position,H.quaternion,H.scale),H.translateX(Rt),H.translateZ(Xe),H.matrixWorld.compose(H.position,H.quaternion,H.scale),H.matrixWorldInverse.copy(H.matrixWorld).invert(),xe[10]===-1)H.projectionMatrix.copy(K.projectionMatrix),H.projectionMatrixInverse.copy(K.projectionMatrixInverse);else{const yt=Ze+Xe,E=R+Xe,v=ft-Rt,V=Ee+(Se-Rt),J=Je*R/E*yt,ne=Fe*R/E*yt;H.projectionMatrix.makePerspective(v,V,J,ne,yt,E),H.projectionMatrixInverse.copy(H.projectionMatrix).invert()}}function ce(H,K){K===null?H.matrixWorld.copy(H.matrix):H.matrixWorld.multiplyMatrices(K.matrixWorld,H.matrix),H.matrixWorldInverse.copy(H.matrixWorld).invert()}this.updateCamera=function(H){if(s===null)return;let K=H.near,ue=H.far;m.texture!==null&&(m.depthNear>0&&(K=m.depthNear),m.depthFar>0&&(ue=m.depthFar)),P.near=M.near=y.near=K,P.far=M.far=y.far=ue,(z!==P.near||I!==P.far)&&(s.updateRenderState({depthNear:P.near,depthFar:P.far}),z=P.near,I=P.far),P.layers.mask=H.layers.mask|6,y.layers.mask=P.layers.mask&3,M.layers.mask=P.layers.mask&5;const Se=H.parent,xe=P.cameras;ce(P,Se);for(let Ve=0;Ve<xe.length;Ve++)ce(xe[Ve],Se);xe.length===2?Q(P,y,M):P.projectionMatrix.copy(y.projectionMatrix),be(H,P,Se)};function be(H,K,ue){ue===null?H.matrix.copy(K.matrixWorld):(H.matrix.copy(ue.matrixWorld),H.matrix.invert(),H.matrix.multiply(K.matrixWorld)),H.matrix.decompose(H.position,H.quaternion,H.scale),H.updateMatrixWorld(!0),H.projectionMatrix.copy(K.projectionMatrix),H.projectionMatrixInverse.copy(K.projectionMatrixInverse),H.isPerspectiveCamera&&(H.fov=fo*2*Math.atan(1/H.projectionMatrix.elements[5]),H.zoom=1)}this.getCamera=function(){return P},this.getFoveation=function(){if(!(f===null&&p===null))return l},this.setFoveation=function(H){l=H,f!==null&&(f.fixedFoveation=H),p!==null&&p.fixedFoveation!==void 0&&(p.fixedFoveation=H)},this.hasDepthSensing=function(){return m.texture!==null},this.getDepthSensingMesh=function(){return m.getMesh(P)},this.getCameraTexture=function(H){return d[H]};let Ie=null;function G(H,K){if(h=K.getViewerPose(c||a),g=K,h!==null){const ue=h.views;p!==null&&(e.setRenderTargetFramebuffer(w,p.framebuffer),e.setRenderTarget(w));let Se=!1;ue.length!==P.cameras.length&&(P.cameras.length=0,Se=!0);for(let R=0;R<ue.length;R++){const Je=ue[R];let Fe=null;if(p!==null)Fe=p.getViewport(Je);else{const ye=u.getViewSubImage(f,Je);Fe=ye.viewport,R===0&&(e.setRenderTargetTextures(w,ye.colorTexture,ye.depthStencilTexture),e.setRenderTarget(w))}let De=b[R];De===void 0&&(De=new rn,De.layers.enable(R),De.viewport=new xt,b[R]=De),De.matrix.fromArray(Je.transform.matrix),De.matrix.decompose(De.position,De.quaternion,De.scale),De.projectionMatrix.fromArray(Je.projectionMatrix),De.projectionMatrixInverse.copy(De.projectionMatrix).invert(),De.viewport.set(Fe.x,Fe.y,Fe.width,Fe.height),R===0&&(P.matrix.copy(De.matrix),P.matrix.decompose(P.position,P.quaternion,P.scale)),Se===!0&&P.cameras.push(De)}const xe=s.enabledFeatures;if(xe&&xe.includes("depth-sensing")&&s.depthUsage=="gpu-optimized"&&x){u=n.getBinding();const R=u.getDepthInformation(ue[0]);R&&R.isValid&&R.texture&&m.init(R,s.renderState)}if(xe&&xe.includes("camera-access")&&x){e.state.unbindTexture(),u=n.getBinding();for(let R=0;R<ue.length;R++){const Je=ue[R].camera;if(Je){let Fe=d[Je];Fe||(Fe=new nh,d[Je]=Fe);const De=u.getCameraImage(Je);Fe.sourceTexture=De}}}}for(let ue=0;ue<C.length;ue++){const Se=D[ue],xe=C[ue];Se!==null&&xe!==void 0&&xe.update(Se,K,c||a)}Ie&&Ie(H,K),K.detectedPlanes&&n.dispatchEvent({type:"planesdetected",data:K}),g=null}const ie=new rh;ie.setAnimationLoop(G),this.setAnimationLoop=function(H){Ie=H},this.dispose=function(){}}}const ri=new yn,z_=new pt;function H_(i,e){function t(m,d){m.matrixAutoUpdate===!0&&m.updateMatrix(),d.value.copy(m.matrix)}function n(m,d){d.color.getRGB(m.fogColor.value,Kc(i)),d.isFog?(m.fogNear.value=d.near,m.fogFar.value=d.far):d.isFogExp2&&(m.fogDensity.value=d.density)}function s(m,d,A,T,w){d.isMeshBasicMaterial||d.isMeshLambertMaterial?r(m,d):d.isMeshToonMaterial?(r(m,d),u(m,d)):d.isMeshPhongMaterial?(r(m,d),h(m,d)):d.isMeshStandardMaterial?(r(m,d),f(m,d),d.isMeshPhysicalMaterial&&p(m,d,w)):d.isMeshMatcapMaterial?(r(m,d),g(m,d)):d.isMeshDepthMaterial?r(m,d):d.isMeshDistanceMaterial?(r(m,d),x(m,d)):d.isMeshNormalMaterial?r(m,d):d.isLineBasicMaterial?(a(m,d),d.isLineDashedMaterial&&o(m,d)):d.isPointsMaterial?l(m,d,A,T):d.isSpriteMaterial?c(m,d):d.isShadowMaterial?(m.color.value.copy(d.color),m.opacity.value=d.opacity):d.isShaderMaterial&&(d.uniformsNeedUpdate=!1)}function r(m,d){m.opacity.value=d.opacity,d.color&&m.diffuse.value.copy(d.color),d.emissive&&m.emissive.value.copy(d.emissive).multiplyScalar(d.emissiveIntensity),d.map&&(m.map.value=d.map,t(d.map,m.mapTransform)),d.alphaMap&&(m.alphaMap.value=d.alphaMap,t(d.alphaMap,m.alphaMapTransform)),d.bumpMap&&(m.bumpMap.value=d.bumpMap,t(d.bumpMap,m.bumpMapTransform),m.bumpScale.value=d.bumpScale,d.side===$t&&(m.bumpScale.value*=-1)),d.normalMap&&(m.normalMap.value=d.normalMap,t(d.normalMap,m.normalMapTransform),m.normalScale.value.copy(d.normalScale),d.side===$t&&m.normalScale.value.negate()),d.displacementMap&&(m.displacementMap.value=d.displacementMap,t(d.displacementMap,m.displacementMapTransform),m.displacementScale.value=d.displacementScale,m.displacementBias.value=d.displacementBias),d.emissiveMap&&(m.emissiveMap.value=d.emissiveMap,t(d.emissiveMap,m.emissiveMapTransform)),d.specularMap&&(m.specularMap.value=d.specularMap,t(d.specularMap,m.specularMapTransform)),d.alphaTest>0&&(m.alphaTest.value=d.alphaTest);const A=e.get(d),T=A.envMap,w=A.envMapRotation;T&&(m.envMap.value=T,ri.copy(w),ri.x*=-1,ri.y*=-1,ri.z*=-1,T.isCubeTexture&&T.isRenderTargetTexture===!1&&(ri.y*=-1,ri.z*=-1),m.envMapRotation.value.setFromMatrix4(z_.makeRotationFromEuler(ri)),m.flipEnvMap.value=T.isCubeTexture&&T.isRenderTargetTexture===!1?-1:1,m.reflectivity.value=d.reflectivity,m.ior.value=d.ior,m.refractionRatio.value=d.refractionRatio),d.lightMap&&(m.lightMap.value=d.lightMap,m.lightMapIntensity.value=d.lightMapIntensity,t(d.lightMap,m.lightMapTransform)),d.aoMap&&(m.aoMap.value=d.aoMap,m.aoMapIntensity.value=d.aoMapIntensity,t(d.aoMap,m.aoMapTransform))}function a(m,d){m.diffuse.value.copy(d.color),m.opacity.value=d.opacity,d.map&&(m.map.value=d.map,t(d.map,m.mapTransform))}function o(m,d){m.dashSize.value=d.dashSize,m.totalSize.value=d.dashSize+d.gapSize,m.scale.value=d.scale}function l(m,d,A,T){m.diffuse.value.copy(d.color),m.opacity.value=d.opacity,m.size.value=d.size*A,m.scale.value=T*.5,d.map&&(m.map.value=d.map,t(d.map,m.uvTransform)),d.alphaMap&&(m.alphaMap.value=d.alphaMap,t(d.alphaMap,m.alphaMapTransform)),d.alphaTest>0&&(m.alphaTest.value=d.alphaTest)}function c(m,d){m.diffuse.value.copy(d.color),m.opacity.value=d.opacity,m.rotation.value=d.rotation,d.map&&(m.map.value=d.map,t(d.map,m.mapTransform)),d.alphaMap&&(m.alphaMap.value=d.alphaMap,t(d.alphaMap,m.alphaMapTransform)),d.alphaTest>0&&(m.alphaTest.value=d.alphaTest)}function h(m,d){m.specular.value.copy(d.specular),m.shininess.value=Math.max(d.shininess,1e-4)}function u(m,d){d.gradientMap&&(m.gradientMap.value=d.gradientMap)}function f(m,d){m.metalness.value=d.metalness,d.metalnessMap&&(m.metalnessMap.value=d.metalnessMap,t(d.metalnessMap,m.metalnessMapTransform)),m.roughness.value=d.roughness,d.roughnessMap&&(m.roughnessMap.value=d.roughnessMap,t(d.roughnessMap,m.roughnessMapTransform)),d.envMap&&(m.envMapIntensity.value=d.envMapIntensity)}function p(m,d,A){m.ior.value=d.ior,d.sheen>0&&(m.sheenColor.value.copy(d.sheenColor).multiplyScalar(d.sheen),m.sheenRoughness.value=d.sheenRoughness,d.sheenColorMap&&(m.sheenColorMap.value=d.sheenColorMap,t(d.sheenColorMap,m.sheenColorMapTransform)),d.sheenRoughnessMap&&(m.sheenRoughnessMap.value=d.sheenRoughnessMap,t(d.sheenRoughnessMap,m.sheenRoughnessMapTransform))),d.clearcoat>0&&(m.clearcoat.value=d.clearcoat,m.clearcoatRoughness.value=d.clearcoatRoughness,d.clearcoatMap&&(m.clearcoatMap.value=d.clearcoatMap,t(d.clearcoatMap,m.clearcoatMapTransform)),d.clearcoatRoughnessMap&&(m.clearcoatRoughnessMap.value=d.clearcoatRoughnessMap,t(d.clearcoatRoughnessMap,m.clearcoatRoughnessMapTransform)),d.clearcoatNormalMap&&(m.clearcoatNormalMap.value=d.clearcoatNormalMap,t(d.clearcoatNormalMap,m.clearcoatNormalMapTransform),m.clearcoatNormalScale.value.copy(d.clearcoatNormalScale),d.side===$t&&m.clearcoatNormalScale.value.negate())),d.dispersion>0&&(m.dispersion.value=d.dispersion),d.iridescence>0&&(m.iridescence.value=d.iridescence,m.iridescenceIOR.value=d.iridescenceIOR,m.iridescenceThicknessMinimum.value=d.iridescenceThicknessRange[0],m.iridescenceThicknessMaximum.value=d.iridescenceThicknessRange[1],d.iridescenceMap&&(m.iridescenceMap.value=d.iridescenceMap,t(d.iridescenceMap,m.iridescenceMapTransform)),d.iridescenceThicknessMap&&(m.iridescenceThicknessMap.value=d.iridescenceThicknessMap,t(d.iridescenceThicknessMap,m.iridescenceThicknessMapTransform))),d.transmission>0&&(m.transmission.value=d.transmission,m.transmissionSamplerMap.value=A.texture,m.transmissionSamplerSize.value.set(A.width,A.height),d.transmissionMap&&(m.transmissionMap.value=d.transmissionMap,t(d.transmissionMap,m.transmissionMapTransform)),m.thickness.value=d.thickness,d.thicknessMap&&(m.thicknessMap.value=d.thicknessMap,t(d.thicknessMap,m.thicknessMapTransform)),m.attenuationDistance.value=d.attenuationDistance,m.attenuationColor.value.copy(d.attenuationColor)),d.anisotropy>0&&(m.anisotropyVector.value.set(d.anisotropy*Math.cos(d.anisotropyRotation),d.anisotropy*Math.sin(d.anisotropyRotation)),d.anisotropyMap&&(m.anisotropyMap.value=d.anisotropyMap,t(d.anisotropyMap,m.anisotropyMapTransform))),m.specularIntensity.value=d.specularIntensity,m.specularColor.value.copy(d.specularColor),d.specularColorMap&&(m.specularColorMap.value=d.specularColorMap,t(d.specularColorMap,m.specularColorMapTransform)),d.specularIntensityMap&&(m.specularIntensityMap.value=d.specularIntensityMap,t(d.specularIntensityMap,m.specularIntensityMapTransform))}function g(m,d){d.matcap&&(m.matcap.value=d.matcap)}function x(m,d){const A=e.get(d).light;m.referencePosition.value.setFromMatrixPosition(A.matrixWorld),m.nearDistance.value=A.shadow.camera.near,m.farDistance.value=A.shadow.camera.far}return{refreshFogUniforms:n,refreshMaterialUniforms:s}}function V_(i,e,t,n){let s={},r={},a=[];const o=i.getParameter(i.MAX_UNIFORM_BUFFER_BINDINGS);function l(A,T){const w=T.program;n.uniformBlockBinding(A,w)}function c(A,T){let w=s[A.id];w===void 0&&(g(A),w=h(A),s[A.id]=w,A.addEventListener("dispose",m));const C=T.program;n.updateUBOMapping(A,C);const D=e.render.frame;r[A.id]!==D&&(f(A),r[A.id]=D)}function h(A){const T=u();A.__bindingPointIndex=T;const w=i.createBuffer(),C=A.__size,D=A.usage;return i.bindBuffer(i.UNIFORM_BUFFER,w),i.bufferData(i.UNIFORM_BUFFER,C,D),i.bindBuffer(i.UNIFORM_BUFFER,null),i.bindBufferBase(i.UNIFORM_BUFFER,T,w),w}function u(){for(let A=0;A<o;A++)if(a.indexOf(A)===-1)return a.push(A),A;return console.error("THREE.WebGLRenderer: Maximum number of simultaneously usable uniforms groups reached."),0}function f(A){const T=s[A.id],w=A.uniforms,C=A.__cache;i.bindBuffer(i.UNIFORM_BUFFER,T);for(let D=0,L=w.length;D<L;D++){const F=Array.isArray(w[D])?w[D]:[w[D]];for(let y=0,M=F.length;y<M;y++){const b=F[y];if(p(b,D,y,C)===!0){const P=b.__offset,z=Array.isArray(b.value)?b.value:[b.value];let I=0;for(let k=0;k<z.length;k++){const $=z[k],ee=x($);typeof $=="number"||typeof $=="boolean"?(b.__data[0]=$,i.bufferSubData(i.UNIFORM_BUFFER,P+I,b.__data)):$.isMatrix3?(b.__data[0]=$.elements[0],b.__data[1]=$.elements[1],b.__data[2]=$.elements[2],b.__data[3]=0,b.__data[4]=$.elements[3],b.__data[5]=$.elements[4],b.__data[6]=$.elements[5],b.__data[7]=0,b.__data[8]=$.elements[6],b.__data[9]=$.elements[7],b.__data[10]=$.elements[8],b.__data[11]=0):($.toArray(b.__data,I),I+=ee.storage/Float32Array.BYTES_PER_ELEMENT)}i.bufferSubData(i.UNIFORM_BUFFER,P,b.__data)}}}i.bindBuffer(i.UNIFORM_BUFFER,null)}function p(A,T,w,C){const D=A.value,L=T+"_"+w;if(C[L]===void 0)return typeof D=="number"||typeof D=="boolean"?C[L]=D:C[L]=D.clone(),!0;{const F=C[L];if(typeof D=="number"||typeof D=="boolean"){if(F!==D)return C[L]=D,!0}else if(F.equals(D)===!1)return F.copy(D),!0}return!1}function g(A){const T=A.uniforms;let w=0;const C=16;for(let L=0,F=T.length;L<F;L++){const y=Array.isArray(T[L])?T[L]:[T[L]];for(let M=0,b=y.length;M<b;M++){const P=y[M],z=Array.isArray(P.value)?P.value:[P.value];for(let I=0,k=z.length;I<k;I++){const $=z[I],ee=x($),Y=w%C,W=Y%ee.boundary,Q=Y+W;w+=W,Q!==0&&C-Q<ee.storage&&(w+=C-Q),P.__data=new Float32Array(ee.storage/Float32Array.BYTES_PER_ELEMENT),P.__offset=w,w+=ee.storage}}}const D=w%C;return D>0&&(w+=C-D),A.__size=w,A.__cache={},this}function x(A){const T={boundary:0,storage:0};return typeof A=="number"||typeof A=="boolean"?(T.boundary=4,T.storage=4):A.isVector2?(T.boundary=8,T.storage=8):A.isVector3||A.isColor?(T.boundary=16,T.storage=12):A.isVector4?(T.boundary=16,T.storage=16):A.isMatrix3?(T.boundary=48,T.storage=48):A.isMatrix4?(T.boundary=64,T.storage=64):A.isTexture?console.warn("THREE.WebGLRenderer: Texture samplers can not be part of an uniforms group."):console.warn("THREE.WebGLRenderer: Unsupported uniform value type.",A),T}function m(A){const T=A.target;T.removeEventListener("dispose",m);const w=a.indexOf(T.__bindingPointIndex);a.splice(w,1),i.deleteBuffer(s[T.id]),delete s[T.id],delete r[T.id]}function d(){for(const A in s)i.deleteBuffer(s[A]);a=[],s={},r={}}return{bind:l,update:c,dispose:d}}class G_{constructor(e={}){const{canvas:t=vd(),context:n=null,depth:s=!0,stencil:r=!1,alpha:a=!1,antialias:o=!1,premultipliedAlpha:l=!0,preserveDrawingBuffer:c=!1,powerPreference:h="default",failIfMajorPerformanceCaveat:u=!1,reversedDepthBuffer:f=!1}=e;this.isWebGLRenderer=!0;let p;if(n!==null){if(typeof WebGLRenderingContext<"u"&&n instanceof WebGLRenderingContext)throw new Error("THREE.WebGLRenderer: WebGL 1 is not supported since r163.");p=n.getContextAttributes().alpha}else p=a;const g=new Uint32Array(4),x=new Int32Array(4);let m=null,d=null;const A=[],T=[];this.domElement=t,this.debug={checkShaderErrors:!0,onShaderError:null},this.autoClear=!0,this.autoClearColor=!0,this.autoClearDepth=!0,this.autoClearStencil=!0,this.sortObjects=!0,this.clippingPlanes=[],this.localClippingEnabled=!1,this.toneMapping=qn,this.toneMappingExposure=1,this.transmissionResolutionScale=1;const w=this;let C=!1;this._outputColorSpace=sn;let D=0,L=0,F=null,y=-1,M=null;const b=new xt,P=new xt;let z=null;const I=new Ye(0);let k=0,$=t.width,ee=t.height,Y=1,W=null,Q=null;const ce=new xt(0,0,$,ee),be=new xt(0,0,$,ee);let Ie=!1;const G=new ko;let ie=!1,H=!1;const K=new pt,ue=new N,Se=new xt,xe={background:null,fog:null,environment:null,overrideMaterial:null,isScene:!0};let Ve=!1;function Ze(){return F===null?Y:1}let R=n;function Je(S,O){return t.getContext(S,O)}try{const S={alpha:!0,depth:s,stencil:r,antialias:o,premultipliedAlpha:l,preserveDrawingBuffer:c,powerPreference:h,failIfMajorPerformanceCaveat:u};if("setAttribute"in t&&t.setAttribute("data-engine",`three.js r${Ro}`),t.addEventListener("webglcontextlost",he,!1),t.addEventListener("webglcontextrestored",ve,!1),t.addEventListener("webglcontextcreationerror",se,!1),R===null){const O="webgl2";if(R=Je(O,S),R===null)throw Je(O)?new Error("Error creating WebGL context with your selected attributes."):new Error("Error creating WebGL context.")}}catch(S){throw console.error("THREE.WebGLRenderer: "+S.message),S}let Fe,De,ye,ft,Ee,Xe,Rt,yt,E,v,V,J,ne,Z,Ce,le,Te,Ae,ae,me,Oe,Re,fe,We;function U(){Fe=new Qm(R),Fe.init(),Re=new N_(R,Fe),De=new Xm(R,Fe,e,Re),ye=new I_(R,Fe),De.reversedDepthBuffer&&f&&ye.buffers.depth.setReversed(!0),ft=new ng(R),Ee=new y_,Xe=new U_(R,Fe,ye,Ee,De,Re,ft),Rt=new Ym(w),yt=new Jm(w),E=new lf(R),fe=new Wm(R,E),v=new eg(R,E,ft,fe),V=new sg(R,v,E,ft),ae=new ig(R,De,Xe),le=new qm(Ee),J=new x_(w,Rt,yt,Fe,De,fe,le),ne=new H_(w,Ee),Z=new S_,Ce=new R_(Fe),Ae=new Gm(w,Rt,yt,ye,V,p,l),Te=new D_(w,V,De),We=new V_(R,ft,De,ye),me=new $m(R,Fe,ft),Oe=new tg(R,Fe,ft),ft.programs=J.programs,w.capabilities=De,w.extensions=Fe,w.properties=Ee,w.renderLists=Z,w.shadowMap=Te,w.state=ye,w.info=ft}U();const oe=new B_(w,R);this.xr=oe,this.getContext=function(){return R},this.getContextAttributes=function(){return R.getContextAttributes()},this.forceContextLoss=function(){const S=Fe.get("WEBGL_lose_context");S&&S.loseContext()},this.forceContextRestore=function(){const S=Fe.get("WEBGL_lose_context");S&&S.restoreContext()},this.getPixelRatio=function(){return Y},this.setPixelRatio=function(S){S!==void 0&&(Y=S,this.setSize($,ee,!1))},this.getSize=function(S){return S.set($,ee)},this.setSize=function(S,O,X=!0){if(oe.isPresenting){console.warn("THREE.WebGLRenderer: Can't change size while VR device is presenting.");return}$=S,ee=O,t.width=Math.floor(S*Y),t.height=Math.floor(O*Y),X===!0&&(t.style.width=S+"px",t.style.height=O+"px"),this.setViewport(0,0,S,O)},this.getDrawingBufferSize=function(S){return S.set($*Y,ee*Y).floor()},this.setDrawingBufferSize=function(S,O,X){$=S,ee=O,Y=X,t.width=Math.floor(S*X),t.height=Math.floor(O*X),this.setViewport(0,0,S,O)},this.getCurrentViewport=function(S){return S.copy(b)},this.getViewport=function(S){return S.copy(ce)},this.setViewport=function(S,O,X,q){S.isVector4?ce.set(S.x,S.y,S.z,S.w):ce.set(S,O,X,q),ye.viewport(b.copy(ce).multiplyScalar(Y).round())},this.getScissor=function(S){return S.copy(be)},this.setScissor=function(S,O,X,q){S.isVector4?be.set(S.x,S.y,S.z,S.w):be.set(S,O,X,q),ye.scissor(P.copy(be).multiplyScalar(Y).round())},this.getScissorTest=function(){return Ie},this.setScissorTest=function(S){ye.setScissorTest(Ie=S)},this.setOpaqueSort=function(S){W=S},this.setTransparentSort=function(S){Q=S},this.getClearColor=function(S){return S.copy(Ae.getClearColor())},this.setClearColor=function(){Ae.setClearColor(...arguments)},this.getClearAlpha=function(){return Ae.getClearAlpha()},this.setClearAlpha=function(){Ae.setClearAlpha(...arguments)},this.clear=function(S=!0,O=!0,X=!0){let q=0;if(S){let B=!1;if(F!==null){const re=F.texture.format;B=re===No||re===Uo||re===Io}if(B){const re=F.texture.type,pe=re===xn||re===di||re===ms||re===gs||re===Do||re===Lo,Me=Ae.getClearColor(),_e=Ae.getClearAlpha(),Ue=Me.r,ke=Me.g,Pe=Me.b;pe?(g[0]=Ue,g[1]=ke,g[2]=Pe,g[3]=_e,R.clearBufferuiv(R.COLOR,0,g)):(x[0]=Ue,x[1]=ke,x[2]=Pe,x[3]=_e,R.clearBufferiv(R.COLOR,0,x))}else q|=R.COLOR_BUFFER_BIT}O&&(q|=R.DEPTH_BUFFER_BIT),X&&(q|=R.STENCIL_BUFFER_BIT,this.state.buffers.stencil.setMask(4294967295)),R.clear(q)},this.clearColor=function(){this.clear(!0,!1,!1)},this.clearDepth=function(){this.clear(!1,!0,!1)},this.clearStencil=function(){this.clear(!1,!1,!0)},this.dispose=function(){t.removeEventListener("webglcontextlost",he,!1),t.removeEventListener("webglcontextrestored",ve,!1),t.removeEventListener("webglcontextcreationerror",se,!1),Ae.dispose(),Z.dispose(),Ce.dispose(),Ee.dispose(),Rt.dispose(),yt.dispose(),V.dispose(),fe.dispose(),We.dispose(),J.dispose(),oe.dispose(),oe.removeEventListener("sessionstart",pn),oe.removeEventListener("sessionend",Vo),Jn.stop()};function he(S){S.preventDefault(),console.log("THREE.WebGLRenderer: Context Lost."),C=!0}function ve(){console.log("THREE.WebGLRenderer: Context Restored."),C=!1;const S=ft.autoReset,O=Te.enabled,X=Te.autoUpdate,q=Te.needsUpdate,B=Te.type;U(),ft.autoReset=S,Te.enabled=O,Te.autoUpdate=X,Te.needsUpdate=q,Te.type=B}function se(S){console.error("THREE.WebGLRenderer: A WebGL context could not be created. Reason: ",S.statusMessage)}function te(S){const O=S.target;O.removeEventListener("dispose",te),we(O)}function we(S){Ge(S),Ee.remove(S)}function Ge(S){const O=Ee.get(S).programs;O!==void 0&&(O.forEach(function(X){J.releaseProgram(X)}),S.isShaderMaterial&&J.releaseShaderCache(S))}this.renderBufferDirect=function(S,O,X,q,B,re){O===null&&(O=xe);const pe=B.isMesh&&B.matrixWorld.determinant()<0,Me=fh(S,O,X,q,B);ye.setMaterial(q,pe);let _e=X.index,Ue=1;if(q.wireframe===!0){if(_e=v.getWireframeAttribute(X),_e===void 0)return;Ue=2}const ke=X.drawRange,Pe=X.attributes.position;let Ke=ke.start*Ue,it=(ke.start+ke.count)*Ue;re!==null&&(Ke=Math.max(Ke,re.start*Ue),it=Math.min(it,(re.start+re.count)*Ue)),_e!==null?(Ke=Math.max(Ke,0),it=Math.min(it,_e.count)):Pe!=null&&(Ke=Math.max(Ke,0),it=Math.min(it,Pe.count));const vt=it-Ke;if(vt<0||vt===1/0)return;fe.setup(B,q,Me,X,_e);let ht,ot=me;if(_e!==null&&(ht=E.get(_e),ot=Oe,ot.setIndex(ht)),B.isMesh)q.wireframe===!0?(ye.setLineWidth(q.wireframeLinewidth*Ze()),ot.setMode(R.LINES)):ot.setMode(R.TRIANGLES);else if(B.isLine){let Le=q.linewidth;Le===void 0&&(Le=1),ye.setLineWidth(Le*Ze()),B.isLineSegments?ot.setMode(R.LINES):B.isLineLoop?ot.setMode(R.LINE_LOOP):ot.setMode(R.LINE_STRIP)}else B.isPoints?ot.setMode(R.POINTS):B.isSprite&&ot.setMode(R.TRIANGLES);if(B.isBatchedMesh)if(B._multiDrawInstances!==null)xs("THREE.WebGLRenderer: renderMultiDrawInstances has been deprecated and will be removed in r184. Append to renderMultiDraw arguments and use indirection."),ot.renderMultiDrawInstances(B._multiDrawStarts,B._multiDrawCounts,B._multiDrawCount,B._multiDrawInstances);else if(Fe.get("WEBGL_multi_draw"))ot.renderMultiDraw(B._multiDrawStarts,B._multiDrawCounts,B._multiDrawCount);else{const Le=B._multiDrawStarts,mt=B._multiDrawCounts,Qe=B._multiDrawCount,Yt=_e?E.get(_e).bytesPerElement:1,vi=Ee.get(q).currentProgram.getUniforms();for(let jt=0;jt<Qe;jt++)vi.setValue(R,"_gl_DrawID",jt),ot.render(Le[jt]/Yt,mt[jt])}else if(B.isInstancedMesh)ot.renderInstances(Ke,vt,B.count);else if(X.isInstancedBufferGeometry){const Le=X._maxInstanceCount!==void 0?X._maxInstanceCount:1/0,mt=Math.min(X.instanceCount,Le);ot.renderInstances(Ke,vt,mt)}else ot.render(Ke,vt)};function lt(S,O,X){S.transparent===!0&&S.side===Rn&&S.forceSinglePass===!1?(S.side=$t,S.needsUpdate=!0,Cs(S,O,X),S.side=jn,S.needsUpdate=!0,Cs(S,O,X),S.side=Rn):Cs(S,O,X)}this.compile=function(S,O,X=null){X===null&&(X=S),d=Ce.get(X),d.init(O),T.push(d),X.traverseVisible(function(B){B.isLight&&B.layers.test(O.layers)&&(d.pushLight(B),B.castShadow&&d.pushShadow(B))}),S!==X&&S.traverseVisible(function(B){B.isLight&&B.layers.test(O.layers)&&(d.pushLight(B),B.castShadow&&d.pushShadow(B))}),d.setupLights();const q=new Set;return S.traverse(function(B){if(!(B.isMesh||B.isPoints||B.isLine||B.isSprite))return;const re=B.material;if(re)if(Array.isArray(re))for(let pe=0;pe<re.length;pe++){const Me=re[pe];lt(Me,X,B),q.add(Me)}else lt(re,X,B),q.add(re)}),d=T.pop(),q},this.compileAsync=function(S,O,X=null){const q=this.compile(S,O,X);return new Promise(B=>{function re(){if(q.forEach(function(pe){Ee.get(pe).currentProgram.isReady()&&q.delete(pe)}),q.size===0){B(S);return}setTimeout(re,10)}Fe.get("KHR_parallel_shader_compile")!==null?re():setTimeout(re,10)})};let nt=null;function Mn(S){nt&&nt(S)}function pn(){Jn.stop()}function Vo(){Jn.start()}const Jn=new rh;Jn.setAnimationLoop(Mn),typeof self<"u"&&Jn.setContext(self),this.setAnimationLoop=function(S){nt=S,oe.setAnimationLoop(S),S===null?Jn.stop():Jn.start()},oe.addEventListener("sessionstart",pn),oe.addEventListener("sessionend",Vo),this.render=function(S,O){if(O!==void 0&&O.isCamera!==!0){console.error("THREE.WebGLRenderer.render: camera is not an instance of THREE.Camera.");return}if(C===!0)return;if(S.matrixWorldAutoUpdate===!0&&S.updateMatrixWorld(),O.parent===null&&O.matrixWorldAutoUpdate===!0&&O.updateMatrixWorld(),oe.enabled===!0&&oe.isPresenting===!0&&(oe.cameraAutoUpdate===!0&&oe.updateCamera(O),O=oe.getCamera()),S.isScene===!0&&S.onBeforeRender(w,S,O,F),d=Ce.get(S,T.length),d.init(O),T.push(d),K.multiplyMatrices(O.projectionMatrix,O.matrixWorldInverse),G.setFromProjectionMatrix(K,_n,O.reversedDepth),H=this.localClippingEnabled,ie=le.init(this.clippingPlanes,H),m=Z.get(S,A.length),m.init(),A.push(m),oe.enabled===!0&&oe.isPresenting===!0){const re=w.xr.getDepthSensingMesh();re!==null&&Dr(re,O,-1/0,w.sortObjects)}Dr(S,O,0,w.sortObjects),m.finish(),w.sortObjects===!0&&m.sort(W,Q),Ve=oe.enabled===!1||oe.isPresenting===!1||oe.hasDepthSensing()===!1,Ve&&Ae.addToRenderList(m,S),this.info.render.frame++,ie===!0&&le.beginShadows();const X=d.state.shadowsArray;Te.render(X,S,O),ie===!0&&le.endShadows(),this.info.autoReset===!0&&this.info.reset();const q=m.opaque,B=m.transmissive;if(d.setupLights(),O.isArrayCamera){const re=O.cameras;if(B.length>0)for(let pe=0,Me=re.length;pe<Me;pe++){const _e=re[pe];Wo(q,B,S,_e)}Ve&&Ae.render(S);for(let pe=0,Me=re.length;pe<Me;pe++){const _e=re[pe];Go(m,S,_e,_e.viewport)}}else B.length>0&&Wo(q,B,S,O),Ve&&Ae.render(S),Go(m,S,O);F!==null&&L===0&&(Xe.updateMultisampleRenderTarget(F),Xe.updateRenderTargetMipmap(F)),S.isScene===!0&&S.onAfterRender(w,S,O),fe.resetDefaultState(),y=-1,M=null,T.pop(),T.length>0?(d=T[T.length-1],ie===!0&&le.setGlobalState(w.clippingPlanes,d.state.camera)):d=null,A.pop(),A.length>0?m=A[A.length-1]:m=null};function Dr(S,O,X,q){if(S.visible===!1)return;if(S.layers.test(O.layers)){if(S.isGroup)X=S.renderOrder;else if(S.isLOD)S.autoUpdate===!0&&S.update(O);else if(S.isLight)d.pushLight(S),S.castShadow&&d.pushShadow(S);else if(S.isSprite){if(!S.frustumCulled||G.intersectsSprite(S)){q&&Se.setFromMatrixPosition(S.matrixWorld).applyMatrix4(K);const pe=V.update(S),Me=S.material;Me.visible&&m.push(S,pe,Me,X,Se.z,null)}}else if((S.isMesh||S.isLine||S.isPoints)&&(!S.frustumCulled||G.intersectsObject(S))){const pe=V.update(S),Me=S.material;if(q&&(S.boundingSphere!==void 0?(S.boundingSphere===null&&S.computeBoundingSphere(),Se.copy(S.boundingSphere.center)):(pe.boundingSphere===null&&pe.computeBoundingSphere(),Se.copy(pe.boundingSphere.center)),Se.applyMatrix4(S.matrixWorld).applyMatrix4(K)),Array.isArray(Me)){const _e=pe.groups;for(let Ue=0,ke=_e.length;Ue<ke;Ue++){const Pe=_e[Ue],Ke=Me[Pe.materialIndex];Ke&&Ke.visible&&m.push(S,pe,Ke,X,Se.z,Pe)}}else Me.visible&&m.push(S,pe,Me,X,Se.z,null)}}const re=S.children;for(let pe=0,Me=re.length;pe<Me;pe++)Dr(re[pe],O,X,q)}function Go(S,O,X,q){const B=S.opaque,re=S.transmissive,pe=S.transparent;d.setupLightsView(X),ie===!0&&le.setGlobalState(w.clippingPlanes,X),q&&ye.viewport(b.copy(q)),B.length>0&&Rs(B,O,X),re.length>0&&Rs(re,O,X),pe.length>0&&Rs(pe,O,X),ye.buffers.depth.setTest(!0),ye.buffers.depth.setMask(!0),ye.buffers.color.setMask(!0),ye.setPolygonOffset(!1)}function Wo(S,O,X,q){if((X.isScene===!0?X.overrideMaterial:null)!==null)return;d.state.transmissionRenderTarget[q.id]===void 0&&(d.state.transmissionRenderTarget[q.id]=new pi(1,1,{generateMipmaps:!0,type:Fe.has("EXT_color_buffer_half_float")||Fe.has("EXT_color_buffer_float")?ws:xn,minFilter:ui,samples:4,stencilBuffer:r,resolveDepthBuffer:!1,resolveStencilBuffer:!1,colorSpace:et.workingColorSpace}));const re=d.state.transmissionRenderTarget[q.id],pe=q.viewport||b;re.setSize(pe.z*w.transmissionResolutionScale,pe.w*w.transmissionResolutionScale);const Me=w.getRenderTarget(),_e=w.getActiveCubeFace(),Ue=w.getActiveMipmapLevel();w.setRenderTarget(re),w.getClearColor(I),k=w.getClearAlpha(),k<1&&w.setClearColor(16777215,.5),w.clear(),Ve&&Ae.render(X);const ke=w.toneMapping;w.toneMapping=qn;const Pe=q.viewport;if(q.viewport!==void 0&&(q.viewport=void 0),d.setupLightsView(q),ie===!0&&le.setGlobalState(w.clippingPlanes,q),Rs(S,X,q),Xe.updateMultisampleRenderTarget(re),Xe.updateRenderTargetMipmap(re),Fe.has("WEBGL_multisampled_render_to_texture")===!1){let Ke=!1;for(let it=0,vt=O.length;it<vt;it++){const ht=O[it],ot=ht.object,Le=ht.geometry,mt=ht.material,Qe=ht.group;if(mt.side===Rn&&ot.layers.test(q.layers)){const Yt=mt.side;mt.side=$t,mt.needsUpdate=!0,$o(ot,X,q,Le,mt,Qe),mt.side=Yt,mt.needsUpdate=!0,Ke=!0}}Ke===!0&&(Xe.updateMultisampleRenderTarget(re),Xe.updateRenderTargetMipmap(re))}w.setRenderTarget(Me,_e,Ue),w.setClearColor(I,k),Pe!==void 0&&(q.viewport=Pe),w.toneMapping=ke}function Rs(S,O,X){const q=O.isScene===!0?O.overrideMaterial:null;for(let B=0,re=S.length;B<re;B++){const pe=S[B],Me=pe.object,_e=pe.geometry,Ue=pe.group;let ke=pe.material;ke.allowOverride===!0&&q!==null&&(ke=q),Me.layers.test(X.layers)&&$o(Me,O,X,_e,ke,Ue)}}function $o(S,O,X,q,B,re){S.onBeforeRender(w,O,X,q,B,re),S.modelViewMatrix.multiplyMatrices(X.matrixWorldInverse,S.matrixWorld),S.normalMatrix.getNormalMatrix(S.modelViewMatrix),B.onBeforeRender(w,O,X,q,S,re),B.transparent===!0&&B.side===Rn&&B.forceSinglePass===!1?(B.side=$t,B.needsUpdate=!0,w.renderBufferDirect(X,O,q,B,S,re),B.side=jn,B.needsUpdate=!0,w.renderBufferDirect(X,O,q,B,S,re),B.side=Rn):w.renderBufferDirect(X,O,q,B,S,re),S.onAfterRender(w,O,X,q,B,re)}function Cs(S,O,X){O.isScene!==!0&&(O=xe);const q=Ee.get(S),B=d.state.lights,re=d.state.shadowsArray,pe=B.state.version,Me=J.getParameters(S,B.state,re,O,X),_e=J.getProgramCacheKey(Me);let Ue=q.programs;q.environment=S.isMeshStandardMaterial?O.environment:null,q.fog=O.fog,q.envMap=(S.isMeshStandardMaterial?yt:Rt).get(S.envMap||q.environment),q.envMapRotation=q.environment!==null&&S.envMap===null?O.environmentRotation:S.envMapRotation,Ue===void 0&&(S.addEventListener("dispose",te),Ue=new Map,q.programs=Ue);let ke=Ue.get(_e);if(ke!==void 0){if(q.currentProgram===ke&&q.lightsStateVersion===pe)return qo(S,Me),ke}else Me.uniforms=J.getUniforms(S),S.onBeforeCompile(Me,w),ke=J.acquireProgram(Me,_e),Ue.set(_e,ke),q.uniforms=Me.uniforms;const Pe=q.uniforms;return(!S.isShaderMaterial&&!S.isRawShaderMaterial||S.clipping===!0)&&(Pe.clippingPlanes=le.uniform),qo(S,Me),q.needsLights=mh(S),q.lightsStateVersion=pe,q.needsLights&&(Pe.ambientLightColor.value=B.state.ambient,Pe.lightProbe.value=B.state.probe,Pe.directionalLights.value=B.state.directional,Pe.directionalLightShadows.value=B.state.directionalShadow,Pe.spotLights.value=B.state.spot,Pe.spotLightShadows.value=B.state.spotShadow,Pe.rectAreaLights.value=B.state.rectArea,Pe.ltc_1.value=B.state.rectAreaLTC1,Pe.ltc_2.value=B.state.rectAreaLTC2,Pe.pointLights.value=B.state.point,Pe.pointLightShadows.value=B.state.pointShadow,Pe.hemisphereLights.value=B.state.hemi,Pe.directionalShadowMap.value=B.state.directionalShadowMap,Pe.directionalShadowMatrix.value=B.state.directionalShadowMatrix,Pe.spotShadowMap.value=B.state.spotShadowMap,Pe.spotLightMatrix.value=B.state.spotLightMatrix,Pe.spotLightMap.value=B.state.spotLightMap,Pe.pointShadowMap.value=B.state.pointShadowMap,Pe.pointShadowMatrix.value=B.state.pointShadowMatrix),q.currentProgram=ke,q.uniformsList=null,ke}function Xo(S){if(S.uniformsList===null){const O=S.currentProgram.getUniforms();S.uniformsList=ur.seqWithValue(O.seq,S.uniforms)}return S.uniformsList}function qo(S,O){const X=Ee.get(S);X.outputColorSpace=O.outputColorSpace,X.batching=O.batching,X.batchingColor=O.batchingColor,X.instancing=O.instancing,X.instancingColor=O.instancingColor,X.instancingMorph=O.instancingMorph,X.skinning=O.skinning,X.morphTargets=O.morphTargets,X.morphNormals=O.morphNormals,X.morphColors=O.morphColors,X.morphTargetsCount=O.morphTargetsCount,X.numClippingPlanes=O.numClippingPlanes,X.numIntersection=O.numClipIntersection,X.vertexAlphas=O.vertexAlphas,X.vertexTangents=O.vertexTangents,X.toneMapping=O.toneMapping}function fh(S,O,X,q,B){O.isScene!==!0&&(O=xe),Xe.resetTextureUnits();const re=O.fog,pe=q.isMeshStandardMaterial?O.environment:null,Me=F===null?w.outputColorSpace:F.isXRRenderTarget===!0?F.texture.colorSpace:Xi,_e=(q.isMeshStandardMaterial?yt:Rt).get(q.envMap||pe),Ue=q.vertexColors===!0&&!!X.attributes.color&&X.attributes.color.itemSize===4,ke=!!X.attributes.tangent&&(!!q.normalMap||q.anisotropy>0),Pe=!!X.morphAttributes.position,Ke=!!X.morphAttributes.normal,it=!!X.morphAttributes.color;let vt=qn;q.toneMapped&&(F===null||F.isXRRenderTarget===!0)&&(vt=w.toneMapping);const ht=X.morphAttributes.position||X.morphAttributes.normal||X.morphAttributes.color,ot=ht!==void 0?ht.length:0,Le=Ee.get(q),mt=d.state.lights;if(ie===!0&&(H===!0||S!==M)){const kt=S===M&&q.id===y;le.setState(q,S,kt)}let Qe=!1;q.version===Le.__version?(Le.needsLights&&Le.lightsStateVersion!==mt.state.version||Le.outputColorSpace!==Me||B.isBatchedMesh&&Le.batching===!1||!B.isBatchedMesh&&Le.batching===!0||B.isBatchedMesh&&Le.batchingColor===!0&&B.colorTexture===null||B.isBatchedMesh&&Le.batchingColor===!1&&B.colorTexture!==null||B.isInstancedMesh&&Le.instancing===!1||!B.isInstancedMesh&&Le.instancing===!0||B.isSkinnedMesh&&Le.skinning===!1||!B.isSkinnedMesh&&Le.skinning===!0||B.isInstancedMesh&&Le.instancingColor===!0&&B.instanceColor===null||B.isInstancedMesh&&Le.instancingColor===!1&&B.instanceColor!==null||B.isInstancedMesh&&Le.instancingMorph===!0&&B.morphTexture===null||B.isInstancedMesh&&Le.instancingMorph===!1&&B.morphTexture!==null||Le.envMap!==_e||q.fog===!0&&Le.fog!==re||Le.numClippingPlanes!==void 0&&(Le.numClippingPlanes!==le.numPlanes||Le.numIntersection!==le.numIntersection)||Le.vertexAlphas!==Ue||Le.vertexTangents!==ke||Le.morphTargets!==Pe||Le.morphNormals!==Ke||Le.morphColors!==it||Le.toneMapping!==vt||Le.morphTargetsCount!==ot)&&(Qe=!0):(Qe=!0,Le.__version=q.version);let Yt=Le.currentProgram;Qe===!0&&(Yt=Cs(q,O,B));let vi=!1,jt=!1,Qi=!1;const gt=Yt.getUniforms(),en=Le.uniforms;if(ye.useProgram(Yt.program)&&(vi=!0,jt=!0,Qi=!0),q.id!==y&&(y=q.id,jt=!0),vi||M!==S){ye.buffers.depth.getReversed()&&S.reversedDepth!==!0&&(S._reversedDepth=!0,S.updateProjectionMatrix()),gt.setValue(R,"projectionMatrix",S.projectionMatrix),gt.setValue(R,"viewMatrix",S.matrixWorldInverse);const Ht=gt.map.cameraPosition;Ht!==void 0&&Ht.setValue(R,ue.setFromMatrixPosition(S.matrixWorld)),De.logarithmicDepthBuffer&&gt.setValue(R,"logDepthBufFC",2/(Math.log(S.far+1)/Math.LN2)),(q.isMeshPhongMaterial||q.isMeshToonMaterial||q.isMeshLambertMaterial||q.isMeshBasicMaterial||q.isMeshStandardMaterial||q.isShaderMaterial)&&gt.setValue(R,"isOrthographic",S.isOrthographicCamera===!0),M!==S&&(M=S,jt=!0,Qi=!0)}if(B.isSkinnedMesh){gt.setOptional(R,B,"bindMatrix"),gt.setOptional(R,B,"bindMatrixInverse");const kt=B.skeleton;kt&&(kt.boneTexture===null&&kt.computeBoneTexture(),gt.setValue(R,"boneTexture",kt.boneTexture,Xe))}B.isBatchedMesh&&(gt.setOptional(R,B,"batchingTexture"),gt.setValue(R,"batchingTexture",B._matricesTexture,Xe),gt.setOptional(R,B,"batchingIdTexture"),gt.setValue(R,"batchingIdTexture",B._indirectTexture,Xe),gt.setOptional(R,B,"batchingColorTexture"),B._colorsTexture!==null&&gt.setValue(R,"batchingColorTexture",B._colorsTexture,Xe));const tn=X.morphAttributes;if((tn.position!==void 0||tn.normal!==void 0||tn.color!==void 0)&&ae.update(B,X,Yt),(jt||Le.receiveShadow!==B.receiveShadow)&&(Le.receiveShadow=B.receiveShadow,gt.setValue(R,"receiveShadow",B.receiveShadow)),q.isMeshGouraudMaterial&&q.envMap!==null&&(en.envMap.value=_e,en.flipEnvMap.value=_e.isCubeTexture&&_e.isRenderTargetTexture===!1?-1:1),q.isMeshStandardMaterial&&q.envMap===null&&O.environment!==null&&(en.envMapIntensity.value=O.environmentIntensity),jt&&(gt.setValue(R,"toneMappingExposure",w.toneMappingExposure),Le.needsLights&&ph(en,Qi),re&&q.fog===!0&&ne.refreshFogUniforms(en,re),ne.refreshMaterialUniforms(en,q,Y,ee,d.state.transmissionRenderTarget[S.id]),ur.upload(R,Xo(Le),en,Xe)),q.isShaderMaterial&&q.uniformsNeedUpdate===!0&&(ur.upload(R,Xo(Le),en,Xe),q.uniformsNeedUpdate=!1),q.isSpriteMaterial&&gt.setValue(R,"center",B.center),gt.setValue(R,"modelViewMatrix",B.modelViewMatrix),gt.setValue(R,"normalMatrix",B.normalMatrix),gt.setValue(R,"modelMatrix",B.matrixWorld),q.isShaderMaterial||q.isRawShaderMaterial){const kt=q.uniformsGroups;for(let Ht=0,Lr=kt.length;Ht<Lr;Ht++){const Qn=kt[Ht];We.update(Qn,Yt),We.bind(Qn,Yt)}}return Yt}function ph(S,O){S.ambientLightColor.needsUpdate=O,S.lightProbe.needsUpdate=O,S.directionalLights.needsUpdate=O,S.directionalLightShadows.needsUpdate=O,S.pointLights.needsUpdate=O,S.pointLightShadows.needsUpdate=O,S.spotLights.needsUpdate=O,S.spotLightShadows.needsUpdate=O,S.rectAreaLights.needsUpdate=O,S.hemisphereLights.needsUpdate=O}function mh(S){return S.isMeshLambertMaterial||S.isMeshToonMaterial||S.isMeshPhongMaterial||S.isMeshStandardMaterial||S.isShadowMaterial||S.isShaderMaterial&&S.lights===!0}this.getActiveCubeFace=function(){return D},this.getActiveMipmapLevel=function(){return L},this.getRenderTarget=function(){return F},this.setRenderTargetTextures=function(S,O,X){const q=Ee.get(S);q.__autoAllocateDepthBuffer=S.resolveDepthBuffer===!1,q.__autoAllocateDepthBuffer===!1&&(q.__useRenderToTexture=!1),Ee.get(S.texture).__webglTexture=O,Ee.get(S.depthTexture).__webglTexture=q.__autoAllocateDepthBuffer?void 0:X,q.__hasExternalTextures=!0},this.setRenderTargetFramebuffer=function(S,O){const X=Ee.get(S);X.__webglFramebuffer=O,X.__useDefaultFramebuffer=O===void 0};const gh=R.createFramebuffer();this.setRenderTarget=function(S,O=0,X=0){F=S,D=O,L=X;let q=!0,B=null,re=!1,pe=!1;if(S){const _e=Ee.get(S);if(_e.__useDefaultFramebuffer!==void 0)ye.bindFramebuffer(R.FRAMEBUFFER,null),q=!1;else if(_e.__webglFramebuffer===void 0)Xe.setupRenderTarget(S);else if(_e.__hasExternalTextures)Xe.rebindTextures(S,Ee.get(S.texture).__webglTexture,Ee.get(S.depthTexture).__webglTexture);else if(S.depthBuffer){const Pe=S.depthTexture;if(_e.__boundDepthTexture!==Pe){if(Pe!==null&&Ee.has(Pe)&&(S.width!==Pe.image.width||S.height!==Pe.image.height))throw new Error("WebGLRenderTarget: Attached DepthTexture is initialized to the incorrect size.");Xe.setupDepthRenderbuffer(S)}}const Ue=S.texture;(Ue.isData3DTexture||Ue.isDataArrayTexture||Ue.isCompressedArrayTexture)&&(pe=!0);const ke=Ee.get(S).__webglFramebuffer;S.isWebGLCubeRenderTarget?(Array.isArray(ke[O])?B=ke[O][X]:B=ke[O],re=!0):S.samples>0&&Xe.useMultisampledRTT(S)===!1?B=Ee.get(S).__webglMultisampledFramebuffer:Array.isArray(ke)?B=ke[X]:B=ke,b.copy(S.viewport),P.copy(S.scissor),z=S.scissorTest}else b.copy(ce).multiplyScalar(Y).floor(),P.copy(be).multiplyScalar(Y).floor(),z=Ie;if(X!==0&&(B=gh),ye.bindFramebuffer(R.FRAMEBUFFER,B)&&q&&ye.drawBuffers(S,B),ye.viewport(b),ye.scissor(P),ye.setScissorTest(z),re){const _e=Ee.get(S.texture);R.framebufferTexture2D(R.FRAMEBUFFER,R.COLOR_ATTACHMENT0,R.TEXTURE_CUBE_MAP_POSITIVE_X+O,_e.__webglTexture,X)}else if(pe){const _e=O;for(let Ue=0;Ue<S.textures.length;Ue++){const ke=Ee.get(S.textures[Ue]);R.framebufferTextureLayer(R.FRAMEBUFFER,R.COLOR_ATTACHMENT0+Ue,ke.__webglTexture,X,_e)}}else if(S!==null&&X!==0){const _e=Ee.get(S.texture);R.framebufferTexture2D(R.FRAMEBUFFER,R.COLOR_ATTACHMENT0,R.TEXTURE_2D,_e.__webglTexture,X)}y=-1},this.readRenderTargetPixels=function(S,O,X,q,B,re,pe,Me=0){if(!(S&&S.isWebGLRenderTarget)){console.error("THREE.WebGLRenderer.readRenderTargetPixels: renderTarget is not THREE.WebGLRenderTarget.");return}let _e=Ee.get(S).__webglFramebuffer;if(S.isWebGLCubeRenderTarget&&pe!==void 0&&(_e=_e[pe]),_e){ye.bindFramebuffer(R.FRAMEBUFFER,_e);try{const Ue=S.textures[Me],ke=Ue.format,Pe=Ue.type;if(!De.textureFormatReadable(ke)){console.error("THREE.WebGLRenderer.readRenderTargetPixels: renderTarget is not in RGBA or implementation defined format.");return}if(!De.textureTypeReadable(Pe)){console.error("THREE.WebGLRenderer.readRenderTargetPixels: renderTarget is not in UnsignedByteType or implementation defined type.");return}O>=0&&O<=S.width-q&&X>=0&&X<=S.height-B&&(S.textures.length>1&&R.readBuffer(R.COLOR_ATTACHMENT0+Me),R.readPixels(O,X,q,B,Re.convert(ke),Re.convert(Pe),re))}finally{const Ue=F!==null?Ee.get(F).__webglFramebuffer:null;ye.bindFramebuffer(R.FRAMEBUFFER,Ue)}}},this.readRenderTargetPixelsAsync=async function(S,O,X,q,B,re,pe,Me=0){if(!(S&&S.isWebGLRenderTarget))throw new Error("THREE.WebGLRenderer.readRenderTargetPixels: renderTarget is not THREE.WebGLRenderTarget.");let _e=Ee.get(S).__webglFramebuffer;if(S.isWebGLCubeRenderTarget&&pe!==void 0&&(_e=_e[pe]),_e)if(O>=0&&O<=S.width-q&&X>=0&&X<=S.height-B){ye.bindFramebuffer(R.FRAMEBUFFER,_e);const Ue=S.textures[Me],ke=Ue.format,Pe=Ue.type;if(!De.textureFormatReadable(ke))throw new Error("THREE.WebGLRenderer.readRenderTargetPixelsAsync: renderTarget is not in RGBA or implementation defined format.");if(!De.textureTypeReadable(Pe))throw new Error("THREE.WebGLRenderer.readRenderTargetPixelsAsync: renderTarget is not in UnsignedByteType or implementation defined type.");const Ke=R.createBuffer();R.bindBuffer(R.PIXEL_PACK_BUFFER,Ke),R.bufferData(R.PIXEL_PACK_BUFFER,re.byteLength,R.STREAM_READ),S.textures.length>1&&R.readBuffer(R.COLOR_ATTACHMENT0+Me),R.readPixels(O,X,q,B,Re.convert(ke),Re.convert(Pe),0);const it=F!==null?Ee.get(F).__webglFramebuffer:null;ye.bindFramebuffer(R.FRAMEBUFFER,it);const vt=R.fenceSync(R.SYNC_GPU_COMMANDS_COMPLETE,0);return R.flush(),await xd(R,vt,4),R.bindBuffer(R.PIXEL_PACK_BUFFER,Ke),R.getBufferSubData(R.PIXEL_PACK_BUFFER,0,re),R.deleteBuffer(Ke),R.deleteSync(vt),re}else throw new Error("THREE.WebGLRenderer.readRenderTargetPixelsAsync: requested read bounds are out of range.")},this.copyFramebufferToTexture=function(S,O=null,X=0){const q=Math.pow(2,-X),B=Math.floor(S.image.width*q),re=Math.floor(S.image.height*q),pe=O!==null?O.x:0,Me=O!==null?O.y:0;Xe.setTexture2D(S,0),R.copyTexSubImage2D(R.TEXTURE_2D,X,0,0,pe,Me,B,re),ye.unbindTexture()};const _h=R.createFramebuffer(),vh=R.createFramebuffer();this.copyTextureToTexture=function(S,O,X=null,q=null,B=0,re=null){re===null&&(B!==0?(xs("WebGLRenderer: copyTextureToTexture function signature has changed to support src and dst mipmap levels."),re=B,B=0):re=0);let pe,Me,_e,Ue,ke,Pe,Ke,it,vt;const ht=S.isCompressedTexture?S.mipmaps[re]:S.image;if(X!==null)pe=X.max.x-X.min.x,Me=X.max.y-X.min.y,_e=X.isBox3?X.max.z-X.min.z:1,Ue=X.min.x,ke=X.min.y,Pe=X.isBox3?X.min.z:0;else{const tn=Math.pow(2,-B);pe=Math.floor(ht.width*tn),Me=Math.floor(ht.height*tn),S.isDataArrayTexture?_e=ht.depth:S.isData3DTexture?_e=Math.floor(ht.depth*tn):_e=1,Ue=0,ke=0,Pe=0}q!==null?(Ke=q.x,it=q.y,vt=q.z):(Ke=0,it=0,vt=0);const ot=Re.convert(O.format),Le=Re.convert(O.type);let mt;O.isData3DTexture?(Xe.setTexture3D(O,0),mt=R.TEXTURE_3D):O.isDataArrayTexture||O.isCompressedArrayTexture?(Xe.setTexture2DArray(O,0),mt=R.TEXTURE_2D_ARRAY):(Xe.setTexture2D(O,0),mt=R.TEXTURE_2D),R.pixelStorei(R.UNPACK_FLIP_Y_WEBGL,O.flipY),R.pixelStorei(R.UNPACK_PREMULTIPLY_ALPHA_WEBGL,O.premultiplyAlpha),R.pixelStorei(R.UNPACK_ALIGNMENT,O.unpackAlignment);const Qe=R.getParameter(R.UNPACK_ROW_LENGTH),Yt=R.getParameter(R.UNPACK_IMAGE_HEIGHT),vi=R.getParameter(R.UNPACK_SKIP_PIXELS),jt=R.getParameter(R.UNPACK_SKIP_ROWS),Qi=R.getParameter(R.UNPACK_SKIP_IMAGES);R.pixelStorei(R.UNPACK_ROW_LENGTH,ht.width),R.pixelStorei(R.UNPACK_IMAGE_HEIGHT,ht.height),R.pixelStorei(R.UNPACK_SKIP_PIXELS,Ue),R.pixelStorei(R.UNPACK_SKIP_ROWS,ke),R.pixelStorei(R.UNPACK_SKIP_IMAGES,Pe);const gt=S.isDataArrayTexture||S.isData3DTexture,en=O.isDataArrayTexture||O.isData3DTexture;if(S.isDepthTexture){const tn=Ee.get(S),kt=Ee.get(O),Ht=Ee.get(tn.__renderTarget),Lr=Ee.get(kt.__renderTarget);ye.bindFramebuffer(R.READ_FRAMEBUFFER,Ht.__webglFramebuffer),ye.bindFramebuffer(R.DRAW_FRAMEBUFFER,Lr.__webglFramebuffer);for(let Qn=0;Qn<_e;Qn++)gt&&(R.framebufferTextureLayer(R.READ_FRAMEBUFFER,R.COLOR_ATTACHMENT0,Ee.get(S).__webglTexture,B,Pe+Qn),R.framebufferTextureLayer(R.DRAW_FRAMEBUFFER,R.COLOR_ATTACHMENT0,Ee.get(O).__webglTexture,re,vt+Qn)),R.blitFramebuffer(Ue,ke,pe,Me,Ke,it,pe,Me,R.DEPTH_BUFFER_BIT,R.NEAREST);ye.bindFramebuffer(R.READ_FRAMEBUFFER,null),ye.bindFramebuffer(R.DRAW_FRAMEBUFFER,null)}else if(B!==0||S.isRenderTargetTexture||Ee.has(S)){const tn=Ee.get(S),kt=Ee.get(O);ye.bindFramebuffer(R.READ_FRAMEBUFFER,_h),ye.bindFramebuffer(R.DRAW_FRAMEBUFFER,vh);for(let Ht=0;Ht<_e;Ht++)gt?R.framebufferTextureLayer(R.READ_FRAMEBUFFER,R.COLOR_ATTACHMENT0,tn.__webglTexture,B,Pe+Ht):R.framebufferTexture2D(R.READ_FRAMEBUFFER,R.COLOR_ATTACHMENT0,R.TEXTURE_2D,tn.__webglTexture,B),en?R.framebufferTextureLayer(R.DRAW_FRAMEBUFFER,R.COLOR_ATTACHMENT0,kt.__webglTexture,re,vt+Ht):R.framebufferTexture2D(R.DRAW_FRAMEBUFFER,R.COLOR_ATTACHMENT0,R.TEXTURE_2D,kt.__webglTexture,re),B!==0?R.blitFramebuffer(Ue,ke,pe,Me,Ke,it,pe,Me,R.COLOR_BUFFER_BIT,R.NEAREST):en?R.copyTexSubImage3D(mt,re,Ke,it,vt+Ht,Ue,ke,pe,Me):R.copyTexSubImage2D(mt,re,Ke,it,Ue,ke,pe,Me);ye.bindFramebuffer(R.READ_FRAMEBUFFER,null),ye.bindFramebuffer(R.DRAW_FRAMEBUFFER,null)}else en?S.isDataTexture||S.isData3DTexture?R.texSubImage3D(mt,re,Ke,it,vt,pe,Me,_e,ot,Le,ht.data):O.isCompressedArrayTexture?R.compressedTexSubImage3D(mt,re,Ke,it,vt,pe,Me,_e,ot,ht.data):R.texSubImage3D(mt,re,Ke,it,vt,pe,Me,_e,ot,Le,ht):S.isDataTexture?R.texSubImage2D(R.TEXTURE_2D,re,Ke,it,pe,Me,ot,Le,ht.data):S.isCompressedTexture?R.compressedTexSubImage2D(R.TEXTURE_2D,re,Ke,it,ht.width,ht.height,ot,ht.data):R.texSubImage2D(R.TEXTURE_2D,re,Ke,it,pe,Me,ot,Le,ht);R.pixelStorei(R.UNPACK_ROW_LENGTH,Qe),R.pixelStorei(R.UNPACK_IMAGE_HEIGHT,Yt),R.pixelStorei(R.UNPACK_SKIP_PIXELS,vi),R.pixelStorei(R.UNPACK_SKIP_ROWS,jt),R.pixelStorei(R.UNPACK_SKIP_IMAGES,Qi),re===0&&O.generateMipmaps&&R.generateMipmap(mt),ye.unbindTexture()},this.initRenderTarget=function(S){Ee.get(S).__webglFramebuffer===void 0&&Xe.setupRenderTarget(S)},this.initTexture=function(S){S.isCubeTexture?Xe.setTextureCube(S,0):S.isData3DTexture?Xe.setTexture3D(S,0):S.isDataArrayTexture||S.isCompressedArrayTexture?Xe.setTexture2DArray(S,0):Xe.setTexture2D(S,0),ye.unbindTexture()},this.resetState=function(){D=0,L=0,F=null,ye.reset(),fe.reset()},typeof __THREE_DEVTOOLS__<"u"&&__THREE_DEVTOOLS__.dispatchEvent(new CustomEvent("observe",{detail:this}))}get coordinateSystem(){return _n}get outputColorSpace(){return this._outputColorSpace}set outputColorSpace(e){this._outputColorSpace=e;const t=this.getContext();t.drawingBufferColorSpace=et._getDrawingBufferColorSpace(e),t.unpackColorSpace=et._getUnpackColorSpace()}}function _o(i){return new jd({color:new Ye(i)})}function Ft(i,e,t,n){const s=new N(...i),r=new N(...e).sub(s),a=new Ot(new Ar(t,t,r.length(),18),_o(n));return a.position.copy(s).addScaledVector(r,.5),a.quaternion.setFromUnitVectors(new N(0,1,0),r.normalize()),a}function zi(i){i.traverse(e=>{if(e instanceof Ot||e instanceof As){e.geometry.dispose();for(const t of[e.material].flat())t.dispose()}}),i.clear()}class W_{constructor(e){this.stage=e,e.room.add(this.fixed,this.carried,this.probe),e.device.add(this.onDevice)}fixed=new Qt;carried=new Qt;onDevice=new Qt;probe=new Qt;built=null;angles=[0,0,0];get stand(){return this.built}get geometry(){return this.built?.geometry??"roll-over-azimuth"}build(e,t=!1){if(this.built&&JSON.stringify([e.geometry,e.range_m,e.size_mm,e.offset_mm,e.ports])===JSON.stringify([this.built.geometry,this.built.range_m,this.built.size_mm,this.built.offset_mm,this.built.ports])&&!t)return;this.built=e;for(const o of[this.fixed,this.carried,this.onDevice,this.probe])zi(o);this.stage.clearLabels(this.stage.room);const s=dt(),r=s.quiet,a=new rf(2.4,12,s.grid,s.grid);a.position.set(0,-.68,.4),this.fixed.add(a),e.geometry==="roll-over-azimuth"?(this.carried.add(Ft([0,-.66,0],[0,-.58,0],.14,r),Ft([0,-.62,-.02],[0,-.62,-.6],.03,r),Ft([0,-.62,-.58],[0,0,-.58],.03,r),Ft([0,0,-.64],[0,0,-.5],.05,r)),this.onDevice.add(Ft([0,0,-.5],[0,0,-.05],.022,s.co))):e.geometry==="azimuth-over-elevation"?(this.fixed.add(Ft([.62,-.68,0],[.62,0,0],.028,r),Ft([-.62,-.68,0],[-.62,0,0],.028,r)),this.carried.add(Ft([-.62,0,0],[-.55,-.54,0],.022,r),Ft([.62,0,0],[.55,-.54,0],.022,r),Ft([-.55,-.54,0],[.55,-.54,0],.028,r)),this.onDevice.add(Ft([0,-.54,0],[0,-.05,0],.022,s.co))):(this.carried.add(Ft([0,-.66,0],[0,-.58,0],.14,r),Ft([-.56,-.6,0],[.56,-.6,0],.028,r),Ft([-.56,-.6,0],[-.56,0,0],.028,r),Ft([.56,-.6,0],[.56,0,0],.028,r)),this.onDevice.add(Ft([-.56,0,0],[.56,0,0],.016,s.co))),this.addDevice(e),this.addProbe(e),this.turn(this.angles[0],this.angles[1],this.angles[2])}addDevice(e){const t=.001/e.range_m,n=Math.max(1,.14/(Math.max(...e.size_mm)*t)),s=e.size_mm.map(a=>Math.max(.012,a*t*n)),r=new Ot(new Ki(s[0],s[1],s[2]),_o(dt().other));r.position.set(e.offset_mm[0]*t,e.offset_mm[1]*t,e.offset_mm[2]*t),this.onDevice.add(r),this.enlarged=n}enlarged=1;addProbe(e){const t=dt(),n=new Ot(new Rr(.045,.13,24,1,!0),_o(t.ink));n.rotation.x=Math.PI/2,n.position.z=.065,this.probe.add(n,new Ms(new N(1,0,0),new N(0,0,-.02),.16,t.cross,.045,.03)),e.ports===2&&this.probe.add(new Ms(new N(0,1,0),new N(0,0,-.02),.16,t.co,.045,.03)),this.probe.position.set(0,0,1),this.stage.label("probe",[0,.13,1.02],this.stage.room,"quiet",!1);const s=new As(new Dt().setFromPoints([new N(0,0,$_),new N(0,0,.96)]),new Zi({color:t.quiet}));this.fixed.add(s)}turn(e,t,n){this.angles=[e,t,n];const s=this.stage.device.rotation,r=this.carried.rotation;this.geometry==="roll-over-azimuth"?(s.set(0,-e*ut,-t*ut,"YXZ"),r.set(0,-e*ut,0)):this.geometry==="azimuth-over-elevation"?(s.set(t*ut,-e*ut,0,"XYZ"),r.set(t*ut,0,0)):(s.set(t*ut,-e*ut,0,"YXZ"),r.set(0,-e*ut,0)),this.probe.rotation.z=n*ut,this.stage.ask()}turnTo(e,t){const n=s=>e[t.indexOf(s)]??0;this.turn(n("azimuth"),n(this.geometry==="roll-over-azimuth"?"roll":"elevation"),n("probe"))}}const $_=.06,cc={type:"change"},Ho={type:"start"},hh={type:"end"},sr=new Ts,hc=new Vn,X_=Math.cos(70*_d.DEG2RAD),bt=new N,Gt=2*Math.PI,rt={NONE:-1,ROTATE:0,DOLLY:1,PAN:2,TOUCH_ROTATE:3,TOUCH_PAN:4,TOUCH_DOLLY_PAN:5,TOUCH_DOLLY_ROTATE:6},xa=1e-6;class q_ extends af{constructor(e,t=null){super(e,t),this.state=rt.NONE,this.target=new N,this.cursor=new N,this.minDistance=0,this.maxDistance=1/0,this.minZoom=0,this.maxZoom=1/0,this.minTargetRadius=0,this.maxTargetRadius=1/0,this.minPolarAngle=0,this.maxPolarAngle=Math.PI,this.minAzimuthAngle=-1/0,this.maxAzimuthAngle=1/0,this.enableDamping=!1,this.dampingFactor=.05,this.enableZoom=!0,this.zoomSpeed=1,this.enableRotate=!0,this.rotateSpeed=1,this.keyRotateSpeed=1,this.enablePan=!0,this.panSpeed=1,this.screenSpacePanning=!0,this.keyPanSpeed=7,this.zoomToCursor=!1,this.autoRotate=!1,this.autoRotateSpeed=2,this.keys={LEFT:"ArrowLeft",UP:"ArrowUp",RIGHT:"ArrowRight",BOTTOM:"ArrowDown"},this.mouseButtons={LEFT:Oi.ROTATE,MIDDLE:Oi.DOLLY,RIGHT:Oi.PAN},this.touches={ONE:Ui.ROTATE,TWO:Ui.DOLLY_PAN},this.target0=this.target.clone(),this.position0=this.object.position.clone(),this.zoom0=this.object.zoom,this._domElementKeyEvents=null,this._lastPosition=new N,this._lastQuaternion=new fi,this._lastTargetPosition=new N,this._quat=new fi().setFromUnitVectors(e.up,new N(0,1,0)),this._quatInverse=this._quat.clone().invert(),this._spherical=new Fl,this._sphericalDelta=new Fl,this._scale=1,this._panOffset=new N,this._rotateStart=new ze,this._rotateEnd=new ze,this._rotateDelta=new ze,this._panStart=new ze,this._panEnd=new ze,this._panDelta=new ze,this._dollyStart=new ze,this._dollyEnd=new ze,this._dollyDelta=new ze,this._dollyDirection=new N,this._mouse=new ze,this._performCursorZoom=!1,this._pointers=[],this._pointerPositions={},this._controlActive=!1,this._onPointerMove=j_.bind(this),this._onPointerDown=Y_.bind(this),this._onPointerUp=K_.bind(this),this._onContextMenu=i0.bind(this),this._onMouseWheel=Q_.bind(this),this._onKeyDown=e0.bind(this),this._onTouchStart=t0.bind(this),this._onTouchMove=n0.bind(this),this._onMouseDown=Z_.bind(this),this._onMouseMove=J_.bind(this),this._interceptControlDown=s0.bind(this),this._interceptControlUp=r0.bind(this),this.domElement!==null&&this.connect(this.domElement),this.update()}connect(e){super.connect(e),this.domElement.addEventListener("pointerdown",this._onPointerDown),this.domElement.addEventListener("pointercancel",this._onPointerUp),this.domElement.addEventListener("contextmenu",this._onContextMenu),this.domElement.addEventListener("wheel",this._onMouseWheel,{passive:!1}),this.domElement.getRootNode().addEventListener("keydown",this._interceptControlDown,{passive:!0,capture:!0}),this.domElement.style.touchAction="none"}disconnect(){this.domElement.removeEventListener("pointerdown",this._onPointerDown),this.domElement.removeEventListener("pointermove",this._onPointerMove),this.domElement.removeEventListener("pointerup",this._onPointerUp),this.domElement.removeEventListener("pointercancel",this._onPointerUp),this.domElement.removeEventListener("wheel",this._onMouseWheel),this.domElement.removeEventListener("contextmenu",this._onContextMenu),this.stopListenToKeyEvents(),this.domElement.getRootNode().removeEventListener("keydown",this._interceptControlDown,{capture:!0}),this.domElement.style.touchAction="auto"}dispose(){this.disconnect()}getPolarAngle(){return this._spherical.phi}getAzimuthalAngle(){return this._spherical.theta}getDistance(){return this.object.position.distanceTo(this.target)}listenToKeyEvents(e){e.addEventListener("keydown",this._onKeyDown),this._domElementKeyEvents=e}stopListenToKeyEvents(){this._domElementKeyEvents!==null&&(this._domElementKeyEvents.removeEventListener("keydown",this._onKeyDown),this._domElementKeyEvents=null)}saveState(){this.target0.copy(this.target),this.position0.copy(this.object.position),this.zoom0=this.object.zoom}reset(){this.target.copy(this.target0),this.object.position.copy(this.position0),this.object.zoom=this.zoom0,this.object.updateProjectionMatrix(),this.dispatchEvent(cc),this.update(),this.state=rt.NONE}update(e=null){const t=this.object.position;bt.copy(t).sub(this.target),bt.applyQuaternion(this._quat),this._spherical.setFromVector3(bt),this.autoRotate&&this.state===rt.NONE&&this._rotateLeft(this._getAutoRotationAngle(e)),this.enableDamping?(this._spherical.theta+=this._sphericalDelta.theta*this.dampingFactor,this._spherical.phi+=this._sphericalDelta.phi*this.dampingFactor):(this._spherical.theta+=this._sphericalDelta.theta,this._spherical.phi+=this._sphericalDelta.phi);let n=this.minAzimuthAngle,s=this.maxAzimuthAngle;isFinite(n)&&isFinite(s)&&(n<-Math.PI?n+=Gt:n>Math.PI&&(n-=Gt),s<-Math.PI?s+=Gt:s>Math.PI&&(s-=Gt),n<=s?this._spherical.theta=Math.max(n,Math.min(s,this._spherical.theta)):this._spherical.theta=this._spherical.theta>(n+s)/2?Math.max(n,this._spherical.theta):Math.min(s,this._spherical.theta)),this._spherical.phi=Math.max(this.minPolarAngle,Math.min(this.maxPolarAngle,this._spherical.phi)),this._spherical.makeSafe(),this.enableDamping===!0?this.target.addScaledVector(this._panOffset,this.dampingFactor):this.target.add(this._panOffset),this.target.sub(this.cursor),this.target.clampLength(this.minTargetRadius,this.maxTargetRadius),this.target.add(this.cursor);let r=!1;if(this.zoomToCursor&&this._performCursorZoom||this.object.isOrthographicCamera)this._spherical.radius=this._clampDistance(this._spherical.radius);else{const a=this._spherical.radius;this._spherical.radius=this._clampDistance(this._spherical.radius*this._scale),r=a!=this._spherical.radius}if(bt.setFromSpherical(this._spherical),bt.applyQuaternion(this._quatInverse),t.copy(this.target).add(bt),this.object.lookAt(this.target),this.enableDamping===!0?(this._sphericalDelta.theta*=1-this.dampingFactor,this._sphericalDelta.phi*=1-this.dampingFactor,this._panOffset.multiplyScalar(1-this.dampingFactor)):(this._sphericalDelta.set(0,0,0),this._panOffset.set(0,0,0)),this.zoomToCursor&&this._performCursorZoom){let a=null;if(this.object.isPerspectiveCamera){const o=bt.length();a=this._clampDistance(o*this._scale);const l=o-a;this.object.position.addScaledVector(this._dollyDirection,l),this.object.updateMatrixWorld(),r=!!l}else if(this.object.isOrthographicCamera){const o=new N(this._mouse.x,this._mouse.y,0);o.unproject(this.object);const l=this.object.zoom;this.object.zoom=Math.max(this.minZoom,Math.min(this.maxZoom,this.object.zoom/this._scale)),this.object.updateProjectionMatrix(),r=l!==this.object.zoom;const c=new N(this._mouse.x,this._mouse.y,0);c.unproject(this.object),this.object.position.sub(c).add(o),this.object.updateMatrixWorld(),a=bt.length()}else console.warn("WARNING: OrbitControls.js encountered an unknown camera type - zoom to cursor disabled."),this.zoomToCursor=!1;a!==null&&(this.screenSpacePanning?this.target.set(0,0,-1).transformDirection(this.object.matrix).multiplyScalar(a).add(this.object.position):(sr.origin.copy(this.object.position),sr.direction.set(0,0,-1).transformDirection(this.object.matrix),Math.abs(this.object.up.dot(sr.direction))<X_?this.object.lookAt(this.target):(hc.setFromNormalAndCoplanarPoint(this.object.up,this.target),sr.intersectPlane(hc,this.target))))}else if(this.object.isOrthographicCamera){const a=this.object.zoom;this.object.zoom=Math.max(this.minZoom,Math.min(this.maxZoom,this.object.zoom/this._scale)),a!==this.object.zoom&&(this.object.updateProjectionMatrix(),r=!0)}return this._scale=1,this._performCursorZoom=!1,r||this._lastPosition.distanceToSquared(this.object.position)>xa||8*(1-this._lastQuaternion.dot(this.object.quaternion))>xa||this._lastTargetPosition.distanceToSquared(this.target)>xa?(this.dispatchEvent(cc),this._lastPosition.copy(this.object.position),this._lastQuaternion.copy(this.object.quaternion),this._lastTargetPosition.copy(this.target),!0):!1}_getAutoRotationAngle(e){return e!==null?Gt/60*this.autoRotateSpeed*e:Gt/60/60*this.autoRotateSpeed}_getZoomScale(e){const t=Math.abs(e*.01);return Math.pow(.95,this.zoomSpeed*t)}_rotateLeft(e){this._sphericalDelta.theta-=e}_rotateUp(e){this._sphericalDelta.phi-=e}_panLeft(e,t){bt.setFromMatrixColumn(t,0),bt.multiplyScalar(-e),this._panOffset.add(bt)}_panUp(e,t){this.screenSpacePanning===!0?bt.setFromMatrixColumn(t,1):(bt.setFromMatrixColumn(t,0),bt.crossVectors(this.object.up,bt)),bt.multiplyScalar(e),this._panOffset.add(bt)}_pan(e,t){const n=this.domElement;if(this.object.isPerspectiveCamera){const s=this.object.position;bt.copy(s).sub(this.target);let r=bt.length();r*=Math.tan(this.object.fov/2*Math.PI/180),this._panLeft(2*e*r/n.clientHeight,this.object.matrix),this._panUp(2*t*r/n.clientHeight,this.object.matrix)}else this.object.isOrthographicCamera?(this._panLeft(e*(this.object.right-this.object.left)/this.object.zoom/n.clientWidth,this.object.matrix),this._panUp(t*(this.object.top-this.object.bottom)/this.object.zoom/n.clientHeight,this.object.matrix)):(console.warn("WARNING: OrbitControls.js encountered an unknown camera type - pan disabled."),this.enablePan=!1)}_dollyOut(e){this.object.isPerspectiveCamera||this.object.isOrthographicCamera?this._scale/=e:(console.warn("WARNING: OrbitControls.js encountered an unknown camera type - dolly/zoom disabled."),this.enableZoom=!1)}_dollyIn(e){this.object.isPerspectiveCamera||this.object.isOrthographicCamera?this._scale*=e:(console.warn("WARNING: OrbitControls.js encountered an unknown camera type - dolly/zoom disabled."),this.enableZoom=!1)}_updateZoomParameters(e,t){if(!this.zoomToCursor)return;this._performCursorZoom=!0;const n=this.domElement.getBoundingClientRect(),s=e-n.left,r=t-n.top,a=n.width,o=n.height;this._mouse.x=s/a*2-1,this._mouse.y=-(r/o)*2+1,this._dollyDirection.set(this._mouse.x,this._mouse.y,1).unproject(this.object).sub(this.object.position).normalize()}_clampDistance(e){return Math.max(this.minDistance,Math.min(this.maxDistance,e))}_handleMouseDownRotate(e){this._rotateStart.set(e.clientX,e.clientY)}_handleMouseDownDolly(e){this._updateZoomParameters(e.clientX,e.clientX),this._dollyStart.set(e.clientX,e.clientY)}_handleMouseDownPan(e){this._panStart.set(e.clientX,e.clientY)}_handleMouseMoveRotate(e){this._rotateEnd.set(e.clientX,e.clientY),this._rotateDelta.subVectors(this._rotateEnd,this._rotateStart).multiplyScalar(this.rotateSpeed);const t=this.domElement;this._rotateLeft(Gt*this._rotateDelta.x/t.clientHeight),this._rotateUp(Gt*this._rotateDelta.y/t.clientHeight),this._rotateStart.copy(this._rotateEnd),this.update()}_handleMouseMoveDolly(e){this._dollyEnd.set(e.clientX,e.clientY),this._dollyDelta.subVectors(this._dollyEnd,this._dollyStart),this._dollyDelta.y>0?this._dollyOut(this._getZoomScale(this._dollyDelta.y)):this._dollyDelta.y<0&&this._dollyIn(this._getZoomScale(this._dollyDelta.y)),this._dollyStart.copy(this._dollyEnd),this.update()}_handleMouseMovePan(e){this._panEnd.set(e.clientX,e.clientY),this._panDelta.subVectors(this._panEnd,this._panStart).multiplyScalar(this.panSpeed),this._pan(this._panDelta.x,this._panDelta.y),this._panStart.copy(this._panEnd),this.update()}_handleMouseWheel(e){this._updateZoomParameters(e.clientX,e.clientY),e.deltaY<0?this._dollyIn(this._getZoomScale(e.deltaY)):e.deltaY>0&&this._dollyOut(this._getZoomScale(e.deltaY)),this.update()}_handleKeyDown(e){let t=!1;switch(e.code){case this.keys.UP:e.ctrlKey||e.metaKey||e.shiftKey?this.enableRotate&&this._rotateUp(Gt*this.keyRotateSpeed/this.domElement.clientHeight):this.enablePan&&this._pan(0,this.keyPanSpeed),t=!0;break;case this.keys.BOTTOM:e.ctrlKey||e.metaKey||e.shiftKey?this.enableRotate&&this._rotateUp(-Gt*this.keyRotateSpeed/this.domElement.clientHeight):this.enablePan&&this._pan(0,-this.keyPanSpeed),t=!0;break;case this.keys.LEFT:e.ctrlKey||e.metaKey||e.shiftKey?this.enableRotate&&this._rotateLeft(Gt*this.keyRotateSpeed/this.domElement.clientHeight):this.enablePan&&this._pan(this.keyPanSpeed,0),t=!0;break;case this.keys.RIGHT:e.ctrlKey||e.metaKey||e.shiftKey?this.enableRotate&&this._rotateLeft(-Gt*this.keyRotateSpeed/this.domElement.clientHeight):this.enablePan&&this._pan(-this.keyPanSpeed,0),t=!0;break}t&&(e.preventDefault(),this.update())}_handleTouchStartRotate(e){if(this._pointers.length===1)this._rotateStart.set(e.pageX,e.pageY);else{const t=this._getSecondPointerPosition(e),n=.5*(e.pageX+t.x),s=.5*(e.pageY+t.y);this._rotateStart.set(n,s)}}_handleTouchStartPan(e){if(this._pointers.length===1)this._panStart.set(e.pageX,e.pageY);else{const t=this._getSecondPointerPosition(e),n=.5*(e.pageX+t.x),s=.5*(e.pageY+t.y);this._panStart.set(n,s)}}_handleTouchStartDolly(e){const t=this._getSecondPointerPosition(e),n=e.pageX-t.x,s=e.pageY-t.y,r=Math.sqrt(n*n+s*s);this._dollyStart.set(0,r)}_handleTouchStartDollyPan(e){this.enableZoom&&this._handleTouchStartDolly(e),this.enablePan&&this._handleTouchStartPan(e)}_handleTouchStartDollyRotate(e){this.enableZoom&&this._handleTouchStartDolly(e),this.enableRotate&&this._handleTouchStartRotate(e)}_handleTouchMoveRotate(e){if(this._pointers.length==1)this._rotateEnd.set(e.pageX,e.pageY);else{const n=this._getSecondPointerPosition(e),s=.5*(e.pageX+n.x),r=.5*(e.pageY+n.y);this._rotateEnd.set(s,r)}this._rotateDelta.subVectors(this._rotateEnd,this._rotateStart).multiplyScalar(this.rotateSpeed);const t=this.domElement;this._rotateLeft(Gt*this._rotateDelta.x/t.clientHeight),this._rotateUp(Gt*this._rotateDelta.y/t.clientHeight),this._rotateStart.copy(this._rotateEnd)}_handleTouchMovePan(e){if(this._pointers.length===1)this._panEnd.set(e.pageX,e.pageY);else{const t=this._getSecondPointerPosition(e),n=.5*(e.pageX+t.x),s=.5*(e.pageY+t.y);this._panEnd.set(n,s)}this._panDelta.subVectors(this._panEnd,this._panStart).multiplyScalar(this.panSpeed),this._pan(this._panDelta.x,this._panDelta.y),this._panStart.copy(this._panEnd)}_handleTouchMoveDolly(e){const t=this._getSecondPointerPosition(e),n=e.pageX-t.x,s=e.pageY-t.y,r=Math.sqrt(n*n+s*s);this._dollyEnd.set(0,r),this._dollyDelta.set(0,Math.pow(this._dollyEnd.y/this._dollyStart.y,this.zoomSpeed)),this._dollyOut(this._dollyDelta.y),this._dollyStart.copy(this._dollyEnd);const a=(e.pageX+t.x)*.5,o=(e.pageY+t.y)*.5;this._updateZoomParameters(a,o)}_handleTouchMoveDollyPan(e){this.enableZoom&&this._handleTouchMoveDolly(e),this.enablePan&&this._handleTouchMovePan(e)}_handleTouchMoveDollyRotate(e){this.enableZoom&&this._handleTouchMoveDolly(e),this.enableRotate&&this._handleTouchMoveRotate(e)}_addPointer(e){this._pointers.push(e.pointerId)}_removePointer(e){delete this._pointerPositions[e.pointerId];for(let t=0;t<this._pointers.length;t++)if(this._pointers[t]==e.pointerId){this._pointers.splice(t,1);return}}_isTrackingPointer(e){for(let t=0;t<this._pointers.length;t++)if(this._pointers[t]==e.pointerId)return!0;return!1}_trackPointer(e){let t=this._pointerPositions[e.pointerId];t===void 0&&(t=new ze,this._pointerPositions[e.pointerId]=t),t.set(e.pageX,e.pageY)}_getSecondPointerPosition(e){const t=e.pointerId===this._pointers[0]?this._pointers[1]:this._pointers[0];return this._pointerPositions[t]}_customWheelEvent(e){const t=e.deltaMode,n={clientX:e.clientX,clientY:e.clientY,deltaY:e.deltaY};switch(t){case 1:n.deltaY*=16;break;case 2:n.deltaY*=100;break}return e.ctrlKey&&!this._controlActive&&(n.deltaY*=10),n}}function Y_(i){this.enabled!==!1&&(this._pointers.length===0&&(this.domElement.setPointerCapture(i.pointerId),this.domElement.addEventListener("pointermove",this._onPointerMove),this.domElement.addEventListener("pointerup",this._onPointerUp)),!this._isTrackingPointer(i)&&(this._addPointer(i),i.pointerType==="touch"?this._onTouchStart(i):this._onMouseDown(i)))}function j_(i){this.enabled!==!1&&(i.pointerType==="touch"?this._onTouchMove(i):this._onMouseMove(i))}function K_(i){switch(this._removePointer(i),this._pointers.length){case 0:this.domElement.releasePointerCapture(i.pointerId),this.domElement.removeEventListener("pointermove",this._onPointerMove),this.domElement.removeEventListener("pointerup",this._onPointerUp),this.dispatchEvent(hh),this.state=rt.NONE;break;case 1:const e=this._pointers[0],t=this._pointerPositions[e];this._onTouchStart({pointerId:e,pageX:t.x,pageY:t.y});break}}function Z_(i){let e;switch(i.button){case 0:e=this.mouseButtons.LEFT;break;case 1:e=this.mouseButtons.MIDDLE;break;case 2:e=this.mouseButtons.RIGHT;break;default:e=-1}switch(e){case Oi.DOLLY:if(this.enableZoom===!1)return;this._handleMouseDownDolly(i),this.state=rt.DOLLY;break;case Oi.ROTATE:if(i.ctrlKey||i.metaKey||i.shiftKey){if(this.enablePan===!1)return;this._handleMouseDownPan(i),this.state=rt.PAN}else{if(this.enableRotate===!1)return;this._handleMouseDownRotate(i),this.state=rt.ROTATE}break;case Oi.PAN:if(i.ctrlKey||i.metaKey||i.shiftKey){if(this.enableRotate===!1)return;this._handleMouseDownRotate(i),this.state=rt.ROTATE}else{if(this.enablePan===!1)return;this._handleMouseDownPan(i),this.state=rt.PAN}break;default:this.state=rt.NONE}this.state!==rt.NONE&&this.dispatchEvent(Ho)}function J_(i){switch(this.state){case rt.ROTATE:if(this.enableRotate===!1)return;this._handleMouseMoveRotate(i);break;case rt.DOLLY:if(this.enableZoom===!1)return;this._handleMouseMoveDolly(i);break;case rt.PAN:if(this.enablePan===!1)return;this._handleMouseMovePan(i);break}}function Q_(i){this.enabled===!1||this.enableZoom===!1||this.state!==rt.NONE||(i.preventDefault(),this.dispatchEvent(Ho),this._handleMouseWheel(this._customWheelEvent(i)),this.dispatchEvent(hh))}function e0(i){this.enabled!==!1&&this._handleKeyDown(i)}function t0(i){switch(this._trackPointer(i),this._pointers.length){case 1:switch(this.touches.ONE){case Ui.ROTATE:if(this.enableRotate===!1)return;this._handleTouchStartRotate(i),this.state=rt.TOUCH_ROTATE;break;case Ui.PAN:if(this.enablePan===!1)return;this._handleTouchStartPan(i),this.state=rt.TOUCH_PAN;break;default:this.state=rt.NONE}break;case 2:switch(this.touches.TWO){case Ui.DOLLY_PAN:if(this.enableZoom===!1&&this.enablePan===!1)return;this._handleTouchStartDollyPan(i),this.state=rt.TOUCH_DOLLY_PAN;break;case Ui.DOLLY_ROTATE:if(this.enableZoom===!1&&this.enableRotate===!1)return;this._handleTouchStartDollyRotate(i),this.state=rt.TOUCH_DOLLY_ROTATE;break;default:this.state=rt.NONE}break;default:this.state=rt.NONE}this.state!==rt.NONE&&this.dispatchEvent(Ho)}function n0(i){switch(this._trackPointer(i),this.state){case rt.TOUCH_ROTATE:if(this.enableRotate===!1)return;this._handleTouchMoveRotate(i),this.update();break;case rt.TOUCH_PAN:if(this.enablePan===!1)return;this._handleTouchMovePan(i),this.update();break;case rt.TOUCH_DOLLY_PAN:if(this.enableZoom===!1&&this.enablePan===!1)return;this._handleTouchMoveDollyPan(i),this.update();break;case rt.TOUCH_DOLLY_ROTATE:if(this.enableZoom===!1&&this.enableRotate===!1)return;this._handleTouchMoveDollyRotate(i),this.update();break;default:this.state=rt.NONE}}function i0(i){this.enabled!==!1&&i.preventDefault()}function s0(i){i.key==="Control"&&(this._controlActive=!0,this.domElement.getRootNode().addEventListener("keyup",this._interceptControlUp,{passive:!0,capture:!0}))}function r0(i){i.key==="Control"&&(this._controlActive=!1,this.domElement.getRootNode().removeEventListener("keyup",this._interceptControlUp,{passive:!0,capture:!0}))}function uh(i){try{return localStorage.getItem(i)}catch{return null}}function vo(i,e){try{localStorage.setItem(i,e)}catch{}}const Jt=.5,uc=[["corner","from the corner",[1.6,1,2.05]],["probe","as the probe sees it",[.001,.12,2.3]],["side","from the side",[2.3,.15,.3]],["above","from above",[.001,2.4,.3]]];class a0{scene=new Wd;room=new Qt;device=new Qt;canvasPlace=_("div",{class:"canvas"});labels=_("div",{class:"labels",attrs:{"aria-hidden":"true"}});readout=_("div",{class:"readout mono",attrs:{"aria-live":"off"}});caption=_("div",{class:"stage-caption"});colourBar=_("div",{class:"colour-bar"});presets=_("div",{class:"presets"});element;camera=new rn(36,4/3,.02,30);ok;software;hovered=null;picked=null;dragged=null;drawn=0;renderer=null;controls=null;asked=!1;marks=[];riding=!1;goal=null;constructor(){this.element=_("section",{class:"stage",attrs:{"aria-label":"chamber and sphere of directions"}},this.caption,_("div",{class:"view"},this.canvasPlace,this.labels,this.readout,this.colourBar),this.presets),this.scene.add(this.room),this.room.add(this.device),this.scene.add(new tf(16777215,1.7));const e=new ef(16777215,1.8);e.position.set(1.5,3,2),this.scene.add(e);let t=!1;try{this.renderer=new G_({antialias:!0,alpha:!0,powerPreference:"low-power"});const n=this.renderer.getContext(),s=n.getExtension("WEBGL_debug_renderer_info");t=s?/swiftshader|llvmpipe|software/i.test(String(n.getParameter(s.UNMASKED_RENDERER_WEBGL))):!1,this.renderer.setPixelRatio(t?1:Math.min(2,window.devicePixelRatio));const r=this.renderer.domElement;r.setAttribute("role","img"),r.setAttribute("aria-label","chamber with positioner, device, probe and the sphere of directions; drag to turn"),this.canvasPlace.append(r),this.controls=new q_(this.camera,r),this.controls.enablePan=!1,this.controls.minDistance=.9,this.controls.maxDistance=5,this.controls.target.set(0,0,.22),this.controls.addEventListener("change",()=>this.ask()),this.controls.addEventListener("end",()=>vo("camera",JSON.stringify(this.camera.position.toArray()))),this.listen(r),r.addEventListener("webglcontextlost",a=>a.preventDefault()),r.addEventListener("webglcontextrestored",()=>this.ask())}catch{j(this.canvasPlace,_("p",{class:"quiet pad"},"This browser draws no 3D here (WebGL is off). Everything is on the page in numbers and maps as well."))}this.ok=this.renderer!==null,this.software=t,this.placeCamera(),new ResizeObserver(()=>this.ask()).observe(this.canvasPlace),j(this.presets,...uc.map(([,n,s])=>ge(n,()=>this.fly(s))))}placeCamera(){let e=uc[0][2];try{const t=JSON.parse(uh("camera")??"null");Array.isArray(t)&&t.length===3&&t.every(n=>Number.isFinite(n))&&(e=t)}catch{}this.camera.position.set(...e),this.controls?.update()}fly(e){this.goal=new N(...e),matchMedia("(prefers-reduced-motion: reduce)").matches&&this.camera.position.copy(this.goal),vo("camera",JSON.stringify(e)),this.ask()}ride(e){this.riding=e,this.ask()}label(e,t,n,s="",r=!0){const a=_("span",{class:s},e);this.labels.append(a),this.marks.push({element:a,at:new N(...t),parent:n,hides:r})}clearLabels(e){for(const t of this.marks)t.parent===e&&t.element.remove();this.marks=this.marks.filter(t=>t.parent!==e)}ask(){this.asked||!this.renderer||(this.asked=!0,requestAnimationFrame(()=>{this.asked=!1,this.render()}))}render(){const e=this.canvasPlace.clientWidth,t=this.canvasPlace.clientHeight;if(!this.renderer||!e||!t)return;const n=this.renderer.getSize(new ze);(n.x!==e||n.y!==t)&&(this.renderer.setSize(e,t,!1),this.camera.aspect=e/t,this.camera.updateProjectionMatrix()),this.goal&&(this.camera.position.lerp(this.goal,.3),this.camera.position.distanceTo(this.goal)<.01&&(this.goal=null),this.controls?.update(),this.ask()),this.room.quaternion.identity(),this.riding&&this.room.quaternion.copy(this.device.quaternion).invert(),this.renderer.render(this.scene,this.camera),this.place(e,t),this.drawn++}place(e,t){const n=this.device.getWorldPosition(new N),s=this.camera.position,r=new N,a=s.clone().sub(n);for(const o of this.marks){r.copy(o.at),o.parent.localToWorld(r);const l=o.hides&&r.clone().sub(n).dot(a)<0;r.project(this.camera),o.element.hidden=l||r.z>1,o.element.hidden||(o.element.style.transform=`translate(${((r.x+1)/2*e).toFixed(1)}px, ${((1-r.y)/2*t).toFixed(1)}px) translate(-50%, -50%)`)}}under(e){const t=this.canvasPlace.getBoundingClientRect(),n=new sf;n.setFromCamera(new ze((e.clientX-t.left)/t.width*2-1,1-(e.clientY-t.top)/t.height*2),this.camera);const s=this.device.getWorldPosition(new N),r=n.ray.intersectSphere(new ji(s,Jt),new N);if(!r)return null;const a=this.device.worldToLocal(r).normalize();return[a.x,a.y,a.z]}listen(e){let t=[0,0],n=!1;e.addEventListener("pointerdown",s=>{t=[s.clientX,s.clientY],this.goal=null;const r=this.dragged?this.under(s):null;!r||!this.dragged||(n=!0,this.controls&&(this.controls.enabled=!1),e.setPointerCapture(s.pointerId),this.dragged(r))},{capture:!0}),e.addEventListener("pointermove",s=>{const r=s.buttons&&!n?null:this.under(s);n&&r?this.dragged?.(r):s.buttons||this.hovered?.(r)}),e.addEventListener("pointerleave",()=>this.hovered?.(null)),e.addEventListener("pointerup",s=>{this.controls&&(this.controls.enabled=!0);const a=Math.hypot(s.clientX-t[0],s.clientY-t[1])<4&&!n?this.under(s):null;n=!1,a&&this.picked?.(a)})}}const dc=Float32Array.from(Pn,i=>(i/255)**2.2);class o0{constructor(e){this.stage=e,this.cursorMark=new Ot(new Bo(.016,16,12),new ys({color:16777215})),this.cursorMark.visible=!1,e.device.add(this.rings,this.drawn,this.cursorMark),this.frame()}rings=new Qt;points=null;mesh=null;drawn=new Qt;cursorMark;cells=null;cellKey="";frame(){const e=dt(),t=[];zi(this.rings),this.stage.clearLabels(this.rings);const n=(r,a)=>t.push(new N(...r).multiplyScalar(Jt),new N(...a).multiplyScalar(Jt));for(let r=30;r<180;r+=30)for(let a=0;a<360;a+=6)n(hn(r,a),hn(r,a+6));for(let r=0;r<360;r+=30)for(let a=0;a<180;a+=6)n(hn(a,r),hn(a+6,r));this.rings.add(new Qc(new Dt().setFromPoints(t),new Zi({color:e.ring,transparent:!0,opacity:.55})));const s=(r,a)=>[r[0]*a,r[1]*a,r[2]*a];for(let r=30;r<180;r+=30)this.stage.label(`${r}°`,s(hn(r,0),Jt*1.05),this.rings,"ring");for(let r=30;r<360;r+=30)this.stage.label(`${r}°`,s(hn(90,r),Jt*1.05),this.rings,"ring");for(const[r,a,o]of[["x",[1,0,0],"x"],["y",[0,1,0],"y"],["z",[0,0,1],"z"]]){const l=o==="x"?e.cross:o==="y"?e.good:e.co;this.rings.add(new Ms(new N(...a),new N,Jt*1.16,l,.05,.03)),this.stage.label(r,s(a,Jt*1.24),this.rings,`letter ${o}`,!1)}this.cursorMark.material.color.set(e.cross),this.stage.ask()}shape(e){this.clear(),this.cells=e}clear(){zi(this.drawn),this.points&&this.points.geometry.dispose(),this.points=this.mesh=null,this.cellKey="",this.stage.ask()}dots(e,t,n=-1){const s=this.cells;if(!s)return;const r=s.directions.length/3;if(!this.points||this.mesh){this.clear();const h=new Dt;h.setAttribute("position",new Wt(Float32Array.from(s.directions,f=>Jt*f),3)),h.setAttribute("color",new Wt(new Float32Array(s.directions.length),3));const u=r>6e3?.012:r>1500?.02:.03;this.points=new Yd(h,new eh({size:u,vertexColors:!0})),this.points.frustumCulled=!1,this.drawn.add(this.points)}const a=new Ye(dt().ring),o=new Ye(dt().cross),l=this.points.geometry.getAttribute("color"),c=l.array;for(let h=0;h<r;h++){const u=3*fr(e[h],t.low,t.high);h===n?c.set([o.r,o.g,o.b],3*h):u<0?c.set([a.r,a.g,a.b],3*h):c.set(dc.subarray(u,u+3),3*h)}l.needsUpdate=!0,this.stage.ask()}surface(e,t,n){const s=this.cells;if(!s)return;const r=s.directions,a=r.length/3,{low:o,high:l}=t,c=d=>e[d]!==null&&Number.isFinite(e[d]),h=d=>Jt*Math.max(.03,Math.min(1,(e[d]-o)/(l-o)));if(!this.mesh||this.cellKey!==n){this.clear(),this.cellKey=n;const d=new Dt,A=[],T=this.stage.software&&a>8e3?2:1;for(let w=0;w+T<s.rows;w+=T)for(let C=0;C<s.columns;C+=T){const D=C+T>=s.columns;if(D&&!s.closed)continue;const L=w*s.columns+C,F=w*s.columns+(D?0:C+T),y=L+T*s.columns,M=F+T*s.columns;c(L)&&c(F)&&c(y)&&c(M)&&A.push(L,y,F,F,y,M)}d.setIndex(A),d.setAttribute("position",new Wt(new Float32Array(3*a),3)),d.setAttribute("color",new Wt(new Float32Array(3*a),3)),this.mesh=new Ot(d,new ys({vertexColors:!0,side:2})),this.mesh.frustumCulled=!1,this.drawn.add(this.mesh)}const u=this.mesh.geometry,f=u.getAttribute("position"),p=u.getAttribute("color"),g=f.array,x=p.array;for(let d=0;d<a;d++){const A=c(d)?h(d):0;g[3*d]=r[3*d]*A,g[3*d+1]=r[3*d+1]*A,g[3*d+2]=r[3*d+2]*A}f.needsUpdate=!0,u.computeVertexNormals();const m=u.getAttribute("normal").array;for(let d=0;d<a;d++){const A=3*Math.max(0,fr(e[d],o,l)),T=.42+.58*Math.abs(.48*m[3*d]+.72*m[3*d+1]+.5*m[3*d+2]);for(let w=0;w<3;w++)x[3*d+w]=dc[A+w]*T}p.needsUpdate=!0,this.stage.ask()}get holds(){return this.mesh?"surface":this.points?"points":"nothing"}cursor(e){this.cursorMark.visible=e!==null,e&&this.cursorMark.position.set(e[0],e[1],e[2]).multiplyScalar(Jt),this.stage.ask()}nearest(e){const t=this.cells?.directions;if(!t)return-1;let n=-2,s=-1;for(let r=0;r<t.length;r+=3){const a=t[r]*e[0]+t[r+1]*e[1]+t[r+2]*e[2];a>n&&(n=a,s=r/3)}return s}scaleBar(e,t=""){if(!e){j(this.stage.colourBar);return}const n=_("canvas",{attrs:{width:1,height:128,"aria-hidden":"true"}}),s=n.getContext("2d");for(let a=0;a<128;a++){const o=6*(127-a);s.fillStyle=`rgb(${Pn[o]} ${Pn[o+1]} ${Pn[o+2]})`,s.fillRect(0,a,1,1)}const r=(e.high-e.low)/5;j(this.stage.colourBar,_("span",{},`${t} / ${e.unit}`),_("div",{},n,_("ol",{},...[5,4,3,2,1,0].map(a=>_("li",{},(e.low+a*r).toFixed(0))))))}words(e){const[t,n]=Un(e);return`theta ${t.toFixed(1)}°, phi ${((n+360)%360).toFixed(1)}°`}}function l0(i,e){return new As(new Dt().setFromPoints(i.map(t=>new N(...t).multiplyScalar(Jt*1.003))),new Zi({color:e}))}const c0={flip:"flip test","beam-coarse":"coarse beam search","beam-fine":"fine beam search"};function h0(i){if(i.hand)return{run:i.hand.text,share:"",left:"",level:""};if(!i.run||!i.total)return{run:"no scan since the server began",share:"",left:"",level:""};const e=(i.measured??0)/i.total,t=i.kind&&i.kind!=="scan"?` (${c0[i.kind]??i.kind})`:"";return{run:`${i.run}${t}: ${i.state}`,share:`${(100*e).toFixed(e<.1?1:0)} %`,left:i.running&&i.left_s!==void 0?`${Yn(i.left_s)} left`:`${i.measured} of ${i.total} points`,level:i.running&&typeof i.level_db=="number"?`${Ne(i.level_db,1)} dB`:""}}function u0(){const i=_("div",{class:"bar-told"}),e=_("i"),t=_("div",{class:"alarm",attrs:{role:"alert"}});let n=!1,s=0;const r=async()=>{n=!0,a.classList.add("pressed");for(let c=0;n;c++)try{await He("/api/stop",{}),n=!1,j(t)}catch(h){j(t,`STOP WAS NOT HEARD (${c+1} tries): ${qt(h)} Use the emergency stop.`),await new Promise(u=>window.setTimeout(u,700))}a.classList.remove("pressed")},a=ge("STOP",()=>void(n||r()),"stop","brake the axes and end the scan (Ctrl + .)");window.addEventListener("keydown",c=>{c.ctrlKey&&c.key==="."&&a.click()});const o=_("footer",{class:"control-bar",attrs:{"aria-label":"scan and stop"}},_("div",{class:"bar-progress"},e),_("div",{class:"bar-row"},i,t,a)),l=()=>{if(!s)return;const c=Math.round((Date.now()-s)/1e3);!n&&c>=1&&j(t,`THE SERVER HAS NOT ANSWERED FOR ${c} s. This page shows old values and cannot stop the axes: use the emergency stop.`),o.classList.toggle("lost",c>=1)};return window.setInterval(l,500),It.watch({status:c=>{const h=h0(c);j(i,_("b",{},h.run),h.share&&_("span",{class:"share"},h.share),h.left&&_("span",{},h.left),h.level&&_("span",{},h.level)),e.style.width=c.total&&!c.hand?`${100*(c.measured??0)/c.total}%`:"0",o.classList.toggle("moving",cs(c)),a.setAttribute("aria-label",cs(c)?"STOP: the axes may move":"STOP: nothing moves")},linked:c=>{c?(s=0,o.classList.remove("lost"),n||j(t)):s||(s=Date.now())}}),o}function d0(){const i=_("span",{class:"row lease"}),e=_("span",{class:"bad small",attrs:{role:"status"}});let t="";const n=()=>{const r=Be.me?.mine===!0,a=It.status.lease,o=`${r}${a}`;if(o===t)return;t=o;const l=r?"you may move the axes":a?`${a} may move the axes`:"nobody may move the axes";j(i,_("span",{class:`chip${r?" hot":""}`},l),_t("operate")&&(r?ge("give back",()=>void s(!1)):ge("take motion lease",()=>void s(!0))),e)},s=async r=>{try{Be.me=await He("/api/lease",{hold:r}),j(e)}catch(a){j(e,qt(a)),Be.me=await vc().catch(()=>Be.me)}t="",n()};return window.setInterval(()=>{Be.me?.mine&&It.up&&s(!0)},1e4),It.watch({status:r=>{Be.me&&(Be.me.mine=r.lease===Be.me.name),n()}}),n(),i}const fc={"roll-over-azimuth":{swept:"azimuth",stepped:"roll",slice:"a great circle through boresight",poles:"All slices meet at +z, in front, and at -z."},"azimuth-over-elevation":{swept:"azimuth",stepped:"elevation",slice:"a circle of constant elevation",poles:"The circles shrink towards +y and -y."},"elevation-over-azimuth":{swept:"elevation",stepped:"azimuth",slice:"a circle of constant azimuth",poles:"The circles shrink towards +x and -x."}};function f0(i,e,t){return[Math.max(i[0],e),Math.min(i[1],t)]}function wr(i,e){const t=i==="roll-over-azimuth",n=i==="elevation-over-azimuth"?e.first:e.second,s=f0(i==="elevation-over-azimuth"?e.second:e.first,-90,90);return(t?[0,30,60,90,120,150]:[0,20,40,-20,-40]).filter(a=>a>=n[0]&&a<=n[1]).map((a,o)=>o%2?{stepped:a,from:s[1],to:s[0]}:{stepped:a,from:s[0],to:s[1]})}function xo(i,e,t){const n=wr(i,e),s=Math.min(.999999,Math.max(0,t))*n.length,r=Math.floor(s),a=s-r,o=n[r],l=n[Math.max(0,r-1)],h=r>0&&a<.2?l.stepped+(o.stepped-l.stepped)*(a/.2):o.stepped,u=r>0?Math.max(0,(a-.2)/.8):a,f=o.from+(o.to-o.from)*u;return i==="elevation-over-azimuth"?{slice:r,first:h,second:f}:{slice:r,first:f,second:h}}function p0(i,e,t){const n=wr(i,e),s=xo(i,e,t);return n.slice(0,s.slice+1).map((r,a)=>{const o=i==="elevation-over-azimuth"?s.second:s.first,l=a<s.slice?r.to:o,c=Math.max(2,Math.ceil(Math.abs(l-r.from)/2));return Array.from({length:c},(h,u)=>{const f=r.from+(l-r.from)*u/(c-1);return i==="elevation-over-azimuth"?wa(i,r.stepped,f):wa(i,f,r.stepped)})})}function m0(i,e,t){const n=Ph(i,e.first,e.second),s=t?i==="roll-over-azimuth"?-e.second:n:0;return{field:n,probe:s,level:Math.cos((n-s)*Math.PI/180)}}const as=[{text:"On a roll over azimuth, azimuth sweeps and the roll stands. What does the probe pass over on the device's sphere?",answers:["a circle of constant theta","a great circle through boresight","one point"],right:1,why:"Each slice is a great circle through +z; the roll angle says which one."},{text:"The roll stands at 90°, the probe stands still with its axis horizontal. The device radiates along x. What does the probe take in?",answers:["all of the field","half of its power","none of it: the field is across"],right:2,why:"The device turned by 90°, its field with it: the probe's axis and the field are at right angles. A probe that follows the roll takes in all of it."},{text:"Where do the slices of a roll over azimuth crowd together?",answers:["at boresight and behind the device","at the horizon, theta 90°","nowhere"],right:0,why:"All great circles through +z meet there and at -z. Theta and phi turn quickly near them; Ludwig 3 does not at boresight."}];function g0(i){const e=_("div",{class:"quiz",attrs:{"aria-live":"polite"}});let t=0;const n=s=>{const r=as[s];if(!r){j(e,_("p",{class:t===as.length?"good":""},`${t} of ${as.length} right.`),ge("once more",()=>{t=0,n(0)}));return}const a=_("p",{}),o=r.answers.map((l,c)=>ge(l,()=>{c===r.right&&t++,o.forEach((h,u)=>{h.disabled=!0,h.classList.toggle("right",u===r.right),h.classList.toggle("wrong",u===c&&c!==r.right)}),j(a,`${c===r.right?"Right. ":"No. "}${r.why} `,ge(s+1<as.length?"next question":"end",()=>n(s+1),"main"))}));j(e,_("p",{},`${s+1} of ${as.length}: ${r.text}`),_("div",{class:"stacked"},...o),a)};return n(0),e}const os=[["roll-over-azimuth","roll over azimuth"],["azimuth-over-elevation","azimuth over elevation"],["elevation-over-azimuth","elevation over azimuth"]],pc={first:[-180,180],second:[-180,360]};function _0(i){const e=new tt("Slice by slice"),t=new tt("One direction by hand"),n=new tt("Three questions"),s=new Qt,r=_("div",{class:"dial"}),a=_("ol",{class:"captions"});i.stage.device.add(s);let o=os.find(([W])=>W===Lt("stand"))?.[0]??"roll-over-azimuth",l=pc,c=null,h=0,u=!1,f=0,p=null,g=3;const x=()=>{l=c&&c.geometry===o?c.limits:pc,i.chamber.build({geometry:o,range_m:1,size_mm:[90,90,12],offset_mm:[0,0,0],ports:1}),m()},m=()=>{const W=xo(o,l,h),Q=m0(o,W,u),ce=dt(),be=wa(o,W.first,W.second);zi(s);for(const H of p0(o,l,h))H.length>1&&s.add(l0(H,ce.cross));const Ie=Rc(...Un(be));s.add(new Ms(new N(...Ie),new N(...be).multiplyScalar(Jt*1.01),.24,ce.co,.07,.04)),i.chamber.turn(W.first,W.second,Q.probe),i.sphere.cursor(be),A(Q),T(W.slice,Q.level);const G=fc[o];j(i.stage.caption,`${os.find(([H])=>H===o)[1]}: ${G.swept} sweeps, ${G.stepped} steps. Orange: swept. Blue-green arrow: the device's field.`);const ie=w.querySelector("input");(document.activeElement!==ie||f)&&(ie.value=String(Math.round(1e3*h)),j(w.querySelector("output"),d()))},d=()=>`slice ${xo(o,l,h).slice+1} of ${wr(o,l).length}`,A=W=>{const Q="http://www.w3.org/2000/svg",ce=document.createElementNS(Q,"svg"),be=(Ze,R,Je="")=>{const Fe=document.createElementNS(Q,Ze);for(const[De,ye]of Object.entries(R))Fe.setAttribute(De,String(ye));Je&&(Fe.textContent=Je),ce.append(Fe)};for(const[Ze,R]of Object.entries({viewBox:"0 0 180 180",role:"img","aria-label":`what the probe sees: field at ${W.field.toFixed(0)} degrees, probe at ${W.probe.toFixed(0)} degrees`}))ce.setAttribute(Ze,R);const Ie=(Ze,R)=>[90+R*Math.cos(Ze*Math.PI/180),90-R*Math.sin(Ze*Math.PI/180)];be("circle",{cx:90,cy:90,r:78,fill:"none",stroke:"var(--edge)","stroke-width":2});for(let Ze=0;Ze<360;Ze+=30){const[R,Je]=Ie(Ze,72),[Fe,De]=Ie(Ze,78);be("line",{x1:R,y1:Je,x2:Fe,y2:De,stroke:"var(--quiet)"})}const[G,ie]=Ie(W.probe,78),[H,K]=Ie(W.probe+180,78);be("line",{x1:G,y1:ie,x2:H,y2:K,stroke:"var(--cross)","stroke-width":3,"stroke-dasharray":"7 4"});const[ue,Se]=Ie(W.field,62);be("line",{x1:90,y1:90,x2:ue,y2:Se,stroke:"var(--co)","stroke-width":5,"stroke-linecap":"round"});const[xe,Ve]=Ie(W.probe,62*W.level);be("circle",{cx:xe,cy:Ve,r:6,fill:"var(--cross)"}),j(r,_("h3",{},"What the probe sees"),ce,_("p",{class:"small"},`Field (blue-green) at ${W.field.toFixed(0)}°, probe axis (orange) at ${W.probe.toFixed(0)}°: the probe takes in ${(100*W.level*W.level).toFixed(0)} % of the power.`))},T=(W,Q)=>{const ce=fc[o],be=W===0?0:u?3:Math.abs(Q)<.98?2:1,Ie=[`The ${ce.swept} axis sweeps. The probe passes over ${ce.slice}.`,`The ${ce.stepped} axis steps, and the next slice begins. ${ce.poles}`,o==="roll-over-azimuth"?"The field rides on the device: with every step of the roll it turns before a probe that stands still.":"The field rides on the device: away from the middle it leans before a probe that stands still.",o==="roll-over-azimuth"?"A probe that follows the roll keeps the same component all the time.":"A probe that turns along with the field keeps the same component."];j(a,...Ie.map((G,ie)=>_("li",{class:ie===be?"now":""},G)))},w=Ln("through the slices",0,1e3,1,0,W=>{h=W/1e3,p=null,m()},"",d),C=ge("play",()=>{if(f){D();return}h>=.999&&(h=0),p=null;let W=performance.now();const Q=ce=>{h=Math.min(1,h+(ce-W)/(4500*wr(o,l).length)),W=ce,m(),h>=1?D():f=requestAnimationFrame(Q)};f=requestAnimationFrame(Q),j(C,"pause")},"main"),D=()=>{cancelAnimationFrame(f),f=0,j(C,"play")},L=an("positioner",os.map(([W,Q])=>[W,Q]),o,W=>{o=W,mi({stand:o==="roll-over-azimuth"?"":o}),h=0,x(),p&&k()}),F=an("probe",[["still","stands still"],["following","follows"]],"still",W=>{u=W==="following",m()}),y=_("input",{attrs:{type:"checkbox"},on:{change:()=>i.stage.ride(y.checked)}});e.show({key:"",words:""},_("div",{class:"row no-print"},C,L,F,_("label",{class:"row small"},y,"ride with the device")),w,_("div",{class:"two"},a,r));let M=40,b=25;const P=[_("input",{attrs:{type:"number",min:0,max:180,step:1,value:M,"aria-label":"theta in degrees"}}),_("input",{attrs:{type:"number",min:-180,max:360,step:1,value:b,"aria-label":"phi in degrees"}})],z=_("div",{});P.forEach((W,Q)=>W.addEventListener("input",()=>{W.value!==""&&(Q?b=Number(W.value):M=Number(W.value),k())})),i.stage.dragged=W=>{D(),[M,b]=Un(W).map(Q=>Math.round(10*Q)/10),P[0].value=String(M),P[1].value=String(b),p=W,k()};const I=new tt("readings","bare","h3");z.append(I.element);const k=async()=>{const W=await I.ask({key:"hand|",words:""},Q=>He("/api/tutor",{theta_deg:M,phi_deg:b},Q),Q=>ee(Q),{keep:!0});W&&$(W)},$=W=>{const Q=dt(),ce=W.bases[g],be=os.findIndex(([H])=>H===o),Ie=W.positioners[be].ways[0],G=W.positioners[be].axes,ie=new N(...W.direction).multiplyScalar(Jt*1.01);zi(s);for(const[H,K,ue]of[[ce.first,Q.co,.26],[ce.second,Q.good,.26],[Ie.fixed,Q.quiet,.34],[Ie.following,Q.cross,.3]])s.add(new Ms(new N(...H),ie,ue,K,.06,.035));i.chamber.turn(Ie.readouts[G[0]],Ie.readouts[G[1]],u?Ie.probe_roll:0),i.sphere.cursor(W.direction),j(i.stage.caption,"By hand. Blue-green and green: unit vectors of the components. Grey: a probe that stands still, as an arrow on the device. Orange: one that follows.")},ee=W=>[St(["this direction","angles / deg","formula"],[["theta, phi",`${Ne(W.theta,1)}, ${Ne(W.phi,1)}`,_("code",{},"(sin th cos ph, sin th sin ph, cos th)")],["azimuth, elevation (pole y)",`${Ne(W.azimuth,1)}, ${Ne(W.elevation,1)}`,_("code",{},"(sin az cos el, sin el, cos az cos el)")],["alpha, epsilon (pole x)",`${Ne(W.alpha,1)}, ${Ne(W.epsilon,1)}`,_("code",{},"(sin al, cos al sin ep, cos al cos ep)")]]),St(["components there","first","second"],W.bases.map(Q=>[_("span",{attrs:{title:Q.formula}},Q.name),_("code",{},mc(Q.first)),_("code",{},mc(Q.second))])),St(["positioner","readouts / deg","still probe sees slant","probe roll that follows"],W.positioners.map(Q=>[Q.name,Q.axes.map(ce=>`${ce} ${Ne(Q.ways[0].readouts[ce],1)}`).join(", "),`${Ne(Q.ways[0].slant_fixed,1)}°`,`${Ne(Q.ways[0].probe_roll,1)}°`])),_("p",{class:"small"},W.positioners[os.findIndex(([Q])=>Q===o)].pole)],Y=[["0","theta and phi"],["1","Ludwig 2, pole y"],["2","Ludwig 2, pole x"],["3","Ludwig 3"]];return t.show({key:"",words:""},_("p",{class:"small"},"Drag on the sphere, or type an angle."),_("div",{class:"row"},_("label",{class:"row"},"theta",P[0],"deg"),_("label",{class:"row"},"phi",P[1],"deg"),an("arrows",Y,"3",W=>{g=Number(W),k()})),z),n.show({key:"",words:""},g0()),He("/api/motion",{campaign:Be.campaign}).then(W=>{const Q=Ie=>W.limits_deg[W.axes.indexOf(Ie)]??[-180,360],ce=Q("azimuth"),be=Q(W.geometry==="roll-over-azimuth"?"roll":"elevation");c={geometry:W.geometry,limits:{first:ce,second:be}},Lt("stand")||(o=W.geometry,L.querySelector("select").value=o),x()},()=>x()),x(),{title:"Learn",element:_("div",{class:"page learn-page"},e.element,n.element,t.element),leave:()=>{D(),I.leave(),zi(s),i.stage.device.remove(s),i.stage.dragged=null}}}function mc(i){return`(${i.map(e=>(Object.is(e,-0)?0:e).toFixed(3)).join(", ")})`}const ya={plan:["Plan",wu],align:["Align",Nh],scan:["Scan",Au],explore:["Explore",yu],learn:["Learn",_0]},v0={view:"may watch and stop",operate:"may operate",configure:"may configure"};function dh(i){const e=matchMedia("(prefers-color-scheme: dark)").matches?"dark":"light",t=i??uh("theme")??e;document.documentElement.dataset.theme=t,i&&vo("theme",i)}class x0{page=null;name="";view;content=_("div",{class:"content"});open(e){const t=new a0;this.view={stage:t,chamber:new W_(t),sphere:new o0(t)},at.watch(n=>this.view.sphere.cursor(n)),t.picked=n=>at.pin(n),j(e,this.head(),_("main",{class:"split"},t.element,this.content),u0()),window.addEventListener("hashchange",()=>this.show()),window.addEventListener("popstate",()=>this.show()),It.open(),this.show(!0)}show(e=!1){const t=ds(location.hash),n=t.page in ya?t.page:"plan",s=t.values.c;s&&Be.me?.campaigns.some(l=>l.id===s)&&(Be.campaign=s);const r=`${n} ${Be.campaign} ${t.values.run??""}`;if(!e&&r===this.name){this.page?.follow?.();return}this.name=r,this.page?.leave();const{stage:a,sphere:o}=this.view;a.hovered=a.dragged=null,a.picked=l=>at.pin(l),j(a.readout),j(a.caption),o.clear(),o.scaleBar(null),a.ride(!1),at.fromAddress(),this.page=ya[n][1](this.view),document.title=`Colure: ${this.page.title}`;for(const l of document.querySelectorAll("nav a"))l.getAttribute("data-page")===n?l.setAttribute("aria-current","page"):l.removeAttribute("aria-current");j(this.content,n==="plan"?null:_("h1",{class:"heard"},this.page.title),this.page.element)}head(){const e=_("span",{class:"chip",attrs:{role:"status"}}),t=_("a",{class:"chip draft",attrs:{href:"#plan"}}),n=Be.me?.campaigns??[];It.watch({linked:o=>{e.className=`chip${o?"":" hot"}`,j(e,o?v0[Be.me?.role??""]??"":"not connected")}}),xc(()=>this.drafts(t)),this.drafts(t);const s=n.length>1&&an("campaign",n.map(o=>[o.id,o.folder]),Be.campaign,o=>{Be.campaign=o,history.replaceState(null,"",`#${ds(location.hash).page}`),mi({c:o}),this.show(!0)}),r=ge("◐",()=>{dh(document.documentElement.dataset.theme==="dark"?"light":"dark"),this.view.sphere.frame(),this.view.chamber.build({...this.stand()},!0),this.show(!0)});r.setAttribute("aria-label","light or dark"),r.title="light or dark";const a=_("nav",{attrs:{"aria-label":"pages"}},...Object.entries(ya).map(([o,[l]])=>_("a",{attrs:{href:`#${o}`,"data-page":o},on:{click:c=>this.go(c,o)}},l)));return _("header",{class:"top"},_("span",{class:"name"},y0(),"Colure"),a,s,_("span",{class:"spring"}),t,Hh(),e,_t("configure")&&ge("invite",()=>void this.invite()),r,d0())}go(e,t){e.preventDefault();const n=(Be.me?.campaigns.length??0)>1?`?c=${Be.campaign}`:"";location.hash=`#${t}${n}`}stand(){return this.view.chamber.stand??{geometry:"roll-over-azimuth",range_m:1,size_mm:[50,50,5],offset_mm:[0,0,0],ports:1}}drafts(e){const t=yo(Be.campaign);e.hidden=t===0,j(e,`${t} unsaved ${t===1?"value":"values"}`)}async invite(){try{const{code:e}=await He("/api/invite",{role:"view"});Hi("A link for somebody who watches",()=>[_("p",{},"It opens one session on this computer. That session may look and stop, and nothing else. The link works once and for a short while."),_("p",{class:"mono copy"},`${location.origin}/launch?code=${e}`)])}catch(e){Hi("No link was made",()=>[_("p",{class:"faults"},qt(e))])}}}function y0(){const i="http://www.w3.org/2000/svg",e=document.createElementNS(i,"svg");for(const[t,n]of Object.entries({viewBox:"0 0 24 24",width:"24",height:"24","aria-hidden":"true"}))e.setAttribute(t,n);for(const[t,n]of[[10,"var(--ink)"],[4,"var(--cross)"]]){const s=document.createElementNS(i,"ellipse");for(const[r,a]of Object.entries({cx:12,cy:12,rx:t,ry:10,fill:"none",stroke:n,"stroke-width":1.8}))s.setAttribute(r,String(a));e.append(s)}return e}async function M0(){dh();const i=document.getElementById("app");try{Be.me=await vc();const e=ds(location.hash).values.c;Be.campaign=Be.me.campaigns.find(t=>t.id===e)?.id??Be.me.campaigns[0].id,new x0().open(i)}catch(e){j(i,_("main",{class:"pad"},_("h1",{},"The control room did not open"),_("p",{class:"faults"},qt(e)),_("p",{},"A link opens once. colure serve prints a new one when it starts; a session that may configure makes more with invite.")))}}M0();
