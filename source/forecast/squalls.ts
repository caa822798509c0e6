/** How many squalls or thunderstorms there are, or will be; the worst last. */
export const SQUALLS = ['none', 'isolated', 'scattered', 'line'] as const;
