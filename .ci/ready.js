// Run before `npm start`, by whatever Node the machine has: installs what is missing, then builds.
import { execSync } from 'node:child_process';
import { existsSync, statSync } from 'node:fs';

const installed = 'node_modules/.package-lock.json';
const quiet = { stdio: ['ignore', 'ignore', 'inherit'] };
if (!existsSync(installed) || statSync(installed).mtimeMs < statSync('package-lock.json').mtimeMs)
  execSync('npm ci --no-audit --no-fund --loglevel=error', quiet);
execSync('npm run --silent build', quiet);
