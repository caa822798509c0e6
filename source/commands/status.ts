import type { Trouble } from '../trouble.ts';

/** Exit statuses, the numbers of sysexits(3). `verdict` alone has 0 go, 1 hold, 2 not ready. */
export const STATUS = {
  done: 0,
  usage: 64,
  data: 65,
  notFound: 66,
  fault: 70,
  cannotCreate: 73,
  readOrWrite: 74,
};

/** The exit status for what went wrong: the first trouble decides. */
export function statusOf(troubles: readonly Trouble[]): number {
  const first = troubles[0];
  return first ? statusOfOne(first) : STATUS.fault;
}

function statusOfOne(trouble: Trouble): number {
  switch (trouble.kind) {
    case 'no boat folder':
    case 'no table':
      return STATUS.notFound;
    case 'unknown word':
      return ['item', 'id', 'forecast', 'closed hunt'].includes(trouble.what)
        ? STATUS.notFound
        : STATUS.usage;
    case 'another boat':
    case 'wanting':
    case 'not understood':
      return STATUS.usage;
    case 'wrong entry':
    case 'in doubt':
      return trouble.line === undefined ? STATUS.usage : STATUS.data;
    case 'folder not empty':
    case 'cannot make':
    case 'read only':
    case 'no place for a copy':
      return STATUS.cannotCreate;
    case 'cannot read':
      return trouble.code === 'ENOENT' ? STATUS.notFound : STATUS.readOrWrite;
    case 'cannot write':
    case 'disk error':
    case 'little room':
    case 'not saved':
    case 'not copied':
    case 'copy unsound':
      return STATUS.readOrWrite;
    default:
      return STATUS.data;
  }
}
