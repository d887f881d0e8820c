/** What the quantities of a log are called, and their units as they are written; in the order of their charts. */
import type { Quantity } from '../../src/assessment.ts';

export const quantities: { readonly [Q in Quantity]: { readonly title: string; readonly unit: string } } = {
  temperature: { title: 'Temperature', unit: '°C' },
  humidity: { title: 'Relative humidity', unit: '%' },
  windSpeed: { title: 'Wind speed', unit: 'm/s' },
  irradiance: { title: 'Irradiance', unit: 'W/m²' },
  power: { title: 'Power', unit: 'W' },
  energy: { title: 'Energy', unit: 'kWh' },
  meter: { title: 'Meter reading', unit: 'kWh' },
  dewPoint: { title: 'Dew point', unit: '°C' },
  absoluteHumidity: { title: 'Absolute humidity', unit: 'g/m³' },
  pressure: { title: 'Air pressure', unit: 'hPa' },
  carbonDioxide: { title: 'Carbon dioxide', unit: 'ppm' },
  voltage: { title: 'Logger’s battery', unit: 'V' },
};
