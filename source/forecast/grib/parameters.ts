/** What of a forecast is used here, in the units of the tables: m/s, degrees true (from), m, s, Pa. */
export type Quantity =
  | 'wind u'
  | 'wind v'
  | 'wind speed'
  | 'wind direction'
  | 'gust'
  | 'seas'
  | 'wind waves'
  | 'swell'
  | 'peak period'
  | 'mean period'
  | 'zero crossing period'
  | 'wind wave period'
  | 'swell period'
  | 'pressure';

export interface Parameter {
  /** Edition 2: discipline-category-number; edition 1: table version.number. */
  readonly code: string;
  readonly name: string;
  /** Null: not used here. */
  readonly quantity: Quantity | null;
}

/** Centres whose own tables are read, common code table C-11. */
const NCEP = 7;
const TOKYO = 34;
const OFFENBACH = 78;
const ROME = 80;
const NORRKOPING = 82;
const OSLO = 88;
const COPENHAGEN = 94;
const ECMWF = 98;

type Row = readonly [name: string, quantity: Quantity | null];

/** Edition 2. WMO No. 306, Manual on Codes, I.2, code tables 4.2-0-1 to 4.2-10-1 (version 29, as carried by ecCodes 2.28.0). */
const EDITION_2: Readonly<Record<string, Row>> = {
  '0-0-0': ['temperature', null],
  '0-1-1': ['relative humidity', null],
  '0-1-7': ['precipitation rate', null],
  '0-1-8': ['total precipitation', null],
  '0-1-52': ['total precipitation rate', null],
  '0-2-0': ['wind direction', 'wind direction'],
  '0-2-1': ['wind speed', 'wind speed'],
  '0-2-2': ['wind u', 'wind u'],
  '0-2-3': ['wind v', 'wind v'],
  '0-2-22': ['gust', 'gust'],
  '0-3-0': ['pressure', 'pressure'],
  '0-3-1': ['pressure at mean sea level', 'pressure'],
  '0-3-5': ['geopotential height', null],
  '0-6-1': ['cloud cover', null],
  '0-7-6': ['convective available potential energy', null],
  '0-19-0': ['visibility', null],
  '10-0-3': ['significant height of wind waves and swell', 'seas'],
  '10-0-4': ['direction of wind waves', null],
  '10-0-5': ['significant height of wind waves', 'wind waves'],
  '10-0-6': ['mean period of wind waves', 'wind wave period'],
  '10-0-7': ['direction of swell', null],
  '10-0-8': ['significant height of swell', 'swell'],
  '10-0-9': ['mean period of swell', 'swell period'],
  '10-0-10': ['primary wave direction', null],
  '10-0-11': ['primary wave mean period', 'mean period'],
  '10-0-12': ['secondary wave direction', null],
  '10-0-13': ['secondary wave mean period', null],
  '10-0-14': ['mean direction of wind waves and swell', null],
  '10-0-15': ['mean period of wind waves and swell', 'mean period'],
  '10-0-25': ['mean wave period from inverse frequency', 'mean period'],
  '10-0-28': ['mean zero-crossing wave period', 'zero crossing period'],
  '10-0-34': ['peak wave period', 'peak period'],
  '10-0-35': ['peak period of wind waves', 'wind wave period'],
  '10-0-36': ['peak period of swell', 'swell period'],
  '10-0-46': ['peak wave direction', null],
  '10-1-0': ['current direction', null],
  '10-1-1': ['current speed', null],
  '10-1-2': ['current u', null],
  '10-1-3': ['current v', null],
};

/** Edition 2 by centre. NCEP local table 4.2-0-3; its wave model writes the peak period as primary wave mean period (from memory). */
const EDITION_2_OF_CENTRE: Readonly<Record<string, Row>> = {
  [`${NCEP}/0-3-192`]: ['pressure at mean sea level', 'pressure'],
  [`${NCEP}/10-0-11`]: ['peak wave period', 'peak period'],
};

/** Edition 1, the part common to all centres. WMO No. 306, I.2, FM 92 edition 1, code table 2 versions 1 to 3. */
const EDITION_1: Readonly<Record<number, Row>> = {
  1: ['pressure', 'pressure'],
  2: ['pressure at mean sea level', 'pressure'],
  11: ['temperature', null],
  31: ['wind direction', 'wind direction'],
  32: ['wind speed', 'wind speed'],
  33: ['wind u', 'wind u'],
  34: ['wind v', 'wind v'],
  49: ['current u', null],
  50: ['current v', null],
  52: ['relative humidity', null],
  61: ['total precipitation', null],
  71: ['cloud cover', null],
  100: ['significant height of wind waves and swell', 'seas'],
  101: ['direction of wind waves', null],
  102: ['significant height of wind waves', 'wind waves'],
  103: ['mean period of wind waves', 'wind wave period'],
  104: ['direction of swell', null],
  105: ['significant height of swell', 'swell'],
  106: ['mean period of swell', 'swell period'],
  107: ['primary wave direction', null],
  108: ['primary wave mean period', 'mean period'],
  109: ['secondary wave direction', null],
  110: ['secondary wave mean period', null],
};

