/** How a level is read: readings taken differently are compared with care. */
export const WAYS_TO_READ = [
  'stopped-cold',
  'stopped-hot',
  'running-hot',
  'stick-resting',
  'stick-screwed',
  'gauge',
  'sounding',
] as const;
