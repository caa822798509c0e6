/** Who made a forecast, by originating centre. WMO common code table C-11; only those whose forecasts boats get by mail. */
const CENTRES: Readonly<Record<number, string>> = {
  1: 'Bureau of Meteorology, Melbourne',
  2: 'Bureau of Meteorology, Melbourne',
  7: 'US National Weather Service, NCEP',
  8: 'US National Weather Service',
  9: 'US National Weather Service',
  24: 'South African Weather Service, Pretoria',
  34: 'Japan Meteorological Agency, Tokyo',
  40: 'Korea Meteorological Administration, Seoul',
  46: 'INPE, Brazil',
  54: 'Canadian Meteorological Centre, Montreal',
  57: 'US Air Force',
  58: 'US Navy, Fleet Numerical',
  69: 'MetService, Wellington',
  74: 'UK Met Office, Exeter',
  78: 'Deutscher Wetterdienst, Offenbach',
  80: 'Rome',
  82: 'SMHI, Norrkoping',
  84: 'Meteo-France, Toulouse',
  85: 'Meteo-France, Toulouse',
  86: 'FMI, Helsinki',
  88: 'MET Norway, Oslo',
  94: 'DMI, Copenhagen',
  96: 'Athens',
  97: 'European Space Agency',
  98: 'ECMWF',
  99: 'KNMI, De Bilt',
  110: 'Hong Kong Observatory',
  212: 'Lisbon',
  213: 'Icelandic Met Office, Reykjavik',
  214: 'AEMET, Madrid',
  233: 'Met Eireann, Dublin',
};

export function centreName(centre: number): string {
  return CENTRES[centre] ?? `centre ${centre}`;
}
