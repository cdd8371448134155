class Up{status={type:"status",state:"idle",running:!1,sequence:0,lease:""};grid=null;frame=null;watchers=new Set;wait=250;open(){const e=new WebSocket(`${location.protocol==="https:"?"wss":"ws"}://${location.host}/api/live`);e.binaryType="arraybuffer",e.onopen=()=>{this.wait=250,this.tell(t=>t.linked?.(!0))},e.onmessage=t=>{if(typeof t.data=="string")this.hear(JSON.parse(t.data));else{this.frame=new Float32Array(t.data);const n=this.frame;this.tell(s=>s.frame?.(n)),requestAnimationFrame(()=>{e.readyState===WebSocket.OPEN&&e.send("taken")})}},e.onclose=()=>{this.tell(t=>t.linked?.(!1)),window.setTimeout(()=>this.open(),this.wait),this.wait=Math.min(5e3,this.wait*2)}}watch(e){return this.watchers.add(e),e.status?.(this.status),this.grid&&e.grid?.(this.grid),this.frame&&e.frame?.(this.frame),()=>this.watchers.delete(e)}hear(e){if(e.type==="grid")this.grid=e,this.frame=null,this.tell(t=>t.grid?.(e));else{const t=this.status={sequence:0,lease:"",...e};this.tell(n=>n.status?.(t))}}tell(e){for(const t of[...this.watchers])try{e(t)}catch(n){console.error(n)}}}const Ai=new Up;class zf extends Error{constructor(e,t){super(t.join("; ")),this.status=e,this.faults=t}}let Hf="";async function Vf(i){const e=await i.json();if(!i.ok)throw new zf(i.status,e.errors??["no reason was given"]);return e}async function pa(i,e=[],t){let n=0;const s=i.replace(/\{\w+\}/g,()=>encodeURIComponent(e[n++]??""));return Vf(await fetch(s,{headers:{Accept:"application/json"},signal:null}))}async function Bt(i,e,t){return Vf(await fetch(i,{method:"POST",headers:{"Content-Type":"application/json","X-Colure-Token":Hf},body:JSON.stringify(e),signal:null}))}async function Gf(){const i=await pa("/api/me");return Hf=i.token,i}async function na(i,e){const{job:t}=await Bt(i,e);for(;;){await new Promise(s=>window.setTimeout(s,300));const n=await pa("/api/job/{job}",[t]);if(n.done)return n.result}}function U(i,e={},...t){const n=document.createElement(i);e.class&&(n.className=e.class);for(const[s,r]of Object.entries(e.attrs??{}))r===!0?n.setAttribute(s,""):r!==!1&&r!==void 0&&n.setAttribute(s,String(r));for(const[s,r]of Object.entries(e.on??{}))n.addEventListener(s,r);return qe(n,...t),n}function qe(i,...e){i.replaceChildren(...e.filter(t=>t!=null&&t!==!1).map(t=>t instanceof Node?t:String(t)))}function Et(i,e,t="",n=""){return U("button",{class:t,on:{click:e},attrs:{type:"button",title:n||void 0}},i)}function Cs(i,e,t,n){const s=U("select",{on:{change:()=>n(s.value)}},...e.map(([r,a])=>U("option",{attrs:{value:r}},a)));return s.value=t,U("label",{class:"field"},U("span",{},i),s)}function Kr(i,e,t,n,s,r,a=""){const o=U("output",{},`${s}${a}`),l=U("input",{attrs:{type:"range",min:e,max:t,step:n,value:s,"aria-label":i},on:{input:()=>{qe(o,`${l.value}${a}`),r(Number(l.value))}}});return U("label",{class:"field wide"},U("span",{},i),l,o)}function On(i,e,t=""){return U("table",{class:t},U("thead",{},U("tr",{},...i.map(n=>U("th",{attrs:{scope:"col"}},n)))),U("tbody",{},...e.map(n=>U("tr",{},...n.map(s=>U("td",{},s))))))}function Wf(i,e=60){let t=0;return()=>{window.clearTimeout(t),t=window.setTimeout(i,e)}}function mo(i){const e=Math.round(i/60);return i<90?`${Math.round(i)} s`:e<60?`${e} min`:`${Math.floor(e/60)} h ${String(e%60).padStart(2,"0")} min`}function ot(i,e=2){return i==null||!Number.isFinite(i)?"-":i.toFixed(e)}const Ip=!0,an="u-",Np="uplot",Fp=an+"hz",Op=an+"vt",Bp=an+"title",kp=an+"wrap",zp=an+"under",Hp=an+"over",Vp=an+"axis",Ts=an+"off",Gp=an+"select",Wp=an+"cursor-x",Xp=an+"cursor-y",qp=an+"cursor-pt",Yp=an+"legend",$p=an+"live",jp=an+"inline",Kp=an+"series",Zp=an+"marker",ku=an+"label",Jp=an+"value",Zr="width",Jr="height",kr="top",zu="bottom",js="left",Jo="right",Wc="#000",Hu=Wc+"0",Qo="mousemove",Vu="mousedown",el="mouseup",Gu="mouseenter",Wu="mouseleave",Xu="dblclick",Qp="resize",em="scroll",qu="change",go="dppxchange",Xc="--",Rr=typeof window<"u",Hl=Rr?document:null,dr=Rr?window:null,tm=Rr?navigator:null;let yt,Ra;function Vl(){let i=devicePixelRatio;yt!=i&&(yt=i,Ra&&Wl(qu,Ra,Vl),Ra=matchMedia(`(min-resolution: ${yt-.001}dppx) and (max-resolution: ${yt+.001}dppx)`),Ls(qu,Ra,Vl),dr.dispatchEvent(new CustomEvent(go)))}function Yn(i,e){if(e!=null){let t=i.classList;!t.contains(e)&&t.add(e)}}function Gl(i,e){let t=i.classList;t.contains(e)&&t.remove(e)}function Gt(i,e,t){i.style[e]=t+"px"}function hi(i,e,t,n){let s=Hl.createElement(i);return e!=null&&Yn(s,e),t?.insertBefore(s,n),s}function ei(i,e){return hi("div",i,e)}const Yu=new WeakMap;function Ei(i,e,t,n,s){let r="translate("+e+"px,"+t+"px)",a=Yu.get(i);r!=a&&(i.style.transform=r,Yu.set(i,r),e<0||t<0||e>n||t>s?Yn(i,Ts):Gl(i,Ts))}const $u=new WeakMap;function ju(i,e,t){let n=e+t,s=$u.get(i);n!=s&&($u.set(i,n),i.style.background=e,i.style.borderColor=t)}const Ku=new WeakMap;function Zu(i,e,t,n){let s=e+""+t,r=Ku.get(i);s!=r&&(Ku.set(i,s),i.style.height=t+"px",i.style.width=e+"px",i.style.marginLeft=n?-e/2+"px":0,i.style.marginTop=n?-t/2+"px":0)}const qc={passive:!0},nm={...qc,capture:!0};function Ls(i,e,t,n){e.addEventListener(i,t,n?nm:qc)}function Wl(i,e,t,n){e.removeEventListener(i,t,qc)}Rr&&Vl();function fi(i,e,t,n){let s;t=t||0,n=n||e.length-1;let r=n<=2147483647;for(;n-t>1;)s=r?t+n>>1:$n((t+n)/2),e[s]<i?t=s:n=s;return i-e[t]<=e[n]-i?t:n}function Xf(i){return(t,n,s)=>{let r=-1,a=-1;for(let o=n;o<=s;o++)if(i(t[o])){r=o;break}for(let o=s;o>=n;o--)if(i(t[o])){a=o;break}return[r,a]}}const qf=i=>i!=null,Yf=i=>i!=null&&i>0,To=Xf(qf),im=Xf(Yf);function sm(i,e,t,n=0,s=!1){let r=s?im:To,a=s?Yf:qf;[e,t]=r(i,e,t);let o=i[e],l=i[e];if(e>-1)if(n==1)o=i[e],l=i[t];else if(n==-1)o=i[t],l=i[e];else for(let c=e;c<=t;c++){let f=i[c];a(f)&&(f<o?o=f:f>l&&(l=f))}return[o??Ut,l??-Ut]}function Ao(i,e,t,n){let s=eh(i),r=eh(e);i==e&&(s==-1?(i*=t,e/=t):(i/=t,e*=t));let a=t==10?Hi:$f,o=s==1?$n:ti,l=r==1?ti:$n,c=o(a(tn(i))),f=l(a(tn(e))),u=vr(t,c),h=vr(t,f);return t==10&&(c<0&&(u=It(u,-c)),f<0&&(h=It(h,-f))),n||t==2?(i=u*s,e=h*r):(i=Jf(i,u),e=Ro(e,h)),[i,e]}function Yc(i,e,t,n){let s=Ao(i,e,t,n);return i==0&&(s[0]=0),e==0&&(s[1]=0),s}const $c=.1,Ju={mode:3,pad:$c},ia={pad:0,soft:null,mode:0},rm={min:ia,max:ia};function _o(i,e,t,n){return Co(t)?Qu(i,e,t):(ia.pad=t,ia.soft=n?0:null,ia.mode=n?3:0,Qu(i,e,rm))}function xt(i,e){return i??e}function am(i,e,t){for(e=xt(e,0),t=xt(t,i.length-1);e<=t;){if(i[e]!=null)return!0;e++}return!1}function Qu(i,e,t){let n=t.min,s=t.max,r=xt(n.pad,0),a=xt(s.pad,0),o=xt(n.hard,-Ut),l=xt(s.hard,Ut),c=xt(n.soft,Ut),f=xt(s.soft,-Ut),u=xt(n.mode,0),h=xt(s.mode,0),p=e-i,v=Hi(p),M=Ln(tn(i),tn(e)),m=Hi(M),d=tn(m-v);(p<1e-24||d>10)&&(p=0,(i==0||e==0)&&(p=1e-24,u==2&&c!=Ut&&(r=0),h==2&&f!=-Ut&&(a=0)));let b=p||M||1e3,A=Hi(b),E=vr(10,$n(A)),F=b*(p==0?i==0?.1:1:r),C=It(Jf(i-F,E/10),24),D=i>=c&&(u==1||u==3&&C<=c||u==2&&C>=c)?c:Ut,O=Ln(o,C<D&&i>=D?D:di(D,C)),T=b*(p==0?e==0?.1:1:a),g=It(Ro(e+T,E/10),24),S=e<=f&&(h==1||h==3&&g>=f||h==2&&g<=f)?f:-Ut,P=di(l,g>S&&e<=S?S:Ln(S,g));return O==P&&O==0&&(P=100),[O,P]}const om=new Intl.NumberFormat(Rr?tm.language:"en-US"),jc=i=>om.format(i),jn=Math,ao=jn.PI,tn=jn.abs,$n=jn.floor,en=jn.round,ti=jn.ceil,di=jn.min,Ln=jn.max,vr=jn.pow,eh=jn.sign,Hi=jn.log10,$f=jn.log2,lm=(i,e=1)=>jn.sinh(i)*e,tl=(i,e=1)=>jn.asinh(i/e),Ut=1/0;function th(i){return(Hi((i^i>>31)-(i>>31))|0)+1}function Xl(i,e,t){return di(Ln(i,e),t)}function jf(i){return typeof i=="function"}function ft(i){return jf(i)?i:()=>i}const cm=()=>{},Kf=i=>i,Zf=(i,e)=>e,um=i=>null,nh=i=>!0,ih=(i,e)=>i==e,hm=/\.\d*?(?=9{6,}|0{6,})/gm,Us=i=>{if(ed(i)||ls.has(i))return i;const e=`${i}`,t=e.match(hm);if(t==null)return i;let n=t[0].length-1;if(e.indexOf("e-")!=-1){let[s,r]=e.split("e");return+`${Us(s)}e${r}`}return It(i,n)};function Es(i,e){return Us(It(Us(i/e))*e)}function Ro(i,e){return Us(ti(Us(i/e))*e)}function Jf(i,e){return Us($n(Us(i/e))*e)}function It(i,e=0){if(ed(i))return i;let t=10**e,n=i*t*(1+Number.EPSILON);return en(n)/t}const ls=new Map;function Qf(i){return((""+i).split(".")[1]||"").length}function aa(i,e,t,n){let s=[],r=n.map(Qf);for(let a=e;a<t;a++){let o=tn(a),l=It(vr(i,a),o);for(let c=0;c<n.length;c++){let f=i==10?+`${n[c]}e${a}`:n[c]*l,u=(a>=0?0:o)+(a>=r[c]?0:r[c]),h=i==10?f:It(f,u);s.push(h),ls.set(h,u)}}return s}const sa={},Kc=[],xr=[null,null],ns=Array.isArray,ed=Number.isInteger,fm=i=>i===void 0;function sh(i){return typeof i=="string"}function Co(i){let e=!1;if(i!=null){let t=i.constructor;e=t==null||t==Object}return e}function dm(i){return i!=null&&typeof i=="object"}const pm=Object.getPrototypeOf(Uint8Array),td="__proto__";function Mr(i,e=Co){let t;if(ns(i)){let n=i.find(s=>s!=null);if(ns(n)||e(n)){t=Array(i.length);for(let s=0;s<i.length;s++)t[s]=Mr(i[s],e)}else t=i.slice()}else if(i instanceof pm)t=i.slice();else if(e(i)){t={};for(let n in i)n!=td&&(t[n]=Mr(i[n],e))}else t=i;return t}function Zt(i){let e=arguments;for(let t=1;t<e.length;t++){let n=e[t];for(let s in n)s!=td&&(Co(i[s])?Zt(i[s],Mr(n[s])):i[s]=Mr(n[s]))}return i}const mm=0,gm=1,_m=2;function vm(i,e,t){for(let n=0,s,r=-1;n<e.length;n++){let a=e[n];if(a>r){for(s=a-1;s>=0&&i[s]==null;)i[s--]=null;for(s=a+1;s<t&&i[s]==null;)i[r=s++]=null}}}function xm(i,e){if(ym(i)){let a=i[0].slice();for(let o=1;o<i.length;o++)a.push(...i[o].slice(1));return Em(a[0])||(a=Sm(a)),a}let t=new Set;for(let a=0;a<i.length;a++){let l=i[a][0],c=l.length;for(let f=0;f<c;f++)t.add(l[f])}let n=[Array.from(t).sort((a,o)=>a-o)],s=n[0].length,r=new Map;for(let a=0;a<s;a++)r.set(n[0][a],a);for(let a=0;a<i.length;a++){let o=i[a],l=o[0];for(let c=1;c<o.length;c++){let f=o[c],u=Array(s).fill(void 0),h=e?e[a][c]:gm,p=[];for(let v=0;v<f.length;v++){let M=f[v],m=r.get(l[v]);M===null?h!=mm&&(u[m]=M,h==_m&&p.push(m)):u[m]=M}vm(u,p,s),n.push(u)}}return n}const Mm=typeof queueMicrotask>"u"?i=>Promise.resolve().then(i):queueMicrotask;function Sm(i){let e=i[0],t=e.length,n=Array(t);for(let r=0;r<n.length;r++)n[r]=r;n.sort((r,a)=>e[r]-e[a]);let s=[];for(let r=0;r<i.length;r++){let a=i[r],o=Array(t);for(let l=0;l<t;l++)o[l]=a[n[l]];s.push(o)}return s}function ym(i){let e=i[0][0],t=e.length;for(let n=1;n<i.length;n++){let s=i[n][0];if(s.length!=t)return!1;if(s!=e){for(let r=0;r<t;r++)if(s[r]!=e[r])return!1}}return!0}function Em(i,e=100){const t=i.length;if(t<=1)return!0;let n=0,s=t-1;for(;n<=s&&i[n]==null;)n++;for(;s>=n&&i[s]==null;)s--;if(s<=n)return!0;const r=Ln(1,$n((s-n+1)/e));for(let a=i[n],o=n+r;o<=s;o+=r){const l=i[o];if(l!=null){if(l<=a)return!1;a=l}}return!0}const nd=["January","February","March","April","May","June","July","August","September","October","November","December"],id=["Sunday","Monday","Tuesday","Wednesday","Thursday","Friday","Saturday"];function sd(i){return i.slice(0,3)}const bm=id.map(sd),wm=nd.map(sd),Tm={MMMM:nd,MMM:wm,WWWW:id,WWW:bm};function zr(i){return(i<10?"0":"")+i}function Am(i){return(i<10?"00":i<100?"0":"")+i}const Rm={YYYY:i=>i.getFullYear(),YY:i=>(i.getFullYear()+"").slice(2),MMMM:(i,e)=>e.MMMM[i.getMonth()],MMM:(i,e)=>e.MMM[i.getMonth()],MM:i=>zr(i.getMonth()+1),M:i=>i.getMonth()+1,DD:i=>zr(i.getDate()),D:i=>i.getDate(),WWWW:(i,e)=>e.WWWW[i.getDay()],WWW:(i,e)=>e.WWW[i.getDay()],HH:i=>zr(i.getHours()),H:i=>i.getHours(),h:i=>{let e=i.getHours();return e==0?12:e>12?e-12:e},AA:i=>i.getHours()>=12?"PM":"AM",aa:i=>i.getHours()>=12?"pm":"am",a:i=>i.getHours()>=12?"p":"a",mm:i=>zr(i.getMinutes()),m:i=>i.getMinutes(),ss:i=>zr(i.getSeconds()),s:i=>i.getSeconds(),fff:i=>Am(i.getMilliseconds())};function Zc(i,e){e=e||Tm;let t=[],n=/\{([a-z]+)\}|[^{]+/gi,s;for(;s=n.exec(i);)t.push(s[0][0]=="{"?Rm[s[1]]:s[0]);return r=>{let a="";for(let o=0;o<t.length;o++)a+=typeof t[o]=="string"?t[o]:t[o](r,e);return a}}const Cm=new Intl.DateTimeFormat().resolvedOptions().timeZone;function Pm(i,e){let t;return e=="UTC"||e=="Etc/UTC"?t=new Date(+i+i.getTimezoneOffset()*6e4):e==Cm?t=i:(t=new Date(i.toLocaleString("en-US",{timeZone:e})),t.setMilliseconds(i.getMilliseconds())),t}const rd=i=>i%1==0,vo=[1,2,2.5,5],Dm=aa(10,-32,0,vo),ad=aa(10,0,32,vo),Lm=ad.filter(rd),bs=Dm.concat(ad),Jc=`
`,od="{YYYY}",rh=Jc+od,ld="{M}/{D}",Qr=Jc+ld,Ca=Qr+"/{YY}",cd="{aa}",Um="{h}:{mm}",ur=Um+cd,ah=Jc+ur,oh=":{ss}",bt=null;function ud(i){let e=i*1e3,t=e*60,n=t*60,s=n*24,r=s*30,a=s*365,l=(i==1?aa(10,0,3,vo).filter(rd):aa(10,-3,0,vo)).concat([e,e*5,e*10,e*15,e*30,t,t*5,t*10,t*15,t*30,n,n*2,n*3,n*4,n*6,n*8,n*12,s,s*2,s*3,s*4,s*5,s*6,s*7,s*8,s*9,s*10,s*15,r,r*2,r*3,r*4,r*6,a,a*2,a*5,a*10,a*25,a*50,a*100]);const c=[[a,od,bt,bt,bt,bt,bt,bt,1],[s*28,"{MMM}",rh,bt,bt,bt,bt,bt,1],[s,ld,rh,bt,bt,bt,bt,bt,1],[n,"{h}"+cd,Ca,bt,Qr,bt,bt,bt,1],[t,ur,Ca,bt,Qr,bt,bt,bt,1],[e,oh,Ca+" "+ur,bt,Qr+" "+ur,bt,ah,bt,1],[i,oh+".{fff}",Ca+" "+ur,bt,Qr+" "+ur,bt,ah,bt,1]];function f(u){return(h,p,v,M,m,d)=>{let b=[],A=m>=a,E=m>=r&&m<a,F=u(v),C=It(F*i,3),D=nl(F.getFullYear(),A?0:F.getMonth(),E||A?1:F.getDate()),O=It(D*i,3);if(E||A){let T=E?m/r:0,g=A?m/a:0,S=C==O?C:It(nl(D.getFullYear()+g,D.getMonth()+T,1)*i,3),P=new Date(en(S/i)),I=P.getFullYear(),V=P.getMonth();for(let k=0;S<=M;k++){let X=nl(I+g*k,V+T*k,1),$=X-u(It(X*i,3));S=It((+X+$)*i,3),S<=M&&b.push(S)}}else{let T=m>=s?s:m,g=$n(v)-$n(C),S=O+g+Ro(C-O,T);b.push(S);let P=u(S),I=P.getHours()+P.getMinutes()/t+P.getSeconds()/n,V=m/n,k=h.axes[p]._space,X=d/k;for(;S=It(S+m,i==1?0:3),!(S>M);)if(V>1){let $=$n(It(I+V,6))%24,oe=u(S).getHours()-$;oe>1&&(oe=-1),S-=oe*n,I=(I+V)%24;let ue=b[b.length-1];It((S-ue)/m,3)*X>=.7&&b.push(S)}else b.push(S)}return b}}return[l,c,f]}const[Im,Nm,Fm]=ud(1),[Om,Bm,km]=ud(.001);aa(2,-53,53,[1]);function lh(i,e){return i.map(t=>t.map((n,s)=>s==0||s==8||n==null?n:e(s==1||t[8]==0?n:t[1]+n)))}function ch(i,e){return(t,n,s,r,a)=>{let o=e.find(v=>a>=v[0])||e[e.length-1],l,c,f,u,h,p;return n.map(v=>{let M=i(v),m=M.getFullYear(),d=M.getMonth(),b=M.getDate(),A=M.getHours(),E=M.getMinutes(),F=M.getSeconds(),C=m!=l&&o[2]||d!=c&&o[3]||b!=f&&o[4]||A!=u&&o[5]||E!=h&&o[6]||F!=p&&o[7]||o[1];return l=m,c=d,f=b,u=A,h=E,p=F,C(M)})}}function zm(i,e){let t=Zc(e);return(n,s,r,a,o)=>s.map(l=>t(i(l)))}function nl(i,e,t){return new Date(i,e,t)}function uh(i,e){return e(i)}const Hm="{YYYY}-{MM}-{DD} {h}:{mm}{aa}";function hh(i,e){return(t,n,s,r)=>r==null?Xc:e(i(n))}function Vm(i,e){let t=i.series[e];return t.width?t.stroke(i,e):t.points.width?t.points.stroke(i,e):null}function Gm(i,e){return i.series[e].fill(i,e)}const Wm={show:!0,live:!0,isolate:!1,mount:cm,markers:{show:!0,width:2,stroke:Vm,fill:Gm,dash:"solid"},idx:null,idxs:null,values:[]};function Xm(i,e){let t=i.cursor.points,n=ei(),s=t.size(i,e);Gt(n,Zr,s),Gt(n,Jr,s);let r=s/-2;Gt(n,"marginLeft",r),Gt(n,"marginTop",r);let a=t.width(i,e,s);return a&&Gt(n,"borderWidth",a),n}function qm(i,e){let t=i.series[e].points;return t._fill||t._stroke}function Ym(i,e){let t=i.series[e].points;return t._stroke||t._fill}function $m(i,e){return i.series[e].points.size}const il=[0,0];function jm(i,e,t){return il[0]=e,il[1]=t,il}function Pa(i,e,t,n=!0){return s=>{s.button==0&&(!n||s.target==e)&&t(s)}}function sl(i,e,t,n=!0){return s=>{(!n||s.target==e)&&t(s)}}const Km={show:!0,x:!0,y:!0,lock:!1,move:jm,points:{one:!1,show:Xm,size:$m,width:0,stroke:Ym,fill:qm},bind:{mousedown:Pa,mouseup:Pa,click:Pa,dblclick:Pa,mousemove:sl,mouseleave:sl,mouseenter:sl},drag:{setScale:!0,x:!0,y:!1,dist:0,uni:null,click:(i,e)=>{e.stopPropagation(),e.stopImmediatePropagation()},_x:!1,_y:!1},focus:{dist:(i,e,t,n,s)=>n-s,prox:-1,bias:0},hover:{skip:[void 0],prox:null,bias:0},left:-10,top:-10,idx:null,dataIdx:null,idxs:null,event:null},hd={show:!0,stroke:"rgba(0,0,0,0.07)",width:2},Qc=Zt({},hd,{filter:Zf}),fd=Zt({},Qc,{size:10}),dd=Zt({},hd,{show:!1}),eu='12px system-ui, -apple-system, "Segoe UI", Roboto, "Helvetica Neue", Arial, "Noto Sans", sans-serif, "Apple Color Emoji", "Segoe UI Emoji", "Segoe UI Symbol", "Noto Color Emoji"',pd="bold "+eu,md=1.5,fh={show:!0,scale:"x",stroke:Wc,space:50,gap:5,alignTo:1,size:50,labelGap:0,labelSize:30,labelFont:pd,side:2,grid:Qc,ticks:fd,border:dd,font:eu,lineGap:md,rotate:0},Zm="Value",Jm="Time",dh={show:!0,scale:"x",auto:!1,sorted:1,min:Ut,max:-Ut,idxs:[]};function Qm(i,e,t,n,s){return e.map(r=>r==null?"":jc(r))}function eg(i,e,t,n,s,r,a){let o=[],l=ls.get(s)||0;t=a?t:It(Ro(t,s),l);for(let c=t;c<=n;c=It(c+s,l))o.push(Object.is(c,-0)?0:c);return o}function ql(i,e,t,n,s,r,a){const o=[],l=i.scales[i.axes[e].scale].log,c=l==10?Hi:$f,f=$n(c(t));s=vr(l,f),l==10&&(s=bs[fi(s,bs)]);let u=t,h=s*l;l==10&&(h=bs[fi(h,bs)]);do o.push(u),u=u+s,l==10&&!ls.has(u)&&(u=It(u,ls.get(s))),u>=h&&(s=u,h=s*l,l==10&&(h=bs[fi(h,bs)]));while(u<=n);return o}function tg(i,e,t,n,s,r,a){let l=i.scales[i.axes[e].scale].asinh,c=n>l?ql(i,e,Ln(l,t),n,s):[l],f=n>=0&&t<=0?[0]:[];return(t<-l?ql(i,e,Ln(l,-n),-t,s):[l]).reverse().map(h=>-h).concat(f,c)}const gd=/./,ng=/[12357]/,ig=/[125]/,ph=/1/,Yl=(i,e,t,n)=>i.map((s,r)=>e==4&&s==0||r%n==0&&t.test(s.toExponential()[s<0?1:0])?s:null);function sg(i,e,t,n,s){let r=i.axes[t],a=r.scale,o=i.scales[a],l=i.valToPos,c=r._space,f=l(10,a),u=l(9,a)-f>=c?gd:l(7,a)-f>=c?ng:l(5,a)-f>=c?ig:ph;if(u==ph){let h=tn(l(1,a)-f);if(h<c)return Yl(e.slice().reverse(),o.distr,u,ti(c/h)).reverse()}return Yl(e,o.distr,u,1)}function rg(i,e,t,n,s){let r=i.axes[t],a=r.scale,o=r._space,l=i.valToPos,c=tn(l(1,a)-l(2,a));return c<o?Yl(e.slice().reverse(),3,gd,ti(o/c)).reverse():e}function ag(i,e,t,n){return n==null?Xc:e==null?"":jc(e)}const mh={show:!0,scale:"y",stroke:Wc,space:30,gap:5,alignTo:1,size:50,labelGap:0,labelSize:30,labelFont:pd,side:3,grid:Qc,ticks:fd,border:dd,font:eu,lineGap:md,rotate:0};function og(i,e){let t=3+(i||1)*2;return It(t*e,3)}function lg(i,e){let{scale:t,idxs:n}=i.series[0],s=i._data[0],r=i.valToPos(s[n[0]],t,!0),a=i.valToPos(s[n[1]],t,!0),o=tn(a-r),l=i.series[e],c=o/(l.points.space*yt);return n[1]-n[0]<=c}const gh={scale:null,auto:!0,sorted:0,min:Ut,max:-Ut},_d=(i,e,t,n,s)=>s,_h={show:!0,auto:!0,sorted:0,gaps:_d,alpha:1,facets:[Zt({},gh,{scale:"x"}),Zt({},gh,{scale:"y"})]},vh={scale:"y",auto:!0,sorted:0,show:!0,spanGaps:!1,gaps:_d,alpha:1,points:{show:lg,filter:null},values:null,min:Ut,max:-Ut,idxs:[],path:null,clip:null};function cg(i,e,t,n,s){return t/10}const vd={time:Ip,auto:!0,distr:1,log:10,asinh:1,min:null,max:null,dir:1,ori:0},ug=Zt({},vd,{time:!1,ori:1}),xh={};function xd(i,e){let t=xh[i];return t||(t={key:i,plots:[],sub(n){t.plots.push(n)},unsub(n){t.plots=t.plots.filter(s=>s!=n)},pub(n,s,r,a,o,l,c){for(let f=0;f<t.plots.length;f++)t.plots[f]!=s&&t.plots[f].pub(n,s,r,a,o,l,c)}},i!=null&&(xh[i]=t)),t}const Sr=1,$l=2;function Os(i,e,t){const n=i.mode,s=i.series[e],r=n==2?i._data[e]:i._data,a=i.scales,o=i.bbox;let l=r[0],c=n==2?r[1]:r[e],f=n==2?a[s.facets[0].scale]:a[i.series[0].scale],u=n==2?a[s.facets[1].scale]:a[s.scale],h=o.left,p=o.top,v=o.width,M=o.height,m=i.valToPosH,d=i.valToPosV;return f.ori==0?t(s,l,c,f,u,m,d,h,p,v,M,Do,Cr,Uo,Sd,Ed):t(s,l,c,f,u,d,m,p,h,M,v,Lo,Pr,iu,yd,bd)}function tu(i,e){let t=0,n=0,s=xt(i.bands,Kc);for(let r=0;r<s.length;r++){let a=s[r];a.series[0]==e?t=a.dir:a.series[1]==e&&(a.dir==1?n|=1:n|=2)}return[t,n==1?-1:n==2?1:n==3?2:0]}function hg(i,e,t,n,s){let r=i.mode,a=i.series[e],o=r==2?a.facets[1].scale:a.scale,l=i.scales[o];return s==-1?l.min:s==1?l.max:l.distr==3?l.dir==1?l.min:l.max:0}function Vi(i,e,t,n,s,r){return Os(i,e,(a,o,l,c,f,u,h,p,v,M,m)=>{let d=a.pxRound;const b=c.dir*(c.ori==0?1:-1),A=c.ori==0?Cr:Pr;let E,F;b==1?(E=t,F=n):(E=n,F=t);let C=d(u(o[E],c,M,p)),D=d(h(l[E],f,m,v)),O=d(u(o[F],c,M,p)),T=d(h(r==1?f.max:f.min,f,m,v)),g=new Path2D(s);return A(g,O,T),A(g,C,T),A(g,C,D),g})}function Po(i,e,t,n,s,r){let a=null;if(i.length>0){a=new Path2D;const o=e==0?Uo:iu;let l=t;for(let u=0;u<i.length;u++){let h=i[u];if(h[1]>h[0]){let p=h[0]-l;p>0&&o(a,l,n,p,n+r),l=h[1]}}let c=t+s-l,f=10;c>0&&o(a,l,n-f/2,c,n+r+f)}return a}function fg(i,e,t){let n=i[i.length-1];n&&n[0]==e?n[1]=t:i.push([e,t])}function nu(i,e,t,n,s,r,a){let o=[],l=i.length;for(let c=s==1?t:n;c>=t&&c<=n;c+=s)if(e[c]===null){let u=c,h=c;if(s==1)for(;++c<=n&&e[c]===null;)h=c;else for(;--c>=t&&e[c]===null;)h=c;let p=r(i[u]),v=h==u?p:r(i[h]),M=u-s;p=a<=0&&M>=0&&M<l?r(i[M]):p;let d=h+s;v=a>=0&&d>=0&&d<l?r(i[d]):v,v>=p&&o.push([p,v])}return o}function Mh(i){return i==0?Kf:i==1?en:e=>Es(e,i)}function Md(i){let e=i==0?Do:Lo,t=i==0?(s,r,a,o,l,c)=>{s.arcTo(r,a,o,l,c)}:(s,r,a,o,l,c)=>{s.arcTo(a,r,l,o,c)},n=i==0?(s,r,a,o,l)=>{s.rect(r,a,o,l)}:(s,r,a,o,l)=>{s.rect(a,r,l,o)};return(s,r,a,o,l,c=0,f=0)=>{c==0&&f==0?n(s,r,a,o,l):(c=di(c,o/2,l/2),f=di(f,o/2,l/2),e(s,r+c,a),t(s,r+o,a,r+o,a+l,c),t(s,r+o,a+l,r,a+l,f),t(s,r,a+l,r,a,f),t(s,r,a,r+o,a,c),s.closePath())}}const Do=(i,e,t)=>{i.moveTo(e,t)},Lo=(i,e,t)=>{i.moveTo(t,e)},Cr=(i,e,t)=>{i.lineTo(e,t)},Pr=(i,e,t)=>{i.lineTo(t,e)},Uo=Md(0),iu=Md(1),Sd=(i,e,t,n,s,r)=>{i.arc(e,t,n,s,r)},yd=(i,e,t,n,s,r)=>{i.arc(t,e,n,s,r)},Ed=(i,e,t,n,s,r,a)=>{i.bezierCurveTo(e,t,n,s,r,a)},bd=(i,e,t,n,s,r,a)=>{i.bezierCurveTo(t,e,s,n,a,r)};function wd(i){return(e,t,n,s,r)=>Os(e,t,(a,o,l,c,f,u,h,p,v,M,m)=>{let{pxRound:d,points:b}=a,A,E;c.ori==0?(A=Do,E=Sd):(A=Lo,E=yd);const F=It(b.width*yt,3);let C=(b.size-b.width)/2*yt,D=It(C*2,3),O=new Path2D,T=new Path2D,{left:g,top:S,width:P,height:I}=e.bbox;Uo(T,g-D,S-D,P+D*2,I+D*2);const V=k=>{if(l[k]!=null){let X=d(u(o[k],c,M,p)),$=d(h(l[k],f,m,v));A(O,X+C,$),E(O,X,$,C,0,ao*2)}};if(r)r.forEach(V);else for(let k=n;k<=s;k++)V(k);return{stroke:F>0?O:null,fill:O,clip:T,flags:Sr|$l}})}function Td(i){return(e,t,n,s,r,a)=>{n!=s&&(r!=n&&a!=n&&i(e,t,n),r!=s&&a!=s&&i(e,t,s),i(e,t,a))}}const dg=Td(Cr),pg=Td(Pr);function Ad(i){const e=xt(i?.alignGaps,0);return(t,n,s,r)=>Os(t,n,(a,o,l,c,f,u,h,p,v,M,m)=>{[s,r]=To(l,s,r);let d=a.pxRound,b=I=>d(u(I,c,M,p)),A=I=>d(h(I,f,m,v)),E,F;c.ori==0?(E=Cr,F=dg):(E=Pr,F=pg);const C=c.dir*(c.ori==0?1:-1),D={stroke:new Path2D,fill:null,clip:null,band:null,gaps:null,flags:Sr},O=D.stroke;let T=!1;if(r-s>=M*4){let I=fe=>t.posToVal(fe,c.key,!0),V=null,k=null,X,$,K,re=b(o[C==1?s:r]),oe=b(o[s]),ue=b(o[r]),he=I(C==1?oe+1:ue-1);for(let fe=C==1?s:r;fe>=s&&fe<=r;fe+=C){let $e=o[fe],ee=(C==1?$e<he:$e>he)?re:b($e),te=l[fe];ee==re?te!=null?($=te,V==null?(E(O,ee,A($)),X=V=k=$):$<V?V=$:$>k&&(k=$)):te===null&&(T=!0):(V!=null&&F(O,re,A(V),A(k),A(X),A($)),te!=null?($=te,E(O,ee,A($)),V=k=X=$):(V=k=null,te===null&&(T=!0)),re=ee,he=I(re+C))}V!=null&&V!=k&&K!=re&&F(O,re,A(V),A(k),A(X),A($))}else for(let I=C==1?s:r;I>=s&&I<=r;I+=C){let V=l[I];V===null?T=!0:V!=null&&E(O,b(o[I]),A(V))}let[S,P]=tu(t,n);if(a.fill!=null||S!=0){let I=D.fill=new Path2D(O),V=a.fillTo(t,n,a.min,a.max,S),k=A(V),X=b(o[s]),$=b(o[r]);C==-1&&([$,X]=[X,$]),E(I,$,k),E(I,X,k)}if(!a.spanGaps){let I=[];T&&I.push(...nu(o,l,s,r,C,b,e)),D.gaps=I=a.gaps(t,n,s,r,I),D.clip=Po(I,c.ori,p,v,M,m)}return P!=0&&(D.band=P==2?[Vi(t,n,s,r,O,-1),Vi(t,n,s,r,O,1)]:Vi(t,n,s,r,O,P)),D})}function mg(i){const e=xt(i.align,1),t=xt(i.ascDesc,!1),n=xt(i.alignGaps,0),s=xt(i.extend,!1);return(r,a,o,l)=>Os(r,a,(c,f,u,h,p,v,M,m,d,b,A)=>{[o,l]=To(u,o,l);let E=c.pxRound,{left:F,width:C}=r.bbox,D=oe=>E(v(oe,h,b,m)),O=oe=>E(M(oe,p,A,d)),T=h.ori==0?Cr:Pr;const g={stroke:new Path2D,fill:null,clip:null,band:null,gaps:null,flags:Sr},S=g.stroke,P=h.dir*(h.ori==0?1:-1);let I=O(u[P==1?o:l]),V=D(f[P==1?o:l]),k=V,X=V;s&&e==-1&&(X=F,T(S,X,I)),T(S,V,I);for(let oe=P==1?o:l;oe>=o&&oe<=l;oe+=P){let ue=u[oe];if(ue==null)continue;let he=D(f[oe]),fe=O(ue);e==1?T(S,he,I):T(S,k,fe),T(S,he,fe),I=fe,k=he}let $=k;s&&e==1&&($=F+C,T(S,$,I));let[K,re]=tu(r,a);if(c.fill!=null||K!=0){let oe=g.fill=new Path2D(S),ue=c.fillTo(r,a,c.min,c.max,K),he=O(ue);T(oe,$,he),T(oe,X,he)}if(!c.spanGaps){let oe=[];oe.push(...nu(f,u,o,l,P,D,n));let ue=c.width*yt/2,he=t||e==1?ue:-ue,fe=t||e==-1?-ue:ue;oe.forEach($e=>{$e[0]+=he,$e[1]+=fe}),g.gaps=oe=c.gaps(r,a,o,l,oe),g.clip=Po(oe,h.ori,m,d,b,A)}return re!=0&&(g.band=re==2?[Vi(r,a,o,l,S,-1),Vi(r,a,o,l,S,1)]:Vi(r,a,o,l,S,re)),g})}function Sh(i,e,t,n,s,r,a=Ut){if(i.length>1){let o=null;for(let l=0,c=1/0;l<i.length;l++)if(e[l]!==void 0){if(o!=null){let f=tn(i[l]-i[o]);f<c&&(c=f,a=tn(t(i[l],n,s,r)-t(i[o],n,s,r)))}o=l}}return a}function gg(i){i=i||sa;const e=xt(i.size,[.6,Ut,1]),t=i.align||0,n=i.gap||0;let s=i.radius;s=s==null?[0,0]:typeof s=="number"?[s,0]:s;const r=ft(s),a=1-e[0],o=xt(e[1],Ut),l=xt(e[2],1),c=xt(i.disp,sa),f=xt(i.each,p=>{}),{fill:u,stroke:h}=c;return(p,v,M,m)=>Os(p,v,(d,b,A,E,F,C,D,O,T,g,S)=>{let P=d.pxRound,I=t,V=n*yt,k=o*yt,X=l*yt,$,K;E.ori==0?[$,K]=r(p,v):[K,$]=r(p,v);const re=E.dir*(E.ori==0?1:-1);let oe=E.ori==0?Uo:iu,ue=E.ori==0?f:(z,J,ie,ne,Fe,pe,Le)=>{f(z,J,ie,Fe,ne,Le,pe)},he=xt(p.bands,Kc).find(z=>z.series[0]==v),fe=he!=null?he.dir:0,$e=d.fillTo(p,v,d.min,d.max,fe),Ke=P(D($e,F,S,T)),ee,te,xe,Ce=g,Se=P(d.width*yt),je=!1,wt=null,B=null,pt=null,Ze=null;u!=null&&(Se==0||h!=null)&&(je=!0,wt=u.values(p,v,M,m),B=new Map,new Set(wt).forEach(z=>{z!=null&&B.set(z,new Path2D)}),Se>0&&(pt=h.values(p,v,M,m),Ze=new Map,new Set(pt).forEach(z=>{z!=null&&Ze.set(z,new Path2D)})));let{x0:Ge,size:Ne}=c;if(Ge!=null&&Ne!=null){I=1,b=Ge.values(p,v,M,m),Ge.unit==2&&(b=b.map(ie=>p.posToVal(O+ie*g,E.key,!0)));let z=Ne.values(p,v,M,m);Ne.unit==2?te=z[0]*g:te=C(z[0],E,g,O)-C(0,E,g,O),Ce=Sh(b,A,C,E,g,O,Ce),xe=Ce-te+V}else Ce=Sh(b,A,C,E,g,O,Ce),xe=Ce*a+V,te=Ce-xe;xe<1&&(xe=0),Se>=te/2&&(Se=0),xe<5&&(P=Kf);let Tt=xe>0,Pe=Ce-xe-(Tt?Se:0);te=P(Xl(Pe,X,k)),ee=(I==0?te/2:I==re?0:te)-I*re*((I==0?V/2:0)+(Tt?Se/2:0));const Ve={stroke:null,fill:null,clip:null,band:null,gaps:null,flags:0},kt=je?null:new Path2D;let Mt=null;if(he!=null)Mt=p.data[he.series[1]];else{let{y0:z,y1:J}=c;z!=null&&J!=null&&(A=J.values(p,v,M,m),Mt=z.values(p,v,M,m))}let L=$*te,x=K*te;for(let z=re==1?M:m;z>=M&&z<=m;z+=re){let J=A[z];if(J==null)continue;if(Mt!=null){let Me=Mt[z]??0;if(J-Me==0)continue;Ke=D(Me,F,S,T)}let ie=E.distr!=2||c!=null?b[z]:z,ne=C(ie,E,g,O),Fe=D(xt(J,$e),F,S,T),pe=P(ne-ee),Le=P(Ln(Fe,Ke)),Ae=P(di(Fe,Ke)),le=Le-Ae;if(J!=null){let Me=J<0?x:L,ke=J<0?L:x;je?(Se>0&&pt[z]!=null&&oe(Ze.get(pt[z]),pe,Ae+$n(Se/2),te,Ln(0,le-Se),Me,ke),wt[z]!=null&&oe(B.get(wt[z]),pe,Ae+$n(Se/2),te,Ln(0,le-Se),Me,ke)):oe(kt,pe,Ae+$n(Se/2),te,Ln(0,le-Se),Me,ke),ue(p,v,z,pe-Se/2,Ae,te+Se,le)}}return Se>0?Ve.stroke=je?Ze:kt:je||(Ve._fill=d.width==0?d._fill:d._stroke??d._fill,Ve.width=0),Ve.fill=je?B:kt,Ve})}function _g(i,e){const t=xt(e?.alignGaps,0);return(n,s,r,a)=>Os(n,s,(o,l,c,f,u,h,p,v,M,m,d)=>{[r,a]=To(c,r,a);let b=o.pxRound,A=$=>b(h($,f,m,v)),E=$=>b(p($,u,d,M)),F,C,D;f.ori==0?(F=Do,D=Cr,C=Ed):(F=Lo,D=Pr,C=bd);const O=f.dir*(f.ori==0?1:-1);let T=A(l[O==1?r:a]),g=T,S=[],P=[];for(let $=O==1?r:a;$>=r&&$<=a;$+=O)if(c[$]!=null){let re=l[$],oe=A(re);S.push(g=oe),P.push(E(c[$]))}const I={stroke:i(S,P,F,D,C,b),fill:null,clip:null,band:null,gaps:null,flags:Sr},V=I.stroke;let[k,X]=tu(n,s);if(o.fill!=null||k!=0){let $=I.fill=new Path2D(V),K=o.fillTo(n,s,o.min,o.max,k),re=E(K);D($,g,re),D($,T,re)}if(!o.spanGaps){let $=[];$.push(...nu(l,c,r,a,O,A,t)),I.gaps=$=o.gaps(n,s,r,a,$),I.clip=Po($,f.ori,v,M,m,d)}return X!=0&&(I.band=X==2?[Vi(n,s,r,a,V,-1),Vi(n,s,r,a,V,1)]:Vi(n,s,r,a,V,X)),I})}function vg(i){return _g(xg,i)}function xg(i,e,t,n,s,r){const a=i.length;if(a<2)return null;const o=new Path2D;if(t(o,i[0],e[0]),a==2)n(o,i[1],e[1]);else{let l=Array(a),c=Array(a-1),f=Array(a-1),u=Array(a-1);for(let h=0;h<a-1;h++)f[h]=e[h+1]-e[h],u[h]=i[h+1]-i[h],c[h]=f[h]/u[h];l[0]=c[0];for(let h=1;h<a-1;h++)c[h]===0||c[h-1]===0||c[h-1]>0!=c[h]>0?l[h]=0:(l[h]=3*(u[h-1]+u[h])/((2*u[h]+u[h-1])/c[h-1]+(u[h]+2*u[h-1])/c[h]),isFinite(l[h])||(l[h]=0));l[a-1]=c[a-2];for(let h=0;h<a-1;h++)s(o,i[h]+u[h]/3,e[h]+l[h]*u[h]/3,i[h+1]-u[h]/3,e[h+1]-l[h+1]*u[h]/3,i[h+1],e[h+1])}return o}const jl=new Set;function yh(){for(let i of jl)i.syncRect(!0)}Rr&&(Ls(Qp,dr,yh),Ls(em,dr,yh,!0),Ls(go,dr,()=>{bn.pxRatio=yt}));const Mg=Ad(),Sg=wd();function Eh(i,e,t,n){return(n?[i[0],i[1]].concat(i.slice(2)):[i[0]].concat(i.slice(1))).map((r,a)=>Kl(r,a,e,t))}function yg(i,e){return i.map((t,n)=>n==0?{}:Zt({},e,t))}function Kl(i,e,t,n){return Zt({},e==0?t:n,i)}function Rd(i,e,t){return e==null?xr:[e,t]}const Eg=Rd;function bg(i,e,t){return e==null?xr:_o(e,t,$c,!0)}function Cd(i,e,t,n){return e==null?xr:Ao(e,t,i.scales[n].log,!1)}const wg=Cd;function Pd(i,e,t,n){return e==null?xr:Yc(e,t,i.scales[n].log,!1)}const Tg=Pd;function Ag(i,e,t,n,s){let r=Ln(th(i),th(e)),a=e-i,o=fi(s/n*a,t);do{let l=t[o],c=n*l/a;if(c>=s&&r+(l<5?ls.get(l):0)<=17)return[l,c]}while(++o<t.length);return[0,0]}function bh(i){let e,t;return i=i.replace(/(\d+)px/,(n,s)=>(e=en((t=+s)*yt))+"px"),[i,e,t]}function Rg(i){i.show&&[i.font,i.labelFont].forEach(e=>{let t=It(e[2]*yt,1);e[0]=e[0].replace(/[0-9.]+px/,t+"px"),e[1]=t})}function bn(i,e,t){const n={mode:xt(i.mode,1)},s=n.mode;function r(_,y,R,N){let W=y.valToPct(_);return N+R*(y.dir==-1?1-W:W)}function a(_,y,R,N){let W=y.valToPct(_);return N+R*(y.dir==-1?W:1-W)}function o(_,y,R,N){return y.ori==0?r(_,y,R,N):a(_,y,R,N)}n.valToPosH=r,n.valToPosV=a;let l=!1;n.status=0;const c=n.root=ei(Np);if(i.id!=null&&(c.id=i.id),Yn(c,i.class),i.title){let _=ei(Bp,c);_.textContent=i.title}const f=hi("canvas"),u=n.ctx=f.getContext("2d"),h=ei(kp,c);Ls("click",h,_=>{_.target===v&&(zt!=Ws||Wt!=Xs)&&gn.click(n,_)},!0);const p=n.under=ei(zp,h);h.appendChild(f);const v=n.over=ei(Hp,h);i=Mr(i);const M=+xt(i.pxAlign,1),m=Mh(M);(i.plugins||[]).forEach(_=>{_.opts&&(i=_.opts(n,i)||i)});const d=i.ms||.001,b=n.series=s==1?Eh(i.series||[],dh,vh,!1):yg(i.series||[null],_h),A=n.axes=Eh(i.axes||[],fh,mh,!0),E=n.scales={},F=n.bands=i.bands||[];F.forEach(_=>{_.fill=ft(_.fill||null),_.dir=xt(_.dir,-1)});const C=s==2?b[1].facets[0].scale:b[0].scale,D={axes:vp,series:ds},O=(i.drawOrder||["axes","series"]).map(_=>D[_]);function T(_){const y=_.distr==3?R=>Hi(R>0?R:_.clamp(n,R,_.min,_.max,_.key)):_.distr==4?R=>tl(R,_.asinh):_.distr==100?R=>_.fwd(R):R=>R;return R=>{let N=y(R),{_min:W,_max:j}=_,se=j-W;return(N-W)/se}}function g(_){let y=E[_];if(y==null){let R=(i.scales||sa)[_]||sa;if(R.from!=null){g(R.from);let N=Zt({},E[R.from],R,{key:_});N.valToPct=T(N),E[_]=N}else{y=E[_]=Zt({},_==C?vd:ug,R),y.key=_;let N=y.time,W=y.range,j=ns(W);if((_!=C||s==2&&!N)&&(j&&(W[0]==null||W[1]==null)&&(W={min:W[0]==null?Ju:{mode:1,hard:W[0],soft:W[0]},max:W[1]==null?Ju:{mode:1,hard:W[1],soft:W[1]}},j=!1),!j&&Co(W))){let se=W;W=(ce,ve,Te)=>ve==null?xr:_o(ve,Te,se)}y.range=ft(W||(N?Eg:_==C?y.distr==3?wg:y.distr==4?Tg:Rd:y.distr==3?Cd:y.distr==4?Pd:bg)),y.auto=ft(j?!1:y.auto),y.clamp=ft(y.clamp||cg),y._min=y._max=null,y.valToPct=T(y)}}}g("x"),g("y"),s==1&&b.forEach(_=>{g(_.scale)}),A.forEach(_=>{g(_.scale)});for(let _ in i.scales)g(_);const S=E[C],P=S.distr;let I,V;S.ori==0?(Yn(c,Fp),I=r,V=a):(Yn(c,Op),I=a,V=r);const k={};for(let _ in E){let y=E[_];(y.min!=null||y.max!=null)&&(k[_]={min:y.min,max:y.max},y.min=y.max=null)}const X=i.tzDate||(_=>new Date(en(_/d))),$=i.fmtDate||Zc,K=d==1?Fm(X):km(X),re=ch(X,lh(d==1?Nm:Bm,$)),oe=hh(X,uh(Hm,$)),ue=[],he=n.legend=Zt({},Wm,i.legend),fe=n.cursor=Zt({},Km,{drag:{y:s==2}},i.cursor),$e=he.show,Ke=fe.show,ee=he.markers;he.idxs=ue,ee.width=ft(ee.width),ee.dash=ft(ee.dash),ee.stroke=ft(ee.stroke),ee.fill=ft(ee.fill);let te,xe,Ce,Se=[],je=[],wt,B=!1,pt={};if(he.live){const _=b[1]?b[1].values:null;B=_!=null,wt=B?_(n,1,0):{_:0};for(let y in wt)pt[y]=Xc}if($e)if(te=hi("table",Yp,c),Ce=hi("tbody",null,te),he.mount(n,te),B){xe=hi("thead",null,te,Ce);let _=hi("tr",null,xe);hi("th",null,_);for(var Ze in wt)hi("th",ku,_).textContent=Ze}else Yn(te,jp),he.live&&Yn(te,$p);const Ge={show:!0},Ne={show:!1};function Tt(_,y){if(y==0&&(B||!he.live||s==2))return xr;let R=[],N=hi("tr",Kp,Ce,Ce.childNodes[y]);Yn(N,_.class),_.show||Yn(N,Ts);let W=hi("th",null,N);if(ee.show){let ce=ei(Zp,W);if(y>0){let ve=ee.width(n,y);ve&&(ce.style.border=ve+"px "+ee.dash(n,y)+" "+ee.stroke(n,y)),ce.style.background=ee.fill(n,y)}}let j=ei(ku,W);_.label instanceof HTMLElement?j.appendChild(_.label):j.textContent=_.label,y>0&&(ee.show||(j.style.color=_.width>0?ee.stroke(n,y):ee.fill(n,y)),Ve("click",W,ce=>{if(fe._lock)return;mn(ce);let ve=b.indexOf(_);if((ce.ctrlKey||ce.metaKey)!=he.isolate){let Te=b.some((Re,Ie)=>Ie>0&&Ie!=ve&&Re.show);b.forEach((Re,Ie)=>{Ie>0&&xi(Ie,Te?Ie==ve?Ge:Ne:Ge,!0,jt.setSeries)})}else xi(ve,{show:!_.show},!0,jt.setSeries)},!1),Un&&Ve(Gu,W,ce=>{fe._lock||(mn(ce),xi(b.indexOf(_),Ys,!0,jt.setSeries))},!1));for(var se in wt){let ce=hi("td",Jp,N);ce.textContent="--",R.push(ce)}return[N,R]}const Pe=new Map;function Ve(_,y,R,N=!0){const W=Pe.get(y)||{},j=fe.bind[_](n,y,R,N);j&&(Ls(_,y,W[_]=j),Pe.set(y,W))}function kt(_,y,R){const N=Pe.get(y)||{};for(let W in N)(_==null||W==_)&&(Wl(W,y,N[W]),delete N[W]);_==null&&Pe.delete(y)}let Mt=0,L=0,x=0,z=0,J=0,ie=0,ne=J,Fe=ie,pe=x,Le=z,Ae=0,le=0,Me=0,ke=0;n.bbox={};let Be=!1,ye=!1,Qe=!1,G=!1,me=!1,_e=!1;function De(_,y,R){(R||_!=n.width||y!=n.height)&&de(_,y),zs(!1),Qe=!0,ye=!0,Hs()}function de(_,y){n.width=Mt=x=_,n.height=L=z=y,J=ie=0,Rt(),mt();let R=n.bbox;Ae=R.left=Es(J*yt,.5),le=R.top=Es(ie*yt,.5),Me=R.width=Es(x*yt,.5),ke=R.height=Es(z*yt,.5)}const ae=3;function Oe(){let _=!1,y=0;for(;!_;){y++;let R=gp(y),N=_p(y);_=y==ae||R&&N,_||(de(n.width,n.height),ye=!0)}}function et({width:_,height:y}){De(_,y)}n.setSize=et;function Rt(){let _=!1,y=!1,R=!1,N=!1;A.forEach((W,j)=>{if(W.show&&W._show){let{side:se,_size:ce}=W,ve=se%2,Te=W.label!=null?W.labelSize:0,Re=ce+Te;Re>0&&(ve?(x-=Re,se==3?(J+=Re,N=!0):R=!0):(z-=Re,se==0?(ie+=Re,_=!0):y=!0))}}),Di[0]=_,Di[1]=R,Di[2]=y,Di[3]=N,x-=vi[1]+vi[3],J+=vi[3],z-=vi[2]+vi[0],ie+=vi[0]}function mt(){let _=J+x,y=ie+z,R=J,N=ie;function W(j,se){switch(j){case 1:return _+=se,_-se;case 2:return y+=se,y-se;case 3:return R-=se,R+se;case 0:return N-=se,N+se}}A.forEach((j,se)=>{if(j.show&&j._show){let ce=j.side;j._pos=W(ce,j._size),j.label!=null&&(j._lpos=W(ce,j.labelSize))}})}if(fe.dataIdx==null){let _=fe.hover,y=_.skip=new Set(_.skip??[]);y.add(void 0);let R=_.prox=ft(_.prox),N=_.bias??=0;fe.dataIdx=(W,j,se,ce)=>{if(j==0)return se;let ve=se,Te=R(W,j,se,ce)??Ut,Re=Te>=0&&Te<Ut,Ie=S.ori==0?x:z,tt=fe.left,St=e[0],_t=e[j];if(y.has(_t[se])){ve=null;let ct=null,Je=null,He;if(N==0||N==-1)for(He=se;ct==null&&He-- >0;)y.has(_t[He])||(ct=He);if(N==0||N==1)for(He=se;Je==null&&He++<_t.length;)y.has(_t[He])||(Je=He);if(ct!=null||Je!=null)if(Re){let Vt=ct==null?-1/0:I(St[ct],S,Ie,0),qt=Je==null?1/0:I(St[Je],S,Ie,0),fn=tt-Vt,Ct=qt-tt;fn<=Ct?fn<=Te&&(ve=ct):Ct<=Te&&(ve=Je)}else ve=Je==null?ct:ct==null?Je:se-ct<=Je-se?ct:Je}else Re&&tn(tt-I(St[se],S,Ie,0))>Te&&(ve=null);return ve}}const mn=_=>{fe.event=_};fe.idxs=ue,fe._lock=!1;let Lt=fe.points;Lt.show=ft(Lt.show),Lt.size=ft(Lt.size),Lt.stroke=ft(Lt.stroke),Lt.width=ft(Lt.width),Lt.fill=ft(Lt.fill);const Hn=n.focus=Zt({},i.focus||{alpha:.3},fe.focus),Un=Hn.prox>=0,_i=Un&&Lt.one;let wn=[],Pi=[],ri=[];function Ur(_,y){let R=Lt.show(n,y);if(R instanceof HTMLElement)return Yn(R,qp),Yn(R,_.class),Ei(R,-10,-10,x,z),v.insertBefore(R,wn[y]),R}function hs(_,y){if(s==1||y>0){let R=s==1&&E[_.scale].time,N=_.value;_.value=R?sh(N)?hh(X,uh(N,$)):N||oe:N||ag,_.label=_.label||(R?Jm:Zm)}if(_i||y>0){_.width=_.width==null?1:_.width,_.paths=_.paths||Mg||um,_.fillTo=ft(_.fillTo||hg),_.pxAlign=+xt(_.pxAlign,M),_.pxRound=Mh(_.pxAlign),_.stroke=ft(_.stroke||null),_.fill=ft(_.fill||null),_._stroke=_._fill=_._paths=_._focus=null;let R=og(Ln(1,_.width),1),N=_.points=Zt({},{size:R,width:Ln(1,R*.2),stroke:_.stroke,space:R*2,paths:Sg,_stroke:null,_fill:null},_.points);N.show=ft(N.show),N.filter=ft(N.filter),N.fill=ft(N.fill),N.stroke=ft(N.stroke),N.paths=ft(N.paths),N.pxAlign=_.pxAlign}if($e){let R=Tt(_,y);Se.splice(y,0,R[0]),je.splice(y,0,R[1]),he.values.push(null)}if(Ke){ue.splice(y,0,null);let R=null;_i?y==0&&(R=Ur(_,y)):y>0&&(R=Ur(_,y)),wn.splice(y,0,R),Pi.splice(y,0,0),ri.splice(y,0,0)}hn("addSeries",y)}function ya(_,y){y=y??b.length,_=s==1?Kl(_,y,dh,vh):Kl(_,y,{},_h),b.splice(y,0,_),hs(b[y],y)}n.addSeries=ya;function Ea(_){if(b.splice(_,1),$e){he.values.splice(_,1),je.splice(_,1);let y=Se.splice(_,1)[0];kt(null,y.firstChild),y.remove()}Ke&&(ue.splice(_,1),wn.splice(_,1)[0].remove(),Pi.splice(_,1),ri.splice(_,1)),hn("delSeries",_)}n.delSeries=Ea;const Di=[!1,!1,!1,!1];function zo(_,y){if(_._show=_.show,_.show){let R=_.side%2,N=E[_.scale];N==null&&(_.scale=R?b[1].scale:C,N=E[_.scale]);let W=N.time;_.size=ft(_.size),_.space=ft(_.space),_.rotate=ft(_.rotate),ns(_.incrs)&&_.incrs.forEach(se=>{!ls.has(se)&&ls.set(se,Qf(se))}),_.incrs=ft(_.incrs||(N.distr==2?Lm:W?d==1?Im:Om:bs)),_.splits=ft(_.splits||(W&&N.distr==1?K:N.distr==3?ql:N.distr==4?tg:eg)),_.stroke=ft(_.stroke),_.grid.stroke=ft(_.grid.stroke),_.ticks.stroke=ft(_.ticks.stroke),_.border.stroke=ft(_.border.stroke);let j=_.values;_.values=ns(j)&&!ns(j[0])?ft(j):W?ns(j)?ch(X,lh(j,$)):sh(j)?zm(X,j):j||re:j||Qm,_.filter=ft(_.filter||(N.distr>=3&&N.log==10?sg:N.distr==3&&N.log==2?rg:Zf)),_.font=bh(_.font),_.labelFont=bh(_.labelFont),_._size=_.size(n,null,y,0),_._space=_._rotate=_._incrs=_._found=_._splits=_._values=null,_._size>0&&(Di[y]=!0,_._el=ei(Vp,h))}}function fs(_,y,R,N){let[W,j,se,ce]=R,ve=y%2,Te=0;return ve==0&&(ce||j)&&(Te=y==0&&!W||y==2&&!se?en(fh.size/3):0),ve==1&&(W||se)&&(Te=y==1&&!j||y==3&&!ce?en(mh.size/2):0),Te}const ba=n.padding=(i.padding||[fs,fs,fs,fs]).map(_=>ft(xt(_,fs))),vi=n._padding=ba.map((_,y)=>_(n,y,Di,0));let Jt,w=null,q=null;const Q=s==1?b[0].idxs:null;let Z=null,Y=!1;function ge(_,y){if(e=_??[],n.data=n._data=e,s==2){Jt=0;for(let R=1;R<b.length;R++)Jt+=e[R][0].length}else{e.length==0&&(n.data=n._data=e=[[]]),Z=e[0],Jt=Z.length;let R=e;if(P==2){R=e.slice();let N=R[0]=Array(Jt);for(let W=0;W<Jt;W++)N[W]=W}n._data=e=R}if(zs(!0),hn("setData"),P==2&&(Qe=!0),y!==!1){let R=S;R.auto(n,Y)?Ee():Yi(C,R.min,R.max),G=G||fe.left>=0,_e=!0,Hs()}}n.setData=ge;function Ee(){Y=!0;let _,y;s==1&&(Jt>0?(w=Q[0]=0,q=Q[1]=Jt-1,_=e[0][w],y=e[0][q],P==2?(_=w,y=q):_==y&&(P==3?[_,y]=Ao(_,_,S.log,!1):P==4?[_,y]=Yc(_,_,S.log,!1):S.time?y=_+en(86400/d):[_,y]=_o(_,y,$c,!0))):(w=Q[0]=_=null,q=Q[1]=y=null)),Yi(C,_,y)}let Ue,we,Xe,Ye,ze,rt,gt,Nt,At,it;function We(_,y,R,N,W,j){_??=Hu,R??=Kc,N??="butt",W??=Hu,j??="round",_!=Ue&&(u.strokeStyle=Ue=_),W!=we&&(u.fillStyle=we=W),y!=Xe&&(u.lineWidth=Xe=y),j!=ze&&(u.lineJoin=ze=j),N!=rt&&(u.lineCap=rt=N),R!=Ye&&u.setLineDash(Ye=R)}function Ft(_,y,R,N){y!=we&&(u.fillStyle=we=y),_!=gt&&(u.font=gt=_),R!=Nt&&(u.textAlign=Nt=R),N!=At&&(u.textBaseline=At=N)}function ht(_,y,R,N,W=0){if(N.length>0&&_.auto(n,Y)&&(y==null||y.min==null)){let j=xt(w,0),se=xt(q,N.length-1),ce=R.min==null?sm(N,j,se,W,_.distr==3):[R.min,R.max];_.min=di(_.min,R.min=ce[0]),_.max=Ln(_.max,R.max=ce[1])}}const xn={min:null,max:null};function Wi(){for(let N in E){let W=E[N];k[N]==null&&(W.min==null||k[C]!=null&&W.auto(n,Y))&&(k[N]=xn)}for(let N in E){let W=E[N];k[N]==null&&W.from!=null&&k[W.from]!=null&&(k[N]=xn)}k[C]!=null&&zs(!0);let _={};for(let N in k){let W=k[N];if(W!=null){let j=_[N]=Mr(E[N],dm);if(W.min!=null)Zt(j,W);else if(N!=C||s==2)if(Jt==0&&j.from==null){let se=j.range(n,null,null,N);j.min=se[0],j.max=se[1]}else j.min=Ut,j.max=-Ut}}if(Jt>0){b.forEach((N,W)=>{if(s==1){let j=N.scale,se=k[j];if(se==null)return;let ce=_[j];if(W==0){let ve=ce.range(n,ce.min,ce.max,j);ce.min=ve[0],ce.max=ve[1],w=fi(ce.min,e[0]),q=fi(ce.max,e[0]),q-w>1&&(e[0][w]<ce.min&&w++,e[0][q]>ce.max&&q--),N.min=Z[w],N.max=Z[q]}else N.show&&N.auto&&ht(ce,se,N,e[W],N.sorted);N.idxs[0]=w,N.idxs[1]=q}else if(W>0&&N.show&&N.auto){let[j,se]=N.facets,ce=j.scale,ve=se.scale,[Te,Re]=e[W],Ie=_[ce],tt=_[ve];Ie!=null&&ht(Ie,k[ce],j,Te,j.sorted),tt!=null&&ht(tt,k[ve],se,Re,se.sorted),N.min=se.min,N.max=se.max}});for(let N in _){let W=_[N],j=k[N];if(W.from==null&&(j==null||j.min==null)){let se=W.range(n,W.min==Ut?null:W.min,W.max==-Ut?null:W.max,N);W.min=se[0],W.max=se[1]}}}for(let N in _){let W=_[N];if(W.from!=null){let j=_[W.from];if(j.min==null)W.min=W.max=null;else{let se=W.range(n,j.min,j.max,N);W.min=se[0],W.max=se[1]}}}let y={},R=!1;for(let N in _){let W=_[N],j=E[N];if(j.min!=W.min||j.max!=W.max){j.min=W.min,j.max=W.max;let se=j.distr;j._min=se==3?Hi(j.min):se==4?tl(j.min,j.asinh):se==100?j.fwd(j.min):j.min,j._max=se==3?Hi(j.max):se==4?tl(j.max,j.asinh):se==100?j.fwd(j.max):j.max,y[N]=R=!0}}if(R){b.forEach((N,W)=>{s==2?W>0&&y.y&&(N._paths=null):y[N.scale]&&(N._paths=null)});for(let N in y)Qe=!0,hn("setScale",N);Ke&&fe.left>=0&&(G=_e=!0)}for(let N in k)k[N]=null}function Tn(_){let y=Xl(w-1,0,Jt-1),R=Xl(q+1,0,Jt-1);for(;_[y]==null&&y>0;)y--;for(;_[R]==null&&R<Jt-1;)R++;return[y,R]}function ds(){if(Jt>0){let _=b.some(y=>y._focus)&&it!=Hn.alpha;_&&(u.globalAlpha=it=Hn.alpha),b.forEach((y,R)=>{if(R>0&&y.show&&(Ot(R,!1),Ot(R,!0),y._paths==null)){let N=it;it!=y.alpha&&(u.globalAlpha=it=y.alpha);let W=s==2?[0,e[R][0].length-1]:Tn(e[R]);y._paths=y.paths(n,R,W[0],W[1]),it!=N&&(u.globalAlpha=it=N)}}),b.forEach((y,R)=>{if(R>0&&y.show){let N=it;it!=y.alpha&&(u.globalAlpha=it=y.alpha),y._paths!=null&&An(R,!1);{let W=y._paths!=null?y._paths.gaps:null,j=y.points.show(n,R,w,q,W),se=y.points.filter(n,R,j,W);(j||se)&&(y.points._paths=y.points.paths(n,R,w,q,se),An(R,!0))}it!=N&&(u.globalAlpha=it=N),hn("drawSeries",R)}}),_&&(u.globalAlpha=it=1)}}function Ot(_,y){let R=y?b[_].points:b[_];R._stroke=R.stroke(n,_),R._fill=R.fill(n,_)}function An(_,y){let R=y?b[_].points:b[_],{stroke:N,fill:W,clip:j,flags:se,_stroke:ce=R._stroke,_fill:ve=R._fill,_width:Te=R.width}=R._paths;Te=It(Te*yt,3);let Re=null,Ie=Te%2/2;y&&ve==null&&(ve=Te>0?"#fff":ce);let tt=R.pxAlign==1&&Ie>0;if(tt&&u.translate(Ie,Ie),!y){let St=Ae-Te/2,_t=le-Te/2,ct=Me+Te,Je=ke+Te;Re=new Path2D,Re.rect(St,_t,ct,Je)}y?ln(ce,Te,R.dash,R.cap,ve,N,W,se,j):In(_,ce,Te,R.dash,R.cap,ve,N,W,se,Re,j),tt&&u.translate(-Ie,-Ie)}function In(_,y,R,N,W,j,se,ce,ve,Te,Re){let Ie=!1;ve!=0&&F.forEach((tt,St)=>{if(tt.series[0]==_){let _t=b[tt.series[1]],ct=e[tt.series[1]],Je=(_t._paths||sa).band;ns(Je)&&(Je=tt.dir==1?Je[0]:Je[1]);let He,Vt=null;_t.show&&Je&&am(ct,w,q)?(Vt=tt.fill(n,St)||j,He=_t._paths.clip):Je=null,ln(y,R,N,W,Vt,se,ce,ve,Te,Re,He,Je),Ie=!0}}),Ie||ln(y,R,N,W,j,se,ce,ve,Te,Re)}const on=Sr|$l;function ln(_,y,R,N,W,j,se,ce,ve,Te,Re,Ie){We(_,y,R,N,W),(ve||Te||Ie)&&(u.save(),ve&&u.clip(ve),Te&&u.clip(Te)),Ie?(ce&on)==on?(u.clip(Ie),Re&&u.clip(Re),Kn(W,se),Xi(_,j,y)):ce&$l?(Kn(W,se),u.clip(Ie),Xi(_,j,y)):ce&Sr&&(u.save(),u.clip(Ie),Re&&u.clip(Re),Kn(W,se),u.restore(),Xi(_,j,y)):(Kn(W,se),Xi(_,j,y)),(ve||Te||Ie)&&u.restore()}function Xi(_,y,R){R>0&&(y instanceof Map?y.forEach((N,W)=>{u.strokeStyle=Ue=W,u.stroke(N)}):y!=null&&_&&u.stroke(y))}function Kn(_,y){y instanceof Map?y.forEach((R,N)=>{u.fillStyle=we=N,u.fill(R)}):y!=null&&_&&u.fill(y)}function mp(_,y,R,N){let W=A[_],j;if(N<=0)j=[0,0];else{let se=W._space=W.space(n,_,y,R,N),ce=W._incrs=W.incrs(n,_,y,R,N,se);j=Ag(y,R,ce,N,se)}return W._found=j}function Ho(_,y,R,N,W,j,se,ce,ve,Te){let Re=se%2/2;M==1&&u.translate(Re,Re),We(ce,se,ve,Te,ce),u.beginPath();let Ie,tt,St,_t,ct=W+(N==0||N==3?-j:j);R==0?(tt=W,_t=ct):(Ie=W,St=ct);for(let Je=0;Je<_.length;Je++)y[Je]!=null&&(R==0?Ie=St=_[Je]:tt=_t=_[Je],u.moveTo(Ie,tt),u.lineTo(St,_t));u.stroke(),M==1&&u.translate(-Re,-Re)}function gp(_){let y=!0;return A.forEach((R,N)=>{if(!R.show)return;let W=E[R.scale];if(W.min==null){R._show&&(y=!1,R._show=!1,zs(!1));return}else R._show||(y=!1,R._show=!0,zs(!1));let j=R.side,se=j%2,{min:ce,max:ve}=W,[Te,Re]=mp(N,ce,ve,se==0?x:z);if(Re==0)return;let Ie=W.distr==2,tt=R._splits=R.splits(n,N,ce,ve,Te,Re,Ie),St=W.distr==2?tt.map(He=>Z[He]):tt,_t=W.distr==2?Z[tt[1]]-Z[tt[0]]:Te,ct=R._values=R.values(n,R.filter(n,St,N,Re,_t),N,Re,_t);R._rotate=j==2?R.rotate(n,ct,N,Re):0;let Je=R._size;R._size=ti(R.size(n,ct,N,_)),Je!=null&&R._size!=Je&&(y=!1)}),y}function _p(_){let y=!0;return ba.forEach((R,N)=>{let W=R(n,N,Di,_);W!=vi[N]&&(y=!1),vi[N]=W}),y}function vp(){for(let _=0;_<A.length;_++){let y=A[_];if(!y.show||!y._show)continue;let R=y.side,N=R%2,W,j,se=y.stroke(n,_),ce=R==0||R==3?-1:1,[ve,Te]=y._found;if(y.label!=null){let Cn=y.labelGap*ce,Wn=en((y._lpos+Cn)*yt);Ft(y.labelFont[0],se,"center",R==2?kr:zu),u.save(),N==1?(W=j=0,u.translate(Wn,en(le+ke/2)),u.rotate((R==3?-ao:ao)/2)):(W=en(Ae+Me/2),j=Wn);let gs=jf(y.label)?y.label(n,_,ve,Te):y.label;u.fillText(gs,W,j),u.restore()}if(Te==0)continue;let Re=E[y.scale],Ie=N==0?Me:ke,tt=N==0?Ae:le,St=y._splits,_t=Re.distr==2?St.map(Cn=>Z[Cn]):St,ct=Re.distr==2?Z[St[1]]-Z[St[0]]:ve,Je=y.ticks,He=y.border,Vt=Je.show?Je.size:0,qt=en(Vt*yt),fn=en((y.alignTo==2?y._size-Vt-y.gap:y.gap)*yt),Ct=y._rotate*-ao/180,Yt=m(y._pos*yt),Vn=(qt+fn)*ce,Rn=Yt+Vn;j=N==0?Rn:0,W=N==1?Rn:0;let Zn=y.font[0],ai=y.align==1?js:y.align==2?Jo:Ct>0?js:Ct<0?Jo:N==0?"center":R==3?Jo:js,Si=Ct||N==1?"middle":R==2?kr:zu;Ft(Zn,se,ai,Si);let Gn=y.font[1]*y.lineGap,Jn=St.map(Cn=>m(o(Cn,Re,Ie,tt))),oi=y._values;for(let Cn=0;Cn<oi.length;Cn++){let Wn=oi[Cn];if(Wn!=null){N==0?W=Jn[Cn]:j=Jn[Cn],Wn=""+Wn;let gs=Wn.indexOf(`
`)==-1?[Wn]:Wn.split(/\n/gm);for(let Pn=0;Pn<gs.length;Pn++){let Bu=gs[Pn];Ct?(u.save(),u.translate(W,j+Pn*Gn),u.rotate(Ct),u.fillText(Bu,0,0),u.restore()):u.fillText(Bu,W,j+Pn*Gn)}}}Je.show&&Ho(Jn,Je.filter(n,_t,_,Te,ct),N,R,Yt,qt,It(Je.width*yt,3),Je.stroke(n,_),Je.dash,Je.cap);let yi=y.grid;yi.show&&Ho(Jn,yi.filter(n,_t,_,Te,ct),N,N==0?2:1,N==0?le:Ae,N==0?ke:Me,It(yi.width*yt,3),yi.stroke(n,_),yi.dash,yi.cap),He.show&&Ho([Yt],[1],N==0?1:0,N==0?1:2,N==1?le:Ae,N==1?ke:Me,It(He.width*yt,3),He.stroke(n,_),He.dash,He.cap)}hn("drawAxes")}function zs(_){b.forEach((y,R)=>{R>0&&(y._paths=null,_&&(s==1?(y.min=null,y.max=null):y.facets.forEach(N=>{N.min=null,N.max=null})))})}let wa=!1,Vo=!1,Ir=[];function xp(){Vo=!1;for(let _=0;_<Ir.length;_++)hn(...Ir[_]);Ir.length=0}function Hs(){wa||(Mm(Mu),wa=!0)}function Mp(_,y=!1){wa=!0,Vo=y,_(n),Mu(),y&&Ir.length>0&&queueMicrotask(xp)}n.batch=Mp;function Mu(){if(Be&&(Wi(),Be=!1),Qe&&(Oe(),Qe=!1),ye){if(Gt(p,js,J),Gt(p,kr,ie),Gt(p,Zr,x),Gt(p,Jr,z),Gt(v,js,J),Gt(v,kr,ie),Gt(v,Zr,x),Gt(v,Jr,z),Gt(h,Zr,Mt),Gt(h,Jr,L),f.width=en(Mt*yt),f.height=en(L*yt),A.forEach(({_el:_,_show:y,_size:R,_pos:N,side:W})=>{if(_!=null)if(y){let j=W===3||W===0?R:0,se=W%2==1;Gt(_,se?"left":"top",N-j),Gt(_,se?"width":"height",R),Gt(_,se?"top":"left",se?ie:J),Gt(_,se?"height":"width",se?z:x),Gl(_,Ts)}else Yn(_,Ts)}),Ue=we=Xe=ze=rt=gt=Nt=At=Ye=null,it=1,Or(!0),J!=ne||ie!=Fe||x!=pe||z!=Le){zs(!1);let _=x/pe,y=z/Le;if(Ke&&!G&&fe.left>=0){fe.left*=_,fe.top*=y,Vs&&Ei(Vs,en(fe.left),0,x,z),Gs&&Ei(Gs,0,en(fe.top),x,z);for(let R=0;R<wn.length;R++){let N=wn[R];N!=null&&(Pi[R]*=_,ri[R]*=y,Ei(N,ti(Pi[R]),ti(ri[R]),x,z))}}if(Ht.show&&!me&&Ht.left>=0&&Ht.width>0){Ht.left*=_,Ht.width*=_,Ht.top*=y,Ht.height*=y;for(let R in $o)Gt(qs,R,Ht[R])}ne=J,Fe=ie,pe=x,Le=z}hn("setSize"),ye=!1}Mt>0&&L>0&&(u.clearRect(0,0,f.width,f.height),hn("drawClear"),O.forEach(_=>_()),hn("draw")),Ht.show&&me&&(Ta(Ht),me=!1),Ke&&G&&(ms(null,!0,!1),G=!1),he.show&&he.live&&_e&&(qo(),_e=!1),l||(l=!0,n.status=1,hn("ready")),Y=!1,wa=!1}n.redraw=(_,y)=>{Qe=y||!1,_!==!1?Yi(C,S.min,S.max):Hs()};function Go(_,y){let R=E[_];if(R.from==null){if(Jt==0){let N=R.range(n,y.min,y.max,_);y.min=N[0],y.max=N[1]}if(y.min>y.max){let N=y.min;y.min=y.max,y.max=N}if(Jt>1&&y.min!=null&&y.max!=null&&y.max-y.min<1e-16)return;_==C&&R.distr==2&&Jt>0&&(y.min=fi(y.min,e[0]),y.max=fi(y.max,e[0]),y.min==y.max&&y.max++),k[_]=y,Be=!0,Hs()}}n.setScale=Go;let Wo,Xo,Vs,Gs,Su,yu,Ws,Xs,Eu,bu,zt,Wt,qi=!1;const gn=fe.drag;let cn=gn.x,un=gn.y;Ke&&(fe.x&&(Wo=ei(Wp,v)),fe.y&&(Xo=ei(Xp,v)),S.ori==0?(Vs=Wo,Gs=Xo):(Vs=Xo,Gs=Wo),zt=fe.left,Wt=fe.top);const Ht=n.select=Zt({show:!0,over:!0,left:0,width:0,top:0,height:0},i.select),qs=Ht.show?ei(Gp,Ht.over?v:p):null;function Ta(_,y){if(Ht.show){for(let R in _)Ht[R]=_[R],R in $o&&Gt(qs,R,_[R]);y!==!1&&hn("setSelect")}}n.setSelect=Ta;function Sp(_){if(b[_].show)$e&&Gl(Se[_],Ts);else if($e&&Yn(Se[_],Ts),Ke){let R=_i?wn[0]:wn[_];R!=null&&Ei(R,-10,-10,x,z)}}function Yi(_,y,R){Go(_,{min:y,max:R})}function xi(_,y,R,N){y.focus!=null&&Tp(_),y.show!=null&&b.forEach((W,j)=>{j>0&&(_==j||_==null)&&(W.show=y.show,Sp(j),s==2?(Yi(W.facets[0].scale,null,null),Yi(W.facets[1].scale,null,null)):Yi(W.scale,null,null),Hs())}),R!==!1&&hn("setSeries",_,y),N&&Br("setSeries",n,_,y)}n.setSeries=xi;function yp(_,y){Zt(F[_],y)}function Ep(_,y){_.fill=ft(_.fill||null),_.dir=xt(_.dir,-1),y=y??F.length,F.splice(y,0,_)}function bp(_){_==null?F.length=0:F.splice(_,1)}n.addBand=Ep,n.setBand=yp,n.delBand=bp;function wp(_,y){b[_].alpha=y,Ke&&wn[_]!=null&&(wn[_].style.opacity=y),$e&&Se[_]&&(Se[_].style.opacity=y)}let Li,$i,ps;const Ys={focus:!0};function Tp(_){if(_!=ps){let y=_==null,R=Hn.alpha!=1;b.forEach((N,W)=>{if(s==1||W>0){let j=y||W==0||W==_;N._focus=y?null:j,R&&wp(W,j?1:Hn.alpha)}}),ps=_,R&&Hs()}}$e&&Un&&Ve(Wu,te,_=>{fe._lock||(mn(_),ps!=null&&xi(null,Ys,!0,jt.setSeries))});function Mi(_,y,R){let N=E[y];R&&(_=_/yt-(N.ori==1?ie:J));let W=x;N.ori==1&&(W=z,_=W-_),N.dir==-1&&(_=W-_);let j=N._min,se=N._max,ce=_/W,ve=j+(se-j)*ce,Te=N.distr;return Te==3?vr(10,ve):Te==4?lm(ve,N.asinh):Te==100?N.bwd(ve):ve}function Ap(_,y){let R=Mi(_,C,y);return fi(R,e[0],w,q)}n.valToIdx=_=>fi(_,e[0]),n.posToIdx=Ap,n.posToVal=Mi,n.valToPos=(_,y,R)=>E[y].ori==0?r(_,E[y],R?Me:x,R?Ae:0):a(_,E[y],R?ke:z,R?le:0),n.setCursor=(_,y,R)=>{zt=_.left,Wt=_.top,ms(null,y,R)};function wu(_,y){Gt(qs,js,Ht.left=_),Gt(qs,Zr,Ht.width=y)}function Tu(_,y){Gt(qs,kr,Ht.top=_),Gt(qs,Jr,Ht.height=y)}let Nr=S.ori==0?wu:Tu,Fr=S.ori==1?wu:Tu;function Rp(){if($e&&he.live)for(let _=s==2?1:0;_<b.length;_++){if(_==0&&B)continue;let y=he.values[_],R=0;for(let N in y)je[_][R++].firstChild.nodeValue=y[N]}}function qo(_,y){if(_!=null&&(_.idxs?_.idxs.forEach((R,N)=>{ue[N]=R}):fm(_.idx)||ue.fill(_.idx),he.idx=ue[0]),$e&&he.live){for(let R=0;R<b.length;R++)(R>0||s==1&&!B)&&Cp(R,ue[R]);Rp()}_e=!1,y!==!1&&hn("setLegend")}n.setLegend=qo;function Cp(_,y){let R=b[_],N=_==0&&P==2?Z:e[_],W;B?W=R.values(n,_,y)??pt:(W=R.value(n,y==null?null:N[y],_,y),W=W==null?pt:{_:W}),he.values[_]=W}function ms(_,y,R){Eu=zt,bu=Wt,[zt,Wt]=fe.move(n,zt,Wt),fe.left=zt,fe.top=Wt,Ke&&(Vs&&Ei(Vs,en(zt),0,x,z),Gs&&Ei(Gs,0,en(Wt),x,z));let N,W=w>q;Li=Ut,$i=null;let j=S.ori==0?x:z,se=S.ori==1?x:z;if(zt<0||Jt==0||W){N=fe.idx=null;for(let ce=0;ce<b.length;ce++){let ve=wn[ce];ve!=null&&Ei(ve,-10,-10,x,z)}Un&&xi(null,Ys,!0,_==null&&jt.setSeries),he.live&&(ue.fill(N),_e=!0)}else{let ce,ve,Te;s==1&&(ce=S.ori==0?zt:Wt,ve=Mi(ce,C),N=fe.idx=fi(ve,e[0],w,q),Te=I(e[0][N],S,j,0));let Re=-10,Ie=-10,tt=0,St=0,_t=!0,ct="",Je="";for(let He=s==2?1:0;He<b.length;He++){let Vt=b[He],qt=ue[He],fn=qt==null?null:s==1?e[He][qt]:e[He][1][qt],Ct=fe.dataIdx(n,He,N,ve),Yt=Ct==null?null:s==1?e[He][Ct]:e[He][1][Ct];if(_e=_e||Yt!=fn||Ct!=qt,ue[He]=Ct,He>0&&Vt.show){let Vn=Ct==null?-10:Ct==N?Te:I(s==1?e[0][Ct]:e[He][0][Ct],S,j,0),Rn=Yt==null?-10:V(Yt,s==1?E[Vt.scale]:E[Vt.facets[1].scale],se,0);if(Un&&Yt!=null){let Zn=S.ori==1?zt:Wt,ai=tn(Hn.dist(n,He,Ct,Rn,Zn));if(ai<Li){let Si=Hn.bias;if(Si!=0){let Gn=Mi(Zn,Vt.scale),Jn=Yt>=0?1:-1,oi=Gn>=0?1:-1;oi==Jn&&(oi==1?Si==1?Yt>=Gn:Yt<=Gn:Si==1?Yt<=Gn:Yt>=Gn)&&(Li=ai,$i=He)}else Li=ai,$i=He}}if(_e||_i){let Zn,ai;S.ori==0?(Zn=Vn,ai=Rn):(Zn=Rn,ai=Vn);let Si,Gn,Jn,oi,yi,Cn,Wn=!0,gs=Lt.bbox;if(gs!=null){Wn=!1;let Pn=gs(n,He);Jn=Pn.left,oi=Pn.top,Si=Pn.width,Gn=Pn.height}else Jn=Zn,oi=ai,Si=Gn=Lt.size(n,He);if(Cn=Lt.fill(n,He),yi=Lt.stroke(n,He),_i)He==$i&&Li<=Hn.prox&&(Re=Jn,Ie=oi,tt=Si,St=Gn,_t=Wn,ct=Cn,Je=yi);else{let Pn=wn[He];Pn!=null&&(Pi[He]=Jn,ri[He]=oi,Zu(Pn,Si,Gn,Wn),ju(Pn,Cn,yi),Ei(Pn,ti(Jn),ti(oi),x,z))}}}}if(_i){let He=Hn.prox,Vt=ps==null?Li<=He:Li>He||$i!=ps;if(_e||Vt){let qt=wn[0];qt!=null&&(Pi[0]=Re,ri[0]=Ie,Zu(qt,tt,St,_t),ju(qt,ct,Je),Ei(qt,ti(Re),ti(Ie),x,z))}}}if(Ht.show&&qi)if(_!=null){let[ce,ve]=jt.scales,[Te,Re]=jt.match,[Ie,tt]=_.cursor.sync.scales,St=_.cursor.drag;if(cn=St._x,un=St._y,cn||un){let{left:_t,top:ct,width:Je,height:He}=_.select,Vt=_.scales[Ie].ori,qt=_.posToVal,fn,Ct,Yt,Vn,Rn,Zn=ce!=null&&Te(ce,Ie),ai=ve!=null&&Re(ve,tt);Zn&&cn?(Vt==0?(fn=_t,Ct=Je):(fn=ct,Ct=He),Yt=E[ce],Vn=I(qt(fn,Ie),Yt,j,0),Rn=I(qt(fn+Ct,Ie),Yt,j,0),Nr(di(Vn,Rn),tn(Rn-Vn))):Nr(0,j),ai&&un?(Vt==1?(fn=_t,Ct=Je):(fn=ct,Ct=He),Yt=E[ve],Vn=V(qt(fn,tt),Yt,se,0),Rn=V(qt(fn+Ct,tt),Yt,se,0),Fr(di(Vn,Rn),tn(Rn-Vn))):Fr(0,se)}else jo()}else{let ce=tn(Eu-Su),ve=tn(bu-yu);if(S.ori==1){let tt=ce;ce=ve,ve=tt}cn=gn.x&&ce>=gn.dist,un=gn.y&&ve>=gn.dist;let Te=gn.uni;Te!=null?cn&&un&&(cn=ce>=Te,un=ve>=Te,!cn&&!un&&(ve>ce?un=!0:cn=!0)):gn.x&&gn.y&&(cn||un)&&(cn=un=!0);let Re,Ie;cn&&(S.ori==0?(Re=Ws,Ie=zt):(Re=Xs,Ie=Wt),Nr(di(Re,Ie),tn(Ie-Re)),un||Fr(0,se)),un&&(S.ori==1?(Re=Ws,Ie=zt):(Re=Xs,Ie=Wt),Fr(di(Re,Ie),tn(Ie-Re)),cn||Nr(0,j)),!cn&&!un&&(Nr(0,0),Fr(0,0))}if(gn._x=cn,gn._y=un,_==null){if(R){if(Ou!=null){let[ce,ve]=jt.scales;jt.values[0]=ce!=null?Mi(S.ori==0?zt:Wt,ce):null,jt.values[1]=ve!=null?Mi(S.ori==1?zt:Wt,ve):null}Br(Qo,n,zt,Wt,x,z,N)}if(Un){let ce=R&&jt.setSeries,ve=Hn.prox;ps==null?Li<=ve&&xi($i,Ys,!0,ce):Li>ve?xi(null,Ys,!0,ce):$i!=ps&&xi($i,Ys,!0,ce)}}_e&&(he.idx=N,qo()),y!==!1&&hn("setCursor")}let ji=null;Object.defineProperty(n,"rect",{get(){return ji==null&&Or(!1),ji}});function Or(_=!1){_?ji=null:(ji=v.getBoundingClientRect(),hn("syncRect",ji))}function Au(_,y,R,N,W,j,se){fe._lock||qi&&_!=null&&_.movementX==0&&_.movementY==0||(Yo(_,y,R,N,W,j,se,!1,_!=null),_!=null?ms(null,!0,!0):ms(y,!0,!1))}function Yo(_,y,R,N,W,j,se,ce,ve){if(ji==null&&Or(!1),mn(_),_!=null)R=_.clientX-ji.left,N=_.clientY-ji.top;else{if(R<0||N<0){zt=-10,Wt=-10;return}let[Te,Re]=jt.scales,Ie=y.cursor.sync,[tt,St]=Ie.values,[_t,ct]=Ie.scales,[Je,He]=jt.match,Vt=y.axes[0].side%2==1,qt=S.ori==0?x:z,fn=S.ori==1?x:z,Ct=Vt?j:W,Yt=Vt?W:j,Vn=Vt?N:R,Rn=Vt?R:N;if(_t!=null?R=Je(Te,_t)?o(tt,E[Te],qt,0):-10:R=qt*(Vn/Ct),ct!=null?N=He(Re,ct)?o(St,E[Re],fn,0):-10:N=fn*(Rn/Yt),S.ori==1){let Zn=R;R=N,N=Zn}}ve&&(y==null||y.cursor.event.type==Qo)&&((R<=1||R>=x-1)&&(R=Es(R,x)),(N<=1||N>=z-1)&&(N=Es(N,z))),ce?(Su=R,yu=N,[Ws,Xs]=fe.move(n,R,N)):(zt=R,Wt=N)}const $o={width:0,height:0,left:0,top:0};function jo(){Ta($o,!1)}let Ru,Cu,Pu,Du;function Lu(_,y,R,N,W,j,se){qi=!0,cn=un=gn._x=gn._y=!1,Yo(_,y,R,N,W,j,se,!0,!1),_!=null&&(Ve(el,Hl,Uu,!1),Br(Vu,n,Ws,Xs,x,z,null));let{left:ce,top:ve,width:Te,height:Re}=Ht;Ru=ce,Cu=ve,Pu=Te,Du=Re}function Uu(_,y,R,N,W,j,se){qi=gn._x=gn._y=!1,Yo(_,y,R,N,W,j,se,!1,!0);let{left:ce,top:ve,width:Te,height:Re}=Ht,Ie=Te>0||Re>0,tt=Ru!=ce||Cu!=ve||Pu!=Te||Du!=Re;if(Ie&&tt&&Ta(Ht),gn.setScale&&Ie&&tt){let St=ce,_t=Te,ct=ve,Je=Re;if(S.ori==1&&(St=ve,_t=Re,ct=ce,Je=Te),cn&&Yi(C,Mi(St,C),Mi(St+_t,C)),un)for(let He in E){let Vt=E[He];He!=C&&Vt.from==null&&Vt.min!=Ut&&Yi(He,Mi(ct+Je,He),Mi(ct,He))}jo()}else fe.lock&&(fe._lock=!fe._lock,ms(y,!0,_!=null));_!=null&&(kt(el,Hl),Br(el,n,zt,Wt,x,z,null))}function Pp(_,y,R,N,W,j,se){if(fe._lock)return;mn(_);let ce=qi;if(qi){let ve=!0,Te=!0,Re=10,Ie,tt;S.ori==0?(Ie=cn,tt=un):(Ie=un,tt=cn),Ie&&tt&&(ve=zt<=Re||zt>=x-Re,Te=Wt<=Re||Wt>=z-Re),Ie&&ve&&(zt=zt<Ws?0:x),tt&&Te&&(Wt=Wt<Xs?0:z),ms(null,!0,!0),qi=!1}zt=-10,Wt=-10,ue.fill(null),ms(null,!0,!0),ce&&(qi=ce)}function Iu(_,y,R,N,W,j,se){fe._lock||(mn(_),Ee(),jo(),_!=null&&Br(Xu,n,zt,Wt,x,z,null))}function Nu(){A.forEach(Rg),De(n.width,n.height,!0)}Ls(go,dr,Nu);const $s={};$s.mousedown=Lu,$s.mousemove=Au,$s.mouseup=Uu,$s.dblclick=Iu,$s.setSeries=(_,y,R,N)=>{let W=jt.match[2];R=W(n,y,R),R!=-1&&xi(R,N,!0,!1)},Ke&&(Ve(Vu,v,Lu),Ve(Qo,v,Au),Ve(Gu,v,_=>{mn(_),Or(!1)}),Ve(Wu,v,Pp),Ve(Xu,v,Iu),jl.add(n),n.syncRect=Or);const Aa=n.hooks=i.hooks||{};function hn(_,y,R){Vo?Ir.push([_,y,R]):_ in Aa&&Aa[_].forEach(N=>{N.call(null,n,y,R)})}(i.plugins||[]).forEach(_=>{for(let y in _.hooks)Aa[y]=(Aa[y]||[]).concat(_.hooks[y])});const Fu=(_,y,R)=>R,jt=Zt({key:null,setSeries:!1,filters:{pub:nh,sub:nh},scales:[C,b[1]?b[1].scale:null],match:[ih,ih,Fu],values:[null,null]},fe.sync);jt.match.length==2&&jt.match.push(Fu),fe.sync=jt;const Ou=jt.key,Ko=xd(Ou);function Br(_,y,R,N,W,j,se){jt.filters.pub(_,y,R,N,W,j,se)&&Ko.pub(_,y,R,N,W,j,se)}Ko.sub(n);function Dp(_,y,R,N,W,j,se){jt.filters.sub(_,y,R,N,W,j,se)&&$s[_](null,y,R,N,W,j,se)}n.pub=Dp;function Lp(){Ko.unsub(n),jl.delete(n),Pe.clear(),Wl(go,dr,Nu),c.remove(),te?.remove(),hn("destroy")}n.destroy=Lp;function Zo(){hn("init",i,e),ge(e||i.data,!1),k[C]?Go(C,k[C]):Ee(),me=Ht.show&&(Ht.width>0||Ht.height>0),G=_e=!0,De(i.width,i.height)}return b.forEach(hs),A.forEach(zo),t?t instanceof HTMLElement?(t.appendChild(c),Zo()):t(n,Zo):Zo(),n}bn.assign=Zt;bn.fmtNum=jc;bn.rangeNum=_o;bn.rangeLog=Ao;bn.rangeAsinh=Yc;bn.orient=Os;bn.pxRatio=yt;bn.join=xm;bn.fmtDate=Zc,bn.tzDate=Pm;bn.sync=xd;{bn.addGap=fg,bn.clipGaps=Po;let i=bn.paths={points:wd};i.linear=Ad,i.stepped=mg,i.bars=gg,i.spline=vg}const Cg=["#00224e","#002e6a","#1a386f","#32436d","#434e6c","#535a6d","#61656f","#6f7073","#7d7c78","#8c8878","#9b9476","#aba072","#bcae6c","#cdbb63","#dec958","#f0d846","#fee838"],Pg=["#301437","#45135c","#592a8f","#5e51ad","#6276ba","#7297c1","#95b5c7","#c4ced4","#e2d9e2","#d8c7be","#cca389","#c27c63","#b25652","#983550","#741e4f","#4a1342","#2f1436"];function Dd(i){const e=new Uint8ClampedArray(768),t=i.map(n=>[1,3,5].map(s=>parseInt(n.slice(s,s+2),16)));for(let n=0;n<256;n++){const s=n/255*(t.length-1),r=Math.min(t.length-2,Math.floor(s));for(let a=0;a<3;a++)e[3*n+a]=t[r][a]+(s-r)*(t[r+1][a]-t[r][a])}return e}const rs=Dd(Cg),Dg=Dd(Pg);function su(i,e,t){return i===null||!Number.isFinite(i)?-1:Math.max(0,Math.min(255,Math.round(255*(i-e)/(t-e))))}function En(){const i=getComputedStyle(document.documentElement),e=t=>i.getPropertyValue(t).trim();return{co:e("--co"),cross:e("--cross"),other:e("--other"),ink:e("--ink"),quiet:e("--quiet"),grid:e("--grid"),paper:e("--paper"),good:e("--good"),band:e("--band"),bad:e("--bad"),focus:e("--focus")}}class xo{element=U("div",{class:"chart"});plot=null;key="";marks=[];picked;width=0;again=null;constructor(){new ResizeObserver(()=>{this.again&&this.room()!==this.width&&this.again()}).observe(this.element)}room(){return Math.max(280,this.element.clientWidth||600)}draw(e,t,n){const s=En(),r=this.width=this.room();this.again=()=>this.draw(e,t,n),this.marks=n.marks??[],this.picked=n.picked;const a=JSON.stringify([t.map(c=>[c.name,c.colour]),{...n,marks:0},r,s.paper]),o=[e,...t.map(c=>c.values)];if(this.plot&&a===this.key){this.plot.setData(o);return}this.plot?.destroy(),qe(this.element),this.key=a;const l={stroke:s.quiet,grid:{stroke:s.grid,width:1},ticks:{stroke:s.grid,width:1},font:"12px system-ui",labelFont:"12px system-ui"};this.plot=new bn({width:r,height:n.height??300,scales:{x:{time:!1,range:n.xRange},y:{range:n.range}},axes:[{...l,label:n.x},{...l,label:n.y,size:58}],cursor:{drag:{x:!0,y:!0}},hooks:{draw:[c=>this.mark(c)],ready:[c=>this.listen(c)]},series:[{label:n.x,value:(c,f)=>f===null?"":f.toFixed(2)},...t.map(c=>({label:c.name,stroke:c.colour,width:c.width??1.6,dash:c.dash,points:{show:c.points??!1,size:5},spanGaps:!1,value:(f,u)=>u===null?"-":u.toFixed(2)}))]},o,this.element)}mark(e){const t=e.ctx,{left:n,top:s,width:r,height:a}=e.bbox,o=window.devicePixelRatio||1;t.save(),t.beginPath(),t.rect(n,s,r,a),t.clip(),t.font=`${12*o}px system-ui`,t.textBaseline="top",t.textAlign="left",t.lineWidth=o,this.marks.forEach((l,c)=>{const f=e.valToPos(l.at,"x",!0);t.fillStyle=t.strokeStyle=l.colour,l.to!==void 0&&(t.globalAlpha=.18,t.fillRect(f,s,e.valToPos(l.to,"x",!0)-f,a),t.globalAlpha=1),t.setLineDash([4*o,4*o]),t.beginPath(),t.moveTo(f,s),t.lineTo(f,s+a),t.stroke(),l.text&&t.fillText(l.text,f+4*o,s+(4+14*(c%4))*o)}),t.restore()}listen(e){let t=[0,0];e.over.addEventListener("pointerdown",n=>{t=[n.clientX,n.clientY]}),e.over.addEventListener("click",n=>{Math.hypot(n.clientX-t[0],n.clientY-t[1])<4&&this.picked?.(e.posToVal(n.clientX-e.over.getBoundingClientRect().left,"x"))})}}function Ld(i,e,t){const n=window.devicePixelRatio||1;i.width=Math.round(e*n),i.height=Math.round(t*n);const s=i.getContext("2d");return s.setTransform(n,0,0,n,0,0),s.clearRect(0,0,e,t),s.font="12px system-ui",s}function Lg(i,e,t,n,s){const r=i.clientWidth||420,a=Math.min(r,460),o=En(),l=Ld(i,r,a),c=r/2,f=a/2,u=Math.min(r,a)/2-26;l.strokeStyle=o.grid,l.fillStyle=o.quiet,l.lineWidth=1;for(let h=0;h<s;h+=10)l.beginPath(),l.arc(c,f,u*(1-h/s),0,2*Math.PI),l.stroke(),h&&l.fillText(`${(n-h).toFixed(0)}`,c+4,f-u*(1-h/s)+12);l.textAlign="center",l.textBaseline="middle";for(let h=0;h<360;h+=30){const p=Math.sin(h*Math.PI/180),v=-Math.cos(h*Math.PI/180);l.beginPath(),l.moveTo(c,f),l.lineTo(c+u*p,f+u*v),l.stroke(),l.fillText(`${h>180?h-360:h}°`,c+(u+15)*p,f+(u+13)*v)}l.textAlign="left",l.textBaseline="alphabetic";for(const h of t){l.strokeStyle=h.colour,l.lineWidth=h.width??1.8,l.setLineDash(h.dash??[]),l.beginPath();let p=!1;e.forEach((v,M)=>{const m=h.values[M];if(m===null){p=!1;return}const d=u*Math.max(0,1-(n-m)/s),b=c+d*Math.sin(v*Math.PI/180),A=f-d*Math.cos(v*Math.PI/180);p?l.lineTo(b,A):l.moveTo(b,A),p=!0}),l.stroke()}l.setLineDash([]),t.forEach((h,p)=>{l.fillStyle=h.colour,l.fillText(h.name,6,14+15*p)}),l.fillStyle=o.quiet,l.fillText(`rings: 10 dB, rim ${n.toFixed(1)} dBi`,6,a-6)}class ra{canvas=U("canvas",{class:"map",attrs:{role:"img"}});said=U("div",{class:"small quiet mono"}," ");element=U("div",{},this.canvas,this.said);image=document.createElement("canvas");last=null;constructor(e){this.canvas.setAttribute("aria-label",e),this.canvas.addEventListener("pointermove",t=>this.say(t)),new ResizeObserver(()=>{if(!this.last)return;const{rows:t,columns:n,values:s,options:r,width:a}=this.last;this.room()!==a&&this.draw(t,n,s,r)}).observe(this.canvas)}room(){return this.canvas.clientWidth||480}draw(e,t,n,s){const r=s.ramp??rs,a=this.room(),o=48,l=38,c=62,f=22,u=a-o-c,h=s.height??Math.round(s.square?u:Math.min(360,Math.max(140,u*e.length/t.length)));this.canvas.style.height=`${h+f+l}px`;const p=Ld(this.canvas,a,h+f+l),v=En();(this.image.width!==t.length||this.image.height!==e.length)&&(this.image.width=t.length,this.image.height=e.length);const M=this.image.getContext("2d"),m=M.createImageData(t.length,e.length);for(let d=0;d<e.length;d++)for(let b=0;b<t.length;b++){const A=su(n[d*t.length+b],s.low,s.high),E=4*((s.flip?e.length-1-d:d)*t.length+b);A<0||(m.data[E]=r[3*A],m.data[E+1]=r[3*A+1],m.data[E+2]=r[3*A+2],m.data[E+3]=255)}M.putImageData(m,0,0),p.imageSmoothingEnabled=!1,p.drawImage(this.image,o,f,u,h),p.strokeStyle=v.quiet,p.strokeRect(o,f,u,h),p.fillStyle=v.quiet,p.textAlign="center";for(const d of wh(t[0],t[t.length-1]))p.fillText(Hr(d),o+(d-t[0])/(t[t.length-1]-t[0])*u,f+h+14);p.textAlign="right",p.textBaseline="middle";for(const d of wh(e[0],e[e.length-1])){const b=(d-e[0])/(e[e.length-1]-e[0]);p.fillText(Hr(d),o-5,f+(s.flip?1-b:b)*h)}p.textAlign="center",p.textBaseline="alphabetic",p.fillText(s.columnName,o+u/2,f+h+31),p.save(),p.translate(12,f+h/2),p.rotate(-Math.PI/2),p.fillText(s.rowName,0,0),p.restore();for(let d=0;d<256;d++)p.fillStyle=`rgb(${r[3*d]} ${r[3*d+1]} ${r[3*d+2]})`,p.fillRect(o+u+10,f+h*(1-(d+1)/256),12,h/256+1);p.fillStyle=v.quiet,p.textAlign="left";for(const d of[0,.5,1])p.fillText(Hr(s.low+d*(s.high-s.low)),o+u+25,f+h*(1-d)+(d===1?10:d===0?0:4));p.fillText(s.unit,o+u+10,f-8),this.last={rows:e,columns:t,values:n,options:s,box:[o,f,u,h],width:a}}say(e){if(!this.last)return;const{rows:t,columns:n,values:s,options:r,box:a}=this.last,o=this.canvas.getBoundingClientRect(),l=(e.clientX-o.left-a[0])/a[2],c=(e.clientY-o.top-a[1])/a[3];if(l<0||l>=1||c<0||c>=1){qe(this.said," ");return}const f=Math.floor(l*n.length),u=Math.floor((r.flip?1-c:c)*t.length),h=s[u*n.length+f];qe(this.said,`${r.rowName} ${Hr(t[u])}, ${r.columnName} ${Hr(n[f])}: ${h===null||Number.isNaN(h)?"not measured":`${h.toFixed(2)} ${r.unit}`}`)}}function wh(i,e){const t=Math.abs(e-i),n=[.1,.2,.5,1,2,5,10,15,30,45,60,90].find(a=>t/a<=8)??t/4,s=Math.min(i,e),r=[];for(let a=Math.ceil(s/n-1e-9)*n;a<=s+t+1e-9;a+=n)r.push(Math.round(a*1e6)/1e6);return r}function Hr(i){return Math.abs(i)>=10||Number.isInteger(i)?i.toFixed(0):i.toFixed(2)}/**
 * @license
 * Copyright 2010-2025 Three.js Authors
 * SPDX-License-Identifier: MIT
 */const ru="180",pr={ROTATE:0,DOLLY:1,PAN:2},hr={ROTATE:0,PAN:1,DOLLY_PAN:2,DOLLY_ROTATE:3},Ug=0,Th=1,Ig=2,Ud=1,Ng=2,Bi=3,cs=0,Bn=1,ki=2,as=0,mr=1,Ah=2,Rh=3,Ch=4,Fg=5,As=100,Og=101,Bg=102,kg=103,zg=104,Hg=200,Vg=201,Gg=202,Wg=203,Zl=204,Jl=205,Xg=206,qg=207,Yg=208,$g=209,jg=210,Kg=211,Zg=212,Jg=213,Qg=214,Ql=0,ec=1,tc=2,yr=3,nc=4,ic=5,sc=6,rc=7,au=0,e_=1,t_=2,os=0,n_=1,i_=2,s_=3,r_=4,a_=5,o_=6,l_=7,Id=300,Er=301,br=302,ac=303,oc=304,Io=306,lc=1e3,Ps=1001,cc=1002,gi=1003,c_=1004,Da=1005,wi=1006,rl=1007,Ds=1008,Ri=1009,Nd=1010,Fd=1011,oa=1012,ou=1013,Is=1014,zi=1015,ma=1016,lu=1017,cu=1018,la=1020,Od=35902,Bd=35899,kd=1021,zd=1022,mi=1023,ca=1026,ua=1027,Hd=1028,uu=1029,Vd=1030,hu=1031,fu=1033,oo=33776,lo=33777,co=33778,uo=33779,uc=35840,hc=35841,fc=35842,dc=35843,pc=36196,mc=37492,gc=37496,_c=37808,vc=37809,xc=37810,Mc=37811,Sc=37812,yc=37813,Ec=37814,bc=37815,wc=37816,Tc=37817,Ac=37818,Rc=37819,Cc=37820,Pc=37821,Dc=36492,Lc=36494,Uc=36495,Ic=36283,Nc=36284,Fc=36285,Oc=36286,u_=3200,h_=3201,Gd=0,f_=1,ss="",ni="srgb",wr="srgb-linear",Mo="linear",Pt="srgb",Ks=7680,Ph=519,d_=512,p_=513,m_=514,Wd=515,g_=516,__=517,v_=518,x_=519,Dh=35044,Lh="300 es",Ti=2e3,So=2001;class Bs{addEventListener(e,t){this._listeners===void 0&&(this._listeners={});const n=this._listeners;n[e]===void 0&&(n[e]=[]),n[e].indexOf(t)===-1&&n[e].push(t)}hasEventListener(e,t){const n=this._listeners;return n===void 0?!1:n[e]!==void 0&&n[e].indexOf(t)!==-1}removeEventListener(e,t){const n=this._listeners;if(n===void 0)return;const s=n[e];if(s!==void 0){const r=s.indexOf(t);r!==-1&&s.splice(r,1)}}dispatchEvent(e){const t=this._listeners;if(t===void 0)return;const n=t[e.type];if(n!==void 0){e.target=this;const s=n.slice(0);for(let r=0,a=s.length;r<a;r++)s[r].call(this,e);e.target=null}}}const Mn=["00","01","02","03","04","05","06","07","08","09","0a","0b","0c","0d","0e","0f","10","11","12","13","14","15","16","17","18","19","1a","1b","1c","1d","1e","1f","20","21","22","23","24","25","26","27","28","29","2a","2b","2c","2d","2e","2f","30","31","32","33","34","35","36","37","38","39","3a","3b","3c","3d","3e","3f","40","41","42","43","44","45","46","47","48","49","4a","4b","4c","4d","4e","4f","50","51","52","53","54","55","56","57","58","59","5a","5b","5c","5d","5e","5f","60","61","62","63","64","65","66","67","68","69","6a","6b","6c","6d","6e","6f","70","71","72","73","74","75","76","77","78","79","7a","7b","7c","7d","7e","7f","80","81","82","83","84","85","86","87","88","89","8a","8b","8c","8d","8e","8f","90","91","92","93","94","95","96","97","98","99","9a","9b","9c","9d","9e","9f","a0","a1","a2","a3","a4","a5","a6","a7","a8","a9","aa","ab","ac","ad","ae","af","b0","b1","b2","b3","b4","b5","b6","b7","b8","b9","ba","bb","bc","bd","be","bf","c0","c1","c2","c3","c4","c5","c6","c7","c8","c9","ca","cb","cc","cd","ce","cf","d0","d1","d2","d3","d4","d5","d6","d7","d8","d9","da","db","dc","dd","de","df","e0","e1","e2","e3","e4","e5","e6","e7","e8","e9","ea","eb","ec","ed","ee","ef","f0","f1","f2","f3","f4","f5","f6","f7","f8","f9","fa","fb","fc","fd","fe","ff"],ho=Math.PI/180,Bc=180/Math.PI;function ga(){const i=Math.random()*4294967295|0,e=Math.random()*4294967295|0,t=Math.random()*4294967295|0,n=Math.random()*4294967295|0;return(Mn[i&255]+Mn[i>>8&255]+Mn[i>>16&255]+Mn[i>>24&255]+"-"+Mn[e&255]+Mn[e>>8&255]+"-"+Mn[e>>16&15|64]+Mn[e>>24&255]+"-"+Mn[t&63|128]+Mn[t>>8&255]+"-"+Mn[t>>16&255]+Mn[t>>24&255]+Mn[n&255]+Mn[n>>8&255]+Mn[n>>16&255]+Mn[n>>24&255]).toLowerCase()}function ut(i,e,t){return Math.max(e,Math.min(t,i))}function M_(i,e){return(i%e+e)%e}function al(i,e,t){return(1-t)*i+t*e}function Vr(i,e){switch(e.constructor){case Float32Array:return i;case Uint32Array:return i/4294967295;case Uint16Array:return i/65535;case Uint8Array:return i/255;case Int32Array:return Math.max(i/2147483647,-1);case Int16Array:return Math.max(i/32767,-1);case Int8Array:return Math.max(i/127,-1);default:throw new Error("Invalid component type.")}}function Nn(i,e){switch(e.constructor){case Float32Array:return i;case Uint32Array:return Math.round(i*4294967295);case Uint16Array:return Math.round(i*65535);case Uint8Array:return Math.round(i*255);case Int32Array:return Math.round(i*2147483647);case Int16Array:return Math.round(i*32767);case Int8Array:return Math.round(i*127);default:throw new Error("Invalid component type.")}}const S_={DEG2RAD:ho};class nt{constructor(e=0,t=0){nt.prototype.isVector2=!0,this.x=e,this.y=t}get width(){return this.x}set width(e){this.x=e}get height(){return this.y}set height(e){this.y=e}set(e,t){return this.x=e,this.y=t,this}setScalar(e){return this.x=e,this.y=e,this}setX(e){return this.x=e,this}setY(e){return this.y=e,this}setComponent(e,t){switch(e){case 0:this.x=t;break;case 1:this.y=t;break;default:throw new Error("index is out of range: "+e)}return this}getComponent(e){switch(e){case 0:return this.x;case 1:return this.y;default:throw new Error("index is out of range: "+e)}}clone(){return new this.constructor(this.x,this.y)}copy(e){return this.x=e.x,this.y=e.y,this}add(e){return this.x+=e.x,this.y+=e.y,this}addScalar(e){return this.x+=e,this.y+=e,this}addVectors(e,t){return this.x=e.x+t.x,this.y=e.y+t.y,this}addScaledVector(e,t){return this.x+=e.x*t,this.y+=e.y*t,this}sub(e){return this.x-=e.x,this.y-=e.y,this}subScalar(e){return this.x-=e,this.y-=e,this}subVectors(e,t){return this.x=e.x-t.x,this.y=e.y-t.y,this}multiply(e){return this.x*=e.x,this.y*=e.y,this}multiplyScalar(e){return this.x*=e,this.y*=e,this}divide(e){return this.x/=e.x,this.y/=e.y,this}divideScalar(e){return this.multiplyScalar(1/e)}applyMatrix3(e){const t=this.x,n=this.y,s=e.elements;return this.x=s[0]*t+s[3]*n+s[6],this.y=s[1]*t+s[4]*n+s[7],this}min(e){return this.x=Math.min(this.x,e.x),this.y=Math.min(this.y,e.y),this}max(e){return this.x=Math.max(this.x,e.x),this.y=Math.max(this.y,e.y),this}clamp(e,t){return this.x=ut(this.x,e.x,t.x),this.y=ut(this.y,e.y,t.y),this}clampScalar(e,t){return this.x=ut(this.x,e,t),this.y=ut(this.y,e,t),this}clampLength(e,t){const n=this.length();return this.divideScalar(n||1).multiplyScalar(ut(n,e,t))}floor(){return this.x=Math.floor(this.x),this.y=Math.floor(this.y),this}ceil(){return this.x=Math.ceil(this.x),this.y=Math.ceil(this.y),this}round(){return this.x=Math.round(this.x),this.y=Math.round(this.y),this}roundToZero(){return this.x=Math.trunc(this.x),this.y=Math.trunc(this.y),this}negate(){return this.x=-this.x,this.y=-this.y,this}dot(e){return this.x*e.x+this.y*e.y}cross(e){return this.x*e.y-this.y*e.x}lengthSq(){return this.x*this.x+this.y*this.y}length(){return Math.sqrt(this.x*this.x+this.y*this.y)}manhattanLength(){return Math.abs(this.x)+Math.abs(this.y)}normalize(){return this.divideScalar(this.length()||1)}angle(){return Math.atan2(-this.y,-this.x)+Math.PI}angleTo(e){const t=Math.sqrt(this.lengthSq()*e.lengthSq());if(t===0)return Math.PI/2;const n=this.dot(e)/t;return Math.acos(ut(n,-1,1))}distanceTo(e){return Math.sqrt(this.distanceToSquared(e))}distanceToSquared(e){const t=this.x-e.x,n=this.y-e.y;return t*t+n*n}manhattanDistanceTo(e){return Math.abs(this.x-e.x)+Math.abs(this.y-e.y)}setLength(e){return this.normalize().multiplyScalar(e)}lerp(e,t){return this.x+=(e.x-this.x)*t,this.y+=(e.y-this.y)*t,this}lerpVectors(e,t,n){return this.x=e.x+(t.x-e.x)*n,this.y=e.y+(t.y-e.y)*n,this}equals(e){return e.x===this.x&&e.y===this.y}fromArray(e,t=0){return this.x=e[t],this.y=e[t+1],this}toArray(e=[],t=0){return e[t]=this.x,e[t+1]=this.y,e}fromBufferAttribute(e,t){return this.x=e.getX(t),this.y=e.getY(t),this}rotateAround(e,t){const n=Math.cos(t),s=Math.sin(t),r=this.x-e.x,a=this.y-e.y;return this.x=r*n-a*s+e.x,this.y=r*s+a*n+e.y,this}random(){return this.x=Math.random(),this.y=Math.random(),this}*[Symbol.iterator](){yield this.x,yield this.y}}class Ns{constructor(e=0,t=0,n=0,s=1){this.isQuaternion=!0,this._x=e,this._y=t,this._z=n,this._w=s}static slerpFlat(e,t,n,s,r,a,o){let l=n[s+0],c=n[s+1],f=n[s+2],u=n[s+3];const h=r[a+0],p=r[a+1],v=r[a+2],M=r[a+3];if(o===0){e[t+0]=l,e[t+1]=c,e[t+2]=f,e[t+3]=u;return}if(o===1){e[t+0]=h,e[t+1]=p,e[t+2]=v,e[t+3]=M;return}if(u!==M||l!==h||c!==p||f!==v){let m=1-o;const d=l*h+c*p+f*v+u*M,b=d>=0?1:-1,A=1-d*d;if(A>Number.EPSILON){const F=Math.sqrt(A),C=Math.atan2(F,d*b);m=Math.sin(m*C)/F,o=Math.sin(o*C)/F}const E=o*b;if(l=l*m+h*E,c=c*m+p*E,f=f*m+v*E,u=u*m+M*E,m===1-o){const F=1/Math.sqrt(l*l+c*c+f*f+u*u);l*=F,c*=F,f*=F,u*=F}}e[t]=l,e[t+1]=c,e[t+2]=f,e[t+3]=u}static multiplyQuaternionsFlat(e,t,n,s,r,a){const o=n[s],l=n[s+1],c=n[s+2],f=n[s+3],u=r[a],h=r[a+1],p=r[a+2],v=r[a+3];return e[t]=o*v+f*u+l*p-c*h,e[t+1]=l*v+f*h+c*u-o*p,e[t+2]=c*v+f*p+o*h-l*u,e[t+3]=f*v-o*u-l*h-c*p,e}get x(){return this._x}set x(e){this._x=e,this._onChangeCallback()}get y(){return this._y}set y(e){this._y=e,this._onChangeCallback()}get z(){return this._z}set z(e){this._z=e,this._onChangeCallback()}get w(){return this._w}set w(e){this._w=e,this._onChangeCallback()}set(e,t,n,s){return this._x=e,this._y=t,this._z=n,this._w=s,this._onChangeCallback(),this}clone(){return new this.constructor(this._x,this._y,this._z,this._w)}copy(e){return this._x=e.x,this._y=e.y,this._z=e.z,this._w=e.w,this._onChangeCallback(),this}setFromEuler(e,t=!0){const n=e._x,s=e._y,r=e._z,a=e._order,o=Math.cos,l=Math.sin,c=o(n/2),f=o(s/2),u=o(r/2),h=l(n/2),p=l(s/2),v=l(r/2);switch(a){case"XYZ":this._x=h*f*u+c*p*v,this._y=c*p*u-h*f*v,this._z=c*f*v+h*p*u,this._w=c*f*u-h*p*v;break;case"YXZ":this._x=h*f*u+c*p*v,this._y=c*p*u-h*f*v,this._z=c*f*v-h*p*u,this._w=c*f*u+h*p*v;break;case"ZXY":this._x=h*f*u-c*p*v,this._y=c*p*u+h*f*v,this._z=c*f*v+h*p*u,this._w=c*f*u-h*p*v;break;case"ZYX":this._x=h*f*u-c*p*v,this._y=c*p*u+h*f*v,this._z=c*f*v-h*p*u,this._w=c*f*u+h*p*v;break;case"YZX":this._x=h*f*u+c*p*v,this._y=c*p*u+h*f*v,this._z=c*f*v-h*p*u,this._w=c*f*u-h*p*v;break;case"XZY":this._x=h*f*u-c*p*v,this._y=c*p*u-h*f*v,this._z=c*f*v+h*p*u,this._w=c*f*u+h*p*v;break;default:console.warn("THREE.Quaternion: .setFromEuler() encountered an unknown order: "+a)}return t===!0&&this._onChangeCallback(),this}setFromAxisAngle(e,t){const n=t/2,s=Math.sin(n);return this._x=e.x*s,this._y=e.y*s,this._z=e.z*s,this._w=Math.cos(n),this._onChangeCallback(),this}setFromRotationMatrix(e){const t=e.elements,n=t[0],s=t[4],r=t[8],a=t[1],o=t[5],l=t[9],c=t[2],f=t[6],u=t[10],h=n+o+u;if(h>0){const p=.5/Math.sqrt(h+1);this._w=.25/p,this._x=(f-l)*p,this._y=(r-c)*p,this._z=(a-s)*p}else if(n>o&&n>u){const p=2*Math.sqrt(1+n-o-u);this._w=(f-l)/p,this._x=.25*p,this._y=(s+a)/p,this._z=(r+c)/p}else if(o>u){const p=2*Math.sqrt(1+o-n-u);this._w=(r-c)/p,this._x=(s+a)/p,this._y=.25*p,this._z=(l+f)/p}else{const p=2*Math.sqrt(1+u-n-o);this._w=(a-s)/p,this._x=(r+c)/p,this._y=(l+f)/p,this._z=.25*p}return this._onChangeCallback(),this}setFromUnitVectors(e,t){let n=e.dot(t)+1;return n<1e-8?(n=0,Math.abs(e.x)>Math.abs(e.z)?(this._x=-e.y,this._y=e.x,this._z=0,this._w=n):(this._x=0,this._y=-e.z,this._z=e.y,this._w=n)):(this._x=e.y*t.z-e.z*t.y,this._y=e.z*t.x-e.x*t.z,this._z=e.x*t.y-e.y*t.x,this._w=n),this.normalize()}angleTo(e){return 2*Math.acos(Math.abs(ut(this.dot(e),-1,1)))}rotateTowards(e,t){const n=this.angleTo(e);if(n===0)return this;const s=Math.min(1,t/n);return this.slerp(e,s),this}identity(){return this.set(0,0,0,1)}invert(){return this.conjugate()}conjugate(){return this._x*=-1,this._y*=-1,this._z*=-1,this._onChangeCallback(),this}dot(e){return this._x*e._x+this._y*e._y+this._z*e._z+this._w*e._w}lengthSq(){return this._x*this._x+this._y*this._y+this._z*this._z+this._w*this._w}length(){return Math.sqrt(this._x*this._x+this._y*this._y+this._z*this._z+this._w*this._w)}normalize(){let e=this.length();return e===0?(this._x=0,this._y=0,this._z=0,this._w=1):(e=1/e,this._x=this._x*e,this._y=this._y*e,this._z=this._z*e,this._w=this._w*e),this._onChangeCallback(),this}multiply(e){return this.multiplyQuaternions(this,e)}premultiply(e){return this.multiplyQuaternions(e,this)}multiplyQuaternions(e,t){const n=e._x,s=e._y,r=e._z,a=e._w,o=t._x,l=t._y,c=t._z,f=t._w;return this._x=n*f+a*o+s*c-r*l,this._y=s*f+a*l+r*o-n*c,this._z=r*f+a*c+n*l-s*o,this._w=a*f-n*o-s*l-r*c,this._onChangeCallback(),this}slerp(e,t){if(t===0)return this;if(t===1)return this.copy(e);const n=this._x,s=this._y,r=this._z,a=this._w;let o=a*e._w+n*e._x+s*e._y+r*e._z;if(o<0?(this._w=-e._w,this._x=-e._x,this._y=-e._y,this._z=-e._z,o=-o):this.copy(e),o>=1)return this._w=a,this._x=n,this._y=s,this._z=r,this;const l=1-o*o;if(l<=Number.EPSILON){const p=1-t;return this._w=p*a+t*this._w,this._x=p*n+t*this._x,this._y=p*s+t*this._y,this._z=p*r+t*this._z,this.normalize(),this}const c=Math.sqrt(l),f=Math.atan2(c,o),u=Math.sin((1-t)*f)/c,h=Math.sin(t*f)/c;return this._w=a*u+this._w*h,this._x=n*u+this._x*h,this._y=s*u+this._y*h,this._z=r*u+this._z*h,this._onChangeCallback(),this}slerpQuaternions(e,t,n){return this.copy(e).slerp(t,n)}random(){const e=2*Math.PI*Math.random(),t=2*Math.PI*Math.random(),n=Math.random(),s=Math.sqrt(1-n),r=Math.sqrt(n);return this.set(s*Math.sin(e),s*Math.cos(e),r*Math.sin(t),r*Math.cos(t))}equals(e){return e._x===this._x&&e._y===this._y&&e._z===this._z&&e._w===this._w}fromArray(e,t=0){return this._x=e[t],this._y=e[t+1],this._z=e[t+2],this._w=e[t+3],this._onChangeCallback(),this}toArray(e=[],t=0){return e[t]=this._x,e[t+1]=this._y,e[t+2]=this._z,e[t+3]=this._w,e}fromBufferAttribute(e,t){return this._x=e.getX(t),this._y=e.getY(t),this._z=e.getZ(t),this._w=e.getW(t),this._onChangeCallback(),this}toJSON(){return this.toArray()}_onChange(e){return this._onChangeCallback=e,this}_onChangeCallback(){}*[Symbol.iterator](){yield this._x,yield this._y,yield this._z,yield this._w}}class H{constructor(e=0,t=0,n=0){H.prototype.isVector3=!0,this.x=e,this.y=t,this.z=n}set(e,t,n){return n===void 0&&(n=this.z),this.x=e,this.y=t,this.z=n,this}setScalar(e){return this.x=e,this.y=e,this.z=e,this}setX(e){return this.x=e,this}setY(e){return this.y=e,this}setZ(e){return this.z=e,this}setComponent(e,t){switch(e){case 0:this.x=t;break;case 1:this.y=t;break;case 2:this.z=t;break;default:throw new Error("index is out of range: "+e)}return this}getComponent(e){switch(e){case 0:return this.x;case 1:return this.y;case 2:return this.z;default:throw new Error("index is out of range: "+e)}}clone(){return new this.constructor(this.x,this.y,this.z)}copy(e){return this.x=e.x,this.y=e.y,this.z=e.z,this}add(e){return this.x+=e.x,this.y+=e.y,this.z+=e.z,this}addScalar(e){return this.x+=e,this.y+=e,this.z+=e,this}addVectors(e,t){return this.x=e.x+t.x,this.y=e.y+t.y,this.z=e.z+t.z,this}addScaledVector(e,t){return this.x+=e.x*t,this.y+=e.y*t,this.z+=e.z*t,this}sub(e){return this.x-=e.x,this.y-=e.y,this.z-=e.z,this}subScalar(e){return this.x-=e,this.y-=e,this.z-=e,this}subVectors(e,t){return this.x=e.x-t.x,this.y=e.y-t.y,this.z=e.z-t.z,this}multiply(e){return this.x*=e.x,this.y*=e.y,this.z*=e.z,this}multiplyScalar(e){return this.x*=e,this.y*=e,this.z*=e,this}multiplyVectors(e,t){return this.x=e.x*t.x,this.y=e.y*t.y,this.z=e.z*t.z,this}applyEuler(e){return this.applyQuaternion(Uh.setFromEuler(e))}applyAxisAngle(e,t){return this.applyQuaternion(Uh.setFromAxisAngle(e,t))}applyMatrix3(e){const t=this.x,n=this.y,s=this.z,r=e.elements;return this.x=r[0]*t+r[3]*n+r[6]*s,this.y=r[1]*t+r[4]*n+r[7]*s,this.z=r[2]*t+r[5]*n+r[8]*s,this}applyNormalMatrix(e){return this.applyMatrix3(e).normalize()}applyMatrix4(e){const t=this.x,n=this.y,s=this.z,r=e.elements,a=1/(r[3]*t+r[7]*n+r[11]*s+r[15]);return this.x=(r[0]*t+r[4]*n+r[8]*s+r[12])*a,this.y=(r[1]*t+r[5]*n+r[9]*s+r[13])*a,this.z=(r[2]*t+r[6]*n+r[10]*s+r[14])*a,this}applyQuaternion(e){const t=this.x,n=this.y,s=this.z,r=e.x,a=e.y,o=e.z,l=e.w,c=2*(a*s-o*n),f=2*(o*t-r*s),u=2*(r*n-a*t);return this.x=t+l*c+a*u-o*f,this.y=n+l*f+o*c-r*u,this.z=s+l*u+r*f-a*c,this}project(e){return this.applyMatrix4(e.matrixWorldInverse).applyMatrix4(e.projectionMatrix)}unproject(e){return this.applyMatrix4(e.projectionMatrixInverse).applyMatrix4(e.matrixWorld)}transformDirection(e){const t=this.x,n=this.y,s=this.z,r=e.elements;return this.x=r[0]*t+r[4]*n+r[8]*s,this.y=r[1]*t+r[5]*n+r[9]*s,this.z=r[2]*t+r[6]*n+r[10]*s,this.normalize()}divide(e){return this.x/=e.x,this.y/=e.y,this.z/=e.z,this}divideScalar(e){return this.multiplyScalar(1/e)}min(e){return this.x=Math.min(this.x,e.x),this.y=Math.min(this.y,e.y),this.z=Math.min(this.z,e.z),this}max(e){return this.x=Math.max(this.x,e.x),this.y=Math.max(this.y,e.y),this.z=Math.max(this.z,e.z),this}clamp(e,t){return this.x=ut(this.x,e.x,t.x),this.y=ut(this.y,e.y,t.y),this.z=ut(this.z,e.z,t.z),this}clampScalar(e,t){return this.x=ut(this.x,e,t),this.y=ut(this.y,e,t),this.z=ut(this.z,e,t),this}clampLength(e,t){const n=this.length();return this.divideScalar(n||1).multiplyScalar(ut(n,e,t))}floor(){return this.x=Math.floor(this.x),this.y=Math.floor(this.y),this.z=Math.floor(this.z),this}ceil(){return this.x=Math.ceil(this.x),this.y=Math.ceil(this.y),this.z=Math.ceil(this.z),this}round(){return this.x=Math.round(this.x),this.y=Math.round(this.y),this.z=Math.round(this.z),this}roundToZero(){return this.x=Math.trunc(this.x),this.y=Math.trunc(this.y),this.z=Math.trunc(this.z),this}negate(){return this.x=-this.x,this.y=-this.y,this.z=-this.z,this}dot(e){return this.x*e.x+this.y*e.y+this.z*e.z}lengthSq(){return this.x*this.x+this.y*this.y+this.z*this.z}length(){return Math.sqrt(this.x*this.x+this.y*this.y+this.z*this.z)}manhattanLength(){return Math.abs(this.x)+Math.abs(this.y)+Math.abs(this.z)}normalize(){return this.divideScalar(this.length()||1)}setLength(e){return this.normalize().multiplyScalar(e)}lerp(e,t){return this.x+=(e.x-this.x)*t,this.y+=(e.y-this.y)*t,this.z+=(e.z-this.z)*t,this}lerpVectors(e,t,n){return this.x=e.x+(t.x-e.x)*n,this.y=e.y+(t.y-e.y)*n,this.z=e.z+(t.z-e.z)*n,this}cross(e){return this.crossVectors(this,e)}crossVectors(e,t){const n=e.x,s=e.y,r=e.z,a=t.x,o=t.y,l=t.z;return this.x=s*l-r*o,this.y=r*a-n*l,this.z=n*o-s*a,this}projectOnVector(e){const t=e.lengthSq();if(t===0)return this.set(0,0,0);const n=e.dot(this)/t;return this.copy(e).multiplyScalar(n)}projectOnPlane(e){return ol.copy(this).projectOnVector(e),this.sub(ol)}reflect(e){return this.sub(ol.copy(e).multiplyScalar(2*this.dot(e)))}angleTo(e){const t=Math.sqrt(this.lengthSq()*e.lengthSq());if(t===0)return Math.PI/2;const n=this.dot(e)/t;return Math.acos(ut(n,-1,1))}distanceTo(e){return Math.sqrt(this.distanceToSquared(e))}distanceToSquared(e){const t=this.x-e.x,n=this.y-e.y,s=this.z-e.z;return t*t+n*n+s*s}manhattanDistanceTo(e){return Math.abs(this.x-e.x)+Math.abs(this.y-e.y)+Math.abs(this.z-e.z)}setFromSpherical(e){return this.setFromSphericalCoords(e.radius,e.phi,e.theta)}setFromSphericalCoords(e,t,n){const s=Math.sin(t)*e;return this.x=s*Math.sin(n),this.y=Math.cos(t)*e,this.z=s*Math.cos(n),this}setFromCylindrical(e){return this.setFromCylindricalCoords(e.radius,e.theta,e.y)}setFromCylindricalCoords(e,t,n){return this.x=e*Math.sin(t),this.y=n,this.z=e*Math.cos(t),this}setFromMatrixPosition(e){const t=e.elements;return this.x=t[12],this.y=t[13],this.z=t[14],this}setFromMatrixScale(e){const t=this.setFromMatrixColumn(e,0).length(),n=this.setFromMatrixColumn(e,1).length(),s=this.setFromMatrixColumn(e,2).length();return this.x=t,this.y=n,this.z=s,this}setFromMatrixColumn(e,t){return this.fromArray(e.elements,t*4)}setFromMatrix3Column(e,t){return this.fromArray(e.elements,t*3)}setFromEuler(e){return this.x=e._x,this.y=e._y,this.z=e._z,this}setFromColor(e){return this.x=e.r,this.y=e.g,this.z=e.b,this}equals(e){return e.x===this.x&&e.y===this.y&&e.z===this.z}fromArray(e,t=0){return this.x=e[t],this.y=e[t+1],this.z=e[t+2],this}toArray(e=[],t=0){return e[t]=this.x,e[t+1]=this.y,e[t+2]=this.z,e}fromBufferAttribute(e,t){return this.x=e.getX(t),this.y=e.getY(t),this.z=e.getZ(t),this}random(){return this.x=Math.random(),this.y=Math.random(),this.z=Math.random(),this}randomDirection(){const e=Math.random()*Math.PI*2,t=Math.random()*2-1,n=Math.sqrt(1-t*t);return this.x=n*Math.cos(e),this.y=t,this.z=n*Math.sin(e),this}*[Symbol.iterator](){yield this.x,yield this.y,yield this.z}}const ol=new H,Uh=new Ns;class st{constructor(e,t,n,s,r,a,o,l,c){st.prototype.isMatrix3=!0,this.elements=[1,0,0,0,1,0,0,0,1],e!==void 0&&this.set(e,t,n,s,r,a,o,l,c)}set(e,t,n,s,r,a,o,l,c){const f=this.elements;return f[0]=e,f[1]=s,f[2]=o,f[3]=t,f[4]=r,f[5]=l,f[6]=n,f[7]=a,f[8]=c,this}identity(){return this.set(1,0,0,0,1,0,0,0,1),this}copy(e){const t=this.elements,n=e.elements;return t[0]=n[0],t[1]=n[1],t[2]=n[2],t[3]=n[3],t[4]=n[4],t[5]=n[5],t[6]=n[6],t[7]=n[7],t[8]=n[8],this}extractBasis(e,t,n){return e.setFromMatrix3Column(this,0),t.setFromMatrix3Column(this,1),n.setFromMatrix3Column(this,2),this}setFromMatrix4(e){const t=e.elements;return this.set(t[0],t[4],t[8],t[1],t[5],t[9],t[2],t[6],t[10]),this}multiply(e){return this.multiplyMatrices(this,e)}premultiply(e){return this.multiplyMatrices(e,this)}multiplyMatrices(e,t){const n=e.elements,s=t.elements,r=this.elements,a=n[0],o=n[3],l=n[6],c=n[1],f=n[4],u=n[7],h=n[2],p=n[5],v=n[8],M=s[0],m=s[3],d=s[6],b=s[1],A=s[4],E=s[7],F=s[2],C=s[5],D=s[8];return r[0]=a*M+o*b+l*F,r[3]=a*m+o*A+l*C,r[6]=a*d+o*E+l*D,r[1]=c*M+f*b+u*F,r[4]=c*m+f*A+u*C,r[7]=c*d+f*E+u*D,r[2]=h*M+p*b+v*F,r[5]=h*m+p*A+v*C,r[8]=h*d+p*E+v*D,this}multiplyScalar(e){const t=this.elements;return t[0]*=e,t[3]*=e,t[6]*=e,t[1]*=e,t[4]*=e,t[7]*=e,t[2]*=e,t[5]*=e,t[8]*=e,this}determinant(){const e=this.elements,t=e[0],n=e[1],s=e[2],r=e[3],a=e[4],o=e[5],l=e[6],c=e[7],f=e[8];return t*a*f-t*o*c-n*r*f+n*o*l+s*r*c-s*a*l}invert(){const e=this.elements,t=e[0],n=e[1],s=e[2],r=e[3],a=e[4],o=e[5],l=e[6],c=e[7],f=e[8],u=f*a-o*c,h=o*l-f*r,p=c*r-a*l,v=t*u+n*h+s*p;if(v===0)return this.set(0,0,0,0,0,0,0,0,0);const M=1/v;return e[0]=u*M,e[1]=(s*c-f*n)*M,e[2]=(o*n-s*a)*M,e[3]=h*M,e[4]=(f*t-s*l)*M,e[5]=(s*r-o*t)*M,e[6]=p*M,e[7]=(n*l-c*t)*M,e[8]=(a*t-n*r)*M,this}transpose(){let e;const t=this.elements;return e=t[1],t[1]=t[3],t[3]=e,e=t[2],t[2]=t[6],t[6]=e,e=t[5],t[5]=t[7],t[7]=e,this}getNormalMatrix(e){return this.setFromMatrix4(e).invert().transpose()}transposeIntoArray(e){const t=this.elements;return e[0]=t[0],e[1]=t[3],e[2]=t[6],e[3]=t[1],e[4]=t[4],e[5]=t[7],e[6]=t[2],e[7]=t[5],e[8]=t[8],this}setUvTransform(e,t,n,s,r,a,o){const l=Math.cos(r),c=Math.sin(r);return this.set(n*l,n*c,-n*(l*a+c*o)+a+e,-s*c,s*l,-s*(-c*a+l*o)+o+t,0,0,1),this}scale(e,t){return this.premultiply(ll.makeScale(e,t)),this}rotate(e){return this.premultiply(ll.makeRotation(-e)),this}translate(e,t){return this.premultiply(ll.makeTranslation(e,t)),this}makeTranslation(e,t){return e.isVector2?this.set(1,0,e.x,0,1,e.y,0,0,1):this.set(1,0,e,0,1,t,0,0,1),this}makeRotation(e){const t=Math.cos(e),n=Math.sin(e);return this.set(t,-n,0,n,t,0,0,0,1),this}makeScale(e,t){return this.set(e,0,0,0,t,0,0,0,1),this}equals(e){const t=this.elements,n=e.elements;for(let s=0;s<9;s++)if(t[s]!==n[s])return!1;return!0}fromArray(e,t=0){for(let n=0;n<9;n++)this.elements[n]=e[n+t];return this}toArray(e=[],t=0){const n=this.elements;return e[t]=n[0],e[t+1]=n[1],e[t+2]=n[2],e[t+3]=n[3],e[t+4]=n[4],e[t+5]=n[5],e[t+6]=n[6],e[t+7]=n[7],e[t+8]=n[8],e}clone(){return new this.constructor().fromArray(this.elements)}}const ll=new st;function Xd(i){for(let e=i.length-1;e>=0;--e)if(i[e]>=65535)return!0;return!1}function yo(i){return document.createElementNS("http://www.w3.org/1999/xhtml",i)}function y_(){const i=yo("canvas");return i.style.display="block",i}const Ih={};function ha(i){i in Ih||(Ih[i]=!0,console.warn(i))}function E_(i,e,t){return new Promise(function(n,s){function r(){switch(i.clientWaitSync(e,i.SYNC_FLUSH_COMMANDS_BIT,0)){case i.WAIT_FAILED:s();break;case i.TIMEOUT_EXPIRED:setTimeout(r,t);break;default:n()}}setTimeout(r,t)})}const Nh=new st().set(.4123908,.3575843,.1804808,.212639,.7151687,.0721923,.0193308,.1191948,.9505322),Fh=new st().set(3.2409699,-1.5373832,-.4986108,-.9692436,1.8759675,.0415551,.0556301,-.203977,1.0569715);function b_(){const i={enabled:!0,workingColorSpace:wr,spaces:{},convert:function(s,r,a){return this.enabled===!1||r===a||!r||!a||(this.spaces[r].transfer===Pt&&(s.r=Gi(s.r),s.g=Gi(s.g),s.b=Gi(s.b)),this.spaces[r].primaries!==this.spaces[a].primaries&&(s.applyMatrix3(this.spaces[r].toXYZ),s.applyMatrix3(this.spaces[a].fromXYZ)),this.spaces[a].transfer===Pt&&(s.r=gr(s.r),s.g=gr(s.g),s.b=gr(s.b))),s},workingToColorSpace:function(s,r){return this.convert(s,this.workingColorSpace,r)},colorSpaceToWorking:function(s,r){return this.convert(s,r,this.workingColorSpace)},getPrimaries:function(s){return this.spaces[s].primaries},getTransfer:function(s){return s===ss?Mo:this.spaces[s].transfer},getToneMappingMode:function(s){return this.spaces[s].outputColorSpaceConfig.toneMappingMode||"standard"},getLuminanceCoefficients:function(s,r=this.workingColorSpace){return s.fromArray(this.spaces[r].luminanceCoefficients)},define:function(s){Object.assign(this.spaces,s)},_getMatrix:function(s,r,a){return s.copy(this.spaces[r].toXYZ).multiply(this.spaces[a].fromXYZ)},_getDrawingBufferColorSpace:function(s){return this.spaces[s].outputColorSpaceConfig.drawingBufferColorSpace},_getUnpackColorSpace:function(s=this.workingColorSpace){return this.spaces[s].workingColorSpaceConfig.unpackColorSpace},fromWorkingColorSpace:function(s,r){return ha("THREE.ColorManagement: .fromWorkingColorSpace() has been renamed to .workingToColorSpace()."),i.workingToColorSpace(s,r)},toWorkingColorSpace:function(s,r){return ha("THREE.ColorManagement: .toWorkingColorSpace() has been renamed to .colorSpaceToWorking()."),i.colorSpaceToWorking(s,r)}},e=[.64,.33,.3,.6,.15,.06],t=[.2126,.7152,.0722],n=[.3127,.329];return i.define({[wr]:{primaries:e,whitePoint:n,transfer:Mo,toXYZ:Nh,fromXYZ:Fh,luminanceCoefficients:t,workingColorSpaceConfig:{unpackColorSpace:ni},outputColorSpaceConfig:{drawingBufferColorSpace:ni}},[ni]:{primaries:e,whitePoint:n,transfer:Pt,toXYZ:Nh,fromXYZ:Fh,luminanceCoefficients:t,outputColorSpaceConfig:{drawingBufferColorSpace:ni}}}),i}const vt=b_();function Gi(i){return i<.04045?i*.0773993808:Math.pow(i*.9478672986+.0521327014,2.4)}function gr(i){return i<.0031308?i*12.92:1.055*Math.pow(i,.41666)-.055}let Zs;class w_{static getDataURL(e,t="image/png"){if(/^data:/i.test(e.src)||typeof HTMLCanvasElement>"u")return e.src;let n;if(e instanceof HTMLCanvasElement)n=e;else{Zs===void 0&&(Zs=yo("canvas")),Zs.width=e.width,Zs.height=e.height;const s=Zs.getContext("2d");e instanceof ImageData?s.putImageData(e,0,0):s.drawImage(e,0,0,e.width,e.height),n=Zs}return n.toDataURL(t)}static sRGBToLinear(e){if(typeof HTMLImageElement<"u"&&e instanceof HTMLImageElement||typeof HTMLCanvasElement<"u"&&e instanceof HTMLCanvasElement||typeof ImageBitmap<"u"&&e instanceof ImageBitmap){const t=yo("canvas");t.width=e.width,t.height=e.height;const n=t.getContext("2d");n.drawImage(e,0,0,e.width,e.height);const s=n.getImageData(0,0,e.width,e.height),r=s.data;for(let a=0;a<r.length;a++)r[a]=Gi(r[a]/255)*255;return n.putImageData(s,0,0),t}else if(e.data){const t=e.data.slice(0);for(let n=0;n<t.length;n++)t instanceof Uint8Array||t instanceof Uint8ClampedArray?t[n]=Math.floor(Gi(t[n]/255)*255):t[n]=Gi(t[n]);return{data:t,width:e.width,height:e.height}}else return console.warn("THREE.ImageUtils.sRGBToLinear(): Unsupported image type. No color space conversion applied."),e}}let T_=0;class du{constructor(e=null){this.isSource=!0,Object.defineProperty(this,"id",{value:T_++}),this.uuid=ga(),this.data=e,this.dataReady=!0,this.version=0}getSize(e){const t=this.data;return typeof HTMLVideoElement<"u"&&t instanceof HTMLVideoElement?e.set(t.videoWidth,t.videoHeight,0):t instanceof VideoFrame?e.set(t.displayHeight,t.displayWidth,0):t!==null?e.set(t.width,t.height,t.depth||0):e.set(0,0,0),e}set needsUpdate(e){e===!0&&this.version++}toJSON(e){const t=e===void 0||typeof e=="string";if(!t&&e.images[this.uuid]!==void 0)return e.images[this.uuid];const n={uuid:this.uuid,url:""},s=this.data;if(s!==null){let r;if(Array.isArray(s)){r=[];for(let a=0,o=s.length;a<o;a++)s[a].isDataTexture?r.push(cl(s[a].image)):r.push(cl(s[a]))}else r=cl(s);n.url=r}return t||(e.images[this.uuid]=n),n}}function cl(i){return typeof HTMLImageElement<"u"&&i instanceof HTMLImageElement||typeof HTMLCanvasElement<"u"&&i instanceof HTMLCanvasElement||typeof ImageBitmap<"u"&&i instanceof ImageBitmap?w_.getDataURL(i):i.data?{data:Array.from(i.data),width:i.width,height:i.height,type:i.data.constructor.name}:(console.warn("THREE.Texture: Unable to serialize Texture."),{})}let A_=0;const ul=new H;class kn extends Bs{constructor(e=kn.DEFAULT_IMAGE,t=kn.DEFAULT_MAPPING,n=Ps,s=Ps,r=wi,a=Ds,o=mi,l=Ri,c=kn.DEFAULT_ANISOTROPY,f=ss){super(),this.isTexture=!0,Object.defineProperty(this,"id",{value:A_++}),this.uuid=ga(),this.name="",this.source=new du(e),this.mipmaps=[],this.mapping=t,this.channel=0,this.wrapS=n,this.wrapT=s,this.magFilter=r,this.minFilter=a,this.anisotropy=c,this.format=o,this.internalFormat=null,this.type=l,this.offset=new nt(0,0),this.repeat=new nt(1,1),this.center=new nt(0,0),this.rotation=0,this.matrixAutoUpdate=!0,this.matrix=new st,this.generateMipmaps=!0,this.premultiplyAlpha=!1,this.flipY=!0,this.unpackAlignment=4,this.colorSpace=f,this.userData={},this.updateRanges=[],this.version=0,this.onUpdate=null,this.renderTarget=null,this.isRenderTargetTexture=!1,this.isArrayTexture=!!(e&&e.depth&&e.depth>1),this.pmremVersion=0}get width(){return this.source.getSize(ul).x}get height(){return this.source.getSize(ul).y}get depth(){return this.source.getSize(ul).z}get image(){return this.source.data}set image(e=null){this.source.data=e}updateMatrix(){this.matrix.setUvTransform(this.offset.x,this.offset.y,this.repeat.x,this.repeat.y,this.rotation,this.center.x,this.center.y)}addUpdateRange(e,t){this.updateRanges.push({start:e,count:t})}clearUpdateRanges(){this.updateRanges.length=0}clone(){return new this.constructor().copy(this)}copy(e){return this.name=e.name,this.source=e.source,this.mipmaps=e.mipmaps.slice(0),this.mapping=e.mapping,this.channel=e.channel,this.wrapS=e.wrapS,this.wrapT=e.wrapT,this.magFilter=e.magFilter,this.minFilter=e.minFilter,this.anisotropy=e.anisotropy,this.format=e.format,this.internalFormat=e.internalFormat,this.type=e.type,this.offset.copy(e.offset),this.repeat.copy(e.repeat),this.center.copy(e.center),this.rotation=e.rotation,this.matrixAutoUpdate=e.matrixAutoUpdate,this.matrix.copy(e.matrix),this.generateMipmaps=e.generateMipmaps,this.premultiplyAlpha=e.premultiplyAlpha,this.flipY=e.flipY,this.unpackAlignment=e.unpackAlignment,this.colorSpace=e.colorSpace,this.renderTarget=e.renderTarget,this.isRenderTargetTexture=e.isRenderTargetTexture,this.isArrayTexture=e.isArrayTexture,this.userData=JSON.parse(JSON.stringify(e.userData)),this.needsUpdate=!0,this}setValues(e){for(const t in e){const n=e[t];if(n===void 0){console.warn(`THREE.Texture.setValues(): parameter '${t}' has value of undefined.`);continue}const s=this[t];if(s===void 0){console.warn(`THREE.Texture.setValues(): property '${t}' does not exist.`);continue}s&&n&&s.isVector2&&n.isVector2||s&&n&&s.isVector3&&n.isVector3||s&&n&&s.isMatrix3&&n.isMatrix3?s.copy(n):this[t]=n}}toJSON(e){const t=e===void 0||typeof e=="string";if(!t&&e.textures[this.uuid]!==void 0)return e.textures[this.uuid];const n={metadata:{version:4.7,type:"Texture",generator:"Texture.toJSON"},uuid:this.uuid,name:this.name,image:this.source.toJSON(e).uuid,mapping:this.mapping,channel:this.channel,repeat:[this.repeat.x,this.repeat.y],offset:[this.offset.x,this.offset.y],center:[this.center.x,this.center.y],rotation:this.rotation,wrap:[this.wrapS,this.wrapT],format:this.format,internalFormat:this.internalFormat,type:this.type,colorSpace:this.colorSpace,minFilter:this.minFilter,magFilter:this.magFilter,anisotropy:this.anisotropy,flipY:this.flipY,generateMipmaps:this.generateMipmaps,premultiplyAlpha:this.premultiplyAlpha,unpackAlignment:this.unpackAlignment};return Object.keys(this.userData).length>0&&(n.userData=this.userData),t||(e.textures[this.uuid]=n),n}dispose(){this.dispatchEvent({type:"dispose"})}transformUv(e){if(this.mapping!==Id)return e;if(e.applyMatrix3(this.matrix),e.x<0||e.x>1)switch(this.wrapS){case lc:e.x=e.x-Math.floor(e.x);break;case Ps:e.x=e.x<0?0:1;break;case cc:Math.abs(Math.floor(e.x)%2)===1?e.x=Math.ceil(e.x)-e.x:e.x=e.x-Math.floor(e.x);break}if(e.y<0||e.y>1)switch(this.wrapT){case lc:e.y=e.y-Math.floor(e.y);break;case Ps:e.y=e.y<0?0:1;break;case cc:Math.abs(Math.floor(e.y)%2)===1?e.y=Math.ceil(e.y)-e.y:e.y=e.y-Math.floor(e.y);break}return this.flipY&&(e.y=1-e.y),e}set needsUpdate(e){e===!0&&(this.version++,this.source.needsUpdate=!0)}set needsPMREMUpdate(e){e===!0&&this.pmremVersion++}}kn.DEFAULT_IMAGE=null;kn.DEFAULT_MAPPING=Id;kn.DEFAULT_ANISOTROPY=1;class $t{constructor(e=0,t=0,n=0,s=1){$t.prototype.isVector4=!0,this.x=e,this.y=t,this.z=n,this.w=s}get width(){return this.z}set width(e){this.z=e}get height(){return this.w}set height(e){this.w=e}set(e,t,n,s){return this.x=e,this.y=t,this.z=n,this.w=s,this}setScalar(e){return this.x=e,this.y=e,this.z=e,this.w=e,this}setX(e){return this.x=e,this}setY(e){return this.y=e,this}setZ(e){return this.z=e,this}setW(e){return this.w=e,this}setComponent(e,t){switch(e){case 0:this.x=t;break;case 1:this.y=t;break;case 2:this.z=t;break;case 3:this.w=t;break;default:throw new Error("index is out of range: "+e)}return this}getComponent(e){switch(e){case 0:return this.x;case 1:return this.y;case 2:return this.z;case 3:return this.w;default:throw new Error("index is out of range: "+e)}}clone(){return new this.constructor(this.x,this.y,this.z,this.w)}copy(e){return this.x=e.x,this.y=e.y,this.z=e.z,this.w=e.w!==void 0?e.w:1,this}add(e){return this.x+=e.x,this.y+=e.y,this.z+=e.z,this.w+=e.w,this}addScalar(e){return this.x+=e,this.y+=e,this.z+=e,this.w+=e,this}addVectors(e,t){return this.x=e.x+t.x,this.y=e.y+t.y,this.z=e.z+t.z,this.w=e.w+t.w,this}addScaledVector(e,t){return this.x+=e.x*t,this.y+=e.y*t,this.z+=e.z*t,this.w+=e.w*t,this}sub(e){return this.x-=e.x,this.y-=e.y,this.z-=e.z,this.w-=e.w,this}subScalar(e){return this.x-=e,this.y-=e,this.z-=e,this.w-=e,this}subVectors(e,t){return this.x=e.x-t.x,this.y=e.y-t.y,this.z=e.z-t.z,this.w=e.w-t.w,this}multiply(e){return this.x*=e.x,this.y*=e.y,this.z*=e.z,this.w*=e.w,this}multiplyScalar(e){return this.x*=e,this.y*=e,this.z*=e,this.w*=e,this}applyMatrix4(e){const t=this.x,n=this.y,s=this.z,r=this.w,a=e.elements;return this.x=a[0]*t+a[4]*n+a[8]*s+a[12]*r,this.y=a[1]*t+a[5]*n+a[9]*s+a[13]*r,this.z=a[2]*t+a[6]*n+a[10]*s+a[14]*r,this.w=a[3]*t+a[7]*n+a[11]*s+a[15]*r,this}divide(e){return this.x/=e.x,this.y/=e.y,this.z/=e.z,this.w/=e.w,this}divideScalar(e){return this.multiplyScalar(1/e)}setAxisAngleFromQuaternion(e){this.w=2*Math.acos(e.w);const t=Math.sqrt(1-e.w*e.w);return t<1e-4?(this.x=1,this.y=0,this.z=0):(this.x=e.x/t,this.y=e.y/t,this.z=e.z/t),this}setAxisAngleFromRotationMatrix(e){let t,n,s,r;const l=e.elements,c=l[0],f=l[4],u=l[8],h=l[1],p=l[5],v=l[9],M=l[2],m=l[6],d=l[10];if(Math.abs(f-h)<.01&&Math.abs(u-M)<.01&&Math.abs(v-m)<.01){if(Math.abs(f+h)<.1&&Math.abs(u+M)<.1&&Math.abs(v+m)<.1&&Math.abs(c+p+d-3)<.1)return this.set(1,0,0,0),this;t=Math.PI;const A=(c+1)/2,E=(p+1)/2,F=(d+1)/2,C=(f+h)/4,D=(u+M)/4,O=(v+m)/4;return A>E&&A>F?A<.01?(n=0,s=.707106781,r=.707106781):(n=Math.sqrt(A),s=C/n,r=D/n):E>F?E<.01?(n=.707106781,s=0,r=.707106781):(s=Math.sqrt(E),n=C/s,r=O/s):F<.01?(n=.707106781,s=.707106781,r=0):(r=Math.sqrt(F),n=D/r,s=O/r),this.set(n,s,r,t),this}let b=Math.sqrt((m-v)*(m-v)+(u-M)*(u-M)+(h-f)*(h-f));return Math.abs(b)<.001&&(b=1),this.x=(m-v)/b,this.y=(u-M)/b,this.z=(h-f)/b,this.w=Math.acos((c+p+d-1)/2),this}setFromMatrixPosition(e){const t=e.elements;return this.x=t[12],this.y=t[13],this.z=t[14],this.w=t[15],this}min(e){return this.x=Math.min(this.x,e.x),this.y=Math.min(this.y,e.y),this.z=Math.min(this.z,e.z),this.w=Math.min(this.w,e.w),this}max(e){return this.x=Math.max(this.x,e.x),this.y=Math.max(this.y,e.y),this.z=Math.max(this.z,e.z),this.w=Math.max(this.w,e.w),this}clamp(e,t){return this.x=ut(this.x,e.x,t.x),this.y=ut(this.y,e.y,t.y),this.z=ut(this.z,e.z,t.z),this.w=ut(this.w,e.w,t.w),this}clampScalar(e,t){return this.x=ut(this.x,e,t),this.y=ut(this.y,e,t),this.z=ut(this.z,e,t),this.w=ut(this.w,e,t),this}clampLength(e,t){const n=this.length();return this.divideScalar(n||1).multiplyScalar(ut(n,e,t))}floor(){return this.x=Math.floor(this.x),this.y=Math.floor(this.y),this.z=Math.floor(this.z),this.w=Math.floor(this.w),this}ceil(){return this.x=Math.ceil(this.x),this.y=Math.ceil(this.y),this.z=Math.ceil(this.z),this.w=Math.ceil(this.w),this}round(){return this.x=Math.round(this.x),this.y=Math.round(this.y),this.z=Math.round(this.z),this.w=Math.round(this.w),this}roundToZero(){return this.x=Math.trunc(this.x),this.y=Math.trunc(this.y),this.z=Math.trunc(this.z),this.w=Math.trunc(this.w),this}negate(){return this.x=-this.x,this.y=-this.y,this.z=-this.z,this.w=-this.w,this}dot(e){return this.x*e.x+this.y*e.y+this.z*e.z+this.w*e.w}lengthSq(){return this.x*this.x+this.y*this.y+this.z*this.z+this.w*this.w}length(){return Math.sqrt(this.x*this.x+this.y*this.y+this.z*this.z+this.w*this.w)}manhattanLength(){return Math.abs(this.x)+Math.abs(this.y)+Math.abs(this.z)+Math.abs(this.w)}normalize(){return this.divideScalar(this.length()||1)}setLength(e){return this.normalize().multiplyScalar(e)}lerp(e,t){return this.x+=(e.x-this.x)*t,this.y+=(e.y-this.y)*t,this.z+=(e.z-this.z)*t,this.w+=(e.w-this.w)*t,this}lerpVectors(e,t,n){return this.x=e.x+(t.x-e.x)*n,this.y=e.y+(t.y-e.y)*n,this.z=e.z+(t.z-e.z)*n,this.w=e.w+(t.w-e.w)*n,this}equals(e){return e.x===this.x&&e.y===this.y&&e.z===this.z&&e.w===this.w}fromArray(e,t=0){return this.x=e[t],this.y=e[t+1],this.z=e[t+2],this.w=e[t+3],this}toArray(e=[],t=0){return e[t]=this.x,e[t+1]=this.y,e[t+2]=this.z,e[t+3]=this.w,e}fromBufferAttribute(e,t){return this.x=e.getX(t),this.y=e.getY(t),this.z=e.getZ(t),this.w=e.getW(t),this}random(){return this.x=Math.random(),this.y=Math.random(),this.z=Math.random(),this.w=Math.random(),this}*[Symbol.iterator](){yield this.x,yield this.y,yield this.z,yield this.w}}class R_ extends Bs{constructor(e=1,t=1,n={}){super(),n=Object.assign({generateMipmaps:!1,internalFormat:null,minFilter:wi,depthBuffer:!0,stencilBuffer:!1,resolveDepthBuffer:!0,resolveStencilBuffer:!0,depthTexture:null,samples:0,count:1,depth:1,multiview:!1},n),this.isRenderTarget=!0,this.width=e,this.height=t,this.depth=n.depth,this.scissor=new $t(0,0,e,t),this.scissorTest=!1,this.viewport=new $t(0,0,e,t);const s={width:e,height:t,depth:n.depth},r=new kn(s);this.textures=[];const a=n.count;for(let o=0;o<a;o++)this.textures[o]=r.clone(),this.textures[o].isRenderTargetTexture=!0,this.textures[o].renderTarget=this;this._setTextureOptions(n),this.depthBuffer=n.depthBuffer,this.stencilBuffer=n.stencilBuffer,this.resolveDepthBuffer=n.resolveDepthBuffer,this.resolveStencilBuffer=n.resolveStencilBuffer,this._depthTexture=null,this.depthTexture=n.depthTexture,this.samples=n.samples,this.multiview=n.multiview}_setTextureOptions(e={}){const t={minFilter:wi,generateMipmaps:!1,flipY:!1,internalFormat:null};e.mapping!==void 0&&(t.mapping=e.mapping),e.wrapS!==void 0&&(t.wrapS=e.wrapS),e.wrapT!==void 0&&(t.wrapT=e.wrapT),e.wrapR!==void 0&&(t.wrapR=e.wrapR),e.magFilter!==void 0&&(t.magFilter=e.magFilter),e.minFilter!==void 0&&(t.minFilter=e.minFilter),e.format!==void 0&&(t.format=e.format),e.type!==void 0&&(t.type=e.type),e.anisotropy!==void 0&&(t.anisotropy=e.anisotropy),e.colorSpace!==void 0&&(t.colorSpace=e.colorSpace),e.flipY!==void 0&&(t.flipY=e.flipY),e.generateMipmaps!==void 0&&(t.generateMipmaps=e.generateMipmaps),e.internalFormat!==void 0&&(t.internalFormat=e.internalFormat);for(let n=0;n<this.textures.length;n++)this.textures[n].setValues(t)}get texture(){return this.textures[0]}set texture(e){this.textures[0]=e}set depthTexture(e){this._depthTexture!==null&&(this._depthTexture.renderTarget=null),e!==null&&(e.renderTarget=this),this._depthTexture=e}get depthTexture(){return this._depthTexture}setSize(e,t,n=1){if(this.width!==e||this.height!==t||this.depth!==n){this.width=e,this.height=t,this.depth=n;for(let s=0,r=this.textures.length;s<r;s++)this.textures[s].image.width=e,this.textures[s].image.height=t,this.textures[s].image.depth=n,this.textures[s].isArrayTexture=this.textures[s].image.depth>1;this.dispose()}this.viewport.set(0,0,e,t),this.scissor.set(0,0,e,t)}clone(){return new this.constructor().copy(this)}copy(e){this.width=e.width,this.height=e.height,this.depth=e.depth,this.scissor.copy(e.scissor),this.scissorTest=e.scissorTest,this.viewport.copy(e.viewport),this.textures.length=0;for(let t=0,n=e.textures.length;t<n;t++){this.textures[t]=e.textures[t].clone(),this.textures[t].isRenderTargetTexture=!0,this.textures[t].renderTarget=this;const s=Object.assign({},e.textures[t].image);this.textures[t].source=new du(s)}return this.depthBuffer=e.depthBuffer,this.stencilBuffer=e.stencilBuffer,this.resolveDepthBuffer=e.resolveDepthBuffer,this.resolveStencilBuffer=e.resolveStencilBuffer,e.depthTexture!==null&&(this.depthTexture=e.depthTexture.clone()),this.samples=e.samples,this}dispose(){this.dispatchEvent({type:"dispose"})}}class Fs extends R_{constructor(e=1,t=1,n={}){super(e,t,n),this.isWebGLRenderTarget=!0}}class qd extends kn{constructor(e=null,t=1,n=1,s=1){super(null),this.isDataArrayTexture=!0,this.image={data:e,width:t,height:n,depth:s},this.magFilter=gi,this.minFilter=gi,this.wrapR=Ps,this.generateMipmaps=!1,this.flipY=!1,this.unpackAlignment=1,this.layerUpdates=new Set}addLayerUpdate(e){this.layerUpdates.add(e)}clearLayerUpdates(){this.layerUpdates.clear()}}class C_ extends kn{constructor(e=null,t=1,n=1,s=1){super(null),this.isData3DTexture=!0,this.image={data:e,width:t,height:n,depth:s},this.magFilter=gi,this.minFilter=gi,this.wrapR=Ps,this.generateMipmaps=!1,this.flipY=!1,this.unpackAlignment=1}}class _a{constructor(e=new H(1/0,1/0,1/0),t=new H(-1/0,-1/0,-1/0)){this.isBox3=!0,this.min=e,this.max=t}set(e,t){return this.min.copy(e),this.max.copy(t),this}setFromArray(e){this.makeEmpty();for(let t=0,n=e.length;t<n;t+=3)this.expandByPoint(li.fromArray(e,t));return this}setFromBufferAttribute(e){this.makeEmpty();for(let t=0,n=e.count;t<n;t++)this.expandByPoint(li.fromBufferAttribute(e,t));return this}setFromPoints(e){this.makeEmpty();for(let t=0,n=e.length;t<n;t++)this.expandByPoint(e[t]);return this}setFromCenterAndSize(e,t){const n=li.copy(t).multiplyScalar(.5);return this.min.copy(e).sub(n),this.max.copy(e).add(n),this}setFromObject(e,t=!1){return this.makeEmpty(),this.expandByObject(e,t)}clone(){return new this.constructor().copy(this)}copy(e){return this.min.copy(e.min),this.max.copy(e.max),this}makeEmpty(){return this.min.x=this.min.y=this.min.z=1/0,this.max.x=this.max.y=this.max.z=-1/0,this}isEmpty(){return this.max.x<this.min.x||this.max.y<this.min.y||this.max.z<this.min.z}getCenter(e){return this.isEmpty()?e.set(0,0,0):e.addVectors(this.min,this.max).multiplyScalar(.5)}getSize(e){return this.isEmpty()?e.set(0,0,0):e.subVectors(this.max,this.min)}expandByPoint(e){return this.min.min(e),this.max.max(e),this}expandByVector(e){return this.min.sub(e),this.max.add(e),this}expandByScalar(e){return this.min.addScalar(-e),this.max.addScalar(e),this}expandByObject(e,t=!1){e.updateWorldMatrix(!1,!1);const n=e.geometry;if(n!==void 0){const r=n.getAttribute("position");if(t===!0&&r!==void 0&&e.isInstancedMesh!==!0)for(let a=0,o=r.count;a<o;a++)e.isMesh===!0?e.getVertexPosition(a,li):li.fromBufferAttribute(r,a),li.applyMatrix4(e.matrixWorld),this.expandByPoint(li);else e.boundingBox!==void 0?(e.boundingBox===null&&e.computeBoundingBox(),La.copy(e.boundingBox)):(n.boundingBox===null&&n.computeBoundingBox(),La.copy(n.boundingBox)),La.applyMatrix4(e.matrixWorld),this.union(La)}const s=e.children;for(let r=0,a=s.length;r<a;r++)this.expandByObject(s[r],t);return this}containsPoint(e){return e.x>=this.min.x&&e.x<=this.max.x&&e.y>=this.min.y&&e.y<=this.max.y&&e.z>=this.min.z&&e.z<=this.max.z}containsBox(e){return this.min.x<=e.min.x&&e.max.x<=this.max.x&&this.min.y<=e.min.y&&e.max.y<=this.max.y&&this.min.z<=e.min.z&&e.max.z<=this.max.z}getParameter(e,t){return t.set((e.x-this.min.x)/(this.max.x-this.min.x),(e.y-this.min.y)/(this.max.y-this.min.y),(e.z-this.min.z)/(this.max.z-this.min.z))}intersectsBox(e){return e.max.x>=this.min.x&&e.min.x<=this.max.x&&e.max.y>=this.min.y&&e.min.y<=this.max.y&&e.max.z>=this.min.z&&e.min.z<=this.max.z}intersectsSphere(e){return this.clampPoint(e.center,li),li.distanceToSquared(e.center)<=e.radius*e.radius}intersectsPlane(e){let t,n;return e.normal.x>0?(t=e.normal.x*this.min.x,n=e.normal.x*this.max.x):(t=e.normal.x*this.max.x,n=e.normal.x*this.min.x),e.normal.y>0?(t+=e.normal.y*this.min.y,n+=e.normal.y*this.max.y):(t+=e.normal.y*this.max.y,n+=e.normal.y*this.min.y),e.normal.z>0?(t+=e.normal.z*this.min.z,n+=e.normal.z*this.max.z):(t+=e.normal.z*this.max.z,n+=e.normal.z*this.min.z),t<=-e.constant&&n>=-e.constant}intersectsTriangle(e){if(this.isEmpty())return!1;this.getCenter(Gr),Ua.subVectors(this.max,Gr),Js.subVectors(e.a,Gr),Qs.subVectors(e.b,Gr),er.subVectors(e.c,Gr),Ki.subVectors(Qs,Js),Zi.subVectors(er,Qs),_s.subVectors(Js,er);let t=[0,-Ki.z,Ki.y,0,-Zi.z,Zi.y,0,-_s.z,_s.y,Ki.z,0,-Ki.x,Zi.z,0,-Zi.x,_s.z,0,-_s.x,-Ki.y,Ki.x,0,-Zi.y,Zi.x,0,-_s.y,_s.x,0];return!hl(t,Js,Qs,er,Ua)||(t=[1,0,0,0,1,0,0,0,1],!hl(t,Js,Qs,er,Ua))?!1:(Ia.crossVectors(Ki,Zi),t=[Ia.x,Ia.y,Ia.z],hl(t,Js,Qs,er,Ua))}clampPoint(e,t){return t.copy(e).clamp(this.min,this.max)}distanceToPoint(e){return this.clampPoint(e,li).distanceTo(e)}getBoundingSphere(e){return this.isEmpty()?e.makeEmpty():(this.getCenter(e.center),e.radius=this.getSize(li).length()*.5),e}intersect(e){return this.min.max(e.min),this.max.min(e.max),this.isEmpty()&&this.makeEmpty(),this}union(e){return this.min.min(e.min),this.max.max(e.max),this}applyMatrix4(e){return this.isEmpty()?this:(Ui[0].set(this.min.x,this.min.y,this.min.z).applyMatrix4(e),Ui[1].set(this.min.x,this.min.y,this.max.z).applyMatrix4(e),Ui[2].set(this.min.x,this.max.y,this.min.z).applyMatrix4(e),Ui[3].set(this.min.x,this.max.y,this.max.z).applyMatrix4(e),Ui[4].set(this.max.x,this.min.y,this.min.z).applyMatrix4(e),Ui[5].set(this.max.x,this.min.y,this.max.z).applyMatrix4(e),Ui[6].set(this.max.x,this.max.y,this.min.z).applyMatrix4(e),Ui[7].set(this.max.x,this.max.y,this.max.z).applyMatrix4(e),this.setFromPoints(Ui),this)}translate(e){return this.min.add(e),this.max.add(e),this}equals(e){return e.min.equals(this.min)&&e.max.equals(this.max)}toJSON(){return{min:this.min.toArray(),max:this.max.toArray()}}fromJSON(e){return this.min.fromArray(e.min),this.max.fromArray(e.max),this}}const Ui=[new H,new H,new H,new H,new H,new H,new H,new H],li=new H,La=new _a,Js=new H,Qs=new H,er=new H,Ki=new H,Zi=new H,_s=new H,Gr=new H,Ua=new H,Ia=new H,vs=new H;function hl(i,e,t,n,s){for(let r=0,a=i.length-3;r<=a;r+=3){vs.fromArray(i,r);const o=s.x*Math.abs(vs.x)+s.y*Math.abs(vs.y)+s.z*Math.abs(vs.z),l=e.dot(vs),c=t.dot(vs),f=n.dot(vs);if(Math.max(-Math.max(l,c,f),Math.min(l,c,f))>o)return!1}return!0}const P_=new _a,Wr=new H,fl=new H;class va{constructor(e=new H,t=-1){this.isSphere=!0,this.center=e,this.radius=t}set(e,t){return this.center.copy(e),this.radius=t,this}setFromPoints(e,t){const n=this.center;t!==void 0?n.copy(t):P_.setFromPoints(e).getCenter(n);let s=0;for(let r=0,a=e.length;r<a;r++)s=Math.max(s,n.distanceToSquared(e[r]));return this.radius=Math.sqrt(s),this}copy(e){return this.center.copy(e.center),this.radius=e.radius,this}isEmpty(){return this.radius<0}makeEmpty(){return this.center.set(0,0,0),this.radius=-1,this}containsPoint(e){return e.distanceToSquared(this.center)<=this.radius*this.radius}distanceToPoint(e){return e.distanceTo(this.center)-this.radius}intersectsSphere(e){const t=this.radius+e.radius;return e.center.distanceToSquared(this.center)<=t*t}intersectsBox(e){return e.intersectsSphere(this)}intersectsPlane(e){return Math.abs(e.distanceToPoint(this.center))<=this.radius}clampPoint(e,t){const n=this.center.distanceToSquared(e);return t.copy(e),n>this.radius*this.radius&&(t.sub(this.center).normalize(),t.multiplyScalar(this.radius).add(this.center)),t}getBoundingBox(e){return this.isEmpty()?(e.makeEmpty(),e):(e.set(this.center,this.center),e.expandByScalar(this.radius),e)}applyMatrix4(e){return this.center.applyMatrix4(e),this.radius=this.radius*e.getMaxScaleOnAxis(),this}translate(e){return this.center.add(e),this}expandByPoint(e){if(this.isEmpty())return this.center.copy(e),this.radius=0,this;Wr.subVectors(e,this.center);const t=Wr.lengthSq();if(t>this.radius*this.radius){const n=Math.sqrt(t),s=(n-this.radius)*.5;this.center.addScaledVector(Wr,s/n),this.radius+=s}return this}union(e){return e.isEmpty()?this:this.isEmpty()?(this.copy(e),this):(this.center.equals(e.center)===!0?this.radius=Math.max(this.radius,e.radius):(fl.subVectors(e.center,this.center).setLength(e.radius),this.expandByPoint(Wr.copy(e.center).add(fl)),this.expandByPoint(Wr.copy(e.center).sub(fl))),this)}equals(e){return e.center.equals(this.center)&&e.radius===this.radius}clone(){return new this.constructor().copy(this)}toJSON(){return{radius:this.radius,center:this.center.toArray()}}fromJSON(e){return this.radius=e.radius,this.center.fromArray(e.center),this}}const Ii=new H,dl=new H,Na=new H,Ji=new H,pl=new H,Fa=new H,ml=new H;class xa{constructor(e=new H,t=new H(0,0,-1)){this.origin=e,this.direction=t}set(e,t){return this.origin.copy(e),this.direction.copy(t),this}copy(e){return this.origin.copy(e.origin),this.direction.copy(e.direction),this}at(e,t){return t.copy(this.origin).addScaledVector(this.direction,e)}lookAt(e){return this.direction.copy(e).sub(this.origin).normalize(),this}recast(e){return this.origin.copy(this.at(e,Ii)),this}closestPointToPoint(e,t){t.subVectors(e,this.origin);const n=t.dot(this.direction);return n<0?t.copy(this.origin):t.copy(this.origin).addScaledVector(this.direction,n)}distanceToPoint(e){return Math.sqrt(this.distanceSqToPoint(e))}distanceSqToPoint(e){const t=Ii.subVectors(e,this.origin).dot(this.direction);return t<0?this.origin.distanceToSquared(e):(Ii.copy(this.origin).addScaledVector(this.direction,t),Ii.distanceToSquared(e))}distanceSqToSegment(e,t,n,s){dl.copy(e).add(t).multiplyScalar(.5),Na.copy(t).sub(e).normalize(),Ji.copy(this.origin).sub(dl);const r=e.distanceTo(t)*.5,a=-this.direction.dot(Na),o=Ji.dot(this.direction),l=-Ji.dot(Na),c=Ji.lengthSq(),f=Math.abs(1-a*a);let u,h,p,v;if(f>0)if(u=a*l-o,h=a*o-l,v=r*f,u>=0)if(h>=-v)if(h<=v){const M=1/f;u*=M,h*=M,p=u*(u+a*h+2*o)+h*(a*u+h+2*l)+c}else h=r,u=Math.max(0,-(a*h+o)),p=-u*u+h*(h+2*l)+c;else h=-r,u=Math.max(0,-(a*h+o)),p=-u*u+h*(h+2*l)+c;else h<=-v?(u=Math.max(0,-(-a*r+o)),h=u>0?-r:Math.min(Math.max(-r,-l),r),p=-u*u+h*(h+2*l)+c):h<=v?(u=0,h=Math.min(Math.max(-r,-l),r),p=h*(h+2*l)+c):(u=Math.max(0,-(a*r+o)),h=u>0?r:Math.min(Math.max(-r,-l),r),p=-u*u+h*(h+2*l)+c);else h=a>0?-r:r,u=Math.max(0,-(a*h+o)),p=-u*u+h*(h+2*l)+c;return n&&n.copy(this.origin).addScaledVector(this.direction,u),s&&s.copy(dl).addScaledVector(Na,h),p}intersectSphere(e,t){Ii.subVectors(e.center,this.origin);const n=Ii.dot(this.direction),s=Ii.dot(Ii)-n*n,r=e.radius*e.radius;if(s>r)return null;const a=Math.sqrt(r-s),o=n-a,l=n+a;return l<0?null:o<0?this.at(l,t):this.at(o,t)}intersectsSphere(e){return e.radius<0?!1:this.distanceSqToPoint(e.center)<=e.radius*e.radius}distanceToPlane(e){const t=e.normal.dot(this.direction);if(t===0)return e.distanceToPoint(this.origin)===0?0:null;const n=-(this.origin.dot(e.normal)+e.constant)/t;return n>=0?n:null}intersectPlane(e,t){const n=this.distanceToPlane(e);return n===null?null:this.at(n,t)}intersectsPlane(e){const t=e.distanceToPoint(this.origin);return t===0||e.normal.dot(this.direction)*t<0}intersectBox(e,t){let n,s,r,a,o,l;const c=1/this.direction.x,f=1/this.direction.y,u=1/this.direction.z,h=this.origin;return c>=0?(n=(e.min.x-h.x)*c,s=(e.max.x-h.x)*c):(n=(e.max.x-h.x)*c,s=(e.min.x-h.x)*c),f>=0?(r=(e.min.y-h.y)*f,a=(e.max.y-h.y)*f):(r=(e.max.y-h.y)*f,a=(e.min.y-h.y)*f),n>a||r>s||((r>n||isNaN(n))&&(n=r),(a<s||isNaN(s))&&(s=a),u>=0?(o=(e.min.z-h.z)*u,l=(e.max.z-h.z)*u):(o=(e.max.z-h.z)*u,l=(e.min.z-h.z)*u),n>l||o>s)||((o>n||n!==n)&&(n=o),(l<s||s!==s)&&(s=l),s<0)?null:this.at(n>=0?n:s,t)}intersectsBox(e){return this.intersectBox(e,Ii)!==null}intersectTriangle(e,t,n,s,r){pl.subVectors(t,e),Fa.subVectors(n,e),ml.crossVectors(pl,Fa);let a=this.direction.dot(ml),o;if(a>0){if(s)return null;o=1}else if(a<0)o=-1,a=-a;else return null;Ji.subVectors(this.origin,e);const l=o*this.direction.dot(Fa.crossVectors(Ji,Fa));if(l<0)return null;const c=o*this.direction.dot(pl.cross(Ji));if(c<0||l+c>a)return null;const f=-o*Ji.dot(ml);return f<0?null:this.at(f/a,r)}applyMatrix4(e){return this.origin.applyMatrix4(e),this.direction.transformDirection(e),this}equals(e){return e.origin.equals(this.origin)&&e.direction.equals(this.direction)}clone(){return new this.constructor().copy(this)}}class Xt{constructor(e,t,n,s,r,a,o,l,c,f,u,h,p,v,M,m){Xt.prototype.isMatrix4=!0,this.elements=[1,0,0,0,0,1,0,0,0,0,1,0,0,0,0,1],e!==void 0&&this.set(e,t,n,s,r,a,o,l,c,f,u,h,p,v,M,m)}set(e,t,n,s,r,a,o,l,c,f,u,h,p,v,M,m){const d=this.elements;return d[0]=e,d[4]=t,d[8]=n,d[12]=s,d[1]=r,d[5]=a,d[9]=o,d[13]=l,d[2]=c,d[6]=f,d[10]=u,d[14]=h,d[3]=p,d[7]=v,d[11]=M,d[15]=m,this}identity(){return this.set(1,0,0,0,0,1,0,0,0,0,1,0,0,0,0,1),this}clone(){return new Xt().fromArray(this.elements)}copy(e){const t=this.elements,n=e.elements;return t[0]=n[0],t[1]=n[1],t[2]=n[2],t[3]=n[3],t[4]=n[4],t[5]=n[5],t[6]=n[6],t[7]=n[7],t[8]=n[8],t[9]=n[9],t[10]=n[10],t[11]=n[11],t[12]=n[12],t[13]=n[13],t[14]=n[14],t[15]=n[15],this}copyPosition(e){const t=this.elements,n=e.elements;return t[12]=n[12],t[13]=n[13],t[14]=n[14],this}setFromMatrix3(e){const t=e.elements;return this.set(t[0],t[3],t[6],0,t[1],t[4],t[7],0,t[2],t[5],t[8],0,0,0,0,1),this}extractBasis(e,t,n){return e.setFromMatrixColumn(this,0),t.setFromMatrixColumn(this,1),n.setFromMatrixColumn(this,2),this}makeBasis(e,t,n){return this.set(e.x,t.x,n.x,0,e.y,t.y,n.y,0,e.z,t.z,n.z,0,0,0,0,1),this}extractRotation(e){const t=this.elements,n=e.elements,s=1/tr.setFromMatrixColumn(e,0).length(),r=1/tr.setFromMatrixColumn(e,1).length(),a=1/tr.setFromMatrixColumn(e,2).length();return t[0]=n[0]*s,t[1]=n[1]*s,t[2]=n[2]*s,t[3]=0,t[4]=n[4]*r,t[5]=n[5]*r,t[6]=n[6]*r,t[7]=0,t[8]=n[8]*a,t[9]=n[9]*a,t[10]=n[10]*a,t[11]=0,t[12]=0,t[13]=0,t[14]=0,t[15]=1,this}makeRotationFromEuler(e){const t=this.elements,n=e.x,s=e.y,r=e.z,a=Math.cos(n),o=Math.sin(n),l=Math.cos(s),c=Math.sin(s),f=Math.cos(r),u=Math.sin(r);if(e.order==="XYZ"){const h=a*f,p=a*u,v=o*f,M=o*u;t[0]=l*f,t[4]=-l*u,t[8]=c,t[1]=p+v*c,t[5]=h-M*c,t[9]=-o*l,t[2]=M-h*c,t[6]=v+p*c,t[10]=a*l}else if(e.order==="YXZ"){const h=l*f,p=l*u,v=c*f,M=c*u;t[0]=h+M*o,t[4]=v*o-p,t[8]=a*c,t[1]=a*u,t[5]=a*f,t[9]=-o,t[2]=p*o-v,t[6]=M+h*o,t[10]=a*l}else if(e.order==="ZXY"){const h=l*f,p=l*u,v=c*f,M=c*u;t[0]=h-M*o,t[4]=-a*u,t[8]=v+p*o,t[1]=p+v*o,t[5]=a*f,t[9]=M-h*o,t[2]=-a*c,t[6]=o,t[10]=a*l}else if(e.order==="ZYX"){const h=a*f,p=a*u,v=o*f,M=o*u;t[0]=l*f,t[4]=v*c-p,t[8]=h*c+M,t[1]=l*u,t[5]=M*c+h,t[9]=p*c-v,t[2]=-c,t[6]=o*l,t[10]=a*l}else if(e.order==="YZX"){const h=a*l,p=a*c,v=o*l,M=o*c;t[0]=l*f,t[4]=M-h*u,t[8]=v*u+p,t[1]=u,t[5]=a*f,t[9]=-o*f,t[2]=-c*f,t[6]=p*u+v,t[10]=h-M*u}else if(e.order==="XZY"){const h=a*l,p=a*c,v=o*l,M=o*c;t[0]=l*f,t[4]=-u,t[8]=c*f,t[1]=h*u+M,t[5]=a*f,t[9]=p*u-v,t[2]=v*u-p,t[6]=o*f,t[10]=M*u+h}return t[3]=0,t[7]=0,t[11]=0,t[12]=0,t[13]=0,t[14]=0,t[15]=1,this}makeRotationFromQuaternion(e){return this.compose(D_,e,L_)}lookAt(e,t,n){const s=this.elements;return Xn.subVectors(e,t),Xn.lengthSq()===0&&(Xn.z=1),Xn.normalize(),Qi.crossVectors(n,Xn),Qi.lengthSq()===0&&(Math.abs(n.z)===1?Xn.x+=1e-4:Xn.z+=1e-4,Xn.normalize(),Qi.crossVectors(n,Xn)),Qi.normalize(),Oa.crossVectors(Xn,Qi),s[0]=Qi.x,s[4]=Oa.x,s[8]=Xn.x,s[1]=Qi.y,s[5]=Oa.y,s[9]=Xn.y,s[2]=Qi.z,s[6]=Oa.z,s[10]=Xn.z,this}multiply(e){return this.multiplyMatrices(this,e)}premultiply(e){return this.multiplyMatrices(e,this)}multiplyMatrices(e,t){const n=e.elements,s=t.elements,r=this.elements,a=n[0],o=n[4],l=n[8],c=n[12],f=n[1],u=n[5],h=n[9],p=n[13],v=n[2],M=n[6],m=n[10],d=n[14],b=n[3],A=n[7],E=n[11],F=n[15],C=s[0],D=s[4],O=s[8],T=s[12],g=s[1],S=s[5],P=s[9],I=s[13],V=s[2],k=s[6],X=s[10],$=s[14],K=s[3],re=s[7],oe=s[11],ue=s[15];return r[0]=a*C+o*g+l*V+c*K,r[4]=a*D+o*S+l*k+c*re,r[8]=a*O+o*P+l*X+c*oe,r[12]=a*T+o*I+l*$+c*ue,r[1]=f*C+u*g+h*V+p*K,r[5]=f*D+u*S+h*k+p*re,r[9]=f*O+u*P+h*X+p*oe,r[13]=f*T+u*I+h*$+p*ue,r[2]=v*C+M*g+m*V+d*K,r[6]=v*D+M*S+m*k+d*re,r[10]=v*O+M*P+m*X+d*oe,r[14]=v*T+M*I+m*$+d*ue,r[3]=b*C+A*g+E*V+F*K,r[7]=b*D+A*S+E*k+F*re,r[11]=b*O+A*P+E*X+F*oe,r[15]=b*T+A*I+E*$+F*ue,this}multiplyScalar(e){const t=this.elements;return t[0]*=e,t[4]*=e,t[8]*=e,t[12]*=e,t[1]*=e,t[5]*=e,t[9]*=e,t[13]*=e,t[2]*=e,t[6]*=e,t[10]*=e,t[14]*=e,t[3]*=e,t[7]*=e,t[11]*=e,t[15]*=e,this}determinant(){const e=this.elements,t=e[0],n=e[4],s=e[8],r=e[12],a=e[1],o=e[5],l=e[9],c=e[13],f=e[2],u=e[6],h=e[10],p=e[14],v=e[3],M=e[7],m=e[11],d=e[15];return v*(+r*l*u-s*c*u-r*o*h+n*c*h+s*o*p-n*l*p)+M*(+t*l*p-t*c*h+r*a*h-s*a*p+s*c*f-r*l*f)+m*(+t*c*u-t*o*p-r*a*u+n*a*p+r*o*f-n*c*f)+d*(-s*o*f-t*l*u+t*o*h+s*a*u-n*a*h+n*l*f)}transpose(){const e=this.elements;let t;return t=e[1],e[1]=e[4],e[4]=t,t=e[2],e[2]=e[8],e[8]=t,t=e[6],e[6]=e[9],e[9]=t,t=e[3],e[3]=e[12],e[12]=t,t=e[7],e[7]=e[13],e[13]=t,t=e[11],e[11]=e[14],e[14]=t,this}setPosition(e,t,n){const s=this.elements;return e.isVector3?(s[12]=e.x,s[13]=e.y,s[14]=e.z):(s[12]=e,s[13]=t,s[14]=n),this}invert(){const e=this.elements,t=e[0],n=e[1],s=e[2],r=e[3],a=e[4],o=e[5],l=e[6],c=e[7],f=e[8],u=e[9],h=e[10],p=e[11],v=e[12],M=e[13],m=e[14],d=e[15],b=u*m*c-M*h*c+M*l*p-o*m*p-u*l*d+o*h*d,A=v*h*c-f*m*c-v*l*p+a*m*p+f*l*d-a*h*d,E=f*M*c-v*u*c+v*o*p-a*M*p-f*o*d+a*u*d,F=v*u*l-f*M*l-v*o*h+a*M*h+f*o*m-a*u*m,C=t*b+n*A+s*E+r*F;if(C===0)return this.set(0,0,0,0,0,0,0,0,0,0,0,0,0,0,0,0);const D=1/C;return e[0]=b*D,e[1]=(M*h*r-u*m*r-M*s*p+n*m*p+u*s*d-n*h*d)*D,e[2]=(o*m*r-M*l*r+M*s*c-n*m*c-o*s*d+n*l*d)*D,e[3]=(u*l*r-o*h*r-u*s*c+n*h*c+o*s*p-n*l*p)*D,e[4]=A*D,e[5]=(f*m*r-v*h*r+v*s*p-t*m*p-f*s*d+t*h*d)*D,e[6]=(v*l*r-a*m*r-v*s*c+t*m*c+a*s*d-t*l*d)*D,e[7]=(a*h*r-f*l*r+f*s*c-t*h*c-a*s*p+t*l*p)*D,e[8]=E*D,e[9]=(v*u*r-f*M*r-v*n*p+t*M*p+f*n*d-t*u*d)*D,e[10]=(a*M*r-v*o*r+v*n*c-t*M*c-a*n*d+t*o*d)*D,e[11]=(f*o*r-a*u*r-f*n*c+t*u*c+a*n*p-t*o*p)*D,e[12]=F*D,e[13]=(f*M*s-v*u*s+v*n*h-t*M*h-f*n*m+t*u*m)*D,e[14]=(v*o*s-a*M*s-v*n*l+t*M*l+a*n*m-t*o*m)*D,e[15]=(a*u*s-f*o*s+f*n*l-t*u*l-a*n*h+t*o*h)*D,this}scale(e){const t=this.elements,n=e.x,s=e.y,r=e.z;return t[0]*=n,t[4]*=s,t[8]*=r,t[1]*=n,t[5]*=s,t[9]*=r,t[2]*=n,t[6]*=s,t[10]*=r,t[3]*=n,t[7]*=s,t[11]*=r,this}getMaxScaleOnAxis(){const e=this.elements,t=e[0]*e[0]+e[1]*e[1]+e[2]*e[2],n=e[4]*e[4]+e[5]*e[5]+e[6]*e[6],s=e[8]*e[8]+e[9]*e[9]+e[10]*e[10];return Math.sqrt(Math.max(t,n,s))}makeTranslation(e,t,n){return e.isVector3?this.set(1,0,0,e.x,0,1,0,e.y,0,0,1,e.z,0,0,0,1):this.set(1,0,0,e,0,1,0,t,0,0,1,n,0,0,0,1),this}makeRotationX(e){const t=Math.cos(e),n=Math.sin(e);return this.set(1,0,0,0,0,t,-n,0,0,n,t,0,0,0,0,1),this}makeRotationY(e){const t=Math.cos(e),n=Math.sin(e);return this.set(t,0,n,0,0,1,0,0,-n,0,t,0,0,0,0,1),this}makeRotationZ(e){const t=Math.cos(e),n=Math.sin(e);return this.set(t,-n,0,0,n,t,0,0,0,0,1,0,0,0,0,1),this}makeRotationAxis(e,t){const n=Math.cos(t),s=Math.sin(t),r=1-n,a=e.x,o=e.y,l=e.z,c=r*a,f=r*o;return this.set(c*a+n,c*o-s*l,c*l+s*o,0,c*o+s*l,f*o+n,f*l-s*a,0,c*l-s*o,f*l+s*a,r*l*l+n,0,0,0,0,1),this}makeScale(e,t,n){return this.set(e,0,0,0,0,t,0,0,0,0,n,0,0,0,0,1),this}makeShear(e,t,n,s,r,a){return this.set(1,n,r,0,e,1,a,0,t,s,1,0,0,0,0,1),this}compose(e,t,n){const s=this.elements,r=t._x,a=t._y,o=t._z,l=t._w,c=r+r,f=a+a,u=o+o,h=r*c,p=r*f,v=r*u,M=a*f,m=a*u,d=o*u,b=l*c,A=l*f,E=l*u,F=n.x,C=n.y,D=n.z;return s[0]=(1-(M+d))*F,s[1]=(p+E)*F,s[2]=(v-A)*F,s[3]=0,s[4]=(p-E)*C,s[5]=(1-(h+d))*C,s[6]=(m+b)*C,s[7]=0,s[8]=(v+A)*D,s[9]=(m-b)*D,s[10]=(1-(h+M))*D,s[11]=0,s[12]=e.x,s[13]=e.y,s[14]=e.z,s[15]=1,this}decompose(e,t,n){const s=this.elements;let r=tr.set(s[0],s[1],s[2]).length();const a=tr.set(s[4],s[5],s[6]).length(),o=tr.set(s[8],s[9],s[10]).length();this.determinant()<0&&(r=-r),e.x=s[12],e.y=s[13],e.z=s[14],ci.copy(this);const c=1/r,f=1/a,u=1/o;return ci.elements[0]*=c,ci.elements[1]*=c,ci.elements[2]*=c,ci.elements[4]*=f,ci.elements[5]*=f,ci.elements[6]*=f,ci.elements[8]*=u,ci.elements[9]*=u,ci.elements[10]*=u,t.setFromRotationMatrix(ci),n.x=r,n.y=a,n.z=o,this}makePerspective(e,t,n,s,r,a,o=Ti,l=!1){const c=this.elements,f=2*r/(t-e),u=2*r/(n-s),h=(t+e)/(t-e),p=(n+s)/(n-s);let v,M;if(l)v=r/(a-r),M=a*r/(a-r);else if(o===Ti)v=-(a+r)/(a-r),M=-2*a*r/(a-r);else if(o===So)v=-a/(a-r),M=-a*r/(a-r);else throw new Error("THREE.Matrix4.makePerspective(): Invalid coordinate system: "+o);return c[0]=f,c[4]=0,c[8]=h,c[12]=0,c[1]=0,c[5]=u,c[9]=p,c[13]=0,c[2]=0,c[6]=0,c[10]=v,c[14]=M,c[3]=0,c[7]=0,c[11]=-1,c[15]=0,this}makeOrthographic(e,t,n,s,r,a,o=Ti,l=!1){const c=this.elements,f=2/(t-e),u=2/(n-s),h=-(t+e)/(t-e),p=-(n+s)/(n-s);let v,M;if(l)v=1/(a-r),M=a/(a-r);else if(o===Ti)v=-2/(a-r),M=-(a+r)/(a-r);else if(o===So)v=-1/(a-r),M=-r/(a-r);else throw new Error("THREE.Matrix4.makeOrthographic(): Invalid coordinate system: "+o);return c[0]=f,c[4]=0,c[8]=0,c[12]=h,c[1]=0,c[5]=u,c[9]=0,c[13]=p,c[2]=0,c[6]=0,c[10]=v,c[14]=M,c[3]=0,c[7]=0,c[11]=0,c[15]=1,this}equals(e){const t=this.elements,n=e.elements;for(let s=0;s<16;s++)if(t[s]!==n[s])return!1;return!0}fromArray(e,t=0){for(let n=0;n<16;n++)this.elements[n]=e[n+t];return this}toArray(e=[],t=0){const n=this.elements;return e[t]=n[0],e[t+1]=n[1],e[t+2]=n[2],e[t+3]=n[3],e[t+4]=n[4],e[t+5]=n[5],e[t+6]=n[6],e[t+7]=n[7],e[t+8]=n[8],e[t+9]=n[9],e[t+10]=n[10],e[t+11]=n[11],e[t+12]=n[12],e[t+13]=n[13],e[t+14]=n[14],e[t+15]=n[15],e}}const tr=new H,ci=new Xt,D_=new H(0,0,0),L_=new H(1,1,1),Qi=new H,Oa=new H,Xn=new H,Oh=new Xt,Bh=new Ns;class Ci{constructor(e=0,t=0,n=0,s=Ci.DEFAULT_ORDER){this.isEuler=!0,this._x=e,this._y=t,this._z=n,this._order=s}get x(){return this._x}set x(e){this._x=e,this._onChangeCallback()}get y(){return this._y}set y(e){this._y=e,this._onChangeCallback()}get z(){return this._z}set z(e){this._z=e,this._onChangeCallback()}get order(){return this._order}set order(e){this._order=e,this._onChangeCallback()}set(e,t,n,s=this._order){return this._x=e,this._y=t,this._z=n,this._order=s,this._onChangeCallback(),this}clone(){return new this.constructor(this._x,this._y,this._z,this._order)}copy(e){return this._x=e._x,this._y=e._y,this._z=e._z,this._order=e._order,this._onChangeCallback(),this}setFromRotationMatrix(e,t=this._order,n=!0){const s=e.elements,r=s[0],a=s[4],o=s[8],l=s[1],c=s[5],f=s[9],u=s[2],h=s[6],p=s[10];switch(t){case"XYZ":this._y=Math.asin(ut(o,-1,1)),Math.abs(o)<.9999999?(this._x=Math.atan2(-f,p),this._z=Math.atan2(-a,r)):(this._x=Math.atan2(h,c),this._z=0);break;case"YXZ":this._x=Math.asin(-ut(f,-1,1)),Math.abs(f)<.9999999?(this._y=Math.atan2(o,p),this._z=Math.atan2(l,c)):(this._y=Math.atan2(-u,r),this._z=0);break;case"ZXY":this._x=Math.asin(ut(h,-1,1)),Math.abs(h)<.9999999?(this._y=Math.atan2(-u,p),this._z=Math.atan2(-a,c)):(this._y=0,this._z=Math.atan2(l,r));break;case"ZYX":this._y=Math.asin(-ut(u,-1,1)),Math.abs(u)<.9999999?(this._x=Math.atan2(h,p),this._z=Math.atan2(l,r)):(this._x=0,this._z=Math.atan2(-a,c));break;case"YZX":this._z=Math.asin(ut(l,-1,1)),Math.abs(l)<.9999999?(this._x=Math.atan2(-f,c),this._y=Math.atan2(-u,r)):(this._x=0,this._y=Math.atan2(o,p));break;case"XZY":this._z=Math.asin(-ut(a,-1,1)),Math.abs(a)<.9999999?(this._x=Math.atan2(h,c),this._y=Math.atan2(o,r)):(this._x=Math.atan2(-f,p),this._y=0);break;default:console.warn("THREE.Euler: .setFromRotationMatrix() encountered an unknown order: "+t)}return this._order=t,n===!0&&this._onChangeCallback(),this}setFromQuaternion(e,t,n){return Oh.makeRotationFromQuaternion(e),this.setFromRotationMatrix(Oh,t,n)}setFromVector3(e,t=this._order){return this.set(e.x,e.y,e.z,t)}reorder(e){return Bh.setFromEuler(this),this.setFromQuaternion(Bh,e)}equals(e){return e._x===this._x&&e._y===this._y&&e._z===this._z&&e._order===this._order}fromArray(e){return this._x=e[0],this._y=e[1],this._z=e[2],e[3]!==void 0&&(this._order=e[3]),this._onChangeCallback(),this}toArray(e=[],t=0){return e[t]=this._x,e[t+1]=this._y,e[t+2]=this._z,e[t+3]=this._order,e}_onChange(e){return this._onChangeCallback=e,this}_onChangeCallback(){}*[Symbol.iterator](){yield this._x,yield this._y,yield this._z,yield this._order}}Ci.DEFAULT_ORDER="XYZ";class pu{constructor(){this.mask=1}set(e){this.mask=(1<<e|0)>>>0}enable(e){this.mask|=1<<e|0}enableAll(){this.mask=-1}toggle(e){this.mask^=1<<e|0}disable(e){this.mask&=~(1<<e|0)}disableAll(){this.mask=0}test(e){return(this.mask&e.mask)!==0}isEnabled(e){return(this.mask&(1<<e|0))!==0}}let U_=0;const kh=new H,nr=new Ns,Ni=new Xt,Ba=new H,Xr=new H,I_=new H,N_=new Ns,zh=new H(1,0,0),Hh=new H(0,1,0),Vh=new H(0,0,1),Gh={type:"added"},F_={type:"removed"},ir={type:"childadded",child:null},gl={type:"childremoved",child:null};class nn extends Bs{constructor(){super(),this.isObject3D=!0,Object.defineProperty(this,"id",{value:U_++}),this.uuid=ga(),this.name="",this.type="Object3D",this.parent=null,this.children=[],this.up=nn.DEFAULT_UP.clone();const e=new H,t=new Ci,n=new Ns,s=new H(1,1,1);function r(){n.setFromEuler(t,!1)}function a(){t.setFromQuaternion(n,void 0,!1)}t._onChange(r),n._onChange(a),Object.defineProperties(this,{position:{configurable:!0,enumerable:!0,value:e},rotation:{configurable:!0,enumerable:!0,value:t},quaternion:{configurable:!0,enumerable:!0,value:n},scale:{configurable:!0,enumerable:!0,value:s},modelViewMatrix:{value:new Xt},normalMatrix:{value:new st}}),this.matrix=new Xt,this.matrixWorld=new Xt,this.matrixAutoUpdate=nn.DEFAULT_MATRIX_AUTO_UPDATE,this.matrixWorldAutoUpdate=nn.DEFAULT_MATRIX_WORLD_AUTO_UPDATE,this.matrixWorldNeedsUpdate=!1,this.layers=new pu,this.visible=!0,this.castShadow=!1,this.receiveShadow=!1,this.frustumCulled=!0,this.renderOrder=0,this.animations=[],this.customDepthMaterial=void 0,this.customDistanceMaterial=void 0,this.userData={}}onBeforeShadow(){}onAfterShadow(){}onBeforeRender(){}onAfterRender(){}applyMatrix4(e){this.matrixAutoUpdate&&this.updateMatrix(),this.matrix.premultiply(e),this.matrix.decompose(this.position,this.quaternion,this.scale)}applyQuaternion(e){return this.quaternion.premultiply(e),this}setRotationFromAxisAngle(e,t){this.quaternion.setFromAxisAngle(e,t)}setRotationFromEuler(e){this.quaternion.setFromEuler(e,!0)}setRotationFromMatrix(e){this.quaternion.setFromRotationMatrix(e)}setRotationFromQuaternion(e){this.quaternion.copy(e)}rotateOnAxis(e,t){return nr.setFromAxisAngle(e,t),this.quaternion.multiply(nr),this}rotateOnWorldAxis(e,t){return nr.setFromAxisAngle(e,t),this.quaternion.premultiply(nr),this}rotateX(e){return this.rotateOnAxis(zh,e)}rotateY(e){return this.rotateOnAxis(Hh,e)}rotateZ(e){return this.rotateOnAxis(Vh,e)}translateOnAxis(e,t){return kh.copy(e).applyQuaternion(this.quaternion),this.position.add(kh.multiplyScalar(t)),this}translateX(e){return this.translateOnAxis(zh,e)}translateY(e){return this.translateOnAxis(Hh,e)}translateZ(e){return this.translateOnAxis(Vh,e)}localToWorld(e){return this.updateWorldMatrix(!0,!1),e.applyMatrix4(this.matrixWorld)}worldToLocal(e){return this.updateWorldMatrix(!0,!1),e.applyMatrix4(Ni.copy(this.matrixWorld).invert())}lookAt(e,t,n){e.isVector3?Ba.copy(e):Ba.set(e,t,n);const s=this.parent;this.updateWorldMatrix(!0,!1),Xr.setFromMatrixPosition(this.matrixWorld),this.isCamera||this.isLight?Ni.lookAt(Xr,Ba,this.up):Ni.lookAt(Ba,Xr,this.up),this.quaternion.setFromRotationMatrix(Ni),s&&(Ni.extractRotation(s.matrixWorld),nr.setFromRotationMatrix(Ni),this.quaternion.premultiply(nr.invert()))}add(e){if(arguments.length>1){for(let t=0;t<arguments.length;t++)this.add(arguments[t]);return this}return e===this?(console.error("THREE.Object3D.add: object can't be added as a child of itself.",e),this):(e&&e.isObject3D?(e.removeFromParent(),e.parent=this,this.children.push(e),e.dispatchEvent(Gh),ir.child=e,this.dispatchEvent(ir),ir.child=null):console.error("THREE.Object3D.add: object not an instance of THREE.Object3D.",e),this)}remove(e){if(arguments.length>1){for(let n=0;n<arguments.length;n++)this.remove(arguments[n]);return this}const t=this.children.indexOf(e);return t!==-1&&(e.parent=null,this.children.splice(t,1),e.dispatchEvent(F_),gl.child=e,this.dispatchEvent(gl),gl.child=null),this}removeFromParent(){const e=this.parent;return e!==null&&e.remove(this),this}clear(){return this.remove(...this.children)}attach(e){return this.updateWorldMatrix(!0,!1),Ni.copy(this.matrixWorld).invert(),e.parent!==null&&(e.parent.updateWorldMatrix(!0,!1),Ni.multiply(e.parent.matrixWorld)),e.applyMatrix4(Ni),e.removeFromParent(),e.parent=this,this.children.push(e),e.updateWorldMatrix(!1,!0),e.dispatchEvent(Gh),ir.child=e,this.dispatchEvent(ir),ir.child=null,this}getObjectById(e){return this.getObjectByProperty("id",e)}getObjectByName(e){return this.getObjectByProperty("name",e)}getObjectByProperty(e,t){if(this[e]===t)return this;for(let n=0,s=this.children.length;n<s;n++){const a=this.children[n].getObjectByProperty(e,t);if(a!==void 0)return a}}getObjectsByProperty(e,t,n=[]){this[e]===t&&n.push(this);const s=this.children;for(let r=0,a=s.length;r<a;r++)s[r].getObjectsByProperty(e,t,n);return n}getWorldPosition(e){return this.updateWorldMatrix(!0,!1),e.setFromMatrixPosition(this.matrixWorld)}getWorldQuaternion(e){return this.updateWorldMatrix(!0,!1),this.matrixWorld.decompose(Xr,e,I_),e}getWorldScale(e){return this.updateWorldMatrix(!0,!1),this.matrixWorld.decompose(Xr,N_,e),e}getWorldDirection(e){this.updateWorldMatrix(!0,!1);const t=this.matrixWorld.elements;return e.set(t[8],t[9],t[10]).normalize()}raycast(){}traverse(e){e(this);const t=this.children;for(let n=0,s=t.length;n<s;n++)t[n].traverse(e)}traverseVisible(e){if(this.visible===!1)return;e(this);const t=this.children;for(let n=0,s=t.length;n<s;n++)t[n].traverseVisible(e)}traverseAncestors(e){const t=this.parent;t!==null&&(e(t),t.traverseAncestors(e))}updateMatrix(){this.matrix.compose(this.position,this.quaternion,this.scale),this.matrixWorldNeedsUpdate=!0}updateMatrixWorld(e){this.matrixAutoUpdate&&this.updateMatrix(),(this.matrixWorldNeedsUpdate||e)&&(this.matrixWorldAutoUpdate===!0&&(this.parent===null?this.matrixWorld.copy(this.matrix):this.matrixWorld.multiplyMatrices(this.parent.matrixWorld,this.matrix)),this.matrixWorldNeedsUpdate=!1,e=!0);const t=this.children;for(let n=0,s=t.length;n<s;n++)t[n].updateMatrixWorld(e)}updateWorldMatrix(e,t){const n=this.parent;if(e===!0&&n!==null&&n.updateWorldMatrix(!0,!1),this.matrixAutoUpdate&&this.updateMatrix(),this.matrixWorldAutoUpdate===!0&&(this.parent===null?this.matrixWorld.copy(this.matrix):this.matrixWorld.multiplyMatrices(this.parent.matrixWorld,this.matrix)),t===!0){const s=this.children;for(let r=0,a=s.length;r<a;r++)s[r].updateWorldMatrix(!1,!0)}}toJSON(e){const t=e===void 0||typeof e=="string",n={};t&&(e={geometries:{},materials:{},textures:{},images:{},shapes:{},skeletons:{},animations:{},nodes:{}},n.metadata={version:4.7,type:"Object",generator:"Object3D.toJSON"});const s={};s.uuid=this.uuid,s.type=this.type,this.name!==""&&(s.name=this.name),this.castShadow===!0&&(s.castShadow=!0),this.receiveShadow===!0&&(s.receiveShadow=!0),this.visible===!1&&(s.visible=!1),this.frustumCulled===!1&&(s.frustumCulled=!1),this.renderOrder!==0&&(s.renderOrder=this.renderOrder),Object.keys(this.userData).length>0&&(s.userData=this.userData),s.layers=this.layers.mask,s.matrix=this.matrix.toArray(),s.up=this.up.toArray(),this.matrixAutoUpdate===!1&&(s.matrixAutoUpdate=!1),this.isInstancedMesh&&(s.type="InstancedMesh",s.count=this.count,s.instanceMatrix=this.instanceMatrix.toJSON(),this.instanceColor!==null&&(s.instanceColor=this.instanceColor.toJSON())),this.isBatchedMesh&&(s.type="BatchedMesh",s.perObjectFrustumCulled=this.perObjectFrustumCulled,s.sortObjects=this.sortObjects,s.drawRanges=this._drawRanges,s.reservedRanges=this._reservedRanges,s.geometryInfo=this._geometryInfo.map(o=>({...o,boundingBox:o.boundingBox?o.boundingBox.toJSON():void 0,boundingSphere:o.boundingSphere?o.boundingSphere.toJSON():void 0})),s.instanceInfo=this._instanceInfo.map(o=>({...o})),s.availableInstanceIds=this._availableInstanceIds.slice(),s.availableGeometryIds=this._availableGeometryIds.slice(),s.nextIndexStart=this._nextIndexStart,s.nextVertexStart=this._nextVertexStart,s.geometryCount=this._geometryCount,s.maxInstanceCount=this._maxInstanceCount,s.maxVertexCount=this._maxVertexCount,s.maxIndexCount=this._maxIndexCount,s.geometryInitialized=this._geometryInitialized,s.matricesTexture=this._matricesTexture.toJSON(e),s.indirectTexture=this._indirectTexture.toJSON(e),this._colorsTexture!==null&&(s.colorsTexture=this._colorsTexture.toJSON(e)),this.boundingSphere!==null&&(s.boundingSphere=this.boundingSphere.toJSON()),this.boundingBox!==null&&(s.boundingBox=this.boundingBox.toJSON()));function r(o,l){return o[l.uuid]===void 0&&(o[l.uuid]=l.toJSON(e)),l.uuid}if(this.isScene)this.background&&(this.background.isColor?s.background=this.background.toJSON():this.background.isTexture&&(s.background=this.background.toJSON(e).uuid)),this.environment&&this.environment.isTexture&&this.environment.isRenderTargetTexture!==!0&&(s.environment=this.environment.toJSON(e).uuid);else if(this.isMesh||this.isLine||this.isPoints){s.geometry=r(e.geometries,this.geometry);const o=this.geometry.parameters;if(o!==void 0&&o.shapes!==void 0){const l=o.shapes;if(Array.isArray(l))for(let c=0,f=l.length;c<f;c++){const u=l[c];r(e.shapes,u)}else r(e.shapes,l)}}if(this.isSkinnedMesh&&(s.bindMode=this.bindMode,s.bindMatrix=this.bindMatrix.toArray(),this.skeleton!==void 0&&(r(e.skeletons,this.skeleton),s.skeleton=this.skeleton.uuid)),this.material!==void 0)if(Array.isArray(this.material)){const o=[];for(let l=0,c=this.material.length;l<c;l++)o.push(r(e.materials,this.material[l]));s.material=o}else s.material=r(e.materials,this.material);if(this.children.length>0){s.children=[];for(let o=0;o<this.children.length;o++)s.children.push(this.children[o].toJSON(e).object)}if(this.animations.length>0){s.animations=[];for(let o=0;o<this.animations.length;o++){const l=this.animations[o];s.animations.push(r(e.animations,l))}}if(t){const o=a(e.geometries),l=a(e.materials),c=a(e.textures),f=a(e.images),u=a(e.shapes),h=a(e.skeletons),p=a(e.animations),v=a(e.nodes);o.length>0&&(n.geometries=o),l.length>0&&(n.materials=l),c.length>0&&(n.textures=c),f.length>0&&(n.images=f),u.length>0&&(n.shapes=u),h.length>0&&(n.skeletons=h),p.length>0&&(n.animations=p),v.length>0&&(n.nodes=v)}return n.object=s,n;function a(o){const l=[];for(const c in o){const f=o[c];delete f.metadata,l.push(f)}return l}}clone(e){return new this.constructor().copy(this,e)}copy(e,t=!0){if(this.name=e.name,this.up.copy(e.up),this.position.copy(e.position),this.rotation.order=e.rotation.order,this.quaternion.copy(e.quaternion),this.scale.copy(e.scale),this.matrix.copy(e.matrix),this.matrixWorld.copy(e.matrixWorld),this.matrixAutoUpdate=e.matrixAutoUpdate,this.matrixWorldAutoUpdate=e.matrixWorldAutoUpdate,this.matrixWorldNeedsUpdate=e.matrixWorldNeedsUpdate,this.layers.mask=e.layers.mask,this.visible=e.visible,this.castShadow=e.castShadow,this.receiveShadow=e.receiveShadow,this.frustumCulled=e.frustumCulled,this.renderOrder=e.renderOrder,this.animations=e.animations.slice(),this.userData=JSON.parse(JSON.stringify(e.userData)),t===!0)for(let n=0;n<e.children.length;n++){const s=e.children[n];this.add(s.clone())}return this}}nn.DEFAULT_UP=new H(0,1,0);nn.DEFAULT_MATRIX_AUTO_UPDATE=!0;nn.DEFAULT_MATRIX_WORLD_AUTO_UPDATE=!0;const ui=new H,Fi=new H,_l=new H,Oi=new H,sr=new H,rr=new H,Wh=new H,vl=new H,xl=new H,Ml=new H,Sl=new $t,yl=new $t,El=new $t;class pi{constructor(e=new H,t=new H,n=new H){this.a=e,this.b=t,this.c=n}static getNormal(e,t,n,s){s.subVectors(n,t),ui.subVectors(e,t),s.cross(ui);const r=s.lengthSq();return r>0?s.multiplyScalar(1/Math.sqrt(r)):s.set(0,0,0)}static getBarycoord(e,t,n,s,r){ui.subVectors(s,t),Fi.subVectors(n,t),_l.subVectors(e,t);const a=ui.dot(ui),o=ui.dot(Fi),l=ui.dot(_l),c=Fi.dot(Fi),f=Fi.dot(_l),u=a*c-o*o;if(u===0)return r.set(0,0,0),null;const h=1/u,p=(c*l-o*f)*h,v=(a*f-o*l)*h;return r.set(1-p-v,v,p)}static containsPoint(e,t,n,s){return this.getBarycoord(e,t,n,s,Oi)===null?!1:Oi.x>=0&&Oi.y>=0&&Oi.x+Oi.y<=1}static getInterpolation(e,t,n,s,r,a,o,l){return this.getBarycoord(e,t,n,s,Oi)===null?(l.x=0,l.y=0,"z"in l&&(l.z=0),"w"in l&&(l.w=0),null):(l.setScalar(0),l.addScaledVector(r,Oi.x),l.addScaledVector(a,Oi.y),l.addScaledVector(o,Oi.z),l)}static getInterpolatedAttribute(e,t,n,s,r,a){return Sl.setScalar(0),yl.setScalar(0),El.setScalar(0),Sl.fromBufferAttribute(e,t),yl.fromBufferAttribute(e,n),El.fromBufferAttribute(e,s),a.setScalar(0),a.addScaledVector(Sl,r.x),a.addScaledVector(yl,r.y),a.addScaledVector(El,r.z),a}static isFrontFacing(e,t,n,s){return ui.subVectors(n,t),Fi.subVectors(e,t),ui.cross(Fi).dot(s)<0}set(e,t,n){return this.a.copy(e),this.b.copy(t),this.c.copy(n),this}setFromPointsAndIndices(e,t,n,s){return this.a.copy(e[t]),this.b.copy(e[n]),this.c.copy(e[s]),this}setFromAttributeAndIndices(e,t,n,s){return this.a.fromBufferAttribute(e,t),this.b.fromBufferAttribute(e,n),this.c.fromBufferAttribute(e,s),this}clone(){return new this.constructor().copy(this)}copy(e){return this.a.copy(e.a),this.b.copy(e.b),this.c.copy(e.c),this}getArea(){return ui.subVectors(this.c,this.b),Fi.subVectors(this.a,this.b),ui.cross(Fi).length()*.5}getMidpoint(e){return e.addVectors(this.a,this.b).add(this.c).multiplyScalar(1/3)}getNormal(e){return pi.getNormal(this.a,this.b,this.c,e)}getPlane(e){return e.setFromCoplanarPoints(this.a,this.b,this.c)}getBarycoord(e,t){return pi.getBarycoord(e,this.a,this.b,this.c,t)}getInterpolation(e,t,n,s,r){return pi.getInterpolation(e,this.a,this.b,this.c,t,n,s,r)}containsPoint(e){return pi.containsPoint(e,this.a,this.b,this.c)}isFrontFacing(e){return pi.isFrontFacing(this.a,this.b,this.c,e)}intersectsBox(e){return e.intersectsTriangle(this)}closestPointToPoint(e,t){const n=this.a,s=this.b,r=this.c;let a,o;sr.subVectors(s,n),rr.subVectors(r,n),vl.subVectors(e,n);const l=sr.dot(vl),c=rr.dot(vl);if(l<=0&&c<=0)return t.copy(n);xl.subVectors(e,s);const f=sr.dot(xl),u=rr.dot(xl);if(f>=0&&u<=f)return t.copy(s);const h=l*u-f*c;if(h<=0&&l>=0&&f<=0)return a=l/(l-f),t.copy(n).addScaledVector(sr,a);Ml.subVectors(e,r);const p=sr.dot(Ml),v=rr.dot(Ml);if(v>=0&&p<=v)return t.copy(r);const M=p*c-l*v;if(M<=0&&c>=0&&v<=0)return o=c/(c-v),t.copy(n).addScaledVector(rr,o);const m=f*v-p*u;if(m<=0&&u-f>=0&&p-v>=0)return Wh.subVectors(r,s),o=(u-f)/(u-f+(p-v)),t.copy(s).addScaledVector(Wh,o);const d=1/(m+M+h);return a=M*d,o=h*d,t.copy(n).addScaledVector(sr,a).addScaledVector(rr,o)}equals(e){return e.a.equals(this.a)&&e.b.equals(this.b)&&e.c.equals(this.c)}}const Yd={aliceblue:15792383,antiquewhite:16444375,aqua:65535,aquamarine:8388564,azure:15794175,beige:16119260,bisque:16770244,black:0,blanchedalmond:16772045,blue:255,blueviolet:9055202,brown:10824234,burlywood:14596231,cadetblue:6266528,chartreuse:8388352,chocolate:13789470,coral:16744272,cornflowerblue:6591981,cornsilk:16775388,crimson:14423100,cyan:65535,darkblue:139,darkcyan:35723,darkgoldenrod:12092939,darkgray:11119017,darkgreen:25600,darkgrey:11119017,darkkhaki:12433259,darkmagenta:9109643,darkolivegreen:5597999,darkorange:16747520,darkorchid:10040012,darkred:9109504,darksalmon:15308410,darkseagreen:9419919,darkslateblue:4734347,darkslategray:3100495,darkslategrey:3100495,darkturquoise:52945,darkviolet:9699539,deeppink:16716947,deepskyblue:49151,dimgray:6908265,dimgrey:6908265,dodgerblue:2003199,firebrick:11674146,floralwhite:16775920,forestgreen:2263842,fuchsia:16711935,gainsboro:14474460,ghostwhite:16316671,gold:16766720,goldenrod:14329120,gray:8421504,green:32768,greenyellow:11403055,grey:8421504,honeydew:15794160,hotpink:16738740,indianred:13458524,indigo:4915330,ivory:16777200,khaki:15787660,lavender:15132410,lavenderblush:16773365,lawngreen:8190976,lemonchiffon:16775885,lightblue:11393254,lightcoral:15761536,lightcyan:14745599,lightgoldenrodyellow:16448210,lightgray:13882323,lightgreen:9498256,lightgrey:13882323,lightpink:16758465,lightsalmon:16752762,lightseagreen:2142890,lightskyblue:8900346,lightslategray:7833753,lightslategrey:7833753,lightsteelblue:11584734,lightyellow:16777184,lime:65280,limegreen:3329330,linen:16445670,magenta:16711935,maroon:8388608,mediumaquamarine:6737322,mediumblue:205,mediumorchid:12211667,mediumpurple:9662683,mediumseagreen:3978097,mediumslateblue:8087790,mediumspringgreen:64154,mediumturquoise:4772300,mediumvioletred:13047173,midnightblue:1644912,mintcream:16121850,mistyrose:16770273,moccasin:16770229,navajowhite:16768685,navy:128,oldlace:16643558,olive:8421376,olivedrab:7048739,orange:16753920,orangered:16729344,orchid:14315734,palegoldenrod:15657130,palegreen:10025880,paleturquoise:11529966,palevioletred:14381203,papayawhip:16773077,peachpuff:16767673,peru:13468991,pink:16761035,plum:14524637,powderblue:11591910,purple:8388736,rebeccapurple:6697881,red:16711680,rosybrown:12357519,royalblue:4286945,saddlebrown:9127187,salmon:16416882,sandybrown:16032864,seagreen:3050327,seashell:16774638,sienna:10506797,silver:12632256,skyblue:8900331,slateblue:6970061,slategray:7372944,slategrey:7372944,snow:16775930,springgreen:65407,steelblue:4620980,tan:13808780,teal:32896,thistle:14204888,tomato:16737095,turquoise:4251856,violet:15631086,wheat:16113331,white:16777215,whitesmoke:16119285,yellow:16776960,yellowgreen:10145074},es={h:0,s:0,l:0},ka={h:0,s:0,l:0};function bl(i,e,t){return t<0&&(t+=1),t>1&&(t-=1),t<1/6?i+(e-i)*6*t:t<1/2?e:t<2/3?i+(e-i)*6*(2/3-t):i}class lt{constructor(e,t,n){return this.isColor=!0,this.r=1,this.g=1,this.b=1,this.set(e,t,n)}set(e,t,n){if(t===void 0&&n===void 0){const s=e;s&&s.isColor?this.copy(s):typeof s=="number"?this.setHex(s):typeof s=="string"&&this.setStyle(s)}else this.setRGB(e,t,n);return this}setScalar(e){return this.r=e,this.g=e,this.b=e,this}setHex(e,t=ni){return e=Math.floor(e),this.r=(e>>16&255)/255,this.g=(e>>8&255)/255,this.b=(e&255)/255,vt.colorSpaceToWorking(this,t),this}setRGB(e,t,n,s=vt.workingColorSpace){return this.r=e,this.g=t,this.b=n,vt.colorSpaceToWorking(this,s),this}setHSL(e,t,n,s=vt.workingColorSpace){if(e=M_(e,1),t=ut(t,0,1),n=ut(n,0,1),t===0)this.r=this.g=this.b=n;else{const r=n<=.5?n*(1+t):n+t-n*t,a=2*n-r;this.r=bl(a,r,e+1/3),this.g=bl(a,r,e),this.b=bl(a,r,e-1/3)}return vt.colorSpaceToWorking(this,s),this}setStyle(e,t=ni){function n(r){r!==void 0&&parseFloat(r)<1&&console.warn("THREE.Color: Alpha component of "+e+" will be ignored.")}let s;if(s=/^(\w+)\(([^\)]*)\)/.exec(e)){let r;const a=s[1],o=s[2];switch(a){case"rgb":case"rgba":if(r=/^\s*(\d+)\s*,\s*(\d+)\s*,\s*(\d+)\s*(?:,\s*(\d*\.?\d+)\s*)?$/.exec(o))return n(r[4]),this.setRGB(Math.min(255,parseInt(r[1],10))/255,Math.min(255,parseInt(r[2],10))/255,Math.min(255,parseInt(r[3],10))/255,t);if(r=/^\s*(\d+)\%\s*,\s*(\d+)\%\s*,\s*(\d+)\%\s*(?:,\s*(\d*\.?\d+)\s*)?$/.exec(o))return n(r[4]),this.setRGB(Math.min(100,parseInt(r[1],10))/100,Math.min(100,parseInt(r[2],10))/100,Math.min(100,parseInt(r[3],10))/100,t);break;case"hsl":case"hsla":if(r=/^\s*(\d*\.?\d+)\s*,\s*(\d*\.?\d+)\%\s*,\s*(\d*\.?\d+)\%\s*(?:,\s*(\d*\.?\d+)\s*)?$/.exec(o))return n(r[4]),this.setHSL(parseFloat(r[1])/360,parseFloat(r[2])/100,parseFloat(r[3])/100,t);break;default:console.warn("THREE.Color: Unknown color model "+e)}}else if(s=/^\#([A-Fa-f\d]+)$/.exec(e)){const r=s[1],a=r.length;if(a===3)return this.setRGB(parseInt(r.charAt(0),16)/15,parseInt(r.charAt(1),16)/15,parseInt(r.charAt(2),16)/15,t);if(a===6)return this.setHex(parseInt(r,16),t);console.warn("THREE.Color: Invalid hex color "+e)}else if(e&&e.length>0)return this.setColorName(e,t);return this}setColorName(e,t=ni){const n=Yd[e.toLowerCase()];return n!==void 0?this.setHex(n,t):console.warn("THREE.Color: Unknown color "+e),this}clone(){return new this.constructor(this.r,this.g,this.b)}copy(e){return this.r=e.r,this.g=e.g,this.b=e.b,this}copySRGBToLinear(e){return this.r=Gi(e.r),this.g=Gi(e.g),this.b=Gi(e.b),this}copyLinearToSRGB(e){return this.r=gr(e.r),this.g=gr(e.g),this.b=gr(e.b),this}convertSRGBToLinear(){return this.copySRGBToLinear(this),this}convertLinearToSRGB(){return this.copyLinearToSRGB(this),this}getHex(e=ni){return vt.workingToColorSpace(Sn.copy(this),e),Math.round(ut(Sn.r*255,0,255))*65536+Math.round(ut(Sn.g*255,0,255))*256+Math.round(ut(Sn.b*255,0,255))}getHexString(e=ni){return("000000"+this.getHex(e).toString(16)).slice(-6)}getHSL(e,t=vt.workingColorSpace){vt.workingToColorSpace(Sn.copy(this),t);const n=Sn.r,s=Sn.g,r=Sn.b,a=Math.max(n,s,r),o=Math.min(n,s,r);let l,c;const f=(o+a)/2;if(o===a)l=0,c=0;else{const u=a-o;switch(c=f<=.5?u/(a+o):u/(2-a-o),a){case n:l=(s-r)/u+(s<r?6:0);break;case s:l=(r-n)/u+2;break;case r:l=(n-s)/u+4;break}l/=6}return e.h=l,e.s=c,e.l=f,e}getRGB(e,t=vt.workingColorSpace){return vt.workingToColorSpace(Sn.copy(this),t),e.r=Sn.r,e.g=Sn.g,e.b=Sn.b,e}getStyle(e=ni){vt.workingToColorSpace(Sn.copy(this),e);const t=Sn.r,n=Sn.g,s=Sn.b;return e!==ni?`color(${e} ${t.toFixed(3)} ${n.toFixed(3)} ${s.toFixed(3)})`:`rgb(${Math.round(t*255)},${Math.round(n*255)},${Math.round(s*255)})`}offsetHSL(e,t,n){return this.getHSL(es),this.setHSL(es.h+e,es.s+t,es.l+n)}add(e){return this.r+=e.r,this.g+=e.g,this.b+=e.b,this}addColors(e,t){return this.r=e.r+t.r,this.g=e.g+t.g,this.b=e.b+t.b,this}addScalar(e){return this.r+=e,this.g+=e,this.b+=e,this}sub(e){return this.r=Math.max(0,this.r-e.r),this.g=Math.max(0,this.g-e.g),this.b=Math.max(0,this.b-e.b),this}multiply(e){return this.r*=e.r,this.g*=e.g,this.b*=e.b,this}multiplyScalar(e){return this.r*=e,this.g*=e,this.b*=e,this}lerp(e,t){return this.r+=(e.r-this.r)*t,this.g+=(e.g-this.g)*t,this.b+=(e.b-this.b)*t,this}lerpColors(e,t,n){return this.r=e.r+(t.r-e.r)*n,this.g=e.g+(t.g-e.g)*n,this.b=e.b+(t.b-e.b)*n,this}lerpHSL(e,t){this.getHSL(es),e.getHSL(ka);const n=al(es.h,ka.h,t),s=al(es.s,ka.s,t),r=al(es.l,ka.l,t);return this.setHSL(n,s,r),this}setFromVector3(e){return this.r=e.x,this.g=e.y,this.b=e.z,this}applyMatrix3(e){const t=this.r,n=this.g,s=this.b,r=e.elements;return this.r=r[0]*t+r[3]*n+r[6]*s,this.g=r[1]*t+r[4]*n+r[7]*s,this.b=r[2]*t+r[5]*n+r[8]*s,this}equals(e){return e.r===this.r&&e.g===this.g&&e.b===this.b}fromArray(e,t=0){return this.r=e[t],this.g=e[t+1],this.b=e[t+2],this}toArray(e=[],t=0){return e[t]=this.r,e[t+1]=this.g,e[t+2]=this.b,e}fromBufferAttribute(e,t){return this.r=e.getX(t),this.g=e.getY(t),this.b=e.getZ(t),this}toJSON(){return this.getHex()}*[Symbol.iterator](){yield this.r,yield this.g,yield this.b}}const Sn=new lt;lt.NAMES=Yd;let O_=0;class ks extends Bs{constructor(){super(),this.isMaterial=!0,Object.defineProperty(this,"id",{value:O_++}),this.uuid=ga(),this.name="",this.type="Material",this.blending=mr,this.side=cs,this.vertexColors=!1,this.opacity=1,this.transparent=!1,this.alphaHash=!1,this.blendSrc=Zl,this.blendDst=Jl,this.blendEquation=As,this.blendSrcAlpha=null,this.blendDstAlpha=null,this.blendEquationAlpha=null,this.blendColor=new lt(0,0,0),this.blendAlpha=0,this.depthFunc=yr,this.depthTest=!0,this.depthWrite=!0,this.stencilWriteMask=255,this.stencilFunc=Ph,this.stencilRef=0,this.stencilFuncMask=255,this.stencilFail=Ks,this.stencilZFail=Ks,this.stencilZPass=Ks,this.stencilWrite=!1,this.clippingPlanes=null,this.clipIntersection=!1,this.clipShadows=!1,this.shadowSide=null,this.colorWrite=!0,this.precision=null,this.polygonOffset=!1,this.polygonOffsetFactor=0,this.polygonOffsetUnits=0,this.dithering=!1,this.alphaToCoverage=!1,this.premultipliedAlpha=!1,this.forceSinglePass=!1,this.allowOverride=!0,this.visible=!0,this.toneMapped=!0,this.userData={},this.version=0,this._alphaTest=0}get alphaTest(){return this._alphaTest}set alphaTest(e){this._alphaTest>0!=e>0&&this.version++,this._alphaTest=e}onBeforeRender(){}onBeforeCompile(){}customProgramCacheKey(){return this.onBeforeCompile.toString()}setValues(e){if(e!==void 0)for(const t in e){const n=e[t];if(n===void 0){console.warn(`THREE.Material: parameter '${t}' has value of undefined.`);continue}const s=this[t];if(s===void 0){console.warn(`THREE.Material: '${t}' is not a property of THREE.${this.type}.`);continue}s&&s.isColor?s.set(n):s&&s.isVector3&&n&&n.isVector3?s.copy(n):this[t]=n}}toJSON(e){const t=e===void 0||typeof e=="string";t&&(e={textures:{},images:{}});const n={metadata:{version:4.7,type:"Material",generator:"Material.toJSON"}};n.uuid=this.uuid,n.type=this.type,this.name!==""&&(n.name=this.name),this.color&&this.color.isColor&&(n.color=this.color.getHex()),this.roughness!==void 0&&(n.roughness=this.roughness),this.metalness!==void 0&&(n.metalness=this.metalness),this.sheen!==void 0&&(n.sheen=this.sheen),this.sheenColor&&this.sheenColor.isColor&&(n.sheenColor=this.sheenColor.getHex()),this.sheenRoughness!==void 0&&(n.sheenRoughness=this.sheenRoughness),this.emissive&&this.emissive.isColor&&(n.emissive=this.emissive.getHex()),this.emissiveIntensity!==void 0&&this.emissiveIntensity!==1&&(n.emissiveIntensity=this.emissiveIntensity),this.specular&&this.specular.isColor&&(n.specular=this.specular.getHex()),this.specularIntensity!==void 0&&(n.specularIntensity=this.specularIntensity),this.specularColor&&this.specularColor.isColor&&(n.specularColor=this.specularColor.getHex()),this.shininess!==void 0&&(n.shininess=this.shininess),this.clearcoat!==void 0&&(n.clearcoat=this.clearcoat),this.clearcoatRoughness!==void 0&&(n.clearcoatRoughness=this.clearcoatRoughness),this.clearcoatMap&&this.clearcoatMap.isTexture&&(n.clearcoatMap=this.clearcoatMap.toJSON(e).uuid),this.clearcoatRoughnessMap&&this.clearcoatRoughnessMap.isTexture&&(n.clearcoatRoughnessMap=this.clearcoatRoughnessMap.toJSON(e).uuid),this.clearcoatNormalMap&&this.clearcoatNormalMap.isTexture&&(n.clearcoatNormalMap=this.clearcoatNormalMap.toJSON(e).uuid,n.clearcoatNormalScale=this.clearcoatNormalScale.toArray()),this.sheenColorMap&&this.sheenColorMap.isTexture&&(n.sheenColorMap=this.sheenColorMap.toJSON(e).uuid),this.sheenRoughnessMap&&this.sheenRoughnessMap.isTexture&&(n.sheenRoughnessMap=this.sheenRoughnessMap.toJSON(e).uuid),this.dispersion!==void 0&&(n.dispersion=this.dispersion),this.iridescence!==void 0&&(n.iridescence=this.iridescence),this.iridescenceIOR!==void 0&&(n.iridescenceIOR=this.iridescenceIOR),this.iridescenceThicknessRange!==void 0&&(n.iridescenceThicknessRange=this.iridescenceThicknessRange),this.iridescenceMap&&this.iridescenceMap.isTexture&&(n.iridescenceMap=this.iridescenceMap.toJSON(e).uuid),this.iridescenceThicknessMap&&this.iridescenceThicknessMap.isTexture&&(n.iridescenceThicknessMap=this.iridescenceThicknessMap.toJSON(e).uuid),this.anisotropy!==void 0&&(n.anisotropy=this.anisotropy),this.anisotropyRotation!==void 0&&(n.anisotropyRotation=this.anisotropyRotation),this.anisotropyMap&&this.anisotropyMap.isTexture&&(n.anisotropyMap=this.anisotropyMap.toJSON(e).uuid),this.map&&this.map.isTexture&&(n.map=this.map.toJSON(e).uuid),this.matcap&&this.matcap.isTexture&&(n.matcap=this.matcap.toJSON(e).uuid),this.alphaMap&&this.alphaMap.isTexture&&(n.alphaMap=this.alphaMap.toJSON(e).uuid),this.lightMap&&this.lightMap.isTexture&&(n.lightMap=this.lightMap.toJSON(e).uuid,n.lightMapIntensity=this.lightMapIntensity),this.aoMap&&this.aoMap.isTexture&&(n.aoMap=this.aoMap.toJSON(e).uuid,n.aoMapIntensity=this.aoMapIntensity),this.bumpMap&&this.bumpMap.isTexture&&(n.bumpMap=this.bumpMap.toJSON(e).uuid,n.bumpScale=this.bumpScale),this.normalMap&&this.normalMap.isTexture&&(n.normalMap=this.normalMap.toJSON(e).uuid,n.normalMapType=this.normalMapType,n.normalScale=this.normalScale.toArray()),this.displacementMap&&this.displacementMap.isTexture&&(n.displacementMap=this.displacementMap.toJSON(e).uuid,n.displacementScale=this.displacementScale,n.displacementBias=this.displacementBias),this.roughnessMap&&this.roughnessMap.isTexture&&(n.roughnessMap=this.roughnessMap.toJSON(e).uuid),this.metalnessMap&&this.metalnessMap.isTexture&&(n.metalnessMap=this.metalnessMap.toJSON(e).uuid),this.emissiveMap&&this.emissiveMap.isTexture&&(n.emissiveMap=this.emissiveMap.toJSON(e).uuid),this.specularMap&&this.specularMap.isTexture&&(n.specularMap=this.specularMap.toJSON(e).uuid),this.specularIntensityMap&&this.specularIntensityMap.isTexture&&(n.specularIntensityMap=this.specularIntensityMap.toJSON(e).uuid),this.specularColorMap&&this.specularColorMap.isTexture&&(n.specularColorMap=this.specularColorMap.toJSON(e).uuid),this.envMap&&this.envMap.isTexture&&(n.envMap=this.envMap.toJSON(e).uuid,this.combine!==void 0&&(n.combine=this.combine)),this.envMapRotation!==void 0&&(n.envMapRotation=this.envMapRotation.toArray()),this.envMapIntensity!==void 0&&(n.envMapIntensity=this.envMapIntensity),this.reflectivity!==void 0&&(n.reflectivity=this.reflectivity),this.refractionRatio!==void 0&&(n.refractionRatio=this.refractionRatio),this.gradientMap&&this.gradientMap.isTexture&&(n.gradientMap=this.gradientMap.toJSON(e).uuid),this.transmission!==void 0&&(n.transmission=this.transmission),this.transmissionMap&&this.transmissionMap.isTexture&&(n.transmissionMap=this.transmissionMap.toJSON(e).uuid),this.thickness!==void 0&&(n.thickness=this.thickness),this.thicknessMap&&this.thicknessMap.isTexture&&(n.thicknessMap=this.thicknessMap.toJSON(e).uuid),this.attenuationDistance!==void 0&&this.attenuationDistance!==1/0&&(n.attenuationDistance=this.attenuationDistance),this.attenuationColor!==void 0&&(n.attenuationColor=this.attenuationColor.getHex()),this.size!==void 0&&(n.size=this.size),this.shadowSide!==null&&(n.shadowSide=this.shadowSide),this.sizeAttenuation!==void 0&&(n.sizeAttenuation=this.sizeAttenuation),this.blending!==mr&&(n.blending=this.blending),this.side!==cs&&(n.side=this.side),this.vertexColors===!0&&(n.vertexColors=!0),this.opacity<1&&(n.opacity=this.opacity),this.transparent===!0&&(n.transparent=!0),this.blendSrc!==Zl&&(n.blendSrc=this.blendSrc),this.blendDst!==Jl&&(n.blendDst=this.blendDst),this.blendEquation!==As&&(n.blendEquation=this.blendEquation),this.blendSrcAlpha!==null&&(n.blendSrcAlpha=this.blendSrcAlpha),this.blendDstAlpha!==null&&(n.blendDstAlpha=this.blendDstAlpha),this.blendEquationAlpha!==null&&(n.blendEquationAlpha=this.blendEquationAlpha),this.blendColor&&this.blendColor.isColor&&(n.blendColor=this.blendColor.getHex()),this.blendAlpha!==0&&(n.blendAlpha=this.blendAlpha),this.depthFunc!==yr&&(n.depthFunc=this.depthFunc),this.depthTest===!1&&(n.depthTest=this.depthTest),this.depthWrite===!1&&(n.depthWrite=this.depthWrite),this.colorWrite===!1&&(n.colorWrite=this.colorWrite),this.stencilWriteMask!==255&&(n.stencilWriteMask=this.stencilWriteMask),this.stencilFunc!==Ph&&(n.stencilFunc=this.stencilFunc),this.stencilRef!==0&&(n.stencilRef=this.stencilRef),this.stencilFuncMask!==255&&(n.stencilFuncMask=this.stencilFuncMask),this.stencilFail!==Ks&&(n.stencilFail=this.stencilFail),this.stencilZFail!==Ks&&(n.stencilZFail=this.stencilZFail),this.stencilZPass!==Ks&&(n.stencilZPass=this.stencilZPass),this.stencilWrite===!0&&(n.stencilWrite=this.stencilWrite),this.rotation!==void 0&&this.rotation!==0&&(n.rotation=this.rotation),this.polygonOffset===!0&&(n.polygonOffset=!0),this.polygonOffsetFactor!==0&&(n.polygonOffsetFactor=this.polygonOffsetFactor),this.polygonOffsetUnits!==0&&(n.polygonOffsetUnits=this.polygonOffsetUnits),this.linewidth!==void 0&&this.linewidth!==1&&(n.linewidth=this.linewidth),this.dashSize!==void 0&&(n.dashSize=this.dashSize),this.gapSize!==void 0&&(n.gapSize=this.gapSize),this.scale!==void 0&&(n.scale=this.scale),this.dithering===!0&&(n.dithering=!0),this.alphaTest>0&&(n.alphaTest=this.alphaTest),this.alphaHash===!0&&(n.alphaHash=!0),this.alphaToCoverage===!0&&(n.alphaToCoverage=!0),this.premultipliedAlpha===!0&&(n.premultipliedAlpha=!0),this.forceSinglePass===!0&&(n.forceSinglePass=!0),this.wireframe===!0&&(n.wireframe=!0),this.wireframeLinewidth>1&&(n.wireframeLinewidth=this.wireframeLinewidth),this.wireframeLinecap!=="round"&&(n.wireframeLinecap=this.wireframeLinecap),this.wireframeLinejoin!=="round"&&(n.wireframeLinejoin=this.wireframeLinejoin),this.flatShading===!0&&(n.flatShading=!0),this.visible===!1&&(n.visible=!1),this.toneMapped===!1&&(n.toneMapped=!1),this.fog===!1&&(n.fog=!1),Object.keys(this.userData).length>0&&(n.userData=this.userData);function s(r){const a=[];for(const o in r){const l=r[o];delete l.metadata,a.push(l)}return a}if(t){const r=s(e.textures),a=s(e.images);r.length>0&&(n.textures=r),a.length>0&&(n.images=a)}return n}clone(){return new this.constructor().copy(this)}copy(e){this.name=e.name,this.blending=e.blending,this.side=e.side,this.vertexColors=e.vertexColors,this.opacity=e.opacity,this.transparent=e.transparent,this.blendSrc=e.blendSrc,this.blendDst=e.blendDst,this.blendEquation=e.blendEquation,this.blendSrcAlpha=e.blendSrcAlpha,this.blendDstAlpha=e.blendDstAlpha,this.blendEquationAlpha=e.blendEquationAlpha,this.blendColor.copy(e.blendColor),this.blendAlpha=e.blendAlpha,this.depthFunc=e.depthFunc,this.depthTest=e.depthTest,this.depthWrite=e.depthWrite,this.stencilWriteMask=e.stencilWriteMask,this.stencilFunc=e.stencilFunc,this.stencilRef=e.stencilRef,this.stencilFuncMask=e.stencilFuncMask,this.stencilFail=e.stencilFail,this.stencilZFail=e.stencilZFail,this.stencilZPass=e.stencilZPass,this.stencilWrite=e.stencilWrite;const t=e.clippingPlanes;let n=null;if(t!==null){const s=t.length;n=new Array(s);for(let r=0;r!==s;++r)n[r]=t[r].clone()}return this.clippingPlanes=n,this.clipIntersection=e.clipIntersection,this.clipShadows=e.clipShadows,this.shadowSide=e.shadowSide,this.colorWrite=e.colorWrite,this.precision=e.precision,this.polygonOffset=e.polygonOffset,this.polygonOffsetFactor=e.polygonOffsetFactor,this.polygonOffsetUnits=e.polygonOffsetUnits,this.dithering=e.dithering,this.alphaTest=e.alphaTest,this.alphaHash=e.alphaHash,this.alphaToCoverage=e.alphaToCoverage,this.premultipliedAlpha=e.premultipliedAlpha,this.forceSinglePass=e.forceSinglePass,this.visible=e.visible,this.toneMapped=e.toneMapped,this.userData=JSON.parse(JSON.stringify(e.userData)),this}dispose(){this.dispatchEvent({type:"dispose"})}set needsUpdate(e){e===!0&&this.version++}}class mu extends ks{constructor(e){super(),this.isMeshBasicMaterial=!0,this.type="MeshBasicMaterial",this.color=new lt(16777215),this.map=null,this.lightMap=null,this.lightMapIntensity=1,this.aoMap=null,this.aoMapIntensity=1,this.specularMap=null,this.alphaMap=null,this.envMap=null,this.envMapRotation=new Ci,this.combine=au,this.reflectivity=1,this.refractionRatio=.98,this.wireframe=!1,this.wireframeLinewidth=1,this.wireframeLinecap="round",this.wireframeLinejoin="round",this.fog=!0,this.setValues(e)}copy(e){return super.copy(e),this.color.copy(e.color),this.map=e.map,this.lightMap=e.lightMap,this.lightMapIntensity=e.lightMapIntensity,this.aoMap=e.aoMap,this.aoMapIntensity=e.aoMapIntensity,this.specularMap=e.specularMap,this.alphaMap=e.alphaMap,this.envMap=e.envMap,this.envMapRotation.copy(e.envMapRotation),this.combine=e.combine,this.reflectivity=e.reflectivity,this.refractionRatio=e.refractionRatio,this.wireframe=e.wireframe,this.wireframeLinewidth=e.wireframeLinewidth,this.wireframeLinecap=e.wireframeLinecap,this.wireframeLinejoin=e.wireframeLinejoin,this.fog=e.fog,this}}const Kt=new H,za=new nt;let B_=0;class zn{constructor(e,t,n=!1){if(Array.isArray(e))throw new TypeError("THREE.BufferAttribute: array should be a Typed Array.");this.isBufferAttribute=!0,Object.defineProperty(this,"id",{value:B_++}),this.name="",this.array=e,this.itemSize=t,this.count=e!==void 0?e.length/t:0,this.normalized=n,this.usage=Dh,this.updateRanges=[],this.gpuType=zi,this.version=0}onUploadCallback(){}set needsUpdate(e){e===!0&&this.version++}setUsage(e){return this.usage=e,this}addUpdateRange(e,t){this.updateRanges.push({start:e,count:t})}clearUpdateRanges(){this.updateRanges.length=0}copy(e){return this.name=e.name,this.array=new e.array.constructor(e.array),this.itemSize=e.itemSize,this.count=e.count,this.normalized=e.normalized,this.usage=e.usage,this.gpuType=e.gpuType,this}copyAt(e,t,n){e*=this.itemSize,n*=t.itemSize;for(let s=0,r=this.itemSize;s<r;s++)this.array[e+s]=t.array[n+s];return this}copyArray(e){return this.array.set(e),this}applyMatrix3(e){if(this.itemSize===2)for(let t=0,n=this.count;t<n;t++)za.fromBufferAttribute(this,t),za.applyMatrix3(e),this.setXY(t,za.x,za.y);else if(this.itemSize===3)for(let t=0,n=this.count;t<n;t++)Kt.fromBufferAttribute(this,t),Kt.applyMatrix3(e),this.setXYZ(t,Kt.x,Kt.y,Kt.z);return this}applyMatrix4(e){for(let t=0,n=this.count;t<n;t++)Kt.fromBufferAttribute(this,t),Kt.applyMatrix4(e),this.setXYZ(t,Kt.x,Kt.y,Kt.z);return this}applyNormalMatrix(e){for(let t=0,n=this.count;t<n;t++)Kt.fromBufferAttribute(this,t),Kt.applyNormalMatrix(e),this.setXYZ(t,Kt.x,Kt.y,Kt.z);return this}transformDirection(e){for(let t=0,n=this.count;t<n;t++)Kt.fromBufferAttribute(this,t),Kt.transformDirection(e),this.setXYZ(t,Kt.x,Kt.y,Kt.z);return this}set(e,t=0){return this.array.set(e,t),this}getComponent(e,t){let n=this.array[e*this.itemSize+t];return this.normalized&&(n=Vr(n,this.array)),n}setComponent(e,t,n){return this.normalized&&(n=Nn(n,this.array)),this.array[e*this.itemSize+t]=n,this}getX(e){let t=this.array[e*this.itemSize];return this.normalized&&(t=Vr(t,this.array)),t}setX(e,t){return this.normalized&&(t=Nn(t,this.array)),this.array[e*this.itemSize]=t,this}getY(e){let t=this.array[e*this.itemSize+1];return this.normalized&&(t=Vr(t,this.array)),t}setY(e,t){return this.normalized&&(t=Nn(t,this.array)),this.array[e*this.itemSize+1]=t,this}getZ(e){let t=this.array[e*this.itemSize+2];return this.normalized&&(t=Vr(t,this.array)),t}setZ(e,t){return this.normalized&&(t=Nn(t,this.array)),this.array[e*this.itemSize+2]=t,this}getW(e){let t=this.array[e*this.itemSize+3];return this.normalized&&(t=Vr(t,this.array)),t}setW(e,t){return this.normalized&&(t=Nn(t,this.array)),this.array[e*this.itemSize+3]=t,this}setXY(e,t,n){return e*=this.itemSize,this.normalized&&(t=Nn(t,this.array),n=Nn(n,this.array)),this.array[e+0]=t,this.array[e+1]=n,this}setXYZ(e,t,n,s){return e*=this.itemSize,this.normalized&&(t=Nn(t,this.array),n=Nn(n,this.array),s=Nn(s,this.array)),this.array[e+0]=t,this.array[e+1]=n,this.array[e+2]=s,this}setXYZW(e,t,n,s,r){return e*=this.itemSize,this.normalized&&(t=Nn(t,this.array),n=Nn(n,this.array),s=Nn(s,this.array),r=Nn(r,this.array)),this.array[e+0]=t,this.array[e+1]=n,this.array[e+2]=s,this.array[e+3]=r,this}onUpload(e){return this.onUploadCallback=e,this}clone(){return new this.constructor(this.array,this.itemSize).copy(this)}toJSON(){const e={itemSize:this.itemSize,type:this.array.constructor.name,array:Array.from(this.array),normalized:this.normalized};return this.name!==""&&(e.name=this.name),this.usage!==Dh&&(e.usage=this.usage),e}}class $d extends zn{constructor(e,t,n){super(new Uint16Array(e),t,n)}}class jd extends zn{constructor(e,t,n){super(new Uint32Array(e),t,n)}}class pn extends zn{constructor(e,t,n){super(new Float32Array(e),t,n)}}let k_=0;const Qn=new Xt,wl=new nn,ar=new H,qn=new _a,qr=new _a,dn=new H;class vn extends Bs{constructor(){super(),this.isBufferGeometry=!0,Object.defineProperty(this,"id",{value:k_++}),this.uuid=ga(),this.name="",this.type="BufferGeometry",this.index=null,this.indirect=null,this.attributes={},this.morphAttributes={},this.morphTargetsRelative=!1,this.groups=[],this.boundingBox=null,this.boundingSphere=null,this.drawRange={start:0,count:1/0},this.userData={}}getIndex(){return this.index}setIndex(e){return Array.isArray(e)?this.index=new(Xd(e)?jd:$d)(e,1):this.index=e,this}setIndirect(e){return this.indirect=e,this}getIndirect(){return this.indirect}getAttribute(e){return this.attributes[e]}setAttribute(e,t){return this.attributes[e]=t,this}deleteAttribute(e){return delete this.attributes[e],this}hasAttribute(e){return this.attributes[e]!==void 0}addGroup(e,t,n=0){this.groups.push({start:e,count:t,materialIndex:n})}clearGroups(){this.groups=[]}setDrawRange(e,t){this.drawRange.start=e,this.drawRange.count=t}applyMatrix4(e){const t=this.attributes.position;t!==void 0&&(t.applyMatrix4(e),t.needsUpdate=!0);const n=this.attributes.normal;if(n!==void 0){const r=new st().getNormalMatrix(e);n.applyNormalMatrix(r),n.needsUpdate=!0}const s=this.attributes.tangent;return s!==void 0&&(s.transformDirection(e),s.needsUpdate=!0),this.boundingBox!==null&&this.computeBoundingBox(),this.boundingSphere!==null&&this.computeBoundingSphere(),this}applyQuaternion(e){return Qn.makeRotationFromQuaternion(e),this.applyMatrix4(Qn),this}rotateX(e){return Qn.makeRotationX(e),this.applyMatrix4(Qn),this}rotateY(e){return Qn.makeRotationY(e),this.applyMatrix4(Qn),this}rotateZ(e){return Qn.makeRotationZ(e),this.applyMatrix4(Qn),this}translate(e,t,n){return Qn.makeTranslation(e,t,n),this.applyMatrix4(Qn),this}scale(e,t,n){return Qn.makeScale(e,t,n),this.applyMatrix4(Qn),this}lookAt(e){return wl.lookAt(e),wl.updateMatrix(),this.applyMatrix4(wl.matrix),this}center(){return this.computeBoundingBox(),this.boundingBox.getCenter(ar).negate(),this.translate(ar.x,ar.y,ar.z),this}setFromPoints(e){const t=this.getAttribute("position");if(t===void 0){const n=[];for(let s=0,r=e.length;s<r;s++){const a=e[s];n.push(a.x,a.y,a.z||0)}this.setAttribute("position",new pn(n,3))}else{const n=Math.min(e.length,t.count);for(let s=0;s<n;s++){const r=e[s];t.setXYZ(s,r.x,r.y,r.z||0)}e.length>t.count&&console.warn("THREE.BufferGeometry: Buffer size too small for points data. Use .dispose() and create a new geometry."),t.needsUpdate=!0}return this}computeBoundingBox(){this.boundingBox===null&&(this.boundingBox=new _a);const e=this.attributes.position,t=this.morphAttributes.position;if(e&&e.isGLBufferAttribute){console.error("THREE.BufferGeometry.computeBoundingBox(): GLBufferAttribute requires a manual bounding box.",this),this.boundingBox.set(new H(-1/0,-1/0,-1/0),new H(1/0,1/0,1/0));return}if(e!==void 0){if(this.boundingBox.setFromBufferAttribute(e),t)for(let n=0,s=t.length;n<s;n++){const r=t[n];qn.setFromBufferAttribute(r),this.morphTargetsRelative?(dn.addVectors(this.boundingBox.min,qn.min),this.boundingBox.expandByPoint(dn),dn.addVectors(this.boundingBox.max,qn.max),this.boundingBox.expandByPoint(dn)):(this.boundingBox.expandByPoint(qn.min),this.boundingBox.expandByPoint(qn.max))}}else this.boundingBox.makeEmpty();(isNaN(this.boundingBox.min.x)||isNaN(this.boundingBox.min.y)||isNaN(this.boundingBox.min.z))&&console.error('THREE.BufferGeometry.computeBoundingBox(): Computed min/max have NaN values. The "position" attribute is likely to have NaN values.',this)}computeBoundingSphere(){this.boundingSphere===null&&(this.boundingSphere=new va);const e=this.attributes.position,t=this.morphAttributes.position;if(e&&e.isGLBufferAttribute){console.error("THREE.BufferGeometry.computeBoundingSphere(): GLBufferAttribute requires a manual bounding sphere.",this),this.boundingSphere.set(new H,1/0);return}if(e){const n=this.boundingSphere.center;if(qn.setFromBufferAttribute(e),t)for(let r=0,a=t.length;r<a;r++){const o=t[r];qr.setFromBufferAttribute(o),this.morphTargetsRelative?(dn.addVectors(qn.min,qr.min),qn.expandByPoint(dn),dn.addVectors(qn.max,qr.max),qn.expandByPoint(dn)):(qn.expandByPoint(qr.min),qn.expandByPoint(qr.max))}qn.getCenter(n);let s=0;for(let r=0,a=e.count;r<a;r++)dn.fromBufferAttribute(e,r),s=Math.max(s,n.distanceToSquared(dn));if(t)for(let r=0,a=t.length;r<a;r++){const o=t[r],l=this.morphTargetsRelative;for(let c=0,f=o.count;c<f;c++)dn.fromBufferAttribute(o,c),l&&(ar.fromBufferAttribute(e,c),dn.add(ar)),s=Math.max(s,n.distanceToSquared(dn))}this.boundingSphere.radius=Math.sqrt(s),isNaN(this.boundingSphere.radius)&&console.error('THREE.BufferGeometry.computeBoundingSphere(): Computed radius is NaN. The "position" attribute is likely to have NaN values.',this)}}computeTangents(){const e=this.index,t=this.attributes;if(e===null||t.position===void 0||t.normal===void 0||t.uv===void 0){console.error("THREE.BufferGeometry: .computeTangents() failed. Missing required attributes (index, position, normal or uv)");return}const n=t.position,s=t.normal,r=t.uv;this.hasAttribute("tangent")===!1&&this.setAttribute("tangent",new zn(new Float32Array(4*n.count),4));const a=this.getAttribute("tangent"),o=[],l=[];for(let O=0;O<n.count;O++)o[O]=new H,l[O]=new H;const c=new H,f=new H,u=new H,h=new nt,p=new nt,v=new nt,M=new H,m=new H;function d(O,T,g){c.fromBufferAttribute(n,O),f.fromBufferAttribute(n,T),u.fromBufferAttribute(n,g),h.fromBufferAttribute(r,O),p.fromBufferAttribute(r,T),v.fromBufferAttribute(r,g),f.sub(c),u.sub(c),p.sub(h),v.sub(h);const S=1/(p.x*v.y-v.x*p.y);isFinite(S)&&(M.copy(f).multiplyScalar(v.y).addScaledVector(u,-p.y).multiplyScalar(S),m.copy(u).multiplyScalar(p.x).addScaledVector(f,-v.x).multiplyScalar(S),o[O].add(M),o[T].add(M),o[g].add(M),l[O].add(m),l[T].add(m),l[g].add(m))}let b=this.groups;b.length===0&&(b=[{start:0,count:e.count}]);for(let O=0,T=b.length;O<T;++O){const g=b[O],S=g.start,P=g.count;for(let I=S,V=S+P;I<V;I+=3)d(e.getX(I+0),e.getX(I+1),e.getX(I+2))}const A=new H,E=new H,F=new H,C=new H;function D(O){F.fromBufferAttribute(s,O),C.copy(F);const T=o[O];A.copy(T),A.sub(F.multiplyScalar(F.dot(T))).normalize(),E.crossVectors(C,T);const S=E.dot(l[O])<0?-1:1;a.setXYZW(O,A.x,A.y,A.z,S)}for(let O=0,T=b.length;O<T;++O){const g=b[O],S=g.start,P=g.count;for(let I=S,V=S+P;I<V;I+=3)D(e.getX(I+0)),D(e.getX(I+1)),D(e.getX(I+2))}}computeVertexNormals(){const e=this.index,t=this.getAttribute("position");if(t!==void 0){let n=this.getAttribute("normal");if(n===void 0)n=new zn(new Float32Array(t.count*3),3),this.setAttribute("normal",n);else for(let h=0,p=n.count;h<p;h++)n.setXYZ(h,0,0,0);const s=new H,r=new H,a=new H,o=new H,l=new H,c=new H,f=new H,u=new H;if(e)for(let h=0,p=e.count;h<p;h+=3){const v=e.getX(h+0),M=e.getX(h+1),m=e.getX(h+2);s.fromBufferAttribute(t,v),r.fromBufferAttribute(t,M),a.fromBufferAttribute(t,m),f.subVectors(a,r),u.subVectors(s,r),f.cross(u),o.fromBufferAttribute(n,v),l.fromBufferAttribute(n,M),c.fromBufferAttribute(n,m),o.add(f),l.add(f),c.add(f),n.setXYZ(v,o.x,o.y,o.z),n.setXYZ(M,l.x,l.y,l.z),n.setXYZ(m,c.x,c.y,c.z)}else for(let h=0,p=t.count;h<p;h+=3)s.fromBufferAttribute(t,h+0),r.fromBufferAttribute(t,h+1),a.fromBufferAttribute(t,h+2),f.subVectors(a,r),u.subVectors(s,r),f.cross(u),n.setXYZ(h+0,f.x,f.y,f.z),n.setXYZ(h+1,f.x,f.y,f.z),n.setXYZ(h+2,f.x,f.y,f.z);this.normalizeNormals(),n.needsUpdate=!0}}normalizeNormals(){const e=this.attributes.normal;for(let t=0,n=e.count;t<n;t++)dn.fromBufferAttribute(e,t),dn.normalize(),e.setXYZ(t,dn.x,dn.y,dn.z)}toNonIndexed(){function e(o,l){const c=o.array,f=o.itemSize,u=o.normalized,h=new c.constructor(l.length*f);let p=0,v=0;for(let M=0,m=l.length;M<m;M++){o.isInterleavedBufferAttribute?p=l[M]*o.data.stride+o.offset:p=l[M]*f;for(let d=0;d<f;d++)h[v++]=c[p++]}return new zn(h,f,u)}if(this.index===null)return console.warn("THREE.BufferGeometry.toNonIndexed(): BufferGeometry is already non-indexed."),this;const t=new vn,n=this.index.array,s=this.attributes;for(const o in s){const l=s[o],c=e(l,n);t.setAttribute(o,c)}const r=this.morphAttributes;for(const o in r){const l=[],c=r[o];for(let f=0,u=c.length;f<u;f++){const h=c[f],p=e(h,n);l.push(p)}t.morphAttributes[o]=l}t.morphTargetsRelative=this.morphTargetsRelative;const a=this.groups;for(let o=0,l=a.length;o<l;o++){const c=a[o];t.addGroup(c.start,c.count,c.materialIndex)}return t}toJSON(){const e={metadata:{version:4.7,type:"BufferGeometry",generator:"BufferGeometry.toJSON"}};if(e.uuid=this.uuid,e.type=this.type,this.name!==""&&(e.name=this.name),Object.keys(this.userData).length>0&&(e.userData=this.userData),this.parameters!==void 0){const l=this.parameters;for(const c in l)l[c]!==void 0&&(e[c]=l[c]);return e}e.data={attributes:{}};const t=this.index;t!==null&&(e.data.index={type:t.array.constructor.name,array:Array.prototype.slice.call(t.array)});const n=this.attributes;for(const l in n){const c=n[l];e.data.attributes[l]=c.toJSON(e.data)}const s={};let r=!1;for(const l in this.morphAttributes){const c=this.morphAttributes[l],f=[];for(let u=0,h=c.length;u<h;u++){const p=c[u];f.push(p.toJSON(e.data))}f.length>0&&(s[l]=f,r=!0)}r&&(e.data.morphAttributes=s,e.data.morphTargetsRelative=this.morphTargetsRelative);const a=this.groups;a.length>0&&(e.data.groups=JSON.parse(JSON.stringify(a)));const o=this.boundingSphere;return o!==null&&(e.data.boundingSphere=o.toJSON()),e}clone(){return new this.constructor().copy(this)}copy(e){this.index=null,this.attributes={},this.morphAttributes={},this.groups=[],this.boundingBox=null,this.boundingSphere=null;const t={};this.name=e.name;const n=e.index;n!==null&&this.setIndex(n.clone());const s=e.attributes;for(const c in s){const f=s[c];this.setAttribute(c,f.clone(t))}const r=e.morphAttributes;for(const c in r){const f=[],u=r[c];for(let h=0,p=u.length;h<p;h++)f.push(u[h].clone(t));this.morphAttributes[c]=f}this.morphTargetsRelative=e.morphTargetsRelative;const a=e.groups;for(let c=0,f=a.length;c<f;c++){const u=a[c];this.addGroup(u.start,u.count,u.materialIndex)}const o=e.boundingBox;o!==null&&(this.boundingBox=o.clone());const l=e.boundingSphere;return l!==null&&(this.boundingSphere=l.clone()),this.drawRange.start=e.drawRange.start,this.drawRange.count=e.drawRange.count,this.userData=e.userData,this}dispose(){this.dispatchEvent({type:"dispose"})}}const Xh=new Xt,xs=new xa,Ha=new va,qh=new H,Va=new H,Ga=new H,Wa=new H,Tl=new H,Xa=new H,Yh=new H,qa=new H;class _n extends nn{constructor(e=new vn,t=new mu){super(),this.isMesh=!0,this.type="Mesh",this.geometry=e,this.material=t,this.morphTargetDictionary=void 0,this.morphTargetInfluences=void 0,this.count=1,this.updateMorphTargets()}copy(e,t){return super.copy(e,t),e.morphTargetInfluences!==void 0&&(this.morphTargetInfluences=e.morphTargetInfluences.slice()),e.morphTargetDictionary!==void 0&&(this.morphTargetDictionary=Object.assign({},e.morphTargetDictionary)),this.material=Array.isArray(e.material)?e.material.slice():e.material,this.geometry=e.geometry,this}updateMorphTargets(){const t=this.geometry.morphAttributes,n=Object.keys(t);if(n.length>0){const s=t[n[0]];if(s!==void 0){this.morphTargetInfluences=[],this.morphTargetDictionary={};for(let r=0,a=s.length;r<a;r++){const o=s[r].name||String(r);this.morphTargetInfluences.push(0),this.morphTargetDictionary[o]=r}}}}getVertexPosition(e,t){const n=this.geometry,s=n.attributes.position,r=n.morphAttributes.position,a=n.morphTargetsRelative;t.fromBufferAttribute(s,e);const o=this.morphTargetInfluences;if(r&&o){Xa.set(0,0,0);for(let l=0,c=r.length;l<c;l++){const f=o[l],u=r[l];f!==0&&(Tl.fromBufferAttribute(u,e),a?Xa.addScaledVector(Tl,f):Xa.addScaledVector(Tl.sub(t),f))}t.add(Xa)}return t}raycast(e,t){const n=this.geometry,s=this.material,r=this.matrixWorld;s!==void 0&&(n.boundingSphere===null&&n.computeBoundingSphere(),Ha.copy(n.boundingSphere),Ha.applyMatrix4(r),xs.copy(e.ray).recast(e.near),!(Ha.containsPoint(xs.origin)===!1&&(xs.intersectSphere(Ha,qh)===null||xs.origin.distanceToSquared(qh)>(e.far-e.near)**2))&&(Xh.copy(r).invert(),xs.copy(e.ray).applyMatrix4(Xh),!(n.boundingBox!==null&&xs.intersectsBox(n.boundingBox)===!1)&&this._computeIntersections(e,t,xs)))}_computeIntersections(e,t,n){let s;const r=this.geometry,a=this.material,o=r.index,l=r.attributes.position,c=r.attributes.uv,f=r.attributes.uv1,u=r.attributes.normal,h=r.groups,p=r.drawRange;if(o!==null)if(Array.isArray(a))for(let v=0,M=h.length;v<M;v++){const m=h[v],d=a[m.materialIndex],b=Math.max(m.start,p.start),A=Math.min(o.count,Math.min(m.start+m.count,p.start+p.count));for(let E=b,F=A;E<F;E+=3){const C=o.getX(E),D=o.getX(E+1),O=o.getX(E+2);s=Ya(this,d,e,n,c,f,u,C,D,O),s&&(s.faceIndex=Math.floor(E/3),s.face.materialIndex=m.materialIndex,t.push(s))}}else{const v=Math.max(0,p.start),M=Math.min(o.count,p.start+p.count);for(let m=v,d=M;m<d;m+=3){const b=o.getX(m),A=o.getX(m+1),E=o.getX(m+2);s=Ya(this,a,e,n,c,f,u,b,A,E),s&&(s.faceIndex=Math.floor(m/3),t.push(s))}}else if(l!==void 0)if(Array.isArray(a))for(let v=0,M=h.length;v<M;v++){const m=h[v],d=a[m.materialIndex],b=Math.max(m.start,p.start),A=Math.min(l.count,Math.min(m.start+m.count,p.start+p.count));for(let E=b,F=A;E<F;E+=3){const C=E,D=E+1,O=E+2;s=Ya(this,d,e,n,c,f,u,C,D,O),s&&(s.faceIndex=Math.floor(E/3),s.face.materialIndex=m.materialIndex,t.push(s))}}else{const v=Math.max(0,p.start),M=Math.min(l.count,p.start+p.count);for(let m=v,d=M;m<d;m+=3){const b=m,A=m+1,E=m+2;s=Ya(this,a,e,n,c,f,u,b,A,E),s&&(s.faceIndex=Math.floor(m/3),t.push(s))}}}}function z_(i,e,t,n,s,r,a,o){let l;if(e.side===Bn?l=n.intersectTriangle(a,r,s,!0,o):l=n.intersectTriangle(s,r,a,e.side===cs,o),l===null)return null;qa.copy(o),qa.applyMatrix4(i.matrixWorld);const c=t.ray.origin.distanceTo(qa);return c<t.near||c>t.far?null:{distance:c,point:qa.clone(),object:i}}function Ya(i,e,t,n,s,r,a,o,l,c){i.getVertexPosition(o,Va),i.getVertexPosition(l,Ga),i.getVertexPosition(c,Wa);const f=z_(i,e,t,n,Va,Ga,Wa,Yh);if(f){const u=new H;pi.getBarycoord(Yh,Va,Ga,Wa,u),s&&(f.uv=pi.getInterpolatedAttribute(s,o,l,c,u,new nt)),r&&(f.uv1=pi.getInterpolatedAttribute(r,o,l,c,u,new nt)),a&&(f.normal=pi.getInterpolatedAttribute(a,o,l,c,u,new H),f.normal.dot(n.direction)>0&&f.normal.multiplyScalar(-1));const h={a:o,b:l,c,normal:new H,materialIndex:0};pi.getNormal(Va,Ga,Wa,h.normal),f.face=h,f.barycoord=u}return f}class Dr extends vn{constructor(e=1,t=1,n=1,s=1,r=1,a=1){super(),this.type="BoxGeometry",this.parameters={width:e,height:t,depth:n,widthSegments:s,heightSegments:r,depthSegments:a};const o=this;s=Math.floor(s),r=Math.floor(r),a=Math.floor(a);const l=[],c=[],f=[],u=[];let h=0,p=0;v("z","y","x",-1,-1,n,t,e,a,r,0),v("z","y","x",1,-1,n,t,-e,a,r,1),v("x","z","y",1,1,e,n,t,s,a,2),v("x","z","y",1,-1,e,n,-t,s,a,3),v("x","y","z",1,-1,e,t,n,s,r,4),v("x","y","z",-1,-1,e,t,-n,s,r,5),this.setIndex(l),this.setAttribute("position",new pn(c,3)),this.setAttribute("normal",new pn(f,3)),this.setAttribute("uv",new pn(u,2));function v(M,m,d,b,A,E,F,C,D,O,T){const g=E/D,S=F/O,P=E/2,I=F/2,V=C/2,k=D+1,X=O+1;let $=0,K=0;const re=new H;for(let oe=0;oe<X;oe++){const ue=oe*S-I;for(let he=0;he<k;he++){const fe=he*g-P;re[M]=fe*b,re[m]=ue*A,re[d]=V,c.push(re.x,re.y,re.z),re[M]=0,re[m]=0,re[d]=C>0?1:-1,f.push(re.x,re.y,re.z),u.push(he/D),u.push(1-oe/O),$+=1}}for(let oe=0;oe<O;oe++)for(let ue=0;ue<D;ue++){const he=h+ue+k*oe,fe=h+ue+k*(oe+1),$e=h+(ue+1)+k*(oe+1),Ke=h+(ue+1)+k*oe;l.push(he,fe,Ke),l.push(fe,$e,Ke),K+=6}o.addGroup(p,K,T),p+=K,h+=$}}copy(e){return super.copy(e),this.parameters=Object.assign({},e.parameters),this}static fromJSON(e){return new Dr(e.width,e.height,e.depth,e.widthSegments,e.heightSegments,e.depthSegments)}}function Tr(i){const e={};for(const t in i){e[t]={};for(const n in i[t]){const s=i[t][n];s&&(s.isColor||s.isMatrix3||s.isMatrix4||s.isVector2||s.isVector3||s.isVector4||s.isTexture||s.isQuaternion)?s.isRenderTargetTexture?(console.warn("UniformsUtils: Textures of render targets cannot be cloned via cloneUniforms() or mergeUniforms()."),e[t][n]=null):e[t][n]=s.clone():Array.isArray(s)?e[t][n]=s.slice():e[t][n]=s}}return e}function Dn(i){const e={};for(let t=0;t<i.length;t++){const n=Tr(i[t]);for(const s in n)e[s]=n[s]}return e}function H_(i){const e=[];for(let t=0;t<i.length;t++)e.push(i[t].clone());return e}function Kd(i){const e=i.getRenderTarget();return e===null?i.outputColorSpace:e.isXRRenderTarget===!0?e.texture.colorSpace:vt.workingColorSpace}const V_={clone:Tr,merge:Dn};var G_=`void main() {
	gl_Position = projectionMatrix * modelViewMatrix * vec4( position, 1.0 );
}`,W_=`void main() {
	gl_FragColor = vec4( 1.0, 0.0, 0.0, 1.0 );
}`;class us extends ks{constructor(e){super(),this.isShaderMaterial=!0,this.type="ShaderMaterial",this.defines={},this.uniforms={},this.uniformsGroups=[],this.vertexShader=G_,this.fragmentShader=W_,this.linewidth=1,this.wireframe=!1,this.wireframeLinewidth=1,this.fog=!1,this.lights=!1,this.clipping=!1,this.forceSinglePass=!0,this.extensions={clipCullDistance:!1,multiDraw:!1},this.defaultAttributeValues={color:[1,1,1],uv:[0,0],uv1:[0,0]},this.index0AttributeName=void 0,this.uniformsNeedUpdate=!1,this.glslVersion=null,e!==void 0&&this.setValues(e)}copy(e){return super.copy(e),this.fragmentShader=e.fragmentShader,this.vertexShader=e.vertexShader,this.uniforms=Tr(e.uniforms),this.uniformsGroups=H_(e.uniformsGroups),this.defines=Object.assign({},e.defines),this.wireframe=e.wireframe,this.wireframeLinewidth=e.wireframeLinewidth,this.fog=e.fog,this.lights=e.lights,this.clipping=e.clipping,this.extensions=Object.assign({},e.extensions),this.glslVersion=e.glslVersion,this}toJSON(e){const t=super.toJSON(e);t.glslVersion=this.glslVersion,t.uniforms={};for(const s in this.uniforms){const a=this.uniforms[s].value;a&&a.isTexture?t.uniforms[s]={type:"t",value:a.toJSON(e).uuid}:a&&a.isColor?t.uniforms[s]={type:"c",value:a.getHex()}:a&&a.isVector2?t.uniforms[s]={type:"v2",value:a.toArray()}:a&&a.isVector3?t.uniforms[s]={type:"v3",value:a.toArray()}:a&&a.isVector4?t.uniforms[s]={type:"v4",value:a.toArray()}:a&&a.isMatrix3?t.uniforms[s]={type:"m3",value:a.toArray()}:a&&a.isMatrix4?t.uniforms[s]={type:"m4",value:a.toArray()}:t.uniforms[s]={value:a}}Object.keys(this.defines).length>0&&(t.defines=this.defines),t.vertexShader=this.vertexShader,t.fragmentShader=this.fragmentShader,t.lights=this.lights,t.clipping=this.clipping;const n={};for(const s in this.extensions)this.extensions[s]===!0&&(n[s]=!0);return Object.keys(n).length>0&&(t.extensions=n),t}}class Zd extends nn{constructor(){super(),this.isCamera=!0,this.type="Camera",this.matrixWorldInverse=new Xt,this.projectionMatrix=new Xt,this.projectionMatrixInverse=new Xt,this.coordinateSystem=Ti,this._reversedDepth=!1}get reversedDepth(){return this._reversedDepth}copy(e,t){return super.copy(e,t),this.matrixWorldInverse.copy(e.matrixWorldInverse),this.projectionMatrix.copy(e.projectionMatrix),this.projectionMatrixInverse.copy(e.projectionMatrixInverse),this.coordinateSystem=e.coordinateSystem,this}getWorldDirection(e){return super.getWorldDirection(e).negate()}updateMatrixWorld(e){super.updateMatrixWorld(e),this.matrixWorldInverse.copy(this.matrixWorld).invert()}updateWorldMatrix(e,t){super.updateWorldMatrix(e,t),this.matrixWorldInverse.copy(this.matrixWorld).invert()}clone(){return new this.constructor().copy(this)}}const ts=new H,$h=new nt,jh=new nt;class si extends Zd{constructor(e=50,t=1,n=.1,s=2e3){super(),this.isPerspectiveCamera=!0,this.type="PerspectiveCamera",this.fov=e,this.zoom=1,this.near=n,this.far=s,this.focus=10,this.aspect=t,this.view=null,this.filmGauge=35,this.filmOffset=0,this.updateProjectionMatrix()}copy(e,t){return super.copy(e,t),this.fov=e.fov,this.zoom=e.zoom,this.near=e.near,this.far=e.far,this.focus=e.focus,this.aspect=e.aspect,this.view=e.view===null?null:Object.assign({},e.view),this.filmGauge=e.filmGauge,this.filmOffset=e.filmOffset,this}setFocalLength(e){const t=.5*this.getFilmHeight()/e;this.fov=Bc*2*Math.atan(t),this.updateProjectionMatrix()}getFocalLength(){const e=Math.tan(ho*.5*this.fov);return .5*this.getFilmHeight()/e}getEffectiveFOV(){return Bc*2*Math.atan(Math.tan(ho*.5*this.fov)/this.zoom)}getFilmWidth(){return this.filmGauge*Math.min(this.aspect,1)}getFilmHeight(){return this.filmGauge/Math.max(this.aspect,1)}getViewBounds(e,t,n){ts.set(-1,-1,.5).applyMatrix4(this.projectionMatrixInverse),t.set(ts.x,ts.y).multiplyScalar(-e/ts.z),ts.set(1,1,.5).applyMatrix4(this.projectionMatrixInverse),n.set(ts.x,ts.y).multiplyScalar(-e/ts.z)}getViewSize(e,t){return this.getViewBounds(e,$h,jh),t.subVectors(jh,$h)}setViewOffset(e,t,n,s,r,a){this.aspect=e/t,this.view===null&&(this.view={enabled:!0,fullWidth:1,fullHeight:1,offsetX:0,offsetY:0,width:1,height:1}),this.view.enabled=!0,this.view.fullWidth=e,this.view.fullHeight=t,this.view.offsetX=n,this.view.offsetY=s,this.view.width=r,this.view.height=a,this.updateProjectionMatrix()}clearViewOffset(){this.view!==null&&(this.view.enabled=!1),this.updateProjectionMatrix()}updateProjectionMatrix(){const e=this.near;let t=e*Math.tan(ho*.5*this.fov)/this.zoom,n=2*t,s=this.aspect*n,r=-.5*s;const a=this.view;if(this.view!==null&&this.view.enabled){const l=a.fullWidth,c=a.fullHeight;r+=a.offsetX*s/l,t-=a.offsetY*n/c,s*=a.width/l,n*=a.height/c}const o=this.filmOffset;o!==0&&(r+=e*o/this.getFilmWidth()),this.projectionMatrix.makePerspective(r,r+s,t,t-n,e,this.far,this.coordinateSystem,this.reversedDepth),this.projectionMatrixInverse.copy(this.projectionMatrix).invert()}toJSON(e){const t=super.toJSON(e);return t.object.fov=this.fov,t.object.zoom=this.zoom,t.object.near=this.near,t.object.far=this.far,t.object.focus=this.focus,t.object.aspect=this.aspect,this.view!==null&&(t.object.view=Object.assign({},this.view)),t.object.filmGauge=this.filmGauge,t.object.filmOffset=this.filmOffset,t}}const or=-90,lr=1;class X_ extends nn{constructor(e,t,n){super(),this.type="CubeCamera",this.renderTarget=n,this.coordinateSystem=null,this.activeMipmapLevel=0;const s=new si(or,lr,e,t);s.layers=this.layers,this.add(s);const r=new si(or,lr,e,t);r.layers=this.layers,this.add(r);const a=new si(or,lr,e,t);a.layers=this.layers,this.add(a);const o=new si(or,lr,e,t);o.layers=this.layers,this.add(o);const l=new si(or,lr,e,t);l.layers=this.layers,this.add(l);const c=new si(or,lr,e,t);c.layers=this.layers,this.add(c)}updateCoordinateSystem(){const e=this.coordinateSystem,t=this.children.concat(),[n,s,r,a,o,l]=t;for(const c of t)this.remove(c);if(e===Ti)n.up.set(0,1,0),n.lookAt(1,0,0),s.up.set(0,1,0),s.lookAt(-1,0,0),r.up.set(0,0,-1),r.lookAt(0,1,0),a.up.set(0,0,1),a.lookAt(0,-1,0),o.up.set(0,1,0),o.lookAt(0,0,1),l.up.set(0,1,0),l.lookAt(0,0,-1);else if(e===So)n.up.set(0,-1,0),n.lookAt(-1,0,0),s.up.set(0,-1,0),s.lookAt(1,0,0),r.up.set(0,0,1),r.lookAt(0,1,0),a.up.set(0,0,-1),a.lookAt(0,-1,0),o.up.set(0,-1,0),o.lookAt(0,0,1),l.up.set(0,-1,0),l.lookAt(0,0,-1);else throw new Error("THREE.CubeCamera.updateCoordinateSystem(): Invalid coordinate system: "+e);for(const c of t)this.add(c),c.updateMatrixWorld()}update(e,t){this.parent===null&&this.updateMatrixWorld();const{renderTarget:n,activeMipmapLevel:s}=this;this.coordinateSystem!==e.coordinateSystem&&(this.coordinateSystem=e.coordinateSystem,this.updateCoordinateSystem());const[r,a,o,l,c,f]=this.children,u=e.getRenderTarget(),h=e.getActiveCubeFace(),p=e.getActiveMipmapLevel(),v=e.xr.enabled;e.xr.enabled=!1;const M=n.texture.generateMipmaps;n.texture.generateMipmaps=!1,e.setRenderTarget(n,0,s),e.render(t,r),e.setRenderTarget(n,1,s),e.render(t,a),e.setRenderTarget(n,2,s),e.render(t,o),e.setRenderTarget(n,3,s),e.render(t,l),e.setRenderTarget(n,4,s),e.render(t,c),n.texture.generateMipmaps=M,e.setRenderTarget(n,5,s),e.render(t,f),e.setRenderTarget(u,h,p),e.xr.enabled=v,n.texture.needsPMREMUpdate=!0}}class Jd extends kn{constructor(e=[],t=Er,n,s,r,a,o,l,c,f){super(e,t,n,s,r,a,o,l,c,f),this.isCubeTexture=!0,this.flipY=!1}get images(){return this.image}set images(e){this.image=e}}class q_ extends Fs{constructor(e=1,t={}){super(e,e,t),this.isWebGLCubeRenderTarget=!0;const n={width:e,height:e,depth:1},s=[n,n,n,n,n,n];this.texture=new Jd(s),this._setTextureOptions(t),this.texture.isRenderTargetTexture=!0}fromEquirectangularTexture(e,t){this.texture.type=t.type,this.texture.colorSpace=t.colorSpace,this.texture.generateMipmaps=t.generateMipmaps,this.texture.minFilter=t.minFilter,this.texture.magFilter=t.magFilter;const n={uniforms:{tEquirect:{value:null}},vertexShader:`

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
			`},s=new Dr(5,5,5),r=new us({name:"CubemapFromEquirect",uniforms:Tr(n.uniforms),vertexShader:n.vertexShader,fragmentShader:n.fragmentShader,side:Bn,blending:as});r.uniforms.tEquirect.value=t;const a=new _n(s,r),o=t.minFilter;return t.minFilter===Ds&&(t.minFilter=wi),new X_(1,10,this).update(e,a),t.minFilter=o,a.geometry.dispose(),a.material.dispose(),this}clear(e,t=!0,n=!0,s=!0){const r=e.getRenderTarget();for(let a=0;a<6;a++)e.setRenderTarget(this,a),e.clear(t,n,s);e.setRenderTarget(r)}}class ii extends nn{constructor(){super(),this.isGroup=!0,this.type="Group"}}const Y_={type:"move"};class Al{constructor(){this._targetRay=null,this._grip=null,this._hand=null}getHandSpace(){return this._hand===null&&(this._hand=new ii,this._hand.matrixAutoUpdate=!1,this._hand.visible=!1,this._hand.joints={},this._hand.inputState={pinching:!1}),this._hand}getTargetRaySpace(){return this._targetRay===null&&(this._targetRay=new ii,this._targetRay.matrixAutoUpdate=!1,this._targetRay.visible=!1,this._targetRay.hasLinearVelocity=!1,this._targetRay.linearVelocity=new H,this._targetRay.hasAngularVelocity=!1,this._targetRay.angularVelocity=new H),this._targetRay}getGripSpace(){return this._grip===null&&(this._grip=new ii,this._grip.matrixAutoUpdate=!1,this._grip.visible=!1,this._grip.hasLinearVelocity=!1,this._grip.linearVelocity=new H,this._grip.hasAngularVelocity=!1,this._grip.angularVelocity=new H),this._grip}dispatchEvent(e){return this._targetRay!==null&&this._targetRay.dispatchEvent(e),this._grip!==null&&this._grip.dispatchEvent(e),this._hand!==null&&this._hand.dispatchEvent(e),this}connect(e){if(e&&e.hand){const t=this._hand;if(t)for(const n of e.hand.values())this._getHandJoint(t,n)}return this.dispatchEvent({type:"connected",data:e}),this}disconnect(e){return this.dispatchEvent({type:"disconnected",data:e}),this._targetRay!==null&&(this._targetRay.visible=!1),this._grip!==null&&(this._grip.visible=!1),this._hand!==null&&(this._hand.visible=!1),this}update(e,t,n){let s=null,r=null,a=null;const o=this._targetRay,l=this._grip,c=this._hand;if(e&&t.session.visibilityState!=="visible-blurred"){if(c&&e.hand){a=!0;for(const M of e.hand.values()){const m=t.getJointPose(M,n),d=this._getHandJoint(c,M);m!==null&&(d.matrix.fromArray(m.transform.matrix),d.matrix.decompose(d.position,d.rotation,d.scale),d.matrixWorldNeedsUpdate=!0,d.jointRadius=m.radius),d.visible=m!==null}const f=c.joints["index-finger-tip"],u=c.joints["thumb-tip"],h=f.position.distanceTo(u.position),p=.02,v=.005;c.inputState.pinching&&h>p+v?(c.inputState.pinching=!1,this.dispatchEvent({type:"pinchend",handedness:e.handedness,target:this})):!c.inputState.pinching&&h<=p-v&&(c.inputState.pinching=!0,this.dispatchEvent({type:"pinchstart",handedness:e.handedness,target:this}))}else l!==null&&e.gripSpace&&(r=t.getPose(e.gripSpace,n),r!==null&&(l.matrix.fromArray(r.transform.matrix),l.matrix.decompose(l.position,l.rotation,l.scale),l.matrixWorldNeedsUpdate=!0,r.linearVelocity?(l.hasLinearVelocity=!0,l.linearVelocity.copy(r.linearVelocity)):l.hasLinearVelocity=!1,r.angularVelocity?(l.hasAngularVelocity=!0,l.angularVelocity.copy(r.angularVelocity)):l.hasAngularVelocity=!1));o!==null&&(s=t.getPose(e.targetRaySpace,n),s===null&&r!==null&&(s=r),s!==null&&(o.matrix.fromArray(s.transform.matrix),o.matrix.decompose(o.position,o.rotation,o.scale),o.matrixWorldNeedsUpdate=!0,s.linearVelocity?(o.hasLinearVelocity=!0,o.linearVelocity.copy(s.linearVelocity)):o.hasLinearVelocity=!1,s.angularVelocity?(o.hasAngularVelocity=!0,o.angularVelocity.copy(s.angularVelocity)):o.hasAngularVelocity=!1,this.dispatchEvent(Y_)))}return o!==null&&(o.visible=s!==null),l!==null&&(l.visible=r!==null),c!==null&&(c.visible=a!==null),this}_getHandJoint(e,t){if(e.joints[t.jointName]===void 0){const n=new ii;n.matrixAutoUpdate=!1,n.visible=!1,e.joints[t.jointName]=n,e.add(n)}return e.joints[t.jointName]}}class $_ extends nn{constructor(){super(),this.isScene=!0,this.type="Scene",this.background=null,this.environment=null,this.fog=null,this.backgroundBlurriness=0,this.backgroundIntensity=1,this.backgroundRotation=new Ci,this.environmentIntensity=1,this.environmentRotation=new Ci,this.overrideMaterial=null,typeof __THREE_DEVTOOLS__<"u"&&__THREE_DEVTOOLS__.dispatchEvent(new CustomEvent("observe",{detail:this}))}copy(e,t){return super.copy(e,t),e.background!==null&&(this.background=e.background.clone()),e.environment!==null&&(this.environment=e.environment.clone()),e.fog!==null&&(this.fog=e.fog.clone()),this.backgroundBlurriness=e.backgroundBlurriness,this.backgroundIntensity=e.backgroundIntensity,this.backgroundRotation.copy(e.backgroundRotation),this.environmentIntensity=e.environmentIntensity,this.environmentRotation.copy(e.environmentRotation),e.overrideMaterial!==null&&(this.overrideMaterial=e.overrideMaterial.clone()),this.matrixAutoUpdate=e.matrixAutoUpdate,this}toJSON(e){const t=super.toJSON(e);return this.fog!==null&&(t.object.fog=this.fog.toJSON()),this.backgroundBlurriness>0&&(t.object.backgroundBlurriness=this.backgroundBlurriness),this.backgroundIntensity!==1&&(t.object.backgroundIntensity=this.backgroundIntensity),t.object.backgroundRotation=this.backgroundRotation.toArray(),this.environmentIntensity!==1&&(t.object.environmentIntensity=this.environmentIntensity),t.object.environmentRotation=this.environmentRotation.toArray(),t}}const Rl=new H,j_=new H,K_=new st;class is{constructor(e=new H(1,0,0),t=0){this.isPlane=!0,this.normal=e,this.constant=t}set(e,t){return this.normal.copy(e),this.constant=t,this}setComponents(e,t,n,s){return this.normal.set(e,t,n),this.constant=s,this}setFromNormalAndCoplanarPoint(e,t){return this.normal.copy(e),this.constant=-t.dot(this.normal),this}setFromCoplanarPoints(e,t,n){const s=Rl.subVectors(n,t).cross(j_.subVectors(e,t)).normalize();return this.setFromNormalAndCoplanarPoint(s,e),this}copy(e){return this.normal.copy(e.normal),this.constant=e.constant,this}normalize(){const e=1/this.normal.length();return this.normal.multiplyScalar(e),this.constant*=e,this}negate(){return this.constant*=-1,this.normal.negate(),this}distanceToPoint(e){return this.normal.dot(e)+this.constant}distanceToSphere(e){return this.distanceToPoint(e.center)-e.radius}projectPoint(e,t){return t.copy(e).addScaledVector(this.normal,-this.distanceToPoint(e))}intersectLine(e,t){const n=e.delta(Rl),s=this.normal.dot(n);if(s===0)return this.distanceToPoint(e.start)===0?t.copy(e.start):null;const r=-(e.start.dot(this.normal)+this.constant)/s;return r<0||r>1?null:t.copy(e.start).addScaledVector(n,r)}intersectsLine(e){const t=this.distanceToPoint(e.start),n=this.distanceToPoint(e.end);return t<0&&n>0||n<0&&t>0}intersectsBox(e){return e.intersectsPlane(this)}intersectsSphere(e){return e.intersectsPlane(this)}coplanarPoint(e){return e.copy(this.normal).multiplyScalar(-this.constant)}applyMatrix4(e,t){const n=t||K_.getNormalMatrix(e),s=this.coplanarPoint(Rl).applyMatrix4(e),r=this.normal.applyMatrix3(n).normalize();return this.constant=-s.dot(r),this}translate(e){return this.constant-=e.dot(this.normal),this}equals(e){return e.normal.equals(this.normal)&&e.constant===this.constant}clone(){return new this.constructor().copy(this)}}const Ms=new va,Z_=new nt(.5,.5),$a=new H;class gu{constructor(e=new is,t=new is,n=new is,s=new is,r=new is,a=new is){this.planes=[e,t,n,s,r,a]}set(e,t,n,s,r,a){const o=this.planes;return o[0].copy(e),o[1].copy(t),o[2].copy(n),o[3].copy(s),o[4].copy(r),o[5].copy(a),this}copy(e){const t=this.planes;for(let n=0;n<6;n++)t[n].copy(e.planes[n]);return this}setFromProjectionMatrix(e,t=Ti,n=!1){const s=this.planes,r=e.elements,a=r[0],o=r[1],l=r[2],c=r[3],f=r[4],u=r[5],h=r[6],p=r[7],v=r[8],M=r[9],m=r[10],d=r[11],b=r[12],A=r[13],E=r[14],F=r[15];if(s[0].setComponents(c-a,p-f,d-v,F-b).normalize(),s[1].setComponents(c+a,p+f,d+v,F+b).normalize(),s[2].setComponents(c+o,p+u,d+M,F+A).normalize(),s[3].setComponents(c-o,p-u,d-M,F-A).normalize(),n)s[4].setComponents(l,h,m,E).normalize(),s[5].setComponents(c-l,p-h,d-m,F-E).normalize();else if(s[4].setComponents(c-l,p-h,d-m,F-E).normalize(),t===Ti)s[5].setComponents(c+l,p+h,d+m,F+E).normalize();else if(t===So)s[5].setComponents(l,h,m,E).normalize();else throw new Error("THREE.Frustum.setFromProjectionMatrix(): Invalid coordinate system: "+t);return this}intersectsObject(e){if(e.boundingSphere!==void 0)e.boundingSphere===null&&e.computeBoundingSphere(),Ms.copy(e.boundingSphere).applyMatrix4(e.matrixWorld);else{const t=e.geometry;t.boundingSphere===null&&t.computeBoundingSphere(),Ms.copy(t.boundingSphere).applyMatrix4(e.matrixWorld)}return this.intersectsSphere(Ms)}intersectsSprite(e){Ms.center.set(0,0,0);const t=Z_.distanceTo(e.center);return Ms.radius=.7071067811865476+t,Ms.applyMatrix4(e.matrixWorld),this.intersectsSphere(Ms)}intersectsSphere(e){const t=this.planes,n=e.center,s=-e.radius;for(let r=0;r<6;r++)if(t[r].distanceToPoint(n)<s)return!1;return!0}intersectsBox(e){const t=this.planes;for(let n=0;n<6;n++){const s=t[n];if($a.x=s.normal.x>0?e.max.x:e.min.x,$a.y=s.normal.y>0?e.max.y:e.min.y,$a.z=s.normal.z>0?e.max.z:e.min.z,s.distanceToPoint($a)<0)return!1}return!0}containsPoint(e){const t=this.planes;for(let n=0;n<6;n++)if(t[n].distanceToPoint(e)<0)return!1;return!0}clone(){return new this.constructor().copy(this)}}class Ma extends ks{constructor(e){super(),this.isLineBasicMaterial=!0,this.type="LineBasicMaterial",this.color=new lt(16777215),this.map=null,this.linewidth=1,this.linecap="round",this.linejoin="round",this.fog=!0,this.setValues(e)}copy(e){return super.copy(e),this.color.copy(e.color),this.map=e.map,this.linewidth=e.linewidth,this.linecap=e.linecap,this.linejoin=e.linejoin,this.fog=e.fog,this}}const Eo=new H,bo=new H,Kh=new Xt,Yr=new xa,ja=new va,Cl=new H,Zh=new H;class fa extends nn{constructor(e=new vn,t=new Ma){super(),this.isLine=!0,this.type="Line",this.geometry=e,this.material=t,this.morphTargetDictionary=void 0,this.morphTargetInfluences=void 0,this.updateMorphTargets()}copy(e,t){return super.copy(e,t),this.material=Array.isArray(e.material)?e.material.slice():e.material,this.geometry=e.geometry,this}computeLineDistances(){const e=this.geometry;if(e.index===null){const t=e.attributes.position,n=[0];for(let s=1,r=t.count;s<r;s++)Eo.fromBufferAttribute(t,s-1),bo.fromBufferAttribute(t,s),n[s]=n[s-1],n[s]+=Eo.distanceTo(bo);e.setAttribute("lineDistance",new pn(n,1))}else console.warn("THREE.Line.computeLineDistances(): Computation only possible with non-indexed BufferGeometry.");return this}raycast(e,t){const n=this.geometry,s=this.matrixWorld,r=e.params.Line.threshold,a=n.drawRange;if(n.boundingSphere===null&&n.computeBoundingSphere(),ja.copy(n.boundingSphere),ja.applyMatrix4(s),ja.radius+=r,e.ray.intersectsSphere(ja)===!1)return;Kh.copy(s).invert(),Yr.copy(e.ray).applyMatrix4(Kh);const o=r/((this.scale.x+this.scale.y+this.scale.z)/3),l=o*o,c=this.isLineSegments?2:1,f=n.index,h=n.attributes.position;if(f!==null){const p=Math.max(0,a.start),v=Math.min(f.count,a.start+a.count);for(let M=p,m=v-1;M<m;M+=c){const d=f.getX(M),b=f.getX(M+1),A=Ka(this,e,Yr,l,d,b,M);A&&t.push(A)}if(this.isLineLoop){const M=f.getX(v-1),m=f.getX(p),d=Ka(this,e,Yr,l,M,m,v-1);d&&t.push(d)}}else{const p=Math.max(0,a.start),v=Math.min(h.count,a.start+a.count);for(let M=p,m=v-1;M<m;M+=c){const d=Ka(this,e,Yr,l,M,M+1,M);d&&t.push(d)}if(this.isLineLoop){const M=Ka(this,e,Yr,l,v-1,p,v-1);M&&t.push(M)}}}updateMorphTargets(){const t=this.geometry.morphAttributes,n=Object.keys(t);if(n.length>0){const s=t[n[0]];if(s!==void 0){this.morphTargetInfluences=[],this.morphTargetDictionary={};for(let r=0,a=s.length;r<a;r++){const o=s[r].name||String(r);this.morphTargetInfluences.push(0),this.morphTargetDictionary[o]=r}}}}}function Ka(i,e,t,n,s,r,a){const o=i.geometry.attributes.position;if(Eo.fromBufferAttribute(o,s),bo.fromBufferAttribute(o,r),t.distanceSqToSegment(Eo,bo,Cl,Zh)>n)return;Cl.applyMatrix4(i.matrixWorld);const c=e.ray.origin.distanceTo(Cl);if(!(c<e.near||c>e.far))return{distance:c,point:Zh.clone().applyMatrix4(i.matrixWorld),index:a,face:null,faceIndex:null,barycoord:null,object:i}}const Jh=new H,Qh=new H;class J_ extends fa{constructor(e,t){super(e,t),this.isLineSegments=!0,this.type="LineSegments"}computeLineDistances(){const e=this.geometry;if(e.index===null){const t=e.attributes.position,n=[];for(let s=0,r=t.count;s<r;s+=2)Jh.fromBufferAttribute(t,s),Qh.fromBufferAttribute(t,s+1),n[s]=s===0?0:n[s-1],n[s+1]=n[s]+Jh.distanceTo(Qh);e.setAttribute("lineDistance",new pn(n,1))}else console.warn("THREE.LineSegments.computeLineDistances(): Computation only possible with non-indexed BufferGeometry.");return this}}class Qd extends ks{constructor(e){super(),this.isPointsMaterial=!0,this.type="PointsMaterial",this.color=new lt(16777215),this.map=null,this.alphaMap=null,this.size=1,this.sizeAttenuation=!0,this.fog=!0,this.setValues(e)}copy(e){return super.copy(e),this.color.copy(e.color),this.map=e.map,this.alphaMap=e.alphaMap,this.size=e.size,this.sizeAttenuation=e.sizeAttenuation,this.fog=e.fog,this}}const ef=new Xt,kc=new xa,Za=new va,Ja=new H;class Q_ extends nn{constructor(e=new vn,t=new Qd){super(),this.isPoints=!0,this.type="Points",this.geometry=e,this.material=t,this.morphTargetDictionary=void 0,this.morphTargetInfluences=void 0,this.updateMorphTargets()}copy(e,t){return super.copy(e,t),this.material=Array.isArray(e.material)?e.material.slice():e.material,this.geometry=e.geometry,this}raycast(e,t){const n=this.geometry,s=this.matrixWorld,r=e.params.Points.threshold,a=n.drawRange;if(n.boundingSphere===null&&n.computeBoundingSphere(),Za.copy(n.boundingSphere),Za.applyMatrix4(s),Za.radius+=r,e.ray.intersectsSphere(Za)===!1)return;ef.copy(s).invert(),kc.copy(e.ray).applyMatrix4(ef);const o=r/((this.scale.x+this.scale.y+this.scale.z)/3),l=o*o,c=n.index,u=n.attributes.position;if(c!==null){const h=Math.max(0,a.start),p=Math.min(c.count,a.start+a.count);for(let v=h,M=p;v<M;v++){const m=c.getX(v);Ja.fromBufferAttribute(u,m),tf(Ja,m,l,s,e,t,this)}}else{const h=Math.max(0,a.start),p=Math.min(u.count,a.start+a.count);for(let v=h,M=p;v<M;v++)Ja.fromBufferAttribute(u,v),tf(Ja,v,l,s,e,t,this)}}updateMorphTargets(){const t=this.geometry.morphAttributes,n=Object.keys(t);if(n.length>0){const s=t[n[0]];if(s!==void 0){this.morphTargetInfluences=[],this.morphTargetDictionary={};for(let r=0,a=s.length;r<a;r++){const o=s[r].name||String(r);this.morphTargetInfluences.push(0),this.morphTargetDictionary[o]=r}}}}}function tf(i,e,t,n,s,r,a){const o=kc.distanceSqToPoint(i);if(o<t){const l=new H;kc.closestPointToPoint(i,l),l.applyMatrix4(n);const c=s.ray.origin.distanceTo(l);if(c<s.near||c>s.far)return;r.push({distance:c,distanceToRay:Math.sqrt(o),point:l,index:e,face:null,faceIndex:null,barycoord:null,object:a})}}class ep extends kn{constructor(e,t,n=Is,s,r,a,o=gi,l=gi,c,f=ca,u=1){if(f!==ca&&f!==ua)throw new Error("DepthTexture format must be either THREE.DepthFormat or THREE.DepthStencilFormat");const h={width:e,height:t,depth:u};super(h,s,r,a,o,l,f,n,c),this.isDepthTexture=!0,this.flipY=!1,this.generateMipmaps=!1,this.compareFunction=null}copy(e){return super.copy(e),this.source=new du(Object.assign({},e.image)),this.compareFunction=e.compareFunction,this}toJSON(e){const t=super.toJSON(e);return this.compareFunction!==null&&(t.compareFunction=this.compareFunction),t}}class tp extends kn{constructor(e=null){super(),this.sourceTexture=e,this.isExternalTexture=!0}copy(e){return super.copy(e),this.sourceTexture=e.sourceTexture,this}}class No extends vn{constructor(e=1,t=1,n=1,s=32,r=1,a=!1,o=0,l=Math.PI*2){super(),this.type="CylinderGeometry",this.parameters={radiusTop:e,radiusBottom:t,height:n,radialSegments:s,heightSegments:r,openEnded:a,thetaStart:o,thetaLength:l};const c=this;s=Math.floor(s),r=Math.floor(r);const f=[],u=[],h=[],p=[];let v=0;const M=[],m=n/2;let d=0;b(),a===!1&&(e>0&&A(!0),t>0&&A(!1)),this.setIndex(f),this.setAttribute("position",new pn(u,3)),this.setAttribute("normal",new pn(h,3)),this.setAttribute("uv",new pn(p,2));function b(){const E=new H,F=new H;let C=0;const D=(t-e)/n;for(let O=0;O<=r;O++){const T=[],g=O/r,S=g*(t-e)+e;for(let P=0;P<=s;P++){const I=P/s,V=I*l+o,k=Math.sin(V),X=Math.cos(V);F.x=S*k,F.y=-g*n+m,F.z=S*X,u.push(F.x,F.y,F.z),E.set(k,D,X).normalize(),h.push(E.x,E.y,E.z),p.push(I,1-g),T.push(v++)}M.push(T)}for(let O=0;O<s;O++)for(let T=0;T<r;T++){const g=M[T][O],S=M[T+1][O],P=M[T+1][O+1],I=M[T][O+1];(e>0||T!==0)&&(f.push(g,S,I),C+=3),(t>0||T!==r-1)&&(f.push(S,P,I),C+=3)}c.addGroup(d,C,0),d+=C}function A(E){const F=v,C=new nt,D=new H;let O=0;const T=E===!0?e:t,g=E===!0?1:-1;for(let P=1;P<=s;P++)u.push(0,m*g,0),h.push(0,g,0),p.push(.5,.5),v++;const S=v;for(let P=0;P<=s;P++){const V=P/s*l+o,k=Math.cos(V),X=Math.sin(V);D.x=T*X,D.y=m*g,D.z=T*k,u.push(D.x,D.y,D.z),h.push(0,g,0),C.x=k*.5+.5,C.y=X*.5*g+.5,p.push(C.x,C.y),v++}for(let P=0;P<s;P++){const I=F+P,V=S+P;E===!0?f.push(V,V+1,I):f.push(V+1,V,I),O+=3}c.addGroup(d,O,E===!0?1:2),d+=O}}copy(e){return super.copy(e),this.parameters=Object.assign({},e.parameters),this}static fromJSON(e){return new No(e.radiusTop,e.radiusBottom,e.height,e.radialSegments,e.heightSegments,e.openEnded,e.thetaStart,e.thetaLength)}}class Fo extends No{constructor(e=1,t=1,n=32,s=1,r=!1,a=0,o=Math.PI*2){super(0,e,t,n,s,r,a,o),this.type="ConeGeometry",this.parameters={radius:e,height:t,radialSegments:n,heightSegments:s,openEnded:r,thetaStart:a,thetaLength:o}}static fromJSON(e){return new Fo(e.radius,e.height,e.radialSegments,e.heightSegments,e.openEnded,e.thetaStart,e.thetaLength)}}class Oo extends vn{constructor(e=1,t=1,n=1,s=1){super(),this.type="PlaneGeometry",this.parameters={width:e,height:t,widthSegments:n,heightSegments:s};const r=e/2,a=t/2,o=Math.floor(n),l=Math.floor(s),c=o+1,f=l+1,u=e/o,h=t/l,p=[],v=[],M=[],m=[];for(let d=0;d<f;d++){const b=d*h-a;for(let A=0;A<c;A++){const E=A*u-r;v.push(E,-b,0),M.push(0,0,1),m.push(A/o),m.push(1-d/l)}}for(let d=0;d<l;d++)for(let b=0;b<o;b++){const A=b+c*d,E=b+c*(d+1),F=b+1+c*(d+1),C=b+1+c*d;p.push(A,E,C),p.push(E,F,C)}this.setIndex(p),this.setAttribute("position",new pn(v,3)),this.setAttribute("normal",new pn(M,3)),this.setAttribute("uv",new pn(m,2))}copy(e){return super.copy(e),this.parameters=Object.assign({},e.parameters),this}static fromJSON(e){return new Oo(e.width,e.height,e.widthSegments,e.heightSegments)}}class wo extends vn{constructor(e=1,t=32,n=16,s=0,r=Math.PI*2,a=0,o=Math.PI){super(),this.type="SphereGeometry",this.parameters={radius:e,widthSegments:t,heightSegments:n,phiStart:s,phiLength:r,thetaStart:a,thetaLength:o},t=Math.max(3,Math.floor(t)),n=Math.max(2,Math.floor(n));const l=Math.min(a+o,Math.PI);let c=0;const f=[],u=new H,h=new H,p=[],v=[],M=[],m=[];for(let d=0;d<=n;d++){const b=[],A=d/n;let E=0;d===0&&a===0?E=.5/t:d===n&&l===Math.PI&&(E=-.5/t);for(let F=0;F<=t;F++){const C=F/t;u.x=-e*Math.cos(s+C*r)*Math.sin(a+A*o),u.y=e*Math.cos(a+A*o),u.z=e*Math.sin(s+C*r)*Math.sin(a+A*o),v.push(u.x,u.y,u.z),h.copy(u).normalize(),M.push(h.x,h.y,h.z),m.push(C+E,1-A),b.push(c++)}f.push(b)}for(let d=0;d<n;d++)for(let b=0;b<t;b++){const A=f[d][b+1],E=f[d][b],F=f[d+1][b],C=f[d+1][b+1];(d!==0||a>0)&&p.push(A,E,C),(d!==n-1||l<Math.PI)&&p.push(E,F,C)}this.setIndex(p),this.setAttribute("position",new pn(v,3)),this.setAttribute("normal",new pn(M,3)),this.setAttribute("uv",new pn(m,2))}copy(e){return super.copy(e),this.parameters=Object.assign({},e.parameters),this}static fromJSON(e){return new wo(e.radius,e.widthSegments,e.heightSegments,e.phiStart,e.phiLength,e.thetaStart,e.thetaLength)}}class np extends ks{constructor(e){super(),this.isMeshLambertMaterial=!0,this.type="MeshLambertMaterial",this.color=new lt(16777215),this.map=null,this.lightMap=null,this.lightMapIntensity=1,this.aoMap=null,this.aoMapIntensity=1,this.emissive=new lt(0),this.emissiveIntensity=1,this.emissiveMap=null,this.bumpMap=null,this.bumpScale=1,this.normalMap=null,this.normalMapType=Gd,this.normalScale=new nt(1,1),this.displacementMap=null,this.displacementScale=1,this.displacementBias=0,this.specularMap=null,this.alphaMap=null,this.envMap=null,this.envMapRotation=new Ci,this.combine=au,this.reflectivity=1,this.refractionRatio=.98,this.wireframe=!1,this.wireframeLinewidth=1,this.wireframeLinecap="round",this.wireframeLinejoin="round",this.flatShading=!1,this.fog=!0,this.setValues(e)}copy(e){return super.copy(e),this.color.copy(e.color),this.map=e.map,this.lightMap=e.lightMap,this.lightMapIntensity=e.lightMapIntensity,this.aoMap=e.aoMap,this.aoMapIntensity=e.aoMapIntensity,this.emissive.copy(e.emissive),this.emissiveMap=e.emissiveMap,this.emissiveIntensity=e.emissiveIntensity,this.bumpMap=e.bumpMap,this.bumpScale=e.bumpScale,this.normalMap=e.normalMap,this.normalMapType=e.normalMapType,this.normalScale.copy(e.normalScale),this.displacementMap=e.displacementMap,this.displacementScale=e.displacementScale,this.displacementBias=e.displacementBias,this.specularMap=e.specularMap,this.alphaMap=e.alphaMap,this.envMap=e.envMap,this.envMapRotation.copy(e.envMapRotation),this.combine=e.combine,this.reflectivity=e.reflectivity,this.refractionRatio=e.refractionRatio,this.wireframe=e.wireframe,this.wireframeLinewidth=e.wireframeLinewidth,this.wireframeLinecap=e.wireframeLinecap,this.wireframeLinejoin=e.wireframeLinejoin,this.flatShading=e.flatShading,this.fog=e.fog,this}}class e0 extends ks{constructor(e){super(),this.isMeshDepthMaterial=!0,this.type="MeshDepthMaterial",this.depthPacking=u_,this.map=null,this.alphaMap=null,this.displacementMap=null,this.displacementScale=1,this.displacementBias=0,this.wireframe=!1,this.wireframeLinewidth=1,this.setValues(e)}copy(e){return super.copy(e),this.depthPacking=e.depthPacking,this.map=e.map,this.alphaMap=e.alphaMap,this.displacementMap=e.displacementMap,this.displacementScale=e.displacementScale,this.displacementBias=e.displacementBias,this.wireframe=e.wireframe,this.wireframeLinewidth=e.wireframeLinewidth,this}}class t0 extends ks{constructor(e){super(),this.isMeshDistanceMaterial=!0,this.type="MeshDistanceMaterial",this.map=null,this.alphaMap=null,this.displacementMap=null,this.displacementScale=1,this.displacementBias=0,this.setValues(e)}copy(e){return super.copy(e),this.map=e.map,this.alphaMap=e.alphaMap,this.displacementMap=e.displacementMap,this.displacementScale=e.displacementScale,this.displacementBias=e.displacementBias,this}}class ip extends nn{constructor(e,t=1){super(),this.isLight=!0,this.type="Light",this.color=new lt(e),this.intensity=t}dispose(){}copy(e,t){return super.copy(e,t),this.color.copy(e.color),this.intensity=e.intensity,this}toJSON(e){const t=super.toJSON(e);return t.object.color=this.color.getHex(),t.object.intensity=this.intensity,this.groundColor!==void 0&&(t.object.groundColor=this.groundColor.getHex()),this.distance!==void 0&&(t.object.distance=this.distance),this.angle!==void 0&&(t.object.angle=this.angle),this.decay!==void 0&&(t.object.decay=this.decay),this.penumbra!==void 0&&(t.object.penumbra=this.penumbra),this.shadow!==void 0&&(t.object.shadow=this.shadow.toJSON()),this.target!==void 0&&(t.object.target=this.target.uuid),t}}const Pl=new Xt,nf=new H,sf=new H;class n0{constructor(e){this.camera=e,this.intensity=1,this.bias=0,this.normalBias=0,this.radius=1,this.blurSamples=8,this.mapSize=new nt(512,512),this.mapType=Ri,this.map=null,this.mapPass=null,this.matrix=new Xt,this.autoUpdate=!0,this.needsUpdate=!1,this._frustum=new gu,this._frameExtents=new nt(1,1),this._viewportCount=1,this._viewports=[new $t(0,0,1,1)]}getViewportCount(){return this._viewportCount}getFrustum(){return this._frustum}updateMatrices(e){const t=this.camera,n=this.matrix;nf.setFromMatrixPosition(e.matrixWorld),t.position.copy(nf),sf.setFromMatrixPosition(e.target.matrixWorld),t.lookAt(sf),t.updateMatrixWorld(),Pl.multiplyMatrices(t.projectionMatrix,t.matrixWorldInverse),this._frustum.setFromProjectionMatrix(Pl,t.coordinateSystem,t.reversedDepth),t.reversedDepth?n.set(.5,0,0,.5,0,.5,0,.5,0,0,1,0,0,0,0,1):n.set(.5,0,0,.5,0,.5,0,.5,0,0,.5,.5,0,0,0,1),n.multiply(Pl)}getViewport(e){return this._viewports[e]}getFrameExtents(){return this._frameExtents}dispose(){this.map&&this.map.dispose(),this.mapPass&&this.mapPass.dispose()}copy(e){return this.camera=e.camera.clone(),this.intensity=e.intensity,this.bias=e.bias,this.radius=e.radius,this.autoUpdate=e.autoUpdate,this.needsUpdate=e.needsUpdate,this.normalBias=e.normalBias,this.blurSamples=e.blurSamples,this.mapSize.copy(e.mapSize),this}clone(){return new this.constructor().copy(this)}toJSON(){const e={};return this.intensity!==1&&(e.intensity=this.intensity),this.bias!==0&&(e.bias=this.bias),this.normalBias!==0&&(e.normalBias=this.normalBias),this.radius!==1&&(e.radius=this.radius),(this.mapSize.x!==512||this.mapSize.y!==512)&&(e.mapSize=this.mapSize.toArray()),e.camera=this.camera.toJSON(!1).object,delete e.camera.matrix,e}}class sp extends Zd{constructor(e=-1,t=1,n=1,s=-1,r=.1,a=2e3){super(),this.isOrthographicCamera=!0,this.type="OrthographicCamera",this.zoom=1,this.view=null,this.left=e,this.right=t,this.top=n,this.bottom=s,this.near=r,this.far=a,this.updateProjectionMatrix()}copy(e,t){return super.copy(e,t),this.left=e.left,this.right=e.right,this.top=e.top,this.bottom=e.bottom,this.near=e.near,this.far=e.far,this.zoom=e.zoom,this.view=e.view===null?null:Object.assign({},e.view),this}setViewOffset(e,t,n,s,r,a){this.view===null&&(this.view={enabled:!0,fullWidth:1,fullHeight:1,offsetX:0,offsetY:0,width:1,height:1}),this.view.enabled=!0,this.view.fullWidth=e,this.view.fullHeight=t,this.view.offsetX=n,this.view.offsetY=s,this.view.width=r,this.view.height=a,this.updateProjectionMatrix()}clearViewOffset(){this.view!==null&&(this.view.enabled=!1),this.updateProjectionMatrix()}updateProjectionMatrix(){const e=(this.right-this.left)/(2*this.zoom),t=(this.top-this.bottom)/(2*this.zoom),n=(this.right+this.left)/2,s=(this.top+this.bottom)/2;let r=n-e,a=n+e,o=s+t,l=s-t;if(this.view!==null&&this.view.enabled){const c=(this.right-this.left)/this.view.fullWidth/this.zoom,f=(this.top-this.bottom)/this.view.fullHeight/this.zoom;r+=c*this.view.offsetX,a=r+c*this.view.width,o-=f*this.view.offsetY,l=o-f*this.view.height}this.projectionMatrix.makeOrthographic(r,a,o,l,this.near,this.far,this.coordinateSystem,this.reversedDepth),this.projectionMatrixInverse.copy(this.projectionMatrix).invert()}toJSON(e){const t=super.toJSON(e);return t.object.zoom=this.zoom,t.object.left=this.left,t.object.right=this.right,t.object.top=this.top,t.object.bottom=this.bottom,t.object.near=this.near,t.object.far=this.far,this.view!==null&&(t.object.view=Object.assign({},this.view)),t}}class i0 extends n0{constructor(){super(new sp(-5,5,5,-5,.5,500)),this.isDirectionalLightShadow=!0}}class s0 extends ip{constructor(e,t){super(e,t),this.isDirectionalLight=!0,this.type="DirectionalLight",this.position.copy(nn.DEFAULT_UP),this.updateMatrix(),this.target=new nn,this.shadow=new i0}dispose(){this.shadow.dispose()}copy(e){return super.copy(e),this.target=e.target.clone(),this.shadow=e.shadow.clone(),this}}class r0 extends ip{constructor(e,t){super(e,t),this.isAmbientLight=!0,this.type="AmbientLight"}}class a0 extends si{constructor(e=[]){super(),this.isArrayCamera=!0,this.isMultiViewCamera=!1,this.cameras=e}}const rf=new Xt;class o0{constructor(e,t,n=0,s=1/0){this.ray=new xa(e,t),this.near=n,this.far=s,this.camera=null,this.layers=new pu,this.params={Mesh:{},Line:{threshold:1},LOD:{},Points:{threshold:1},Sprite:{}}}set(e,t){this.ray.set(e,t)}setFromCamera(e,t){t.isPerspectiveCamera?(this.ray.origin.setFromMatrixPosition(t.matrixWorld),this.ray.direction.set(e.x,e.y,.5).unproject(t).sub(this.ray.origin).normalize(),this.camera=t):t.isOrthographicCamera?(this.ray.origin.set(e.x,e.y,(t.near+t.far)/(t.near-t.far)).unproject(t),this.ray.direction.set(0,0,-1).transformDirection(t.matrixWorld),this.camera=t):console.error("THREE.Raycaster: Unsupported camera type: "+t.type)}setFromXRController(e){return rf.identity().extractRotation(e.matrixWorld),this.ray.origin.setFromMatrixPosition(e.matrixWorld),this.ray.direction.set(0,0,-1).applyMatrix4(rf),this}intersectObject(e,t=!0,n=[]){return zc(e,this,n,t),n.sort(af),n}intersectObjects(e,t=!0,n=[]){for(let s=0,r=e.length;s<r;s++)zc(e[s],this,n,t);return n.sort(af),n}}function af(i,e){return i.distance-e.distance}function zc(i,e,t,n){let s=!0;if(i.layers.test(e.layers)&&i.raycast(e,t)===!1&&(s=!1),s===!0&&n===!0){const r=i.children;for(let a=0,o=r.length;a<o;a++)zc(r[a],e,t,!0)}}class of{constructor(e=1,t=0,n=0){this.radius=e,this.phi=t,this.theta=n}set(e,t,n){return this.radius=e,this.phi=t,this.theta=n,this}copy(e){return this.radius=e.radius,this.phi=e.phi,this.theta=e.theta,this}makeSafe(){return this.phi=ut(this.phi,1e-6,Math.PI-1e-6),this}setFromVector3(e){return this.setFromCartesianCoords(e.x,e.y,e.z)}setFromCartesianCoords(e,t,n){return this.radius=Math.sqrt(e*e+t*t+n*n),this.radius===0?(this.theta=0,this.phi=0):(this.theta=Math.atan2(e,n),this.phi=Math.acos(ut(t/this.radius,-1,1))),this}clone(){return new this.constructor().copy(this)}}class lf extends J_{constructor(e=10,t=10,n=4473924,s=8947848){n=new lt(n),s=new lt(s);const r=t/2,a=e/t,o=e/2,l=[],c=[];for(let h=0,p=0,v=-o;h<=t;h++,v+=a){l.push(-o,0,v,o,0,v),l.push(v,0,-o,v,0,o);const M=h===r?n:s;M.toArray(c,p),p+=3,M.toArray(c,p),p+=3,M.toArray(c,p),p+=3,M.toArray(c,p),p+=3}const f=new vn;f.setAttribute("position",new pn(l,3)),f.setAttribute("color",new pn(c,3));const u=new Ma({vertexColors:!0,toneMapped:!1});super(f,u),this.type="GridHelper"}dispose(){this.geometry.dispose(),this.material.dispose()}}const cf=new H;let Qa,Dl;class _r extends nn{constructor(e=new H(0,0,1),t=new H(0,0,0),n=1,s=16776960,r=n*.2,a=r*.2){super(),this.type="ArrowHelper",Qa===void 0&&(Qa=new vn,Qa.setAttribute("position",new pn([0,0,0,0,1,0],3)),Dl=new Fo(.5,1,5,1),Dl.translate(0,-.5,0)),this.position.copy(t),this.line=new fa(Qa,new Ma({color:s,toneMapped:!1})),this.line.matrixAutoUpdate=!1,this.add(this.line),this.cone=new _n(Dl,new mu({color:s,toneMapped:!1})),this.cone.matrixAutoUpdate=!1,this.add(this.cone),this.setDirection(e),this.setLength(n,r,a)}setDirection(e){if(e.y>.99999)this.quaternion.set(0,0,0,1);else if(e.y<-.99999)this.quaternion.set(1,0,0,0);else{cf.set(e.z,0,-e.x).normalize();const t=Math.acos(e.y);this.quaternion.setFromAxisAngle(cf,t)}}setLength(e,t=e*.2,n=t*.2){this.line.scale.set(1,Math.max(1e-4,e-t),1),this.line.updateMatrix(),this.cone.scale.set(n,t,n),this.cone.position.y=e,this.cone.updateMatrix()}setColor(e){this.line.material.color.set(e),this.cone.material.color.set(e)}copy(e){return super.copy(e,!1),this.line.copy(e.line),this.cone.copy(e.cone),this}dispose(){this.line.geometry.dispose(),this.line.material.dispose(),this.cone.geometry.dispose(),this.cone.material.dispose()}}class l0 extends Bs{constructor(e,t=null){super(),this.object=e,this.domElement=t,this.enabled=!0,this.state=-1,this.keys={},this.mouseButtons={LEFT:null,MIDDLE:null,RIGHT:null},this.touches={ONE:null,TWO:null}}connect(e){if(e===void 0){console.warn("THREE.Controls: connect() now requires an element.");return}this.domElement!==null&&this.disconnect(),this.domElement=e}disconnect(){}dispose(){}update(){}}function uf(i,e,t,n){const s=c0(n);switch(t){case kd:return i*e;case Hd:return i*e/s.components*s.byteLength;case uu:return i*e/s.components*s.byteLength;case Vd:return i*e*2/s.components*s.byteLength;case hu:return i*e*2/s.components*s.byteLength;case zd:return i*e*3/s.components*s.byteLength;case mi:return i*e*4/s.components*s.byteLength;case fu:return i*e*4/s.components*s.byteLength;case oo:case lo:return Math.floor((i+3)/4)*Math.floor((e+3)/4)*8;case co:case uo:return Math.floor((i+3)/4)*Math.floor((e+3)/4)*16;case hc:case dc:return Math.max(i,16)*Math.max(e,8)/4;case uc:case fc:return Math.max(i,8)*Math.max(e,8)/2;case pc:case mc:return Math.floor((i+3)/4)*Math.floor((e+3)/4)*8;case gc:return Math.floor((i+3)/4)*Math.floor((e+3)/4)*16;case _c:return Math.floor((i+3)/4)*Math.floor((e+3)/4)*16;case vc:return Math.floor((i+4)/5)*Math.floor((e+3)/4)*16;case xc:return Math.floor((i+4)/5)*Math.floor((e+4)/5)*16;case Mc:return Math.floor((i+5)/6)*Math.floor((e+4)/5)*16;case Sc:return Math.floor((i+5)/6)*Math.floor((e+5)/6)*16;case yc:return Math.floor((i+7)/8)*Math.floor((e+4)/5)*16;case Ec:return Math.floor((i+7)/8)*Math.floor((e+5)/6)*16;case bc:return Math.floor((i+7)/8)*Math.floor((e+7)/8)*16;case wc:return Math.floor((i+9)/10)*Math.floor((e+4)/5)*16;case Tc:return Math.floor((i+9)/10)*Math.floor((e+5)/6)*16;case Ac:return Math.floor((i+9)/10)*Math.floor((e+7)/8)*16;case Rc:return Math.floor((i+9)/10)*Math.floor((e+9)/10)*16;case Cc:return Math.floor((i+11)/12)*Math.floor((e+9)/10)*16;case Pc:return Math.floor((i+11)/12)*Math.floor((e+11)/12)*16;case Dc:case Lc:case Uc:return Math.ceil(i/4)*Math.ceil(e/4)*16;case Ic:case Nc:return Math.ceil(i/4)*Math.ceil(e/4)*8;case Fc:case Oc:return Math.ceil(i/4)*Math.ceil(e/4)*16}throw new Error(`Unable to determine texture byte length for ${t} format.`)}function c0(i){switch(i){case Ri:case Nd:return{byteLength:1,components:1};case oa:case Fd:case ma:return{byteLength:2,components:1};case lu:case cu:return{byteLength:2,components:4};case Is:case ou:case zi:return{byteLength:4,components:1};case Od:case Bd:return{byteLength:4,components:3}}throw new Error(`Unknown texture type ${i}.`)}typeof __THREE_DEVTOOLS__<"u"&&__THREE_DEVTOOLS__.dispatchEvent(new CustomEvent("register",{detail:{revision:ru}}));typeof window<"u"&&(window.__THREE__?console.warn("WARNING: Multiple instances of Three.js being imported."):window.__THREE__=ru);/**
 * @license
 * Copyright 2010-2025 Three.js Authors
 * SPDX-License-Identifier: MIT
 */function rp(){let i=null,e=!1,t=null,n=null;function s(r,a){t(r,a),n=i.requestAnimationFrame(s)}return{start:function(){e!==!0&&t!==null&&(n=i.requestAnimationFrame(s),e=!0)},stop:function(){i.cancelAnimationFrame(n),e=!1},setAnimationLoop:function(r){t=r},setContext:function(r){i=r}}}function u0(i){const e=new WeakMap;function t(o,l){const c=o.array,f=o.usage,u=c.byteLength,h=i.createBuffer();i.bindBuffer(l,h),i.bufferData(l,c,f),o.onUploadCallback();let p;if(c instanceof Float32Array)p=i.FLOAT;else if(typeof Float16Array<"u"&&c instanceof Float16Array)p=i.HALF_FLOAT;else if(c instanceof Uint16Array)o.isFloat16BufferAttribute?p=i.HALF_FLOAT:p=i.UNSIGNED_SHORT;else if(c instanceof Int16Array)p=i.SHORT;else if(c instanceof Uint32Array)p=i.UNSIGNED_INT;else if(c instanceof Int32Array)p=i.INT;else if(c instanceof Int8Array)p=i.BYTE;else if(c instanceof Uint8Array)p=i.UNSIGNED_BYTE;else if(c instanceof Uint8ClampedArray)p=i.UNSIGNED_BYTE;else throw new Error("THREE.WebGLAttributes: Unsupported buffer data format: "+c);return{buffer:h,type:p,bytesPerElement:c.BYTES_PER_ELEMENT,version:o.version,size:u}}function n(o,l,c){const f=l.array,u=l.updateRanges;if(i.bindBuffer(c,o),u.length===0)i.bufferSubData(c,0,f);else{u.sort((p,v)=>p.start-v.start);let h=0;for(let p=1;p<u.length;p++){const v=u[h],M=u[p];M.start<=v.start+v.count+1?v.count=Math.max(v.count,M.start+M.count-v.start):(++h,u[h]=M)}u.length=h+1;for(let p=0,v=u.length;p<v;p++){const M=u[p];i.bufferSubData(c,M.start*f.BYTES_PER_ELEMENT,f,M.start,M.count)}l.clearUpdateRanges()}l.onUploadCallback()}function s(o){return o.isInterleavedBufferAttribute&&(o=o.data),e.get(o)}function r(o){o.isInterleavedBufferAttribute&&(o=o.data);const l=e.get(o);l&&(i.deleteBuffer(l.buffer),e.delete(o))}function a(o,l){if(o.isInterleavedBufferAttribute&&(o=o.data),o.isGLBufferAttribute){const f=e.get(o);(!f||f.version<o.version)&&e.set(o,{buffer:o.buffer,type:o.type,bytesPerElement:o.elementSize,version:o.version});return}const c=e.get(o);if(c===void 0)e.set(o,t(o,l));else if(c.version<o.version){if(c.size!==o.array.byteLength)throw new Error("THREE.WebGLAttributes: The size of the buffer attribute's array buffer does not match the original size. Resizing buffer attributes is not supported.");n(c.buffer,o,l),c.version=o.version}}return{get:s,remove:r,update:a}}var h0=`#ifdef USE_ALPHAHASH
	if ( diffuseColor.a < getAlphaHashThreshold( vPosition ) ) discard;
#endif`,f0=`#ifdef USE_ALPHAHASH
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
#endif`,d0=`#ifdef USE_ALPHAMAP
	diffuseColor.a *= texture2D( alphaMap, vAlphaMapUv ).g;
#endif`,p0=`#ifdef USE_ALPHAMAP
	uniform sampler2D alphaMap;
#endif`,m0=`#ifdef USE_ALPHATEST
	#ifdef ALPHA_TO_COVERAGE
	diffuseColor.a = smoothstep( alphaTest, alphaTest + fwidth( diffuseColor.a ), diffuseColor.a );
	if ( diffuseColor.a == 0.0 ) discard;
	#else
	if ( diffuseColor.a < alphaTest ) discard;
	#endif
#endif`,g0=`#ifdef USE_ALPHATEST
	uniform float alphaTest;
#endif`,_0=`#ifdef USE_AOMAP
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
#endif`,v0=`#ifdef USE_AOMAP
	uniform sampler2D aoMap;
	uniform float aoMapIntensity;
#endif`,x0=`#ifdef USE_BATCHING
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
#endif`,M0=`#ifdef USE_BATCHING
	mat4 batchingMatrix = getBatchingMatrix( getIndirectIndex( gl_DrawID ) );
#endif`,S0=`vec3 transformed = vec3( position );
#ifdef USE_ALPHAHASH
	vPosition = vec3( position );
#endif`,y0=`vec3 objectNormal = vec3( normal );
#ifdef USE_TANGENT
	vec3 objectTangent = vec3( tangent.xyz );
#endif`,E0=`float G_BlinnPhong_Implicit( ) {
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
} // validated`,b0=`#ifdef USE_IRIDESCENCE
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
#endif`,w0=`#ifdef USE_BUMPMAP
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
#endif`,T0=`#if NUM_CLIPPING_PLANES > 0
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
#endif`,A0=`#if NUM_CLIPPING_PLANES > 0
	varying vec3 vClipPosition;
	uniform vec4 clippingPlanes[ NUM_CLIPPING_PLANES ];
#endif`,R0=`#if NUM_CLIPPING_PLANES > 0
	varying vec3 vClipPosition;
#endif`,C0=`#if NUM_CLIPPING_PLANES > 0
	vClipPosition = - mvPosition.xyz;
#endif`,P0=`#if defined( USE_COLOR_ALPHA )
	diffuseColor *= vColor;
#elif defined( USE_COLOR )
	diffuseColor.rgb *= vColor;
#endif`,D0=`#if defined( USE_COLOR_ALPHA )
	varying vec4 vColor;
#elif defined( USE_COLOR )
	varying vec3 vColor;
#endif`,L0=`#if defined( USE_COLOR_ALPHA )
	varying vec4 vColor;
#elif defined( USE_COLOR ) || defined( USE_INSTANCING_COLOR ) || defined( USE_BATCHING_COLOR )
	varying vec3 vColor;
#endif`,U0=`#if defined( USE_COLOR_ALPHA )
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
#endif`,I0=`#define PI 3.141592653589793
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
} // validated`,N0=`#ifdef ENVMAP_TYPE_CUBE_UV
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
#endif`,F0=`vec3 transformedNormal = objectNormal;
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
#endif`,O0=`#ifdef USE_DISPLACEMENTMAP
	uniform sampler2D displacementMap;
	uniform float displacementScale;
	uniform float displacementBias;
#endif`,B0=`#ifdef USE_DISPLACEMENTMAP
	transformed += normalize( objectNormal ) * ( texture2D( displacementMap, vDisplacementMapUv ).x * displacementScale + displacementBias );
#endif`,k0=`#ifdef USE_EMISSIVEMAP
	vec4 emissiveColor = texture2D( emissiveMap, vEmissiveMapUv );
	#ifdef DECODE_VIDEO_TEXTURE_EMISSIVE
		emissiveColor = sRGBTransferEOTF( emissiveColor );
	#endif
	totalEmissiveRadiance *= emissiveColor.rgb;
#endif`,z0=`#ifdef USE_EMISSIVEMAP
	uniform sampler2D emissiveMap;
#endif`,H0="gl_FragColor = linearToOutputTexel( gl_FragColor );",V0=`vec4 LinearTransferOETF( in vec4 value ) {
	return value;
}
vec4 sRGBTransferEOTF( in vec4 value ) {
	return vec4( mix( pow( value.rgb * 0.9478672986 + vec3( 0.0521327014 ), vec3( 2.4 ) ), value.rgb * 0.0773993808, vec3( lessThanEqual( value.rgb, vec3( 0.04045 ) ) ) ), value.a );
}
vec4 sRGBTransferOETF( in vec4 value ) {
	return vec4( mix( pow( value.rgb, vec3( 0.41666 ) ) * 1.055 - vec3( 0.055 ), value.rgb * 12.92, vec3( lessThanEqual( value.rgb, vec3( 0.0031308 ) ) ) ), value.a );
}`,G0=`#ifdef USE_ENVMAP
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
#endif`,W0=`#ifdef USE_ENVMAP
	uniform float envMapIntensity;
	uniform float flipEnvMap;
	uniform mat3 envMapRotation;
	#ifdef ENVMAP_TYPE_CUBE
		uniform samplerCube envMap;
	#else
		uniform sampler2D envMap;
	#endif
	
#endif`,X0=`#ifdef USE_ENVMAP
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
#endif`,q0=`#ifdef USE_ENVMAP
	#if defined( USE_BUMPMAP ) || defined( USE_NORMALMAP ) || defined( PHONG ) || defined( LAMBERT )
		#define ENV_WORLDPOS
	#endif
	#ifdef ENV_WORLDPOS
		
		varying vec3 vWorldPosition;
	#else
		varying vec3 vReflect;
		uniform float refractionRatio;
	#endif
#endif`,Y0=`#ifdef USE_ENVMAP
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
#endif`,$0=`#ifdef USE_FOG
	vFogDepth = - mvPosition.z;
#endif`,j0=`#ifdef USE_FOG
	varying float vFogDepth;
#endif`,K0=`#ifdef USE_FOG
	#ifdef FOG_EXP2
		float fogFactor = 1.0 - exp( - fogDensity * fogDensity * vFogDepth * vFogDepth );
	#else
		float fogFactor = smoothstep( fogNear, fogFar, vFogDepth );
	#endif
	gl_FragColor.rgb = mix( gl_FragColor.rgb, fogColor, fogFactor );
#endif`,Z0=`#ifdef USE_FOG
	uniform vec3 fogColor;
	varying float vFogDepth;
	#ifdef FOG_EXP2
		uniform float fogDensity;
	#else
		uniform float fogNear;
		uniform float fogFar;
	#endif
#endif`,J0=`#ifdef USE_GRADIENTMAP
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
}`,Q0=`#ifdef USE_LIGHTMAP
	uniform sampler2D lightMap;
	uniform float lightMapIntensity;
#endif`,ev=`LambertMaterial material;
material.diffuseColor = diffuseColor.rgb;
material.specularStrength = specularStrength;`,tv=`varying vec3 vViewPosition;
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
#define RE_IndirectDiffuse		RE_IndirectDiffuse_Lambert`,nv=`uniform bool receiveShadow;
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
#endif`,iv=`#ifdef USE_ENVMAP
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
#endif`,sv=`ToonMaterial material;
material.diffuseColor = diffuseColor.rgb;`,rv=`varying vec3 vViewPosition;
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
#define RE_IndirectDiffuse		RE_IndirectDiffuse_Toon`,av=`BlinnPhongMaterial material;
material.diffuseColor = diffuseColor.rgb;
material.specularColor = specular;
material.specularShininess = shininess;
material.specularStrength = specularStrength;`,ov=`varying vec3 vViewPosition;
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
#define RE_IndirectDiffuse		RE_IndirectDiffuse_BlinnPhong`,lv=`PhysicalMaterial material;
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
#endif`,cv=`struct PhysicalMaterial {
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
}`,uv=`
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
#endif`,hv=`#if defined( RE_IndirectDiffuse )
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
#endif`,fv=`#if defined( RE_IndirectDiffuse )
	RE_IndirectDiffuse( irradiance, geometryPosition, geometryNormal, geometryViewDir, geometryClearcoatNormal, material, reflectedLight );
#endif
#if defined( RE_IndirectSpecular )
	RE_IndirectSpecular( radiance, iblIrradiance, clearcoatRadiance, geometryPosition, geometryNormal, geometryViewDir, geometryClearcoatNormal, material, reflectedLight );
#endif`,dv=`#if defined( USE_LOGARITHMIC_DEPTH_BUFFER )
	gl_FragDepth = vIsPerspective == 0.0 ? gl_FragCoord.z : log2( vFragDepth ) * logDepthBufFC * 0.5;
#endif`,pv=`#if defined( USE_LOGARITHMIC_DEPTH_BUFFER )
	uniform float logDepthBufFC;
	varying float vFragDepth;
	varying float vIsPerspective;
#endif`,mv=`#ifdef USE_LOGARITHMIC_DEPTH_BUFFER
	varying float vFragDepth;
	varying float vIsPerspective;
#endif`,gv=`#ifdef USE_LOGARITHMIC_DEPTH_BUFFER
	vFragDepth = 1.0 + gl_Position.w;
	vIsPerspective = float( isPerspectiveMatrix( projectionMatrix ) );
#endif`,_v=`#ifdef USE_MAP
	vec4 sampledDiffuseColor = texture2D( map, vMapUv );
	#ifdef DECODE_VIDEO_TEXTURE
		sampledDiffuseColor = sRGBTransferEOTF( sampledDiffuseColor );
	#endif
	diffuseColor *= sampledDiffuseColor;
#endif`,vv=`#ifdef USE_MAP
	uniform sampler2D map;
#endif`,xv=`#if defined( USE_MAP ) || defined( USE_ALPHAMAP )
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
#endif`,Mv=`#if defined( USE_POINTS_UV )
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
#endif`,Sv=`float metalnessFactor = metalness;
#ifdef USE_METALNESSMAP
	vec4 texelMetalness = texture2D( metalnessMap, vMetalnessMapUv );
	metalnessFactor *= texelMetalness.b;
#endif`,yv=`#ifdef USE_METALNESSMAP
	uniform sampler2D metalnessMap;
#endif`,Ev=`#ifdef USE_INSTANCING_MORPH
	float morphTargetInfluences[ MORPHTARGETS_COUNT ];
	float morphTargetBaseInfluence = texelFetch( morphTexture, ivec2( 0, gl_InstanceID ), 0 ).r;
	for ( int i = 0; i < MORPHTARGETS_COUNT; i ++ ) {
		morphTargetInfluences[i] =  texelFetch( morphTexture, ivec2( i + 1, gl_InstanceID ), 0 ).r;
	}
#endif`,bv=`#if defined( USE_MORPHCOLORS )
	vColor *= morphTargetBaseInfluence;
	for ( int i = 0; i < MORPHTARGETS_COUNT; i ++ ) {
		#if defined( USE_COLOR_ALPHA )
			if ( morphTargetInfluences[ i ] != 0.0 ) vColor += getMorph( gl_VertexID, i, 2 ) * morphTargetInfluences[ i ];
		#elif defined( USE_COLOR )
			if ( morphTargetInfluences[ i ] != 0.0 ) vColor += getMorph( gl_VertexID, i, 2 ).rgb * morphTargetInfluences[ i ];
		#endif
	}
#endif`,wv=`#ifdef USE_MORPHNORMALS
	objectNormal *= morphTargetBaseInfluence;
	for ( int i = 0; i < MORPHTARGETS_COUNT; i ++ ) {
		if ( morphTargetInfluences[ i ] != 0.0 ) objectNormal += getMorph( gl_VertexID, i, 1 ).xyz * morphTargetInfluences[ i ];
	}
#endif`,Tv=`#ifdef USE_MORPHTARGETS
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
#endif`,Av=`#ifdef USE_MORPHTARGETS
	transformed *= morphTargetBaseInfluence;
	for ( int i = 0; i < MORPHTARGETS_COUNT; i ++ ) {
		if ( morphTargetInfluences[ i ] != 0.0 ) transformed += getMorph( gl_VertexID, i, 0 ).xyz * morphTargetInfluences[ i ];
	}
#endif`,Rv=`float faceDirection = gl_FrontFacing ? 1.0 : - 1.0;
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
vec3 nonPerturbedNormal = normal;`,Cv=`#ifdef USE_NORMALMAP_OBJECTSPACE
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
#endif`,Pv=`#ifndef FLAT_SHADED
	varying vec3 vNormal;
	#ifdef USE_TANGENT
		varying vec3 vTangent;
		varying vec3 vBitangent;
	#endif
#endif`,Dv=`#ifndef FLAT_SHADED
	varying vec3 vNormal;
	#ifdef USE_TANGENT
		varying vec3 vTangent;
		varying vec3 vBitangent;
	#endif
#endif`,Lv=`#ifndef FLAT_SHADED
	vNormal = normalize( transformedNormal );
	#ifdef USE_TANGENT
		vTangent = normalize( transformedTangent );
		vBitangent = normalize( cross( vNormal, vTangent ) * tangent.w );
	#endif
#endif`,Uv=`#ifdef USE_NORMALMAP
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
#endif`,Iv=`#ifdef USE_CLEARCOAT
	vec3 clearcoatNormal = nonPerturbedNormal;
#endif`,Nv=`#ifdef USE_CLEARCOAT_NORMALMAP
	vec3 clearcoatMapN = texture2D( clearcoatNormalMap, vClearcoatNormalMapUv ).xyz * 2.0 - 1.0;
	clearcoatMapN.xy *= clearcoatNormalScale;
	clearcoatNormal = normalize( tbn2 * clearcoatMapN );
#endif`,Fv=`#ifdef USE_CLEARCOATMAP
	uniform sampler2D clearcoatMap;
#endif
#ifdef USE_CLEARCOAT_NORMALMAP
	uniform sampler2D clearcoatNormalMap;
	uniform vec2 clearcoatNormalScale;
#endif
#ifdef USE_CLEARCOAT_ROUGHNESSMAP
	uniform sampler2D clearcoatRoughnessMap;
#endif`,Ov=`#ifdef USE_IRIDESCENCEMAP
	uniform sampler2D iridescenceMap;
#endif
#ifdef USE_IRIDESCENCE_THICKNESSMAP
	uniform sampler2D iridescenceThicknessMap;
#endif`,Bv=`#ifdef OPAQUE
diffuseColor.a = 1.0;
#endif
#ifdef USE_TRANSMISSION
diffuseColor.a *= material.transmissionAlpha;
#endif
gl_FragColor = vec4( outgoingLight, diffuseColor.a );`,kv=`vec3 packNormalToRGB( const in vec3 normal ) {
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
}`,zv=`#ifdef PREMULTIPLIED_ALPHA
	gl_FragColor.rgb *= gl_FragColor.a;
#endif`,Hv=`vec4 mvPosition = vec4( transformed, 1.0 );
#ifdef USE_BATCHING
	mvPosition = batchingMatrix * mvPosition;
#endif
#ifdef USE_INSTANCING
	mvPosition = instanceMatrix * mvPosition;
#endif
mvPosition = modelViewMatrix * mvPosition;
gl_Position = projectionMatrix * mvPosition;`,Vv=`#ifdef DITHERING
	gl_FragColor.rgb = dithering( gl_FragColor.rgb );
#endif`,Gv=`#ifdef DITHERING
	vec3 dithering( vec3 color ) {
		float grid_position = rand( gl_FragCoord.xy );
		vec3 dither_shift_RGB = vec3( 0.25 / 255.0, -0.25 / 255.0, 0.25 / 255.0 );
		dither_shift_RGB = mix( 2.0 * dither_shift_RGB, -2.0 * dither_shift_RGB, grid_position );
		return color + dither_shift_RGB;
	}
#endif`,Wv=`float roughnessFactor = roughness;
#ifdef USE_ROUGHNESSMAP
	vec4 texelRoughness = texture2D( roughnessMap, vRoughnessMapUv );
	roughnessFactor *= texelRoughness.g;
#endif`,Xv=`#ifdef USE_ROUGHNESSMAP
	uniform sampler2D roughnessMap;
#endif`,qv=`#if NUM_SPOT_LIGHT_COORDS > 0
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
#endif`,Yv=`#if NUM_SPOT_LIGHT_COORDS > 0
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
#endif`,$v=`#if ( defined( USE_SHADOWMAP ) && ( NUM_DIR_LIGHT_SHADOWS > 0 || NUM_POINT_LIGHT_SHADOWS > 0 ) ) || ( NUM_SPOT_LIGHT_COORDS > 0 )
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
#endif`,jv=`float getShadowMask() {
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
}`,Kv=`#ifdef USE_SKINNING
	mat4 boneMatX = getBoneMatrix( skinIndex.x );
	mat4 boneMatY = getBoneMatrix( skinIndex.y );
	mat4 boneMatZ = getBoneMatrix( skinIndex.z );
	mat4 boneMatW = getBoneMatrix( skinIndex.w );
#endif`,Zv=`#ifdef USE_SKINNING
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
#endif`,Jv=`#ifdef USE_SKINNING
	vec4 skinVertex = bindMatrix * vec4( transformed, 1.0 );
	vec4 skinned = vec4( 0.0 );
	skinned += boneMatX * skinVertex * skinWeight.x;
	skinned += boneMatY * skinVertex * skinWeight.y;
	skinned += boneMatZ * skinVertex * skinWeight.z;
	skinned += boneMatW * skinVertex * skinWeight.w;
	transformed = ( bindMatrixInverse * skinned ).xyz;
#endif`,Qv=`#ifdef USE_SKINNING
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
#endif`,ex=`float specularStrength;
#ifdef USE_SPECULARMAP
	vec4 texelSpecular = texture2D( specularMap, vSpecularMapUv );
	specularStrength = texelSpecular.r;
#else
	specularStrength = 1.0;
#endif`,tx=`#ifdef USE_SPECULARMAP
	uniform sampler2D specularMap;
#endif`,nx=`#if defined( TONE_MAPPING )
	gl_FragColor.rgb = toneMapping( gl_FragColor.rgb );
#endif`,ix=`#ifndef saturate
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
vec3 CustomToneMapping( vec3 color ) { return color; }`,sx=`#ifdef USE_TRANSMISSION
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
#endif`,rx=`#ifdef USE_TRANSMISSION
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
#endif`,ax=`#if defined( USE_UV ) || defined( USE_ANISOTROPY )
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
#endif`,ox=`#if defined( USE_UV ) || defined( USE_ANISOTROPY )
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
#endif`,lx=`#if defined( USE_UV ) || defined( USE_ANISOTROPY )
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
#endif`,cx=`#if defined( USE_ENVMAP ) || defined( DISTANCE ) || defined ( USE_SHADOWMAP ) || defined ( USE_TRANSMISSION ) || NUM_SPOT_LIGHT_COORDS > 0
	vec4 worldPosition = vec4( transformed, 1.0 );
	#ifdef USE_BATCHING
		worldPosition = batchingMatrix * worldPosition;
	#endif
	#ifdef USE_INSTANCING
		worldPosition = instanceMatrix * worldPosition;
	#endif
	worldPosition = modelMatrix * worldPosition;
#endif`;const ux=`varying vec2 vUv;
uniform mat3 uvTransform;
void main() {
	vUv = ( uvTransform * vec3( uv, 1 ) ).xy;
	gl_Position = vec4( position.xy, 1.0, 1.0 );
}`,hx=`uniform sampler2D t2D;
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
}`,fx=`varying vec3 vWorldDirection;
#include <common>
void main() {
	vWorldDirection = transformDirection( position, modelMatrix );
	#include <begin_vertex>
	#include <project_vertex>
	gl_Position.z = gl_Position.w;
}`,dx=`#ifdef ENVMAP_TYPE_CUBE
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
}`,px=`varying vec3 vWorldDirection;
#include <common>
void main() {
	vWorldDirection = transformDirection( position, modelMatrix );
	#include <begin_vertex>
	#include <project_vertex>
	gl_Position.z = gl_Position.w;
}`,mx=`uniform samplerCube tCube;
uniform float tFlip;
uniform float opacity;
varying vec3 vWorldDirection;
void main() {
	vec4 texColor = textureCube( tCube, vec3( tFlip * vWorldDirection.x, vWorldDirection.yz ) );
	gl_FragColor = texColor;
	gl_FragColor.a *= opacity;
	#include <tonemapping_fragment>
	#include <colorspace_fragment>
}`,gx=`#include <common>
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
}`,_x=`#if DEPTH_PACKING == 3200
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
}`,vx=`#define DISTANCE
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
}`,xx=`#define DISTANCE
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
}`,Mx=`varying vec3 vWorldDirection;
#include <common>
void main() {
	vWorldDirection = transformDirection( position, modelMatrix );
	#include <begin_vertex>
	#include <project_vertex>
}`,Sx=`uniform sampler2D tEquirect;
varying vec3 vWorldDirection;
#include <common>
void main() {
	vec3 direction = normalize( vWorldDirection );
	vec2 sampleUV = equirectUv( direction );
	gl_FragColor = texture2D( tEquirect, sampleUV );
	#include <tonemapping_fragment>
	#include <colorspace_fragment>
}`,yx=`uniform float scale;
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
}`,Ex=`uniform vec3 diffuse;
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
}`,bx=`#include <common>
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
}`,wx=`uniform vec3 diffuse;
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
}`,Tx=`#define LAMBERT
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
}`,Ax=`#define LAMBERT
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
}`,Rx=`#define MATCAP
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
}`,Cx=`#define MATCAP
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
}`,Px=`#define NORMAL
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
}`,Dx=`#define NORMAL
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
}`,Lx=`#define PHONG
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
}`,Ux=`#define PHONG
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
}`,Ix=`#define STANDARD
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
}`,Nx=`#define STANDARD
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
}`,Fx=`#define TOON
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
}`,Ox=`#define TOON
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
}`,Bx=`uniform float size;
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
}`,kx=`uniform vec3 diffuse;
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
}`,zx=`#include <common>
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
}`,Hx=`uniform vec3 color;
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
}`,Vx=`uniform float rotation;
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
}`,Gx=`uniform vec3 diffuse;
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
}`,at={alphahash_fragment:h0,alphahash_pars_fragment:f0,alphamap_fragment:d0,alphamap_pars_fragment:p0,alphatest_fragment:m0,alphatest_pars_fragment:g0,aomap_fragment:_0,aomap_pars_fragment:v0,batching_pars_vertex:x0,batching_vertex:M0,begin_vertex:S0,beginnormal_vertex:y0,bsdfs:E0,iridescence_fragment:b0,bumpmap_pars_fragment:w0,clipping_planes_fragment:T0,clipping_planes_pars_fragment:A0,clipping_planes_pars_vertex:R0,clipping_planes_vertex:C0,color_fragment:P0,color_pars_fragment:D0,color_pars_vertex:L0,color_vertex:U0,common:I0,cube_uv_reflection_fragment:N0,defaultnormal_vertex:F0,displacementmap_pars_vertex:O0,displacementmap_vertex:B0,emissivemap_fragment:k0,emissivemap_pars_fragment:z0,colorspace_fragment:H0,colorspace_pars_fragment:V0,envmap_fragment:G0,envmap_common_pars_fragment:W0,envmap_pars_fragment:X0,envmap_pars_vertex:q0,envmap_physical_pars_fragment:iv,envmap_vertex:Y0,fog_vertex:$0,fog_pars_vertex:j0,fog_fragment:K0,fog_pars_fragment:Z0,gradientmap_pars_fragment:J0,lightmap_pars_fragment:Q0,lights_lambert_fragment:ev,lights_lambert_pars_fragment:tv,lights_pars_begin:nv,lights_toon_fragment:sv,lights_toon_pars_fragment:rv,lights_phong_fragment:av,lights_phong_pars_fragment:ov,lights_physical_fragment:lv,lights_physical_pars_fragment:cv,lights_fragment_begin:uv,lights_fragment_maps:hv,lights_fragment_end:fv,logdepthbuf_fragment:dv,logdepthbuf_pars_fragment:pv,logdepthbuf_pars_vertex:mv,logdepthbuf_vertex:gv,map_fragment:_v,map_pars_fragment:vv,map_particle_fragment:xv,map_particle_pars_fragment:Mv,metalnessmap_fragment:Sv,metalnessmap_pars_fragment:yv,morphinstance_vertex:Ev,morphcolor_vertex:bv,morphnormal_vertex:wv,morphtarget_pars_vertex:Tv,morphtarget_vertex:Av,normal_fragment_begin:Rv,normal_fragment_maps:Cv,normal_pars_fragment:Pv,normal_pars_vertex:Dv,normal_vertex:Lv,normalmap_pars_fragment:Uv,clearcoat_normal_fragment_begin:Iv,clearcoat_normal_fragment_maps:Nv,clearcoat_pars_fragment:Fv,iridescence_pars_fragment:Ov,opaque_fragment:Bv,packing:kv,premultiplied_alpha_fragment:zv,project_vertex:Hv,dithering_fragment:Vv,dithering_pars_fragment:Gv,roughnessmap_fragment:Wv,roughnessmap_pars_fragment:Xv,shadowmap_pars_fragment:qv,shadowmap_pars_vertex:Yv,shadowmap_vertex:$v,shadowmask_pars_fragment:jv,skinbase_vertex:Kv,skinning_pars_vertex:Zv,skinning_vertex:Jv,skinnormal_vertex:Qv,specularmap_fragment:ex,specularmap_pars_fragment:tx,tonemapping_fragment:nx,tonemapping_pars_fragment:ix,transmission_fragment:sx,transmission_pars_fragment:rx,uv_pars_fragment:ax,uv_pars_vertex:ox,uv_vertex:lx,worldpos_vertex:cx,background_vert:ux,background_frag:hx,backgroundCube_vert:fx,backgroundCube_frag:dx,cube_vert:px,cube_frag:mx,depth_vert:gx,depth_frag:_x,distanceRGBA_vert:vx,distanceRGBA_frag:xx,equirect_vert:Mx,equirect_frag:Sx,linedashed_vert:yx,linedashed_frag:Ex,meshbasic_vert:bx,meshbasic_frag:wx,meshlambert_vert:Tx,meshlambert_frag:Ax,meshmatcap_vert:Rx,meshmatcap_frag:Cx,meshnormal_vert:Px,meshnormal_frag:Dx,meshphong_vert:Lx,meshphong_frag:Ux,meshphysical_vert:Ix,meshphysical_frag:Nx,meshtoon_vert:Fx,meshtoon_frag:Ox,points_vert:Bx,points_frag:kx,shadow_vert:zx,shadow_frag:Hx,sprite_vert:Vx,sprite_frag:Gx},be={common:{diffuse:{value:new lt(16777215)},opacity:{value:1},map:{value:null},mapTransform:{value:new st},alphaMap:{value:null},alphaMapTransform:{value:new st},alphaTest:{value:0}},specularmap:{specularMap:{value:null},specularMapTransform:{value:new st}},envmap:{envMap:{value:null},envMapRotation:{value:new st},flipEnvMap:{value:-1},reflectivity:{value:1},ior:{value:1.5},refractionRatio:{value:.98}},aomap:{aoMap:{value:null},aoMapIntensity:{value:1},aoMapTransform:{value:new st}},lightmap:{lightMap:{value:null},lightMapIntensity:{value:1},lightMapTransform:{value:new st}},bumpmap:{bumpMap:{value:null},bumpMapTransform:{value:new st},bumpScale:{value:1}},normalmap:{normalMap:{value:null},normalMapTransform:{value:new st},normalScale:{value:new nt(1,1)}},displacementmap:{displacementMap:{value:null},displacementMapTransform:{value:new st},displacementScale:{value:1},displacementBias:{value:0}},emissivemap:{emissiveMap:{value:null},emissiveMapTransform:{value:new st}},metalnessmap:{metalnessMap:{value:null},metalnessMapTransform:{value:new st}},roughnessmap:{roughnessMap:{value:null},roughnessMapTransform:{value:new st}},gradientmap:{gradientMap:{value:null}},fog:{fogDensity:{value:25e-5},fogNear:{value:1},fogFar:{value:2e3},fogColor:{value:new lt(16777215)}},lights:{ambientLightColor:{value:[]},lightProbe:{value:[]},directionalLights:{value:[],properties:{direction:{},color:{}}},directionalLightShadows:{value:[],properties:{shadowIntensity:1,shadowBias:{},shadowNormalBias:{},shadowRadius:{},shadowMapSize:{}}},directionalShadowMap:{value:[]},directionalShadowMatrix:{value:[]},spotLights:{value:[],properties:{color:{},position:{},direction:{},distance:{},coneCos:{},penumbraCos:{},decay:{}}},spotLightShadows:{value:[],properties:{shadowIntensity:1,shadowBias:{},shadowNormalBias:{},shadowRadius:{},shadowMapSize:{}}},spotLightMap:{value:[]},spotShadowMap:{value:[]},spotLightMatrix:{value:[]},pointLights:{value:[],properties:{color:{},position:{},decay:{},distance:{}}},pointLightShadows:{value:[],properties:{shadowIntensity:1,shadowBias:{},shadowNormalBias:{},shadowRadius:{},shadowMapSize:{},shadowCameraNear:{},shadowCameraFar:{}}},pointShadowMap:{value:[]},pointShadowMatrix:{value:[]},hemisphereLights:{value:[],properties:{direction:{},skyColor:{},groundColor:{}}},rectAreaLights:{value:[],properties:{color:{},position:{},width:{},height:{}}},ltc_1:{value:null},ltc_2:{value:null}},points:{diffuse:{value:new lt(16777215)},opacity:{value:1},size:{value:1},scale:{value:1},map:{value:null},alphaMap:{value:null},alphaMapTransform:{value:new st},alphaTest:{value:0},uvTransform:{value:new st}},sprite:{diffuse:{value:new lt(16777215)},opacity:{value:1},center:{value:new nt(.5,.5)},rotation:{value:0},map:{value:null},mapTransform:{value:new st},alphaMap:{value:null},alphaMapTransform:{value:new st},alphaTest:{value:0}}},bi={basic:{uniforms:Dn([be.common,be.specularmap,be.envmap,be.aomap,be.lightmap,be.fog]),vertexShader:at.meshbasic_vert,fragmentShader:at.meshbasic_frag},lambert:{uniforms:Dn([be.common,be.specularmap,be.envmap,be.aomap,be.lightmap,be.emissivemap,be.bumpmap,be.normalmap,be.displacementmap,be.fog,be.lights,{emissive:{value:new lt(0)}}]),vertexShader:at.meshlambert_vert,fragmentShader:at.meshlambert_frag},phong:{uniforms:Dn([be.common,be.specularmap,be.envmap,be.aomap,be.lightmap,be.emissivemap,be.bumpmap,be.normalmap,be.displacementmap,be.fog,be.lights,{emissive:{value:new lt(0)},specular:{value:new lt(1118481)},shininess:{value:30}}]),vertexShader:at.meshphong_vert,fragmentShader:at.meshphong_frag},standard:{uniforms:Dn([be.common,be.envmap,be.aomap,be.lightmap,be.emissivemap,be.bumpmap,be.normalmap,be.displacementmap,be.roughnessmap,be.metalnessmap,be.fog,be.lights,{emissive:{value:new lt(0)},roughness:{value:1},metalness:{value:0},envMapIntensity:{value:1}}]),vertexShader:at.meshphysical_vert,fragmentShader:at.meshphysical_frag},toon:{uniforms:Dn([be.common,be.aomap,be.lightmap,be.emissivemap,be.bumpmap,be.normalmap,be.displacementmap,be.gradientmap,be.fog,be.lights,{emissive:{value:new lt(0)}}]),vertexShader:at.meshtoon_vert,fragmentShader:at.meshtoon_frag},matcap:{uniforms:Dn([be.common,be.bumpmap,be.normalmap,be.displacementmap,be.fog,{matcap:{value:null}}]),vertexShader:at.meshmatcap_vert,fragmentShader:at.meshmatcap_frag},points:{uniforms:Dn([be.points,be.fog]),vertexShader:at.points_vert,fragmentShader:at.points_frag},dashed:{uniforms:Dn([be.common,be.fog,{scale:{value:1},dashSize:{value:1},totalSize:{value:2}}]),vertexShader:at.linedashed_vert,fragmentShader:at.linedashed_frag},depth:{uniforms:Dn([be.common,be.displacementmap]),vertexShader:at.depth_vert,fragmentShader:at.depth_frag},normal:{uniforms:Dn([be.common,be.bumpmap,be.normalmap,be.displacementmap,{opacity:{value:1}}]),vertexShader:at.meshnormal_vert,fragmentShader:at.meshnormal_frag},sprite:{uniforms:Dn([be.sprite,be.fog]),vertexShader:at.sprite_vert,fragmentShader:at.sprite_frag},background:{uniforms:{uvTransform:{value:new st},t2D:{value:null},backgroundIntensity:{value:1}},vertexShader:at.background_vert,fragmentShader:at.background_frag},backgroundCube:{uniforms:{envMap:{value:null},flipEnvMap:{value:-1},backgroundBlurriness:{value:0},backgroundIntensity:{value:1},backgroundRotation:{value:new st}},vertexShader:at.backgroundCube_vert,fragmentShader:at.backgroundCube_frag},cube:{uniforms:{tCube:{value:null},tFlip:{value:-1},opacity:{value:1}},vertexShader:at.cube_vert,fragmentShader:at.cube_frag},equirect:{uniforms:{tEquirect:{value:null}},vertexShader:at.equirect_vert,fragmentShader:at.equirect_frag},distanceRGBA:{uniforms:Dn([be.common,be.displacementmap,{referencePosition:{value:new H},nearDistance:{value:1},farDistance:{value:1e3}}]),vertexShader:at.distanceRGBA_vert,fragmentShader:at.distanceRGBA_frag},shadow:{uniforms:Dn([be.lights,be.fog,{color:{value:new lt(0)},opacity:{value:1}}]),vertexShader:at.shadow_vert,fragmentShader:at.shadow_frag}};bi.physical={uniforms:Dn([bi.standard.uniforms,{clearcoat:{value:0},clearcoatMap:{value:null},clearcoatMapTransform:{value:new st},clearcoatNormalMap:{value:null},clearcoatNormalMapTransform:{value:new st},clearcoatNormalScale:{value:new nt(1,1)},clearcoatRoughness:{value:0},clearcoatRoughnessMap:{value:null},clearcoatRoughnessMapTransform:{value:new st},dispersion:{value:0},iridescence:{value:0},iridescenceMap:{value:null},iridescenceMapTransform:{value:new st},iridescenceIOR:{value:1.3},iridescenceThicknessMinimum:{value:100},iridescenceThicknessMaximum:{value:400},iridescenceThicknessMap:{value:null},iridescenceThicknessMapTransform:{value:new st},sheen:{value:0},sheenColor:{value:new lt(0)},sheenColorMap:{value:null},sheenColorMapTransform:{value:new st},sheenRoughness:{value:1},sheenRoughnessMap:{value:null},sheenRoughnessMapTransform:{value:new st},transmission:{value:0},transmissionMap:{value:null},transmissionMapTransform:{value:new st},transmissionSamplerSize:{value:new nt},transmissionSamplerMap:{value:null},thickness:{value:0},thicknessMap:{value:null},thicknessMapTransform:{value:new st},attenuationDistance:{value:0},attenuationColor:{value:new lt(0)},specularColor:{value:new lt(1,1,1)},specularColorMap:{value:null},specularColorMapTransform:{value:new st},specularIntensity:{value:1},specularIntensityMap:{value:null},specularIntensityMapTransform:{value:new st},anisotropyVector:{value:new nt},anisotropyMap:{value:null},anisotropyMapTransform:{value:new st}}]),vertexShader:at.meshphysical_vert,fragmentShader:at.meshphysical_frag};const eo={r:0,b:0,g:0},Ss=new Ci,Wx=new Xt;function Xx(i,e,t,n,s,r,a){const o=new lt(0);let l=r===!0?0:1,c,f,u=null,h=0,p=null;function v(A){let E=A.isScene===!0?A.background:null;return E&&E.isTexture&&(E=(A.backgroundBlurriness>0?t:e).get(E)),E}function M(A){let E=!1;const F=v(A);F===null?d(o,l):F&&F.isColor&&(d(F,1),E=!0);const C=i.xr.getEnvironmentBlendMode();C==="additive"?n.buffers.color.setClear(0,0,0,1,a):C==="alpha-blend"&&n.buffers.color.setClear(0,0,0,0,a),(i.autoClear||E)&&(n.buffers.depth.setTest(!0),n.buffers.depth.setMask(!0),n.buffers.color.setMask(!0),i.clear(i.autoClearColor,i.autoClearDepth,i.autoClearStencil))}function m(A,E){const F=v(E);F&&(F.isCubeTexture||F.mapping===Io)?(f===void 0&&(f=new _n(new Dr(1,1,1),new us({name:"BackgroundCubeMaterial",uniforms:Tr(bi.backgroundCube.uniforms),vertexShader:bi.backgroundCube.vertexShader,fragmentShader:bi.backgroundCube.fragmentShader,side:Bn,depthTest:!1,depthWrite:!1,fog:!1,allowOverride:!1})),f.geometry.deleteAttribute("normal"),f.geometry.deleteAttribute("uv"),f.onBeforeRender=function(C,D,O){this.matrixWorld.copyPosition(O.matrixWorld)},Object.defineProperty(f.material,"envMap",{get:function(){return this.uniforms.envMap.value}}),s.update(f)),Ss.copy(E.backgroundRotation),Ss.x*=-1,Ss.y*=-1,Ss.z*=-1,F.isCubeTexture&&F.isRenderTargetTexture===!1&&(Ss.y*=-1,Ss.z*=-1),f.material.uniforms.envMap.value=F,f.material.uniforms.flipEnvMap.value=F.isCubeTexture&&F.isRenderTargetTexture===!1?-1:1,f.material.uniforms.backgroundBlurriness.value=E.backgroundBlurriness,f.material.uniforms.backgroundIntensity.value=E.backgroundIntensity,f.material.uniforms.backgroundRotation.value.setFromMatrix4(Wx.makeRotationFromEuler(Ss)),f.material.toneMapped=vt.getTransfer(F.colorSpace)!==Pt,(u!==F||h!==F.version||p!==i.toneMapping)&&(f.material.needsUpdate=!0,u=F,h=F.version,p=i.toneMapping),f.layers.enableAll(),A.unshift(f,f.geometry,f.material,0,0,null)):F&&F.isTexture&&(c===void 0&&(c=new _n(new Oo(2,2),new us({name:"BackgroundMaterial",uniforms:Tr(bi.background.uniforms),vertexShader:bi.background.vertexShader,fragmentShader:bi.background.fragmentShader,side:cs,depthTest:!1,depthWrite:!1,fog:!1,allowOverride:!1})),c.geometry.deleteAttribute("normal"),Object.defineProperty(c.material,"map",{get:function(){return this.uniforms.t2D.value}}),s.update(c)),c.material.uniforms.t2D.value=F,c.material.uniforms.backgroundIntensity.value=E.backgroundIntensity,c.material.toneMapped=vt.getTransfer(F.colorSpace)!==Pt,F.matrixAutoUpdate===!0&&F.updateMatrix(),c.material.uniforms.uvTransform.value.copy(F.matrix),(u!==F||h!==F.version||p!==i.toneMapping)&&(c.material.needsUpdate=!0,u=F,h=F.version,p=i.toneMapping),c.layers.enableAll(),A.unshift(c,c.geometry,c.material,0,0,null))}function d(A,E){A.getRGB(eo,Kd(i)),n.buffers.color.setClear(eo.r,eo.g,eo.b,E,a)}function b(){f!==void 0&&(f.geometry.dispose(),f.material.dispose(),f=void 0),c!==void 0&&(c.geometry.dispose(),c.material.dispose(),c=void 0)}return{getClearColor:function(){return o},setClearColor:function(A,E=1){o.set(A),l=E,d(o,l)},getClearAlpha:function(){return l},setClearAlpha:function(A){l=A,d(o,l)},render:M,addToRenderList:m,dispose:b}}function qx(i,e){const t=i.getParameter(i.MAX_VERTEX_ATTRIBS),n={},s=h(null);let r=s,a=!1;function o(g,S,P,I,V){let k=!1;const X=u(I,P,S);r!==X&&(r=X,c(r.object)),k=p(g,I,P,V),k&&v(g,I,P,V),V!==null&&e.update(V,i.ELEMENT_ARRAY_BUFFER),(k||a)&&(a=!1,E(g,S,P,I),V!==null&&i.bindBuffer(i.ELEMENT_ARRAY_BUFFER,e.get(V).buffer))}function l(){return i.createVertexArray()}function c(g){return i.bindVertexArray(g)}function f(g){return i.deleteVertexArray(g)}function u(g,S,P){const I=P.wireframe===!0;let V=n[g.id];V===void 0&&(V={},n[g.id]=V);let k=V[S.id];k===void 0&&(k={},V[S.id]=k);let X=k[I];return X===void 0&&(X=h(l()),k[I]=X),X}function h(g){const S=[],P=[],I=[];for(let V=0;V<t;V++)S[V]=0,P[V]=0,I[V]=0;return{geometry:null,program:null,wireframe:!1,newAttributes:S,enabledAttributes:P,attributeDivisors:I,object:g,attributes:{},index:null}}function p(g,S,P,I){const V=r.attributes,k=S.attributes;let X=0;const $=P.getAttributes();for(const K in $)if($[K].location>=0){const oe=V[K];let ue=k[K];if(ue===void 0&&(K==="instanceMatrix"&&g.instanceMatrix&&(ue=g.instanceMatrix),K==="instanceColor"&&g.instanceColor&&(ue=g.instanceColor)),oe===void 0||oe.attribute!==ue||ue&&oe.data!==ue.data)return!0;X++}return r.attributesNum!==X||r.index!==I}function v(g,S,P,I){const V={},k=S.attributes;let X=0;const $=P.getAttributes();for(const K in $)if($[K].location>=0){let oe=k[K];oe===void 0&&(K==="instanceMatrix"&&g.instanceMatrix&&(oe=g.instanceMatrix),K==="instanceColor"&&g.instanceColor&&(oe=g.instanceColor));const ue={};ue.attribute=oe,oe&&oe.data&&(ue.data=oe.data),V[K]=ue,X++}r.attributes=V,r.attributesNum=X,r.index=I}function M(){const g=r.newAttributes;for(let S=0,P=g.length;S<P;S++)g[S]=0}function m(g){d(g,0)}function d(g,S){const P=r.newAttributes,I=r.enabledAttributes,V=r.attributeDivisors;P[g]=1,I[g]===0&&(i.enableVertexAttribArray(g),I[g]=1),V[g]!==S&&(i.vertexAttribDivisor(g,S),V[g]=S)}function b(){const g=r.newAttributes,S=r.enabledAttributes;for(let P=0,I=S.length;P<I;P++)S[P]!==g[P]&&(i.disableVertexAttribArray(P),S[P]=0)}function A(g,S,P,I,V,k,X){X===!0?i.vertexAttribIPointer(g,S,P,V,k):i.vertexAttribPointer(g,S,P,I,V,k)}function E(g,S,P,I){M();const V=I.attributes,k=P.getAttributes(),X=S.defaultAttributeValues;for(const $ in k){const K=k[$];if(K.location>=0){let re=V[$];if(re===void 0&&($==="instanceMatrix"&&g.instanceMatrix&&(re=g.instanceMatrix),$==="instanceColor"&&g.instanceColor&&(re=g.instanceColor)),re!==void 0){const oe=re.normalized,ue=re.itemSize,he=e.get(re);if(he===void 0)continue;const fe=he.buffer,$e=he.type,Ke=he.bytesPerElement,ee=$e===i.INT||$e===i.UNSIGNED_INT||re.gpuType===ou;if(re.isInterleavedBufferAttribute){const te=re.data,xe=te.stride,Ce=re.offset;if(te.isInstancedInterleavedBuffer){for(let Se=0;Se<K.locationSize;Se++)d(K.location+Se,te.meshPerAttribute);g.isInstancedMesh!==!0&&I._maxInstanceCount===void 0&&(I._maxInstanceCount=te.meshPerAttribute*te.count)}else for(let Se=0;Se<K.locationSize;Se++)m(K.location+Se);i.bindBuffer(i.ARRAY_BUFFER,fe);for(let Se=0;Se<K.locationSize;Se++)A(K.location+Se,ue/K.locationSize,$e,oe,xe*Ke,(Ce+ue/K.locationSize*Se)*Ke,ee)}else{if(re.isInstancedBufferAttribute){for(let te=0;te<K.locationSize;te++)d(K.location+te,re.meshPerAttribute);g.isInstancedMesh!==!0&&I._maxInstanceCount===void 0&&(I._maxInstanceCount=re.meshPerAttribute*re.count)}else for(let te=0;te<K.locationSize;te++)m(K.location+te);i.bindBuffer(i.ARRAY_BUFFER,fe);for(let te=0;te<K.locationSize;te++)A(K.location+te,ue/K.locationSize,$e,oe,ue*Ke,ue/K.locationSize*te*Ke,ee)}}else if(X!==void 0){const oe=X[$];if(oe!==void 0)switch(oe.length){case 2:i.vertexAttrib2fv(K.location,oe);break;case 3:i.vertexAttrib3fv(K.location,oe);break;case 4:i.vertexAttrib4fv(K.location,oe);break;default:i.vertexAttrib1fv(K.location,oe)}}}}b()}function F(){O();for(const g in n){const S=n[g];for(const P in S){const I=S[P];for(const V in I)f(I[V].object),delete I[V];delete S[P]}delete n[g]}}function C(g){if(n[g.id]===void 0)return;const S=n[g.id];for(const P in S){const I=S[P];for(const V in I)f(I[V].object),delete I[V];delete S[P]}delete n[g.id]}function D(g){for(const S in n){const P=n[S];if(P[g.id]===void 0)continue;const I=P[g.id];for(const V in I)f(I[V].object),delete I[V];delete P[g.id]}}function O(){T(),a=!0,r!==s&&(r=s,c(r.object))}function T(){s.geometry=null,s.program=null,s.wireframe=!1}return{setup:o,reset:O,resetDefaultState:T,dispose:F,releaseStatesOfGeometry:C,releaseStatesOfProgram:D,initAttributes:M,enableAttribute:m,disableUnusedAttributes:b}}function Yx(i,e,t){let n;function s(c){n=c}function r(c,f){i.drawArrays(n,c,f),t.update(f,n,1)}function a(c,f,u){u!==0&&(i.drawArraysInstanced(n,c,f,u),t.update(f,n,u))}function o(c,f,u){if(u===0)return;e.get("WEBGL_multi_draw").multiDrawArraysWEBGL(n,c,0,f,0,u);let p=0;for(let v=0;v<u;v++)p+=f[v];t.update(p,n,1)}function l(c,f,u,h){if(u===0)return;const p=e.get("WEBGL_multi_draw");if(p===null)for(let v=0;v<c.length;v++)a(c[v],f[v],h[v]);else{p.multiDrawArraysInstancedWEBGL(n,c,0,f,0,h,0,u);let v=0;for(let M=0;M<u;M++)v+=f[M]*h[M];t.update(v,n,1)}}this.setMode=s,this.render=r,this.renderInstances=a,this.renderMultiDraw=o,this.renderMultiDrawInstances=l}function $x(i,e,t,n){let s;function r(){if(s!==void 0)return s;if(e.has("EXT_texture_filter_anisotropic")===!0){const D=e.get("EXT_texture_filter_anisotropic");s=i.getParameter(D.MAX_TEXTURE_MAX_ANISOTROPY_EXT)}else s=0;return s}function a(D){return!(D!==mi&&n.convert(D)!==i.getParameter(i.IMPLEMENTATION_COLOR_READ_FORMAT))}function o(D){const O=D===ma&&(e.has("EXT_color_buffer_half_float")||e.has("EXT_color_buffer_float"));return!(D!==Ri&&n.convert(D)!==i.getParameter(i.IMPLEMENTATION_COLOR_READ_TYPE)&&D!==zi&&!O)}function l(D){if(D==="highp"){if(i.getShaderPrecisionFormat(i.VERTEX_SHADER,i.HIGH_FLOAT).precision>0&&i.getShaderPrecisionFormat(i.FRAGMENT_SHADER,i.HIGH_FLOAT).precision>0)return"highp";D="mediump"}return D==="mediump"&&i.getShaderPrecisionFormat(i.VERTEX_SHADER,i.MEDIUM_FLOAT).precision>0&&i.getShaderPrecisionFormat(i.FRAGMENT_SHADER,i.MEDIUM_FLOAT).precision>0?"mediump":"lowp"}let c=t.precision!==void 0?t.precision:"highp";const f=l(c);f!==c&&(console.warn("THREE.WebGLRenderer:",c,"not supported, using",f,"instead."),c=f);const u=t.logarithmicDepthBuffer===!0,h=t.reversedDepthBuffer===!0&&e.has("EXT_clip_control"),p=i.getParameter(i.MAX_TEXTURE_IMAGE_UNITS),v=i.getParameter(i.MAX_VERTEX_TEXTURE_IMAGE_UNITS),M=i.getParameter(i.MAX_TEXTURE_SIZE),m=i.getParameter(i.MAX_CUBE_MAP_TEXTURE_SIZE),d=i.getParameter(i.MAX_VERTEX_ATTRIBS),b=i.getParameter(i.MAX_VERTEX_UNIFORM_VECTORS),A=i.getParameter(i.MAX_VARYING_VECTORS),E=i.getParameter(i.MAX_FRAGMENT_UNIFORM_VECTORS),F=v>0,C=i.getParameter(i.MAX_SAMPLES);return{isWebGL2:!0,getMaxAnisotropy:r,getMaxPrecision:l,textureFormatReadable:a,textureTypeReadable:o,precision:c,logarithmicDepthBuffer:u,reversedDepthBuffer:h,maxTextures:p,maxVertexTextures:v,maxTextureSize:M,maxCubemapSize:m,maxAttributes:d,maxVertexUniforms:b,maxVaryings:A,maxFragmentUniforms:E,vertexTextures:F,maxSamples:C}}function jx(i){const e=this;let t=null,n=0,s=!1,r=!1;const a=new is,o=new st,l={value:null,needsUpdate:!1};this.uniform=l,this.numPlanes=0,this.numIntersection=0,this.init=function(u,h){const p=u.length!==0||h||n!==0||s;return s=h,n=u.length,p},this.beginShadows=function(){r=!0,f(null)},this.endShadows=function(){r=!1},this.setGlobalState=function(u,h){t=f(u,h,0)},this.setState=function(u,h,p){const v=u.clippingPlanes,M=u.clipIntersection,m=u.clipShadows,d=i.get(u);if(!s||v===null||v.length===0||r&&!m)r?f(null):c();else{const b=r?0:n,A=b*4;let E=d.clippingState||null;l.value=E,E=f(v,h,A,p);for(let F=0;F!==A;++F)E[F]=t[F];d.clippingState=E,this.numIntersection=M?this.numPlanes:0,this.numPlanes+=b}};function c(){l.value!==t&&(l.value=t,l.needsUpdate=n>0),e.numPlanes=n,e.numIntersection=0}function f(u,h,p,v){const M=u!==null?u.length:0;let m=null;if(M!==0){if(m=l.value,v!==!0||m===null){const d=p+M*4,b=h.matrixWorldInverse;o.getNormalMatrix(b),(m===null||m.length<d)&&(m=new Float32Array(d));for(let A=0,E=p;A!==M;++A,E+=4)a.copy(u[A]).applyMatrix4(b,o),a.normal.toArray(m,E),m[E+3]=a.constant}l.value=m,l.needsUpdate=!0}return e.numPlanes=M,e.numIntersection=0,m}}function Kx(i){let e=new WeakMap;function t(a,o){return o===ac?a.mapping=Er:o===oc&&(a.mapping=br),a}function n(a){if(a&&a.isTexture){const o=a.mapping;if(o===ac||o===oc)if(e.has(a)){const l=e.get(a).texture;return t(l,a.mapping)}else{const l=a.image;if(l&&l.height>0){const c=new q_(l.height);return c.fromEquirectangularTexture(i,a),e.set(a,c),a.addEventListener("dispose",s),t(c.texture,a.mapping)}else return null}}return a}function s(a){const o=a.target;o.removeEventListener("dispose",s);const l=e.get(o);l!==void 0&&(e.delete(o),l.dispose())}function r(){e=new WeakMap}return{get:n,dispose:r}}const fr=4,hf=[.125,.215,.35,.446,.526,.582],Rs=20,Ll=new sp,ff=new lt;let Ul=null,Il=0,Nl=0,Fl=!1;const ws=(1+Math.sqrt(5))/2,cr=1/ws,df=[new H(-ws,cr,0),new H(ws,cr,0),new H(-cr,0,ws),new H(cr,0,ws),new H(0,ws,-cr),new H(0,ws,cr),new H(-1,1,-1),new H(1,1,-1),new H(-1,1,1),new H(1,1,1)],Zx=new H;class pf{constructor(e){this._renderer=e,this._pingPongRenderTarget=null,this._lodMax=0,this._cubeSize=0,this._lodPlanes=[],this._sizeLods=[],this._sigmas=[],this._blurMaterial=null,this._cubemapMaterial=null,this._equirectMaterial=null,this._compileMaterial(this._blurMaterial)}fromScene(e,t=0,n=.1,s=100,r={}){const{size:a=256,position:o=Zx}=r;Ul=this._renderer.getRenderTarget(),Il=this._renderer.getActiveCubeFace(),Nl=this._renderer.getActiveMipmapLevel(),Fl=this._renderer.xr.enabled,this._renderer.xr.enabled=!1,this._setSize(a);const l=this._allocateTargets();return l.depthBuffer=!0,this._sceneToCubeUV(e,n,s,l,o),t>0&&this._blur(l,0,0,t),this._applyPMREM(l),this._cleanup(l),l}fromEquirectangular(e,t=null){return this._fromTexture(e,t)}fromCubemap(e,t=null){return this._fromTexture(e,t)}compileCubemapShader(){this._cubemapMaterial===null&&(this._cubemapMaterial=_f(),this._compileMaterial(this._cubemapMaterial))}compileEquirectangularShader(){this._equirectMaterial===null&&(this._equirectMaterial=gf(),this._compileMaterial(this._equirectMaterial))}dispose(){this._dispose(),this._cubemapMaterial!==null&&this._cubemapMaterial.dispose(),this._equirectMaterial!==null&&this._equirectMaterial.dispose()}_setSize(e){this._lodMax=Math.floor(Math.log2(e)),this._cubeSize=Math.pow(2,this._lodMax)}_dispose(){this._blurMaterial!==null&&this._blurMaterial.dispose(),this._pingPongRenderTarget!==null&&this._pingPongRenderTarget.dispose();for(let e=0;e<this._lodPlanes.length;e++)this._lodPlanes[e].dispose()}_cleanup(e){this._renderer.setRenderTarget(Ul,Il,Nl),this._renderer.xr.enabled=Fl,e.scissorTest=!1,to(e,0,0,e.width,e.height)}_fromTexture(e,t){e.mapping===Er||e.mapping===br?this._setSize(e.image.length===0?16:e.image[0].width||e.image[0].image.width):this._setSize(e.image.width/4),Ul=this._renderer.getRenderTarget(),Il=this._renderer.getActiveCubeFace(),Nl=this._renderer.getActiveMipmapLevel(),Fl=this._renderer.xr.enabled,this._renderer.xr.enabled=!1;const n=t||this._allocateTargets();return this._textureToCubeUV(e,n),this._applyPMREM(n),this._cleanup(n),n}_allocateTargets(){const e=3*Math.max(this._cubeSize,112),t=4*this._cubeSize,n={magFilter:wi,minFilter:wi,generateMipmaps:!1,type:ma,format:mi,colorSpace:wr,depthBuffer:!1},s=mf(e,t,n);if(this._pingPongRenderTarget===null||this._pingPongRenderTarget.width!==e||this._pingPongRenderTarget.height!==t){this._pingPongRenderTarget!==null&&this._dispose(),this._pingPongRenderTarget=mf(e,t,n);const{_lodMax:r}=this;({sizeLods:this._sizeLods,lodPlanes:this._lodPlanes,sigmas:this._sigmas}=Jx(r)),this._blurMaterial=Qx(r,e,t)}return s}_compileMaterial(e){const t=new _n(this._lodPlanes[0],e);this._renderer.compile(t,Ll)}_sceneToCubeUV(e,t,n,s,r){const l=new si(90,1,t,n),c=[1,-1,1,1,1,1],f=[1,1,1,-1,-1,-1],u=this._renderer,h=u.autoClear,p=u.toneMapping;u.getClearColor(ff),u.toneMapping=os,u.autoClear=!1,u.state.buffers.depth.getReversed()&&(u.setRenderTarget(s),u.clearDepth(),u.setRenderTarget(null));const M=new mu({name:"PMREM.Background",side:Bn,depthWrite:!1,depthTest:!1}),m=new _n(new Dr,M);let d=!1;const b=e.background;b?b.isColor&&(M.color.copy(b),e.background=null,d=!0):(M.color.copy(ff),d=!0);for(let A=0;A<6;A++){const E=A%3;E===0?(l.up.set(0,c[A],0),l.position.set(r.x,r.y,r.z),l.lookAt(r.x+f[A],r.y,r.z)):E===1?(l.up.set(0,0,c[A]),l.position.set(r.x,r.y,r.z),l.lookAt(r.x,r.y+f[A],r.z)):(l.up.set(0,c[A],0),l.position.set(r.x,r.y,r.z),l.lookAt(r.x,r.y,r.z+f[A]));const F=this._cubeSize;to(s,E*F,A>2?F:0,F,F),u.setRenderTarget(s),d&&u.render(m,l),u.render(e,l)}m.geometry.dispose(),m.material.dispose(),u.toneMapping=p,u.autoClear=h,e.background=b}_textureToCubeUV(e,t){const n=this._renderer,s=e.mapping===Er||e.mapping===br;s?(this._cubemapMaterial===null&&(this._cubemapMaterial=_f()),this._cubemapMaterial.uniforms.flipEnvMap.value=e.isRenderTargetTexture===!1?-1:1):this._equirectMaterial===null&&(this._equirectMaterial=gf());const r=s?this._cubemapMaterial:this._equirectMaterial,a=new _n(this._lodPlanes[0],r),o=r.uniforms;o.envMap.value=e;const l=this._cubeSize;to(t,0,0,3*l,2*l),n.setRenderTarget(t),n.render(a,Ll)}_applyPMREM(e){const t=this._renderer,n=t.autoClear;t.autoClear=!1;const s=this._lodPlanes.length;for(let r=1;r<s;r++){const a=Math.sqrt(this._sigmas[r]*this._sigmas[r]-this._sigmas[r-1]*this._sigmas[r-1]),o=df[(s-r-1)%df.length];this._blur(e,r-1,r,a,o)}t.autoClear=n}_blur(e,t,n,s,r){const a=this._pingPongRenderTarget;this._halfBlur(e,a,t,n,s,"latitudinal",r),this._halfBlur(a,e,n,n,s,"longitudinal",r)}_halfBlur(e,t,n,s,r,a,o){const l=this._renderer,c=this._blurMaterial;a!=="latitudinal"&&a!=="longitudinal"&&console.error("blur direction must be either latitudinal or longitudinal!");const f=3,u=new _n(this._lodPlanes[s],c),h=c.uniforms,p=this._sizeLods[n]-1,v=isFinite(r)?Math.PI/(2*p):2*Math.PI/(2*Rs-1),M=r/v,m=isFinite(r)?1+Math.floor(f*M):Rs;m>Rs&&console.warn(`sigmaRadians, ${r}, is too large and will clip, as it requested ${m} samples when the maximum is set to ${Rs}`);const d=[];let b=0;for(let D=0;D<Rs;++D){const O=D/M,T=Math.exp(-O*O/2);d.push(T),D===0?b+=T:D<m&&(b+=2*T)}for(let D=0;D<d.length;D++)d[D]=d[D]/b;h.envMap.value=e.texture,h.samples.value=m,h.weights.value=d,h.latitudinal.value=a==="latitudinal",o&&(h.poleAxis.value=o);const{_lodMax:A}=this;h.dTheta.value=v,h.mipInt.value=A-n;const E=this._sizeLods[s],F=3*E*(s>A-fr?s-A+fr:0),C=4*(this._cubeSize-E);to(t,F,C,3*E,2*E),l.setRenderTarget(t),l.render(u,Ll)}}function Jx(i){const e=[],t=[],n=[];let s=i;const r=i-fr+1+hf.length;for(let a=0;a<r;a++){const o=Math.pow(2,s);t.push(o);let l=1/o;a>i-fr?l=hf[a-i+fr-1]:a===0&&(l=0),n.push(l);const c=1/(o-2),f=-c,u=1+c,h=[f,f,u,f,u,u,f,f,u,u,f,u],p=6,v=6,M=3,m=2,d=1,b=new Float32Array(M*v*p),A=new Float32Array(m*v*p),E=new Float32Array(d*v*p);for(let C=0;C<p;C++){const D=C%3*2/3-1,O=C>2?0:-1,T=[D,O,0,D+2/3,O,0,D+2/3,O+1,0,D,O,0,D+2/3,O+1,0,D,O+1,0];b.set(T,M*v*C),A.set(h,m*v*C);const g=[C,C,C,C,C,C];E.set(g,d*v*C)}const F=new vn;F.setAttribute("position",new zn(b,M)),F.setAttribute("uv",new zn(A,m)),F.setAttribute("faceIndex",new zn(E,d)),e.push(F),s>fr&&s--}return{lodPlanes:e,sizeLods:t,sigmas:n}}function mf(i,e,t){const n=new Fs(i,e,t);return n.texture.mapping=Io,n.texture.name="PMREM.cubeUv",n.scissorTest=!0,n}function to(i,e,t,n,s){i.viewport.set(e,t,n,s),i.scissor.set(e,t,n,s)}function Qx(i,e,t){const n=new Float32Array(Rs),s=new H(0,1,0);return new us({name:"SphericalGaussianBlur",defines:{n:Rs,CUBEUV_TEXEL_WIDTH:1/e,CUBEUV_TEXEL_HEIGHT:1/t,CUBEUV_MAX_MIP:`${i}.0`},uniforms:{envMap:{value:null},samples:{value:1},weights:{value:n},latitudinal:{value:!1},dTheta:{value:0},mipInt:{value:0},poleAxis:{value:s}},vertexShader:_u(),fragmentShader:`

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
		`,blending:as,depthTest:!1,depthWrite:!1})}function gf(){return new us({name:"EquirectangularToCubeUV",uniforms:{envMap:{value:null}},vertexShader:_u(),fragmentShader:`

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
		`,blending:as,depthTest:!1,depthWrite:!1})}function _f(){return new us({name:"CubemapToCubeUV",uniforms:{envMap:{value:null},flipEnvMap:{value:-1}},vertexShader:_u(),fragmentShader:`

			precision mediump float;
			precision mediump int;

			uniform float flipEnvMap;

			varying vec3 vOutputDirection;

			uniform samplerCube envMap;

			void main() {

				gl_FragColor = textureCube( envMap, vec3( flipEnvMap * vOutputDirection.x, vOutputDirection.yz ) );

			}
		`,blending:as,depthTest:!1,depthWrite:!1})}function _u(){return`

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
	`}function eM(i){let e=new WeakMap,t=null;function n(o){if(o&&o.isTexture){const l=o.mapping,c=l===ac||l===oc,f=l===Er||l===br;if(c||f){let u=e.get(o);const h=u!==void 0?u.texture.pmremVersion:0;if(o.isRenderTargetTexture&&o.pmremVersion!==h)return t===null&&(t=new pf(i)),u=c?t.fromEquirectangular(o,u):t.fromCubemap(o,u),u.texture.pmremVersion=o.pmremVersion,e.set(o,u),u.texture;if(u!==void 0)return u.texture;{const p=o.image;return c&&p&&p.height>0||f&&p&&s(p)?(t===null&&(t=new pf(i)),u=c?t.fromEquirectangular(o):t.fromCubemap(o),u.texture.pmremVersion=o.pmremVersion,e.set(o,u),o.addEventListener("dispose",r),u.texture):null}}}return o}function s(o){let l=0;const c=6;for(let f=0;f<c;f++)o[f]!==void 0&&l++;return l===c}function r(o){const l=o.target;l.removeEventListener("dispose",r);const c=e.get(l);c!==void 0&&(e.delete(l),c.dispose())}function a(){e=new WeakMap,t!==null&&(t.dispose(),t=null)}return{get:n,dispose:a}}function tM(i){const e={};function t(n){if(e[n]!==void 0)return e[n];let s;switch(n){case"WEBGL_depth_texture":s=i.getExtension("WEBGL_depth_texture")||i.getExtension("MOZ_WEBGL_depth_texture")||i.getExtension("WEBKIT_WEBGL_depth_texture");break;case"EXT_texture_filter_anisotropic":s=i.getExtension("EXT_texture_filter_anisotropic")||i.getExtension("MOZ_EXT_texture_filter_anisotropic")||i.getExtension("WEBKIT_EXT_texture_filter_anisotropic");break;case"WEBGL_compressed_texture_s3tc":s=i.getExtension("WEBGL_compressed_texture_s3tc")||i.getExtension("MOZ_WEBGL_compressed_texture_s3tc")||i.getExtension("WEBKIT_WEBGL_compressed_texture_s3tc");break;case"WEBGL_compressed_texture_pvrtc":s=i.getExtension("WEBGL_compressed_texture_pvrtc")||i.getExtension("WEBKIT_WEBGL_compressed_texture_pvrtc");break;default:s=i.getExtension(n)}return e[n]=s,s}return{has:function(n){return t(n)!==null},init:function(){t("EXT_color_buffer_float"),t("WEBGL_clip_cull_distance"),t("OES_texture_float_linear"),t("EXT_color_buffer_half_float"),t("WEBGL_multisampled_render_to_texture"),t("WEBGL_render_shared_exponent")},get:function(n){const s=t(n);return s===null&&ha("THREE.WebGLRenderer: "+n+" extension not supported."),s}}}function nM(i,e,t,n){const s={},r=new WeakMap;function a(u){const h=u.target;h.index!==null&&e.remove(h.index);for(const v in h.attributes)e.remove(h.attributes[v]);h.removeEventListener("dispose",a),delete s[h.id];const p=r.get(h);p&&(e.remove(p),r.delete(h)),n.releaseStatesOfGeometry(h),h.isInstancedBufferGeometry===!0&&delete h._maxInstanceCount,t.memory.geometries--}function o(u,h){return s[h.id]===!0||(h.addEventListener("dispose",a),s[h.id]=!0,t.memory.geometries++),h}function l(u){const h=u.attributes;for(const p in h)e.update(h[p],i.ARRAY_BUFFER)}function c(u){const h=[],p=u.index,v=u.attributes.position;let M=0;if(p!==null){const b=p.array;M=p.version;for(let A=0,E=b.length;A<E;A+=3){const F=b[A+0],C=b[A+1],D=b[A+2];h.push(F,C,C,D,D,F)}}else if(v!==void 0){const b=v.array;M=v.version;for(let A=0,E=b.length/3-1;A<E;A+=3){const F=A+0,C=A+1,D=A+2;h.push(F,C,C,D,D,F)}}else return;const m=new(Xd(h)?jd:$d)(h,1);m.version=M;const d=r.get(u);d&&e.remove(d),r.set(u,m)}function f(u){const h=r.get(u);if(h){const p=u.index;p!==null&&h.version<p.version&&c(u)}else c(u);return r.get(u)}return{get:o,update:l,getWireframeAttribute:f}}function iM(i,e,t){let n;function s(h){n=h}let r,a;function o(h){r=h.type,a=h.bytesPerElement}function l(h,p){i.drawElements(n,p,r,h*a),t.update(p,n,1)}function c(h,p,v){v!==0&&(i.drawElementsInstanced(n,p,r,h*a,v),t.update(p,n,v))}function f(h,p,v){if(v===0)return;e.get("WEBGL_multi_draw").multiDrawElementsWEBGL(n,p,0,r,h,0,v);let m=0;for(let d=0;d<v;d++)m+=p[d];t.update(m,n,1)}function u(h,p,v,M){if(v===0)return;const m=e.get("WEBGL_multi_draw");if(m===null)for(let d=0;d<h.length;d++)c(h[d]/a,p[d],M[d]);else{m.multiDrawElementsInstancedWEBGL(n,p,0,r,h,0,M,0,v);let d=0;for(let b=0;b<v;b++)d+=p[b]*M[b];t.update(d,n,1)}}this.setMode=s,this.setIndex=o,this.render=l,this.renderInstances=c,this.renderMultiDraw=f,this.renderMultiDrawInstances=u}function sM(i){const e={geometries:0,textures:0},t={frame:0,calls:0,triangles:0,points:0,lines:0};function n(r,a,o){switch(t.calls++,a){case i.TRIANGLES:t.triangles+=o*(r/3);break;case i.LINES:t.lines+=o*(r/2);break;case i.LINE_STRIP:t.lines+=o*(r-1);break;case i.LINE_LOOP:t.lines+=o*r;break;case i.POINTS:t.points+=o*r;break;default:console.error("THREE.WebGLInfo: Unknown draw mode:",a);break}}function s(){t.calls=0,t.triangles=0,t.points=0,t.lines=0}return{memory:e,render:t,programs:null,autoReset:!0,reset:s,update:n}}function rM(i,e,t){const n=new WeakMap,s=new $t;function r(a,o,l){const c=a.morphTargetInfluences,f=o.morphAttributes.position||o.morphAttributes.normal||o.morphAttributes.color,u=f!==void 0?f.length:0;let h=n.get(o);if(h===void 0||h.count!==u){let g=function(){O.dispose(),n.delete(o),o.removeEventListener("dispose",g)};var p=g;h!==void 0&&h.texture.dispose();const v=o.morphAttributes.position!==void 0,M=o.morphAttributes.normal!==void 0,m=o.morphAttributes.color!==void 0,d=o.morphAttributes.position||[],b=o.morphAttributes.normal||[],A=o.morphAttributes.color||[];let E=0;v===!0&&(E=1),M===!0&&(E=2),m===!0&&(E=3);let F=o.attributes.position.count*E,C=1;F>e.maxTextureSize&&(C=Math.ceil(F/e.maxTextureSize),F=e.maxTextureSize);const D=new Float32Array(F*C*4*u),O=new qd(D,F,C,u);O.type=zi,O.needsUpdate=!0;const T=E*4;for(let S=0;S<u;S++){const P=d[S],I=b[S],V=A[S],k=F*C*4*S;for(let X=0;X<P.count;X++){const $=X*T;v===!0&&(s.fromBufferAttribute(P,X),D[k+$+0]=s.x,D[k+$+1]=s.y,D[k+$+2]=s.z,D[k+$+3]=0),M===!0&&(s.fromBufferAttribute(I,X),D[k+$+4]=s.x,D[k+$+5]=s.y,D[k+$+6]=s.z,D[k+$+7]=0),m===!0&&(s.fromBufferAttribute(V,X),D[k+$+8]=s.x,D[k+$+9]=s.y,D[k+$+10]=s.z,D[k+$+11]=V.itemSize===4?s.w:1)}}h={count:u,texture:O,size:new nt(F,C)},n.set(o,h),o.addEventListener("dispose",g)}if(a.isInstancedMesh===!0&&a.morphTexture!==null)l.getUniforms().setValue(i,"morphTexture",a.morphTexture,t);else{let v=0;for(let m=0;m<c.length;m++)v+=c[m];const M=o.morphTargetsRelative?1:1-v;l.getUniforms().setValue(i,"morphTargetBaseInfluence",M),l.getUniforms().setValue(i,"morphTargetInfluences",c)}l.getUniforms().setValue(i,"morphTargetsTexture",h.texture,t),l.getUniforms().setValue(i,"morphTargetsTextureSize",h.size)}return{update:r}}function aM(i,e,t,n){let s=new WeakMap;function r(l){const c=n.render.frame,f=l.geometry,u=e.get(l,f);if(s.get(u)!==c&&(e.update(u),s.set(u,c)),l.isInstancedMesh&&(l.hasEventListener("dispose",o)===!1&&l.addEventListener("dispose",o),s.get(l)!==c&&(t.update(l.instanceMatrix,i.ARRAY_BUFFER),l.instanceColor!==null&&t.update(l.instanceColor,i.ARRAY_BUFFER),s.set(l,c))),l.isSkinnedMesh){const h=l.skeleton;s.get(h)!==c&&(h.update(),s.set(h,c))}return u}function a(){s=new WeakMap}function o(l){const c=l.target;c.removeEventListener("dispose",o),t.remove(c.instanceMatrix),c.instanceColor!==null&&t.remove(c.instanceColor)}return{update:r,dispose:a}}const ap=new kn,vf=new ep(1,1),op=new qd,lp=new C_,cp=new Jd,xf=[],Mf=[],Sf=new Float32Array(16),yf=new Float32Array(9),Ef=new Float32Array(4);function Lr(i,e,t){const n=i[0];if(n<=0||n>0)return i;const s=e*t;let r=xf[s];if(r===void 0&&(r=new Float32Array(s),xf[s]=r),e!==0){n.toArray(r,0);for(let a=1,o=0;a!==e;++a)o+=t,i[a].toArray(r,o)}return r}function sn(i,e){if(i.length!==e.length)return!1;for(let t=0,n=i.length;t<n;t++)if(i[t]!==e[t])return!1;return!0}function rn(i,e){for(let t=0,n=e.length;t<n;t++)i[t]=e[t]}function Bo(i,e){let t=Mf[e];t===void 0&&(t=new Int32Array(e),Mf[e]=t);for(let n=0;n!==e;++n)t[n]=i.allocateTextureUnit();return t}function oM(i,e){const t=this.cache;t[0]!==e&&(i.uniform1f(this.addr,e),t[0]=e)}function lM(i,e){const t=this.cache;if(e.x!==void 0)(t[0]!==e.x||t[1]!==e.y)&&(i.uniform2f(this.addr,e.x,e.y),t[0]=e.x,t[1]=e.y);else{if(sn(t,e))return;i.uniform2fv(this.addr,e),rn(t,e)}}function cM(i,e){const t=this.cache;if(e.x!==void 0)(t[0]!==e.x||t[1]!==e.y||t[2]!==e.z)&&(i.uniform3f(this.addr,e.x,e.y,e.z),t[0]=e.x,t[1]=e.y,t[2]=e.z);else if(e.r!==void 0)(t[0]!==e.r||t[1]!==e.g||t[2]!==e.b)&&(i.uniform3f(this.addr,e.r,e.g,e.b),t[0]=e.r,t[1]=e.g,t[2]=e.b);else{if(sn(t,e))return;i.uniform3fv(this.addr,e),rn(t,e)}}function uM(i,e){const t=this.cache;if(e.x!==void 0)(t[0]!==e.x||t[1]!==e.y||t[2]!==e.z||t[3]!==e.w)&&(i.uniform4f(this.addr,e.x,e.y,e.z,e.w),t[0]=e.x,t[1]=e.y,t[2]=e.z,t[3]=e.w);else{if(sn(t,e))return;i.uniform4fv(this.addr,e),rn(t,e)}}function hM(i,e){const t=this.cache,n=e.elements;if(n===void 0){if(sn(t,e))return;i.uniformMatrix2fv(this.addr,!1,e),rn(t,e)}else{if(sn(t,n))return;Ef.set(n),i.uniformMatrix2fv(this.addr,!1,Ef),rn(t,n)}}function fM(i,e){const t=this.cache,n=e.elements;if(n===void 0){if(sn(t,e))return;i.uniformMatrix3fv(this.addr,!1,e),rn(t,e)}else{if(sn(t,n))return;yf.set(n),i.uniformMatrix3fv(this.addr,!1,yf),rn(t,n)}}function dM(i,e){const t=this.cache,n=e.elements;if(n===void 0){if(sn(t,e))return;i.uniformMatrix4fv(this.addr,!1,e),rn(t,e)}else{if(sn(t,n))return;Sf.set(n),i.uniformMatrix4fv(this.addr,!1,Sf),rn(t,n)}}function pM(i,e){const t=this.cache;t[0]!==e&&(i.uniform1i(this.addr,e),t[0]=e)}function mM(i,e){const t=this.cache;if(e.x!==void 0)(t[0]!==e.x||t[1]!==e.y)&&(i.uniform2i(this.addr,e.x,e.y),t[0]=e.x,t[1]=e.y);else{if(sn(t,e))return;i.uniform2iv(this.addr,e),rn(t,e)}}function gM(i,e){const t=this.cache;if(e.x!==void 0)(t[0]!==e.x||t[1]!==e.y||t[2]!==e.z)&&(i.uniform3i(this.addr,e.x,e.y,e.z),t[0]=e.x,t[1]=e.y,t[2]=e.z);else{if(sn(t,e))return;i.uniform3iv(this.addr,e),rn(t,e)}}function _M(i,e){const t=this.cache;if(e.x!==void 0)(t[0]!==e.x||t[1]!==e.y||t[2]!==e.z||t[3]!==e.w)&&(i.uniform4i(this.addr,e.x,e.y,e.z,e.w),t[0]=e.x,t[1]=e.y,t[2]=e.z,t[3]=e.w);else{if(sn(t,e))return;i.uniform4iv(this.addr,e),rn(t,e)}}function vM(i,e){const t=this.cache;t[0]!==e&&(i.uniform1ui(this.addr,e),t[0]=e)}function xM(i,e){const t=this.cache;if(e.x!==void 0)(t[0]!==e.x||t[1]!==e.y)&&(i.uniform2ui(this.addr,e.x,e.y),t[0]=e.x,t[1]=e.y);else{if(sn(t,e))return;i.uniform2uiv(this.addr,e),rn(t,e)}}function MM(i,e){const t=this.cache;if(e.x!==void 0)(t[0]!==e.x||t[1]!==e.y||t[2]!==e.z)&&(i.uniform3ui(this.addr,e.x,e.y,e.z),t[0]=e.x,t[1]=e.y,t[2]=e.z);else{if(sn(t,e))return;i.uniform3uiv(this.addr,e),rn(t,e)}}function SM(i,e){const t=this.cache;if(e.x!==void 0)(t[0]!==e.x||t[1]!==e.y||t[2]!==e.z||t[3]!==e.w)&&(i.uniform4ui(this.addr,e.x,e.y,e.z,e.w),t[0]=e.x,t[1]=e.y,t[2]=e.z,t[3]=e.w);else{if(sn(t,e))return;i.uniform4uiv(this.addr,e),rn(t,e)}}function yM(i,e,t){const n=this.cache,s=t.allocateTextureUnit();n[0]!==s&&(i.uniform1i(this.addr,s),n[0]=s);let r;this.type===i.SAMPLER_2D_SHADOW?(vf.compareFunction=Wd,r=vf):r=ap,t.setTexture2D(e||r,s)}function EM(i,e,t){const n=this.cache,s=t.allocateTextureUnit();n[0]!==s&&(i.uniform1i(this.addr,s),n[0]=s),t.setTexture3D(e||lp,s)}function bM(i,e,t){const n=this.cache,s=t.allocateTextureUnit();n[0]!==s&&(i.uniform1i(this.addr,s),n[0]=s),t.setTextureCube(e||cp,s)}function wM(i,e,t){const n=this.cache,s=t.allocateTextureUnit();n[0]!==s&&(i.uniform1i(this.addr,s),n[0]=s),t.setTexture2DArray(e||op,s)}function TM(i){switch(i){case 5126:return oM;case 35664:return lM;case 35665:return cM;case 35666:return uM;case 35674:return hM;case 35675:return fM;case 35676:return dM;case 5124:case 35670:return pM;case 35667:case 35671:return mM;case 35668:case 35672:return gM;case 35669:case 35673:return _M;case 5125:return vM;case 36294:return xM;case 36295:return MM;case 36296:return SM;case 35678:case 36198:case 36298:case 36306:case 35682:return yM;case 35679:case 36299:case 36307:return EM;case 35680:case 36300:case 36308:case 36293:return bM;case 36289:case 36303:case 36311:case 36292:return wM}}function AM(i,e){i.uniform1fv(this.addr,e)}function RM(i,e){const t=Lr(e,this.size,2);i.uniform2fv(this.addr,t)}function CM(i,e){const t=Lr(e,this.size,3);i.uniform3fv(this.addr,t)}function PM(i,e){const t=Lr(e,this.size,4);i.uniform4fv(this.addr,t)}function DM(i,e){const t=Lr(e,this.size,4);i.uniformMatrix2fv(this.addr,!1,t)}function LM(i,e){const t=Lr(e,this.size,9);i.uniformMatrix3fv(this.addr,!1,t)}function UM(i,e){const t=Lr(e,this.size,16);i.uniformMatrix4fv(this.addr,!1,t)}function IM(i,e){i.uniform1iv(this.addr,e)}function NM(i,e){i.uniform2iv(this.addr,e)}function FM(i,e){i.uniform3iv(this.addr,e)}function OM(i,e){i.uniform4iv(this.addr,e)}function BM(i,e){i.uniform1uiv(this.addr,e)}function kM(i,e){i.uniform2uiv(this.addr,e)}function zM(i,e){i.uniform3uiv(this.addr,e)}function HM(i,e){i.uniform4uiv(this.addr,e)}function VM(i,e,t){const n=this.cache,s=e.length,r=Bo(t,s);sn(n,r)||(i.uniform1iv(this.addr,r),rn(n,r));for(let a=0;a!==s;++a)t.setTexture2D(e[a]||ap,r[a])}function GM(i,e,t){const n=this.cache,s=e.length,r=Bo(t,s);sn(n,r)||(i.uniform1iv(this.addr,r),rn(n,r));for(let a=0;a!==s;++a)t.setTexture3D(e[a]||lp,r[a])}function WM(i,e,t){const n=this.cache,s=e.length,r=Bo(t,s);sn(n,r)||(i.uniform1iv(this.addr,r),rn(n,r));for(let a=0;a!==s;++a)t.setTextureCube(e[a]||cp,r[a])}function XM(i,e,t){const n=this.cache,s=e.length,r=Bo(t,s);sn(n,r)||(i.uniform1iv(this.addr,r),rn(n,r));for(let a=0;a!==s;++a)t.setTexture2DArray(e[a]||op,r[a])}function qM(i){switch(i){case 5126:return AM;case 35664:return RM;case 35665:return CM;case 35666:return PM;case 35674:return DM;case 35675:return LM;case 35676:return UM;case 5124:case 35670:return IM;case 35667:case 35671:return NM;case 35668:case 35672:return FM;case 35669:case 35673:return OM;case 5125:return BM;case 36294:return kM;case 36295:return zM;case 36296:return HM;case 35678:case 36198:case 36298:case 36306:case 35682:return VM;case 35679:case 36299:case 36307:return GM;case 35680:case 36300:case 36308:case 36293:return WM;case 36289:case 36303:case 36311:case 36292:return XM}}class YM{constructor(e,t,n){this.id=e,this.addr=n,this.cache=[],this.type=t.type,this.setValue=TM(t.type)}}class $M{constructor(e,t,n){this.id=e,this.addr=n,this.cache=[],this.type=t.type,this.size=t.size,this.setValue=qM(t.type)}}class jM{constructor(e){this.id=e,this.seq=[],this.map={}}setValue(e,t,n){const s=this.seq;for(let r=0,a=s.length;r!==a;++r){const o=s[r];o.setValue(e,t[o.id],n)}}}const Ol=/(\w+)(\])?(\[|\.)?/g;function bf(i,e){i.seq.push(e),i.map[e.id]=e}function KM(i,e,t){const n=i.name,s=n.length;for(Ol.lastIndex=0;;){const r=Ol.exec(n),a=Ol.lastIndex;let o=r[1];const l=r[2]==="]",c=r[3];if(l&&(o=o|0),c===void 0||c==="["&&a+2===s){bf(t,c===void 0?new YM(o,i,e):new $M(o,i,e));break}else{let u=t.map[o];u===void 0&&(u=new jM(o),bf(t,u)),t=u}}}class fo{constructor(e,t){this.seq=[],this.map={};const n=e.getProgramParameter(t,e.ACTIVE_UNIFORMS);for(let s=0;s<n;++s){const r=e.getActiveUniform(t,s),a=e.getUniformLocation(t,r.name);KM(r,a,this)}}setValue(e,t,n,s){const r=this.map[t];r!==void 0&&r.setValue(e,n,s)}setOptional(e,t,n){const s=t[n];s!==void 0&&this.setValue(e,n,s)}static upload(e,t,n,s){for(let r=0,a=t.length;r!==a;++r){const o=t[r],l=n[o.id];l.needsUpdate!==!1&&o.setValue(e,l.value,s)}}static seqWithValue(e,t){const n=[];for(let s=0,r=e.length;s!==r;++s){const a=e[s];a.id in t&&n.push(a)}return n}}function wf(i,e,t){const n=i.createShader(e);return i.shaderSource(n,t),i.compileShader(n),n}const ZM=37297;let JM=0;function QM(i,e){const t=i.split(`
`),n=[],s=Math.max(e-6,0),r=Math.min(e+6,t.length);for(let a=s;a<r;a++){const o=a+1;n.push(`${o===e?">":" "} ${o}: ${t[a]}`)}return n.join(`
`)}const Tf=new st;function eS(i){vt._getMatrix(Tf,vt.workingColorSpace,i);const e=`mat3( ${Tf.elements.map(t=>t.toFixed(4))} )`;switch(vt.getTransfer(i)){case Mo:return[e,"LinearTransferOETF"];case Pt:return[e,"sRGBTransferOETF"];default:return console.warn("THREE.WebGLProgram: Unsupported color space: ",i),[e,"LinearTransferOETF"]}}function Af(i,e,t){const n=i.getShaderParameter(e,i.COMPILE_STATUS),r=(i.getShaderInfoLog(e)||"").trim();if(n&&r==="")return"";const a=/ERROR: 0:(\d+)/.exec(r);if(a){const o=parseInt(a[1]);return t.toUpperCase()+`

`+r+`

`+QM(i.getShaderSource(e),o)}else return r}function tS(i,e){const t=eS(e);return[`vec4 ${i}( vec4 value ) {`,`	return ${t[1]}( vec4( value.rgb * ${t[0]}, value.a ) );`,"}"].join(`
`)}function nS(i,e){let t;switch(e){case n_:t="Linear";break;case i_:t="Reinhard";break;case s_:t="Cineon";break;case r_:t="ACESFilmic";break;case o_:t="AgX";break;case l_:t="Neutral";break;case a_:t="Custom";break;default:console.warn("THREE.WebGLProgram: Unsupported toneMapping:",e),t="Linear"}return"vec3 "+i+"( vec3 color ) { return "+t+"ToneMapping( color ); }"}const no=new H;function iS(){vt.getLuminanceCoefficients(no);const i=no.x.toFixed(4),e=no.y.toFixed(4),t=no.z.toFixed(4);return["float luminance( const in vec3 rgb ) {",`	const vec3 weights = vec3( ${i}, ${e}, ${t} );`,"	return dot( weights, rgb );","}"].join(`
`)}function sS(i){return[i.extensionClipCullDistance?"#extension GL_ANGLE_clip_cull_distance : require":"",i.extensionMultiDraw?"#extension GL_ANGLE_multi_draw : require":""].filter(ea).join(`
`)}function rS(i){const e=[];for(const t in i){const n=i[t];n!==!1&&e.push("#define "+t+" "+n)}return e.join(`
`)}function aS(i,e){const t={},n=i.getProgramParameter(e,i.ACTIVE_ATTRIBUTES);for(let s=0;s<n;s++){const r=i.getActiveAttrib(e,s),a=r.name;let o=1;r.type===i.FLOAT_MAT2&&(o=2),r.type===i.FLOAT_MAT3&&(o=3),r.type===i.FLOAT_MAT4&&(o=4),t[a]={type:r.type,location:i.getAttribLocation(e,a),locationSize:o}}return t}function ea(i){return i!==""}function Rf(i,e){const t=e.numSpotLightShadows+e.numSpotLightMaps-e.numSpotLightShadowsWithMaps;return i.replace(/NUM_DIR_LIGHTS/g,e.numDirLights).replace(/NUM_SPOT_LIGHTS/g,e.numSpotLights).replace(/NUM_SPOT_LIGHT_MAPS/g,e.numSpotLightMaps).replace(/NUM_SPOT_LIGHT_COORDS/g,t).replace(/NUM_RECT_AREA_LIGHTS/g,e.numRectAreaLights).replace(/NUM_POINT_LIGHTS/g,e.numPointLights).replace(/NUM_HEMI_LIGHTS/g,e.numHemiLights).replace(/NUM_DIR_LIGHT_SHADOWS/g,e.numDirLightShadows).replace(/NUM_SPOT_LIGHT_SHADOWS_WITH_MAPS/g,e.numSpotLightShadowsWithMaps).replace(/NUM_SPOT_LIGHT_SHADOWS/g,e.numSpotLightShadows).replace(/NUM_POINT_LIGHT_SHADOWS/g,e.numPointLightShadows)}function Cf(i,e){return i.replace(/NUM_CLIPPING_PLANES/g,e.numClippingPlanes).replace(/UNION_CLIPPING_PLANES/g,e.numClippingPlanes-e.numClipIntersection)}const oS=/^[ \t]*#include +<([\w\d./]+)>/gm;function Hc(i){return i.replace(oS,cS)}const lS=new Map;function cS(i,e){let t=at[e];if(t===void 0){const n=lS.get(e);if(n!==void 0)t=at[n],console.warn('THREE.WebGLRenderer: Shader chunk "%s" has been deprecated. Use "%s" instead.',e,n);else throw new Error("Can not resolve #include <"+e+">")}return Hc(t)}const uS=/#pragma unroll_loop_start\s+for\s*\(\s*int\s+i\s*=\s*(\d+)\s*;\s*i\s*<\s*(\d+)\s*;\s*i\s*\+\+\s*\)\s*{([\s\S]+?)}\s+#pragma unroll_loop_end/g;function Pf(i){return i.replace(uS,hS)}function hS(i,e,t,n){let s="";for(let r=parseInt(e);r<parseInt(t);r++)s+=n.replace(/\[\s*i\s*\]/g,"[ "+r+" ]").replace(/UNROLLED_LOOP_INDEX/g,r);return s}function Df(i){let e=`precision ${i.precision} float;
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
#define LOW_PRECISION`),e}function fS(i){let e="SHADOWMAP_TYPE_BASIC";return i.shadowMapType===Ud?e="SHADOWMAP_TYPE_PCF":i.shadowMapType===Ng?e="SHADOWMAP_TYPE_PCF_SOFT":i.shadowMapType===Bi&&(e="SHADOWMAP_TYPE_VSM"),e}function dS(i){let e="ENVMAP_TYPE_CUBE";if(i.envMap)switch(i.envMapMode){case Er:case br:e="ENVMAP_TYPE_CUBE";break;case Io:e="ENVMAP_TYPE_CUBE_UV";break}return e}function pS(i){let e="ENVMAP_MODE_REFLECTION";if(i.envMap)switch(i.envMapMode){case br:e="ENVMAP_MODE_REFRACTION";break}return e}function mS(i){let e="ENVMAP_BLENDING_NONE";if(i.envMap)switch(i.combine){case au:e="ENVMAP_BLENDING_MULTIPLY";break;case e_:e="ENVMAP_BLENDING_MIX";break;case t_:e="ENVMAP_BLENDING_ADD";break}return e}function gS(i){const e=i.envMapCubeUVHeight;if(e===null)return null;const t=Math.log2(e)-2,n=1/e;return{texelWidth:1/(3*Math.max(Math.pow(2,t),112)),texelHeight:n,maxMip:t}}function _S(i,e,t,n){const s=i.getContext(),r=t.defines;let a=t.vertexShader,o=t.fragmentShader;const l=fS(t),c=dS(t),f=pS(t),u=mS(t),h=gS(t),p=sS(t),v=rS(r),M=s.createProgram();let m,d,b=t.glslVersion?"#version "+t.glslVersion+`
`:"";t.isRawShaderMaterial?(m=["#define SHADER_TYPE "+t.shaderType,"#define SHADER_NAME "+t.shaderName,v].filter(ea).join(`
`),m.length>0&&(m+=`
`),d=["#define SHADER_TYPE "+t.shaderType,"#define SHADER_NAME "+t.shaderName,v].filter(ea).join(`
`),d.length>0&&(d+=`
`)):(m=[Df(t),"#define SHADER_TYPE "+t.shaderType,"#define SHADER_NAME "+t.shaderName,v,t.extensionClipCullDistance?"#define USE_CLIP_DISTANCE":"",t.batching?"#define USE_BATCHING":"",t.batchingColor?"#define USE_BATCHING_COLOR":"",t.instancing?"#define USE_INSTANCING":"",t.instancingColor?"#define USE_INSTANCING_COLOR":"",t.instancingMorph?"#define USE_INSTANCING_MORPH":"",t.useFog&&t.fog?"#define USE_FOG":"",t.useFog&&t.fogExp2?"#define FOG_EXP2":"",t.map?"#define USE_MAP":"",t.envMap?"#define USE_ENVMAP":"",t.envMap?"#define "+f:"",t.lightMap?"#define USE_LIGHTMAP":"",t.aoMap?"#define USE_AOMAP":"",t.bumpMap?"#define USE_BUMPMAP":"",t.normalMap?"#define USE_NORMALMAP":"",t.normalMapObjectSpace?"#define USE_NORMALMAP_OBJECTSPACE":"",t.normalMapTangentSpace?"#define USE_NORMALMAP_TANGENTSPACE":"",t.displacementMap?"#define USE_DISPLACEMENTMAP":"",t.emissiveMap?"#define USE_EMISSIVEMAP":"",t.anisotropy?"#define USE_ANISOTROPY":"",t.anisotropyMap?"#define USE_ANISOTROPYMAP":"",t.clearcoatMap?"#define USE_CLEARCOATMAP":"",t.clearcoatRoughnessMap?"#define USE_CLEARCOAT_ROUGHNESSMAP":"",t.clearcoatNormalMap?"#define USE_CLEARCOAT_NORMALMAP":"",t.iridescenceMap?"#define USE_IRIDESCENCEMAP":"",t.iridescenceThicknessMap?"#define USE_IRIDESCENCE_THICKNESSMAP":"",t.specularMap?"#define USE_SPECULARMAP":"",t.specularColorMap?"#define USE_SPECULAR_COLORMAP":"",t.specularIntensityMap?"#define USE_SPECULAR_INTENSITYMAP":"",t.roughnessMap?"#define USE_ROUGHNESSMAP":"",t.metalnessMap?"#define USE_METALNESSMAP":"",t.alphaMap?"#define USE_ALPHAMAP":"",t.alphaHash?"#define USE_ALPHAHASH":"",t.transmission?"#define USE_TRANSMISSION":"",t.transmissionMap?"#define USE_TRANSMISSIONMAP":"",t.thicknessMap?"#define USE_THICKNESSMAP":"",t.sheenColorMap?"#define USE_SHEEN_COLORMAP":"",t.sheenRoughnessMap?"#define USE_SHEEN_ROUGHNESSMAP":"",t.mapUv?"#define MAP_UV "+t.mapUv:"",t.alphaMapUv?"#define ALPHAMAP_UV "+t.alphaMapUv:"",t.lightMapUv?"#define LIGHTMAP_UV "+t.lightMapUv:"",t.aoMapUv?"#define AOMAP_UV "+t.aoMapUv:"",t.emissiveMapUv?"#define EMISSIVEMAP_UV "+t.emissiveMapUv:"",t.bumpMapUv?"#define BUMPMAP_UV "+t.bumpMapUv:"",t.normalMapUv?"#define NORMALMAP_UV "+t.normalMapUv:"",t.displacementMapUv?"#define DISPLACEMENTMAP_UV "+t.displacementMapUv:"",t.metalnessMapUv?"#define METALNESSMAP_UV "+t.metalnessMapUv:"",t.roughnessMapUv?"#define ROUGHNESSMAP_UV "+t.roughnessMapUv:"",t.anisotropyMapUv?"#define ANISOTROPYMAP_UV "+t.anisotropyMapUv:"",t.clearcoatMapUv?"#define CLEARCOATMAP_UV "+t.clearcoatMapUv:"",t.clearcoatNormalMapUv?"#define CLEARCOAT_NORMALMAP_UV "+t.clearcoatNormalMapUv:"",t.clearcoatRoughnessMapUv?"#define CLEARCOAT_ROUGHNESSMAP_UV "+t.clearcoatRoughnessMapUv:"",t.iridescenceMapUv?"#define IRIDESCENCEMAP_UV "+t.iridescenceMapUv:"",t.iridescenceThicknessMapUv?"#define IRIDESCENCE_THICKNESSMAP_UV "+t.iridescenceThicknessMapUv:"",t.sheenColorMapUv?"#define SHEEN_COLORMAP_UV "+t.sheenColorMapUv:"",t.sheenRoughnessMapUv?"#define SHEEN_ROUGHNESSMAP_UV "+t.sheenRoughnessMapUv:"",t.specularMapUv?"#define SPECULARMAP_UV "+t.specularMapUv:"",t.specularColorMapUv?"#define SPECULAR_COLORMAP_UV "+t.specularColorMapUv:"",t.specularIntensityMapUv?"#define SPECULAR_INTENSITYMAP_UV "+t.specularIntensityMapUv:"",t.transmissionMapUv?"#define TRANSMISSIONMAP_UV "+t.transmissionMapUv:"",t.thicknessMapUv?"#define THICKNESSMAP_UV "+t.thicknessMapUv:"",t.vertexTangents&&t.flatShading===!1?"#define USE_TANGENT":"",t.vertexColors?"#define USE_COLOR":"",t.vertexAlphas?"#define USE_COLOR_ALPHA":"",t.vertexUv1s?"#define USE_UV1":"",t.vertexUv2s?"#define USE_UV2":"",t.vertexUv3s?"#define USE_UV3":"",t.pointsUvs?"#define USE_POINTS_UV":"",t.flatShading?"#define FLAT_SHADED":"",t.skinning?"#define USE_SKINNING":"",t.morphTargets?"#define USE_MORPHTARGETS":"",t.morphNormals&&t.flatShading===!1?"#define USE_MORPHNORMALS":"",t.morphColors?"#define USE_MORPHCOLORS":"",t.morphTargetsCount>0?"#define MORPHTARGETS_TEXTURE_STRIDE "+t.morphTextureStride:"",t.morphTargetsCount>0?"#define MORPHTARGETS_COUNT "+t.morphTargetsCount:"",t.doubleSided?"#define DOUBLE_SIDED":"",t.flipSided?"#define FLIP_SIDED":"",t.shadowMapEnabled?"#define USE_SHADOWMAP":"",t.shadowMapEnabled?"#define "+l:"",t.sizeAttenuation?"#define USE_SIZEATTENUATION":"",t.numLightProbes>0?"#define USE_LIGHT_PROBES":"",t.logarithmicDepthBuffer?"#define USE_LOGARITHMIC_DEPTH_BUFFER":"",t.reversedDepthBuffer?"#define USE_REVERSED_DEPTH_BUFFER":"","uniform mat4 modelMatrix;","uniform mat4 modelViewMatrix;","uniform mat4 projectionMatrix;","uniform mat4 viewMatrix;","uniform mat3 normalMatrix;","uniform vec3 cameraPosition;","uniform bool isOrthographic;","#ifdef USE_INSTANCING","	attribute mat4 instanceMatrix;","#endif","#ifdef USE_INSTANCING_COLOR","	attribute vec3 instanceColor;","#endif","#ifdef USE_INSTANCING_MORPH","	uniform sampler2D morphTexture;","#endif","attribute vec3 position;","attribute vec3 normal;","attribute vec2 uv;","#ifdef USE_UV1","	attribute vec2 uv1;","#endif","#ifdef USE_UV2","	attribute vec2 uv2;","#endif","#ifdef USE_UV3","	attribute vec2 uv3;","#endif","#ifdef USE_TANGENT","	attribute vec4 tangent;","#endif","#if defined( USE_COLOR_ALPHA )","	attribute vec4 color;","#elif defined( USE_COLOR )","	attribute vec3 color;","#endif","#ifdef USE_SKINNING","	attribute vec4 skinIndex;","	attribute vec4 skinWeight;","#endif",`
`].filter(ea).join(`
`),d=[Df(t),"#define SHADER_TYPE "+t.shaderType,"#define SHADER_NAME "+t.shaderName,v,t.useFog&&t.fog?"#define USE_FOG":"",t.useFog&&t.fogExp2?"#define FOG_EXP2":"",t.alphaToCoverage?"#define ALPHA_TO_COVERAGE":"",t.map?"#define USE_MAP":"",t.matcap?"#define USE_MATCAP":"",t.envMap?"#define USE_ENVMAP":"",t.envMap?"#define "+c:"",t.envMap?"#define "+f:"",t.envMap?"#define "+u:"",h?"#define CUBEUV_TEXEL_WIDTH "+h.texelWidth:"",h?"#define CUBEUV_TEXEL_HEIGHT "+h.texelHeight:"",h?"#define CUBEUV_MAX_MIP "+h.maxMip+".0":"",t.lightMap?"#define USE_LIGHTMAP":"",t.aoMap?"#define USE_AOMAP":"",t.bumpMap?"#define USE_BUMPMAP":"",t.normalMap?"#define USE_NORMALMAP":"",t.normalMapObjectSpace?"#define USE_NORMALMAP_OBJECTSPACE":"",t.normalMapTangentSpace?"#define USE_NORMALMAP_TANGENTSPACE":"",t.emissiveMap?"#define USE_EMISSIVEMAP":"",t.anisotropy?"#define USE_ANISOTROPY":"",t.anisotropyMap?"#define USE_ANISOTROPYMAP":"",t.clearcoat?"#define USE_CLEARCOAT":"",t.clearcoatMap?"#define USE_CLEARCOATMAP":"",t.clearcoatRoughnessMap?"#define USE_CLEARCOAT_ROUGHNESSMAP":"",t.clearcoatNormalMap?"#define USE_CLEARCOAT_NORMALMAP":"",t.dispersion?"#define USE_DISPERSION":"",t.iridescence?"#define USE_IRIDESCENCE":"",t.iridescenceMap?"#define USE_IRIDESCENCEMAP":"",t.iridescenceThicknessMap?"#define USE_IRIDESCENCE_THICKNESSMAP":"",t.specularMap?"#define USE_SPECULARMAP":"",t.specularColorMap?"#define USE_SPECULAR_COLORMAP":"",t.specularIntensityMap?"#define USE_SPECULAR_INTENSITYMAP":"",t.roughnessMap?"#define USE_ROUGHNESSMAP":"",t.metalnessMap?"#define USE_METALNESSMAP":"",t.alphaMap?"#define USE_ALPHAMAP":"",t.alphaTest?"#define USE_ALPHATEST":"",t.alphaHash?"#define USE_ALPHAHASH":"",t.sheen?"#define USE_SHEEN":"",t.sheenColorMap?"#define USE_SHEEN_COLORMAP":"",t.sheenRoughnessMap?"#define USE_SHEEN_ROUGHNESSMAP":"",t.transmission?"#define USE_TRANSMISSION":"",t.transmissionMap?"#define USE_TRANSMISSIONMAP":"",t.thicknessMap?"#define USE_THICKNESSMAP":"",t.vertexTangents&&t.flatShading===!1?"#define USE_TANGENT":"",t.vertexColors||t.instancingColor||t.batchingColor?"#define USE_COLOR":"",t.vertexAlphas?"#define USE_COLOR_ALPHA":"",t.vertexUv1s?"#define USE_UV1":"",t.vertexUv2s?"#define USE_UV2":"",t.vertexUv3s?"#define USE_UV3":"",t.pointsUvs?"#define USE_POINTS_UV":"",t.gradientMap?"#define USE_GRADIENTMAP":"",t.flatShading?"#define FLAT_SHADED":"",t.doubleSided?"#define DOUBLE_SIDED":"",t.flipSided?"#define FLIP_SIDED":"",t.shadowMapEnabled?"#define USE_SHADOWMAP":"",t.shadowMapEnabled?"#define "+l:"",t.premultipliedAlpha?"#define PREMULTIPLIED_ALPHA":"",t.numLightProbes>0?"#define USE_LIGHT_PROBES":"",t.decodeVideoTexture?"#define DECODE_VIDEO_TEXTURE":"",t.decodeVideoTextureEmissive?"#define DECODE_VIDEO_TEXTURE_EMISSIVE":"",t.logarithmicDepthBuffer?"#define USE_LOGARITHMIC_DEPTH_BUFFER":"",t.reversedDepthBuffer?"#define USE_REVERSED_DEPTH_BUFFER":"","uniform mat4 viewMatrix;","uniform vec3 cameraPosition;","uniform bool isOrthographic;",t.toneMapping!==os?"#define TONE_MAPPING":"",t.toneMapping!==os?at.tonemapping_pars_fragment:"",t.toneMapping!==os?nS("toneMapping",t.toneMapping):"",t.dithering?"#define DITHERING":"",t.opaque?"#define OPAQUE":"",at.colorspace_pars_fragment,tS("linearToOutputTexel",t.outputColorSpace),iS(),t.useDepthPacking?"#define DEPTH_PACKING "+t.depthPacking:"",`
`].filter(ea).join(`
`)),a=Hc(a),a=Rf(a,t),a=Cf(a,t),o=Hc(o),o=Rf(o,t),o=Cf(o,t),a=Pf(a),o=Pf(o),t.isRawShaderMaterial!==!0&&(b=`#version 300 es
`,m=[p,"#define attribute in","#define varying out","#define texture2D texture"].join(`
`)+`
`+m,d=["#define varying in",t.glslVersion===Lh?"":"layout(location = 0) out highp vec4 pc_fragColor;",t.glslVersion===Lh?"":"#define gl_FragColor pc_fragColor","#define gl_FragDepthEXT gl_FragDepth","#define texture2D texture","#define textureCube texture","#define texture2DProj textureProj","#define texture2DLodEXT textureLod","#define texture2DProjLodEXT textureProjLod","#define textureCubeLodEXT textureLod","#define texture2DGradEXT textureGrad","#define texture2DProjGradEXT textureProjGrad","#define textureCubeGradEXT textureGrad"].join(`
`)+`
`+d);const A=b+m+a,E=b+d+o,F=wf(s,s.VERTEX_SHADER,A),C=wf(s,s.FRAGMENT_SHADER,E);s.attachShader(M,F),s.attachShader(M,C),t.index0AttributeName!==void 0?s.bindAttribLocation(M,0,t.index0AttributeName):t.morphTargets===!0&&s.bindAttribLocation(M,0,"position"),s.linkProgram(M);function D(S){if(i.debug.checkShaderErrors){const P=s.getProgramInfoLog(M)||"",I=s.getShaderInfoLog(F)||"",V=s.getShaderInfoLog(C)||"",k=P.trim(),X=I.trim(),$=V.trim();let K=!0,re=!0;if(s.getProgramParameter(M,s.LINK_STATUS)===!1)if(K=!1,typeof i.debug.onShaderError=="function")i.debug.onShaderError(s,M,F,C);else{const oe=Af(s,F,"vertex"),ue=Af(s,C,"fragment");console.error("THREE.WebGLProgram: Shader Error "+s.getError()+" - VALIDATE_STATUS "+s.getProgramParameter(M,s.VALIDATE_STATUS)+`

Material Name: `+S.name+`
Material Type: `+S.type+`

Program Info Log: `+k+`
`+oe+`
`+ue)}else k!==""?console.warn("THREE.WebGLProgram: Program Info Log:",k):(X===""||$==="")&&(re=!1);re&&(S.diagnostics={runnable:K,programLog:k,vertexShader:{log:X,prefix:m},fragmentShader:{log:$,prefix:d}})}s.deleteShader(F),s.deleteShader(C),O=new fo(s,M),T=aS(s,M)}let O;this.getUniforms=function(){return O===void 0&&D(this),O};let T;this.getAttributes=function(){return T===void 0&&D(this),T};let g=t.rendererExtensionParallelShaderCompile===!1;return this.isReady=function(){return g===!1&&(g=s.getProgramParameter(M,ZM)),g},this.destroy=function(){n.releaseStatesOfProgram(this),s.deleteProgram(M),this.program=void 0},this.type=t.shaderType,this.name=t.shaderName,this.id=JM++,this.cacheKey=e,this.usedTimes=1,this.program=M,this.vertexShader=F,this.fragmentShader=C,this}let vS=0;class xS{constructor(){this.shaderCache=new Map,this.materialCache=new Map}update(e){const t=e.vertexShader,n=e.fragmentShader,s=this._getShaderStage(t),r=this._getShaderStage(n),a=this._getShaderCacheForMaterial(e);return a.has(s)===!1&&(a.add(s),s.usedTimes++),a.has(r)===!1&&(a.add(r),r.usedTimes++),this}remove(e){const t=this.materialCache.get(e);for(const n of t)n.usedTimes--,n.usedTimes===0&&this.shaderCache.delete(n.code);return this.materialCache.delete(e),this}getVertexShaderID(e){return this._getShaderStage(e.vertexShader).id}getFragmentShaderID(e){return this._getShaderStage(e.fragmentShader).id}dispose(){this.shaderCache.clear(),this.materialCache.clear()}_getShaderCacheForMaterial(e){const t=this.materialCache;let n=t.get(e);return n===void 0&&(n=new Set,t.set(e,n)),n}_getShaderStage(e){const t=this.shaderCache;let n=t.get(e);return n===void 0&&(n=new MS(e),t.set(e,n)),n}}class MS{constructor(e){this.id=vS++,this.code=e,this.usedTimes=0}}function SS(i,e,t,n,s,r,a){const o=new pu,l=new xS,c=new Set,f=[],u=s.logarithmicDepthBuffer,h=s.vertexTextures;let p=s.precision;const v={MeshDepthMaterial:"depth",MeshDistanceMaterial:"distanceRGBA",MeshNormalMaterial:"normal",MeshBasicMaterial:"basic",MeshLambertMaterial:"lambert",MeshPhongMaterial:"phong",MeshToonMaterial:"toon",MeshStandardMaterial:"physical",MeshPhysicalMaterial:"physical",MeshMatcapMaterial:"matcap",LineBasicMaterial:"basic",LineDashedMaterial:"dashed",PointsMaterial:"points",ShadowMaterial:"shadow",SpriteMaterial:"sprite"};function M(T){return c.add(T),T===0?"uv":`uv${T}`}function m(T,g,S,P,I){const V=P.fog,k=I.geometry,X=T.isMeshStandardMaterial?P.environment:null,$=(T.isMeshStandardMaterial?t:e).get(T.envMap||X),K=$&&$.mapping===Io?$.image.height:null,re=v[T.type];T.precision!==null&&(p=s.getMaxPrecision(T.precision),p!==T.precision&&console.warn("THREE.WebGLProgram.getParameters:",T.precision,"not supported, using",p,"instead."));const oe=k.morphAttributes.position||k.morphAttributes.normal||k.morphAttributes.color,ue=oe!==void 0?oe.length:0;let he=0;k.morphAttributes.position!==void 0&&(he=1),k.morphAttributes.normal!==void 0&&(he=2),k.morphAttributes.color!==void 0&&(he=3);let fe,$e,Ke,ee;if(re){const mt=bi[re];fe=mt.vertexShader,$e=mt.fragmentShader}else fe=T.vertexShader,$e=T.fragmentShader,l.update(T),Ke=l.getVertexShaderID(T),ee=l.getFragmentShaderID(T);const te=i.getRenderTarget(),xe=i.state.buffers.depth.getReversed(),Ce=I.isInstancedMesh===!0,Se=I.isBatchedMesh===!0,je=!!T.map,wt=!!T.matcap,B=!!$,pt=!!T.aoMap,Ze=!!T.lightMap,Ge=!!T.bumpMap,Ne=!!T.normalMap,Tt=!!T.displacementMap,Pe=!!T.emissiveMap,Ve=!!T.metalnessMap,kt=!!T.roughnessMap,Mt=T.anisotropy>0,L=T.clearcoat>0,x=T.dispersion>0,z=T.iridescence>0,J=T.sheen>0,ie=T.transmission>0,ne=Mt&&!!T.anisotropyMap,Fe=L&&!!T.clearcoatMap,pe=L&&!!T.clearcoatNormalMap,Le=L&&!!T.clearcoatRoughnessMap,Ae=z&&!!T.iridescenceMap,le=z&&!!T.iridescenceThicknessMap,Me=J&&!!T.sheenColorMap,ke=J&&!!T.sheenRoughnessMap,Be=!!T.specularMap,ye=!!T.specularColorMap,Qe=!!T.specularIntensityMap,G=ie&&!!T.transmissionMap,me=ie&&!!T.thicknessMap,_e=!!T.gradientMap,De=!!T.alphaMap,de=T.alphaTest>0,ae=!!T.alphaHash,Oe=!!T.extensions;let et=os;T.toneMapped&&(te===null||te.isXRRenderTarget===!0)&&(et=i.toneMapping);const Rt={shaderID:re,shaderType:T.type,shaderName:T.name,vertexShader:fe,fragmentShader:$e,defines:T.defines,customVertexShaderID:Ke,customFragmentShaderID:ee,isRawShaderMaterial:T.isRawShaderMaterial===!0,glslVersion:T.glslVersion,precision:p,batching:Se,batchingColor:Se&&I._colorsTexture!==null,instancing:Ce,instancingColor:Ce&&I.instanceColor!==null,instancingMorph:Ce&&I.morphTexture!==null,supportsVertexTextures:h,outputColorSpace:te===null?i.outputColorSpace:te.isXRRenderTarget===!0?te.texture.colorSpace:wr,alphaToCoverage:!!T.alphaToCoverage,map:je,matcap:wt,envMap:B,envMapMode:B&&$.mapping,envMapCubeUVHeight:K,aoMap:pt,lightMap:Ze,bumpMap:Ge,normalMap:Ne,displacementMap:h&&Tt,emissiveMap:Pe,normalMapObjectSpace:Ne&&T.normalMapType===f_,normalMapTangentSpace:Ne&&T.normalMapType===Gd,metalnessMap:Ve,roughnessMap:kt,anisotropy:Mt,anisotropyMap:ne,clearcoat:L,clearcoatMap:Fe,clearcoatNormalMap:pe,clearcoatRoughnessMap:Le,dispersion:x,iridescence:z,iridescenceMap:Ae,iridescenceThicknessMap:le,sheen:J,sheenColorMap:Me,sheenRoughnessMap:ke,specularMap:Be,specularColorMap:ye,specularIntensityMap:Qe,transmission:ie,transmissionMap:G,thicknessMap:me,gradientMap:_e,opaque:T.transparent===!1&&T.blending===mr&&T.alphaToCoverage===!1,alphaMap:De,alphaTest:de,alphaHash:ae,combine:T.combine,mapUv:je&&M(T.map.channel),aoMapUv:pt&&M(T.aoMap.channel),lightMapUv:Ze&&M(T.lightMap.channel),bumpMapUv:Ge&&M(T.bumpMap.channel),normalMapUv:Ne&&M(T.normalMap.channel),displacementMapUv:Tt&&M(T.displacementMap.channel),emissiveMapUv:Pe&&M(T.emissiveMap.channel),metalnessMapUv:Ve&&M(T.metalnessMap.channel),roughnessMapUv:kt&&M(T.roughnessMap.channel),anisotropyMapUv:ne&&M(T.anisotropyMap.channel),clearcoatMapUv:Fe&&M(T.clearcoatMap.channel),clearcoatNormalMapUv:pe&&M(T.clearcoatNormalMap.channel),clearcoatRoughnessMapUv:Le&&M(T.clearcoatRoughnessMap.channel),iridescenceMapUv:Ae&&M(T.iridescenceMap.channel),iridescenceThicknessMapUv:le&&M(T.iridescenceThicknessMap.channel),sheenColorMapUv:Me&&M(T.sheenColorMap.channel),sheenRoughnessMapUv:ke&&M(T.sheenRoughnessMap.channel),specularMapUv:Be&&M(T.specularMap.channel),specularColorMapUv:ye&&M(T.specularColorMap.channel),specularIntensityMapUv:Qe&&M(T.specularIntensityMap.channel),transmissionMapUv:G&&M(T.transmissionMap.channel),thicknessMapUv:me&&M(T.thicknessMap.channel),alphaMapUv:De&&M(T.alphaMap.channel),vertexTangents:!!k.attributes.tangent&&(Ne||Mt),vertexColors:T.vertexColors,vertexAlphas:T.vertexColors===!0&&!!k.attributes.color&&k.attributes.color.itemSize===4,pointsUvs:I.isPoints===!0&&!!k.attributes.uv&&(je||De),fog:!!V,useFog:T.fog===!0,fogExp2:!!V&&V.isFogExp2,flatShading:T.flatShading===!0&&T.wireframe===!1,sizeAttenuation:T.sizeAttenuation===!0,logarithmicDepthBuffer:u,reversedDepthBuffer:xe,skinning:I.isSkinnedMesh===!0,morphTargets:k.morphAttributes.position!==void 0,morphNormals:k.morphAttributes.normal!==void 0,morphColors:k.morphAttributes.color!==void 0,morphTargetsCount:ue,morphTextureStride:he,numDirLights:g.directional.length,numPointLights:g.point.length,numSpotLights:g.spot.length,numSpotLightMaps:g.spotLightMap.length,numRectAreaLights:g.rectArea.length,numHemiLights:g.hemi.length,numDirLightShadows:g.directionalShadowMap.length,numPointLightShadows:g.pointShadowMap.length,numSpotLightShadows:g.spotShadowMap.length,numSpotLightShadowsWithMaps:g.numSpotLightShadowsWithMaps,numLightProbes:g.numLightProbes,numClippingPlanes:a.numPlanes,numClipIntersection:a.numIntersection,dithering:T.dithering,shadowMapEnabled:i.shadowMap.enabled&&S.length>0,shadowMapType:i.shadowMap.type,toneMapping:et,decodeVideoTexture:je&&T.map.isVideoTexture===!0&&vt.getTransfer(T.map.colorSpace)===Pt,decodeVideoTextureEmissive:Pe&&T.emissiveMap.isVideoTexture===!0&&vt.getTransfer(T.emissiveMap.colorSpace)===Pt,premultipliedAlpha:T.premultipliedAlpha,doubleSided:T.side===ki,flipSided:T.side===Bn,useDepthPacking:T.depthPacking>=0,depthPacking:T.depthPacking||0,index0AttributeName:T.index0AttributeName,extensionClipCullDistance:Oe&&T.extensions.clipCullDistance===!0&&n.has("WEBGL_clip_cull_distance"),extensionMultiDraw:(Oe&&T.extensions.multiDraw===!0||Se)&&n.has("WEBGL_multi_draw"),rendererExtensionParallelShaderCompile:n.has("KHR_parallel_shader_compile"),customProgramCacheKey:T.customProgramCacheKey()};return Rt.vertexUv1s=c.has(1),Rt.vertexUv2s=c.has(2),Rt.vertexUv3s=c.has(3),c.clear(),Rt}function d(T){const g=[];if(T.shaderID?g.push(T.shaderID):(g.push(T.customVertexShaderID),g.push(T.customFragmentShaderID)),T.defines!==void 0)for(const S in T.defines)g.push(S),g.push(T.defines[S]);return T.isRawShaderMaterial===!1&&(b(g,T),A(g,T),g.push(i.outputColorSpace)),g.push(T.customProgramCacheKey),g.join()}function b(T,g){T.push(g.precision),T.push(g.outputColorSpace),T.push(g.envMapMode),T.push(g.envMapCubeUVHeight),T.push(g.mapUv),T.push(g.alphaMapUv),T.push(g.lightMapUv),T.push(g.aoMapUv),T.push(g.bumpMapUv),T.push(g.normalMapUv),T.push(g.displacementMapUv),T.push(g.emissiveMapUv),T.push(g.metalnessMapUv),T.push(g.roughnessMapUv),T.push(g.anisotropyMapUv),T.push(g.clearcoatMapUv),T.push(g.clearcoatNormalMapUv),T.push(g.clearcoatRoughnessMapUv),T.push(g.iridescenceMapUv),T.push(g.iridescenceThicknessMapUv),T.push(g.sheenColorMapUv),T.push(g.sheenRoughnessMapUv),T.push(g.specularMapUv),T.push(g.specularColorMapUv),T.push(g.specularIntensityMapUv),T.push(g.transmissionMapUv),T.push(g.thicknessMapUv),T.push(g.combine),T.push(g.fogExp2),T.push(g.sizeAttenuation),T.push(g.morphTargetsCount),T.push(g.morphAttributeCount),T.push(g.numDirLights),T.push(g.numPointLights),T.push(g.numSpotLights),T.push(g.numSpotLightMaps),T.push(g.numHemiLights),T.push(g.numRectAreaLights),T.push(g.numDirLightShadows),T.push(g.numPointLightShadows),T.push(g.numSpotLightShadows),T.push(g.numSpotLightShadowsWithMaps),T.push(g.numLightProbes),T.push(g.shadowMapType),T.push(g.toneMapping),T.push(g.numClippingPlanes),T.push(g.numClipIntersection),T.push(g.depthPacking)}function A(T,g){o.disableAll(),g.supportsVertexTextures&&o.enable(0),g.instancing&&o.enable(1),g.instancingColor&&o.enable(2),g.instancingMorph&&o.enable(3),g.matcap&&o.enable(4),g.envMap&&o.enable(5),g.normalMapObjectSpace&&o.enable(6),g.normalMapTangentSpace&&o.enable(7),g.clearcoat&&o.enable(8),g.iridescence&&o.enable(9),g.alphaTest&&o.enable(10),g.vertexColors&&o.enable(11),g.vertexAlphas&&o.enable(12),g.vertexUv1s&&o.enable(13),g.vertexUv2s&&o.enable(14),g.vertexUv3s&&o.enable(15),g.vertexTangents&&o.enable(16),g.anisotropy&&o.enable(17),g.alphaHash&&o.enable(18),g.batching&&o.enable(19),g.dispersion&&o.enable(20),g.batchingColor&&o.enable(21),g.gradientMap&&o.enable(22),T.push(o.mask),o.disableAll(),g.fog&&o.enable(0),g.useFog&&o.enable(1),g.flatShading&&o.enable(2),g.logarithmicDepthBuffer&&o.enable(3),g.reversedDepthBuffer&&o.enable(4),g.skinning&&o.enable(5),g.morphTargets&&o.enable(6),g.morphNormals&&o.enable(7),g.morphColors&&o.enable(8),g.premultipliedAlpha&&o.enable(9),g.shadowMapEnabled&&o.enable(10),g.doubleSided&&o.enable(11),g.flipSided&&o.enable(12),g.useDepthPacking&&o.enable(13),g.dithering&&o.enable(14),g.transmission&&o.enable(15),g.sheen&&o.enable(16),g.opaque&&o.enable(17),g.pointsUvs&&o.enable(18),g.decodeVideoTexture&&o.enable(19),g.decodeVideoTextureEmissive&&o.enable(20),g.alphaToCoverage&&o.enable(21),T.push(o.mask)}function E(T){const g=v[T.type];let S;if(g){const P=bi[g];S=V_.clone(P.uniforms)}else S=T.uniforms;return S}function F(T,g){let S;for(let P=0,I=f.length;P<I;P++){const V=f[P];if(V.cacheKey===g){S=V,++S.usedTimes;break}}return S===void 0&&(S=new _S(i,g,T,r),f.push(S)),S}function C(T){if(--T.usedTimes===0){const g=f.indexOf(T);f[g]=f[f.length-1],f.pop(),T.destroy()}}function D(T){l.remove(T)}function O(){l.dispose()}return{getParameters:m,getProgramCacheKey:d,getUniforms:E,acquireProgram:F,releaseProgram:C,releaseShaderCache:D,programs:f,dispose:O}}function yS(){let i=new WeakMap;function e(a){return i.has(a)}function t(a){let o=i.get(a);return o===void 0&&(o={},i.set(a,o)),o}function n(a){i.delete(a)}function s(a,o,l){i.get(a)[o]=l}function r(){i=new WeakMap}return{has:e,get:t,remove:n,update:s,dispose:r}}function ES(i,e){return i.groupOrder!==e.groupOrder?i.groupOrder-e.groupOrder:i.renderOrder!==e.renderOrder?i.renderOrder-e.renderOrder:i.material.id!==e.material.id?i.material.id-e.material.id:i.z!==e.z?i.z-e.z:i.id-e.id}function Lf(i,e){return i.groupOrder!==e.groupOrder?i.groupOrder-e.groupOrder:i.renderOrder!==e.renderOrder?i.renderOrder-e.renderOrder:i.z!==e.z?e.z-i.z:i.id-e.id}function Uf(){const i=[];let e=0;const t=[],n=[],s=[];function r(){e=0,t.length=0,n.length=0,s.length=0}function a(u,h,p,v,M,m){let d=i[e];return d===void 0?(d={id:u.id,object:u,geometry:h,material:p,groupOrder:v,renderOrder:u.renderOrder,z:M,group:m},i[e]=d):(d.id=u.id,d.object=u,d.geometry=h,d.material=p,d.groupOrder=v,d.renderOrder=u.renderOrder,d.z=M,d.group=m),e++,d}function o(u,h,p,v,M,m){const d=a(u,h,p,v,M,m);p.transmission>0?n.push(d):p.transparent===!0?s.push(d):t.push(d)}function l(u,h,p,v,M,m){const d=a(u,h,p,v,M,m);p.transmission>0?n.unshift(d):p.transparent===!0?s.unshift(d):t.unshift(d)}function c(u,h){t.length>1&&t.sort(u||ES),n.length>1&&n.sort(h||Lf),s.length>1&&s.sort(h||Lf)}function f(){for(let u=e,h=i.length;u<h;u++){const p=i[u];if(p.id===null)break;p.id=null,p.object=null,p.geometry=null,p.material=null,p.group=null}}return{opaque:t,transmissive:n,transparent:s,init:r,push:o,unshift:l,finish:f,sort:c}}function bS(){let i=new WeakMap;function e(n,s){const r=i.get(n);let a;return r===void 0?(a=new Uf,i.set(n,[a])):s>=r.length?(a=new Uf,r.push(a)):a=r[s],a}function t(){i=new WeakMap}return{get:e,dispose:t}}function wS(){const i={};return{get:function(e){if(i[e.id]!==void 0)return i[e.id];let t;switch(e.type){case"DirectionalLight":t={direction:new H,color:new lt};break;case"SpotLight":t={position:new H,direction:new H,color:new lt,distance:0,coneCos:0,penumbraCos:0,decay:0};break;case"PointLight":t={position:new H,color:new lt,distance:0,decay:0};break;case"HemisphereLight":t={direction:new H,skyColor:new lt,groundColor:new lt};break;case"RectAreaLight":t={color:new lt,position:new H,halfWidth:new H,halfHeight:new H};break}return i[e.id]=t,t}}}function TS(){const i={};return{get:function(e){if(i[e.id]!==void 0)return i[e.id];let t;switch(e.type){case"DirectionalLight":t={shadowIntensity:1,shadowBias:0,shadowNormalBias:0,shadowRadius:1,shadowMapSize:new nt};break;case"SpotLight":t={shadowIntensity:1,shadowBias:0,shadowNormalBias:0,shadowRadius:1,shadowMapSize:new nt};break;case"PointLight":t={shadowIntensity:1,shadowBias:0,shadowNormalBias:0,shadowRadius:1,shadowMapSize:new nt,shadowCameraNear:1,shadowCameraFar:1e3};break}return i[e.id]=t,t}}}let AS=0;function RS(i,e){return(e.castShadow?2:0)-(i.castShadow?2:0)+(e.map?1:0)-(i.map?1:0)}function CS(i){const e=new wS,t=TS(),n={version:0,hash:{directionalLength:-1,pointLength:-1,spotLength:-1,rectAreaLength:-1,hemiLength:-1,numDirectionalShadows:-1,numPointShadows:-1,numSpotShadows:-1,numSpotMaps:-1,numLightProbes:-1},ambient:[0,0,0],probe:[],directional:[],directionalShadow:[],directionalShadowMap:[],directionalShadowMatrix:[],spot:[],spotLightMap:[],spotShadow:[],spotShadowMap:[],spotLightMatrix:[],rectArea:[],rectAreaLTC1:null,rectAreaLTC2:null,point:[],pointShadow:[],pointShadowMap:[],pointShadowMatrix:[],hemi:[],numSpotLightShadowsWithMaps:0,numLightProbes:0};for(let c=0;c<9;c++)n.probe.push(new H);const s=new H,r=new Xt,a=new Xt;function o(c){let f=0,u=0,h=0;for(let T=0;T<9;T++)n.probe[T].set(0,0,0);let p=0,v=0,M=0,m=0,d=0,b=0,A=0,E=0,F=0,C=0,D=0;c.sort(RS);for(let T=0,g=c.length;T<g;T++){const S=c[T],P=S.color,I=S.intensity,V=S.distance,k=S.shadow&&S.shadow.map?S.shadow.map.texture:null;if(S.isAmbientLight)f+=P.r*I,u+=P.g*I,h+=P.b*I;else if(S.isLightProbe){for(let X=0;X<9;X++)n.probe[X].addScaledVector(S.sh.coefficients[X],I);D++}else if(S.isDirectionalLight){const X=e.get(S);if(X.color.copy(S.color).multiplyScalar(S.intensity),S.castShadow){const $=S.shadow,K=t.get(S);K.shadowIntensity=$.intensity,K.shadowBias=$.bias,K.shadowNormalBias=$.normalBias,K.shadowRadius=$.radius,K.shadowMapSize=$.mapSize,n.directionalShadow[p]=K,n.directionalShadowMap[p]=k,n.directionalShadowMatrix[p]=S.shadow.matrix,b++}n.directional[p]=X,p++}else if(S.isSpotLight){const X=e.get(S);X.position.setFromMatrixPosition(S.matrixWorld),X.color.copy(P).multiplyScalar(I),X.distance=V,X.coneCos=Math.cos(S.angle),X.penumbraCos=Math.cos(S.angle*(1-S.penumbra)),X.decay=S.decay,n.spot[M]=X;const $=S.shadow;if(S.map&&(n.spotLightMap[F]=S.map,F++,$.updateMatrices(S),S.castShadow&&C++),n.spotLightMatrix[M]=$.matrix,S.castShadow){const K=t.get(S);K.shadowIntensity=$.intensity,K.shadowBias=$.bias,K.shadowNormalBias=$.normalBias,K.shadowRadius=$.radius,K.shadowMapSize=$.mapSize,n.spotShadow[M]=K,n.spotShadowMap[M]=k,E++}M++}else if(S.isRectAreaLight){const X=e.get(S);X.color.copy(P).multiplyScalar(I),X.halfWidth.set(S.width*.5,0,0),X.halfHeight.set(0,S.height*.5,0),n.rectArea[m]=X,m++}else if(S.isPointLight){const X=e.get(S);if(X.color.copy(S.color).multiplyScalar(S.intensity),X.distance=S.distance,X.decay=S.decay,S.castShadow){const $=S.shadow,K=t.get(S);K.shadowIntensity=$.intensity,K.shadowBias=$.bias,K.shadowNormalBias=$.normalBias,K.shadowRadius=$.radius,K.shadowMapSize=$.mapSize,K.shadowCameraNear=$.camera.near,K.shadowCameraFar=$.camera.far,n.pointShadow[v]=K,n.pointShadowMap[v]=k,n.pointShadowMatrix[v]=S.shadow.matrix,A++}n.point[v]=X,v++}else if(S.isHemisphereLight){const X=e.get(S);X.skyColor.copy(S.color).multiplyScalar(I),X.groundColor.copy(S.groundColor).multiplyScalar(I),n.hemi[d]=X,d++}}m>0&&(i.has("OES_texture_float_linear")===!0?(n.rectAreaLTC1=be.LTC_FLOAT_1,n.rectAreaLTC2=be.LTC_FLOAT_2):(n.rectAreaLTC1=be.LTC_HALF_1,n.rectAreaLTC2=be.LTC_HALF_2)),n.ambient[0]=f,n.ambient[1]=u,n.ambient[2]=h;const O=n.hash;(O.directionalLength!==p||O.pointLength!==v||O.spotLength!==M||O.rectAreaLength!==m||O.hemiLength!==d||O.numDirectionalShadows!==b||O.numPointShadows!==A||O.numSpotShadows!==E||O.numSpotMaps!==F||O.numLightProbes!==D)&&(n.directional.length=p,n.spot.length=M,n.rectArea.length=m,n.point.length=v,n.hemi.length=d,n.directionalShadow.length=b,n.directionalShadowMap.length=b,n.pointShadow.length=A,n.pointShadowMap.length=A,n.spotShadow.length=E,n.spotShadowMap.length=E,n.directionalShadowMatrix.length=b,n.pointShadowMatrix.length=A,n.spotLightMatrix.length=E+F-C,n.spotLightMap.length=F,n.numSpotLightShadowsWithMaps=C,n.numLightProbes=D,O.directionalLength=p,O.pointLength=v,O.spotLength=M,O.rectAreaLength=m,O.hemiLength=d,O.numDirectionalShadows=b,O.numPointShadows=A,O.numSpotShadows=E,O.numSpotMaps=F,O.numLightProbes=D,n.version=AS++)}function l(c,f){let u=0,h=0,p=0,v=0,M=0;const m=f.matrixWorldInverse;for(let d=0,b=c.length;d<b;d++){const A=c[d];if(A.isDirectionalLight){const E=n.directional[u];E.direction.setFromMatrixPosition(A.matrixWorld),s.setFromMatrixPosition(A.target.matrixWorld),E.direction.sub(s),E.direction.transformDirection(m),u++}else if(A.isSpotLight){const E=n.spot[p];E.position.setFromMatrixPosition(A.matrixWorld),E.position.applyMatrix4(m),E.direction.setFromMatrixPosition(A.matrixWorld),s.setFromMatrixPosition(A.target.matrixWorld),E.direction.sub(s),E.direction.transformDirection(m),p++}else if(A.isRectAreaLight){const E=n.rectArea[v];E.position.setFromMatrixPosition(A.matrixWorld),E.position.applyMatrix4(m),a.identity(),r.copy(A.matrixWorld),r.premultiply(m),a.extractRotation(r),E.halfWidth.set(A.width*.5,0,0),E.halfHeight.set(0,A.height*.5,0),E.halfWidth.applyMatrix4(a),E.halfHeight.applyMatrix4(a),v++}else if(A.isPointLight){const E=n.point[h];E.position.setFromMatrixPosition(A.matrixWorld),E.position.applyMatrix4(m),h++}else if(A.isHemisphereLight){const E=n.hemi[M];E.direction.setFromMatrixPosition(A.matrixWorld),E.direction.transformDirection(m),M++}}}return{setup:o,setupView:l,state:n}}function If(i){const e=new CS(i),t=[],n=[];function s(f){c.camera=f,t.length=0,n.length=0}function r(f){t.push(f)}function a(f){n.push(f)}function o(){e.setup(t)}function l(f){e.setupView(t,f)}const c={lightsArray:t,shadowsArray:n,camera:null,lights:e,transmissionRenderTarget:{}};return{init:s,state:c,setupLights:o,setupLightsView:l,pushLight:r,pushShadow:a}}function PS(i){let e=new WeakMap;function t(s,r=0){const a=e.get(s);let o;return a===void 0?(o=new If(i),e.set(s,[o])):r>=a.length?(o=new If(i),a.push(o)):o=a[r],o}function n(){e=new WeakMap}return{get:t,dispose:n}}const DS=`void main() {
	gl_Position = vec4( position, 1.0 );
}`,LS=`uniform sampler2D shadow_pass;
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
}`;function US(i,e,t){let n=new gu;const s=new nt,r=new nt,a=new $t,o=new e0({depthPacking:h_}),l=new t0,c={},f=t.maxTextureSize,u={[cs]:Bn,[Bn]:cs,[ki]:ki},h=new us({defines:{VSM_SAMPLES:8},uniforms:{shadow_pass:{value:null},resolution:{value:new nt},radius:{value:4}},vertexShader:DS,fragmentShader:LS}),p=h.clone();p.defines.HORIZONTAL_PASS=1;const v=new vn;v.setAttribute("position",new zn(new Float32Array([-1,-1,.5,3,-1,.5,-1,3,.5]),3));const M=new _n(v,h),m=this;this.enabled=!1,this.autoUpdate=!0,this.needsUpdate=!1,this.type=Ud;let d=this.type;this.render=function(C,D,O){if(m.enabled===!1||m.autoUpdate===!1&&m.needsUpdate===!1||C.length===0)return;const T=i.getRenderTarget(),g=i.getActiveCubeFace(),S=i.getActiveMipmapLevel(),P=i.state;P.setBlending(as),P.buffers.depth.getReversed()===!0?P.buffers.color.setClear(0,0,0,0):P.buffers.color.setClear(1,1,1,1),P.buffers.depth.setTest(!0),P.setScissorTest(!1);const I=d!==Bi&&this.type===Bi,V=d===Bi&&this.type!==Bi;for(let k=0,X=C.length;k<X;k++){const $=C[k],K=$.shadow;if(K===void 0){console.warn("THREE.WebGLShadowMap:",$,"has no shadow.");continue}if(K.autoUpdate===!1&&K.needsUpdate===!1)continue;s.copy(K.mapSize);const re=K.getFrameExtents();if(s.multiply(re),r.copy(K.mapSize),(s.x>f||s.y>f)&&(s.x>f&&(r.x=Math.floor(f/re.x),s.x=r.x*re.x,K.mapSize.x=r.x),s.y>f&&(r.y=Math.floor(f/re.y),s.y=r.y*re.y,K.mapSize.y=r.y)),K.map===null||I===!0||V===!0){const ue=this.type!==Bi?{minFilter:gi,magFilter:gi}:{};K.map!==null&&K.map.dispose(),K.map=new Fs(s.x,s.y,ue),K.map.texture.name=$.name+".shadowMap",K.camera.updateProjectionMatrix()}i.setRenderTarget(K.map),i.clear();const oe=K.getViewportCount();for(let ue=0;ue<oe;ue++){const he=K.getViewport(ue);a.set(r.x*he.x,r.y*he.y,r.x*he.z,r.y*he.w),P.viewport(a),K.updateMatrices($,ue),n=K.getFrustum(),E(D,O,K.camera,$,this.type)}K.isPointLightShadow!==!0&&this.type===Bi&&b(K,O),K.needsUpdate=!1}d=this.type,m.needsUpdate=!1,i.setRenderTarget(T,g,S)};function b(C,D){const O=e.update(M);h.defines.VSM_SAMPLES!==C.blurSamples&&(h.defines.VSM_SAMPLES=C.blurSamples,p.defines.VSM_SAMPLES=C.blurSamples,h.needsUpdate=!0,p.needsUpdate=!0),C.mapPass===null&&(C.mapPass=new Fs(s.x,s.y)),h.uniforms.shadow_pass.value=C.map.texture,h.uniforms.resolution.value=C.mapSize,h.uniforms.radius.value=C.radius,i.setRenderTarget(C.mapPass),i.clear(),i.renderBufferDirect(D,null,O,h,M,null),p.uniforms.shadow_pass.value=C.mapPass.texture,p.uniforms.resolution.value=C.mapSize,p.uniforms.radius.value=C.radius,i.setRenderTarget(C.map),i.clear(),i.renderBufferDirect(D,null,O,p,M,null)}function A(C,D,O,T){let g=null;const S=O.isPointLight===!0?C.customDistanceMaterial:C.customDepthMaterial;if(S!==void 0)g=S;else if(g=O.isPointLight===!0?l:o,i.localClippingEnabled&&D.clipShadows===!0&&Array.isArray(D.clippingPlanes)&&D.clippingPlanes.length!==0||D.displacementMap&&D.displacementScale!==0||D.alphaMap&&D.alphaTest>0||D.map&&D.alphaTest>0||D.alphaToCoverage===!0){const P=g.uuid,I=D.uuid;let V=c[P];V===void 0&&(V={},c[P]=V);let k=V[I];k===void 0&&(k=g.clone(),V[I]=k,D.addEventListener("dispose",F)),g=k}if(g.visible=D.visible,g.wireframe=D.wireframe,T===Bi?g.side=D.shadowSide!==null?D.shadowSide:D.side:g.side=D.shadowSide!==null?D.shadowSide:u[D.side],g.alphaMap=D.alphaMap,g.alphaTest=D.alphaToCoverage===!0?.5:D.alphaTest,g.map=D.map,g.clipShadows=D.clipShadows,g.clippingPlanes=D.clippingPlanes,g.clipIntersection=D.clipIntersection,g.displacementMap=D.displacementMap,g.displacementScale=D.displacementScale,g.displacementBias=D.displacementBias,g.wireframeLinewidth=D.wireframeLinewidth,g.linewidth=D.linewidth,O.isPointLight===!0&&g.isMeshDistanceMaterial===!0){const P=i.properties.get(g);P.light=O}return g}function E(C,D,O,T,g){if(C.visible===!1)return;if(C.layers.test(D.layers)&&(C.isMesh||C.isLine||C.isPoints)&&(C.castShadow||C.receiveShadow&&g===Bi)&&(!C.frustumCulled||n.intersectsObject(C))){C.modelViewMatrix.multiplyMatrices(O.matrixWorldInverse,C.matrixWorld);const I=e.update(C),V=C.material;if(Array.isArray(V)){const k=I.groups;for(let X=0,$=k.length;X<$;X++){const K=k[X],re=V[K.materialIndex];if(re&&re.visible){const oe=A(C,re,T,g);C.onBeforeShadow(i,C,D,O,I,oe,K),i.renderBufferDirect(O,null,I,oe,C,K),C.onAfterShadow(i,C,D,O,I,oe,K)}}}else if(V.visible){const k=A(C,V,T,g);C.onBeforeShadow(i,C,D,O,I,k,null),i.renderBufferDirect(O,null,I,k,C,null),C.onAfterShadow(i,C,D,O,I,k,null)}}const P=C.children;for(let I=0,V=P.length;I<V;I++)E(P[I],D,O,T,g)}function F(C){C.target.removeEventListener("dispose",F);for(const O in c){const T=c[O],g=C.target.uuid;g in T&&(T[g].dispose(),delete T[g])}}}const IS={[Ql]:ec,[tc]:sc,[nc]:rc,[yr]:ic,[ec]:Ql,[sc]:tc,[rc]:nc,[ic]:yr};function NS(i,e){function t(){let G=!1;const me=new $t;let _e=null;const De=new $t(0,0,0,0);return{setMask:function(de){_e!==de&&!G&&(i.colorMask(de,de,de,de),_e=de)},setLocked:function(de){G=de},setClear:function(de,ae,Oe,et,Rt){Rt===!0&&(de*=et,ae*=et,Oe*=et),me.set(de,ae,Oe,et),De.equals(me)===!1&&(i.clearColor(de,ae,Oe,et),De.copy(me))},reset:function(){G=!1,_e=null,De.set(-1,0,0,0)}}}function n(){let G=!1,me=!1,_e=null,De=null,de=null;return{setReversed:function(ae){if(me!==ae){const Oe=e.get("EXT_clip_control");ae?Oe.clipControlEXT(Oe.LOWER_LEFT_EXT,Oe.ZERO_TO_ONE_EXT):Oe.clipControlEXT(Oe.LOWER_LEFT_EXT,Oe.NEGATIVE_ONE_TO_ONE_EXT),me=ae;const et=de;de=null,this.setClear(et)}},getReversed:function(){return me},setTest:function(ae){ae?te(i.DEPTH_TEST):xe(i.DEPTH_TEST)},setMask:function(ae){_e!==ae&&!G&&(i.depthMask(ae),_e=ae)},setFunc:function(ae){if(me&&(ae=IS[ae]),De!==ae){switch(ae){case Ql:i.depthFunc(i.NEVER);break;case ec:i.depthFunc(i.ALWAYS);break;case tc:i.depthFunc(i.LESS);break;case yr:i.depthFunc(i.LEQUAL);break;case nc:i.depthFunc(i.EQUAL);break;case ic:i.depthFunc(i.GEQUAL);break;case sc:i.depthFunc(i.GREATER);break;case rc:i.depthFunc(i.NOTEQUAL);break;default:i.depthFunc(i.LEQUAL)}De=ae}},setLocked:function(ae){G=ae},setClear:function(ae){de!==ae&&(me&&(ae=1-ae),i.clearDepth(ae),de=ae)},reset:function(){G=!1,_e=null,De=null,de=null,me=!1}}}function s(){let G=!1,me=null,_e=null,De=null,de=null,ae=null,Oe=null,et=null,Rt=null;return{setTest:function(mt){G||(mt?te(i.STENCIL_TEST):xe(i.STENCIL_TEST))},setMask:function(mt){me!==mt&&!G&&(i.stencilMask(mt),me=mt)},setFunc:function(mt,mn,Lt){(_e!==mt||De!==mn||de!==Lt)&&(i.stencilFunc(mt,mn,Lt),_e=mt,De=mn,de=Lt)},setOp:function(mt,mn,Lt){(ae!==mt||Oe!==mn||et!==Lt)&&(i.stencilOp(mt,mn,Lt),ae=mt,Oe=mn,et=Lt)},setLocked:function(mt){G=mt},setClear:function(mt){Rt!==mt&&(i.clearStencil(mt),Rt=mt)},reset:function(){G=!1,me=null,_e=null,De=null,de=null,ae=null,Oe=null,et=null,Rt=null}}}const r=new t,a=new n,o=new s,l=new WeakMap,c=new WeakMap;let f={},u={},h=new WeakMap,p=[],v=null,M=!1,m=null,d=null,b=null,A=null,E=null,F=null,C=null,D=new lt(0,0,0),O=0,T=!1,g=null,S=null,P=null,I=null,V=null;const k=i.getParameter(i.MAX_COMBINED_TEXTURE_IMAGE_UNITS);let X=!1,$=0;const K=i.getParameter(i.VERSION);K.indexOf("WebGL")!==-1?($=parseFloat(/^WebGL (\d)/.exec(K)[1]),X=$>=1):K.indexOf("OpenGL ES")!==-1&&($=parseFloat(/^OpenGL ES (\d)/.exec(K)[1]),X=$>=2);let re=null,oe={};const ue=i.getParameter(i.SCISSOR_BOX),he=i.getParameter(i.VIEWPORT),fe=new $t().fromArray(ue),$e=new $t().fromArray(he);function Ke(G,me,_e,De){const de=new Uint8Array(4),ae=i.createTexture();i.bindTexture(G,ae),i.texParameteri(G,i.TEXTURE_MIN_FILTER,i.NEAREST),i.texParameteri(G,i.TEXTURE_MAG_FILTER,i.NEAREST);for(let Oe=0;Oe<_e;Oe++)G===i.TEXTURE_3D||G===i.TEXTURE_2D_ARRAY?i.texImage3D(me,0,i.RGBA,1,1,De,0,i.RGBA,i.UNSIGNED_BYTE,de):i.texImage2D(me+Oe,0,i.RGBA,1,1,0,i.RGBA,i.UNSIGNED_BYTE,de);return ae}const ee={};ee[i.TEXTURE_2D]=Ke(i.TEXTURE_2D,i.TEXTURE_2D,1),ee[i.TEXTURE_CUBE_MAP]=Ke(i.TEXTURE_CUBE_MAP,i.TEXTURE_CUBE_MAP_POSITIVE_X,6),ee[i.TEXTURE_2D_ARRAY]=Ke(i.TEXTURE_2D_ARRAY,i.TEXTURE_2D_ARRAY,1,1),ee[i.TEXTURE_3D]=Ke(i.TEXTURE_3D,i.TEXTURE_3D,1,1),r.setClear(0,0,0,1),a.setClear(1),o.setClear(0),te(i.DEPTH_TEST),a.setFunc(yr),Ge(!1),Ne(Th),te(i.CULL_FACE),pt(as);function te(G){f[G]!==!0&&(i.enable(G),f[G]=!0)}function xe(G){f[G]!==!1&&(i.disable(G),f[G]=!1)}function Ce(G,me){return u[G]!==me?(i.bindFramebuffer(G,me),u[G]=me,G===i.DRAW_FRAMEBUFFER&&(u[i.FRAMEBUFFER]=me),G===i.FRAMEBUFFER&&(u[i.DRAW_FRAMEBUFFER]=me),!0):!1}function Se(G,me){let _e=p,De=!1;if(G){_e=h.get(me),_e===void 0&&(_e=[],h.set(me,_e));const de=G.textures;if(_e.length!==de.length||_e[0]!==i.COLOR_ATTACHMENT0){for(let ae=0,Oe=de.length;ae<Oe;ae++)_e[ae]=i.COLOR_ATTACHMENT0+ae;_e.length=de.length,De=!0}}else _e[0]!==i.BACK&&(_e[0]=i.BACK,De=!0);De&&i.drawBuffers(_e)}function je(G){return v!==G?(i.useProgram(G),v=G,!0):!1}const wt={[As]:i.FUNC_ADD,[Og]:i.FUNC_SUBTRACT,[Bg]:i.FUNC_REVERSE_SUBTRACT};wt[kg]=i.MIN,wt[zg]=i.MAX;const B={[Hg]:i.ZERO,[Vg]:i.ONE,[Gg]:i.SRC_COLOR,[Zl]:i.SRC_ALPHA,[jg]:i.SRC_ALPHA_SATURATE,[Yg]:i.DST_COLOR,[Xg]:i.DST_ALPHA,[Wg]:i.ONE_MINUS_SRC_COLOR,[Jl]:i.ONE_MINUS_SRC_ALPHA,[$g]:i.ONE_MINUS_DST_COLOR,[qg]:i.ONE_MINUS_DST_ALPHA,[Kg]:i.CONSTANT_COLOR,[Zg]:i.ONE_MINUS_CONSTANT_COLOR,[Jg]:i.CONSTANT_ALPHA,[Qg]:i.ONE_MINUS_CONSTANT_ALPHA};function pt(G,me,_e,De,de,ae,Oe,et,Rt,mt){if(G===as){M===!0&&(xe(i.BLEND),M=!1);return}if(M===!1&&(te(i.BLEND),M=!0),G!==Fg){if(G!==m||mt!==T){if((d!==As||E!==As)&&(i.blendEquation(i.FUNC_ADD),d=As,E=As),mt)switch(G){case mr:i.blendFuncSeparate(i.ONE,i.ONE_MINUS_SRC_ALPHA,i.ONE,i.ONE_MINUS_SRC_ALPHA);break;case Ah:i.blendFunc(i.ONE,i.ONE);break;case Rh:i.blendFuncSeparate(i.ZERO,i.ONE_MINUS_SRC_COLOR,i.ZERO,i.ONE);break;case Ch:i.blendFuncSeparate(i.DST_COLOR,i.ONE_MINUS_SRC_ALPHA,i.ZERO,i.ONE);break;default:console.error("THREE.WebGLState: Invalid blending: ",G);break}else switch(G){case mr:i.blendFuncSeparate(i.SRC_ALPHA,i.ONE_MINUS_SRC_ALPHA,i.ONE,i.ONE_MINUS_SRC_ALPHA);break;case Ah:i.blendFuncSeparate(i.SRC_ALPHA,i.ONE,i.ONE,i.ONE);break;case Rh:console.error("THREE.WebGLState: SubtractiveBlending requires material.premultipliedAlpha = true");break;case Ch:console.error("THREE.WebGLState: MultiplyBlending requires material.premultipliedAlpha = true");break;default:console.error("THREE.WebGLState: Invalid blending: ",G);break}b=null,A=null,F=null,C=null,D.set(0,0,0),O=0,m=G,T=mt}return}de=de||me,ae=ae||_e,Oe=Oe||De,(me!==d||de!==E)&&(i.blendEquationSeparate(wt[me],wt[de]),d=me,E=de),(_e!==b||De!==A||ae!==F||Oe!==C)&&(i.blendFuncSeparate(B[_e],B[De],B[ae],B[Oe]),b=_e,A=De,F=ae,C=Oe),(et.equals(D)===!1||Rt!==O)&&(i.blendColor(et.r,et.g,et.b,Rt),D.copy(et),O=Rt),m=G,T=!1}function Ze(G,me){G.side===ki?xe(i.CULL_FACE):te(i.CULL_FACE);let _e=G.side===Bn;me&&(_e=!_e),Ge(_e),G.blending===mr&&G.transparent===!1?pt(as):pt(G.blending,G.blendEquation,G.blendSrc,G.blendDst,G.blendEquationAlpha,G.blendSrcAlpha,G.blendDstAlpha,G.blendColor,G.blendAlpha,G.premultipliedAlpha),a.setFunc(G.depthFunc),a.setTest(G.depthTest),a.setMask(G.depthWrite),r.setMask(G.colorWrite);const De=G.stencilWrite;o.setTest(De),De&&(o.setMask(G.stencilWriteMask),o.setFunc(G.stencilFunc,G.stencilRef,G.stencilFuncMask),o.setOp(G.stencilFail,G.stencilZFail,G.stencilZPass)),Pe(G.polygonOffset,G.polygonOffsetFactor,G.polygonOffsetUnits),G.alphaToCoverage===!0?te(i.SAMPLE_ALPHA_TO_COVERAGE):xe(i.SAMPLE_ALPHA_TO_COVERAGE)}function Ge(G){g!==G&&(G?i.frontFace(i.CW):i.frontFace(i.CCW),g=G)}function Ne(G){G!==Ug?(te(i.CULL_FACE),G!==S&&(G===Th?i.cullFace(i.BACK):G===Ig?i.cullFace(i.FRONT):i.cullFace(i.FRONT_AND_BACK))):xe(i.CULL_FACE),S=G}function Tt(G){G!==P&&(X&&i.lineWidth(G),P=G)}function Pe(G,me,_e){G?(te(i.POLYGON_OFFSET_FILL),(I!==me||V!==_e)&&(i.polygonOffset(me,_e),I=me,V=_e)):xe(i.POLYGON_OFFSET_FILL)}function Ve(G){G?te(i.SCISSOR_TEST):xe(i.SCISSOR_TEST)}function kt(G){G===void 0&&(G=i.TEXTURE0+k-1),re!==G&&(i.activeTexture(G),re=G)}function Mt(G,me,_e){_e===void 0&&(re===null?_e=i.TEXTURE0+k-1:_e=re);let De=oe[_e];De===void 0&&(De={type:void 0,texture:void 0},oe[_e]=De),(De.type!==G||De.texture!==me)&&(re!==_e&&(i.activeTexture(_e),re=_e),i.bindTexture(G,me||ee[G]),De.type=G,De.texture=me)}function L(){const G=oe[re];G!==void 0&&G.type!==void 0&&(i.bindTexture(G.type,null),G.type=void 0,G.texture=void 0)}function x(){try{i.compressedTexImage2D(...arguments)}catch(G){console.error("THREE.WebGLState:",G)}}function z(){try{i.compressedTexImage3D(...arguments)}catch(G){console.error("THREE.WebGLState:",G)}}function J(){try{i.texSubImage2D(...arguments)}catch(G){console.error("THREE.WebGLState:",G)}}function ie(){try{i.texSubImage3D(...arguments)}catch(G){console.error("THREE.WebGLState:",G)}}function ne(){try{i.compressedTexSubImage2D(...arguments)}catch(G){console.error("THREE.WebGLState:",G)}}function Fe(){try{i.compressedTexSubImage3D(...arguments)}catch(G){console.error("THREE.WebGLState:",G)}}function pe(){try{i.texStorage2D(...arguments)}catch(G){console.error("THREE.WebGLState:",G)}}function Le(){try{i.texStorage3D(...arguments)}catch(G){console.error("THREE.WebGLState:",G)}}function Ae(){try{i.texImage2D(...arguments)}catch(G){console.error("THREE.WebGLState:",G)}}function le(){try{i.texImage3D(...arguments)}catch(G){console.error("THREE.WebGLState:",G)}}function Me(G){fe.equals(G)===!1&&(i.scissor(G.x,G.y,G.z,G.w),fe.copy(G))}function ke(G){$e.equals(G)===!1&&(i.viewport(G.x,G.y,G.z,G.w),$e.copy(G))}function Be(G,me){let _e=c.get(me);_e===void 0&&(_e=new WeakMap,c.set(me,_e));let De=_e.get(G);De===void 0&&(De=i.getUniformBlockIndex(me,G.name),_e.set(G,De))}function ye(G,me){const De=c.get(me).get(G);l.get(me)!==De&&(i.uniformBlockBinding(me,De,G.__bindingPointIndex),l.set(me,De))}function Qe(){i.disable(i.BLEND),i.disable(i.CULL_FACE),i.disable(i.DEPTH_TEST),i.disable(i.POLYGON_OFFSET_FILL),i.disable(i.SCISSOR_TEST),i.disable(i.STENCIL_TEST),i.disable(i.SAMPLE_ALPHA_TO_COVERAGE),i.blendEquation(i.FUNC_ADD),i.blendFunc(i.ONE,i.ZERO),i.blendFuncSeparate(i.ONE,i.ZERO,i.ONE,i.ZERO),i.blendColor(0,0,0,0),i.colorMask(!0,!0,!0,!0),i.clearColor(0,0,0,0),i.depthMask(!0),i.depthFunc(i.LESS),a.setReversed(!1),i.clearDepth(1),i.stencilMask(4294967295),i.stencilFunc(i.ALWAYS,0,4294967295),i.stencilOp(i.KEEP,i.KEEP,i.KEEP),i.clearStencil(0),i.cullFace(i.BACK),i.frontFace(i.CCW),i.polygonOffset(0,0),i.activeTexture(i.TEXTURE0),i.bindFramebuffer(i.FRAMEBUFFER,null),i.bindFramebuffer(i.DRAW_FRAMEBUFFER,null),i.bindFramebuffer(i.READ_FRAMEBUFFER,null),i.useProgram(null),i.lineWidth(1),i.scissor(0,0,i.canvas.width,i.canvas.height),i.viewport(0,0,i.canvas.width,i.canvas.height),f={},re=null,oe={},u={},h=new WeakMap,p=[],v=null,M=!1,m=null,d=null,b=null,A=null,E=null,F=null,C=null,D=new lt(0,0,0),O=0,T=!1,g=null,S=null,P=null,I=null,V=null,fe.set(0,0,i.canvas.width,i.canvas.height),$e.set(0,0,i.canvas.width,i.canvas.height),r.reset(),a.reset(),o.reset()}return{buffers:{color:r,depth:a,stencil:o},enable:te,disable:xe,bindFramebuffer:Ce,drawBuffers:Se,useProgram:je,setBlending:pt,setMaterial:Ze,setFlipSided:Ge,setCullFace:Ne,setLineWidth:Tt,setPolygonOffset:Pe,setScissorTest:Ve,activeTexture:kt,bindTexture:Mt,unbindTexture:L,compressedTexImage2D:x,compressedTexImage3D:z,texImage2D:Ae,texImage3D:le,updateUBOMapping:Be,uniformBlockBinding:ye,texStorage2D:pe,texStorage3D:Le,texSubImage2D:J,texSubImage3D:ie,compressedTexSubImage2D:ne,compressedTexSubImage3D:Fe,scissor:Me,viewport:ke,reset:Qe}}function FS(i,e,t,n,s,r,a){const o=e.has("WEBGL_multisampled_render_to_texture")?e.get("WEBGL_multisampled_render_to_texture"):null,l=typeof navigator>"u"?!1:/OculusBrowser/g.test(navigator.userAgent),c=new nt,f=new WeakMap;let u;const h=new WeakMap;let p=!1;try{p=typeof OffscreenCanvas<"u"&&new OffscreenCanvas(1,1).getContext("2d")!==null}catch{}function v(L,x){return p?new OffscreenCanvas(L,x):yo("canvas")}function M(L,x,z){let J=1;const ie=Mt(L);if((ie.width>z||ie.height>z)&&(J=z/Math.max(ie.width,ie.height)),J<1)if(typeof HTMLImageElement<"u"&&L instanceof HTMLImageElement||typeof HTMLCanvasElement<"u"&&L instanceof HTMLCanvasElement||typeof ImageBitmap<"u"&&L instanceof ImageBitmap||typeof VideoFrame<"u"&&L instanceof VideoFrame){const ne=Math.floor(J*ie.width),Fe=Math.floor(J*ie.height);u===void 0&&(u=v(ne,Fe));const pe=x?v(ne,Fe):u;return pe.width=ne,pe.height=Fe,pe.getContext("2d").drawImage(L,0,0,ne,Fe),console.warn("THREE.WebGLRenderer: Texture has been resized from ("+ie.width+"x"+ie.height+") to ("+ne+"x"+Fe+")."),pe}else return"data"in L&&console.warn("THREE.WebGLRenderer: Image in DataTexture is too big ("+ie.width+"x"+ie.height+")."),L;return L}function m(L){return L.generateMipmaps}function d(L){i.generateMipmap(L)}function b(L){return L.isWebGLCubeRenderTarget?i.TEXTURE_CUBE_MAP:L.isWebGL3DRenderTarget?i.TEXTURE_3D:L.isWebGLArrayRenderTarget||L.isCompressedArrayTexture?i.TEXTURE_2D_ARRAY:i.TEXTURE_2D}function A(L,x,z,J,ie=!1){if(L!==null){if(i[L]!==void 0)return i[L];console.warn("THREE.WebGLRenderer: Attempt to use non-existing WebGL internal format '"+L+"'")}let ne=x;if(x===i.RED&&(z===i.FLOAT&&(ne=i.R32F),z===i.HALF_FLOAT&&(ne=i.R16F),z===i.UNSIGNED_BYTE&&(ne=i.R8)),x===i.RED_INTEGER&&(z===i.UNSIGNED_BYTE&&(ne=i.R8UI),z===i.UNSIGNED_SHORT&&(ne=i.R16UI),z===i.UNSIGNED_INT&&(ne=i.R32UI),z===i.BYTE&&(ne=i.R8I),z===i.SHORT&&(ne=i.R16I),z===i.INT&&(ne=i.R32I)),x===i.RG&&(z===i.FLOAT&&(ne=i.RG32F),z===i.HALF_FLOAT&&(ne=i.RG16F),z===i.UNSIGNED_BYTE&&(ne=i.RG8)),x===i.RG_INTEGER&&(z===i.UNSIGNED_BYTE&&(ne=i.RG8UI),z===i.UNSIGNED_SHORT&&(ne=i.RG16UI),z===i.UNSIGNED_INT&&(ne=i.RG32UI),z===i.BYTE&&(ne=i.RG8I),z===i.SHORT&&(ne=i.RG16I),z===i.INT&&(ne=i.RG32I)),x===i.RGB_INTEGER&&(z===i.UNSIGNED_BYTE&&(ne=i.RGB8UI),z===i.UNSIGNED_SHORT&&(ne=i.RGB16UI),z===i.UNSIGNED_INT&&(ne=i.RGB32UI),z===i.BYTE&&(ne=i.RGB8I),z===i.SHORT&&(ne=i.RGB16I),z===i.INT&&(ne=i.RGB32I)),x===i.RGBA_INTEGER&&(z===i.UNSIGNED_BYTE&&(ne=i.RGBA8UI),z===i.UNSIGNED_SHORT&&(ne=i.RGBA16UI),z===i.UNSIGNED_INT&&(ne=i.RGBA32UI),z===i.BYTE&&(ne=i.RGBA8I),z===i.SHORT&&(ne=i.RGBA16I),z===i.INT&&(ne=i.RGBA32I)),x===i.RGB&&(z===i.UNSIGNED_INT_5_9_9_9_REV&&(ne=i.RGB9_E5),z===i.UNSIGNED_INT_10F_11F_11F_REV&&(ne=i.R11F_G11F_B10F)),x===i.RGBA){const Fe=ie?Mo:vt.getTransfer(J);z===i.FLOAT&&(ne=i.RGBA32F),z===i.HALF_FLOAT&&(ne=i.RGBA16F),z===i.UNSIGNED_BYTE&&(ne=Fe===Pt?i.SRGB8_ALPHA8:i.RGBA8),z===i.UNSIGNED_SHORT_4_4_4_4&&(ne=i.RGBA4),z===i.UNSIGNED_SHORT_5_5_5_1&&(ne=i.RGB5_A1)}return(ne===i.R16F||ne===i.R32F||ne===i.RG16F||ne===i.RG32F||ne===i.RGBA16F||ne===i.RGBA32F)&&e.get("EXT_color_buffer_float"),ne}function E(L,x){let z;return L?x===null||x===Is||x===la?z=i.DEPTH24_STENCIL8:x===zi?z=i.DEPTH32F_STENCIL8:x===oa&&(z=i.DEPTH24_STENCIL8,console.warn("DepthTexture: 16 bit depth attachment is not supported with stencil. Using 24-bit attachment.")):x===null||x===Is||x===la?z=i.DEPTH_COMPONENT24:x===zi?z=i.DEPTH_COMPONENT32F:x===oa&&(z=i.DEPTH_COMPONENT16),z}function F(L,x){return m(L)===!0||L.isFramebufferTexture&&L.minFilter!==gi&&L.minFilter!==wi?Math.log2(Math.max(x.width,x.height))+1:L.mipmaps!==void 0&&L.mipmaps.length>0?L.mipmaps.length:L.isCompressedTexture&&Array.isArray(L.image)?x.mipmaps.length:1}function C(L){const x=L.target;x.removeEventListener("dispose",C),O(x),x.isVideoTexture&&f.delete(x)}function D(L){const x=L.target;x.removeEventListener("dispose",D),g(x)}function O(L){const x=n.get(L);if(x.__webglInit===void 0)return;const z=L.source,J=h.get(z);if(J){const ie=J[x.__cacheKey];ie.usedTimes--,ie.usedTimes===0&&T(L),Object.keys(J).length===0&&h.delete(z)}n.remove(L)}function T(L){const x=n.get(L);i.deleteTexture(x.__webglTexture);const z=L.source,J=h.get(z);delete J[x.__cacheKey],a.memory.textures--}function g(L){const x=n.get(L);if(L.depthTexture&&(L.depthTexture.dispose(),n.remove(L.depthTexture)),L.isWebGLCubeRenderTarget)for(let J=0;J<6;J++){if(Array.isArray(x.__webglFramebuffer[J]))for(let ie=0;ie<x.__webglFramebuffer[J].length;ie++)i.deleteFramebuffer(x.__webglFramebuffer[J][ie]);else i.deleteFramebuffer(x.__webglFramebuffer[J]);x.__webglDepthbuffer&&i.deleteRenderbuffer(x.__webglDepthbuffer[J])}else{if(Array.isArray(x.__webglFramebuffer))for(let J=0;J<x.__webglFramebuffer.length;J++)i.deleteFramebuffer(x.__webglFramebuffer[J]);else i.deleteFramebuffer(x.__webglFramebuffer);if(x.__webglDepthbuffer&&i.deleteRenderbuffer(x.__webglDepthbuffer),x.__webglMultisampledFramebuffer&&i.deleteFramebuffer(x.__webglMultisampledFramebuffer),x.__webglColorRenderbuffer)for(let J=0;J<x.__webglColorRenderbuffer.length;J++)x.__webglColorRenderbuffer[J]&&i.deleteRenderbuffer(x.__webglColorRenderbuffer[J]);x.__webglDepthRenderbuffer&&i.deleteRenderbuffer(x.__webglDepthRenderbuffer)}const z=L.textures;for(let J=0,ie=z.length;J<ie;J++){const ne=n.get(z[J]);ne.__webglTexture&&(i.deleteTexture(ne.__webglTexture),a.memory.textures--),n.remove(z[J])}n.remove(L)}let S=0;function P(){S=0}function I(){const L=S;return L>=s.maxTextures&&console.warn("THREE.WebGLTextures: Trying to use "+L+" texture units while this GPU supports only "+s.maxTextures),S+=1,L}function V(L){const x=[];return x.push(L.wrapS),x.push(L.wrapT),x.push(L.wrapR||0),x.push(L.magFilter),x.push(L.minFilter),x.push(L.anisotropy),x.push(L.internalFormat),x.push(L.format),x.push(L.type),x.push(L.generateMipmaps),x.push(L.premultiplyAlpha),x.push(L.flipY),x.push(L.unpackAlignment),x.push(L.colorSpace),x.join()}function k(L,x){const z=n.get(L);if(L.isVideoTexture&&Ve(L),L.isRenderTargetTexture===!1&&L.isExternalTexture!==!0&&L.version>0&&z.__version!==L.version){const J=L.image;if(J===null)console.warn("THREE.WebGLRenderer: Texture marked for update but no image data found.");else if(J.complete===!1)console.warn("THREE.WebGLRenderer: Texture marked for update but image is incomplete");else{ee(z,L,x);return}}else L.isExternalTexture&&(z.__webglTexture=L.sourceTexture?L.sourceTexture:null);t.bindTexture(i.TEXTURE_2D,z.__webglTexture,i.TEXTURE0+x)}function X(L,x){const z=n.get(L);if(L.isRenderTargetTexture===!1&&L.version>0&&z.__version!==L.version){ee(z,L,x);return}t.bindTexture(i.TEXTURE_2D_ARRAY,z.__webglTexture,i.TEXTURE0+x)}function $(L,x){const z=n.get(L);if(L.isRenderTargetTexture===!1&&L.version>0&&z.__version!==L.version){ee(z,L,x);return}t.bindTexture(i.TEXTURE_3D,z.__webglTexture,i.TEXTURE0+x)}function K(L,x){const z=n.get(L);if(L.version>0&&z.__version!==L.version){te(z,L,x);return}t.bindTexture(i.TEXTURE_CUBE_MAP,z.__webglTexture,i.TEXTURE0+x)}const re={[lc]:i.REPEAT,[Ps]:i.CLAMP_TO_EDGE,[cc]:i.MIRRORED_REPEAT},oe={[gi]:i.NEAREST,[c_]:i.NEAREST_MIPMAP_NEAREST,[Da]:i.NEAREST_MIPMAP_LINEAR,[wi]:i.LINEAR,[rl]:i.LINEAR_MIPMAP_NEAREST,[Ds]:i.LINEAR_MIPMAP_LINEAR},ue={[d_]:i.NEVER,[x_]:i.ALWAYS,[p_]:i.LESS,[Wd]:i.LEQUAL,[m_]:i.EQUAL,[v_]:i.GEQUAL,[g_]:i.GREATER,[__]:i.NOTEQUAL};function he(L,x){if(x.type===zi&&e.has("OES_texture_float_linear")===!1&&(x.magFilter===wi||x.magFilter===rl||x.magFilter===Da||x.magFilter===Ds||x.minFilter===wi||x.minFilter===rl||x.minFilter===Da||x.minFilter===Ds)&&console.warn("THREE.WebGLRenderer: Unable to use linear filtering with floating point textures. OES_texture_float_linear not supported on this device."),i.texParameteri(L,i.TEXTURE_WRAP_S,re[x.wrapS]),i.texParameteri(L,i.TEXTURE_WRAP_T,re[x.wrapT]),(L===i.TEXTURE_3D||L===i.TEXTURE_2D_ARRAY)&&i.texParameteri(L,i.TEXTURE_WRAP_R,re[x.wrapR]),i.texParameteri(L,i.TEXTURE_MAG_FILTER,oe[x.magFilter]),i.texParameteri(L,i.TEXTURE_MIN_FILTER,oe[x.minFilter]),x.compareFunction&&(i.texParameteri(L,i.TEXTURE_COMPARE_MODE,i.COMPARE_REF_TO_TEXTURE),i.texParameteri(L,i.TEXTURE_COMPARE_FUNC,ue[x.compareFunction])),e.has("EXT_texture_filter_anisotropic")===!0){if(x.magFilter===gi||x.minFilter!==Da&&x.minFilter!==Ds||x.type===zi&&e.has("OES_texture_float_linear")===!1)return;if(x.anisotropy>1||n.get(x).__currentAnisotropy){const z=e.get("EXT_texture_filter_anisotropic");i.texParameterf(L,z.TEXTURE_MAX_ANISOTROPY_EXT,Math.min(x.anisotropy,s.getMaxAnisotropy())),n.get(x).__currentAnisotropy=x.anisotropy}}}function fe(L,x){let z=!1;L.__webglInit===void 0&&(L.__webglInit=!0,x.addEventListener("dispose",C));const J=x.source;let ie=h.get(J);ie===void 0&&(ie={},h.set(J,ie));const ne=V(x);if(ne!==L.__cacheKey){ie[ne]===void 0&&(ie[ne]={texture:i.createTexture(),usedTimes:0},a.memory.textures++,z=!0),ie[ne].usedTimes++;const Fe=ie[L.__cacheKey];Fe!==void 0&&(ie[L.__cacheKey].usedTimes--,Fe.usedTimes===0&&T(x)),L.__cacheKey=ne,L.__webglTexture=ie[ne].texture}return z}function $e(L,x,z){return Math.floor(Math.floor(L/z)/x)}function Ke(L,x,z,J){const ne=L.updateRanges;if(ne.length===0)t.texSubImage2D(i.TEXTURE_2D,0,0,0,x.width,x.height,z,J,x.data);else{ne.sort((le,Me)=>le.start-Me.start);let Fe=0;for(let le=1;le<ne.length;le++){const Me=ne[Fe],ke=ne[le],Be=Me.start+Me.count,ye=$e(ke.start,x.width,4),Qe=$e(Me.start,x.width,4);ke.start<=Be+1&&ye===Qe&&$e(ke.start+ke.count-1,x.width,4)===ye?Me.count=Math.max(Me.count,ke.start+ke.count-Me.start):(++Fe,ne[Fe]=ke)}ne.length=Fe+1;const pe=i.getParameter(i.UNPACK_ROW_LENGTH),Le=i.getParameter(i.UNPACK_SKIP_PIXELS),Ae=i.getParameter(i.UNPACK_SKIP_ROWS);i.pixelStorei(i.UNPACK_ROW_LENGTH,x.width);for(let le=0,Me=ne.length;le<Me;le++){const ke=ne[le],Be=Math.floor(ke.start/4),ye=Math.ceil(ke.count/4),Qe=Be%x.width,G=Math.floor(Be/x.width),me=ye,_e=1;i.pixelStorei(i.UNPACK_SKIP_PIXELS,Qe),i.pixelStorei(i.UNPACK_SKIP_ROWS,G),t.texSubImage2D(i.TEXTURE_2D,0,Qe,G,me,_e,z,J,x.data)}L.clearUpdateRanges(),i.pixelStorei(i.UNPACK_ROW_LENGTH,pe),i.pixelStorei(i.UNPACK_SKIP_PIXELS,Le),i.pixelStorei(i.UNPACK_SKIP_ROWS,Ae)}}function ee(L,x,z){let J=i.TEXTURE_2D;(x.isDataArrayTexture||x.isCompressedArrayTexture)&&(J=i.TEXTURE_2D_ARRAY),x.isData3DTexture&&(J=i.TEXTURE_3D);const ie=fe(L,x),ne=x.source;t.bindTexture(J,L.__webglTexture,i.TEXTURE0+z);const Fe=n.get(ne);if(ne.version!==Fe.__version||ie===!0){t.activeTexture(i.TEXTURE0+z);const pe=vt.getPrimaries(vt.workingColorSpace),Le=x.colorSpace===ss?null:vt.getPrimaries(x.colorSpace),Ae=x.colorSpace===ss||pe===Le?i.NONE:i.BROWSER_DEFAULT_WEBGL;i.pixelStorei(i.UNPACK_FLIP_Y_WEBGL,x.flipY),i.pixelStorei(i.UNPACK_PREMULTIPLY_ALPHA_WEBGL,x.premultiplyAlpha),i.pixelStorei(i.UNPACK_ALIGNMENT,x.unpackAlignment),i.pixelStorei(i.UNPACK_COLORSPACE_CONVERSION_WEBGL,Ae);let le=M(x.image,!1,s.maxTextureSize);le=kt(x,le);const Me=r.convert(x.format,x.colorSpace),ke=r.convert(x.type);let Be=A(x.internalFormat,Me,ke,x.colorSpace,x.isVideoTexture);he(J,x);let ye;const Qe=x.mipmaps,G=x.isVideoTexture!==!0,me=Fe.__version===void 0||ie===!0,_e=ne.dataReady,De=F(x,le);if(x.isDepthTexture)Be=E(x.format===ua,x.type),me&&(G?t.texStorage2D(i.TEXTURE_2D,1,Be,le.width,le.height):t.texImage2D(i.TEXTURE_2D,0,Be,le.width,le.height,0,Me,ke,null));else if(x.isDataTexture)if(Qe.length>0){G&&me&&t.texStorage2D(i.TEXTURE_2D,De,Be,Qe[0].width,Qe[0].height);for(let de=0,ae=Qe.length;de<ae;de++)ye=Qe[de],G?_e&&t.texSubImage2D(i.TEXTURE_2D,de,0,0,ye.width,ye.height,Me,ke,ye.data):t.texImage2D(i.TEXTURE_2D,de,Be,ye.width,ye.height,0,Me,ke,ye.data);x.generateMipmaps=!1}else G?(me&&t.texStorage2D(i.TEXTURE_2D,De,Be,le.width,le.height),_e&&Ke(x,le,Me,ke)):t.texImage2D(i.TEXTURE_2D,0,Be,le.width,le.height,0,Me,ke,le.data);else if(x.isCompressedTexture)if(x.isCompressedArrayTexture){G&&me&&t.texStorage3D(i.TEXTURE_2D_ARRAY,De,Be,Qe[0].width,Qe[0].height,le.depth);for(let de=0,ae=Qe.length;de<ae;de++)if(ye=Qe[de],x.format!==mi)if(Me!==null)if(G){if(_e)if(x.layerUpdates.size>0){const Oe=uf(ye.width,ye.height,x.format,x.type);for(const et of x.layerUpdates){const Rt=ye.data.subarray(et*Oe/ye.data.BYTES_PER_ELEMENT,(et+1)*Oe/ye.data.BYTES_PER_ELEMENT);t.compressedTexSubImage3D(i.TEXTURE_2D_ARRAY,de,0,0,et,ye.width,ye.height,1,Me,Rt)}x.clearLayerUpdates()}else t.compressedTexSubImage3D(i.TEXTURE_2D_ARRAY,de,0,0,0,ye.width,ye.height,le.depth,Me,ye.data)}else t.compressedTexImage3D(i.TEXTURE_2D_ARRAY,de,Be,ye.width,ye.height,le.depth,0,ye.data,0,0);else console.warn("THREE.WebGLRenderer: Attempt to load unsupported compressed texture format in .uploadTexture()");else G?_e&&t.texSubImage3D(i.TEXTURE_2D_ARRAY,de,0,0,0,ye.width,ye.height,le.depth,Me,ke,ye.data):t.texImage3D(i.TEXTURE_2D_ARRAY,de,Be,ye.width,ye.height,le.depth,0,Me,ke,ye.data)}else{G&&me&&t.texStorage2D(i.TEXTURE_2D,De,Be,Qe[0].width,Qe[0].height);for(let de=0,ae=Qe.length;de<ae;de++)ye=Qe[de],x.format!==mi?Me!==null?G?_e&&t.compressedTexSubImage2D(i.TEXTURE_2D,de,0,0,ye.width,ye.height,Me,ye.data):t.compressedTexImage2D(i.TEXTURE_2D,de,Be,ye.width,ye.height,0,ye.data):console.warn("THREE.WebGLRenderer: Attempt to load unsupported compressed texture format in .uploadTexture()"):G?_e&&t.texSubImage2D(i.TEXTURE_2D,de,0,0,ye.width,ye.height,Me,ke,ye.data):t.texImage2D(i.TEXTURE_2D,de,Be,ye.width,ye.height,0,Me,ke,ye.data)}else if(x.isDataArrayTexture)if(G){if(me&&t.texStorage3D(i.TEXTURE_2D_ARRAY,De,Be,le.width,le.height,le.depth),_e)if(x.layerUpdates.size>0){const de=uf(le.width,le.height,x.format,x.type);for(const ae of x.layerUpdates){const Oe=le.data.subarray(ae*de/le.data.BYTES_PER_ELEMENT,(ae+1)*de/le.data.BYTES_PER_ELEMENT);t.texSubImage3D(i.TEXTURE_2D_ARRAY,0,0,0,ae,le.width,le.height,1,Me,ke,Oe)}x.clearLayerUpdates()}else t.texSubImage3D(i.TEXTURE_2D_ARRAY,0,0,0,0,le.width,le.height,le.depth,Me,ke,le.data)}else t.texImage3D(i.TEXTURE_2D_ARRAY,0,Be,le.width,le.height,le.depth,0,Me,ke,le.data);else if(x.isData3DTexture)G?(me&&t.texStorage3D(i.TEXTURE_3D,De,Be,le.width,le.height,le.depth),_e&&t.texSubImage3D(i.TEXTURE_3D,0,0,0,0,le.width,le.height,le.depth,Me,ke,le.data)):t.texImage3D(i.TEXTURE_3D,0,Be,le.width,le.height,le.depth,0,Me,ke,le.data);else if(x.isFramebufferTexture){if(me)if(G)t.texStorage2D(i.TEXTURE_2D,De,Be,le.width,le.height);else{let de=le.width,ae=le.height;for(let Oe=0;Oe<De;Oe++)t.texImage2D(i.TEXTURE_2D,Oe,Be,de,ae,0,Me,ke,null),de>>=1,ae>>=1}}else if(Qe.length>0){if(G&&me){const de=Mt(Qe[0]);t.texStorage2D(i.TEXTURE_2D,De,Be,de.width,de.height)}for(let de=0,ae=Qe.length;de<ae;de++)ye=Qe[de],G?_e&&t.texSubImage2D(i.TEXTURE_2D,de,0,0,Me,ke,ye):t.texImage2D(i.TEXTURE_2D,de,Be,Me,ke,ye);x.generateMipmaps=!1}else if(G){if(me){const de=Mt(le);t.texStorage2D(i.TEXTURE_2D,De,Be,de.width,de.height)}_e&&t.texSubImage2D(i.TEXTURE_2D,0,0,0,Me,ke,le)}else t.texImage2D(i.TEXTURE_2D,0,Be,Me,ke,le);m(x)&&d(J),Fe.__version=ne.version,x.onUpdate&&x.onUpdate(x)}L.__version=x.version}function te(L,x,z){if(x.image.length!==6)return;const J=fe(L,x),ie=x.source;t.bindTexture(i.TEXTURE_CUBE_MAP,L.__webglTexture,i.TEXTURE0+z);const ne=n.get(ie);if(ie.version!==ne.__version||J===!0){t.activeTexture(i.TEXTURE0+z);const Fe=vt.getPrimaries(vt.workingColorSpace),pe=x.colorSpace===ss?null:vt.getPrimaries(x.colorSpace),Le=x.colorSpace===ss||Fe===pe?i.NONE:i.BROWSER_DEFAULT_WEBGL;i.pixelStorei(i.UNPACK_FLIP_Y_WEBGL,x.flipY),i.pixelStorei(i.UNPACK_PREMULTIPLY_ALPHA_WEBGL,x.premultiplyAlpha),i.pixelStorei(i.UNPACK_ALIGNMENT,x.unpackAlignment),i.pixelStorei(i.UNPACK_COLORSPACE_CONVERSION_WEBGL,Le);const Ae=x.isCompressedTexture||x.image[0].isCompressedTexture,le=x.image[0]&&x.image[0].isDataTexture,Me=[];for(let ae=0;ae<6;ae++)!Ae&&!le?Me[ae]=M(x.image[ae],!0,s.maxCubemapSize):Me[ae]=le?x.image[ae].image:x.image[ae],Me[ae]=kt(x,Me[ae]);const ke=Me[0],Be=r.convert(x.format,x.colorSpace),ye=r.convert(x.type),Qe=A(x.internalFormat,Be,ye,x.colorSpace),G=x.isVideoTexture!==!0,me=ne.__version===void 0||J===!0,_e=ie.dataReady;let De=F(x,ke);he(i.TEXTURE_CUBE_MAP,x);let de;if(Ae){G&&me&&t.texStorage2D(i.TEXTURE_CUBE_MAP,De,Qe,ke.width,ke.height);for(let ae=0;ae<6;ae++){de=Me[ae].mipmaps;for(let Oe=0;Oe<de.length;Oe++){const et=de[Oe];x.format!==mi?Be!==null?G?_e&&t.compressedTexSubImage2D(i.TEXTURE_CUBE_MAP_POSITIVE_X+ae,Oe,0,0,et.width,et.height,Be,et.data):t.compressedTexImage2D(i.TEXTURE_CUBE_MAP_POSITIVE_X+ae,Oe,Qe,et.width,et.height,0,et.data):console.warn("THREE.WebGLRenderer: Attempt to load unsupported compressed texture format in .setTextureCube()"):G?_e&&t.texSubImage2D(i.TEXTURE_CUBE_MAP_POSITIVE_X+ae,Oe,0,0,et.width,et.height,Be,ye,et.data):t.texImage2D(i.TEXTURE_CUBE_MAP_POSITIVE_X+ae,Oe,Qe,et.width,et.height,0,Be,ye,et.data)}}}else{if(de=x.mipmaps,G&&me){de.length>0&&De++;const ae=Mt(Me[0]);t.texStorage2D(i.TEXTURE_CUBE_MAP,De,Qe,ae.width,ae.height)}for(let ae=0;ae<6;ae++)if(le){G?_e&&t.texSubImage2D(i.TEXTURE_CUBE_MAP_POSITIVE_X+ae,0,0,0,Me[ae].width,Me[ae].height,Be,ye,Me[ae].data):t.texImage2D(i.TEXTURE_CUBE_MAP_POSITIVE_X+ae,0,Qe,Me[ae].width,Me[ae].height,0,Be,ye,Me[ae].data);for(let Oe=0;Oe<de.length;Oe++){const Rt=de[Oe].image[ae].image;G?_e&&t.texSubImage2D(i.TEXTURE_CUBE_MAP_POSITIVE_X+ae,Oe+1,0,0,Rt.width,Rt.height,Be,ye,Rt.data):t.texImage2D(i.TEXTURE_CUBE_MAP_POSITIVE_X+ae,Oe+1,Qe,Rt.width,Rt.height,0,Be,ye,Rt.data)}}else{G?_e&&t.texSubImage2D(i.TEXTURE_CUBE_MAP_POSITIVE_X+ae,0,0,0,Be,ye,Me[ae]):t.texImage2D(i.TEXTURE_CUBE_MAP_POSITIVE_X+ae,0,Qe,Be,ye,Me[ae]);for(let Oe=0;Oe<de.length;Oe++){const et=de[Oe];G?_e&&t.texSubImage2D(i.TEXTURE_CUBE_MAP_POSITIVE_X+ae,Oe+1,0,0,Be,ye,et.image[ae]):t.texImage2D(i.TEXTURE_CUBE_MAP_POSITIVE_X+ae,Oe+1,Qe,Be,ye,et.image[ae])}}}m(x)&&d(i.TEXTURE_CUBE_MAP),ne.__version=ie.version,x.onUpdate&&x.onUpdate(x)}L.__version=x.version}function xe(L,x,z,J,ie,ne){const Fe=r.convert(z.format,z.colorSpace),pe=r.convert(z.type),Le=A(z.internalFormat,Fe,pe,z.colorSpace),Ae=n.get(x),le=n.get(z);if(le.__renderTarget=x,!Ae.__hasExternalTextures){const Me=Math.max(1,x.width>>ne),ke=Math.max(1,x.height>>ne);ie===i.TEXTURE_3D||ie===i.TEXTURE_2D_ARRAY?t.texImage3D(ie,ne,Le,Me,ke,x.depth,0,Fe,pe,null):t.texImage2D(ie,ne,Le,Me,ke,0,Fe,pe,null)}t.bindFramebuffer(i.FRAMEBUFFER,L),Pe(x)?o.framebufferTexture2DMultisampleEXT(i.FRAMEBUFFER,J,ie,le.__webglTexture,0,Tt(x)):(ie===i.TEXTURE_2D||ie>=i.TEXTURE_CUBE_MAP_POSITIVE_X&&ie<=i.TEXTURE_CUBE_MAP_NEGATIVE_Z)&&i.framebufferTexture2D(i.FRAMEBUFFER,J,ie,le.__webglTexture,ne),t.bindFramebuffer(i.FRAMEBUFFER,null)}function Ce(L,x,z){if(i.bindRenderbuffer(i.RENDERBUFFER,L),x.depthBuffer){const J=x.depthTexture,ie=J&&J.isDepthTexture?J.type:null,ne=E(x.stencilBuffer,ie),Fe=x.stencilBuffer?i.DEPTH_STENCIL_ATTACHMENT:i.DEPTH_ATTACHMENT,pe=Tt(x);Pe(x)?o.renderbufferStorageMultisampleEXT(i.RENDERBUFFER,pe,ne,x.width,x.height):z?i.renderbufferStorageMultisample(i.RENDERBUFFER,pe,ne,x.width,x.height):i.renderbufferStorage(i.RENDERBUFFER,ne,x.width,x.height),i.framebufferRenderbuffer(i.FRAMEBUFFER,Fe,i.RENDERBUFFER,L)}else{const J=x.textures;for(let ie=0;ie<J.length;ie++){const ne=J[ie],Fe=r.convert(ne.format,ne.colorSpace),pe=r.convert(ne.type),Le=A(ne.internalFormat,Fe,pe,ne.colorSpace),Ae=Tt(x);z&&Pe(x)===!1?i.renderbufferStorageMultisample(i.RENDERBUFFER,Ae,Le,x.width,x.height):Pe(x)?o.renderbufferStorageMultisampleEXT(i.RENDERBUFFER,Ae,Le,x.width,x.height):i.renderbufferStorage(i.RENDERBUFFER,Le,x.width,x.height)}}i.bindRenderbuffer(i.RENDERBUFFER,null)}function Se(L,x){if(x&&x.isWebGLCubeRenderTarget)throw new Error("Depth Texture with cube render targets is not supported");if(t.bindFramebuffer(i.FRAMEBUFFER,L),!(x.depthTexture&&x.depthTexture.isDepthTexture))throw new Error("renderTarget.depthTexture must be an instance of THREE.DepthTexture");const J=n.get(x.depthTexture);J.__renderTarget=x,(!J.__webglTexture||x.depthTexture.image.width!==x.width||x.depthTexture.image.height!==x.height)&&(x.depthTexture.image.width=x.width,x.depthTexture.image.height=x.height,x.depthTexture.needsUpdate=!0),k(x.depthTexture,0);const ie=J.__webglTexture,ne=Tt(x);if(x.depthTexture.format===ca)Pe(x)?o.framebufferTexture2DMultisampleEXT(i.FRAMEBUFFER,i.DEPTH_ATTACHMENT,i.TEXTURE_2D,ie,0,ne):i.framebufferTexture2D(i.FRAMEBUFFER,i.DEPTH_ATTACHMENT,i.TEXTURE_2D,ie,0);else if(x.depthTexture.format===ua)Pe(x)?o.framebufferTexture2DMultisampleEXT(i.FRAMEBUFFER,i.DEPTH_STENCIL_ATTACHMENT,i.TEXTURE_2D,ie,0,ne):i.framebufferTexture2D(i.FRAMEBUFFER,i.DEPTH_STENCIL_ATTACHMENT,i.TEXTURE_2D,ie,0);else throw new Error("Unknown depthTexture format")}function je(L){const x=n.get(L),z=L.isWebGLCubeRenderTarget===!0;if(x.__boundDepthTexture!==L.depthTexture){const J=L.depthTexture;if(x.__depthDisposeCallback&&x.__depthDisposeCallback(),J){const ie=()=>{delete x.__boundDepthTexture,delete x.__depthDisposeCallback,J.removeEventListener("dispose",ie)};J.addEventListener("dispose",ie),x.__depthDisposeCallback=ie}x.__boundDepthTexture=J}if(L.depthTexture&&!x.__autoAllocateDepthBuffer){if(z)throw new Error("target.depthTexture not supported in Cube render targets");const J=L.texture.mipmaps;J&&J.length>0?Se(x.__webglFramebuffer[0],L):Se(x.__webglFramebuffer,L)}else if(z){x.__webglDepthbuffer=[];for(let J=0;J<6;J++)if(t.bindFramebuffer(i.FRAMEBUFFER,x.__webglFramebuffer[J]),x.__webglDepthbuffer[J]===void 0)x.__webglDepthbuffer[J]=i.createRenderbuffer(),Ce(x.__webglDepthbuffer[J],L,!1);else{const ie=L.stencilBuffer?i.DEPTH_STENCIL_ATTACHMENT:i.DEPTH_ATTACHMENT,ne=x.__webglDepthbuffer[J];i.bindRenderbuffer(i.RENDERBUFFER,ne),i.framebufferRenderbuffer(i.FRAMEBUFFER,ie,i.RENDERBUFFER,ne)}}else{const J=L.texture.mipmaps;if(J&&J.length>0?t.bindFramebuffer(i.FRAMEBUFFER,x.__webglFramebuffer[0]):t.bindFramebuffer(i.FRAMEBUFFER,x.__webglFramebuffer),x.__webglDepthbuffer===void 0)x.__webglDepthbuffer=i.createRenderbuffer(),Ce(x.__webglDepthbuffer,L,!1);else{const ie=L.stencilBuffer?i.DEPTH_STENCIL_ATTACHMENT:i.DEPTH_ATTACHMENT,ne=x.__webglDepthbuffer;i.bindRenderbuffer(i.RENDERBUFFER,ne),i.framebufferRenderbuffer(i.FRAMEBUFFER,ie,i.RENDERBUFFER,ne)}}t.bindFramebuffer(i.FRAMEBUFFER,null)}function wt(L,x,z){const J=n.get(L);x!==void 0&&xe(J.__webglFramebuffer,L,L.texture,i.COLOR_ATTACHMENT0,i.TEXTURE_2D,0),z!==void 0&&je(L)}function B(L){const x=L.texture,z=n.get(L),J=n.get(x);L.addEventListener("dispose",D);const ie=L.textures,ne=L.isWebGLCubeRenderTarget===!0,Fe=ie.length>1;if(Fe||(J.__webglTexture===void 0&&(J.__webglTexture=i.createTexture()),J.__version=x.version,a.memory.textures++),ne){z.__webglFramebuffer=[];for(let pe=0;pe<6;pe++)if(x.mipmaps&&x.mipmaps.length>0){z.__webglFramebuffer[pe]=[];for(let Le=0;Le<x.mipmaps.length;Le++)z.__webglFramebuffer[pe][Le]=i.createFramebuffer()}else z.__webglFramebuffer[pe]=i.createFramebuffer()}else{if(x.mipmaps&&x.mipmaps.length>0){z.__webglFramebuffer=[];for(let pe=0;pe<x.mipmaps.length;pe++)z.__webglFramebuffer[pe]=i.createFramebuffer()}else z.__webglFramebuffer=i.createFramebuffer();if(Fe)for(let pe=0,Le=ie.length;pe<Le;pe++){const Ae=n.get(ie[pe]);Ae.__webglTexture===void 0&&(Ae.__webglTexture=i.createTexture(),a.memory.textures++)}if(L.samples>0&&Pe(L)===!1){z.__webglMultisampledFramebuffer=i.createFramebuffer(),z.__webglColorRenderbuffer=[],t.bindFramebuffer(i.FRAMEBUFFER,z.__webglMultisampledFramebuffer);for(let pe=0;pe<ie.length;pe++){const Le=ie[pe];z.__webglColorRenderbuffer[pe]=i.createRenderbuffer(),i.bindRenderbuffer(i.RENDERBUFFER,z.__webglColorRenderbuffer[pe]);const Ae=r.convert(Le.format,Le.colorSpace),le=r.convert(Le.type),Me=A(Le.internalFormat,Ae,le,Le.colorSpace,L.isXRRenderTarget===!0),ke=Tt(L);i.renderbufferStorageMultisample(i.RENDERBUFFER,ke,Me,L.width,L.height),i.framebufferRenderbuffer(i.FRAMEBUFFER,i.COLOR_ATTACHMENT0+pe,i.RENDERBUFFER,z.__webglColorRenderbuffer[pe])}i.bindRenderbuffer(i.RENDERBUFFER,null),L.depthBuffer&&(z.__webglDepthRenderbuffer=i.createRenderbuffer(),Ce(z.__webglDepthRenderbuffer,L,!0)),t.bindFramebuffer(i.FRAMEBUFFER,null)}}if(ne){t.bindTexture(i.TEXTURE_CUBE_MAP,J.__webglTexture),he(i.TEXTURE_CUBE_MAP,x);for(let pe=0;pe<6;pe++)if(x.mipmaps&&x.mipmaps.length>0)for(let Le=0;Le<x.mipmaps.length;Le++)xe(z.__webglFramebuffer[pe][Le],L,x,i.COLOR_ATTACHMENT0,i.TEXTURE_CUBE_MAP_POSITIVE_X+pe,Le);else xe(z.__webglFramebuffer[pe],L,x,i.COLOR_ATTACHMENT0,i.TEXTURE_CUBE_MAP_POSITIVE_X+pe,0);m(x)&&d(i.TEXTURE_CUBE_MAP),t.unbindTexture()}else if(Fe){for(let pe=0,Le=ie.length;pe<Le;pe++){const Ae=ie[pe],le=n.get(Ae);let Me=i.TEXTURE_2D;(L.isWebGL3DRenderTarget||L.isWebGLArrayRenderTarget)&&(Me=L.isWebGL3DRenderTarget?i.TEXTURE_3D:i.TEXTURE_2D_ARRAY),t.bindTexture(Me,le.__webglTexture),he(Me,Ae),xe(z.__webglFramebuffer,L,Ae,i.COLOR_ATTACHMENT0+pe,Me,0),m(Ae)&&d(Me)}t.unbindTexture()}else{let pe=i.TEXTURE_2D;if((L.isWebGL3DRenderTarget||L.isWebGLArrayRenderTarget)&&(pe=L.isWebGL3DRenderTarget?i.TEXTURE_3D:i.TEXTURE_2D_ARRAY),t.bindTexture(pe,J.__webglTexture),he(pe,x),x.mipmaps&&x.mipmaps.length>0)for(let Le=0;Le<x.mipmaps.length;Le++)xe(z.__webglFramebuffer[Le],L,x,i.COLOR_ATTACHMENT0,pe,Le);else xe(z.__webglFramebuffer,L,x,i.COLOR_ATTACHMENT0,pe,0);m(x)&&d(pe),t.unbindTexture()}L.depthBuffer&&je(L)}function pt(L){const x=L.textures;for(let z=0,J=x.length;z<J;z++){const ie=x[z];if(m(ie)){const ne=b(L),Fe=n.get(ie).__webglTexture;t.bindTexture(ne,Fe),d(ne),t.unbindTexture()}}}const Ze=[],Ge=[];function Ne(L){if(L.samples>0){if(Pe(L)===!1){const x=L.textures,z=L.width,J=L.height;let ie=i.COLOR_BUFFER_BIT;const ne=L.stencilBuffer?i.DEPTH_STENCIL_ATTACHMENT:i.DEPTH_ATTACHMENT,Fe=n.get(L),pe=x.length>1;if(pe)for(let Ae=0;Ae<x.length;Ae++)t.bindFramebuffer(i.FRAMEBUFFER,Fe.__webglMultisampledFramebuffer),i.framebufferRenderbuffer(i.FRAMEBUFFER,i.COLOR_ATTACHMENT0+Ae,i.RENDERBUFFER,null),t.bindFramebuffer(i.FRAMEBUFFER,Fe.__webglFramebuffer),i.framebufferTexture2D(i.DRAW_FRAMEBUFFER,i.COLOR_ATTACHMENT0+Ae,i.TEXTURE_2D,null,0);t.bindFramebuffer(i.READ_FRAMEBUFFER,Fe.__webglMultisampledFramebuffer);const Le=L.texture.mipmaps;Le&&Le.length>0?t.bindFramebuffer(i.DRAW_FRAMEBUFFER,Fe.__webglFramebuffer[0]):t.bindFramebuffer(i.DRAW_FRAMEBUFFER,Fe.__webglFramebuffer);for(let Ae=0;Ae<x.length;Ae++){if(L.resolveDepthBuffer&&(L.depthBuffer&&(ie|=i.DEPTH_BUFFER_BIT),L.stencilBuffer&&L.resolveStencilBuffer&&(ie|=i.STENCIL_BUFFER_BIT)),pe){i.framebufferRenderbuffer(i.READ_FRAMEBUFFER,i.COLOR_ATTACHMENT0,i.RENDERBUFFER,Fe.__webglColorRenderbuffer[Ae]);const le=n.get(x[Ae]).__webglTexture;i.framebufferTexture2D(i.DRAW_FRAMEBUFFER,i.COLOR_ATTACHMENT0,i.TEXTURE_2D,le,0)}i.blitFramebuffer(0,0,z,J,0,0,z,J,ie,i.NEAREST),l===!0&&(Ze.length=0,Ge.length=0,Ze.push(i.COLOR_ATTACHMENT0+Ae),L.depthBuffer&&L.resolveDepthBuffer===!1&&(Ze.push(ne),Ge.push(ne),i.invalidateFramebuffer(i.DRAW_FRAMEBUFFER,Ge)),i.invalidateFramebuffer(i.READ_FRAMEBUFFER,Ze))}if(t.bindFramebuffer(i.READ_FRAMEBUFFER,null),t.bindFramebuffer(i.DRAW_FRAMEBUFFER,null),pe)for(let Ae=0;Ae<x.length;Ae++){t.bindFramebuffer(i.FRAMEBUFFER,Fe.__webglMultisampledFramebuffer),i.framebufferRenderbuffer(i.FRAMEBUFFER,i.COLOR_ATTACHMENT0+Ae,i.RENDERBUFFER,Fe.__webglColorRenderbuffer[Ae]);const le=n.get(x[Ae]).__webglTexture;t.bindFramebuffer(i.FRAMEBUFFER,Fe.__webglFramebuffer),i.framebufferTexture2D(i.DRAW_FRAMEBUFFER,i.COLOR_ATTACHMENT0+Ae,i.TEXTURE_2D,le,0)}t.bindFramebuffer(i.DRAW_FRAMEBUFFER,Fe.__webglMultisampledFramebuffer)}else if(L.depthBuffer&&L.resolveDepthBuffer===!1&&l){const x=L.stencilBuffer?i.DEPTH_STENCIL_ATTACHMENT:i.DEPTH_ATTACHMENT;i.invalidateFramebuffer(i.DRAW_FRAMEBUFFER,[x])}}}function Tt(L){return Math.min(s.maxSamples,L.samples)}function Pe(L){const x=n.get(L);return L.samples>0&&e.has("WEBGL_multisampled_render_to_texture")===!0&&x.__useRenderToTexture!==!1}function Ve(L){const x=a.render.frame;f.get(L)!==x&&(f.set(L,x),L.update())}function kt(L,x){const z=L.colorSpace,J=L.format,ie=L.type;return L.isCompressedTexture===!0||L.isVideoTexture===!0||z!==wr&&z!==ss&&(vt.getTransfer(z)===Pt?(J!==mi||ie!==Ri)&&console.warn("THREE.WebGLTextures: sRGB encoded textures have to use RGBAFormat and UnsignedByteType."):console.error("THREE.WebGLTextures: Unsupported texture color space:",z)),x}function Mt(L){return typeof HTMLImageElement<"u"&&L instanceof HTMLImageElement?(c.width=L.naturalWidth||L.width,c.height=L.naturalHeight||L.height):typeof VideoFrame<"u"&&L instanceof VideoFrame?(c.width=L.displayWidth,c.height=L.displayHeight):(c.width=L.width,c.height=L.height),c}this.allocateTextureUnit=I,this.resetTextureUnits=P,this.setTexture2D=k,this.setTexture2DArray=X,this.setTexture3D=$,this.setTextureCube=K,this.rebindTextures=wt,this.setupRenderTarget=B,this.updateRenderTargetMipmap=pt,this.updateMultisampleRenderTarget=Ne,this.setupDepthRenderbuffer=je,this.setupFrameBufferTexture=xe,this.useMultisampledRTT=Pe}function OS(i,e){function t(n,s=ss){let r;const a=vt.getTransfer(s);if(n===Ri)return i.UNSIGNED_BYTE;if(n===lu)return i.UNSIGNED_SHORT_4_4_4_4;if(n===cu)return i.UNSIGNED_SHORT_5_5_5_1;if(n===Od)return i.UNSIGNED_INT_5_9_9_9_REV;if(n===Bd)return i.UNSIGNED_INT_10F_11F_11F_REV;if(n===Nd)return i.BYTE;if(n===Fd)return i.SHORT;if(n===oa)return i.UNSIGNED_SHORT;if(n===ou)return i.INT;if(n===Is)return i.UNSIGNED_INT;if(n===zi)return i.FLOAT;if(n===ma)return i.HALF_FLOAT;if(n===kd)return i.ALPHA;if(n===zd)return i.RGB;if(n===mi)return i.RGBA;if(n===ca)return i.DEPTH_COMPONENT;if(n===ua)return i.DEPTH_STENCIL;if(n===Hd)return i.RED;if(n===uu)return i.RED_INTEGER;if(n===Vd)return i.RG;if(n===hu)return i.RG_INTEGER;if(n===fu)return i.RGBA_INTEGER;if(n===oo||n===lo||n===co||n===uo)if(a===Pt)if(r=e.get("WEBGL_compressed_texture_s3tc_srgb"),r!==null){if(n===oo)return r.COMPRESSED_SRGB_S3TC_DXT1_EXT;if(n===lo)return r.COMPRESSED_SRGB_ALPHA_S3TC_DXT1_EXT;if(n===co)return r.COMPRESSED_SRGB_ALPHA_S3TC_DXT3_EXT;if(n===uo)return r.COMPRESSED_SRGB_ALPHA_S3TC_DXT5_EXT}else return null;else if(r=e.get("WEBGL_compressed_texture_s3tc"),r!==null){if(n===oo)return r.COMPRESSED_RGB_S3TC_DXT1_EXT;if(n===lo)return r.COMPRESSED_RGBA_S3TC_DXT1_EXT;if(n===co)return r.COMPRESSED_RGBA_S3TC_DXT3_EXT;if(n===uo)return r.COMPRESSED_RGBA_S3TC_DXT5_EXT}else return null;if(n===uc||n===hc||n===fc||n===dc)if(r=e.get("WEBGL_compressed_texture_pvrtc"),r!==null){if(n===uc)return r.COMPRESSED_RGB_PVRTC_4BPPV1_IMG;if(n===hc)return r.COMPRESSED_RGB_PVRTC_2BPPV1_IMG;if(n===fc)return r.COMPRESSED_RGBA_PVRTC_4BPPV1_IMG;if(n===dc)return r.COMPRESSED_RGBA_PVRTC_2BPPV1_IMG}else return null;if(n===pc||n===mc||n===gc)if(r=e.get("WEBGL_compressed_texture_etc"),r!==null){if(n===pc||n===mc)return a===Pt?r.COMPRESSED_SRGB8_ETC2:r.COMPRESSED_RGB8_ETC2;if(n===gc)return a===Pt?r.COMPRESSED_SRGB8_ALPHA8_ETC2_EAC:r.COMPRESSED_RGBA8_ETC2_EAC}else return null;if(n===_c||n===vc||n===xc||n===Mc||n===Sc||n===yc||n===Ec||n===bc||n===wc||n===Tc||n===Ac||n===Rc||n===Cc||n===Pc)if(r=e.get("WEBGL_compressed_texture_astc"),r!==null){if(n===_c)return a===Pt?r.COMPRESSED_SRGB8_ALPHA8_ASTC_4x4_KHR:r.COMPRESSED_RGBA_ASTC_4x4_KHR;if(n===vc)return a===Pt?r.COMPRESSED_SRGB8_ALPHA8_ASTC_5x4_KHR:r.COMPRESSED_RGBA_ASTC_5x4_KHR;if(n===xc)return a===Pt?r.COMPRESSED_SRGB8_ALPHA8_ASTC_5x5_KHR:r.COMPRESSED_RGBA_ASTC_5x5_KHR;if(n===Mc)return a===Pt?r.COMPRESSED_SRGB8_ALPHA8_ASTC_6x5_KHR:r.COMPRESSED_RGBA_ASTC_6x5_KHR;if(n===Sc)return a===Pt?r.COMPRESSED_SRGB8_ALPHA8_ASTC_6x6_KHR:r.COMPRESSED_RGBA_ASTC_6x6_KHR;if(n===yc)return a===Pt?r.COMPRESSED_SRGB8_ALPHA8_ASTC_8x5_KHR:r.COMPRESSED_RGBA_ASTC_8x5_KHR;if(n===Ec)return a===Pt?r.COMPRESSED_SRGB8_ALPHA8_ASTC_8x6_KHR:r.COMPRESSED_RGBA_ASTC_8x6_KHR;if(n===bc)return a===Pt?r.COMPRESSED_SRGB8_ALPHA8_ASTC_8x8_KHR:r.COMPRESSED_RGBA_ASTC_8x8_KHR;if(n===wc)return a===Pt?r.COMPRESSED_SRGB8_ALPHA8_ASTC_10x5_KHR:r.COMPRESSED_RGBA_ASTC_10x5_KHR;if(n===Tc)return a===Pt?r.COMPRESSED_SRGB8_ALPHA8_ASTC_10x6_KHR:r.COMPRESSED_RGBA_ASTC_10x6_KHR;if(n===Ac)return a===Pt?r.COMPRESSED_SRGB8_ALPHA8_ASTC_10x8_KHR:r.COMPRESSED_RGBA_ASTC_10x8_KHR;if(n===Rc)return a===Pt?r.COMPRESSED_SRGB8_ALPHA8_ASTC_10x10_KHR:r.COMPRESSED_RGBA_ASTC_10x10_KHR;if(n===Cc)return a===Pt?r.COMPRESSED_SRGB8_ALPHA8_ASTC_12x10_KHR:r.COMPRESSED_RGBA_ASTC_12x10_KHR;if(n===Pc)return a===Pt?r.COMPRESSED_SRGB8_ALPHA8_ASTC_12x12_KHR:r.COMPRESSED_RGBA_ASTC_12x12_KHR}else return null;if(n===Dc||n===Lc||n===Uc)if(r=e.get("EXT_texture_compression_bptc"),r!==null){if(n===Dc)return a===Pt?r.COMPRESSED_SRGB_ALPHA_BPTC_UNORM_EXT:r.COMPRESSED_RGBA_BPTC_UNORM_EXT;if(n===Lc)return r.COMPRESSED_RGB_BPTC_SIGNED_FLOAT_EXT;if(n===Uc)return r.COMPRESSED_RGB_BPTC_UNSIGNED_FLOAT_EXT}else return null;if(n===Ic||n===Nc||n===Fc||n===Oc)if(r=e.get("EXT_texture_compression_rgtc"),r!==null){if(n===Ic)return r.COMPRESSED_RED_RGTC1_EXT;if(n===Nc)return r.COMPRESSED_SIGNED_RED_RGTC1_EXT;if(n===Fc)return r.COMPRESSED_RED_GREEN_RGTC2_EXT;if(n===Oc)return r.COMPRESSED_SIGNED_RED_GREEN_RGTC2_EXT}else return null;return n===la?i.UNSIGNED_INT_24_8:i[n]!==void 0?i[n]:null}return{convert:t}}const BS=`
void main() {

	gl_Position = vec4( position, 1.0 );

}`,kS=`
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

}`;class zS{constructor(){this.texture=null,this.mesh=null,this.depthNear=0,this.depthFar=0}init(e,t){if(this.texture===null){const n=new tp(e.texture);(e.depthNear!==t.depthNear||e.depthFar!==t.depthFar)&&(this.depthNear=e.depthNear,this.depthFar=e.depthFar),this.texture=n}}getMesh(e){if(this.texture!==null&&this.mesh===null){const t=e.cameras[0].viewport,n=new us({vertexShader:BS,fragmentShader:kS,uniforms:{depthColor:{value:this.texture},depthWidth:{value:t.z},depthHeight:{value:t.w}}});this.mesh=new _n(new Oo(20,20),n)}return this.mesh}reset(){this.texture=null,this.mesh=null}getDepthTexture(){return this.texture}}class HS extends Bs{constructor(e,t){super();const n=this;let s=null,r=1,a=null,o="local-floor",l=1,c=null,f=null,u=null,h=null,p=null,v=null;const M=typeof XRWebGLBinding<"u",m=new zS,d={},b=t.getContextAttributes();let A=null,E=null;const F=[],C=[],D=new nt;let O=null;const T=new si;T.viewport=new $t;const g=new si;g.viewport=new $t;const S=[T,g],P=new a0;let I=null,V=null;this.cameraAutoUpdate=!0,this.enabled=!1,this.isPresenting=!1,this.getController=function(ee){let te=F[ee];return te===void 0&&(te=new Al,F[ee]=te),te.getTargetRaySpace()},this.getControllerGrip=function(ee){let te=F[ee];return te===void 0&&(te=new Al,F[ee]=te),te.getGripSpace()},this.getHand=function(ee){let te=F[ee];return te===void 0&&(te=new Al,F[ee]=te),te.getHandSpace()};function k(ee){const te=C.indexOf(ee.inputSource);if(te===-1)return;const xe=F[te];xe!==void 0&&(xe.update(ee.inputSource,ee.frame,c||a),xe.dispatchEvent({type:ee.type,data:ee.inputSource}))}function X(){s.removeEventListener("select",k),s.removeEventListener("selectstart",k),s.removeEventListener("selectend",k),s.removeEventListener("squeeze",k),s.removeEventListener("squeezestart",k),s.removeEventListener("squeezeend",k),s.removeEventListener("end",X),s.removeEventListener("inputsourceschange",$);for(let ee=0;ee<F.length;ee++){const te=C[ee];te!==null&&(C[ee]=null,F[ee].disconnect(te))}I=null,V=null,m.reset();for(const ee in d)delete d[ee];e.setRenderTarget(A),p=null,h=null,u=null,s=null,E=null,Ke.stop(),n.isPresenting=!1,e.setPixelRatio(O),e.setSize(D.width,D.height,!1),n.dispatchEvent({type:"sessionend"})}this.setFramebufferScaleFactor=function(ee){r=ee,n.isPresenting===!0&&console.warn("THREE.WebXRManager: Cannot change framebuffer scale while presenting.")},this.setReferenceSpaceType=function(ee){o=ee,n.isPresenting===!0&&console.warn("THREE.WebXRManager: Cannot change reference space type while presenting.")},this.getReferenceSpace=function(){return c||a},this.setReferenceSpace=function(ee){c=ee},this.getBaseLayer=function(){return h!==null?h:p},this.getBinding=function(){return u===null&&M&&(u=new XRWebGLBinding(s,t)),u},this.getFrame=function(){return v},this.getSession=function(){return s},this.setSession=async function(ee){if(s=ee,s!==null){if(A=e.getRenderTarget(),s.addEventListener("select",k),s.addEventListener("selectstart",k),s.addEventListener("selectend",k),s.addEventListener("squeeze",k),s.addEventListener("squeezestart",k),s.addEventListener("squeezeend",k),s.addEventListener("end",X),s.addEventListener("inputsourceschange",$),b.xrCompatible!==!0&&await t.makeXRCompatible(),O=e.getPixelRatio(),e.getSize(D),M&&"createProjectionLayer"in XRWebGLBinding.prototype){let xe=null,Ce=null,Se=null;b.depth&&(Se=b.stencil?t.DEPTH24_STENCIL8:t.DEPTH_COMPONENT24,xe=b.stencil?ua:ca,Ce=b.stencil?la:Is);const je={colorFormat:t.RGBA8,depthFormat:Se,scaleFactor:r};u=this.getBinding(),h=u.createProjectionLayer(je),s.updateRenderState({layers:[h]}),e.setPixelRatio(1),e.setSize(h.textureWidth,h.textureHeight,!1),E=new Fs(h.textureWidth,h.textureHeight,{format:mi,type:Ri,depthTexture:new ep(h.textureWidth,h.textureHeight,Ce,void 0,void 0,void 0,void 0,void 0,void 0,xe),stencilBuffer:b.stencil,colorSpace:e.outputColorSpace,samples:b.antialias?4:0,resolveDepthBuffer:h.ignoreDepthValues===!1,resolveStencilBuffer:h.ignoreDepthValues===!1})}else{const xe={antialias:b.antialias,alpha:!0,depth:b.depth,stencil:b.stencil,framebufferScaleFactor:r};p=new XRWebGLLayer(s,t,xe),s.updateRenderState({baseLayer:p}),e.setPixelRatio(1),e.setSize(p.framebufferWidth,p.framebufferHeight,!1),E=new Fs(p.framebufferWidth,p.framebufferHeight,{format:mi,type:Ri,colorSpace:e.outputColorSpace,stencilBuffer:b.stencil,resolveDepthBuffer:p.ignoreDepthValues===!1,resolveStencilBuffer:p.ignoreDepthValues===!1})}E.isXRRenderTarget=!0,this.setFoveation(l),c=null,a=await s.requestReferenceSpace(o),Ke.setContext(s),Ke.start(),n.isPresenting=!0,n.dispatchEvent({type:"sessionstart"})}},this.getEnvironmentBlendMode=function(){if(s!==null)return s.environmentBlendMode},this.getDepthTexture=function(){return m.getDepthTexture()};function $(ee){for(let te=0;te<ee.removed.length;te++){const xe=ee.removed[te],Ce=C.indexOf(xe);Ce>=0&&(C[Ce]=null,F[Ce].disconnect(xe))}for(let te=0;te<ee.added.length;te++){const xe=ee.added[te];let Ce=C.indexOf(xe);if(Ce===-1){for(let je=0;je<F.length;je++)if(je>=C.length){C.push(xe),Ce=je;break}else if(C[je]===null){C[je]=xe,Ce=je;break}if(Ce===-1)break}const Se=F[Ce];Se&&Se.connect(xe)}}const K=new H,re=new H;function oe(ee,te,xe){K.setFromMatrixPosition(te.matrixWorld),re.setFromMatrixPosition(xe.matrixWorld);const Ce=K.distanceTo(re),Se=te.projectionMatrix.elements,je=xe.projectionMatrix.elements,wt=Se[14]/(Se[10]-1),B=Se[14]/(Se[10]+1),pt=(Se[9]+1)/Se[5],Ze=(Se[9]-1)/Se[5],Ge=(Se[8]-1)/Se[0],Ne=(je[8]+1)/je[0],Tt=wt*Ge,Pe=wt*Ne,Ve=Ce/(-Ge+Ne),kt=Ve*-Ge;if(te.matrixWorld.decompose(ee.position,ee.quaternion,ee.scale),ee.translateX(kt),ee.translateZ(Ve),ee.matrixWorld.compose(ee.position,ee.quaternion,ee.scale),ee.matrixWorldInverse.copy(ee.matrixWorld).invert(),Se[10]===-1)ee.projectionMatrix.copy(te.projectionMatrix),ee.projectionMatrixInverse.copy(te.projectionMatrixInverse);else{const Mt=wt+Ve,L=B+Ve,x=Tt-kt,z=Pe+(Ce-kt),J=pt*B/L*Mt,ie=Ze*B/L*Mt;ee.projectionMatrix.makePerspective(x,z,J,ie,Mt,L),ee.projectionMatrixInverse.copy(ee.projectionMatrix).invert()}}function ue(ee,te){te===null?ee.matrixWorld.copy(ee.matrix):ee.matrixWorld.multiplyMatrices(te.matrixWorld,ee.matrix),ee.matrixWorldInverse.copy(ee.matrixWorld).invert()}this.updateCamera=function(ee){if(s===null)return;let te=ee.near,xe=ee.far;m.texture!==null&&(m.depthNear>0&&(te=m.depthNear),m.depthFar>0&&(xe=m.depthFar)),P.near=g.near=T.near=te,P.far=g.far=T.far=xe,(I!==P.near||V!==P.far)&&(s.updateRenderState({depthNear:P.near,depthFar:P.far}),I=P.near,V=P.far),P.layers.mask=ee.layers.mask|6,T.layers.mask=P.layers.mask&3,g.layers.mask=P.layers.mask&5;const Ce=ee.parent,Se=P.cameras;ue(P,Ce);for(let je=0;je<Se.length;je++)ue(Se[je],Ce);Se.length===2?oe(P,T,g):P.projectionMatrix.copy(T.projectionMatrix),he(ee,P,Ce)};function he(ee,te,xe){xe===null?ee.matrix.copy(te.matrixWorld):(ee.matrix.copy(xe.matrixWorld),ee.matrix.invert(),ee.matrix.multiply(te.matrixWorld)),ee.matrix.decompose(ee.position,ee.quaternion,ee.scale),ee.updateMatrixWorld(!0),ee.projectionMatrix.copy(te.projectionMatrix),ee.projectionMatrixInverse.copy(te.projectionMatrixInverse),ee.isPerspectiveCamera&&(ee.fov=Bc*2*Math.atan(1/ee.projectionMatrix.elements[5]),ee.zoom=1)}this.getCamera=function(){return P},this.getFoveation=function(){if(!(h===null&&p===null))return l},this.setFoveation=function(ee){l=ee,h!==null&&(h.fixedFoveation=ee),p!==null&&p.fixedFoveation!==void 0&&(p.fixedFoveation=ee)},this.hasDepthSensing=function(){return m.texture!==null},this.getDepthSensingMesh=function(){return m.getMesh(P)},this.getCameraTexture=function(ee){return d[ee]};let fe=null;function $e(ee,te){if(f=te.getViewerPose(c||a),v=te,f!==null){const xe=f.views;p!==null&&(e.setRenderTargetFramebuffer(E,p.framebuffer),e.setRenderTarget(E));let Ce=!1;xe.length!==P.cameras.length&&(P.cameras.length=0,Ce=!0);for(let B=0;B<xe.length;B++){const pt=xe[B];let Ze=null;if(p!==null)Ze=p.getViewport(pt);else{const Ne=u.getViewSubImage(h,pt);Ze=Ne.viewport,B===0&&(e.setRenderTargetTextures(E,Ne.colorTexture,Ne.depthStencilTexture),e.setRenderTarget(E))}let Ge=S[B];Ge===void 0&&(Ge=new si,Ge.layers.enable(B),Ge.viewport=new $t,S[B]=Ge),Ge.matrix.fromArray(pt.transform.matrix),Ge.matrix.decompose(Ge.position,Ge.quaternion,Ge.scale),Ge.projectionMatrix.fromArray(pt.projectionMatrix),Ge.projectionMatrixInverse.copy(Ge.projectionMatrix).invert(),Ge.viewport.set(Ze.x,Ze.y,Ze.width,Ze.height),B===0&&(P.matrix.copy(Ge.matrix),P.matrix.decompose(P.position,P.quaternion,P.scale)),Ce===!0&&P.cameras.push(Ge)}const Se=s.enabledFeatures;if(Se&&Se.includes("depth-sensing")&&s.depthUsage=="gpu-optimized"&&M){u=n.getBinding();const B=u.getDepthInformation(xe[0]);B&&B.isValid&&B.texture&&m.init(B,s.renderState)}if(Se&&Se.includes("camera-access")&&M){e.state.unbindTexture(),u=n.getBinding();for(let B=0;B<xe.length;B++){const pt=xe[B].camera;if(pt){let Ze=d[pt];Ze||(Ze=new tp,d[pt]=Ze);const Ge=u.getCameraImage(pt);Ze.sourceTexture=Ge}}}}for(let xe=0;xe<F.length;xe++){const Ce=C[xe],Se=F[xe];Ce!==null&&Se!==void 0&&Se.update(Ce,te,c||a)}fe&&fe(ee,te),te.detectedPlanes&&n.dispatchEvent({type:"planesdetected",data:te}),v=null}const Ke=new rp;Ke.setAnimationLoop($e),this.setAnimationLoop=function(ee){fe=ee},this.dispose=function(){}}}const ys=new Ci,VS=new Xt;function GS(i,e){function t(m,d){m.matrixAutoUpdate===!0&&m.updateMatrix(),d.value.copy(m.matrix)}function n(m,d){d.color.getRGB(m.fogColor.value,Kd(i)),d.isFog?(m.fogNear.value=d.near,m.fogFar.value=d.far):d.isFogExp2&&(m.fogDensity.value=d.density)}function s(m,d,b,A,E){d.isMeshBasicMaterial||d.isMeshLambertMaterial?r(m,d):d.isMeshToonMaterial?(r(m,d),u(m,d)):d.isMeshPhongMaterial?(r(m,d),f(m,d)):d.isMeshStandardMaterial?(r(m,d),h(m,d),d.isMeshPhysicalMaterial&&p(m,d,E)):d.isMeshMatcapMaterial?(r(m,d),v(m,d)):d.isMeshDepthMaterial?r(m,d):d.isMeshDistanceMaterial?(r(m,d),M(m,d)):d.isMeshNormalMaterial?r(m,d):d.isLineBasicMaterial?(a(m,d),d.isLineDashedMaterial&&o(m,d)):d.isPointsMaterial?l(m,d,b,A):d.isSpriteMaterial?c(m,d):d.isShadowMaterial?(m.color.value.copy(d.color),m.opacity.value=d.opacity):d.isShaderMaterial&&(d.uniformsNeedUpdate=!1)}function r(m,d){m.opacity.value=d.opacity,d.color&&m.diffuse.value.copy(d.color),d.emissive&&m.emissive.value.copy(d.emissive).multiplyScalar(d.emissiveIntensity),d.map&&(m.map.value=d.map,t(d.map,m.mapTransform)),d.alphaMap&&(m.alphaMap.value=d.alphaMap,t(d.alphaMap,m.alphaMapTransform)),d.bumpMap&&(m.bumpMap.value=d.bumpMap,t(d.bumpMap,m.bumpMapTransform),m.bumpScale.value=d.bumpScale,d.side===Bn&&(m.bumpScale.value*=-1)),d.normalMap&&(m.normalMap.value=d.normalMap,t(d.normalMap,m.normalMapTransform),m.normalScale.value.copy(d.normalScale),d.side===Bn&&m.normalScale.value.negate()),d.displacementMap&&(m.displacementMap.value=d.displacementMap,t(d.displacementMap,m.displacementMapTransform),m.displacementScale.value=d.displacementScale,m.displacementBias.value=d.displacementBias),d.emissiveMap&&(m.emissiveMap.value=d.emissiveMap,t(d.emissiveMap,m.emissiveMapTransform)),d.specularMap&&(m.specularMap.value=d.specularMap,t(d.specularMap,m.specularMapTransform)),d.alphaTest>0&&(m.alphaTest.value=d.alphaTest);const b=e.get(d),A=b.envMap,E=b.envMapRotation;A&&(m.envMap.value=A,ys.copy(E),ys.x*=-1,ys.y*=-1,ys.z*=-1,A.isCubeTexture&&A.isRenderTargetTexture===!1&&(ys.y*=-1,ys.z*=-1),m.envMapRotation.value.setFromMatrix4(VS.makeRotationFromEuler(ys)),m.flipEnvMap.value=A.isCubeTexture&&A.isRenderTargetTexture===!1?-1:1,m.reflectivity.value=d.reflectivity,m.ior.value=d.ior,m.refractionRatio.value=d.refractionRatio),d.lightMap&&(m.lightMap.value=d.lightMap,m.lightMapIntensity.value=d.lightMapIntensity,t(d.lightMap,m.lightMapTransform)),d.aoMap&&(m.aoMap.value=d.aoMap,m.aoMapIntensity.value=d.aoMapIntensity,t(d.aoMap,m.aoMapTransform))}function a(m,d){m.diffuse.value.copy(d.color),m.opacity.value=d.opacity,d.map&&(m.map.value=d.map,t(d.map,m.mapTransform))}function o(m,d){m.dashSize.value=d.dashSize,m.totalSize.value=d.dashSize+d.gapSize,m.scale.value=d.scale}function l(m,d,b,A){m.diffuse.value.copy(d.color),m.opacity.value=d.opacity,m.size.value=d.size*b,m.scale.value=A*.5,d.map&&(m.map.value=d.map,t(d.map,m.uvTransform)),d.alphaMap&&(m.alphaMap.value=d.alphaMap,t(d.alphaMap,m.alphaMapTransform)),d.alphaTest>0&&(m.alphaTest.value=d.alphaTest)}function c(m,d){m.diffuse.value.copy(d.color),m.opacity.value=d.opacity,m.rotation.value=d.rotation,d.map&&(m.map.value=d.map,t(d.map,m.mapTransform)),d.alphaMap&&(m.alphaMap.value=d.alphaMap,t(d.alphaMap,m.alphaMapTransform)),d.alphaTest>0&&(m.alphaTest.value=d.alphaTest)}function f(m,d){m.specular.value.copy(d.specular),m.shininess.value=Math.max(d.shininess,1e-4)}function u(m,d){d.gradientMap&&(m.gradientMap.value=d.gradientMap)}function h(m,d){m.metalness.value=d.metalness,d.metalnessMap&&(m.metalnessMap.value=d.metalnessMap,t(d.metalnessMap,m.metalnessMapTransform)),m.roughness.value=d.roughness,d.roughnessMap&&(m.roughnessMap.value=d.roughnessMap,t(d.roughnessMap,m.roughnessMapTransform)),d.envMap&&(m.envMapIntensity.value=d.envMapIntensity)}function p(m,d,b){m.ior.value=d.ior,d.sheen>0&&(m.sheenColor.value.copy(d.sheenColor).multiplyScalar(d.sheen),m.sheenRoughness.value=d.sheenRoughness,d.sheenColorMap&&(m.sheenColorMap.value=d.sheenColorMap,t(d.sheenColorMap,m.sheenColorMapTransform)),d.sheenRoughnessMap&&(m.sheenRoughnessMap.value=d.sheenRoughnessMap,t(d.sheenRoughnessMap,m.sheenRoughnessMapTransform))),d.clearcoat>0&&(m.clearcoat.value=d.clearcoat,m.clearcoatRoughness.value=d.clearcoatRoughness,d.clearcoatMap&&(m.clearcoatMap.value=d.clearcoatMap,t(d.clearcoatMap,m.clearcoatMapTransform)),d.clearcoatRoughnessMap&&(m.clearcoatRoughnessMap.value=d.clearcoatRoughnessMap,t(d.clearcoatRoughnessMap,m.clearcoatRoughnessMapTransform)),d.clearcoatNormalMap&&(m.clearcoatNormalMap.value=d.clearcoatNormalMap,t(d.clearcoatNormalMap,m.clearcoatNormalMapTransform),m.clearcoatNormalScale.value.copy(d.clearcoatNormalScale),d.side===Bn&&m.clearcoatNormalScale.value.negate())),d.dispersion>0&&(m.dispersion.value=d.dispersion),d.iridescence>0&&(m.iridescence.value=d.iridescence,m.iridescenceIOR.value=d.iridescenceIOR,m.iridescenceThicknessMinimum.value=d.iridescenceThicknessRange[0],m.iridescenceThicknessMaximum.value=d.iridescenceThicknessRange[1],d.iridescenceMap&&(m.iridescenceMap.value=d.iridescenceMap,t(d.iridescenceMap,m.iridescenceMapTransform)),d.iridescenceThicknessMap&&(m.iridescenceThicknessMap.value=d.iridescenceThicknessMap,t(d.iridescenceThicknessMap,m.iridescenceThicknessMapTransform))),d.transmission>0&&(m.transmission.value=d.transmission,m.transmissionSamplerMap.value=b.texture,m.transmissionSamplerSize.value.set(b.width,b.height),d.transmissionMap&&(m.transmissionMap.value=d.transmissionMap,t(d.transmissionMap,m.transmissionMapTransform)),m.thickness.value=d.thickness,d.thicknessMap&&(m.thicknessMap.value=d.thicknessMap,t(d.thicknessMap,m.thicknessMapTransform)),m.attenuationDistance.value=d.attenuationDistance,m.attenuationColor.value.copy(d.attenuationColor)),d.anisotropy>0&&(m.anisotropyVector.value.set(d.anisotropy*Math.cos(d.anisotropyRotation),d.anisotropy*Math.sin(d.anisotropyRotation)),d.anisotropyMap&&(m.anisotropyMap.value=d.anisotropyMap,t(d.anisotropyMap,m.anisotropyMapTransform))),m.specularIntensity.value=d.specularIntensity,m.specularColor.value.copy(d.specularColor),d.specularColorMap&&(m.specularColorMap.value=d.specularColorMap,t(d.specularColorMap,m.specularColorMapTransform)),d.specularIntensityMap&&(m.specularIntensityMap.value=d.specularIntensityMap,t(d.specularIntensityMap,m.specularIntensityMapTransform))}function v(m,d){d.matcap&&(m.matcap.value=d.matcap)}function M(m,d){const b=e.get(d).light;m.referencePosition.value.setFromMatrixPosition(b.matrixWorld),m.nearDistance.value=b.shadow.camera.near,m.farDistance.value=b.shadow.camera.far}return{refreshFogUniforms:n,refreshMaterialUniforms:s}}function WS(i,e,t,n){let s={},r={},a=[];const o=i.getParameter(i.MAX_UNIFORM_BUFFER_BINDINGS);function l(b,A){const E=A.program;n.uniformBlockBinding(b,E)}function c(b,A){let E=s[b.id];E===void 0&&(v(b),E=f(b),s[b.id]=E,b.addEventListener("dispose",m));const F=A.program;n.updateUBOMapping(b,F);const C=e.render.frame;r[b.id]!==C&&(h(b),r[b.id]=C)}function f(b){const A=u();b.__bindingPointIndex=A;const E=i.createBuffer(),F=b.__size,C=b.usage;return i.bindBuffer(i.UNIFORM_BUFFER,E),i.bufferData(i.UNIFORM_BUFFER,F,C),i.bindBuffer(i.UNIFORM_BUFFER,null),i.bindBufferBase(i.UNIFORM_BUFFER,A,E),E}function u(){for(let b=0;b<o;b++)if(a.indexOf(b)===-1)return a.push(b),b;return console.error("THREE.WebGLRenderer: Maximum number of simultaneously usable uniforms groups reached."),0}function h(b){const A=s[b.id],E=b.uniforms,F=b.__cache;i.bindBuffer(i.UNIFORM_BUFFER,A);for(let C=0,D=E.length;C<D;C++){const O=Array.isArray(E[C])?E[C]:[E[C]];for(let T=0,g=O.length;T<g;T++){const S=O[T];if(p(S,C,T,F)===!0){const P=S.__offset,I=Array.isArray(S.value)?S.value:[S.value];let V=0;for(let k=0;k<I.length;k++){const X=I[k],$=M(X);typeof X=="number"||typeof X=="boolean"?(S.__data[0]=X,i.bufferSubData(i.UNIFORM_BUFFER,P+V,S.__data)):X.isMatrix3?(S.__data[0]=X.elements[0],S.__data[1]=X.elements[1],S.__data[2]=X.elements[2],S.__data[3]=0,S.__data[4]=X.elements[3],S.__data[5]=X.elements[4],S.__data[6]=X.elements[5],S.__data[7]=0,S.__data[8]=X.elements[6],S.__data[9]=X.elements[7],S.__data[10]=X.elements[8],S.__data[11]=0):(X.toArray(S.__data,V),V+=$.storage/Float32Array.BYTES_PER_ELEMENT)}i.bufferSubData(i.UNIFORM_BUFFER,P,S.__data)}}}i.bindBuffer(i.UNIFORM_BUFFER,null)}function p(b,A,E,F){const C=b.value,D=A+"_"+E;if(F[D]===void 0)return typeof C=="number"||typeof C=="boolean"?F[D]=C:F[D]=C.clone(),!0;{const O=F[D];if(typeof C=="number"||typeof C=="boolean"){if(O!==C)return F[D]=C,!0}else if(O.equals(C)===!1)return O.copy(C),!0}return!1}function v(b){const A=b.uniforms;let E=0;const F=16;for(let D=0,O=A.length;D<O;D++){const T=Array.isArray(A[D])?A[D]:[A[D]];for(let g=0,S=T.length;g<S;g++){const P=T[g],I=Array.isArray(P.value)?P.value:[P.value];for(let V=0,k=I.length;V<k;V++){const X=I[V],$=M(X),K=E%F,re=K%$.boundary,oe=K+re;E+=re,oe!==0&&F-oe<$.storage&&(E+=F-oe),P.__data=new Float32Array($.storage/Float32Array.BYTES_PER_ELEMENT),P.__offset=E,E+=$.storage}}}const C=E%F;return C>0&&(E+=F-C),b.__size=E,b.__cache={},this}function M(b){const A={boundary:0,storage:0};return typeof b=="number"||typeof b=="boolean"?(A.boundary=4,A.storage=4):b.isVector2?(A.boundary=8,A.storage=8):b.isVector3||b.isColor?(A.boundary=16,A.storage=12):b.isVector4?(A.boundary=16,A.storage=16):b.isMatrix3?(A.boundary=48,A.storage=48):b.isMatrix4?(A.boundary=64,A.storage=64):b.isTexture?console.warn("THREE.WebGLRenderer: Texture samplers can not be part of an uniforms group."):console.warn("THREE.WebGLRenderer: Unsupported uniform value type.",b),A}function m(b){const A=b.target;A.removeEventListener("dispose",m);const E=a.indexOf(A.__bindingPointIndex);a.splice(E,1),i.deleteBuffer(s[A.id]),delete s[A.id],delete r[A.id]}function d(){for(const b in s)i.deleteBuffer(s[b]);a=[],s={},r={}}return{bind:l,update:c,dispose:d}}class XS{constructor(e={}){const{canvas:t=y_(),context:n=null,depth:s=!0,stencil:r=!1,alpha:a=!1,antialias:o=!1,premultipliedAlpha:l=!0,preserveDrawingBuffer:c=!1,powerPreference:f="default",failIfMajorPerformanceCaveat:u=!1,reversedDepthBuffer:h=!1}=e;this.isWebGLRenderer=!0;let p;if(n!==null){if(typeof WebGLRenderingContext<"u"&&n instanceof WebGLRenderingContext)throw new Error("THREE.WebGLRenderer: WebGL 1 is not supported since r163.");p=n.getContextAttributes().alpha}else p=a;const v=new Uint32Array(4),M=new Int32Array(4);let m=null,d=null;const b=[],A=[];this.domElement=t,this.debug={checkShaderErrors:!0,onShaderError:null},this.autoClear=!0,this.autoClearColor=!0,this.autoClearDepth=!0,this.autoClearStencil=!0,this.sortObjects=!0,this.clippingPlanes=[],this.localClippingEnabled=!1,this.toneMapping=os,this.toneMappingExposure=1,this.transmissionResolutionScale=1;const E=this;let F=!1;this._outputColorSpace=ni;let C=0,D=0,O=null,T=-1,g=null;const S=new $t,P=new $t;let I=null;const V=new lt(0);let k=0,X=t.width,$=t.height,K=1,re=null,oe=null;const ue=new $t(0,0,X,$),he=new $t(0,0,X,$);let fe=!1;const $e=new gu;let Ke=!1,ee=!1;const te=new Xt,xe=new H,Ce=new $t,Se={background:null,fog:null,environment:null,overrideMaterial:null,isScene:!0};let je=!1;function wt(){return O===null?K:1}let B=n;function pt(w,q){return t.getContext(w,q)}try{const w={alpha:!0,depth:s,stencil:r,antialias:o,premultipliedAlpha:l,preserveDrawingBuffer:c,powerPreference:f,failIfMajorPerformanceCaveat:u};if("setAttribute"in t&&t.setAttribute("data-engine",`three.js r${ru}`),t.addEventListener("webglcontextlost",_e,!1),t.addEventListener("webglcontextrestored",De,!1),t.addEventListener("webglcontextcreationerror",de,!1),B===null){const q="webgl2";if(B=pt(q,w),B===null)throw pt(q)?new Error("Error creating WebGL context with your selected attributes."):new Error("Error creating WebGL context.")}}catch(w){throw console.error("THREE.WebGLRenderer: "+w.message),w}let Ze,Ge,Ne,Tt,Pe,Ve,kt,Mt,L,x,z,J,ie,ne,Fe,pe,Le,Ae,le,Me,ke,Be,ye,Qe;function G(){Ze=new tM(B),Ze.init(),Be=new OS(B,Ze),Ge=new $x(B,Ze,e,Be),Ne=new NS(B,Ze),Ge.reversedDepthBuffer&&h&&Ne.buffers.depth.setReversed(!0),Tt=new sM(B),Pe=new yS,Ve=new FS(B,Ze,Ne,Pe,Ge,Be,Tt),kt=new Kx(E),Mt=new eM(E),L=new u0(B),ye=new qx(B,L),x=new nM(B,L,Tt,ye),z=new aM(B,x,L,Tt),le=new rM(B,Ge,Ve),pe=new jx(Pe),J=new SS(E,kt,Mt,Ze,Ge,ye,pe),ie=new GS(E,Pe),ne=new bS,Fe=new PS(Ze),Ae=new Xx(E,kt,Mt,Ne,z,p,l),Le=new US(E,z,Ge),Qe=new WS(B,Tt,Ge,Ne),Me=new Yx(B,Ze,Tt),ke=new iM(B,Ze,Tt),Tt.programs=J.programs,E.capabilities=Ge,E.extensions=Ze,E.properties=Pe,E.renderLists=ne,E.shadowMap=Le,E.state=Ne,E.info=Tt}G();const me=new HS(E,B);this.xr=me,this.getContext=function(){return B},this.getContextAttributes=function(){return B.getContextAttributes()},this.forceContextLoss=function(){const w=Ze.get("WEBGL_lose_context");w&&w.loseContext()},this.forceContextRestore=function(){const w=Ze.get("WEBGL_lose_context");w&&w.restoreContext()},this.getPixelRatio=function(){return K},this.setPixelRatio=function(w){w!==void 0&&(K=w,this.setSize(X,$,!1))},this.getSize=function(w){return w.set(X,$)},this.setSize=function(w,q,Q=!0){if(me.isPresenting){console.warn("THREE.WebGLRenderer: Can't change size while VR device is presenting.");return}X=w,$=q,t.width=Math.floor(w*K),t.height=Math.floor(q*K),Q===!0&&(t.style.width=w+"px",t.style.height=q+"px"),this.setViewport(0,0,w,q)},this.getDrawingBufferSize=function(w){return w.set(X*K,$*K).floor()},this.setDrawingBufferSize=function(w,q,Q){X=w,$=q,K=Q,t.width=Math.floor(w*Q),t.height=Math.floor(q*Q),this.setViewport(0,0,w,q)},this.getCurrentViewport=function(w){return w.copy(S)},this.getViewport=function(w){return w.copy(ue)},this.setViewport=function(w,q,Q,Z){w.isVector4?ue.set(w.x,w.y,w.z,w.w):ue.set(w,q,Q,Z),Ne.viewport(S.copy(ue).multiplyScalar(K).round())},this.getScissor=function(w){return w.copy(he)},this.setScissor=function(w,q,Q,Z){w.isVector4?he.set(w.x,w.y,w.z,w.w):he.set(w,q,Q,Z),Ne.scissor(P.copy(he).multiplyScalar(K).round())},this.getScissorTest=function(){return fe},this.setScissorTest=function(w){Ne.setScissorTest(fe=w)},this.setOpaqueSort=function(w){re=w},this.setTransparentSort=function(w){oe=w},this.getClearColor=function(w){return w.copy(Ae.getClearColor())},this.setClearColor=function(){Ae.setClearColor(...arguments)},this.getClearAlpha=function(){return Ae.getClearAlpha()},this.setClearAlpha=function(){Ae.setClearAlpha(...arguments)},this.clear=function(w=!0,q=!0,Q=!0){let Z=0;if(w){let Y=!1;if(O!==null){const ge=O.texture.format;Y=ge===fu||ge===hu||ge===uu}if(Y){const ge=O.texture.type,Ee=ge===Ri||ge===Is||ge===oa||ge===la||ge===lu||ge===cu,Ue=Ae.getClearColor(),we=Ae.getClearAlpha(),Xe=Ue.r,Ye=Ue.g,ze=Ue.b;Ee?(v[0]=Xe,v[1]=Ye,v[2]=ze,v[3]=we,B.clearBufferuiv(B.COLOR,0,v)):(M[0]=Xe,M[1]=Ye,M[2]=ze,M[3]=we,B.clearBufferiv(B.COLOR,0,M))}else Z|=B.COLOR_BUFFER_BIT}q&&(Z|=B.DEPTH_BUFFER_BIT),Q&&(Z|=B.STENCIL_BUFFER_BIT,this.state.buffers.stencil.setMask(4294967295)),B.clear(Z)},this.clearColor=function(){this.clear(!0,!1,!1)},this.clearDepth=function(){this.clear(!1,!0,!1)},this.clearStencil=function(){this.clear(!1,!1,!0)},this.dispose=function(){t.removeEventListener("webglcontextlost",_e,!1),t.removeEventListener("webglcontextrestored",De,!1),t.removeEventListener("webglcontextcreationerror",de,!1),Ae.dispose(),ne.dispose(),Fe.dispose(),Pe.dispose(),kt.dispose(),Mt.dispose(),z.dispose(),ye.dispose(),Qe.dispose(),J.dispose(),me.dispose(),me.removeEventListener("sessionstart",Lt),me.removeEventListener("sessionend",Hn),Un.stop()};function _e(w){w.preventDefault(),console.log("THREE.WebGLRenderer: Context Lost."),F=!0}function De(){console.log("THREE.WebGLRenderer: Context Restored."),F=!1;const w=Tt.autoReset,q=Le.enabled,Q=Le.autoUpdate,Z=Le.needsUpdate,Y=Le.type;G(),Tt.autoReset=w,Le.enabled=q,Le.autoUpdate=Q,Le.needsUpdate=Z,Le.type=Y}function de(w){console.error("THREE.WebGLRenderer: A WebGL context could not be created. Reason: ",w.statusMessage)}function ae(w){const q=w.target;q.removeEventListener("dispose",ae),Oe(q)}function Oe(w){et(w),Pe.remove(w)}function et(w){const q=Pe.get(w).programs;q!==void 0&&(q.forEach(function(Q){J.releaseProgram(Q)}),w.isShaderMaterial&&J.releaseShaderCache(w))}this.renderBufferDirect=function(w,q,Q,Z,Y,ge){q===null&&(q=Se);const Ee=Y.isMesh&&Y.matrixWorld.determinant()<0,Ue=Di(w,q,Q,Z,Y);Ne.setMaterial(Z,Ee);let we=Q.index,Xe=1;if(Z.wireframe===!0){if(we=x.getWireframeAttribute(Q),we===void 0)return;Xe=2}const Ye=Q.drawRange,ze=Q.attributes.position;let rt=Ye.start*Xe,gt=(Ye.start+Ye.count)*Xe;ge!==null&&(rt=Math.max(rt,ge.start*Xe),gt=Math.min(gt,(ge.start+ge.count)*Xe)),we!==null?(rt=Math.max(rt,0),gt=Math.min(gt,we.count)):ze!=null&&(rt=Math.max(rt,0),gt=Math.min(gt,ze.count));const Nt=gt-rt;if(Nt<0||Nt===1/0)return;ye.setup(Y,Z,Ue,Q,we);let At,it=Me;if(we!==null&&(At=L.get(we),it=ke,it.setIndex(At)),Y.isMesh)Z.wireframe===!0?(Ne.setLineWidth(Z.wireframeLinewidth*wt()),it.setMode(B.LINES)):it.setMode(B.TRIANGLES);else if(Y.isLine){let We=Z.linewidth;We===void 0&&(We=1),Ne.setLineWidth(We*wt()),Y.isLineSegments?it.setMode(B.LINES):Y.isLineLoop?it.setMode(B.LINE_LOOP):it.setMode(B.LINE_STRIP)}else Y.isPoints?it.setMode(B.POINTS):Y.isSprite&&it.setMode(B.TRIANGLES);if(Y.isBatchedMesh)if(Y._multiDrawInstances!==null)ha("THREE.WebGLRenderer: renderMultiDrawInstances has been deprecated and will be removed in r184. Append to renderMultiDraw arguments and use indirection."),it.renderMultiDrawInstances(Y._multiDrawStarts,Y._multiDrawCounts,Y._multiDrawCount,Y._multiDrawInstances);else if(Ze.get("WEBGL_multi_draw"))it.renderMultiDraw(Y._multiDrawStarts,Y._multiDrawCounts,Y._multiDrawCount);else{const We=Y._multiDrawStarts,Ft=Y._multiDrawCounts,ht=Y._multiDrawCount,xn=we?L.get(we).bytesPerElement:1,Wi=Pe.get(Z).currentProgram.getUniforms();for(let Tn=0;Tn<ht;Tn++)Wi.setValue(B,"_gl_DrawID",Tn),it.render(We[Tn]/xn,Ft[Tn])}else if(Y.isInstancedMesh)it.renderInstances(rt,Nt,Y.count);else if(Q.isInstancedBufferGeometry){const We=Q._maxInstanceCount!==void 0?Q._maxInstanceCount:1/0,Ft=Math.min(Q.instanceCount,We);it.renderInstances(rt,Nt,Ft)}else it.render(rt,Nt)};function Rt(w,q,Q){w.transparent===!0&&w.side===ki&&w.forceSinglePass===!1?(w.side=Bn,w.needsUpdate=!0,hs(w,q,Q),w.side=cs,w.needsUpdate=!0,hs(w,q,Q),w.side=ki):hs(w,q,Q)}this.compile=function(w,q,Q=null){Q===null&&(Q=w),d=Fe.get(Q),d.init(q),A.push(d),Q.traverseVisible(function(Y){Y.isLight&&Y.layers.test(q.layers)&&(d.pushLight(Y),Y.castShadow&&d.pushShadow(Y))}),w!==Q&&w.traverseVisible(function(Y){Y.isLight&&Y.layers.test(q.layers)&&(d.pushLight(Y),Y.castShadow&&d.pushShadow(Y))}),d.setupLights();const Z=new Set;return w.traverse(function(Y){if(!(Y.isMesh||Y.isPoints||Y.isLine||Y.isSprite))return;const ge=Y.material;if(ge)if(Array.isArray(ge))for(let Ee=0;Ee<ge.length;Ee++){const Ue=ge[Ee];Rt(Ue,Q,Y),Z.add(Ue)}else Rt(ge,Q,Y),Z.add(ge)}),d=A.pop(),Z},this.compileAsync=function(w,q,Q=null){const Z=this.compile(w,q,Q);return new Promise(Y=>{function ge(){if(Z.forEach(function(Ee){Pe.get(Ee).currentProgram.isReady()&&Z.delete(Ee)}),Z.size===0){Y(w);return}setTimeout(ge,10)}Ze.get("KHR_parallel_shader_compile")!==null?ge():setTimeout(ge,10)})};let mt=null;function mn(w){mt&&mt(w)}function Lt(){Un.stop()}function Hn(){Un.start()}const Un=new rp;Un.setAnimationLoop(mn),typeof self<"u"&&Un.setContext(self),this.setAnimationLoop=function(w){mt=w,me.setAnimationLoop(w),w===null?Un.stop():Un.start()},me.addEventListener("sessionstart",Lt),me.addEventListener("sessionend",Hn),this.render=function(w,q){if(q!==void 0&&q.isCamera!==!0){console.error("THREE.WebGLRenderer.render: camera is not an instance of THREE.Camera.");return}if(F===!0)return;if(w.matrixWorldAutoUpdate===!0&&w.updateMatrixWorld(),q.parent===null&&q.matrixWorldAutoUpdate===!0&&q.updateMatrixWorld(),me.enabled===!0&&me.isPresenting===!0&&(me.cameraAutoUpdate===!0&&me.updateCamera(q),q=me.getCamera()),w.isScene===!0&&w.onBeforeRender(E,w,q,O),d=Fe.get(w,A.length),d.init(q),A.push(d),te.multiplyMatrices(q.projectionMatrix,q.matrixWorldInverse),$e.setFromProjectionMatrix(te,Ti,q.reversedDepth),ee=this.localClippingEnabled,Ke=pe.init(this.clippingPlanes,ee),m=ne.get(w,b.length),m.init(),b.push(m),me.enabled===!0&&me.isPresenting===!0){const ge=E.xr.getDepthSensingMesh();ge!==null&&_i(ge,q,-1/0,E.sortObjects)}_i(w,q,0,E.sortObjects),m.finish(),E.sortObjects===!0&&m.sort(re,oe),je=me.enabled===!1||me.isPresenting===!1||me.hasDepthSensing()===!1,je&&Ae.addToRenderList(m,w),this.info.render.frame++,Ke===!0&&pe.beginShadows();const Q=d.state.shadowsArray;Le.render(Q,w,q),Ke===!0&&pe.endShadows(),this.info.autoReset===!0&&this.info.reset();const Z=m.opaque,Y=m.transmissive;if(d.setupLights(),q.isArrayCamera){const ge=q.cameras;if(Y.length>0)for(let Ee=0,Ue=ge.length;Ee<Ue;Ee++){const we=ge[Ee];Pi(Z,Y,w,we)}je&&Ae.render(w);for(let Ee=0,Ue=ge.length;Ee<Ue;Ee++){const we=ge[Ee];wn(m,w,we,we.viewport)}}else Y.length>0&&Pi(Z,Y,w,q),je&&Ae.render(w),wn(m,w,q);O!==null&&D===0&&(Ve.updateMultisampleRenderTarget(O),Ve.updateRenderTargetMipmap(O)),w.isScene===!0&&w.onAfterRender(E,w,q),ye.resetDefaultState(),T=-1,g=null,A.pop(),A.length>0?(d=A[A.length-1],Ke===!0&&pe.setGlobalState(E.clippingPlanes,d.state.camera)):d=null,b.pop(),b.length>0?m=b[b.length-1]:m=null};function _i(w,q,Q,Z){if(w.visible===!1)return;if(w.layers.test(q.layers)){if(w.isGroup)Q=w.renderOrder;else if(w.isLOD)w.autoUpdate===!0&&w.update(q);else if(w.isLight)d.pushLight(w),w.castShadow&&d.pushShadow(w);else if(w.isSprite){if(!w.frustumCulled||$e.intersectsSprite(w)){Z&&Ce.setFromMatrixPosition(w.matrixWorld).applyMatrix4(te);const Ee=z.update(w),Ue=w.material;Ue.visible&&m.push(w,Ee,Ue,Q,Ce.z,null)}}else if((w.isMesh||w.isLine||w.isPoints)&&(!w.frustumCulled||$e.intersectsObject(w))){const Ee=z.update(w),Ue=w.material;if(Z&&(w.boundingSphere!==void 0?(w.boundingSphere===null&&w.computeBoundingSphere(),Ce.copy(w.boundingSphere.center)):(Ee.boundingSphere===null&&Ee.computeBoundingSphere(),Ce.copy(Ee.boundingSphere.center)),Ce.applyMatrix4(w.matrixWorld).applyMatrix4(te)),Array.isArray(Ue)){const we=Ee.groups;for(let Xe=0,Ye=we.length;Xe<Ye;Xe++){const ze=we[Xe],rt=Ue[ze.materialIndex];rt&&rt.visible&&m.push(w,Ee,rt,Q,Ce.z,ze)}}else Ue.visible&&m.push(w,Ee,Ue,Q,Ce.z,null)}}const ge=w.children;for(let Ee=0,Ue=ge.length;Ee<Ue;Ee++)_i(ge[Ee],q,Q,Z)}function wn(w,q,Q,Z){const Y=w.opaque,ge=w.transmissive,Ee=w.transparent;d.setupLightsView(Q),Ke===!0&&pe.setGlobalState(E.clippingPlanes,Q),Z&&Ne.viewport(S.copy(Z)),Y.length>0&&ri(Y,q,Q),ge.length>0&&ri(ge,q,Q),Ee.length>0&&ri(Ee,q,Q),Ne.buffers.depth.setTest(!0),Ne.buffers.depth.setMask(!0),Ne.buffers.color.setMask(!0),Ne.setPolygonOffset(!1)}function Pi(w,q,Q,Z){if((Q.isScene===!0?Q.overrideMaterial:null)!==null)return;d.state.transmissionRenderTarget[Z.id]===void 0&&(d.state.transmissionRenderTarget[Z.id]=new Fs(1,1,{generateMipmaps:!0,type:Ze.has("EXT_color_buffer_half_float")||Ze.has("EXT_color_buffer_float")?ma:Ri,minFilter:Ds,samples:4,stencilBuffer:r,resolveDepthBuffer:!1,resolveStencilBuffer:!1,colorSpace:vt.workingColorSpace}));const ge=d.state.transmissionRenderTarget[Z.id],Ee=Z.viewport||S;ge.setSize(Ee.z*E.transmissionResolutionScale,Ee.w*E.transmissionResolutionScale);const Ue=E.getRenderTarget(),we=E.getActiveCubeFace(),Xe=E.getActiveMipmapLevel();E.setRenderTarget(ge),E.getClearColor(V),k=E.getClearAlpha(),k<1&&E.setClearColor(16777215,.5),E.clear(),je&&Ae.render(Q);const Ye=E.toneMapping;E.toneMapping=os;const ze=Z.viewport;if(Z.viewport!==void 0&&(Z.viewport=void 0),d.setupLightsView(Z),Ke===!0&&pe.setGlobalState(E.clippingPlanes,Z),ri(w,Q,Z),Ve.updateMultisampleRenderTarget(ge),Ve.updateRenderTargetMipmap(ge),Ze.has("WEBGL_multisampled_render_to_texture")===!1){let rt=!1;for(let gt=0,Nt=q.length;gt<Nt;gt++){const At=q[gt],it=At.object,We=At.geometry,Ft=At.material,ht=At.group;if(Ft.side===ki&&it.layers.test(Z.layers)){const xn=Ft.side;Ft.side=Bn,Ft.needsUpdate=!0,Ur(it,Q,Z,We,Ft,ht),Ft.side=xn,Ft.needsUpdate=!0,rt=!0}}rt===!0&&(Ve.updateMultisampleRenderTarget(ge),Ve.updateRenderTargetMipmap(ge))}E.setRenderTarget(Ue,we,Xe),E.setClearColor(V,k),ze!==void 0&&(Z.viewport=ze),E.toneMapping=Ye}function ri(w,q,Q){const Z=q.isScene===!0?q.overrideMaterial:null;for(let Y=0,ge=w.length;Y<ge;Y++){const Ee=w[Y],Ue=Ee.object,we=Ee.geometry,Xe=Ee.group;let Ye=Ee.material;Ye.allowOverride===!0&&Z!==null&&(Ye=Z),Ue.layers.test(Q.layers)&&Ur(Ue,q,Q,we,Ye,Xe)}}function Ur(w,q,Q,Z,Y,ge){w.onBeforeRender(E,q,Q,Z,Y,ge),w.modelViewMatrix.multiplyMatrices(Q.matrixWorldInverse,w.matrixWorld),w.normalMatrix.getNormalMatrix(w.modelViewMatrix),Y.onBeforeRender(E,q,Q,Z,w,ge),Y.transparent===!0&&Y.side===ki&&Y.forceSinglePass===!1?(Y.side=Bn,Y.needsUpdate=!0,E.renderBufferDirect(Q,q,Z,Y,w,ge),Y.side=cs,Y.needsUpdate=!0,E.renderBufferDirect(Q,q,Z,Y,w,ge),Y.side=ki):E.renderBufferDirect(Q,q,Z,Y,w,ge),w.onAfterRender(E,q,Q,Z,Y,ge)}function hs(w,q,Q){q.isScene!==!0&&(q=Se);const Z=Pe.get(w),Y=d.state.lights,ge=d.state.shadowsArray,Ee=Y.state.version,Ue=J.getParameters(w,Y.state,ge,q,Q),we=J.getProgramCacheKey(Ue);let Xe=Z.programs;Z.environment=w.isMeshStandardMaterial?q.environment:null,Z.fog=q.fog,Z.envMap=(w.isMeshStandardMaterial?Mt:kt).get(w.envMap||Z.environment),Z.envMapRotation=Z.environment!==null&&w.envMap===null?q.environmentRotation:w.envMapRotation,Xe===void 0&&(w.addEventListener("dispose",ae),Xe=new Map,Z.programs=Xe);let Ye=Xe.get(we);if(Ye!==void 0){if(Z.currentProgram===Ye&&Z.lightsStateVersion===Ee)return Ea(w,Ue),Ye}else Ue.uniforms=J.getUniforms(w),w.onBeforeCompile(Ue,E),Ye=J.acquireProgram(Ue,we),Xe.set(we,Ye),Z.uniforms=Ue.uniforms;const ze=Z.uniforms;return(!w.isShaderMaterial&&!w.isRawShaderMaterial||w.clipping===!0)&&(ze.clippingPlanes=pe.uniform),Ea(w,Ue),Z.needsLights=fs(w),Z.lightsStateVersion=Ee,Z.needsLights&&(ze.ambientLightColor.value=Y.state.ambient,ze.lightProbe.value=Y.state.probe,ze.directionalLights.value=Y.state.directional,ze.directionalLightShadows.value=Y.state.directionalShadow,ze.spotLights.value=Y.state.spot,ze.spotLightShadows.value=Y.state.spotShadow,ze.rectAreaLights.value=Y.state.rectArea,ze.ltc_1.value=Y.state.rectAreaLTC1,ze.ltc_2.value=Y.state.rectAreaLTC2,ze.pointLights.value=Y.state.point,ze.pointLightShadows.value=Y.state.pointShadow,ze.hemisphereLights.value=Y.state.hemi,ze.directionalShadowMap.value=Y.state.directionalShadowMap,ze.directionalShadowMatrix.value=Y.state.directionalShadowMatrix,ze.spotShadowMap.value=Y.state.spotShadowMap,ze.spotLightMatrix.value=Y.state.spotLightMatrix,ze.spotLightMap.value=Y.state.spotLightMap,ze.pointShadowMap.value=Y.state.pointShadowMap,ze.pointShadowMatrix.value=Y.state.pointShadowMatrix),Z.currentProgram=Ye,Z.uniformsList=null,Ye}function ya(w){if(w.uniformsList===null){const q=w.currentProgram.getUniforms();w.uniformsList=fo.seqWithValue(q.seq,w.uniforms)}return w.uniformsList}function Ea(w,q){const Q=Pe.get(w);Q.outputColorSpace=q.outputColorSpace,Q.batching=q.batching,Q.batchingColor=q.batchingColor,Q.instancing=q.instancing,Q.instancingColor=q.instancingColor,Q.instancingMorph=q.instancingMorph,Q.skinning=q.skinning,Q.morphTargets=q.morphTargets,Q.morphNormals=q.morphNormals,Q.morphColors=q.morphColors,Q.morphTargetsCount=q.morphTargetsCount,Q.numClippingPlanes=q.numClippingPlanes,Q.numIntersection=q.numClipIntersection,Q.vertexAlphas=q.vertexAlphas,Q.vertexTangents=q.vertexTangents,Q.toneMapping=q.toneMapping}function Di(w,q,Q,Z,Y){q.isScene!==!0&&(q=Se),Ve.resetTextureUnits();const ge=q.fog,Ee=Z.isMeshStandardMaterial?q.environment:null,Ue=O===null?E.outputColorSpace:O.isXRRenderTarget===!0?O.texture.colorSpace:wr,we=(Z.isMeshStandardMaterial?Mt:kt).get(Z.envMap||Ee),Xe=Z.vertexColors===!0&&!!Q.attributes.color&&Q.attributes.color.itemSize===4,Ye=!!Q.attributes.tangent&&(!!Z.normalMap||Z.anisotropy>0),ze=!!Q.morphAttributes.position,rt=!!Q.morphAttributes.normal,gt=!!Q.morphAttributes.color;let Nt=os;Z.toneMapped&&(O===null||O.isXRRenderTarget===!0)&&(Nt=E.toneMapping);const At=Q.morphAttributes.position||Q.morphAttributes.normal||Q.morphAttributes.color,it=At!==void 0?At.length:0,We=Pe.get(Z),Ft=d.state.lights;if(Ke===!0&&(ee===!0||w!==g)){const on=w===g&&Z.id===T;pe.setState(Z,w,on)}let ht=!1;Z.version===We.__version?(We.needsLights&&We.lightsStateVersion!==Ft.state.version||We.outputColorSpace!==Ue||Y.isBatchedMesh&&We.batching===!1||!Y.isBatchedMesh&&We.batching===!0||Y.isBatchedMesh&&We.batchingColor===!0&&Y.colorTexture===null||Y.isBatchedMesh&&We.batchingColor===!1&&Y.colorTexture!==null||Y.isInstancedMesh&&We.instancing===!1||!Y.isInstancedMesh&&We.instancing===!0||Y.isSkinnedMesh&&We.skinning===!1||!Y.isSkinnedMesh&&We.skinning===!0||Y.isInstancedMesh&&We.instancingColor===!0&&Y.instanceColor===null||Y.isInstancedMesh&&We.instancingColor===!1&&Y.instanceColor!==null||Y.isInstancedMesh&&We.instancingMorph===!0&&Y.morphTexture===null||Y.isInstancedMesh&&We.instancingMorph===!1&&Y.morphTexture!==null||We.envMap!==we||Z.fog===!0&&We.fog!==ge||We.numClippingPlanes!==void 0&&(We.numClippingPlanes!==pe.numPlanes||We.numIntersection!==pe.numIntersection)||We.vertexAlphas!==Xe||We.vertexTangents!==Ye||We.morphTargets!==ze||We.morphNormals!==rt||We.morphColors!==gt||We.toneMapping!==Nt||We.morphTargetsCount!==it)&&(ht=!0):(ht=!0,We.__version=Z.version);let xn=We.currentProgram;ht===!0&&(xn=hs(Z,q,Y));let Wi=!1,Tn=!1,ds=!1;const Ot=xn.getUniforms(),An=We.uniforms;if(Ne.useProgram(xn.program)&&(Wi=!0,Tn=!0,ds=!0),Z.id!==T&&(T=Z.id,Tn=!0),Wi||g!==w){Ne.buffers.depth.getReversed()&&w.reversedDepth!==!0&&(w._reversedDepth=!0,w.updateProjectionMatrix()),Ot.setValue(B,"projectionMatrix",w.projectionMatrix),Ot.setValue(B,"viewMatrix",w.matrixWorldInverse);const ln=Ot.map.cameraPosition;ln!==void 0&&ln.setValue(B,xe.setFromMatrixPosition(w.matrixWorld)),Ge.logarithmicDepthBuffer&&Ot.setValue(B,"logDepthBufFC",2/(Math.log(w.far+1)/Math.LN2)),(Z.isMeshPhongMaterial||Z.isMeshToonMaterial||Z.isMeshLambertMaterial||Z.isMeshBasicMaterial||Z.isMeshStandardMaterial||Z.isShaderMaterial)&&Ot.setValue(B,"isOrthographic",w.isOrthographicCamera===!0),g!==w&&(g=w,Tn=!0,ds=!0)}if(Y.isSkinnedMesh){Ot.setOptional(B,Y,"bindMatrix"),Ot.setOptional(B,Y,"bindMatrixInverse");const on=Y.skeleton;on&&(on.boneTexture===null&&on.computeBoneTexture(),Ot.setValue(B,"boneTexture",on.boneTexture,Ve))}Y.isBatchedMesh&&(Ot.setOptional(B,Y,"batchingTexture"),Ot.setValue(B,"batchingTexture",Y._matricesTexture,Ve),Ot.setOptional(B,Y,"batchingIdTexture"),Ot.setValue(B,"batchingIdTexture",Y._indirectTexture,Ve),Ot.setOptional(B,Y,"batchingColorTexture"),Y._colorsTexture!==null&&Ot.setValue(B,"batchingColorTexture",Y._colorsTexture,Ve));const In=Q.morphAttributes;if((In.position!==void 0||In.normal!==void 0||In.color!==void 0)&&le.update(Y,Q,xn),(Tn||We.receiveShadow!==Y.receiveShadow)&&(We.receiveShadow=Y.receiveShadow,Ot.setValue(B,"receiveShadow",Y.receiveShadow)),Z.isMeshGouraudMaterial&&Z.envMap!==null&&(An.envMap.value=we,An.flipEnvMap.value=we.isCubeTexture&&we.isRenderTargetTexture===!1?-1:1),Z.isMeshStandardMaterial&&Z.envMap===null&&q.environment!==null&&(An.envMapIntensity.value=q.environmentIntensity),Tn&&(Ot.setValue(B,"toneMappingExposure",E.toneMappingExposure),We.needsLights&&zo(An,ds),ge&&Z.fog===!0&&ie.refreshFogUniforms(An,ge),ie.refreshMaterialUniforms(An,Z,K,$,d.state.transmissionRenderTarget[w.id]),fo.upload(B,ya(We),An,Ve)),Z.isShaderMaterial&&Z.uniformsNeedUpdate===!0&&(fo.upload(B,ya(We),An,Ve),Z.uniformsNeedUpdate=!1),Z.isSpriteMaterial&&Ot.setValue(B,"center",Y.center),Ot.setValue(B,"modelViewMatrix",Y.modelViewMatrix),Ot.setValue(B,"normalMatrix",Y.normalMatrix),Ot.setValue(B,"modelMatrix",Y.matrixWorld),Z.isShaderMaterial||Z.isRawShaderMaterial){const on=Z.uniformsGroups;for(let ln=0,Xi=on.length;ln<Xi;ln++){const Kn=on[ln];Qe.update(Kn,xn),Qe.bind(Kn,xn)}}return xn}function zo(w,q){w.ambientLightColor.needsUpdate=q,w.lightProbe.needsUpdate=q,w.directionalLights.needsUpdate=q,w.directionalLightShadows.needsUpdate=q,w.pointLights.needsUpdate=q,w.pointLightShadows.needsUpdate=q,w.spotLights.needsUpdate=q,w.spotLightShadows.needsUpdate=q,w.rectAreaLights.needsUpdate=q,w.hemisphereLights.needsUpdate=q}function fs(w){return w.isMeshLambertMaterial||w.isMeshToonMaterial||w.isMeshPhongMaterial||w.isMeshStandardMaterial||w.isShadowMaterial||w.isShaderMaterial&&w.lights===!0}this.getActiveCubeFace=function(){return C},this.getActiveMipmapLevel=function(){return D},this.getRenderTarget=function(){return O},this.setRenderTargetTextures=function(w,q,Q){const Z=Pe.get(w);Z.__autoAllocateDepthBuffer=w.resolveDepthBuffer===!1,Z.__autoAllocateDepthBuffer===!1&&(Z.__useRenderToTexture=!1),Pe.get(w.texture).__webglTexture=q,Pe.get(w.depthTexture).__webglTexture=Z.__autoAllocateDepthBuffer?void 0:Q,Z.__hasExternalTextures=!0},this.setRenderTargetFramebuffer=function(w,q){const Q=Pe.get(w);Q.__webglFramebuffer=q,Q.__useDefaultFramebuffer=q===void 0};const ba=B.createFramebuffer();this.setRenderTarget=function(w,q=0,Q=0){O=w,C=q,D=Q;let Z=!0,Y=null,ge=!1,Ee=!1;if(w){const we=Pe.get(w);if(we.__useDefaultFramebuffer!==void 0)Ne.bindFramebuffer(B.FRAMEBUFFER,null),Z=!1;else if(we.__webglFramebuffer===void 0)Ve.setupRenderTarget(w);else if(we.__hasExternalTextures)Ve.rebindTextures(w,Pe.get(w.texture).__webglTexture,Pe.get(w.depthTexture).__webglTexture);else if(w.depthBuffer){const ze=w.depthTexture;if(we.__boundDepthTexture!==ze){if(ze!==null&&Pe.has(ze)&&(w.width!==ze.image.width||w.height!==ze.image.height))throw new Error("WebGLRenderTarget: Attached DepthTexture is initialized to the incorrect size.");Ve.setupDepthRenderbuffer(w)}}const Xe=w.texture;(Xe.isData3DTexture||Xe.isDataArrayTexture||Xe.isCompressedArrayTexture)&&(Ee=!0);const Ye=Pe.get(w).__webglFramebuffer;w.isWebGLCubeRenderTarget?(Array.isArray(Ye[q])?Y=Ye[q][Q]:Y=Ye[q],ge=!0):w.samples>0&&Ve.useMultisampledRTT(w)===!1?Y=Pe.get(w).__webglMultisampledFramebuffer:Array.isArray(Ye)?Y=Ye[Q]:Y=Ye,S.copy(w.viewport),P.copy(w.scissor),I=w.scissorTest}else S.copy(ue).multiplyScalar(K).floor(),P.copy(he).multiplyScalar(K).floor(),I=fe;if(Q!==0&&(Y=ba),Ne.bindFramebuffer(B.FRAMEBUFFER,Y)&&Z&&Ne.drawBuffers(w,Y),Ne.viewport(S),Ne.scissor(P),Ne.setScissorTest(I),ge){const we=Pe.get(w.texture);B.framebufferTexture2D(B.FRAMEBUFFER,B.COLOR_ATTACHMENT0,B.TEXTURE_CUBE_MAP_POSITIVE_X+q,we.__webglTexture,Q)}else if(Ee){const we=q;for(let Xe=0;Xe<w.textures.length;Xe++){const Ye=Pe.get(w.textures[Xe]);B.framebufferTextureLayer(B.FRAMEBUFFER,B.COLOR_ATTACHMENT0+Xe,Ye.__webglTexture,Q,we)}}else if(w!==null&&Q!==0){const we=Pe.get(w.texture);B.framebufferTexture2D(B.FRAMEBUFFER,B.COLOR_ATTACHMENT0,B.TEXTURE_2D,we.__webglTexture,Q)}T=-1},this.readRenderTargetPixels=function(w,q,Q,Z,Y,ge,Ee,Ue=0){if(!(w&&w.isWebGLRenderTarget)){console.error("THREE.WebGLRenderer.readRenderTargetPixels: renderTarget is not THREE.WebGLRenderTarget.");return}let we=Pe.get(w).__webglFramebuffer;if(w.isWebGLCubeRenderTarget&&Ee!==void 0&&(we=we[Ee]),we){Ne.bindFramebuffer(B.FRAMEBUFFER,we);try{const Xe=w.textures[Ue],Ye=Xe.format,ze=Xe.type;if(!Ge.textureFormatReadable(Ye)){console.error("THREE.WebGLRenderer.readRenderTargetPixels: renderTarget is not in RGBA or implementation defined format.");return}if(!Ge.textureTypeReadable(ze)){console.error("THREE.WebGLRenderer.readRenderTargetPixels: renderTarget is not in UnsignedByteType or implementation defined type.");return}q>=0&&q<=w.width-Z&&Q>=0&&Q<=w.height-Y&&(w.textures.length>1&&B.readBuffer(B.COLOR_ATTACHMENT0+Ue),B.readPixels(q,Q,Z,Y,Be.convert(Ye),Be.convert(ze),ge))}finally{const Xe=O!==null?Pe.get(O).__webglFramebuffer:null;Ne.bindFramebuffer(B.FRAMEBUFFER,Xe)}}},this.readRenderTargetPixelsAsync=async function(w,q,Q,Z,Y,ge,Ee,Ue=0){if(!(w&&w.isWebGLRenderTarget))throw new Error("THREE.WebGLRenderer.readRenderTargetPixels: renderTarget is not THREE.WebGLRenderTarget.");let we=Pe.get(w).__webglFramebuffer;if(w.isWebGLCubeRenderTarget&&Ee!==void 0&&(we=we[Ee]),we)if(q>=0&&q<=w.width-Z&&Q>=0&&Q<=w.height-Y){Ne.bindFramebuffer(B.FRAMEBUFFER,we);const Xe=w.textures[Ue],Ye=Xe.format,ze=Xe.type;if(!Ge.textureFormatReadable(Ye))throw new Error("THREE.WebGLRenderer.readRenderTargetPixelsAsync: renderTarget is not in RGBA or implementation defined format.");if(!Ge.textureTypeReadable(ze))throw new Error("THREE.WebGLRenderer.readRenderTargetPixelsAsync: renderTarget is not in UnsignedByteType or implementation defined type.");const rt=B.createBuffer();B.bindBuffer(B.PIXEL_PACK_BUFFER,rt),B.bufferData(B.PIXEL_PACK_BUFFER,ge.byteLength,B.STREAM_READ),w.textures.length>1&&B.readBuffer(B.COLOR_ATTACHMENT0+Ue),B.readPixels(q,Q,Z,Y,Be.convert(Ye),Be.convert(ze),0);const gt=O!==null?Pe.get(O).__webglFramebuffer:null;Ne.bindFramebuffer(B.FRAMEBUFFER,gt);const Nt=B.fenceSync(B.SYNC_GPU_COMMANDS_COMPLETE,0);return B.flush(),await E_(B,Nt,4),B.bindBuffer(B.PIXEL_PACK_BUFFER,rt),B.getBufferSubData(B.PIXEL_PACK_BUFFER,0,ge),B.deleteBuffer(rt),B.deleteSync(Nt),ge}else throw new Error("THREE.WebGLRenderer.readRenderTargetPixelsAsync: requested read bounds are out of range.")},this.copyFramebufferToTexture=function(w,q=null,Q=0){const Z=Math.pow(2,-Q),Y=Math.floor(w.image.width*Z),ge=Math.floor(w.image.height*Z),Ee=q!==null?q.x:0,Ue=q!==null?q.y:0;Ve.setTexture2D(w,0),B.copyTexSubImage2D(B.TEXTURE_2D,Q,0,0,Ee,Ue,Y,ge),Ne.unbindTexture()};const vi=B.createFramebuffer(),Jt=B.createFramebuffer();this.copyTextureToTexture=function(w,q,Q=null,Z=null,Y=0,ge=null){ge===null&&(Y!==0?(ha("WebGLRenderer: copyTextureToTexture function signature has changed to support src and dst mipmap levels."),ge=Y,Y=0):ge=0);let Ee,Ue,we,Xe,Ye,ze,rt,gt,Nt;const At=w.isCompressedTexture?w.mipmaps[ge]:w.image;if(Q!==null)Ee=Q.max.x-Q.min.x,Ue=Q.max.y-Q.min.y,we=Q.isBox3?Q.max.z-Q.min.z:1,Xe=Q.min.x,Ye=Q.min.y,ze=Q.isBox3?Q.min.z:0;else{const In=Math.pow(2,-Y);Ee=Math.floor(At.width*In),Ue=Math.floor(At.height*In),w.isDataArrayTexture?we=At.depth:w.isData3DTexture?we=Math.floor(At.depth*In):we=1,Xe=0,Ye=0,ze=0}Z!==null?(rt=Z.x,gt=Z.y,Nt=Z.z):(rt=0,gt=0,Nt=0);const it=Be.convert(q.format),We=Be.convert(q.type);let Ft;q.isData3DTexture?(Ve.setTexture3D(q,0),Ft=B.TEXTURE_3D):q.isDataArrayTexture||q.isCompressedArrayTexture?(Ve.setTexture2DArray(q,0),Ft=B.TEXTURE_2D_ARRAY):(Ve.setTexture2D(q,0),Ft=B.TEXTURE_2D),B.pixelStorei(B.UNPACK_FLIP_Y_WEBGL,q.flipY),B.pixelStorei(B.UNPACK_PREMULTIPLY_ALPHA_WEBGL,q.premultiplyAlpha),B.pixelStorei(B.UNPACK_ALIGNMENT,q.unpackAlignment);const ht=B.getParameter(B.UNPACK_ROW_LENGTH),xn=B.getParameter(B.UNPACK_IMAGE_HEIGHT),Wi=B.getParameter(B.UNPACK_SKIP_PIXELS),Tn=B.getParameter(B.UNPACK_SKIP_ROWS),ds=B.getParameter(B.UNPACK_SKIP_IMAGES);B.pixelStorei(B.UNPACK_ROW_LENGTH,At.width),B.pixelStorei(B.UNPACK_IMAGE_HEIGHT,At.height),B.pixelStorei(B.UNPACK_SKIP_PIXELS,Xe),B.pixelStorei(B.UNPACK_SKIP_ROWS,Ye),B.pixelStorei(B.UNPACK_SKIP_IMAGES,ze);const Ot=w.isDataArrayTexture||w.isData3DTexture,An=q.isDataArrayTexture||q.isData3DTexture;if(w.isDepthTexture){const In=Pe.get(w),on=Pe.get(q),ln=Pe.get(In.__renderTarget),Xi=Pe.get(on.__renderTarget);Ne.bindFramebuffer(B.READ_FRAMEBUFFER,ln.__webglFramebuffer),Ne.bindFramebuffer(B.DRAW_FRAMEBUFFER,Xi.__webglFramebuffer);for(let Kn=0;Kn<we;Kn++)Ot&&(B.framebufferTextureLayer(B.READ_FRAMEBUFFER,B.COLOR_ATTACHMENT0,Pe.get(w).__webglTexture,Y,ze+Kn),B.framebufferTextureLayer(B.DRAW_FRAMEBUFFER,B.COLOR_ATTACHMENT0,Pe.get(q).__webglTexture,ge,Nt+Kn)),B.blitFramebuffer(Xe,Ye,Ee,Ue,rt,gt,Ee,Ue,B.DEPTH_BUFFER_BIT,B.NEAREST);Ne.bindFramebuffer(B.READ_FRAMEBUFFER,null),Ne.bindFramebuffer(B.DRAW_FRAMEBUFFER,null)}else if(Y!==0||w.isRenderTargetTexture||Pe.has(w)){const In=Pe.get(w),on=Pe.get(q);Ne.bindFramebuffer(B.READ_FRAMEBUFFER,vi),Ne.bindFramebuffer(B.DRAW_FRAMEBUFFER,Jt);for(let ln=0;ln<we;ln++)Ot?B.framebufferTextureLayer(B.READ_FRAMEBUFFER,B.COLOR_ATTACHMENT0,In.__webglTexture,Y,ze+ln):B.framebufferTexture2D(B.READ_FRAMEBUFFER,B.COLOR_ATTACHMENT0,B.TEXTURE_2D,In.__webglTexture,Y),An?B.framebufferTextureLayer(B.DRAW_FRAMEBUFFER,B.COLOR_ATTACHMENT0,on.__webglTexture,ge,Nt+ln):B.framebufferTexture2D(B.DRAW_FRAMEBUFFER,B.COLOR_ATTACHMENT0,B.TEXTURE_2D,on.__webglTexture,ge),Y!==0?B.blitFramebuffer(Xe,Ye,Ee,Ue,rt,gt,Ee,Ue,B.COLOR_BUFFER_BIT,B.NEAREST):An?B.copyTexSubImage3D(Ft,ge,rt,gt,Nt+ln,Xe,Ye,Ee,Ue):B.copyTexSubImage2D(Ft,ge,rt,gt,Xe,Ye,Ee,Ue);Ne.bindFramebuffer(B.READ_FRAMEBUFFER,null),Ne.bindFramebuffer(B.DRAW_FRAMEBUFFER,null)}else An?w.isDataTexture||w.isData3DTexture?B.texSubImage3D(Ft,ge,rt,gt,Nt,Ee,Ue,we,it,We,At.data):q.isCompressedArrayTexture?B.compressedTexSubImage3D(Ft,ge,rt,gt,Nt,Ee,Ue,we,it,At.data):B.texSubImage3D(Ft,ge,rt,gt,Nt,Ee,Ue,we,it,We,At):w.isDataTexture?B.texSubImage2D(B.TEXTURE_2D,ge,rt,gt,Ee,Ue,it,We,At.data):w.isCompressedTexture?B.compressedTexSubImage2D(B.TEXTURE_2D,ge,rt,gt,At.width,At.height,it,At.data):B.texSubImage2D(B.TEXTURE_2D,ge,rt,gt,Ee,Ue,it,We,At);B.pixelStorei(B.UNPACK_ROW_LENGTH,ht),B.pixelStorei(B.UNPACK_IMAGE_HEIGHT,xn),B.pixelStorei(B.UNPACK_SKIP_PIXELS,Wi),B.pixelStorei(B.UNPACK_SKIP_ROWS,Tn),B.pixelStorei(B.UNPACK_SKIP_IMAGES,ds),ge===0&&q.generateMipmaps&&B.generateMipmap(Ft),Ne.unbindTexture()},this.initRenderTarget=function(w){Pe.get(w).__webglFramebuffer===void 0&&Ve.setupRenderTarget(w)},this.initTexture=function(w){w.isCubeTexture?Ve.setTextureCube(w,0):w.isData3DTexture?Ve.setTexture3D(w,0):w.isDataArrayTexture||w.isCompressedArrayTexture?Ve.setTexture2DArray(w,0):Ve.setTexture2D(w,0),Ne.unbindTexture()},this.resetState=function(){C=0,D=0,O=null,Ne.reset(),ye.reset()},typeof __THREE_DEVTOOLS__<"u"&&__THREE_DEVTOOLS__.dispatchEvent(new CustomEvent("observe",{detail:this}))}get coordinateSystem(){return Ti}get outputColorSpace(){return this._outputColorSpace}set outputColorSpace(e){this._outputColorSpace=e;const t=this.getContext();t.drawingBufferColorSpace=vt._getDrawingBufferColorSpace(e),t.unpackColorSpace=vt._getUnpackColorSpace()}}const Nf={type:"change"},vu={type:"start"},up={type:"end"},io=new xa,Ff=new is,qS=Math.cos(70*S_.DEG2RAD),Qt=new H,Fn=2*Math.PI,Dt={NONE:-1,ROTATE:0,DOLLY:1,PAN:2,TOUCH_ROTATE:3,TOUCH_PAN:4,TOUCH_DOLLY_PAN:5,TOUCH_DOLLY_ROTATE:6},Bl=1e-6;class YS extends l0{constructor(e,t=null){super(e,t),this.state=Dt.NONE,this.target=new H,this.cursor=new H,this.minDistance=0,this.maxDistance=1/0,this.minZoom=0,this.maxZoom=1/0,this.minTargetRadius=0,this.maxTargetRadius=1/0,this.minPolarAngle=0,this.maxPolarAngle=Math.PI,this.minAzimuthAngle=-1/0,this.maxAzimuthAngle=1/0,this.enableDamping=!1,this.dampingFactor=.05,this.enableZoom=!0,this.zoomSpeed=1,this.enableRotate=!0,this.rotateSpeed=1,this.keyRotateSpeed=1,this.enablePan=!0,this.panSpeed=1,this.screenSpacePanning=!0,this.keyPanSpeed=7,this.zoomToCursor=!1,this.autoRotate=!1,this.autoRotateSpeed=2,this.keys={LEFT:"ArrowLeft",UP:"ArrowUp",RIGHT:"ArrowRight",BOTTOM:"ArrowDown"},this.mouseButtons={LEFT:pr.ROTATE,MIDDLE:pr.DOLLY,RIGHT:pr.PAN},this.touches={ONE:hr.ROTATE,TWO:hr.DOLLY_PAN},this.target0=this.target.clone(),this.position0=this.object.position.clone(),this.zoom0=this.object.zoom,this._domElementKeyEvents=null,this._lastPosition=new H,this._lastQuaternion=new Ns,this._lastTargetPosition=new H,this._quat=new Ns().setFromUnitVectors(e.up,new H(0,1,0)),this._quatInverse=this._quat.clone().invert(),this._spherical=new of,this._sphericalDelta=new of,this._scale=1,this._panOffset=new H,this._rotateStart=new nt,this._rotateEnd=new nt,this._rotateDelta=new nt,this._panStart=new nt,this._panEnd=new nt,this._panDelta=new nt,this._dollyStart=new nt,this._dollyEnd=new nt,this._dollyDelta=new nt,this._dollyDirection=new H,this._mouse=new nt,this._performCursorZoom=!1,this._pointers=[],this._pointerPositions={},this._controlActive=!1,this._onPointerMove=jS.bind(this),this._onPointerDown=$S.bind(this),this._onPointerUp=KS.bind(this),this._onContextMenu=iy.bind(this),this._onMouseWheel=QS.bind(this),this._onKeyDown=ey.bind(this),this._onTouchStart=ty.bind(this),this._onTouchMove=ny.bind(this),this._onMouseDown=ZS.bind(this),this._onMouseMove=JS.bind(this),this._interceptControlDown=sy.bind(this),this._interceptControlUp=ry.bind(this),this.domElement!==null&&this.connect(this.domElement),this.update()}connect(e){super.connect(e),this.domElement.addEventListener("pointerdown",this._onPointerDown),this.domElement.addEventListener("pointercancel",this._onPointerUp),this.domElement.addEventListener("contextmenu",this._onContextMenu),this.domElement.addEventListener("wheel",this._onMouseWheel,{passive:!1}),this.domElement.getRootNode().addEventListener("keydown",this._interceptControlDown,{passive:!0,capture:!0}),this.domElement.style.touchAction="none"}disconnect(){this.domElement.removeEventListener("pointerdown",this._onPointerDown),this.domElement.removeEventListener("pointermove",this._onPointerMove),this.domElement.removeEventListener("pointerup",this._onPointerUp),this.domElement.removeEventListener("pointercancel",this._onPointerUp),this.domElement.removeEventListener("wheel",this._onMouseWheel),this.domElement.removeEventListener("contextmenu",this._onContextMenu),this.stopListenToKeyEvents(),this.domElement.getRootNode().removeEventListener("keydown",this._interceptControlDown,{capture:!0}),this.domElement.style.touchAction="auto"}dispose(){this.disconnect()}getPolarAngle(){return this._spherical.phi}getAzimuthalAngle(){return this._spherical.theta}getDistance(){return this.object.position.distanceTo(this.target)}listenToKeyEvents(e){e.addEventListener("keydown",this._onKeyDown),this._domElementKeyEvents=e}stopListenToKeyEvents(){this._domElementKeyEvents!==null&&(this._domElementKeyEvents.removeEventListener("keydown",this._onKeyDown),this._domElementKeyEvents=null)}saveState(){this.target0.copy(this.target),this.position0.copy(this.object.position),this.zoom0=this.object.zoom}reset(){this.target.copy(this.target0),this.object.position.copy(this.position0),this.object.zoom=this.zoom0,this.object.updateProjectionMatrix(),this.dispatchEvent(Nf),this.update(),this.state=Dt.NONE}update(e=null){const t=this.object.position;Qt.copy(t).sub(this.target),Qt.applyQuaternion(this._quat),this._spherical.setFromVector3(Qt),this.autoRotate&&this.state===Dt.NONE&&this._rotateLeft(this._getAutoRotationAngle(e)),this.enableDamping?(this._spherical.theta+=this._sphericalDelta.theta*this.dampingFactor,this._spherical.phi+=this._sphericalDelta.phi*this.dampingFactor):(this._spherical.theta+=this._sphericalDelta.theta,this._spherical.phi+=this._sphericalDelta.phi);let n=this.minAzimuthAngle,s=this.maxAzimuthAngle;isFinite(n)&&isFinite(s)&&(n<-Math.PI?n+=Fn:n>Math.PI&&(n-=Fn),s<-Math.PI?s+=Fn:s>Math.PI&&(s-=Fn),n<=s?this._spherical.theta=Math.max(n,Math.min(s,this._spherical.theta)):this._spherical.theta=this._spherical.theta>(n+s)/2?Math.max(n,this._spherical.theta):Math.min(s,this._spherical.theta)),this._spherical.phi=Math.max(this.minPolarAngle,Math.min(this.maxPolarAngle,this._spherical.phi)),this._spherical.makeSafe(),this.enableDamping===!0?this.target.addScaledVector(this._panOffset,this.dampingFactor):this.target.add(this._panOffset),this.target.sub(this.cursor),this.target.clampLength(this.minTargetRadius,this.maxTargetRadius),this.target.add(this.cursor);let r=!1;if(this.zoomToCursor&&this._performCursorZoom||this.object.isOrthographicCamera)this._spherical.radius=this._clampDistance(this._spherical.radius);else{const a=this._spherical.radius;this._spherical.radius=this._clampDistance(this._spherical.radius*this._scale),r=a!=this._spherical.radius}if(Qt.setFromSpherical(this._spherical),Qt.applyQuaternion(this._quatInverse),t.copy(this.target).add(Qt),this.object.lookAt(this.target),this.enableDamping===!0?(this._sphericalDelta.theta*=1-this.dampingFactor,this._sphericalDelta.phi*=1-this.dampingFactor,this._panOffset.multiplyScalar(1-this.dampingFactor)):(this._sphericalDelta.set(0,0,0),this._panOffset.set(0,0,0)),this.zoomToCursor&&this._performCursorZoom){let a=null;if(this.object.isPerspectiveCamera){const o=Qt.length();a=this._clampDistance(o*this._scale);const l=o-a;this.object.position.addScaledVector(this._dollyDirection,l),this.object.updateMatrixWorld(),r=!!l}else if(this.object.isOrthographicCamera){const o=new H(this._mouse.x,this._mouse.y,0);o.unproject(this.object);const l=this.object.zoom;this.object.zoom=Math.max(this.minZoom,Math.min(this.maxZoom,this.object.zoom/this._scale)),this.object.updateProjectionMatrix(),r=l!==this.object.zoom;const c=new H(this._mouse.x,this._mouse.y,0);c.unproject(this.object),this.object.position.sub(c).add(o),this.object.updateMatrixWorld(),a=Qt.length()}else console.warn("WARNING: OrbitControls.js encountered an unknown camera type - zoom to cursor disabled."),this.zoomToCursor=!1;a!==null&&(this.screenSpacePanning?this.target.set(0,0,-1).transformDirection(this.object.matrix).multiplyScalar(a).add(this.object.position):(io.origin.copy(this.object.position),io.direction.set(0,0,-1).transformDirection(this.object.matrix),Math.abs(this.object.up.dot(io.direction))<qS?this.object.lookAt(this.target):(Ff.setFromNormalAndCoplanarPoint(this.object.up,this.target),io.intersectPlane(Ff,this.target))))}else if(this.object.isOrthographicCamera){const a=this.object.zoom;this.object.zoom=Math.max(this.minZoom,Math.min(this.maxZoom,this.object.zoom/this._scale)),a!==this.object.zoom&&(this.object.updateProjectionMatrix(),r=!0)}return this._scale=1,this._performCursorZoom=!1,r||this._lastPosition.distanceToSquared(this.object.position)>Bl||8*(1-this._lastQuaternion.dot(this.object.quaternion))>Bl||this._lastTargetPosition.distanceToSquared(this.target)>Bl?(this.dispatchEvent(Nf),this._lastPosition.copy(this.object.position),this._lastQuaternion.copy(this.object.quaternion),this._lastTargetPosition.copy(this.target),!0):!1}_getAutoRotationAngle(e){return e!==null?Fn/60*this.autoRotateSpeed*e:Fn/60/60*this.autoRotateSpeed}_getZoomScale(e){const t=Math.abs(e*.01);return Math.pow(.95,this.zoomSpeed*t)}_rotateLeft(e){this._sphericalDelta.theta-=e}_rotateUp(e){this._sphericalDelta.phi-=e}_panLeft(e,t){Qt.setFromMatrixColumn(t,0),Qt.multiplyScalar(-e),this._panOffset.add(Qt)}_panUp(e,t){this.screenSpacePanning===!0?Qt.setFromMatrixColumn(t,1):(Qt.setFromMatrixColumn(t,0),Qt.crossVectors(this.object.up,Qt)),Qt.multiplyScalar(e),this._panOffset.add(Qt)}_pan(e,t){const n=this.domElement;if(this.object.isPerspectiveCamera){const s=this.object.position;Qt.copy(s).sub(this.target);let r=Qt.length();r*=Math.tan(this.object.fov/2*Math.PI/180),this._panLeft(2*e*r/n.clientHeight,this.object.matrix),this._panUp(2*t*r/n.clientHeight,this.object.matrix)}else this.object.isOrthographicCamera?(this._panLeft(e*(this.object.right-this.object.left)/this.object.zoom/n.clientWidth,this.object.matrix),this._panUp(t*(this.object.top-this.object.bottom)/this.object.zoom/n.clientHeight,this.object.matrix)):(console.warn("WARNING: OrbitControls.js encountered an unknown camera type - pan disabled."),this.enablePan=!1)}_dollyOut(e){this.object.isPerspectiveCamera||this.object.isOrthographicCamera?this._scale/=e:(console.warn("WARNING: OrbitControls.js encountered an unknown camera type - dolly/zoom disabled."),this.enableZoom=!1)}_dollyIn(e){this.object.isPerspectiveCamera||this.object.isOrthographicCamera?this._scale*=e:(console.warn("WARNING: OrbitControls.js encountered an unknown camera type - dolly/zoom disabled."),this.enableZoom=!1)}_updateZoomParameters(e,t){if(!this.zoomToCursor)return;this._performCursorZoom=!0;const n=this.domElement.getBoundingClientRect(),s=e-n.left,r=t-n.top,a=n.width,o=n.height;this._mouse.x=s/a*2-1,this._mouse.y=-(r/o)*2+1,this._dollyDirection.set(this._mouse.x,this._mouse.y,1).unproject(this.object).sub(this.object.position).normalize()}_clampDistance(e){return Math.max(this.minDistance,Math.min(this.maxDistance,e))}_handleMouseDownRotate(e){this._rotateStart.set(e.clientX,e.clientY)}_handleMouseDownDolly(e){this._updateZoomParameters(e.clientX,e.clientX),this._dollyStart.set(e.clientX,e.clientY)}_handleMouseDownPan(e){this._panStart.set(e.clientX,e.clientY)}_handleMouseMoveRotate(e){this._rotateEnd.set(e.clientX,e.clientY),this._rotateDelta.subVectors(this._rotateEnd,this._rotateStart).multiplyScalar(this.rotateSpeed);const t=this.domElement;this._rotateLeft(Fn*this._rotateDelta.x/t.clientHeight),this._rotateUp(Fn*this._rotateDelta.y/t.clientHeight),this._rotateStart.copy(this._rotateEnd),this.update()}_handleMouseMoveDolly(e){this._dollyEnd.set(e.clientX,e.clientY),this._dollyDelta.subVectors(this._dollyEnd,this._dollyStart),this._dollyDelta.y>0?this._dollyOut(this._getZoomScale(this._dollyDelta.y)):this._dollyDelta.y<0&&this._dollyIn(this._getZoomScale(this._dollyDelta.y)),this._dollyStart.copy(this._dollyEnd),this.update()}_handleMouseMovePan(e){this._panEnd.set(e.clientX,e.clientY),this._panDelta.subVectors(this._panEnd,this._panStart).multiplyScalar(this.panSpeed),this._pan(this._panDelta.x,this._panDelta.y),this._panStart.copy(this._panEnd),this.update()}_handleMouseWheel(e){this._updateZoomParameters(e.clientX,e.clientY),e.deltaY<0?this._dollyIn(this._getZoomScale(e.deltaY)):e.deltaY>0&&this._dollyOut(this._getZoomScale(e.deltaY)),this.update()}_handleKeyDown(e){let t=!1;switch(e.code){case this.keys.UP:e.ctrlKey||e.metaKey||e.shiftKey?this.enableRotate&&this._rotateUp(Fn*this.keyRotateSpeed/this.domElement.clientHeight):this.enablePan&&this._pan(0,this.keyPanSpeed),t=!0;break;case this.keys.BOTTOM:e.ctrlKey||e.metaKey||e.shiftKey?this.enableRotate&&this._rotateUp(-Fn*this.keyRotateSpeed/this.domElement.clientHeight):this.enablePan&&this._pan(0,-this.keyPanSpeed),t=!0;break;case this.keys.LEFT:e.ctrlKey||e.metaKey||e.shiftKey?this.enableRotate&&this._rotateLeft(Fn*this.keyRotateSpeed/this.domElement.clientHeight):this.enablePan&&this._pan(this.keyPanSpeed,0),t=!0;break;case this.keys.RIGHT:e.ctrlKey||e.metaKey||e.shiftKey?this.enableRotate&&this._rotateLeft(-Fn*this.keyRotateSpeed/this.domElement.clientHeight):this.enablePan&&this._pan(-this.keyPanSpeed,0),t=!0;break}t&&(e.preventDefault(),this.update())}_handleTouchStartRotate(e){if(this._pointers.length===1)this._rotateStart.set(e.pageX,e.pageY);else{const t=this._getSecondPointerPosition(e),n=.5*(e.pageX+t.x),s=.5*(e.pageY+t.y);this._rotateStart.set(n,s)}}_handleTouchStartPan(e){if(this._pointers.length===1)this._panStart.set(e.pageX,e.pageY);else{const t=this._getSecondPointerPosition(e),n=.5*(e.pageX+t.x),s=.5*(e.pageY+t.y);this._panStart.set(n,s)}}_handleTouchStartDolly(e){const t=this._getSecondPointerPosition(e),n=e.pageX-t.x,s=e.pageY-t.y,r=Math.sqrt(n*n+s*s);this._dollyStart.set(0,r)}_handleTouchStartDollyPan(e){this.enableZoom&&this._handleTouchStartDolly(e),this.enablePan&&this._handleTouchStartPan(e)}_handleTouchStartDollyRotate(e){this.enableZoom&&this._handleTouchStartDolly(e),this.enableRotate&&this._handleTouchStartRotate(e)}_handleTouchMoveRotate(e){if(this._pointers.length==1)this._rotateEnd.set(e.pageX,e.pageY);else{const n=this._getSecondPointerPosition(e),s=.5*(e.pageX+n.x),r=.5*(e.pageY+n.y);this._rotateEnd.set(s,r)}this._rotateDelta.subVectors(this._rotateEnd,this._rotateStart).multiplyScalar(this.rotateSpeed);const t=this.domElement;this._rotateLeft(Fn*this._rotateDelta.x/t.clientHeight),this._rotateUp(Fn*this._rotateDelta.y/t.clientHeight),this._rotateStart.copy(this._rotateEnd)}_handleTouchMovePan(e){if(this._pointers.length===1)this._panEnd.set(e.pageX,e.pageY);else{const t=this._getSecondPointerPosition(e),n=.5*(e.pageX+t.x),s=.5*(e.pageY+t.y);this._panEnd.set(n,s)}this._panDelta.subVectors(this._panEnd,this._panStart).multiplyScalar(this.panSpeed),this._pan(this._panDelta.x,this._panDelta.y),this._panStart.copy(this._panEnd)}_handleTouchMoveDolly(e){const t=this._getSecondPointerPosition(e),n=e.pageX-t.x,s=e.pageY-t.y,r=Math.sqrt(n*n+s*s);this._dollyEnd.set(0,r),this._dollyDelta.set(0,Math.pow(this._dollyEnd.y/this._dollyStart.y,this.zoomSpeed)),this._dollyOut(this._dollyDelta.y),this._dollyStart.copy(this._dollyEnd);const a=(e.pageX+t.x)*.5,o=(e.pageY+t.y)*.5;this._updateZoomParameters(a,o)}_handleTouchMoveDollyPan(e){this.enableZoom&&this._handleTouchMoveDolly(e),this.enablePan&&this._handleTouchMovePan(e)}_handleTouchMoveDollyRotate(e){this.enableZoom&&this._handleTouchMoveDolly(e),this.enableRotate&&this._handleTouchMoveRotate(e)}_addPointer(e){this._pointers.push(e.pointerId)}_removePointer(e){delete this._pointerPositions[e.pointerId];for(let t=0;t<this._pointers.length;t++)if(this._pointers[t]==e.pointerId){this._pointers.splice(t,1);return}}_isTrackingPointer(e){for(let t=0;t<this._pointers.length;t++)if(this._pointers[t]==e.pointerId)return!0;return!1}_trackPointer(e){let t=this._pointerPositions[e.pointerId];t===void 0&&(t=new nt,this._pointerPositions[e.pointerId]=t),t.set(e.pageX,e.pageY)}_getSecondPointerPosition(e){const t=e.pointerId===this._pointers[0]?this._pointers[1]:this._pointers[0];return this._pointerPositions[t]}_customWheelEvent(e){const t=e.deltaMode,n={clientX:e.clientX,clientY:e.clientY,deltaY:e.deltaY};switch(t){case 1:n.deltaY*=16;break;case 2:n.deltaY*=100;break}return e.ctrlKey&&!this._controlActive&&(n.deltaY*=10),n}}function $S(i){this.enabled!==!1&&(this._pointers.length===0&&(this.domElement.setPointerCapture(i.pointerId),this.domElement.addEventListener("pointermove",this._onPointerMove),this.domElement.addEventListener("pointerup",this._onPointerUp)),!this._isTrackingPointer(i)&&(this._addPointer(i),i.pointerType==="touch"?this._onTouchStart(i):this._onMouseDown(i)))}function jS(i){this.enabled!==!1&&(i.pointerType==="touch"?this._onTouchMove(i):this._onMouseMove(i))}function KS(i){switch(this._removePointer(i),this._pointers.length){case 0:this.domElement.releasePointerCapture(i.pointerId),this.domElement.removeEventListener("pointermove",this._onPointerMove),this.domElement.removeEventListener("pointerup",this._onPointerUp),this.dispatchEvent(up),this.state=Dt.NONE;break;case 1:const e=this._pointers[0],t=this._pointerPositions[e];this._onTouchStart({pointerId:e,pageX:t.x,pageY:t.y});break}}function ZS(i){let e;switch(i.button){case 0:e=this.mouseButtons.LEFT;break;case 1:e=this.mouseButtons.MIDDLE;break;case 2:e=this.mouseButtons.RIGHT;break;default:e=-1}switch(e){case pr.DOLLY:if(this.enableZoom===!1)return;this._handleMouseDownDolly(i),this.state=Dt.DOLLY;break;case pr.ROTATE:if(i.ctrlKey||i.metaKey||i.shiftKey){if(this.enablePan===!1)return;this._handleMouseDownPan(i),this.state=Dt.PAN}else{if(this.enableRotate===!1)return;this._handleMouseDownRotate(i),this.state=Dt.ROTATE}break;case pr.PAN:if(i.ctrlKey||i.metaKey||i.shiftKey){if(this.enableRotate===!1)return;this._handleMouseDownRotate(i),this.state=Dt.ROTATE}else{if(this.enablePan===!1)return;this._handleMouseDownPan(i),this.state=Dt.PAN}break;default:this.state=Dt.NONE}this.state!==Dt.NONE&&this.dispatchEvent(vu)}function JS(i){switch(this.state){case Dt.ROTATE:if(this.enableRotate===!1)return;this._handleMouseMoveRotate(i);break;case Dt.DOLLY:if(this.enableZoom===!1)return;this._handleMouseMoveDolly(i);break;case Dt.PAN:if(this.enablePan===!1)return;this._handleMouseMovePan(i);break}}function QS(i){this.enabled===!1||this.enableZoom===!1||this.state!==Dt.NONE||(i.preventDefault(),this.dispatchEvent(vu),this._handleMouseWheel(this._customWheelEvent(i)),this.dispatchEvent(up))}function ey(i){this.enabled!==!1&&this._handleKeyDown(i)}function ty(i){switch(this._trackPointer(i),this._pointers.length){case 1:switch(this.touches.ONE){case hr.ROTATE:if(this.enableRotate===!1)return;this._handleTouchStartRotate(i),this.state=Dt.TOUCH_ROTATE;break;case hr.PAN:if(this.enablePan===!1)return;this._handleTouchStartPan(i),this.state=Dt.TOUCH_PAN;break;default:this.state=Dt.NONE}break;case 2:switch(this.touches.TWO){case hr.DOLLY_PAN:if(this.enableZoom===!1&&this.enablePan===!1)return;this._handleTouchStartDollyPan(i),this.state=Dt.TOUCH_DOLLY_PAN;break;case hr.DOLLY_ROTATE:if(this.enableZoom===!1&&this.enableRotate===!1)return;this._handleTouchStartDollyRotate(i),this.state=Dt.TOUCH_DOLLY_ROTATE;break;default:this.state=Dt.NONE}break;default:this.state=Dt.NONE}this.state!==Dt.NONE&&this.dispatchEvent(vu)}function ny(i){switch(this._trackPointer(i),this.state){case Dt.TOUCH_ROTATE:if(this.enableRotate===!1)return;this._handleTouchMoveRotate(i),this.update();break;case Dt.TOUCH_PAN:if(this.enablePan===!1)return;this._handleTouchMovePan(i),this.update();break;case Dt.TOUCH_DOLLY_PAN:if(this.enableZoom===!1&&this.enablePan===!1)return;this._handleTouchMoveDollyPan(i),this.update();break;case Dt.TOUCH_DOLLY_ROTATE:if(this.enableZoom===!1&&this.enableRotate===!1)return;this._handleTouchMoveDollyRotate(i),this.update();break;default:this.state=Dt.NONE}}function iy(i){this.enabled!==!1&&i.preventDefault()}function sy(i){i.key==="Control"&&(this._controlActive=!0,this.domElement.getRootNode().addEventListener("keyup",this._interceptControlUp,{passive:!0,capture:!0}))}function ry(i){i.key==="Control"&&(this._controlActive=!1,this.domElement.getRootNode().removeEventListener("keyup",this._interceptControlUp,{passive:!0,capture:!0}))}const Vc=Math.PI/180;let ta=null;class xu{note=U("div",{class:"note"});element=U("div",{class:"scene"},this.note);scene=new $_;camera=new si(38,4/3,.01,50);ok;renderer=null;controls=null;asked=!1;constructor(e,t=[1.6,1.1,2.2]){this.element.setAttribute("role","img"),this.element.setAttribute("aria-label",e),this.camera.position.set(...t);try{if(this.renderer=new XS({antialias:ta!==!0,alpha:!0,powerPreference:"low-power"}),ta===null){const s=this.renderer.getContext(),r=s.getExtension("WEBGL_debug_renderer_info");ta=r?/swiftshader|llvmpipe|software/i.test(String(s.getParameter(r.UNMASKED_RENDERER_WEBGL))):!1}this.renderer.setPixelRatio(ta?1:Math.min(2,window.devicePixelRatio)),this.element.prepend(this.renderer.domElement),this.controls=new YS(this.camera,this.renderer.domElement),this.controls.addEventListener("change",()=>this.ask()),new ResizeObserver(()=>this.ask()).observe(this.element)}catch{this.note.textContent="This browser draws no 3D here (WebGL is off); everything is on the page in numbers as well."}this.ok=this.renderer!==null,this.scene.add(new r0(16777215,1.6));const n=new s0(16777215,1.9);n.position.set(1.5,3,2),this.scene.add(n)}ask(){this.asked||!this.renderer||(this.asked=!0,requestAnimationFrame(()=>{this.asked=!1,this.render()}))}render(){const e=this.element.clientWidth,t=this.element.clientHeight;if(!this.renderer||!e||!t)return;const n=this.renderer.getSize(new nt);(n.x!==e||n.y!==t)&&(this.renderer.setSize(e,t,!1),this.camera.aspect=e/t,this.camera.updateProjectionMatrix()),this.renderer.render(this.scene,this.camera)}}function da(i,e=1){return new np({color:new lt(i),transparent:e<1,opacity:e})}function yn(i,e,t,n){const s=e.clone().sub(i),r=new _n(new No(t,t,s.length(),20),da(n));return r.position.copy(i).addScaledVector(s,.5),r.quaternion.setFromUnitVectors(new H(0,1,0),s.normalize()),r}class hp extends xu{first=new ii;second=new ii;probe=new ii;sky=null;geometry="";measured=new Set;cells=0;constructor(){super("positioner with device and probe"),this.controls?.target.set(0,-.05,.35),this.controls?.update()}build(e){for(const c of[...this.scene.children])(c instanceof ii||c instanceof lf||c instanceof fa||c instanceof _n)&&this.scene.remove(c);const t=En(),n=t.quiet;this.geometry=e.geometry,this.first=new ii,this.second=new ii,this.probe=new ii;const s=new lf(2.4,12,t.grid,t.grid);s.position.set(0,-.62,.4),this.scene.add(s);const r=e.geometry==="roll-over-azimuth",a=e.geometry==="azimuth-over-elevation",[o,l]=a?[this.second,this.first]:[this.first,this.second];o.add(l),this.scene.add(o),r?(o.add(yn(new H(0,-.6,0),new H(0,-.5,0),.16,n),yn(new H(0,-.52,-.02),new H(0,-.52,-.42),.035,n),yn(new H(0,-.52,-.4),new H(0,0,-.4),.035,n),yn(new H(0,0,-.46),new H(0,0,-.3),.055,n)),l.add(yn(new H(0,0,-.3),new H(0,0,-.06),.03,t.co))):a?(this.scene.add(yn(new H(.42,-.62,0),new H(.42,0,0),.03,n),yn(new H(-.42,-.62,0),new H(-.42,0,0),.03,n)),o.add(yn(new H(-.42,0,0),new H(-.4,-.36,0),.025,n),yn(new H(.42,0,0),new H(.4,-.36,0),.025,n),yn(new H(-.4,-.36,0),new H(.4,-.36,0),.03,n)),l.add(yn(new H(0,-.35,0),new H(0,-.06,0),.03,t.co))):(o.add(yn(new H(0,-.62,0),new H(0,-.5,0),.16,n),yn(new H(-.3,-.5,0),new H(.3,-.5,0),.03,n),yn(new H(-.3,-.5,0),new H(-.3,0,0),.03,n),yn(new H(.3,-.5,0),new H(.3,0,0),.03,n)),l.add(yn(new H(-.3,0,0),new H(.3,0,0),.018,t.co))),this.addDevice(l,e),this.addProbe(e),this.addSky(l,e.directions),this.turn(new Array(e.axes.length).fill(0),e.axes)}addDevice(e,t){const n=.001/t.range_m,s=Math.max(...t.size_mm)*n,r=Math.max(1,.16/s),a=t.size_mm.map(f=>Math.max(.012,f*n*r)),o=new _n(new Dr(a[0],a[1],a[2]),da(En().other));o.position.set(t.offset_mm[0]*n,t.offset_mm[1]*n,t.offset_mm[2]*n),e.add(o);const l=new H(0,0,0),c=En();for(const[f,u]of[[new H(1,0,0),c.cross],[new H(0,1,0),c.quiet],[new H(0,0,1),c.co]])e.add(new _r(f,l,.24,u,.05,.03));this.note.textContent=`device's own axes: x orange, y grey, z blue (boresight)${r>1?`; the device is drawn ${r.toFixed(1)} times larger`:""}`}addProbe(e){const t=En(),n=new _n(new Fo(.05,.14,24,1,!0),da(t.ink));n.rotation.x=Math.PI/2,n.position.z=.07,this.probe.add(n,new _r(new H(1,0,0),new H(0,0,-.02),.2,t.cross,.05,.035)),e.ports===2&&this.probe.add(new _r(new H(0,1,0),new H(0,0,-.02),.2,t.co,.05,.035)),this.probe.position.set(0,0,1);const s=new fa(new vn().setFromPoints([new H(0,0,0),new H(0,0,.97)]),new Ma({color:t.quiet}));this.scene.add(this.probe,s)}addSky(e,t){this.cells=t.length/3;const n=new Float32Array(t.map(a=>.33*a)),s=new Float32Array(t.length),r=new vn;r.setAttribute("position",new zn(n,3)),r.setAttribute("color",new zn(s,3)),this.sky=new Q_(r,new Qd({size:.013,vertexColors:!0})),e.add(this.sky),this.measured.clear(),this.paint(-1)}paint(e,t=this.measured){if(!this.sky)return;this.measured=new Set(t);const n=En(),s=new lt(n.grid),r=new lt(n.co),a=new lt(n.cross),o=this.sky.geometry.getAttribute("color");for(let l=0;l<this.cells;l++){const c=l===e?a:this.measured.has(l)?r:s;o.setXYZ(l,c.r,c.g,c.b)}o.needsUpdate=!0,this.ask()}turn(e,t){const n=s=>(e[t.indexOf(s)]??0)*Vc;this.geometry==="roll-over-azimuth"?(this.first.rotation.y=-n("azimuth"),this.second.rotation.z=-n("roll")):(this.first.rotation.y=-n("azimuth"),this.second.rotation.x=n("elevation")),this.probe.rotation.z=n("probe"),this.ask()}}class ay extends xu{arrows=new ii;ball;constructor(e){super("sphere of directions in the device frame",[1.5,1.2,2.4]);const t=En();this.ball=new _n(new wo(1,48,32),da(t.band,.28)),this.scene.add(this.ball,this.arrows);for(let l=0;l<12;l++)this.scene.add(this.circle(c=>Of(c*2*Math.PI,l*Math.PI/12),t.grid));for(let l=1;l<6;l++)this.scene.add(this.circle(c=>Of(l*Math.PI/6,c*2*Math.PI),t.grid));const n=new H(0,0,0);for(const[l,c]of[[new H(1,0,0),t.cross],[new H(0,1,0),t.quiet],[new H(0,0,1),t.co]])this.scene.add(new _r(l,n,1.3,c,.09,.05));this.note.textContent="drag on the sphere; x orange, y grey, z blue (boresight). Empty space turns the view.";const s=this.renderer?.domElement;if(!s)return;const r=new o0;let a=!1;const o=l=>{const c=s.getBoundingClientRect();r.setFromCamera(new nt((l.clientX-c.left)/c.width*2-1,-((l.clientY-c.top)/c.height)*2+1),this.camera);const f=r.intersectObject(this.ball)[0];if(!f)return!1;const u=f.point.normalize();return e(Math.acos(Math.max(-1,Math.min(1,u.z)))/Vc,Math.atan2(u.y,u.x)/Vc),!0};s.addEventListener("pointerdown",l=>{a=o(l),a&&this.controls&&(this.controls.enabled=!1,s.setPointerCapture(l.pointerId))},{capture:!0}),s.addEventListener("pointermove",l=>{a&&o(l)}),s.addEventListener("pointerup",()=>{a=!1,this.controls&&(this.controls.enabled=!0)})}circle(e,t){const n=Array.from({length:73},(s,r)=>e(r/72));return new fa(new vn().setFromPoints(n),new Ma({color:t}))}show(e,t){this.arrows.clear();const n=new H(...e),s=new _n(new wo(.035,20,14),da(En().ink));s.position.copy(n),this.arrows.add(s);for(const r of t)this.arrows.add(new _r(new H(...r.way),n,r.length??.45,r.colour,.1,.06));this.ask()}}function Of(i,e){return new H(Math.sin(i)*Math.cos(e),Math.sin(i)*Math.sin(e),Math.cos(i))}class fp extends xu{mesh=null;directions=new Float32Array;rows=0;columns=0;constructor(e="pattern as a surface"){super(e,[1.35,1,1.5]);const t=new H(0,0,0),n=En();for(const[s,r]of[[new H(1,0,0),n.cross],[new H(0,1,0),n.quiet],[new H(0,0,1),n.co]])this.scene.add(new _r(s,t,1.2,r,.08,.045));this.note.textContent="device's own axes: x orange, y grey, z blue (boresight)"}shape(e,t,n,s){this.mesh&&(this.scene.remove(this.mesh),this.mesh.geometry.dispose()),this.rows=e,this.columns=t,this.directions=Float32Array.from(n);const r=new vn,a=[];r.setAttribute("position",new zn(new Float32Array(this.directions.length),3)),r.setAttribute("color",new zn(new Float32Array(this.directions.length),3));const o=ta&&e*t>3e4?2:1;for(let l=0;l+o<e;l+=o)for(let c=0;c<t;c+=o){if(c+o>=t&&!s)continue;const f=c+o>=t?0:c+o,u=l*t+c,h=l*t+f,p=u+o*t,v=h+o*t;a.push(u,p,h,h,p,v)}r.setIndex(a),this.mesh=new _n(r,new np({vertexColors:!0,side:2,flatShading:!0})),this.mesh.frustumCulled=!1,this.scene.add(this.mesh)}level(e,t){if(!this.mesh||e.length!==this.rows*this.columns)return;const n=this.mesh.geometry.getAttribute("position"),s=this.mesh.geometry.getAttribute("color"),r=n.array,a=s.array,o=this.directions;for(let l=0;l<e.length;l++){const c=e[l],f=c!==null&&c===c,u=f?Math.max(.02,1-c/t):0;r[3*l]=o[3*l]*u,r[3*l+1]=o[3*l+1]*u,r[3*l+2]=o[3*l+2]*u;const h=3*Math.max(0,su(f?c:null,t,0));a[3*l]=(rs[h]/255)**2.2,a[3*l+1]=(rs[h+1]/255)**2.2,a[3*l+2]=(rs[h+2]/255)**2.2}n.needsUpdate=!0,s.needsUpdate=!0,this.ask()}}const dt={me:null,campaign:""};function Ar(i){const e=["view","operate","configure"];return dt.me!==null&&e.indexOf(dt.me.role)>=e.indexOf(i)}function ko(i){return i instanceof zf?i.faults.join(`
`):i instanceof TypeError?"The server does not answer; is colure serve still running?":String(i)}function Sa(i){return async e=>{try{const t=await e;return qe(i),t}catch(t){qe(i,ko(t));return}}}function oy(){const i=Et("STOP",()=>void Bt("/api/stop",{}).catch(t=>{i.title=ko(t)}),"stop","brake the axes and end the scan (Ctrl + .)"),e=t=>{i.disabled=!t.running};return Ai.watch({status:e}),window.addEventListener("keydown",t=>{t.ctrlKey&&t.key==="."&&i.click()}),i}function ly(){const i=U("span",{class:"row"}),e=()=>{const n=dt.me?.mine===!0,s=Ai.status.lease,r=U("span",{class:`chip${n?" hot":""}`},n?"you may move the axes":s?`${s} may move the axes`:"nobody may move the axes");qe(i,r,Ar("operate")&&(n?Et("give back",()=>void t(!1)):Et("take motion lease",()=>void t(!0))))},t=async n=>{try{dt.me=await Bt("/api/lease",{hold:n})}catch(s){i.title=ko(s),dt.me=await Gf()}e()};return window.setInterval(()=>{dt.me?.mine&&t(!0)},1e4),Ai.watch({status:n=>{dt.me&&dt.me.mine!==(n.lease===dt.me.name)&&(dt.me.mine=n.lease===dt.me.name),e()}}),e(),i}const kl=-50,dp={flip:"flip test","beam-coarse":"beam search, coarse","beam-fine":"beam search, fine"};function cy(){const i=U("p",{class:"faults",attrs:{role:"alert"}}),e=Sa(i),t=U("div",{class:"large"}),n=U("div",{class:"big"}),s=U("div",{class:"large"}),r=U("p",{class:"quiet"}),a=U("p",{class:"mono"}),o=U("p",{class:"mono"}),l=U("ul",{class:"words",attrs:{"aria-live":"polite"}}),c=U("i",{class:"done"}),f=new ra("levels measured so far"),u=new fp("levels measured so far"),h=new xo,p=new xo,v=new hp;let M="";const m=U("div",{class:"row"}),d=U("input",{attrs:{value:"first",pattern:"[A-Za-z0-9_-]{1,80}","aria-label":"name of the run"}});let b="";const A=()=>void po(d.value,e),E=g=>()=>void e(Bt(`/api/${g}`,{run:Ai.status.run??"",sequence:Ai.status.sequence})),F=g=>{const S=dt.me?.mine===!0,P=`${g.state}${S}${g.running}`;if(P===b)return;b=P;const I=S?"":Ar("operate")?"take the motion lease first (top right)":"this session may only watch",V=Et("start or go on",A,"main",I),k=Et("pause",E("pause"),"",I),X=Et("resume",E("resume"),"",I);V.disabled=!S||g.running,k.disabled=!S||g.state!=="running",X.disabled=!S||g.state!=="paused",qe(m,!g.running&&U("label",{class:"row"},"run",d),V,k,X,I&&U("span",{class:"small quiet"},I))},C=g=>{F(g);const S=g.total?(g.measured??0)/g.total:0;qe(t,g.state),qe(n,g.total?`${(100*S).toFixed(S<.1?1:0)} %`:"-"),qe(s,g.running&&g.left_s!==void 0?`${mo(g.left_s)} left`:g.text??""),qe(r,g.total?`${g.measured} of ${g.total} points of run ${g.run}${g.kind&&g.kind!=="scan"?` (${dp[g.kind]})`:""}; every one is on disk`:"No scan yet. Start one here, or close this page: a scan does not need it."),c.style.width=`${100*S}%`,qe(a,g.axes&&g.position_deg?.length?g.axes.map((X,$)=>`${X} ${ot(g.position_deg[$],2)}°`).join("   "):"");const P=g.campaign??dt.campaign;M!==P?(M=P,e(Bt("/api/motion",{campaign:P})).then(X=>{X&&v.build(X)})):g.axes&&g.angles_deg?.length&&v.turn(g.angles_deg,g.axes);const I=g.level_db===null||g.level_db===void 0?[]:[`last sweep ${ot(g.level_db,1)} dB (S21)`,`strongest  ${ot(g.strongest_db??null,1)} dB`,`noise, as planned ${ot(g.noise_db??null,1)} dB`];qe(o,...I.flatMap((X,$)=>$?[U("br"),X]:[X])),o.classList.toggle("bad",typeof g.level_db=="number"&&typeof g.noise_db=="number"&&g.level_db<g.noise_db+10),qe(l,...[...g.words??[]].reverse().slice(0,60).map(X=>U("li",{class:X.kind},U("time",{},new Date(1e3*X.at).toLocaleTimeString()),X.text)));const V=En(),k=g.ties??[];k.length&&h.draw(k.map(X=>X[0]/60),[{name:"level / dB",values:k.map(X=>X[1]),colour:V.co,points:!0},{name:"phase / 10 deg",values:k.map(X=>X[2]/10),colour:V.cross,dash:[5,3],points:!0}],{x:"minutes of the run",y:"change of the ties",height:190})};let D=null;const O=Ai.watch({status:C,grid:g=>{D={rows:g.rows,columns:g.columns,names:[g.row_name,g.column_name]},u.shape(g.rows.length,g.columns.length,g.directions,g.column_name==="phi")},frame:g=>{if(!D)return;const S=D;f.draw(S.rows,S.columns,g,{rowName:`${S.names[0]} / deg`,columnName:`${S.names[1]} / deg`,low:kl,high:0,unit:"dB"}),u.level(g,kl);const P=uy(g,S.columns.length),I=S.rows.map((V,k)=>{const X=g[k*S.columns.length+P];return Number.isNaN(X)?null:X});p.draw(S.rows,[{name:`${S.names[1]} ${ot(S.columns[P],0)}°`,values:I,colour:En().co}],{x:`${S.names[0]} / deg`,y:"dB below the highest",height:190,range:[kl-10,2]})}});return{title:"Scan",element:U("main",{},U("div",{class:"columns scan"},U("section",{class:"stack"},U("div",{class:"card"},t,n,U("div",{class:"bar"},c),s,r,m,i),U("div",{class:"card"},U("h2",{},"Now"),a,o),U("div",{class:"card"},U("h2",{},"What happened"),l)),U("section",{class:"stack"},U("div",{class:"card"},U("h2",{},"Measured so far, both polarizations"),f.element),U("div",{class:"card"},U("h2",{},"Cut through the strongest column"),p.element)),U("section",{class:"stack"},U("div",{class:"card"},u.element),U("div",{class:"card"},v.element),U("div",{class:"card"},U("h2",{},"Drift of the ties"),h.element)))),leave:O}}function uy(i,e){let t=0,n=0;return i.forEach((s,r)=>{!Number.isNaN(s)&&(r===0||s>t||Number.isNaN(t))&&(t=s,n=r)}),n%e}async function po(i,e,t="scan"){const n=await e(pa("/api/cautions/{campaign}",[dt.campaign]));return n?new Promise(s=>{const r=U("input",{attrs:{type:"checkbox"},on:{change:()=>{o.disabled=!r.checked}}}),a=U("input",{attrs:{type:"checkbox"}}),o=Et("start",()=>{l.close();const c={campaign:dt.campaign,run:i,sequence:Ai.status.sequence,cautions_read:!0,kind:t,home:a.checked};e(Bt("/api/start",c)).then(f=>s(f!==void 0))},"main");o.disabled=!0;const l=U("dialog",{on:{close:()=>{l.remove(),s(!1)}}},U("h1",{},t==="scan"?"Before anything moves":`Before anything moves: ${dp[t]}`),U("ul",{},...n.map(c=>U("li",{},c))),U("p",{},U("label",{},r," Everyone is clear of the axes and the cautions are understood.")),U("p",{class:"small"},U("label",{},a," Home the axes first (needed after a fault of the motion).")),U("div",{class:"row"},Et("not now",()=>l.close()),U("span",{class:"spring"}),o));document.body.append(l),l.showModal()}):!1}function hy(){const i=U("p",{class:"faults",attrs:{role:"alert"}}),e=Sa(i),t=U("div"),n=U("div",{class:"stack"}),s=U("p",{class:"quiet"}),r=U("input",{attrs:{value:"flip",pattern:"[A-Za-z0-9_-]{1,80}","aria-label":"name of the flip test's run"}}),a=Et("talk to every instrument",()=>void(async()=>{a.disabled=!0,qe(t,U("p",{class:"quiet"},"Nothing moves."));const b=await e(na("/api/check",{campaign:dt.campaign,run:"check"}));a.disabled=!1,qe(t,b&&On(["what","","found"],b.map(A=>[A.what,U("span",{class:A.good?"good":"bad"},A.good?"ready":"not ready"),A.found])))})()),o=async()=>{const b=await e(Bt("/api/flip",{campaign:dt.campaign,run:r.value}));b&&qe(n,fy(b.numbers),...b.sentences.map(A=>U("p",{},A)))},l=Et("measure both sides",()=>void po(r.value,e,"flip"),"main","needs the motion lease"),c=U("p",{class:"quiet"}),f=U("input",{attrs:{value:"beam",pattern:"[A-Za-z0-9_-]{1,70}","aria-label":"name of the beam search"}}),u=U("div"),h=Et("look coarsely",()=>void po(f.value,e,"beam-coarse"),"main","needs the motion lease"),p=Et("look finely",()=>void po(f.value,e,"beam-fine"),"main","needs the motion lease, and a coarse look"),v=async()=>{const b=await e(Bt("/api/beam",{campaign:dt.campaign,run:f.value}));b&&qe(u,...b.sentences.map(A=>U("p",{},A)),Et("set as home",()=>void(async()=>{const A=await e(Bt("/api/home",{campaign:dt.campaign,run:f.value}));A&&qe(c,A.join("; "))})(),"","azimuth/elevation positioners: the beam's readouts become the axes' zeros in chamber.toml"))};let M=!1;const m=Ai.watch({status:b=>{const A=M&&!b.running&&b.state==="done",E=`${b.state}: ${b.measured??0} of ${b.total??0} points`;b.kind==="flip"&&(qe(s,E),A&&o()),b.kind?.startsWith("beam")&&b.running&&qe(c,`${b.kind==="beam-coarse"?"coarse":"fine"} look, ${E}`),A&&b.kind==="beam-coarse"&&qe(c,"The coarse look is done; the fine one goes where it was strongest."),A&&b.kind==="beam-fine"&&v(),M=b.running;for(const F of[l,h,p])F.disabled=b.running||dt.me?.mine!==!0}});return{title:"Align",element:U("main",{},i,U("div",{class:"columns two steps"},U("section",{class:"card"},U("h2",{},"Connect"),U("p",{},"Axes, analyzer, switch and interlock answer before anything is touched. Homing is part of a start: tick it there after a fault."),a,t),U("section",{class:"card"},U("h2",{},"Level, laser or pointer"),U("p",{},"Set the roll axis level and the probe on its line with the means you have; the readings go into chamber.toml under [alignment] with their uncertainty, and count as what was known beforehand."),U("p",{class:"small"},"Alignment lasers: class 2 or lower, never towards eyes, off before the run.")),U("section",{class:"card"},U("h2",{},"Flip test"),U("p",{},"One cut from both sides: theta, and -theta with the roll at 180 deg. A device cannot tell them apart; what differs is the range: a zero that is off, axes that miss each other. A few minutes."),U("div",{class:"row"},U("label",{class:"row"},"run",r),l,Et("read a finished one",()=>void o())),s,n),U("section",{class:"card"},U("h2",{},"Beam search"),U("p",{},"Steps of half a beam over the front, then a fine look where it was strongest: where the beam is, before hours are spent. On azimuth and elevation its readouts can become the axes' zeros."),U("div",{class:"row"},U("label",{class:"row"},"run",f),h,p,Et("read a finished one",()=>void v())),c,u),U("section",{class:"card"},U("h2",{},"What only a scan shows"),U("p",{},"Whole spheres find the remaining misalignments by themselves: roll-axis tilt, both offsets, the probe's roll. They are taken out of the data and listed in the run's findings with what to turn.")))),leave:m}}function fy(i){const e="http://www.w3.org/2000/svg",t=(h,p,v="")=>{const M=document.createElementNS(e,h);for(const[m,d]of Object.entries(p))M.setAttribute(m,String(d));return M.textContent=v,M},n=t("svg",{viewBox:"0 0 420 190",role:"img","aria-label":"range from above with what to turn and shift"}),s=Math.abs(i.theta_zero_deg)>i.theta_zero_expanded_deg,r=Math.abs(i.axes_offset_mm)>i.axes_offset_expanded_mm,a="currentColor",o="var(--cross)",l=i.axes_offset_mm>0?1:-1,c=i.theta_zero_deg>0?1:0;n.append(t("line",{x1:90,y1:95,x2:385,y2:95,stroke:a,"stroke-dasharray":"4 4",opacity:.5}),t("circle",{cx:90,cy:95,r:46,fill:"none",stroke:a}),t("circle",{cx:90,cy:95,r:4,fill:a}),t("line",{x1:50,y1:95-12*l*(r?1:0),x2:130,y2:95-12*l*(r?1:0),stroke:"var(--co)","stroke-width":5}),t("path",{d:"M385 82 L410 95 L385 108 Z",fill:a}),t("text",{x:352,y:72,fill:a,"font-size":13},"probe"),t("text",{x:20,y:18,fill:a,"font-size":13},"from above; the roll axis in blue-green")),s&&n.append(t("path",{d:c?"M90 34 A61 61 0 0 1 143 65":"M90 156 A61 61 0 0 0 143 125",fill:"none",stroke:o,"stroke-width":3,"marker-end":"url(#tip)"}),t("text",{x:150,y:c?50:150,fill:o,"font-size":14},`turn the azimuth zero ${ot(Math.abs(i.theta_zero_deg),3)}° towards ${i.theta_zero_deg>0?"negative":"positive"} readouts`)),r&&n.append(t("path",{d:`M90 95 v${l>0?40:-40}`,stroke:o,"stroke-width":3,"marker-end":"url(#tip)"}),t("text",{x:104,y:l>0?132:66,fill:o,"font-size":14},`shift the roll axis ${ot(Math.abs(i.axes_offset_mm),3)} mm`)),!s&&!r&&n.append(t("text",{x:150,y:40,fill:"var(--good)","font-size":14},"nothing to do within the uncertainty"));const f=t("marker",{id:"tip",viewBox:"0 0 8 8",refX:6,refY:4,markerWidth:6,markerHeight:6,orient:"auto-start-reverse"});f.append(t("path",{d:"M0 0 L8 4 L0 8 Z",fill:o}));const u=t("defs",{});return u.append(f),n.append(u),n}function pp(){const i=U("p",{class:"faults"}),e=U("div",{class:"stack"}),t=Sa(i);let n=40,s=25,r=0,a=0,o=!1,l=!1;const c=[U("input",{attrs:{type:"number",min:0,max:180,step:1,"aria-label":"theta in degrees"}}),U("input",{attrs:{type:"number",min:-180,max:360,step:1,"aria-label":"phi in degrees"}})],f=new ay((d,b)=>{n=Math.round(10*d)/10,s=Math.round(10*b)/10,u()});c.forEach((d,b)=>d.addEventListener("input",()=>{d.value!==""&&(b?s=Number(d.value):n=Number(d.value),u())}));const u=async()=>{if(o){l=!0;return}o=!0;const d=await t(Bt("/api/tutor",{theta_deg:n,phi_deg:s}));o=!1,d&&p(d),l&&(l=!1,await u())};let h=null;const p=d=>{h=d,document.activeElement!==c[0]&&(c[0].value=String(d.theta)),document.activeElement!==c[1]&&(c[1].value=String(d.phi));const b=En(),A=d.bases[r],E=d.positioners[a],F=E.ways[0];f.show(d.direction,[{way:A.first,colour:b.co},{way:A.second,colour:b.band},{way:F.fixed,colour:b.quiet,length:.7},{way:F.following,colour:b.cross,length:.62}]),qe(e,On(["this direction","angles / deg","formula"],[["theta, phi",`${ot(d.theta,1)}, ${ot(d.phi,1)}`,U("code",{},"(sin th cos ph, sin th sin ph, cos th)")],["azimuth, elevation (pole y)",`${ot(d.azimuth,1)}, ${ot(d.elevation,1)}`,U("code",{},"(sin az cos el, sin el, cos az cos el)")],["alpha, epsilon (pole x)",`${ot(d.alpha,1)}, ${ot(d.epsilon,1)}`,U("code",{},"(sin al, cos al sin ep, cos al cos ep)")]]),On(["components there","first","second"],d.bases.map(C=>[U("span",{attrs:{title:C.formula}},C.name),U("code",{},Bf(C.first)),U("code",{},Bf(C.second))])),U("p",{class:"small mono"},A.formula),On(["positioner","readouts / deg","fixed probe sees slant","probe roll that follows"],d.positioners.map(C=>[C.name,C.axes.map(D=>`${D} ${ot(C.ways[0].readouts[D],1)}`).join(", "),`${ot(C.ways[0].slant_fixed,1)}°`,`${ot(C.ways[0].probe_roll,1)}°`])),U("p",{class:"small"},E.pole))},v=[["0","theta and phi"],["1","Ludwig 2, pole y"],["2","Ludwig 2, pole x"],["3","Ludwig 3"]],M=[["0","roll over azimuth"],["1","azimuth over elevation"],["2","elevation over azimuth"]];return u(),{element:U("div",{},U("h2",{},"Coordinates, by hand"),U("p",{class:"small"},"Drag the dot. Blue-green: the two unit vectors of the chosen components. Grey: what a probe that stands still sees, as an arrow on the device. Orange: what a probe sees that follows the roll. Near boresight watch theta and phi spin while Ludwig 3 stays."),U("div",{class:"row"},U("label",{class:"row"},"theta",c[0],"deg"),U("label",{class:"row"},"phi",c[1],"deg"),Cs("arrows",v,"0",d=>{r=Number(d),h&&p(h)}),Cs("positioner",M,"0",d=>{a=Number(d),h&&p(h)})),f.element,i,e),leave:()=>{}}}function Bf(i){return`(${i.map(e=>(Object.is(e,-0)?0:e).toFixed(3)).join(", ")})`}const dy=[["ludwig-3","Ludwig 3"],["theta-phi","theta and phi"],["ludwig-2-az-over-el","Ludwig 2, pole y"],["ludwig-2-el-over-az","Ludwig 2, pole x"],["circular","circular"]],py=[["theta-phi","theta, phi"],["az-el","azimuth, elevation"],["alpha-epsilon","alpha, epsilon"],["u-v","direction cosines u, v"]],$r=50;function my(){const i=U("p",{class:"faults",attrs:{role:"alert"}}),e=Sa(i),t=U("div",{class:"runs"}),n=U("div"),s=U("div",{class:"stack"}),r=U("div",{class:"stack"}),a={run:"",state:null,off:[],frequency:0,plane:0,basis:"ludwig-3",coordinates:"theta-phi",component:"total",beside:[],difference:!1,round:!1,marks:[],gate:null};let o=null,l=[],c="Cuts",f=0,u=[];const h=()=>({campaign:dt.campaign,run:a.run,state:a.state,off:a.off,gate_ns:a.gate}),p=()=>({campaign:dt.campaign,run:a.run,state:a.state}),v=()=>a.off.length>0||a.gate!==null,M=async(g,S=null,P=[],I=null)=>{o&&(g!==a.run||S!==a.state)&&(l=[]),Object.assign(a,{run:g,state:S,off:P,gate:I,beside:a.beside.filter(k=>k!==g)});for(const k of t.querySelectorAll("button"))k.setAttribute("aria-pressed",String(k.dataset.run===g));qe(s,U("p",{class:"quiet"},"The run is being processed; the first time takes some seconds."));const V=await e(Bt("/api/overview",h()));if(!V){qe(s);return}o=V,v()||(l=V.figures),a.frequency=Math.min(a.frequency||Math.floor(V.frequency_hz.length/2),V.frequency_hz.length-1),m(),O(),await b()},m=()=>{if(!o)return;const g=o.frequency_hz,S=U("strong",{class:"mono"},zl(g[a.frequency]));qe(n,U("div",{class:"tabs",attrs:{role:"tablist"}},...["Cuts","Map","3D","Aperture","Impulse","Recipe","Findings","Coordinates","Report"].map(P=>U("button",{on:{click:()=>{c=P,m(),b()}},attrs:{type:"button",role:"tab","aria-selected":String(c===P)}},P))),U("div",{class:"row"},g.length>1&&Kr("frequency",0,g.length-1,1,a.frequency,P=>{a.frequency=P,qe(S,zl(g[P])),O(),d()}),S,o.states.length>1&&Cs("state",o.states.map(P=>[P,P]),a.state??o.states[0],P=>void M(a.run,P,a.off,a.gate)),["Cuts","Map","3D"].includes(c)&&Cs("components",dy,a.basis,P=>{a.basis=P,d()})))},d=Wf(()=>void b(),80),b=async()=>{const g=++f,S=E[c],P=await S();g===f&&P&&qe(s,...P),g===f&&A.splice(0).forEach(I=>I())},A=[],E={Cuts:async()=>{const g={...h(),frequency:a.frequency,plane_deg:a.plane,basis:a.basis},S=await e(Bt("/api/cut",g));if(!S)return;const P=En(),I=[{name:S.names[0],values:S.first,colour:P.co},{name:S.names[1],values:S.second,colour:P.cross,dash:[6,3]}],V=o?.specification&&!v()?await e(Bt("/api/masks",g)):[];for(const he of V??[])I.push({name:`mask: ${he.name}`,values:he.level,colour:P.ink,width:1.2});const k=[],X=[P.other,P.good,P.quiet,P.bad,P.focus];for(const[he,fe]of a.beside.entries()){const $e=await e(Bt("/api/cut",{...g,run:fe,state:null,off:[],gate_ns:null}));$e&&I.push({name:`${fe}: ${$e.names[0]}`,values:$e.first,colour:X[he%X.length]})}if(a.difference&&a.beside.length){const he=await e(Bt("/api/difference",{...g,off:[],gate_ns:null,other:a.beside[0]}));he&&(I.push({name:`difference to ${a.beside[0]}, matched`,values:he.total,colour:P.quiet,width:1.1}),k.push(U("p",{class:"small"},`${a.beside[0]} was turned by ${he.rotation_deg.map(fe=>ot(fe,3)).join(", ")}°, moved by ${he.shift_mm.map(fe=>ot(fe,3)).join(", ")} mm and raised by ${ot(he.level_db,3)} dB; what is left is ${ot(he.difference_db,1)} dB below the peak (rms).`)))}const $=new xo,K=U("canvas",{class:"map",attrs:{role:"img","aria-label":"polar cut"}}),re=Math.ceil(S.peak_dbi/5)*5,oe=U("div"),ue=()=>{const he=xe=>S.angle_deg.reduce((Ce,Se,je)=>Math.abs(Se-xe)<Math.abs(S.angle_deg[Ce]-xe)?je:Ce,0),$e=[...S.edges_deg[0]!==null&&S.edges_deg[1]!==null?[{at:S.edges_deg[0],to:S.edges_deg[1],colour:P.co,text:"half power"}]:[],...a.marks.map((xe,Ce)=>({at:xe,colour:P.ink,text:`${Ce+1}`}))],Ke=xe=>{a.marks=[...a.marks,S.angle_deg[he(xe)]].slice(-4),ue()};a.round?Lg(K,S.angle_deg,I,re,$r+10):$.draw(S.angle_deg,I,{x:"angle from the peak / deg",y:"gain / dBi",height:380,range:[re-$r-10,re+2],xRange:[-180,180],marks:$e,picked:Ke});const ee=U("input",{attrs:{type:"number",min:-180,max:180,step:.5,value:"0","aria-label":"marker at / deg"}}),te=a.marks.length?he(a.marks[0]):0;qe(oe,U("div",{class:"row small"},"marker at",ee,"deg",Et("set",()=>Ke(Number(ee.value))),...a.marks.length?[Et("clear",()=>{a.marks=[],ue()})]:[],U("span",{class:"quiet"},"or click in the chart; four at most")),a.marks.length?On(["marker","angle",...I.map(xe=>xe.name),"first trace, from marker 1"],a.marks.map((xe,Ce)=>{const Se=he(xe),je=I[0].values[Se],wt=I[0].values[te];return[`${Ce+1}`,`${ot(xe,1)}°`,...I.map(B=>ot(B.values[Se],2)),Ce&&je!==null&&wt!==null?`${ot(xe-a.marks[0],1)}°, ${ot(je-wt,2)} dB`:""]})):null)};return A.push(ue),[U("div",{class:"row"},Kr("plane, from E towards H",0,175,5,a.plane,he=>{a.plane=he,d()},"°"),Et("E",()=>{a.plane=0,d()}),Et("H",()=>{a.plane=90,d()}),Et(a.round?"rectangular":"polar",()=>{a.round=!a.round,b()}),...F()),a.round?K:$.element,oe,...k,On(["peak / dBi","at theta, phi","half-power beamwidth","first side lobe","first null"],[[ot(S.peak_dbi,2),`${ot(S.peak_theta_deg,1)}°, ${ot(S.peak_phi_deg,1)}°`,`${ot(S.beamwidth_deg,2)}° (${ot(S.edges_deg[0],1)}° to ${ot(S.edges_deg[1],1)}°)`,`${ot(S.side_lobe_db,1)} dB`,`${ot(S.null_db,1)} dB`]]),U("p",{class:"small quiet"},"Drag in the chart to enlarge, double-click for all of it.")]},Map:async()=>{const g=await C();if(!g)return;const S=new ra("levels over all directions"),P=Math.max(...g.level.filter(I=>I!==null));return A.push(()=>S.draw(g.rows,g.columns,g.level,{rowName:g.row_name.replace("_deg"," / deg"),columnName:g.column_name.replace("_deg"," / deg"),low:P-$r,high:P,unit:"dBi",flip:!g.row_name.startsWith("theta"),square:a.coordinates==="u-v"})),[U("div",{class:"row"},Cs("coordinates",py,a.coordinates,I=>{a.coordinates=I,d()}),D(g.names)),S.element,U("p",{class:"small mono"},g.formula)]},"3D":async()=>{a.coordinates="theta-phi";const g=await C();if(!g)return;const S=new fp,P=[],I=Math.max(...g.level.filter(V=>V!==null));for(const V of g.rows)for(const k of g.columns)P.push(Math.sin(jr(V))*Math.cos(jr(k)),Math.sin(jr(V))*Math.sin(jr(k)),Math.cos(jr(V)));return A.push(()=>{S.shape(g.rows.length,g.columns.length,P,!1),S.level(g.level.map(V=>V===null?null:V-I),-$r)}),S.note.textContent=`level outwards and in colour, ${$r} dB from the middle to the peak; x orange, y grey, z blue (boresight)`,[U("div",{class:"row"},D(g.names)),S.element]},Aperture:async()=>{const g=await e(Bt("/api/aperture",{...h(),frequency:a.frequency}));if(g===void 0)return;if(g===null)return[U("p",{},"device.toml declares no [elements]: then there is no face to draw the waves back to.")];const S=new ra("amplitude on the face"),P=new ra("phase on the face"),I=U("canvas",{class:"map",attrs:{role:"img","aria-label":"excitation of every element"}});return A.push(()=>{const V={rowName:"y / mm",columnName:"x / mm",flip:!0,square:!0};S.draw(g.y_mm,g.x_mm,g.level_db,{...V,low:-25,high:0,unit:"dB"}),P.draw(g.y_mm,g.x_mm,g.phase_deg,{...V,low:-180,high:180,unit:"deg",ramp:Dg}),_y(I,g.elements,g.excitation_db)}),[U("div",{class:"columns pair"},U("div",{},U("h3",{},"Amplitude"),S.element),U("div",{},U("h3",{},"Phase"),P.element)),U("h3",{},"Excitation of every element"),I,...g.suspects.length?g.suspects.map(V=>U("p",{class:"bad"},V)):[U("p",{},"No element stands out.")]]},Impulse:async()=>{const g=await e(Bt("/api/impulse",p()));if(!g)return;const S=new xo,[P,I]=g.widths_ns,V=ue=>Math.round(100*ue)/100;let k=V(a.gate?.[0]??g.strongest_ns),X=V(a.gate?.[1]??Math.max(P,.5*I));const $=()=>{const ue=En(),he=I>0?[{at:k-X/2,to:k+X/2,colour:ue.cross,text:a.gate?"gate, tried":"gate"}]:[];S.draw(g.time_ns,[{name:"strongest tie",values:g.level_db,colour:ue.co}],{x:"time / ns",y:"level / dB",height:340,range:[-70,3],marks:he,picked:fe=>{k=V(fe),b()}})};A.push($);const K=U("p",{class:"small quiet"},"Impulse response of the strongest tie, Hann window. A gate tried here changes every view and figure of this page and nothing on disk; recipe.toml keeps one.");if(I<=0)return[S.element,K,U("p",{class:"small quiet"},"A gate needs five frequencies or more.")];const re=V((I-P)/200)||.01,oe=Math.floor(I/re)*re;return[S.element,U("div",{class:"row"},Kr("gate, middle",0,V(g.time_ns[g.time_ns.length-1]),re,k,ue=>{k=ue,$()}," ns"),Kr("gate, width",Math.ceil(P/re)*re,oe,re,X,ue=>{X=ue,$()}," ns"),Et("try this gate",()=>void M(a.run,a.state,a.off,[k,X]),"main"),...a.gate?[Et("no gate",()=>void M(a.run,a.state,a.off,null))]:[]),U("p",{class:"small"},`${V(P)} ns is the narrowest that the span resolves, ${V(I)} ns the widest before echoes repeat.`),K]},Recipe:async()=>{if(!o)return;const g=o.steps.map(I=>U("label",{class:"row"},U("input",{attrs:{type:"checkbox",checked:I.on,disabled:!I.may_change},on:{change:()=>void M(a.run,a.state,I.on?[...a.off,I.name]:a.off.filter(V=>V!==I.name),a.gate)}}),I.name)),S=U("div"),P=Et("what does every step do?",()=>void(async()=>{P.disabled=!0,qe(S,U("p",{class:"quiet"},"The run is processed once without each step."));const I=await e(na("/api/effects",p()));if(P.disabled=!1,!I){qe(S);return}const V=Object.keys(I.without);qe(S,U("div",{class:"scroll"},On(["figure","all steps",...V.map(k=>`without ${k}`)],Object.keys(I.whole).map(k=>[I.labels[k],ot(I.whole[k],3),...V.map(X=>{const $=I.without[X][k],K=I.whole[k];return $===null||K===null?"-":`${$-K>=0?"+":""}${($-K).toFixed(3)}`})]))))})());return[U("p",{},"Switch a step off and every view and figure follows. The record itself is never changed."),U("div",{},...g),P,S]},Findings:async()=>{qe(s,U("p",{class:"quiet"},"The data are asked what is wrong with them."));const g=await e(Bt("/api/findings",p()));return g&&[On(["what","field / dB re peak","in words"],g.map(S=>[S.topic,S.level_db<=-199?"":ot(S.level_db,1),S.text]))]},Coordinates:async()=>[pp().element],Report:async()=>{const g=U("div",{class:"row"}),S=()=>qe(g,...["html","pdf"].map(I=>U("a",{attrs:{href:`/api/report/${dt.campaign}/${a.run}/${I}${a.state===null?"":`?state=${encodeURIComponent(a.state)}`}`,target:"_blank",rel:"noopener"}},`open the report (${I})`)));o?.report&&S();const P=Et("write the report",()=>void(async()=>{P.disabled=!0,qe(g,U("p",{class:"quiet"},"Figures, budgets and pages; this takes up to a minute."));const I=await e(na("/api/report",p()));if(P.disabled=!1,I){S();const V=await e(Bt("/api/overview",h()));V&&(o=V,O())}else qe(g)})(),"main");return P.disabled=!Ar("operate"),[U("p",{},o?.specification?"With a verdict against limits.toml on its first page.":"Without a verdict: there is no limits.toml beside the campaign."),P,g]}},F=()=>{const g=u.filter(I=>I.record&&I.name!==a.run),S=(I,V,k)=>U("label",{class:"row small"},U("input",{attrs:{type:"checkbox",checked:V},on:{change:X=>{k(X.target.checked),d()}}}),I),P=g.map(I=>S(I.name,a.beside.includes(I.name),V=>{a.beside=V?[...a.beside,I.name].slice(-5):a.beside.filter(k=>k!==I.name)}));return g.length?[U("span",{class:"small quiet"},"beside:"),...P,...a.beside.length?[S("difference of the fields",a.difference,I=>{a.difference=I})]:[]]:[]},C=()=>e(Bt("/api/map",{...h(),frequency:a.frequency,coordinates:a.coordinates,basis:a.basis,component:a.component})),D=g=>Cs("shown",[["total","total"],["first",g[0]],["second",g[1]]],a.component,S=>{a.component=S,d()}),O=()=>{if(!o)return;const g=v(),S=k=>{const X=l.find($=>$.name===k.name&&Math.abs($.frequency_hz-k.frequency_hz)<1)?.value;return X==null||k.value===null?"":`${k.value>=X?"+":""}${ot(k.value-X,3)}`},P=o.frequency_hz[a.frequency],I=o.figures.filter(k=>Math.abs(k.frequency_hz-P)<1),V=Et("with intervals",()=>void(async()=>{if(V.disabled=!0,await e(na("/api/evaluate",p()))!==void 0){const k=await e(Bt("/api/overview",h()));k&&(o=k,O())}V.disabled=!1})(),"","evaluate every figure with its uncertainty");V.disabled=!Ar("operate")||g,qe(r,U("div",{class:"row"},U("h2",{},`Figures at ${zl(P)}`),U("span",{class:"spring"}),I.some(k=>k.lower!==null)?null:V),o.demo?U("p",{class:"small quiet"},"Simulated chamber, invented device: demo data."):null,g?U("p",{class:"small bad"},[a.off.length?`without ${a.off.join(", ")}`:"",a.gate?`gate ${ot(a.gate[1],2)} ns about ${ot(a.gate[0],2)} ns`:""].filter(Boolean).join("; ")):null,U("div",{class:"scroll"},On(["figure","value",g?"change":"95 % interval"],I.map(k=>[U("span",{attrs:{title:k.definition}},k.label),`${k.text} ${k.unit}`,g?S(k):k.lower===null?"":`${ot(k.lower,2)} to ${ot(k.upper,2)}`]),"figures")))};return(async()=>{u=(await e(pa("/api/campaigns")))?.find(P=>P.id===dt.campaign)?.runs??[],qe(t,...u.map(P=>gy(P,()=>void M(P.name)))),u.length||qe(t,U("p",{class:"quiet"},"No runs yet. Scan makes them; so does colure acquire."));const S=u.find(P=>P.record);S&&await M(S.name)})(),{title:"Explore",element:U("main",{},U("div",{class:"columns explore"},U("section",{attrs:{"aria-label":"runs"}},U("h2",{},"Runs"),t),U("section",{class:"card"},i,n,s),U("section",{class:"card"},r))),leave:()=>{f++}}}function gy(i,e){const t=U("canvas",{attrs:{width:48,height:24}}),n=t.getContext("2d");if(i.thumb){const r=n.createImageData(48,24);i.thumb.forEach((a,o)=>{for(let l=0;l<3;l++)r.data[4*o+l]=rs[3*a+l];r.data[4*o+3]=255}),n.putImageData(r,0,0)}return U("button",{on:{click:e},attrs:{type:"button","data-run":i.name,"aria-pressed":"false",disabled:!i.record}},i.thumb?t:null,U("strong",{},i.name),U("div",{class:"small quiet"},i.record?new Date(1e3*i.changed).toLocaleString():"not sealed yet: go on with it under Scan"))}function _y(i,e,t){const n=Math.min(340,i.clientWidth||340),s=window.devicePixelRatio||1;i.style.width=`${n}px`,i.style.height=`${n}px`,i.width=n*s,i.height=n*s;const r=i.getContext("2d"),a=e.map(p=>p[0]),o=e.map(p=>p[1]);r.scale(s,s);const l=Math.min(...a,...o),c=Math.max(...a,...o),f=(c-l)/Math.max(1,Math.round(Math.sqrt(e.length))-1),u=p=>(p-l+f/2)/(c-l+f)*n,h=f/(c-l+f)*n;r.font="11px system-ui",r.textAlign="center",r.textBaseline="middle",e.forEach(([p,v],M)=>{const m=3*Math.max(0,su(t[M],-15,0));r.fillStyle=`rgb(${rs[m]} ${rs[m+1]} ${rs[m+2]})`,r.fillRect(u(p)-h/2+1,n-u(v)-h/2+1,h-2,h-2),r.fillStyle=t[M]>-7?"#12191f":"#ffffff",r.fillText(t[M].toFixed(1),u(p),n-u(v))})}function zl(i){return`${(i/1e9).toFixed(3)} GHz`}function jr(i){return i*Math.PI/180}function vy(){const i=U("p",{class:"faults",attrs:{role:"alert"}}),e=U("div"),t=U("div",{class:"stack"}),n=U("div",{class:"stack"}),s=new hp,r=U("div",{class:"small mono"}),a=U("div"),o={},l=U("div"),c=U("div",{class:"card"},U("div",{class:"row"},U("h2",{},"Positioners and schemes"),U("span",{class:"spring"}),Et("set side by side",()=>void(async()=>{const D=await f(Bt("/api/schemes",{campaign:dt.campaign,edits:o}));D&&qe(l,On(["positioner","scheme","duration","points","slices meet at"],D.map(O=>[U("span",{attrs:{title:`${O.formula}; suits ${O.suits}; polarization ${O.polarization}`}},O.geometry),O.scheme,O.fault?U("span",{class:"small bad",attrs:{title:O.fault}},"not here"):O.duration,O.points||"-",O.pole])),U("p",{class:"small quiet"},"Point at a positioner for its formula and what it suits, at “not here” for the reason."))})())),l),f=Sa(i);let u=null,h=0,p=0;const v=async()=>{const D=++h,O={campaign:dt.campaign,edits:o},T=await f(Bt("/api/plan",O));if(!T||D!==h)return;Sy(t,T,c);const g=await f(Bt("/api/motion",O));if(!g||D!==h)return;u=g,s.build(g);const S=g.role.length-1;qe(a,Kr("through the scan",0,S,1,Math.min(p,S),P=>M(P)),r),M(Math.min(p,S))},M=D=>{if(!u)return;p=D;const O=u.axes.length,T=u;s.turn(T.angles_deg.slice(O*D,O*D+O),T.axes);const g=[];for(let P=0;P<D;P++)T.cell[P]>=0&&g.push(T.cell[P]);s.paint(T.cell[D],g);const S=["scan","tie","reference","resume","turn","cable"][T.role[D]];qe(r,`point ${D+1} of ${T.role.length} (${S}), after ${mo(T.time_s[D])}: ${T.axes.map((P,I)=>`${P} ${T.readouts_deg[O*D+I].toFixed(1)}°`).join(", ")}`)},m=Wf(()=>void v()),d=Et("rehearse on the simulated chamber",()=>void b(),"","the whole plan on an invented chamber as imperfect as the declared one"),b=async()=>{d.disabled=!0,qe(n,U("p",{class:"quiet"},"The plan is carried out on the simulated chamber and held against known truth; this takes some seconds."));const D=await f(na("/api/rehearse",{campaign:dt.campaign,edits:o,seed:1+Math.floor(Math.random()*1e3)}));d.disabled=!1,D?yy(n,D):qe(n)},A=Et("write into the files",async()=>{const D=await f(Bt("/api/save",{campaign:dt.campaign,edits:o}));D&&qe(E,D.written.length?`written: ${D.written.join(", ")}; the files as they were stay beside them`:"nothing was changed")}),E=U("p",{class:"small quiet"});A.disabled=!Ar("configure"),(async()=>{const D=await f(pa("/api/form/{campaign}",[dt.campaign]));D&&(xy(e,D,(O,T)=>{T===void 0?delete o[O]:o[O]=T,m()}),await v())})();const F=pp();return{title:"Plan",element:U("main",{},U("div",{class:"columns plan"},U("section",{class:"card",attrs:{"aria-label":"form"}},e,U("div",{class:"row"},A),E),U("section",{class:"stack"},U("div",{class:"card"},s.element,a),U("div",{class:"card"},U("div",{class:"row"},U("h2",{},"Rehearsal"),U("span",{class:"spring"}),d),n),U("div",{class:"card"},F.element)),U("section",{class:"stack",attrs:{"aria-live":"polite"}},i,t))),leave:()=>{h++}}}function xy(i,e,t){const n=[...new Set(e.fields.map(s=>s.group))];qe(i,U("h1",{},e.name),U("p",{class:"small quiet"},`${e.device}; ${e.chamber}${e.simulated?" (simulated chamber, invented data)":""}`),...n.map(s=>U("fieldset",{},U("legend",{},s),...e.fields.filter(r=>r.group===s).map(r=>My(r,t)))))}function My(i,e){const t=a=>{const o=JSON.stringify(a)===JSON.stringify(i.value);s.classList.toggle("changed",!o),e(i.key,o?void 0:a)},n=i.least!==null||i.most!==null?`from ${i.least??"-"} to ${i.most??"-"} ${i.unit}`:"",s=U("label",{class:"field",attrs:{title:n}},U("span",{},i.label));if(i.choices.length){const a=U("select",{on:{change:()=>t(a.value)}},...i.choices.map(o=>U("option",{attrs:{value:o}},o)));return a.value=String(i.value),s.append(a,U("span",{class:"unit"})),s}if(Array.isArray(i.value)){const a=i.value.map(o=>U("input",{attrs:{type:"number",step:"any",value:String(o),"aria-label":i.label},on:{input:()=>t(a.map(l=>Number(l.value)))}}));return s.classList.add("three"),s.append(...a,U("span",{class:"unit"},"mm")),s}const r=U("input",{attrs:{type:"number",step:i.whole?"1":"any",value:i.value===null?"":String(i.value),placeholder:i.optional?"chosen":""},on:{input:()=>t(r.value===""?i.optional?null:i.value:Number(r.value))}});return s.append(r,U("span",{class:"unit"},i.unit)),s}function Sy(i,e,t){const n=e.split.reduce((r,a)=>r+a[1],0),s=U("div",{class:"bar",attrs:{role:"img","aria-label":e.split.map(([r,a])=>`${r} ${mo(a)}`).join(", ")}},...e.split.map((r,a)=>U("i",{class:a?"two":"one"})));[...s.children].forEach((r,a)=>{r.style.width=`${100*e.split[a][1]/n}%`}),qe(i,U("div",{class:"card"},U("p",{class:"verdict"},e.verdict),U("div",{class:"large"},e.duration),U("p",{class:"small quiet"},`${e.points} points`),s,U("p",{class:"small quiet"},e.split.map(([r,a])=>`${r} ${mo(a)}`).join(", ")),...e.missing.map(r=>U("p",{class:"bad"},`Missing: ${r}`))),U("div",{class:"card"},U("h2",{},"Forecast"),On(["figure","±","mostly from"],e.forecast.map(r=>[r.name,r.expanded.toPrecision(2),r.cause]))),U("div",{class:"card"},U("h2",{},"Alternatives"),On(["plan","duration","points"],e.alternatives.map(r=>[U("span",{attrs:{title:r.why}},r.name),r.duration,r.points]))),t,U("div",{class:"card"},U("h2",{},"Why"),On(["",""],e.rows.map(([r,a])=>[U("strong",{},r),a]))))}function yy(i,e){const t=new ra("predicted error over all directions");qe(i,U("p",{},`${(100*e.share_inside).toFixed(0)} % of all stated intervals hold the truth; it took ${e.seconds.toFixed(1)} s. An invented chamber, drawn anew each time.`),t.element,U("div",{class:"scroll"},On(["figure","measured","true","","mostly from"],e.rows.map(s=>[s.name,`${s.value} ${s.unit}`,ot(s.truth,3),U("span",{class:s.inside?"good":"bad"},s.inside?"inside":"outside"),s.cause]))));const n=Math.max(...e.error_db);t.draw(e.theta,e.phi,e.error_db,{rowName:"theta / deg",columnName:"phi / deg",low:n-40,high:n,unit:"dB"})}function Ey(i){try{return localStorage.getItem(i)}catch{return null}}function by(i,e){try{localStorage.setItem(i,e)}catch{}}const Gc={plan:["Plan",vy],align:["Align",hy],scan:["Scan",cy],explore:["Explore",my]};let so=null;function kf(i){const e=i??Ey("theme")??(matchMedia("(prefers-color-scheme: dark)").matches?"dark":"light");document.documentElement.dataset.theme=e,i&&by("theme",i)}function ro(){const i=location.hash.slice(1)in Gc?location.hash.slice(1):"plan";so?.leave(),so=Gc[i][1](),document.title=`Colure: ${so.title}`,document.querySelectorAll("nav a").forEach(e=>{e.getAttribute("href")===`#${i}`?e.setAttribute("aria-current","page"):e.removeAttribute("aria-current")}),document.querySelector("main")?.replaceWith(so.element)}function wy(){const i="http://www.w3.org/2000/svg",e=document.createElementNS(i,"svg");e.setAttribute("viewBox","0 0 24 24"),e.setAttribute("width","24"),e.setAttribute("height","24"),e.setAttribute("aria-hidden","true");for(const[t,n]of[[10,"var(--ink)"],[4,"var(--cross)"]]){const s=document.createElementNS(i,"ellipse");for(const[r,a]of Object.entries({cx:12,cy:12,rx:t,ry:10,fill:"none",stroke:n,"stroke-width":1.8}))s.setAttribute(r,String(a));e.append(s)}return e}async function Ty(){kf();const i=document.getElementById("app");try{dt.me=await Gf();const e=dt.me.campaigns;dt.campaign=e[0].id;const t=U("span",{class:"chip"}),n=Et("invite",()=>void(async()=>{const{code:s}=await Bt("/api/invite",{role:"view"}),r=`${location.origin}/launch?code=${s}`,a=U("dialog",{on:{close:()=>a.remove()}},U("h1",{},"A link for somebody who watches"),U("p",{},"It opens one session, on this computer, that may look and stop and nothing else."),U("p",{class:"mono"},r),Et("close",()=>a.close()));document.body.append(a),a.show()})());Ai.watch({linked:s=>{t.className=`chip${s?"":" hot"}`,qe(t,s?`connected, may ${dt.me.role}`:"not connected")}}),qe(i,U("header",{class:"top"},U("span",{class:"name"},wy(),"Colure"),U("nav",{attrs:{"aria-label":"pages"}},...Object.entries(Gc).map(([s,[r]])=>U("a",{attrs:{href:`#${s}`}},r))),e.length>1&&Cs("",e.map(s=>[s.id,s.folder]),dt.campaign,s=>{dt.campaign=s,ro()}),U("span",{class:"spring"}),t,Ar("configure")&&n,Et("◐",()=>{kf(document.documentElement.dataset.theme==="dark"?"light":"dark"),ro()},"","light or dark"),ly(),oy()),U("main")),window.addEventListener("hashchange",ro),Ai.open(),ro()}catch(e){qe(i,U("main",{},U("h1",{},"The control room did not open"),U("p",{class:"faults"},ko(e))))}}Ty();
