import { defineConfig } from 'vitest/config';
import tests from './vitest.ts';

/** Store and framing: every branch of these is reached by the tests. */
const HELD = [
  'source/files/{accept,append,batch,lock,log-file,mark,merge,own-writer,replace,scan,seal,segment,shelf}.ts',
  'source/logbook/{accepted,cause,chain,counts,line,order,split-lines,strikes,understand,union,unique-lines,upgrades}.ts',
];

export default defineConfig({
  test: {
    ...tests.test,
    include: ['tests/{files,logbook,soak}/**/*.test.ts', 'tests/commands/{inspect,merge,record}*.test.ts'],
    coverage: {
      enabled: true,
      provider: 'v8',
      include: HELD,
      reporter: ['text'],
      thresholds: { branches: 100 },
    },
  },
});
