#!/usr/bin/env node
// Runs on any Node, so that an old one gets a sentence and not a stack trace.
var version = process.versions.node.split('.').map(Number);
if (version[0] < 22 || (version[0] === 22 && version[1] < 13)) {
  process.stderr.write('hoveshort needs Node 22.13 or newer; this is Node ' + process.versions.node + '.\n');
  process.exitCode = 70;
} else {
  import('node:module').then((module) => {
    if (module.enableCompileCache) module.enableCompileCache();
    return import('./main.js');
  });
}
