/** The same object with one method another; all else, `this` included, is its own. */
export function withMethod<T extends object, K extends keyof T>(target: T, name: K, method: T[K]): T {
  return new Proxy(target, {
    get(_, asked) {
      if (asked === name) return method;
      const value: unknown = Reflect.get(target, asked);
      return typeof value === 'function' ? value.bind(target) : value;
    },
  });
}
