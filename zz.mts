import ts from 'typescript';
import {readFileSync} from 'node:fs';
const pkg=JSON.parse(readFileSync('package.json','utf8'));
const files=Object.values(pkg.exports).filter((v:any)=>typeof v==='object').map((v:any)=>v.default.replace('./dist','src').replace(/js$/,'ts'));
const cfg=ts.getParsedCommandLineOfConfigFile('tsconfig.json',{},{...ts.sys,onUnRecoverableConfigFileDiagnostic(){}} as any)!;
const p=ts.createProgram(files,{...cfg.options,noEmit:true});const c=p.getTypeChecker();
const seen=new Set<ts.Symbol>();
for(const f of files){const m=c.getSymbolAtLocation(p.getSourceFile(f)!)!;
 for(let s of c.getExportsOfModule(m)){if(s.flags&ts.SymbolFlags.Alias)s=c.getAliasedSymbol(s);if(seen.has(s))continue;seen.add(s);
  for(const d of s.declarations??[]){const rel=d.getSourceFile().fileName.replace(process.cwd()+'/','');
   if(!rel.startsWith('src')||rel.includes('/tables/'))continue;
   const doc=s.getDocumentationComment(c).length>0;
   if(ts.isInterfaceDeclaration(d)){const miss=d.members.filter(x=>!(x as any).jsDoc).map(x=>(x.name as any)?.getText()).filter(Boolean);if(miss.length||!doc)console.log(rel,(doc?'':'!')+s.name,miss.join(' '));}
   else if(!doc&&!ts.isFunctionDeclaration(d))console.log(rel,'!'+s.name,ts.SyntaxKind[d.kind]);
  }}}
