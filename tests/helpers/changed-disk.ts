import type { Disk } from '../../source/files/disk.ts';

/** Every call as it is, but those given. */
export function changed(disk: Disk, change: Partial<Disk>): Disk {
  return new Proxy(disk, {
    get: (target, name) => {
      const own = change[name as keyof Disk];
      if (own) return own;
      const method = Reflect.get(target, name);
      return typeof method === 'function' ? method.bind(target) : method;
    },
  });
}