/** Versions of table 2 whose numbers below 128 are the common ones: the WMO's own, and Tokyo's. */
const COMMON_1 = { least: 1, most: 3, ofTokyo: 200 };

/**
 * Edition 1 by centre, "centre/version.number": NCEP Office Note 388 table 2 (as gust 180 stands there, from memory), ECMWF parameter tables 128, 140 and 228,
 * DWD tables 201 and 202 (also Rome's), HIRLAM table 1 of the northern centres: all but NCEP's as carried by ecCodes 2.28.0.
 */
const EDITION_1_OF_CENTRE: Readonly<Record<string, Row>> = {
  [`${NCEP}/2.108`]: ['peak wave period', 'peak period'],
  [`${NCEP}/2.180`]: ['gust', 'gust'],
  ...Object.fromEntries(
    [NORRKOPING, OSLO, COPENHAGEN].map((centre) => [`${centre}/1.228`, ['gust', 'gust']] as const),
  ),
  ...Object.fromEntries(
    [OFFENBACH, ROME].flatMap((centre) => [
      [`${centre}/201.187`, ['gust', 'gust']] as const,
      [`${centre}/202.9`, ['peak wave period', 'peak period']] as const,
      [`${centre}/202.10`, ['mean wave period', 'mean period']] as const,
    ]),
  ),
  [`${ECMWF}/128.49`]: ['gust', 'gust'],
  [`${ECMWF}/128.123`]: ['gust of the last 6 hours', 'gust'],
  [`${ECMWF}/128.151`]: ['pressure at mean sea level', 'pressure'],
  [`${ECMWF}/128.165`]: ['wind u', 'wind u'],
  [`${ECMWF}/128.166`]: ['wind v', 'wind v'],
  [`${ECMWF}/128.167`]: ['temperature', null],
  [`${ECMWF}/128.207`]: ['wind speed', 'wind speed'],
  [`${ECMWF}/140.221`]: ['mean zero-crossing wave period', 'zero crossing period'],
  [`${ECMWF}/140.229`]: ['significant height of wind waves and swell', 'seas'],
  [`${ECMWF}/140.230`]: ['mean wave direction', null],
  [`${ECMWF}/140.231`]: ['peak wave period', 'peak period'],
  [`${ECMWF}/140.232`]: ['mean wave period', 'mean period'],
  [`${ECMWF}/140.234`]: ['significant height of wind waves', 'wind waves'],
  [`${ECMWF}/140.235`]: ['direction of wind waves', null],
  [`${ECMWF}/140.236`]: ['mean period of wind waves', 'wind wave period'],
  [`${ECMWF}/140.237`]: ['significant height of swell', 'swell'],
  [`${ECMWF}/140.238`]: ['direction of swell', null],
  [`${ECMWF}/140.239`]: ['mean period of swell', 'swell period'],
  [`${ECMWF}/140.245`]: ['wind speed', 'wind speed'],
  [`${ECMWF}/140.249`]: ['wind direction', 'wind direction'],
  [`${ECMWF}/228.28`]: ['gust of the last 3 hours', 'gust'],
  [`${ECMWF}/228.29`]: ['gust', 'gust'],
};

/** The parameter of an edition 2 field. */
export function parameter2(
  centre: number,
  numbers: readonly [discipline: number, category: number, number: number],
): Parameter {
  const code = numbers.join('-');
  return parameter(code, EDITION_2_OF_CENTRE[`${centre}/${code}`] ?? EDITION_2[code]);
}

/** The parameter of an edition 1 field. */
export function parameter1(centre: number, version: number, number: number): Parameter {
  const code = `${version}.${number}`;
  const common =
    (version >= COMMON_1.least && version <= COMMON_1.most) ||
    (centre === TOKYO && version === COMMON_1.ofTokyo);
  return parameter(
    code,
    EDITION_1_OF_CENTRE[`${centre}/${code}`] ?? (common ? EDITION_1[number] : undefined),
  );
}

function parameter(code: string, row: Row | undefined): Parameter {
  return { code, name: row?.[0] ?? `parameter ${code}`, quantity: row?.[1] ?? null };
}
