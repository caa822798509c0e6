// The addon reads its table from the start of the memory under a Buffer, which is another's where Node hands out
// a slice of its pool: now and then it would not load, or measured text wrong. Without a pool each has its own.
const { poolSize } = Buffer;
Buffer.poolSize = 0;
export const { UnicodeGraphemesAddon } = await import('@xterm/addon-unicode-graphemes');
Buffer.poolSize = poolSize;
