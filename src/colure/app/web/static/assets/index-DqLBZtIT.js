class kf extends Error{constructor(e,t){super(t.join("; ")),this.status=e,this.faults=t}}let Hf="";async function Vf(i){const e=await i.json();if(!i.ok)throw new kf(i.status,e.errors??["no reason was given"]);return e}async function da(i){return Vf(await fetch(i,{headers:{Accept:"application/json"}}))}async function Bt(i,e={}){return Vf(await fetch(i,{method:"POST",headers:{"Content-Type":"application/json","X-Colure-Token":Hf},body:JSON.stringify(e)}))}async function Gf(){const i=await da("/api/me");return Hf=i.token,i}async function ea(i,e){const{job:t}=await Bt(i,e);for(;;){await new Promise(s=>window.setTimeout(s,300));const n=await da(`/api/job/${t}`);if(n.done)return n.result}}class Up{status={type:"status",state:"idle",running:!1,sequence:0,lease:""};grid=null;frame=null;watchers=new Set;wait=250;open(){const e=new WebSocket(`${location.protocol==="https:"?"wss":"ws"}://${location.host}/api/live`);e.binaryType="arraybuffer",e.onopen=()=>{this.wait=250,this.tell(t=>t.linked?.(!0))},e.onmessage=t=>{if(typeof t.data=="string")this.hear(JSON.parse(t.data));else{this.frame=new Float32Array(t.data);const n=this.frame;this.tell(s=>s.frame?.(n)),requestAnimationFrame(()=>{e.readyState===WebSocket.OPEN&&e.send("taken")})}},e.onclose=()=>{this.tell(t=>t.linked?.(!1)),window.setTimeout(()=>this.open(),this.wait),this.wait=Math.min(5e3,this.wait*2)}}watch(e){return this.watchers.add(e),e.status?.(this.status),this.grid&&e.grid?.(this.grid),this.frame&&e.frame?.(this.frame),()=>this.watchers.delete(e)}hear(e){e.type==="grid"?(this.grid=e,this.frame=null,this.tell(t=>t.grid?.(e))):(this.status=e,this.tell(t=>t.status?.(e)))}tell(e){for(const t of[...this.watchers])try{e(t)}catch(n){console.error(n)}}}const Ai=new Up;function I(i,e={},...t){const n=document.createElement(i);e.class&&(n.className=e.class);for(const[s,r]of Object.entries(e.attrs??{}))r===!0?n.setAttribute(s,""):r!==!1&&r!==void 0&&n.setAttribute(s,String(r));for(const[s,r]of Object.entries(e.on??{}))n.addEventListener(s,r);return qe(n,...t),n}function qe(i,...e){i.replaceChildren(...e.filter(t=>t!=null&&t!==!1).map(t=>t instanceof Node?t:String(t)))}function Ut(i,e,t="",n=""){return I("button",{class:t,on:{click:e},attrs:{type:"button",title:n||void 0}},i)}function Cs(i,e,t,n){const s=I("select",{on:{change:()=>n(s.value)}},...e.map(([r,a])=>I("option",{attrs:{value:r}},a)));return s.value=t,I("label",{class:"field"},I("span",{},i),s)}function kl(i,e,t,n,s,r,a=""){const o=I("output",{},`${s}${a}`),l=I("input",{attrs:{type:"range",min:e,max:t,step:n,value:s,"aria-label":i},on:{input:()=>{qe(o,`${l.value}${a}`),r(Number(l.value))}}});return I("label",{class:"field wide"},I("span",{},i),l,o)}function Yn(i,e,t=""){return I("table",{class:t},I("thead",{},I("tr",{},...i.map(n=>I("th",{attrs:{scope:"col"}},n)))),I("tbody",{},...e.map(n=>I("tr",{},...n.map(s=>I("td",{},s))))))}function Wf(i,e=60){let t=0;return()=>{window.clearTimeout(t),t=window.setTimeout(i,e)}}function po(i){const e=Math.round(i/60);return i<90?`${Math.round(i)} s`:e<60?`${e} min`:`${Math.floor(e/60)} h ${String(e%60).padStart(2,"0")} min`}function St(i,e=2){return i==null||!Number.isFinite(i)?"-":i.toFixed(e)}const Ip=!0,an="u-",Np="uplot",Fp=an+"hz",Op=an+"vt",Bp=an+"title",zp=an+"wrap",kp=an+"under",Hp=an+"over",Vp=an+"axis",ws=an+"off",Gp=an+"select",Wp=an+"cursor-x",Xp=an+"cursor-y",qp=an+"cursor-pt",Yp=an+"legend",$p=an+"live",jp=an+"inline",Kp=an+"series",Zp=an+"marker",zu=an+"label",Jp=an+"value",jr="width",Kr="height",Br="top",ku="bottom",js="left",Zo="right",Wc="#000",Hu=Wc+"0",Jo="mousemove",Vu="mousedown",Qo="mouseup",Gu="mouseenter",Wu="mouseleave",Xu="dblclick",Qp="resize",em="scroll",qu="change",mo="dppxchange",Xc="--",Ar=typeof window<"u",Hl=Ar?document:null,dr=Ar?window:null,tm=Ar?navigator:null;let yt,Aa;function Vl(){let i=devicePixelRatio;yt!=i&&(yt=i,Aa&&Wl(qu,Aa,Vl),Aa=matchMedia(`(min-resolution: ${yt-.001}dppx) and (max-resolution: ${yt+.001}dppx)`),Ls(qu,Aa,Vl),dr.dispatchEvent(new CustomEvent(mo)))}function qn(i,e){if(e!=null){let t=i.classList;!t.contains(e)&&t.add(e)}}function Gl(i,e){let t=i.classList;t.contains(e)&&t.remove(e)}function Gt(i,e,t){i.style[e]=t+"px"}function hi(i,e,t,n){let s=Hl.createElement(i);return e!=null&&qn(s,e),t?.insertBefore(s,n),s}function ei(i,e){return hi("div",i,e)}const Yu=new WeakMap;function Ei(i,e,t,n,s){let r="translate("+e+"px,"+t+"px)",a=Yu.get(i);r!=a&&(i.style.transform=r,Yu.set(i,r),e<0||t<0||e>n||t>s?qn(i,ws):Gl(i,ws))}const $u=new WeakMap;function ju(i,e,t){let n=e+t,s=$u.get(i);n!=s&&($u.set(i,n),i.style.background=e,i.style.borderColor=t)}const Ku=new WeakMap;function Zu(i,e,t,n){let s=e+""+t,r=Ku.get(i);s!=r&&(Ku.set(i,s),i.style.height=t+"px",i.style.width=e+"px",i.style.marginLeft=n?-e/2+"px":0,i.style.marginTop=n?-t/2+"px":0)}const qc={passive:!0},nm={...qc,capture:!0};function Ls(i,e,t,n){e.addEventListener(i,t,n?nm:qc)}function Wl(i,e,t,n){e.removeEventListener(i,t,qc)}Ar&&Vl();function fi(i,e,t,n){let s;t=t||0,n=n||e.length-1;let r=n<=2147483647;for(;n-t>1;)s=r?t+n>>1:$n((t+n)/2),e[s]<i?t=s:n=s;return i-e[t]<=e[n]-i?t:n}function Xf(i){return(t,n,s)=>{let r=-1,a=-1;for(let o=n;o<=s;o++)if(i(t[o])){r=o;break}for(let o=s;o>=n;o--)if(i(t[o])){a=o;break}return[r,a]}}const qf=i=>i!=null,Yf=i=>i!=null&&i>0,To=Xf(qf),im=Xf(Yf);function sm(i,e,t,n=0,s=!1){let r=s?im:To,a=s?Yf:qf;[e,t]=r(i,e,t);let o=i[e],l=i[e];if(e>-1)if(n==1)o=i[e],l=i[t];else if(n==-1)o=i[t],l=i[e];else for(let c=e;c<=t;c++){let f=i[c];a(f)&&(f<o?o=f:f>l&&(l=f))}return[o??Dt,l??-Dt]}function wo(i,e,t,n){let s=eh(i),r=eh(e);i==e&&(s==-1?(i*=t,e/=t):(i/=t,e*=t));let a=t==10?Hi:$f,o=s==1?$n:ti,l=r==1?ti:$n,c=o(a(tn(i))),f=l(a(tn(e))),u=_r(t,c),h=_r(t,f);return t==10&&(c<0&&(u=Lt(u,-c)),f<0&&(h=Lt(h,-f))),n||t==2?(i=u*s,e=h*r):(i=Jf(i,u),e=Ao(e,h)),[i,e]}function Yc(i,e,t,n){let s=wo(i,e,t,n);return i==0&&(s[0]=0),e==0&&(s[1]=0),s}const $c=.1,Ju={mode:3,pad:$c},ta={pad:0,soft:null,mode:0},rm={min:ta,max:ta};function go(i,e,t,n){return Ro(t)?Qu(i,e,t):(ta.pad=t,ta.soft=n?0:null,ta.mode=n?3:0,Qu(i,e,rm))}function vt(i,e){return i??e}function am(i,e,t){for(e=vt(e,0),t=vt(t,i.length-1);e<=t;){if(i[e]!=null)return!0;e++}return!1}function Qu(i,e,t){let n=t.min,s=t.max,r=vt(n.pad,0),a=vt(s.pad,0),o=vt(n.hard,-Dt),l=vt(s.hard,Dt),c=vt(n.soft,Dt),f=vt(s.soft,-Dt),u=vt(n.mode,0),h=vt(s.mode,0),p=e-i,v=Hi(p),M=Ln(tn(i),tn(e)),m=Hi(M),d=tn(m-v);(p<1e-24||d>10)&&(p=0,(i==0||e==0)&&(p=1e-24,u==2&&c!=Dt&&(r=0),h==2&&f!=-Dt&&(a=0)));let T=p||M||1e3,A=Hi(T),b=_r(10,$n(A)),N=T*(p==0?i==0?.1:1:r),R=Lt(Jf(i-N,b/10),24),D=i>=c&&(u==1||u==3&&R<=c||u==2&&R>=c)?c:Dt,C=Ln(o,R<D&&i>=D?D:di(D,R)),S=T*(p==0?e==0?.1:1:a),_=Lt(Ao(e+S,b/10),24),y=e<=f&&(h==1||h==3&&_>=f||h==2&&_<=f)?f:-Dt,F=di(l,_>y&&e<=y?y:Ln(y,_));return C==F&&C==0&&(F=100),[C,F]}const om=new Intl.NumberFormat(Ar?tm.language:"en-US"),jc=i=>om.format(i),jn=Math,ro=jn.PI,tn=jn.abs,$n=jn.floor,en=jn.round,ti=jn.ceil,di=jn.min,Ln=jn.max,_r=jn.pow,eh=jn.sign,Hi=jn.log10,$f=jn.log2,lm=(i,e=1)=>jn.sinh(i)*e,el=(i,e=1)=>jn.asinh(i/e),Dt=1/0;function th(i){return(Hi((i^i>>31)-(i>>31))|0)+1}function Xl(i,e,t){return di(Ln(i,e),t)}function jf(i){return typeof i=="function"}function ht(i){return jf(i)?i:()=>i}const cm=()=>{},Kf=i=>i,Zf=(i,e)=>e,um=i=>null,nh=i=>!0,ih=(i,e)=>i==e,hm=/\.\d*?(?=9{6,}|0{6,})/gm,Us=i=>{if(ed(i)||ls.has(i))return i;const e=`${i}`,t=e.match(hm);if(t==null)return i;let n=t[0].length-1;if(e.indexOf("e-")!=-1){let[s,r]=e.split("e");return+`${Us(s)}e${r}`}return Lt(i,n)};function Es(i,e){return Us(Lt(Us(i/e))*e)}function Ao(i,e){return Us(ti(Us(i/e))*e)}function Jf(i,e){return Us($n(Us(i/e))*e)}function Lt(i,e=0){if(ed(i))return i;let t=10**e,n=i*t*(1+Number.EPSILON);return en(n)/t}const ls=new Map;function Qf(i){return((""+i).split(".")[1]||"").length}function ra(i,e,t,n){let s=[],r=n.map(Qf);for(let a=e;a<t;a++){let o=tn(a),l=Lt(_r(i,a),o);for(let c=0;c<n.length;c++){let f=i==10?+`${n[c]}e${a}`:n[c]*l,u=(a>=0?0:o)+(a>=r[c]?0:r[c]),h=i==10?f:Lt(f,u);s.push(h),ls.set(h,u)}}return s}const na={},Kc=[],vr=[null,null],ns=Array.isArray,ed=Number.isInteger,fm=i=>i===void 0;function sh(i){return typeof i=="string"}function Ro(i){let e=!1;if(i!=null){let t=i.constructor;e=t==null||t==Object}return e}function dm(i){return i!=null&&typeof i=="object"}const pm=Object.getPrototypeOf(Uint8Array),td="__proto__";function xr(i,e=Ro){let t;if(ns(i)){let n=i.find(s=>s!=null);if(ns(n)||e(n)){t=Array(i.length);for(let s=0;s<i.length;s++)t[s]=xr(i[s],e)}else t=i.slice()}else if(i instanceof pm)t=i.slice();else if(e(i)){t={};for(let n in i)n!=td&&(t[n]=xr(i[n],e))}else t=i;return t}function Zt(i){let e=arguments;for(let t=1;t<e.length;t++){let n=e[t];for(let s in n)s!=td&&(Ro(i[s])?Zt(i[s],xr(n[s])):i[s]=xr(n[s]))}return i}const mm=0,gm=1,_m=2;function vm(i,e,t){for(let n=0,s,r=-1;n<e.length;n++){let a=e[n];if(a>r){for(s=a-1;s>=0&&i[s]==null;)i[s--]=null;for(s=a+1;s<t&&i[s]==null;)i[r=s++]=null}}}function xm(i,e){if(ym(i)){let a=i[0].slice();for(let o=1;o<i.length;o++)a.push(...i[o].slice(1));return Em(a[0])||(a=Sm(a)),a}let t=new Set;for(let a=0;a<i.length;a++){let l=i[a][0],c=l.length;for(let f=0;f<c;f++)t.add(l[f])}let n=[Array.from(t).sort((a,o)=>a-o)],s=n[0].length,r=new Map;for(let a=0;a<s;a++)r.set(n[0][a],a);for(let a=0;a<i.length;a++){let o=i[a],l=o[0];for(let c=1;c<o.length;c++){let f=o[c],u=Array(s).fill(void 0),h=e?e[a][c]:gm,p=[];for(let v=0;v<f.length;v++){let M=f[v],m=r.get(l[v]);M===null?h!=mm&&(u[m]=M,h==_m&&p.push(m)):u[m]=M}vm(u,p,s),n.push(u)}}return n}const Mm=typeof queueMicrotask>"u"?i=>Promise.resolve().then(i):queueMicrotask;function Sm(i){let e=i[0],t=e.length,n=Array(t);for(let r=0;r<n.length;r++)n[r]=r;n.sort((r,a)=>e[r]-e[a]);let s=[];for(let r=0;r<i.length;r++){let a=i[r],o=Array(t);for(let l=0;l<t;l++)o[l]=a[n[l]];s.push(o)}return s}function ym(i){let e=i[0][0],t=e.length;for(let n=1;n<i.length;n++){let s=i[n][0];if(s.length!=t)return!1;if(s!=e){for(let r=0;r<t;r++)if(s[r]!=e[r])return!1}}return!0}function Em(i,e=100){const t=i.length;if(t<=1)return!0;let n=0,s=t-1;for(;n<=s&&i[n]==null;)n++;for(;s>=n&&i[s]==null;)s--;if(s<=n)return!0;const r=Ln(1,$n((s-n+1)/e));for(let a=i[n],o=n+r;o<=s;o+=r){const l=i[o];if(l!=null){if(l<=a)return!1;a=l}}return!0}const nd=["January","February","March","April","May","June","July","August","September","October","November","December"],id=["Sunday","Monday","Tuesday","Wednesday","Thursday","Friday","Saturday"];function sd(i){return i.slice(0,3)}const bm=id.map(sd),Tm=nd.map(sd),wm={MMMM:nd,MMM:Tm,WWWW:id,WWW:bm};function zr(i){return(i<10?"0":"")+i}function Am(i){return(i<10?"00":i<100?"0":"")+i}const Rm={YYYY:i=>i.getFullYear(),YY:i=>(i.getFullYear()+"").slice(2),MMMM:(i,e)=>e.MMMM[i.getMonth()],MMM:(i,e)=>e.MMM[i.getMonth()],MM:i=>zr(i.getMonth()+1),M:i=>i.getMonth()+1,DD:i=>zr(i.getDate()),D:i=>i.getDate(),WWWW:(i,e)=>e.WWWW[i.getDay()],WWW:(i,e)=>e.WWW[i.getDay()],HH:i=>zr(i.getHours()),H:i=>i.getHours(),h:i=>{let e=i.getHours();return e==0?12:e>12?e-12:e},AA:i=>i.getHours()>=12?"PM":"AM",aa:i=>i.getHours()>=12?"pm":"am",a:i=>i.getHours()>=12?"p":"a",mm:i=>zr(i.getMinutes()),m:i=>i.getMinutes(),ss:i=>zr(i.getSeconds()),s:i=>i.getSeconds(),fff:i=>Am(i.getMilliseconds())};function Zc(i,e){e=e||wm;let t=[],n=/\{([a-z]+)\}|[^{]+/gi,s;for(;s=n.exec(i);)t.push(s[0][0]=="{"?Rm[s[1]]:s[0]);return r=>{let a="";for(let o=0;o<t.length;o++)a+=typeof t[o]=="string"?t[o]:t[o](r,e);return a}}const Cm=new Intl.DateTimeFormat().resolvedOptions().timeZone;function Pm(i,e){let t;return e=="UTC"||e=="Etc/UTC"?t=new Date(+i+i.getTimezoneOffset()*6e4):e==Cm?t=i:(t=new Date(i.toLocaleString("en-US",{timeZone:e})),t.setMilliseconds(i.getMilliseconds())),t}const rd=i=>i%1==0,_o=[1,2,2.5,5],Dm=ra(10,-32,0,_o),ad=ra(10,0,32,_o),Lm=ad.filter(rd),bs=Dm.concat(ad),Jc=`
`,od="{YYYY}",rh=Jc+od,ld="{M}/{D}",Zr=Jc+ld,Ra=Zr+"/{YY}",cd="{aa}",Um="{h}:{mm}",ur=Um+cd,ah=Jc+ur,oh=":{ss}",Et=null;function ud(i){let e=i*1e3,t=e*60,n=t*60,s=n*24,r=s*30,a=s*365,l=(i==1?ra(10,0,3,_o).filter(rd):ra(10,-3,0,_o)).concat([e,e*5,e*10,e*15,e*30,t,t*5,t*10,t*15,t*30,n,n*2,n*3,n*4,n*6,n*8,n*12,s,s*2,s*3,s*4,s*5,s*6,s*7,s*8,s*9,s*10,s*15,r,r*2,r*3,r*4,r*6,a,a*2,a*5,a*10,a*25,a*50,a*100]);const c=[[a,od,Et,Et,Et,Et,Et,Et,1],[s*28,"{MMM}",rh,Et,Et,Et,Et,Et,1],[s,ld,rh,Et,Et,Et,Et,Et,1],[n,"{h}"+cd,Ra,Et,Zr,Et,Et,Et,1],[t,ur,Ra,Et,Zr,Et,Et,Et,1],[e,oh,Ra+" "+ur,Et,Zr+" "+ur,Et,ah,Et,1],[i,oh+".{fff}",Ra+" "+ur,Et,Zr+" "+ur,Et,ah,Et,1]];function f(u){return(h,p,v,M,m,d)=>{let T=[],A=m>=a,b=m>=r&&m<a,N=u(v),R=Lt(N*i,3),D=tl(N.getFullYear(),A?0:N.getMonth(),b||A?1:N.getDate()),C=Lt(D*i,3);if(b||A){let S=b?m/r:0,_=A?m/a:0,y=R==C?R:Lt(tl(D.getFullYear()+_,D.getMonth()+S,1)*i,3),F=new Date(en(y/i)),k=F.getFullYear(),q=F.getMonth();for(let H=0;y<=M;H++){let Y=tl(k+_*H,q+S*H,1),j=Y-u(Lt(Y*i,3));y=Lt((+Y+j)*i,3),y<=M&&T.push(y)}}else{let S=m>=s?s:m,_=$n(v)-$n(R),y=C+_+Ao(R-C,S);T.push(y);let F=u(y),k=F.getHours()+F.getMinutes()/t+F.getSeconds()/n,q=m/n,H=h.axes[p]._space,Y=d/H;for(;y=Lt(y+m,i==1?0:3),!(y>M);)if(q>1){let j=$n(Lt(k+q,6))%24,oe=u(y).getHours()-j;oe>1&&(oe=-1),y-=oe*n,k=(k+q)%24;let ve=T[T.length-1];Lt((y-ve)/m,3)*Y>=.7&&T.push(y)}else T.push(y)}return T}}return[l,c,f]}const[Im,Nm,Fm]=ud(1),[Om,Bm,zm]=ud(.001);ra(2,-53,53,[1]);function lh(i,e){return i.map(t=>t.map((n,s)=>s==0||s==8||n==null?n:e(s==1||t[8]==0?n:t[1]+n)))}function ch(i,e){return(t,n,s,r,a)=>{let o=e.find(v=>a>=v[0])||e[e.length-1],l,c,f,u,h,p;return n.map(v=>{let M=i(v),m=M.getFullYear(),d=M.getMonth(),T=M.getDate(),A=M.getHours(),b=M.getMinutes(),N=M.getSeconds(),R=m!=l&&o[2]||d!=c&&o[3]||T!=f&&o[4]||A!=u&&o[5]||b!=h&&o[6]||N!=p&&o[7]||o[1];return l=m,c=d,f=T,u=A,h=b,p=N,R(M)})}}function km(i,e){let t=Zc(e);return(n,s,r,a,o)=>s.map(l=>t(i(l)))}function tl(i,e,t){return new Date(i,e,t)}function uh(i,e){return e(i)}const Hm="{YYYY}-{MM}-{DD} {h}:{mm}{aa}";function hh(i,e){return(t,n,s,r)=>r==null?Xc:e(i(n))}function Vm(i,e){let t=i.series[e];return t.width?t.stroke(i,e):t.points.width?t.points.stroke(i,e):null}function Gm(i,e){return i.series[e].fill(i,e)}const Wm={show:!0,live:!0,isolate:!1,mount:cm,markers:{show:!0,width:2,stroke:Vm,fill:Gm,dash:"solid"},idx:null,idxs:null,values:[]};function Xm(i,e){let t=i.cursor.points,n=ei(),s=t.size(i,e);Gt(n,jr,s),Gt(n,Kr,s);let r=s/-2;Gt(n,"marginLeft",r),Gt(n,"marginTop",r);let a=t.width(i,e,s);return a&&Gt(n,"borderWidth",a),n}function qm(i,e){let t=i.series[e].points;return t._fill||t._stroke}function Ym(i,e){let t=i.series[e].points;return t._stroke||t._fill}function $m(i,e){return i.series[e].points.size}const nl=[0,0];function jm(i,e,t){return nl[0]=e,nl[1]=t,nl}function Ca(i,e,t,n=!0){return s=>{s.button==0&&(!n||s.target==e)&&t(s)}}function il(i,e,t,n=!0){return s=>{(!n||s.target==e)&&t(s)}}const Km={show:!0,x:!0,y:!0,lock:!1,move:jm,points:{one:!1,show:Xm,size:$m,width:0,stroke:Ym,fill:qm},bind:{mousedown:Ca,mouseup:Ca,click:Ca,dblclick:Ca,mousemove:il,mouseleave:il,mouseenter:il},drag:{setScale:!0,x:!0,y:!1,dist:0,uni:null,click:(i,e)=>{e.stopPropagation(),e.stopImmediatePropagation()},_x:!1,_y:!1},focus:{dist:(i,e,t,n,s)=>n-s,prox:-1,bias:0},hover:{skip:[void 0],prox:null,bias:0},left:-10,top:-10,idx:null,dataIdx:null,idxs:null,event:null},hd={show:!0,stroke:"rgba(0,0,0,0.07)",width:2},Qc=Zt({},hd,{filter:Zf}),fd=Zt({},Qc,{size:10}),dd=Zt({},hd,{show:!1}),eu='12px system-ui, -apple-system, "Segoe UI", Roboto, "Helvetica Neue", Arial, "Noto Sans", sans-serif, "Apple Color Emoji", "Segoe UI Emoji", "Segoe UI Symbol", "Noto Color Emoji"',pd="bold "+eu,md=1.5,fh={show:!0,scale:"x",stroke:Wc,space:50,gap:5,alignTo:1,size:50,labelGap:0,labelSize:30,labelFont:pd,side:2,grid:Qc,ticks:fd,border:dd,font:eu,lineGap:md,rotate:0},Zm="Value",Jm="Time",dh={show:!0,scale:"x",auto:!1,sorted:1,min:Dt,max:-Dt,idxs:[]};function Qm(i,e,t,n,s){return e.map(r=>r==null?"":jc(r))}function eg(i,e,t,n,s,r,a){let o=[],l=ls.get(s)||0;t=a?t:Lt(Ao(t,s),l);for(let c=t;c<=n;c=Lt(c+s,l))o.push(Object.is(c,-0)?0:c);return o}function ql(i,e,t,n,s,r,a){const o=[],l=i.scales[i.axes[e].scale].log,c=l==10?Hi:$f,f=$n(c(t));s=_r(l,f),l==10&&(s=bs[fi(s,bs)]);let u=t,h=s*l;l==10&&(h=bs[fi(h,bs)]);do o.push(u),u=u+s,l==10&&!ls.has(u)&&(u=Lt(u,ls.get(s))),u>=h&&(s=u,h=s*l,l==10&&(h=bs[fi(h,bs)]));while(u<=n);return o}function tg(i,e,t,n,s,r,a){let l=i.scales[i.axes[e].scale].asinh,c=n>l?ql(i,e,Ln(l,t),n,s):[l],f=n>=0&&t<=0?[0]:[];return(t<-l?ql(i,e,Ln(l,-n),-t,s):[l]).reverse().map(h=>-h).concat(f,c)}const gd=/./,ng=/[12357]/,ig=/[125]/,ph=/1/,Yl=(i,e,t,n)=>i.map((s,r)=>e==4&&s==0||r%n==0&&t.test(s.toExponential()[s<0?1:0])?s:null);function sg(i,e,t,n,s){let r=i.axes[t],a=r.scale,o=i.scales[a],l=i.valToPos,c=r._space,f=l(10,a),u=l(9,a)-f>=c?gd:l(7,a)-f>=c?ng:l(5,a)-f>=c?ig:ph;if(u==ph){let h=tn(l(1,a)-f);if(h<c)return Yl(e.slice().reverse(),o.distr,u,ti(c/h)).reverse()}return Yl(e,o.distr,u,1)}function rg(i,e,t,n,s){let r=i.axes[t],a=r.scale,o=r._space,l=i.valToPos,c=tn(l(1,a)-l(2,a));return c<o?Yl(e.slice().reverse(),3,gd,ti(o/c)).reverse():e}function ag(i,e,t,n){return n==null?Xc:e==null?"":jc(e)}const mh={show:!0,scale:"y",stroke:Wc,space:30,gap:5,alignTo:1,size:50,labelGap:0,labelSize:30,labelFont:pd,side:3,grid:Qc,ticks:fd,border:dd,font:eu,lineGap:md,rotate:0};function og(i,e){let t=3+(i||1)*2;return Lt(t*e,3)}function lg(i,e){let{scale:t,idxs:n}=i.series[0],s=i._data[0],r=i.valToPos(s[n[0]],t,!0),a=i.valToPos(s[n[1]],t,!0),o=tn(a-r),l=i.series[e],c=o/(l.points.space*yt);return n[1]-n[0]<=c}const gh={scale:null,auto:!0,sorted:0,min:Dt,max:-Dt},_d=(i,e,t,n,s)=>s,_h={show:!0,auto:!0,sorted:0,gaps:_d,alpha:1,facets:[Zt({},gh,{scale:"x"}),Zt({},gh,{scale:"y"})]},vh={scale:"y",auto:!0,sorted:0,show:!0,spanGaps:!1,gaps:_d,alpha:1,points:{show:lg,filter:null},values:null,min:Dt,max:-Dt,idxs:[],path:null,clip:null};function cg(i,e,t,n,s){return t/10}const vd={time:Ip,auto:!0,distr:1,log:10,asinh:1,min:null,max:null,dir:1,ori:0},ug=Zt({},vd,{time:!1,ori:1}),xh={};function xd(i,e){let t=xh[i];return t||(t={key:i,plots:[],sub(n){t.plots.push(n)},unsub(n){t.plots=t.plots.filter(s=>s!=n)},pub(n,s,r,a,o,l,c){for(let f=0;f<t.plots.length;f++)t.plots[f]!=s&&t.plots[f].pub(n,s,r,a,o,l,c)}},i!=null&&(xh[i]=t)),t}const Mr=1,$l=2;function Os(i,e,t){const n=i.mode,s=i.series[e],r=n==2?i._data[e]:i._data,a=i.scales,o=i.bbox;let l=r[0],c=n==2?r[1]:r[e],f=n==2?a[s.facets[0].scale]:a[i.series[0].scale],u=n==2?a[s.facets[1].scale]:a[s.scale],h=o.left,p=o.top,v=o.width,M=o.height,m=i.valToPosH,d=i.valToPosV;return f.ori==0?t(s,l,c,f,u,m,d,h,p,v,M,Po,Rr,Lo,Sd,Ed):t(s,l,c,f,u,d,m,p,h,M,v,Do,Cr,iu,yd,bd)}function tu(i,e){let t=0,n=0,s=vt(i.bands,Kc);for(let r=0;r<s.length;r++){let a=s[r];a.series[0]==e?t=a.dir:a.series[1]==e&&(a.dir==1?n|=1:n|=2)}return[t,n==1?-1:n==2?1:n==3?2:0]}function hg(i,e,t,n,s){let r=i.mode,a=i.series[e],o=r==2?a.facets[1].scale:a.scale,l=i.scales[o];return s==-1?l.min:s==1?l.max:l.distr==3?l.dir==1?l.min:l.max:0}function Vi(i,e,t,n,s,r){return Os(i,e,(a,o,l,c,f,u,h,p,v,M,m)=>{let d=a.pxRound;const T=c.dir*(c.ori==0?1:-1),A=c.ori==0?Rr:Cr;let b,N;T==1?(b=t,N=n):(b=n,N=t);let R=d(u(o[b],c,M,p)),D=d(h(l[b],f,m,v)),C=d(u(o[N],c,M,p)),S=d(h(r==1?f.max:f.min,f,m,v)),_=new Path2D(s);return A(_,C,S),A(_,R,S),A(_,R,D),_})}function Co(i,e,t,n,s,r){let a=null;if(i.length>0){a=new Path2D;const o=e==0?Lo:iu;let l=t;for(let u=0;u<i.length;u++){let h=i[u];if(h[1]>h[0]){let p=h[0]-l;p>0&&o(a,l,n,p,n+r),l=h[1]}}let c=t+s-l,f=10;c>0&&o(a,l,n-f/2,c,n+r+f)}return a}function fg(i,e,t){let n=i[i.length-1];n&&n[0]==e?n[1]=t:i.push([e,t])}function nu(i,e,t,n,s,r,a){let o=[],l=i.length;for(let c=s==1?t:n;c>=t&&c<=n;c+=s)if(e[c]===null){let u=c,h=c;if(s==1)for(;++c<=n&&e[c]===null;)h=c;else for(;--c>=t&&e[c]===null;)h=c;let p=r(i[u]),v=h==u?p:r(i[h]),M=u-s;p=a<=0&&M>=0&&M<l?r(i[M]):p;let d=h+s;v=a>=0&&d>=0&&d<l?r(i[d]):v,v>=p&&o.push([p,v])}return o}function Mh(i){return i==0?Kf:i==1?en:e=>Es(e,i)}function Md(i){let e=i==0?Po:Do,t=i==0?(s,r,a,o,l,c)=>{s.arcTo(r,a,o,l,c)}:(s,r,a,o,l,c)=>{s.arcTo(a,r,l,o,c)},n=i==0?(s,r,a,o,l)=>{s.rect(r,a,o,l)}:(s,r,a,o,l)=>{s.rect(a,r,l,o)};return(s,r,a,o,l,c=0,f=0)=>{c==0&&f==0?n(s,r,a,o,l):(c=di(c,o/2,l/2),f=di(f,o/2,l/2),e(s,r+c,a),t(s,r+o,a,r+o,a+l,c),t(s,r+o,a+l,r,a+l,f),t(s,r,a+l,r,a,f),t(s,r,a,r+o,a,c),s.closePath())}}const Po=(i,e,t)=>{i.moveTo(e,t)},Do=(i,e,t)=>{i.moveTo(t,e)},Rr=(i,e,t)=>{i.lineTo(e,t)},Cr=(i,e,t)=>{i.lineTo(t,e)},Lo=Md(0),iu=Md(1),Sd=(i,e,t,n,s,r)=>{i.arc(e,t,n,s,r)},yd=(i,e,t,n,s,r)=>{i.arc(t,e,n,s,r)},Ed=(i,e,t,n,s,r,a)=>{i.bezierCurveTo(e,t,n,s,r,a)},bd=(i,e,t,n,s,r,a)=>{i.bezierCurveTo(t,e,s,n,a,r)};function Td(i){return(e,t,n,s,r)=>Os(e,t,(a,o,l,c,f,u,h,p,v,M,m)=>{let{pxRound:d,points:T}=a,A,b;c.ori==0?(A=Po,b=Sd):(A=Do,b=yd);const N=Lt(T.width*yt,3);let R=(T.size-T.width)/2*yt,D=Lt(R*2,3),C=new Path2D,S=new Path2D,{left:_,top:y,width:F,height:k}=e.bbox;Lo(S,_-D,y-D,F+D*2,k+D*2);const q=H=>{if(l[H]!=null){let Y=d(u(o[H],c,M,p)),j=d(h(l[H],f,m,v));A(C,Y+R,j),b(C,Y,j,R,0,ro*2)}};if(r)r.forEach(q);else for(let H=n;H<=s;H++)q(H);return{stroke:N>0?C:null,fill:C,clip:S,flags:Mr|$l}})}function wd(i){return(e,t,n,s,r,a)=>{n!=s&&(r!=n&&a!=n&&i(e,t,n),r!=s&&a!=s&&i(e,t,s),i(e,t,a))}}const dg=wd(Rr),pg=wd(Cr);function Ad(i){const e=vt(i?.alignGaps,0);return(t,n,s,r)=>Os(t,n,(a,o,l,c,f,u,h,p,v,M,m)=>{[s,r]=To(l,s,r);let d=a.pxRound,T=k=>d(u(k,c,M,p)),A=k=>d(h(k,f,m,v)),b,N;c.ori==0?(b=Rr,N=dg):(b=Cr,N=pg);const R=c.dir*(c.ori==0?1:-1),D={stroke:new Path2D,fill:null,clip:null,band:null,gaps:null,flags:Mr},C=D.stroke;let S=!1;if(r-s>=M*4){let k=_e=>t.posToVal(_e,c.key,!0),q=null,H=null,Y,j,K,ae=T(o[R==1?s:r]),oe=T(o[s]),ve=T(o[r]),Se=k(R==1?oe+1:ve-1);for(let _e=R==1?s:r;_e>=s&&_e<=r;_e+=R){let nt=o[_e],ee=(R==1?nt<Se:nt>Se)?ae:T(nt),ne=l[_e];ee==ae?ne!=null?(j=ne,q==null?(b(C,ee,A(j)),Y=q=H=j):j<q?q=j:j>H&&(H=j)):ne===null&&(S=!0):(q!=null&&N(C,ae,A(q),A(H),A(Y),A(j)),ne!=null?(j=ne,b(C,ee,A(j)),q=H=Y=j):(q=H=null,ne===null&&(S=!0)),ae=ee,Se=k(ae+R))}q!=null&&q!=H&&K!=ae&&N(C,ae,A(q),A(H),A(Y),A(j))}else for(let k=R==1?s:r;k>=s&&k<=r;k+=R){let q=l[k];q===null?S=!0:q!=null&&b(C,T(o[k]),A(q))}let[y,F]=tu(t,n);if(a.fill!=null||y!=0){let k=D.fill=new Path2D(C),q=a.fillTo(t,n,a.min,a.max,y),H=A(q),Y=T(o[s]),j=T(o[r]);R==-1&&([j,Y]=[Y,j]),b(k,j,H),b(k,Y,H)}if(!a.spanGaps){let k=[];S&&k.push(...nu(o,l,s,r,R,T,e)),D.gaps=k=a.gaps(t,n,s,r,k),D.clip=Co(k,c.ori,p,v,M,m)}return F!=0&&(D.band=F==2?[Vi(t,n,s,r,C,-1),Vi(t,n,s,r,C,1)]:Vi(t,n,s,r,C,F)),D})}function mg(i){const e=vt(i.align,1),t=vt(i.ascDesc,!1),n=vt(i.alignGaps,0),s=vt(i.extend,!1);return(r,a,o,l)=>Os(r,a,(c,f,u,h,p,v,M,m,d,T,A)=>{[o,l]=To(u,o,l);let b=c.pxRound,{left:N,width:R}=r.bbox,D=oe=>b(v(oe,h,T,m)),C=oe=>b(M(oe,p,A,d)),S=h.ori==0?Rr:Cr;const _={stroke:new Path2D,fill:null,clip:null,band:null,gaps:null,flags:Mr},y=_.stroke,F=h.dir*(h.ori==0?1:-1);let k=C(u[F==1?o:l]),q=D(f[F==1?o:l]),H=q,Y=q;s&&e==-1&&(Y=N,S(y,Y,k)),S(y,q,k);for(let oe=F==1?o:l;oe>=o&&oe<=l;oe+=F){let ve=u[oe];if(ve==null)continue;let Se=D(f[oe]),_e=C(ve);e==1?S(y,Se,k):S(y,H,_e),S(y,Se,_e),k=_e,H=Se}let j=H;s&&e==1&&(j=N+R,S(y,j,k));let[K,ae]=tu(r,a);if(c.fill!=null||K!=0){let oe=_.fill=new Path2D(y),ve=c.fillTo(r,a,c.min,c.max,K),Se=C(ve);S(oe,j,Se),S(oe,Y,Se)}if(!c.spanGaps){let oe=[];oe.push(...nu(f,u,o,l,F,D,n));let ve=c.width*yt/2,Se=t||e==1?ve:-ve,_e=t||e==-1?-ve:ve;oe.forEach(nt=>{nt[0]+=Se,nt[1]+=_e}),_.gaps=oe=c.gaps(r,a,o,l,oe),_.clip=Co(oe,h.ori,m,d,T,A)}return ae!=0&&(_.band=ae==2?[Vi(r,a,o,l,y,-1),Vi(r,a,o,l,y,1)]:Vi(r,a,o,l,y,ae)),_})}function Sh(i,e,t,n,s,r,a=Dt){if(i.length>1){let o=null;for(let l=0,c=1/0;l<i.length;l++)if(e[l]!==void 0){if(o!=null){let f=tn(i[l]-i[o]);f<c&&(c=f,a=tn(t(i[l],n,s,r)-t(i[o],n,s,r)))}o=l}}return a}function gg(i){i=i||na;const e=vt(i.size,[.6,Dt,1]),t=i.align||0,n=i.gap||0;let s=i.radius;s=s==null?[0,0]:typeof s=="number"?[s,0]:s;const r=ht(s),a=1-e[0],o=vt(e[1],Dt),l=vt(e[2],1),c=vt(i.disp,na),f=vt(i.each,p=>{}),{fill:u,stroke:h}=c;return(p,v,M,m)=>Os(p,v,(d,T,A,b,N,R,D,C,S,_,y)=>{let F=d.pxRound,k=t,q=n*yt,H=o*yt,Y=l*yt,j,K;b.ori==0?[j,K]=r(p,v):[K,j]=r(p,v);const ae=b.dir*(b.ori==0?1:-1);let oe=b.ori==0?Lo:iu,ve=b.ori==0?f:(B,J,ie,te,Ne,he,De)=>{f(B,J,ie,Ne,te,De,he)},Se=vt(p.bands,Kc).find(B=>B.series[0]==v),_e=Se!=null?Se.dir:0,nt=d.fillTo(p,v,d.min,d.max,_e),Ze=F(D(nt,N,y,S)),ee,ne,be,ze=_,xe=F(d.width*yt),Je=!1,It=null,O=null,dt=null,$e=null;u!=null&&(xe==0||h!=null)&&(Je=!0,It=u.values(p,v,M,m),O=new Map,new Set(It).forEach(B=>{B!=null&&O.set(B,new Path2D)}),xe>0&&(dt=h.values(p,v,M,m),$e=new Map,new Set(dt).forEach(B=>{B!=null&&$e.set(B,new Path2D)})));let{x0:Ge,size:Ie}=c;if(Ge!=null&&Ie!=null){k=1,T=Ge.values(p,v,M,m),Ge.unit==2&&(T=T.map(ie=>p.posToVal(C+ie*_,b.key,!0)));let B=Ie.values(p,v,M,m);Ie.unit==2?ne=B[0]*_:ne=R(B[0],b,_,C)-R(0,b,_,C),ze=Sh(T,A,R,b,_,C,ze),be=ze-ne+q}else ze=Sh(T,A,R,b,_,C,ze),be=ze*a+q,ne=ze-be;be<1&&(be=0),xe>=ne/2&&(xe=0),be<5&&(F=Kf);let bt=be>0,Ce=ze-be-(bt?xe:0);ne=F(Xl(Ce,Y,H)),ee=(k==0?ne/2:k==ae?0:ne)-k*ae*((k==0?q/2:0)+(bt?xe/2:0));const Ve={stroke:null,fill:null,clip:null,band:null,gaps:null,flags:0},zt=Je?null:new Path2D;let xt=null;if(Se!=null)xt=p.data[Se.series[1]];else{let{y0:B,y1:J}=c;B!=null&&J!=null&&(A=J.values(p,v,M,m),xt=B.values(p,v,M,m))}let L=j*ne,x=K*ne;for(let B=ae==1?M:m;B>=M&&B<=m;B+=ae){let J=A[B];if(J==null)continue;if(xt!=null){let ge=xt[B]??0;if(J-ge==0)continue;Ze=D(ge,N,y,S)}let ie=b.distr!=2||c!=null?T[B]:B,te=R(ie,b,_,C),Ne=D(vt(J,nt),N,y,S),he=F(te-ee),De=F(Ln(Ne,Ze)),Ae=F(di(Ne,Ze)),le=De-Ae;if(J!=null){let ge=J<0?x:L,Be=J<0?L:x;Je?(xe>0&&dt[B]!=null&&oe($e.get(dt[B]),he,Ae+$n(xe/2),ne,Ln(0,le-xe),ge,Be),It[B]!=null&&oe(O.get(It[B]),he,Ae+$n(xe/2),ne,Ln(0,le-xe),ge,Be)):oe(zt,he,Ae+$n(xe/2),ne,Ln(0,le-xe),ge,Be),ve(p,v,B,he-xe/2,Ae,ne+xe,le)}}return xe>0?Ve.stroke=Je?$e:zt:Je||(Ve._fill=d.width==0?d._fill:d._stroke??d._fill,Ve.width=0),Ve.fill=Je?O:zt,Ve})}function _g(i,e){const t=vt(e?.alignGaps,0);return(n,s,r,a)=>Os(n,s,(o,l,c,f,u,h,p,v,M,m,d)=>{[r,a]=To(c,r,a);let T=o.pxRound,A=j=>T(h(j,f,m,v)),b=j=>T(p(j,u,d,M)),N,R,D;f.ori==0?(N=Po,D=Rr,R=Ed):(N=Do,D=Cr,R=bd);const C=f.dir*(f.ori==0?1:-1);let S=A(l[C==1?r:a]),_=S,y=[],F=[];for(let j=C==1?r:a;j>=r&&j<=a;j+=C)if(c[j]!=null){let ae=l[j],oe=A(ae);y.push(_=oe),F.push(b(c[j]))}const k={stroke:i(y,F,N,D,R,T),fill:null,clip:null,band:null,gaps:null,flags:Mr},q=k.stroke;let[H,Y]=tu(n,s);if(o.fill!=null||H!=0){let j=k.fill=new Path2D(q),K=o.fillTo(n,s,o.min,o.max,H),ae=b(K);D(j,_,ae),D(j,S,ae)}if(!o.spanGaps){let j=[];j.push(...nu(l,c,r,a,C,A,t)),k.gaps=j=o.gaps(n,s,r,a,j),k.clip=Co(j,f.ori,v,M,m,d)}return Y!=0&&(k.band=Y==2?[Vi(n,s,r,a,q,-1),Vi(n,s,r,a,q,1)]:Vi(n,s,r,a,q,Y)),k})}function vg(i){return _g(xg,i)}function xg(i,e,t,n,s,r){const a=i.length;if(a<2)return null;const o=new Path2D;if(t(o,i[0],e[0]),a==2)n(o,i[1],e[1]);else{let l=Array(a),c=Array(a-1),f=Array(a-1),u=Array(a-1);for(let h=0;h<a-1;h++)f[h]=e[h+1]-e[h],u[h]=i[h+1]-i[h],c[h]=f[h]/u[h];l[0]=c[0];for(let h=1;h<a-1;h++)c[h]===0||c[h-1]===0||c[h-1]>0!=c[h]>0?l[h]=0:(l[h]=3*(u[h-1]+u[h])/((2*u[h]+u[h-1])/c[h-1]+(u[h]+2*u[h-1])/c[h]),isFinite(l[h])||(l[h]=0));l[a-1]=c[a-2];for(let h=0;h<a-1;h++)s(o,i[h]+u[h]/3,e[h]+l[h]*u[h]/3,i[h+1]-u[h]/3,e[h+1]-l[h+1]*u[h]/3,i[h+1],e[h+1])}return o}const jl=new Set;function yh(){for(let i of jl)i.syncRect(!0)}Ar&&(Ls(Qp,dr,yh),Ls(em,dr,yh,!0),Ls(mo,dr,()=>{En.pxRatio=yt}));const Mg=Ad(),Sg=Td();function Eh(i,e,t,n){return(n?[i[0],i[1]].concat(i.slice(2)):[i[0]].concat(i.slice(1))).map((r,a)=>Kl(r,a,e,t))}function yg(i,e){return i.map((t,n)=>n==0?{}:Zt({},e,t))}function Kl(i,e,t,n){return Zt({},e==0?t:n,i)}function Rd(i,e,t){return e==null?vr:[e,t]}const Eg=Rd;function bg(i,e,t){return e==null?vr:go(e,t,$c,!0)}function Cd(i,e,t,n){return e==null?vr:wo(e,t,i.scales[n].log,!1)}const Tg=Cd;function Pd(i,e,t,n){return e==null?vr:Yc(e,t,i.scales[n].log,!1)}const wg=Pd;function Ag(i,e,t,n,s){let r=Ln(th(i),th(e)),a=e-i,o=fi(s/n*a,t);do{let l=t[o],c=n*l/a;if(c>=s&&r+(l<5?ls.get(l):0)<=17)return[l,c]}while(++o<t.length);return[0,0]}function bh(i){let e,t;return i=i.replace(/(\d+)px/,(n,s)=>(e=en((t=+s)*yt))+"px"),[i,e,t]}function Rg(i){i.show&&[i.font,i.labelFont].forEach(e=>{let t=Lt(e[2]*yt,1);e[0]=e[0].replace(/[0-9.]+px/,t+"px"),e[1]=t})}function En(i,e,t){const n={mode:vt(i.mode,1)},s=n.mode;function r(g,E,P,U){let G=E.valToPct(g);return U+P*(E.dir==-1?1-G:G)}function a(g,E,P,U){let G=E.valToPct(g);return U+P*(E.dir==-1?G:1-G)}function o(g,E,P,U){return E.ori==0?r(g,E,P,U):a(g,E,P,U)}n.valToPosH=r,n.valToPosV=a;let l=!1;n.status=0;const c=n.root=ei(Np);if(i.id!=null&&(c.id=i.id),qn(c,i.class),i.title){let g=ei(Bp,c);g.textContent=i.title}const f=hi("canvas"),u=n.ctx=f.getContext("2d"),h=ei(zp,c);Ls("click",h,g=>{g.target===v&&(kt!=Ws||Wt!=Xs)&&gn.click(n,g)},!0);const p=n.under=ei(kp,h);h.appendChild(f);const v=n.over=ei(Hp,h);i=xr(i);const M=+vt(i.pxAlign,1),m=Mh(M);(i.plugins||[]).forEach(g=>{g.opts&&(i=g.opts(n,i)||i)});const d=i.ms||.001,T=n.series=s==1?Eh(i.series||[],dh,vh,!1):yg(i.series||[null],_h),A=n.axes=Eh(i.axes||[],fh,mh,!0),b=n.scales={},N=n.bands=i.bands||[];N.forEach(g=>{g.fill=ht(g.fill||null),g.dir=vt(g.dir,-1)});const R=s==2?T[1].facets[0].scale:T[0].scale,D={axes:vp,series:ds},C=(i.drawOrder||["axes","series"]).map(g=>D[g]);function S(g){const E=g.distr==3?P=>Hi(P>0?P:g.clamp(n,P,g.min,g.max,g.key)):g.distr==4?P=>el(P,g.asinh):g.distr==100?P=>g.fwd(P):P=>P;return P=>{let U=E(P),{_min:G,_max:$}=g,se=$-G;return(U-G)/se}}function _(g){let E=b[g];if(E==null){let P=(i.scales||na)[g]||na;if(P.from!=null){_(P.from);let U=Zt({},b[P.from],P,{key:g});U.valToPct=S(U),b[g]=U}else{E=b[g]=Zt({},g==R?vd:ug,P),E.key=g;let U=E.time,G=E.range,$=ns(G);if((g!=R||s==2&&!U)&&($&&(G[0]==null||G[1]==null)&&(G={min:G[0]==null?Ju:{mode:1,hard:G[0],soft:G[0]},max:G[1]==null?Ju:{mode:1,hard:G[1],soft:G[1]}},$=!1),!$&&Ro(G))){let se=G;G=(ce,me,we)=>me==null?vr:go(me,we,se)}E.range=ht(G||(U?Eg:g==R?E.distr==3?Tg:E.distr==4?wg:Rd:E.distr==3?Cd:E.distr==4?Pd:bg)),E.auto=ht($?!1:E.auto),E.clamp=ht(E.clamp||cg),E._min=E._max=null,E.valToPct=S(E)}}}_("x"),_("y"),s==1&&T.forEach(g=>{_(g.scale)}),A.forEach(g=>{_(g.scale)});for(let g in i.scales)_(g);const y=b[R],F=y.distr;let k,q;y.ori==0?(qn(c,Fp),k=r,q=a):(qn(c,Op),k=a,q=r);const H={};for(let g in b){let E=b[g];(E.min!=null||E.max!=null)&&(H[g]={min:E.min,max:E.max},E.min=E.max=null)}const Y=i.tzDate||(g=>new Date(en(g/d))),j=i.fmtDate||Zc,K=d==1?Fm(Y):zm(Y),ae=ch(Y,lh(d==1?Nm:Bm,j)),oe=hh(Y,uh(Hm,j)),ve=[],Se=n.legend=Zt({},Wm,i.legend),_e=n.cursor=Zt({},Km,{drag:{y:s==2}},i.cursor),nt=Se.show,Ze=_e.show,ee=Se.markers;Se.idxs=ve,ee.width=ht(ee.width),ee.dash=ht(ee.dash),ee.stroke=ht(ee.stroke),ee.fill=ht(ee.fill);let ne,be,ze,xe=[],Je=[],It,O=!1,dt={};if(Se.live){const g=T[1]?T[1].values:null;O=g!=null,It=O?g(n,1,0):{_:0};for(let E in It)dt[E]=Xc}if(nt)if(ne=hi("table",Yp,c),ze=hi("tbody",null,ne),Se.mount(n,ne),O){be=hi("thead",null,ne,ze);let g=hi("tr",null,be);hi("th",null,g);for(var $e in It)hi("th",zu,g).textContent=$e}else qn(ne,jp),Se.live&&qn(ne,$p);const Ge={show:!0},Ie={show:!1};function bt(g,E){if(E==0&&(O||!Se.live||s==2))return vr;let P=[],U=hi("tr",Kp,ze,ze.childNodes[E]);qn(U,g.class),g.show||qn(U,ws);let G=hi("th",null,U);if(ee.show){let ce=ei(Zp,G);if(E>0){let me=ee.width(n,E);me&&(ce.style.border=me+"px "+ee.dash(n,E)+" "+ee.stroke(n,E)),ce.style.background=ee.fill(n,E)}}let $=ei(zu,G);g.label instanceof HTMLElement?$.appendChild(g.label):$.textContent=g.label,E>0&&(ee.show||($.style.color=g.width>0?ee.stroke(n,E):ee.fill(n,E)),Ve("click",G,ce=>{if(_e._lock)return;mn(ce);let me=T.indexOf(g);if((ce.ctrlKey||ce.metaKey)!=Se.isolate){let we=T.some((Re,Ue)=>Ue>0&&Ue!=me&&Re.show);T.forEach((Re,Ue)=>{Ue>0&&xi(Ue,we?Ue==me?Ge:Ie:Ge,!0,jt.setSeries)})}else xi(me,{show:!g.show},!0,jt.setSeries)},!1),Un&&Ve(Gu,G,ce=>{_e._lock||(mn(ce),xi(T.indexOf(g),Ys,!0,jt.setSeries))},!1));for(var se in It){let ce=hi("td",Jp,U);ce.textContent="--",P.push(ce)}return[U,P]}const Ce=new Map;function Ve(g,E,P,U=!0){const G=Ce.get(E)||{},$=_e.bind[g](n,E,P,U);$&&(Ls(g,E,G[g]=$),Ce.set(E,G))}function zt(g,E,P){const U=Ce.get(E)||{};for(let G in U)(g==null||G==g)&&(Wl(G,E,U[G]),delete U[G]);g==null&&Ce.delete(E)}let xt=0,L=0,x=0,B=0,J=0,ie=0,te=J,Ne=ie,he=x,De=B,Ae=0,le=0,ge=0,Be=0;n.bbox={};let Oe=!1,Me=!1,Ke=!1,V=!1,fe=!1,pe=!1;function Pe(g,E,P){(P||g!=n.width||E!=n.height)&&ue(g,E),ks(!1),Ke=!0,Me=!0,Hs()}function ue(g,E){n.width=xt=x=g,n.height=L=B=E,J=ie=0,wt(),pt();let P=n.bbox;Ae=P.left=Es(J*yt,.5),le=P.top=Es(ie*yt,.5),ge=P.width=Es(x*yt,.5),Be=P.height=Es(B*yt,.5)}const re=3;function Fe(){let g=!1,E=0;for(;!g;){E++;let P=gp(E),U=_p(E);g=E==re||P&&U,g||(ue(n.width,n.height),Me=!0)}}function Qe({width:g,height:E}){Pe(g,E)}n.setSize=Qe;function wt(){let g=!1,E=!1,P=!1,U=!1;A.forEach((G,$)=>{if(G.show&&G._show){let{side:se,_size:ce}=G,me=se%2,we=G.label!=null?G.labelSize:0,Re=ce+we;Re>0&&(me?(x-=Re,se==3?(J+=Re,U=!0):P=!0):(B-=Re,se==0?(ie+=Re,g=!0):E=!0))}}),Di[0]=g,Di[1]=P,Di[2]=E,Di[3]=U,x-=vi[1]+vi[3],J+=vi[3],B-=vi[2]+vi[0],ie+=vi[0]}function pt(){let g=J+x,E=ie+B,P=J,U=ie;function G($,se){switch($){case 1:return g+=se,g-se;case 2:return E+=se,E-se;case 3:return P-=se,P+se;case 0:return U-=se,U+se}}A.forEach(($,se)=>{if($.show&&$._show){let ce=$.side;$._pos=G(ce,$._size),$.label!=null&&($._lpos=G(ce,$.labelSize))}})}if(_e.dataIdx==null){let g=_e.hover,E=g.skip=new Set(g.skip??[]);E.add(void 0);let P=g.prox=ht(g.prox),U=g.bias??=0;_e.dataIdx=(G,$,se,ce)=>{if($==0)return se;let me=se,we=P(G,$,se,ce)??Dt,Re=we>=0&&we<Dt,Ue=y.ori==0?x:B,et=_e.left,Mt=e[0],gt=e[$];if(E.has(gt[se])){me=null;let lt=null,je=null,He;if(U==0||U==-1)for(He=se;lt==null&&He-- >0;)E.has(gt[He])||(lt=He);if(U==0||U==1)for(He=se;je==null&&He++<gt.length;)E.has(gt[He])||(je=He);if(lt!=null||je!=null)if(Re){let Vt=lt==null?-1/0:k(Mt[lt],y,Ue,0),qt=je==null?1/0:k(Mt[je],y,Ue,0),fn=et-Vt,At=qt-et;fn<=At?fn<=we&&(me=lt):At<=we&&(me=je)}else me=je==null?lt:lt==null?je:se-lt<=je-se?lt:je}else Re&&tn(et-k(Mt[se],y,Ue,0))>we&&(me=null);return me}}const mn=g=>{_e.event=g};_e.idxs=ve,_e._lock=!1;let Pt=_e.points;Pt.show=ht(Pt.show),Pt.size=ht(Pt.size),Pt.stroke=ht(Pt.stroke),Pt.width=ht(Pt.width),Pt.fill=ht(Pt.fill);const kn=n.focus=Zt({},i.focus||{alpha:.3},_e.focus),Un=kn.prox>=0,_i=Un&&Pt.one;let bn=[],Pi=[],ri=[];function Lr(g,E){let P=Pt.show(n,E);if(P instanceof HTMLElement)return qn(P,qp),qn(P,g.class),Ei(P,-10,-10,x,B),v.insertBefore(P,bn[E]),P}function hs(g,E){if(s==1||E>0){let P=s==1&&b[g.scale].time,U=g.value;g.value=P?sh(U)?hh(Y,uh(U,j)):U||oe:U||ag,g.label=g.label||(P?Jm:Zm)}if(_i||E>0){g.width=g.width==null?1:g.width,g.paths=g.paths||Mg||um,g.fillTo=ht(g.fillTo||hg),g.pxAlign=+vt(g.pxAlign,M),g.pxRound=Mh(g.pxAlign),g.stroke=ht(g.stroke||null),g.fill=ht(g.fill||null),g._stroke=g._fill=g._paths=g._focus=null;let P=og(Ln(1,g.width),1),U=g.points=Zt({},{size:P,width:Ln(1,P*.2),stroke:g.stroke,space:P*2,paths:Sg,_stroke:null,_fill:null},g.points);U.show=ht(U.show),U.filter=ht(U.filter),U.fill=ht(U.fill),U.stroke=ht(U.stroke),U.paths=ht(U.paths),U.pxAlign=g.pxAlign}if(nt){let P=bt(g,E);xe.splice(E,0,P[0]),Je.splice(E,0,P[1]),Se.values.push(null)}if(Ze){ve.splice(E,0,null);let P=null;_i?E==0&&(P=Lr(g,E)):E>0&&(P=Lr(g,E)),bn.splice(E,0,P),Pi.splice(E,0,0),ri.splice(E,0,0)}hn("addSeries",E)}function Sa(g,E){E=E??T.length,g=s==1?Kl(g,E,dh,vh):Kl(g,E,{},_h),T.splice(E,0,g),hs(T[E],E)}n.addSeries=Sa;function ya(g){if(T.splice(g,1),nt){Se.values.splice(g,1),Je.splice(g,1);let E=xe.splice(g,1)[0];zt(null,E.firstChild),E.remove()}Ze&&(ve.splice(g,1),bn.splice(g,1)[0].remove(),Pi.splice(g,1),ri.splice(g,1)),hn("delSeries",g)}n.delSeries=ya;const Di=[!1,!1,!1,!1];function zo(g,E){if(g._show=g.show,g.show){let P=g.side%2,U=b[g.scale];U==null&&(g.scale=P?T[1].scale:R,U=b[g.scale]);let G=U.time;g.size=ht(g.size),g.space=ht(g.space),g.rotate=ht(g.rotate),ns(g.incrs)&&g.incrs.forEach(se=>{!ls.has(se)&&ls.set(se,Qf(se))}),g.incrs=ht(g.incrs||(U.distr==2?Lm:G?d==1?Im:Om:bs)),g.splits=ht(g.splits||(G&&U.distr==1?K:U.distr==3?ql:U.distr==4?tg:eg)),g.stroke=ht(g.stroke),g.grid.stroke=ht(g.grid.stroke),g.ticks.stroke=ht(g.ticks.stroke),g.border.stroke=ht(g.border.stroke);let $=g.values;g.values=ns($)&&!ns($[0])?ht($):G?ns($)?ch(Y,lh($,j)):sh($)?km(Y,$):$||ae:$||Qm,g.filter=ht(g.filter||(U.distr>=3&&U.log==10?sg:U.distr==3&&U.log==2?rg:Zf)),g.font=bh(g.font),g.labelFont=bh(g.labelFont),g._size=g.size(n,null,E,0),g._space=g._rotate=g._incrs=g._found=g._splits=g._values=null,g._size>0&&(Di[E]=!0,g._el=ei(Vp,h))}}function fs(g,E,P,U){let[G,$,se,ce]=P,me=E%2,we=0;return me==0&&(ce||$)&&(we=E==0&&!G||E==2&&!se?en(fh.size/3):0),me==1&&(G||se)&&(we=E==1&&!$||E==3&&!ce?en(mh.size/2):0),we}const Ea=n.padding=(i.padding||[fs,fs,fs,fs]).map(g=>ht(vt(g,fs))),vi=n._padding=Ea.map((g,E)=>g(n,E,Di,0));let Jt,w=null,W=null;const Q=s==1?T[0].idxs:null;let Z=null,X=!1;function de(g,E){if(e=g??[],n.data=n._data=e,s==2){Jt=0;for(let P=1;P<T.length;P++)Jt+=e[P][0].length}else{e.length==0&&(n.data=n._data=e=[[]]),Z=e[0],Jt=Z.length;let P=e;if(F==2){P=e.slice();let U=P[0]=Array(Jt);for(let G=0;G<Jt;G++)U[G]=G}n._data=e=P}if(ks(!0),hn("setData"),F==2&&(Ke=!0),E!==!1){let P=y;P.auto(n,X)?ye():Yi(R,P.min,P.max),V=V||_e.left>=0,pe=!0,Hs()}}n.setData=de;function ye(){X=!0;let g,E;s==1&&(Jt>0?(w=Q[0]=0,W=Q[1]=Jt-1,g=e[0][w],E=e[0][W],F==2?(g=w,E=W):g==E&&(F==3?[g,E]=wo(g,g,y.log,!1):F==4?[g,E]=Yc(g,g,y.log,!1):y.time?E=g+en(86400/d):[g,E]=go(g,E,$c,!0))):(w=Q[0]=g=null,W=Q[1]=E=null)),Yi(R,g,E)}let Le,Te,Xe,Ye,ke,rt,mt,Nt,Tt,it;function We(g,E,P,U,G,$){g??=Hu,P??=Kc,U??="butt",G??=Hu,$??="round",g!=Le&&(u.strokeStyle=Le=g),G!=Te&&(u.fillStyle=Te=G),E!=Xe&&(u.lineWidth=Xe=E),$!=ke&&(u.lineJoin=ke=$),U!=rt&&(u.lineCap=rt=U),P!=Ye&&u.setLineDash(Ye=P)}function Ft(g,E,P,U){E!=Te&&(u.fillStyle=Te=E),g!=mt&&(u.font=mt=g),P!=Nt&&(u.textAlign=Nt=P),U!=Tt&&(u.textBaseline=Tt=U)}function ut(g,E,P,U,G=0){if(U.length>0&&g.auto(n,X)&&(E==null||E.min==null)){let $=vt(w,0),se=vt(W,U.length-1),ce=P.min==null?sm(U,$,se,G,g.distr==3):[P.min,P.max];g.min=di(g.min,P.min=ce[0]),g.max=Ln(g.max,P.max=ce[1])}}const xn={min:null,max:null};function Wi(){for(let U in b){let G=b[U];H[U]==null&&(G.min==null||H[R]!=null&&G.auto(n,X))&&(H[U]=xn)}for(let U in b){let G=b[U];H[U]==null&&G.from!=null&&H[G.from]!=null&&(H[U]=xn)}H[R]!=null&&ks(!0);let g={};for(let U in H){let G=H[U];if(G!=null){let $=g[U]=xr(b[U],dm);if(G.min!=null)Zt($,G);else if(U!=R||s==2)if(Jt==0&&$.from==null){let se=$.range(n,null,null,U);$.min=se[0],$.max=se[1]}else $.min=Dt,$.max=-Dt}}if(Jt>0){T.forEach((U,G)=>{if(s==1){let $=U.scale,se=H[$];if(se==null)return;let ce=g[$];if(G==0){let me=ce.range(n,ce.min,ce.max,$);ce.min=me[0],ce.max=me[1],w=fi(ce.min,e[0]),W=fi(ce.max,e[0]),W-w>1&&(e[0][w]<ce.min&&w++,e[0][W]>ce.max&&W--),U.min=Z[w],U.max=Z[W]}else U.show&&U.auto&&ut(ce,se,U,e[G],U.sorted);U.idxs[0]=w,U.idxs[1]=W}else if(G>0&&U.show&&U.auto){let[$,se]=U.facets,ce=$.scale,me=se.scale,[we,Re]=e[G],Ue=g[ce],et=g[me];Ue!=null&&ut(Ue,H[ce],$,we,$.sorted),et!=null&&ut(et,H[me],se,Re,se.sorted),U.min=se.min,U.max=se.max}});for(let U in g){let G=g[U],$=H[U];if(G.from==null&&($==null||$.min==null)){let se=G.range(n,G.min==Dt?null:G.min,G.max==-Dt?null:G.max,U);G.min=se[0],G.max=se[1]}}}for(let U in g){let G=g[U];if(G.from!=null){let $=g[G.from];if($.min==null)G.min=G.max=null;else{let se=G.range(n,$.min,$.max,U);G.min=se[0],G.max=se[1]}}}let E={},P=!1;for(let U in g){let G=g[U],$=b[U];if($.min!=G.min||$.max!=G.max){$.min=G.min,$.max=G.max;let se=$.distr;$._min=se==3?Hi($.min):se==4?el($.min,$.asinh):se==100?$.fwd($.min):$.min,$._max=se==3?Hi($.max):se==4?el($.max,$.asinh):se==100?$.fwd($.max):$.max,E[U]=P=!0}}if(P){T.forEach((U,G)=>{s==2?G>0&&E.y&&(U._paths=null):E[U.scale]&&(U._paths=null)});for(let U in E)Ke=!0,hn("setScale",U);Ze&&_e.left>=0&&(V=pe=!0)}for(let U in H)H[U]=null}function Tn(g){let E=Xl(w-1,0,Jt-1),P=Xl(W+1,0,Jt-1);for(;g[E]==null&&E>0;)E--;for(;g[P]==null&&P<Jt-1;)P++;return[E,P]}function ds(){if(Jt>0){let g=T.some(E=>E._focus)&&it!=kn.alpha;g&&(u.globalAlpha=it=kn.alpha),T.forEach((E,P)=>{if(P>0&&E.show&&(Ot(P,!1),Ot(P,!0),E._paths==null)){let U=it;it!=E.alpha&&(u.globalAlpha=it=E.alpha);let G=s==2?[0,e[P][0].length-1]:Tn(e[P]);E._paths=E.paths(n,P,G[0],G[1]),it!=U&&(u.globalAlpha=it=U)}}),T.forEach((E,P)=>{if(P>0&&E.show){let U=it;it!=E.alpha&&(u.globalAlpha=it=E.alpha),E._paths!=null&&wn(P,!1);{let G=E._paths!=null?E._paths.gaps:null,$=E.points.show(n,P,w,W,G),se=E.points.filter(n,P,$,G);($||se)&&(E.points._paths=E.points.paths(n,P,w,W,se),wn(P,!0))}it!=U&&(u.globalAlpha=it=U),hn("drawSeries",P)}}),g&&(u.globalAlpha=it=1)}}function Ot(g,E){let P=E?T[g].points:T[g];P._stroke=P.stroke(n,g),P._fill=P.fill(n,g)}function wn(g,E){let P=E?T[g].points:T[g],{stroke:U,fill:G,clip:$,flags:se,_stroke:ce=P._stroke,_fill:me=P._fill,_width:we=P.width}=P._paths;we=Lt(we*yt,3);let Re=null,Ue=we%2/2;E&&me==null&&(me=we>0?"#fff":ce);let et=P.pxAlign==1&&Ue>0;if(et&&u.translate(Ue,Ue),!E){let Mt=Ae-we/2,gt=le-we/2,lt=ge+we,je=Be+we;Re=new Path2D,Re.rect(Mt,gt,lt,je)}E?ln(ce,we,P.dash,P.cap,me,U,G,se,$):In(g,ce,we,P.dash,P.cap,me,U,G,se,Re,$),et&&u.translate(-Ue,-Ue)}function In(g,E,P,U,G,$,se,ce,me,we,Re){let Ue=!1;me!=0&&N.forEach((et,Mt)=>{if(et.series[0]==g){let gt=T[et.series[1]],lt=e[et.series[1]],je=(gt._paths||na).band;ns(je)&&(je=et.dir==1?je[0]:je[1]);let He,Vt=null;gt.show&&je&&am(lt,w,W)?(Vt=et.fill(n,Mt)||$,He=gt._paths.clip):je=null,ln(E,P,U,G,Vt,se,ce,me,we,Re,He,je),Ue=!0}}),Ue||ln(E,P,U,G,$,se,ce,me,we,Re)}const on=Mr|$l;function ln(g,E,P,U,G,$,se,ce,me,we,Re,Ue){We(g,E,P,U,G),(me||we||Ue)&&(u.save(),me&&u.clip(me),we&&u.clip(we)),Ue?(ce&on)==on?(u.clip(Ue),Re&&u.clip(Re),Kn(G,se),Xi(g,$,E)):ce&$l?(Kn(G,se),u.clip(Ue),Xi(g,$,E)):ce&Mr&&(u.save(),u.clip(Ue),Re&&u.clip(Re),Kn(G,se),u.restore(),Xi(g,$,E)):(Kn(G,se),Xi(g,$,E)),(me||we||Ue)&&u.restore()}function Xi(g,E,P){P>0&&(E instanceof Map?E.forEach((U,G)=>{u.strokeStyle=Le=G,u.stroke(U)}):E!=null&&g&&u.stroke(E))}function Kn(g,E){E instanceof Map?E.forEach((P,U)=>{u.fillStyle=Te=U,u.fill(P)}):E!=null&&g&&u.fill(E)}function mp(g,E,P,U){let G=A[g],$;if(U<=0)$=[0,0];else{let se=G._space=G.space(n,g,E,P,U),ce=G._incrs=G.incrs(n,g,E,P,U,se);$=Ag(E,P,ce,U,se)}return G._found=$}function ko(g,E,P,U,G,$,se,ce,me,we){let Re=se%2/2;M==1&&u.translate(Re,Re),We(ce,se,me,we,ce),u.beginPath();let Ue,et,Mt,gt,lt=G+(U==0||U==3?-$:$);P==0?(et=G,gt=lt):(Ue=G,Mt=lt);for(let je=0;je<g.length;je++)E[je]!=null&&(P==0?Ue=Mt=g[je]:et=gt=g[je],u.moveTo(Ue,et),u.lineTo(Mt,gt));u.stroke(),M==1&&u.translate(-Re,-Re)}function gp(g){let E=!0;return A.forEach((P,U)=>{if(!P.show)return;let G=b[P.scale];if(G.min==null){P._show&&(E=!1,P._show=!1,ks(!1));return}else P._show||(E=!1,P._show=!0,ks(!1));let $=P.side,se=$%2,{min:ce,max:me}=G,[we,Re]=mp(U,ce,me,se==0?x:B);if(Re==0)return;let Ue=G.distr==2,et=P._splits=P.splits(n,U,ce,me,we,Re,Ue),Mt=G.distr==2?et.map(He=>Z[He]):et,gt=G.distr==2?Z[et[1]]-Z[et[0]]:we,lt=P._values=P.values(n,P.filter(n,Mt,U,Re,gt),U,Re,gt);P._rotate=$==2?P.rotate(n,lt,U,Re):0;let je=P._size;P._size=ti(P.size(n,lt,U,g)),je!=null&&P._size!=je&&(E=!1)}),E}function _p(g){let E=!0;return Ea.forEach((P,U)=>{let G=P(n,U,Di,g);G!=vi[U]&&(E=!1),vi[U]=G}),E}function vp(){for(let g=0;g<A.length;g++){let E=A[g];if(!E.show||!E._show)continue;let P=E.side,U=P%2,G,$,se=E.stroke(n,g),ce=P==0||P==3?-1:1,[me,we]=E._found;if(E.label!=null){let Rn=E.labelGap*ce,Gn=en((E._lpos+Rn)*yt);Ft(E.labelFont[0],se,"center",P==2?Br:ku),u.save(),U==1?(G=$=0,u.translate(Gn,en(le+Be/2)),u.rotate((P==3?-ro:ro)/2)):(G=en(Ae+ge/2),$=Gn);let gs=jf(E.label)?E.label(n,g,me,we):E.label;u.fillText(gs,G,$),u.restore()}if(we==0)continue;let Re=b[E.scale],Ue=U==0?ge:Be,et=U==0?Ae:le,Mt=E._splits,gt=Re.distr==2?Mt.map(Rn=>Z[Rn]):Mt,lt=Re.distr==2?Z[Mt[1]]-Z[Mt[0]]:me,je=E.ticks,He=E.border,Vt=je.show?je.size:0,qt=en(Vt*yt),fn=en((E.alignTo==2?E._size-Vt-E.gap:E.gap)*yt),At=E._rotate*-ro/180,Yt=m(E._pos*yt),Hn=(qt+fn)*ce,An=Yt+Hn;$=U==0?An:0,G=U==1?An:0;let Zn=E.font[0],ai=E.align==1?js:E.align==2?Zo:At>0?js:At<0?Zo:U==0?"center":P==3?Zo:js,Si=At||U==1?"middle":P==2?Br:ku;Ft(Zn,se,ai,Si);let Vn=E.font[1]*E.lineGap,Jn=Mt.map(Rn=>m(o(Rn,Re,Ue,et))),oi=E._values;for(let Rn=0;Rn<oi.length;Rn++){let Gn=oi[Rn];if(Gn!=null){U==0?G=Jn[Rn]:$=Jn[Rn],Gn=""+Gn;let gs=Gn.indexOf(`
`)==-1?[Gn]:Gn.split(/\n/gm);for(let Cn=0;Cn<gs.length;Cn++){let Bu=gs[Cn];At?(u.save(),u.translate(G,$+Cn*Vn),u.rotate(At),u.fillText(Bu,0,0),u.restore()):u.fillText(Bu,G,$+Cn*Vn)}}}je.show&&ko(Jn,je.filter(n,gt,g,we,lt),U,P,Yt,qt,Lt(je.width*yt,3),je.stroke(n,g),je.dash,je.cap);let yi=E.grid;yi.show&&ko(Jn,yi.filter(n,gt,g,we,lt),U,U==0?2:1,U==0?le:Ae,U==0?Be:ge,Lt(yi.width*yt,3),yi.stroke(n,g),yi.dash,yi.cap),He.show&&ko([Yt],[1],U==0?1:0,U==0?1:2,U==1?le:Ae,U==1?Be:ge,Lt(He.width*yt,3),He.stroke(n,g),He.dash,He.cap)}hn("drawAxes")}function ks(g){T.forEach((E,P)=>{P>0&&(E._paths=null,g&&(s==1?(E.min=null,E.max=null):E.facets.forEach(U=>{U.min=null,U.max=null})))})}let ba=!1,Ho=!1,Ur=[];function xp(){Ho=!1;for(let g=0;g<Ur.length;g++)hn(...Ur[g]);Ur.length=0}function Hs(){ba||(Mm(Mu),ba=!0)}function Mp(g,E=!1){ba=!0,Ho=E,g(n),Mu(),E&&Ur.length>0&&queueMicrotask(xp)}n.batch=Mp;function Mu(){if(Oe&&(Wi(),Oe=!1),Ke&&(Fe(),Ke=!1),Me){if(Gt(p,js,J),Gt(p,Br,ie),Gt(p,jr,x),Gt(p,Kr,B),Gt(v,js,J),Gt(v,Br,ie),Gt(v,jr,x),Gt(v,Kr,B),Gt(h,jr,xt),Gt(h,Kr,L),f.width=en(xt*yt),f.height=en(L*yt),A.forEach(({_el:g,_show:E,_size:P,_pos:U,side:G})=>{if(g!=null)if(E){let $=G===3||G===0?P:0,se=G%2==1;Gt(g,se?"left":"top",U-$),Gt(g,se?"width":"height",P),Gt(g,se?"top":"left",se?ie:J),Gt(g,se?"height":"width",se?B:x),Gl(g,ws)}else qn(g,ws)}),Le=Te=Xe=ke=rt=mt=Nt=Tt=Ye=null,it=1,Fr(!0),J!=te||ie!=Ne||x!=he||B!=De){ks(!1);let g=x/he,E=B/De;if(Ze&&!V&&_e.left>=0){_e.left*=g,_e.top*=E,Vs&&Ei(Vs,en(_e.left),0,x,B),Gs&&Ei(Gs,0,en(_e.top),x,B);for(let P=0;P<bn.length;P++){let U=bn[P];U!=null&&(Pi[P]*=g,ri[P]*=E,Ei(U,ti(Pi[P]),ti(ri[P]),x,B))}}if(Ht.show&&!fe&&Ht.left>=0&&Ht.width>0){Ht.left*=g,Ht.width*=g,Ht.top*=E,Ht.height*=E;for(let P in Yo)Gt(qs,P,Ht[P])}te=J,Ne=ie,he=x,De=B}hn("setSize"),Me=!1}xt>0&&L>0&&(u.clearRect(0,0,f.width,f.height),hn("drawClear"),C.forEach(g=>g()),hn("draw")),Ht.show&&fe&&(Ta(Ht),fe=!1),Ze&&V&&(ms(null,!0,!1),V=!1),Se.show&&Se.live&&pe&&(Xo(),pe=!1),l||(l=!0,n.status=1,hn("ready")),X=!1,ba=!1}n.redraw=(g,E)=>{Ke=E||!1,g!==!1?Yi(R,y.min,y.max):Hs()};function Vo(g,E){let P=b[g];if(P.from==null){if(Jt==0){let U=P.range(n,E.min,E.max,g);E.min=U[0],E.max=U[1]}if(E.min>E.max){let U=E.min;E.min=E.max,E.max=U}if(Jt>1&&E.min!=null&&E.max!=null&&E.max-E.min<1e-16)return;g==R&&P.distr==2&&Jt>0&&(E.min=fi(E.min,e[0]),E.max=fi(E.max,e[0]),E.min==E.max&&E.max++),H[g]=E,Oe=!0,Hs()}}n.setScale=Vo;let Go,Wo,Vs,Gs,Su,yu,Ws,Xs,Eu,bu,kt,Wt,qi=!1;const gn=_e.drag;let cn=gn.x,un=gn.y;Ze&&(_e.x&&(Go=ei(Wp,v)),_e.y&&(Wo=ei(Xp,v)),y.ori==0?(Vs=Go,Gs=Wo):(Vs=Wo,Gs=Go),kt=_e.left,Wt=_e.top);const Ht=n.select=Zt({show:!0,over:!0,left:0,width:0,top:0,height:0},i.select),qs=Ht.show?ei(Gp,Ht.over?v:p):null;function Ta(g,E){if(Ht.show){for(let P in g)Ht[P]=g[P],P in Yo&&Gt(qs,P,g[P]);E!==!1&&hn("setSelect")}}n.setSelect=Ta;function Sp(g){if(T[g].show)nt&&Gl(xe[g],ws);else if(nt&&qn(xe[g],ws),Ze){let P=_i?bn[0]:bn[g];P!=null&&Ei(P,-10,-10,x,B)}}function Yi(g,E,P){Vo(g,{min:E,max:P})}function xi(g,E,P,U){E.focus!=null&&wp(g),E.show!=null&&T.forEach((G,$)=>{$>0&&(g==$||g==null)&&(G.show=E.show,Sp($),s==2?(Yi(G.facets[0].scale,null,null),Yi(G.facets[1].scale,null,null)):Yi(G.scale,null,null),Hs())}),P!==!1&&hn("setSeries",g,E),U&&Or("setSeries",n,g,E)}n.setSeries=xi;function yp(g,E){Zt(N[g],E)}function Ep(g,E){g.fill=ht(g.fill||null),g.dir=vt(g.dir,-1),E=E??N.length,N.splice(E,0,g)}function bp(g){g==null?N.length=0:N.splice(g,1)}n.addBand=Ep,n.setBand=yp,n.delBand=bp;function Tp(g,E){T[g].alpha=E,Ze&&bn[g]!=null&&(bn[g].style.opacity=E),nt&&xe[g]&&(xe[g].style.opacity=E)}let Li,$i,ps;const Ys={focus:!0};function wp(g){if(g!=ps){let E=g==null,P=kn.alpha!=1;T.forEach((U,G)=>{if(s==1||G>0){let $=E||G==0||G==g;U._focus=E?null:$,P&&Tp(G,$?1:kn.alpha)}}),ps=g,P&&Hs()}}nt&&Un&&Ve(Wu,ne,g=>{_e._lock||(mn(g),ps!=null&&xi(null,Ys,!0,jt.setSeries))});function Mi(g,E,P){let U=b[E];P&&(g=g/yt-(U.ori==1?ie:J));let G=x;U.ori==1&&(G=B,g=G-g),U.dir==-1&&(g=G-g);let $=U._min,se=U._max,ce=g/G,me=$+(se-$)*ce,we=U.distr;return we==3?_r(10,me):we==4?lm(me,U.asinh):we==100?U.bwd(me):me}function Ap(g,E){let P=Mi(g,R,E);return fi(P,e[0],w,W)}n.valToIdx=g=>fi(g,e[0]),n.posToIdx=Ap,n.posToVal=Mi,n.valToPos=(g,E,P)=>b[E].ori==0?r(g,b[E],P?ge:x,P?Ae:0):a(g,b[E],P?Be:B,P?le:0),n.setCursor=(g,E,P)=>{kt=g.left,Wt=g.top,ms(null,E,P)};function Tu(g,E){Gt(qs,js,Ht.left=g),Gt(qs,jr,Ht.width=E)}function wu(g,E){Gt(qs,Br,Ht.top=g),Gt(qs,Kr,Ht.height=E)}let Ir=y.ori==0?Tu:wu,Nr=y.ori==1?Tu:wu;function Rp(){if(nt&&Se.live)for(let g=s==2?1:0;g<T.length;g++){if(g==0&&O)continue;let E=Se.values[g],P=0;for(let U in E)Je[g][P++].firstChild.nodeValue=E[U]}}function Xo(g,E){if(g!=null&&(g.idxs?g.idxs.forEach((P,U)=>{ve[U]=P}):fm(g.idx)||ve.fill(g.idx),Se.idx=ve[0]),nt&&Se.live){for(let P=0;P<T.length;P++)(P>0||s==1&&!O)&&Cp(P,ve[P]);Rp()}pe=!1,E!==!1&&hn("setLegend")}n.setLegend=Xo;function Cp(g,E){let P=T[g],U=g==0&&F==2?Z:e[g],G;O?G=P.values(n,g,E)??dt:(G=P.value(n,E==null?null:U[E],g,E),G=G==null?dt:{_:G}),Se.values[g]=G}function ms(g,E,P){Eu=kt,bu=Wt,[kt,Wt]=_e.move(n,kt,Wt),_e.left=kt,_e.top=Wt,Ze&&(Vs&&Ei(Vs,en(kt),0,x,B),Gs&&Ei(Gs,0,en(Wt),x,B));let U,G=w>W;Li=Dt,$i=null;let $=y.ori==0?x:B,se=y.ori==1?x:B;if(kt<0||Jt==0||G){U=_e.idx=null;for(let ce=0;ce<T.length;ce++){let me=bn[ce];me!=null&&Ei(me,-10,-10,x,B)}Un&&xi(null,Ys,!0,g==null&&jt.setSeries),Se.live&&(ve.fill(U),pe=!0)}else{let ce,me,we;s==1&&(ce=y.ori==0?kt:Wt,me=Mi(ce,R),U=_e.idx=fi(me,e[0],w,W),we=k(e[0][U],y,$,0));let Re=-10,Ue=-10,et=0,Mt=0,gt=!0,lt="",je="";for(let He=s==2?1:0;He<T.length;He++){let Vt=T[He],qt=ve[He],fn=qt==null?null:s==1?e[He][qt]:e[He][1][qt],At=_e.dataIdx(n,He,U,me),Yt=At==null?null:s==1?e[He][At]:e[He][1][At];if(pe=pe||Yt!=fn||At!=qt,ve[He]=At,He>0&&Vt.show){let Hn=At==null?-10:At==U?we:k(s==1?e[0][At]:e[He][0][At],y,$,0),An=Yt==null?-10:q(Yt,s==1?b[Vt.scale]:b[Vt.facets[1].scale],se,0);if(Un&&Yt!=null){let Zn=y.ori==1?kt:Wt,ai=tn(kn.dist(n,He,At,An,Zn));if(ai<Li){let Si=kn.bias;if(Si!=0){let Vn=Mi(Zn,Vt.scale),Jn=Yt>=0?1:-1,oi=Vn>=0?1:-1;oi==Jn&&(oi==1?Si==1?Yt>=Vn:Yt<=Vn:Si==1?Yt<=Vn:Yt>=Vn)&&(Li=ai,$i=He)}else Li=ai,$i=He}}if(pe||_i){let Zn,ai;y.ori==0?(Zn=Hn,ai=An):(Zn=An,ai=Hn);let Si,Vn,Jn,oi,yi,Rn,Gn=!0,gs=Pt.bbox;if(gs!=null){Gn=!1;let Cn=gs(n,He);Jn=Cn.left,oi=Cn.top,Si=Cn.width,Vn=Cn.height}else Jn=Zn,oi=ai,Si=Vn=Pt.size(n,He);if(Rn=Pt.fill(n,He),yi=Pt.stroke(n,He),_i)He==$i&&Li<=kn.prox&&(Re=Jn,Ue=oi,et=Si,Mt=Vn,gt=Gn,lt=Rn,je=yi);else{let Cn=bn[He];Cn!=null&&(Pi[He]=Jn,ri[He]=oi,Zu(Cn,Si,Vn,Gn),ju(Cn,Rn,yi),Ei(Cn,ti(Jn),ti(oi),x,B))}}}}if(_i){let He=kn.prox,Vt=ps==null?Li<=He:Li>He||$i!=ps;if(pe||Vt){let qt=bn[0];qt!=null&&(Pi[0]=Re,ri[0]=Ue,Zu(qt,et,Mt,gt),ju(qt,lt,je),Ei(qt,ti(Re),ti(Ue),x,B))}}}if(Ht.show&&qi)if(g!=null){let[ce,me]=jt.scales,[we,Re]=jt.match,[Ue,et]=g.cursor.sync.scales,Mt=g.cursor.drag;if(cn=Mt._x,un=Mt._y,cn||un){let{left:gt,top:lt,width:je,height:He}=g.select,Vt=g.scales[Ue].ori,qt=g.posToVal,fn,At,Yt,Hn,An,Zn=ce!=null&&we(ce,Ue),ai=me!=null&&Re(me,et);Zn&&cn?(Vt==0?(fn=gt,At=je):(fn=lt,At=He),Yt=b[ce],Hn=k(qt(fn,Ue),Yt,$,0),An=k(qt(fn+At,Ue),Yt,$,0),Ir(di(Hn,An),tn(An-Hn))):Ir(0,$),ai&&un?(Vt==1?(fn=gt,At=je):(fn=lt,At=He),Yt=b[me],Hn=q(qt(fn,et),Yt,se,0),An=q(qt(fn+At,et),Yt,se,0),Nr(di(Hn,An),tn(An-Hn))):Nr(0,se)}else $o()}else{let ce=tn(Eu-Su),me=tn(bu-yu);if(y.ori==1){let et=ce;ce=me,me=et}cn=gn.x&&ce>=gn.dist,un=gn.y&&me>=gn.dist;let we=gn.uni;we!=null?cn&&un&&(cn=ce>=we,un=me>=we,!cn&&!un&&(me>ce?un=!0:cn=!0)):gn.x&&gn.y&&(cn||un)&&(cn=un=!0);let Re,Ue;cn&&(y.ori==0?(Re=Ws,Ue=kt):(Re=Xs,Ue=Wt),Ir(di(Re,Ue),tn(Ue-Re)),un||Nr(0,se)),un&&(y.ori==1?(Re=Ws,Ue=kt):(Re=Xs,Ue=Wt),Nr(di(Re,Ue),tn(Ue-Re)),cn||Ir(0,$)),!cn&&!un&&(Ir(0,0),Nr(0,0))}if(gn._x=cn,gn._y=un,g==null){if(P){if(Ou!=null){let[ce,me]=jt.scales;jt.values[0]=ce!=null?Mi(y.ori==0?kt:Wt,ce):null,jt.values[1]=me!=null?Mi(y.ori==1?kt:Wt,me):null}Or(Jo,n,kt,Wt,x,B,U)}if(Un){let ce=P&&jt.setSeries,me=kn.prox;ps==null?Li<=me&&xi($i,Ys,!0,ce):Li>me?xi(null,Ys,!0,ce):$i!=ps&&xi($i,Ys,!0,ce)}}pe&&(Se.idx=U,Xo()),E!==!1&&hn("setCursor")}let ji=null;Object.defineProperty(n,"rect",{get(){return ji==null&&Fr(!1),ji}});function Fr(g=!1){g?ji=null:(ji=v.getBoundingClientRect(),hn("syncRect",ji))}function Au(g,E,P,U,G,$,se){_e._lock||qi&&g!=null&&g.movementX==0&&g.movementY==0||(qo(g,E,P,U,G,$,se,!1,g!=null),g!=null?ms(null,!0,!0):ms(E,!0,!1))}function qo(g,E,P,U,G,$,se,ce,me){if(ji==null&&Fr(!1),mn(g),g!=null)P=g.clientX-ji.left,U=g.clientY-ji.top;else{if(P<0||U<0){kt=-10,Wt=-10;return}let[we,Re]=jt.scales,Ue=E.cursor.sync,[et,Mt]=Ue.values,[gt,lt]=Ue.scales,[je,He]=jt.match,Vt=E.axes[0].side%2==1,qt=y.ori==0?x:B,fn=y.ori==1?x:B,At=Vt?$:G,Yt=Vt?G:$,Hn=Vt?U:P,An=Vt?P:U;if(gt!=null?P=je(we,gt)?o(et,b[we],qt,0):-10:P=qt*(Hn/At),lt!=null?U=He(Re,lt)?o(Mt,b[Re],fn,0):-10:U=fn*(An/Yt),y.ori==1){let Zn=P;P=U,U=Zn}}me&&(E==null||E.cursor.event.type==Jo)&&((P<=1||P>=x-1)&&(P=Es(P,x)),(U<=1||U>=B-1)&&(U=Es(U,B))),ce?(Su=P,yu=U,[Ws,Xs]=_e.move(n,P,U)):(kt=P,Wt=U)}const Yo={width:0,height:0,left:0,top:0};function $o(){Ta(Yo,!1)}let Ru,Cu,Pu,Du;function Lu(g,E,P,U,G,$,se){qi=!0,cn=un=gn._x=gn._y=!1,qo(g,E,P,U,G,$,se,!0,!1),g!=null&&(Ve(Qo,Hl,Uu,!1),Or(Vu,n,Ws,Xs,x,B,null));let{left:ce,top:me,width:we,height:Re}=Ht;Ru=ce,Cu=me,Pu=we,Du=Re}function Uu(g,E,P,U,G,$,se){qi=gn._x=gn._y=!1,qo(g,E,P,U,G,$,se,!1,!0);let{left:ce,top:me,width:we,height:Re}=Ht,Ue=we>0||Re>0,et=Ru!=ce||Cu!=me||Pu!=we||Du!=Re;if(Ue&&et&&Ta(Ht),gn.setScale&&Ue&&et){let Mt=ce,gt=we,lt=me,je=Re;if(y.ori==1&&(Mt=me,gt=Re,lt=ce,je=we),cn&&Yi(R,Mi(Mt,R),Mi(Mt+gt,R)),un)for(let He in b){let Vt=b[He];He!=R&&Vt.from==null&&Vt.min!=Dt&&Yi(He,Mi(lt+je,He),Mi(lt,He))}$o()}else _e.lock&&(_e._lock=!_e._lock,ms(E,!0,g!=null));g!=null&&(zt(Qo,Hl),Or(Qo,n,kt,Wt,x,B,null))}function Pp(g,E,P,U,G,$,se){if(_e._lock)return;mn(g);let ce=qi;if(qi){let me=!0,we=!0,Re=10,Ue,et;y.ori==0?(Ue=cn,et=un):(Ue=un,et=cn),Ue&&et&&(me=kt<=Re||kt>=x-Re,we=Wt<=Re||Wt>=B-Re),Ue&&me&&(kt=kt<Ws?0:x),et&&we&&(Wt=Wt<Xs?0:B),ms(null,!0,!0),qi=!1}kt=-10,Wt=-10,ve.fill(null),ms(null,!0,!0),ce&&(qi=ce)}function Iu(g,E,P,U,G,$,se){_e._lock||(mn(g),ye(),$o(),g!=null&&Or(Xu,n,kt,Wt,x,B,null))}function Nu(){A.forEach(Rg),Pe(n.width,n.height,!0)}Ls(mo,dr,Nu);const $s={};$s.mousedown=Lu,$s.mousemove=Au,$s.mouseup=Uu,$s.dblclick=Iu,$s.setSeries=(g,E,P,U)=>{let G=jt.match[2];P=G(n,E,P),P!=-1&&xi(P,U,!0,!1)},Ze&&(Ve(Vu,v,Lu),Ve(Jo,v,Au),Ve(Gu,v,g=>{mn(g),Fr(!1)}),Ve(Wu,v,Pp),Ve(Xu,v,Iu),jl.add(n),n.syncRect=Fr);const wa=n.hooks=i.hooks||{};function hn(g,E,P){Ho?Ur.push([g,E,P]):g in wa&&wa[g].forEach(U=>{U.call(null,n,E,P)})}(i.plugins||[]).forEach(g=>{for(let E in g.hooks)wa[E]=(wa[E]||[]).concat(g.hooks[E])});const Fu=(g,E,P)=>P,jt=Zt({key:null,setSeries:!1,filters:{pub:nh,sub:nh},scales:[R,T[1]?T[1].scale:null],match:[ih,ih,Fu],values:[null,null]},_e.sync);jt.match.length==2&&jt.match.push(Fu),_e.sync=jt;const Ou=jt.key,jo=xd(Ou);function Or(g,E,P,U,G,$,se){jt.filters.pub(g,E,P,U,G,$,se)&&jo.pub(g,E,P,U,G,$,se)}jo.sub(n);function Dp(g,E,P,U,G,$,se){jt.filters.sub(g,E,P,U,G,$,se)&&$s[g](null,E,P,U,G,$,se)}n.pub=Dp;function Lp(){jo.unsub(n),jl.delete(n),Ce.clear(),Wl(mo,dr,Nu),c.remove(),ne?.remove(),hn("destroy")}n.destroy=Lp;function Ko(){hn("init",i,e),de(e||i.data,!1),H[R]?Vo(R,H[R]):ye(),fe=Ht.show&&(Ht.width>0||Ht.height>0),V=pe=!0,Pe(i.width,i.height)}return T.forEach(hs),A.forEach(zo),t?t instanceof HTMLElement?(t.appendChild(c),Ko()):t(n,Ko):Ko(),n}En.assign=Zt;En.fmtNum=jc;En.rangeNum=go;En.rangeLog=wo;En.rangeAsinh=Yc;En.orient=Os;En.pxRatio=yt;En.join=xm;En.fmtDate=Zc,En.tzDate=Pm;En.sync=xd;{En.addGap=fg,En.clipGaps=Co;let i=En.paths={points:Td};i.linear=Ad,i.stepped=mg,i.bars=gg,i.spline=vg}const Cg=["#00224e","#002e6a","#1a386f","#32436d","#434e6c","#535a6d","#61656f","#6f7073","#7d7c78","#8c8878","#9b9476","#aba072","#bcae6c","#cdbb63","#dec958","#f0d846","#fee838"],Pg=["#301437","#45135c","#592a8f","#5e51ad","#6276ba","#7297c1","#95b5c7","#c4ced4","#e2d9e2","#d8c7be","#cca389","#c27c63","#b25652","#983550","#741e4f","#4a1342","#2f1436"];function Dd(i){const e=new Uint8ClampedArray(768),t=i.map(n=>[1,3,5].map(s=>parseInt(n.slice(s,s+2),16)));for(let n=0;n<256;n++){const s=n/255*(t.length-1),r=Math.min(t.length-2,Math.floor(s));for(let a=0;a<3;a++)e[3*n+a]=t[r][a]+(s-r)*(t[r+1][a]-t[r][a])}return e}const rs=Dd(Cg),Dg=Dd(Pg);function su(i,e,t){return i===null||!Number.isFinite(i)?-1:Math.max(0,Math.min(255,Math.round(255*(i-e)/(t-e))))}function Dn(){const i=getComputedStyle(document.documentElement),e=t=>i.getPropertyValue(t).trim();return{co:e("--co"),cross:e("--cross"),other:e("--other"),ink:e("--ink"),quiet:e("--quiet"),grid:e("--grid"),paper:e("--paper"),good:e("--good"),band:e("--band")}}class vo{element=I("div",{class:"chart"});plot=null;key="";draw(e,t,n){const s=Dn(),r=Math.max(280,this.element.clientWidth||600),a=JSON.stringify([t.map(c=>[c.name,c.colour]),n,r,s.paper]),o=[e,...t.map(c=>c.values)];if(this.plot&&a===this.key){this.plot.setData(o);return}this.plot?.destroy(),qe(this.element),this.key=a;const l={stroke:s.quiet,grid:{stroke:s.grid,width:1},ticks:{stroke:s.grid,width:1},font:"12px system-ui",labelFont:"12px system-ui"};this.plot=new En({width:r,height:n.height??300,scales:{x:{time:!1,range:n.xRange},y:{range:n.range}},axes:[{...l,label:n.x},{...l,label:n.y,size:58}],cursor:{drag:{x:!0,y:!0}},series:[{label:n.x,value:(c,f)=>f===null?"":f.toFixed(2)},...t.map(c=>({label:c.name,stroke:c.colour,width:c.width??1.6,dash:c.dash,points:{show:c.points??!1,size:5},spanGaps:!1,value:(f,u)=>u===null?"-":u.toFixed(2)}))]},o,this.element)}}function Ld(i,e,t){const n=window.devicePixelRatio||1;i.width=Math.round(e*n),i.height=Math.round(t*n);const s=i.getContext("2d");return s.setTransform(n,0,0,n,0,0),s.clearRect(0,0,e,t),s.font="12px system-ui",s}function Lg(i,e,t,n,s){const r=i.clientWidth||420,a=Math.min(r,460),o=Dn(),l=Ld(i,r,a),c=r/2,f=a/2,u=Math.min(r,a)/2-26;l.strokeStyle=o.grid,l.fillStyle=o.quiet,l.lineWidth=1;for(let h=0;h<s;h+=10)l.beginPath(),l.arc(c,f,u*(1-h/s),0,2*Math.PI),l.stroke(),h&&l.fillText(`${(n-h).toFixed(0)}`,c+4,f-u*(1-h/s)+12);l.textAlign="center",l.textBaseline="middle";for(let h=0;h<360;h+=30){const p=Math.sin(h*Math.PI/180),v=-Math.cos(h*Math.PI/180);l.beginPath(),l.moveTo(c,f),l.lineTo(c+u*p,f+u*v),l.stroke(),l.fillText(`${h>180?h-360:h}°`,c+(u+15)*p,f+(u+13)*v)}l.textAlign="left",l.textBaseline="alphabetic";for(const h of t){l.strokeStyle=h.colour,l.lineWidth=h.width??1.8,l.setLineDash(h.dash??[]),l.beginPath();let p=!1;e.forEach((v,M)=>{const m=h.values[M];if(m===null){p=!1;return}const d=u*Math.max(0,1-(n-m)/s),T=c+d*Math.sin(v*Math.PI/180),A=f-d*Math.cos(v*Math.PI/180);p?l.lineTo(T,A):l.moveTo(T,A),p=!0}),l.stroke()}l.setLineDash([]),t.forEach((h,p)=>{l.fillStyle=h.colour,l.fillText(h.name,6,14+15*p)}),l.fillStyle=o.quiet,l.fillText(`rings: 10 dB, rim ${n.toFixed(1)} dBi`,6,a-6)}class ia{canvas=I("canvas",{class:"map",attrs:{role:"img"}});said=I("div",{class:"small quiet mono"}," ");element=I("div",{},this.canvas,this.said);image=document.createElement("canvas");last=null;constructor(e){this.canvas.setAttribute("aria-label",e),this.canvas.addEventListener("pointermove",t=>this.say(t))}draw(e,t,n,s){const r=s.ramp??rs,a=this.canvas.clientWidth||480,o=48,l=38,c=62,f=22,u=a-o-c,h=s.height??Math.round(s.square?u:Math.min(360,Math.max(140,u*e.length/t.length)));this.canvas.style.height=`${h+f+l}px`;const p=Ld(this.canvas,a,h+f+l),v=Dn();(this.image.width!==t.length||this.image.height!==e.length)&&(this.image.width=t.length,this.image.height=e.length);const M=this.image.getContext("2d"),m=M.createImageData(t.length,e.length);for(let d=0;d<e.length;d++)for(let T=0;T<t.length;T++){const A=su(n[d*t.length+T],s.low,s.high),b=4*((s.flip?e.length-1-d:d)*t.length+T);A<0||(m.data[b]=r[3*A],m.data[b+1]=r[3*A+1],m.data[b+2]=r[3*A+2],m.data[b+3]=255)}M.putImageData(m,0,0),p.imageSmoothingEnabled=!1,p.drawImage(this.image,o,f,u,h),p.strokeStyle=v.quiet,p.strokeRect(o,f,u,h),p.fillStyle=v.quiet,p.textAlign="center";for(const d of Th(t[0],t[t.length-1]))p.fillText(kr(d),o+(d-t[0])/(t[t.length-1]-t[0])*u,f+h+14);p.textAlign="right",p.textBaseline="middle";for(const d of Th(e[0],e[e.length-1])){const T=(d-e[0])/(e[e.length-1]-e[0]);p.fillText(kr(d),o-5,f+(s.flip?1-T:T)*h)}p.textAlign="center",p.textBaseline="alphabetic",p.fillText(s.columnName,o+u/2,f+h+31),p.save(),p.translate(12,f+h/2),p.rotate(-Math.PI/2),p.fillText(s.rowName,0,0),p.restore();for(let d=0;d<256;d++)p.fillStyle=`rgb(${r[3*d]} ${r[3*d+1]} ${r[3*d+2]})`,p.fillRect(o+u+10,f+h*(1-(d+1)/256),12,h/256+1);p.fillStyle=v.quiet,p.textAlign="left";for(const d of[0,.5,1])p.fillText(kr(s.low+d*(s.high-s.low)),o+u+25,f+h*(1-d)+(d===1?10:d===0?0:4));p.fillText(s.unit,o+u+10,f-8),this.last={rows:e,columns:t,values:n,options:s,box:[o,f,u,h]}}say(e){if(!this.last)return;const{rows:t,columns:n,values:s,options:r,box:a}=this.last,o=this.canvas.getBoundingClientRect(),l=(e.clientX-o.left-a[0])/a[2],c=(e.clientY-o.top-a[1])/a[3];if(l<0||l>=1||c<0||c>=1){qe(this.said," ");return}const f=Math.floor(l*n.length),u=Math.floor((r.flip?1-c:c)*t.length),h=s[u*n.length+f];qe(this.said,`${r.rowName} ${kr(t[u])}, ${r.columnName} ${kr(n[f])}: ${h===null||Number.isNaN(h)?"not measured":`${h.toFixed(2)} ${r.unit}`}`)}}function Th(i,e){const t=Math.abs(e-i),n=[.1,.2,.5,1,2,5,10,15,30,45,60,90].find(a=>t/a<=8)??t/4,s=Math.min(i,e),r=[];for(let a=Math.ceil(s/n-1e-9)*n;a<=s+t+1e-9;a+=n)r.push(Math.round(a*1e6)/1e6);return r}function kr(i){return Math.abs(i)>=10||Number.isInteger(i)?i.toFixed(0):i.toFixed(2)}/**
 * @license
 * Copyright 2010-2025 Three.js Authors
 * SPDX-License-Identifier: MIT
 */const ru="180",pr={ROTATE:0,DOLLY:1,PAN:2},hr={ROTATE:0,PAN:1,DOLLY_PAN:2,DOLLY_ROTATE:3},Ug=0,wh=1,Ig=2,Ud=1,Ng=2,Bi=3,cs=0,On=1,zi=2,as=0,mr=1,Ah=2,Rh=3,Ch=4,Fg=5,As=100,Og=101,Bg=102,zg=103,kg=104,Hg=200,Vg=201,Gg=202,Wg=203,Zl=204,Jl=205,Xg=206,qg=207,Yg=208,$g=209,jg=210,Kg=211,Zg=212,Jg=213,Qg=214,Ql=0,ec=1,tc=2,Sr=3,nc=4,ic=5,sc=6,rc=7,au=0,e_=1,t_=2,os=0,n_=1,i_=2,s_=3,r_=4,a_=5,o_=6,l_=7,Id=300,yr=301,Er=302,ac=303,oc=304,Uo=306,lc=1e3,Ps=1001,cc=1002,gi=1003,c_=1004,Pa=1005,Ti=1006,sl=1007,Ds=1008,Ri=1009,Nd=1010,Fd=1011,aa=1012,ou=1013,Is=1014,ki=1015,pa=1016,lu=1017,cu=1018,oa=1020,Od=35902,Bd=35899,zd=1021,kd=1022,mi=1023,la=1026,ca=1027,Hd=1028,uu=1029,Vd=1030,hu=1031,fu=1033,ao=33776,oo=33777,lo=33778,co=33779,uc=35840,hc=35841,fc=35842,dc=35843,pc=36196,mc=37492,gc=37496,_c=37808,vc=37809,xc=37810,Mc=37811,Sc=37812,yc=37813,Ec=37814,bc=37815,Tc=37816,wc=37817,Ac=37818,Rc=37819,Cc=37820,Pc=37821,Dc=36492,Lc=36494,Uc=36495,Ic=36283,Nc=36284,Fc=36285,Oc=36286,u_=3200,h_=3201,Gd=0,f_=1,ss="",ni="srgb",br="srgb-linear",xo="linear",Rt="srgb",Ks=7680,Ph=519,d_=512,p_=513,m_=514,Wd=515,g_=516,__=517,v_=518,x_=519,Dh=35044,Lh="300 es",wi=2e3,Mo=2001;class Bs{addEventListener(e,t){this._listeners===void 0&&(this._listeners={});const n=this._listeners;n[e]===void 0&&(n[e]=[]),n[e].indexOf(t)===-1&&n[e].push(t)}hasEventListener(e,t){const n=this._listeners;return n===void 0?!1:n[e]!==void 0&&n[e].indexOf(t)!==-1}removeEventListener(e,t){const n=this._listeners;if(n===void 0)return;const s=n[e];if(s!==void 0){const r=s.indexOf(t);r!==-1&&s.splice(r,1)}}dispatchEvent(e){const t=this._listeners;if(t===void 0)return;const n=t[e.type];if(n!==void 0){e.target=this;const s=n.slice(0);for(let r=0,a=s.length;r<a;r++)s[r].call(this,e);e.target=null}}}const Mn=["00","01","02","03","04","05","06","07","08","09","0a","0b","0c","0d","0e","0f","10","11","12","13","14","15","16","17","18","19","1a","1b","1c","1d","1e","1f","20","21","22","23","24","25","26","27","28","29","2a","2b","2c","2d","2e","2f","30","31","32","33","34","35","36","37","38","39","3a","3b","3c","3d","3e","3f","40","41","42","43","44","45","46","47","48","49","4a","4b","4c","4d","4e","4f","50","51","52","53","54","55","56","57","58","59","5a","5b","5c","5d","5e","5f","60","61","62","63","64","65","66","67","68","69","6a","6b","6c","6d","6e","6f","70","71","72","73","74","75","76","77","78","79","7a","7b","7c","7d","7e","7f","80","81","82","83","84","85","86","87","88","89","8a","8b","8c","8d","8e","8f","90","91","92","93","94","95","96","97","98","99","9a","9b","9c","9d","9e","9f","a0","a1","a2","a3","a4","a5","a6","a7","a8","a9","aa","ab","ac","ad","ae","af","b0","b1","b2","b3","b4","b5","b6","b7","b8","b9","ba","bb","bc","bd","be","bf","c0","c1","c2","c3","c4","c5","c6","c7","c8","c9","ca","cb","cc","cd","ce","cf","d0","d1","d2","d3","d4","d5","d6","d7","d8","d9","da","db","dc","dd","de","df","e0","e1","e2","e3","e4","e5","e6","e7","e8","e9","ea","eb","ec","ed","ee","ef","f0","f1","f2","f3","f4","f5","f6","f7","f8","f9","fa","fb","fc","fd","fe","ff"],uo=Math.PI/180,Bc=180/Math.PI;function ma(){const i=Math.random()*4294967295|0,e=Math.random()*4294967295|0,t=Math.random()*4294967295|0,n=Math.random()*4294967295|0;return(Mn[i&255]+Mn[i>>8&255]+Mn[i>>16&255]+Mn[i>>24&255]+"-"+Mn[e&255]+Mn[e>>8&255]+"-"+Mn[e>>16&15|64]+Mn[e>>24&255]+"-"+Mn[t&63|128]+Mn[t>>8&255]+"-"+Mn[t>>16&255]+Mn[t>>24&255]+Mn[n&255]+Mn[n>>8&255]+Mn[n>>16&255]+Mn[n>>24&255]).toLowerCase()}function ct(i,e,t){return Math.max(e,Math.min(t,i))}function M_(i,e){return(i%e+e)%e}function rl(i,e,t){return(1-t)*i+t*e}function Hr(i,e){switch(e.constructor){case Float32Array:return i;case Uint32Array:return i/4294967295;case Uint16Array:return i/65535;case Uint8Array:return i/255;case Int32Array:return Math.max(i/2147483647,-1);case Int16Array:return Math.max(i/32767,-1);case Int8Array:return Math.max(i/127,-1);default:throw new Error("Invalid component type.")}}function Nn(i,e){switch(e.constructor){case Float32Array:return i;case Uint32Array:return Math.round(i*4294967295);case Uint16Array:return Math.round(i*65535);case Uint8Array:return Math.round(i*255);case Int32Array:return Math.round(i*2147483647);case Int16Array:return Math.round(i*32767);case Int8Array:return Math.round(i*127);default:throw new Error("Invalid component type.")}}const S_={DEG2RAD:uo};class tt{constructor(e=0,t=0){tt.prototype.isVector2=!0,this.x=e,this.y=t}get width(){return this.x}set width(e){this.x=e}get height(){return this.y}set height(e){this.y=e}set(e,t){return this.x=e,this.y=t,this}setScalar(e){return this.x=e,this.y=e,this}setX(e){return this.x=e,this}setY(e){return this.y=e,this}setComponent(e,t){switch(e){case 0:this.x=t;break;case 1:this.y=t;break;default:throw new Error("index is out of range: "+e)}return this}getComponent(e){switch(e){case 0:return this.x;case 1:return this.y;default:throw new Error("index is out of range: "+e)}}clone(){return new this.constructor(this.x,this.y)}copy(e){return this.x=e.x,this.y=e.y,this}add(e){return this.x+=e.x,this.y+=e.y,this}addScalar(e){return this.x+=e,this.y+=e,this}addVectors(e,t){return this.x=e.x+t.x,this.y=e.y+t.y,this}addScaledVector(e,t){return this.x+=e.x*t,this.y+=e.y*t,this}sub(e){return this.x-=e.x,this.y-=e.y,this}subScalar(e){return this.x-=e,this.y-=e,this}subVectors(e,t){return this.x=e.x-t.x,this.y=e.y-t.y,this}multiply(e){return this.x*=e.x,this.y*=e.y,this}multiplyScalar(e){return this.x*=e,this.y*=e,this}divide(e){return this.x/=e.x,this.y/=e.y,this}divideScalar(e){return this.multiplyScalar(1/e)}applyMatrix3(e){const t=this.x,n=this.y,s=e.elements;return this.x=s[0]*t+s[3]*n+s[6],this.y=s[1]*t+s[4]*n+s[7],this}min(e){return this.x=Math.min(this.x,e.x),this.y=Math.min(this.y,e.y),this}max(e){return this.x=Math.max(this.x,e.x),this.y=Math.max(this.y,e.y),this}clamp(e,t){return this.x=ct(this.x,e.x,t.x),this.y=ct(this.y,e.y,t.y),this}clampScalar(e,t){return this.x=ct(this.x,e,t),this.y=ct(this.y,e,t),this}clampLength(e,t){const n=this.length();return this.divideScalar(n||1).multiplyScalar(ct(n,e,t))}floor(){return this.x=Math.floor(this.x),this.y=Math.floor(this.y),this}ceil(){return this.x=Math.ceil(this.x),this.y=Math.ceil(this.y),this}round(){return this.x=Math.round(this.x),this.y=Math.round(this.y),this}roundToZero(){return this.x=Math.trunc(this.x),this.y=Math.trunc(this.y),this}negate(){return this.x=-this.x,this.y=-this.y,this}dot(e){return this.x*e.x+this.y*e.y}cross(e){return this.x*e.y-this.y*e.x}lengthSq(){return this.x*this.x+this.y*this.y}length(){return Math.sqrt(this.x*this.x+this.y*this.y)}manhattanLength(){return Math.abs(this.x)+Math.abs(this.y)}normalize(){return this.divideScalar(this.length()||1)}angle(){return Math.atan2(-this.y,-this.x)+Math.PI}angleTo(e){const t=Math.sqrt(this.lengthSq()*e.lengthSq());if(t===0)return Math.PI/2;const n=this.dot(e)/t;return Math.acos(ct(n,-1,1))}distanceTo(e){return Math.sqrt(this.distanceToSquared(e))}distanceToSquared(e){const t=this.x-e.x,n=this.y-e.y;return t*t+n*n}manhattanDistanceTo(e){return Math.abs(this.x-e.x)+Math.abs(this.y-e.y)}setLength(e){return this.normalize().multiplyScalar(e)}lerp(e,t){return this.x+=(e.x-this.x)*t,this.y+=(e.y-this.y)*t,this}lerpVectors(e,t,n){return this.x=e.x+(t.x-e.x)*n,this.y=e.y+(t.y-e.y)*n,this}equals(e){return e.x===this.x&&e.y===this.y}fromArray(e,t=0){return this.x=e[t],this.y=e[t+1],this}toArray(e=[],t=0){return e[t]=this.x,e[t+1]=this.y,e}fromBufferAttribute(e,t){return this.x=e.getX(t),this.y=e.getY(t),this}rotateAround(e,t){const n=Math.cos(t),s=Math.sin(t),r=this.x-e.x,a=this.y-e.y;return this.x=r*n-a*s+e.x,this.y=r*s+a*n+e.y,this}random(){return this.x=Math.random(),this.y=Math.random(),this}*[Symbol.iterator](){yield this.x,yield this.y}}class Ns{constructor(e=0,t=0,n=0,s=1){this.isQuaternion=!0,this._x=e,this._y=t,this._z=n,this._w=s}static slerpFlat(e,t,n,s,r,a,o){let l=n[s+0],c=n[s+1],f=n[s+2],u=n[s+3];const h=r[a+0],p=r[a+1],v=r[a+2],M=r[a+3];if(o===0){e[t+0]=l,e[t+1]=c,e[t+2]=f,e[t+3]=u;return}if(o===1){e[t+0]=h,e[t+1]=p,e[t+2]=v,e[t+3]=M;return}if(u!==M||l!==h||c!==p||f!==v){let m=1-o;const d=l*h+c*p+f*v+u*M,T=d>=0?1:-1,A=1-d*d;if(A>Number.EPSILON){const N=Math.sqrt(A),R=Math.atan2(N,d*T);m=Math.sin(m*R)/N,o=Math.sin(o*R)/N}const b=o*T;if(l=l*m+h*b,c=c*m+p*b,f=f*m+v*b,u=u*m+M*b,m===1-o){const N=1/Math.sqrt(l*l+c*c+f*f+u*u);l*=N,c*=N,f*=N,u*=N}}e[t]=l,e[t+1]=c,e[t+2]=f,e[t+3]=u}static multiplyQuaternionsFlat(e,t,n,s,r,a){const o=n[s],l=n[s+1],c=n[s+2],f=n[s+3],u=r[a],h=r[a+1],p=r[a+2],v=r[a+3];return e[t]=o*v+f*u+l*p-c*h,e[t+1]=l*v+f*h+c*u-o*p,e[t+2]=c*v+f*p+o*h-l*u,e[t+3]=f*v-o*u-l*h-c*p,e}get x(){return this._x}set x(e){this._x=e,this._onChangeCallback()}get y(){return this._y}set y(e){this._y=e,this._onChangeCallback()}get z(){return this._z}set z(e){this._z=e,this._onChangeCallback()}get w(){return this._w}set w(e){this._w=e,this._onChangeCallback()}set(e,t,n,s){return this._x=e,this._y=t,this._z=n,this._w=s,this._onChangeCallback(),this}clone(){return new this.constructor(this._x,this._y,this._z,this._w)}copy(e){return this._x=e.x,this._y=e.y,this._z=e.z,this._w=e.w,this._onChangeCallback(),this}setFromEuler(e,t=!0){const n=e._x,s=e._y,r=e._z,a=e._order,o=Math.cos,l=Math.sin,c=o(n/2),f=o(s/2),u=o(r/2),h=l(n/2),p=l(s/2),v=l(r/2);switch(a){case"XYZ":this._x=h*f*u+c*p*v,this._y=c*p*u-h*f*v,this._z=c*f*v+h*p*u,this._w=c*f*u-h*p*v;break;case"YXZ":this._x=h*f*u+c*p*v,this._y=c*p*u-h*f*v,this._z=c*f*v-h*p*u,this._w=c*f*u+h*p*v;break;case"ZXY":this._x=h*f*u-c*p*v,this._y=c*p*u+h*f*v,this._z=c*f*v+h*p*u,this._w=c*f*u-h*p*v;break;case"ZYX":this._x=h*f*u-c*p*v,this._y=c*p*u+h*f*v,this._z=c*f*v-h*p*u,this._w=c*f*u+h*p*v;break;case"YZX":this._x=h*f*u+c*p*v,this._y=c*p*u+h*f*v,this._z=c*f*v-h*p*u,this._w=c*f*u-h*p*v;break;case"XZY":this._x=h*f*u-c*p*v,this._y=c*p*u-h*f*v,this._z=c*f*v+h*p*u,this._w=c*f*u+h*p*v;break;default:console.warn("THREE.Quaternion: .setFromEuler() encountered an unknown order: "+a)}return t===!0&&this._onChangeCallback(),this}setFromAxisAngle(e,t){const n=t/2,s=Math.sin(n);return this._x=e.x*s,this._y=e.y*s,this._z=e.z*s,this._w=Math.cos(n),this._onChangeCallback(),this}setFromRotationMatrix(e){const t=e.elements,n=t[0],s=t[4],r=t[8],a=t[1],o=t[5],l=t[9],c=t[2],f=t[6],u=t[10],h=n+o+u;if(h>0){const p=.5/Math.sqrt(h+1);this._w=.25/p,this._x=(f-l)*p,this._y=(r-c)*p,this._z=(a-s)*p}else if(n>o&&n>u){const p=2*Math.sqrt(1+n-o-u);this._w=(f-l)/p,this._x=.25*p,this._y=(s+a)/p,this._z=(r+c)/p}else if(o>u){const p=2*Math.sqrt(1+o-n-u);this._w=(r-c)/p,this._x=(s+a)/p,this._y=.25*p,this._z=(l+f)/p}else{const p=2*Math.sqrt(1+u-n-o);this._w=(a-s)/p,this._x=(r+c)/p,this._y=(l+f)/p,this._z=.25*p}return this._onChangeCallback(),this}setFromUnitVectors(e,t){let n=e.dot(t)+1;return n<1e-8?(n=0,Math.abs(e.x)>Math.abs(e.z)?(this._x=-e.y,this._y=e.x,this._z=0,this._w=n):(this._x=0,this._y=-e.z,this._z=e.y,this._w=n)):(this._x=e.y*t.z-e.z*t.y,this._y=e.z*t.x-e.x*t.z,this._z=e.x*t.y-e.y*t.x,this._w=n),this.normalize()}angleTo(e){return 2*Math.acos(Math.abs(ct(this.dot(e),-1,1)))}rotateTowards(e,t){const n=this.angleTo(e);if(n===0)return this;const s=Math.min(1,t/n);return this.slerp(e,s),this}identity(){return this.set(0,0,0,1)}invert(){return this.conjugate()}conjugate(){return this._x*=-1,this._y*=-1,this._z*=-1,this._onChangeCallback(),this}dot(e){return this._x*e._x+this._y*e._y+this._z*e._z+this._w*e._w}lengthSq(){return this._x*this._x+this._y*this._y+this._z*this._z+this._w*this._w}length(){return Math.sqrt(this._x*this._x+this._y*this._y+this._z*this._z+this._w*this._w)}normalize(){let e=this.length();return e===0?(this._x=0,this._y=0,this._z=0,this._w=1):(e=1/e,this._x=this._x*e,this._y=this._y*e,this._z=this._z*e,this._w=this._w*e),this._onChangeCallback(),this}multiply(e){return this.multiplyQuaternions(this,e)}premultiply(e){return this.multiplyQuaternions(e,this)}multiplyQuaternions(e,t){const n=e._x,s=e._y,r=e._z,a=e._w,o=t._x,l=t._y,c=t._z,f=t._w;return this._x=n*f+a*o+s*c-r*l,this._y=s*f+a*l+r*o-n*c,this._z=r*f+a*c+n*l-s*o,this._w=a*f-n*o-s*l-r*c,this._onChangeCallback(),this}slerp(e,t){if(t===0)return this;if(t===1)return this.copy(e);const n=this._x,s=this._y,r=this._z,a=this._w;let o=a*e._w+n*e._x+s*e._y+r*e._z;if(o<0?(this._w=-e._w,this._x=-e._x,this._y=-e._y,this._z=-e._z,o=-o):this.copy(e),o>=1)return this._w=a,this._x=n,this._y=s,this._z=r,this;const l=1-o*o;if(l<=Number.EPSILON){const p=1-t;return this._w=p*a+t*this._w,this._x=p*n+t*this._x,this._y=p*s+t*this._y,this._z=p*r+t*this._z,this.normalize(),this}const c=Math.sqrt(l),f=Math.atan2(c,o),u=Math.sin((1-t)*f)/c,h=Math.sin(t*f)/c;return this._w=a*u+this._w*h,this._x=n*u+this._x*h,this._y=s*u+this._y*h,this._z=r*u+this._z*h,this._onChangeCallback(),this}slerpQuaternions(e,t,n){return this.copy(e).slerp(t,n)}random(){const e=2*Math.PI*Math.random(),t=2*Math.PI*Math.random(),n=Math.random(),s=Math.sqrt(1-n),r=Math.sqrt(n);return this.set(s*Math.sin(e),s*Math.cos(e),r*Math.sin(t),r*Math.cos(t))}equals(e){return e._x===this._x&&e._y===this._y&&e._z===this._z&&e._w===this._w}fromArray(e,t=0){return this._x=e[t],this._y=e[t+1],this._z=e[t+2],this._w=e[t+3],this._onChangeCallback(),this}toArray(e=[],t=0){return e[t]=this._x,e[t+1]=this._y,e[t+2]=this._z,e[t+3]=this._w,e}fromBufferAttribute(e,t){return this._x=e.getX(t),this._y=e.getY(t),this._z=e.getZ(t),this._w=e.getW(t),this._onChangeCallback(),this}toJSON(){return this.toArray()}_onChange(e){return this._onChangeCallback=e,this}_onChangeCallback(){}*[Symbol.iterator](){yield this._x,yield this._y,yield this._z,yield this._w}}class z{constructor(e=0,t=0,n=0){z.prototype.isVector3=!0,this.x=e,this.y=t,this.z=n}set(e,t,n){return n===void 0&&(n=this.z),this.x=e,this.y=t,this.z=n,this}setScalar(e){return this.x=e,this.y=e,this.z=e,this}setX(e){return this.x=e,this}setY(e){return this.y=e,this}setZ(e){return this.z=e,this}setComponent(e,t){switch(e){case 0:this.x=t;break;case 1:this.y=t;break;case 2:this.z=t;break;default:throw new Error("index is out of range: "+e)}return this}getComponent(e){switch(e){case 0:return this.x;case 1:return this.y;case 2:return this.z;default:throw new Error("index is out of range: "+e)}}clone(){return new this.constructor(this.x,this.y,this.z)}copy(e){return this.x=e.x,this.y=e.y,this.z=e.z,this}add(e){return this.x+=e.x,this.y+=e.y,this.z+=e.z,this}addScalar(e){return this.x+=e,this.y+=e,this.z+=e,this}addVectors(e,t){return this.x=e.x+t.x,this.y=e.y+t.y,this.z=e.z+t.z,this}addScaledVector(e,t){return this.x+=e.x*t,this.y+=e.y*t,this.z+=e.z*t,this}sub(e){return this.x-=e.x,this.y-=e.y,this.z-=e.z,this}subScalar(e){return this.x-=e,this.y-=e,this.z-=e,this}subVectors(e,t){return this.x=e.x-t.x,this.y=e.y-t.y,this.z=e.z-t.z,this}multiply(e){return this.x*=e.x,this.y*=e.y,this.z*=e.z,this}multiplyScalar(e){return this.x*=e,this.y*=e,this.z*=e,this}multiplyVectors(e,t){return this.x=e.x*t.x,this.y=e.y*t.y,this.z=e.z*t.z,this}applyEuler(e){return this.applyQuaternion(Uh.setFromEuler(e))}applyAxisAngle(e,t){return this.applyQuaternion(Uh.setFromAxisAngle(e,t))}applyMatrix3(e){const t=this.x,n=this.y,s=this.z,r=e.elements;return this.x=r[0]*t+r[3]*n+r[6]*s,this.y=r[1]*t+r[4]*n+r[7]*s,this.z=r[2]*t+r[5]*n+r[8]*s,this}applyNormalMatrix(e){return this.applyMatrix3(e).normalize()}applyMatrix4(e){const t=this.x,n=this.y,s=this.z,r=e.elements,a=1/(r[3]*t+r[7]*n+r[11]*s+r[15]);return this.x=(r[0]*t+r[4]*n+r[8]*s+r[12])*a,this.y=(r[1]*t+r[5]*n+r[9]*s+r[13])*a,this.z=(r[2]*t+r[6]*n+r[10]*s+r[14])*a,this}applyQuaternion(e){const t=this.x,n=this.y,s=this.z,r=e.x,a=e.y,o=e.z,l=e.w,c=2*(a*s-o*n),f=2*(o*t-r*s),u=2*(r*n-a*t);return this.x=t+l*c+a*u-o*f,this.y=n+l*f+o*c-r*u,this.z=s+l*u+r*f-a*c,this}project(e){return this.applyMatrix4(e.matrixWorldInverse).applyMatrix4(e.projectionMatrix)}unproject(e){return this.applyMatrix4(e.projectionMatrixInverse).applyMatrix4(e.matrixWorld)}transformDirection(e){const t=this.x,n=this.y,s=this.z,r=e.elements;return this.x=r[0]*t+r[4]*n+r[8]*s,this.y=r[1]*t+r[5]*n+r[9]*s,this.z=r[2]*t+r[6]*n+r[10]*s,this.normalize()}divide(e){return this.x/=e.x,this.y/=e.y,this.z/=e.z,this}divideScalar(e){return this.multiplyScalar(1/e)}min(e){return this.x=Math.min(this.x,e.x),this.y=Math.min(this.y,e.y),this.z=Math.min(this.z,e.z),this}max(e){return this.x=Math.max(this.x,e.x),this.y=Math.max(this.y,e.y),this.z=Math.max(this.z,e.z),this}clamp(e,t){return this.x=ct(this.x,e.x,t.x),this.y=ct(this.y,e.y,t.y),this.z=ct(this.z,e.z,t.z),this}clampScalar(e,t){return this.x=ct(this.x,e,t),this.y=ct(this.y,e,t),this.z=ct(this.z,e,t),this}clampLength(e,t){const n=this.length();return this.divideScalar(n||1).multiplyScalar(ct(n,e,t))}floor(){return this.x=Math.floor(this.x),this.y=Math.floor(this.y),this.z=Math.floor(this.z),this}ceil(){return this.x=Math.ceil(this.x),this.y=Math.ceil(this.y),this.z=Math.ceil(this.z),this}round(){return this.x=Math.round(this.x),this.y=Math.round(this.y),this.z=Math.round(this.z),this}roundToZero(){return this.x=Math.trunc(this.x),this.y=Math.trunc(this.y),this.z=Math.trunc(this.z),this}negate(){return this.x=-this.x,this.y=-this.y,this.z=-this.z,this}dot(e){return this.x*e.x+this.y*e.y+this.z*e.z}lengthSq(){return this.x*this.x+this.y*this.y+this.z*this.z}length(){return Math.sqrt(this.x*this.x+this.y*this.y+this.z*this.z)}manhattanLength(){return Math.abs(this.x)+Math.abs(this.y)+Math.abs(this.z)}normalize(){return this.divideScalar(this.length()||1)}setLength(e){return this.normalize().multiplyScalar(e)}lerp(e,t){return this.x+=(e.x-this.x)*t,this.y+=(e.y-this.y)*t,this.z+=(e.z-this.z)*t,this}lerpVectors(e,t,n){return this.x=e.x+(t.x-e.x)*n,this.y=e.y+(t.y-e.y)*n,this.z=e.z+(t.z-e.z)*n,this}cross(e){return this.crossVectors(this,e)}crossVectors(e,t){const n=e.x,s=e.y,r=e.z,a=t.x,o=t.y,l=t.z;return this.x=s*l-r*o,this.y=r*a-n*l,this.z=n*o-s*a,this}projectOnVector(e){const t=e.lengthSq();if(t===0)return this.set(0,0,0);const n=e.dot(this)/t;return this.copy(e).multiplyScalar(n)}projectOnPlane(e){return al.copy(this).projectOnVector(e),this.sub(al)}reflect(e){return this.sub(al.copy(e).multiplyScalar(2*this.dot(e)))}angleTo(e){const t=Math.sqrt(this.lengthSq()*e.lengthSq());if(t===0)return Math.PI/2;const n=this.dot(e)/t;return Math.acos(ct(n,-1,1))}distanceTo(e){return Math.sqrt(this.distanceToSquared(e))}distanceToSquared(e){const t=this.x-e.x,n=this.y-e.y,s=this.z-e.z;return t*t+n*n+s*s}manhattanDistanceTo(e){return Math.abs(this.x-e.x)+Math.abs(this.y-e.y)+Math.abs(this.z-e.z)}setFromSpherical(e){return this.setFromSphericalCoords(e.radius,e.phi,e.theta)}setFromSphericalCoords(e,t,n){const s=Math.sin(t)*e;return this.x=s*Math.sin(n),this.y=Math.cos(t)*e,this.z=s*Math.cos(n),this}setFromCylindrical(e){return this.setFromCylindricalCoords(e.radius,e.theta,e.y)}setFromCylindricalCoords(e,t,n){return this.x=e*Math.sin(t),this.y=n,this.z=e*Math.cos(t),this}setFromMatrixPosition(e){const t=e.elements;return this.x=t[12],this.y=t[13],this.z=t[14],this}setFromMatrixScale(e){const t=this.setFromMatrixColumn(e,0).length(),n=this.setFromMatrixColumn(e,1).length(),s=this.setFromMatrixColumn(e,2).length();return this.x=t,this.y=n,this.z=s,this}setFromMatrixColumn(e,t){return this.fromArray(e.elements,t*4)}setFromMatrix3Column(e,t){return this.fromArray(e.elements,t*3)}setFromEuler(e){return this.x=e._x,this.y=e._y,this.z=e._z,this}setFromColor(e){return this.x=e.r,this.y=e.g,this.z=e.b,this}equals(e){return e.x===this.x&&e.y===this.y&&e.z===this.z}fromArray(e,t=0){return this.x=e[t],this.y=e[t+1],this.z=e[t+2],this}toArray(e=[],t=0){return e[t]=this.x,e[t+1]=this.y,e[t+2]=this.z,e}fromBufferAttribute(e,t){return this.x=e.getX(t),this.y=e.getY(t),this.z=e.getZ(t),this}random(){return this.x=Math.random(),this.y=Math.random(),this.z=Math.random(),this}randomDirection(){const e=Math.random()*Math.PI*2,t=Math.random()*2-1,n=Math.sqrt(1-t*t);return this.x=n*Math.cos(e),this.y=t,this.z=n*Math.sin(e),this}*[Symbol.iterator](){yield this.x,yield this.y,yield this.z}}const al=new z,Uh=new Ns;class st{constructor(e,t,n,s,r,a,o,l,c){st.prototype.isMatrix3=!0,this.elements=[1,0,0,0,1,0,0,0,1],e!==void 0&&this.set(e,t,n,s,r,a,o,l,c)}set(e,t,n,s,r,a,o,l,c){const f=this.elements;return f[0]=e,f[1]=s,f[2]=o,f[3]=t,f[4]=r,f[5]=l,f[6]=n,f[7]=a,f[8]=c,this}identity(){return this.set(1,0,0,0,1,0,0,0,1),this}copy(e){const t=this.elements,n=e.elements;return t[0]=n[0],t[1]=n[1],t[2]=n[2],t[3]=n[3],t[4]=n[4],t[5]=n[5],t[6]=n[6],t[7]=n[7],t[8]=n[8],this}extractBasis(e,t,n){return e.setFromMatrix3Column(this,0),t.setFromMatrix3Column(this,1),n.setFromMatrix3Column(this,2),this}setFromMatrix4(e){const t=e.elements;return this.set(t[0],t[4],t[8],t[1],t[5],t[9],t[2],t[6],t[10]),this}multiply(e){return this.multiplyMatrices(this,e)}premultiply(e){return this.multiplyMatrices(e,this)}multiplyMatrices(e,t){const n=e.elements,s=t.elements,r=this.elements,a=n[0],o=n[3],l=n[6],c=n[1],f=n[4],u=n[7],h=n[2],p=n[5],v=n[8],M=s[0],m=s[3],d=s[6],T=s[1],A=s[4],b=s[7],N=s[2],R=s[5],D=s[8];return r[0]=a*M+o*T+l*N,r[3]=a*m+o*A+l*R,r[6]=a*d+o*b+l*D,r[1]=c*M+f*T+u*N,r[4]=c*m+f*A+u*R,r[7]=c*d+f*b+u*D,r[2]=h*M+p*T+v*N,r[5]=h*m+p*A+v*R,r[8]=h*d+p*b+v*D,this}multiplyScalar(e){const t=this.elements;return t[0]*=e,t[3]*=e,t[6]*=e,t[1]*=e,t[4]*=e,t[7]*=e,t[2]*=e,t[5]*=e,t[8]*=e,this}determinant(){const e=this.elements,t=e[0],n=e[1],s=e[2],r=e[3],a=e[4],o=e[5],l=e[6],c=e[7],f=e[8];return t*a*f-t*o*c-n*r*f+n*o*l+s*r*c-s*a*l}invert(){const e=this.elements,t=e[0],n=e[1],s=e[2],r=e[3],a=e[4],o=e[5],l=e[6],c=e[7],f=e[8],u=f*a-o*c,h=o*l-f*r,p=c*r-a*l,v=t*u+n*h+s*p;if(v===0)return this.set(0,0,0,0,0,0,0,0,0);const M=1/v;return e[0]=u*M,e[1]=(s*c-f*n)*M,e[2]=(o*n-s*a)*M,e[3]=h*M,e[4]=(f*t-s*l)*M,e[5]=(s*r-o*t)*M,e[6]=p*M,e[7]=(n*l-c*t)*M,e[8]=(a*t-n*r)*M,this}transpose(){let e;const t=this.elements;return e=t[1],t[1]=t[3],t[3]=e,e=t[2],t[2]=t[6],t[6]=e,e=t[5],t[5]=t[7],t[7]=e,this}getNormalMatrix(e){return this.setFromMatrix4(e).invert().transpose()}transposeIntoArray(e){const t=this.elements;return e[0]=t[0],e[1]=t[3],e[2]=t[6],e[3]=t[1],e[4]=t[4],e[5]=t[7],e[6]=t[2],e[7]=t[5],e[8]=t[8],this}setUvTransform(e,t,n,s,r,a,o){const l=Math.cos(r),c=Math.sin(r);return this.set(n*l,n*c,-n*(l*a+c*o)+a+e,-s*c,s*l,-s*(-c*a+l*o)+o+t,0,0,1),this}scale(e,t){return this.premultiply(ol.makeScale(e,t)),this}rotate(e){return this.premultiply(ol.makeRotation(-e)),this}translate(e,t){return this.premultiply(ol.makeTranslation(e,t)),this}makeTranslation(e,t){return e.isVector2?this.set(1,0,e.x,0,1,e.y,0,0,1):this.set(1,0,e,0,1,t,0,0,1),this}makeRotation(e){const t=Math.cos(e),n=Math.sin(e);return this.set(t,-n,0,n,t,0,0,0,1),this}makeScale(e,t){return this.set(e,0,0,0,t,0,0,0,1),this}equals(e){const t=this.elements,n=e.elements;for(let s=0;s<9;s++)if(t[s]!==n[s])return!1;return!0}fromArray(e,t=0){for(let n=0;n<9;n++)this.elements[n]=e[n+t];return this}toArray(e=[],t=0){const n=this.elements;return e[t]=n[0],e[t+1]=n[1],e[t+2]=n[2],e[t+3]=n[3],e[t+4]=n[4],e[t+5]=n[5],e[t+6]=n[6],e[t+7]=n[7],e[t+8]=n[8],e}clone(){return new this.constructor().fromArray(this.elements)}}const ol=new st;function Xd(i){for(let e=i.length-1;e>=0;--e)if(i[e]>=65535)return!0;return!1}function So(i){return document.createElementNS("http://www.w3.org/1999/xhtml",i)}function y_(){const i=So("canvas");return i.style.display="block",i}const Ih={};function ua(i){i in Ih||(Ih[i]=!0,console.warn(i))}function E_(i,e,t){return new Promise(function(n,s){function r(){switch(i.clientWaitSync(e,i.SYNC_FLUSH_COMMANDS_BIT,0)){case i.WAIT_FAILED:s();break;case i.TIMEOUT_EXPIRED:setTimeout(r,t);break;default:n()}}setTimeout(r,t)})}const Nh=new st().set(.4123908,.3575843,.1804808,.212639,.7151687,.0721923,.0193308,.1191948,.9505322),Fh=new st().set(3.2409699,-1.5373832,-.4986108,-.9692436,1.8759675,.0415551,.0556301,-.203977,1.0569715);function b_(){const i={enabled:!0,workingColorSpace:br,spaces:{},convert:function(s,r,a){return this.enabled===!1||r===a||!r||!a||(this.spaces[r].transfer===Rt&&(s.r=Gi(s.r),s.g=Gi(s.g),s.b=Gi(s.b)),this.spaces[r].primaries!==this.spaces[a].primaries&&(s.applyMatrix3(this.spaces[r].toXYZ),s.applyMatrix3(this.spaces[a].fromXYZ)),this.spaces[a].transfer===Rt&&(s.r=gr(s.r),s.g=gr(s.g),s.b=gr(s.b))),s},workingToColorSpace:function(s,r){return this.convert(s,this.workingColorSpace,r)},colorSpaceToWorking:function(s,r){return this.convert(s,r,this.workingColorSpace)},getPrimaries:function(s){return this.spaces[s].primaries},getTransfer:function(s){return s===ss?xo:this.spaces[s].transfer},getToneMappingMode:function(s){return this.spaces[s].outputColorSpaceConfig.toneMappingMode||"standard"},getLuminanceCoefficients:function(s,r=this.workingColorSpace){return s.fromArray(this.spaces[r].luminanceCoefficients)},define:function(s){Object.assign(this.spaces,s)},_getMatrix:function(s,r,a){return s.copy(this.spaces[r].toXYZ).multiply(this.spaces[a].fromXYZ)},_getDrawingBufferColorSpace:function(s){return this.spaces[s].outputColorSpaceConfig.drawingBufferColorSpace},_getUnpackColorSpace:function(s=this.workingColorSpace){return this.spaces[s].workingColorSpaceConfig.unpackColorSpace},fromWorkingColorSpace:function(s,r){return ua("THREE.ColorManagement: .fromWorkingColorSpace() has been renamed to .workingToColorSpace()."),i.workingToColorSpace(s,r)},toWorkingColorSpace:function(s,r){return ua("THREE.ColorManagement: .toWorkingColorSpace() has been renamed to .colorSpaceToWorking()."),i.colorSpaceToWorking(s,r)}},e=[.64,.33,.3,.6,.15,.06],t=[.2126,.7152,.0722],n=[.3127,.329];return i.define({[br]:{primaries:e,whitePoint:n,transfer:xo,toXYZ:Nh,fromXYZ:Fh,luminanceCoefficients:t,workingColorSpaceConfig:{unpackColorSpace:ni},outputColorSpaceConfig:{drawingBufferColorSpace:ni}},[ni]:{primaries:e,whitePoint:n,transfer:Rt,toXYZ:Nh,fromXYZ:Fh,luminanceCoefficients:t,outputColorSpaceConfig:{drawingBufferColorSpace:ni}}}),i}const _t=b_();function Gi(i){return i<.04045?i*.0773993808:Math.pow(i*.9478672986+.0521327014,2.4)}function gr(i){return i<.0031308?i*12.92:1.055*Math.pow(i,.41666)-.055}let Zs;class T_{static getDataURL(e,t="image/png"){if(/^data:/i.test(e.src)||typeof HTMLCanvasElement>"u")return e.src;let n;if(e instanceof HTMLCanvasElement)n=e;else{Zs===void 0&&(Zs=So("canvas")),Zs.width=e.width,Zs.height=e.height;const s=Zs.getContext("2d");e instanceof ImageData?s.putImageData(e,0,0):s.drawImage(e,0,0,e.width,e.height),n=Zs}return n.toDataURL(t)}static sRGBToLinear(e){if(typeof HTMLImageElement<"u"&&e instanceof HTMLImageElement||typeof HTMLCanvasElement<"u"&&e instanceof HTMLCanvasElement||typeof ImageBitmap<"u"&&e instanceof ImageBitmap){const t=So("canvas");t.width=e.width,t.height=e.height;const n=t.getContext("2d");n.drawImage(e,0,0,e.width,e.height);const s=n.getImageData(0,0,e.width,e.height),r=s.data;for(let a=0;a<r.length;a++)r[a]=Gi(r[a]/255)*255;return n.putImageData(s,0,0),t}else if(e.data){const t=e.data.slice(0);for(let n=0;n<t.length;n++)t instanceof Uint8Array||t instanceof Uint8ClampedArray?t[n]=Math.floor(Gi(t[n]/255)*255):t[n]=Gi(t[n]);return{data:t,width:e.width,height:e.height}}else return console.warn("THREE.ImageUtils.sRGBToLinear(): Unsupported image type. No color space conversion applied."),e}}let w_=0;class du{constructor(e=null){this.isSource=!0,Object.defineProperty(this,"id",{value:w_++}),this.uuid=ma(),this.data=e,this.dataReady=!0,this.version=0}getSize(e){const t=this.data;return typeof HTMLVideoElement<"u"&&t instanceof HTMLVideoElement?e.set(t.videoWidth,t.videoHeight,0):t instanceof VideoFrame?e.set(t.displayHeight,t.displayWidth,0):t!==null?e.set(t.width,t.height,t.depth||0):e.set(0,0,0),e}set needsUpdate(e){e===!0&&this.version++}toJSON(e){const t=e===void 0||typeof e=="string";if(!t&&e.images[this.uuid]!==void 0)return e.images[this.uuid];const n={uuid:this.uuid,url:""},s=this.data;if(s!==null){let r;if(Array.isArray(s)){r=[];for(let a=0,o=s.length;a<o;a++)s[a].isDataTexture?r.push(ll(s[a].image)):r.push(ll(s[a]))}else r=ll(s);n.url=r}return t||(e.images[this.uuid]=n),n}}function ll(i){return typeof HTMLImageElement<"u"&&i instanceof HTMLImageElement||typeof HTMLCanvasElement<"u"&&i instanceof HTMLCanvasElement||typeof ImageBitmap<"u"&&i instanceof ImageBitmap?T_.getDataURL(i):i.data?{data:Array.from(i.data),width:i.width,height:i.height,type:i.data.constructor.name}:(console.warn("THREE.Texture: Unable to serialize Texture."),{})}let A_=0;const cl=new z;class Bn extends Bs{constructor(e=Bn.DEFAULT_IMAGE,t=Bn.DEFAULT_MAPPING,n=Ps,s=Ps,r=Ti,a=Ds,o=mi,l=Ri,c=Bn.DEFAULT_ANISOTROPY,f=ss){super(),this.isTexture=!0,Object.defineProperty(this,"id",{value:A_++}),this.uuid=ma(),this.name="",this.source=new du(e),this.mipmaps=[],this.mapping=t,this.channel=0,this.wrapS=n,this.wrapT=s,this.magFilter=r,this.minFilter=a,this.anisotropy=c,this.format=o,this.internalFormat=null,this.type=l,this.offset=new tt(0,0),this.repeat=new tt(1,1),this.center=new tt(0,0),this.rotation=0,this.matrixAutoUpdate=!0,this.matrix=new st,this.generateMipmaps=!0,this.premultiplyAlpha=!1,this.flipY=!0,this.unpackAlignment=4,this.colorSpace=f,this.userData={},this.updateRanges=[],this.version=0,this.onUpdate=null,this.renderTarget=null,this.isRenderTargetTexture=!1,this.isArrayTexture=!!(e&&e.depth&&e.depth>1),this.pmremVersion=0}get width(){return this.source.getSize(cl).x}get height(){return this.source.getSize(cl).y}get depth(){return this.source.getSize(cl).z}get image(){return this.source.data}set image(e=null){this.source.data=e}updateMatrix(){this.matrix.setUvTransform(this.offset.x,this.offset.y,this.repeat.x,this.repeat.y,this.rotation,this.center.x,this.center.y)}addUpdateRange(e,t){this.updateRanges.push({start:e,count:t})}clearUpdateRanges(){this.updateRanges.length=0}clone(){return new this.constructor().copy(this)}copy(e){return this.name=e.name,this.source=e.source,this.mipmaps=e.mipmaps.slice(0),this.mapping=e.mapping,this.channel=e.channel,this.wrapS=e.wrapS,this.wrapT=e.wrapT,this.magFilter=e.magFilter,this.minFilter=e.minFilter,this.anisotropy=e.anisotropy,this.format=e.format,this.internalFormat=e.internalFormat,this.type=e.type,this.offset.copy(e.offset),this.repeat.copy(e.repeat),this.center.copy(e.center),this.rotation=e.rotation,this.matrixAutoUpdate=e.matrixAutoUpdate,this.matrix.copy(e.matrix),this.generateMipmaps=e.generateMipmaps,this.premultiplyAlpha=e.premultiplyAlpha,this.flipY=e.flipY,this.unpackAlignment=e.unpackAlignment,this.colorSpace=e.colorSpace,this.renderTarget=e.renderTarget,this.isRenderTargetTexture=e.isRenderTargetTexture,this.isArrayTexture=e.isArrayTexture,this.userData=JSON.parse(JSON.stringify(e.userData)),this.needsUpdate=!0,this}setValues(e){for(const t in e){const n=e[t];if(n===void 0){console.warn(`THREE.Texture.setValues(): parameter '${t}' has value of undefined.`);continue}const s=this[t];if(s===void 0){console.warn(`THREE.Texture.setValues(): property '${t}' does not exist.`);continue}s&&n&&s.isVector2&&n.isVector2||s&&n&&s.isVector3&&n.isVector3||s&&n&&s.isMatrix3&&n.isMatrix3?s.copy(n):this[t]=n}}toJSON(e){const t=e===void 0||typeof e=="string";if(!t&&e.textures[this.uuid]!==void 0)return e.textures[this.uuid];const n={metadata:{version:4.7,type:"Texture",generator:"Texture.toJSON"},uuid:this.uuid,name:this.name,image:this.source.toJSON(e).uuid,mapping:this.mapping,channel:this.channel,repeat:[this.repeat.x,this.repeat.y],offset:[this.offset.x,this.offset.y],center:[this.center.x,this.center.y],rotation:this.rotation,wrap:[this.wrapS,this.wrapT],format:this.format,internalFormat:this.internalFormat,type:this.type,colorSpace:this.colorSpace,minFilter:this.minFilter,magFilter:this.magFilter,anisotropy:this.anisotropy,flipY:this.flipY,generateMipmaps:this.generateMipmaps,premultiplyAlpha:this.premultiplyAlpha,unpackAlignment:this.unpackAlignment};return Object.keys(this.userData).length>0&&(n.userData=this.userData),t||(e.textures[this.uuid]=n),n}dispose(){this.dispatchEvent({type:"dispose"})}transformUv(e){if(this.mapping!==Id)return e;if(e.applyMatrix3(this.matrix),e.x<0||e.x>1)switch(this.wrapS){case lc:e.x=e.x-Math.floor(e.x);break;case Ps:e.x=e.x<0?0:1;break;case cc:Math.abs(Math.floor(e.x)%2)===1?e.x=Math.ceil(e.x)-e.x:e.x=e.x-Math.floor(e.x);break}if(e.y<0||e.y>1)switch(this.wrapT){case lc:e.y=e.y-Math.floor(e.y);break;case Ps:e.y=e.y<0?0:1;break;case cc:Math.abs(Math.floor(e.y)%2)===1?e.y=Math.ceil(e.y)-e.y:e.y=e.y-Math.floor(e.y);break}return this.flipY&&(e.y=1-e.y),e}set needsUpdate(e){e===!0&&(this.version++,this.source.needsUpdate=!0)}set needsPMREMUpdate(e){e===!0&&this.pmremVersion++}}Bn.DEFAULT_IMAGE=null;Bn.DEFAULT_MAPPING=Id;Bn.DEFAULT_ANISOTROPY=1;class $t{constructor(e=0,t=0,n=0,s=1){$t.prototype.isVector4=!0,this.x=e,this.y=t,this.z=n,this.w=s}get width(){return this.z}set width(e){this.z=e}get height(){return this.w}set height(e){this.w=e}set(e,t,n,s){return this.x=e,this.y=t,this.z=n,this.w=s,this}setScalar(e){return this.x=e,this.y=e,this.z=e,this.w=e,this}setX(e){return this.x=e,this}setY(e){return this.y=e,this}setZ(e){return this.z=e,this}setW(e){return this.w=e,this}setComponent(e,t){switch(e){case 0:this.x=t;break;case 1:this.y=t;break;case 2:this.z=t;break;case 3:this.w=t;break;default:throw new Error("index is out of range: "+e)}return this}getComponent(e){switch(e){case 0:return this.x;case 1:return this.y;case 2:return this.z;case 3:return this.w;default:throw new Error("index is out of range: "+e)}}clone(){return new this.constructor(this.x,this.y,this.z,this.w)}copy(e){return this.x=e.x,this.y=e.y,this.z=e.z,this.w=e.w!==void 0?e.w:1,this}add(e){return this.x+=e.x,this.y+=e.y,this.z+=e.z,this.w+=e.w,this}addScalar(e){return this.x+=e,this.y+=e,this.z+=e,this.w+=e,this}addVectors(e,t){return this.x=e.x+t.x,this.y=e.y+t.y,this.z=e.z+t.z,this.w=e.w+t.w,this}addScaledVector(e,t){return this.x+=e.x*t,this.y+=e.y*t,this.z+=e.z*t,this.w+=e.w*t,this}sub(e){return this.x-=e.x,this.y-=e.y,this.z-=e.z,this.w-=e.w,this}subScalar(e){return this.x-=e,this.y-=e,this.z-=e,this.w-=e,this}subVectors(e,t){return this.x=e.x-t.x,this.y=e.y-t.y,this.z=e.z-t.z,this.w=e.w-t.w,this}multiply(e){return this.x*=e.x,this.y*=e.y,this.z*=e.z,this.w*=e.w,this}multiplyScalar(e){return this.x*=e,this.y*=e,this.z*=e,this.w*=e,this}applyMatrix4(e){const t=this.x,n=this.y,s=this.z,r=this.w,a=e.elements;return this.x=a[0]*t+a[4]*n+a[8]*s+a[12]*r,this.y=a[1]*t+a[5]*n+a[9]*s+a[13]*r,this.z=a[2]*t+a[6]*n+a[10]*s+a[14]*r,this.w=a[3]*t+a[7]*n+a[11]*s+a[15]*r,this}divide(e){return this.x/=e.x,this.y/=e.y,this.z/=e.z,this.w/=e.w,this}divideScalar(e){return this.multiplyScalar(1/e)}setAxisAngleFromQuaternion(e){this.w=2*Math.acos(e.w);const t=Math.sqrt(1-e.w*e.w);return t<1e-4?(this.x=1,this.y=0,this.z=0):(this.x=e.x/t,this.y=e.y/t,this.z=e.z/t),this}setAxisAngleFromRotationMatrix(e){let t,n,s,r;const l=e.elements,c=l[0],f=l[4],u=l[8],h=l[1],p=l[5],v=l[9],M=l[2],m=l[6],d=l[10];if(Math.abs(f-h)<.01&&Math.abs(u-M)<.01&&Math.abs(v-m)<.01){if(Math.abs(f+h)<.1&&Math.abs(u+M)<.1&&Math.abs(v+m)<.1&&Math.abs(c+p+d-3)<.1)return this.set(1,0,0,0),this;t=Math.PI;const A=(c+1)/2,b=(p+1)/2,N=(d+1)/2,R=(f+h)/4,D=(u+M)/4,C=(v+m)/4;return A>b&&A>N?A<.01?(n=0,s=.707106781,r=.707106781):(n=Math.sqrt(A),s=R/n,r=D/n):b>N?b<.01?(n=.707106781,s=0,r=.707106781):(s=Math.sqrt(b),n=R/s,r=C/s):N<.01?(n=.707106781,s=.707106781,r=0):(r=Math.sqrt(N),n=D/r,s=C/r),this.set(n,s,r,t),this}let T=Math.sqrt((m-v)*(m-v)+(u-M)*(u-M)+(h-f)*(h-f));return Math.abs(T)<.001&&(T=1),this.x=(m-v)/T,this.y=(u-M)/T,this.z=(h-f)/T,this.w=Math.acos((c+p+d-1)/2),this}setFromMatrixPosition(e){const t=e.elements;return this.x=t[12],this.y=t[13],this.z=t[14],this.w=t[15],this}min(e){return this.x=Math.min(this.x,e.x),this.y=Math.min(this.y,e.y),this.z=Math.min(this.z,e.z),this.w=Math.min(this.w,e.w),this}max(e){return this.x=Math.max(this.x,e.x),this.y=Math.max(this.y,e.y),this.z=Math.max(this.z,e.z),this.w=Math.max(this.w,e.w),this}clamp(e,t){return this.x=ct(this.x,e.x,t.x),this.y=ct(this.y,e.y,t.y),this.z=ct(this.z,e.z,t.z),this.w=ct(this.w,e.w,t.w),this}clampScalar(e,t){return this.x=ct(this.x,e,t),this.y=ct(this.y,e,t),this.z=ct(this.z,e,t),this.w=ct(this.w,e,t),this}clampLength(e,t){const n=this.length();return this.divideScalar(n||1).multiplyScalar(ct(n,e,t))}floor(){return this.x=Math.floor(this.x),this.y=Math.floor(this.y),this.z=Math.floor(this.z),this.w=Math.floor(this.w),this}ceil(){return this.x=Math.ceil(this.x),this.y=Math.ceil(this.y),this.z=Math.ceil(this.z),this.w=Math.ceil(this.w),this}round(){return this.x=Math.round(this.x),this.y=Math.round(this.y),this.z=Math.round(this.z),this.w=Math.round(this.w),this}roundToZero(){return this.x=Math.trunc(this.x),this.y=Math.trunc(this.y),this.z=Math.trunc(this.z),this.w=Math.trunc(this.w),this}negate(){return this.x=-this.x,this.y=-this.y,this.z=-this.z,this.w=-this.w,this}dot(e){return this.x*e.x+this.y*e.y+this.z*e.z+this.w*e.w}lengthSq(){return this.x*this.x+this.y*this.y+this.z*this.z+this.w*this.w}length(){return Math.sqrt(this.x*this.x+this.y*this.y+this.z*this.z+this.w*this.w)}manhattanLength(){return Math.abs(this.x)+Math.abs(this.y)+Math.abs(this.z)+Math.abs(this.w)}normalize(){return this.divideScalar(this.length()||1)}setLength(e){return this.normalize().multiplyScalar(e)}lerp(e,t){return this.x+=(e.x-this.x)*t,this.y+=(e.y-this.y)*t,this.z+=(e.z-this.z)*t,this.w+=(e.w-this.w)*t,this}lerpVectors(e,t,n){return this.x=e.x+(t.x-e.x)*n,this.y=e.y+(t.y-e.y)*n,this.z=e.z+(t.z-e.z)*n,this.w=e.w+(t.w-e.w)*n,this}equals(e){return e.x===this.x&&e.y===this.y&&e.z===this.z&&e.w===this.w}fromArray(e,t=0){return this.x=e[t],this.y=e[t+1],this.z=e[t+2],this.w=e[t+3],this}toArray(e=[],t=0){return e[t]=this.x,e[t+1]=this.y,e[t+2]=this.z,e[t+3]=this.w,e}fromBufferAttribute(e,t){return this.x=e.getX(t),this.y=e.getY(t),this.z=e.getZ(t),this.w=e.getW(t),this}random(){return this.x=Math.random(),this.y=Math.random(),this.z=Math.random(),this.w=Math.random(),this}*[Symbol.iterator](){yield this.x,yield this.y,yield this.z,yield this.w}}class R_ extends Bs{constructor(e=1,t=1,n={}){super(),n=Object.assign({generateMipmaps:!1,internalFormat:null,minFilter:Ti,depthBuffer:!0,stencilBuffer:!1,resolveDepthBuffer:!0,resolveStencilBuffer:!0,depthTexture:null,samples:0,count:1,depth:1,multiview:!1},n),this.isRenderTarget=!0,this.width=e,this.height=t,this.depth=n.depth,this.scissor=new $t(0,0,e,t),this.scissorTest=!1,this.viewport=new $t(0,0,e,t);const s={width:e,height:t,depth:n.depth},r=new Bn(s);this.textures=[];const a=n.count;for(let o=0;o<a;o++)this.textures[o]=r.clone(),this.textures[o].isRenderTargetTexture=!0,this.textures[o].renderTarget=this;this._setTextureOptions(n),this.depthBuffer=n.depthBuffer,this.stencilBuffer=n.stencilBuffer,this.resolveDepthBuffer=n.resolveDepthBuffer,this.resolveStencilBuffer=n.resolveStencilBuffer,this._depthTexture=null,this.depthTexture=n.depthTexture,this.samples=n.samples,this.multiview=n.multiview}_setTextureOptions(e={}){const t={minFilter:Ti,generateMipmaps:!1,flipY:!1,internalFormat:null};e.mapping!==void 0&&(t.mapping=e.mapping),e.wrapS!==void 0&&(t.wrapS=e.wrapS),e.wrapT!==void 0&&(t.wrapT=e.wrapT),e.wrapR!==void 0&&(t.wrapR=e.wrapR),e.magFilter!==void 0&&(t.magFilter=e.magFilter),e.minFilter!==void 0&&(t.minFilter=e.minFilter),e.format!==void 0&&(t.format=e.format),e.type!==void 0&&(t.type=e.type),e.anisotropy!==void 0&&(t.anisotropy=e.anisotropy),e.colorSpace!==void 0&&(t.colorSpace=e.colorSpace),e.flipY!==void 0&&(t.flipY=e.flipY),e.generateMipmaps!==void 0&&(t.generateMipmaps=e.generateMipmaps),e.internalFormat!==void 0&&(t.internalFormat=e.internalFormat);for(let n=0;n<this.textures.length;n++)this.textures[n].setValues(t)}get texture(){return this.textures[0]}set texture(e){this.textures[0]=e}set depthTexture(e){this._depthTexture!==null&&(this._depthTexture.renderTarget=null),e!==null&&(e.renderTarget=this),this._depthTexture=e}get depthTexture(){return this._depthTexture}setSize(e,t,n=1){if(this.width!==e||this.height!==t||this.depth!==n){this.width=e,this.height=t,this.depth=n;for(let s=0,r=this.textures.length;s<r;s++)this.textures[s].image.width=e,this.textures[s].image.height=t,this.textures[s].image.depth=n,this.textures[s].isArrayTexture=this.textures[s].image.depth>1;this.dispose()}this.viewport.set(0,0,e,t),this.scissor.set(0,0,e,t)}clone(){return new this.constructor().copy(this)}copy(e){this.width=e.width,this.height=e.height,this.depth=e.depth,this.scissor.copy(e.scissor),this.scissorTest=e.scissorTest,this.viewport.copy(e.viewport),this.textures.length=0;for(let t=0,n=e.textures.length;t<n;t++){this.textures[t]=e.textures[t].clone(),this.textures[t].isRenderTargetTexture=!0,this.textures[t].renderTarget=this;const s=Object.assign({},e.textures[t].image);this.textures[t].source=new du(s)}return this.depthBuffer=e.depthBuffer,this.stencilBuffer=e.stencilBuffer,this.resolveDepthBuffer=e.resolveDepthBuffer,this.resolveStencilBuffer=e.resolveStencilBuffer,e.depthTexture!==null&&(this.depthTexture=e.depthTexture.clone()),this.samples=e.samples,this}dispose(){this.dispatchEvent({type:"dispose"})}}class Fs extends R_{constructor(e=1,t=1,n={}){super(e,t,n),this.isWebGLRenderTarget=!0}}class qd extends Bn{constructor(e=null,t=1,n=1,s=1){super(null),this.isDataArrayTexture=!0,this.image={data:e,width:t,height:n,depth:s},this.magFilter=gi,this.minFilter=gi,this.wrapR=Ps,this.generateMipmaps=!1,this.flipY=!1,this.unpackAlignment=1,this.layerUpdates=new Set}addLayerUpdate(e){this.layerUpdates.add(e)}clearLayerUpdates(){this.layerUpdates.clear()}}class C_ extends Bn{constructor(e=null,t=1,n=1,s=1){super(null),this.isData3DTexture=!0,this.image={data:e,width:t,height:n,depth:s},this.magFilter=gi,this.minFilter=gi,this.wrapR=Ps,this.generateMipmaps=!1,this.flipY=!1,this.unpackAlignment=1}}class ga{constructor(e=new z(1/0,1/0,1/0),t=new z(-1/0,-1/0,-1/0)){this.isBox3=!0,this.min=e,this.max=t}set(e,t){return this.min.copy(e),this.max.copy(t),this}setFromArray(e){this.makeEmpty();for(let t=0,n=e.length;t<n;t+=3)this.expandByPoint(li.fromArray(e,t));return this}setFromBufferAttribute(e){this.makeEmpty();for(let t=0,n=e.count;t<n;t++)this.expandByPoint(li.fromBufferAttribute(e,t));return this}setFromPoints(e){this.makeEmpty();for(let t=0,n=e.length;t<n;t++)this.expandByPoint(e[t]);return this}setFromCenterAndSize(e,t){const n=li.copy(t).multiplyScalar(.5);return this.min.copy(e).sub(n),this.max.copy(e).add(n),this}setFromObject(e,t=!1){return this.makeEmpty(),this.expandByObject(e,t)}clone(){return new this.constructor().copy(this)}copy(e){return this.min.copy(e.min),this.max.copy(e.max),this}makeEmpty(){return this.min.x=this.min.y=this.min.z=1/0,this.max.x=this.max.y=this.max.z=-1/0,this}isEmpty(){return this.max.x<this.min.x||this.max.y<this.min.y||this.max.z<this.min.z}getCenter(e){return this.isEmpty()?e.set(0,0,0):e.addVectors(this.min,this.max).multiplyScalar(.5)}getSize(e){return this.isEmpty()?e.set(0,0,0):e.subVectors(this.max,this.min)}expandByPoint(e){return this.min.min(e),this.max.max(e),this}expandByVector(e){return this.min.sub(e),this.max.add(e),this}expandByScalar(e){return this.min.addScalar(-e),this.max.addScalar(e),this}expandByObject(e,t=!1){e.updateWorldMatrix(!1,!1);const n=e.geometry;if(n!==void 0){const r=n.getAttribute("position");if(t===!0&&r!==void 0&&e.isInstancedMesh!==!0)for(let a=0,o=r.count;a<o;a++)e.isMesh===!0?e.getVertexPosition(a,li):li.fromBufferAttribute(r,a),li.applyMatrix4(e.matrixWorld),this.expandByPoint(li);else e.boundingBox!==void 0?(e.boundingBox===null&&e.computeBoundingBox(),Da.copy(e.boundingBox)):(n.boundingBox===null&&n.computeBoundingBox(),Da.copy(n.boundingBox)),Da.applyMatrix4(e.matrixWorld),this.union(Da)}const s=e.children;for(let r=0,a=s.length;r<a;r++)this.expandByObject(s[r],t);return this}containsPoint(e){return e.x>=this.min.x&&e.x<=this.max.x&&e.y>=this.min.y&&e.y<=this.max.y&&e.z>=this.min.z&&e.z<=this.max.z}containsBox(e){return this.min.x<=e.min.x&&e.max.x<=this.max.x&&this.min.y<=e.min.y&&e.max.y<=this.max.y&&this.min.z<=e.min.z&&e.max.z<=this.max.z}getParameter(e,t){return t.set((e.x-this.min.x)/(this.max.x-this.min.x),(e.y-this.min.y)/(this.max.y-this.min.y),(e.z-this.min.z)/(this.max.z-this.min.z))}intersectsBox(e){return e.max.x>=this.min.x&&e.min.x<=this.max.x&&e.max.y>=this.min.y&&e.min.y<=this.max.y&&e.max.z>=this.min.z&&e.min.z<=this.max.z}intersectsSphere(e){return this.clampPoint(e.center,li),li.distanceToSquared(e.center)<=e.radius*e.radius}intersectsPlane(e){let t,n;return e.normal.x>0?(t=e.normal.x*this.min.x,n=e.normal.x*this.max.x):(t=e.normal.x*this.max.x,n=e.normal.x*this.min.x),e.normal.y>0?(t+=e.normal.y*this.min.y,n+=e.normal.y*this.max.y):(t+=e.normal.y*this.max.y,n+=e.normal.y*this.min.y),e.normal.z>0?(t+=e.normal.z*this.min.z,n+=e.normal.z*this.max.z):(t+=e.normal.z*this.max.z,n+=e.normal.z*this.min.z),t<=-e.constant&&n>=-e.constant}intersectsTriangle(e){if(this.isEmpty())return!1;this.getCenter(Vr),La.subVectors(this.max,Vr),Js.subVectors(e.a,Vr),Qs.subVectors(e.b,Vr),er.subVectors(e.c,Vr),Ki.subVectors(Qs,Js),Zi.subVectors(er,Qs),_s.subVectors(Js,er);let t=[0,-Ki.z,Ki.y,0,-Zi.z,Zi.y,0,-_s.z,_s.y,Ki.z,0,-Ki.x,Zi.z,0,-Zi.x,_s.z,0,-_s.x,-Ki.y,Ki.x,0,-Zi.y,Zi.x,0,-_s.y,_s.x,0];return!ul(t,Js,Qs,er,La)||(t=[1,0,0,0,1,0,0,0,1],!ul(t,Js,Qs,er,La))?!1:(Ua.crossVectors(Ki,Zi),t=[Ua.x,Ua.y,Ua.z],ul(t,Js,Qs,er,La))}clampPoint(e,t){return t.copy(e).clamp(this.min,this.max)}distanceToPoint(e){return this.clampPoint(e,li).distanceTo(e)}getBoundingSphere(e){return this.isEmpty()?e.makeEmpty():(this.getCenter(e.center),e.radius=this.getSize(li).length()*.5),e}intersect(e){return this.min.max(e.min),this.max.min(e.max),this.isEmpty()&&this.makeEmpty(),this}union(e){return this.min.min(e.min),this.max.max(e.max),this}applyMatrix4(e){return this.isEmpty()?this:(Ui[0].set(this.min.x,this.min.y,this.min.z).applyMatrix4(e),Ui[1].set(this.min.x,this.min.y,this.max.z).applyMatrix4(e),Ui[2].set(this.min.x,this.max.y,this.min.z).applyMatrix4(e),Ui[3].set(this.min.x,this.max.y,this.max.z).applyMatrix4(e),Ui[4].set(this.max.x,this.min.y,this.min.z).applyMatrix4(e),Ui[5].set(this.max.x,this.min.y,this.max.z).applyMatrix4(e),Ui[6].set(this.max.x,this.max.y,this.min.z).applyMatrix4(e),Ui[7].set(this.max.x,this.max.y,this.max.z).applyMatrix4(e),this.setFromPoints(Ui),this)}translate(e){return this.min.add(e),this.max.add(e),this}equals(e){return e.min.equals(this.min)&&e.max.equals(this.max)}toJSON(){return{min:this.min.toArray(),max:this.max.toArray()}}fromJSON(e){return this.min.fromArray(e.min),this.max.fromArray(e.max),this}}const Ui=[new z,new z,new z,new z,new z,new z,new z,new z],li=new z,Da=new ga,Js=new z,Qs=new z,er=new z,Ki=new z,Zi=new z,_s=new z,Vr=new z,La=new z,Ua=new z,vs=new z;function ul(i,e,t,n,s){for(let r=0,a=i.length-3;r<=a;r+=3){vs.fromArray(i,r);const o=s.x*Math.abs(vs.x)+s.y*Math.abs(vs.y)+s.z*Math.abs(vs.z),l=e.dot(vs),c=t.dot(vs),f=n.dot(vs);if(Math.max(-Math.max(l,c,f),Math.min(l,c,f))>o)return!1}return!0}const P_=new ga,Gr=new z,hl=new z;class _a{constructor(e=new z,t=-1){this.isSphere=!0,this.center=e,this.radius=t}set(e,t){return this.center.copy(e),this.radius=t,this}setFromPoints(e,t){const n=this.center;t!==void 0?n.copy(t):P_.setFromPoints(e).getCenter(n);let s=0;for(let r=0,a=e.length;r<a;r++)s=Math.max(s,n.distanceToSquared(e[r]));return this.radius=Math.sqrt(s),this}copy(e){return this.center.copy(e.center),this.radius=e.radius,this}isEmpty(){return this.radius<0}makeEmpty(){return this.center.set(0,0,0),this.radius=-1,this}containsPoint(e){return e.distanceToSquared(this.center)<=this.radius*this.radius}distanceToPoint(e){return e.distanceTo(this.center)-this.radius}intersectsSphere(e){const t=this.radius+e.radius;return e.center.distanceToSquared(this.center)<=t*t}intersectsBox(e){return e.intersectsSphere(this)}intersectsPlane(e){return Math.abs(e.distanceToPoint(this.center))<=this.radius}clampPoint(e,t){const n=this.center.distanceToSquared(e);return t.copy(e),n>this.radius*this.radius&&(t.sub(this.center).normalize(),t.multiplyScalar(this.radius).add(this.center)),t}getBoundingBox(e){return this.isEmpty()?(e.makeEmpty(),e):(e.set(this.center,this.center),e.expandByScalar(this.radius),e)}applyMatrix4(e){return this.center.applyMatrix4(e),this.radius=this.radius*e.getMaxScaleOnAxis(),this}translate(e){return this.center.add(e),this}expandByPoint(e){if(this.isEmpty())return this.center.copy(e),this.radius=0,this;Gr.subVectors(e,this.center);const t=Gr.lengthSq();if(t>this.radius*this.radius){const n=Math.sqrt(t),s=(n-this.radius)*.5;this.center.addScaledVector(Gr,s/n),this.radius+=s}return this}union(e){return e.isEmpty()?this:this.isEmpty()?(this.copy(e),this):(this.center.equals(e.center)===!0?this.radius=Math.max(this.radius,e.radius):(hl.subVectors(e.center,this.center).setLength(e.radius),this.expandByPoint(Gr.copy(e.center).add(hl)),this.expandByPoint(Gr.copy(e.center).sub(hl))),this)}equals(e){return e.center.equals(this.center)&&e.radius===this.radius}clone(){return new this.constructor().copy(this)}toJSON(){return{radius:this.radius,center:this.center.toArray()}}fromJSON(e){return this.radius=e.radius,this.center.fromArray(e.center),this}}const Ii=new z,fl=new z,Ia=new z,Ji=new z,dl=new z,Na=new z,pl=new z;class va{constructor(e=new z,t=new z(0,0,-1)){this.origin=e,this.direction=t}set(e,t){return this.origin.copy(e),this.direction.copy(t),this}copy(e){return this.origin.copy(e.origin),this.direction.copy(e.direction),this}at(e,t){return t.copy(this.origin).addScaledVector(this.direction,e)}lookAt(e){return this.direction.copy(e).sub(this.origin).normalize(),this}recast(e){return this.origin.copy(this.at(e,Ii)),this}closestPointToPoint(e,t){t.subVectors(e,this.origin);const n=t.dot(this.direction);return n<0?t.copy(this.origin):t.copy(this.origin).addScaledVector(this.direction,n)}distanceToPoint(e){return Math.sqrt(this.distanceSqToPoint(e))}distanceSqToPoint(e){const t=Ii.subVectors(e,this.origin).dot(this.direction);return t<0?this.origin.distanceToSquared(e):(Ii.copy(this.origin).addScaledVector(this.direction,t),Ii.distanceToSquared(e))}distanceSqToSegment(e,t,n,s){fl.copy(e).add(t).multiplyScalar(.5),Ia.copy(t).sub(e).normalize(),Ji.copy(this.origin).sub(fl);const r=e.distanceTo(t)*.5,a=-this.direction.dot(Ia),o=Ji.dot(this.direction),l=-Ji.dot(Ia),c=Ji.lengthSq(),f=Math.abs(1-a*a);let u,h,p,v;if(f>0)if(u=a*l-o,h=a*o-l,v=r*f,u>=0)if(h>=-v)if(h<=v){const M=1/f;u*=M,h*=M,p=u*(u+a*h+2*o)+h*(a*u+h+2*l)+c}else h=r,u=Math.max(0,-(a*h+o)),p=-u*u+h*(h+2*l)+c;else h=-r,u=Math.max(0,-(a*h+o)),p=-u*u+h*(h+2*l)+c;else h<=-v?(u=Math.max(0,-(-a*r+o)),h=u>0?-r:Math.min(Math.max(-r,-l),r),p=-u*u+h*(h+2*l)+c):h<=v?(u=0,h=Math.min(Math.max(-r,-l),r),p=h*(h+2*l)+c):(u=Math.max(0,-(a*r+o)),h=u>0?r:Math.min(Math.max(-r,-l),r),p=-u*u+h*(h+2*l)+c);else h=a>0?-r:r,u=Math.max(0,-(a*h+o)),p=-u*u+h*(h+2*l)+c;return n&&n.copy(this.origin).addScaledVector(this.direction,u),s&&s.copy(fl).addScaledVector(Ia,h),p}intersectSphere(e,t){Ii.subVectors(e.center,this.origin);const n=Ii.dot(this.direction),s=Ii.dot(Ii)-n*n,r=e.radius*e.radius;if(s>r)return null;const a=Math.sqrt(r-s),o=n-a,l=n+a;return l<0?null:o<0?this.at(l,t):this.at(o,t)}intersectsSphere(e){return e.radius<0?!1:this.distanceSqToPoint(e.center)<=e.radius*e.radius}distanceToPlane(e){const t=e.normal.dot(this.direction);if(t===0)return e.distanceToPoint(this.origin)===0?0:null;const n=-(this.origin.dot(e.normal)+e.constant)/t;return n>=0?n:null}intersectPlane(e,t){const n=this.distanceToPlane(e);return n===null?null:this.at(n,t)}intersectsPlane(e){const t=e.distanceToPoint(this.origin);return t===0||e.normal.dot(this.direction)*t<0}intersectBox(e,t){let n,s,r,a,o,l;const c=1/this.direction.x,f=1/this.direction.y,u=1/this.direction.z,h=this.origin;return c>=0?(n=(e.min.x-h.x)*c,s=(e.max.x-h.x)*c):(n=(e.max.x-h.x)*c,s=(e.min.x-h.x)*c),f>=0?(r=(e.min.y-h.y)*f,a=(e.max.y-h.y)*f):(r=(e.max.y-h.y)*f,a=(e.min.y-h.y)*f),n>a||r>s||((r>n||isNaN(n))&&(n=r),(a<s||isNaN(s))&&(s=a),u>=0?(o=(e.min.z-h.z)*u,l=(e.max.z-h.z)*u):(o=(e.max.z-h.z)*u,l=(e.min.z-h.z)*u),n>l||o>s)||((o>n||n!==n)&&(n=o),(l<s||s!==s)&&(s=l),s<0)?null:this.at(n>=0?n:s,t)}intersectsBox(e){return this.intersectBox(e,Ii)!==null}intersectTriangle(e,t,n,s,r){dl.subVectors(t,e),Na.subVectors(n,e),pl.crossVectors(dl,Na);let a=this.direction.dot(pl),o;if(a>0){if(s)return null;o=1}else if(a<0)o=-1,a=-a;else return null;Ji.subVectors(this.origin,e);const l=o*this.direction.dot(Na.crossVectors(Ji,Na));if(l<0)return null;const c=o*this.direction.dot(dl.cross(Ji));if(c<0||l+c>a)return null;const f=-o*Ji.dot(pl);return f<0?null:this.at(f/a,r)}applyMatrix4(e){return this.origin.applyMatrix4(e),this.direction.transformDirection(e),this}equals(e){return e.origin.equals(this.origin)&&e.direction.equals(this.direction)}clone(){return new this.constructor().copy(this)}}class Xt{constructor(e,t,n,s,r,a,o,l,c,f,u,h,p,v,M,m){Xt.prototype.isMatrix4=!0,this.elements=[1,0,0,0,0,1,0,0,0,0,1,0,0,0,0,1],e!==void 0&&this.set(e,t,n,s,r,a,o,l,c,f,u,h,p,v,M,m)}set(e,t,n,s,r,a,o,l,c,f,u,h,p,v,M,m){const d=this.elements;return d[0]=e,d[4]=t,d[8]=n,d[12]=s,d[1]=r,d[5]=a,d[9]=o,d[13]=l,d[2]=c,d[6]=f,d[10]=u,d[14]=h,d[3]=p,d[7]=v,d[11]=M,d[15]=m,this}identity(){return this.set(1,0,0,0,0,1,0,0,0,0,1,0,0,0,0,1),this}clone(){return new Xt().fromArray(this.elements)}copy(e){const t=this.elements,n=e.elements;return t[0]=n[0],t[1]=n[1],t[2]=n[2],t[3]=n[3],t[4]=n[4],t[5]=n[5],t[6]=n[6],t[7]=n[7],t[8]=n[8],t[9]=n[9],t[10]=n[10],t[11]=n[11],t[12]=n[12],t[13]=n[13],t[14]=n[14],t[15]=n[15],this}copyPosition(e){const t=this.elements,n=e.elements;return t[12]=n[12],t[13]=n[13],t[14]=n[14],this}setFromMatrix3(e){const t=e.elements;return this.set(t[0],t[3],t[6],0,t[1],t[4],t[7],0,t[2],t[5],t[8],0,0,0,0,1),this}extractBasis(e,t,n){return e.setFromMatrixColumn(this,0),t.setFromMatrixColumn(this,1),n.setFromMatrixColumn(this,2),this}makeBasis(e,t,n){return this.set(e.x,t.x,n.x,0,e.y,t.y,n.y,0,e.z,t.z,n.z,0,0,0,0,1),this}extractRotation(e){const t=this.elements,n=e.elements,s=1/tr.setFromMatrixColumn(e,0).length(),r=1/tr.setFromMatrixColumn(e,1).length(),a=1/tr.setFromMatrixColumn(e,2).length();return t[0]=n[0]*s,t[1]=n[1]*s,t[2]=n[2]*s,t[3]=0,t[4]=n[4]*r,t[5]=n[5]*r,t[6]=n[6]*r,t[7]=0,t[8]=n[8]*a,t[9]=n[9]*a,t[10]=n[10]*a,t[11]=0,t[12]=0,t[13]=0,t[14]=0,t[15]=1,this}makeRotationFromEuler(e){const t=this.elements,n=e.x,s=e.y,r=e.z,a=Math.cos(n),o=Math.sin(n),l=Math.cos(s),c=Math.sin(s),f=Math.cos(r),u=Math.sin(r);if(e.order==="XYZ"){const h=a*f,p=a*u,v=o*f,M=o*u;t[0]=l*f,t[4]=-l*u,t[8]=c,t[1]=p+v*c,t[5]=h-M*c,t[9]=-o*l,t[2]=M-h*c,t[6]=v+p*c,t[10]=a*l}else if(e.order==="YXZ"){const h=l*f,p=l*u,v=c*f,M=c*u;t[0]=h+M*o,t[4]=v*o-p,t[8]=a*c,t[1]=a*u,t[5]=a*f,t[9]=-o,t[2]=p*o-v,t[6]=M+h*o,t[10]=a*l}else if(e.order==="ZXY"){const h=l*f,p=l*u,v=c*f,M=c*u;t[0]=h-M*o,t[4]=-a*u,t[8]=v+p*o,t[1]=p+v*o,t[5]=a*f,t[9]=M-h*o,t[2]=-a*c,t[6]=o,t[10]=a*l}else if(e.order==="ZYX"){const h=a*f,p=a*u,v=o*f,M=o*u;t[0]=l*f,t[4]=v*c-p,t[8]=h*c+M,t[1]=l*u,t[5]=M*c+h,t[9]=p*c-v,t[2]=-c,t[6]=o*l,t[10]=a*l}else if(e.order==="YZX"){const h=a*l,p=a*c,v=o*l,M=o*c;t[0]=l*f,t[4]=M-h*u,t[8]=v*u+p,t[1]=u,t[5]=a*f,t[9]=-o*f,t[2]=-c*f,t[6]=p*u+v,t[10]=h-M*u}else if(e.order==="XZY"){const h=a*l,p=a*c,v=o*l,M=o*c;t[0]=l*f,t[4]=-u,t[8]=c*f,t[1]=h*u+M,t[5]=a*f,t[9]=p*u-v,t[2]=v*u-p,t[6]=o*f,t[10]=M*u+h}return t[3]=0,t[7]=0,t[11]=0,t[12]=0,t[13]=0,t[14]=0,t[15]=1,this}makeRotationFromQuaternion(e){return this.compose(D_,e,L_)}lookAt(e,t,n){const s=this.elements;return Wn.subVectors(e,t),Wn.lengthSq()===0&&(Wn.z=1),Wn.normalize(),Qi.crossVectors(n,Wn),Qi.lengthSq()===0&&(Math.abs(n.z)===1?Wn.x+=1e-4:Wn.z+=1e-4,Wn.normalize(),Qi.crossVectors(n,Wn)),Qi.normalize(),Fa.crossVectors(Wn,Qi),s[0]=Qi.x,s[4]=Fa.x,s[8]=Wn.x,s[1]=Qi.y,s[5]=Fa.y,s[9]=Wn.y,s[2]=Qi.z,s[6]=Fa.z,s[10]=Wn.z,this}multiply(e){return this.multiplyMatrices(this,e)}premultiply(e){return this.multiplyMatrices(e,this)}multiplyMatrices(e,t){const n=e.elements,s=t.elements,r=this.elements,a=n[0],o=n[4],l=n[8],c=n[12],f=n[1],u=n[5],h=n[9],p=n[13],v=n[2],M=n[6],m=n[10],d=n[14],T=n[3],A=n[7],b=n[11],N=n[15],R=s[0],D=s[4],C=s[8],S=s[12],_=s[1],y=s[5],F=s[9],k=s[13],q=s[2],H=s[6],Y=s[10],j=s[14],K=s[3],ae=s[7],oe=s[11],ve=s[15];return r[0]=a*R+o*_+l*q+c*K,r[4]=a*D+o*y+l*H+c*ae,r[8]=a*C+o*F+l*Y+c*oe,r[12]=a*S+o*k+l*j+c*ve,r[1]=f*R+u*_+h*q+p*K,r[5]=f*D+u*y+h*H+p*ae,r[9]=f*C+u*F+h*Y+p*oe,r[13]=f*S+u*k+h*j+p*ve,r[2]=v*R+M*_+m*q+d*K,r[6]=v*D+M*y+m*H+d*ae,r[10]=v*C+M*F+m*Y+d*oe,r[14]=v*S+M*k+m*j+d*ve,r[3]=T*R+A*_+b*q+N*K,r[7]=T*D+A*y+b*H+N*ae,r[11]=T*C+A*F+b*Y+N*oe,r[15]=T*S+A*k+b*j+N*ve,this}multiplyScalar(e){const t=this.elements;return t[0]*=e,t[4]*=e,t[8]*=e,t[12]*=e,t[1]*=e,t[5]*=e,t[9]*=e,t[13]*=e,t[2]*=e,t[6]*=e,t[10]*=e,t[14]*=e,t[3]*=e,t[7]*=e,t[11]*=e,t[15]*=e,this}determinant(){const e=this.elements,t=e[0],n=e[4],s=e[8],r=e[12],a=e[1],o=e[5],l=e[9],c=e[13],f=e[2],u=e[6],h=e[10],p=e[14],v=e[3],M=e[7],m=e[11],d=e[15];return v*(+r*l*u-s*c*u-r*o*h+n*c*h+s*o*p-n*l*p)+M*(+t*l*p-t*c*h+r*a*h-s*a*p+s*c*f-r*l*f)+m*(+t*c*u-t*o*p-r*a*u+n*a*p+r*o*f-n*c*f)+d*(-s*o*f-t*l*u+t*o*h+s*a*u-n*a*h+n*l*f)}transpose(){const e=this.elements;let t;return t=e[1],e[1]=e[4],e[4]=t,t=e[2],e[2]=e[8],e[8]=t,t=e[6],e[6]=e[9],e[9]=t,t=e[3],e[3]=e[12],e[12]=t,t=e[7],e[7]=e[13],e[13]=t,t=e[11],e[11]=e[14],e[14]=t,this}setPosition(e,t,n){const s=this.elements;return e.isVector3?(s[12]=e.x,s[13]=e.y,s[14]=e.z):(s[12]=e,s[13]=t,s[14]=n),this}invert(){const e=this.elements,t=e[0],n=e[1],s=e[2],r=e[3],a=e[4],o=e[5],l=e[6],c=e[7],f=e[8],u=e[9],h=e[10],p=e[11],v=e[12],M=e[13],m=e[14],d=e[15],T=u*m*c-M*h*c+M*l*p-o*m*p-u*l*d+o*h*d,A=v*h*c-f*m*c-v*l*p+a*m*p+f*l*d-a*h*d,b=f*M*c-v*u*c+v*o*p-a*M*p-f*o*d+a*u*d,N=v*u*l-f*M*l-v*o*h+a*M*h+f*o*m-a*u*m,R=t*T+n*A+s*b+r*N;if(R===0)return this.set(0,0,0,0,0,0,0,0,0,0,0,0,0,0,0,0);const D=1/R;return e[0]=T*D,e[1]=(M*h*r-u*m*r-M*s*p+n*m*p+u*s*d-n*h*d)*D,e[2]=(o*m*r-M*l*r+M*s*c-n*m*c-o*s*d+n*l*d)*D,e[3]=(u*l*r-o*h*r-u*s*c+n*h*c+o*s*p-n*l*p)*D,e[4]=A*D,e[5]=(f*m*r-v*h*r+v*s*p-t*m*p-f*s*d+t*h*d)*D,e[6]=(v*l*r-a*m*r-v*s*c+t*m*c+a*s*d-t*l*d)*D,e[7]=(a*h*r-f*l*r+f*s*c-t*h*c-a*s*p+t*l*p)*D,e[8]=b*D,e[9]=(v*u*r-f*M*r-v*n*p+t*M*p+f*n*d-t*u*d)*D,e[10]=(a*M*r-v*o*r+v*n*c-t*M*c-a*n*d+t*o*d)*D,e[11]=(f*o*r-a*u*r-f*n*c+t*u*c+a*n*p-t*o*p)*D,e[12]=N*D,e[13]=(f*M*s-v*u*s+v*n*h-t*M*h-f*n*m+t*u*m)*D,e[14]=(v*o*s-a*M*s-v*n*l+t*M*l+a*n*m-t*o*m)*D,e[15]=(a*u*s-f*o*s+f*n*l-t*u*l-a*n*h+t*o*h)*D,this}scale(e){const t=this.elements,n=e.x,s=e.y,r=e.z;return t[0]*=n,t[4]*=s,t[8]*=r,t[1]*=n,t[5]*=s,t[9]*=r,t[2]*=n,t[6]*=s,t[10]*=r,t[3]*=n,t[7]*=s,t[11]*=r,this}getMaxScaleOnAxis(){const e=this.elements,t=e[0]*e[0]+e[1]*e[1]+e[2]*e[2],n=e[4]*e[4]+e[5]*e[5]+e[6]*e[6],s=e[8]*e[8]+e[9]*e[9]+e[10]*e[10];return Math.sqrt(Math.max(t,n,s))}makeTranslation(e,t,n){return e.isVector3?this.set(1,0,0,e.x,0,1,0,e.y,0,0,1,e.z,0,0,0,1):this.set(1,0,0,e,0,1,0,t,0,0,1,n,0,0,0,1),this}makeRotationX(e){const t=Math.cos(e),n=Math.sin(e);return this.set(1,0,0,0,0,t,-n,0,0,n,t,0,0,0,0,1),this}makeRotationY(e){const t=Math.cos(e),n=Math.sin(e);return this.set(t,0,n,0,0,1,0,0,-n,0,t,0,0,0,0,1),this}makeRotationZ(e){const t=Math.cos(e),n=Math.sin(e);return this.set(t,-n,0,0,n,t,0,0,0,0,1,0,0,0,0,1),this}makeRotationAxis(e,t){const n=Math.cos(t),s=Math.sin(t),r=1-n,a=e.x,o=e.y,l=e.z,c=r*a,f=r*o;return this.set(c*a+n,c*o-s*l,c*l+s*o,0,c*o+s*l,f*o+n,f*l-s*a,0,c*l-s*o,f*l+s*a,r*l*l+n,0,0,0,0,1),this}makeScale(e,t,n){return this.set(e,0,0,0,0,t,0,0,0,0,n,0,0,0,0,1),this}makeShear(e,t,n,s,r,a){return this.set(1,n,r,0,e,1,a,0,t,s,1,0,0,0,0,1),this}compose(e,t,n){const s=this.elements,r=t._x,a=t._y,o=t._z,l=t._w,c=r+r,f=a+a,u=o+o,h=r*c,p=r*f,v=r*u,M=a*f,m=a*u,d=o*u,T=l*c,A=l*f,b=l*u,N=n.x,R=n.y,D=n.z;return s[0]=(1-(M+d))*N,s[1]=(p+b)*N,s[2]=(v-A)*N,s[3]=0,s[4]=(p-b)*R,s[5]=(1-(h+d))*R,s[6]=(m+T)*R,s[7]=0,s[8]=(v+A)*D,s[9]=(m-T)*D,s[10]=(1-(h+M))*D,s[11]=0,s[12]=e.x,s[13]=e.y,s[14]=e.z,s[15]=1,this}decompose(e,t,n){const s=this.elements;let r=tr.set(s[0],s[1],s[2]).length();const a=tr.set(s[4],s[5],s[6]).length(),o=tr.set(s[8],s[9],s[10]).length();this.determinant()<0&&(r=-r),e.x=s[12],e.y=s[13],e.z=s[14],ci.copy(this);const c=1/r,f=1/a,u=1/o;return ci.elements[0]*=c,ci.elements[1]*=c,ci.elements[2]*=c,ci.elements[4]*=f,ci.elements[5]*=f,ci.elements[6]*=f,ci.elements[8]*=u,ci.elements[9]*=u,ci.elements[10]*=u,t.setFromRotationMatrix(ci),n.x=r,n.y=a,n.z=o,this}makePerspective(e,t,n,s,r,a,o=wi,l=!1){const c=this.elements,f=2*r/(t-e),u=2*r/(n-s),h=(t+e)/(t-e),p=(n+s)/(n-s);let v,M;if(l)v=r/(a-r),M=a*r/(a-r);else if(o===wi)v=-(a+r)/(a-r),M=-2*a*r/(a-r);else if(o===Mo)v=-a/(a-r),M=-a*r/(a-r);else throw new Error("THREE.Matrix4.makePerspective(): Invalid coordinate system: "+o);return c[0]=f,c[4]=0,c[8]=h,c[12]=0,c[1]=0,c[5]=u,c[9]=p,c[13]=0,c[2]=0,c[6]=0,c[10]=v,c[14]=M,c[3]=0,c[7]=0,c[11]=-1,c[15]=0,this}makeOrthographic(e,t,n,s,r,a,o=wi,l=!1){const c=this.elements,f=2/(t-e),u=2/(n-s),h=-(t+e)/(t-e),p=-(n+s)/(n-s);let v,M;if(l)v=1/(a-r),M=a/(a-r);else if(o===wi)v=-2/(a-r),M=-(a+r)/(a-r);else if(o===Mo)v=-1/(a-r),M=-r/(a-r);else throw new Error("THREE.Matrix4.makeOrthographic(): Invalid coordinate system: "+o);return c[0]=f,c[4]=0,c[8]=0,c[12]=h,c[1]=0,c[5]=u,c[9]=0,c[13]=p,c[2]=0,c[6]=0,c[10]=v,c[14]=M,c[3]=0,c[7]=0,c[11]=0,c[15]=1,this}equals(e){const t=this.elements,n=e.elements;for(let s=0;s<16;s++)if(t[s]!==n[s])return!1;return!0}fromArray(e,t=0){for(let n=0;n<16;n++)this.elements[n]=e[n+t];return this}toArray(e=[],t=0){const n=this.elements;return e[t]=n[0],e[t+1]=n[1],e[t+2]=n[2],e[t+3]=n[3],e[t+4]=n[4],e[t+5]=n[5],e[t+6]=n[6],e[t+7]=n[7],e[t+8]=n[8],e[t+9]=n[9],e[t+10]=n[10],e[t+11]=n[11],e[t+12]=n[12],e[t+13]=n[13],e[t+14]=n[14],e[t+15]=n[15],e}}const tr=new z,ci=new Xt,D_=new z(0,0,0),L_=new z(1,1,1),Qi=new z,Fa=new z,Wn=new z,Oh=new Xt,Bh=new Ns;class Ci{constructor(e=0,t=0,n=0,s=Ci.DEFAULT_ORDER){this.isEuler=!0,this._x=e,this._y=t,this._z=n,this._order=s}get x(){return this._x}set x(e){this._x=e,this._onChangeCallback()}get y(){return this._y}set y(e){this._y=e,this._onChangeCallback()}get z(){return this._z}set z(e){this._z=e,this._onChangeCallback()}get order(){return this._order}set order(e){this._order=e,this._onChangeCallback()}set(e,t,n,s=this._order){return this._x=e,this._y=t,this._z=n,this._order=s,this._onChangeCallback(),this}clone(){return new this.constructor(this._x,this._y,this._z,this._order)}copy(e){return this._x=e._x,this._y=e._y,this._z=e._z,this._order=e._order,this._onChangeCallback(),this}setFromRotationMatrix(e,t=this._order,n=!0){const s=e.elements,r=s[0],a=s[4],o=s[8],l=s[1],c=s[5],f=s[9],u=s[2],h=s[6],p=s[10];switch(t){case"XYZ":this._y=Math.asin(ct(o,-1,1)),Math.abs(o)<.9999999?(this._x=Math.atan2(-f,p),this._z=Math.atan2(-a,r)):(this._x=Math.atan2(h,c),this._z=0);break;case"YXZ":this._x=Math.asin(-ct(f,-1,1)),Math.abs(f)<.9999999?(this._y=Math.atan2(o,p),this._z=Math.atan2(l,c)):(this._y=Math.atan2(-u,r),this._z=0);break;case"ZXY":this._x=Math.asin(ct(h,-1,1)),Math.abs(h)<.9999999?(this._y=Math.atan2(-u,p),this._z=Math.atan2(-a,c)):(this._y=0,this._z=Math.atan2(l,r));break;case"ZYX":this._y=Math.asin(-ct(u,-1,1)),Math.abs(u)<.9999999?(this._x=Math.atan2(h,p),this._z=Math.atan2(l,r)):(this._x=0,this._z=Math.atan2(-a,c));break;case"YZX":this._z=Math.asin(ct(l,-1,1)),Math.abs(l)<.9999999?(this._x=Math.atan2(-f,c),this._y=Math.atan2(-u,r)):(this._x=0,this._y=Math.atan2(o,p));break;case"XZY":this._z=Math.asin(-ct(a,-1,1)),Math.abs(a)<.9999999?(this._x=Math.atan2(h,c),this._y=Math.atan2(o,r)):(this._x=Math.atan2(-f,p),this._y=0);break;default:console.warn("THREE.Euler: .setFromRotationMatrix() encountered an unknown order: "+t)}return this._order=t,n===!0&&this._onChangeCallback(),this}setFromQuaternion(e,t,n){return Oh.makeRotationFromQuaternion(e),this.setFromRotationMatrix(Oh,t,n)}setFromVector3(e,t=this._order){return this.set(e.x,e.y,e.z,t)}reorder(e){return Bh.setFromEuler(this),this.setFromQuaternion(Bh,e)}equals(e){return e._x===this._x&&e._y===this._y&&e._z===this._z&&e._order===this._order}fromArray(e){return this._x=e[0],this._y=e[1],this._z=e[2],e[3]!==void 0&&(this._order=e[3]),this._onChangeCallback(),this}toArray(e=[],t=0){return e[t]=this._x,e[t+1]=this._y,e[t+2]=this._z,e[t+3]=this._order,e}_onChange(e){return this._onChangeCallback=e,this}_onChangeCallback(){}*[Symbol.iterator](){yield this._x,yield this._y,yield this._z,yield this._order}}Ci.DEFAULT_ORDER="XYZ";class pu{constructor(){this.mask=1}set(e){this.mask=(1<<e|0)>>>0}enable(e){this.mask|=1<<e|0}enableAll(){this.mask=-1}toggle(e){this.mask^=1<<e|0}disable(e){this.mask&=~(1<<e|0)}disableAll(){this.mask=0}test(e){return(this.mask&e.mask)!==0}isEnabled(e){return(this.mask&(1<<e|0))!==0}}let U_=0;const zh=new z,nr=new Ns,Ni=new Xt,Oa=new z,Wr=new z,I_=new z,N_=new Ns,kh=new z(1,0,0),Hh=new z(0,1,0),Vh=new z(0,0,1),Gh={type:"added"},F_={type:"removed"},ir={type:"childadded",child:null},ml={type:"childremoved",child:null};class nn extends Bs{constructor(){super(),this.isObject3D=!0,Object.defineProperty(this,"id",{value:U_++}),this.uuid=ma(),this.name="",this.type="Object3D",this.parent=null,this.children=[],this.up=nn.DEFAULT_UP.clone();const e=new z,t=new Ci,n=new Ns,s=new z(1,1,1);function r(){n.setFromEuler(t,!1)}function a(){t.setFromQuaternion(n,void 0,!1)}t._onChange(r),n._onChange(a),Object.defineProperties(this,{position:{configurable:!0,enumerable:!0,value:e},rotation:{configurable:!0,enumerable:!0,value:t},quaternion:{configurable:!0,enumerable:!0,value:n},scale:{configurable:!0,enumerable:!0,value:s},modelViewMatrix:{value:new Xt},normalMatrix:{value:new st}}),this.matrix=new Xt,this.matrixWorld=new Xt,this.matrixAutoUpdate=nn.DEFAULT_MATRIX_AUTO_UPDATE,this.matrixWorldAutoUpdate=nn.DEFAULT_MATRIX_WORLD_AUTO_UPDATE,this.matrixWorldNeedsUpdate=!1,this.layers=new pu,this.visible=!0,this.castShadow=!1,this.receiveShadow=!1,this.frustumCulled=!0,this.renderOrder=0,this.animations=[],this.customDepthMaterial=void 0,this.customDistanceMaterial=void 0,this.userData={}}onBeforeShadow(){}onAfterShadow(){}onBeforeRender(){}onAfterRender(){}applyMatrix4(e){this.matrixAutoUpdate&&this.updateMatrix(),this.matrix.premultiply(e),this.matrix.decompose(this.position,this.quaternion,this.scale)}applyQuaternion(e){return this.quaternion.premultiply(e),this}setRotationFromAxisAngle(e,t){this.quaternion.setFromAxisAngle(e,t)}setRotationFromEuler(e){this.quaternion.setFromEuler(e,!0)}setRotationFromMatrix(e){this.quaternion.setFromRotationMatrix(e)}setRotationFromQuaternion(e){this.quaternion.copy(e)}rotateOnAxis(e,t){return nr.setFromAxisAngle(e,t),this.quaternion.multiply(nr),this}rotateOnWorldAxis(e,t){return nr.setFromAxisAngle(e,t),this.quaternion.premultiply(nr),this}rotateX(e){return this.rotateOnAxis(kh,e)}rotateY(e){return this.rotateOnAxis(Hh,e)}rotateZ(e){return this.rotateOnAxis(Vh,e)}translateOnAxis(e,t){return zh.copy(e).applyQuaternion(this.quaternion),this.position.add(zh.multiplyScalar(t)),this}translateX(e){return this.translateOnAxis(kh,e)}translateY(e){return this.translateOnAxis(Hh,e)}translateZ(e){return this.translateOnAxis(Vh,e)}localToWorld(e){return this.updateWorldMatrix(!0,!1),e.applyMatrix4(this.matrixWorld)}worldToLocal(e){return this.updateWorldMatrix(!0,!1),e.applyMatrix4(Ni.copy(this.matrixWorld).invert())}lookAt(e,t,n){e.isVector3?Oa.copy(e):Oa.set(e,t,n);const s=this.parent;this.updateWorldMatrix(!0,!1),Wr.setFromMatrixPosition(this.matrixWorld),this.isCamera||this.isLight?Ni.lookAt(Wr,Oa,this.up):Ni.lookAt(Oa,Wr,this.up),this.quaternion.setFromRotationMatrix(Ni),s&&(Ni.extractRotation(s.matrixWorld),nr.setFromRotationMatrix(Ni),this.quaternion.premultiply(nr.invert()))}add(e){if(arguments.length>1){for(let t=0;t<arguments.length;t++)this.add(arguments[t]);return this}return e===this?(console.error("THREE.Object3D.add: object can't be added as a child of itself.",e),this):(e&&e.isObject3D?(e.removeFromParent(),e.parent=this,this.children.push(e),e.dispatchEvent(Gh),ir.child=e,this.dispatchEvent(ir),ir.child=null):console.error("THREE.Object3D.add: object not an instance of THREE.Object3D.",e),this)}remove(e){if(arguments.length>1){for(let n=0;n<arguments.length;n++)this.remove(arguments[n]);return this}const t=this.children.indexOf(e);return t!==-1&&(e.parent=null,this.children.splice(t,1),e.dispatchEvent(F_),ml.child=e,this.dispatchEvent(ml),ml.child=null),this}removeFromParent(){const e=this.parent;return e!==null&&e.remove(this),this}clear(){return this.remove(...this.children)}attach(e){return this.updateWorldMatrix(!0,!1),Ni.copy(this.matrixWorld).invert(),e.parent!==null&&(e.parent.updateWorldMatrix(!0,!1),Ni.multiply(e.parent.matrixWorld)),e.applyMatrix4(Ni),e.removeFromParent(),e.parent=this,this.children.push(e),e.updateWorldMatrix(!1,!0),e.dispatchEvent(Gh),ir.child=e,this.dispatchEvent(ir),ir.child=null,this}getObjectById(e){return this.getObjectByProperty("id",e)}getObjectByName(e){return this.getObjectByProperty("name",e)}getObjectByProperty(e,t){if(this[e]===t)return this;for(let n=0,s=this.children.length;n<s;n++){const a=this.children[n].getObjectByProperty(e,t);if(a!==void 0)return a}}getObjectsByProperty(e,t,n=[]){this[e]===t&&n.push(this);const s=this.children;for(let r=0,a=s.length;r<a;r++)s[r].getObjectsByProperty(e,t,n);return n}getWorldPosition(e){return this.updateWorldMatrix(!0,!1),e.setFromMatrixPosition(this.matrixWorld)}getWorldQuaternion(e){return this.updateWorldMatrix(!0,!1),this.matrixWorld.decompose(Wr,e,I_),e}getWorldScale(e){return this.updateWorldMatrix(!0,!1),this.matrixWorld.decompose(Wr,N_,e),e}getWorldDirection(e){this.updateWorldMatrix(!0,!1);const t=this.matrixWorld.elements;return e.set(t[8],t[9],t[10]).normalize()}raycast(){}traverse(e){e(this);const t=this.children;for(let n=0,s=t.length;n<s;n++)t[n].traverse(e)}traverseVisible(e){if(this.visible===!1)return;e(this);const t=this.children;for(let n=0,s=t.length;n<s;n++)t[n].traverseVisible(e)}traverseAncestors(e){const t=this.parent;t!==null&&(e(t),t.traverseAncestors(e))}updateMatrix(){this.matrix.compose(this.position,this.quaternion,this.scale),this.matrixWorldNeedsUpdate=!0}updateMatrixWorld(e){this.matrixAutoUpdate&&this.updateMatrix(),(this.matrixWorldNeedsUpdate||e)&&(this.matrixWorldAutoUpdate===!0&&(this.parent===null?this.matrixWorld.copy(this.matrix):this.matrixWorld.multiplyMatrices(this.parent.matrixWorld,this.matrix)),this.matrixWorldNeedsUpdate=!1,e=!0);const t=this.children;for(let n=0,s=t.length;n<s;n++)t[n].updateMatrixWorld(e)}updateWorldMatrix(e,t){const n=this.parent;if(e===!0&&n!==null&&n.updateWorldMatrix(!0,!1),this.matrixAutoUpdate&&this.updateMatrix(),this.matrixWorldAutoUpdate===!0&&(this.parent===null?this.matrixWorld.copy(this.matrix):this.matrixWorld.multiplyMatrices(this.parent.matrixWorld,this.matrix)),t===!0){const s=this.children;for(let r=0,a=s.length;r<a;r++)s[r].updateWorldMatrix(!1,!0)}}toJSON(e){const t=e===void 0||typeof e=="string",n={};t&&(e={geometries:{},materials:{},textures:{},images:{},shapes:{},skeletons:{},animations:{},nodes:{}},n.metadata={version:4.7,type:"Object",generator:"Object3D.toJSON"});const s={};s.uuid=this.uuid,s.type=this.type,this.name!==""&&(s.name=this.name),this.castShadow===!0&&(s.castShadow=!0),this.receiveShadow===!0&&(s.receiveShadow=!0),this.visible===!1&&(s.visible=!1),this.frustumCulled===!1&&(s.frustumCulled=!1),this.renderOrder!==0&&(s.renderOrder=this.renderOrder),Object.keys(this.userData).length>0&&(s.userData=this.userData),s.layers=this.layers.mask,s.matrix=this.matrix.toArray(),s.up=this.up.toArray(),this.matrixAutoUpdate===!1&&(s.matrixAutoUpdate=!1),this.isInstancedMesh&&(s.type="InstancedMesh",s.count=this.count,s.instanceMatrix=this.instanceMatrix.toJSON(),this.instanceColor!==null&&(s.instanceColor=this.instanceColor.toJSON())),this.isBatchedMesh&&(s.type="BatchedMesh",s.perObjectFrustumCulled=this.perObjectFrustumCulled,s.sortObjects=this.sortObjects,s.drawRanges=this._drawRanges,s.reservedRanges=this._reservedRanges,s.geometryInfo=this._geometryInfo.map(o=>({...o,boundingBox:o.boundingBox?o.boundingBox.toJSON():void 0,boundingSphere:o.boundingSphere?o.boundingSphere.toJSON():void 0})),s.instanceInfo=this._instanceInfo.map(o=>({...o})),s.availableInstanceIds=this._availableInstanceIds.slice(),s.availableGeometryIds=this._availableGeometryIds.slice(),s.nextIndexStart=this._nextIndexStart,s.nextVertexStart=this._nextVertexStart,s.geometryCount=this._geometryCount,s.maxInstanceCount=this._maxInstanceCount,s.maxVertexCount=this._maxVertexCount,s.maxIndexCount=this._maxIndexCount,s.geometryInitialized=this._geometryInitialized,s.matricesTexture=this._matricesTexture.toJSON(e),s.indirectTexture=this._indirectTexture.toJSON(e),this._colorsTexture!==null&&(s.colorsTexture=this._colorsTexture.toJSON(e)),this.boundingSphere!==null&&(s.boundingSphere=this.boundingSphere.toJSON()),this.boundingBox!==null&&(s.boundingBox=this.boundingBox.toJSON()));function r(o,l){return o[l.uuid]===void 0&&(o[l.uuid]=l.toJSON(e)),l.uuid}if(this.isScene)this.background&&(this.background.isColor?s.background=this.background.toJSON():this.background.isTexture&&(s.background=this.background.toJSON(e).uuid)),this.environment&&this.environment.isTexture&&this.environment.isRenderTargetTexture!==!0&&(s.environment=this.environment.toJSON(e).uuid);else if(this.isMesh||this.isLine||this.isPoints){s.geometry=r(e.geometries,this.geometry);const o=this.geometry.parameters;if(o!==void 0&&o.shapes!==void 0){const l=o.shapes;if(Array.isArray(l))for(let c=0,f=l.length;c<f;c++){const u=l[c];r(e.shapes,u)}else r(e.shapes,l)}}if(this.isSkinnedMesh&&(s.bindMode=this.bindMode,s.bindMatrix=this.bindMatrix.toArray(),this.skeleton!==void 0&&(r(e.skeletons,this.skeleton),s.skeleton=this.skeleton.uuid)),this.material!==void 0)if(Array.isArray(this.material)){const o=[];for(let l=0,c=this.material.length;l<c;l++)o.push(r(e.materials,this.material[l]));s.material=o}else s.material=r(e.materials,this.material);if(this.children.length>0){s.children=[];for(let o=0;o<this.children.length;o++)s.children.push(this.children[o].toJSON(e).object)}if(this.animations.length>0){s.animations=[];for(let o=0;o<this.animations.length;o++){const l=this.animations[o];s.animations.push(r(e.animations,l))}}if(t){const o=a(e.geometries),l=a(e.materials),c=a(e.textures),f=a(e.images),u=a(e.shapes),h=a(e.skeletons),p=a(e.animations),v=a(e.nodes);o.length>0&&(n.geometries=o),l.length>0&&(n.materials=l),c.length>0&&(n.textures=c),f.length>0&&(n.images=f),u.length>0&&(n.shapes=u),h.length>0&&(n.skeletons=h),p.length>0&&(n.animations=p),v.length>0&&(n.nodes=v)}return n.object=s,n;function a(o){const l=[];for(const c in o){const f=o[c];delete f.metadata,l.push(f)}return l}}clone(e){return new this.constructor().copy(this,e)}copy(e,t=!0){if(this.name=e.name,this.up.copy(e.up),this.position.copy(e.position),this.rotation.order=e.rotation.order,this.quaternion.copy(e.quaternion),this.scale.copy(e.scale),this.matrix.copy(e.matrix),this.matrixWorld.copy(e.matrixWorld),this.matrixAutoUpdate=e.matrixAutoUpdate,this.matrixWorldAutoUpdate=e.matrixWorldAutoUpdate,this.matrixWorldNeedsUpdate=e.matrixWorldNeedsUpdate,this.layers.mask=e.layers.mask,this.visible=e.visible,this.castShadow=e.castShadow,this.receiveShadow=e.receiveShadow,this.frustumCulled=e.frustumCulled,this.renderOrder=e.renderOrder,this.animations=e.animations.slice(),this.userData=JSON.parse(JSON.stringify(e.userData)),t===!0)for(let n=0;n<e.children.length;n++){const s=e.children[n];this.add(s.clone())}return this}}nn.DEFAULT_UP=new z(0,1,0);nn.DEFAULT_MATRIX_AUTO_UPDATE=!0;nn.DEFAULT_MATRIX_WORLD_AUTO_UPDATE=!0;const ui=new z,Fi=new z,gl=new z,Oi=new z,sr=new z,rr=new z,Wh=new z,_l=new z,vl=new z,xl=new z,Ml=new $t,Sl=new $t,yl=new $t;class pi{constructor(e=new z,t=new z,n=new z){this.a=e,this.b=t,this.c=n}static getNormal(e,t,n,s){s.subVectors(n,t),ui.subVectors(e,t),s.cross(ui);const r=s.lengthSq();return r>0?s.multiplyScalar(1/Math.sqrt(r)):s.set(0,0,0)}static getBarycoord(e,t,n,s,r){ui.subVectors(s,t),Fi.subVectors(n,t),gl.subVectors(e,t);const a=ui.dot(ui),o=ui.dot(Fi),l=ui.dot(gl),c=Fi.dot(Fi),f=Fi.dot(gl),u=a*c-o*o;if(u===0)return r.set(0,0,0),null;const h=1/u,p=(c*l-o*f)*h,v=(a*f-o*l)*h;return r.set(1-p-v,v,p)}static containsPoint(e,t,n,s){return this.getBarycoord(e,t,n,s,Oi)===null?!1:Oi.x>=0&&Oi.y>=0&&Oi.x+Oi.y<=1}static getInterpolation(e,t,n,s,r,a,o,l){return this.getBarycoord(e,t,n,s,Oi)===null?(l.x=0,l.y=0,"z"in l&&(l.z=0),"w"in l&&(l.w=0),null):(l.setScalar(0),l.addScaledVector(r,Oi.x),l.addScaledVector(a,Oi.y),l.addScaledVector(o,Oi.z),l)}static getInterpolatedAttribute(e,t,n,s,r,a){return Ml.setScalar(0),Sl.setScalar(0),yl.setScalar(0),Ml.fromBufferAttribute(e,t),Sl.fromBufferAttribute(e,n),yl.fromBufferAttribute(e,s),a.setScalar(0),a.addScaledVector(Ml,r.x),a.addScaledVector(Sl,r.y),a.addScaledVector(yl,r.z),a}static isFrontFacing(e,t,n,s){return ui.subVectors(n,t),Fi.subVectors(e,t),ui.cross(Fi).dot(s)<0}set(e,t,n){return this.a.copy(e),this.b.copy(t),this.c.copy(n),this}setFromPointsAndIndices(e,t,n,s){return this.a.copy(e[t]),this.b.copy(e[n]),this.c.copy(e[s]),this}setFromAttributeAndIndices(e,t,n,s){return this.a.fromBufferAttribute(e,t),this.b.fromBufferAttribute(e,n),this.c.fromBufferAttribute(e,s),this}clone(){return new this.constructor().copy(this)}copy(e){return this.a.copy(e.a),this.b.copy(e.b),this.c.copy(e.c),this}getArea(){return ui.subVectors(this.c,this.b),Fi.subVectors(this.a,this.b),ui.cross(Fi).length()*.5}getMidpoint(e){return e.addVectors(this.a,this.b).add(this.c).multiplyScalar(1/3)}getNormal(e){return pi.getNormal(this.a,this.b,this.c,e)}getPlane(e){return e.setFromCoplanarPoints(this.a,this.b,this.c)}getBarycoord(e,t){return pi.getBarycoord(e,this.a,this.b,this.c,t)}getInterpolation(e,t,n,s,r){return pi.getInterpolation(e,this.a,this.b,this.c,t,n,s,r)}containsPoint(e){return pi.containsPoint(e,this.a,this.b,this.c)}isFrontFacing(e){return pi.isFrontFacing(this.a,this.b,this.c,e)}intersectsBox(e){return e.intersectsTriangle(this)}closestPointToPoint(e,t){const n=this.a,s=this.b,r=this.c;let a,o;sr.subVectors(s,n),rr.subVectors(r,n),_l.subVectors(e,n);const l=sr.dot(_l),c=rr.dot(_l);if(l<=0&&c<=0)return t.copy(n);vl.subVectors(e,s);const f=sr.dot(vl),u=rr.dot(vl);if(f>=0&&u<=f)return t.copy(s);const h=l*u-f*c;if(h<=0&&l>=0&&f<=0)return a=l/(l-f),t.copy(n).addScaledVector(sr,a);xl.subVectors(e,r);const p=sr.dot(xl),v=rr.dot(xl);if(v>=0&&p<=v)return t.copy(r);const M=p*c-l*v;if(M<=0&&c>=0&&v<=0)return o=c/(c-v),t.copy(n).addScaledVector(rr,o);const m=f*v-p*u;if(m<=0&&u-f>=0&&p-v>=0)return Wh.subVectors(r,s),o=(u-f)/(u-f+(p-v)),t.copy(s).addScaledVector(Wh,o);const d=1/(m+M+h);return a=M*d,o=h*d,t.copy(n).addScaledVector(sr,a).addScaledVector(rr,o)}equals(e){return e.a.equals(this.a)&&e.b.equals(this.b)&&e.c.equals(this.c)}}const Yd={aliceblue:15792383,antiquewhite:16444375,aqua:65535,aquamarine:8388564,azure:15794175,beige:16119260,bisque:16770244,black:0,blanchedalmond:16772045,blue:255,blueviolet:9055202,brown:10824234,burlywood:14596231,cadetblue:6266528,chartreuse:8388352,chocolate:13789470,coral:16744272,cornflowerblue:6591981,cornsilk:16775388,crimson:14423100,cyan:65535,darkblue:139,darkcyan:35723,darkgoldenrod:12092939,darkgray:11119017,darkgreen:25600,darkgrey:11119017,darkkhaki:12433259,darkmagenta:9109643,darkolivegreen:5597999,darkorange:16747520,darkorchid:10040012,darkred:9109504,darksalmon:15308410,darkseagreen:9419919,darkslateblue:4734347,darkslategray:3100495,darkslategrey:3100495,darkturquoise:52945,darkviolet:9699539,deeppink:16716947,deepskyblue:49151,dimgray:6908265,dimgrey:6908265,dodgerblue:2003199,firebrick:11674146,floralwhite:16775920,forestgreen:2263842,fuchsia:16711935,gainsboro:14474460,ghostwhite:16316671,gold:16766720,goldenrod:14329120,gray:8421504,green:32768,greenyellow:11403055,grey:8421504,honeydew:15794160,hotpink:16738740,indianred:13458524,indigo:4915330,ivory:16777200,khaki:15787660,lavender:15132410,lavenderblush:16773365,lawngreen:8190976,lemonchiffon:16775885,lightblue:11393254,lightcoral:15761536,lightcyan:14745599,lightgoldenrodyellow:16448210,lightgray:13882323,lightgreen:9498256,lightgrey:13882323,lightpink:16758465,lightsalmon:16752762,lightseagreen:2142890,lightskyblue:8900346,lightslategray:7833753,lightslategrey:7833753,lightsteelblue:11584734,lightyellow:16777184,lime:65280,limegreen:3329330,linen:16445670,magenta:16711935,maroon:8388608,mediumaquamarine:6737322,mediumblue:205,mediumorchid:12211667,mediumpurple:9662683,mediumseagreen:3978097,mediumslateblue:8087790,mediumspringgreen:64154,mediumturquoise:4772300,mediumvioletred:13047173,midnightblue:1644912,mintcream:16121850,mistyrose:16770273,moccasin:16770229,navajowhite:16768685,navy:128,oldlace:16643558,olive:8421376,olivedrab:7048739,orange:16753920,orangered:16729344,orchid:14315734,palegoldenrod:15657130,palegreen:10025880,paleturquoise:11529966,palevioletred:14381203,papayawhip:16773077,peachpuff:16767673,peru:13468991,pink:16761035,plum:14524637,powderblue:11591910,purple:8388736,rebeccapurple:6697881,red:16711680,rosybrown:12357519,royalblue:4286945,saddlebrown:9127187,salmon:16416882,sandybrown:16032864,seagreen:3050327,seashell:16774638,sienna:10506797,silver:12632256,skyblue:8900331,slateblue:6970061,slategray:7372944,slategrey:7372944,snow:16775930,springgreen:65407,steelblue:4620980,tan:13808780,teal:32896,thistle:14204888,tomato:16737095,turquoise:4251856,violet:15631086,wheat:16113331,white:16777215,whitesmoke:16119285,yellow:16776960,yellowgreen:10145074},es={h:0,s:0,l:0},Ba={h:0,s:0,l:0};function El(i,e,t){return t<0&&(t+=1),t>1&&(t-=1),t<1/6?i+(e-i)*6*t:t<1/2?e:t<2/3?i+(e-i)*6*(2/3-t):i}class ot{constructor(e,t,n){return this.isColor=!0,this.r=1,this.g=1,this.b=1,this.set(e,t,n)}set(e,t,n){if(t===void 0&&n===void 0){const s=e;s&&s.isColor?this.copy(s):typeof s=="number"?this.setHex(s):typeof s=="string"&&this.setStyle(s)}else this.setRGB(e,t,n);return this}setScalar(e){return this.r=e,this.g=e,this.b=e,this}setHex(e,t=ni){return e=Math.floor(e),this.r=(e>>16&255)/255,this.g=(e>>8&255)/255,this.b=(e&255)/255,_t.colorSpaceToWorking(this,t),this}setRGB(e,t,n,s=_t.workingColorSpace){return this.r=e,this.g=t,this.b=n,_t.colorSpaceToWorking(this,s),this}setHSL(e,t,n,s=_t.workingColorSpace){if(e=M_(e,1),t=ct(t,0,1),n=ct(n,0,1),t===0)this.r=this.g=this.b=n;else{const r=n<=.5?n*(1+t):n+t-n*t,a=2*n-r;this.r=El(a,r,e+1/3),this.g=El(a,r,e),this.b=El(a,r,e-1/3)}return _t.colorSpaceToWorking(this,s),this}setStyle(e,t=ni){function n(r){r!==void 0&&parseFloat(r)<1&&console.warn("THREE.Color: Alpha component of "+e+" will be ignored.")}let s;if(s=/^(\w+)\(([^\)]*)\)/.exec(e)){let r;const a=s[1],o=s[2];switch(a){case"rgb":case"rgba":if(r=/^\s*(\d+)\s*,\s*(\d+)\s*,\s*(\d+)\s*(?:,\s*(\d*\.?\d+)\s*)?$/.exec(o))return n(r[4]),this.setRGB(Math.min(255,parseInt(r[1],10))/255,Math.min(255,parseInt(r[2],10))/255,Math.min(255,parseInt(r[3],10))/255,t);if(r=/^\s*(\d+)\%\s*,\s*(\d+)\%\s*,\s*(\d+)\%\s*(?:,\s*(\d*\.?\d+)\s*)?$/.exec(o))return n(r[4]),this.setRGB(Math.min(100,parseInt(r[1],10))/100,Math.min(100,parseInt(r[2],10))/100,Math.min(100,parseInt(r[3],10))/100,t);break;case"hsl":case"hsla":if(r=/^\s*(\d*\.?\d+)\s*,\s*(\d*\.?\d+)\%\s*,\s*(\d*\.?\d+)\%\s*(?:,\s*(\d*\.?\d+)\s*)?$/.exec(o))return n(r[4]),this.setHSL(parseFloat(r[1])/360,parseFloat(r[2])/100,parseFloat(r[3])/100,t);break;default:console.warn("THREE.Color: Unknown color model "+e)}}else if(s=/^\#([A-Fa-f\d]+)$/.exec(e)){const r=s[1],a=r.length;if(a===3)return this.setRGB(parseInt(r.charAt(0),16)/15,parseInt(r.charAt(1),16)/15,parseInt(r.charAt(2),16)/15,t);if(a===6)return this.setHex(parseInt(r,16),t);console.warn("THREE.Color: Invalid hex color "+e)}else if(e&&e.length>0)return this.setColorName(e,t);return this}setColorName(e,t=ni){const n=Yd[e.toLowerCase()];return n!==void 0?this.setHex(n,t):console.warn("THREE.Color: Unknown color "+e),this}clone(){return new this.constructor(this.r,this.g,this.b)}copy(e){return this.r=e.r,this.g=e.g,this.b=e.b,this}copySRGBToLinear(e){return this.r=Gi(e.r),this.g=Gi(e.g),this.b=Gi(e.b),this}copyLinearToSRGB(e){return this.r=gr(e.r),this.g=gr(e.g),this.b=gr(e.b),this}convertSRGBToLinear(){return this.copySRGBToLinear(this),this}convertLinearToSRGB(){return this.copyLinearToSRGB(this),this}getHex(e=ni){return _t.workingToColorSpace(Sn.copy(this),e),Math.round(ct(Sn.r*255,0,255))*65536+Math.round(ct(Sn.g*255,0,255))*256+Math.round(ct(Sn.b*255,0,255))}getHexString(e=ni){return("000000"+this.getHex(e).toString(16)).slice(-6)}getHSL(e,t=_t.workingColorSpace){_t.workingToColorSpace(Sn.copy(this),t);const n=Sn.r,s=Sn.g,r=Sn.b,a=Math.max(n,s,r),o=Math.min(n,s,r);let l,c;const f=(o+a)/2;if(o===a)l=0,c=0;else{const u=a-o;switch(c=f<=.5?u/(a+o):u/(2-a-o),a){case n:l=(s-r)/u+(s<r?6:0);break;case s:l=(r-n)/u+2;break;case r:l=(n-s)/u+4;break}l/=6}return e.h=l,e.s=c,e.l=f,e}getRGB(e,t=_t.workingColorSpace){return _t.workingToColorSpace(Sn.copy(this),t),e.r=Sn.r,e.g=Sn.g,e.b=Sn.b,e}getStyle(e=ni){_t.workingToColorSpace(Sn.copy(this),e);const t=Sn.r,n=Sn.g,s=Sn.b;return e!==ni?`color(${e} ${t.toFixed(3)} ${n.toFixed(3)} ${s.toFixed(3)})`:`rgb(${Math.round(t*255)},${Math.round(n*255)},${Math.round(s*255)})`}offsetHSL(e,t,n){return this.getHSL(es),this.setHSL(es.h+e,es.s+t,es.l+n)}add(e){return this.r+=e.r,this.g+=e.g,this.b+=e.b,this}addColors(e,t){return this.r=e.r+t.r,this.g=e.g+t.g,this.b=e.b+t.b,this}addScalar(e){return this.r+=e,this.g+=e,this.b+=e,this}sub(e){return this.r=Math.max(0,this.r-e.r),this.g=Math.max(0,this.g-e.g),this.b=Math.max(0,this.b-e.b),this}multiply(e){return this.r*=e.r,this.g*=e.g,this.b*=e.b,this}multiplyScalar(e){return this.r*=e,this.g*=e,this.b*=e,this}lerp(e,t){return this.r+=(e.r-this.r)*t,this.g+=(e.g-this.g)*t,this.b+=(e.b-this.b)*t,this}lerpColors(e,t,n){return this.r=e.r+(t.r-e.r)*n,this.g=e.g+(t.g-e.g)*n,this.b=e.b+(t.b-e.b)*n,this}lerpHSL(e,t){this.getHSL(es),e.getHSL(Ba);const n=rl(es.h,Ba.h,t),s=rl(es.s,Ba.s,t),r=rl(es.l,Ba.l,t);return this.setHSL(n,s,r),this}setFromVector3(e){return this.r=e.x,this.g=e.y,this.b=e.z,this}applyMatrix3(e){const t=this.r,n=this.g,s=this.b,r=e.elements;return this.r=r[0]*t+r[3]*n+r[6]*s,this.g=r[1]*t+r[4]*n+r[7]*s,this.b=r[2]*t+r[5]*n+r[8]*s,this}equals(e){return e.r===this.r&&e.g===this.g&&e.b===this.b}fromArray(e,t=0){return this.r=e[t],this.g=e[t+1],this.b=e[t+2],this}toArray(e=[],t=0){return e[t]=this.r,e[t+1]=this.g,e[t+2]=this.b,e}fromBufferAttribute(e,t){return this.r=e.getX(t),this.g=e.getY(t),this.b=e.getZ(t),this}toJSON(){return this.getHex()}*[Symbol.iterator](){yield this.r,yield this.g,yield this.b}}const Sn=new ot;ot.NAMES=Yd;let O_=0;class zs extends Bs{constructor(){super(),this.isMaterial=!0,Object.defineProperty(this,"id",{value:O_++}),this.uuid=ma(),this.name="",this.type="Material",this.blending=mr,this.side=cs,this.vertexColors=!1,this.opacity=1,this.transparent=!1,this.alphaHash=!1,this.blendSrc=Zl,this.blendDst=Jl,this.blendEquation=As,this.blendSrcAlpha=null,this.blendDstAlpha=null,this.blendEquationAlpha=null,this.blendColor=new ot(0,0,0),this.blendAlpha=0,this.depthFunc=Sr,this.depthTest=!0,this.depthWrite=!0,this.stencilWriteMask=255,this.stencilFunc=Ph,this.stencilRef=0,this.stencilFuncMask=255,this.stencilFail=Ks,this.stencilZFail=Ks,this.stencilZPass=Ks,this.stencilWrite=!1,this.clippingPlanes=null,this.clipIntersection=!1,this.clipShadows=!1,this.shadowSide=null,this.colorWrite=!0,this.precision=null,this.polygonOffset=!1,this.polygonOffsetFactor=0,this.polygonOffsetUnits=0,this.dithering=!1,this.alphaToCoverage=!1,this.premultipliedAlpha=!1,this.forceSinglePass=!1,this.allowOverride=!0,this.visible=!0,this.toneMapped=!0,this.userData={},this.version=0,this._alphaTest=0}get alphaTest(){return this._alphaTest}set alphaTest(e){this._alphaTest>0!=e>0&&this.version++,this._alphaTest=e}onBeforeRender(){}onBeforeCompile(){}customProgramCacheKey(){return this.onBeforeCompile.toString()}setValues(e){if(e!==void 0)for(const t in e){const n=e[t];if(n===void 0){console.warn(`THREE.Material: parameter '${t}' has value of undefined.`);continue}const s=this[t];if(s===void 0){console.warn(`THREE.Material: '${t}' is not a property of THREE.${this.type}.`);continue}s&&s.isColor?s.set(n):s&&s.isVector3&&n&&n.isVector3?s.copy(n):this[t]=n}}toJSON(e){const t=e===void 0||typeof e=="string";t&&(e={textures:{},images:{}});const n={metadata:{version:4.7,type:"Material",generator:"Material.toJSON"}};n.uuid=this.uuid,n.type=this.type,this.name!==""&&(n.name=this.name),this.color&&this.color.isColor&&(n.color=this.color.getHex()),this.roughness!==void 0&&(n.roughness=this.roughness),this.metalness!==void 0&&(n.metalness=this.metalness),this.sheen!==void 0&&(n.sheen=this.sheen),this.sheenColor&&this.sheenColor.isColor&&(n.sheenColor=this.sheenColor.getHex()),this.sheenRoughness!==void 0&&(n.sheenRoughness=this.sheenRoughness),this.emissive&&this.emissive.isColor&&(n.emissive=this.emissive.getHex()),this.emissiveIntensity!==void 0&&this.emissiveIntensity!==1&&(n.emissiveIntensity=this.emissiveIntensity),this.specular&&this.specular.isColor&&(n.specular=this.specular.getHex()),this.specularIntensity!==void 0&&(n.specularIntensity=this.specularIntensity),this.specularColor&&this.specularColor.isColor&&(n.specularColor=this.specularColor.getHex()),this.shininess!==void 0&&(n.shininess=this.shininess),this.clearcoat!==void 0&&(n.clearcoat=this.clearcoat),this.clearcoatRoughness!==void 0&&(n.clearcoatRoughness=this.clearcoatRoughness),this.clearcoatMap&&this.clearcoatMap.isTexture&&(n.clearcoatMap=this.clearcoatMap.toJSON(e).uuid),this.clearcoatRoughnessMap&&this.clearcoatRoughnessMap.isTexture&&(n.clearcoatRoughnessMap=this.clearcoatRoughnessMap.toJSON(e).uuid),this.clearcoatNormalMap&&this.clearcoatNormalMap.isTexture&&(n.clearcoatNormalMap=this.clearcoatNormalMap.toJSON(e).uuid,n.clearcoatNormalScale=this.clearcoatNormalScale.toArray()),this.sheenColorMap&&this.sheenColorMap.isTexture&&(n.sheenColorMap=this.sheenColorMap.toJSON(e).uuid),this.sheenRoughnessMap&&this.sheenRoughnessMap.isTexture&&(n.sheenRoughnessMap=this.sheenRoughnessMap.toJSON(e).uuid),this.dispersion!==void 0&&(n.dispersion=this.dispersion),this.iridescence!==void 0&&(n.iridescence=this.iridescence),this.iridescenceIOR!==void 0&&(n.iridescenceIOR=this.iridescenceIOR),this.iridescenceThicknessRange!==void 0&&(n.iridescenceThicknessRange=this.iridescenceThicknessRange),this.iridescenceMap&&this.iridescenceMap.isTexture&&(n.iridescenceMap=this.iridescenceMap.toJSON(e).uuid),this.iridescenceThicknessMap&&this.iridescenceThicknessMap.isTexture&&(n.iridescenceThicknessMap=this.iridescenceThicknessMap.toJSON(e).uuid),this.anisotropy!==void 0&&(n.anisotropy=this.anisotropy),this.anisotropyRotation!==void 0&&(n.anisotropyRotation=this.anisotropyRotation),this.anisotropyMap&&this.anisotropyMap.isTexture&&(n.anisotropyMap=this.anisotropyMap.toJSON(e).uuid),this.map&&this.map.isTexture&&(n.map=this.map.toJSON(e).uuid),this.matcap&&this.matcap.isTexture&&(n.matcap=this.matcap.toJSON(e).uuid),this.alphaMap&&this.alphaMap.isTexture&&(n.alphaMap=this.alphaMap.toJSON(e).uuid),this.lightMap&&this.lightMap.isTexture&&(n.lightMap=this.lightMap.toJSON(e).uuid,n.lightMapIntensity=this.lightMapIntensity),this.aoMap&&this.aoMap.isTexture&&(n.aoMap=this.aoMap.toJSON(e).uuid,n.aoMapIntensity=this.aoMapIntensity),this.bumpMap&&this.bumpMap.isTexture&&(n.bumpMap=this.bumpMap.toJSON(e).uuid,n.bumpScale=this.bumpScale),this.normalMap&&this.normalMap.isTexture&&(n.normalMap=this.normalMap.toJSON(e).uuid,n.normalMapType=this.normalMapType,n.normalScale=this.normalScale.toArray()),this.displacementMap&&this.displacementMap.isTexture&&(n.displacementMap=this.displacementMap.toJSON(e).uuid,n.displacementScale=this.displacementScale,n.displacementBias=this.displacementBias),this.roughnessMap&&this.roughnessMap.isTexture&&(n.roughnessMap=this.roughnessMap.toJSON(e).uuid),this.metalnessMap&&this.metalnessMap.isTexture&&(n.metalnessMap=this.metalnessMap.toJSON(e).uuid),this.emissiveMap&&this.emissiveMap.isTexture&&(n.emissiveMap=this.emissiveMap.toJSON(e).uuid),this.specularMap&&this.specularMap.isTexture&&(n.specularMap=this.specularMap.toJSON(e).uuid),this.specularIntensityMap&&this.specularIntensityMap.isTexture&&(n.specularIntensityMap=this.specularIntensityMap.toJSON(e).uuid),this.specularColorMap&&this.specularColorMap.isTexture&&(n.specularColorMap=this.specularColorMap.toJSON(e).uuid),this.envMap&&this.envMap.isTexture&&(n.envMap=this.envMap.toJSON(e).uuid,this.combine!==void 0&&(n.combine=this.combine)),this.envMapRotation!==void 0&&(n.envMapRotation=this.envMapRotation.toArray()),this.envMapIntensity!==void 0&&(n.envMapIntensity=this.envMapIntensity),this.reflectivity!==void 0&&(n.reflectivity=this.reflectivity),this.refractionRatio!==void 0&&(n.refractionRatio=this.refractionRatio),this.gradientMap&&this.gradientMap.isTexture&&(n.gradientMap=this.gradientMap.toJSON(e).uuid),this.transmission!==void 0&&(n.transmission=this.transmission),this.transmissionMap&&this.transmissionMap.isTexture&&(n.transmissionMap=this.transmissionMap.toJSON(e).uuid),this.thickness!==void 0&&(n.thickness=this.thickness),this.thicknessMap&&this.thicknessMap.isTexture&&(n.thicknessMap=this.thicknessMap.toJSON(e).uuid),this.attenuationDistance!==void 0&&this.attenuationDistance!==1/0&&(n.attenuationDistance=this.attenuationDistance),this.attenuationColor!==void 0&&(n.attenuationColor=this.attenuationColor.getHex()),this.size!==void 0&&(n.size=this.size),this.shadowSide!==null&&(n.shadowSide=this.shadowSide),this.sizeAttenuation!==void 0&&(n.sizeAttenuation=this.sizeAttenuation),this.blending!==mr&&(n.blending=this.blending),this.side!==cs&&(n.side=this.side),this.vertexColors===!0&&(n.vertexColors=!0),this.opacity<1&&(n.opacity=this.opacity),this.transparent===!0&&(n.transparent=!0),this.blendSrc!==Zl&&(n.blendSrc=this.blendSrc),this.blendDst!==Jl&&(n.blendDst=this.blendDst),this.blendEquation!==As&&(n.blendEquation=this.blendEquation),this.blendSrcAlpha!==null&&(n.blendSrcAlpha=this.blendSrcAlpha),this.blendDstAlpha!==null&&(n.blendDstAlpha=this.blendDstAlpha),this.blendEquationAlpha!==null&&(n.blendEquationAlpha=this.blendEquationAlpha),this.blendColor&&this.blendColor.isColor&&(n.blendColor=this.blendColor.getHex()),this.blendAlpha!==0&&(n.blendAlpha=this.blendAlpha),this.depthFunc!==Sr&&(n.depthFunc=this.depthFunc),this.depthTest===!1&&(n.depthTest=this.depthTest),this.depthWrite===!1&&(n.depthWrite=this.depthWrite),this.colorWrite===!1&&(n.colorWrite=this.colorWrite),this.stencilWriteMask!==255&&(n.stencilWriteMask=this.stencilWriteMask),this.stencilFunc!==Ph&&(n.stencilFunc=this.stencilFunc),this.stencilRef!==0&&(n.stencilRef=this.stencilRef),this.stencilFuncMask!==255&&(n.stencilFuncMask=this.stencilFuncMask),this.stencilFail!==Ks&&(n.stencilFail=this.stencilFail),this.stencilZFail!==Ks&&(n.stencilZFail=this.stencilZFail),this.stencilZPass!==Ks&&(n.stencilZPass=this.stencilZPass),this.stencilWrite===!0&&(n.stencilWrite=this.stencilWrite),this.rotation!==void 0&&this.rotation!==0&&(n.rotation=this.rotation),this.polygonOffset===!0&&(n.polygonOffset=!0),this.polygonOffsetFactor!==0&&(n.polygonOffsetFactor=this.polygonOffsetFactor),this.polygonOffsetUnits!==0&&(n.polygonOffsetUnits=this.polygonOffsetUnits),this.linewidth!==void 0&&this.linewidth!==1&&(n.linewidth=this.linewidth),this.dashSize!==void 0&&(n.dashSize=this.dashSize),this.gapSize!==void 0&&(n.gapSize=this.gapSize),this.scale!==void 0&&(n.scale=this.scale),this.dithering===!0&&(n.dithering=!0),this.alphaTest>0&&(n.alphaTest=this.alphaTest),this.alphaHash===!0&&(n.alphaHash=!0),this.alphaToCoverage===!0&&(n.alphaToCoverage=!0),this.premultipliedAlpha===!0&&(n.premultipliedAlpha=!0),this.forceSinglePass===!0&&(n.forceSinglePass=!0),this.wireframe===!0&&(n.wireframe=!0),this.wireframeLinewidth>1&&(n.wireframeLinewidth=this.wireframeLinewidth),this.wireframeLinecap!=="round"&&(n.wireframeLinecap=this.wireframeLinecap),this.wireframeLinejoin!=="round"&&(n.wireframeLinejoin=this.wireframeLinejoin),this.flatShading===!0&&(n.flatShading=!0),this.visible===!1&&(n.visible=!1),this.toneMapped===!1&&(n.toneMapped=!1),this.fog===!1&&(n.fog=!1),Object.keys(this.userData).length>0&&(n.userData=this.userData);function s(r){const a=[];for(const o in r){const l=r[o];delete l.metadata,a.push(l)}return a}if(t){const r=s(e.textures),a=s(e.images);r.length>0&&(n.textures=r),a.length>0&&(n.images=a)}return n}clone(){return new this.constructor().copy(this)}copy(e){this.name=e.name,this.blending=e.blending,this.side=e.side,this.vertexColors=e.vertexColors,this.opacity=e.opacity,this.transparent=e.transparent,this.blendSrc=e.blendSrc,this.blendDst=e.blendDst,this.blendEquation=e.blendEquation,this.blendSrcAlpha=e.blendSrcAlpha,this.blendDstAlpha=e.blendDstAlpha,this.blendEquationAlpha=e.blendEquationAlpha,this.blendColor.copy(e.blendColor),this.blendAlpha=e.blendAlpha,this.depthFunc=e.depthFunc,this.depthTest=e.depthTest,this.depthWrite=e.depthWrite,this.stencilWriteMask=e.stencilWriteMask,this.stencilFunc=e.stencilFunc,this.stencilRef=e.stencilRef,this.stencilFuncMask=e.stencilFuncMask,this.stencilFail=e.stencilFail,this.stencilZFail=e.stencilZFail,this.stencilZPass=e.stencilZPass,this.stencilWrite=e.stencilWrite;const t=e.clippingPlanes;let n=null;if(t!==null){const s=t.length;n=new Array(s);for(let r=0;r!==s;++r)n[r]=t[r].clone()}return this.clippingPlanes=n,this.clipIntersection=e.clipIntersection,this.clipShadows=e.clipShadows,this.shadowSide=e.shadowSide,this.colorWrite=e.colorWrite,this.precision=e.precision,this.polygonOffset=e.polygonOffset,this.polygonOffsetFactor=e.polygonOffsetFactor,this.polygonOffsetUnits=e.polygonOffsetUnits,this.dithering=e.dithering,this.alphaTest=e.alphaTest,this.alphaHash=e.alphaHash,this.alphaToCoverage=e.alphaToCoverage,this.premultipliedAlpha=e.premultipliedAlpha,this.forceSinglePass=e.forceSinglePass,this.visible=e.visible,this.toneMapped=e.toneMapped,this.userData=JSON.parse(JSON.stringify(e.userData)),this}dispose(){this.dispatchEvent({type:"dispose"})}set needsUpdate(e){e===!0&&this.version++}}class mu extends zs{constructor(e){super(),this.isMeshBasicMaterial=!0,this.type="MeshBasicMaterial",this.color=new ot(16777215),this.map=null,this.lightMap=null,this.lightMapIntensity=1,this.aoMap=null,this.aoMapIntensity=1,this.specularMap=null,this.alphaMap=null,this.envMap=null,this.envMapRotation=new Ci,this.combine=au,this.reflectivity=1,this.refractionRatio=.98,this.wireframe=!1,this.wireframeLinewidth=1,this.wireframeLinecap="round",this.wireframeLinejoin="round",this.fog=!0,this.setValues(e)}copy(e){return super.copy(e),this.color.copy(e.color),this.map=e.map,this.lightMap=e.lightMap,this.lightMapIntensity=e.lightMapIntensity,this.aoMap=e.aoMap,this.aoMapIntensity=e.aoMapIntensity,this.specularMap=e.specularMap,this.alphaMap=e.alphaMap,this.envMap=e.envMap,this.envMapRotation.copy(e.envMapRotation),this.combine=e.combine,this.reflectivity=e.reflectivity,this.refractionRatio=e.refractionRatio,this.wireframe=e.wireframe,this.wireframeLinewidth=e.wireframeLinewidth,this.wireframeLinecap=e.wireframeLinecap,this.wireframeLinejoin=e.wireframeLinejoin,this.fog=e.fog,this}}const Kt=new z,za=new tt;let B_=0;class zn{constructor(e,t,n=!1){if(Array.isArray(e))throw new TypeError("THREE.BufferAttribute: array should be a Typed Array.");this.isBufferAttribute=!0,Object.defineProperty(this,"id",{value:B_++}),this.name="",this.array=e,this.itemSize=t,this.count=e!==void 0?e.length/t:0,this.normalized=n,this.usage=Dh,this.updateRanges=[],this.gpuType=ki,this.version=0}onUploadCallback(){}set needsUpdate(e){e===!0&&this.version++}setUsage(e){return this.usage=e,this}addUpdateRange(e,t){this.updateRanges.push({start:e,count:t})}clearUpdateRanges(){this.updateRanges.length=0}copy(e){return this.name=e.name,this.array=new e.array.constructor(e.array),this.itemSize=e.itemSize,this.count=e.count,this.normalized=e.normalized,this.usage=e.usage,this.gpuType=e.gpuType,this}copyAt(e,t,n){e*=this.itemSize,n*=t.itemSize;for(let s=0,r=this.itemSize;s<r;s++)this.array[e+s]=t.array[n+s];return this}copyArray(e){return this.array.set(e),this}applyMatrix3(e){if(this.itemSize===2)for(let t=0,n=this.count;t<n;t++)za.fromBufferAttribute(this,t),za.applyMatrix3(e),this.setXY(t,za.x,za.y);else if(this.itemSize===3)for(let t=0,n=this.count;t<n;t++)Kt.fromBufferAttribute(this,t),Kt.applyMatrix3(e),this.setXYZ(t,Kt.x,Kt.y,Kt.z);return this}applyMatrix4(e){for(let t=0,n=this.count;t<n;t++)Kt.fromBufferAttribute(this,t),Kt.applyMatrix4(e),this.setXYZ(t,Kt.x,Kt.y,Kt.z);return this}applyNormalMatrix(e){for(let t=0,n=this.count;t<n;t++)Kt.fromBufferAttribute(this,t),Kt.applyNormalMatrix(e),this.setXYZ(t,Kt.x,Kt.y,Kt.z);return this}transformDirection(e){for(let t=0,n=this.count;t<n;t++)Kt.fromBufferAttribute(this,t),Kt.transformDirection(e),this.setXYZ(t,Kt.x,Kt.y,Kt.z);return this}set(e,t=0){return this.array.set(e,t),this}getComponent(e,t){let n=this.array[e*this.itemSize+t];return this.normalized&&(n=Hr(n,this.array)),n}setComponent(e,t,n){return this.normalized&&(n=Nn(n,this.array)),this.array[e*this.itemSize+t]=n,this}getX(e){let t=this.array[e*this.itemSize];return this.normalized&&(t=Hr(t,this.array)),t}setX(e,t){return this.normalized&&(t=Nn(t,this.array)),this.array[e*this.itemSize]=t,this}getY(e){let t=this.array[e*this.itemSize+1];return this.normalized&&(t=Hr(t,this.array)),t}setY(e,t){return this.normalized&&(t=Nn(t,this.array)),this.array[e*this.itemSize+1]=t,this}getZ(e){let t=this.array[e*this.itemSize+2];return this.normalized&&(t=Hr(t,this.array)),t}setZ(e,t){return this.normalized&&(t=Nn(t,this.array)),this.array[e*this.itemSize+2]=t,this}getW(e){let t=this.array[e*this.itemSize+3];return this.normalized&&(t=Hr(t,this.array)),t}setW(e,t){return this.normalized&&(t=Nn(t,this.array)),this.array[e*this.itemSize+3]=t,this}setXY(e,t,n){return e*=this.itemSize,this.normalized&&(t=Nn(t,this.array),n=Nn(n,this.array)),this.array[e+0]=t,this.array[e+1]=n,this}setXYZ(e,t,n,s){return e*=this.itemSize,this.normalized&&(t=Nn(t,this.array),n=Nn(n,this.array),s=Nn(s,this.array)),this.array[e+0]=t,this.array[e+1]=n,this.array[e+2]=s,this}setXYZW(e,t,n,s,r){return e*=this.itemSize,this.normalized&&(t=Nn(t,this.array),n=Nn(n,this.array),s=Nn(s,this.array),r=Nn(r,this.array)),this.array[e+0]=t,this.array[e+1]=n,this.array[e+2]=s,this.array[e+3]=r,this}onUpload(e){return this.onUploadCallback=e,this}clone(){return new this.constructor(this.array,this.itemSize).copy(this)}toJSON(){const e={itemSize:this.itemSize,type:this.array.constructor.name,array:Array.from(this.array),normalized:this.normalized};return this.name!==""&&(e.name=this.name),this.usage!==Dh&&(e.usage=this.usage),e}}class $d extends zn{constructor(e,t,n){super(new Uint16Array(e),t,n)}}class jd extends zn{constructor(e,t,n){super(new Uint32Array(e),t,n)}}class pn extends zn{constructor(e,t,n){super(new Float32Array(e),t,n)}}let z_=0;const Qn=new Xt,bl=new nn,ar=new z,Xn=new ga,Xr=new ga,dn=new z;class vn extends Bs{constructor(){super(),this.isBufferGeometry=!0,Object.defineProperty(this,"id",{value:z_++}),this.uuid=ma(),this.name="",this.type="BufferGeometry",this.index=null,this.indirect=null,this.attributes={},this.morphAttributes={},this.morphTargetsRelative=!1,this.groups=[],this.boundingBox=null,this.boundingSphere=null,this.drawRange={start:0,count:1/0},this.userData={}}getIndex(){return this.index}setIndex(e){return Array.isArray(e)?this.index=new(Xd(e)?jd:$d)(e,1):this.index=e,this}setIndirect(e){return this.indirect=e,this}getIndirect(){return this.indirect}getAttribute(e){return this.attributes[e]}setAttribute(e,t){return this.attributes[e]=t,this}deleteAttribute(e){return delete this.attributes[e],this}hasAttribute(e){return this.attributes[e]!==void 0}addGroup(e,t,n=0){this.groups.push({start:e,count:t,materialIndex:n})}clearGroups(){this.groups=[]}setDrawRange(e,t){this.drawRange.start=e,this.drawRange.count=t}applyMatrix4(e){const t=this.attributes.position;t!==void 0&&(t.applyMatrix4(e),t.needsUpdate=!0);const n=this.attributes.normal;if(n!==void 0){const r=new st().getNormalMatrix(e);n.applyNormalMatrix(r),n.needsUpdate=!0}const s=this.attributes.tangent;return s!==void 0&&(s.transformDirection(e),s.needsUpdate=!0),this.boundingBox!==null&&this.computeBoundingBox(),this.boundingSphere!==null&&this.computeBoundingSphere(),this}applyQuaternion(e){return Qn.makeRotationFromQuaternion(e),this.applyMatrix4(Qn),this}rotateX(e){return Qn.makeRotationX(e),this.applyMatrix4(Qn),this}rotateY(e){return Qn.makeRotationY(e),this.applyMatrix4(Qn),this}rotateZ(e){return Qn.makeRotationZ(e),this.applyMatrix4(Qn),this}translate(e,t,n){return Qn.makeTranslation(e,t,n),this.applyMatrix4(Qn),this}scale(e,t,n){return Qn.makeScale(e,t,n),this.applyMatrix4(Qn),this}lookAt(e){return bl.lookAt(e),bl.updateMatrix(),this.applyMatrix4(bl.matrix),this}center(){return this.computeBoundingBox(),this.boundingBox.getCenter(ar).negate(),this.translate(ar.x,ar.y,ar.z),this}setFromPoints(e){const t=this.getAttribute("position");if(t===void 0){const n=[];for(let s=0,r=e.length;s<r;s++){const a=e[s];n.push(a.x,a.y,a.z||0)}this.setAttribute("position",new pn(n,3))}else{const n=Math.min(e.length,t.count);for(let s=0;s<n;s++){const r=e[s];t.setXYZ(s,r.x,r.y,r.z||0)}e.length>t.count&&console.warn("THREE.BufferGeometry: Buffer size too small for points data. Use .dispose() and create a new geometry."),t.needsUpdate=!0}return this}computeBoundingBox(){this.boundingBox===null&&(this.boundingBox=new ga);const e=this.attributes.position,t=this.morphAttributes.position;if(e&&e.isGLBufferAttribute){console.error("THREE.BufferGeometry.computeBoundingBox(): GLBufferAttribute requires a manual bounding box.",this),this.boundingBox.set(new z(-1/0,-1/0,-1/0),new z(1/0,1/0,1/0));return}if(e!==void 0){if(this.boundingBox.setFromBufferAttribute(e),t)for(let n=0,s=t.length;n<s;n++){const r=t[n];Xn.setFromBufferAttribute(r),this.morphTargetsRelative?(dn.addVectors(this.boundingBox.min,Xn.min),this.boundingBox.expandByPoint(dn),dn.addVectors(this.boundingBox.max,Xn.max),this.boundingBox.expandByPoint(dn)):(this.boundingBox.expandByPoint(Xn.min),this.boundingBox.expandByPoint(Xn.max))}}else this.boundingBox.makeEmpty();(isNaN(this.boundingBox.min.x)||isNaN(this.boundingBox.min.y)||isNaN(this.boundingBox.min.z))&&console.error('THREE.BufferGeometry.computeBoundingBox(): Computed min/max have NaN values. The "position" attribute is likely to have NaN values.',this)}computeBoundingSphere(){this.boundingSphere===null&&(this.boundingSphere=new _a);const e=this.attributes.position,t=this.morphAttributes.position;if(e&&e.isGLBufferAttribute){console.error("THREE.BufferGeometry.computeBoundingSphere(): GLBufferAttribute requires a manual bounding sphere.",this),this.boundingSphere.set(new z,1/0);return}if(e){const n=this.boundingSphere.center;if(Xn.setFromBufferAttribute(e),t)for(let r=0,a=t.length;r<a;r++){const o=t[r];Xr.setFromBufferAttribute(o),this.morphTargetsRelative?(dn.addVectors(Xn.min,Xr.min),Xn.expandByPoint(dn),dn.addVectors(Xn.max,Xr.max),Xn.expandByPoint(dn)):(Xn.expandByPoint(Xr.min),Xn.expandByPoint(Xr.max))}Xn.getCenter(n);let s=0;for(let r=0,a=e.count;r<a;r++)dn.fromBufferAttribute(e,r),s=Math.max(s,n.distanceToSquared(dn));if(t)for(let r=0,a=t.length;r<a;r++){const o=t[r],l=this.morphTargetsRelative;for(let c=0,f=o.count;c<f;c++)dn.fromBufferAttribute(o,c),l&&(ar.fromBufferAttribute(e,c),dn.add(ar)),s=Math.max(s,n.distanceToSquared(dn))}this.boundingSphere.radius=Math.sqrt(s),isNaN(this.boundingSphere.radius)&&console.error('THREE.BufferGeometry.computeBoundingSphere(): Computed radius is NaN. The "position" attribute is likely to have NaN values.',this)}}computeTangents(){const e=this.index,t=this.attributes;if(e===null||t.position===void 0||t.normal===void 0||t.uv===void 0){console.error("THREE.BufferGeometry: .computeTangents() failed. Missing required attributes (index, position, normal or uv)");return}const n=t.position,s=t.normal,r=t.uv;this.hasAttribute("tangent")===!1&&this.setAttribute("tangent",new zn(new Float32Array(4*n.count),4));const a=this.getAttribute("tangent"),o=[],l=[];for(let C=0;C<n.count;C++)o[C]=new z,l[C]=new z;const c=new z,f=new z,u=new z,h=new tt,p=new tt,v=new tt,M=new z,m=new z;function d(C,S,_){c.fromBufferAttribute(n,C),f.fromBufferAttribute(n,S),u.fromBufferAttribute(n,_),h.fromBufferAttribute(r,C),p.fromBufferAttribute(r,S),v.fromBufferAttribute(r,_),f.sub(c),u.sub(c),p.sub(h),v.sub(h);const y=1/(p.x*v.y-v.x*p.y);isFinite(y)&&(M.copy(f).multiplyScalar(v.y).addScaledVector(u,-p.y).multiplyScalar(y),m.copy(u).multiplyScalar(p.x).addScaledVector(f,-v.x).multiplyScalar(y),o[C].add(M),o[S].add(M),o[_].add(M),l[C].add(m),l[S].add(m),l[_].add(m))}let T=this.groups;T.length===0&&(T=[{start:0,count:e.count}]);for(let C=0,S=T.length;C<S;++C){const _=T[C],y=_.start,F=_.count;for(let k=y,q=y+F;k<q;k+=3)d(e.getX(k+0),e.getX(k+1),e.getX(k+2))}const A=new z,b=new z,N=new z,R=new z;function D(C){N.fromBufferAttribute(s,C),R.copy(N);const S=o[C];A.copy(S),A.sub(N.multiplyScalar(N.dot(S))).normalize(),b.crossVectors(R,S);const y=b.dot(l[C])<0?-1:1;a.setXYZW(C,A.x,A.y,A.z,y)}for(let C=0,S=T.length;C<S;++C){const _=T[C],y=_.start,F=_.count;for(let k=y,q=y+F;k<q;k+=3)D(e.getX(k+0)),D(e.getX(k+1)),D(e.getX(k+2))}}computeVertexNormals(){const e=this.index,t=this.getAttribute("position");if(t!==void 0){let n=this.getAttribute("normal");if(n===void 0)n=new zn(new Float32Array(t.count*3),3),this.setAttribute("normal",n);else for(let h=0,p=n.count;h<p;h++)n.setXYZ(h,0,0,0);const s=new z,r=new z,a=new z,o=new z,l=new z,c=new z,f=new z,u=new z;if(e)for(let h=0,p=e.count;h<p;h+=3){const v=e.getX(h+0),M=e.getX(h+1),m=e.getX(h+2);s.fromBufferAttribute(t,v),r.fromBufferAttribute(t,M),a.fromBufferAttribute(t,m),f.subVectors(a,r),u.subVectors(s,r),f.cross(u),o.fromBufferAttribute(n,v),l.fromBufferAttribute(n,M),c.fromBufferAttribute(n,m),o.add(f),l.add(f),c.add(f),n.setXYZ(v,o.x,o.y,o.z),n.setXYZ(M,l.x,l.y,l.z),n.setXYZ(m,c.x,c.y,c.z)}else for(let h=0,p=t.count;h<p;h+=3)s.fromBufferAttribute(t,h+0),r.fromBufferAttribute(t,h+1),a.fromBufferAttribute(t,h+2),f.subVectors(a,r),u.subVectors(s,r),f.cross(u),n.setXYZ(h+0,f.x,f.y,f.z),n.setXYZ(h+1,f.x,f.y,f.z),n.setXYZ(h+2,f.x,f.y,f.z);this.normalizeNormals(),n.needsUpdate=!0}}normalizeNormals(){const e=this.attributes.normal;for(let t=0,n=e.count;t<n;t++)dn.fromBufferAttribute(e,t),dn.normalize(),e.setXYZ(t,dn.x,dn.y,dn.z)}toNonIndexed(){function e(o,l){const c=o.array,f=o.itemSize,u=o.normalized,h=new c.constructor(l.length*f);let p=0,v=0;for(let M=0,m=l.length;M<m;M++){o.isInterleavedBufferAttribute?p=l[M]*o.data.stride+o.offset:p=l[M]*f;for(let d=0;d<f;d++)h[v++]=c[p++]}return new zn(h,f,u)}if(this.index===null)return console.warn("THREE.BufferGeometry.toNonIndexed(): BufferGeometry is already non-indexed."),this;const t=new vn,n=this.index.array,s=this.attributes;for(const o in s){const l=s[o],c=e(l,n);t.setAttribute(o,c)}const r=this.morphAttributes;for(const o in r){const l=[],c=r[o];for(let f=0,u=c.length;f<u;f++){const h=c[f],p=e(h,n);l.push(p)}t.morphAttributes[o]=l}t.morphTargetsRelative=this.morphTargetsRelative;const a=this.groups;for(let o=0,l=a.length;o<l;o++){const c=a[o];t.addGroup(c.start,c.count,c.materialIndex)}return t}toJSON(){const e={metadata:{version:4.7,type:"BufferGeometry",generator:"BufferGeometry.toJSON"}};if(e.uuid=this.uuid,e.type=this.type,this.name!==""&&(e.name=this.name),Object.keys(this.userData).length>0&&(e.userData=this.userData),this.parameters!==void 0){const l=this.parameters;for(const c in l)l[c]!==void 0&&(e[c]=l[c]);return e}e.data={attributes:{}};const t=this.index;t!==null&&(e.data.index={type:t.array.constructor.name,array:Array.prototype.slice.call(t.array)});const n=this.attributes;for(const l in n){const c=n[l];e.data.attributes[l]=c.toJSON(e.data)}const s={};let r=!1;for(const l in this.morphAttributes){const c=this.morphAttributes[l],f=[];for(let u=0,h=c.length;u<h;u++){const p=c[u];f.push(p.toJSON(e.data))}f.length>0&&(s[l]=f,r=!0)}r&&(e.data.morphAttributes=s,e.data.morphTargetsRelative=this.morphTargetsRelative);const a=this.groups;a.length>0&&(e.data.groups=JSON.parse(JSON.stringify(a)));const o=this.boundingSphere;return o!==null&&(e.data.boundingSphere=o.toJSON()),e}clone(){return new this.constructor().copy(this)}copy(e){this.index=null,this.attributes={},this.morphAttributes={},this.groups=[],this.boundingBox=null,this.boundingSphere=null;const t={};this.name=e.name;const n=e.index;n!==null&&this.setIndex(n.clone());const s=e.attributes;for(const c in s){const f=s[c];this.setAttribute(c,f.clone(t))}const r=e.morphAttributes;for(const c in r){const f=[],u=r[c];for(let h=0,p=u.length;h<p;h++)f.push(u[h].clone(t));this.morphAttributes[c]=f}this.morphTargetsRelative=e.morphTargetsRelative;const a=e.groups;for(let c=0,f=a.length;c<f;c++){const u=a[c];this.addGroup(u.start,u.count,u.materialIndex)}const o=e.boundingBox;o!==null&&(this.boundingBox=o.clone());const l=e.boundingSphere;return l!==null&&(this.boundingSphere=l.clone()),this.drawRange.start=e.drawRange.start,this.drawRange.count=e.drawRange.count,this.userData=e.userData,this}dispose(){this.dispatchEvent({type:"dispose"})}}const Xh=new Xt,xs=new va,ka=new _a,qh=new z,Ha=new z,Va=new z,Ga=new z,Tl=new z,Wa=new z,Yh=new z,Xa=new z;class _n extends nn{constructor(e=new vn,t=new mu){super(),this.isMesh=!0,this.type="Mesh",this.geometry=e,this.material=t,this.morphTargetDictionary=void 0,this.morphTargetInfluences=void 0,this.count=1,this.updateMorphTargets()}copy(e,t){return super.copy(e,t),e.morphTargetInfluences!==void 0&&(this.morphTargetInfluences=e.morphTargetInfluences.slice()),e.morphTargetDictionary!==void 0&&(this.morphTargetDictionary=Object.assign({},e.morphTargetDictionary)),this.material=Array.isArray(e.material)?e.material.slice():e.material,this.geometry=e.geometry,this}updateMorphTargets(){const t=this.geometry.morphAttributes,n=Object.keys(t);if(n.length>0){const s=t[n[0]];if(s!==void 0){this.morphTargetInfluences=[],this.morphTargetDictionary={};for(let r=0,a=s.length;r<a;r++){const o=s[r].name||String(r);this.morphTargetInfluences.push(0),this.morphTargetDictionary[o]=r}}}}getVertexPosition(e,t){const n=this.geometry,s=n.attributes.position,r=n.morphAttributes.position,a=n.morphTargetsRelative;t.fromBufferAttribute(s,e);const o=this.morphTargetInfluences;if(r&&o){Wa.set(0,0,0);for(let l=0,c=r.length;l<c;l++){const f=o[l],u=r[l];f!==0&&(Tl.fromBufferAttribute(u,e),a?Wa.addScaledVector(Tl,f):Wa.addScaledVector(Tl.sub(t),f))}t.add(Wa)}return t}raycast(e,t){const n=this.geometry,s=this.material,r=this.matrixWorld;s!==void 0&&(n.boundingSphere===null&&n.computeBoundingSphere(),ka.copy(n.boundingSphere),ka.applyMatrix4(r),xs.copy(e.ray).recast(e.near),!(ka.containsPoint(xs.origin)===!1&&(xs.intersectSphere(ka,qh)===null||xs.origin.distanceToSquared(qh)>(e.far-e.near)**2))&&(Xh.copy(r).invert(),xs.copy(e.ray).applyMatrix4(Xh),!(n.boundingBox!==null&&xs.intersectsBox(n.boundingBox)===!1)&&this._computeIntersections(e,t,xs)))}_computeIntersections(e,t,n){let s;const r=this.geometry,a=this.material,o=r.index,l=r.attributes.position,c=r.attributes.uv,f=r.attributes.uv1,u=r.attributes.normal,h=r.groups,p=r.drawRange;if(o!==null)if(Array.isArray(a))for(let v=0,M=h.length;v<M;v++){const m=h[v],d=a[m.materialIndex],T=Math.max(m.start,p.start),A=Math.min(o.count,Math.min(m.start+m.count,p.start+p.count));for(let b=T,N=A;b<N;b+=3){const R=o.getX(b),D=o.getX(b+1),C=o.getX(b+2);s=qa(this,d,e,n,c,f,u,R,D,C),s&&(s.faceIndex=Math.floor(b/3),s.face.materialIndex=m.materialIndex,t.push(s))}}else{const v=Math.max(0,p.start),M=Math.min(o.count,p.start+p.count);for(let m=v,d=M;m<d;m+=3){const T=o.getX(m),A=o.getX(m+1),b=o.getX(m+2);s=qa(this,a,e,n,c,f,u,T,A,b),s&&(s.faceIndex=Math.floor(m/3),t.push(s))}}else if(l!==void 0)if(Array.isArray(a))for(let v=0,M=h.length;v<M;v++){const m=h[v],d=a[m.materialIndex],T=Math.max(m.start,p.start),A=Math.min(l.count,Math.min(m.start+m.count,p.start+p.count));for(let b=T,N=A;b<N;b+=3){const R=b,D=b+1,C=b+2;s=qa(this,d,e,n,c,f,u,R,D,C),s&&(s.faceIndex=Math.floor(b/3),s.face.materialIndex=m.materialIndex,t.push(s))}}else{const v=Math.max(0,p.start),M=Math.min(l.count,p.start+p.count);for(let m=v,d=M;m<d;m+=3){const T=m,A=m+1,b=m+2;s=qa(this,a,e,n,c,f,u,T,A,b),s&&(s.faceIndex=Math.floor(m/3),t.push(s))}}}}function k_(i,e,t,n,s,r,a,o){let l;if(e.side===On?l=n.intersectTriangle(a,r,s,!0,o):l=n.intersectTriangle(s,r,a,e.side===cs,o),l===null)return null;Xa.copy(o),Xa.applyMatrix4(i.matrixWorld);const c=t.ray.origin.distanceTo(Xa);return c<t.near||c>t.far?null:{distance:c,point:Xa.clone(),object:i}}function qa(i,e,t,n,s,r,a,o,l,c){i.getVertexPosition(o,Ha),i.getVertexPosition(l,Va),i.getVertexPosition(c,Ga);const f=k_(i,e,t,n,Ha,Va,Ga,Yh);if(f){const u=new z;pi.getBarycoord(Yh,Ha,Va,Ga,u),s&&(f.uv=pi.getInterpolatedAttribute(s,o,l,c,u,new tt)),r&&(f.uv1=pi.getInterpolatedAttribute(r,o,l,c,u,new tt)),a&&(f.normal=pi.getInterpolatedAttribute(a,o,l,c,u,new z),f.normal.dot(n.direction)>0&&f.normal.multiplyScalar(-1));const h={a:o,b:l,c,normal:new z,materialIndex:0};pi.getNormal(Ha,Va,Ga,h.normal),f.face=h,f.barycoord=u}return f}class Pr extends vn{constructor(e=1,t=1,n=1,s=1,r=1,a=1){super(),this.type="BoxGeometry",this.parameters={width:e,height:t,depth:n,widthSegments:s,heightSegments:r,depthSegments:a};const o=this;s=Math.floor(s),r=Math.floor(r),a=Math.floor(a);const l=[],c=[],f=[],u=[];let h=0,p=0;v("z","y","x",-1,-1,n,t,e,a,r,0),v("z","y","x",1,-1,n,t,-e,a,r,1),v("x","z","y",1,1,e,n,t,s,a,2),v("x","z","y",1,-1,e,n,-t,s,a,3),v("x","y","z",1,-1,e,t,n,s,r,4),v("x","y","z",-1,-1,e,t,-n,s,r,5),this.setIndex(l),this.setAttribute("position",new pn(c,3)),this.setAttribute("normal",new pn(f,3)),this.setAttribute("uv",new pn(u,2));function v(M,m,d,T,A,b,N,R,D,C,S){const _=b/D,y=N/C,F=b/2,k=N/2,q=R/2,H=D+1,Y=C+1;let j=0,K=0;const ae=new z;for(let oe=0;oe<Y;oe++){const ve=oe*y-k;for(let Se=0;Se<H;Se++){const _e=Se*_-F;ae[M]=_e*T,ae[m]=ve*A,ae[d]=q,c.push(ae.x,ae.y,ae.z),ae[M]=0,ae[m]=0,ae[d]=R>0?1:-1,f.push(ae.x,ae.y,ae.z),u.push(Se/D),u.push(1-oe/C),j+=1}}for(let oe=0;oe<C;oe++)for(let ve=0;ve<D;ve++){const Se=h+ve+H*oe,_e=h+ve+H*(oe+1),nt=h+(ve+1)+H*(oe+1),Ze=h+(ve+1)+H*oe;l.push(Se,_e,Ze),l.push(_e,nt,Ze),K+=6}o.addGroup(p,K,S),p+=K,h+=j}}copy(e){return super.copy(e),this.parameters=Object.assign({},e.parameters),this}static fromJSON(e){return new Pr(e.width,e.height,e.depth,e.widthSegments,e.heightSegments,e.depthSegments)}}function Tr(i){const e={};for(const t in i){e[t]={};for(const n in i[t]){const s=i[t][n];s&&(s.isColor||s.isMatrix3||s.isMatrix4||s.isVector2||s.isVector3||s.isVector4||s.isTexture||s.isQuaternion)?s.isRenderTargetTexture?(console.warn("UniformsUtils: Textures of render targets cannot be cloned via cloneUniforms() or mergeUniforms()."),e[t][n]=null):e[t][n]=s.clone():Array.isArray(s)?e[t][n]=s.slice():e[t][n]=s}}return e}function Pn(i){const e={};for(let t=0;t<i.length;t++){const n=Tr(i[t]);for(const s in n)e[s]=n[s]}return e}function H_(i){const e=[];for(let t=0;t<i.length;t++)e.push(i[t].clone());return e}function Kd(i){const e=i.getRenderTarget();return e===null?i.outputColorSpace:e.isXRRenderTarget===!0?e.texture.colorSpace:_t.workingColorSpace}const V_={clone:Tr,merge:Pn};var G_=`void main() {
	gl_Position = projectionMatrix * modelViewMatrix * vec4( position, 1.0 );
}`,W_=`void main() {
	gl_FragColor = vec4( 1.0, 0.0, 0.0, 1.0 );
}`;class us extends zs{constructor(e){super(),this.isShaderMaterial=!0,this.type="ShaderMaterial",this.defines={},this.uniforms={},this.uniformsGroups=[],this.vertexShader=G_,this.fragmentShader=W_,this.linewidth=1,this.wireframe=!1,this.wireframeLinewidth=1,this.fog=!1,this.lights=!1,this.clipping=!1,this.forceSinglePass=!0,this.extensions={clipCullDistance:!1,multiDraw:!1},this.defaultAttributeValues={color:[1,1,1],uv:[0,0],uv1:[0,0]},this.index0AttributeName=void 0,this.uniformsNeedUpdate=!1,this.glslVersion=null,e!==void 0&&this.setValues(e)}copy(e){return super.copy(e),this.fragmentShader=e.fragmentShader,this.vertexShader=e.vertexShader,this.uniforms=Tr(e.uniforms),this.uniformsGroups=H_(e.uniformsGroups),this.defines=Object.assign({},e.defines),this.wireframe=e.wireframe,this.wireframeLinewidth=e.wireframeLinewidth,this.fog=e.fog,this.lights=e.lights,this.clipping=e.clipping,this.extensions=Object.assign({},e.extensions),this.glslVersion=e.glslVersion,this}toJSON(e){const t=super.toJSON(e);t.glslVersion=this.glslVersion,t.uniforms={};for(const s in this.uniforms){const a=this.uniforms[s].value;a&&a.isTexture?t.uniforms[s]={type:"t",value:a.toJSON(e).uuid}:a&&a.isColor?t.uniforms[s]={type:"c",value:a.getHex()}:a&&a.isVector2?t.uniforms[s]={type:"v2",value:a.toArray()}:a&&a.isVector3?t.uniforms[s]={type:"v3",value:a.toArray()}:a&&a.isVector4?t.uniforms[s]={type:"v4",value:a.toArray()}:a&&a.isMatrix3?t.uniforms[s]={type:"m3",value:a.toArray()}:a&&a.isMatrix4?t.uniforms[s]={type:"m4",value:a.toArray()}:t.uniforms[s]={value:a}}Object.keys(this.defines).length>0&&(t.defines=this.defines),t.vertexShader=this.vertexShader,t.fragmentShader=this.fragmentShader,t.lights=this.lights,t.clipping=this.clipping;const n={};for(const s in this.extensions)this.extensions[s]===!0&&(n[s]=!0);return Object.keys(n).length>0&&(t.extensions=n),t}}class Zd extends nn{constructor(){super(),this.isCamera=!0,this.type="Camera",this.matrixWorldInverse=new Xt,this.projectionMatrix=new Xt,this.projectionMatrixInverse=new Xt,this.coordinateSystem=wi,this._reversedDepth=!1}get reversedDepth(){return this._reversedDepth}copy(e,t){return super.copy(e,t),this.matrixWorldInverse.copy(e.matrixWorldInverse),this.projectionMatrix.copy(e.projectionMatrix),this.projectionMatrixInverse.copy(e.projectionMatrixInverse),this.coordinateSystem=e.coordinateSystem,this}getWorldDirection(e){return super.getWorldDirection(e).negate()}updateMatrixWorld(e){super.updateMatrixWorld(e),this.matrixWorldInverse.copy(this.matrixWorld).invert()}updateWorldMatrix(e,t){super.updateWorldMatrix(e,t),this.matrixWorldInverse.copy(this.matrixWorld).invert()}clone(){return new this.constructor().copy(this)}}const ts=new z,$h=new tt,jh=new tt;class si extends Zd{constructor(e=50,t=1,n=.1,s=2e3){super(),this.isPerspectiveCamera=!0,this.type="PerspectiveCamera",this.fov=e,this.zoom=1,this.near=n,this.far=s,this.focus=10,this.aspect=t,this.view=null,this.filmGauge=35,this.filmOffset=0,this.updateProjectionMatrix()}copy(e,t){return super.copy(e,t),this.fov=e.fov,this.zoom=e.zoom,this.near=e.near,this.far=e.far,this.focus=e.focus,this.aspect=e.aspect,this.view=e.view===null?null:Object.assign({},e.view),this.filmGauge=e.filmGauge,this.filmOffset=e.filmOffset,this}setFocalLength(e){const t=.5*this.getFilmHeight()/e;this.fov=Bc*2*Math.atan(t),this.updateProjectionMatrix()}getFocalLength(){const e=Math.tan(uo*.5*this.fov);return .5*this.getFilmHeight()/e}getEffectiveFOV(){return Bc*2*Math.atan(Math.tan(uo*.5*this.fov)/this.zoom)}getFilmWidth(){return this.filmGauge*Math.min(this.aspect,1)}getFilmHeight(){return this.filmGauge/Math.max(this.aspect,1)}getViewBounds(e,t,n){ts.set(-1,-1,.5).applyMatrix4(this.projectionMatrixInverse),t.set(ts.x,ts.y).multiplyScalar(-e/ts.z),ts.set(1,1,.5).applyMatrix4(this.projectionMatrixInverse),n.set(ts.x,ts.y).multiplyScalar(-e/ts.z)}getViewSize(e,t){return this.getViewBounds(e,$h,jh),t.subVectors(jh,$h)}setViewOffset(e,t,n,s,r,a){this.aspect=e/t,this.view===null&&(this.view={enabled:!0,fullWidth:1,fullHeight:1,offsetX:0,offsetY:0,width:1,height:1}),this.view.enabled=!0,this.view.fullWidth=e,this.view.fullHeight=t,this.view.offsetX=n,this.view.offsetY=s,this.view.width=r,this.view.height=a,this.updateProjectionMatrix()}clearViewOffset(){this.view!==null&&(this.view.enabled=!1),this.updateProjectionMatrix()}updateProjectionMatrix(){const e=this.near;let t=e*Math.tan(uo*.5*this.fov)/this.zoom,n=2*t,s=this.aspect*n,r=-.5*s;const a=this.view;if(this.view!==null&&this.view.enabled){const l=a.fullWidth,c=a.fullHeight;r+=a.offsetX*s/l,t-=a.offsetY*n/c,s*=a.width/l,n*=a.height/c}const o=this.filmOffset;o!==0&&(r+=e*o/this.getFilmWidth()),this.projectionMatrix.makePerspective(r,r+s,t,t-n,e,this.far,this.coordinateSystem,this.reversedDepth),this.projectionMatrixInverse.copy(this.projectionMatrix).invert()}toJSON(e){const t=super.toJSON(e);return t.object.fov=this.fov,t.object.zoom=this.zoom,t.object.near=this.near,t.object.far=this.far,t.object.focus=this.focus,t.object.aspect=this.aspect,this.view!==null&&(t.object.view=Object.assign({},this.view)),t.object.filmGauge=this.filmGauge,t.object.filmOffset=this.filmOffset,t}}const or=-90,lr=1;class X_ extends nn{constructor(e,t,n){super(),this.type="CubeCamera",this.renderTarget=n,this.coordinateSystem=null,this.activeMipmapLevel=0;const s=new si(or,lr,e,t);s.layers=this.layers,this.add(s);const r=new si(or,lr,e,t);r.layers=this.layers,this.add(r);const a=new si(or,lr,e,t);a.layers=this.layers,this.add(a);const o=new si(or,lr,e,t);o.layers=this.layers,this.add(o);const l=new si(or,lr,e,t);l.layers=this.layers,this.add(l);const c=new si(or,lr,e,t);c.layers=this.layers,this.add(c)}updateCoordinateSystem(){const e=this.coordinateSystem,t=this.children.concat(),[n,s,r,a,o,l]=t;for(const c of t)this.remove(c);if(e===wi)n.up.set(0,1,0),n.lookAt(1,0,0),s.up.set(0,1,0),s.lookAt(-1,0,0),r.up.set(0,0,-1),r.lookAt(0,1,0),a.up.set(0,0,1),a.lookAt(0,-1,0),o.up.set(0,1,0),o.lookAt(0,0,1),l.up.set(0,1,0),l.lookAt(0,0,-1);else if(e===Mo)n.up.set(0,-1,0),n.lookAt(-1,0,0),s.up.set(0,-1,0),s.lookAt(1,0,0),r.up.set(0,0,1),r.lookAt(0,1,0),a.up.set(0,0,-1),a.lookAt(0,-1,0),o.up.set(0,-1,0),o.lookAt(0,0,1),l.up.set(0,-1,0),l.lookAt(0,0,-1);else throw new Error("THREE.CubeCamera.updateCoordinateSystem(): Invalid coordinate system: "+e);for(const c of t)this.add(c),c.updateMatrixWorld()}update(e,t){this.parent===null&&this.updateMatrixWorld();const{renderTarget:n,activeMipmapLevel:s}=this;this.coordinateSystem!==e.coordinateSystem&&(this.coordinateSystem=e.coordinateSystem,this.updateCoordinateSystem());const[r,a,o,l,c,f]=this.children,u=e.getRenderTarget(),h=e.getActiveCubeFace(),p=e.getActiveMipmapLevel(),v=e.xr.enabled;e.xr.enabled=!1;const M=n.texture.generateMipmaps;n.texture.generateMipmaps=!1,e.setRenderTarget(n,0,s),e.render(t,r),e.setRenderTarget(n,1,s),e.render(t,a),e.setRenderTarget(n,2,s),e.render(t,o),e.setRenderTarget(n,3,s),e.render(t,l),e.setRenderTarget(n,4,s),e.render(t,c),n.texture.generateMipmaps=M,e.setRenderTarget(n,5,s),e.render(t,f),e.setRenderTarget(u,h,p),e.xr.enabled=v,n.texture.needsPMREMUpdate=!0}}class Jd extends Bn{constructor(e=[],t=yr,n,s,r,a,o,l,c,f){super(e,t,n,s,r,a,o,l,c,f),this.isCubeTexture=!0,this.flipY=!1}get images(){return this.image}set images(e){this.image=e}}class q_ extends Fs{constructor(e=1,t={}){super(e,e,t),this.isWebGLCubeRenderTarget=!0;const n={width:e,height:e,depth:1},s=[n,n,n,n,n,n];this.texture=new Jd(s),this._setTextureOptions(t),this.texture.isRenderTargetTexture=!0}fromEquirectangularTexture(e,t){this.texture.type=t.type,this.texture.colorSpace=t.colorSpace,this.texture.generateMipmaps=t.generateMipmaps,this.texture.minFilter=t.minFilter,this.texture.magFilter=t.magFilter;const n={uniforms:{tEquirect:{value:null}},vertexShader:`

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
			`},s=new Pr(5,5,5),r=new us({name:"CubemapFromEquirect",uniforms:Tr(n.uniforms),vertexShader:n.vertexShader,fragmentShader:n.fragmentShader,side:On,blending:as});r.uniforms.tEquirect.value=t;const a=new _n(s,r),o=t.minFilter;return t.minFilter===Ds&&(t.minFilter=Ti),new X_(1,10,this).update(e,a),t.minFilter=o,a.geometry.dispose(),a.material.dispose(),this}clear(e,t=!0,n=!0,s=!0){const r=e.getRenderTarget();for(let a=0;a<6;a++)e.setRenderTarget(this,a),e.clear(t,n,s);e.setRenderTarget(r)}}class ii extends nn{constructor(){super(),this.isGroup=!0,this.type="Group"}}const Y_={type:"move"};class wl{constructor(){this._targetRay=null,this._grip=null,this._hand=null}getHandSpace(){return this._hand===null&&(this._hand=new ii,this._hand.matrixAutoUpdate=!1,this._hand.visible=!1,this._hand.joints={},this._hand.inputState={pinching:!1}),this._hand}getTargetRaySpace(){return this._targetRay===null&&(this._targetRay=new ii,this._targetRay.matrixAutoUpdate=!1,this._targetRay.visible=!1,this._targetRay.hasLinearVelocity=!1,this._targetRay.linearVelocity=new z,this._targetRay.hasAngularVelocity=!1,this._targetRay.angularVelocity=new z),this._targetRay}getGripSpace(){return this._grip===null&&(this._grip=new ii,this._grip.matrixAutoUpdate=!1,this._grip.visible=!1,this._grip.hasLinearVelocity=!1,this._grip.linearVelocity=new z,this._grip.hasAngularVelocity=!1,this._grip.angularVelocity=new z),this._grip}dispatchEvent(e){return this._targetRay!==null&&this._targetRay.dispatchEvent(e),this._grip!==null&&this._grip.dispatchEvent(e),this._hand!==null&&this._hand.dispatchEvent(e),this}connect(e){if(e&&e.hand){const t=this._hand;if(t)for(const n of e.hand.values())this._getHandJoint(t,n)}return this.dispatchEvent({type:"connected",data:e}),this}disconnect(e){return this.dispatchEvent({type:"disconnected",data:e}),this._targetRay!==null&&(this._targetRay.visible=!1),this._grip!==null&&(this._grip.visible=!1),this._hand!==null&&(this._hand.visible=!1),this}update(e,t,n){let s=null,r=null,a=null;const o=this._targetRay,l=this._grip,c=this._hand;if(e&&t.session.visibilityState!=="visible-blurred"){if(c&&e.hand){a=!0;for(const M of e.hand.values()){const m=t.getJointPose(M,n),d=this._getHandJoint(c,M);m!==null&&(d.matrix.fromArray(m.transform.matrix),d.matrix.decompose(d.position,d.rotation,d.scale),d.matrixWorldNeedsUpdate=!0,d.jointRadius=m.radius),d.visible=m!==null}const f=c.joints["index-finger-tip"],u=c.joints["thumb-tip"],h=f.position.distanceTo(u.position),p=.02,v=.005;c.inputState.pinching&&h>p+v?(c.inputState.pinching=!1,this.dispatchEvent({type:"pinchend",handedness:e.handedness,target:this})):!c.inputState.pinching&&h<=p-v&&(c.inputState.pinching=!0,this.dispatchEvent({type:"pinchstart",handedness:e.handedness,target:this}))}else l!==null&&e.gripSpace&&(r=t.getPose(e.gripSpace,n),r!==null&&(l.matrix.fromArray(r.transform.matrix),l.matrix.decompose(l.position,l.rotation,l.scale),l.matrixWorldNeedsUpdate=!0,r.linearVelocity?(l.hasLinearVelocity=!0,l.linearVelocity.copy(r.linearVelocity)):l.hasLinearVelocity=!1,r.angularVelocity?(l.hasAngularVelocity=!0,l.angularVelocity.copy(r.angularVelocity)):l.hasAngularVelocity=!1));o!==null&&(s=t.getPose(e.targetRaySpace,n),s===null&&r!==null&&(s=r),s!==null&&(o.matrix.fromArray(s.transform.matrix),o.matrix.decompose(o.position,o.rotation,o.scale),o.matrixWorldNeedsUpdate=!0,s.linearVelocity?(o.hasLinearVelocity=!0,o.linearVelocity.copy(s.linearVelocity)):o.hasLinearVelocity=!1,s.angularVelocity?(o.hasAngularVelocity=!0,o.angularVelocity.copy(s.angularVelocity)):o.hasAngularVelocity=!1,this.dispatchEvent(Y_)))}return o!==null&&(o.visible=s!==null),l!==null&&(l.visible=r!==null),c!==null&&(c.visible=a!==null),this}_getHandJoint(e,t){if(e.joints[t.jointName]===void 0){const n=new ii;n.matrixAutoUpdate=!1,n.visible=!1,e.joints[t.jointName]=n,e.add(n)}return e.joints[t.jointName]}}class $_ extends nn{constructor(){super(),this.isScene=!0,this.type="Scene",this.background=null,this.environment=null,this.fog=null,this.backgroundBlurriness=0,this.backgroundIntensity=1,this.backgroundRotation=new Ci,this.environmentIntensity=1,this.environmentRotation=new Ci,this.overrideMaterial=null,typeof __THREE_DEVTOOLS__<"u"&&__THREE_DEVTOOLS__.dispatchEvent(new CustomEvent("observe",{detail:this}))}copy(e,t){return super.copy(e,t),e.background!==null&&(this.background=e.background.clone()),e.environment!==null&&(this.environment=e.environment.clone()),e.fog!==null&&(this.fog=e.fog.clone()),this.backgroundBlurriness=e.backgroundBlurriness,this.backgroundIntensity=e.backgroundIntensity,this.backgroundRotation.copy(e.backgroundRotation),this.environmentIntensity=e.environmentIntensity,this.environmentRotation.copy(e.environmentRotation),e.overrideMaterial!==null&&(this.overrideMaterial=e.overrideMaterial.clone()),this.matrixAutoUpdate=e.matrixAutoUpdate,this}toJSON(e){const t=super.toJSON(e);return this.fog!==null&&(t.object.fog=this.fog.toJSON()),this.backgroundBlurriness>0&&(t.object.backgroundBlurriness=this.backgroundBlurriness),this.backgroundIntensity!==1&&(t.object.backgroundIntensity=this.backgroundIntensity),t.object.backgroundRotation=this.backgroundRotation.toArray(),this.environmentIntensity!==1&&(t.object.environmentIntensity=this.environmentIntensity),t.object.environmentRotation=this.environmentRotation.toArray(),t}}const Al=new z,j_=new z,K_=new st;class is{constructor(e=new z(1,0,0),t=0){this.isPlane=!0,this.normal=e,this.constant=t}set(e,t){return this.normal.copy(e),this.constant=t,this}setComponents(e,t,n,s){return this.normal.set(e,t,n),this.constant=s,this}setFromNormalAndCoplanarPoint(e,t){return this.normal.copy(e),this.constant=-t.dot(this.normal),this}setFromCoplanarPoints(e,t,n){const s=Al.subVectors(n,t).cross(j_.subVectors(e,t)).normalize();return this.setFromNormalAndCoplanarPoint(s,e),this}copy(e){return this.normal.copy(e.normal),this.constant=e.constant,this}normalize(){const e=1/this.normal.length();return this.normal.multiplyScalar(e),this.constant*=e,this}negate(){return this.constant*=-1,this.normal.negate(),this}distanceToPoint(e){return this.normal.dot(e)+this.constant}distanceToSphere(e){return this.distanceToPoint(e.center)-e.radius}projectPoint(e,t){return t.copy(e).addScaledVector(this.normal,-this.distanceToPoint(e))}intersectLine(e,t){const n=e.delta(Al),s=this.normal.dot(n);if(s===0)return this.distanceToPoint(e.start)===0?t.copy(e.start):null;const r=-(e.start.dot(this.normal)+this.constant)/s;return r<0||r>1?null:t.copy(e.start).addScaledVector(n,r)}intersectsLine(e){const t=this.distanceToPoint(e.start),n=this.distanceToPoint(e.end);return t<0&&n>0||n<0&&t>0}intersectsBox(e){return e.intersectsPlane(this)}intersectsSphere(e){return e.intersectsPlane(this)}coplanarPoint(e){return e.copy(this.normal).multiplyScalar(-this.constant)}applyMatrix4(e,t){const n=t||K_.getNormalMatrix(e),s=this.coplanarPoint(Al).applyMatrix4(e),r=this.normal.applyMatrix3(n).normalize();return this.constant=-s.dot(r),this}translate(e){return this.constant-=e.dot(this.normal),this}equals(e){return e.normal.equals(this.normal)&&e.constant===this.constant}clone(){return new this.constructor().copy(this)}}const Ms=new _a,Z_=new tt(.5,.5),Ya=new z;class gu{constructor(e=new is,t=new is,n=new is,s=new is,r=new is,a=new is){this.planes=[e,t,n,s,r,a]}set(e,t,n,s,r,a){const o=this.planes;return o[0].copy(e),o[1].copy(t),o[2].copy(n),o[3].copy(s),o[4].copy(r),o[5].copy(a),this}copy(e){const t=this.planes;for(let n=0;n<6;n++)t[n].copy(e.planes[n]);return this}setFromProjectionMatrix(e,t=wi,n=!1){const s=this.planes,r=e.elements,a=r[0],o=r[1],l=r[2],c=r[3],f=r[4],u=r[5],h=r[6],p=r[7],v=r[8],M=r[9],m=r[10],d=r[11],T=r[12],A=r[13],b=r[14],N=r[15];if(s[0].setComponents(c-a,p-f,d-v,N-T).normalize(),s[1].setComponents(c+a,p+f,d+v,N+T).normalize(),s[2].setComponents(c+o,p+u,d+M,N+A).normalize(),s[3].setComponents(c-o,p-u,d-M,N-A).normalize(),n)s[4].setComponents(l,h,m,b).normalize(),s[5].setComponents(c-l,p-h,d-m,N-b).normalize();else if(s[4].setComponents(c-l,p-h,d-m,N-b).normalize(),t===wi)s[5].setComponents(c+l,p+h,d+m,N+b).normalize();else if(t===Mo)s[5].setComponents(l,h,m,b).normalize();else throw new Error("THREE.Frustum.setFromProjectionMatrix(): Invalid coordinate system: "+t);return this}intersectsObject(e){if(e.boundingSphere!==void 0)e.boundingSphere===null&&e.computeBoundingSphere(),Ms.copy(e.boundingSphere).applyMatrix4(e.matrixWorld);else{const t=e.geometry;t.boundingSphere===null&&t.computeBoundingSphere(),Ms.copy(t.boundingSphere).applyMatrix4(e.matrixWorld)}return this.intersectsSphere(Ms)}intersectsSprite(e){Ms.center.set(0,0,0);const t=Z_.distanceTo(e.center);return Ms.radius=.7071067811865476+t,Ms.applyMatrix4(e.matrixWorld),this.intersectsSphere(Ms)}intersectsSphere(e){const t=this.planes,n=e.center,s=-e.radius;for(let r=0;r<6;r++)if(t[r].distanceToPoint(n)<s)return!1;return!0}intersectsBox(e){const t=this.planes;for(let n=0;n<6;n++){const s=t[n];if(Ya.x=s.normal.x>0?e.max.x:e.min.x,Ya.y=s.normal.y>0?e.max.y:e.min.y,Ya.z=s.normal.z>0?e.max.z:e.min.z,s.distanceToPoint(Ya)<0)return!1}return!0}containsPoint(e){const t=this.planes;for(let n=0;n<6;n++)if(t[n].distanceToPoint(e)<0)return!1;return!0}clone(){return new this.constructor().copy(this)}}class xa extends zs{constructor(e){super(),this.isLineBasicMaterial=!0,this.type="LineBasicMaterial",this.color=new ot(16777215),this.map=null,this.linewidth=1,this.linecap="round",this.linejoin="round",this.fog=!0,this.setValues(e)}copy(e){return super.copy(e),this.color.copy(e.color),this.map=e.map,this.linewidth=e.linewidth,this.linecap=e.linecap,this.linejoin=e.linejoin,this.fog=e.fog,this}}const yo=new z,Eo=new z,Kh=new Xt,qr=new va,$a=new _a,Rl=new z,Zh=new z;class ha extends nn{constructor(e=new vn,t=new xa){super(),this.isLine=!0,this.type="Line",this.geometry=e,this.material=t,this.morphTargetDictionary=void 0,this.morphTargetInfluences=void 0,this.updateMorphTargets()}copy(e,t){return super.copy(e,t),this.material=Array.isArray(e.material)?e.material.slice():e.material,this.geometry=e.geometry,this}computeLineDistances(){const e=this.geometry;if(e.index===null){const t=e.attributes.position,n=[0];for(let s=1,r=t.count;s<r;s++)yo.fromBufferAttribute(t,s-1),Eo.fromBufferAttribute(t,s),n[s]=n[s-1],n[s]+=yo.distanceTo(Eo);e.setAttribute("lineDistance",new pn(n,1))}else console.warn("THREE.Line.computeLineDistances(): Computation only possible with non-indexed BufferGeometry.");return this}raycast(e,t){const n=this.geometry,s=this.matrixWorld,r=e.params.Line.threshold,a=n.drawRange;if(n.boundingSphere===null&&n.computeBoundingSphere(),$a.copy(n.boundingSphere),$a.applyMatrix4(s),$a.radius+=r,e.ray.intersectsSphere($a)===!1)return;Kh.copy(s).invert(),qr.copy(e.ray).applyMatrix4(Kh);const o=r/((this.scale.x+this.scale.y+this.scale.z)/3),l=o*o,c=this.isLineSegments?2:1,f=n.index,h=n.attributes.position;if(f!==null){const p=Math.max(0,a.start),v=Math.min(f.count,a.start+a.count);for(let M=p,m=v-1;M<m;M+=c){const d=f.getX(M),T=f.getX(M+1),A=ja(this,e,qr,l,d,T,M);A&&t.push(A)}if(this.isLineLoop){const M=f.getX(v-1),m=f.getX(p),d=ja(this,e,qr,l,M,m,v-1);d&&t.push(d)}}else{const p=Math.max(0,a.start),v=Math.min(h.count,a.start+a.count);for(let M=p,m=v-1;M<m;M+=c){const d=ja(this,e,qr,l,M,M+1,M);d&&t.push(d)}if(this.isLineLoop){const M=ja(this,e,qr,l,v-1,p,v-1);M&&t.push(M)}}}updateMorphTargets(){const t=this.geometry.morphAttributes,n=Object.keys(t);if(n.length>0){const s=t[n[0]];if(s!==void 0){this.morphTargetInfluences=[],this.morphTargetDictionary={};for(let r=0,a=s.length;r<a;r++){const o=s[r].name||String(r);this.morphTargetInfluences.push(0),this.morphTargetDictionary[o]=r}}}}}function ja(i,e,t,n,s,r,a){const o=i.geometry.attributes.position;if(yo.fromBufferAttribute(o,s),Eo.fromBufferAttribute(o,r),t.distanceSqToSegment(yo,Eo,Rl,Zh)>n)return;Rl.applyMatrix4(i.matrixWorld);const c=e.ray.origin.distanceTo(Rl);if(!(c<e.near||c>e.far))return{distance:c,point:Zh.clone().applyMatrix4(i.matrixWorld),index:a,face:null,faceIndex:null,barycoord:null,object:i}}const Jh=new z,Qh=new z;class J_ extends ha{constructor(e,t){super(e,t),this.isLineSegments=!0,this.type="LineSegments"}computeLineDistances(){const e=this.geometry;if(e.index===null){const t=e.attributes.position,n=[];for(let s=0,r=t.count;s<r;s+=2)Jh.fromBufferAttribute(t,s),Qh.fromBufferAttribute(t,s+1),n[s]=s===0?0:n[s-1],n[s+1]=n[s]+Jh.distanceTo(Qh);e.setAttribute("lineDistance",new pn(n,1))}else console.warn("THREE.LineSegments.computeLineDistances(): Computation only possible with non-indexed BufferGeometry.");return this}}class Qd extends zs{constructor(e){super(),this.isPointsMaterial=!0,this.type="PointsMaterial",this.color=new ot(16777215),this.map=null,this.alphaMap=null,this.size=1,this.sizeAttenuation=!0,this.fog=!0,this.setValues(e)}copy(e){return super.copy(e),this.color.copy(e.color),this.map=e.map,this.alphaMap=e.alphaMap,this.size=e.size,this.sizeAttenuation=e.sizeAttenuation,this.fog=e.fog,this}}const ef=new Xt,zc=new va,Ka=new _a,Za=new z;class Q_ extends nn{constructor(e=new vn,t=new Qd){super(),this.isPoints=!0,this.type="Points",this.geometry=e,this.material=t,this.morphTargetDictionary=void 0,this.morphTargetInfluences=void 0,this.updateMorphTargets()}copy(e,t){return super.copy(e,t),this.material=Array.isArray(e.material)?e.material.slice():e.material,this.geometry=e.geometry,this}raycast(e,t){const n=this.geometry,s=this.matrixWorld,r=e.params.Points.threshold,a=n.drawRange;if(n.boundingSphere===null&&n.computeBoundingSphere(),Ka.copy(n.boundingSphere),Ka.applyMatrix4(s),Ka.radius+=r,e.ray.intersectsSphere(Ka)===!1)return;ef.copy(s).invert(),zc.copy(e.ray).applyMatrix4(ef);const o=r/((this.scale.x+this.scale.y+this.scale.z)/3),l=o*o,c=n.index,u=n.attributes.position;if(c!==null){const h=Math.max(0,a.start),p=Math.min(c.count,a.start+a.count);for(let v=h,M=p;v<M;v++){const m=c.getX(v);Za.fromBufferAttribute(u,m),tf(Za,m,l,s,e,t,this)}}else{const h=Math.max(0,a.start),p=Math.min(u.count,a.start+a.count);for(let v=h,M=p;v<M;v++)Za.fromBufferAttribute(u,v),tf(Za,v,l,s,e,t,this)}}updateMorphTargets(){const t=this.geometry.morphAttributes,n=Object.keys(t);if(n.length>0){const s=t[n[0]];if(s!==void 0){this.morphTargetInfluences=[],this.morphTargetDictionary={};for(let r=0,a=s.length;r<a;r++){const o=s[r].name||String(r);this.morphTargetInfluences.push(0),this.morphTargetDictionary[o]=r}}}}}function tf(i,e,t,n,s,r,a){const o=zc.distanceSqToPoint(i);if(o<t){const l=new z;zc.closestPointToPoint(i,l),l.applyMatrix4(n);const c=s.ray.origin.distanceTo(l);if(c<s.near||c>s.far)return;r.push({distance:c,distanceToRay:Math.sqrt(o),point:l,index:e,face:null,faceIndex:null,barycoord:null,object:a})}}class ep extends Bn{constructor(e,t,n=Is,s,r,a,o=gi,l=gi,c,f=la,u=1){if(f!==la&&f!==ca)throw new Error("DepthTexture format must be either THREE.DepthFormat or THREE.DepthStencilFormat");const h={width:e,height:t,depth:u};super(h,s,r,a,o,l,f,n,c),this.isDepthTexture=!0,this.flipY=!1,this.generateMipmaps=!1,this.compareFunction=null}copy(e){return super.copy(e),this.source=new du(Object.assign({},e.image)),this.compareFunction=e.compareFunction,this}toJSON(e){const t=super.toJSON(e);return this.compareFunction!==null&&(t.compareFunction=this.compareFunction),t}}class tp extends Bn{constructor(e=null){super(),this.sourceTexture=e,this.isExternalTexture=!0}copy(e){return super.copy(e),this.sourceTexture=e.sourceTexture,this}}class Io extends vn{constructor(e=1,t=1,n=1,s=32,r=1,a=!1,o=0,l=Math.PI*2){super(),this.type="CylinderGeometry",this.parameters={radiusTop:e,radiusBottom:t,height:n,radialSegments:s,heightSegments:r,openEnded:a,thetaStart:o,thetaLength:l};const c=this;s=Math.floor(s),r=Math.floor(r);const f=[],u=[],h=[],p=[];let v=0;const M=[],m=n/2;let d=0;T(),a===!1&&(e>0&&A(!0),t>0&&A(!1)),this.setIndex(f),this.setAttribute("position",new pn(u,3)),this.setAttribute("normal",new pn(h,3)),this.setAttribute("uv",new pn(p,2));function T(){const b=new z,N=new z;let R=0;const D=(t-e)/n;for(let C=0;C<=r;C++){const S=[],_=C/r,y=_*(t-e)+e;for(let F=0;F<=s;F++){const k=F/s,q=k*l+o,H=Math.sin(q),Y=Math.cos(q);N.x=y*H,N.y=-_*n+m,N.z=y*Y,u.push(N.x,N.y,N.z),b.set(H,D,Y).normalize(),h.push(b.x,b.y,b.z),p.push(k,1-_),S.push(v++)}M.push(S)}for(let C=0;C<s;C++)for(let S=0;S<r;S++){const _=M[S][C],y=M[S+1][C],F=M[S+1][C+1],k=M[S][C+1];(e>0||S!==0)&&(f.push(_,y,k),R+=3),(t>0||S!==r-1)&&(f.push(y,F,k),R+=3)}c.addGroup(d,R,0),d+=R}function A(b){const N=v,R=new tt,D=new z;let C=0;const S=b===!0?e:t,_=b===!0?1:-1;for(let F=1;F<=s;F++)u.push(0,m*_,0),h.push(0,_,0),p.push(.5,.5),v++;const y=v;for(let F=0;F<=s;F++){const q=F/s*l+o,H=Math.cos(q),Y=Math.sin(q);D.x=S*Y,D.y=m*_,D.z=S*H,u.push(D.x,D.y,D.z),h.push(0,_,0),R.x=H*.5+.5,R.y=Y*.5*_+.5,p.push(R.x,R.y),v++}for(let F=0;F<s;F++){const k=N+F,q=y+F;b===!0?f.push(q,q+1,k):f.push(q+1,q,k),C+=3}c.addGroup(d,C,b===!0?1:2),d+=C}}copy(e){return super.copy(e),this.parameters=Object.assign({},e.parameters),this}static fromJSON(e){return new Io(e.radiusTop,e.radiusBottom,e.height,e.radialSegments,e.heightSegments,e.openEnded,e.thetaStart,e.thetaLength)}}class No extends Io{constructor(e=1,t=1,n=32,s=1,r=!1,a=0,o=Math.PI*2){super(0,e,t,n,s,r,a,o),this.type="ConeGeometry",this.parameters={radius:e,height:t,radialSegments:n,heightSegments:s,openEnded:r,thetaStart:a,thetaLength:o}}static fromJSON(e){return new No(e.radius,e.height,e.radialSegments,e.heightSegments,e.openEnded,e.thetaStart,e.thetaLength)}}class Fo extends vn{constructor(e=1,t=1,n=1,s=1){super(),this.type="PlaneGeometry",this.parameters={width:e,height:t,widthSegments:n,heightSegments:s};const r=e/2,a=t/2,o=Math.floor(n),l=Math.floor(s),c=o+1,f=l+1,u=e/o,h=t/l,p=[],v=[],M=[],m=[];for(let d=0;d<f;d++){const T=d*h-a;for(let A=0;A<c;A++){const b=A*u-r;v.push(b,-T,0),M.push(0,0,1),m.push(A/o),m.push(1-d/l)}}for(let d=0;d<l;d++)for(let T=0;T<o;T++){const A=T+c*d,b=T+c*(d+1),N=T+1+c*(d+1),R=T+1+c*d;p.push(A,b,R),p.push(b,N,R)}this.setIndex(p),this.setAttribute("position",new pn(v,3)),this.setAttribute("normal",new pn(M,3)),this.setAttribute("uv",new pn(m,2))}copy(e){return super.copy(e),this.parameters=Object.assign({},e.parameters),this}static fromJSON(e){return new Fo(e.width,e.height,e.widthSegments,e.heightSegments)}}class bo extends vn{constructor(e=1,t=32,n=16,s=0,r=Math.PI*2,a=0,o=Math.PI){super(),this.type="SphereGeometry",this.parameters={radius:e,widthSegments:t,heightSegments:n,phiStart:s,phiLength:r,thetaStart:a,thetaLength:o},t=Math.max(3,Math.floor(t)),n=Math.max(2,Math.floor(n));const l=Math.min(a+o,Math.PI);let c=0;const f=[],u=new z,h=new z,p=[],v=[],M=[],m=[];for(let d=0;d<=n;d++){const T=[],A=d/n;let b=0;d===0&&a===0?b=.5/t:d===n&&l===Math.PI&&(b=-.5/t);for(let N=0;N<=t;N++){const R=N/t;u.x=-e*Math.cos(s+R*r)*Math.sin(a+A*o),u.y=e*Math.cos(a+A*o),u.z=e*Math.sin(s+R*r)*Math.sin(a+A*o),v.push(u.x,u.y,u.z),h.copy(u).normalize(),M.push(h.x,h.y,h.z),m.push(R+b,1-A),T.push(c++)}f.push(T)}for(let d=0;d<n;d++)for(let T=0;T<t;T++){const A=f[d][T+1],b=f[d][T],N=f[d+1][T],R=f[d+1][T+1];(d!==0||a>0)&&p.push(A,b,R),(d!==n-1||l<Math.PI)&&p.push(b,N,R)}this.setIndex(p),this.setAttribute("position",new pn(v,3)),this.setAttribute("normal",new pn(M,3)),this.setAttribute("uv",new pn(m,2))}copy(e){return super.copy(e),this.parameters=Object.assign({},e.parameters),this}static fromJSON(e){return new bo(e.radius,e.widthSegments,e.heightSegments,e.phiStart,e.phiLength,e.thetaStart,e.thetaLength)}}class np extends zs{constructor(e){super(),this.isMeshLambertMaterial=!0,this.type="MeshLambertMaterial",this.color=new ot(16777215),this.map=null,this.lightMap=null,this.lightMapIntensity=1,this.aoMap=null,this.aoMapIntensity=1,this.emissive=new ot(0),this.emissiveIntensity=1,this.emissiveMap=null,this.bumpMap=null,this.bumpScale=1,this.normalMap=null,this.normalMapType=Gd,this.normalScale=new tt(1,1),this.displacementMap=null,this.displacementScale=1,this.displacementBias=0,this.specularMap=null,this.alphaMap=null,this.envMap=null,this.envMapRotation=new Ci,this.combine=au,this.reflectivity=1,this.refractionRatio=.98,this.wireframe=!1,this.wireframeLinewidth=1,this.wireframeLinecap="round",this.wireframeLinejoin="round",this.flatShading=!1,this.fog=!0,this.setValues(e)}copy(e){return super.copy(e),this.color.copy(e.color),this.map=e.map,this.lightMap=e.lightMap,this.lightMapIntensity=e.lightMapIntensity,this.aoMap=e.aoMap,this.aoMapIntensity=e.aoMapIntensity,this.emissive.copy(e.emissive),this.emissiveMap=e.emissiveMap,this.emissiveIntensity=e.emissiveIntensity,this.bumpMap=e.bumpMap,this.bumpScale=e.bumpScale,this.normalMap=e.normalMap,this.normalMapType=e.normalMapType,this.normalScale.copy(e.normalScale),this.displacementMap=e.displacementMap,this.displacementScale=e.displacementScale,this.displacementBias=e.displacementBias,this.specularMap=e.specularMap,this.alphaMap=e.alphaMap,this.envMap=e.envMap,this.envMapRotation.copy(e.envMapRotation),this.combine=e.combine,this.reflectivity=e.reflectivity,this.refractionRatio=e.refractionRatio,this.wireframe=e.wireframe,this.wireframeLinewidth=e.wireframeLinewidth,this.wireframeLinecap=e.wireframeLinecap,this.wireframeLinejoin=e.wireframeLinejoin,this.flatShading=e.flatShading,this.fog=e.fog,this}}class e0 extends zs{constructor(e){super(),this.isMeshDepthMaterial=!0,this.type="MeshDepthMaterial",this.depthPacking=u_,this.map=null,this.alphaMap=null,this.displacementMap=null,this.displacementScale=1,this.displacementBias=0,this.wireframe=!1,this.wireframeLinewidth=1,this.setValues(e)}copy(e){return super.copy(e),this.depthPacking=e.depthPacking,this.map=e.map,this.alphaMap=e.alphaMap,this.displacementMap=e.displacementMap,this.displacementScale=e.displacementScale,this.displacementBias=e.displacementBias,this.wireframe=e.wireframe,this.wireframeLinewidth=e.wireframeLinewidth,this}}class t0 extends zs{constructor(e){super(),this.isMeshDistanceMaterial=!0,this.type="MeshDistanceMaterial",this.map=null,this.alphaMap=null,this.displacementMap=null,this.displacementScale=1,this.displacementBias=0,this.setValues(e)}copy(e){return super.copy(e),this.map=e.map,this.alphaMap=e.alphaMap,this.displacementMap=e.displacementMap,this.displacementScale=e.displacementScale,this.displacementBias=e.displacementBias,this}}class ip extends nn{constructor(e,t=1){super(),this.isLight=!0,this.type="Light",this.color=new ot(e),this.intensity=t}dispose(){}copy(e,t){return super.copy(e,t),this.color.copy(e.color),this.intensity=e.intensity,this}toJSON(e){const t=super.toJSON(e);return t.object.color=this.color.getHex(),t.object.intensity=this.intensity,this.groundColor!==void 0&&(t.object.groundColor=this.groundColor.getHex()),this.distance!==void 0&&(t.object.distance=this.distance),this.angle!==void 0&&(t.object.angle=this.angle),this.decay!==void 0&&(t.object.decay=this.decay),this.penumbra!==void 0&&(t.object.penumbra=this.penumbra),this.shadow!==void 0&&(t.object.shadow=this.shadow.toJSON()),this.target!==void 0&&(t.object.target=this.target.uuid),t}}const Cl=new Xt,nf=new z,sf=new z;class n0{constructor(e){this.camera=e,this.intensity=1,this.bias=0,this.normalBias=0,this.radius=1,this.blurSamples=8,this.mapSize=new tt(512,512),this.mapType=Ri,this.map=null,this.mapPass=null,this.matrix=new Xt,this.autoUpdate=!0,this.needsUpdate=!1,this._frustum=new gu,this._frameExtents=new tt(1,1),this._viewportCount=1,this._viewports=[new $t(0,0,1,1)]}getViewportCount(){return this._viewportCount}getFrustum(){return this._frustum}updateMatrices(e){const t=this.camera,n=this.matrix;nf.setFromMatrixPosition(e.matrixWorld),t.position.copy(nf),sf.setFromMatrixPosition(e.target.matrixWorld),t.lookAt(sf),t.updateMatrixWorld(),Cl.multiplyMatrices(t.projectionMatrix,t.matrixWorldInverse),this._frustum.setFromProjectionMatrix(Cl,t.coordinateSystem,t.reversedDepth),t.reversedDepth?n.set(.5,0,0,.5,0,.5,0,.5,0,0,1,0,0,0,0,1):n.set(.5,0,0,.5,0,.5,0,.5,0,0,.5,.5,0,0,0,1),n.multiply(Cl)}getViewport(e){return this._viewports[e]}getFrameExtents(){return this._frameExtents}dispose(){this.map&&this.map.dispose(),this.mapPass&&this.mapPass.dispose()}copy(e){return this.camera=e.camera.clone(),this.intensity=e.intensity,this.bias=e.bias,this.radius=e.radius,this.autoUpdate=e.autoUpdate,this.needsUpdate=e.needsUpdate,this.normalBias=e.normalBias,this.blurSamples=e.blurSamples,this.mapSize.copy(e.mapSize),this}clone(){return new this.constructor().copy(this)}toJSON(){const e={};return this.intensity!==1&&(e.intensity=this.intensity),this.bias!==0&&(e.bias=this.bias),this.normalBias!==0&&(e.normalBias=this.normalBias),this.radius!==1&&(e.radius=this.radius),(this.mapSize.x!==512||this.mapSize.y!==512)&&(e.mapSize=this.mapSize.toArray()),e.camera=this.camera.toJSON(!1).object,delete e.camera.matrix,e}}class sp extends Zd{constructor(e=-1,t=1,n=1,s=-1,r=.1,a=2e3){super(),this.isOrthographicCamera=!0,this.type="OrthographicCamera",this.zoom=1,this.view=null,this.left=e,this.right=t,this.top=n,this.bottom=s,this.near=r,this.far=a,this.updateProjectionMatrix()}copy(e,t){return super.copy(e,t),this.left=e.left,this.right=e.right,this.top=e.top,this.bottom=e.bottom,this.near=e.near,this.far=e.far,this.zoom=e.zoom,this.view=e.view===null?null:Object.assign({},e.view),this}setViewOffset(e,t,n,s,r,a){this.view===null&&(this.view={enabled:!0,fullWidth:1,fullHeight:1,offsetX:0,offsetY:0,width:1,height:1}),this.view.enabled=!0,this.view.fullWidth=e,this.view.fullHeight=t,this.view.offsetX=n,this.view.offsetY=s,this.view.width=r,this.view.height=a,this.updateProjectionMatrix()}clearViewOffset(){this.view!==null&&(this.view.enabled=!1),this.updateProjectionMatrix()}updateProjectionMatrix(){const e=(this.right-this.left)/(2*this.zoom),t=(this.top-this.bottom)/(2*this.zoom),n=(this.right+this.left)/2,s=(this.top+this.bottom)/2;let r=n-e,a=n+e,o=s+t,l=s-t;if(this.view!==null&&this.view.enabled){const c=(this.right-this.left)/this.view.fullWidth/this.zoom,f=(this.top-this.bottom)/this.view.fullHeight/this.zoom;r+=c*this.view.offsetX,a=r+c*this.view.width,o-=f*this.view.offsetY,l=o-f*this.view.height}this.projectionMatrix.makeOrthographic(r,a,o,l,this.near,this.far,this.coordinateSystem,this.reversedDepth),this.projectionMatrixInverse.copy(this.projectionMatrix).invert()}toJSON(e){const t=super.toJSON(e);return t.object.zoom=this.zoom,t.object.left=this.left,t.object.right=this.right,t.object.top=this.top,t.object.bottom=this.bottom,t.object.near=this.near,t.object.far=this.far,this.view!==null&&(t.object.view=Object.assign({},this.view)),t}}class i0 extends n0{constructor(){super(new sp(-5,5,5,-5,.5,500)),this.isDirectionalLightShadow=!0}}class s0 extends ip{constructor(e,t){super(e,t),this.isDirectionalLight=!0,this.type="DirectionalLight",this.position.copy(nn.DEFAULT_UP),this.updateMatrix(),this.target=new nn,this.shadow=new i0}dispose(){this.shadow.dispose()}copy(e){return super.copy(e),this.target=e.target.clone(),this.shadow=e.shadow.clone(),this}}class r0 extends ip{constructor(e,t){super(e,t),this.isAmbientLight=!0,this.type="AmbientLight"}}class a0 extends si{constructor(e=[]){super(),this.isArrayCamera=!0,this.isMultiViewCamera=!1,this.cameras=e}}const rf=new Xt;class o0{constructor(e,t,n=0,s=1/0){this.ray=new va(e,t),this.near=n,this.far=s,this.camera=null,this.layers=new pu,this.params={Mesh:{},Line:{threshold:1},LOD:{},Points:{threshold:1},Sprite:{}}}set(e,t){this.ray.set(e,t)}setFromCamera(e,t){t.isPerspectiveCamera?(this.ray.origin.setFromMatrixPosition(t.matrixWorld),this.ray.direction.set(e.x,e.y,.5).unproject(t).sub(this.ray.origin).normalize(),this.camera=t):t.isOrthographicCamera?(this.ray.origin.set(e.x,e.y,(t.near+t.far)/(t.near-t.far)).unproject(t),this.ray.direction.set(0,0,-1).transformDirection(t.matrixWorld),this.camera=t):console.error("THREE.Raycaster: Unsupported camera type: "+t.type)}setFromXRController(e){return rf.identity().extractRotation(e.matrixWorld),this.ray.origin.setFromMatrixPosition(e.matrixWorld),this.ray.direction.set(0,0,-1).applyMatrix4(rf),this}intersectObject(e,t=!0,n=[]){return kc(e,this,n,t),n.sort(af),n}intersectObjects(e,t=!0,n=[]){for(let s=0,r=e.length;s<r;s++)kc(e[s],this,n,t);return n.sort(af),n}}function af(i,e){return i.distance-e.distance}function kc(i,e,t,n){let s=!0;if(i.layers.test(e.layers)&&i.raycast(e,t)===!1&&(s=!1),s===!0&&n===!0){const r=i.children;for(let a=0,o=r.length;a<o;a++)kc(r[a],e,t,!0)}}class of{constructor(e=1,t=0,n=0){this.radius=e,this.phi=t,this.theta=n}set(e,t,n){return this.radius=e,this.phi=t,this.theta=n,this}copy(e){return this.radius=e.radius,this.phi=e.phi,this.theta=e.theta,this}makeSafe(){return this.phi=ct(this.phi,1e-6,Math.PI-1e-6),this}setFromVector3(e){return this.setFromCartesianCoords(e.x,e.y,e.z)}setFromCartesianCoords(e,t,n){return this.radius=Math.sqrt(e*e+t*t+n*n),this.radius===0?(this.theta=0,this.phi=0):(this.theta=Math.atan2(e,n),this.phi=Math.acos(ct(t/this.radius,-1,1))),this}clone(){return new this.constructor().copy(this)}}class lf extends J_{constructor(e=10,t=10,n=4473924,s=8947848){n=new ot(n),s=new ot(s);const r=t/2,a=e/t,o=e/2,l=[],c=[];for(let h=0,p=0,v=-o;h<=t;h++,v+=a){l.push(-o,0,v,o,0,v),l.push(v,0,-o,v,0,o);const M=h===r?n:s;M.toArray(c,p),p+=3,M.toArray(c,p),p+=3,M.toArray(c,p),p+=3,M.toArray(c,p),p+=3}const f=new vn;f.setAttribute("position",new pn(l,3)),f.setAttribute("color",new pn(c,3));const u=new xa({vertexColors:!0,toneMapped:!1});super(f,u),this.type="GridHelper"}dispose(){this.geometry.dispose(),this.material.dispose()}}const cf=new z;let Ja,Pl;class sa extends nn{constructor(e=new z(0,0,1),t=new z(0,0,0),n=1,s=16776960,r=n*.2,a=r*.2){super(),this.type="ArrowHelper",Ja===void 0&&(Ja=new vn,Ja.setAttribute("position",new pn([0,0,0,0,1,0],3)),Pl=new No(.5,1,5,1),Pl.translate(0,-.5,0)),this.position.copy(t),this.line=new ha(Ja,new xa({color:s,toneMapped:!1})),this.line.matrixAutoUpdate=!1,this.add(this.line),this.cone=new _n(Pl,new mu({color:s,toneMapped:!1})),this.cone.matrixAutoUpdate=!1,this.add(this.cone),this.setDirection(e),this.setLength(n,r,a)}setDirection(e){if(e.y>.99999)this.quaternion.set(0,0,0,1);else if(e.y<-.99999)this.quaternion.set(1,0,0,0);else{cf.set(e.z,0,-e.x).normalize();const t=Math.acos(e.y);this.quaternion.setFromAxisAngle(cf,t)}}setLength(e,t=e*.2,n=t*.2){this.line.scale.set(1,Math.max(1e-4,e-t),1),this.line.updateMatrix(),this.cone.scale.set(n,t,n),this.cone.position.y=e,this.cone.updateMatrix()}setColor(e){this.line.material.color.set(e),this.cone.material.color.set(e)}copy(e){return super.copy(e,!1),this.line.copy(e.line),this.cone.copy(e.cone),this}dispose(){this.line.geometry.dispose(),this.line.material.dispose(),this.cone.geometry.dispose(),this.cone.material.dispose()}}class l0 extends Bs{constructor(e,t=null){super(),this.object=e,this.domElement=t,this.enabled=!0,this.state=-1,this.keys={},this.mouseButtons={LEFT:null,MIDDLE:null,RIGHT:null},this.touches={ONE:null,TWO:null}}connect(e){if(e===void 0){console.warn("THREE.Controls: connect() now requires an element.");return}this.domElement!==null&&this.disconnect(),this.domElement=e}disconnect(){}dispose(){}update(){}}function uf(i,e,t,n){const s=c0(n);switch(t){case zd:return i*e;case Hd:return i*e/s.components*s.byteLength;case uu:return i*e/s.components*s.byteLength;case Vd:return i*e*2/s.components*s.byteLength;case hu:return i*e*2/s.components*s.byteLength;case kd:return i*e*3/s.components*s.byteLength;case mi:return i*e*4/s.components*s.byteLength;case fu:return i*e*4/s.components*s.byteLength;case ao:case oo:return Math.floor((i+3)/4)*Math.floor((e+3)/4)*8;case lo:case co:return Math.floor((i+3)/4)*Math.floor((e+3)/4)*16;case hc:case dc:return Math.max(i,16)*Math.max(e,8)/4;case uc:case fc:return Math.max(i,8)*Math.max(e,8)/2;case pc:case mc:return Math.floor((i+3)/4)*Math.floor((e+3)/4)*8;case gc:return Math.floor((i+3)/4)*Math.floor((e+3)/4)*16;case _c:return Math.floor((i+3)/4)*Math.floor((e+3)/4)*16;case vc:return Math.floor((i+4)/5)*Math.floor((e+3)/4)*16;case xc:return Math.floor((i+4)/5)*Math.floor((e+4)/5)*16;case Mc:return Math.floor((i+5)/6)*Math.floor((e+4)/5)*16;case Sc:return Math.floor((i+5)/6)*Math.floor((e+5)/6)*16;case yc:return Math.floor((i+7)/8)*Math.floor((e+4)/5)*16;case Ec:return Math.floor((i+7)/8)*Math.floor((e+5)/6)*16;case bc:return Math.floor((i+7)/8)*Math.floor((e+7)/8)*16;case Tc:return Math.floor((i+9)/10)*Math.floor((e+4)/5)*16;case wc:return Math.floor((i+9)/10)*Math.floor((e+5)/6)*16;case Ac:return Math.floor((i+9)/10)*Math.floor((e+7)/8)*16;case Rc:return Math.floor((i+9)/10)*Math.floor((e+9)/10)*16;case Cc:return Math.floor((i+11)/12)*Math.floor((e+9)/10)*16;case Pc:return Math.floor((i+11)/12)*Math.floor((e+11)/12)*16;case Dc:case Lc:case Uc:return Math.ceil(i/4)*Math.ceil(e/4)*16;case Ic:case Nc:return Math.ceil(i/4)*Math.ceil(e/4)*8;case Fc:case Oc:return Math.ceil(i/4)*Math.ceil(e/4)*16}throw new Error(`Unable to determine texture byte length for ${t} format.`)}function c0(i){switch(i){case Ri:case Nd:return{byteLength:1,components:1};case aa:case Fd:case pa:return{byteLength:2,components:1};case lu:case cu:return{byteLength:2,components:4};case Is:case ou:case ki:return{byteLength:4,components:1};case Od:case Bd:return{byteLength:4,components:3}}throw new Error(`Unknown texture type ${i}.`)}typeof __THREE_DEVTOOLS__<"u"&&__THREE_DEVTOOLS__.dispatchEvent(new CustomEvent("register",{detail:{revision:ru}}));typeof window<"u"&&(window.__THREE__?console.warn("WARNING: Multiple instances of Three.js being imported."):window.__THREE__=ru);/**
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
#endif`,T0=`#ifdef USE_BUMPMAP
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
#endif`,w0=`#if NUM_CLIPPING_PLANES > 0
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
#endif`,z0=`#ifdef USE_EMISSIVEMAP
	vec4 emissiveColor = texture2D( emissiveMap, vEmissiveMapUv );
	#ifdef DECODE_VIDEO_TEXTURE_EMISSIVE
		emissiveColor = sRGBTransferEOTF( emissiveColor );
	#endif
	totalEmissiveRadiance *= emissiveColor.rgb;
#endif`,k0=`#ifdef USE_EMISSIVEMAP
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
#endif`,Tv=`#ifdef USE_MORPHNORMALS
	objectNormal *= morphTargetBaseInfluence;
	for ( int i = 0; i < MORPHTARGETS_COUNT; i ++ ) {
		if ( morphTargetInfluences[ i ] != 0.0 ) objectNormal += getMorph( gl_VertexID, i, 1 ).xyz * morphTargetInfluences[ i ];
	}
#endif`,wv=`#ifdef USE_MORPHTARGETS
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
gl_FragColor = vec4( outgoingLight, diffuseColor.a );`,zv=`vec3 packNormalToRGB( const in vec3 normal ) {
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
}`,kv=`#ifdef PREMULTIPLIED_ALPHA
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
}`,Tx=`uniform vec3 diffuse;
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
}`,wx=`#define LAMBERT
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
}`,zx=`uniform vec3 diffuse;
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
}`,kx=`#include <common>
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
}`,at={alphahash_fragment:h0,alphahash_pars_fragment:f0,alphamap_fragment:d0,alphamap_pars_fragment:p0,alphatest_fragment:m0,alphatest_pars_fragment:g0,aomap_fragment:_0,aomap_pars_fragment:v0,batching_pars_vertex:x0,batching_vertex:M0,begin_vertex:S0,beginnormal_vertex:y0,bsdfs:E0,iridescence_fragment:b0,bumpmap_pars_fragment:T0,clipping_planes_fragment:w0,clipping_planes_pars_fragment:A0,clipping_planes_pars_vertex:R0,clipping_planes_vertex:C0,color_fragment:P0,color_pars_fragment:D0,color_pars_vertex:L0,color_vertex:U0,common:I0,cube_uv_reflection_fragment:N0,defaultnormal_vertex:F0,displacementmap_pars_vertex:O0,displacementmap_vertex:B0,emissivemap_fragment:z0,emissivemap_pars_fragment:k0,colorspace_fragment:H0,colorspace_pars_fragment:V0,envmap_fragment:G0,envmap_common_pars_fragment:W0,envmap_pars_fragment:X0,envmap_pars_vertex:q0,envmap_physical_pars_fragment:iv,envmap_vertex:Y0,fog_vertex:$0,fog_pars_vertex:j0,fog_fragment:K0,fog_pars_fragment:Z0,gradientmap_pars_fragment:J0,lightmap_pars_fragment:Q0,lights_lambert_fragment:ev,lights_lambert_pars_fragment:tv,lights_pars_begin:nv,lights_toon_fragment:sv,lights_toon_pars_fragment:rv,lights_phong_fragment:av,lights_phong_pars_fragment:ov,lights_physical_fragment:lv,lights_physical_pars_fragment:cv,lights_fragment_begin:uv,lights_fragment_maps:hv,lights_fragment_end:fv,logdepthbuf_fragment:dv,logdepthbuf_pars_fragment:pv,logdepthbuf_pars_vertex:mv,logdepthbuf_vertex:gv,map_fragment:_v,map_pars_fragment:vv,map_particle_fragment:xv,map_particle_pars_fragment:Mv,metalnessmap_fragment:Sv,metalnessmap_pars_fragment:yv,morphinstance_vertex:Ev,morphcolor_vertex:bv,morphnormal_vertex:Tv,morphtarget_pars_vertex:wv,morphtarget_vertex:Av,normal_fragment_begin:Rv,normal_fragment_maps:Cv,normal_pars_fragment:Pv,normal_pars_vertex:Dv,normal_vertex:Lv,normalmap_pars_fragment:Uv,clearcoat_normal_fragment_begin:Iv,clearcoat_normal_fragment_maps:Nv,clearcoat_pars_fragment:Fv,iridescence_pars_fragment:Ov,opaque_fragment:Bv,packing:zv,premultiplied_alpha_fragment:kv,project_vertex:Hv,dithering_fragment:Vv,dithering_pars_fragment:Gv,roughnessmap_fragment:Wv,roughnessmap_pars_fragment:Xv,shadowmap_pars_fragment:qv,shadowmap_pars_vertex:Yv,shadowmap_vertex:$v,shadowmask_pars_fragment:jv,skinbase_vertex:Kv,skinning_pars_vertex:Zv,skinning_vertex:Jv,skinnormal_vertex:Qv,specularmap_fragment:ex,specularmap_pars_fragment:tx,tonemapping_fragment:nx,tonemapping_pars_fragment:ix,transmission_fragment:sx,transmission_pars_fragment:rx,uv_pars_fragment:ax,uv_pars_vertex:ox,uv_vertex:lx,worldpos_vertex:cx,background_vert:ux,background_frag:hx,backgroundCube_vert:fx,backgroundCube_frag:dx,cube_vert:px,cube_frag:mx,depth_vert:gx,depth_frag:_x,distanceRGBA_vert:vx,distanceRGBA_frag:xx,equirect_vert:Mx,equirect_frag:Sx,linedashed_vert:yx,linedashed_frag:Ex,meshbasic_vert:bx,meshbasic_frag:Tx,meshlambert_vert:wx,meshlambert_frag:Ax,meshmatcap_vert:Rx,meshmatcap_frag:Cx,meshnormal_vert:Px,meshnormal_frag:Dx,meshphong_vert:Lx,meshphong_frag:Ux,meshphysical_vert:Ix,meshphysical_frag:Nx,meshtoon_vert:Fx,meshtoon_frag:Ox,points_vert:Bx,points_frag:zx,shadow_vert:kx,shadow_frag:Hx,sprite_vert:Vx,sprite_frag:Gx},Ee={common:{diffuse:{value:new ot(16777215)},opacity:{value:1},map:{value:null},mapTransform:{value:new st},alphaMap:{value:null},alphaMapTransform:{value:new st},alphaTest:{value:0}},specularmap:{specularMap:{value:null},specularMapTransform:{value:new st}},envmap:{envMap:{value:null},envMapRotation:{value:new st},flipEnvMap:{value:-1},reflectivity:{value:1},ior:{value:1.5},refractionRatio:{value:.98}},aomap:{aoMap:{value:null},aoMapIntensity:{value:1},aoMapTransform:{value:new st}},lightmap:{lightMap:{value:null},lightMapIntensity:{value:1},lightMapTransform:{value:new st}},bumpmap:{bumpMap:{value:null},bumpMapTransform:{value:new st},bumpScale:{value:1}},normalmap:{normalMap:{value:null},normalMapTransform:{value:new st},normalScale:{value:new tt(1,1)}},displacementmap:{displacementMap:{value:null},displacementMapTransform:{value:new st},displacementScale:{value:1},displacementBias:{value:0}},emissivemap:{emissiveMap:{value:null},emissiveMapTransform:{value:new st}},metalnessmap:{metalnessMap:{value:null},metalnessMapTransform:{value:new st}},roughnessmap:{roughnessMap:{value:null},roughnessMapTransform:{value:new st}},gradientmap:{gradientMap:{value:null}},fog:{fogDensity:{value:25e-5},fogNear:{value:1},fogFar:{value:2e3},fogColor:{value:new ot(16777215)}},lights:{ambientLightColor:{value:[]},lightProbe:{value:[]},directionalLights:{value:[],properties:{direction:{},color:{}}},directionalLightShadows:{value:[],properties:{shadowIntensity:1,shadowBias:{},shadowNormalBias:{},shadowRadius:{},shadowMapSize:{}}},directionalShadowMap:{value:[]},directionalShadowMatrix:{value:[]},spotLights:{value:[],properties:{color:{},position:{},direction:{},distance:{},coneCos:{},penumbraCos:{},decay:{}}},spotLightShadows:{value:[],properties:{shadowIntensity:1,shadowBias:{},shadowNormalBias:{},shadowRadius:{},shadowMapSize:{}}},spotLightMap:{value:[]},spotShadowMap:{value:[]},spotLightMatrix:{value:[]},pointLights:{value:[],properties:{color:{},position:{},decay:{},distance:{}}},pointLightShadows:{value:[],properties:{shadowIntensity:1,shadowBias:{},shadowNormalBias:{},shadowRadius:{},shadowMapSize:{},shadowCameraNear:{},shadowCameraFar:{}}},pointShadowMap:{value:[]},pointShadowMatrix:{value:[]},hemisphereLights:{value:[],properties:{direction:{},skyColor:{},groundColor:{}}},rectAreaLights:{value:[],properties:{color:{},position:{},width:{},height:{}}},ltc_1:{value:null},ltc_2:{value:null}},points:{diffuse:{value:new ot(16777215)},opacity:{value:1},size:{value:1},scale:{value:1},map:{value:null},alphaMap:{value:null},alphaMapTransform:{value:new st},alphaTest:{value:0},uvTransform:{value:new st}},sprite:{diffuse:{value:new ot(16777215)},opacity:{value:1},center:{value:new tt(.5,.5)},rotation:{value:0},map:{value:null},mapTransform:{value:new st},alphaMap:{value:null},alphaMapTransform:{value:new st},alphaTest:{value:0}}},bi={basic:{uniforms:Pn([Ee.common,Ee.specularmap,Ee.envmap,Ee.aomap,Ee.lightmap,Ee.fog]),vertexShader:at.meshbasic_vert,fragmentShader:at.meshbasic_frag},lambert:{uniforms:Pn([Ee.common,Ee.specularmap,Ee.envmap,Ee.aomap,Ee.lightmap,Ee.emissivemap,Ee.bumpmap,Ee.normalmap,Ee.displacementmap,Ee.fog,Ee.lights,{emissive:{value:new ot(0)}}]),vertexShader:at.meshlambert_vert,fragmentShader:at.meshlambert_frag},phong:{uniforms:Pn([Ee.common,Ee.specularmap,Ee.envmap,Ee.aomap,Ee.lightmap,Ee.emissivemap,Ee.bumpmap,Ee.normalmap,Ee.displacementmap,Ee.fog,Ee.lights,{emissive:{value:new ot(0)},specular:{value:new ot(1118481)},shininess:{value:30}}]),vertexShader:at.meshphong_vert,fragmentShader:at.meshphong_frag},standard:{uniforms:Pn([Ee.common,Ee.envmap,Ee.aomap,Ee.lightmap,Ee.emissivemap,Ee.bumpmap,Ee.normalmap,Ee.displacementmap,Ee.roughnessmap,Ee.metalnessmap,Ee.fog,Ee.lights,{emissive:{value:new ot(0)},roughness:{value:1},metalness:{value:0},envMapIntensity:{value:1}}]),vertexShader:at.meshphysical_vert,fragmentShader:at.meshphysical_frag},toon:{uniforms:Pn([Ee.common,Ee.aomap,Ee.lightmap,Ee.emissivemap,Ee.bumpmap,Ee.normalmap,Ee.displacementmap,Ee.gradientmap,Ee.fog,Ee.lights,{emissive:{value:new ot(0)}}]),vertexShader:at.meshtoon_vert,fragmentShader:at.meshtoon_frag},matcap:{uniforms:Pn([Ee.common,Ee.bumpmap,Ee.normalmap,Ee.displacementmap,Ee.fog,{matcap:{value:null}}]),vertexShader:at.meshmatcap_vert,fragmentShader:at.meshmatcap_frag},points:{uniforms:Pn([Ee.points,Ee.fog]),vertexShader:at.points_vert,fragmentShader:at.points_frag},dashed:{uniforms:Pn([Ee.common,Ee.fog,{scale:{value:1},dashSize:{value:1},totalSize:{value:2}}]),vertexShader:at.linedashed_vert,fragmentShader:at.linedashed_frag},depth:{uniforms:Pn([Ee.common,Ee.displacementmap]),vertexShader:at.depth_vert,fragmentShader:at.depth_frag},normal:{uniforms:Pn([Ee.common,Ee.bumpmap,Ee.normalmap,Ee.displacementmap,{opacity:{value:1}}]),vertexShader:at.meshnormal_vert,fragmentShader:at.meshnormal_frag},sprite:{uniforms:Pn([Ee.sprite,Ee.fog]),vertexShader:at.sprite_vert,fragmentShader:at.sprite_frag},background:{uniforms:{uvTransform:{value:new st},t2D:{value:null},backgroundIntensity:{value:1}},vertexShader:at.background_vert,fragmentShader:at.background_frag},backgroundCube:{uniforms:{envMap:{value:null},flipEnvMap:{value:-1},backgroundBlurriness:{value:0},backgroundIntensity:{value:1},backgroundRotation:{value:new st}},vertexShader:at.backgroundCube_vert,fragmentShader:at.backgroundCube_frag},cube:{uniforms:{tCube:{value:null},tFlip:{value:-1},opacity:{value:1}},vertexShader:at.cube_vert,fragmentShader:at.cube_frag},equirect:{uniforms:{tEquirect:{value:null}},vertexShader:at.equirect_vert,fragmentShader:at.equirect_frag},distanceRGBA:{uniforms:Pn([Ee.common,Ee.displacementmap,{referencePosition:{value:new z},nearDistance:{value:1},farDistance:{value:1e3}}]),vertexShader:at.distanceRGBA_vert,fragmentShader:at.distanceRGBA_frag},shadow:{uniforms:Pn([Ee.lights,Ee.fog,{color:{value:new ot(0)},opacity:{value:1}}]),vertexShader:at.shadow_vert,fragmentShader:at.shadow_frag}};bi.physical={uniforms:Pn([bi.standard.uniforms,{clearcoat:{value:0},clearcoatMap:{value:null},clearcoatMapTransform:{value:new st},clearcoatNormalMap:{value:null},clearcoatNormalMapTransform:{value:new st},clearcoatNormalScale:{value:new tt(1,1)},clearcoatRoughness:{value:0},clearcoatRoughnessMap:{value:null},clearcoatRoughnessMapTransform:{value:new st},dispersion:{value:0},iridescence:{value:0},iridescenceMap:{value:null},iridescenceMapTransform:{value:new st},iridescenceIOR:{value:1.3},iridescenceThicknessMinimum:{value:100},iridescenceThicknessMaximum:{value:400},iridescenceThicknessMap:{value:null},iridescenceThicknessMapTransform:{value:new st},sheen:{value:0},sheenColor:{value:new ot(0)},sheenColorMap:{value:null},sheenColorMapTransform:{value:new st},sheenRoughness:{value:1},sheenRoughnessMap:{value:null},sheenRoughnessMapTransform:{value:new st},transmission:{value:0},transmissionMap:{value:null},transmissionMapTransform:{value:new st},transmissionSamplerSize:{value:new tt},transmissionSamplerMap:{value:null},thickness:{value:0},thicknessMap:{value:null},thicknessMapTransform:{value:new st},attenuationDistance:{value:0},attenuationColor:{value:new ot(0)},specularColor:{value:new ot(1,1,1)},specularColorMap:{value:null},specularColorMapTransform:{value:new st},specularIntensity:{value:1},specularIntensityMap:{value:null},specularIntensityMapTransform:{value:new st},anisotropyVector:{value:new tt},anisotropyMap:{value:null},anisotropyMapTransform:{value:new st}}]),vertexShader:at.meshphysical_vert,fragmentShader:at.meshphysical_frag};const Qa={r:0,b:0,g:0},Ss=new Ci,Wx=new Xt;function Xx(i,e,t,n,s,r,a){const o=new ot(0);let l=r===!0?0:1,c,f,u=null,h=0,p=null;function v(A){let b=A.isScene===!0?A.background:null;return b&&b.isTexture&&(b=(A.backgroundBlurriness>0?t:e).get(b)),b}function M(A){let b=!1;const N=v(A);N===null?d(o,l):N&&N.isColor&&(d(N,1),b=!0);const R=i.xr.getEnvironmentBlendMode();R==="additive"?n.buffers.color.setClear(0,0,0,1,a):R==="alpha-blend"&&n.buffers.color.setClear(0,0,0,0,a),(i.autoClear||b)&&(n.buffers.depth.setTest(!0),n.buffers.depth.setMask(!0),n.buffers.color.setMask(!0),i.clear(i.autoClearColor,i.autoClearDepth,i.autoClearStencil))}function m(A,b){const N=v(b);N&&(N.isCubeTexture||N.mapping===Uo)?(f===void 0&&(f=new _n(new Pr(1,1,1),new us({name:"BackgroundCubeMaterial",uniforms:Tr(bi.backgroundCube.uniforms),vertexShader:bi.backgroundCube.vertexShader,fragmentShader:bi.backgroundCube.fragmentShader,side:On,depthTest:!1,depthWrite:!1,fog:!1,allowOverride:!1})),f.geometry.deleteAttribute("normal"),f.geometry.deleteAttribute("uv"),f.onBeforeRender=function(R,D,C){this.matrixWorld.copyPosition(C.matrixWorld)},Object.defineProperty(f.material,"envMap",{get:function(){return this.uniforms.envMap.value}}),s.update(f)),Ss.copy(b.backgroundRotation),Ss.x*=-1,Ss.y*=-1,Ss.z*=-1,N.isCubeTexture&&N.isRenderTargetTexture===!1&&(Ss.y*=-1,Ss.z*=-1),f.material.uniforms.envMap.value=N,f.material.uniforms.flipEnvMap.value=N.isCubeTexture&&N.isRenderTargetTexture===!1?-1:1,f.material.uniforms.backgroundBlurriness.value=b.backgroundBlurriness,f.material.uniforms.backgroundIntensity.value=b.backgroundIntensity,f.material.uniforms.backgroundRotation.value.setFromMatrix4(Wx.makeRotationFromEuler(Ss)),f.material.toneMapped=_t.getTransfer(N.colorSpace)!==Rt,(u!==N||h!==N.version||p!==i.toneMapping)&&(f.material.needsUpdate=!0,u=N,h=N.version,p=i.toneMapping),f.layers.enableAll(),A.unshift(f,f.geometry,f.material,0,0,null)):N&&N.isTexture&&(c===void 0&&(c=new _n(new Fo(2,2),new us({name:"BackgroundMaterial",uniforms:Tr(bi.background.uniforms),vertexShader:bi.background.vertexShader,fragmentShader:bi.background.fragmentShader,side:cs,depthTest:!1,depthWrite:!1,fog:!1,allowOverride:!1})),c.geometry.deleteAttribute("normal"),Object.defineProperty(c.material,"map",{get:function(){return this.uniforms.t2D.value}}),s.update(c)),c.material.uniforms.t2D.value=N,c.material.uniforms.backgroundIntensity.value=b.backgroundIntensity,c.material.toneMapped=_t.getTransfer(N.colorSpace)!==Rt,N.matrixAutoUpdate===!0&&N.updateMatrix(),c.material.uniforms.uvTransform.value.copy(N.matrix),(u!==N||h!==N.version||p!==i.toneMapping)&&(c.material.needsUpdate=!0,u=N,h=N.version,p=i.toneMapping),c.layers.enableAll(),A.unshift(c,c.geometry,c.material,0,0,null))}function d(A,b){A.getRGB(Qa,Kd(i)),n.buffers.color.setClear(Qa.r,Qa.g,Qa.b,b,a)}function T(){f!==void 0&&(f.geometry.dispose(),f.material.dispose(),f=void 0),c!==void 0&&(c.geometry.dispose(),c.material.dispose(),c=void 0)}return{getClearColor:function(){return o},setClearColor:function(A,b=1){o.set(A),l=b,d(o,l)},getClearAlpha:function(){return l},setClearAlpha:function(A){l=A,d(o,l)},render:M,addToRenderList:m,dispose:T}}function qx(i,e){const t=i.getParameter(i.MAX_VERTEX_ATTRIBS),n={},s=h(null);let r=s,a=!1;function o(_,y,F,k,q){let H=!1;const Y=u(k,F,y);r!==Y&&(r=Y,c(r.object)),H=p(_,k,F,q),H&&v(_,k,F,q),q!==null&&e.update(q,i.ELEMENT_ARRAY_BUFFER),(H||a)&&(a=!1,b(_,y,F,k),q!==null&&i.bindBuffer(i.ELEMENT_ARRAY_BUFFER,e.get(q).buffer))}function l(){return i.createVertexArray()}function c(_){return i.bindVertexArray(_)}function f(_){return i.deleteVertexArray(_)}function u(_,y,F){const k=F.wireframe===!0;let q=n[_.id];q===void 0&&(q={},n[_.id]=q);let H=q[y.id];H===void 0&&(H={},q[y.id]=H);let Y=H[k];return Y===void 0&&(Y=h(l()),H[k]=Y),Y}function h(_){const y=[],F=[],k=[];for(let q=0;q<t;q++)y[q]=0,F[q]=0,k[q]=0;return{geometry:null,program:null,wireframe:!1,newAttributes:y,enabledAttributes:F,attributeDivisors:k,object:_,attributes:{},index:null}}function p(_,y,F,k){const q=r.attributes,H=y.attributes;let Y=0;const j=F.getAttributes();for(const K in j)if(j[K].location>=0){const oe=q[K];let ve=H[K];if(ve===void 0&&(K==="instanceMatrix"&&_.instanceMatrix&&(ve=_.instanceMatrix),K==="instanceColor"&&_.instanceColor&&(ve=_.instanceColor)),oe===void 0||oe.attribute!==ve||ve&&oe.data!==ve.data)return!0;Y++}return r.attributesNum!==Y||r.index!==k}function v(_,y,F,k){const q={},H=y.attributes;let Y=0;const j=F.getAttributes();for(const K in j)if(j[K].location>=0){let oe=H[K];oe===void 0&&(K==="instanceMatrix"&&_.instanceMatrix&&(oe=_.instanceMatrix),K==="instanceColor"&&_.instanceColor&&(oe=_.instanceColor));const ve={};ve.attribute=oe,oe&&oe.data&&(ve.data=oe.data),q[K]=ve,Y++}r.attributes=q,r.attributesNum=Y,r.index=k}function M(){const _=r.newAttributes;for(let y=0,F=_.length;y<F;y++)_[y]=0}function m(_){d(_,0)}function d(_,y){const F=r.newAttributes,k=r.enabledAttributes,q=r.attributeDivisors;F[_]=1,k[_]===0&&(i.enableVertexAttribArray(_),k[_]=1),q[_]!==y&&(i.vertexAttribDivisor(_,y),q[_]=y)}function T(){const _=r.newAttributes,y=r.enabledAttributes;for(let F=0,k=y.length;F<k;F++)y[F]!==_[F]&&(i.disableVertexAttribArray(F),y[F]=0)}function A(_,y,F,k,q,H,Y){Y===!0?i.vertexAttribIPointer(_,y,F,q,H):i.vertexAttribPointer(_,y,F,k,q,H)}function b(_,y,F,k){M();const q=k.attributes,H=F.getAttributes(),Y=y.defaultAttributeValues;for(const j in H){const K=H[j];if(K.location>=0){let ae=q[j];if(ae===void 0&&(j==="instanceMatrix"&&_.instanceMatrix&&(ae=_.instanceMatrix),j==="instanceColor"&&_.instanceColor&&(ae=_.instanceColor)),ae!==void 0){const oe=ae.normalized,ve=ae.itemSize,Se=e.get(ae);if(Se===void 0)continue;const _e=Se.buffer,nt=Se.type,Ze=Se.bytesPerElement,ee=nt===i.INT||nt===i.UNSIGNED_INT||ae.gpuType===ou;if(ae.isInterleavedBufferAttribute){const ne=ae.data,be=ne.stride,ze=ae.offset;if(ne.isInstancedInterleavedBuffer){for(let xe=0;xe<K.locationSize;xe++)d(K.location+xe,ne.meshPerAttribute);_.isInstancedMesh!==!0&&k._maxInstanceCount===void 0&&(k._maxInstanceCount=ne.meshPerAttribute*ne.count)}else for(let xe=0;xe<K.locationSize;xe++)m(K.location+xe);i.bindBuffer(i.ARRAY_BUFFER,_e);for(let xe=0;xe<K.locationSize;xe++)A(K.location+xe,ve/K.locationSize,nt,oe,be*Ze,(ze+ve/K.locationSize*xe)*Ze,ee)}else{if(ae.isInstancedBufferAttribute){for(let ne=0;ne<K.locationSize;ne++)d(K.location+ne,ae.meshPerAttribute);_.isInstancedMesh!==!0&&k._maxInstanceCount===void 0&&(k._maxInstanceCount=ae.meshPerAttribute*ae.count)}else for(let ne=0;ne<K.locationSize;ne++)m(K.location+ne);i.bindBuffer(i.ARRAY_BUFFER,_e);for(let ne=0;ne<K.locationSize;ne++)A(K.location+ne,ve/K.locationSize,nt,oe,ve*Ze,ve/K.locationSize*ne*Ze,ee)}}else if(Y!==void 0){const oe=Y[j];if(oe!==void 0)switch(oe.length){case 2:i.vertexAttrib2fv(K.location,oe);break;case 3:i.vertexAttrib3fv(K.location,oe);break;case 4:i.vertexAttrib4fv(K.location,oe);break;default:i.vertexAttrib1fv(K.location,oe)}}}}T()}function N(){C();for(const _ in n){const y=n[_];for(const F in y){const k=y[F];for(const q in k)f(k[q].object),delete k[q];delete y[F]}delete n[_]}}function R(_){if(n[_.id]===void 0)return;const y=n[_.id];for(const F in y){const k=y[F];for(const q in k)f(k[q].object),delete k[q];delete y[F]}delete n[_.id]}function D(_){for(const y in n){const F=n[y];if(F[_.id]===void 0)continue;const k=F[_.id];for(const q in k)f(k[q].object),delete k[q];delete F[_.id]}}function C(){S(),a=!0,r!==s&&(r=s,c(r.object))}function S(){s.geometry=null,s.program=null,s.wireframe=!1}return{setup:o,reset:C,resetDefaultState:S,dispose:N,releaseStatesOfGeometry:R,releaseStatesOfProgram:D,initAttributes:M,enableAttribute:m,disableUnusedAttributes:T}}function Yx(i,e,t){let n;function s(c){n=c}function r(c,f){i.drawArrays(n,c,f),t.update(f,n,1)}function a(c,f,u){u!==0&&(i.drawArraysInstanced(n,c,f,u),t.update(f,n,u))}function o(c,f,u){if(u===0)return;e.get("WEBGL_multi_draw").multiDrawArraysWEBGL(n,c,0,f,0,u);let p=0;for(let v=0;v<u;v++)p+=f[v];t.update(p,n,1)}function l(c,f,u,h){if(u===0)return;const p=e.get("WEBGL_multi_draw");if(p===null)for(let v=0;v<c.length;v++)a(c[v],f[v],h[v]);else{p.multiDrawArraysInstancedWEBGL(n,c,0,f,0,h,0,u);let v=0;for(let M=0;M<u;M++)v+=f[M]*h[M];t.update(v,n,1)}}this.setMode=s,this.render=r,this.renderInstances=a,this.renderMultiDraw=o,this.renderMultiDrawInstances=l}function $x(i,e,t,n){let s;function r(){if(s!==void 0)return s;if(e.has("EXT_texture_filter_anisotropic")===!0){const D=e.get("EXT_texture_filter_anisotropic");s=i.getParameter(D.MAX_TEXTURE_MAX_ANISOTROPY_EXT)}else s=0;return s}function a(D){return!(D!==mi&&n.convert(D)!==i.getParameter(i.IMPLEMENTATION_COLOR_READ_FORMAT))}function o(D){const C=D===pa&&(e.has("EXT_color_buffer_half_float")||e.has("EXT_color_buffer_float"));return!(D!==Ri&&n.convert(D)!==i.getParameter(i.IMPLEMENTATION_COLOR_READ_TYPE)&&D!==ki&&!C)}function l(D){if(D==="highp"){if(i.getShaderPrecisionFormat(i.VERTEX_SHADER,i.HIGH_FLOAT).precision>0&&i.getShaderPrecisionFormat(i.FRAGMENT_SHADER,i.HIGH_FLOAT).precision>0)return"highp";D="mediump"}return D==="mediump"&&i.getShaderPrecisionFormat(i.VERTEX_SHADER,i.MEDIUM_FLOAT).precision>0&&i.getShaderPrecisionFormat(i.FRAGMENT_SHADER,i.MEDIUM_FLOAT).precision>0?"mediump":"lowp"}let c=t.precision!==void 0?t.precision:"highp";const f=l(c);f!==c&&(console.warn("THREE.WebGLRenderer:",c,"not supported, using",f,"instead."),c=f);const u=t.logarithmicDepthBuffer===!0,h=t.reversedDepthBuffer===!0&&e.has("EXT_clip_control"),p=i.getParameter(i.MAX_TEXTURE_IMAGE_UNITS),v=i.getParameter(i.MAX_VERTEX_TEXTURE_IMAGE_UNITS),M=i.getParameter(i.MAX_TEXTURE_SIZE),m=i.getParameter(i.MAX_CUBE_MAP_TEXTURE_SIZE),d=i.getParameter(i.MAX_VERTEX_ATTRIBS),T=i.getParameter(i.MAX_VERTEX_UNIFORM_VECTORS),A=i.getParameter(i.MAX_VARYING_VECTORS),b=i.getParameter(i.MAX_FRAGMENT_UNIFORM_VECTORS),N=v>0,R=i.getParameter(i.MAX_SAMPLES);return{isWebGL2:!0,getMaxAnisotropy:r,getMaxPrecision:l,textureFormatReadable:a,textureTypeReadable:o,precision:c,logarithmicDepthBuffer:u,reversedDepthBuffer:h,maxTextures:p,maxVertexTextures:v,maxTextureSize:M,maxCubemapSize:m,maxAttributes:d,maxVertexUniforms:T,maxVaryings:A,maxFragmentUniforms:b,vertexTextures:N,maxSamples:R}}function jx(i){const e=this;let t=null,n=0,s=!1,r=!1;const a=new is,o=new st,l={value:null,needsUpdate:!1};this.uniform=l,this.numPlanes=0,this.numIntersection=0,this.init=function(u,h){const p=u.length!==0||h||n!==0||s;return s=h,n=u.length,p},this.beginShadows=function(){r=!0,f(null)},this.endShadows=function(){r=!1},this.setGlobalState=function(u,h){t=f(u,h,0)},this.setState=function(u,h,p){const v=u.clippingPlanes,M=u.clipIntersection,m=u.clipShadows,d=i.get(u);if(!s||v===null||v.length===0||r&&!m)r?f(null):c();else{const T=r?0:n,A=T*4;let b=d.clippingState||null;l.value=b,b=f(v,h,A,p);for(let N=0;N!==A;++N)b[N]=t[N];d.clippingState=b,this.numIntersection=M?this.numPlanes:0,this.numPlanes+=T}};function c(){l.value!==t&&(l.value=t,l.needsUpdate=n>0),e.numPlanes=n,e.numIntersection=0}function f(u,h,p,v){const M=u!==null?u.length:0;let m=null;if(M!==0){if(m=l.value,v!==!0||m===null){const d=p+M*4,T=h.matrixWorldInverse;o.getNormalMatrix(T),(m===null||m.length<d)&&(m=new Float32Array(d));for(let A=0,b=p;A!==M;++A,b+=4)a.copy(u[A]).applyMatrix4(T,o),a.normal.toArray(m,b),m[b+3]=a.constant}l.value=m,l.needsUpdate=!0}return e.numPlanes=M,e.numIntersection=0,m}}function Kx(i){let e=new WeakMap;function t(a,o){return o===ac?a.mapping=yr:o===oc&&(a.mapping=Er),a}function n(a){if(a&&a.isTexture){const o=a.mapping;if(o===ac||o===oc)if(e.has(a)){const l=e.get(a).texture;return t(l,a.mapping)}else{const l=a.image;if(l&&l.height>0){const c=new q_(l.height);return c.fromEquirectangularTexture(i,a),e.set(a,c),a.addEventListener("dispose",s),t(c.texture,a.mapping)}else return null}}return a}function s(a){const o=a.target;o.removeEventListener("dispose",s);const l=e.get(o);l!==void 0&&(e.delete(o),l.dispose())}function r(){e=new WeakMap}return{get:n,dispose:r}}const fr=4,hf=[.125,.215,.35,.446,.526,.582],Rs=20,Dl=new sp,ff=new ot;let Ll=null,Ul=0,Il=0,Nl=!1;const Ts=(1+Math.sqrt(5))/2,cr=1/Ts,df=[new z(-Ts,cr,0),new z(Ts,cr,0),new z(-cr,0,Ts),new z(cr,0,Ts),new z(0,Ts,-cr),new z(0,Ts,cr),new z(-1,1,-1),new z(1,1,-1),new z(-1,1,1),new z(1,1,1)],Zx=new z;class pf{constructor(e){this._renderer=e,this._pingPongRenderTarget=null,this._lodMax=0,this._cubeSize=0,this._lodPlanes=[],this._sizeLods=[],this._sigmas=[],this._blurMaterial=null,this._cubemapMaterial=null,this._equirectMaterial=null,this._compileMaterial(this._blurMaterial)}fromScene(e,t=0,n=.1,s=100,r={}){const{size:a=256,position:o=Zx}=r;Ll=this._renderer.getRenderTarget(),Ul=this._renderer.getActiveCubeFace(),Il=this._renderer.getActiveMipmapLevel(),Nl=this._renderer.xr.enabled,this._renderer.xr.enabled=!1,this._setSize(a);const l=this._allocateTargets();return l.depthBuffer=!0,this._sceneToCubeUV(e,n,s,l,o),t>0&&this._blur(l,0,0,t),this._applyPMREM(l),this._cleanup(l),l}fromEquirectangular(e,t=null){return this._fromTexture(e,t)}fromCubemap(e,t=null){return this._fromTexture(e,t)}compileCubemapShader(){this._cubemapMaterial===null&&(this._cubemapMaterial=_f(),this._compileMaterial(this._cubemapMaterial))}compileEquirectangularShader(){this._equirectMaterial===null&&(this._equirectMaterial=gf(),this._compileMaterial(this._equirectMaterial))}dispose(){this._dispose(),this._cubemapMaterial!==null&&this._cubemapMaterial.dispose(),this._equirectMaterial!==null&&this._equirectMaterial.dispose()}_setSize(e){this._lodMax=Math.floor(Math.log2(e)),this._cubeSize=Math.pow(2,this._lodMax)}_dispose(){this._blurMaterial!==null&&this._blurMaterial.dispose(),this._pingPongRenderTarget!==null&&this._pingPongRenderTarget.dispose();for(let e=0;e<this._lodPlanes.length;e++)this._lodPlanes[e].dispose()}_cleanup(e){this._renderer.setRenderTarget(Ll,Ul,Il),this._renderer.xr.enabled=Nl,e.scissorTest=!1,eo(e,0,0,e.width,e.height)}_fromTexture(e,t){e.mapping===yr||e.mapping===Er?this._setSize(e.image.length===0?16:e.image[0].width||e.image[0].image.width):this._setSize(e.image.width/4),Ll=this._renderer.getRenderTarget(),Ul=this._renderer.getActiveCubeFace(),Il=this._renderer.getActiveMipmapLevel(),Nl=this._renderer.xr.enabled,this._renderer.xr.enabled=!1;const n=t||this._allocateTargets();return this._textureToCubeUV(e,n),this._applyPMREM(n),this._cleanup(n),n}_allocateTargets(){const e=3*Math.max(this._cubeSize,112),t=4*this._cubeSize,n={magFilter:Ti,minFilter:Ti,generateMipmaps:!1,type:pa,format:mi,colorSpace:br,depthBuffer:!1},s=mf(e,t,n);if(this._pingPongRenderTarget===null||this._pingPongRenderTarget.width!==e||this._pingPongRenderTarget.height!==t){this._pingPongRenderTarget!==null&&this._dispose(),this._pingPongRenderTarget=mf(e,t,n);const{_lodMax:r}=this;({sizeLods:this._sizeLods,lodPlanes:this._lodPlanes,sigmas:this._sigmas}=Jx(r)),this._blurMaterial=Qx(r,e,t)}return s}_compileMaterial(e){const t=new _n(this._lodPlanes[0],e);this._renderer.compile(t,Dl)}_sceneToCubeUV(e,t,n,s,r){const l=new si(90,1,t,n),c=[1,-1,1,1,1,1],f=[1,1,1,-1,-1,-1],u=this._renderer,h=u.autoClear,p=u.toneMapping;u.getClearColor(ff),u.toneMapping=os,u.autoClear=!1,u.state.buffers.depth.getReversed()&&(u.setRenderTarget(s),u.clearDepth(),u.setRenderTarget(null));const M=new mu({name:"PMREM.Background",side:On,depthWrite:!1,depthTest:!1}),m=new _n(new Pr,M);let d=!1;const T=e.background;T?T.isColor&&(M.color.copy(T),e.background=null,d=!0):(M.color.copy(ff),d=!0);for(let A=0;A<6;A++){const b=A%3;b===0?(l.up.set(0,c[A],0),l.position.set(r.x,r.y,r.z),l.lookAt(r.x+f[A],r.y,r.z)):b===1?(l.up.set(0,0,c[A]),l.position.set(r.x,r.y,r.z),l.lookAt(r.x,r.y+f[A],r.z)):(l.up.set(0,c[A],0),l.position.set(r.x,r.y,r.z),l.lookAt(r.x,r.y,r.z+f[A]));const N=this._cubeSize;eo(s,b*N,A>2?N:0,N,N),u.setRenderTarget(s),d&&u.render(m,l),u.render(e,l)}m.geometry.dispose(),m.material.dispose(),u.toneMapping=p,u.autoClear=h,e.background=T}_textureToCubeUV(e,t){const n=this._renderer,s=e.mapping===yr||e.mapping===Er;s?(this._cubemapMaterial===null&&(this._cubemapMaterial=_f()),this._cubemapMaterial.uniforms.flipEnvMap.value=e.isRenderTargetTexture===!1?-1:1):this._equirectMaterial===null&&(this._equirectMaterial=gf());const r=s?this._cubemapMaterial:this._equirectMaterial,a=new _n(this._lodPlanes[0],r),o=r.uniforms;o.envMap.value=e;const l=this._cubeSize;eo(t,0,0,3*l,2*l),n.setRenderTarget(t),n.render(a,Dl)}_applyPMREM(e){const t=this._renderer,n=t.autoClear;t.autoClear=!1;const s=this._lodPlanes.length;for(let r=1;r<s;r++){const a=Math.sqrt(this._sigmas[r]*this._sigmas[r]-this._sigmas[r-1]*this._sigmas[r-1]),o=df[(s-r-1)%df.length];this._blur(e,r-1,r,a,o)}t.autoClear=n}_blur(e,t,n,s,r){const a=this._pingPongRenderTarget;this._halfBlur(e,a,t,n,s,"latitudinal",r),this._halfBlur(a,e,n,n,s,"longitudinal",r)}_halfBlur(e,t,n,s,r,a,o){const l=this._renderer,c=this._blurMaterial;a!=="latitudinal"&&a!=="longitudinal"&&console.error("blur direction must be either latitudinal or longitudinal!");const f=3,u=new _n(this._lodPlanes[s],c),h=c.uniforms,p=this._sizeLods[n]-1,v=isFinite(r)?Math.PI/(2*p):2*Math.PI/(2*Rs-1),M=r/v,m=isFinite(r)?1+Math.floor(f*M):Rs;m>Rs&&console.warn(`sigmaRadians, ${r}, is too large and will clip, as it requested ${m} samples when the maximum is set to ${Rs}`);const d=[];let T=0;for(let D=0;D<Rs;++D){const C=D/M,S=Math.exp(-C*C/2);d.push(S),D===0?T+=S:D<m&&(T+=2*S)}for(let D=0;D<d.length;D++)d[D]=d[D]/T;h.envMap.value=e.texture,h.samples.value=m,h.weights.value=d,h.latitudinal.value=a==="latitudinal",o&&(h.poleAxis.value=o);const{_lodMax:A}=this;h.dTheta.value=v,h.mipInt.value=A-n;const b=this._sizeLods[s],N=3*b*(s>A-fr?s-A+fr:0),R=4*(this._cubeSize-b);eo(t,N,R,3*b,2*b),l.setRenderTarget(t),l.render(u,Dl)}}function Jx(i){const e=[],t=[],n=[];let s=i;const r=i-fr+1+hf.length;for(let a=0;a<r;a++){const o=Math.pow(2,s);t.push(o);let l=1/o;a>i-fr?l=hf[a-i+fr-1]:a===0&&(l=0),n.push(l);const c=1/(o-2),f=-c,u=1+c,h=[f,f,u,f,u,u,f,f,u,u,f,u],p=6,v=6,M=3,m=2,d=1,T=new Float32Array(M*v*p),A=new Float32Array(m*v*p),b=new Float32Array(d*v*p);for(let R=0;R<p;R++){const D=R%3*2/3-1,C=R>2?0:-1,S=[D,C,0,D+2/3,C,0,D+2/3,C+1,0,D,C,0,D+2/3,C+1,0,D,C+1,0];T.set(S,M*v*R),A.set(h,m*v*R);const _=[R,R,R,R,R,R];b.set(_,d*v*R)}const N=new vn;N.setAttribute("position",new zn(T,M)),N.setAttribute("uv",new zn(A,m)),N.setAttribute("faceIndex",new zn(b,d)),e.push(N),s>fr&&s--}return{lodPlanes:e,sizeLods:t,sigmas:n}}function mf(i,e,t){const n=new Fs(i,e,t);return n.texture.mapping=Uo,n.texture.name="PMREM.cubeUv",n.scissorTest=!0,n}function eo(i,e,t,n,s){i.viewport.set(e,t,n,s),i.scissor.set(e,t,n,s)}function Qx(i,e,t){const n=new Float32Array(Rs),s=new z(0,1,0);return new us({name:"SphericalGaussianBlur",defines:{n:Rs,CUBEUV_TEXEL_WIDTH:1/e,CUBEUV_TEXEL_HEIGHT:1/t,CUBEUV_MAX_MIP:`${i}.0`},uniforms:{envMap:{value:null},samples:{value:1},weights:{value:n},latitudinal:{value:!1},dTheta:{value:0},mipInt:{value:0},poleAxis:{value:s}},vertexShader:_u(),fragmentShader:`

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
	`}function eM(i){let e=new WeakMap,t=null;function n(o){if(o&&o.isTexture){const l=o.mapping,c=l===ac||l===oc,f=l===yr||l===Er;if(c||f){let u=e.get(o);const h=u!==void 0?u.texture.pmremVersion:0;if(o.isRenderTargetTexture&&o.pmremVersion!==h)return t===null&&(t=new pf(i)),u=c?t.fromEquirectangular(o,u):t.fromCubemap(o,u),u.texture.pmremVersion=o.pmremVersion,e.set(o,u),u.texture;if(u!==void 0)return u.texture;{const p=o.image;return c&&p&&p.height>0||f&&p&&s(p)?(t===null&&(t=new pf(i)),u=c?t.fromEquirectangular(o):t.fromCubemap(o),u.texture.pmremVersion=o.pmremVersion,e.set(o,u),o.addEventListener("dispose",r),u.texture):null}}}return o}function s(o){let l=0;const c=6;for(let f=0;f<c;f++)o[f]!==void 0&&l++;return l===c}function r(o){const l=o.target;l.removeEventListener("dispose",r);const c=e.get(l);c!==void 0&&(e.delete(l),c.dispose())}function a(){e=new WeakMap,t!==null&&(t.dispose(),t=null)}return{get:n,dispose:a}}function tM(i){const e={};function t(n){if(e[n]!==void 0)return e[n];let s;switch(n){case"WEBGL_depth_texture":s=i.getExtension("WEBGL_depth_texture")||i.getExtension("MOZ_WEBGL_depth_texture")||i.getExtension("WEBKIT_WEBGL_depth_texture");break;case"EXT_texture_filter_anisotropic":s=i.getExtension("EXT_texture_filter_anisotropic")||i.getExtension("MOZ_EXT_texture_filter_anisotropic")||i.getExtension("WEBKIT_EXT_texture_filter_anisotropic");break;case"WEBGL_compressed_texture_s3tc":s=i.getExtension("WEBGL_compressed_texture_s3tc")||i.getExtension("MOZ_WEBGL_compressed_texture_s3tc")||i.getExtension("WEBKIT_WEBGL_compressed_texture_s3tc");break;case"WEBGL_compressed_texture_pvrtc":s=i.getExtension("WEBGL_compressed_texture_pvrtc")||i.getExtension("WEBKIT_WEBGL_compressed_texture_pvrtc");break;default:s=i.getExtension(n)}return e[n]=s,s}return{has:function(n){return t(n)!==null},init:function(){t("EXT_color_buffer_float"),t("WEBGL_clip_cull_distance"),t("OES_texture_float_linear"),t("EXT_color_buffer_half_float"),t("WEBGL_multisampled_render_to_texture"),t("WEBGL_render_shared_exponent")},get:function(n){const s=t(n);return s===null&&ua("THREE.WebGLRenderer: "+n+" extension not supported."),s}}}function nM(i,e,t,n){const s={},r=new WeakMap;function a(u){const h=u.target;h.index!==null&&e.remove(h.index);for(const v in h.attributes)e.remove(h.attributes[v]);h.removeEventListener("dispose",a),delete s[h.id];const p=r.get(h);p&&(e.remove(p),r.delete(h)),n.releaseStatesOfGeometry(h),h.isInstancedBufferGeometry===!0&&delete h._maxInstanceCount,t.memory.geometries--}function o(u,h){return s[h.id]===!0||(h.addEventListener("dispose",a),s[h.id]=!0,t.memory.geometries++),h}function l(u){const h=u.attributes;for(const p in h)e.update(h[p],i.ARRAY_BUFFER)}function c(u){const h=[],p=u.index,v=u.attributes.position;let M=0;if(p!==null){const T=p.array;M=p.version;for(let A=0,b=T.length;A<b;A+=3){const N=T[A+0],R=T[A+1],D=T[A+2];h.push(N,R,R,D,D,N)}}else if(v!==void 0){const T=v.array;M=v.version;for(let A=0,b=T.length/3-1;A<b;A+=3){const N=A+0,R=A+1,D=A+2;h.push(N,R,R,D,D,N)}}else return;const m=new(Xd(h)?jd:$d)(h,1);m.version=M;const d=r.get(u);d&&e.remove(d),r.set(u,m)}function f(u){const h=r.get(u);if(h){const p=u.index;p!==null&&h.version<p.version&&c(u)}else c(u);return r.get(u)}return{get:o,update:l,getWireframeAttribute:f}}function iM(i,e,t){let n;function s(h){n=h}let r,a;function o(h){r=h.type,a=h.bytesPerElement}function l(h,p){i.drawElements(n,p,r,h*a),t.update(p,n,1)}function c(h,p,v){v!==0&&(i.drawElementsInstanced(n,p,r,h*a,v),t.update(p,n,v))}function f(h,p,v){if(v===0)return;e.get("WEBGL_multi_draw").multiDrawElementsWEBGL(n,p,0,r,h,0,v);let m=0;for(let d=0;d<v;d++)m+=p[d];t.update(m,n,1)}function u(h,p,v,M){if(v===0)return;const m=e.get("WEBGL_multi_draw");if(m===null)for(let d=0;d<h.length;d++)c(h[d]/a,p[d],M[d]);else{m.multiDrawElementsInstancedWEBGL(n,p,0,r,h,0,M,0,v);let d=0;for(let T=0;T<v;T++)d+=p[T]*M[T];t.update(d,n,1)}}this.setMode=s,this.setIndex=o,this.render=l,this.renderInstances=c,this.renderMultiDraw=f,this.renderMultiDrawInstances=u}function sM(i){const e={geometries:0,textures:0},t={frame:0,calls:0,triangles:0,points:0,lines:0};function n(r,a,o){switch(t.calls++,a){case i.TRIANGLES:t.triangles+=o*(r/3);break;case i.LINES:t.lines+=o*(r/2);break;case i.LINE_STRIP:t.lines+=o*(r-1);break;case i.LINE_LOOP:t.lines+=o*r;break;case i.POINTS:t.points+=o*r;break;default:console.error("THREE.WebGLInfo: Unknown draw mode:",a);break}}function s(){t.calls=0,t.triangles=0,t.points=0,t.lines=0}return{memory:e,render:t,programs:null,autoReset:!0,reset:s,update:n}}function rM(i,e,t){const n=new WeakMap,s=new $t;function r(a,o,l){const c=a.morphTargetInfluences,f=o.morphAttributes.position||o.morphAttributes.normal||o.morphAttributes.color,u=f!==void 0?f.length:0;let h=n.get(o);if(h===void 0||h.count!==u){let _=function(){C.dispose(),n.delete(o),o.removeEventListener("dispose",_)};var p=_;h!==void 0&&h.texture.dispose();const v=o.morphAttributes.position!==void 0,M=o.morphAttributes.normal!==void 0,m=o.morphAttributes.color!==void 0,d=o.morphAttributes.position||[],T=o.morphAttributes.normal||[],A=o.morphAttributes.color||[];let b=0;v===!0&&(b=1),M===!0&&(b=2),m===!0&&(b=3);let N=o.attributes.position.count*b,R=1;N>e.maxTextureSize&&(R=Math.ceil(N/e.maxTextureSize),N=e.maxTextureSize);const D=new Float32Array(N*R*4*u),C=new qd(D,N,R,u);C.type=ki,C.needsUpdate=!0;const S=b*4;for(let y=0;y<u;y++){const F=d[y],k=T[y],q=A[y],H=N*R*4*y;for(let Y=0;Y<F.count;Y++){const j=Y*S;v===!0&&(s.fromBufferAttribute(F,Y),D[H+j+0]=s.x,D[H+j+1]=s.y,D[H+j+2]=s.z,D[H+j+3]=0),M===!0&&(s.fromBufferAttribute(k,Y),D[H+j+4]=s.x,D[H+j+5]=s.y,D[H+j+6]=s.z,D[H+j+7]=0),m===!0&&(s.fromBufferAttribute(q,Y),D[H+j+8]=s.x,D[H+j+9]=s.y,D[H+j+10]=s.z,D[H+j+11]=q.itemSize===4?s.w:1)}}h={count:u,texture:C,size:new tt(N,R)},n.set(o,h),o.addEventListener("dispose",_)}if(a.isInstancedMesh===!0&&a.morphTexture!==null)l.getUniforms().setValue(i,"morphTexture",a.morphTexture,t);else{let v=0;for(let m=0;m<c.length;m++)v+=c[m];const M=o.morphTargetsRelative?1:1-v;l.getUniforms().setValue(i,"morphTargetBaseInfluence",M),l.getUniforms().setValue(i,"morphTargetInfluences",c)}l.getUniforms().setValue(i,"morphTargetsTexture",h.texture,t),l.getUniforms().setValue(i,"morphTargetsTextureSize",h.size)}return{update:r}}function aM(i,e,t,n){let s=new WeakMap;function r(l){const c=n.render.frame,f=l.geometry,u=e.get(l,f);if(s.get(u)!==c&&(e.update(u),s.set(u,c)),l.isInstancedMesh&&(l.hasEventListener("dispose",o)===!1&&l.addEventListener("dispose",o),s.get(l)!==c&&(t.update(l.instanceMatrix,i.ARRAY_BUFFER),l.instanceColor!==null&&t.update(l.instanceColor,i.ARRAY_BUFFER),s.set(l,c))),l.isSkinnedMesh){const h=l.skeleton;s.get(h)!==c&&(h.update(),s.set(h,c))}return u}function a(){s=new WeakMap}function o(l){const c=l.target;c.removeEventListener("dispose",o),t.remove(c.instanceMatrix),c.instanceColor!==null&&t.remove(c.instanceColor)}return{update:r,dispose:a}}const ap=new Bn,vf=new ep(1,1),op=new qd,lp=new C_,cp=new Jd,xf=[],Mf=[],Sf=new Float32Array(16),yf=new Float32Array(9),Ef=new Float32Array(4);function Dr(i,e,t){const n=i[0];if(n<=0||n>0)return i;const s=e*t;let r=xf[s];if(r===void 0&&(r=new Float32Array(s),xf[s]=r),e!==0){n.toArray(r,0);for(let a=1,o=0;a!==e;++a)o+=t,i[a].toArray(r,o)}return r}function sn(i,e){if(i.length!==e.length)return!1;for(let t=0,n=i.length;t<n;t++)if(i[t]!==e[t])return!1;return!0}function rn(i,e){for(let t=0,n=e.length;t<n;t++)i[t]=e[t]}function Oo(i,e){let t=Mf[e];t===void 0&&(t=new Int32Array(e),Mf[e]=t);for(let n=0;n!==e;++n)t[n]=i.allocateTextureUnit();return t}function oM(i,e){const t=this.cache;t[0]!==e&&(i.uniform1f(this.addr,e),t[0]=e)}function lM(i,e){const t=this.cache;if(e.x!==void 0)(t[0]!==e.x||t[1]!==e.y)&&(i.uniform2f(this.addr,e.x,e.y),t[0]=e.x,t[1]=e.y);else{if(sn(t,e))return;i.uniform2fv(this.addr,e),rn(t,e)}}function cM(i,e){const t=this.cache;if(e.x!==void 0)(t[0]!==e.x||t[1]!==e.y||t[2]!==e.z)&&(i.uniform3f(this.addr,e.x,e.y,e.z),t[0]=e.x,t[1]=e.y,t[2]=e.z);else if(e.r!==void 0)(t[0]!==e.r||t[1]!==e.g||t[2]!==e.b)&&(i.uniform3f(this.addr,e.r,e.g,e.b),t[0]=e.r,t[1]=e.g,t[2]=e.b);else{if(sn(t,e))return;i.uniform3fv(this.addr,e),rn(t,e)}}function uM(i,e){const t=this.cache;if(e.x!==void 0)(t[0]!==e.x||t[1]!==e.y||t[2]!==e.z||t[3]!==e.w)&&(i.uniform4f(this.addr,e.x,e.y,e.z,e.w),t[0]=e.x,t[1]=e.y,t[2]=e.z,t[3]=e.w);else{if(sn(t,e))return;i.uniform4fv(this.addr,e),rn(t,e)}}function hM(i,e){const t=this.cache,n=e.elements;if(n===void 0){if(sn(t,e))return;i.uniformMatrix2fv(this.addr,!1,e),rn(t,e)}else{if(sn(t,n))return;Ef.set(n),i.uniformMatrix2fv(this.addr,!1,Ef),rn(t,n)}}function fM(i,e){const t=this.cache,n=e.elements;if(n===void 0){if(sn(t,e))return;i.uniformMatrix3fv(this.addr,!1,e),rn(t,e)}else{if(sn(t,n))return;yf.set(n),i.uniformMatrix3fv(this.addr,!1,yf),rn(t,n)}}function dM(i,e){const t=this.cache,n=e.elements;if(n===void 0){if(sn(t,e))return;i.uniformMatrix4fv(this.addr,!1,e),rn(t,e)}else{if(sn(t,n))return;Sf.set(n),i.uniformMatrix4fv(this.addr,!1,Sf),rn(t,n)}}function pM(i,e){const t=this.cache;t[0]!==e&&(i.uniform1i(this.addr,e),t[0]=e)}function mM(i,e){const t=this.cache;if(e.x!==void 0)(t[0]!==e.x||t[1]!==e.y)&&(i.uniform2i(this.addr,e.x,e.y),t[0]=e.x,t[1]=e.y);else{if(sn(t,e))return;i.uniform2iv(this.addr,e),rn(t,e)}}function gM(i,e){const t=this.cache;if(e.x!==void 0)(t[0]!==e.x||t[1]!==e.y||t[2]!==e.z)&&(i.uniform3i(this.addr,e.x,e.y,e.z),t[0]=e.x,t[1]=e.y,t[2]=e.z);else{if(sn(t,e))return;i.uniform3iv(this.addr,e),rn(t,e)}}function _M(i,e){const t=this.cache;if(e.x!==void 0)(t[0]!==e.x||t[1]!==e.y||t[2]!==e.z||t[3]!==e.w)&&(i.uniform4i(this.addr,e.x,e.y,e.z,e.w),t[0]=e.x,t[1]=e.y,t[2]=e.z,t[3]=e.w);else{if(sn(t,e))return;i.uniform4iv(this.addr,e),rn(t,e)}}function vM(i,e){const t=this.cache;t[0]!==e&&(i.uniform1ui(this.addr,e),t[0]=e)}function xM(i,e){const t=this.cache;if(e.x!==void 0)(t[0]!==e.x||t[1]!==e.y)&&(i.uniform2ui(this.addr,e.x,e.y),t[0]=e.x,t[1]=e.y);else{if(sn(t,e))return;i.uniform2uiv(this.addr,e),rn(t,e)}}function MM(i,e){const t=this.cache;if(e.x!==void 0)(t[0]!==e.x||t[1]!==e.y||t[2]!==e.z)&&(i.uniform3ui(this.addr,e.x,e.y,e.z),t[0]=e.x,t[1]=e.y,t[2]=e.z);else{if(sn(t,e))return;i.uniform3uiv(this.addr,e),rn(t,e)}}function SM(i,e){const t=this.cache;if(e.x!==void 0)(t[0]!==e.x||t[1]!==e.y||t[2]!==e.z||t[3]!==e.w)&&(i.uniform4ui(this.addr,e.x,e.y,e.z,e.w),t[0]=e.x,t[1]=e.y,t[2]=e.z,t[3]=e.w);else{if(sn(t,e))return;i.uniform4uiv(this.addr,e),rn(t,e)}}function yM(i,e,t){const n=this.cache,s=t.allocateTextureUnit();n[0]!==s&&(i.uniform1i(this.addr,s),n[0]=s);let r;this.type===i.SAMPLER_2D_SHADOW?(vf.compareFunction=Wd,r=vf):r=ap,t.setTexture2D(e||r,s)}function EM(i,e,t){const n=this.cache,s=t.allocateTextureUnit();n[0]!==s&&(i.uniform1i(this.addr,s),n[0]=s),t.setTexture3D(e||lp,s)}function bM(i,e,t){const n=this.cache,s=t.allocateTextureUnit();n[0]!==s&&(i.uniform1i(this.addr,s),n[0]=s),t.setTextureCube(e||cp,s)}function TM(i,e,t){const n=this.cache,s=t.allocateTextureUnit();n[0]!==s&&(i.uniform1i(this.addr,s),n[0]=s),t.setTexture2DArray(e||op,s)}function wM(i){switch(i){case 5126:return oM;case 35664:return lM;case 35665:return cM;case 35666:return uM;case 35674:return hM;case 35675:return fM;case 35676:return dM;case 5124:case 35670:return pM;case 35667:case 35671:return mM;case 35668:case 35672:return gM;case 35669:case 35673:return _M;case 5125:return vM;case 36294:return xM;case 36295:return MM;case 36296:return SM;case 35678:case 36198:case 36298:case 36306:case 35682:return yM;case 35679:case 36299:case 36307:return EM;case 35680:case 36300:case 36308:case 36293:return bM;case 36289:case 36303:case 36311:case 36292:return TM}}function AM(i,e){i.uniform1fv(this.addr,e)}function RM(i,e){const t=Dr(e,this.size,2);i.uniform2fv(this.addr,t)}function CM(i,e){const t=Dr(e,this.size,3);i.uniform3fv(this.addr,t)}function PM(i,e){const t=Dr(e,this.size,4);i.uniform4fv(this.addr,t)}function DM(i,e){const t=Dr(e,this.size,4);i.uniformMatrix2fv(this.addr,!1,t)}function LM(i,e){const t=Dr(e,this.size,9);i.uniformMatrix3fv(this.addr,!1,t)}function UM(i,e){const t=Dr(e,this.size,16);i.uniformMatrix4fv(this.addr,!1,t)}function IM(i,e){i.uniform1iv(this.addr,e)}function NM(i,e){i.uniform2iv(this.addr,e)}function FM(i,e){i.uniform3iv(this.addr,e)}function OM(i,e){i.uniform4iv(this.addr,e)}function BM(i,e){i.uniform1uiv(this.addr,e)}function zM(i,e){i.uniform2uiv(this.addr,e)}function kM(i,e){i.uniform3uiv(this.addr,e)}function HM(i,e){i.uniform4uiv(this.addr,e)}function VM(i,e,t){const n=this.cache,s=e.length,r=Oo(t,s);sn(n,r)||(i.uniform1iv(this.addr,r),rn(n,r));for(let a=0;a!==s;++a)t.setTexture2D(e[a]||ap,r[a])}function GM(i,e,t){const n=this.cache,s=e.length,r=Oo(t,s);sn(n,r)||(i.uniform1iv(this.addr,r),rn(n,r));for(let a=0;a!==s;++a)t.setTexture3D(e[a]||lp,r[a])}function WM(i,e,t){const n=this.cache,s=e.length,r=Oo(t,s);sn(n,r)||(i.uniform1iv(this.addr,r),rn(n,r));for(let a=0;a!==s;++a)t.setTextureCube(e[a]||cp,r[a])}function XM(i,e,t){const n=this.cache,s=e.length,r=Oo(t,s);sn(n,r)||(i.uniform1iv(this.addr,r),rn(n,r));for(let a=0;a!==s;++a)t.setTexture2DArray(e[a]||op,r[a])}function qM(i){switch(i){case 5126:return AM;case 35664:return RM;case 35665:return CM;case 35666:return PM;case 35674:return DM;case 35675:return LM;case 35676:return UM;case 5124:case 35670:return IM;case 35667:case 35671:return NM;case 35668:case 35672:return FM;case 35669:case 35673:return OM;case 5125:return BM;case 36294:return zM;case 36295:return kM;case 36296:return HM;case 35678:case 36198:case 36298:case 36306:case 35682:return VM;case 35679:case 36299:case 36307:return GM;case 35680:case 36300:case 36308:case 36293:return WM;case 36289:case 36303:case 36311:case 36292:return XM}}class YM{constructor(e,t,n){this.id=e,this.addr=n,this.cache=[],this.type=t.type,this.setValue=wM(t.type)}}class $M{constructor(e,t,n){this.id=e,this.addr=n,this.cache=[],this.type=t.type,this.size=t.size,this.setValue=qM(t.type)}}class jM{constructor(e){this.id=e,this.seq=[],this.map={}}setValue(e,t,n){const s=this.seq;for(let r=0,a=s.length;r!==a;++r){const o=s[r];o.setValue(e,t[o.id],n)}}}const Fl=/(\w+)(\])?(\[|\.)?/g;function bf(i,e){i.seq.push(e),i.map[e.id]=e}function KM(i,e,t){const n=i.name,s=n.length;for(Fl.lastIndex=0;;){const r=Fl.exec(n),a=Fl.lastIndex;let o=r[1];const l=r[2]==="]",c=r[3];if(l&&(o=o|0),c===void 0||c==="["&&a+2===s){bf(t,c===void 0?new YM(o,i,e):new $M(o,i,e));break}else{let u=t.map[o];u===void 0&&(u=new jM(o),bf(t,u)),t=u}}}class ho{constructor(e,t){this.seq=[],this.map={};const n=e.getProgramParameter(t,e.ACTIVE_UNIFORMS);for(let s=0;s<n;++s){const r=e.getActiveUniform(t,s),a=e.getUniformLocation(t,r.name);KM(r,a,this)}}setValue(e,t,n,s){const r=this.map[t];r!==void 0&&r.setValue(e,n,s)}setOptional(e,t,n){const s=t[n];s!==void 0&&this.setValue(e,n,s)}static upload(e,t,n,s){for(let r=0,a=t.length;r!==a;++r){const o=t[r],l=n[o.id];l.needsUpdate!==!1&&o.setValue(e,l.value,s)}}static seqWithValue(e,t){const n=[];for(let s=0,r=e.length;s!==r;++s){const a=e[s];a.id in t&&n.push(a)}return n}}function Tf(i,e,t){const n=i.createShader(e);return i.shaderSource(n,t),i.compileShader(n),n}const ZM=37297;let JM=0;function QM(i,e){const t=i.split(`
`),n=[],s=Math.max(e-6,0),r=Math.min(e+6,t.length);for(let a=s;a<r;a++){const o=a+1;n.push(`${o===e?">":" "} ${o}: ${t[a]}`)}return n.join(`
`)}const wf=new st;function eS(i){_t._getMatrix(wf,_t.workingColorSpace,i);const e=`mat3( ${wf.elements.map(t=>t.toFixed(4))} )`;switch(_t.getTransfer(i)){case xo:return[e,"LinearTransferOETF"];case Rt:return[e,"sRGBTransferOETF"];default:return console.warn("THREE.WebGLProgram: Unsupported color space: ",i),[e,"LinearTransferOETF"]}}function Af(i,e,t){const n=i.getShaderParameter(e,i.COMPILE_STATUS),r=(i.getShaderInfoLog(e)||"").trim();if(n&&r==="")return"";const a=/ERROR: 0:(\d+)/.exec(r);if(a){const o=parseInt(a[1]);return t.toUpperCase()+`

`+r+`

`+QM(i.getShaderSource(e),o)}else return r}function tS(i,e){const t=eS(e);return[`vec4 ${i}( vec4 value ) {`,`	return ${t[1]}( vec4( value.rgb * ${t[0]}, value.a ) );`,"}"].join(`
`)}function nS(i,e){let t;switch(e){case n_:t="Linear";break;case i_:t="Reinhard";break;case s_:t="Cineon";break;case r_:t="ACESFilmic";break;case o_:t="AgX";break;case l_:t="Neutral";break;case a_:t="Custom";break;default:console.warn("THREE.WebGLProgram: Unsupported toneMapping:",e),t="Linear"}return"vec3 "+i+"( vec3 color ) { return "+t+"ToneMapping( color ); }"}const to=new z;function iS(){_t.getLuminanceCoefficients(to);const i=to.x.toFixed(4),e=to.y.toFixed(4),t=to.z.toFixed(4);return["float luminance( const in vec3 rgb ) {",`	const vec3 weights = vec3( ${i}, ${e}, ${t} );`,"	return dot( weights, rgb );","}"].join(`
`)}function sS(i){return[i.extensionClipCullDistance?"#extension GL_ANGLE_clip_cull_distance : require":"",i.extensionMultiDraw?"#extension GL_ANGLE_multi_draw : require":""].filter(Jr).join(`
`)}function rS(i){const e=[];for(const t in i){const n=i[t];n!==!1&&e.push("#define "+t+" "+n)}return e.join(`
`)}function aS(i,e){const t={},n=i.getProgramParameter(e,i.ACTIVE_ATTRIBUTES);for(let s=0;s<n;s++){const r=i.getActiveAttrib(e,s),a=r.name;let o=1;r.type===i.FLOAT_MAT2&&(o=2),r.type===i.FLOAT_MAT3&&(o=3),r.type===i.FLOAT_MAT4&&(o=4),t[a]={type:r.type,location:i.getAttribLocation(e,a),locationSize:o}}return t}function Jr(i){return i!==""}function Rf(i,e){const t=e.numSpotLightShadows+e.numSpotLightMaps-e.numSpotLightShadowsWithMaps;return i.replace(/NUM_DIR_LIGHTS/g,e.numDirLights).replace(/NUM_SPOT_LIGHTS/g,e.numSpotLights).replace(/NUM_SPOT_LIGHT_MAPS/g,e.numSpotLightMaps).replace(/NUM_SPOT_LIGHT_COORDS/g,t).replace(/NUM_RECT_AREA_LIGHTS/g,e.numRectAreaLights).replace(/NUM_POINT_LIGHTS/g,e.numPointLights).replace(/NUM_HEMI_LIGHTS/g,e.numHemiLights).replace(/NUM_DIR_LIGHT_SHADOWS/g,e.numDirLightShadows).replace(/NUM_SPOT_LIGHT_SHADOWS_WITH_MAPS/g,e.numSpotLightShadowsWithMaps).replace(/NUM_SPOT_LIGHT_SHADOWS/g,e.numSpotLightShadows).replace(/NUM_POINT_LIGHT_SHADOWS/g,e.numPointLightShadows)}function Cf(i,e){return i.replace(/NUM_CLIPPING_PLANES/g,e.numClippingPlanes).replace(/UNION_CLIPPING_PLANES/g,e.numClippingPlanes-e.numClipIntersection)}const oS=/^[ \t]*#include +<([\w\d./]+)>/gm;function Hc(i){return i.replace(oS,cS)}const lS=new Map;function cS(i,e){let t=at[e];if(t===void 0){const n=lS.get(e);if(n!==void 0)t=at[n],console.warn('THREE.WebGLRenderer: Shader chunk "%s" has been deprecated. Use "%s" instead.',e,n);else throw new Error("Can not resolve #include <"+e+">")}return Hc(t)}const uS=/#pragma unroll_loop_start\s+for\s*\(\s*int\s+i\s*=\s*(\d+)\s*;\s*i\s*<\s*(\d+)\s*;\s*i\s*\+\+\s*\)\s*{([\s\S]+?)}\s+#pragma unroll_loop_end/g;function Pf(i){return i.replace(uS,hS)}function hS(i,e,t,n){let s="";for(let r=parseInt(e);r<parseInt(t);r++)s+=n.replace(/\[\s*i\s*\]/g,"[ "+r+" ]").replace(/UNROLLED_LOOP_INDEX/g,r);return s}function Df(i){let e=`precision ${i.precision} float;
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
#define LOW_PRECISION`),e}function fS(i){let e="SHADOWMAP_TYPE_BASIC";return i.shadowMapType===Ud?e="SHADOWMAP_TYPE_PCF":i.shadowMapType===Ng?e="SHADOWMAP_TYPE_PCF_SOFT":i.shadowMapType===Bi&&(e="SHADOWMAP_TYPE_VSM"),e}function dS(i){let e="ENVMAP_TYPE_CUBE";if(i.envMap)switch(i.envMapMode){case yr:case Er:e="ENVMAP_TYPE_CUBE";break;case Uo:e="ENVMAP_TYPE_CUBE_UV";break}return e}function pS(i){let e="ENVMAP_MODE_REFLECTION";if(i.envMap)switch(i.envMapMode){case Er:e="ENVMAP_MODE_REFRACTION";break}return e}function mS(i){let e="ENVMAP_BLENDING_NONE";if(i.envMap)switch(i.combine){case au:e="ENVMAP_BLENDING_MULTIPLY";break;case e_:e="ENVMAP_BLENDING_MIX";break;case t_:e="ENVMAP_BLENDING_ADD";break}return e}function gS(i){const e=i.envMapCubeUVHeight;if(e===null)return null;const t=Math.log2(e)-2,n=1/e;return{texelWidth:1/(3*Math.max(Math.pow(2,t),112)),texelHeight:n,maxMip:t}}function _S(i,e,t,n){const s=i.getContext(),r=t.defines;let a=t.vertexShader,o=t.fragmentShader;const l=fS(t),c=dS(t),f=pS(t),u=mS(t),h=gS(t),p=sS(t),v=rS(r),M=s.createProgram();let m,d,T=t.glslVersion?"#version "+t.glslVersion+`
`:"";t.isRawShaderMaterial?(m=["#define SHADER_TYPE "+t.shaderType,"#define SHADER_NAME "+t.shaderName,v].filter(Jr).join(`
`),m.length>0&&(m+=`
`),d=["#define SHADER_TYPE "+t.shaderType,"#define SHADER_NAME "+t.shaderName,v].filter(Jr).join(`
`),d.length>0&&(d+=`
`)):(m=[Df(t),"#define SHADER_TYPE "+t.shaderType,"#define SHADER_NAME "+t.shaderName,v,t.extensionClipCullDistance?"#define USE_CLIP_DISTANCE":"",t.batching?"#define USE_BATCHING":"",t.batchingColor?"#define USE_BATCHING_COLOR":"",t.instancing?"#define USE_INSTANCING":"",t.instancingColor?"#define USE_INSTANCING_COLOR":"",t.instancingMorph?"#define USE_INSTANCING_MORPH":"",t.useFog&&t.fog?"#define USE_FOG":"",t.useFog&&t.fogExp2?"#define FOG_EXP2":"",t.map?"#define USE_MAP":"",t.envMap?"#define USE_ENVMAP":"",t.envMap?"#define "+f:"",t.lightMap?"#define USE_LIGHTMAP":"",t.aoMap?"#define USE_AOMAP":"",t.bumpMap?"#define USE_BUMPMAP":"",t.normalMap?"#define USE_NORMALMAP":"",t.normalMapObjectSpace?"#define USE_NORMALMAP_OBJECTSPACE":"",t.normalMapTangentSpace?"#define USE_NORMALMAP_TANGENTSPACE":"",t.displacementMap?"#define USE_DISPLACEMENTMAP":"",t.emissiveMap?"#define USE_EMISSIVEMAP":"",t.anisotropy?"#define USE_ANISOTROPY":"",t.anisotropyMap?"#define USE_ANISOTROPYMAP":"",t.clearcoatMap?"#define USE_CLEARCOATMAP":"",t.clearcoatRoughnessMap?"#define USE_CLEARCOAT_ROUGHNESSMAP":"",t.clearcoatNormalMap?"#define USE_CLEARCOAT_NORMALMAP":"",t.iridescenceMap?"#define USE_IRIDESCENCEMAP":"",t.iridescenceThicknessMap?"#define USE_IRIDESCENCE_THICKNESSMAP":"",t.specularMap?"#define USE_SPECULARMAP":"",t.specularColorMap?"#define USE_SPECULAR_COLORMAP":"",t.specularIntensityMap?"#define USE_SPECULAR_INTENSITYMAP":"",t.roughnessMap?"#define USE_ROUGHNESSMAP":"",t.metalnessMap?"#define USE_METALNESSMAP":"",t.alphaMap?"#define USE_ALPHAMAP":"",t.alphaHash?"#define USE_ALPHAHASH":"",t.transmission?"#define USE_TRANSMISSION":"",t.transmissionMap?"#define USE_TRANSMISSIONMAP":"",t.thicknessMap?"#define USE_THICKNESSMAP":"",t.sheenColorMap?"#define USE_SHEEN_COLORMAP":"",t.sheenRoughnessMap?"#define USE_SHEEN_ROUGHNESSMAP":"",t.mapUv?"#define MAP_UV "+t.mapUv:"",t.alphaMapUv?"#define ALPHAMAP_UV "+t.alphaMapUv:"",t.lightMapUv?"#define LIGHTMAP_UV "+t.lightMapUv:"",t.aoMapUv?"#define AOMAP_UV "+t.aoMapUv:"",t.emissiveMapUv?"#define EMISSIVEMAP_UV "+t.emissiveMapUv:"",t.bumpMapUv?"#define BUMPMAP_UV "+t.bumpMapUv:"",t.normalMapUv?"#define NORMALMAP_UV "+t.normalMapUv:"",t.displacementMapUv?"#define DISPLACEMENTMAP_UV "+t.displacementMapUv:"",t.metalnessMapUv?"#define METALNESSMAP_UV "+t.metalnessMapUv:"",t.roughnessMapUv?"#define ROUGHNESSMAP_UV "+t.roughnessMapUv:"",t.anisotropyMapUv?"#define ANISOTROPYMAP_UV "+t.anisotropyMapUv:"",t.clearcoatMapUv?"#define CLEARCOATMAP_UV "+t.clearcoatMapUv:"",t.clearcoatNormalMapUv?"#define CLEARCOAT_NORMALMAP_UV "+t.clearcoatNormalMapUv:"",t.clearcoatRoughnessMapUv?"#define CLEARCOAT_ROUGHNESSMAP_UV "+t.clearcoatRoughnessMapUv:"",t.iridescenceMapUv?"#define IRIDESCENCEMAP_UV "+t.iridescenceMapUv:"",t.iridescenceThicknessMapUv?"#define IRIDESCENCE_THICKNESSMAP_UV "+t.iridescenceThicknessMapUv:"",t.sheenColorMapUv?"#define SHEEN_COLORMAP_UV "+t.sheenColorMapUv:"",t.sheenRoughnessMapUv?"#define SHEEN_ROUGHNESSMAP_UV "+t.sheenRoughnessMapUv:"",t.specularMapUv?"#define SPECULARMAP_UV "+t.specularMapUv:"",t.specularColorMapUv?"#define SPECULAR_COLORMAP_UV "+t.specularColorMapUv:"",t.specularIntensityMapUv?"#define SPECULAR_INTENSITYMAP_UV "+t.specularIntensityMapUv:"",t.transmissionMapUv?"#define TRANSMISSIONMAP_UV "+t.transmissionMapUv:"",t.thicknessMapUv?"#define THICKNESSMAP_UV "+t.thicknessMapUv:"",t.vertexTangents&&t.flatShading===!1?"#define USE_TANGENT":"",t.vertexColors?"#define USE_COLOR":"",t.vertexAlphas?"#define USE_COLOR_ALPHA":"",t.vertexUv1s?"#define USE_UV1":"",t.vertexUv2s?"#define USE_UV2":"",t.vertexUv3s?"#define USE_UV3":"",t.pointsUvs?"#define USE_POINTS_UV":"",t.flatShading?"#define FLAT_SHADED":"",t.skinning?"#define USE_SKINNING":"",t.morphTargets?"#define USE_MORPHTARGETS":"",t.morphNormals&&t.flatShading===!1?"#define USE_MORPHNORMALS":"",t.morphColors?"#define USE_MORPHCOLORS":"",t.morphTargetsCount>0?"#define MORPHTARGETS_TEXTURE_STRIDE "+t.morphTextureStride:"",t.morphTargetsCount>0?"#define MORPHTARGETS_COUNT "+t.morphTargetsCount:"",t.doubleSided?"#define DOUBLE_SIDED":"",t.flipSided?"#define FLIP_SIDED":"",t.shadowMapEnabled?"#define USE_SHADOWMAP":"",t.shadowMapEnabled?"#define "+l:"",t.sizeAttenuation?"#define USE_SIZEATTENUATION":"",t.numLightProbes>0?"#define USE_LIGHT_PROBES":"",t.logarithmicDepthBuffer?"#define USE_LOGARITHMIC_DEPTH_BUFFER":"",t.reversedDepthBuffer?"#define USE_REVERSED_DEPTH_BUFFER":"","uniform mat4 modelMatrix;","uniform mat4 modelViewMatrix;","uniform mat4 projectionMatrix;","uniform mat4 viewMatrix;","uniform mat3 normalMatrix;","uniform vec3 cameraPosition;","uniform bool isOrthographic;","#ifdef USE_INSTANCING","	attribute mat4 instanceMatrix;","#endif","#ifdef USE_INSTANCING_COLOR","	attribute vec3 instanceColor;","#endif","#ifdef USE_INSTANCING_MORPH","	uniform sampler2D morphTexture;","#endif","attribute vec3 position;","attribute vec3 normal;","attribute vec2 uv;","#ifdef USE_UV1","	attribute vec2 uv1;","#endif","#ifdef USE_UV2","	attribute vec2 uv2;","#endif","#ifdef USE_UV3","	attribute vec2 uv3;","#endif","#ifdef USE_TANGENT","	attribute vec4 tangent;","#endif","#if defined( USE_COLOR_ALPHA )","	attribute vec4 color;","#elif defined( USE_COLOR )","	attribute vec3 color;","#endif","#ifdef USE_SKINNING","	attribute vec4 skinIndex;","	attribute vec4 skinWeight;","#endif",`
`].filter(Jr).join(`
`),d=[Df(t),"#define SHADER_TYPE "+t.shaderType,"#define SHADER_NAME "+t.shaderName,v,t.useFog&&t.fog?"#define USE_FOG":"",t.useFog&&t.fogExp2?"#define FOG_EXP2":"",t.alphaToCoverage?"#define ALPHA_TO_COVERAGE":"",t.map?"#define USE_MAP":"",t.matcap?"#define USE_MATCAP":"",t.envMap?"#define USE_ENVMAP":"",t.envMap?"#define "+c:"",t.envMap?"#define "+f:"",t.envMap?"#define "+u:"",h?"#define CUBEUV_TEXEL_WIDTH "+h.texelWidth:"",h?"#define CUBEUV_TEXEL_HEIGHT "+h.texelHeight:"",h?"#define CUBEUV_MAX_MIP "+h.maxMip+".0":"",t.lightMap?"#define USE_LIGHTMAP":"",t.aoMap?"#define USE_AOMAP":"",t.bumpMap?"#define USE_BUMPMAP":"",t.normalMap?"#define USE_NORMALMAP":"",t.normalMapObjectSpace?"#define USE_NORMALMAP_OBJECTSPACE":"",t.normalMapTangentSpace?"#define USE_NORMALMAP_TANGENTSPACE":"",t.emissiveMap?"#define USE_EMISSIVEMAP":"",t.anisotropy?"#define USE_ANISOTROPY":"",t.anisotropyMap?"#define USE_ANISOTROPYMAP":"",t.clearcoat?"#define USE_CLEARCOAT":"",t.clearcoatMap?"#define USE_CLEARCOATMAP":"",t.clearcoatRoughnessMap?"#define USE_CLEARCOAT_ROUGHNESSMAP":"",t.clearcoatNormalMap?"#define USE_CLEARCOAT_NORMALMAP":"",t.dispersion?"#define USE_DISPERSION":"",t.iridescence?"#define USE_IRIDESCENCE":"",t.iridescenceMap?"#define USE_IRIDESCENCEMAP":"",t.iridescenceThicknessMap?"#define USE_IRIDESCENCE_THICKNESSMAP":"",t.specularMap?"#define USE_SPECULARMAP":"",t.specularColorMap?"#define USE_SPECULAR_COLORMAP":"",t.specularIntensityMap?"#define USE_SPECULAR_INTENSITYMAP":"",t.roughnessMap?"#define USE_ROUGHNESSMAP":"",t.metalnessMap?"#define USE_METALNESSMAP":"",t.alphaMap?"#define USE_ALPHAMAP":"",t.alphaTest?"#define USE_ALPHATEST":"",t.alphaHash?"#define USE_ALPHAHASH":"",t.sheen?"#define USE_SHEEN":"",t.sheenColorMap?"#define USE_SHEEN_COLORMAP":"",t.sheenRoughnessMap?"#define USE_SHEEN_ROUGHNESSMAP":"",t.transmission?"#define USE_TRANSMISSION":"",t.transmissionMap?"#define USE_TRANSMISSIONMAP":"",t.thicknessMap?"#define USE_THICKNESSMAP":"",t.vertexTangents&&t.flatShading===!1?"#define USE_TANGENT":"",t.vertexColors||t.instancingColor||t.batchingColor?"#define USE_COLOR":"",t.vertexAlphas?"#define USE_COLOR_ALPHA":"",t.vertexUv1s?"#define USE_UV1":"",t.vertexUv2s?"#define USE_UV2":"",t.vertexUv3s?"#define USE_UV3":"",t.pointsUvs?"#define USE_POINTS_UV":"",t.gradientMap?"#define USE_GRADIENTMAP":"",t.flatShading?"#define FLAT_SHADED":"",t.doubleSided?"#define DOUBLE_SIDED":"",t.flipSided?"#define FLIP_SIDED":"",t.shadowMapEnabled?"#define USE_SHADOWMAP":"",t.shadowMapEnabled?"#define "+l:"",t.premultipliedAlpha?"#define PREMULTIPLIED_ALPHA":"",t.numLightProbes>0?"#define USE_LIGHT_PROBES":"",t.decodeVideoTexture?"#define DECODE_VIDEO_TEXTURE":"",t.decodeVideoTextureEmissive?"#define DECODE_VIDEO_TEXTURE_EMISSIVE":"",t.logarithmicDepthBuffer?"#define USE_LOGARITHMIC_DEPTH_BUFFER":"",t.reversedDepthBuffer?"#define USE_REVERSED_DEPTH_BUFFER":"","uniform mat4 viewMatrix;","uniform vec3 cameraPosition;","uniform bool isOrthographic;",t.toneMapping!==os?"#define TONE_MAPPING":"",t.toneMapping!==os?at.tonemapping_pars_fragment:"",t.toneMapping!==os?nS("toneMapping",t.toneMapping):"",t.dithering?"#define DITHERING":"",t.opaque?"#define OPAQUE":"",at.colorspace_pars_fragment,tS("linearToOutputTexel",t.outputColorSpace),iS(),t.useDepthPacking?"#define DEPTH_PACKING "+t.depthPacking:"",`
`].filter(Jr).join(`
`)),a=Hc(a),a=Rf(a,t),a=Cf(a,t),o=Hc(o),o=Rf(o,t),o=Cf(o,t),a=Pf(a),o=Pf(o),t.isRawShaderMaterial!==!0&&(T=`#version 300 es
`,m=[p,"#define attribute in","#define varying out","#define texture2D texture"].join(`
`)+`
`+m,d=["#define varying in",t.glslVersion===Lh?"":"layout(location = 0) out highp vec4 pc_fragColor;",t.glslVersion===Lh?"":"#define gl_FragColor pc_fragColor","#define gl_FragDepthEXT gl_FragDepth","#define texture2D texture","#define textureCube texture","#define texture2DProj textureProj","#define texture2DLodEXT textureLod","#define texture2DProjLodEXT textureProjLod","#define textureCubeLodEXT textureLod","#define texture2DGradEXT textureGrad","#define texture2DProjGradEXT textureProjGrad","#define textureCubeGradEXT textureGrad"].join(`
`)+`
`+d);const A=T+m+a,b=T+d+o,N=Tf(s,s.VERTEX_SHADER,A),R=Tf(s,s.FRAGMENT_SHADER,b);s.attachShader(M,N),s.attachShader(M,R),t.index0AttributeName!==void 0?s.bindAttribLocation(M,0,t.index0AttributeName):t.morphTargets===!0&&s.bindAttribLocation(M,0,"position"),s.linkProgram(M);function D(y){if(i.debug.checkShaderErrors){const F=s.getProgramInfoLog(M)||"",k=s.getShaderInfoLog(N)||"",q=s.getShaderInfoLog(R)||"",H=F.trim(),Y=k.trim(),j=q.trim();let K=!0,ae=!0;if(s.getProgramParameter(M,s.LINK_STATUS)===!1)if(K=!1,typeof i.debug.onShaderError=="function")i.debug.onShaderError(s,M,N,R);else{const oe=Af(s,N,"vertex"),ve=Af(s,R,"fragment");console.error("THREE.WebGLProgram: Shader Error "+s.getError()+" - VALIDATE_STATUS "+s.getProgramParameter(M,s.VALIDATE_STATUS)+`

Material Name: `+y.name+`
Material Type: `+y.type+`

Program Info Log: `+H+`
`+oe+`
`+ve)}else H!==""?console.warn("THREE.WebGLProgram: Program Info Log:",H):(Y===""||j==="")&&(ae=!1);ae&&(y.diagnostics={runnable:K,programLog:H,vertexShader:{log:Y,prefix:m},fragmentShader:{log:j,prefix:d}})}s.deleteShader(N),s.deleteShader(R),C=new ho(s,M),S=aS(s,M)}let C;this.getUniforms=function(){return C===void 0&&D(this),C};let S;this.getAttributes=function(){return S===void 0&&D(this),S};let _=t.rendererExtensionParallelShaderCompile===!1;return this.isReady=function(){return _===!1&&(_=s.getProgramParameter(M,ZM)),_},this.destroy=function(){n.releaseStatesOfProgram(this),s.deleteProgram(M),this.program=void 0},this.type=t.shaderType,this.name=t.shaderName,this.id=JM++,this.cacheKey=e,this.usedTimes=1,this.program=M,this.vertexShader=N,this.fragmentShader=R,this}let vS=0;class xS{constructor(){this.shaderCache=new Map,this.materialCache=new Map}update(e){const t=e.vertexShader,n=e.fragmentShader,s=this._getShaderStage(t),r=this._getShaderStage(n),a=this._getShaderCacheForMaterial(e);return a.has(s)===!1&&(a.add(s),s.usedTimes++),a.has(r)===!1&&(a.add(r),r.usedTimes++),this}remove(e){const t=this.materialCache.get(e);for(const n of t)n.usedTimes--,n.usedTimes===0&&this.shaderCache.delete(n.code);return this.materialCache.delete(e),this}getVertexShaderID(e){return this._getShaderStage(e.vertexShader).id}getFragmentShaderID(e){return this._getShaderStage(e.fragmentShader).id}dispose(){this.shaderCache.clear(),this.materialCache.clear()}_getShaderCacheForMaterial(e){const t=this.materialCache;let n=t.get(e);return n===void 0&&(n=new Set,t.set(e,n)),n}_getShaderStage(e){const t=this.shaderCache;let n=t.get(e);return n===void 0&&(n=new MS(e),t.set(e,n)),n}}class MS{constructor(e){this.id=vS++,this.code=e,this.usedTimes=0}}function SS(i,e,t,n,s,r,a){const o=new pu,l=new xS,c=new Set,f=[],u=s.logarithmicDepthBuffer,h=s.vertexTextures;let p=s.precision;const v={MeshDepthMaterial:"depth",MeshDistanceMaterial:"distanceRGBA",MeshNormalMaterial:"normal",MeshBasicMaterial:"basic",MeshLambertMaterial:"lambert",MeshPhongMaterial:"phong",MeshToonMaterial:"toon",MeshStandardMaterial:"physical",MeshPhysicalMaterial:"physical",MeshMatcapMaterial:"matcap",LineBasicMaterial:"basic",LineDashedMaterial:"dashed",PointsMaterial:"points",ShadowMaterial:"shadow",SpriteMaterial:"sprite"};function M(S){return c.add(S),S===0?"uv":`uv${S}`}function m(S,_,y,F,k){const q=F.fog,H=k.geometry,Y=S.isMeshStandardMaterial?F.environment:null,j=(S.isMeshStandardMaterial?t:e).get(S.envMap||Y),K=j&&j.mapping===Uo?j.image.height:null,ae=v[S.type];S.precision!==null&&(p=s.getMaxPrecision(S.precision),p!==S.precision&&console.warn("THREE.WebGLProgram.getParameters:",S.precision,"not supported, using",p,"instead."));const oe=H.morphAttributes.position||H.morphAttributes.normal||H.morphAttributes.color,ve=oe!==void 0?oe.length:0;let Se=0;H.morphAttributes.position!==void 0&&(Se=1),H.morphAttributes.normal!==void 0&&(Se=2),H.morphAttributes.color!==void 0&&(Se=3);let _e,nt,Ze,ee;if(ae){const pt=bi[ae];_e=pt.vertexShader,nt=pt.fragmentShader}else _e=S.vertexShader,nt=S.fragmentShader,l.update(S),Ze=l.getVertexShaderID(S),ee=l.getFragmentShaderID(S);const ne=i.getRenderTarget(),be=i.state.buffers.depth.getReversed(),ze=k.isInstancedMesh===!0,xe=k.isBatchedMesh===!0,Je=!!S.map,It=!!S.matcap,O=!!j,dt=!!S.aoMap,$e=!!S.lightMap,Ge=!!S.bumpMap,Ie=!!S.normalMap,bt=!!S.displacementMap,Ce=!!S.emissiveMap,Ve=!!S.metalnessMap,zt=!!S.roughnessMap,xt=S.anisotropy>0,L=S.clearcoat>0,x=S.dispersion>0,B=S.iridescence>0,J=S.sheen>0,ie=S.transmission>0,te=xt&&!!S.anisotropyMap,Ne=L&&!!S.clearcoatMap,he=L&&!!S.clearcoatNormalMap,De=L&&!!S.clearcoatRoughnessMap,Ae=B&&!!S.iridescenceMap,le=B&&!!S.iridescenceThicknessMap,ge=J&&!!S.sheenColorMap,Be=J&&!!S.sheenRoughnessMap,Oe=!!S.specularMap,Me=!!S.specularColorMap,Ke=!!S.specularIntensityMap,V=ie&&!!S.transmissionMap,fe=ie&&!!S.thicknessMap,pe=!!S.gradientMap,Pe=!!S.alphaMap,ue=S.alphaTest>0,re=!!S.alphaHash,Fe=!!S.extensions;let Qe=os;S.toneMapped&&(ne===null||ne.isXRRenderTarget===!0)&&(Qe=i.toneMapping);const wt={shaderID:ae,shaderType:S.type,shaderName:S.name,vertexShader:_e,fragmentShader:nt,defines:S.defines,customVertexShaderID:Ze,customFragmentShaderID:ee,isRawShaderMaterial:S.isRawShaderMaterial===!0,glslVersion:S.glslVersion,precision:p,batching:xe,batchingColor:xe&&k._colorsTexture!==null,instancing:ze,instancingColor:ze&&k.instanceColor!==null,instancingMorph:ze&&k.morphTexture!==null,supportsVertexTextures:h,outputColorSpace:ne===null?i.outputColorSpace:ne.isXRRenderTarget===!0?ne.texture.colorSpace:br,alphaToCoverage:!!S.alphaToCoverage,map:Je,matcap:It,envMap:O,envMapMode:O&&j.mapping,envMapCubeUVHeight:K,aoMap:dt,lightMap:$e,bumpMap:Ge,normalMap:Ie,displacementMap:h&&bt,emissiveMap:Ce,normalMapObjectSpace:Ie&&S.normalMapType===f_,normalMapTangentSpace:Ie&&S.normalMapType===Gd,metalnessMap:Ve,roughnessMap:zt,anisotropy:xt,anisotropyMap:te,clearcoat:L,clearcoatMap:Ne,clearcoatNormalMap:he,clearcoatRoughnessMap:De,dispersion:x,iridescence:B,iridescenceMap:Ae,iridescenceThicknessMap:le,sheen:J,sheenColorMap:ge,sheenRoughnessMap:Be,specularMap:Oe,specularColorMap:Me,specularIntensityMap:Ke,transmission:ie,transmissionMap:V,thicknessMap:fe,gradientMap:pe,opaque:S.transparent===!1&&S.blending===mr&&S.alphaToCoverage===!1,alphaMap:Pe,alphaTest:ue,alphaHash:re,combine:S.combine,mapUv:Je&&M(S.map.channel),aoMapUv:dt&&M(S.aoMap.channel),lightMapUv:$e&&M(S.lightMap.channel),bumpMapUv:Ge&&M(S.bumpMap.channel),normalMapUv:Ie&&M(S.normalMap.channel),displacementMapUv:bt&&M(S.displacementMap.channel),emissiveMapUv:Ce&&M(S.emissiveMap.channel),metalnessMapUv:Ve&&M(S.metalnessMap.channel),roughnessMapUv:zt&&M(S.roughnessMap.channel),anisotropyMapUv:te&&M(S.anisotropyMap.channel),clearcoatMapUv:Ne&&M(S.clearcoatMap.channel),clearcoatNormalMapUv:he&&M(S.clearcoatNormalMap.channel),clearcoatRoughnessMapUv:De&&M(S.clearcoatRoughnessMap.channel),iridescenceMapUv:Ae&&M(S.iridescenceMap.channel),iridescenceThicknessMapUv:le&&M(S.iridescenceThicknessMap.channel),sheenColorMapUv:ge&&M(S.sheenColorMap.channel),sheenRoughnessMapUv:Be&&M(S.sheenRoughnessMap.channel),specularMapUv:Oe&&M(S.specularMap.channel),specularColorMapUv:Me&&M(S.specularColorMap.channel),specularIntensityMapUv:Ke&&M(S.specularIntensityMap.channel),transmissionMapUv:V&&M(S.transmissionMap.channel),thicknessMapUv:fe&&M(S.thicknessMap.channel),alphaMapUv:Pe&&M(S.alphaMap.channel),vertexTangents:!!H.attributes.tangent&&(Ie||xt),vertexColors:S.vertexColors,vertexAlphas:S.vertexColors===!0&&!!H.attributes.color&&H.attributes.color.itemSize===4,pointsUvs:k.isPoints===!0&&!!H.attributes.uv&&(Je||Pe),fog:!!q,useFog:S.fog===!0,fogExp2:!!q&&q.isFogExp2,flatShading:S.flatShading===!0&&S.wireframe===!1,sizeAttenuation:S.sizeAttenuation===!0,logarithmicDepthBuffer:u,reversedDepthBuffer:be,skinning:k.isSkinnedMesh===!0,morphTargets:H.morphAttributes.position!==void 0,morphNormals:H.morphAttributes.normal!==void 0,morphColors:H.morphAttributes.color!==void 0,morphTargetsCount:ve,morphTextureStride:Se,numDirLights:_.directional.length,numPointLights:_.point.length,numSpotLights:_.spot.length,numSpotLightMaps:_.spotLightMap.length,numRectAreaLights:_.rectArea.length,numHemiLights:_.hemi.length,numDirLightShadows:_.directionalShadowMap.length,numPointLightShadows:_.pointShadowMap.length,numSpotLightShadows:_.spotShadowMap.length,numSpotLightShadowsWithMaps:_.numSpotLightShadowsWithMaps,numLightProbes:_.numLightProbes,numClippingPlanes:a.numPlanes,numClipIntersection:a.numIntersection,dithering:S.dithering,shadowMapEnabled:i.shadowMap.enabled&&y.length>0,shadowMapType:i.shadowMap.type,toneMapping:Qe,decodeVideoTexture:Je&&S.map.isVideoTexture===!0&&_t.getTransfer(S.map.colorSpace)===Rt,decodeVideoTextureEmissive:Ce&&S.emissiveMap.isVideoTexture===!0&&_t.getTransfer(S.emissiveMap.colorSpace)===Rt,premultipliedAlpha:S.premultipliedAlpha,doubleSided:S.side===zi,flipSided:S.side===On,useDepthPacking:S.depthPacking>=0,depthPacking:S.depthPacking||0,index0AttributeName:S.index0AttributeName,extensionClipCullDistance:Fe&&S.extensions.clipCullDistance===!0&&n.has("WEBGL_clip_cull_distance"),extensionMultiDraw:(Fe&&S.extensions.multiDraw===!0||xe)&&n.has("WEBGL_multi_draw"),rendererExtensionParallelShaderCompile:n.has("KHR_parallel_shader_compile"),customProgramCacheKey:S.customProgramCacheKey()};return wt.vertexUv1s=c.has(1),wt.vertexUv2s=c.has(2),wt.vertexUv3s=c.has(3),c.clear(),wt}function d(S){const _=[];if(S.shaderID?_.push(S.shaderID):(_.push(S.customVertexShaderID),_.push(S.customFragmentShaderID)),S.defines!==void 0)for(const y in S.defines)_.push(y),_.push(S.defines[y]);return S.isRawShaderMaterial===!1&&(T(_,S),A(_,S),_.push(i.outputColorSpace)),_.push(S.customProgramCacheKey),_.join()}function T(S,_){S.push(_.precision),S.push(_.outputColorSpace),S.push(_.envMapMode),S.push(_.envMapCubeUVHeight),S.push(_.mapUv),S.push(_.alphaMapUv),S.push(_.lightMapUv),S.push(_.aoMapUv),S.push(_.bumpMapUv),S.push(_.normalMapUv),S.push(_.displacementMapUv),S.push(_.emissiveMapUv),S.push(_.metalnessMapUv),S.push(_.roughnessMapUv),S.push(_.anisotropyMapUv),S.push(_.clearcoatMapUv),S.push(_.clearcoatNormalMapUv),S.push(_.clearcoatRoughnessMapUv),S.push(_.iridescenceMapUv),S.push(_.iridescenceThicknessMapUv),S.push(_.sheenColorMapUv),S.push(_.sheenRoughnessMapUv),S.push(_.specularMapUv),S.push(_.specularColorMapUv),S.push(_.specularIntensityMapUv),S.push(_.transmissionMapUv),S.push(_.thicknessMapUv),S.push(_.combine),S.push(_.fogExp2),S.push(_.sizeAttenuation),S.push(_.morphTargetsCount),S.push(_.morphAttributeCount),S.push(_.numDirLights),S.push(_.numPointLights),S.push(_.numSpotLights),S.push(_.numSpotLightMaps),S.push(_.numHemiLights),S.push(_.numRectAreaLights),S.push(_.numDirLightShadows),S.push(_.numPointLightShadows),S.push(_.numSpotLightShadows),S.push(_.numSpotLightShadowsWithMaps),S.push(_.numLightProbes),S.push(_.shadowMapType),S.push(_.toneMapping),S.push(_.numClippingPlanes),S.push(_.numClipIntersection),S.push(_.depthPacking)}function A(S,_){o.disableAll(),_.supportsVertexTextures&&o.enable(0),_.instancing&&o.enable(1),_.instancingColor&&o.enable(2),_.instancingMorph&&o.enable(3),_.matcap&&o.enable(4),_.envMap&&o.enable(5),_.normalMapObjectSpace&&o.enable(6),_.normalMapTangentSpace&&o.enable(7),_.clearcoat&&o.enable(8),_.iridescence&&o.enable(9),_.alphaTest&&o.enable(10),_.vertexColors&&o.enable(11),_.vertexAlphas&&o.enable(12),_.vertexUv1s&&o.enable(13),_.vertexUv2s&&o.enable(14),_.vertexUv3s&&o.enable(15),_.vertexTangents&&o.enable(16),_.anisotropy&&o.enable(17),_.alphaHash&&o.enable(18),_.batching&&o.enable(19),_.dispersion&&o.enable(20),_.batchingColor&&o.enable(21),_.gradientMap&&o.enable(22),S.push(o.mask),o.disableAll(),_.fog&&o.enable(0),_.useFog&&o.enable(1),_.flatShading&&o.enable(2),_.logarithmicDepthBuffer&&o.enable(3),_.reversedDepthBuffer&&o.enable(4),_.skinning&&o.enable(5),_.morphTargets&&o.enable(6),_.morphNormals&&o.enable(7),_.morphColors&&o.enable(8),_.premultipliedAlpha&&o.enable(9),_.shadowMapEnabled&&o.enable(10),_.doubleSided&&o.enable(11),_.flipSided&&o.enable(12),_.useDepthPacking&&o.enable(13),_.dithering&&o.enable(14),_.transmission&&o.enable(15),_.sheen&&o.enable(16),_.opaque&&o.enable(17),_.pointsUvs&&o.enable(18),_.decodeVideoTexture&&o.enable(19),_.decodeVideoTextureEmissive&&o.enable(20),_.alphaToCoverage&&o.enable(21),S.push(o.mask)}function b(S){const _=v[S.type];let y;if(_){const F=bi[_];y=V_.clone(F.uniforms)}else y=S.uniforms;return y}function N(S,_){let y;for(let F=0,k=f.length;F<k;F++){const q=f[F];if(q.cacheKey===_){y=q,++y.usedTimes;break}}return y===void 0&&(y=new _S(i,_,S,r),f.push(y)),y}function R(S){if(--S.usedTimes===0){const _=f.indexOf(S);f[_]=f[f.length-1],f.pop(),S.destroy()}}function D(S){l.remove(S)}function C(){l.dispose()}return{getParameters:m,getProgramCacheKey:d,getUniforms:b,acquireProgram:N,releaseProgram:R,releaseShaderCache:D,programs:f,dispose:C}}function yS(){let i=new WeakMap;function e(a){return i.has(a)}function t(a){let o=i.get(a);return o===void 0&&(o={},i.set(a,o)),o}function n(a){i.delete(a)}function s(a,o,l){i.get(a)[o]=l}function r(){i=new WeakMap}return{has:e,get:t,remove:n,update:s,dispose:r}}function ES(i,e){return i.groupOrder!==e.groupOrder?i.groupOrder-e.groupOrder:i.renderOrder!==e.renderOrder?i.renderOrder-e.renderOrder:i.material.id!==e.material.id?i.material.id-e.material.id:i.z!==e.z?i.z-e.z:i.id-e.id}function Lf(i,e){return i.groupOrder!==e.groupOrder?i.groupOrder-e.groupOrder:i.renderOrder!==e.renderOrder?i.renderOrder-e.renderOrder:i.z!==e.z?e.z-i.z:i.id-e.id}function Uf(){const i=[];let e=0;const t=[],n=[],s=[];function r(){e=0,t.length=0,n.length=0,s.length=0}function a(u,h,p,v,M,m){let d=i[e];return d===void 0?(d={id:u.id,object:u,geometry:h,material:p,groupOrder:v,renderOrder:u.renderOrder,z:M,group:m},i[e]=d):(d.id=u.id,d.object=u,d.geometry=h,d.material=p,d.groupOrder=v,d.renderOrder=u.renderOrder,d.z=M,d.group=m),e++,d}function o(u,h,p,v,M,m){const d=a(u,h,p,v,M,m);p.transmission>0?n.push(d):p.transparent===!0?s.push(d):t.push(d)}function l(u,h,p,v,M,m){const d=a(u,h,p,v,M,m);p.transmission>0?n.unshift(d):p.transparent===!0?s.unshift(d):t.unshift(d)}function c(u,h){t.length>1&&t.sort(u||ES),n.length>1&&n.sort(h||Lf),s.length>1&&s.sort(h||Lf)}function f(){for(let u=e,h=i.length;u<h;u++){const p=i[u];if(p.id===null)break;p.id=null,p.object=null,p.geometry=null,p.material=null,p.group=null}}return{opaque:t,transmissive:n,transparent:s,init:r,push:o,unshift:l,finish:f,sort:c}}function bS(){let i=new WeakMap;function e(n,s){const r=i.get(n);let a;return r===void 0?(a=new Uf,i.set(n,[a])):s>=r.length?(a=new Uf,r.push(a)):a=r[s],a}function t(){i=new WeakMap}return{get:e,dispose:t}}function TS(){const i={};return{get:function(e){if(i[e.id]!==void 0)return i[e.id];let t;switch(e.type){case"DirectionalLight":t={direction:new z,color:new ot};break;case"SpotLight":t={position:new z,direction:new z,color:new ot,distance:0,coneCos:0,penumbraCos:0,decay:0};break;case"PointLight":t={position:new z,color:new ot,distance:0,decay:0};break;case"HemisphereLight":t={direction:new z,skyColor:new ot,groundColor:new ot};break;case"RectAreaLight":t={color:new ot,position:new z,halfWidth:new z,halfHeight:new z};break}return i[e.id]=t,t}}}function wS(){const i={};return{get:function(e){if(i[e.id]!==void 0)return i[e.id];let t;switch(e.type){case"DirectionalLight":t={shadowIntensity:1,shadowBias:0,shadowNormalBias:0,shadowRadius:1,shadowMapSize:new tt};break;case"SpotLight":t={shadowIntensity:1,shadowBias:0,shadowNormalBias:0,shadowRadius:1,shadowMapSize:new tt};break;case"PointLight":t={shadowIntensity:1,shadowBias:0,shadowNormalBias:0,shadowRadius:1,shadowMapSize:new tt,shadowCameraNear:1,shadowCameraFar:1e3};break}return i[e.id]=t,t}}}let AS=0;function RS(i,e){return(e.castShadow?2:0)-(i.castShadow?2:0)+(e.map?1:0)-(i.map?1:0)}function CS(i){const e=new TS,t=wS(),n={version:0,hash:{directionalLength:-1,pointLength:-1,spotLength:-1,rectAreaLength:-1,hemiLength:-1,numDirectionalShadows:-1,numPointShadows:-1,numSpotShadows:-1,numSpotMaps:-1,numLightProbes:-1},ambient:[0,0,0],probe:[],directional:[],directionalShadow:[],directionalShadowMap:[],directionalShadowMatrix:[],spot:[],spotLightMap:[],spotShadow:[],spotShadowMap:[],spotLightMatrix:[],rectArea:[],rectAreaLTC1:null,rectAreaLTC2:null,point:[],pointShadow:[],pointShadowMap:[],pointShadowMatrix:[],hemi:[],numSpotLightShadowsWithMaps:0,numLightProbes:0};for(let c=0;c<9;c++)n.probe.push(new z);const s=new z,r=new Xt,a=new Xt;function o(c){let f=0,u=0,h=0;for(let S=0;S<9;S++)n.probe[S].set(0,0,0);let p=0,v=0,M=0,m=0,d=0,T=0,A=0,b=0,N=0,R=0,D=0;c.sort(RS);for(let S=0,_=c.length;S<_;S++){const y=c[S],F=y.color,k=y.intensity,q=y.distance,H=y.shadow&&y.shadow.map?y.shadow.map.texture:null;if(y.isAmbientLight)f+=F.r*k,u+=F.g*k,h+=F.b*k;else if(y.isLightProbe){for(let Y=0;Y<9;Y++)n.probe[Y].addScaledVector(y.sh.coefficients[Y],k);D++}else if(y.isDirectionalLight){const Y=e.get(y);if(Y.color.copy(y.color).multiplyScalar(y.intensity),y.castShadow){const j=y.shadow,K=t.get(y);K.shadowIntensity=j.intensity,K.shadowBias=j.bias,K.shadowNormalBias=j.normalBias,K.shadowRadius=j.radius,K.shadowMapSize=j.mapSize,n.directionalShadow[p]=K,n.directionalShadowMap[p]=H,n.directionalShadowMatrix[p]=y.shadow.matrix,T++}n.directional[p]=Y,p++}else if(y.isSpotLight){const Y=e.get(y);Y.position.setFromMatrixPosition(y.matrixWorld),Y.color.copy(F).multiplyScalar(k),Y.distance=q,Y.coneCos=Math.cos(y.angle),Y.penumbraCos=Math.cos(y.angle*(1-y.penumbra)),Y.decay=y.decay,n.spot[M]=Y;const j=y.shadow;if(y.map&&(n.spotLightMap[N]=y.map,N++,j.updateMatrices(y),y.castShadow&&R++),n.spotLightMatrix[M]=j.matrix,y.castShadow){const K=t.get(y);K.shadowIntensity=j.intensity,K.shadowBias=j.bias,K.shadowNormalBias=j.normalBias,K.shadowRadius=j.radius,K.shadowMapSize=j.mapSize,n.spotShadow[M]=K,n.spotShadowMap[M]=H,b++}M++}else if(y.isRectAreaLight){const Y=e.get(y);Y.color.copy(F).multiplyScalar(k),Y.halfWidth.set(y.width*.5,0,0),Y.halfHeight.set(0,y.height*.5,0),n.rectArea[m]=Y,m++}else if(y.isPointLight){const Y=e.get(y);if(Y.color.copy(y.color).multiplyScalar(y.intensity),Y.distance=y.distance,Y.decay=y.decay,y.castShadow){const j=y.shadow,K=t.get(y);K.shadowIntensity=j.intensity,K.shadowBias=j.bias,K.shadowNormalBias=j.normalBias,K.shadowRadius=j.radius,K.shadowMapSize=j.mapSize,K.shadowCameraNear=j.camera.near,K.shadowCameraFar=j.camera.far,n.pointShadow[v]=K,n.pointShadowMap[v]=H,n.pointShadowMatrix[v]=y.shadow.matrix,A++}n.point[v]=Y,v++}else if(y.isHemisphereLight){const Y=e.get(y);Y.skyColor.copy(y.color).multiplyScalar(k),Y.groundColor.copy(y.groundColor).multiplyScalar(k),n.hemi[d]=Y,d++}}m>0&&(i.has("OES_texture_float_linear")===!0?(n.rectAreaLTC1=Ee.LTC_FLOAT_1,n.rectAreaLTC2=Ee.LTC_FLOAT_2):(n.rectAreaLTC1=Ee.LTC_HALF_1,n.rectAreaLTC2=Ee.LTC_HALF_2)),n.ambient[0]=f,n.ambient[1]=u,n.ambient[2]=h;const C=n.hash;(C.directionalLength!==p||C.pointLength!==v||C.spotLength!==M||C.rectAreaLength!==m||C.hemiLength!==d||C.numDirectionalShadows!==T||C.numPointShadows!==A||C.numSpotShadows!==b||C.numSpotMaps!==N||C.numLightProbes!==D)&&(n.directional.length=p,n.spot.length=M,n.rectArea.length=m,n.point.length=v,n.hemi.length=d,n.directionalShadow.length=T,n.directionalShadowMap.length=T,n.pointShadow.length=A,n.pointShadowMap.length=A,n.spotShadow.length=b,n.spotShadowMap.length=b,n.directionalShadowMatrix.length=T,n.pointShadowMatrix.length=A,n.spotLightMatrix.length=b+N-R,n.spotLightMap.length=N,n.numSpotLightShadowsWithMaps=R,n.numLightProbes=D,C.directionalLength=p,C.pointLength=v,C.spotLength=M,C.rectAreaLength=m,C.hemiLength=d,C.numDirectionalShadows=T,C.numPointShadows=A,C.numSpotShadows=b,C.numSpotMaps=N,C.numLightProbes=D,n.version=AS++)}function l(c,f){let u=0,h=0,p=0,v=0,M=0;const m=f.matrixWorldInverse;for(let d=0,T=c.length;d<T;d++){const A=c[d];if(A.isDirectionalLight){const b=n.directional[u];b.direction.setFromMatrixPosition(A.matrixWorld),s.setFromMatrixPosition(A.target.matrixWorld),b.direction.sub(s),b.direction.transformDirection(m),u++}else if(A.isSpotLight){const b=n.spot[p];b.position.setFromMatrixPosition(A.matrixWorld),b.position.applyMatrix4(m),b.direction.setFromMatrixPosition(A.matrixWorld),s.setFromMatrixPosition(A.target.matrixWorld),b.direction.sub(s),b.direction.transformDirection(m),p++}else if(A.isRectAreaLight){const b=n.rectArea[v];b.position.setFromMatrixPosition(A.matrixWorld),b.position.applyMatrix4(m),a.identity(),r.copy(A.matrixWorld),r.premultiply(m),a.extractRotation(r),b.halfWidth.set(A.width*.5,0,0),b.halfHeight.set(0,A.height*.5,0),b.halfWidth.applyMatrix4(a),b.halfHeight.applyMatrix4(a),v++}else if(A.isPointLight){const b=n.point[h];b.position.setFromMatrixPosition(A.matrixWorld),b.position.applyMatrix4(m),h++}else if(A.isHemisphereLight){const b=n.hemi[M];b.direction.setFromMatrixPosition(A.matrixWorld),b.direction.transformDirection(m),M++}}}return{setup:o,setupView:l,state:n}}function If(i){const e=new CS(i),t=[],n=[];function s(f){c.camera=f,t.length=0,n.length=0}function r(f){t.push(f)}function a(f){n.push(f)}function o(){e.setup(t)}function l(f){e.setupView(t,f)}const c={lightsArray:t,shadowsArray:n,camera:null,lights:e,transmissionRenderTarget:{}};return{init:s,state:c,setupLights:o,setupLightsView:l,pushLight:r,pushShadow:a}}function PS(i){let e=new WeakMap;function t(s,r=0){const a=e.get(s);let o;return a===void 0?(o=new If(i),e.set(s,[o])):r>=a.length?(o=new If(i),a.push(o)):o=a[r],o}function n(){e=new WeakMap}return{get:t,dispose:n}}const DS=`void main() {
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
}`;function US(i,e,t){let n=new gu;const s=new tt,r=new tt,a=new $t,o=new e0({depthPacking:h_}),l=new t0,c={},f=t.maxTextureSize,u={[cs]:On,[On]:cs,[zi]:zi},h=new us({defines:{VSM_SAMPLES:8},uniforms:{shadow_pass:{value:null},resolution:{value:new tt},radius:{value:4}},vertexShader:DS,fragmentShader:LS}),p=h.clone();p.defines.HORIZONTAL_PASS=1;const v=new vn;v.setAttribute("position",new zn(new Float32Array([-1,-1,.5,3,-1,.5,-1,3,.5]),3));const M=new _n(v,h),m=this;this.enabled=!1,this.autoUpdate=!0,this.needsUpdate=!1,this.type=Ud;let d=this.type;this.render=function(R,D,C){if(m.enabled===!1||m.autoUpdate===!1&&m.needsUpdate===!1||R.length===0)return;const S=i.getRenderTarget(),_=i.getActiveCubeFace(),y=i.getActiveMipmapLevel(),F=i.state;F.setBlending(as),F.buffers.depth.getReversed()===!0?F.buffers.color.setClear(0,0,0,0):F.buffers.color.setClear(1,1,1,1),F.buffers.depth.setTest(!0),F.setScissorTest(!1);const k=d!==Bi&&this.type===Bi,q=d===Bi&&this.type!==Bi;for(let H=0,Y=R.length;H<Y;H++){const j=R[H],K=j.shadow;if(K===void 0){console.warn("THREE.WebGLShadowMap:",j,"has no shadow.");continue}if(K.autoUpdate===!1&&K.needsUpdate===!1)continue;s.copy(K.mapSize);const ae=K.getFrameExtents();if(s.multiply(ae),r.copy(K.mapSize),(s.x>f||s.y>f)&&(s.x>f&&(r.x=Math.floor(f/ae.x),s.x=r.x*ae.x,K.mapSize.x=r.x),s.y>f&&(r.y=Math.floor(f/ae.y),s.y=r.y*ae.y,K.mapSize.y=r.y)),K.map===null||k===!0||q===!0){const ve=this.type!==Bi?{minFilter:gi,magFilter:gi}:{};K.map!==null&&K.map.dispose(),K.map=new Fs(s.x,s.y,ve),K.map.texture.name=j.name+".shadowMap",K.camera.updateProjectionMatrix()}i.setRenderTarget(K.map),i.clear();const oe=K.getViewportCount();for(let ve=0;ve<oe;ve++){const Se=K.getViewport(ve);a.set(r.x*Se.x,r.y*Se.y,r.x*Se.z,r.y*Se.w),F.viewport(a),K.updateMatrices(j,ve),n=K.getFrustum(),b(D,C,K.camera,j,this.type)}K.isPointLightShadow!==!0&&this.type===Bi&&T(K,C),K.needsUpdate=!1}d=this.type,m.needsUpdate=!1,i.setRenderTarget(S,_,y)};function T(R,D){const C=e.update(M);h.defines.VSM_SAMPLES!==R.blurSamples&&(h.defines.VSM_SAMPLES=R.blurSamples,p.defines.VSM_SAMPLES=R.blurSamples,h.needsUpdate=!0,p.needsUpdate=!0),R.mapPass===null&&(R.mapPass=new Fs(s.x,s.y)),h.uniforms.shadow_pass.value=R.map.texture,h.uniforms.resolution.value=R.mapSize,h.uniforms.radius.value=R.radius,i.setRenderTarget(R.mapPass),i.clear(),i.renderBufferDirect(D,null,C,h,M,null),p.uniforms.shadow_pass.value=R.mapPass.texture,p.uniforms.resolution.value=R.mapSize,p.uniforms.radius.value=R.radius,i.setRenderTarget(R.map),i.clear(),i.renderBufferDirect(D,null,C,p,M,null)}function A(R,D,C,S){let _=null;const y=C.isPointLight===!0?R.customDistanceMaterial:R.customDepthMaterial;if(y!==void 0)_=y;else if(_=C.isPointLight===!0?l:o,i.localClippingEnabled&&D.clipShadows===!0&&Array.isArray(D.clippingPlanes)&&D.clippingPlanes.length!==0||D.displacementMap&&D.displacementScale!==0||D.alphaMap&&D.alphaTest>0||D.map&&D.alphaTest>0||D.alphaToCoverage===!0){const F=_.uuid,k=D.uuid;let q=c[F];q===void 0&&(q={},c[F]=q);let H=q[k];H===void 0&&(H=_.clone(),q[k]=H,D.addEventListener("dispose",N)),_=H}if(_.visible=D.visible,_.wireframe=D.wireframe,S===Bi?_.side=D.shadowSide!==null?D.shadowSide:D.side:_.side=D.shadowSide!==null?D.shadowSide:u[D.side],_.alphaMap=D.alphaMap,_.alphaTest=D.alphaToCoverage===!0?.5:D.alphaTest,_.map=D.map,_.clipShadows=D.clipShadows,_.clippingPlanes=D.clippingPlanes,_.clipIntersection=D.clipIntersection,_.displacementMap=D.displacementMap,_.displacementScale=D.displacementScale,_.displacementBias=D.displacementBias,_.wireframeLinewidth=D.wireframeLinewidth,_.linewidth=D.linewidth,C.isPointLight===!0&&_.isMeshDistanceMaterial===!0){const F=i.properties.get(_);F.light=C}return _}function b(R,D,C,S,_){if(R.visible===!1)return;if(R.layers.test(D.layers)&&(R.isMesh||R.isLine||R.isPoints)&&(R.castShadow||R.receiveShadow&&_===Bi)&&(!R.frustumCulled||n.intersectsObject(R))){R.modelViewMatrix.multiplyMatrices(C.matrixWorldInverse,R.matrixWorld);const k=e.update(R),q=R.material;if(Array.isArray(q)){const H=k.groups;for(let Y=0,j=H.length;Y<j;Y++){const K=H[Y],ae=q[K.materialIndex];if(ae&&ae.visible){const oe=A(R,ae,S,_);R.onBeforeShadow(i,R,D,C,k,oe,K),i.renderBufferDirect(C,null,k,oe,R,K),R.onAfterShadow(i,R,D,C,k,oe,K)}}}else if(q.visible){const H=A(R,q,S,_);R.onBeforeShadow(i,R,D,C,k,H,null),i.renderBufferDirect(C,null,k,H,R,null),R.onAfterShadow(i,R,D,C,k,H,null)}}const F=R.children;for(let k=0,q=F.length;k<q;k++)b(F[k],D,C,S,_)}function N(R){R.target.removeEventListener("dispose",N);for(const C in c){const S=c[C],_=R.target.uuid;_ in S&&(S[_].dispose(),delete S[_])}}}const IS={[Ql]:ec,[tc]:sc,[nc]:rc,[Sr]:ic,[ec]:Ql,[sc]:tc,[rc]:nc,[ic]:Sr};function NS(i,e){function t(){let V=!1;const fe=new $t;let pe=null;const Pe=new $t(0,0,0,0);return{setMask:function(ue){pe!==ue&&!V&&(i.colorMask(ue,ue,ue,ue),pe=ue)},setLocked:function(ue){V=ue},setClear:function(ue,re,Fe,Qe,wt){wt===!0&&(ue*=Qe,re*=Qe,Fe*=Qe),fe.set(ue,re,Fe,Qe),Pe.equals(fe)===!1&&(i.clearColor(ue,re,Fe,Qe),Pe.copy(fe))},reset:function(){V=!1,pe=null,Pe.set(-1,0,0,0)}}}function n(){let V=!1,fe=!1,pe=null,Pe=null,ue=null;return{setReversed:function(re){if(fe!==re){const Fe=e.get("EXT_clip_control");re?Fe.clipControlEXT(Fe.LOWER_LEFT_EXT,Fe.ZERO_TO_ONE_EXT):Fe.clipControlEXT(Fe.LOWER_LEFT_EXT,Fe.NEGATIVE_ONE_TO_ONE_EXT),fe=re;const Qe=ue;ue=null,this.setClear(Qe)}},getReversed:function(){return fe},setTest:function(re){re?ne(i.DEPTH_TEST):be(i.DEPTH_TEST)},setMask:function(re){pe!==re&&!V&&(i.depthMask(re),pe=re)},setFunc:function(re){if(fe&&(re=IS[re]),Pe!==re){switch(re){case Ql:i.depthFunc(i.NEVER);break;case ec:i.depthFunc(i.ALWAYS);break;case tc:i.depthFunc(i.LESS);break;case Sr:i.depthFunc(i.LEQUAL);break;case nc:i.depthFunc(i.EQUAL);break;case ic:i.depthFunc(i.GEQUAL);break;case sc:i.depthFunc(i.GREATER);break;case rc:i.depthFunc(i.NOTEQUAL);break;default:i.depthFunc(i.LEQUAL)}Pe=re}},setLocked:function(re){V=re},setClear:function(re){ue!==re&&(fe&&(re=1-re),i.clearDepth(re),ue=re)},reset:function(){V=!1,pe=null,Pe=null,ue=null,fe=!1}}}function s(){let V=!1,fe=null,pe=null,Pe=null,ue=null,re=null,Fe=null,Qe=null,wt=null;return{setTest:function(pt){V||(pt?ne(i.STENCIL_TEST):be(i.STENCIL_TEST))},setMask:function(pt){fe!==pt&&!V&&(i.stencilMask(pt),fe=pt)},setFunc:function(pt,mn,Pt){(pe!==pt||Pe!==mn||ue!==Pt)&&(i.stencilFunc(pt,mn,Pt),pe=pt,Pe=mn,ue=Pt)},setOp:function(pt,mn,Pt){(re!==pt||Fe!==mn||Qe!==Pt)&&(i.stencilOp(pt,mn,Pt),re=pt,Fe=mn,Qe=Pt)},setLocked:function(pt){V=pt},setClear:function(pt){wt!==pt&&(i.clearStencil(pt),wt=pt)},reset:function(){V=!1,fe=null,pe=null,Pe=null,ue=null,re=null,Fe=null,Qe=null,wt=null}}}const r=new t,a=new n,o=new s,l=new WeakMap,c=new WeakMap;let f={},u={},h=new WeakMap,p=[],v=null,M=!1,m=null,d=null,T=null,A=null,b=null,N=null,R=null,D=new ot(0,0,0),C=0,S=!1,_=null,y=null,F=null,k=null,q=null;const H=i.getParameter(i.MAX_COMBINED_TEXTURE_IMAGE_UNITS);let Y=!1,j=0;const K=i.getParameter(i.VERSION);K.indexOf("WebGL")!==-1?(j=parseFloat(/^WebGL (\d)/.exec(K)[1]),Y=j>=1):K.indexOf("OpenGL ES")!==-1&&(j=parseFloat(/^OpenGL ES (\d)/.exec(K)[1]),Y=j>=2);let ae=null,oe={};const ve=i.getParameter(i.SCISSOR_BOX),Se=i.getParameter(i.VIEWPORT),_e=new $t().fromArray(ve),nt=new $t().fromArray(Se);function Ze(V,fe,pe,Pe){const ue=new Uint8Array(4),re=i.createTexture();i.bindTexture(V,re),i.texParameteri(V,i.TEXTURE_MIN_FILTER,i.NEAREST),i.texParameteri(V,i.TEXTURE_MAG_FILTER,i.NEAREST);for(let Fe=0;Fe<pe;Fe++)V===i.TEXTURE_3D||V===i.TEXTURE_2D_ARRAY?i.texImage3D(fe,0,i.RGBA,1,1,Pe,0,i.RGBA,i.UNSIGNED_BYTE,ue):i.texImage2D(fe+Fe,0,i.RGBA,1,1,0,i.RGBA,i.UNSIGNED_BYTE,ue);return re}const ee={};ee[i.TEXTURE_2D]=Ze(i.TEXTURE_2D,i.TEXTURE_2D,1),ee[i.TEXTURE_CUBE_MAP]=Ze(i.TEXTURE_CUBE_MAP,i.TEXTURE_CUBE_MAP_POSITIVE_X,6),ee[i.TEXTURE_2D_ARRAY]=Ze(i.TEXTURE_2D_ARRAY,i.TEXTURE_2D_ARRAY,1,1),ee[i.TEXTURE_3D]=Ze(i.TEXTURE_3D,i.TEXTURE_3D,1,1),r.setClear(0,0,0,1),a.setClear(1),o.setClear(0),ne(i.DEPTH_TEST),a.setFunc(Sr),Ge(!1),Ie(wh),ne(i.CULL_FACE),dt(as);function ne(V){f[V]!==!0&&(i.enable(V),f[V]=!0)}function be(V){f[V]!==!1&&(i.disable(V),f[V]=!1)}function ze(V,fe){return u[V]!==fe?(i.bindFramebuffer(V,fe),u[V]=fe,V===i.DRAW_FRAMEBUFFER&&(u[i.FRAMEBUFFER]=fe),V===i.FRAMEBUFFER&&(u[i.DRAW_FRAMEBUFFER]=fe),!0):!1}function xe(V,fe){let pe=p,Pe=!1;if(V){pe=h.get(fe),pe===void 0&&(pe=[],h.set(fe,pe));const ue=V.textures;if(pe.length!==ue.length||pe[0]!==i.COLOR_ATTACHMENT0){for(let re=0,Fe=ue.length;re<Fe;re++)pe[re]=i.COLOR_ATTACHMENT0+re;pe.length=ue.length,Pe=!0}}else pe[0]!==i.BACK&&(pe[0]=i.BACK,Pe=!0);Pe&&i.drawBuffers(pe)}function Je(V){return v!==V?(i.useProgram(V),v=V,!0):!1}const It={[As]:i.FUNC_ADD,[Og]:i.FUNC_SUBTRACT,[Bg]:i.FUNC_REVERSE_SUBTRACT};It[zg]=i.MIN,It[kg]=i.MAX;const O={[Hg]:i.ZERO,[Vg]:i.ONE,[Gg]:i.SRC_COLOR,[Zl]:i.SRC_ALPHA,[jg]:i.SRC_ALPHA_SATURATE,[Yg]:i.DST_COLOR,[Xg]:i.DST_ALPHA,[Wg]:i.ONE_MINUS_SRC_COLOR,[Jl]:i.ONE_MINUS_SRC_ALPHA,[$g]:i.ONE_MINUS_DST_COLOR,[qg]:i.ONE_MINUS_DST_ALPHA,[Kg]:i.CONSTANT_COLOR,[Zg]:i.ONE_MINUS_CONSTANT_COLOR,[Jg]:i.CONSTANT_ALPHA,[Qg]:i.ONE_MINUS_CONSTANT_ALPHA};function dt(V,fe,pe,Pe,ue,re,Fe,Qe,wt,pt){if(V===as){M===!0&&(be(i.BLEND),M=!1);return}if(M===!1&&(ne(i.BLEND),M=!0),V!==Fg){if(V!==m||pt!==S){if((d!==As||b!==As)&&(i.blendEquation(i.FUNC_ADD),d=As,b=As),pt)switch(V){case mr:i.blendFuncSeparate(i.ONE,i.ONE_MINUS_SRC_ALPHA,i.ONE,i.ONE_MINUS_SRC_ALPHA);break;case Ah:i.blendFunc(i.ONE,i.ONE);break;case Rh:i.blendFuncSeparate(i.ZERO,i.ONE_MINUS_SRC_COLOR,i.ZERO,i.ONE);break;case Ch:i.blendFuncSeparate(i.DST_COLOR,i.ONE_MINUS_SRC_ALPHA,i.ZERO,i.ONE);break;default:console.error("THREE.WebGLState: Invalid blending: ",V);break}else switch(V){case mr:i.blendFuncSeparate(i.SRC_ALPHA,i.ONE_MINUS_SRC_ALPHA,i.ONE,i.ONE_MINUS_SRC_ALPHA);break;case Ah:i.blendFuncSeparate(i.SRC_ALPHA,i.ONE,i.ONE,i.ONE);break;case Rh:console.error("THREE.WebGLState: SubtractiveBlending requires material.premultipliedAlpha = true");break;case Ch:console.error("THREE.WebGLState: MultiplyBlending requires material.premultipliedAlpha = true");break;default:console.error("THREE.WebGLState: Invalid blending: ",V);break}T=null,A=null,N=null,R=null,D.set(0,0,0),C=0,m=V,S=pt}return}ue=ue||fe,re=re||pe,Fe=Fe||Pe,(fe!==d||ue!==b)&&(i.blendEquationSeparate(It[fe],It[ue]),d=fe,b=ue),(pe!==T||Pe!==A||re!==N||Fe!==R)&&(i.blendFuncSeparate(O[pe],O[Pe],O[re],O[Fe]),T=pe,A=Pe,N=re,R=Fe),(Qe.equals(D)===!1||wt!==C)&&(i.blendColor(Qe.r,Qe.g,Qe.b,wt),D.copy(Qe),C=wt),m=V,S=!1}function $e(V,fe){V.side===zi?be(i.CULL_FACE):ne(i.CULL_FACE);let pe=V.side===On;fe&&(pe=!pe),Ge(pe),V.blending===mr&&V.transparent===!1?dt(as):dt(V.blending,V.blendEquation,V.blendSrc,V.blendDst,V.blendEquationAlpha,V.blendSrcAlpha,V.blendDstAlpha,V.blendColor,V.blendAlpha,V.premultipliedAlpha),a.setFunc(V.depthFunc),a.setTest(V.depthTest),a.setMask(V.depthWrite),r.setMask(V.colorWrite);const Pe=V.stencilWrite;o.setTest(Pe),Pe&&(o.setMask(V.stencilWriteMask),o.setFunc(V.stencilFunc,V.stencilRef,V.stencilFuncMask),o.setOp(V.stencilFail,V.stencilZFail,V.stencilZPass)),Ce(V.polygonOffset,V.polygonOffsetFactor,V.polygonOffsetUnits),V.alphaToCoverage===!0?ne(i.SAMPLE_ALPHA_TO_COVERAGE):be(i.SAMPLE_ALPHA_TO_COVERAGE)}function Ge(V){_!==V&&(V?i.frontFace(i.CW):i.frontFace(i.CCW),_=V)}function Ie(V){V!==Ug?(ne(i.CULL_FACE),V!==y&&(V===wh?i.cullFace(i.BACK):V===Ig?i.cullFace(i.FRONT):i.cullFace(i.FRONT_AND_BACK))):be(i.CULL_FACE),y=V}function bt(V){V!==F&&(Y&&i.lineWidth(V),F=V)}function Ce(V,fe,pe){V?(ne(i.POLYGON_OFFSET_FILL),(k!==fe||q!==pe)&&(i.polygonOffset(fe,pe),k=fe,q=pe)):be(i.POLYGON_OFFSET_FILL)}function Ve(V){V?ne(i.SCISSOR_TEST):be(i.SCISSOR_TEST)}function zt(V){V===void 0&&(V=i.TEXTURE0+H-1),ae!==V&&(i.activeTexture(V),ae=V)}function xt(V,fe,pe){pe===void 0&&(ae===null?pe=i.TEXTURE0+H-1:pe=ae);let Pe=oe[pe];Pe===void 0&&(Pe={type:void 0,texture:void 0},oe[pe]=Pe),(Pe.type!==V||Pe.texture!==fe)&&(ae!==pe&&(i.activeTexture(pe),ae=pe),i.bindTexture(V,fe||ee[V]),Pe.type=V,Pe.texture=fe)}function L(){const V=oe[ae];V!==void 0&&V.type!==void 0&&(i.bindTexture(V.type,null),V.type=void 0,V.texture=void 0)}function x(){try{i.compressedTexImage2D(...arguments)}catch(V){console.error("THREE.WebGLState:",V)}}function B(){try{i.compressedTexImage3D(...arguments)}catch(V){console.error("THREE.WebGLState:",V)}}function J(){try{i.texSubImage2D(...arguments)}catch(V){console.error("THREE.WebGLState:",V)}}function ie(){try{i.texSubImage3D(...arguments)}catch(V){console.error("THREE.WebGLState:",V)}}function te(){try{i.compressedTexSubImage2D(...arguments)}catch(V){console.error("THREE.WebGLState:",V)}}function Ne(){try{i.compressedTexSubImage3D(...arguments)}catch(V){console.error("THREE.WebGLState:",V)}}function he(){try{i.texStorage2D(...arguments)}catch(V){console.error("THREE.WebGLState:",V)}}function De(){try{i.texStorage3D(...arguments)}catch(V){console.error("THREE.WebGLState:",V)}}function Ae(){try{i.texImage2D(...arguments)}catch(V){console.error("THREE.WebGLState:",V)}}function le(){try{i.texImage3D(...arguments)}catch(V){console.error("THREE.WebGLState:",V)}}function ge(V){_e.equals(V)===!1&&(i.scissor(V.x,V.y,V.z,V.w),_e.copy(V))}function Be(V){nt.equals(V)===!1&&(i.viewport(V.x,V.y,V.z,V.w),nt.copy(V))}function Oe(V,fe){let pe=c.get(fe);pe===void 0&&(pe=new WeakMap,c.set(fe,pe));let Pe=pe.get(V);Pe===void 0&&(Pe=i.getUniformBlockIndex(fe,V.name),pe.set(V,Pe))}function Me(V,fe){const Pe=c.get(fe).get(V);l.get(fe)!==Pe&&(i.uniformBlockBinding(fe,Pe,V.__bindingPointIndex),l.set(fe,Pe))}function Ke(){i.disable(i.BLEND),i.disable(i.CULL_FACE),i.disable(i.DEPTH_TEST),i.disable(i.POLYGON_OFFSET_FILL),i.disable(i.SCISSOR_TEST),i.disable(i.STENCIL_TEST),i.disable(i.SAMPLE_ALPHA_TO_COVERAGE),i.blendEquation(i.FUNC_ADD),i.blendFunc(i.ONE,i.ZERO),i.blendFuncSeparate(i.ONE,i.ZERO,i.ONE,i.ZERO),i.blendColor(0,0,0,0),i.colorMask(!0,!0,!0,!0),i.clearColor(0,0,0,0),i.depthMask(!0),i.depthFunc(i.LESS),a.setReversed(!1),i.clearDepth(1),i.stencilMask(4294967295),i.stencilFunc(i.ALWAYS,0,4294967295),i.stencilOp(i.KEEP,i.KEEP,i.KEEP),i.clearStencil(0),i.cullFace(i.BACK),i.frontFace(i.CCW),i.polygonOffset(0,0),i.activeTexture(i.TEXTURE0),i.bindFramebuffer(i.FRAMEBUFFER,null),i.bindFramebuffer(i.DRAW_FRAMEBUFFER,null),i.bindFramebuffer(i.READ_FRAMEBUFFER,null),i.useProgram(null),i.lineWidth(1),i.scissor(0,0,i.canvas.width,i.canvas.height),i.viewport(0,0,i.canvas.width,i.canvas.height),f={},ae=null,oe={},u={},h=new WeakMap,p=[],v=null,M=!1,m=null,d=null,T=null,A=null,b=null,N=null,R=null,D=new ot(0,0,0),C=0,S=!1,_=null,y=null,F=null,k=null,q=null,_e.set(0,0,i.canvas.width,i.canvas.height),nt.set(0,0,i.canvas.width,i.canvas.height),r.reset(),a.reset(),o.reset()}return{buffers:{color:r,depth:a,stencil:o},enable:ne,disable:be,bindFramebuffer:ze,drawBuffers:xe,useProgram:Je,setBlending:dt,setMaterial:$e,setFlipSided:Ge,setCullFace:Ie,setLineWidth:bt,setPolygonOffset:Ce,setScissorTest:Ve,activeTexture:zt,bindTexture:xt,unbindTexture:L,compressedTexImage2D:x,compressedTexImage3D:B,texImage2D:Ae,texImage3D:le,updateUBOMapping:Oe,uniformBlockBinding:Me,texStorage2D:he,texStorage3D:De,texSubImage2D:J,texSubImage3D:ie,compressedTexSubImage2D:te,compressedTexSubImage3D:Ne,scissor:ge,viewport:Be,reset:Ke}}function FS(i,e,t,n,s,r,a){const o=e.has("WEBGL_multisampled_render_to_texture")?e.get("WEBGL_multisampled_render_to_texture"):null,l=typeof navigator>"u"?!1:/OculusBrowser/g.test(navigator.userAgent),c=new tt,f=new WeakMap;let u;const h=new WeakMap;let p=!1;try{p=typeof OffscreenCanvas<"u"&&new OffscreenCanvas(1,1).getContext("2d")!==null}catch{}function v(L,x){return p?new OffscreenCanvas(L,x):So("canvas")}function M(L,x,B){let J=1;const ie=xt(L);if((ie.width>B||ie.height>B)&&(J=B/Math.max(ie.width,ie.height)),J<1)if(typeof HTMLImageElement<"u"&&L instanceof HTMLImageElement||typeof HTMLCanvasElement<"u"&&L instanceof HTMLCanvasElement||typeof ImageBitmap<"u"&&L instanceof ImageBitmap||typeof VideoFrame<"u"&&L instanceof VideoFrame){const te=Math.floor(J*ie.width),Ne=Math.floor(J*ie.height);u===void 0&&(u=v(te,Ne));const he=x?v(te,Ne):u;return he.width=te,he.height=Ne,he.getContext("2d").drawImage(L,0,0,te,Ne),console.warn("THREE.WebGLRenderer: Texture has been resized from ("+ie.width+"x"+ie.height+") to ("+te+"x"+Ne+")."),he}else return"data"in L&&console.warn("THREE.WebGLRenderer: Image in DataTexture is too big ("+ie.width+"x"+ie.height+")."),L;return L}function m(L){return L.generateMipmaps}function d(L){i.generateMipmap(L)}function T(L){return L.isWebGLCubeRenderTarget?i.TEXTURE_CUBE_MAP:L.isWebGL3DRenderTarget?i.TEXTURE_3D:L.isWebGLArrayRenderTarget||L.isCompressedArrayTexture?i.TEXTURE_2D_ARRAY:i.TEXTURE_2D}function A(L,x,B,J,ie=!1){if(L!==null){if(i[L]!==void 0)return i[L];console.warn("THREE.WebGLRenderer: Attempt to use non-existing WebGL internal format '"+L+"'")}let te=x;if(x===i.RED&&(B===i.FLOAT&&(te=i.R32F),B===i.HALF_FLOAT&&(te=i.R16F),B===i.UNSIGNED_BYTE&&(te=i.R8)),x===i.RED_INTEGER&&(B===i.UNSIGNED_BYTE&&(te=i.R8UI),B===i.UNSIGNED_SHORT&&(te=i.R16UI),B===i.UNSIGNED_INT&&(te=i.R32UI),B===i.BYTE&&(te=i.R8I),B===i.SHORT&&(te=i.R16I),B===i.INT&&(te=i.R32I)),x===i.RG&&(B===i.FLOAT&&(te=i.RG32F),B===i.HALF_FLOAT&&(te=i.RG16F),B===i.UNSIGNED_BYTE&&(te=i.RG8)),x===i.RG_INTEGER&&(B===i.UNSIGNED_BYTE&&(te=i.RG8UI),B===i.UNSIGNED_SHORT&&(te=i.RG16UI),B===i.UNSIGNED_INT&&(te=i.RG32UI),B===i.BYTE&&(te=i.RG8I),B===i.SHORT&&(te=i.RG16I),B===i.INT&&(te=i.RG32I)),x===i.RGB_INTEGER&&(B===i.UNSIGNED_BYTE&&(te=i.RGB8UI),B===i.UNSIGNED_SHORT&&(te=i.RGB16UI),B===i.UNSIGNED_INT&&(te=i.RGB32UI),B===i.BYTE&&(te=i.RGB8I),B===i.SHORT&&(te=i.RGB16I),B===i.INT&&(te=i.RGB32I)),x===i.RGBA_INTEGER&&(B===i.UNSIGNED_BYTE&&(te=i.RGBA8UI),B===i.UNSIGNED_SHORT&&(te=i.RGBA16UI),B===i.UNSIGNED_INT&&(te=i.RGBA32UI),B===i.BYTE&&(te=i.RGBA8I),B===i.SHORT&&(te=i.RGBA16I),B===i.INT&&(te=i.RGBA32I)),x===i.RGB&&(B===i.UNSIGNED_INT_5_9_9_9_REV&&(te=i.RGB9_E5),B===i.UNSIGNED_INT_10F_11F_11F_REV&&(te=i.R11F_G11F_B10F)),x===i.RGBA){const Ne=ie?xo:_t.getTransfer(J);B===i.FLOAT&&(te=i.RGBA32F),B===i.HALF_FLOAT&&(te=i.RGBA16F),B===i.UNSIGNED_BYTE&&(te=Ne===Rt?i.SRGB8_ALPHA8:i.RGBA8),B===i.UNSIGNED_SHORT_4_4_4_4&&(te=i.RGBA4),B===i.UNSIGNED_SHORT_5_5_5_1&&(te=i.RGB5_A1)}return(te===i.R16F||te===i.R32F||te===i.RG16F||te===i.RG32F||te===i.RGBA16F||te===i.RGBA32F)&&e.get("EXT_color_buffer_float"),te}function b(L,x){let B;return L?x===null||x===Is||x===oa?B=i.DEPTH24_STENCIL8:x===ki?B=i.DEPTH32F_STENCIL8:x===aa&&(B=i.DEPTH24_STENCIL8,console.warn("DepthTexture: 16 bit depth attachment is not supported with stencil. Using 24-bit attachment.")):x===null||x===Is||x===oa?B=i.DEPTH_COMPONENT24:x===ki?B=i.DEPTH_COMPONENT32F:x===aa&&(B=i.DEPTH_COMPONENT16),B}function N(L,x){return m(L)===!0||L.isFramebufferTexture&&L.minFilter!==gi&&L.minFilter!==Ti?Math.log2(Math.max(x.width,x.height))+1:L.mipmaps!==void 0&&L.mipmaps.length>0?L.mipmaps.length:L.isCompressedTexture&&Array.isArray(L.image)?x.mipmaps.length:1}function R(L){const x=L.target;x.removeEventListener("dispose",R),C(x),x.isVideoTexture&&f.delete(x)}function D(L){const x=L.target;x.removeEventListener("dispose",D),_(x)}function C(L){const x=n.get(L);if(x.__webglInit===void 0)return;const B=L.source,J=h.get(B);if(J){const ie=J[x.__cacheKey];ie.usedTimes--,ie.usedTimes===0&&S(L),Object.keys(J).length===0&&h.delete(B)}n.remove(L)}function S(L){const x=n.get(L);i.deleteTexture(x.__webglTexture);const B=L.source,J=h.get(B);delete J[x.__cacheKey],a.memory.textures--}function _(L){const x=n.get(L);if(L.depthTexture&&(L.depthTexture.dispose(),n.remove(L.depthTexture)),L.isWebGLCubeRenderTarget)for(let J=0;J<6;J++){if(Array.isArray(x.__webglFramebuffer[J]))for(let ie=0;ie<x.__webglFramebuffer[J].length;ie++)i.deleteFramebuffer(x.__webglFramebuffer[J][ie]);else i.deleteFramebuffer(x.__webglFramebuffer[J]);x.__webglDepthbuffer&&i.deleteRenderbuffer(x.__webglDepthbuffer[J])}else{if(Array.isArray(x.__webglFramebuffer))for(let J=0;J<x.__webglFramebuffer.length;J++)i.deleteFramebuffer(x.__webglFramebuffer[J]);else i.deleteFramebuffer(x.__webglFramebuffer);if(x.__webglDepthbuffer&&i.deleteRenderbuffer(x.__webglDepthbuffer),x.__webglMultisampledFramebuffer&&i.deleteFramebuffer(x.__webglMultisampledFramebuffer),x.__webglColorRenderbuffer)for(let J=0;J<x.__webglColorRenderbuffer.length;J++)x.__webglColorRenderbuffer[J]&&i.deleteRenderbuffer(x.__webglColorRenderbuffer[J]);x.__webglDepthRenderbuffer&&i.deleteRenderbuffer(x.__webglDepthRenderbuffer)}const B=L.textures;for(let J=0,ie=B.length;J<ie;J++){const te=n.get(B[J]);te.__webglTexture&&(i.deleteTexture(te.__webglTexture),a.memory.textures--),n.remove(B[J])}n.remove(L)}let y=0;function F(){y=0}function k(){const L=y;return L>=s.maxTextures&&console.warn("THREE.WebGLTextures: Trying to use "+L+" texture units while this GPU supports only "+s.maxTextures),y+=1,L}function q(L){const x=[];return x.push(L.wrapS),x.push(L.wrapT),x.push(L.wrapR||0),x.push(L.magFilter),x.push(L.minFilter),x.push(L.anisotropy),x.push(L.internalFormat),x.push(L.format),x.push(L.type),x.push(L.generateMipmaps),x.push(L.premultiplyAlpha),x.push(L.flipY),x.push(L.unpackAlignment),x.push(L.colorSpace),x.join()}function H(L,x){const B=n.get(L);if(L.isVideoTexture&&Ve(L),L.isRenderTargetTexture===!1&&L.isExternalTexture!==!0&&L.version>0&&B.__version!==L.version){const J=L.image;if(J===null)console.warn("THREE.WebGLRenderer: Texture marked for update but no image data found.");else if(J.complete===!1)console.warn("THREE.WebGLRenderer: Texture marked for update but image is incomplete");else{ee(B,L,x);return}}else L.isExternalTexture&&(B.__webglTexture=L.sourceTexture?L.sourceTexture:null);t.bindTexture(i.TEXTURE_2D,B.__webglTexture,i.TEXTURE0+x)}function Y(L,x){const B=n.get(L);if(L.isRenderTargetTexture===!1&&L.version>0&&B.__version!==L.version){ee(B,L,x);return}t.bindTexture(i.TEXTURE_2D_ARRAY,B.__webglTexture,i.TEXTURE0+x)}function j(L,x){const B=n.get(L);if(L.isRenderTargetTexture===!1&&L.version>0&&B.__version!==L.version){ee(B,L,x);return}t.bindTexture(i.TEXTURE_3D,B.__webglTexture,i.TEXTURE0+x)}function K(L,x){const B=n.get(L);if(L.version>0&&B.__version!==L.version){ne(B,L,x);return}t.bindTexture(i.TEXTURE_CUBE_MAP,B.__webglTexture,i.TEXTURE0+x)}const ae={[lc]:i.REPEAT,[Ps]:i.CLAMP_TO_EDGE,[cc]:i.MIRRORED_REPEAT},oe={[gi]:i.NEAREST,[c_]:i.NEAREST_MIPMAP_NEAREST,[Pa]:i.NEAREST_MIPMAP_LINEAR,[Ti]:i.LINEAR,[sl]:i.LINEAR_MIPMAP_NEAREST,[Ds]:i.LINEAR_MIPMAP_LINEAR},ve={[d_]:i.NEVER,[x_]:i.ALWAYS,[p_]:i.LESS,[Wd]:i.LEQUAL,[m_]:i.EQUAL,[v_]:i.GEQUAL,[g_]:i.GREATER,[__]:i.NOTEQUAL};function Se(L,x){if(x.type===ki&&e.has("OES_texture_float_linear")===!1&&(x.magFilter===Ti||x.magFilter===sl||x.magFilter===Pa||x.magFilter===Ds||x.minFilter===Ti||x.minFilter===sl||x.minFilter===Pa||x.minFilter===Ds)&&console.warn("THREE.WebGLRenderer: Unable to use linear filtering with floating point textures. OES_texture_float_linear not supported on this device."),i.texParameteri(L,i.TEXTURE_WRAP_S,ae[x.wrapS]),i.texParameteri(L,i.TEXTURE_WRAP_T,ae[x.wrapT]),(L===i.TEXTURE_3D||L===i.TEXTURE_2D_ARRAY)&&i.texParameteri(L,i.TEXTURE_WRAP_R,ae[x.wrapR]),i.texParameteri(L,i.TEXTURE_MAG_FILTER,oe[x.magFilter]),i.texParameteri(L,i.TEXTURE_MIN_FILTER,oe[x.minFilter]),x.compareFunction&&(i.texParameteri(L,i.TEXTURE_COMPARE_MODE,i.COMPARE_REF_TO_TEXTURE),i.texParameteri(L,i.TEXTURE_COMPARE_FUNC,ve[x.compareFunction])),e.has("EXT_texture_filter_anisotropic")===!0){if(x.magFilter===gi||x.minFilter!==Pa&&x.minFilter!==Ds||x.type===ki&&e.has("OES_texture_float_linear")===!1)return;if(x.anisotropy>1||n.get(x).__currentAnisotropy){const B=e.get("EXT_texture_filter_anisotropic");i.texParameterf(L,B.TEXTURE_MAX_ANISOTROPY_EXT,Math.min(x.anisotropy,s.getMaxAnisotropy())),n.get(x).__currentAnisotropy=x.anisotropy}}}function _e(L,x){let B=!1;L.__webglInit===void 0&&(L.__webglInit=!0,x.addEventListener("dispose",R));const J=x.source;let ie=h.get(J);ie===void 0&&(ie={},h.set(J,ie));const te=q(x);if(te!==L.__cacheKey){ie[te]===void 0&&(ie[te]={texture:i.createTexture(),usedTimes:0},a.memory.textures++,B=!0),ie[te].usedTimes++;const Ne=ie[L.__cacheKey];Ne!==void 0&&(ie[L.__cacheKey].usedTimes--,Ne.usedTimes===0&&S(x)),L.__cacheKey=te,L.__webglTexture=ie[te].texture}return B}function nt(L,x,B){return Math.floor(Math.floor(L/B)/x)}function Ze(L,x,B,J){const te=L.updateRanges;if(te.length===0)t.texSubImage2D(i.TEXTURE_2D,0,0,0,x.width,x.height,B,J,x.data);else{te.sort((le,ge)=>le.start-ge.start);let Ne=0;for(let le=1;le<te.length;le++){const ge=te[Ne],Be=te[le],Oe=ge.start+ge.count,Me=nt(Be.start,x.width,4),Ke=nt(ge.start,x.width,4);Be.start<=Oe+1&&Me===Ke&&nt(Be.start+Be.count-1,x.width,4)===Me?ge.count=Math.max(ge.count,Be.start+Be.count-ge.start):(++Ne,te[Ne]=Be)}te.length=Ne+1;const he=i.getParameter(i.UNPACK_ROW_LENGTH),De=i.getParameter(i.UNPACK_SKIP_PIXELS),Ae=i.getParameter(i.UNPACK_SKIP_ROWS);i.pixelStorei(i.UNPACK_ROW_LENGTH,x.width);for(let le=0,ge=te.length;le<ge;le++){const Be=te[le],Oe=Math.floor(Be.start/4),Me=Math.ceil(Be.count/4),Ke=Oe%x.width,V=Math.floor(Oe/x.width),fe=Me,pe=1;i.pixelStorei(i.UNPACK_SKIP_PIXELS,Ke),i.pixelStorei(i.UNPACK_SKIP_ROWS,V),t.texSubImage2D(i.TEXTURE_2D,0,Ke,V,fe,pe,B,J,x.data)}L.clearUpdateRanges(),i.pixelStorei(i.UNPACK_ROW_LENGTH,he),i.pixelStorei(i.UNPACK_SKIP_PIXELS,De),i.pixelStorei(i.UNPACK_SKIP_ROWS,Ae)}}function ee(L,x,B){let J=i.TEXTURE_2D;(x.isDataArrayTexture||x.isCompressedArrayTexture)&&(J=i.TEXTURE_2D_ARRAY),x.isData3DTexture&&(J=i.TEXTURE_3D);const ie=_e(L,x),te=x.source;t.bindTexture(J,L.__webglTexture,i.TEXTURE0+B);const Ne=n.get(te);if(te.version!==Ne.__version||ie===!0){t.activeTexture(i.TEXTURE0+B);const he=_t.getPrimaries(_t.workingColorSpace),De=x.colorSpace===ss?null:_t.getPrimaries(x.colorSpace),Ae=x.colorSpace===ss||he===De?i.NONE:i.BROWSER_DEFAULT_WEBGL;i.pixelStorei(i.UNPACK_FLIP_Y_WEBGL,x.flipY),i.pixelStorei(i.UNPACK_PREMULTIPLY_ALPHA_WEBGL,x.premultiplyAlpha),i.pixelStorei(i.UNPACK_ALIGNMENT,x.unpackAlignment),i.pixelStorei(i.UNPACK_COLORSPACE_CONVERSION_WEBGL,Ae);let le=M(x.image,!1,s.maxTextureSize);le=zt(x,le);const ge=r.convert(x.format,x.colorSpace),Be=r.convert(x.type);let Oe=A(x.internalFormat,ge,Be,x.colorSpace,x.isVideoTexture);Se(J,x);let Me;const Ke=x.mipmaps,V=x.isVideoTexture!==!0,fe=Ne.__version===void 0||ie===!0,pe=te.dataReady,Pe=N(x,le);if(x.isDepthTexture)Oe=b(x.format===ca,x.type),fe&&(V?t.texStorage2D(i.TEXTURE_2D,1,Oe,le.width,le.height):t.texImage2D(i.TEXTURE_2D,0,Oe,le.width,le.height,0,ge,Be,null));else if(x.isDataTexture)if(Ke.length>0){V&&fe&&t.texStorage2D(i.TEXTURE_2D,Pe,Oe,Ke[0].width,Ke[0].height);for(let ue=0,re=Ke.length;ue<re;ue++)Me=Ke[ue],V?pe&&t.texSubImage2D(i.TEXTURE_2D,ue,0,0,Me.width,Me.height,ge,Be,Me.data):t.texImage2D(i.TEXTURE_2D,ue,Oe,Me.width,Me.height,0,ge,Be,Me.data);x.generateMipmaps=!1}else V?(fe&&t.texStorage2D(i.TEXTURE_2D,Pe,Oe,le.width,le.height),pe&&Ze(x,le,ge,Be)):t.texImage2D(i.TEXTURE_2D,0,Oe,le.width,le.height,0,ge,Be,le.data);else if(x.isCompressedTexture)if(x.isCompressedArrayTexture){V&&fe&&t.texStorage3D(i.TEXTURE_2D_ARRAY,Pe,Oe,Ke[0].width,Ke[0].height,le.depth);for(let ue=0,re=Ke.length;ue<re;ue++)if(Me=Ke[ue],x.format!==mi)if(ge!==null)if(V){if(pe)if(x.layerUpdates.size>0){const Fe=uf(Me.width,Me.height,x.format,x.type);for(const Qe of x.layerUpdates){const wt=Me.data.subarray(Qe*Fe/Me.data.BYTES_PER_ELEMENT,(Qe+1)*Fe/Me.data.BYTES_PER_ELEMENT);t.compressedTexSubImage3D(i.TEXTURE_2D_ARRAY,ue,0,0,Qe,Me.width,Me.height,1,ge,wt)}x.clearLayerUpdates()}else t.compressedTexSubImage3D(i.TEXTURE_2D_ARRAY,ue,0,0,0,Me.width,Me.height,le.depth,ge,Me.data)}else t.compressedTexImage3D(i.TEXTURE_2D_ARRAY,ue,Oe,Me.width,Me.height,le.depth,0,Me.data,0,0);else console.warn("THREE.WebGLRenderer: Attempt to load unsupported compressed texture format in .uploadTexture()");else V?pe&&t.texSubImage3D(i.TEXTURE_2D_ARRAY,ue,0,0,0,Me.width,Me.height,le.depth,ge,Be,Me.data):t.texImage3D(i.TEXTURE_2D_ARRAY,ue,Oe,Me.width,Me.height,le.depth,0,ge,Be,Me.data)}else{V&&fe&&t.texStorage2D(i.TEXTURE_2D,Pe,Oe,Ke[0].width,Ke[0].height);for(let ue=0,re=Ke.length;ue<re;ue++)Me=Ke[ue],x.format!==mi?ge!==null?V?pe&&t.compressedTexSubImage2D(i.TEXTURE_2D,ue,0,0,Me.width,Me.height,ge,Me.data):t.compressedTexImage2D(i.TEXTURE_2D,ue,Oe,Me.width,Me.height,0,Me.data):console.warn("THREE.WebGLRenderer: Attempt to load unsupported compressed texture format in .uploadTexture()"):V?pe&&t.texSubImage2D(i.TEXTURE_2D,ue,0,0,Me.width,Me.height,ge,Be,Me.data):t.texImage2D(i.TEXTURE_2D,ue,Oe,Me.width,Me.height,0,ge,Be,Me.data)}else if(x.isDataArrayTexture)if(V){if(fe&&t.texStorage3D(i.TEXTURE_2D_ARRAY,Pe,Oe,le.width,le.height,le.depth),pe)if(x.layerUpdates.size>0){const ue=uf(le.width,le.height,x.format,x.type);for(const re of x.layerUpdates){const Fe=le.data.subarray(re*ue/le.data.BYTES_PER_ELEMENT,(re+1)*ue/le.data.BYTES_PER_ELEMENT);t.texSubImage3D(i.TEXTURE_2D_ARRAY,0,0,0,re,le.width,le.height,1,ge,Be,Fe)}x.clearLayerUpdates()}else t.texSubImage3D(i.TEXTURE_2D_ARRAY,0,0,0,0,le.width,le.height,le.depth,ge,Be,le.data)}else t.texImage3D(i.TEXTURE_2D_ARRAY,0,Oe,le.width,le.height,le.depth,0,ge,Be,le.data);else if(x.isData3DTexture)V?(fe&&t.texStorage3D(i.TEXTURE_3D,Pe,Oe,le.width,le.height,le.depth),pe&&t.texSubImage3D(i.TEXTURE_3D,0,0,0,0,le.width,le.height,le.depth,ge,Be,le.data)):t.texImage3D(i.TEXTURE_3D,0,Oe,le.width,le.height,le.depth,0,ge,Be,le.data);else if(x.isFramebufferTexture){if(fe)if(V)t.texStorage2D(i.TEXTURE_2D,Pe,Oe,le.width,le.height);else{let ue=le.width,re=le.height;for(let Fe=0;Fe<Pe;Fe++)t.texImage2D(i.TEXTURE_2D,Fe,Oe,ue,re,0,ge,Be,null),ue>>=1,re>>=1}}else if(Ke.length>0){if(V&&fe){const ue=xt(Ke[0]);t.texStorage2D(i.TEXTURE_2D,Pe,Oe,ue.width,ue.height)}for(let ue=0,re=Ke.length;ue<re;ue++)Me=Ke[ue],V?pe&&t.texSubImage2D(i.TEXTURE_2D,ue,0,0,ge,Be,Me):t.texImage2D(i.TEXTURE_2D,ue,Oe,ge,Be,Me);x.generateMipmaps=!1}else if(V){if(fe){const ue=xt(le);t.texStorage2D(i.TEXTURE_2D,Pe,Oe,ue.width,ue.height)}pe&&t.texSubImage2D(i.TEXTURE_2D,0,0,0,ge,Be,le)}else t.texImage2D(i.TEXTURE_2D,0,Oe,ge,Be,le);m(x)&&d(J),Ne.__version=te.version,x.onUpdate&&x.onUpdate(x)}L.__version=x.version}function ne(L,x,B){if(x.image.length!==6)return;const J=_e(L,x),ie=x.source;t.bindTexture(i.TEXTURE_CUBE_MAP,L.__webglTexture,i.TEXTURE0+B);const te=n.get(ie);if(ie.version!==te.__version||J===!0){t.activeTexture(i.TEXTURE0+B);const Ne=_t.getPrimaries(_t.workingColorSpace),he=x.colorSpace===ss?null:_t.getPrimaries(x.colorSpace),De=x.colorSpace===ss||Ne===he?i.NONE:i.BROWSER_DEFAULT_WEBGL;i.pixelStorei(i.UNPACK_FLIP_Y_WEBGL,x.flipY),i.pixelStorei(i.UNPACK_PREMULTIPLY_ALPHA_WEBGL,x.premultiplyAlpha),i.pixelStorei(i.UNPACK_ALIGNMENT,x.unpackAlignment),i.pixelStorei(i.UNPACK_COLORSPACE_CONVERSION_WEBGL,De);const Ae=x.isCompressedTexture||x.image[0].isCompressedTexture,le=x.image[0]&&x.image[0].isDataTexture,ge=[];for(let re=0;re<6;re++)!Ae&&!le?ge[re]=M(x.image[re],!0,s.maxCubemapSize):ge[re]=le?x.image[re].image:x.image[re],ge[re]=zt(x,ge[re]);const Be=ge[0],Oe=r.convert(x.format,x.colorSpace),Me=r.convert(x.type),Ke=A(x.internalFormat,Oe,Me,x.colorSpace),V=x.isVideoTexture!==!0,fe=te.__version===void 0||J===!0,pe=ie.dataReady;let Pe=N(x,Be);Se(i.TEXTURE_CUBE_MAP,x);let ue;if(Ae){V&&fe&&t.texStorage2D(i.TEXTURE_CUBE_MAP,Pe,Ke,Be.width,Be.height);for(let re=0;re<6;re++){ue=ge[re].mipmaps;for(let Fe=0;Fe<ue.length;Fe++){const Qe=ue[Fe];x.format!==mi?Oe!==null?V?pe&&t.compressedTexSubImage2D(i.TEXTURE_CUBE_MAP_POSITIVE_X+re,Fe,0,0,Qe.width,Qe.height,Oe,Qe.data):t.compressedTexImage2D(i.TEXTURE_CUBE_MAP_POSITIVE_X+re,Fe,Ke,Qe.width,Qe.height,0,Qe.data):console.warn("THREE.WebGLRenderer: Attempt to load unsupported compressed texture format in .setTextureCube()"):V?pe&&t.texSubImage2D(i.TEXTURE_CUBE_MAP_POSITIVE_X+re,Fe,0,0,Qe.width,Qe.height,Oe,Me,Qe.data):t.texImage2D(i.TEXTURE_CUBE_MAP_POSITIVE_X+re,Fe,Ke,Qe.width,Qe.height,0,Oe,Me,Qe.data)}}}else{if(ue=x.mipmaps,V&&fe){ue.length>0&&Pe++;const re=xt(ge[0]);t.texStorage2D(i.TEXTURE_CUBE_MAP,Pe,Ke,re.width,re.height)}for(let re=0;re<6;re++)if(le){V?pe&&t.texSubImage2D(i.TEXTURE_CUBE_MAP_POSITIVE_X+re,0,0,0,ge[re].width,ge[re].height,Oe,Me,ge[re].data):t.texImage2D(i.TEXTURE_CUBE_MAP_POSITIVE_X+re,0,Ke,ge[re].width,ge[re].height,0,Oe,Me,ge[re].data);for(let Fe=0;Fe<ue.length;Fe++){const wt=ue[Fe].image[re].image;V?pe&&t.texSubImage2D(i.TEXTURE_CUBE_MAP_POSITIVE_X+re,Fe+1,0,0,wt.width,wt.height,Oe,Me,wt.data):t.texImage2D(i.TEXTURE_CUBE_MAP_POSITIVE_X+re,Fe+1,Ke,wt.width,wt.height,0,Oe,Me,wt.data)}}else{V?pe&&t.texSubImage2D(i.TEXTURE_CUBE_MAP_POSITIVE_X+re,0,0,0,Oe,Me,ge[re]):t.texImage2D(i.TEXTURE_CUBE_MAP_POSITIVE_X+re,0,Ke,Oe,Me,ge[re]);for(let Fe=0;Fe<ue.length;Fe++){const Qe=ue[Fe];V?pe&&t.texSubImage2D(i.TEXTURE_CUBE_MAP_POSITIVE_X+re,Fe+1,0,0,Oe,Me,Qe.image[re]):t.texImage2D(i.TEXTURE_CUBE_MAP_POSITIVE_X+re,Fe+1,Ke,Oe,Me,Qe.image[re])}}}m(x)&&d(i.TEXTURE_CUBE_MAP),te.__version=ie.version,x.onUpdate&&x.onUpdate(x)}L.__version=x.version}function be(L,x,B,J,ie,te){const Ne=r.convert(B.format,B.colorSpace),he=r.convert(B.type),De=A(B.internalFormat,Ne,he,B.colorSpace),Ae=n.get(x),le=n.get(B);if(le.__renderTarget=x,!Ae.__hasExternalTextures){const ge=Math.max(1,x.width>>te),Be=Math.max(1,x.height>>te);ie===i.TEXTURE_3D||ie===i.TEXTURE_2D_ARRAY?t.texImage3D(ie,te,De,ge,Be,x.depth,0,Ne,he,null):t.texImage2D(ie,te,De,ge,Be,0,Ne,he,null)}t.bindFramebuffer(i.FRAMEBUFFER,L),Ce(x)?o.framebufferTexture2DMultisampleEXT(i.FRAMEBUFFER,J,ie,le.__webglTexture,0,bt(x)):(ie===i.TEXTURE_2D||ie>=i.TEXTURE_CUBE_MAP_POSITIVE_X&&ie<=i.TEXTURE_CUBE_MAP_NEGATIVE_Z)&&i.framebufferTexture2D(i.FRAMEBUFFER,J,ie,le.__webglTexture,te),t.bindFramebuffer(i.FRAMEBUFFER,null)}function ze(L,x,B){if(i.bindRenderbuffer(i.RENDERBUFFER,L),x.depthBuffer){const J=x.depthTexture,ie=J&&J.isDepthTexture?J.type:null,te=b(x.stencilBuffer,ie),Ne=x.stencilBuffer?i.DEPTH_STENCIL_ATTACHMENT:i.DEPTH_ATTACHMENT,he=bt(x);Ce(x)?o.renderbufferStorageMultisampleEXT(i.RENDERBUFFER,he,te,x.width,x.height):B?i.renderbufferStorageMultisample(i.RENDERBUFFER,he,te,x.width,x.height):i.renderbufferStorage(i.RENDERBUFFER,te,x.width,x.height),i.framebufferRenderbuffer(i.FRAMEBUFFER,Ne,i.RENDERBUFFER,L)}else{const J=x.textures;for(let ie=0;ie<J.length;ie++){const te=J[ie],Ne=r.convert(te.format,te.colorSpace),he=r.convert(te.type),De=A(te.internalFormat,Ne,he,te.colorSpace),Ae=bt(x);B&&Ce(x)===!1?i.renderbufferStorageMultisample(i.RENDERBUFFER,Ae,De,x.width,x.height):Ce(x)?o.renderbufferStorageMultisampleEXT(i.RENDERBUFFER,Ae,De,x.width,x.height):i.renderbufferStorage(i.RENDERBUFFER,De,x.width,x.height)}}i.bindRenderbuffer(i.RENDERBUFFER,null)}function xe(L,x){if(x&&x.isWebGLCubeRenderTarget)throw new Error("Depth Texture with cube render targets is not supported");if(t.bindFramebuffer(i.FRAMEBUFFER,L),!(x.depthTexture&&x.depthTexture.isDepthTexture))throw new Error("renderTarget.depthTexture must be an instance of THREE.DepthTexture");const J=n.get(x.depthTexture);J.__renderTarget=x,(!J.__webglTexture||x.depthTexture.image.width!==x.width||x.depthTexture.image.height!==x.height)&&(x.depthTexture.image.width=x.width,x.depthTexture.image.height=x.height,x.depthTexture.needsUpdate=!0),H(x.depthTexture,0);const ie=J.__webglTexture,te=bt(x);if(x.depthTexture.format===la)Ce(x)?o.framebufferTexture2DMultisampleEXT(i.FRAMEBUFFER,i.DEPTH_ATTACHMENT,i.TEXTURE_2D,ie,0,te):i.framebufferTexture2D(i.FRAMEBUFFER,i.DEPTH_ATTACHMENT,i.TEXTURE_2D,ie,0);else if(x.depthTexture.format===ca)Ce(x)?o.framebufferTexture2DMultisampleEXT(i.FRAMEBUFFER,i.DEPTH_STENCIL_ATTACHMENT,i.TEXTURE_2D,ie,0,te):i.framebufferTexture2D(i.FRAMEBUFFER,i.DEPTH_STENCIL_ATTACHMENT,i.TEXTURE_2D,ie,0);else throw new Error("Unknown depthTexture format")}function Je(L){const x=n.get(L),B=L.isWebGLCubeRenderTarget===!0;if(x.__boundDepthTexture!==L.depthTexture){const J=L.depthTexture;if(x.__depthDisposeCallback&&x.__depthDisposeCallback(),J){const ie=()=>{delete x.__boundDepthTexture,delete x.__depthDisposeCallback,J.removeEventListener("dispose",ie)};J.addEventListener("dispose",ie),x.__depthDisposeCallback=ie}x.__boundDepthTexture=J}if(L.depthTexture&&!x.__autoAllocateDepthBuffer){if(B)throw new Error("target.depthTexture not supported in Cube render targets");const J=L.texture.mipmaps;J&&J.length>0?xe(x.__webglFramebuffer[0],L):xe(x.__webglFramebuffer,L)}else if(B){x.__webglDepthbuffer=[];for(let J=0;J<6;J++)if(t.bindFramebuffer(i.FRAMEBUFFER,x.__webglFramebuffer[J]),x.__webglDepthbuffer[J]===void 0)x.__webglDepthbuffer[J]=i.createRenderbuffer(),ze(x.__webglDepthbuffer[J],L,!1);else{const ie=L.stencilBuffer?i.DEPTH_STENCIL_ATTACHMENT:i.DEPTH_ATTACHMENT,te=x.__webglDepthbuffer[J];i.bindRenderbuffer(i.RENDERBUFFER,te),i.framebufferRenderbuffer(i.FRAMEBUFFER,ie,i.RENDERBUFFER,te)}}else{const J=L.texture.mipmaps;if(J&&J.length>0?t.bindFramebuffer(i.FRAMEBUFFER,x.__webglFramebuffer[0]):t.bindFramebuffer(i.FRAMEBUFFER,x.__webglFramebuffer),x.__webglDepthbuffer===void 0)x.__webglDepthbuffer=i.createRenderbuffer(),ze(x.__webglDepthbuffer,L,!1);else{const ie=L.stencilBuffer?i.DEPTH_STENCIL_ATTACHMENT:i.DEPTH_ATTACHMENT,te=x.__webglDepthbuffer;i.bindRenderbuffer(i.RENDERBUFFER,te),i.framebufferRenderbuffer(i.FRAMEBUFFER,ie,i.RENDERBUFFER,te)}}t.bindFramebuffer(i.FRAMEBUFFER,null)}function It(L,x,B){const J=n.get(L);x!==void 0&&be(J.__webglFramebuffer,L,L.texture,i.COLOR_ATTACHMENT0,i.TEXTURE_2D,0),B!==void 0&&Je(L)}function O(L){const x=L.texture,B=n.get(L),J=n.get(x);L.addEventListener("dispose",D);const ie=L.textures,te=L.isWebGLCubeRenderTarget===!0,Ne=ie.length>1;if(Ne||(J.__webglTexture===void 0&&(J.__webglTexture=i.createTexture()),J.__version=x.version,a.memory.textures++),te){B.__webglFramebuffer=[];for(let he=0;he<6;he++)if(x.mipmaps&&x.mipmaps.length>0){B.__webglFramebuffer[he]=[];for(let De=0;De<x.mipmaps.length;De++)B.__webglFramebuffer[he][De]=i.createFramebuffer()}else B.__webglFramebuffer[he]=i.createFramebuffer()}else{if(x.mipmaps&&x.mipmaps.length>0){B.__webglFramebuffer=[];for(let he=0;he<x.mipmaps.length;he++)B.__webglFramebuffer[he]=i.createFramebuffer()}else B.__webglFramebuffer=i.createFramebuffer();if(Ne)for(let he=0,De=ie.length;he<De;he++){const Ae=n.get(ie[he]);Ae.__webglTexture===void 0&&(Ae.__webglTexture=i.createTexture(),a.memory.textures++)}if(L.samples>0&&Ce(L)===!1){B.__webglMultisampledFramebuffer=i.createFramebuffer(),B.__webglColorRenderbuffer=[],t.bindFramebuffer(i.FRAMEBUFFER,B.__webglMultisampledFramebuffer);for(let he=0;he<ie.length;he++){const De=ie[he];B.__webglColorRenderbuffer[he]=i.createRenderbuffer(),i.bindRenderbuffer(i.RENDERBUFFER,B.__webglColorRenderbuffer[he]);const Ae=r.convert(De.format,De.colorSpace),le=r.convert(De.type),ge=A(De.internalFormat,Ae,le,De.colorSpace,L.isXRRenderTarget===!0),Be=bt(L);i.renderbufferStorageMultisample(i.RENDERBUFFER,Be,ge,L.width,L.height),i.framebufferRenderbuffer(i.FRAMEBUFFER,i.COLOR_ATTACHMENT0+he,i.RENDERBUFFER,B.__webglColorRenderbuffer[he])}i.bindRenderbuffer(i.RENDERBUFFER,null),L.depthBuffer&&(B.__webglDepthRenderbuffer=i.createRenderbuffer(),ze(B.__webglDepthRenderbuffer,L,!0)),t.bindFramebuffer(i.FRAMEBUFFER,null)}}if(te){t.bindTexture(i.TEXTURE_CUBE_MAP,J.__webglTexture),Se(i.TEXTURE_CUBE_MAP,x);for(let he=0;he<6;he++)if(x.mipmaps&&x.mipmaps.length>0)for(let De=0;De<x.mipmaps.length;De++)be(B.__webglFramebuffer[he][De],L,x,i.COLOR_ATTACHMENT0,i.TEXTURE_CUBE_MAP_POSITIVE_X+he,De);else be(B.__webglFramebuffer[he],L,x,i.COLOR_ATTACHMENT0,i.TEXTURE_CUBE_MAP_POSITIVE_X+he,0);m(x)&&d(i.TEXTURE_CUBE_MAP),t.unbindTexture()}else if(Ne){for(let he=0,De=ie.length;he<De;he++){const Ae=ie[he],le=n.get(Ae);let ge=i.TEXTURE_2D;(L.isWebGL3DRenderTarget||L.isWebGLArrayRenderTarget)&&(ge=L.isWebGL3DRenderTarget?i.TEXTURE_3D:i.TEXTURE_2D_ARRAY),t.bindTexture(ge,le.__webglTexture),Se(ge,Ae),be(B.__webglFramebuffer,L,Ae,i.COLOR_ATTACHMENT0+he,ge,0),m(Ae)&&d(ge)}t.unbindTexture()}else{let he=i.TEXTURE_2D;if((L.isWebGL3DRenderTarget||L.isWebGLArrayRenderTarget)&&(he=L.isWebGL3DRenderTarget?i.TEXTURE_3D:i.TEXTURE_2D_ARRAY),t.bindTexture(he,J.__webglTexture),Se(he,x),x.mipmaps&&x.mipmaps.length>0)for(let De=0;De<x.mipmaps.length;De++)be(B.__webglFramebuffer[De],L,x,i.COLOR_ATTACHMENT0,he,De);else be(B.__webglFramebuffer,L,x,i.COLOR_ATTACHMENT0,he,0);m(x)&&d(he),t.unbindTexture()}L.depthBuffer&&Je(L)}function dt(L){const x=L.textures;for(let B=0,J=x.length;B<J;B++){const ie=x[B];if(m(ie)){const te=T(L),Ne=n.get(ie).__webglTexture;t.bindTexture(te,Ne),d(te),t.unbindTexture()}}}const $e=[],Ge=[];function Ie(L){if(L.samples>0){if(Ce(L)===!1){const x=L.textures,B=L.width,J=L.height;let ie=i.COLOR_BUFFER_BIT;const te=L.stencilBuffer?i.DEPTH_STENCIL_ATTACHMENT:i.DEPTH_ATTACHMENT,Ne=n.get(L),he=x.length>1;if(he)for(let Ae=0;Ae<x.length;Ae++)t.bindFramebuffer(i.FRAMEBUFFER,Ne.__webglMultisampledFramebuffer),i.framebufferRenderbuffer(i.FRAMEBUFFER,i.COLOR_ATTACHMENT0+Ae,i.RENDERBUFFER,null),t.bindFramebuffer(i.FRAMEBUFFER,Ne.__webglFramebuffer),i.framebufferTexture2D(i.DRAW_FRAMEBUFFER,i.COLOR_ATTACHMENT0+Ae,i.TEXTURE_2D,null,0);t.bindFramebuffer(i.READ_FRAMEBUFFER,Ne.__webglMultisampledFramebuffer);const De=L.texture.mipmaps;De&&De.length>0?t.bindFramebuffer(i.DRAW_FRAMEBUFFER,Ne.__webglFramebuffer[0]):t.bindFramebuffer(i.DRAW_FRAMEBUFFER,Ne.__webglFramebuffer);for(let Ae=0;Ae<x.length;Ae++){if(L.resolveDepthBuffer&&(L.depthBuffer&&(ie|=i.DEPTH_BUFFER_BIT),L.stencilBuffer&&L.resolveStencilBuffer&&(ie|=i.STENCIL_BUFFER_BIT)),he){i.framebufferRenderbuffer(i.READ_FRAMEBUFFER,i.COLOR_ATTACHMENT0,i.RENDERBUFFER,Ne.__webglColorRenderbuffer[Ae]);const le=n.get(x[Ae]).__webglTexture;i.framebufferTexture2D(i.DRAW_FRAMEBUFFER,i.COLOR_ATTACHMENT0,i.TEXTURE_2D,le,0)}i.blitFramebuffer(0,0,B,J,0,0,B,J,ie,i.NEAREST),l===!0&&($e.length=0,Ge.length=0,$e.push(i.COLOR_ATTACHMENT0+Ae),L.depthBuffer&&L.resolveDepthBuffer===!1&&($e.push(te),Ge.push(te),i.invalidateFramebuffer(i.DRAW_FRAMEBUFFER,Ge)),i.invalidateFramebuffer(i.READ_FRAMEBUFFER,$e))}if(t.bindFramebuffer(i.READ_FRAMEBUFFER,null),t.bindFramebuffer(i.DRAW_FRAMEBUFFER,null),he)for(let Ae=0;Ae<x.length;Ae++){t.bindFramebuffer(i.FRAMEBUFFER,Ne.__webglMultisampledFramebuffer),i.framebufferRenderbuffer(i.FRAMEBUFFER,i.COLOR_ATTACHMENT0+Ae,i.RENDERBUFFER,Ne.__webglColorRenderbuffer[Ae]);const le=n.get(x[Ae]).__webglTexture;t.bindFramebuffer(i.FRAMEBUFFER,Ne.__webglFramebuffer),i.framebufferTexture2D(i.DRAW_FRAMEBUFFER,i.COLOR_ATTACHMENT0+Ae,i.TEXTURE_2D,le,0)}t.bindFramebuffer(i.DRAW_FRAMEBUFFER,Ne.__webglMultisampledFramebuffer)}else if(L.depthBuffer&&L.resolveDepthBuffer===!1&&l){const x=L.stencilBuffer?i.DEPTH_STENCIL_ATTACHMENT:i.DEPTH_ATTACHMENT;i.invalidateFramebuffer(i.DRAW_FRAMEBUFFER,[x])}}}function bt(L){return Math.min(s.maxSamples,L.samples)}function Ce(L){const x=n.get(L);return L.samples>0&&e.has("WEBGL_multisampled_render_to_texture")===!0&&x.__useRenderToTexture!==!1}function Ve(L){const x=a.render.frame;f.get(L)!==x&&(f.set(L,x),L.update())}function zt(L,x){const B=L.colorSpace,J=L.format,ie=L.type;return L.isCompressedTexture===!0||L.isVideoTexture===!0||B!==br&&B!==ss&&(_t.getTransfer(B)===Rt?(J!==mi||ie!==Ri)&&console.warn("THREE.WebGLTextures: sRGB encoded textures have to use RGBAFormat and UnsignedByteType."):console.error("THREE.WebGLTextures: Unsupported texture color space:",B)),x}function xt(L){return typeof HTMLImageElement<"u"&&L instanceof HTMLImageElement?(c.width=L.naturalWidth||L.width,c.height=L.naturalHeight||L.height):typeof VideoFrame<"u"&&L instanceof VideoFrame?(c.width=L.displayWidth,c.height=L.displayHeight):(c.width=L.width,c.height=L.height),c}this.allocateTextureUnit=k,this.resetTextureUnits=F,this.setTexture2D=H,this.setTexture2DArray=Y,this.setTexture3D=j,this.setTextureCube=K,this.rebindTextures=It,this.setupRenderTarget=O,this.updateRenderTargetMipmap=dt,this.updateMultisampleRenderTarget=Ie,this.setupDepthRenderbuffer=Je,this.setupFrameBufferTexture=be,this.useMultisampledRTT=Ce}function OS(i,e){function t(n,s=ss){let r;const a=_t.getTransfer(s);if(n===Ri)return i.UNSIGNED_BYTE;if(n===lu)return i.UNSIGNED_SHORT_4_4_4_4;if(n===cu)return i.UNSIGNED_SHORT_5_5_5_1;if(n===Od)return i.UNSIGNED_INT_5_9_9_9_REV;if(n===Bd)return i.UNSIGNED_INT_10F_11F_11F_REV;if(n===Nd)return i.BYTE;if(n===Fd)return i.SHORT;if(n===aa)return i.UNSIGNED_SHORT;if(n===ou)return i.INT;if(n===Is)return i.UNSIGNED_INT;if(n===ki)return i.FLOAT;if(n===pa)return i.HALF_FLOAT;if(n===zd)return i.ALPHA;if(n===kd)return i.RGB;if(n===mi)return i.RGBA;if(n===la)return i.DEPTH_COMPONENT;if(n===ca)return i.DEPTH_STENCIL;if(n===Hd)return i.RED;if(n===uu)return i.RED_INTEGER;if(n===Vd)return i.RG;if(n===hu)return i.RG_INTEGER;if(n===fu)return i.RGBA_INTEGER;if(n===ao||n===oo||n===lo||n===co)if(a===Rt)if(r=e.get("WEBGL_compressed_texture_s3tc_srgb"),r!==null){if(n===ao)return r.COMPRESSED_SRGB_S3TC_DXT1_EXT;if(n===oo)return r.COMPRESSED_SRGB_ALPHA_S3TC_DXT1_EXT;if(n===lo)return r.COMPRESSED_SRGB_ALPHA_S3TC_DXT3_EXT;if(n===co)return r.COMPRESSED_SRGB_ALPHA_S3TC_DXT5_EXT}else return null;else if(r=e.get("WEBGL_compressed_texture_s3tc"),r!==null){if(n===ao)return r.COMPRESSED_RGB_S3TC_DXT1_EXT;if(n===oo)return r.COMPRESSED_RGBA_S3TC_DXT1_EXT;if(n===lo)return r.COMPRESSED_RGBA_S3TC_DXT3_EXT;if(n===co)return r.COMPRESSED_RGBA_S3TC_DXT5_EXT}else return null;if(n===uc||n===hc||n===fc||n===dc)if(r=e.get("WEBGL_compressed_texture_pvrtc"),r!==null){if(n===uc)return r.COMPRESSED_RGB_PVRTC_4BPPV1_IMG;if(n===hc)return r.COMPRESSED_RGB_PVRTC_2BPPV1_IMG;if(n===fc)return r.COMPRESSED_RGBA_PVRTC_4BPPV1_IMG;if(n===dc)return r.COMPRESSED_RGBA_PVRTC_2BPPV1_IMG}else return null;if(n===pc||n===mc||n===gc)if(r=e.get("WEBGL_compressed_texture_etc"),r!==null){if(n===pc||n===mc)return a===Rt?r.COMPRESSED_SRGB8_ETC2:r.COMPRESSED_RGB8_ETC2;if(n===gc)return a===Rt?r.COMPRESSED_SRGB8_ALPHA8_ETC2_EAC:r.COMPRESSED_RGBA8_ETC2_EAC}else return null;if(n===_c||n===vc||n===xc||n===Mc||n===Sc||n===yc||n===Ec||n===bc||n===Tc||n===wc||n===Ac||n===Rc||n===Cc||n===Pc)if(r=e.get("WEBGL_compressed_texture_astc"),r!==null){if(n===_c)return a===Rt?r.COMPRESSED_SRGB8_ALPHA8_ASTC_4x4_KHR:r.COMPRESSED_RGBA_ASTC_4x4_KHR;if(n===vc)return a===Rt?r.COMPRESSED_SRGB8_ALPHA8_ASTC_5x4_KHR:r.COMPRESSED_RGBA_ASTC_5x4_KHR;if(n===xc)return a===Rt?r.COMPRESSED_SRGB8_ALPHA8_ASTC_5x5_KHR:r.COMPRESSED_RGBA_ASTC_5x5_KHR;if(n===Mc)return a===Rt?r.COMPRESSED_SRGB8_ALPHA8_ASTC_6x5_KHR:r.COMPRESSED_RGBA_ASTC_6x5_KHR;if(n===Sc)return a===Rt?r.COMPRESSED_SRGB8_ALPHA8_ASTC_6x6_KHR:r.COMPRESSED_RGBA_ASTC_6x6_KHR;if(n===yc)return a===Rt?r.COMPRESSED_SRGB8_ALPHA8_ASTC_8x5_KHR:r.COMPRESSED_RGBA_ASTC_8x5_KHR;if(n===Ec)return a===Rt?r.COMPRESSED_SRGB8_ALPHA8_ASTC_8x6_KHR:r.COMPRESSED_RGBA_ASTC_8x6_KHR;if(n===bc)return a===Rt?r.COMPRESSED_SRGB8_ALPHA8_ASTC_8x8_KHR:r.COMPRESSED_RGBA_ASTC_8x8_KHR;if(n===Tc)return a===Rt?r.COMPRESSED_SRGB8_ALPHA8_ASTC_10x5_KHR:r.COMPRESSED_RGBA_ASTC_10x5_KHR;if(n===wc)return a===Rt?r.COMPRESSED_SRGB8_ALPHA8_ASTC_10x6_KHR:r.COMPRESSED_RGBA_ASTC_10x6_KHR;if(n===Ac)return a===Rt?r.COMPRESSED_SRGB8_ALPHA8_ASTC_10x8_KHR:r.COMPRESSED_RGBA_ASTC_10x8_KHR;if(n===Rc)return a===Rt?r.COMPRESSED_SRGB8_ALPHA8_ASTC_10x10_KHR:r.COMPRESSED_RGBA_ASTC_10x10_KHR;if(n===Cc)return a===Rt?r.COMPRESSED_SRGB8_ALPHA8_ASTC_12x10_KHR:r.COMPRESSED_RGBA_ASTC_12x10_KHR;if(n===Pc)return a===Rt?r.COMPRESSED_SRGB8_ALPHA8_ASTC_12x12_KHR:r.COMPRESSED_RGBA_ASTC_12x12_KHR}else return null;if(n===Dc||n===Lc||n===Uc)if(r=e.get("EXT_texture_compression_bptc"),r!==null){if(n===Dc)return a===Rt?r.COMPRESSED_SRGB_ALPHA_BPTC_UNORM_EXT:r.COMPRESSED_RGBA_BPTC_UNORM_EXT;if(n===Lc)return r.COMPRESSED_RGB_BPTC_SIGNED_FLOAT_EXT;if(n===Uc)return r.COMPRESSED_RGB_BPTC_UNSIGNED_FLOAT_EXT}else return null;if(n===Ic||n===Nc||n===Fc||n===Oc)if(r=e.get("EXT_texture_compression_rgtc"),r!==null){if(n===Ic)return r.COMPRESSED_RED_RGTC1_EXT;if(n===Nc)return r.COMPRESSED_SIGNED_RED_RGTC1_EXT;if(n===Fc)return r.COMPRESSED_RED_GREEN_RGTC2_EXT;if(n===Oc)return r.COMPRESSED_SIGNED_RED_GREEN_RGTC2_EXT}else return null;return n===oa?i.UNSIGNED_INT_24_8:i[n]!==void 0?i[n]:null}return{convert:t}}const BS=`
void main() {

	gl_Position = vec4( position, 1.0 );

}`,zS=`
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

}`;class kS{constructor(){this.texture=null,this.mesh=null,this.depthNear=0,this.depthFar=0}init(e,t){if(this.texture===null){const n=new tp(e.texture);(e.depthNear!==t.depthNear||e.depthFar!==t.depthFar)&&(this.depthNear=e.depthNear,this.depthFar=e.depthFar),this.texture=n}}getMesh(e){if(this.texture!==null&&this.mesh===null){const t=e.cameras[0].viewport,n=new us({vertexShader:BS,fragmentShader:zS,uniforms:{depthColor:{value:this.texture},depthWidth:{value:t.z},depthHeight:{value:t.w}}});this.mesh=new _n(new Fo(20,20),n)}return this.mesh}reset(){this.texture=null,this.mesh=null}getDepthTexture(){return this.texture}}class HS extends Bs{constructor(e,t){super();const n=this;let s=null,r=1,a=null,o="local-floor",l=1,c=null,f=null,u=null,h=null,p=null,v=null;const M=typeof XRWebGLBinding<"u",m=new kS,d={},T=t.getContextAttributes();let A=null,b=null;const N=[],R=[],D=new tt;let C=null;const S=new si;S.viewport=new $t;const _=new si;_.viewport=new $t;const y=[S,_],F=new a0;let k=null,q=null;this.cameraAutoUpdate=!0,this.enabled=!1,this.isPresenting=!1,this.getController=function(ee){let ne=N[ee];return ne===void 0&&(ne=new wl,N[ee]=ne),ne.getTargetRaySpace()},this.getControllerGrip=function(ee){let ne=N[ee];return ne===void 0&&(ne=new wl,N[ee]=ne),ne.getGripSpace()},this.getHand=function(ee){let ne=N[ee];return ne===void 0&&(ne=new wl,N[ee]=ne),ne.getHandSpace()};function H(ee){const ne=R.indexOf(ee.inputSource);if(ne===-1)return;const be=N[ne];be!==void 0&&(be.update(ee.inputSource,ee.frame,c||a),be.dispatchEvent({type:ee.type,data:ee.inputSource}))}function Y(){s.removeEventListener("select",H),s.removeEventListener("selectstart",H),s.removeEventListener("selectend",H),s.removeEventListener("squeeze",H),s.removeEventListener("squeezestart",H),s.removeEventListener("squeezeend",H),s.removeEventListener("end",Y),s.removeEventListener("inputsourceschange",j);for(let ee=0;ee<N.length;ee++){const ne=R[ee];ne!==null&&(R[ee]=null,N[ee].disconnect(ne))}k=null,q=null,m.reset();for(const ee in d)delete d[ee];e.setRenderTarget(A),p=null,h=null,u=null,s=null,b=null,Ze.stop(),n.isPresenting=!1,e.setPixelRatio(C),e.setSize(D.width,D.height,!1),n.dispatchEvent({type:"sessionend"})}this.setFramebufferScaleFactor=function(ee){r=ee,n.isPresenting===!0&&console.warn("THREE.WebXRManager: Cannot change framebuffer scale while presenting.")},this.setReferenceSpaceType=function(ee){o=ee,n.isPresenting===!0&&console.warn("THREE.WebXRManager: Cannot change reference space type while presenting.")},this.getReferenceSpace=function(){return c||a},this.setReferenceSpace=function(ee){c=ee},this.getBaseLayer=function(){return h!==null?h:p},this.getBinding=function(){return u===null&&M&&(u=new XRWebGLBinding(s,t)),u},this.getFrame=function(){return v},this.getSession=function(){return s},this.setSession=async function(ee){if(s=ee,s!==null){if(A=e.getRenderTarget(),s.addEventListener("select",H),s.addEventListener("selectstart",H),s.addEventListener("selectend",H),s.addEventListener("squeeze",H),s.addEventListener("squeezestart",H),s.addEventListener("squeezeend",H),s.addEventListener("end",Y),s.addEventListener("inputsourceschange",j),T.xrCompatible!==!0&&await t.makeXRCompatible(),C=e.getPixelRatio(),e.getSize(D),M&&"createProjectionLayer"in XRWebGLBinding.prototype){let be=null,ze=null,xe=null;T.depth&&(xe=T.stencil?t.DEPTH24_STENCIL8:t.DEPTH_COMPONENT24,be=T.stencil?ca:la,ze=T.stencil?oa:Is);const Je={colorFormat:t.RGBA8,depthFormat:xe,scaleFactor:r};u=this.getBinding(),h=u.createProjectionLayer(Je),s.updateRenderState({layers:[h]}),e.setPixelRatio(1),e.setSize(h.textureWidth,h.textureHeight,!1),b=new Fs(h.textureWidth,h.textureHeight,{format:mi,type:Ri,depthTexture:new ep(h.textureWidth,h.textureHeight,ze,void 0,void 0,void 0,void 0,void 0,void 0,be),stencilBuffer:T.stencil,colorSpace:e.outputColorSpace,samples:T.antialias?4:0,resolveDepthBuffer:h.ignoreDepthValues===!1,resolveStencilBuffer:h.ignoreDepthValues===!1})}else{const be={antialias:T.antialias,alpha:!0,depth:T.depth,stencil:T.stencil,framebufferScaleFactor:r};p=new XRWebGLLayer(s,t,be),s.updateRenderState({baseLayer:p}),e.setPixelRatio(1),e.setSize(p.framebufferWidth,p.framebufferHeight,!1),b=new Fs(p.framebufferWidth,p.framebufferHeight,{format:mi,type:Ri,colorSpace:e.outputColorSpace,stencilBuffer:T.stencil,resolveDepthBuffer:p.ignoreDepthValues===!1,resolveStencilBuffer:p.ignoreDepthValues===!1})}b.isXRRenderTarget=!0,this.setFoveation(l),c=null,a=await s.requestReferenceSpace(o),Ze.setContext(s),Ze.start(),n.isPresenting=!0,n.dispatchEvent({type:"sessionstart"})}},this.getEnvironmentBlendMode=function(){if(s!==null)return s.environmentBlendMode},this.getDepthTexture=function(){return m.getDepthTexture()};function j(ee){for(let ne=0;ne<ee.removed.length;ne++){const be=ee.removed[ne],ze=R.indexOf(be);ze>=0&&(R[ze]=null,N[ze].disconnect(be))}for(let ne=0;ne<ee.added.length;ne++){const be=ee.added[ne];let ze=R.indexOf(be);if(ze===-1){for(let Je=0;Je<N.length;Je++)if(Je>=R.length){R.push(be),ze=Je;break}else if(R[Je]===null){R[Je]=be,ze=Je;break}if(ze===-1)break}const xe=N[ze];xe&&xe.connect(be)}}const K=new z,ae=new z;function oe(ee,ne,be){K.setFromMatrixPosition(ne.matrixWorld),ae.setFromMatrixPosition(be.matrixWorld);const ze=K.distanceTo(ae),xe=ne.projectionMatrix.elements,Je=be.projectionMatrix.elements,It=xe[14]/(xe[10]-1),O=xe[14]/(xe[10]+1),dt=(xe[9]+1)/xe[5],$e=(xe[9]-1)/xe[5],Ge=(xe[8]-1)/xe[0],Ie=(Je[8]+1)/Je[0],bt=It*Ge,Ce=It*Ie,Ve=ze/(-Ge+Ie),zt=Ve*-Ge;if(ne.matrixWorld.decompose(ee.position,ee.quaternion,ee.scale),ee.translateX(zt),ee.translateZ(Ve),ee.matrixWorld.compose(ee.position,ee.quaternion,ee.scale),ee.matrixWorldInverse.copy(ee.matrixWorld).invert(),xe[10]===-1)ee.projectionMatrix.copy(ne.projectionMatrix),ee.projectionMatrixInverse.copy(ne.projectionMatrixInverse);else{const xt=It+Ve,L=O+Ve,x=bt-zt,B=Ce+(ze-zt),J=dt*O/L*xt,ie=$e*O/L*xt;ee.projectionMatrix.makePerspective(x,B,J,ie,xt,L),ee.projectionMatrixInverse.copy(ee.projectionMatrix).invert()}}function ve(ee,ne){ne===null?ee.matrixWorld.copy(ee.matrix):ee.matrixWorld.multiplyMatrices(ne.matrixWorld,ee.matrix),ee.matrixWorldInverse.copy(ee.matrixWorld).invert()}this.updateCamera=function(ee){if(s===null)return;let ne=ee.near,be=ee.far;m.texture!==null&&(m.depthNear>0&&(ne=m.depthNear),m.depthFar>0&&(be=m.depthFar)),F.near=_.near=S.near=ne,F.far=_.far=S.far=be,(k!==F.near||q!==F.far)&&(s.updateRenderState({depthNear:F.near,depthFar:F.far}),k=F.near,q=F.far),F.layers.mask=ee.layers.mask|6,S.layers.mask=F.layers.mask&3,_.layers.mask=F.layers.mask&5;const ze=ee.parent,xe=F.cameras;ve(F,ze);for(let Je=0;Je<xe.length;Je++)ve(xe[Je],ze);xe.length===2?oe(F,S,_):F.projectionMatrix.copy(S.projectionMatrix),Se(ee,F,ze)};function Se(ee,ne,be){be===null?ee.matrix.copy(ne.matrixWorld):(ee.matrix.copy(be.matrixWorld),ee.matrix.invert(),ee.matrix.multiply(ne.matrixWorld)),ee.matrix.decompose(ee.position,ee.quaternion,ee.scale),ee.updateMatrixWorld(!0),ee.projectionMatrix.copy(ne.projectionMatrix),ee.projectionMatrixInverse.copy(ne.projectionMatrixInverse),ee.isPerspectiveCamera&&(ee.fov=Bc*2*Math.atan(1/ee.projectionMatrix.elements[5]),ee.zoom=1)}this.getCamera=function(){return F},this.getFoveation=function(){if(!(h===null&&p===null))return l},this.setFoveation=function(ee){l=ee,h!==null&&(h.fixedFoveation=ee),p!==null&&p.fixedFoveation!==void 0&&(p.fixedFoveation=ee)},this.hasDepthSensing=function(){return m.texture!==null},this.getDepthSensingMesh=function(){return m.getMesh(F)},this.getCameraTexture=function(ee){return d[ee]};let _e=null;function nt(ee,ne){if(f=ne.getViewerPose(c||a),v=ne,f!==null){const be=f.views;p!==null&&(e.setRenderTargetFramebuffer(b,p.framebuffer),e.setRenderTarget(b));let ze=!1;be.length!==F.cameras.length&&(F.cameras.length=0,ze=!0);for(let O=0;O<be.length;O++){const dt=be[O];let $e=null;if(p!==null)$e=p.getViewport(dt);else{const Ie=u.getViewSubImage(h,dt);$e=Ie.viewport,O===0&&(e.setRenderTargetTextures(b,Ie.colorTexture,Ie.depthStencilTexture),e.setRenderTarget(b))}let Ge=y[O];Ge===void 0&&(Ge=new si,Ge.layers.enable(O),Ge.viewport=new $t,y[O]=Ge),Ge.matrix.fromArray(dt.transform.matrix),Ge.matrix.decompose(Ge.position,Ge.quaternion,Ge.scale),Ge.projectionMatrix.fromArray(dt.projectionMatrix),Ge.projectionMatrixInverse.copy(Ge.projectionMatrix).invert(),Ge.viewport.set($e.x,$e.y,$e.width,$e.height),O===0&&(F.matrix.copy(Ge.matrix),F.matrix.decompose(F.position,F.quaternion,F.scale)),ze===!0&&F.cameras.push(Ge)}const xe=s.enabledFeatures;if(xe&&xe.includes("depth-sensing")&&s.depthUsage=="gpu-optimized"&&M){u=n.getBinding();const O=u.getDepthInformation(be[0]);O&&O.isValid&&O.texture&&m.init(O,s.renderState)}if(xe&&xe.includes("camera-access")&&M){e.state.unbindTexture(),u=n.getBinding();for(let O=0;O<be.length;O++){const dt=be[O].camera;if(dt){let $e=d[dt];$e||($e=new tp,d[dt]=$e);const Ge=u.getCameraImage(dt);$e.sourceTexture=Ge}}}}for(let be=0;be<N.length;be++){const ze=R[be],xe=N[be];ze!==null&&xe!==void 0&&xe.update(ze,ne,c||a)}_e&&_e(ee,ne),ne.detectedPlanes&&n.dispatchEvent({type:"planesdetected",data:ne}),v=null}const Ze=new rp;Ze.setAnimationLoop(nt),this.setAnimationLoop=function(ee){_e=ee},this.dispose=function(){}}}const ys=new Ci,VS=new Xt;function GS(i,e){function t(m,d){m.matrixAutoUpdate===!0&&m.updateMatrix(),d.value.copy(m.matrix)}function n(m,d){d.color.getRGB(m.fogColor.value,Kd(i)),d.isFog?(m.fogNear.value=d.near,m.fogFar.value=d.far):d.isFogExp2&&(m.fogDensity.value=d.density)}function s(m,d,T,A,b){d.isMeshBasicMaterial||d.isMeshLambertMaterial?r(m,d):d.isMeshToonMaterial?(r(m,d),u(m,d)):d.isMeshPhongMaterial?(r(m,d),f(m,d)):d.isMeshStandardMaterial?(r(m,d),h(m,d),d.isMeshPhysicalMaterial&&p(m,d,b)):d.isMeshMatcapMaterial?(r(m,d),v(m,d)):d.isMeshDepthMaterial?r(m,d):d.isMeshDistanceMaterial?(r(m,d),M(m,d)):d.isMeshNormalMaterial?r(m,d):d.isLineBasicMaterial?(a(m,d),d.isLineDashedMaterial&&o(m,d)):d.isPointsMaterial?l(m,d,T,A):d.isSpriteMaterial?c(m,d):d.isShadowMaterial?(m.color.value.copy(d.color),m.opacity.value=d.opacity):d.isShaderMaterial&&(d.uniformsNeedUpdate=!1)}function r(m,d){m.opacity.value=d.opacity,d.color&&m.diffuse.value.copy(d.color),d.emissive&&m.emissive.value.copy(d.emissive).multiplyScalar(d.emissiveIntensity),d.map&&(m.map.value=d.map,t(d.map,m.mapTransform)),d.alphaMap&&(m.alphaMap.value=d.alphaMap,t(d.alphaMap,m.alphaMapTransform)),d.bumpMap&&(m.bumpMap.value=d.bumpMap,t(d.bumpMap,m.bumpMapTransform),m.bumpScale.value=d.bumpScale,d.side===On&&(m.bumpScale.value*=-1)),d.normalMap&&(m.normalMap.value=d.normalMap,t(d.normalMap,m.normalMapTransform),m.normalScale.value.copy(d.normalScale),d.side===On&&m.normalScale.value.negate()),d.displacementMap&&(m.displacementMap.value=d.displacementMap,t(d.displacementMap,m.displacementMapTransform),m.displacementScale.value=d.displacementScale,m.displacementBias.value=d.displacementBias),d.emissiveMap&&(m.emissiveMap.value=d.emissiveMap,t(d.emissiveMap,m.emissiveMapTransform)),d.specularMap&&(m.specularMap.value=d.specularMap,t(d.specularMap,m.specularMapTransform)),d.alphaTest>0&&(m.alphaTest.value=d.alphaTest);const T=e.get(d),A=T.envMap,b=T.envMapRotation;A&&(m.envMap.value=A,ys.copy(b),ys.x*=-1,ys.y*=-1,ys.z*=-1,A.isCubeTexture&&A.isRenderTargetTexture===!1&&(ys.y*=-1,ys.z*=-1),m.envMapRotation.value.setFromMatrix4(VS.makeRotationFromEuler(ys)),m.flipEnvMap.value=A.isCubeTexture&&A.isRenderTargetTexture===!1?-1:1,m.reflectivity.value=d.reflectivity,m.ior.value=d.ior,m.refractionRatio.value=d.refractionRatio),d.lightMap&&(m.lightMap.value=d.lightMap,m.lightMapIntensity.value=d.lightMapIntensity,t(d.lightMap,m.lightMapTransform)),d.aoMap&&(m.aoMap.value=d.aoMap,m.aoMapIntensity.value=d.aoMapIntensity,t(d.aoMap,m.aoMapTransform))}function a(m,d){m.diffuse.value.copy(d.color),m.opacity.value=d.opacity,d.map&&(m.map.value=d.map,t(d.map,m.mapTransform))}function o(m,d){m.dashSize.value=d.dashSize,m.totalSize.value=d.dashSize+d.gapSize,m.scale.value=d.scale}function l(m,d,T,A){m.diffuse.value.copy(d.color),m.opacity.value=d.opacity,m.size.value=d.size*T,m.scale.value=A*.5,d.map&&(m.map.value=d.map,t(d.map,m.uvTransform)),d.alphaMap&&(m.alphaMap.value=d.alphaMap,t(d.alphaMap,m.alphaMapTransform)),d.alphaTest>0&&(m.alphaTest.value=d.alphaTest)}function c(m,d){m.diffuse.value.copy(d.color),m.opacity.value=d.opacity,m.rotation.value=d.rotation,d.map&&(m.map.value=d.map,t(d.map,m.mapTransform)),d.alphaMap&&(m.alphaMap.value=d.alphaMap,t(d.alphaMap,m.alphaMapTransform)),d.alphaTest>0&&(m.alphaTest.value=d.alphaTest)}function f(m,d){m.specular.value.copy(d.specular),m.shininess.value=Math.max(d.shininess,1e-4)}function u(m,d){d.gradientMap&&(m.gradientMap.value=d.gradientMap)}function h(m,d){m.metalness.value=d.metalness,d.metalnessMap&&(m.metalnessMap.value=d.metalnessMap,t(d.metalnessMap,m.metalnessMapTransform)),m.roughness.value=d.roughness,d.roughnessMap&&(m.roughnessMap.value=d.roughnessMap,t(d.roughnessMap,m.roughnessMapTransform)),d.envMap&&(m.envMapIntensity.value=d.envMapIntensity)}function p(m,d,T){m.ior.value=d.ior,d.sheen>0&&(m.sheenColor.value.copy(d.sheenColor).multiplyScalar(d.sheen),m.sheenRoughness.value=d.sheenRoughness,d.sheenColorMap&&(m.sheenColorMap.value=d.sheenColorMap,t(d.sheenColorMap,m.sheenColorMapTransform)),d.sheenRoughnessMap&&(m.sheenRoughnessMap.value=d.sheenRoughnessMap,t(d.sheenRoughnessMap,m.sheenRoughnessMapTransform))),d.clearcoat>0&&(m.clearcoat.value=d.clearcoat,m.clearcoatRoughness.value=d.clearcoatRoughness,d.clearcoatMap&&(m.clearcoatMap.value=d.clearcoatMap,t(d.clearcoatMap,m.clearcoatMapTransform)),d.clearcoatRoughnessMap&&(m.clearcoatRoughnessMap.value=d.clearcoatRoughnessMap,t(d.clearcoatRoughnessMap,m.clearcoatRoughnessMapTransform)),d.clearcoatNormalMap&&(m.clearcoatNormalMap.value=d.clearcoatNormalMap,t(d.clearcoatNormalMap,m.clearcoatNormalMapTransform),m.clearcoatNormalScale.value.copy(d.clearcoatNormalScale),d.side===On&&m.clearcoatNormalScale.value.negate())),d.dispersion>0&&(m.dispersion.value=d.dispersion),d.iridescence>0&&(m.iridescence.value=d.iridescence,m.iridescenceIOR.value=d.iridescenceIOR,m.iridescenceThicknessMinimum.value=d.iridescenceThicknessRange[0],m.iridescenceThicknessMaximum.value=d.iridescenceThicknessRange[1],d.iridescenceMap&&(m.iridescenceMap.value=d.iridescenceMap,t(d.iridescenceMap,m.iridescenceMapTransform)),d.iridescenceThicknessMap&&(m.iridescenceThicknessMap.value=d.iridescenceThicknessMap,t(d.iridescenceThicknessMap,m.iridescenceThicknessMapTransform))),d.transmission>0&&(m.transmission.value=d.transmission,m.transmissionSamplerMap.value=T.texture,m.transmissionSamplerSize.value.set(T.width,T.height),d.transmissionMap&&(m.transmissionMap.value=d.transmissionMap,t(d.transmissionMap,m.transmissionMapTransform)),m.thickness.value=d.thickness,d.thicknessMap&&(m.thicknessMap.value=d.thicknessMap,t(d.thicknessMap,m.thicknessMapTransform)),m.attenuationDistance.value=d.attenuationDistance,m.attenuationColor.value.copy(d.attenuationColor)),d.anisotropy>0&&(m.anisotropyVector.value.set(d.anisotropy*Math.cos(d.anisotropyRotation),d.anisotropy*Math.sin(d.anisotropyRotation)),d.anisotropyMap&&(m.anisotropyMap.value=d.anisotropyMap,t(d.anisotropyMap,m.anisotropyMapTransform))),m.specularIntensity.value=d.specularIntensity,m.specularColor.value.copy(d.specularColor),d.specularColorMap&&(m.specularColorMap.value=d.specularColorMap,t(d.specularColorMap,m.specularColorMapTransform)),d.specularIntensityMap&&(m.specularIntensityMap.value=d.specularIntensityMap,t(d.specularIntensityMap,m.specularIntensityMapTransform))}function v(m,d){d.matcap&&(m.matcap.value=d.matcap)}function M(m,d){const T=e.get(d).light;m.referencePosition.value.setFromMatrixPosition(T.matrixWorld),m.nearDistance.value=T.shadow.camera.near,m.farDistance.value=T.shadow.camera.far}return{refreshFogUniforms:n,refreshMaterialUniforms:s}}function WS(i,e,t,n){let s={},r={},a=[];const o=i.getParameter(i.MAX_UNIFORM_BUFFER_BINDINGS);function l(T,A){const b=A.program;n.uniformBlockBinding(T,b)}function c(T,A){let b=s[T.id];b===void 0&&(v(T),b=f(T),s[T.id]=b,T.addEventListener("dispose",m));const N=A.program;n.updateUBOMapping(T,N);const R=e.render.frame;r[T.id]!==R&&(h(T),r[T.id]=R)}function f(T){const A=u();T.__bindingPointIndex=A;const b=i.createBuffer(),N=T.__size,R=T.usage;return i.bindBuffer(i.UNIFORM_BUFFER,b),i.bufferData(i.UNIFORM_BUFFER,N,R),i.bindBuffer(i.UNIFORM_BUFFER,null),i.bindBufferBase(i.UNIFORM_BUFFER,A,b),b}function u(){for(let T=0;T<o;T++)if(a.indexOf(T)===-1)return a.push(T),T;return console.error("THREE.WebGLRenderer: Maximum number of simultaneously usable uniforms groups reached."),0}function h(T){const A=s[T.id],b=T.uniforms,N=T.__cache;i.bindBuffer(i.UNIFORM_BUFFER,A);for(let R=0,D=b.length;R<D;R++){const C=Array.isArray(b[R])?b[R]:[b[R]];for(let S=0,_=C.length;S<_;S++){const y=C[S];if(p(y,R,S,N)===!0){const F=y.__offset,k=Array.isArray(y.value)?y.value:[y.value];let q=0;for(let H=0;H<k.length;H++){const Y=k[H],j=M(Y);typeof Y=="number"||typeof Y=="boolean"?(y.__data[0]=Y,i.bufferSubData(i.UNIFORM_BUFFER,F+q,y.__data)):Y.isMatrix3?(y.__data[0]=Y.elements[0],y.__data[1]=Y.elements[1],y.__data[2]=Y.elements[2],y.__data[3]=0,y.__data[4]=Y.elements[3],y.__data[5]=Y.elements[4],y.__data[6]=Y.elements[5],y.__data[7]=0,y.__data[8]=Y.elements[6],y.__data[9]=Y.elements[7],y.__data[10]=Y.elements[8],y.__data[11]=0):(Y.toArray(y.__data,q),q+=j.storage/Float32Array.BYTES_PER_ELEMENT)}i.bufferSubData(i.UNIFORM_BUFFER,F,y.__data)}}}i.bindBuffer(i.UNIFORM_BUFFER,null)}function p(T,A,b,N){const R=T.value,D=A+"_"+b;if(N[D]===void 0)return typeof R=="number"||typeof R=="boolean"?N[D]=R:N[D]=R.clone(),!0;{const C=N[D];if(typeof R=="number"||typeof R=="boolean"){if(C!==R)return N[D]=R,!0}else if(C.equals(R)===!1)return C.copy(R),!0}return!1}function v(T){const A=T.uniforms;let b=0;const N=16;for(let D=0,C=A.length;D<C;D++){const S=Array.isArray(A[D])?A[D]:[A[D]];for(let _=0,y=S.length;_<y;_++){const F=S[_],k=Array.isArray(F.value)?F.value:[F.value];for(let q=0,H=k.length;q<H;q++){const Y=k[q],j=M(Y),K=b%N,ae=K%j.boundary,oe=K+ae;b+=ae,oe!==0&&N-oe<j.storage&&(b+=N-oe),F.__data=new Float32Array(j.storage/Float32Array.BYTES_PER_ELEMENT),F.__offset=b,b+=j.storage}}}const R=b%N;return R>0&&(b+=N-R),T.__size=b,T.__cache={},this}function M(T){const A={boundary:0,storage:0};return typeof T=="number"||typeof T=="boolean"?(A.boundary=4,A.storage=4):T.isVector2?(A.boundary=8,A.storage=8):T.isVector3||T.isColor?(A.boundary=16,A.storage=12):T.isVector4?(A.boundary=16,A.storage=16):T.isMatrix3?(A.boundary=48,A.storage=48):T.isMatrix4?(A.boundary=64,A.storage=64):T.isTexture?console.warn("THREE.WebGLRenderer: Texture samplers can not be part of an uniforms group."):console.warn("THREE.WebGLRenderer: Unsupported uniform value type.",T),A}function m(T){const A=T.target;A.removeEventListener("dispose",m);const b=a.indexOf(A.__bindingPointIndex);a.splice(b,1),i.deleteBuffer(s[A.id]),delete s[A.id],delete r[A.id]}function d(){for(const T in s)i.deleteBuffer(s[T]);a=[],s={},r={}}return{bind:l,update:c,dispose:d}}class XS{constructor(e={}){const{canvas:t=y_(),context:n=null,depth:s=!0,stencil:r=!1,alpha:a=!1,antialias:o=!1,premultipliedAlpha:l=!0,preserveDrawingBuffer:c=!1,powerPreference:f="default",failIfMajorPerformanceCaveat:u=!1,reversedDepthBuffer:h=!1}=e;this.isWebGLRenderer=!0;let p;if(n!==null){if(typeof WebGLRenderingContext<"u"&&n instanceof WebGLRenderingContext)throw new Error("THREE.WebGLRenderer: WebGL 1 is not supported since r163.");p=n.getContextAttributes().alpha}else p=a;const v=new Uint32Array(4),M=new Int32Array(4);let m=null,d=null;const T=[],A=[];this.domElement=t,this.debug={checkShaderErrors:!0,onShaderError:null},this.autoClear=!0,this.autoClearColor=!0,this.autoClearDepth=!0,this.autoClearStencil=!0,this.sortObjects=!0,this.clippingPlanes=[],this.localClippingEnabled=!1,this.toneMapping=os,this.toneMappingExposure=1,this.transmissionResolutionScale=1;const b=this;let N=!1;this._outputColorSpace=ni;let R=0,D=0,C=null,S=-1,_=null;const y=new $t,F=new $t;let k=null;const q=new ot(0);let H=0,Y=t.width,j=t.height,K=1,ae=null,oe=null;const ve=new $t(0,0,Y,j),Se=new $t(0,0,Y,j);let _e=!1;const nt=new gu;let Ze=!1,ee=!1;const ne=new Xt,be=new z,ze=new $t,xe={background:null,fog:null,environment:null,overrideMaterial:null,isScene:!0};let Je=!1;function It(){return C===null?K:1}let O=n;function dt(w,W){return t.getContext(w,W)}try{const w={alpha:!0,depth:s,stencil:r,antialias:o,premultipliedAlpha:l,preserveDrawingBuffer:c,powerPreference:f,failIfMajorPerformanceCaveat:u};if("setAttribute"in t&&t.setAttribute("data-engine",`three.js r${ru}`),t.addEventListener("webglcontextlost",pe,!1),t.addEventListener("webglcontextrestored",Pe,!1),t.addEventListener("webglcontextcreationerror",ue,!1),O===null){const W="webgl2";if(O=dt(W,w),O===null)throw dt(W)?new Error("Error creating WebGL context with your selected attributes."):new Error("Error creating WebGL context.")}}catch(w){throw console.error("THREE.WebGLRenderer: "+w.message),w}let $e,Ge,Ie,bt,Ce,Ve,zt,xt,L,x,B,J,ie,te,Ne,he,De,Ae,le,ge,Be,Oe,Me,Ke;function V(){$e=new tM(O),$e.init(),Oe=new OS(O,$e),Ge=new $x(O,$e,e,Oe),Ie=new NS(O,$e),Ge.reversedDepthBuffer&&h&&Ie.buffers.depth.setReversed(!0),bt=new sM(O),Ce=new yS,Ve=new FS(O,$e,Ie,Ce,Ge,Oe,bt),zt=new Kx(b),xt=new eM(b),L=new u0(O),Me=new qx(O,L),x=new nM(O,L,bt,Me),B=new aM(O,x,L,bt),le=new rM(O,Ge,Ve),he=new jx(Ce),J=new SS(b,zt,xt,$e,Ge,Me,he),ie=new GS(b,Ce),te=new bS,Ne=new PS($e),Ae=new Xx(b,zt,xt,Ie,B,p,l),De=new US(b,B,Ge),Ke=new WS(O,bt,Ge,Ie),ge=new Yx(O,$e,bt),Be=new iM(O,$e,bt),bt.programs=J.programs,b.capabilities=Ge,b.extensions=$e,b.properties=Ce,b.renderLists=te,b.shadowMap=De,b.state=Ie,b.info=bt}V();const fe=new HS(b,O);this.xr=fe,this.getContext=function(){return O},this.getContextAttributes=function(){return O.getContextAttributes()},this.forceContextLoss=function(){const w=$e.get("WEBGL_lose_context");w&&w.loseContext()},this.forceContextRestore=function(){const w=$e.get("WEBGL_lose_context");w&&w.restoreContext()},this.getPixelRatio=function(){return K},this.setPixelRatio=function(w){w!==void 0&&(K=w,this.setSize(Y,j,!1))},this.getSize=function(w){return w.set(Y,j)},this.setSize=function(w,W,Q=!0){if(fe.isPresenting){console.warn("THREE.WebGLRenderer: Can't change size while VR device is presenting.");return}Y=w,j=W,t.width=Math.floor(w*K),t.height=Math.floor(W*K),Q===!0&&(t.style.width=w+"px",t.style.height=W+"px"),this.setViewport(0,0,w,W)},this.getDrawingBufferSize=function(w){return w.set(Y*K,j*K).floor()},this.setDrawingBufferSize=function(w,W,Q){Y=w,j=W,K=Q,t.width=Math.floor(w*Q),t.height=Math.floor(W*Q),this.setViewport(0,0,w,W)},this.getCurrentViewport=function(w){return w.copy(y)},this.getViewport=function(w){return w.copy(ve)},this.setViewport=function(w,W,Q,Z){w.isVector4?ve.set(w.x,w.y,w.z,w.w):ve.set(w,W,Q,Z),Ie.viewport(y.copy(ve).multiplyScalar(K).round())},this.getScissor=function(w){return w.copy(Se)},this.setScissor=function(w,W,Q,Z){w.isVector4?Se.set(w.x,w.y,w.z,w.w):Se.set(w,W,Q,Z),Ie.scissor(F.copy(Se).multiplyScalar(K).round())},this.getScissorTest=function(){return _e},this.setScissorTest=function(w){Ie.setScissorTest(_e=w)},this.setOpaqueSort=function(w){ae=w},this.setTransparentSort=function(w){oe=w},this.getClearColor=function(w){return w.copy(Ae.getClearColor())},this.setClearColor=function(){Ae.setClearColor(...arguments)},this.getClearAlpha=function(){return Ae.getClearAlpha()},this.setClearAlpha=function(){Ae.setClearAlpha(...arguments)},this.clear=function(w=!0,W=!0,Q=!0){let Z=0;if(w){let X=!1;if(C!==null){const de=C.texture.format;X=de===fu||de===hu||de===uu}if(X){const de=C.texture.type,ye=de===Ri||de===Is||de===aa||de===oa||de===lu||de===cu,Le=Ae.getClearColor(),Te=Ae.getClearAlpha(),Xe=Le.r,Ye=Le.g,ke=Le.b;ye?(v[0]=Xe,v[1]=Ye,v[2]=ke,v[3]=Te,O.clearBufferuiv(O.COLOR,0,v)):(M[0]=Xe,M[1]=Ye,M[2]=ke,M[3]=Te,O.clearBufferiv(O.COLOR,0,M))}else Z|=O.COLOR_BUFFER_BIT}W&&(Z|=O.DEPTH_BUFFER_BIT),Q&&(Z|=O.STENCIL_BUFFER_BIT,this.state.buffers.stencil.setMask(4294967295)),O.clear(Z)},this.clearColor=function(){this.clear(!0,!1,!1)},this.clearDepth=function(){this.clear(!1,!0,!1)},this.clearStencil=function(){this.clear(!1,!1,!0)},this.dispose=function(){t.removeEventListener("webglcontextlost",pe,!1),t.removeEventListener("webglcontextrestored",Pe,!1),t.removeEventListener("webglcontextcreationerror",ue,!1),Ae.dispose(),te.dispose(),Ne.dispose(),Ce.dispose(),zt.dispose(),xt.dispose(),B.dispose(),Me.dispose(),Ke.dispose(),J.dispose(),fe.dispose(),fe.removeEventListener("sessionstart",Pt),fe.removeEventListener("sessionend",kn),Un.stop()};function pe(w){w.preventDefault(),console.log("THREE.WebGLRenderer: Context Lost."),N=!0}function Pe(){console.log("THREE.WebGLRenderer: Context Restored."),N=!1;const w=bt.autoReset,W=De.enabled,Q=De.autoUpdate,Z=De.needsUpdate,X=De.type;V(),bt.autoReset=w,De.enabled=W,De.autoUpdate=Q,De.needsUpdate=Z,De.type=X}function ue(w){console.error("THREE.WebGLRenderer: A WebGL context could not be created. Reason: ",w.statusMessage)}function re(w){const W=w.target;W.removeEventListener("dispose",re),Fe(W)}function Fe(w){Qe(w),Ce.remove(w)}function Qe(w){const W=Ce.get(w).programs;W!==void 0&&(W.forEach(function(Q){J.releaseProgram(Q)}),w.isShaderMaterial&&J.releaseShaderCache(w))}this.renderBufferDirect=function(w,W,Q,Z,X,de){W===null&&(W=xe);const ye=X.isMesh&&X.matrixWorld.determinant()<0,Le=Di(w,W,Q,Z,X);Ie.setMaterial(Z,ye);let Te=Q.index,Xe=1;if(Z.wireframe===!0){if(Te=x.getWireframeAttribute(Q),Te===void 0)return;Xe=2}const Ye=Q.drawRange,ke=Q.attributes.position;let rt=Ye.start*Xe,mt=(Ye.start+Ye.count)*Xe;de!==null&&(rt=Math.max(rt,de.start*Xe),mt=Math.min(mt,(de.start+de.count)*Xe)),Te!==null?(rt=Math.max(rt,0),mt=Math.min(mt,Te.count)):ke!=null&&(rt=Math.max(rt,0),mt=Math.min(mt,ke.count));const Nt=mt-rt;if(Nt<0||Nt===1/0)return;Me.setup(X,Z,Le,Q,Te);let Tt,it=ge;if(Te!==null&&(Tt=L.get(Te),it=Be,it.setIndex(Tt)),X.isMesh)Z.wireframe===!0?(Ie.setLineWidth(Z.wireframeLinewidth*It()),it.setMode(O.LINES)):it.setMode(O.TRIANGLES);else if(X.isLine){let We=Z.linewidth;We===void 0&&(We=1),Ie.setLineWidth(We*It()),X.isLineSegments?it.setMode(O.LINES):X.isLineLoop?it.setMode(O.LINE_LOOP):it.setMode(O.LINE_STRIP)}else X.isPoints?it.setMode(O.POINTS):X.isSprite&&it.setMode(O.TRIANGLES);if(X.isBatchedMesh)if(X._multiDrawInstances!==null)ua("THREE.WebGLRenderer: renderMultiDrawInstances has been deprecated and will be removed in r184. Append to renderMultiDraw arguments and use indirection."),it.renderMultiDrawInstances(X._multiDrawStarts,X._multiDrawCounts,X._multiDrawCount,X._multiDrawInstances);else if($e.get("WEBGL_multi_draw"))it.renderMultiDraw(X._multiDrawStarts,X._multiDrawCounts,X._multiDrawCount);else{const We=X._multiDrawStarts,Ft=X._multiDrawCounts,ut=X._multiDrawCount,xn=Te?L.get(Te).bytesPerElement:1,Wi=Ce.get(Z).currentProgram.getUniforms();for(let Tn=0;Tn<ut;Tn++)Wi.setValue(O,"_gl_DrawID",Tn),it.render(We[Tn]/xn,Ft[Tn])}else if(X.isInstancedMesh)it.renderInstances(rt,Nt,X.count);else if(Q.isInstancedBufferGeometry){const We=Q._maxInstanceCount!==void 0?Q._maxInstanceCount:1/0,Ft=Math.min(Q.instanceCount,We);it.renderInstances(rt,Nt,Ft)}else it.render(rt,Nt)};function wt(w,W,Q){w.transparent===!0&&w.side===zi&&w.forceSinglePass===!1?(w.side=On,w.needsUpdate=!0,hs(w,W,Q),w.side=cs,w.needsUpdate=!0,hs(w,W,Q),w.side=zi):hs(w,W,Q)}this.compile=function(w,W,Q=null){Q===null&&(Q=w),d=Ne.get(Q),d.init(W),A.push(d),Q.traverseVisible(function(X){X.isLight&&X.layers.test(W.layers)&&(d.pushLight(X),X.castShadow&&d.pushShadow(X))}),w!==Q&&w.traverseVisible(function(X){X.isLight&&X.layers.test(W.layers)&&(d.pushLight(X),X.castShadow&&d.pushShadow(X))}),d.setupLights();const Z=new Set;return w.traverse(function(X){if(!(X.isMesh||X.isPoints||X.isLine||X.isSprite))return;const de=X.material;if(de)if(Array.isArray(de))for(let ye=0;ye<de.length;ye++){const Le=de[ye];wt(Le,Q,X),Z.add(Le)}else wt(de,Q,X),Z.add(de)}),d=A.pop(),Z},this.compileAsync=function(w,W,Q=null){const Z=this.compile(w,W,Q);return new Promise(X=>{function de(){if(Z.forEach(function(ye){Ce.get(ye).currentProgram.isReady()&&Z.delete(ye)}),Z.size===0){X(w);return}setTimeout(de,10)}$e.get("KHR_parallel_shader_compile")!==null?de():setTimeout(de,10)})};let pt=null;function mn(w){pt&&pt(w)}function Pt(){Un.stop()}function kn(){Un.start()}const Un=new rp;Un.setAnimationLoop(mn),typeof self<"u"&&Un.setContext(self),this.setAnimationLoop=function(w){pt=w,fe.setAnimationLoop(w),w===null?Un.stop():Un.start()},fe.addEventListener("sessionstart",Pt),fe.addEventListener("sessionend",kn),this.render=function(w,W){if(W!==void 0&&W.isCamera!==!0){console.error("THREE.WebGLRenderer.render: camera is not an instance of THREE.Camera.");return}if(N===!0)return;if(w.matrixWorldAutoUpdate===!0&&w.updateMatrixWorld(),W.parent===null&&W.matrixWorldAutoUpdate===!0&&W.updateMatrixWorld(),fe.enabled===!0&&fe.isPresenting===!0&&(fe.cameraAutoUpdate===!0&&fe.updateCamera(W),W=fe.getCamera()),w.isScene===!0&&w.onBeforeRender(b,w,W,C),d=Ne.get(w,A.length),d.init(W),A.push(d),ne.multiplyMatrices(W.projectionMatrix,W.matrixWorldInverse),nt.setFromProjectionMatrix(ne,wi,W.reversedDepth),ee=this.localClippingEnabled,Ze=he.init(this.clippingPlanes,ee),m=te.get(w,T.length),m.init(),T.push(m),fe.enabled===!0&&fe.isPresenting===!0){const de=b.xr.getDepthSensingMesh();de!==null&&_i(de,W,-1/0,b.sortObjects)}_i(w,W,0,b.sortObjects),m.finish(),b.sortObjects===!0&&m.sort(ae,oe),Je=fe.enabled===!1||fe.isPresenting===!1||fe.hasDepthSensing()===!1,Je&&Ae.addToRenderList(m,w),this.info.render.frame++,Ze===!0&&he.beginShadows();const Q=d.state.shadowsArray;De.render(Q,w,W),Ze===!0&&he.endShadows(),this.info.autoReset===!0&&this.info.reset();const Z=m.opaque,X=m.transmissive;if(d.setupLights(),W.isArrayCamera){const de=W.cameras;if(X.length>0)for(let ye=0,Le=de.length;ye<Le;ye++){const Te=de[ye];Pi(Z,X,w,Te)}Je&&Ae.render(w);for(let ye=0,Le=de.length;ye<Le;ye++){const Te=de[ye];bn(m,w,Te,Te.viewport)}}else X.length>0&&Pi(Z,X,w,W),Je&&Ae.render(w),bn(m,w,W);C!==null&&D===0&&(Ve.updateMultisampleRenderTarget(C),Ve.updateRenderTargetMipmap(C)),w.isScene===!0&&w.onAfterRender(b,w,W),Me.resetDefaultState(),S=-1,_=null,A.pop(),A.length>0?(d=A[A.length-1],Ze===!0&&he.setGlobalState(b.clippingPlanes,d.state.camera)):d=null,T.pop(),T.length>0?m=T[T.length-1]:m=null};function _i(w,W,Q,Z){if(w.visible===!1)return;if(w.layers.test(W.layers)){if(w.isGroup)Q=w.renderOrder;else if(w.isLOD)w.autoUpdate===!0&&w.update(W);else if(w.isLight)d.pushLight(w),w.castShadow&&d.pushShadow(w);else if(w.isSprite){if(!w.frustumCulled||nt.intersectsSprite(w)){Z&&ze.setFromMatrixPosition(w.matrixWorld).applyMatrix4(ne);const ye=B.update(w),Le=w.material;Le.visible&&m.push(w,ye,Le,Q,ze.z,null)}}else if((w.isMesh||w.isLine||w.isPoints)&&(!w.frustumCulled||nt.intersectsObject(w))){const ye=B.update(w),Le=w.material;if(Z&&(w.boundingSphere!==void 0?(w.boundingSphere===null&&w.computeBoundingSphere(),ze.copy(w.boundingSphere.center)):(ye.boundingSphere===null&&ye.computeBoundingSphere(),ze.copy(ye.boundingSphere.center)),ze.applyMatrix4(w.matrixWorld).applyMatrix4(ne)),Array.isArray(Le)){const Te=ye.groups;for(let Xe=0,Ye=Te.length;Xe<Ye;Xe++){const ke=Te[Xe],rt=Le[ke.materialIndex];rt&&rt.visible&&m.push(w,ye,rt,Q,ze.z,ke)}}else Le.visible&&m.push(w,ye,Le,Q,ze.z,null)}}const de=w.children;for(let ye=0,Le=de.length;ye<Le;ye++)_i(de[ye],W,Q,Z)}function bn(w,W,Q,Z){const X=w.opaque,de=w.transmissive,ye=w.transparent;d.setupLightsView(Q),Ze===!0&&he.setGlobalState(b.clippingPlanes,Q),Z&&Ie.viewport(y.copy(Z)),X.length>0&&ri(X,W,Q),de.length>0&&ri(de,W,Q),ye.length>0&&ri(ye,W,Q),Ie.buffers.depth.setTest(!0),Ie.buffers.depth.setMask(!0),Ie.buffers.color.setMask(!0),Ie.setPolygonOffset(!1)}function Pi(w,W,Q,Z){if((Q.isScene===!0?Q.overrideMaterial:null)!==null)return;d.state.transmissionRenderTarget[Z.id]===void 0&&(d.state.transmissionRenderTarget[Z.id]=new Fs(1,1,{generateMipmaps:!0,type:$e.has("EXT_color_buffer_half_float")||$e.has("EXT_color_buffer_float")?pa:Ri,minFilter:Ds,samples:4,stencilBuffer:r,resolveDepthBuffer:!1,resolveStencilBuffer:!1,colorSpace:_t.workingColorSpace}));const de=d.state.transmissionRenderTarget[Z.id],ye=Z.viewport||y;de.setSize(ye.z*b.transmissionResolutionScale,ye.w*b.transmissionResolutionScale);const Le=b.getRenderTarget(),Te=b.getActiveCubeFace(),Xe=b.getActiveMipmapLevel();b.setRenderTarget(de),b.getClearColor(q),H=b.getClearAlpha(),H<1&&b.setClearColor(16777215,.5),b.clear(),Je&&Ae.render(Q);const Ye=b.toneMapping;b.toneMapping=os;const ke=Z.viewport;if(Z.viewport!==void 0&&(Z.viewport=void 0),d.setupLightsView(Z),Ze===!0&&he.setGlobalState(b.clippingPlanes,Z),ri(w,Q,Z),Ve.updateMultisampleRenderTarget(de),Ve.updateRenderTargetMipmap(de),$e.has("WEBGL_multisampled_render_to_texture")===!1){let rt=!1;for(let mt=0,Nt=W.length;mt<Nt;mt++){const Tt=W[mt],it=Tt.object,We=Tt.geometry,Ft=Tt.material,ut=Tt.group;if(Ft.side===zi&&it.layers.test(Z.layers)){const xn=Ft.side;Ft.side=On,Ft.needsUpdate=!0,Lr(it,Q,Z,We,Ft,ut),Ft.side=xn,Ft.needsUpdate=!0,rt=!0}}rt===!0&&(Ve.updateMultisampleRenderTarget(de),Ve.updateRenderTargetMipmap(de))}b.setRenderTarget(Le,Te,Xe),b.setClearColor(q,H),ke!==void 0&&(Z.viewport=ke),b.toneMapping=Ye}function ri(w,W,Q){const Z=W.isScene===!0?W.overrideMaterial:null;for(let X=0,de=w.length;X<de;X++){const ye=w[X],Le=ye.object,Te=ye.geometry,Xe=ye.group;let Ye=ye.material;Ye.allowOverride===!0&&Z!==null&&(Ye=Z),Le.layers.test(Q.layers)&&Lr(Le,W,Q,Te,Ye,Xe)}}function Lr(w,W,Q,Z,X,de){w.onBeforeRender(b,W,Q,Z,X,de),w.modelViewMatrix.multiplyMatrices(Q.matrixWorldInverse,w.matrixWorld),w.normalMatrix.getNormalMatrix(w.modelViewMatrix),X.onBeforeRender(b,W,Q,Z,w,de),X.transparent===!0&&X.side===zi&&X.forceSinglePass===!1?(X.side=On,X.needsUpdate=!0,b.renderBufferDirect(Q,W,Z,X,w,de),X.side=cs,X.needsUpdate=!0,b.renderBufferDirect(Q,W,Z,X,w,de),X.side=zi):b.renderBufferDirect(Q,W,Z,X,w,de),w.onAfterRender(b,W,Q,Z,X,de)}function hs(w,W,Q){W.isScene!==!0&&(W=xe);const Z=Ce.get(w),X=d.state.lights,de=d.state.shadowsArray,ye=X.state.version,Le=J.getParameters(w,X.state,de,W,Q),Te=J.getProgramCacheKey(Le);let Xe=Z.programs;Z.environment=w.isMeshStandardMaterial?W.environment:null,Z.fog=W.fog,Z.envMap=(w.isMeshStandardMaterial?xt:zt).get(w.envMap||Z.environment),Z.envMapRotation=Z.environment!==null&&w.envMap===null?W.environmentRotation:w.envMapRotation,Xe===void 0&&(w.addEventListener("dispose",re),Xe=new Map,Z.programs=Xe);let Ye=Xe.get(Te);if(Ye!==void 0){if(Z.currentProgram===Ye&&Z.lightsStateVersion===ye)return ya(w,Le),Ye}else Le.uniforms=J.getUniforms(w),w.onBeforeCompile(Le,b),Ye=J.acquireProgram(Le,Te),Xe.set(Te,Ye),Z.uniforms=Le.uniforms;const ke=Z.uniforms;return(!w.isShaderMaterial&&!w.isRawShaderMaterial||w.clipping===!0)&&(ke.clippingPlanes=he.uniform),ya(w,Le),Z.needsLights=fs(w),Z.lightsStateVersion=ye,Z.needsLights&&(ke.ambientLightColor.value=X.state.ambient,ke.lightProbe.value=X.state.probe,ke.directionalLights.value=X.state.directional,ke.directionalLightShadows.value=X.state.directionalShadow,ke.spotLights.value=X.state.spot,ke.spotLightShadows.value=X.state.spotShadow,ke.rectAreaLights.value=X.state.rectArea,ke.ltc_1.value=X.state.rectAreaLTC1,ke.ltc_2.value=X.state.rectAreaLTC2,ke.pointLights.value=X.state.point,ke.pointLightShadows.value=X.state.pointShadow,ke.hemisphereLights.value=X.state.hemi,ke.directionalShadowMap.value=X.state.directionalShadowMap,ke.directionalShadowMatrix.value=X.state.directionalShadowMatrix,ke.spotShadowMap.value=X.state.spotShadowMap,ke.spotLightMatrix.value=X.state.spotLightMatrix,ke.spotLightMap.value=X.state.spotLightMap,ke.pointShadowMap.value=X.state.pointShadowMap,ke.pointShadowMatrix.value=X.state.pointShadowMatrix),Z.currentProgram=Ye,Z.uniformsList=null,Ye}function Sa(w){if(w.uniformsList===null){const W=w.currentProgram.getUniforms();w.uniformsList=ho.seqWithValue(W.seq,w.uniforms)}return w.uniformsList}function ya(w,W){const Q=Ce.get(w);Q.outputColorSpace=W.outputColorSpace,Q.batching=W.batching,Q.batchingColor=W.batchingColor,Q.instancing=W.instancing,Q.instancingColor=W.instancingColor,Q.instancingMorph=W.instancingMorph,Q.skinning=W.skinning,Q.morphTargets=W.morphTargets,Q.morphNormals=W.morphNormals,Q.morphColors=W.morphColors,Q.morphTargetsCount=W.morphTargetsCount,Q.numClippingPlanes=W.numClippingPlanes,Q.numIntersection=W.numClipIntersection,Q.vertexAlphas=W.vertexAlphas,Q.vertexTangents=W.vertexTangents,Q.toneMapping=W.toneMapping}function Di(w,W,Q,Z,X){W.isScene!==!0&&(W=xe),Ve.resetTextureUnits();const de=W.fog,ye=Z.isMeshStandardMaterial?W.environment:null,Le=C===null?b.outputColorSpace:C.isXRRenderTarget===!0?C.texture.colorSpace:br,Te=(Z.isMeshStandardMaterial?xt:zt).get(Z.envMap||ye),Xe=Z.vertexColors===!0&&!!Q.attributes.color&&Q.attributes.color.itemSize===4,Ye=!!Q.attributes.tangent&&(!!Z.normalMap||Z.anisotropy>0),ke=!!Q.morphAttributes.position,rt=!!Q.morphAttributes.normal,mt=!!Q.morphAttributes.color;let Nt=os;Z.toneMapped&&(C===null||C.isXRRenderTarget===!0)&&(Nt=b.toneMapping);const Tt=Q.morphAttributes.position||Q.morphAttributes.normal||Q.morphAttributes.color,it=Tt!==void 0?Tt.length:0,We=Ce.get(Z),Ft=d.state.lights;if(Ze===!0&&(ee===!0||w!==_)){const on=w===_&&Z.id===S;he.setState(Z,w,on)}let ut=!1;Z.version===We.__version?(We.needsLights&&We.lightsStateVersion!==Ft.state.version||We.outputColorSpace!==Le||X.isBatchedMesh&&We.batching===!1||!X.isBatchedMesh&&We.batching===!0||X.isBatchedMesh&&We.batchingColor===!0&&X.colorTexture===null||X.isBatchedMesh&&We.batchingColor===!1&&X.colorTexture!==null||X.isInstancedMesh&&We.instancing===!1||!X.isInstancedMesh&&We.instancing===!0||X.isSkinnedMesh&&We.skinning===!1||!X.isSkinnedMesh&&We.skinning===!0||X.isInstancedMesh&&We.instancingColor===!0&&X.instanceColor===null||X.isInstancedMesh&&We.instancingColor===!1&&X.instanceColor!==null||X.isInstancedMesh&&We.instancingMorph===!0&&X.morphTexture===null||X.isInstancedMesh&&We.instancingMorph===!1&&X.morphTexture!==null||We.envMap!==Te||Z.fog===!0&&We.fog!==de||We.numClippingPlanes!==void 0&&(We.numClippingPlanes!==he.numPlanes||We.numIntersection!==he.numIntersection)||We.vertexAlphas!==Xe||We.vertexTangents!==Ye||We.morphTargets!==ke||We.morphNormals!==rt||We.morphColors!==mt||We.toneMapping!==Nt||We.morphTargetsCount!==it)&&(ut=!0):(ut=!0,We.__version=Z.version);let xn=We.currentProgram;ut===!0&&(xn=hs(Z,W,X));let Wi=!1,Tn=!1,ds=!1;const Ot=xn.getUniforms(),wn=We.uniforms;if(Ie.useProgram(xn.program)&&(Wi=!0,Tn=!0,ds=!0),Z.id!==S&&(S=Z.id,Tn=!0),Wi||_!==w){Ie.buffers.depth.getReversed()&&w.reversedDepth!==!0&&(w._reversedDepth=!0,w.updateProjectionMatrix()),Ot.setValue(O,"projectionMatrix",w.projectionMatrix),Ot.setValue(O,"viewMatrix",w.matrixWorldInverse);const ln=Ot.map.cameraPosition;ln!==void 0&&ln.setValue(O,be.setFromMatrixPosition(w.matrixWorld)),Ge.logarithmicDepthBuffer&&Ot.setValue(O,"logDepthBufFC",2/(Math.log(w.far+1)/Math.LN2)),(Z.isMeshPhongMaterial||Z.isMeshToonMaterial||Z.isMeshLambertMaterial||Z.isMeshBasicMaterial||Z.isMeshStandardMaterial||Z.isShaderMaterial)&&Ot.setValue(O,"isOrthographic",w.isOrthographicCamera===!0),_!==w&&(_=w,Tn=!0,ds=!0)}if(X.isSkinnedMesh){Ot.setOptional(O,X,"bindMatrix"),Ot.setOptional(O,X,"bindMatrixInverse");const on=X.skeleton;on&&(on.boneTexture===null&&on.computeBoneTexture(),Ot.setValue(O,"boneTexture",on.boneTexture,Ve))}X.isBatchedMesh&&(Ot.setOptional(O,X,"batchingTexture"),Ot.setValue(O,"batchingTexture",X._matricesTexture,Ve),Ot.setOptional(O,X,"batchingIdTexture"),Ot.setValue(O,"batchingIdTexture",X._indirectTexture,Ve),Ot.setOptional(O,X,"batchingColorTexture"),X._colorsTexture!==null&&Ot.setValue(O,"batchingColorTexture",X._colorsTexture,Ve));const In=Q.morphAttributes;if((In.position!==void 0||In.normal!==void 0||In.color!==void 0)&&le.update(X,Q,xn),(Tn||We.receiveShadow!==X.receiveShadow)&&(We.receiveShadow=X.receiveShadow,Ot.setValue(O,"receiveShadow",X.receiveShadow)),Z.isMeshGouraudMaterial&&Z.envMap!==null&&(wn.envMap.value=Te,wn.flipEnvMap.value=Te.isCubeTexture&&Te.isRenderTargetTexture===!1?-1:1),Z.isMeshStandardMaterial&&Z.envMap===null&&W.environment!==null&&(wn.envMapIntensity.value=W.environmentIntensity),Tn&&(Ot.setValue(O,"toneMappingExposure",b.toneMappingExposure),We.needsLights&&zo(wn,ds),de&&Z.fog===!0&&ie.refreshFogUniforms(wn,de),ie.refreshMaterialUniforms(wn,Z,K,j,d.state.transmissionRenderTarget[w.id]),ho.upload(O,Sa(We),wn,Ve)),Z.isShaderMaterial&&Z.uniformsNeedUpdate===!0&&(ho.upload(O,Sa(We),wn,Ve),Z.uniformsNeedUpdate=!1),Z.isSpriteMaterial&&Ot.setValue(O,"center",X.center),Ot.setValue(O,"modelViewMatrix",X.modelViewMatrix),Ot.setValue(O,"normalMatrix",X.normalMatrix),Ot.setValue(O,"modelMatrix",X.matrixWorld),Z.isShaderMaterial||Z.isRawShaderMaterial){const on=Z.uniformsGroups;for(let ln=0,Xi=on.length;ln<Xi;ln++){const Kn=on[ln];Ke.update(Kn,xn),Ke.bind(Kn,xn)}}return xn}function zo(w,W){w.ambientLightColor.needsUpdate=W,w.lightProbe.needsUpdate=W,w.directionalLights.needsUpdate=W,w.directionalLightShadows.needsUpdate=W,w.pointLights.needsUpdate=W,w.pointLightShadows.needsUpdate=W,w.spotLights.needsUpdate=W,w.spotLightShadows.needsUpdate=W,w.rectAreaLights.needsUpdate=W,w.hemisphereLights.needsUpdate=W}function fs(w){return w.isMeshLambertMaterial||w.isMeshToonMaterial||w.isMeshPhongMaterial||w.isMeshStandardMaterial||w.isShadowMaterial||w.isShaderMaterial&&w.lights===!0}this.getActiveCubeFace=function(){return R},this.getActiveMipmapLevel=function(){return D},this.getRenderTarget=function(){return C},this.setRenderTargetTextures=function(w,W,Q){const Z=Ce.get(w);Z.__autoAllocateDepthBuffer=w.resolveDepthBuffer===!1,Z.__autoAllocateDepthBuffer===!1&&(Z.__useRenderToTexture=!1),Ce.get(w.texture).__webglTexture=W,Ce.get(w.depthTexture).__webglTexture=Z.__autoAllocateDepthBuffer?void 0:Q,Z.__hasExternalTextures=!0},this.setRenderTargetFramebuffer=function(w,W){const Q=Ce.get(w);Q.__webglFramebuffer=W,Q.__useDefaultFramebuffer=W===void 0};const Ea=O.createFramebuffer();this.setRenderTarget=function(w,W=0,Q=0){C=w,R=W,D=Q;let Z=!0,X=null,de=!1,ye=!1;if(w){const Te=Ce.get(w);if(Te.__useDefaultFramebuffer!==void 0)Ie.bindFramebuffer(O.FRAMEBUFFER,null),Z=!1;else if(Te.__webglFramebuffer===void 0)Ve.setupRenderTarget(w);else if(Te.__hasExternalTextures)Ve.rebindTextures(w,Ce.get(w.texture).__webglTexture,Ce.get(w.depthTexture).__webglTexture);else if(w.depthBuffer){const ke=w.depthTexture;if(Te.__boundDepthTexture!==ke){if(ke!==null&&Ce.has(ke)&&(w.width!==ke.image.width||w.height!==ke.image.height))throw new Error("WebGLRenderTarget: Attached DepthTexture is initialized to the incorrect size.");Ve.setupDepthRenderbuffer(w)}}const Xe=w.texture;(Xe.isData3DTexture||Xe.isDataArrayTexture||Xe.isCompressedArrayTexture)&&(ye=!0);const Ye=Ce.get(w).__webglFramebuffer;w.isWebGLCubeRenderTarget?(Array.isArray(Ye[W])?X=Ye[W][Q]:X=Ye[W],de=!0):w.samples>0&&Ve.useMultisampledRTT(w)===!1?X=Ce.get(w).__webglMultisampledFramebuffer:Array.isArray(Ye)?X=Ye[Q]:X=Ye,y.copy(w.viewport),F.copy(w.scissor),k=w.scissorTest}else y.copy(ve).multiplyScalar(K).floor(),F.copy(Se).multiplyScalar(K).floor(),k=_e;if(Q!==0&&(X=Ea),Ie.bindFramebuffer(O.FRAMEBUFFER,X)&&Z&&Ie.drawBuffers(w,X),Ie.viewport(y),Ie.scissor(F),Ie.setScissorTest(k),de){const Te=Ce.get(w.texture);O.framebufferTexture2D(O.FRAMEBUFFER,O.COLOR_ATTACHMENT0,O.TEXTURE_CUBE_MAP_POSITIVE_X+W,Te.__webglTexture,Q)}else if(ye){const Te=W;for(let Xe=0;Xe<w.textures.length;Xe++){const Ye=Ce.get(w.textures[Xe]);O.framebufferTextureLayer(O.FRAMEBUFFER,O.COLOR_ATTACHMENT0+Xe,Ye.__webglTexture,Q,Te)}}else if(w!==null&&Q!==0){const Te=Ce.get(w.texture);O.framebufferTexture2D(O.FRAMEBUFFER,O.COLOR_ATTACHMENT0,O.TEXTURE_2D,Te.__webglTexture,Q)}S=-1},this.readRenderTargetPixels=function(w,W,Q,Z,X,de,ye,Le=0){if(!(w&&w.isWebGLRenderTarget)){console.error("THREE.WebGLRenderer.readRenderTargetPixels: renderTarget is not THREE.WebGLRenderTarget.");return}let Te=Ce.get(w).__webglFramebuffer;if(w.isWebGLCubeRenderTarget&&ye!==void 0&&(Te=Te[ye]),Te){Ie.bindFramebuffer(O.FRAMEBUFFER,Te);try{const Xe=w.textures[Le],Ye=Xe.format,ke=Xe.type;if(!Ge.textureFormatReadable(Ye)){console.error("THREE.WebGLRenderer.readRenderTargetPixels: renderTarget is not in RGBA or implementation defined format.");return}if(!Ge.textureTypeReadable(ke)){console.error("THREE.WebGLRenderer.readRenderTargetPixels: renderTarget is not in UnsignedByteType or implementation defined type.");return}W>=0&&W<=w.width-Z&&Q>=0&&Q<=w.height-X&&(w.textures.length>1&&O.readBuffer(O.COLOR_ATTACHMENT0+Le),O.readPixels(W,Q,Z,X,Oe.convert(Ye),Oe.convert(ke),de))}finally{const Xe=C!==null?Ce.get(C).__webglFramebuffer:null;Ie.bindFramebuffer(O.FRAMEBUFFER,Xe)}}},this.readRenderTargetPixelsAsync=async function(w,W,Q,Z,X,de,ye,Le=0){if(!(w&&w.isWebGLRenderTarget))throw new Error("THREE.WebGLRenderer.readRenderTargetPixels: renderTarget is not THREE.WebGLRenderTarget.");let Te=Ce.get(w).__webglFramebuffer;if(w.isWebGLCubeRenderTarget&&ye!==void 0&&(Te=Te[ye]),Te)if(W>=0&&W<=w.width-Z&&Q>=0&&Q<=w.height-X){Ie.bindFramebuffer(O.FRAMEBUFFER,Te);const Xe=w.textures[Le],Ye=Xe.format,ke=Xe.type;if(!Ge.textureFormatReadable(Ye))throw new Error("THREE.WebGLRenderer.readRenderTargetPixelsAsync: renderTarget is not in RGBA or implementation defined format.");if(!Ge.textureTypeReadable(ke))throw new Error("THREE.WebGLRenderer.readRenderTargetPixelsAsync: renderTarget is not in UnsignedByteType or implementation defined type.");const rt=O.createBuffer();O.bindBuffer(O.PIXEL_PACK_BUFFER,rt),O.bufferData(O.PIXEL_PACK_BUFFER,de.byteLength,O.STREAM_READ),w.textures.length>1&&O.readBuffer(O.COLOR_ATTACHMENT0+Le),O.readPixels(W,Q,Z,X,Oe.convert(Ye),Oe.convert(ke),0);const mt=C!==null?Ce.get(C).__webglFramebuffer:null;Ie.bindFramebuffer(O.FRAMEBUFFER,mt);const Nt=O.fenceSync(O.SYNC_GPU_COMMANDS_COMPLETE,0);return O.flush(),await E_(O,Nt,4),O.bindBuffer(O.PIXEL_PACK_BUFFER,rt),O.getBufferSubData(O.PIXEL_PACK_BUFFER,0,de),O.deleteBuffer(rt),O.deleteSync(Nt),de}else throw new Error("THREE.WebGLRenderer.readRenderTargetPixelsAsync: requested read bounds are out of range.")},this.copyFramebufferToTexture=function(w,W=null,Q=0){const Z=Math.pow(2,-Q),X=Math.floor(w.image.width*Z),de=Math.floor(w.image.height*Z),ye=W!==null?W.x:0,Le=W!==null?W.y:0;Ve.setTexture2D(w,0),O.copyTexSubImage2D(O.TEXTURE_2D,Q,0,0,ye,Le,X,de),Ie.unbindTexture()};const vi=O.createFramebuffer(),Jt=O.createFramebuffer();this.copyTextureToTexture=function(w,W,Q=null,Z=null,X=0,de=null){de===null&&(X!==0?(ua("WebGLRenderer: copyTextureToTexture function signature has changed to support src and dst mipmap levels."),de=X,X=0):de=0);let ye,Le,Te,Xe,Ye,ke,rt,mt,Nt;const Tt=w.isCompressedTexture?w.mipmaps[de]:w.image;if(Q!==null)ye=Q.max.x-Q.min.x,Le=Q.max.y-Q.min.y,Te=Q.isBox3?Q.max.z-Q.min.z:1,Xe=Q.min.x,Ye=Q.min.y,ke=Q.isBox3?Q.min.z:0;else{const In=Math.pow(2,-X);ye=Math.floor(Tt.width*In),Le=Math.floor(Tt.height*In),w.isDataArrayTexture?Te=Tt.depth:w.isData3DTexture?Te=Math.floor(Tt.depth*In):Te=1,Xe=0,Ye=0,ke=0}Z!==null?(rt=Z.x,mt=Z.y,Nt=Z.z):(rt=0,mt=0,Nt=0);const it=Oe.convert(W.format),We=Oe.convert(W.type);let Ft;W.isData3DTexture?(Ve.setTexture3D(W,0),Ft=O.TEXTURE_3D):W.isDataArrayTexture||W.isCompressedArrayTexture?(Ve.setTexture2DArray(W,0),Ft=O.TEXTURE_2D_ARRAY):(Ve.setTexture2D(W,0),Ft=O.TEXTURE_2D),O.pixelStorei(O.UNPACK_FLIP_Y_WEBGL,W.flipY),O.pixelStorei(O.UNPACK_PREMULTIPLY_ALPHA_WEBGL,W.premultiplyAlpha),O.pixelStorei(O.UNPACK_ALIGNMENT,W.unpackAlignment);const ut=O.getParameter(O.UNPACK_ROW_LENGTH),xn=O.getParameter(O.UNPACK_IMAGE_HEIGHT),Wi=O.getParameter(O.UNPACK_SKIP_PIXELS),Tn=O.getParameter(O.UNPACK_SKIP_ROWS),ds=O.getParameter(O.UNPACK_SKIP_IMAGES);O.pixelStorei(O.UNPACK_ROW_LENGTH,Tt.width),O.pixelStorei(O.UNPACK_IMAGE_HEIGHT,Tt.height),O.pixelStorei(O.UNPACK_SKIP_PIXELS,Xe),O.pixelStorei(O.UNPACK_SKIP_ROWS,Ye),O.pixelStorei(O.UNPACK_SKIP_IMAGES,ke);const Ot=w.isDataArrayTexture||w.isData3DTexture,wn=W.isDataArrayTexture||W.isData3DTexture;if(w.isDepthTexture){const In=Ce.get(w),on=Ce.get(W),ln=Ce.get(In.__renderTarget),Xi=Ce.get(on.__renderTarget);Ie.bindFramebuffer(O.READ_FRAMEBUFFER,ln.__webglFramebuffer),Ie.bindFramebuffer(O.DRAW_FRAMEBUFFER,Xi.__webglFramebuffer);for(let Kn=0;Kn<Te;Kn++)Ot&&(O.framebufferTextureLayer(O.READ_FRAMEBUFFER,O.COLOR_ATTACHMENT0,Ce.get(w).__webglTexture,X,ke+Kn),O.framebufferTextureLayer(O.DRAW_FRAMEBUFFER,O.COLOR_ATTACHMENT0,Ce.get(W).__webglTexture,de,Nt+Kn)),O.blitFramebuffer(Xe,Ye,ye,Le,rt,mt,ye,Le,O.DEPTH_BUFFER_BIT,O.NEAREST);Ie.bindFramebuffer(O.READ_FRAMEBUFFER,null),Ie.bindFramebuffer(O.DRAW_FRAMEBUFFER,null)}else if(X!==0||w.isRenderTargetTexture||Ce.has(w)){const In=Ce.get(w),on=Ce.get(W);Ie.bindFramebuffer(O.READ_FRAMEBUFFER,vi),Ie.bindFramebuffer(O.DRAW_FRAMEBUFFER,Jt);for(let ln=0;ln<Te;ln++)Ot?O.framebufferTextureLayer(O.READ_FRAMEBUFFER,O.COLOR_ATTACHMENT0,In.__webglTexture,X,ke+ln):O.framebufferTexture2D(O.READ_FRAMEBUFFER,O.COLOR_ATTACHMENT0,O.TEXTURE_2D,In.__webglTexture,X),wn?O.framebufferTextureLayer(O.DRAW_FRAMEBUFFER,O.COLOR_ATTACHMENT0,on.__webglTexture,de,Nt+ln):O.framebufferTexture2D(O.DRAW_FRAMEBUFFER,O.COLOR_ATTACHMENT0,O.TEXTURE_2D,on.__webglTexture,de),X!==0?O.blitFramebuffer(Xe,Ye,ye,Le,rt,mt,ye,Le,O.COLOR_BUFFER_BIT,O.NEAREST):wn?O.copyTexSubImage3D(Ft,de,rt,mt,Nt+ln,Xe,Ye,ye,Le):O.copyTexSubImage2D(Ft,de,rt,mt,Xe,Ye,ye,Le);Ie.bindFramebuffer(O.READ_FRAMEBUFFER,null),Ie.bindFramebuffer(O.DRAW_FRAMEBUFFER,null)}else wn?w.isDataTexture||w.isData3DTexture?O.texSubImage3D(Ft,de,rt,mt,Nt,ye,Le,Te,it,We,Tt.data):W.isCompressedArrayTexture?O.compressedTexSubImage3D(Ft,de,rt,mt,Nt,ye,Le,Te,it,Tt.data):O.texSubImage3D(Ft,de,rt,mt,Nt,ye,Le,Te,it,We,Tt):w.isDataTexture?O.texSubImage2D(O.TEXTURE_2D,de,rt,mt,ye,Le,it,We,Tt.data):w.isCompressedTexture?O.compressedTexSubImage2D(O.TEXTURE_2D,de,rt,mt,Tt.width,Tt.height,it,Tt.data):O.texSubImage2D(O.TEXTURE_2D,de,rt,mt,ye,Le,it,We,Tt);O.pixelStorei(O.UNPACK_ROW_LENGTH,ut),O.pixelStorei(O.UNPACK_IMAGE_HEIGHT,xn),O.pixelStorei(O.UNPACK_SKIP_PIXELS,Wi),O.pixelStorei(O.UNPACK_SKIP_ROWS,Tn),O.pixelStorei(O.UNPACK_SKIP_IMAGES,ds),de===0&&W.generateMipmaps&&O.generateMipmap(Ft),Ie.unbindTexture()},this.initRenderTarget=function(w){Ce.get(w).__webglFramebuffer===void 0&&Ve.setupRenderTarget(w)},this.initTexture=function(w){w.isCubeTexture?Ve.setTextureCube(w,0):w.isData3DTexture?Ve.setTexture3D(w,0):w.isDataArrayTexture||w.isCompressedArrayTexture?Ve.setTexture2DArray(w,0):Ve.setTexture2D(w,0),Ie.unbindTexture()},this.resetState=function(){R=0,D=0,C=null,Ie.reset(),Me.reset()},typeof __THREE_DEVTOOLS__<"u"&&__THREE_DEVTOOLS__.dispatchEvent(new CustomEvent("observe",{detail:this}))}get coordinateSystem(){return wi}get outputColorSpace(){return this._outputColorSpace}set outputColorSpace(e){this._outputColorSpace=e;const t=this.getContext();t.drawingBufferColorSpace=_t._getDrawingBufferColorSpace(e),t.unpackColorSpace=_t._getUnpackColorSpace()}}const Nf={type:"change"},vu={type:"start"},up={type:"end"},no=new va,Ff=new is,qS=Math.cos(70*S_.DEG2RAD),Qt=new z,Fn=2*Math.PI,Ct={NONE:-1,ROTATE:0,DOLLY:1,PAN:2,TOUCH_ROTATE:3,TOUCH_PAN:4,TOUCH_DOLLY_PAN:5,TOUCH_DOLLY_ROTATE:6},Ol=1e-6;class YS extends l0{constructor(e,t=null){super(e,t),this.state=Ct.NONE,this.target=new z,this.cursor=new z,this.minDistance=0,this.maxDistance=1/0,this.minZoom=0,this.maxZoom=1/0,this.minTargetRadius=0,this.maxTargetRadius=1/0,this.minPolarAngle=0,this.maxPolarAngle=Math.PI,this.minAzimuthAngle=-1/0,this.maxAzimuthAngle=1/0,this.enableDamping=!1,this.dampingFactor=.05,this.enableZoom=!0,this.zoomSpeed=1,this.enableRotate=!0,this.rotateSpeed=1,this.keyRotateSpeed=1,this.enablePan=!0,this.panSpeed=1,this.screenSpacePanning=!0,this.keyPanSpeed=7,this.zoomToCursor=!1,this.autoRotate=!1,this.autoRotateSpeed=2,this.keys={LEFT:"ArrowLeft",UP:"ArrowUp",RIGHT:"ArrowRight",BOTTOM:"ArrowDown"},this.mouseButtons={LEFT:pr.ROTATE,MIDDLE:pr.DOLLY,RIGHT:pr.PAN},this.touches={ONE:hr.ROTATE,TWO:hr.DOLLY_PAN},this.target0=this.target.clone(),this.position0=this.object.position.clone(),this.zoom0=this.object.zoom,this._domElementKeyEvents=null,this._lastPosition=new z,this._lastQuaternion=new Ns,this._lastTargetPosition=new z,this._quat=new Ns().setFromUnitVectors(e.up,new z(0,1,0)),this._quatInverse=this._quat.clone().invert(),this._spherical=new of,this._sphericalDelta=new of,this._scale=1,this._panOffset=new z,this._rotateStart=new tt,this._rotateEnd=new tt,this._rotateDelta=new tt,this._panStart=new tt,this._panEnd=new tt,this._panDelta=new tt,this._dollyStart=new tt,this._dollyEnd=new tt,this._dollyDelta=new tt,this._dollyDirection=new z,this._mouse=new tt,this._performCursorZoom=!1,this._pointers=[],this._pointerPositions={},this._controlActive=!1,this._onPointerMove=jS.bind(this),this._onPointerDown=$S.bind(this),this._onPointerUp=KS.bind(this),this._onContextMenu=iy.bind(this),this._onMouseWheel=QS.bind(this),this._onKeyDown=ey.bind(this),this._onTouchStart=ty.bind(this),this._onTouchMove=ny.bind(this),this._onMouseDown=ZS.bind(this),this._onMouseMove=JS.bind(this),this._interceptControlDown=sy.bind(this),this._interceptControlUp=ry.bind(this),this.domElement!==null&&this.connect(this.domElement),this.update()}connect(e){super.connect(e),this.domElement.addEventListener("pointerdown",this._onPointerDown),this.domElement.addEventListener("pointercancel",this._onPointerUp),this.domElement.addEventListener("contextmenu",this._onContextMenu),this.domElement.addEventListener("wheel",this._onMouseWheel,{passive:!1}),this.domElement.getRootNode().addEventListener("keydown",this._interceptControlDown,{passive:!0,capture:!0}),this.domElement.style.touchAction="none"}disconnect(){this.domElement.removeEventListener("pointerdown",this._onPointerDown),this.domElement.removeEventListener("pointermove",this._onPointerMove),this.domElement.removeEventListener("pointerup",this._onPointerUp),this.domElement.removeEventListener("pointercancel",this._onPointerUp),this.domElement.removeEventListener("wheel",this._onMouseWheel),this.domElement.removeEventListener("contextmenu",this._onContextMenu),this.stopListenToKeyEvents(),this.domElement.getRootNode().removeEventListener("keydown",this._interceptControlDown,{capture:!0}),this.domElement.style.touchAction="auto"}dispose(){this.disconnect()}getPolarAngle(){return this._spherical.phi}getAzimuthalAngle(){return this._spherical.theta}getDistance(){return this.object.position.distanceTo(this.target)}listenToKeyEvents(e){e.addEventListener("keydown",this._onKeyDown),this._domElementKeyEvents=e}stopListenToKeyEvents(){this._domElementKeyEvents!==null&&(this._domElementKeyEvents.removeEventListener("keydown",this._onKeyDown),this._domElementKeyEvents=null)}saveState(){this.target0.copy(this.target),this.position0.copy(this.object.position),this.zoom0=this.object.zoom}reset(){this.target.copy(this.target0),this.object.position.copy(this.position0),this.object.zoom=this.zoom0,this.object.updateProjectionMatrix(),this.dispatchEvent(Nf),this.update(),this.state=Ct.NONE}update(e=null){const t=this.object.position;Qt.copy(t).sub(this.target),Qt.applyQuaternion(this._quat),this._spherical.setFromVector3(Qt),this.autoRotate&&this.state===Ct.NONE&&this._rotateLeft(this._getAutoRotationAngle(e)),this.enableDamping?(this._spherical.theta+=this._sphericalDelta.theta*this.dampingFactor,this._spherical.phi+=this._sphericalDelta.phi*this.dampingFactor):(this._spherical.theta+=this._sphericalDelta.theta,this._spherical.phi+=this._sphericalDelta.phi);let n=this.minAzimuthAngle,s=this.maxAzimuthAngle;isFinite(n)&&isFinite(s)&&(n<-Math.PI?n+=Fn:n>Math.PI&&(n-=Fn),s<-Math.PI?s+=Fn:s>Math.PI&&(s-=Fn),n<=s?this._spherical.theta=Math.max(n,Math.min(s,this._spherical.theta)):this._spherical.theta=this._spherical.theta>(n+s)/2?Math.max(n,this._spherical.theta):Math.min(s,this._spherical.theta)),this._spherical.phi=Math.max(this.minPolarAngle,Math.min(this.maxPolarAngle,this._spherical.phi)),this._spherical.makeSafe(),this.enableDamping===!0?this.target.addScaledVector(this._panOffset,this.dampingFactor):this.target.add(this._panOffset),this.target.sub(this.cursor),this.target.clampLength(this.minTargetRadius,this.maxTargetRadius),this.target.add(this.cursor);let r=!1;if(this.zoomToCursor&&this._performCursorZoom||this.object.isOrthographicCamera)this._spherical.radius=this._clampDistance(this._spherical.radius);else{const a=this._spherical.radius;this._spherical.radius=this._clampDistance(this._spherical.radius*this._scale),r=a!=this._spherical.radius}if(Qt.setFromSpherical(this._spherical),Qt.applyQuaternion(this._quatInverse),t.copy(this.target).add(Qt),this.object.lookAt(this.target),this.enableDamping===!0?(this._sphericalDelta.theta*=1-this.dampingFactor,this._sphericalDelta.phi*=1-this.dampingFactor,this._panOffset.multiplyScalar(1-this.dampingFactor)):(this._sphericalDelta.set(0,0,0),this._panOffset.set(0,0,0)),this.zoomToCursor&&this._performCursorZoom){let a=null;if(this.object.isPerspectiveCamera){const o=Qt.length();a=this._clampDistance(o*this._scale);const l=o-a;this.object.position.addScaledVector(this._dollyDirection,l),this.object.updateMatrixWorld(),r=!!l}else if(this.object.isOrthographicCamera){const o=new z(this._mouse.x,this._mouse.y,0);o.unproject(this.object);const l=this.object.zoom;this.object.zoom=Math.max(this.minZoom,Math.min(this.maxZoom,this.object.zoom/this._scale)),this.object.updateProjectionMatrix(),r=l!==this.object.zoom;const c=new z(this._mouse.x,this._mouse.y,0);c.unproject(this.object),this.object.position.sub(c).add(o),this.object.updateMatrixWorld(),a=Qt.length()}else console.warn("WARNING: OrbitControls.js encountered an unknown camera type - zoom to cursor disabled."),this.zoomToCursor=!1;a!==null&&(this.screenSpacePanning?this.target.set(0,0,-1).transformDirection(this.object.matrix).multiplyScalar(a).add(this.object.position):(no.origin.copy(this.object.position),no.direction.set(0,0,-1).transformDirection(this.object.matrix),Math.abs(this.object.up.dot(no.direction))<qS?this.object.lookAt(this.target):(Ff.setFromNormalAndCoplanarPoint(this.object.up,this.target),no.intersectPlane(Ff,this.target))))}else if(this.object.isOrthographicCamera){const a=this.object.zoom;this.object.zoom=Math.max(this.minZoom,Math.min(this.maxZoom,this.object.zoom/this._scale)),a!==this.object.zoom&&(this.object.updateProjectionMatrix(),r=!0)}return this._scale=1,this._performCursorZoom=!1,r||this._lastPosition.distanceToSquared(this.object.position)>Ol||8*(1-this._lastQuaternion.dot(this.object.quaternion))>Ol||this._lastTargetPosition.distanceToSquared(this.target)>Ol?(this.dispatchEvent(Nf),this._lastPosition.copy(this.object.position),this._lastQuaternion.copy(this.object.quaternion),this._lastTargetPosition.copy(this.target),!0):!1}_getAutoRotationAngle(e){return e!==null?Fn/60*this.autoRotateSpeed*e:Fn/60/60*this.autoRotateSpeed}_getZoomScale(e){const t=Math.abs(e*.01);return Math.pow(.95,this.zoomSpeed*t)}_rotateLeft(e){this._sphericalDelta.theta-=e}_rotateUp(e){this._sphericalDelta.phi-=e}_panLeft(e,t){Qt.setFromMatrixColumn(t,0),Qt.multiplyScalar(-e),this._panOffset.add(Qt)}_panUp(e,t){this.screenSpacePanning===!0?Qt.setFromMatrixColumn(t,1):(Qt.setFromMatrixColumn(t,0),Qt.crossVectors(this.object.up,Qt)),Qt.multiplyScalar(e),this._panOffset.add(Qt)}_pan(e,t){const n=this.domElement;if(this.object.isPerspectiveCamera){const s=this.object.position;Qt.copy(s).sub(this.target);let r=Qt.length();r*=Math.tan(this.object.fov/2*Math.PI/180),this._panLeft(2*e*r/n.clientHeight,this.object.matrix),this._panUp(2*t*r/n.clientHeight,this.object.matrix)}else this.object.isOrthographicCamera?(this._panLeft(e*(this.object.right-this.object.left)/this.object.zoom/n.clientWidth,this.object.matrix),this._panUp(t*(this.object.top-this.object.bottom)/this.object.zoom/n.clientHeight,this.object.matrix)):(console.warn("WARNING: OrbitControls.js encountered an unknown camera type - pan disabled."),this.enablePan=!1)}_dollyOut(e){this.object.isPerspectiveCamera||this.object.isOrthographicCamera?this._scale/=e:(console.warn("WARNING: OrbitControls.js encountered an unknown camera type - dolly/zoom disabled."),this.enableZoom=!1)}_dollyIn(e){this.object.isPerspectiveCamera||this.object.isOrthographicCamera?this._scale*=e:(console.warn("WARNING: OrbitControls.js encountered an unknown camera type - dolly/zoom disabled."),this.enableZoom=!1)}_updateZoomParameters(e,t){if(!this.zoomToCursor)return;this._performCursorZoom=!0;const n=this.domElement.getBoundingClientRect(),s=e-n.left,r=t-n.top,a=n.width,o=n.height;this._mouse.x=s/a*2-1,this._mouse.y=-(r/o)*2+1,this._dollyDirection.set(this._mouse.x,this._mouse.y,1).unproject(this.object).sub(this.object.position).normalize()}_clampDistance(e){return Math.max(this.minDistance,Math.min(this.maxDistance,e))}_handleMouseDownRotate(e){this._rotateStart.set(e.clientX,e.clientY)}_handleMouseDownDolly(e){this._updateZoomParameters(e.clientX,e.clientX),this._dollyStart.set(e.clientX,e.clientY)}_handleMouseDownPan(e){this._panStart.set(e.clientX,e.clientY)}_handleMouseMoveRotate(e){this._rotateEnd.set(e.clientX,e.clientY),this._rotateDelta.subVectors(this._rotateEnd,this._rotateStart).multiplyScalar(this.rotateSpeed);const t=this.domElement;this._rotateLeft(Fn*this._rotateDelta.x/t.clientHeight),this._rotateUp(Fn*this._rotateDelta.y/t.clientHeight),this._rotateStart.copy(this._rotateEnd),this.update()}_handleMouseMoveDolly(e){this._dollyEnd.set(e.clientX,e.clientY),this._dollyDelta.subVectors(this._dollyEnd,this._dollyStart),this._dollyDelta.y>0?this._dollyOut(this._getZoomScale(this._dollyDelta.y)):this._dollyDelta.y<0&&this._dollyIn(this._getZoomScale(this._dollyDelta.y)),this._dollyStart.copy(this._dollyEnd),this.update()}_handleMouseMovePan(e){this._panEnd.set(e.clientX,e.clientY),this._panDelta.subVectors(this._panEnd,this._panStart).multiplyScalar(this.panSpeed),this._pan(this._panDelta.x,this._panDelta.y),this._panStart.copy(this._panEnd),this.update()}_handleMouseWheel(e){this._updateZoomParameters(e.clientX,e.clientY),e.deltaY<0?this._dollyIn(this._getZoomScale(e.deltaY)):e.deltaY>0&&this._dollyOut(this._getZoomScale(e.deltaY)),this.update()}_handleKeyDown(e){let t=!1;switch(e.code){case this.keys.UP:e.ctrlKey||e.metaKey||e.shiftKey?this.enableRotate&&this._rotateUp(Fn*this.keyRotateSpeed/this.domElement.clientHeight):this.enablePan&&this._pan(0,this.keyPanSpeed),t=!0;break;case this.keys.BOTTOM:e.ctrlKey||e.metaKey||e.shiftKey?this.enableRotate&&this._rotateUp(-Fn*this.keyRotateSpeed/this.domElement.clientHeight):this.enablePan&&this._pan(0,-this.keyPanSpeed),t=!0;break;case this.keys.LEFT:e.ctrlKey||e.metaKey||e.shiftKey?this.enableRotate&&this._rotateLeft(Fn*this.keyRotateSpeed/this.domElement.clientHeight):this.enablePan&&this._pan(this.keyPanSpeed,0),t=!0;break;case this.keys.RIGHT:e.ctrlKey||e.metaKey||e.shiftKey?this.enableRotate&&this._rotateLeft(-Fn*this.keyRotateSpeed/this.domElement.clientHeight):this.enablePan&&this._pan(-this.keyPanSpeed,0),t=!0;break}t&&(e.preventDefault(),this.update())}_handleTouchStartRotate(e){if(this._pointers.length===1)this._rotateStart.set(e.pageX,e.pageY);else{const t=this._getSecondPointerPosition(e),n=.5*(e.pageX+t.x),s=.5*(e.pageY+t.y);this._rotateStart.set(n,s)}}_handleTouchStartPan(e){if(this._pointers.length===1)this._panStart.set(e.pageX,e.pageY);else{const t=this._getSecondPointerPosition(e),n=.5*(e.pageX+t.x),s=.5*(e.pageY+t.y);this._panStart.set(n,s)}}_handleTouchStartDolly(e){const t=this._getSecondPointerPosition(e),n=e.pageX-t.x,s=e.pageY-t.y,r=Math.sqrt(n*n+s*s);this._dollyStart.set(0,r)}_handleTouchStartDollyPan(e){this.enableZoom&&this._handleTouchStartDolly(e),this.enablePan&&this._handleTouchStartPan(e)}_handleTouchStartDollyRotate(e){this.enableZoom&&this._handleTouchStartDolly(e),this.enableRotate&&this._handleTouchStartRotate(e)}_handleTouchMoveRotate(e){if(this._pointers.length==1)this._rotateEnd.set(e.pageX,e.pageY);else{const n=this._getSecondPointerPosition(e),s=.5*(e.pageX+n.x),r=.5*(e.pageY+n.y);this._rotateEnd.set(s,r)}this._rotateDelta.subVectors(this._rotateEnd,this._rotateStart).multiplyScalar(this.rotateSpeed);const t=this.domElement;this._rotateLeft(Fn*this._rotateDelta.x/t.clientHeight),this._rotateUp(Fn*this._rotateDelta.y/t.clientHeight),this._rotateStart.copy(this._rotateEnd)}_handleTouchMovePan(e){if(this._pointers.length===1)this._panEnd.set(e.pageX,e.pageY);else{const t=this._getSecondPointerPosition(e),n=.5*(e.pageX+t.x),s=.5*(e.pageY+t.y);this._panEnd.set(n,s)}this._panDelta.subVectors(this._panEnd,this._panStart).multiplyScalar(this.panSpeed),this._pan(this._panDelta.x,this._panDelta.y),this._panStart.copy(this._panEnd)}_handleTouchMoveDolly(e){const t=this._getSecondPointerPosition(e),n=e.pageX-t.x,s=e.pageY-t.y,r=Math.sqrt(n*n+s*s);this._dollyEnd.set(0,r),this._dollyDelta.set(0,Math.pow(this._dollyEnd.y/this._dollyStart.y,this.zoomSpeed)),this._dollyOut(this._dollyDelta.y),this._dollyStart.copy(this._dollyEnd);const a=(e.pageX+t.x)*.5,o=(e.pageY+t.y)*.5;this._updateZoomParameters(a,o)}_handleTouchMoveDollyPan(e){this.enableZoom&&this._handleTouchMoveDolly(e),this.enablePan&&this._handleTouchMovePan(e)}_handleTouchMoveDollyRotate(e){this.enableZoom&&this._handleTouchMoveDolly(e),this.enableRotate&&this._handleTouchMoveRotate(e)}_addPointer(e){this._pointers.push(e.pointerId)}_removePointer(e){delete this._pointerPositions[e.pointerId];for(let t=0;t<this._pointers.length;t++)if(this._pointers[t]==e.pointerId){this._pointers.splice(t,1);return}}_isTrackingPointer(e){for(let t=0;t<this._pointers.length;t++)if(this._pointers[t]==e.pointerId)return!0;return!1}_trackPointer(e){let t=this._pointerPositions[e.pointerId];t===void 0&&(t=new tt,this._pointerPositions[e.pointerId]=t),t.set(e.pageX,e.pageY)}_getSecondPointerPosition(e){const t=e.pointerId===this._pointers[0]?this._pointers[1]:this._pointers[0];return this._pointerPositions[t]}_customWheelEvent(e){const t=e.deltaMode,n={clientX:e.clientX,clientY:e.clientY,deltaY:e.deltaY};switch(t){case 1:n.deltaY*=16;break;case 2:n.deltaY*=100;break}return e.ctrlKey&&!this._controlActive&&(n.deltaY*=10),n}}function $S(i){this.enabled!==!1&&(this._pointers.length===0&&(this.domElement.setPointerCapture(i.pointerId),this.domElement.addEventListener("pointermove",this._onPointerMove),this.domElement.addEventListener("pointerup",this._onPointerUp)),!this._isTrackingPointer(i)&&(this._addPointer(i),i.pointerType==="touch"?this._onTouchStart(i):this._onMouseDown(i)))}function jS(i){this.enabled!==!1&&(i.pointerType==="touch"?this._onTouchMove(i):this._onMouseMove(i))}function KS(i){switch(this._removePointer(i),this._pointers.length){case 0:this.domElement.releasePointerCapture(i.pointerId),this.domElement.removeEventListener("pointermove",this._onPointerMove),this.domElement.removeEventListener("pointerup",this._onPointerUp),this.dispatchEvent(up),this.state=Ct.NONE;break;case 1:const e=this._pointers[0],t=this._pointerPositions[e];this._onTouchStart({pointerId:e,pageX:t.x,pageY:t.y});break}}function ZS(i){let e;switch(i.button){case 0:e=this.mouseButtons.LEFT;break;case 1:e=this.mouseButtons.MIDDLE;break;case 2:e=this.mouseButtons.RIGHT;break;default:e=-1}switch(e){case pr.DOLLY:if(this.enableZoom===!1)return;this._handleMouseDownDolly(i),this.state=Ct.DOLLY;break;case pr.ROTATE:if(i.ctrlKey||i.metaKey||i.shiftKey){if(this.enablePan===!1)return;this._handleMouseDownPan(i),this.state=Ct.PAN}else{if(this.enableRotate===!1)return;this._handleMouseDownRotate(i),this.state=Ct.ROTATE}break;case pr.PAN:if(i.ctrlKey||i.metaKey||i.shiftKey){if(this.enableRotate===!1)return;this._handleMouseDownRotate(i),this.state=Ct.ROTATE}else{if(this.enablePan===!1)return;this._handleMouseDownPan(i),this.state=Ct.PAN}break;default:this.state=Ct.NONE}this.state!==Ct.NONE&&this.dispatchEvent(vu)}function JS(i){switch(this.state){case Ct.ROTATE:if(this.enableRotate===!1)return;this._handleMouseMoveRotate(i);break;case Ct.DOLLY:if(this.enableZoom===!1)return;this._handleMouseMoveDolly(i);break;case Ct.PAN:if(this.enablePan===!1)return;this._handleMouseMovePan(i);break}}function QS(i){this.enabled===!1||this.enableZoom===!1||this.state!==Ct.NONE||(i.preventDefault(),this.dispatchEvent(vu),this._handleMouseWheel(this._customWheelEvent(i)),this.dispatchEvent(up))}function ey(i){this.enabled!==!1&&this._handleKeyDown(i)}function ty(i){switch(this._trackPointer(i),this._pointers.length){case 1:switch(this.touches.ONE){case hr.ROTATE:if(this.enableRotate===!1)return;this._handleTouchStartRotate(i),this.state=Ct.TOUCH_ROTATE;break;case hr.PAN:if(this.enablePan===!1)return;this._handleTouchStartPan(i),this.state=Ct.TOUCH_PAN;break;default:this.state=Ct.NONE}break;case 2:switch(this.touches.TWO){case hr.DOLLY_PAN:if(this.enableZoom===!1&&this.enablePan===!1)return;this._handleTouchStartDollyPan(i),this.state=Ct.TOUCH_DOLLY_PAN;break;case hr.DOLLY_ROTATE:if(this.enableZoom===!1&&this.enableRotate===!1)return;this._handleTouchStartDollyRotate(i),this.state=Ct.TOUCH_DOLLY_ROTATE;break;default:this.state=Ct.NONE}break;default:this.state=Ct.NONE}this.state!==Ct.NONE&&this.dispatchEvent(vu)}function ny(i){switch(this._trackPointer(i),this.state){case Ct.TOUCH_ROTATE:if(this.enableRotate===!1)return;this._handleTouchMoveRotate(i),this.update();break;case Ct.TOUCH_PAN:if(this.enablePan===!1)return;this._handleTouchMovePan(i),this.update();break;case Ct.TOUCH_DOLLY_PAN:if(this.enableZoom===!1&&this.enablePan===!1)return;this._handleTouchMoveDollyPan(i),this.update();break;case Ct.TOUCH_DOLLY_ROTATE:if(this.enableZoom===!1&&this.enableRotate===!1)return;this._handleTouchMoveDollyRotate(i),this.update();break;default:this.state=Ct.NONE}}function iy(i){this.enabled!==!1&&i.preventDefault()}function sy(i){i.key==="Control"&&(this._controlActive=!0,this.domElement.getRootNode().addEventListener("keyup",this._interceptControlUp,{passive:!0,capture:!0}))}function ry(i){i.key==="Control"&&(this._controlActive=!1,this.domElement.getRootNode().removeEventListener("keyup",this._interceptControlUp,{passive:!0,capture:!0}))}const Vc=Math.PI/180;let Qr=null;class xu{note=I("div",{class:"note"});element=I("div",{class:"scene"},this.note);scene=new $_;camera=new si(38,4/3,.01,50);ok;renderer=null;controls=null;asked=!1;constructor(e,t=[1.6,1.1,2.2]){this.element.setAttribute("role","img"),this.element.setAttribute("aria-label",e),this.camera.position.set(...t);try{if(this.renderer=new XS({antialias:Qr!==!0,alpha:!0,powerPreference:"low-power"}),Qr===null){const s=this.renderer.getContext(),r=s.getExtension("WEBGL_debug_renderer_info");Qr=r?/swiftshader|llvmpipe|software/i.test(String(s.getParameter(r.UNMASKED_RENDERER_WEBGL))):!1}this.renderer.setPixelRatio(Qr?1:Math.min(2,window.devicePixelRatio)),this.element.prepend(this.renderer.domElement),this.controls=new YS(this.camera,this.renderer.domElement),this.controls.addEventListener("change",()=>this.ask()),new ResizeObserver(()=>this.ask()).observe(this.element)}catch{this.note.textContent="This browser draws no 3D here (WebGL is off); everything is on the page in numbers as well."}this.ok=this.renderer!==null,this.scene.add(new r0(16777215,1.6));const n=new s0(16777215,1.9);n.position.set(1.5,3,2),this.scene.add(n)}ask(){this.asked||!this.renderer||(this.asked=!0,requestAnimationFrame(()=>{this.asked=!1,this.render()}))}render(){const e=this.element.clientWidth,t=this.element.clientHeight;if(!this.renderer||!e||!t)return;const n=this.renderer.getSize(new tt);(n.x!==e||n.y!==t)&&(this.renderer.setSize(e,t,!1),this.camera.aspect=e/t,this.camera.updateProjectionMatrix()),this.renderer.render(this.scene,this.camera)}}function fa(i,e=1){return new np({color:new ot(i),transparent:e<1,opacity:e})}function yn(i,e,t,n){const s=e.clone().sub(i),r=new _n(new Io(t,t,s.length(),20),fa(n));return r.position.copy(i).addScaledVector(s,.5),r.quaternion.setFromUnitVectors(new z(0,1,0),s.normalize()),r}class hp extends xu{first=new ii;second=new ii;probe=new ii;sky=null;geometry="";measured=new Set;cells=0;constructor(){super("positioner with device and probe"),this.controls?.target.set(0,-.05,.35),this.controls?.update()}build(e){for(const c of[...this.scene.children])(c instanceof ii||c instanceof lf||c instanceof ha||c instanceof _n)&&this.scene.remove(c);const t=Dn(),n=t.quiet;this.geometry=e.geometry,this.first=new ii,this.second=new ii,this.probe=new ii;const s=new lf(2.4,12,t.grid,t.grid);s.position.set(0,-.62,.4),this.scene.add(s);const r=e.geometry==="roll-over-azimuth",a=e.geometry==="azimuth-over-elevation",[o,l]=a?[this.second,this.first]:[this.first,this.second];o.add(l),this.scene.add(o),r?(o.add(yn(new z(0,-.6,0),new z(0,-.5,0),.16,n),yn(new z(0,-.52,-.02),new z(0,-.52,-.42),.035,n),yn(new z(0,-.52,-.4),new z(0,0,-.4),.035,n),yn(new z(0,0,-.46),new z(0,0,-.3),.055,n)),l.add(yn(new z(0,0,-.3),new z(0,0,-.06),.03,t.co))):a?(this.scene.add(yn(new z(.42,-.62,0),new z(.42,0,0),.03,n),yn(new z(-.42,-.62,0),new z(-.42,0,0),.03,n)),o.add(yn(new z(-.42,0,0),new z(-.4,-.36,0),.025,n),yn(new z(.42,0,0),new z(.4,-.36,0),.025,n),yn(new z(-.4,-.36,0),new z(.4,-.36,0),.03,n)),l.add(yn(new z(0,-.35,0),new z(0,-.06,0),.03,t.co))):(o.add(yn(new z(0,-.62,0),new z(0,-.5,0),.16,n),yn(new z(-.3,-.5,0),new z(.3,-.5,0),.03,n),yn(new z(-.3,-.5,0),new z(-.3,0,0),.03,n),yn(new z(.3,-.5,0),new z(.3,0,0),.03,n)),l.add(yn(new z(-.3,0,0),new z(.3,0,0),.018,t.co))),this.addDevice(l,e),this.addProbe(e),this.addSky(l,e.directions),this.turn(new Array(e.axes.length).fill(0),e.axes)}addDevice(e,t){const n=.001/t.range_m,s=Math.max(...t.size_mm)*n,r=Math.max(1,.16/s),a=t.size_mm.map(f=>Math.max(.012,f*n*r)),o=new _n(new Pr(a[0],a[1],a[2]),fa(Dn().other));o.position.set(t.offset_mm[0]*n,t.offset_mm[1]*n,t.offset_mm[2]*n),e.add(o);const l=new z(0,0,0),c=Dn();for(const[f,u]of[[new z(1,0,0),c.cross],[new z(0,1,0),c.quiet],[new z(0,0,1),c.co]])e.add(new sa(f,l,.24,u,.05,.03));this.note.textContent=`device's own axes: x orange, y grey, z blue (boresight)${r>1?`; the device is drawn ${r.toFixed(1)} times larger`:""}`}addProbe(e){const t=Dn(),n=new _n(new No(.05,.14,24,1,!0),fa(t.ink));n.rotation.x=Math.PI/2,n.position.z=.07,this.probe.add(n,new sa(new z(1,0,0),new z(0,0,-.02),.2,t.cross,.05,.035)),e.ports===2&&this.probe.add(new sa(new z(0,1,0),new z(0,0,-.02),.2,t.co,.05,.035)),this.probe.position.set(0,0,1);const s=new ha(new vn().setFromPoints([new z(0,0,0),new z(0,0,.97)]),new xa({color:t.quiet}));this.scene.add(this.probe,s)}addSky(e,t){this.cells=t.length/3;const n=new Float32Array(t.map(a=>.33*a)),s=new Float32Array(t.length),r=new vn;r.setAttribute("position",new zn(n,3)),r.setAttribute("color",new zn(s,3)),this.sky=new Q_(r,new Qd({size:.013,vertexColors:!0})),e.add(this.sky),this.measured.clear(),this.paint(-1)}paint(e,t=this.measured){if(!this.sky)return;this.measured=new Set(t);const n=Dn(),s=new ot(n.grid),r=new ot(n.co),a=new ot(n.cross),o=this.sky.geometry.getAttribute("color");for(let l=0;l<this.cells;l++){const c=l===e?a:this.measured.has(l)?r:s;o.setXYZ(l,c.r,c.g,c.b)}o.needsUpdate=!0,this.ask()}turn(e,t){const n=s=>(e[t.indexOf(s)]??0)*Vc;this.geometry==="roll-over-azimuth"?(this.first.rotation.y=-n("azimuth"),this.second.rotation.z=-n("roll")):(this.first.rotation.y=-n("azimuth"),this.second.rotation.x=n("elevation")),this.probe.rotation.z=n("probe"),this.ask()}}class ay extends xu{arrows=new ii;ball;constructor(e){super("sphere of directions in the device frame",[1.5,1.2,2.4]);const t=Dn();this.ball=new _n(new bo(1,48,32),fa(t.band,.28)),this.scene.add(this.ball,this.arrows);for(let l=0;l<12;l++)this.scene.add(this.circle(c=>Of(c*2*Math.PI,l*Math.PI/12),t.grid));for(let l=1;l<6;l++)this.scene.add(this.circle(c=>Of(l*Math.PI/6,c*2*Math.PI),t.grid));const n=new z(0,0,0);for(const[l,c]of[[new z(1,0,0),t.cross],[new z(0,1,0),t.quiet],[new z(0,0,1),t.co]])this.scene.add(new sa(l,n,1.3,c,.09,.05));this.note.textContent="drag on the sphere; x orange, y grey, z blue (boresight). Empty space turns the view.";const s=this.renderer?.domElement;if(!s)return;const r=new o0;let a=!1;const o=l=>{const c=s.getBoundingClientRect();r.setFromCamera(new tt((l.clientX-c.left)/c.width*2-1,-((l.clientY-c.top)/c.height)*2+1),this.camera);const f=r.intersectObject(this.ball)[0];if(!f)return!1;const u=f.point.normalize();return e(Math.acos(Math.max(-1,Math.min(1,u.z)))/Vc,Math.atan2(u.y,u.x)/Vc),!0};s.addEventListener("pointerdown",l=>{a=o(l),a&&this.controls&&(this.controls.enabled=!1,s.setPointerCapture(l.pointerId))},{capture:!0}),s.addEventListener("pointermove",l=>{a&&o(l)}),s.addEventListener("pointerup",()=>{a=!1,this.controls&&(this.controls.enabled=!0)})}circle(e,t){const n=Array.from({length:73},(s,r)=>e(r/72));return new ha(new vn().setFromPoints(n),new xa({color:t}))}show(e,t){this.arrows.clear();const n=new z(...e),s=new _n(new bo(.035,20,14),fa(Dn().ink));s.position.copy(n),this.arrows.add(s);for(const r of t)this.arrows.add(new sa(new z(...r.way),n,r.length??.45,r.colour,.1,.06));this.ask()}}function Of(i,e){return new z(Math.sin(i)*Math.cos(e),Math.sin(i)*Math.sin(e),Math.cos(i))}class fp extends xu{mesh=null;directions=new Float32Array;rows=0;columns=0;constructor(e="pattern as a surface"){super(e,[1.35,1,1.5])}shape(e,t,n,s){this.mesh&&(this.scene.remove(this.mesh),this.mesh.geometry.dispose()),this.rows=e,this.columns=t,this.directions=Float32Array.from(n);const r=new vn,a=[];r.setAttribute("position",new zn(new Float32Array(this.directions.length),3)),r.setAttribute("color",new zn(new Float32Array(this.directions.length),3));const o=Qr&&e*t>3e4?2:1;for(let l=0;l+o<e;l+=o)for(let c=0;c<t;c+=o){if(c+o>=t&&!s)continue;const f=c+o>=t?0:c+o,u=l*t+c,h=l*t+f,p=u+o*t,v=h+o*t;a.push(u,p,h,h,p,v)}r.setIndex(a),this.mesh=new _n(r,new np({vertexColors:!0,side:2,flatShading:!0})),this.mesh.frustumCulled=!1,this.scene.add(this.mesh)}level(e,t){if(!this.mesh||e.length!==this.rows*this.columns)return;const n=this.mesh.geometry.getAttribute("position"),s=this.mesh.geometry.getAttribute("color"),r=n.array,a=s.array,o=this.directions;for(let l=0;l<e.length;l++){const c=e[l],f=c!==null&&c===c,u=f?Math.max(.02,1-c/t):0;r[3*l]=o[3*l]*u,r[3*l+1]=o[3*l+1]*u,r[3*l+2]=o[3*l+2]*u;const h=3*Math.max(0,su(f?c:null,t,0));a[3*l]=(rs[h]/255)**2.2,a[3*l+1]=(rs[h+1]/255)**2.2,a[3*l+2]=(rs[h+2]/255)**2.2}n.needsUpdate=!0,s.needsUpdate=!0,this.ask()}}const ft={me:null,campaign:""};function wr(i){const e=["view","operate","configure"];return ft.me!==null&&e.indexOf(ft.me.role)>=e.indexOf(i)}function Bo(i){return i instanceof kf?i.faults.join(`
`):i instanceof TypeError?"The server does not answer; is colure serve still running?":String(i)}function Ma(i){return async e=>{try{const t=await e;return qe(i),t}catch(t){qe(i,Bo(t));return}}}function oy(){const i=Ut("STOP",()=>void Bt("/api/stop").catch(t=>{i.title=Bo(t)}),"stop","brake the axes and end the scan (Ctrl + .)"),e=t=>{i.disabled=!t.running};return Ai.watch({status:e}),window.addEventListener("keydown",t=>{t.ctrlKey&&t.key==="."&&i.click()}),i}function ly(){const i=I("span",{class:"row"}),e=()=>{const n=ft.me?.mine===!0,s=Ai.status.lease,r=I("span",{class:`chip${n?" hot":""}`},n?"you may move the axes":s?`${s} may move the axes`:"nobody may move the axes");qe(i,r,wr("operate")&&(n?Ut("give back",()=>void t(!1)):Ut("take motion lease",()=>void t(!0))))},t=async n=>{try{ft.me=await Bt("/api/lease",{hold:n})}catch(s){i.title=Bo(s),ft.me=await Gf()}e()};return window.setInterval(()=>{ft.me?.mine&&t(!0)},1e4),Ai.watch({status:n=>{ft.me&&ft.me.mine!==(n.lease===ft.me.name)&&(ft.me.mine=n.lease===ft.me.name),e()}}),e(),i}const Bl=-50,dp={flip:"flip test","beam-coarse":"beam search, coarse","beam-fine":"beam search, fine"};function cy(){const i=I("p",{class:"faults",attrs:{role:"alert"}}),e=Ma(i),t=I("div",{class:"large"}),n=I("div",{class:"big"}),s=I("div",{class:"large"}),r=I("p",{class:"quiet"}),a=I("p",{class:"mono"}),o=I("p",{class:"mono"}),l=I("ul",{class:"words",attrs:{"aria-live":"polite"}}),c=I("i",{class:"done"}),f=new ia("levels measured so far"),u=new fp("levels measured so far"),h=new vo,p=new vo,v=new hp;let M="";const m=I("div",{class:"row"}),d=I("input",{attrs:{value:"first",pattern:"[A-Za-z0-9_-]{1,80}","aria-label":"name of the run"}});let T="";const A=()=>void fo(d.value,e),b=_=>()=>void e(Bt(`/api/${_}`,{run:Ai.status.run,sequence:Ai.status.sequence})),N=_=>{const y=ft.me?.mine===!0,F=`${_.state}${y}${_.running}`;if(F===T)return;T=F;const k=y?"":wr("operate")?"take the motion lease first (top right)":"this session may only watch",q=Ut("start or go on",A,"main",k),H=Ut("pause",b("pause"),"",k),Y=Ut("resume",b("resume"),"",k);q.disabled=!y||_.running,H.disabled=!y||_.state!=="running",Y.disabled=!y||_.state!=="paused",qe(m,!_.running&&I("label",{class:"row"},"run",d),q,H,Y,k&&I("span",{class:"small quiet"},k))},R=_=>{N(_);const y=_.total?(_.measured??0)/_.total:0;qe(t,_.state),qe(n,_.total?`${(100*y).toFixed(y<.1?1:0)} %`:"-"),qe(s,_.running&&_.left_s!==void 0?`${po(_.left_s)} left`:_.text??""),qe(r,_.total?`${_.measured} of ${_.total} points of run ${_.run}${_.kind&&_.kind!=="scan"?` (${dp[_.kind]})`:""}; every one is on disk`:"No scan yet. Start one here, or close this page: a scan does not need it."),c.style.width=`${100*y}%`,qe(a,_.axes&&_.position_deg?.length?_.axes.map((H,Y)=>`${H} ${St(_.position_deg[Y],2)}°`).join("   "):"");const F=_.campaign??ft.campaign;M!==F?(M=F,e(Bt("/api/motion",{campaign:F})).then(H=>{H&&v.build(H)})):_.axes&&_.angles_deg?.length&&v.turn(_.angles_deg,_.axes),qe(o,_.level_db===null||_.level_db===void 0?"":`last sweep ${St(_.level_db,1)} dB (S21)`),qe(l,...[..._.words??[]].reverse().slice(0,60).map(H=>I("li",{class:H.kind},I("time",{},new Date(1e3*H.at).toLocaleTimeString()),H.text)));const k=Dn(),q=_.ties??[];q.length&&h.draw(q.map(H=>H[0]/60),[{name:"level / dB",values:q.map(H=>H[1]),colour:k.co,points:!0},{name:"phase / 10 deg",values:q.map(H=>H[2]/10),colour:k.cross,dash:[5,3],points:!0}],{x:"minutes of the run",y:"change of the ties",height:190})};let D=null;const C=Ai.watch({status:R,grid:_=>{D={rows:_.rows,columns:_.columns,names:[_.row_name,_.column_name]},u.shape(_.rows.length,_.columns.length,_.directions,_.column_name==="phi")},frame:_=>{if(!D)return;const y=D;f.draw(y.rows,y.columns,_,{rowName:`${y.names[0]} / deg`,columnName:`${y.names[1]} / deg`,low:Bl,high:0,unit:"dB"}),u.level(_,Bl);const F=uy(_,y.columns.length),k=y.rows.map((q,H)=>{const Y=_[H*y.columns.length+F];return Number.isNaN(Y)?null:Y});p.draw(y.rows,[{name:`${y.names[1]} ${St(y.columns[F],0)}°`,values:k,colour:Dn().co}],{x:`${y.names[0]} / deg`,y:"dB below the highest",height:190,range:[Bl-10,2]})}});return{title:"Scan",element:I("main",{},I("div",{class:"columns scan"},I("section",{class:"stack"},I("div",{class:"card"},t,n,I("div",{class:"bar"},c),s,r,m,i),I("div",{class:"card"},I("h2",{},"Now"),a,o),I("div",{class:"card"},I("h2",{},"What happened"),l)),I("section",{class:"stack"},I("div",{class:"card"},I("h2",{},"Measured so far, both polarizations"),f.element),I("div",{class:"card"},I("h2",{},"Cut through the strongest column"),p.element)),I("section",{class:"stack"},I("div",{class:"card"},u.element),I("div",{class:"card"},v.element),I("div",{class:"card"},I("h2",{},"Drift of the ties"),h.element)))),leave:C}}function uy(i,e){let t=0,n=0;return i.forEach((s,r)=>{!Number.isNaN(s)&&(r===0||s>t||Number.isNaN(t))&&(t=s,n=r)}),n%e}async function fo(i,e,t="scan"){const n=await e(da(`/api/cautions/${ft.campaign}`));return n?new Promise(s=>{const r=I("input",{attrs:{type:"checkbox"},on:{change:()=>{o.disabled=!r.checked}}}),a=I("input",{attrs:{type:"checkbox"}}),o=Ut("start",()=>{l.close();const c={campaign:ft.campaign,run:i,sequence:Ai.status.sequence,cautions_read:!0,kind:t,home:a.checked};e(Bt("/api/start",c)).then(f=>s(f!==void 0))},"main");o.disabled=!0;const l=I("dialog",{on:{close:()=>{l.remove(),s(!1)}}},I("h1",{},t==="scan"?"Before anything moves":`Before anything moves: ${dp[t]}`),I("ul",{},...n.map(c=>I("li",{},c))),I("p",{},I("label",{},r," Everyone is clear of the axes and the cautions are understood.")),I("p",{class:"small"},I("label",{},a," Home the axes first (needed after a fault of the motion).")),I("div",{class:"row"},Ut("not now",()=>l.close()),I("span",{class:"spring"}),o));document.body.append(l),l.showModal()}):!1}function hy(){const i=I("p",{class:"faults",attrs:{role:"alert"}}),e=Ma(i),t=I("div"),n=I("div",{class:"stack"}),s=I("p",{class:"quiet"}),r=I("input",{attrs:{value:"flip",pattern:"[A-Za-z0-9_-]{1,80}","aria-label":"name of the flip test's run"}}),a=Ut("talk to every instrument",()=>void(async()=>{a.disabled=!0,qe(t,I("p",{class:"quiet"},"Nothing moves."));const T=await e(ea("/api/check",{campaign:ft.campaign,run:"check"}));a.disabled=!1,qe(t,T&&Yn(["what","","found"],T.map(A=>[A.what,I("span",{class:A.good?"good":"bad"},A.good?"ready":"not ready"),A.found])))})()),o=async()=>{const T=await e(Bt("/api/flip",{campaign:ft.campaign,run:r.value}));T&&qe(n,fy(T.numbers),...T.sentences.map(A=>I("p",{},A)))},l=Ut("measure both sides",()=>void fo(r.value,e,"flip"),"main","needs the motion lease"),c=I("p",{class:"quiet"}),f=I("input",{attrs:{value:"beam",pattern:"[A-Za-z0-9_-]{1,70}","aria-label":"name of the beam search"}}),u=I("div"),h=Ut("look coarsely",()=>void fo(f.value,e,"beam-coarse"),"main","needs the motion lease"),p=Ut("look finely",()=>void fo(f.value,e,"beam-fine"),"main","needs the motion lease, and a coarse look"),v=async()=>{const T=await e(Bt("/api/beam",{campaign:ft.campaign,run:f.value}));T&&qe(u,...T.sentences.map(A=>I("p",{},A)),Ut("set as home",()=>void(async()=>{const A=await e(Bt("/api/home",{campaign:ft.campaign,run:f.value}));A&&qe(c,A.join("; "))})(),"","azimuth/elevation positioners: the beam's readouts become the axes' zeros in chamber.toml"))};let M=!1;const m=Ai.watch({status:T=>{const A=M&&!T.running&&T.state==="done",b=`${T.state}: ${T.measured??0} of ${T.total??0} points`;T.kind==="flip"&&(qe(s,b),A&&o()),T.kind?.startsWith("beam")&&T.running&&qe(c,`${T.kind==="beam-coarse"?"coarse":"fine"} look, ${b}`),A&&T.kind==="beam-coarse"&&qe(c,"The coarse look is done; the fine one goes where it was strongest."),A&&T.kind==="beam-fine"&&v(),M=T.running;for(const N of[l,h,p])N.disabled=T.running||ft.me?.mine!==!0}});return{title:"Align",element:I("main",{},i,I("div",{class:"columns two steps"},I("section",{class:"card"},I("h2",{},"Connect"),I("p",{},"Axes, analyzer, switch and interlock answer before anything is touched. Homing is part of a start: tick it there after a fault."),a,t),I("section",{class:"card"},I("h2",{},"Level, laser or pointer"),I("p",{},"Set the roll axis level and the probe on its line with the means you have; the readings go into chamber.toml under [alignment] with their uncertainty, and count as what was known beforehand."),I("p",{class:"small"},"Alignment lasers: class 2 or lower, never towards eyes, off before the run.")),I("section",{class:"card"},I("h2",{},"Flip test"),I("p",{},"One cut from both sides: theta, and -theta with the roll at 180 deg. A device cannot tell them apart; what differs is the range: a zero that is off, axes that miss each other. A few minutes."),I("div",{class:"row"},I("label",{class:"row"},"run",r),l,Ut("read a finished one",()=>void o())),s,n),I("section",{class:"card"},I("h2",{},"Beam search"),I("p",{},"Steps of half a beam over the front, then a fine look where it was strongest: where the beam is, before hours are spent. On azimuth and elevation its readouts can become the axes' zeros."),I("div",{class:"row"},I("label",{class:"row"},"run",f),h,p,Ut("read a finished one",()=>void v())),c,u),I("section",{class:"card"},I("h2",{},"What only a scan shows"),I("p",{},"Whole spheres find the remaining misalignments by themselves: roll-axis tilt, both offsets, the probe's roll. They are taken out of the data and listed in the run's findings with what to turn.")))),leave:m}}function fy(i){const e="http://www.w3.org/2000/svg",t=(h,p,v="")=>{const M=document.createElementNS(e,h);for(const[m,d]of Object.entries(p))M.setAttribute(m,String(d));return M.textContent=v,M},n=t("svg",{viewBox:"0 0 420 190",role:"img","aria-label":"range from above with what to turn and shift"}),s=Math.abs(i.theta_zero_deg)>i.theta_zero_expanded_deg,r=Math.abs(i.axes_offset_mm)>i.axes_offset_expanded_mm,a="currentColor",o="var(--cross)",l=i.axes_offset_mm>0?1:-1,c=i.theta_zero_deg>0?1:0;n.append(t("line",{x1:90,y1:95,x2:385,y2:95,stroke:a,"stroke-dasharray":"4 4",opacity:.5}),t("circle",{cx:90,cy:95,r:46,fill:"none",stroke:a}),t("circle",{cx:90,cy:95,r:4,fill:a}),t("line",{x1:50,y1:95-12*l*(r?1:0),x2:130,y2:95-12*l*(r?1:0),stroke:"var(--co)","stroke-width":5}),t("path",{d:"M385 82 L410 95 L385 108 Z",fill:a}),t("text",{x:352,y:72,fill:a,"font-size":13},"probe"),t("text",{x:20,y:18,fill:a,"font-size":13},"from above; the roll axis in blue-green")),s&&n.append(t("path",{d:c?"M90 34 A61 61 0 0 1 143 65":"M90 156 A61 61 0 0 0 143 125",fill:"none",stroke:o,"stroke-width":3,"marker-end":"url(#tip)"}),t("text",{x:150,y:c?50:150,fill:o,"font-size":14},`turn the azimuth zero ${St(Math.abs(i.theta_zero_deg),3)}° towards ${i.theta_zero_deg>0?"negative":"positive"} readouts`)),r&&n.append(t("path",{d:`M90 95 v${l>0?40:-40}`,stroke:o,"stroke-width":3,"marker-end":"url(#tip)"}),t("text",{x:104,y:l>0?132:66,fill:o,"font-size":14},`shift the roll axis ${St(Math.abs(i.axes_offset_mm),3)} mm`)),!s&&!r&&n.append(t("text",{x:150,y:40,fill:"var(--good)","font-size":14},"nothing to do within the uncertainty"));const f=t("marker",{id:"tip",viewBox:"0 0 8 8",refX:6,refY:4,markerWidth:6,markerHeight:6,orient:"auto-start-reverse"});f.append(t("path",{d:"M0 0 L8 4 L0 8 Z",fill:o}));const u=t("defs",{});return u.append(f),n.append(u),n}function pp(){const i=I("p",{class:"faults"}),e=I("div",{class:"stack"}),t=Ma(i);let n=40,s=25,r=0,a=0,o=!1,l=!1;const c=[I("input",{attrs:{type:"number",min:0,max:180,step:1,"aria-label":"theta in degrees"}}),I("input",{attrs:{type:"number",min:-180,max:360,step:1,"aria-label":"phi in degrees"}})],f=new ay((d,T)=>{n=Math.round(10*d)/10,s=Math.round(10*T)/10,u()});c.forEach((d,T)=>d.addEventListener("input",()=>{d.value!==""&&(T?s=Number(d.value):n=Number(d.value),u())}));const u=async()=>{if(o){l=!0;return}o=!0;const d=await t(Bt("/api/tutor",{theta_deg:n,phi_deg:s}));o=!1,d&&p(d),l&&(l=!1,await u())};let h=null;const p=d=>{h=d,document.activeElement!==c[0]&&(c[0].value=String(d.theta)),document.activeElement!==c[1]&&(c[1].value=String(d.phi));const T=Dn(),A=d.bases[r],b=d.positioners[a],N=b.ways[0];f.show(d.direction,[{way:A.first,colour:T.co},{way:A.second,colour:T.band},{way:N.fixed,colour:T.quiet,length:.7},{way:N.following,colour:T.cross,length:.62}]),qe(e,Yn(["this direction","angles / deg","formula"],[["theta, phi",`${St(d.theta,1)}, ${St(d.phi,1)}`,I("code",{},"(sin th cos ph, sin th sin ph, cos th)")],["azimuth, elevation (pole y)",`${St(d.azimuth,1)}, ${St(d.elevation,1)}`,I("code",{},"(sin az cos el, sin el, cos az cos el)")],["alpha, epsilon (pole x)",`${St(d.alpha,1)}, ${St(d.epsilon,1)}`,I("code",{},"(sin al, cos al sin ep, cos al cos ep)")]]),Yn(["components there","first","second"],d.bases.map(R=>[I("span",{attrs:{title:R.formula}},R.name),I("code",{},Bf(R.first)),I("code",{},Bf(R.second))])),I("p",{class:"small mono"},A.formula),Yn(["positioner","readouts / deg","fixed probe sees slant","probe roll that follows"],d.positioners.map(R=>[R.name,R.axes.map(D=>`${D} ${St(R.ways[0].readouts[D],1)}`).join(", "),`${St(R.ways[0].slant_fixed,1)}°`,`${St(R.ways[0].probe_roll,1)}°`])),I("p",{class:"small"},b.pole))},v=[["0","theta and phi"],["1","Ludwig 2, pole y"],["2","Ludwig 2, pole x"],["3","Ludwig 3"]],M=[["0","roll over azimuth"],["1","azimuth over elevation"],["2","elevation over azimuth"]];return u(),{element:I("div",{},I("h2",{},"Coordinates, by hand"),I("p",{class:"small"},"Drag the dot. Blue-green: the two unit vectors of the chosen components. Grey: what a probe that stands still sees, as an arrow on the device. Orange: what a probe sees that follows the roll. Near boresight watch theta and phi spin while Ludwig 3 stays."),I("div",{class:"row"},I("label",{class:"row"},"theta",c[0],"deg"),I("label",{class:"row"},"phi",c[1],"deg"),Cs("arrows",v,"0",d=>{r=Number(d),h&&p(h)}),Cs("positioner",M,"0",d=>{a=Number(d),h&&p(h)})),f.element,i,e),leave:()=>{}}}function Bf(i){return`(${i.map(e=>(Object.is(e,-0)?0:e).toFixed(3)).join(", ")})`}const dy=[["ludwig-3","Ludwig 3"],["theta-phi","theta and phi"],["ludwig-2-az-over-el","Ludwig 2, pole y"],["ludwig-2-el-over-az","Ludwig 2, pole x"],["circular","circular"]],py=[["theta-phi","theta, phi"],["az-el","azimuth, elevation"],["alpha-epsilon","alpha, epsilon"],["u-v","direction cosines u, v"]],Yr=50;function my(){const i=I("p",{class:"faults",attrs:{role:"alert"}}),e=Ma(i),t=I("div",{class:"runs"}),n=I("div"),s=I("div",{class:"stack"}),r=I("div",{class:"stack"}),a={run:"",state:null,off:[],frequency:0,plane:0,basis:"ludwig-3",coordinates:"theta-phi",component:"total",beside:[],difference:!1,round:!1};let o=null,l="Cuts",c=0,f=[];const u=()=>({campaign:ft.campaign,run:a.run,state:a.state,off:a.off}),h=()=>({campaign:ft.campaign,run:a.run}),p=async(C,S=null,_=[])=>{Object.assign(a,{run:C,state:S,off:_,beside:a.beside.filter(F=>F!==C)});for(const F of t.querySelectorAll("button"))F.setAttribute("aria-pressed",String(F.dataset.run===C));qe(s,I("p",{class:"quiet"},"The run is being processed; the first time takes some seconds."));const y=await e(Bt("/api/overview",u()));if(!y){qe(s);return}o=y,a.frequency=Math.min(a.frequency||Math.floor(y.frequency_hz.length/2),y.frequency_hz.length-1),v(),R(),await m()},v=()=>{if(!o)return;const C=o.frequency_hz,S=I("strong",{class:"mono"},zl(C[a.frequency]));qe(n,I("div",{class:"tabs",attrs:{role:"tablist"}},...["Cuts","Map","3D","Aperture","Impulse","Recipe","Findings","Coordinates","Report"].map(_=>I("button",{on:{click:()=>{l=_,v(),m()}},attrs:{type:"button",role:"tab","aria-selected":String(l===_)}},_))),I("div",{class:"row"},C.length>1&&kl("frequency",0,C.length-1,1,a.frequency,_=>{a.frequency=_,qe(S,zl(C[_])),R(),M()}),S,o.states.length>1&&Cs("state",o.states.map(_=>[_,_]),a.state??o.states[0],_=>void p(a.run,_,a.off)),["Cuts","Map","3D"].includes(l)&&Cs("components",dy,a.basis,_=>{a.basis=_,M()})))},M=Wf(()=>void m(),80),m=async()=>{const C=++c,S=T[l],_=await S();C===c&&_&&qe(s,..._),C===c&&d.splice(0).forEach(y=>y())},d=[],T={Cuts:async()=>{const C={...u(),frequency:a.frequency,plane_deg:a.plane,basis:a.basis},S=await e(Bt("/api/cut",C));if(!S)return;const _=Dn(),y=[{name:S.names[0],values:S.first,colour:_.co},{name:S.names[1],values:S.second,colour:_.cross,dash:[6,3]}],F=o?.specification&&!a.off.length?await e(Bt("/api/masks",C)):[];for(const K of F??[])y.push({name:`mask: ${K.name}`,values:K.level,colour:_.ink,width:1.2});const k=[],q=[_.other,_.good,_.band];for(const[K,ae]of a.beside.entries()){const oe=await e(Bt("/api/cut",{...C,run:ae,state:null,off:[]}));oe&&y.push({name:`${ae}: ${oe.names[0]}`,values:oe.first,colour:q[K%q.length]})}if(a.difference&&a.beside.length){const K=await e(Bt("/api/difference",{...C,off:[],other:a.beside[0]}));K&&(y.push({name:`difference to ${a.beside[0]}, matched`,values:K.total,colour:_.quiet,width:1.1}),k.push(I("p",{class:"small"},`${a.beside[0]} was turned by ${K.rotation_deg.map(ae=>St(ae,3)).join(", ")}°, moved by ${K.shift_mm.map(ae=>St(ae,3)).join(", ")} mm and raised by ${St(K.level_db,3)} dB; what is left is ${St(K.difference_db,1)} dB below the peak (rms).`)))}const H=new vo,Y=I("canvas",{class:"map",attrs:{role:"img","aria-label":"polar cut"}}),j=Math.ceil(S.peak_dbi/5)*5;return d.push(()=>{a.round?Lg(Y,S.angle_deg,y,j,Yr+10):H.draw(S.angle_deg,y,{x:"angle from the peak / deg",y:"gain / dBi",height:380,range:[j-Yr-10,j+2],xRange:[-180,180]})}),[I("div",{class:"row"},kl("plane, from E towards H",0,175,5,a.plane,K=>{a.plane=K,M()},"°"),Ut("E",()=>{a.plane=0,M()}),Ut("H",()=>{a.plane=90,M()}),Ut(a.round?"rectangular":"polar",()=>{a.round=!a.round,m()}),...A()),a.round?Y:H.element,...k,Yn(["peak / dBi","at theta, phi","half-power beamwidth","first side lobe","first null"],[[St(S.peak_dbi,2),`${St(S.peak_theta_deg,1)}°, ${St(S.peak_phi_deg,1)}°`,`${St(S.beamwidth_deg,2)}° (${St(S.edges_deg[0],1)}° to ${St(S.edges_deg[1],1)}°)`,`${St(S.side_lobe_db,1)} dB`,`${St(S.null_db,1)} dB`]]),I("p",{class:"small quiet"},"Drag in the chart to enlarge, double-click for all of it.")]},Map:async()=>{const C=await b();if(!C)return;const S=new ia("levels over all directions"),_=Math.max(...C.level.filter(y=>y!==null));return d.push(()=>S.draw(C.rows,C.columns,C.level,{rowName:C.row_name.replace("_deg"," / deg"),columnName:C.column_name.replace("_deg"," / deg"),low:_-Yr,high:_,unit:"dBi",flip:!C.row_name.startsWith("theta"),square:a.coordinates==="u-v"})),[I("div",{class:"row"},Cs("coordinates",py,a.coordinates,y=>{a.coordinates=y,M()}),N(C.names)),S.element,I("p",{class:"small mono"},C.formula)]},"3D":async()=>{a.coordinates="theta-phi";const C=await b();if(!C)return;const S=new fp,_=[],y=Math.max(...C.level.filter(F=>F!==null));for(const F of C.rows)for(const k of C.columns)_.push(Math.sin($r(F))*Math.cos($r(k)),Math.sin($r(F))*Math.sin($r(k)),Math.cos($r(F)));return d.push(()=>{S.shape(C.rows.length,C.columns.length,_,!1),S.level(C.level.map(F=>F===null?null:F-y),-Yr)}),S.note.textContent=`level outwards and in colour, ${Yr} dB from the middle to the peak`,[I("div",{class:"row"},N(C.names)),S.element]},Aperture:async()=>{const C=await e(Bt("/api/aperture",{...u(),frequency:a.frequency}));if(C===void 0)return;if(C===null)return[I("p",{},"device.toml declares no [elements]: then there is no face to draw the waves back to.")];const S=new ia("amplitude on the face"),_=new ia("phase on the face"),y=I("canvas",{class:"map",attrs:{role:"img","aria-label":"excitation of every element"}});return d.push(()=>{const F={rowName:"y / mm",columnName:"x / mm",flip:!0,square:!0};S.draw(C.y_mm,C.x_mm,C.level_db,{...F,low:-25,high:0,unit:"dB"}),_.draw(C.y_mm,C.x_mm,C.phase_deg,{...F,low:-180,high:180,unit:"deg",ramp:Dg}),_y(y,C.elements,C.excitation_db)}),[I("div",{class:"columns pair"},I("div",{},I("h3",{},"Amplitude"),S.element),I("div",{},I("h3",{},"Phase"),_.element)),I("h3",{},"Excitation of every element"),y,...C.suspects.length?C.suspects.map(F=>I("p",{class:"bad"},F)):[I("p",{},"No element stands out.")]]},Impulse:async()=>{const C=await e(Bt("/api/impulse",h()));if(!C)return;const S=new vo;return d.push(()=>S.draw(C.time_ns,[{name:"strongest tie",values:C.level_db,colour:Dn().co}],{x:"time / ns",y:"level / dB",height:340,range:[-70,3]})),[S.element,I("p",{class:"small quiet"},"Impulse response of the strongest tie, Hann window. A time gate is a step of recipe.toml; its effect on every figure is under Recipe.")]},Recipe:async()=>{if(!o)return;const C=o.steps.map(y=>I("label",{class:"row"},I("input",{attrs:{type:"checkbox",checked:y.on,disabled:!y.may_change},on:{change:()=>void p(a.run,a.state,y.on?[...a.off,y.name]:a.off.filter(F=>F!==y.name))}}),y.name)),S=I("div"),_=Ut("what does every step do?",()=>void(async()=>{_.disabled=!0,qe(S,I("p",{class:"quiet"},"The run is processed once without each step."));const y=await e(ea("/api/effects",h()));if(_.disabled=!1,!y){qe(S);return}const F=Object.keys(y.without);qe(S,I("div",{class:"scroll"},Yn(["figure","all steps",...F.map(k=>`without ${k}`)],Object.keys(y.whole).map(k=>[y.labels[k],St(y.whole[k],3),...F.map(q=>{const H=y.without[q][k],Y=y.whole[k];return H===null||Y===null?"-":`${H-Y>=0?"+":""}${(H-Y).toFixed(3)}`})]))))})());return[I("p",{},"Switch a step off and every view and figure follows. The record itself is never changed."),I("div",{},...C),_,S]},Findings:async()=>{qe(s,I("p",{class:"quiet"},"The data are asked what is wrong with them."));const C=await e(Bt("/api/findings",h()));return C&&[Yn(["what","field / dB re peak","in words"],C.map(S=>[S.topic,St(S.level_db,1),S.text]))]},Coordinates:async()=>[pp().element],Report:async()=>{const C=I("div",{class:"row"}),S=()=>qe(C,...["html","pdf"].map(y=>I("a",{attrs:{href:`/api/report/${ft.campaign}/${a.run}/${y}`,target:"_blank",rel:"noopener"}},`open the report (${y})`)));o?.report&&S();const _=Ut("write the report",()=>void(async()=>{_.disabled=!0,qe(C,I("p",{class:"quiet"},"Figures, budgets and pages; this takes up to a minute."));const y=await e(ea("/api/report",h()));if(_.disabled=!1,y){S();const F=await e(Bt("/api/overview",u()));F&&(o=F,R())}else qe(C)})(),"main");return _.disabled=!wr("operate"),[I("p",{},o?.specification?"With a verdict against limits.toml on its first page.":"Without a verdict: there is no limits.toml beside the campaign."),_,C]}},A=()=>{const C=f.filter(y=>y.record&&y.name!==a.run),S=(y,F,k)=>I("label",{class:"row small"},I("input",{attrs:{type:"checkbox",checked:F},on:{change:q=>{k(q.target.checked),M()}}}),y),_=C.map(y=>S(y.name,a.beside.includes(y.name),F=>{a.beside=F?[...a.beside,y.name].slice(-3):a.beside.filter(k=>k!==y.name)}));return C.length?[I("span",{class:"small quiet"},"beside:"),..._,...a.beside.length?[S("difference of the fields",a.difference,y=>{a.difference=y})]:[]]:[]},b=()=>e(Bt("/api/map",{...u(),frequency:a.frequency,coordinates:a.coordinates,basis:a.basis,component:a.component})),N=C=>Cs("shown",[["total","total"],["first",C[0]],["second",C[1]]],a.component,S=>{a.component=S,M()}),R=()=>{if(!o)return;const C=o.frequency_hz[a.frequency],S=o.figures.filter(y=>Math.abs(y.frequency_hz-C)<1),_=Ut("with intervals",()=>void(async()=>{if(_.disabled=!0,await e(ea("/api/evaluate",h()))!==void 0){const y=await e(Bt("/api/overview",u()));y&&(o=y,R())}_.disabled=!1})(),"","evaluate every figure with its uncertainty");_.disabled=!wr("operate")||a.off.length>0,qe(r,I("div",{class:"row"},I("h2",{},`Figures at ${zl(C)}`),I("span",{class:"spring"}),S.some(y=>y.lower!==null)?null:_),o.demo?I("p",{class:"small quiet"},"Simulated chamber, invented device: demo data."):null,a.off.length?I("p",{class:"small bad"},`without ${a.off.join(", ")}`):null,I("div",{class:"scroll"},Yn(["figure","value","95 % interval"],S.map(y=>[I("span",{attrs:{title:y.definition}},y.label),`${y.text} ${y.unit}`,y.lower===null?"":`${St(y.lower,2)} to ${St(y.upper,2)}`]),"figures")))};return(async()=>{f=(await e(da("/api/campaigns")))?.find(_=>_.id===ft.campaign)?.runs??[],qe(t,...f.map(_=>gy(_,()=>void p(_.name)))),f.length||qe(t,I("p",{class:"quiet"},"No runs yet. Scan makes them; so does colure acquire."));const S=f.find(_=>_.record);S&&await p(S.name)})(),{title:"Explore",element:I("main",{},I("div",{class:"columns explore"},I("section",{attrs:{"aria-label":"runs"}},I("h2",{},"Runs"),t),I("section",{class:"card"},i,n,s),I("section",{class:"card"},r))),leave:()=>{c++}}}function gy(i,e){const t=I("canvas",{attrs:{width:48,height:24}}),n=t.getContext("2d");if(i.thumb){const r=n.createImageData(48,24);i.thumb.forEach((a,o)=>{for(let l=0;l<3;l++)r.data[4*o+l]=rs[3*a+l];r.data[4*o+3]=255}),n.putImageData(r,0,0)}return I("button",{on:{click:e},attrs:{type:"button","data-run":i.name,"aria-pressed":"false",disabled:!i.record}},i.thumb?t:null,I("strong",{},i.name),I("div",{class:"small quiet"},i.record?new Date(1e3*i.changed).toLocaleString():"not sealed yet: go on with it under Scan"))}function _y(i,e,t){const n=Math.min(340,i.clientWidth||340),s=window.devicePixelRatio||1;i.style.width=`${n}px`,i.style.height=`${n}px`,i.width=n*s,i.height=n*s;const r=i.getContext("2d"),a=e.map(p=>p[0]),o=e.map(p=>p[1]);r.scale(s,s);const l=Math.min(...a,...o),c=Math.max(...a,...o),f=(c-l)/Math.max(1,Math.round(Math.sqrt(e.length))-1),u=p=>(p-l+f/2)/(c-l+f)*n,h=f/(c-l+f)*n;r.font="11px system-ui",r.textAlign="center",r.textBaseline="middle",e.forEach(([p,v],M)=>{const m=3*Math.max(0,su(t[M],-15,0));r.fillStyle=`rgb(${rs[m]} ${rs[m+1]} ${rs[m+2]})`,r.fillRect(u(p)-h/2+1,n-u(v)-h/2+1,h-2,h-2),r.fillStyle=t[M]>-7?"#12191f":"#ffffff",r.fillText(t[M].toFixed(1),u(p),n-u(v))})}function zl(i){return`${(i/1e9).toFixed(3)} GHz`}function $r(i){return i*Math.PI/180}function vy(){const i=I("p",{class:"faults",attrs:{role:"alert"}}),e=I("div"),t=I("div",{class:"stack"}),n=I("div",{class:"stack"}),s=new hp,r=I("div",{class:"small mono"}),a=I("div"),o={},l=I("div"),c=I("div",{class:"card"},I("div",{class:"row"},I("h2",{},"Positioners and schemes"),I("span",{class:"spring"}),Ut("set side by side",()=>void(async()=>{const R=await f(Bt("/api/schemes",{campaign:ft.campaign,edits:o}));R&&qe(l,Yn(["positioner","scheme","duration","points","slices meet at"],R.map(D=>[I("span",{attrs:{title:`${D.formula}; suits ${D.suits}; polarization ${D.polarization}`}},D.geometry),D.scheme,D.fault?I("span",{class:"small bad",attrs:{title:D.fault}},"not here"):D.duration,D.points||"-",D.pole])),I("p",{class:"small quiet"},"Point at a positioner for its formula and what it suits, at “not here” for the reason."))})())),l),f=Ma(i);let u=null,h=0;const p=async()=>{const R=++h,D={campaign:ft.campaign,edits:o},C=await f(Bt("/api/plan",D));if(!C||R!==h)return;Sy(t,C,c);const S=await f(Bt("/api/motion",D));!S||R!==h||(u=S,s.build(S),qe(a,kl("through the scan",0,S.role.length-1,1,0,_=>v(_)),r),v(0))},v=R=>{if(!u)return;const D=u.axes.length,C=u;s.turn(C.angles_deg.slice(D*R,D*R+D),C.axes);const S=[];for(let y=0;y<R;y++)C.cell[y]>=0&&S.push(C.cell[y]);s.paint(C.cell[R],S);const _=["scan","tie","reference","resume","turn","cable"][C.role[R]];qe(r,`point ${R+1} of ${C.role.length} (${_}), after ${po(C.time_s[R])}: ${C.axes.map((y,F)=>`${y} ${C.readouts_deg[D*R+F].toFixed(1)}°`).join(", ")}`)},M=Wf(()=>void p()),m=Ut("rehearse on the simulated chamber",()=>void d(),"","the whole plan on an invented chamber as imperfect as the declared one"),d=async()=>{m.disabled=!0,qe(n,I("p",{class:"quiet"},"The plan is carried out on the simulated chamber and held against known truth; this takes some seconds."));const R=await f(ea("/api/rehearse",{campaign:ft.campaign,edits:o,seed:1+Math.floor(Math.random()*1e3)}));m.disabled=!1,R?yy(n,R):qe(n)},T=Ut("write into the files",async()=>{const R=await f(Bt("/api/save",{campaign:ft.campaign,edits:o}));R&&qe(A,R.written.length?`written: ${R.written.join(", ")}; the files as they were stay beside them`:"nothing was changed")}),A=I("p",{class:"small quiet"});T.disabled=!wr("configure"),(async()=>{const R=await f(da(`/api/form/${ft.campaign}`));R&&(xy(e,R,(D,C)=>{C===void 0?delete o[D]:o[D]=C,M()}),await p())})();const b=pp();return{title:"Plan",element:I("main",{},I("div",{class:"columns plan"},I("section",{class:"card",attrs:{"aria-label":"form"}},e,I("div",{class:"row"},T),A),I("section",{class:"stack"},I("div",{class:"card"},s.element,a),I("div",{class:"card"},I("div",{class:"row"},I("h2",{},"Rehearsal"),I("span",{class:"spring"}),m),n),I("div",{class:"card"},b.element)),I("section",{class:"stack",attrs:{"aria-live":"polite"}},i,t))),leave:()=>{h++}}}function xy(i,e,t){const n=[...new Set(e.fields.map(s=>s.group))];qe(i,I("h1",{},e.name),I("p",{class:"small quiet"},`${e.device}; ${e.chamber}${e.simulated?" (simulated chamber, invented data)":""}`),...n.map(s=>I("fieldset",{},I("legend",{},s),...e.fields.filter(r=>r.group===s).map(r=>My(r,t)))))}function My(i,e){const t=a=>{const o=JSON.stringify(a)===JSON.stringify(i.value);s.classList.toggle("changed",!o),e(i.key,o?void 0:a)},n=i.least!==null||i.most!==null?`from ${i.least??"-"} to ${i.most??"-"} ${i.unit}`:"",s=I("label",{class:"field",attrs:{title:n}},I("span",{},i.label));if(i.choices.length){const a=I("select",{on:{change:()=>t(a.value)}},...i.choices.map(o=>I("option",{attrs:{value:o}},o)));return a.value=String(i.value),s.append(a,I("span",{class:"unit"})),s}if(Array.isArray(i.value)){const a=i.value.map(o=>I("input",{attrs:{type:"number",step:"any",value:String(o),"aria-label":i.label},on:{input:()=>t(a.map(l=>Number(l.value)))}}));return s.classList.add("three"),s.append(...a,I("span",{class:"unit"},"mm")),s}const r=I("input",{attrs:{type:"number",step:i.whole?"1":"any",value:i.value===null?"":String(i.value),placeholder:i.optional?"chosen":""},on:{input:()=>t(r.value===""?i.optional?null:i.value:Number(r.value))}});return s.append(r,I("span",{class:"unit"},i.unit)),s}function Sy(i,e,t){const n=e.split.reduce((r,a)=>r+a[1],0),s=I("div",{class:"bar",attrs:{role:"img","aria-label":e.split.map(([r,a])=>`${r} ${po(a)}`).join(", ")}},...e.split.map((r,a)=>I("i",{class:a?"two":"one"})));[...s.children].forEach((r,a)=>{r.style.width=`${100*e.split[a][1]/n}%`}),qe(i,I("div",{class:"card"},I("p",{class:"verdict"},e.verdict),I("div",{class:"large"},e.duration),I("p",{class:"small quiet"},`${e.points} points`),s,I("p",{class:"small quiet"},e.split.map(([r,a])=>`${r} ${po(a)}`).join(", ")),...e.missing.map(r=>I("p",{class:"bad"},`Missing: ${r}`))),I("div",{class:"card"},I("h2",{},"Forecast"),Yn(["figure","±","mostly from"],e.forecast.map(r=>[r.name,r.expanded.toPrecision(2),r.cause]))),I("div",{class:"card"},I("h2",{},"Alternatives"),Yn(["plan","duration","points"],e.alternatives.map(r=>[I("span",{attrs:{title:r.why}},r.name),r.duration,r.points]))),t,I("div",{class:"card"},I("h2",{},"Why"),Yn(["",""],e.rows.map(([r,a])=>[I("strong",{},r),a]))))}function yy(i,e){const t=new ia("predicted error over all directions");qe(i,I("p",{},`${(100*e.share_inside).toFixed(0)} % of all stated intervals hold the truth; it took ${e.seconds.toFixed(1)} s. An invented chamber, drawn anew each time.`),t.element,I("div",{class:"scroll"},Yn(["figure","measured","true","","mostly from"],e.rows.map(s=>[s.name,`${s.value} ${s.unit}`,St(s.truth,3),I("span",{class:s.inside?"good":"bad"},s.inside?"inside":"outside"),s.cause]))));const n=Math.max(...e.error_db);t.draw(e.theta,e.phi,e.error_db,{rowName:"theta / deg",columnName:"phi / deg",low:n-40,high:n,unit:"dB"})}const Gc={plan:["Plan",vy],align:["Align",hy],scan:["Scan",cy],explore:["Explore",my]};let io=null;function zf(i){const e=i??localStorage.getItem("theme")??(matchMedia("(prefers-color-scheme: dark)").matches?"dark":"light");document.documentElement.dataset.theme=e,i&&localStorage.setItem("theme",i)}function so(){const i=location.hash.slice(1)in Gc?location.hash.slice(1):"plan";io?.leave(),io=Gc[i][1](),document.title=`Colure: ${io.title}`,document.querySelectorAll("nav a").forEach(e=>{e.getAttribute("href")===`#${i}`?e.setAttribute("aria-current","page"):e.removeAttribute("aria-current")}),document.querySelector("main")?.replaceWith(io.element)}function Ey(){const i="http://www.w3.org/2000/svg",e=document.createElementNS(i,"svg");e.setAttribute("viewBox","0 0 24 24"),e.setAttribute("width","24"),e.setAttribute("height","24"),e.setAttribute("aria-hidden","true");for(const[t,n]of[[10,"var(--ink)"],[4,"var(--cross)"]]){const s=document.createElementNS(i,"ellipse");for(const[r,a]of Object.entries({cx:12,cy:12,rx:t,ry:10,fill:"none",stroke:n,"stroke-width":1.8}))s.setAttribute(r,String(a));e.append(s)}return e}async function by(){zf();const i=document.getElementById("app");try{ft.me=await Gf();const e=ft.me.campaigns;ft.campaign=e[0].id;const t=I("span",{class:"chip"}),n=Ut("invite",()=>void(async()=>{const{code:s}=await Bt("/api/invite",{role:"view"}),r=`${location.origin}/launch?code=${s}`,a=I("dialog",{on:{close:()=>a.remove()}},I("h1",{},"A link for somebody who watches"),I("p",{},"It opens one session, on this computer, that may look and stop and nothing else."),I("p",{class:"mono"},r),Ut("close",()=>a.close()));document.body.append(a),a.show()})());Ai.watch({linked:s=>{t.className=`chip${s?"":" hot"}`,qe(t,s?`connected, may ${ft.me.role}`:"not connected")}}),qe(i,I("header",{class:"top"},I("span",{class:"name"},Ey(),"Colure"),I("nav",{attrs:{"aria-label":"pages"}},...Object.entries(Gc).map(([s,[r]])=>I("a",{attrs:{href:`#${s}`}},r))),e.length>1&&Cs("",e.map(s=>[s.id,s.folder]),ft.campaign,s=>{ft.campaign=s,so()}),I("span",{class:"spring"}),t,wr("configure")&&n,Ut("◐",()=>{zf(document.documentElement.dataset.theme==="dark"?"light":"dark"),so()},"","light or dark"),ly(),oy()),I("main")),window.addEventListener("hashchange",so),Ai.open(),so()}catch(e){qe(i,I("main",{},I("h1",{},"The control room did not open"),I("p",{class:"faults"},Bo(e))))}}by();
