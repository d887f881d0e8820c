/** The names of all time zones, offered while one is typed. */
export const zoneList = 'zone-names';

const zones = ['UTC', ...Intl.supportedValuesOf('timeZone')];

export const ZoneNames = () => (
  <datalist id={zoneList}>
    {zones.map((zone) => (
      <option key={zone} value={zone} />
    ))}
  </datalist>
);
